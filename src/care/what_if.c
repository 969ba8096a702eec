/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows. Deeds that care/advice_rows.c names too are named with the same words.
 */
#include "care/what_if.h"

#define IF(name) (1u << TS_IF_##name)
#define CARRIED (IF(MOVE) | IF(TAKEN_OVER))
#define OTHER (CARRIED | IF(NEW_SUPPLY))
#define AIR "an air pump on batteries, or water poured from a height"

/* clang-format off */
const struct ts_what_if_row ts_what_if_rows[TS_IF__COUNT] = {
	[TS_IF_POWER_CUT] = {"power-cut", "The power is off: how long does it last, and what is to be done?", TS_LASTS_OXYGEN | TS_LASTS_WARMTH | TS_LASTS_AMMONIA,
		"An electrician, where the fuse goes again as soon as the tank is plugged in: pull every plug of it at the wall with dry hands, and leave it so."},
	[TS_IF_FILTER] = {"filter", "The filter is broken: how long does it last without?", TS_LASTS_OXYGEN | TS_LASTS_AMMONIA,
		"An electrician, or the maker, for a pump that smells, hums hot or lets the fuse go; nobody opens it on the mains."},
	[TS_IF_HEATER_OFF] = {"heater", "The heater is broken: when is it too cold?", TS_LASTS_WARMTH,
		"An electrician where a heater is cracked or the fuse went: the plug is pulled at the wall before a hand goes into the water."},
	[TS_IF_HEATER_STUCK] = {"heater-stuck", "The heater does not stop: what now?", TS_LASTS_COOLING,
		"An electrician where a plug or socket is hot or brown: pull it at the wall, and leave it so."},
	[TS_IF_HOLIDAY] = {"holiday", "Nobody is there for some days: what does the tank need?", TS_LASTS_AWAY, NULL},
	[TS_IF_MOVE] = {"move", "We move house: how does the tank come along?", TS_LASTS_CARRIED | TS_LASTS_OTHER_WATER, NULL},
	[TS_IF_TAKEN_OVER] = {"taken-over", "I take over a tank with its animals: how does it come to me?", TS_LASTS_CARRIED | TS_LASTS_OTHER_WATER, NULL},
	[TS_IF_NEW_SUPPLY] = {"new-supply", "The water from the tap becomes another: what does the tank need?", TS_LASTS_OTHER_WATER,
		"The supplier, for the day of the change and the new values; a licensed person for pipes and softeners."},
	[TS_IF_HALF_YEAR] = {"half-year", "What becomes of them in half a year: how many, how large, and does the tank bear it?", TS_LASTS_GROWTH, NULL},
};

