/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The writer after RFC 5545: lines end in CRLF and are folded at 75 octets (section 3.1), texts are
 * escaped (3.3.11), days are DATE values (3.3.4), the stamp is in UTC (3.8.7.2).
 */
#include "report/ics.h"

#include <stdint.h>

#include "base/date.h"

/* Octets of a line without its end (section 3.1). */
#define LINE_MOST 75
/* "YYYYMMDD" with its NUL. */
#define DAY_ROOM 9

/* Writes one content line, folded between characters: never inside a UTF-8 sequence. */
static void put_line(struct ts_text *out, const struct ts_text *line)
{
	const char *at = ts_text_get(line), *end = at + line->len;
	size_t room = LINE_MOST;

	while ((size_t)(end - at) > room) {
		const char *cut = at + room;

		while (cut > at && ((unsigned char)*cut & 0xc0) == 0x80)
			cut--;
		cut = cut == at ? at + room : cut; /* no UTF-8 at all */
		ts_text_add(out, at, (size_t)(cut - at));
		ts_text_put(out, "\r\n ");
		at = cut;
		room = LINE_MOST - 1;
	}
	ts_text_add(out, at, (size_t)(end - at));
	ts_text_put(out, "\r\n");
	out->failed |= line->failed;
}

/* TEXT (3.3.11): backslash, semicolon, comma and line end escaped; what is not seen is left out. */
static void put_text(struct ts_text *line, const char *text)
{
	size_t len;

	for (; *text; text += len) {
		len = ts_text_sequence(text);
		len = len ? len : 1;
		if (*text == '\\' || *text == ';' || *text == ',')
			ts_text_put(line, "\\");
		if (*text == '\n')
			ts_text_put(line, "\\n");
		else if (*text == '\t' || !ts_text_control(text))
			ts_text_add(line, text, len);
	}
}

static void text_line(struct ts_text *out, const char *name, const char *text)
{
	struct ts_text line;

	ts_text_open(&line, &out->allocator);
	ts_text_puts(&line, name, ":", NULL);
	put_text(&line, text ? text : "");
	put_line(out, &line);
	ts_text_drop(&line);
}

static bool day_digits(char ret[DAY_ROOM], long day)
{
	char iso[TS_DATE_ROOM];
	size_t n = 0;

	if (!ts_date_write(iso, day))
		return false;
	for (const char *c = iso; *c; c++) {
		if (*c != '-')
			ret[n++] = *c;
	}
	ret[n] = '\0';
	return true;
}

/* FNV-1a over 64 bits (IETF draft-eastlake-fnv): a short name for a long text, no secret. */
static uint64_t mix_in(uint64_t hash, const char *text)
{
	for (; *text; text++)
		hash = (hash ^ (unsigned char)*text) * UINT64_C(0x100000001b3);
	return (hash ^ '/') * UINT64_C(0x100000001b3);
}

static void put_uid(struct ts_text *out, const struct ts_ics_event *e)
{
	uint64_t hash =
		mix_in(mix_in(UINT64_C(0xcbf29ce484222325), e->subject ? e->subject : ""), e->key);
	struct ts_text line;
	char hex[17] = {0};

	for (int i = 15; i >= 0; i--, hash >>= 4)
		hex[i] = "0123456789abcdef"[hash & 15];
	ts_text_open(&line, &out->allocator);
	ts_text_puts(&line, "UID:", e->key, "-", hex, "@tapshoal", NULL);
	put_line(out, &line);
	ts_text_drop(&line);
}

/* RRULE (3.8.5.3): the same entry again. */
static void put_rule(struct ts_text *out, const struct ts_ics_event *e)
{
	ts_text_put(out, "RRULE:FREQ=DAILY;INTERVAL=");
	ts_text_number(out, e->every_days, 0);
	ts_text_put(out, ";COUNT=");
	ts_text_number(out, e->times, 0);
	ts_text_put(out, "\r\n");
}

/* VALARM (3.6.6), nine hours into the day (TRIGGER, 3.8.6.3). */
static void put_alarm(struct ts_text *out, const struct ts_ics_event *e)
{
	ts_text_put(out, "BEGIN:VALARM\r\nACTION:DISPLAY\r\n");
	text_line(out, "DESCRIPTION", e->summary);
	ts_text_put(out, "TRIGGER:PT9H\r\nEND:VALARM\r\n");
}

void ts_ics_open(struct ts_text *out, const char *version)
{
	ts_text_puts(out, "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//tapshoal//tapshoal ",
		version, "//EN\r\nCALSCALE:GREGORIAN\r\n", NULL);
}

void ts_ics_event(struct ts_text *out, const struct ts_ics_event *event, long today)
{
	char day[DAY_ROOM], stamp[DAY_ROOM];

	if (!day_digits(day, event->day) || !day_digits(stamp, today))
		return;
	ts_text_put(out, "BEGIN:VEVENT\r\n");
	put_uid(out, event);
	ts_text_puts(out, "DTSTAMP:", stamp, "T000000Z\r\nDTSTART;VALUE=DATE:", day,
		"\r\nTRANSP:TRANSPARENT\r\n", NULL);
	if (event->every_days && event->times > 1)
		put_rule(out, event);
	text_line(out, "SUMMARY", event->summary);
	text_line(out, "DESCRIPTION", event->description);
	if (event->rings)
		put_alarm(out, event);
	ts_text_put(out, "END:VEVENT\r\n");
}

void ts_ics_close(struct ts_text *out)
{
	ts_text_put(out, "END:VCALENDAR\r\n");
}
