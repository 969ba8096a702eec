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
#include "words/waterline.h"

static enum ts_hue hue_of(int parameter)
{
	static const enum ts_hue of[TS_PARAMETER__COUNT] = {[TS_GH] = TS_HUE_GH,
		[TS_KH] = TS_HUE_KH,
		[TS_PH] = TS_HUE_PH,
		[TS_TEMPERATURE] = TS_HUE_TEMPERATURE};

	return parameter < 0 ? TS_HUE_NONE : of[parameter];
}

static void say_bar(struct ts_document *doc, struct ts_node *node, const struct ts_match *m,
	const struct ts_profile *profile, int parameter)
{
	const struct ts_parameter_fit *f = &m->at[parameter];
	const struct ts_span *span = &profile->at[parameter];
	struct ts_bar bar = {.label = ts_parameter_rows[parameter].label,
		.hue = hue_of(parameter),
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
	ts_say_water_line(&text, &a->profile);
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
