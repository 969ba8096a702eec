/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Readings to profile: the doubt of every method, open ends, several readings, what other figures
 * tell of hardness, poisons and what is unusual, each at its limit. Figures: docs/methods.md,
 * "Matching fish and water".
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>

#include <tapshoal/match.h>

#include "../given.h"

static struct ts_profile profile_of(const struct ts_reading *readings, size_t count)
{
	struct ts_reading copy[3] = {{.gh_dh = {0}}};
	struct ts_water water = {.readings = copy, .reading_count = count};
	struct ts_keeping keeping = {0};
	struct ts_profile p;

	assert_true(count <= 3);
	for (size_t i = 0; i < count; i++)
		copy[i] = readings[i];
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	return p;
}

static void assert_span(const struct ts_span *s, double low, double middle, double high)
{
	if (!(s->given && fabs(s->low - low) < 1e-9 && fabs(s->value - middle) < 1e-9 &&
		    fabs(s->high - high) < 1e-9))
		fail_msg("%g %g %g, wanted %g %g %g", s->low, s->value, s->high, low, middle, high);
}

/* A strip: half-widths 2 dH or 30 %; n drops: n - 1 to n; laboratory 3 %; a utility's mean 15 %. */
static void test_doubt__hardness_by_method(void **state)
{
	static const struct {
		int method;
		double gh, low, high;
	} rows[] = {{TS_METHOD_STRIP, 5, 3, 7}, {TS_METHOD_STRIP, 10, 7, 13},
		{TS_METHOD_STRIP, 1, 0, 3}, {TS_METHOD_DROPS, 8, 7, 8},
		{TS_METHOD_DROPS, 0.5, 0, 0.5}, {TS_METHOD_UNKNOWN, 8, 7, 8},
		{TS_METHOD_METER, 8, 7, 8}, {TS_METHOD_LABORATORY, 10, 9.7, 10.3},
		{TS_METHOD_UTILITY_REPORT, 10, 8.5, 11.5}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_reading r = {.gh_dh = value(rows[i].gh),
			.kh_dh = value(rows[i].gh),
			.method = rows[i].method};
		struct ts_profile p = profile_of(&r, 1);

		assert_span(&p.at[TS_GH], rows[i].low, rows[i].gh, rows[i].high);
		assert_span(&p.at[TS_KH], rows[i].low, rows[i].gh, rows[i].high);
	}
}

static void test_doubt__ph_by_method(void **state)
{
	static const double half[] = {[TS_METHOD_UNKNOWN] = 0.3,
		[TS_METHOD_STRIP] = 0.5,
		[TS_METHOD_DROPS] = 0.3,
		[TS_METHOD_METER] = 0.1,
		[TS_METHOD_LABORATORY] = 0.2,
		[TS_METHOD_UTILITY_REPORT] = 0.2};

	(void)state;
	for (size_t method = 0; method < 6; method++) {
		struct ts_reading r = {.ph = value(7), .method = (int)method};
		struct ts_profile p = profile_of(&r, 1);

		assert_span(&p.at[TS_PH], 7 - half[method], 7, 7 + half[method]);
		assert_true(p.ph_read == 7);
		assert_true(fabs(p.ph_read_low - (7 - half[method])) < 1e-12);
		assert_true(fabs(p.ph_read_high - (7 + half[method])) < 1e-12);
	}
}

static void test_doubt__temperature_half_a_degree_salinity_none(void **state)
{
	struct ts_reading r = {.salinity_g_l = value(2)};
	struct ts_water water = {.readings = &r, .reading_count = 1};
	struct ts_keeping keeping = {.temperature = value(25)};
	struct ts_profile p;

	(void)state;
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_span(&p.at[TS_TEMPERATURE], 24.5, 25, 25.5);
	assert_span(&p.at[TS_SALINITY], 2, 2, 2);
	r.salinity_g_l = (struct ts_measure){0};
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_span(&p.at[TS_SALINITY], 0, 0.25, 0.5); /* fresh water */
}

/* The sample's temperature counts where the sample is the tank; several are exposure. */
static void test_temperature__of_a_tank(void **state)
{
	struct ts_reading r[] = {
		{.temp_c = value(22)}, {.temp_c = value(26)}, {.temp_c = value(31)}};
	struct ts_water water = {.readings = r, .reading_count = 2, .kind = TS_WATER_TANK};
	struct ts_keeping keeping = {0};
	struct ts_profile p;

	(void)state;
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_span(&p.at[TS_TEMPERATURE], 21.5, 24, 26.5);
	assert_true(p.at[TS_TEMPERATURE].exposure);
	water.kind = TS_WATER_TAP;
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_false(p.at[TS_TEMPERATURE].given);
}

