/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One row a state of a water; those that quote its figures have a function.
 */
#include "words/first.h"

#include <math.h>

#include "words/unusual.h"

static void say_minerals(struct ts_text *text, const struct ts_profile *p)
{
	ts_text_put(text, isnan(p->ph_read) ? "measure GH and KH: they say which animals suit"
					    : "measure GH and KH, and leave the pH alone");
}

void ts_say_read_again(struct ts_text *text, const struct ts_profile *p)
{
	unsigned bit = ts_water_contradiction(p);

	ts_text_put(text, bit == TS_UNUSUAL_GH_AGAINST_IONS ? "read GH again"
			  : bit == TS_UNUSUAL_ALKALINITY    ? "read KH again"
			  : bit == TS_UNUSUAL_PH_AGAINST_KH ? "test pH and KH again"
			  : bit == TS_UNUSUAL_CONDUCTIVITY  ? "read conductivity again"
							    : "look at the units of the report");
}

static void say_contradiction(struct ts_text *text, const struct ts_profile *p)
{
	ts_text_put(text, "these readings cannot all be right: ");
	ts_say_read_again(text, p);
}

static void put_read(struct ts_text *text, const struct ts_profile *p)
{
	static const enum ts_parameter both[] = {TS_GH, TS_KH};
	static const char *const label[] = {"GH ", "KH "};
	bool any = false;

	for (size_t i = 0; i < 2; i++) {
		if (!p->at[both[i]].given)
			continue;
		ts_text_puts(text, any ? ", " : "", label[i], NULL);
		ts_text_number_short(text, p->at[both[i]].value, 1);
		any = true;
	}
	if (!any)
		ts_text_put(text, isnan(p->contents.conductivity_us_cm)
					  ? "By what is dissolved in it"
					  : "By its conductivity");
}

static void bare_because(struct ts_text *text, const struct ts_profile *p)
{
	put_read(text, p);
	ts_text_put(text, ": like rain or reverse-osmosis water, whose pH means nothing. tapshoal "
			  "remake --to GH=6,KH=4 says which salts, in grams.");
}

static void softened_because(struct ts_text *text, const struct ts_profile *p)
{
	put_read(text, p);
	ts_text_put(text, ": a softener swaps calcium and magnesium for sodium, and leaves the "
			  "salt in. Until the unsoftened line is read nothing is sure.");
}

static void maybe_softened_says(struct ts_text *text, const struct ts_profile *p)
{
	ts_text_put(text, "is there a water softener in the house? GH ");
	ts_text_number_short(text, p->at[TS_GH].value, 1);
	ts_text_put(text, " beside KH ");
	ts_text_number_short(text, p->at[TS_KH].value, 1);
	ts_text_put(text, " looks like it");
}

static void maybe_softened_because(struct ts_text *text, const struct ts_profile *p)
{
	(void)p;
	ts_text_put(text, "Softened is not soft: it swaps hardness for sodium. Test the unsoftened "
			  "cold line, often the kitchen's or the garden's, or have sodium read.");
}

static void contradiction_because(struct ts_text *text, const struct ts_profile *p)
{
	ts_say_unusual(text, ts_water_contradiction(p), p);
}

static void sea_because(struct ts_text *text, const struct ts_profile *p)
{
	ts_text_put(text, "About ");
	ts_text_number_short(text, p->at[TS_SALINITY].value, 1);
	ts_text_put(text, " g/L of salt; the sea has 35, fresh water less than 0.5, and here fresh "
			  "and brackish water are answered.");
}

/* A fresh sample tells its gas or lime, and not what a tank runs at. */
static void say_let_it_stand(struct ts_text *text, const struct ts_profile *p)
{
	ts_text_put(text, "Of pH ");
	ts_text_number_short(text, p->ph_read, 2);
	ts_text_put(text, " in a fresh sample gas or lime is a part: let a glass stand open for a "
			  "day, or bubble air through it for an hour, and read it again; that "
			  "counts.");
}

void ts_say_fresh_ph(struct ts_text *text, const struct ts_profile *p)
{
	if (p->ph_fresh_sample && isnan(p->ph_tank))
		say_let_it_stand(text, p);
}

void ts_say_gh_bound(struct ts_text *text, const struct ts_profile *p)
{
	const struct ts_span *gh = &p->gh_bound;
	bool ec = !isnan(p->contents.conductivity_us_cm);

	if (!gh->given)
		return;
	ts_text_puts(text, ec ? "Its conductivity" : "What is dissolved in it",
		" leaves room for GH ", NULL);
	ts_text_number_short(text, gh->high, gh->high < 3 ? 1 : 0);
	ts_text_put(text, " at the most, and usually means ");
	ts_text_number_short(text, gh->value, gh->high < 3 ? 1 : 0);
	ts_text_put(text, ".");
}

