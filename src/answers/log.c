/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The course of each value is water/course.h's; here is which of them leads, how long the buffer
 * lasts at that pace, and which readings and events share a line.
 */
#include "answers/log_work.h"

#include "answers/log_model.h"

#include <stdlib.h>
#include <string.h>

#include "base/date.h"
#include "model/shape.h"
#include "stock/waters.h"
#include "water/course.h"
#include "water/now.h"
#include "words/due.h"

const char *const ts_log_verdict_words[] = {"moves", "steady", "too-few", NULL};
enum { MOVES, STEADY, TOO_FEW };
/* Rows of courses. */
#define BUFFER 0
#define NITRATE 2

/* From so many dated readings on a course is one. */
#define READINGS_LEAST 3

/* The buffer first: where it goes, pH and animals follow. */
static const struct {
	enum ts_now_value value;
	const char *name, *unit, *falls, *rises, *shown; /* of the table, as log_model.c has it */
	int decimals;
} courses[] = {
	{TS_NOW_KH, "KH", " dH", "The buffer falls", "KH rises", "KH", 1},
	{TS_NOW_GH, "GH", " dH", "GH falls", "GH rises", "GH", 1},
	{TS_NOW_NO3, "nitrate", " mg/L", "Nitrate falls", "Nitrate rises", "NO3", 0},
	{TS_NOW_PH, "pH", "", "pH falls", "pH rises", "pH", 1},
};
#define COURSES (sizeof courses / sizeof *courses)

/* "The buffer falls: KH 8 to 4.1 dH since 4 March, 0.4 a week" */
static const char *course_says(struct log_work *w, size_t i, const struct ts_log_course *c)
{
	struct ts_text *text = &w->text;
	int decimals = courses[i].decimals;
	double rate;

	if (c->moves) {
		ts_text_puts(text, c->drift_per_week < 0 ? courses[i].falls : courses[i].rises,
			i == BUFFER && c->drift_per_week < 0 ? ": KH " : ": ", NULL);
		log_put(w, c->first, decimals, " to ");
		log_put(w, c->last, decimals, courses[i].unit);
		ts_text_put(text, " in ");
		ts_say_age(text, lround(c->days));
		ts_text_put(text, ", ");
		rate = 7 * fabs(c->last - c->first) / fmax(c->days, 1);
		log_put(w, rate, rate < 1 ? 2 : 1, " a week");
		return log_keep(w);
	}
	ts_text_puts(text, c->name, " ", NULL);
	log_put(w, c->low, decimals, "");
	if (c->high > c->low) {
		ts_text_put(text, " to ");
		log_put(w, c->high, decimals, "");
	}
	ts_text_put(text, c->readings && i == NITRATE ? courses[i].unit : "");
	return log_keep(w);
}

/* Of readings without a day their figures alone. */
static void take_figures(
	const struct ts_water *water, enum ts_now_value value, struct ts_log_course *c, bool dated)
{
	for (size_t k = 0; k < water->reading_count; k++) {
		double figure = ts_reading_value(&water->readings[k], value);

		if (isnan(figure))
			continue;
		c->readings += !dated;
		c->first = isnan(c->first) ? figure : c->first;
		c->last = dated ? c->last : figure;
		c->low = fmin(c->low, figure);
		c->high = fmax(c->high, figure);
	}
}

static void take_course(struct log_work *w, const struct ts_water *water, size_t i)
{
	const struct ts_plan *plan = w->question->plan;
	long since = plan ? ts_past_new_water(&plan->tank, w->asking->today) : TS_COURSE_FROM_FIRST;
	struct ts_log_course *c = &w->r.courses[w->r.course_count];
	struct ts_course facts;

	ts_course_make(water->readings, water->reading_count, courses[i].value, since, &facts);
	*c = (struct ts_log_course){.name = courses[i].name,
		.readings = facts.readings,
		.first = facts.first,
		.last = facts.last,
		.low = facts.low,
		.high = facts.high,
		.days = facts.readings ? (double)(facts.to - facts.from) : (double)NAN,
		.drift_per_week = facts.a_week,
		.moves = facts.moves,
		.row = i,
		.from = facts.from,
		.moved_first = facts.moved_first};
	if (!facts.readings)
		take_figures(water, courses[i].value, c, false);
	if (!c->readings)
		return;
	c->says = course_says(w, i, c);
	w->r.course_count++;
}

