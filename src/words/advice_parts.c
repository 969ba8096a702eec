/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One function a part. How much water is changed, the recipes, what is to be tested: each is said
 * here once, for all rows that say it.
 */
#include "words/advice_parts.h"

#include <math.h>

#include "words/due.h"
#include "words/mend.h"
#include "words/remake.h"
#include "words/sentence.h"

static void put_tests(struct ts_text *text, const struct ts_care_figures *f);

/* What a dose every evening would do to this water; nothing where it cannot be computed. */
static void say_chase(struct ts_text *text, const struct ts_care_figures *f)
{
	if (isnan(f->chase_acid_meq_l))
		return;
	if (f->chase_acid_meq_l < 0) {
		ts_text_put(text,
			" Bringing it up would take a dose every evening, and by morning the "
			"pH would read ");
		ts_text_number(text, f->ph, 1);
		ts_text_put(text, " again.");
		return;
	}
	ts_text_put(text, " Bringing it to ");
	ts_text_number(text, f->chase_ph, 1);
	ts_text_put(text, " would take acid every evening, ");
	ts_text_number_short(text, f->chase_co2_mg_l, 0);
	ts_text_put(text, " mg/L of CO2 each time, and by morning the pH is near ");
	ts_text_number(text, f->ph, 1);
	ts_text_put(text, " again");
	if (isnan(f->chase_days)) {
		ts_text_put(text, "; of the buffer KH ");
		ts_text_number_short(text, f->chase_kh_dh, 1);
		ts_text_put(text, " is left after one dose.");
		return;
	}
	ts_text_put(text, "; after ");
	ts_text_number_short(text, f->chase_days, 0);
	ts_text_put(text, f->chase_days == 1 ? " day" : " days");
	ts_text_put(text, " the buffer is gone, and the pH falls.");
}

/* "GH 8"; what the animal does better with. */
static void say_mend_from(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_puts(text, ts_parameter_rows[f->parameter].label, " ", NULL);
	ts_text_number_short(text, f->mend_from, 1);
}

static void say_mend(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->mends)
		ts_say_mend(text, &f->mend);
}

/* Who has lived well for long in water that is harder than liked is not given another. */
static bool goes_on(const struct ts_care_figures *f)
{
	return f->settled_well && f->mend.pure_l > 0;
}

static void say_better(struct ts_text *text, const struct ts_care_figures *f)
{
	/* Harder than liked and borne: nothing to be done; softer than liked wastes them away. */
	if (!f->mends || f->mend.pure_l > 0)
		return;
	ts_text_put(text, " They do better with ");
	say_mend_from(text, f);
	ts_text_put(text, ": ");
	ts_say_mend(text, &f->mend);
}

static void say_do_better(struct ts_text *text, const struct ts_care_figures *f)
{
	if (goes_on(f))
		ts_text_put(text, " Carry on as you do: softer water all at once would harm more "
				  "than this does.");
	else
		say_better(text, f);
}

static void say_hardness_is(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->hardness_liked ? "right" : "borne");
}

static void say_top_up(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->harder ? " Top up what evaporates with pure water alone: it leaves "
				      "the minerals behind."
				    : "");
}

static void say_test_ammonia(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->untested & TS_UNTESTED_AMMONIA ? ", test ammonia too" : "");
}

/* Of copper: a tap that holds it, and one of which nobody knows. */
static void say_no_tap(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->change_copper_mg_l >= f->copper_limit
				  ? ", and pour in no more of this tap"
				  : "");
}

static void say_test_tap(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->change_copper_mg_l >= f->copper_limit)
		ts_text_put(text, " Let the tap run before you fill, and test it.");
	else if (isnan(f->change_copper_mg_l))
		ts_text_put(text, " Test the tap for it too, after it has run.");
}

/* The recipe of the water that a crash is led out with. */
static void say_way_out(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->way_out_bare)
		ts_text_put(text, "Make it of water from reverse osmosis or clean rain. ");
	ts_say_mend(text, &f->way_out);
}

