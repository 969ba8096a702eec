/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Verdict, fit and what decides, each at its limit. The profile is put together by hand, so that
 * every interval is exact; expected figures are worked out from docs/methods.md, "Matching fish and
 * water".
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include <tapshoal/match.h>

static const char *grades[][2] = {{"published-2001", "published-2001"}, {"practice", "practice"},
	{"memory", "memory"}, {"derived", "derived"}};
enum { PUBLISHED, PRACTICE, MEMORY, DERIVED };

static const struct ts_range no_range = {(double)NAN, (double)NAN};

static struct ts_envelope band(double a, double b, double c, double d, int grade)
{
	return (struct ts_envelope){{a, d}, {b, c}, {grades[grade], 2}, NULL};
}

/* An animal and a water that suits it; KH by its own band unless `home` says otherwise. */
struct pair {
	struct ts_species s;
	struct ts_profile p;
	struct ts_keeping k;
	struct ts_match m;
};

static struct ts_span exactly(double v)
{
	return (struct ts_span){true, false, v, v, v, TS_FROM_SUPPLY, (double)NAN};
}

static struct ts_span between(double low, double high)
{
	return (struct ts_span){
		true, false, (low + high) / 2, low, high, TS_FROM_SUPPLY, (double)NAN};
}

static struct ts_span lived(double low, double high)
{
	return (struct ts_span){
		true, true, (low + high) / 2, low, high, TS_FROM_SUPPLY, (double)NAN};
}

static void set_pair(struct pair *t)
{
	struct ts_envelope none = {no_range, no_range, {NULL, 0}, NULL};

	memset(t, 0, sizeof *t);
	t->s = (struct ts_species){.species = "Exempla una",
		.home_water = TS_HOME_MIXED,
		.adult_length_cm = 5,
		.group = {.least = 1, .comfortable = 1}};
	t->s.water.usual = t->s.water.wild = t->s.water.breeding =
		(struct ts_envelopes){none, none, none, none, none};
	t->s.water.usual.gh_dh = band(4, 6, 16, 20, PRACTICE);
	t->s.water.usual.kh_dh = band(2, 4, 10, 14, PRACTICE);
	t->s.water.usual.ph = band(6.5, 6.8, 7.2, 7.5, PRACTICE);
	t->s.water.usual.temp_c = band(20, 23, 26, 30, PRACTICE);
	t->p.at[TS_GH] = exactly(10);
	t->p.at[TS_KH] = exactly(6);
	t->p.at[TS_PH] = exactly(7);
	t->p.at[TS_TEMPERATURE] = exactly(25);
	t->p.at[TS_SALINITY] = exactly(0.2);
	t->p.poisons = (struct ts_poisons){0, no_range.low, no_range.low, no_range.low,
		no_range.low, no_range.low, no_range.low, no_range.low, no_range.low};
}

static enum ts_verdict verdict(struct pair *t)
{
	ts_match_species(&t->s, &t->p, &t->k, NULL, &t->m);
	return t->m.verdict;
}

static enum ts_verdict at(struct pair *t, enum ts_parameter p, struct ts_span span)
{
	t->p.at[p] = span;
	return verdict(t);
}

static void near_to(double got, double wanted)
{
	if (!(fabs(got - wanted) < 1e-9))
		fail_msg("%.12g, wanted %.12g", got, wanted);
}

static void test_band__tolerated_and_preferred_ends(void **state)
{
	static const struct {
		double gh;
		enum ts_verdict want;
	} rows[] = {{6, TS_SUITS}, {16, TS_SUITS}, {5.9, TS_TOLERATES}, {16.1, TS_TOLERATES},
		{4, TS_TOLERATES}, {20, TS_TOLERATES}, {3.9, TS_UNSURE}, {20.1, TS_UNSURE}};
	struct pair t;

	(void)state;
	set_pair(&t);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		assert_int_equal(at(&t, TS_GH, exactly(rows[i].gh)), rows[i].want);
	t.s.water.usual.gh_dh.preferred = no_range; /* comfort that nobody knows is not promised */
	assert_int_equal(at(&t, TS_GH, exactly(10)), TS_TOLERATES);
}

