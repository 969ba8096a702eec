/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Only values that somebody read have a column.
 */
#include "show/log.h"

#include "show/learned.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "base/date.h"

#define COLUMNS_MOST 9

static const struct {
	const char *head;
	size_t offset;
	int decimals;
} columns[] = {
	{"GH", offsetof(struct ts_log_line, gh_dh), 1},
	{"KH", offsetof(struct ts_log_line, kh_dh), 1},
	{"pH", offsetof(struct ts_log_line, ph), 2},
	{"C", offsetof(struct ts_log_line, temp_c), 1},
	{"NO3", offsetof(struct ts_log_line, no3_mg_l), 1},
	{"NO2", offsetof(struct ts_log_line, no2_mg_l), 2},
	{"ammonia", offsetof(struct ts_log_line, tan_mg_l), 2},
};
#define COLUMNS (sizeof columns / sizeof *columns)

static double value(const struct ts_log_line *line, size_t column)
{
	double ret;

	memcpy(&ret, (const char *)line + columns[column].offset, sizeof ret);
	return ret;
}

static bool is_read(const struct ts_log_result *r, size_t from, size_t column)
{
	for (size_t i = from; i < r->line_count; i++) {
		if (!isnan(value(&r->lines[i], column)))
			return true;
	}
	return false;
}

static void show_line(struct ts_document *doc, struct ts_text *text, struct ts_node *table,
	const struct ts_log_line *line, const bool shown[COLUMNS], bool events)
{
	const char *c[COLUMNS_MOST + 1] = {NULL};
	size_t n = 0;

	ts_text_puts(text, line->date ? line->date : "no day", line->time ? " " : "",
		line->time ? line->time : "", NULL);
	c[n++] = ts_doc_take(doc, text);
	for (size_t i = 0; i < COLUMNS; i++) {
		if (!shown[i])
			continue;
		if (!isnan(value(line, i)))
			ts_text_number_short(text, value(line, i), columns[i].decimals);
		c[n++] = ts_doc_take(doc, text);
	}
	for (size_t i = 0; i < line->happened.count; i++)
		ts_text_puts(text, i ? "; " : "", line->happened.items[i], NULL);
	c[n++] = line->happened.count ? ts_doc_take(doc, text) : events ? "" : NULL;
	ts_doc_line(doc, table, c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7], c[8], NULL);
}

static void show_lines(
	struct ts_document *doc, struct ts_text *text, const struct ts_log_result *r, size_t from)
{
	struct ts_node *table = ts_doc_table(doc);
	const char *c[COLUMNS_MOST + 1] = {"day"};
	bool shown[COLUMNS];
	size_t n = 1, events = 0;

	for (size_t i = from; i < r->line_count; i++)
		events += r->lines[i].happened.count;
	for (size_t i = 0; i < COLUMNS; i++) {
		shown[i] = is_read(r, from, i);
		if (shown[i])
			c[n++] = columns[i].head;
	}
	c[n++] = events ? "what happened" : NULL;
	ts_doc_line(doc, table, c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7], c[8], NULL);
	for (size_t i = from; i < r->line_count; i++)
		show_line(doc, text, table, &r->lines[i], shown, events > 0);
}

static const char *number(struct ts_document *doc, struct ts_text *text, double value, int decimals)
{
	if (isnan(value))
		return "";
	ts_text_number_short(text, value, decimals);
	return ts_doc_take(doc, text);
}

static int decimals_of(const struct ts_log_value *v)
{
	return strcmp(v->name, "NO3") == 0 ? 0 : 1;
}

static const char *range(
	struct ts_document *doc, struct ts_text *text, struct ts_range r, int decimals)
{
	if (isnan(r.low))
		return "";
	ts_text_number_short(text, r.low, decimals);
	ts_text_put(text, " to ");
	ts_text_number_short(text, r.high, decimals);
	return ts_doc_take(doc, text);
}

static bool any_of(const struct ts_log_result *r, bool (*has)(const struct ts_log_value *))
{
	for (size_t i = 0; i < r->value_count; i++) {
		if (has(&r->values[i]))
			return true;
	}
	return false;
}

static bool is_liked(const struct ts_log_value *v)
{
	return !isnan(v->likes.low);
}

static bool is_followed(const struct ts_log_value *v)
{
	return !isnan(v->expected_now) || !isnan(v->comes);
}

