/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What happened to a tank, and in what state it is, as people tell it. A row is a pattern: words
 * with "|" between them are one of several, "?" behind them: or none, "*" is up to three words, "#"
 * a number, "@" a time.
 */
#include <string.h>
#include <strings.h>

#include "records/animals.h"
#include "typed/reader.h"

/* What a row makes of it. */
enum makes {
	NOTHING, /* it harms nothing, and is passed over knowingly */
	FLAG,    /* `flag` with `value`, "#" and "@" in it filled in */
	HEATER,  /* the same of a heater that fails: too warm, it is stuck */
	AGE,     /* the tank runs so long */
	LIVED,   /* the animal named last has lived there so long */
	LIVES,   /* those named in this thought live there */
	SINCE,   /* what is seen began then */
	OF_THEM, /* of so many something is told */
	DIED,    /* so many died; one where no number is */
};

#define SET "set|setup|started|filled|bought|got|assembled"
#define FILTER "filter|filters|sponge|filtration"

/* The first that fits is taken; so the longer and graver stand first. */
/* clang-format off */
static const struct row {
	const char *pattern;
	enum makes makes;
	const char *flag, *value;
} rows[] = {
	/* the water was poured in untreated */
	{"forgot|forgotten|without|no|skipped|missed|didn't|hadn't|haven't|never to|use|used|add|added|put|any|the? * conditioner|dechlorinator|dechlor|dechlorinated|dechlorinating|prime", FLAG, "--happened", "untreated water"},
	{"untreated|unconditioned|undechlorinated tap? water", FLAG, "--happened", "untreated water"},
	{"straight tap water", FLAG, "--happened", "untreated water"},
	{"didn't|not|never|forgot dechlorinate|dechlorinated|condition|treat|treated to? the? new? tap? water?", FLAG, "--happened", "untreated water"},
	{"changed|replaced|emptied|swapped all of? the|my? water|tank *", FLAG, "--happened", "changed 100 %"},
	{"100 % water change", FLAG, "--happened", "changed 100 %"},
	{"full|complete|whole|total water change", FLAG, "--happened", "changed 100 %"},
	/* the filter */
	{"washed|cleaned|rinsed|scrubbed|cleaning|washing|rinsing the|my|all|out|its? * " FILTER "|media|cartridge|sponges with|in|under the|hot|warm|cold|running? tap|faucet water?", FLAG, "--happened", "filter washed with tap water"},
	{"replaced|changed|swapped|threw|new the|my|all|out|away|its? " FILTER "? media|cartridge|cartridges|sponge|sponges|pads|pad|floss", FLAG, "--happened", "filter media replaced"},
	{"no|without|lacks|unfiltered a|any|the? " FILTER, FLAG, "--filter", "none"},
	{"unfiltered", FLAG, "--filter", "none"},
	{"don't|doesn't|not|hasn't|haven't have|use|got|yet? a|any? " FILTER, FLAG, "--filter", "none"},
	{FILTER " not|isn't running|working on? for|since? @", FLAG, "--filter", "off @"},
	{FILTER " has|is|was|had|been|my? off|stopped|broke|broken|dead|died|failed|unplugged|out for|since? @ ago?", FLAG, "--filter", "off @"},
	{FILTER " stopped|broke|died|failed working? for|since? @ ago?", FLAG, "--filter", "off @"},
	{FILTER " not|isn't|doesn't|won't|stopped running|work|working|run|start", FLAG, "--filter", "stopped"},
	{FILTER " has|is|was|had|been? off|stopped|broke|broken|dead|died|failed|unplugged|out|clogged", FLAG, "--filter", "stopped"},
	{"broken|stopped|dead|clogged|failed " FILTER, FLAG, "--filter", "stopped"},
	{"power|electricity|current has|is|was|went|been|had|a? cut|off|out|outage|failure|gone|down for|since|lasting|of|over? @ ago?", FLAG, "--filter", "off @"},
	{"no|without power|electricity|current for|since? @", FLAG, "--filter", "off @"},
	{"@ power|electricity cut|outage|failure", FLAG, "--filter", "off @"},
	{"power|electricity|current has|is|was|went|been|had|a? cut|off|out|outage|failure|gone|down|blackout", FLAG, "--filter", "stopped"},
	{"no|without power|electricity|current", FLAG, "--filter", "stopped"},
	{"blackout", FLAG, "--filter", "stopped"},
	{"not|isn't|un|never|hasn't|no been|a|yet|fully|properly|quite? cycled|cycle|cycling|matured|mature", FLAG, "--filter", "new"},
	{"uncycled|cycling|un-cycled|unmatured|immature tank|filter?", FLAG, "--filter", "new"},
	{"new|brand-new|fresh|freshly|newly tank|aquarium|filter|setup|set|started|fish? tank|up|filter?", FLAG, "--filter", "new"},
	{"brand new fish? tank|aquarium|filter|setup", FLAG, "--filter", "new"},
	{"mature|established|matured|cycled|fully tank|aquarium|filter|cycled|established tank|aquarium|filter?", FLAG, "--filter", "mature"},
	{"is|has|been? fully? cycled|established|matured for? @", FLAG, "--filter", "mature"},
	{"is|has|been? fully? cycled|established|matured", FLAG, "--filter", "mature"},
	{"tank|aquarium|filter|it * running|going|up|established|set|cycling for|since|up|about|only|now|just? for|since|about|only? @ now|ago?", AGE, NULL, NULL},
	{SET " it|up|the|my|our|a|new|fish|this? it|up|the|my|our|a|new|fish|tank|aquarium|this? tank|aquarium|up|only|just|about? only|just|about|up|for? @ ago?", AGE, NULL, NULL},
	{"set it|the|my|our? tank|aquarium? up just|only|about? @ ago?", AGE, NULL, NULL},
	{"running|going|established|up cycling|set|and|since|for|about|only|now|just? for|since|running|about|only? @ now|ago?", AGE, NULL, NULL},
	{"@ old|ago|running tank|aquarium|setup|set|set-up up?", AGE, NULL, NULL},
	{"tank|aquarium|it|setup|filter|which is|was|has|been? only|about|just|around|now? @ old", AGE, NULL, NULL},
	{"set up just|only? today|yesterday|now|recently", FLAG, "--filter", "new"},
	{"just set up|started|filled", FLAG, "--filter", "new"},
	{"setting|starting|set up a|my|our|new|the|first? *", FLAG, "--filter", "new"},
	/* heat and cold */
	{"heater|thermostat set|kept|running? at|to|on # degrees|deg? c|celsius|f|\xc2\xb0|\xc2\xb0""c?", FLAG, "--temperature", "#"},
	{"heater|thermostat * at|to|hit|hits|reads|reading|shows # degrees|deg? c|celsius|f|\xc2\xb0|\xc2\xb0""c?", HEATER, "--temperature", "#"},
	{"tank|water|it|now is|was|at|now|has|sits|dropped|fell|rose|went|up|down|only|gone|cooled|warmed at|to|down|up|about|around|only? to? # degrees|c|celsius|\xc2\xb0|\xc2\xb0""c", FLAG, "--temperature", "#"},
	{"tank|water|it at # degrees|c|celsius|f|\xc2\xb0|\xc2\xb0""c?", FLAG, "--temperature", "#"},
	{"heater|thermostat is|was|has|got|seems|stayed|the? stuck|on|jammed overheating|overheated|on|open?", FLAG, "--happened", "heater stuck"},
	{"heater|thermostat has|is|was|seems|been? broke|broken|died|dead|failed|off|unplugged|faulty|stopped|defective|gone working|out|off?", FLAG, "--happened", "heater failed"},
	{"heater|thermostat not|isn't|doesn't|won't|wasn't working|work|heat|heating|on|plugged", FLAG, "--happened", "heater failed"},
	{"broken|faulty|dead|defective|failed heater|thermostat", FLAG, "--happened", "heater failed"},
	{"with|has|have|got|includes|plus|and|using a|the|an|air|sponge|good|small|internal|external|hang-on? * heater|filter|sponge filter|and? a|the? heater|filter? at|set|to? #? degrees|c|celsius?", NOTHING, NULL, NULL},
	{"no|without|un heater|heating|heated", NOTHING, NULL, NULL},
	{"unheated|no-heater", NOTHING, NULL, NULL},
	{"heated", NOTHING, NULL, NULL},
	{"filter|heater and a|the? heater|filter", NOTHING, NULL, NULL},
	{"filter is|runs|runs|running|works|working fine|well|ok|okay|good|great?", NOTHING, NULL, NULL},
	{"heater works|working|fine|ok|good", NOTHING, NULL, NULL},
	/* poison from outside */
	{"used|spilled|spilt|sprayed|dropped|put|added|got|cleaned|washed|rinsed|scrubbed|bleached|with|in|some|it|the|tank|a|fell|into? * bleach|soap|detergent|disinfectant|washing-up|shampoo|insecticide|fly|ant|flea|paint|perfume|deodorant|hand|cleaner|cleaning|glass|pesticide liquid|spray|lotion|killer|sanitizer|cream|product|cleaner|treatment|collar?", FLAG, "--happened", "poison: soap, spray or the like"},
	{"bleach|bleached|soap|soapy|detergent|disinfectant|insecticide|pesticide|perfume|deodorant|paint|sanitizer|cleaner|fumes|fly-spray|lotion", FLAG, "--happened", "poison: soap, spray or the like"},
	{"copper|brass|galvanised|zinc pipe|pipes|coin|coins|ornament|tube|wire|boiler|pot", FLAG, "--happened", "poison: metal"},
	{"used|added|put|dosed|gave|treated|treating|with|some|a|for|copper|double|in? * medicine|medication|meds|antibiotic|antibiotics|treatment|remedy|copper|formalin|salt-dip|dewormer", FLAG, "--happened", "medicine"},
	{"copper medicine|medication|treatment|based", FLAG, "--happened", "medicine: copper"},
	{"medicine|medicated|medication|meds|antibiotics|antibiotic|dewormer", FLAG, "--happened", "medicine"},
	{"overfed|over-fed", FLAG, "--happened", "fed too much"},
	{"fed|feeding|gave|put|poured|tipped|dumped them? far|way|whole|entire|all|in? too|the|a|whole|all|of? much|pot|tub|can|box|container|food of? fish? food?", FLAG, "--happened", "fed too much"},
	/* deaths */
	{"nobody|none|no|nothing|never|no-one|not one|fish|animals|deaths|any|of|them|has|have|a? died|dead|deaths|death|dies|dying", FLAG, "--deaths", "0"},
	{"# of|out of? my|the|our|these|those #", OF_THEM, NULL, NULL},
	{"everybody|everyone|all|everything of|the|my|are|is|fish|them|have|has|they? of|the|my|are|is|fish|them|have|has? died|dead|dying|dies", DIED, NULL, NULL},
	{"found # of|my|the|them|fish? * dead", DIED, NULL, NULL},
	{"# of|fish|my|the|others|other|more|has|have|just|already|are|is|were|was|animals|them|so|far? of|fish|my|the|others|other|more|has|have|just|already|are|is|were|was|animals|them? of|fish|my|the|has|have|just|already|are|is|were|was|so|far|now? died|dead|death|deaths|die|passed|perished|gone @?", DIED, NULL, NULL},
	{"lost|losing|lose # of|fish|my|the|them|already|so? far|fish|overnight|today|since? @?", DIED, NULL, NULL},
	{"died|dead|dying|dies|deaths|death|perished @?", DIED, NULL, NULL},
	{"lost|losing a|another|more|all|my|many|most|several|every fish|of|one|animals|it|them", DIED, NULL, NULL},
	/* living there */
	{"lives|live|living|is|are|swims|swim|swimming|were|was|now|has|have|sits|been|happy|happily? living|now|alone|together? in my|our|his|her|their", LIVES, NULL, NULL},
	{"since|for|from|began|started @ ago?", SINCE, NULL, NULL},
	{"for|since|had|have about|almost|nearly|over|more|around|than|the|past|last|it|them|him|her|for? about|almost|nearly|over|than|past|last|for? @", LIVED, NULL, NULL},
	/* nothing of it counts */
	{"# year|years|yr old daughter|son|boy|girl|child|kid|and?", NOTHING, NULL, NULL},
	{"my # year|yr old", NOTHING, NULL, NULL},
	{"year-old|years-old", NOTHING, NULL, NULL},
	{"tomorrow|tonight|soon|today|next at|this|in|on|week|weekend|saturday|sunday|monday?", NOTHING, NULL, NULL},
	{"no|not|without|haven't|never|didn't any|a|done|water|yet? test|tests|tested|testing kit|kits?", NOTHING, NULL, NULL},
};
/* clang-format on */

