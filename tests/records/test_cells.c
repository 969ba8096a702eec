/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rows of comma-separated values: what RFC 4180 shows, what people's tables hold beside it, faults
 * with their places, and that it does not matter in what pieces the bytes come.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "records/cells.h"

struct source {
	const char *bytes;
	size_t len, piece; /* handed over at a time at the most */
};

static size_t hand_over(void *state, char *bytes, size_t room)
{
	struct source *s = state;
	size_t len = s->len < room ? s->len : room;

	len = s->piece && len > s->piece ? s->piece : len;
	memcpy(bytes, s->bytes, len);
	s->bytes += len;
	s->len -= len;
	return len;
}

static struct ts_cells *opened(struct source *source)
{
	struct ts_cells *cells = calloc(1, sizeof *cells);

	assert_non_null(cells);
	cells->source = hand_over;
	cells->state = source;
	return cells;
}

/* "LINE: [COLUMN text][LINE.COLUMN text]!FAULT@LINE.COLUMN" a row, joined by blanks. */
static void dump(const char *bytes, size_t len, size_t piece, struct ts_text *ret)
{
	struct source source = {bytes, len, piece};
	struct ts_cells *c = opened(&source);

	while (ts_cells_next(c)) {
		ts_text_put(ret, ret->len ? " " : "");
		ts_text_number(ret, c->line, 0);
		ts_text_put(ret, ":");
		for (size_t i = 0; i < c->count; i++) {
			ts_text_put(ret, "[");
			if (c->cell[i].line != c->line) {
				ts_text_number(ret, c->cell[i].line, 0);
				ts_text_put(ret, ".");
			}
			ts_text_number(ret, c->cell[i].column, 0);
			ts_text_put(ret, " ");
			ts_text_add(ret, c->cell[i].text, c->cell[i].len);
			ts_text_put(ret, "]");
			assert_int_equal(strlen(c->cell[i].text), c->cell[i].len);
		}
		if (!c->fault)
			continue;
		ts_text_put(ret, "!");
		ts_text_number(ret, c->fault, 0);
		ts_text_put(ret, "@");
		ts_text_number(ret, c->fault_line, 0);
		ts_text_put(ret, ".");
		ts_text_number(ret, c->fault_column, 0);
	}
	free(c);
}