/* What was read, liked, expected, and what comes; of a log without animals nothing of it. */
static void show_values(
	struct ts_document *doc, struct ts_text *text, const struct ts_log_result *r)
{
	bool likes = any_of(r, is_liked), model = any_of(r, is_followed);
	struct ts_node *table;

	if (!likes)
		return;
	table = ts_doc_table(doc);
	ts_doc_line(doc, table, "value", "first", "last", "they like", model ? "expected" : NULL,
		"in 8 weeks", NULL);
	for (size_t i = 0; i < r->value_count; i++) {
		const struct ts_log_value *v = &r->values[i];
		const char *likes_it = range(doc, text, v->likes, decimals_of(v)), *expected;

		if (v->outside) {
			ts_text_puts(text, likes_it, v->borne ? ": bearable" : ": outside", NULL);
			likes_it = ts_doc_take(doc, text);
		}
		expected = range(doc, text, v->expected, decimals_of(v));
		ts_doc_line(doc, table, v->name, number(doc, text, v->first, decimals_of(v)),
			number(doc, text, v->last, decimals_of(v)), likes_it,
			model ? expected : NULL, number(doc, text, v->comes, decimals_of(v)), NULL);
	}
}

/* A chart of one value for pages: read, expected, coming, and the band between two lines. */
#define SERIES_MOST 5
#define MARKS_MOST 12

static double line_value(const struct ts_log_line *line, const char *name)
{
	return strcmp(name, "KH") == 0    ? line->kh_dh
	       : strcmp(name, "GH") == 0  ? line->gh_dh
	       : strcmp(name, "pH") == 0  ? line->ph
	       : strcmp(name, "NO3") == 0 ? line->no3_mg_l
					  : line->temp_c;
}

static double point_value(const struct ts_log_point *p, const char *name)
{
	return strcmp(name, "KH") == 0    ? p->kh_dh
	       : strcmp(name, "GH") == 0  ? p->gh_dh
	       : strcmp(name, "NO3") == 0 ? p->no3_mg_l
					  : (double)NAN;
}

static long day_of(const struct ts_log_line *line)
{
	long day = 0;

	return line->date && ts_date_read(line->date, &day) ? day : 0;
}

struct chart {
	struct ts_document *doc;
	const struct ts_log_result *r;
	const struct ts_log_value *value;
	long from, to;
	struct ts_series *series;
	size_t count;
};

/* Room for one more line of so many points; NULL: memory failed. */
static double *open_series(struct chart *c, const char *name, size_t points, enum ts_hue hue)
{
	double *xy = ts_arena_array(c->doc->arena, 2 * points + 1, sizeof *xy);

	if (!xy)
		return NULL;
	c->series[c->count++] = (struct ts_series){name, xy, xy + points, 0, hue};
	return xy;
}

static void add_read(struct chart *c)
{
	double *xy = open_series(c, "read", c->r->line_count, TS_HUE_NONE);
	struct ts_series *s = &c->series[c->count - 1];

	for (size_t i = 0; xy && i < c->r->line_count; i++) {
		double value = line_value(&c->r->lines[i], c->value->name);

		if (isnan(value) || !c->r->lines[i].date)
			continue;
		xy[s->count] = (double)(day_of(&c->r->lines[i]) - c->from);
		xy[c->r->line_count + s->count++] = value;
	}
}

static void add_points(struct chart *c, const char *name, bool comes, enum ts_hue hue)
{
	double *xy = open_series(c, name, c->r->point_count, hue);
	struct ts_series *s = &c->series[c->count - 1];

	for (size_t i = 0; xy && i < c->r->point_count; i++) {
		const struct ts_log_point *p = &c->r->points[i];

		if (p->comes != comes || isnan(point_value(p, c->value->name)))
			continue;
		xy[s->count] = (double)(p->day - c->from);
		xy[c->r->point_count + s->count++] = point_value(p, c->value->name);
	}
	if (xy && !s->count)
		c->count--;
}

static void add_level(struct chart *c, const char *name, double level, enum ts_hue hue)
{
	double *xy = isfinite(level) ? open_series(c, name, 2, hue) : NULL;

	if (!xy)
		return;
	xy[0] = 0;
	xy[1] = (double)(c->to - c->from);
	xy[2] = xy[3] = level;
	c->series[c->count - 1].count = 2;
}

/* Events but feeding and the changes of a routine, the newest of them. */
static struct ts_curve_mark *marks(struct chart *c, size_t *ret_count)
{
	struct ts_curve_mark *all = ts_arena_array(c->doc->arena, MARKS_MOST, sizeof *all);
	size_t n = 0;

