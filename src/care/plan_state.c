/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The tank as it is now (stock/waters.h) is its state; its signs are sorted by what they point to.
 */
#include "care/plan_state.h"

#include <math.h>
#include <string.h>

#include "base/date.h"
#include "care/due.h"
#include "chem/carbonate.h"
#include "water/analysis.h"
#include "water/course.h"

/* pH tells CO2 from this KH on, dH. */
#define KH_TELLS_DH 2.0
/* Weeks after which animals that live well prove that a filter works. */
#define LIVED_LONG_DAYS 56
#define HOURS_OF_DAY 24
#define DAYS_OF_WEEK 7

bool ts_in_tank(const struct ts_stock_line *line)
{
	return line->since != NULL;
}

static double value_of(const struct ts_profile *p, enum ts_parameter parameter)
{
	return p->at[parameter].given ? p->at[parameter].value : (double)NAN;
}

static double read_or_unknown(const struct ts_measure *m)
{
	return m->kind == TS_MEASURE_NONE ? (double)NAN : m->value;
}

/* Nitrate of a reading, as NO3, whichever way it was written. */
static double nitrate(const struct ts_profile *p)
{
	return p->poisons.no3_mg_l;
}

/* Beside what it may point to by onset and breadth. */
static unsigned kind_of_sign(const struct ts_sign *sign)
{
	switch (sign->sign) {
	case TS_SIGN_TORN_FINS:
	case TS_SIGN_CHASED:
		return TS_SIGNS_FIGHT;
	case TS_SIGN_SPOTS:
	case TS_SIGN_RUBBING:
		return TS_SIGNS_SPOTS;
	case TS_SIGN_BLOATED:
	case TS_SIGN_FLOATING:
		return TS_SIGNS_FLOATING;
	default:
		return 0;
	}
}

/* What wounds, darting and the like tell is no mere weakness. */
static bool strong(const struct ts_sign *sign)
{
	return sign->sign == TS_SIGN_WOUNDS || sign->sign == TS_SIGN_DARTING ||
	       sign->sign == TS_SIGN_GASPING || kind_of_sign(sign);
}

/* Signs that new water makes: what grew over days, or what others did to it, it does not make. */
static bool of_new_water(const struct ts_sign *sign)
{
	unsigned kind = kind_of_sign(sign);

	return sign->after == TS_AFTER_WATER_CHANGE && sign->onset != TS_ONSET_WEEKS &&
	       sign->sign != TS_SIGN_SPOTS && sign->sign != TS_SIGN_WOUNDS &&
	       sign->sign != TS_SIGN_WASTING && !(kind & (TS_SIGNS_FIGHT | TS_SIGNS_FLOATING));
}

/* What is seen of the tank. */
static unsigned of_tank(const struct ts_sign *sign)
{
	switch (sign->sign) {
	case TS_SIGN_ALGAE:
		return TS_BESIDE_ALGAE;
	case TS_SIGN_CLOUDY_WATER:
		return TS_BESIDE_CLOUDY;
	case TS_SIGN_SMELL:
		return TS_BESIDE_SMELL;
	case TS_SIGN_SURFACE_FILM:
		return TS_BESIDE_FILM;
	case TS_SIGN_TINTED_WATER:
		return TS_BESIDE_TINTED;
	default:
		return 0;
	}
}

static unsigned beside(const struct ts_sign *sign)
{
	if (of_tank(sign))
		return of_tank(sign);
	return (strong(sign) ? TS_BESIDE_STRONG : 0u) |
	       (of_new_water(sign) ? TS_BESIDE_CHANGED : 0u) |
	       (sign->sign == TS_SIGN_SPOTS ? TS_BESIDE_SPOTS : 0u) |
	       (sign->sign == TS_SIGN_WOUNDS ? TS_BESIDE_WOUNDS : 0u) |
	       (sign->onset == TS_ONSET_UNKNOWN ? TS_BESIDE_NO_ONSET : 0u) |
	       (sign->breadth == TS_BREADTH_UNKNOWN ? TS_BESIDE_NO_BREADTH : 0u) |
	       (sign->breadth == TS_BREADTH_ALL && sign->onset == TS_ONSET_NOW ? TS_BESIDE_AT_ONCE
									       : 0u);
}

