/* SPDX-License-Identifier: Apache-2.0 */
/* Quantities as people write them. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "units/units.h"

static struct ts_measure read_as(enum ts_quantity q, const char *text)
{
	struct ts_measure m = {0};
	struct ts_scan scan;

	if (!ts_scan_measure(q, text, strlen(text), &m, &scan))
		fail_msg("'%s' was refused: %s", text, ts_scan_says(scan.fault));
	return m;
}

static void refused(enum ts_quantity q, const char *text, enum ts_scan_fault fault)
{
	struct ts_measure m;
	struct ts_scan scan;

	assert_false(ts_scan_measure(q, text, strlen(text), &m, &scan));
	assert_int_equal(scan.fault, fault);
}

static void near(double got, double want)
{
	assert_true(got - want < 1e-4 * (1 + (want < 0 ? -want : want)) &&
		    want - got < 1e-4 * (1 + (want < 0 ? -want : want)));
}

static void test_scan__one_value_in_many_spellings(void **state)
{
	static const char *const spellings[] = {"14", "14 dH", "14dGH",
		"14 \xc2\xb0"
		"dH",
		"14.0 odH", "249.871 mg/L CaCO3", "249,871 ppm CaCO3", "2.49657 mmol/L",
		"24.9871 \xc2\xb0"
		"fH",
		"17.5302 Clark", "14.5970 gpg", " 14 DH ", NULL};

	(void)state;
	for (size_t i = 0; spellings[i]; i++)
		near(read_as(TS_Q_GH, spellings[i]).value, 14);
}

/* As people say it: words for the signs, and what changes nothing of the figure. */
static void test_scan__words_in_front_of_the_figure(void **state)
{
	static const char *const about[] = {
		"about 14 dH", "around 14", "approx. 14", "ca. 14 dH", "~14", "roughly 14", NULL};
	static const char *const below[] = {
		"less than 14", "under 14 dH", "below 14", "at most 14", "up to 14", "<14", NULL};
	static const char *const above[] = {
		"more than 14", "over 14 dH", "above 14", "at least 14", ">14", NULL};
	struct ts_measure m;

	(void)state;
	for (size_t i = 0; about[i]; i++) {
		m = read_as(TS_Q_GH, about[i]);
		assert_int_equal(m.kind, TS_MEASURE_VALUE);
		near(m.value, 14);
	}
	for (size_t i = 0; below[i]; i++)
		assert_int_equal(read_as(TS_Q_GH, below[i]).kind, TS_MEASURE_BELOW);
	for (size_t i = 0; above[i]; i++)
		assert_int_equal(read_as(TS_Q_GH, above[i]).kind, TS_MEASURE_ABOVE);
	m = read_as(TS_Q_GH, "between 7 and 9 dH");
	assert_int_equal(m.kind, TS_MEASURE_RANGE);
	near(m.low, 7);
	near(m.high, 9);
	refused(TS_Q_GH, "about", TS_SCAN_NO_NUMBER);
	refused(TS_Q_GH, "over", TS_SCAN_NO_NUMBER);
}

static void test_scan__temperature_scales(void **state)
{
	(void)state;
	near(read_as(TS_Q_TEMPERATURE, "77 F").value, 25);
	near(read_as(TS_Q_TEMPERATURE, "298.15 K").value, 25);
	near(read_as(TS_Q_TEMPERATURE, "-1 C").value, -1);
	near(read_as(TS_Q_TEMPERATURE, "22\xe2\x80\x93"
				       "26 \xc2\xb0"
				       "C")
			.low,
		22);
}

static void test_scan__ranges_doubt_and_one_sided(void **state)
{
	struct ts_measure m = read_as(TS_Q_PH, "6.5-7.5");

	(void)state;
	assert_int_equal(m.kind, TS_MEASURE_RANGE);
	near(m.low, 6.5);
	near(m.high, 7.5);
	m = read_as(TS_Q_GH, "14 \xc2\xb1 1 dH");
	assert_int_equal(m.kind, TS_MEASURE_DOUBT);
	near(m.low, 13);
	near(m.high, 15);
	m = read_as(TS_Q_GH, ">14 dH");
	assert_int_equal(m.kind, TS_MEASURE_ABOVE);
	near(m.low, 14);
	assert_true(m.high > 1e300);
	m = read_as(TS_Q_ION, "<0.05 mg/L");
	assert_int_equal(m.kind, TS_MEASURE_BELOW);
	near(m.low, 0);
	near(m.high, 0.05);
}

static void test_scan__nitrogen_is_not_nitrate(void **state)
{
	(void)state;
	near(read_as(TS_Q_NITRATE, "10 mg/L N").value, 44.27);
	near(read_as(TS_Q_NITRATE, "10 mg/L NO3").value, 10);
	refused(TS_Q_NITRATE, "10", TS_SCAN_UNIT_NEEDED);
	refused(TS_Q_NITRATE, "10 ppm", TS_SCAN_UNIT_UNKNOWN);
}

