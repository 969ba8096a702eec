/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Flags: rows with a name, a kind, the member they set, the commands that take them and one line of
 * help.
 */
#include "cli/options_rows.h"

/* A page shows no flags (src/page/no_shell.c). */
#ifdef TS_IN_PAGE
#define SAYS(text) NULL
#else
#define SAYS(text) text
#endif
#define AT(m, T) (offsetof(struct options, m) + 0 * sizeof(&((struct options *)0)->m == (T *)0))
#define SWITCH_ROW(name, short_name, m, commands, says)                                            \
	{                                                                                          \
		name, short_name, SWITCH, TS_Q_NUMBER, AT(m, bool), NULL, NULL, commands,          \
			SAYS(says)                                                                 \
	}
#define TEXT_ROW(name, short_name, m, takes, commands, says)                                       \
	{                                                                                          \
		name, short_name, TEXT, TS_Q_NUMBER, AT(m, const char *), NULL, takes, commands,   \
			SAYS(says)                                                                 \
	}
#define TEXTS_ROW(name, m, takes, commands, says)                                                  \
	{                                                                                          \
		name, NULL, TEXTS, TS_Q_NUMBER, AT(m, struct values), NULL, takes, commands,       \
			SAYS(says)                                                                 \
	}
#define WORD_ROW(name, short_name, m, words, takes, commands, says)                                \
	{                                                                                          \
		name, short_name, WORD, TS_Q_NUMBER, AT(m, int), words, takes, commands,           \
			SAYS(says)                                                                 \
	}
#define MEASURE_ROW(name, m, quantity, takes, commands, says)                                      \
	{                                                                                          \
		name, NULL, MEASURE, quantity, AT(m, struct ts_measure), NULL, takes, commands,    \
			SAYS(says)                                                                 \
	}
#define COUNT_ROW(name, m, takes, commands, says)                                                  \
	{                                                                                          \
		name, NULL, COUNT, TS_Q_NUMBER, AT(m, size_t), NULL, takes, commands, SAYS(says)   \
	}

#define BOX_ROW(name, m, takes, commands, says)                                                    \
	{                                                                                          \
		name, NULL, BOX, TS_Q_SIDE, AT(m, struct box), NULL, takes, commands, SAYS(says)   \
	}

static const char *const words_aim[] = {"display", "breeding", NULL};
static const char *const words_origin[] = {"farmed", "wild", NULL};
static const char *const words_top_up[] = {"unknown", "tap", "pure", NULL};
static const char *const words_theme[] = {
	"any", "lake", "blackwater", "cool", "shrimps", "one-species", NULL}; /* enum ts_theme */
static const char *const words_dates[] = {
	"asked", "day-first", "month-first", NULL}; /* enum ts_day_order */
static const char *const words_bottom[] = {
	"unknown", "sand", "gravel", "coarse-gravel", "bare", NULL};
const char *const option_formats[] = {"text", "json", "csv", "html", "ics", "brief", "lines", NULL};

#define MATCHING "propose rank remake why"
/* Where a tank's own readings may be typed. */
#define ACID_COMMANDS "check rank water why"
#define CATALOGUE "arrive due find propose rank remake why"
#define RECORDS "check drift log what-if " CATALOGUE

