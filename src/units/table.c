/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The unit table. Hardness factors come from the definitions: 1 dH = 10 mg CaO per litre, 1 French
 * degree = 10 mg CaCO3 per litre, 1 English degree = 1 grain CaCO3 per imperial gallon, with the
 * atomic weights of IUPAC 2021 (abridged) and the exact grain and gallons. Checked against a table
 * computed elsewhere in tests/checks/test_units.c.
 */
#include "units/units.h"

#define CAO 56.077     /* g/mol */
#define CACO3 100.086  /* g/mol */
#define HCO3 61.016    /* g/mol */
#define CALCIUM 40.078 /* g/mol */
#define MAGNESIUM 24.305
#define GRAIN_MG 64.79891
#define UK_GALLON_L 4.54609
#define US_GALLON_L 3.785411784

#define DH_PER_MMOL (CAO / 10)
#define DH_PER_MG_CACO3 (CAO / 10 / CACO3)
#define DH_PER_CLARK (GRAIN_MG / UK_GALLON_L * DH_PER_MG_CACO3)
#define DH_PER_GPG (GRAIN_MG / US_GALLON_L * DH_PER_MG_CACO3)

#define N 14.007
#define NO3 62.004
#define NO2 46.005
#define NH4 18.039
#define NH3 17.031

static const char ppm_caco3[] = "taken as mg/L of calcium carbonate (CaCO3)";
static const char us_gallon[] = "taken as US gallons of 3.785 L";
static const char ec_25[] = "taken as measured at 25 C";

const struct ts_quantity_row ts_quantities[TS_Q__COUNT] = {
	[TS_Q_NUMBER] = {"number", "", 2, true, -1e9, 1e9, "12", 0, NULL},
	[TS_Q_PH] = {"pH", "", 1, true, 0, 14, "7.4", 0, NULL},
	[TS_Q_GH] = {"general hardness", "dH", 1, true, 0, 200, "14 dH", 30, "ppm"},
	[TS_Q_KH] = {"carbonate hardness", "dH", 1, true, 0, 200, "9 dH", 30, "ppm"},
	[TS_Q_ALKALINITY] = {"alkalinity", "meq/L", 2, false, 0, 70, "3.2 meq/L", 0, NULL},
	[TS_Q_TEMPERATURE] = {"temperature", "C", 1, true, -5, 60, "24..26 C", 0, NULL},
	/* A meter's bare 450 is uS/cm, its bare 0.45 mS/cm: the small figure is asked about. */
	[TS_Q_CONDUCTIVITY] = {"conductivity", "uS/cm", 0, true, 0, 100000, "450 uS/cm", 0, NULL,
		10, "taken as uS/cm, measured at 25 C"},
	[TS_Q_TDS] = {"dissolved solids", "mg/L", 0, true, 0, 100000, "300 mg/L", 0, NULL, 0,
		"taken as mg/L (ppm)"},
	[TS_Q_CALCIUM] = {"calcium", "mg/L", 1, false, 0, 5000, "80 mg/L", 0, NULL},
	[TS_Q_MAGNESIUM] = {"magnesium", "mg/L", 1, false, 0, 5000, "12 mg/L", 0, NULL},
	[TS_Q_ION] = {"concentration", "mg/L", 2, false, 0, 40000, "20 mg/L", 0, NULL},
	[TS_Q_SALINITY] = {"salinity", "g/L", 1, false, 0, 60, "0.2 g/L", 0, NULL},
	[TS_Q_GRAVITY] = {"specific gravity", "", 4, true, 0.99, 1.035, "1.004", 0, NULL},
	[TS_Q_NITRATE] = {"nitrate", "mg/L", 1, false, 0, 5000, "20 mg/L NO3 or 4.5 mg/L N", 0,
		NULL},
	[TS_Q_NITRITE] = {"nitrite", "mg/L", 2, false, 0, 500, "<0.05 mg/L NO2 or 0.015 mg/L N", 0,
		NULL},
	[TS_Q_NITROGEN] = {"nitrogen", "mg/L N", 2, false, 0, 1000, "4.5 mg/L", 0, NULL},
	[TS_Q_AMMONIA] = {"total ammonia", "mg/L N", 2, false, 0, 500, "<0.25 mg/L", 0, NULL},
	[TS_Q_OXYGEN] = {"dissolved oxygen", "mg/L", 1, false, 0, 50, "7.5 mg/L", 0, NULL},
	[TS_Q_SATURATION] = {"oxygen saturation", "%", 0, true, 0, 400, "85 %", 0, NULL},
	[TS_Q_LENGTH] = {"length", "cm", 1, false, 0, 1000, "80 cm", 0, NULL},
	[TS_Q_AREA] = {"floor", "m2", 2, false, 0, 100, "0.15 m2", 0, NULL},
	[TS_Q_VOLUME] = {"volume", "L", 0, false, 0, 1e6, "112 L", 0, NULL},
	[TS_Q_MASS] = {"mass", "g", 1, false, 0, 1e6, "2 g", 0, NULL},
	[TS_Q_TIME] = {"time", "h", 0, false, 0, 1e6, "24 h", 0, NULL},
	[TS_Q_HOURS] = {"hours", "h", 0, true, 0, 1e6, "24 h", 0, NULL},
	[TS_Q_PERCENT] = {"share", "%", 0, false, 0, 100, "30 %", 0, NULL},
	[TS_Q_FEED] = {"feed", "g/day", 1, false, 0, 100000, "2 g/day", 0, NULL},
	[TS_Q_PRACTICE] = {"figure", "", 3, true, 0, 1e6, "0.5", 0, NULL},
};

