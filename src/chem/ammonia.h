/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Ammonia: which share of the measured total (TAN) is the poisonous un-ionised form, and the
 * published limits for the total. Nitrite's limits, which hang on chloride, are in nitrogen.h.
 */
#ifndef TS_CHEM_AMMONIA_H
#define TS_CHEM_AMMONIA_H

#include <stdbool.h>

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

/* Range of the EPA criteria. They level off below pH 6.5: there the value at 6.5 is safe to use. */
#define TS_CHEM_EPA_PH_LOW 6.5
#define TS_CHEM_EPA_PH_HIGH 9.0
#define TS_CHEM_EPA_TEMP_HIGH_C 30.0

/*
 * US EPA 2013 criteria for ammonia in fresh water, EPA 822-R-13-001, mg TAN-N/L, at pH 6.5..9.0
 * and 0..30 C, else TS_BAD_INPUT: CCC is the 30-day mean that aquatic life bears (chronic), CMC
 * the one-hour mean (acute), for waters with and without salmonids of the genus Oncorhynchus.
 */
TS_MUST_USE enum ts_status ts_chem_ammonia_ccc_mg_l(
	double ph, double temp_c, double *ret_tan_n_mg_l);
TS_MUST_USE enum ts_status ts_chem_ammonia_cmc_mg_l(
	double ph, double temp_c, bool salmonids, double *ret_tan_n_mg_l);

#endif
