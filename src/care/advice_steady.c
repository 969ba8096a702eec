/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The conditions of advice that has time: new water and old, nitrate, buffer, minerals, comfort,
 * and what is said beside any answer.
 */
#include "care/advice_work.h"

#include "water/analysis.h"

static bool all_of_black_water(const struct ts_care_state *s)
{
	for (size_t i = 0; i < s->resident_count; i++) {
		if (s->residents[i].species->home_water != TS_HOME_BLACK)
			return false;
	}
	return s->resident_count > 0;
}

/* Waste has gathered, by itself or beside the new water. */
static bool much_nitrate(const struct ts_care_state *s, const struct ts_care_figures *f)
{
	return s->no3_mg_l > f->no3_limit || f->no3_apart_mg_l > f->no3_apart_limit;
}

static bool both_nil(const struct ts_care_state *s, const double *practice)
{
	return s->tan_mg_l < practice[TS_P_TAN_DANGER] &&
	       s->no2_mg_l < practice[TS_P_NITRITE_DANGER] / 3;
}

/* Short, and not yet a danger at once. */
CONDITION(oxygen_short)
{
	return s->oxygen_mg_l < practice[TS_P_OXYGEN_CONCERN] &&
	       !ts_holds_oxygen_low(s, practice, f);
}

/* Softened water, poured into a tank that has lime. */
CONDITION(change_is_softened)
{
	UNUSED;
	return s->softened &&
	       (s->gh_dh - s->change_gh_dh > 1 || (isnan(s->gh_dh) && ts_advice_unwell(s)));
}

/* What was poured in before is what the tank has, and what is poured in now is far softer. */
CONDITION(supply_changed)
{
	struct ts_mend_wish wish = {
		s->change_gh_dh, s->change_kh_dh, s->gh_dh, s->kh_dh, s->temp_c};

	if (s->empty || !(fabs(s->supply_before_gh_dh - s->gh_dh) <= practice[TS_P_APART_GH]) ||
		!(s->gh_dh - s->change_gh_dh > practice[TS_P_APART_GH]) ||
		ts_holds_change_is_softened(s, practice, f) ||
		ts_holds_change_is_bare(s, practice, f) || ts_holds_gone_old(s, practice, f) ||
		ts_holds_change_unfit(s, practice, f))
		return false;
	f->mends = ts_mend_find(&wish, &f->mend) && !(f->mend.pure_l > 0);
	return f->mends;
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

/*
 * The buffer is short or used up, and waste has gathered: who lives there is used to it, and only
 * small changes lead out.
 */
CONDITION(gone_old)
{
	return !s->empty && s->kh_dh < practice[TS_P_KH_ACT] && much_nitrate(s, f) &&
	       !ts_holds_crashed(s, practice, f) && !ts_holds_too_much_ammonia(s, practice, f) &&
	       !all_of_black_water(s) && !ts_holds_acid_bed_and_well(s, practice, f);
}

/* What is poured in does not suit somebody whom the tank suits: it is made like the tank. */
CONDITION(change_unfit)
{
	struct ts_care_figures other = *f;

	return !s->empty && !ts_holds_gone_old(s, practice, f) &&
	       !ts_holds_buffer_gone(s, practice, f) && !ts_holds_change_is_bare(s, practice, f) &&
	       !ts_holds_change_is_softened(s, practice, f) &&
	       (s->moved || !ts_advice_mendable(s, practice, &other)) && ts_advice_fill_blend(s, f);
}

/* The tank is above its new water, further than topping up can make it. */
static bool not_piled(double now, double poured, double apart, double piled, bool likes_poured)
{
	return now - poured > apart && (isnan(piled) ? !likes_poured : now > piled);
}

bool ts_advice_likes_harder(const struct ts_care_state *s)
{
	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_parameter_fit *at = s->residents[i].at;

		if (s->change_gh_dh < at[TS_GH].preferred.low ||
			s->change_kh_dh < at[TS_KH].preferred.low)
			return true;
	}
	return false;
}

/*
 * Who has lived there well for long lives in a water that stone, sand or salts make harder than
 * what is poured in: that is no drift, and nothing is brought down to the tap.
 */