const struct ts_what_if_step ts_what_if_steps[] = {
	{IF(POWER_CUT), TS_HOLDS_ALWAYS, true, "at once", "Pull the plugs of heater and filter, and feed nothing. Look at the thermometer, and note the hour."},
	{IF(POWER_CUT), TS_HOLDS_OXYGEN_ENDS, true, "within {act}", "Move the surface: " AIR ", some jugs every quarter of an hour. Open the lid."},
	{IF(POWER_CUT), TS_HOLDS_OXYGEN_STAYS, true, "when they gasp", "Move the surface: " AIR ". Until then an open lid is enough; look at them every few hours, in the night too."},
	{IF(POWER_CUT), TS_HOLDS_COOLS, true, "within {cool_act}", "A blanket round the tank; closed bottles of warm water floating in it, changed when they are cool. Never warm it by more than 1 C an hour."},
	{IF(POWER_CUT), TS_HOLDS_ALWAYS, true, "after {stopped}", "The filter's bacteria begin to run short of oxygen: open it, and lay sponge or balls into the tank, or wet into a bowl with air around them."},
	{IF(POWER_CUT), TS_HOLDS_ALWAYS, true, "the power is back", "After more than {rinse} do not start the filter as it is: pour its water away, rinse it in tank water, start it. The heater only under water."},
	{IF(POWER_CUT), TS_HOLDS_ALWAYS, false, "the next days", "Feed nothing for two days, then half; test ammonia and nitrite every day until both read nil."},
	{IF(FILTER), TS_HOLDS_ALWAYS, true, "at once", "Pull its plug, and feed nothing."},
	{IF(FILTER), TS_HOLDS_OXYGEN_ENDS, true, "within {act}", "Move the surface: " AIR "."},
	{IF(FILTER), TS_HOLDS_OXYGEN_STAYS, true, "at once", "Move the surface where you can; by itself it lets in enough for them."},
	{IF(FILTER), TS_HOLDS_ALWAYS, true, "within {stopped}", "Keep what was in it wet and in air: sponge or balls in the tank, never in tap water, never dry."},
	{IF(FILTER), TS_HOLDS_ALWAYS, true, "today", "Get another filter, one driven by air will do, and put the old sponge or balls into it: then it works at once."},
	{IF(FILTER), TS_HOLDS_ALWAYS, false, "until it runs", "Test ammonia every day, and from the first trace change {daily} a day for treated water of the same warmth."},
	{IF(FILTER), TS_HOLDS_ALWAYS, false, "then", "With the old sponge: two days without feed, then half, and test ammonia and nitrite every day until both read nil. Without it the filter is new and takes weeks: feed little, and go on changing."},
	{IF(HEATER_OFF), TS_HOLDS_ALWAYS, true, "at once", "Pull its plug at the wall, then read a second thermometer. Feed nothing while it is too cold."},
	{IF(HEATER_OFF), TS_HOLDS_COOLS, true, "within {cool_act}", "Warm the room, a blanket round the tank, and closed bottles of warm water floating in it, changed when they are cool."},
	{IF(HEATER_OFF), TS_HOLDS_ALWAYS, true, "with the new one", "Let it hang in the water for a quarter of an hour before it is plugged in, and bring the tank up by 1 C an hour at most."},
	{IF(HEATER_OFF), TS_HOLDS_ALWAYS, false, "the next week", "Watch for white spots and clamped fins, which follow cold; no newcomers."},
	{IF(HEATER_STUCK), TS_HOLDS_ALWAYS, true, "at once", "Pull its plug, air on strongly, lights off, lid open."},
	{IF(HEATER_STUCK), TS_HOLDS_ALWAYS, true, "the next hours", "Let it come down by itself, by 1 C an hour at most: a fan across the surface if it does not; no ice, and no cold water into the tank. Feed nothing today."},
	{IF(HEATER_STUCK), TS_HOLDS_ALWAYS, false, "before the night", "A heater that works, with a thermometer of its own beside it; of two small ones neither can cook the tank."},
	{IF(HOLIDAY), TS_HOLDS_ALWAYS, false, "a week before", "Look that heater, filter and timer work; clean the filter now if it is to be done, and not later."},
	{IF(HOLIDAY), TS_HOLDS_ALWAYS, true, "three days before", "Change water, and test nitrate and KH. No new animals, no new machines from now on."},
	{IF(HOLIDAY), TS_HOLDS_ALWAYS, true, "the last day", "Fill up, for {evaporates} will be gone. Feed once, little. Lamp on a timer."},
	{IF(HOLIDAY), TS_HOLDS_YOUNG, true, "meanwhile", "Those that are not grown cannot fast for so long: somebody feeds them every day or two, with portions packed by you."},
	{IF(HOLIDAY), TS_HOLDS_AWAY_LONG, true, "meanwhile", "Somebody looks in every second day: a portion packed by you and nothing more, the thermometer, who is at the surface, water filled up. Your number and a keeper's are on the lid."},
	{IF(HOLIDAY), TS_HOLDS_ALWAYS, false, "when you are back", "Count them, feed little, test nitrate and KH, and change water by your routine: not twice as much at once."},
	{IF(TAKEN_OVER), TS_HOLDS_ALWAYS, false, "a week before", "Ask who has it now: GH, KH, pH and nitrate, or take a bottle of it home and read them; how old they are, what they eat, how much water is changed. An old tank may be far from any tap."},
	{IF(MOVE), TS_HOLDS_ALWAYS, false, "a week before", "Read GH, KH, pH, ammonia, nitrite and nitrate of the tank, and the water there, stood a day. Clean the filter now and not later."},
	{CARRIED, TS_HOLDS_ALWAYS, false, "two days before", "Feed nothing from now on: they foul less water on the way."},
	{CARRIED, TS_HOLDS_ALWAYS, true, "before you go", "Plugs out; a quarter of an hour later the heater may leave the water. Draw off the boxes' water first, from the top; then the animals, each kind by itself, in the dark."},
	{CARRIED, TS_HOLDS_ALWAYS, true, "on the way", "Sponge or balls of the filter wet with tank water, in an open bucket, not in a closed filter. Bed and plants wet. Tank empty, flat, on something soft: it never travels with water in it."},
	{CARRIED, TS_HOLDS_FAR, true, "there, first", "Fill the tank with water made like theirs: {recipe}. Filter, heater and air on; wait until it is as warm as the boxes."},
	{CARRIED, TS_HOLDS_NEAR, true, "there, first", "Fill the tank with treated water of the same warmth, the old water you brought with it. Filter, heater and air on."},
	{CARRIED, TS_HOLDS_LONG_WAY, true, "there, first", "The filter was more than {rinse} on its way: rinse it in tank water before it runs, and take it as new: ammonia and nitrite every day."},
	{CARRIED, TS_HOLDS_ALWAYS, true, "then", "Hold the box water and the tank side by side: warmth within 2 C, GH and KH alike. Lift the animals over with a net or a cup; the water of the boxes is thrown away. Lights stay off."},
	{CARRIED, TS_HOLDS_ALWAYS, true, "the first night", "No feed, air on, a look after an hour and before you sleep: who gasps, who lies, what the thermometer says."},
	{CARRIED, TS_HOLDS_ALWAYS, false, "the first week", "Test ammonia and nitrite every day; feed half from the second day on; no newcomers for four weeks."},
	{IF(NEW_SUPPLY), TS_HOLDS_ALWAYS, false, "before it comes", "Ask the supplier for GH, KH and the day, and read the new water, stood a day, as soon as it runs. Draw some canisters of the old one."},
	{IF(NEW_SUPPLY), TS_HOLDS_FAR, false, "at the first changes", "Give the new water what the old one had before it goes in: {recipe}."},
	{OTHER, TS_HOLDS_OVER, false, "from the second week", "Go over to the water there by the stages below, or go on making it like theirs: that is no less good."},
	{IF(NEW_SUPPLY), TS_HOLDS_NEAR, false, "then", "It is near enough: change as much as ever, treated and of the same warmth."},
	{IF(HALF_YEAR), TS_HOLDS_BEARS, true, "now", "Males alone bear no young: part the sexes, or find out who takes the young, before there are any: a club, a shop, another keeper. Nobody is ever set free."},
	{IF(HALF_YEAR), TS_HOLDS_SHRIMPS, true, "now", "Find out who takes some: a club, a shop, another keeper. Their number comes to rest by what they find to eat: feed less and there are fewer. Nobody is ever set free."},
	{IF(HALF_YEAR), TS_HOLDS_BREEDS, true, "every month", "Count them, and give away what is too many while they are small; test nitrate, which tells first that they are too many."},
	{IF(HALF_YEAR), TS_HOLDS_BEARS, false, "if it goes on", "Do not buy an animal that eats the young as a remedy: it is grown before they are fewer. Females carry young for months without a male."},
	{IF(HALF_YEAR), TS_HOLDS_OUTGROWS, true, "before they are grown", "A larger tank, or a home in one: look for it now, while they are small and somebody wants them. Growing up in too little room cripples them."},
	{IF(HALF_YEAR), TS_HOLDS_STAYS, true, "as ever", "Go on with your routine; nobody breeds in it by itself, and nobody of them grows out of it."},
};
/* clang-format on */

