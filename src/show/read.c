/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer of read is the water file itself, with the line and the rule of each value as
 * comments, so that it can be kept; what contradicts and what is missing stands in its head.
 */
#include "show/read.h"

#include <math.h>
#include <string.h>

#include "records/write.h"
#include "report/screen.h"

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

void ts_show_gap_lines(struct ts_text *out, const struct ts_report *r, size_t from)
{
	unsigned last = 0, next;

	do {
		next = 0;
		for (size_t i = from; i < r->gap_count; i++) {
			if (r->gaps[i].line > last && (!next || r->gaps[i].line < next))
				next = r->gaps[i].line;
		}
		if (next) {
			ts_text_put(out, last ? ", " : "");
			ts_text_number(out, next, 0);
		}
		last = next;
	} while (next);
}

/* What contradicts goes into the file as well: it must still be known a year from now. */
static void say_head(struct ts_text *out, struct ts_text *said, const struct ts_read_result *result)
{
	const struct ts_report *r = result->report;
	const char *file = result->file;
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
		ts_show_gap_lines(said, r, 0);
		comment(out, said);
	}
}

void ts_show_read(struct ts_text *out, const struct ts_read_result *result)
{
	const struct ts_report *r = result->report;
	struct ts_reading reading = rounded_reading(&r->reading);
	struct ts_water water = {.name = result->zone, .readings = &reading, .reading_count = 1};
	struct notes notes = {.report = r};

	ts_text_open(&notes.text, NULL);
	ts_text_open(&notes.said, NULL);
	say_head(out, &notes.said, result);
	if (result->others) {
		ts_text_put(&notes.said, result->others);
		comment(out, &notes.said);
	}
	for (size_t i = 0; i < result->missing.count; i++) {
		ts_text_put(&notes.said, result->missing.items[i]);
		comment(out, &notes.said);
	}
	ts_records_write_noted(out, &ts_shape_water, &water, note, &notes);
	out->failed |= notes.text.failed || notes.said.failed;
	ts_text_drop(&notes.said);
	ts_text_drop(&notes.text);
}
