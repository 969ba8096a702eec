/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The conditions of advice that cannot wait: what is asked before anything, dangers that were read,
 * signs and deaths, the filter. Comparisons with NAN are false, so what is not known never alarms.
 */
#include "care/advice_work.h"

#include "base/number.h"
#include "chem/ions.h"
#include "chem/nitrogen.h"

#define NO2_PER_N (TS_MASS_NO2 / TS_WEIGHT_N)

/* The highest pH that fresh water of an aquarium shows. */
#define PH_WORST 8.5

static bool read_beyond(
	const struct ts_care_state *s, const double *practice, const struct ts_care_figures *f);

static bool ammonia_now(
	const struct ts_care_state *s, const double *practice, const struct ts_care_figures *f)
{
	/* Without a pH the worst that fresh water shows is assumed. */
	double nh3 = isnan(f->nh3_mg_l) ? ts_care_nh3_mg_l(s->tan_mg_l, PH_WORST,
						  isnan(s->temp_c) ? 25 : s->temp_c)
					: f->nh3_mg_l;

	return nh3 >= practice[isnan(f->nh3_mg_l) ? TS_P_NH3_NOW : TS_P_NH3_CONFLICT] ||
	       s->tan_mg_l > practice[TS_P_TAN_NOW] * f->ccc_mg_l;
}

/* Below this pH hardly any ammonia is poison (computed: under 0.4 % of it at 25 C). */
#define PH_HOLDS_AMMONIA 6.8

/* Much ammonia held harmless by a low pH: raising the pH is what would kill. */
/* Somebody is there: named, or seen to suffer. */
static bool lived_in(const struct ts_care_state *s)
{
	return !s->empty || ts_advice_unwell(s);
}

CONDITION(crashed)
{
	UNUSED;
	return lived_in(s) && s->tan_mg_l >= practice[TS_P_TAN_SAFE] &&
	       (s->ph < PH_HOLDS_AMMONIA || s->kh_dh < practice[TS_P_KH_FLOOR]) &&
	       !(f->nh3_mg_l >= practice[TS_P_NH3_CONFLICT]);
}

CONDITION(too_much_ammonia)
{
	return lived_in(s) && ammonia_now(s, practice, f) && !ts_holds_crashed(s, practice, f);
}

/* So little nitrite, mg/L N, makes nobody gasp (common practice). */
#define NITRITE_SLIGHT_MG_L 0.12

static bool slight_nitrite(const struct ts_care_state *s)
{
	return s->no2_mg_l < NITRITE_SLIGHT_MG_L * NO2_PER_N;
}

/* They gasp, or oxygen was read as a danger: air goes before what harms slowly. */
static bool short_of_breath(const struct ts_care_state *s, const double *practice)
{
	return s->signs & TS_SIGNS_GASPING || s->oxygen_mg_l <= practice[TS_P_OXYGEN_NOW];
}

/* Over a crash the slow way out leads, and says it. */
CONDITION(too_much_nitrite)
{
	return lived_in(s) && s->no2_mg_l > f->no2_limit_mg_l &&
	       !ts_holds_crashed(s, practice, f) &&
	       !(short_of_breath(s, practice) && slight_nitrite(s));
}

CONDITION(gasping_with_co2)
{
	UNUSED;
	return s->signs & TS_SIGNS_GASPING &&
	       (s->co2_injected || s->co2_low_mg_l > practice[TS_P_CO2_DANGER]);
}

/* Where a poison or the warmth was read, that is the cause, and its own row says what to do. */
static bool gasping_unread(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	return s->signs & TS_SIGNS_GASPING && !ts_holds_gasping_with_co2(s, practice, f) &&
	       !read_beyond(s, practice, f) && !ts_holds_chlorine_poured(s, practice, f) &&
	       !ts_holds_water_changed(s, practice, f) && !ts_holds_untreated(s, practice, f) &&
	       !ts_holds_poison_got_in(s, practice, f);
}

static bool stands(const struct ts_care_state *s)
{
	return s->filter_stands || s->filter_stopped_h > 0;
}

