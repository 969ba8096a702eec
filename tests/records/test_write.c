/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is written is read back to the same: every shipped record, every example water, and values
 * that YAML would take for something else.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "records/load.h"
#include "records/write.h"

/* Written, read, written again: both texts, and the bytes of both structs where they hold none. */
static void check(const struct ts_shape *shape, const void *object, void *again, bool explain)
{
	struct ts_text first, second;
	struct ts_arena arena;
	struct ts_findings findings;

	ts_text_open(&first, NULL);
	ts_text_open(&second, NULL);
	ts_arena_open(&arena, NULL);
	ts_findings_open(&findings, NULL);
	ts_records_write(&first, shape, object, explain);
	if (ts_records_parse(shape, ts_text_get(&first), first.len, "written", &arena, again,
		    &findings) != TS_OK)
		fail_msg("%s: %s", findings.count ? findings.items[0].what : "?",
			ts_text_get(&first));
	ts_records_write(&second, shape, again, explain);
	assert_string_equal(ts_text_get(&first), ts_text_get(&second));
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
	ts_text_drop(&second);
	ts_text_drop(&first);
}

static void test_write__every_shipped_record(void **state)
{
	struct ts_catalogue catalogue;

	(void)state;
	ts_catalogue_open(&catalogue, NULL);
	assert_int_equal(ts_catalogue_add_folder(&catalogue, TS_SPECIES_DIR, NULL), TS_OK);
	assert_true(catalogue.count > 500);
	for (size_t i = 0; i < catalogue.count; i++) {
		const struct ts_species *s = catalogue.items[i];
		struct ts_species again;

		check(&ts_shape_species, s, &again, false);
		assert_true(again.adult_length_cm == s->adult_length_cm);
		assert_true(again.water.usual.ph.tolerated.low == s->water.usual.ph.tolerated.low);
		assert_true(again.group.comfortable == s->group.comfortable);
		assert_int_equal(again.cautions, s->cautions);
		assert_int_equal(again.needs.flow, s->needs.flow);
		assert_int_equal(again.synonyms.count, s->synonyms.count);
		check(&ts_shape_species, s, &again, true);
	}
	ts_catalogue_close(&catalogue);
}

static struct ts_measure measured(enum ts_measure_kind kind, double value, double low, double high)
{
	return (struct ts_measure){value, low, high, kind};
}

static void test_write__every_form_of_a_measure(void **state)
{
	struct ts_reading readings[2] = {
		{.date = "2026-11-25",
			.ph = measured(TS_MEASURE_VALUE, 7.25, 7.25, 7.25),
			.gh_dh = measured(TS_MEASURE_DOUBT, 14, 13, 15),
			.kh_dh = measured(TS_MEASURE_RANGE, 5, 4, 6),
			.cu_mg_l = measured(TS_MEASURE_BELOW, 0.03, 0, 0.03),
			.no3_mg_l = measured(TS_MEASURE_ABOVE, 100, 100, (double)INFINITY),
			.method = TS_METHOD_DROPS},
		{.ph = measured(TS_MEASURE_VALUE, 8, 8, 8)}};
	struct ts_water water = {.name = "tap",
				.softened = true,
				.readings = readings,
				.reading_count = 2},
			again;
	struct ts_text text;

	(void)state;
	check(&ts_shape_water, &water, &again, false);
	ts_text_open(&text, NULL);
	ts_records_write(&text, &ts_shape_water, &water, false);
	assert_string_equal(ts_text_get(&text), "name: tap\n"
						"softened: yes\n"
						"readings:\n"
						"  -\n"
						"    date: 2026-11-25\n"
						"    pH: 7.25\n"
						"    GH: 14 +- 1 dH\n"
						"    KH: 4..6 dH\n"
						"    NO3: \">100 mg/L\"\n"
						"    Cu: <0.03 mg/L\n"
						"    method: drops\n"
						"  -\n"
						"    pH: 8\n");
	ts_text_drop(&text);
}

