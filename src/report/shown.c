/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Texts of others, one character at a time: the same step measures and writes, so that columns
 * stand even where a text is broken.
 */
#include "report/shown.h"

#include <string.h>
#include <utf8proc.h>

#define MARK "\xef\xbf\xbd" /* U+FFFD, one column wide */
#define PARTS_MOST 32

/* Letters that the tables of Unicode do not take apart. */
static const struct {
	utf8proc_int32_t point;
	const char *letters;
} spelled[] = {
	{0xb0, "deg"},
	{0xb5, "u"},
	{0xc6, "AE"},
	{0xd8, "O"},
	{0xdf, "ss"},
	{0xe6, "ae"},
	{0xf8, "o"},
	{0x131, "i"},
	{0x141, "L"},
	{0x142, "l"},
	{0x152, "OE"},
	{0x153, "oe"},
	{0x3bc, "u"},
};

bool ts_shown_harmless(int32_t point)
{
	return !ts_text_unseen((uint32_t)point) && (point & 0xfffe) != 0xfffe;
}

/* A character in plain letters: at most three, "" for an accent, "?" where nothing stands for it.
 */
static void in_letters(utf8proc_int32_t point, char ret[4])
{
	const utf8proc_option_t options =
		UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT | UTF8PROC_STRIPMARK | UTF8PROC_LUMP;
	utf8proc_int32_t parts[PARTS_MOST];
	utf8proc_ssize_t count;
	int class = 0;

	for (size_t i = 0; i < sizeof spelled / sizeof *spelled; i++) {
		if (spelled[i].point == point) {
			memcpy(ret, spelled[i].letters, strlen(spelled[i].letters) + 1);
			return;
		}
	}
	count = utf8proc_decompose_char(point, parts, PARTS_MOST, options, &class);
	memcpy(ret, "?", 2);
	if (count < 0 || count > 3)
		return;
	for (utf8proc_ssize_t i = 0; i < count; i++) {
		if (parts[i] < 0x20 || parts[i] > 0x7e)
			return;
	}
	for (utf8proc_ssize_t i = 0; i < count; i++)
		ret[i] = (char)parts[i];
	ret[count] = '\0';
}

/* One character as it is shown. */
struct step {
	const char *bytes; /* of the text itself, or of `letters` */
	size_t len, width, used;
	char letters[4];
};

static void next(const char *text, size_t len, bool ascii, struct step *ret)
{
	utf8proc_int32_t point = (unsigned char)*text;
	utf8proc_ssize_t used = 1;
	int width;

	if (point >= 0x80)
		used = utf8proc_iterate(
			(const utf8proc_uint8_t *)text, (utf8proc_ssize_t)len, &point);
	ret->used = used > 0 ? (size_t)used : 1;
	ret->bytes = text;
	ret->len = ret->used;
	if (point == '\t' || point == '\n') {
		ret->bytes = " ";
	} else if (used <= 0 || !ts_shown_harmless(point)) {
		ret->bytes = ascii ? "?" : MARK;
		ret->len = strlen(ret->bytes);
	} else if (point >= 0x80 && ascii) {
		in_letters(point, ret->letters);
		ret->bytes = ret->letters;
		ret->len = strlen(ret->letters);
	} else if (point >= 0x80) {
		width = utf8proc_charwidth(point);
		ret->width = width > 0 ? (size_t)width : 0;
		return;
	}
	ret->width = ascii ? ret->len : 1;
}

/* Whether eight bytes may hold another than a plain letter. */
static bool others_in(const char *text)
{
	const uint64_t ones = UINT64_C(0x0101010101010101), tops = ones << 7;
	uint64_t eight, gone;

	memcpy(&eight, text, sizeof eight);
	gone = eight ^ ones * 0x7f; /* what no longer is a letter has become nothing */
	return ((eight - ones * ' ') | (gone - ones) | eight) & tops;
}

/* How many plain letters the text begins with: most are, and they stand for themselves. */
static size_t plain(const char *text, size_t len)
{
	size_t n = 0;

	while (len - n >= 8 && !others_in(text + n))
		n += 8;
	while (n < len && text[n] >= ' ' && text[n] <= '~')
		n++;
	return n;
}

bool ts_shown_plain(const char *text, size_t len)
{
	return plain(text, len) == len;
}

void ts_shown_add(struct ts_text *out, const char *text, size_t len, bool ascii)
{
	size_t letters = plain(text, len);

	ts_text_add(out, text, letters);
	while (letters < len) {
		struct step s;

		next(text + letters, len - letters, ascii, &s);
		ts_text_add(out, s.bytes, s.len);
		letters += s.used;
	}
}

size_t ts_shown_width(const char *text, size_t len, bool ascii)
{
	size_t at = plain(text, len), width = at;

	for (struct step s; at < len; at += s.used) {
		next(text + at, len - at, ascii, &s);
		width += s.width;
	}
	return width;
}

size_t ts_shown_fit(const char *text, size_t len, size_t columns, bool ascii)
{
	size_t fits = plain(text, len < columns ? len : columns), width = fits;

	for (struct step s; fits < len; fits += s.used) {
		next(text + fits, len - fits, ascii, &s);
		if (fits && width + s.width > columns)
			break;
		width += s.width;
	}
	return fits;
}
