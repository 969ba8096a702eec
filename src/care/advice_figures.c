/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The figures that advice quotes, and the recipes it names.
 */
#include "care/advice_work.h"

#include "base/number.h"
#include "care/titrate.h"
#include "chem/carbonate.h"
#include "chem/nitrogen.h"
#include "water/analysis.h"

#define NO2_PER_N (TS_MASS_NO2 / TS_WEIGHT_N)
/* The way out of a crash goes through water of this KH, dH: it raises no pH at once. */
#define KH_WAY_OUT_DH 1.0
/* Water that is so acid has hardly any buffer, as long as nobody read otherwise. */
#define PH_MAYBE_BARE 6.5
/* More pure water than this in 100 L is no mending, but another water. */
#define PURE_MOST_L 75.0

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
	f->no3_concern = p[TS_P_NITRATE_CONCERN];
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

/* The lowest that all of those like who bear no less than there is; NAN: nobody misses it. */
static double wanted(const struct ts_care_state *s, int parameter, double poured)
{
	struct ts_range all = borne_by_all(s, parameter);
	double most = (double)NAN;

	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_parameter_fit *fit = &s->residents[i].at[parameter];

		if (poured < fit->tolerated.low)
			most = fmax(most, fit->preferred.low);
	}
	return isnan(most) || all.low > all.high ? (double)NAN : fmin(most, all.high);
}

/* Water without lime suits nobody, whatever they bear: it is given some with its KH. */
#define LIME_LEAST_DH 3.0

static double lime_for(const struct ts_care_state *s, double wanted_dh)
{
	return s->change_gh_dh < 1 ? fmax(LIME_LEAST_DH, wanted_dh) : wanted_dh;
}

/* What lifts KH by 1 dH, and what the new water needs to keep the buffer and those there. */
static void fill_kh_recipe(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
{
	struct ts_mend one;
	double gh = lime_for(s, wanted(s, TS_GH, s->change_gh_dh));
	double kh = fmax(practice[TS_P_KH_WARN], wanted(s, TS_KH, s->change_kh_dh));
	struct ts_mend_wish wish = {
		isnan(gh) ? gh : s->change_gh_dh, s->change_kh_dh, gh, kh, s->temp_c};

	(void)ts_mend_find(&(struct ts_mend_wish){(double)NAN, 0, (double)NAN, 1, s->temp_c}, &one);
	f->soda_a_degree_g = one.bicarbonate_g;
	f->kh_short = s->change_kh_dh < practice[TS_P_KH_WARN] && ts_mend_find(&wish, &f->kh_mend);
}

/*
 * The new water mended to what the animal that the row speaks of likes, as far as the others bear
 * it; nothing where they do not, or where pure water would be most of it.
 */
static double poured_in(const struct ts_care_state *s, int parameter)
{
	return parameter == TS_GH ? s->change_gh_dh : s->change_kh_dh;
}

/* One recipe for all that is too little: nobody makes the new water twice. */
static void wish_both(
	const struct ts_care_state *s, const double *practice, struct ts_mend_wish *wish)
{
	double gh = wanted(s, TS_GH, wish->gh_dh), kh = wanted(s, TS_KH, wish->kh_dh);

	if (wish->kh_dh < practice[TS_P_KH_WARN])
		kh = fmax(practice[TS_P_KH_WARN], kh);
	wish->gh_wish_dh = fmax(wish->gh_wish_dh, gh);
	wish->kh_wish_dh = fmax(wish->kh_wish_dh, kh);
}

bool ts_advice_fill_mend(
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
	/* The new water is what it likes already: only the tank has drifted. */
	if (poured_in(s, f->parameter) >= likes->low && poured_in(s, f->parameter) <= likes->high)
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
	if (fit->outside_by < 0)
		wish_both(s, practice, &wish);
	f->mend_from = from;
	f->mends = ts_mend_find(&wish, &f->mend) && f->mend.pure_l <= PURE_MOST_L;
	return f->mends;
}

#define DAYS_OF_WEEK 7

/* So much more GH than in the new water has gathered, dH. */
#define HARDER_DH 2.0

/* A band that only the kind of home water gives. */
static bool is_coarse(const struct ts_parameter_fit *fit)
{
	return fit->source[0] && strcmp(fit->source[0], "by kind of water") == 0;
}

static bool likes_hardness(const struct ts_care_state *s)
{
	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_parameter_fit *gh = &s->residents[i].at[TS_GH];
		const struct ts_parameter_fit *kh = &s->residents[i].at[TS_KH];

		if ((gh->known && gh->uncomfortable_by != 0) ||
			(kh->known && kh->uncomfortable_by != 0 && !is_coarse(kh)))
			return false;
	}
	return true;
}

