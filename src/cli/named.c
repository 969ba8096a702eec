/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Names of a call and of a plan: one place looks them up, so that no command takes a guess in
 * silence.
 */
#include <string.h>

#include "cli/commands.h"
#include "records/animals.h"
#include "words/names.h"

void session_tell(struct session *s, const char *says)
{
	size_t count = s->taken.count;
	const char **items;

	for (size_t i = 0; says && i < count; i++) {
		if (strcmp(s->taken.items[i], says) == 0)
			return;
	}
	items = says ? ts_arena_array(s->arena, count + 1, sizeof *items) : NULL;
	if (!items)
		return;
	if (count)
		memcpy(items, s->taken.items, count * sizeof *items);
	items[count] = says;
	s->taken = (struct ts_texts){items, count + 1};
}

static void tell(struct session *s, const char *name, const struct ts_candidates *c)
{
	size_t count = s->taken.count;
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	ts_say_taken(&text, name, c);
	if (text.len)
		session_tell(s, ts_arena_text(s->arena, ts_text_get(&text), text.len));
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	if (s->taken.count > count && count < 8 * sizeof s->taken_below && c->shared)
		s->taken_below |= 1ul << count;
}

/* "10 neon tetra": of an animal that a call names, how many is not asked. */
static const char *without_count(struct session *s, const char *name)
{
	struct ts_stock_line line;
	struct ts_text unsaid;
	bool read;

	ts_text_open(&unsaid, &s->arena->allocator);
	read = ts_animal_words(s->arena, name, s->today, &line, &unsaid);
	s->arena->failed |= unsaid.failed;
	ts_text_drop(&unsaid);
	return read ? line.species : name;
}

const struct ts_species *session_animal(
	struct session *s, const char *words, struct ts_candidates *ret)
{
	const struct ts_species *found = session_species(s, words, ret);

	return found || ret->row ? found : session_species(s, without_count(s, words), ret);
}

const struct ts_species *session_species(
	struct session *s, const char *name, struct ts_candidates *ret)
{
	const struct ts_species *found = ts_catalogue_species(s->catalogue, name, ret);

	if (found)
		tell(s, name, ret);
	return found;
}
