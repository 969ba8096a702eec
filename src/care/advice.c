/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The decision table. Conditions are small functions over what is known; a value that is not
 * known never makes a condition of danger hold, but keeps the rows that reassure from holding.
 */
#include "care/advice.h"

#include <math.h>
#include <string.h>

#include "care/titrate.h"
#include "chem/carbonate.h"
#include "chem/nitrogen.h"
#include "water/analysis.h"

#define NO2_PER_N (TS_MASS_NO2 / TS_WEIGHT_N)
#define COMMON "common practice, no source"
/* The way out of a crash goes through water of this KH, dH: it raises no pH at once. */
#define KH_WAY_OUT_DH 1.0
/* Water that is so acid has hardly any buffer, as long as nobody read otherwise. */
#define PH_MAYBE_BARE 6.5
/* More pure water than this in 100 L is no mending, but another water. */
#define PURE_MOST_L 75.0

const char *const ts_outcome_words[TS_OUTCOME__COUNT + 1] = {"ask", "make-safe", "test-and-vet",
	"mature-filter", "steady-the-water", "change-stock-first", "leave-alone"};
const char *const ts_urgency_words[TS_URGENCY__COUNT + 1] = {"now", "this week", "at leisure"};

void ts_care_state_open(struct ts_care_state *ret)
{
	double no = (double)NAN;

	*ret = (struct ts_care_state){.ph = no,
		.gh_dh = no,
		.kh_dh = no,
		.temp_c = no,
		.ec_us_cm = no,
		.no3_mg_l = no,
		.tan_mg_l = no,
		.no2_mg_l = no,
		.cl_mg_l = no,
		.chlorine_mg_l = no,
		.co2_mg_l = no,
		.co2_low_mg_l = no,
		.co2_high_mg_l = no,
		.oxygen_mg_l = no,
		.change_gh_dh = no,
		.change_kh_dh = no,
		.change_ec_us_cm = no,
		.change_no3_mg_l = no,
		.buffer_days = no,
		.ph_trend = no,
		.ph_swing_low = no,
		.ph_swing_high = no,
		.lived_days = no,
		.reading_age_days = no,
		.filter_stopped_h = no,
		.away_days = no,
		.copper_mg_l = no,
		.copper_low_mg_l = no,
		.deaths = no};
}

double ts_care_nh3_mg_l(double tan_mg_l, double ph, double temp_c)
{
	double fraction;

	if (isnan(tan_mg_l) || ts_chem_nh3_fraction(ph, temp_c, &fraction) != TS_OK)
		return (double)NAN;
	return tan_mg_l * fraction;
}

/* pH of a water of this KH in a tank of usual CO2, also where hardly any buffer is left. */
static double ph_of_kh(double kh_dh, double temp_c)
{
	struct ts_solution s = {.temp_c = temp_c,
		.alk_meq_l = ts_chem_meq_l_from_dkh(kh_dh),
		.na_mmol_l = ts_chem_meq_l_from_dkh(kh_dh)};
	double ph;

	if (isnan(kh_dh) ||
		ts_chem_ph_at_co2(
			&s, TS_CHEM_TANK_CO2_USUAL * ts_chem_air_co2_mmol_l(temp_c), &ph) != TS_OK)
		return (double)NAN;
	return ph;
}

/* The middle of the listed pH of the first resident whose pH is missed; NAN: none. */
static double listed_ph(const struct ts_care_state *s)
{
	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_parameter_fit *f = &s->residents[i].at[TS_PH];

		if (f->known && f->uncomfortable_by != 0) {
			const struct ts_range *r =
				isnan(f->preferred.low) ? &f->tolerated : &f->preferred;
			return (r->low + r->high) / 2;
		}
	}
	return (double)NAN;
}

static void fill_chase(const struct ts_care_state *s, const struct ts_practice *practice,
	struct ts_care_figures *f)
{
	struct ts_titration_nights nights;
	double co2 = (double)NAN, air;

	f->chase_ph = listed_ph(s);
	f->chase_acid_meq_l = f->chase_co2_mg_l = f->chase_kh_dh = f->chase_days = (double)NAN;
	if (isnan(f->chase_ph) || !s->tank || isnan(s->ph) ||
		ts_chem_co2_from_ph(s->tank, s->ph, &co2) != TS_OK)
		return;
	air = ts_chem_air_co2_mmol_l(s->tank->temp_c);
	if (ts_titrate_nights(s->tank, f->chase_ph, TS_KEEPER_SAME_DOSE, co2 / air, practice,
		    &nights) != TS_OK)
		return;
	f->chase_acid_meq_l = nights.nights[0].dose_meq_l;
	f->chase_co2_mg_l = nights.nights[0].evening.co2_mg_l;
	f->chase_kh_dh = nights.nights[0].evening.kh_dh;
	if (nights.gone_day)
		f->chase_days = nights.gone_day;
}

static void fill_limits(const double *p, struct ts_care_figures *f)
{
	f->co2_limit = p[TS_P_CO2_DANGER];
	f->co2_concern = p[TS_P_CO2_CONCERN];
	f->chlorine_limit = p[TS_P_CHLORINE_DANGER];
	f->nh3_limit = p[TS_P_NH3_CONFLICT];
	f->oxygen_now = p[TS_P_OXYGEN_NOW];
	f->oxygen_enough = p[TS_P_OXYGEN_CONCERN];
	f->kh_floor = p[TS_P_KH_FLOOR];
	f->kh_act = p[TS_P_KH_ACT];
	f->kh_warn = p[TS_P_KH_WARN];
	f->buffer_act = p[TS_P_BUFFER_ACT];
	f->no3_limit = p[TS_P_NITRATE_CONFLICT];
	f->kh_apart_limit = p[TS_P_APART_KH];
	f->ec_apart_limit = p[TS_P_APART_EC];
	f->no3_apart_limit = p[TS_P_APART_NO3];
	f->tan_safe = p[TS_P_TAN_SAFE];
	f->settled_days = p[TS_P_SETTLED_DAYS];
}

