/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Contradictions within one water, each just inside and just beyond what is still called rounding.
 * Limits: docs/methods.md, "One water described"; equivalents worked out by hand.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>

#include "../given.h"
#include "water/facts.h"

/* mg/L of one meq/L. */
#define CA 20.039
#define MG 12.1525
#define NA 22.98977
#define K 39.0983
#define CL 35.453
#define SO4 48.03
#define NO3 62.0049

static struct ts_water_facts described(struct ts_reading r)
{
	struct ts_water w = {.readings = &r, .reading_count = 1};
	struct ts_keeping k = {0};
	struct ts_water_facts f;
	struct ts_profile p;

	ts_profile_make(&w, &k, NULL, -1, &p);
	ts_water_describe_profile(&p, 25, &f);
	return f;
}

static bool is(struct ts_reading r, unsigned bit)
{
	return (described(r).unusual & bit) != 0;
}

/* One degree is 0.3566 meq/L of Ca and Mg. Apart from 2 dH and from a quarter of what they make. */
static void test_gh__against_calcium_and_magnesium(void **state)
{
	const double degree = 0.35664;
	struct ts_reading r = {.ca_mg_l = value(3 * degree * CA), .mg_mg_l = value(degree * MG)};

	(void)state;
	r.gh_dh = value(5.95); /* against 4 */
	assert_false(is(r, TS_UNUSUAL_GH_AGAINST_IONS));
	r.gh_dh = value(6.05);
	assert_true(is(r, TS_UNUSUAL_GH_AGAINST_IONS));
	r.gh_dh = value(1.95);
	assert_true(is(r, TS_UNUSUAL_GH_AGAINST_IONS));
	r.ca_mg_l = value(15 * degree * CA);
	r.mg_mg_l = value(5 * degree * MG);
	r.gh_dh = value(24.9); /* against 20 */
	assert_false(is(r, TS_UNUSUAL_GH_AGAINST_IONS));
	r.gh_dh = value(25.1);
	assert_true(is(r, TS_UNUSUAL_GH_AGAINST_IONS));
	r.mg_mg_l = (struct ts_measure){0}; /* not known: nothing to contradict */
	assert_false(is(r, TS_UNUSUAL_GH_AGAINST_IONS));
}

/* Whole analysis, 4 meq/L of cations; the anions' sum is 2 and sulphate. Off by a tenth of all. */
static void test_charge__off_by_a_tenth(void **state)
{
	static const struct {
		double so4_meq, k_meq, no3_meq;
		bool off;
	} rows[] = {{1.25, -1, -1, true}, {1.29, -1, -1, false}, {2.85, -1, -1, false},
		{2.92, -1, -1, true}, {1.29, 0.1, -1, true}, {1.25, -1, 0.1, false},
		{2.85, -1, 0.1, true}, {2.92, 0.1, -1, false}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_reading r = {.ca_mg_l = value(2 * CA),
			.mg_mg_l = value(MG),
			.na_mg_l = value(NA),
			.cl_mg_l = value(CL),
			.so4_mg_l = value(rows[i].so4_meq * SO4),
			.alkalinity_meq_l = value(1),
			.ph = value(7)};

		if (rows[i].k_meq >= 0)
			r.k_mg_l = value(rows[i].k_meq * K);
		if (rows[i].no3_meq >= 0)
			r.no3_mg_l = value(rows[i].no3_meq * NO3);
		assert_int_equal(is(r, TS_UNUSUAL_CHARGE), rows[i].off);
		r.na_mg_l = (struct ts_measure){0};
		assert_false(is(r, TS_UNUSUAL_CHARGE));
	}
}

/*
 * Less than 18 uS/cm a degree is too little for its hardness, less 20 for the meter; more may be
 * other salts, unless all ions were read: then 30 % and 50 uS/cm from what they make.
 */
