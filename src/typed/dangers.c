/* SPDX-License-Identifier: Apache-2.0 */
/*
 * By construction: a word of a known danger, or a figure, of which nothing was made is told. Words
 * that ask or join are passed over; these are not.
 */
#include <string.h>
#include <strings.h>

#include "base/text.h"
#include "typed/reader.h"

/* Words of dangers, and how each is said. A word that begins so is of it: "poisoned". */
static const struct {
	const char *start, *say;
} dangers[] = {
	{"ammoni", "--ammonia \"0.5 mg/L\""},
	{"nh3", "--ammonia \"0.5 mg/L\""},
	{"nh4", "--ammonia \"0.5 mg/L\""},
	{"nitrit", "--NO2 \"0.5 mg/L\""},
	{"no2", "--NO2 \"0.5 mg/L\""},
	{"nitrat", "--NO3 \"50 mg/L\""},
	{"no3", "--NO3 \"50 mg/L\""},
	{"chlor", "--chlorine 0.5, or --happened \"untreated water\""},
	{"condition", "--happened \"untreated water\", where none was used"},
	{"dechlor", "--happened \"untreated water\", where none was used"},
	{"untreated", "--happened \"untreated water\""},
	{"copper", "--Cu 0.1"},
	{"oxygen", "--oxygen \"4 mg/L\", or --signs gasping"},
	{"co2", "--signs gasping, where they gasp"},
	{"dead", "--deaths 1"},
	{"death", "--deaths 1"},
	{"die", "--deaths 1"},
	{"dying", "--deaths 1"},
	{"kill", "--deaths 1"},
	{"lost", "--deaths 1"},
	{"losing", "--deaths 1"},
	{"perish", "--deaths 1"},
	{"gasp", "--signs gasping"},
	{"sick", "--signs, with what is seen"},
	{"ill", "--signs, with what is seen"},
	{"disease", "--signs, with what is seen"},
	{"parasite", "--signs spots, or what is seen"},
	{"fungus", "--signs wounds"},
	{"wound", "--signs wounds"},
	{"suffer", "--signs, with what is seen"},
	{"distress", "--signs, with what is seen"},
	{"stress", "--signs, with what is seen"},
	{"panic", "--signs darting"},
	{"emergency", "--signs, with what is seen"},
	{"urgent", "--signs, with what is seen"},
	{"heater", "--temperature 25, with what a thermometer shows"},
	{"thermostat", "--temperature 25, with what a thermometer shows"},
	{"overheat", "--temperature 32, with what a thermometer shows"},
	{"cold", "--temperature 18, with what a thermometer shows"},
	{"hot", "--temperature 32, with what a thermometer shows"},
	{"freez", "--temperature 10, with what a thermometer shows"},
	{"boil", "--temperature 32, with what a thermometer shows"},
	{"power", "--filter \"off 3 h\""},
	{"electric", "--filter \"off 3 h\""},
	{"blackout", "--filter \"off 3 h\""},
	{"outage", "--filter \"off 3 h\""},
	{"filter", "--filter new, mature, none or \"off 3 h\""},
	{"filtration", "--filter new, mature, none or \"off 3 h\""},
	{"pump", "--filter mature, or \"off 3 h\""},
	{"cycl", "--filter new, or mature"},
	{"bleach", "--happened \"poison: bleach\""},
	{"soap", "--happened \"poison: soap\""},
	{"detergent", "--happened \"poison: soap\""},
	{"spray", "--happened \"poison: spray\""},
	{"poison", "--happened \"poison: what it was\""},
	{"toxic", "--happened \"poison: what it was\""},
	{"paint", "--happened \"poison: paint\""},
	{"pesticide", "--happened \"poison: spray\""},
	{"insecticide", "--happened \"poison: spray\""},
	{"medic", "--happened \"medicine: its name\""},
	{"antibiotic", "--happened \"medicine: its name\""},
	{"treat", "--happened \"medicine: its name\""},
	{"stopped", "--filter \"off 3 h\", or --happened \"heater failed\""},
	{"broke", "--filter \"off 3 h\", or --happened \"heater failed\""},
	{"fail", "--filter \"off 3 h\", or --happened \"heater failed\""},
	{"faulty", "--filter \"off 3 h\", or --happened \"heater failed\""},
	{"overdose", "--happened \"medicine: its name\""},
	{"soften", "--softened"},
	{"distilled", "--GH 0 --KH 0, where nothing is added to it"},
	{"osmosis", "--GH 0 --KH 0, where nothing is added to it"},
	{"dropp", "--happened \"poison: what it was\", where it is none of food"},
	{"spill", "--happened \"poison: what it was\", where it is none of food"},
	{"fell", "--happened \"poison: what it was\", where it is none of food"},
	{"missing", "--deaths 1, where it is found nowhere"},
	{"leak", "--filter \"off 3 h\", where it does not run"},
	{"crack", "--volume, with the litres that are left"},
	{"spike", "--ammonia \"0.5 mg/L\" --NO2 \"0.5 mg/L\", as read"},
	{"crash", "--pH 5.5 --KH 0, as read"},
	{"electrocut", "again, and unplug it first"},
	{"shock", "again, and unplug it first"},
};

/* Words that begin like one of a danger, and are of none. */
static const char *const harmless[] = {"illuminated", "illumination", "illustrated", "diet",
	"diets", "shockingly", "hotel", "treats", "chlorophyll", "powerful", "colder",
	"cold-blooded", "coldwater", "powerhead", "died-off"};

static const char *danger_of(const char *word)
{
	if (TS_TYPED_AMONG(word, harmless))
		return NULL;
	for (size_t i = 0; i < sizeof dangers / sizeof *dangers; i++) {
		if (strncasecmp(word, dangers[i].start, strlen(dangers[i].start)) == 0)
			return dangers[i].say;
	}
	return NULL;
}

bool ts_typed_endangers(const struct ts_typed *t, size_t from, size_t to)
{
	for (size_t i = from; i < to; i++) {
		if (danger_of(t->word[i]))
			return true;
	}
	return false;
}

/* So many words at the most are shown of what was not understood. */
#define BESIDE_MOST 5

/* What stands around a word of which nothing was made, up to marks and what was used. */
static const char *around(const struct ts_typed *t, size_t at, size_t *ret_end)
{
	size_t from = at, to = at + 1;

	while (from > 0 && at - from < 2 && t->mark[from - 1] != TS_TYPED_USED &&
		!ts_typed_ends(t, from - 1))
		from--;
	while (to < t->count && to - from < BESIDE_MOST && t->mark[to] != TS_TYPED_USED &&
		!ts_typed_ends(t, to))
		to++;
	*ret_end = to;
	return ts_typed_joined(t, from, to);
}

static void add(struct ts_typed *t, const char *words, const char *say, bool danger)
{
	struct ts_sentence *s = t->out;

	if (s->alarm_count < TS_SENTENCE_MOST)
		s->alarms[s->alarm_count++] = (struct ts_sentence_alarm){words, say, danger};
}

void ts_typed_alarms(struct ts_typed *t)
{
	size_t told = 0; /* words before it are within what was told */

	for (size_t i = 0; i < t->count; i++) {
		const char *say = danger_of(t->word[i]);
		bool figure = strpbrk(t->word[i], "0123456789") != NULL;

		if (t->mark[i] == TS_TYPED_USED || i < told || !(say || figure))
			continue;
		add(t, around(t, i, &told), say ? say : "with its unit, or leave it out", say);
	}
	if (t->long_one)
		add(t, t->word[t->count - 1], "in fewer words", true);
}
