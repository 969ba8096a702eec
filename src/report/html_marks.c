/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The one mark of a page: an outline whose foot is what an animal tolerates and whose top is what
 * it is comfortable in, an upright at the reading, a bar over its interval, a line along the ground
 * for the miss beyond the foot. What goes on beyond the scale has no end there: an arrow says so.
 * One path an outline and one drawing an entry, since a ranking holds some two thousand of them.
 * The drawing is hidden from readers that listen: the figures stand below it as text. That it says
 * what they say is tests/drawings.py.
 */
#include <math.h>

#include "report/html_page.h"
#include "words/sentence.h"

/* One scale a parameter, so that outlines can be compared down the page. */
static const struct {
	const char *name, *brief, *unit;
	struct ts_range range;
	int decimals;
} scales[TS_HUE__COUNT] = {
	[TS_HUE_NONE] = {"salt", "", " g/L", {0, 10}, 1},
	[TS_HUE_GH] = {"GH", "GH", " dH", {0, 30}, 1},
	[TS_HUE_KH] = {"KH", "KH", " dH", {0, 24}, 1},
	[TS_HUE_PH] = {"pH", "pH", "", {4, 10}, 1},
	[TS_HUE_TEMPERATURE] = {"temperature", "", " C", {10, 34}, 1},
};

/* TOP: comfortable; SHELF: tolerated, nobody knows where comfort ends; GROUND: the end of it. */
enum { WIDE = 72, PITCH = 80, TOP = 2, SHELF = 8, GROUND = 13, BAR_TOP = 14, BAR_FOOT = 16 };
#define FAR 1e6 /* where an open end goes */

/* Where a value stands, beyond the ends of the scale too. */
static double place(const struct ts_bar *bar, double value)
{
	const struct ts_range *scale = &scales[bar->hue].range;

	return (value - scale->low) / (scale->high - scale->low) * WIDE;
}

static bool on_scale(const struct ts_bar *bar, double value)
{
	return place(bar, value) >= 0 && place(bar, value) <= WIDE;
}

static double within(double x)
{
	return fmin(fmax(x, 0), WIDE);
}

static bool outlined(const struct ts_bar *bar)
{
	return isfinite(bar->tolerated.low) || isfinite(bar->tolerated.high);
}

/* A path that is being written: where its pen is, from the drawing's `left` on. */
struct pen {
	struct ts_text *out;
	int left, x, y;
	bool down;
};

static void put(struct ts_text *out, const char *letter, int value)
{
	ts_text_put(out, letter);
	ts_text_number_short(out, value, 0);
}

static void move(struct pen *pen, double x, double y)
{
	int at_x = pen->left + (int)(x + 0.5), at_y = (int)(y + 0.5);

	if (pen->down && pen->x == at_x && pen->y == at_y)
		return;
	put(pen->out, "M", at_x);
	put(pen->out, " ", at_y);
	pen->x = at_x;
	pen->y = at_y;
	pen->down = true;
}

static void line(struct pen *pen, double x, double y)
{
	int at_x = pen->left + (int)(x + 0.5), at_y = (int)(y + 0.5);

	if (at_y == pen->y) {
		put(pen->out, "H", at_x);
	} else if (at_x == pen->x) {
		put(pen->out, "V", at_y);
	} else {
		put(pen->out, "L", at_x);
		put(pen->out, " ", at_y);
	}
	pen->x = at_x;
	pen->y = at_y;
}

/* An arrow's head at an end of the scale. */
static void arrow(struct pen *pen, bool high, double y)
{
	double edge = high ? WIDE : 0, back = high ? WIDE - 3 : 3;

	move(pen, back, y - 2);
	line(pen, edge, y);
	line(pen, back, y + 2);
}

struct corner {
	double x, y;
};

/* What of a side lies on the scale; a level one that is cut there goes on. */
static void side(struct pen *pen, struct corner a, struct corner b)
{
	double low = within(a.x), high = within(b.x),
	       slope = b.x > a.x ? (b.y - a.y) / (b.x - a.x) : 0;

	if (b.x < 0 || a.x > WIDE)
		return;
	if (a.y == b.y && a.x < 0)
		arrow(pen, false, a.y);
	move(pen, low, a.y + slope * (low - a.x));
	line(pen, high, b.y + slope * (high - b.x));
	if (a.y == b.y && b.x > WIDE)
		arrow(pen, true, a.y);
}

