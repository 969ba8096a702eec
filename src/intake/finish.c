/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From slots to one reading: the supply zone is chosen, of several statements of one quantity the
 * best is kept, and what contradicts is said.
 */
#include <math.h>
#include <string.h>

#include "base/arena.h"
#include "base/text.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "intake/reader.h"

/* From here on two statements contradict each other: a tenth (common practice, no source). */
#define CLASH_SHARE 0.1

const char *const ts_column_words[] = {"result", "legal-limit", "detection-limit", NULL};
const char *const ts_statistic_words[] = {"single", "mean", "lowest", "highest", "range", NULL};

static double middle(const struct ts_slot *s)
{
	if (!isnan(s->mean))
		return s->mean;
	return isnan(s->low) ? s->high : isnan(s->high) ? s->low : (s->low + s->high) / 2;
}

/* Without accents and case there is no proper comparison: a part of the name, ASCII case folded. */
static bool names(const char *name, const char *part)
{
	size_t n = strlen(name), p = strlen(part);

	for (size_t at = 0; at + p <= n; at++) {
		size_t i = 0;

		while (i < p && ((name[at + i] | 0x20) == (part[i] | 0x20)))
			i++;
		if (i == p)
			return true;
	}
	return false;
}

static bool zone_has_values(const struct ts_intake *in, size_t zone)
{
	for (size_t i = 0; i < in->slot_count; i++) {
		if (in->slots[i].zone == zone)
			return true;
	}
	return false;
}

/* The zone to read: 0 = the report names none. False: it must be asked for. */
static bool choose_zone(const struct ts_intake *in, const char *asked, size_t *ret)
{
	size_t found = 0, with_values = 0, last = 0;

	for (size_t z = 1; z <= in->zone_count; z++) {
		if (!zone_has_values(in, z))
			continue;
		with_values++;
		last = z;
	}
	*ret = last;
	if (!asked)
		return with_values <= 1;
	for (size_t z = 1; z <= in->zone_count; z++) {
		if (strcmp(in->zones[z - 1], asked) == 0) {
			*ret = z;
			return true;
		}
		if (!names(in->zones[z - 1], asked))
			continue;
		found++;
		*ret = z;
	}
	return found == 1;
}

/* Which of two statements of one quantity is kept. Degrees are what the answer is in. */
static bool better(const struct ts_slot *a, const struct ts_slot *b)
{
	bool a_dh = a->unit && strcmp(a->unit->unit, "dh") == 0;
	bool b_dh = b->unit && strcmp(b->unit->unit, "dh") == 0;

	if ((a->zone != 0) != (b->zone != 0))
		return a->zone != 0;
	if (a->rank != b->rank)
		return a->rank < b->rank;
	if (a->restated != b->restated)
		return !a->restated;
	return a_dh && !b_dh;
}

struct finish {
	struct ts_intake *in;
	struct ts_report *report;
	size_t zone;
	size_t asked; /* gaps that stood before any slot was asked about */
	const struct ts_slot *best[TS_FIELDS_MOST];
};

static bool of_zone(const struct finish *f, const struct ts_slot *s)
{
	return s->zone == 0 || s->zone == f->zone;
}

/* "GH: 12 dH; 18 dH": a slot's figures as printed, with what they are of. */
static void ask_slot(struct finish *f, const struct ts_slot *s, const char *why, const char *remedy)
{
	struct ts_text text;

	ts_text_open(&text, &f->in->allocator);
	ts_text_puts(&text, s->field->key, ": ", s->printed, NULL);
	f->in->arena.failed |= text.failed;
	ts_collect_gap(f->in, s->field->key, s->line, ts_text_get(&text), why, remedy);
	ts_text_drop(&text);
}

/* Where one line of a report is in no order, the order of the others is chance: works, dates. */
static bool by_chance(struct finish *f, const struct ts_slot *s)
{
	if (!s->by_order || !f->in->unordered)
		return false;
	ask_slot(f, s,
		"several figures side by side, in other lines in no order: of which place or day?",
		"look at the headings of its columns in the report");
	return true;
}

static bool asked_about(const struct finish *f, const struct ts_slot *s)
{
	for (size_t i = 0; i < f->asked; i++) {
		if (f->in->gaps[i].key == s->field->key)
			return true;
	}
	return false;
}

/* Among the lines that state quantities once more, not alike: there a second place is told of. */
static bool of_second(const struct finish *f, const struct ts_slot *s)
{
	bool behind = false, before = false;

	for (size_t i = 0; i < f->in->slot_count; i++) {
		const struct ts_slot *other = &f->in->slots[i];

		if (!of_zone(f, other) || !other->unlike || other->last == other->line)
			continue;
		behind |= s->line >= other->last;
		before |= s->line <= other->last;
	}
	return behind && before;
}

/*
 * Stated twice, and not alike: two networks, or two days; beside such, so is what differs, what was
 * asked about in one place and is read in another, and what stands where the second is told of.
 */
