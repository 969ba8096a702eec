/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The document of why over several waters: who of a club can keep what. A table of species and
 * waters where it fits the screen, else a list; then where each species fares worst.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/why.h"
#include "report/shown.h"
#include "words/care.h"
#include "words/sentence.h"
#include "words/unusual.h"

/* A table as wide as a terminal everywhere, and its columns as wide as the screen leaves them. */
#define TABLE_WIDTH 80
#define COLUMN_WIDTH (TABLE_WIDTH / 3)
/* Names that the verdict lists. */
#define NAMED_MOST 3

struct work {
	struct session *s;
	const struct why_waters *w;
	struct ts_document doc;
	struct ts_text text;
};

static void put_count(struct work *k, size_t count)
{
	ts_text_number(&k->text, (double)count, 0);
}

static const char *take(struct work *k)
{
	return ts_doc_take(&k->doc, &k->text);
}

static const char *common(const struct ts_species *s)
{
	return s->common.en.count ? s->common.en.items[0] : s->species;
}

/* What people call it; with all its names where another here is called the same. */
static const char *called(struct work *k, size_t species)
{
	const struct ts_species *s = k->w->species[species];
	struct ts_text text;
	const char *name = common(s);

	for (size_t i = 0; i < k->w->species_count; i++) {
		if (k->w->species[i] == s || strcmp(common(k->w->species[i]), name) != 0)
			continue;
		ts_text_open(&text, &k->doc.arena->allocator);
		say_name(&text, s);
		name = ts_doc_take(&k->doc, &text);
		ts_text_drop(&text);
		break;
	}
	return name;
}

static void put_homeless(struct work *k, size_t homeless)
{
	size_t named = 0;

	for (size_t i = 0; i < k->w->species_count && homeless <= NAMED_MOST; i++) {
		if (why_homes(k->w, i))
			continue;
		ts_text_puts(&k->text, named++ ? ", " : "", called(k, i), NULL);
	}
	if (homeless > NAMED_MOST) {
		put_count(k, homeless);
		ts_text_put(&k->text, " species");
	}
}

static const char *verdict_says(struct work *k)
{
	const struct why_waters *w = k->w;
	size_t homeless = 0;

	for (size_t i = 0; i < w->species_count; i++)
		homeless += why_homes(w, i) == 0;
	if (w->species_count == 1) {
		ts_text_puts(&k->text, called(k, 0), ": ", NULL);
		put_count(k, why_homes(w, 0));
		ts_text_put(&k->text, " of ");
		put_count(k, w->water_count);
		ts_text_put(&k->text, " waters will do");
	} else if (homeless == 0) {
		ts_text_put(&k->text, "Each of the ");
		put_count(k, w->species_count);
		ts_text_put(&k->text, " species has a water here that will do");
	} else if (homeless == w->species_count) {
		ts_text_put(&k->text, "None of these waters will do for any of the ");
		put_count(k, w->species_count);
		ts_text_put(&k->text, " species");
	} else {
		ts_text_put(&k->text, "No water here will do for ");
		put_homeless(k, homeless);
	}
	return take(k);
}

/* "soft tap, summer: excluded; GH 3, comfortable from 8: 5 too soft" */
static void put_worst(struct work *k, size_t species)
{
	const struct why_worst *worst = &k->w->worst[species];

	ts_text_puts(&k->text, k->w->waters[worst->water].label, worst->season ? ", " : "",
		worst->season ? worst->season : "", ": ", ts_verdict_words[worst->match.verdict],
		NULL);
	if (worst->match.verdict == TS_SUITS)
		return;
	ts_text_put(&k->text, "; ");
	why_deciding(&k->text, &worst->match, worst->profile);
}

static void say_verdict(struct work *k)
{
	const char *says = verdict_says(k);
	size_t hardest = 0;

	for (size_t i = 1; i < k->w->species_count; i++) {
		if (why_compare(&k->w->worst[i].match, &k->w->worst[hardest].match) > 0)
			hardest = i;
	}
	ts_text_puts(&k->text, "Worst of all: ", called(k, hardest), " in ", NULL);
	put_worst(k, hardest);
	ts_doc_verdict(&k->doc, says, take(k));
}