CONDITION(gasping_filter)
{
	return stands(s) && gasping_unread(s, practice, f);
}

/* A filter of fewer days does not cope yet (common practice). */
#define YOUNG_DAYS 42

/*
 * In a tank that has not run for six weeks ammonia or nitrite makes them gasp until a test says
 * otherwise; a change of treated water harms nobody whose buffer stands.
 */
CONDITION(gasping_young)
{
	bool young = s->filter_mature == TS_KNOWN_NO ||
		     (s->lived_days > 0 && s->lived_days < YOUNG_DAYS && !s->lived_long);

	return young && f->untested & (unsigned)(TS_UNTESTED_AMMONIA | TS_UNTESTED_NITRITE) &&
	       !f->careful && !stands(s) && gasping_unread(s, practice, f);
}

/* A bowl: no filter, no pump; fresh water is the one thing at hand. */
CONDITION(gasping_still)
{
	return s->filter_none && !s->lived_long && !f->careful && !stands(s) &&
	       !ts_holds_gasping_young(s, practice, f) && gasping_unread(s, practice, f);
}

CONDITION(gasping)
{
	return !stands(s) && !ts_holds_gasping_young(s, practice, f) &&
	       !ts_holds_gasping_still(s, practice, f) && gasping_unread(s, practice, f);
}

/* So much CO2 fish do not live in for hours (common practice, no source): a reading is wrong. */
#define CO2_NOBODY_MG_L 150

CONDITION(co2_unlikely)
{
	UNUSED;
	return !s->empty && s->co2_low_mg_l > CO2_NOBODY_MG_L && !s->co2_injected &&
	       !(s->signs & TS_SIGNS_GASPING);
}

/* With its low end alone; where gas is injected and they are well, they are watched. */
CONDITION(too_much_co2)
{
	return !s->empty && s->co2_low_mg_l > practice[TS_P_CO2_DANGER] && !s->co2_injected &&
	       !ts_holds_gasping_with_co2(s, practice, f) && !ts_holds_co2_unlikely(s, practice, f);
}

/* A poison or a temperature that was read, beside the oxygen. */
static bool poisoned(
	const struct ts_care_state *s, const double *practice, const struct ts_care_figures *f);

CONDITION(chlorine)
{
	UNUSED;
	return s->chlorine_mg_l >= practice[TS_P_CHLORINE_DANGER];
}

/* Signs that chlorine makes, and chlorine in what is poured in; treating harms nobody. */
CONDITION(chlorine_poured)
{
	return s->signs & (TS_SIGNS_GASPING | TS_SIGNS_SUDDEN_ALL) &&
	       s->change_chlorine_mg_l >= practice[TS_P_CHLORINE_DANGER] &&
	       !ts_holds_chlorine(s, practice, f);
}

/* It began with a change of water, and nothing that was read explains it. */
CONDITION(water_changed)
{
	return s->beside & TS_BESIDE_CHANGED && !s->empty && !ts_holds_chlorine(s, practice, f) &&
	       !ts_holds_chlorine_poured(s, practice, f) && !read_beyond(s, practice, f) &&
	       !ts_holds_gasping_with_co2(s, practice, f);
}

/* Where they gasp, what is short is too little; warmth and other poison say what else to do. */
CONDITION(oxygen_low)
{
	return s->oxygen_mg_l < practice[TS_P_OXYGEN_NOW] ||
	       (s->oxygen_mg_l < practice[TS_P_OXYGEN_CONCERN] && s->signs & TS_SIGNS_GASPING &&
		       !ts_holds_gasping_with_co2(s, practice, f) && !poisoned(s, practice, f));
}

bool ts_advice_someone_misses(const struct ts_care_state *s, enum ts_parameter p, bool comfort,
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

/* Beyond what is borne by so much, C, it is a danger at once. */
#define FAR_OUT_C 3

/* Somebody there likes it as it is: then it is no heater that failed, but two who share no warmth.
 */
bool ts_advice_warmth_liked(const struct ts_care_state *s)
{
	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_parameter_fit *fit = &s->residents[i].at[TS_TEMPERATURE];

		if (fit->known && fit->uncomfortable_by == 0)
			return true;
	}
	return false;
}

