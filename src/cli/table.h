/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The table of waters behind --batch: a file or standard input, handed piece by piece to the reader
 * of rows (records/waters.h).
 */
#ifndef TS_CLI_TABLE_H
#define TS_CLI_TABLE_H

#include "cli/commands.h"
#include "model/codes.h"
#include "records/waters.h"

struct table {
	const struct ts_system *system;
	const char *file;
	int handle;
	int why;    /* of a read that failed; 0: none did */
	char first; /* the byte that was read to see that it can be */
	bool held;  /* it is not handed over yet */
	bool is_open;
};

/* Opens the table of --batch. TS_SYSTEM with a finding: it cannot be read, or is a folder. */
enum ts_status table_open(struct session *session, struct table *ret);
/* Closes it. TS_SYSTEM with a finding: some read of it failed. */
enum ts_status table_close(struct session *session, struct table *table);
/* For ts_waters_open(); `table` is a struct table. */
size_t table_read(void *table, char *bytes, size_t room);

/* Adds a finding about the table as a whole. */
void table_find(
	struct session *session, enum ts_code_id code, const char *what, const char *remedy);

/* What neither command asks of a table: another water beside it, a season. */
bool table_agrees(const struct session *session);

#endif
