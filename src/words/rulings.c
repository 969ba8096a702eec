/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Templates a rule: what is the matter, what to do about it, and what two animals are kept together
 * on. In braces: a, b the two animals, as, bs more than one of them; ours, its, change the numbers;
 * word the current or light that it is about; cautions all of the animal's; ground what it wants
 * below it; males, borne, females how many of a sex;
 * young, gamble what is eaten of shrimps;
 * most, longest, litres the room that only a volume tells; fit how the water suits; name
 * what was not found. The rules stand in stock/rules.c, what was tried and mends in a remedy.
 */
#include "words/rulings.h"

#include <string.h>

#include "stock/rules.h"
#include "words/animal.h"
#include "words/sentence.h"

/*
 * `says`: the fault. `mend`: what to do, where no remedy was computed; NULL nothing. `keep`: behind
 * "together if", what can be done while keeping all; NULL there is nothing of the kind.
 */
struct row {
	const char *says, *mend, *keep;
	int decimals;
};

/* clang-format off */
static const struct row rows[TS_RULE__COUNT] = {
	[TS_RULE_CAUTION] = {"{a}: {cautions}", NULL, "your authority allows it", 0},
	[TS_RULE_COVER] = {"{as} leave the water through any gap", "cover the tank tightly", "the tank is covered tightly", 0},
	[TS_RULE_EATS_PLANTS] = {"{as} eat plants, and there are some", "tough plants, or none", "the plants are tough ones", 0},
	[TS_RULE_FEW] = {"{nas}: they feel safe from {its} on", "{change} more of them", "there are {its} {as}", 0},
	[TS_RULE_FLOW] = {"{as} want {word} water, and the tank has another current", "turn the filter's outlet until part of the tank is {word}", "part of the tank is {word}", 0},
	[TS_RULE_FORMS_CROSS] = {"{ours} forms of {a} cross: the young go back to plain colours", "keep one form", NULL, 0},
	[TS_RULE_LAND] = {"{as} need land above the water: in a filled tank they drown or waste away", "fill the tank half, with land to climb on, and write water_level: half; else do not buy them", NULL, 0},
	[TS_RULE_LIGHT] = {"{as} want {word} light, and the tank has another", "give them a corner of their own: plants, roots or open light", NULL, 0},
	[TS_RULE_OLD_TANK] = {"{as} live only in tanks that have run for months", "buy them last, when the tank has been steady for half a year", "they are bought last, into a tank that has run for half a year", 0},
	[TS_RULE_OWN_KIND] = {"{nas} fight each other to injury: one alone is borne", "keep 1", NULL, 0},
	[TS_RULE_PAIR_FORMS] = {"{nas} grow into a pair and its victims", "keep a pair, and have a place for the rest", "there is a place for the others once two have paired", 0},
	[TS_RULE_SAND] = {"{as} {ground}", "sand or fine rounded gravel instead, at least over a third of the floor", "part of the floor is sand or fine rounded gravel", 0},
	[TS_RULE_SEXES] = {"{males} of {a}{females}", "{borne}", "{keep}{borne}", 0},
	[TS_RULE_SPECIALIST] = {"{as} take only special food{eats}", NULL, NULL, 0},
	[TS_RULE_TANK_HEIGHT] = {"{as} need a tank {its} cm high, and this one has {ours}{most}", NULL, "the tank is {its} cm high", 0},
	[TS_RULE_TANK_LENGTH] = {"grown {as} need a tank {its} cm long, and this one has {ours}", NULL, "the tank is {its} cm long", 0},
	[TS_RULE_TANK_UNMEASURED] = {"grown {as} need a tank {its} cm long, and {longest}", NULL, "the tank is {its} cm long", 0},
	[TS_RULE_TANK_WIDTH] = {"to turn {as} need a tank {its} cm wide, and this one has {ours}{most}", NULL, "the tank is {its} cm wide", 0},
	[TS_RULE_TERRITORY] = {"so many {as} need {its} m2 of floor, and this tank has {ours}{most}", NULL, "the floor is {its} m2", 2},
	[TS_RULE_UNSETTLED] = {"{nas} are enough, and {its} calmer", "{change} more, where there is room", NULL, 0},
	[TS_RULE_YOUNG] = {"{nas} are about {its} in six months, if a fifth of the young grow up", "keep males alone, or have homes for the young before there are any", "males alone are kept, or the young have homes", 0},
	[TS_RULE_ATTACKED] = {"{bs} injure what lives with them, here {as}{floor}", NULL, "there is room to flee: a floor of {its} m2, with hiding places", 2},
	[TS_RULE_CHASED] = {"{bs} chase what lives with them, here {as}{floor}", "hiding places, and stones or plants that break the view", "there are hiding places, and stones or plants break the view", 2},
	[TS_RULE_CROSSES] = {"{as} cross with {bs}, and the young are mongrels", "keep one of the two, or one sex of both", "only one sex of them is kept", 0},
	[TS_RULE_EATEN] = {"{bs} eat {as}, sold at {ours} cm: they swallow fish of that shape up to {its} cm", "only where they are bought grown, longer than that", "{as} are bought grown, longer than {its} cm", 1},
	[TS_RULE_ELECTRIC] = {"{bs} stun or kill what lives with them", NULL, NULL, 0},
	[TS_RULE_FIN_NIPPER] = {"{bs} bite the fins of {as}{calmer}", NULL, NULL, 0},
	[TS_RULE_FLOW_APART] = {"{as} want still water, {bs} a strong current", NULL, "part of the tank is still and part of it in the current", 0},
	[TS_RULE_GH_APART] = {"{as} {live} to GH {ours}, {bs} from {its}{both}", NULL, NULL, 1},
	[TS_RULE_LABYRINTH] = {"{as} claim the surface against {bs}{litres}", NULL, NULL, 0},
	[TS_RULE_LAKE_APART] = {"{as} belong among animals of their own lake, and {bs} are none", NULL, NULL, 0},
	[TS_RULE_LIGHT_APART] = {"{as} want shade, {bs} bright light", "floating plants over one half", NULL, 0},
	[TS_RULE_NIGHT_HUNTER] = {"{bs} hunt at night, and {as} of {ours} cm nearly fit their mouths of {its}", NULL, NULL, 1},
	[TS_RULE_OUTCOMPETED] = {"{bs} are quicker at the food than {as}", "feed both at once at two ends, and watch that all eat", "both are fed at once at two ends of the tank", 0},
	[TS_RULE_PH_APART] = {"{as} live to pH {ours}, {bs} from {its}", NULL, NULL, 1},
	[TS_RULE_RIVALS] = {"{as} take {bs} for rivals{floor}", NULL, "there is ground for both, {its} m2 of floor", 2},
	[TS_RULE_SALT_APART] = {"{as} bear {ours} g/L salt, {bs} need {its}", NULL, NULL, 1},
	[TS_RULE_SHRIMPS_EATEN] = {"{bs} eat {young}", NULL, "{gamble}", 0},
	[TS_RULE_SNAILS_EATEN] = {"{bs} eat {as}", NULL, NULL, 0},
	[TS_RULE_TEMPERATURE_APART] = {"{as} {atemp}, {bs} {btemp}", NULL, "the tank is kept {both_temp}", 1},
	[TS_RULE_AMMONIA] = {"ammonia {ours} mg/L N, borne to {its}: the filter is not coping", "change a quarter of the water now for treated water of the same warmth; feed nothing, and test every day", NULL, 2},
	[TS_RULE_BUFFER] = {"the buffer lasts {ours} days, the water is changed every {its} days", "change more water or more often", "water is changed often enough to keep the buffer", 0},
	[TS_RULE_BUFFER_OPEN] = {"the buffer lasts {ours} to {its} days, as much as is fed: feeding and plants are not given", "say how much is fed, and test KH every week", NULL, 0},
	[TS_RULE_CHLORINE] = {"chlorine {ours} mg/L, borne to {its}", "treat the water before any animal meets it", NULL, 3},
	[TS_RULE_COUNT_ASSUMED] = {"how many {as} is not given: {ours} taken, the least that feel safe", NULL, NULL, 0},
	[TS_RULE_CROWDED] = {"so many grown fish want {its} litres, and this tank has {ours}", "fewer of them, or a larger tank", NULL, 0},
	[TS_RULE_DISTRESS] = {"signs of distress: {ours}, unexplained deaths: {its}", "find the cause before anything else; a vet decides about sick animals", NULL, 0},
	[TS_RULE_EMPTY] = {"no animal is named", "name those you have or want, for example \"10 neon tetra\"", NULL, 0},
	[TS_RULE_FILTER] = {"the filter is not mature", "mature it without animals first, then buy in thirds, 14 days apart, with a test before each", "the filter is mature before anybody is bought", 0},
	[TS_RULE_FILTER_UNKNOWN] = {"in a new tank the filter has to mature first, for weeks, without animals", "then buy in thirds, 14 days apart, with a test before each", NULL, 0},
	[TS_RULE_FLOOR] = {"floor {ours} m2, the territories of all need {its}", "fewer species that hold ground, or a larger floor", "the floor is {its} m2", 2},
	[TS_RULE_KH_UNKNOWN] = {"KH is not given: how long the buffer lasts cannot be said", "test KH with drops", NULL, 0},
	[TS_RULE_LITRES] = {"the smallest tank for all of them holds {its} litres, and this one {ours}", "fewer of them, or a larger tank", NULL, 0},
	[TS_RULE_MANY_SPECIES] = {"{ours} kinds of fish, and a tank of this size stays steadier with {its}", "fewer kinds, more of each", NULL, 0},
	[TS_RULE_NEWCOMERS] = {"newcomers are planned on top of sick animals: {ours} species", "buy nothing until all is well for four weeks", NULL, 0},
	[TS_RULE_NITRATE] = {"nitrate {ours} mg/L, comfortable to {its}", "small changes, more often, until it falls", NULL, 0},
	[TS_RULE_NITRATE_LOAD] = {"nitrate will settle at {ours} mg/L, comfortable to {its}", "fewer animals, less feed, or more water changed", "more water is changed", 0},
	[TS_RULE_NITRATE_OPEN] = {"nitrate will settle at {ours} to {change} mg/L, comfortable to {its}: that depends on what is not given of feeding, plants and water changes", "say how much water is changed, how it is fed and how much grows in it, or measure nitrate before a change", NULL, 0},
	[TS_RULE_NITRITE] = {"nitrite {ours} mg/L N, borne to {its}: the filter is not coping", "change a quarter of the water now for treated water of the same warmth; feed nothing, and test every day", NULL, 3},
	[TS_RULE_OXYGEN] = {"oxygen {ours} mg/L, enough from {its}: {change} too little", "move the surface more, day and night, and feed half", "the surface is moved more", 1},
	[TS_RULE_SIDES_ASSUMED] = {"the sides of the tank are not given: taken as {ours} x {its} cm, as tanks of so many litres usually are", "measure it", NULL, 0},
	[TS_RULE_TANK_UNKNOWN] = {"no tank is given", NULL, NULL, 0},
	[TS_RULE_TEMPERATURE_UNKNOWN] = {"what the tank runs at is not given", "say what it is to run at (--temperature 25, or temperature: 24..26 C in the tank file)", NULL, 0},
	[TS_RULE_UNKNOWN_SPECIES] = {"'{name}' is no name in the catalogue", "write another of its names; an unknown animal never passes", NULL, 0},
	[TS_RULE_UNTESTED] = {"ammonia and nitrite of the running tank are not both known", "test both; each must read nil", NULL, 0},
	[TS_RULE_WARM_OXYGEN] = {"{its} C: such warm water holds {ours} mg/L of oxygen at the most", "keep the surface moving", NULL, 1},
	[TS_RULE_WATER] = {"{a}: {fit}", NULL, NULL, 1},
	[TS_RULE_WATER_UNKNOWN] = {"no water was measured", "GH first, with a drop kit: it decides most", NULL, 0},
	[TS_RULE_WATER_UNSURE] = {"{a}: {fit}", "measure that again, with drops", NULL, 1},
};
/* clang-format on */