/* So far beyond that it is a danger whoever else likes it, C. */
#define DEADLY_C 6

static bool temperature_far_out(const struct ts_care_state *s, struct ts_care_figures *f)
{
	return ts_advice_someone_misses(
		s, TS_TEMPERATURE, false, ts_advice_warmth_liked(s) ? DEADLY_C : FAR_OUT_C, f);
}

CONDITION(too_warm)
{
	UNUSED;
	return temperature_far_out(s, f) &&
	       s->residents[f->animal].at[TS_TEMPERATURE].outside_by > 0;
}

static bool far_too_cold(const struct ts_care_state *s, struct ts_care_figures *f)
{
	return temperature_far_out(s, f) &&
	       s->residents[f->animal].at[TS_TEMPERATURE].outside_by < 0;
}

/* Heater and filter hang on one wire. */
CONDITION(too_cold_no_power)
{
	UNUSED;
	return stands(s) && far_too_cold(s, f);
}

CONDITION(too_cold)
{
	UNUSED;
	return !stands(s) && far_too_cold(s, f);
}

bool ts_advice_unwell(const struct ts_care_state *s)
{
	return s->signs || s->deaths > 0;
}

/* Changes of half the water that copper takes before moving them is the shorter way. */
#define HALVES_MOST 2

/*
 * Invertebrates from a reading that is surely above theirs, fish from one that poisons all of them;
 * any animal where some suffer.
 */
static bool copper(const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	for (size_t i = 0; !s->empty && i < s->resident_count; i++) {
		const struct ts_match *m = &s->residents[i];
		bool sure = s->copper_low_mg_l >=
			    (m->species->kind == TS_ANIMAL_FISH ? practice[TS_P_COPPER_FISH_SURELY]
								: m->copper_borne_mg_l);

		if (isnan(m->copper_borne_mg_l) || !(sure || ts_advice_unwell(s)))
			continue;
		f->animal = (int)i;
		f->copper_limit = m->copper_borne_mg_l;
		f->copper_halves = ceil(ts_log2(s->copper_mg_l / m->copper_borne_mg_l) - 1e-9);
		return true;
	}
	return false;
}

/* So much that changes would come too late. */
CONDITION(copper_much)
{
	return copper(s, practice, f) && f->copper_halves > HALVES_MOST;
}

CONDITION(copper_some)
{
	return copper(s, practice, f) && !(f->copper_halves > HALVES_MOST);
}

static bool poisoned(
	const struct ts_care_state *s, const double *practice, const struct ts_care_figures *f)
{
	struct ts_care_figures other = *f;

	return ts_holds_too_much_co2(s, practice, &other) ||
	       ts_holds_co2_unlikely(s, practice, &other) ||
	       ts_holds_chlorine(s, practice, &other) || ts_holds_crashed(s, practice, &other) ||
	       ts_holds_too_much_ammonia(s, practice, &other) ||
	       ts_holds_too_much_nitrite(s, practice, &other) || copper(s, practice, &other) ||
	       temperature_far_out(s, &other);
}

/* A poison, a want of oxygen or a temperature that was read is a danger, and a cause. */
static bool read_beyond(
	const struct ts_care_state *s, const double *practice, const struct ts_care_figures *f)
{
	struct ts_care_figures other = *f;

	return poisoned(s, practice, f) || ts_holds_oxygen_low(s, practice, &other);
}

bool ts_advice_danger(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	return gasping_unread(s, practice, f) || ts_holds_gasping_with_co2(s, practice, f) ||
	       ts_holds_water_changed(s, practice, f) || ts_holds_chlorine_poured(s, practice, f) ||
	       ts_holds_untreated(s, practice, f) || ts_holds_poison_got_in(s, practice, f) ||
	       read_beyond(s, practice, f);
}

static bool nobody_suffers(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	return !ts_advice_danger(s, practice, f) && !ts_advice_unwell(s);
}