static void test_conductivity__against_the_ions(void **state)
{
	struct ts_reading r = {.gh_dh = {14, 14, 14, TS_MEASURE_DOUBT},
		.kh_dh = {9, 9, 9, TS_MEASURE_DOUBT},
		.ph = value(7.6),
		.conductivity_us_cm = value(231)};
	double made;

	(void)state;
	assert_true(is(r, TS_UNUSUAL_CONDUCTIVITY));
	r.conductivity_us_cm = value(233);
	assert_false(is(r, TS_UNUSUAL_CONDUCTIVITY));
	r.conductivity_us_cm = value(900);
	assert_false(is(r, TS_UNUSUAL_CONDUCTIVITY));
	r.ca_mg_l = value(80);
	r.mg_mg_l = value(12);
	r.na_mg_l = value(10);
	r.cl_mg_l = value(30);
	r.so4_mg_l = value(55);
	made = described(r).conductivity_computed_us_cm;
	assert_true(made > 300 && made < 700);
	r.conductivity_us_cm = value(made * 1.29);
	assert_false(is(r, TS_UNUSUAL_CONDUCTIVITY));
	r.conductivity_us_cm = value(made * 1.31);
	assert_true(is(r, TS_UNUSUAL_CONDUCTIVITY));
	r.conductivity_us_cm = value(made * 0.69);
	assert_true(is(r, TS_UNUSUAL_CONDUCTIVITY));
}

static void test_degrees__more_than_fresh_water_has(void **state)
{
	struct ts_reading r = {.gh_dh = value(40), .kh_dh = value(40), .ph = value(8)};

	(void)state;
	assert_false(is(r, TS_UNUSUAL_DEGREES));
	r.gh_dh = value(40.1);
	assert_true(is(r, TS_UNUSUAL_DEGREES));
	r.gh_dh = value(40);
	r.kh_dh = value(40.1);
	assert_true(is(r, TS_UNUSUAL_DEGREES));
}

/* Under 1 dH of both (KH not read: of GH), or under 50 uS/cm where no hardness says otherwise. */
static void test_bare__hardly_any_minerals(void **state)
{
	struct ts_reading r = {.gh_dh = value(0.9), .kh_dh = value(0.9), .ph = value(6.5)};

	(void)state;
	assert_true(is(r, TS_UNUSUAL_BARE));
	r.gh_dh = value(1);
	assert_false(is(r, TS_UNUSUAL_BARE));
	r.gh_dh = value(0.9);
	r.kh_dh = value(1);
	assert_false(is(r, TS_UNUSUAL_BARE));
	r.conductivity_us_cm = value(49);
	assert_true(is(r, TS_UNUSUAL_BARE));
	r.kh_dh = value(3); /* then the conductivity is what is wrong */
	assert_false(is(r, TS_UNUSUAL_BARE));
	r.kh_dh = (struct ts_measure){0};
	r.conductivity_us_cm =
		value(500); /* salts other than hardness: still no minerals to live by */
	assert_true(is(r, TS_UNUSUAL_BARE));
}

/* Phosphate from a tenth of the buffer on: 94.97 mg/L a mmol/L. */
static void test_phosphate__a_tenth_of_the_buffer(void **state)
{
	struct ts_reading r = {.gh_dh = value(10), .alkalinity_meq_l = value(2), .ph = value(7)};

	(void)state;
	r.phosphate_mg_l = value(0.199 * 94.97);
	assert_int_equal(described(r).why[TS_FACT_CO2], TS_WHY_KNOWN);
	r.phosphate_mg_l = value(0.201 * 94.97);
	assert_int_equal(described(r).why[TS_FACT_CO2], TS_WHY_PHOSPHATE);
}

