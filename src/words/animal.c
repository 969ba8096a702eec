/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows behind words/animal.h. In braces: grown the adult length, tank the least length of tank,
 * salt the salt content it lives in, years its life, food what it must be given.
 */
#include "words/animal.h"

#include <tapshoal/match.h>

#include <math.h>
#include <string.h>

#include "stock/rules.h"
#include "words/sentence.h"

struct row {
	unsigned kind;
	int caution; /* enum ts_species_caution, or one of the following */
	const char *says;
};

/* What is no caution of the record, and is said like one. */
enum { LAND = -1, OLD_TANK = -2, EATS_PLANTS = -3, DIGS = -4 };

/* In the order in which they are said. */
/* clang-format off */
static const struct row rows[] = {
	{TS_CAUTIONS_DANGER, TS_CAUTION_VENOMOUS, "its sting needs a hospital: not for a home tank"},
	{TS_CAUTIONS_DANGER, TS_CAUTION_ELECTRIC, "its shock can throw down or kill a person: not for a home tank"},
	{TS_CAUTIONS_DANGER, TS_CAUTION_BITES, "it bites or pinches to the blood: no hand in the tank, tongs for its food"},
	{TS_CAUTIONS_DANGER, TS_CAUTION_STINGS, "its spines sting like a wasp: no bare hand near it, a doctor where it swells"},
	{TS_CAUTIONS_LAW, TS_CAUTION_RESTRICTED, "forbidden or licensed in some countries: ask your authority before you buy"},
	{TS_CAUTIONS_LAW, TS_CAUTION_PROTECTED, "protected where it comes from: take only bred ones, with papers"},
	{TS_CAUTIONS_HOME, TS_CAUTION_NO_HOME_SUITS, "grown it is {grown} cm and needs {tank} cm of length: hardly any home has that"},
	{TS_CAUTIONS_HOME, TS_CAUTION_GROWS_TOO_BIG, "outgrows the tank it is sold for: {grown} cm, and {tank} cm of length"},
	{TS_CAUTIONS_NEEDS, LAND, "needs land above the water: in a filled tank it drowns or wastes away"},
	{TS_CAUTIONS_NEEDS, TS_CAUTION_NEEDS_SALT, "lives in salted water for good: {salt} g/L"},
	{TS_CAUTIONS_NEEDS, TS_CAUTION_HARD_TO_FEED, "hard to feed: {food}"},
	{TS_CAUTIONS_NEEDS, TS_CAUTION_DIES_OF_SMALL_ERRORS, "dies of small errors of water: only for a tank that has been steady for half a year"},
	{TS_CAUTIONS_NEEDS, TS_CAUTION_ESCAPES, "jumps or climbs out: a lid without gaps"},
	{TS_CAUTIONS_KNOW, TS_CAUTION_SPINY_HANDS, "its spines hold fast in nets and hands: lift it in a box"},
	{TS_CAUTIONS_KNOW, TS_CAUTION_BREEDS_UNASKED, "breeds by itself: think of homes for the young"},
	{TS_CAUTIONS_KNOW, TS_CAUTION_SHORT_LIVED, "lives {years} years: a grown one is old already"},
	{TS_CAUTIONS_KNOW, TS_CAUTION_WILD_CAUGHT, "mostly caught in the wild: keep it apart for four weeks, and wounds out of its water"},
	{TS_CAUTIONS_KNOW, TS_CAUTION_OFTEN_SICK, "often sold sick, and then dies within months: buy from a breeder, keep it apart for four weeks"},
	{TS_CAUTIONS_TANK, OLD_TANK, "lives only in a tank that has run for half a year"},
	{TS_CAUTIONS_TANK, EATS_PLANTS, "eats plants"},
	{TS_CAUTIONS_TANK, DIGS, "digs: roots in pots, stones on the bare floor"},
};

/* In the order of the words of `feeding`. */
static const char *const feeding_says[] = {
	"dry food, and something frozen once or twice a week",
	"the finest dry food and newly hatched brine shrimps: its mouth is tiny",
	"frozen or live food on most days, dry food beside it",
	"live food, at first or for good: be sure of a supply before you buy",
	"shellfish, fish, earthworms and large pellets, every second or third day once it is grown",
	"green dry food, blanched vegetables and algae: rich food makes it ill",
	"the growth on stones, wood and leaves of an old tank, and wafers before that is gone",
	"wood to rasp at all times, wafers and vegetables",
	"sinking tablets, granules and worms, in the evening where it is shy",
	"floating food and insects: what sinks it leaves",
	"snails and hard shells every week: its teeth never stop growing",
	"food as fine as dust in the current, several times a day: it sieves the water",
	"leftovers, fallen leaves and a little wafer: more would spoil the water",
};
/* clang-format on */

static bool has(const struct ts_species *s, const struct row *row)
{
	switch (row->caution) {
	case LAND:
		return s->needs.land;
	case OLD_TANK:
		return s->habits & TS_HABIT_OLD_TANK;
	case EATS_PLANTS:
		return s->habits & TS_HABIT_EATS_PLANTS;
	case DIGS:
		return s->habits & TS_HABIT_DIGS && s->kind == TS_ANIMAL_FISH;
	default:
		return s->cautions >> row->caution & 1u;
	}
}

unsigned ts_caution_kinds(const struct ts_species *species)
{
	unsigned kinds = 0;

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		kinds |= has(species, &rows[i]) ? rows[i].kind : 0;
	return kinds;
}

