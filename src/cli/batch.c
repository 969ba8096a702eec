/* SPDX-License-Identifier: Apache-2.0 */
/*
 * rank --batch: a table of waters, row by row. What a row needs is dropped before the next one is
 * read and each line is written at once, so that memory does not grow with the table.
 */
#include "base/arena.h"
#include "base/findings.h"
#include "cli/output.h"
#include "cli/rank.h"
#include "cli/results.h"
#include "cli/table.h"
#include "report/rank_result.h"

struct batch {
	struct table table;
	struct session *s;
	struct session row; /* the same with memory and findings of the row alone */
	struct ts_waters *waters;
	struct output output;
	struct answer answer;
	struct rank_call call;
	size_t rows, wrong;
	bool any_suits_nothing;
};

/* What cannot be asked of a table. */
static bool agrees(const struct session *s)
{
	const struct options *o = s->options;

	if (table_agrees(s) && (o->format == FORMAT_CSV || o->format == FORMAT_HTML))
		ts_text_put(s->error, "--batch writes a line of JSON a water; leave --format out");
	return !s->error->len;
}

/* Adds the line of one row; `water` NULL: it was not ranked, the findings say why. */
static bool rank_row(struct batch *b, struct ts_water *water, const char *name, unsigned line)
{
	struct ts_rank_line_result rows = {.name = name, .line = line};
	struct session *row = &b->row;
	struct answer *a = &b->answer;

	rows.finding_count = result_findings(row->arena, row->findings, &rows.findings);
	if (water) {
		water->softened |= b->s->options->softened;
		a->water = *water;
		ts_profile_make(&a->water, &a->keeping, b->s->practice, b->s->today, &a->profile);
		if (!rank_answer(row, &b->call, a, &rows.answer))
			return false;
		rows.water = &rows.answer.water;
		b->any_suits_nothing |= rows.answer.suits + rows.answer.tolerates == 0;
	}
	if (!row->arena->failed)
		ts_result_json_line(row->out, TS_VERSION, "rank", &ts_result_rank_line, &rows);
	return !row->arena->failed;
}

/* One row read, ranked and written; TS_NO behind the last. */
static enum ts_status take_row(struct batch *b)
{
	struct session *row = &b->row;
	struct ts_water water;
	unsigned line = 0;
	enum ts_status status = ts_waters_next(b->waters, row->arena, &water, &line, row->findings);

	if (status == TS_NO || status == TS_NO_MEMORY)
		return status;
	b->rows++;
	b->wrong += status == TS_BAD_INPUT;
	row->out->len = 0;
	if (!rank_row(b, status == TS_OK ? &water : NULL, water.name, line) || row->arena->failed ||
		row->out->failed || row->findings->no_memory)
		return TS_NO_MEMORY;
	return output_add(&b->output, row->out, b->s->error);
}

static enum ts_status take_rows(struct batch *b)
{
	struct ts_arena arena;
	struct ts_findings findings;
	enum ts_status status;

	b->row = *b->s;
	b->row.arena = &arena;
	b->row.findings = &findings;
	ts_arena_open(&arena, &b->s->arena->allocator);
	ts_findings_open(&findings, &b->s->arena->allocator);
	do {
		status = take_row(b);
		ts_arena_drop(&arena);
		ts_findings_drop(&findings);
	} while (status == TS_OK && !b->output.closed);
	ts_text_drop(b->s->out); /* all of it is written */
	return status == TS_NO ? TS_OK : status;
}

/* Yes where each water suits something, no where one suits nothing; first of all, what was wrong.
 */
static enum ts_status verdict(struct batch *b)
{
	struct ts_text *error = b->s->error;

	if (!b->rows && !b->output.closed) {
		table_find(b->s, TS_C_RECORDS_MISSING_KEY, "no row stands below the header",
			"write one row a water");
		return TS_BAD_INPUT;
	}
	if (!b->wrong)
		return b->any_suits_nothing ? TS_NO : TS_OK;
	ts_text_number(error, (double)b->wrong, 0);
	ts_text_put(error, " of ");
	ts_text_number(error, (double)b->rows, 0);
	ts_text_put(error, " rows cannot be read; the findings of their lines say where, and what "
			   "would be right");
	return TS_BAD_INPUT;
}

/* The header, the catalogue and room for the matches: all that can be wrong before a row is read.
 */
static enum ts_status open_all(struct batch *b)
{
	struct session *s = b->s;
	enum ts_status status = answer_keeping(s, &b->answer);

	if (status)
		return status;
	b->answer.kept_age_days = (double)NAN;
	b->waters = ts_waters_open(table_read, &b->table, b->table.file, s->arena, s->findings);
	if (!b->waters)
		return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
	status = answer_catalogue(s);
	if (!status)
		status = rank_call(s, &b->answer, &b->call);
	return status;
}

static enum ts_status rank_stream(struct batch *b)
{
	struct session *s = b->s;
	enum ts_status status = open_all(b), answer = TS_NO_MEMORY;

	if (status)
		return status;
	status = answer_may_replace(s, s->options->output);
	if (status)
		return status;
	status = output_open(&b->output, s->system, s->options->output, s->error);
	if (status)
		return status;
	status = take_rows(b);
	if (b->table.why)
		status = TS_SYSTEM;
	if (status == TS_OK)
		answer = verdict(b);
	s->stream = &b->output;
	s->keep = status == TS_OK && b->rows;
	return status ? status : answer;
}

enum ts_status rank_batch(struct session *s)
{
	struct batch *b = agrees(s) ? ts_arena_take(s->arena, sizeof *b) : NULL;
	enum ts_status status, closed;

	if (!b)
		return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
	b->s = s;
	status = table_open(s, &b->table);
	if (status)
		return status;
	status = rank_stream(b);
	closed = table_close(s, &b->table);
	return closed ? closed : status;
}
