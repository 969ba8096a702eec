/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Sentences about the catalogue itself; those about the match of one species stand in sentence.c.
 */
#include "words/names.h"

#include <stdint.h>
#include <string.h>

#include "words/animal.h"

static void put_length(struct ts_text *text, double cm)
{
	ts_text_number_short(text, cm, cm < 10);
}

/* "guppy (Poecilia reticulata)", the name that fits first. */
static void put_candidate(struct ts_text *text, const struct ts_candidate *c)
{
	const struct ts_species *s = c->species;
	bool common = strcmp(c->name, s->species) != 0;

	if (common)
		ts_text_puts(text, c->name, " (", NULL);
	ts_text_puts(text, s->species, s->form ? ", " : "", s->form ? s->form : "",
		common ? ")" : "", NULL);
}

/* "a (A a), b (B b) or one of 3 more"; of a group each with how long it grows. */
/* So many of those that come near are named: more of them share a word, and no more. */
#define NEAR_NAMED 4

static void put_candidates(struct ts_text *text, const struct ts_candidates *c, const char *last)
{
	bool near = c->how == TS_NAME_NEAR;
	size_t named = near && c->count > NEAR_NAMED ? NEAR_NAMED : c->count;

	for (size_t i = 0; i < named; i++) {
		bool end = i + 1 == named && (near || c->all == c->count);

		ts_text_put(text, !i ? "" : end ? last : ", ");
		put_candidate(text, &c->items[i]);
		if (c->how == TS_NAME_GROUP && c->most_cm > c->least_cm) {
			ts_text_put(text, " ");
			put_length(text, c->items[i].species->adult_length_cm);
			ts_text_put(text, " cm");
		}
	}
	if (c->all > c->count && !near) {
		ts_text_put(text, " or one of ");
		ts_text_number(text, (double)(c->all - c->count), 0);
		ts_text_put(text, " more");
	}
}

bool ts_group_warns(const struct ts_candidates *c)
{
	const struct ts_species all = {.cautions = c->shared_cautions};

	return ts_caution_kinds(&all) & (TS_CAUTIONS_DANGER | TS_CAUTIONS_LAW);
}

void ts_say_group_warning(struct ts_text *text, const struct ts_candidates *c)
{
	const struct ts_species all = {.cautions = c->shared_cautions};

	ts_say_cautions(text, &all, TS_CAUTIONS_DANGER | TS_CAUTIONS_LAW);
}

/* What is so of all who belong to a group: how long they grow, dangers to people, law. */
static void put_group(struct ts_text *text, const struct ts_candidates *c)
{
	bool warned = ts_group_warns(c);

	ts_text_put(text, c->by_word ? "is not in the catalogue; others of its kind are, grown "
				     : "is a whole group, grown ");
	put_length(text, c->least_cm);
	if (c->most_cm > c->least_cm) {
		ts_text_put(text, " to ");
		put_length(text, c->most_cm);
	}
	ts_text_put(text, " cm");
	if (warned) {
		ts_text_put(text, ": ");
		ts_say_group_warning(text, c);
	}
	ts_text_put(text, warned ? ". Take one of: " : "; take one of: ");
}

static const char outside[] = ": outside this work, which knows fishes, shrimps, crayfish, crabs "
			      "and snails of fresh and brackish water";

