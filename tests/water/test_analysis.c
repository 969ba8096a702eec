/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Readings completed to an analysis, and the description of a water: what was read stays as read,
 * what was filled in is marked, and nothing that cannot be known is given.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include "chem/hardness.h"
#include "water/facts.h"

static struct ts_measure value(double v)
{
	return isnan(v) ? (struct ts_measure){0} : (struct ts_measure){v, v, v, TS_MEASURE_VALUE};
}

static struct ts_profile profile_of(struct ts_reading r)
{
	struct ts_water w = {.readings = &r, .reading_count = 1};
	struct ts_keeping k = {0};
	struct ts_profile p;

	ts_profile_make(&w, &k, NULL, -1, &p);
	return p;
}

static struct ts_reading hardness(double gh, double kh, double ph)
{
	return (struct ts_reading){.gh_dh = value(gh), .kh_dh = value(kh), .ph = value(ph)};
}

static struct ts_solution solved(struct ts_reading r, unsigned *ret_assumed)
{
	struct ts_profile p = profile_of(r);
	struct ts_solution s = {0};

	assert_int_equal(ts_solution_from_profile(&p, (double)NAN, &s, ret_assumed), TS_OK);
	assert_true(fabs(ts_chem_charge_error_percent(&s)) < 1e-6);
	return s;
}

static struct ts_water_facts described(struct ts_reading r)
{
	struct ts_profile p = profile_of(r);
	struct ts_water_facts f;

	ts_water_describe_profile(&p, (double)NAN, &f);
	return f;
}

static void test_hardness_alone__ions_filled_in_and_marked(void **state)
{
	unsigned assumed;
	struct ts_solution s = solved(hardness(14, 9, 7.6), &assumed);

	(void)state;
	assert_true(fabs(ts_chem_dh_from_mmol_l(s.ca_mmol_l + s.mg_mmol_l) - 14) < 1e-9);
	assert_true(fabs(ts_chem_dkh_from_meq_l(s.alk_meq_l) - 9) < 1e-9);
	assert_true(fabs(s.ca_mmol_l / s.mg_mmol_l - 3) < 1e-9);
	assert_int_equal(assumed, TS_ASSUMED_IONS | TS_ASSUMED_TEMPERATURE);
}

static void test_ions_as_read__kept_to_the_last_digit(void **state)
{
	struct ts_reading r = hardness((double)NAN, 16, 7.3);
	unsigned assumed;
	struct ts_solution s;

	(void)state;
	r.ca_mg_l = value(94.4);
	r.mg_mg_l = value(18.3);
	r.cl_mg_l = value(24.4);
	r.so4_mg_l = value(18);
	r.temp_c = value(12);
	s = solved(r, &assumed);
	assert_true(fabs(s.ca_mmol_l - 94.4 / TS_WEIGHT_CA) < 1e-12);
	assert_true(fabs(s.mg_mmol_l - 18.3 / TS_WEIGHT_MG) < 1e-12);
	assert_true(fabs(s.temp_c - 12) < 1e-12);
	assert_int_equal(
		assumed & TS_ASSUMED_IONS, 1 << TS_ION_NA | 1 << TS_ION_K | 1 << TS_ION_NO3);
	assert_false(assumed & (TS_ASSUMED_GH | TS_ASSUMED_TEMPERATURE | TS_ASSUMED_CARBON));
}