/* An open end reaches to 40 dH, or further where the figure does, to pH 14, or down to 0. */
static void test_ends__open(void **state)
{
	struct ts_reading r = {.gh_dh = {20, 20, (double)INFINITY, TS_MEASURE_ABOVE},
		.kh_dh = {3, -(double)INFINITY, 3, TS_MEASURE_BELOW},
		.ph = {8, 8, (double)INFINITY, TS_MEASURE_ABOVE}};
	struct ts_profile p = profile_of(&r, 1);

	(void)state;
	assert_span(&p.at[TS_GH], 20, 20, 30);
	assert_span(&p.at[TS_KH], 0, 1.5, 3);
	assert_true(p.ph_read_low == 8 && p.ph_read == 8 && p.ph_read_high == 14);
	r.gh_dh = (struct ts_measure){50, 50, (double)INFINITY, TS_MEASURE_ABOVE};
	p = profile_of(&r, 1);
	assert_span(&p.at[TS_GH], 50, 50, 50);
}

static void test_several__all_of_it_is_lived(void **state)
{
	struct ts_reading r[] = {{.gh_dh = {8, 7, 9, TS_MEASURE_DOUBT}},
		{.gh_dh = {12, 11, 14, TS_MEASURE_DOUBT}}, {.gh_dh = {5, 4, 6, TS_MEASURE_DOUBT}}};
	struct ts_profile p = profile_of(r, 1);

	(void)state;
	assert_span(&p.at[TS_GH], 7, 8, 9);
	assert_false(p.at[TS_GH].exposure);
	p = profile_of(r, 2);
	assert_span(&p.at[TS_GH], 7, 10.5, 14);
	assert_true(p.at[TS_GH].exposure);
	p = profile_of(r, 3);
	assert_span(&p.at[TS_GH], 4, 9, 14);
	assert_false(p.at[TS_KH].given);
}

static void test_range__is_lived_but_a_strip_s_is_doubt(void **state)
{
	struct ts_reading r = {.gh_dh = {8, 4, 12, TS_MEASURE_RANGE}, .method = TS_METHOD_DROPS};

	(void)state;
	assert_true(profile_of(&r, 1).at[TS_GH].exposure);
	r.method = TS_METHOD_STRIP;
	assert_false(profile_of(&r, 1).at[TS_GH].exposure);
}

/* One degree is 7.147 mg/L of calcium or 4.334 of magnesium, and 0.3566 meq/L of alkalinity. */
static void test_hardness__from_ions_and_alkalinity(void **state)
{
	struct ts_reading r = {
		.ca_mg_l = value(71.47), .mg_mg_l = value(8.668), .alkalinity_meq_l = value(1.783)};
	struct ts_profile p = profile_of(&r, 1);

	(void)state;
	assert_true(fabs(p.at[TS_GH].value - 12) < 0.005);
	assert_true(fabs(p.at[TS_KH].value - 5) < 0.005);
	assert_true(p.gh_from_ions && p.kh_from_alkalinity);
	r.ca_mg_l = (struct ts_measure){71.47, 64.323, 78.617, TS_MEASURE_DOUBT}; /* 9, 10, 11 dH */
	r.mg_mg_l = (struct ts_measure){8.668, 4.334, 13.002, TS_MEASURE_DOUBT};  /* 1, 2, 3 */
	r.alkalinity_meq_l = (struct ts_measure){1.783, 1.4264, 2.1396, TS_MEASURE_DOUBT};
	p = profile_of(&r, 1);
	assert_true(fabs(p.at[TS_GH].low - 10) < 0.005 && fabs(p.at[TS_GH].high - 14) < 0.005);
	assert_true(fabs(p.at[TS_KH].low - 4) < 0.005 && fabs(p.at[TS_KH].high - 6) < 0.005);
	r.gh_dh = value(7);
	r.kh_dh = value(3);
	p = profile_of(&r, 1);
	assert_true(p.at[TS_GH].value == 7 && p.at[TS_KH].value == 3);
	assert_false(p.gh_from_ions || p.kh_from_alkalinity);
	r.gh_dh = r.mg_mg_l = (struct ts_measure){0};
	p = profile_of(&r, 1);
	assert_false(p.at[TS_GH].given || p.gh_from_ions); /* calcium alone is no hardness */
}