/* Water of KH 1 and the tank's own GH: thinned new water, or water without minerals. */
static void fill_way_out(const struct ts_care_state *s, struct ts_care_figures *f)
{
	struct ts_mend_wish wish = {
		s->change_gh_dh, s->change_kh_dh, s->gh_dh, KH_WAY_OUT_DH, s->temp_c};

	f->way_out_bare = isnan(s->change_kh_dh);
	if (f->way_out_bare)
		wish.gh_dh = wish.kh_dh = 0;
	(void)ts_mend_find(&wish, &f->way_out);
}

/* What all residents bear of GH or KH, as far as it is known. */
static struct ts_range borne_by_all(const struct ts_care_state *s, int parameter)
{
	struct ts_range r = {0, (double)INFINITY};

	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_range *one = &s->residents[i].at[parameter].tolerated;

		if (isnan(one->low))
			continue;
		r.low = fmax(r.low, one->low);
		r.high = fmin(r.high, one->high);
	}
	return r;
}

/*
 * The new water mended to what the animal that the row speaks of likes, as far as the others bear
 * it; nothing where they do not, or where pure water would be most of it.
 */
static bool fill_mend(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	const struct ts_parameter_fit *fit = &s->residents[f->animal].at[f->parameter];
	const struct ts_range *likes =
		isnan(fit->preferred.low) ? &fit->tolerated : &fit->preferred;
	struct ts_range all = borne_by_all(s, f->parameter);
	double from = fit->uncomfortable_by < 0 || fit->outside_by < 0 ? likes->low : likes->high;
	struct ts_mend_wish wish = {isnan(s->change_gh_dh) ? s->gh_dh : s->change_gh_dh,
		isnan(s->change_kh_dh) ? s->kh_dh : s->change_kh_dh, (double)NAN, (double)NAN,
		s->temp_c};

	if (f->parameter != TS_GH && f->parameter != TS_KH)
		return false;
	from = fmin(fmax(from, all.low), all.high);
	if (all.low > all.high || from < fit->tolerated.low || from > fit->tolerated.high)
		return false;
	if (f->parameter == TS_GH) {
		wish.gh_wish_dh = from;
		/* Thinning takes buffer too: what is needed of it is put back. */
		if (wish.kh_dh > practice[TS_P_KH_ACT] && from < wish.gh_dh)
			wish.kh_wish_dh =
				fmax(practice[TS_P_KH_ACT], wish.kh_dh * from / wish.gh_dh);
	} else {
		wish.kh_wish_dh = from;
	}
	f->mend_from = from;
	f->mends = ts_mend_find(&wish, &f->mend) && f->mend.pure_l <= PURE_MOST_L;
	return f->mends;
}

static void fill_figures(const struct ts_care_state *s, const struct ts_practice *practice,
	struct ts_care_figures *f)
{
	double warm = isnan(s->temp_c) ? 25 : s->temp_c, limit;
	double half_kh = (fmax(0, s->kh_dh) + s->change_kh_dh) / 2;
	double epa_ph = fmin(fmax(s->ph, TS_CHEM_EPA_PH_LOW), TS_CHEM_EPA_PH_HIGH);

	*f = (struct ts_care_figures){.ph = s->ph,
		.gh_dh = s->gh_dh,
		.kh_dh = s->kh_dh,
		.temp_c = s->temp_c,
		.tan_mg_l = s->tan_mg_l,
		.no2_mg_l = s->no2_mg_l,
		.no3_mg_l = s->no3_mg_l,
		.chlorine_mg_l = s->chlorine_mg_l,
		.copper_mg_l = s->copper_mg_l,
		.copper_limit = (double)NAN,
		.co2_mg_l = s->co2_mg_l,
		.oxygen_mg_l = s->oxygen_mg_l,
		.deaths = s->deaths,
		.change_gh_dh = s->change_gh_dh,
		.change_kh_dh = s->change_kh_dh,
		.buffer_days = s->buffer_days,
		.ph_trend = s->ph_trend,
		.co2_low_mg_l = s->co2_low_mg_l,
		.co2_high_mg_l = s->co2_high_mg_l,
		.ph_swing_low = s->ph_swing_low,
		.ph_swing_high = s->ph_swing_high,
		.lived_days = s->lived_days,
		.reading_age_days = s->reading_age_days,
		.filter_stopped_h = s->filter_stopped_h,
		.away_days = s->away_days,
		.animal = -1};
	fill_limits(practice->value, f);
	f->buffer_lost = s->kh_dh < f->kh_floor;
	f->careful = s->kh_dh < KH_WAY_OUT_DH || (isnan(s->kh_dh) && s->ph < PH_MAYBE_BARE);
	fill_way_out(s, f);
	f->ec_apart_percent = 100 * fabs(s->change_ec_us_cm - s->ec_us_cm) / s->ec_us_cm;
	f->no3_apart_mg_l = s->no3_mg_l - s->change_no3_mg_l;
	f->nh3_mg_l = ts_care_nh3_mg_l(s->tan_mg_l, s->ph, warm);
	f->nh3_half_mg_l = ts_care_nh3_mg_l(s->tan_mg_l / 2, ph_of_kh(half_kh, warm), warm);
	f->ccc_mg_l = (double)NAN;
	if (isnan(s->ph) || ts_chem_ammonia_ccc_mg_l(epa_ph, fmin(warm, TS_CHEM_EPA_TEMP_HIGH_C),
				    &f->ccc_mg_l) != TS_OK)
		f->ccc_mg_l = (double)NAN;
	ts_chem_nitrite_limits(isnan(s->cl_mg_l) ? -1 : s->cl_mg_l, NULL, &limit);
	f->no2_limit_mg_l = limit * NO2_PER_N;
	fill_chase(s, practice, f);
}

