/* SPDX-License-Identifier: Apache-2.0 */
/*
 * rank: which animals the water suits, best first. Here the words of the call become the question
 * of answers/rank.h; show/rank.c shows its result.
 */
#include "cli/rank.h"

#include <string.h>

#include "base/arena.h"
#include "cli/batch.h"
#include "cli/results.h"
#include "report/rank_result.h"
#include "show/rank.h"
#include "show/sheet.h"
#include "stock/room.h"
#include "words/names.h"
#include "words/sentence.h"

/* The animals that the words of the call leave. */
static bool narrow(struct session *s, struct ts_asking *ret)
{
	struct ts_filter filter = s->options->traits;
	const struct ts_species **list =
		ts_arena_array(s->arena, s->catalogue->count, sizeof *list);

	if (!list)
		return false;
	filter.family = s->options->family;
	for (size_t i = 0; i < s->catalogue->count; i++) {
		if (ts_filter_passes(&filter, s->catalogue->items[i]))
			list[ret->species_count++] = s->catalogue->items[i];
	}
	ret->species = list;
	return true;
}

/* The tank of the call; `volume` alone gets the sides that are usual. */
static void take_tank(struct session *s, const struct answer *a, struct rank_call *ret)
{
	ret->tank = a->tank;
	if (a->assumed_litres > 0 || s->options->tank_file || s->options->size.length_cm > 0)
		ret->question.tank = &ret->tank;
	ret->question.assumed_litres = a->assumed_litres;
}

enum ts_status rank_call(struct session *s, const struct answer *a, struct rank_call *ret)
{
	struct ts_candidates candidates;

	*ret = (struct rank_call){
		.asking = {.arena = s->arena, .practice = s->practice, .today = s->today},
		.question = {.catalogue_count = s->catalogue->count,
			.overlays_say = say_overlays_kept(s)}};
	take_tank(s, a, ret);
	if (s->options->like) {
		ret->question.like = session_species(s, s->options->like, &candidates);
		if (!ret->question.like) {
			ts_say_candidates(s->error, s->options->like, &candidates);
			return TS_BAD_INPUT;
		}
	}
	return narrow(s, &ret->asking) && !s->arena->failed ? TS_OK : TS_NO_MEMORY;
}

/* Leaves the matches that --only asks for, and with --quiet no reasons. */
static size_t narrow_list(
	const struct session *s, unsigned only, struct ts_match_result *rows, size_t count)
{
	size_t kept = 0;

	for (size_t i = 0; i < count; i++) {
		struct ts_match_result row = rows[i];
		unsigned v = 0;

		while (v < TS_VERDICT__COUNT && row.verdict != ts_verdict_words[v])
			v++;
		if (only && !(only >> v & 1))
			continue;
		if (s->options->quiet) {
			row.parameter_count = row.excluded_by_count = 0;
			row.reasons.count = row.to_know.count = 0;
			row.says = NULL;
		}
		rows[kept++] = row;
	}
	return kept;
}

/* What programs are told of; the counts stay. */
static void narrow_lists(const struct session *s, unsigned only, struct ts_rank_result *r)
{
	r->ranked_count = narrow_list(s, only, r->ranked, r->ranked_count);
	r->too_large_count = narrow_list(s, only, r->too_large, r->too_large_count);
	r->no_home_count = narrow_list(s, only, r->no_home, r->no_home_count);
	r->excluded_count = narrow_list(s, only, r->excluded, r->excluded_count);
	r->near_miss_count = narrow_list(s, only, r->near_misses, r->near_miss_count);
}

bool rank_answer(struct session *s, const struct rank_call *call, const struct answer *a,
	struct ts_rank_result *ret)
{
	struct ts_rank_question question = call->question;
	struct ts_asking asking = call->asking;
	question.water_says = say_water_kept(s, a);
	question.animals_say = say_animals_kept(s);
	asking.arena = s->arena;
	question.water_name = a->water.name;
	question.kept_age_days = a->kept_age_days;
	question.profile = &a->profile;
	question.keeping = &a->keeping;
	return ts_answer_rank(&asking, &question, ret);
}

