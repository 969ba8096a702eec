/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The table of the rules of living together, and its two walks. The functions stand next door, the
 * sentences in words/rulings.c; docs/methods.md prints these rows.
 */
#include "stock/rules.h"
#include "stock/room.h"

#define COMMON "common practice, no source"
#define DIRECTION "common practice, no source; figure an estimate from memory"
#define COMPUTED "computed from the two records"

#define FREE (-1)
#define LIGHT TS_P_COST_LIGHT
#define MIDDLE TS_P_COST_MIDDLE
#define HEAVY TS_P_COST_HEAVY

/* clang-format off */
const struct ts_rule_row ts_rule_rows[TS_RULE__COUNT] = {
	[TS_RULE_CAUTION] = {"stock.caution", NULL, "the record carries a caution that the buyer must know", COMMON, TS_SCOPE_ALONE, FREE, TS_TOPIC_CARE},
	[TS_RULE_COVER] = {"stock.cover", "cover", "an animal that leaves the water needs a tight lid", COMMON, TS_SCOPE_ALONE, LIGHT, TS_TOPIC_ROOM},
	[TS_RULE_EATS_PLANTS] = {"stock.eats-plants", "plants", "it eats plants, and there are plants", COMMON, TS_SCOPE_ALONE, LIGHT, TS_TOPIC_CARE},
	[TS_RULE_FEW] = {"stock.few", "count", "fewer than settle: shy, sick or quarrelsome", COMMON, TS_SCOPE_ALONE, HEAVY, TS_TOPIC_COMPANY},
	[TS_RULE_FLOW] = {"stock.flow", "flow", "the current of the tank is not its own", COMMON, TS_SCOPE_ALONE, LIGHT, TS_TOPIC_ROOM},
	[TS_RULE_FORMS_CROSS] = {"stock.forms-cross", NULL, "colour forms of one animal cross, and the young lose the colours", COMMON, TS_SCOPE_ALONE, FREE, TS_TOPIC_CARE},
	[TS_RULE_LAND] = {"stock.land", "water level", "it needs land above the water", COMMON, TS_SCOPE_ALONE, HEAVY, TS_TOPIC_ROOM},
	[TS_RULE_LIGHT] = {"stock.light", "light", "the light of the tank is not its own", COMMON, TS_SCOPE_ALONE, FREE, TS_TOPIC_CARE},
	[TS_RULE_OLD_TANK] = {"stock.old-tank", "filter", "it lives only in tanks that have run for long", COMMON, TS_SCOPE_ALONE, HEAVY, TS_TOPIC_CARE},
	[TS_RULE_OWN_KIND] = {"stock.own-kind", "count", "it fights its own kind to injury, always", COMMON, TS_SCOPE_ALONE, HEAVY, TS_TOPIC_COMPANY},
	[TS_RULE_PAIR_FORMS] = {"stock.pair-forms", "count", "young ones grow into a pair and its victims", COMMON, TS_SCOPE_ALONE, MIDDLE, TS_TOPIC_COMPANY},
	[TS_RULE_SAND] = {"stock.sand", "substrate", "barbels and sifters suffer on coarse gravel", COMMON, TS_SCOPE_ALONE, MIDDLE, TS_TOPIC_ROOM},
	[TS_RULE_SEXES] = {"stock.sexes", "count", "too many males for the females", COMMON, TS_SCOPE_ALONE, MIDDLE, TS_TOPIC_COMPANY},
	[TS_RULE_SPECIALIST] = {"stock.specialist", NULL, "it takes only special food", COMMON, TS_SCOPE_ALONE, FREE, TS_TOPIC_CARE},
	[TS_RULE_TANK_HEIGHT] = {"stock.tank-height", "tank height", "the tank is lower than its body needs", COMMON, TS_SCOPE_ALONE, MIDDLE, TS_TOPIC_ROOM},
	[TS_RULE_TANK_LENGTH] = {"stock.tank-length", "tank length", "the tank is shorter than an adult needs", COMMON, TS_SCOPE_ALONE, HEAVY, TS_TOPIC_ROOM},
	[TS_RULE_TANK_UNMEASURED] = {"stock.tank-unmeasured", "tank length", "the sides of the tank are not given, and tanks of its litres are usually too short", COMMON, TS_SCOPE_ALONE, LIGHT, TS_TOPIC_ROOM},
	[TS_RULE_TANK_WIDTH] = {"stock.tank-width", "tank width", "the tank is narrower than an adult needs to turn", COMMON, TS_SCOPE_ALONE, MIDDLE, TS_TOPIC_ROOM},
	[TS_RULE_TERRITORY] = {"stock.territory", "floor", "the floor is smaller than the territories it defends against its own kind", COMMON, TS_SCOPE_ALONE, HEAVY, TS_TOPIC_ROOM},
	[TS_RULE_UNSETTLED] = {"stock.unsettled", "count", "settled, and comfortable only in greater numbers", COMMON, TS_SCOPE_ALONE, FREE, TS_TOPIC_COMPANY},
	[TS_RULE_YOUNG] = {"stock.young", "count", "it bears young month after month", DIRECTION, TS_SCOPE_ALONE, FREE, TS_TOPIC_CARE},
	[TS_RULE_ATTACKED] = {"stock.attacked", "floor", "the other injures its company", COMMON, TS_SCOPE_PAIR, HEAVY, TS_TOPIC_COMPANY},
	[TS_RULE_CHASED] = {"stock.chased", "floor", "the other chases its company", COMMON, TS_SCOPE_PAIR, LIGHT, TS_TOPIC_COMPANY},
	[TS_RULE_CROSSES] = {"stock.crosses", NULL, "the two have mongrel young", COMMON, TS_SCOPE_PAIR, MIDDLE, TS_TOPIC_COMPANY},
	[TS_RULE_EATEN] = {"stock.eaten", "length", "it fits the other's mouth, grown or as sold", DIRECTION, TS_SCOPE_PAIR, HEAVY, TS_TOPIC_COMPANY},
	[TS_RULE_ELECTRIC] = {"stock.electric", NULL, "the other stuns or kills what lives with it", COMMON, TS_SCOPE_PAIR, HEAVY, TS_TOPIC_COMPANY},
	[TS_RULE_FIN_NIPPER] = {"stock.fin-nipper", "count", "the other bites fins, above all long ones", COMMON, TS_SCOPE_PAIR, MIDDLE, TS_TOPIC_COMPANY},
	[TS_RULE_FLOW_APART] = {"stock.flow-apart", "flow", "one wants still water, the other a current", COMMON, TS_SCOPE_PAIR, MIDDLE, TS_TOPIC_COMPANY},
	[TS_RULE_GH_APART] = {"stock.gh-apart", "gh", "hardly any hardness that both tolerate", COMPUTED, TS_SCOPE_PAIR, MIDDLE, TS_TOPIC_WATER},
	[TS_RULE_LABYRINTH] = {"stock.labyrinth", "volume", "two kinds of labyrinth fish claim one surface", COMMON, TS_SCOPE_PAIR, HEAVY, TS_TOPIC_COMPANY},
	[TS_RULE_LAKE_APART] = {"stock.lake-apart", NULL, "cichlids of the African lakes belong among animals of their own lake", COMMON, TS_SCOPE_PAIR, HEAVY, TS_TOPIC_COMPANY},
	[TS_RULE_LIGHT_APART] = {"stock.light-apart", "light", "one wants shade, the other bright light", COMMON, TS_SCOPE_PAIR, FREE, TS_TOPIC_COMPANY},
	[TS_RULE_NIGHT_HUNTER] = {"stock.night-hunter", "length", "the other hunts at night what sleeps then", DIRECTION, TS_SCOPE_PAIR, HEAVY, TS_TOPIC_COMPANY},
	[TS_RULE_OUTCOMPETED] = {"stock.outcompeted", NULL, "the other is quicker at the food", COMMON, TS_SCOPE_PAIR, LIGHT, TS_TOPIC_COMPANY},
	[TS_RULE_PH_APART] = {"stock.ph-apart", "ph", "no pH that both tolerate", COMPUTED, TS_SCOPE_PAIR, MIDDLE, TS_TOPIC_WATER},
	[TS_RULE_RIVALS] = {"stock.rivals", "floor", "close relatives that defend a place against each other", COMMON, TS_SCOPE_PAIR, MIDDLE, TS_TOPIC_COMPANY},
	[TS_RULE_SALT_APART] = {"stock.salt-apart", "salinity", "one needs salt that the other does not bear", COMPUTED, TS_SCOPE_PAIR, HEAVY, TS_TOPIC_WATER},
	[TS_RULE_SHRIMPS_EATEN] = {"stock.shrimps-eaten", "length", "the other eats shrimps, whatever its mouth", COMMON, TS_SCOPE_PAIR, MIDDLE, TS_TOPIC_COMPANY},
	[TS_RULE_SNAILS_EATEN] = {"stock.snails-eaten", NULL, "the other eats snails", COMMON, TS_SCOPE_PAIR, HEAVY, TS_TOPIC_COMPANY},
	[TS_RULE_TEMPERATURE_APART] = {"stock.temperature-apart", "temp", "hardly any temperature that both bear", COMPUTED, TS_SCOPE_PAIR, MIDDLE, TS_TOPIC_TEMPERATURE},
	[TS_RULE_AMMONIA] = {"stock.ammonia", "tan", "ammonia stands in the water: the filter is not coping", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_DANGER},
	[TS_RULE_BUFFER] = {"stock.buffer", "kh", "the buffer is short, or will not last from change to change", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_WASTE},
	[TS_RULE_BUFFER_OPEN] = {"stock.buffer-open", "kh", "whether the buffer lasts depends on feeding and water changes that were not given", COMPUTED, TS_SCOPE_PLAN, FREE, TS_TOPIC_WASTE},
	[TS_RULE_CHLORINE] = {"stock.chlorine", "chlorine", "chlorine stands in the water", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_DANGER},
	[TS_RULE_COUNT_ASSUMED] = {"stock.count-assumed", "count", "how many is not given: the least that the animal wants is taken", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_CARE},
	[TS_RULE_CROWDED] = {"stock.crowded", "volume", "more grown fish than the water of this tank has room for", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_ROOM},
	[TS_RULE_DISTRESS] = {"stock.distress", "signs", "animals show distress, or died without a reason", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_DANGER},
	[TS_RULE_EMPTY] = {"stock.empty", "count", "the plan names no animal", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_NAME},
	[TS_RULE_FILTER] = {"stock.filter", "filter", "animals are planned, and the filter is not mature", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_CARE},
	[TS_RULE_FILTER_UNKNOWN] = {"stock.filter-unknown", "filter", "animals are planned, and nothing is said of the filter", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_CARE},
	[TS_RULE_FLOOR] = {"stock.floor", "floor", "the territories of all together are larger than the floor", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_ROOM},
	[TS_RULE_KH_UNKNOWN] = {"stock.kh-unknown", "kh", "KH is not given, so how long the buffer lasts cannot be said", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_WATER},
	[TS_RULE_LITRES] = {"stock.litres", "volume", "the litres given are far fewer than the smallest tank for all of them holds", COMPUTED, TS_SCOPE_PLAN, FREE, TS_TOPIC_ROOM},
	[TS_RULE_MANY_SPECIES] = {"stock.many-species", "species", "more species than a tank of this size keeps steady", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_CARE},
	[TS_RULE_NEWCOMERS] = {"stock.newcomers", "signs", "newcomers are planned on top of sick animals", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_DANGER},
	[TS_RULE_NITRATE] = {"stock.nitrate", "no3", "nitrate as measured is high", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_WASTE},
	[TS_RULE_NITRATE_LOAD] = {"stock.nitrate-load", "no3", "these animals will raise nitrate too high", DIRECTION, TS_SCOPE_PLAN, FREE, TS_TOPIC_WASTE},
	[TS_RULE_NITRATE_OPEN] = {"stock.nitrate-open", "no3", "where nitrate settles depends on feeding and water changes that were not given", COMPUTED, TS_SCOPE_PLAN, FREE, TS_TOPIC_WASTE},
	[TS_RULE_NITRITE] = {"stock.nitrite", "no2", "nitrite stands in the water: the filter is not coping", DIRECTION, TS_SCOPE_PLAN, FREE, TS_TOPIC_DANGER},
	[TS_RULE_OXYGEN] = {"stock.oxygen", "oxygen", "the tank holds too little oxygen", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_DANGER},
	[TS_RULE_SIDES_ASSUMED] = {"stock.sides-assumed", "tank length", "the litres of the tank are given and its sides are not", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_ROOM},
	[TS_RULE_TANK_UNKNOWN] = {"stock.tank-unknown", "tank length", "no tank is given: the smallest that would do is said", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_ROOM},
	[TS_RULE_TEMPERATURE_UNKNOWN] = {"stock.temperature-unknown", "temp", "what the tank runs at is not given", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_TEMPERATURE},
	[TS_RULE_UNKNOWN_SPECIES] = {"stock.unknown-species", NULL, "a name that no species of the catalogue has", COMPUTED, TS_SCOPE_PLAN, FREE, TS_TOPIC_NAME},
	[TS_RULE_UNTESTED] = {"stock.untested", "tan", "animals live there, and ammonia or nitrite was not read", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_CARE},
	[TS_RULE_WARM_OXYGEN] = {"stock.warm-oxygen", "oxygen", "warm water holds little oxygen", COMMON, TS_SCOPE_PLAN, FREE, TS_TOPIC_WASTE},
	[TS_RULE_WATER] = {"stock.water", NULL, "the water does not suit the animal", COMPUTED, TS_SCOPE_PLAN, FREE, TS_TOPIC_WATER},
	[TS_RULE_WATER_UNKNOWN] = {"stock.water-unknown", NULL, "no water was measured", COMPUTED, TS_SCOPE_PLAN, FREE, TS_TOPIC_WATER},
	[TS_RULE_WATER_UNSURE] = {"stock.water-unsure", NULL, "whether the water suits the animal cannot be said from what was measured", COMPUTED, TS_SCOPE_PLAN, FREE, TS_TOPIC_WATER},
};

