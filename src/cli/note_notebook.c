/* SPDX-License-Identifier: Apache-2.0 */
/*
 * note --from: a log that was kept elsewhere, as a table; what its columns are, records/notebook.h
 * says.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/kept.h"
#include "cli/note_work.h"
#include "records/file.h"
#include "records/load.h"
#include "records/notebook.h"

/* What the table is, read whole before anything is written. */
static enum ts_status read_notebook(struct session *s, struct ts_notebook *ret)
{
	const struct options *o = s->options;
	const struct ts_notebook_how how = {
		(enum ts_day_order)o->dates, o->columns.items, o->columns.count};
	char *bytes;
	size_t len;
	enum ts_status status = ts_file_read(s->system, o->from, TS_OPEN_ANY, TS_FILE_BYTES_MOST,
		&s->arena->allocator, &bytes, &len, s->findings);

	if (status)
		return status;
	status = ts_notebook_read(bytes, len, o->from, &how, s->arena, ret, s->findings);
	s->arena->allocator.resize(s->arena->allocator.state, bytes, 0);
	return status;
}

static enum ts_status take_notebook(struct noting *n, const struct ts_notebook *book)
{
	n->entries = ts_arena_array(n->s->arena, book->count + 1, sizeof *n->entries);
	n->noted = ts_arena_array(n->s->arena, book->count + 1, sizeof *n->noted);
	if (!n->entries || !n->noted)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < book->count; i++)
		n->entries[n->count++] = (struct entry){
			book->entries[i].list, book->entries[i].pairs, book->entries[i].count};
	return TS_OK;
}

static void count_of(struct ts_text *text, size_t count, const char *one, const char *more)
{
	ts_text_number(text, (double)count, 0);
	ts_text_put(text, count == 1 ? one : more);
}

static void write_notebook_answer(struct noting *n, const struct ts_notebook *book)
{
	struct session *s = n->s;
	size_t readings = 0, taken = n->count - *n->twice;
	struct ts_document doc;
	struct ts_node *facts;
	struct ts_text text;
	const char *first;

	for (size_t i = 0; i < n->count; i++)
		readings += strcmp(n->entries[i].list, "readings") == 0;
	ts_doc_open(&doc, s->arena, "A notebook noted");
	ts_text_open(&text, &s->arena->allocator);
	ts_text_puts(&text, "Noted in ", kept_called(s, n->file), " from ", s->options->from, ": ",
		NULL);
	count_of(&text, taken, " entry", " entries");
	first = ts_doc_take(&doc, &text);
	count_of(&text, book->rows, " row: ", " rows: ");
	count_of(&text, readings, " reading, ", " readings, ");
	count_of(&text, n->count - readings, " event", " events");
	if (n->count)
		ts_text_puts(&text, ", ", n->entries[0].pairs[0].value, " to ",
			n->entries[n->count - 1].pairs[0].value, NULL);
	if (*n->twice) {
		ts_text_put(&text, "; ");
		count_of(&text, *n->twice, " stood there already", " stood there already");
	}
	ts_doc_verdict(&doc, first, ts_doc_take(&doc, &text));
	facts = ts_doc_facts(&doc, 0);
	for (size_t i = 0; i < book->columns.count; i++)
		ts_doc_line(&doc, facts, book->columns.items[i], book->means.items[i], NULL);
	for (size_t i = 0; i < book->left_out.count; i++)
		ts_doc_line(&doc, facts, book->left_out.items[i], "left out, as you said", NULL);
	ts_text_puts(&text, "What it tells: tapshoal log ", kept_called(s, n->file), NULL);
	ts_doc_paragraph(&doc, ts_doc_take(&doc, &text));
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_write(s, &doc);
}

/* A notebook of elsewhere: all of its rows, or none. */
enum ts_status note_notebook(struct noting *n)
{
	struct ts_notebook book;
	enum ts_status status;

	if (n->s->options->argument_count != 1) {
		ts_text_put(n->s->error, "note --from takes a tank, plan or water file and nothing "
					 "else: tapshoal note tank.yaml --from notebook.csv");
		return TS_BAD_INPUT;
	}
	status = read_notebook(n->s, &book);
	if (status == TS_OK && !book.count) {
		ts_text_puts(n->s->error, n->s->options->from, " has no row with a reading", NULL);
		status = TS_BAD_INPUT;
	}
	if (status == TS_OK)
		status = take_notebook(n, &book);
	if (status == TS_OK)
		status = note_check(n);
	n->twice = ts_arena_take(n->s->arena, sizeof *n->twice);
	if (!n->twice)
		return TS_NO_MEMORY;
	if (status == TS_OK)
		status = note_write(n);
	if (status != TS_OK)
		return status;
	n->s->wrote = ts_arena_join(
		n->s->arena, "it is noted in ", n->file, "; only the answer is lost", NULL);
	write_notebook_answer(n, &book);
	return TS_OK;
}
