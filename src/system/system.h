/* SPDX-License-Identifier: Apache-2.0 */
/*
 * All that is asked of an operating system: files and folders, a file replaced as a whole, the
 * environment, the day, the terminal. A few functions behind pointers, so that the same code runs
 * on a machine (machine.h) and in memory (memory.h), where a full disk is one line of a test.
 */
#ifndef TS_SYSTEM_SYSTEM_H
#define TS_SYSTEM_SYSTEM_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/*
 * Why something failed: 0 for nothing, a positive errno, or one of these. ts_system_says() has the
 * words.
 */
enum ts_why {
	TS_WHY_NOT_ORDINARY = -1, /* a pipe, a device: it may have no end, or never begin */
	TS_WHY_INPUT = -2,        /* it is to be written, and was read or written by this call */
	TS_WHY_CHANGED = -3,      /* somebody else wrote it since it was read */
	TS_WHY_BUSY = -4,         /* somebody else is writing it, and went on doing so */
	TS_WHY_FOREIGN = -5,      /* somebody else's link or pipe in a folder that all may write */
};

enum ts_entry { TS_ENTRY_FILE, TS_ENTRY_FOLDER, TS_ENTRY_OTHER };

/* What stands at a path, behind links. */
struct ts_seen {
	enum ts_entry entry;
	uint64_t device, inode, size;
	int64_t modified_ns, changed_ns;
};

/* How a file is opened. */
enum ts_opening {
	TS_OPEN_ANY,      /* the user named it: a pipe is fine, "-" is standard input */
	TS_OPEN_ORDINARY, /* a file named it: nothing but an ordinary file is opened */
	TS_OPEN_REWRITE /* ordinary, and nobody else rewrites it in the same way until it is closed
			 */
};

struct ts_terminal {
	bool is;          /* a terminal, not a file or a pipe */
	bool plain;       /* its letters are not UTF-8 */
	unsigned columns; /* 0: not known */
};

#define TS_DAY_ROOM 11

/* Every `int` that is returned says why it failed; a handle is good until close or finish. */
struct ts_system {
	void *state;
	const char *inside; /* the image of the records, where the program holds it; NULL: not */
	size_t inside_len;
	int (*look)(void *state, const char *path, struct ts_seen *ret);
	/* Hands over the names in a folder, in no order, until `each` returns false. */
	int (*list)(void *state, const char *folder, bool (*each)(void *to, const char *name),
		void *to);
	int (*make_folder)(void *state, const char *path); /* one that stands there is no failure */

	int (*open)(void *state, const char *path, enum ts_opening how, int *ret);
	/* At least one byte of `room`, 0 at the end. */
	int (*read)(void *state, int handle, char *into, size_t room, size_t *ret_len);
	void (*close)(void *state, int handle);

	/*
	 * Begins to write a file. It takes its place as a whole at finish(), behind any link, with
	 * owner, group, rights and attributes of the one that stood there; pipes and devices are
	 * written through. `path` NULL: standard output. What this call has read or written is
	 * refused, but for `over`, the handle of TS_OPEN_REWRITE (-1: none), which must be as it
	 * was when it was opened.
	 */
	int (*create)(void *state, const char *path, int over, int *ret);
	int (*write)(void *state, int handle, const char *bytes, size_t len);
	/* With `keep` the file takes its place, else it is as if nothing had been written. */
	int (*finish)(void *state, int handle, bool keep);
	/* Is there an unfinished file beside this one, of a run that was ended? Its path. */
	bool (*left_over)(void *state, const char *path, char *ret, size_t room);

	const char *(*variable)(void *state, const char *name); /* NULL: not set */
	bool (*today)(void *state, char ret[TS_DAY_ROOM]);      /* "2026-03-01", where we are */
	bool (*program)(void *state, char *ret, size_t room);   /* the folder that it lies in */
	void (*terminal)(void *state, bool error, struct ts_terminal *ret);
	/*
	 * Shows a text that is too long for the terminal through the user's pager. False: nothing
	 * was shown, it is to be written as it is. PAGER="", PAGER=cat and a dumb terminal want
	 * none.
	 */
	bool (*paged)(void *state, const char *text, size_t len);
	/*
	 * Does work(to, part, parts) for each part below `parts`, which is returned: at least 1, at
	 * most `most` and TS_PARTS_MOST, as many as there are processors, all at the same time.
	 */
	size_t (*together)(void *state, size_t most,
		void (*work)(void *to, size_t part, size_t parts), void *to);
	/*
	 * Tells somebody at a terminal how far what takes long is, on standard error and at most
	 * once a second: "12000 waters". `what` NULL: it is over, and the line is taken away. NULL:
	 * tells nobody.
	 */
	void (*progress)(void *state, double done, const char *what);
};

#define TS_PARTS_MOST 16

/* For the table of a system that has one processor. */
size_t ts_system_alone(
	void *state, size_t most, void (*work)(void *to, size_t part, size_t parts), void *to);

/* The machine's own, for callers of the library who name none: it remembers nothing. */
const struct ts_system *ts_system_machine(void);

/* "No space left on device"; never NULL. */
const char *ts_system_says(int why);

/* The same file, and not written in between. */
bool ts_system_same(const struct ts_seen *a, const struct ts_seen *b);

#endif
