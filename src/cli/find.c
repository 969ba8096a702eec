/* SPDX-License-Identifier: Apache-2.0 */
/*
 * find: the catalogue by name and family, by any word of a record, by length, source and water.
 */
#include "cli/find.h"

#include <string.h>

#include "catalogue/name_rows.h"
#include "catalogue/name_words.h"
#include "catalogue/pattern.h"
#include "catalogue/traits.h"
#include "model/shape.h"
#include "words/animal.h"
#include "words/names.h"
#include "words/sentence.h"

/* The readings that species have a band for; any other asks for something that no record tells. */
static bool take_water(struct session *s, struct ts_filter *filter)
{
	const struct ts_reading *r = &s->options->reading;
	const struct ts_measure *const of[TS_PARAMETER__COUNT] = {[TS_GH] = &r->gh_dh,
		[TS_KH] = &r->kh_dh,
		[TS_PH] = &r->ph,
		[TS_TEMPERATURE] = &s->options->temperature,
		[TS_SALINITY] = &r->salinity_g_l};

	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *field = &ts_shape_reading.fields[i];
		const struct ts_measure *m = (const void *)((const char *)r + field->offset);
		bool known = m == &r->gh_dh || m == &r->kh_dh || m == &r->ph ||
			     m == &r->salinity_g_l || m == &r->temp_c;

		if (field->kind != TS_MEASURE || known || m->kind == TS_MEASURE_NONE)
			continue;
		ts_text_puts(s->error, "no record tells the ", field->key,
			" that a species lives in; find takes --pH, --GH, --KH, --salinity and "
			"--temperature",
			NULL);
		return false;
	}
	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		filter->water[p] = *of[p];
	return true;
}

/* The water asked for as a profile, each figure as it was given. */
static void take_asked(const struct ts_filter *filter, struct find_answer *ret)
{
	ret->keeping = (struct ts_keeping){.wild = filter->wild, .breeding = filter->breeding};
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_measure *m = &filter->water[p];

		if (m->kind != TS_MEASURE_NONE)
			ret->asked.at[p] = (struct ts_span){
				.given = true, .value = m->value, .low = m->low, .high = m->high};
	}
}

static bool make_filter(struct session *s, struct ts_filter *ret)
{
	const struct options *o = s->options;

	*ret = o->traits;
	ret->family = o->family;
	ret->source = o->source;
	ret->least_length_cm = o->min_length_cm.value;
	ret->greatest_length_cm = o->max_length_cm.value;
	ret->wild = o->keeping.wild;
	ret->breeding = o->keeping.breeding;
	return take_water(s, ret);
}

/* The pattern and, under it, where it is wrong. */
static void say_fault(struct ts_text *error, const char *pattern, const struct ts_pattern_fault *f)
{
	ts_text_puts(error, "the pattern is wrong at character ", NULL);
	ts_text_number(error, (double)f->column, 0);
	ts_text_puts(error, ": ", f->says, "\n  ", pattern, "\n  ", NULL);
	ts_text_fill(error, ' ', f->column - 1);
	ts_text_put(error, "^\n--fixed takes it as plain text");
}

static enum ts_status open_pattern(struct session *s, const char *text, struct ts_pattern **ret)
{
	struct ts_pattern_fault fault = {0};
	enum ts_status status = ts_pattern_open(text, s->options->fixed, NULL, ret, &fault);

	if (status == TS_BAD_INPUT)
		say_fault(s->error, text, &fault);
	return status;
}

/* The pattern may be the name of one animal, or of a group, however it is written. */
static bool meant(const struct find_answer *a, const struct ts_species *species)
{
	if (a->named)
		return a->named == species;
	return a->candidates.how == TS_NAME_GROUP && ts_name_row_holds(a->candidates.row, species);
}

/* How near the names of an animal come to what was typed, as people would say it. */
static int far_from(const struct ts_name_words *asked, const struct ts_species *species)
{
	const char *name;
	int far = 2;

	for (size_t i = 0; far && (name = ts_species_name(species, i)); i++) {
		struct ts_name_words words;
		unsigned miss;

		ts_name_split(name, strlen(name), false, &words);
		miss = ts_name_miss(asked, &words) / TS_NAME_TIER;
		if (miss <= TS_TIER_PLURAL)
			far = 0;
		else if (miss <= TS_TIER_WORDS)
			far = 1;
	}
	return far;
}

/* Who is called so goes before whose name only holds it; else the order stays. */
static void nearest_first(struct find_answer *a)
{
	struct ts_name_words asked;

	ts_name_split(a->pattern, strlen(a->pattern), false, &asked);
	for (size_t i = 0; i < a->count; i++) {
		struct found one = a->items[i];
		size_t at = i;

		one.far = far_from(&asked, one.species);
		for (; at > 0 && a->items[at - 1].far > one.far; at--)
			a->items[at] = a->items[at - 1];
		a->items[at] = one;
	}
}

