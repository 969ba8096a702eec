/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is said of a quantity that cannot be taken as it is written, in one place for flags, files,
 * tables and reports.
 */
#include <math.h>
#include <string.h>

#include "units/units.h"

static const char *const says[TS_SCAN__COUNT] = {
	[TS_SCAN_FINE] = "fine",
	[TS_SCAN_EMPTY] = "nothing is written here",
	[TS_SCAN_NO_NUMBER] = "no number is written here",
	[TS_SCAN_UNIT_UNKNOWN] = "not a unit of this quantity",
	[TS_SCAN_UNIT_NEEDED] = "needs a unit: without one it has several meanings",
	[TS_SCAN_OTHER_UNIT] = "more degrees than tap water usually has",
	[TS_SCAN_TWO_READINGS] = "three digits after the separator can be thousands or decimals",
	[TS_SCAN_BACKWARDS] = "the low end lies above the high end",
	[TS_SCAN_OUTSIDE] = "beyond what this quantity can be",
	[TS_SCAN_SINGLE_ONLY] = "one value is wanted here, not a range",
};

const char *ts_scan_says(enum ts_scan_fault fault)
{
	return says[fault];
}

/* Of a bare figure what it is in its own unit where it was written in another one. */
static void put_converted(struct ts_text *text, enum ts_quantity quantity, const char *written,
	size_t len, const char *unit)
{
	struct ts_text whole;
	struct ts_measure m;
	struct ts_scan scan;

	ts_text_open(&whole, &text->allocator);
	ts_text_add(&whole, written, len);
	ts_text_puts(&whole, " ", unit, NULL);
	if (ts_scan_measure(quantity, ts_text_get(&whole), whole.len, &m, &scan)) {
		double low = isfinite(m.low) ? m.low : m.value;
		double high = isfinite(m.high) ? m.high : m.value;

		ts_text_number_short(text, low, 1);
		ts_text_put(text, high > low ? ".." : "");
		if (high > low)
			ts_text_number_short(text, high, 1);
		ts_text_puts(text, " ", ts_quantities[quantity].unit, NULL);
	}
	text->failed |= whole.failed;
	ts_text_drop(&whole);
}

static void put_units(struct ts_text *text, enum ts_quantity quantity, const char *written,
	size_t len, const char *unit)
{
	bool ppm = strcmp(unit, "ppm") == 0;

	ts_text_puts(text, "if it is ", unit, ppm ? " (mg/L of calcium carbonate)" : "",
		", write \"", NULL);
	ts_text_add(text, written, len);
	ts_text_puts(text, " ", unit, "\", which is ", NULL);
	put_converted(text, quantity, written, len, unit);
	ts_text_puts(text, "; if it is ",
		quantity == TS_Q_GH || quantity == TS_Q_KH ? "degrees"
							   : ts_quantities[quantity].unit,
		", write \"", NULL);
	ts_text_add(text, written, len);
	ts_text_puts(text, " ", ts_quantities[quantity].unit, "\"", NULL);
}

void ts_scan_remedy(struct ts_text *text, enum ts_quantity quantity, const char *written,
	size_t len, const struct ts_scan *scan)
{
	const struct ts_quantity_row *row = &ts_quantities[quantity];

	switch (scan->fault) {
	case TS_SCAN_OTHER_UNIT:
		put_units(text, quantity, written, len, row->other);
		break;
	case TS_SCAN_UNIT_NEEDED:
	case TS_SCAN_UNIT_UNKNOWN:
		ts_text_puts(text, "write a number and a unit of ", row->name, ", for example \"",
			row->example, "\"", NULL);
		break;
	case TS_SCAN_TWO_READINGS:
		ts_text_put(text,
			"write it without the separator, or with one more or one less decimal");
		break;
	default:
		ts_text_puts(text, "write it like \"", row->example, "\"", NULL);
		break;
	}
}

void ts_scan_pair_look(struct ts_scan_pair *pair, enum ts_quantity quantity, const char *written,
	const struct ts_scan *scan)
{
	if ((quantity != TS_Q_GH && quantity != TS_Q_KH) || scan->fault || !written)
		return; /* `written` NULL: its memory failed, and the arena says so */
	/* Those who write meq/L or mmol/L for the one count the other in degrees. */
	if (scan->unit == TS_SCAN_UNIT_OTHER && scan->factor < 1) {
		pair->other = written;
		pair->unit = written + scan->unit_at;
	} else if (scan->unit == TS_SCAN_UNIT_NONE && strpbrk(written, "123456789")) {
		pair->bare = written; /* a nil is nil in every unit */
		pair->quantity = quantity;
	}
}

void ts_scan_pair_ask(const struct ts_scan_pair *pair, struct ts_text *what, struct ts_text *remedy)
{
	ts_text_puts(what, pair->quantity == TS_Q_GH ? "GH '" : "KH '", pair->bare,
		"' has no unit, and beside it stands '", pair->other, "'", NULL);
	put_units(remedy, pair->quantity, pair->bare, strlen(pair->bare), pair->unit);
}