/* What conditions are asked with; comparisons with NAN are false, so "not known" never alarms. */
#define CONDITION(name)                                                                            \
	static bool name(                                                                          \
		const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
#define UNUSED ((void)s, (void)practice, (void)f)

/* The highest pH that fresh water of an aquarium shows. */
#define PH_WORST 8.5

static bool ammonia_now(
	const struct ts_care_state *s, const double *practice, const struct ts_care_figures *f)
{
	/* Without a pH the worst that fresh water shows is assumed. */
	double nh3 = isnan(f->nh3_mg_l) ? ts_care_nh3_mg_l(s->tan_mg_l, PH_WORST,
						  isnan(s->temp_c) ? 25 : s->temp_c)
					: f->nh3_mg_l;

	return nh3 >= practice[TS_P_NH3_NOW] || s->tan_mg_l > practice[TS_P_TAN_NOW] * f->ccc_mg_l;
}

/* Below this pH hardly any ammonia is poison (computed: under 0.4 % of it at 25 C). */
#define PH_HOLDS_AMMONIA 6.8

/* Much ammonia held harmless by a low pH: raising the pH is what would kill. */
CONDITION(crashed)
{
	UNUSED;
	return !s->empty && s->tan_mg_l >= practice[TS_P_TAN_SAFE] &&
	       (s->ph < PH_HOLDS_AMMONIA || s->kh_dh < practice[TS_P_KH_FLOOR]) &&
	       !(f->nh3_mg_l >= practice[TS_P_NH3_NOW]);
}

CONDITION(too_much_ammonia)
{
	return !s->empty && ammonia_now(s, practice, f) && !crashed(s, practice, f);
}

CONDITION(too_much_nitrite)
{
	UNUSED;
	return !s->empty && s->no2_mg_l > f->no2_limit_mg_l;
}

CONDITION(gasping_with_co2)
{
	UNUSED;
	return s->signs & TS_SIGNS_GASPING &&
	       (s->co2_injected || s->co2_low_mg_l > practice[TS_P_CO2_DANGER]);
}

CONDITION(gasping)
{
	return s->signs & TS_SIGNS_GASPING && !gasping_with_co2(s, practice, f);
}

/* With its low end alone; where gas is injected and they are well, they are watched. */
CONDITION(too_much_co2)
{
	return !s->empty && s->co2_low_mg_l > practice[TS_P_CO2_DANGER] && !s->co2_injected &&
	       !gasping_with_co2(s, practice, f);
}

CONDITION(injected_and_well)
{
	UNUSED;
	return s->co2_injected && !s->signs && !(s->deaths > 0) &&
	       s->co2_high_mg_l > practice[TS_P_CO2_CONCERN];
}

CONDITION(chlorine)
{
	UNUSED;
	return s->chlorine_mg_l >= practice[TS_P_CHLORINE_DANGER];
}

CONDITION(oxygen_low)
{
	UNUSED;
	return s->oxygen_mg_l < practice[TS_P_OXYGEN_NOW];
}

/* Short, and not yet a danger at once. */
CONDITION(oxygen_short)
{
	return s->oxygen_mg_l < practice[TS_P_OXYGEN_CONCERN] && !oxygen_low(s, practice, f);
}

/* The resident that misses `p` by most beyond tolerated (or preferred), and by at least `by`. */
static bool someone_misses(const struct ts_care_state *s, enum ts_parameter p, bool comfort,
	double by, struct ts_care_figures *f)
{
	double most = 0;
	int who = -1;

	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_parameter_fit *fit = &s->residents[i].at[p];
		double miss = fabs(comfort ? fit->uncomfortable_by : fit->outside_by);

		if (!fit->known || !(miss > 0) || miss < by || miss <= most)
			continue;
		/* A band by kind of water is coarse: only a miss that makes unsure counts. */
		if (strcmp(fit->source[0], "by kind of water") == 0 && fit->verdict < TS_UNSURE)
			continue;
		most = miss;
		who = (int)i;
	}
	if (who >= 0) {
		f->animal = who;
		f->parameter = (int)p;
	}
	return who >= 0;
}

CONDITION(temperature_far_out)
{
	UNUSED;
	return someone_misses(s, TS_TEMPERATURE, false, 3, f);
}

static bool unwell(const struct ts_care_state *s)
{
	return s->signs || s->deaths > 0;
}

/* Invertebrates from a reading that is surely above theirs; any animal where some suffer. */
CONDITION(copper)
{
	UNUSED;
	for (size_t i = 0; !s->empty && i < s->resident_count; i++) {
		const struct ts_match *m = &s->residents[i];
		bool sure = m->species->kind != TS_ANIMAL_FISH &&
			    s->copper_low_mg_l >= m->copper_borne_mg_l;

		if (isnan(m->copper_borne_mg_l) || !(sure || unwell(s)))
			continue;
		f->animal = (int)i;
		f->copper_limit = m->copper_borne_mg_l;
		return true;
	}
	return false;
}

static bool danger(const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	struct ts_care_figures untouched = *f;

	return gasping(s, practice, f) || gasping_with_co2(s, practice, f) ||
	       too_much_co2(s, practice, f) || chlorine(s, practice, f) ||
	       crashed(s, practice, f) || too_much_ammonia(s, practice, f) ||
	       too_much_nitrite(s, practice, f) || oxygen_low(s, practice, f) ||
	       copper(s, practice, &untouched) || temperature_far_out(s, practice, &untouched);
}

static bool nobody_suffers(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	return !danger(s, practice, f) && !unwell(s);
}

CONDITION(gh_missing)
{
	return isnan(s->gh_dh) && nobody_suffers(s, practice, f);
}

CONDITION(kh_missing)
{
	return !isnan(s->gh_dh) && isnan(s->kh_dh) && nobody_suffers(s, practice, f);
}