void ts_say_animal(struct ts_text *text, const struct ts_species *s)
{
	ts_text_put(text, s->common.en.count ? s->common.en.items[0] : s->species);
}

static bool ends(const char *word, const char *end)
{
	size_t a = strlen(word), b = strlen(end);

	return a >= b && strcmp(word + a - b, end) == 0;
}

static bool consonant(char c)
{
	return !strchr("aeiou", c);
}

/* A user may have set names of another language first (cli/settings.c): those have no English
 * plural. */
static bool is_english(const struct ts_species *s)
{
	const struct ts_texts *const others[] = {
		&s->common.de, &s->common.fr, &s->common.nl, &s->common.es, &s->common.it};
	bool is = true;

	for (size_t i = 0; i < sizeof others / sizeof *others; i++)
		is &= others[i]->items != s->common.en.items;
	return is;
}

void ts_say_animals(struct ts_text *text, const struct ts_species *s)
{
	static const char *const same[] = {"fish", "s", NULL};
	const char *name = s->common.en.count ? s->common.en.items[0] : NULL;
	size_t len = name ? strlen(name) : 0;

	if (!name) {
		ts_text_put(text, s->species);
		return;
	}
	for (size_t i = 0; same[i]; i++) {
		if (ends(name, same[i]) || !is_english(s)) {
			ts_text_put(text, name);
			return;
		}
	}
	if (ends(name, "y") && len > 1 && consonant(name[len - 2]) && !ends(name, "cory")) {
		ts_text_add(text, name, len - 1);
		ts_text_put(text, "ies");
		return;
	}
	ts_text_puts(text, name,
		ends(name, "ch") || ends(name, "x") || ends(name, "sh") ? "es" : "s", NULL);
}

