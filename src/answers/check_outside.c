/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Animals beside which this work knows nothing, as an axolotl: that they are no company is said
 * first, with the reason that their row has, and the rest is judged by itself.
 */
#include "answers/check_parts.h"

#include <string.h>

#include "base/arena.h"

static bool is_outside(const struct ts_check_question *q, size_t line)
{
	return !q->species[line] && q->candidates[line].how == TS_NAME_OUTSIDE;
}

/* A plant harms nobody. */
static bool is_harmless(const struct ts_check_question *q, size_t line)
{
	return q->candidates[line].says && strcmp(q->candidates[line].says, "is a plant") == 0;
}

size_t ts_check_outside_count(const struct ts_check_question *q)
{
	size_t count = 0;

	for (size_t i = 0; i < q->plan->stock_count; i++)
		count += is_outside(q, i);
	return count;
}

/* The plan without them; false: no memory. */
static bool without(const struct ts_check_question *q, struct ts_arena *arena,
	struct ts_plan *ret_plan, struct ts_check_question *ret)
{
	size_t most = q->plan->stock_count + 1, count = 0;
	struct ts_stock_line *stock = ts_arena_array(arena, most, sizeof *stock);
	const struct ts_species **species = ts_arena_array(arena, most, sizeof *species);
	struct ts_candidates *candidates = ts_arena_array(arena, most, sizeof *candidates);

	if (!stock || !species || !candidates)
		return false;
	for (size_t i = 0; i < q->plan->stock_count; i++) {
		if (is_outside(q, i))
			continue;
		stock[count] = q->plan->stock[i];
		species[count] = q->species[i];
		candidates[count++] = q->candidates[i];
	}
	*ret_plan = *q->plan;
	ret_plan->stock = stock;
	ret_plan->stock_count = count;
	*ret = *q;
	ret->plan = ret_plan;
	ret->species = species;
	ret->candidates = candidates;
	return true;
}

static const char *article(const char *name)
{
	return strchr("aeiouAEIOU", *name) ? "an " : "a ";
}

/* "Not with an axolotl: 'axolotl' is an amphibian of cold water that eats fish." */
static const char *says_of(const struct ts_check_question *q, const struct ts_asking *asking)
{
	struct ts_text text;
	const char *says;

	ts_text_open(&text, &asking->arena->allocator);
	for (size_t i = 0; i < q->plan->stock_count; i++) {
		if (is_outside(q, i) && !is_harmless(q, i))
			ts_text_puts(&text, text.len ? "; " : "Not together: ",
				article(q->plan->stock[i].species), q->plan->stock[i].species, " ",
				q->candidates[i].says, NULL);
	}
	if (text.len)
		ts_text_put(&text, " (outside this work).");
	says = text.len ? ts_arena_text(asking->arena, ts_text_get(&text), text.len) : NULL;
	asking->arena->failed |= text.failed;
	ts_text_drop(&text);
	return says;
}

/* A sentence of its own begins with a capital. */
static const char *capital(const struct ts_asking *asking, const char *says)
{
	char *own = says ? ts_arena_text(asking->arena, says, strlen(says)) : NULL;

	if (own && *own >= 'a' && *own <= 'z' && strncmp(own, "pH", 2) != 0)
		*own = (char)(*own - 'a' + 'A');
	return own ? own : "";
}

enum ts_status ts_check_outside(const struct ts_check_question *question,
	const struct ts_asking *asking, struct ts_check_result *ret)
{
	struct ts_plan *plan = ts_arena_take(asking->arena, sizeof *plan);
	struct ts_check_question rest;
	struct ts_check_result result;
	const char *says;
	enum ts_status status;

	if (!plan || !without(question, asking->arena, plan, &rest))
		return TS_NO_MEMORY;
	status = ts_answer_check(&rest, asking, &result);
	says = status ? NULL : says_of(question, asking);
	if (status || asking->arena->failed)
		return status ? status : TS_NO_MEMORY;
	if (says && (strcmp(result.kind, ts_check_kind_words[TS_CHECK_DANGER]) == 0 ||
			    strcmp(result.kind, ts_check_kind_words[TS_CHECK_NO]) == 0)) {
		result.not_understood = result.not_understood
						? ts_arena_join(asking->arena, says, " ",
							  result.not_understood, NULL)
						: says;
	} else if (says) {
		result.decides =
			ts_arena_join(asking->arena, "The others by themselves: ", result.headline,
				result.decides ? " " : "", capital(asking, result.decides), NULL);
		result.headline = says;
		result.kind = ts_check_kind_words[TS_CHECK_NO];
		result.verdict = ts_check_verdict_words[TS_PLAN_UNSOUND];
		result.first = NULL;
		result.passes = false;
	}
	if (asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = result;
	return TS_OK;
}