/* Sorted by name. */
/* clang-format off */
const struct flag option_flags[] = {
	SWITCH_ROW("--active-soil", NULL, acids, ACID_COMMANDS, "active soil in the tank: there pH tells no CO2"),
	TEXT_ROW("--against", NULL, against, "FILE", "water", "puts another water beside it: your tap beside the tank"),
	WORD_ROW("--aim", NULL, aim, words_aim, "display|breeding", CATALOGUE, "what you keep them for (display)"),
	SWITCH_ROW("--all", NULL, all, "check due find log propose rank", "everything, where a first screen shows what decides"),
	SWITCH_ROW("--any-size", NULL, any_size, "rank", "those for whom the tank is too small as well"),
	SWITCH_ROW("--ascii", NULL, ascii, NULL, "plain letters alone, in charts and names"),
	TEXTS_ROW("--asks", asks, "change", "check", "what else is asked: fits, change, salt, ph-up, ph-down, kh-up (\"kh-up 4\"), drink, snails, how-many, away (\"away 14\"), tank, warmth, arrive, move, young, soften, at-once, or one of the questions of care (--asks ? names them); may be repeated"),
	SWITCH_ROW("--base", NULL, base, "titrate", "strong base instead of acid"),
	TEXT_ROW("--batch", NULL, batch_file, "FILE", "rank why", "many waters: a CSV table, a water a row; - is stdin; with -f lines a line of JSON for each"),
	WORD_ROW("--bottom", NULL, bottom, words_bottom, "sand", "propose", "what covers the floor of the tank"),
	MEASURE_ROW("--buffer", buffer, TS_Q_TIME, "28 d", "propose", "the least that the buffer must last"),
	TEXTS_ROW("--catalogue", folders, "FOLDER", RECORDS " page", "adds a folder of species records"),
	TEXT_ROW("--centre", NULL, centre, "SPECIES", "propose", "the animal that the list is built around"),
	{"--change-percent", NULL, SHARE, TS_Q_PERCENT, AT(change_percent, struct ts_measure), NULL, "\"30 %\"", "due remake", SAYS("how much water a later change replaces (25 %); how often may stand behind it")},
	TEXTS_ROW("--column", columns, "HEAD=KEY", "note", "what a column of --from is (\"Nitrat=NO3 mg/L NO3\", \"Lamp=remark\"; \"Page=\" leaves it out); may be repeated"),
	WORD_ROW("--dates", NULL, dates, words_dates, "day-first|month-first", "note", "how a day like 3/4/2026 is meant in --from"),
	COUNT_ROW("--days", days, "28", "drift", "how far ahead (28)"),
	MEASURE_ROW("--deaths", deaths, TS_Q_NUMBER, "2", "check", "how many died unexplained within four weeks"),
	MEASURE_ROW("--dose", dose, TS_Q_ALKALINITY, "\"0.25 meq/L\"", "titrate", "what one step of the curve adds"),
	TEXT_ROW("--family", NULL, family, "FAMILY", "find rank", "of that family"),
	TEXT_ROW("--filter", NULL, filter, "\"off 12 h\"", "check what-if", "mature, new, none, or for how long it stood"),
	SWITCH_ROW("--fixed", NULL, fixed, "find", "takes the pattern as plain text"),
	TEXTS_ROW("--for", wished, "SPECIES", "due remake", "whose water it is to become; may be repeated"),
	WORD_ROW("--format", "-f", format, option_formats, "FORMAT", NULL, "how the answer is written"),
	SWITCH_ROW("--fresh", NULL, fresh, MATCHING " check water", "the sample came straight from the tap"),
	TEXT_ROW("--from", NULL, from, "FILE", "note page", "a notebook as CSV, whose rows are all noted"),
	TEXTS_ROW("--happened", happened, "\"untreated water\"", "check", "what happened to the tank these days; may be repeated"),
	SWITCH_ROW("--hardy", NULL, hardy, "propose", "nothing that takes change badly"),
	TEXTS_ROW("--have", have, "INGREDIENT", "due remake", "only these are at hand: NaHCO3, mineral-free ...; may be repeated"),
	SWITCH_ROW("--help", "-h", help, NULL, "this page"),
	MEASURE_ROW("--hours", hours, TS_Q_HOURS, "\"1.5 h\"", "arrive what-if", "how long it lasts"),
	TEXT_ROW("--like", NULL, like, "PLAN|SPECIES", "propose rank", "only animals like this one"),
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
	SWITCH_ROW("--peat", NULL, acids, ACID_COMMANDS, "peat or leaves in the tank: there pH tells no CO2"),
	TEXT_ROW("--plan-out", NULL, plan_out, "FILE", "check propose", "writes the plan into a file for check"),
	TEXT_ROW("--practice", NULL, practice_file, "FILE", MATCHING " check due log what-if", "your own figures of practice (docs/methods.md)"),
	TEXT_ROW("--poured", NULL, poured, "\"GH 12, KH 8\"", "check", "the water that is poured in, where the readings are the tank's"),
	SWITCH_ROW("--quiet", "-q", quiet, NULL, "verdicts without reasons"),
	MEASURE_ROW("--room", room, TS_Q_TEMPERATURE, "\"18 C\"", "what-if", "how warm the room is without heating (18 C)"),
	TEXT_ROW("--season", NULL, season, "DATE|NAME", "arrive check mix propose rank remake titrate water why", "only the readings of that part of the year"),
	TEXT_ROW("--shop", NULL, shop_file, "FILE or READINGS", "arrive", "the shop's or the bag's water: a water file (readings: [{GH: 3, KH: 2, pH: 6.8}]), or \"GH 3, KH 2, pH 6.8\""),
	TEXTS_ROW("--signs", signs, "\"all gasping\"", "check", "what those that live there show, how many of them, since when; may be repeated"),
	TEXT_ROW("--since", NULL, since, "2024-05|\"3 years\"", "check what-if", "since when those behind --there live there, where it is not said of each"),
	BOX_ROW("--size", size, "100x40x45", "check propose rank why what-if", "the tank inside, length x width x height in cm, instead of -t FILE"),
	SWITCH_ROW("--softened", NULL, softened, "check keep propose rank remake why water", "the water went through a household softener"),
	SWITCH_ROW("--small-only", NULL, small_only, "propose", "nothing but small animals"),
	TEXT_ROW("--source", NULL, source, "GRADE", "find", "with a value of that grade, or from that publication"),
	SWITCH_ROW("--summary", NULL, summary, "find", "counts by group, home water and source"),
	TEXT_ROW("--supply-zone", NULL, supply_zone, "NAME", "read", "reads that zone of the report; a part of its name is enough"),
	TEXT_ROW("--tank", "-t", tank_file, "FILE", "arrive check propose rank remake why what-if", "a tank file"),
	MEASURE_ROW("--temperature", temperature, TS_Q_TEMPERATURE, "24..26", CATALOGUE " check mix titrate water what-if", "what the tank runs at, C or F"),
	WORD_ROW("--theme", NULL, theme, words_theme, "lake|blackwater|cool|shrimps|one-species", "propose", "what kind of community"),
	TEXTS_ROW("--there", there, "\"6 guppy\"", "check what-if", "lives in the tank already (\"6 guppy for 2 years\"); may be repeated"),
	TEXT_ROW("--to", NULL, to, "GH=11,KH=10", "due remake", "the water wished outright, figures or ranges"),
	TEXT_ROW("--today", NULL, today, "YYYY-MM-DD", "arrive check drift due keep log note propose rank remake titrate why water tapshoal what-if", "takes that day for today"),
	WORD_ROW("--top-up", NULL, top_up, words_top_up, "tap|pure", "drift", "what replaces evaporated water, where the tank file does not say (tap)"),
	MEASURE_ROW("--towards", towards, TS_Q_PH, "7.0", "titrate", "the pH that is chased with --nightly (7.0)"),
	SWITCH_ROW("--version", "-V", version, NULL, "the version, and those of the libraries it runs with"),
	MEASURE_ROW("--volume", volume, TS_Q_VOLUME, "60L", "check due propose rank remake why what-if", "a tank of so many litres, its sides assumed"),
	{"--water", "-w", TEXTS, TS_Q_NUMBER, AT(waters, struct values), NULL, "FILE", MATCHING " arrive check due what-if", SAYS("a water file instead of readings; - is stdin")},
	TEXT_ROW("--water-change", NULL, water_change, "\"25% weekly\"", "check drift propose", "how much of the water is changed how often"),
	TEXT_ROW("--why", NULL, why, "SPECIES", "propose", "why it is in no list"),
	TEXTS_ROW("--with", with, "SPECIES", "arrive due propose remake", "it is in the tank now; may be repeated"),
	TEXTS_ROW("--without", without, "SPECIES", "propose", "it must not be in any list"),
	SWITCH_ROW("--wood", NULL, acids, ACID_COMMANDS, "wood in the tank that colours the water: there pH tells no CO2"),
	TEXT_ROW("--write-model", NULL, model_out, "FILE.lp", "propose", "writes the integers that were solved, for other solvers"),
};
/* clang-format on */