/* Rules of the whole plan are in check.c. */
static ts_rule *const rules[TS_RULE__COUNT] = {
	[TS_RULE_CAUTION] = ts_rule_caution,
	[TS_RULE_COVER] = ts_rule_cover,
	[TS_RULE_EATS_PLANTS] = ts_rule_eats_plants,
	[TS_RULE_FEW] = ts_rule_few,
	[TS_RULE_FLOW] = ts_rule_flow,
	[TS_RULE_FORMS_CROSS] = ts_rule_forms_cross,
	[TS_RULE_LAND] = ts_rule_land,
	[TS_RULE_LIGHT] = ts_rule_light,
	[TS_RULE_OLD_TANK] = ts_rule_old_tank,
	[TS_RULE_OWN_KIND] = ts_rule_own_kind,
	[TS_RULE_PAIR_FORMS] = ts_rule_pair_forms,
	[TS_RULE_SAND] = ts_rule_sand,
	[TS_RULE_SEXES] = ts_rule_sexes,
	[TS_RULE_SPECIALIST] = ts_rule_specialist,
	[TS_RULE_TANK_HEIGHT] = ts_rule_tank_height,
	[TS_RULE_TANK_LENGTH] = ts_rule_tank_length,
	[TS_RULE_TANK_UNMEASURED] = ts_rule_tank_unmeasured,
	[TS_RULE_TANK_WIDTH] = ts_rule_tank_width,
	[TS_RULE_TERRITORY] = ts_rule_territory,
	[TS_RULE_UNSETTLED] = ts_rule_unsettled,
	[TS_RULE_YOUNG] = ts_rule_young,
	[TS_RULE_ATTACKED] = ts_rule_attacked,
	[TS_RULE_CHASED] = ts_rule_chased,
	[TS_RULE_CROSSES] = ts_rule_crosses,
	[TS_RULE_EATEN] = ts_rule_eaten,
	[TS_RULE_ELECTRIC] = ts_rule_electric,
	[TS_RULE_FIN_NIPPER] = ts_rule_fin_nipper,
	[TS_RULE_FLOW_APART] = ts_rule_flow_apart,
	[TS_RULE_GH_APART] = ts_rule_gh_apart,
	[TS_RULE_LABYRINTH] = ts_rule_labyrinth,
	[TS_RULE_LAKE_APART] = ts_rule_lake_apart,
	[TS_RULE_LIGHT_APART] = ts_rule_light_apart,
	[TS_RULE_NIGHT_HUNTER] = ts_rule_night_hunter,
	[TS_RULE_OUTCOMPETED] = ts_rule_outcompeted,
	[TS_RULE_PH_APART] = ts_rule_ph_apart,
	[TS_RULE_RIVALS] = ts_rule_rivals,
	[TS_RULE_SALT_APART] = ts_rule_salt_apart,
	[TS_RULE_SHRIMPS_EATEN] = ts_rule_shrimps_eaten,
	[TS_RULE_SNAILS_EATEN] = ts_rule_snails_eaten,
	[TS_RULE_TEMPERATURE_APART] = ts_rule_temperature_apart,
};
/* clang-format on */