const size_t ts_what_if_step_count = sizeof ts_what_if_steps / sizeof *ts_what_if_steps;

const char ts_what_if_vet[] =
	"A vet for fish, where animals lie, gasp or bleed although what is said above is done.";

/* What people write for the ids. */
static const struct {
	const char *word;
	enum ts_what_if is;
} also[] = {
	{"power cut", TS_IF_POWER_CUT},
	{"power", TS_IF_POWER_CUT},
	{"outage", TS_IF_POWER_CUT},
	{"power outage", TS_IF_POWER_CUT},
	{"broken filter", TS_IF_FILTER},
	{"filter broken", TS_IF_FILTER},
	{"filter failure", TS_IF_FILTER},
	{"heater failure", TS_IF_HEATER_OFF},
	{"heater broken", TS_IF_HEATER_OFF},
	{"broken heater", TS_IF_HEATER_OFF},
	{"heater stuck", TS_IF_HEATER_STUCK},
	{"overheated", TS_IF_HEATER_STUCK},
	{"away", TS_IF_HOLIDAY},
	{"vacation", TS_IF_HOLIDAY},
	{"holidays", TS_IF_HOLIDAY},
	{"moving", TS_IF_MOVE},
	{"moving house", TS_IF_MOVE},
	{"taken over", TS_IF_TAKEN_OVER},
	{"six months", TS_IF_HALF_YEAR},
	{"in six months", TS_IF_HALF_YEAR},
	{"half a year", TS_IF_HALF_YEAR},
	{"grow", TS_IF_HALF_YEAR},
	{"growth", TS_IF_HALF_YEAR},
	{"young", TS_IF_HALF_YEAR},
	{"new supplier", TS_IF_NEW_SUPPLY},
	{"new water", TS_IF_NEW_SUPPLY},
	{"new tap", TS_IF_NEW_SUPPLY},
};

static char plain(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c | 0x20) : c == '_' || c == '-' ? ' ' : c;
}

static bool same(const char *a, const char *b)
{
	while (*a && plain(*a) == plain(*b)) {
		a++;
		b++;
	}
	return !*a && !*b;
}

const struct ts_what_if_row *ts_what_if_of(const char *word)
{
	for (size_t i = 0; i < TS_IF__COUNT; i++) {
		if (same(ts_what_if_rows[i].id, word))
			return &ts_what_if_rows[i];
	}
	for (size_t i = 0; i < sizeof also / sizeof *also; i++) {
		if (same(also[i].word, word))
			return &ts_what_if_rows[also[i].is];
	}
	return NULL;
}
