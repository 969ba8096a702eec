/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The pieces that several answers are made of, as nodes of a document. Sentences come from words/.
 */
#include <math.h>
#include <string.h>

#include "cli/commands.h"
#include "model/shape.h"
#include "words/names.h"
#include "words/sentence.h"
#include "words/unusual.h"

/* Doubt that is wider than an ordinary kit's is shown, like a range that is lived through. */
static bool wide(const struct ts_span *s, enum ts_parameter p)
{
	static const double ordinary[TS_PARAMETER__COUNT] = {2, 2, 1.1, 1.1, 0.5};

	return s->exposure || s->high - s->low > ordinary[p];
}

void say_span(struct ts_text *out, const struct ts_span *s, enum ts_parameter p)
{
	int decimals = ts_parameter_rows[p].decimals;

	if (wide(s, p)) {
		ts_text_number_short(out, s->low, decimals);
		ts_text_put(out, "..");
		ts_text_number_short(out, s->high, decimals);
		return;
	}
	ts_text_number_short(out, s->value, decimals);
}

/* "6.7, in a tank 7.9"; "7.9, by KH" where none was read. */
static void put_computed_ph(struct ts_text *text, const struct ts_profile *p)
{
	if (!isnan(p->ph_read)) {
		ts_text_number_short(text, p->ph_read, 1);
		ts_text_put(text, ", in a tank ");
	}
	ts_text_number(text, p->ph_tank, 1);
	ts_text_put(text, isnan(p->ph_read) ? " by KH" : "");
}

void say_water_line(struct ts_text *text, const struct ts_profile *profile)
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
			say_span(text, s, order[i]);
		else
			ts_text_put(text, tank ? "temperature not given" : "not given");
		if (tank && s->given)
			ts_text_put(text, " C");
	}
}

void say_water_fact(
	struct ts_document *doc, struct ts_node *facts, const char *label, const struct answer *a)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	say_water_line(&text, &a->profile);
	ts_doc_line(doc, facts, label, ts_doc_take(doc, &text), NULL);
	ts_text_drop(&text);
}

void say_animals_fact(struct ts_document *doc, struct ts_node *facts, const struct options *o)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	ts_text_puts(&text, o->keeping.wild ? "wild-caught" : "farm-bred", ", ",
		o->keeping.breeding ? "for breeding" : "for display", NULL);
	ts_doc_line(doc, facts, "Animals", ts_doc_take(doc, &text), NULL);
	ts_text_drop(&text);
}

void say_water(struct ts_document *doc, const struct answer *a, const struct options *o)
{
	struct ts_node *facts;
	struct ts_text text;

	ts_doc_medium(doc, TS_OFF_PAPER); /* which leads with it, see sheet.c */
	facts = ts_doc_facts(doc, 0);
	ts_doc_medium(doc, TS_EVERYWHERE);

	ts_text_open(&text, &doc->arena->allocator);
	if (a->water.name)
		ts_text_puts(&text, a->water.name, ": ", NULL);
	say_water_line(&text, &a->profile);
	ts_doc_line(doc, facts, "Water", ts_doc_take(doc, &text), NULL);
	ts_text_drop(&text);
	say_animals_fact(doc, facts, o);
}

static void note(struct ts_document *doc, struct ts_text *text)
{
	if (text->len)
		ts_doc_paragraph(doc, ts_doc_take(doc, text));
}

void say_notes(struct ts_document *doc, const struct answer *a)
{
	const struct ts_profile *p = &a->profile;
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	for (unsigned bit = 1; bit <= TS_POISON__ALL; bit <<= 1) {
		if (p->poisons.found & bit)
			ts_say_poison(&text, bit, &p->poisons);
		note(doc, &text);
	}
	for (unsigned bit = 1; bit <= TS_UNUSUAL__ALL; bit <<= 1) {
		if (p->unusual & bit)
			ts_say_unusual(&text, bit, p);
		note(doc, &text);
	}
	ts_say_gas(&text, p);
	note(doc, &text);
	ts_say_kh_hint(&text, p);
	note(doc, &text);
	ts_say_ordinary(&text, p);
	note(doc, &text);
	if (!p->at[TS_KH].given)
		ts_doc_paragraph(doc, "KH is missing: how steady the pH will be cannot be said.");
	if (!p->at[TS_TEMPERATURE].given)
		ts_doc_paragraph(doc, ts_own_temperature_says);
	ts_text_puts(&text, "Measure next: ", ts_next_to_measure(p), NULL);
	note(doc, &text);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}