/* The word that the rule is about: its list is the record's. */
static const char *word_of(const struct ts_ruling *r)
{
	static const char *const flows[] = {"any", "still", "gentle", "brisk"};
	static const char *const lights[] = {"any", "shaded", "bright"};

	return r->rule == TS_RULE_FLOW ? flows[r->word] : lights[r->word];
}

/* A number that is not known is said so. */
static void put_number(struct ts_text *text, double value, int decimals)
{
	if (isfinite(value))
		ts_text_number_short(text, value, decimals);
	else
		ts_text_put(text, "unknown");
}

/* Which water it is that decides: not the one that is in the tank now. */
static void put_settled(struct ts_text *text, const struct ts_ruling *r)
{
	const char *before = " (GH ";

	if (isnan(r->ours) && isnan(r->its))
		return;
	ts_text_put(text, ", once the tank has settled to what is poured in");
	if (!isnan(r->ours)) {
		ts_text_put(text, before);
		put_number(text, r->ours, 1);
		before = ", KH ";
	}
	if (!isnan(r->its)) {
		ts_text_put(text, *before == ',' ? before : " (KH ");
		put_number(text, r->its, 1);
		before = ", KH ";
	}
	ts_text_put(text, *before == ',' ? ")" : "");
}

/* How the water fits the animal: what decides, in the house sentence. */
void ts_say_fit(struct ts_text *text, const struct ts_ruling *r)
{
	const struct ts_match *m = r->match;

	if (!isnan(m->copper_borne_mg_l)) {
		ts_text_put(text, "copper ");
		put_number(text, r->ours, 3);
		ts_text_put(text, " mg/L, borne to ");
		put_number(text, m->copper_borne_mg_l, 3);
	} else if (m->gh_missing && (r->word < 0 || r->rule == TS_RULE_WATER_UNSURE)) {
		ts_text_put(text, "GH is not given, and it decides most");
	} else if (r->word < 0 && m->kh_missing) {
		ts_text_put(text, "KH is not given, and by GH alone it may be beyond");
	} else if (r->word < 0) {
		ts_text_put(text, "what was measured leaves it open");
	} else {
		ts_say_parameter(text, (enum ts_parameter)r->word, &m->at[r->word]);
		if (r->rests == TS_RESTS_COMPUTED)
			put_settled(text, r);
	}
}

