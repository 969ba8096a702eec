/* SPDX-License-Identifier: Apache-2.0 */
/*
 * read: a report becomes a water file. The answer is that file itself, with the line and the rule
 * of each value as comments, so that it can be kept; what was not taken goes to the findings. The
 * answer for programs: read_fill.c.
 */
#include "cli/read.h"

#include <errno.h>
#include <math.h>
#include <string.h>

#include "base/findings.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "cli/commands.h"
#include "model/codes.h"
#include "records/write.h"
#include "report/screen.h"

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
	int why;

	do {
		why = s->system->read(s->system->state, handle, piece, sizeof piece, &len);
		if (len)
			status = ts_intake_feed(in, piece, len, &refusal);
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

static void find_gaps(struct session *s, const struct ts_report *r, const char *file)
{
	struct ts_text what;

	ts_text_open(&what, NULL);
	for (size_t i = 0; i < r->gap_count; i++) {
		ts_text_clear(&what);
		ts_text_puts(
			&what, "not taken, ", r->gaps[i].why, ": '", r->gaps[i].text, "'", NULL);
		find(s, TS_C_INTAKE_NOT_UNDERSTOOD, file, r->gaps[i].line, ts_text_get(&what),
			r->gaps[i].remedy);
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

/* A file carries no more digits than the report did. */
static double rounded(double value)
{
	double grid = fabs(value) >= 1 ? 100 : 10000;

	return isfinite(value) ? round(value * grid) / grid : value;
}

static struct ts_reading rounded_reading(const struct ts_reading *reading)
{
	struct ts_reading r = *reading;

	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		struct ts_measure m;

		if (ts_shape_reading.fields[i].kind != TS_MEASURE)
			continue;
		memcpy(&m, (char *)&r + ts_shape_reading.fields[i].offset, sizeof m);
		m.value = rounded(m.value);
		m.low = rounded(m.low);
		m.high = rounded(m.high);
		memcpy((char *)&r + ts_shape_reading.fields[i].offset, &m, sizeof m);
	}
	return r;
}

struct notes {
	const struct ts_report *report;
	struct ts_text said, text; /* as one line; wrapped */
};

/* Lines of 80 columns less the sign of a comment; a note stands four columns in. */
static const struct ts_screen head_lines = {78, false, false, false, false};
static const struct ts_screen note_lines = {74, false, false, false, false};

/* 'line 22, "20,3 dH": the only figure of its line; taken as ...' */
static const char *note(void *state, const struct ts_shape *shape, const struct ts_field *field)
{
	struct notes *n = state;
	const struct ts_report_origin *o;

	if (shape != &ts_shape_reading || field->kind != TS_MEASURE)
		return NULL;
	o = &n->report->origins[field - shape->fields];
	ts_text_clear(&n->said);
	ts_text_put(&n->said, o->last != o->line && o->count > 1 ? "lines " : "line ");
	ts_text_number(&n->said, o->line, 0);
	if (o->last != o->line && o->count > 1) {
		ts_text_put(&n->said, " to ");
		ts_text_number(&n->said, o->last, 0);
	}
	ts_text_puts(&n->said, ", \"", o->printed, "\": ", ts_report_rule_says(o->rule), NULL);
	if (o->count > 1) {
		ts_text_put(&n->said, "; ");
		ts_text_number(&n->said, (double)o->count, 0);
		ts_text_put(&n->said, " statements, lowest to highest");
	} else if (!isnan(o->mean) && strchr(o->printed, ';')) {
		ts_text_put(&n->said, "; mean ");
		ts_text_number_short(&n->said, rounded(o->mean), 4);
	}
	ts_text_puts(&n->said, o->assumed ? "; " : "", o->assumed, NULL);
	ts_text_clear(&n->text);
	ts_screen_wrap(&n->text, ts_text_get(&n->said), 0, 0, &note_lines);
	return ts_text_get(&n->text);
}

/* Adds a text as comments of the file, and leaves it empty. */
static void comment(struct ts_text *out, struct ts_text *said)
{
	struct ts_text wrapped;

	ts_text_open(&wrapped, NULL);
	ts_screen_wrap(&wrapped, ts_text_get(said), 0, 0, &head_lines);
	for (const char *line = ts_text_get(&wrapped); *line;) {
		size_t len = strcspn(line, "\n");

		ts_text_put(out, "# ");
		ts_text_add(out, line, len);
		ts_text_put(out, "\n");
		line += len + (line[len] == '\n');
	}
	out->failed |= wrapped.failed || said->failed;
	ts_text_drop(&wrapped);
	ts_text_clear(said);
}

static void say_clash(struct ts_text *said, const struct ts_report_clash *clash)
{
	ts_text_put(said, clash->other ? "Contradiction in lines " : "Contradiction in line ");
	ts_text_number(said, clash->line, 0);
	if (clash->other) {
		ts_text_put(said, " and ");
		ts_text_number(said, clash->other, 0);
	}
	ts_text_puts(said, ": ", clash->says, NULL);
}

/* What contradicts goes into the file as well: it must still be known a year from now. */
static void say_head(
	struct ts_text *out, struct ts_text *said, const struct ts_report *r, const char *file)
{
	bool shown = strcmp(file, "-") != 0;

	/* a name may not become a line of the file */
	for (const char *at = file; shown && *at; at += ts_text_sequence(at))
		shown = ts_text_sequence(at) && !ts_text_control(at);

	ts_text_puts(said, "Read from ", shown ? file : "standard input", ", ", NULL);
	ts_text_number(said, r->lines, 0);
	ts_text_put(said, r->lines == 1 ? " line: " : " lines: ");
	ts_text_number(said, (double)r->taken, 0);
	ts_text_put(said, r->taken == 1 ? " value" : " values");
	ts_text_put(said, ". Compare each with its line before you rely on it.");
	comment(out, said);
	for (size_t i = 0; i < r->clash_count; i++) {
		say_clash(said, &r->clashes[i]);
		comment(out, said);
	}
	if (r->gap_count) {
		ts_text_put(said, "Not taken, look there yourself: line ");
		for (size_t i = 0; i < r->gap_count; i++) {
			ts_text_put(said, i ? ", " : "");
			ts_text_number(said, r->gaps[i].line, 0);
		}
		comment(out, said);
	}
}

static bool has(const struct ts_measure *m)
{
	return m->kind != TS_MEASURE_NONE;
}

/* What the report leaves open and any answer will ask for. */
static void say_missing(struct ts_text *out, struct ts_text *said, const struct ts_reading *r)
{
	bool gh = has(&r->gh_dh) || (has(&r->ca_mg_l) && has(&r->mg_mg_l));

	if (!gh && has(&r->ca_mg_l)) {
		ts_text_put(said, "GH is missing: calcium alone makes ");
		ts_text_number_short(
			said, ts_chem_dh_from_mmol_l(r->ca_mg_l.value / TS_WEIGHT_CA), 1);
		ts_text_put(said, " dH, magnesium adds to it. Measure GH with drops.");
		comment(out, said);
	} else if (!gh) {
		ts_text_put(said, "GH is missing: ask for the total hardness with its unit, or "
				  "measure it with drops.");
		comment(out, said);
	}
	if (has(&r->kh_dh) || has(&r->alkalinity_meq_l))
		return;
	ts_text_put(said, "KH is missing: ask for alkalinity, acid capacity or bicarbonate, or "
			  "measure it with drops.");
	comment(out, said);
}

static void say_water_file(struct session *s, const struct ts_report *r, const char *file)
{
	struct ts_reading reading = rounded_reading(&r->reading);
	struct ts_water water = {.name = r->zone ? r->zones[r->zone - 1] : NULL,
		.readings = &reading,
		.reading_count = 1};
	struct notes notes = {.report = r};

	ts_text_open(&notes.text, NULL);
	ts_text_open(&notes.said, NULL);
	say_head(s->out, &notes.said, r, file);
	say_missing(s->out, &notes.said, &r->reading);
	ts_records_write_noted(s->out, &ts_shape_water, &water, note, &notes);
	s->out->failed |= notes.text.failed || notes.said.failed;
	ts_text_drop(&notes.said);
	ts_text_drop(&notes.text);
}

enum ts_status command_read(struct session *s)
{
	const struct options *o = s->options;
	const char *file = o->argument_count ? o->arguments[0] : NULL;
	struct ts_report report = {.arena = s->arena};
	enum ts_status status;

	if (o->argument_count != 1) {
		ts_text_put(s->error, "read takes one report, text or CSV; - is standard input");
		return TS_BAD_INPUT;
	}
	status = read_file(s, file, &report);
	if (status > TS_NO)
		return status;
	find_all(s, &report, file);
	if (o->format == FORMAT_JSON)
		read_json(s, &report, file);
	else if (status == TS_OK)
		say_water_file(s, &report, file);
	if (report.choose)
		ask_for_zone(s, &report);
	else if (status == TS_NO)
		say_nothing(s, file);
	return status;
}