static bool has_source(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	bool poured = !ts_advice_likes_harder(s);

	struct ts_care_figures other = *f;

	if (ts_holds_supply_changed(s, practice, &other))
		return false;
	return f->settled_well && !f->buffer_lost && !ts_holds_change_is_softened(s, practice, f) &&
	       (not_piled(s->kh_dh, s->change_kh_dh, f->kh_apart_limit, f->piled_kh_dh, poured) ||
		       not_piled(s->gh_dh, s->change_gh_dh, practice[TS_P_APART_GH], f->piled_gh_dh,
			       poured)) &&
	       !ts_holds_gone_old(s, practice, f) && !ts_holds_change_unfit(s, practice, f) &&
	       !ts_holds_change_is_bare(s, practice, f);
}

CONDITION(given_off_and_well)
{
	return f->hardness_liked && has_source(s, practice, f) && !much_nitrate(s, f) &&
	       !ts_advice_danger(s, practice, f) && !ts_holds_oxygen_short(s, practice, f) &&
	       !ts_holds_ammonia_or_nitrite_read(s, practice, f);
}

CONDITION(given_off)
{
	return has_source(s, practice, f) && !ts_holds_given_off_and_well(s, practice, f);
}

CONDITION(kh_apart)
{
	struct ts_care_figures other = *f;

	if (ts_holds_supply_changed(s, practice, &other))
		return false;
	/* Where the buffer is gone, that is what is to be said. */
	return fabs(s->change_kh_dh - s->kh_dh) > f->kh_apart_limit && !f->buffer_lost &&
	       !ts_holds_change_is_softened(s, practice, f) && !has_source(s, practice, f) &&
	       !ts_holds_gone_old(s, practice, f) && !ts_holds_change_unfit(s, practice, f) &&
	       !ts_holds_change_is_bare(s, practice, f);
}

CONDITION(ec_apart)
{
	struct ts_care_figures other = *f;

	if (ts_holds_supply_changed(s, practice, &other))
		return false;
	return f->ec_apart_percent > f->ec_apart_limit && !ts_holds_kh_apart(s, practice, f) &&
	       !ts_holds_change_is_softened(s, practice, f) && !has_source(s, practice, f) &&
	       !ts_holds_gone_old(s, practice, f) && !ts_holds_change_unfit(s, practice, f) &&
	       !ts_holds_change_is_bare(s, practice, f);
}

/* Minerals have gathered, though KH has not, since waste uses that up. */
CONDITION(gh_apart)
{
	struct ts_care_figures other = *f;

	if (ts_holds_supply_changed(s, practice, &other))
		return false;
	return f->harder && s->gh_dh - s->change_gh_dh > practice[TS_P_APART_GH] &&
	       !ts_holds_change_is_softened(s, practice, f) && !has_source(s, practice, f) &&
	       !ts_holds_kh_apart(s, practice, f) && !ts_holds_ec_apart(s, practice, f) &&
	       !ts_holds_gone_old(s, practice, f) && !ts_holds_change_unfit(s, practice, f) &&
	       !ts_holds_change_is_bare(s, practice, f);
}

/* So soon the buffer goes where less is changed than the file says, days. */
#define SLIPPED_DAYS 180

CONDITION(slipped)
{
	const struct ts_care_next *next = &s->next;

	return next->known && next->said.days > 0 && s->change_days > 0 &&
	       next->percent * next->said.days < next->said.amount * s->change_days &&
	       s->buffer_days <= SLIPPED_DAYS && !ts_holds_kh_apart(s, practice, f) &&
	       !ts_holds_no3_high(s, practice, f) && !ts_holds_no3_apart(s, practice, f) &&
	       !ts_holds_gone_old(s, practice, f);
}

CONDITION(no3_apart)
{
	return f->no3_apart_mg_l > f->no3_apart_limit && !ts_holds_gone_old(s, practice, f) &&
	       !(ts_holds_kh_apart(s, practice, f) && f->small_often);
}

CONDITION(no3_high)
{
	return s->no3_mg_l > f->no3_limit && !(f->no3_apart_mg_l > f->no3_apart_limit) &&
	       !ts_holds_gone_old(s, practice, f);
}

/* Seen, and nothing that is wrong with animals or water goes before them. */
CONDITION(algae)
{
	return s->beside & TS_BESIDE_ALGAE && !ts_advice_danger(s, practice, f) &&
	       !ts_advice_unwell(s) && !much_nitrate(s, f) &&
	       !ts_holds_ammonia_or_nitrite_read(s, practice, f) &&
	       !(s->kh_dh < practice[TS_P_KH_ACT]);
}

