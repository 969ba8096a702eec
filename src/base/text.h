/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A growing text: the one buffer into which screens, JSON and sentences are written. Its failure
 * is sticky; check `failed` once at the end. It knows characters only as UTF-8 bytes.
 */
#ifndef TS_BASE_TEXT_H
#define TS_BASE_TEXT_H

#include <stdint.h>

#include <tapshoal/base.h>

struct ts_text {
	struct ts_allocator allocator;
	char *at; /* NUL-terminated once anything was added; NULL while empty */
	size_t len, room;
	bool failed;
};

/* Opens an empty text; nothing is allocated yet. `allocator` NULL: malloc. */
void ts_text_open(struct ts_text *text, const struct ts_allocator *allocator);
/* Frees the text; it may be used again afterwards. */
void ts_text_drop(struct ts_text *text);

/* Empties it and keeps its room; a failure stays one. */
void ts_text_clear(struct ts_text *text);

/* Adds `len` bytes. */
void ts_text_add(struct ts_text *text, const char *bytes, size_t len);
/* Adds a NUL-terminated string; NULL adds nothing. */
void ts_text_put(struct ts_text *text, const char *string);
/* Adds several strings; the last argument is NULL. */
void ts_text_puts(struct ts_text *text, ...);
/* Makes the letter at that byte, where one of ASCII stands there, a capital. */
void ts_text_capital(struct ts_text *text, size_t at);
/* Adds one byte `count` times. */
void ts_text_fill(struct ts_text *text, char byte, size_t count);
/* Adds a number with exactly `decimals` (see base/number.h); "?" where it is not finite. */
void ts_text_number(struct ts_text *text, double value, int decimals);
/* The same without trailing zeros: "7.5", "7". */
void ts_text_number_short(struct ts_text *text, double value, int decimals);

/* The text so far, never NULL; belongs to the buffer and moves with the next addition. */
const char *ts_text_get(const struct ts_text *text);

/*
 * Writes the strings up to a NULL one behind the other into `room` bytes, its NUL among them; what
 * does not fit is cut off. For short texts of our own, where a text that grows would be too much.
 */
void ts_text_fit(char *out, size_t room, ...);

/*
 * Bytes of the UTF-8 character that begins at `at`, a NUL-terminated text: 1 to 4; 0 where the
 * bytes are none (cut off, longer than need be, a surrogate, beyond U+10FFFF). The NUL is one of 1.
 */
size_t ts_text_sequence(const char *at);

/* The code point of the character at `at`; a byte that begins none is its own. */
uint32_t ts_text_point(const char *at);

/*
 * Whether a character is not seen and does something all the same: a control, an end of a line by
 * another name, what turns a line around, what has no width (but the joiners of some scripts).
 */
bool ts_text_unseen(uint32_t point);
/* The same of the character at `at`. */
bool ts_text_control(const char *at);

/* Adds so many hexadecimal digits, in small letters. */
void ts_text_hex(struct ts_text *text, uint32_t value, int digits);

/* Bytes of the byte order mark that some editors put first: 3, or 0 where there is none. */
size_t ts_text_order_mark(const char *bytes, size_t len);

#endif
