/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A reading is noted without a change to what stands in the file: every style in which people write
 * one, with and without comments, byte for byte, and read back.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdlib.h>
#include <string.h>

#include "../stingy.h"
#include "base/date.h"
#include "records/load.h"
#include "records/note.h"
#include "records/write.h"

static const struct ts_pair pairs[] = {
	{"date", "2026-03-02"}, {"gh", "15"}, {"NO2", "<0.05 mg/L"}, {"season", "late: fall"}};
#define PAIRS (sizeof pairs / sizeof *pairs)
#define TODAY 20515 /* 2026-03-03 */

/* A file, and what is to stand in it afterwards at the mark of insertion, a '|'. */
static const struct {
	const char *name;
	const struct ts_shape *shape;
	const char *file, *added;
} styles[] = {
	{"key beside the dash", &ts_shape_water, "readings:\n  - pH: 7\n    GH: 14 dH\n|",
		"  - date: 2026-03-02\n    GH: 15 dH\n    NO2: <0.05 mg/L\n    season: \"late: "
		"fall\"\n"},
	{"braces", &ts_shape_water, "readings:\n- {pH: 7}\n- {pH: 7, GH: 14 dH}\n|",
		"- {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, season: \"late: fall\"}\n"},
	{"the last entry shows the style", &ts_shape_water,
		"readings:\n    - pH: 7\n    -   {pH: 7}\n|# end\n",
		"    -   {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, season: \"late: fall\"}\n"},
	{"dash on its own line", &ts_shape_water, "readings:\n -\n    pH: 7\n|",
		" -\n    date: 2026-03-02\n    GH: 15 dH\n    NO2: <0.05 mg/L\n"
		"    season: \"late: fall\"\n"},
	{"dash with a comment", &ts_shape_water, "readings:\n - # morning - cold\n    pH: 7\n|",
		" -\n    date: 2026-03-02\n    GH: 15 dH\n    NO2: <0.05 mg/L\n"
		"    season: \"late: fall\"\n"},
	{"CR LF", &ts_shape_water, "# tap\r\nreadings:\r\n- pH: 7\r\n|\r\nname: x\r\n",
		"- date: 2026-03-02\r\n  GH: 15 dH\r\n  NO2: <0.05 mg/L\r\n  season: \"late: "
		"fall\"\r\n"},
	{"CR", &ts_shape_water, "readings:\r- {pH: 7}\r|name: x\r",
		"- {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, season: \"late: fall\"}\r"},
	{"no line end", &ts_shape_water, "readings:\n- {pH: 7}|",
		"\n- {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, season: \"late: fall\"}\n"},
	{"no line end behind a comment", &ts_shape_water, "readings:\r\n- {pH: 7} # spring|",
		"\r\n- {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, season: \"late: fall\"}\r\n"},
	{"keys behind, comments between", &ts_shape_water,
		"readings: # all of them\n- pH: 7 # read twice\n|\n# next: Sunday\n\nkind: well # "
		"deep\n",
		"- date: 2026-03-02\n  GH: 15 dH\n  NO2: <0.05 mg/L\n  season: \"late: fall\"\n"},
	{"letters beyond ASCII and a mark of order", &ts_shape_water,
		"\xef\xbb\xbfname: K\xc3\xbc"
		"che \xe6\xb0\xb4 # \xe2\x86\x90\nreadings:\n- season: \xc3\xa9t\xc3\xa9\n  pH: "
		"7\n|",
		"- date: 2026-03-02\n  GH: 15 dH\n  NO2: <0.05 mg/L\n  season: \"late: fall\"\n"},
	{"end of the document is said", &ts_shape_water, "---\nreadings:\n- {pH: 7}\n|...\n",
		"- {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, season: \"late: fall\"}\n"},
	{"a text over several lines", &ts_shape_water,
		"readings:\n- pH: 7\n  season: >\n    the end\n    of it\n\n|# x\nname: y\n",
		"- date: 2026-03-02\n  GH: 15 dH\n  NO2: <0.05 mg/L\n  season: \"late: fall\"\n"},
	{"an entry in braces over several lines", &ts_shape_water,
		"readings:\n- {pH: 7,\n   GH: 14 dH\n  }  # }\n|name: y\n",
		"- {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, season: \"late: fall\"}\n"},
	{"an empty value at the end", &ts_shape_water, "readings:\n- pH: 7\n  season:\n|name: y\n",
		"- date: 2026-03-02\n  GH: 15 dH\n  NO2: <0.05 mg/L\n  season: \"late: fall\"\n"},
	{"everything indented", &ts_shape_water, "   readings:\n   - pH: 7\n|   name: y\n",
		"   - date: 2026-03-02\n     GH: 15 dH\n     NO2: <0.05 mg/L\n"
		"     season: \"late: fall\"\n"},
	{"a quoted key", &ts_shape_water, "\"readings\":\n- {pH: 7}\n|name: y\n",
		"- {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, season: \"late: fall\"}\n"},
	{"a tank without readings", &ts_shape_tank, "name: x\nvolume: 100 L # drained\n|\n# end\n",
		"readings:\n  - date: 2026-03-02\n    GH: 15 dH\n    NO2: <0.05 mg/L\n"
		"    season: \"late: fall\"\n"},
	{"an indented tank without readings", &ts_shape_tank, "# x\r\n  volume: 100 L|",
		"\r\n  readings:\r\n    - date: 2026-03-02\r\n      GH: 15 dH\r\n"
		"      NO2: <0.05 mg/L\r\n      season: \"late: fall\"\r\n"},
	{"a tank with readings", &ts_shape_tank,
		"volume: 100 L\nreadings:\n- {pH: 7}\n|feeding: light\n",
		"- {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, season: \"late: fall\"}\n"},
	{"a plan, its tank with readings", &ts_shape_plan,
		"water:\n  readings:\n  - {pH: 7}\ntank:\n  readings:\n  - {pH: 7}\n|  volume: 100 "
		"L\nstock:\n- {species: x, count: 1}\n",
		"  - {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, season: \"late: fall\"}\n"},
	{"a plan, its tank the last of it and without readings", &ts_shape_plan,
		"stock:\n- {species: x, count: 1}\nwater: {readings: [{pH: 7}]}\ntank:\n  volume: "
		"100 L\n|",
		"  readings:\n    - date: 2026-03-02\n      GH: 15 dH\n"
		"      NO2: <0.05 mg/L\n      season: \"late: fall\"\n"},
	{"a plan, its tank between", &ts_shape_plan,
		"water: {readings: [{pH: 7}]}\ntank:\n  volume: 100 L\n  feeding: light # x\n|"
		"signs: [{sign: gasping}]\nstock:\n- {species: x, count: 1}\n",
		"  readings:\n    - date: 2026-03-02\n      GH: 15 dH\n"
		"      NO2: <0.05 mg/L\n      season: \"late: fall\"\n"},
};

