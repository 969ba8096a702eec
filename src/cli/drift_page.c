/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The words, tables and charts of drift. The verdict is the first of: the buffer goes, the routine
 * ends outside its bounds, the tank already stands outside, all stays inside.
 */
#include "cli/drift.h"

#include <math.h>

#include "base/arena.h"
#include "model/practice.h"
#include "words/care.h"

/* Lines of the table at the most. */
#define ROWS_MOST 12
/* Less free ammonia than this is not worth a word. */
#define NH3_SHOWN_MG_L 0.0005

struct page {
	struct session *session;
	const struct ts_drift_result *r;
	struct ts_document doc;
	struct ts_text text;
};

static void put(struct page *p, double value, int decimals)
{
	ts_text_number_short(&p->text, value, decimals);
}

static const char *take(struct page *p)
{
	return ts_doc_take(&p->doc, &p->text);
}

static const char *cell(struct page *p, double value, int decimals)
{
	if (isnan(value))
		return "?";
	ts_text_number(&p->text, value, decimals);
	return take(p);
}

static double bound(const struct page *p, enum ts_practice_id id)
{
	return p->session->practice->value[id];
}

static void put_routine(struct page *p)
{
	const struct ts_drift_result *r = p->r;

	if (!(r->change_every_days > 0) || !(r->change_percent > 0)) {
		ts_text_put(&p->text, "no water is changed");
		return;
	}
	ts_text_put(&p->text, "you change ");
	put(p, r->change_percent, 0);
	ts_text_put(&p->text, " % every ");
	put(p, r->change_every_days, 1);
	ts_text_put(&p->text, " days");
}

/* "KH 8 now, 7.4 after 28 days, settles at 7.1; " */
static void put_course(struct page *p, const char *label, const char *unit, double now, double then,
	double steady, int decimals)
{
	ts_text_puts(&p->text, label, " ", NULL);
	put(p, now, decimals);
	ts_text_puts(&p->text, unit, " now, ", NULL);
	put(p, then, decimals);
	ts_text_put(&p->text, " after ");
	put(p, (double)(p->r->day_count - 1), 0);
	ts_text_put(&p->text, " days");
	if (!isnan(steady)) {
		ts_text_put(&p->text, ", settles at ");
		put(p, steady, decimals);
	}
	ts_text_put(&p->text, "; ");
}

/* " (12 to 31 by what is not known of feed and plants)" */
static void put_doubt(struct page *p)
{
	double early = p->r->buffer_gone_day_early, late = p->r->buffer_gone_day_late;

	if (early == p->r->buffer_gone_day && late == early)
		return;
	ts_text_put(&p->text, " (");
	put(p, early, 0);
	if (isnan(late)) {
		ts_text_put(&p->text, " or more");
	} else {
		ts_text_put(&p->text, " to ");
		put(p, late, 0);
	}
	ts_text_put(&p->text, " by what feed and plants may do)");
}

static double most_ammonia(const struct ts_drift_result *r)
{
	double most = 0;

	for (size_t i = 0; i < r->day_count; i++)
		most = fmax(most, r->days[i].tan_mg_l);
	return most;
}

/* The gravest thing first. */
static const char *judge(struct page *p)
{
	const struct ts_drift_result *r = p->r;
	const struct ts_drift_day_result *now = &r->days[0], *then = &r->days[r->day_count - 1];
	double kh = r->steady.kh_dh.before_change, no3 = r->steady.no3_mg_l.before_change;
	double most = bound(p, TS_P_NITRATE_CONCERN);

	if (now->tan_mg_l >= bound(p, TS_P_TAN_DANGER))
		return "Ammonia stands in this tank: make it safe before anything else";
	if (isnan(now->ph) && now->kh_dh >= bound(p, TS_P_KH_FLOOR))
		return "Active soil takes the buffer for as long as it lasts: KH says nothing here";
	if (now->kh_dh < bound(p, TS_P_KH_FLOOR))
		return "The buffer is gone already: steady the water before anything else";
	if (!isnan(r->buffer_gone_day)) {
		ts_text_put(&p->text, "The buffer lasts ");
		put(p, r->buffer_gone_day, 0);
		ts_text_put(&p->text, " days");
		put_doubt(p);
		return take(p);
	}
	if (most_ammonia(r) >= bound(p, TS_P_TAN_DANGER))
		return "Ammonia builds up: the filter cannot clear this feed yet";
	if (kh < bound(p, TS_P_KH_ACT) || (isnan(kh) && then->kh_dh < now->kh_dh))
		return "The buffer is being used up faster than it is renewed";
	if (no3 > most || then->no3_mg_l > most)
		return "The buffer holds; nitrate does not";
	return "This routine keeps the water";
}

