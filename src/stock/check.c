/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The plan as a whole. Judgements are collected and put in their order; the verdict is the gravest.
 * What is not known is a question and what is assumed no fault. Who finds them: judging.h; what
 * mends them: repair.c.
 */
#include "stock/judging.h"
#include "stock/room.h"

#include <stdlib.h>
#include <string.h>

#include "base/arena.h"

/* What the numbers of a rule of the whole plan are, where nothing else is said. */
static enum ts_rests rests_of(enum ts_rule_id rule)
{
	switch (rule) {
	case TS_RULE_AMMONIA:
	case TS_RULE_CHLORINE:
	case TS_RULE_DISTRESS:
	case TS_RULE_NITRATE:
	case TS_RULE_NITRITE:
	case TS_RULE_OXYGEN:
	case TS_RULE_WATER:
	case TS_RULE_WATER_UNSURE:
		return TS_RESTS_READ;
	case TS_RULE_BUFFER:
	case TS_RULE_CROWDED:
	case TS_RULE_FLOOR:
	case TS_RULE_NITRATE_LOAD:
	case TS_RULE_WARM_OXYGEN:
		return TS_RESTS_COMPUTED;
	case TS_RULE_BUFFER_OPEN:
	case TS_RULE_COUNT_ASSUMED:
	case TS_RULE_NITRATE_OPEN:
	case TS_RULE_SIDES_ASSUMED:
		return TS_RESTS_ASSUMED;
	case TS_RULE_EMPTY:
	case TS_RULE_FILTER_UNKNOWN:
	case TS_RULE_KH_UNKNOWN:
	case TS_RULE_TANK_UNKNOWN:
	case TS_RULE_TEMPERATURE_UNKNOWN:
	case TS_RULE_UNKNOWN_SPECIES:
	case TS_RULE_UNTESTED:
	case TS_RULE_WATER_UNKNOWN:
		return TS_RESTS_NOT_KNOWN;
	default:
		return TS_RESTS_RECORDS;
	}
}

struct ts_ruling *ts_judging_say(struct ts_judging *w, enum ts_rule_id rule,
	enum ts_severity severity, double ours, double its)
{
	struct ts_check *c = w->out;
	struct ts_ruling *moved =
		ts_arena_grow(w->arena, c->rulings, c->count, &w->room, sizeof *c->rulings);

	if (!moved)
		return NULL;
	c->rulings = moved;
	c->rulings[c->count] = (struct ts_ruling){.rule = rule,
		.severity = severity,
		.rests = rests_of(rule),
		.ours = ours,
		.its = its,
		.change = (double)NAN};
	return &c->rulings[c->count++];
}

bool ts_ruling_too_salty(const struct ts_ruling *r)
{
	return r->rule == TS_RULE_WATER && r->match && r->word == TS_SALINITY &&
	       r->match->at[TS_SALINITY].uncomfortable_by > 0;
}

enum ts_rule_topic ts_ruling_topic(const struct ts_ruling *r)
{
	bool of_water = r->rule == TS_RULE_WATER || r->rule == TS_RULE_WATER_UNSURE;

	return of_water && r->word == TS_TEMPERATURE ? TS_TOPIC_TEMPERATURE
						     : ts_rule_rows[r->rule].topic;
}

static const char *name_of(const struct ts_species *s)
{
	return s ? s->species : "";
}

static int compare(const void *a, const void *b)
{
	const struct ts_ruling *x = a, *y = b;
	int by;

	if (x->severity != y->severity)
		return x->severity > y->severity ? -1 : 1;
	by = (int)ts_ruling_topic(x) - (int)ts_ruling_topic(y);
	if (!by) /* what two have against each other before what is wrong with one */
		by = (int)!x->other - (int)!y->other;
	if (!by && ts_rule_of_room(x->rule) && ts_rule_of_room(y->rule))
		by = (int)!x->subject - (int)!y->subject; /* too small for one before for all */
	if (!by)
		by = (int)x->rule - (int)y->rule;
	if (!by)
		by = strcmp(name_of(x->subject), name_of(y->subject));
	if (!by)
		by = strcmp(name_of(x->other), name_of(y->other));
	return by ? by : strcmp(x->name ? x->name : "", y->name ? y->name : "");
}

