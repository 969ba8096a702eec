/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Building a document: nodes and lines in one arena, in the order in which they are read. Nothing
 * about looks stands here.
 */
#include "report/document.h"

#include <stdarg.h>
#include <string.h>

void ts_doc_open(struct ts_document *doc, struct ts_arena *arena, const char *title)
{
	*doc = (struct ts_document){.arena = arena, .title = title};
}

void ts_doc_medium(struct ts_document *doc, enum ts_medium medium)
{
	doc->medium = medium;
}

static const char *copy(struct ts_document *doc, const char *text)
{
	return text ? ts_arena_text(doc->arena, text, strlen(text)) : NULL;
}

static struct ts_node *add(struct ts_document *doc, enum ts_node_kind kind, const char *text)
{
	bool unread = !doc->drawn && (doc->medium == TS_ON_PAGES || doc->medium == TS_ON_PAPER);
	struct ts_node *node = unread ? NULL : ts_arena_take(doc->arena, sizeof *node);

	if (!node)
		return NULL;
	node->kind = kind;
	node->medium = doc->medium;
	node->text = copy(doc, text);
	if (doc->last)
		doc->last->next = node;
	else
		doc->first = node;
	doc->last = node;
	return node;
}

void ts_doc_verdict(struct ts_document *doc, const char *verdict, const char *number)
{
	struct ts_node *node = add(doc, TS_NODE_VERDICT, verdict);

	if (node)
		node->more = copy(doc, number);
}

void ts_doc_heading(struct ts_document *doc, unsigned level, const char *text)
{
	struct ts_node *node = add(doc, TS_NODE_HEADING, text);

	if (node)
		node->level = level;
}

void ts_doc_paragraph(struct ts_document *doc, const char *text)
{
	add(doc, TS_NODE_PARAGRAPH, text);
}

void ts_doc_paragraphs(struct ts_document *doc, const struct ts_texts *list)
{
	for (size_t i = 0; i < list->count; i++)
		ts_doc_paragraph(doc, list->items[i]);
}

/* With a large letter in front (but for pH) and a stop behind. */
static const char *sentence(struct ts_document *doc, const char *text)
{
	size_t len = strlen(text);
	char *copy = ts_arena_take(doc->arena, len + 2);

	if (!copy)
		return text;
	memcpy(copy, text, len);
	if (copy[0] >= 'a' && copy[0] <= 'z' && copy[1] >= 'a' && copy[1] <= 'z')
		copy[0] = (char)(copy[0] - 'a' + 'A');
	if (len && !strchr(".!?", copy[len - 1]))
		copy[len] = '.';
	return copy;
}

void ts_doc_caution(struct ts_document *doc, const char *text)
{
	add(doc, TS_NODE_CAUTION, sentence(doc, text));
}

void ts_doc_see(struct ts_document *doc, const char *text)
{
	add(doc, TS_NODE_SEE, text);
}

struct ts_node *ts_doc_entry(struct ts_document *doc, const char *text)
{
	return add(doc, TS_NODE_ENTRY, text);
}

struct ts_node *ts_doc_facts(struct ts_document *doc, unsigned level)
{
	struct ts_node *node = add(doc, TS_NODE_FACTS, NULL);

	if (node)
		node->level = level;
	return node;
}

struct ts_node *ts_doc_table(struct ts_document *doc)
{
	return add(doc, TS_NODE_TABLE, NULL);
}

struct ts_node *ts_doc_records(struct ts_document *doc)
{
	struct ts_node *node = add(doc, TS_NODE_TABLE, NULL);

	if (node)
		node->level = 1;
	return node;
}

void ts_doc_fold(struct ts_document *doc, const char *text)
{
	add(doc, TS_NODE_FOLD, text);
}

void ts_doc_unfold(struct ts_document *doc)
{
	add(doc, TS_NODE_UNFOLD, NULL);
}

struct ts_node *ts_doc_steps(struct ts_document *doc)
{
	return add(doc, TS_NODE_STEPS, NULL);
}

void ts_doc_curve(struct ts_document *doc, const struct ts_curve *curve)
{
	struct ts_node *node = add(doc, TS_NODE_CURVE, NULL);

	if (node)
		node->curve = curve;
}

struct ts_line *ts_doc_line(struct ts_document *doc, struct ts_node *node, ...)
{
	struct ts_line *line = node ? ts_arena_take(doc->arena, sizeof *line) : NULL;
	va_list cells;

	if (!line)
		return NULL;
	va_start(cells, node);
	while (line->count < TS_CELLS_MOST) {
		const char *cell = va_arg(cells, const char *);

		if (!cell)
			break;
		line->cells[line->count++] = copy(doc, cell);
	}
	va_end(cells);
	if (node->last_line)
		node->last_line->next = line;
	else
		node->lines = line;
	node->last_line = line;
	return line;
}

void ts_doc_bar(struct ts_document *doc, struct ts_node *node, const struct ts_bar *bar)
{
	struct ts_bar *kept = node ? ts_arena_take(doc->arena, sizeof *kept) : NULL;

	if (!kept)
		return;
	*kept = *bar;
	kept->next = NULL;
	if (node->last_bar)
		node->last_bar->next = kept;
	else
		node->bars = kept;
	node->last_bar = kept;
}

void ts_doc_tag(struct ts_document *doc, struct ts_node *node, const char *name, const char *value)
{
	struct ts_tag *tag = node ? ts_arena_take(doc->arena, sizeof *tag) : NULL;
	struct ts_tag **end = node ? &node->tags : NULL;

	if (!tag)
		return;
	*tag = (struct ts_tag){copy(doc, name), copy(doc, value), NULL};
	while (*end)
		end = &(*end)->next;
	*end = tag;
}

const char *ts_doc_take(struct ts_document *doc, struct ts_text *text)
{
	const char *kept = ts_arena_text(doc->arena, ts_text_get(text), text->len);

	doc->arena->failed |= text->failed;
	ts_text_clear(text);
	return kept ? kept : "";
}
