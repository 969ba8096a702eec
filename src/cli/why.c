/* SPDX-License-Identifier: Apache-2.0 */
/*
 * why: some species in full against the water, in the order of the question: the deciding number,
 * the water, company, room, cautions, sources.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/why.h"
#include "model/shape.h"
#include "words/animal.h"
#include "words/care.h"
#include "words/names.h"
#include "words/sentence.h"
#include "words/unusual.h"

#define NAME_WORDS_MOST 5

/* "neon tetra" without its quotes: how many words make a name, which is said; 0: none do. */
static size_t unquoted(struct session *s, size_t first)
{
	const struct options *o = s->options;
	const char *name = o->arguments[first];

	for (size_t words = 2; words <= NAME_WORDS_MOST && first + words <= o->argument_count;
		words++) {
		struct ts_candidates candidates;

		name = ts_arena_join(s->arena, name, " ", o->arguments[first + words - 1], NULL);
		if (!name || !ts_catalogue_species(s->catalogue, name, &candidates))
			continue;
		ts_text_puts(
			s->error, "a name of several words stands in quotes: \"", name, "\"", NULL);
		return words;
	}
	return 0;
}

enum ts_status why_named(struct session *s, const struct ts_species ***ret)
{
	const struct options *o = s->options;
	const struct ts_species **found =
		ts_arena_array(s->arena, o->argument_count, sizeof *found);
	bool ok = true;

	if (!found)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < o->argument_count; i++) {
		struct ts_candidates candidates;
		size_t words;

		found[i] = session_species(s, o->arguments[i], &candidates);
		if (found[i])
			continue;
		ts_text_put(s->error, s->error->len ? "\n" : "");
		words = unquoted(s, i);
		if (!words)
			ts_say_candidates(s->error, o->arguments[i], &candidates);
		i += words ? words - 1 : 0;
		ok = false;
	}
	*ret = found;
	return ok ? TS_OK : TS_BAD_INPUT;
}

static enum ts_status match_named(struct session *s, struct answer *a)
{
	const struct ts_species **species;
	enum ts_status status = why_named(s, &species);

	if (status)
		return status;
	a->count = s->options->argument_count;
	a->matches = ts_arena_array(s->arena, a->count, sizeof *a->matches);
	if (!a->matches)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < a->count; i++) {
		ts_match_species(species[i], &a->profile, &a->keeping, s->practice, &a->matches[i]);
		a->of[a->matches[i].verdict]++;
	}
	return TS_OK;
}

void why_deciding(struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	const char *nobody_yet = ts_nobody_yet_says(profile);

	if (nobody_yet)
		ts_text_puts(text, "No animal before this water is put right: ", nobody_yet, NULL);
	else if (!isnan(m->copper_borne_mg_l))
		ts_say_copper(text, m, profile);
	else if (profile->poisons.found & (TS_POISON_AMMONIA | TS_POISON_NITRITE))
		ts_text_put(text, "Ammonia or nitrite stands in the water: see below");
	else if (!isnan(m->oxygen_borne_mg_l) && m->verdict == TS_UNSURE)
		ts_say_little_oxygen(text, m, profile);
	else if (!isnan(m->nitrate_borne_mg_l) && m->verdict == TS_UNSURE)
		ts_say_much_nitrate(text, m, profile);
	else if (m->gh_missing)
		ts_text_put(text, "GH is not given, and it decides most");
	else if (m->kh_missing && m->verdict == TS_UNSURE)
		ts_text_put(
			text, "KH is not given, and by GH alone it may be beyond what it bears");
	else if (m->limiting >= 0)
		ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	else
		ts_text_put(text, "Everything that was measured lies in its comfortable range");
}

static void verdict(struct ts_document *doc, struct ts_text *text, const struct ts_match *m,
	const struct ts_profile *profile)
{
	static const char *const says[TS_VERDICT__COUNT] = {
		"this water suits it", "it tolerates this water", "unsure", "not in this water"};
	const char *first;

	say_name(text, m->species);
	ts_text_puts(text, ": ", says[m->verdict], NULL);
	if (m->own_temperature && m->verdict <= TS_TOLERATES) {
		const struct ts_parameter_fit *f = &m->at[TS_TEMPERATURE];

		ts_text_put(text, ", at its own temperature");
		if (!isnan(f->tolerated.low)) {
			ts_text_put(text, " (");
			ts_say_range(
				text, isnan(f->preferred.low) ? &f->tolerated : &f->preferred, 1);
			ts_text_put(text, " C)");
		}
	}
	if (m->verdict <= TS_TOLERATES && m->species->cautions & 1u << TS_CAUTION_NO_HOME_SUITS)
		ts_text_put(text, ", a home does not");
	first = ts_doc_take(doc, text);
	why_deciding(text, m, profile);
	ts_doc_verdict(doc, first, ts_doc_take(doc, text));
}