unsigned ts_group_count(const struct ts_group *group)
{
	return group->males + group->females + group->either;
}

/* Room for one more: the lightest ruling makes way for a graver one. */
static struct ts_ruling *room_for(struct ts_rulings *all, enum ts_severity severity)
{
	struct ts_ruling *lightest = &all->at[0];

	if (all->count < sizeof all->at / sizeof *all->at)
		return &all->at[all->count++];
	for (size_t i = 1; i < all->count; i++) {
		if (all->at[i].severity < lightest->severity)
			lightest = &all->at[i];
	}
	return severity > lightest->severity ? lightest : NULL;
}

/* `r` is scratch, zeroed once for many rules: what a rule may set is set back here. */
static void run(const struct ts_scene *scene, enum ts_rule_id id, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r, struct ts_rulings *ret)
{
	struct ts_ruling *room;

	r->rule = id;
	r->severity = TS_CONCERN;
	r->rests = TS_RESTS_RECORDS;
	r->subject = a->species;
	r->other = b ? b->species : NULL;
	r->ours = r->its = r->change = (double)NAN;
	r->word = 0;
	if (!rules[id](scene, a, b, r))
		return;
	room = room_for(ret, r->severity);
	if (room)
		*room = *r;
}

/* Litres of the inside box, by which tanks are sold; from the water itself where only that is
 * known. */
