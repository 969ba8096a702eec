/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The page visitor: nodes become a printed sheet in plain, semantic elements. How they look is
 * page.css, the filter of long lists page.js: both are files beside this one, laid in at build
 * time. screen.c is the same walk for terminals.
 */
#include "report/html.h"

#include <string.h>

#include "page_text.h"
#include "report/html_page.h"

static void meta(struct ts_page *page, const char *name, const char *content)
{
	ts_page_open(page, "meta");
	ts_page_attribute(page, "name", name);
	ts_page_attribute(page, "content", content);
	ts_page_close(page);
	ts_page_raw(page, "\n");
}

static void lines_in(struct ts_page *page, const char *element, const char *const *lines)
{
	ts_page_open(page, element);
	ts_page_raw(page, "\n");
	for (size_t i = 0; lines[i]; i++)
		ts_page_raw(page, lines[i]);
	ts_page_close(page);
	ts_page_raw(page, "\n");
}

static void write_head(struct ts_page *page, const struct ts_document *doc)
{
	ts_page_open(page, "head");
	ts_page_raw(page, "\n");
	ts_page_open(page, "meta");
	ts_page_attribute(page, "charset", "utf-8");
	ts_page_close(page);
	ts_page_open(page, "meta"); /* a promise to the reader that the browser keeps */
	ts_page_attribute(page, "http-equiv", "Content-Security-Policy");
	ts_page_attribute(page, "content",
		"default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'");
	ts_page_close(page);
	ts_page_raw(page, "\n");
	meta(page, "viewport", "width=device-width, initial-scale=1");
	meta(page, "generator", "tapshoal " TS_VERSION);
	ts_page_element(page, "title", doc->title);
	ts_page_raw(page, "\n");
	lines_in(page, "style", page_css);
	ts_page_close(page);
	ts_page_raw(page, "\n");
}

/* A paragraph of a class, with a strong beginning where there is one. */
static void paragraph(
	struct ts_page *page, const char *class_name, const char *strong, const char *text)
{
	ts_page_open(page, "p");
	ts_page_attribute(page, "class", class_name);
	if (strong)
		ts_page_element(page, "strong", strong);
	ts_page_text(page, strong ? " " : NULL);
	ts_page_text(page, text);
	ts_page_close(page);
}

/* Tags become data attributes; a name that could not be one is left out. */
static void tag(struct ts_page *page, const struct ts_tag *tag)
{
	char name[32] = "data-";

	if (!*tag->name || strlen(tag->name) >= sizeof name - 5 ||
		strspn(tag->name, "abcdefghijklmnopqrstuvwxyz") != strlen(tag->name))
		return;
	memcpy(name + 5, tag->name, strlen(tag->name) + 1);
	ts_page_attribute(page, name, tag->value);
}

/* The tags of an entry whose bits are set, the first tag being bit 0. */
static void put_tags(struct ts_page *page, const struct ts_node *node, unsigned which)
{
	unsigned bit = 1;

	for (const struct ts_tag *t = node->tags; t; t = t->next, bit <<= 1) {
		if (which & bit)
			tag(page, t);
	}
}

/* An animal's entry begins with its name, up to the colon. */
static void named(struct ts_page *page, const char *text)
{
	const char *colon = strstr(text, ": ");
	struct ts_text name;

	ts_text_open(&name, &page->out->allocator);
	ts_text_add(&name, text, colon ? (size_t)(colon - text) : strlen(text));
	ts_page_element(page, "b", ts_text_get(&name));
	ts_page_text(page, colon ? colon : NULL);
	page->out->failed |= name.failed;
	ts_text_drop(&name);
}

static void write_entry(struct ts_page *page, const struct ts_node *node)
{
	ts_page_open(page, "li");
	put_tags(page, node, ~page->shared_tags);
	ts_page_attribute(page, "class", ts_page_hue(node->hue));
	if (node->tags || (node->bars && node->bars->next))
		named(page, node->text);
	else
		ts_page_text(page, node->text);
	for (const struct ts_line *line = node->lines; line; line = line->next) {
		ts_page_open(page, "p");
		ts_page_attribute(page, "class", ts_page_hue(line->hue));
		ts_page_text(page, line->cells[0]);
		ts_page_close(page);
	}
	ts_page_marks(page, node->bars);
	ts_page_close(page);
	ts_page_raw(page, "\n");
}