/* Below this KH, dH, hardly anything is left of it. */
#define KH_LOST_DH 0.5

static void say_cause(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->kh_dh < KH_LOST_DH
				  ? "The buffer is lost, and ammonia stands in the water"
				  : "Ammonia stands in water so acid that it does no harm yet");
}

/* What new water would do to the ammonia. */
static void say_half(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->nh3_half_mg_l >= f->nh3_limit) {
		ts_text_put(text, "half a tank of your change water would make it ");
		ts_text_number_short(text, f->nh3_half_mg_l, 3);
	} else if (f->nh3_there_mg_l > f->nh3_mg_l) {
		ts_text_put(text, "at the pH of your change water it would be ");
		ts_text_number_short(text, f->nh3_there_mg_l, 3);
	} else {
		ts_text_put(text, "water with more KH would raise the pH and make more of it so");
	}
}

static void say_ask_change_kh(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, isnan(f->change_kh_dh) ? "; test KH of your tap" : "");
}

/* Nothing tells how much of the ammonia is poison. */
static bool ph_open(const struct ts_care_figures *f)
{
	return isnan(f->ph) && isnan(f->kh_dh);
}

static void say_test_ph(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, ph_open(f) ? "test pH, and from 7 up " : "");
}

static void say_below_ph(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, ph_open(f) ? " (below pH 7 no more than 15 % a day: there the rising pH "
				       "is what makes it poison)"
				     : "");
}

/* What a test that read nil may hide, mg/L. */
#define AS_NIL 0.1

static void put_also(struct ts_text *text, const char *what, double value, const char *unit)
{
	if (!(value > AS_NIL))
		return;
	ts_text_puts(text, "; ", what, " ", NULL);
	ts_text_number_short(text, value, 2);
	ts_text_puts(text, " ", unit, NULL);
}

static void say_ammonia_too(struct ts_text *text, const struct ts_care_figures *f)
{
	put_also(text, "ammonia", f->tan_mg_l, "mg/L N");
}

static void say_nitrite_too(struct ts_text *text, const struct ts_care_figures *f)
{
	put_also(text, "nitrite", f->no2_mg_l, "mg/L");
}

/* So much of it that it tells of an old tank. */
static void say_nitrate_too(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->no3_mg_l > f->no3_limit)
		put_also(text, "nitrate", f->no3_mg_l, "mg/L");
}

/* More of it than is comfortable. */
static void say_much_nitrate(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->no3_mg_l > f->no3_concern)
		put_also(text, "nitrate", f->no3_mg_l, "mg/L");
}

/* Where the new water will raise KH, and with it the pH. */
static void say_apart_first(struct ts_text *text, const struct ts_care_figures *f)
{
	struct ts_care_figures water = *f;

	water.untested &= (unsigned)(TS_UNTESTED_AMMONIA | TS_UNTESTED_NITRITE);
	if (f->deaths > 0 && water.untested) {
		put_tests(text, &water);
		ts_text_put(text, "; ");
	} else if (f->untested & TS_UNTESTED_AMMONIA && f->change_kh_dh > f->kh_dh)
		ts_text_put(text, "test ammonia before the first one, since a rising pH makes it "
				  "poison; ");
}

/* How much water is changed again and again while something is to be brought down. */
static void say_small(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_puts(text, f->small_changes ? "10 to 15 % " : "a quarter ",
		f->small_often || !f->small_changes ? "every second day" : "twice a week", NULL);
}

/* The same at once, where nothing tells how much. */
static void say_some(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->small_changes ? "10 to 15 %" : "a quarter");
}

static void say_buffer_is(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->buffer_lost ? "used up" : "nearly used up");
}

/* Over ammonia that nobody read, KH is not raised. */
static void say_ammonia_first(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->untested & TS_UNTESTED_AMMONIA
				  ? "test ammonia before the first one, since a rising pH makes it "
				    "poison; "
				  : "");
}

