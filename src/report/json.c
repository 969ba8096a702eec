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

static void put_quoted(struct ts_text *text, const char *at)
{
	static const char hex[] = "0123456789abcdef";

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
			unsigned char c = (unsigned char)at[len - 1];
			char escape[6] = {'\\', 'u', '0', '0', hex[c >> 4], hex[c & 15]};

			ts_text_add(text, escape, 6);
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
