/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the files of advice share: the table (advice_rows.c), its conditions (advice_danger.c what
 * cannot wait, advice_steady.c what can), the figures that sentences quote (advice_figures.c).
 */
#ifndef TS_CARE_ADVICE_WORK_H
#define TS_CARE_ADVICE_WORK_H

#include "care/advice.h"

#include <math.h>
#include <string.h>

#define TS_ADVICE_CONDITIONS(X)                                                                    \
	X(crashed)                                                                                 \
	X(too_much_ammonia)                                                                        \
	X(too_much_nitrite)                                                                        \
	X(gasping_with_co2)                                                                        \
	X(untreated)                                                                               \
	X(poison_got_in)                                                                           \
	X(heater_failed)                                                                           \
	X(heater_stuck)                                                                            \
	X(filter_washed)                                                                           \
	X(changed_all)                                                                             \
	X(overfed)                                                                                 \
	X(medicine_kills)                                                                          \
	X(medicine_given)                                                                          \
	X(gasping)                                                                                 \
	X(gasping_filter)                                                                          \
	X(too_cold_no_power)                                                                       \
	X(no_filter)                                                                               \
	X(algae)                                                                                   \
	X(gasping_young)                                                                           \
	X(gasping_still)                                                                           \
	X(ph_reads)                                                                                \
	X(cloudy)                                                                                  \
	X(smells)                                                                                  \
	X(film)                                                                                    \
	X(tinted)                                                                                  \
	X(filter_stands)                                                                           \
	X(untested_signs)                                                                          \
	X(co2_unlikely)                                                                            \
	X(too_much_co2)                                                                            \
	X(chlorine)                                                                                \
	X(water_changed)                                                                           \
	X(chlorine_poured)                                                                         \
	X(oxygen_low)                                                                              \
	X(too_warm)                                                                                \
	X(too_cold)                                                                                \
	X(copper_much)                                                                             \
	X(copper_some)                                                                             \
	X(gh_missing)                                                                              \
	X(kh_missing)                                                                              \
	X(sudden_all)                                                                              \
	X(fighting)                                                                                \
	X(spots_brought)                                                                           \
	X(moved_hard)                                                                              \
	X(newcomers_die)                                                                           \
	X(change_is_softened)                                                                      \
	X(floating)                                                                                \
	X(given_off_and_well)                                                                      \
	X(given_off)                                                                               \
	X(parasites)                                                                               \
	X(one_ill)                                                                                 \
	X(minerals_wear)                                                                           \
	X(slow_decline)                                                                            \
	X(old_age)                                                                                 \
	X(other_signs)                                                                             \
	X(deaths)                                                                                  \
	X(ammonia_or_nitrite_read)                                                                 \
	X(filter_stood_long)                                                                       \
	X(filter_stood)                                                                            \
	X(maturing_empty)                                                                          \
	X(filter_unready)                                                                          \
	X(filter_unripe)                                                                           \
	X(oxygen_short)                                                                            \
	X(supply_changed)                                                                          \
	X(change_is_bare)                                                                          \
	X(gone_old)                                                                                \
	X(change_unfit)                                                                            \
	X(kh_apart)                                                                                \
	X(ec_apart)                                                                                \
	X(slipped)                                                                                 \
	X(no3_apart)                                                                               \
	X(no3_high)                                                                                \
	X(light_swings)                                                                            \
	X(acid_bed_and_well)                                                                       \
	X(black_water)                                                                             \
	X(buffer_gone)                                                                             \
	X(buffer_never_there)                                                                      \
	X(buffer_used_up)                                                                          \
	X(buffer_act)                                                                              \
	X(buffer_borne)                                                                            \
	X(buffer_hinted)                                                                           \
	X(buffer_between)                                                                          \
	X(gh_apart)                                                                                \
	X(buffer_warn)                                                                             \
	X(ph_trends)                                                                               \
	X(temperature_out)                                                                         \
	X(since_not_said)                                                                          \
	X(minerals_mend_and_well)                                                                  \
	X(minerals_mend)                                                                           \
	X(drifted)                                                                                 \
	X(gh_out)                                                                                  \
	X(kh_out)                                                                                  \
	X(not_comfortable)                                                                         \
	X(ph_alone_young)                                                                          \
	X(ph_alone_untested)                                                                       \
	X(ph_alone_once)                                                                           \
	X(ph_alone_known)                                                                          \
	X(in_range_untested)                                                                       \
	X(in_range)                                                                                \
	X(injected_and_well)                                                                       \
	X(read_long_ago)                                                                           \
	X(away_short)                                                                              \
	X(away)                                                                                    \
	X(away_long)

typedef bool ts_advice_condition(
	const struct ts_care_state *s, const double *practice, struct ts_care_figures *f);

/* ts_holds_gasping and so on: whether it holds; may set the animal and the recipe it speaks of. */
#define TS_ADVICE_DECLARE(name) ts_advice_condition ts_holds_##name;
TS_ADVICE_CONDITIONS(TS_ADVICE_DECLARE)
#undef TS_ADVICE_DECLARE

/* Defines one of them; what is not known is NAN, and no comparison with it holds. */
#define CONDITION(name)                                                                            \
	bool ts_holds_##name(                                                                      \
		const struct ts_care_state *s, const double *practice, struct ts_care_figures *f)
#define UNUSED ((void)s, (void)practice, (void)f)

void ts_advice_fill_figures(const struct ts_care_state *state, const struct ts_practice *practice,
	struct ts_care_figures *ret);

/*
 * The new water mended to what the animal that the row speaks of likes, as far as the others bear
 * it; false where they do not, or where pure water would be most of it.
 */
bool ts_advice_fill_mend(
	const struct ts_care_state *state, const double *practice, struct ts_care_figures *f);

/*
 * The new water made such that those bear it whom the tank suits; false where it is already.
 */
bool ts_advice_fill_blend(const struct ts_care_state *state, struct ts_care_figures *f);

/* Minerals that miss what somebody bears, and that a recipe mends. */
bool ts_advice_mendable(
	const struct ts_care_state *state, const double *practice, struct ts_care_figures *f);

/* The resident that misses `p` by most beyond tolerated (or preferred), and by at least `by`. */
bool ts_advice_someone_misses(const struct ts_care_state *state, enum ts_parameter p, bool comfort,
	double by, struct ts_care_figures *f);

/* Whether somebody likes it harder than what is poured in. */
bool ts_advice_likes_harder(const struct ts_care_state *state);

/* Somebody there likes the warmth as it is: no heater failed, but two share no warmth. */
bool ts_advice_warmth_liked(const struct ts_care_state *state);

/* Signs or deaths. */
bool ts_advice_unwell(const struct ts_care_state *state);

/* Something that cannot wait holds. */
bool ts_advice_danger(
	const struct ts_care_state *state, const double *practice, struct ts_care_figures *f);

#endif
