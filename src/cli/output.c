/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writing the answer, and what can be known of the terminal: its width, whether it shows colour
 * and Unicode.
 */
#include "cli/output.h"

#include <errno.h>
#include <langinfo.h>
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/arena.h"

static bool failed(struct ts_text *error, const char *path)
{
	ts_text_puts(error, "cannot write ", path, ": ", strerror(errno),
		"; take a place that can be written", NULL);
	return false;
}

/* A closed pipe's reader has seen what it wanted: no failure worth a word. */
static bool write_stream(FILE *stream, const struct ts_text *text)
{
	size_t written = fwrite(ts_text_get(text), 1, text->len, stream);

	return written == text->len && fflush(stream) == 0;
}

static bool write_through(const char *path, const struct ts_text *text, struct ts_text *error)
{
	FILE *stream = fopen(path, "w");
	bool fine = stream && write_stream(stream, text);

	if (stream && fclose(stream))
		fine = false;
	return fine || failed(error, path);
}

static bool write_beside(const char *path, const struct ts_text *text, struct ts_text *error)
{
	char beside[4096];
	FILE *stream;
	bool fine;
	int file;

	if (snprintf(beside, sizeof beside, "%s.XXXXXX", path) >= (int)sizeof beside) {
		errno = ENAMETOOLONG;
		return failed(error, path);
	}
	file = mkstemp(beside);
	if (file < 0)
		return failed(error, path);
	fchmod(file, 0644);
	stream = fdopen(file, "w");
	fine = stream && write_stream(stream, text) && fsync(file) == 0;
	if (stream ? fclose(stream) : close(file))
		fine = false;
	if (fine && rename(beside, path) == 0)
		return true;
	failed(error, path);
	unlink(beside);
	return false;
}

bool output_write(const char *path, const struct ts_text *text, struct ts_text *error)
{
	struct stat info;

	if (path && strcmp(path, "-") != 0) {
		if (stat(path, &info) == 0 && !S_ISREG(info.st_mode))
			return write_through(path, text, error);
		return write_beside(path, text, error);
	}
	if (write_stream(stdout, text) || errno == EPIPE)
		return true;
	ts_text_put(error, "the answer could not be written; make room or take another place");
	return false;
}

struct ts_screen output_screen(bool to_file, bool no_color, bool ascii)
{
	struct ts_screen screen = ts_screen_plain;
	const char *term = getenv("TERM"), *wish = getenv("NO_COLOR");
	struct winsize size;

	setlocale(LC_CTYPE, "");
	screen.ascii = ascii || strcmp(nl_langinfo(CODESET), "UTF-8") != 0;
	if (to_file || !isatty(STDOUT_FILENO))
		return screen;
	screen.color = !no_color && !(wish && *wish) && term && strcmp(term, "dumb") != 0;
	if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col) {
		screen.columns = size.ws_col < 60 ? 60 : size.ws_col;
		screen.columns = screen.columns > 100 ? 100 : screen.columns;
	}
	return screen;
}
