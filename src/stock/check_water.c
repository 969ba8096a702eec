/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The water of the plan: what the animals live in now, what is poured in, where it goes, and how it
 * suits each of them. Who is only planned will live in what the tank settles at.
 */
#include "stock/judging.h"

#include "base/arena.h"
#include "base/date.h"

/* The load where a routine that is not given is a good one. */
static void best_load(struct ts_judging *w, const struct ts_waters_case *asked)
{
	const struct ts_waters *waters = w->out->waters;
	struct ts_tank tank = w->plan->tank;
	struct ts_load_case good = {.groups = asked->groups,
		.count = asked->group_count,
		.tank = &tank,
		.temp_c = (double)NAN,
		.kh_dh = (double)NAN,
		.kh_new_dh = (double)NAN,
		.no3_new_mg_l = waters->poured.poisons.no3_mg_l};

	if (!(tank.water_change.days > 0))
		tank.water_change = (struct ts_every){
			w->practice->value[TS_P_CHANGE_GOOD], w->practice->value[TS_P_CHANGE_DAYS]};
	if (waters->now.at[TS_TEMPERATURE].given)
		good.temp_c = waters->now.at[TS_TEMPERATURE].value;
	if (waters->now.at[TS_KH].given)
		good.kh_dh = waters->now.at[TS_KH].value;
	if (waters->poured.at[TS_KH].given)
		good.kh_new_dh = waters->poured.at[TS_KH].value;
	if (ts_load_of(&good, w->practice, &w->best) != TS_OK)
		w->best = w->out->load;
}

/* What the animals live in, what is poured in and where it goes: one function for every answer. */
void ts_judge_waters(struct ts_judging *w)
{
	const struct ts_plan *p = w->plan;
	struct ts_group *groups = ts_arena_array(w->arena, w->out->group_count + 1, sizeof *groups);
	struct ts_waters *waters = ts_arena_take(w->arena, sizeof *waters);
	const struct ts_waters_case asked = {p, groups, w->out->group_count, w->today};

	if (!groups || !waters)
		return;
	for (size_t i = 0; i < w->out->group_count; i++)
		groups[i] = w->out->groups[i].group;
	ts_waters_make(&asked, w->practice, waters);
	w->out->waters = waters;
	w->out->profile = waters->now;
	w->out->load = waters->load;
	w->out->load_known = waters->load_known;
	w->out->water_known = waters->log.read || ts_plan_poured(p)->reading_count;
	best_load(w, &asked);
	if (!w->out->water_known) {
		ts_judging_say(w, TS_RULE_WATER_UNKNOWN, TS_QUESTION, (double)NAN, (double)NAN);
		w->cannot = true;
	}
	if (!w->out->profile.at[TS_TEMPERATURE].given && w->out->group_count) {
		ts_judging_say(
			w, TS_RULE_TEMPERATURE_UNKNOWN, TS_QUESTION, (double)NAN, (double)NAN);
		w->cannot = true;
	}
}

/* The parameter that decides against the animal. */
static int deciding(const struct ts_match *m)
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (m->at[p].known && m->at[p].verdict == m->verdict && m->verdict >= TS_UNSURE &&
			p != TS_PH)
			return p;
	}
	return m->limiting;
}

/* Only the pH is beyond: it is the result of the minerals, and by itself decides nothing. */
static bool ph_alone(const struct ts_match *m)
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (p != TS_PH && m->at[p].known && m->at[p].verdict == TS_EXCLUDED)
			return false;
	}
	return m->verdict == TS_EXCLUDED && isnan(m->copper_borne_mg_l);
}

/* Who has lived there for eight weeks without a sign or a death proves that the water is borne. */
bool ts_lived_well(const struct ts_judging *w, const struct ts_plan_group *g)
{
	const struct ts_plan *p = w->plan;
	bool long_enough = false;
	long since;

	if (p->sign_count || p->deaths.value > 0 || g->planned)
		return false;
	for (size_t i = 0; i < p->stock_count; i++) {
		if (w->out->of_line[i] == g->group.species && p->stock[i].since && w->today >= 0 &&
			ts_date_read(p->stock[i].since, &since))
			long_enough |=
				(double)(w->today - since) >= w->practice->value[TS_P_SETTLED_DAYS];
	}
	return long_enough;
}

