/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Mixtures beside an outside computation (tests/data/reference/blend_water01_phreeqc.csv: USGS
 * PHREEQC 3, database phreeqc.dat, water-01 with pure water at 20 C, closed), and what is
 * conserved.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include "../given.h"
#include "../random.h"
#include "answers/mix.h"
#include "chem/carbonate.h"
#include "chem/hardness.h"

/* As drops and a balance would give it: alkalinity 5.7225 meq/L, Ca 2.3564 and Mg 0.7531 mmol/L. */
static struct ts_reading hard_water(void)
{
	return (struct ts_reading){.ca_mg_l = value(2.3564 * 40.078),
		.mg_mg_l = value(0.7531 * 24.305),
		.kh_dh = value(5.7225 * 2.8039),
		.ph = value(7.34),
		.temp_c = value(20)};
}

static struct ts_mix_result mixed(
	struct ts_arena *arena, const struct ts_mix_part *parts, size_t count, double temp_c)
{
	const struct ts_asking asking = {.arena = arena, .practice = table(), .today = -1};
	const struct ts_mix_question q = {parts, count, false, temp_c};
	struct ts_mix_result r;

	assert_int_equal(ts_mix_answer(&asking, &q, &r), TS_OK);
	assert_true(r.computed);
	return r;
}

static void test_mix__with_pure_water_as_the_table_has_it(void **state)
{
	static const double rows[][2] = {
		{0.75, 7.3479}, {0.5, 7.3575}, {0.25, 7.3699}, {0.1, 7.3804}};
	struct ts_reading hard = hard_water();
	struct ts_water water = {.readings = &hard, .reading_count = 1};
	struct ts_arena arena;

	(void)state;
	ts_arena_open(&arena, NULL);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		const struct ts_mix_part parts[] = {
			{"hard", rows[i][0], &water}, {"pure", 1 - rows[i][0], NULL}};
		struct ts_mix_result r = mixed(&arena, parts, 2, 20);

		assert_true(fabs(r.water.facts.ph_closed - rows[i][1]) < 0.02);
		/* The doubt of the reading that it rests on is shown. */
		assert_true(
			r.water.facts.ph_low < rows[i][1] && r.water.facts.ph_high > rows[i][1]);
	}
	ts_arena_drop(&arena);
}

/* Inorganic carbon of a water of this alkalinity and pH, mmol/L, in very thin water at 20 C:
 * pK1 6.381, pK2 10.377 (Plummer and Busenberg 1982). */
static double carbon(double alk_meq_l, double ph)
{
	double h = pow(10, -ph), k1 = pow(10, -6.381), k2 = pow(10, -10.377);
	double bicarbonate = (alk_meq_l / 1000 + h - 6.8e-15 / h) / (1 + 2 * k2 / h);

	return 1000 * bicarbonate * (1 + h / k1 + k2 / h);
}

/* Two thin waters, one of them with hardly any buffer and much gas: its gas stays in. */
static void test_mix__a_part_of_hardly_any_buffer_keeps_its_gas(void **state)
{
	struct ts_reading thin = {.gh_dh = value(1), .kh_dh = value(1), .ph = value(7)};
	struct ts_reading rain = {.gh_dh = value(0), .kh_dh = value(0.3), .ph = value(5.5)};
	struct ts_water waters[] = {{.readings = &thin, .reading_count = 1},
		{.kind = TS_WATER_RAIN, .readings = &rain, .reading_count = 1}};
	const struct ts_mix_part parts[] = {{"thin", 0.5, &waters[0]}, {"rain", 0.5, &waters[1]}};
	double meq = 1 / 2.8039, dic = (carbon(meq, 7) + carbon(0.3 * meq, 5.5)) / 2, low = 4,
	       high = 9;
	struct ts_arena arena;
	struct ts_mix_result r;

	(void)state;
	ts_arena_open(&arena, NULL);
	r = mixed(&arena, parts, 2, 20);
	/* The pH at which the mixture's alkalinity holds its carbon. */
	for (int i = 0; i < 60; i++) {
		double middle = (low + high) / 2;

		*(carbon(0.65 * meq, middle) > dic ? &low : &high) = middle;
	}
	assert_true(fabs(r.water.facts.ph_closed - low) < 0.03);
	ts_arena_drop(&arena);
}