void ts_say_opening(struct ts_text *text, const struct ts_ruling *r)
{
	const struct ts_match *m = r->match;
	const struct ts_parameter_fit *f = !m || r->word < 0 ? NULL : &m->at[r->word];
	const struct ts_parameter_row *row = f ? &ts_parameter_rows[r->word] : NULL;
	bool warmth = r->word == TS_TEMPERATURE, above = f && f->uncomfortable_by > 0;

	if (!f || !f->known || isnan(f->preferred.low) || f->uncomfortable_by == 0 ||
		!isnan(m->copper_borne_mg_l) || (m->gh_missing && r->rule != TS_RULE_WATER)) {
		ts_say_ruling(text, r);
		return;
	}
	ts_text_puts(text, warmth ? "" : row->label, warmth ? "" : " ", f->perhaps ? "may be " : "",
		NULL);
	put_number(text, f->reading, row->decimals);
	ts_text_put(text, warmth ? " C, " : ", ");
	ts_say_animals(text, r->subject);
	ts_text_put(text, above ? " are comfortable to " : " are comfortable from ");
	put_number(text, above ? f->preferred.high : f->preferred.low, row->decimals);
	ts_text_put(text, ": ");
	put_number(text, fabs(f->uncomfortable_by), row->decimals);
	ts_text_puts(text, " ", above ? row->above : row->below, NULL);
	if (r->rests == TS_RESTS_COMPUTED)
		put_settled(text, r);
}

/* A full group is as calm as they get: nothing is to be said of it then. */
static void put_calmer(struct ts_text *text, const struct ts_ruling *r, int decimals)
{
	if (!(r->ours < r->its))
		return;
	ts_text_put(text, ", the more so as there are only ");
	put_number(text, r->ours, decimals);
	ts_text_put(text, ": in a shoal of ");
	put_number(text, r->its, decimals);
	ts_text_put(text, " they are calmer");
}

