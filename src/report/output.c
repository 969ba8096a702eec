/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writing the answer, and what can be known of the terminal: its width, whether it shows colour
 * and Unicode.
 */
#include "report/output.h"

#include <errno.h>
#include <string.h>

#include "base/findings.h"
#include "model/codes.h"
#include "report/shown.h"

/* What would be right depends on what was wrong. */
static const char *remedy(int why)
{
	switch (why) {
	case TS_WHY_INPUT:
		return "name another file";
	case TS_WHY_CHANGED:
	case TS_WHY_BUSY:
		return "call again when nobody else is writing it";
	case TS_WHY_FOREIGN:
		return "take a folder of your own";
	case EFBIG:
		return "files may not grow so large here: see ulimit -f";
	case ENOSPC:
	case EDQUOT:
		return "make room, or take another place";
	default:
		return "take a place that can be written";
	}
}

static enum ts_status failed(const char *path, int why, struct ts_text *error)
{
	if (why == ENOMEM)
		return TS_NO_MEMORY;
	if (path)
		ts_text_puts(error, "cannot write ", path, ": ", ts_system_says(why), "; ",
			remedy(why), NULL);
	else
		ts_text_puts(error, "the answer could not be written: ", ts_system_says(why),
			"; make room or take another place", NULL);
	return why == TS_WHY_INPUT ? TS_BAD_INPUT : TS_SYSTEM;
}

static enum ts_status open_over(struct output *o, const struct ts_system *system, const char *path,
	int over, struct ts_text *error, int *ret_why)
{
	*o = (struct output){
		.system = system, .path = path && strcmp(path, "-") != 0 ? path : NULL};
	*ret_why = system->create(system->state, o->path, over, &o->handle);
	return *ret_why ? failed(o->path, *ret_why, error) : TS_OK;
}

enum ts_status output_open(struct output *output, const struct ts_system *system, const char *path,
	struct ts_text *error)
{
	int why;

	return open_over(output, system, path, -1, error, &why);
}

enum ts_status output_add(struct output *o, const struct ts_text *text, struct ts_text *error)
{
	int why = o->closed ? 0
			    : o->system->write(
				      o->system->state, o->handle, ts_text_get(text), text->len);

	o->closed |= why == EPIPE; /* its reader has seen what it wanted: no failure */
	return why && !o->closed ? failed(o->path, why, error) : TS_OK;
}

enum ts_status output_close(struct output *o, bool keep, struct ts_text *error)
{
	int why = o->system->finish(o->system->state, o->handle, keep);

	return why && keep && !o->closed ? failed(o->path, why, error) : TS_OK;
}

enum ts_status output_write(const struct ts_system *system, const char *path,
	const struct ts_text *text, struct ts_text *error)
{
	int why;

	return output_rewrite(system, path, -1, text, error, &why);
}

enum ts_status output_rewrite(const struct ts_system *system, const char *path, int over,
	const struct ts_text *text, struct ts_text *error, int *ret_why)
{
	struct output o;
	enum ts_status status = open_over(&o, system, path, over, error, ret_why);

	if (status != TS_OK)
		return status;
	status = output_add(&o, text, error);
	*ret_why = system->finish(system->state, o.handle, status == TS_OK);
	if (status == TS_OK && *ret_why && !o.closed)
		status = failed(o.path, *ret_why, error);
	return status;
}

bool output_same(const struct ts_system *system, const char *a, const char *b)
{
	struct ts_seen x, y;

	return a && b && system->look(system->state, a, &x) == 0 &&
	       system->look(system->state, b, &y) == 0 && x.device == y.device &&
	       x.inode == y.inode;
}

void output_left_over(
	const struct ts_system *system, const char *path, struct ts_findings *findings)
{
	char left[4096];
	struct ts_place place = {.file = left};

	if (path && strcmp(path, "-") != 0 &&
		system->left_over(system->state, path, left, sizeof left))
		ts_finding_add(findings, &ts_codes[TS_C_OUTPUT_LEFT_OVER], &place,
			"left by a call that was ended before it was done", NULL);
}

/* Whether the locale has nothing but plain letters, as far as can be known. */
static bool plain_letters(const struct ts_system *system)
{
	struct ts_terminal terminal;

	system->terminal(system->state, false, &terminal);
	return terminal.plain;
}

void output_message(
	const struct ts_system *system, struct ts_text *out, const char *message, size_t len)
{
	ts_shown_add(out, message, len, plain_letters(system));
	ts_text_put(out, "\n");
}

struct ts_screen output_screen(
	const struct ts_system *system, bool to_file, bool no_color, bool ascii)
{
	struct ts_screen screen = ts_screen_plain;
	const char *term = system->variable(system->state, "TERM");
	const char *wish = system->variable(system->state, "NO_COLOR");
	struct ts_terminal terminal;

	system->terminal(system->state, false, &terminal);
	screen.ascii = ascii || terminal.plain;
	screen.unbroken = to_file || !terminal.is;
	if (screen.unbroken)
		return screen;
	screen.color = !no_color && !(wish && *wish) && term && strcmp(term, "dumb") != 0;
	if (terminal.columns) {
		screen.columns = terminal.columns < 40 ? 40 : terminal.columns;
		screen.columns = screen.columns > 100 ? 100 : screen.columns;
	}
	return screen;
}