static void test_scan__bare_ppm_says_what_it_assumed(void **state)
{
	struct ts_measure m;
	struct ts_scan scan;

	(void)state;
	assert_true(ts_scan_measure(TS_Q_GH, "250 ppm", 7, &m, &scan));
	near(m.value, 14.0072);
	assert_non_null(scan.assumed);
	assert_true(ts_scan_measure(TS_Q_GH, "14 dH", 5, &m, &scan));
	assert_null(scan.assumed);
}

static void test_scan__nought_needs_no_unit(void **state)
{
	static const enum ts_quantity of[] = {TS_Q_NITRATE, TS_Q_NITRITE, TS_Q_AMMONIA, TS_Q_ION};

	(void)state;
	for (size_t i = 0; i < sizeof of / sizeof *of; i++) {
		near(read_as(of[i], "0").high, 0);
		near(read_as(of[i], "0.0").value, 0);
		near(read_as(of[i], "0..0").high, 0);
		refused(of[i], "0.1", TS_SCAN_UNIT_NEEDED);
		refused(of[i], ">0", TS_SCAN_UNIT_NEEDED);
		refused(of[i], "0..", TS_SCAN_UNIT_NEEDED);
		refused(of[i], "0..5", TS_SCAN_UNIT_NEEDED);
		refused(of[i], "0 +- 0.1", TS_SCAN_UNIT_NEEDED);
	}
}

/* What a pen or a meter shows; a small figure of conductivity may be mS/cm. */
static void test_scan__a_pen_and_a_meter_write_no_unit(void **state)
{
	(void)state;
	near(read_as(TS_Q_TDS, "320").value, 320);
	near(read_as(TS_Q_CONDUCTIVITY, "450").value, 450);
	near(read_as(TS_Q_CONDUCTIVITY, "10").value, 10);
	near(read_as(TS_Q_CONDUCTIVITY, "0").value, 0);
	refused(TS_Q_CONDUCTIVITY, "0.45", TS_SCAN_UNIT_NEEDED);
	near(read_as(TS_Q_CONDUCTIVITY, "0.45 mS/cm").value, 450);
}

/* The US gallon is 231 cubic inches, 3.785411784 L: NIST Handbook 44, appendix C. */
static void test_scan__volumes_in_words(void **state)
{
	struct ts_measure m;
	struct ts_scan scan;

	(void)state;
	near(read_as(TS_Q_VOLUME, "15gal").value, 56.78117676);
	near(read_as(TS_Q_VOLUME, "15 gallons").value, 56.78117676);
	near(read_as(TS_Q_VOLUME, "15 UK gal").value, 68.19135);
	near(read_as(TS_Q_VOLUME, "112 litres").value, 112);
	near(read_as(TS_Q_VOLUME, "112 liter").value, 112);
	assert_true(ts_scan_measure(TS_Q_VOLUME, "1 gal", 5, &m, &scan));
	assert_non_null(scan.assumed);
}

static void test_scan__bare_hours_but_no_bare_time(void **state)
{
	(void)state;
	near(read_as(TS_Q_HOURS, "1").value, 1);
	near(read_as(TS_Q_HOURS, "2 days").value, 48);
	refused(TS_Q_TIME, "7", TS_SCAN_UNIT_NEEDED); /* days, of a holiday */
}

static void test_scan__thousands_or_decimals(void **state)
{
	(void)state;
	refused(TS_Q_CONDUCTIVITY, "1,200 uS/cm", TS_SCAN_TWO_READINGS);
	refused(TS_Q_CONDUCTIVITY, "1.200 uS/cm", TS_SCAN_TWO_READINGS);
	near(read_as(TS_Q_PH, "7.125").value, 7.125); /* 7125 is no pH, so there is one reading */
	near(read_as(TS_Q_ION, "0.125 mg/L").value, 0.125);
}

static void test_scan__faults(void **state)
{
	(void)state;
	refused(TS_Q_GH, "", TS_SCAN_EMPTY);
	refused(TS_Q_GH, "soft", TS_SCAN_NO_NUMBER);
	refused(TS_Q_GH, "5 dHx", TS_SCAN_UNIT_UNKNOWN);
	refused(TS_Q_GH, "5 C", TS_SCAN_UNIT_UNKNOWN);
	refused(TS_Q_GH, "12..6", TS_SCAN_BACKWARDS);
	refused(TS_Q_PH, "74", TS_SCAN_OUTSIDE);
	refused(TS_Q_GH, "1e400", TS_SCAN_UNIT_UNKNOWN);
	refused(TS_Q_GH, "nan", TS_SCAN_NO_NUMBER);
	refused(TS_Q_GH, "-3 dH", TS_SCAN_OUTSIDE);
	refused(TS_Q_ION, "99999999999999999999999999 mg/L", TS_SCAN_OUTSIDE);
}

