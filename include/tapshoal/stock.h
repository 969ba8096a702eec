/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Who can live together in which tank: its geometry, and what the animals make of its water. Pure
 * computation; allocates nothing. Figures and their grades: docs/methods.md, "Living together".
 */
#ifndef TAPSHOAL_STOCK_H
#define TAPSHOAL_STOCK_H

#include <tapshoal/match.h>
#include <tapshoal/plan.h>

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Litres of water in the tank: `volume` where it is given, else the inside box times the share that
 * is water (0.85, with rocks 0.75: common practice, no source). NAN when neither is known.
 */
TS_API double ts_tank_net_l(const struct ts_tank *tank, const struct ts_practice *practice);

/* Floor, m2; NAN when length or width is not given. */
TS_API double ts_tank_floor_m2(const struct ts_tank *tank);

#ifdef __cplusplus
}
#endif

#endif
