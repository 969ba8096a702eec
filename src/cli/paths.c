/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Finding our own data relative to the program, so that any install prefix works.
 */
#include "cli/paths.h"

#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/arena.h"

const char *paths_shipped_species(struct ts_arena *arena)
{
	static const char *const beside[] = {
		"/../share/tapshoal/species", "/../../../species", NULL};
	char self[4096];
	ssize_t len = readlink("/proc/self/exe", self, sizeof self - 1);
	char *slash;

	if (len <= 0)
		return NULL;
	self[len] = '\0';
	slash = strrchr(self, '/');
	if (!slash)
		return NULL;
	*slash = '\0';
	for (size_t i = 0; beside[i]; i++) {
		const char *folder = ts_arena_join(arena, self, beside[i], NULL);
		struct stat info;

		if (folder && stat(folder, &info) == 0 && S_ISDIR(info.st_mode))
			return folder;
	}
	return NULL;
}
