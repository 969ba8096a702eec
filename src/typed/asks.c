/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a sentence asks beside "do they go together": who could live there, how often water is
 * changed, how much salt, how a pH comes up. Patterns as in happened_rows.c; the first that fits is
 * taken.
 */
#include <string.h>

#include "typed/reader.h"

#define KINDLY                                                                                     \
	"kind|kinds|sort|sorts|type|types|of|small|nice|good|easy|hardy|colourful|colorful|"       \
	"tropical|other|little|freshwater|peaceful|pretty|else|the|best|new|more"
#define FISH "fish|fishes|animals|animal|creatures|inhabitants|species|stock|pets"
#define MAY                                                                                        \
	"can|could|should|would|may|might|do|does|to|will|are|is|i|we|you|my|our|best|good|"       \
	"suitable|right|the|for|that|them|it|this|then|also|still|actually|please|a|an|it's"
#define LIVE                                                                                       \
	"live|lives|fit|fits|suit|suits|thrive|thrives|work|works|survive|go|goes|match|matches"
#define KEEP                                                                                       \
	"buy|get|put|keep|stock|have|add|choose|house|place|start|use|pick|take|recommend|suggest"
#define INTO "in|into|there|my|the|our|with|well|together|best|here|safely|happily|from|it"
#define ONE "i|we|you|one|they|he|she|my|our|the|a|it|its|his|her|their|me"
#define SHOULD "do|does|should|shud|must|can|could|would|will|to|need|needs|have|has|be|is|are"
#define EACH "each|every|a|per|week|weekly|month|day|of|the|out|at|once|time|it|in"
#define UP "raise|raising|increase|increasing|lift|boost|heighten"
#define DOWN "lower|lowering|reduce|reducing|decrease|decreasing|soften"
#define MINE "my|the|our|its|their|your|this|tank|tank's|water|aquarium|a|water's|it|it's"

static const struct {
	const char *pattern;
	const char *asks; /* a word of --asks */
	size_t back; /* so many words of the end are read once more, for what they are themselves */
} rows[] = {
	{"how often|frequently|regularly " SHOULD "|" ONE "~ change|changing|replace|clean|water|"
	 "waterchange|do of|some|partial|" ONE "~ water|tank|bowl|waterchange? change|changes?",
		"change", 0},
	{"how much|many|big|large water|litres|liters|percent|%|of|" SHOULD "|" ONE
	 "~ change|changing|changes|replace|swap " EACH "|water~",
		"change", 0},
	{"how much|many|big|large|often " SHOULD "|" ONE "~ water change|changes " SHOULD "|" ONE
	 "|" EACH "~",
		"change", 0},
	{"when " SHOULD "|" ONE "~ change " ONE "|of|some~ water", "change", 0},
	{"water change|changes schedule|routine|regime", "change", 0},
	{"how much|many of|aquarium|table|cooking|sea|rock|epsom~ salt " SHOULD "|" ONE
	 "|add|adding|use|put|dose|for|go|goes|in~",
		"salt", 0},
	{SHOULD " " ONE " add|use|put|try|dose|need|give some|a|bit|little|of|aquarium|table|"
		"cooking|them|in~ salt",
		"salt", 0},
	{"does|will|would aquarium|table|cooking|a|bit|of|adding|some~ salt help|cure|do|be|hurt",
		"salt", 0},
	{"add|adding|use|using|put|pour|buy|some|of|with ph up|plus|increaser|raiser|booster",
		"ph-up", 0},
	{"add|adding|use|using|put|pour|buy|some|of|with ph down|minus|reducer", "ph-down", 0},
	{UP " " MINE "~ ph", "ph-up", 1},
	{DOWN " " MINE "~ ph", "ph-down", 1},
	{"get|bring|getting|bringing|push|put|move " MINE "~ ph up|higher|back|right again|up?",
		"ph-up", 0},
	{"get|bring|getting|bringing|push|put|move " MINE "~ ph down|lower", "ph-down", 0},
	{UP " " MINE "|carbonate~ kh|hardness|buffer|alkalinity", "kh-up", 1},
	{"get|bring|getting|bringing|push " MINE "~ kh up|higher|back", "kh-up", 0},
	{"how much|many grams|g|of|spoons|teaspoons~ baking? soda|bicarbonate|bicarb " SHOULD
	 "|" ONE "|add|use|put|for|in|dose~",
		"kh-up", 0},
	{"how big|large|long|much|many|small of|litres|space|room|gallons|a|the~ "
	 "tank|aquarium|space|room " SHOULD "|" ONE "~",
		"tank", 0},
	{"what|which size|sized|minimum|smallest|big|volume of|the|a|minimum~ "
	 "tank|aquarium|for " SHOULD "|" ONE "~",
		"tank", 0},
	{"how much|many litres|liters|gallons|water do|does|for|would|is|i|needed|need~", "tank",
		0},
	{"without|need|needs a|an|any~ heater|heating", "warmth", 0},
	{"came|come|hitchhiked|arrived with|on|in|new|the|my|some~ plant|plants", "snails", 0},
	{"# fish|animals at|together|all once|time|together|day?", "at-once", 0},
	{"what|which temperature|temp|heat|warmth " SHOULD "|" ONE "|for|best|right|like|likes~",
		"warmth", 0},
	{"how warm|hot|cold|cool " SHOULD "|" ONE "~", "warmth", 0},
	{"how|best|way|when " SHOULD "|" ONE
	 "|way|best~ put|add|introduce|acclimatise|acclimate|acclimatize|release|transfer "
	 "them|it|fish|new|the|shrimp|shrimps|in|into|to~",
		"arrive", 0},
	{"acclimatise|acclimate|acclimatize|acclimation|acclimatisation", "arrive", 0},
	{"stop|prevent|get rid of|much|many|too|having|them|the|from|my|all~ "
	 "breeding|babies|fry|baby|reproducing|multiplying",
		"young", 0},
	{"baby|babies|fry|young fish|ones|of|and|guppies|guppy|platies|mollies|are~ everywhere",
		"young", 0},
	{"soften|softening " MINE "~ water?", "soften", 0},
	{"make|making|get " MINE "~ softer", "soften", 0},
	{"safe|ok|okay|fit|good|fine for|to|me|us|people|my|kids|children|the|humans~ "
	 "drink|drinking",
		"drink", 0},
	{SHOULD " " ONE "|people|kids|children~ drink|drinking " ONE "|this|that|tap~ water?",
		"drink", 0},
	{"get|getting|be rid of " ONE "|these|all|those|pest|tiny|small|little|bladder|pond|so|"
	 "many~ snails|snail",
		"snails", 0},
	{"pest|plague|hundreds|thousands|too|so|lots|infested|overrun|full|invasion "
	 "many|of|with|by|"
	 "tiny|small|little|baby~ snails everywhere|in|all|over|" ONE "~",
		"snails", 0},
	{"snails are|is|have|now|keep|just~ "
	 "everywhere|multiplying|exploding|exploded|overrunning|invading",
		"snails", 0},
	{"what|which|any|some|who " KINDLY "~ " FISH " " MAY "~ " KEEP "|" LIVE "|like|likes " INTO
	 "|" MAY "~",
		"fits", 0},
	{"what|which|any|some " KINDLY "~ " FISH " " MAY "~ for|suitable|best|good " INTO "~",
		"fits", 0},
	{"what|which else|" MAY "~ " KEEP "|" LIVE " " INTO "|" MAY "~", "fits", 0},
	{"what|who|which " LIVE " " INTO "~", "fits", 0},
	{"stocking|stock|fish|any|some|for|need|want ideas|suggestions|suggestion|options|"
	 "recommendations|recommendation|recommended",
		"fits", 0},
	{"suggestions|suggestion|recommendations|suggest|recommend|recommends some|a|me|please|for|"
	 "us|any|what~ fish|stock|animals?",
		"fits", 0},
};