/* When the buffer is gone, or what keeps it: drift's own days. */
static void say_end(struct log_work *w, const struct ts_log_course *c)
{
	const double floor = w->asking->practice->value[TS_P_KH_FLOOR];
	double days = 7 * (c->last - floor) / -c->drift_per_week;

	if (courses[c->row].value != TS_NOW_KH || !(c->drift_per_week < 0))
		return;
	if (w->r.learned.else_says)
		return; /* it stands there with the way back */
	if (w->r.gone_says) {
		ts_text_puts(&w->text, w->r.gone_says, ": ",
			w->question->plan && ts_learned_less_is_changed(w->question->plan)
				? "go back to the changes that the file says, by small steps."
				: "more water changed, or more often, holds it where the tap's KH "
				  "is higher.",
			NULL);
	} else if (w->r.comes_says && w->waters && w->waters->settles.kh_dh.value >= floor) {
		ts_text_put(&w->text, "By its routine it does not run out: KH settles at ");
		log_put(w, w->waters->settles.kh_dh.value, 1, ".");
	} else if (days > 0 && days <= 728 && w->asking->today >= 0) {
		ts_text_put(&w->text, "At this pace the buffer is used up (KH ");
		log_put(w, floor, 1, ") in about ");
		ts_say_age(&w->text, lround(days));
		ts_text_put(&w->text, ", by ");
		ts_say_day(&w->text, w->asking->today + (long)days, w->asking->today);
		ts_text_put(&w->text, ": more water changed, or more often, holds it where the "
				      "tap's KH is higher.");
	}
	w->r.next = w->text.len ? log_keep(w) : NULL;
}

/* Whether the newest figure lies outside what they like; of pH by itself nothing is said. */
static bool is_outside(const struct log_work *w, const struct ts_log_course *c)
{
	for (size_t i = 0; i < w->r.value_count; i++) {
		const struct ts_log_value *v = &w->r.values[i];

		if (strcmp(v->name, courses[c->row].shown) == 0)
			return v->outside && !v->by_kind && courses[c->row].value != TS_NOW_PH;
	}
	return false;
}

/* What moves and harms first, then the buffer, then the rest. */
static const struct ts_log_course *leader(const struct log_work *w)
{
	const struct ts_log_course *first = NULL;

	for (size_t i = 0; i < w->r.course_count; i++) {
		const struct ts_log_course *c = &w->r.courses[i];
		bool buffer = courses[c->row].value == TS_NOW_KH && c->drift_per_week < 0;

		if (!c->moves)
			continue;
		if (buffer || is_outside(w, c))
			return c;
		first = first ? first : c;
	}
	return first;
}

static void put_liked(struct log_work *w, const char *before)
{
	for (size_t i = 0; i < w->r.course_count; i++) {
		const struct ts_log_course *c = &w->r.courses[i];
		const struct ts_log_value *v = w->r.values;
		size_t at;

		if (!is_outside(w, c))
			continue;
		while (strcmp(v->name, courses[c->row].shown) != 0)
			v++;
		ts_text_put(&w->text, before);
		at = w->text.len;
		ts_text_puts(&w->text, c->name, " ", NULL);
		if (*before != ';')
			ts_text_capital(&w->text, at);
		log_put(w, v->last, courses[c->row].decimals, courses[c->row].unit);
		ts_text_put(&w->text, " is outside what they like, ");
		log_put(w, v->likes.low, courses[c->row].decimals, " to ");
		log_put(w, v->likes.high, courses[c->row].decimals, "");
		before = "; ";
	}
}

/* What lies outside, and who tells what to do about it. */
static void say_outside(struct log_work *w)
{
	if (w->r.next)
		ts_text_put(&w->text, w->r.next);
	put_liked(w, w->r.next ? " " : "");
	if (!w->text.len || (w->r.next && w->text.len == strlen(w->r.next))) {
		ts_text_clear(&w->text);
		return;
	}
	ts_text_put(&w->text, ": tapshoal check says what to do.");
	w->r.next = log_keep(w);
}

/* "KH 10 to 11": what was read of a value from a day on. */
static void put_read(struct log_work *w, const struct ts_log_course *c, long from)
{
	double low = (double)INFINITY, high = -(double)INFINITY;
	int decimals = courses[c->row].decimals;

	for (size_t i = 0; i < w->question->reading_count; i++) {
		const struct ts_reading *r = &w->question->readings[i];
		double value = ts_reading_value(r, courses[c->row].value);
		long day;

		if (isnan(value) || (r->date && ts_date_read(r->date, &day) && day < from) ||
			ts_date_is_ahead(r->date, w->asking->today))
			continue;
		low = fmin(low, value);
		high = fmax(high, value);
	}
	ts_text_puts(&w->text, c->name, " ", NULL);
	log_put(w, low, decimals, "");
	if (high > low) {
		ts_text_put(&w->text, " to ");
		log_put(w, high, decimals, "");
	}
	ts_text_put(&w->text, c->row == NITRATE ? courses[c->row].unit : "");
}

