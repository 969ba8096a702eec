/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A template a rule. In braces: a, b the two animals; ours, its, change the numbers; word the
 * current or light that it is about; cautions all of the animal's; ground what it wants below it;
 * most, longest, litres the room that only a volume tells; atemp, btemp their temperatures; fit how
 * the water suits; name what was not found. The rules stand in stock/rules.c.
 */
#include "words/rulings.h"

#include <string.h>

#include "words/animal.h"
#include "words/sentence.h"

struct row {
	const char *says, *change;
	int decimals;
};

#define NO_MATTER "leave one of the two out"

/* clang-format off */
static const struct row rows[TS_RULE__COUNT] = {
	[TS_RULE_CAUTION] = {"{a}: {cautions}", NULL, 0},
	[TS_RULE_COVER] = {"{a}: leaves the water, and the tank is not said to be covered", "cover the tank tightly", 0},
	[TS_RULE_EATS_PLANTS] = {"{a}: eats plants, and there are some", "tough plants, or none", 0},
	[TS_RULE_FEW] = {"{a}: {ours} planned, settled from {its}", "add {change} or leave them out", 0},
	[TS_RULE_FLOW] = {"{a}: wants {word} water, and the tank has another current", "turn the filter's outlet until part of the tank is {word}", 0},
	[TS_RULE_FORMS_CROSS] = {"{a}: {ours} forms of one animal, which cross: the young go back to plain colours", "keep one form", 0},
	[TS_RULE_LAND] = {"{a}: needs land above the water, in a filled tank it drowns or wastes away", "fill the tank half, with land to climb on, and write water_level: half; else do not buy it", 0},
	[TS_RULE_LIGHT] = {"{a}: wants {word} light, and the tank has another", "give it a corner of its own: plants, roots or open light", 0},
	[TS_RULE_OLD_TANK] = {"{a}: lives only in tanks that have run for months", "buy it last, when the tank has been steady for half a year", 0},
	[TS_RULE_OWN_KIND] = {"{a}: {ours} planned, one alone is borne: they fight to injury", "keep 1", 0},
	[TS_RULE_PAIR_FORMS] = {"{a}: {ours} planned; they grow into a pair and its victims", "keep a pair, and have a place for the rest", 0},
	[TS_RULE_SAND] = {"{a}: {ground}", "sand or fine rounded gravel instead, at least over a third of the floor", 0},
	[TS_RULE_SEXES] = {"{a}: {ours} males planned, the females bear {its}", "{change} males fewer, or females more", 0},
	[TS_RULE_SPECIALIST] = {"{a}: takes only special food; see what it eats in the record", NULL, 0},
	[TS_RULE_TANK_HEIGHT] = {"{a}: tank {ours} cm high{most}, its body needs {its}", "a higher tank, or leave it out", 0},
	[TS_RULE_TANK_LENGTH] = {"{a}: tank {ours} cm long, grown it needs {its}", "a longer tank, or leave it out", 0},
	[TS_RULE_TANK_UNMEASURED] = {"{a}: grown it needs a tank {its} cm long, and length or width is not given{longest}", "measure the tank", 0},
	[TS_RULE_TANK_WIDTH] = {"{a}: tank {ours} cm wide{most}, to turn it needs {its}", "a wider tank, or leave it out", 0},
	[TS_RULE_TERRITORY] = {"{a}: floor {ours} m2{most}, as many need {its}", "fewer of them, or a larger floor", 2},
	[TS_RULE_UNSETTLED] = {"{a}: {ours} planned, comfortable from {its}", "{change} more, where there is room", 0},
	[TS_RULE_YOUNG] = {"{a}: {ours} now are about {its} in six months, if a fifth of the young grow up", "keep one sex, or have homes for the young before there are any", 0},
	[TS_RULE_ATTACKED] = {"{a}: {b} injures its company; floor {ours} m2, others need {its}", NO_MATTER, 2},
	[TS_RULE_CHASED] = {"{a}: {b} chases its company; floor {ours} m2, peace from {its}", "hiding places and a divided view, or leave one of the two out", 2},
	[TS_RULE_CROSSES] = {"{a}: crosses with {b}, and the young are mongrels", "keep one of the two, or one sex of both", 0},
	[TS_RULE_EATEN] = {"{a}: {ours} cm when bought, {b} swallows its like up to {its}", "leave one of the two out, or buy it grown where that is larger", 1},
	[TS_RULE_ELECTRIC] = {"{a}: {b} stuns or kills what lives with it", "keep {b} alone", 0},
	[TS_RULE_FIN_NIPPER] = {"{a}: {b} bites fins{calmer}", "no {b} beside long fins and feelers: a larger shoal eases it and does not end it", 0},
	[TS_RULE_FLOW_APART] = {"{a}: wants still water, {b} a strong current", NO_MATTER, 0},
	[TS_RULE_GH_APART] = {"{a}: lives to GH {ours}, {b} from {its}", NO_MATTER, 1},
	[TS_RULE_LABYRINTH] = {"{a}: claims the surface against {b}{litres}", "one kind of labyrinth fish", 0},
	[TS_RULE_LAKE_APART] = {"{a}: belongs among animals of its own lake, and {b} is none", "do not keep the two together", 0},
	[TS_RULE_LIGHT_APART] = {"{a}: wants shade, {b} bright light", "floating plants over one half", 0},
	[TS_RULE_NIGHT_HUNTER] = {"{a}: {ours} cm, and {b} hunts at night what nearly fits {its}", NO_MATTER, 1},
	[TS_RULE_OUTCOMPETED] = {"{a}: {b} is quicker at the food", "feed both at once at two ends, and watch that it eats", 0},
	[TS_RULE_PH_APART] = {"{a}: lives to pH {ours}, {b} from {its}", NO_MATTER, 1},
	[TS_RULE_RIVALS] = {"{a}: takes {b} for a rival; floor {ours} m2, both need {its}", NO_MATTER, 2},
	[TS_RULE_SALT_APART] = {"{a}: bears {ours} g/L salt, {b} needs {its}", NO_MATTER, 1},
	[TS_RULE_SHRIMPS_EATEN] = {"{a}: {b} eats shrimps", NO_MATTER, 0},
	[TS_RULE_SNAILS_EATEN] = {"{a}: {b} eats snails", NO_MATTER, 0},
	[TS_RULE_TEMPERATURE_APART] = {"{a}: {atemp}, {b} {btemp}", NO_MATTER, 1},
	[TS_RULE_AMMONIA] = {"ammonia {ours} mg/L N, borne to {its}: the filter is not coping", "feed nothing, and see what to do about the water", 2},
	[TS_RULE_BUFFER] = {"the buffer lasts {ours} days, the water is changed every {its} days", "change more water or more often, or keep fewer animals", 0},
	[TS_RULE_CHLORINE] = {"chlorine {ours} mg/L, borne to {its}", "treat the water before any animal meets it", 3},
	[TS_RULE_DISTRESS] = {"signs of distress: {ours}, unexplained deaths: {its}", "find the cause before anything else; a vet decides about sick animals", 0},
	[TS_RULE_EMPTY] = {"no animal is named", "name the animals under stock", 0},
	[TS_RULE_FILTER] = {"the filter is not known to be mature", "mature it without animals first, then buy in thirds, 14 days apart, with a test before each", 0},
	[TS_RULE_FLOOR] = {"floor {ours} m2, the territories of all need {its}", "fewer species that hold ground, or a larger floor", 2},
	[TS_RULE_KH_UNKNOWN] = {"KH is not given: how long the buffer lasts cannot be said", "test KH with drops", 0},
	[TS_RULE_MANY_SPECIES] = {"{ours} species planned, {its} keep a tank of this size steady", "fewer species, more of each", 0},
	[TS_RULE_NEWCOMERS] = {"newcomers are planned on top of sick animals: {ours} species", "buy nothing until all is well for four weeks", 0},
	[TS_RULE_NITRATE] = {"nitrate {ours} mg/L, comfortable to {its}", "small changes, more often, until it falls", 0},
	[TS_RULE_NITRATE_LOAD] = {"nitrate will settle at {ours} mg/L, comfortable to {its}", "fewer animals, less feed, or more water changed", 0},
	[TS_RULE_NITRITE] = {"nitrite {ours} mg/L N, borne to {its}: the filter is not coping", "feed nothing, and see what to do about the water", 3},
	[TS_RULE_OXYGEN] = {"oxygen {ours} mg/L, enough from {its}: {change} too little", "move the surface more, day and night, and feed half", 1},
	[TS_RULE_TEMPERATURE_UNKNOWN] = {"what the tank runs at is not given", "write temperature: 24..26 C into the tank", 0},
	[TS_RULE_UNKNOWN_SPECIES] = {"'{name}' is no name in the catalogue", "write another of its names; an unknown animal never passes", 0},
	[TS_RULE_UNTESTED] = {"ammonia and nitrite of the running tank are not both known", "test both; each must read nil", 0},
	[TS_RULE_WARM_OXYGEN] = {"{its} C: such warm water holds {ours} mg/L of oxygen at the most", "keep the surface moving", 1},
	[TS_RULE_WATER] = {"{a}: {fit}", "leave it out", 1},
	[TS_RULE_WATER_UNKNOWN] = {"no water was measured", "GH first, with a drop kit: it decides most", 0},
	[TS_RULE_WATER_UNSURE] = {"{a}: unsure; {fit}", "measure that again, with drops", 1},
};
/* clang-format on */