static unsigned sort_sign(const struct ts_sign *sign)
{
	unsigned kind = kind_of_sign(sign);

	if (of_tank(sign))
		return 0;
	/* Who dies is counted, not sorted: the water is tested first, whatever it is. */
	if (sign->sign == TS_SIGN_DYING &&
		!(sign->breadth == TS_BREADTH_ALL && sign->onset == TS_ONSET_NOW))
		return 0;

	if (sign->sign == TS_SIGN_GASPING)
		return TS_SIGNS_GASPING;
	/* Who hides is frightened, cold or ill: nothing sudden by itself. */
	if (sign->breadth == TS_BREADTH_ALL && sign->sign != TS_SIGN_HIDING &&
		(sign->onset == TS_ONSET_NOW || (sign->onset == TS_ONSET_DAYS && !kind)))
		return TS_SIGNS_SUDDEN_ALL | kind;
	if (sign->sign == TS_SIGN_WASTING || (sign->onset == TS_ONSET_WEEKS && !kind))
		return TS_SIGNS_SLOW | kind;
	if (sign->breadth == TS_BREADTH_ONE || sign->breadth == TS_BREADTH_ONE_SPECIES)
		return TS_SIGNS_ONE | kind;
	return TS_SIGNS_OTHER | kind;
}

static long age_of(const char *date, long today)
{
	long day;

	return today >= 0 && date && ts_date_read(date, &day) && day <= today ? today - day : 0;
}

/* A nil that was read too long ago is none any more; a danger that was read then still is one. */
static bool old_nil(const struct ts_waters *w, enum ts_now_value value, double mg_l)
{
	return w->log.from[value].old && !(mg_l > 0);
}

/* What was read too long ago is asked for again. */
static void take_ages(
	const struct ts_plan *plan, const struct ts_waters *w, long today, struct ts_care_state *c)
{
	c->reading_age_days =
		fmax(w->log.from[TS_NOW_GH].age_days, w->log.from[TS_NOW_KH].age_days);
	if (old_nil(w, TS_NOW_TAN, c->tan_mg_l))
		c->tan_mg_l = (double)NAN;
	if (old_nil(w, TS_NOW_NO2, c->no2_mg_l))
		c->no2_mg_l = (double)NAN;
	for (size_t i = 0; i < plan->stock_count; i++) {
		if (ts_in_tank(&plan->stock[i]))
			c->lived_days =
				fmax(c->lived_days, (double)age_of(plan->stock[i].since, today));
	}
}

/* Days since the last of several arrivals; NAN: all came at once, or nobody knows when. */
static double newcomer_days(const struct ts_plan *plan, long today)
{
	double last = (double)NAN, first = (double)NAN;

	for (size_t i = 0; i < plan->stock_count; i++) {
		long day;

		if (today < 0 || !plan->stock[i].since ||
			!ts_date_read(plan->stock[i].since, &day) || day > today)
			continue;
		last = fmin(last, (double)(today - day));
		first = fmax(first, (double)(today - day));
	}
	return last < first ? last : (double)NAN;
}

/* The line of those that are ill: the only one there, or the one that a sign names; -1: not said.
 */
static int ill_line(const struct ts_plan *plan)
{
	int only = -1, named = -1;
	size_t count = 0;

	for (size_t i = 0; i < plan->stock_count; i++) {
		if (!ts_in_tank(&plan->stock[i]))
			continue;
		only = (int)i;
		count++;
		for (size_t k = 0; k < plan->sign_count; k++) {
			const char *species = plan->signs[k].species;

			if (species && plan->stock[i].species &&
				strcmp(species, plan->stock[i].species) == 0)
				named = (int)i;
		}
	}
	return count == 1 ? only : named;
}

static bool same_day(const struct ts_reading *a, const struct ts_reading *b)
{
	return a->date && b->date && strcmp(a->date, b->date) == 0;
}

