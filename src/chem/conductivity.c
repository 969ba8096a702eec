/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Sums over the table of ions. The share of alkalinity that is carbonate, and the acidity that
 * conducts in very soft water, come from a solve at the pH given.
 */
#include "chem/conductivity.h"

#include <math.h>
#include <stdlib.h>

#include "chem/ions.h"
#include "chem/speciation.h"

/* Onsager 1927, water at 25 C, S cm2/eq per (mol/L)^0.5, and per unit; from memory. */
#define ONSAGER_A 30.1
#define ONSAGER_B 0.229
/* B a of the extended Debye-Hueckel form, a = 4.5 angstrom. */
#define ION_SIZE 1.5

double ts_chem_ionic_strength_mol_l(const struct ts_solution *s)
{
	double single =
		s->na_mmol_l + s->k_mmol_l + s->cl_mmol_l + s->no3_mmol_l + fabs(s->alk_meq_l);
	double twofold = s->ca_mmol_l + s->mg_mmol_l + s->so4_mmol_l;

	return (single + 4 * twofold) / 2000;
}

/* What one ion adds, uS/cm, at mol/L free; `drag` is the square root term, 0 at infinite dilution.
 */
static double conducts(enum ts_ion_id ion, double mol_l, double drag)
{
	double limiting = ts_ions[ion].conductivity;
	double charge = abs(ts_ions[ion].charge);

	return 1000 * charge * mol_l *
	       (limiting - charge * (ONSAGER_A + ONSAGER_B * limiting) * drag);
}

enum ts_status ts_chem_conductivity_25_us_cm(
	const struct ts_solution *s, double ph, double *ret_us_cm)
{
	struct ts_chem_constants constants = {0};
	struct ts_ion_species now = {0};
	struct ts_solution without_carbon = *s;
	enum ts_status status;
	double root, drag;

	without_carbon.dic_mmol_l = 0;
	ts_chem_constants_at(&constants, s->temp_c);
	status = ts_chem_speciate_at_ph(&constants, &without_carbon, ph, &now);
	if (status != TS_OK)
		return status;
	root = sqrt(now.ionic_strength);
	drag = root / (1 + ION_SIZE * root);
	*ret_us_cm = conducts(TS_ION_CA, now.ca, drag) + conducts(TS_ION_MG, now.mg, drag) +
		     conducts(TS_ION_NA, s->na_mmol_l / 1000, drag) +
		     conducts(TS_ION_K, s->k_mmol_l / 1000, drag) +
		     conducts(TS_ION_CL, s->cl_mmol_l / 1000, drag) +
		     conducts(TS_ION_SO4, now.so4, drag) +
		     conducts(TS_ION_NO3, s->no3_mmol_l / 1000, drag) +
		     conducts(TS_ION_HCO3, now.hco3, drag) + conducts(TS_ION_CO3, now.co3, drag) +
		     conducts(TS_ION_H, now.h, drag) + conducts(TS_ION_OH, now.oh, drag);
	return TS_OK;
}

double ts_chem_ec25_from_ec20(double ec20_us_cm)
{
	return ec20_us_cm * TS_CHEM_EC25_PER_EC20;
}

double ts_chem_ec20_from_ec25(double ec25_us_cm)
{
	return ec25_us_cm / TS_CHEM_EC25_PER_EC20;
}
