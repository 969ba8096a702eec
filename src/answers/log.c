/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The course of each value is water/series.h's; here is which of them leads, how long the buffer
 * lasts at that pace, and which readings and events share a line.
 */
#include "answers/log_model.h"

#include <stdlib.h>
#include <string.h>

#include "base/date.h"
#include "model/shape.h"
#include "stock/waters.h"
#include "water/now.h"
#include "water/series.h"
#include "words/due.h"

const char *const ts_log_verdict_words[] = {"moves", "steady", "too-few", NULL};
enum { MOVES, STEADY, TOO_FEW };

/* From so many dated readings on a course is one. */
#define READINGS_LEAST 3

/* The buffer first: where it goes, pH and animals follow. */
static const struct {
	enum ts_parameter parameter;
	enum ts_now_value value;
	const char *name, *unit, *falls, *rises;
} courses[] = {
	{TS_KH, TS_NOW_KH, "KH", " dH", "The buffer falls", "KH rises"},
	{TS_GH, TS_NOW_GH, "GH", " dH", "GH falls", "GH rises"},
	{TS_PH, TS_NOW_PH, "pH", "", "pH falls", "pH rises"},
};
#define COURSES (sizeof courses / sizeof *courses)

struct work {
	const struct ts_asking *asking;
	const struct ts_log_question *question;
	struct ts_text text;
	const struct ts_waters *waters; /* of a tank's log; NULL: there are none */
	struct ts_log_result r;
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static void say_number(struct ts_text *text, double value, const char *unit)
{
	ts_text_number_short(text, value, 1);
	ts_text_put(text, unit);
}

/* "The buffer falls: KH 8 to 4.1 dH in 9 weeks, 0.4 a week" */
static const char *course_says(struct work *w, size_t i, const struct ts_log_course *c)
{
	struct ts_text *text = &w->text;

	if (c->moves) {
		ts_text_puts(text, c->drift_per_week < 0 ? courses[i].falls : courses[i].rises,
			": ", c->name, " ", NULL);
		say_number(text, c->first, " to ");
		say_number(text, c->last, courses[i].unit);
		ts_text_put(text, " in ");
		ts_say_age(text, lround(c->days));
		ts_text_put(text, ", ");
		say_number(text, fabs(c->drift_per_week), " a week");
		return keep(w);
	}
	ts_text_puts(text, c->name, " ", NULL);
	say_number(text, c->low, "");
	if (c->high > c->low) {
		ts_text_put(text, " to ");
		say_number(text, c->high, "");
	}
	return keep(w);
}

static void take_course(struct work *w, const struct ts_water *water, size_t i)
{
	struct ts_series_facts facts;
	struct ts_log_course *c = &w->r.courses[w->r.course_count];

	ts_series_make(water, courses[i].parameter, &facts);
	if (!facts.readings)
		return;
	*c = (struct ts_log_course){.name = courses[i].name,
		.readings = facts.readings,
		.first = (double)NAN,
		.low = facts.low,
		.high = facts.high,
		.days = facts.days,
		.drift_per_week = facts.drift_per_week,
		.moves = facts.trend};
	for (size_t k = 0; k < water->reading_count; k++) {
		double value = ts_reading_value(&water->readings[k], courses[i].value);

		if (isnan(value))
			continue;
		c->first = isnan(c->first) ? value : c->first;
		c->last = value;
	}
	c->says = course_says(w, i, c);
	w->r.course_count++;
}

/* Days to the floor by the tank's whole routine, as drift has them; NAN: not known. */
static double buffer_days(const struct work *w)
{
	const struct ts_waters *waters = w->waters;

	return waters && waters->settled_known && waters->load_known &&
			       ts_plan_poured(w->question->plan)->reading_count
		       ? waters->settles.buffer_days.value
		       : (double)NAN;
}

/* "At this pace the buffer is used up (KH 1.1) in 8 weeks, by 3 May." */
static void say_end(struct work *w, const struct ts_log_course *c)
{
	double floor = w->asking->practice->value[TS_P_KH_FLOOR], days = buffer_days(w);
	bool known = !isnan(days);

	if (strcmp(c->name, "KH") != 0 || !(c->drift_per_week < 0))
		return;
	if (known && !isfinite(days)) {
		ts_text_put(&w->text, "By its routine it does not run out: KH settles at ");
		say_number(&w->text, w->waters->settles.kh_dh.value, ".");
		w->r.next = keep(w);
		return;
	}
	days = known ? days : 7 * (c->last - floor) / -c->drift_per_week;
	if (!(days > 0) || days > 728)
		return;
	ts_text_put(&w->text, known ? "By its routine" : "At this pace");
	ts_text_put(&w->text, " the buffer is used up (KH ");
	say_number(&w->text, floor, ") in about ");
	ts_say_age(&w->text, lround(days));
	if (w->asking->today >= 0) {
		ts_text_put(&w->text, ", by ");
		ts_say_day(&w->text, w->asking->today + (long)days, w->asking->today);
	}
	ts_text_put(&w->text,
		w->question->plan && ts_learned_less_is_changed(w->question->plan)
			? ": go back to the changes that the file says, by small steps."
			: ": more water changed, or more often, holds it where the tap's KH is "
			  "higher.");
	w->r.next = keep(w);
}

static void judge(struct work *w)
{
	size_t most = 0;
	double days = 0;

	for (size_t i = 0; i < w->r.course_count; i++) {
		const struct ts_log_course *c = &w->r.courses[i];

		most = c->readings > most ? c->readings : most;
		days = fmax(days, c->days);
		if (!c->moves || w->r.verdict)
			continue;
		w->r.verdict = ts_log_verdict_words[MOVES];
		ts_text_puts(&w->text, c->says, ".", NULL);
		w->r.headline = keep(w);
		say_end(w, c);
	}
	if (w->r.verdict)
		return;
	if (most < READINGS_LEAST || !(days >= 7)) {
		w->r.verdict = ts_log_verdict_words[TOO_FEW];
		w->r.headline = "Too few readings yet to tell a course.";
		w->r.next = "Three over two weeks or more tell whether the water is steady; the "
			    "same kit at the same hour.";
		return;
	}
	w->r.verdict = ts_log_verdict_words[STEADY];
	ts_text_put(&w->text, "Steady for ");
	ts_say_age(&w->text, lround(days));
	for (size_t i = 0; i < w->r.course_count; i++)
		ts_text_puts(&w->text, i ? ", " : ": ", w->r.courses[i].says, NULL);
	ts_text_put(&w->text, ".");
	w->r.headline = keep(w);
	w->r.next = "Whether that suits the animals, and what else was read of it, says tapshoal "
		    "check of a plan with them.";
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
static const char *event_says(struct work *w, const struct ts_tank_event *e)
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
		say_number(&w->text, amounts[i].value, amounts[i].unit);
	}
	return keep(w);
}

