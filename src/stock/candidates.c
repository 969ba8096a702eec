/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which species may be proposed at all, one reason each for the rest. What only the company decides
 * is left to the search in propose.c.
 */
#include "stock/candidates.h"

#include <string.h>

#include "model/practice.h"
#include "stock/compose.h"
#include "stock/misfit.h"
#include "stock/rules.h"

/* In the order of the word lists of model/shapes.c. */
enum { CHANGE_FAIRLY, CHANGE_BADLY, CHANGE_WELL };

/* Brackish water, read as such: its own animals are what is asked for. */
static bool salty(const struct ts_wish *w)
{
	const struct ts_span *salt = &w->profile->at[TS_SALINITY];

	return salt->given && salt->from != TS_FROM_ASSUMED &&
	       salt->low > w->practice->value[TS_P_SALT_FRESH];
}

static bool among(const struct ts_species *const *list, size_t count, const struct ts_species *s)
{
	for (size_t i = 0; i < count; i++) {
		if (list[i] == s)
			return true;
	}
	return false;
}

/*
 * Where water and animal differ in salt: those of brackish shores bear fresh water and are no
 * better for it, those of fresh water bear a little salt. Neither is proposed unasked.
 */
static const char *asks_for_other_salt(const struct ts_wish *w, const struct ts_candidacy *c)
{
	const struct ts_parameter_fit *salt = &c->match.at[TS_SALINITY];

	if (c->match.species->cautions & 1u << TS_CAUTION_NEEDS_SALT && !salty(w))
		return "it needs salt";
	if (!salt->known || salt->uncomfortable_by == 0)
		return NULL;
	return salt->uncomfortable_by < 0 ? "it lives better with salt"
					  : "it lives better without salt";
}

/* What can be said of the species without looking at the tank. */
static enum ts_left_out first_reason(const struct ts_wish *w, struct ts_candidacy *c)
{
	const struct ts_species *s = c->match.species;

	if (among(w->without, w->without_count, s))
		return TS_LEFT_BY_WISH;
	if (c->match.verdict == TS_EXCLUDED)
		return TS_LEFT_BY_WATER;
	if (c->match.verdict == TS_UNSURE || isnan(c->match.order))
		return TS_LEFT_UNSURE;
	if (c->must)
		return TS_CANDIDATE;
	if (!ts_compose_of_theme(s, w))
		return TS_LEFT_BY_THEME;
	if (!ts_match_advised_unasked(s))
		return TS_LEFT_BY_CAUTION;
	if (!salty(w) || s->home_water != TS_HOME_BRACKISH)
		c->asks = ts_compose_asks(s, w->aged || w->theme == TS_THEME_SHRIMPS);
	if (!c->asks)
		c->asks = asks_for_other_salt(w, c);
	if (c->asks)
		return TS_LEFT_ASKS;
	if (w->hardy && s->takes_change == CHANGE_BADLY)
		return TS_LEFT_NOT_HARDY;
	if (w->reach < TS_REACH_ANY && !ts_compose_at_home(&c->match, w))
		return TS_LEFT_AT_EDGE;
	if (w->reach < TS_REACH_ANY && s->sold >= TS_SOLD_SELDOM)
		return TS_LEFT_SELDOM;
	return TS_CANDIDATE;
}

bool ts_is_delicate(const struct ts_species *species)
{
	return species->takes_change == CHANGE_BADLY;
}

bool ts_is_hardy(const struct ts_species *species)
{
	return species->takes_change == CHANGE_WELL;
}

/* What an unsure species waits for: the worst of its parameters that is not known or in doubt. */
int ts_candidacy_waits_for(const struct ts_match *m)
{
	if (m->gh_missing)
		return TS_GH;
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (m->at[p].known && m->at[p].verdict == TS_UNSURE)
			return p;
	}
	return -1;
}

void ts_consider_all(const struct ts_wish *w, struct ts_proposal *p)
{
	for (size_t i = 0; i < w->catalogue->count; i++) {
		struct ts_candidacy *c = &p->species[i];
		int waits;

		ts_misfit_match(
			w->catalogue->items[i], w->profile, w->keeping, w->practice, &c->match);
		c->must = among(w->with, w->with_count, c->match.species);
		for (size_t r = 0; r < w->resident_count; r++) {
			if (w->residents[r].species == c->match.species)
				c->resident = &w->residents[r];
		}
		c->must |= c->resident != NULL;
		c->left_out = first_reason(w, c);
		waits = c->left_out == TS_LEFT_UNSURE ? ts_candidacy_waits_for(&c->match) : -1;
		if (waits >= 0)
			p->waits[waits]++;
	}
}