CONDITION(gh_missing)
{
	/* A buffer that goes is more pressing than what GH would tell. */
	return isnan(s->gh_dh) && !(s->kh_dh < practice[TS_P_KH_ACT]) &&
	       !ts_holds_buffer_hinted(s, practice, f) && nobody_suffers(s, practice, f);
}

CONDITION(kh_missing)
{
	return !isnan(s->gh_dh) && isnan(s->kh_dh) && !ts_holds_buffer_hinted(s, practice, f) &&
	       nobody_suffers(s, practice, f);
}

/* What was read explains that they suffer: it is mended before anybody guesses. */
static bool explained(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	struct ts_care_figures other = *f;

	return ts_advice_danger(s, practice, f) || ts_holds_medicine_kills(s, practice, f) ||
	       ts_holds_ammonia_or_nitrite_read(s, practice, f) ||
	       ts_holds_oxygen_short(s, practice, f) || ts_holds_gone_old(s, practice, f) ||
	       ts_holds_change_is_softened(s, practice, f) || ts_holds_kh_apart(s, practice, f) ||
	       (ts_holds_buffer_gone(s, practice, f) && !s->acid_bed) ||
	       ts_holds_temperature_out(s, practice, &other);
}

/*
 * Only what cannot wait itself goes before it, and water far from what they bear, which explains
 * what has gone on for days.
 */
CONDITION(sudden_all)
{
	struct ts_care_figures other = *f;

	return s->signs & TS_SIGNS_SUDDEN_ALL && !ts_advice_danger(s, practice, f) &&
	       (s->beside & TS_BESIDE_AT_ONCE || !ts_holds_minerals_wear(s, practice, &other)) &&
	       !ts_holds_old_age(s, practice, &other);
}

static bool fights(const struct ts_species *one)
{
	return one->nips || one->to_own_kind || one->to_others;
}

/* How much of a fighter it is: who injures before who chases. */
static int temper_of(const struct ts_species *one)
{
	return 2 * (one->to_own_kind + one->to_others) + one->nips;
}

/* Torn fins, hiding, chasing, and somebody there who does that. */
CONDITION(fighting)
{
	int who = -1;

	if (!(s->signs & TS_SIGNS_FIGHT) || explained(s, practice, f))
		return false;
	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_species *one = s->residents[i].species;

		if (fights(one) &&
			(who < 0 || temper_of(one) > temper_of(s->residents[who].species)))
			who = (int)i;
	}
	if (who >= 0)
		f->animal = who;
	return who >= 0;
}

/* So many days white spot takes to show on those that were there before (common practice). */
#define BROUGHT_DAYS 42

CONDITION(spots_brought)
{
	struct ts_care_figures other = *f;

	return s->signs & TS_SIGNS_SPOTS && s->newcomer_days <= BROUGHT_DAYS &&
	       !copper(s, practice, &other) && !ts_holds_minerals_wear(s, practice, &other);
}

/*
 * They only rub, and the tank is far from its new water, or its buffer is short: that itches. Who
 * has lived in so little buffer for long does not begin to rub for it.
 */
static bool water_itches(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	return !(s->beside & TS_BESIDE_SPOTS) &&
	       (ts_holds_kh_apart(s, practice, f) || ts_holds_gone_old(s, practice, f) ||
		       (ts_holds_buffer_gone(s, practice, f) && !s->lived_long));
}

CONDITION(parasites)
{
	struct ts_care_figures other = *f;

	return s->signs & TS_SIGNS_SPOTS && !ts_holds_spots_brought(s, practice, f) &&
	       /* copper is made safe first, and its row says what follows */
	       !copper(s, practice, &other) && !ts_holds_minerals_wear(s, practice, &other) &&
	       !water_itches(s, practice, f);
}

CONDITION(floating)
{
	return s->signs & TS_SIGNS_FLOATING && !(s->signs & TS_SIGNS_SPOTS) &&
	       !explained(s, practice, f);
}

