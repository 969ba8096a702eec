/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The commands, one row each. Parsing, help and errors read the rows.
 */
#include "cli/commands.h"

#include <string.h>
#include <utf8proc.h>

#include "catalogue/pattern.h"
#include "model/shape.h"
#include "records/load.h"
#include "report/brief.h"
#include "report/csv.h"
#include "report/html.h"
#include "report/output.h"
#include "report/shown.h"

/* What no flag takes: dates, routine, signs. */
static const char running_tank[] =
	"  water: {readings: [{method: drops, GH: 6 dH, KH: 4 dH}]}    # what is poured in\n"
	"  tank:\n"
	"    length: 100 cm\n"
	"    width: 40 cm\n"
	"    height: 40 cm\n"
	"    temperature: 25 C\n"
	"    filter: mature\n"
	"    water_change: 30 % every 7 days\n"
	"    feeding: ordinary\n"
	"    readings:\n"
	"      - {date: \"2026-03-08\", GH: 7 dH, KH: 3 dH, pH: 7.2, NO3: 20 mg/L NO3,\n"
	"         ammonia: <0.05 mg/L N, NO2: <0.02 mg/L NO2}\n"
	"  stock:\n"
	"    - {species: neon tetra, count: 10, since: \"2025-11-01\"}   # they live there\n"
	"    - {species: honey gourami, count: 2}                      # planned\n"
	"  signs: [{sign: gasping, breadth: all, onset: now}]          # gasping, rubbing, ...\n"
	"  deaths: 1\n";

/* clang-format off */
static const struct command commands[] = {
	{"arrive", command_arrive, "arrive --shop FILE --hours \"1 h\"", "text json html brief", true, false,
		"carrying animals home and settling them in", NULL},
	{"ask-back", command_ask_back, "ask-back [QUESTION]", "text json html", false, false,
		"what to ask whoever asks you, as a message to paste; alone it lists the questions", NULL},
	{"check", command_check, "check [PLAN] [\"10 neon tetra\"...]", "text json html brief", true, false,
		"who can live together, in which water and tank; of a running tank, what to do", running_tank},
#ifndef TS_IN_PAGE
	{"config", command_config, "config [KEY [VALUE]]", "text", false, false,
		"your settings: units of bare figures, language of names, decimal mark, lines; alone it lists them", NULL},
#endif
	{"drift", command_drift, "drift PLAN", "text json html brief", false, false,
		"where a tank's KH, pH and nitrate go under this feeding and water change", NULL},
	{"due", command_due, "due [FILE...]", "text json html ics", false, false,
		"what to test and when to change water, of one tank or, alone, of all that are kept; as a calendar with -f ics", NULL},
	{"find", command_find, "find [PATTERN]", "text json csv html", true, true,
		"the catalogue, by name or family (a regular expression), by words, by water", NULL},
#ifndef TS_IN_PAGE
	{"init", command_init, "init [FOLDER]", "text", false, false,
		"writes a water, a tank and a plan file to fill in, into this folder or that one", NULL},
#endif
	{"keep", command_keep, "keep [@NAME] [FILE]", "text", true, false,
		"remembers your tap, and waters and tanks by name; alone it lists them", NULL},
	{"lint", command_lint, "lint FILE...", "text json", false, false,
		"checks any of our files, or folders of species records", NULL},
	{"log", command_log, "log FILE", "text json csv html", false, false,
		"what was noted of a tank, plan or water, day by day, and whether anything moves", NULL},
	{"mix", command_mix, "mix FILE=AMOUNT...", "text json html", false, false,
		"the water that several make (fractions or litres; pure is water without minerals)", NULL},
	{"note", command_note, "note FILE KEY=VALUE... [WORDS...]", "text", false, false,
		"adds a dated reading, or what happened (\"changed 40 L\"), to a file and touches nothing else in it; --from takes a whole notebook", NULL},
	{"page", command_page, "page -o FILE [WATER|TANK|PLAN...]", "html", false, false,
		"this program as one file for a browser, with your waters, tanks and plans in it", NULL},
	{"propose", command_propose, "propose -t TANK | --volume 60L", "text json html brief", true, false,
		"animals that go together in this water and this tank", NULL},
	{"rank", command_rank, "rank", "text json csv html brief lines", true, true,
		"which species the water suits, best first, and what excludes the rest", NULL},
	{"read", command_read, "read REPORT", "text json", false, false,
		"a utility's or laboratory's report (text or CSV, - is stdin) to a water file", NULL},
	{"remake", command_remake, "remake [PLAN] --for SPECIES", "text json html brief", true, false,
		"a recipe for other minerals, and safe stages for the animals there now", NULL},
	{"titrate", command_titrate, "titrate WATER", "text json html brief", true, false,
		"what acid or base does to a water, dose by dose: why not to chase pH", NULL},
	{"water", command_water, "water WATER", "text json html brief", true, false,
		"what is this water: values in all units, CO2, tank pH, what is unusual", NULL},
	{"what-if", command_what_if, "what-if [QUESTION] [PLAN]", "text json html", true, false,
		"a power cut, a broken filter or heater, a holiday, a move: how long does it last, what to do by when; alone it lists the questions", NULL},
	{"why", command_why, "why SPECIES...", "text json csv html brief lines", true, false,
		"one or more species in full against the water; against several, in a table", NULL},
};
#ifndef TS_IN_PAGE /* which has no shell and no folder */
/* For shells and not for people: it stands in no list. */
static const struct command completing = {"complete", command_complete, "complete -- WORD...", "text", false, false,
	"what may stand where a shell completes: a value a line", NULL};
#endif
/* clang-format on */
#define COMMANDS (sizeof commands / sizeof *commands)

