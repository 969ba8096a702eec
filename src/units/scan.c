/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The scanner of quantities. It reads sign or bound, number, range or doubt, unit, and converts to
 * the canonical unit; each fault names its byte. The rows it reads stand in units/table.c.
 */
#include "units/units.h"

#include <math.h>
#include <string.h>

#include "base/number.h"

/* What was written, before the unit is known. */
struct written {
	enum ts_measure_kind kind;
	double first, second; /* bounds of a range; value and doubt */
	bool open_low, open_high;
	bool three_digits;
	size_t three_at;
};

struct cursor {
	const char *text;
	size_t len, at;
};

static void skip_blanks(struct cursor *c)
{
	while (c->at < c->len && (c->text[c->at] == ' ' || c->text[c->at] == '\t'))
		c->at++;
}

static bool take(struct cursor *c, const char *word)
{
	size_t at = c->at;

	for (; *word; word++, at++) { /* most differ in the first byte */
		if (at == c->len || c->text[at] != *word)
			return false;
	}
	c->at = at;
	return true;
}

static bool take_any(struct cursor *c, const char *const *words)
{
	for (; *words; words++) {
		if (take(c, *words))
			return true;
	}
	return false;
}

static bool take_number(struct cursor *c, double *ret, struct written *w)
{
	bool minus, three = false;
	size_t start, used;

	skip_blanks(c);
	start = c->at;
	minus = take(c, "-") || take(c, "\xe2\x88\x92");
	used = ts_number_read(c->text + c->at, c->len - c->at, ret, &three);
	if (!used) {
		c->at = start;
		return false;
	}
	if (three && c->text[c->at] != '0' && !w->three_digits) {
		w->three_digits = true;
		w->three_at = c->at;
	}
	if (minus)
		*ret = -*ret;
	c->at += used;
	return true;
}

static const char *const range_marks[] = {
	"...", "..", "\xe2\x80\xa6", "\xe2\x80\x93", "\xe2\x80\x94", "-", "to ", "and ", NULL};
static const char *const doubt_marks[] = {"+-", "+/-", "\xc2\xb1", NULL};
static const char *const below_marks[] = {
	"<=", "<", "\xe2\x89\xa4", "less than ", "under ", "below ", "at most ", "up to ", NULL};
static const char *const above_marks[] = {
	">=", ">", "\xe2\x89\xa5", "more than ", "over ", "above ", "at least ", NULL};
static const char *const open_marks[] = {"...", "..", "\xe2\x80\xa6", NULL};

static bool at_digit(const struct cursor *c)
{
	return c->at < c->len && c->text[c->at] >= '0' && c->text[c->at] <= '9';
}

/* The mark of a value with one end, in front of its figure. */
static bool take_bound(struct cursor *c, struct written *w)
{
	if (take_any(c, below_marks)) {
		w->kind = TS_MEASURE_BELOW;
	} else if (take_any(c, above_marks)) {
		w->kind = TS_MEASURE_ABOVE;
	} else if (take_any(c, open_marks)) {
		w->kind = TS_MEASURE_RANGE;
		w->open_low = true;
	} else {
		return false;
	}
	return true;
}

/* What people write before a figure that changes nothing of it: every reading has its doubt. */
static const char *const vague_marks[] = {"about ", "around ", "roughly ", "approximately ",
	"approx. ", "approx ", "ca. ", "ca ", "circa ", "between ", "~", "\xe2\x89\x88", NULL};

/* Everything in front of the unit. */
static bool take_figures(struct cursor *c, struct written *w)
{
	skip_blanks(c);
	(void)take_any(c, vague_marks);
	skip_blanks(c);
	if (!at_digit(c) && take_bound(c, w))
		return take_number(c, w->open_low ? &w->second : &w->first, w);
	if (!take_number(c, &w->first, w))
		return false;
	w->kind = TS_MEASURE_VALUE;
	skip_blanks(c);
	if (take_any(c, doubt_marks)) {
		w->kind = TS_MEASURE_DOUBT;
		return take_number(c, &w->second, w);
	}
	if (take_any(c, range_marks)) {
		w->kind = TS_MEASURE_RANGE;
		w->open_high = !take_number(c, &w->second, w);
	}
	return true;
}