/* Where a floor is given, how much there is and how much it would take. */
static void put_floor(struct ts_text *text, const struct ts_ruling *r, int decimals)
{
	if (!isfinite(r->ours) || !isfinite(r->its) || r->ours >= r->its)
		return;
	ts_text_put(text, ": the floor has ");
	put_number(text, r->ours, decimals);
	ts_text_put(text, " m2, and there is peace from ");
	put_number(text, r->its, decimals);
	ts_text_put(text, " m2 on");
}

static void put_eats(struct ts_text *text, const struct ts_species *s)
{
	for (size_t i = 0; i < s->eats.count; i++)
		ts_text_puts(text, i ? ", " : ": ", s->eats.items[i], NULL);
}

/* What stands in the second line already is not said twice, unless it is what decides. */
static void put_cautions(struct ts_text *text, const struct ts_ruling *r)
{
	unsigned kinds = r->severity == TS_NOTE ? TS_CAUTIONS_ALL & ~TS_CAUTIONS_SECOND_LINE
						: TS_CAUTIONS_SECOND_LINE;

	if (!(ts_caution_kinds(r->subject) & kinds))
		kinds = TS_CAUTIONS_ALL;
	ts_say_cautions(text, r->subject, kinds);
}

static void put_number_part(
	struct ts_text *text, const struct ts_ruling *r, char which, int decimals)
{
	put_number(text, which == 'o' ? r->ours : which == 'i' ? r->its : r->change, decimals);
}

static bool is(const char *name, size_t len, const char *word)
{
	return strlen(word) == len && strncmp(name, word, len) == 0;
}

/* Ends that exclude are limits of life, other ones those of comfort. */
static void put_temperature(
	struct ts_text *text, const struct ts_ruling *r, const struct ts_species *s)
{
	const struct ts_envelope *t = &s->water.usual.temp_c;
	bool ends = r->severity == TS_CONFLICT && !r->word;

	ts_text_put(text, ends ? "live at " : "are comfortable at ");
	ts_say_range(text, ends ? &t->tolerated : &t->preferred, 1);
	ts_text_put(text, " C");
}

/* Where the comforts of two meet: "at 28 C". */
static void put_both_temperature(struct ts_text *text, const struct ts_ruling *r)
{
	const struct ts_range both = {r->its, r->ours};

	ts_text_put(text, r->its == r->ours ? "at " : "within ");
	if (r->its == r->ours)
		ts_text_number_short(text, r->its, 1);
	else
		ts_say_range(text, &both, 1);
	ts_text_put(text, " C");
}

/* Fish of cold water are no company for fish of warm, though one degree may do for both. */
static bool cold_and_warm(const struct ts_ruling *r)
{
	return (r->subject->home_water == TS_HOME_COOL) != (r->other->home_water == TS_HOME_COOL);
}

/* Sides that only the litres tell. */
static void put_room(struct ts_text *text, const struct ts_ruling *r, const char *name)
{
	if (strncmp(name, "most", 4) == 0) {
		ts_text_put(text, r->word ? ", as far as its litres tell" : "");
	} else if (strncmp(name, "longest", 7) == 0 && !isfinite(r->ours)) {
		ts_text_put(text, "its sides are not given");
	} else if (strncmp(name, "longest", 7) == 0) {
		ts_text_put(text, "one of so many litres is usually ");
		put_number(text, r->ours, 0);
		ts_text_put(text, " cm long");
	} else if (isfinite(r->ours)) {
		ts_text_put(text, " in a tank of ");
		put_number(text, r->ours, 0);
		ts_text_put(text, " L");
	}
}

static void put_ground(struct ts_text *text, const struct ts_ruling *r)
{
	ts_text_put(text,
		r->word == 1 ? "feel for their food with barbels, which coarse gravel wears off"
			     : "dig into sand or sift it, and there is none");
}

/* "1 male", "3 females". */
static void put_males(struct ts_text *text, double count, const char *sex)
{
	put_number(text, count, 0);
	ts_text_puts(text, " ", sex, count > 1 ? "s" : "", NULL);
}

/* Of those whose males leave the females no peace: by themselves they do no harm. */
static bool harass(const struct ts_ruling *r)
{
	return r->subject->group.sexes == TS_SEXES_TWO_FEMALES;
}

/* "1 male, or more females". */
static void put_borne(struct ts_text *text, const struct ts_ruling *r)
{
	if (harass(r)) {
		ts_text_put(text, "two females and more to each male, or males alone");
		return;
	}
	put_males(text, r->its, "male");
	ts_text_put(text, ", or more females");
}

static void put_females(struct ts_text *text, double count)
{
	ts_text_put(text, count > 0 ? " to " : " and no female: they fight");
	if (count > 0)
		put_males(text, count, "female");
}

