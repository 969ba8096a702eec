/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Mixing, charge, and the water guessed from two hardness numbers.
 */
#include "waters.h"

#include <stddef.h>

static void same(const struct ts_solution *a, const struct ts_solution *b, unsigned number)
{
	near(a->temp_c, b->temp_c, 1e-12 * 35, number);
	near(a->ca_mmol_l, b->ca_mmol_l, 1e-13 * 10, number);
	near(a->mg_mmol_l, b->mg_mmol_l, 1e-13 * 10, number);
	near(a->na_mmol_l, b->na_mmol_l, 1e-13 * 10, number);
	near(a->k_mmol_l, b->k_mmol_l, 1e-13 * 10, number);
	near(a->cl_mmol_l, b->cl_mmol_l, 1e-13 * 10, number);
	near(a->so4_mmol_l, b->so4_mmol_l, 1e-13 * 10, number);
	near(a->no3_mmol_l, b->no3_mmol_l, 1e-13 * 10, number);
	near(a->alk_meq_l, b->alk_meq_l, 1e-13 * 10, number);
	near(a->dic_mmol_l, b->dic_mmol_l, 1e-13 * 10, number);
}

static void test_solution__mixed_with_itself_is_itself(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i), mixed;
		const struct ts_solution *waters[] = {&s, &s, &s};
		const double parts[] = {0.3, 17, 2};

		ts_chem_mix(waters, parts, 3, &mixed);
		same(&mixed, &s, i);
	}
}

static void test_solution__order_of_mixing_does_not_matter(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution a = random_water(i), b = random_water(i + 1),
				   c = random_water(i + 2), first, second, step;
		const struct ts_solution *abc[] = {&a, &b, &c}, *cab[] = {&c, &a, &b};
		const struct ts_solution *ab[] = {&a, &b}, *then_c[] = {&step, &c};
		const double parts_abc[] = {1, 2, 5}, parts_cab[] = {5, 1, 2};
		const double parts_ab[] = {1, 2}, parts_then_c[] = {3, 5};

		ts_chem_mix(abc, parts_abc, 3, &first);
		ts_chem_mix(cab, parts_cab, 3, &second);
		same(&first, &second, i);
		ts_chem_mix(ab, parts_ab, 2, &step);
		ts_chem_mix(then_c, parts_then_c, 2, &step);
		same(&first, &step, i);
	}
}

static void test_solution__mix_of_nothing_leaves_the_result(void **state)
{
	struct ts_solution s = random_water(1), before = s;
	const struct ts_solution *waters[] = {&s};
	const double none[] = {0};

	(void)state;
	ts_chem_mix(waters, none, 1, &s);
	ts_chem_mix(NULL, NULL, 0, &s);
	assert_memory_equal(&s, &before, sizeof(s));
}

static void test_solution__charge_of_soda(void **state)
{
	struct ts_solution soda = {.temp_c = 20, .na_mmol_l = 3, .alk_meq_l = 3};
	struct ts_solution acid = {.temp_c = 20, .cl_mmol_l = 1, .alk_meq_l = -1};
	struct ts_solution lopsided = {.temp_c = 20, .ca_mmol_l = 1, .cl_mmol_l = 1};
	struct ts_solution nothing = {.temp_c = 20};

	(void)state;
	near(ts_chem_charge_error_percent(&soda), 0, 1e-12, 0);
	near(ts_chem_charge_error_percent(&acid), 0, 1e-12, 0);
	near(ts_chem_charge_error_percent(&lopsided), 100.0 / 3, 1e-12, 0);
	near(ts_chem_charge_error_percent(&nothing), 0, 0, 0);
}

static void test_solution__guess_keeps_gh_kh_and_charge(void **state)
{
	(void)state;
	for (unsigned gh = 0; gh <= 30; gh += 3)
		for (unsigned kh = 0; kh <= 30; kh += 3) {
			struct ts_solution s;

			assert_int_equal(ts_solution_from_hardness(gh, kh, 25, &s), TS_OK);
			near(ts_chem_dh_from_mmol_l(s.ca_mmol_l + s.mg_mmol_l), gh, 1e-12 * 30, gh);
			near(ts_chem_dkh_from_meq_l(s.alk_meq_l), kh, 1e-12 * 30, kh);
			near(ts_chem_cations_meq_l(&s), ts_chem_anions_meq_l(&s), 1e-12 * 30, kh);
			near(s.ca_mmol_l, 3 * s.mg_mmol_l, 1e-12, gh);
			assert_int_equal(ts_solution_check(&s), TS_OK);
		}
}