/* Where a pattern has matched so far. */
struct match {
	const struct ts_typed *t;
	size_t at;
	double number;    /* negative: none */
	const char *span; /* NULL: none */
};

/* The times that stand by themselves. */
static const struct {
	const char *words, *span;
} times[] = {
	{"the day before yesterday", "2 days"},
	{"yesterday evening", "1 day"},
	{"yesterday", "1 day"},
	{"this morning", "6 hours"},
	{"this afternoon", "3 hours"},
	{"this evening", "2 hours"},
	{"today", "6 hours"},
	{"last night", "12 hours"},
	{"all night", "10 hours"},
	{"overnight", "10 hours"},
	{"over night", "10 hours"},
	{"the night", "10 hours"},
	{"all day", "10 hours"},
	{"half an hour", "1 hour"},
	{"an hour", "1 hour"},
	{"a day", "1 day"},
	{"a few hours", "3 hours"},
	{"some hours", "3 hours"},
	{"several hours", "5 hours"},
	{"a couple of hours", "2 hours"},
	{"a couple of days", "2 days"},
	{"a couple of weeks", "2 weeks"},
	{"a couple of months", "2 months"},
	{"a few days", "3 days"},
	{"some days", "3 days"},
	{"several days", "4 days"},
	{"last week", "1 week"},
	{"a few weeks", "3 weeks"},
	{"several weeks", "3 weeks"},
	{"some weeks", "3 weeks"},
	{"last month", "4 weeks"},
	{"a few months", "3 months"},
	{"several months", "4 months"},
	{"some months", "3 months"},
	{"many months", "6 months"},
	{"last year", "1 year"},
	{"a few years", "3 years"},
	{"some years", "3 years"},
	{"many years", "5 years"},
	{"several years", "3 years"},
	{"years", "2 years"},
	{"months", "3 months"},
	{"ages", "2 years"},
	{"a long time", "1 year"},
	{"ever", "2 years"},
	{"the weekend", "3 days"},
	{"weekend", "3 days"},
	{"christmas", "1 month"},
};