/* The highest of several counts; "less than" is nil, "more than" its figure. */
static void test_poisons__highest(void **state)
{
	struct ts_reading r[] = {
		{.no3_mg_l = value(20), .tan_mg_l = {0.2, 0, 0.2, TS_MEASURE_BELOW}},
		{.no3_mg_l = {30, 25, 35, TS_MEASURE_DOUBT}}, {.no3_mg_l = value(10)}};
	struct ts_profile p = profile_of(r, 3);

	(void)state;
	assert_true(p.poisons.no3_mg_l == 35);
	assert_true(p.poisons.tan_mg_l == 0);
	assert_true(isnan(p.poisons.chlorine_mg_l));
	r[0].no3_mg_l = (struct ts_measure){50, 50, (double)INFINITY, TS_MEASURE_ABOVE};
	assert_true(profile_of(r, 1).poisons.no3_mg_l == 50);
	/* 3.2846 of nitrite and 4.4268 of nitrate hold 1 of nitrogen */
	r[0] = (struct ts_reading){.no2_n_mg_l = value(1), .no3_n_mg_l = value(10)};
	p = profile_of(r, 1);
	assert_true(fabs(p.poisons.no2_mg_l - 3.2846) < 1e-3);
	assert_true(fabs(p.poisons.no3_mg_l - 44.268) < 0.01);
	assert_true(fabs(p.contents.no3_mg_l - 44.268) < 0.01);
}

static void test_poisons__copper_keeps_both_ends(void **state)
{
	struct ts_reading r = {.cu_mg_l = {0.05, 0, 0.05, TS_MEASURE_BELOW}};
	struct ts_profile p = profile_of(&r, 1);

	(void)state;
	assert_true(p.poisons.copper_low_mg_l == 0 && p.poisons.copper_mg_l == 0.05);
	r.cu_mg_l = (struct ts_measure){0.02, 0.02, (double)INFINITY, TS_MEASURE_ABOVE};
	p = profile_of(&r, 1);
	assert_true(p.poisons.copper_low_mg_l == 0.02 && p.poisons.copper_mg_l == 0.02);
}

static void test_poisons__found_from_their_limits_on(void **state)
{
	static const struct {
		size_t member;
		double limit;
		unsigned bit;
		bool beyond; /* only more than the limit counts */
	} rows[] = {{offsetof(struct ts_reading, tan_mg_l), 0.25, TS_POISON_AMMONIA, false},
		{offsetof(struct ts_reading, no2_mg_l), 0.16, TS_POISON_NITRITE, false},
		{offsetof(struct ts_reading, no3_mg_l), 50, TS_POISON_NITRATE, true},
		{offsetof(struct ts_reading, chlorine_mg_l), 0.011, TS_POISON_CHLORINE, false},
		{offsetof(struct ts_reading, cu_mg_l), 0.008, TS_POISON_COPPER, false}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_reading r = {0};
		struct ts_measure *m = (struct ts_measure *)(void *)((char *)&r + rows[i].member);

		*m = value(rows[i].limit * 0.999);
		assert_int_equal(profile_of(&r, 1).poisons.found, 0);
		*m = value(rows[i].limit);
		assert_int_equal(profile_of(&r, 1).poisons.found, rows[i].beyond ? 0 : rows[i].bit);
		*m = value(rows[i].limit * 1.001);
		assert_int_equal(profile_of(&r, 1).poisons.found, rows[i].bit);
	}
}

