/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Ionic strength and electrical conductivity as estimates from the ions, and the step between
 * the two reference temperatures that meters and laboratories use, 20 and 25 C.
 */
#ifndef TS_CHEM_CONDUCTIVITY_H
#define TS_CHEM_CONDUCTIVITY_H

#include "chem/solution.h"

/* EC at 25 C over EC at 20 C for natural water: five laboratory pairs give 1.114-1.116 (the
 * temperature function of ISO 7888 / EN 27888). */
#define TS_CHEM_EC25_PER_EC20 1.116

/*
 * Ionic strength, mol/L, of the ions alone, all alkalinity as bicarbonate and nothing in pairs:
 * 4 to 9 % above what the full solve finds in hard water. Any water.
 */
double ts_chem_ionic_strength_mol_l(const struct ts_solution *s);

/*
 * Conductivity at 25 C, uS/cm, of the water at a pH: limiting conductivities of the free ions
 * (ions.h), lowered with ionic strength by Onsager's law in its extended form. An estimate: on
 * measured waters half of the answers lie within 5 % and nine of ten within 10 % (tests/checks).
 * Status as ts_chem_co2_from_ph(). s->dic_mmol_l is ignored.
 */
TS_MUST_USE enum ts_status ts_chem_conductivity_25_us_cm(
	const struct ts_solution *s, double ph, double *ret_us_cm);

/* A conductivity at one reference temperature to the other. */
double ts_chem_ec25_from_ec20(double ec20_us_cm);
double ts_chem_ec20_from_ec25(double ec25_us_cm);

#endif
