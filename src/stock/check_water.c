/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The water of the plan: what the animals live in now, what is poured in, where it goes, and how it
 * suits each of them. Who is only planned will live in what the tank settles at.
 */
#include "stock/judging.h"

#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/number.h"
#include "stock/past.h"
#include "water/contents.h"

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
		.no3_new_mg_l = waters->poured.poisons.no3_mg_l,
		.measured_no3_rise_mg_l_week =
			waters->measured.value > 0 ? &waters->measured : NULL,
		.measured_times = waters->measured_times};

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

/* Whether what is read of the two, and what is poured in, is the same to the letter. */
static bool same_water(const struct ts_plan *a, const struct ts_plan *b)
{
	const struct ts_water *x = ts_plan_poured(a), *y = ts_plan_poured(b);

	return a->tank.readings == b->tank.readings &&
	       a->tank.reading_count == b->tank.reading_count &&
	       a->tank.substrate == b->tank.substrate &&
	       memcmp(&a->tank.temp_c, &b->tank.temp_c, sizeof a->tank.temp_c) == 0 &&
	       x->readings == y->readings && x->reading_count == y->reading_count &&
	       x->kind == y->kind && x->softened == y->softened &&
	       x->disinfectant == y->disinfectant;
}

/* What is known before any animal is looked at; NULL: no memory, which the arena keeps. */
static const struct ts_waters *as_read(struct ts_judging *w)
{
	struct ts_waters *now;

	if (w->before && same_water(w->plan, w->before->of_plan))
		return w->before->as_read;
	now = ts_arena_take(w->arena, sizeof *now);
	if (now)
		ts_waters_now(w->plan, w->today, w->practice, now);
	return now;
}

/* What the animals live in, what is poured in and where it goes: one function for every answer. */
void ts_judge_waters(struct ts_judging *w)
{
	const struct ts_plan *p = w->plan;
	struct ts_group *groups = ts_arena_array(w->arena, w->out->group_count + 1, sizeof *groups);
	struct ts_waters *waters = ts_arena_take(w->arena, sizeof *waters);
	struct ts_waters_case asked = {p, groups, w->out->group_count, w->today, w->out->of_line};

	w->out->as_read = as_read(w);
	if (!groups || !waters || !w->out->as_read)
		return;
	for (size_t i = 0; i < w->out->group_count; i++)
		groups[i] = w->out->groups[i].group;
	ts_waters_make_from(w->out->as_read, &asked, w->practice, waters);
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

/* Only the pH is beyond: it is the result of the minerals, and by itself decides nothing. */
static bool ph_alone(const struct ts_match *m)
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (p != TS_PH && m->at[p].known && m->at[p].verdict == TS_EXCLUDED)
			return false;
	}
	return m->verdict == TS_EXCLUDED && isnan(m->copper_borne_mg_l);
}

double ts_lived_well_days(const struct ts_judging *w, const struct ts_plan_group *g)
{
	const struct ts_plan *p = w->plan;
	double days = 0;
	long since;

	if (ts_plan_unwell(p) || g->planned)
		return 0;
	for (size_t i = 0; i < p->stock_count; i++) {
		if (w->out->of_line[i] == g->group.species && p->stock[i].since && w->today >= 0 &&
			ts_date_read(p->stock[i].since, &since))
			days = fmax(days, (double)(w->today - since));
	}
	return days;
}

/* Who has lived there for eight weeks without a sign or a death proves that the water is borne. */
bool ts_lived_well(const struct ts_judging *w, const struct ts_plan_group *g)
{
	return !ts_past_moved(&w->plan->tank, w->today) &&
	       ts_lived_well_days(w, g) >= w->practice->value[TS_P_SETTLED_DAYS];
}

static bool only_planned(const struct ts_plan_group *g)
{
	return g->planned == ts_group_count(&g->group);
}

static bool of_minerals(const struct ts_plan_group *g)
{
	return (g->misfit_at == TS_GH || g->misfit_at == TS_KH) &&
	       isnan(g->match.copper_borne_mg_l);
}

/* What it is off by excludes it by itself: a pH beside it, which the load moves, adds nothing. */
static bool excluded_by_it(const struct ts_plan_group *g)
{
	const struct ts_match *m = &g->match;
	bool whole = g->misfit_at < 0 || !isnan(m->copper_borne_mg_l);

	return (whole ? m->verdict : m->at[g->misfit_at].verdict) == TS_EXCLUDED;
}