/* Excluded beyond the limit's own doubt; a lone limit from memory only beyond twice it. */
static void test_band__doubt_of_the_limit_by_grade(void **state)
{
	static const struct {
		enum ts_parameter p;
		int grade;
		double unsure, excluded;
	} rows[] = {{TS_GH, PUBLISHED, 21, 21.01}, {TS_GH, PRACTICE, 22, 22.01},
		{TS_GH, DERIVED, 22, 22.01}, {TS_GH, MEMORY, 25.99, 26},
		{TS_KH, PUBLISHED, 15, 15.01}, {TS_KH, PRACTICE, 16, 16.01},
		{TS_TEMPERATURE, PUBLISHED, 31, 31.01}, {TS_TEMPERATURE, PRACTICE, 31, 31.01},
		{TS_TEMPERATURE, MEMORY, 33.99, 34},
		/* the slack of pH reaches to 8.3 first */
		{TS_PH, PUBLISHED, 8.49, 8.51}, {TS_PH, PRACTICE, 8.59, 8.61},
		{TS_PH, MEMORY, 8.79, 8.81}, {TS_PH, PRACTICE, 5.42, 5.18}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct pair t;

		set_pair(&t);
		t.s.water.usual.gh_dh = band(4, 6, 16, 20, rows[i].grade);
		t.s.water.usual.kh_dh = band(2, 4, 10, 14, rows[i].grade);
		t.s.water.usual.ph = band(6.5, 6.8, 7.2, 7.5, rows[i].grade);
		t.s.water.usual.temp_c = band(20, 23, 26, 30, rows[i].grade);
		assert_int_equal(at(&t, rows[i].p, exactly(rows[i].unsure)), TS_UNSURE);
		assert_int_equal(at(&t, rows[i].p, exactly(rows[i].excluded)), TS_EXCLUDED);
	}
}

/* Two limits from memory that are missed exclude together. */
static void test_memory__two_limits_are_not_alone(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	t.s.water.usual.gh_dh = band(4, 6, 16, 20, MEMORY);
	t.s.water.usual.temp_c = band(20, 23, 26, 30, MEMORY);
	assert_int_equal(at(&t, TS_GH, exactly(24)), TS_UNSURE);
	assert_int_equal(at(&t, TS_TEMPERATURE, exactly(33)), TS_EXCLUDED);
	assert_int_equal(at(&t, TS_GH, exactly(10)), TS_UNSURE);
}

/* Fresh water to 0.5 g/L where the record says nothing: a limit from memory, of twice 0.5. */
static void test_salinity__fresh_water_animals(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	assert_int_equal(at(&t, TS_SALINITY, exactly(0.5)), TS_SUITS);
	assert_int_equal(at(&t, TS_SALINITY, exactly(0.6)), TS_UNSURE);
	assert_int_equal(at(&t, TS_SALINITY, exactly(1.49)), TS_UNSURE);
	assert_int_equal(at(&t, TS_SALINITY, exactly(1.5)), TS_EXCLUDED);
	assert_string_equal(t.m.at[TS_SALINITY].source[0], "memory");
}

/* A limit inside the interval: no yes, however little lies beyond; all of it beyond excludes. */
static void test_share__of_a_doubtful_reading(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	assert_int_equal(at(&t, TS_GH, between(11, 20)), TS_SUITS);
	assert_int_equal(at(&t, TS_GH, between(11, 20.1)), TS_UNSURE);
	assert_true(t.m.at[TS_GH].perhaps && t.m.at[TS_GH].reading == 20.1);
	assert_int_equal(at(&t, TS_GH, between(10, 21.5)), TS_UNSURE); /* 0.13 */
	near_to(t.m.at[TS_GH].share, 1.5 / 11.5);
	assert_int_equal(at(&t, TS_GH, between(18, 28)), TS_UNSURE); /* 0.8 */
	near_to(t.m.at[TS_GH].share, 0.8);
	assert_int_equal(at(&t, TS_GH, between(20, 30)), TS_UNSURE);
	assert_false(t.m.at[TS_GH].perhaps); /* the figure itself lies beyond */
	assert_int_equal(at(&t, TS_GH, between(20.1, 30)), TS_EXCLUDED);
	assert_int_equal(at(&t, TS_GH, between(25, 30)), TS_EXCLUDED);
	near_to(t.m.at[TS_GH].share, 1);
	near_to(t.m.at[TS_GH].outside_by, 7.5);
	near_to(t.m.at[TS_GH].uncomfortable_by, 11.5);
	assert_int_equal(at(&t, TS_GH, between(0, 1)), TS_EXCLUDED);
	near_to(t.m.at[TS_GH].outside_by, -3.5);
	near_to(t.m.at[TS_GH].uncomfortable_by, -5.5);
}

