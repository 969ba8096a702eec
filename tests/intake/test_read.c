/* SPDX-License-Identifier: Apache-2.0 */
/* What a report may be made of: bytes, line ends, letters, memory; and that the tables are sound.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "../stingy.h"
#include "intake/lexer.h"
#include "intake/reader.h"

/* Reads one whole text; the caller drops the arena. */
static enum ts_status read_bytes(
	const char *bytes, size_t len, struct ts_arena *arena, struct ts_report *ret)
{
	struct ts_intake *in = ts_intake_open(NULL);
	struct ts_report_refusal refusal;
	enum ts_status status;

	assert_non_null(in);
	ts_arena_open(arena, NULL);
	assert_int_equal(ts_intake_feed(in, bytes, len, &refusal), TS_OK);
	status = ts_intake_finish(in, NULL, arena, ret);
	ts_intake_close(in);
	return status;
}

static void gh_is(const char *bytes, size_t len, double gh_dh, unsigned line)
{
	struct ts_arena arena;
	struct ts_report r;

	assert_int_equal(read_bytes(bytes, len, &arena, &r), TS_OK);
	assert_true(fabs(r.reading.gh_dh.value - gh_dh) < 1e-3);
	assert_int_equal(
		r.origins[ts_shape_field(&ts_shape_reading, "GH") - ts_shape_reading.fields].line,
		line);
	ts_arena_drop(&arena);
}

#define GH_IS(text, gh_dh, line) gh_is(text, sizeof(text) - 1, gh_dh, line)

static void test_lines__every_kind_of_line_end(void **state)
{
	(void)state;
	GH_IS("a\nGesamth\xc3\xa4rte 14,2 \xc2\xb0"
	      "dH\n",
		14.2, 2);
	GH_IS("a\r\nb\r\nTotal hardness 14.2 dH\r\n", 14.2, 3);
	GH_IS("a\rTotal hardness 14.2 dH\r", 14.2, 2);
	GH_IS("Total hardness 14.2 dH", 14.2, 1);
	GH_IS("\fTotal hardness\t14.2 dH\f", 14.2, 1);
}

static void test_lines__byte_order_mark_and_latin_1(void **state)
{
	static const char latin[] = "x\nGesamth\xe4rte 5 \x96 7 \xb0"
				    "dH\n";
	struct ts_arena arena;
	struct ts_report r;

	(void)state;
	GH_IS("\xef\xbb\xbfGesamth\xc3\xa4rte;14,2;\xc2\xb0"
	      "dH\n",
		14.2, 1);
	GH_IS("Gesamth\xe4rte 14,2 \xb0"
	      "dH\n",
		14.2, 1);
	assert_int_equal(read_bytes(latin, sizeof latin - 1, &arena, &r), TS_OK);
	assert_int_equal(r.latin, 2);
	assert_true(fabs(r.reading.gh_dh.high - 7) < 1e-6);
	ts_arena_drop(&arena);
}

static void test_lines__other_signs_for_degree_and_micro(void **state)
{
	(void)state;
	GH_IS("Gesamth\xc3\xa4rte 14,2 \xcb\x9a"
	      "dH\n",
		14.2, 1);
	GH_IS("Gesamth\xc3\xa4rte 14,2 \xc2\xba dH\n", 14.2, 1);
	GH_IS("Gesamth\xc3\xa4rte 14,2 \xc2\xb0 dH\n", 14.2, 1);
	GH_IS("Gesamth\xc3\xa4rte 14,2\xc2\xb2 dH\n", 14.2, 1); /* a footnote, not 142 */
}

static void refused(const char *bytes, size_t len, const char *word)
{
	struct ts_intake *in = ts_intake_open(NULL);
	struct ts_report_refusal refusal = {NULL, NULL};

	assert_int_equal(ts_intake_feed(in, bytes, len, &refusal), TS_BAD_INPUT);
	assert_non_null(strstr(refusal.what, word));
	assert_true(*refusal.remedy);
	/* It stays refused, whatever follows. */
	assert_int_equal(ts_intake_feed(in, "pH 7\n", 5, &refusal), TS_BAD_INPUT);
	ts_intake_close(in);
}