/* Salt of the sea harms at once: who is said to live in it, was read wrong or is in danger. */
static bool too_salty(const struct ts_plan_group *g)
{
	return g->misfit_at == TS_SALINITY && g->match.at[TS_SALINITY].uncomfortable_by > 0;
}

/* Who has lived there for long says that its water is borne, but not that of the sea. */
static bool borne_for_long(struct ts_judging *w, const struct ts_plan_group *g)
{
	return ts_lived_well(w, g) && !too_salty(g);
}

/* How grave it is that the water is not the animal's own; open and worse never pass. */
static enum ts_severity of_misfit(struct ts_judging *w, const struct ts_plan_group *g)
{
	const struct ts_match *m = &g->match;
	const struct ts_profile *profile = &w->out->profile;
	bool minerals = profile->at[TS_GH].given && profile->at[TS_KH].given;
	bool well = borne_for_long(w, g);

	if (g->misfit < TS_MISFIT_OPEN)
		return TS_NOTE;
	if (g->misfit == TS_MISFIT_OPEN && well && !m->gh_missing)
		return ph_alone(m) ? TS_NOTE : TS_CONCERN;
	/* Nobody who lives there is harmed by waiting until the water is mended. */
	if (g->misfit == TS_MISFIT_OFF && excluded_by_it(g) && !well &&
		(only_planned(g) || !of_minerals(g)))
		return TS_CONFLICT;
	/* Where all want a spoon more, the condition is known. */
	w->cannot |= !well && g->way != TS_WAY_MINERALS;
	if (g->misfit == TS_MISFIT_OFF)
		return TS_CONCERN;
	return m->gh_missing || m->kh_missing || (ph_alone(m) && !minerals) ? TS_QUESTION
									    : TS_CONCERN;
}

/* Who is only planned will live in what the tank settles at, where the tank has been read. */
static bool will_live_in_settled(const struct ts_judging *w, const struct ts_plan_group *g)
{
	const struct ts_waters *waters = w->out->waters;

	return only_planned(g) && waters->log.read && waters->settled_known;
}

static double mineral(const struct ts_profile *p, enum ts_parameter parameter)
{
	return p->at[parameter].given ? p->at[parameter].value : (double)NAN;
}

/* Of what is decided the value that was read is said, and not the worse end of its doubt. */
static void say_as_read(
	struct ts_match *m, const struct ts_profile *profile, enum ts_misfit misfit, int at)
{
	struct ts_parameter_fit *f = at < 0 ? NULL : &m->at[at];
	const struct ts_range *r;

	if (!f || misfit == TS_MISFIT_OPEN || !f->perhaps)
		return;
	r = isnan(f->preferred.low) ? &f->tolerated : &f->preferred;
	f->perhaps = false;
	f->reading = profile->at[at].value;
	f->uncomfortable_by = ts_min(f->reading - r->low, 0) + ts_max(f->reading - r->high, 0);
	f->outside_by = 0;
}

/* What is said of the whole tank, once, is left out. */
static void match_with(const struct ts_judging *w, const struct ts_plan_group *g,
	const struct ts_profile *water, struct ts_match *ret, enum ts_misfit *ret_misfit,
	int *ret_at)
{
	const struct ts_keeping keeping = {.wild = g->wild, .temperature = w->plan->tank.temp_c};
	struct ts_profile profile = *water;

	profile.poisons = w->out->profile.poisons;
	profile.poisons.found &= ~(unsigned)(TS_POISON_AMMONIA | TS_POISON_NITRITE);
	profile.poisons.oxygen_mg_l = (double)NAN;
	(void)ts_contents_sea_gh(&profile, w->practice->value[TS_P_SALT_FRESH]);
	ts_match_species(g->group.species, &profile, &keeping, w->practice, ret);
	*ret_misfit = ts_misfit_of(ret, &profile, ret_at);
	say_as_read(ret, &profile, *ret_misfit, *ret_at);
}

/* Settled water decides where the animals would be well in the water of now. */
static void match_group(struct ts_judging *w, struct ts_plan_group *g)
{
	enum ts_misfit misfit;
	struct ts_match later;
	int at;

	match_with(w, g, &w->out->profile, &g->match, &g->misfit, &g->misfit_at);
	if (!will_live_in_settled(w, g) || g->misfit == TS_MISFIT_OFF)
		return;
	match_with(w, g, &w->out->waters->settled, &later, &misfit, &at);
	g->in_settled = misfit > g->misfit;
	if (!g->in_settled)
		return;
	g->match = later;
	g->misfit = misfit;
	g->misfit_at = at;
}

