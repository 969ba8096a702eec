/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of settings, and where each of them takes hold. What programs read (JSON, CSV, pages,
 * files) is the same for everybody: settings are of figures as they are typed, and of text.
 */
#include "cli/settings.h"

#include <errno.h>
#include <string.h>

#include "base/arena.h"
#include "base/findings.h"
#include "cli/commands.h"
#include "home/tap.h"
#include "records/load.h"
#include "records/value.h"

static const char *const words_hardness[] = {"dH", "ppm", "fH", "Clark", "gpg", "mmol/L", NULL};
static const char *const words_temperature[] = {"C", "F", NULL};
static const char *const words_volume[] = {"L", "US gal", "UK gal", NULL};
static const char *const words_length[] = {"cm", "in", NULL};
static const char *const words_names[] = {"en", "de", "fr", "nl", "es", "it", NULL};
static const char *const words_decimal[] = {"point", "comma", NULL};
static const char *const words_color[] = {"auto", "never", NULL};
static const char *const words_letters[] = {"auto", "plain", NULL};

#define AT(m, T) (offsetof(struct settings, m) + 0 * sizeof(&((struct settings *)0)->m == (T *)0))
#define WORD_ROW(m, says)                                                                          \
	{                                                                                          \
#m, TS_WORD, TS_OPTIONAL, TS_Q_NUMBER, AT(m, int), 0, words_##m, NULL, says        \
	}

/* clang-format off */
static const struct ts_field fields[] = {
	WORD_ROW(hardness, "what GH and KH are in where they are typed without a unit, as flags or in a sentence"),
	WORD_ROW(temperature, "the same of temperatures"),
	WORD_ROW(volume, "the same of --volume"),
	WORD_ROW(length, "the same of --size"),
	WORD_ROW(names, "whose names of animals stand first in texts: English, German, French, Dutch, Spanish, Italian"),
	WORD_ROW(decimal, "what parts the whole of a figure from the rest, in texts"),
	WORD_ROW(color, "never: as --no-color"),
	WORD_ROW(letters, "plain: as --ascii"),
	{"lines", TS_NUMBER, TS_OPTIONAL, TS_Q_NUMBER, AT(lines, double), 0, NULL, NULL,
		"how many entries of a long list a terminal is shown before --all (12; of log 20)"},
	{"kept", TS_TEXT, TS_OPTIONAL, TS_Q_NUMBER, AT(kept, const char *), 0, NULL, NULL,
		"the folder of what is kept by name, in full or from ~/ on (kept, beside the file of the settings)"},
};
/* clang-format on */
#define FIELDS (sizeof fields / sizeof *fields)

const struct ts_shape settings_shape = {
	"config", fields, FIELDS, sizeof(struct settings), .lenient = true};

/* A wrong setting never stops an answer. */
static const struct ts_code wrong = {"config.wrong", TS_CONCERN, "a setting is wrong, and left out",
	"tapshoal config lists the settings", "0.1"};

const char *settings_path(struct session *s)
{
	const char *folder = tap_folder(s->system, s->arena);

	return folder ? ts_arena_join(s->arena, folder, "/config.yaml", NULL) : NULL;
}

size_t settings_faults(const struct ts_findings *found, struct ts_findings *io)
{
	size_t count = 0;

	for (size_t i = 0; i < found->count; i++) {
		const struct ts_finding *f = &found->items[i];

		if (f->code == &ts_codes[TS_C_RECORDS_MISSING_KEY])
			continue; /* a file of comments alone, which settles nothing */
		ts_finding_add(io, &wrong, &f->place, f->what, f->remedy);
		count++;
	}
	if (io)
		io->no_memory |= found->no_memory;
	return count;
}

static void load_file(struct session *s)
{
	const char *off = s->system->variable(s->system->state, "TAPSHOAL_NO_CONFIG");
	const char *path = off && *off ? NULL : settings_path(s);
	struct ts_findings found;
	struct ts_seen seen;
	int why = path ? s->system->look(s->system->state, path, &seen) : 0;

	s->arena->failed |= why == ENOMEM;
	if (!path || why == ENOENT || why == ENOTDIR || why == ENOMEM)
		return; /* with any other reason it may be there: its reader says so */
	ts_findings_open(&found, &s->arena->allocator);
	if (ts_records_load(&settings_shape, s->system, path, TS_OPEN_ORDINARY, s->arena,
		    &s->settings, &found) == TS_NO_MEMORY)
		s->arena->failed = true;
	(void)settings_faults(&found, s->findings);
	ts_findings_drop(&found);
}

