/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the systems of a machine and of the page have in common; each function is the one of its
 * name in struct ts_system, and needs no state.
 */
#ifndef TS_SYSTEM_POSIX_H
#define TS_SYSTEM_POSIX_H

#include "system/system.h"

struct stat;
void ts_posix_see(const struct stat *info, struct ts_seen *ret);
int ts_posix_look(void *state, const char *path, struct ts_seen *ret);
int ts_posix_list(
	void *state, const char *folder, bool (*each)(void *to, const char *name), void *to);
int ts_posix_make_folder(void *state, const char *path);
int ts_posix_read(void *state, int handle, char *into, size_t room, size_t *ret_len);
const char *ts_posix_variable(void *state, const char *name);
bool ts_posix_program(void *state, char *ret, size_t room);

/* For the table of a system. */
#define TS_POSIX_SYSTEM                                                                            \
	.look = ts_posix_look, .list = ts_posix_list, .make_folder = ts_posix_make_folder,         \
	.read = ts_posix_read, .variable = ts_posix_variable, .program = ts_posix_program

#endif
