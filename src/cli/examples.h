/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Calls of each command, for its man page and its --help, which shows the first two: they run as
 * they stand, from an empty folder, in their order (tests/pages.sh).
 */
#ifndef TS_CLI_EXAMPLES_H
#define TS_CLI_EXAMPLES_H

/* Sorted by command; two at the least of each. */
struct example {
	const char *command, *call, *says;
};

/* clang-format off */
static const struct example examples[] = {
	{"arrive", "tapshoal arrive --shop \"GH 4, KH 3, pH 6.8\" --hours \"1 h\" --GH 12 --KH 8 --pH 7.6 --temperature 25 --with \"neon tetra\"", "from the shop's water into yours"},
	{"arrive", "tapshoal arrive --shop \"GH 14, KH 9\" --hours \"30 min\" --GH 14 --KH 9 --temperature 24 --with guppy", "the same when the waters are alike"},
	{"ask-back", "tapshoal ask-back", "the questions there are"},
	{"ask-back", "tapshoal ask-back tank", "what to ask somebody about a tank in trouble"},
	{"check", "tapshoal check \"10 neon tetra\" \"1 betta\" --size 60x30x35 --GH 6 --KH 3", "two kinds in mind"},
	{"check", "tapshoal check @sample/livebearers", "a plan in a file, here one that came with the program"},
	{"check", "tapshoal check --there \"6 guppy for 2 years\" --signs \"all gasping\" --volume 60L", "a tank in trouble"},
	{"config", "tapshoal config", "what can be set, and how it stands"},
	{"config", "tapshoal config names de", "German names of animals first"},
	{"config", "tapshoal config names default", "and no longer"},
	{"drift", "tapshoal drift @sample/old-tank --days 90", "where its readings go in three months"},
	{"drift", "tapshoal drift @sample/old-tank --water-change \"25% weekly\"", "and where under another routine"},
	{"due", "tapshoal due @sample/old-tank", "what to test next"},
	{"due", "tapshoal due @sample/old-tank -f ics -o due.ics", "the same for a calendar"},
	{"find", "tapshoal find corydoras", "by name, genus or family"},
	{"find", "tapshoal find --swims bottom --max-length \"6 cm\" --GH 8", "by what records say, and by water"},
	{"init", "tapshoal init mine", "a water, a tank and a plan to fill in"},
	{"init", "tapshoal init", "the same into the folder where you are"},
	{"keep", "tapshoal keep --GH 14 --KH 9 --pH 7.6 --name home", "your tap, which every command then takes"},
	{"keep", "tapshoal keep @cellar mine/tank.yaml", "a tank by a name: @cellar"},
	{"lint", "tapshoal lint mine/plan.yaml", "what is wrong with a file, and what would be right"},
	{"lint", "tapshoal lint mine/water.yaml mine/tank.yaml", "two at once"},
	{"log", "tapshoal log @sample/old-tank", "its readings day by day"},
	{"log", "tapshoal log @sample/old-tank -f csv", "the same as a table"},
	{"mix", "tapshoal mix @sample/kitchen-tap=0.5 pure=0.5", "half tap, half water without minerals"},
	{"mix", "tapshoal mix @sample/kitchen-tap=\"30 L\" @sample/soft-tap=\"10 L\"", "30 litres of one and 10 of another"},
	{"note", "tapshoal note mine/tank.yaml KH=5 pH=7.4 \"changed 40 L\"", "today's readings, and what was done"},
	{"note", "tapshoal note mine/tank.yaml --on 2026-03-01 \"NO3=20 mg/L NO3\"", "nitrate, on the day it was read"},
	{"page", "tapshoal page -o tapshoal.html --own", "with your own records and the kept tap, for a browser"},
	{"page", "tapshoal page -o tank.html mine/tank.yaml", "with a tank of yours filled in"},
	{"propose", "tapshoal propose --volume 112L --GH 8 --KH 5 --temperature 25", "who could live together"},
	{"propose", "tapshoal propose --size 100x40x40 --GH 8 --KH 5 --with \"honey gourami\" --lists 3", "three lists with one animal in each"},
	{"rank", "tapshoal rank --GH 14 --KH 9 --pH 7.6 --temperature 25", "which species that water suits"},
	{"rank", "tapshoal rank -w @sample/kitchen-tap --volume 60L -f csv", "as a table, of those for whom 60 L are enough"},
	{"read", "tapshoal read report.txt -o tap.yaml", "a report of your supplier, saved as text, to a water file"},
	{"read", "tapshoal read report.txt", "shown and not written"},
	{"remake", "tapshoal remake --GH 4 --KH 2 --for guppy --volume 60L", "minerals for others, with the stages"},
	{"remake", "tapshoal remake --GH 4 --KH 2 --to GH=8,KH=4 --volume 60L", "to figures of your own"},
	{"titrate", "tapshoal titrate @sample/kitchen-tap", "what acid does to a water, and for how long"},
	{"titrate", "tapshoal titrate --GH 9 --KH 9 --pH 8 --nightly", "acid every evening, while the tank airs each night"},
	{"water", "tapshoal water --GH 14 --KH 9 --pH 7.6", "what that is"},
	{"water", "tapshoal water @sample/kitchen-tap --against @sample/soft-tap", "two waters beside each other"},
	{"what-if", "tapshoal what-if", "the questions there are"},
	{"what-if", "tapshoal what-if power-cut \"10 neon tetra\" --volume 60L --temperature 25", "how long a tank lasts without power"},
	{"why", "tapshoal why \"neon tetra\" --GH 14 --KH 9", "one species against a water"},
	{"why", "tapshoal why \"neon tetra\" guppy -w @sample/kitchen-tap -f csv", "two of them, as a table"},
};
/* clang-format on */
#define EXAMPLES (sizeof examples / sizeof *examples)

#endif
