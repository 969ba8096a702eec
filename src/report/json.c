/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The JSON writer: about a hundred lines, since the packaged alternatives build a tree first.
 * Its output is validated from outside in tests/cli.
 */
#include "report/json.h"

#include <string.h>

#include "base/number.h"

void ts_json_open(struct ts_json *json, struct ts_text *text)
{
	*json = (struct ts_json){.text = text};
}

static void indent(struct ts_json *json)
{
	if (json->line)
		return;
	ts_text_put(json->text, "\n");
	ts_text_fill(json->text, ' ', json->depth * 2);
}

/* Bytes that stand as they are: most of any text. */
static size_t plain(const char *at)
{
	size_t len = 0;

	while (at[len] >= ' ' && at[len] <= '~' && at[len] != '"' && at[len] != '\\')
		len++;
	return len;
}

/* By its number, or the two that stand for it. */
static void put_unit(struct ts_text *text, uint32_t point)
{
	if (point > 0xffff) {
		ts_text_put(text, "\\u");
		ts_text_hex(text, 0xd800 + ((point - 0x10000) >> 10), 4);
		point = 0xdc00 + (point & 0x3ff);
	}
	ts_text_put(text, "\\u");
	ts_text_hex(text, point, 4);
}

static void put_quoted(struct ts_text *text, const char *at)
{
	ts_text_put(text, "\"");
	for (;;) {
		size_t len = plain(at);

		ts_text_add(text, at, len);
		at += len;
		if (!*at)
			break;
		len = ts_text_sequence(at);
		if (*at == '"' || *at == '\\') {
			char pair[2] = {'\\', *at};

			ts_text_add(text, pair, 2);
		} else if (ts_text_control(at)) { /* a terminal might obey it */
			put_unit(text, ts_text_point(at));
		} else {
			ts_text_add(text, len ? at : "\xef\xbf\xbd", len ? len : 3);
		}
		at += len ? len : 1;
	}
	ts_text_put(text, "\"");
}

static void start(struct ts_json *json, const char *key)
{
	if (json->filled[json->depth])
		ts_text_put(json->text, ",");
	if (json->depth)
		indent(json);
	json->filled[json->depth] = true;
	if (key) {
		put_quoted(json->text, key);
		ts_text_put(json->text, json->line ? ":" : ": ");
	}
}

static void open_level(struct ts_json *json, const char *key, const char *bracket)
{
	start(json, key);
	ts_text_put(json->text, bracket);
	if (json->depth + 1 < TS_JSON_DEPTH)
		json->depth++;
	else
		json->text->failed = true;
	json->filled[json->depth] = false;
}

static void close_level(struct ts_json *json, const char *bracket)
{
	bool filled = json->filled[json->depth];

	json->depth--;
	if (filled)
		indent(json);
	ts_text_put(json->text, bracket);
	if (!json->depth)
		ts_text_put(json->text, "\n");
}

void ts_json_object(struct ts_json *json, const char *key)
{
	open_level(json, key, "{");
}

void ts_json_list(struct ts_json *json, const char *key)
{
	open_level(json, key, "[");
}

void ts_json_end_object(struct ts_json *json)
{
	close_level(json, "}");
}

void ts_json_end_list(struct ts_json *json)
{
	close_level(json, "]");
}

void ts_json_text(struct ts_json *json, const char *key, const char *value)
{
	start(json, key);
	if (value)
		put_quoted(json->text, value);
	else
		ts_text_put(json->text, "null");
}

void ts_json_number(struct ts_json *json, const char *key, double value, int decimals)
{
	char digits[TS_NUMBER_ROOM];

	start(json, key);
	ts_text_put(json->text, ts_number_write_short(digits, value, decimals) ? digits : "null");
}

void ts_json_bool(struct ts_json *json, const char *key, bool value)
{
	start(json, key);
	ts_text_put(json->text, value ? "true" : "false");
}
