/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The growing text buffer. Neighbours: base/number.c writes the figures that are added here.
 */
#include "base/text.h"

#include <stdarg.h>
#include <string.h>

#include "base/arena.h"
#include "base/number.h"

void ts_text_open(struct ts_text *text, const struct ts_allocator *allocator)
{
	*text = (struct ts_text){.allocator = ts_allocator_or_default(allocator)};
}

void ts_text_drop(struct ts_text *text)
{
	if (text->at)
		text->allocator.resize(text->allocator.state, text->at, 0);
	*text = (struct ts_text){.allocator = text->allocator};
}

void ts_text_clear(struct ts_text *text)
{
	text->len = 0;
	if (text->at)
		text->at[0] = '\0';
}

/* Makes room for `len` more bytes and the NUL. */
static bool make_room(struct ts_text *text, size_t len)
{
	size_t need, want;
	char *moved;

	if (text->failed)
		return false;
	if (!ts_size_sum(text->len, len, &need) || !ts_size_sum(need, 1, &need))
		goto failed;
	if (need <= text->room)
		return true;
	want = text->room ? text->room : 256;
	while (want < need) {
		if (!ts_size_sum(want, want, &want))
			goto failed;
	}
	moved = text->allocator.resize(text->allocator.state, text->at, want);
	if (!moved)
		goto failed;
	text->at = moved;
	text->room = want;
	return true;
failed:
	text->failed = true;
	return false;
}

void ts_text_add(struct ts_text *text, const char *bytes, size_t len)
{
	if (!make_room(text, len))
		return;
	if (len)
		memcpy(text->at + text->len, bytes, len);
	text->len += len;
	text->at[text->len] = '\0';
}

void ts_text_put(struct ts_text *text, const char *string)
{
	if (string)
		ts_text_add(text, string, strlen(string));
}

void ts_text_puts(struct ts_text *text, ...)
{
	va_list args;
	const char *part;

	va_start(args, text);
	while ((part = va_arg(args, const char *)))
		ts_text_put(text, part);
	va_end(args);
}

void ts_text_fill(struct ts_text *text, char byte, size_t count)
{
	if (!make_room(text, count))
		return;
	memset(text->at + text->len, byte, count);
	text->len += count;
	text->at[text->len] = '\0';
}

void ts_text_number(struct ts_text *text, double value, int decimals)
{
	char digits[TS_NUMBER_ROOM];

	ts_text_put(text, ts_number_write(digits, value, decimals) ? digits : "?");
}

void ts_text_number_short(struct ts_text *text, double value, int decimals)
{
	char digits[TS_NUMBER_ROOM];

	ts_text_put(text, ts_number_write_short(digits, value, decimals) ? digits : "?");
}

const char *ts_text_get(const struct ts_text *text)
{
	return text->at ? text->at : "";
}

size_t ts_text_sequence(const char *text)
{
	const unsigned char *at = (const unsigned char *)text;
	size_t len = at[0] < 0x80                    ? 1
		     : at[0] >= 0xc2 && at[0] < 0xe0 ? 2
		     : at[0] >= 0xe0 && at[0] < 0xf0 ? 3
		     : at[0] >= 0xf0 && at[0] < 0xf5 ? 4
						     : 0;

	for (size_t i = 1; i < len; i++) {
		if ((at[i] & 0xc0) != 0x80)
			return 0;
	}
	if ((at[0] == 0xe0 && at[1] < 0xa0) || (at[0] == 0xed && at[1] > 0x9f) ||
		(at[0] == 0xf0 && at[1] < 0x90) || (at[0] == 0xf4 && at[1] > 0x8f))
		return 0;
	return len;
}

bool ts_text_control(const char *at)
{
	unsigned char c = (unsigned char)at[0], next = c == 0xc2 ? (unsigned char)at[1] : 0;

	return c < 0x20 || c == 0x7f || (next >= 0x80 && next < 0xa0);
}

size_t ts_text_order_mark(const char *bytes, size_t len)
{
	return len >= 3 && memcmp(bytes, "\xef\xbb\xbf", 3) == 0 ? 3 : 0;
}