static void test_mix__pure_water_brings_no_gas(void **state)
{
	struct ts_reading hard = hard_water();
	struct ts_water water = {.readings = &hard, .reading_count = 1};
	const struct ts_mix_part alone[] = {{"hard", 1, &water}};
	const struct ts_mix_part half[] = {{"hard", 0.5, &water}, {"pure", 0.5, NULL}};
	const struct ts_mix_part none[] = {{"pure", 1, NULL}};
	struct ts_arena arena;
	double whole, part;

	(void)state;
	ts_arena_open(&arena, NULL);
	whole = mixed(&arena, alone, 1, 20).water.facts.co2_mg_l;
	part = mixed(&arena, half, 2, 20).water.facts.co2_mg_l;
	assert_true(fabs(part / whole - 0.5) < 0.02);
	assert_non_null(strstr(mixed(&arena, none, 1, 20).water.headline, "minerals"));
	ts_arena_drop(&arena);
}

/* Drops of a water, and the same water as it may really be: within the doubt of the drops. */
static void any_water(struct random *r, struct ts_reading *drops, struct ts_reading *real)
{
	double gh = any_in(r, 1, 18, 1), kh = any_in(r, 1, fmin(gh, 12), 1);
	double ph = any_in(r, 7, 7.8, 0.1);

	*drops = (struct ts_reading){
		.method = TS_METHOD_DROPS, .gh_dh = value(gh), .kh_dh = value(kh), .ph = value(ph)};
	*real = (struct ts_reading){.method = TS_METHOD_LABORATORY,
		.gh_dh = value(any_in(r, gh - 0.95, gh, 0.05)),
		.kh_dh = value(any_in(r, kh - 0.95, kh, 0.05)),
		.ph = value(any_in(r, ph - 0.3, ph + 0.3, 0.01))};
}

/* The range of a mixture's pH holds what the parts make where their drops erred. */
static void test_mix__its_range_holds_what_the_parts_may_really_be(void **state)
{
	static const double shares[] = {0.1, 0.25, 0.5, 0.75, 0.9};
	struct random r;
	unsigned cases = random_open(&r, 31, 1000);

	(void)state;
	for (unsigned i = 0; i < cases; i++) {
		struct ts_reading drops[2], real[2];
		struct ts_arena arena;
		double share, ph[2][3];

		random_case(&r, i);
		ts_arena_open(&arena, NULL);
		for (size_t k = 0; k < 2; k++)
			any_water(&r, &drops[k], &real[k]);
		share = shares[any_below(&r, 5)];
		for (size_t k = 0; k < 2; k++) {
			struct ts_reading *of = k ? real : drops;
			struct ts_water one = {.readings = &of[0], .reading_count = 1};
			struct ts_water other = {.readings = &of[1], .reading_count = 1};
			const struct ts_mix_part parts[] = {
				{"one", share, &one}, {"other", 1 - share, &other}};
			const struct ts_water_facts f = mixed(&arena, parts, 2, 25).water.facts;

			ph[k][0] = f.ph_low;
			ph[k][1] = f.ph_closed;
			ph[k][2] = f.ph_high;
		}
		CLAIM(&r, ph[0][0] <= ph[0][1] && ph[0][1] <= ph[0][2]);
		if (isnan(ph[1][1])) /* so little buffer that no pH follows from it */
			ph[1][1] = ph[0][1];
		CLAIM(&r, ph[0][0] <= ph[1][1] + 0.02 && ph[1][1] - 0.02 <= ph[0][2]);
		ts_arena_drop(&arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_mix__with_pure_water_as_the_table_has_it),
		cmocka_unit_test(test_mix__a_part_of_hardly_any_buffer_keeps_its_gas),
		cmocka_unit_test(test_mix__pure_water_brings_no_gas),
		cmocka_unit_test(test_mix__its_range_holds_what_the_parts_may_really_be),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