/* " (into each 100 L 6 g of baking soda: then KH 4)"; by the degree where it was not read. */
static void say_kh_recipe(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->kh_short) {
		ts_text_put(text, " (into each 100 L ");
		ts_say_mend_salts(text, &f->kh_mend);
		ts_text_put(text, ": then ");
		if (!isnan(f->kh_mend.gh_dh)) {
			ts_text_put(text, "GH ");
			ts_text_number_short(text, f->kh_mend.gh_dh, 1);
			ts_text_put(text, ", ");
		}
		ts_text_put(text, "KH ");
		ts_text_number_short(text, f->kh_mend.kh_dh, 1);
		ts_text_put(text, ")");
	} else if (f->change_kh_dh >= f->kh_warn) {
		ts_text_put(text, " (your own has ");
		ts_text_number_short(text, f->change_kh_dh, 1);
		ts_text_put(text, ": it is the way)");
	} else if (isnan(f->change_kh_dh)) {
		ts_text_put(text, " (");
		ts_text_number_short(text, f->soda_a_degree_g, 0);
		ts_text_put(text, " g of baking soda in 100 L lift KH by 1)");
	}
}

static void say_or_kh(struct ts_text *text, const struct ts_care_figures *f)
{
	if (!f->kh_short)
		return;
	ts_text_put(text, "; or give the new water KH");
	say_kh_recipe(text, f);
}

/* What is not known and would tell why they die. */
static void put_tests(struct ts_text *text, const struct ts_care_figures *f)
{
	static const char *const words[] = {"ammonia", "nitrite", "temperature", "KH", "copper"};
	unsigned left = f->untested;

	ts_text_put(text, "test ");
	for (unsigned i = 0; i < sizeof words / sizeof *words; i++) {
		if (!(f->untested & 1u << i))
			continue;
		left &= ~(1u << i);
		ts_text_puts(text, f->untested & ((1u << i) - 1) ? left ? ", " : " and " : "",
			words[i], NULL);
	}
	ts_text_put(text, " today");
}

static void say_to_test_or_vet(struct ts_text *text, const struct ts_care_figures *f)
{
	if (!f->untested) {
		ts_text_put(text, "what was read is in order, so ask a vet for fish");
		return;
	}
	put_tests(text, f);
	ts_text_put(text, "; ask a vet if they are in order");
}

/* What is right whatever it is, then what would tell. */
static void say_safe_and_test(struct ts_text *text, const struct ts_care_figures *f)
{
	if (!f->untested) {
		ts_text_put(text, f->deaths > 1 ? "what was read is in order, so ask a vet for fish"
						: "what was read is in order, so watch the others, "
						  "and ask a vet for fish if more die");
		return;
	}
	ts_text_put(text, "air on, feed nothing today, change ");
	say_some(text, f);
	ts_text_put(text, " of the water for matched, treated water, and ");
	put_tests(text, f);
}

static void say_who_died(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->deaths_uncounted) {
		ts_text_put(text, "They die, and nobody knows yet of what");
		return;
	}
	ts_text_number_short(text, f->deaths, 0);
	ts_text_puts(text, " unexplained ", f->deaths > 1 ? "deaths" : "death",
		" within four weeks", NULL);
}

/* What was not said of the signs, and would change the first deed. */
static void say_ask_signs(struct ts_text *text, const struct ts_care_figures *f)
{
	bool onset = f->beside & TS_BESIDE_NO_ONSET, breadth = f->beside & TS_BESIDE_NO_BREADTH;

	if (onset && breadth)
		ts_text_put(text, "; if all show them since today, it is poison or want of oxygen: "
				  "air on");
	else if (breadth)
		ts_text_put(text, "; if all show them, it is the water, and no illness");
	if (f->beside & TS_BESIDE_WOUNDS && isnan(f->no3_mg_l))
		ts_text_put(text, "; wounds and holes come mostly of waste, or of others that "
				  "bite: test nitrate too");
}

