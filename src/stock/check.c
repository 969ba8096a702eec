/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The plan as a whole. Judgements are collected and put in their order; the verdict is the gravest.
 * What is not known is a question and what is assumed no fault. What mends them: repair.c.
 */
#include "stock/check.h"

#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/number.h"
#include "chem/ammonia.h"
#include "chem/ions.h"
#include "chem/nitrogen.h"
#include "stock/rules.h"

struct work {
	const struct ts_plan *plan;
	const struct ts_practice *practice;
	long today;
	struct ts_arena *arena;
	struct ts_check *out;
	size_t room;
	bool cannot;         /* something is not known that a yes needs */
	struct ts_load best; /* with feeding, plants and changes that are not given at their best */
};

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

static struct ts_ruling *say(
	struct work *w, enum ts_rule_id rule, enum ts_severity severity, double ours, double its)
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

static void add_all(struct work *w, const struct ts_rulings *all)
{
	for (size_t i = 0; i < all->count; i++) {
		struct ts_ruling *r;

		if (all->at[i].rule == TS_RULE_TANK_UNMEASURED && all->at[i].severity < TS_CONCERN)
			continue;
		r = say(w, all->at[i].rule, TS_NOTE, 0, 0);

		if (r)
			*r = all->at[i];
	}
}

/* Lines of one species become one group. */
static struct ts_plan_group *group_of(struct work *w, const struct ts_species *species)
{
	struct ts_check *c = w->out;

	for (size_t i = 0; i < c->group_count; i++) {
		if (c->groups[i].group.species == species)
			return &c->groups[i];
	}
	c->groups[c->group_count].group.species = species;
	return &c->groups[c->group_count++];
}

/* Is this the first line that calls its species so? Colour forms have names of their own. */
static bool another_name(const struct work *w, const struct ts_species *const *species, size_t line)
{
	for (size_t i = 0; i < line; i++) {
		const char *name = w->plan->stock[i].species;

		if (species[i] == species[line] && name && w->plan->stock[line].species &&
			strcmp(name, w->plan->stock[line].species) == 0)
			return false;
	}
	return true;
}

static void add_line(struct work *w, const struct ts_stock_line *line, const struct ts_species *s)
{
	struct ts_plan_group *g = group_of(w, s);
	unsigned count = (unsigned)line->count;
	struct ts_ruling *r;

	if (!count) {
		count = s->group.least < 1 ? 1 : (unsigned)ceil(s->group.least);
		r = say(w, TS_RULE_COUNT_ASSUMED, TS_NOTE, count, (double)NAN);
		if (r)
			r->subject = s;
	}

	if (line->sex == TS_SEX_MALE)
		g->group.males += count;
	else if (line->sex == TS_SEX_FEMALE)
		g->group.females += count;
	else if (line->sex == TS_SEX_UNKNOWN)
		g->group.either += count;
	if (line->sex == TS_SEX_PAIRS) {
		g->group.males += count / 2;
		g->group.females += count / 2;
		g->group.either += count % 2;
	}
	g->planned += line->since ? 0 : count;
	g->wild |= line->origin == TS_ORIGIN_WILD;
	if (line->size_cm > 0)
		g->group.size_cm = g->group.size_cm > 0 ? fmin(g->group.size_cm, line->size_cm)
							: line->size_cm;
}

static void take_groups(struct work *w, const struct ts_species *const *species)
{
	const struct ts_plan *p = w->plan;

	w->out->groups = ts_arena_array(w->arena, p->stock_count, sizeof *w->out->groups);
	if (!w->out->groups && p->stock_count)
		return;
	for (size_t i = 0; i < p->stock_count; i++) {
		struct ts_ruling *r;

		if (species[i]) {
			add_line(w, &p->stock[i], species[i]);
			group_of(w, species[i])->group.forms += another_name(w, species, i);
			continue;
		}
		r = say(w, TS_RULE_UNKNOWN_SPECIES, TS_QUESTION, (double)NAN, (double)NAN);
		if (r)
			r->name = p->stock[i].species;
		w->cannot = true;
	}
	if (!p->stock_count)
		say(w, TS_RULE_EMPTY, TS_QUESTION, (double)NAN, (double)NAN);
	for (size_t i = 0; i < w->out->group_count; i++) {
		const struct ts_plan_group *g = &w->out->groups[i];

		w->out->planned_groups += g->planned > 0;
		w->out->living_groups += ts_group_count(&g->group) > g->planned;
	}
}