const size_t option_flag_count = sizeof option_flags / sizeof *option_flags;

/* What a flag is to one command, where that is more or other than its own row. Sorted by flag. */
/* clang-format off */
const struct flag_of option_flags_of[] = {
	{"--all", "due", "later weeks too"},
	{"--all", "find log", "all of each list, where a terminal shows a dozen or two"},
	{"--all", "rank", "all of each list, where a terminal shows a dozen, and a line of --batch a hundred"},
	{"--batch", "rank", "many waters: a CSV table, a water a row; - is stdin; a line of JSON for each"},
	{"--from", "page", "the page that it is made of, where none was installed"},
	{"--hours", "arrive", "how long they are under way"},
	{"--like", "propose", "completes what lives in this plan"},
	{"--plan-out", "propose", "writes the first list into a plan file for check"},
	{"--temperature", "mix water", "of the sample, C or F"},
	{"--volume", "due remake", "the water in the tank"},
	{"--water", "due", "a water file: what is poured in"},
	{"--water", "why", "a water file instead of readings; - is stdin; may be repeated"},
	{"--with", "arrive", "it comes home; may be repeated"},
	{"--with", "propose", "it must be in every list; may be repeated"},
};
/* clang-format on */

const size_t option_flags_of_count = sizeof option_flags_of / sizeof *option_flags_of;
