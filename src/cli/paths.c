/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Finding our own data relative to the program, so that any install prefix works, and other
 * people's by the XDG base directory specification.
 */
#include "cli/paths.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/arena.h"

/* A program in its build folder finds a note of where the source tree lies beside itself. */
static const char *noted(struct ts_arena *arena, const char *folder)
{
	const char *note = ts_arena_join(arena, folder, "/shipped-species", NULL);
	char line[4096];
	FILE *stream = note ? fopen(note, "r") : NULL;
	size_t len;

	if (!stream)
		return NULL;
	len = fread(line, 1, sizeof line - 1, stream);
	fclose(stream);
	line[len] = '\0';
	line[strcspn(line, "\n")] = '\0';
	return ts_arena_text(arena, line, strlen(line));
}

static bool is_folder(const char *path)
{
	struct stat info;

	return path && stat(path, &info) == 0 && S_ISDIR(info.st_mode);
}

/* The folder of the running program, in the caller's memory; NULL: not to be known. */
static const char *program_folder(char *room, size_t size)
{
	ssize_t len = readlink("/proc/self/exe", room, size - 1);
	char *slash;

	if (len <= 0)
		return NULL;
	room[len] = '\0';
	slash = strrchr(room, '/');
	if (!slash)
		return NULL;
	*slash = '\0';
	return room;
}

static const char *shipped(struct ts_arena *arena)
{
	char room[4096];
	const char *self = program_folder(room, sizeof room), *folder;

	if (!self)
		return NULL;
	folder = noted(arena, self);
	if (is_folder(folder))
		return folder;
	folder = ts_arena_join(arena, self, "/../share/tapshoal/shipped/species", NULL);
	return is_folder(folder) ? folder : NULL;
}

static bool same_folder(const char *a, const char *b)
{
	struct stat x, y;

	return stat(a, &x) == 0 && stat(b, &y) == 0 && x.st_dev == y.st_dev && x.st_ino == y.st_ino;
}

/* Adds the folder of species records below a data folder, if it is there and new. */
static void add_data_folder(
	struct ts_arena *arena, const char *data, size_t len, struct ts_texts *ret, size_t most)
{
	const char *start = len && data[0] == '/' ? ts_arena_text(arena, data, len) : NULL;
	const char *folder = start ? ts_arena_join(arena, start, "/tapshoal/species", NULL) : NULL;

	if (!is_folder(folder) || ret->count == most)
		return;
	for (size_t i = 0; i < ret->count; i++) {
		if (same_folder(ret->items[i], folder))
			return;
	}
	ret->items[ret->count++] = folder;
}

const char *paths_example(struct ts_arena *arena, const char *name)
{
	static const char *const beside[] = {"/../examples/", "/../../../doc/tapshoal/examples/"};
	const char *here = ts_arena_join(arena, "examples/", name, NULL);
	const char *species = shipped(arena), *path = NULL;

	if (here && access(here, R_OK) == 0)
		return here;
	for (size_t i = 0; species && i < sizeof beside / sizeof *beside && !path; i++) {
		const char *there = ts_arena_join(arena, species, beside[i], name, NULL);
		char *real = there ? realpath(there, NULL) : NULL;

		path = real ? ts_arena_text(arena, real, strlen(real)) : NULL;
		free(real);
	}
	return path;
}

#define FOLDERS_MOST 32

const char *paths_image(struct ts_arena *arena)
{
	static const char *const beside[] = {
		"/species.image", "/../share/tapshoal/shipped/species.image"};
	char self[4096];
	const char *folder = program_folder(self, sizeof self);

	for (size_t i = 0; folder && i < sizeof beside / sizeof *beside; i++) {
		const char *file = ts_arena_join(arena, folder, beside[i], NULL);

		if (file && access(file, R_OK) == 0)
			return file;
	}
	return NULL;
}

bool paths_species(struct ts_arena *arena, struct ts_texts *ret)
{
	const char *dirs = getenv("XDG_DATA_DIRS"), *own = getenv("XDG_DATA_HOME");
	const char *home = getenv("HOME"), *first = shipped(arena);
	size_t end;

	*ret = (struct ts_texts){ts_arena_array(arena, FOLDERS_MOST, sizeof *ret->items), 0};
	if (!ret->items || !first)
		return false;
	ret->items[ret->count++] = first;
	dirs = dirs && *dirs ? dirs : "/usr/local/share:/usr/share";
	for (end = strlen(dirs);; end--) { /* the first of them counts most, so it comes last */
		size_t start = end;

		while (start && dirs[start - 1] != ':')
			start--;
		add_data_folder(arena, dirs + start, end - start, ret, FOLDERS_MOST - 1);
		end = start;
		if (!end)
			break;
	}
	if (!own || !*own)
		own = home ? ts_arena_join(arena, home, "/.local/share", NULL) : NULL;
	if (own)
		add_data_folder(arena, own, strlen(own), ret, FOLDERS_MOST);
	return true;
}
