/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of advice, and its sentences taken into an arena.
 */
#include "report/advice_result.h"

#include "base/arena.h"
#include "words/advice.h"

/* clang-format off */
#define A struct ts_advice_line
static const struct ts_result_field advice_fields[] = {
	TS_R_ROW_TEXT(A, "id", id, "its name, which never changes meaning"),
	TS_R_ROW_WORD(A, "outcome", outcome, ts_outcome_words, "what to do, in a word"),
	TS_R_ROW_WORD(A, "urgency", urgency, ts_urgency_words, "when"),
	TS_R_ROW_TEXT(A, "says", says, "what to do"),
	TS_R_ROW_TEXTS(A, "because", because, "the number that decides"),
	TS_R_ROW_TEXT(A, "source", source, "where the rule comes from"),
};
#undef A
/* clang-format on */
const struct ts_result_shape ts_result_advice =
	TS_R_SHAPE("advice", advice_fields, struct ts_advice_line);

static const char *kept(struct ts_arena *arena, struct ts_text *text)
{
	const char *copy = ts_arena_text(arena, ts_text_get(text), text->len);

	arena->failed |= text->failed;
	ts_text_drop(text);
	ts_text_open(text, &arena->allocator);
	return copy;
}

void ts_advice_line_fill(struct ts_arena *arena, const struct ts_advice *advice,
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
	ts_say_advice(&text, advice, residents);
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
			ts_advice_line_fill(arena, &all[i], state->residents, &lines[wanted++]);
	}
	*ret_lines = lines;
	return wanted;
}