/* Beside a likely cause what may be another is tested all the same. */
static void say_test_all_the_same(struct ts_text *text, const struct ts_care_figures *f)
{
	struct ts_care_figures water = *f;

	water.untested &=
		(unsigned)(TS_UNTESTED_AMMONIA | TS_UNTESTED_NITRITE | TS_UNTESTED_COPPER);
	if (!water.untested)
		return;
	put_tests(text, &water);
	ts_text_put(text, f->too_soft ? ", before the first change: a rising pH makes ammonia "
					"poison; "
				      : " all the same; ");
}

/* "test nitrite; ": of what makes them gasp what was not read. */
static void say_tests_first(struct ts_text *text, const struct ts_care_figures *f)
{
	struct ts_care_figures air = *f;

	air.untested &=
		(unsigned)(TS_UNTESTED_AMMONIA | TS_UNTESTED_NITRITE | TS_UNTESTED_TEMPERATURE);
	if (!air.untested)
		return;
	put_tests(text, &air);
	ts_text_put(text, "; ");
}

/* Water that is foul is changed at once. */
static void say_then_change(struct ts_text *text, const struct ts_care_figures *f)
{
	bool foul = f->tan_mg_l >= f->tan_safe || f->no3_mg_l > f->no3_concern;

	ts_text_put(text, foul ? "Then change " : "If they still gasp, change ");
	say_some(text, f);
	ts_text_put(text, " of the water for treated water of the same temperature, GH and KH.");
}

static void say_wrong_hardness(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->hardness_liked ? "" : "wrong hardness, ");
}

/* Nothing was read that wants mending: "go on as you do" stands beside no remedy. */
static bool nothing_to_mend(const struct ts_care_figures *f)
{
	return f->settled_well && !f->at_fault && !(f->no3_mg_l > f->no3_concern) &&
	       !(f->tan_mg_l >= f->tan_safe) && !(f->no2_mg_l > AS_NIL) && !(f->tan_mg_l > AS_NIL);
}

static void say_ask_gh(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->settled_well && !nothing_to_mend(f)) {
		ts_text_put(text, "Test GH and KH once too, with drops, to know what they live in; "
				  "leave the pH alone.");
		return;
	}
	ts_text_put(text,
		f->settled_well
			? "They are well: go on as you do, and leave the pH alone. Test GH and "
			  "KH once, with drops, to know what they live in."
		: isnan(f->ph) ? "Test GH with drops first, and KH: they decide most, and nothing "
				 "is advised without them. Leave the pH alone."
			       : "Leave the pH alone, and test GH and KH with drops: they decide "
				 "most, and nothing is advised without them.");
}

static void say_ask_kh(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text,
		nothing_to_mend(f)
			? "They are well: leave the water and the pH alone, a steady water is "
			  "worth more than a perfect one. Test KH once, with drops, to know how "
			  "steady it is."
			: "Test KH with drops first: without it nobody can say how steady the pH "
			  "is.");
}

/* Who has lived there well for long is told so; else what was not read comes first. */
static void say_go_on(struct ts_text *text, const struct ts_care_figures *f)
{
	if (!nothing_to_mend(f)) {
		ts_text_put(text, ". Test ammonia and nitrite once, to be sure.");
		return;
	}
	ts_text_put(text, ": all is well as far as is known; go on as you do");
	if (f->change_percent > 0 && f->change_days > 0) {
		ts_text_put(text, " (");
		ts_text_number_short(text, f->change_percent, 0);
		ts_text_put(text, " % every ");
		ts_text_number_short(text, f->change_days, 1);
		ts_text_put(text, " days)");
	}
	ts_text_put(text, ".");
}

