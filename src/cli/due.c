/* SPDX-License-Identifier: Apache-2.0 */
/*
 * due: a file of the call, tank, plan or water, becomes the question of answers/due.h.
 */
#include <string.h>

#include "answers/due.h"
#include "base/arena.h"
#include "care/happened.h"
#include "cli/care_answer.h"
#include "cli/kept.h"
#include "cli/remake.h"
#include "cli/standing.h"
#include "records/file.h"
#include "records/kind.h"
#include "records/load.h"
#include "report/due_result.h"
#include "show/due.h"

struct call {
	struct session *s;
	const char *name;    /* of the tank, water or plan */
	struct ts_plan plan; /* of a plan; of a tank or a water what there is of one */
	bool has_tank, has_supply;
};

/* A file that is none of ours, or cannot be read at all. */
static enum ts_status refuse_kind(struct session *s, const char *file)
{
	char *bytes;
	size_t len;
	enum ts_status status = ts_file_read(
		s->system, file, TS_OPEN_ANY, TS_FILE_BYTES_MOST, NULL, &bytes, &len, s->findings);
	const struct ts_allocator mine = ts_allocator_or_default(NULL);

	if (status != TS_OK)
		return status;
	mine.resize(mine.state, bytes, 0);
	ts_text_puts(s->error, file,
		" is neither a tank nor a plan nor a water; due takes one of "
		"the three, docs/formats.md has their keys",
		NULL);
	return TS_BAD_INPUT;
}

/* A water is a supply, unless it says that it is a tank's. */
static enum ts_status load_water(struct call *c, const char *file)
{
	struct ts_water water;
	enum ts_status status =
		ts_water_load_from(c->s->system, file, c->s->arena, &water, c->s->findings);

	if (status != TS_OK)
		return status;
	c->name = water.name;
	c->has_tank = water.kind == TS_WATER_TANK;
	c->has_supply = !c->has_tank;
	if (c->has_supply) {
		c->plan.water = water;
		return TS_OK;
	}
	c->plan.tank.readings = water.readings;
	c->plan.tank.reading_count = water.reading_count;
	return TS_OK;
}

static enum ts_status load_subject(struct call *c, const char *file)
{
	struct session *s = c->s;
	const struct ts_shape *kind;
	enum ts_status status = ts_records_kind(s->system, file, NULL, &kind);

	if (status)
		return status;
	if (kind == &ts_shape_water)
		return load_water(c, file);
	c->has_tank = true;
	if (kind == &ts_shape_tank) {
		status = ts_tank_load_from(s->system, file, s->arena, &c->plan.tank, s->findings);
		c->name = c->plan.tank.name;
		if (!status)
			ts_happened_routine(&c->plan.tank, s->today, s->practice);
		return status;
	}
	if (kind != &ts_shape_plan)
		return refuse_kind(s, file);
	status = ts_plan_load_from(s->system, file, s->arena, &c->plan, s->findings);
	c->name = c->plan.name;
	if (!status)
		ts_happened_take(&c->plan, s->today, s->practice);
	c->has_supply = ts_due_poured(&c->plan)->reading_count > 0;
	return status;
}

/* The water poured in, where the flag names it. */
static enum ts_status load_poured(struct call *c)
{
	const char *file = c->s->options->water_file;

	if (!file)
		return TS_OK;
	if (c->s->options->waters.count > 1) {
		ts_text_put(c->s->error, "one --water at a time: that which is poured in");
		return TS_BAD_INPUT;
	}
	if (c->has_supply && !c->has_tank) {
		ts_text_put(
			c->s->error, "-w goes with a tank or a plan; the file is a water already");
		return TS_BAD_INPUT;
	}
	c->has_supply = true;
	c->plan.water = (struct ts_water){0};
	return ts_water_load_from(
		c->s->system, file, c->s->arena, &c->plan.change_water, c->s->findings);
}

static enum ts_status load(struct call *c)
{
	const struct options *o = c->s->options;
	enum ts_status status;

	if (strcmp(o->arguments[0], "-") == 0) {
		ts_text_put(c->s->error, "due looks at a file twice and cannot do so with -; give "
					 "its name");
		return TS_BAD_INPUT;
	}
	status = load_subject(c, o->arguments[0]);
	return status ? status : load_poured(c);
}

/* A wish of the flags makes the tank's way to another water part of what is due. */
static enum ts_status ask_remake(struct call *c, struct ts_due_question *q)
{
	const struct options *o = c->s->options;
	struct ts_remake_result *remake;

	if (!o->to && !o->wished.count)
		return TS_OK;
	if (!c->has_tank || !c->has_supply) {
		ts_text_puts(c->s->error, o->to ? "--to" : "--for",
			c->has_tank ? " needs the water that is poured in; give -w FILE"
				    : " needs a tank or a plan, and the file is a water",
			NULL);
		return TS_BAD_INPUT;
	}
	remake = ts_arena_take(c->s->arena, sizeof *remake);
	if (!remake)
		return TS_NO_MEMORY;
	q->remake = remake;
	return remake_of_plan(c->s, &c->plan, ts_due_poured(&c->plan), remake);
}

static void show(struct session *s, const struct ts_due_result *r)
{
	struct ts_document doc;

	if (s->options->format == FORMAT_JSON) {
		session_json(s, "due", &ts_result_due, r);
		return;
	}
	if (s->options->format == FORMAT_ICS) {
		ts_show_due_calendar(s->arena,
			&(struct ts_due_calendar){s->options->arguments[0], NULL, r}, 1, TS_VERSION,
			s->today, s->out);
		return;
	}
	ts_doc_open(&doc, s->arena, "What to test next");
	ts_show_due(&doc, r, s->today);
	session_write(s, &doc);
}

