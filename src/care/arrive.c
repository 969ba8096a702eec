/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The decision, the steps as rows, and the way of a quarantine tank: a straight line from the
 * shop's water to the tank's, cut into safe steps.
 */
#include "care/arrive.h"

#include <math.h>

#include "base/number.h"
#include "care/advice.h"
#include "chem/carbonate.h"

#define MIX (1u << TS_ARRIVE_MIX)
#define DRIP (1u << TS_ARRIVE_DRIP)
#define STRAIGHT (1u << TS_ARRIVE_STRAIGHT)
#define QUARANTINE (1u << TS_ARRIVE_QUARANTINE)
#define HALFWAY (1u << TS_ARRIVE_HALFWAY)
#define ALL (MIX | DRIP | STRAIGHT | QUARANTINE | HALFWAY)
/* Takes change badly, as in model/shapes.c. */
#define TAKES_CHANGE_BADLY 1
/* So many times more or less of GH or conductivity a drip of hours bridges. */
#define DRIP_TIMES 2.0
/* Newcomers stay by themselves for so many days; stages are to end within them. */
#define QUARANTINE_DAYS 28
/* Hours after which the bag's ammonia counts more than its hardness. */
#define HOURS_SHORT 2.0
#define APART_PERCENT 25.0
/* A bag after a long way: ammonia mg/L N and pH (estimates from memory). */
#define LONG_TAN 5.0
#define LONG_PH 6.4
/* Four changes of a quarter in two days; the safe step binds all of them together. */
#define PORTIONS_MOST 4
/* Thousandths of what is left below which a change is none. */
#define CHANGE_LEAST 10
#define PORTION 0.25

/* Common practice, no source. */
/* clang-format off */
const struct ts_arrive_step ts_arrive_steps[] = {
	{QUARANTINE, "before", "Set up a quarantine tank with a matured filter and fill it to the shop's GH, KH and conductivity, treated against chlorine and chloramine, at the bag's temperature."},
	{HALFWAY, "before", "Set up a quarantine tank with a matured filter, and fill it to water half way between the shop's and yours, treated against chlorine and chloramine, at the bag's temperature."},
	{MIX | DRIP | STRAIGHT, "before", "Best of all a quarantine tank of the same water for 28 days; have it ready, treated and at temperature."},
	{ALL, "0 min", "Lights low. Float the closed bag for 20 minutes, for the temperature alone."},
	{MIX, "20 min", "Open the bag; every 5 minutes add a cup of the new tank's water, for 30 to 45 minutes. If the bag reads 1 mg/L of ammonia or more, leave this out and lift them straight over."},
	{DRIP, "20 min", "Pour animals and bag water into a bucket, and let the tank's water drip in through an air hose with a knot, two or three drops a second, until it is four times as much: an hour for waters that are near, 2 to 3 for others. Pour half away when it is full. Keep it warm. If the bag reads 1 mg/L of ammonia or more, lift them out at once instead."},
	{HALFWAY, "20 min", "Pour animals and bag water into a bucket, let the quarantine tank's water drip in for 2 to 3 hours, two or three drops a second, until it is four times as much; then lift them over."},
	{STRAIGHT, "20 min", "Open the bag and lift the animals out at once, straight into treated water of the same warmth, and about as hard as the bag's. Do not mix and do not air the bag: airing turns its ammonia into poison."},
	{QUARANTINE, "20 min", "Open the bag and lift the animals out at once, straight into the quarantine tank."},
	{ALL, "then", "Never pour bag water into a tank: down the drain with it, and wash your hands."},
	{ALL, "next day", "Feed a little only now. Keep newcomers by themselves for 28 days and watch them; a vet decides about disease."},
	{ALL, "twice a week", "Test ammonia and nitrite for four weeks; both must read nil."},
};
/* clang-format on */

const size_t ts_arrive_step_count = sizeof ts_arrive_steps / sizeof *ts_arrive_steps;

static double apart_percent(double shop, double tank)
{
	return 100 * fabs(tank - shop) / fmax(shop, 1e-3);
}

