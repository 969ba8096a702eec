/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The half of a POSIX machine that asks for nothing but POSIX, so that the page (src/page/system.c)
 * stands on it as well.
 */
#include "system/posix.h"

#include <dirent.h>
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static int64_t ns(const struct timespec *t)
{
	return (int64_t)t->tv_sec * 1000000000 + t->tv_nsec;
}

void ts_posix_see(const struct stat *info, struct ts_seen *ret)
{
	*ret = (struct ts_seen){.entry = S_ISREG(info->st_mode)   ? TS_ENTRY_FILE
					 : S_ISDIR(info->st_mode) ? TS_ENTRY_FOLDER
								  : TS_ENTRY_OTHER,
		.device = (uint64_t)info->st_dev,
		.inode = (uint64_t)info->st_ino,
		.size = (uint64_t)info->st_size,
		.modified_ns = ns(&info->st_mtim),
		.changed_ns = ns(&info->st_ctim)};
}

int ts_posix_look(void *state, const char *path, struct ts_seen *ret)
{
	struct stat info;

	(void)state;
	if (stat(path, &info) != 0)
		return errno;
	ts_posix_see(&info, ret);
	return 0;
}

int ts_posix_list(
	void *state, const char *folder, bool (*each)(void *to, const char *name), void *to)
{
	DIR *dir = opendir(folder);
	const struct dirent *entry;
	int why;

	(void)state;
	if (!dir)
		return errno;
	do {
		errno = 0;
		entry = readdir(dir);
	} while (entry && each(to, entry->d_name));
	why = entry ? 0 : errno;
	closedir(dir);
	return why;
}

int ts_posix_make_folder(void *state, const char *path)
{
	(void)state;
	return mkdir(path, 0700) == 0 || errno == EEXIST ? 0 : errno;
}

/* A signal in between is no error. */
int ts_posix_read(void *state, int handle, char *into, size_t room, size_t *ret_len)
{
	ssize_t got;

	(void)state;
	do
		got = read(handle, into, room);
	while (got < 0 && errno == EINTR);
	*ret_len = got > 0 ? (size_t)got : 0;
	return got < 0 ? errno : 0;
}

const char *ts_posix_variable(void *state, const char *name)
{
	(void)state;
	return getenv(name);
}

bool ts_posix_program(void *state, char *ret, size_t room)
{
	ssize_t len = readlink("/proc/self/exe", ret, room - 1);
	char *slash;

	(void)state;
	if (len <= 0)
		return false;
	ret[len] = '\0';
	slash = strrchr(ret, '/');
	if (slash)
		*slash = '\0';
	return slash;
}
