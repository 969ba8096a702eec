/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The one mark of a page: a trapezoid whose foot is what an animal tolerates and whose top is what
 * it is comfortable in, the reading hatched across it, a line for the miss beyond the foot. One
 * path an outline and one drawing an entry, since a ranking holds some two thousand of them. The
 * drawing is hidden from readers that listen: the figures stand below it as text.
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
	[TS_HUE_NONE] = {"", "", "", {0, 40}, 1},
	[TS_HUE_GH] = {"GH", "GH", " dH", {0, 30}, 1},
	[TS_HUE_KH] = {"KH", "KH", " dH", {0, 24}, 1},
	[TS_HUE_PH] = {"pH", "pH", "", {4, 10}, 1},
	[TS_HUE_TEMPERATURE] = {"temperature", "", " C", {10, 34}, 1},
};

enum { WIDE = 72, PITCH = 80, TOP = 2, FOOT = 13 };

/* The place of a value, cut at the ends of the scale; an open end lies there too. */
static int place(const struct ts_bar *bar, double value, bool high)
{
	const struct ts_range *scale = &scales[bar->hue].range;
	double part = (value - scale->low) / (scale->high - scale->low);

	if (!isfinite(value))
		part = high ? 1 : 0;
	part = part < 0 ? 0 : part > 1 ? 1 : part;
	return (int)(part * WIDE + 0.5);
}

static void put(struct ts_text *out, const char *before, int value)
{
	ts_text_put(out, before);
	ts_text_number_short(out, value, 0);
}

static void point(struct ts_text *out, const char *letter, int x, int y)
{
	put(out, letter, x);
	put(out, y < 0 ? "" : " ", y);
}

static bool outlined(const struct ts_bar *bar)
{
	return isfinite(bar->tolerated.low) || isfinite(bar->tolerated.high);
}

/* Slanted strokes over the interval of the reading, at least one. */
static void hatch(struct ts_text *out, const struct ts_bar *bar, int left)
{
	int low = place(bar, bar->reading.low, false), high = place(bar, bar->reading.high, true);

	for (int x = low; x == low || x + 2 <= high; x += 3) {
		point(out, "M", left + x, FOOT + 2);
		ts_text_put(out, "l2-15");
	}
}

/* The hatched readings of a whole entry, as one path. */
static void write_hatch(struct ts_page *page, const struct ts_bar *bars, const char *id)
{
	struct ts_text d;
	int left = 0;

	ts_text_open(&d, &page->out->allocator);
	for (const struct ts_bar *bar = bars; bar; bar = bar->next, left += PITCH) {
		if (isfinite(bar->reading.low))
			hatch(&d, bar, left);
	}
	ts_page_open(page, "path");
	ts_page_attribute(page, "id", id);
	ts_page_attribute(page, "class", "w");
	ts_page_attribute(page, "d", ts_text_get(&d));
	ts_page_close(page);
	page->out->failed |= d.failed;
	ts_text_drop(&d);
}

static bool same_readings(const struct ts_bar *a, const struct ts_bar *b)
{
	for (; a && b; a = a->next, b = b->next) {
		if (a->hue != b->hue || isfinite(a->reading.low) != isfinite(b->reading.low) ||
			(isfinite(a->reading.low) && (a->reading.low != b->reading.low ||
							     a->reading.high != b->reading.high)))
			return false;
	}
	return !a && !b;
}

static bool any_reading(const struct ts_bar *bars)
{
	while (bars && !isfinite(bars->reading.low))
		bars = bars->next;
	return bars;
}

/* A ranking asks about one water: its hatching is written once and used by every entry. */
static void put_hatch(struct ts_page *page, const struct ts_bar *bars)
{
	if (!any_reading(bars))
		return;
	if (!page->water || !same_readings(page->water, bars)) {
		write_hatch(page, bars, page->water || !bars->next ? NULL : "w");
		if (!page->water && bars->next)
			page->water = bars;
		return;
	}
	ts_page_open(page, "use");
	ts_page_attribute(page, "href", "#w");
	ts_page_close(page);
}

static void path(struct ts_text *out, const struct ts_bar *bar, int left)
{
	int foot[2] = {
		place(bar, bar->tolerated.low, false), place(bar, bar->tolerated.high, true)};
	int top[2] = {place(bar, bar->preferred.low, false), place(bar, bar->preferred.high, true)};
	int low = place(bar, bar->reading.low, false), high = place(bar, bar->reading.high, true);

	if (outlined(bar)) {
		point(out, "M", left + foot[0], FOOT);
		point(out, "l", top[0] - foot[0], TOP - FOOT);
		put(out, "h", top[1] - top[0]);
		point(out, "l", foot[1] - top[1], FOOT - TOP);
	}
	if (!isfinite(bar->reading.low))
		return;
	if (outlined(bar) && low > foot[1]) {
		point(out, "M", left + foot[1], FOOT);
		put(out, "H", left + low);
	} else if (outlined(bar) && high < foot[0]) {
		point(out, "M", left + foot[0], FOOT);
		put(out, "H", left + high);
	}
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

static bool same_range(const struct ts_range *a, const struct ts_range *b)
{
	return (a->low == b->low || (isnan(a->low) && isnan(b->low))) &&
	       (a->high == b->high || (isnan(a->high) && isnan(b->high)));
}

static bool same_outline(const struct ts_bar *a, const struct ts_bar *b)
{
	return same_range(&a->tolerated, &b->tolerated) &&
	       same_range(&a->preferred, &b->preferred) && same_range(&a->reading, &b->reading);
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

/* "te12", behind a '#' where it is used. */
static void put_id(struct ts_page *page, const char *attribute, const struct ts_bar *bar, size_t at)
{
	struct ts_text name;

	ts_text_open(&name, &page->out->allocator);
	ts_text_puts(&name, *attribute == 'h' ? "#" : "", ts_page_hue(bar->hue), NULL);
	ts_text_number_short(&name, (double)at, 0);
	ts_page_attribute(page, attribute, ts_text_get(&name));
	page->out->failed |= name.failed;
	ts_text_drop(&name);
}

static void put_outline(
	struct ts_page *page, const struct ts_bar *bars, const struct ts_bar *bar, int left)
{
	bool placed = bars->next && in_order(bars, bar);
	size_t at = TS_OUTLINES_MOST;
	struct ts_text d;

	if (placed && known_outline(page, bar, &at)) {
		ts_page_open(page, "use");
		put_id(page, "href", bar, at);
		ts_page_close(page);
		return;
	}
	ts_text_open(&d, &page->out->allocator);
	path(&d, bar, left);
	ts_page_open(page, "path");
	if (at < TS_OUTLINES_MOST)
		put_id(page, "id", bar, at);
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
	for (const struct ts_bar *bar = bars; bar; bar = bar->next, left += PITCH)
		put_outline(page, bars, bar, left);
	put_hatch(page, bars);
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
	ts_page_open(page, "p");
	ts_page_attribute(page, "class", "key");
	ts_page_text(page, "The outlines: the foot is what an animal tolerates, the top what it is "
			   "comfortable in; hatched is your water, and a line along the ground the "
			   "miss. Figures below an outline are the comfortable range. The scales:");
	for (int hue = TS_HUE_NONE + 1; hue < TS_HUE__COUNT; hue++) {
		ts_page_text(page, hue > 1 ? ", " : " ");
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