/* The water at a share of the way from the shop's to the tank's, with the conductivity as read. */
static void water_at(const struct ts_arrive_wish *wish, double share, struct ts_stage_water *ret)
{
	const struct ts_solution *waters[] = {wish->shop, wish->tank};
	const double parts[] = {1 - share, share};
	double ec = (1 - share) * wish->shop_ec_us_cm + share * wish->tank_ec_us_cm;
	struct ts_solution mixed;

	ts_chem_mix(waters, parts, 2, &mixed);
	mixed.temp_c = wish->temp_c;
	ts_stage_water_of(&mixed, 0, ret);
	if (!isnan(ec))
		ret->ec_us_cm = ec;
}

static bool one_safe_step(const struct ts_arrive_wish *wish, enum ts_hardiness hardiness,
	const struct ts_practice *practice)
{
	struct ts_stage_water shop, tank;

	if (!wish->shop || !wish->tank)
		return false;
	water_at(wish, 0, &shop);
	water_at(wish, 1, &tank);
	return ts_step_is_safe(&shop, &tank, hardiness, practice);
}

/* A NAN on one side is no agreement, but the other of the two may still speak. */
static bool near(const struct ts_arrival *a)
{
	bool gh = !isnan(a->gh_apart_percent), ec = !isnan(a->ec_apart_percent);

	return (gh || ec) && (!gh || a->gh_apart_percent <= APART_PERCENT) &&
	       (!ec || a->ec_apart_percent <= APART_PERCENT);
}

static bool within_times(double shop, double tank)
{
	return isnan(shop) || isnan(tank) ||
	       fmax(shop, tank) <= DRIP_TIMES * fmax(fmin(shop, tank), 1e-3);
}

/* Who was caught wild, is young or takes change badly is not brought over in hours. */
static bool bear_drip(const struct ts_arrive_wish *wish)
{
	for (size_t i = 0; i < wish->animal_count; i++) {
		const struct ts_resident *one = &wish->animals[i];

		if (one->wild || one->young || one->species->takes_change == TAKES_CHANGE_BADLY)
			return false;
	}
	return true;
}

/* The share of the way that a drip bridges at once. */
static double bridged(const struct ts_arrive_wish *wish)
{
	const double pairs[][2] = {
		{wish->shop_gh_dh, wish->tank_gh_dh}, {wish->shop_ec_us_cm, wish->tank_ec_us_cm}};
	double share = 1;

	for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
		double shop = pairs[i][0], tank = pairs[i][1];
		double to = tank < shop ? shop / DRIP_TIMES : shop * DRIP_TIMES;

		if (!within_times(shop, tank))
			share = fmin(share, (to - shop) / (tank - shop));
	}
	return share;
}

static void add_stage(struct ts_arrival *ret, unsigned day, double share_of_rest,
	const struct ts_stage_water *after)
{
	struct ts_arrive_stage *stage = &ret->stages[ret->count++];

	stage->day = day;
	stage->change = share_of_rest;
	stage->portions =
		share_of_rest >= 1
			? 0
			: (unsigned)ceil(log(1 - share_of_rest) / log(1 - PORTION) - 1e-9);
	stage->gh_dh = after->gh_dh;
	stage->kh_dh = after->kh_dh;
	stage->ec_us_cm = after->ec_us_cm;
}

/*
 * The largest change that is safe, in thousandths of what is left; 0 where none is. A smaller
 * change is taken to be as safe as a larger one; the one that is handed out was looked at itself.
 */
static int largest_change(const struct ts_arrive_wish *wish, enum ts_hardiness hardiness,
	const struct ts_practice *practice, const struct ts_stage_water *from, double at, int most,
	struct ts_stage_water *ret)
{
	int safe = 0, unsafe = most + 1, next = most;

	while (next > safe && next >= CHANGE_LEAST) {
		struct ts_stage_water to;

		water_at(wish, at + next / 1000.0 * (1 - at), &to);
		if (ts_step_is_safe(from, &to, hardiness, practice)) {
			safe = next;
			*ret = to;
		} else {
			unsafe = next;
		}
		next = (safe ? safe + unsafe : CHANGE_LEAST - 1 + unsafe) / 2;
	}
	return safe;
}