/* Sorted by quantity; the first row of a quantity is its canonical unit. One row a line. */
/* clang-format off */
const struct ts_unit_row ts_units[] = {
	{TS_Q_GH, "dh", "dH", 1, 0, NULL},
	{TS_Q_GH, "clark", "Clark", DH_PER_CLARK, 0, NULL},
	{TS_Q_GH, "dgh", NULL, 1, 0, NULL},
	{TS_Q_GH, "eh", NULL, DH_PER_CLARK, 0, NULL},
	{TS_Q_GH, "f", NULL, DH_PER_MG_CACO3 * 10, 0, NULL},
	{TS_Q_GH, "fh", "fH", DH_PER_MG_CACO3 * 10, 0, NULL},
	{TS_Q_GH, "gpg", "gpg", DH_PER_GPG, 0, NULL},
	{TS_Q_GH, "meq/l", "meq/L", DH_PER_MMOL / 2, 0, NULL},
	{TS_Q_GH, "mg/l", NULL, DH_PER_MG_CACO3, 0, ppm_caco3},
	{TS_Q_GH, "mg/lascaco3", NULL, DH_PER_MG_CACO3, 0, NULL},
	{TS_Q_GH, "mg/lca", "mg/L Ca", DH_PER_MMOL / CALCIUM, 0, NULL},
	{TS_Q_GH, "mg/lcaco3", "mg/L CaCO3", DH_PER_MG_CACO3, 0, NULL},
	{TS_Q_GH, "mmol/l", "mmol/L", DH_PER_MMOL, 0, NULL},
	{TS_Q_GH, "odh", NULL, 1, 0, NULL},
	{TS_Q_GH, "ppm", "ppm", DH_PER_MG_CACO3, 0, ppm_caco3},
	{TS_Q_GH, "ppmascaco3", NULL, DH_PER_MG_CACO3, 0, NULL},
	{TS_Q_GH, "ppmcaco3", NULL, DH_PER_MG_CACO3, 0, NULL},
	{TS_Q_KH, "dh", "dH", 1, 0, NULL},
	{TS_Q_KH, "clark", "Clark", DH_PER_CLARK, 0, NULL},
	{TS_Q_KH, "dkh", NULL, 1, 0, NULL},
	{TS_Q_KH, "eh", NULL, DH_PER_CLARK, 0, NULL},
	{TS_Q_KH, "f", NULL, DH_PER_MG_CACO3 * 10, 0, NULL},
	{TS_Q_KH, "fh", "fH", DH_PER_MG_CACO3 * 10, 0, NULL},
	{TS_Q_KH, "gpg", "gpg", DH_PER_GPG, 0, NULL},
	{TS_Q_KH, "meq/l", "meq/L", DH_PER_MMOL / 2, 0, NULL},
	{TS_Q_KH, "mg/l", NULL, DH_PER_MG_CACO3, 0, ppm_caco3},
	{TS_Q_KH, "mg/lascaco3", NULL, DH_PER_MG_CACO3, 0, NULL},
	{TS_Q_KH, "mg/lcaco3", "mg/L CaCO3", DH_PER_MG_CACO3, 0, NULL},
	{TS_Q_KH, "mg/lhco3", "mg/L HCO3", DH_PER_MMOL / 2 / HCO3, 0, NULL},
	{TS_Q_KH, "mg/lhco3-", NULL, DH_PER_MMOL / 2 / HCO3, 0, NULL},
	{TS_Q_KH, "mmol/l", "mmol/L", DH_PER_MMOL / 2, 0, NULL},
	{TS_Q_KH, "odh", NULL, 1, 0, NULL},
	{TS_Q_KH, "ppm", "ppm", DH_PER_MG_CACO3, 0, ppm_caco3},
	{TS_Q_KH, "ppmascaco3", NULL, DH_PER_MG_CACO3, 0, NULL},
	{TS_Q_KH, "ppmcaco3", NULL, DH_PER_MG_CACO3, 0, NULL},
	{TS_Q_ALKALINITY, "meq/l", "meq/L", 1, 0, NULL},
	{TS_Q_ALKALINITY, "dh", "dH", 2 / DH_PER_MMOL, 0, NULL},
	{TS_Q_ALKALINITY, "dkh", NULL, 2 / DH_PER_MMOL, 0, NULL},
	{TS_Q_ALKALINITY, "f", NULL, 20 / CACO3, 0, NULL},
	{TS_Q_ALKALINITY, "fh", "fH", 20 / CACO3, 0, NULL},
	{TS_Q_ALKALINITY, "mg/l", NULL, 2 / CACO3, 0, ppm_caco3},
	{TS_Q_ALKALINITY, "mg/lascaco3", NULL, 2 / CACO3, 0, NULL},
	{TS_Q_ALKALINITY, "mg/lcaco3", "mg/L CaCO3", 2 / CACO3, 0, NULL},
	{TS_Q_ALKALINITY, "mg/lhco3", "mg/L HCO3", 1 / HCO3, 0, NULL},
	{TS_Q_ALKALINITY, "mg/lhco3-", NULL, 1 / HCO3, 0, NULL},
	{TS_Q_ALKALINITY, "mmol/l", "mmol/L", 1, 0, NULL},
	{TS_Q_ALKALINITY, "ppm", "ppm", 2 / CACO3, 0, ppm_caco3},
	{TS_Q_ALKALINITY, "ppmcaco3", NULL, 2 / CACO3, 0, NULL},
	{TS_Q_TEMPERATURE, "c", "C", 1, 0, NULL},
	{TS_Q_TEMPERATURE, "f", "F", 5.0 / 9, -160.0 / 9, NULL},
	{TS_Q_TEMPERATURE, "k", NULL, 1, -273.15, NULL},
	{TS_Q_CONDUCTIVITY, "us/cm", "uS/cm", 1, 0, ec_25},
	{TS_Q_CONDUCTIVITY, "ms/cm", "mS/cm", 1000, 0, ec_25},
	{TS_Q_CONDUCTIVITY, "ms/m", "mS/m", 10, 0, ec_25},
	{TS_Q_TDS, "mg/l", "mg/L", 1, 0, NULL},
	{TS_Q_TDS, "ppm", "ppm", 1, 0, NULL},
	{TS_Q_CALCIUM, "mg/l", "mg/L", 1, 0, NULL},
	{TS_Q_CALCIUM, "meq/l", "meq/L", CALCIUM / 2, 0, NULL},
	{TS_Q_CALCIUM, "mg/lca", NULL, 1, 0, NULL},
	{TS_Q_CALCIUM, "mg/lcaco3", "mg/L CaCO3", CALCIUM / CACO3, 0, NULL},
	{TS_Q_CALCIUM, "mmol/l", "mmol/L", CALCIUM, 0, NULL},
	{TS_Q_CALCIUM, "ppm", NULL, 1, 0, NULL},
	{TS_Q_MAGNESIUM, "mg/l", "mg/L", 1, 0, NULL},
	{TS_Q_MAGNESIUM, "meq/l", "meq/L", MAGNESIUM / 2, 0, NULL},
	{TS_Q_MAGNESIUM, "mg/lcaco3", "mg/L CaCO3", MAGNESIUM / CACO3, 0, NULL},
	{TS_Q_MAGNESIUM, "mg/lmg", NULL, 1, 0, NULL},
	{TS_Q_MAGNESIUM, "mmol/l", "mmol/L", MAGNESIUM, 0, NULL},
	{TS_Q_MAGNESIUM, "ppm", NULL, 1, 0, NULL},
	{TS_Q_ION, "mg/l", "mg/L", 1, 0, NULL},
	{TS_Q_ION, "g/l", "g/L", 1000, 0, NULL},
	{TS_Q_ION, "ppb", NULL, 0.001, 0, NULL},
	{TS_Q_ION, "ppm", NULL, 1, 0, NULL},
	{TS_Q_ION, "ug/l", "ug/L", 0.001, 0, NULL},
	{TS_Q_SALINITY, "g/l", "g/L", 1, 0, NULL},
	{TS_Q_SALINITY, "g/kg", NULL, 1, 0, NULL},
	{TS_Q_SALINITY, "mg/l", "mg/L", 0.001, 0, NULL},
	{TS_Q_SALINITY, "ppt", "ppt", 1, 0, NULL},
	{TS_Q_NITRATE, "mg/l", "mg/L", 1, 0, NULL},
	{TS_Q_NITRATE, "mg/ln", "mg/L N", NO3 / N, 0, NULL},
	{TS_Q_NITRATE, "mg/lno3", NULL, 1, 0, NULL},
	{TS_Q_NITRATE, "mg/lno3-n", NULL, NO3 / N, 0, NULL},
	{TS_Q_NITRATE, "mmol/l", "mmol/L", NO3, 0, NULL},
	{TS_Q_NITRITE, "mg/l", "mg/L", 1, 0, NULL},
	{TS_Q_NITRITE, "mg/ln", "mg/L N", NO2 / N, 0, NULL},
	{TS_Q_NITRITE, "mg/lno2", NULL, 1, 0, NULL},
	{TS_Q_NITRITE, "mg/lno2-n", NULL, NO2 / N, 0, NULL},
	{TS_Q_NITRITE, "mmol/l", "mmol/L", NO2, 0, NULL},
	{TS_Q_NITROGEN, "mg/l", NULL, 1, 0, NULL},
	{TS_Q_NITROGEN, "mg/ln", "mg/L N", 1, 0, NULL},
	{TS_Q_NITROGEN, "ppm", NULL, 1, 0, NULL},
	{TS_Q_AMMONIA, "mg/l", NULL, 1, 0, "taken as nitrogen (mg/L N)"},
	{TS_Q_AMMONIA, "mg/ln", "mg/L N", 1, 0, NULL},
	{TS_Q_AMMONIA, "mg/lnh3", "mg/L NH3", N / NH3, 0, NULL},
	{TS_Q_AMMONIA, "mg/lnh4", "mg/L NH4", N / NH4, 0, NULL},
	{TS_Q_AMMONIA, "ppm", NULL, 1, 0, "taken as nitrogen (mg/L N)"},
	{TS_Q_OXYGEN, "mg/l", "mg/L", 1, 0, NULL},
	{TS_Q_OXYGEN, "mg/lo2", NULL, 1, 0, NULL},
	{TS_Q_OXYGEN, "ppm", NULL, 1, 0, NULL},
	{TS_Q_SATURATION, "%", "%", 1, 0, NULL},
	{TS_Q_SATURATION, "percent", NULL, 1, 0, NULL},
	{TS_Q_LENGTH, "cm", "cm", 1, 0, NULL},
	{TS_Q_LENGTH, "cmsl", NULL, 1.22, 0, "total length taken as 1.22 x standard length"},
	{TS_Q_LENGTH, "cmtl", NULL, 1, 0, NULL},
	{TS_Q_LENGTH, "in", "in", 2.54, 0, NULL},
	{TS_Q_LENGTH, "m", "m", 100, 0, NULL},
	{TS_Q_LENGTH, "mm", "mm", 0.1, 0, NULL},
	{TS_Q_AREA, "m2", "m2", 1, 0, NULL},
	{TS_Q_AREA, "cm2", "cm2", 1e-4, 0, NULL},
	{TS_Q_VOLUME, "l", "L", 1, 0, NULL},
	{TS_Q_VOLUME, "gal", NULL, US_GALLON_L, 0, us_gallon},
	{TS_Q_VOLUME, "gallon", NULL, US_GALLON_L, 0, us_gallon},
	{TS_Q_VOLUME, "gallons", NULL, US_GALLON_L, 0, us_gallon},
	{TS_Q_VOLUME, "liter", NULL, 1, 0, NULL},
	{TS_Q_VOLUME, "liters", NULL, 1, 0, NULL},
	{TS_Q_VOLUME, "litre", NULL, 1, 0, NULL},
	{TS_Q_VOLUME, "litres", NULL, 1, 0, NULL},
	{TS_Q_VOLUME, "ml", NULL, 0.001, 0, NULL},
	{TS_Q_VOLUME, "ukgal", "UK gal", UK_GALLON_L, 0, NULL},
	{TS_Q_VOLUME, "usgal", "US gal", US_GALLON_L, 0, NULL},
	{TS_Q_MASS, "g", "g", 1, 0, NULL},
	{TS_Q_MASS, "kg", "kg", 1000, 0, NULL},
	{TS_Q_MASS, "mg", "mg", 0.001, 0, NULL},
	{TS_Q_TIME, "h", "h", 1, 0, NULL},
	{TS_Q_TIME, "day", NULL, 24, 0, NULL},
	{TS_Q_TIME, "days", "days", 24, 0, NULL},
	{TS_Q_TIME, "hour", NULL, 1, 0, NULL},
	{TS_Q_TIME, "hours", NULL, 1, 0, NULL},
	{TS_Q_TIME, "min", "min", 1.0 / 60, 0, NULL},
	{TS_Q_TIME, "week", NULL, 168, 0, NULL},
	{TS_Q_TIME, "weeks", "weeks", 168, 0, NULL},
	{TS_Q_HOURS, "h", "h", 1, 0, NULL},
	{TS_Q_HOURS, "day", NULL, 24, 0, NULL},
	{TS_Q_HOURS, "days", "days", 24, 0, NULL},
	{TS_Q_HOURS, "hour", NULL, 1, 0, NULL},
	{TS_Q_HOURS, "hours", NULL, 1, 0, NULL},
	{TS_Q_HOURS, "min", "min", 1.0 / 60, 0, NULL},
	{TS_Q_HOURS, "week", NULL, 168, 0, NULL},
	{TS_Q_HOURS, "weeks", "weeks", 168, 0, NULL},
	{TS_Q_PERCENT, "%", "%", 1, 0, NULL},
	{TS_Q_PERCENT, "percent", NULL, 1, 0, NULL},
	{TS_Q_FEED, "g/day", "g/day", 1, 0, NULL},
	{TS_Q_FEED, "g/d", NULL, 1, 0, NULL},
	{TS_Q_FEED, "g/week", "g/week", 1.0 / 7, 0, NULL},
	{TS_Q_FEED, "mg/day", "mg/day", 0.001, 0, NULL},
};
/* clang-format on */
const size_t ts_units_count = sizeof ts_units / sizeof *ts_units;
