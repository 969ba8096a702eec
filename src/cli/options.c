/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Flags: rows with a name, a kind, the member they set, the commands that take them and one line
 * of help. Reading flags are not rows here: they are the rows of the reading shape, matched without
 * regard to case and exactly, so that a slip like --K 9 never passes for --KH 9.
 */
#include "cli/options.h"

#include <string.h>

#include "model/shape.h"

enum flag_kind {
	SWITCH,  /* bool */
	TEXT,    /* const char * */
	TEXTS,   /* struct values */
	WORD,    /* int, index into words */
	MEASURE, /* struct ts_measure of a quantity */
	BOX,     /* struct box */
	COUNT    /* size_t; 0 = not given */
};

struct flag {
	const char *name, *short_name;
	enum flag_kind kind;
	enum ts_quantity quantity;
	size_t offset;
	const char *const *words;
	const char *takes;    /* as help shows it; NULL = nothing */
	const char *commands; /* separated by blanks; NULL = all */
	const char *says;
};

#define AT(m, T) (offsetof(struct options, m) + 0 * sizeof(&((struct options *)0)->m == (T *)0))
#define SWITCH_ROW(name, short_name, m, commands, says)                                            \
	{                                                                                          \
		name, short_name, SWITCH, TS_Q_NUMBER, AT(m, bool), NULL, NULL, commands, says     \
	}
#define TEXT_ROW(name, short_name, m, takes, commands, says)                                       \
	{                                                                                          \
		name, short_name, TEXT, TS_Q_NUMBER, AT(m, const char *), NULL, takes, commands,   \
			says                                                                       \
	}
#define TEXTS_ROW(name, m, takes, commands, says)                                                  \
	{                                                                                          \
		name, NULL, TEXTS, TS_Q_NUMBER, AT(m, struct values), NULL, takes, commands, says  \
	}
#define WORD_ROW(name, short_name, m, words, takes, commands, says)                                \
	{                                                                                          \
		name, short_name, WORD, TS_Q_NUMBER, AT(m, int), words, takes, commands, says      \
	}
#define MEASURE_ROW(name, m, quantity, takes, commands, says)                                      \
	{                                                                                          \
		name, NULL, MEASURE, quantity, AT(m, struct ts_measure), NULL, takes, commands,    \
			says                                                                       \
	}
#define COUNT_ROW(name, m, takes, commands, says)                                                  \
	{                                                                                          \
		name, NULL, COUNT, TS_Q_NUMBER, AT(m, size_t), NULL, takes, commands, says         \
	}

#define BOX_ROW(name, m, takes, commands, says)                                                    \
	{                                                                                          \
		name, NULL, BOX, TS_Q_SIDE, AT(m, struct box), NULL, takes, commands, says         \
	}

static const char *const words_aim[] = {"display", "breeding", NULL};
static const char *const words_origin[] = {"farmed", "wild", NULL};
static const char *const words_top_up[] = {"unknown", "tap", "pure", NULL};
static const char *const words_theme[] = {
	"any", "lake", "blackwater", "cool", "shrimps", "one-species", NULL}; /* enum ts_theme */
static const char *const words_bottom[] = {
	"unknown", "sand", "gravel", "coarse-gravel", "bare", NULL};
static const char *const words_format[] = {
	"text", "json", "csv", "html", "ics", "brief", "lines", NULL};

#define MATCHING "propose rank remake why"
/* Where a tank's own readings may be typed. */
#define ACID_COMMANDS "check rank water why"
#define CATALOGUE "arrive due find propose rank remake why"
#define RECORDS "check drift " CATALOGUE

