/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the page calls (page/page.c), over files in memory: words and two files of somebody's as a
 * call of the whole program, a file as something to fill in, an animal as it is typed. The first
 * byte says which; parts stand around lines "%%", words one a line.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "catalogue/compiled.h"
#include "holds.h"
#include "page/animals.h"
#include "page/plain.h"
#include "system/memory.h"

#define PARTS 3
#define WORDS_ROOM 2000
#define TODAY 20000

/* Of page.c, whose exports no header declares. */
int page_load(const char *image, size_t len);
int page_ask(char *words, int count);

static struct ts_memory memory;
static struct ts_catalogue frozen; /* what the page has in its image */

/* NOLINTBEGIN(bugprone-reserved-identifier): the names are the linker's */
const struct ts_system *__real_ts_system_machine(void);
const struct ts_system *__wrap_ts_system_machine(void);

/* Once the records were read there is nothing but what an input brings. */
const struct ts_system *__wrap_ts_system_machine(void)
{
	return memory.system.state ? &memory.system : __real_ts_system_machine();
}
/* NOLINTEND(bugprone-reserved-identifier) */

static void load(void)
{
	static struct ts_text image;

	if (frozen.count)
		return;
	ts_catalogue_open(&frozen, NULL);
	hold(ts_catalogue_add_folder(&frozen, TEST_DATA "/catalogue", NULL) == TS_OK);
	ts_text_open(&image, NULL);
	hold(ts_catalogue_compile(&frozen, &image));
	hold(page_load(ts_text_get(&image), image.len) == 0);
}

/* The words of a call behind the program's name, each ended by a zero. */
static void ask(const char *text, size_t size)
{
	char words[WORDS_ROOM] = "tapshoal";
	size_t at = strlen(words) + 1;
	int count = 1 + (size > 0), code;

	for (size_t i = 0; i < size && at + 2 < WORDS_ROOM; i++) {
		words[at++] = text[i] == '\n' ? '\0' : text[i];
		count += text[i] == '\n' || text[i] == '\0';
	}
	words[at] = '\0';
	code = page_ask(words, count);
	hold(code >= 0 && code <= 3);
	hold_utf8(ts_text_get(&memory.out), memory.out.len);
}

static void fill_in(const char *file)
{
	struct ts_text text;

	ts_text_open(&text, NULL);
	page_plain_write(&text, file);
	hold(text.len && !text.failed);
	hold_utf8(ts_text_get(&text), text.len);
	ts_text_drop(&text);
}

static void animals(const char *words, size_t len)
{
	char typed[300];
	struct ts_text text;

	len = len < sizeof typed ? len : sizeof typed - 1;
	memcpy(typed, words, len);
	typed[len] = '\0';
	ts_text_open(&text, NULL);
	page_animals_write(&text, &frozen, typed, TODAY);
	hold(text.len && !text.failed);
	hold_utf8(ts_text_get(&text), text.len);
	hold_json(ts_text_get(&text));
	ts_text_drop(&text);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static const char border[] = "\n%%\n", *const names[PARTS] = {"", "one", "two"};
	const char *at[PARTS] = {0};
	size_t len[PARTS] = {0}, part = 0;
	const uint8_t *from = data + 1, *end = data + size;

	if (size < 1)
		return 0;
	load();
	ts_memory_open(&memory);
	memory.day = "2026-03-01";
	for (; part < PARTS; part++) {
		const uint8_t *split = part + 1 < PARTS ? memmem(from, (size_t)(end - from), border,
								  sizeof border - 1)
							: NULL;

		at[part] = (const char *)from;
		len[part] = (size_t)((split ? split : end) - from);
		if (part)
			hold(ts_memory_put(&memory, names[part], at[part], len[part]));
		if (!split)
			break;
		from = split + sizeof border - 1;
	}
	switch (data[0] % 4) {
	case 0:
		hold(ts_memory_put(&memory, "one", at[0], len[0]));
		fill_in("one");
		break;
	case 1:
		animals(at[0], len[0]);
		break;
	default:
		ask(at[0], len[0]);
	}
	ts_memory_close(&memory);
	memory.system.state = NULL;
	return 0;
}
