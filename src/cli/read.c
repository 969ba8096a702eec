/* SPDX-License-Identifier: Apache-2.0 */
/*
 * read: a report becomes a water file; what was not taken goes to the findings. What is read of it
 * is intake's, what is said of it report/read_result.c's.
 */
#include <errno.h>
#include <string.h>

#include "base/findings.h"
#include "cli/commands.h"
#include "model/codes.h"
#include "show/read.h"

#define PIECE 65536

static void find(struct session *s, enum ts_code_id code, const char *file, unsigned line,
	const char *what, const char *remedy)
{
	struct ts_place place = {file, line, line ? 1 : 0, NULL};

	ts_finding_add(s->findings, &ts_codes[code], &place, what, remedy);
}

/* Feeds the whole of it, piece by piece. */
static enum ts_status feed(struct session *s, struct ts_intake *in, int handle, const char *file)
{
	static char piece[PIECE];
	struct ts_report_refusal refusal;
	enum ts_status status = TS_OK;
	size_t len = 0;
	double read = 0;
	int why;

	do {
		why = s->system->read(s->system->state, handle, piece, sizeof piece, &len);
		if (len)
			status = ts_intake_feed(in, piece, len, &refusal);
		read += (double)len / 1e6;
		if (s->system->progress)
			s->system->progress(s->system->state, read, len ? "MB read" : NULL);
	} while (!why && len && status == TS_OK);
	if (status == TS_BAD_INPUT)
		find(s, TS_C_INTAKE_NO_TEXT, file, 0, refusal.what, refusal.remedy);
	if (status != TS_OK || !why)
		return status;
	find(s, TS_C_RECORDS_UNREADABLE, file, 0, ts_system_says(why), NULL);
	return TS_SYSTEM;
}

static enum ts_status read_open(
	struct session *s, int handle, const char *file, struct ts_report *ret)
{
	struct ts_intake *in = ts_intake_open(NULL);
	enum ts_status status;

	if (!in)
		return TS_NO_MEMORY;
	status = feed(s, in, handle, file);
	if (status == TS_OK)
		status = ts_intake_finish(in, s->options->supply_zone, s->arena, ret);
	ts_intake_close(in);
	return status;
}

static enum ts_status read_file(struct session *s, const char *file, struct ts_report *ret)
{
	enum ts_status status;
	int handle, why = s->system->open(s->system->state, file, TS_OPEN_ANY, &handle);

	if (why == ENOMEM)
		return TS_NO_MEMORY;
	if (why) {
		find(s, TS_C_RECORDS_UNREADABLE, file, 0, ts_system_says(why), NULL);
		return TS_SYSTEM;
	}
	status = read_open(s, handle, file, ret);
	s->system->close(s->system->state, handle);
	return status;
}

/* Questions that stand at once; of the others the lines are named. */
#define ASKED_AT_ONCE 3

static void find_gaps(struct session *s, const struct ts_report *r, const char *file)
{
	struct ts_text what;

	ts_text_open(&what, NULL);
	for (size_t i = 0; i < r->gap_count && i < ASKED_AT_ONCE; i++) {
		ts_text_clear(&what);
		ts_text_puts(
			&what, "not taken, ", r->gaps[i].why, ": '", r->gaps[i].text, "'", NULL);
		find(s, TS_C_INTAKE_NOT_UNDERSTOOD, file, r->gaps[i].line, ts_text_get(&what),
			r->gaps[i].remedy);
	}
	if (r->gap_count > ASKED_AT_ONCE) {
		ts_text_clear(&what);
		ts_text_put(&what, "not taken either: line ");
		ts_show_gap_lines(&what, r, ASKED_AT_ONCE);
		find(s, TS_C_INTAKE_NOT_UNDERSTOOD, file, 0, ts_text_get(&what),
			"look there yourself");
	}
	s->out->failed |= what.failed;
	ts_text_drop(&what);
	s->findings->more += r->gap_more;
}

static void find_all(struct session *s, const struct ts_report *r, const char *file)
{
	if (r->latin)
		find(s, TS_C_INTAKE_LATIN, file, r->latin, "not UTF-8: read as Latin-1", NULL);
	find_gaps(s, r, file);
	for (size_t i = 0; i < r->clash_count; i++)
		find(s, TS_C_INTAKE_CONTRADICTION, file, r->clashes[i].line, r->clashes[i].says,
			NULL);
	if (r->class_only && r->reading.gh_dh.kind == TS_MEASURE_NONE)
		find(s, TS_C_INTAKE_CLASS, file, 0,
			"hardness stands here as a class only; words are no values", NULL);
}

/* "several supply zones; choose one with --supply-zone: 'North', 'South'" */
static void ask_for_zone(struct session *s, const struct ts_report *r)
{
	ts_text_puts(s->error, s->options->supply_zone ? "no single supply zone is named so" : "",
		s->options->supply_zone ? "" : "the report has several supply zones",
		"; choose one with --supply-zone: ", NULL);
	for (size_t i = 0; i < r->zone_count; i++)
		ts_text_puts(s->error, i ? ", '" : "'", r->zones[i], "'", NULL);
}

static void say_nothing(struct session *s, const char *file)
{
	ts_text_puts(s->error, "nothing was understood in ", strcmp(file, "-") ? file : "the input",
		"; values are taken where a known name, a figure and its unit stand together "
		"(text or CSV; for a PDF: pdftotext -layout FILE - | tapshoal read -)",
		NULL);
}

enum ts_status command_read(struct session *s)
{
	const struct options *o = s->options;
	const char *file = o->argument_count ? o->arguments[0] : NULL;
	struct ts_report report = {.arena = s->arena};
	struct ts_read_result result;
	enum ts_status status;

	if (o->argument_count != 1) {
		ts_text_put(s->error, "read takes one report, text or CSV; - is standard input");
		return TS_BAD_INPUT;
	}
	status = read_file(s, file, &report);
	if (status > TS_NO)
		return status;
	find_all(s, &report, file);
	ts_read_result_make(s->arena, &report, file, &result);
	if (o->format == FORMAT_JSON)
		session_json(s, "read", &ts_result_read, &result);
	else if (status == TS_OK)
		ts_show_read(s->out, &result);
	if (report.choose)
		ask_for_zone(s, &report);
	else if (status == TS_NO)
		say_nothing(s, file);
	return status;
}