/* The corners of one end, from the ground to the level of what is known; how many. A foot beyond
 * the scale is no slope, which would be as good as level. */
static size_t end_corners(const struct ts_bar *bar, bool high, struct corner ret[3])
{
	double foot = high ? bar->tolerated.high : bar->tolerated.low;
	double top = high ? bar->preferred.high : bar->preferred.low, away = high ? FAR : -FAR;
	bool unknown = isnan(bar->preferred.low) && isnan(bar->preferred.high);

	if (unknown) {
		ret[0] = (struct corner){isfinite(foot) ? place(bar, foot) : away, GROUND};
		ret[1] = (struct corner){ret[0].x, SHELF};
		return 2;
	}
	if (isfinite(foot) && on_scale(bar, foot)) {
		ret[0] = (struct corner){place(bar, foot), GROUND};
		ret[1] = (struct corner){isfinite(top) ? place(bar, top) : ret[0].x, TOP};
		return 2;
	}
	ret[0] = (struct corner){away, SHELF};
	ret[1] = (struct corner){isfinite(top) ? place(bar, top) : away, SHELF};
	ret[2] = (struct corner){ret[1].x, TOP};
	return 3;
}

static void outline(struct pen *pen, const struct ts_bar *bar)
{
	struct corner low[3], high[3];
	size_t lows = end_corners(bar, false, low), highs = end_corners(bar, true, high);

	for (size_t i = 1; i < lows; i++)
		side(pen, low[i - 1], low[i]);
	side(pen, low[lows - 1], high[highs - 1]);
	for (size_t i = highs - 1; i; i--)
		side(pen, high[i], high[i - 1]);
}

/* From the end of what is tolerated to the reading. */
static void miss(struct pen *pen, const struct ts_bar *bar)
{
	double from =
		bar->reading_at > bar->tolerated.high ? bar->tolerated.high : bar->tolerated.low;

	if (!(bar->reading_at > bar->tolerated.high || bar->reading_at < bar->tolerated.low) ||
		!on_scale(bar, from))
		return;
	pen->down = false; /* a part of its own */
	move(pen, place(bar, from), GROUND);
	line(pen, within(place(bar, bar->reading_at)), GROUND);
}

/* The bar over an interval; open where it goes on beyond the scale. */
static void interval(struct pen *pen, const struct ts_bar *bar)
{
	double low = within(place(bar, bar->reading.low)),
	       high = within(place(bar, bar->reading.high));
	bool ends = on_scale(bar, bar->reading.high), begins = on_scale(bar, bar->reading.low);

	if (high - low < 0.5)
		return;
	if (!begins && !ends) {
		move(pen, low, BAR_TOP);
		line(pen, high, BAR_TOP);
		move(pen, low, BAR_FOOT);
		line(pen, high, BAR_FOOT);
		return;
	}
	move(pen, begins ? high : low, BAR_TOP);
	line(pen, begins ? low : high, BAR_TOP);
	line(pen, begins ? low : high, BAR_FOOT);
	line(pen, begins ? high : low, BAR_FOOT);
	if (begins && ends)
		ts_text_put(pen->out, "Z");
	pen->down = false;
}

static void reading(struct pen *pen, const struct ts_bar *bar)
{
	if (isfinite(bar->reading.low) && isfinite(bar->reading.high))
		interval(pen, bar);
	if (!isfinite(bar->reading_at))
		return;
	if (!on_scale(bar, bar->reading_at)) {
		arrow(pen, place(bar, bar->reading_at) > WIDE, GROUND);
		return;
	}
	move(pen, place(bar, bar->reading_at), BAR_FOOT);
	line(pen, place(bar, bar->reading_at), TOP - 1);
}

