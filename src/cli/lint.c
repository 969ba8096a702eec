/* SPDX-License-Identifier: Apache-2.0 */
/*
 * lint: reads species records or folders of them and says everything that is wrong; exit 1 when a
 * rule is broken, 2 when a file cannot be understood.
 */
#include <string.h>
#include <sys/stat.h>

#include "catalogue/folders.h"
#include "catalogue/lint.h"
#include "cli/commands.h"
#include "cli/paths.h"

static enum ts_status load_one(struct session *s, const char *path)
{
	struct stat info;

	if (stat(path, &info) == 0 && S_ISDIR(info.st_mode))
		return ts_catalogue_read(s->catalogue, path, s->findings);
	return ts_catalogue_add_file(s->catalogue, path, s->findings);
}

/* A record may cite what the shipped folder describes. */
static bool run_rules(struct session *s, size_t *ret_broken)
{
	struct ts_texts standard = {0};
	struct ts_lint lint;
	enum ts_status status = ts_lint_open(&lint, s->catalogue, NULL);

	(void)paths_species(s->arena, &standard);
	for (size_t i = 0; i < standard.count && !status; i++)
		status = ts_lint_know_sources(&lint, standard.items[i]);
	for (size_t i = 0; i < s->catalogue->count && !status; i++)
		*ret_broken += !ts_lint_species(&lint, s->catalogue->items[i], s->findings);
	ts_lint_close(&lint);
	return !status;
}

static void count_records(struct ts_text *out, size_t records, size_t broken)
{
	ts_text_number_short(out, (double)records, 0);
	ts_text_put(out, records == 1 ? " record, " : " records, ");
	ts_text_number_short(out, (double)broken, 0);
	ts_text_put(out, " with findings\n");
}

enum ts_status command_lint(struct session *s)
{
	const struct options *o = s->options;
	enum ts_status worst = TS_OK;
	size_t broken = 0;

	if (!o->argument_count) {
		ts_text_put(s->error, "lint needs a species record or a folder of them");
		return TS_BAD_INPUT;
	}
	for (size_t i = 0; i < o->argument_count && worst != TS_NO_MEMORY; i++) {
		enum ts_status status = load_one(s, o->arguments[i]);

		worst = status > worst ? status : worst;
	}
	if (worst != TS_NO_MEMORY && !run_rules(s, &broken))
		worst = TS_NO_MEMORY;
	if (worst == TS_NO_MEMORY)
		return worst;
	if (o->format == FORMAT_JSON) {
		s->told = true;
		lint_json(s, s->catalogue->count, broken);
	}
	if (worst || s->told)
		return worst ? worst : broken ? TS_NO : TS_OK;
	count_records(s->out, s->catalogue->count, broken);
	return broken ? TS_NO : TS_OK;
}