static void write_answer(struct session *s, const struct answer *a,
	const struct ts_rank_result *result, const struct ts_show_list *wanted)
{
	struct ts_document doc;

	ts_doc_open(&doc, s->arena, "Fish for this water");
	doc.drawn = s->options->format == FORMAT_HTML;
	doc.brief = s->options->format == FORMAT_BRIEF;
	ts_show_sheet(&doc, a->water.name, &a->profile);
	ts_show_rank(&doc, result, wanted);
	session_write(s, &doc);
}

/* Mostly a flag without its dashes, or a value with a blank that stands in no quotes. */
static void refuse_word(struct session *s, const char *word)
{
	const struct ts_field *reading = ts_shape_field_caseless(&ts_shape_reading, word);

	ts_text_puts(s->error, "rank takes no '", word, "'; ", NULL);
	if (reading)
		ts_text_puts(s->error, "write it as a flag, --", reading->key, NULL);
	else
		ts_text_put(s->error,
			"values with a blank stand in quotes (--GH \"14 dH\"); for one "
			"species ask tapshoal why");
}

/* "suits,tolerates" as bits; false with an error. */
static bool take_only(struct session *s, unsigned *ret)
{
	const char *at = s->options->only;

	*ret = 0;
	while (at && *at) {
		size_t len = strcspn(at, ",");
		unsigned v = 0;

		while (v < TS_VERDICT__COUNT && (strlen(ts_verdict_words[v]) != len ||
							memcmp(ts_verdict_words[v], at, len) != 0))
			v++;
		if (v == TS_VERDICT__COUNT) {
			ts_text_puts(s->error, "--only does not take '", at,
				"'; it takes suits, tolerates, unsure, excluded, with commas "
				"between them",
				NULL);
			return false;
		}
		*ret |= 1u << v;
		at += len + (at[len] == ',');
	}
	return true;
}

static void answer_with(struct session *s, const struct answer *a, struct ts_rank_result *r,
	const struct ts_show_list *wanted)
{
	struct ts_match_result *rows;
	size_t count;

	if (s->options->format == FORMAT_JSON || s->options->format == FORMAT_CSV)
		narrow_lists(s, wanted->verdicts, r);
	count = r->ranked_count + r->too_large_count + r->no_home_count + r->excluded_count;

	if (s->options->format == FORMAT_JSON) {
		session_json(s, "rank", &ts_result_rank, r);
	} else if (s->options->format == FORMAT_CSV) {
		rows = ts_arena_array(s->arena, count ? count : 1, sizeof *rows);
		count = 0;
		for (size_t i = 0; rows && i < r->ranked_count; i++)
			rows[count++] = r->ranked[i];
		for (size_t i = 0; rows && i < r->too_large_count; i++)
			rows[count++] = r->too_large[i];
		for (size_t i = 0; rows && i < r->no_home_count; i++)
			rows[count++] = r->no_home[i];
		for (size_t i = 0; rows && i < r->excluded_count; i++)
			rows[count++] = r->excluded[i];
		session_csv(s, &ts_result_match, rows, count);
	} else {
		write_answer(s, a, r, wanted);
	}
}

struct table_call {
	unsigned only;
	struct rank_call rank;
	struct ts_rank_short_call brief;
};

static enum ts_status open_table(void *state, struct session *s, const struct answer *a)
{
	struct table_call *call = state;
	enum ts_status status = rank_call(s, a, &call->rank);

	if (status)
		return status;
	if (!ts_rank_short_open(&call->rank.asking, &call->rank.question, &call->brief))
		return TS_NO_MEMORY;
	if (!s->options->quiet)
		call->brief.lists = call->only ? call->only : 1u << TS_SUITS;
	call->brief.ids_most = s->options->all ? (size_t)-1 : TS_RANK_SHORT_IDS_MOST;
	return TS_OK;
}