CONDITION(sudden_all)
{
	UNUSED;
	return s->signs & TS_SIGNS_SUDDEN_ALL;
}

CONDITION(one_ill)
{
	UNUSED;
	return s->signs & TS_SIGNS_ONE;
}

CONDITION(slow_decline)
{
	UNUSED;
	return s->signs & TS_SIGNS_SLOW;
}

CONDITION(other_signs)
{
	UNUSED;
	return s->signs & TS_SIGNS_OTHER;
}

CONDITION(ammonia_or_nitrite_read)
{
	double concern;

	if (s->empty || crashed(s, practice, f) || too_much_ammonia(s, practice, f) ||
		too_much_nitrite(s, practice, f))
		return false;
	ts_chem_nitrite_limits(isnan(s->cl_mg_l) ? -1 : s->cl_mg_l, &concern, NULL);
	return s->tan_mg_l >= practice[TS_P_TAN_DANGER] || s->no2_mg_l >= concern * NO2_PER_N;
}

static bool both_nil(const struct ts_care_state *s, const double *practice)
{
	return s->tan_mg_l < practice[TS_P_TAN_DANGER] &&
	       s->no2_mg_l < practice[TS_P_NITRITE_DANGER] / 3;
}

CONDITION(filter_stood_long)
{
	UNUSED;
	return s->filter_stopped_h >= practice[TS_P_FILTER_RINSE];
}

CONDITION(filter_stood)
{
	return s->filter_stopped_h >= practice[TS_P_FILTER_STOPPED] &&
	       !filter_stood_long(s, practice, f);
}

CONDITION(nobody_there)
{
	UNUSED;
	return s->away_days > 0;
}

CONDITION(read_long_ago)
{
	UNUSED;
	return s->reading_age_days > practice[TS_P_READING_OLD];
}

/* No animals yet, and what is read is what a filter grows on. */
CONDITION(maturing_empty)
{
	UNUSED;
	return s->empty && (s->tan_mg_l >= practice[TS_P_TAN_DANGER] ||
				   s->no2_mg_l > practice[TS_P_NITRITE_DANGER]);
}

/* Unknown counts as not mature, unless animals have lived there long with both nil. */
CONDITION(filter_unready)
{
	if (ammonia_or_nitrite_read(s, practice, f) || maturing_empty(s, practice, f))
		return false;
	if (too_much_ammonia(s, practice, f) || too_much_nitrite(s, practice, f))
		return false;
	if (s->filter_mature == TS_NOT_KNOWN)
		return !s->lived_long && !s->lived_in;
	return s->filter_mature == TS_KNOWN_NO;
}

/* Water without minerals, poured into a tank that has some. */
CONDITION(change_is_bare)
{
	struct ts_mend_wish wish = {
		s->change_gh_dh, s->change_kh_dh, s->gh_dh, s->kh_dh, s->temp_c};

	(void)practice;
	if (!ts_water_is_bare(s->change_gh_dh, s->change_kh_dh, s->change_ec_us_cm) ||
		!(s->gh_dh > 1 || s->kh_dh > 1))
		return false;
	f->mends = ts_mend_find(&wish, &f->mend);
	return f->mends;
}

CONDITION(kh_apart)
{
	/* Where the buffer is gone, that is what is to be said. */
	return fabs(s->change_kh_dh - s->kh_dh) > f->kh_apart_limit && !f->buffer_lost &&
	       !change_is_bare(s, practice, f);
}

CONDITION(ec_apart)
{
	return f->ec_apart_percent > f->ec_apart_limit && !kh_apart(s, practice, f) &&
	       !change_is_bare(s, practice, f);
}

CONDITION(no3_apart)
{
	UNUSED;
	return f->no3_apart_mg_l > f->no3_apart_limit;
}

CONDITION(no3_high)
{
	return s->no3_mg_l > f->no3_limit && !no3_apart(s, practice, f);
}

/* No water of ordinary KH stands above this but by light. */
#define PH_OF_LIGHT 8.3

/* Plants and algae move it: up by day, down by night. */
CONDITION(light_swings)
{
	UNUSED;
	return s->ph_swing_high - s->ph_swing_low > practice[TS_P_SWING_LIGHT] &&
	       s->ph_swing_high > PH_OF_LIGHT && !s->co2_injected;
}

/* Active soil or peat under animals that have been well for long: the bed is what they live in. */
CONDITION(acid_bed_and_well)
{
	UNUSED;
	return s->acid_bed && s->lived_days >= f->settled_days && !s->signs && !(s->deaths > 0) &&
	       !(s->tan_mg_l >= practice[TS_P_TAN_DANGER]);
}

static bool all_of_black_water(const struct ts_care_state *s)
{
	for (size_t i = 0; i < s->resident_count; i++) {
		if (s->residents[i].species->home_water != TS_HOME_BLACK)
			return false;
	}
	return s->resident_count > 0;
}

CONDITION(black_water)
{
	UNUSED;
	return s->kh_dh < practice[TS_P_KH_ACT] && all_of_black_water(s);
}

/* Minerals that a spoon of salt mends send nobody away. */
static bool mendable(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	return (someone_misses(s, TS_GH, false, 0, f) && fill_mend(s, practice, f)) ||
	       (someone_misses(s, TS_KH, false, 0, f) && fill_mend(s, practice, f));
}

/* Where the animals want more KH than the buffer does, their recipe says it. */
static bool kh_mends(const struct ts_care_state *s, const double *practice)
{
	struct ts_care_figures f = {.animal = -1};

	return someone_misses(s, TS_KH, false, 0, &f) && fill_mend(s, practice, &f);
}

CONDITION(buffer_gone)
{
	return s->kh_dh < practice[TS_P_KH_FLOOR] && !all_of_black_water(s) &&
	       !acid_bed_and_well(s, practice, f) && !crashed(s, practice, f);
}

