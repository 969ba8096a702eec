/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Names of a call and of a plan: one place looks them up, so that no command takes a guess in
 * silence.
 */
#include <string.h>

#include "cli/commands.h"
#include "words/names.h"

static void tell(struct session *s, const char *name, const struct ts_candidates *c)
{
	size_t count = s->taken.count;
	struct ts_text text;
	const char **items;
	const char *says;

	ts_text_open(&text, &s->arena->allocator);
	ts_say_taken(&text, name, c);
	says = text.len ? ts_arena_text(s->arena, ts_text_get(&text), text.len) : NULL;
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
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
	if (count < 8 * sizeof s->taken_below && c->shared)
		s->taken_below |= 1ul << count;
	s->taken = (struct ts_texts){items, count + 1};
}

const struct ts_species *session_species(
	struct session *s, const char *name, struct ts_candidates *ret)
{
	const struct ts_species *found = ts_catalogue_species(s->catalogue, name, ret);

	if (found)
		tell(s, name, ret);
	return found;
}
