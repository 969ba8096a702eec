/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Sentences as people type them (tests/data/sentences.txt) on the shipped records: what must be
 * read of each. With --write the table is written as the sentences are read now, to be looked at
 * line by line before it is kept.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include "../shipped.h"
#include "base/text.h"
#include "typed/sentence.h"

/* Fewer would not be the table that was written. */
#define SENTENCES_LEAST 200

static void put_list(struct ts_text *text, const char *const *words, size_t count, const char *mark)
{
	for (size_t i = 0; i < count; i++)
		ts_text_puts(text, text->len ? "; " : "", words[i], mark, NULL);
}

/* "6 guppies (there); --volume 80 L; ?nitrite is high": all that was read, and what alarms. */
static void put_read(struct ts_text *text, const char *sentence)
{
	struct ts_arena arena;
	struct ts_sentence *s;

	text->len = 0;
	ts_arena_open(&arena, NULL);
	s = ts_arena_take(&arena, sizeof *s);
	assert_non_null(s);
	if (ts_sentence_read(&catalogue, &arena, sentence, s)) {
		put_list(text, s->planned, s->planned_count, "");
		put_list(text, s->living, s->living_count, " (there)");
		for (size_t i = 0; i < s->flag_count; i++)
			ts_text_puts(text, text->len ? "; " : "", s->flags[i].flag,
				*s->flags[i].value ? " " : "", s->flags[i].value, NULL);
	}
	for (size_t i = 0; i < s->alarm_count; i++)
		ts_text_puts(text, text->len ? "; ?" : "?", s->alarms[i].words, NULL);
	if (!text->len)
		ts_text_put(text, "-");
	ts_arena_drop(&arena);
}

static void for_each(void (*take)(const char *sentence, const char *read, size_t number))
{
	FILE *file = fopen(TS_TEST_DATA "/sentences.txt", "r");
	char sentence[512], read[1024];
	size_t number = 0;

	assert_non_null(file);
	while (fgets(sentence, sizeof sentence, file)) {
		sentence[strcspn(sentence, "\r\n")] = '\0';
		if (!*sentence || *sentence == '#' || *sentence == '=') {
			take(NULL, sentence, number);
			continue;
		}
		number++;
		if (!fgets(read, sizeof read, file))
			*read = '\0';
		read[strcspn(read, "\r\n")] = '\0';
		take(sentence, read, number);
	}
	fclose(file);
	assert_true(number >= SENTENCES_LEAST);
}

static size_t wrong;

static void hold(const char *sentence, const char *read, size_t number)
{
	struct ts_text text;

	(void)number;
	if (!sentence)
		return;
	ts_text_open(&text, NULL);
	put_read(&text, sentence);
	if (strncmp(read, "= ", 2) != 0 || strcmp(ts_text_get(&text), read + 2) != 0) {
		print_error(
			"%s\n   must be %s\n   is        %s\n", sentence, read, ts_text_get(&text));
		wrong++;
	}
	ts_text_drop(&text);
}

static void test_sentences__each_is_read_as_its_row_says(void **state)
{
	(void)state;
	for_each(hold);
	assert_int_equal(wrong, 0);
}

static void rewrite(const char *sentence, const char *read, size_t number)
{
	struct ts_text text;

	(void)number;
	if (!sentence) {
		if (*read != '=')
			printf("%s\n", read);
		return;
	}
	ts_text_open(&text, NULL);
	put_read(&text, sentence);
	printf("%s\n= %s\n", sentence, ts_text_get(&text));
	ts_text_drop(&text);
}

int main(int argc, char **argv)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_sentences__each_is_read_as_its_row_says),
	};

	if (argc > 1 && strcmp(argv[1], "--write") == 0) {
		if (shipped_open(NULL))
			return 1;
		for_each(rewrite);
		return shipped_close(NULL);
	}
	return cmocka_run_group_tests(tests, shipped_open, shipped_close);
}
