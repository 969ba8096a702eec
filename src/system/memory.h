/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A system in memory: files are what was put there, the day and the environment are set, and
 * anything can be made to fail. For tests, fuzzing, and places that have no disk.
 */
#ifndef TS_SYSTEM_MEMORY_H
#define TS_SYSTEM_MEMORY_H

#include "base/text.h"
#include "system/system.h"

struct ts_memory_file {
	char *path; /* "" is free */
	struct ts_text bytes;
	enum ts_entry entry;
	uint64_t inode;
	int64_t modified_ns; /* counts writes */
	bool known;          /* was read or written */
};

/* What may be made to fail. */
enum ts_memory_step {
	TS_MEMORY_LOOK,
	TS_MEMORY_LIST,
	TS_MEMORY_OPEN,
	TS_MEMORY_READ,
	TS_MEMORY_CREATE,
	TS_MEMORY_WRITE,
	TS_MEMORY_FINISH,
	TS_MEMORY_FOLDER,
	TS_MEMORY_STEPS
};

#define TS_MEMORY_OPEN_MOST 8

struct ts_memory {
	struct ts_system system;
	struct ts_memory_file *files;
	size_t count, room;
	int64_t clock; /* counts writes */
	uint64_t next_inode;
	struct {
		size_t file, at;
		bool used;
	} open[TS_MEMORY_OPEN_MOST];
	struct {
		char *path; /* NULL: standard output */
		struct ts_text bytes;
		bool used;
		int over;
	} writers[TS_MEMORY_OPEN_MOST];
	int64_t over_ns; /* of the file opened to be rewritten, as it was */
	uint64_t over_inode;

	/* To be set by the caller. */
	const char *const *variables; /* name, value, name, value, NULL; NULL: none */
	const char *day;              /* NULL: there is no clock */
	const char *folder;           /* of the program; NULL: not known */
	struct ts_terminal screen;
	size_t disk; /* bytes that all files may hold together; 0: any number */
	/* Each step fails with `why` from its `after`-th call on (1: the first); 0: never. */
	struct {
		size_t after, calls;
		int why;
	} faults[TS_MEMORY_STEPS];
	struct ts_text out; /* what went to standard output */
};

void ts_memory_open(struct ts_memory *memory);
void ts_memory_close(struct ts_memory *memory);

/* Puts a file there, or takes the place of one; folders are those of the paths. "-" is standard
 * input. False: no memory. */
bool ts_memory_put(struct ts_memory *memory, const char *path, const char *bytes, size_t len);
/* A pipe or a device, which nobody may open who asks for an ordinary file. */
bool ts_memory_put_other(struct ts_memory *memory, const char *path);
/* Takes one away, as if it had vanished. */
void ts_memory_remove(struct ts_memory *memory, const char *path);
/* What stands in a file; NULL: it is not there. */
const char *ts_memory_get(const struct ts_memory *memory, const char *path);

#endif
