/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The solver: it settles in few rounds, a warm start changes nothing, matter is conserved, and
 * the ends of the ranges do not break it.
 */
#include "waters.h"

static void test_speciation__settles_in_few_rounds(void **state)
{
	unsigned most = 0;

	(void)state;
	for (unsigned i = 0; i < 100 * WATERS; i++) {
		struct ts_solution s = random_water(i);
		struct ts_chem_constants k = {0};
		struct ts_ion_species now = {0};

		ts_chem_constants_at(&k, s.temp_c);
		assert_int_equal(ts_chem_speciate_closed(&k, &s, &now), TS_OK);
		most = now.rounds > most ? now.rounds : most;
	}
	printf("# rounds: %u at most\n", most);
	assert_true(most <= 8);
}

/* Somewhere in the whole range that is accepted, far beyond fish water; thousandfold diluted too.
 */
static struct ts_solution wild_water(uint64_t *seed)
{
	double strength = pow(10, -3 * chance(seed));
	struct ts_solution s = {.temp_c = 50 * chance(seed)};

	s.ca_mmol_l = 30 * strength * chance(seed);
	s.mg_mmol_l = 30 * strength * chance(seed);
	s.so4_mmol_l = 30 * strength * chance(seed);
	s.na_mmol_l = 60 * strength * chance(seed);
	s.alk_meq_l = strength * (80 * chance(seed) - 20);
	s.dic_mmol_l = 80 * strength * chance(seed);
	return s;
}

static enum ts_status solve_one_way(
	const struct ts_solution *s, unsigned way, uint64_t *seed, struct ts_ion_species *ret)
{
	struct ts_chem_constants k = {0};

	ts_chem_constants_at(&k, s->temp_c);
	if (way == 0)
		return ts_chem_speciate_closed(&k, s, ret);
	if (way == 1)
		return ts_chem_speciate_at_co2(&k, s, pow(10, 6 * chance(seed) - 4), ret);
	return ts_chem_speciate_at_ph(&k, s, 2 + 10 * chance(seed), ret);
}

/* The outer loop is bounded at 60 rounds; it must never come near. */
static void test_speciation__settles_in_the_whole_range(void **state)
{
	uint64_t seed = 20131984;
	unsigned most = 0, solved = 0;

	(void)state;
	for (unsigned i = 0; i < 100 * WATERS; i++) {
		struct ts_solution s = wild_water(&seed);
		struct ts_ion_species now = {0};

		if (solve_one_way(&s, i % 3, &seed, &now) != TS_OK)
			continue;
		solved++;
		assert_true(isfinite(now.ph) && isfinite(now.co2) && isfinite(now.co3));
		most = now.rounds > most ? now.rounds : most;
	}
	printf("# whole range: %u of %u solved, %u rounds at most\n", solved, 100 * WATERS, most);
	assert_true(solved > 50 * WATERS);
	assert_true(most <= 30);
}

/* Solved again from its own answer the pH moves by the solver's error only. */
static void test_speciation__warm_equals_cold(void **state)
{
	struct ts_ion_species warm = {0};
	double worst = 0;

	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		struct ts_chem_constants k = {0};
		struct ts_ion_species cold = {0};

		ts_chem_constants_at(&k, s.temp_c);
		assert_int_equal(ts_chem_speciate_closed(&k, &s, &cold), TS_OK);
		for (int again = 0; again < 4; again++)
			assert_int_equal(ts_chem_speciate_closed(&k, &s, &warm), TS_OK);
		worst = fmax(worst, fabs(warm.ph - cold.ph));
	}
	printf("# warm against cold: pH %.2g at most\n", worst);
	assert_true(worst < 1e-5);
}

static void test_speciation__matter_is_conserved(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		struct ts_chem_constants k = {0};
		struct ts_ion_species n = {0};

		ts_chem_constants_at(&k, s.temp_c);
		assert_int_equal(ts_chem_speciate_closed(&k, &s, &n), TS_OK);
		near(1000 * (n.ca + n.ca_hco3 + n.ca_co3 + n.ca_so4), s.ca_mmol_l,
			1e-4 * s.ca_mmol_l, i);
		near(1000 * (n.mg + n.mg_hco3 + n.mg_co3 + n.mg_so4), s.mg_mmol_l,
			1e-4 * s.mg_mmol_l, i);
		near(1000 * (n.so4 + n.ca_so4 + n.mg_so4), s.so4_mmol_l, 1e-9 + 1e-4 * s.so4_mmol_l,
			i);
		near(ts_chem_species_dic_mmol_l(&n), s.dic_mmol_l, 1e-4 * s.dic_mmol_l, i);
	}
}

/* Every answer is a number, every refusal leaves the caller's struct as it was. */
static void extreme(const struct ts_solution *s)
{
	struct ts_chem_constants k = {0};
	struct ts_ion_species mark = {.ph = -5}, now = mark;

	ts_chem_constants_at(&k, s->temp_c);
	if (ts_chem_speciate_closed(&k, s, &now) == TS_OK)
		assert_true(isfinite(now.ph) && isfinite(now.co2) && isfinite(now.ca) &&
			    now.ph >= TS_CHEM_PH_LOW && now.ph <= TS_CHEM_PH_HIGH);
	else
		assert_memory_equal(&now, &mark, sizeof(now));
	now = mark;
	if (ts_chem_speciate_at_co2(&k, s, 0.02, &now) == TS_OK)
		assert_true(isfinite(now.ph) && isfinite(now.hco3) && isfinite(now.ionic_strength));
	else
		assert_memory_equal(&now, &mark, sizeof(now));
}

static void test_speciation__ends_of_the_ranges(void **state)
{
	static const double alk[] = {-20, -1, -1e-9, 0, 1e-9, 1e-3, 1, 60};
	static const double dic[] = {0, 1e-12, 1e-3, 1, 60, 150};
	static const double ions[] = {0, 1e-9, 1, 30, 100};
	static const double temps[] = {0, 25, 50};

	(void)state;
	for (size_t a = 0; a < 8; a++)
		for (size_t d = 0; d < 6; d++)
			for (size_t n = 0; n < 5; n++)
				for (size_t t = 0; t < 3; t++) {
					struct ts_solution s = {.temp_c = temps[t],
						.ca_mmol_l = ions[n],
						.so4_mmol_l = ions[n],
						.alk_meq_l = alk[a],
						.dic_mmol_l = dic[d]};

					extreme(&s);
				}
}

static void test_speciation__constants_are_cached(void **state)
{
	struct ts_chem_constants k = {0};

	(void)state;
	ts_chem_constants_at(&k, 25);
	k.k1 = 1;
	ts_chem_constants_at(&k, 25);
	assert_true(k.k1 == 1);
	ts_chem_constants_at(&k, 26);
	assert_true(k.k1 < 1e-6);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_speciation__settles_in_few_rounds),
		cmocka_unit_test(test_speciation__settles_in_the_whole_range),
		cmocka_unit_test(test_speciation__warm_equals_cold),
		cmocka_unit_test(test_speciation__matter_is_conserved),
		cmocka_unit_test(test_speciation__ends_of_the_ranges),
		cmocka_unit_test(test_speciation__constants_are_cached),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