/* All of an exposure is lived: both ends must be preferred, the worse one decides. */
static void test_exposure__worst_end(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	assert_int_equal(at(&t, TS_GH, lived(6, 16)), TS_SUITS);
	assert_int_equal(at(&t, TS_GH, lived(5.9, 16)), TS_TOLERATES);
	assert_int_equal(at(&t, TS_GH, lived(6, 16.1)), TS_TOLERATES);
	assert_int_equal(at(&t, TS_GH, lived(10, 20.5)), TS_UNSURE);
	near_to(t.m.at[TS_GH].reading, 20.5);
	near_to(t.m.at[TS_GH].share, 1);
	near_to(t.m.at[TS_GH].suitability, 0);
	assert_int_equal(at(&t, TS_GH, lived(10, 22.5)), TS_EXCLUDED);
	assert_int_equal(at(&t, TS_GH, lived(1.5, 22.1)), TS_EXCLUDED); /* 2.5 below, 2.1 above */
	near_to(t.m.at[TS_GH].reading, 1.5);
	assert_int_equal(at(&t, TS_GH, lived(1.9, 22.5)), TS_EXCLUDED);
	near_to(t.m.at[TS_GH].reading, 22.5);
	assert_int_equal(at(&t, TS_GH, lived(5, 17)), TS_TOLERATES);
	near_to(t.m.at[TS_GH].suitability, 0.55); /* at 5; at 17 it is 0.775 */
	near_to(t.m.at[TS_GH].reading, 5);
	near_to(t.m.at[TS_GH].share, 0);
}

/* 0.8 beyond tolerated; half for breeding and wild animals of black water; never beyond the ends.
 */
static void test_ph__slack(void **state)
{
	static const struct {
		int home;
		bool wild, breeding;
		double low, high, slack_low, slack_high;
	} rows[] = {{TS_HOME_MIXED, false, false, 6.5, 7.5, 5.7, 8.3},
		{TS_HOME_MIXED, true, false, 6.5, 7.5, 5.7, 8.3},
		{TS_HOME_MIXED, false, true, 6.5, 7.5, 6.1, 7.9},
		{TS_HOME_BLACK, false, false, 5.5, 6.5, 4.7, 7.3},
		{TS_HOME_BLACK, true, false, 5.5, 6.5, 5.1, 6.9},
		{TS_HOME_BLACK, false, false, 5, 6.5, 4.5, 7.3},
		{TS_HOME_CLEAR_SOFT, false, false, 6, 8.5, 5.5, 9},
		{TS_HOME_MIXED, false, false, 5.2, 9.3, 5.2, 9.3},
		{TS_HOME_HARD, false, false, 7.2, 8, 7.2, 8.8},
		{TS_HOME_MALAWI, false, false, 7.2, 8, 7.2, 8.8},
		{TS_HOME_TANGANYIKA, false, false, 7.2, 8, 7.2, 8.8},
		{TS_HOME_VICTORIA, false, false, 7.2, 8, 7.2, 8.8},
		{TS_HOME_SULAWESI, false, false, 7.2, 8, 7.2, 8.8},
		{TS_HOME_SNAIL, false, false, 7.2, 8, 7.2, 8.8},
		{TS_HOME_MIDDLE, false, false, 7.2, 8, 6.4, 8.8},
		{TS_HOME_BRACKISH, false, false, 7.2, 8, 6.4, 8.8}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		double middle = (rows[i].low + rows[i].high) / 2;
		struct pair t;

		set_pair(&t);
		t.s.home_water = rows[i].home;
		t.k.wild = rows[i].wild;
		t.k.breeding = rows[i].breeding;
		t.s.water.usual.ph = band(rows[i].low, middle, middle, rows[i].high, PRACTICE);
		assert_int_equal(at(&t, TS_PH, exactly(rows[i].slack_low + 1e-6)),
			rows[i].slack_low < rows[i].low ? TS_TOLERATES : TS_SUITS);
		assert_int_equal(at(&t, TS_PH, exactly(rows[i].slack_low - 1e-6)), TS_UNSURE);
		assert_int_equal(at(&t, TS_PH, exactly(rows[i].slack_high - 1e-6)),
			rows[i].slack_high > rows[i].high ? TS_TOLERATES : TS_SUITS);
		assert_int_equal(at(&t, TS_PH, exactly(rows[i].slack_high + 1e-6)), TS_UNSURE);
	}
}

static struct ts_span followed(double low, double value, double high)
{
	return (struct ts_span){true, false, value, low, high, TS_FROM_RESULT, (double)NAN};
}

