/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The walkers over result rows: one writes the values, one their schema. CSV walks the same rows
 * next door.
 */
#include "report/result.h"

#include <math.h>

static void put_struct(struct ts_json *j, const struct ts_result_shape *shape, const void *at);

static void put_range(struct ts_json *j, const char *key, const struct ts_range *r, int decimals)
{
	ts_json_list(j, key);
	ts_json_number(j, NULL, r->low, decimals);
	ts_json_number(j, NULL, r->high, decimals);
	ts_json_end_list(j);
}

static void put_texts(struct ts_json *j, const char *key, const struct ts_texts *texts)
{
	ts_json_list(j, key);
	for (size_t i = 0; i < texts->count; i++)
		ts_json_text(j, NULL, texts->items[i]);
	ts_json_end_list(j);
}

static void put_sub(struct ts_json *j, const struct ts_result_field *f, const void *at)
{
	if (!at) {
		ts_json_text(j, f->key, NULL);
		return;
	}
	ts_json_object(j, f->key);
	put_struct(j, f->sub, at);
	ts_json_end_object(j);
}

static void put_list(
	struct ts_json *j, const struct ts_result_field *f, const char *items, size_t count)
{
	ts_json_list(j, f->key);
	for (size_t i = 0; i < count; i++) {
		ts_json_object(j, NULL);
		put_struct(j, f->sub, items + i * f->sub->size);
		ts_json_end_object(j);
	}
	ts_json_end_list(j);
}

static void put_field(struct ts_json *j, const struct ts_result_field *f, const char *base)
{
	const void *at = base + f->offset;

	switch (f->kind) {
	case TS_R_TEXT:
	case TS_R_WORD:
		ts_json_text(j, f->key, *(const char *const *)at);
		break;
	case TS_R_TEXTS:
		put_texts(j, f->key, at);
		break;
	case TS_R_BOOL:
		ts_json_bool(j, f->key, *(const bool *)at);
		break;
	case TS_R_NUMBER:
	case TS_R_SHARE:
		ts_json_number(j, f->key, *(const double *)at, f->decimals);
		break;
	case TS_R_COUNT:
		ts_json_number(j, f->key, (double)*(const size_t *)at, 0);
		break;
	case TS_R_RANGE:
		put_range(j, f->key, at, f->decimals);
		break;
	case TS_R_SUB:
		put_sub(j, f, at);
		break;
	case TS_R_MAYBE:
		put_sub(j, f, *(const void *const *)at);
		break;
	case TS_R_LIST:
		put_list(j, f, *(const char *const *)at,
			*(const size_t *)(const void *)(base + f->count_offset));
		break;
	}
}

static void put_struct(struct ts_json *j, const struct ts_result_shape *shape, const void *at)
{
	for (size_t i = 0; i < shape->count; i++)
		put_field(j, &shape->fields[i], at);
}

static void put_document(struct ts_json *j, const char *version, const char *command,
	const struct ts_texts *taken, const struct ts_result_shape *shape, const void *result)
{
	ts_json_object(j, NULL);
	ts_json_text(j, "tapshoal", version);
	ts_json_number(j, "format", 1, 0);
	ts_json_text(j, "command", command);
	if (taken && taken->count) {
		ts_json_list(j, "taken");
		for (size_t i = 0; i < taken->count; i++)
			ts_json_text(j, NULL, taken->items[i]);
		ts_json_end_list(j);
	}
	put_struct(j, shape, result);
	ts_json_end_object(j);
}

void ts_result_json(struct ts_text *out, const char *version, const char *command,
	const struct ts_texts *taken, const struct ts_result_shape *shape, const void *result)
{
	struct ts_json j;

	ts_json_open(&j, out);
	put_document(&j, version, command, taken, shape, result);
}

void ts_result_json_line(struct ts_text *out, const char *version, const char *command,
	const struct ts_result_shape *shape, const void *result)
{
	struct ts_json j;

	ts_json_open(&j, out);
	j.line = true;
	put_document(&j, version, command, NULL, shape, result);
}

static void say_struct(struct ts_json *j, const struct ts_result_shape *shape, const char *command);

static void say_type(struct ts_json *j, const char *type, bool nullable)
{
	if (!nullable) {
		ts_json_text(j, "type", type);
		return;
	}
	ts_json_list(j, "type");
	ts_json_text(j, NULL, type);
	ts_json_text(j, NULL, "null");
	ts_json_end_list(j);
}