/* Units of a time as people shorten them. */
static const struct {
	const char *word, *unit;
} time_units[] = {{"h", "hours"}, {"hr", "hours"}, {"hrs", "hours"}, {"hour", "hours"},
	{"hours", "hours"}, {"min", "min"}, {"mins", "min"}, {"minutes", "min"}, {"minute", "min"},
	{"d", "days"}, {"day", "days"}, {"days", "days"}, {"wk", "weeks"}, {"wks", "weeks"},
	{"week", "weeks"}, {"weeks", "weeks"}, {"mo", "months"}, {"month", "months"},
	{"months", "months"}, {"mth", "months"}, {"mths", "months"}, {"yr", "years"},
	{"yrs", "years"}, {"year", "years"}, {"years", "years"}};

/* "2 weeks", "two days", "yesterday"; how many words, 0: no time. */
static size_t span_here(const struct ts_typed *t, size_t at, const char **ret)
{
	double number = at < t->count ? ts_typed_number(t->word[at]) : 0;
	size_t next = at + 1;

	for (size_t i = 0;
		number > 0 && next < t->count && i < sizeof time_units / sizeof *time_units; i++) {
		if (!ts_typed_is(t->word[next], time_units[i].word))
			continue;
		*ret = ts_arena_join(
			t->arena, ts_typed_number_text(t, number), " ", time_units[i].unit, NULL);
		return *ret ? 2 : 0;
	}
	for (size_t i = 0; i < sizeof times / sizeof *times; i++) {
		size_t used = ts_typed_phrase(t, at, times[i].words);

		if (used) {
			*ret = times[i].span;
			return used;
		}
	}
	return 0;
}

