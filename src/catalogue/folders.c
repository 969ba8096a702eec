/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Walking a folder of records. What somebody's cloud, editor or backup leaves in it is said and
 * left out, and stops no answer.
 */
#include "catalogue/folders.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "base/findings.h"
#include "model/codes.h"

#define DEPTH_MOST 4

struct walk {
	const struct ts_system *system;
	struct ts_arena *arena;
	ts_record_visit *visit;
	void *state;
	struct ts_findings *findings;
};

struct listing {
	struct ts_arena *arena;
	const char *folder;
	struct ts_texts paths;
	size_t room;
};

static bool ends_with(const char *text, const char *end)
{
	size_t len = strlen(text), end_len = strlen(end);

	return len > end_len && strcmp(text + len - end_len, end) == 0;
}

static int compare_paths(const void *a, const void *b)
{
	return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static bool add_path(void *to, const char *name)
{
	struct listing *l = to;
	const char **items;

	if (name[0] == '.' || strcmp(name, "sources") == 0)
		return true;
	items = ts_arena_grow(l->arena, l->paths.items, l->paths.count, &l->room, sizeof *items);
	if (!items)
		return false;
	l->paths.items = items;
	items[l->paths.count] = ts_arena_join(l->arena, l->folder, "/", name, NULL);
	return items[l->paths.count++];
}

/* What stands in a folder, as paths, sorted: findings come in the same order on every machine. */
static enum ts_status list(const struct walk *w, const char *folder, struct ts_texts *ret)
{
	struct listing l = {.arena = w->arena, .folder = folder};
	int why = w->system->list(w->system->state, folder, add_path, &l);

	if (why == ENOMEM || w->arena->failed)
		return TS_NO_MEMORY;
	if (why) {
		struct ts_place place = {.file = folder};

		ts_finding_add(w->findings, &ts_codes[TS_C_RECORDS_UNREADABLE], &place,
			ts_system_says(why), "name a folder of species records");
		return TS_SYSTEM;
	}
	if (l.paths.count)
		qsort(l.paths.items, l.paths.count, sizeof *l.paths.items, compare_paths);
	*ret = l.paths;
	return TS_OK;
}

/* Nobody asked for this one by name: a pipe would be waited for, a device has no end. */
static enum ts_status say_no_file(const struct walk *w, const char *path)
{
	struct ts_place place = {.file = path};

	ts_finding_add(w->findings, &ts_codes[TS_C_RECORDS_UNREADABLE], &place,
		"neither a file nor a folder", "take it out of the folder");
	return TS_SYSTEM;
}

static enum ts_status leave_out(const struct walk *w, const char *path, const char *what)
{
	struct ts_place place = {.file = path};

	ts_finding_add(w->findings, &ts_codes[TS_C_CATALOGUE_LEFT_OUT], &place, what, NULL);
	return TS_OK;
}

static enum ts_status walk_below(const struct walk *w, const char *folder, unsigned depth);

static enum ts_status walk_one(const struct walk *w, const char *path, unsigned depth)
{
	struct ts_seen seen;
	int why = w->system->look(w->system->state, path, &seen);

	if (!why && seen.entry == TS_ENTRY_FOLDER)
		return depth < DEPTH_MOST ? walk_below(w, path, depth + 1)
					  : leave_out(w, path, "a folder below four others");
	if (!ends_with(path, ".yaml") && !ends_with(path, ".yml"))
		return TS_OK;
	if (why == ENOENT || why == ELOOP)
		return leave_out(w, path, "a link that leads nowhere");
	if (!why && seen.entry != TS_ENTRY_FILE)
		return say_no_file(w, path);
	return w->visit(w->state, path, why ? NULL : &seen);
}

static enum ts_status walk_below(const struct walk *w, const char *folder, unsigned depth)
{
	struct ts_texts paths = {0};
	enum ts_status worst = list(w, folder, &paths);

	for (size_t i = 0; i < paths.count && worst != TS_NO_MEMORY; i++) {
		enum ts_status status = walk_one(w, paths.items[i], depth);

		if (status > worst || status == TS_NO_MEMORY)
			worst = status;
	}
	return worst;
}

enum ts_status ts_catalogue_walk(const struct ts_system *system, struct ts_arena *arena,
	const char *folder, ts_record_visit *visit, void *state, struct ts_findings *findings)
{
	struct walk w = {system ? system : ts_system_machine(), arena, visit, state, findings};

	return walk_below(&w, folder, 0);
}
