/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Degrees of hardness and alkalinity, as numbers. The chemistry room works in mmol/L of calcium
 * plus magnesium and in meq/L of alkalinity; the rest of the program in German degrees (dH).
 * How people write these units, and every other degree, is the units room's table.
 */
#ifndef TS_CHEM_HARDNESS_H
#define TS_CHEM_HARDNESS_H

#include "chem/ions.h"

/* 1 German degree is 10 mg CaO in a litre: mmol/L of CaO, that is of Ca + Mg. */
#define TS_MMOL_L_PER_DH (10.0 / TS_MASS_CAO)
/* 1 mg CaCO3 in a litre, in mmol/L. */
#define TS_MMOL_L_PER_MG_CACO3 (1.0 / TS_MASS_CACO3)
/* 1 French degree is 10 mg CaCO3 in a litre. */
#define TS_MMOL_L_PER_FH (10.0 / TS_MASS_CACO3)
/* Legal definitions, exact: a grain in mg, the imperial and the US gallon in litres. */
#define TS_MG_PER_GRAIN 64.79891
#define TS_L_PER_UK_GALLON 4.54609
#define TS_L_PER_US_GALLON 3.785411784
/* 1 English (Clark) degree: a grain CaCO3 per imperial gallon; 1 gpg: per US gallon. */
#define TS_MMOL_L_PER_CLARK (TS_MG_PER_GRAIN / TS_L_PER_UK_GALLON / TS_MASS_CACO3)
#define TS_MMOL_L_PER_GPG (TS_MG_PER_GRAIN / TS_L_PER_US_GALLON / TS_MASS_CACO3)

/* General hardness: mmol/L of Ca + Mg to degrees and back. Any finite number. */
double ts_chem_dh_from_mmol_l(double ca_plus_mg_mmol_l);
double ts_chem_mmol_l_from_dh(double gh_dh);
/* Alkalinity, called carbonate hardness in the trade: meq/L to degrees and back. */
double ts_chem_dkh_from_meq_l(double alk_meq_l);
double ts_chem_meq_l_from_dkh(double kh_dh);
/* The same two quantities as mg/L of CaCO3. */
double ts_chem_mg_caco3_from_mmol_l(double ca_plus_mg_mmol_l);
double ts_chem_mg_caco3_from_meq_l(double alk_meq_l);

#endif
