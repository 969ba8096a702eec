/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer about drift as a document: where it goes, the days, charts, what it rests on.
 */
#include "show/drift.h"

#include <math.h>
#include <string.h>

#include "base/arena.h"
#include "show/learned.h"
#include "words/care.h"
#include "words/sentence.h"

/* Lines of the table at the most. */
#define ROWS_MOST 12
/* mg/L of nitrogen that a kit just tells from nil. */
#define TRACE_TAN 0.05

struct page {
	const struct ts_drift_result *r;
	struct ts_document *doc;
	struct ts_text text;
};

static void put(struct page *p, double value, int decimals)
{
	ts_text_number_short(&p->text, value, decimals);
}

static const char *take(struct page *p)
{
	return ts_doc_take(p->doc, &p->text);
}

static const char *cell(struct page *p, double value, int decimals)
{
	if (isnan(value))
		return "?";
	ts_text_number(&p->text, value, decimals);
	return take(p);
}

static const char *ph_cell(struct page *p, const struct ts_drift_day_result *d)
{
	if (isnan(d->ph))
		return "not by KH";
	ts_text_number(&p->text, d->ph_low, 1);
	ts_text_put(&p->text, "..");
	ts_text_number(&p->text, d->ph_high, 1);
	return take(p);
}

static const char *ammonia_cell(struct page *p, const struct ts_drift_day_result *d)
{
	ts_text_number(&p->text, d->tan_mg_l, 2);
	if (d->filter_doubtful)
		ts_text_put(&p->text, " doubtful");
	return take(p);
}

/* Ammonia worth a column: a filter that is ripe leaves no trace that a kit could read. */
static bool ammonia_shows(const struct ts_drift_result *r)
{
	for (size_t i = 0; i < r->day_count; i++) {
		if (r->days[i].filter_doubtful || r->days[i].tan_mg_l >= TRACE_TAN)
			return true;
	}
	return false;
}

/* A meter's reading gives the conductivity of the days a start; without one it is a guess of ions.
 */
static bool conductivity_read(const struct ts_drift_result *r)
{
	for (size_t i = 0; i < r->now_count; i++) {
		if (!strcmp(r->now[i].parameter, "conductivity"))
			return r->now[i].read;
	}
	return false;
}

static void table(struct page *p)
{
	const struct ts_drift_result *r = p->r;
	struct ts_node *node = ts_doc_table(p->doc);
	bool ammonia = ammonia_shows(r), conductivity = conductivity_read(r);
	size_t step = 7;

	while ((r->day_count - 1) / step >= ROWS_MOST)
		step *= 2;
	/* What is not shown ends the line before it. */
	ts_doc_line(p->doc, node, "day", "KH", "GH", "pH", "nitrate",
		ammonia        ? "ammonia"
		: conductivity ? "uS/cm"
			       : NULL,
		ammonia && conductivity ? "uS/cm" : NULL, NULL);
	for (size_t i = 0; i < r->day_count; i++) {
		const struct ts_drift_day_result *d = &r->days[i];
		const char *meter = NULL;

		if (i % step && i + 1 != r->day_count)
			continue;
		if (conductivity)
			meter = cell(p, d->conductivity_us_cm, 0);
		ts_doc_line(p->doc, node, cell(p, d->day, 0), cell(p, d->kh_dh, 1),
			cell(p, d->gh_dh, 1), ph_cell(p, d), cell(p, d->no3_mg_l, 0),
			ammonia ? ammonia_cell(p, d) : meter, ammonia ? meter : NULL, NULL);
	}
}

/* What a chart shows of a day. */
static double kh_of(const struct ts_drift_day_result *d)
{
	return d->kh_dh;
}

static double ph_of(const struct ts_drift_day_result *d)
{
	return d->ph;
}

static double no3_of(const struct ts_drift_day_result *d)
{
	return d->no3_mg_l;
}

struct line {
	const char *name;
	double (*of)(const struct ts_drift_day_result *day);
	enum ts_hue hue;
};

/* One chart over the days; `mark` is drawn where it is a day. */
static void chart(struct page *p, const char *title, const char *unit, const struct line *lines,
	size_t count, double mark_day)
{
	struct ts_arena *arena = p->doc->arena;
	size_t days = p->r->day_count;
	double *x = ts_arena_array(arena, (count + 1) * days, sizeof *x);
	struct ts_series *series = ts_arena_array(arena, count, sizeof *series);
	struct ts_curve_mark *mark = ts_arena_take(arena, sizeof *mark);
	struct ts_curve *curve = ts_arena_take(arena, sizeof *curve);

	if (!x || !series || !mark || !curve)
		return;
	for (size_t i = 0; i < days; i++)
		x[i] = p->r->days[i].day;
	for (size_t k = 0; k < count; k++) {
		double *y = x + (k + 1) * days;

		for (size_t i = 0; i < days; i++)
			y[i] = lines[k].of(&p->r->days[i]);
		series[k] = (struct ts_series){lines[k].name, x, y, days, lines[k].hue};
	}
	*mark = (struct ts_curve_mark){mark_day, "the buffer is gone"};
	*curve = (struct ts_curve){title, "days", unit, 0, 1, series, count, mark,
		isnan(mark_day) ? 0u : 1u, "on day ", ""};
	ts_doc_curve(p->doc, curve);
}