/* "27 L (25 %)" */
static void put_change(struct ts_text *text, const struct ts_care_next *next)
{
	if (isnan(next->litres)) {
		ts_text_number_short(text, next->percent, 0);
		ts_text_put(text, " % of the water");
		return;
	}
	ts_say_amount(text, next->litres, "L");
	ts_text_put(text, " (");
	ts_text_number_short(text, next->percent, 0);
	ts_text_put(text, " %)");
}

/* More values than these are all of them. */
#define TESTS_NAMED 3

static void put_next_test(struct ts_text *text, const struct ts_care_next *next)
{
	const struct ts_due_item item = {.where = TS_DUE_TANK, .what = next->tested};
	const struct ts_due_item supply = {.where = TS_DUE_SUPPLY, .what = next->supply};
	unsigned values = 0;

	if (next->test < 0)
		return;
	if (next->supply) {
		ts_text_put(text, "; tests are due of ");
		ts_say_due_what(text, &supply);
		ts_text_put(text, ", and of the tank again");
	} else {
		ts_text_put(text, "; test ");
	}
	for (unsigned left = next->tested; left; left &= left - 1)
		values++;
	if (values > TESTS_NAMED)
		ts_text_put(text, next->supply ? "" : "again");
	else if (!next->supply)
		ts_say_due_what(text, &item);
	if (next->test <= next->today) {
		ts_text_put(text, " too");
		return;
	}
	ts_text_put(text, " by ");
	ts_say_day(text, next->test, next->today);
}

/* "13 L (25 %) every 7 days": as the file says it. */
static void say_back(struct ts_text *text, const struct ts_care_figures *f)
{
	struct ts_care_next said = f->next;

	said.litres = said.said_litres;
	said.percent = said.said.amount;
	put_change(text, &said);
	ts_text_put(text, " every ");
	ts_text_number_short(text, f->next.said.days, 0);
	ts_text_put(text, " days");
}

/* "8 L (15 %) every 21 days now" */
static void say_slipped(struct ts_text *text, const struct ts_care_figures *f)
{
	put_change(text, &f->next);
	ts_text_put(text, " every ");
	ts_text_number_short(text, f->change_days, 0);
	ts_text_put(text, " days now: KH ");
	ts_text_number_short(text, f->kh_dh, 1);
	if (!isnan(f->no3_mg_l)) {
		ts_text_put(text, ", nitrate ");
		ts_text_number_short(text, f->no3_mg_l, 0);
		ts_text_put(text, " mg/L");
	}
	ts_text_put(text, "; so the buffer lasts about ");
	ts_text_number_short(text, f->buffer_days, 0);
	ts_text_put(text, " days.");
}

/* Nothing is to be mended: what the routine asks for is done all the same, and the next test has
 * the day that due gives it. */
static void say_go_on_or_leave(struct ts_text *text, const struct ts_care_figures *f)
{
	const struct ts_care_next *next = &f->next;

	if (!next->known) {
		ts_text_put(text, "Leave the water alone; test again in four weeks.");
		return;
	}
	if (next->said.days > 0 &&
		next->percent * next->said.days < next->said.amount * f->change_days) {
		ts_text_put(
			text, "All is in range, and less water is changed than was: go back to ");
		ts_text_number_short(text, next->said.amount, 0);
		ts_text_put(text, " % every ");
		ts_text_number_short(text, next->said.days, 0);
		ts_text_put(text, " days before it shows");
	} else if (next->change <= next->today) {
		ts_text_put(text, "Leave the water alone but for its change, ");
		put_change(text, next);
		ts_text_put(text, next->change < next->today ? " now" : " today");
	} else {
		ts_text_put(text, "Leave the water alone until its next change, ");
		put_change(text, next);
		ts_text_put(text, " by ");
		ts_say_day(text, next->change, next->today);
	}
	put_next_test(text, next);
	ts_text_put(text, ".");
}

static void say_then_once(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, nothing_to_mend(f) ? " Test ammonia and nitrite once, to be sure." : "");
}

static void say_mend_slowly(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->too_soft ? "give it minerals slowly" : "thin it slowly");
}

