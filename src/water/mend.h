/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The minerals of new water mended, in one line: grams of ordinary salts in 100 L, or how much of
 * it is to be water without minerals. For the remedy beside a fault; the whole answer about another
 * water, with its limits and stages, is remake.h. Bicarbonate is exact without knowing GH, and
 * hardness salts without KH.
 */
#ifndef TS_WATER_MEND_H
#define TS_WATER_MEND_H

#include <stdbool.h>

struct ts_mend_wish {
	double gh_dh, kh_dh;           /* of the new water; NAN: not known */
	double gh_wish_dh, kh_wish_dh; /* what it is to have; NAN: whatever it comes to */
	double temp_c;                 /* of the tank, 0..50; NAN: 25 */
};

struct ts_mend {
	/* In 100 L of the finished new water, g; 0: none of it. */
	double bicarbonate_g;       /* NaHCO3 */
	double calcium_chloride_g;  /* CaCl2.2H2O */
	double epsom_g;             /* MgSO4.7H2O */
	double pure_l;              /* of the 100 L to be water without minerals */
	double gh_dh, kh_dh;        /* afterwards; NAN: not known */
	double ph_low, ph, ph_high; /* of a tank of it; NAN: KH not known, or too little for a pH */
};

/*
 * GH as calcium and magnesium 3 to 1 by mole; what is too hard is thinned until the harder of the
 * two fits, and what that takes too much is put back. True where there is something to do.
 */
bool ts_mend_find(const struct ts_mend_wish *wish, struct ts_mend *ret);

#endif
