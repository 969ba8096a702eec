/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Ammonia: which share of the measured total (TAN) is the poisonous un-ionised form, and the
 * published limits for the total. Nitrite's limits, which hang on chloride, are in nitrogen.h.
 */
#ifndef TS_CHEM_AMMONIA_H
#define TS_CHEM_AMMONIA_H

#include "tapshoal/base.h"

/* Range of Emerson et al. 1975 as used here. */
#define TS_CHEM_NH3_TEMP_LOW_C 0.0
#define TS_CHEM_NH3_TEMP_HIGH_C 50.0

/*
 * Share (0..1) of total ammonia that is NH3, in fresh water, at pH 2..12 and temp_c 0..50 C.
 * Emerson, Russo, Lund & Thurston 1975, J. Fish. Res. Board Can. 32:2379-2383:
 * pKa = 0.09018 + 2729.92 / T. TS_BAD_INPUT outside, `ret_fraction` then untouched.
 */
TS_MUST_USE enum ts_status ts_chem_nh3_fraction(double ph, double temp_c, double *ret_fraction);

#endif
