/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What note.c and note_notebook.c have in common: entries on their way into a file.
 */
#ifndef TS_CLI_NOTE_WORK_H
#define TS_CLI_NOTE_WORK_H

#include "cli/note.h"

/* One entry of a list. */
struct entry {
	const char *list;
	struct ts_pair *pairs;
	size_t count;
};

struct noting {
	struct session *s;
	const char *file;
	const struct ts_shape *kind;
	const char *day;
	struct entry *entries; /* the reading, then the events */
	size_t count;
	struct ts_noted *noted; /* of each */
	size_t *twice; /* of a notebook: those that stand there already are left; else NULL */
};

/* What the file is, and whether its kind can take the entries. */
TS_MUST_USE enum ts_status note_check(struct noting *n);
/* All entries into the file, or none. */
TS_MUST_USE enum ts_status note_write(struct noting *n);
/* note --from. */
TS_MUST_USE enum ts_status note_notebook(struct noting *n);

#endif