/* Notes; the new bytes go to `ret`. */
static enum ts_status note(const struct ts_shape *shape, const char *bytes, size_t len,
	const struct ts_pair *what, size_t count, struct ts_text *ret, const char **ret_code)
{
	struct ts_arena arena;
	struct ts_findings findings;
	struct ts_noted noted;
	enum ts_status status;

	ts_arena_open(&arena, NULL);
	ts_findings_open(&findings, NULL);
	status = ts_records_note(shape, NULL, "readings", bytes, len, "file", what, count, TODAY,
		&arena, ret, &noted, &findings);
	*ret_code = findings.count ? findings.items[findings.count - 1].code->id : "";
	if (status == TS_OK) {
		assert_string_equal(noted.date, "2026-03-02");
		assert_true(noted.count >= 1);
	}
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
	return status;
}

static void test_note__every_style(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof styles / sizeof *styles; i++) {
		const char *mark = strrchr(styles[i].file, '|'), *code;
		struct ts_text file, want, got;

		ts_text_open(&file, NULL);
		ts_text_open(&want, NULL);
		ts_text_open(&got, NULL);
		ts_text_add(&file, styles[i].file, (size_t)(mark - styles[i].file));
		ts_text_put(&file, mark + 1);
		ts_text_add(&want, styles[i].file, (size_t)(mark - styles[i].file));
		ts_text_puts(&want, styles[i].added, mark + 1, NULL);
		if (note(styles[i].shape, ts_text_get(&file), file.len, pairs, PAIRS, &got,
			    &code) != TS_OK)
			fail_msg("%s: %s", styles[i].name, code);
		if (strcmp(ts_text_get(&got), ts_text_get(&want)) != 0)
			fail_msg("%s:\n%s", styles[i].name, ts_text_get(&got));
		ts_text_drop(&got);
		ts_text_drop(&want);
		ts_text_drop(&file);
	}
}