/* The pH that follows from KH: GH decides; a note where its middle is beyond all slack, 8.3. */
static void test_ph__that_follows_from_kh(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	assert_int_equal(at(&t, TS_PH, followed(7.4, 7.9, 8.6)), TS_SUITS);
	assert_int_equal(t.m.limiting, -1);
	near_to(t.m.at[TS_PH].reading, 7.9); /* said as it is, and not by its worse end */
	assert_int_equal(at(&t, TS_PH, followed(8.2, 8.3, 9.2)), TS_SUITS);
	assert_int_equal(at(&t, TS_PH, followed(8.4, 8.4, 8.4)), TS_TOLERATES);
	assert_int_equal(at(&t, TS_PH, followed(6, 8.4, 10)), TS_TOLERATES);
	/* beside a mineral it never leads */
	t.p.at[TS_PH] = followed(8.4, 8.6, 9);
	assert_int_equal(at(&t, TS_GH, exactly(18)), TS_TOLERATES);
	assert_int_equal(t.m.limiting, TS_GH);
	/* with a KH above comfort it takes none away, as one that was read does */
	set_pair(&t);
	t.s.water.usual.kh_dh = (struct ts_envelope){no_range, no_range, {NULL, 0}, NULL};
	t.p.at[TS_KH] = exactly(10); /* likes to 8 by kind of water, bears 12 */
	assert_int_equal(at(&t, TS_PH, followed(7.6, 8.1, 8.5)), TS_SUITS);
	assert_int_equal(at(&t, TS_PH, exactly(8.1)), TS_TOLERATES);
}

/* 1 in comfort, 0.5 at the ends of tolerated, 0.25 at the end of the slack and beyond it. */
static void test_ph__suitability(void **state)
{
	static const double rows[][2] = {{7, 1}, {6.8, 1}, {7.2, 1}, {7.35, 0.75}, {7.5, 0.5},
		{7.9, 0.375}, {8.3, 0.25}, {9.5, 0.25}, {6.65, 0.75}, {6.1, 0.375}, {4, 0.25}};
	struct pair t;

	(void)state;
	set_pair(&t);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		at(&t, TS_PH, exactly(rows[i][0]));
		near_to(t.m.at[TS_PH].suitability, rows[i][1]);
	}
	t.s.water.usual.ph.preferred = no_range; /* a tolerated middle is half known comfort */
	at(&t, TS_PH, exactly(7));
	near_to(t.m.at[TS_PH].suitability, 0.5);
}

/* Without a comfortable band the best is 0.5; an open end reaches as far as fresh water goes. */
static void test_suitability__no_comfort_and_open_ends(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	t.s.water.usual.gh_dh.preferred = no_range;
	at(&t, TS_GH, exactly(10));
	near_to(t.m.at[TS_GH].suitability, 0.5);
	near_to(t.m.at[TS_GH].uncomfortable_by, 0);
	t.s.water.usual.gh_dh =
		band(-(double)INFINITY, -(double)INFINITY, 10, (double)INFINITY, PRACTICE);
	at(&t, TS_GH, exactly(0));
	near_to(t.m.at[TS_GH].suitability, 1);
	near_to(t.m.at[TS_GH].tolerated.low, 0);
	near_to(t.m.at[TS_GH].preferred.low, 0);
	near_to(t.m.at[TS_GH].tolerated.high, 100);
	at(&t, TS_GH, exactly(55));
	near_to(t.m.at[TS_GH].suitability, 0.55);
}

/* Breeding before wild before usual, each where the record has it. */
static void test_band__variants(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	t.s.water.wild.gh_dh = band(1, 2, 4, 6, PRACTICE);
	t.s.water.breeding.gh_dh = band(0, 1, 2, 3, PRACTICE);
	verdict(&t);
	near_to(t.m.at[TS_GH].tolerated.high, 20);
	assert_null(t.m.at[TS_GH].variant);
	t.k.wild = true;
	verdict(&t);
	near_to(t.m.at[TS_GH].tolerated.high, 6);
	assert_string_equal(t.m.at[TS_GH].variant, "wild");
	near_to(t.m.at[TS_TEMPERATURE].tolerated.high, 30);
	t.k.breeding = true;
	verdict(&t);
	near_to(t.m.at[TS_GH].tolerated.high, 3);
	assert_string_equal(t.m.at[TS_GH].variant, "breeding");
}

/*
 * KH by kind of water never excludes above, and below only under the floor of hard water (3 dH),
 * Malawi (3.5), Tanganyika (5) and Victoria (2); inside the band it holds no `suits` back.
 */