void ts_say_candidates(struct ts_text *text, const char *name, const struct ts_candidates *c)
{
	ts_text_puts(text, "'", name, "' ", NULL);
	switch (c->how) {
	case TS_NAME_OUTSIDE:
		ts_text_puts(text, c->says, outside, NULL);
		return;
	case TS_NAME_FORM:
		ts_text_puts(text, c->says,
			": it has no record, so nothing is judged; ask which fish it comes from "
			"and what they need",
			NULL);
		return;
	case TS_NAME_NUMBER:
		ts_text_put(text, "is a trade number that no record carries; give the scientific "
				  "name");
		return;
	case TS_NAME_GROUP:
		put_group(text, c);
		put_candidates(text, c, ", ");
		if (c->all > c->count)
			ts_text_puts(text, "; tapshoal find \"", name, "\" lists them", NULL);
		return;
	case TS_NAME_SHARED:
		ts_text_put(text, "is the name of several species; take one of: ");
		put_candidates(text, c, ", ");
		return;
	case TS_NAME_NEAR:
		ts_text_put(text, "is no name in the catalogue; did you mean ");
		put_candidates(text, c, " or ");
		ts_text_put(text, "?");
		return;
	default:
		ts_text_put(text, "is not in the catalogue; an unknown species is not passed: "
				  "give its scientific name");
	}
}

void ts_say_members(struct ts_text *text, const char *name, const struct ts_candidates *c)
{
	ts_text_put(text, "Take one of: ");
	put_candidates(text, c, ", ");
	if (c->all > c->count)
		ts_text_puts(text, "; tapshoal find \"", name, "\" lists them", NULL);
	ts_text_put(text, ".");
}

void ts_say_taken(struct ts_text *text, const char *name, const struct ts_candidates *c)
{
	if (c->how != TS_NAME_GUESSED && c->how != TS_NAME_FORM)
		return;
	ts_text_puts(text, "'", name, "' ", NULL);
	if (c->shared)
		ts_text_put(text, "is the name of several sisters; this is for ");
	else if (c->how == TS_NAME_FORM)
		ts_text_puts(text, c->says, "; the answer is that for ", NULL);
	else
		ts_text_put(text, "is taken for ");
	put_candidate(text, &c->items[0]);
	for (size_t i = 1; c->how == TS_NAME_GUESSED && i < c->count; i++) {
		ts_text_put(text, i == 1 ? ", the one most often sold. The others: " : ", ");
		ts_text_puts(text, c->items[i].species->species, NULL);
	}
}

void ts_overlay_count(const struct ts_catalogue *catalogue, size_t folder, size_t *ret_added,
	size_t *ret_replaced)
{
	*ret_added = *ret_replaced = 0;
	for (size_t i = 0; i < catalogue->count; i++) {
		if (catalogue->items[i]->folder != folder)
			continue;
		if (catalogue->items[i]->replaces)
			++*ret_replaced;
		else
			++*ret_added;
	}
}

/* How many names stand in the line; the rest is a number. */
#define NAMED_MOST 3

static void put_part(struct ts_text *text, const struct ts_catalogue *catalogue, size_t folder,
	bool replacing, size_t count)
{
	size_t named = 0;

	ts_text_number(text, (double)count, 0);
	ts_text_put(text, !replacing   ? " added ("
			  : count == 1 ? " in place of another ("
				       : " in place of others (");
	for (size_t i = 0; i < catalogue->count && named < NAMED_MOST; i++) {
		const struct ts_species *s = catalogue->items[i];

		if (s->folder != folder || (s->replaces != NULL) != replacing)
			continue;
		ts_text_puts(text, named++ ? ", " : "", s->species, s->form ? " " : "",
			s->form ? s->form : "", NULL);
	}
	ts_text_put(text, count > named ? " ..." : "");
	ts_text_put(text, ")");
}

void ts_say_overlays(struct ts_text *text, const struct ts_catalogue *catalogue)
{
	for (size_t folder = 1; folder < catalogue->folders.count; folder++) {
		size_t added, replaced;

		ts_overlay_count(catalogue, folder, &added, &replaced);
		if (!added && !replaced)
			continue;
		ts_text_puts(text, "Records from ", catalogue->folders.items[folder], ": ", NULL);
		if (added)
			put_part(text, catalogue, folder, false, added);
		ts_text_put(text, added && replaced ? ", " : "");
		if (replaced)
			put_part(text, catalogue, folder, true, replaced);
		ts_text_put(text, ".\n");
	}
}