CONDITION(buffer_act)
{
	if (buffer_gone(s, practice, f) || all_of_black_water(s) ||
		acid_bed_and_well(s, practice, f) || crashed(s, practice, f))
		return false;
	return s->kh_dh < practice[TS_P_KH_ACT] || s->buffer_days < practice[TS_P_BUFFER_ACT];
}

CONDITION(buffer_warn)
{
	if (buffer_gone(s, practice, f) || buffer_act(s, practice, f) || all_of_black_water(s) ||
		acid_bed_and_well(s, practice, f) || crashed(s, practice, f) ||
		kh_mends(s, practice))
		return false;
	return s->kh_dh < practice[TS_P_KH_WARN] || s->buffer_days < practice[TS_P_BUFFER_WARN];
}

CONDITION(ph_trends)
{
	UNUSED;
	return fabs(s->ph_trend) > 0;
}

CONDITION(temperature_out)
{
	return someone_misses(s, TS_TEMPERATURE, false, 0, f) &&
	       !temperature_far_out(s, practice, f);
}

/* What was read explains that they suffer: it is mended before anybody guesses. */
static bool explained(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	struct ts_care_figures untouched = *f;

	return danger(s, practice, f) || ammonia_or_nitrite_read(s, practice, f) ||
	       oxygen_short(s, practice, f) || (buffer_gone(s, practice, f) && !s->acid_bed) ||
	       temperature_out(s, practice, &untouched);
}

CONDITION(deaths)
{
	return s->deaths > 0 && !explained(s, practice, f);
}

CONDITION(since_not_said)
{
	UNUSED;
	return s->lived_in && !(s->lived_days > 0) && !s->lived_long;
}

static bool lived_well(const struct ts_care_state *s)
{
	return s->lived_long && !s->signs && !(s->deaths > 0);
}

CONDITION(minerals_mend_and_well)
{
	return lived_well(s) && mendable(s, practice, f);
}

CONDITION(minerals_mend)
{
	return !lived_well(s) && mendable(s, practice, f);
}

CONDITION(gh_out)
{
	return someone_misses(s, TS_GH, false, 0, f) && !fill_mend(s, practice, f);
}

CONDITION(kh_out)
{
	return someone_misses(s, TS_KH, false, 0, f) && !fill_mend(s, practice, f);
}

static bool minerals_out(const struct ts_care_state *s, struct ts_care_figures *f)
{
	return someone_misses(s, TS_GH, false, 0, f) || someone_misses(s, TS_KH, false, 0, f) ||
	       someone_misses(s, TS_TEMPERATURE, false, 0, f);
}

CONDITION(not_comfortable)
{
	struct ts_care_figures other = *f;

	if (minerals_out(s, &other))
		return false;
	if (someone_misses(s, TS_GH, true, 0, f) || someone_misses(s, TS_KH, true, 0, f)) {
		(void)fill_mend(s, practice, f);
		return true;
	}
	return someone_misses(s, TS_TEMPERATURE, true, 0, f);
}

static bool ph_alone(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	struct ts_care_figures other = *f;

	return !minerals_out(s, &other) && !(fabs(s->ph_trend) > 0) &&
	       !light_swings(s, practice, f) && someone_misses(s, TS_PH, true, 0, f);
}

/* Only who has lived there for long is settled; only what was read on several days is steady. */
CONDITION(ph_alone_young)
{
	return !s->lived_long && ph_alone(s, practice, f);
}

CONDITION(ph_alone_untested)
{
	return s->lived_long && !both_nil(s, practice) && ph_alone(s, practice, f);
}

CONDITION(ph_alone_once)
{
	return s->lived_long && both_nil(s, practice) && !s->ph_repeated &&
	       ph_alone(s, practice, f);
}

CONDITION(ph_alone_known)
{
	return s->lived_long && both_nil(s, practice) && s->ph_repeated && ph_alone(s, practice, f);
}

CONDITION(in_range_untested)
{
	UNUSED;
	return !both_nil(s, practice);
}

CONDITION(in_range)
{
	UNUSED;
	return true;
}