void ts_say_animal(struct ts_text *text, const struct ts_species *s)
{
	ts_text_put(text, s->common.en.count ? s->common.en.items[0] : s->species);
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

/* How the water fits the animal: what decides, in the house sentence. */
static void put_fit(struct ts_text *text, const struct ts_ruling *r)
{
	const struct ts_match *m = r->match;

	if (!isnan(m->copper_borne_mg_l)) {
		ts_text_put(text, "copper ");
		put_number(text, r->ours, 3);
		ts_text_put(text, " mg/L, borne to ");
		put_number(text, m->copper_borne_mg_l, 3);
	} else if (m->gh_missing) {
		ts_text_put(text, "GH is not given, and it decides most");
	} else if (r->word < 0) {
		ts_text_put(text, "what was measured leaves it open");
	} else {
		ts_say_parameter(text, (enum ts_parameter)r->word, &m->at[r->word]);
	}
}

/* A full group is as calm as they get: nothing is to be said of it then. */
static void put_calmer(struct ts_text *text, const struct ts_ruling *r, int decimals)
{
	if (!(r->ours < r->its))
		return;
	ts_text_put(text, "; ");
	put_number(text, r->ours, decimals);
	ts_text_put(text, " of them, calmer from ");
	put_number(text, r->its, decimals);
}

/* Ends that exclude are limits of life, other ones those of comfort. */
static void put_temperature(
	struct ts_text *text, const struct ts_ruling *r, const struct ts_species *s)
{
	const struct ts_envelope *t = &s->water.usual.temp_c;
	bool ends = r->severity == TS_CONFLICT;

	ts_text_put(text, ends ? "lives at " : "comfortable at ");
	ts_say_range(text, ends ? &t->tolerated : &t->preferred, 1);
	ts_text_put(text, " C");
}

/* Rooms that only the volume tells: their favourable end. */
static void put_room(struct ts_text *text, const struct ts_ruling *r, const char *name)
{
	if (strncmp(name, "most", 4) == 0) {
		ts_text_put(text, r->word ? " at the most" : "");
		return;
	}
	if (!isfinite(r->ours))
		return;
	ts_text_put(
		text, strncmp(name, "longest", 7) == 0 ? "; its volume makes " : " in a tank of ");
	put_number(text, r->ours, 0);
	ts_text_put(text, strncmp(name, "longest", 7) == 0 ? " cm at the most" : " L");
}

static void put_ground(struct ts_text *text, const struct ts_ruling *r)
{
	ts_text_put(text, r->word == 1
				  ? "feels for its food with barbels, which coarse gravel wears off"
				  : "digs into sand or sifts it, and there is none");
}

static void put_part(
	struct ts_text *text, const struct ts_ruling *r, const char *name, size_t len, int decimals)
{
	if (strncmp(name, "a", len) == 0)
		ts_say_animal(text, r->subject);
	else if (strncmp(name, "b", len) == 0)
		ts_say_animal(text, r->other);
	else if (strncmp(name, "word", len) == 0)
		ts_text_put(text, word_of(r));
	else if (strncmp(name, "cautions", len) == 0)
		ts_say_cautions(text, r->subject, TS_CAUTIONS_ALL);
	else if (strncmp(name, "ground", len) == 0)
		put_ground(text, r);
	else if (strncmp(name, "most", len) == 0 || strncmp(name, "longest", len) == 0 ||
		 strncmp(name, "litres", len) == 0)
		put_room(text, r, name);
	else if (strncmp(name, "atemp", len) == 0)
		put_temperature(text, r, r->subject);
	else if (strncmp(name, "btemp", len) == 0)
		put_temperature(text, r, r->other);
	else if (strncmp(name, "name", len) == 0)
		ts_text_put(text, r->name);
	else if (strncmp(name, "fit", len) == 0)
		put_fit(text, r);
	else if (strncmp(name, "calmer", len) == 0)
		put_calmer(text, r, decimals);
	else if (strncmp(name, "ours", len) == 0)
		put_number(text, r->ours, decimals);
	else if (strncmp(name, "its", len) == 0)
		put_number(text, r->its, decimals);
	else
		put_number(text, r->change, decimals);
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

void ts_say_ruling(struct ts_text *text, const struct ts_ruling *r)
{
	const char *says = rows[r->rule].says;

	if (r->rule == TS_RULE_NITRATE_LOAD && isinf(r->ours))
		says = "no water is changed: nitrate rises without end, comfortable to {its}";
	else if (r->rule == TS_RULE_BUFFER && isinf(r->ours))
		says = "the buffer is small, and this routine keeps it";
	fill(text, r, says, rows[r->rule].decimals);
}

/* Rules whose change is of the water itself: where the water is in danger, more of it harms. */
static bool of_water(enum ts_rule_id rule)
{
	static const enum ts_rule_id rules[] = {
		TS_RULE_BUFFER, TS_RULE_NITRATE, TS_RULE_NITRATE_LOAD};

	for (size_t i = 0; i < sizeof rules / sizeof *rules; i++) {
		if (rules[i] == rule)
			return true;
	}
	return false;
}

void ts_say_change(struct ts_text *text, const struct ts_ruling *r, bool advised)
{
	if (advised && of_water(r->rule))
		ts_text_put(text, "as the advice on the water says, and no more at once");
	else if (rows[r->rule].change)
		fill(text, r, rows[r->rule].change, rows[r->rule].decimals);
}