/* Topping up with it, in a tank that loses as much as an open one may. */
static double piled(const struct ts_care_state *s, double poured_dh, const double *practice)
{
	double lost = isnan(s->evaporation_percent_week) ? practice[TS_P_EVAPORATION_OPEN]
							 : s->evaporation_percent_week;

	return poured_dh * (s->pure_top_up ? 1 : 1 + lost / s->change_percent_week);
}

/* Catfish and loaches, bare of scales, are given no salt: common practice, no source. */
static const char *const bare_of_scales[] = {"Callichthyidae", "Loricariidae", "Cobitidae",
	"Botiidae", "Mochokidae", "Pimelodidae", "Siluridae", "Doradidae", "Bagridae"};

/* The gram to ten litres that is given against nitrite other fish of soft water bear, too. */
static bool bears_salt(const struct ts_care_state *s)
{
	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_species *one = s->residents[i].species;

		if (one->kind != TS_ANIMAL_FISH)
			return false;
		for (size_t k = 0; k < sizeof bare_of_scales / sizeof *bare_of_scales; k++) {
			if (one->family && strcmp(one->family, bare_of_scales[k]) == 0)
				return false;
		}
	}
	return true;
}

/* So warm white spot is hurried along, C (common practice, no source). */
#define SPOTS_WARM_C 29.0

static bool warmth_borne(const struct ts_care_state *s)
{
	for (size_t i = 0; i < s->resident_count; i++) {
		if (!(s->residents[i].at[TS_TEMPERATURE].tolerated.high >= SPOTS_WARM_C))
			return false;
	}
	return s->resident_count > 0;
}

static bool no_backbone(const struct ts_care_state *s)
{
	for (size_t i = 0; i < s->resident_count; i++) {
		if (s->residents[i].species->kind != TS_ANIMAL_FISH)
			return true;
	}
	return false;
}

/* Behind these nobody is fed. */
#define FASTS                                                                                      \
	(1u << TS_HAPPENED_FILTER_WASHED | 1u << TS_HAPPENED_OVERFED |                             \
		1u << TS_HAPPENED_HEATER_FAILED | 1u << TS_HAPPENED_HEATER_STUCK)