/* Something of the water is seen, and the animals are not ill. */
static bool seen_of_water(const struct ts_care_state *s, const double *practice,
	const struct ts_care_figures *f, enum ts_care_beside what)
{
	struct ts_care_figures other = *f;

	return s->beside & (unsigned)what && !ts_advice_danger(s, practice, &other) &&
	       !ts_advice_unwell(s) && !ts_holds_ammonia_or_nitrite_read(s, practice, &other);
}

CONDITION(cloudy)
{
	return seen_of_water(s, practice, f, TS_BESIDE_CLOUDY);
}

CONDITION(smells)
{
	return seen_of_water(s, practice, f, TS_BESIDE_SMELL);
}

CONDITION(film)
{
	return seen_of_water(s, practice, f, TS_BESIDE_FILM);
}

CONDITION(tinted)
{
	return seen_of_water(s, practice, f, TS_BESIDE_TINTED);
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

CONDITION(black_water)
{
	UNUSED;
	return s->kh_dh < practice[TS_P_KH_ACT] && all_of_black_water(s);
}

/* Below this KH, dH, the buffer is lost, whoever lives there. */
#define BUFFER_LEFT_DH 0.5

/* Minerals that a spoon of salt mends send nobody away. */
bool ts_advice_mendable(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	return (ts_advice_someone_misses(s, TS_GH, false, 0, f) &&
		       ts_advice_fill_mend(s, practice, f)) ||
	       (ts_advice_someone_misses(s, TS_KH, false, 0, f) &&
		       ts_advice_fill_mend(s, practice, f));
}

/* Where the animals want more KH than the buffer does, their recipe says it. */
static bool kh_mends(const struct ts_care_state *s, const double *practice)
{
	struct ts_care_figures f = {.animal = -1};

	return ts_advice_someone_misses(s, TS_KH, false, 0, &f) &&
	       ts_advice_fill_mend(s, practice, &f);
}

/* Little KH that all of them bear, and that they have been well in for long. */
static bool little_and_well(const struct ts_care_state *s, const struct ts_care_figures *f)
{
	/* Far below what is poured in, or under much waste, it is being used up. */
	bool liked = f->settled_well && s->kh_dh >= BUFFER_LEFT_DH && !much_nitrate(s, f) &&
		     !(s->change_kh_dh - s->kh_dh > f->kh_act);

	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_parameter_fit *kh = &s->residents[i].at[TS_KH];

		/* A band by kind of water that begins at a degree is no wall to the settled. */
		liked &= kh->known && (s->kh_dh >= kh->tolerated.low || kh->tolerated.low <= 1);
	}
	return liked && s->resident_count > 0;
}

/* Of less GH, dH, no animal that wants any has enough, whatever the buffer does. */
#define BARE_GH_DH 1.0

/* Nothing was used up: the water is too soft for them, and its recipe holds the buffer too. */
static bool too_soft_for_them(const struct ts_care_state *s, const double *practice)
{
	struct ts_care_figures f = {.animal = -1};
	bool bare = s->gh_dh < BARE_GH_DH;

	if (!(ts_advice_unwell(s) || bare) || s->change_kh_dh - s->kh_dh > BUFFER_LEFT_DH ||
		s->acid_bed || !ts_advice_mendable(s, practice, &f) ||
		!(s->residents[f.animal].at[f.parameter].outside_by < 0))
		return false;
	/* Waste uses KH up, and no GH. */
	return s->kh_dh >= BUFFER_LEFT_DH || f.parameter == TS_GH;
}

CONDITION(buffer_gone)
{
	return !s->kh_doubted && !too_soft_for_them(s, practice) && !little_and_well(s, f) &&
	       s->kh_dh < practice[TS_P_KH_FLOOR] && !all_of_black_water(s) &&
	       !ts_holds_acid_bed_and_well(s, practice, f) && !ts_holds_crashed(s, practice, f) &&
	       !ts_holds_gone_old(s, practice, f);
}

/* What is poured in has no more: nothing was used up, the supply is too soft. */
CONDITION(buffer_never_there)
{
	return ts_holds_buffer_gone(s, practice, f) && s->change_kh_dh <= s->kh_dh;
}

