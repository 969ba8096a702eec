/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The small words of a sentence: where it is cut, who is named behind, what asks and what wants.
 */
#include "typed/reader.h"

/* Longest first where one begins with another. */
static const struct {
	const char *words;
	enum ts_typed_then then;
} cuts[] = {
	{",", TS_TYPED_AS_BEFORE},
	{"and put", TS_TYPED_LIVES},
	{"and added", TS_TYPED_LIVES},
	{"and bought", TS_TYPED_LIVES},
	{"and got", TS_TYPED_LIVES},
	{"then put", TS_TYPED_LIVES},
	{"then added", TS_TYPED_LIVES},
	{"and i put", TS_TYPED_LIVES},
	{"and i added", TS_TYPED_LIVES},
	{"and i bought", TS_TYPED_LIVES},
	{"and then put", TS_TYPED_LIVES},
	{"and then added", TS_TYPED_LIVES},
	{"so i put", TS_TYPED_LIVES},
	{"so i added", TS_TYPED_LIVES},
	{"so i bought", TS_TYPED_LIVES},
	{"and have", TS_TYPED_AS_BEFORE},
	{"and", TS_TYPED_AS_BEFORE},
	{"can we", TS_TYPED_PLANNED},
	{"could we", TS_TYPED_PLANNED},
	{"should we", TS_TYPED_PLANNED},
	{"if we", TS_TYPED_PLANNED},
	{"i already have", TS_TYPED_LIVES},
	{"already have", TS_TYPED_LIVES},
	{"i currently have", TS_TYPED_LIVES},
	{"i have had", TS_TYPED_LIVES},
	{"i have got", TS_TYPED_LIVES},
	{"i have kept", TS_TYPED_LIVES},
	{"i have bought", TS_TYPED_LIVES},
	{"i just bought", TS_TYPED_LIVES},
	{"i bought", TS_TYPED_LIVES},
	{"we bought", TS_TYPED_LIVES},
	{"bought", TS_TYPED_LIVES},
	{"just bought", TS_TYPED_LIVES},
	{"just added", TS_TYPED_LIVES},
	{"i just added", TS_TYPED_LIVES},
	{"i added", TS_TYPED_LIVES},
	{"i've added", TS_TYPED_LIVES},
	{"i've put", TS_TYPED_LIVES},
	{"i've bought", TS_TYPED_LIVES},
	{"i've just bought", TS_TYPED_LIVES},
	{"we added", TS_TYPED_LIVES},
	{"we put", TS_TYPED_LIVES},
	{"i'm moving house with", TS_TYPED_LIVES},
	{"moving house with", TS_TYPED_LIVES},
	{"won", TS_TYPED_LIVES},
	{"i just got", TS_TYPED_LIVES},
	{"just got", TS_TYPED_LIVES},
	{"i got", TS_TYPED_LIVES},
	{"i put", TS_TYPED_LIVES},
	{"we got", TS_TYPED_LIVES},
	{"i was given", TS_TYPED_LIVES},
	{"was given", TS_TYPED_LIVES},
	{"i inherited", TS_TYPED_LIVES},
	{"we have had", TS_TYPED_LIVES},
	{"have had", TS_TYPED_LIVES},
	{"i've had", TS_TYPED_LIVES},
	{"had", TS_TYPED_LIVES},
	{"the shop sold me", TS_TYPED_LIVES},
	{"the store sold me", TS_TYPED_LIVES},
	{"sold me", TS_TYPED_LIVES},
	{"sold us", TS_TYPED_LIVES},
	{"gave me", TS_TYPED_LIVES},
	{"gave us", TS_TYPED_LIVES},
	{"i own", TS_TYPED_LIVES},
	{"i currently keep", TS_TYPED_LIVES},
	{"currently", TS_TYPED_LIVES},
	{"inhabitants", TS_TYPED_LIVES},
	{"stocked with", TS_TYPED_LIVES},
	{"home to", TS_TYPED_LIVES},
	{"can i", TS_TYPED_PLANNED},
	{"could i", TS_TYPED_PLANNED},
	{"may i", TS_TYPED_PLANNED},
	{"should i", TS_TYPED_PLANNED},
	{"would i", TS_TYPED_PLANNED},
	{"if i", TS_TYPED_PLANNED},
	{"i have", TS_TYPED_LIVES},
	{"we have", TS_TYPED_LIVES},
	{"i've got", TS_TYPED_LIVES},
	{"i've", TS_TYPED_LIVES},
	{"we've got", TS_TYPED_LIVES},
	{"i keep", TS_TYPED_LIVES},
	{"we keep", TS_TYPED_LIVES},
	{"there are", TS_TYPED_LIVES},
	{"there is", TS_TYPED_LIVES},
	{"one of my", TS_TYPED_LIVES},
	{"some of my", TS_TYPED_LIVES},
	{"most of my", TS_TYPED_LIVES},
	{"all of my", TS_TYPED_LIVES},
	{"all my", TS_TYPED_LIVES},
	{"all", TS_TYPED_AS_BEFORE},
	{"to my", TS_TYPED_LIVES},
	{"with my", TS_TYPED_LIVES},
	{"our", TS_TYPED_LIVES},
	{"my", TS_TYPED_LIVES},
	{"can", TS_TYPED_PLANNED},
	{"could", TS_TYPED_PLANNED},
	{"may", TS_TYPED_PLANNED},
	{"will", TS_TYPED_PLANNED},
	{"would", TS_TYPED_PLANNED},
	{"should", TS_TYPED_PLANNED},
	{"does", TS_TYPED_PLANNED},
	{"do", TS_TYPED_PLANNED},
	{"is", TS_TYPED_PLANNED},
	{"are", TS_TYPED_PLANNED},
	{"i'd", TS_TYPED_PLANNED},
	{"i'm", TS_TYPED_PLANNED},
	{"i", TS_TYPED_PLANNED},
	{"we", TS_TYPED_PLANNED},
	{"you", TS_TYPED_PLANNED},
	{"it", TS_TYPED_PLANNED},
	{"them", TS_TYPED_PLANNED},
	{"they", TS_TYPED_PLANNED},
	{"this", TS_TYPED_PLANNED},
	{"that", TS_TYPED_PLANNED},
	{"want", TS_TYPED_PLANNED},
	{"wants", TS_TYPED_PLANNED},
	{"like", TS_TYPED_PLANNED},
	{"love", TS_TYPED_PLANNED},
	{"plan", TS_TYPED_PLANNED},
	{"planning", TS_TYPED_PLANNED},
	{"thinking", TS_TYPED_PLANNED},
	{"going", TS_TYPED_PLANNED},
	{"keep", TS_TYPED_PLANNED},
	{"keeping", TS_TYPED_PLANNED},
	{"add", TS_TYPED_PLANNED},
	{"adding", TS_TYPED_PLANNED},
	{"put", TS_TYPED_PLANNED},
	{"get", TS_TYPED_PLANNED},
	{"getting", TS_TYPED_PLANNED},
	{"buy", TS_TYPED_PLANNED},
	{"buying", TS_TYPED_PLANNED},
	{"have", TS_TYPED_PLANNED},
	{"live", TS_TYPED_PLANNED},
	{"lives", TS_TYPED_PLANNED},
	{"living", TS_TYPED_PLANNED},
	{"go", TS_TYPED_PLANNED},
	{"goes", TS_TYPED_PLANNED},
	{"get along", TS_TYPED_PLANNED},
	{"along", TS_TYPED_PLANNED},
	{"work", TS_TYPED_PLANNED},
	{"eat", TS_TYPED_PLANNED},
	{"fit", TS_TYPED_PLANNED},
	{"with", TS_TYPED_PLANNED},
	{"without", TS_TYPED_PLANNED},
	{"together", TS_TYPED_PLANNED},
	{"well", TS_TYPED_PLANNED},
	{"ok", TS_TYPED_PLANNED},
	{"okay", TS_TYPED_PLANNED},
	{"fine", TS_TYPED_PLANNED},
	{"possible", TS_TYPED_PLANNED},
	{"please", TS_TYPED_PLANNED},
	{"help", TS_TYPED_PLANNED},
	{"hello", TS_TYPED_PLANNED},
	{"hi", TS_TYPED_PLANNED},
	{"thanks", TS_TYPED_PLANNED},
	{"what", TS_TYPED_PLANNED},
	{"why", TS_TYPED_PLANNED},
	{"which", TS_TYPED_PLANNED},
	{"about", TS_TYPED_PLANNED},
	{"how many", TS_TYPED_PLANNED},
	{"how", TS_TYPED_PLANNED},
	{"bowl", TS_TYPED_AS_BEFORE},
	{"if", TS_TYPED_PLANNED},
	{"for", TS_TYPED_PLANNED},
	{"to", TS_TYPED_PLANNED},
	{"in", TS_TYPED_PLANNED},
	{"into", TS_TYPED_PLANNED},
	{"at", TS_TYPED_PLANNED},
	{"on", TS_TYPED_PLANNED},
	{"or", TS_TYPED_PLANNED},
	{"has", TS_TYPED_LIVES},
	{"me", TS_TYPED_AS_BEFORE},
	{"us", TS_TYPED_AS_BEFORE},
	{"good", TS_TYPED_PLANNED},
	{"suitable", TS_TYPED_PLANNED},
	{"suit", TS_TYPED_PLANNED},
	{"suits", TS_TYPED_PLANNED},
	{"safe", TS_TYPED_PLANNED},
	{"right", TS_TYPED_PLANNED},
	{"alright", TS_TYPED_PLANNED},
	{"enough", TS_TYPED_PLANNED},
	{"others", TS_TYPED_AS_BEFORE},
	{"rest", TS_TYPED_AS_BEFORE},
	{"these", TS_TYPED_AS_BEFORE},
	{"those", TS_TYPED_AS_BEFORE},
	{"found", TS_TYPED_LIVES},
	{"most", TS_TYPED_AS_BEFORE},
	{"many", TS_TYPED_AS_BEFORE},
	{"half", TS_TYPED_AS_BEFORE},
	{"plus", TS_TYPED_AS_BEFORE},
	{"also", TS_TYPED_AS_BEFORE},
	{"but", TS_TYPED_PLANNED},
	{"the", TS_TYPED_AS_BEFORE},
	{"so", TS_TYPED_PLANNED},
	{"be", TS_TYPED_PLANNED},
	{"am", TS_TYPED_PLANNED},
	{"now", TS_TYPED_AS_BEFORE},
	{"just", TS_TYPED_AS_BEFORE},
	{"fish", TS_TYPED_AS_BEFORE},
	{"tank", TS_TYPED_AS_BEFORE},
	{"aquarium", TS_TYPED_AS_BEFORE},
	{"tap", TS_TYPED_AS_BEFORE},
	{"tapwater", TS_TYPED_AS_BEFORE},
	{"look", TS_TYPED_AS_BEFORE},
	{"looks", TS_TYPED_AS_BEFORE},
	{"looking", TS_TYPED_AS_BEFORE},
	{"seem", TS_TYPED_AS_BEFORE},
	{"seems", TS_TYPED_AS_BEFORE},
	{"from", TS_TYPED_AS_BEFORE},
	{"=", TS_TYPED_AS_BEFORE},
	{"hard", TS_TYPED_AS_BEFORE},
	{"soft", TS_TYPED_AS_BEFORE},
	{"nano", TS_TYPED_AS_BEFORE},
	{"high", TS_TYPED_AS_BEFORE},
	{"still", TS_TYPED_AS_BEFORE},
	{"water change", TS_TYPED_AS_BEFORE},
	{"water changes", TS_TYPED_AS_BEFORE},
	{"water", TS_TYPED_AS_BEFORE},
	{"plants", TS_TYPED_AS_BEFORE},
	{"planted", TS_TYPED_AS_BEFORE},
};
#define CUTS (sizeof cuts / sizeof *cuts)

