/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The same reader and the same catalogue as those of `check`; nothing is decided here.
 */
#include "page/animals.h"

#include <math.h>
#include <string.h>

#include "base/arena.h"
#include "catalogue/fold.h"
#include "model/shape.h"
#include "records/animals.h"
#include "report/json.h"
#include "typed/sentence.h"
#include "words/animal.h"
#include "words/names.h"
#include "words/rulings.h"

static void write_said(struct ts_json *j, const char *key, struct ts_text *text)
{
	j->text->failed |= text->failed;
	ts_json_text(j, key, text->len ? ts_text_get(text) : NULL);
	text->len = 0;
}

/* Texts as a file of ours has them. */
static void write_line(struct ts_json *j, const struct ts_stock_line *line, double count)
{
	const struct ts_field *sex = ts_shape_field(&ts_shape_stock_line, "sex");

	ts_json_object(j, "line");
	ts_json_text(j, "species", line->species);
	ts_json_number(j, "count", count, 0);
	if (line->sex)
		ts_json_text(j, "sex", sex->words[line->sex]);
	if (line->since) /* as a file has it: there, and nobody knows since when */
		ts_json_text(j, "since", *line->since ? line->since : "unknown");
	ts_json_end_object(j);
}

#define CHOICES_MOST 8

/* A species that has a name in which a word begins with what was typed. */
struct choice {
	const struct ts_species *species;
	const char *name;
	int rank; /* what is sold most, then those whose name itself begins so */
};

/* 0: the name begins so; 1: a later word of it; 2: none. */
static int begins(const char *name, const char *typed, size_t len)
{
	char folded[TS_FOLD_ROOM];

	ts_fold(TS_FOLD_NAME, name, strlen(name), folded, sizeof folded);
	if (strncmp(folded, typed, len) == 0)
		return 0;
	for (const char *at = folded; (at = strchr(at, ' ')); at++) {
		if (strncmp(at + 1, typed, len) == 0)
			return 1;
	}
	return 2;
}

static struct choice choice_of(const struct ts_species *species, const char *typed, size_t len)
{
	struct choice ret = {species, NULL, 0};
	const char *name;
	int best = 2;

	for (size_t i = 0; (name = ts_species_name(species, i)); i++) {
		int how = begins(name, typed, len);

		if (how < best) {
			best = how;
			ret.name = name;
		}
	}
	ret.rank = 2 * species->sold + best;
	return ret;
}

/* The first few by rank into `ret`; how many. */
static size_t begun_with(
	const struct ts_catalogue *catalogue, const char *text, struct choice ret[CHOICES_MOST])
{
	char typed[TS_FOLD_ROOM];
	size_t len = ts_fold(TS_FOLD_NAME, text, strlen(text), typed, sizeof typed), count = 0;

	for (size_t i = 0; len && i < catalogue->count; i++) {
		struct choice one = choice_of(catalogue->items[i], typed, len);
		size_t at = count;

		if (!one.name)
			continue;
		for (; at && ret[at - 1].rank > one.rank; at--) {
			if (at < CHOICES_MOST)
				ret[at] = ret[at - 1];
		}
		if (at < CHOICES_MOST)
			ret[at] = one;
		count += count < CHOICES_MOST;
	}
	return count;
}

static void write_choice(struct ts_json *j, const char *name, const struct ts_species *species)
{
	ts_json_object(j, NULL);
	ts_json_text(j, "name", name);
	ts_json_text(j, "species", species->species);
	ts_json_end_object(j);
}

/* A name that is being typed is completed; another one, or a group's, has its candidates. */
static void write_choices(struct ts_json *j, const struct ts_catalogue *catalogue, const char *name,
	const struct ts_candidates *meant)
{
	struct choice begun[CHOICES_MOST];
	size_t count = meant->how == TS_NAME_GROUP ? 0 : begun_with(catalogue, name, begun);

	for (size_t i = 0; i < count; i++)
		write_choice(j, begun[i].name, begun[i].species);
	for (size_t i = 0; !count && i < meant->count; i++)
		write_choice(j, meant->items[i].name, meant->items[i].species);
}

/* How many where nobody said so, as `check` takes it; of a group so many that each of it feels
 * safe. */
static double count_of(const struct ts_stock_line *line, const struct ts_species *species,
	const struct ts_candidates *meant)
{
	double count = species ? fmax(1, ceil(species->group.least)) : 1;

	if (line->count > 0)
		return line->count;
	for (size_t i = 0; !species && meant->how == TS_NAME_GROUP && i < meant->count; i++)
		count = fmax(count, ceil(meant->items[i].species->group.least));
	return count;
}