static void minerals_because(struct ts_text *text, const struct ts_profile *p)
{
	const struct ts_span *salt = &p->at[TS_SALINITY];
	size_t start = text->len;

	if (salt->given && salt->from > TS_FROM_ASSUMED) {
		ts_text_put(text, "About ");
		ts_text_number_short(text, salt->value, 1);
		ts_text_put(text, " g/L of salt, which is brackish water.");
	}
	ts_text_put(text, text->len > start && p->gh_bound.given ? " " : "");
	ts_say_gh_bound(text, p);
	if (isnan(p->ph_read))
		return;
	ts_text_put(text, text->len > start ? " " : "");
	if (p->ph_fresh_sample) {
		say_let_it_stand(text, p);
		return;
	}
	ts_text_put(text, "pH ");
	ts_text_number_short(text, p->ph_read, 2);
	ts_text_put(text, " by itself decides nothing: it follows from KH and CO2, and GH says "
			  "which animals suit.");
}

static void gh_because(struct ts_text *text, const struct ts_profile *p)
{
	size_t start = text->len;

	ts_say_gh_bound(text, p);
	ts_text_puts(text, text->len > start ? " KH " : "KH ", NULL);
	ts_text_number_short(text, p->at[TS_KH].value, 1);
	if (isnan(p->ph_tank)) {
		ts_text_put(text, ": from so little no pH follows, and it can slide.");
		return;
	}
	ts_text_put(text, ": a tank of it runs at about pH ");
	ts_say_tank_ph(text, p);
	ts_text_put(text, ".");
}

typedef void say_function(struct ts_text *, const struct ts_profile *);

static const struct {
	const char *says; /* NULL: `put` */
	say_function *put, *because;
} rows[TS_WATER_FIRST__COUNT] = {
	[TS_FIRST_SEA] = {"this is sea water, or near it: outside what is answered here", NULL,
		sea_because},
	[TS_FIRST_BARE] = {"no animal before minerals are back: there is hardly one in this water",
		NULL, bare_because},
	[TS_FIRST_SOFTENED] = {"softened is not soft: test the unsoftened cold line", NULL,
		softened_because},
	[TS_FIRST_CONTRADICTION] = {NULL, say_contradiction, contradiction_because},
	[TS_FIRST_MAYBE_SOFTENED] = {NULL, maybe_softened_says, maybe_softened_because},
	[TS_FIRST_MINERALS] = {NULL, say_minerals, minerals_because},
	[TS_FIRST_GH] = {"measure GH: it decides most which animals suit", NULL, gh_because},
};

void ts_say_first(struct ts_text *text, const struct ts_profile *p)
{
	enum ts_water_first first = ts_water_first(p);

	if (rows[first].says)
		ts_text_put(text, rows[first].says);
	else if (rows[first].put)
		rows[first].put(text, p);
}

void ts_say_first_sentence(struct ts_text *text, const struct ts_profile *p)
{
	size_t start;

	if (ts_water_first(p) == TS_FIRST_NOTHING)
		return;
	if (p->unusual & TS_UNUSUAL__NOBODY_YET)
		ts_text_put(text, "This water suits nobody yet. ");
	start = text->len;
	ts_say_first(text, p);
	ts_text_capital(text, start);
	ts_text_put(text, ".");
}

void ts_say_first_because(struct ts_text *text, const struct ts_profile *p)
{
	enum ts_water_first first = ts_water_first(p);

	if (rows[first].because)
		rows[first].because(text, p);
}

unsigned ts_first_tells(const struct ts_profile *p, enum ts_water_first first)
{
	static const unsigned tells[TS_WATER_FIRST__COUNT] = {[TS_FIRST_SEA] = TS_UNUSUAL_SALTY,
		[TS_FIRST_BARE] = TS_UNUSUAL_BARE,
		[TS_FIRST_SOFTENED] = TS_UNUSUAL_SOFTENED,
		[TS_FIRST_MAYBE_SOFTENED] = TS_UNUSUAL_MAYBE_SOFTENED,
		[TS_FIRST_MINERALS] = TS_TOLD_GH_BOUND,
		[TS_FIRST_GH] = TS_TOLD_GH_BOUND};

	if (!p)
		return 0;
	return first == TS_FIRST_CONTRADICTION ? ts_water_contradiction(p) : tells[first];
}
