/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The list of a check: what the rules say of the plan, then the advice on what lives there already,
 * in one order. Of one thing one voice speaks: where advice and a rule are about the same, the
 * advice stands, since it knows what to do first.
 */
#include "answers/check_parts.h"

#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "stock/mending.h"
#include "stock/rules.h"
#include "words/rulings.h"

/* Advice and the rules that are about the same. */
static const struct {
	const char *advice; /* the beginning of its id */
	enum ts_rule_id rule;
} same[] = {
	{"now.crash", TS_RULE_AMMONIA},
	{"now.ammonia", TS_RULE_AMMONIA},
	{"now.nitrite", TS_RULE_NITRITE},
	{"now.ammonia", TS_RULE_FILTER},
	{"now.nitrite", TS_RULE_FILTER},
	{"now.", TS_RULE_DISTRESS},
	{"now.ammonia", TS_RULE_NITRITE},
	{"now.nitrite", TS_RULE_AMMONIA},
	{"now.crash", TS_RULE_NITRITE},
	{"now.crash", TS_RULE_NITRATE},
	{"now.crash", TS_RULE_FILTER},
	{"now.crash", TS_RULE_BUFFER},
	{"now.chlorine", TS_RULE_CHLORINE},
	{"now.oxygen", TS_RULE_OXYGEN},
	{"oxygen.short", TS_RULE_OXYGEN},
	{"filter.reading", TS_RULE_AMMONIA},
	{"filter.reading", TS_RULE_NITRITE},
	{"filter.reading", TS_RULE_FILTER},
	{"filter.maturing", TS_RULE_AMMONIA},
	{"filter.maturing", TS_RULE_NITRITE},
	{"filter.unready", TS_RULE_FILTER},
	{"filter.unready", TS_RULE_FILTER_UNKNOWN},
	{"vet.", TS_RULE_DISTRESS},
	{"filter.reading", TS_RULE_DISTRESS},
	{"oxygen.short", TS_RULE_DISTRESS},
	{"buffer.gone", TS_RULE_DISTRESS},
	{"stock.temperature", TS_RULE_DISTRESS},
	{"now.gasping", TS_RULE_OXYGEN},
	{"now.gasping", TS_RULE_UNTESTED},
	{"old-tank", TS_RULE_NITRATE_LOAD},
	{"buffer.gone", TS_RULE_NITRATE_LOAD},
	{"vet.floating", TS_RULE_NITRATE_LOAD},
	{"now.heat", TS_RULE_WARM_OXYGEN},
	{"now.heat", TS_RULE_OXYGEN},
	{"old-tank", TS_RULE_AMMONIA},
	{"old-tank", TS_RULE_NITRITE},
	{"old-tank", TS_RULE_NITRATE},
	{"old-tank", TS_RULE_BUFFER},
	{"old-tank", TS_RULE_FILTER},
	{"old-tank", TS_RULE_DISTRESS},
	{"old-tank", TS_RULE_UNTESTED},
	{"apart.kh", TS_RULE_NITRATE},
	{"apart.kh", TS_RULE_NITRATE_LOAD},
	{"apart.kh", TS_RULE_BUFFER},
	{"apart.kh", TS_RULE_DISTRESS},
	{"apart.no3", TS_RULE_NITRATE},
	{"nitrate.high", TS_RULE_NITRATE},
	{"apart.bare", TS_RULE_BUFFER},
	{"leave.acid-bed", TS_RULE_BUFFER},
	{"stock.stay", TS_RULE_WATER_UNSURE},
	{"apart.softened", TS_RULE_DISTRESS},
	{"buffer.between", TS_RULE_NITRATE},
	{"buffer.between", TS_RULE_NITRATE_LOAD},
	{"buffer.", TS_RULE_BUFFER},
	{"buffer.", TS_RULE_BUFFER_OPEN},
	{"seen.cloudy", TS_RULE_UNTESTED},
	{"seen.smell", TS_RULE_UNTESTED},
	{"ask.kh", TS_RULE_KH_UNKNOWN},
	{"leave.untested", TS_RULE_UNTESTED},
	{"leave.ph-untested", TS_RULE_UNTESTED},
	{"leave.ph-young", TS_RULE_UNTESTED},
};