/* How a filter that stood is set going. */
static void say_restart(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->filter_rinse)
		ts_text_put(text, "do not start the filter as it is: pour its water away, which is "
				  "poison by now, rinse it in tank water, then start it");
	else if (isnan(f->filter_stopped_h))
		ts_text_put(text, "where it stood for more than two to four hours, pour its water "
				  "away and rinse it in tank water before you start it");
	else
		ts_text_put(text, "start the filter again");
}

static void say_stood(struct ts_text *text, const struct ts_care_figures *f)
{
	if (isnan(f->filter_stopped_h))
		return;
	ts_text_put(text, "; the filter stood for ");
	ts_text_number_short(text, f->filter_stopped_h, 0);
	ts_text_put(text, " hours");
}

/* What half a change leaves of much ammonia, and how many it takes. */
static void say_again(struct ts_text *text, const struct ts_care_figures *f)
{
	if (!f->change_half)
		return;
	ts_text_put(text, " Half leaves ");
	ts_text_number_short(text, f->nh3_mg_l / 2, 3);
	ts_text_put(text, " mg/L un-ionised, still above what is borne: half again every hour or "
			  "two, ");
	ts_text_number_short(text, f->nh3_halves, 0);
	ts_text_put(text, " times in all, each of the tank's own warmth, GH and KH.");
}

static void say_parasite(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text,
		f->beside & TS_BESIDE_SPOTS
			? "White spot, very likely, a parasite that the whole tank has by now: "
			  "treat the tank and not one fish, as the medicine's leaflet says"
			: "Rubbing points to a parasite, where ammonia and nitrite read nil: "
			  "ask a vet for fish, and treat the tank, not one fish");
}

static void say_seen(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->beside & TS_BESIDE_SPOTS ? "Spots are seen." : "They rub themselves.");
}

static void say_warm_up(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->warmth_borne)
		ts_text_put(text, "warm it to 29 C, by 1 C a day, which shortens it; ");
}

static void say_in_range(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->anything_read
				  ? "What was measured is in range."
				  : "Nothing was measured, and nothing speaks against it.");
}

/* Of ammonia and nitrite what was read. */
static void say_both_read(struct ts_text *text, const struct ts_care_figures *f)
{
	bool ammonia = !isnan(f->tan_mg_l);

	if (ammonia) {
		ts_text_put(text, "Ammonia ");
		ts_text_number_short(text, f->tan_mg_l, 2);
		ts_text_put(text, " mg/L N");
	}
	if (isnan(f->no2_mg_l))
		return;
	ts_text_put(text, ammonia ? ", nitrite " : "Nitrite ");
	ts_text_number_short(text, f->no2_mg_l, 2);
	ts_text_put(text, " mg/L");
}

/* Whoever was fed too much lives in what is left of it. */
static void say_waste_too(struct ts_text *text, const struct ts_care_figures *f)
{
	if (!(f->no3_mg_l > f->no3_concern))
		return;
	ts_text_put(text, "change ");
	say_some(text, f);
	ts_text_put(text, " of the water for treated water of the same warmth; ");
}

/* Animals without a backbone are given none. */
static void say_salt(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->salt_borne ? ", and add a little salt" : "");
}

static void say_how_much_salt(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text,
		f->salt_borne ? "; about 1 g of cooking salt without additives to 10 L, "
				"no more where snails or plants are"
			      : "; no salt: catfish, loaches, shrimps and snails bear less of it");
}

static void say_at_chloride(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->chloride_read ? " at this chloride" : " where chloride was not read");
}

/* What did not grow ripe yet cannot cope. */
static void say_filter_new(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->filter_new ? "; the filter is new, and takes weeks to cope" : "");
}

/* One order about food in an answer. */
static void say_feed(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->fast ? "feed nothing" : "feed half");
}

