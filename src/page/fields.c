/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One more reader of the rows in model/shapes.c and units/table.c: a field a row, a unit a row.
 */
#include "page/fields.h"

#include "answers/ask_back.h"
#include "cli/commands.h"
#include "model/shape.h"
#include "report/json.h"
#include "words/glossary.h"
#include "words/water.h"

/* How a field is filled in. */
static const char *const kinds[] = {[TS_TEXT] = "text",
	[TS_WORD] = "word",
	[TS_YESNO] = "yesno",
	[TS_NUMBER] = "figure",
	[TS_MEASURE] = "figure",
	[TS_CHOICE] = "choice",
	[TS_EVERY] = "every",
	[TS_SUB] = NULL,
	[TS_LIST] = NULL};

static void write_words(struct ts_json *j, const char *const *words)
{
	ts_json_list(j, "words");
	for (; words && *words; words++)
		ts_json_text(j, NULL, *words);
	ts_json_end_list(j);
}

static bool of_a_quantity(const struct ts_field *field)
{
	return field->kind == TS_NUMBER || field->kind == TS_MEASURE || field->kind == TS_CHOICE ||
	       field->kind == TS_EVERY;
}

static void write_field(struct ts_json *j, const struct ts_field *field)
{
	ts_json_object(j, NULL);
	ts_json_text(j, "key", field->key);
	ts_json_text(j, "kind", kinds[field->kind]);
	ts_json_text(j, "says", field->says);
	if (field->words)
		write_words(j, field->words);
	if (of_a_quantity(field))
		ts_json_text(j, "quantity", ts_quantities[field->quantity].name);
	ts_json_end_object(j);
}

static void write_shape(struct ts_json *j, const struct ts_shape *shape)
{
	ts_json_list(j, shape->name);
	for (size_t i = 0; i < shape->count; i++) {
		size_t kind = (size_t)shape->fields[i].kind;

		if (kind < sizeof kinds / sizeof *kinds && kinds[kind])
			write_field(j, &shape->fields[i]);
	}
	ts_json_end_list(j);
}

static void write_unit(struct ts_json *j, const struct ts_unit_row *unit)
{
	ts_json_object(j, NULL);
	ts_json_text(j, "unit", unit->shown);
	ts_json_number(j, "factor", unit->factor, 9);
	ts_json_number(j, "offset", unit->offset, 9);
	ts_json_text(j, "assumed", unit->assumed);
	ts_json_end_object(j);
}

static void write_quantity(struct ts_json *j, enum ts_quantity quantity)
{
	const struct ts_quantity_row *row = &ts_quantities[quantity];

	ts_json_object(j, row->name);
	ts_json_text(j, "example", row->example);
	ts_json_number(j, "decimals", row->decimals, 0);
	ts_json_number(j, "min", row->min, 2);
	ts_json_number(j, "max", row->max, 2);
	ts_json_list(j, "units");
	for (size_t i = 0; i < ts_units_count; i++) {
		if (ts_units[i].quantity == quantity && ts_units[i].shown)
			write_unit(j, &ts_units[i]);
	}
	ts_json_end_list(j);
	ts_json_end_object(j);
}

static void write_command(struct ts_json *j, const struct command *command)
{
	ts_json_object(j, command->name);
	ts_json_text(j, "says", command->says);
	ts_json_text(j, "formats", command->formats);
	ts_json_end_object(j);
}

static void write_commands(struct ts_json *j)
{
	const struct command *command;

	ts_json_object(j, "commands");
	for (size_t i = 0; (command = command_at(i)); i++)
		write_command(j, command);
	ts_json_end_object(j);
}

static void write_question(struct ts_json *j, size_t question)
{
	const char *const *fields, *says;

	ts_json_object(j, ts_ask_back_id(question));
	ts_json_text(j, "says", ts_ask_back_says(question));
	ts_json_text(j, "by", ts_ask_back_by(question));
	ts_json_text(j, "first", ts_ask_back_first(question));
	ts_json_list(j, "asks");
	for (size_t i = 0; (says = ts_ask_back_asks(question, i, &fields)); i++) {
		ts_json_object(j, NULL);
		ts_json_text(j, "says", says);
		ts_json_list(j, "fields");
		for (size_t k = 0; fields[k]; k++)
			ts_json_text(j, NULL, fields[k]);
		ts_json_end_list(j);
		ts_json_end_object(j);
	}
	ts_json_end_list(j);
	ts_json_end_object(j);
}