/* clang-format off */
const struct ts_advice_row ts_advice_rows[] = {
	{"ask.gh", 1, TS_ASK, TS_THIS_WEEK, gh_missing,
		"Test GH with drops first, and KH: they decide most, and nothing is advised without them. Leave the pH alone.",
		"GH is not known.", COMMON},
	{"ask.kh", 1, TS_ASK, TS_THIS_WEEK, kh_missing,
		"Test KH with drops first: without it nobody can say how steady the pH is.",
		"KH is not known.", COMMON},
	{"now.gasping-co2", 2, TS_MAKE_SAFE, TS_NOW, gasping_with_co2,
		"Too much CO2: turn it off and air on strongly, now, until nobody gasps, and add nothing to the water. In the next hour: test ammonia, nitrite and oxygen. This week: less gas, and off at night.",
		"They gasp; CO2 {co2} mg/L, borne to {co2_limit}.", "CO2: " COMMON "; concern from 20 mg/L, Hargreaves & Brunson 1996"},
	{"now.gasping", 2, TS_MAKE_SAFE, TS_NOW, gasping,
		"They want for oxygen: air on strongly, CO2 off, now. In the next hour: test ammonia, nitrite and temperature; if they still gasp, change a quarter of the water for treated water of the same temperature, GH and KH. This week: find what used the oxygen up (heat, a stopped filter, dead matter, medicine).",
		"They gasp at the surface.", COMMON},
	{"now.crash", 2, TS_MAKE_SAFE, TS_NOW, crashed,
		"{cause}: make it safe slowly, and do not change half. In the next hour: move the surface, feed nothing, test pH and ammonia once more. This week: nothing to eat for 3 days, and 15 % a day of treated water of KH about 1 and the tank's own conductivity, until ammonia is below {tan_safe} mg/L; only then let KH rise, by stages. No newcomers. {way_out}",
		"Ammonia {tan} mg/L N is {nh3} mg/L as poison now; half a tank of your change water would make it {nh3_half}.", "Emerson et al. 1975; " COMMON},
	{"now.ammonia", 2, TS_MAKE_SAFE, TS_NOW, too_much_ammonia,
		"Ammonia {tan} mg/L N poisons them. In the next hour: change {share} of the water for treated water of the same warmth and no higher pH, which would make it worse; air on, feed nothing. This week: test every day, change again while it reads the same, look for what died, feed a little only when it reads nil. No newcomers.",
		"Ammonia {tan} mg/L N{unionised}.", "Emerson et al. 1975; US EPA 2013, EPA 822-R-13-001"},
	{"now.nitrite", 2, TS_MAKE_SAFE, TS_NOW, too_much_nitrite,
		"Nitrite {no2} mg/L takes the breath out of their blood. In the next hour: change {share} of the water for treated water of the same warmth; air on, feed nothing; about 1 g of cooking salt without additives to 10 L, no more where snails, plants or fish of soft water live. This week: test every day and change again while it reads the same; feed a little only when it reads nil. No newcomers.",
		"Nitrite (NO2) {no2} mg/L, borne to {no2_limit} at this chloride.", "estimate from memory; that chloride protects is established; salt: " COMMON},
	{"now.copper", 2, TS_MAKE_SAFE, TS_NOW, copper,
		"Copper poisons them. In the next hour: change {share} of the water for treated water free of copper, of the same warmth and hardness; air on; take out what gives it off (medicine, metal), and pour in no more of this tap. This week: test copper every day and change again until it is below {copper_limit} mg/L; let the tap run before you fill, and test it.",
		"{animal}: copper {copper} mg/L, borne to {copper_limit}.", COMMON},
	{"now.co2", 2, TS_MAKE_SAFE, TS_NOW, too_much_co2,
		"Much CO2 for its pH and KH: turn any gas off and air on, now. In the next hour: read pH again in an aired glass; if it rises, it was gas, and if not, another acid holds it.",
		"CO2 {co2} mg/L ({co2_low} to {co2_high}), borne to {co2_limit}.", "CO2: " COMMON "; concern from 20 mg/L, Hargreaves & Brunson 1996"},
	{"now.chlorine", 2, TS_MAKE_SAFE, TS_NOW, chlorine,
		"Chlorine burns their gills: treat the tank against chlorine and chloramine now, for its whole volume, and air on. This week: treat every new water before it goes in, and test ammonia, which treated chloramine leaves.",
		"Chlorine {chlorine} mg/L, borne to {chlorine_limit}.", "US EPA 1984 (from memory)"},
	{"now.oxygen", 2, TS_MAKE_SAFE, TS_NOW, oxygen_low,
		"Too little oxygen: air on strongly, now; take dead matter out; feed nothing today. This week: move the surface day and night.",
		"Oxygen {oxygen} mg/L, danger below {oxygen_now}.", "published, figure recalled, work not re-checked"},
	{"now.temperature", 2, TS_MAKE_SAFE, TS_NOW, temperature_far_out,
		"Check heater and thermometer now (unplug the heater before you draw water) and bring the temperature back by 1 C an hour at most, 2 C a day.",
		"{animal}: {miss}.", COMMON},
	{"vet.sudden-all", 3, TS_TEST_AND_VET, TS_NOW, sudden_all,
		"All kinds at once points to poison, oxygen or temperature, not to a disease. In the next hour: air on, test ammonia, nitrite and temperature, change a quarter for matched, treated water. This week: think of spray, paint, metal, medicine and new stones; a vet decides about animals that suffer. No new animals, no re-making.",
		"Sudden signs in all kinds of animals.", COMMON},
	{"vet.one", 3, TS_TEST_AND_VET, TS_THIS_WEEK, one_ill,
		"One animal or one species points to disease: isolate it if you can, and ask a vet for fish before any medicine. Gloves for your hands. No new animals, no re-making.",
		"Signs in one animal or one species.", COMMON},
	{"vet.slow", 3, TS_TEST_AND_VET, TS_THIS_WEEK, slow_decline,
		"Slow wasting points to wrong hardness, age or an infection that people can catch: compare GH with what they need, wear gloves, ask a vet. No new animals, no re-making.",
		"Decline over weeks.", COMMON},
	{"vet.deaths", 3, TS_TEST_AND_VET, TS_THIS_WEEK, deaths,
		"Find out why before anything else: test ammonia, nitrite, temperature and KH; ask a vet if they are in order. No new animals, no re-making.",
		"{deaths} unexplained deaths within four weeks.", COMMON},
	{"vet.other", 3, TS_TEST_AND_VET, TS_THIS_WEEK, other_signs,
		"Say since when and how many are affected, and test ammonia, nitrite and temperature; a vet decides about disease. No new animals, no re-making.",
		"Signs of distress.", COMMON},
	{"filter.stood-long", 4, TS_MATURE_FILTER, TS_NOW, filter_stood_long,
		"Do not start the filter as it is: what stood in it without oxygen is poison. In the next hour: open it, rinse it in tank water, start it; air on. This week: feed nothing for two days, then half; test ammonia and nitrite every day until both read nil.",
		"The filter stood for {filter_stopped} hours.", COMMON},
	{"filter.stood", 4, TS_MATURE_FILTER, TS_NOW, filter_stood,
		"Set the filter going, and move the surface until it runs (air, or a cup poured from a height). Feed nothing today; test ammonia and nitrite tomorrow and on three days more.",
		"The filter stood for {filter_stopped} hours.", COMMON},
	{"filter.maturing", 4, TS_MATURE_FILTER, TS_AT_LEISURE, maturing_empty,
		"Go on: the filter is maturing, and nobody lives there yet. Wait until ammonia and nitrite both read nil a day after feeding it, for a week; then change half and buy the first third.",
		"Ammonia {tan} mg/L N, nitrite {no2} mg/L: that is what it grows on.", COMMON},
	{"filter.reading", 4, TS_MATURE_FILTER, TS_THIS_WEEK, ammonia_or_nitrite_read,
		"The filter is not coping with ammonia and nitrite: feed half, change 25 % every second day for matched, treated water, no newcomers until both read nil for 7 days.",
		"{both_read}; both should read nil.", COMMON},
	{"filter.unready", 4, TS_MATURE_FILTER, TS_THIS_WEEK, filter_unready,
		"Let the filter mature before any animal is added; then buy in thirds, 14 days apart, with a test of ammonia and nitrite before each.",
		"The filter is not known to clear ammonia and nitrite to nil for 7 days.", COMMON},
	{"apart.bare", 5, TS_STEADY, TS_THIS_WEEK, change_is_bare,
		"Give the new water minerals before it goes in: bare water takes the tank's buffer away. {mend}",
		"New water GH {change_gh}, KH {change_kh}; the tank GH {gh}, KH {kh}.", COMMON},
	{"apart.kh", 5, TS_STEADY, TS_THIS_WEEK, kh_apart,
		"Tank and change water have drifted apart: small changes of 10 % twice a week until they agree, no newcomers meanwhile.",
		"KH {kh} in the tank, {change_kh} in the change water: more than {kh_apart_limit} apart.", COMMON},
	{"apart.ec", 5, TS_STEADY, TS_THIS_WEEK, ec_apart,
		"Tank and change water have drifted apart: small changes of 10 % twice a week until they agree, no newcomers meanwhile.",
		"Conductivity {ec_apart} % apart: more than {ec_apart_limit}.", COMMON},
	{"apart.no3", 5, TS_STEADY, TS_THIS_WEEK, no3_apart,
		"Waste has gathered: small changes of 10 % twice a week until nitrate has fallen, no newcomers meanwhile.",
		"Nitrate {no3_apart} mg/L above the change water: more than {no3_apart_limit}.", COMMON},
	{"oxygen.short", 5, TS_STEADY, TS_NOW, oxygen_short,
		"Oxygen is short: move the surface more, day and night, and feed half; read oxygen again before the lights go on. No newcomers until it stays above {oxygen_enough} mg/L.",
		"Oxygen {oxygen} mg/L, enough from {oxygen_enough}, danger below {oxygen_now}.", "published, figure recalled, work not re-checked"},
	{"nitrate.high", 5, TS_STEADY, TS_THIS_WEEK, no3_high,
		"Bring nitrate down by small changes, and test the tap too: changes cannot go below it.",
		"Nitrate {no3} mg/L, borne to {no3_limit}.", COMMON},
	{"light.swing", 5, TS_STEADY, TS_THIS_WEEK, light_swings,
		"Light makes this pH: plants and algae take the CO2 by day and give it back by night. Light the tank for fewer hours, keep the sun off it, move the surface in the evening, and measure at one hour of the day, best before the lights go on.",
		"Within a day its pH went from {ph_swing_low} to {ph_swing_high}, at KH {kh}.", COMMON},
	{"co2.watch", 6, TS_STEADY, TS_THIS_WEEK, injected_and_well,
		"They are well under injected CO2: watch them in the early morning, when oxygen is least and the gas most; turn it off at night, and give no more than now.",
		"CO2 about {co2} mg/L ({co2_low} to {co2_high}) by pH and KH; borne to {co2_limit}.", "CO2: " COMMON "; concern from 20 mg/L, Hargreaves & Brunson 1996"},
	{"leave.acid-bed", 6, TS_LEAVE_ALONE, TS_AT_LEISURE, acid_bed_and_well,
		"Leave the water alone: the soil or peat holds KH and pH low, and they have been well in it. Watch KH, pH and ammonia every week: soil is spent after a year or two, and KH then rises by itself.",
		"KH {kh}, pH {ph}, and they have lived there for {lived_days} days.", COMMON},
	{"buffer.gone", 6, TS_STEADY, TS_THIS_WEEK, buffer_gone,
		"The buffer is used up: test ammonia, then change 10 to 15 % every second day with water that has KH, until KH stays above {kh_act}. No pH product: it uses up what buffer is left.",
		"KH {kh}, floor {kh_floor}.", "US EPA 440/5-86-001: 20 mg/L as CaCO3"},
	{"buffer.act", 6, TS_STEADY, TS_THIS_WEEK, buffer_act,
		"The buffer is nearly used up: change a little more water, more often, this week.",
		"KH {kh}; below {kh_act}, or less than {buffer_act} days of buffer, calls for action.", COMMON},
	{"buffer.warn", 6, TS_STEADY, TS_AT_LEISURE, buffer_warn,
		"The buffer is short: keep the water changes regular and test KH every week.",
		"KH {kh}; below {kh_warn} it wants watching.", COMMON},
	{"black-water", 6, TS_STEADY, TS_AT_LEISURE, black_water,
		"Animals of black water live with this little buffer: keep the load light and test pH and ammonia twice a week.",
		"KH {kh}, below {kh_act}.", COMMON},
	{"ph.trend", 6, TS_STEADY, TS_THIS_WEEK, ph_trends,
		"The pH moves from week to week: find out what uses the buffer up (KH now and in the change water) and change water in small, regular amounts.",
		"pH has moved by {ph_trend} over its readings.", COMMON},
	{"stock.stay", 7, TS_STEADY, TS_AT_LEISURE, minerals_mend_and_well,
		"They stay: they have lived there for long and are well. They do better with {mend_from}. {mend}",
		"{animal}: {miss}.", COMMON},
	{"stock.minerals", 7, TS_STEADY, TS_THIS_WEEK, minerals_mend,
		"Mend the minerals of the new water, by small changes. {mend}",
		"{animal}: {miss}.", COMMON},
	{"stock.gh", 7, TS_CHANGE_STOCK, TS_AT_LEISURE, gh_out,
		"Change the stock first, the water second: keep what fits this water, find another keeper for what does not.",
		"{animal}: {miss}.", COMMON},
	{"stock.kh", 7, TS_CHANGE_STOCK, TS_AT_LEISURE, kh_out,
		"Change the stock first, the water second: keep what fits this water, find another keeper for what does not.",
		"{animal}: {miss}.", COMMON},
	{"stock.temperature", 7, TS_CHANGE_STOCK, TS_THIS_WEEK, temperature_out,
		"Bring the temperature to what they all bear, by 2 C a day at most: shade, an open lid and a moved surface cool it, a heater warms it.",
		"{animal}: {miss}.", COMMON},
	{"leave.comfort", 8, TS_LEAVE_ALONE, TS_AT_LEISURE, not_comfortable,
		"Leave the water alone and watch: they bear it, and a steady water is worth more than a perfect one.",
		"{animal}: {miss}. {better}", COMMON},
	{"leave.ph-young", 9, TS_LEAVE_ALONE, TS_THIS_WEEK, ph_alone_young,
		"Leave the pH alone, and read it again at the same hour for some days: they are not known to have lived there long, and nobody knows yet whether it stands still. Test ammonia and nitrite.",
		"{animal}: {miss}.", COMMON},
	{"leave.ph-untested", 9, TS_LEAVE_ALONE, TS_THIS_WEEK, ph_alone_untested,
		"Leave the pH alone. Test ammonia and nitrite once, to be sure that it is nothing else.",
		"{animal}: {miss}. {chase}", COMMON},
	{"leave.ph-once", 9, TS_LEAVE_ALONE, TS_AT_LEISURE, ph_alone_once,
		"Leave the pH alone: the hardness is right, and they are settled. Read it again at the same hour, to see whether it stands still.",
		"{animal}: {miss}. {chase}", COMMON},
	{"leave.ph", 9, TS_LEAVE_ALONE, TS_AT_LEISURE, ph_alone_known,
		"Leave the pH alone: it is steady, the hardness is right, and they are settled.",
		"{animal}: {miss}. {chase}", COMMON},
	{"leave.untested", 10, TS_LEAVE_ALONE, TS_THIS_WEEK, in_range_untested,
		"Leave the water alone. Test ammonia and nitrite once, to be sure.",
		"What was measured is in range.", COMMON},
	{"leave.all", 10, TS_LEAVE_ALONE, TS_AT_LEISURE, in_range,
		"Leave the water alone; test again in four weeks.",
		"Everything measured is in range.", COMMON},
	{"ask.again", 11, TS_ASK, TS_THIS_WEEK, read_long_ago,
		"Read GH, KH and pH of the tank again: a tank that was read so long ago may be another by now.",
		"The last reading is {reading_age} days old.", COMMON},
	{"ask.since", 11, TS_ASK, TS_AT_LEISURE, since_not_said,
		"How long have they lived there? Who has been well in a water for eight weeks bears it.",
		"How long they have lived there is not said.", COMMON},
	{"away", 11, TS_STEADY, TS_AT_LEISURE, nobody_there,
		"Before you go: change water three days ahead and not on the last, look at heater and filter, add no animals in the fortnight before. Grown, healthy fish need no feed for two weeks; fry, and longer times, want somebody with portions packed by day.",
		"Nobody is there for {away} days.", COMMON},
};
/* clang-format on */

