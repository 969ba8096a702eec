/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writing on a POSIX machine: a file is made beside its place and renamed when it is whole, so that
 * neither a failure nor an end leaves half a file. Where a renamed file would not be its owner's
 * any more, or be cut from a second name, the old one is filled instead, once the new one is whole.
 */
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "system/machine.h"
#include "system/posix.h"

/* "tank.yaml.tapshoal-Xb3d9Q": whoever finds one knows what left it. */
#define MARK ".tapshoal-"
#define LETTERS 6

/*
 * The files that would be left behind if the program ended now; "" is room for another. Signals are
 * the whole process's, and so is this list.
 */
static char unfinished[TS_WRITERS_MOST][TS_PATH_MOST];

static const int interruptions[] = {SIGHUP, SIGINT, SIGTERM};
#define INTERRUPTIONS (sizeof interruptions / sizeof *interruptions)

/* Removes them, and ends as the signal would have ended the program. */
static void interrupted(int number)
{
	for (size_t i = 0; i < TS_WRITERS_MOST; i++) {
		if (unfinished[i][0])
			unlink(unfinished[i]);
	}
	raise(number); /* SA_RESETHAND: for the second time as ever */
}

/* What is ignored, as with nohup, stays ignored. */
static void heed(void)
{
	const struct sigaction action = {.sa_handler = interrupted, .sa_flags = (int)SA_RESETHAND};
	struct sigaction old;

	for (size_t i = 0; i < INTERRUPTIONS; i++) {
		if (sigaction(interruptions[i], NULL, &old) == 0 && old.sa_handler == SIG_DFL)
			sigaction(interruptions[i], &action, NULL);
	}
}

/* No interruption while a file is made and noted, or put in its place and forgotten. */
static void hold(sigset_t *ret_before)
{
	sigset_t all;

	sigemptyset(&all);
	for (size_t i = 0; i < INTERRUPTIONS; i++)
		sigaddset(&all, interruptions[i]);
	sigprocmask(SIG_BLOCK, &all, ret_before);
}

static void let_go(const sigset_t *before)
{
	sigprocmask(SIG_SETMASK, before, NULL);
}

/* Puts a name in the place of another, "" in that of none. */
static void note_unfinished(const char *old, const char *name)
{
	size_t i = 0;

	while (i < TS_WRITERS_MOST && strcmp(unfinished[i], old) != 0)
		i++;
	if (i < TS_WRITERS_MOST)
		memcpy(unfinished[i], name, strlen(name) + 1);
}

/* A new name beside the target; false: none is left, or no chance is. */
static bool name_beside(struct ts_writer *w)
{
	static const char letters[] =
		"abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";
	unsigned char chance[LETTERS];
	int len = snprintf(w->beside, sizeof w->beside, "%s" MARK, w->target);

	if (len < 0 || (size_t)len + LETTERS >= sizeof w->beside) {
		errno = ENAMETOOLONG;
		return false;
	}
	if (getentropy(chance, sizeof chance) != 0)
		return false;
	for (int i = 0; i < LETTERS; i++)
		w->beside[len + i] = letters[chance[i] % (sizeof letters - 1)];
	w->beside[len + LETTERS] = '\0';
	return true;
}

/* Nobody else sees what replaces a private file; a new file is what the user's umask says. */
static int make_beside(struct ts_writer *w, mode_t mode)
{
	sigset_t before;
	int why = 0;

	heed();
	do {
		if (!name_beside(w))
			return errno;
		hold(&before);
		w->file = open(w->beside, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, mode);
		why = w->file < 0 ? errno : 0;
		if (!why)
			note_unfinished("", w->beside);
		let_go(&before);
	} while (why == EEXIST);
	if (!why)
		(void)flock(w->file, LOCK_EX | LOCK_NB); /* so it is not taken for a left one */
	return why;
}

