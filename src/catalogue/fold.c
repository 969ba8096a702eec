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

/* Letters and digits of one byte, in small; 0: another. */
static const char plain[256] = {['0'] = '0',
	['1'] = '1',
	['2'] = '2',
	['3'] = '3',
	['4'] = '4',
	['5'] = '5',
	['6'] = '6',
	['7'] = '7',
	['8'] = '8',
	['9'] = '9',
	['a'] = 'a',
	['b'] = 'b',
	['c'] = 'c',
	['d'] = 'd',
	['e'] = 'e',
	['f'] = 'f',
	['g'] = 'g',
	['h'] = 'h',
	['i'] = 'i',
	['j'] = 'j',
	['k'] = 'k',
	['l'] = 'l',
	['m'] = 'm',
	['n'] = 'n',
	['o'] = 'o',
	['p'] = 'p',
	['q'] = 'q',
	['r'] = 'r',
	['s'] = 's',
	['t'] = 't',
	['u'] = 'u',
	['v'] = 'v',
	['w'] = 'w',
	['x'] = 'x',
	['y'] = 'y',
	['z'] = 'z',
	['A'] = 'a',
	['B'] = 'b',
	['C'] = 'c',
	['D'] = 'd',
	['E'] = 'e',
	['F'] = 'f',
	['G'] = 'g',
	['H'] = 'h',
	['I'] = 'i',
	['J'] = 'j',
	['K'] = 'k',
	['L'] = 'l',
	['M'] = 'm',
	['N'] = 'n',
	['O'] = 'o',
	['P'] = 'p',
	['Q'] = 'q',
	['R'] = 'r',
	['S'] = 's',
	['T'] = 't',
	['U'] = 'u',
	['V'] = 'v',
	['W'] = 'w',
	['X'] = 'x',
	['Y'] = 'y',
	['Z'] = 'z'};

/* As many of them as follow: nearly all of a name. Returns how many. */
static size_t put_run(struct folded *f, const char *text, size_t len)
{
	size_t room = f->room - f->len, n = 0;
	char *out = f->out + f->len;
	char c;

	if (f->gap)
		return 0;
	while (n < len && n + 1 < room && (c = plain[(unsigned char)text[n]]))
		out[n++] = c;
	f->len += n;
	return n;
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
		size_t run = put_run(&f, text + at, len - at);
		utf8proc_ssize_t used = 1;
		utf8proc_int32_t c;

		at += run;
		if (at == len)
			break;
		c = (unsigned char)text[at];
		if (c < 0x80) {
			put(&f, plain[c] ? plain[c] : c);
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
