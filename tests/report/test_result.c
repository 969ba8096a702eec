/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rows of results as JSON and as CSV: every kind, what is not known, and texts that need quoting.
 * CSV by the rules of RFC 4180, sections 2.1 to 2.7.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include "report/csv.h"

struct part {
	const char *name, *unit;
	struct ts_range band;
	double value;
};

struct line {
	const char *name;
	bool yes;
	size_t count;
	double length_cm;
	struct ts_texts tags;
	struct part one;
	struct part *maybe, *parts;
	size_t part_count;
	struct part *reasons;
	size_t reason_count;
};

static const struct ts_result_field part_fields[] = {
	TS_R_ROW_TEXT(struct part, "name", name, "which"),
	TS_R_ROW_TEXT(struct part, "unit", unit, "of its figures"),
	TS_R_ROW_RANGE(struct part, "band", band, 1, "from, to"),
	TS_R_ROW_NUMBER(struct part, "value", value, 2, "figure"),
};
static const struct ts_result_shape part_shape = TS_R_SHAPE("part", part_fields, struct part);

static const struct ts_result_field line_fields[] = {
	TS_R_ROW_TEXT(struct line, "name", name, "whose"),
	TS_R_ROW_BOOL(struct line, "yes", yes, "or no"),
	TS_R_ROW_COUNT(struct line, "count", count, "how many"),
	TS_R_ROW_NUMBER(struct line, "length_cm", length_cm, 1, "how long"),
	TS_R_ROW_TEXTS(struct line, "tags", tags, "words"),
	TS_R_ROW_SUB(struct line, "one", one, struct part, &part_shape, "inside"),
	TS_R_ROW_MAYBE(struct line, "maybe", maybe, struct part, &part_shape, "or not"),
	TS_R_ROW_LIST(struct line, "parts", parts, part_count, struct part, &part_shape, "same"),
	TS_R_ROW_LIST(struct line, "reasons", reasons, reason_count, struct part, &part_shape,
		"different"),
};
static const struct ts_result_shape line_shape = TS_R_SHAPE("line", line_fields, struct line);

static const char *tags[] = {"a", "b"};

static void fill(struct line lines[2], struct part parts[2][2], struct part *reason)
{
	parts[0][0] = (struct part){"gh", "dH", {1, 2}, 1.5};
	parts[0][1] = (struct part){"ca", "mg/L", {(double)NAN, (double)NAN}, (double)NAN};
	parts[1][0] = (struct part){"gh", "dH", {3, (double)INFINITY}, 4};
	parts[1][1] = (struct part){"ca", "mg/L", {5, 6}, 7};
	*reason = (struct part){"why, \"so\"", "", {0, 1}, 2};
	lines[0] = (struct line){.name = "first",
		.yes = true,
		.count = 3,
		.length_cm = 4.25,
		.tags = {tags, 2},
		.one = {"x", "C", {8, 9}, 10},
		.parts = parts[0],
		.part_count = 2};
	lines[1] = (struct line){.length_cm = (double)NAN,
		.one = {NULL, NULL, {8, 9}, 10},
		.maybe = reason,
		.parts = parts[1],
		.part_count = 2,
		.reasons = reason,
		.reason_count = 1};
}

static void test_csv__header_has_units_and_every_kind_has_a_column(void **state)
{
	struct part parts[2][2], reason;
	struct line lines[2];
	struct ts_text out;

	(void)state;
	fill(lines, parts, &reason);
	ts_text_open(&out, NULL);
	ts_csv_write(&out, &line_shape, lines, 2);
	assert_string_equal(ts_text_get(&out),
		"name,yes,count,length_cm,tags,"
		"one_name,one_unit,one_band_low,one_band_high,one_value,"
		"maybe_name,maybe_unit,maybe_band_low,maybe_band_high,maybe_value,"
		"gh_band_low_dh,gh_band_high_dh,gh_value_dh,"
		"ca_band_low_mg_l,ca_band_high_mg_l,ca_value_mg_l,reasons\r\n"
		"first,yes,3,4.3,a; b,x,C,8,9,10,,,,,,1,2,1.5,,,,\r\n"
		",no,0,,,,,8,9,10,\"why, \"\"so\"\"\",,0,1,2,3,,4,5,6,7,\"why, \"\"so\"\"\"\r\n");
	ts_text_drop(&out);
}

