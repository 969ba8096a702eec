/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Waters, tanks and plans by name: "@living-room" is the file kept/living-room.yaml in the user's
 * own configuration folder, "@tap" the kept tap (tap.h). Wherever a call takes a file it takes such
 * a name; what is kept is an ordinary file of ours, which note, lint and an editor take as well.
 */
#ifndef TS_CLI_KEPT_H
#define TS_CLI_KEPT_H

#include "cli/commands.h"

/* One thing that is kept. */
struct kept_item {
	const char *name;             /* behind the @ */
	const char *path;             /* its file */
	const struct ts_shape *shape; /* water, tank or plan */
};

/* All that is kept by name, sorted; the tap is not among them. TS_OK with none, TS_NO_MEMORY. */
TS_MUST_USE enum ts_status kept_list(
	struct session *session, struct kept_item **ret, size_t *ret_count);

/* Hands the files of all samples to `take`, until it says false. */
void kept_samples(
	struct session *session, bool (*take)(void *state, const char *file), void *state);

/*
 * The file that a name behind the @ stands for, whether it is there or not. NULL: it is no name
 * (letters, digits, - and _, at most 40) or there is no home folder; the error says which.
 */
const char *kept_path(struct session *session, const char *name);

/* How a file is called in a call: "@living-room" of one that is kept, else as it stands. */
const char *kept_called(struct session *session, const char *path);

/*
 * Puts the paths in the place of all names in a call, but in that of `keep` itself. TS_BAD_INPUT
 * with an error that lists what is kept where a name stands for nothing.
 */
TS_MUST_USE enum ts_status kept_resolve(
	struct session *session, const struct command *command, struct options *options);

/*
 * Keeps a file, which is read and found whole first, under a name that is free: to the byte, or
 * with what it names in the place of the names. TS_BAD_INPUT, TS_SYSTEM with an error.
 */
TS_MUST_USE enum ts_status kept_file(struct session *session, const char *name, const char *file);

/* Keeps a water of one reading under a name that is free. The same failures. */
TS_MUST_USE enum ts_status kept_water(
	struct session *session, const char *name, const struct ts_water *water);

#endif