/* The widest course of pH within one of the newest days, and whether it was read on several. */
static void take_course(const struct ts_tank *tank, long today, struct ts_care_state *c)
{
	const struct ts_reading *first = NULL;

	for (size_t i = 0; i < tank->reading_count; i++) {
		const struct ts_reading *a = &tank->readings[i];

		if (a->ph.kind == TS_MEASURE_NONE || ts_reading_is_ahead(a, today) ||
			age_of(a->date, today) > LIVED_LONG_DAYS)
			continue;
		c->ph_repeated |= first && !same_day(first, a);
		first = first ? first : a;
		for (size_t k = 0; k < i; k++) {
			const struct ts_reading *b = &tank->readings[k];
			double low = fmin(a->ph.value, b->ph.value);
			double high = fmax(a->ph.value, b->ph.value);

			if (b->ph.kind == TS_MEASURE_NONE || !same_day(a, b) ||
				high - low <= c->ph_swing_high - c->ph_swing_low)
				continue;
			c->ph_swing_low = low;
			c->ph_swing_high = high;
		}
	}
}

static bool lived_long(const struct ts_plan *plan, long today)
{
	for (size_t i = 0; i < plan->stock_count; i++) {
		if (age_of(plan->stock[i].since, today) >= LIVED_LONG_DAYS)
			return true;
	}
	return false;
}

static double co2_at(const struct ts_solution *tank, double kh_dh, double ph)
{
	struct ts_solution s = *tank;
	double mmol_l;

	s.alk_meq_l = ts_chem_meq_l_from_dkh(kh_dh);
	return ts_chem_co2_from_ph(&s, ph, &mmol_l) == TS_OK ? ts_chem_co2_mg_l_from_mmol_l(mmol_l)
							     : (double)NAN;
}

/*
 * CO2 from pH and KH that were read in the tank, with the doubt of both; not for a pH that was
 * computed, nor where it does not tell: hardly any KH, or a bed that makes acid.
 */
static void take_co2(const struct ts_plan_state *s, struct ts_care_state *c)
{
	const struct ts_profile *now = &s->waters->now;
	const struct ts_span *kh = &now->at[TS_KH];

	if (isnan(now->ph_read) || s->waters->as_poured & 1u << TS_KH || !c->tank || c->acid_bed ||
		kh->value < KH_TELLS_DH)
		return;
	c->co2_mg_l = co2_at(c->tank, kh->value, now->ph_read);
	c->co2_low_mg_l = co2_at(c->tank, kh->low, now->ph_read_high);
	c->co2_high_mg_l = co2_at(c->tank, kh->high, now->ph_read_low);
}

/* A tank that was never read runs at the pH that its minerals make; else only its own counts. */
static double ph_of(const struct ts_waters *w)
{
	if (!w->never_read)
		return w->now.ph_read;
	return isnan(w->now.ph_tank) ? value_of(&w->now, TS_PH) : w->now.ph_tank;
}

static void take_tank(struct ts_plan_state *s, bool inhabited)
{
	struct ts_care_state *c = &s->state;
	const struct ts_profile *now = &s->waters->now;
	unsigned assumed;

	c->gh_dh = value_of(now, TS_GH);
	c->kh_dh = value_of(now, TS_KH);
	c->ph = ph_of(s->waters);
	c->temp_c = value_of(now, TS_TEMPERATURE);
	c->buffer_days =
		s->waters->settled_known ? s->waters->settles.buffer_days.value : (double)NAN;
	c->kh_doubted = now->unusual & TS_UNUSUAL_PH_AGAINST_KH;
	c->copper_mg_l = now->poisons.copper_mg_l;
	c->copper_low_mg_l = now->poisons.copper_low_mg_l;
	/* In a call of words there is one water, and who lives in it breathes what was read. */
	if (s->waters->never_read && !inhabited)
		return;
	c->tan_mg_l = now->poisons.tan_mg_l;
	c->no2_mg_l = now->poisons.no2_mg_l;
	c->cl_mg_l = now->contents.cl_mg_l;
	if (s->waters->never_read)
		return;
	c->no3_mg_l = nitrate(now);
	c->chlorine_mg_l = now->poisons.chlorine_mg_l;
	c->oxygen_mg_l = now->poisons.oxygen_mg_l;
	c->ec_us_cm = now->contents.conductivity_us_cm;
	if (ts_solution_from_profile(now, c->temp_c, &s->tank_solution, &assumed) == TS_OK)
		c->tank = &s->tank_solution;
	take_co2(s, c);
}