/* How grave it is that the water is not the animal's own; unsure and worse never pass. */
static enum ts_severity of_match(struct ts_judging *w, const struct ts_plan_group *g)
{
	const struct ts_match *m = &g->match;
	const struct ts_profile *profile = &w->out->profile;
	bool minerals = profile->at[TS_GH].given && profile->at[TS_KH].given;

	if (m->verdict < TS_UNSURE)
		return TS_NOTE;
	if (!m->gh_missing && ts_lived_well(w, g))
		return ph_alone(m) ? TS_NOTE : TS_CONCERN;
	if (m->verdict == TS_EXCLUDED && !ph_alone(m))
		return TS_CONFLICT;
	w->cannot = true;
	return m->gh_missing || (ph_alone(m) && !minerals) ? TS_QUESTION : TS_CONCERN;
}

/* Who is only planned will live in what the tank settles at, where the tank has been read. */
static bool will_live_in_settled(const struct ts_judging *w, const struct ts_plan_group *g)
{
	const struct ts_waters *waters = w->out->waters;

	return g->planned == ts_group_count(&g->group) && waters->log.read && waters->settled_known;
}

static double mineral(const struct ts_profile *p, enum ts_parameter parameter)
{
	return p->at[parameter].given ? p->at[parameter].value : (double)NAN;
}

static void match_group(struct ts_judging *w, struct ts_plan_group *g)
{
	struct ts_keeping keeping = {.wild = g->wild, .temperature = w->plan->tank.temp_c};
	struct ts_profile profile = w->out->profile;
	struct ts_ruling *r;
	enum ts_severity severity;
	enum ts_rule_id rule = TS_RULE_WATER;
	bool in_settled;

	/* These are said of the whole tank, once. */
	profile.poisons.found &= ~(unsigned)(TS_POISON_AMMONIA | TS_POISON_NITRITE);
	profile.poisons.oxygen_mg_l = (double)NAN;
	ts_match_species(g->group.species, &profile, &keeping, w->practice, &g->match);
	in_settled = will_live_in_settled(w, g);
	if (in_settled) {
		struct ts_match later;

		profile = w->out->waters->settled;
		profile.poisons = w->out->profile.poisons;
		profile.poisons.found &= ~(unsigned)(TS_POISON_AMMONIA | TS_POISON_NITRITE);
		profile.poisons.oxygen_mg_l = (double)NAN;
		ts_match_species(g->group.species, &profile, &keeping, w->practice, &later);
		in_settled = later.verdict > g->match.verdict;
		if (in_settled)
			g->match = later;
	}
	if (!w->out->water_known || g->match.verdict == TS_SUITS ||
		(g->match.verdict == TS_TOLERATES && g->match.limiting < 0))
		return;
	severity = of_match(w, g);
	if ((g->match.verdict == TS_UNSURE || ph_alone(&g->match)) &&
		(g->match.gh_missing || !ts_lived_well(w, g)))
		rule = TS_RULE_WATER_UNSURE;
	r = ts_judging_say(w, rule, severity, (double)NAN, (double)NAN);
	if (!r)
		return;
	r->subject = g->group.species;
	r->match = &g->match;
	r->rests = in_settled ? TS_RESTS_COMPUTED : TS_RESTS_READ;
	r->word = deciding(&g->match);
	r->ours = w->out->profile.poisons.copper_mg_l;
	if (!in_settled)
		return;
	r->ours = mineral(&w->out->waters->poured, TS_GH);
	r->its = mineral(&w->out->waters->poured, TS_KH);
}

void ts_judge_matches(struct ts_judging *w)
{
	for (size_t i = 0; i < w->out->group_count; i++)
		match_group(w, &w->out->groups[i]);
}
