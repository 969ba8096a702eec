/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Folders of species records into one sorted catalogue, later folders over earlier ones. The strict
 * reader is records/load.c, the look-up of a name names.c.
 */
#include <tapshoal/catalogue.h>

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "base/findings.h"
#include "base/text.h"
#include "catalogue/folders.h"
#include "model/codes.h"
#include "records/load.h"

void ts_catalogue_open(struct ts_catalogue *catalogue, const struct ts_allocator *allocator)
{
	*catalogue = (struct ts_catalogue){0};
	ts_arena_open(&catalogue->arena, allocator);
}

void ts_catalogue_close(struct ts_catalogue *catalogue)
{
	ts_arena_drop(&catalogue->arena);
	*catalogue = (struct ts_catalogue){.arena = catalogue->arena};
}

static int compare(const struct ts_species *a, const struct ts_species *b)
{
	int by_name = strcmp(a->species, b->species);

	return by_name ? by_name : strcmp(a->form ? a->form : "", b->form ? b->form : "");
}

/* By name and form, then earlier folders first, then by file, the shorter name first. */
static int compare_items(const void *a, const void *b)
{
	const struct ts_species *x = *(const struct ts_species *const *)a;
	const struct ts_species *y = *(const struct ts_species *const *)b;
	int by_name = compare(x, y);

	if (by_name)
		return by_name;
	if (x->folder != y->folder)
		return (x->folder > y->folder) - (x->folder < y->folder);
	/* "guppy (copy).yaml" behind "guppy.yaml" */
	if (strlen(x->file) != strlen(y->file))
		return strlen(x->file) < strlen(y->file) ? -1 : 1;
	return strcmp(x->file, y->file);
}

static bool inside(const struct ts_range *inner, const struct ts_range *outer)
{
	return isnan(inner->low) || isnan(outer->low) ||
	       (inner->low >= outer->low && inner->high <= outer->high);
}

/* `of` is "", "wild." or "breeding." */
static bool check_envelopes(const struct ts_envelopes *e, const char *of, const char *file,
	struct ts_findings *findings)
{
	const struct {
		const char *key;
		const struct ts_envelope *envelope;
	} all[] = {{"pH", &e->ph}, {"GH", &e->gh_dh}, {"KH", &e->kh_dh},
		{"temperature", &e->temp_c}, {"salinity", &e->salinity_g_l}};
	bool ok = true;

	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		char path[64];
		struct ts_place place = {file, 0, 0, path};

		if (!all[i].envelope->source.count ||
			inside(&all[i].envelope->preferred, &all[i].envelope->tolerated))
			continue;
		ts_text_fit(path, sizeof path, "water.", of, all[i].key, NULL);
		ok = ts_finding_add(findings, &ts_codes[TS_C_RECORDS_INNER_RANGE], &place,
			"preferred reaches beyond tolerated", NULL);
	}
	return ok;
}

#define NAME_BYTES_MOST 120

/*
 * A name is shown, typed, completed by shells and written into files of every kind: letters, digits
 * and a few marks, nothing that is not seen.
 */