/* Beyond swing and doubt only; NAN where the readings cannot tell. */
static double ph_trend_of(const struct ts_tank *tank, long today)
{
	struct ts_course course;

	ts_course_make(tank->readings, tank->reading_count, TS_NOW_PH,
		ts_past_new_water(tank, today), &course);
	if (isnan(course.a_week))
		return (double)NAN;
	return course.moves ? course.a_week * (double)(course.to - course.from) / 7 : 0;
}

/* Animals are named, and none of them is there. */
static bool nobody_yet(const struct ts_plan *plan)
{
	for (size_t i = 0; i < plan->stock_count; i++) {
		if (ts_in_tank(&plan->stock[i]))
			return false;
	}
	return plan->stock_count > 0;
}

/* Animals are named, and all of them are there. */
static bool all_live_there(const struct ts_plan *plan)
{
	for (size_t i = 0; i < plan->stock_count; i++) {
		if (!ts_in_tank(&plan->stock[i]))
			return false;
	}
	return plan->stock_count > 0;
}

static bool alone(const struct ts_plan *plan)
{
	double count = 0;

	for (size_t i = 0; i < plan->stock_count; i++)
		count += plan->stock[i].count;
	return count == 1;
}

static void take_equipment(const struct ts_plan *plan, struct ts_care_state *c)
{
	c->empty = nobody_yet(plan);
	c->alone = alone(plan);
	c->lived_in = all_live_there(plan);
	c->runs = plan->stock_count > 0 && !nobody_yet(plan);
	c->co2_injected = plan->tank.co2 == TS_CO2_INJECTED;
	c->filter_none = plan->tank.filter == TS_FILTER_NONE;
	c->filter_stands = plan->tank.filter == TS_FILTER_STANDS || plan->tank.filter_stopped_h > 0;
	c->acid_bed = plan->tank.substrate == TS_SUBSTRATE_ACTIVE ||
		      plan->tank.substrate == TS_SUBSTRATE_PEAT;
	c->peat = plan->tank.substrate == TS_SUBSTRATE_PEAT;
	c->lime_bed = plan->tank.substrate == TS_SUBSTRATE_LIMESTONE ||
		      plan->tank.substrate == TS_SUBSTRATE_ARAGONITE;
	if (plan->tank.water_change.days > 0 && plan->tank.water_change.amount > 0)
		c->change_days = plan->tank.water_change.days;
	if (plan->tank.water_change.days > 0)
		c->change_percent_week = plan->tank.water_change.amount /
					 plan->tank.water_change.days * DAYS_OF_WEEK;
	if (plan->tank.evaporation.days > 0)
		c->evaporation_percent_week =
			plan->tank.evaporation.amount / plan->tank.evaporation.days * DAYS_OF_WEEK;
	c->pure_top_up = plan->tank.top_up == TS_TOP_UP_PURE;
	c->filter_stopped_h =
		plan->tank.filter_stopped_h > 0 ? plan->tank.filter_stopped_h : (double)NAN;
	c->away_days = plan->away_h > 0 ? plan->away_h / HOURS_OF_DAY : (double)NAN;
	c->filter_mature = plan->tank.filter == TS_FILTER_MATURE ? TS_KNOWN_YES
			   : plan->tank.filter == TS_FILTER_NEW  ? TS_KNOWN_NO
								 : TS_NOT_KNOWN;
}

/* Of these kinds an event tells of the tank as it is for so many days (common practice). */
static const struct {
	int what;
	long days;
} lasting[] = {{TS_HAPPENED_CHANGED, 2}, {TS_HAPPENED_UNTREATED, 2}, {TS_HAPPENED_POISONED, 3},
	{TS_HAPPENED_OVERFED, 3}, {TS_HAPPENED_MEDICINE, 5}, {TS_HAPPENED_FILTER_WASHED, 14},
	{TS_HAPPENED_HEATER_FAILED, 2}, {TS_HAPPENED_HEATER_STUCK, 2}};