/* Means of all that was read; "less than" counts half. */
static void test_contents__means(void **state)
{
	struct ts_reading r[] = {{.temp_c = value(10), .ca_mg_l = value(40), .mg_mg_l = value(4)},
		{.temp_c = value(14), .ca_mg_l = value(60)},
		{.na_mg_l = {8, 0, 8, TS_MEASURE_BELOW}, .k_mg_l = value(3)}};
	struct ts_profile p;

	(void)state;
	r[1].cl_mg_l = value(21);
	r[1].so4_mg_l = value(31);
	r[1].no3_mg_l = value(11);
	r[1].no3_n_mg_l = value(99); /* the same nitrate told twice is not two readings */
	r[1].phosphate_mg_l = value(0.4);
	r[1].conductivity_us_cm = value(333);
	p = profile_of(r, 3);
	assert_true(p.contents.temp_c == 12 && p.contents.ca_mg_l == 50);
	assert_true(p.contents.mg_mg_l == 4 && p.contents.na_mg_l == 4 && p.contents.k_mg_l == 3);
	assert_true(p.contents.cl_mg_l == 21 && p.contents.so4_mg_l == 31);
	assert_true(p.contents.no3_mg_l == 11 && p.contents.phosphate_mg_l == 0.4);
	assert_true(p.contents.conductivity_us_cm == 333);
	assert_true(isnan(profile_of(r, 1).contents.cl_mg_l));
}

static unsigned unusual(double gh, double kh, double ph, double na)
{
	struct ts_measure no = {0};
	struct ts_reading r = {
		.gh_dh = isnan(gh) ? no : (struct ts_measure){gh, gh, gh, TS_MEASURE_DOUBT},
		.kh_dh = isnan(kh) ? no : (struct ts_measure){kh, kh, kh, TS_MEASURE_DOUBT},
		.ph = isnan(ph) ? no : value(ph),
		.na_mg_l = isnan(na) ? no : value(na)};

	return profile_of(&r, 1).unusual & ~(unsigned)TS_UNUSUAL_NO_PH_FROM_KH;
}

static void test_unusual__at_the_limits(void **state)
{
	const double no = (double)NAN;
	struct ts_reading r = {.gh_dh = value(12), .kh_dh = value(6)};
	struct ts_water water = {.readings = &r, .reading_count = 1, .softened = true};
	struct ts_keeping keeping = {0};
	struct ts_profile p;

	(void)state;
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_int_equal(p.unusual, TS_UNUSUAL_SOFTENED);
	assert_int_equal(unusual(12, 6, 7.5, no), 0);
	/* under 1 dH of GH with more than 3 of KH, or to 5 dH with 5 more and three times as
	 * much: asked first; less of it is said, and GH decides */
	assert_int_equal(unusual(0.99, 3.1, no, no), TS_UNUSUAL_MAYBE_SOFTENED);
	assert_int_equal(unusual(1, 3.1, no, no), TS_UNUSUAL_KH_OVER_GH);
	assert_int_equal(unusual(4, 12, no, no), TS_UNUSUAL_MAYBE_SOFTENED);
	assert_int_equal(unusual(4, 11.5, no, no), TS_UNUSUAL_KH_OVER_GH);
	assert_int_equal(unusual(2, 6.5, no, no), TS_UNUSUAL_KH_OVER_GH);
	assert_int_equal(unusual(4, 7.9, no, no), TS_UNUSUAL_KH_OVER_GH);
	assert_int_equal(unusual(5.1, 11, no, no), TS_UNUSUAL_KH_OVER_GH);
	/* where sodium was read it decides: 4 dH are 1.43 meq/L, of which 0.6 are 20 mg/L */
	assert_int_equal(unusual(4, 8, no, 20), TS_UNUSUAL_SOFTENED);
	assert_int_equal(unusual(4, 8, no, 19), TS_UNUSUAL_KH_OVER_GH);
	assert_int_equal(unusual(0.99, 3, no, no), TS_UNUSUAL_KH_OVER_GH);
	assert_int_equal(unusual(3, 3, no, no), 0);
	/* more than 60 mg/L of sodium under 2 dH */
	assert_int_equal(unusual(1.9, no, no, 61), TS_UNUSUAL_SOFTENED);
	assert_int_equal(unusual(2, no, no, 61), 0);
	assert_int_equal(unusual(1.9, no, no, 60), 0);
	/* a supply whose pH lies beyond all that a tank of its KH runs at: gas, or lime */
	assert_int_equal(unusual(5, 1.3, 9.1, no), TS_UNUSUAL_LIMED);
	assert_int_equal(unusual(5, 1.3, 7.4, no), 0);
	assert_int_equal(unusual(8, 6, 6.7, no), TS_UNUSUAL_GASSY);
	assert_int_equal(unusual(8, 6, 6.9, no), 0);
	/* what would take more CO2 than there is, or a pH that no such buffer carries */
	assert_int_equal(unusual(14, 9, 4, no), TS_UNUSUAL_PH_AGAINST_KH);
	assert_int_equal(unusual(14, 9, 5.4, no), TS_UNUSUAL_PH_AGAINST_KH);
	assert_int_equal(unusual(14, 9, 6.2, no), TS_UNUSUAL_GASSY);
}