static bool begins(const char *id, const char *beginning)
{
	return strncmp(id, beginning, strlen(beginning)) == 0;
}

/* How grave advice is; groups of care/advice_rows.c. */
static enum ts_severity of_advice(const struct ts_advice_row *row)
{
	switch (row->group) {
	case 1:
		return TS_QUESTION;
	case 2:
		return TS_CONFLICT;
	case 3:
		return TS_CONCERN;
	default:
		return row->group >= 8 || row->urgency == TS_AT_LEISURE ? TS_NOTE : TS_CONCERN;
	}
}

/* Asks what the advice would: then the question stays a question, whatever is advised. */
static bool asks(const struct ts_check_work *w, const struct ts_advice_row *row)
{
	if (strcmp(row->id, "filter.unready") == 0)
		return w->question->plan->tank.filter == TS_FILTER_UNKNOWN;
	return strcmp(row->id, "leave.untested") == 0 || strcmp(row->id, "leave.ph-untested") == 0;
}

bool ts_check_held(const struct ts_check_work *w)
{
	return w->advice_count && w->advice[0].row->group >= 2 && w->advice[0].row->group <= 5;
}

bool ts_check_filter_first(const struct ts_check_work *w)
{
	return !w->question->plan->stock_count && w->question->plan->tank.filter == TS_FILTER_NEW;
}

bool ts_check_unwell(const struct ts_check_work *w)
{
	return ts_plan_unwell(w->question->plan);
}

/* Nobody lives there yet, and ammonia or nitrite was read: advice knows what that is. */
static bool is_maturing(const struct ts_check_work *w)
{
	const struct ts_now *log = &w->check.waters->log;

	return ts_now_figure(log, TS_NOW_TAN) > 0 || ts_now_figure(log, TS_NOW_NO2) > 0;
}

bool ts_check_all_well(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.group_count; i++) {
		if (!w->check.groups[i].well)
			return false;
	}
	return w->check.group_count > 0 && !w->check.planned_groups;
}

bool ts_check_in_time(const struct ts_check_work *w, const struct ts_ruling *r)
{
	const struct ts_plan_group *g = r ? ts_check_group_of(&w->check, r->subject) : NULL;

	return r && ts_ruling_topic(r) == TS_TOPIC_ROOM && ts_check_all_well(w) &&
	       !(g && ts_check_far_too_small(w, &g->group));
}

/* A fault that is more than a tank that will do no longer, one day, for those who are well in it.
 */
static bool faulty_now(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (r->severity == TS_CONFLICT && !ts_check_in_time(w, r))
			return true;
	}
	return false;
}

/* What lives in the tank already, against the tank's own water; then what to do about it. */
/* Signs, deaths and what happened are of a tank with animals, named or not. */
static bool told_of_tank(const struct ts_plan *plan, const struct ts_plan_state *state)
{
	return plan->tank.reading_count || plan->sign_count || plan->deaths.value > 0 ||
	       state->state.happened || state->state.filter_stands;
}

static bool all_there(const struct ts_plan *plan)
{
	for (size_t i = 0; i < plan->stock_count; i++) {
		if (!ts_in_tank(&plan->stock[i]))
			return false;
	}
	return true;
}

bool ts_check_advise(struct ts_check_work *w)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_plan_state *state = ts_arena_take(w->asking->arena, sizeof *state);
	struct ts_match *residents =
		ts_arena_array(w->asking->arena, plan->stock_count + 1, sizeof *residents);
	struct ts_keeping keeping = {.temperature = plan->tank.temp_c};
	struct ts_profile now = w->check.waters->now;
	size_t count = 0;

	if (!state || !residents)
		return false;
	ts_plan_state_make(plan, w->check.waters, w->asking->today, state);
	w->happened = state->state.happened;
	w->filter_stands = state->state.filter_stands;
	/* What is advised on a pH is of one that was read. */
	now.at[TS_PH].given &= !isnan(now.ph_read);
	for (size_t i = 0; i < plan->stock_count; i++) {
		if (!w->question->species[i] || !ts_in_tank(&plan->stock[i]))
			continue;
		if (state->ill_line == (int)i)
			state->state.ill = (int)count;
		keeping.wild = plan->stock[i].origin == TS_ORIGIN_WILD;
		ts_match_species(w->question->species[i], &now, &keeping, w->asking->practice,
			&residents[count++]);
	}
	/* What is to be done at once hangs on no name. */
	if (!count && !is_maturing(w) && !(told_of_tank(plan, state) && all_there(plan)))
		return true;
	ts_plan_state_residents(state, residents, count);
	state->state.at_fault = faulty_now(w);
	w->residents = residents;
	w->advice_count = ts_advise(&state->state, w->asking->practice, w->advice);
	return true;
}