/* " (stones, shells, sand, salts that you add)": what may make a tank harder. */
static void put_sources(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_puts(text, " (stones, shells, sand, salts that you add",
		f->routine_said ? "" : ", tap water for what evaporates",
		", new water that is another than before)", NULL);
}

static void say_source(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->lime_bed) {
		ts_text_put(text, "the lime in its bed makes it harder than what you pour in. "
				  "Go on with it.");
		return;
	}
	ts_text_put(text, "something makes it harder than what you pour in. Find out what");
	put_sources(text, f);
	ts_text_put(text, ", and go on with it.");
}

/* Where they would like it softer, or something else is to be done first. */
static void say_source_first(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->lime_bed ? "The lime in its bed makes the tank harder than its new "
					"water"
				      : "Find out what makes the tank harder than its new water");
	if (!f->lime_bed)
		put_sources(text, f);
	ts_text_put(
		text, f->softer_liked ? ", and take it out by and by: they like it softer." : ".");
}

static void say_not_piled(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->routine_said ? ": more than evaporation makes of it" : "");
}

static void say_share(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->careful ? "a quarter" : f->change_half ? "half" : "a third to half");
}

/* How much of it is poison; without a pH nobody knows. */
static void say_unionised(struct ts_text *text, const struct ts_care_figures *f)
{
	if (isnan(f->nh3_mg_l)) {
		ts_text_put(text, "; how much of it is poison the pH decides: test it");
		return;
	}
	ts_text_put(text, ", of it ");
	ts_text_number_short(text, f->nh3_mg_l, 4);
	ts_text_put(text, " mg/L un-ionised, borne to ");
	ts_text_number_short(text, f->nh3_limit, 3);
}

/* What the water shows is judged by what it makes the animals live in. */
static bool nil_known(const struct ts_care_figures *f)
{
	return !(f->untested & (unsigned)(TS_UNTESTED_AMMONIA | TS_UNTESTED_NITRITE));
}

static void say_cloudy(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, nil_known(f) ? "Wait, and leave the filter as it is: the cloud itself "
					 "harms nobody."
				       : "Test ammonia and nitrite today; the cloud itself harms "
					 "nobody: leave the filter as it is, and wait.");
}

static void say_nil_read(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, nil_known(f) ? " Ammonia and nitrite were read, and are in order." : "");
}

static void say_test_both(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, nil_known(f) ? "" : "test ammonia and nitrite today; ");
}

/* Old water makes them, and keeps them open. */
static void say_wounds(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->beside & TS_BESIDE_WOUNDS
				  ? " Holes and wounds come of such water, and close in clean "
				    "water; richer food, and a vet for fish if they do not within "
				    "three weeks."
				  : "");
}

/* White spot beside copper: what is cured of it bears no copper more, nor carbon beside it. */
static void say_spots_too(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->beside & TS_BESIDE_SPOTS
				  ? " The white spot of the fish is treated after that, without "
				    "copper: carbon out of the filter while a medicine is in, and "
				    "shrimps and snails elsewhere until it is out."
				  : "");
}

/* Of nitrate that is comfortable so much in the tap is said: a third. */
#define MUCH_OF_TAP 3

/* No change of water brings a tank below its tap. */
static void say_tank_too(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->moved ? "the tank comes down to it by itself"
				   : "the tank itself need not be brought anywhere");
}

static void say_tap_nitrate(struct ts_text *text, const struct ts_care_figures *f)
{
	double tap = f->no3_mg_l - f->no3_apart_mg_l;

	if (isnan(tap)) {
		ts_text_put(text, ", and test the tap too: changes cannot go below it");
	} else if (tap <= f->no3_concern / MUCH_OF_TAP) {
		ts_text_put(text, " to ");
		ts_text_number_short(text, f->no3_concern, 0);
		ts_text_put(text, " mg/L");
	} else {
		ts_text_put(text, " towards the ");
		ts_text_number_short(text, tap, 0);
		ts_text_put(text, " mg/L of your tap, below which plants, less feed and pure "
				  "water take it");
	}
}