static void test_note__what_cannot_be_extended_is_refused(void **state)
{
	static const struct {
		const char *file, *code;
		bool plan;
	} files[] = {
		{"{readings: [{pH: 7}]}\n", "note.style", false},
		{"readings: [{pH: 7}]\n", "note.style", false},
		{"readings:\n  [{pH: 7}]\n", "note.style", false},
		{"readings: []\n", "note.style", false},
		{"readings:\n- {pH: 77}\n", "records.quantity", false},
		{"readings:\n- {pH: 7, date: 2026-02-30}\n", "records.date", false},
		{"redings:\n- {pH: 7}\n", "records.missing-key", false},
		{"readings:\n- {pH: 7}\n---\nname: x\n", "records.too-much", false},
		{"readings:\n- &a {pH: 7}\n", "records.alias", false},
		{"", "records.missing-key", false},
		{"readings:\n- {date: 2026-03-02, GH: 15 dH, NO2: <0.05 mg/L, "
		 "season: \"late: fall\"}\n",
			"note.twice", false},
		{"water: {readings: [{pH: 7}]}\ntank: {volume: 100 L}\nstock: []\n", "note.style",
			true},
		{"{water: {readings: [{pH: 7}]}, tank: {volume: 100 L}, stock: []}\n", "note.style",
			true},
		{"water: {readings: [{pH: 7}]}\ntank:\n  volume: 100 L\n  readings: [{pH: 7}]\n"
		 "stock: []\n",
			"note.style", true},
	};

	(void)state;
	for (size_t i = 0; i < sizeof files / sizeof *files; i++) {
		struct ts_text got;
		const char *code;

		ts_text_open(&got, NULL);
		assert_int_equal(
			note(files[i].plan ? &ts_shape_plan : &ts_shape_water, files[i].file,
				strlen(files[i].file), pairs, PAIRS, &got, &code),
			TS_BAD_INPUT);
		assert_string_equal(code, files[i].code);
		ts_text_drop(&got);
	}
}

static void test_note__what_is_no_reading_is_refused(void **state)
{
	static const struct {
		struct ts_pair pairs[3];
		const char *code;
	} calls[] = {
		{{{"date", "2026-03-02"}, {"method", "drops"}}, "note.nothing"},
		{{{"date", "2026-03-02"}, {"stood", "24 h"}}, "note.nothing"},
		{{{"date", "2026-03-04"}, {"GH", "14"}}, "note.future"},
		{{{"date", "yesterday"}, {"GH", "14"}}, "records.date"},
		{{{"date", "2026-03-02"}, {"GH", "14"}, {"gh", "15"}}, "records.duplicate-key"},
		{{{"date", "2026-03-02"}, {"GHH", "14"}}, "records.unknown-key"},
		{{{"date", "2026-03-02"}, {"K", "9"}}, "records.quantity"},
		{{{"date", "2026-03-02"}, {"GH", ""}}, "records.quantity"},
		{{{"date", "2026-03-02"}, {"GH", "14"}, {"season", ""}}, "records.quantity"},
		{{{"date", "2026-03-02"}, {"GH", "14"}, {"time", "25:00"}}, "records.date"},
		{{{"date", "2026-03-02"}, {"GH", "14"}, {"method", "guess"}},
			"records.unknown-word"},
		{{{"GH", "14"}, {"KH", "9"}}, "records.missing-key"},
		{{{"date", "2026-03-02"}, {"GH", "14"}, {"season", "\xff"}}, "note.style"},
	};

	(void)state;
	for (size_t i = 0; i < sizeof calls / sizeof *calls; i++) {
		static const char file[] = "readings:\n- {pH: 7}\n";
		struct ts_text got;
		const char *code;

		ts_text_open(&got, NULL);
		assert_int_equal(note(&ts_shape_water, file, sizeof file - 1, calls[i].pairs,
					 calls[i].pairs[2].key ? 3 : 2, &got, &code),
			TS_BAD_INPUT);
		assert_string_equal(code, calls[i].code);
		ts_text_drop(&got);
	}
}