static void write_questions(struct ts_json *j)
{
	ts_json_object(j, "questions");
	for (size_t i = 0; ts_ask_back_id(i); i++)
		write_question(j, i);
	ts_json_end_object(j);
}

/* How a value is read: of which field, and the sentence of what to test next. */
static const struct {
	const char *field;
	enum ts_next next;
} samples[] = {{"reading.GH", TS_NEXT_GH}, {"reading.KH", TS_NEXT_KH}, {"reading.pH", TS_NEXT_PH},
	{"tank.temperature", TS_NEXT_TANK_TEMPERATURE}, {"reading.NO3", TS_NEXT_NITRATE},
	{"reading.NO2", TS_NEXT_NITRITE}, {"reading.ammonia", TS_NEXT_AMMONIA}};

static void write_samples(struct ts_json *j)
{
	ts_json_object(j, "samples");
	for (size_t i = 0; i < sizeof samples / sizeof *samples; i++) {
		ts_json_list(j, samples[i].field);
		if (ts_ask_back_of(samples[i].field))
			ts_json_text(j, NULL, ts_ask_back_of(samples[i].field));
		ts_json_text(j, NULL, ts_next_sample[samples[i].next]);
		ts_json_end_list(j);
	}
	ts_json_end_object(j);
}

/* What a first visit shows, step by step; common practice, no source. */
static const struct {
	const char *head, *says;
} steps[] = {
	{"The water comes first",
		"The water out of your tap is given; the animals are chosen. So many kinds are "
		"comfortable at each hardness:"},
	{"The filter before the animals",
		"What takes their waste away has to grow first, in a new tank for weeks:"},
	{"Four figures are enough to begin",
		"From a drop test, a strip, a shop or the supplier's report; the pH follows from "
		"the others:"},
};

static void write_steps(struct ts_json *j)
{
	ts_json_list(j, "steps");
	for (size_t i = 0; i < sizeof steps / sizeof *steps; i++) {
		ts_json_object(j, NULL);
		ts_json_text(j, "head", steps[i].head);
		ts_json_text(j, "says", steps[i].says);
		ts_json_end_object(j);
	}
	ts_json_end_list(j);
}

static void write_glossary(struct ts_json *j)
{
	ts_json_list(j, "glossary");
	for (const struct ts_term *term = ts_glossary; term->says; term++) {
		ts_json_object(j, NULL);
		ts_json_list(j, "forms");
		for (size_t i = 0; i < TS_TERM_FORMS_MOST && term->forms[i]; i++)
			ts_json_text(j, NULL, term->forms[i]);
		ts_json_end_list(j);
		ts_json_text(j, "says", term->says);
		ts_json_text(j, "more", term->more);
		ts_json_end_object(j);
	}
	ts_json_end_list(j);
}

void page_fields_write(struct ts_text *out)
{
	static const struct ts_shape *const shapes[] = {&ts_shape_reading, &ts_shape_water,
		&ts_shape_tank, &ts_shape_stock_line, &ts_shape_sign, &ts_shape_plan};
	struct ts_json j;

	ts_json_open(&j, out);
	j.line = true;
	ts_json_object(&j, NULL);
	ts_json_text(&j, "version", TS_VERSION);
	for (size_t i = 0; i < sizeof shapes / sizeof *shapes; i++)
		write_shape(&j, shapes[i]);
	ts_json_object(&j, "quantities");
	for (int i = 0; i < TS_Q__COUNT; i++)
		write_quantity(&j, (enum ts_quantity)i);
	ts_json_end_object(&j);
	write_commands(&j);
	write_questions(&j);
	write_glossary(&j);
	write_samples(&j);
	write_steps(&j);
	ts_json_end_object(&j);
	ts_text_put(out, "\n");
}