static void test_csv__of_nothing_is_a_header(void **state)
{
	struct ts_text out;

	(void)state;
	ts_text_open(&out, NULL);
	ts_csv_write(&out, &part_shape, NULL, 0);
	assert_string_equal(ts_text_get(&out), "name,unit,band_low,band_high,value\r\n");
	ts_text_drop(&out);
}

static void test_csv__line_breaks_are_quoted(void **state)
{
	const struct part part = {"two\nlines", "", {0, 0}, 0};
	struct ts_text out;

	(void)state;
	ts_text_open(&out, NULL);
	ts_csv_write(&out, &part_shape, &part, 1);
	assert_string_equal(ts_text_get(&out),
		"name,unit,band_low,band_high,value\r\n\"two\nlines\",,0,0,0\r\n");
	ts_text_drop(&out);
}

static void test_csv__controls_and_broken_utf8_are_marked(void **state)
{
	const struct part part = {"a\033[1m\xc2\x9b\xff\tü", "\x7f", {0, 0}, 0};
	struct ts_text out;

	(void)state;
	ts_text_open(&out, NULL);
	ts_csv_write(&out, &part_shape, &part, 1);
	assert_string_equal(ts_text_get(&out), "name,unit,band_low,band_high,value\r\n"
					       "a\ufffd[1m\ufffd\ufffd\tü,\ufffd,0,0,0\r\n");
	ts_text_drop(&out);
}

static void test_json__controls_are_escaped_and_broken_utf8_is_marked(void **state)
{
	const struct part part = {"a\033\xc2\x9b\xff\tü\x7f", "", {0, 0}, 0};
	struct ts_text out;

	(void)state;
	ts_text_open(&out, NULL);
	ts_result_json(&out, "0", "test", NULL, &part_shape, &part);
	assert_non_null(strstr(ts_text_get(&out), "\"a\\u001b\\u009b\ufffd\\u0009ü\\u007f\""));
	ts_text_drop(&out);
}

static void test_json__every_kind(void **state)
{
	struct part parts[2][2], reason;
	struct line lines[2];
	struct ts_text out;

	(void)state;
	fill(lines, parts, &reason);
	ts_text_open(&out, NULL);
	ts_result_json(&out, "0", "test", NULL, &line_shape, &lines[0]);
	assert_string_equal(ts_text_get(&out),
		"{\n  \"tapshoal\": \"0\",\n  \"format\": 1,\n  \"command\": \"test\",\n"
		"  \"name\": \"first\",\n  \"yes\": true,\n  \"count\": 3,\n"
		"  \"length_cm\": 4.3,\n  \"tags\": [\n    \"a\",\n    \"b\"\n  ],\n"
		"  \"one\": {\n    \"name\": \"x\",\n    \"unit\": \"C\",\n"
		"    \"band\": [\n      8,\n      9\n    ],\n    \"value\": 10\n  },\n"
		"  \"maybe\": null,\n  \"parts\": [\n"
		"    {\n      \"name\": \"gh\",\n      \"unit\": \"dH\",\n"
		"      \"band\": [\n        1,\n        2\n      ],\n      \"value\": 1.5\n    },\n"
		"    {\n      \"name\": \"ca\",\n      \"unit\": \"mg/L\",\n"
		"      \"band\": [\n        null,\n        null\n      ],\n"
		"      \"value\": null\n    }\n  ],\n  \"reasons\": []\n}\n");
	ts_text_drop(&out);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_csv__header_has_units_and_every_kind_has_a_column),
		cmocka_unit_test(test_csv__of_nothing_is_a_header),
		cmocka_unit_test(test_csv__line_breaks_are_quoted),
		cmocka_unit_test(test_csv__controls_and_broken_utf8_are_marked),
		cmocka_unit_test(test_json__controls_are_escaped_and_broken_utf8_is_marked),
		cmocka_unit_test(test_json__every_kind),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
