/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The table of ions and the mass conversions that read it. Weights and their source are in
 * ions.h; which ions a water carries is solution.h's affair.
 */
#include "chem/ions.h"

const struct ts_ion ts_ions[TS_ION__COUNT] = {
	[TS_ION_CA] = {"Ca", 2, TS_WEIGHT_CA, 59.5},
	[TS_ION_MG] = {"Mg", 2, TS_WEIGHT_MG, 53.1},
	[TS_ION_NA] = {"Na", 1, TS_WEIGHT_NA, 50.1},
	[TS_ION_K] = {"K", 1, TS_WEIGHT_K, 73.5},
	[TS_ION_CL] = {"Cl", -1, TS_WEIGHT_CL, 76.4},
	[TS_ION_SO4] = {"SO4", -2, TS_MASS_SO4, 80.0},
	[TS_ION_NO3] = {"NO3", -1, TS_MASS_NO3, 71.4},
	[TS_ION_HCO3] = {"HCO3", -1, TS_MASS_HCO3, 44.5},
	[TS_ION_CO3] = {"CO3", -2, TS_MASS_CO3, 69.3},
	[TS_ION_NO2] = {"NO2", -1, TS_MASS_NO2, 71.8},
	[TS_ION_NH4] = {"NH4", 1, TS_MASS_NH4, 73.5},
	[TS_ION_PO4] = {"PO4", -3, TS_MASS_PO4, 0},
	[TS_ION_H] = {"H", 1, TS_WEIGHT_H, 349.7},
	[TS_ION_OH] = {"OH", -1, TS_WEIGHT_O + TS_WEIGHT_H, 198.6},
};

double ts_chem_mmol_l_from_mg_l(enum ts_ion_id ion, double mg_l)
{
	return mg_l / ts_ions[ion].molar_mass;
}

double ts_chem_mg_l_from_mmol_l(enum ts_ion_id ion, double mmol_l)
{
	return mmol_l * ts_ions[ion].molar_mass;
}

double ts_chem_co2_mg_l_from_mmol_l(double mmol_l)
{
	return mmol_l * TS_MASS_CO2;
}

double ts_chem_co2_mmol_l_from_mg_l(double mg_l)
{
	return mg_l / TS_MASS_CO2;
}
