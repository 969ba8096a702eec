/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Finding our own data relative to the program, so that any install prefix works, and other
 * people's by the XDG base directory specification.
 */
#include "home/paths.h"

#include <string.h>

#include "base/arena.h"
#include "records/file.h"

/* A file of one line that the build wrote. */
#define NOTE_MOST 4096

static bool is_a(const struct ts_system *system, const char *path, enum ts_entry entry)
{
	struct ts_seen seen;

	return path && system->look(system->state, path, &seen) == 0 && seen.entry == entry;
}

/* The path without so many of its last names. */
static const char *above(struct ts_arena *arena, const char *path, int names)
{
	size_t len = path ? strlen(path) : 0;

	while (names-- && len) {
		while (len && path[len - 1] != '/')
			len--;
		len -= len > 0;
	}
	return path ? ts_arena_text(arena, path, len) : NULL;
}

/* A program in its build folder finds a note of where the source tree lies beside itself. */
static const char *noted(const struct ts_system *system, struct ts_arena *arena, const char *folder)
{
	const char *note = ts_arena_join(arena, folder, "/shipped-species", NULL), *line = NULL;
	enum ts_status status;
	char *bytes;
	size_t len;

	if (!is_a(system, note, TS_ENTRY_FILE))
		return NULL;
	status = ts_file_read(
		system, note, TS_OPEN_ORDINARY, NOTE_MOST, &arena->allocator, &bytes, &len, NULL);
	arena->failed |= status == TS_NO_MEMORY;
	if (status != TS_OK)
		return NULL;
	for (size_t i = 0; i < len; i++)
		len = bytes[i] == '\n' ? i : len;
	line = ts_arena_text(arena, bytes, len);
	arena->allocator.resize(arena->allocator.state, bytes, 0);
	return line;
}

/* The folder of the running program; NULL: not to be known, or no memory. */
static const char *program_folder(const struct ts_system *system, struct ts_arena *arena)
{
	char room[4096];

	return system->program(system->state, room, sizeof room)
		       ? ts_arena_text(arena, room, strlen(room))
		       : NULL;
}

static const char *shipped(const struct ts_system *system, struct ts_arena *arena)
{
	const char *self = program_folder(system, arena), *folder;

	if (!self)
		return NULL;
	folder = noted(system, arena, self);
	if (is_a(system, folder, TS_ENTRY_FOLDER))
		return folder;
	folder = ts_arena_join(
		arena, above(arena, self, 1), "/share/tapshoal/shipped/species", NULL);
	return is_a(system, folder, TS_ENTRY_FOLDER) ? folder : NULL;
}

static bool same_folder(const struct ts_system *system, const char *a, const char *b)
{
	struct ts_seen x, y;

	return system->look(system->state, a, &x) == 0 && system->look(system->state, b, &y) == 0 &&
	       x.device == y.device && x.inode == y.inode;
}

/* Adds the folder of species records below a data folder, if it is there and new. */
static void add_data_folder(const struct ts_system *system, struct ts_arena *arena,
	const char *data, size_t len, struct ts_texts *ret, size_t most)
{
	const char *start = len && data[0] == '/' ? ts_arena_text(arena, data, len) : NULL;
	const char *folder = start ? ts_arena_join(arena, start, "/tapshoal/species", NULL) : NULL;

	if (!is_a(system, folder, TS_ENTRY_FOLDER) || ret->count == most)
		return;
	for (size_t i = 0; i < ret->count; i++) {
		if (same_folder(system, ret->items[i], folder))
			return;
	}
	ret->items[ret->count++] = folder;
}

static const char *example(const struct ts_system *system, struct ts_arena *arena, const char *name,
	enum ts_entry entry)
{
	const char *here = ts_arena_join(arena, "examples/", name, NULL);
	const char *species = shipped(system, arena), *there;

	if (is_a(system, here, entry))
		return here;
	there = ts_arena_join(arena, above(arena, species, 1), "/examples/", name, NULL);
	if (species && !is_a(system, there, entry))
		there = ts_arena_join(
			arena, above(arena, species, 3), "/doc/tapshoal/examples/", name, NULL);
	return species && is_a(system, there, entry) ? there : NULL;
}

const char *paths_example(const struct ts_system *system, struct ts_arena *arena, const char *name)
{
	return example(system, arena, name, TS_ENTRY_FILE);
}

const char *paths_examples(
	const struct ts_system *system, struct ts_arena *arena, const char *folder)
{
	return example(system, arena, folder, TS_ENTRY_FOLDER);
}

const char *paths_image(const struct ts_system *system, struct ts_arena *arena)
{
	const char *folder = program_folder(system, arena), *file;

	if (!folder)
		return NULL;
	file = ts_arena_join(arena, folder, "/species.image", NULL);
	if (!is_a(system, file, TS_ENTRY_FILE))
		file = ts_arena_join(arena, above(arena, folder, 1),
			"/share/tapshoal/shipped/species.image", NULL);
	return is_a(system, file, TS_ENTRY_FILE) ? file : NULL;
}

const char *paths_page(const struct ts_system *system, struct ts_arena *arena)
{
	const char *folder = program_folder(system, arena), *file;

	if (!folder)
		return NULL;
	file = ts_arena_join(arena, above(arena, folder, 1), "/share/tapshoal/tapshoal.html", NULL);
	if (!is_a(system, file, TS_ENTRY_FILE)) /* in a build folder */
		file = ts_arena_join(arena, above(arena, folder, 2), "/page/tapshoal.html", NULL);
	return is_a(system, file, TS_ENTRY_FILE) ? file : NULL;
}

#define FOLDERS_MOST 32

bool paths_species(const struct ts_system *system, struct ts_arena *arena, struct ts_texts *ret)
{
	const char *dirs = system->variable(system->state, "XDG_DATA_DIRS");
	const char *own = system->variable(system->state, "XDG_DATA_HOME");
	const char *home = system->variable(system->state, "HOME");
	const char *first = shipped(system, arena);
	size_t end;

	*ret = (struct ts_texts){ts_arena_array(arena, FOLDERS_MOST, sizeof *ret->items), 0};
	if (!ret->items || (!first && !system->inside))
		return false;
	if (first)
		ret->items[ret->count++] = first;
	dirs = dirs && *dirs ? dirs : "/usr/local/share:/usr/share";
	for (end = strlen(dirs);; end--) { /* the first of them counts most, so it comes last */
		size_t start = end;

		while (start && dirs[start - 1] != ':')
			start--;
		add_data_folder(system, arena, dirs + start, end - start, ret, FOLDERS_MOST - 1);
		end = start;
		if (!end)
			break;
	}
	if (!own || !*own)
		own = home ? ts_arena_join(arena, home, "/.local/share", NULL) : NULL;
	if (own)
		add_data_folder(system, arena, own, strlen(own), ret, FOLDERS_MOST);
	return first != NULL;
}