static bool resident_out(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (r->rule == TS_RULE_WATER && r->severity >= TS_CONCERN)
			return true;
	}
	return false;
}

/* Somebody who lives there is to find another home for the water. */
static bool sent_away(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (r->remedy.kind == TS_REMEDY_OTHER_HOME && ts_ruling_topic(r) == TS_TOPIC_WATER)
			return true;
	}
	return false;
}

/* So much nitrate was read that it is to be brought down. */
static bool waste_read(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (r->rule == TS_RULE_NITRATE && r->severity >= TS_CONCERN)
			return true;
	}
	return false;
}

/* Something is to be done about the water now: then it is not left alone. */
static bool acted_upon(const struct ts_check_work *w)
{
	if (waste_read(w))
		return true;
	for (size_t i = 0; i < w->advice_count; i++) {
		const struct ts_advice_row *row = w->advice[i].row;

		if (row->group >= 2 && row->group <= 6 && row->urgency != TS_AT_LEISURE &&
			row->outcome != TS_LEAVE_ALONE)
			return true;
	}
	return false;
}

/* The rules ask for the filter. */
static bool filter_asked(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.count; i++) {
		if (w->check.rulings[i].rule == TS_RULE_FILTER_UNKNOWN)
			return true;
	}
	return false;
}

/* Less water is changed than the file says, and it shows: that is not left alone. */
static bool let_slip(const struct ts_check_work *w)
{
	bool shows = false;

	for (size_t i = 0; i < w->check.count; i++)
		shows |= w->check.rulings[i].severity >= TS_CONCERN;
	return shows && ts_learned_less_is_changed(w->question->plan);
}

/* Advice that would contradict the list, or say again what it says. */
static bool superseded(const struct ts_check_work *w, const struct ts_advice_row *row, bool crash)
{
	bool unsound = faulty_now(w);

	if (begins(row->id, "stock.temperature"))
		return false;
	/* A tank in which animals live is no new one, as long as nobody says so. */
	if (begins(row->id, "filter.unready") && w->check.living_groups &&
		w->question->plan->tank.filter == TS_FILTER_UNKNOWN && !filter_asked(w))
		return true;
	/* The list knows which mineral mends it; "leave alone" is no word beside a fault. */
	if (begins(row->id, "stock."))
		return resident_out(w);
	/* Half a tank of harder water over a lost buffer kills: whatever else is read, slowly. */
	if (crash && begins(row->id, "now.nitrite"))
		return true;
	return row->group >= 8 && row->group <= 10 &&
	       (unsound || sent_away(w) || acted_upon(w) || let_slip(w));
}

/* A pH that light swings up by day is no fault of the water. */
static bool of_light(const struct ts_check_work *w, const struct ts_ruling *r)
{
	bool of_ph =
		(r->rule == TS_RULE_WATER || r->rule == TS_RULE_WATER_UNSURE) && r->word == TS_PH;

	for (size_t i = 0; of_ph && i < w->advice_count; i++) {
		if (begins(w->advice[i].row->id, "light.swing"))
			return true;
	}
	return false;
}

bool ts_check_lives(const struct ts_check_work *w, const struct ts_species *species)
{
	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];

		if (g->group.species == species)
			return g->planned < ts_group_count(&g->group);
	}
	return false;
}