/* One of the words between "|"; `len` bytes of them. */
static bool one_of(const char *word, const char *choices, size_t len)
{
	size_t own = strlen(word);

	for (size_t from = 0; from < len;) {
		size_t end = from;

		while (end < len && choices[end] != '|')
			end++;
		if (end - from == own && strncasecmp(choices + from, word, own) == 0)
			return true;
		from = end + 1;
	}
	return false;
}

#define ANY_MOST 3

/* The rest of a pattern fits from here on. */
static bool fits(const char *pattern, struct match *io)
{
	size_t len = strcspn(pattern, " "), used;
	const char *rest = pattern + len + (pattern[len] == ' ');
	bool may_lack = len > 1 && pattern[len - 1] == '?';
	struct match tried;

	if (!*pattern)
		return true;
	if (len == 1 && *pattern == '*') {
		for (size_t skip = 0; skip <= ANY_MOST; skip++) {
			tried = *io;
			tried.at += skip;
			if (skip && ts_typed_ends(io->t, io->at + skip - 1))
				return false;
			if (fits(rest, &tried)) {
				*io = tried;
				return true;
			}
		}
		return false;
	}
	tried = *io;
	if (*pattern == '#') {
		double number = io->at < io->t->count ? ts_typed_number(io->t->word[io->at]) : 0;

		if (number > 0) {
			tried.number = number;
			tried.at++;
			if (fits(rest, &tried)) {
				*io = tried;
				return true;
			}
		}
	} else if (*pattern == '@') {
		used = span_here(io->t, io->at, &tried.span);
		tried.at += used;
		if (used && fits(rest, &tried)) {
			*io = tried;
			return true;
		}
	} else if (io->at < io->t->count && one_of(io->t->word[io->at], pattern, len - may_lack)) {
		tried.at++;
		if (fits(rest, &tried)) {
			*io = tried;
			return true;
		}
	}
	return may_lack && fits(rest, io);
}