static void say_count(struct ts_text *text, double count, const struct ts_species *species)
{
	struct ts_ruling r = {.rule = TS_RULE_COUNT_ASSUMED, .subject = species, .ours = count};

	size_t at;

	if (text->len)
		ts_text_put(text, ". ");
	at = text->len;
	ts_say_ruling(text, &r);
	ts_text_capital(text, at);
}

static void write_meant(struct ts_json *j, const struct ts_stock_line *line,
	const struct ts_catalogue *catalogue, const struct ts_species *species,
	const struct ts_candidates *meant)
{
	struct ts_text said;

	ts_text_open(&said, NULL);
	if (species)
		ts_say_name(&said, species);
	write_said(j, "name", &said);
	if (species)
		ts_say_taken(&said, line->species, meant);
	else
		ts_say_candidates(&said, line->species, meant);
	if (species && line->count < 1 && count_of(line, species, meant) > 1)
		say_count(&said, count_of(line, species, meant), species);
	write_said(j, "says", &said);
	ts_json_bool(j, "group", !species && meant->how == TS_NAME_GROUP);
	ts_json_list(j, "choices");
	if (!species)
		write_choices(j, catalogue, line->species, meant);
	ts_json_end_list(j);
	ts_text_drop(&said);
}

static void write_animal(
	struct ts_json *j, const struct ts_stock_line *line, const struct ts_catalogue *catalogue)
{
	struct ts_candidates meant;
	const struct ts_species *species = ts_catalogue_species(catalogue, line->species, &meant);

	write_line(j, line, count_of(line, species, &meant));
	write_meant(j, line, catalogue, species, &meant);
}

void page_animals_write(
	struct ts_text *out, const struct ts_catalogue *catalogue, const char *words, long today)
{
	struct ts_stock_line line;
	struct ts_arena arena;
	struct ts_text error;
	struct ts_json j;

	ts_arena_open(&arena, &out->allocator);
	ts_text_open(&error, NULL);
	ts_json_open(&j, out);
	j.line = true;
	ts_json_object(&j, NULL);
	if (ts_animal_words(&arena, words, today, &line, &error)) {
		write_animal(&j, &line, catalogue);
	} else {
		write_said(&j, "says", &error);
	}
	ts_json_end_object(&j);
	ts_text_put(out, "\n");
	out->failed |= arena.failed;
	ts_text_drop(&error);
	ts_arena_drop(&arena);
}

static void write_texts(struct ts_json *j, const char *key, const char *const *texts, size_t count)
{
	ts_json_list(j, key);
	for (size_t i = 0; i < count; i++)
		ts_json_text(j, NULL, texts[i]);
	ts_json_end_list(j);
}

/* What no field of the sheet holds, and goes with the call as it is. */
static bool goes_with_call(const char *flag)
{
	static const char *const flags[] = {"--signs", "--deaths", "--filter", "--happened",
		"--water-change", "--asks", "--softened", "--active-soil", "--peat", "--poured"};

	for (size_t i = 0; i < sizeof flags / sizeof *flags; i++) {
		if (strcmp(flag, flags[i]) == 0)
			return true;
	}
	return false;
}

static void write_flags(struct ts_json *j, const struct ts_sentence *read)
{
	ts_json_object(j, "flags");
	for (size_t i = 0; i < read->flag_count; i++) {
		if (!goes_with_call(read->flags[i].flag))
			ts_json_text(j, read->flags[i].flag + 2, read->flags[i].value);
	}
	ts_json_end_object(j);
	ts_json_list(j, "told");
	for (size_t i = 0; i < read->flag_count; i++) {
		if (!goes_with_call(read->flags[i].flag))
			continue;
		ts_json_text(j, NULL, read->flags[i].flag);
		if (*read->flags[i].value)
			ts_json_text(j, NULL, read->flags[i].value);
	}
	ts_json_end_list(j);
	ts_json_list(j, "alarms");
	for (size_t i = 0; i < read->alarm_count; i++)
		ts_json_text(j, NULL, read->alarms[i].words);
	ts_json_end_list(j);
}

void page_sentence_write(
	struct ts_text *out, const struct ts_catalogue *catalogue, const char *words)
{
	struct ts_arena arena;
	struct ts_sentence *read;
	struct ts_json j;

	ts_arena_open(&arena, &out->allocator);
	read = ts_arena_take(&arena, sizeof *read);
	ts_json_open(&j, out);
	j.line = true;
	ts_json_object(&j, NULL);
	if (read && ts_sentence_read(catalogue, &arena, words, read)) {
		write_texts(&j, "planned", read->planned, read->planned_count);
		write_texts(&j, "living", read->living, read->living_count);
		write_texts(&j, "unread", read->unread, read->unread_count);
		write_flags(&j, read);
	}
	ts_json_end_object(&j);
	ts_text_put(out, "\n");
	out->failed |= arena.failed;
	ts_arena_drop(&arena);
}