/* The load where a routine that is not given is a good one. */
static void best_load(struct work *w, const struct ts_waters_case *asked)
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
static void take_water(struct work *w)
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
		say(w, TS_RULE_WATER_UNKNOWN, TS_QUESTION, (double)NAN, (double)NAN);
		w->cannot = true;
	}
	if (!w->out->profile.at[TS_TEMPERATURE].given && w->out->group_count) {
		say(w, TS_RULE_TEMPERATURE_UNKNOWN, TS_QUESTION, (double)NAN, (double)NAN);
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
static bool lived_well(const struct work *w, const struct ts_plan_group *g)
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
static enum ts_severity of_match(struct work *w, const struct ts_plan_group *g)
{
	const struct ts_match *m = &g->match;
	const struct ts_profile *profile = &w->out->profile;
	bool minerals = profile->at[TS_GH].given && profile->at[TS_KH].given;

	if (m->verdict < TS_UNSURE)
		return TS_NOTE;
	if (!m->gh_missing && lived_well(w, g))
		return ph_alone(m) ? TS_NOTE : TS_CONCERN;
	if (m->verdict == TS_EXCLUDED && !ph_alone(m))
		return TS_CONFLICT;
	w->cannot = true;
	return m->gh_missing || (ph_alone(m) && !minerals) ? TS_QUESTION : TS_CONCERN;
}

/* Who is only planned will live in what the tank settles at, where the tank has been read. */
static bool will_live_in_settled(const struct work *w, const struct ts_plan_group *g)
{
	const struct ts_waters *waters = w->out->waters;

	return g->planned == ts_group_count(&g->group) && waters->log.read && waters->settled_known;
}

static double mineral(const struct ts_profile *p, enum ts_parameter parameter)
{
	return p->at[parameter].given ? p->at[parameter].value : (double)NAN;
}

static void match_group(struct work *w, struct ts_plan_group *g)
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
		(g->match.gh_missing || !lived_well(w, g)))
		rule = TS_RULE_WATER_UNSURE;
	r = say(w, rule, severity, (double)NAN, (double)NAN);
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

/* Whose wants of nitrate count: the most sensitive animal's. */
static bool nitrate_sensitive(const struct ts_check *c)
{
	for (size_t i = 0; i < c->group_count; i++) {
		if (c->groups[i].group.species->habits & TS_HABIT_NITRATE_SENSITIVE ||
			c->groups[i].wild)
			return true;
	}
	return false;
}

static double highest(const struct ts_measure *m, double factor)
{
	if (m->kind == TS_MEASURE_NONE)
		return (double)NAN;
	if (m->kind == TS_MEASURE_BELOW)
		return 0;
	return factor * (isfinite(m->high) ? m->high : m->value); /* ">2", "2..": as written */
}

/* The newest readings of the tank; without any, the water's last that tells this. */
static double last(const struct work *w, double (*of)(const struct ts_reading *))
{
	const struct ts_waters *waters = w->out->waters;
	const struct ts_water *water = ts_plan_poured(w->plan);

	if (waters->log.read)
		return of(&waters->log.reading);
	for (size_t i = water->reading_count; i-- > 0;) {
		double value = of(&water->readings[i]);

		if (!isnan(value))
			return value;
	}
	return (double)NAN;
}

static double tan_in(const struct ts_reading *r)
{
	return highest(&r->tan_mg_l, 1);
}

static double no2_n_in(const struct ts_reading *r)
{
	return fmax(highest(&r->no2_n_mg_l, 1), highest(&r->no2_mg_l, TS_WEIGHT_N / TS_MASS_NO2));
}

