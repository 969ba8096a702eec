/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What was found, shown: entries, or on a terminal a table of the first ones; counts on demand.
 */
#include "show/find.h"

#include <string.h>

#include "catalogue/summary.h"
#include "show/rank.h"
#include "words/sentence.h"

/* As many as stand on half a screen. */

static void put_count(struct ts_text *text, size_t count)
{
	ts_text_number(text, (double)count, 0);
}

static void one(struct ts_document *doc, const struct ts_find_species_result *s)
{
	struct ts_node *entry = ts_doc_entry(doc, s->says);

	ts_doc_line(doc, entry, s->lives_in, NULL);
	if (doc->drawn) {
		ts_doc_tag(doc, entry, "family", s->family);
		ts_doc_tag(doc, entry, "swims", s->swims);
		ts_doc_tag(doc, entry, "sold", s->sold);
		ts_show_bars(doc, entry, s->parameters, s->parameter_count);
	}
	if (s->also)
		ts_doc_line(doc, entry, s->also, NULL);
}

static const char *measure(
	struct ts_document *doc, struct ts_text *text, double value, const char *unit)
{
	ts_text_number_short(text, value, 1);
	ts_text_put(text, unit);
	return ts_doc_take(doc, text);
}

/* On a terminal a long find is a table of its first ones; --all shows each in full. */
static void short_table(
	struct ts_document *doc, struct ts_text *text, const struct ts_find_result *r, size_t most)
{
	struct ts_node *table = ts_doc_records(doc);

	ts_doc_line(doc, table, "name", "grown", "together", "needs", "lives at GH", "sold", NULL);
	for (size_t i = 0; i < most; i++) {
		const struct ts_find_species_result *s = &r->found[i];
		const struct ts_range *gh = &s->bands[0].tolerated;
		const char *grown = measure(doc, text, s->adult_length_cm, " cm");
		const char *together = measure(doc, text, s->group_comfortable, "");
		const char *tank = measure(doc, text, s->tank_length_cm, " cm long");

		if (isnan(gh->low))
			ts_text_put(text, "not known");
		else
			ts_say_range(text, gh, 1);
		ts_doc_line(doc, table, s->common ? s->common : s->species, grown, together, tank,
			ts_doc_take(doc, text), s->sold, NULL);
	}
	put_count(text, r->found_count - most);
	ts_text_put(text, " more: --all.");
	ts_doc_paragraph(doc, ts_doc_take(doc, text));
}

static void tally(struct ts_document *doc, struct ts_text *text, struct ts_node *table,
	const char *name, size_t count)
{
	const char *label = ts_arena_text(doc->arena, name, strlen(name));

	put_count(text, count);
	ts_doc_line(doc, table, label, ts_doc_take(doc, text), NULL);
}

static void share(struct ts_document *doc, struct ts_text *text, struct ts_node *facts,
	const char *label, size_t part, size_t of)
{
	put_count(text, part);
	ts_text_put(text, " of ");
	put_count(text, of);
	ts_doc_line(doc, facts, label, ts_doc_take(doc, text), NULL);
}

static void write_summary(
	struct ts_document *doc, struct ts_text *text, const struct ts_find_result *r)
{
	static const char *const said[TS_GRADE__COUNT] = {"Values from publications",
		"Values of common practice", "Values computed", "Values from memory"};
	struct ts_node *table = ts_doc_table(doc);

	ts_doc_line(doc, table, "group", "species", NULL);
	for (size_t i = 0; i < r->group_count; i++)
		tally(doc, text, table, r->groups[i].name, r->groups[i].count);
	table = ts_doc_table(doc);
	ts_doc_line(doc, table, "home water", "species", NULL);
	for (size_t i = 0; i < r->home_water_count; i++) {
		if (r->home_waters[i].count)
			tally(doc, text, table, r->home_waters[i].name, r->home_waters[i].count);
	}
	ts_doc_heading(doc, 0, "Where the figures come from");
	table = ts_doc_facts(doc, 0);
	share(doc, text, table, "Fish whose tolerated pH is published", r->fish_ph_published,
		r->fish);
	share(doc, text, table, "Fish whose tolerated GH is published", r->fish_gh_published,
		r->fish);
	share(doc, text, table, "Fish whose tolerated temperature is published",
		r->fish_temp_published, r->fish);
	for (size_t g = 0; g < r->value_count; g++)
		share(doc, text, table, said[g], r->values[g].count, r->values_in_all);
}

void ts_show_find(
	struct ts_document *doc, const struct ts_find_result *r, bool summary, size_t most)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	ts_doc_verdict(doc, r->headline, "");
	if (r->unknown_says)
		ts_doc_paragraph(doc, r->unknown_says);
	if (r->overlays_say)
		ts_doc_paragraph(doc, r->overlays_say);
	if (summary)
		write_summary(doc, &text, r);
	else if (most && r->found_count > most)
		short_table(doc, &text, r, most);
	else
		for (size_t i = 0; i < r->found_count; i++)
			one(doc, &r->found[i]);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}
