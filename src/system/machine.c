/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A POSIX machine: opening with locks, the day, the terminal. Writing is machine_write.c's, the
 * rest posix.c's.
 */
#include "system/machine.h"

#include <errno.h>
#include <fcntl.h>
#include <langinfo.h>
#include <locale.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "system/posix.h"

/* How long somebody else may go on writing before it is said, and how often it is looked. */
#define BUSY_TRIES 500
#define BUSY_NS 20000000

bool ts_machine_knows(const struct ts_machine *machine, const struct ts_seen *seen)
{
	for (size_t i = 0; i < machine->known_count; i++) {
		if (machine->known[i].device == seen->device &&
			machine->known[i].inode == seen->inode)
			return true;
	}
	return false;
}

int ts_machine_reserve(struct ts_machine *machine, size_t more)
{
	size_t room = machine->known_room ? machine->known_room * 2 : 64;
	struct ts_seen *known;

	if (machine->known_count + more <= machine->known_room)
		return 0;
	known = realloc(machine->known, room * sizeof *known);
	if (!known)
		return ENOMEM;
	machine->known = known;
	machine->known_room = room;
	return 0;
}

int ts_machine_know(struct ts_machine *machine, const struct ts_seen *seen)
{
	if (!machine || seen->entry != TS_ENTRY_FILE)
		return 0;
	if (ts_machine_reserve(machine, 1) != 0)
		return ENOMEM;
	machine->known[machine->known_count++] = *seen;
	return 0;
}

static void close_file(void *state, int handle)
{
	struct ts_machine *machine = state;

	if (machine && machine->rewrite == handle)
		machine->rewrite = -1;
	if (handle != STDIN_FILENO)
		close(handle);
}

/* Waits for a while until nobody else holds the lock; where files have none, there is nothing. */
static int take_lock(int file)
{
	static const struct timespec pause = {0, BUSY_NS};

	for (int tries = 0; flock(file, LOCK_EX | LOCK_NB) != 0; tries++) {
		if (errno != EWOULDBLOCK && errno != EINTR)
			return 0;
		if (tries == BUSY_TRIES)
			return TS_WHY_BUSY;
		nanosleep(&pause, NULL);
	}
	return 0;
}

static int open_once(const char *path, enum ts_opening how, int *ret, struct ts_seen *ret_seen)
{
	struct stat info;
	int why = 0;

	*ret_seen = (struct ts_seen){0};
	*ret = open(path, O_RDONLY | O_CLOEXEC | O_NOCTTY | (how == TS_OPEN_ANY ? 0 : O_NONBLOCK));
	if (*ret < 0)
		return errno;
	if (how == TS_OPEN_REWRITE)
		why = take_lock(*ret);
	if (!why && fstat(*ret, &info) != 0)
		why = errno;
	if (!why) {
		ts_posix_see(&info, ret_seen);
		if (how != TS_OPEN_ANY && ret_seen->entry != TS_ENTRY_FILE)
			why = ret_seen->entry == TS_ENTRY_FOLDER ? EISDIR : TS_WHY_NOT_ORDINARY;
	}
	if (why)
		close(*ret);
	return why;
}

/* Who waited for the lock may hold that of a file whose place another one has taken. */
static int open_rewrite(struct ts_machine *machine, const char *path, int *ret)
{
	struct ts_seen seen, now = {0};
	int why;

	for (int tries = 0; tries < BUSY_TRIES; tries++) {
		why = open_once(path, TS_OPEN_REWRITE, ret, &seen);
		if (why)
			return why;
		if (ts_posix_look(NULL, path, &now) == 0 && now.device == seen.device &&
			now.inode == seen.inode) {
			machine->rewrite = *ret;
			machine->rewrite_seen = seen;
			return ts_machine_know(machine, &seen);
		}
		close(*ret);
	}
	return TS_WHY_BUSY;
}