/* A unit an axis; on a terminal the pH stands in the table alone. */
static void charts(struct page *p)
{
	static const struct line buffer[] = {{"KH, dH", kh_of, TS_HUE_KH}};
	static const struct line ph[] = {{"pH at the usual CO2", ph_of, TS_HUE_PH}};
	static const struct line nitrate[] = {{"nitrate, mg/L", no3_of, TS_HUE_NONE}};

	chart(p, "The buffer", "KH, dH", buffer, 1, p->r->buffer_gone_day);
	ts_doc_medium(p->doc, TS_ON_PAGES);
	chart(p, "The pH that goes with it", "pH", ph, 1, (double)NAN);
	ts_doc_medium(p->doc, TS_EVERYWHERE);
	chart(p, "Nitrate", "mg/L", nitrate, 1, (double)NAN);
}

static void say_load(struct page *p, struct ts_node *facts)
{
	const struct ts_drift_result *r = p->r;
	double modelled = (1 - r->plant_share) * r->nitrogen_mg_day,
	       measured = r->nitrogen_measured_mg_day;

	put(p, modelled, 0);
	ts_text_put(&p->text, " mg of nitrogen a day stay in ");
	put(p, r->volume_l, 0);
	ts_text_put(&p->text, " L");
	if (r->plant_share * r->nitrogen_mg_day >= 0.5) { /* less is written as 0 */
		ts_text_put(&p->text, ", after ");
		put(p, r->plant_share * r->nitrogen_mg_day, 0);
		ts_text_put(&p->text, " for the plants");
	}
	ts_text_put(&p->text, " (modelled from the feed)");
	ts_doc_line(p->doc, facts, "Load", take(p), NULL);
	if (isnan(measured))
		return;
	put(p, measured, 0);
	ts_text_put(&p->text, " mg a day by the log; this one is used");
	if (r->measured_differs)
		ts_text_put(&p->text, ". The two differ more than twofold: doubt the model, and "
				      "the kit");
	ts_doc_line(p->doc, facts, "Measured", take(p), NULL);
}

static void put_level(struct page *p, const char *label, const struct ts_drift_level_result *level,
	int decimals, const char *unit)
{
	if (isnan(level->before_change))
		return;
	ts_text_puts(&p->text, label, " ", NULL);
	put(p, level->after_change, decimals);
	ts_text_put(&p->text, "..");
	put(p, level->before_change, decimals);
	ts_text_put(&p->text, unit);
}

static void say_steady(struct page *p, struct ts_node *facts)
{
	const struct ts_drift_steady_result *s = &p->r->steady;

	if (isnan(s->no3_mg_l.before_change)) {
		ts_text_put(&p->text, "none: it goes on drifting");
	} else {
		put_level(p, "KH", &s->kh_dh, 1, ", ");
		put_level(p, "GH", &s->gh_dh, 1, ", ");
		put_level(p, "nitrate", &s->no3_mg_l, 0, " mg/L, after and before a change");
	}
	ts_doc_line(p->doc, facts, "Settles", take(p), NULL);
}

/* The limits that the verdict does not name. */
static void say_limits(struct page *p, struct ts_node *facts)
{
	const char *label = "Limits";

	for (size_t i = 0; i < p->r->limit_count; i++) {
		if (strstr(p->r->says, p->r->limits[i].says))
			continue;
		ts_doc_line(p->doc, facts, label, p->r->limits[i].says, NULL);
		label = "";
	}
}

/* Where nothing is to be mended, the least that would do is still good to know. */
static void say_smallest(struct page *p, struct ts_node *facts)
{
	const struct ts_drift_change_result *c = p->r->smallest_safe_change;

	if (!c || p->r->remedies.count)
		return;
	ts_say_part_of(&p->text, ceil(c->share_percent), p->r->volume_l);
	ts_text_put(&p->text, " every ");
	put(p, c->every_days, 1);
	ts_text_put(&p->text, " days keeps ");
	if (!isnan(c->kh_low_dh)) {
		ts_text_put(&p->text, "KH at ");
		put(p, c->kh_low_dh, 1);
		ts_text_put(&p->text, " or more and ");
	}
	ts_text_put(&p->text, "nitrate at ");
	put(p, c->no3_high_mg_l, 0);
	ts_text_put(&p->text, " mg/L or less");
	ts_doc_line(p->doc, facts, "Least change", take(p), NULL);
}

static void list(
	struct page *p, struct ts_node *facts, const char *label, const struct ts_texts *of)
{
	for (size_t i = 0; i < of->count; i++)
		ts_doc_line(p->doc, facts, i ? "" : label, of->items[i], NULL);
}

void ts_show_drift(struct ts_document *doc, const struct ts_drift_result *r)
{
	struct page p = {.r = r, .doc = doc};
	struct ts_node *facts;

	ts_text_open(&p.text, &doc->arena->allocator);
	ts_doc_verdict(doc, r->says, r->because);
	ts_show_alarms(doc, &r->learned);
	for (size_t i = 0; i < r->remedies.count; i++)
		ts_doc_paragraph(doc, r->remedies.items[i]);
	for (size_t i = 0; i < r->asks.count; i++)
		ts_doc_paragraph(doc, r->asks.items[i]);
	table(&p);
	charts(&p);
	if (r->doubtful_says)
		ts_doc_paragraph(doc, r->doubtful_says);
	facts = ts_doc_facts(doc, 0);
	say_limits(&p, facts);
	say_load(&p, facts);
	ts_show_learned(doc, facts, &r->learned);
	ts_show_newest(doc, facts, &r->learned);
	say_steady(&p, facts);
	say_smallest(&p, facts);
	list(&p, facts, "Assumed", &r->assumed);
	ts_doc_paragraph(doc, r->large_change.says);
	ts_doc_caution(doc, r->caution);
	ts_doc_see(doc, ts_guide_old_tanks);
	doc->arena->failed |= p.text.failed;
	ts_text_drop(&p.text);
}
