/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a log tells of how fast a value moves by itself. The logs come from tanks whose truth is
 * known: days with a gain, water changed on its day, read with a kit's error.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "../given.h"
#include "../random.h"
#include "base/date.h"
#include "stock/fit.h"

#define DAYS 200

/* A year's log of one value. */
struct tank {
	double level[DAYS];
	struct ts_reading readings[8];
	char dates[8][12];
	struct ts_fit_case asked;
};

static void put_date(char *into, long day)
{
	static const int lengths[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
	int month = 0;

	while (day >= lengths[month])
		day -= lengths[month++];
	snprintf(into, 12, "2026-%02d-%02d", (month + 1) % 100, (int)(day + 1) % 100);
}

static void run(
	struct tank *t, double start, double gain, double share, unsigned every, double poured)
{
	double c = start;

	memset(t, 0, sizeof *t);
	for (unsigned day = 0; day < DAYS; day++) {
		t->level[day] = c;
		c += gain;
		if (every && (day + 1) % every == 0)
			c += share * (poured - c);
	}
	t->asked = (struct ts_fit_case){.readings = t->readings,
		.today = -1,
		.change_share = every ? share : 0,
		.change_days = every ? every : 7,
		.poured = {[TS_FIT_GH] = {(double)NAN, 0},
			[TS_FIT_KH] = {(double)NAN, 0},
			[TS_FIT_NO3] = {poured, 0}},
		.pure_top_up = true};
}

/* The rate of nitrate; false: the log does not tell it. */
static bool rate_of(const struct tank *t, struct ts_rate *ret)
{
	struct ts_fit fit;

	ts_fit_make(&t->asked, table(), &fit);
	*ret = fit.rate[TS_FIT_NO3];
	return ret->readings > 0;
}

static void read_no3(struct tank *t, long day, double error)
{
	size_t i = t->asked.count++;

	put_date(t->dates[i], day);
	t->readings[i].date = t->dates[i];
	t->readings[i].no3_mg_l = value(fmax(0, t->level[day] + error));
}

/* Two readings twelve weeks apart, through twelve changes. */
static void test_fit__through_the_changes(void **state)
{
	struct tank t;
	struct ts_rate r;

	(void)state;
	run(&t, 20, 2, 0.25, 7, 5);
	read_no3(&t, 3, 0);
	read_no3(&t, 87, 0);
	assert_true(rate_of(&t, &r));
	assert_true(fabs(r.a_day - 2) < 0.1);
	assert_true(r.low < 2 && r.high > 2);
	assert_true(r.readings == 2 && r.days == 84);
}

static void test_fit__without_changes_it_is_the_slope(void **state)
{
	struct tank t;
	struct ts_rate r;

	(void)state;
	run(&t, 10, 0.5, 0, 0, 0);
	read_no3(&t, 0, 0);
	read_no3(&t, 30, 0);
	read_no3(&t, 60, 0);
	assert_true(rate_of(&t, &r));
	assert_true(fabs(r.a_day - 0.5) < 1e-3);
	t.asked.pure_top_up = false; /* 20 mg/L is topped up, a hundredth a day */
	t.asked.poured[TS_FIT_NO3].value = 20;
	t.asked.evaporated_share = 0.01;
	assert_true(rate_of(&t, &r));
	assert_true(fabs(r.a_day - 0.3) < 1e-3);
}

/* What lies further back than half a year is of another tank; two readings at any distance do. */
static void test_fit__the_newest_half_year(void **state)
{
	struct tank t;
	struct ts_rate r;

	(void)state;
	run(&t, 10, 0.5, 0, 0, 0);
	read_no3(&t, 0, 80);
	read_no3(&t, 190, 0);
	assert_true(rate_of(&t, &r));
	assert_true(r.days == 190);
	read_no3(&t, 150, 0);
	assert_true(rate_of(&t, &r));
	assert_true(r.readings == 2 && r.days == 40 && fabs(r.a_day - 0.5) < 1e-3);
}

static void test_fit__not_from_one_day_nor_through_unknown_water(void **state)
{
	struct tank t;
	struct ts_rate r;

	(void)state;
	run(&t, 10, 0.5, 0.3, 7, 5);
	assert_false(rate_of(&t, &r));
	read_no3(&t, 5, 0);
	read_no3(&t, 5, 0);
	assert_false(rate_of(&t, &r));
	read_no3(&t, 40, 0);
	t.readings[2].no3_mg_l.kind = TS_MEASURE_BELOW;
	assert_false(rate_of(&t, &r));
	t.readings[2].no3_mg_l.kind = TS_MEASURE_VALUE;
	assert_true(rate_of(&t, &r));
	t.asked.poured[TS_FIT_NO3].value = (double)NAN;
	assert_false(rate_of(&t, &r));
}

/* The true rate lies in the stated interval at least 90 times in 100, whatever kit and routine. */
static void test_fit__interval_holds(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 17, 400), held = 0;

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct tank t;
		struct ts_rate rate;
		double gain, poured;
		unsigned readings;

		random_case(&r, i);
		gain = any_in(&r, 0.2, 4, 0.1);
		poured = any_in(&r, 0, 30, 5);
		run(&t, any_in(&r, 5, 80, 5), gain, any_in(&r, 0.1, 0.5, 0.05),
			3 + any_below(&r, 12), poured);
		readings = 2 + any_below(&r, 5);
		for (unsigned k = 0; k < readings; k++) {
			long day = (long)(k * 27 + any_below(&r, 20));
			double half = fmax(5, 0.3 * t.level[day]);

			read_no3(&t, day, any_in(&r, -half, half, half / 10));
		}
		assert_true(rate_of(&t, &rate));
		held += rate.low <= gain && gain <= rate.high;
	}
	print_message("# %u of %u intervals hold the truth\n", held, count);
	assert_true(held >= 0.9 * count);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_fit__through_the_changes),
		cmocka_unit_test(test_fit__without_changes_it_is_the_slope),
		cmocka_unit_test(test_fit__the_newest_half_year),
		cmocka_unit_test(test_fit__not_from_one_day_nor_through_unknown_water),
		cmocka_unit_test(test_fit__interval_holds),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