/* What advice on the tank mends for those who live there. */
static const struct {
	const char *advice;
	unsigned parameters; /* bits of enum ts_parameter */
} of_water[] = {
	{"now.heat", 1u << TS_TEMPERATURE},
	{"now.cold", 1u << TS_TEMPERATURE},
	{"stock.temperature", 1u << TS_TEMPERATURE},
	{"now.crash", 1u << TS_GH | 1u << TS_KH | 1u << TS_PH},
	{"old-tank", 1u << TS_GH | 1u << TS_KH | 1u << TS_PH},
	{"apart.kh", 1u << TS_GH | 1u << TS_KH | 1u << TS_PH},
	{"apart.gh", 1u << TS_GH},
	{"buffer.gone", 1u << TS_GH | 1u << TS_KH | 1u << TS_PH},
	{"vet.minerals", 1u << TS_GH | 1u << TS_KH},
	{"apart.blend", 1u << TS_GH | 1u << TS_KH},
};

/* What is done about a poison or the warmth is advised of the tank, not of one animal. */
static bool of_now(
	const struct ts_check_work *w, const struct ts_advice_row *row, const struct ts_ruling *r)
{
	bool water = r->rule == TS_RULE_WATER || r->rule == TS_RULE_WATER_UNSURE;
	const char *id = row->id;

	if (!water || !r->match || !ts_check_lives(w, r->subject))
		return false;
	if (!isnan(r->match->copper_borne_mg_l))
		return begins(id, "now.copper");
	for (size_t i = 0; r->word >= 0 && i < sizeof of_water / sizeof *of_water; i++) {
		if (begins(id, of_water[i].advice) && of_water[i].parameters >> r->word & 1)
			return true;
	}
	return false;
}

/* Nobody is told to buy more, or how many there will be, while something is to be made safe. */
static bool of_numbers(struct ts_check_work *w, const struct ts_ruling *r)
{
	bool more =
		r->rule == TS_RULE_UNSETTLED || r->rule == TS_RULE_YOUNG || r->rule == TS_RULE_FEW;

	/* More of them where the tank has no room for more would be another fault. */
	if (r->rule == TS_RULE_FEW && r->severity == TS_NOTE &&
		!ts_check_more_fit(w, r->subject, r->change))
		return true;
	return more && r->severity == TS_NOTE &&
	       (ts_check_held(w) || ts_check_unwell(w) || waste_read(w));
}

/* The advice is about a filter that does not run. */
static bool filter_stands(const struct ts_check_work *w)
{
	const struct ts_advice_row *row = w->advice_count ? w->advice[0].row : NULL;

	return row && row->group == 4 && row->urgency == TS_NOW;
}

/*
 * While those that live there are in danger or ill, nothing is said of how the tank is stocked: of
 * its room never, of who goes with whom where the water, and no neighbour, is the cause.
 */
static bool of_stocking(const struct ts_check_work *w, const struct ts_ruling *r)
{
	int group = w->advice_count ? w->advice[0].row->group : 0;
	bool room = ts_rule_of_room(r->rule) || r->rule == TS_RULE_TANK_UNMEASURED ||
		    r->rule == TS_RULE_TANK_UNKNOWN;

	if (r->rule == TS_RULE_ELECTRIC || w->check.planned_groups ||
		!(group == 2 || filter_stands(w) || (group == 3 && ts_check_unwell(w))))
		return false;
	return room || ((group == 2 || filter_stands(w)) && ts_ruling_topic(r) == TS_TOPIC_COMPANY);
}

/* Who has lived together for long and is well is told no more of how they may be kept. */
static bool of_settled(const struct ts_check_work *w, const struct ts_ruling *r)
{
	int topic = (int)ts_ruling_topic(r);

	return r->severity == TS_NOTE && topic != TS_TOPIC_WATER && topic != TS_TOPIC_WASTE &&
	       topic != TS_TOPIC_TEMPERATURE && ts_check_all_well(w);
}

/* The way back to the file's changes mends it, and is told with its figures. */
static bool of_routine(const struct ts_check_work *w, const struct ts_ruling *r)
{
	const struct ts_span *kh;

	if (!w->check.waters || !let_slip(w))
		return false;
	kh = &w->check.waters->poured.at[TS_KH];
	if (r->rule == TS_RULE_NITRATE_LOAD || r->rule == TS_RULE_BUFFER)
		return true;
	return r->rule == TS_RULE_WATER && r->match && r->word == TS_KH && kh->given &&
	       r->match->at[TS_KH].uncomfortable_by < 0 &&
	       kh->value >= r->match->at[TS_KH].preferred.low;
}