/* Since when all of it has stood so: the last that came to rest, else the first reading. */
static void say_steady(struct log_work *w)
{
	const struct ts_log_course *since = NULL;
	size_t rests = 0;

	for (size_t i = 0; i < w->r.course_count; i++) {
		const struct ts_log_course *c = &w->r.courses[i];
		bool came = !isnan(c->moved_first);

		/* What came to rest counts before what stood all along. */
		if (!since || (came && (!rests || c->from > since->from)) ||
			(!came && !rests && c->days > since->days))
			since = c;
		rests += came;
	}
	/* It stands, and will not. */
	ts_text_put(&w->text,
		w->r.comes_says && !w->r.comes_keeps ? "Read in the last " : "Steady for ");
	ts_say_age(&w->text, lround(since->days));
	for (size_t i = 0; i < w->r.course_count; i++) {
		ts_text_put(&w->text, i ? ", " : ": ");
		put_read(w, &w->r.courses[i], since->from);
	}
	ts_text_put(&w->text, ".");
	w->r.headline = log_keep(w);
	if (!rests)
		return;
	ts_text_put(&w->text, "Before that ");
	for (size_t i = 0, said = 0; i < w->r.course_count; i++) {
		const struct ts_log_course *c = &w->r.courses[i];

		if (isnan(c->moved_first))
			continue;
		ts_text_puts(&w->text, said++ ? ", " : "", c->name,
			c->last > c->moved_first ? " rose from " : " fell from ", NULL);
		log_put(w, c->moved_first, courses[c->row].decimals, "");
	}
	ts_text_put(&w->text, ".");
	w->r.next = log_keep(w);
}

/* What stands beyond what somebody bears is no good news: that leads, and that it stands follows.
 */
static void lead_with_unborne(struct log_work *w)
{
	const char *steady = w->r.headline, *before = w->r.next;
	bool any = false;

	for (size_t i = 0; i < w->r.value_count; i++)
		any |= w->r.values[i].outside && !w->r.values[i].borne && !w->r.values[i].by_kind &&
		       strcmp(w->r.values[i].name, "pH") != 0;
	if (!any)
		return;
	put_liked(w, "");
	ts_text_put(&w->text, ": tapshoal check says what to do.");
	w->r.headline = log_keep(w);
	ts_text_puts(&w->text, steady, before ? " " : "", before ? before : "", NULL);
	w->r.next = log_keep(w);
}

static void judge(struct log_work *w)
{
	const struct ts_log_course *first = leader(w);
	size_t most = 0;
	double days = 0;

	for (size_t i = 0; i < w->r.course_count; i++) {
		most = w->r.courses[i].readings > most ? w->r.courses[i].readings : most;
		days = fmax(days, w->r.courses[i].days);
	}
	if (first) {
		w->r.verdict = ts_log_verdict_words[MOVES];
		ts_text_puts(&w->text, first->says, ".", NULL);
		w->r.headline = log_keep(w);
		w->r.leads = (size_t)(first - w->r.courses);
		say_end(w, first);
	} else if (most < READINGS_LEAST || !(days >= 7)) {
		w->r.verdict = ts_log_verdict_words[TOO_FEW];
		w->r.headline = "Too few readings yet to tell a course.";
		w->r.next = "Three over two weeks or more tell whether the water is steady; the "
			    "same kit at the same hour.";
	} else {
		w->r.verdict = ts_log_verdict_words[STEADY];
		say_steady(w);
		/* It stands, and will not. */
		if (w->r.comes_says && !w->r.comes_keeps && !w->r.comes_grave) {
			ts_text_puts(&w->text, w->r.comes_says, ".", NULL);
			w->r.next = w->r.headline;
			w->r.headline = log_keep(w);
			w->r.comes_says = NULL;
		}
	}
	/* What drift puts before all else leads here as well. */
	if (w->r.comes_grave && !(first && courses[first->row].value == TS_NOW_KH &&
					first->last >= w->asking->practice->value[TS_P_KH_FLOOR])) {
		w->r.leads = w->r.course_count;
		ts_text_puts(&w->text, w->r.comes_says, ".", NULL);
		w->r.headline = log_keep(w);
		w->r.comes_says = NULL;
	}
	if (w->r.verdict == ts_log_verdict_words[STEADY] && w->r.comes_keeps)
		lead_with_unborne(w);
	if (!strstr(w->r.headline, "outside"))
		say_outside(w);
	if (!w->r.next && !w->question->species)
		w->r.next = "Whether that suits the animals, and what else was read of it, says "
			    "tapshoal check of a plan with them.";
}

/* What all of it together teaches, by the tank of the plan and its animals. */
static void learn(struct log_work *w)
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
	struct log_work w = {.asking = asking, .question = question};
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
		log_lines(&w);
		learn(&w);
		status = ts_log_model_fill(asking, question, &w.r);
		judge(&w);
		if (question->unknown)
			ts_asking_note(asking, &w.r.notes,
				ts_arena_join(asking->arena,
					"What they like and what comes cannot be said: ",
					question->unknown, NULL));
	}
	asking->arena->failed |= w.text.failed;
	ts_text_drop(&w.text);
	if (status || asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = w.r;
	return TS_OK;
}
