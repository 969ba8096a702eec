/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Only values that somebody read have a column.
 */
#include "show/log.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

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

void ts_show_log(struct ts_document *doc, const struct ts_log_result *r, size_t most)
{
	size_t from = most && r->line_count > most ? r->line_count - most : 0;
	struct ts_text text;
	bool led = false;

	ts_text_open(&text, &doc->arena->allocator);
	ts_doc_verdict(doc, r->headline, r->span);
	if (r->next)
		ts_doc_paragraph(doc, r->next);
	for (size_t i = 0; i < r->course_count; i++) {
		if (!r->courses[i].moves)
			continue;
		if (led) { /* the first of them is the headline */
			ts_text_puts(&text, r->courses[i].says, ".", NULL);
			ts_doc_paragraph(doc, ts_doc_take(doc, &text));
		}
		led = true;
	}
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
	ts_doc_paragraphs(doc, &r->notes);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}
