/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Folding one line to plain ASCII. Everything downstream sees the same letters whichever way a
 * report was typed, exported or copied.
 */
#include "intake/lines.h"

#include <string.h>

#include "intake/scan.h"

/* Windows-1252 puts these at 0x80..0x9f, where Latin-1 has nothing; others read as a blank. */
static const struct {
	unsigned char byte;
	unsigned code;
} windows[] = {{0x80, 0x20ac}, {0x85, 0x2026}, {0x8a, 0x160}, {0x8c, 0x152}, {0x91, 0x2018},
	{0x92, 0x2019}, {0x93, 0x201c}, {0x94, 0x201d}, {0x95, 0x2022}, {0x96, 0x2013},
	{0x97, 0x2014}, {0x9a, 0x161}, {0x9c, 0x153}};

/* U+00C0 to U+017F: the letters without their accents; '_' where two are written, see pairs. */
static const char letters[] = "AAAAAA_CEEEEIIIIDNOOOOOxOUUUUYP_aaaaaa_ceeeeiiiidnooooo-ouuuuypy"
			      "AaAaAaCcCcCcCcDdDdEeEeEeEeEeGgGgGgGgHhHhIiIiIiIiIiIiJjKkkLlLlLlLlLl"
			      "NnNnNnnNnOoOoOo__RrRrRrSsSsSsSsTtTtTtUuUuUuUuUuUuWwYyYZzZzZzs";

/* Sorted by code: what is written for one sign. */
static const struct {
	unsigned code;
	const char *plain;
} signs[] = {
	{0xa0, " "},
	{0xab, " "},
	{0xad, ""},
	{0xb0, "@"},
	{0xb1, "+-"},
	{0xb5, "u"},
	{0xb7, "."},
	{0xba, "@"},
	{0xbb, " "},
	{0xc6, "AE"},
	{0xdf, "ss"},
	{0xe6, "ae"},
	{0x152, "OE"},
	{0x153, "oe"},
	{0x2da, "@"},
	{0x3bc, "u"},
	{0x1d52, "@"},
	{0x2018, "'"},
	{0x2019, "'"},
	{0x201c, "\""},
	{0x201d, "\""},
	{0x2026, ".."},
	{0x207a, "+"},
	{0x207b, "-"},
	{0x208a, "+"},
	{0x208b, "-"},
	{0x2103, "@C"},
	{0x2113, "l"},
	{0x2212, "-"},
	{0x2219, "."},
	{0x2264, "<"},
	{0x2265, ">"},
	{0x22c5, "."},
	{0xfeff, ""},
};

struct fold {
	struct ts_report_line *line;
	size_t at; /* byte of raw that is being read */
};

static void put(struct fold *f, char c)
{
	struct ts_report_line *l = f->line;
	bool upper = c >= 'A' && c <= 'Z';

	/* The degree sign stands at its letter: "° dH" and "°dH" are one unit. */
	if (c == ' ' && l->len && l->plain[l->len - 1] == '@')
		return;
	if (l->len == TS_LINE_MOST)
		return;
	l->plain[l->len] = c;
	l->lower[l->len] = upper ? (char)(c - 'A' + 'a') : c;
	l->from[l->len++] = (unsigned short)f->at;
}

static bool letter_before(const struct ts_report_line *l)
{
	char c = l->len ? l->lower[l->len - 1] : ' ';

	return (c >= 'a' && c <= 'z') || c == '@';
}

/* Raised and lowered digits belong to formulas; behind a figure or a bracket they are footnotes. */
static bool put_small_digit(struct fold *f, unsigned code)
{
	unsigned digit;

	if (code >= 0x2080 && code <= 0x2089)
		digit = code - 0x2080;
	else if (code == 0x2070 || (code >= 0x2074 && code <= 0x2079))
		digit = code - 0x2070;
	else if (code == 0xb2 || code == 0xb3)
		digit = code - 0xb0;
	else if (code == 0xb9)
		digit = 1;
	else
		return false;
	if (letter_before(f->line))
		put(f, (char)('0' + digit));
	return true;
}

static const char *sign_of(unsigned code)
{
	size_t low = 0, high = sizeof signs / sizeof *signs;

	while (low < high) {
		size_t middle = (low + high) / 2;

		if (signs[middle].code == code)
			return signs[middle].plain;
		if (signs[middle].code < code)
			low = middle + 1;
		else
			high = middle;
	}
	return NULL;
}

