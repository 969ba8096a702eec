/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What somebody typed in one pair of quotes may be a sentence, or two sexes of an animal.
 */
#ifndef TS_CLI_UNDERSTAND_H
#define TS_CLI_UNDERSTAND_H

#include "answers/check.h"
#include "cli/commands.h"
#include "typed/sentence.h"

/* What was made of the sentences of a call. */
struct understood {
	const char *read_as; /* as it is told; NULL: none was typed */
	struct ts_check_unread unread[TS_SENTENCE_MOST];
	size_t unread_count;
};

/*
 * The call as if each animal and figure of its sentences had been typed by itself: the session's
 * options are others from then on. `file`: its first argument is a plan file.
 */
TS_MUST_USE enum ts_status understand(struct session *session, bool file, struct understood *ret);

#endif