/* A pH is taken as read, but for fresh samples and gas, where the tank's stands in its place. */
static void test_ph__as_read_or_of_the_tank(void **state)
{
	struct ts_reading r = {.gh_dh = value(12), .kh_dh = value(6), .ph = value(6.7)};
	struct ts_water water = {.readings = &r, .reading_count = 1};
	struct ts_keeping keeping = {.temperature = value(25)};
	struct ts_profile p;

	(void)state;
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	/* a supply that does not say whether it stood: gas, where its KH does not hold that pH */
	assert_true(p.ph_computed && p.ph_read == 6.7);
	r.ph = value(7.4); /* from what was read to the middle of what a tank runs at */
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_false(p.ph_computed);
	assert_true(p.at[TS_PH].value == 7.4);
	assert_span(&p.at[TS_PH], fmin(p.ph_tank_low, 7.4), 7.4, p.ph_tank);
	water.kind = TS_WATER_TANK; /* a tank's own is never replaced */
	r.ph = value(6.5);
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_false(p.ph_computed);
	assert_span(&p.at[TS_PH], 6.2, 6.5, 6.8);
	assert_true(p.co2_tells);
	keeping.acids = true; /* peat or active soil: there pH tells no CO2 */
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_false(p.co2_tells);
	water.kind = TS_WATER_TAP;
	r.stood_h = value(24);
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_span(&p.at[TS_PH], 6.2, 6.5, 6.8);
	assert_false(p.co2_tells);
	r.stood_h = (struct ts_measure){0};
	r.ph = value(7);
	keeping.fresh = true;
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_true(p.ph_computed && p.ph_read == 7);
	assert_span(&p.at[TS_PH], p.ph_tank_low, p.ph_tank, p.ph_tank_high);
	assert_true(p.ph_tank_low < p.ph_tank && p.ph_tank < p.ph_tank_high);
	assert_false(p.at[TS_PH].exposure);
	r.kh_dh = value(0.3); /* too little to tell */
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_int_equal(p.unusual, TS_UNUSUAL_NO_PH_FROM_KH);
	assert_false(p.ph_computed);
	r.kh_dh = (struct ts_measure){0};
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_int_equal(p.unusual, 0);
	assert_true(isnan(p.ph_tank));
	assert_span(&p.kh_assumed, 2.75, 7.375, 12); /* a quarter of GH to all of it */
	assert_int_equal(p.kh_assumed.from, TS_FROM_ASSUMED);
	assert_true(p.at[TS_PH].high > 7.9); /* which a tank may rise to */
	r.ph = (struct ts_measure){0};
	r.kh_dh = value(6); /* no pH read: a tank's */
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_int_equal(p.at[TS_PH].from, TS_FROM_RESULT);
	assert_true(isnan(p.ph_read));
}

/* A supply that changes: the tank's pH spans that of each end by itself. */
/* "<1 dH" says less than 0.5 to 1 dH: the pH that follows may be as high, and lower. */
static void test_ph__of_one_sided_buffer(void **state)
{
	const struct ts_reading read = {.gh_dh = value(1),
					.kh_dh = {1.1, 0.6, 1.1, TS_MEASURE_DOUBT}},
				less = {.gh_dh = value(1),
					.kh_dh = {1.1, 0, 1.1, TS_MEASURE_BELOW}};
	const struct ts_profile a = profile_of(&read, 1), b = profile_of(&less, 1);

	(void)state;
	assert_true(b.at[TS_PH].high >= a.at[TS_PH].high - 1e-9);
	assert_true(b.at[TS_PH].low <= a.at[TS_PH].low);
}