static void test_home_kh__floors(void **state)
{
	static const struct {
		int home;
		double floor;
	} rows[] = {{TS_HOME_HARD, 3}, {TS_HOME_MALAWI, 3.5}, {TS_HOME_TANGANYIKA, 5},
		{TS_HOME_VICTORIA, 2}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		double floor = rows[i].floor;
		struct pair t;

		set_pair(&t);
		t.s.home_water = rows[i].home;
		t.s.water.usual.kh_dh = (struct ts_envelope){no_range, no_range, {NULL, 0}, NULL};
		assert_int_equal(at(&t, TS_KH, exactly(floor - 0.01)), TS_EXCLUDED);
		assert_int_equal(at(&t, TS_KH, exactly(floor)), TS_TOLERATES);
		assert_int_equal(at(&t, TS_KH, exactly(40)), TS_TOLERATES);
		assert_int_equal(at(&t, TS_KH, exactly(10)), TS_SUITS);
		assert_string_equal(t.m.at[TS_KH].source[0], "by kind of water");
		/* a doubtful reading excludes when all of it lies under the floor */
		assert_int_equal(at(&t, TS_KH, between(floor - 1, floor - 0.1)), TS_EXCLUDED);
		assert_int_equal(at(&t, TS_KH, between(floor - 1, floor + 0.1)), TS_UNSURE);
		assert_int_equal(at(&t, TS_KH, lived(floor - 0.1, 10)), TS_EXCLUDED);
	}
}

static void test_home_kh__soft_water_animals_are_never_excluded_by_it(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	t.s.water.usual.kh_dh = (struct ts_envelope){no_range, no_range, {NULL, 0}, NULL};
	for (double kh = 0; kh <= 30; kh += 0.5) {
		enum ts_verdict v = at(&t, TS_KH, exactly(kh));

		assert_int_equal(v, t.m.at[TS_KH].outside_by == 0 ? TS_SUITS : TS_TOLERATES);
	}
	assert_true(t.m.at[TS_KH].outside_by > 0);
	/* to 12 dH: a doubtful figure inside is enough, but not for animals of hard water */
	assert_int_equal(at(&t, TS_KH, between(9, 14)), TS_SUITS);
	t.s.home_water = TS_HOME_HARD;
	assert_int_equal(at(&t, TS_KH, between(3.1, 7.1)), TS_TOLERATES);
}

/* Too much of it is no yes for bee shrimps, and for soft-water animals that are to breed. */
static void test_home_kh__ceilings(void **state)
{
	static const struct {
		int home;
		bool breeding;
		double ceiling;
	} rows[] = {{TS_HOME_BEE_SHRIMP, false, 5}, {TS_HOME_BEE_SHRIMP, true, 5},
		{TS_HOME_BLACK, true, 3}, {TS_HOME_CLEAR_SOFT, true, 5}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct pair t;

		set_pair(&t);
		t.s.home_water = rows[i].home;
		t.k.breeding = rows[i].breeding;
		t.s.water.usual.kh_dh = (struct ts_envelope){no_range, no_range, {NULL, 0}, NULL};
		assert_true(at(&t, TS_KH, exactly(rows[i].ceiling)) <= TS_TOLERATES);
		assert_int_equal(at(&t, TS_KH, exactly(rows[i].ceiling + 0.01)), TS_UNSURE);
		assert_int_equal(at(&t, TS_KH, between(1, rows[i].ceiling + 0.1)), TS_UNSURE);
	}
}

/* Wild and breeding animals bear no more KH than others of their water; comfort lies inside. */
static void test_home_kh__bands_lie_in_one_another(void **state)
{
	(void)state;
	for (int home = 0; home < TS_HOME__COUNT; home++) {
		struct ts_parameter_fit kh[3];
		struct pair t;

		set_pair(&t);
		t.s.home_water = home;
		t.s.water.usual.kh_dh = (struct ts_envelope){no_range, no_range, {NULL, 0}, NULL};
		for (int i = 0; i < 3; i++) {
			t.k = (struct ts_keeping){.wild = i == 1, .breeding = i == 2};
			verdict(&t);
			kh[i] = t.m.at[TS_KH];
			assert_true(kh[i].tolerated.low <= kh[i].preferred.low &&
				    kh[i].preferred.high <= kh[i].tolerated.high &&
				    kh[i].preferred.low < kh[i].preferred.high);
			assert_true(kh[i].tolerated.high <= kh[0].tolerated.high);
		}
		assert_null(kh[0].variant);
		assert_string_equal(kh[1].variant, "wild");
		assert_string_equal(kh[2].variant, "breeding");
		assert_memory_equal(&kh[1].tolerated, &kh[2].tolerated, sizeof kh[1].tolerated);
	}
}