static enum ts_status search(struct session *s, const struct ts_filter *filter,
	struct ts_pattern *pattern, struct find_answer *ret)
{
	ret->items = ts_arena_array(
		s->arena, s->catalogue->count ? s->catalogue->count : 1, sizeof *ret->items);
	if (!ret->items)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < s->catalogue->count; i++) {
		struct found one = {s->catalogue->items[i], NULL, 0};
		enum ts_status status = TS_OK;

		if (!ts_filter_passes(filter, one.species))
			continue;
		if (pattern && !meant(ret, one.species))
			status = ts_pattern_species(pattern, one.species, &one.name);
		if (status == TS_BAD_INPUT)
			ts_text_puts(s->error,
				"the pattern takes more steps than a search has; "
				"write it simpler, or give --fixed",
				NULL);
		if (status > TS_NO)
			return status;
		if (status == TS_OK)
			ret->items[ret->count++] = one;
	}
	if (ret->pattern)
		nearest_first(ret);
	return TS_OK;
}

static enum ts_status summarise(struct session *s, struct find_answer *a)
{
	const struct ts_species **species =
		ts_arena_array(s->arena, a->count ? a->count : 1, sizeof *species);

	if (!species)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < a->count; i++)
		species[i] = a->items[i].species;
	ts_summarise(species, a->count, s->arena, &a->summary);
	return s->arena->failed ? TS_NO_MEMORY : TS_OK;
}

static void put_count(struct ts_text *text, size_t count)
{
	ts_text_number(text, (double)count, 0);
}

static void put_band(
	struct ts_text *text, const char *label, const struct ts_range *r, const char *unit)
{
	if (isnan(r->low))
		return;
	ts_text_puts(text, text->len ? ", " : "", label, *label ? " " : "", NULL);
	ts_say_range(text, r, 1);
	ts_text_puts(text, *unit ? " " : "", unit, NULL);
}

/* What it lives in, with the water that was asked for across it. */
static void outlines(struct ts_document *doc, struct ts_node *entry, const struct find_answer *a,
	const struct ts_species *species)
{
	struct ts_match match;

	if (!doc->drawn)
		return;
	ts_match_species(species, &a->asked, &a->keeping, NULL, &match);
	say_tags(doc, entry, species, NULL);
	say_bars(doc, entry, &match, &a->asked);
}

static void one(struct ts_document *doc, struct ts_text *text, const struct find_answer *a,
	const struct found *f)
{
	const struct ts_species *s = f->species;
	const struct ts_envelopes *water = &s->water.usual;
	struct ts_node *entry;

	ts_say_name(text, s);
	ts_text_put(text, ": ");
	ts_say_room_of(text, s);
	ts_text_put(text, s->cautions ? "; caution: " : "");
	say_cautions(text, s);
	entry = ts_doc_entry(doc, ts_doc_take(doc, text));
	put_band(text, "GH", &water->gh_dh.tolerated, "");
	put_band(text, "KH", &water->kh_dh.tolerated, "");
	put_band(text, "pH", &water->ph.tolerated, "");
	put_band(text, "", &water->temp_c.tolerated, "C");
	ts_text_puts(text, "; ", ts_words_home_water_said[s->home_water], "; ", s->family, NULL);
	ts_doc_line(doc, entry, ts_doc_take(doc, text), NULL);
	outlines(doc, entry, a, s);
	if (!f->name || strcmp(f->name, s->species) == 0 || strcmp(f->name, s->family) == 0 ||
		(s->common.en.count && strcmp(f->name, s->common.en.items[0]) == 0))
		return;
	ts_text_puts(text, "also called ", f->name, NULL);
	ts_doc_line(doc, entry, ts_doc_take(doc, text), NULL);
}

/* As many as stand on half a screen. */
#define DOZEN 12

/* On a terminal a long find is a table of its first dozen; --all shows each in full. */
static void short_table(struct ts_document *doc, struct ts_text *text, const struct find_answer *a)
{
	struct ts_node *table = ts_doc_records(doc);

	ts_doc_line(doc, table, "name", "grown", "together", "tank", "lives at GH", "family", NULL);
	for (size_t i = 0; i < DOZEN; i++) {
		const struct ts_species *s = a->items[i].species;
		const char *name = s->common.en.count ? s->common.en.items[0] : s->species;
		const char *grown, *together, *tank, *gh = "not known";

		ts_text_number_short(text, s->adult_length_cm, 1);
		ts_text_put(text, " cm");
		grown = ts_doc_take(doc, text);
		ts_text_number_short(text, s->group.comfortable, 0);
		together = ts_doc_take(doc, text);
		ts_text_number_short(text, ts_match_tank_length_cm(s), 0);
		ts_text_put(text, " cm");
		tank = ts_doc_take(doc, text);
		if (!isnan(s->water.usual.gh_dh.tolerated.low)) {
			ts_say_range(text, &s->water.usual.gh_dh.tolerated, 1);
			gh = ts_doc_take(doc, text);
		}
		ts_doc_line(doc, table, name, grown, together, tank, gh, s->family, NULL);
	}
	put_count(text, a->count - DOZEN);
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
	double percent = of ? 100.0 * (double)part / (double)of : 0;

	put_count(text, part);
	ts_text_put(text, " of ");
	put_count(text, of);
	if (of) {
		ts_text_put(text, ", ");
		ts_text_number_short(text, percent, percent < 10 ? 1 : 0);
		ts_text_put(text, " %");
	}
	ts_doc_line(doc, facts, label, ts_doc_take(doc, text), NULL);
}