static void test_solution__guess_refuses_nonsense(void **state)
{
	struct ts_solution s = random_water(3), before = s;

	(void)state;
	assert_int_equal(ts_solution_from_hardness(-1, 5, 25, &s), TS_BAD_INPUT);
	assert_int_equal(ts_solution_from_hardness(5, NAN, 25, &s), TS_BAD_INPUT);
	assert_int_equal(ts_solution_from_hardness(5, 5, 99, &s), TS_BAD_INPUT);
	assert_memory_equal(&s, &before, sizeof(s));
}

/* Every member is accepted at both ends of its range and refused just beyond. */
static void test_solution__ends_of_every_range(void **state)
{
	static const struct {
		size_t member;
		double low, high;
	} rows[] = {{offsetof(struct ts_solution, temp_c), 0, 50},
		{offsetof(struct ts_solution, alk_meq_l), -20, 60},
		{offsetof(struct ts_solution, dic_mmol_l), 0, 150},
		{offsetof(struct ts_solution, ca_mmol_l), 0, 100},
		{offsetof(struct ts_solution, mg_mmol_l), 0, 100},
		{offsetof(struct ts_solution, na_mmol_l), 0, 100},
		{offsetof(struct ts_solution, k_mmol_l), 0, 100},
		{offsetof(struct ts_solution, cl_mmol_l), 0, 100},
		{offsetof(struct ts_solution, so4_mmol_l), 0, 100},
		{offsetof(struct ts_solution, no3_mmol_l), 0, 100}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_solution s = {.temp_c = 25};
		double *member = (double *)(void *)((char *)&s + rows[i].member);

		*member = rows[i].low;
		assert_int_equal(ts_solution_check(&s), TS_OK);
		*member = rows[i].high;
		assert_int_equal(ts_solution_check(&s), TS_OK);
		*member = rows[i].low - 1e-9;
		assert_int_equal(ts_solution_check(&s), TS_BAD_INPUT);
		*member = rows[i].high + 1e-9;
		assert_int_equal(ts_solution_check(&s), TS_BAD_INPUT);
	}
}

/* GH 10 and KH 6: 3.5664 - 2.1398 meq/L are missing, half sulphate and half chloride by charge. */
static void test_solution__guess_of_the_missing_anions(void **state)
{
	struct ts_solution s;

	(void)state;
	assert_int_equal(ts_solution_from_hardness(10, 6, 25, &s), TS_OK);
	near(s.cl_mmol_l, 0.7133, 2e-4, 0);
	near(s.so4_mmol_l, 0.35664, 1e-4, 0);
	near(s.na_mmol_l, 0, 0, 0);
	assert_int_equal(ts_solution_from_hardness(6, 10, 25, &s), TS_OK);
	near(s.na_mmol_l, 1.4266, 4e-4, 0);
	near(s.cl_mmol_l + s.so4_mmol_l, 0, 0, 0);
	assert_int_equal(ts_solution_from_hardness(100, 0, 50, &s), TS_OK);
	assert_int_equal(ts_solution_from_hardness(100.1, 0, 25, &s), TS_BAD_INPUT);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_solution__mixed_with_itself_is_itself),
		cmocka_unit_test(test_solution__order_of_mixing_does_not_matter),
		cmocka_unit_test(test_solution__mix_of_nothing_leaves_the_result),
		cmocka_unit_test(test_solution__charge_of_soda),
		cmocka_unit_test(test_solution__guess_keeps_gh_kh_and_charge),
		cmocka_unit_test(test_solution__guess_refuses_nonsense),
		cmocka_unit_test(test_solution__ends_of_every_range),
		cmocka_unit_test(test_solution__guess_of_the_missing_anions),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