static bool spoken_for(struct ts_check_work *w, const struct ts_ruling *r)
{
	if (of_routine(w, r))
		return true;
	if (of_light(w, r) || of_numbers(w, r) || of_stocking(w, r) || of_settled(w, r))
		return true;
	for (size_t i = 0; i < w->advice_count; i++) {
		if (of_now(w, w->advice[i].row, r))
			return true;
	}
	for (size_t k = 0; k < sizeof same / sizeof *same; k++) {
		if (same[k].rule != r->rule)
			continue;
		for (size_t i = 0; i < w->advice_count; i++) {
			if (begins(w->advice[i].row->id, same[k].advice))
				return true;
		}
	}
	return false;
}

/* Nobody is sent away for what the advice on the tank mends. */
static void leave_repair(struct ts_check_work *w)
{
	struct ts_ruling *kept =
		ts_arena_array(w->asking->arena, w->check.repair_count + 1, sizeof *kept);
	size_t count = 0;

	for (size_t i = 0; kept && i < w->check.repair_count; i++) {
		if (!spoken_for(w, &w->check.repair[i]))
			kept[count++] = w->check.repair[i];
	}
	w->check.repair = kept;
	w->check.repair_count = count;
}

static int compare(const void *a, const void *b)
{
	const struct ts_check_entry *x = a, *y = b;
	int by = (int)y->severity - (int)x->severity;

	if (by)
		return by;
	/* Danger first of its like, other advice behind the rules. */
	if (!x->ruling != !y->ruling) {
		const struct ts_advice_row *row = (x->ruling ? y : x)->advice->row;

		return (row->group <= 4 || x->severity == TS_NOTE) == !x->ruling ? -1 : 1;
	}
	if (x->ruling)
		return x->ruling < y->ruling ? -1 : 1;
	return x->advice < y->advice ? -1 : 1;
}

/* As grave as the gravest rule for which it speaks. */
static enum ts_severity raised(
	const struct ts_check_work *w, const struct ts_advice_row *row, enum ts_severity severity)
{
	for (size_t k = 0; k < sizeof same / sizeof *same; k++) {
		for (size_t i = 0; begins(row->id, same[k].advice) && i < w->check.count; i++) {
			if (w->check.rulings[i].rule == same[k].rule &&
				w->check.rulings[i].severity > severity)
				severity = w->check.rulings[i].severity;
		}
	}
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (of_now(w, row, r) && r->severity > severity)
			severity = r->severity;
	}
	return severity;
}

bool ts_check_gather(struct ts_check_work *w)
{
	size_t most = w->check.count + w->advice_count + 1, kept = 0;
	bool crash = false;

	for (size_t i = 0; i < w->advice_count; i++)
		crash |= begins(w->advice[i].row->id, "now.crash");
	for (size_t i = 0; i < w->advice_count; i++) {
		if (!superseded(w, w->advice[i].row, crash))
			w->advice[kept++] = w->advice[i];
	}
	w->advice_count = kept;
	leave_repair(w);
	w->entries = ts_arena_array(w->asking->arena, most, sizeof *w->entries);
	if (!w->entries)
		return false;
	for (size_t i = 0; i < w->check.count; i++) {
		if (!spoken_for(w, &w->check.rulings[i]))
			w->entries[w->entry_count++] = (struct ts_check_entry){
				w->check.rulings[i].severity, &w->check.rulings[i], NULL};
	}
	for (size_t i = 0; i < w->advice_count; i++) {
		const struct ts_advice_row *row = w->advice[i].row;

		w->entries[w->entry_count++] = (struct ts_check_entry){
			raised(w, row, asks(w, row) ? TS_QUESTION : of_advice(row)), NULL,
			&w->advice[i]};
	}
	if (w->entry_count)
		qsort(w->entries, w->entry_count, sizeof *w->entries, compare);
	return true;
}
