/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One sentence a way, with where it ends.
 */
#include "words/arrive.h"

#include <math.h>

#include "words/remake.h"

const char *const ts_arrive_way_words[TS_ARRIVE_WAY__COUNT + 1] = {
	"mix-in", "drip", "straight-over", "quarantine-first", "half-way-first"};

/* "GH 5", else "your water". */
static void put_end(struct ts_text *text, const struct ts_arrive_wish *wish)
{
	if (isnan(wish->tank_gh_dh)) {
		ts_text_put(text, "your water");
		return;
	}
	ts_text_put(text, "GH ");
	ts_text_number_short(text, wish->tank_gh_dh, 1);
}

/* ", then 8 small changes in 14 days to GH 5". */
static void put_stages(
	struct ts_text *text, const struct ts_arrive_wish *wish, const struct ts_arrival *a)
{
	if (a->count < 2)
		return;
	ts_text_put(text, ", then ");
	ts_text_number_short(text, (double)a->count - 1, 0);
	ts_text_put(text, a->count == 2 ? " stage in " : " stages in ");
	ts_text_number_short(text, (double)a->stages[a->count - 1].day, 0);
	ts_text_put(text, " days to ");
	put_end(text, wish);
}

/* Into a quarantine tank as well. */
static void say_out_at_once(struct ts_text *text, const struct ts_arrival *a)
{
	ts_text_put(text, "Out of the bag at once, no dripping: its ammonia ");
	if (!a->tan_assumed) {
		ts_text_put(text, "(");
		ts_text_number_short(text, a->bag_tan_mg_l, 1);
		ts_text_put(text, " mg/L) ");
	}
	ts_text_put(text, "turns to poison as air raises the pH. ");
}

/* Up to so many times more or less the drip need not take so long. */
#define NEAR_TIMES 1.5

static bool within_near(double shop, double tank)
{
	return isnan(shop) || isnan(tank) || fmax(shop, tank) <= NEAR_TIMES * fmin(shop, tank);
}

static bool is_near(const struct ts_arrive_wish *wish)
{
	return within_near(wish->shop_gh_dh, wish->tank_gh_dh) &&
	       within_near(wish->shop_ec_us_cm, wish->tank_ec_us_cm);
}

static void say_straight(struct ts_text *text, const struct ts_arrival *a)
{
	ts_text_put(text, "Float the closed bag 20 minutes, then out of it at once, no dripping: ");
	if (a->unknown_hours && a->tan_assumed) {
		ts_text_put(text, "how long they were in it is not said, and after some hours its "
				  "ammonia turns to poison in the air.");
		return;
	}
	ts_text_put(text, "the ammonia in it ");
	if (!a->tan_assumed) {
		ts_text_put(text, "(");
		ts_text_number_short(text, a->bag_tan_mg_l, 1);
		ts_text_put(text, " mg/L) ");
	}
	ts_text_put(text, "turns to poison as soon as air raises the pH.");
}

void ts_say_arrival(
	struct ts_text *text, const struct ts_arrive_wish *wish, const struct ts_arrival *a)
{
	switch (a->way) {
	case TS_ARRIVE_MIX:
		ts_text_put(text, "Float the bag 20 minutes, then mix in over 30 to 45 minutes.");
		return;
	case TS_ARRIVE_DRIP:
		ts_text_puts(text, "Float the bag 20 minutes, then drip your water in for ",
			is_near(wish) ? "an hour." : "2 to 3 hours.", NULL);
		return;
	case TS_ARRIVE_STRAIGHT:
		say_straight(text, a);
		return;
	default:
		break;
	}
	if (a->unknown_gap && a->bag_tan_mg_l >= TS_ARRIVE_BAG_TAN && !a->tan_assumed) {
		say_out_at_once(text, a);
		ts_text_put(text, "Straight into treated water of their own, as hard as the shop's "
				  "where you know it, else as yours.");
		return;
	}
	if (a->unknown_gap) {
		ts_text_put(text, "Measure GH of the bag first, or ask the shop: up to twice or "
				  "half of yours they are dripped in for 2 to 3 hours, further "
				  "apart they need a quarantine tank of the shop's water first.");
		return;
	}
	if (a->bag_tan_mg_l >= TS_ARRIVE_BAG_TAN)
		say_out_at_once(text, a);
	ts_text_put(text, a->way == TS_ARRIVE_HALFWAY
				  ? "Not into this tank today: drip them for 2 to 3 hours into a "
				    "quarantine tank of water half way"
				  : "Not into this tank today: a quarantine tank of the shop's "
				    "water");
	put_stages(text, wish, a);
	ts_text_put(text, ".");
}

static void say_pair(
	struct ts_text *text, const char *label, double shop, double tank, const char *unit)
{
	ts_text_puts(text, label, " ", NULL);
	ts_text_number_short(text, shop, 1);
	ts_text_puts(text, unit, " in the bag, ", NULL);
	ts_text_number_short(text, tank, 1);
	ts_text_puts(text, unit, " in the tank", NULL);
}

void ts_say_arrival_because(
	struct ts_text *text, const struct ts_arrive_wish *wish, const struct ts_arrival *a)
{
	bool gh = !isnan(a->gh_apart_percent), ec = !isnan(a->ec_apart_percent);

	if (a->way == TS_ARRIVE_STRAIGHT && !isnan(a->bag_tan_mg_l)) {
		ts_text_put(text,
			a->tan_assumed ? "Ammonia in the bag, taken as " : "Ammonia in the bag ");
		ts_text_number_short(text, a->bag_tan_mg_l, 1);
		ts_text_put(text, " mg/L N: as poison ");
		ts_text_number(text, a->nh3_bag_mg_l, 3);
		ts_text_put(text, " closed, ");
		ts_text_number(text, a->nh3_aired_mg_l, 2);
		ts_text_put(text, " aired (to 0.02).");
		return;
	}
	if (a->unknown_gap) {
		ts_text_put(text, "Neither GH nor conductivity is known of both waters.");
		return;
	}
	if (gh)
		say_pair(text, "GH", wish->shop_gh_dh, wish->tank_gh_dh, "");
	ts_text_put(text, gh && ec ? "; " : "");
	if (ec)
		say_pair(text, gh ? "conductivity" : "Conductivity", wish->shop_ec_us_cm,
			wish->tank_ec_us_cm, " uS/cm");
	ts_text_put(text, ".");
}