static void test_ph__of_a_changing_supply(void **state)
{
	struct ts_reading r[] = {
		{.gh_dh = {4, 4, 4, TS_MEASURE_DOUBT}, .kh_dh = {2, 2, 2, TS_MEASURE_DOUBT}},
		{.gh_dh = {14, 14, 14, TS_MEASURE_DOUBT}, .kh_dh = {9, 9, 9, TS_MEASURE_DOUBT}}};
	struct ts_profile soft = profile_of(&r[0], 1), hard = profile_of(&r[1], 1);
	struct ts_profile both = profile_of(r, 2);

	(void)state;
	assert_true(soft.ph_tank_low < hard.ph_tank_low);
	assert_true(fabs(both.ph_tank_low - soft.ph_tank_low) < 1e-6);
	assert_true(fabs(both.ph_tank_high - hard.ph_tank_high) < 1e-6);
	r[0].kh_dh = (struct ts_measure){0.2, 0.2, 0.2, TS_MEASURE_DOUBT};
	both = profile_of(r, 2); /* at one end it cannot be told */
	assert_int_equal(both.unusual, TS_UNUSUAL_NO_PH_FROM_KH);
	assert_true(both.ph_tank > 0);
}

/* Where each number comes from, and how old it is. */
static void test_origin__and_age(void **state)
{
	struct ts_reading r[] = {{.date = "2026-03-01", .gh_dh = value(8), .ph = value(7)},
		{.date = "2026-03-11", .gh_dh = value(9), .alkalinity_meq_l = value(2)}};
	struct ts_water water = {.readings = r, .reading_count = 2};
	struct ts_keeping keeping = {.temperature = value(25)};
	struct ts_profile p;

	(void)state;
	ts_profile_make(&water, &keeping, NULL, 20530, &p); /* 2026-03-18 */
	assert_int_equal(p.at[TS_GH].from, TS_FROM_SUPPLY);
	assert_true(p.at[TS_GH].age_days == 7); /* the newer of two */
	assert_true(p.at[TS_PH].age_days == 17);
	assert_int_equal(p.at[TS_KH].from, TS_FROM_COMPUTED);
	assert_int_equal(p.at[TS_SALINITY].from, TS_FROM_ASSUMED);
	assert_true(isnan(p.at[TS_SALINITY].age_days));
	assert_int_equal(p.at[TS_TEMPERATURE].from, TS_FROM_TANK);
	r[0].stood_h = value(24);
	water.reading_count = 1;
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_int_equal(p.at[TS_PH].from, TS_FROM_STOOD);
	assert_true(isnan(p.at[TS_PH].age_days));
	assert_int_equal(p.at[TS_KH].from, TS_FROM_NONE);
	r[0].stood_h = value(1);
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_int_equal(p.at[TS_PH].from, TS_FROM_FRESH);
	water.kind = TS_WATER_TANK;
	ts_profile_make(&water, &keeping, NULL, -1, &p);
	assert_int_equal(p.at[TS_PH].from, TS_FROM_TANK);
}

/* Of a tap the readings that stood go before the others, which tell the gas. */
static void test_ph__stood_before_fresh(void **state)
{
	struct ts_reading r[] = {{.ph = value(9.1), .kh_dh = value(1.5), .stood_h = value(0)},
		{.ph = value(7.3), .stood_h = value(24)}};
	struct ts_profile p = profile_of(r, 2);

	(void)state;
	assert_span(&p.at[TS_PH], 7, 7.3, 7.6);
	assert_int_equal(p.at[TS_PH].from, TS_FROM_STOOD);
	assert_true(p.ph_fresh == 9.1);
	p = profile_of(r, 1);
	assert_true(isnan(p.ph_fresh) && p.ph_computed && p.ph_fresh_sample);
}

/* The same drops twice are one value; what does not overlap has changed. */
static void test_several__doubt_and_change(void **state)
{
	struct ts_reading r[] = {{.gh_dh = value(8)}, {.gh_dh = value(8)}, {.gh_dh = value(14)}};
	struct ts_profile p = profile_of(r, 2);

	(void)state;
	assert_span(&p.at[TS_GH], 7, 8, 8);
	assert_false(p.at[TS_GH].exposure);
	r[1].gh_dh = value(8.5);
	p = profile_of(r, 2);
	assert_span(&p.at[TS_GH], 7, 7.75, 8.5);
	assert_false(p.at[TS_GH].exposure);
	p = profile_of(r, 3);
	assert_span(&p.at[TS_GH], 7, 10.5, 14);
	assert_true(p.at[TS_GH].exposure);
}

