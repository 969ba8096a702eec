/* SPDX-License-Identifier: Apache-2.0 */
/*
 * due: what of a tank, a plan or a water is to be tested next, and when; with a wish, also the
 * stages of its re-making. The reasons are the care room's, the stages those of remake.
 */
#include "cli/due.h"

#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "care/due.h"
#include "care/plan_state.h"
#include "cli/care_answer.h"
#include "cli/remake.h"
#include "records/file.h"
#include "records/kind.h"
#include "records/load.h"
#include "words/advice.h"
#include "words/due.h"

static const char *take(struct due_call *c)
{
	return care_take(c->s, &c->text);
}

static struct ts_water *poured(struct due_call *c)
{
	return c->plan.change_water.reading_count ? &c->plan.change_water : &c->plan.water;
}

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
static enum ts_status load_water(struct due_call *c, const char *file)
{
	struct ts_water water;
	enum ts_status status =
		ts_water_load_from(c->s->system, file, c->s->arena, &water, c->s->findings);

	if (status != TS_OK)
		return status;
	c->r.name = water.name;
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

static enum ts_status load_subject(struct due_call *c, const char *file)
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
		c->r.name = c->plan.tank.name;
		return status;
	}
	if (kind != &ts_shape_plan)
		return refuse_kind(s, file);
	status = ts_plan_load_from(s->system, file, s->arena, &c->plan, s->findings);
	c->r.name = c->plan.name;
	c->has_supply = poured(c)->reading_count > 0;
	return status;
}

/* The water poured in, where the flag names it. */
static enum ts_status load_poured(struct due_call *c)
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

/* Readings and days that lie ahead are no news of today. */
static void leave_ahead(struct due_call *c)
{
	long today = c->s->today, day;
	struct ts_tank *tank = &c->plan.tank;
	size_t ahead = ts_due_leave_ahead(tank->readings, &tank->reading_count, today);

	ahead += ts_due_leave_ahead(c->plan.water.readings, &c->plan.water.reading_count, today);
	ahead += ts_due_leave_ahead(
		c->plan.change_water.readings, &c->plan.change_water.reading_count, today);
	if (ahead) {
		ts_text_number(&c->text, (double)ahead, 0);
		ts_text_put(&c->text, ahead == 1 ? " reading is dated after today and left out: is "
						   "its date right?"
						 : " readings are dated after today and left out: "
						   "are their dates right?");
		care_note(c->s, &c->r.notes, take(c));
	}
	if (tank->running_since && ts_date_read(tank->running_since, &day) && day > today) {
		ts_text_put(&c->text, "The tank is to run from ");
		ts_say_day(&c->text, day, today);
		ts_text_put(&c->text, " on: what was never read waits until then.");
		care_note(c->s, &c->r.notes, take(c));
	}
}

static enum ts_status load(struct due_call *c)
{
	const struct options *o = c->s->options;
	enum ts_status status;

	if (o->argument_count != 1) {
		ts_text_put(c->s->error, "due needs one file: a tank, a plan or a water; for "
					 "example tapshoal due tank.yaml");
		return TS_BAD_INPUT;
	}
	if (strcmp(o->arguments[0], "-") == 0) {
		ts_text_put(c->s->error, "due looks at a file twice and cannot do so with -; give "
					 "its name");
		return TS_BAD_INPUT;
	}
	status = load_subject(c, o->arguments[0]);
	if (!status)
		status = load_poured(c);
	if (!status)
		leave_ahead(c);
	return status;
}

/* The three waters of the tank, with the animals where the plan has any. */
static enum ts_status make_waters(struct due_call *c)
{
	struct session *s = c->s;
	const struct ts_species **species = NULL;
	struct ts_group *groups = ts_arena_array(s->arena, c->plan.stock_count + 1, sizeof *groups);
	struct ts_waters_case asked = {&c->plan, groups, c->plan.stock_count, s->today};
	enum ts_status status = TS_OK;

	c->waters = ts_arena_take(s->arena, sizeof *c->waters);
	if (!groups || !c->waters)
		return TS_NO_MEMORY;
	if (c->plan.stock_count) {
		status = answer_catalogue(s);
		if (!status)
			status = care_plan_species(s, &c->plan, &species);
	}
	if (status == TS_BAD_INPUT && s->error->len) {
		ts_text_puts(&c->text,
			"How long the buffer lasts cannot be said: ", ts_text_get(s->error), NULL);
		care_note(s, &c->r.notes, take(c));
		ts_text_drop(s->error);
		ts_text_open(s->error, NULL);
		ts_waters_now(&c->plan, s->today, s->practice, c->waters);
		return TS_OK;
	}
	if (status)
		return status;
	for (size_t i = 0; i < c->plan.stock_count; i++)
		groups[i] = (struct ts_group){
			.species = species[i], .either = (unsigned)c->plan.stock[i].count};
	ts_waters_make(&asked, s->practice, c->waters);
	return TS_OK;
}