/* A label opens a pair; lines without one are further values of it. */
static void write_facts(struct ts_page *page, const struct ts_node *node)
{
	bool open = false;

	ts_page_open(page, "dl");
	for (const struct ts_line *line = node->lines; line; line = line->next) {
		if (*line->cells[0] || !open) {
			if (open)
				ts_page_close(page);
			ts_page_open(page, "div");
			ts_page_element(page, "dt", line->cells[0]);
			open = true;
		}
		ts_page_open(page, "dd");
		ts_page_attribute(page, "class", ts_page_hue(line->hue));
		for (size_t i = 1; i < line->count; i++) {
			ts_page_text(page, i > 1 ? "  " : "");
			ts_page_text(page, line->cells[i]);
		}
		ts_page_close(page);
	}
	if (open)
		ts_page_close(page);
	ts_page_close(page);
	ts_page_raw(page, "\n");
}

static void write_row(struct ts_page *page, const struct ts_line *line, bool head)
{
	ts_page_open(page, "tr");
	for (size_t i = 0; i < line->count; i++) {
		bool names = (head || i == 0) && *line->cells[i]; /* no empty heading */

		ts_page_open(page, names ? "th" : "td");
		if (names)
			ts_page_attribute(page, "scope", head ? "col" : "row");
		ts_page_cell(page, line->cells[i], head);
		ts_page_close(page);
	}
	ts_page_close(page);
	ts_page_raw(page, "\n");
}

/* A wide table is moved under its frame, by keys too; the page itself stays. */
static void write_table(struct ts_page *page, const struct ts_node *node)
{
	if (!node->lines)
		return;
	ts_page_open(page, "div");
	ts_page_attribute(page, "class", "wide");
	ts_page_attribute(page, "role", "group");
	ts_page_attribute(page, "aria-label", "Table");
	ts_page_attribute(page, "tabindex", "0");
	ts_page_open(page, "table");
	ts_page_open(page, "thead");
	write_row(page, node->lines, true);
	ts_page_close(page);
	ts_page_open(page, "tbody");
	for (const struct ts_line *line = node->lines->next; line; line = line->next)
		write_row(page, line, false);
	ts_page_close(page);
	ts_page_close(page);
	ts_page_close(page);
	ts_page_raw(page, "\n");
}

static void write_steps(struct ts_page *page, const struct ts_node *node)
{
	ts_page_open(page, "ol");
	for (const struct ts_line *line = node->lines; line; line = line->next) {
		ts_page_open(page, "li");
		ts_page_element(page, "b", line->cells[0]);
		for (size_t i = 1; i < line->count; i++) {
			ts_page_text(page, " ");
			ts_page_element(page, "span", line->cells[i]);
		}
		ts_page_close(page);
	}
	ts_page_close(page);
	ts_page_raw(page, "\n");
}

static void write_node(struct ts_page *page, const struct ts_node *node)
{
	switch (node->kind) {
	case TS_NODE_VERDICT:
		ts_page_open(page, "h2");
		ts_page_attribute(page, "class", "verdict");
		ts_page_text(page, node->text);
		ts_page_close(page);
		if (node->more && *node->more)
			paragraph(page, "number", NULL, node->more);
		break;
	case TS_NODE_HEADING:
		ts_page_element(page, node->level ? "h3" : "h2", node->text);
		break;
	case TS_NODE_FOLD:
		ts_page_open(page, "details");
		ts_page_element(page, "summary", node->text);
		break;
	case TS_NODE_UNFOLD:
		ts_page_close(page);
		break;
	case TS_NODE_ENTRY:
		write_entry(page, node);
		return;
	case TS_NODE_FACTS:
		write_facts(page, node);
		return;
	case TS_NODE_TABLE:
		write_table(page, node);
		return;
	case TS_NODE_STEPS:
		write_steps(page, node);
		return;
	case TS_NODE_CURVE:
		ts_page_curve(page, node->curve);
		return;
	case TS_NODE_CAUTION:
		paragraph(page, "caution", NULL, node->text);
		break;
	case TS_NODE_SEE:
		paragraph(page, "see", NULL, node->text);
		break;
	case TS_NODE_PARAGRAPH:
		paragraph(page, NULL, NULL, node->text);
		break;
	}
	ts_page_raw(page, "\n");
}