/* A supply changes with the years: figure by figure the newest counts; seasons and tanks stay. */
static void test_several__newest_of_years(void **state)
{
	struct ts_reading r[] = {{.date = "2019-05-02",
					 .gh_dh = value(18),
					 .kh_dh = value(13),
					 .ca_mg_l = value(105),
					 .mg_mg_l = value(14),
					 .no3_mg_l = value(40)},
		{.date = "2023-01-10", .gh_dh = value(9), .kh_dh = value(6)},
		{.date = "2024-01-02", .gh_dh = value(6)}, {.ph = value(7.2)}};
	struct ts_water water = {.readings = r, .reading_count = 4};
	struct ts_profile p;

	(void)state;
	ts_profile_make(&water, &(struct ts_keeping){0}, NULL, -1, &p);
	assert_span(&p.at[TS_GH], 5, 7, 9); /* both of one year, lived through */
	assert_true(p.at[TS_GH].exposure);
	assert_span(&p.at[TS_KH], 5, 6, 6);
	assert_true(p.gh_before_dh == 18 && p.kh_before_dh == 13);
	assert_true(isnan(p.contents.ca_mg_l)); /* which made the GH of then */
	assert_true(p.contents.no3_mg_l == 40); /* nobody has read it since */
	assert_true(p.ph_read == 7.2);
	r[0].season = "winter"; /* another part of the year is no change of the supply */
	r[1].season = r[2].season = "summer";
	ts_profile_make(&water, &(struct ts_keeping){0}, NULL, -1, &p);
	assert_span(&p.at[TS_GH], 5, 11.5, 18);
	assert_true(isnan(p.gh_before_dh));
	r[0].season = r[1].season = r[2].season = NULL;
	r[2].date = "2020-05-02"; /* within thirteen months */
	r[1].date = NULL;
	ts_profile_make(&water, &(struct ts_keeping){0}, NULL, -1, &p);
	assert_span(&p.at[TS_GH], 5, 11.5, 18);
}

/* Salt that nobody read, bounded by what was. */
static void test_salt__bounded_by_other_readings(void **state)
{
	struct ts_reading r = {.gh_dh = value(14), .kh_dh = value(9)};
	struct ts_profile p;

	(void)state;
	r.conductivity_us_cm = value(600); /* of hardness */
	p = profile_of(&r, 1);
	assert_int_equal(p.at[TS_SALINITY].from, TS_FROM_ASSUMED);
	r.conductivity_us_cm = value(50000);
	p = profile_of(&r, 1);
	assert_true(p.at[TS_SALINITY].low > 30 && p.unusual & TS_UNUSUAL_SALTY);
	r.conductivity_us_cm = (struct ts_measure){0};
	r.cl_mg_l = value(1000); /* 1.80655 g of salt each g of chloride */
	p = profile_of(&r, 1);
	assert_span(&p.at[TS_SALINITY], 1.80655, 1.80655, 1.80655);
	r.cl_mg_l = (struct ts_measure){0};
	r.specific_gravity = value(1.004);
	p = profile_of(&r, 1);
	assert_true(fabs(p.at[TS_SALINITY].value - 5.3) < 0.1);
	assert_int_equal(p.at[TS_SALINITY].from, TS_FROM_COMPUTED);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_doubt__hardness_by_method),
		cmocka_unit_test(test_doubt__ph_by_method),
		cmocka_unit_test(test_doubt__temperature_half_a_degree_salinity_none),
		cmocka_unit_test(test_temperature__of_a_tank),
		cmocka_unit_test(test_ends__open),
		cmocka_unit_test(test_several__all_of_it_is_lived),
		cmocka_unit_test(test_range__is_lived_but_a_strip_s_is_doubt),
		cmocka_unit_test(test_hardness__from_ions_and_alkalinity),
		cmocka_unit_test(test_poisons__highest),
		cmocka_unit_test(test_poisons__copper_keeps_both_ends),
		cmocka_unit_test(test_poisons__found_from_their_limits_on),
		cmocka_unit_test(test_contents__means),
		cmocka_unit_test(test_unusual__at_the_limits),
		cmocka_unit_test(test_ph__as_read_or_of_the_tank),
		cmocka_unit_test(test_ph__of_one_sided_buffer),
		cmocka_unit_test(test_ph__of_a_changing_supply),
		cmocka_unit_test(test_origin__and_age),
		cmocka_unit_test(test_ph__stood_before_fresh),
		cmocka_unit_test(test_several__doubt_and_change),
		cmocka_unit_test(test_several__newest_of_years),
		cmocka_unit_test(test_salt__bounded_by_other_readings),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