static double no3_in(const struct ts_reading *r)
{
	return fmax(highest(&r->no3_n_mg_l, TS_MASS_NO3 / TS_WEIGHT_N), highest(&r->no3_mg_l, 1));
}

static double chlorine_in(const struct ts_reading *r)
{
	return highest(&r->chlorine_mg_l, 1);
}

static double chloride_in(const struct ts_reading *r)
{
	return r->cl_mg_l.kind == TS_MEASURE_NONE ? (double)NAN : r->cl_mg_l.low;
}

/* Where nothing lives yet, nothing is harmed: the filter is maturing. */
static enum ts_severity harm(const struct work *w)
{
	return w->out->living_groups || !w->plan->stock_count ? TS_CONFLICT : TS_CONCERN;
}

static void check_ammonia(struct work *w)
{
	const double *p = w->practice->value;
	const struct ts_span *ph = &w->out->profile.at[TS_PH];
	const struct ts_span *temp = &w->out->profile.at[TS_TEMPERATURE];
	double tan = last(w, tan_in), limit = 0;

	if (!(tan >= p[TS_P_TAN_DANGER]))
		return;
	if (!ph->given || !temp->given ||
		ts_chem_ammonia_ccc_mg_l(
			fmin(fmax(ph->high, TS_CHEM_EPA_PH_LOW), TS_CHEM_EPA_PH_HIGH),
			fmin(fmax(temp->high, 0), TS_CHEM_EPA_TEMP_HIGH_C), &limit) != TS_OK)
		limit = p[TS_P_TAN_DANGER];
	say(w, TS_RULE_AMMONIA, tan > limit ? harm(w) : TS_CONCERN, tan, limit);
}

static void check_nitrite(struct work *w)
{
	double no2_n = last(w, no2_n_in), chloride = last(w, chloride_in), concern, conflict;

	ts_chem_nitrite_limits(isnan(chloride) ? -1 : chloride, &concern, &conflict);
	if (no2_n >= concern)
		say(w, TS_RULE_NITRITE, no2_n >= conflict ? harm(w) : TS_CONCERN, no2_n, conflict);
}

/* Chlorine harms where the animals are; in the water it is there to be treated. */
static void check_chlorine(struct work *w)
{
	double limit = w->practice->value[TS_P_CHLORINE_DANGER], chlorine = last(w, chlorine_in);

	if (!(chlorine >= limit))
		return;
	say(w, TS_RULE_CHLORINE, w->plan->tank.reading_count ? TS_CONFLICT : TS_NOTE, chlorine,
		limit);
}

/* What the animal that wants most of it bears. */
static double oxygen_enough_mg_l(const struct work *w)
{
	double most = w->out->group_count ? 0 : w->practice->value[TS_P_OXYGEN_CONCERN];

	for (size_t i = 0; i < w->out->group_count; i++)
		most = fmax(most,
			ts_match_oxygen_borne_mg_l(w->out->groups[i].group.species, w->practice));
	return most;
}

/* The tank's own; new water gains oxygen where it is poured. */
static double oxygen_now_mg_l(const struct work *w)
{
	return w->out->waters->never_read ? (double)NAN : w->out->profile.poisons.oxygen_mg_l;
}

static void check_oxygen(struct work *w)
{
	const double *p = w->practice->value;
	double enough = oxygen_enough_mg_l(w), oxygen = oxygen_now_mg_l(w);
	double harm = enough - (p[TS_P_OXYGEN_CONCERN] - p[TS_P_OXYGEN_CONFLICT]);
	struct ts_ruling *r;

	if (!(oxygen < enough))
		return;
	r = say(w, TS_RULE_OXYGEN, oxygen < harm ? TS_CONFLICT : TS_CONCERN, oxygen, enough);
	if (r)
		r->change = enough - oxygen;
}