static int open_file(void *state, const char *path, enum ts_opening how, int *ret)
{
	struct ts_machine *machine = state;
	struct ts_seen seen;
	struct stat info;
	int why;

	if (how == TS_OPEN_REWRITE)
		return machine ? open_rewrite(machine, path, ret) : ENOSYS;
	if (how == TS_OPEN_ANY && strcmp(path, "-") == 0) {
		*ret = STDIN_FILENO;
		if (fstat(*ret, &info) != 0)
			return errno;
		ts_posix_see(&info, &seen);
		return ts_machine_know(machine, &seen);
	}
	why = open_once(path, how, ret, &seen);
	if (!why) {
		why = ts_machine_know(machine, &seen);
		if (why)
			close(*ret);
	}
	return why;
}

static bool today(void *state, char ret[TS_DAY_ROOM])
{
	time_t now = time(NULL);
	struct tm local;

	(void)state;
	return localtime_r(&now, &local) && strftime(ret, TS_DAY_ROOM, "%Y-%m-%d", &local);
}

/* What says which letters there are: the first of these that is set and not empty. */
static const char *locale_named(void)
{
	static const char *const names[] = {"LC_ALL", "LC_CTYPE", "LANG"};
	const char *said = NULL;

	for (size_t i = 0; i < sizeof names / sizeof *names && !(said && *said); i++)
		said = getenv(names[i]);
	return said && *said ? said : "C";
}

/* The locale of plain letters and that of all need no reading of files. */
static bool plain_letters(void)
{
	const char *named = locale_named();

	if (strcmp(named, "C") == 0 || strcmp(named, "POSIX") == 0)
		return true;
	if (strcmp(named, "C.UTF-8") == 0)
		return false;
	return !setlocale(LC_CTYPE, "") || strcmp(nl_langinfo(CODESET), "UTF-8") != 0;
}

static void terminal(void *state, bool error, struct ts_terminal *ret)
{
	int file = error ? STDERR_FILENO : STDOUT_FILENO;
	struct winsize size;

	(void)state;
	*ret = (struct ts_terminal){.is = isatty(file), .plain = plain_letters()};
	if (ret->is && ioctl(file, TIOCGWINSZ, &size) == 0)
		ret->columns = size.ws_col;
}

static void progress(void *state, double done, const char *what)
{
	struct ts_machine *m = state;
	struct timespec now = {0};
	char line[64];
	int len;

	if (!m || !isatty(STDERR_FILENO) || clock_gettime(CLOCK_MONOTONIC, &now) != 0)
		return;
	if (!what) {
		if (m->told_len)
			fprintf(stderr, "\r%*s\r", (int)m->told_len, "");
		m->told = 0;
		m->told_len = 0;
		return;
	}
	if (!m->told || now.tv_sec <= m->told) {
		m->told = m->told ? m->told : now.tv_sec + 1;
		return;
	}
	m->told = now.tv_sec;
	len = snprintf(line, sizeof line, "\r%.0f %s", done, what);
	fputs(line, stderr);
	m->told_len = len > 0 ? (size_t)len : 0;
}

#define MACHINE(of)                                                                                \
	{                                                                                          \
		TS_POSIX_SYSTEM, .state = (of), .open = open_file, .close = close_file,            \
				 .create = ts_machine_create, .write = ts_machine_write,           \
				 .finish = ts_machine_finish, .left_over = ts_machine_left_over,   \
				 .today = today, .terminal = terminal, .paged = ts_machine_paged,  \
				 .together = ts_machine_together, .progress = progress             \
	}

void ts_machine_open(struct ts_machine *machine)
{
	*machine = (struct ts_machine){.system = MACHINE(machine), .rewrite = -1};
	signal(SIGPIPE, SIG_IGN);
	signal(SIGXFSZ, SIG_IGN);
}

void ts_machine_close(struct ts_machine *machine)
{
	for (int i = 0; i < TS_WRITERS_MOST; i++) {
		if (machine->writers[i].used)
			ts_machine_finish(machine, i, false);
	}
	free(machine->known);
	machine->known = NULL;
}

const struct ts_system *ts_system_machine(void)
{
	static const struct ts_system machine = MACHINE(NULL);

	return &machine;
}
