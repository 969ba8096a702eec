/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writes what docs say about files from the rows (`formats DOCS RECORD --write`): the key tables of
 * formats.md between their marks, and one commented example record, whose values are those of
 * RECORD. Without --write it compares with what stands there and prints TAP. Schemas: schemas.c.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "cli/settings.h"
#include "records/file.h"
#include "records/load.h"
#include "records/write.h"

static const struct ts_shape *const shapes[] = {
	&ts_shape_plan, &settings_shape, &ts_shape_species, &ts_shape_tank, &ts_shape_water};
#define SHAPES (sizeof shapes / sizeof *shapes)
#define EXAMPLE "exempla-mollis.yaml"

/* The tables of one file: its own, then those of its blocks. */
#define TABLES_MOST 32
struct tables {
	const struct ts_shape *shapes[TABLES_MOST];
	struct ts_text titles[TABLES_MOST];
	size_t count;
};

static bool same_keys(const struct ts_shape *a, const struct ts_shape *b)
{
	for (size_t i = 0; a->count == b->count && i < a->count; i++) {
		if (strcmp(a->fields[i].key, b->fields[i].key) != 0 ||
			a->fields[i].kind != b->fields[i].kind)
			return false;
	}
	return a->count == b->count;
}

/* Blocks with the same keys share one table, under all their names. */
static void add_table(struct tables *t, const struct ts_shape *shape, const char *title)
{
	size_t at = 0;

	while (at < t->count && !same_keys(t->shapes[at], shape))
		at++;
	if (at == TABLES_MOST)
		return;
	if (at < t->count) {
		if (!strstr(ts_text_get(&t->titles[at]), title))
			ts_text_puts(&t->titles[at], ", ", title, NULL);
		return;
	}
	ts_text_open(&t->titles[at], NULL);
	ts_text_put(&t->titles[at], title);
	t->shapes[t->count++] = shape;
	for (size_t i = 0; i < shape->count; i++) {
		if (shape->fields[i].sub && shape->fields[i].kind != TS_FILE)
			add_table(t, shape->fields[i].sub, shape->fields[i].key);
	}
}

static void put_words(struct ts_text *out, const char *const *words)
{
	for (size_t i = 0; words[i]; i++)
		ts_text_puts(out, i ? ", " : "", words[i], NULL);
}

static void put_kind(struct ts_text *out, const struct ts_field *field)
{
	static const char *const names[] = {[TS_TEXT] = "text",
		[TS_TEXTS] = "list of texts",
		[TS_WORD] = "one of: ",
		[TS_WORDS] = "list of: ",
		[TS_YESNO] = "yes or no",
		[TS_NUMBER] = "number",
		[TS_RANGE] = "range",
		[TS_MEASURE] = "value",
		[TS_CHOICE] = "a figure or one of: ",
		[TS_EVERY] = "so much every so many days",
		[TS_SUB] = "block",
		[TS_FILE] = "file or block",
		[TS_LIST] = "list of blocks"};
	const char *name = field->kind < sizeof names / sizeof *names ? names[field->kind] : NULL;
	const char *unit = ts_quantities[field->quantity].unit;

	ts_text_put(out, name ? name : "?");
	if (field->words)
		put_words(out, field->words);
	else if ((field->kind == TS_NUMBER || field->kind == TS_RANGE ||
			 field->kind == TS_MEASURE) &&
		 *unit)
		ts_text_puts(out, ", ", unit, NULL);
}

static void put_table(struct ts_text *out, const struct ts_shape *shape)
{
	ts_text_put(out, "| key | what it takes | needed | meaning |\n| --- | --- | --- | --- |\n");
	for (size_t i = 0; i < shape->count; i++) {
		const struct ts_field *field = &shape->fields[i];

		ts_text_puts(out, "| ", field->key, " | ", NULL);
		put_kind(out, field);
		ts_text_puts(out, " | ", field->need == TS_REQUIRED ? "yes" : "", " | ",
			field->says, " |\n", NULL);
	}
}

static void put_tables(struct ts_text *out, const struct ts_shape *shape)
{
	struct tables t = {.count = 0};

	add_table(&t, shape, shape->name);
	for (size_t i = 0; i < t.count; i++) {
		if (i)
			ts_text_puts(out, "\n### ", ts_text_get(&t.titles[i]), "\n\n", NULL);
		put_table(out, t.shapes[i]);
		ts_text_drop(&t.titles[i]);
	}
}

