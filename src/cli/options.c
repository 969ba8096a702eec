/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Flags: rows with a name, what they take and one line of help. Reading flags are not rows here:
 * they are the rows of the reading shape, matched without regard to case and exactly, so that a
 * slip like --K 9 never passes for --KH 9.
 */
#include "cli/options.h"

#include <string.h>

#include "model/shape.h"

enum flag_id {
	FLAG_AIM,
	FLAG_CATALOGUE,
	FLAG_FORMAT,
	FLAG_FRESH,
	FLAG_HELP,
	FLAG_NO_COLOR,
	FLAG_ONLY_CATALOGUE,
	FLAG_ORIGIN,
	FLAG_QUIET,
	FLAG_SOFTENED,
	FLAG_TEMPERATURE,
	FLAG_VERSION,
	FLAG_WATER,
	FLAG__COUNT
};

struct flag {
	const char *name, *short_name;
	const char *takes; /* NULL = nothing */
	const char *says;
};

/* clang-format off */
static const struct flag flags[FLAG__COUNT] = {
	[FLAG_AIM] = {"--aim", NULL, "display|breeding", "what you keep them for (display)"},
	[FLAG_CATALOGUE] = {"--catalogue", NULL, "FOLDER", "adds a folder of species records"},
	[FLAG_FORMAT] = {"--format", "-f", "text|json", "how the answer is written (text)"},
	[FLAG_FRESH] = {"--fresh", NULL, NULL, "the sample came straight from the tap"},
	[FLAG_HELP] = {"--help", "-h", NULL, "this page"},
	[FLAG_NO_COLOR] = {"--no-color", NULL, NULL, "no colour (none is used where there is no terminal)"},
	[FLAG_ONLY_CATALOGUE] = {"--only-catalogue", NULL, NULL, "leaves the shipped records out"},
	[FLAG_ORIGIN] = {"--origin", NULL, "farmed|wild", "where the animals come from (farmed)"},
	[FLAG_QUIET] = {"--quiet", "-q", NULL, "verdicts without reasons"},
	[FLAG_SOFTENED] = {"--softened", NULL, NULL, "the water went through a household softener"},
	[FLAG_TEMPERATURE] = {"--temperature", NULL, "24..26", "what the tank runs at, C or F"},
	[FLAG_VERSION] = {"--version", "-V", NULL, "the version"},
	[FLAG_WATER] = {"--water", "-w", "FILE", "a water file, instead of reading flags; - is stdin"},
};
/* clang-format on */

static bool refuse(struct ts_text *error, const char *what, const char *remedy)
{
	ts_text_puts(error, what, "; ", remedy, NULL);
	return false;
}

static bool either(const char *value, const char *no, const char *yes, bool *ret, const char *flag,
	struct ts_text *error)
{
	if (strcmp(value, no) != 0 && strcmp(value, yes) != 0) {
		ts_text_puts(error, flag, " does not take '", value, "'; it takes ", no, " or ",
			yes, NULL);
		return false;
	}
	*ret = strcmp(value, yes) == 0;
	return true;
}

static bool quantity(const char *flag, enum ts_quantity q, const char *value,
	struct ts_measure *ret, struct ts_text *error)
{
	struct ts_scan scan;

	if (ts_scan_measure(q, value, strlen(value), ret, &scan))
		return true;
	ts_text_puts(error, flag, " '", value, "': ", ts_scan_says(scan.fault),
		"; write it like \"", ts_quantities[q].example, "\"", NULL);
	return false;
}

static bool set_flag(struct options *o, enum flag_id id, const char *value, struct ts_text *error)
{
	switch (id) {
	case FLAG_AIM:
		return either(value, "display", "breeding", &o->keeping.breeding, "--aim", error);
	case FLAG_CATALOGUE:
		if (o->folder_count == TS_FOLDERS_MOST)
			return refuse(error, "too many --catalogue folders", "16 are read");
		o->folders[o->folder_count++] = value;
		return true;
	case FLAG_FORMAT:
		return either(value, "text", "json", &o->json, "--format", error);
	case FLAG_FRESH:
		return o->keeping.fresh = true;
	case FLAG_HELP:
		return o->help = true;
	case FLAG_NO_COLOR:
		return o->no_color = true;
	case FLAG_ONLY_CATALOGUE:
		return o->only_catalogue = true;
	case FLAG_ORIGIN:
		return either(value, "farmed", "wild", &o->keeping.wild, "--origin", error);
	case FLAG_QUIET:
		return o->quiet = true;
	case FLAG_SOFTENED:
		return o->softened = true;
	case FLAG_TEMPERATURE:
		return quantity(
			"--temperature", TS_Q_TEMPERATURE, value, &o->keeping.temperature, error);
	case FLAG_VERSION:
		return o->version = true;
	default:
		o->water_file = value;
		return true;
	}
}