static unsigned seed = 1;

static unsigned any(unsigned below)
{
	seed = seed * 1103515245 + 12345;
	return (seed >> 16) % below;
}

/* A piece of a file that means nothing, as people leave it there. */
static void put_litter(struct ts_text *out, const char *end)
{
	static const char *const litter[] = {
		"", "", "\n", "# note\n", "      # far: in - \xc3\xa4\n", "#\n\n#- {pH: 1}\n"};

	for (const char *at = litter[any(6)]; *at; at++) {
		if (*at == '\n')
			ts_text_put(out, end);
		else
			ts_text_add(out, at, 1);
	}
}

static void put_reading(struct ts_text *out, const char *end, size_t indent, size_t gap)
{
	static const char *const values[][2] = {{"pH", "7.5"}, {"GH", "14 dH"}, {"KH", "3..5 dH"},
		{"NO3", "<5 mg/L"}, {"season", "\"a, b: {c}\""}, {"date", "2026-01-01"},
		{"method", "drops"}};
	unsigned first = any(7), count = 1 + any(6), style = any(3);

	ts_text_fill(out, ' ', indent);
	ts_text_put(out, "-");
	if (style != 2)
		ts_text_fill(out, ' ', gap);
	for (unsigned i = 0; i < count; i++) {
		if (style == 1) {
			ts_text_put(out, i ? ", " : "{");
		} else if (i || style == 2) {
			ts_text_put(out, any(4) ? "" : " # c");
			ts_text_put(out, end);
			ts_text_fill(out, ' ', indent + 1 + gap);
		}
		ts_text_puts(
			out, values[(first + i) % 7][0], ": ", values[(first + i) % 7][1], NULL);
	}
	ts_text_puts(out, style == 1 ? "}" : "", any(4) ? "" : "  # said so", NULL);
}

/* A tank file as somebody might write it; with `readings` or without. */
static void make_file(struct ts_text *out)
{
	static const char *const ends[] = {"\n", "\r\n", "\r"};
	static const char *const keys[] = {"volume: 100 L", "feeding: light",
		"name: \"K\xc3\xbc - x\"", "water_change: 30 % every 7 days",
		"temperature: 24..26 C"};
	const char *end = ends[any(3)];
	size_t indent = any(5), gap = 1 + any(3), count = any(4);
	unsigned before = any(5);

	ts_text_put(out, any(5) ? "" : "\xef\xbb\xbf");
	for (unsigned i = 0; i < 5; i++) {
		put_litter(out, end);
		ts_text_puts(out, keys[i], any(3) ? "" : " # why", end, NULL);
		if (i != before || !count)
			continue;
		ts_text_puts(out, "readings:", any(3) ? "" : " # all", end, NULL);
		for (size_t k = 0; k < count; k++) {
			put_litter(out, end);
			put_reading(out, end, indent, gap);
			ts_text_put(out, end);
		}
	}
	put_litter(out, end);
	if (!any(4) && out->len)
		out->at[out->len -= strlen(end) < out->len ? strlen(end) : 0] = '\0';
}

