/* SPDX-License-Identifier: Apache-2.0 */
/*
 * complete: what may stand where somebody presses the completing key. The three shells hand over
 * the words of the line, the last one as far as it is typed, and get one value a line, with what it
 * is behind a tab; ":files" or ":folders" alone where those are meant. No command of its own for
 * people: it stands in no help. Values are data, of letters that no shell reads again.
 */
#include <string.h>
#include <strings.h>

#include "base/arena.h"
#include "cli/commands.h"
#include "cli/kept.h"

struct completing {
	struct session *s;
	const struct command *command;
	const char *typed;     /* the last word, or its value behind '=' */
	const char *flag;      /* whose value it is; NULL: of none */
	struct option_view of; /* that flag's row */
	char name[64], takes[64];
	bool found;
};

static bool begins(const char *word, const char *start)
{
	return strncasecmp(word, start, strlen(start)) == 0;
}

/* Letters of any script, digits, blanks, points and hyphens. */
static bool harmless(const char *word)
{
	for (const char *c = word; *c; c++) {
		const char lower = (char)(*c | 0x20);

		if (!(*c & 0x80) && !(lower >= 'a' && lower <= 'z') && !(*c >= '0' && *c <= '9') &&
			!strchr(" .-_@/", *c))
			return false;
	}
	return *word;
}

static void offer(struct completing *c, const char *value, const char *says)
{
	struct ts_text *out = c->s->out;

	if (!harmless(value) || !begins(value, c->typed))
		return;
	ts_text_put(out, value);
	if (says)
		ts_text_puts(out, "\t", says, NULL);
	ts_text_put(out, "\n");
}

/* Words with blanks between them. */
static void offer_listed(struct completing *c, const char *list)
{
	char word[32];

	while (*list) {
		size_t len = strcspn(list, " |");

		if (len && len < sizeof word) {
			memcpy(word, list, len);
			word[len] = '\0';
			offer(c, word, NULL);
		}
		list += len + (list[len] != '\0');
	}
}

static void offer_commands(struct completing *c)
{
	for (size_t i = 0; command_at(i); i++)
		offer(c, command_at(i)->name, command_at(i)->says);
	offer(c, "help", "what a command takes, or what a word means");
}

/* "10 neon t": behind the count, which stays. */
static enum ts_status offer_names(struct completing *c)
{
	const char *whole = c->typed;
	size_t count = strspn(whole, "0123456789"), blanks = strspn(whole + count, " ");
	const char *before =
		count && blanks ? ts_arena_text(c->s->arena, whole, count + blanks) : "";
	const char *start = whole + (count && blanks ? count + blanks : 0);
	enum ts_status status = answer_catalogue(c->s);

	for (size_t i = 0; before && !status && i < c->s->catalogue->count; i++) {
		const struct ts_species *s = c->s->catalogue->items[i];
		const char *name;

		for (size_t n = 0; (name = ts_species_name(s, n)); n++) {
			if (!begins(name, start) || (!*start && n))
				continue;
			offer(c, *before ? ts_arena_join(c->s->arena, before, name, NULL) : name,
				n ? s->species : NULL);
		}
	}
	return c->s->arena->failed ? TS_NO_MEMORY : status;
}

static bool offer_sample(void *to, const char *file)
{
	struct completing *c = to;
	size_t len = strlen(file);

	if (len > 5 && strcmp(file + len - 5, ".yaml") == 0)
		offer(c,
			ts_arena_join(c->s->arena, "@sample/",
				ts_arena_text(c->s->arena, file, len - 5), NULL),
			"a sample");
	return !c->s->arena->failed;
}

static enum ts_status offer_kept(struct completing *c)
{
	struct kept_item *items;
	size_t count;
	enum ts_status status = kept_list(c->s, &items, &count);

	for (size_t i = 0; !status && i < count; i++)
		offer(c, ts_arena_join(c->s->arena, "@", items[i].name, NULL),
			items[i].shape->name);
	offer(c, "@tap", "the kept tap");
	kept_samples(c->s, offer_sample, c);
	return c->s->arena->failed ? TS_NO_MEMORY : status;
}