static bool set_reading(struct options *o, const struct ts_field *field, const char *flag,
	const char *value, struct ts_text *error)
{
	char *at = (char *)&o->reading + field->offset;
	struct ts_measure m;

	o->has_reading = true;
	if (field->kind == TS_WORD) {
		for (int i = 0; field->words[i]; i++) {
			if (strcmp(field->words[i], value) == 0) {
				memcpy(at, &i, sizeof i);
				return true;
			}
		}
		ts_text_puts(error, flag, " does not take '", value, "'; it takes", NULL);
		for (int i = 0; field->words[i]; i++)
			ts_text_puts(error, i ? ", " : " ", field->words[i], NULL);
		return false;
	}
	if (field->kind == TS_TEXT) {
		memcpy(at, &value, sizeof value);
		return true;
	}
	if (!quantity(flag, field->quantity, value, &m, error))
		return false;
	memcpy(at, &m, sizeof m);
	return true;
}

static const struct flag *find_flag(const char *argument)
{
	for (int i = 0; i < FLAG__COUNT; i++) {
		if (strcmp(flags[i].name, argument) == 0 ||
			(flags[i].short_name && strcmp(flags[i].short_name, argument) == 0))
			return &flags[i];
	}
	return NULL;
}

static bool unknown_flag(const char *argument, struct ts_text *error)
{
	const char *near = ts_shape_nearest_key(&ts_shape_reading, argument + 2);

	ts_text_puts(error, "unknown flag '", argument, "'; ", NULL);
	if (near && argument[1] == '-')
		ts_text_puts(error, "did you mean --", near, "? ", NULL);
	ts_text_put(error, "tapshoal --help lists them");
	return false;
}

/* One flag, with its value where it takes one; moves `*i` past what was used. */
static bool parse_flag(struct options *o, int argc, char **argv, int *i, struct ts_text *error)
{
	const char *argument = argv[*i];
	const struct flag *flag = find_flag(argument);
	const struct ts_field *field = NULL;

	if (!flag && argument[1] == '-')
		field = ts_shape_field_caseless(&ts_shape_reading, argument + 2);
	if (!flag && !field)
		return unknown_flag(argument, error);
	if (flag && !flag->takes)
		return set_flag(o, (enum flag_id)(flag - flags), "", error);
	if (*i + 1 >= argc) {
		ts_text_puts(error, argument, " needs a value behind it; write it like ",
			flag ? flag->takes : ts_quantities[field->quantity].example, NULL);
		return false;
	}
	++*i;
	if (flag)
		return set_flag(o, (enum flag_id)(flag - flags), argv[*i], error);
	return set_reading(o, field, argument, argv[*i], error);
}

bool options_parse(int argc, char **argv, struct options *ret, struct ts_text *error)
{
	bool flags_over = false;

	*ret = (struct options){0};
	for (int i = 1; i < argc; i++) {
		if (!flags_over && strcmp(argv[i], "--") == 0) {
			flags_over = true;
		} else if (!flags_over && argv[i][0] == '-' && argv[i][1]) {
			if (!parse_flag(ret, argc, argv, &i, error))
				return false;
		} else if (ret->argument_count == TS_ARGUMENTS_MOST) {
			return refuse(error, "too many arguments", "256 are read");
		} else {
			ret->arguments[ret->argument_count++] = argv[i];
		}
	}
	if (ret->water_file && ret->has_reading)
		return refuse(error, "a water file and reading flags were both given",
			"give one of the two");
	return true;
}

static void help_line(struct ts_text *text, const char *name, const char *takes, const char *says)
{
	size_t start = text->len;

	ts_text_puts(text, "  ", name, takes ? " " : "", takes, NULL);
	if (text->len - start < 28)
		ts_text_fill(text, ' ', 28 - (text->len - start));
	ts_text_puts(text, " ", says, "\n", NULL);
}

void options_help(struct ts_text *text)
{
	ts_text_put(text, "flags:\n");
	for (int i = 0; i < FLAG__COUNT; i++)
		help_line(text, flags[i].name, flags[i].takes, flags[i].says);
	ts_text_put(text,
		"readings of the water, as flags (ions need a unit; GH and KH bare are dH):\n");
	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *f = &ts_shape_reading.fields[i];
		char name[32] = "--";

		if (f->kind != TS_MEASURE || strcmp(f->key, "temperature") == 0)
			continue;
		strncat(name, f->key, sizeof name - 3);
		help_line(text, name, ts_quantities[f->quantity].example, f->says);
	}
}