const struct command *command_named(const char *name)
{
	for (size_t i = 0; i < COMMANDS; i++) {
		if (strcmp(commands[i].name, name) == 0)
			return &commands[i];
	}
#ifndef TS_IN_PAGE
	if (strcmp(name, completing.name) == 0)
		return &completing;
#endif
	return NULL;
}

const struct command *command_at(size_t index)
{
	return index < COMMANDS ? &commands[index] : NULL;
}

const char *command_nearest(const char *name)
{
	const char *names[COMMANDS + 1] = {NULL};

	for (size_t i = 0; i < COMMANDS; i++)
		names[i] = commands[i].name;
	return ts_nearest_word(names, name);
}

void command_first_words(struct ts_text *text, const char *plan)
{
	ts_text_puts(text,
		"tapshoal matches fish to the water you have. Three ways to start:\n\n"
		"  tapshoal rank --GH 14 --KH 9 --pH 7.6 --temperature 25\n"
		"      which species that water suits; with your figures\n"
		"  tapshoal why \"neon tetra\" --GH 14 --KH 9 --pH 7.6 --temperature 25\n"
		"      one species against it\n"
		"  tapshoal check ",
		plan ? plan : "PLAN",
		"\n      what is wrong with a plan or a tank\n\n"
		"tapshoal --help lists all commands.\n",
		NULL);
}

void command_overview(struct ts_text *text, const struct ts_screen *screen)
{
	ts_text_put(text, "tapshoal matches fish to the water you have.\n\n");
	for (size_t i = 0; i < COMMANDS; i++) {
		ts_text_puts(text, "  tapshoal ", commands[i].usage, "\n      ", NULL);
		ts_screen_wrap(text, commands[i].says, 6, 6, screen);
	}
	ts_text_put(text, "\n");
	ts_screen_wrap(text,
		"tapshoal COMMAND --help shows two calls of it and what it takes, tapshoal help KH "
		"what a word means, tapshoal help terms all words. Exit codes: 0 yes, 1 no or "
		"cannot be said, 2 a wrong call or file, 3 the system failed.",
		0, 0, screen);
}

void command_version(struct ts_text *text)
{
	ts_text_puts(
		text, "tapshoal " TS_VERSION "\nlibyaml ", ts_records_library(), ", PCRE2 ", NULL);
	ts_pattern_library(text);
	ts_text_puts(text, ", utf8proc ", utf8proc_version(), "\n", NULL);
}

static bool stands_below(const struct session *s, size_t taken)
{
	return taken < 8 * sizeof s->taken_below && s->taken_below >> taken & 1;
}

/* A guess stands above its answer, what is sold under the same name below it. */
static void write_taken(struct session *s, const struct ts_screen *screen, bool below)
{
	bool any = false;

	for (size_t i = 0; i < s->taken.count; i++) {
		if (stands_below(s, i) != below)
			continue;
		if (below && !any)
			ts_text_put(s->out, "\n");
		ts_screen_wrap(s->out, s->taken.items[i], 0, 0, screen);
		any = true;
	}
	if (any && !below)
		ts_text_put(s->out, "\n");
}

static void write_screen(struct session *s, const struct ts_document *doc)
{
	struct ts_screen screen = output_screen(
		s->system, s->options->output, s->options->no_color, s->options->ascii);

	screen.brief = s->options->quiet;
	if (s->first) {
		ts_shown_add(s->out, s->first, strlen(s->first), screen.ascii);
		ts_text_put(s->out, "\n\n");
	}
	write_taken(s, &screen, false);
	ts_screen_write(s->out, doc, &screen);
	write_taken(s, &screen, true);
}

/* The document with what stands above everything else as its first nodes. */
static struct ts_document led(struct session *s, const struct ts_document *doc)
{
	struct ts_node *nodes = ts_arena_array(s->arena, s->taken.count + 1, sizeof *nodes);
	struct ts_document all = *doc;

	for (size_t i = nodes ? s->taken.count : 0; i-- > 0;) {
		nodes[i + 1] = (struct ts_node){
			.kind = TS_NODE_PARAGRAPH, .text = s->taken.items[i], .next = all.first};
		all.first = &nodes[i + 1];
	}
	if (nodes && s->first) {
		nodes[0] = (struct ts_node){
			.kind = TS_NODE_PARAGRAPH, .text = s->first, .next = all.first};
		all.first = &nodes[0];
	}
	return all;
}

/*
 * What an answer is made of is not all there once an allocation has failed; main then says so and
 * shows none of it.
 */
bool session_terminal(const struct session *s)
{
	return s->options->format == FORMAT_TEXT &&
	       !output_screen(s->system, s->options->output, true, true).unbroken;
}

size_t session_lines(const struct session *s, size_t otherwise)
{
	if (s->options->all)
		return 0;
	return settings_lines(s) ? settings_lines(s) : otherwise;
}

void session_write(struct session *s, const struct ts_document *doc)
{
	const struct options *o = s->options;
	struct ts_document all;

	if (s->arena->failed)
		return;
	all = led(s, doc);
	if (o->format == FORMAT_HTML)
		ts_html_write(s->out, &all);
	else if (o->format == FORMAT_BRIEF)
		ts_brief_write(s->out, &all,
			output_screen(s->system, o->output, o->no_color, o->ascii).ascii);
	else
		write_screen(s, doc);
}

void session_json(struct session *s, const char *command, const struct ts_result_shape *shape,
	const void *result)
{
	if (!s->arena->failed)
		ts_result_json(s->out, TS_VERSION, command, &s->taken, shape, result);
}

void session_csv(
	struct session *s, const struct ts_result_shape *shape, const void *rows, size_t count)
{
	if (!s->arena->failed)
		ts_csv_write(s->out, shape, rows, count);
}
