/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Matches for programs that are no ranking: why's.
 */
#include "base/arena.h"
#include "cli/commands.h"
#include "cli/results.h"
#include "report/csv.h"
#include "report/rank_result.h"
#include "words/sentence.h"

struct ts_parameter_result *result_parameters(
	struct ts_arena *arena, const struct answer *a, const struct ts_match *m, size_t *ret_count)
{
	return ts_answer_parameters(arena, m, &a->profile, ret_count);
}

const char *result_id(struct ts_arena *arena, const char *file)
{
	return ts_answer_id(arena, file);
}

const char *result_common(const struct ts_species *species)
{
	return ts_answer_common(species);
}

const char *result_limiting(const struct ts_match *match)
{
	return match->limiting < 0 ? NULL : ts_parameter_rows[match->limiting].key;
}

static struct ts_water_asked_result water_of(struct ts_arena *arena, const struct answer *a)
{
	return ts_answer_water(arena, a->water.name, a->kept_age_days, &a->profile);
}

struct ts_water_asked_result *result_water(struct ts_arena *arena, const struct answer *a)
{
	struct ts_water_asked_result *row = ts_arena_take(arena, sizeof *row);

	if (row)
		*row = water_of(arena, a);
	return row;
}

static struct ts_match_result *rows_of(struct session *s, const struct answer *a)
{
	struct ts_match_result *rows =
		ts_arena_array(s->arena, a->count ? a->count : 1, sizeof *rows);
	struct ts_asking asking = {.arena = s->arena, .practice = s->practice, .today = s->today};

	for (size_t i = 0; rows && i < a->count; i++) {
		ts_answer_match(&asking, &a->matches[i], &a->profile, &rows[i]);
		rows[i].no_home = ts_answer_no_home(&asking, a->matches[i].species);
	}
	return rows;
}

void matched_json(struct session *s, const struct answer *a, const char *command)
{
	size_t most = a->count ? a->count : 1;
	struct ts_match_result *rows = rows_of(s, a);
	struct ts_matched_result r = {.water = water_of(s->arena, a),
		.ranked = ts_arena_array(s->arena, most, sizeof *r.ranked),
		.excluded = ts_arena_array(s->arena, most, sizeof *r.excluded),
		.near_misses = ts_arena_array(s->arena, most, sizeof *r.near_misses)};

	if (s->arena->failed)
		return;
	for (size_t i = 0; i < a->count; i++) {
		if (a->matches[i].verdict == TS_EXCLUDED)
			r.excluded[r.excluded_count++] = rows[i];
		else
			r.ranked[r.ranked_count++] = rows[i];
		if (ts_match_near_miss(&a->matches[i]) >= 0)
			r.near_misses[r.near_miss_count++] = rows[i];
	}
	if (!s->arena->failed)
		session_json(s, command, &ts_result_matched, &r);
}

void matched_csv(struct session *s, const struct answer *a)
{
	struct ts_match_result *rows = rows_of(s, a);

	if (rows && !s->arena->failed)
		session_csv(s, &ts_result_match, rows, a->count);
}
