/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Atomic weights and the ions of fresh water. Every molar mass and every conversion factor of
 * the chemistry room is computed from the weights named here, so that no magic factor stands
 * anywhere else. Hardness degrees are next door in hardness.h, salts in substances.h.
 */
#ifndef TS_CHEM_IONS_H
#define TS_CHEM_IONS_H

/* Standard atomic weights, IUPAC 2021, abridged, g/mol (values from memory, checked in
 * tests/checks against the masses that USGS PHREEQC's database uses, to 4 digits). */
#define TS_WEIGHT_H 1.008
#define TS_WEIGHT_C 12.011
#define TS_WEIGHT_N 14.007
#define TS_WEIGHT_O 15.999
#define TS_WEIGHT_NA 22.990
#define TS_WEIGHT_MG 24.305
#define TS_WEIGHT_P 30.974
#define TS_WEIGHT_S 32.06
#define TS_WEIGHT_CL 35.45
#define TS_WEIGHT_K 39.098
#define TS_WEIGHT_CA 40.078

/* Molar masses, g/mol, of what conversions need by name. */
#define TS_MASS_CO3 (TS_WEIGHT_C + 3 * TS_WEIGHT_O)
#define TS_MASS_HCO3 (TS_WEIGHT_H + TS_MASS_CO3)
#define TS_MASS_CACO3 (TS_WEIGHT_CA + TS_MASS_CO3)
#define TS_MASS_CAO (TS_WEIGHT_CA + TS_WEIGHT_O)
#define TS_MASS_CO2 (TS_WEIGHT_C + 2 * TS_WEIGHT_O)
#define TS_MASS_O2 (2 * TS_WEIGHT_O)
#define TS_MASS_H2O (2 * TS_WEIGHT_H + TS_WEIGHT_O)
#define TS_MASS_SO4 (TS_WEIGHT_S + 4 * TS_WEIGHT_O)
#define TS_MASS_NO2 (TS_WEIGHT_N + 2 * TS_WEIGHT_O)
#define TS_MASS_NO3 (TS_WEIGHT_N + 3 * TS_WEIGHT_O)
#define TS_MASS_NH4 (TS_WEIGHT_N + 4 * TS_WEIGHT_H)
#define TS_MASS_PO4 (TS_WEIGHT_P + 4 * TS_WEIGHT_O)

/* The first seven are the members of struct ts_solution, in its order. */
enum ts_ion_id {
	TS_ION_CA,
	TS_ION_MG,
	TS_ION_NA,
	TS_ION_K,
	TS_ION_CL,
	TS_ION_SO4,
	TS_ION_NO3,
	TS_ION__IN_SOLUTION,
	TS_ION_HCO3 = TS_ION__IN_SOLUTION,
	TS_ION_CO3,
	TS_ION_NO2,
	TS_ION_NH4,
	TS_ION_PO4,
	TS_ION_H,
	TS_ION_OH,
	TS_ION__COUNT
};

/* One ion. */
struct ts_ion {
	const char *symbol; /* "Ca", "SO4": as laboratories print it, without the charge */
	int charge;
	double molar_mass; /* g/mol */
	/*
	 * Limiting equivalent conductivity at 25 C, S cm2/eq, from the tables that handbooks of
	 * chemistry reprint; from memory, checked on measured waters in tests/checks. 0: not
	 * counted.
	 */
	double conductivity;
};

/* The ions, indexed by enum ts_ion_id. */
extern const struct ts_ion ts_ions[TS_ION__COUNT];

/* mg/L of an ion (as the ion, not as its element) to mmol/L. Any finite number. */
double ts_chem_mmol_l_from_mg_l(enum ts_ion_id ion, double mg_l);
/* mmol/L of an ion to mg/L as the ion. */
double ts_chem_mg_l_from_mmol_l(enum ts_ion_id ion, double mmol_l);
/* Dissolved carbon dioxide, mmol/L to mg/L as CO2 and back. */
double ts_chem_co2_mg_l_from_mmol_l(double mmol_l);
double ts_chem_co2_mmol_l_from_mg_l(double mg_l);

#endif