static void put_code(struct fold *f, unsigned code)
{
	const char *plain;

	if (code < 0x20) {
		put(f, code == '\t' ? '\t' : ' ');
	} else if (code < 0x7f) {
		put(f, code == '@' || code == 0x1f ? ' ' : (char)code);
	} else if ((plain = sign_of(code)) != NULL) {
		while (*plain)
			put(f, *plain++);
	} else if (put_small_digit(f, code)) {
		return;
	} else if (code >= 0xc0 && code < 0xc0 + sizeof letters - 1) {
		put(f, letters[code - 0xc0]);
	} else if (code >= 0x2010 && code <= 0x2015) {
		put(f, '-');
	} else if (code < 0xc0 || (code >= 0x2000 && code < 0x2c00)) {
		put(f, ' ');
	} else {
		put(f, '~'); /* a letter of another script: part of some word */
	}
}

/* Length of the UTF-8 sequence at `at`, 0 = none; `*ret` is its code point. */
static size_t utf8_at(const char *bytes, size_t len, size_t at, unsigned *ret)
{
	unsigned char first = (unsigned char)bytes[at];
	size_t count = first < 0x80   ? 1
		       : first < 0xc2 ? 0
		       : first < 0xe0 ? 2
		       : first < 0xf0 ? 3
				      : 4;
	unsigned code = count == 1 ? first : first & (0x7fu >> count);

	if (first > 0xf4 || !count || at + count > len)
		return 0;
	for (size_t i = 1; i < count; i++) {
		if (((unsigned char)bytes[at + i] & 0xc0) != 0x80)
			return 0;
		code = code << 6 | ((unsigned char)bytes[at + i] & 0x3f);
	}
	if ((count == 3 && code < 0x800) || (count == 4 && (code < 0x10000 || code > 0x10ffff)) ||
		(code >= 0xd800 && code < 0xe000))
		return 0;
	*ret = code;
	return count;
}

static bool is_utf8(const struct ts_report_line *line)
{
	unsigned code;

	for (size_t at = 0, used; at < line->raw_len; at += used) {
		used = utf8_at(line->raw, line->raw_len, at, &code);
		/* A line cut in the middle of a letter is none the less UTF-8. */
		if (!used)
			return line->cut && at + 4 > line->raw_len;
	}
	return true;
}

static unsigned windows_code(char byte)
{
	for (size_t i = 0; i < sizeof windows / sizeof *windows; i++) {
		if (windows[i].byte == (unsigned char)byte)
			return windows[i].code;
	}
	return (unsigned char)byte;
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || c == '~';
}

/* Dots that lead from one column to the next. */
#define LEADERS_LEAST 4

/* "Village......12,4......7,5": with two leaders or more each parts two cells. */
static void cut_leaders(struct ts_report_line *l)
{
	for (int pass = 0, leaders = 0; pass < 2; pass++) {
		for (size_t i = 0, end; i < l->len; i = end + 1) {
			end = i + strspn(l->lower + i, ".");
			leaders += !pass && end >= i + LEADERS_LEAST;
			if (!pass || leaders < 2 || end < i + LEADERS_LEAST)
				continue;
			memset(l->lower + i, ' ', end - i);
			memset(l->plain + i, ' ', end - i);
			l->lower[i] = l->plain[i] = '|';
		}
	}
}

void ts_line_fold(struct ts_report_line *line)
{
	struct fold f = {line, 0};
	unsigned code = 0;

	line->len = 0;
	line->latin = !is_utf8(line);
	while (f.at < line->raw_len) {
		size_t used = line->latin ? 0 : utf8_at(line->raw, line->raw_len, f.at, &code);

		if (!used)
			code = windows_code(line->raw[f.at]);
		put_code(&f, code);
		f.at += used ? used : 1;
	}
	line->plain[line->len] = line->lower[line->len] = '\0';
	line->from[line->len] = (unsigned short)line->raw_len;
	cut_leaders(line);
	ts_scan_mend(line);
}

size_t ts_line_cell_end(const struct ts_report_line *line, size_t at, char delimiter)
{
	bool quoted = false;

	for (; at < line->len; at++) {
		if (line->lower[at] == '"' && delimiter != '|')
			quoted = !quoted;
		else if (line->lower[at] == delimiter && !quoted)
			break;
	}
	return at;
}

