/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rules of scan.h. Which signs a scanner takes for one another: common practice, no source.
 */
#include "intake/scan.h"

#include <string.h>

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || c == '~';
}

static bool is_upper(char c)
{
	return c >= 'A' && c <= 'Z';
}

static bool is_mark(char c)
{
	return c == '.' || c == ',';
}

static bool is_gap(char c)
{
	return c == ' ' || c == '\t' || c == '\0';
}

/* "0,O5", "<1O", "O,4": a capital O among the digits of a figure is its zero. */
static void mend_zeros(struct ts_report_line *l)
{
	bool figure = false; /* what stands before is one, and no word's */

	for (size_t i = 0; i < l->len; i++) {
		char before = i ? l->lower[i - 1] : ' ', next = l->lower[i + 1];
		bool sign = next == '.' || next == ',';
		bool begins = strchr(" \t<>", before) && sign && is_digit(l->lower[i + 2]);

		if (l->plain[i] == 'O' && !is_letter(next) && (figure || begins)) {
			l->plain[i] = l->lower[i] = '0';
			l->scanned = true;
		}
		figure = is_digit(l->lower[i]) ? figure || !is_letter(before)
					       : figure && strchr(".,", l->lower[i]);
	}
}

static void cut_blank(struct ts_report_line *l, size_t at)
{
	memmove(l->plain + at, l->plain + at + 1, l->len - at);
	memmove(l->lower + at, l->lower + at + 1, l->len - at);
	memmove(l->from + at, l->from + at + 1, (l->len - at) * sizeof *l->from);
	l->len--;
}

/*
 * "7 ,41": a blank before the sign of a decimal is the scan's. Where another figure stands just
 * before ("2 0 ,5") the digits may be of one figure or of two, and nothing is mended.
 */
static void mend_blanks_before(struct ts_report_line *l)
{
	for (size_t i = 1; i + 2 < l->len; i++) {
		size_t first = i, last = i + 2;

		if (l->lower[i] != ' ' || !strchr(".,", l->lower[i + 1]))
			continue;
		while (first && is_digit(l->lower[first - 1]))
			first--;
		while (is_digit(l->lower[last]) || l->plain[last] == 'O')
			last++;
		if (first == i || last == i + 2 || (last < l->len && l->lower[last] != ' ') ||
			(first && !strchr(" <>\t", l->lower[first - 1])) ||
			(first > 1 && is_digit(l->lower[first - 2])) || l->lower[last + 1] == ',')
			continue;
		cut_blank(l, i);
		l->scanned = true;
	}
}

/* "   22, 4   ": the same behind the sign, alone in its column. */
static void mend_blanks_behind(struct ts_report_line *l)
{
	for (size_t i = 2; i + 1 < l->len && l->scanned; i++) {
		size_t first = i - 1, last = i + 1;

		if (l->lower[i] != ' ' || !is_mark(l->lower[i - 1]) || !is_digit(l->lower[i + 1]))
			continue;
		while (first && is_digit(l->lower[first - 1]))
			first--;
		while (is_digit(l->lower[last]))
			last++;
		if (first == i - 1 || first < 2 || memcmp(l->lower + first - 2, "  ", 2) != 0 ||
			(last < l->len && memcmp(l->lower + last, "  ", 2) != 0))
			continue;
		cut_blank(l, i);
	}
}

/* Signs of which the figures of a scan are made. */
static bool is_of_figure(char c)
{
	return is_digit(c) || is_mark(c) || (c && strchr("lIO<>", c));
}

/* "l,88", "l51", "26.l", "45,l", "2OO": a letter among the digits of a figure is its one, or zero.
 */
static bool is_digits_letter(const struct ts_report_line *l, size_t i, size_t start, size_t end)
{
	const char *p = l->plain;
	bool before =
		i > start &&
		(is_digit(p[i - 1]) || (i > start + 1 && is_mark(p[i - 1]) && is_digit(p[i - 2])));
	bool behind =
		i + 1 < end &&
		(is_digit(p[i + 1]) || (i + 2 < end && is_mark(p[i + 1]) && is_digit(p[i + 2])));

	if (p[i] == 'O')
		return before;
	if (before && i + 1 == end) /* "200l" may be litres */
		return l->scanned || is_mark(p[i - 1]);
	return behind && (p[i] == 'l' || before || l->scanned);
}

