/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The words of a call, read by the rows (options_rows.c). Flags are written as POSIX and GNU have
 * them. Reading flags are not rows there: they are the rows of the reading shape, matched without
 * regard to case and in full, so that a slip like --K 9 never passes for --KH 9.
 */
#include "cli/options_rows.h"

#include <string.h>

#include "base/arena.h"
#include "cli/settings.h"
#include "model/shape.h"
#include "records/value.h"

/* Whether `word` stands in a list separated by blanks. */
static bool listed(const char *list, const char *word)
{
	size_t len = strlen(word);

	for (const char *at = list; (at = strstr(at, word)); at += len) {
		if ((at == list || at[-1] == ' ') && (at[len] == ' ' || !at[len]))
			return true;
	}
	return false;
}

static bool takes_flag(const struct command *command, const struct flag *flag)
{
	/* The bare program is a command of that name: it tells how things stand. */
	return !flag->commands || listed(flag->commands, command ? command->name : "tapshoal");
}

#define FORM_MOST 64

/* What a flag names; nothing where all are NULL. */
struct named {
	const struct flag *flag;
	const struct ts_field *field;
	struct ts_trait trait;
};

static const struct flag *find_flag(const char *argument)
{
	for (size_t i = 0; i < option_flag_count; i++) {
		if (strcmp(option_flags[i].name, argument) == 0)
			return &option_flags[i];
	}
	return NULL;
}

static const struct flag *find_short(char letter)
{
	for (size_t i = 0; i < option_flag_count; i++) {
		if (option_flags[i].short_name && option_flags[i].short_name[1] == letter)
			return &option_flags[i];
	}
	return NULL;
}

#define NAMES_MOST 128

/* The flags of a command without their dashes, as typed; `*ret` has room for all and a NULL. */
static size_t names_of(const struct command *command, const char *ret[NAMES_MOST])
{
	size_t count = 0;
	struct ts_trait trait;

	for (size_t i = 0; i < option_flag_count; i++) {
		if (takes_flag(command, &option_flags[i]))
			ret[count++] = option_flags[i].name + 2;
	}
	for (size_t i = 0; command && command->traits && ts_trait_at(i, &trait); i++)
		ret[count++] = trait.field->key;
	for (size_t i = 0; command && command->readings && i < ts_shape_reading.count; i++) {
		const char *key = ts_shape_reading.fields[i].key;
		bool there = false; /* as a flag of its own */

		for (size_t k = 0; k < count; k++)
			there |= strcmp(ret[k], key) == 0;
		if (!there)
			ret[count++] = key;
	}
	ret[count] = NULL;
	return count;
}

/* A long flag of this command by its full name, which stands behind two dashes. */
static bool find_named(const struct command *command, const char *argument, struct named *ret)
{
	*ret = (struct named){.flag = find_flag(argument)};
	if (ret->flag && takes_flag(command, ret->flag))
		return true;
	ret->flag = NULL;
	if (command && command->readings)
		ret->field = ts_shape_field_caseless(&ts_shape_reading, argument + 2);
	if (!ret->field && command && command->traits)
		(void)ts_trait_find(argument + 2, &ret->trait);
	return ret->field || ret->trait.field;
}

/* The one flag that begins so, in full; a reading is never abbreviated. NULL: none, or several. */
static const char *unabbreviated(const struct command *command, const char *start)
{
	const char *names[NAMES_MOST], *found = NULL;
	size_t count = names_of(command, names);
	struct named named;
	char whole[FORM_MOST];

	for (size_t i = 0; i < count; i++) {
		if (strncmp(names[i], start, strlen(start)) != 0)
			continue;
		if (found)
			return NULL;
		found = names[i];
	}
	if (!found)
		return NULL;
	ts_text_fit(whole, sizeof whole, "--", found, NULL);
	return find_named(command, whole, &named) && !named.field ? found : NULL;
}

#define LIKE_MOST 4