static void say_words(struct ts_json *j, const char *const *words)
{
	ts_json_list(j, "enum");
	for (; *words; words++)
		ts_json_text(j, NULL, *words);
	ts_json_text(j, NULL, NULL);
	ts_json_end_list(j);
}

static void say_items(struct ts_json *j, const struct ts_result_field *f)
{
	ts_json_text(j, "type", "array");
	if (f->kind == TS_R_RANGE) {
		ts_json_number(j, "minItems", 2, 0);
		ts_json_number(j, "maxItems", 2, 0);
	}
	ts_json_object(j, "items");
	if (f->kind == TS_R_LIST)
		say_struct(j, f->sub, NULL);
	else
		say_type(j, f->kind == TS_R_RANGE ? "number" : "string", f->kind == TS_R_RANGE);
	ts_json_end_object(j);
}

static void say_maybe(struct ts_json *j, const struct ts_result_field *f)
{
	ts_json_list(j, "anyOf");
	ts_json_object(j, NULL);
	ts_json_text(j, "type", "null");
	ts_json_end_object(j);
	ts_json_object(j, NULL);
	say_struct(j, f->sub, NULL);
	ts_json_end_object(j);
	ts_json_end_list(j);
}

static void say_field(struct ts_json *j, const struct ts_result_field *f)
{
	ts_json_object(j, f->key);
	ts_json_text(j, "description", f->says);
	switch (f->kind) {
	case TS_R_TEXT:
		say_type(j, "string", true);
		break;
	case TS_R_WORD:
		say_words(j, f->words);
		break;
	case TS_R_BOOL:
		say_type(j, "boolean", false);
		break;
	case TS_R_NUMBER:
	case TS_R_SHARE:
		say_type(j, "number", true);
		break;
	case TS_R_COUNT:
		say_type(j, "integer", false);
		break;
	case TS_R_SUB:
		say_struct(j, f->sub, NULL);
		break;
	case TS_R_MAYBE:
		say_maybe(j, f);
		break;
	default:
		say_items(j, f);
		break;
	}
	ts_json_end_object(j);
}

/* The keys that every answer starts with. */
static void say_head(struct ts_json *j, const char *command)
{
	ts_json_object(j, "tapshoal");
	ts_json_text(j, "description", "version of the program");
	ts_json_text(j, "type", "string");
	ts_json_end_object(j);
	ts_json_object(j, "format");
	ts_json_text(j, "description", "of this contract");
	ts_json_number(j, "const", 1, 0);
	ts_json_end_object(j);
	ts_json_object(j, "command");
	ts_json_text(j, "const", command);
	ts_json_end_object(j);
	ts_json_object(j, "taken");
	ts_json_text(j, "description",
		"names that were not taken as they stand, each in a sentence; only where there are "
		"some");
	ts_json_text(j, "type", "array");
	ts_json_object(j, "items");
	ts_json_text(j, "type", "string");
	ts_json_end_object(j);
	ts_json_end_object(j);
}

/* `command` NULL: a struct inside. */
static void say_struct(struct ts_json *j, const struct ts_result_shape *shape, const char *command)
{
	ts_json_text(j, "type", "object");
	ts_json_bool(j, "additionalProperties", false);
	ts_json_list(j, "required");
	if (command) {
		ts_json_text(j, NULL, "tapshoal");
		ts_json_text(j, NULL, "format");
		ts_json_text(j, NULL, "command");
	}
	for (size_t i = 0; i < shape->count; i++)
		ts_json_text(j, NULL, shape->fields[i].key);
	ts_json_end_list(j);
	ts_json_object(j, "properties");
	if (command)
		say_head(j, command);
	for (size_t i = 0; i < shape->count; i++)
		say_field(j, &shape->fields[i]);
	ts_json_end_object(j);
}

void ts_result_schema(struct ts_text *out, const char *command, const struct ts_result_shape *shape)
{
	struct ts_json j;

	ts_json_open(&j, out);
	ts_json_object(&j, NULL);
	ts_json_text(&j, "$schema", "https://json-schema.org/draft/2020-12/schema");
	ts_json_text(&j, "title", command);
	say_struct(&j, shape, command);
	ts_json_end_object(&j);
}