/* Sorted by name. */
/* clang-format off */
static const struct flag flags[] = {
	SWITCH_ROW("--active-soil", NULL, acids, ACID_COMMANDS, "active soil in the tank: there pH tells no CO2"),
	TEXT_ROW("--against", NULL, against, "FILE", "water", "puts another water beside it: your tap beside the tank"),
	WORD_ROW("--aim", NULL, aim, words_aim, "display|breeding", CATALOGUE, "what you keep them for (display)"),
	SWITCH_ROW("--all", NULL, all, "check find log propose rank", "everything; find, rank, log: all of each list, where a terminal shows a dozen or two and a line of --batch a hundred"),
	SWITCH_ROW("--any-size", NULL, any_size, "rank", "those for whom the tank is too small as well"),
	SWITCH_ROW("--ascii", NULL, ascii, NULL, "plain letters alone, in charts and names"),
	SWITCH_ROW("--base", NULL, base, "titrate", "strong base instead of acid"),
	TEXT_ROW("--batch", NULL, batch_file, "FILE", "rank why", "many waters: a CSV table, a water a row; - is stdin; rank, and why with -f lines: a line of JSON for each"),
	WORD_ROW("--bottom", NULL, bottom, words_bottom, "sand", "propose", "what covers the floor of the tank"),
	MEASURE_ROW("--buffer", buffer, TS_Q_TIME, "28 d", "propose", "the least that the buffer must last"),
	TEXTS_ROW("--catalogue", folders, "FOLDER", RECORDS " page", "adds a folder of species records"),
	TEXT_ROW("--centre", NULL, centre, "SPECIES", "propose", "the animal that the list is built around"),
	MEASURE_ROW("--change-percent", change_percent, TS_Q_PERCENT, "\"30 %\"", "due remake", "how much water a later change replaces (25 %)"),
	COUNT_ROW("--days", days, "28", "drift", "how far ahead (28)"),
	MEASURE_ROW("--deaths", deaths, TS_Q_NUMBER, "2", "check", "how many died unexplained within four weeks"),
	MEASURE_ROW("--dose", dose, TS_Q_ALKALINITY, "\"0.25 meq/L\"", "titrate", "what one step of the curve adds"),
	TEXT_ROW("--family", NULL, family, "FAMILY", "find rank", "of that family"),
	TEXT_ROW("--filter", NULL, filter, "\"off 12 h\"", "check", "mature, new, none, or for how long it stood"),
	SWITCH_ROW("--fixed", NULL, fixed, "find", "takes the pattern as plain text"),
	TEXTS_ROW("--for", wished, "SPECIES", "due remake", "whose water it is to become; may be repeated"),
	WORD_ROW("--format", "-f", format, words_format, "FORMAT", NULL, "how the answer is written"),
	SWITCH_ROW("--fresh", NULL, fresh, MATCHING " check water", "the sample came straight from the tap"),
	TEXT_ROW("--from", NULL, from, "FILE", "page", "the page that it is made of, where none was installed"),
	SWITCH_ROW("--hardy", NULL, hardy, "propose", "nothing that takes change badly"),
	TEXTS_ROW("--have", have, "INGREDIENT", "due remake", "only these are at hand: NaHCO3, mineral-free ...; may be repeated"),
	SWITCH_ROW("--help", "-h", help, NULL, "this page"),
	MEASURE_ROW("--hours", hours, TS_Q_HOURS, "\"1.5 h\"", "arrive", "how long they are under way"),
	TEXT_ROW("--like", NULL, like, "PLAN|SPECIES", "propose rank", "propose: completes what lives in this plan; rank: only animals like this one"),
	SWITCH_ROW("--lid", NULL, lid, "propose", "the tank is tightly covered"),
	COUNT_ROW("--lists", lists, "N", "propose", "how many lists (1)"),
	SWITCH_ROW("--mature", NULL, mature, "propose", "the filter is mature: ammonia and nitrite stay nil"),
	MEASURE_ROW("--max-length", max_length_cm, TS_Q_LENGTH, "\"6 cm\"", "find", "adults no longer than that"),
	MEASURE_ROW("--min-length", min_length_cm, TS_Q_LENGTH, "\"3 cm\"", "find", "adults no shorter than that"),
	COUNT_ROW("--most-species", most_species, "N", "propose", "species of a list at the most (by litres, 2-5), a snail and a shrimp beside them"),
	TEXT_ROW("--name", NULL, name, "NAME", "keep", "what you call this water"),
	SWITCH_ROW("--nightly", NULL, nightly, "titrate", "evening after evening, while the tank airs each night"),
	SWITCH_ROW("--no-color", NULL, no_color, NULL, "no colour (none is used where there is no terminal)"),
	MEASURE_ROW("--no3-rise", no3_rise, TS_Q_NITRATE, "\"10 mg/L\"", "propose", "the most that nitrate may rise in a week"),
	TEXT_ROW("--on", NULL, on, "YYYY-MM-DD", "note", "the day of the reading, where it was not today"),
	TEXT_ROW("--only", NULL, only, "suits,tolerates", "rank", "only these verdicts: suits, tolerates, unsure, excluded"),
	SWITCH_ROW("--only-catalogue", NULL, only_catalogue, RECORDS, "leaves the shipped records out"),
	WORD_ROW("--origin", NULL, origin, words_origin, "farmed|wild", CATALOGUE " check", "where the animals come from (farmed)"),
	TEXT_ROW("--output", "-o", output, "FILE", NULL, "writes the answer there"),
	SWITCH_ROW("--own", NULL, own, "page", "with your own records and the tap that is kept; whoever gets the page can read them"),
	TEXT_ROW("--page", NULL, page, "ADDRESS", "ask-back", "where your page lies: adds a link that opens it with these fields waiting"),
	SWITCH_ROW("--peat", NULL, acids, ACID_COMMANDS, "peat or leaves in the tank, likewise"),
	TEXT_ROW("--plan-out", NULL, plan_out, "FILE", "check propose", "writes the plan (propose: the first list) into a file for check"),
	TEXT_ROW("--practice", NULL, practice_file, "FILE", MATCHING " check due", "your own figures of practice (docs/methods.md)"),
	SWITCH_ROW("--quiet", "-q", quiet, NULL, "verdicts without reasons"),
	TEXT_ROW("--season", NULL, season, "DATE|NAME", "arrive check mix propose rank remake titrate water why", "only the readings of that part of the year"),
	TEXT_ROW("--shop", NULL, shop_file, "FILE or READINGS", "arrive", "the shop's or the bag's water: a water file (readings: [{GH: 3, KH: 2, pH: 6.8}]), or \"GH 3, KH 2, pH 6.8\""),
	TEXTS_ROW("--signs", signs, "\"all gasping\"", "check", "what those that live there show, how many of them, since when; may be repeated"),
	TEXT_ROW("--since", NULL, since, "2024-05|\"3 years\"", "check", "since when those behind --there live there, where it is not said of each"),
	BOX_ROW("--size", size, "100x40x45", "check propose rank why", "the tank inside, length x width x height in cm, instead of -t FILE"),
	SWITCH_ROW("--softened", NULL, softened, "check keep propose rank remake why water", "the water went through a household softener"),
	SWITCH_ROW("--small-only", NULL, small_only, "propose", "nothing but small animals"),
	TEXT_ROW("--source", NULL, source, "GRADE", "find", "with a value of that grade, or from that publication"),
	SWITCH_ROW("--summary", NULL, summary, "find", "counts by group, home water and source"),
	TEXT_ROW("--supply-zone", NULL, supply_zone, "NAME", "read", "reads that zone of the report; a part of its name is enough"),
	TEXT_ROW("--tank", "-t", tank_file, "FILE", "arrive check propose rank remake why", "a tank file"),
	MEASURE_ROW("--temperature", temperature, TS_Q_TEMPERATURE, "24..26", CATALOGUE " check mix titrate water", "what the tank runs at (mix, water: the sample), C or F"),
	WORD_ROW("--theme", NULL, theme, words_theme, "lake|blackwater|cool|shrimps|one-species", "propose", "what kind of community"),
	TEXTS_ROW("--there", there, "\"6 guppy\"", "check", "lives in the tank already (\"6 guppy for 2 years\"); may be repeated"),
	TEXT_ROW("--to", NULL, to, "GH=11,KH=10", "due remake", "the water wished outright, figures or ranges"),
	TEXT_ROW("--today", NULL, today, "YYYY-MM-DD", "arrive check drift due keep log note propose rank remake titrate why water tapshoal", "takes that day for today"),
	WORD_ROW("--top-up", NULL, top_up, words_top_up, "tap|pure", "drift", "what replaces evaporated water, where the tank file does not say (tap)"),
	MEASURE_ROW("--towards", towards, TS_Q_PH, "7.0", "titrate", "the pH that is chased with --nightly (7.0)"),
	SWITCH_ROW("--version", "-V", version, NULL, "the version, and those of the libraries it runs with"),
	MEASURE_ROW("--volume", volume, TS_Q_VOLUME, "60L", "check due propose rank remake why", "the water in the tank; check, rank, propose, why: a tank of so many litres, its sides assumed"),
	{"--water", "-w", TEXTS, TS_Q_NUMBER, AT(waters, struct values), NULL, "FILE", MATCHING " arrive check due", "a water file, instead of reading flags; - is stdin; for due: what is poured in; for why: may be repeated"},
	TEXT_ROW("--why", NULL, why, "SPECIES", "propose", "why it is in no list"),
	TEXTS_ROW("--with", with, "SPECIES", "arrive due propose remake", "it must be in every list; for remake and due: it is in the tank now; for arrive: it comes home"),
	TEXTS_ROW("--without", without, "SPECIES", "propose", "it must not be in any list"),
	SWITCH_ROW("--wood", NULL, acids, ACID_COMMANDS, "wood in the tank that colours the water, likewise"),
	TEXT_ROW("--write-model", NULL, model_out, "FILE.lp", "propose", "writes the integers that were solved, for other solvers"),
};
/* clang-format on */
#define FLAGS (sizeof flags / sizeof *flags)