const size_t ts_advice_row_count = sizeof ts_advice_rows / sizeof *ts_advice_rows;

/* Whether a row may stand behind the answer: no reassurance behind trouble, no idle repetition. */
static bool may_follow(const struct ts_advice_row *row, const struct ts_advice *first)
{
	if (row->group == 11)
		return true;
	/* In a danger other steps would contradict its own: a crash is not to be changed away. */
	if (first->row->group == 2)
		return row->group <= 4;
	if (row->group <= 7)
		return true;
	return row->group <= 9 && first->row->group >= 5;
}

/* Read beyond its limit, it explains that they suffer. */
static bool is_cause(const struct ts_advice_row *row, const struct ts_care_state *s)
{
	static const char *const causes[] = {
		"filter.reading", "oxygen.short", "buffer.gone", "stock.temperature"};

	/* Gasping is a sign itself. */
	if (row->group == 2)
		return strcmp(row->id, "now.gasping") != 0;
	for (size_t i = 0; i < sizeof causes / sizeof *causes; i++) {
		if (strcmp(row->id, causes[i]) == 0)
			return i != 2 || !s->acid_bed;
	}
	return false;
}

/* What explains the signs goes before what is asked about them. */
static void lead_with(struct ts_advice *all, size_t to, size_t from)
{
	struct ts_advice one = all[from];

	memmove(&all[to + 1], &all[to], (from - to) * sizeof *all);
	all[to] = one;
}

size_t ts_advise(const struct ts_care_state *state, const struct ts_practice *practice,
	struct ts_advice ret[TS_ADVICE_MOST])
{
	struct ts_practice own;
	struct ts_care_figures figures;
	size_t count = 0, causes = 0;

	ts_practice_defaults(&own);
	practice = practice ? practice : &own;
	fill_figures(state, practice, &figures);
	for (size_t i = 0; i < ts_advice_row_count && count < TS_ADVICE_MOST; i++) {
		struct ts_advice one = {&ts_advice_rows[i], figures};

		if (!one.row->holds(state, practice->value, &one.figures))
			continue;
		if (count && !may_follow(one.row, &ret[0]))
			continue;
		ret[count++] = one;
		/* What cannot wait (all at once) is never put behind what can. */
		if (unwell(state) && is_cause(one.row, state) &&
			one.row->urgency <= ret[causes].row->urgency)
			lead_with(ret, causes++, count - 1);
	}
	return count;
}