enum ts_plan_verdict ts_check_verdict(const struct ts_check *c)
{
	static const enum ts_plan_verdict of[] = {[TS_NOTE] = TS_PLAN_SOUND,
		[TS_QUESTION] = TS_PLAN_ASKS,
		[TS_CONCERN] = TS_PLAN_SOUND_IF,
		[TS_CONFLICT] = TS_PLAN_UNSOUND};

	return c->count ? of[c->rulings[0].severity] : TS_PLAN_SOUND;
}

void ts_check_sort(struct ts_check *c)
{
	if (c->count)
		qsort(c->rulings, c->count, sizeof *c->rulings, compare);
	c->verdict = ts_check_verdict(c);
}

enum ts_status ts_check_faults(const struct ts_plan *plan, const struct ts_species *const *species,
	long today, const struct ts_practice *practice, const struct ts_check *before,
	struct ts_arena *arena, struct ts_check *ret)
{
	struct ts_practice own;
	struct ts_check check = {.verdict = TS_PLAN_ASKS, .of_plan = plan, .of_line = species};
	struct ts_judging w = {.plan = plan,
		.practice = practice,
		.today = today,
		.before = before,
		.arena = arena,
		.out = &check};

	ts_practice_defaults(&own);
	if (!practice)
		w.practice = &own;
	ts_judge_groups(&w, species);
	if (arena->failed)
		return TS_NO_MEMORY;
	ts_judge_waters(&w);
	if (arena->failed)
		return TS_NO_MEMORY;
	ts_judge_matches(&w);
	ts_judge_tank(&w);
	ts_judge_company(&w);
	check.answered = !w.cannot;
	ts_check_sort(&check);
	if (arena->failed)
		return TS_NO_MEMORY;
	*ret = check;
	return TS_OK;
}

/*
 * Of a tank only the litres are given, and no tank of so many would hold all of them. It is said
 * where nothing of one animal's room is a no already.
 */
static void judge_litres(const struct ts_plan *plan, const struct ts_practice *practice,
	struct ts_arena *arena, struct ts_check *io)
{
	/* A tank of the length that it takes may be slimmer than the smallest that is looked for.
	 */
	double ours = plan->tank.volume_l;
	double its = fmin(io->smallest.volume_l, ts_room_usual_litres(io->smallest.length_cm));
	struct ts_ruling *moved;

	if (plan->tank.length_cm > 0 || !(ours > 0) ||
		ours >= its * practice->value[TS_P_ROOM_CONFLICT])
		return;
	for (size_t i = 0; i < io->count; i++) {
		const struct ts_ruling *r = &io->rulings[i];

		if (r->severity == TS_CONFLICT && ts_rule_rows[r->rule].topic == TS_TOPIC_ROOM)
			return;
	}
	moved = ts_arena_array(arena, io->count + 1, sizeof *moved);
	if (!moved)
		return;
	for (size_t i = 0; i < io->count; i++)
		moved[i] = io->rulings[i];
	moved[io->count] = (struct ts_ruling){.rule = TS_RULE_LITRES,
		.severity = TS_CONFLICT,
		.rests = TS_RESTS_COMPUTED,
		.ours = ours,
		.its = its,
		.change = (double)NAN};
	io->rulings = moved;
	io->count++;
	ts_check_sort(io);
}

enum ts_status ts_check_plan(const struct ts_plan *plan, const struct ts_species *const *species,
	long today, const struct ts_practice *practice, struct ts_arena *arena,
	struct ts_check *ret)
{
	struct ts_practice own;
	struct ts_check check;
	enum ts_status status;

	ts_practice_defaults(&own);
	practice = practice ? practice : &own;
	status = ts_check_faults(plan, species, today, practice, NULL, arena, &check);
	if (status)
		return status;
	ts_check_shared_water(&check);
	if (check.group_count <= TS_REMEDIES_TRIED)
		ts_check_smallest_tank(plan, practice, &check, &check.smallest);
	judge_litres(plan, practice, arena, &check);
	ts_check_remedies(plan, today, practice, arena, &check);
	ts_check_sort(&check);
	if (check.count > TS_CHECK_MOST) {
		check.more = check.count - TS_CHECK_MOST;
		check.count = TS_CHECK_MOST;
	}
	if (arena->failed)
		return TS_NO_MEMORY;
	*ret = check;
	return TS_OK;
}