/* "w3", behind a '#' where it is used. */
static void put_name(struct ts_page *page, const char *attribute, const char *hue, size_t at)
{
	struct ts_text name;

	ts_text_open(&name, &page->out->allocator);
	ts_text_puts(&name, *attribute == 'h' ? "#" : "", hue, NULL);
	ts_text_number_short(&name, (double)at, 0);
	ts_page_attribute(page, attribute, ts_text_get(&name));
	page->out->failed |= name.failed;
	ts_text_drop(&name);
}

/* The readings of a whole entry, as one path. */
static void write_readings(struct ts_page *page, const struct ts_bar *bars, size_t at)
{
	struct ts_text d;
	struct pen pen = {.out = &d};

	ts_text_open(&d, &page->out->allocator);
	for (const struct ts_bar *bar = bars; bar; bar = bar->next, pen.left += PITCH)
		reading(&pen, bar);
	ts_page_open(page, "path");
	if (at < TS_WATERS_MOST)
		put_name(page, "id", "w", at);
	ts_page_attribute(page, "class", "w");
	ts_page_attribute(page, "d", ts_text_get(&d));
	ts_page_close(page);
	page->out->failed |= d.failed;
	ts_text_drop(&d);
}

static bool same_range(const struct ts_range *a, const struct ts_range *b)
{
	return (a->low == b->low || (isnan(a->low) && isnan(b->low))) &&
	       (a->high == b->high || (isnan(a->high) && isnan(b->high)));
}

static bool same_reading(const struct ts_bar *a, const struct ts_bar *b)
{
	return same_range(&a->reading, &b->reading) &&
	       (a->reading_at == b->reading_at || (isnan(a->reading_at) && isnan(b->reading_at)));
}

static bool same_readings(const struct ts_bar *a, const struct ts_bar *b)
{
	for (; a && b; a = a->next, b = b->next) {
		if (a->hue != b->hue || !same_reading(a, b))
			return false;
	}
	return !a && !b;
}

static bool any_reading(const struct ts_bar *bars)
{
	while (bars && !isfinite(bars->reading.low) && !isfinite(bars->reading_at))
		bars = bars->next;
	return bars;
}

/*
 * A ranking asks about one water: its readings are written once and used by every entry. Of a range
 * the end that counts differs from animal to animal, so a few are kept.
 */
static void put_readings(struct ts_page *page, const struct ts_bar *bars)
{
	size_t at = 0;

	if (!any_reading(bars))
		return;
	while (at < TS_WATERS_MOST && page->waters[at] && !same_readings(page->waters[at], bars))
		at++;
	if (at < TS_WATERS_MOST && page->waters[at]) {
		ts_page_open(page, "use");
		put_name(page, "href", "w", at);
		ts_page_close(page);
		return;
	}
	if (at < TS_WATERS_MOST && bars->next)
		page->waters[at] = bars;
	write_readings(page, bars, at < TS_WATERS_MOST && bars->next ? at : TS_WATERS_MOST);
}

static void path(struct ts_text *out, const struct ts_bar *bar, int left)
{
	struct pen pen = {.out = out, .left = left};

	if (!outlined(bar))
		return;
	outline(&pen, bar);
	miss(&pen, bar);
}

/* "GH 1..8, 4 over": comfortable range, or all that is known, and the miss beyond it. */
static void figures(struct ts_page *page, const struct ts_bar *bar)
{
	int decimals = scales[bar->hue].decimals;

	ts_page_open(page, "i");
	ts_page_text(page, bar->hue ? scales[bar->hue].brief : bar->label);
	ts_page_text(page, bar->hue == TS_HUE_TEMPERATURE ? NULL : " ");
	if (!outlined(bar)) {
		ts_page_text(page, "?");
		ts_page_close(page);
		return;
	}
	ts_say_range(
		page->out, isnan(bar->preferred.low) ? &bar->tolerated : &bar->preferred, decimals);
	ts_page_text(page, bar->hue == TS_HUE_TEMPERATURE ? scales[bar->hue].unit : NULL);
	if (fabs(bar->miss) >= 0.05) {
		ts_page_text(page, ", ");
		ts_page_number(page, fabs(bar->miss), decimals);
		ts_page_text(page, bar->miss > 0 ? " over" : " under");
	}
	ts_page_close(page);
}