	for (size_t i = c->r->line_count; all && i > 0 && n < MARKS_MOST; i--) {
		const struct ts_log_line *line = &c->r->lines[i - 1];

		for (size_t k = 0; k < line->happened.count && n < MARKS_MOST; k++) {
			const char *says = line->happened.items[k];

			if (line->date && strncmp(says, "fed", 3) != 0)
				all[n++] = (struct ts_curve_mark){
					(double)(day_of(line) - c->from), says};
		}
	}
	*ret_count = n;
	return all;
}

static void show_chart(struct ts_document *doc, const struct ts_log_result *r,
	const struct ts_log_value *value, long from, long to)
{
	static const struct {
		const char *name;
		enum ts_hue hue;
	} hues[] = {{"KH", TS_HUE_KH}, {"GH", TS_HUE_GH}, {"pH", TS_HUE_PH},
		{"temperature", TS_HUE_TEMPERATURE}};
	struct chart c = {doc, r, value, from, to,
		ts_arena_array(doc->arena, SERIES_MOST, sizeof *c.series), 0};
	struct ts_curve *curve = ts_arena_take(doc->arena, sizeof *curve);
	enum ts_hue hue = TS_HUE_NONE;

	if (!c.series || !curve)
		return;
	for (size_t i = 0; i < sizeof hues / sizeof *hues; i++) {
		if (strcmp(hues[i].name, value->name) == 0)
			hue = hues[i].hue;
	}
	add_read(&c);
	add_points(&c, "expected", false, hue);
	add_points(&c, "to come", true, hue);
	add_level(&c, "they like from", value->likes.low, hue);
	add_level(&c, "they like to", value->likes.high, hue);
	*curve = (struct ts_curve){.title = value->name,
		.x_label = r->first_day
				   ? ts_arena_join(doc->arena, "days since ", r->first_day, NULL)
				   : "days",
		.y_label = *value->unit ? value->unit : value->name,
		.y_decimals = decimals_of(value),
		.series = c.series,
		.series_count = c.count,
		.mark_lead = "on day ",
		.mark_unit = ""};
	curve->marks = marks(&c, &curve->mark_count);
	ts_doc_curve(doc, curve);
}

/* Of pages: a picture a value that was read twice or more. */
static void show_charts(struct ts_document *doc, const struct ts_log_result *r)
{
	long from = 0, to = 0;

	for (size_t i = 0; i < r->line_count; i++) {
		long day = day_of(&r->lines[i]);

		from = day && (!from || day < from) ? day : from;
		to = day > to ? day : to;
	}
	for (size_t i = 0; i < r->point_count; i++)
		to = r->points[i].day > to ? r->points[i].day : to;
	if (!from || to <= from)
		return;
	ts_doc_heading(doc, 0, "Over the months");
	for (size_t i = 0; i < r->value_count; i++) {
		if (r->values[i].readings > 1)
			show_chart(doc, r, &r->values[i], from, to);
	}
}

void ts_show_log(struct ts_document *doc, const struct ts_log_result *r, size_t most)
{
	size_t from = most && r->line_count > most ? r->line_count - most : 0;
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	ts_doc_verdict(doc, r->headline, r->span);
	if (r->next)
		ts_doc_paragraph(doc, r->next);
	ts_show_alarms(doc, &r->learned);
	for (size_t i = 0; i < r->course_count; i++) {
		if (!r->courses[i].moves || i == r->leads)
			continue;
		ts_text_puts(&text, r->courses[i].says, ".", NULL);
		ts_doc_paragraph(doc, ts_doc_take(doc, &text));
	}
	if (r->comes_says) {
		ts_text_puts(&text, "From here, by its routine: ", r->comes_says, ".", NULL);
		ts_doc_paragraph(doc, ts_doc_take(doc, &text));
	}
	show_values(doc, &text, r);
	if (doc->drawn)
		show_charts(doc, r);
	if (from) {
		ts_text_put(&text, "The newest ");
		ts_text_number(&text, (double)most, 0);
		ts_text_put(&text, " of ");
		ts_text_number(&text, (double)r->line_count, 0);
		ts_text_put(&text, " days; --all shows the rest.");
		ts_doc_paragraph(doc, ts_doc_take(doc, &text));
	}
	if (r->line_count)
		show_lines(doc, &text, r, from);
	ts_show_learned(doc, ts_doc_facts(doc, 0), &r->learned);
	ts_doc_paragraphs(doc, &r->notes);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}