static bool named_by_sight(const struct ts_care_state *s)
{
	return s->signs & (TS_SIGNS_SPOTS | TS_SIGNS_FLOATING);
}

/* So many days after they came the leap shows (common practice). */
#define LEAP_DAYS 14

/* Those that came last die, and nobody shows a sign. */
static bool leap(const struct ts_care_state *s)
{
	return s->deaths > 0 && s->newcomer_days <= LEAP_DAYS && !s->signs;
}

/* Where some die, ammonia and nitrite are tested before anything is thought of an illness. */
static bool die_untested(const struct ts_care_state *s, const struct ts_care_figures *f)
{
	return s->deaths > 0 && !leap(s) &&
	       f->untested & (unsigned)(TS_UNTESTED_AMMONIA | TS_UNTESTED_NITRITE);
}

CONDITION(one_ill)
{
	struct ts_care_figures other = *f;

	return s->signs & TS_SIGNS_ONE && !die_untested(s, f) && !explained(s, practice, f) &&
	       !ts_holds_fighting(s, practice, f) && !named_by_sight(s) &&
	       !ts_holds_minerals_wear(s, practice, &other) &&
	       !ts_holds_old_age(s, practice, &other);
}

/*
 * Minerals that nobody there bears wear them down, and slow changes mend that: the likely cause of
 * whatever ails them but what a look or a reading tells better, or what began within hours.
 */
CONDITION(minerals_wear)
{
	/* Over peat or soil it is the bed that takes the minerals: nobody salts against it. */
	if (!ts_advice_unwell(s) || s->acid_bed || s->signs & TS_SIGNS_FIGHT ||
		s->beside & (TS_BESIDE_AT_ONCE | TS_BESIDE_SPOTS) || s->signs & TS_SIGNS_FLOATING ||
		leap(s) || explained(s, practice, f) || !ts_advice_mendable(s, practice, f))
		return false;
	f->too_soft = s->residents[f->animal].at[f->parameter].outside_by < 0;
	return true;
}

#define DAYS_OF_YEAR 365.25

/* The animal that is ill is as old as its kind becomes, and its water has nothing against it. */
CONDITION(old_age)
{
	const struct ts_range *lives =
		s->ill >= 0 ? &s->residents[s->ill].species->lives_years : NULL;
	double years = s->ill_days / DAYS_OF_YEAR;

	if (!lives || !(s->alone || s->signs & TS_SIGNS_ONE) ||
		!(years >= (lives->low + lives->high) / 2) || !s->signs ||
		s->beside & TS_BESIDE_STRONG || s->deaths > 0 || !f->hardness_liked ||
		s->no3_mg_l > f->no3_concern || named_by_sight(s) || explained(s, practice, f) ||
		ts_holds_minerals_wear(s, practice, f) || ts_holds_temperature_out(s, practice, f))
		return false;
	f->animal = s->ill;
	f->lived_years = years;
	f->lives_low_years = lives->low;
	f->lives_high_years = lives->high;
	return true;
}

CONDITION(slow_decline)
{
	struct ts_care_figures other = *f;

	return s->signs & TS_SIGNS_SLOW && !die_untested(s, f) && !named_by_sight(s) &&
	       !explained(s, practice, f) && !ts_holds_minerals_wear(s, practice, f) &&
	       !ts_holds_old_age(s, practice, &other);
}

/* Nothing that was read, and no look, tells what it is. */
static bool unclear(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	struct ts_care_figures other = *f;

	return s->signs & TS_SIGNS_OTHER && !explained(s, practice, f) &&
	       !ts_holds_fighting(s, practice, f) && !named_by_sight(s) &&
	       !ts_holds_minerals_wear(s, practice, &other) &&
	       !ts_holds_old_age(s, practice, &other);
}

CONDITION(untested_signs)
{
	return f->untested && unclear(s, practice, f);
}

CONDITION(other_signs)
{
	return !f->untested && unclear(s, practice, f);
}

