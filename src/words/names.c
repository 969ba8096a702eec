/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Sentences about the catalogue itself; those about the match of one species stand in sentence.c.
 */
#include "words/names.h"

#include <stdint.h>
#include <string.h>

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

void ts_say_candidates(struct ts_text *text, const char *name, const struct ts_candidates *c)
{
	bool several = c->count && !c->items[0].miss;

	ts_text_puts(text, "'", name, "' is ", NULL);
	if (!c->count) {
		ts_text_put(text, "not in the catalogue; an unknown species is not passed: give "
				  "its scientific name");
		return;
	}
	ts_text_put(text, several ? "the name of several species; take one of: "
				  : "no name in the catalogue; did you mean ");
	for (size_t i = 0; i < c->count; i++) {
		bool last = i + 1 == c->count && c->all == c->count;

		ts_text_put(text, !i ? "" : last && !several ? " or " : ", ");
		put_candidate(text, &c->items[i]);
	}
	if (c->all > c->count) {
		ts_text_put(text, " or one of ");
		ts_text_number(text, (double)(c->all - c->count), 0);
		ts_text_put(text, " more");
	}
	ts_text_put(text, several ? "" : "?");
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
