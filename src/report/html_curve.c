/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A chart of a page: thin axes, one dash pattern a series beside its hue, uprights where a mark
 * stands. What the eye reads from it stands below as text. The terminal's drawing is curve.c.
 */
#include "report/curve.h"

#include <math.h>
#include <string.h>

#include "base/number.h"
#include "report/html_page.h"

enum { LEFT = 44, RIGHT = 352, TOP = 8, GROUND = 168, PATTERNS = 4 };

struct frame {
	struct ts_range x, y;
};

static double across(const struct frame *f, double x)
{
	double span = f->x.high - f->x.low;

	return LEFT + (span > 0 ? (x - f->x.low) / span : 0.5) * (RIGHT - LEFT);
}

static double up(const struct frame *f, double y)
{
	double span = f->y.high - f->y.low;

	return GROUND - (span > 0 ? (y - f->y.low) / span : 0.5) * (GROUND - TOP);
}

static void number_attribute(struct ts_page *page, const char *name, double value)
{
	struct ts_text text;

	ts_text_open(&text, &page->out->allocator);
	ts_text_number_short(&text, value, 1);
	ts_page_attribute(page, name, ts_text_get(&text));
	page->out->failed |= text.failed;
	ts_text_drop(&text);
}

static const char *pattern(size_t series)
{
	static const char *const names[PATTERNS] = {"s0", "s1", "s2", "s3"};

	return names[series % PATTERNS];
}

/* "line s1 ph": the pattern, and the hue where there is one. */
static void series_class(struct ts_page *page, const struct ts_series *s, size_t i)
{
	struct ts_text text;

	ts_text_open(&text, &page->out->allocator);
	ts_text_puts(&text, "line ", pattern(i), ts_page_hue(s->hue) ? " " : "",
		ts_page_hue(s->hue) ? ts_page_hue(s->hue) : "", NULL);
	ts_page_attribute(page, "class", ts_text_get(&text));
	page->out->failed |= text.failed;
	ts_text_drop(&text);
}

/* Gaps of a series are gaps of its line. */
static void draw_series(
	struct ts_page *page, const struct ts_series *s, size_t index, const struct frame *f)
{
	struct ts_text d;
	bool drawing = false;

	ts_text_open(&d, &page->out->allocator);
	for (size_t i = 0; i < s->count; i++) {
		bool there = isfinite(s->x[i]) && isfinite(s->y[i]);

		if (there) {
			ts_text_put(&d, drawing ? "L" : "M");
			ts_text_number_short(&d, across(f, s->x[i]), 1);
			ts_text_put(&d, " ");
			ts_text_number_short(&d, up(f, s->y[i]), 1);
		}
		drawing = there;
	}
	ts_page_open(page, "path");
	series_class(page, s, index);
	ts_page_attribute(page, "d", ts_text_get(&d));
	ts_page_close(page);
	page->out->failed |= d.failed;
	ts_text_drop(&d);
}

static void label(struct ts_page *page, double x, double y, const char *anchor, double value,
	int decimals, const char *unit)
{
	ts_page_open(page, "text");
	number_attribute(page, "x", x);
	number_attribute(page, "y", y);
	ts_page_attribute(page, "text-anchor", anchor);
	ts_page_number(page, value, decimals);
	ts_page_text(page, unit);
	ts_page_close(page);
}

struct box {
	double left, right, top, foot;
};

static bool crosses(const struct ts_series *s, const struct frame *f, const struct box *box)
{
	for (size_t i = 1; i < s->count; i++) {
		double x0 = across(f, s->x[i - 1]), x1 = across(f, s->x[i]);
		double y0 = up(f, s->y[i - 1]), y1 = up(f, s->y[i]);
		double slope = x1 > x0 ? (y1 - y0) / (x1 - x0) : 0;
		double from = fmax(x0, box->left), to = fmin(x1, box->right);

		if (!(from <= to)) /* beside it, or a gap */
			continue;
		y1 = x1 > x0 ? y0 + slope * (to - x0) : y1;
		y0 += slope * (from - x0);
		if (fmax(y0, y1) >= box->top && fmin(y0, y1) <= box->foot)
			return true;
	}
	return false;
}

enum { LETTER = 8, LINE = 16 }; /* a letter's width and a line's height, about */

/* The highest line for a label on which it hides no part of a series; else the first. */
static double free_line(
	const struct ts_curve *curve, const struct frame *f, double left, double width)
{
	for (int y = TOP + 10; y < GROUND - LINE; y += LINE) {
		const struct box box = {left, left + width, y - 13, y + 4};
		bool clear = true;

		for (size_t i = 0; i < curve->series_count; i++)
			clear = clear && !crosses(&curve->series[i], f, &box);
		if (clear)
			return y;
	}
	return TOP + 10;
}

static void draw_label(
	struct ts_page *page, const struct ts_curve *curve, const struct frame *f, size_t mark)
{
	const char *says = curve->marks[mark].says;
	double x = across(f, curve->marks[mark].x), width = LETTER * (double)strlen(says);
	bool before = x > (LEFT + RIGHT) / 2.0;

	ts_page_open(page, "text");
	number_attribute(page, "x", before ? x - 4 : x + 4);
	number_attribute(page, "y", free_line(curve, f, before ? x - 4 - width : x + 4, width));
	ts_page_attribute(page, "text-anchor", before ? "end" : "start");
	ts_page_text(page, says);
	ts_page_close(page);
}