/* "did you mean --volume?", "--s may be --season, --size or --softened". */
static void suggest(const struct command *command, const char *name, struct ts_text *error)
{
	const char *names[NAMES_MOST];
	size_t count = names_of(command, names), like = 0;
	const char *near = ts_nearest_word(names, name);
	const char *format = ts_nearest_word(option_formats, name);
	bool exact = format && strcmp(format, name) == 0;
	bool written = format && (!command || listed(command->formats, format));

	if (exact && !written) {
		ts_text_puts(error, "it writes ", command->formats, "; ", NULL);
		return;
	}
	if (exact || (written && !near)) {
		ts_text_puts(error, "did you mean -f ", format, "? ", NULL);
		return;
	}
	for (size_t i = 0; i < count && *name && like <= LIKE_MOST; i++) {
		if (strncmp(names[i], name, strlen(name)) == 0 && like++ < LIKE_MOST)
			ts_text_puts(error, like > 1 ? ", --" : "it may be --", names[i], NULL);
	}
	if (like)
		ts_text_put(error, like > LIKE_MOST ? " or another; " : "; ");
	else if (near)
		ts_text_puts(error, "did you mean --", near, "? ", NULL);
}

/* A flag that is none, or none of this command's. */
static bool unknown_flag(const struct command *command, const char *argument, struct ts_text *error)
{
	const struct flag *elsewhere =
		argument[1] == '-' ? find_flag(argument) : find_short(argument[1]);

	if (elsewhere && !takes_flag(command, elsewhere)) {
		ts_text_puts(error, command ? command->name : "tapshoal", " takes no ", argument,
			"; ", elsewhere->commands, " does", NULL);
		return false;
	}
	ts_text_puts(error, "unknown flag '", argument, "'; ", NULL);
	if (!command && ts_shape_field_caseless(&ts_shape_reading, argument + 2))
		ts_text_puts(error, "readings stand with a command: tapshoal rank ", argument,
			" ...; ", NULL);
	else if (argument[1] == '-')
		suggest(command, argument + 2, error);
	ts_text_puts(error, "tapshoal ", command ? command->name : "", command ? " " : "",
		"--help lists them", NULL);
	return false;
}

/* An example of a value as it is typed: 7.4, "14 dH", "20 mg/L NO3" or "4.5 mg/L N". */
static void typed(const char *example, char form[FORM_MOST])
{
	const char *quote = strchr(example, ' ') ? "\"" : "";
	size_t at;

	ts_text_fit(form, FORM_MOST, quote, NULL);
	for (const char *rest = example, *other; *rest;) {
		at = strlen(form);
		other = strstr(rest, " or ");
		if (strlen(rest) >= FORM_MOST - at)
			return;
		ts_text_fit(form + at, FORM_MOST - at, rest, NULL);
		if (!other) {
			ts_text_fit(form + at + strlen(rest), FORM_MOST - at - strlen(rest), quote,
				NULL);
			return;
		}
		at += (size_t)(other - rest);
		ts_text_fit(form + at, FORM_MOST - at, quote, " or ", quote, NULL);
		rest = other + 4;
	}
}

/* The words of a call on their way. */
struct words {
	const struct command *command;
	struct options *o;
	int argc, at;
	char **argv;
	struct ts_text *error;
	char name[FORM_MOST]; /* of the flag, in full */
};

/* The value of a flag: behind '=', else the next word. NULL: there is none. */
static const char *value_of(struct words *w, const struct named *n, const char *joined)
{
	char form[FORM_MOST];

	if (joined)
		return joined;
	if (w->at + 1 < w->argc)
		return w->argv[++w->at];
	typed(n->field ? ts_quantities[n->field->quantity].example : "", form);
	ts_text_puts(w->error, w->name, " needs a value behind it; write it like ",
		n->flag    ? n->flag->takes
		: n->field ? form
			   : n->trait.field->words[0],
		NULL);
	return NULL;
}

static bool set_named(struct words *w, const struct named *n, const char *joined)
{
	const char *value = NULL;

	if (n->flag && n->flag->kind == SWITCH && joined) {
		ts_text_puts(w->error, w->name, " takes no value; write ", w->name, " alone", NULL);
		return false;
	}
	if (!n->flag || n->flag->kind != SWITCH) {
		value = value_of(w, n, joined);
		if (!value)
			return false;
	}
	if (n->flag)
		return option_set_flag(w->o, n->flag, value, w->error);
	return n->field ? option_set_reading(w->o, n->field, w->name, value, w->error)
			: option_set_trait(w->o, &n->trait, w->name, value, w->error);
}