static void write_summary(struct ts_document *doc, struct ts_text *text, const struct ts_summary *s)
{
	struct ts_node *table = ts_doc_table(doc);
	size_t values = 0;

	ts_doc_line(doc, table, "group", "species", NULL);
	for (size_t i = 0; i < s->group_count; i++)
		tally(doc, text, table, s->groups[i].name, s->groups[i].count);
	table = ts_doc_table(doc);
	ts_doc_line(doc, table, "home water", "species", NULL);
	for (int w = 0; w < TS_HOME__COUNT; w++) {
		if (s->home_water[w])
			tally(doc, text, table, ts_words_home_water[w], s->home_water[w]);
	}
	for (int g = 0; g < TS_GRADE__COUNT; g++)
		values += s->values[g];
	ts_doc_heading(doc, 0, "WHERE THE FIGURES COME FROM");
	table = ts_doc_facts(doc, 0);
	share(doc, text, table, "Fish whose tolerated pH is published", s->fish_ph_published,
		s->fish);
	share(doc, text, table, "Fish whose tolerated GH is published", s->fish_gh_published,
		s->fish);
	share(doc, text, table, "Fish whose tolerated temperature is published",
		s->fish_temp_published, s->fish);
	share(doc, text, table, "Values from publications", s->values[TS_GRADE_PUBLISHED], values);
	share(doc, text, table, "Values of common practice", s->values[TS_GRADE_PRACTICE], values);
	share(doc, text, table, "Values computed", s->values[TS_GRADE_DERIVED], values);
	share(doc, text, table, "Values from memory", s->values[TS_GRADE_MEMORY], values);
}

static void verdict(
	struct ts_document *doc, struct ts_text *text, const struct find_answer *a, size_t of)
{
	if (a->count)
		put_count(text, a->count);
	else
		ts_text_put(text, "None");
	ts_text_put(text, " of ");
	put_count(text, of);
	ts_text_put(text, " species");
	ts_doc_verdict(doc, ts_doc_take(doc, text), "");
}

static void write_answer(struct session *s, const struct find_answer *a)
{
	struct ts_document doc;
	struct ts_text text;
	bool dozen;

	dozen = a->count > DOZEN && session_terminal(s) && !s->options->all && !s->options->summary;
	ts_doc_open(&doc, s->arena, "Species found");
	doc.drawn = s->options->format == FORMAT_HTML;
	ts_text_open(&text, &s->arena->allocator);
	verdict(&doc, &text, a, s->catalogue->count);
	if (!a->count && a->pattern && !a->named) {
		ts_say_candidates(&text, a->pattern, &a->candidates);
		ts_doc_paragraph(&doc, ts_doc_take(&doc, &text));
	}
	say_overlays(&doc, s->catalogue);
	if (s->options->summary)
		write_summary(&doc, &text, &a->summary);
	if (dozen)
		short_table(&doc, &text, a);
	for (size_t i = 0; i < a->count && !s->options->summary && !dozen; i++)
		one(&doc, &text, a, &a->items[i]);
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_write(s, &doc);
}

static void answer_with(struct session *s, const struct find_answer *a)
{
	if (s->options->format == FORMAT_JSON)
		find_json(s, a);
	else if (s->options->format == FORMAT_CSV)
		find_csv(s, a);
	else
		write_answer(s, a);
}

enum ts_status command_find(struct session *s)
{
	const struct options *o = s->options;
	struct find_answer a = {.pattern = o->argument_count ? o->arguments[0] : NULL};
	struct ts_filter filter;
	struct ts_pattern *pattern = NULL;
	enum ts_status status = TS_BAD_INPUT;

	if (o->argument_count > 1) {
		ts_text_puts(s->error, "find takes one pattern; put '", a.pattern, " ",
			o->arguments[1], "' in quotes", NULL);
		return status;
	}
	if (!make_filter(s, &filter))
		return status;
	take_asked(&filter, &a);
	status = a.pattern ? open_pattern(s, a.pattern, &pattern) : TS_OK;
	if (!status)
		status = answer_catalogue(s);
	if (!status && a.pattern)
		(void)ts_catalogue_species(s->catalogue, a.pattern, &a.candidates);
	if (!status)
		status = search(s, &filter, pattern, &a);
	if (!status && !a.count && a.pattern) {
		a.named = session_species(s, a.pattern, &a.candidates);
		if (a.named)
			status = search(s, &filter, pattern, &a);
	}
	ts_pattern_close(pattern);
	if (a.count)
		a.candidates = (struct ts_candidates){0};
	if (!status)
		status = summarise(s, &a);
	if (status)
		return status;
	answer_with(s, &a);
	return a.count ? TS_OK : TS_NO;
}
