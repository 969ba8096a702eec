/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A water in the words of one flag: keys and figures, commas between them.
 */
#include "cli/reading_words.h"

#include <string.h>

#include "base/arena.h"
#include "records/value.h"

/* One "GH 3" of the call. */
static bool read_one(struct session *s, const char *flag, char *part, struct ts_scan_pair *pair,
	struct ts_reading *ret)
{
	char *key = part + strspn(part, " "), *value = key + strcspn(key, " :=");
	struct ts_value_says says = {
		.what = "is no reading", .remedy = "write it like \"GH 3, KH 2\""};
	const struct ts_field *field;
	char room[SETTINGS_ROOM];
	const char *whole;

	if (*value)
		*value++ = '\0';
	value += strspn(value, " :=");
	field = ts_shape_field_caseless(&ts_shape_reading, key);
	whole = field ? settings_unit_told(s, field->quantity, value, room) : value;
	if (field && field->kind == TS_MEASURE &&
		ts_value_read(field, whole, strlen(whole), s->arena, ret, &says)) {
		if (whole == value)
			ts_value_pair_look(pair, field, value, &says, s->arena);
		return true;
	}
	ts_text_puts(s->error, flag, ": '", key, *value ? " " : "", value, "' ", NULL);
	ts_text_puts(s->error, says.what, "; ", says.remedy, NULL);
	return false;
}

enum ts_status reading_words(
	struct session *s, const char *flag, const char *text, struct ts_water *ret)
{
	struct ts_reading *reading = ts_arena_take(s->arena, sizeof *reading);
	char *at = ts_arena_take(s->arena, strlen(text) + 1);
	struct ts_scan_pair pair = {0};
	struct ts_value_says asks;

	if (!reading || !at)
		return TS_NO_MEMORY;
	memcpy(at, text, strlen(text) + 1);
	while (*at) {
		size_t len = strcspn(at, ",;");

		while (at[len] == ',' && at[len + 1] >= '0' && at[len + 1] <= '9')
			len += 1 + strcspn(at + len + 1, ",;"); /* a decimal comma */
		char *next = at + len + (at[len] != '\0');

		at[len] = '\0';
		if (!read_one(s, flag, at, &pair, reading))
			return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
		at = next;
	}
	if (ts_value_pair_asks(&pair, s->arena, &asks)) {
		ts_text_puts(s->error, flag, ": ", asks.what, "; ", asks.remedy, NULL);
		return TS_BAD_INPUT;
	}
	ret->readings = reading;
	ret->reading_count = 1;
	return TS_OK;
}