/* Every figure of a solution that nobody read, and none of what was assumed. */
static void test_solution__figures(void **state)
{
	struct ts_solution s = {.temp_c = 25,
		.ca_mmol_l = 1,
		.mg_mmol_l = 0.5,
		.na_mmol_l = 1,
		.k_mmol_l = 0.1,
		.cl_mmol_l = 1,
		.so4_mmol_l = 0.5,
		.no3_mmol_l = 0.1,
		.alk_meq_l = 2,
		.dic_mmol_l = 2.1};
	struct ts_water_facts f;

	(void)state;
	ts_water_describe(&s, 0, NULL, &f);
	assert_true(fabs(f.ca_mg_l - 40.078) < 1e-3 && fabs(f.mg_mg_l - 12.1525) < 1e-3);
	assert_true(fabs(f.na_mg_l - 22.98977) < 1e-3 && fabs(f.k_mg_l - 3.90983) < 1e-3);
	assert_true(fabs(f.cl_mg_l - 35.453) < 1e-2 && fabs(f.so4_mg_l - 48.03) < 1e-2);
	assert_true(fabs(f.no3_mg_l - 6.20049) < 1e-3);
	assert_true(fabs(f.gh_dh - 1.5 / 0.17832) < 1e-3 && f.gh_low_dh == f.gh_dh);
	assert_true(fabs(f.kh_dh - 2 / 0.35664) < 1e-3 && f.kh_high_dh == f.kh_dh);
	assert_true(f.alkalinity_meq_l > 1.999 && f.alkalinity_meq_l < 2.001);
	ts_water_describe(&s, TS_ASSUMED_IONS | TS_ASSUMED_GH, NULL, &f);
	assert_true(isnan(f.ca_mg_l) && isnan(f.mg_mg_l) && isnan(f.na_mg_l) && isnan(f.k_mg_l));
	assert_true(isnan(f.cl_mg_l) && isnan(f.so4_mg_l) && isnan(f.no3_mg_l) && isnan(f.gh_dh));
	assert_int_equal(f.why[TS_FACT_CALCITE_SI], TS_WHY_WANTS_CALCIUM);
	assert_int_equal(f.why[TS_FACT_CONDUCTIVITY], TS_WHY_WANTS_HARDNESS);
}

/* Readings are copied as they were, with their ends. */
static void test_readings__copied(void **state)
{
	struct ts_reading r = {.gh_dh = {8, 7, 9, TS_MEASURE_DOUBT},
		.kh_dh = {5, 4, 6, TS_MEASURE_DOUBT},
		.ph = {7.2, 7.1, 7.4, TS_MEASURE_DOUBT},
		.temp_c = value(12)};
	struct ts_water_facts f;

	(void)state;
	r.k_mg_l = value(2.5);
	r.no3_mg_l = value(11);
	f = described(r);
	assert_true(f.gh_dh == 8 && f.gh_low_dh == 7 && f.gh_high_dh == 9);
	assert_true(f.kh_dh == 5 && f.kh_low_dh == 4 && f.kh_high_dh == 6);
	assert_true(f.ph == 7.2 && f.ph_low == 7.1 && f.ph_high == 7.4);
	assert_true(f.k_mg_l == 2.5 && f.no3_mg_l == 11);
	assert_true(f.co2_low_mg_l < f.co2_mg_l && f.co2_mg_l < f.co2_high_mg_l);
	assert_true(fabs(f.alkalinity_meq_l - 5 * 0.35664) < 1e-3);
	r.ca_mg_l = value(9000); /* beyond what can be computed: what was read still stands */
	assert_true(described(r).kh_dh == 5 && described(r).gh_dh == 8);
	assert_int_equal(described(r).why[TS_FACT_CO2], TS_WHY_OUT_OF_RANGE);
	assert_string_equal(f.hardness_class, "soft"); /* 8 dH are 142.8 mg/L CaCO3 */
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_gh__against_calcium_and_magnesium),
		cmocka_unit_test(test_charge__off_by_a_tenth),
		cmocka_unit_test(test_conductivity__against_the_ions),
		cmocka_unit_test(test_degrees__more_than_fresh_water_has),
		cmocka_unit_test(test_bare__hardly_any_minerals),
		cmocka_unit_test(test_phosphate__a_tenth_of_the_buffer),
		cmocka_unit_test(test_solution__figures),
		cmocka_unit_test(test_readings__copied),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