static const struct {
	const char *bytes, *rows;
} cases[] = {
	/* RFC 4180, section 2, rules 1 to 7 */
	{"aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "1:[1 aaa][5 bbb][9 ccc] 2:[1 zzz][5 yyy][9 xxx]"},
	{"aaa,bbb,ccc\r\nzzz,yyy,xxx", "1:[1 aaa][5 bbb][9 ccc] 2:[1 zzz][5 yyy][9 xxx]"},
	{"\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx",
		"1:[2 aaa][8 bbb][14 ccc] 2:[1 zzz][5 yyy][9 xxx]"},
	{"\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx",
		"1:[2 aaa][8 b\r\nbb][2.6 ccc] 3:[1 zzz][5 yyy][9 xxx]"},
	{"\"aaa\",\"b\"\"bb\",\"ccc\"", "1:[2 aaa][8 b\"bb][16 ccc]"},
	{"a, b ,c", "1:[1 a][3  b ][7 c]"},
	{",\r\n,", "1:[1 ][2 ] 2:[1 ][2 ]"},
	/* line ends, empty lines, marks, other separators */
	{"a,b\nc,d\n", "1:[1 a][3 b] 2:[1 c][3 d]"},
	{"a,b\rc,d\r", "1:[1 a][3 b] 2:[1 c][3 d]"},
	{"\n\r\n\na\n\n\nb\n", "4:[1 a] 7:[1 b]"},
	{"", ""},
	{"\r\n\r\n", ""},
	{"\xef\xbb\xbf"
	 "a,b",
		"1:[1 a][3 b]"},
	{"\xef\xbb\xbf\"a\",b", "1:[2 a][5 b]"},
	{"\xef\xbb", "1:[1 \xef\xbb]!5@1.1"},
	{"\xc3\xa4,\xe2\x80\x93,b", "1:[1 \xc3\xa4][3 \xe2\x80\x93][5 b]"},
	{"a;b\n1,5;2\n", "1:[1 a][3 b] 2:[1 1,5][5 2]"},
	{"a\tb\n1,5\t2\n", "1:[1 a][3 b] 2:[1 1,5][5 2]"},
	{"\"a;b\",c;d\n", "1:[2 a;b][7 c;d]"},
	{"a\n1;2\n", "1:[1 a] 2:[1 1;2]"},
	{"\"\"", "1:[2 ]"},
	{"\"\"\"\"", "1:[2 \"]"},
	/* faults; the row behind is whole again */
	{"a,b\"c,d\ne,f,g", "1:[1 a][3 b]!1@1.4 2:[1 e][3 f][5 g]"},
	{"a,\"b\"c,d\ne", "1:[1 a][4 b]!2@1.6 2:[1 e]"},
	{"a,\"b\" ,d\ne", "1:[1 a][4 b]!2@1.6 2:[1 e]"},
	{"a,\"b\ne,f\n", "1:[1 a][4 b\ne,f\n]!3@1.3"},
	{"a,\xff,c\nd", "1:[1 a][3 \xff]!5@1.3 2:[1 d]"},
	{"a,\xed\xa0\x80\nd", "1:[1 a][3 \xed\xa0\x80]!5@1.3 2:[1 d]"},
};
#define CASES (sizeof cases / sizeof *cases)

static void test_cells__every_case_in_pieces_of_any_size(void **state)
{
	(void)state;
	for (size_t i = 0; i < CASES; i++) {
		for (size_t piece = 0; piece < 6; piece++) {
			struct ts_text got;

			ts_text_open(&got, NULL);
			dump(cases[i].bytes, strlen(cases[i].bytes), piece, &got);
			assert_string_equal(ts_text_get(&got), cases[i].rows);
			ts_text_drop(&got);
		}
	}
}

static void test_cells__a_nul_is_no_text(void **state)
{
	static const char bytes[] = "a\0b,c\nd,e\0f\n\"g\0h\"\ni";
	struct ts_text got;

	(void)state;
	ts_text_open(&got, NULL);
	dump(bytes, sizeof bytes - 1, 0, &got);
	assert_string_equal(
		ts_text_get(&got), "1:[1 a]!5@1.2 2:[1 d][3 e]!5@2.4 3:[2 g]!5@3.3 4:[1 i]");
	ts_text_drop(&got);
}

/* A row of `cells` cells of `width` letters each, then a short one. */
static void check_bound(size_t cells, size_t width, bool quoted, enum ts_cells_fault fault)
{
	struct ts_text text;
	struct source source;
	struct ts_cells *c;

	ts_text_open(&text, NULL);
	for (size_t i = 0; i < cells; i++) {
		ts_text_put(&text, i ? "," : "");
		ts_text_put(&text, quoted ? "\"" : "");
		ts_text_fill(&text, 'x', width);
		ts_text_put(&text, quoted ? "\"" : "");
	}
	ts_text_put(&text, "\nlast,row\n");
	source = (struct source){ts_text_get(&text), text.len, 0};
	c = opened(&source);
	assert_true(ts_cells_next(c));
	assert_int_equal(c->fault, fault);
	assert_true(ts_cells_next(c));
	assert_int_equal(c->fault, TS_CELLS_FINE);
	assert_int_equal(c->count, 2);
	assert_int_equal(c->line, 2);
	assert_string_equal(c->cell[1].text, "row");
	assert_false(ts_cells_next(c));
	free(c);
	ts_text_drop(&text);
}

static void test_cells__bounds_of_a_row(void **state)
{
	(void)state;
	for (int quoted = 0; quoted < 2; quoted++) {
		enum ts_cells_fault long_cell = quoted ? TS_CELLS_NOT_CLOSED : TS_CELLS_TOO_MUCH;

		check_bound(TS_ROW_CELLS_MOST, 3, quoted, TS_CELLS_FINE);
		check_bound(TS_ROW_CELLS_MOST + 1, 3, quoted, TS_CELLS_TOO_MUCH);
		check_bound(1, TS_ROW_BYTES_MOST - 1, quoted, TS_CELLS_FINE);
		check_bound(1, TS_ROW_BYTES_MOST, quoted, TS_CELLS_TOO_MUCH);
		check_bound(1, TS_ROW_BYTES_MOST + 1, quoted, long_cell);
		check_bound(1, 100000, quoted, long_cell);
		check_bound(4, TS_ROW_BYTES_MOST / 4 - 1, quoted, TS_CELLS_FINE);
	}
}

/* What is written by the rules is read back, whatever the letters are. */
static void test_cells__whatever_is_quoted_comes_back(void **state)
{
	static const char letters[] = "a,\"\n\r;\t b";
	unsigned seed = 1;

	(void)state;
	for (int round = 0; round < 2000; round++) {
		char texts[5][8];
		struct ts_text text;
		struct source source;
		struct ts_cells *c;

		ts_text_open(&text, NULL);
		for (int i = 0; i < 5; i++) {
			size_t len = 0;

			ts_text_put(&text, i ? ",\"" : "\"");
			while (len < 7 && (seed = seed * 1103515245 + 12345) >> 16 & 7)
				texts[i][len++] = letters[(seed >> 20) % (sizeof letters - 1)];
			texts[i][len] = '\0';
			for (size_t k = 0; k < len; k++) {
				ts_text_put(&text, texts[i][k] == '"' ? "\"" : "");
				ts_text_add(&text, &texts[i][k], 1);
			}
			ts_text_put(&text, "\"");
		}
		source = (struct source){ts_text_get(&text), text.len, 1 + (size_t)round % 7};
		c = opened(&source);
		assert_true(ts_cells_next(c));
		assert_int_equal(c->fault, TS_CELLS_FINE);
		assert_int_equal(c->count, 5);
		for (int i = 0; i < 5; i++)
			assert_string_equal(c->cell[i].text, texts[i]);
		assert_false(ts_cells_next(c));
		free(c);
		ts_text_drop(&text);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_cells__every_case_in_pieces_of_any_size),
		cmocka_unit_test(test_cells__a_nul_is_no_text),
		cmocka_unit_test(test_cells__bounds_of_a_row),
		cmocka_unit_test(test_cells__whatever_is_quoted_comes_back),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
