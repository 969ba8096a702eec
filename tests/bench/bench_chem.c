/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a pH costs: a closed solve with all ion pairs, cold and warm, in units of one exp10() of
 * the same machine. An exp10() is timed in two ways, as a chain (each waits for the one before, as
 * the solves do) and independent of one another, which the processor overlaps. Solves and powers
 * take turns in short pieces and the best piece of each counts, so that a neighbour's work on the
 * machine meets both. Exit 1 when a cold solve exceeds 25 of either.
 */
#define _GNU_SOURCE /* exp10() */
#include <math.h>
#include <stdio.h>
#include <time.h>

#include "chem/carbonate.h"

#define ROUNDS 400
#define PIECE 1000
#define LIMIT 25.0

/* Kept, so that no loop is optimised away. */
static volatile double sink;

static double now_ns(void)
{
	struct timespec t;

	timespec_get(&t, TIME_UTC);
	return 1e9 * (double)t.tv_sec + (double)t.tv_nsec;
}

static double chain_ns(void)
{
	double x = 0, start = now_ns();

	for (int i = 0; i < PIECE; i++)
		x = exp10(-6 - x);
	sink = x;
	return (now_ns() - start) / PIECE;
}

static double independent_ns(void)
{
	double sum = 0, start = now_ns();

	for (int i = 0; i < PIECE; i++)
		sum += exp10(-6 - 1e-6 * i);
	sink = sum;
	return (now_ns() - start) / PIECE;
}

/* The hard public supply of tests/data/reference/waters.csv, water-01. */
static struct ts_solution hard_water(void)
{
	return (struct ts_solution){.temp_c = 17.6,
		.ca_mmol_l = 2.355,
		.mg_mmol_l = 0.753,
		.na_mmol_l = 0.605,
		.k_mmol_l = 0.059,
		.cl_mmol_l = 0.688,
		.so4_mmol_l = 0.188,
		.no3_mmol_l = 0.264,
		.alk_meq_l = 5.72,
		.dic_mmol_l = 6.26};
}

static double solve_ns(bool warm)
{
	struct ts_chem_constants constants = {0};
	struct ts_ion_species species = {0};
	struct ts_solution s = hard_water();
	double start, ph = 0;

	ts_chem_constants_at(&constants, s.temp_c);
	start = now_ns();
	for (int i = 0; i < PIECE; i++) {
		if (!warm)
			species = (struct ts_ion_species){0};
		s.alk_meq_l = 5.72 + 1e-5 * (i % 100) + 1e-12 * ph;
		if (ts_chem_speciate_closed(&constants, &s, &species) != TS_OK)
			return NAN;
		ph = species.ph;
	}
	sink = ph;
	return (now_ns() - start) / PIECE;
}

int main(void)
{
	double chain = INFINITY, independent = INFINITY, cold = INFINITY, warm = INFINITY;

	for (int i = 0; i < ROUNDS; i++) {
		chain = fmin(chain, chain_ns());
		cold = fmin(cold, solve_ns(false));
		independent = fmin(independent, independent_ns());
		warm = fmin(warm, solve_ns(true));
	}
	printf("one exp10: %.1f ns in a chain, %.1f ns independent\n", chain, independent);
	printf("closed pH, cold: %.0f ns, %.1f and %.1f exp10 (at most %.0f)\n", cold, cold / chain,
		cold / independent, LIMIT);
	printf("closed pH, warm: %.0f ns, %.1f and %.1f exp10\n", warm, warm / chain,
		warm / independent);
	return cold / fmin(chain, independent) <= LIMIT ? 0 : 1;
}