/* The water's own reading before that of the tank, and this before what is assumed. */
static void test_temperature__the_tanks_where_the_sample_has_none(void **state)
{
	struct ts_reading r = hardness(10, 5, 7.3);
	struct ts_profile p = profile_of(r);
	unsigned assumed;
	struct ts_solution s;

	(void)state;
	p.contents.temp_c = (double)NAN;
	p.at[TS_TEMPERATURE] = (struct ts_span){.given = true, .value = 21, .low = 20, .high = 22};
	assert_int_equal(ts_solution_from_profile(&p, (double)NAN, &s, &assumed), TS_OK);
	assert_true(s.temp_c == 21);
	assert_false(assumed & TS_ASSUMED_TEMPERATURE);
	p.contents.temp_c = 12;
	assert_int_equal(ts_solution_from_profile(&p, (double)NAN, &s, &assumed), TS_OK);
	assert_true(s.temp_c == 12);
	p.contents.temp_c = (double)NAN;
	p.at[TS_TEMPERATURE].given = false;
	assert_int_equal(ts_solution_from_profile(&p, (double)NAN, &s, &assumed), TS_OK);
	assert_true(s.temp_c == TS_TANK_TEMPERATURE_C);
	assert_true(assumed & TS_ASSUMED_TEMPERATURE);
}

static void test_calcium_alone_beside_gh__the_rest_is_magnesium(void **state)
{
	struct ts_reading r = hardness(10, 5, (double)NAN);
	unsigned assumed;
	struct ts_solution s;

	(void)state;
	r.ca_mg_l = value(40.078);
	s = solved(r, &assumed);
	assert_true(fabs(s.ca_mmol_l - 1) < 1e-9);
	assert_true(fabs(s.mg_mmol_l - (ts_chem_mmol_l_from_dh(10) - 1)) < 1e-9);
	assert_true(assumed & 1 << TS_ION_MG);
	assert_true(assumed & TS_ASSUMED_CARBON);
}

static void test_kh_missing__from_whole_analysis_only(void **state)
{
	struct ts_reading r = hardness(14, (double)NAN, 7.6);
	struct ts_profile p = profile_of(r);
	struct ts_solution s = {.temp_c = -1};
	unsigned assumed = 77;

	(void)state;
	assert_int_equal(ts_solution_from_profile(&p, 25, &s, &assumed), TS_NO);
	assert_true(s.temp_c < 0 && assumed == 77);
	r.ca_mg_l = value(80.156);  /* 4 meq/L */
	r.mg_mg_l = value(12.1525); /* 1 meq/L */
	r.na_mg_l = value(22.99);   /* 1 meq/L */
	r.cl_mg_l = value(35.45);
	r.so4_mg_l = value(48.03);
	s = solved(r, &assumed);
	assert_true(fabs(s.alk_meq_l - 4) < 0.01);
	assert_true(assumed & TS_ASSUMED_KH);
}

static void test_softened_water__sodium_balances_the_buffer(void **state)
{
	unsigned assumed;
	struct ts_solution s = solved(hardness(0.1, 14.2, (double)NAN), &assumed);

	(void)state;
	assert_true(fabs(s.na_mmol_l - (s.alk_meq_l - 2 * (s.ca_mmol_l + s.mg_mmol_l))) < 1e-9);
}

static void test_ph_against_kh__marked_and_not_used(void **state)
{
	unsigned assumed;
	struct ts_solution s = solved(hardness(2, 0.6, 11.9), &assumed);
	struct ts_water_facts f = described(hardness(2, 0.6, 11.9));

	(void)state;
	assert_true(s.dic_mmol_l > 0);
	assert_true(assumed & TS_ASSUMED_PH_AGAINST_KH);
	assert_true(f.unusual & TS_UNUSUAL_PH_AGAINST_KH);
	assert_true(isnan(f.co2_mg_l));
	assert_int_equal(f.why[TS_FACT_CO2], TS_WHY_PH_AGAINST_KH);
}

static void test_out_of_range__refused_with_the_reason(void **state)
{
	struct ts_reading r = hardness(14, 9, 7.6);
	struct ts_profile p;
	struct ts_solution s;
	unsigned assumed;
	struct ts_water_facts f;

	(void)state;
	r.temp_c = value(80);
	p = profile_of(r);
	assert_int_equal(ts_solution_from_profile(&p, (double)NAN, &s, &assumed), TS_BAD_INPUT);
	f = described(r);
	assert_true(fabs(f.gh_dh - 14) < 1e-12);
	assert_true(isnan(f.co2_mg_l) && isnan(f.nh3_fraction));
	assert_int_equal(f.why[TS_FACT_CO2], TS_WHY_OUT_OF_RANGE);
	assert_int_equal(f.why[TS_FACT_NH3_FRACTION], TS_WHY_OUT_OF_RANGE);
}