static bool answer_brief(const void *state, struct session *row, const struct answer *a,
	const char *name, unsigned line, void *ret, bool *ret_nothing)
{
	const struct table_call *call = state;
	struct ts_rank_short_result *r = ret;

	r->name = name;
	r->line = line;
	r->findings = batch_findings(row);
	if (!a)
		return !row->arena->failed;
	if (!ts_answer_rank_short(&call->brief, &a->profile, &a->keeping, row->arena, r))
		return false;
	*ret_nothing |= r->of[TS_SUITS] + r->of[TS_TOLERATES] == 0;
	return true;
}

static bool answer_whole(const void *state, struct session *row, const struct answer *a,
	const char *name, unsigned line, void *ret, bool *ret_nothing)
{
	const struct table_call *call = state;
	struct ts_rank_line_result *r = ret;

	r->name = name;
	r->line = line;
	r->finding_count = result_findings(row->arena, row->findings, &r->findings);
	if (!a)
		return !row->arena->failed;
	if (!rank_answer(row, &call->rank, a, &r->answer))
		return false;
	narrow_lists(row, call->only, &r->answer);
	r->water = &r->answer.water;
	*ret_nothing |= r->answer.suits + r->answer.tolerates == 0;
	return true;
}

/* Few rows of whole answers are held at once: each is a megabyte. */
#define ROWS_BRIEF 256
#define ROWS_WHOLE 8

enum ts_status rank_batch(struct session *s, unsigned only)
{
	struct table_call call = {.only = only};
	const struct batch_question brief = {
		"rank", &ts_result_rank_short, ROWS_BRIEF, &call, open_table, answer_brief};
	const struct batch_question whole = {
		"rank", &ts_result_rank_line, ROWS_WHOLE, &call, open_table, answer_whole};

	if (s->options->format == FORMAT_HTML || s->options->format == FORMAT_BRIEF) {
		ts_text_put(s->error, "--batch writes a line a water; leave --format out, or ask "
				      "for csv, or for json, which is the whole answer a line");
		return TS_BAD_INPUT;
	}
	return batch_run(s, s->options->format == FORMAT_JSON ? &whole : &brief);
}

/* One water as a line of a table has it. */
static enum ts_status one_line(struct session *s, unsigned only, const struct answer *a)
{
	struct table_call call = {.only = only};
	struct ts_rank_short_result r = {0};
	bool nothing = false;
	enum ts_status status = open_table(&call, s, a);

	if (status)
		return status;
	if (!answer_brief(&call, s, a, a->water.name, 0, &r, &nothing))
		return TS_NO_MEMORY;
	ts_result_json_line(s->out, TS_VERSION, "rank", &ts_result_rank_short, &r);
	return nothing ? TS_NO : TS_OK;
}

enum ts_status command_rank(struct session *s)
{
	struct ts_show_list wanted = {.terminal = session_terminal(s),
		.most = session_lines(s, 0),
		.all = s->options->all,
		.any_size = s->options->any_size};
	struct ts_rank_result result;
	struct rank_call call;
	struct answer a;
	enum ts_status status = TS_BAD_INPUT;

	if (s->options->argument_count) {
		refuse_word(s, s->options->arguments[0]);
		return status;
	}
	if (!take_only(s, &wanted.verdicts))
		return status;
	if (s->options->batch_file)
		return rank_batch(s, wanted.verdicts);
	status = answer_open_if_any(s, &a);
	if (!status && s->options->format == FORMAT_LINES)
		return one_line(s, wanted.verdicts, &a);
	if (!status)
		status = rank_call(s, &a, &call);
	if (status)
		return status;
	if (!rank_answer(s, &call, &a, &result))
		return TS_NO_MEMORY;
	if (s->options->format ==
		FORMAT_BRIEF) { /* a message names whom it suits, a dozen at most */
		wanted.terminal = true;
		wanted.verdicts = wanted.verdicts ? wanted.verdicts : 1u << TS_SUITS;
	}
	answer_with(s, &a, &result, &wanted);
	return result.suits + result.tolerates ? TS_OK : TS_NO;
}
