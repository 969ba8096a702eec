/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The table of substances. A further salt is a further row: its mass is written as a sum over
 * elements, its ions and alkalinity must balance in charge (tests/chem/test_substances.c looks).
 */
#include "chem/substances.h"

#include <string.h>

#define CA [TS_ION_CA]
#define MG [TS_ION_MG]
#define NA [TS_ION_NA]
#define K [TS_ION_K]
#define CL [TS_ION_CL]
#define SO4 [TS_ION_SO4]
#define NO3 [TS_ION_NO3]
#define W_CA TS_WEIGHT_CA
#define W_CL TS_WEIGHT_CL
#define W_H TS_WEIGHT_H
#define W_K TS_WEIGHT_K
#define W_MG TS_WEIGHT_MG
#define W_NA TS_WEIGHT_NA
#define W_OH (TS_WEIGHT_O + TS_WEIGHT_H)
#define M_CO3 TS_MASS_CO3
#define M_HCO3 TS_MASS_HCO3
#define M_NO3 TS_MASS_NO3
#define M_SO4 TS_MASS_SO4
#define M_W TS_MASS_H2O

/* clang-format off: one row a line */
const struct ts_substance ts_substances[] = {
	/* formula, name, kind, molar mass, ions, alkalinity, carbon */
	{"Ca(OH)2", "calcium hydroxide", TS_BASE, W_CA + 2 * W_OH, {CA = 1}, 2, 0},
	{"CaCO3", "calcium carbonate", TS_LIME, W_CA + M_CO3, {CA = 1}, 2, 1},
	{"CaCl2", "calcium chloride", TS_SALT, W_CA + 2 * W_CL, {CA = 1, CL = 2}, 0, 0},
	{"CaCl2.2H2O", "calcium chloride dihydrate", TS_SALT, W_CA + 2 * W_CL + 2 * M_W,
		{CA = 1, CL = 2}, 0, 0},
	{"CaSO4.2H2O", "calcium sulphate dihydrate", TS_SALT, W_CA + M_SO4 + 2 * M_W,
		{CA = 1, SO4 = 1}, 0, 0},
	{"H2SO4", "sulphuric acid", TS_ACID, 2 * W_H + M_SO4, {SO4 = 1}, -2, 0},
	{"HCl", "hydrochloric acid", TS_ACID, W_H + W_CL, {CL = 1}, -1, 0},
	{"HNO3", "nitric acid", TS_ACID, W_H + M_NO3, {NO3 = 1}, -1, 0},
	{"K2CO3", "potassium carbonate", TS_SALT, 2 * W_K + M_CO3, {K = 2}, 2, 1},
	{"K2SO4", "potassium sulphate", TS_SALT, 2 * W_K + M_SO4, {K = 2, SO4 = 1}, 0, 0},
	{"KCl", "potassium chloride", TS_SALT, W_K + W_CL, {K = 1, CL = 1}, 0, 0},
	{"KHCO3", "potassium hydrogen carbonate", TS_SALT, W_K + M_HCO3, {K = 1}, 1, 1},
	{"KNO3", "potassium nitrate", TS_SALT, W_K + M_NO3, {K = 1, NO3 = 1}, 0, 0},
	{"MgCO3", "magnesium carbonate", TS_LIME, W_MG + M_CO3, {MG = 1}, 2, 1},
	{"MgCl2.6H2O", "magnesium chloride hexahydrate", TS_SALT, W_MG + 2 * W_CL + 6 * M_W,
		{MG = 1, CL = 2}, 0, 0},
	{"MgSO4", "magnesium sulphate", TS_SALT, W_MG + M_SO4, {MG = 1, SO4 = 1}, 0, 0},
	{"MgSO4.7H2O", "magnesium sulphate heptahydrate", TS_SALT, W_MG + M_SO4 + 7 * M_W,
		{MG = 1, SO4 = 1}, 0, 0},
	{"Na2CO3", "sodium carbonate", TS_SALT, 2 * W_NA + M_CO3, {NA = 2}, 2, 1},
	{"Na2SO4", "sodium sulphate", TS_SALT, 2 * W_NA + M_SO4, {NA = 2, SO4 = 1}, 0, 0},
	{"NaCl", "sodium chloride", TS_SALT, W_NA + W_CL, {NA = 1, CL = 1}, 0, 0},
	{"NaHCO3", "sodium hydrogen carbonate", TS_SALT, W_NA + M_HCO3, {NA = 1}, 1, 1},
	{"NaOH", "sodium hydroxide", TS_BASE, W_NA + W_OH, {NA = 1}, 1, 0},
};
/* clang-format on */

const size_t ts_substance_count = sizeof(ts_substances) / sizeof(ts_substances[0]);

const struct ts_substance *ts_chem_substance(const char *formula)
{
	for (size_t i = 0; i < ts_substance_count; i++)
		if (strcmp(ts_substances[i].formula, formula) == 0)
			return &ts_substances[i];
	return NULL;
}

void ts_chem_dissolve(const struct ts_solution *s, const struct ts_substance *substance,
	double mmol_l, struct ts_solution *ret)
{
	const double *ions = substance->ions;
	struct ts_solution sum = *s;

	sum.ca_mmol_l += mmol_l * ions[TS_ION_CA];
	sum.mg_mmol_l += mmol_l * ions[TS_ION_MG];
	sum.na_mmol_l += mmol_l * ions[TS_ION_NA];
	sum.k_mmol_l += mmol_l * ions[TS_ION_K];
	sum.cl_mmol_l += mmol_l * ions[TS_ION_CL];
	sum.so4_mmol_l += mmol_l * ions[TS_ION_SO4];
	sum.no3_mmol_l += mmol_l * ions[TS_ION_NO3];
	sum.alk_meq_l += mmol_l * substance->alk_eq;
	sum.dic_mmol_l += mmol_l * substance->carbon_mol;
	*ret = sum;
}

double ts_chem_substance_mmol_l(const struct ts_substance *substance, double grams, double litres)
{
	return 1000 * grams / (substance->molar_mass * litres);
}

double ts_chem_substance_grams(const struct ts_substance *substance, double mmol_l, double litres)
{
	return mmol_l * substance->molar_mass * litres / 1000;
}
