/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The one place that calls PCRE2 here. The steps of a match are limited, so that no line can make
 * a pattern expensive.
 */
#define PCRE2_CODE_UNIT_WIDTH 8
#include "intake/patterns.h"

#include <pcre2.h>
#include <string.h>

#include "base/arena.h"

/* Steps of one match; our patterns need a few dozen. */
#define STEPS_MOST 2000
#define GROUPS_MOST 8
#define PATTERN_MOST 6144

struct ts_patterns {
	struct ts_allocator allocator;
	pcre2_general_context *general;
	pcre2_compile_context *compile;
	pcre2_match_context *limits;
	pcre2_match_data *match;
	pcre2_code **codes;
	size_t count, unsound;
	bool no_memory;
};

static void *take(size_t size, void *state)
{
	struct ts_patterns *set = state;
	void *taken = set->allocator.resize(set->allocator.state, NULL, size ? size : 1);

	set->no_memory |= !taken;
	return taken;
}

static void give_back(void *block, void *state)
{
	struct ts_patterns *set = state;

	if (block)
		set->allocator.resize(set->allocator.state, block, 0);
}

struct ts_patterns *ts_patterns_open(const struct ts_allocator *allocator, size_t count)
{
	struct ts_allocator mine = ts_allocator_or_default(allocator);
	struct ts_patterns *set = mine.resize(mine.state, NULL, sizeof *set);

	if (!set)
		return NULL;
	memset(set, 0, sizeof *set);
	set->allocator = mine;
	set->count = count;
	set->codes = take(count * sizeof(pcre2_code *), set);
	if (set->codes)
		memset(set->codes, 0, count * sizeof(pcre2_code *));
	set->general = pcre2_general_context_create(take, give_back, set);
	if (set->general) {
		set->compile = pcre2_compile_context_create(set->general);
		set->limits = pcre2_match_context_create(set->general);
		set->match = pcre2_match_data_create(GROUPS_MOST, set->general);
	}
	if (!set->codes || !set->compile || !set->limits || !set->match) {
		ts_patterns_close(set);
		return NULL;
	}
	pcre2_set_match_limit(set->limits, STEPS_MOST);
	return set;
}

void ts_patterns_close(struct ts_patterns *set)
{
	struct ts_allocator mine;

	if (!set)
		return;
	mine = set->allocator;
	for (size_t i = 0; set->codes && i < set->count; i++)
		pcre2_code_free(set->codes[i]);
	pcre2_match_data_free(set->match);
	pcre2_match_context_free(set->limits);
	pcre2_compile_context_free(set->compile);
	pcre2_general_context_free(set->general);
	give_back(set->codes, set);
	mine.resize(mine.state, set, 0);
}

static size_t append(char *out, size_t at, const char *string)
{
	while (*string)
		out[at++] = *string++;
	out[at] = '\0';
	return at;
}

bool ts_patterns_add(struct ts_patterns *set, size_t index, const char *head, const char *pattern,
	const char *tail)
{
	char whole[PATTERN_MOST];
	int error = 0;
	PCRE2_SIZE at;

	if (strlen(head) + strlen(pattern) + strlen(tail) >= sizeof whole) {
		set->unsound++;
		return true;
	}
	append(whole, append(whole, append(whole, 0, head), pattern), tail);
	set->codes[index] = pcre2_compile((PCRE2_SPTR)whole, PCRE2_ZERO_TERMINATED,
		PCRE2_ANCHORED | PCRE2_UTF | PCRE2_NO_AUTO_POSSESS, &error, &at, set->compile);
	if (!set->codes[index])
		set->unsound++;
	return set->codes[index] || error != PCRE2_ERROR_HEAP_FAILED;
}

size_t ts_patterns_unsound(const struct ts_patterns *set)
{
	return set->unsound;
}

bool ts_patterns_no_memory(const struct ts_patterns *set)
{
	return set->no_memory;
}

size_t ts_patterns_match(struct ts_patterns *set, size_t index, const char *text, size_t len,
	size_t at, const size_t **ret_spans)
{
	int groups;

	if (!set->codes[index])
		return 0;
	groups = pcre2_match(
		set->codes[index], (PCRE2_SPTR)text, len, at, 0, set->match, set->limits);
	if (groups < 1)
		return 0;
	*ret_spans = pcre2_get_ovector_pointer(set->match);
	return (size_t)groups;
}
