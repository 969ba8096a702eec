/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Finding our own data relative to the program, so that any install prefix works.
 */
#include "cli/paths.h"

#include <stdio.h>
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

const char *paths_shipped_species(struct ts_arena *arena)
{
	char self[4096];
	ssize_t len = readlink("/proc/self/exe", self, sizeof self - 1);
	const char *folder;
	char *slash;

	if (len <= 0)
		return NULL;
	self[len] = '\0';
	slash = strrchr(self, '/');
	if (!slash)
		return NULL;
	*slash = '\0';
	folder = noted(arena, self);
	if (is_folder(folder))
		return folder;
	folder = ts_arena_join(arena, self, "/../share/tapshoal/species", NULL);
	return is_folder(folder) ? folder : NULL;
}