/* What is eaten of shrimps, and what that comes to. */
static void put_shrimps(struct ts_text *text, const struct ts_ruling *r, bool eaten)
{
	if (!eaten) {
		ts_text_put(text,
			r->word ? "it is a gamble that you take: dense moss, and another home "
				  "ready"
				: "it is no loss that the young are eaten: dense moss saves some");
		return;
	}
	if (r->severity < TS_CONFLICT)
		ts_text_put(text, "young ");
	ts_say_animals(text, r->subject);
	if (r->severity < TS_CONFLICT && r->word)
		ts_text_put(text, ", and some kill grown ones");
}

/* "1 betta", "2 bettas". */
static void put_so_many(struct ts_text *text, const struct ts_ruling *r)
{
	put_number(text, r->ours, 0);
	ts_text_put(text, " ");
	(r->ours == 1 ? ts_say_animal : ts_say_animals)(text, r->subject);
}

static void put_part(
	struct ts_text *text, const struct ts_ruling *r, const char *name, size_t len, int decimals)
{
	if (is(name, len, "a"))
		ts_say_animal(text, r->subject);
	else if (is(name, len, "as"))
		ts_say_animals(text, r->subject);
	else if (is(name, len, "b"))
		ts_say_animal(text, r->other);
	else if (is(name, len, "bs"))
		ts_say_animals(text, r->other);
	else if (is(name, len, "word"))
		ts_text_put(text, word_of(r));
	else if (is(name, len, "name"))
		ts_text_put(text, r->name);
	else if (is(name, len, "fit"))
		ts_say_fit(text, r);
	else if (is(name, len, "calmer"))
		put_calmer(text, r, decimals);
	else if (is(name, len, "floor"))
		put_floor(text, r, decimals);
	else if (is(name, len, "eats"))
		put_eats(text, r->subject);
	else if (is(name, len, "cautions"))
		put_cautions(text, r);
	else if (is(name, len, "ground"))
		put_ground(text, r);
	else if (is(name, len, "most") || is(name, len, "longest") || is(name, len, "litres"))
		put_room(text, r, name);
	else if (is(name, len, "nas"))
		put_so_many(text, r);
	else if (is(name, len, "males"))
		put_males(text, r->ours, "male");
	else if (is(name, len, "keep"))
		ts_text_put(text, harass(r) ? "there are " : "it is ");
	else if (is(name, len, "borne"))
		put_borne(text, r);
	else if (is(name, len, "females"))
		put_females(text, r->change);
	else if (is(name, len, "young") || is(name, len, "gamble"))
		put_shrimps(text, r, *name == 'y');
	else if (is(name, len, "live"))
		ts_text_put(text, r->word ? "like it" : "live");
	else if (is(name, len, "both"))
		ts_text_put(text, r->word ? ": no water is comfortable to both" : "");
	else if (is(name, len, "both_temp"))
		put_both_temperature(text, r);
	else if (is(name, len, "atemp"))
		put_temperature(text, r, r->subject);
	else if (is(name, len, "btemp"))
		put_temperature(text, r, r->other);
	else
		put_number_part(text, r, *name, decimals);
}

static void fill(struct ts_text *text, const struct ts_ruling *r, const char *pattern, int decimals)
{
	while (*pattern) {
		size_t plain = strcspn(pattern, "{"), len;

		ts_text_add(text, pattern, plain);
		pattern += plain;
		if (!*pattern)
			return;
		len = strcspn(pattern, "}");
		put_part(text, r, pattern + 1, len - 1, decimals);
		pattern += len + 1;
	}
}

static void say_fault(struct ts_text *text, const struct ts_ruling *r)
{
	if (r->rule == TS_RULE_FEW && r->ours == 1) {
		fill(text, r, "a single {a} wants company: {its} at least", 0);
		return;
	}
	const char *says = rows[r->rule].says;

	if (r->rule == TS_RULE_NITRATE_LOAD && isinf(r->ours))
		says = "no water is changed: nitrate rises without end, comfortable to {its}";
	else if (r->rule == TS_RULE_BUFFER && isinf(r->ours))
		says = "the buffer is small: keep to this routine, and test KH when it is due";
	else if (r->rule == TS_RULE_BUFFER && r->ours < 1)
		says = "there is hardly any buffer: the pH may fall from one day to the next";
	fill(text, r, says, rows[r->rule].decimals);
}

/* Nobody lives there yet: what is read is a filter at work, and no failure. */
static bool matures(const struct ts_ruling *r)
{
	return r->remedy.kind == TS_REMEDY_WAIT &&
	       (r->rule == TS_RULE_AMMONIA || r->rule == TS_RULE_NITRITE);
}

