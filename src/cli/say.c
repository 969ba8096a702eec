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
