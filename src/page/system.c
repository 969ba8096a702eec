/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The system inside a page: files are in its memory, there is neither terminal nor link nor right.
 * A file is complete or not there at all here too.
 */
#include "system/posix.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "base/date.h"

#define PATH_MOST 1024
#define WRITERS_MOST 4

static struct {
	char place[PATH_MOST], beside[PATH_MOST + 8]; /* "": standard output */
	int file;
	bool used;
} writers[WRITERS_MOST];

/* In the place of the C library's: the reasons that files in memory have, and not a hundred others.
 */
char *strerror(int why)
{
	static const struct {
		int why;
		const char *says;
	} rows[] = {{ENOENT, "No such file or directory"}, {EISDIR, "Is a directory"},
		{ENOTDIR, "Not a directory"}, {EEXIST, "File exists"}, {EINVAL, "Invalid argument"},
		{EBADF, "Bad file descriptor"}, {ENOMEM, "Cannot allocate memory"},
		{EMFILE, "Too many open files"}, {ENAMETOOLONG, "File name too long"}};

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		if (rows[i].why == why)
			return (char *)(uintptr_t)rows[i].says;
	}
	return (char *)(uintptr_t) "Input/output error";
}

static int open_file(void *state, const char *path, enum ts_opening how, int *ret)
{
	(void)state;
	(void)how;
	*ret = strcmp(path, "-") == 0 ? STDIN_FILENO : open(path, O_RDONLY);
	return *ret < 0 ? errno : 0;
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

/* Its clock knows no place: the page's script hands over the day of the device. */
static bool today(void *state, char ret[TS_DAY_ROOM])
{
	(void)state;
	return ts_date_write(ret, (long)(time(NULL) / 86400));
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
	static const struct ts_system page = {TS_POSIX_SYSTEM, .open = open_file,
		.close = close_file, .create = create, .write = write_file, .finish = finish,
		.left_over = left_over, .today = today, .terminal = terminal, .paged = paged,
		.together = ts_system_alone};

	return &page;
}