void ts_say_ruling(struct ts_text *text, const struct ts_ruling *r)
{
	if (matures(r)) {
		fill(text, r,
			r->rule == TS_RULE_AMMONIA
				? "ammonia {ours} mg/L N: the filter is still maturing"
				: "nitrite {ours} mg/L N: the filter is still maturing",
			rows[r->rule].decimals);
		return;
	}
	say_fault(text, r);
}

static void put_figure(
	struct ts_text *text, const char *before, double value, int decimals, const char *after)
{
	ts_text_put(text, before);
	ts_text_number_short(text, value, decimals);
	ts_text_put(text, after);
}

/* "; then GH 6, KH 6", of what is known. */
static void put_then(struct ts_text *text, const struct ts_remedy *m)
{
	const char *before = "; then ";

	if (!isnan(m->gh_dh)) {
		ts_text_put(text, before);
		put_figure(text, "GH ", m->gh_dh, 1, "");
		before = ", ";
	}
	if (!isnan(m->kh_dh)) {
		ts_text_put(text, before);
		put_figure(text, "KH ", m->kh_dh, 1, "");
	}
}

/* Animals that live there come to other water slowly. */
static void put_pace(struct ts_text *text, const struct ts_remedy *m)
{
	if (!m->step_count)
		return;
	ts_text_put(text, ". Change ");
	ts_say_part_of(text, m->step_percent, m->net_l);
	ts_text_put(text, " a week");
	if (m->step_count > 1)
		put_figure(text, ": the tank is there in about ", m->step_count, 0, " weeks");
}

static void put_salt(
	struct ts_text *text, double grams, const char *says, bool *io_first, bool last)
{
	if (!(grams >= 0.5))
		return;
	ts_text_put(text, *io_first ? "" : last ? " and " : ", ");
	put_figure(text, "", grams, 0, says);
	*io_first = false;
}

static bool has_salts(const struct ts_remedy *m)
{
	return m->nahco3_g >= 0.5 || m->cacl2_g >= 0.5 || m->mgso4_g >= 0.5;
}

/* "9 g of baking soda and 4 g of Epsom salt". */
static void put_grams(struct ts_text *text, const struct ts_remedy *m)
{
	bool first = true;

	put_salt(text, m->nahco3_g, " g of baking soda (sodium bicarbonate)", &first, false);
	put_salt(text, m->cacl2_g, " g of calcium chloride (CaCl2.2H2O)", &first, m->mgso4_g < 0.5);
	put_salt(text, m->mgso4_g, " g of Epsom salt (MgSO4.7H2O)", &first, true);
}

/* "into each 100 L of new water 9 g of baking soda; then GH 6, KH 6". */
static void put_salts(struct ts_text *text, const struct ts_remedy *m)
{
	if (m->test_ammonia_first)
		ts_text_put(text, "test ammonia first, over which a rising pH kills; then ");
	ts_text_put(text, "dissolve in each 100 L of new water ");
	put_grams(text, m);
	put_then(text, m);
	put_pace(text, m);
}

static void put_pure(struct ts_text *text, const struct ts_remedy *m)
{
	put_figure(text, "take ", m->percent, 0,
		" L of each 100 L of new water without minerals (rain, reverse osmosis)");
	if (has_salts(m)) {
		ts_text_put(text, ", and dissolve in it ");
		put_grams(text, m);
	}
	put_then(text, m);
	put_pace(text, m);
}

static void put_tank(struct ts_text *text, const struct ts_remedy *m)
{
	put_figure(text, "a tank of at least ", m->length_cm, 0, "");
	put_figure(text, " x ", m->width_cm, 0, " cm");
	put_figure(text, ", ", m->height_cm, 0, " cm high");
}

static void put_count(struct ts_text *text, const struct ts_remedy *m)
{
	if (m->to == m->from) {
		put_figure(
			text, "keep ", m->males, 0, m->males == 1 ? " male and " : " males and ");
		put_figure(text, "", m->females, 0,
			m->females == 1 ? " female of the " : " females of the ");
		ts_say_animals(text, m->species);
		return;
	}
	put_figure(text, "keep ", m->to, 0, " ");
	(m->to == 1 ? ts_say_animal : ts_say_animals)(text, m->species);
	if (m->males && m->females) {
		put_figure(text, " (", m->males, 0, m->males == 1 ? " male, " : " males, ");
		put_figure(text, "", m->females, 0, m->females == 1 ? " female)" : " females)");
	}
	put_figure(text, " instead of ", m->from, 0, "");
}