static void test_lines__binaries_are_refused_with_the_way_out(void **state)
{
	(void)state;
	refused("%PDF-1.7\n", 9, "PDF");
	refused("PK\x03\x04rest", 8, "packed");
	refused("\xff\xfep\0H\0", 6, "UTF-16");
	refused("pH 7.2\n\0\n", 9, "zero bytes");
	refused("\x1f\x8b\x08", 3, "compressed");
}

static void test_lines__a_line_without_end_stays_bounded(void **state)
{
	struct ts_intake *in = ts_intake_open(NULL);
	struct ts_report_refusal refusal;
	struct ts_arena arena;
	struct ts_report r;
	static const char piece[] = "Calcium 80 mg/L ";

	(void)state;
	for (int i = 0; i < 20000; i++)
		assert_int_equal(ts_intake_feed(in, piece, sizeof piece - 1, &refusal), TS_OK);
	ts_arena_open(&arena, NULL);
	assert_int_equal(ts_intake_finish(in, NULL, &arena, &r), TS_NO);
	assert_int_equal(r.gap_count, 1);
	ts_arena_drop(&arena);
	ts_intake_close(in);
}

static void test_read__a_million_samples_are_one_range(void **state)
{
	struct ts_intake *in = ts_intake_open(NULL);
	struct ts_report_refusal refusal;
	struct ts_arena arena;
	struct ts_report r;

	(void)state;
	for (int i = 0; i < 3000; i++) {
		assert_int_equal(ts_intake_feed(in, "Calcium 80 mg/L\n", 16, &refusal), TS_OK);
		assert_int_equal(ts_intake_feed(in, "Calcium 91 mg/L\n", 16, &refusal), TS_OK);
	}
	ts_arena_open(&arena, NULL);
	assert_int_equal(ts_intake_finish(in, NULL, &arena, &r), TS_OK);
	assert_int_equal(r.value_count, TS_REPORT_VALUES_MOST);
	assert_int_equal(r.value_count + r.value_more, 6000);
	assert_true(fabs(r.reading.ca_mg_l.low - 80) < 1e-9);
	assert_true(fabs(r.reading.ca_mg_l.high - 91) < 1e-9);
	ts_arena_drop(&arena);
	ts_intake_close(in);
}

/* Places are kept of 64 cells; a zone behind them is none, and what follows is read. */
static void test_read__a_zone_behind_the_cells_that_are_kept(void **state)
{
	static const char zone[] = "Supply zone;North\n", hardness[] = "Total hardness 14.2 dH\n";
	struct ts_arena arena;
	struct ts_report r;
	char text[256];

	(void)state;
	for (size_t cells = 60; cells < 90; cells++) {
		size_t len = cells;

		memset(text, ';', cells);
		memcpy(text + len, zone, sizeof zone - 1);
		len += sizeof zone - 1;
		memcpy(text + len, hardness, sizeof hardness - 1);
		len += sizeof hardness - 1;
		assert_int_equal(read_bytes(text, len, &arena, &r), TS_OK);
		assert_int_equal(r.zone_count, cells < 63 ? 1 : 0);
		assert_true(fabs(r.reading.gh_dh.value - 14.2) < 1e-6);
		ts_arena_drop(&arena);
	}
}

static void test_read__nothing_at_all(void **state)
{
	struct ts_arena arena;
	struct ts_report r;

	(void)state;
	assert_int_equal(read_bytes("", 0, &arena, &r), TS_NO);
	assert_int_equal(r.taken, 0);
	ts_arena_drop(&arena);
}

static void test_terms__every_pattern_compiles_and_begins_with_a_letter(void **state)
{
	struct ts_lexer *lexer = ts_lexer_open(NULL);

	(void)state;
	assert_non_null(lexer);
	assert_int_equal(ts_lexer_unsound(lexer), 0);
	ts_lexer_close(lexer);
}

