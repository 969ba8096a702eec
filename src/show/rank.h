/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The ranking as a document: short first on a terminal, one line a record in a pipe, all of it with
 * folds on a page.
 */
#ifndef TS_SHOW_RANK_H
#define TS_SHOW_RANK_H

#include "answers/rank.h"
#include "report/document.h"

/* How much is wanted, and where. */
struct ts_show_list {
	bool terminal;     /* somebody reads on a screen: the best ones, and how to see the rest */
	size_t most;       /* so many of them; 0: a dozen */
	bool all;          /* all of each list all the same */
	bool any_size;     /* those without room too */
	unsigned verdicts; /* bits 1 << enum ts_verdict; 0: all but the excluded */
};

/* Adds everything below what leads a printed page. `doc->drawn`: a page. */
void ts_show_rank(struct ts_document *doc, const struct ts_rank_result *result,
	const struct ts_show_list *wanted);

/* The hue of a parameter's lines; none of what has none. */
enum ts_hue ts_show_hue(int parameter);

/* Adds the outline of one parameter, of enum ts_parameter, with the reading across it. */
void ts_show_bar(struct ts_document *doc, struct ts_node *node,
	const struct ts_parameter_result *result, int parameter);

/* Adds the outlines of some parameters to an entry of a page, with the reading across them. */
void ts_show_bars(struct ts_document *doc, struct ts_node *node,
	const struct ts_parameter_result *parameters, size_t count);

/* Adds the outlines of a match to an entry, with the reading across them, and what it is filtered
 * by. */
void ts_show_match_marks(
	struct ts_document *doc, struct ts_node *node, const struct ts_match_result *match);

#endif