void settings_variable(const struct ts_field *field, char ret[32])
{
	ts_text_fit(ret, 32, "TAPSHOAL_", field->key, NULL);
	for (char *c = ret; *c; c++)
		*c = (char)(*c >= 'a' && *c <= 'z' ? *c - 0x20 : *c);
}

static void load_variable(struct session *s, size_t row)
{
	char name[32];
	struct ts_value_says says;
	struct ts_place place = {.path = name};
	const char *value;

	settings_variable(&fields[row], name);
	value = s->system->variable(s->system->state, name);
	if (!value || !*value)
		return;
	if (ts_value_read(&fields[row], value, strlen(value), s->arena, &s->settings, &says))
		s->settings.from_environment |= 1ul << row;
	else if (!s->arena->failed)
		ts_finding_add(s->findings, &wrong, &place, says.what, says.remedy);
}

const char *settings_refused(const struct ts_field *field, const struct settings *set)
{
	if (strcmp(field->key, "lines") == 0 && !(set->lines >= 1 && set->lines <= 10000))
		return "write a whole number from 1 to 10000";
	if (strcmp(field->key, "kept") == 0 && set->kept && set->kept[0] != '/' &&
		strncmp(set->kept, "~/", 2) != 0)
		return "write the folder in full, from / or from ~/ on";
	return NULL;
}

/* What a row alone cannot say of its value. */
static void check(struct session *s)
{
	struct settings *set = &s->settings;
	const char *home = s->system->variable(s->system->state, "HOME");

	for (size_t i = 0; i < FIELDS; i++) {
		const char *refused = settings_refused(&fields[i], set);
		struct ts_place place = {.file = settings_path(s), .path = fields[i].key};
		bool lines = fields[i].kind == TS_NUMBER;

		if (!refused || (lines && set->lines == 0))
			continue;
		ts_finding_add(s->findings, &wrong, &place, "is none of its kind", refused);
		set->lines = lines ? 0 : set->lines;
		set->kept = lines ? set->kept : NULL;
	}
	if (set->kept && set->kept[0] == '~' && home && *home)
		set->kept = ts_arena_join(s->arena, home, set->kept + 1, NULL);
}

void settings_load(struct session *s)
{
	load_file(s);
	for (size_t i = 0; i < FIELDS; i++)
		load_variable(s, i);
	check(s);
}

static const char *unit_of(const struct settings *set, enum ts_quantity quantity)
{
	switch (quantity) {
	case TS_Q_GH:
	case TS_Q_KH:
		return set->hardness ? words_hardness[set->hardness] : NULL;
	case TS_Q_TEMPERATURE:
		return set->temperature ? words_temperature[set->temperature] : NULL;
	case TS_Q_VOLUME:
		return set->volume ? words_volume[set->volume] : NULL;
	case TS_Q_SIDE:
		return set->length ? words_length[set->length] : NULL;
	default:
		return NULL;
	}
}

static bool has_letter(const char *value)
{
	for (const char *c = value; *c; c++) {
		const char lower = (char)(*c | 0x20);

		if (lower >= 'a' && lower <= 'z' && !(lower == 'x' && c > value))
			return true;
	}
	return false;
}

const char *settings_unit(const struct settings *set, enum ts_quantity quantity, const char *value,
	char room[SETTINGS_ROOM])
{
	const char *unit = set ? unit_of(set, quantity) : NULL;

	if (!unit || !*value || has_letter(value) ||
		strlen(value) + strlen(unit) + 2 > SETTINGS_ROOM)
		return value;
	ts_text_fit(room, SETTINGS_ROOM, value, " ", unit, NULL);
	return room;
}