/* Invertebrates are excluded from 0.008 mg/L of copper, unsure where it may be; fish from 0.02. */
static void test_copper__by_kind_of_animal(void **state)
{
	static const struct {
		int kind;
		double low, high;
		enum ts_verdict want;
	} rows[] = {{0, 0.0199, 0.0199, TS_SUITS}, {0, 0.02, 0.02, TS_UNSURE}, {0, 1, 1, TS_UNSURE},
		{1, 0.0079, 0.0079, TS_SUITS}, {1, 0.008, 0.008, TS_EXCLUDED},
		{1, 0, 0.008, TS_UNSURE}, {4, 0.008, 0.05, TS_EXCLUDED}};
	struct pair t;

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		set_pair(&t);
		t.s.kind = rows[i].kind;
		t.p.poisons.copper_low_mg_l = rows[i].low;
		t.p.poisons.copper_mg_l = rows[i].high;
		assert_int_equal(verdict(&t), rows[i].want);
		if (rows[i].want == TS_SUITS)
			assert_true(isnan(t.m.copper_borne_mg_l));
		else
			near_to(t.m.copper_borne_mg_l, rows[i].kind ? 0.008 : 0.02);
	}
}

static void test_poisons__cap_but_never_better(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	t.p.poisons.found = TS_POISON_AMMONIA;
	assert_int_equal(verdict(&t), TS_UNSURE);
	t.p.poisons.found = TS_POISON_NITRITE;
	assert_int_equal(verdict(&t), TS_UNSURE);
	t.p.poisons.found = TS_POISON_NITRATE | TS_POISON_CHLORINE;
	assert_int_equal(verdict(&t), TS_SUITS);
	t.p.poisons.found = TS_POISON_AMMONIA;
	assert_int_equal(at(&t, TS_GH, exactly(40)), TS_EXCLUDED);
	t.p.unusual =
		TS_UNUSUAL_SOFTENED; /* that caps even this: the figures are not the water's */
	assert_int_equal(verdict(&t), TS_UNSURE);
}

static void test_missing__gh_and_temperature(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	assert_int_equal(at(&t, TS_TEMPERATURE, (struct ts_span){0}), TS_SUITS);
	assert_true(t.m.own_temperature && isnan(t.m.fit) && !isnan(t.m.order));
	assert_int_equal(at(&t, TS_GH, (struct ts_span){0}), TS_UNSURE);
	assert_true(t.m.gh_missing);
	assert_int_equal(at(&t, TS_PH, exactly(3)), TS_EXCLUDED); /* what is known still counts */
}

/*
 * Weights 0.35, 0.40, 0.25; half way from comfortable to tolerated the suitability is 0.55, so that
 * the mean counts for (0.55 - 0.4) / 0.4 and the least for the rest.
 */
static void test_fit__by_hand(void **state)
{
	const double half = 0.55, mean = (0.55 - 0.4) / 0.4;
	struct pair t;

	(void)state;
	set_pair(&t);
	verdict(&t);
	near_to(t.m.fit, 1);
	at(&t, TS_GH, exactly(18));
	near_to(t.m.fit, mean * pow(half, 0.4) + (1 - mean) * half);
	at(&t, TS_GH, exactly(10));
	at(&t, TS_TEMPERATURE, exactly(28)); /* as far from comfort */
	near_to(t.m.fit, mean * pow(half, 0.35) + (1 - mean) * half);
	at(&t, TS_TEMPERATURE, exactly(25));
	at(&t, TS_KH, exactly(12)); /* as far; it limits, since it is the animal's own */
	near_to(t.m.fit, mean * pow(half, 0.25) + (1 - mean) * half);
	at(&t, TS_KH, exactly(6));
	at(&t, TS_PH, exactly(7.5)); /* 0.5; pH does not limit */
	near_to(t.m.fit, pow(0.5, 0.25));
	at(&t, TS_KH, exactly(11)); /* 0.775: the lesser of KH and pH is the reaction */
	near_to(t.m.fit, (0.775 - 0.4) / 0.4 * pow(0.5, 0.25) + (1 - (0.775 - 0.4) / 0.4) * 0.775);
	set_pair(&t);
	t.s.water.usual.kh_dh = (struct ts_envelope){no_range, no_range, {NULL, 0}, NULL};
	at(&t, TS_KH, exactly(10)); /* mixed water: comfort to 8, tolerated to 12: half weight */
	near_to(t.m.fit, pow(half, (0.5 * 0.15 + 0.1) / (0.35 + 0.4 + 0.5 * 0.15 + 0.1)));
	t.p.at[TS_KH] = t.p.at[TS_PH] = t.p.at[TS_TEMPERATURE] = (struct ts_span){0};
	at(&t, TS_GH, exactly(18));
	assert_true(isnan(t.m.fit)); /* what was not read makes none better */
	near_to(t.m.order, half);    /* for sorting what was counts */
	at(&t, TS_GH, (struct ts_span){0});
	assert_true(isnan(t.m.fit) && isnan(t.m.order));
}