static void test_range__open_ends(void **state)
{
	struct ts_range r;
	struct ts_scan scan;

	(void)state;
	assert_true(ts_scan_range(TS_Q_GH, "..12 dH", 7, &r, &scan));
	assert_true(r.low < -1e300);
	near(r.high, 12);
	assert_true(ts_scan_range(TS_Q_TEMPERATURE, "22.. C", 6, &r, &scan));
	near(r.low, 22);
	assert_true(r.high > 1e300);
}

/* A value written in any unit of the table is read back as it was: a thousand, over all rows. */
static void test_table__values_round_trip_through_every_unit(void **state)
{
	(void)state;
	for (size_t i = 0; i < 1000; i++) {
		const struct ts_unit_row *unit = &ts_units[i % ts_units_count];
		const struct ts_quantity_row *q = &ts_quantities[unit->quantity];
		double share = (double)(i * 7919 % 1009 + 1) / 1011, got, x;
		struct ts_scan scan;
		char text[80];

		x = fmax(q->min, 0) + share * fmin(q->max - fmax(q->min, 0), 1000);
		snprintf(text, sizeof text, "%.10f %s", (x - unit->offset) / unit->factor,
			unit->spelling);
		if (!ts_scan_value(unit->quantity, text, strlen(text), &got, &scan))
			fail_msg("'%s': %s", text, ts_scan_says(scan.fault));
		if (!(fabs(got - x) <= 1e-7 * (1 + x)))
			fail_msg("'%s' is %.12g, not %.12g", text, got, x);
	}
}

/* How a unit is shown reads back as that unit; the first row of a quantity that has one is shown.
 */
static void test_table__what_is_shown_is_read_as_that_unit(void **state)
{
	size_t shown = 0;

	(void)state;
	for (size_t i = 0; i < ts_units_count; i++) {
		const struct ts_unit_row *unit = &ts_units[i];
		double x = fmax(ts_quantities[unit->quantity].min, 1) + 1, got;
		struct ts_scan scan;
		char text[80];

		if (i == 0 || ts_units[i - 1].quantity != unit->quantity)
			assert_true(unit->shown || unit->quantity == TS_Q_NITROGEN ||
				    unit->quantity == TS_Q_AMMONIA); /* "mg/L N" is clearer */
		if (!unit->shown)
			continue;
		shown++;
		snprintf(text, sizeof text, "%.10f %s", (x - unit->offset) / unit->factor,
			unit->shown);
		if (!ts_scan_value(unit->quantity, text, strlen(text), &got, &scan))
			fail_msg("'%s': %s", text, ts_scan_says(scan.fault));
		if (!(fabs(got - x) <= 1e-7 * (1 + x)))
			fail_msg("'%s' is %.12g, not %.12g", text, got, x);
	}
	assert_true(shown >= 50);
}

static void test_table__first_row_of_a_quantity_is_its_own_unit(void **state)
{
	int last = -1;

	(void)state;
	for (size_t i = 0; i < ts_units_count; i++) {
		assert_true((int)ts_units[i].quantity >= last); /* sorted: they are searched so */
		if ((int)ts_units[i].quantity != last) {
			assert_true(ts_units[i].factor == 1);
			assert_true(ts_units[i].offset == 0);
		}
		last = (int)ts_units[i].quantity;
		assert_true(ts_units[i].factor > 0);
	}
}

/* By atomic masses (IUPAC 2021, four figures) and the grain and gallons of trade. */
static void test_table__factors_by_hand(void **state)
{
	static const struct {
		enum ts_quantity quantity;
		const char *text;
		double value;
	} rows[] = {{TS_Q_GH, "1 mmol/L", 5.608}, {TS_Q_GH, "100 mg/L CaCO3", 5.603},
		{TS_Q_KH, "1 meq/L", 2.804}, {TS_Q_ALKALINITY, "50.04 mg/L CaCO3", 1},
		{TS_Q_CALCIUM, "1 mmol/L", 40.08}, {TS_Q_CALCIUM, "100 mg/L CaCO3", 40.04},
		{TS_Q_MAGNESIUM, "1 mmol/L", 24.31}, {TS_Q_AMMONIA, "1 mg/L NH3", 0.8225},
		{TS_Q_AMMONIA, "1 mg/L NH4", 0.7765}, {TS_Q_AMMONIA, "1 mg/L N", 1},
		{TS_Q_LENGTH, "1 in", 2.54}, {TS_Q_LENGTH, "1 m", 100},
		{TS_Q_VOLUME, "1 US gal", 3.785}, {TS_Q_TEMPERATURE, "77 F", 25}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_scan scan;
		double got;

		if (!ts_scan_value(
			    rows[i].quantity, rows[i].text, strlen(rows[i].text), &got, &scan))
			fail_msg("'%s': %s", rows[i].text, ts_scan_says(scan.fault));
		if (!(fabs(got - rows[i].value) <= 3e-4 * rows[i].value))
			fail_msg("'%s' is %.6g, not %.6g", rows[i].text, got, rows[i].value);
	}
}