double ts_rule_box_l(const struct ts_tank *t, const struct ts_practice *practice)
{
	struct ts_tank litre = {.length_cm = 10, .width_cm = 10, .height_cm = 10, .fill = t->fill};

	if (t->length_cm > 0 && t->width_cm > 0 && t->height_cm > 0)
		return t->length_cm * t->width_cm * t->height_cm / 1000;
	return ts_tank_net_l(t, practice) / ts_tank_net_l(&litre, practice);
}

/* Of a tank of so many litres the sides that are usual; where only its length is known, a square.
 */
static void take_sides(struct ts_scene *scene)
{
	const struct ts_tank *t = scene->tank;
	double side = t->length_cm > 0 ? sqrt(scene->box_l * 1000 / t->length_cm) : (double)NAN;
	struct ts_tank usual = {.length_cm = (double)NAN, .width_cm = side, .height_cm = side};

	if (!(t->length_cm > 0) && t->volume_l > 0)
		ts_room_usual_sides(t->volume_l, &usual);
	scene->taken.length_cm = t->length_cm > 0 ? t->length_cm : usual.length_cm;
	scene->taken.width_cm = t->width_cm > 0 ? t->width_cm : usual.width_cm;
	scene->taken.height_cm = t->height_cm > 0 ? t->height_cm : usual.height_cm;
	scene->taken.floor_m2 = scene->floor_m2;
	if (isnan(scene->floor_m2))
		scene->taken.floor_m2 = scene->taken.length_cm * scene->taken.width_cm / 1e4;
	if (isnan(scene->taken.floor_m2)) /* no tank: what any room would mend is no fault */
		scene->taken.floor_m2 = (double)INFINITY;
}

