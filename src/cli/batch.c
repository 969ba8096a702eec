/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A table of waters, row by row. What has been read is answered, by all processors at once, and
 * written in order before more is awaited: so who sends one row gets its answer, and memory does
 * not grow with the table.
 */
#include "cli/batch.h"

#include "base/arena.h"
#include "base/findings.h"
#include "cli/table.h"
#include "report/csv.h"
#include "report/output.h"

/* Fewer rows than that are not worth another processor. */
#define ROWS_A_PART 4

/* One row that waits for its answer. */
struct slot {
	struct ts_arena arena;
	struct ts_findings findings;
	struct ts_water water;
	unsigned line;
	bool ranked;
};

/* What one processor makes of its share of them. */
struct part {
	struct ts_text out;
	bool nothing, no_memory;
};

struct batch {
	const struct batch_question *q;
	struct table table;
	struct session *s;
	struct ts_waters *waters;
	struct output output;
	struct answer answer;
	struct slot *slots;
	size_t first, next; /* the slots that wait: first..next-1 */
	struct part parts[TS_PARTS_MOST];
	size_t rows, wrong;
	bool headed, nothing;
	enum ts_status status;
};

struct ts_texts batch_findings(const struct session *row)
{
	const struct ts_findings *f = row->findings;
	struct ts_texts texts = {0};

	if (f->count)
		texts.items = ts_arena_array(row->arena, f->count, sizeof *texts.items);
	for (size_t i = 0; texts.items && i < f->count; i++)
		texts.items[texts.count++] = ts_arena_join(row->arena,
			f->items[i].place.path ? f->items[i].place.path : "",
			f->items[i].place.path ? ": " : "", f->items[i].what, "; ",
			f->items[i].remedy, NULL);
	return texts;
}

static bool answer_slot(struct batch *b, struct slot *slot, struct part *part)
{
	struct session row = *b->s;
	struct answer a = b->answer;
	void *result = ts_arena_take(&slot->arena, b->q->shape->size);

	row.arena = &slot->arena;
	row.findings = &slot->findings;
	if (slot->ranked) {
		slot->water.softened |= row.options->softened;
		a.water = slot->water;
		ts_profile_make(&a.water, &a.keeping, row.practice, row.today, &a.profile);
	}
	if (!result || !b->q->answer(b->q->state, &row, slot->ranked ? &a : NULL, slot->water.name,
			       slot->line, result, &part->nothing))
		return false;
	if (row.options->format == FORMAT_CSV)
		ts_csv_line(&part->out, b->q->shape, result);
	else
		ts_result_json_line(&part->out, TS_VERSION, b->q->command, b->q->shape, result);
	return !slot->arena.failed && !part->out.failed && !slot->findings.no_memory;
}

/* The share of one processor of the rows that wait. */
static void answer_part(void *to, size_t number, size_t parts)
{
	struct batch *b = to;
	struct part *part = &b->parts[number];
	size_t count = b->next - b->first, end = b->first + count * (number + 1) / parts;

	for (size_t i = b->first + count * number / parts; i < end; i++) {
		struct slot *slot = &b->slots[i];

		part->no_memory = part->no_memory || !answer_slot(b, slot, part);
		ts_arena_drop(&slot->arena);
		ts_findings_drop(&slot->findings);
	}
}

static enum ts_status write_head(struct batch *b)
{
	void *result = ts_arena_take(b->s->arena, b->q->shape->size);
	struct ts_text *out = &b->parts[0].out;
	bool nothing = false;

	b->headed = true;
	if (b->s->options->format != FORMAT_CSV)
		return TS_OK;
	if (!result || !b->q->answer(b->q->state, b->s, NULL, NULL, 0, result, &nothing))
		return TS_NO_MEMORY;
	ts_csv_head(out, b->q->shape, result);
	return out->failed ? TS_NO_MEMORY : TS_OK;
}

/* How far it is, where the answers themselves do not show it; `what` NULL: it is over. */
static void tell(const struct batch *b, const char *what)
{
	const struct ts_system *system = b->s->system;
	struct ts_terminal terminal = {0};

	if (!system->progress)
		return;
	if (!b->s->options->output)
		system->terminal(system->state, false, &terminal);
	if (!terminal.is)
		system->progress(system->state, (double)b->rows, what);
}

