/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of advice that hold, and their sentences taken into an arena.
 */
#include "answers/advised.h"

#include "base/arena.h"
#include "words/advice.h"

static const char *kept(struct ts_arena *arena, struct ts_text *text)
{
	const char *copy = ts_arena_text(arena, ts_text_get(text), text->len);

	arena->failed |= text->failed;
	ts_text_drop(text);
	ts_text_open(text, &arena->allocator);
	return copy;
}

/* One advice as a line. */
static void fill_line(struct ts_arena *arena, const struct ts_advice *advice,
	const struct ts_match *residents, struct ts_advice_line *ret)
{
	const struct ts_advice_row *row = advice->row;
	const char **because = ts_arena_array(arena, 1, sizeof *because);
	struct ts_text text;

	ts_text_open(&text, &arena->allocator);
	*ret = (struct ts_advice_line){.id = row->id,
		.outcome = ts_outcome_words[row->outcome],
		.urgency = ts_urgency_words[row->urgency],
		.source = row->source};
	ts_say_advice_whole(&text, advice, residents);
	ret->says = kept(arena, &text);
	ts_say_advice_because(&text, advice, residents);
	if (because && text.len) {
		because[0] = kept(arena, &text);
		ret->because = (struct ts_texts){because, 1};
	}
	arena->failed |= text.failed;
	ts_text_drop(&text);
}

size_t ts_advice_lines(struct ts_arena *arena, const struct ts_care_state *state, unsigned groups,
	const struct ts_practice *practice, struct ts_advice_line **ret_lines)
{
	struct ts_advice all[TS_ADVICE_MOST];
	size_t count = ts_advise(state, practice, all), wanted = 0;
	struct ts_advice_line *lines = ts_arena_array(arena, count + 1, sizeof *lines);

	if (!lines)
		return 0;
	for (size_t i = 0; i < count; i++) {
		if (groups >> all[i].row->group & 1)
			fill_line(arena, &all[i], state->residents, &lines[wanted++]);
	}
	*ret_lines = lines;
	return wanted;
}