/* The worst verdict, then the largest weighted loss; pH only where no mineral excludes. */
static void test_limiting__what_decides(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	verdict(&t);
	assert_int_equal(t.m.limiting, -1);
	t.p.at[TS_GH] = exactly(18);           /* loses 0.40 x 0.45 */
	at(&t, TS_TEMPERATURE, exactly(28.4)); /* 0.35 x 0.54 */
	assert_int_equal(t.m.limiting, TS_TEMPERATURE);
	at(&t, TS_TEMPERATURE, exactly(28)); /* 0.35 x 0.45 */
	assert_int_equal(t.m.limiting, TS_GH);
	at(&t, TS_TEMPERATURE, exactly(30.5)); /* unsure comes first */
	assert_int_equal(t.m.limiting, TS_TEMPERATURE);
	set_pair(&t);
	t.p.at[TS_KH] = exactly(13); /* 0.15 x 0.675 */
	at(&t, TS_PH, exactly(7.6)); /* 0.10 x 0.53, and beyond what is tolerated */
	assert_int_equal(t.m.limiting, TS_KH);
	at(&t, TS_KH, exactly(11)); /* 0.15 x 0.225 */
	assert_int_equal(t.m.limiting, TS_PH);
	set_pair(&t);
	t.p.at[TS_KH] = exactly(17);
	assert_int_equal(at(&t, TS_PH, exactly(10)), TS_EXCLUDED);
	assert_int_equal(t.m.limiting, TS_KH);
	at(&t, TS_KH, exactly(6));
	assert_int_equal(t.m.limiting, TS_PH);
}

/* Excluded by one thing alone, and by no more than could be mended or mismeasured. */
static void test_near_miss(void **state)
{
	static const struct {
		enum ts_parameter p;
		double near, far;
	} rows[] = {{TS_GH, 24, 24.1}, {TS_KH, 17, 17.1}, {TS_TEMPERATURE, 32.5, 32.6},
		{TS_SALINITY, 1.5, 1.6}};
	struct pair t;

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		set_pair(&t);
		assert_int_equal(at(&t, rows[i].p, exactly(rows[i].near)), TS_EXCLUDED);
		assert_int_equal(ts_match_near_miss(&t.m), rows[i].p);
		at(&t, rows[i].p, exactly(rows[i].far));
		assert_int_equal(ts_match_near_miss(&t.m), -1);
	}
	set_pair(&t);
	t.k.breeding = true; /* slack 0.4, doubt 0.2: 0.6 to 0.7 beyond is near */
	t.s.water.usual.ph = band(6.5, 6.8, 7.2, 7.5, PUBLISHED);
	at(&t, TS_PH, exactly(8.19));
	assert_int_equal(ts_match_near_miss(&t.m), TS_PH);
	at(&t, TS_PH, exactly(8.21));
	assert_int_equal(ts_match_near_miss(&t.m), -1);
	set_pair(&t);
	verdict(&t);
	assert_int_equal(ts_match_near_miss(&t.m), -1);
	t.p.at[TS_GH] = exactly(24);
	at(&t, TS_TEMPERATURE, exactly(32));
	assert_int_equal(ts_match_near_miss(&t.m), -1);
}

/* Length x 4, 6, 8 or 12; shoals at least 45, 60 or 80 cm; rounded up to 5. */
static void test_tank__length_and_volume(void **state)
{
	static const struct {
		double cm, least;
		int activity;
		double length, litres;
	} rows[] = {{10, 1, 0, 60, 55}, {10, 1, 1, 40, 20}, {10, 1, 2, 80, 130},
		{10, 1, 3, 120, 300}, {10.1, 1, 0, 65, 70}, {2.4, 5, 0, 45, 25},
		{2.5, 5, 0, 60, 55}, {4, 5, 0, 60, 55}, {4.1, 5, 0, 80, 130}, {2.4, 4, 0, 15, 5},
		{30, 1, 0, 180, 540}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_species s = {.adult_length_cm = rows[i].cm,
			.group = {.least = rows[i].least},
			.needs = {.activity = rows[i].activity}};

		near_to(ts_match_tank_length_cm(&s), rows[i].length);
		near_to(ts_match_tank_volume_l(&s), rows[i].litres);
		s.needs.tank_length_cm = 33;
		near_to(ts_match_tank_length_cm(&s), 33);
		s.needs.tank_length_cm = 1;
		near_to(ts_match_tank_length_cm(&s), 1);
	}
}