/* Those that were there before live on in a water that has drifted away from the shop's. */
CONDITION(newcomers_die)
{
	if (!leap(s) || explained(s, practice, f))
		return false;
	(void)(ts_advice_someone_misses(s, TS_GH, true, 1, f) ||
		ts_advice_someone_misses(s, TS_KH, true, 1, f));
	return true;
}

/* Who dies so few days after all of them came has had a hard move (common practice, no source). */
#define MOVED_DAYS 3

CONDITION(moved_hard)
{
	struct ts_care_figures other = *f;

	return s->deaths > 0 && !s->signs && s->lived_days > 0 && s->lived_days <= MOVED_DAYS &&
	       s->filter_mature != TS_KNOWN_NO && !s->filter_none && !stands(s) &&
	       !explained(s, practice, f) && !s->happened &&
	       !ts_holds_minerals_wear(s, practice, &other);
}

CONDITION(deaths)
{
	return s->deaths > 0 && !ts_holds_moved_hard(s, practice, f) &&
	       !ts_holds_newcomers_die(s, practice, f) && !explained(s, practice, f) &&
	       !ts_holds_fighting(s, practice, f) && !ts_holds_minerals_wear(s, practice, f) &&
	       !ts_holds_sudden_all(s, practice, f);
}

CONDITION(ammonia_or_nitrite_read)
{
	double concern;

	if (s->empty || ts_holds_crashed(s, practice, f) ||
		ts_holds_too_much_ammonia(s, practice, f) ||
		ts_holds_too_much_nitrite(s, practice, f) || ts_holds_gone_old(s, practice, f) ||
		ts_holds_poison_got_in(s, practice, f))
		return false;
	ts_chem_nitrite_limits(isnan(s->cl_mg_l) ? -1 : s->cl_mg_l, &concern, NULL);
	return s->tan_mg_l >= practice[TS_P_TAN_DANGER] || s->no2_mg_l >= concern * NO2_PER_N;
}

/* Where they gasp or are cold besides, that row says what to do about it. */
static bool power_said(
	const struct ts_care_state *s, const double *practice, const struct ts_care_figures *f)
{
	struct ts_care_figures other = *f;

	return ts_holds_gasping_filter(s, practice, &other) ||
	       ts_holds_too_cold_no_power(s, practice, &other);
}

CONDITION(filter_stood_long)
{
	return s->filter_stopped_h >= practice[TS_P_FILTER_RINSE] && !power_said(s, practice, f);
}

CONDITION(filter_stood)
{
	return s->filter_stopped_h >= practice[TS_P_FILTER_STOPPED] &&
	       !ts_holds_filter_stood_long(s, practice, f) && !power_said(s, practice, f);
}

/* Nobody knows for how long. */
CONDITION(filter_stands)
{
	return s->filter_stands && isnan(s->filter_stopped_h) && !power_said(s, practice, f);
}

/* Nobody has shown yet that plants and changes do its work. */
CONDITION(no_filter)
{
	return s->filter_none && !s->empty && !s->lived_long && !ts_advice_danger(s, practice, f) &&
	       !ts_holds_ammonia_or_nitrite_read(s, practice, f);
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
	if (ts_holds_ammonia_or_nitrite_read(s, practice, f) ||
		ts_holds_maturing_empty(s, practice, f))
		return false;
	if (ts_holds_too_much_ammonia(s, practice, f) || ts_holds_too_much_nitrite(s, practice, f))
		return false;
	if (s->filter_mature == TS_NOT_KNOWN)
		return !s->lived_long && !s->lived_in && !s->runs;
	return s->filter_mature == TS_KNOWN_NO && !s->lived_in;
}

/* It is too late to let it mature first: all that is named lives there. */
CONDITION(filter_unripe)
{
	return s->filter_mature == TS_KNOWN_NO && s->lived_in && !(s->tan_mg_l > 0) &&
	       !(s->no2_mg_l > 0) && !ts_holds_ammonia_or_nitrite_read(s, practice, f) &&
	       !ts_holds_maturing_empty(s, practice, f) &&
	       !ts_holds_too_much_ammonia(s, practice, f) &&
	       !ts_holds_too_much_nitrite(s, practice, f);
}