/* The folder holds the new name only once it is written itself; some cannot be asked to. */
static void sync_folder(const char *target)
{
	char folder[TS_PATH_MOST];
	const char *slash = strrchr(target, '/');
	size_t len = slash ? (size_t)(slash - target) : 0;
	int file;

	memcpy(folder, target, len);
	folder[len] = '\0';
	file = open(len ? folder : slash ? "/" : ".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
	if (file < 0)
		return;
	(void)fsync(file);
	close(file);
}

static bool same_file(const struct ts_seen *a, const struct ts_seen *b)
{
	return a->device == b->device && a->inode == b->inode && a->size == b->size &&
	       a->modified_ns == b->modified_ns;
}

/*
 * In the place of what was read and nothing else: the two are exchanged, and changed back when what
 * came out is another file than what went in.
 */
static int exchange(const struct ts_machine *machine, const struct ts_writer *w)
{
	struct ts_seen now;

#ifdef RENAME_EXCHANGE
	if (renameat2(AT_FDCWD, w->beside, AT_FDCWD, w->target, RENAME_EXCHANGE) == 0) {
		if (ts_posix_look(NULL, w->beside, &now) == 0 &&
			same_file(&now, &machine->rewrite_seen)) {
			unlink(w->beside);
			return 0;
		}
		if (renameat2(AT_FDCWD, w->beside, AT_FDCWD, w->target, RENAME_EXCHANGE) != 0)
			return errno;
		return TS_WHY_CHANGED;
	}
#endif
	(void)now;
	(void)same_file;
	return rename(w->beside, w->target) == 0 ? 0 : errno;
}

/* Nothing that was read, and with `over` what was read as it was read. */
static int check_target(const struct ts_machine *machine, const struct ts_writer *w)
{
	struct ts_seen now;
	bool there = ts_posix_look(NULL, w->target, &now) == 0;

	if (w->over >= 0)
		return there && ts_system_same(&now, &machine->rewrite_seen) ? 0 : TS_WHY_CHANGED;
	return there && ts_machine_knows(machine, &now) ? TS_WHY_INPUT : 0;
}

static int place(struct ts_machine *machine, struct ts_writer *w)
{
	struct stat old;
	int why = check_target(machine, w);

	if (why)
		return why;
	if (w->in_place) {
		if (stat(w->target, &old) != 0)
			return errno;
		return ts_machine_fill(w->file, w->target, &old);
	}
	why = w->over >= 0 ? exchange(machine, w) : rename(w->beside, w->target) == 0 ? 0 : errno;
	if (!why)
		sync_folder(w->target);
	return why;
}

/* The file beside takes its place, or is gone. */
static int settle(struct ts_machine *machine, struct ts_writer *w, bool keep)
{
	sigset_t before;
	struct ts_seen made;
	int why;

	hold(&before);
	why = keep ? place(machine, w) : 0;
	if (!keep || why || w->in_place)
		unlink(w->beside);
	note_unfinished(w->beside, "");
	let_go(&before);
	if (keep && !why && ts_posix_look(NULL, w->target, &made) == 0)
		(void)ts_machine_know(machine, &made);
	return why;
}

static int create_beside(struct ts_machine *machine, struct ts_writer *w)
{
	struct stat old;
	bool there = stat(w->target, &old) == 0;
	int why = there ? check_target(machine, w) : 0;

	if (!why && there && access(w->target, W_OK) != 0)
		why = errno;
	if (!why && there && ts_machine_foreign(w->target, &old))
		why = TS_WHY_FOREIGN;
	if (!why)
		why = make_beside(w, there ? 0600 : 0666);
	if (!why && there)
		w->in_place = !ts_machine_take_rights(w->file, w->target, &old);
	return why;
}

static int create_through(struct ts_writer *w, const char *path, const struct stat *info)
{
	if (!S_ISCHR(info->st_mode) && ts_machine_foreign(path, info))
		return TS_WHY_FOREIGN;
	w->through = true;
	w->file = open(path, O_WRONLY | O_CLOEXEC | O_NOCTTY);
	return w->file < 0 ? errno : 0;
}

/* ">>" leads into a file of which nobody says that it is ours. */
static int check_standard(const struct ts_machine *machine)
{
	struct stat info;
	struct ts_seen seen = {.entry = TS_ENTRY_FILE};

	if (fstat(STDOUT_FILENO, &info) != 0 || !S_ISREG(info.st_mode))
		return 0;
	seen.device = (uint64_t)info.st_dev;
	seen.inode = (uint64_t)info.st_ino;
	return ts_machine_knows(machine, &seen) ? TS_WHY_INPUT : 0;
}

int ts_machine_create(void *state, const char *path, int over, int *ret)
{
	struct ts_machine *machine = state;
	struct ts_writer *w = NULL;
	struct stat info;
	int why;

	for (*ret = 0; machine && *ret < TS_WRITERS_MOST && !w; ++*ret)
		w = machine->writers[*ret].used ? NULL : &machine->writers[*ret];
	if (!w)
		return machine ? EMFILE : ENOSYS;
	--*ret;
	*w = (struct ts_writer){.over = over, .file = STDOUT_FILENO, .through = !path};
	/* once a file has its place there must be no failure left */
	if (ts_machine_reserve(machine, TS_WRITERS_MOST) != 0)
		return ENOMEM;
	if (!path)
		why = check_standard(machine);
	else if (stat(path, &info) == 0 && !S_ISREG(info.st_mode))
		why = create_through(w, path, &info);
	else
		why = ts_machine_resolve(path, w->target);
	if (!why && !w->through)
		why = create_beside(machine, w);
	w->used = !why;
	return why;
}

int ts_machine_write(void *state, int handle, const char *bytes, size_t len)
{
	const struct ts_machine *machine = state;
	int file = machine->writers[handle].file;

	while (len) {
		ssize_t put = write(file, bytes, len);

		if (put < 0 && errno != EINTR)
			return errno;
		bytes += put > 0 ? put : 0;
		len -= put > 0 ? (size_t)put : 0;
	}
	return 0;
}

int ts_machine_finish(void *state, int handle, bool keep)
{
	struct ts_machine *machine = state;
	struct ts_writer *w = &machine->writers[handle];
	int why = keep && !w->through && fsync(w->file) != 0 ? errno : 0;

	if (!w->through) {
		int placed = settle(machine, w, keep && !why);

		why = why ? why : placed;
	}
	if (w->file != STDOUT_FILENO && close(w->file) != 0 && !why && w->through)
		why = errno;
	w->used = false;
	return why;
}

/* A regular file that nobody holds: its writer has ended. One so young may be held in a moment. */
static bool abandoned(const char *path)
{
	int file = open(path, O_RDONLY | O_NONBLOCK | O_NOFOLLOW | O_CLOEXEC);
	struct stat info;
	bool is = file >= 0 && fstat(file, &info) == 0 && S_ISREG(info.st_mode) &&
		  info.st_mtime + 1 < time(NULL) && flock(file, LOCK_EX | LOCK_NB) == 0;

	if (file >= 0)
		close(file);
	return is;
}

bool ts_machine_left_over(void *state, const char *path, char *ret, size_t room)
{
	char target[TS_PATH_MOST], folder[TS_PATH_MOST] = ".";
	const char *slash, *name;
	const struct dirent *entry;
	bool found = false;
	DIR *dir;

	(void)state;
	if (ts_machine_resolve(path, target) != 0)
		return false;
	slash = strrchr(target, '/');
	name = slash ? slash + 1 : target;
	if (slash)
		snprintf(folder, sizeof folder, "%.*s", (int)(slash - target) + 1, target);
	dir = opendir(folder);
	while (dir && !found && (entry = readdir(dir))) {
		size_t len = strlen(name);

		if (strncmp(entry->d_name, name, len) != 0 ||
			strncmp(entry->d_name + len, MARK, strlen(MARK)) != 0 ||
			strlen(entry->d_name) != len + strlen(MARK) + LETTERS)
			continue;
		found = snprintf(ret, room, "%.*s%s", slash ? (int)(slash - target) + 1 : 0, target,
				entry->d_name) < (int)room &&
			abandoned(ret);
	}
	if (dir)
		closedir(dir);
	return found;
}
