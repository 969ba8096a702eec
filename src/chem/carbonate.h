/* SPDX-License-Identifier: Apache-2.0 */
/*
 * pH, CO2, inorganic carbon and calcite: what the rooms above ask of a water, one call a
 * question. Each call computes its constants anew (about a microsecond in all); who asks
 * thousands of times uses speciation.h with a cache. Brings along the water itself (solution.h),
 * the degrees (hardness.h) and un-ionised ammonia (ammonia.h).
 *
 * Common to all: `s` inside the ranges of solution.h, dissolved CO2 in mmol/L up to 100, pH
 * 2..12, ionic strength up to 0.1 mol/L, else TS_BAD_INPUT. ret_ values are untouched on failure.
 * Equations: Plummer & Busenberg 1982, Debye-Hueckel, six ion pairs; docs/methods.md, "Water
 * chemistry". They hold for water whose alkalinity is carbonate: not for tannins, phosphate, active
 * soil.
 */
#ifndef TS_CHEM_CARBONATE_H
#define TS_CHEM_CARBONATE_H

#include "chem/ammonia.h"
#include "chem/hardness.h"
#include "chem/solution.h"
#include "chem/speciation.h"

/* CO2 of dry air, parts per million (NOAA's annual mean passed it in 2023; from memory). */
#define TS_CHEM_AIR_CO2_PPM 420.0
/* CO2 of a running tank, times air: most, usual, least (estimate from memory). */
#define TS_CHEM_TANK_CO2_MOST 12.0
#define TS_CHEM_TANK_CO2_USUAL 4.0
#define TS_CHEM_TANK_CO2_LEAST 1.5
/* Above this calcite saturation lime falls out before pH rises further (estimate). */
#define TS_CHEM_TANK_CALCITE_SI_HIGH 1.3
/* Below this carbonate hardness, dH, pH does not follow from KH. */
#define TS_CHEM_TANK_KH_LOW_DH 0.5

/* Dissolved CO2 from pH and alkalinity. TS_NO when they contradict one another. */
TS_MUST_USE enum ts_status ts_chem_co2_from_ph(
	const struct ts_solution *s, double ph, double *ret_co2_mmol_l);

/* pH of water open to a gas that holds dissolved CO2 at the level given (above 0). */
TS_MUST_USE enum ts_status ts_chem_ph_at_co2(
	const struct ts_solution *s, double co2_mmol_l, double *ret_ph);

/* pH and dissolved CO2 of closed water, from alkalinity and inorganic carbon. */
TS_MUST_USE enum ts_status ts_chem_ph_closed(
	const struct ts_solution *s, double *ret_ph, double *ret_co2_mmol_l);

/* Inorganic carbon from pH and alkalinity. TS_NO when they contradict one another. */
TS_MUST_USE enum ts_status ts_chem_dic_from_ph(
	const struct ts_solution *s, double ph, double *ret_dic_mmol_l);

/*
 * Dissolved CO2 of fresh water in balance with dry air of 420 ppm at one atmosphere, mmol/L;
 * without the correction for water vapour (3 % at 25 C). Outside 0..50 C the nearest end.
 */
double ts_chem_air_co2_mmol_l(double temp_c);
/* The same at any CO2 pressure, atm. */
double ts_chem_gas_co2_mmol_l(double temp_c, double pressure_atm);

/*
 * Saturation index at a pH: 0 in balance, above 0 the mineral may fall out, below it dissolves;
 * -99 without calcium or alkalinity. TS_NO when pH and alkalinity contradict one another.
 */
TS_MUST_USE enum ts_status ts_chem_calcite_si(
	const struct ts_solution *s, double ph, double *ret_si);
TS_MUST_USE enum ts_status ts_chem_aragonite_si(
	const struct ts_solution *s, double ph, double *ret_si);

/*
 * The pH a tank of this water will run at, as an interval: at 12, 4 and 1.5 times the CO2 of air,
 * none above the pH at which calcite reaches its index of 1.3. TS_NO below KH 0.5 dH, where pH
 * cannot be computed from the buffer. s->dic_mmol_l is ignored.
 */
TS_MUST_USE enum ts_status ts_chem_tank_ph(
	const struct ts_solution *s, double *ret_low, double *ret_mid, double *ret_high);

#endif