/* The text with what stands between the marks of each shape written anew. */
static void put_formats(struct ts_text *out, const char *old)
{
	static const char end[] = "<!-- end of rows -->\n";

	while (*old) {
		size_t len = strcspn(old, "\n") + 1;

		ts_text_add(out, old, len);
		for (size_t i = 0; i < SHAPES; i++) {
			char mark[64];
			const char *stop = strstr(old, end);

			snprintf(mark, sizeof mark, "<!-- rows of %s -->\n", shapes[i]->name);
			if (!stop || strncmp(old, mark, strlen(mark)) != 0)
				continue;
			ts_text_put(out, "\n");
			put_tables(out, shapes[i]);
			ts_text_puts(out, "\n", end, NULL);
			len = (size_t)(stop - old) + strlen(end);
			break;
		}
		old += len;
	}
}

static void read_into(struct ts_text *out, const char *path)
{
	char *bytes;
	size_t len;

	if (ts_file_read(NULL, path, TS_OPEN_ANY, TS_FILE_BYTES_MOST, NULL, &bytes, &len, NULL) !=
		TS_OK)
		return;
	ts_text_add(out, bytes, len);
	free(bytes);
}

static bool settle(const char *path, const struct ts_text *wanted, bool write)
{
	struct ts_text stands;
	FILE *stream = write ? fopen(path, "wb") : NULL;
	bool same;

	if (stream) {
		fputs(ts_text_get(wanted), stream);
		fclose(stream);
	}
	ts_text_open(&stands, NULL);
	read_into(&stands, path);
	same = !wanted->failed && wanted->len &&
	       strcmp(ts_text_get(&stands), ts_text_get(wanted)) == 0;
	ts_text_drop(&stands);
	return same;
}

static bool every_mark_is_there(const char *formats)
{
	for (size_t i = 0; i < SHAPES; i++) {
		char mark[64];

		snprintf(mark, sizeof mark, "<!-- rows of %s -->\n", shapes[i]->name);
		if (!strstr(formats, mark))
			return false;
	}
	return true;
}

static bool put_example(struct ts_text *out, const char *record)
{
	struct ts_arena arena;
	struct ts_species species;
	bool read;

	ts_arena_open(&arena, NULL);
	read = ts_records_load(&ts_shape_species, NULL, record, TS_OPEN_ANY, &arena, &species,
		       NULL) == TS_OK;
	ts_text_put(out,
		"# An invented animal, with every key that a species record may have, in the order "
		"in\n"
		"# which they stand, and what each means. Copy it to species/<group>/, name the "
		"file\n"
		"# after the species, change every value, and drop what you do not know; then run\n"
		"#     tapshoal lint FILE\n");
	if (read)
		ts_records_write(out, &ts_shape_species, &species, true);
	ts_arena_drop(&arena);
	return read;
}

int main(int argc, char **argv)
{
	bool write = argc == 4 && strcmp(argv[3], "--write") == 0;
	char path[2][4096];
	struct ts_text old, formats, example;
	bool fine[3];

	if (argc < 3)
		return 2;
	snprintf(path[0], sizeof path[0], "%s/formats.md", argv[1]);
	snprintf(path[1], sizeof path[1], "%s/" EXAMPLE, argv[1]);
	ts_text_open(&old, NULL);
	ts_text_open(&formats, NULL);
	ts_text_open(&example, NULL);
	read_into(&old, path[0]);
	put_formats(&formats, ts_text_get(&old));
	fine[0] = settle(path[0], &formats, write);
	fine[1] = every_mark_is_there(ts_text_get(&old));
	fine[2] = put_example(&example, argv[2]) && settle(path[1], &example, write);
	printf("1..3\n%s 1 - the tables of docs/formats.md are what the rows say\n",
		fine[0] ? "ok" : "not ok");
	printf("%s 2 - every kind of file has its tables there\n", fine[1] ? "ok" : "not ok");
	printf("%s 3 - docs/" EXAMPLE " is what the rows say\n", fine[2] ? "ok" : "not ok");
	if (!fine[0] || !fine[2])
		printf("# ninja -C build regenerate writes them\n");
	ts_text_drop(&example);
	ts_text_drop(&formats);
	ts_text_drop(&old);
	return !(fine[0] && fine[1] && fine[2]);
}