/* From a share of the way on. */
static void plan_stages(const struct ts_arrive_wish *wish, enum ts_hardiness hardiness,
	const struct ts_practice *practice, double at, struct ts_arrival *ret)
{
	double most = 1 - ts_power(1 - PORTION, PORTIONS_MOST);
	unsigned day = 0, between = (unsigned)practice->value[TS_P_STAGE_DAYS];
	struct ts_stage_water from, to;

	water_at(wish, at, &from);
	ret->count = 0;
	ret->too_far = false;
	ret->start_gh_dh = from.gh_dh;
	ret->start_kh_dh = from.kh_dh;
	ret->start_ec_us_cm = from.ec_us_cm;
	while (ret->count < TS_STAGES_MOST) {
		int thousandths;

		water_at(wish, 1, &to);
		if (ts_step_is_safe(&from, &to, hardiness, practice)) {
			add_stage(ret, day, 1, &to);
			return;
		}
		thousandths = largest_change(
			wish, hardiness, practice, &from, at, (int)(1000 * most), &to);
		if (!thousandths)
			break;
		add_stage(ret, day, thousandths / 1000.0, &to);
		from = to;
		at += thousandths / 1000.0 * (1 - at);
		day += between;
	}
	ret->too_far = true;
}

/* Stages that would outlast the quarantine start half way, where the animals bear that. */
static void plan_quarantine(const struct ts_arrive_wish *wish, enum ts_hardiness hardiness,
	bool may_drip, const struct ts_practice *practice, struct ts_arrival *ret)
{
	plan_stages(wish, hardiness, practice, 0, ret);
	if (!may_drip || (!ret->too_far && ret->stages[ret->count - 1].day <= QUARANTINE_DAYS))
		return;
	ret->way = TS_ARRIVE_HALFWAY;
	plan_stages(wish, hardiness, practice, bridged(wish), ret);
}

static void fill_ammonia(const struct ts_arrive_wish *wish, bool long_way, struct ts_arrival *ret)
{
	struct ts_stage_water shop = {.ph = (double)NAN};
	double ph = isnan(wish->bag_ph) ? LONG_PH : wish->bag_ph;

	ret->tan_assumed = isnan(wish->bag_tan_mg_l) && long_way;
	ret->bag_tan_mg_l = ret->tan_assumed ? LONG_TAN : wish->bag_tan_mg_l;
	if (wish->shop)
		ts_stage_water_of(wish->shop, 0, &shop);
	ret->nh3_bag_mg_l = ts_care_nh3_mg_l(ret->bag_tan_mg_l, ph, wish->temp_c);
	ret->nh3_aired_mg_l = ts_care_nh3_mg_l(ret->bag_tan_mg_l, shop.ph, wish->temp_c);
}

void ts_arrive_plan(const struct ts_arrive_wish *wish, const struct ts_practice *practice,
	struct ts_arrival *ret)
{
	enum ts_hardiness hardiness = ts_hardiness_of(wish->animals, wish->animal_count);
	struct ts_arrival a = {
		.gh_apart_percent = apart_percent(wish->shop_gh_dh, wish->tank_gh_dh),
		.ec_apart_percent = apart_percent(wish->shop_ec_us_cm, wish->tank_ec_us_cm)};
	bool long_way = !(wish->hours <= HOURS_SHORT);
	bool ammonia = long_way || wish->bag_tan_mg_l >= TS_ARRIVE_BAG_TAN;
	bool far = !within_times(wish->shop_gh_dh, wish->tank_gh_dh) ||
		   !within_times(wish->shop_ec_us_cm, wish->tank_ec_us_cm);
	bool may_drip = bear_drip(wish);
	struct ts_practice own;

	ts_practice_defaults(&own);
	practice = practice ? practice : &own;
	a.start_gh_dh = a.start_kh_dh = a.start_ec_us_cm = (double)NAN;
	a.unknown_hours = isnan(wish->hours);
	a.unknown_gap = isnan(a.gh_apart_percent) && isnan(a.ec_apart_percent);
	fill_ammonia(wish, long_way, &a);
	if (near(&a) || one_safe_step(wish, hardiness, practice)) {
		a.way = ammonia ? TS_ARRIVE_STRAIGHT : TS_ARRIVE_MIX;
	} else if (may_drip && !far && !a.unknown_gap) {
		/* Over such a gap the bag's ammonia is the greater harm. */
		a.way = ammonia ? TS_ARRIVE_STRAIGHT : TS_ARRIVE_DRIP;
	} else {
		a.way = TS_ARRIVE_QUARANTINE;
		if (wish->shop && wish->tank)
			plan_quarantine(wish, hardiness, may_drip && !ammonia, practice, &a);
	}
	*ret = a;
}
