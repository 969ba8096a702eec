/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The system of a POSIX machine, for one run of the program: it remembers what was read and
 * written, so that no answer replaces what it was made of.
 */
#ifndef TS_SYSTEM_MACHINE_H
#define TS_SYSTEM_MACHINE_H

#include <time.h>

#include "system/system.h"

#define TS_PATH_MOST 4096
/* Files written at once. */
#define TS_WRITERS_MOST 4

struct ts_writer {
	bool used, through, in_place;
	int file;
	int over;                                        /* handle of TS_OPEN_REWRITE, or -1 */
	char target[TS_PATH_MOST], beside[TS_PATH_MOST]; /* the place, and the file next to it */
};

struct ts_machine {
	struct ts_system system;
	struct ts_seen *known; /* files that were opened or written; device and inode count */
	size_t known_count, known_room;
	int rewrite; /* the handle of TS_OPEN_REWRITE, or -1 */
	struct ts_seen rewrite_seen;
	struct ts_writer writers[TS_WRITERS_MOST];
	time_t told;     /* when progress was told last; 0: nothing goes on */
	size_t told_len; /* letters that stand there */
};

/* From here on a reader that goes away and a limit on file sizes are errors of a write, no end. */
void ts_machine_open(struct ts_machine *machine);
void ts_machine_close(struct ts_machine *machine);

/* For the half that writes (machine_write.c). */
int ts_machine_reserve(struct ts_machine *machine, size_t more);
int ts_machine_know(struct ts_machine *machine, const struct ts_seen *seen);
bool ts_machine_knows(const struct ts_machine *machine, const struct ts_seen *seen);
int ts_machine_create(void *state, const char *path, int over, int *ret);
int ts_machine_write(void *state, int handle, const char *bytes, size_t len);
int ts_machine_finish(void *state, int handle, bool keep);
bool ts_machine_paged(void *state, const char *text, size_t len); /* machine_pager.c */
size_t ts_machine_together(void *state, size_t most,              /* machine_parts.c */
	void (*work)(void *to, size_t part, size_t parts), void *to);
bool ts_machine_left_over(void *state, const char *path, char *ret, size_t room);

/* For machine_rights.c: what a new file `file` in the place of `target`, which was `old`, takes of
 * it. False: something cannot be taken, and the old file must be written in its place. */
struct stat;
bool ts_machine_take_rights(int file, const char *target, const struct stat *old);
/* Writes the bytes of `from` into the file at `target`, which is still `old`. */
int ts_machine_fill(int from, const char *target, const struct stat *old);
/* Is this entry of its folder somebody else's, in a folder that everybody may write? */
bool ts_machine_foreign(const char *path, const struct stat *entry);
/* The file behind all links, there or not yet, each of which is ours to follow. */
int ts_machine_resolve(const char *path, char target[TS_PATH_MOST]);

#endif
