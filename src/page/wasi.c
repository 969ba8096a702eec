/* SPDX-License-Identifier: Apache-2.0 */
/*
 * realpath() without links: "." and ".." are taken out of the text.
 */
#include "page/wasi.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

char *realpath(const char *path, char *resolved)
{
	size_t len = 0;
	char *out = resolved || access(path, F_OK) != 0 ? NULL : malloc(strlen(path) + 2);

	while (out && *path) {
		size_t part = strcspn(path, "/");

		if (part == 2 && strncmp(path, "..", 2) == 0) {
			while (len && out[--len] != '/')
				;
		} else if (part && !(part == 1 && *path == '.')) {
			out[len++] = '/';
			memcpy(out + len, path, part);
			len += part;
		}
		path += part + (path[part] == '/');
	}
	if (out && !len)
		out[len++] = '/';
	if (out)
		out[len] = '\0';
	return out;
}