/* In units of the reading's doubt; pH and an end at nothing are no limits. */
static void test_distance__to_the_nearest_limit(void **state)
{
	struct pair t;

	(void)state;
	set_pair(&t);
	assert_int_equal(verdict(&t), TS_SUITS);
	near_to(t.m.distance, 1); /* 25 C, comfortable to 26 */
	assert_int_equal(t.m.nearest, TS_TEMPERATURE);
	(void)at(&t, TS_GH, exactly(6.5));
	near_to(t.m.distance, 0.5);
	assert_int_equal(t.m.nearest, TS_GH);
	(void)at(&t, TS_GH, between(7, 13)); /* four from both ends are 1.33 of its doubt of 3 */
	near_to(t.m.distance, 1);
	(void)at(&t, TS_GH, between(6, 10));
	near_to(t.m.distance, 1);
	(void)at(&t, TS_TEMPERATURE, lived(23.25, 25));
	near_to(t.m.distance, 0.25);
	t.s.water.usual.gh_dh = band(0, 0, 16, 20, PRACTICE);
	(void)at(&t, TS_GH, exactly(0.5));
	near_to(t.m.distance, 0.25);
	(void)at(&t, TS_GH, exactly(5)); /* tolerated: to the ends of what is tolerated */
	(void)at(&t, TS_KH, exactly(3));
	assert_int_equal(t.m.verdict, TS_TOLERATES);
	near_to(t.m.distance, 1);
	assert_int_equal(t.m.nearest, TS_KH);
}

static void test_sort__verdict_distance_name_form(void **state)
{
	struct ts_species a = {.species = "Exempla a"}, b = {.species = "Exempla b"};
	struct ts_species form = {.species = "Exempla a", .form = "red"};
	struct ts_match m[] = {{.species = &b, .verdict = TS_EXCLUDED, .distance = 0.9},
		{.species = &b, .verdict = TS_SUITS, .distance = (double)NAN},
		{.species = &b, .verdict = TS_SUITS, .distance = 0.5},
		{.species = &form, .verdict = TS_SUITS, .distance = 0.5},
		{.species = &a, .verdict = TS_SUITS, .distance = 0.5},
		{.species = &b, .verdict = TS_SUITS, .distance = 0.8},
		{.species = &a, .verdict = TS_UNSURE, .distance = 1}};

	(void)state;
	ts_match_sort(m, sizeof m / sizeof *m);
	assert_true(m[0].distance == 0.8);
	assert_ptr_equal(m[1].species, &a);
	assert_ptr_equal(m[2].species, &form);
	assert_ptr_equal(m[3].species, &b);
	assert_true(isnan(m[4].distance));
	assert_int_equal(m[5].verdict, TS_UNSURE);
	assert_int_equal(m[6].verdict, TS_EXCLUDED);
	m[0] = (struct ts_match){.species = &a, .distance = (double)NAN};
	m[1] = (struct ts_match){.species = &b, .distance = 0.1};
	for (int round = 0; round < 2;
		round++) { /* what has no distance stands last, from either side */
		ts_match_sort(m, 2);
		assert_ptr_equal(m[0].species, &b);
		assert_ptr_equal(m[1].species, &a);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_band__tolerated_and_preferred_ends),
		cmocka_unit_test(test_band__doubt_of_the_limit_by_grade),
		cmocka_unit_test(test_memory__two_limits_are_not_alone),
		cmocka_unit_test(test_salinity__fresh_water_animals),
		cmocka_unit_test(test_share__of_a_doubtful_reading),
		cmocka_unit_test(test_exposure__worst_end),
		cmocka_unit_test(test_ph__slack),
		cmocka_unit_test(test_ph__that_follows_from_kh),
		cmocka_unit_test(test_ph__suitability),
		cmocka_unit_test(test_suitability__no_comfort_and_open_ends),
		cmocka_unit_test(test_band__variants),
		cmocka_unit_test(test_home_kh__floors),
		cmocka_unit_test(test_home_kh__soft_water_animals_are_never_excluded_by_it),
		cmocka_unit_test(test_home_kh__ceilings),
		cmocka_unit_test(test_home_kh__bands_lie_in_one_another),
		cmocka_unit_test(test_copper__by_kind_of_animal),
		cmocka_unit_test(test_poisons__cap_but_never_better),
		cmocka_unit_test(test_missing__gh_and_temperature),
		cmocka_unit_test(test_fit__by_hand),
		cmocka_unit_test(test_limiting__what_decides),
		cmocka_unit_test(test_near_miss),
		cmocka_unit_test(test_tank__length_and_volume),
		cmocka_unit_test(test_distance__to_the_nearest_limit),
		cmocka_unit_test(test_sort__verdict_distance_name_form),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
