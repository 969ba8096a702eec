/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentence of one line of minerals.
 */
#include "words/mend.h"

#include <math.h>

#include "words/remake.h"

/* Less than a kitchen balance shows, g. */
#define GRAMS_LEAST 0.05

static void put_part(
	struct ts_text *text, double grams, const char *says, bool *io_first, bool last)
{
	if (grams < GRAMS_LEAST)
		return;
	ts_text_put(text, *io_first ? "" : last ? " and " : ", ");
	ts_say_amount(text, grams, "g of ");
	ts_text_put(text, says);
	*io_first = false;
}

void ts_say_mend_salts(struct ts_text *text, const struct ts_mend *m)
{
	bool first = true;

	put_part(text, m->bicarbonate_g, "baking soda (sodium bicarbonate)", &first, false);
	put_part(text, m->calcium_chloride_g, "calcium chloride", &first, m->epsom_g < GRAMS_LEAST);
	put_part(text, m->epsom_g, "Epsom salt", &first, true);
}

static void put_after(struct ts_text *text, const struct ts_mend *m)
{
	const char *before = ": then ";

	if (!isnan(m->gh_dh)) {
		ts_text_puts(text, before, "GH ", NULL);
		ts_text_number_short(text, m->gh_dh, 1);
		before = ", ";
	}
	if (!isnan(m->kh_dh)) {
		ts_text_puts(text, before, "KH ", NULL);
		ts_text_number_short(text, m->kh_dh, 1);
	}
	if (!isnan(m->ph)) {
		ts_text_put(text, ", pH about ");
		ts_text_number(text, m->ph, 1);
	}
	ts_text_put(text, ".");
}

void ts_say_mend(struct ts_text *text, const struct ts_mend *m)
{
	bool salts = m->bicarbonate_g >= GRAMS_LEAST || m->calcium_chloride_g >= GRAMS_LEAST ||
		     m->epsom_g >= GRAMS_LEAST;

	if (!salts && !(m->pure_l > 0))
		return;
	if (m->pure_l > 0) {
		ts_text_put(text, "Of each 100 L of new water ");
		ts_say_amount(text, m->pure_l, "L from reverse osmosis or clean rain");
		ts_text_put(text, salts ? ", and " : "");
	} else {
		ts_text_put(text, "Into each 100 L of new water ");
	}
	ts_say_mend_salts(text, m);
	put_after(text, m);
}
