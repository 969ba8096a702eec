/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Makes the image of the shipped records: run by the build, not installed. `compile FOLDER IMAGE
 * DEPENDENCIES`; the third file tells ninja by which records and folders the image grows old.
 */
#include <stdio.h>
#include <string.h>

#include "catalogue/compiled.h"
#include "catalogue/folders.h"

struct dependencies {
	struct ts_text text;
	size_t last; /* length of the folder named last */
};

static void depend_on(struct ts_text *out, const char *path, size_t len)
{
	ts_text_put(out, " \\\n  ");
	for (size_t i = 0; i < len; i++) {
		if (path[i] == ' ' || path[i] == '#' || path[i] == '\\')
			ts_text_put(out, "\\");
		else if (path[i] == '$')
			ts_text_put(out, "$");
		ts_text_add(out, &path[i], 1);
	}
}

/* A folder is as young as the last record that came or went. */
static enum ts_status depend(void *state, const char *path, const struct ts_seen *seen)
{
	struct dependencies *d = state;
	size_t folder = (size_t)(strrchr(path, '/') - path);

	(void)seen;
	if (folder != d->last)
		depend_on(&d->text, path, folder);
	d->last = folder;
	depend_on(&d->text, path, strlen(path));
	return TS_OK;
}

static bool write_file(const char *file, const struct ts_text *text)
{
	FILE *stream = fopen(file, "wb");
	bool fine = stream && fwrite(ts_text_get(text), 1, text->len, stream) == text->len;

	return stream && fclose(stream) == 0 && fine && !text->failed;
}

static bool compile(const char *folder, const char *image)
{
	struct ts_catalogue catalogue;
	struct ts_findings findings;
	struct ts_text out;
	bool fine;

	ts_catalogue_open(&catalogue, NULL);
	ts_findings_open(&findings, NULL);
	ts_text_open(&out, NULL);
	fine = ts_catalogue_add_folder(&catalogue, folder, &findings) == TS_OK &&
	       ts_catalogue_compile(&catalogue, &out) && write_file(image, &out);
	for (size_t i = 0; i < findings.count; i++)
		fprintf(stderr, "%s: %s\n", findings.items[i].place.file, findings.items[i].what);
	ts_text_drop(&out);
	ts_findings_drop(&findings);
	ts_catalogue_close(&catalogue);
	return fine;
}

int main(int argc, char **argv)
{
	struct dependencies d = {.last = 0};
	struct ts_arena arena;
	bool fine;

	if (argc != 4)
		return 2;
	ts_arena_open(&arena, NULL);
	ts_text_open(&d.text, NULL);
	ts_text_puts(&d.text, argv[2], ":", NULL);
	fine = compile(argv[1], argv[2]) &&
	       ts_catalogue_walk(NULL, &arena, argv[1], depend, &d, NULL) == TS_OK;
	ts_text_put(&d.text, "\n");
	fine = fine && write_file(argv[3], &d.text);
	ts_text_drop(&d.text);
	ts_arena_drop(&arena);
	return fine ? 0 : 3;
}