/* The load hangs on what was not given. */
static bool load_assumed(const struct ts_load *l)
{
	bool modelled = isnan(l->measured_no3_rise_mg_l_week);

	return !l->change_known || (modelled && (!l->feeding_known || !l->plants_known));
}

static void check_nitrate_load(struct work *w, double concern, double conflict)
{
	const struct ts_estimate *steady = &w->out->load.no3_steady_mg_l;
	struct ts_ruling *r;

	if (!w->out->load_known)
		return;
	if (!load_assumed(&w->out->load)) {
		if (steady->high >= concern)
			say(w, TS_RULE_NITRATE_LOAD,
				steady->value >= conflict  ? TS_CONFLICT
				: steady->value >= concern ? TS_CONCERN
							   : TS_NOTE,
				steady->value, concern);
	} else if (w->best.no3_steady_mg_l.low >= concern) {
		r = say(w, TS_RULE_NITRATE_LOAD, TS_CONCERN, w->best.no3_steady_mg_l.low, concern);
		if (r)
			r->rests = TS_RESTS_ASSUMED;
	} else if (steady->value >= concern) {
		r = say(w, TS_RULE_NITRATE_OPEN, TS_QUESTION, w->best.no3_steady_mg_l.low, concern);
		if (r)
			r->change = steady->high;
	}
}

static void check_nitrate(struct work *w)
{
	bool sensitive = w->out->nitrate_sensitive = nitrate_sensitive(w->out);
	const double *p = w->practice->value;
	double concern = p[sensitive ? TS_P_NITRATE_CONCERN_SENSITIVE : TS_P_NITRATE_CONCERN];
	double conflict = p[sensitive ? TS_P_NITRATE_CONFLICT_SENSITIVE : TS_P_NITRATE_CONFLICT];
	double now = last(w, no3_in);

	if (now >= concern)
		say(w, TS_RULE_NITRATE, now >= conflict ? TS_CONFLICT : TS_CONCERN, now, concern);
	check_nitrate_load(w, concern, conflict);
}

/* Animals of waters without a buffer, which more of it would harm. */
static bool want_no_buffer(const struct ts_check *c)
{
	for (size_t i = 0; i < c->group_count; i++) {
		int home = c->groups[i].group.species->home_water;

		if (home != TS_HOME_BLACK && home != TS_HOME_BEE_SHRIMP)
			return false;
	}
	return c->group_count > 0;
}

/* The buffer of a load that is known; of an assumed one at its best. */
static enum ts_severity of_buffer(const struct work *w, const struct ts_load *l, bool assumed)
{
	const double *p = w->practice->value;
	double kh = w->out->profile.at[TS_KH].value, days = l->buffer_days.value;

	if (assumed)
		days = w->best.buffer_days.high;
	if (days < p[TS_P_BUFFER_ACT])
		return assumed ? TS_CONCERN : TS_CONFLICT;
	if (days < p[TS_P_BUFFER_WARN] || kh < p[TS_P_KH_FLOOR])
		return TS_CONCERN;
	if (!assumed && l->kh_steady_dh < p[TS_P_KH_FLOOR])
		return TS_CONCERN;
	return TS_NOTE;
}

static void check_buffer(struct work *w)
{
	const double *p = w->practice->value;
	const struct ts_span *kh = &w->out->profile.at[TS_KH];
	const struct ts_load *l = &w->out->load;
	bool assumed = load_assumed(l), usual_short;
	enum ts_severity severity;

	if (!w->out->group_count || !w->out->water_known)
		return;
	if (!kh->given) {
		say(w, TS_RULE_KH_UNKNOWN, TS_QUESTION, (double)NAN, (double)NAN);
		w->cannot = true;
		return;
	}
	if (!w->out->load_known || want_no_buffer(w->out))
		return;
	severity = of_buffer(w, l, assumed);
	usual_short = l->buffer_days.value < p[TS_P_BUFFER_WARN];
	if (severity == TS_NOTE && assumed && usual_short)
		say(w, TS_RULE_BUFFER_OPEN, TS_QUESTION, l->buffer_days.low,
			w->best.buffer_days.high);
	else if (severity > TS_NOTE || kh->value < p[TS_P_KH_WARN])
		say(w, TS_RULE_BUFFER, severity, l->buffer_days.value, l->change_days);
}