static void test_terms__rows_name_what_exists(void **state)
{
	(void)state;
	for (size_t i = 0; i < ts_terms_count; i++) {
		const struct ts_term *t = &ts_terms[i];
		bool known = false;

		if ((t->kind == TS_TERM_LABEL || t->kind == TS_TERM_FORMULA) && t->key)
			assert_non_null(ts_shape_field(&ts_shape_reading, t->key));
		if (t->kind != TS_TERM_UNIT || *t->unit == '%')
			continue;
		assert_true(t->scale > 0);
		for (size_t u = 0; u < ts_units_count; u++)
			known |= strcmp(ts_units[u].spelling, t->unit) == 0;
		assert_true(known);
	}
	for (size_t i = 0; i < ts_legals_count; i++)
		assert_non_null(ts_shape_field(&ts_shape_reading, ts_legals[i].key));
}

static void test_terms__no_row_stands_twice(void **state)
{
	(void)state;
	for (size_t i = 0; i < ts_terms_count; i++) {
		for (size_t j = i + 1; j < ts_terms_count; j++) {
			if (ts_terms[i].kind == ts_terms[j].kind &&
				strcmp(ts_terms[i].pattern, ts_terms[j].pattern) == 0 &&
				ts_terms[i].says == ts_terms[j].says)
				fail_msg("'%s' stands twice", ts_terms[i].pattern);
		}
	}
}

static const char sample[] = "Zone;Parameter;Unit;Limit;Mean;Max\n"
			     "North;Nitrate;mg/l;50;12;14\n"
			     "North;pH;;6.5-9.5;7.6;7.1\n"
			     "\nNitrite 0.02 mg/L\nTotal hardness 1,9 mmol/l (10,6 dH)\n";

static enum ts_status read_stingily(struct stingy *stingy)
{
	const struct ts_allocator allocator = {stingy_resize, stingy};
	struct ts_intake *in = ts_intake_open(&allocator);
	struct ts_report_refusal refusal;
	struct ts_arena arena;
	struct ts_report r;
	enum ts_status status;

	if (!in)
		return TS_NO_MEMORY;
	ts_arena_open(&arena, &allocator);
	status = ts_intake_feed(in, sample, sizeof sample - 1, &refusal);
	if (status == TS_OK)
		status = ts_intake_finish(in, NULL, &arena, &r);
	ts_arena_drop(&arena);
	ts_intake_close(in);
	return status;
}

static void test_read__every_failed_allocation_is_survived(void **state)
{
	size_t n = 0;

	(void)state;
	for (;; n++) {
		struct stingy stingy = {n, 0, false};
		enum ts_status status = read_stingily(&stingy);

		assert_int_equal(stingy.out, 0);
		if (!stingy.refused) {
			assert_int_equal(status, TS_OK);
			break;
		}
		assert_int_equal(status, TS_NO_MEMORY);
	}
	assert_true(n > 700); /* a pattern a row, and more */
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_lines__every_kind_of_line_end),
		cmocka_unit_test(test_lines__byte_order_mark_and_latin_1),
		cmocka_unit_test(test_lines__other_signs_for_degree_and_micro),
		cmocka_unit_test(test_lines__binaries_are_refused_with_the_way_out),
		cmocka_unit_test(test_lines__a_line_without_end_stays_bounded),
		cmocka_unit_test(test_read__a_million_samples_are_one_range),
		cmocka_unit_test(test_read__a_zone_behind_the_cells_that_are_kept),
		cmocka_unit_test(test_read__nothing_at_all),
		cmocka_unit_test(test_terms__every_pattern_compiles_and_begins_with_a_letter),
		cmocka_unit_test(test_terms__rows_name_what_exists),
		cmocka_unit_test(test_terms__no_row_stands_twice),
		cmocka_unit_test(test_read__every_failed_allocation_is_survived),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
