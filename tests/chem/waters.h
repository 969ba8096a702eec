/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A thousand waters that nobody chose: the property tests run over them. The generator is fixed,
 * so that a failure names a water by its number and comes back the same.
 */
#ifndef TS_TESTS_CHEM_WATERS_H
#define TS_TESTS_CHEM_WATERS_H

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "chem/carbonate.h"

#define WATERS 1000

/* Between 0 and 1, from a xorshift generator (Marsaglia 2003, J. Stat. Softw. 8:14). */
static inline double chance(uint64_t *seed)
{
	*seed ^= *seed << 13;
	*seed ^= *seed >> 7;
	*seed ^= *seed << 17;
	return (double)(*seed >> 11) / 9007199254740992.0;
}

/* Water `number`: 0-35 C, from nearly pure to harder than a rift lake, CO2 from air to a well. */
static inline struct ts_solution random_water(unsigned number)
{
	uint64_t seed = 0x9E3779B97F4A7C15u * (number + 1u);
	struct ts_solution s = {0};
	double strength;

	for (int i = 0; i < 8; i++)
		chance(&seed);
	strength = chance(&seed);
	s.temp_c = 35 * chance(&seed);
	s.ca_mmol_l = 6 * strength * chance(&seed);
	s.mg_mmol_l = 3 * strength * chance(&seed);
	s.na_mmol_l = 12 * strength * chance(&seed);
	s.k_mmol_l = strength * chance(&seed);
	s.cl_mmol_l = 8 * strength * chance(&seed);
	s.so4_mmol_l = 5 * strength * chance(&seed);
	s.no3_mmol_l = 2 * strength * chance(&seed);
	s.alk_meq_l = 0.02 + 12 * strength * chance(&seed);
	s.dic_mmol_l = s.alk_meq_l * (0.95 + 0.1 * chance(&seed)) + 3 * pow(chance(&seed), 3);
	return s;
}

/* Asserts closeness and says which water failed. */
static inline void near(double got, double want, double allowed, unsigned number)
{
	if (!(fabs(got - want) <= allowed))
		fail_msg("water %u: %.12g is not %.12g (allowed %g)", number, got, want, allowed);
}

/* Asserts got <= limit + allowed. */
static inline void at_most(double got, double limit, double allowed, unsigned number)
{
	if (!(got <= limit + allowed))
		fail_msg("water %u: %.12g exceeds %.12g", number, got, limit);
}

#endif