/* Lower case without blanks and degree signs, 'u' for both micro signs; false if too long. */
static bool normalised(const struct cursor *c, char out[24])
{
	static const char *const dropped[] = {"\xc2\xb0", "\xc2\xba", "\xcb\x9a", NULL};
	static const char *const micro[] = {"\xc2\xb5", "\xce\xbc", NULL};
	static const char *const three[] = {"\xe2\x82\x83", NULL};
	struct cursor in = *c;
	size_t len = 0;

	while (in.at < in.len) {
		char b = in.text[in.at];

		if (len + 1 >= 24)
			return false;
		if ((unsigned char)b >= 0x80 && take_any(&in, dropped))
			continue;
		if ((unsigned char)b >= 0x80 && take_any(&in, micro)) {
			out[len++] = 'u';
		} else if ((unsigned char)b >= 0x80 && take_any(&in, three)) {
			out[len++] = '3';
		} else {
			in.at++;
			if (b != ' ' && b != '\t')
				out[len++] = (char)(b >= 'A' && b <= 'Z' ? b + 32 : b);
		}
	}
	out[len] = '\0';
	return true;
}

/* The rows are sorted by quantity: the first of ours by halving, then its neighbours. */
static const struct ts_unit_row *unit_row(enum ts_quantity quantity, const char *spelling)
{
	size_t low = 0, high = ts_units_count;

	while (low < high) {
		size_t middle = (low + high) / 2;

		if (ts_units[middle].quantity < quantity)
			low = middle + 1;
		else
			high = middle;
	}
	for (; low < ts_units_count && ts_units[low].quantity == quantity; low++) {
		if (strcmp(ts_units[low].spelling, spelling) == 0)
			return &ts_units[low];
	}
	return NULL;
}

/* Nought is nought in every unit. */
static bool is_nought(const struct written *w)
{
	return w->first == 0 && w->second == 0 && !w->open_low && !w->open_high &&
	       w->kind != TS_MEASURE_ABOVE;
}

static enum ts_scan_fault take_unit(enum ts_quantity quantity, const struct written *w,
	struct cursor *c, struct ts_unit_row *ret)
{
	char spelling[24];
	const struct ts_unit_row *row;

	skip_blanks(c);
	if (!normalised(c, spelling))
		return TS_SCAN_UNIT_UNKNOWN;
	if (!*spelling) {
		if (!ts_quantities[quantity].bare && !is_nought(w))
			return TS_SCAN_UNIT_NEEDED;
		*ret = (struct ts_unit_row){
			quantity, "", NULL, 1, 0, ts_quantities[quantity].bare_assumed};
		return TS_SCAN_FINE;
	}
	row = unit_row(quantity, spelling);
	if (!row)
		return TS_SCAN_UNIT_UNKNOWN;
	*ret = *row;
	return TS_SCAN_FINE;
}

static struct ts_measure measure_of(const struct written *w, const struct ts_unit_row *unit)
{
	double first = w->first * unit->factor + unit->offset;
	double second = w->second * unit->factor + unit->offset;
	struct ts_measure m = {first, first, first, w->kind};

	switch (w->kind) {
	case TS_MEASURE_DOUBT:
		m.low = first - fabs(w->second * unit->factor);
		m.high = first + fabs(w->second * unit->factor);
		break;
	case TS_MEASURE_RANGE:
		m.low = w->open_low ? -INFINITY : first;
		m.high = w->open_high ? INFINITY : second;
		m.value = w->open_low ? second : w->open_high ? first : (first + second) / 2;
		break;
	case TS_MEASURE_BELOW:
		m.low = -INFINITY;
		break;
	case TS_MEASURE_ABOVE:
		m.high = INFINITY;
		break;
	default:
		break;
	}
	return m;
}

/* Thousands or decimals: only what the quantity's range allows is a reading. */
static bool two_readings(
	enum ts_quantity quantity, const struct written *w, const struct ts_measure *m)
{
	if (!w->three_digits)
		return false;
	return m->value * 1000 <= ts_quantities[quantity].max;
}