static void load(const struct ts_text *text, struct ts_arena *arena, struct ts_tank *ret)
{
	struct ts_findings findings;

	ts_findings_open(&findings, NULL);
	if (ts_records_parse(&ts_shape_tank, ts_text_get(text), text->len, "file", arena, ret,
		    &findings) != TS_OK)
		fail_msg("%s\n%s", findings.items[0].what, ts_text_get(text));
	ts_findings_drop(&findings);
}

/* Everything that stood there stands there still: one piece was put in, nothing else. */
static void check_bytes(const struct ts_text *old, const struct ts_text *new)
{
	size_t front = 0, back = 0;

	while (front < old->len && old->at[front] == new->at[front])
		front++;
	while (back < old->len && old->at[old->len - 1 - back] == new->at[new->len - 1 - back])
		back++;
	assert_true(new->len > old->len);
	assert_true(front + back >= old->len);
}

static void check_same(const struct ts_shape *shape, const void *a, const void *b)
{
	struct ts_text first, second;

	ts_text_open(&first, NULL);
	ts_text_open(&second, NULL);
	ts_records_write(&first, shape, a, false);
	ts_records_write(&second, shape, b, false);
	assert_string_equal(ts_text_get(&first), ts_text_get(&second));
	ts_text_drop(&second);
	ts_text_drop(&first);
}

static void test_note__read_back_are_the_old_readings_and_the_new_one(void **state)
{
	(void)state;
	for (int round = 0; round < 3000; round++) {
		struct ts_text old, new;
		struct ts_arena arena;
		struct ts_tank before, after;
		struct ts_reading *readings;
		const char *code;
		enum ts_status status;

		ts_text_open(&old, NULL);
		ts_text_open(&new, NULL);
		ts_arena_open(&arena, NULL);
		make_file(&old);
		load(&old, &arena, &before);
		status = note(
			&ts_shape_tank, ts_text_get(&old), old.len, pairs, 2 + any(3), &new, &code);
		if (status != TS_OK)
			fail_msg("%s\n%s", code, ts_text_get(&old));
		check_bytes(&old, &new);
		load(&new, &arena, &after);
		assert_int_equal(after.reading_count, before.reading_count + 1);
		readings = after.readings;
		for (size_t i = 0; i < before.reading_count; i++)
			check_same(&ts_shape_reading, &before.readings[i], &readings[i]);
		assert_true(readings[before.reading_count].gh_dh.value > 14.9);
		assert_string_equal(readings[before.reading_count].date, "2026-03-02");
		before.readings = after.readings = NULL;
		before.reading_count = after.reading_count = 0;
		check_same(&ts_shape_tank, &before, &after);
		ts_arena_drop(&arena);
		ts_text_drop(&new);
		ts_text_drop(&old);
	}
}

static void test_note__every_allocation_fails_once(void **state)
{
	static const char file[] = "readings:\n- {pH: 7}\n";
	bool done = false;

	(void)state;
	for (size_t n = 0; n < 1000 && !done; n++) {
		struct stingy stingy = {.left = n};
		const struct ts_allocator allocator = {stingy_resize, &stingy};
		struct ts_arena arena;
		struct ts_findings findings;
		struct ts_text out;
		struct ts_noted noted;
		enum ts_status status;

		ts_arena_open(&arena, &allocator);
		ts_findings_open(&findings, &allocator);
		ts_text_open(&out, &allocator);
		status = ts_records_note(&ts_shape_water, NULL, "readings", file, sizeof file - 1,
			"file", pairs, PAIRS, TODAY, &arena, &out, &noted, &findings);
		done = !stingy.refused;
		assert_int_equal(status, done ? TS_OK : TS_NO_MEMORY);
		ts_text_drop(&out);
		ts_findings_drop(&findings);
		ts_arena_drop(&arena);
		assert_int_equal(stingy.out, 0);
	}
	assert_true(done);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_note__every_style),
		cmocka_unit_test(test_note__what_cannot_be_extended_is_refused),
		cmocka_unit_test(test_note__what_is_no_reading_is_refused),
		cmocka_unit_test(test_note__read_back_are_the_old_readings_and_the_new_one),
		cmocka_unit_test(test_note__every_allocation_fails_once),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