/* Nothing in one unit is nothing in another, but for warmth. */
static void test_table__nothing_is_nothing(void **state)
{
	(void)state;
	for (size_t i = 0; i < ts_units_count; i++)
		assert_true(ts_units[i].offset == 0 || ts_units[i].quantity == TS_Q_TEMPERATURE);
}

/* More degrees than tap water has, without a unit: asked for; a unit settles it. */
static void test_scan__bare_hardness_beyond_degrees_is_asked_for(void **state)
{
	static const char *const asked[] = {"31", "160", "100..200", "20..40", ">31", "250", NULL};
	static const char *const taken[] = {
		"30", "10..30", ">14", "35 dH", "160 ppm", "..12", NULL};

	(void)state;
	for (size_t i = 0; asked[i]; i++) {
		refused(TS_Q_GH, asked[i], TS_SCAN_OTHER_UNIT);
		refused(TS_Q_KH, asked[i], TS_SCAN_OTHER_UNIT);
	}
	for (size_t i = 0; taken[i]; i++) {
		read_as(TS_Q_GH, taken[i]);
		read_as(TS_Q_KH, taken[i]);
	}
	near(read_as(TS_Q_TEMPERATURE, "31").value, 31);
}

static const char *asked_of_pair(
	const char *gh, const char *kh, struct ts_text *what, struct ts_text *remedy)
{
	struct ts_scan_pair pair = {0};
	struct ts_measure m;
	struct ts_scan scan;

	ts_text_open(what, NULL);
	ts_text_open(remedy, NULL);
	if (ts_scan_measure(TS_Q_GH, gh, strlen(gh), &m, &scan))
		ts_scan_pair_look(&pair, TS_Q_GH, gh, &scan);
	if (ts_scan_measure(TS_Q_KH, kh, strlen(kh), &m, &scan))
		ts_scan_pair_look(&pair, TS_Q_KH, kh, &scan);
	if (!pair.bare || !pair.other)
		return "";
	ts_scan_pair_ask(&pair, what, remedy);
	return ts_text_get(remedy);
}

/* A unit on one of GH and KH is suggested for the other. */
static void test_scan__a_pair_of_hardnesses(void **state)
{
	static const struct {
		const char *gh, *kh, *asks;
	} rows[] = {{"160 ppm", "5",
			    "if it is ppm (mg/L of calcium carbonate), write \"5 ppm\", which is "
			    "0.3 dH; if it is degrees, write \"5 dH\""},
		{"10", "20 fH",
			"if it is fH, write \"10 fH\", which is 5.6 dH; if it is degrees, write "
			"\"10 dH\""},
		{"160 ppm", "0", ""}, {"160 ppm", "5 dH", ""}, {"9", "3.2 meq/L", ""},
		{"9", "5", ""}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_text what, remedy;

		assert_string_equal(
			asked_of_pair(rows[i].gh, rows[i].kh, &what, &remedy), rows[i].asks);
		ts_text_drop(&what);
		ts_text_drop(&remedy);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_scan__one_value_in_many_spellings),
		cmocka_unit_test(test_scan__words_in_front_of_the_figure),
		cmocka_unit_test(test_scan__temperature_scales),
		cmocka_unit_test(test_scan__ranges_doubt_and_one_sided),
		cmocka_unit_test(test_scan__nitrogen_is_not_nitrate),
		cmocka_unit_test(test_scan__bare_ppm_says_what_it_assumed),
		cmocka_unit_test(test_scan__a_pen_and_a_meter_write_no_unit),
		cmocka_unit_test(test_scan__nought_needs_no_unit),
		cmocka_unit_test(test_scan__volumes_in_words),
		cmocka_unit_test(test_scan__bare_hours_but_no_bare_time),
		cmocka_unit_test(test_scan__thousands_or_decimals),
		cmocka_unit_test(test_scan__faults),
		cmocka_unit_test(test_range__open_ends),
		cmocka_unit_test(test_table__values_round_trip_through_every_unit),
		cmocka_unit_test(test_table__what_is_shown_is_read_as_that_unit),
		cmocka_unit_test(test_table__first_row_of_a_quantity_is_its_own_unit),
		cmocka_unit_test(test_table__factors_by_hand),
		cmocka_unit_test(test_table__nothing_is_nothing),
		cmocka_unit_test(test_scan__bare_hardness_beyond_degrees_is_asked_for),
		cmocka_unit_test(test_scan__a_pair_of_hardnesses),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