static void mend_letters(struct ts_report_line *l)
{
	size_t start = 0, end;

	while (start < l->len) {
		bool digits = false;

		end = start;
		while (end < l->len && is_of_figure(l->plain[end]))
			digits |= is_digit(l->plain[end++]);
		for (size_t i = start; i < end && digits && is_gap(l->plain[end]); i++) {
			if (!strchr("lIO", l->plain[i]) || !is_digits_letter(l, i, start, end))
				continue;
			l->plain[i] = l->lower[i] = l->plain[i] == 'O' ? '0' : '1';
			l->scanned = true;
		}
		/* on behind the next blank */
		while (end < l->len && !is_gap(l->plain[end]))
			end++;
		start = end + 1;
	}
}

/* "mg/I", "mmoI", "CIoruri", "LlMITES", "RAPP0RTO": signs that no keyboard makes. */
static bool shows_signs(const struct ts_report_line *l)
{
	const char *p = l->plain;

	for (size_t i = 1; i < l->len; i++) {
		bool low = p[i - 1] >= 'a' && p[i - 1] <= 'z', high = is_upper(p[i - 1]);

		if (p[i] == 'I' && ((p[i - 1] == '/' && low == high && i > 1 &&
					    is_letter(p[i - 2]) && !is_letter(l->lower[i + 1])) ||
					   low))
			return true;
		if ((p[i] == 'l' || p[i] == '0') && high && is_upper(p[i + 1]))
			return true;
	}
	return false;
}

void ts_scan_mend(struct ts_report_line *line)
{
	mend_blanks_before(line);
	mend_zeros(line);
	line->scanned |= shows_signs(line);
	mend_letters(line);
	mend_blanks_behind(line);
}

/* Letters that a scan takes for one another, the first of each for all. */
static const char *const alike[] = {"il1", "o0", "s5"};
#define ALIKE_COUNT (sizeof alike / sizeof *alike)

static const char *class_of(char c)
{
	for (size_t i = 0; i < ALIKE_COUNT; i++) {
		if (c && strchr(alike[i], c))
			return alike[i];
	}
	return NULL;
}

bool ts_scan_alike(char a, char b)
{
	return a == b || (class_of(a) && class_of(a) == class_of(b)) || (a == '@' && b == 'o') ||
	       (a == 'o' && b == '@');
}

static bool put(const char *text, size_t len, char *out, size_t room, size_t *io_at)
{
	if (*io_at + len >= room)
		return false;
	memcpy(out + *io_at, text, len);
	*io_at += len;
	out[*io_at] = '\0';
	return true;
}

/* One literal sign of a pattern, or a class, `len` bytes, with the blank that may follow. */
static bool put_loose(const char *text, size_t len, char *out, size_t room, size_t *io_at)
{
	const char *same = len == 1 ? class_of(*text) : NULL;
	bool ok = put("(?:", 3, out, room, io_at);

	if (len == 1 && *text == '@')
		ok = ok && put("[@o0]", 5, out, room, io_at);
	else if (same)
		ok = ok && put("[", 1, out, room, io_at) &&
		     put(same, strlen(same), out, room, io_at) && put("]", 1, out, room, io_at);
	else
		ok = ok && put(text, len, out, room, io_at);
	return ok && put(" ?)", 3, out, room, io_at);
}

bool ts_scan_pattern(const char *pattern, char *out, size_t room)
{
	size_t at = 0;
	bool ok = true;

	out[0] = '\0';
	for (const char *p = pattern; *p && ok;) {
		size_t len = *p == '\\' ? 2 : *p == '[' ? strcspn(p, "]") + 1 : 1;

		if (memcmp(p, "(?", 2) == 0) { /* "(?:", "(?<=", "(?!" */
			len = strcspn(p + 2, ":=!") + 3;
			ok = put(p, len, out, room, &at);
		} else if (*p == '{') {
			len = strcspn(p, "}") + 1;
			ok = put(p, len, out, room, &at);
		} else if (*p == ' ') { /* a blank before its letter may be missing */
			ok = p[1] == '?' || put(" ?", 2, out, room, &at);
			ok = ok && (p[1] != '?' || put(" ", 1, out, room, &at));
		} else if (strchr("()|?*+.", *p)) {
			ok = put(p, 1, out, room, &at);
		} else {
			ok = put_loose(p, len, out, room, &at);
		}
		p += len;
	}
	return ok;
}