static bool of_two_places(struct finish *f, const struct ts_slot *s)
{
	size_t others = 0;

	if (!s->unlike && !s->differs && !asked_about(f, s) && !of_second(f, s))
		return false;
	for (size_t i = 0; i < f->in->slot_count; i++)
		others += of_zone(f, &f->in->slots[i]) && f->in->slots[i].unlike &&
			  f->in->slots[i].field != s->field;
	/* Many of one quantity alone are its samples. */
	if (others < (s->unlike ? 1 : 2) && !(s->unlike && s->count == 2))
		return false;
	if (!s->restated)
		ask_slot(f, s, "printed twice, and not alike: of which place or day?",
			"look at both lines and use a flag or the file");
	return true;
}

static void pick(struct finish *f)
{
	f->asked = f->in->gap_count;
	for (size_t i = 0; i < f->in->slot_count; i++) {
		const struct ts_slot *s = &f->in->slots[i];
		size_t row = (size_t)(s->field - ts_shape_reading.fields);

		if (of_zone(f, s) && !by_chance(f, s) && !of_two_places(f, s) &&
			(!f->best[row] || better(s, f->best[row])))
			f->best[row] = s;
	}
}

/* An open end alone is no value of the water: "highest 36" does not say what it usually is. */
static bool measure_of(const struct ts_slot *s, struct ts_measure *ret)
{
	bool low = !isnan(s->low), high = !isnan(s->high), mean = !isnan(s->mean);

	if (s->single && s->kind != TS_MEASURE_VALUE) {
		*ret = (struct ts_measure){s->mean, s->low, s->high, s->kind};
		return true;
	}
	if (!mean && !(low && high))
		return false;
	*ret = (struct ts_measure){middle(s), middle(s), middle(s), TS_MEASURE_VALUE};
	if (low && high && s->low < s->high) {
		ret->low = s->low;
		ret->high = s->high;
		ret->kind = TS_MEASURE_RANGE;
	}
	return true;
}

static void take(struct finish *f, size_t row)
{
	const struct ts_slot *s = f->best[row];
	struct ts_report *r = f->report;
	struct ts_measure m;

	if (!measure_of(s, &m)) {
		ask_slot(f, s, "only one end of its range is printed",
			"look for the mean in the report");
		f->best[row] = NULL;
		return;
	}
	memcpy((char *)&r->reading + s->field->offset, &m, sizeof m);
	r->origins[row] = (struct ts_report_origin){
		s->line, s->last, s->count, s->printed, s->rule, s->assumed, s->mean};
	r->taken++;
}

static bool apart(double a, double b)
{
	return fabs(a - b) > CLASH_SHARE * fmax(fabs(a), fabs(b));
}

static void put_value(struct ts_text *text, const char *name, double value, const char *unit)
{
	ts_text_puts(text, name, " ", NULL);
	ts_text_number_short(text, value, value < 10 ? 2 : 1);
	ts_text_puts(text, *unit ? " " : "", unit, NULL);
}

/* "GH 19.9 dH, but calcium and magnesium make 23.3 dH" */
static void say(struct finish *f, unsigned line, unsigned other, const char *name, double a,
	const char *but, double b, const char *unit)
{
	struct ts_text text;

	ts_text_open(&text, &f->in->allocator);
	put_value(&text, name, a, unit);
	put_value(&text, but, b, unit);
	f->in->arena.failed |= text.failed;
	ts_collect_clash(
		f->in, line, other, ts_arena_text(&f->in->arena, ts_text_get(&text), text.len));
	ts_text_drop(&text);
}

static bool plain(const struct ts_slot *s)
{
	return s && s->kind == TS_MEASURE_VALUE;
}

/* The same quantity printed twice, in two units or under two names. */
static void compare_statements(struct finish *f)
{
	for (size_t i = 0; i < f->in->slot_count; i++) {
		const struct ts_slot *s = &f->in->slots[i];
		const struct ts_slot *best = f->best[s->field - ts_shape_reading.fields];

		if (!best || s == best || !of_zone(f, s) || !plain(s) || !plain(best) ||
			s->zone != best->zone || s->part != best->part ||
			!apart(middle(s), middle(best)))
			continue;
		say(f, best->line, s->line, s->field->key, middle(best), ", but printed again as",
			middle(s), ts_quantities[s->field->quantity].unit);
	}
}

static const struct ts_slot *best_of(const struct finish *f, const char *key)
{
	return f->best[ts_shape_field(&ts_shape_reading, key) - ts_shape_reading.fields];
}

static void compare_hardness(struct finish *f)
{
	const struct ts_slot *gh = best_of(f, "GH"), *ca = best_of(f, "Ca"), *mg = best_of(f, "Mg");
	double ions;

	if (!plain(gh) || !plain(ca) || !plain(mg))
		return;
	ions = ts_chem_dh_from_mmol_l(middle(ca) / TS_WEIGHT_CA + middle(mg) / TS_WEIGHT_MG);
	if (apart(middle(gh), ions))
		say(f, gh->line, ca->line, "GH", middle(gh), ", but calcium and magnesium make",
			ions, "dH");
}