/* KH 9 and GH 14: the interval of docs/methods.md, "The pH of a tank". */
static void test_hard_tap__all_facts(void **state)
{
	struct ts_water_facts f = described(hardness(14, 9, 7.6));

	(void)state;
	for (int i = 0; i < TS_WATER_FACT__COUNT; i++)
		assert_int_equal(f.why[i], TS_WHY_KNOWN);
	assert_true(fabs(f.ph_tank - 8.04) < 0.01);
	assert_true(f.ph_tank_low < f.ph_tank && f.ph_tank < f.ph_tank_high);
	assert_true(f.ph_air > f.ph_tank_high);
	assert_true(fabs(f.ph_closed - 7.6) < 1e-4);
	assert_true(f.co2_low_mg_l < f.co2_mg_l && f.co2_mg_l < f.co2_high_mg_l);
	assert_true(isnan(f.ca_mg_l) && isnan(f.na_mg_l));
	assert_string_equal(f.hardness_class, "rather hard");
	assert_string_equal(f.hardness_scale, "aquarium trade");
	assert_int_equal(f.unusual, 0);
}

static void test_no_reading_at_all__nothing_is_said(void **state)
{
	struct ts_water_facts f = described((struct ts_reading){0});

	(void)state;
	for (int i = 0; i < TS_WATER_FACT__COUNT; i++)
		assert_int_not_equal(f.why[i], TS_WHY_KNOWN);
	assert_true(isnan(f.gh_dh) && isnan(f.ph_tank) && !f.hardness_class);
	assert_int_equal(f.next_to_measure, TS_NEXT_GH);
}

static void test_hardly_any_kh__no_co2(void **state)
{
	struct ts_water_facts f = described(hardness(1, 0.3, 6.5));

	(void)state;
	assert_true(isnan(f.co2_mg_l) && isnan(f.ph_tank) && isnan(f.ph_air));
	assert_int_equal(f.why[TS_FACT_CO2], TS_WHY_BUFFER_TOO_SMALL);
}

static void test_phosphate_as_a_tenth_of_the_buffer__no_co2(void **state)
{
	struct ts_reading r = hardness(4, 2, 6.8);

	(void)state;
	r.phosphate_mg_l = value(1);
	assert_int_equal(described(r).why[TS_FACT_CO2], TS_WHY_KNOWN);
	r.phosphate_mg_l = value(10);
	assert_int_equal(described(r).why[TS_FACT_CO2], TS_WHY_PHOSPHATE);
}

static void test_contradictions__flagged(void **state)
{
	struct ts_reading r = hardness(3, 8, 7.6);

	(void)state;
	r.ca_mg_l = value(80);
	r.mg_mg_l = value(12);
	assert_true(described(r).unusual & TS_UNUSUAL_GH_AGAINST_IONS);
	r = hardness(14, 9, 7.6);
	r.conductivity_us_cm = value(90);
	assert_true(described(r).unusual & TS_UNUSUAL_CONDUCTIVITY);
	assert_true(described(hardness(250, 9, 7.6)).unusual & TS_UNUSUAL_DEGREES);
	assert_true(described(hardness(0.2, 0.2, 6)).unusual & TS_UNUSUAL_BARE);
}

/* A water that nobody read, from a mixture: figures are the solution's, guesses stay unknown. */
static void test_solution_alone__described(void **state)
{
	unsigned assumed;
	struct ts_solution s = solved(hardness(14, 9, 7.6), &assumed);
	struct ts_water_facts f;

	(void)state;
	ts_water_describe(&s, assumed, NULL, &f);
	assert_true(fabs(f.ph - 7.6) < 1e-4 && fabs(f.gh_dh - 14) < 1e-9);
	assert_true(isnan(f.ca_mg_l));
	ts_water_describe(&s, 0, NULL, &f);
	assert_true(fabs(f.ca_mg_l - s.ca_mmol_l * TS_WEIGHT_CA) < 1e-9);
	assert_int_equal(f.why[TS_FACT_PH_TANK], TS_WHY_KNOWN);
}