static void test_write__every_unit_is_read_back(void **state)
{
	struct ts_reading reading = {0};
	struct ts_water water = {.readings = &reading, .reading_count = 1}, again;

	(void)state;
	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *field = &ts_shape_reading.fields[i];
		struct ts_measure m = measured(TS_MEASURE_RANGE, 6.5, 6.125, 6.875);

		if (field->quantity == TS_Q_GRAVITY)
			m = measured(TS_MEASURE_RANGE, 1.0045, 1.004, 1.005);
		if (field->kind == TS_MEASURE)
			memcpy((char *)&reading + field->offset, &m, sizeof m);
	}
	check(&ts_shape_water, &water, &again, false);
}

static void test_write__texts_that_yaml_would_misread(void **state)
{
	static const char *const texts[] = {"kitchen: cold", "a # b", "[one]", "{x}", "- dash",
		"\"quoted\"", "back\\slash", "two\nlines", " blank ", "*star", "&and", "it's", "%",
		"comma, here", "\tx", "néon", "a - b", "?", ">", "\033[1m", "\x7f", "\xc2\x9b",
		"two\r"};

	(void)state;
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		struct ts_reading reading = {.ph = measured(TS_MEASURE_VALUE, 7, 7, 7)};
		struct ts_water water = {
			.name = texts[i], .readings = &reading, .reading_count = 1};
		struct ts_water again = {0};
		struct ts_text text;
		struct ts_arena arena;

		ts_text_open(&text, NULL);
		ts_arena_open(&arena, NULL);
		ts_records_write(&text, &ts_shape_water, &water, false);
		assert_int_equal(ts_records_parse(&ts_shape_water, ts_text_get(&text), text.len,
					 "written", &arena, &again, NULL),
			TS_OK);
		assert_string_equal(again.name, texts[i]);
		ts_arena_drop(&arena);
		ts_text_drop(&text);
	}
}

/* A file that its own reader refuses would be worse than one odd letter. */
static void test_write__bytes_that_are_no_utf8_are_read_as_latin_1(void **state)
{
	struct ts_reading reading = {.ph = measured(TS_MEASURE_VALUE, 7, 7, 7)};
	struct ts_water again, water = {.name = "K\xfc"
						"che",
				       .readings = &reading,
				       .reading_count = 1};
	struct ts_arena arena;
	struct ts_text text;

	(void)state;
	ts_text_open(&text, NULL);
	ts_arena_open(&arena, NULL);
	ts_records_write(&text, &ts_shape_water, &water, false);
	assert_int_equal(ts_records_parse(&ts_shape_water, ts_text_get(&text), text.len, "written",
				 &arena, &again, NULL),
		TS_OK);
	assert_string_equal(again.name, "Küche");
	ts_arena_drop(&arena);
	ts_text_drop(&text);
}

static const char *hardness_only(
	void *state, const struct ts_shape *shape, const struct ts_field *field)
{
	(void)state;
	return shape == &ts_shape_reading && strcmp(field->key, "GH") == 0 ? "line 3" : NULL;
}

static void test_write__a_note_stands_above_its_key(void **state)
{
	struct ts_reading reading = {.ph = measured(TS_MEASURE_VALUE, 7, 7, 7),
		.gh_dh = measured(TS_MEASURE_VALUE, 14, 14, 14)};
	struct ts_water water = {.readings = &reading, .reading_count = 1};
	struct ts_text text;

	(void)state;
	ts_text_open(&text, NULL);
	ts_records_write_noted(&text, &ts_shape_water, &water, hardness_only, NULL);
	assert_string_equal(ts_text_get(&text), "readings:\n"
						"  -\n"
						"    pH: 7\n"
						"    # line 3\n"
						"    GH: 14 dH\n");
	ts_text_drop(&text);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_write__every_shipped_record),
		cmocka_unit_test(test_write__every_form_of_a_measure),
		cmocka_unit_test(test_write__every_unit_is_read_back),
		cmocka_unit_test(test_write__texts_that_yaml_would_misread),
		cmocka_unit_test(test_write__bytes_that_are_no_utf8_are_read_as_latin_1),
		cmocka_unit_test(test_write__a_note_stands_above_its_key),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