/* All rows that wait are answered and written. */
static void answer_waiting(struct batch *b)
{
	size_t count = b->next - b->first, most = count / ROWS_A_PART, parts;

	if (!count || b->status || b->output.closed)
		return;
	if (!b->headed)
		b->status = write_head(b);
	if (b->status)
		return;
	parts = b->s->system->together(b->s->system->state, most ? most : 1, answer_part, b);
	for (size_t i = 0; i < parts; i++) {
		struct part *part = &b->parts[i];

		b->nothing |= part->nothing;
		if (!b->status)
			b->status = part->no_memory
					    ? TS_NO_MEMORY
					    : output_add(&b->output, &part->out, b->s->error);
		ts_text_clear(&part->out);
	}
	b->first = b->next;
	tell(b, "waters");
}

/* More of the table is wanted: what there is goes first. */
static size_t read_more(void *state, char *bytes, size_t room)
{
	struct batch *b = state;

	answer_waiting(b);
	return b->status || b->output.closed ? 0 : table_read(&b->table, bytes, room);
}

static enum ts_status take_row(struct batch *b)
{
	struct slot *slot = &b->slots[b->next];
	enum ts_status status;

	*slot = (struct slot){0};
	ts_arena_open(&slot->arena, &b->s->arena->allocator);
	ts_findings_open(&slot->findings, &b->s->arena->allocator);
	status =
		ts_waters_next(b->waters, &slot->arena, &slot->water, &slot->line, &slot->findings);
	if (status == TS_NO || status == TS_NO_MEMORY) {
		ts_arena_drop(&slot->arena);
		ts_findings_drop(&slot->findings);
		return status;
	}
	slot->ranked = status == TS_OK;
	b->rows++;
	b->wrong += !slot->ranked;
	if (++b->next == b->q->rows) {
		answer_waiting(b);
		if (b->first == b->next)
			b->first = b->next = 0;
	}
	return b->status;
}

static enum ts_status take_rows(struct batch *b)
{
	enum ts_status status;

	do {
		status = take_row(b);
	} while (status == TS_OK && !b->output.closed);
	answer_waiting(b);
	tell(b, NULL);
	for (size_t i = b->first; i < b->next; i++) { /* only where something failed */
		ts_arena_drop(&b->slots[i].arena);
		ts_findings_drop(&b->slots[i].findings);
	}
	for (size_t i = 0; i < TS_PARTS_MOST; i++)
		ts_text_drop(&b->parts[i].out);
	return b->status ? b->status : status == TS_NO ? TS_OK : status;
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
		return b->nothing ? TS_NO : TS_OK;
	ts_text_number(error, (double)b->wrong, 0);
	ts_text_put(error, " of ");
	ts_text_number(error, (double)b->rows, 0);
	ts_text_put(error, " rows cannot be read; the findings of their lines say where, and what "
			   "would be right");
	return TS_BAD_INPUT;
}

/* The header, the catalogue and room for the rows: all that can be wrong before a row is read. */
static enum ts_status open_all(struct batch *b)
{
	struct session *s = b->s;
	enum ts_status status = answer_keeping(s, &b->answer);

	if (status)
		return status;
	b->answer.kept_age_days = (double)NAN;
	b->slots = ts_arena_array(s->arena, b->q->rows, sizeof *b->slots);
	b->waters = ts_waters_open(read_more, b, b->table.file, s->arena, s->findings);
	if (!b->waters || s->arena->failed)
		return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
	for (size_t i = 0; i < TS_PARTS_MOST; i++)
		ts_text_open(&b->parts[i].out, &s->arena->allocator);
	status = answer_catalogue(s);
	return status ? status : b->q->open(b->q->state, s, &b->answer);
}

static enum ts_status stream(struct batch *b)
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

enum ts_status batch_run(struct session *s, const struct batch_question *question)
{
	struct batch *b = table_agrees(s) ? ts_arena_take(s->arena, sizeof *b) : NULL;
	enum ts_status status, closed;

	if (!b)
		return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
	b->s = s;
	b->q = question;
	status = table_open(s, &b->table);
	if (status)
		return status;
	status = stream(b);
	closed = table_close(s, &b->table);
	return closed ? closed : status;
}