/* Between 0 and 1, from a xorshift generator (Marsaglia 2003, J. Stat. Softw. 8:14). */
static double chance(uint64_t *seed)
{
	*seed ^= *seed << 13;
	*seed ^= *seed >> 7;
	*seed ^= *seed << 17;
	return (double)(*seed >> 11) / 9007199254740992.0;
}

/* Read or not, somewhere up to `most`. */
static struct ts_measure perhaps(uint64_t *seed, double most)
{
	double v = most * chance(seed);

	return chance(seed) < 0.6 ? value(v) : (struct ts_measure){0};
}

static struct ts_reading random_reading(uint64_t *seed)
{
	return (struct ts_reading){.ph = perhaps(seed, 14),
		.gh_dh = perhaps(seed, 60),
		.kh_dh = perhaps(seed, 50),
		.temp_c = perhaps(seed, 60),
		.ca_mg_l = perhaps(seed, 300),
		.mg_mg_l = perhaps(seed, 100),
		.na_mg_l = perhaps(seed, 500),
		.cl_mg_l = perhaps(seed, 800),
		.so4_mg_l = perhaps(seed, 600),
		.phosphate_mg_l = perhaps(seed, 20)};
}

/* A fact is a number exactly where it is called known; what was read is never changed. */
static void test_a_thousand_random_readings__no_answer_without_a_reason(void **state)
{
	uint64_t seed = 20260301;
	unsigned known_facts = 0;

	(void)state;
	for (int i = 0; i < 1000; i++) {
		struct ts_reading r = random_reading(&seed);
		struct ts_water_facts f = described(r);
		const double facts[TS_WATER_FACT__COUNT] = {f.co2_mg_l, f.ph_closed, f.ph_air,
			f.ph_tank, f.calcite_si, f.ionic_strength, f.conductivity_computed_us_cm,
			f.nh3_fraction};

		for (int k = 0; k < TS_WATER_FACT__COUNT; k++) {
			if (k == TS_FACT_PH_TANK)
				continue; /* the profile's own, at the tank's temperature */
			assert_int_equal(isfinite(facts[k]) != 0, f.why[k] == TS_WHY_KNOWN);
			known_facts += f.why[k] == TS_WHY_KNOWN;
		}
		assert_false(isinf(f.ph_tank) || isinf(f.co2_low_mg_l) || isinf(f.co2_high_mg_l));
		if (r.gh_dh.kind != TS_MEASURE_NONE)
			assert_true(fabs(f.gh_dh - r.gh_dh.value) < 1e-12);
	}
	assert_true(known_facts > 2000);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_hardness_alone__ions_filled_in_and_marked),
		cmocka_unit_test(test_ions_as_read__kept_to_the_last_digit),
		cmocka_unit_test(test_temperature__the_tanks_where_the_sample_has_none),
		cmocka_unit_test(test_calcium_alone_beside_gh__the_rest_is_magnesium),
		cmocka_unit_test(test_kh_missing__from_whole_analysis_only),
		cmocka_unit_test(test_softened_water__sodium_balances_the_buffer),
		cmocka_unit_test(test_ph_against_kh__marked_and_not_used),
		cmocka_unit_test(test_out_of_range__refused_with_the_reason),
		cmocka_unit_test(test_hard_tap__all_facts),
		cmocka_unit_test(test_no_reading_at_all__nothing_is_said),
		cmocka_unit_test(test_hardly_any_kh__no_co2),
		cmocka_unit_test(test_phosphate_as_a_tenth_of_the_buffer__no_co2),
		cmocka_unit_test(test_contradictions__flagged),
		cmocka_unit_test(test_solution_alone__described),
		cmocka_unit_test(test_a_thousand_random_readings__no_answer_without_a_reason),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