static bool is_name(const char *name)
{
	static const char marks[] = " -'.,()/&+:#\"";
	size_t len = strlen(name);

	if (!len || len > NAME_BYTES_MOST || strchr(" -+'.,)/&:", *name))
		return false;
	for (size_t step; *name; name += step) {
		unsigned char c = (unsigned char)*name;
		bool letter = (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
			      (c >= '0' && c <= '9') || c >= 0x80;

		step = ts_text_sequence(name);
		if (!step || ts_text_control(name) || !(letter || strchr(marks, c)))
			return false;
	}
	return true;
}

static bool check_names(
	const struct ts_species *species, const char *file, struct ts_findings *findings)
{
	struct ts_place place = {.file = file};
	const char *name = species->form;
	bool fine = true;

	for (size_t i = 0; name || i == 0; i++) {
		if (name && !is_name(name))
			fine &= ts_finding_addf(findings, &ts_codes[TS_C_RECORDS_NAME], &place,
				NULL, "'", name, "' is no name", NULL);
		name = ts_species_name(species, i);
	}
	return fine;
}

static bool keep(struct ts_catalogue *catalogue, const struct ts_species *species)
{
	const struct ts_species **items = ts_arena_grow(&catalogue->arena, catalogue->items,
		catalogue->count, &catalogue->room, sizeof *items);

	if (!items)
		return false;
	catalogue->items = items;
	items[catalogue->count++] = species;
	return true;
}

static enum ts_status add_file(struct ts_catalogue *catalogue, const char *file, size_t folder,
	struct ts_findings *findings)
{
	struct ts_species *species = ts_arena_take(&catalogue->arena, sizeof *species);
	enum ts_status status;
	bool fine;

	if (!species)
		return TS_NO_MEMORY;
	status = ts_records_load(&ts_shape_species, catalogue->system, file,
		folder == SIZE_MAX ? TS_OPEN_ANY : TS_OPEN_ORDINARY, &catalogue->arena, species,
		findings);
	if (status)
		return status;
	fine = check_envelopes(&species->water.usual, "", file, findings);
	fine &= check_envelopes(&species->water.wild, "wild.", file, findings);
	fine &= check_envelopes(&species->water.breeding, "breeding.", file, findings);
	fine &= check_names(species, file, findings);
	if (!fine)
		return TS_BAD_INPUT;
	species->file = ts_arena_text(&catalogue->arena, file, strlen(file));
	species->folder = folder;
	if (!species->file)
		return TS_NO_MEMORY;
	return keep(catalogue, species) ? TS_OK : TS_NO_MEMORY;
}

enum ts_status ts_catalogue_add_file(
	struct ts_catalogue *catalogue, const char *file, struct ts_findings *findings)
{
	return add_file(catalogue, file, SIZE_MAX, findings);
}

/* One folder more; false: no memory. */
static bool begin_folder(struct ts_catalogue *catalogue, const char *folder)
{
	const char **items = ts_arena_grow(&catalogue->arena, catalogue->folders.items,
		catalogue->folders.count, &catalogue->folder_room, sizeof *items);

	if (!items)
		return false;
	catalogue->folders.items = items;
	items[catalogue->folders.count] = ts_arena_text(&catalogue->arena, folder, strlen(folder));
	return items[catalogue->folders.count++];
}

static void sort(struct ts_catalogue *catalogue)
{
	if (catalogue->count)
		qsort(catalogue->items, catalogue->count, sizeof *catalogue->items, compare_items);
}

struct reading {
	struct ts_catalogue *catalogue;
	struct ts_findings *findings;
};

static enum ts_status read_one(void *state, const char *path, const struct ts_seen *seen)
{
	const struct reading *r = state;

	(void)seen; /* a file that cannot be looked at is said by its reader */
	return add_file(r->catalogue, path, r->catalogue->folders.count - 1, r->findings);
}

enum ts_status ts_catalogue_read(
	struct ts_catalogue *catalogue, const char *folder, struct ts_findings *findings)
{
	struct reading r = {catalogue, findings};
	enum ts_status status;

	if (!begin_folder(catalogue, folder))
		return TS_NO_MEMORY;
	status = ts_catalogue_walk(
		catalogue->system, &catalogue->arena, folder, read_one, &r, findings);
	sort(catalogue);
	return catalogue->arena.failed ? TS_NO_MEMORY : status;
}

/* Are both of one species, form and folder? Then the second file is left out, and that is said. */
static bool twice(const struct ts_species *first, const struct ts_species *second,
	struct ts_findings *findings)
{
	struct ts_place place = {.file = second->file};

	if (compare(first, second) != 0 || first->folder != second->folder)
		return false;
	ts_finding_addf(findings, &ts_codes[TS_C_CATALOGUE_LEFT_OUT], &place, "keep one of the two",
		second->species, second->form ? " " : "", second->form ? second->form : "",
		" has a record already, ", first->file, "; that one is used", NULL);
	return true;
}

/* One record a species and form: that of the latest folder. */
static enum ts_status settle(struct ts_catalogue *catalogue, struct ts_findings *findings)
{
	size_t kept = 0;

	for (size_t i = 0; i < catalogue->count; i++) {
		const struct ts_species *species = catalogue->items[i];
		const struct ts_species *last = kept ? catalogue->items[kept - 1] : NULL;

		if (!last || compare(last, species) != 0) {
			catalogue->items[kept++] = species;
		} else if (!twice(last, species, findings)) {
			struct ts_species *over = ts_arena_take(&catalogue->arena, sizeof *over);

			if (!over)
				return TS_NO_MEMORY;
			*over = *species;
			over->replaces = last->file;
			catalogue->items[kept - 1] = over;
		}
	}
	catalogue->count = kept;
	return TS_OK;
}

enum ts_status ts_catalogue_add_folder(
	struct ts_catalogue *catalogue, const char *folder, struct ts_findings *findings)
{
	enum ts_status status = ts_catalogue_read(catalogue, folder, findings), settled;

	if (status == TS_NO_MEMORY)
		return status;
	settled = settle(catalogue, findings);
	if (settled == TS_NO_MEMORY || (findings && findings->no_memory))
		return TS_NO_MEMORY;
	return settled > status ? settled : status;
}

enum ts_status ts_catalogue_take(struct ts_catalogue *catalogue, const char *folder,
	struct ts_species *species, size_t count)
{
	if (!begin_folder(catalogue, folder))
		return TS_NO_MEMORY;
	for (size_t i = 0; i < count; i++) {
		species[i].folder = catalogue->folders.count - 1;
		if (!keep(catalogue, &species[i]))
			return TS_NO_MEMORY;
	}
	sort(catalogue);
	return settle(catalogue, NULL);
}
