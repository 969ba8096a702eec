/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a log has taught, inside the documents of drift, check, due and log.
 */
#ifndef TS_SHOW_LEARNED_H
#define TS_SHOW_LEARNED_H

#include "answers/learned.h"
#include "report/document.h"

/* A paragraph for each reading that was not to be expected, and for a routine that is another. */
void ts_show_alarms(struct ts_document *doc, const struct ts_learned *learned);

/* Lines of `facts`: what follows from the log, and what is too thin. */
void ts_show_learned(
	struct ts_document *doc, struct ts_node *facts, const struct ts_learned *learned);

/* Lines of `facts`: the newest readings beside what was expected of them. */
void ts_show_newest(
	struct ts_document *doc, struct ts_node *facts, const struct ts_learned *learned);

#endif