/* One cell without a figure, or nothing but one. */
static bool is_pure(const char *cell, size_t len)
{
	size_t figures = 0;

	for (size_t i = 0; i < len; i++)
		figures += is_digit(cell[i]) || strchr("<>.-\"", cell[i]) != NULL;
	if (figures == len)
		return true;
	for (size_t i = 0; i < len; i++) {
		if (is_digit(cell[i]) && (i == 0 || !is_letter(cell[i - 1])))
			return false;
	}
	return cell[0] != ' ';
}

bool ts_comma_separated(const struct ts_report_line *line)
{
	size_t cells = 0;
	bool digits = strpbrk(line->lower, "0123456789") != NULL;

	for (size_t at = 0; at <= line->len; cells++) {
		size_t end = ts_line_cell_end(line, at, ',');

		if (cells && !is_pure(line->lower + at, end - at))
			return false;
		at = end + 1;
	}
	return cells >= (digits ? 3 : 2);
}

static const struct {
	const char *bytes;
	size_t len;
	struct ts_report_refusal says;
} magics[] = {
	{"%PDF-", 5,
		{"this is a PDF, not text",
			"turn it into text: pdftotext -layout FILE - | tapshoal read -"}},
	{"PK\x03\x04", 4,
		{"this is a packed file (a spreadsheet or an archive), not text",
			"save the table as CSV and read that"}},
	{"\xd0\xcf\x11\xe0", 4,
		{"this is an office file, not text", "save the table as CSV and read that"}},
	{"\xff\xfe", 2, {"this is UTF-16 text", "save it as UTF-8"}},
	{"\xfe\xff", 2, {"this is UTF-16 text", "save it as UTF-8"}},
	{"\x1f\x8b", 2, {"this is a compressed file, not text", "unpack it first"}},
	{"\x89PNG", 4, {"this is a picture, not text", "type the figures off, or use flags"}},
	{"\xff\xd8\xff", 3, {"this is a picture, not text", "type the figures off, or use flags"}},
};

const struct ts_report_refusal *ts_bytes_refused(const char *bytes, size_t len)
{
	for (size_t i = 0; i < sizeof magics / sizeof *magics; i++) {
		if (len >= magics[i].len && memcmp(bytes, magics[i].bytes, magics[i].len) == 0)
			return &magics[i].says;
	}
	return NULL;
}

const struct ts_report_refusal *ts_byte_refused(char byte)
{
	static const struct ts_report_refusal binary = {"this is not text: it holds zero bytes",
		"read text or CSV; for a PDF: pdftotext -layout FILE - | tapshoal read -"};

	return byte ? NULL : &binary;
}

/* Control signs, also those of 0x80..0x9f, would act on a terminal: a blank stands for each. */
static bool is_blank(unsigned code)
{
	return code <= 0x20 || (code >= 0x7f && code <= 0xa0) || code == 0xfeff || code == 0x2028 ||
	       code == 0x2029 || (code & 0xfffe) == 0xfffe;
}

static size_t write_utf8(char *out, unsigned code)
{
	if (code < 0x80) {
		out[0] = (char)code;
		return 1;
	}
	if (code < 0x800) {
		out[0] = (char)(0xc0 | code >> 6);
		out[1] = (char)(0x80 | (code & 0x3f));
		return 2;
	}
	out[0] = (char)(0xe0 | code >> 12);
	out[1] = (char)(0x80 | (code >> 6 & 0x3f));
	out[2] = (char)(0x80 | (code & 0x3f));
	return 3;
}

void ts_line_show(
	const struct ts_report_line *line, size_t start, size_t end, char *out, size_t room)
{
	static const char more[] = " ...";
	size_t len = 0;

	while (start < end && len + 4 + sizeof more < room) {
		unsigned code = windows_code(line->raw[start]);
		size_t used = line->latin ? 0 : utf8_at(line->raw, end, start, &code);

		if (is_blank(code) && len && out[len - 1] != ' ')
			out[len++] = ' ';
		else if (!is_blank(code) && used > 1)
			memcpy(out + len, line->raw + start, used);
		if (!is_blank(code))
			len += used > 1 ? used : write_utf8(out + len, code);
		start += used ? used : 1;
	}
	while (len && out[len - 1] == ' ')
		len--;
	if (start < end) {
		memcpy(out + len, more, sizeof more - 1);
		len += sizeof more - 1;
	}
	out[len] = '\0';
}
