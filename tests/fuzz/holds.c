/* SPDX-License-Identifier: Apache-2.0 */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "holds.h"

#include <tapshoal/match.h>

void hold(bool what)
{
	if (!what)
		abort();
}

static void hold_reading(const struct ts_report *r)
{
	size_t taken = 0;

	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *f = &ts_shape_reading.fields[i];
		struct ts_measure m;

		if (f->kind != TS_MEASURE)
			continue;
		memcpy(&m, (const char *)&r->reading + f->offset, sizeof m);
		if (m.kind == TS_MEASURE_NONE)
			continue;
		taken++;
		hold(isfinite(m.value) && m.low <= m.value && m.value <= m.high);
		hold(m.low >= ts_quantities[f->quantity].min);
		hold(m.kind == TS_MEASURE_ABOVE || m.high <= ts_quantities[f->quantity].max);
		hold(r->origins[i].line >= 1 && r->origins[i].line <= r->lines);
		hold(r->origins[i].printed && *r->origins[i].printed && *r->origins[i].rule);
	}
	hold(taken == r->taken);
}

void hold_report(const struct ts_report *r)
{
	hold_reading(r);
	hold(r->gap_count <= TS_REPORT_GAPS_MOST && r->value_count <= TS_REPORT_VALUES_MOST);
	for (size_t i = 0; i < r->gap_count; i++)
		hold(r->gaps[i].why && r->gaps[i].remedy && r->gaps[i].line <= r->lines);
	for (size_t i = 0; i < r->clash_count; i++)
		hold(r->clashes[i].says && *r->clashes[i].says);
	for (size_t i = 0; i < r->zone_count; i++)
		hold(r->zones[i] && *r->zones[i]);
	for (size_t i = 0; i < r->value_count; i++)
		hold(r->values[i].field && r->values[i].printed && r->values[i].line <= r->lines);
}

void hold_profile(const struct ts_water *water)
{
	struct ts_keeping keeping = {0};
	struct ts_profile profile;

	ts_profile_make(water, &keeping, NULL, -1, &profile);
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_span *s = &profile.at[p];

		hold(!s->given ||
			(isfinite(s->value) && s->low <= s->value && s->value <= s->high));
	}
}

/* Length of the sequence at `at`, of which `left` bytes are there; 0: not one. */
static size_t sequence(const unsigned char *at, size_t left)
{
	unsigned long code = at[0], least;
	size_t len;

	if (at[0] < 0x80)
		return 1;
	if ((at[0] & 0xe0) == 0xc0)
		len = 2, least = 0x80, code &= 0x1f;
	else if ((at[0] & 0xf0) == 0xe0)
		len = 3, least = 0x800, code &= 0x0f;
	else if ((at[0] & 0xf8) == 0xf0)
		len = 4, least = 0x10000, code &= 0x07;
	else
		return 0;
	if (len > left)
		return 0;
	for (size_t i = 1; i < len; i++) {
		if ((at[i] & 0xc0) != 0x80)
			return 0;
		code = code << 6 | (at[i] & 0x3f);
	}
	return code < least || code > 0x10ffff || (code >= 0xd800 && code < 0xe000) ? 0 : len;
}

void hold_utf8(const char *text, size_t len)
{
	for (size_t at = 0, one; at < len; at += one) {
		one = sequence((const unsigned char *)text + at, len - at);
		hold(one > 0);
	}
}

void hold_findings(const struct ts_findings *findings)
{
	for (size_t i = 0; i < findings->count; i++) {
		hold(findings->items[i].what && *findings->items[i].what);
		hold(findings->items[i].remedy && *findings->items[i].remedy);
	}
}

/* Walks one JSON value; each function returns the place behind what it took. */
static const char *hold_json_value(const char *at, unsigned depth);

static const char *behind_blanks(const char *at)
{
	return at + strspn(at, " \n");
}

static const char *hold_json_text(const char *at)
{
	for (at++; *at != '"'; at++) {
		hold((unsigned char)*at >= 0x20);
		if (*at != '\\')
			continue;
		at++;
		hold(*at && strchr("\"\\u", *at));
		if (*at == 'u') {
			hold(strspn(at + 1, "0123456789abcdef") >= 4);
			at += 4;
		}
	}
	return at + 1;
}

static const char *hold_json_figure(const char *at)
{
	size_t len;

	at += *at == '-';
	len = strspn(at, "0123456789");
	hold(len == 1 || (len > 1 && *at != '0'));
	at += len;
	if (*at != '.')
		return at;
	len = strspn(++at, "0123456789");
	hold(len > 0);
	return at + len;
}

/* The members of an object or a list, behind its bracket. */
static const char *hold_json_members(const char *at, bool keyed, unsigned depth)
{
	const char end = keyed ? '}' : ']';

	at = behind_blanks(at + 1);
	if (*at == end)
		return at + 1;
	for (;; at = behind_blanks(at + 1)) {
		if (keyed) {
			hold(*at == '"');
			at = hold_json_text(at);
			hold(*at == ':');
			at = behind_blanks(at + 1);
		}
		at = behind_blanks(hold_json_value(at, depth + 1));
		if (*at != ',')
			break;
	}
	hold(*at == end);
	return at + 1;
}

static const char *hold_json_value(const char *at, unsigned depth)
{
	static const char *const words[] = {"null", "true", "false"};

	hold(depth < 64);
	if (*at == '{' || *at == '[')
		return hold_json_members(at, *at == '{', depth);
	if (*at == '"')
		return hold_json_text(at);
	for (size_t i = 0; i < 3; i++) {
		if (strncmp(at, words[i], strlen(words[i])) == 0)
			return at + strlen(words[i]);
	}
	return hold_json_figure(at);
}

void hold_json(const char *text)
{
	const char *end = hold_json_value(text, 0);

	hold(*behind_blanks(end) == '\0');
}