/* The value of a row with "#" and "@" filled in. */
static const char *filled(const struct ts_typed *t, const char *value, const struct match *m)
{
	size_t before = strcspn(value, "#@");
	const char *in = value[before] == '#' ? ts_typed_number_text(t, m->number) : m->span;

	if (!value[before] || !in)
		return value;
	return ts_arena_join(
		t->arena, ts_arena_text(t->arena, value, before), in, value + before + 1, NULL);
}

/* A filter of that age may be relied on, and below, not (common practice). */
#define YOUNG_DAYS 56
#define OLD_DAYS 180

static bool take_age(struct ts_typed *t, const char *span)
{
	double days = ts_days_of(span);

	if (days < 0)
		return false;
	if (days < YOUNG_DAYS)
		return ts_typed_flag(t, "--filter", "new", NULL);
	return days < OLD_DAYS || ts_typed_flag(t, "--filter", "mature", NULL);
}

/* No water of a tank that is meant so is as warm, or as cold, C. */
#define STUCK_C 29
#define FAILED_C 20
#define WARMEST_C 45
#define COLDEST_C 4

static bool take_temperature(struct ts_typed *t, const struct row *row, const struct match *m)
{
	const char *value = filled(t, row->value, m);

	if (!(m->number >= COLDEST_C))
		return false;
	if (m->number > WARMEST_C)
		value = ts_arena_join(t->arena, value, " F", NULL);
	if (row->makes == HEATER && m->number <= WARMEST_C &&
		(m->number > STUCK_C || m->number < FAILED_C))
		(void)ts_typed_flag(t, "--happened",
			m->number > STUCK_C ? "heater stuck" : "heater failed", NULL);
	return ts_typed_flag(t, row->flag, value, NULL);
}

static bool make(struct ts_typed *t, const struct row *row, const struct match *m)
{
	switch (row->makes) {
	case HEATER:
		return take_temperature(t, row, m);
	case FLAG:
		if (strcmp(row->flag, "--temperature") == 0)
			return take_temperature(t, row, m);
		return ts_typed_flag(t, row->flag, filled(t, row->value, m), NULL);
	case AGE:
		return take_age(t, m->span);
	case LIVED:
		return ts_typed_lived(t, m->span);
	case SINCE:
		return ts_typed_since(t, m->span);
	case LIVES:
		if (t->asked || !t->last)
			return false;
		ts_typed_they_live(t);
		return true;
	case OF_THEM:
		t->of_them = ts_typed_number(t->word[t->at]);
		return true;
	case DIED:
		return !t->asked && (ts_typed_died(t, m->number), true);
	default:
		return true;
	}
}

size_t ts_typed_happened(struct ts_typed *t)
{
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct match m = {t, t->at, -1, NULL};

		if (!fits(rows[i].pattern, &m) || m.at == t->at || !make(t, &rows[i], &m))
			continue;
		/* How many there are belongs to the name behind it. */
		return m.at - t->at - (rows[i].makes == OF_THEM);
	}
	return 0;
}