/* A key of the settings, then a word of it. */
static void offer_settings(struct completing *c, const char *key)
{
	const struct ts_field *field = key ? ts_shape_field_meant(&settings_shape, key) : NULL;

	for (size_t i = 0; !key && i < settings_shape.count; i++)
		offer(c, settings_shape.fields[i].key, settings_shape.fields[i].says);
	for (size_t i = 0; field && field->words && field->words[i]; i++)
		offer(c, field->words[i], NULL);
	if (field)
		offer(c, "default", "takes it out again");
	if (field && field->kind == TS_TEXT)
		ts_text_put(c->s->out, ":folders\n");
}

/* What the row of a flag, or the usage of a command, says that stands there. */
static enum ts_status offer_kind(struct completing *c, const char *takes)
{
	static const char *const files[] = {
		"FILE", "PLAN", "WATER", "TANK", "REPORT", "READINGS", NULL};
	enum ts_status status = TS_OK;

	if (strstr(takes, "SPECIES") || strstr(takes, "neon tetra"))
		status = offer_names(c);
	if (strstr(takes, "FOLDER"))
		ts_text_put(c->s->out, ":folders\n");
	for (size_t i = 0; !status && files[i]; i++) {
		if (!strstr(takes, files[i]))
			continue;
		status = *c->typed == '@' || !*c->typed ? offer_kept(c) : TS_OK;
		if (*c->typed != '@')
			ts_text_put(c->s->out, ":files\n");
		break;
	}
	return status;
}

static void find_flag(void *state, const struct option_view *option)
{
	struct completing *c = state;

	if (c->found || (strcmp(option->name, c->flag) != 0 &&
				(!option->short_name || strcmp(option->short_name, c->flag) != 0)))
		return;
	c->found = true;
	ts_text_fit(c->name, sizeof c->name, option->name, NULL);
	ts_text_fit(c->takes, sizeof c->takes, option->takes ? option->takes : "", NULL);
	c->of = *option;
}

static void offer_flag(void *state, const struct option_view *option)
{
	offer(state, option->name, option->says);
}

static enum ts_status offer_value(struct completing *c)
{
	if (strcmp(c->name, "--format") == 0) {
		offer_listed(c, c->command->formats);
		return TS_OK;
	}
	for (size_t i = 0; c->of.words && c->of.words[i]; i++)
		offer(c, c->of.words[i], NULL);
	return c->of.words ? TS_OK : offer_kind(c, c->takes);
}

/* The flag whose value comes, in the word before, or in this one before its '='. */
static bool awaits_value(struct completing *c, const char *before)
{
	const char *equals =
		c->typed[0] == '-' && c->typed[1] == '-' ? strchr(c->typed, '=') : NULL;

	c->flag =
		equals ? ts_arena_text(c->s->arena, c->typed, (size_t)(equals - c->typed)) : before;
	if (!c->flag || c->flag[0] != '-')
		return false;
	options_each(c->command, find_flag, c);
	if (!c->found || !*c->takes)
		return false;
	c->typed = equals ? equals + 1 : c->typed;
	return true;
}

enum ts_status command_complete(struct session *s)
{
	const struct options *o = s->options;
	size_t last = o->argument_count ? o->argument_count - 1 : 0;
	char **words = ts_arena_array(s->arena, o->argument_count + 1, sizeof *words);
	struct completing c = {.s = s, .typed = o->argument_count ? o->arguments[last] : ""};
	int at;

	if (!words)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < last; i++) /* behind the name of the program, whatever it is */
		words[i + 1] =
			(char *)ts_arena_text(s->arena, o->arguments[i], strlen(o->arguments[i]));
	if (s->arena->failed)
		return TS_NO_MEMORY; /* a word may be missing */
	at = options_command_at((int)last + 1, words);
	c.command = at ? command_named(words[at]) : NULL;
	if (!c.command) {
		if (!at || strcmp(words[at], "help") == 0)
			offer_commands(&c);
		if (!at && c.typed[0] == '-')
			options_each(NULL, offer_flag, &c);
		return TS_OK;
	}
	if (awaits_value(&c, last > (size_t)at - 1 && last ? o->arguments[last - 1] : NULL))
		return offer_value(&c);
	if (c.typed[0] == '-') {
		options_each(c.command, offer_flag, &c);
		return TS_OK;
	}
	if (c.command->run == command_config) {
		offer_settings(&c, last > (size_t)at ? o->arguments[last - 1] : NULL);
		return TS_OK;
	}
	return offer_kind(&c, c.command->usage);
}