CONDITION(buffer_used_up)
{
	return ts_holds_buffer_gone(s, practice, f) && !ts_holds_buffer_never_there(s, practice, f);
}

/* Nothing is to be done, but to look. */
CONDITION(buffer_borne)
{
	return !s->kh_doubted && s->kh_dh < practice[TS_P_KH_ACT] && little_and_well(s, f) &&
	       !all_of_black_water(s) && !ts_holds_acid_bed_and_well(s, practice, f) &&
	       !ts_holds_crashed(s, practice, f) && !ts_holds_gone_old(s, practice, f);
}

CONDITION(buffer_act)
{
	if (s->kh_doubted || ts_holds_buffer_gone(s, practice, f) ||
		ts_holds_buffer_borne(s, practice, f) || all_of_black_water(s) ||
		too_soft_for_them(s, practice) || ts_holds_kh_apart(s, practice, f) ||
		ts_holds_acid_bed_and_well(s, practice, f) || ts_holds_crashed(s, practice, f) ||
		ts_holds_gone_old(s, practice, f))
		return false;
	return s->kh_dh < practice[TS_P_KH_ACT] || s->buffer_days < practice[TS_P_BUFFER_ACT];
}

/* At any CO2 that is borne a pH so low leaves KH under 1. */
#define PH_HINTS_NO_BUFFER 5.9

CONDITION(buffer_hinted)
{
	return isnan(s->kh_dh) && s->ph < PH_HINTS_NO_BUFFER && !s->acid_bed && !s->empty &&
	       !ts_holds_crashed(s, practice, f);
}

/* It is used up before the next change. */
CONDITION(buffer_between)
{
	/* New water that is made up anyway gets its KH with it. */
	return s->buffer_days < s->change_days && !ts_holds_buffer_borne(s, practice, f) &&
	       !ts_holds_kh_apart(s, practice, f) && !ts_holds_change_unfit(s, practice, f) &&
	       !ts_holds_change_is_bare(s, practice, f) &&
	       !ts_holds_minerals_wear(s, practice, f) && !ts_holds_buffer_gone(s, practice, f) &&
	       !ts_holds_buffer_act(s, practice, f) && !all_of_black_water(s) &&
	       !ts_holds_acid_bed_and_well(s, practice, f) && !ts_holds_crashed(s, practice, f) &&
	       !ts_holds_gone_old(s, practice, f);
}

/*
 * Steady for long at a KH that all of them like: that is no shortage. What is poured in counts
 * where it was read; the time that the buffer lasts has to be known.
 */
static bool little_is_liked(
	const struct ts_care_state *s, const double *practice, const struct ts_care_figures *f)
{
	return f->settled_well && f->hardness_liked && s->kh_dh >= practice[TS_P_KH_ACT] &&
	       !(s->change_kh_dh < practice[TS_P_KH_ACT]) &&
	       s->buffer_days >= practice[TS_P_BUFFER_WARN];
}

CONDITION(buffer_warn)
{
	if (s->kh_doubted || little_is_liked(s, practice, f) ||
		ts_holds_buffer_gone(s, practice, f) || ts_holds_buffer_borne(s, practice, f) ||
		ts_holds_kh_apart(s, practice, f) || ts_holds_supply_changed(s, practice, f) ||
		ts_holds_buffer_act(s, practice, f) || ts_holds_buffer_between(s, practice, f) ||
		all_of_black_water(s) || ts_holds_acid_bed_and_well(s, practice, f) ||
		ts_holds_crashed(s, practice, f) || kh_mends(s, practice) ||
		ts_holds_gone_old(s, practice, f))
		return false;
	return s->kh_dh < practice[TS_P_KH_WARN] || s->buffer_days < practice[TS_P_BUFFER_WARN];
}

CONDITION(ph_trends)
{
	/* Where tank and new water are apart, that is what moves it. */
	return fabs(s->ph_trend) > 0 && !s->kh_level && !ts_holds_kh_apart(s, practice, f);
}

/* The buffer is whole: what moves the pH is gas, light, or the reading itself. */
CONDITION(ph_reads)
{
	return fabs(s->ph_trend) > 0 && s->kh_level && !ts_holds_kh_apart(s, practice, f) &&
	       !ts_holds_light_swings(s, practice, f);
}