static struct ts_scene scene_of(
	const struct ts_tank *tank, const struct ts_practice *practice, struct ts_practice *own)
{
	struct ts_scene scene;

	if (!practice) {
		ts_practice_defaults(own);
		practice = own;
	}
	scene = (struct ts_scene){.tank = tank,
		.floor_m2 = ts_tank_floor_m2(tank),
		.practice = practice->value,
		.box_l = ts_rule_box_l(tank, practice)};
	take_sides(&scene);
	return scene;
}

void ts_rules_alone(const struct ts_group *group, const struct ts_tank *tank,
	const struct ts_practice *practice, struct ts_rulings *ret)
{
	struct ts_practice own;
	struct ts_scene scene = scene_of(tank, practice, &own);
	struct ts_ruling r = {.match = NULL};

	for (int id = 0; id < TS_RULE__COUNT; id++) {
		if (ts_rule_rows[id].scope == TS_SCOPE_ALONE)
			run(&scene, (enum ts_rule_id)id, group, NULL, &r, ret);
	}
}

/* The rules of two that ask how many and of which sex: biters, chasers, floors, mongrels. */
static bool counts(enum ts_rule_id id)
{
	switch (id) {
	case TS_RULE_FIN_NIPPER:
	case TS_RULE_CHASED:
	case TS_RULE_ATTACKED:
	case TS_RULE_RIVALS:
	case TS_RULE_CROSSES:
		return true;
	default:
		return false;
	}
}

