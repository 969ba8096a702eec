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

void ts_text_fit(char *out, size_t room, ...)
{
	va_list args;
	const char *part;

	va_start(args, room);
	while ((part = va_arg(args, const char *)) && room > 1) {
		size_t len = strlen(part) < room ? strlen(part) : room - 1;

		memcpy(out, part, len);
		out += len;
		room -= len;
	}
	va_end(args);
	if (room)
		*out = '\0';
}

void ts_text_capital(struct ts_text *text, size_t at)
{
	if (at < text->len && text->at[at] >= 'a' && text->at[at] <= 'z')
		text->at[at] = (char)(text->at[at] - 'a' + 'A');
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

uint32_t ts_text_point(const char *text)
{
	const unsigned char *at = (const unsigned char *)text;
	size_t len = ts_text_sequence(text);
	uint32_t point = len < 2 ? at[0] : at[0] & (0x7fu >> len);

	for (size_t i = 1; i < len; i++)
		point = point << 6 | (at[i] & 0x3f);
	return point;
}

bool ts_text_unseen(uint32_t point)
{
	static const struct {
		uint32_t first, last;
	} unseen[] = {{0, 0x1f}, {0x7f, 0x9f}, {0xad, 0xad}, {0x61c, 0x61c}, {0x115f, 0x1160},
		{0x17b4, 0x17b5}, {0x180b, 0x180f}, {0x200b, 0x200b}, {0x200e, 0x200f},
		{0x2028, 0x202e}, {0x2060, 0x206f}, {0x3164, 0x3164}, {0xfeff, 0xfeff},
		{0xffa0, 0xffa0}, {0xfff0, 0xfffb}, {0x1bca0, 0x1bca3}, {0x1d173, 0x1d17a},
		{0xe0000, 0xe0fff}};

	for (size_t i = 0; i < sizeof unseen / sizeof *unseen; i++) {
		if (point <= unseen[i].last)
			return point >= unseen[i].first;
	}
	return false;
}

bool ts_text_control(const char *at)
{
	unsigned char first = (unsigned char)*at;

	return first < 0xc2 ? first < 0x20 || first == 0x7f : ts_text_unseen(ts_text_point(at));
}

void ts_text_hex(struct ts_text *text, uint32_t value, int digits)
{
	while (digits--)
		ts_text_add(text, &"0123456789abcdef"[value >> 4 * digits & 15], 1);
}

size_t ts_text_order_mark(const char *bytes, size_t len)
{
	return len >= 3 && memcmp(bytes, "\xef\xbb\xbf", 3) == 0 ? 3 : 0;
}