/*
 * It wants more minerals, no more than a spoon of them as read, and nothing that no spoon mends: of
 * a hardness that nobody read, nobody knows how much is missing.
 */
static bool wants_a_spoon(const struct ts_plan_group *g)
{
	const struct ts_parameter_fit *warmth = &g->match.at[TS_TEMPERATURE];
	const struct ts_parameter_fit *salt = &g->match.at[TS_SALINITY];
	double missing = 0;

	if (g->match.gh_missing || g->match.kh_missing)
		return false;
	if ((warmth->known && warmth->verdict > TS_TOLERATES) ||
		(salt->known && salt->verdict > TS_TOLERATES))
		return false;
	for (int p = TS_GH; p <= TS_KH; p++) {
		const struct ts_parameter_fit *f = &g->match.at[p];

		if (f->known && f->uncomfortable_by > 1)
			return false;
		if (f->known)
			missing -= ts_min(f->uncomfortable_by, 0);
	}
	return missing <= TS_MISFIT_SPOON_DH && of_minerals(g);
}

static void find_ways(struct ts_check *c)
{
	bool others_suit = false, a_spoon = true;

	for (size_t i = 0; i < c->group_count; i++) {
		const struct ts_plan_group *g = &c->groups[i];
		bool off = g->misfit >= TS_MISFIT_OPEN && g->misfit_at != TS_TEMPERATURE;

		others_suit |= !off;
		a_spoon &= !off || wants_a_spoon(g);
	}
	for (size_t i = 0; i < c->group_count; i++) {
		struct ts_plan_group *g = &c->groups[i];

		if (g->misfit == TS_MISFIT_OFF && g->misfit_at != TS_TEMPERATURE && !too_salty(g) &&
			isnan(g->match.copper_borne_mg_l))
			g->way = ts_misfit_way(!only_planned(g), others_suit, a_spoon);
	}
}

static bool moves(const struct ts_judging *w)
{
	for (int p = TS_GH; p <= TS_KH; p++) {
		const enum ts_parameter at = (enum ts_parameter)p;
		double now = mineral(&w->out->profile, at);
		double poured = mineral(&w->out->waters->poured, at);

		if (!(now == poured || (isnan(now) && isnan(poured))))
			return true;
	}
	return false;
}

static void say_misfit(struct ts_judging *w, const struct ts_plan_group *g)
{
	const struct ts_match *m = &g->match;
	bool open = g->misfit == TS_MISFIT_OPEN && (m->gh_missing || !borne_for_long(w, g));
	struct ts_ruling *r;

	if (g->misfit == TS_MISFIT_NONE)
		return;
	r = ts_judging_say(w, open ? TS_RULE_WATER_UNSURE : TS_RULE_WATER, of_misfit(w, g),
		(double)NAN, (double)NAN);
	if (!r)
		return;
	r->subject = g->group.species;
	r->match = m;
	r->rests = g->in_settled ? TS_RESTS_COMPUTED : TS_RESTS_READ;
	r->word = g->misfit_at;
	r->ours = w->out->profile.poisons.copper_mg_l;
	/* Where the tank is what is poured in, nothing settles to anything else. */
	if (!g->in_settled || !moves(w))
		return;
	r->ours = mineral(&w->out->waters->poured, TS_GH);
	r->its = mineral(&w->out->waters->poured, TS_KH);
}

/* What the tank runs at needs no water to be judged. */
static void say_warmth(struct ts_judging *w, struct ts_plan_group *g)
{
	enum ts_misfit misfit = ts_misfit_at(&g->match, &w->out->profile, TS_TEMPERATURE);

	if (misfit < TS_MISFIT_BORNE)
		return;
	g->misfit = misfit;
	g->misfit_at = TS_TEMPERATURE;
	say_misfit(w, g);
}

void ts_judge_matches(struct ts_judging *w)
{
	struct ts_check *c = w->out;

	for (size_t i = 0; i < c->group_count; i++) {
		match_group(w, &c->groups[i]);
		c->groups[i].well = ts_lived_well(w, &c->groups[i]);
	}
	if (!c->water_known) {
		for (size_t i = 0; i < c->group_count; i++)
			say_warmth(w, &c->groups[i]);
		return;
	}
	find_ways(c);
	for (size_t i = 0; i < c->group_count; i++)
		say_misfit(w, &c->groups[i]);
}