/* What was loaded, answered. */
static enum ts_status answer(struct call *c, struct ts_due_result *ret)
{
	struct session *s = c->s;
	size_t ahead = ts_due_leave_out(&c->plan, s->today);
	struct ts_due_question q = {.name = c->name,
		.plan = &c->plan,
		.has_tank = c->has_tank,
		.has_supply = c->has_supply,
		.residents = s->options->with.count > 0};
	struct ts_asking asking;
	enum ts_status status = care_species_if_known(s, &c->plan, &q.species, &q.unknown);

	if (!status)
		status = ask_remake(c, &q);
	if (status)
		return status;
	asking = care_asking(s);
	return ts_answer_due(&asking, &q, ahead, ret);
}

enum ts_status due_of(struct session *s, const char *file, struct ts_due_result *ret)
{
	struct call *c = ts_arena_take(s->arena, sizeof *c);
	enum ts_status status = TS_NO_MEMORY;

	if (!c)
		return status;
	c->s = s;
	status = load_subject(c, file);
	return status ? status : answer(c, ret);
}

/* The tanks of a call that names several, or of one that names none: all that are kept. */
static enum ts_status subjects(struct session *s, struct ts_due_calendar **ret, size_t *ret_count)
{
	const struct options *o = s->options;
	struct kept_item *items = NULL;
	size_t count = o->argument_count;
	enum ts_status status = count ? TS_OK : kept_list(s, &items, &count);

	if (status)
		return status;
	*ret_count = count;
	*ret = ts_arena_array(s->arena, count + 1, sizeof **ret);
	for (size_t i = 0; *ret && i < count; i++) {
		const char *path = items ? items[i].path : o->arguments[i];

		(*ret)[i] = (struct ts_due_calendar){path, kept_called(s, path), NULL};
	}
	return s->arena->failed ? TS_NO_MEMORY : TS_OK;
}

/* One of them answered; what cannot be read is told in its place and hides no other. */
static enum ts_status answer_one(
	struct session *s, struct ts_due_calendar *tank, struct ts_due_all_tank *ret)
{
	struct ts_due_result *due = ts_arena_take(s->arena, sizeof *due);
	size_t findings = s->findings->count;
	enum ts_status status = due ? due_of(s, tank->file, due) : TS_NO_MEMORY;

	*ret = (struct ts_due_all_tank){.name = tank->called};
	if (!status) {
		ret->due = tank->due = due;
		return TS_OK;
	}
	if (status == TS_NO_MEMORY)
		return status;
	ret->not_answered = s->error->len
				    ? ts_arena_text(s->arena, ts_text_get(s->error), s->error->len)
			    : s->findings->count > findings ? s->findings->items[findings].what
							    : "it cannot be read";
	ts_text_clear(s->error);
	return TS_OK;
}

static void show_all(struct session *s, const struct ts_due_all_result *r,
	const struct ts_due_calendar *tanks, size_t count)
{
	struct ts_document doc;

	if (s->options->format == FORMAT_JSON) {
		session_json(s, "due", &ts_result_due_all, r);
		return;
	}
	if (s->options->format == FORMAT_ICS) {
		ts_show_due_calendar(s->arena, tanks, count, TS_VERSION, s->today, s->out);
		return;
	}
	ts_doc_open(&doc, s->arena, "What is due");
	ts_show_due_all(&doc, r, s->today, s->options->all);
	session_write(s, &doc);
}

/* Those that have an answer, in their order. */
static size_t answered(struct ts_due_calendar *tanks, size_t count)
{
	size_t n = 0;

	for (size_t i = 0; i < count; i++) {
		if (tanks[i].due)
			tanks[n++] = tanks[i];
	}
	return n;
}

static enum ts_status due_in_all(struct session *s)
{
	const struct options *o = s->options;
	struct ts_due_calendar *tanks;
	struct ts_due_all_tank *all;
	struct ts_due_all_result r;
	struct ts_asking asking;
	size_t count, with;
	enum ts_status status = subjects(s, &tanks, &count);

	if (!status && !count) {
		ts_text_put(s->error, "due needs a file, a tank, a plan or a water, for example "
				      "tapshoal due tank.yaml; alone it looks at all that keep "
				      "has by a name, and that is nothing yet");
		return TS_BAD_INPUT;
	}
	if (!status && (o->water_file || o->to || o->wished.count || o->with.count)) {
		ts_text_put(
			s->error, "-w, --to, --for and --with are about one tank; name it alone");
		return TS_BAD_INPUT;
	}
	all = status ? NULL : ts_arena_array(s->arena, count, sizeof *all);
	if (!all)
		return status ? status : TS_NO_MEMORY;
	for (size_t i = 0; i < count && !status; i++)
		status = answer_one(s, &tanks[i], &all[i]);
	if (status)
		return status;
	asking = care_asking(s);
	status = ts_answer_due_all(&asking, all, count, &r);
	if (status)
		return status;
	with = answered(tanks, count);
	show_all(s, &r, tanks, with);
	return with < count ? TS_BAD_INPUT : r.nothing ? TS_OK : TS_NO;
}

enum ts_status command_due(struct session *s)
{
	struct call *c = ts_arena_take(s->arena, sizeof *c);
	struct ts_due_result r;
	enum ts_status status = TS_NO_MEMORY;

	if (!c)
		return status;
	if (s->options->argument_count != 1)
		return due_in_all(s);
	c->s = s;
	status = load(c);
	if (!status)
		status = answer(c, &r);
	if (status)
		return status;
	show(s, &r);
	return r.nothing ? TS_OK : TS_NO;
}