bool ts_rules_ask_numbers(const struct ts_species *s)
{
	return s->nips != TS_NIPS_NO || s->to_others != TS_IGNORES ||
	       s->to_own_kind != TS_IGNORES || s->crosses_with.count;
}

void ts_rules_of_two(const struct ts_group *a, const struct ts_group *b, const struct ts_tank *tank,
	const struct ts_practice *practice, bool without_numbers, bool with_numbers,
	struct ts_rulings *ret)
{
	struct ts_practice own;
	struct ts_scene scene = scene_of(tank, practice, &own);
	struct ts_ruling r = {.match = NULL};

	for (int id = 0; id < TS_RULE__COUNT; id++) {
		if (ts_rule_rows[id].scope != TS_SCOPE_PAIR ||
			!(counts((enum ts_rule_id)id) ? with_numbers : without_numbers))
			continue;
		run(&scene, (enum ts_rule_id)id, a, b, &r, ret);
		run(&scene, (enum ts_rule_id)id, b, a, &r, ret);
	}
}

void ts_rules_together(const struct ts_group *a, const struct ts_group *b,
	const struct ts_tank *tank, const struct ts_practice *practice, struct ts_rulings *ret)
{
	ts_rules_of_two(a, b, tank, practice, true, true, ret);
}

struct ts_rule_cost ts_rules_cost(
	const struct ts_rulings *rulings, const struct ts_practice *practice)
{
	struct ts_practice own;
	struct ts_rule_cost cost = {false, 0};

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	for (size_t i = 0; i < rulings->count; i++) {
		const struct ts_ruling *r = &rulings->at[i];
		int row = ts_rule_rows[r->rule].cost;

		cost.conflict |= r->severity >= TS_CONFLICT;
		/* Room that is nearly enough is no fault, and no room for a proposal. */
		if ((r->severity >= TS_QUESTION || ts_rule_of_room(r->rule)) &&
			r->severity < TS_CONFLICT && row >= 0)
			cost.points += (unsigned)practice->value[row];
	}
	return cost;
}

double ts_group_floor_m2(const struct ts_group *group, const struct ts_practice *practice)
{
	struct ts_practice own;

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	return ts_rule_floor_m2(group, practice->value);
}

/* Cichlids of Malawi and Victoria hold no ground for good: their males share one floor. */
static bool crowds_a_floor(const struct ts_species *s)
{
	bool wanders = s->home_water == TS_HOME_MALAWI || s->home_water == TS_HOME_VICTORIA;

	return s->lakes_apart == TS_LAKES_OWN &&
	       (s->territory.per == TS_PER_GROUP || (wanders && s->territory.per == TS_PER_MALE));
}

void ts_floor_add(
	struct ts_floor_sum *io, const struct ts_group *group, const struct ts_practice *practice)
{
	const struct ts_species *s = group->species;
	double floor_m2 = ts_group_floor_m2(group, practice);

	if (crowds_a_floor(s)) {
		io->crowd_m2 = fmax(io->crowd_m2, floor_m2);
		return;
	}
	for (int level = TS_SWIMS_BOTTOM; level <= TS_SWIMS_TOP; level++) {
		if (s->swims == level || s->swims == TS_SWIMS_EVERYWHERE)
			io->level_m2[level] += floor_m2;
	}
}

double ts_floor_total_m2(const struct ts_floor_sum *sum)
{
	return sum->crowd_m2 + fmax(fmax(sum->level_m2[0], sum->level_m2[1]), sum->level_m2[2]);
}