/* Rules whose change is of the water itself: where the water is in danger, more of it harms. */
static bool of_water(enum ts_rule_id rule)
{
	return rule == TS_RULE_BUFFER || rule == TS_RULE_NITRATE || rule == TS_RULE_NITRATE_LOAD ||
	       rule == TS_RULE_OXYGEN;
}

void ts_say_step(struct ts_text *text, const struct ts_remedy *m)
{
	switch (m->kind) {
	case TS_REMEDY_ROUTINE:
		ts_text_put(text, "change ");
		ts_say_part_of(text, m->percent, m->net_l);
		ts_text_put(text, " every ");
		put_figure(text, "", m->days, 1, " days");
		break;
	case TS_REMEDY_MINERALS:
		put_salts(text, m);
		break;
	case TS_REMEDY_DILUTE:
		put_pure(text, m);
		break;
	case TS_REMEDY_WARMTH:
		put_figure(text, "keep the tank at ", m->temp_c, 1, " C");
		break;
	case TS_REMEDY_TANK:
		put_tank(text, m);
		break;
	case TS_REMEDY_NUMBER:
		put_count(text, m);
		break;
	case TS_REMEDY_LEAVE_OUT:
		ts_text_put(text, "do not buy the ");
		(m->from == 1 ? ts_say_animal : ts_say_animals)(text, m->species);
		break;
	case TS_REMEDY_OTHER_HOME:
		ts_text_put(text, "find the ");
		(m->from == 1 ? ts_say_animal : ts_say_animals)(text, m->species);
		ts_text_put(text, " another home");
		break;
	default:
		break;
	}
}

/* Whether there is something to be done while keeping all. */
static bool can_be_kept(const struct ts_ruling *r)
{
	const struct ts_remedy *m = &r->remedy;

	if (!rows[r->rule].keep)
		return false;
	if (r->rule == TS_RULE_TEMPERATURE_APART)
		return r->severity < TS_CONFLICT && r->its <= r->ours && !cold_and_warm(r);
	/* No tank of so many litres is that long. */
	if (r->rule == TS_RULE_TANK_UNMEASURED)
		return !(r->ours < r->its);
	return r->rule != TS_RULE_FEW || !(m->mends && m->kind > TS_REMEDY_NUMBER);
}

void ts_say_remedy(struct ts_text *text, const struct ts_ruling *r, bool advised)
{
	const struct ts_remedy *m = &r->remedy;
	/* "Leave one out" stands beside no condition on which both are kept. */
	bool kept = r->severity < TS_CONFLICT && can_be_kept(r) && m->kind >= TS_REMEDY_LEAVE_OUT &&
		    r->rule != TS_RULE_FEW;

	if (matures(r))
		ts_text_put(text,
			"go on without animals, until ammonia and nitrite read nil for 7 days");
	else if (advised && of_water(r->rule))
		return; /* what is advised about the water is the deed */
	else if (!kept && m->kind >= TS_REMEDY_ROUTINE && m->mends &&
		 (m->kind != TS_REMEDY_TANK || m->length_cm > 0))
		ts_say_step(text, m);
	else if (r->rule == TS_RULE_WATER_UNSURE && r->word == TS_TEMPERATURE)
		ts_text_put(text, "read it again on another thermometer");
	else if (rows[r->rule].mend && !(r->rule == TS_RULE_BUFFER && isinf(r->ours)))
		fill(text, r, rows[r->rule].mend, rows[r->rule].decimals);
}

bool ts_say_condition(struct ts_text *text, const struct ts_ruling *r)
{
	const struct ts_remedy *m = &r->remedy;

	switch (m->mends ? m->kind : TS_REMEDY_NONE) {
	case TS_REMEDY_MINERALS:
		ts_text_put(text, "the water gets more minerals");
		return true;
	case TS_REMEDY_WARMTH:
		put_figure(text, "the tank is kept at ", m->temp_c, 1, " C");
		return true;
	case TS_REMEDY_ROUTINE:
		ts_say_part_of(text, m->percent, m->net_l);
		put_figure(text,
			m->net_l > 0 ? " of the water is changed every " : " is changed every ",
			m->days, 1, " days");
		return true;
	case TS_REMEDY_NUMBER:
		if (m->to < m->from)
			break;
		put_figure(text, "there are ", m->to, 0, " ");
		ts_say_animals(text, m->species);
		return true;
	default:
		break;
	}
	if (!can_be_kept(r))
		return false;
	fill(text, r, rows[r->rule].keep, rows[r->rule].decimals);
	return true;
}