/* Who asks about a pH hears that the buffer makes it. */
static void say_ph_held(struct ts_text *text, const struct ts_care_figures *f)
{
	if (!f->ph_unliked || isnan(f->ph) || !(f->kh_dh >= f->kh_warn))
		return;
	ts_text_put(text, " pH ");
	ts_text_number_short(text, f->ph, 1);
	ts_text_put(text, " is held by KH ");
	ts_text_number_short(text, f->kh_dh, 1);
	ts_text_put(text, ", and comes down with that alone: leave it too.");
}

static void say_bed_holds(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->peat ? "the peat holds the pH low" : "the soil holds KH and pH low");
}

static void say_bed_spent(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->peat ? "peat tires in weeks to months (renew it little by little)"
				  : "soil is spent after a year or two");
}

const struct ts_advice_part ts_advice_parts[] = {
	{"again", say_again},
	{"ammonia_first", say_ammonia_first},
	{"ammonia_too", say_ammonia_too},
	{"ask_change_kh", say_ask_change_kh},
	{"apart_first", say_apart_first},
	{"ask_gh", say_ask_gh},
	{"ask_kh", say_ask_kh},
	{"ask_signs", say_ask_signs},
	{"at_chloride", say_at_chloride},
	{"back", say_back},
	{"bed_holds", say_bed_holds},
	{"bed_spent", say_bed_spent},
	{"below_ph", say_below_ph},
	{"better", say_better},
	{"both_read", say_both_read},
	{"buffer_is", say_buffer_is},
	{"cause", say_cause},
	{"cloudy", say_cloudy},
	{"chase", say_chase},
	{"feed", say_feed},
	{"filter_new", say_filter_new},
	{"go_on", say_go_on},
	{"go_on_or_leave", say_go_on_or_leave},
	{"half", say_half},
	{"how_much_salt", say_how_much_salt},
	{"do_better", say_do_better},
	{"hardness_is", say_hardness_is},
	{"in_range", say_in_range},
	{"kh_recipe", say_kh_recipe},
	{"mend", say_mend},
	{"mend_from", say_mend_from},
	{"mend_slowly", say_mend_slowly},
	{"much_nitrate", say_much_nitrate},
	{"nil_read", say_nil_read},
	{"nitrate_too", say_nitrate_too},
	{"nitrite_too", say_nitrite_too},
	{"no_tap", say_no_tap},
	{"not_piled", say_not_piled},
	{"or_kh", say_or_kh},
	{"parasite", say_parasite},
	{"ph_held", say_ph_held},
	{"restart", say_restart},
	{"safe_and_test", say_safe_and_test},
	{"salt", say_salt},
	{"seen", say_seen},
	{"share", say_share},
	{"small", say_small},
	{"some", say_some},
	{"source", say_source},
	{"source_first", say_source_first},
	{"spots_too", say_spots_too},
	{"stood", say_stood},
	{"slipped", say_slipped},
	{"tank_too", say_tank_too},
	{"tap_nitrate", say_tap_nitrate},
	{"test_all_the_same", say_test_all_the_same},
	{"test_ammonia", say_test_ammonia},
	{"test_both", say_test_both},
	{"test_ph", say_test_ph},
	{"test_tap", say_test_tap},
	{"tests_first", say_tests_first},
	{"then_change", say_then_change},
	{"then_once", say_then_once},
	{"to_test", put_tests},
	{"to_test_or_vet", say_to_test_or_vet},
	{"top_up", say_top_up},
	{"unionised", say_unionised},
	{"warm_up", say_warm_up},
	{"waste_too", say_waste_too},
	{"way_out", say_way_out},
	{"who_died", say_who_died},
	{"wounds", say_wounds},
	{"wrong_hardness", say_wrong_hardness},
};

const size_t ts_advice_part_count = sizeof ts_advice_parts / sizeof *ts_advice_parts;