/* What is printed only, or not at all, stands in a frame of that name. */
static const char *frame_of(const struct ts_node *node)
{
	if (node->medium == TS_ON_PAPER)
		return "paper";
	return node->medium == TS_OFF_PAPER ? "screen" : NULL;
}

static void open_frame(struct ts_page *page, const char *class_name)
{
	ts_page_open(page, "div");
	ts_page_attribute(page, "class", class_name);
	ts_page_raw(page, "\n");
}

static void close_frame(struct ts_page *page)
{
	ts_page_close(page);
	ts_page_raw(page, "\n");
}

/* A list whose entries are tagged can be filtered; one of animals is printed in columns. */
static const char *list_class(const struct ts_node *first)
{
	if (!first->tags)
		return "entries";
	return first->bars ? "entries tagged listed" : "entries tagged";
}

enum { LONG_LIST = 12 };

/* Which tags all entries of a long list have alike: they stand at the list, 13 kB less in a
 * ranking. */
static unsigned shared_tags(const struct ts_node *first)
{
	unsigned shared = first->tags ? ~0u : 0;
	size_t entries = 1;

	for (const struct ts_node *node = first->next;
		node && node->kind == TS_NODE_ENTRY && frame_of(node) == frame_of(first);
		node = node->next) {
		const struct ts_tag *a = first->tags, *b = node->tags;
		unsigned bit = 1;

		entries++;
		for (; a && b && strcmp(a->name, b->name) == 0; a = a->next, b = b->next, bit <<= 1)
			shared &= strcmp(a->value, b->value) == 0 ? ~0u : ~bit;
		if (a || b)
			shared &= bit - 1;
	}
	return entries < LONG_LIST ? 0 : shared;
}

static void open_list(struct ts_page *page, const struct ts_node *first)
{
	ts_page_open(page, "ul");
	ts_page_attribute(page, "class", list_class(first));
	page->shared_tags = shared_tags(first);
	put_tags(page, first, page->shared_tags);
	ts_page_raw(page, "\n");
}

/* Neighbouring entries are one list. */
static void write_nodes(struct ts_page *page, const struct ts_document *doc)
{
	bool in_list = false, has_marks = false;
	const char *frame = NULL;

	for (const struct ts_node *node = doc->first; node; node = node->next) {
		bool entry = node->kind == TS_NODE_ENTRY;

		if (in_list && (!entry || frame_of(node) != frame)) {
			close_frame(page);
			in_list = false;
		}
		if (frame_of(node) != frame) {
			if (frame)
				close_frame(page);
			frame = frame_of(node);
			if (frame)
				open_frame(page, frame);
		}
		if (entry && !in_list)
			open_list(page, node);
		in_list = entry;
		has_marks |= node->bars != NULL;
		write_node(page, node);
	}
	if (in_list)
		close_frame(page);
	if (frame)
		close_frame(page);
	if (has_marks)
		ts_page_marks_key(page);
}

void ts_html_write(struct ts_text *out, const struct ts_document *doc)
{
	struct ts_page page = {.out = out};

	ts_text_put(out, "<!DOCTYPE html>\n");
	ts_page_open(&page, "html");
	ts_page_attribute(&page, "lang", "en");
	ts_page_raw(&page, "\n");
	write_head(&page, doc);
	ts_page_open(&page, "body");
	ts_page_open(&page, "main");
	ts_page_raw(&page, "\n");
	ts_page_element(&page, "h1", doc->title);
	ts_page_raw(&page, "\n");
	write_nodes(&page, doc);
	ts_page_close(&page);
	ts_page_raw(&page, "\n");
	ts_page_open(&page, "footer");
	ts_page_text(&page, "Written by tapshoal " TS_VERSION ".");
	ts_page_close(&page);
	ts_page_raw(&page, "\n");
	lines_in(&page, "script", page_js);
	ts_page_close(&page);
	ts_page_raw(&page, "\n");
	ts_page_close(&page);
	ts_text_put(out, "\n");
}