/* A change of so much of the water is one of nearly all of it, per cent. */
#define CHANGED_ALL_PERCENT 80

static void take_happened(const struct ts_tank *tank, long today, struct ts_care_state *c)
{
	for (size_t i = 0; i < tank->event_count; i++) {
		const struct ts_tank_event *e = &tank->events[i];
		long day;

		if (today < 0 || !e->date || !ts_date_read(e->date, &day) || day > today ||
			(e->what == TS_HAPPENED_CHANGED && e->share_percent < CHANGED_ALL_PERCENT))
			continue;
		for (size_t k = 0; k < sizeof lasting / sizeof *lasting; k++) {
			if (lasting[k].what == e->what && today - day <= lasting[k].days)
				c->happened |= 1u << e->what;
		}
	}
}

static void take_change_water(const struct ts_profile *poured, struct ts_care_state *c)
{
	c->change_gh_dh = value_of(poured, TS_GH);
	c->change_kh_dh = value_of(poured, TS_KH);
	c->softened = poured->unusual & (TS_UNUSUAL_SOFTENED | TS_UNUSUAL_MAYBE_SOFTENED);
	c->change_no3_mg_l = nitrate(poured);
	c->change_ec_us_cm = poured->contents.conductivity_us_cm;
	c->change_chlorine_mg_l = poured->poisons.chlorine_mg_l;
	c->change_copper_mg_l = poured->poisons.copper_mg_l;
}

/* GH of the supply before its newest dated reading; NAN: it was read once, or without days. */
static double supply_before(const struct ts_plan *plan, long today)
{
	const struct ts_water *w =
		plan->change_water.reading_count ? &plan->change_water : &plan->water;
	double before = (double)NAN, last = (double)NAN;
	long newest = -1, older = -1;

	for (size_t i = 0; i < w->reading_count; i++) {
		const struct ts_reading *r = &w->readings[i];
		long day;

		if (!r->date || r->gh_dh.kind == TS_MEASURE_NONE || ts_reading_is_ahead(r, today) ||
			!ts_date_read(r->date, &day))
			continue;
		if (day > newest) {
			older = newest;
			before = last;
			newest = day;
			last = r->gh_dh.value;
		} else if (day > older && day < newest) {
			older = day;
			before = r->gh_dh.value;
		}
	}
	return before;
}

/* "They die": more than one, and nobody says how many. */
#define SOME_DEATHS 2

static bool dying(const struct ts_plan *plan)
{
	for (size_t i = 0; i < plan->sign_count; i++) {
		if (plan->signs[i].sign == TS_SIGN_DYING)
			return true;
	}
	return false;
}

/* KH was read on several days and did not fall: nothing uses the buffer up. */
static bool kh_level(const struct ts_tank *tank)
{
	const struct ts_reading *first = NULL, *last = NULL;

	for (size_t i = 0; i < tank->reading_count; i++) {
		const struct ts_reading *r = &tank->readings[i];

		if (r->kh_dh.kind == TS_MEASURE_NONE || !r->date)
			continue;
		if (!first || strcmp(r->date, first->date) < 0)
			first = r;
		if (!last || strcmp(r->date, last->date) > 0)
			last = r;
	}
	return first && !same_day(first, last) && last->kh_dh.value >= first->kh_dh.value;
}

