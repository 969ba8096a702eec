/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the files of the three waters: what a tank's log teaches (fit.h) goes into them.
 */
#ifndef TS_STOCK_WATERS_LOG_H
#define TS_STOCK_WATERS_LOG_H

#include "stock/waters.h"

/* `ret`: now, poured, the modelled load and drift are there; fills what the log shows. */
void ts_waters_learn(const struct ts_waters_case *asked, const struct ts_practice *practice,
	struct ts_waters *ret);

/* Puts the tank at the end of its readings' doubt from which this run of the three starts (1 or 2).
 */
void ts_waters_start_at_end(const struct ts_waters *waters, int run, struct ts_drift_tank *io);

#endif
