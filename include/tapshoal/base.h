/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What every other header of the library stands on: the status that a function returns, the
 * allocator that a caller may bring, the memory (arena) that owns results, and the findings in
 * which details of a failure are collected. No domain word lives here.
 */
#ifndef TAPSHOAL_BASE_H
#define TAPSHOAL_BASE_H

#include <stdbool.h>
#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

#if defined(__GNUC__) && !defined(__wasm__)
#define TS_API __attribute__((visibility("default")))
#define TS_MUST_USE __attribute__((warn_unused_result))
#elif defined(__GNUC__)
#define TS_API
#define TS_MUST_USE __attribute__((warn_unused_result))
#else
#define TS_API
#define TS_MUST_USE
#endif

/*
 * How a function ended. The program's exit code is the lookup 0, 1, 2, 3, 3 over these.
 * Bugs of the caller (a NULL that the prototype forbids) are not reported, bad input always is.
 */
enum ts_status {
	TS_OK,        /* the answer is yes, or was given */
	TS_NO,        /* the answer is no, or cannot be given from what is known */
	TS_BAD_INPUT, /* a value, file or call is wrong; findings say where and what would be right
		       */
	TS_NO_MEMORY, /* an allocation failed; nothing was changed that the caller can see */
	TS_SYSTEM     /* a file, pipe or folder failed */
};

/*
 * Where memory comes from. `resize` behaves like realloc: `old` NULL allocates, size 0 frees and
 * returns NULL; on failure it returns NULL and leaves `old` as it was. `state` is handed back
 * untouched. A NULL `const struct ts_allocator *` anywhere means malloc's family.
 */
struct ts_allocator {
	void *(*resize)(void *state, void *old, size_t size);
	void *state;
};

/* A block of an arena; opaque to callers. */
struct ts_arena_block;

/*
 * A bump arena: everything taken from it is freed at once by ts_arena_drop(). A failed take sets
 * `failed` for good, so that a public function checks once, at its end.
 */
struct ts_arena {
	struct ts_allocator allocator;
	struct ts_arena_block *blocks; /* newest first */
	size_t used, size;             /* bytes of the newest block */
	bool failed;                   /* an allocation failed since the arena was opened */
};

/* Opens an arena on the caller's memory; takes nothing yet. `allocator` NULL: malloc. */
TS_API void ts_arena_open(struct ts_arena *arena, const struct ts_allocator *allocator);
/* Frees everything taken from the arena and makes it empty, ready for use again. */
TS_API void ts_arena_drop(struct ts_arena *arena);

/*
 * How much a finding matters. A question: what it asks for is not known, which is never a fault. An
 * error stops the file or call it stands in.
 */
enum ts_severity { TS_NOTE, TS_QUESTION, TS_CONCERN, TS_CONFLICT, TS_ERROR, TS_SEVERITY__COUNT };

/*
 * A kind of finding: its name never changes meaning, so that tests, scripts and docs can cite it.
 * The rows stand in src/model/codes.c.
 */
struct ts_code {
	const char *id; /* "records.unknown-key" */
	enum ts_severity severity;
	const char *says;   /* what it means, one sentence */
	const char *remedy; /* what would be right, in general */
	const char *since;  /* version that first had it */
};

/* Where in a file: 1-based, columns in characters (code points), 0 = not known. */
struct ts_place {
	const char *file; /* as the caller named it; NULL = no file (a flag, a computed value) */
	unsigned line, column;
	const char *path; /* "readings[2].pH"; NULL = the whole file */
};

/* One finding; all texts belong to the arena of the findings. */
struct ts_finding {
	const struct ts_code *code;
	struct ts_place place;
	const char *what;   /* what is wrong here, with the value met */
	const char *remedy; /* what would be right here; never NULL */
};

/* How many findings are kept; further ones are only counted (`more`). */
#define TS_FINDINGS_MOST 1000

/*
 * Findings collected into an object of the caller. `no_memory` is sticky: some finding could not
 * be stored. A NULL `struct ts_findings *` given to any function means: not wanted.
 */
struct ts_findings {
	struct ts_arena arena;
	struct ts_finding *items;
	size_t count, room, more;
	size_t errors; /* how many, kept or not, were of severity TS_ERROR */
	bool no_memory;
};

/* Opens an empty collection. `allocator` NULL: malloc. */
TS_API void ts_findings_open(struct ts_findings *findings, const struct ts_allocator *allocator);
/* Frees all findings and makes the collection empty. */
TS_API void ts_findings_drop(struct ts_findings *findings);

/* "note" ...; NULL behind the last. */
TS_API extern const char *const ts_severity_words[];

#ifdef __cplusplus
}
#endif

#endif
