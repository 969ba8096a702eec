/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The short text: verdicts and dangers first, whole pieces, never more letters than a message
 * holds.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include "base/arena.h"
#include "report/brief.h"

struct made {
	struct ts_arena arena;
	struct ts_document doc;
	struct ts_text out;
};

static void open_made(struct made *m)
{
	ts_arena_open(&m->arena, NULL);
	ts_doc_open(&m->doc, &m->arena, "invented");
	ts_text_open(&m->out, NULL);
}

static void close_made(struct made *m)
{
	ts_text_drop(&m->out);
	ts_arena_drop(&m->arena);
}

static size_t letters(const char *text)
{
	size_t count = 0;

	for (; *text; text++)
		count += ((unsigned char)*text & 0xc0) != 0x80;
	return count;
}

static void test_brief__verdicts_then_dangers_then_what_follows_the_last(void **state)
{
	struct made m;

	(void)state;
	open_made(&m);
	ts_doc_verdict(&m.doc, "first suits", "all is well");
	ts_doc_paragraph(&m.doc, "of the first alone");
	ts_doc_verdict(&m.doc, "second does not", "GH 14, comfortable to 8: 6 too hard");
	ts_doc_heading(&m.doc, 0, "What harms");
	ts_doc_paragraph(&m.doc, "too hard");
	ts_doc_caution(&m.doc, "its sting needs a hospital");
	ts_doc_medium(&m.doc, TS_ON_PAPER);
	ts_doc_paragraph(&m.doc, "of paper");
	ts_doc_medium(&m.doc, TS_EVERYWHERE);
	ts_doc_see(&m.doc, "docs/guide.md");
	ts_brief_write(&m.out, &m.doc, false);
	assert_string_equal(ts_text_get(&m.out),
		"first suits\nall is well\nsecond does not\nGH 14, comfortable to 8: 6 too hard\n"
		"Its sting needs a hospital.\nWhat harms\ntoo hard\n");
	close_made(&m);
}

/* Pieces of every length, in letters of one and of three bytes, with a heading each. */
static void test_brief__holds_whole_pieces_and_never_too_many_letters(void **state)
{
	static const char *const kinds[] = {"x", "\u7532"};

	(void)state;
	for (size_t len = 1; len <= TS_BRIEF_MOST + 10; len++) {
		char piece[3 * TS_BRIEF_MOST + 64] = "";
		const char *letter = kinds[len % 2], *end;
		struct made m;

		for (size_t i = 0; i < len; i++)
			strcat(piece, letter);
		open_made(&m);
		ts_doc_verdict(&m.doc, "sound", "");
		for (int i = 0; i < 700; i++) {
			ts_doc_heading(&m.doc, 0, "above");
			ts_doc_paragraph(&m.doc, piece);
		}
		ts_brief_write(&m.out, &m.doc, false);
		assert_true(letters(ts_text_get(&m.out)) <= TS_BRIEF_MOST);
		assert_true(strncmp(ts_text_get(&m.out), "sound\n", 6) == 0);
		end = ts_text_get(&m.out) + m.out.len;
		assert_true(end[-1] == '\n');
		/* A heading alone says nothing. */
		assert_false(m.out.len > 12 && strcmp(end - 7, "\nabove\n") == 0);
		if (len < 500)
			assert_non_null(strstr(ts_text_get(&m.out), piece));
		close_made(&m);
	}
}

static void test_brief__what_others_wrote_is_shown_harmlessly(void **state)
{
	struct made m;

	(void)state;
	open_made(&m);
	ts_doc_verdict(&m.doc, "a\033[31m\nb", "\u00e9");
	ts_brief_write(&m.out, &m.doc, true);
	assert_string_equal(ts_text_get(&m.out), "a?[31m b\ne\n");
	close_made(&m);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_brief__verdicts_then_dangers_then_what_follows_the_last),
		cmocka_unit_test(test_brief__holds_whole_pieces_and_never_too_many_letters),
		cmocka_unit_test(test_brief__what_others_wrote_is_shown_harmlessly),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