static void parameters(struct ts_document *doc, struct ts_text *text, const struct ts_match *m,
	const struct ts_profile *profile)
{
	ts_doc_heading(doc, 1, "The water");
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_parameter_fit *f = &m->at[p];
		struct ts_node *entry;

		if (p == TS_SALINITY && f->uncomfortable_by == 0)
			continue;
		ts_say_parameter(text, (enum ts_parameter)p, f);
		entry = ts_doc_entry(doc, ts_doc_take(doc, text));
		if (entry)
			entry->hue = say_hue(p);
		ts_text_put(text, "tolerated ");
		ts_say_range(text, &f->tolerated, 1);
		ts_text_puts(text, " (", f->source[0], f->variant ? ", " : "",
			f->variant ? f->variant : "", ")", NULL);
		ts_doc_line(doc, entry, ts_doc_take(doc, text), NULL);
		say_bar(doc, entry, m, profile, p);
	}
}

static void cautions(struct ts_document *doc, struct ts_node *facts, struct ts_text *text,
	const struct ts_species *s)
{
	ts_say_cautions(text, s, (TS_CAUTIONS_ALL | TS_CAUTIONS_TANK) & ~TS_CAUTIONS_SECOND_LINE);
	if (text->len)
		ts_doc_line(doc, facts, "To know", ts_doc_take(doc, text), NULL);
	for (size_t i = 0; i < s->listed.count; i++) {
		ts_text_puts(text, s->listed.items[i], ": ask your authority before anything else",
			NULL);
		ts_doc_line(doc, facts, "Listed under", ts_doc_take(doc, text), NULL);
	}
	if (s->disputed)
		ts_doc_line(doc, facts, "Disputed", s->disputed, NULL);
}

static void one(struct ts_document *doc, struct ts_text *text, const struct ts_match *m,
	const struct answer *a)
{
	const struct ts_species *s = m->species;
	struct ts_node *facts;

	verdict(doc, text, m, &a->profile);
	ts_say_cautions(text, s, TS_CAUTIONS_SECOND_LINE);
	if (text->len)
		ts_doc_caution(doc, ts_doc_take(doc, text));
	parameters(doc, text, m, &a->profile);
	facts = ts_doc_facts(doc, 1);
	ts_doc_line(doc, facts, "Comes from", ts_words_home_water_said[s->home_water], NULL);
	ts_text_put(text, "settled from ");
	ts_text_number_short(text, s->group.least, 0);
	ts_text_put(text, ", comfortable from ");
	ts_text_number_short(text, s->group.comfortable, 0);
	ts_text_put(text, s->group.pair ? ", or a pair by itself" : "");
	ts_doc_line(doc, facts, "Company", ts_doc_take(doc, text), NULL);
	ts_say_temper(text, s);
	ts_doc_line(doc, facts, "Temper", ts_doc_take(doc, text), NULL);
	ts_say_hunts(text, s);
	ts_doc_line(doc, facts, "Eats", ts_doc_take(doc, text), NULL);
	ts_say_feeding(text, s);
	ts_doc_line(doc, facts, "Food", ts_doc_take(doc, text), NULL);
	ts_say_lives(text, s);
	ts_doc_line(doc, facts, "Lives", ts_doc_take(doc, text), NULL);
	say_room(text, s);
	ts_text_put(text, " long or more");
	say_too_short(text, a, s);
	ts_doc_line(doc, facts, "Room", ts_doc_take(doc, text), NULL);
	cautions(doc, facts, text, s);
	for (size_t i = 0; i < s->sources.count; i++)
		ts_text_puts(text, i ? ", " : "", s->sources.items[i], NULL);
	ts_text_put(text, s->sources.count ? "; the rest common practice or memory, as marked"
					   : "no publication; common practice or memory");
	ts_doc_line(doc, facts, "Sources", ts_doc_take(doc, text), NULL);
}

/* Whether some animal here is held up by pH and by nothing else. */
static bool ph_alone(const struct answer *a)
{
	for (size_t i = 0; i < a->count; i++) {
		if (a->matches[i].limiting == TS_PH)
			return true;
	}
	return false;
}

static void write_answer(struct session *s, const struct answer *a)
{
	struct ts_document doc;
	struct ts_text text;

	ts_doc_open(&doc, s->arena, "Species against this water");
	doc.drawn = s->options->format == FORMAT_HTML;
	ts_text_open(&text, &s->arena->allocator);
	say_sheet(&doc, a->water.name, &a->profile);
	for (size_t i = 0; i < a->count; i++)
		one(&doc, &text, &a->matches[i], a);
	say_water(&doc, a, s->options);
	say_overlays(&doc, s->catalogue);
	say_notes(&doc, a);
	ts_doc_see(&doc, ph_alone(a) ? ts_guide_alone : ts_guide_suits);
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_write(s, &doc);
}

enum ts_status command_why(struct session *s)
{
	struct answer a;
	enum ts_status status = TS_BAD_INPUT;

	if (!s->options->argument_count) {
		ts_text_put(
			s->error, "why needs a species; for example tapshoal why guppy --GH 14");
		return status;
	}
	if (s->options->waters.count > 1 || s->options->batch_file)
		return why_waters(s);
	status = answer_open(s, &a);
	if (status)
		return status;
	status = match_named(s, &a);
	if (status)
		return status;
	if (s->options->format == FORMAT_JSON)
		matched_json(s, &a, "why");
	else if (s->options->format == FORMAT_CSV)
		matched_csv(s, &a);
	else
		write_answer(s, &a);
	return a.of[TS_SUITS] + a.of[TS_TOLERATES] ? TS_OK : TS_NO;
}