/* Rows of GH, KH, pH, temperature get their hues from the style by their place: 24 kB less. */
static bool in_order(const struct ts_bar *bars, const struct ts_bar *bar)
{
	enum ts_hue hue = TS_HUE_GH;

	for (; bars != bar; bars = bars->next)
		hue++;
	return bar->hue == hue;
}

static bool same_outline(const struct ts_bar *a, const struct ts_bar *b)
{
	return same_range(&a->tolerated, &b->tolerated) &&
	       same_range(&a->preferred, &b->preferred) && same_reading(a, b);
}

/*
 * A ranking has few outlines that differ, a dozen of KH, which comes from the kind of home water:
 * each is written once, with an id, and used by the other entries. `ret_at`: which it is; the
 * number of those known where it is to be written.
 */
static bool known_outline(struct ts_page *page, const struct ts_bar *bar, size_t *ret_at)
{
	const struct ts_bar **known = page->outlines[bar->hue];
	size_t at = 0;

	while (at < TS_OUTLINES_MOST && known[at] && !same_outline(known[at], bar))
		at++;
	*ret_at = at;
	if (at < TS_OUTLINES_MOST && !known[at]) {
		known[at] = bar;
		return false;
	}
	return at < TS_OUTLINES_MOST;
}

static void put_outline(
	struct ts_page *page, const struct ts_bar *bars, const struct ts_bar *bar, int left)
{
	bool placed = bars->next && in_order(bars, bar);
	size_t at = TS_OUTLINES_MOST;
	struct ts_text d;

	if (placed && known_outline(page, bar, &at)) {
		ts_page_open(page, "use");
		put_name(page, "href", ts_page_hue(bar->hue), at);
		ts_page_close(page);
		return;
	}
	ts_text_open(&d, &page->out->allocator);
	path(&d, bar, left);
	ts_page_open(page, "path");
	if (at < TS_OUTLINES_MOST)
		put_name(page, "id", ts_page_hue(bar->hue), at);
	if (!placed)
		ts_page_attribute(page, "class", ts_page_hue(bar->hue));
	ts_page_attribute(page, "d", ts_text_get(&d));
	ts_page_close(page);
	page->out->failed |= d.failed;
	ts_text_drop(&d);
}

void ts_page_marks(struct ts_page *page, const struct ts_bar *bars)
{
	int left = 0;

	if (!bars)
		return;
	ts_page_open(page, "svg");
	ts_page_attribute(page, "aria-hidden", "true");
	if (!bars->next) {
		ts_page_attribute(page, "class", "one");
		ts_page_attribute(page, "viewBox", "0 0 74 16");
	}
	for (const struct ts_bar *bar = bars; bar; bar = bar->next, left += PITCH) {
		put_outline(page, bars, bar, left);
		page->salt |= bar->hue == TS_HUE_NONE;
	}
	put_readings(page, bars);
	ts_page_close(page);
	if (!bars->next)
		return; /* the entry's own sentence has the figures */
	ts_page_open(page, "p");
	for (const struct ts_bar *bar = bars; bar; bar = bar->next)
		figures(page, bar);
	ts_page_close(page);
}

void ts_page_marks_key(struct ts_page *page)
{
	size_t named = 0;

	ts_page_open(page, "p");
	ts_page_attribute(page, "class", "key");
	ts_page_text(page,
		"The outlines: the foot is what an animal tolerates, the top what it is "
		"comfortable in, an arrow where that goes on beyond the scale. The upright "
		"is your water, the bar at its foot how far that is sure; a line along the "
		"ground is the miss. Figures below an outline are the comfortable range. "
		"The scales:");
	for (int hue = page->salt ? TS_HUE_NONE : TS_HUE_NONE + 1; hue < TS_HUE__COUNT; hue++) {
		ts_page_text(page, named++ ? ", " : " ");
		ts_page_text(page, scales[hue].name);
		ts_page_text(page, " ");
		ts_page_number(page, scales[hue].range.low, 0);
		ts_page_text(page, " to ");
		ts_page_number(page, scales[hue].range.high, 0);
		ts_page_text(page, scales[hue].unit);
	}
	ts_page_text(page, ".");
	ts_page_close(page);
}