/* "tolerates: GH 6 too high": a cell is short, the full sentence stands in the list. */
static const char *cell(struct work *k, size_t species, size_t water)
{
	const struct ts_match *m = why_cell(k->w, species, water);
	const struct ts_profile *p = &k->w->waters[water].answer.profile;
	const struct ts_parameter_fit *f = m->limiting < 0 ? NULL : &m->at[m->limiting];
	double miss = !f ? 0 : isnan(f->preferred.low) ? f->outside_by : f->uncomfortable_by;

	ts_text_put(&k->text, ts_verdict_words[m->verdict]);
	if (m->verdict == TS_SUITS)
		return take(k);
	if (!isnan(m->copper_borne_mg_l)) {
		ts_text_put(&k->text, ": copper");
	} else if (p->poisons.found & (TS_POISON_AMMONIA | TS_POISON_NITRITE)) {
		ts_text_put(&k->text, ": ammonia, nitrite");
	} else if (m->verdict == TS_UNSURE && !isnan(m->oxygen_borne_mg_l)) {
		ts_text_put(&k->text, ": oxygen");
	} else if (p->unusual & TS_UNUSUAL__NOBODY_YET) {
		ts_text_puts(&k->text, ": ", ts_nobody_yet_word(p), NULL);
	} else if (!isnan(m->nitrate_borne_mg_l)) {
		ts_text_put(&k->text, ": nitrate");
	} else if (m->gh_missing) {
		ts_text_put(&k->text, ": GH not given");
	} else if (m->kh_missing) {
		ts_text_put(&k->text, ": KH not given");
	} else if (f && f->known && miss != 0) {
		ts_text_puts(&k->text, ": ",
			m->limiting == TS_TEMPERATURE ? "" : ts_parameter_rows[m->limiting].label,
			m->limiting == TS_TEMPERATURE ? "" : " ", NULL);
		ts_text_number_short(&k->text, fabs(miss), ts_parameter_rows[m->limiting].decimals);
		ts_text_puts(&k->text, m->limiting == TS_TEMPERATURE ? " C" : "",
			miss > 0 ? " too high" : " too low", NULL);
	}
	return take(k);
}

static const char *head(struct work *k, bool of_water, size_t i)
{
	return of_water ? k->w->waters[i].label : called(k, i);
}

static size_t width(const char *text)
{
	return ts_shown_width(text, strlen(text), false);
}

/* One line of the table. */
static void grid_line(struct work *k, bool waters_down, size_t row, const char **ret)
{
	size_t columns = waters_down ? k->w->species_count : k->w->water_count;

	ret[0] = row ? head(k, waters_down, row - 1) : waters_down ? "water" : "species";
	for (size_t i = 0; i < columns; i++)
		ret[i + 1] = !row          ? head(k, !waters_down, i)
			     : waters_down ? cell(k, i, row - 1)
					   : cell(k, row - 1, i);
}

/* Whether a table of this orientation stays within the screen. */
static bool grid_fits(struct work *k, bool waters_down)
{
	size_t rows = waters_down ? k->w->water_count : k->w->species_count;
	size_t columns = 1 + (waters_down ? k->w->species_count : k->w->water_count);
	size_t widths[TS_CELLS_MOST] = {0}, all = 2;
	const char *line[TS_CELLS_MOST];

	if (columns > TS_CELLS_MOST)
		return false;
	for (size_t row = 0; row <= rows; row++) {
		grid_line(k, waters_down, row, line);
		for (size_t i = 0; i < columns; i++)
			widths[i] = width(line[i]) > widths[i] ? width(line[i]) : widths[i];
	}
	for (size_t i = 0; i < columns; i++) {
		if (widths[i] > COLUMN_WIDTH)
			return false;
		all += widths[i] + (i + 1 < columns ? 2 : 0);
	}
	return all <= TABLE_WIDTH;
}