static void verdict(struct page *p)
{
	const struct ts_drift_result *r = p->r;
	const struct ts_drift_day_result *now = &r->days[0], *then = &r->days[r->day_count - 1];
	const char *says = judge(p);

	if (most_ammonia(r) >= bound(p, TS_P_TAN_DANGER))
		put_course(p, "ammonia", " mg/L", now->tan_mg_l, then->tan_mg_l, (double)NAN, 2);
	put_course(p, "KH", "", now->kh_dh, then->kh_dh, r->steady.kh_dh.before_change, 1);
	put_course(p, "nitrate", " mg/L", now->no3_mg_l, then->no3_mg_l,
		r->steady.no3_mg_l.before_change, 0);
	put_routine(p);
	ts_doc_verdict(&p->doc, says, take(p));
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

static void table(struct page *p)
{
	const struct ts_drift_result *r = p->r;
	struct ts_node *node = ts_doc_table(&p->doc);
	size_t step = 7;

	while ((r->day_count - 1) / step >= ROWS_MOST)
		step *= 2;
	ts_doc_line(&p->doc, node, "day", "KH", "GH", "pH", "ammonia", "nitrate", "uS/cm", NULL);
	for (size_t i = 0; i < r->day_count; i++) {
		const struct ts_drift_day_result *d = &r->days[i];

		if (i % step && i + 1 != r->day_count)
			continue;
		ts_doc_line(&p->doc, node, cell(p, d->day, 0), cell(p, d->kh_dh, 1),
			cell(p, d->gh_dh, 1), ph_cell(p, d), ammonia_cell(p, d),
			cell(p, d->no3_mg_l, 0), cell(p, d->conductivity_us_cm, 0), NULL);
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
	struct ts_arena *arena = p->doc.arena;
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
	ts_doc_curve(&p->doc, curve);
}

static void charts(struct page *p)
{
	static const struct line buffer[] = {
		{"KH, dH", kh_of, TS_HUE_KH}, {"pH at the usual CO2", ph_of, TS_HUE_PH}};
	static const struct line nitrate[] = {{"nitrate, mg/L", no3_of, TS_HUE_NONE}};

	chart(p, "The buffer", "dH, pH", buffer, 2, p->r->buffer_gone_day);
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
	if (r->plant_share > 0) {
		ts_text_put(&p->text, ", after ");
		put(p, r->plant_share * r->nitrogen_mg_day, 0);
		ts_text_put(&p->text, " for the plants");
	}
	ts_text_put(&p->text, " (modelled from the feed)");
	ts_doc_line(&p->doc, facts, "Load", take(p), NULL);
	if (isnan(measured))
		return;
	put(p, measured, 0);
	ts_text_put(&p->text, " mg a day by two nitrate readings; this one is used");
	if (r->measured_differs)
		ts_text_put(&p->text, ". The two differ more than twofold: doubt the model, and "
				      "the kit");
	ts_doc_line(&p->doc, facts, "Measured", take(p), NULL);
}

static void put_level(struct page *p, const char *label, const struct ts_drift_level_result *level,
	int decimals, const char *unit)
{
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
	ts_doc_line(&p->doc, facts, "Settles", take(p), NULL);
}

static void say_smallest(struct page *p, struct ts_node *facts)
{
	const struct ts_drift_change_result *c = p->r->smallest_safe_change;

	if (!(p->r->change_every_days > 0))
		return;
	if (!c) {
		ts_text_put(
			&p->text, "half of the water four times as often would not keep KH at ");
		put(p, bound(p, TS_P_KH_ACT), 1);
		ts_text_put(&p->text, " and nitrate below ");
		put(p, bound(p, TS_P_NITRATE_CONCERN), 0);
		ts_text_put(&p->text, " mg/L: feed less, keep less, or look at the new water");
	} else {
		put(p, ceil(c->share_percent), 0);
		ts_text_put(&p->text, " % every ");
		put(p, c->every_days, 1);
		ts_text_put(&p->text, " days keeps KH at ");
		put(p, c->kh_low_dh, 1);
		ts_text_put(&p->text, " or more and nitrate at ");
		put(p, c->no3_high_mg_l, 0);
		ts_text_put(&p->text, " mg/L or less");
	}
	ts_doc_line(&p->doc, facts, "Least change", take(p), NULL);
}

static void put_pair(struct page *p, const char *label, const struct ts_range *pair, int decimals,
	const char *unit)
{
	if (isnan(pair->low) || isnan(pair->high))
		return;
	ts_text_puts(&p->text, label, " ", NULL);
	ts_text_number(&p->text, pair->low, decimals);
	ts_text_put(&p->text, " to ");
	ts_text_number(&p->text, pair->high, decimals);
	ts_text_put(&p->text, unit);
}

/* What the animals would feel of a large change today; ammonia says stop. */
static void say_jump(struct page *p)
{
	const struct ts_drift_jump_result *j = &p->r->large_change;
	double limit = bound(p, TS_P_NH3_CONFLICT);

	ts_text_put(&p->text, "Half of the water changed at once, today, would take ");
	put_pair(p, "GH", &j->gh_dh, 1, ", ");
	put_pair(p, "KH", &j->kh_dh, 1, ", ");
	put_pair(p, "pH", &j->ph, 1, ", ");
	put_pair(p, "conductivity", &j->conductivity_us_cm, 0, " uS/cm");
	if (j->nh3_n_mg_l.high >= NH3_SHOWN_MG_L)
		put_pair(p, ", free ammonia", &j->nh3_n_mg_l, 4, " mg/L");
	if (j->nh3_n_mg_l.high > limit && j->nh3_n_mg_l.high > j->nh3_n_mg_l.low) {
		ts_text_put(&p->text, ". Free ammonia harms from ");
		put(p, limit, 2);
		ts_text_put(&p->text, ": do not, but go by small changes until ammonia reads nil.");
	} else if (j->safe_step) {
		ts_text_put(&p->text, ". Ordinary animals bear that step.");
	} else {
		ts_text_put(&p->text, ". That is more than animals used to the old water bear at "
				      "once: several small changes reach the same in a fortnight.");
	}
	ts_doc_paragraph(&p->doc, take(p));
}

static bool any_doubtful(const struct ts_drift_result *r)
{
	for (size_t i = 0; i < r->day_count; i++) {
		if (r->days[i].filter_doubtful)
			return true;
	}
	return false;
}

void drift_write(struct session *session, const struct ts_drift_result *r)
{
	struct page p = {.session = session, .r = r};
	struct ts_node *facts;

	ts_doc_open(&p.doc, session->arena, "Where this tank drifts");
	ts_text_open(&p.text, &session->arena->allocator);
	verdict(&p);
	table(&p);
	charts(&p);
	if (any_doubtful(r))
		ts_doc_paragraph(&p.doc, "Ammonia marked doubtful: below pH 6.5 filter bacteria "
					 "work slowly or stop; only a test says which.");
	facts = ts_doc_facts(&p.doc, 0);
	say_load(&p, facts);
	say_steady(&p, facts);
	say_smallest(&p, facts);
	for (size_t i = 0; i < r->assumed.count; i++)
		ts_doc_line(&p.doc, facts, i ? "" : "Assumed", r->assumed.items[i], NULL);
	say_jump(&p);
	ts_doc_caution(&p.doc, ts_caution_drift);
	ts_doc_see(&p.doc, ts_guide_old_tanks);
	session->arena->failed |= p.text.failed;
	ts_text_drop(&p.text);
	session_write(session, &p.doc);
}