/* Whoever reads the answer is told that a bare figure was not taken as it usually is. */
static void tell_units(struct session *s)
{
	const struct settings *set = &s->settings;
	const struct {
		const char *what;
		int set;
		const char *const *words;
	} units[] = {{"GH and KH: ", set->hardness, words_hardness},
		{"temperatures: ", set->temperature, words_temperature},
		{"volumes: ", set->volume, words_volume}, {"sides: ", set->length, words_length}};
	struct ts_text text;
	bool any = false;

	ts_text_open(&text, &s->arena->allocator);
	ts_text_put(&text, "Figures without a unit are read in the unit that you have set: ");
	for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
		if (!units[i].set)
			continue;
		ts_text_puts(
			&text, any ? ", " : "", units[i].what, units[i].words[units[i].set], NULL);
		any = true;
	}
	ts_text_put(&text, " (tapshoal config).");
	s->arena->failed |= text.failed;
	if (any && !s->arena->failed)
		session_tell(s, ts_arena_text(s->arena, ts_text_get(&text), text.len));
	ts_text_drop(&text);
}

const char *settings_unit_told(
	struct session *s, enum ts_quantity quantity, const char *value, char room[SETTINGS_ROOM])
{
	const char *whole = settings_unit(&s->settings, quantity, value, room);

	if (whole != value)
		tell_units(s);
	return whole;
}

void settings_take(struct session *s, struct options *o)
{
	o->no_color |= s->settings.color != 0;
	o->ascii |= s->settings.letters != 0;
	if (o->unit_settled)
		tell_units(s);
}

static bool for_people(const struct session *s)
{
	return (s->options->format == FORMAT_TEXT || s->options->format == FORMAT_BRIEF) &&
	       !(s->name && strcmp(s->name, "read") == 0); /* a file, though it is text */
}

/* The record with the names of that language in front of the English ones, in one list. */
static const struct ts_species *renamed(
	struct ts_arena *arena, const struct ts_species *old, int language)
{
	struct ts_species *new = ts_arena_take(arena, sizeof *new);
	const char **items;

	if (!new)
		return old;
	*new = *old;
	struct ts_texts *const lists[] = {&new->common.en, &new->common.de, &new->common.fr,
		&new->common.nl, &new->common.es, &new->common.it};
	struct ts_texts *first = lists[language], *en = lists[0];

	items = first->count ? ts_arena_array(arena, first->count + en->count, sizeof *items)
			     : NULL;
	if (!items)
		return old;
	memcpy(items, first->items, first->count * sizeof *items);
	if (en->count)
		memcpy(items + first->count, en->items, en->count * sizeof *items);
	first->items = items; /* the same list: so words/rulings.c knows that it is not English */
	*en = (struct ts_texts){items, first->count + en->count};
	return new;
}

enum ts_status settings_names(struct session *s)
{
	struct ts_catalogue *c = s->catalogue;

	for (size_t i = 0; s->settings.names && for_people(s) && i < c->count; i++)
		c->items[i] = renamed(&c->arena, c->items[i], s->settings.names);
	return c->arena.failed ? TS_NO_MEMORY : TS_OK;
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/*
 * Whether the point at `at` parts a figure: digits on both sides, and nothing about them that makes
 * it a part of a name, a path, a call or a version. A range (24.5..26) is two figures.
 */
static bool parts_figure(const char *text, size_t at)
{
	size_t start = at, end = at + 1;

	if (!at || !is_digit(text[at - 1]) || !is_digit(text[end]))
		return false;
	while (start && is_digit(text[start - 1]))
		start--;
	while (is_digit(text[end]))
		end++;
	if (start && !strchr(" \n\t([<>~+-;:\"'", text[start - 1]) && !(text[start - 1] & 0x80) &&
		!(start > 1 && text[start - 1] == '.' && text[start - 2] == '.'))
		return false;
	if (text[end] == '.' && text[end + 1] != '.' && text[end + 1] != ' ' &&
		text[end + 1] != '\n' && text[end + 1])
		return false;
	return !strchr("/_@", text[end]) || !text[end];
}

void settings_decimal(struct session *s)
{
	if (!s->settings.decimal || !for_people(s))
		return;
	for (size_t i = 0; i + 1 < s->out->len; i++) {
		if (s->out->at[i] == '.' && parts_figure(s->out->at, i))
			s->out->at[i] = ',';
	}
}

const char *settings_kept(const struct session *s)
{
	return s->settings.kept;
}

size_t settings_lines(const struct session *s)
{
	return (size_t)s->settings.lines;
}