CONDITION(temperature_out)
{
	return !ts_advice_warmth_liked(s) &&
	       ts_advice_someone_misses(s, TS_TEMPERATURE, false, 0, f) &&
	       !ts_holds_too_warm(s, practice, f) && !ts_holds_too_cold(s, practice, f) &&
	       !ts_holds_too_cold_no_power(s, practice, f);
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

/* No other row names a recipe for the new water. */
static bool one_recipe(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	return !ts_holds_minerals_wear(s, practice, f) &&
	       !ts_holds_supply_changed(s, practice, f) &&
	       !ts_holds_change_is_bare(s, practice, f) && !ts_holds_gone_old(s, practice, f) &&
	       !ts_holds_buffer_gone(s, practice, f) && !ts_holds_buffer_between(s, practice, f);
}

CONDITION(minerals_mend_and_well)
{
	return lived_well(s) && one_recipe(s, practice, f) && ts_advice_mendable(s, practice, f);
}

CONDITION(minerals_mend)
{
	return !lived_well(s) && one_recipe(s, practice, f) && ts_advice_mendable(s, practice, f);
}

/* What is poured in is what the animal bears, where the tank is not. */
static bool poured_suits(const struct ts_care_state *s, const struct ts_care_figures *f)
{
	const struct ts_range *bears = &s->residents[f->animal].at[f->parameter].tolerated;
	double poured = f->parameter == TS_GH ? s->change_gh_dh : s->change_kh_dh;

	return poured >= bears->low && poured <= bears->high;
}

CONDITION(drifted)
{
	return !ts_advice_mendable(s, practice, f) &&
	       (ts_advice_someone_misses(s, TS_GH, false, 0, f) ||
		       ts_advice_someone_misses(s, TS_KH, false, 0, f)) &&
	       poured_suits(s, f) && !ts_holds_gone_old(s, practice, f) &&
	       !ts_holds_kh_apart(s, practice, f) && !ts_holds_buffer_gone(s, practice, f);
}

CONDITION(gh_out)
{
	return ts_advice_someone_misses(s, TS_GH, false, 0, f) && !poured_suits(s, f) &&
	       !ts_advice_fill_mend(s, practice, f);
}

CONDITION(kh_out)
{
	return ts_advice_someone_misses(s, TS_KH, false, 0, f) && !poured_suits(s, f) &&
	       !ts_advice_fill_mend(s, practice, f);
}

static bool minerals_out(const struct ts_care_state *s, struct ts_care_figures *f)
{
	return ts_advice_someone_misses(s, TS_GH, false, 0, f) ||
	       ts_advice_someone_misses(s, TS_KH, false, 0, f) ||
	       ts_advice_someone_misses(s, TS_TEMPERATURE, false, 0, f);
}

CONDITION(not_comfortable)
{
	struct ts_care_figures other = *f;

	if (minerals_out(s, &other))
		return false;
	if (ts_advice_someone_misses(s, TS_GH, true, 0, f) ||
		ts_advice_someone_misses(s, TS_KH, true, 0, f)) {
		/* What is harder than they like, or by a degree, needs no recipe. */
		if (s->residents[f->animal].at[f->parameter].uncomfortable_by < -1)
			(void)ts_advice_fill_mend(s, practice, f);
		return true;
	}
	return ts_advice_someone_misses(s, TS_TEMPERATURE, true, 0, f);
}

static bool ph_alone(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	struct ts_care_figures other = *f;

	return !minerals_out(s, &other) && !(fabs(s->ph_trend) > 0) &&
	       !ts_holds_light_swings(s, practice, f) &&
	       ts_advice_someone_misses(s, TS_PH, true, 0, f);
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

CONDITION(injected_and_well)
{
	UNUSED;
	return s->co2_injected && !s->signs && !(s->deaths > 0) &&
	       s->co2_high_mg_l > practice[TS_P_CO2_CONCERN];
}

CONDITION(read_long_ago)
{
	UNUSED;
	return s->reading_age_days > practice[TS_P_READING_OLD];
}

CONDITION(away_short)
{
	UNUSED;
	return s->away_days > 0 && s->away_days <= practice[TS_P_AWAY_SHORT];
}

CONDITION(away)
{
	UNUSED;
	return s->away_days > practice[TS_P_AWAY_SHORT] && s->away_days <= practice[TS_P_AWAY_LONG];
}

CONDITION(away_long)
{
	UNUSED;
	return s->away_days > practice[TS_P_AWAY_LONG];
}
