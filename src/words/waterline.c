/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Figures of a profile, as short as they are still understood.
 */
#include "words/waterline.h"

#include <math.h>

#include "words/sentence.h"

/* Doubt that is wider than an ordinary kit's is shown, like a range that is lived through. */
static bool wide(const struct ts_span *s, enum ts_parameter p)
{
	static const double ordinary[TS_PARAMETER__COUNT] = {2, 2, 1.1, 1.1, 0.5};

	return s->exposure || s->high - s->low > ordinary[p];
}

void ts_say_span(struct ts_text *out, const struct ts_span *s, enum ts_parameter p)
{
	int decimals = ts_parameter_rows[p].decimals;

	if (wide(s, p)) {
		ts_text_number_short(out, s->low, decimals);
		ts_text_put(out, "..");
		ts_text_number_short(out, s->high, decimals);
		return;
	}
	ts_text_number_short(out, s->value, ts_reading_decimals(p, s->from > TS_FROM_COMPUTED));
}

/* "6.7, in a tank 7.9"; "7.9, by KH" where none was read. */
static void put_computed_ph(struct ts_text *text, const struct ts_profile *p)
{
	if (!isnan(p->ph_read)) {
		ts_text_number_short(text, p->ph_read, 2);
		ts_text_put(text, ", in a tank ");
	}
	ts_text_number(text, p->ph_tank, 1);
	ts_text_put(text, isnan(p->ph_read) ? " by KH" : "");
}

void ts_say_water_line(struct ts_text *text, const struct ts_profile *profile)
{
	static const enum ts_parameter order[] = {TS_GH, TS_KH, TS_PH, TS_TEMPERATURE};

	for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
		const struct ts_span *s = &profile->at[order[i]];
		bool tank = order[i] == TS_TEMPERATURE;

		ts_text_puts(text, i ? ", " : "",
			tank ? "tank " : ts_parameter_rows[order[i]].label, tank ? "" : " ", NULL);
		if (s->given && order[i] == TS_PH && profile->ph_computed)
			put_computed_ph(text, profile);
		else if (s->given)
			ts_say_span(text, s, order[i]);
		else
			ts_text_put(text, tank ? "temperature not given" : "not given");
		if (tank && s->given)
			ts_text_put(text, " C");
	}
}
