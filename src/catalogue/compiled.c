/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What an image holds: the files it was made of, and the animals in them, both along rows.
 */
#include "catalogue/compiled.h"

#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "catalogue/folders.h"
#include "model/shape.h"
#include "records/image.h"

/* The time in hours, seconds and nanoseconds, each a figure as records may have it. */
struct file {
	const char *path; /* as seen from the folder */
	double size, hours, seconds, nanoseconds;
};

struct compiled {
	struct file *files;
	size_t file_count;
	struct ts_species *species; /* of the file of the same index */
	size_t species_count;
};

static const struct ts_field file_fields[] = {
	{"path", TS_TEXT, TS_REQUIRED, TS_Q_NUMBER, offsetof(struct file, path), 0, NULL, NULL, ""},
	{"size", TS_NUMBER, TS_REQUIRED, TS_Q_NUMBER, offsetof(struct file, size), 0, NULL, NULL,
		""},
	{"hours", TS_NUMBER, TS_REQUIRED, TS_Q_NUMBER, offsetof(struct file, hours), 0, NULL, NULL,
		""},
	{"seconds", TS_NUMBER, TS_REQUIRED, TS_Q_NUMBER, offsetof(struct file, seconds), 0, NULL,
		NULL, ""},
	{"nanoseconds", TS_NUMBER, TS_REQUIRED, TS_Q_NUMBER, offsetof(struct file, nanoseconds), 0,
		NULL, NULL, ""},
};
static const struct ts_shape shape_file = {
	"file", file_fields, sizeof file_fields / sizeof *file_fields, sizeof(struct file), false};

static const struct ts_field compiled_fields[] = {
	{"files", TS_LIST, TS_REQUIRED, TS_Q_NUMBER, offsetof(struct compiled, files),
		offsetof(struct compiled, file_count), NULL, &shape_file, ""},
	{"species", TS_LIST, TS_REQUIRED, TS_Q_NUMBER, offsetof(struct compiled, species),
		offsetof(struct compiled, species_count), NULL, &ts_shape_species, ""},
};
static const struct ts_shape shape_compiled = {"compiled", compiled_fields,
	sizeof compiled_fields / sizeof *compiled_fields, sizeof(struct compiled), false};

static void look_at(const struct ts_seen *seen, struct file *ret)
{
	const int64_t seconds = seen->modified_ns / 1000000000, hours = seconds / 3600;

	ret->size = (double)seen->size;
	ret->hours = (double)hours;
	ret->seconds = (double)(seconds - 3600 * hours);
	ret->nanoseconds = (double)(seen->modified_ns % 1000000000);
}

bool ts_catalogue_compile(const struct ts_catalogue *catalogue, struct ts_text *out)
{
	struct ts_arena arena;
	struct compiled all = {.file_count = catalogue->count, .species_count = catalogue->count};
	bool fine = catalogue->folders.count == 1;
	size_t skip = fine ? strlen(catalogue->folders.items[0]) + 1 : 0;

	ts_arena_open(&arena, &out->allocator);
	all.files = ts_arena_array(&arena, catalogue->count, sizeof *all.files);
	all.species = ts_arena_array(&arena, catalogue->count, sizeof *all.species);
	for (size_t i = 0; fine && all.files && all.species && i < catalogue->count; i++) {
		const struct ts_system *system = ts_system_machine();
		struct ts_seen seen;

		all.species[i] = *catalogue->items[i];
		all.files[i].path = all.species[i].file + skip;
		fine = system->look(system->state, all.species[i].file, &seen) == 0;
		if (fine)
			look_at(&seen, &all.files[i]);
	}
	if (fine && (arena.failed || !ts_image_write(out, &shape_compiled, &all)))
		out->failed = true;
	ts_arena_drop(&arena);
	return fine && !out->failed;
}

static int by_path(const void *a, const void *b)
{
	return strcmp(((const struct file *)a)->path, ((const struct file *)b)->path);
}

struct same {
	const struct file *files; /* sorted */
	size_t count, seen, skip;
};

/* TS_NO for a record of the folder that is not the one of which the image was made. */
static enum ts_status is_same(void *state, const char *path, const struct ts_seen *seen)
{
	struct same *s = state;
	struct file now = {.path = path + s->skip};
	const struct file *then = bsearch(&now, s->files, s->count, sizeof now, by_path);

	s->seen++;
	if (!seen)
		return TS_NO;
	look_at(seen, &now);
	return then && now.size == then->size && now.hours == then->hours &&
			       now.seconds == then->seconds && now.nanoseconds == then->nanoseconds
		       ? TS_OK
		       : TS_NO;
}

/* Every file of the image stands in the folder unchanged, and no other does. */
static bool unchanged(const struct ts_system *system, struct ts_arena *scratch,
	const struct compiled *all, const char *folder)
{
	struct same same = {.count = all->file_count, .skip = strlen(folder) + 1};
	struct file *sorted = ts_arena_array(scratch, all->file_count, sizeof *sorted);

	if (!sorted)
		return false;
	memcpy(sorted, all->files, all->file_count * sizeof *sorted);
	qsort(sorted, all->file_count, sizeof *sorted, by_path);
	same.files = sorted;
	return ts_catalogue_walk(system, scratch, folder, is_same, &same, NULL) == TS_OK &&
	       same.seen == all->file_count;
}

static enum ts_status take(struct ts_catalogue *catalogue, struct compiled *all, const char *folder)
{
	for (size_t i = 0; i < all->species_count; i++) {
		struct ts_species *species = &all->species[i];

		species->file = folder ? ts_arena_join(&catalogue->arena, folder, "/",
						 all->files[i].path, NULL)
				       : all->files[i].path;
		if (!species->file)
			return TS_NO_MEMORY;
	}
	return ts_catalogue_take(catalogue, folder ? folder : "", all->species, all->species_count);
}

enum ts_status ts_catalogue_add_image(
	struct ts_catalogue *catalogue, const char *bytes, size_t len, const char *folder)
{
	struct ts_arena scratch;
	struct compiled all = {0};
	enum ts_status status = ts_image_read(bytes, len, &shape_compiled, &catalogue->arena, &all);

	if (status == TS_OK && (!all.species_count || all.species_count != all.file_count))
		status = TS_NO;
	ts_arena_open(&scratch, &catalogue->arena.allocator);
	if (status == TS_OK && folder && !unchanged(catalogue->system, &scratch, &all, folder))
		status = scratch.failed ? TS_NO_MEMORY : TS_NO;
	ts_arena_drop(&scratch);
	return status == TS_OK ? take(catalogue, &all, folder) : status;
}
