/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The system inside a page: files are in its memory, there is neither terminal nor link nor right.
 * A file is complete or not there at all here too.
 */
#include "system/system.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#define PATH_MOST 1024
#define WRITERS_MOST 4

static struct {
	char place[PATH_MOST], beside[PATH_MOST + 8]; /* "": standard output */
	int file;
	bool used;
} writers[WRITERS_MOST];

static int look(void *state, const char *path, struct ts_seen *ret)
{
	struct stat info;

	(void)state;
	if (stat(path, &info) != 0)
		return errno;
	*ret = (struct ts_seen){.entry = S_ISDIR(info.st_mode)   ? TS_ENTRY_FOLDER
					 : S_ISREG(info.st_mode) ? TS_ENTRY_FILE
								 : TS_ENTRY_OTHER,
		.device = (uint64_t)info.st_dev,
		.inode = (uint64_t)info.st_ino,
		.size = (uint64_t)info.st_size,
		.modified_ns = (int64_t)info.st_mtim.tv_sec * 1000000000 + info.st_mtim.tv_nsec};
	return 0;
}

static int list(void *state, const char *folder, bool (*each)(void *to, const char *name), void *to)
{
	DIR *dir = opendir(folder);
	const struct dirent *entry;

	(void)state;
	if (!dir)
		return errno;
	while ((entry = readdir(dir)) && each(to, entry->d_name))
		;
	closedir(dir);
	return 0;
}

static int make_folder(void *state, const char *path)
{
	(void)state;
	return mkdir(path, 0700) == 0 || errno == EEXIST ? 0 : errno;
}

static int open_file(void *state, const char *path, enum ts_opening how, int *ret)
{
	(void)state;
	(void)how;
	*ret = strcmp(path, "-") == 0 ? STDIN_FILENO : open(path, O_RDONLY);
	return *ret < 0 ? errno : 0;
}

static int read_file(void *state, int handle, char *into, size_t room, size_t *ret_len)
{
	ssize_t got = read(handle, into, room);

	(void)state;
	*ret_len = got > 0 ? (size_t)got : 0;
	return got < 0 ? errno : 0;
}

static void close_file(void *state, int handle)
{
	(void)state;
	if (handle != STDIN_FILENO)
		close(handle);
}

static int create(void *state, const char *path, int over, int *ret)
{
	(void)state;
	(void)over;
	for (*ret = 0; *ret < WRITERS_MOST && writers[*ret].used;)
		++*ret;
	if (*ret == WRITERS_MOST)
		return EMFILE;
	if (path && strlen(path) >= PATH_MOST)
		return ENAMETOOLONG;
	memcpy(writers[*ret].place, path ? path : "", path ? strlen(path) + 1 : 1);
	writers[*ret].file = STDOUT_FILENO;
	if (path) {
		memcpy(writers[*ret].beside, path, strlen(path));
		memcpy(writers[*ret].beside + strlen(path), ".part", 6);
		writers[*ret].file = open(writers[*ret].beside, O_WRONLY | O_CREAT | O_TRUNC, 0666);
	}
	writers[*ret].used = writers[*ret].file >= 0;
	return writers[*ret].used ? 0 : errno;
}

static int write_file(void *state, int handle, const char *bytes, size_t len)
{
	(void)state;
	while (len) {
		ssize_t put = write(writers[handle].file, bytes, len);

		if (put < 0)
			return errno;
		bytes += put;
		len -= (size_t)put;
	}
	return 0;
}

static int finish(void *state, int handle, bool keep)
{
	int why = 0;

	(void)state;
	writers[handle].used = false;
	if (!*writers[handle].place)
		return 0;
	if (close(writers[handle].file) != 0 ||
		(keep && rename(writers[handle].beside, writers[handle].place) != 0))
		why = errno;
	if (!keep || why)
		unlink(writers[handle].beside);
	return why;
}

static bool left_over(void *state, const char *path, char *ret, size_t room)
{
	(void)state;
	(void)path;
	(void)ret;
	(void)room;
	return false;
}

static const char *variable(void *state, const char *name)
{
	(void)state;
	return getenv(name);
}

static bool today(void *state, char ret[TS_DAY_ROOM])
{
	time_t now = time(NULL);
	const struct tm *local = localtime(&now);

	(void)state;
	return local && strftime(ret, TS_DAY_ROOM, "%Y-%m-%d", local);
}

/* Where the page says that it is. */
static bool program(void *state, char *ret, size_t room)
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

static bool paged(void *state, const char *text, size_t len)
{
	(void)state;
	(void)text;
	(void)len;
	return false;
}

static void terminal(void *state, bool error, struct ts_terminal *ret)
{
	(void)state;
	(void)error;
	*ret = (struct ts_terminal){0};
}

const struct ts_system *ts_system_machine(void)
{
	static const struct ts_system page = {.look = look,
		.list = list,
		.make_folder = make_folder,
		.open = open_file,
		.read = read_file,
		.close = close_file,
		.create = create,
		.write = write_file,
		.finish = finish,
		.left_over = left_over,
		.variable = variable,
		.today = today,
		.program = program,
		.terminal = terminal,
		.paged = paged};

	return &page;
}