static void check_warmth(struct work *w)
{
	const struct ts_span *temp = &w->out->profile.at[TS_TEMPERATURE];

	if (w->out->load_known && temp->given && temp->high >= w->practice->value[TS_P_OXYGEN_WARM])
		say(w, TS_RULE_WARM_OXYGEN, TS_NOTE, w->out->load.oxygen_mg_l, temp->high);
}

static void check_floor(struct work *w)
{
	double have = ts_tank_floor_m2(&w->plan->tank), want;
	struct ts_floor_sum sum = {0};
	size_t owners = 0;

	for (size_t i = 0; i < w->out->group_count; i++) {
		const struct ts_group *group = &w->out->groups[i].group;

		ts_floor_add(&sum, group, w->practice);
		owners += ts_group_floor_m2(group, w->practice) > 0;
	}
	want = ts_floor_total_m2(&sum);
	if (owners > 1 && want > have)
		say(w, TS_RULE_FLOOR,
			have < want * w->practice->value[TS_P_ROOM_CONFLICT] ? TS_CONFLICT
									     : TS_CONCERN,
			have, want);
}

static void check_species_count(struct work *w)
{
	double net_l = ts_tank_net_l(&w->plan->tank, w->practice), fish = 0;
	enum ts_practice_id row = net_l < 60    ? TS_P_SPECIES_60
				  : net_l < 120 ? TS_P_SPECIES_120
				  : net_l > 250 ? TS_P_SPECIES_MORE
						: TS_P_SPECIES_250;

	for (size_t i = 0; i < w->out->group_count; i++)
		fish += w->out->groups[i].group.species->kind == TS_ANIMAL_FISH;
	if (net_l > 0 && fish > w->practice->value[row])
		say(w, TS_RULE_MANY_SPECIES, TS_NOTE, fish, w->practice->value[row]);
}

/* The newest day that the plan knows of: its readings are as old as that at the most. */
static bool newest_day(const struct ts_plan *p, long *ret)
{
	bool known = false;

	for (size_t i = 0; i < p->tank.reading_count; i++) {
		long day;

		if (p->tank.readings[i].date && ts_date_read(p->tank.readings[i].date, &day) &&
			(!known || day > *ret)) {
			*ret = day;
			known = true;
		}
	}
	return known;
}

/* Said to be mature, or shown to be by stock that has lived there with both poisons nil. */
static bool filter_mature(struct work *w)
{
	const struct ts_plan *p = w->plan;
	double tan = last(w, tan_in), no2_n = last(w, no2_n_in);
	bool nil = tan < w->practice->value[TS_P_TAN_DANGER] && no2_n < 0.05;
	long today = 0, since = 0;

	if (tan >= w->practice->value[TS_P_TAN_DANGER] || no2_n >= 0.05)
		return false;
	if (p->tank.filter == TS_FILTER_MATURE)
		return true;
	if (p->tank.filter == TS_FILTER_NEW || !p->tank.reading_count || !nil ||
		!newest_day(p, &today))
		return false;
	for (size_t i = 0; i < p->stock_count; i++) {
		if (p->stock[i].since && ts_date_read(p->stock[i].since, &since) &&
			(double)(today - since) > w->practice->value[TS_P_SETTLED_DAYS])
			return true;
	}
	return false;
}