static bool refuse(struct ts_text *error, const char *what, const char *remedy)
{
	ts_text_puts(error, what, "; ", remedy, NULL);
	return false;
}

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

static bool refuse_word(
	const char *flag, const char *value, const char *const *words, struct ts_text *error)
{
	ts_text_puts(error, flag, " does not take '", value, "'; it takes", NULL);
	for (int i = 0; words[i]; i++)
		ts_text_puts(error, i ? ", " : " ", words[i], NULL);
	return false;
}

static bool set_word(const char *flag, const char *const *words, const char *value, void *at,
	struct ts_text *error)
{
	for (int i = 0; words[i]; i++) {
		if (strcmp(words[i], value) == 0) {
			memcpy(at, &i, sizeof i);
			return true;
		}
	}
	return refuse_word(flag, value, words, error);
}

static bool set_measure(const char *flag, enum ts_quantity q, const char *value, void *at,
	struct ts_scan *ret_scan, struct ts_text *error)
{
	struct ts_measure measure;

	if (ts_scan_measure(q, value, strlen(value), &measure, ret_scan)) {
		memcpy(at, &measure, sizeof measure);
		return true;
	}
	ts_text_puts(error, error->len ? "; " : "", flag, " '", value,
		"': ", ts_scan_says(ret_scan->fault), "; ", NULL);
	ts_scan_remedy(error, q, value, strlen(value), ret_scan);
	return false;
}