static void say_grid(struct work *k, bool waters_down)
{
	size_t rows = waters_down ? k->w->water_count : k->w->species_count;
	struct ts_node *table = ts_doc_table(&k->doc);

	for (size_t row = 0; row <= rows; row++) {
		const char *c[TS_CELLS_MOST] = {NULL};

		grid_line(k, waters_down, row, c);
		ts_doc_line(&k->doc, table, c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7], c[8],
			c[9], NULL);
	}
}

static void say_list(struct work *k)
{
	const struct why_waters *w = k->w;

	for (size_t i = 0; i < w->species_count; i++) {
		struct ts_node *entry;

		say_name(&k->text, w->species[i]);
		ts_text_put(&k->text, ": ");
		put_count(k, why_homes(w, i));
		ts_text_put(&k->text, " of ");
		put_count(k, w->water_count);
		ts_text_put(&k->text, " waters");
		entry = ts_doc_entry(&k->doc, take(k));
		for (size_t n = 0; n < w->water_count; n++) {
			const struct ts_match *m = why_cell(w, i, n);

			ts_text_puts(&k->text, w->waters[n].label, ": ",
				ts_verdict_words[m->verdict], NULL);
			if (m->verdict != TS_SUITS) {
				ts_text_put(&k->text, "; ");
				why_deciding(&k->text, m, &w->waters[n].answer.profile);
			}
			ts_doc_line(&k->doc, entry, take(k), NULL);
		}
	}
}

static void say_worst(struct work *k)
{
	struct ts_node *facts;

	ts_doc_heading(&k->doc, 0, "WHERE EACH FARES WORST");
	facts = ts_doc_facts(&k->doc, 1);
	for (size_t i = 0; i < k->w->species_count; i++) {
		put_worst(k, i);
		ts_doc_line(&k->doc, facts, called(k, i), take(k), NULL);
	}
}

/* What stands in a water before any animal does, and what makes it unlike others. */
static void say_water_notes(struct work *k, const struct why_water *one)
{
	const struct ts_profile *p = &one->answer.profile;

	for (unsigned bit = 1; bit <= TS_POISON__ALL; bit <<= 1) {
		if (!(p->poisons.found & bit))
			continue;
		ts_text_puts(&k->text, one->label, ": ", NULL);
		ts_say_poison(&k->text, bit, &p->poisons);
		ts_doc_paragraph(&k->doc, take(k));
	}
	for (unsigned bit = 1; bit <= TS_UNUSUAL__ALL; bit <<= 1) {
		if (!(p->unusual & bit))
			continue;
		ts_text_puts(&k->text, one->label, ": ", NULL);
		ts_say_unusual(&k->text, bit, p);
		ts_doc_paragraph(&k->doc, take(k));
	}
}

static void say_all_waters(struct work *k)
{
	struct ts_node *facts;

	ts_doc_heading(&k->doc, 0, "THE WATERS");
	facts = ts_doc_facts(&k->doc, 1);
	for (size_t i = 0; i < k->w->water_count; i++)
		say_water_fact(&k->doc, facts, k->w->waters[i].label, &k->w->waters[i].answer);
	say_animals_fact(&k->doc, facts, k->s->options);
}

void why_waters_write(struct session *s, const struct why_waters *w)
{
	struct work k = {.s = s, .w = w};
	bool down = w->water_count > w->species_count;

	ts_doc_open(&k.doc, s->arena, "Species against several waters");
	ts_text_open(&k.text, &s->arena->allocator);
	say_verdict(&k);
	if (grid_fits(&k, down))
		say_grid(&k, down);
	else if (grid_fits(&k, !down))
		say_grid(&k, !down);
	else
		say_list(&k);
	say_worst(&k);
	say_all_waters(&k);
	say_overlays(&k.doc, s->catalogue);
	for (size_t i = 0; i < w->water_count; i++)
		say_water_notes(&k, &w->waters[i]);
	if (!w->waters[0].answer.profile.at[TS_TEMPERATURE].given)
		ts_doc_paragraph(&k.doc, ts_own_temperature_says);
	ts_doc_paragraph(&k.doc, "One species in full: tapshoal why SPECIES -w FILE.");
	ts_doc_see(&k.doc, ts_guide_suits);
	s->arena->failed |= k.text.failed;
	ts_text_drop(&k.text);
	session_write(s, &k.doc);
}