/* "--volume 60L", "--volume=60L", "--vol 60L". */
static bool parse_long(struct words *w)
{
	const char *argument = w->argv[w->at], *equals = strchr(argument, '='), *whole;
	size_t len = equals ? (size_t)(equals - argument) : strlen(argument);
	struct named named;

	if (len >= sizeof w->name)
		return unknown_flag(w->command, argument, w->error);
	memcpy(w->name, argument, len);
	w->name[len] = '\0';
	if (!find_named(w->command, w->name, &named)) {
		whole = find_flag(w->name) ? NULL : unabbreviated(w->command, w->name + 2);
		if (!whole)
			return unknown_flag(w->command, w->name, w->error);
		ts_text_fit(w->name, sizeof w->name, "--", whole, NULL);
		(void)find_named(w->command, w->name, &named);
	}
	return set_named(w, &named, equals ? equals + 1 : NULL);
}

/* "-q", "-qf json", "-fjson". */
static bool parse_short(struct words *w)
{
	const char *argument = w->argv[w->at];

	for (const char *letter = argument + 1; *letter; letter++) {
		struct named named = {.flag = find_short(*letter)};
		const char one[] = {'-', *letter, '\0'};

		if (!named.flag || !takes_flag(w->command, named.flag))
			return unknown_flag(w->command, named.flag ? one : argument, w->error);
		ts_text_fit(w->name, sizeof w->name, one, NULL);
		if (named.flag->kind != SWITCH)
			return set_named(w, &named, letter[1] ? letter + 1 : NULL);
		if (!set_named(w, &named, NULL))
			return false;
	}
	return true;
}

/* One of GH and KH has a unit that is not dH, the other none. */
static bool ask_unit(const struct options *o, struct ts_text *error)
{
	struct ts_text remedy;

	ts_text_open(&remedy, &error->allocator);
	ts_scan_pair_ask(&o->hardness, error, &remedy);
	ts_text_puts(error, "; ", ts_text_get(&remedy), NULL);
	error->failed |= remedy.failed;
	ts_text_drop(&remedy);
	return false;
}

/* What is wrong between flags. */
static bool agree(const struct command *command, struct options *o, struct ts_text *error)
{
	o->water_file = o->waters.count ? o->waters.items[0] : NULL;
	if (o->unit_asked)
		return false;
	if (o->hardness.bare && o->hardness.other)
		return ask_unit(o, error);
	if (o->water_file && o->has_reading)
		return option_refuse(error, "a water file and reading flags were both given",
			"give one of the two");
	if (command && o->format == FORMAT_TEXT && strcmp(command->formats, "html") == 0)
		o->format = FORMAT_HTML; /* there is no other */
	if (command && !listed(command->formats, option_formats[o->format])) {
		ts_text_puts(error, command->name, " does not write ", option_formats[o->format],
			"; it writes ", command->formats, NULL);
		return false;
	}
	o->keeping = (struct ts_keeping){.wild = o->origin == 1,
		.breeding = o->aim == 1,
		.fresh = o->fresh,
		.acids = o->acids,
		.temperature = o->temperature};
	return true;
}

/* What was typed as a flag stands. */
static bool is_given(const struct options *o, const struct flag *flag, const struct ts_field *field)
{
	const char *at =
		flag ? (const char *)o + flag->offset : (const char *)&o->reading + field->offset;
	struct ts_measure measure;

	if (flag && flag->kind == SWITCH)
		return *(const bool *)(const void *)at;
	if (flag && flag->kind == BOX)
		return o->size.length_cm > 0;
	if (flag && flag->kind == TEXT)
		return *(const char *const *)(const void *)at;
	if (flag && flag->kind == TEXTS) /* one more */
		return false;
	memcpy(&measure, at, sizeof measure);
	return measure.kind != TS_MEASURE_NONE;
}

bool options_take(struct options *io, const char *flag, const char *value, struct ts_text *error)
{
	const struct flag *row = find_flag(flag);
	const struct ts_field *field =
		row ? NULL : ts_shape_field_caseless(&ts_shape_reading, flag + 2);

	if ((!row && !field) || (field && (io->water_file || field->kind != TS_MEASURE)))
		return false;
	if (is_given(io, row, field))
		return true;
	if (row ? !option_set_flag(io, row, value, error)
		: !option_set_reading(io, field, flag, value, error))
		return false;
	io->keeping.temperature = io->temperature;
	return !io->unit_asked;
}