static bool set_count(const char *flag, const char *value, void *at, struct ts_text *error)
{
	size_t count = 0;

	for (const char *c = value; *c; c++) {
		if (*c < '0' || *c > '9' || count > 100000) {
			count = 0;
			break;
		}
		count = count * 10 + (size_t)(*c - '0');
	}
	if (!count) {
		ts_text_puts(error, flag, " '", value, "' is no count; write it like 3", NULL);
		return false;
	}
	memcpy(at, &count, sizeof count);
	return true;
}

/* "100x40x45" */
static bool set_box(const char *flag, const char *value, void *at, struct ts_text *error)
{
	struct box box;
	double sides[3];

	if (!ts_scan_box(value, sides)) {
		ts_text_puts(error, flag, " '", value,
			"' is no length x width x height; write it like 100x40x45 for cm, "
			"or \"40x16x18 in\"",
			NULL);
		return false;
	}
	box = (struct box){sides[0], sides[1], sides[2]};
	memcpy(at, &box, sizeof box);
	return true;
}

static bool set_flag(
	struct options *o, const struct flag *flag, const char *value, struct ts_text *error)
{
	char *at = (char *)o + flag->offset;
	struct values *values;
	struct ts_scan scan;

	switch (flag->kind) {
	case SWITCH:
		*(bool *)(void *)at = true;
		return true;
	case TEXT:
		memcpy(at, &value, sizeof value);
		return true;
	case TEXTS:
		values = (struct values *)(void *)at;
		if (values->count == TS_VALUES_MOST)
			return refuse(error, flag->name, "it may stand 16 times");
		values->items[values->count++] = value;
		return true;
	case WORD:
		return set_word(flag->name, flag->words, value, at, error);
	case COUNT:
		return set_count(flag->name, value, at, error);
	case BOX:
		return set_box(flag->name, value, at, error);
	default:
		return set_measure(flag->name, flag->quantity, value, at, &scan, error);
	}
}

