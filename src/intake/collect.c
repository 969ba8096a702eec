/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Keeping what was found, in bounded memory: figures are listed up to a count, and beyond it still
 * widen the slot of their kind, so that a table of a million samples ends as one range.
 */
#include <math.h>
#include <string.h>

#include "base/arena.h"
#include "intake/reader.h"

#define CLASHES_MOST 100

void ts_collect_value(struct ts_intake *in, const struct ts_report_value *value)
{
	struct ts_report_value *values;

	if (in->value_count == TS_REPORT_VALUES_MOST) {
		in->value_more++;
		return;
	}
	values = ts_arena_grow(
		&in->arena, in->values, in->value_count, &in->value_room, sizeof *values);
	if (!values)
		return;
	in->values = values;
	values[in->value_count] = *value;
	values[in->value_count++].printed =
		ts_arena_text(&in->arena, value->printed, strlen(value->printed));
}

void ts_collect_gap(struct ts_intake *in, const char *key, unsigned line, const char *text,
	const char *why, const char *remedy)
{
	struct ts_report_gap *gaps;

	ts_sweep_settle_shown(in, line, text);
	if (in->gap_count && in->gaps[in->gap_count - 1].line == line &&
		in->gaps[in->gap_count - 1].why == why &&
		strcmp(in->gaps[in->gap_count - 1].text, text) == 0)
		return;
	if (in->gap_count == TS_REPORT_GAPS_MOST) {
		in->gap_more++;
		return;
	}
	gaps = ts_arena_grow(&in->arena, in->gaps, in->gap_count, &in->gap_room, sizeof *gaps);
	if (!gaps)
		return;
	in->gaps = gaps;
	gaps[in->gap_count++] = (struct ts_report_gap){
		line, key, ts_arena_text(&in->arena, text, strlen(text)), why, remedy};
}

void ts_collect_clash(struct ts_intake *in, unsigned line, unsigned other, const char *says)
{
	struct ts_report_clash *clashes;

	if (in->clash_count == CLASHES_MOST)
		return;
	clashes = ts_arena_grow(
		&in->arena, in->clashes, in->clash_count, &in->clash_room, sizeof *clashes);
	if (!clashes)
		return;
	in->clashes = clashes;
	clashes[in->clash_count++] =
		(struct ts_report_clash){line, other == line ? 0 : other, says};
}

void ts_collect_other(struct ts_intake *in)
{
	if (in->other_count && in->others[in->other_count - 1] == in->line.number)
		return;
	if (in->other_count == TS_REPORT_OTHERS_MOST)
		in->other_more++;
	else
		in->others[in->other_count++] = in->line.number;
}

static bool same_kind(const struct ts_slot *a, const struct ts_slot *b)
{
	return a->field == b->field && a->zone == b->zone && a->rank == b->rank &&
	       a->restated == b->restated && a->part == b->part &&
	       (a->unit == b->unit ||
		       (a->unit && b->unit && strcmp(a->unit->unit, b->unit->unit) == 0));
}

static double least(double a, double b)
{
	return isnan(a) ? b : isnan(b) ? a : fmin(a, b);
}

static double most(double a, double b)
{
	return isnan(a) ? b : isnan(b) ? a : fmax(a, b);
}

static bool is_bound(const struct ts_slot *s)
{
	return s->single && s->kind != TS_MEASURE_VALUE && s->kind != TS_MEASURE_RANGE;
}

/* Two bounds of one kind are the wider of them: "<0.01" and "<0.02" say "<0.02". */
static void widen_bound(struct ts_slot *into, const struct ts_slot *one)
{
	if (into->kind == TS_MEASURE_BELOW)
		into->mean = into->high = fmax(into->high, one->high);
	else
		into->mean = into->low = fmin(into->low, one->low);
}

static double top(const struct ts_slot *s)
{
	return most(isfinite(s->high) ? s->high : (double)NAN, s->mean);
}

static void widen_ends(struct ts_slot *into, const struct ts_slot *one)
{
	bool same = into->mean == one->mean && into->kind == one->kind;
	double low = least(least(into->low, into->mean), least(one->low, one->mean));

	into->high = most(top(into), top(one));
	into->low = low;
	if (!same)
		into->mean = (double)NAN;
	into->single &= same && one->single;
	into->kind = TS_MEASURE_VALUE;
}

/* The same quantity once more: both are the water of this zone. */
/* Two figures for one thing that no rounding makes alike: a tenth, and 0.2 of a pH. */
static bool is_unlike(const struct ts_slot *a, const struct ts_slot *b)
{
	double apart =
		strcmp(a->field->key, "pH") == 0 ? 0.2 : 0.1 * fmax(fabs(a->mean), fabs(b->mean));

	return a->single && b->single && a->kind == TS_MEASURE_VALUE && b->kind == a->kind &&
	       fabs(a->mean - b->mean) > apart;
}

/* Two ranges of lines of their own of which neither lies in the other. */
static bool are_apart(const struct ts_slot *a, const struct ts_slot *b)
{
	bool ranges = isnan(a->mean) && isnan(b->mean) && !a->by_order && !b->by_order;

	return ranges &&
	       ((a->low < b->low && a->high < b->high) || (a->low > b->low && a->high > b->high));
}

static bool is_same(double a, double b)
{
	return a == b || (isnan(a) && isnan(b));
}

static void widen(struct ts_slot *into, const struct ts_slot *one)
{
	into->unlike = into->count == 1 ? is_unlike(into, one) || are_apart(into, one)
					: into->unlike && one->single;
	into->differs |= !is_same(into->mean, one->mean) || !is_same(into->low, one->low) ||
			 !is_same(into->high, one->high);
	if (is_bound(into) && is_bound(one) && into->kind == one->kind)
		widen_bound(into, one);
	else
		widen_ends(into, one);
	into->last = one->line;
	into->count++;
}

void ts_collect_slot(struct ts_intake *in, const struct ts_slot *slot)
{
	struct ts_slot *slots;

	for (size_t i = 0; i < in->slot_count; i++) {
		if (same_kind(&in->slots[i], slot)) {
			widen(&in->slots[i], slot);
			return;
		}
	}
	if (in->slot_count == TS_SLOTS_MOST)
		return;
	slots = ts_arena_grow(&in->arena, in->slots, in->slot_count, &in->slot_room, sizeof *slots);
	if (!slots)
		return;
	in->slots = slots;
	slots[in->slot_count] = *slot;
	slots[in->slot_count].printed =
		ts_arena_text(&in->arena, slot->printed, strlen(slot->printed));
	in->slot_count++;
}

size_t ts_collect_zone(struct ts_intake *in, const char *name)
{
	const char **zones;

	for (size_t i = 0; i < in->zone_count; i++) {
		if (strcmp(in->zones[i], name) == 0)
			return i + 1;
	}
	if (in->zone_count == TS_REPORT_ZONES_MOST)
		return TS_REPORT_ZONES_MOST + 1;
	zones = ts_arena_grow(&in->arena, in->zones, in->zone_count, &in->zone_room, sizeof *zones);
	if (!zones)
		return 0;
	in->zones = zones;
	zones[in->zone_count] = ts_arena_text(&in->arena, name, strlen(name));
	return zones[in->zone_count] ? ++in->zone_count : 0;
}
