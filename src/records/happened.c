/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The longest phrase that stands anywhere in the line tells what happened; a figure with a unit is
 * an amount of it, a figure alone a number of animals.
 */
#include "records/happened.h"

#include <string.h>

#include "base/arena.h"
#include "model/shape.h"
#include "records/signs.h"
#include "units/units.h"

static bool inside_word(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

static const struct ts_happened_phrase *phrase_of(const char *words)
{
	const struct ts_happened_phrase *best = NULL;

	for (const char *at = words; *at; at++) {
		if (at > words && inside_word(at[-1]))
			continue;
		for (const struct ts_happened_phrase *p = ts_happened_phrases; p->text; p++) {
			if (ts_phrase_length(at, p->text) &&
				(!best || strlen(p->text) > strlen(best->text)))
				best = p;
		}
	}
	return best;
}

/* The figure that begins at `at` with the word behind it, if any; bytes of both. */
static size_t amount_at(const char *at, double *ret_number, bool *ret_unit)
{
	size_t digits = strspn(at, "0123456789."), gap = strspn(at + digits, " ");
	size_t len = strcspn(at + digits + gap, " ,;:.");
	struct ts_scan scan;

	if (!digits || !ts_scan_value(TS_Q_NUMBER, at, digits, ret_number, &scan))
		return 0;
	*ret_unit = len > 0;
	return digits + gap + len;
}

/* Takes one amount by its unit; false: the word behind the figure is none. */
static bool take_amount(const char *at, size_t len, struct ts_tank_event *e)
{
	const struct {
		enum ts_quantity quantity;
		double *to;
	} amounts[] = {{TS_Q_VOLUME, &e->litres}, {TS_Q_PERCENT, &e->share_percent},
		{TS_Q_TIME, &e->lasted_h}};
	struct ts_scan scan;

	for (size_t i = 0; i < sizeof amounts / sizeof *amounts; i++) {
		if (ts_scan_value(amounts[i].quantity, at, len, amounts[i].to, &scan))
			return true;
	}
	return false;
}

static void take_amounts(const char *words, struct ts_tank_event *e)
{
	double number;
	bool unit = false;

	for (const char *at = words; *at;) {
		size_t len =
			at == words || !inside_word(at[-1]) ? amount_at(at, &number, &unit) : 0;

		if (len && !(unit && take_amount(at, len, e)) && !(e->count > 0) &&
			number <= TS_COUNT_MOST && number == trunc(number))
			e->count = number;
		at += len ? len : 1;
	}
}

/* "changed 40 L with rain": which water, by the last of its words. */
static int poured_in(const char *words)
{
	int with = TS_TOP_UP_UNKNOWN;

	for (const char *at = words; *at; at++) {
		if (at > words && inside_word(at[-1]))
			continue;
		for (const struct ts_happened_phrase *p = ts_poured_phrases; p->text; p++) {
			if (ts_phrase_length(at, p->text))
				with = p->what;
		}
	}
	return with;
}

bool ts_happened_words(
	struct ts_arena *arena, const char *words, struct ts_tank_event *ret, struct ts_text *error)
{
	const struct ts_happened_phrase *phrase = phrase_of(words);
	struct ts_tank_event e = {0};

	if (!phrase) {
		ts_text_puts(error, "'", words,
			"' is neither KEY=VALUE nor something that happened; write it like GH=14, "
			"\"changed 40 L\", \"2 neons died\", \"remark: new lamp\"",
			NULL);
		return false;
	}
	e.what = phrase->what;
	take_amounts(words, &e);
	if (e.what == TS_HAPPENED_CHANGED || e.what == TS_HAPPENED_TOPPED_UP)
		e.with = poured_in(words);
	if (phrase->needs && !(e.litres > 0) && !(e.share_percent > 0)) {
		ts_text_puts(error, "how much water was changed in '", words,
			"'? Write it like \"changed 40 L\" or \"changed 30 %\"", NULL);
		return false;
	}
	e.says = ts_arena_text(arena, words, strlen(words));
	*ret = e;
	return e.says;
}