static void compare_buffer(struct finish *f)
{
	const struct ts_slot *kh = best_of(f, "KH"), *alk = best_of(f, "alkalinity");
	double from_alk;

	if (!plain(kh) || !plain(alk))
		return;
	from_alk = ts_chem_dkh_from_meq_l(middle(alk));
	if (apart(middle(kh), from_alk))
		say(f, kh->line, alk->line, "KH", middle(kh), ", but the alkalinity makes",
			from_alk, "dH");
}

static void compare_nitrogen(struct finish *f, const char *ion, const char *as_n, double factor)
{
	const struct ts_slot *a = best_of(f, ion), *b = best_of(f, as_n);

	if (plain(a) && plain(b) && apart(middle(a), middle(b) * factor))
		say(f, a->line, b->line, ion, middle(a), ", but its nitrogen makes",
			middle(b) * factor, "mg/L");
}

/* The reader's own lists become the answer's; all texts are copied, the reader may go. */
static const char *kept(struct ts_report *r, const char *text)
{
	return text ? ts_arena_text(r->arena, text, strlen(text)) : NULL;
}

#define LIGHTEST 3

/* What decides for fish and was not read comes first, what is known from another line last. */
static int weight_of(const struct finish *f, const struct ts_report_gap *gap)
{
	if (!gap->key)
		return 2;
	if (best_of(f, gap->key))
		return LIGHTEST;
	return strcmp(gap->key, "pH") && strcmp(gap->key, "GH") && strcmp(gap->key, "KH") &&
	       strcmp(gap->key, "alkalinity");
}

static void hand_over(struct finish *f)
{
	struct ts_intake *in = f->in;
	struct ts_report *r = f->report;

	r->values = ts_arena_array(r->arena, in->value_count, sizeof *r->values);
	r->gaps = ts_arena_array(r->arena, in->gap_count, sizeof *r->gaps);
	r->clashes = ts_arena_array(r->arena, in->clash_count, sizeof *r->clashes);
	r->zones = ts_arena_array(r->arena, in->zone_count, sizeof *r->zones);
	if (r->arena->failed)
		return;
	for (size_t i = 0; i < in->value_count; i++) {
		r->values[i] = in->values[i];
		r->values[i].printed = kept(r, in->values[i].printed);
	}
	for (int weight = 0; weight <= LIGHTEST; weight++) {
		for (size_t i = 0; i < in->gap_count; i++) {
			if (weight_of(f, &in->gaps[i]) != weight)
				continue;
			r->gaps[r->gap_count] = in->gaps[i];
			r->gaps[r->gap_count++].text = kept(r, in->gaps[i].text);
		}
	}
	for (size_t i = 0; i < in->clash_count; i++) {
		r->clashes[i] = in->clashes[i];
		r->clashes[i].says = kept(r, in->clashes[i].says);
	}
	for (size_t i = 0; i < in->zone_count; i++)
		r->zones[i] = kept(r, in->zones[i]);
	for (size_t i = 0; i < ts_shape_reading.count; i++)
		r->origins[i].printed = kept(r, r->origins[i].printed);
	r->value_count = in->value_count;
	r->value_more = in->value_more;
	r->gap_more = in->gap_more;
	memcpy(r->others, in->others, sizeof r->others);
	r->other_count = in->other_count;
	r->other_more = in->other_more;
	r->clash_count = in->clash_count;
	r->zone_count = in->zone_count;
	r->class_only = in->class_only;
	r->latin = in->latin;
	r->lines = in->line.number - 1;
}

enum ts_status ts_intake_finish(
	struct ts_intake *in, const char *zone, struct ts_arena *arena, struct ts_report *ret)
{
	struct ts_report report = {.arena = arena};
	struct finish f = {in, &report, 0, 0, {NULL}};

	ts_intake_last_line(in);
	report.reading.method = TS_METHOD_UTILITY_REPORT;
	report.choose = !choose_zone(in, zone, &f.zone);
	report.zone = report.choose ? 0 : f.zone;
	if (!report.choose) {
		pick(&f);
		for (size_t row = 0; row < ts_shape_reading.count; row++) {
			if (f.best[row])
				take(&f, row);
		}
		compare_statements(&f);
		compare_hardness(&f);
		compare_buffer(&f);
		compare_nitrogen(&f, "NO3", "NO3-N", TS_MASS_NO3 / TS_WEIGHT_N);
		compare_nitrogen(&f, "NO2", "NO2-N", TS_MASS_NO2 / TS_WEIGHT_N);
	}
	hand_over(&f);
	if (in->arena.failed || arena->failed || ts_lexer_no_memory(in->lexer) ||
		ts_patterns_no_memory(in->layouts))
		return TS_NO_MEMORY;
	*ret = report;
	return report.taken ? TS_OK : TS_NO;
}