void ts_advice_fill_figures(const struct ts_care_state *s, const struct ts_practice *practice,
	struct ts_care_figures *f)
{
	struct ts_care_figures other = {.kh_apart_limit = practice->value[TS_P_APART_KH]};
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
		.supply_gh_dh = s->supply_before_gh_dh,
		.change_kh_dh = s->change_kh_dh,
		.change_chlorine_mg_l = s->change_chlorine_mg_l,
		.change_copper_mg_l = s->change_copper_mg_l,
		.change_days = s->change_days,
		.change_percent = s->change_percent_week * s->change_days / DAYS_OF_WEEK,
		.deaths_uncounted = s->deaths_uncounted,
		.at_fault = s->at_fault,
		.peat = s->peat,
		.next = s->next,
		.moved = s->moved,
		.settled_well = s->lived_long && !s->signs && !(s->deaths > 0),
		.hardness_liked = likes_hardness(s),
		.harder = !s->lime_bed && s->gh_dh - s->change_gh_dh > HARDER_DH,
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
		.newcomer_days = s->newcomer_days,
		.animal = -1};
	f->piled_gh_dh = piled(s, s->change_gh_dh, practice->value);
	f->piled_kh_dh = piled(s, s->change_kh_dh, practice->value);
	f->lime_bed = s->lime_bed;
	f->filter_new = s->filter_mature == TS_KNOWN_NO;
	f->filter_rinse = s->filter_stopped_h >= practice->value[TS_P_FILTER_RINSE];
	f->beside = s->beside;
	f->warmth_borne = warmth_borne(s);
	f->ph_unliked = ts_advice_someone_misses(s, TS_PH, true, 0, &other);
	f->anything_read = !isnan(s->gh_dh) || !isnan(s->kh_dh) || !isnan(s->ph) ||
			   !isnan(s->temp_c) || !isnan(s->no3_mg_l);
	f->routine_said = !isnan(s->change_percent_week);
	f->softer_liked = !f->hardness_liked && !ts_advice_likes_harder(s);
	f->salt_borne = bears_salt(s);
	f->chloride_read = !isnan(s->cl_mg_l);
	fill_limits(practice->value, f);
	f->buffer_lost = s->kh_dh < f->kh_floor;
	f->careful = s->kh_dh < KH_WAY_OUT_DH || (isnan(s->kh_dh) && s->ph < PH_MAYBE_BARE);
	fill_way_out(s, f);
	fill_kh_recipe(s, practice->value, f);
	f->ec_apart_percent = 100 * fabs(s->change_ec_us_cm - s->ec_us_cm) / s->ec_us_cm;
	f->no3_apart_mg_l = s->no3_mg_l - s->change_no3_mg_l;
	f->untested = (isnan(s->tan_mg_l) ? TS_UNTESTED_AMMONIA : 0u) |
		      (isnan(s->no2_mg_l) ? TS_UNTESTED_NITRITE : 0u) |
		      (isnan(s->temp_c) ? TS_UNTESTED_TEMPERATURE : 0u) |
		      (isnan(s->kh_dh) ? TS_UNTESTED_KH : 0u) |
		      (isnan(s->copper_mg_l) && no_backbone(s) ? TS_UNTESTED_COPPER : 0u);
	f->small_often = f->careful || s->kh_dh < f->kh_act || s->no3_mg_l > f->no3_limit ||
			 f->no3_apart_mg_l > f->no3_apart_limit;
	f->small_changes =
		f->small_often || f->ec_apart_percent > f->ec_apart_limit ||
		fabs(s->change_kh_dh - s->kh_dh) > f->kh_apart_limit ||
		(f->harder && s->gh_dh - s->change_gh_dh > practice->value[TS_P_APART_GH]);
	f->small_changes |= ts_advice_fill_blend(s, &other) ||
			    ts_holds_change_is_softened(s, practice->value, &other);
	f->small_often |= s->tan_mg_l >= practice->value[TS_P_TAN_DANGER] ||
			  s->no2_mg_l >= practice->value[TS_P_NITRITE_DANGER];
	f->nh3_mg_l = ts_care_nh3_mg_l(s->tan_mg_l, s->ph, warm);
	f->nh3_halves = ceil(ts_log2(f->nh3_mg_l / f->nh3_limit) - 1e-9);
	f->nh3_half_mg_l = ts_care_nh3_mg_l(s->tan_mg_l / 2, ph_of_kh(half_kh, warm), warm);
	f->nh3_there_mg_l = ts_care_nh3_mg_l(s->tan_mg_l, ph_of_kh(s->change_kh_dh, warm), warm);
	f->ccc_mg_l = (double)NAN;
	if (isnan(s->ph) || ts_chem_ammonia_ccc_mg_l(epa_ph, fmin(warm, TS_CHEM_EPA_TEMP_HIGH_C),
				    &f->ccc_mg_l) != TS_OK)
		f->ccc_mg_l = (double)NAN;
	ts_chem_nitrite_limits(isnan(s->cl_mg_l) ? -1 : s->cl_mg_l, NULL, &limit);
	f->no2_limit_mg_l = limit * NO2_PER_N;
	f->change_half = !f->careful && f->nh3_halves > 2;
	other = *f;
	/* Bare water gets its KH with the other minerals. */
	f->kh_short = f->kh_short && !ts_holds_change_is_bare(s, practice->value, &other);
	f->fast = ts_advice_danger(s, practice->value, &other) || s->filter_stands ||
		  s->filter_stopped_h >= practice->value[TS_P_FILTER_STOPPED] ||
		  (s->happened & FASTS && !s->empty);
	fill_chase(s, practice, f);
}

