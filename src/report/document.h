/* SPDX-License-Identifier: Apache-2.0 */
/*
 * An answer as a short list of nodes, built by a command in its arena and walked by a visitor per
 * format (screen.c: text, html.c: page). A command decides what is said and in which order; where
 * it stands on the screen, in which weight and how it is wrapped is decided by the visitors alone.
 */
#ifndef TS_REPORT_DOCUMENT_H
#define TS_REPORT_DOCUMENT_H

#include <tapshoal/catalogue.h>
#include <tapshoal/water.h>

#include "base/arena.h"
#include "base/text.h"

enum ts_node_kind {
	TS_NODE_VERDICT,   /* `text`: the verdict; `more`: the deciding number */
	TS_NODE_HEADING,   /* `text`; `level` 0 a section, 1 a part of an entry */
	TS_NODE_PARAGRAPH, /* `text` */
	TS_NODE_ENTRY,     /* `text`: a name and its room; lines: reasons; bars, tags for pages */
	TS_NODE_FACTS,     /* lines: label, value, note or NULL */
	TS_NODE_TABLE,     /* lines: cells; the first line is the header; `level` 1: its rows are
			      records, which a pipe gets unbroken */
	TS_NODE_FOLD,      /* `text`: what follows is folded away on pages, to TS_NODE_UNFOLD */
	TS_NODE_UNFOLD,
	TS_NODE_STEPS,   /* lines: when or which, what to do; `text` NULL */
	TS_NODE_CURVE,   /* `curve` */
	TS_NODE_CAUTION, /* `text` */
	TS_NODE_SEE      /* `text`: where more is written */
};

/* Which parameter a line speaks of: decides its hue, never its meaning. */
enum ts_hue { TS_HUE_NONE, TS_HUE_GH, TS_HUE_KH, TS_HUE_PH, TS_HUE_TEMPERATURE, TS_HUE__COUNT };

/* Where a node is to be read; pages know more than one place. */
enum ts_medium {
	TS_EVERYWHERE,
	TS_ON_PAGES, /* of a page alone, on the screen and printed */
	TS_ON_PAPER, /* of a page alone, printed */
	TS_OFF_PAPER /* wherever nothing is printed */
};

#define TS_CELLS_MOST 10

struct ts_line {
	const char *cells[TS_CELLS_MOST];
	size_t count;
	enum ts_hue hue;
	struct ts_line *next;
};

/* One envelope with the reading across it: drawn by pages, spoken by the entry's lines. */
struct ts_bar {
	const char *label; /* a constant */
	enum ts_hue hue;
	struct ts_range tolerated, preferred, reading;
	double reading_at; /* the value that counts; NAN: none */
	double miss;       /* of the reading that counts beyond preferred, signed; 0 or NAN: none */
	struct ts_bar *next;
};

/* A property by which a page lets its reader filter entries: family, zone, verdict. */
struct ts_tag {
	const char *name, *value;
	struct ts_tag *next;
};

/* One line of a chart; `x` rising, `count` of both. */
struct ts_series {
	const char *name;
	const double *x, *y;
	size_t count;
	enum ts_hue hue;
};

/* A place on the x axis with something to say ("buffer gone"). */
struct ts_curve_mark {
	double x;
	const char *says;
};

struct ts_curve {
	const char *title, *x_label, *y_label; /* with their units */
	int x_decimals, y_decimals;
	const struct ts_series *series;
	size_t series_count;
	const struct ts_curve_mark *marks;
	size_t mark_count;
	const char *mark_lead, *mark_unit; /* "on day ", "" or "at ", " meq/L": around a mark's x */
};

struct ts_node {
	enum ts_node_kind kind;
	enum ts_medium medium;
	unsigned level;
	const char *text, *more;
	enum ts_hue hue;
	struct ts_line *lines, *last_line;
	struct ts_bar *bars, *last_bar;
	struct ts_tag *tags;
	const struct ts_curve *curve;
	struct ts_node *next;
};

/* `title`: for a page's head, e.g. "Fish for this water". Nodes and texts live in `arena`. */
struct ts_document {
	struct ts_arena *arena;
	const char *title;
	bool drawn; /* a page is wanted: bars, tags and what is of pages alone are left out
		       otherwise */
	bool brief; /* a message of some 600 letters: what decides and what to do */
	enum ts_medium medium; /* of the nodes that are added now */
	struct ts_node *first, *last;
};

/* Opens an empty document; everything added is copied into `arena`, whose failure is sticky. */
void ts_doc_open(struct ts_document *doc, struct ts_arena *arena, const char *title);

/* From here on nodes are read there; TS_EVERYWHERE ends it. */
void ts_doc_medium(struct ts_document *doc, enum ts_medium medium);

/*
 * Adding nodes, in the order of reading. Texts are copied. The node is returned for its lines, or
 * NULL when memory failed or nobody would read it: every function here takes a NULL node and then
 * does nothing.
 */
void ts_doc_verdict(struct ts_document *doc, const char *verdict, const char *number);
void ts_doc_heading(struct ts_document *doc, unsigned level, const char *text);
void ts_doc_paragraph(struct ts_document *doc, const char *text);
void ts_doc_paragraphs(struct ts_document *doc, const struct ts_texts *list); /* one each */
void ts_doc_caution(struct ts_document *doc, const char *text);
void ts_doc_see(struct ts_document *doc, const char *text);
struct ts_node *ts_doc_entry(struct ts_document *doc, const char *text);
struct ts_node *ts_doc_facts(struct ts_document *doc, unsigned level);
struct ts_node *ts_doc_table(struct ts_document *doc);
struct ts_node *ts_doc_steps(struct ts_document *doc);
/* A table whose rows are records: where somebody reads it with a program it is never narrowed. */
struct ts_node *ts_doc_records(struct ts_document *doc);
/* What is added between the two is folded away on pages, under that heading. They do not nest. */
void ts_doc_fold(struct ts_document *doc, const char *text);
void ts_doc_unfold(struct ts_document *doc);
/* The curve is lent, not copied: build it in the same arena. */
void ts_doc_curve(struct ts_document *doc, const struct ts_curve *curve);

/* Adds a line of cells (NULL-terminated list; at most TS_CELLS_MOST, NULL cells end it early). */
struct ts_line *ts_doc_line(struct ts_document *doc, struct ts_node *node, ...);
/* Adds one bar or tag to an entry. */
void ts_doc_bar(struct ts_document *doc, struct ts_node *node, const struct ts_bar *bar);
void ts_doc_tag(struct ts_document *doc, struct ts_node *node, const char *name, const char *value);

/*
 * Moves a scratch text's content into the document's memory and empties it for the next sentence:
 *     ts_say_parameter(&t, ...); ts_doc_paragraph(doc, ts_doc_take(doc, &t));
 * Never NULL; a failure of the text becomes the arena's.
 */
const char *ts_doc_take(struct ts_document *doc, struct ts_text *text);

#endif