/* Whether the word behind this one, which begins with a dash, is its value. */
static bool takes_next(const char *word)
{
	const struct flag *flag;

	if (word[1] == '-') {
		flag = find_flag(word);
		return flag ? flag->kind != SWITCH
			    : ts_shape_field_caseless(&ts_shape_reading, word + 2) != NULL;
	}
	for (const char *letter = word + 1; *letter; letter++) {
		flag = find_short(*letter);
		if (flag && flag->kind != SWITCH)
			return !letter[1];
	}
	return false;
}

int options_command_at(int argc, char **argv)
{
	for (int i = 1; i < argc; i++) {
		if (argv[i][0] != '-' || !argv[i][1])
			return i;
		if (strcmp(argv[i], "--") == 0)
			return i + 1 < argc ? i + 1 : 0;
		i += takes_next(argv[i]);
	}
	return 0;
}

bool options_want_json(int argc, char **argv)
{
	bool wanted = false;

	for (int i = 1; i < argc && strcmp(argv[i], "--") != 0; i++) {
		const char *word = argv[i], *value = NULL;

		if (strncmp(word, "--format=", 9) == 0)
			value = word + 9;
		else if (strncmp(word, "-f", 2) == 0 && word[2])
			value = word + 2;
		else if ((strcmp(word, "-f") == 0 || strcmp(word, "--format") == 0) && i + 1 < argc)
			value = argv[i + 1];
		if (value)
			wanted = strcmp(value, "json") == 0 || strcmp(value, "lines") == 0;
	}
	return wanted;
}

bool options_parse(const struct command *command, int argc, char **argv, struct options *ret,
	struct ts_text *error)
{
	struct words w = {.command = command, .o = ret, .argc = argc, .argv = argv, .error = error};
	bool flags_over = false;

	*ret = (struct options){.settings = ret->settings};
	for (w.at = 1; w.at < argc; w.at++) {
		const char *word = argv[w.at];

		if (!flags_over && strcmp(word, "--") == 0) {
			flags_over = true;
		} else if (!flags_over && word[0] == '-' && word[1]) {
			if (!(word[1] == '-' ? parse_long(&w) : parse_short(&w)))
				return false;
		} else if (ret->argument_count == TS_ARGUMENTS_MOST) {
			return option_refuse(error, "too many arguments", "256 are read");
		} else {
			ret->arguments[ret->argument_count++] = word;
		}
	}
	return agree(command, ret, error);
}

static const char *says_of(const struct flag *flag, const struct command *command)
{
	for (size_t i = 0; command && i < option_flags_of_count; i++) {
		const struct flag_of *of = &option_flags_of[i];

		if (strcmp(of->name, flag->name) == 0 && listed(of->commands, command->name))
			return of->says;
	}
	return flag->says;
}

static void each_flag(const struct command *command, options_taker *take, void *state)
{
	for (size_t i = 0; i < option_flag_count; i++) {
		const struct flag *f = &option_flags[i];
		struct option_view view = {OPTION_FLAG, f->name, f->short_name, f->takes,
			says_of(f, command), f->words, !f->commands};

		if (f->words == option_formats && command)
			view.takes = command->formats;
		if (takes_flag(command, f))
			take(state, &view);
	}
}

/* "--" and the key, with '-' for '_'. */
static void flag_name(const char *key, char name[32])
{
	name[0] = name[1] = '-';
	name[2] = '\0';
	strncat(name, key, 28);
	for (char *c = name; *c; c++)
		*c = *c == '_' ? '-' : *c;
}

void options_each(const struct command *command, options_taker *take, void *state)
{
	struct ts_trait trait;
	char name[32], form[FORM_MOST];

	each_flag(command, take, state);
	for (size_t i = 0; command && command->readings && i < ts_shape_reading.count; i++) {
		const struct ts_field *f = &ts_shape_reading.fields[i];
		struct option_view view = {
			OPTION_READING, name, NULL, form, f->says, f->words, false};

		if (f->kind != TS_MEASURE || strcmp(f->key, "temperature") == 0)
			continue;
		flag_name(f->key, name);
		typed(ts_quantities[f->quantity].example, form);
		take(state, &view);
	}
	for (size_t i = 0; command && command->traits && ts_trait_at(i, &trait); i++) {
		struct option_view view = {OPTION_TRAIT, name, NULL, trait.field->words[0],
			trait.field->says, trait.field->words, false};

		flag_name(trait.field->key, name);
		take(state, &view);
	}
}
