/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Strong acid or base against the buffer of a water, dose by dose and evening by evening: the
 * figures behind "why not to chase pH". All amounts are per litre; nothing here knows a volume,
 * so that no answer can be read as a dose. The daily balance of a tank is next door in drift.h.
 *
 * Common to all: the water inside the ranges of chem/solution.h, else TS_BAD_INPUT; where the
 * equations end (pH 2..12) likewise. Acid is HCl and base NaOH; with other strong ones only the
 * ionic strength differs. ret_ values are untouched on failure. Holds for water whose alkalinity
 * is carbonate: callers refuse tannins, phosphate and active soil.
 */
#ifndef TS_CARE_TITRATE_H
#define TS_CARE_TITRATE_H

#include <tapshoal/care.h>

#include "chem/solution.h"
#include "model/practice.h"

/* What a dissolved CO2 content means for fish; not a number counts as danger. */
enum ts_co2_danger ts_co2_danger(double co2_mg_l, const struct ts_practice *practice);

/*
 * `s` (with its dic_mmol_l) after `acid_meq_l` in all. `tank_times_air`: CO2 of the running tank,
 * times that of air (TS_CHEM_TANK_CO2_USUAL where nothing better is known).
 */
TS_MUST_USE enum ts_status ts_titrate_step(const struct ts_solution *s, double acid_meq_l,
	double tank_times_air, const struct ts_practice *practice, struct ts_titration_step *ret);

/*
 * The curve: `count` steps (1 or more) of `dose_meq_l` each, the first with nothing dosed. It
 * stops where the equations end; `*ret_count` says how many of `ret_steps` were filled.
 */
TS_MUST_USE enum ts_status ts_titrate(const struct ts_solution *s, double dose_meq_l, size_t count,
	double tank_times_air, const struct ts_practice *practice,
	struct ts_titration_step *ret_steps, size_t *ret_count);

/*
 * Evening after evening, at most TS_TITRATION_NIGHTS_MOST: a dose into the aired tank, the gas
 * leaves overnight. Ends with the second evening after the alkalinity has gone, when there is
 * nothing left to dose (TS_KEEPER_BY_TEST), or where the equations end. `towards_ph` 4..9.5. TS_NO
 * when the aired tank stands within 0.1 of it already.
 */
TS_MUST_USE enum ts_status ts_titrate_nights(const struct ts_solution *s, double towards_ph,
	enum ts_titration_keeper keeper, double tank_times_air, const struct ts_practice *practice,
	struct ts_titration_nights *ret);

/*
 * The same with a dose given in meq/L (acid positive) instead of a wanted pH; `towards_ph` of
 * `ret` is then what the first evening reads.
 */
TS_MUST_USE enum ts_status ts_titrate_nights_dose(const struct ts_solution *s, double dose_meq_l,
	double tank_times_air, const struct ts_practice *practice, struct ts_titration_nights *ret);

#endif