static bool set_reading(struct options *o, const struct ts_field *field, const char *flag,
	const char *value, struct ts_text *error)
{
	char *at = (char *)&o->reading + field->offset;
	struct ts_scan scan;

	o->has_reading = true;
	if (field->kind == TS_WORD)
		return set_word(flag, field->words, value, at, error);
	if (field->kind == TS_TEXT) {
		memcpy(at, &value, sizeof value);
		return true;
	}
	if (!set_measure(flag, field->quantity, value, at, &scan, error)) {
		/* a kit that counts GH in ppm counts KH so too: both are asked for at once */
		o->unit_asked |= scan.fault == TS_SCAN_OTHER_UNIT;
		return scan.fault == TS_SCAN_OTHER_UNIT;
	}
	ts_scan_pair_look(&o->hardness, field->quantity, value, &scan);
	return true;
}

/* A word of a record to ask for: "--swims bottom". */
static bool set_trait(struct options *o, const struct ts_trait *trait, const char *flag,
	const char *value, struct ts_text *error)
{
	struct ts_filter *filter = &o->traits;

	if (filter->wanted_count == TS_WANTED_MOST)
		return refuse(error, "too many words of records are asked for", "16 are read");
	if (!set_word(flag, trait->field->words, value, &filter->wanted[filter->wanted_count].word,
		    error))
		return false;
	filter->wanted[filter->wanted_count++].trait = *trait;
	return true;
}

static const struct flag *find_flag(const char *argument)
{
	for (size_t i = 0; i < FLAGS; i++) {
		if (strcmp(flags[i].name, argument) == 0 ||
			(flags[i].short_name && strcmp(flags[i].short_name, argument) == 0))
			return &flags[i];
	}
	return NULL;
}

static const char *nearest_flag(const char *name)
{
	const char *names[FLAGS + 1] = {NULL};

	for (size_t i = 0; i < FLAGS; i++)
		names[i] = flags[i].name + 2;
	return ts_nearest_word(names, name);
}

#define TRAITS_MOST 32

static const char *nearest_trait(const char *name)
{
	const char *names[TRAITS_MOST + 1] = {NULL};
	struct ts_trait trait;

	for (size_t i = 0; i < TRAITS_MOST && ts_trait_at(i, &trait); i++)
		names[i] = trait.field->key;
	return ts_nearest_word(names, name);
}

/* A flag that is none, or none of this command's. */
static bool unknown_flag(const struct command *command, const char *argument, struct ts_text *error)
{
	const struct flag *elsewhere = find_flag(argument);
	const char *near = NULL;

	if (elsewhere) {
		ts_text_puts(error, command ? command->name : "tapshoal", " takes no ", argument,
			"; ", elsewhere->commands, " does", NULL);
		return false;
	}
	if (argument[1] == '-' && command && command->readings)
		near = ts_shape_nearest_key(&ts_shape_reading, argument + 2);
	if (argument[1] == '-' && command && command->traits && !near)
		near = nearest_trait(argument + 2);
	if (argument[1] == '-' && !near)
		near = nearest_flag(argument + 2);
	ts_text_puts(error, "unknown flag '", argument, "'; ", NULL);
	if (near)
		ts_text_puts(error, "did you mean --", near, "? ", NULL);
	ts_text_puts(error, "tapshoal ", command ? command->name : "", command ? " " : "",
		"--help lists them", NULL);
	return false;
}

#define FORM_MOST 64

/* An example of a value as it is typed: 7.4, "14 dH", "20 mg/L NO3" or "4.5 mg/L N". */
static void typed(const char *example, char form[FORM_MOST])
{
	const char *quote = strchr(example, ' ') ? "\"" : "";

	ts_text_fit(form, FORM_MOST, quote, NULL);
	for (const char *rest = example; *rest;) {
		const char *other = strstr(rest, " or ");
		size_t len = other ? (size_t)(other - rest) : strlen(rest), at = strlen(form);

		if (len >= FORM_MOST - at)
			return;
		memcpy(form + at, rest, len);
		ts_text_fit(form + at + len, FORM_MOST - at - len, quote, other ? " or " : "",
			other ? quote : "", NULL);
		rest += len + (other ? 4 : 0);
	}
}