static void take_lines(struct work *w)
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
static void join_lines(struct work *w)
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

static void say_span(struct work *w)
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
	w->r.span = keep(w);
}

/* What all of it together teaches, by the tank of the plan and its animals. */
static void learn(struct work *w)
{
	const struct ts_log_question *q = w->question;
	size_t count = q->plan && q->species ? q->plan->stock_count : 0;
	struct ts_group *groups = ts_arena_array(w->asking->arena, count + 1, sizeof *groups);
	struct ts_waters *waters = ts_arena_take(w->asking->arena, sizeof *waters);
	const struct ts_waters_case asked = {q->plan, groups, count, w->asking->today, q->species};

	if (!q->plan || !groups || !waters)
		return;
	for (size_t i = 0; i < count; i++)
		groups[i] = (struct ts_group){
			.species = q->species[i], .either = (unsigned)q->plan->stock[i].count};
	ts_waters_make(&asked, w->asking->practice, waters);
	w->waters = waters;
	ts_learned_make(w->asking, q->plan, waters, &w->r.learned);
}

enum ts_status ts_answer_log(const struct ts_asking *asking, const struct ts_log_question *question,
	struct ts_log_result *ret)
{
	struct work w = {.asking = asking, .question = question};
	struct ts_water water = {
		.readings = question->readings, .reading_count = question->reading_count};
	enum ts_status status = TS_OK;

	while (water.reading_count &&
		ts_date_is_ahead(water.readings[water.reading_count - 1].date, asking->today))
		water.reading_count--;
	ts_text_open(&w.text, &asking->arena->allocator);
	w.r.name = question->name;
	w.r.today = asking->today >= 0 ? ts_asking_day(asking, asking->today) : NULL;
	w.r.courses = ts_arena_array(asking->arena, COURSES, sizeof *w.r.courses);
	w.r.lines = ts_arena_array(
		asking->arena, question->reading_count + question->event_count, sizeof *w.r.lines);
	if (w.r.courses && w.r.lines) {
		for (size_t i = 0; i < COURSES; i++)
			take_course(&w, &water, i);
		take_lines(&w);
		say_span(&w);
		join_lines(&w);
		learn(&w);
		judge(&w);
		if (question->unknown)
			ts_asking_note(asking, &w.r.notes,
				ts_arena_join(asking->arena,
					"What they like and what comes cannot be said: ",
					question->unknown, NULL));
		status = ts_log_model_fill(asking, question, &w.r);
	}
	asking->arena->failed |= w.text.failed;
	ts_text_drop(&w.text);
	if (status || asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = w.r;
	return TS_OK;
}
