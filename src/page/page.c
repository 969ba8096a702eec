/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the page calls: the whole program as one function that can be asked again and again, with
 * the catalogue kept between calls. Files, clock and output are those that program.js hands in.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "cli/commands.h"
#include "page/animals.h"
#include "page/fields.h"
#include "page/plain.h"

#define EXPORT(name) __attribute__((export_name(name), visibility("default")))

#define WORDS_MOST 300

static struct ts_catalogue kept;
static bool opened;

/* Room for what the page hands over; NULL: there is none. */
EXPORT("room") void *page_room(size_t size);
EXPORT("give_back") void page_give_back(void *room);
/*
 * Takes the records from the bytes of their image (catalogue/compiled.h), which stay where they
 * are; 0 when they could be read. Records of a further image go over those before. Without it the
 * first call reads the records' own files.
 */
EXPORT("load") int page_load(const char *image, size_t len);
/*
 * One call: `count` words one behind the other, each ended by a zero, the program's name first.
 * The exit code of the program; what it says went to the standard outputs.
 */
EXPORT("ask") int page_ask(char *words, int count);
/* Writes to standard output what can be filled in (fields.h). */
EXPORT("fields") int page_fields(void);
/*
 * Writes a water, tank or plan to standard output in its plain form (plain.h), or what is wrong
 * with it; then 2 comes back.
 */
EXPORT("plain") int page_plain(const char *file);
/*
 * Writes to standard output what one animal as it was typed means (animals.h); `today` is
 * YYYY-MM-DD.
 */
EXPORT("animals") int page_animals(const char *words, const char *today);
/* Writes to standard output what a whole sentence names (animals.h). */
EXPORT("sentence") int page_sentence(const char *words);

void *page_room(size_t size)
{
	return malloc(size ? size : 1);
}

void page_give_back(void *room)
{
	free(room);
}

int page_load(const char *image, size_t len)
{
	if (!opened)
		ts_catalogue_open(&kept, NULL);
	opened = true;
	return ts_catalogue_add_image(&kept, image, len, NULL) == TS_OK ? 0 : 3;
}

int page_ask(char *words, int count)
{
	char *argv[WORDS_MOST + 1];
	int code;

	if (count < 1 || count > WORDS_MOST)
		return 2;
	for (int i = 0; i < count; i++) {
		argv[i] = words;
		words += strlen(words) + 1;
	}
	argv[count] = NULL;
	if (!opened)
		ts_catalogue_open(&kept, NULL);
	opened = true;
	code = program_run(ts_system_machine(), count, argv, &kept);
	fflush(stdout);
	fflush(stderr);
	return code;
}

/* Hands a text to standard output and ends it. */
static int said(struct ts_text *text)
{
	bool fine = !text->failed && fwrite(ts_text_get(text), 1, text->len, stdout) == text->len;

	ts_text_drop(text);
	return fflush(stdout) == 0 && fine ? 0 : 3;
}

int page_fields(void)
{
	struct ts_text text;

	ts_text_open(&text, NULL);
	page_fields_write(&text);
	return said(&text);
}

int page_animals(const char *words, const char *today)
{
	struct ts_text text;
	long day = 0;

	if (!ts_date_read(today, &day))
		return 2;
	ts_text_open(&text, NULL);
	page_animals_write(&text, &kept, words, day);
	return said(&text);
}

int page_sentence(const char *words)
{
	struct ts_text text;

	ts_text_open(&text, NULL);
	page_sentence_write(&text, &kept, words);
	return said(&text);
}

int page_plain(const char *file)
{
	struct ts_text text;
	bool fine;

	ts_text_open(&text, NULL);
	fine = page_plain_write(&text, file);
	return said(&text) ? 3 : fine ? 0 : 2;
}