/* How many words of "how many" stand before a name; 0: none does. */
static size_t how_many(struct ts_typed *t)
{
	size_t used = ts_typed_fits(t, "how many|much more|of|adult|small~"), name;

	if (!used)
		return 0;
	t->at += used;
	name = t->at < t->count ? ts_typed_name_here(t, false) : 0;
	t->at -= used;
	return name ? used : 0;
}

/* Who asks so keeps those of whom it is asked, unless somebody is to come. */
static bool of_keepers(const char *asks)
{
	static const char *const words[] = {
		"change", "salt", "snails", "ph-up", "ph-down", "kh-up", "young", "arrive"};

	return TS_TYPED_AMONG(asks, words);
}

/* "a good algae eater": what the animal named before is to do is no other animal. */
static size_t work_of_last(struct ts_typed *t)
{
	static const char *const works[] = {
		"as|a|an|good|great|best|decent|my~ algae eater|eaters|cleaner|cleaners for|to?",
		"to|for? eat|eats|eating|clean|cleans|control|against|the|my|up~ algae"};
	size_t used = 0;

	for (size_t i = 0; i < sizeof works / sizeof *works && t->last && !used; i++)
		used = ts_typed_fits(t, works[i]);
	return used;
}

size_t ts_typed_asked(struct ts_typed *t)
{
	size_t used = work_of_last(t);

	if (used)
		return used;

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		used = ts_typed_fits(t, rows[i].pattern);
		if (used <= rows[i].back)
			continue;
		(void)ts_typed_flag(t, "--asks", rows[i].asks, NULL);
		if (strncmp(rows[i].asks, "ph-", 3) == 0)
			t->about = "--pH";
		else if (strcmp(rows[i].asks, "kh-up") == 0)
			t->about = "--KH";
		t->keeper |= of_keepers(rows[i].asks);
		t->wished |=
			strncmp(rows[i].asks, "ph-", 3) == 0 || strcmp(rows[i].asks, "kh-up") == 0;
		return used - rows[i].back;
	}
	used = how_many(t);
	if (used)
		(void)ts_typed_flag(t, "--asks", "how-many", NULL);
	return used;
}