/* What the log and the routine have next; nothing of a log without a change of water. */
static void take_next(const struct ts_plan *plan, const struct ts_waters *waters, long today,
	const struct ts_practice *practice, struct ts_care_next *ret)
{
	const struct ts_tank *tank = &plan->tank;
	const struct ts_due_case asked = {.plan = plan,
		.supply = ts_plan_poured(plan)->reading_count ? ts_plan_poured(plan) : NULL,
		.today = today,
		.buffer_days = ts_due_buffer_days(waters, practice),
		.followed = waters->kh_rate.readings > 0,
		.expected = waters->fit.expected};
	struct ts_past_last last;
	struct ts_due due;

	if (today < 0 || !(tank->water_change.days > 0) || !(tank->water_change.amount > 0))
		return;
	ts_past_last_change(tank, today, &last);
	if (!(last.noted || last.by_reading) || last.stale)
		return;
	*ret = (struct ts_care_next){true, today, last.next, -1, (double)NAN,
		tank->water_change.amount, (double)NAN, 0, 0, tank->change_said};
	if (waters->load_known) {
		ret->litres = tank->water_change.amount / 100 * waters->load.net_l;
		ret->said_litres = tank->change_said.amount / 100 * waters->load.net_l;
	}
	ts_due_make(&asked, practice, &due);
	for (size_t i = 0; i < due.count; i++) {
		const struct ts_due_item *item = &due.items[i];

		if (item->where == TS_DUE_SUPPLY && item->read && item->day <= today)
			ret->supply |= item->what;
		if (item->where != TS_DUE_TANK || (ret->test >= 0 && item->day > ret->test))
			continue;
		ret->tested = item->what | (item->day == ret->test ? ret->tested : 0);
		ret->test = item->day;
	}
}

void ts_plan_state_make(const struct ts_plan *plan, const struct ts_waters *waters, long today,
	struct ts_plan_state *ret)
{
	ts_care_state_open(&ret->state);
	ret->waters = waters;
	take_equipment(plan, &ret->state);
	take_happened(&plan->tank, today, &ret->state);
	take_tank(ret, plan->stock_count && !ret->state.empty);
	take_ages(plan, waters, today, &ret->state);
	take_course(&plan->tank, today, &ret->state);
	/* One water of a call that is both is the tank's: what is poured in is not known. */
	if (!plan->tank.reading_count || plan->tank.readings != plan->water.readings) {
		take_change_water(&waters->poured, &ret->state);
		ret->state.supply_before_gh_dh = supply_before(plan, today);
	}
	ret->state.ph_trend = ph_trend_of(&plan->tank, today);
	ret->state.kh_level = kh_level(&plan->tank);
	ret->state.moved = ts_past_moved(&plan->tank, today);
	take_next(plan, waters, today, NULL, &ret->state.next);
	ret->state.lived_long = lived_long(plan, today);
	ret->state.newcomer_days = newcomer_days(plan, today);
	for (size_t i = 0; i < plan->sign_count; i++) {
		ret->state.signs |= sort_sign(&plan->signs[i]);
		ret->state.beside |= beside(&plan->signs[i]);
		ret->state.filter_stands |= plan->signs[i].after == TS_AFTER_POWER_CUT;
	}
	ret->state.deaths = read_or_unknown(&plan->deaths);
	if (dying(plan) && !(ret->state.deaths > 0)) {
		ret->state.deaths = SOME_DEATHS;
		ret->state.deaths_uncounted = true;
	}
	ret->ill_line = plan->sign_count ? ill_line(plan) : -1;
	if (ret->ill_line >= 0)
		ret->state.ill_days = (double)age_of(plan->stock[ret->ill_line].since, today);
}

void ts_plan_state_residents(
	struct ts_plan_state *state, const struct ts_match *residents, size_t count)
{
	state->state.residents = residents;
	state->state.resident_count = count;
}

void ts_care_state_of_waters(const struct ts_profile *tank, double tank_ec_us_cm,
	const struct ts_profile *change, double change_ec_us_cm, struct ts_care_state *ret)
{
	ts_care_state_open(ret);
	ret->gh_dh = value_of(tank, TS_GH);
	ret->kh_dh = value_of(tank, TS_KH);
	ret->ph = tank->ph_read;
	ret->temp_c = value_of(tank, TS_TEMPERATURE);
	ret->ec_us_cm = tank_ec_us_cm;
	ret->tan_mg_l = tank->poisons.tan_mg_l;
	ret->no2_mg_l = tank->poisons.no2_mg_l;
	ret->no3_mg_l = nitrate(tank);
	ret->chlorine_mg_l = tank->poisons.chlorine_mg_l;
	ret->oxygen_mg_l = tank->poisons.oxygen_mg_l;
	ret->change_kh_dh = value_of(change, TS_KH);
	ret->change_ec_us_cm = change_ec_us_cm;
	ret->change_no3_mg_l = nitrate(change);
}