/* How long the buffer lasts from the last reading of KH; NAN: not known, or long. */
static double buffer_days(const struct due_call *c)
{
	double days = c->waters->settled_known ? c->waters->settles.buffer_days.low : (double)NAN;
	bool load = c->plan.stock_count || c->plan.tank.feeding.value > 0;

	return c->has_tank && c->has_supply && load &&
			       days <= c->s->practice->value[TS_P_DUE_BUFFER_AHEAD]
		       ? days
		       : (double)NAN;
}

/* A wish of the flags makes the tank's way to another water part of what is due. */
static enum ts_status ask_remake(struct due_call *c)
{
	const struct options *o = c->s->options;
	enum ts_status status;

	if (!o->to && !o->wished.count)
		return TS_OK;
	if (!c->has_tank || !c->has_supply) {
		ts_text_puts(c->s->error, o->to ? "--to" : "--for",
			c->has_tank ? " needs the water that is poured in; give -w FILE"
				    : " needs a tank or a plan, and the file is a water",
			NULL);
		return TS_BAD_INPUT;
	}
	c->remake = ts_arena_take(c->s->arena, sizeof *c->remake);
	if (!c->remake)
		return TS_NO_MEMORY;
	c->remake->plan = c->plan;
	c->remake->has_plan = true;
	c->remake->answer.water = *poured(c);
	status = remake_ask(c->s, c->remake);
	return status == TS_NO ? TS_OK : status;
}

/* Whether animals live in the tank today. */
static bool has_animals(const struct due_call *c)
{
	for (size_t i = 0; i < c->plan.stock_count; i++) {
		long day;

		if (c->plan.stock[i].since && ts_date_read(c->plan.stock[i].since, &day) &&
			day <= c->s->today)
			return true;
	}
	return c->s->options->with.count > 0;
}

/* A danger or a sign of distress goes before any test, as in check. */
static enum ts_status ask_danger(struct due_call *c)
{
	struct ts_plan_state *state = ts_arena_take(c->s->arena, sizeof *state);
	struct ts_advice *all = ts_arena_array(c->s->arena, TS_ADVICE_MOST, sizeof *all);

	if (!state || !all)
		return TS_NO_MEMORY;
	if (!c->has_tank || !has_animals(c))
		return TS_OK;
	ts_plan_state_make(&c->plan, c->waters, c->s->today, state);
	ts_advise(&state->state, c->s->practice, all);
	if (all[0].row->group != 2 && all[0].row->group != 3)
		return TS_OK;
	ts_say_advice_whole(&c->text, &all[0], NULL);
	c->r.danger = take(c);
	ts_say_advice_because(&c->text, &all[0], NULL);
	c->r.danger_because = take(c);
	return TS_OK;
}

static bool is_remaking(const struct due_call *c)
{
	return c->remake && (c->remake->verdict == TS_VERDICT_STAGES ||
				    c->remake->verdict == TS_VERDICT_TEST_FIRST ||
				    c->remake->verdict == TS_VERDICT_SAFE_FIRST);
}

static enum ts_status fill(struct due_call *c)
{
	struct ts_due_case question = {.plan = c->has_tank ? &c->plan : NULL,
		.supply = c->has_supply ? poured(c) : NULL,
		.today = c->s->today};
	enum ts_status status = make_waters(c);

	if (!status)
		status = ask_remake(c);
	if (!status)
		status = ask_danger(c);
	if (status)
		return status;
	question.buffer_days = buffer_days(c);
	question.remaking = is_remaking(c);
	ts_due_make(&question, c->s->practice, &c->due);
	due_fill(c);
	return TS_OK;
}

enum ts_status command_due(struct session *s)
{
	struct due_call *c = ts_arena_take(s->arena, sizeof *c);
	enum ts_status status;
	bool nothing;

	if (!c)
		return TS_NO_MEMORY;
	c->s = s;
	ts_text_open(&c->text, &s->arena->allocator);
	status = load(c);
	if (!status)
		status = fill(c);
	s->arena->failed |= c->text.failed;
	ts_text_drop(&c->text);
	if (status)
		return status;
	if (s->options->format == FORMAT_JSON)
		session_json(s, "due", &ts_result_due, &c->r);
	else if (s->options->format == FORMAT_ICS)
		due_calendar(s, &c->r);
	else
		due_write(s, &c->r);
	nothing = c->r.verdict == ts_due_verdict_words[3];
	return nothing ? TS_OK : TS_NO;
}
