/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Folding by the tables of Unicode (libutf8proc), one character at a time.
 */
#include "catalogue/fold.h"

#include <stdbool.h>
#include <string.h>
#include <utf8proc.h>

struct folded {
	enum ts_fold how;
	char *out;
	size_t len, room;
	bool gap; /* a blank is due before the next letter */
};

static void put_bytes(struct folded *f, const char *bytes, size_t len)
{
	if (f->len + len >= f->room)
		return;
	memcpy(f->out + f->len, bytes, len);
	f->len += len;
}

static bool letter_or_digit(utf8proc_int32_t c)
{
	return c >= 0x80 || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}

static void put(struct folded *f, utf8proc_int32_t c)
{
	utf8proc_uint8_t bytes[4];
	utf8proc_ssize_t len;

	if (f->how == TS_FOLD_NAME) {
		if (c == '\'' || c == 0x2019) /* apostrophes join, they do not part */
			return;
		if (!letter_or_digit(c) || (c >= 0x2010 && c <= 0x2015)) {
			f->gap = f->len > 0;
			return;
		}
		if (f->gap)
			put_bytes(f, " ", 1);
		f->gap = false;
	}
	len = utf8proc_encode_char(c, bytes);
	put_bytes(f, (const char *)bytes, (size_t)len);
}

/* The same of a letter of one byte, in small: nearly all of them. */
static inline void put_plain(struct folded *f, char c)
{
	bool kept = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || f->how != TS_FOLD_NAME;

	if (!kept || f->gap || f->len + 1 >= f->room)
		put(f, (unsigned char)c);
	else
		f->out[f->len++] = c;
}

static void put_decomposed(struct folded *f, utf8proc_int32_t c)
{
	utf8proc_int32_t parts[32];
	int class = 0;
	int options = UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT | UTF8PROC_CASEFOLD |
		      (f->how == TS_FOLD_CASE ? 0 : UTF8PROC_STRIPMARK);
	utf8proc_ssize_t count =
		utf8proc_decompose_char(c, parts, 32, (utf8proc_option_t)options, &class);

	for (utf8proc_ssize_t i = 0; i < count && i < 32; i++)
		put(f, parts[i]);
}

size_t ts_fold(enum ts_fold how, const char *text, size_t len, char *out, size_t room)
{
	struct folded f = {how, out, 0, room, false};
	size_t at = 0;

	while (at < len) {
		utf8proc_int32_t c = (unsigned char)text[at];
		utf8proc_ssize_t used = 1;

		if (c < 0x80) {
			put_plain(&f, (char)(c >= 'A' && c <= 'Z' ? c + 32 : c));
			at++;
			continue;
		}
		used = utf8proc_iterate(
			(const utf8proc_uint8_t *)text + at, (utf8proc_ssize_t)(len - at), &c);
		if (used > 0)
			put_decomposed(&f, c);
		else
			put(&f, '?');
		at += used > 0 ? (size_t)used : 1;
	}
	out[f.len] = '\0';
	return f.len;
}