/* Where the new water may lie for them: what all like, and what the tank has, which they prove. */
static struct ts_range liked_by_all(const struct ts_care_state *s, int parameter, double now)
{
	struct ts_range r = {0, (double)INFINITY};

	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_parameter_fit *fit = &s->residents[i].at[parameter];
		const struct ts_range *likes =
			isnan(fit->preferred.low) ? &fit->tolerated : &fit->preferred;

		if (isnan(likes->low))
			continue;
		r.low = fmax(r.low, likes->low);
		r.high = fmin(r.high, likes->high);
	}
	/* What another supply made of the tank proves nothing. */
	if (s->moved && r.low <= r.high)
		return r;
	return (struct ts_range){fmin(r.low, now), fmax(r.high, now)};
}

static double clamped(double value, const struct ts_range *r)
{
	return fmin(fmax(value, r->low), r->high);
}

/* Limits carry a doubt; so far beyond them, dH, water is made fit before it goes in. */
#define UNFIT_DH 1.0

/* A limit that only the kind of home water gives forbids nothing at its high end. */
static bool unfit_for(const struct ts_parameter_fit *fit, double poured)
{
	return poured < fit->tolerated.low - UNFIT_DH ||
	       (!is_coarse(fit) && poured > fit->tolerated.high + UNFIT_DH);
}

/* Nobody is brought out of what it likes towards softer water. */
static bool leaves_liked(const struct ts_parameter_fit *fit, double poured, double now)
{
	return !is_coarse(fit) && now >= fit->preferred.low && now <= fit->preferred.high &&
	       poured < fit->preferred.low - UNFIT_DH;
}

/* The resident that the tank suits, or did before another supply, and what is poured in does not.
 */
static bool unfit(const struct ts_care_state *s, int parameter, double poured, double now,
	struct ts_care_figures *f)
{
	/* Who lives there well for long proves the routine, whatever the new water is. */
	bool apart =
		fabs(now - poured) > f->kh_apart_limit && !(s->lived_long && !ts_advice_unwell(s));

	for (size_t i = 0; i < s->resident_count; i++) {
		const struct ts_parameter_fit *fit = &s->residents[i].at[parameter];

		if (isnan(fit->tolerated.low) || (unfit_for(fit, now) && !s->moved) || isnan(now) ||
			!(unfit_for(fit, poured) || (apart && leaves_liked(fit, poured, now))))
			continue;
		f->animal = (int)i;
		f->parameter = parameter;
		f->poured_over = poured > now;
		return true;
	}
	return false;
}

bool ts_advice_fill_blend(const struct ts_care_state *s, struct ts_care_figures *f)
{
	struct ts_range gh = liked_by_all(s, TS_GH, s->gh_dh);
	struct ts_range kh = liked_by_all(s, TS_KH, s->kh_dh);
	struct ts_mend_wish wish = {s->change_gh_dh, s->change_kh_dh, clamped(s->change_gh_dh, &gh),
		clamped(s->change_kh_dh, &kh), s->temp_c};
	double share =
		1 - fmin(1, fmin(wish.gh_wish_dh / wish.gh_dh, wish.kh_wish_dh / wish.kh_dh));

	if (!unfit(s, TS_GH, s->change_gh_dh, s->gh_dh, f) &&
		!unfit(s, TS_KH, s->change_kh_dh, s->kh_dh, f))
		return false;
	/* What thinning alone brings into what they like needs no salt. */
	if (share > 0) {
		wish.gh_wish_dh = clamped((1 - share) * wish.gh_dh, &gh);
		wish.kh_wish_dh = clamped((1 - share) * wish.kh_dh, &kh);
	}
	f->mends = ts_mend_find(&wish, &f->mend);
	return f->mends;
}