static void draw_marks(struct ts_page *page, const struct ts_curve *curve, const struct frame *f)
{
	for (size_t i = 0; i < curve->mark_count; i++) {
		double x = across(f, curve->marks[i].x);

		if (!(x >= LEFT && x <= RIGHT))
			continue;
		ts_page_open(page, "line");
		ts_page_attribute(page, "class", "mark");
		number_attribute(page, "x1", x);
		number_attribute(page, "x2", x);
		number_attribute(page, "y1", TOP);
		number_attribute(page, "y2", GROUND);
		ts_page_close(page);
		/* Of several the list below says which day is which: in the picture they meet. */
		if (curve->mark_count == 1)
			draw_label(page, curve, f, i);
	}
}

/* The middle of an axis has a label where its figures can say it. */
static bool written(const struct ts_range *range, int decimals)
{
	double middle = (range->low + range->high) / 2 * ts_number_tens(decimals);

	return fabs(middle - round(middle)) < 1e-6;
}

static void draw(struct ts_page *page, const struct ts_curve *curve, const struct frame *f)
{
	ts_page_open(page, "svg");
	ts_page_attribute(page, "aria-hidden", "true");
	ts_page_attribute(page, "class", "curve");
	ts_page_attribute(page, "viewBox", "0 0 360 188");
	ts_page_open(page, "path");
	ts_page_attribute(page, "class", "axis");
	ts_page_attribute(page, "d", "M44 8V168H352");
	ts_page_close(page);
	label(page, LEFT - 4, TOP + 8, "end", f->y.high, curve->y_decimals, "");
	label(page, LEFT - 4, GROUND, "end", f->y.low, curve->y_decimals, "");
	label(page, LEFT, GROUND + 16, "start", f->x.low, curve->x_decimals, "");
	if (written(&f->x, curve->x_decimals))
		label(page, (LEFT + RIGHT) / 2.0, GROUND + 16, "middle", (f->x.low + f->x.high) / 2,
			curve->x_decimals, "");
	label(page, RIGHT, GROUND + 16, "end", f->x.high, curve->x_decimals, "");
	for (size_t i = 0; i < curve->series_count; i++)
		draw_series(page, &curve->series[i], i, f);
	draw_marks(page, curve, f);
	ts_page_close(page);
}

/* A limit: the same from end to end. */
static bool level(const struct ts_series *s, size_t first, size_t last)
{
	for (size_t i = first; i < last; i++) {
		if (isfinite(s->y[i]) && fabs(s->y[i] - s->y[first]) > 0)
			return false;
	}
	return true;
}

/* "pH, evening and morning: from 7.9 to 4.2", "they like to 10". */
static void say_series(
	struct ts_page *page, const struct ts_curve *curve, const struct ts_series *s, size_t i)
{
	size_t first = 0, last = s->count;

	while (first < s->count && !isfinite(s->y[first]))
		first++;
	while (last > first && !isfinite(s->y[last - 1]))
		last--;
	ts_page_open(page, "li");
	ts_page_open(page, "svg");
	ts_page_attribute(page, "aria-hidden", "true");
	ts_page_attribute(page, "class", "sample");
	ts_page_attribute(page, "viewBox", "0 0 28 8");
	ts_page_open(page, "path");
	series_class(page, s, i);
	ts_page_attribute(page, "d", "M0 4H28");
	ts_page_close(page);
	ts_page_close(page);
	ts_page_text(page, s->name);
	if (first < last) {
		ts_page_text(page, level(s, first, last) ? " " : ": from ");
	}
	if (first < last && !level(s, first, last)) {
		ts_page_number(page, s->y[first], curve->y_decimals);
		ts_page_text(page, " to ");
	}
	if (first < last) {
		ts_page_number(page, s->y[last - 1], curve->y_decimals);
	}
	ts_page_close(page);
}

static void say_mark(
	struct ts_page *page, const struct ts_curve *curve, const struct ts_curve_mark *mark)
{
	struct ts_text says;

	ts_text_open(&says, &page->out->allocator);
	ts_curve_say_mark(&says, curve, mark);
	ts_page_element(page, "li", ts_text_get(&says));
	page->out->failed |= says.failed;
	ts_text_drop(&says);
}

void ts_page_curve(struct ts_page *page, const struct ts_curve *curve)
{
	struct frame f;

	if (!curve || !ts_curve_extent(curve, &f.x, &f.y))
		return;
	ts_page_open(page, "figure");
	ts_page_open(page, "figcaption");
	ts_page_text(page, curve->title);
	ts_page_text(page, " (across: ");
	ts_page_text(page, curve->x_label);
	ts_page_text(page, ", upward: ");
	ts_page_text(page, curve->y_label);
	ts_page_text(page, ")");
	ts_page_close(page);
	draw(page, curve, &f);
	ts_page_open(page, "ul");
	for (size_t i = 0; i < curve->series_count; i++)
		say_series(page, curve, &curve->series[i], i);
	for (size_t i = 0; i < curve->mark_count; i++)
		say_mark(page, curve, &curve->marks[i]);
	ts_page_close(page);
	ts_page_close(page);
	ts_page_raw(page, "\n");
}