static void put_years(struct ts_text *text, const struct ts_species *s)
{
	const double low = s->lives_years.low, high = s->lives_years.high;

	if (!isfinite(low))
		ts_text_put(text, "up to");
	else
		ts_text_number_short(text, low, 0);
	if (!isfinite(high))
		ts_text_put(text, " or more");
	if (!isfinite(high) || high <= low)
		return;
	ts_text_put(text, isfinite(low) ? " to " : " ");
	ts_text_number_short(text, high, 0);
}

static void put_part(struct ts_text *text, const char *name, const struct ts_species *s)
{
	if (strncmp(name, "grown", 5) == 0)
		ts_text_number_short(text, s->adult_length_cm, 0);
	else if (strncmp(name, "tank", 4) == 0)
		ts_text_number_short(text, ts_match_tank_length_cm(s), 0);
	else if (strncmp(name, "salt", 4) == 0)
		ts_say_range(text, &s->water.usual.salinity_g_l.tolerated, 1);
	else if (strncmp(name, "years", 5) == 0)
		put_years(text, s);
	else
		ts_say_feeding(text, s);
}

static void fill(struct ts_text *text, const char *pattern, const struct ts_species *s)
{
	while (*pattern) {
		size_t plain = strcspn(pattern, "{");

		ts_text_add(text, pattern, plain);
		pattern += plain;
		if (!*pattern)
			return;
		put_part(text, pattern + 1, s);
		pattern += strcspn(pattern, "}") + 1;
	}
}

/* Of the two about size the graver one is enough. */
static bool said_already(const struct ts_species *s, const struct row *row)
{
	return row->caution == TS_CAUTION_GROWS_TOO_BIG &&
	       s->cautions & 1u << TS_CAUTION_NO_HOME_SUITS;
}

void ts_say_cautions(struct ts_text *text, const struct ts_species *species, unsigned kinds)
{
	bool any = false;

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		if (!(rows[i].kind & kinds) || !has(species, &rows[i]) ||
			said_already(species, &rows[i]))
			continue;
		ts_text_put(text, any ? "; " : "");
		fill(text, rows[i].says, species);
		any = true;
	}
}

void ts_say_feeding(struct ts_text *text, const struct ts_species *species)
{
	ts_text_put(text, feeding_says[species->feeding]);
}

static const char *const whens[] = {"", " when it breeds", " where room is short"};

/* Adds "its like, smaller ones and those of the bottom". */
static void put_whom(struct ts_text *text, unsigned temper)
{
	static const char *const whom[] = {"all others", "fish that look like it", "smaller ones",
		"slow and long-finned ones", "those that live at the bottom"};
	unsigned left = temper;

	for (unsigned i = 0; i < sizeof whom / sizeof *whom; i++) {
		if (!(left >> i & 1))
			continue;
		left &= ~(1u << i);
		ts_text_puts(text,
			left == (temper & ~(1u << i)) ? ""
			: left                        ? ", "
						      : " and ",
			whom[i], NULL);
	}
}

void ts_say_temper(struct ts_text *text, const struct ts_species *species)
{
	static const char *const does[] = {"leaves", "chases", "injures"};
	unsigned temper = species->temper ? species->temper : 1;

	if (species->to_others) {
		ts_text_puts(text, does[species->to_others], " ", NULL);
		put_whom(text, temper);
		ts_text_put(text, whens[species->others_when]);
	} else {
		ts_text_put(text, "leaves others alone");
	}
	if (species->to_own_kind)
		ts_text_puts(text, ", ", does[species->to_own_kind], " its own kind",
			whens[species->own_kind_when], NULL);
	if (species->nips)
		ts_text_put(text, species->nips > 1 ? ", bites fins" : ", bites fins at times");
}

void ts_say_hunts(struct ts_text *text, const struct ts_species *species)
{
	static const char *const says[] = {
		"grazes: takes no fish beyond eggs and fry",
		"picks plankton: takes no fish beyond eggs and fry",
		"takes no fish beyond eggs and fry",
		"hunts small animals, no fish beyond eggs and fry",
		"eats fish that fit its mouth",
	};

	ts_text_put(text, says[species->hunts]);
	if (species->preys_on & 1)
		ts_text_put(text, ", eats shrimps");
	if (species->preys_on & 2)
		ts_text_put(text, ", eats snails");
}

void ts_say_lives(struct ts_text *text, const struct ts_species *species)
{
	put_years(text, species);
	ts_text_put(text, species->lives_years.high > 1 ? " years" : " year");
}

void ts_say_name(struct ts_text *out, const struct ts_species *s)
{
	const char *common = s->common.en.count ? s->common.en.items[0] : NULL;

	ts_text_put(out, common ? common : s->species);
	if (common)
		ts_text_puts(out, " (", s->species, NULL);
	if (s->form)
		ts_text_puts(out, ", ", s->form, NULL);
	ts_text_put(out, common ? ")" : "");
}

void ts_say_company(struct ts_text *out, const struct ts_species *s)
{
	bool more = s->group.comfortable > s->group.least;

	if (s->group.least <= 1 && !more) {
		ts_text_put(out, "lives well alone");
	} else {
		ts_text_put(out, "keep ");
		ts_text_number_short(out, s->group.least, 0);
		ts_text_put(out, " or more");
		if (more) {
			ts_text_put(out, ", better ");
			ts_text_number_short(out, s->group.comfortable, 0);
		}
	}
	ts_text_put(out, s->group.pair ? ", or a pair by itself" : "");
}

void ts_say_room_of(struct ts_text *out, const struct ts_species *s)
{
	ts_text_put(out, "grows to ");
	ts_text_number_short(out, s->adult_length_cm, 1);
	ts_text_put(out, " cm; grown it needs ");
	ts_text_number_short(out, ts_match_tank_length_cm(s), 0);
	ts_text_put(out, " cm of length");
}
