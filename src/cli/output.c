/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writing the answer, and what can be known of the terminal: its width, whether it shows colour
 * and Unicode.
 */
#include "cli/output.h"

#include <errno.h>
#include <langinfo.h>
#include <locale.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/arena.h"
#include "report/shown.h"

/* Links that follow one another at the most; the kernel's own bound. */
#define LINKS_MOST 40

static bool failed(const struct output *o, int why, struct ts_text *error)
{
	if (o->path)
		ts_text_puts(error, "cannot write ", o->path, ": ", strerror(why),
			"; take a place that can be written", NULL);
	else
		ts_text_put(
			error, "the answer could not be written; make room or take another place");
	return false;
}

/* Puts the file that a link names in its place: beside the link, unless it says from the root. */
static bool follow(char target[OUTPUT_PATH_MOST])
{
	char link[OUTPUT_PATH_MOST], joined[OUTPUT_PATH_MOST];
	const char *slash = strrchr(target, '/');
	ssize_t len = readlink(target, link, sizeof link - 1);
	int folder;

	if (len < 0)
		return false;
	link[len] = '\0';
	folder = link[0] == '/' || !slash ? 0 : (int)(slash - target) + 1;
	if (snprintf(joined, sizeof joined, "%.*s%s", folder, target, link) >= (int)sizeof joined) {
		errno = ENAMETOOLONG;
		return false;
	}
	memcpy(target, joined, sizeof joined);
	return true;
}

/* The file behind all links, whether it is there yet or not, so that no link is replaced. */
static bool resolve(const char *path, char target[OUTPUT_PATH_MOST])
{
	struct stat info;

	if (snprintf(target, OUTPUT_PATH_MOST, "%s", path) >= OUTPUT_PATH_MOST) {
		errno = ENAMETOOLONG;
		return false;
	}
	for (int links = 0; lstat(target, &info) == 0 && S_ISLNK(info.st_mode); links++) {
		if (links == LINKS_MOST) {
			errno = ELOOP;
			return false;
		}
		if (!follow(target))
			return false;
	}
	return true;
}

/* What a new file may be is the user's umask; one that stands there keeps its owner and rights. */
static void take_rights(int file, const struct stat *old)
{
	mode_t mask = umask(0);

	umask(mask);
	if (old && fchown(file, old->st_uid, old->st_gid) != 0)
		errno = 0; /* somebody else's: the rights are kept, the owner cannot be */
	fchmod(file, old ? old->st_mode & 0777 : 0666 & ~mask);
}

/* The files that would be left behind if the program ended now; "" is room for another. */
#define UNFINISHED_MOST 4
static char unfinished[UNFINISHED_MOST][OUTPUT_PATH_MOST];

static const int interruptions[] = {SIGHUP, SIGINT, SIGTERM};
#define INTERRUPTIONS (sizeof interruptions / sizeof *interruptions)

/* Removes them, and ends as the signal would have ended the program. */
static void interrupted(int number)
{
	for (size_t i = 0; i < UNFINISHED_MOST; i++) {
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
	int why = errno;

	sigprocmask(SIG_SETMASK, before, NULL);
	errno = why;
}

/* Puts a name in the place of another, "" in that of none. */
static void note_unfinished(const char *old, const char *name)
{
	size_t i = 0;

	while (i < UNFINISHED_MOST && strcmp(unfinished[i], old) != 0)
		i++;
	if (i < UNFINISHED_MOST)
		memcpy(unfinished[i], name, strlen(name) + 1);
}

static int make_beside(struct output *o)
{
	sigset_t before;
	int file;

	heed();
	hold(&before);
	file = mkstemp(o->beside);
	if (file >= 0)
		note_unfinished("", o->beside);
	let_go(&before);
	return file;
}

/* The file beside takes its place, or is gone. */
static bool settle(struct output *o, bool keep)
{
	sigset_t before;
	bool fine;

	hold(&before);
	fine = keep && rename(o->beside, o->target) == 0;
	note_unfinished(o->beside, "");
	let_go(&before);
	if (!fine) {
		int why = errno;

		unlink(o->beside);
		errno = why;
	}
	return fine;
}

static bool open_beside(struct output *o)
{
	struct stat info;
	bool there;
	int file;

	if (!resolve(o->path, o->target))
		return false;
	there = stat(o->target, &info) == 0;
	if (there && access(o->target, W_OK) != 0)
		return false;
	if (snprintf(o->beside, sizeof o->beside, "%s.XXXXXX", o->target) >=
		(int)sizeof o->beside) {
		errno = ENAMETOOLONG;
		return false;
	}
	file = make_beside(o);
	if (file < 0)
		return false;
	take_rights(file, there ? &info : NULL);
	o->stream = fdopen(file, "w");
	if (o->stream)
		return true;
	close(file);
	settle(o, false);
	return false;
}

bool output_open(struct output *o, const char *path, struct ts_text *error)
{
	struct stat info;

	*o = (struct output){.path = path && strcmp(path, "-") != 0 ? path : NULL};
	if (!o->path) {
		o->stream = stdout;
		return true;
	}
	if (stat(o->path, &info) == 0 && !S_ISREG(info.st_mode)) {
		o->through = true;
		o->stream = fopen(o->path, "w");
		return o->stream || failed(o, errno, error);
	}
	return open_beside(o) || failed(o, errno, error);
}

bool output_add(struct output *o, const struct ts_text *text, struct ts_text *error)
{
	errno = 0;
	if (o->closed || (fwrite(ts_text_get(text), 1, text->len, o->stream) == text->len &&
				 fflush(o->stream) == 0))
		return true;
	o->closed = errno == EPIPE; /* its reader has seen what it wanted: no failure */
	return o->closed || failed(o, errno, error);
}

bool output_close(struct output *o, bool keep, struct ts_text *error)
{
	bool fine = true;
	int why;

	if (!o->path)
		return true;
	errno = 0;
	if (keep && !o->through)
		fine = fflush(o->stream) == 0 && fsync(fileno(o->stream)) == 0;
	why = errno;
	if (fclose(o->stream) != 0 && fine && !o->closed) {
		fine = false;
		why = errno;
	}
	if (o->through)
		return fine || !keep || failed(o, why, error);
	if (settle(o, fine && keep))
		return true;
	why = fine ? errno : why;
	return !keep || failed(o, why, error);
}

bool output_write(const char *path, const struct ts_text *text, struct ts_text *error)
{
	struct output o;
	bool fine;

	if (!output_open(&o, path, error))
		return false;
	fine = output_add(&o, text, error);
	return output_close(&o, fine, error) && fine;
}

/* Whether the locale has nothing but plain letters, as far as can be known. */
static bool plain_letters(void)
{
	setlocale(LC_CTYPE, "");
	return strcmp(nl_langinfo(CODESET), "UTF-8") != 0;
}

void output_message(struct ts_text *out, const char *message, size_t len)
{
	ts_shown_add(out, message, len, plain_letters());
	ts_text_put(out, "\n");
}

struct ts_screen output_screen(bool to_file, bool no_color, bool ascii)
{
	struct ts_screen screen = ts_screen_plain;
	const char *term = getenv("TERM"), *wish = getenv("NO_COLOR");
	struct winsize size;

	screen.ascii = ascii || plain_letters();
	if (to_file || !isatty(STDOUT_FILENO))
		return screen;
	screen.color = !no_color && !(wish && *wish) && term && strcmp(term, "dumb") != 0;
	if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col) {
		screen.columns = size.ws_col < 40 ? 40 : size.ws_col;
		screen.columns = screen.columns > 100 ? 100 : screen.columns;
	}
	return screen;
}
