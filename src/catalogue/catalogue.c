/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Folders of species records into one sorted catalogue, and the look-up of a name as somebody types
 * it. The strict reader is records/load.c.
 */
#include <tapshoal/catalogue.h>

#include <dirent.h>
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/stat.h>

#include "base/arena.h"
#include "base/findings.h"
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
	catalogue->items = NULL;
	catalogue->count = catalogue->room = 0;
}

/* The file's stem: "hyphessobrycon-amandae" of ".../hyphessobrycon-amandae.yaml". */
static size_t stem(const char *file, const char **ret)
{
	const char *slash = strrchr(file, '/');
	const char *start = slash ? slash + 1 : file;
	const char *dot = strrchr(start, '.');

	*ret = start;
	return dot ? (size_t)(dot - start) : strlen(start);
}

static int compare(const struct ts_species *a, const struct ts_species *b)
{
	int by_name = strcmp(a->species, b->species);

	return by_name ? by_name : strcmp(a->form ? a->form : "", b->form ? b->form : "");
}

static int compare_items(const void *a, const void *b)
{
	return compare(*(const struct ts_species *const *)a, *(const struct ts_species *const *)b);
}

static bool inside(const struct ts_range *inner, const struct ts_range *outer)
{
	return isnan(inner->low) || isnan(outer->low) ||
	       (inner->low >= outer->low && inner->high <= outer->high);
}

static bool check_envelopes(
	const struct ts_envelopes *e, const char *file, struct ts_findings *findings)
{
	const struct {
		const char *path;
		const struct ts_envelope *envelope;
	} all[] = {{"water.pH", &e->ph}, {"water.GH", &e->gh_dh}, {"water.KH", &e->kh_dh},
		{"water.temperature", &e->temp_c}, {"water.salinity", &e->salinity_g_l}};
	bool ok = true;

	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		struct ts_place place = {file, 0, 0, all[i].path};

		if (!inside(&all[i].envelope->preferred, &all[i].envelope->tolerated))
			ok = ts_finding_add(findings, &ts_codes[TS_C_RECORDS_INNER_RANGE], &place,
				"preferred reaches beyond tolerated", NULL);
	}
	return ok;
}

/* A parameter that a record does not name is "not given", not 0..0. */
static void blank(struct ts_envelopes *e)
{
	struct ts_envelope *all[] = {&e->ph, &e->gh_dh, &e->kh_dh, &e->temp_c, &e->salinity_g_l};

	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		if (all[i]->source.count)
			continue;
		all[i]->tolerated = (struct ts_range){(double)NAN, (double)NAN};
		all[i]->preferred = all[i]->tolerated;
	}
}

static enum ts_status add_file(
	struct ts_catalogue *catalogue, const char *file, struct ts_findings *findings)
{
	struct ts_species *species = ts_arena_take(&catalogue->arena, sizeof *species);
	const struct ts_species **items;
	enum ts_status status;

	if (!species)
		return TS_NO_MEMORY;
	status = ts_records_load(&ts_shape_species, file, &catalogue->arena, species, findings);
	if (status)
		return status;
	if (!check_envelopes(&species->water.usual, file, findings))
		return TS_BAD_INPUT;
	blank(&species->water.usual);
	blank(&species->water.wild);
	blank(&species->water.breeding);
	species->file = ts_arena_text(&catalogue->arena, file, strlen(file));
	for (size_t i = 0; i < catalogue->count; i++) {
		if (compare(catalogue->items[i], species) == 0) {
			catalogue->items[i] = species;
			return TS_OK;
		}
	}
	items = ts_arena_grow(&catalogue->arena, catalogue->items, catalogue->count,
		&catalogue->room, sizeof *items);
	if (!items)
		return TS_NO_MEMORY;
	catalogue->items = items;
	catalogue->items[catalogue->count++] = species;
	return TS_OK;
}

static bool ends_with(const char *text, const char *end)
{
	size_t len = strlen(text), end_len = strlen(end);

	return len > end_len && strcmp(text + len - end_len, end) == 0;
}

static enum ts_status add_below(struct ts_catalogue *catalogue, const char *folder, unsigned depth,
	struct ts_findings *findings)
{
	DIR *dir = opendir(folder);
	enum ts_status worst = TS_OK;
	const struct dirent *entry;

	if (!dir) {
		struct ts_place place = {.file = folder};

		ts_finding_add(findings, &ts_codes[TS_C_RECORDS_UNREADABLE], &place,
			strerror(errno), "name a folder of species records");
		return TS_SYSTEM;
	}
	while (worst != TS_NO_MEMORY && (entry = readdir(dir))) {
		struct stat info;
		enum ts_status status = TS_OK;
		const char *path;

		if (entry->d_name[0] == '.' || strcmp(entry->d_name, "sources") == 0)
			continue;
		path = ts_arena_join(&catalogue->arena, folder, "/", entry->d_name, NULL);
		if (!path)
			status = TS_NO_MEMORY;
		else if (ends_with(path, ".yaml"))
			status = add_file(catalogue, path, findings);
		else if (depth < 4 && stat(path, &info) == 0 && S_ISDIR(info.st_mode))
			status = add_below(catalogue, path, depth + 1, findings);
		if (status > worst || status == TS_NO_MEMORY)
			worst = status;
	}
	closedir(dir);
	return worst;
}

enum ts_status ts_catalogue_add_file(
	struct ts_catalogue *catalogue, const char *file, struct ts_findings *findings)
{
	return add_file(catalogue, file, findings);
}

enum ts_status ts_catalogue_add_folder(
	struct ts_catalogue *catalogue, const char *folder, struct ts_findings *findings)
{
	enum ts_status status = add_below(catalogue, folder, 0, findings);

	if (catalogue->count)
		qsort(catalogue->items, catalogue->count, sizeof *catalogue->items, compare_items);
	return catalogue->arena.failed ? TS_NO_MEMORY : status;
}

static bool among(const struct ts_texts *texts, const char *name)
{
	for (size_t i = 0; i < texts->count; i++) {
		if (strcasecmp(texts->items[i], name) == 0)
			return true;
	}
	return false;
}

static bool is_called(const struct ts_species *s, const char *name)
{
	const struct ts_texts *const lists[] = {&s->synonyms, &s->common.en, &s->common.de,
		&s->common.fr, &s->common.nl, &s->common.es, &s->common.it};
	const char *start;
	size_t len = stem(s->file, &start);

	if (strcasecmp(s->species, name) == 0)
		return true;
	if (strlen(name) == len && strncasecmp(start, name, len) == 0)
		return true;
	for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
		if (among(lists[i], name))
			return true;
	}
	return false;
}

const struct ts_species *ts_catalogue_species(
	const struct ts_catalogue *catalogue, const char *name, size_t *ret_count)
{
	const struct ts_species *found = NULL;
	size_t count = 0;

	for (size_t i = 0; i < catalogue->count; i++) {
		if (is_called(catalogue->items[i], name)) {
			found = catalogue->items[i];
			count++;
		}
	}
	if (ret_count)
		*ret_count = count;
	return count == 1 ? found : NULL;
}

enum ts_status ts_water_load(const char *file, struct ts_arena *arena, struct ts_water *ret,
	struct ts_findings *findings)
{
	struct ts_water water;
	enum ts_status status = ts_records_load(&ts_shape_water, file, arena, &water, findings);

	if (status == TS_OK)
		*ret = water;
	return status;
}