/* One flag, with its value where it takes one; moves `*i` past what was used. */
static bool parse_flag(const struct command *command, struct options *o, int argc, char **argv,
	int *i, struct ts_text *error)
{
	const char *argument = argv[*i];
	const struct flag *flag = find_flag(argument);
	const struct ts_field *field = NULL;
	struct ts_trait trait = {NULL, 0};
	char form[FORM_MOST];

	if (flag && !takes_flag(command, flag))
		flag = NULL;
	if (!flag && argument[1] == '-' && command && command->readings)
		field = ts_shape_field_caseless(&ts_shape_reading, argument + 2);
	if (!flag && !field && argument[1] == '-' && command && command->traits)
		(void)ts_trait_find(argument + 2, &trait);
	if (!flag && !field && !trait.field)
		return unknown_flag(command, argument, error);
	if (flag && flag->kind == SWITCH)
		return set_flag(o, flag, NULL, error);
	if (*i + 1 >= argc) {
		typed(field ? ts_quantities[field->quantity].example : "", form);
		ts_text_puts(error, argument, " needs a value behind it; write it like ",
			flag    ? flag->takes
			: field ? form
				: trait.field->words[0],
			NULL);
		return false;
	}
	++*i;
	if (flag)
		return set_flag(o, flag, argv[*i], error);
	return field ? set_reading(o, field, argument, argv[*i], error)
		     : set_trait(o, &trait, argument, argv[*i], error);
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
		return refuse(error, "a water file and reading flags were both given",
			"give one of the two");
	if (command && o->format == FORMAT_TEXT && strcmp(command->formats, "html") == 0)
		o->format = FORMAT_HTML; /* there is no other */
	if (command && !listed(command->formats, words_format[o->format])) {
		ts_text_puts(error, command->name, " does not write ", words_format[o->format],
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

/* A measure that was typed as a flag stands. */
static bool is_given(const struct options *o, const struct flag *flag, const struct ts_field *field)
{
	const char *at =
		flag ? (const char *)o + flag->offset : (const char *)&o->reading + field->offset;
	struct ts_measure measure;

	if (flag && flag->kind == BOX)
		return o->size.length_cm > 0;
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
	if (row ? !set_flag(io, row, value, error) : !set_reading(io, field, flag, value, error))
		return false;
	io->keeping.temperature = io->temperature;
	return !io->unit_asked;
}

bool options_parse(const struct command *command, int argc, char **argv, struct options *ret,
	struct ts_text *error)
{
	bool flags_over = false;

	*ret = (struct options){0};
	for (int i = 1; i < argc; i++) {
		if (!flags_over && strcmp(argv[i], "--") == 0) {
			flags_over = true;
		} else if (!flags_over && argv[i][0] == '-' && argv[i][1]) {
			if (!parse_flag(command, ret, argc, argv, &i, error))
				return false;
		} else if (ret->argument_count == TS_ARGUMENTS_MOST) {
			return refuse(error, "too many arguments", "256 are read");
		} else {
			ret->arguments[ret->argument_count++] = argv[i];
		}
	}
	return agree(command, ret, error);
}

static void each_flag(const struct command *command, options_taker *take, void *state)
{
	for (size_t i = 0; i < FLAGS; i++) {
		const struct flag *f = &flags[i];
		struct option_view view = {
			OPTION_FLAG, f->name, f->short_name, f->takes, f->says, f->words};

		if (f->words == words_format && command)
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
		struct option_view view = {OPTION_READING, name, NULL, form, f->says, f->words};

		if (f->kind != TS_MEASURE || strcmp(f->key, "temperature") == 0)
			continue;
		flag_name(f->key, name);
		typed(ts_quantities[f->quantity].example, form);
		take(state, &view);
	}
	for (size_t i = 0; command && command->traits && ts_trait_at(i, &trait); i++) {
		struct option_view view = {OPTION_TRAIT, name, NULL, trait.field->words[0],
			trait.field->says, trait.field->words};

		flag_name(trait.field->key, name);
		take(state, &view);
	}
}
