/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The schema walker: one more reader of the rows in model/shapes.c. Quantities are texts or numbers
 * here, since their grammar is the scanner's; the description names unit and example.
 */
#include "report/schema.h"

static void write_shape(struct ts_json *j, const struct ts_shape *shape);

static void write_words(struct ts_json *j, const char *const *words)
{
	ts_json_list(j, "enum");
	for (const char *const *word = words; *word; word++)
		ts_json_text(j, NULL, *word);
	for (const struct ts_also *a = ts_words_also; a->words; a++) {
		if (a->words == words)
			ts_json_text(j, NULL, a->also);
	}
	ts_json_end_list(j);
}

static void write_quantity(struct ts_json *j, const struct ts_field *field)
{
	bool bare = ts_quantities[field->quantity].bare;

	ts_json_list(j, "type");
	ts_json_text(j, NULL, "string");
	if (field->kind != TS_EVERY)
		ts_json_text(j, NULL, "number");
	ts_json_end_list(j);
	if (!bare && field->kind != TS_EVERY) { /* of bare numbers only nought is read */
		ts_json_number(j, "minimum", 0, 0);
		ts_json_number(j, "maximum", 0, 0);
	}
	ts_json_list(j, "examples");
	ts_json_text(j, NULL, ts_quantities[field->quantity].example);
	ts_json_end_list(j);
}

/* An entry of a list: its keys, or the one word that says it all. */
static void write_word_or(struct ts_json *j, const struct ts_shape *shape)
{
	ts_json_list(j, "anyOf");
	ts_json_object(j, NULL);
	write_words(j, ts_shape_alone(shape)->words);
	ts_json_end_object(j);
	ts_json_object(j, NULL);
	write_shape(j, shape);
	ts_json_end_object(j);
	ts_json_end_list(j);
}

static void write_list_of(struct ts_json *j, const struct ts_field *field)
{
	ts_json_text(j, "type", "array");
	ts_json_object(j, "items");
	if (field->kind == TS_LIST && ts_shape_alone(field->sub))
		write_word_or(j, field->sub);
	else if (field->kind == TS_LIST)
		write_shape(j, field->sub);
	else if (field->kind == TS_WORDS)
		write_words(j, field->words);
	else
		ts_json_text(j, "type", "string");
	ts_json_end_object(j);
}

/* The name of a file, or what that file would hold. */
static void write_file_or(struct ts_json *j, const struct ts_field *field)
{
	ts_json_list(j, "anyOf");
	ts_json_object(j, NULL);
	ts_json_text(j, "type", "string");
	ts_json_end_object(j);
	ts_json_object(j, NULL);
	write_shape(j, field->sub);
	ts_json_end_object(j);
	ts_json_end_list(j);
}

static void write_field(struct ts_json *j, const struct ts_field *field)
{
	static const char *const yesno[] = {"no", "yes", NULL};

	ts_json_object(j, field->key);
	ts_json_text(j, "description", field->says);
	switch (field->kind) {
	case TS_TEXT:
		ts_json_text(j, "type", "string");
		break;
	case TS_WORD:
		write_words(j, field->words);
		break;
	case TS_YESNO:
		write_words(j, yesno);
		break;
	case TS_TEXTS:
	case TS_WORDS:
	case TS_LIST:
		write_list_of(j, field);
		break;
	case TS_SUB:
		write_shape(j, field->sub);
		break;
	case TS_FILE:
		write_file_or(j, field);
		break;
	default:
		write_quantity(j, field);
		break;
	}
	ts_json_end_object(j);
}

static void write_shape(struct ts_json *j, const struct ts_shape *shape)
{
	ts_json_text(j, "type", "object");
	ts_json_bool(j, "additionalProperties", false);
	ts_json_list(j, "required");
	for (size_t i = 0; i < shape->count; i++) {
		if (shape->fields[i].need == TS_REQUIRED)
			ts_json_text(j, NULL, shape->fields[i].key);
	}
	ts_json_end_list(j);
	ts_json_object(j, "properties");
	for (size_t i = 0; i < shape->count; i++)
		write_field(j, &shape->fields[i]);
	ts_json_end_object(j);
}

void ts_schema_write(struct ts_text *out, const struct ts_shape *shape)
{
	struct ts_json j;

	ts_json_open(&j, out);
	ts_json_object(&j, NULL);
	ts_json_text(&j, "$schema", "https://json-schema.org/draft/2020-12/schema");
	ts_json_text(&j, "title", shape->name);
	write_shape(&j, shape);
	ts_json_end_object(&j);
}