/* A bare figure that this unit hardly reaches; an open end says nothing. */
static bool too_much_bare(
	const struct ts_quantity_row *row, const struct ts_scan *scan, const struct ts_measure *m)
{
	if (scan->unit != TS_SCAN_UNIT_NONE || row->bare_most <= 0)
		return false;
	return m->value > row->bare_most || (isfinite(m->high) && m->high > row->bare_most) ||
	       (isfinite(m->low) && m->low > row->bare_most);
}

/* A bare figure so small that another unit is as likely; nil is nil in all of them. */
static bool too_little_bare(
	const struct ts_quantity_row *row, const struct ts_scan *scan, const struct written *w)
{
	return scan->unit == TS_SCAN_UNIT_NONE && !is_nought(w) && row->bare_least > 0 &&
	       w->first < row->bare_least;
}

static bool fault(struct ts_scan *scan, enum ts_scan_fault fault, size_t at)
{
	scan->fault = fault;
	scan->at = at;
	return false;
}

bool ts_scan_measure(enum ts_quantity quantity, const char *text, size_t len,
	struct ts_measure *ret, struct ts_scan *ret_scan)
{
	const struct ts_quantity_row *row = &ts_quantities[quantity];
	struct cursor c = {text, len, 0};
	struct written w = {0};
	struct ts_unit_row unit;
	struct ts_measure m;
	enum ts_scan_fault bad;

	*ret_scan = (struct ts_scan){0};
	while (c.len && (text[c.len - 1] == ' ' || text[c.len - 1] == '\t'))
		c.len--;
	skip_blanks(&c);
	if (c.at == c.len)
		return fault(ret_scan, TS_SCAN_EMPTY, 0);
	if (!take_figures(&c, &w))
		return fault(ret_scan, TS_SCAN_NO_NUMBER, c.at);
	skip_blanks(&c);
	ret_scan->unit_at = c.at;
	bad = take_unit(quantity, &w, &c, &unit);
	if (bad)
		return fault(ret_scan, bad, c.at);
	m = measure_of(&w, &unit);
	ret_scan->unit = !*unit.spelling                        ? TS_SCAN_UNIT_NONE
			 : unit.factor == 1 && unit.offset == 0 ? TS_SCAN_UNIT_OWN
								: TS_SCAN_UNIT_OTHER;
	ret_scan->factor = unit.factor;
	if (too_much_bare(row, ret_scan, &m))
		return fault(ret_scan, TS_SCAN_OTHER_UNIT, 0);
	if (too_little_bare(row, ret_scan, &w))
		return fault(ret_scan, TS_SCAN_UNIT_NEEDED, ret_scan->unit_at);
	if (two_readings(quantity, &w, &m))
		return fault(ret_scan, TS_SCAN_TWO_READINGS, w.three_at);
	if (m.low > m.high)
		return fault(ret_scan, TS_SCAN_BACKWARDS, 0);
	if (m.value < row->min || m.value > row->max ||
		(isfinite(m.low) && m.low < row->min && w.kind != TS_MEASURE_DOUBT) ||
		(isfinite(m.high) && m.high > row->max))
		return fault(ret_scan, TS_SCAN_OUTSIDE, 0);
	if (m.low < row->min && w.kind != TS_MEASURE_RANGE)
		m.low = row->min;
	ret_scan->assumed = unit.assumed;
	*ret = m;
	return true;
}

bool ts_scan_range(enum ts_quantity quantity, const char *text, size_t len, struct ts_range *ret,
	struct ts_scan *ret_scan)
{
	struct ts_measure m;

	if (!ts_scan_measure(quantity, text, len, &m, ret_scan))
		return false;
	*ret = (struct ts_range){m.low, m.high};
	return true;
}

bool ts_scan_value(enum ts_quantity quantity, const char *text, size_t len, double *ret,
	struct ts_scan *ret_scan)
{
	struct ts_measure m;

	if (!ts_scan_measure(quantity, text, len, &m, ret_scan))
		return false;
	if (m.kind != TS_MEASURE_VALUE)
		return fault(ret_scan, TS_SCAN_SINGLE_ONLY, 0);
	*ret = m.value;
	return true;
}
