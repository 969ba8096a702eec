/* SPDX-License-Identifier: Apache-2.0 */
/*
 * lint: reads any of our files, or folders of species records, and says everything that is wrong;
 * exit 1 when a rule is broken, 2 when a file cannot be understood.
 */
#include <tapshoal/plan.h>

#include <string.h>

#include "catalogue/folders.h"
#include "cli/commands.h"
#include "cli/lint_records.h"
#include "records/kind.h"
#include "records/load.h"

/* A file of ours that is no species record: its own loader knows what must hold. */
static enum ts_status check_file(struct session *s, const struct ts_shape *kind, const char *path)
{
	union {
		struct ts_water water;
		struct ts_tank tank;
		struct ts_plan plan;
	} read;

	if (kind == &ts_shape_tank)
		return ts_tank_load_from(s->system, path, s->arena, &read.tank, s->findings);
	if (kind == &ts_shape_plan)
		return ts_plan_load_from(s->system, path, s->arena, &read.plan, s->findings);
	return ts_water_load_from(s->system, path, s->arena, &read.water, s->findings);
}

/* A folder is one of species records; a file is told by its keys. */
static enum ts_status load_one(struct session *s, const char *path, size_t *others)
{
	const struct ts_shape *kind;
	enum ts_status status;
	struct ts_seen seen;

	if (s->system->look(s->system->state, path, &seen) == 0 && seen.entry == TS_ENTRY_FOLDER)
		return ts_catalogue_read(s->catalogue, path, s->findings);
	status = ts_records_kind(s->system, path, &s->arena->allocator, &kind);
	if (status)
		return status;
	if (kind == &ts_shape_species)
		return ts_catalogue_add_file(s->catalogue, path, s->findings);
	status = check_file(s, kind, path);
	*others += status == TS_OK;
	return status;
}

static void count_files(struct ts_text *out, size_t records, size_t others, size_t broken)
{
	const char *noun = others ? " file" : " record";

	ts_text_number_short(out, (double)(records + others), 0);
	ts_text_puts(out, noun, records + others == 1 ? ", " : "s, ", NULL);
	ts_text_number_short(out, (double)broken, 0);
	ts_text_put(out, " with findings\n");
}

enum ts_status command_lint(struct session *s)
{
	const struct options *o = s->options;
	enum ts_status worst = TS_OK;
	const size_t before = s->catalogue->count; /* of a page, which keeps what it has read */
	size_t broken = 0, others = 0;

	if (!o->argument_count) {
		ts_text_put(s->error, "lint needs a file: a species record, a water, a tank or a "
				      "plan, or a folder of "
				      "records");
		return TS_BAD_INPUT;
	}
	for (size_t i = 0; i < o->argument_count && worst != TS_NO_MEMORY; i++) {
		enum ts_status status = load_one(s, o->arguments[i], &others);

		worst = status > worst ? status : worst;
	}
	if (worst != TS_NO_MEMORY && s->catalogue->count > before) {
		enum ts_status status = lint_records(s, &broken);

		worst = status > worst ? status : worst;
	}
	if (worst == TS_NO_MEMORY)
		return worst;
	if (o->format == FORMAT_JSON) {
		s->told = true;
		lint_json(s, s->catalogue->count + others, broken);
	}
	if (worst || s->told)
		return worst ? worst : broken ? TS_NO : TS_OK;
	count_files(s->out, s->catalogue->count, others, broken);
	return broken ? TS_NO : TS_OK;
}