void say_too_short(struct ts_text *out, const struct answer *a, const struct ts_species *species)
{
	if (!(a->tank.length_cm > 0) || ts_match_tank_length_cm(species) <= a->tank.length_cm)
		return;
	ts_text_put(out, "; your ");
	ts_text_number_short(out, a->tank.length_cm, 0);
	ts_text_put(out, " cm are too short");
}

enum ts_hue say_hue(int parameter)
{
	static const enum ts_hue of[TS_PARAMETER__COUNT] = {[TS_GH] = TS_HUE_GH,
		[TS_KH] = TS_HUE_KH,
		[TS_PH] = TS_HUE_PH,
		[TS_TEMPERATURE] = TS_HUE_TEMPERATURE};

	return parameter < 0 ? TS_HUE_NONE : of[parameter];
}

void say_bar(struct ts_document *doc, struct ts_node *node, const struct ts_match *m,
	const struct ts_profile *profile, int parameter)
{
	const struct ts_parameter_fit *f = &m->at[parameter];
	const struct ts_span *span = &profile->at[parameter];
	struct ts_bar bar = {.label = ts_parameter_rows[parameter].label,
		.hue = say_hue(parameter),
		.tolerated = f->tolerated,
		.preferred = f->preferred,
		.reading = {(double)NAN, (double)NAN},
		.miss = f->uncomfortable_by};

	if (!doc->drawn)
		return;
	if (span->given)
		bar.reading = (struct ts_range){span->low, span->high};
	ts_doc_bar(doc, node, &bar);
}

void say_bars(struct ts_document *doc, struct ts_node *node, const struct ts_match *m,
	const struct ts_profile *profile)
{
	for (int p = TS_GH; p <= TS_TEMPERATURE; p++)
		say_bar(doc, node, m, profile, p);
}

void say_tags(struct ts_document *doc, struct ts_node *node, const struct ts_species *species,
	const char *verdict)
{
	if (!doc->drawn)
		return;
	if (verdict)
		ts_doc_tag(doc, node, "verdict", verdict);
	ts_doc_tag(doc, node, "family", species->family);
	ts_doc_tag(doc, node, "swims", ts_words_swims[species->swims]);
}

void say_name(struct ts_text *out, const struct ts_species *s)
{
	const char *common = s->common.en.count ? s->common.en.items[0] : NULL;

	ts_text_put(out, common ? common : s->species);
	if (common)
		ts_text_puts(out, " (", s->species, NULL);
	if (s->form)
		ts_text_puts(out, ", ", s->form, NULL);
	ts_text_put(out, common ? ")" : "");
}

void say_room(struct ts_text *out, const struct ts_species *s)
{
	ts_text_number_short(out, s->adult_length_cm, 1);
	ts_text_put(out, " cm, ");
	ts_text_put(out, "from ");
	ts_text_number_short(out, s->group.least, 0);
	ts_text_put(out, ", tank ");
	ts_text_number_short(out, ts_match_tank_length_cm(s), 0);
	ts_text_put(out, " cm");
}

void say_cautions(struct ts_text *out, const struct ts_species *s)
{
	bool any = false;

	for (unsigned i = 0; ts_words_cautions[i]; i++) {
		if (!(s->cautions & (1u << i)))
			continue;
		ts_text_puts(out, any ? ", " : "", ts_words_cautions[i], NULL);
		any = true;
	}
}

void say_overlays(struct ts_document *doc, const struct ts_catalogue *catalogue)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	ts_say_overlays(&text, catalogue);
	if (text.len)
		ts_doc_paragraph(doc, ts_doc_take(doc, &text));
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}

static const char *kept(struct session *s, struct ts_text *text)
{
	const char *said = text->len ? ts_arena_text(s->arena, ts_text_get(text), text->len) : NULL;

	s->arena->failed |= text->failed;
	ts_text_drop(text);
	return said;
}

const char *say_water_kept(struct session *s, const struct answer *a)
{
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	if (a->water.name)
		ts_text_puts(&text, a->water.name, ": ", NULL);
	say_water_line(&text, &a->profile);
	return kept(s, &text);
}

const char *say_animals_kept(struct session *s)
{
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	ts_text_puts(&text, s->options->keeping.wild ? "wild-caught" : "farm-bred", ", ",
		s->options->keeping.breeding ? "for breeding" : "for display", NULL);
	return kept(s, &text);
}

const char *say_overlays_kept(struct session *s)
{
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	ts_say_overlays(&text, s->catalogue);
	return kept(s, &text);
}
