/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which readings and events share a line, in the order of their days.
 */
#include "answers/log_work.h"

#include <stdlib.h>
#include <string.h>

#include "base/date.h"
#include "model/shape.h"
#include "words/due.h"

const char *log_keep(struct log_work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

void log_put(struct log_work *w, double value, int decimals, const char *after)
{
	ts_text_number_short(&w->text, value, decimals);
	ts_text_put(&w->text, after);
}

/* Earlier days first, a day without an hour before its hours; without a day first of all. */
static int by_day(const void *a, const void *b)
{
	const struct ts_log_line *x = a, *y = b;
	int order = strcmp(x->date ? x->date : "", y->date ? y->date : "");

	if (!order)
		order = strcmp(x->time ? x->time : "", y->time ? y->time : "");
	return order ? order : (x->order > y->order) - (x->order < y->order);
}

/* "water changed, 20 L": of an event that its keeper gave no words. */
static const char *event_says(struct log_work *w, const struct ts_tank_event *e)
{
	const struct {
		double value;
		const char *unit;
	} amounts[] = {
		{e->litres, " L"}, {e->share_percent, " %"}, {e->count, ""}, {e->lasted_h, " h"}};

	if (e->says)
		return e->says;
	for (const char *c = ts_words_happened[e->what]; *c; c++)
		ts_text_add(&w->text, *c == '-' ? " " : c, 1);
	for (size_t i = 0; i < sizeof amounts / sizeof *amounts; i++) {
		if (!(amounts[i].value > 0))
			continue;
		ts_text_put(&w->text, ", ");
		log_put(w, amounts[i].value, 1, amounts[i].unit);
	}
	return log_keep(w);
}

static void take_lines(struct log_work *w)
{
	const struct ts_log_question *q = w->question;
	struct ts_log_line *lines = w->r.lines;
	size_t n = 0, left_out = 0;

	for (size_t i = 0; i < q->reading_count; i++) {
		const struct ts_reading *r = &q->readings[i];

		if (ts_date_is_ahead(r->date, w->asking->today)) {
			left_out++;
			continue;
		}
		lines[n] = (struct ts_log_line){r->date, r->time, ts_reading_value(r, TS_NOW_GH),
			ts_reading_value(r, TS_NOW_KH), ts_reading_value(r, TS_NOW_PH),
			ts_reading_value(r, TS_NOW_TEMPERATURE), ts_reading_value(r, TS_NOW_NO3),
			ts_reading_value(r, TS_NOW_NO2), ts_reading_value(r, TS_NOW_TAN), {0}, n};
		n++;
	}
	for (size_t i = 0; i < q->event_count; i++) {
		const struct ts_tank_event *e = &q->events[i];
		double no = (double)NAN;

		if (ts_date_is_ahead(e->date, w->asking->today)) {
			left_out++;
			continue;
		}
		lines[n] =
			(struct ts_log_line){e->date, e->time, no, no, no, no, no, no, no, {0}, n};
		ts_asking_note(w->asking, &lines[n++].happened, event_says(w, e));
	}
	if (n)
		qsort(lines, n, sizeof *lines, by_day);
	w->r.line_count = n;
	if (left_out)
		ts_asking_note(w->asking, &w->r.notes,
			"What is dated after today is left out: are the dates right?");
}

/* What stands on one day without an hour of its own is one line. */
static void join_lines(struct log_work *w)
{
	struct ts_log_line *lines = w->r.lines;
	size_t n = 0;

	for (size_t i = 0; i < w->r.line_count; i++) {
		struct ts_log_line *last = n ? &lines[n - 1] : NULL;
		bool event = lines[i].happened.count > 0;

		if (last && event && lines[i].date && last->date && !lines[i].time &&
			strcmp(last->date, lines[i].date) == 0)
			ts_asking_note(w->asking, &last->happened, lines[i].happened.items[0]);
		else
			lines[n++] = lines[i];
	}
	w->r.line_count = n;
}

static void say_span(struct log_work *w)
{
	const struct ts_log_line *lines = w->r.lines;
	size_t n = w->r.line_count, events = 0, readings = 0, first = 0;

	for (size_t i = 0; i < w->question->reading_count; i++)
		readings += !ts_date_is_ahead(w->question->readings[i].date, w->asking->today);
	for (size_t i = 0; i < w->question->event_count; i++)
		events += !ts_date_is_ahead(w->question->events[i].date, w->asking->today);
	while (first < n && !lines[first].date)
		first++;
	ts_text_number(&w->text, (double)readings, 0);
	ts_text_put(&w->text, readings == 1 ? " reading" : " readings");
	if (events) {
		ts_text_put(&w->text, ", ");
		ts_text_number(&w->text, (double)events, 0);
		ts_text_put(&w->text, events == 1 ? " event" : " events");
	}
	w->r.first_day = first < n ? lines[first].date : NULL;
	if (first < n) {
		ts_text_puts(&w->text, ", ", lines[first].date, NULL);
		if (strcmp(lines[first].date, lines[n - 1].date) != 0)
			ts_text_puts(&w->text, " to ", lines[n - 1].date, NULL);
	}
	w->r.span = log_keep(w);
}

void log_lines(struct log_work *w)
{
	take_lines(w);
	say_span(w);
	join_lines(w);
}