static void check_state(struct work *w)
{
	const struct ts_plan *p = w->plan;
	const struct ts_check *c = w->out;
	bool distress = p->sign_count > 0 || p->deaths.value > 0;

	if (c->living_groups && (isnan(last(w, tan_in)) || isnan(last(w, no2_n_in)))) {
		say(w, TS_RULE_UNTESTED, TS_QUESTION, (double)NAN, (double)NAN);
		w->cannot = true;
	}
	if (distress)
		say(w, TS_RULE_DISTRESS, TS_CONCERN, (double)p->sign_count, p->deaths.value);
	if (distress && c->planned_groups)
		say(w, TS_RULE_NEWCOMERS, TS_CONFLICT, (double)c->planned_groups, (double)NAN);
	if (c->planned_groups && !filter_mature(w)) {
		bool young = p->tank.filter == TS_FILTER_NEW || last(w, tan_in) > 0 ||
			     last(w, no2_n_in) > 0;

		say(w, young ? TS_RULE_FILTER : TS_RULE_FILTER_UNKNOWN,
			young ? TS_CONCERN : TS_QUESTION, (double)NAN, (double)NAN);
	}
}

/* The tank is one: what is not given of it is said once, and not of every animal. */
static void check_sides(struct work *w)
{
	const struct ts_tank *t = &w->plan->tank;
	double box_l = ts_rule_box_l(t, w->practice);

	if (!w->out->group_count || (t->length_cm > 0 && t->width_cm > 0))
		return;
	if (t->length_cm > 0 || !(t->volume_l > 0))
		say(w, TS_RULE_TANK_UNKNOWN, TS_QUESTION, (double)NAN, (double)NAN);
	else
		say(w, TS_RULE_SIDES_ASSUMED, TS_NOTE, 2 * cbrt(box_l * 1000 / 2),
			4 * cbrt(box_l * 1000 / 4));
}

/* Who have lived well in one water, comfortable to both or not, prove that both bear it. */
static void ease_water(struct ts_rulings *all)
{
	for (size_t i = 0; i < all->count; i++) {
		enum ts_rule_topic topic = ts_rule_rows[all->at[i].rule].topic;

		if (all->at[i].severity == TS_CONCERN &&
			(topic == TS_TOPIC_WATER || topic == TS_TOPIC_TEMPERATURE))
			all->at[i].severity = TS_NOTE;
	}
}

static void check_company(struct work *w)
{
	const struct ts_check *c = w->out;

	for (size_t i = 0; i < c->group_count; i++) {
		struct ts_rulings all = {.count = 0};

		ts_rules_alone(&c->groups[i].group, &w->plan->tank, w->practice, &all);
		add_all(w, &all);
		for (size_t j = i + 1; j < c->group_count && !w->arena->failed; j++) {
			all.count = 0;
			ts_rules_together(&c->groups[i].group, &c->groups[j].group, &w->plan->tank,
				w->practice, &all);
			if (lived_well(w, &c->groups[i]) && lived_well(w, &c->groups[j]))
				ease_water(&all);
			add_all(w, &all);
		}
	}
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
	long today, const struct ts_practice *practice, struct ts_arena *arena,
	struct ts_check *ret)
{
	struct ts_practice own;
	struct ts_check check = {.verdict = TS_PLAN_ASKS, .of_line = species};
	struct work w = {
		.plan = plan, .practice = practice, .today = today, .arena = arena, .out = &check};

	ts_practice_defaults(&own);
	if (!practice)
		w.practice = &own;
	take_groups(&w, species);
	if (arena->failed)
		return TS_NO_MEMORY;
	take_water(&w);
	if (arena->failed)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < check.group_count; i++)
		match_group(&w, &check.groups[i]);
	check_warmth(&w);
	check_ammonia(&w);
	check_nitrite(&w);
	check_oxygen(&w);
	check_chlorine(&w);
	check_nitrate(&w);
	check_buffer(&w);
	check_state(&w);
	check_sides(&w);
	check_floor(&w);
	check_species_count(&w);
	check_company(&w);
	check.answered = !w.cannot;
	ts_check_sort(&check);
	if (arena->failed)
		return TS_NO_MEMORY;
	*ret = check;
	return TS_OK;
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
	status = ts_check_faults(plan, species, today, practice, arena, &check);
	if (status)
		return status;
	ts_check_shared_water(&check, &check.shared);
	if (check.group_count <= TS_REMEDIES_TRIED)
		ts_check_smallest_tank(plan, practice, &check, &check.smallest);
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