/* What may stand before a name: counts and sexes, as records/animals.c reads them. */
static const char *const before_name[] = {"a", "an", "one", "two", "three", "four", "five", "six",
	"seven", "eight", "nine", "ten", "twelve", "twenty", "dozen", "some", "few", "pair",
	"pairs", "breeding", "trio", "couple", "shoal", "school", "group", "of", "male", "males",
	"female", "females", "m", "f", "x"};
static const char *const behind_name[] = {"pair", "pairs", "male", "males", "female", "females"};
static const char *const sexes[] = {"male", "males", "female", "females", "m", "f"};

/* What asks for what may come. */
static const char *const asking[] = {
	"can", "could", "may", "will", "would", "should", "do", "does", "if", "to", "without"};

/* What tells of animals that are to come. */
static const char *const buying[] = {"want", "wants", "add", "adding", "put", "get", "getting",
	"buy", "buying", "plan", "planning", "thinking", "going", "like", "love", "i'd", "keep",
	"keeping", "possible"};

/* Signs by one word that mean something else as well in a sentence about animals. */
static const char *const common[] = {"other", "thin", "algae", "spot", "dots", "slow", "dark",
	"darker", "blood", "hole", "holes", "dead", "flash", "vertical", "odd", "racing", "bites",
	"biting", "nips", "nipping", "aggressive", "aggression", "scared", "unusual", "velvet",
	"worm", "worms", "growth", "growths", "stress", "parasite", "parasites", "moult", "molt",
	"moulting", "molting", "drifting"};

size_t ts_typed_cut_here(const struct ts_typed *t, enum ts_typed_then *ret)
{
	for (size_t i = 0; i < CUTS; i++) {
		size_t used = ts_typed_phrase(t, t->at, cuts[i].words);

		if (used) {
			*ret = cuts[i].then;
			return used;
		}
	}
	return 0;
}

bool ts_typed_before_name(const char *word)
{
	return TS_TYPED_AMONG(word, before_name);
}

bool ts_typed_behind_name(const char *word)
{
	return TS_TYPED_AMONG(word, behind_name);
}

bool ts_typed_sex(const char *word)
{
	return TS_TYPED_AMONG(word, sexes);
}

bool ts_typed_asks(const char *word)
{
	return TS_TYPED_AMONG(word, asking);
}

bool ts_typed_buys(const char *word)
{
	return TS_TYPED_AMONG(word, buying);
}

bool ts_typed_common(const char *word)
{
	return TS_TYPED_AMONG(word, common);
}
