/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The temperature functions of the carbonate system, as rows with their sources; docs/methods.md
 * shows them. Ion pairs of HCO3 and CO3 are written from the free ions.
 */
#include "chem/constants.h"

#include <math.h>
#include <string.h>

#include "chem/solution.h"

#define KELVIN 273.15
#define LN_10 2.302585092994046
#define GAS_KCAL 1.98720e-3 /* kcal/(mol K) */
#define STANDARD_K 298.15
/*
 * One size for every ion, in angstrom: what Truesdell & Jones 1974, J. Res. USGS 2:233-248, give
 * HCO3 and CO3 (from memory); for the other ions of fresh water see docs/methods.md.
 */
#define ION_SIZE 5.4

#define PLUMMER "Plummer & Busenberg 1982"
#define PHREEQC "database phreeqc.dat of USGS PHREEQC 3"
#define NORDSTROM "Nordstrom et al. 1990, from memory"

/* A pair known by log10 K at 25 C and its enthalpy of formation in kcal/mol: van 't Hoff. */
#define AT_25(log_k, enthalpy)                                                                     \
	(log_k) + (enthalpy) / (GAS_KCAL * LN_10 * STANDARD_K), 0,                                 \
		-(enthalpy) / (GAS_KCAL * LN_10), 0, 0, 0

static const struct ts_chem_constant published[] = {
	{TS_CHEM_CONSTANT(kh), "CO2 (gas) = CO2", PLUMMER, 0, 90, 108.3865, 0.01985076, -6919.53,
		-40.45154, 669365, 0},
	{TS_CHEM_CONSTANT(k1), "CO2 + H2O = H + HCO3", PLUMMER, 0, 90, -356.3094, -0.06091964,
		21834.37, 126.8339, -1684915, 0},
	{TS_CHEM_CONSTANT(k2), "HCO3 = H + CO3", PLUMMER, 0, 90, -107.8871, -0.03252849, 5151.79,
		38.92561, -563713.9, 0},
	{TS_CHEM_CONSTANT(kw), "H2O = H + OH", PHREEQC, 0, 50, 293.29227, 0.1360833, -10576.913,
		-123.73158, 0, -6.996455e-5},
	{TS_CHEM_CONSTANT(mineral[TS_CALCITE]), "calcite = Ca + CO3", PLUMMER, 0, 90, -171.9065,
		-0.077993, 2839.319, 71.595, 0, 0},
	{TS_CHEM_CONSTANT(mineral[TS_ARAGONITE]), "aragonite = Ca + CO3", PLUMMER, 0, 90, -171.9773,
		-0.077993, 2903.293, 71.595, 0, 0},
	{TS_CHEM_CONSTANT(ca_hco3), "Ca + HCO3 = CaHCO3+", PLUMMER, 0, 90, 1209.120, 0.31294,
		-34765.05, -478.782, 0, 0},
	{TS_CHEM_CONSTANT(ca_co3), "Ca + CO3 = CaCO3", PLUMMER, 0, 90, -1228.732, -0.299444,
		35512.75, 485.818, 0, 0},
	{TS_CHEM_CONSTANT(mg_hco3), "Mg + HCO3 = MgHCO3+", NORDSTROM, 0, 50, -59.215, 0, 2537.455,
		20.92298, 0, 0},
	{TS_CHEM_CONSTANT(mg_co3), "Mg + CO3 = MgCO3", NORDSTROM, 0, 50, 0.9910, 0.00667, 0, 0, 0,
		0},
	{TS_CHEM_CONSTANT(ca_so4), "Ca + SO4 = CaSO4", NORDSTROM, 0, 50, AT_25(2.30, 1.65)},
	{TS_CHEM_CONSTANT(mg_so4), "Mg + SO4 = MgSO4", NORDSTROM, 0, 50, AT_25(2.37, 4.55)},
};

const struct ts_chem_constant_set ts_chem_published = {
	published, sizeof(published) / sizeof(published[0])};

static double power_of_10(double x)
{
	return exp(LN_10 * x);
}

/*
 * Debye-Hueckel A and B from the density and the dielectric constant of water, as in Truesdell &
 * Jones 1974, J. Res. USGS 2:233-248, with the fits coded in WATEQ and PHREEQC 2; from memory,
 * within 0.3 % of what PHREEQC 3 reports (tests/checks).
 */
static void debye_hueckel(struct ts_chem_constants *cache)
{
	double kelvin = cache->temp_c + KELVIN;
	double dielectric =
		2727.586 + 0.6224107 * kelvin - 466.9151 * log(kelvin) - 52000.87 / kelvin;
	double from_4_c = cache->temp_c - 3.9863;
	double density = 1 - from_4_c * from_4_c * (cache->temp_c + 288.9414) /
				     (508929.2 * (cache->temp_c + 68.12963));
	double product = dielectric * kelvin;

	cache->dh_a = 1.82483e6 * sqrt(density) / (product * sqrt(product));
	cache->dh_b_size = 50.2916 * ION_SIZE * sqrt(density / product);
}

void ts_chem_constants_of(
	struct ts_chem_constants *cache, const struct ts_chem_constant_set *set, double temp_c)
{
	double bounded = fmin(fmax(temp_c, TS_CHEM_TEMP_LOW_C), TS_CHEM_TEMP_HIGH_C);
	double t = bounded + KELVIN, log_t = log10(t);

	if (cache->set == set && cache->temp_c == bounded)
		return;
	*cache = (struct ts_chem_constants){.set = set, .temp_c = bounded};
	for (size_t i = 0; i < set->n; i++) {
		const struct ts_chem_constant *row = &set->rows[i];
		double value = power_of_10(row->a + row->b * t + row->c / t + row->d * log_t +
					   row->e / (t * t) + row->f * t * t);

		memcpy((char *)cache + row->offset, &value, sizeof(value));
	}
	cache->inverse_k1 = 1 / cache->k1;
	debye_hueckel(cache);
}

void ts_chem_constants_at(struct ts_chem_constants *cache, double temp_c)
{
	ts_chem_constants_of(cache, &ts_chem_published, temp_c);
}
