/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A reading noted in a file, for note and for keep, whose tap is a water file like any other.
 */
#ifndef TS_CLI_NOTE_H
#define TS_CLI_NOTE_H

#include "cli/commands.h"
#include "records/note.h"

/*
 * Notes the pairs as a reading in a water or tank file (`kind`), and writes it while nobody else
 * does: what came in between is read again. Findings or an error of the session say why it could
 * not.
 */
enum ts_status note_into(struct session *session, const char *file, const struct ts_shape *kind,
	const struct ts_pair *pairs, size_t count, struct ts_noted *ret);

#endif
