/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Filling in templates: one row a figure, with its decimals.
 */
#include "words/advice.h"

#include <math.h>
#include <string.h>

#include "words/animal.h"
#include "words/mend.h"
#include "words/rulings.h"
#include "words/sentence.h"

#define FIGURE(name, m, decimals)                                                                  \
	{                                                                                          \
		name, offsetof(struct ts_care_figures, m), decimals                                \
	}

static const struct {
	const char *name;
	size_t offset;
	int decimals;
} figures[] = {
	FIGURE("away", away_days, 0),
	FIGURE("buffer_act", buffer_act, 0),
	FIGURE("buffer_days", buffer_days, 0),
	FIGURE("change_chlorine", change_chlorine_mg_l, 2),
	FIGURE("change_days", change_days, 0),
	FIGURE("change_gh", change_gh_dh, 1),
	FIGURE("change_kh", change_kh_dh, 1),
	FIGURE("chlorine", chlorine_mg_l, 2),
	FIGURE("chlorine_limit", chlorine_limit, 3),
	FIGURE("co2", co2_mg_l, 0),
	FIGURE("co2_high", co2_high_mg_l, 0),
	FIGURE("co2_limit", co2_limit, 0),
	FIGURE("co2_low", co2_low_mg_l, 0),
	FIGURE("copper", copper_mg_l, 3),
	FIGURE("copper_halves", copper_halves, 0),
	FIGURE("copper_limit", copper_limit, 3),
	FIGURE("deaths", deaths, 0),
	FIGURE("ec_apart", ec_apart_percent, 0),
	FIGURE("ec_apart_limit", ec_apart_limit, 0),
	FIGURE("filter_stopped", filter_stopped_h, 0),
	FIGURE("gh", gh_dh, 1),
	FIGURE("kh", kh_dh, 1),
	FIGURE("kh_act", kh_act, 1),
	FIGURE("kh_apart_limit", kh_apart_limit, 1),
	FIGURE("kh_floor", kh_floor, 1),
	FIGURE("kh_warn", kh_warn, 1),
	FIGURE("lived_days", lived_days, 0),
	FIGURE("nh3", nh3_mg_l, 4),
	FIGURE("nh3_half", nh3_half_mg_l, 3),
	FIGURE("nh3_limit", nh3_limit, 3),
	FIGURE("no2", no2_mg_l, 2),
	FIGURE("no2_limit", no2_limit_mg_l, 2),
	FIGURE("no3", no3_mg_l, 0),
	FIGURE("no3_apart", no3_apart_mg_l, 0),
	FIGURE("no3_apart_limit", no3_apart_limit, 0),
	FIGURE("no3_limit", no3_limit, 0),
	FIGURE("oxygen", oxygen_mg_l, 1),
	FIGURE("oxygen_enough", oxygen_enough, 1),
	FIGURE("oxygen_now", oxygen_now, 1),
	FIGURE("ph", ph, 1),
	FIGURE("ph_swing_high", ph_swing_high, 1),
	FIGURE("ph_swing_low", ph_swing_low, 1),
	FIGURE("ph_trend", ph_trend, 1),
	FIGURE("reading_age", reading_age_days, 0),
	FIGURE("tan", tan_mg_l, 2),
	FIGURE("tan_safe", tan_safe, 2),
};

static void put_figure(struct ts_text *text, double value, int decimals)
{
	if (isnan(value))
		ts_text_put(text, "not known");
	else
		ts_text_number_short(text, value, decimals);
}

/* What a dose every evening would do to this water; nothing where it cannot be computed. */
static void say_chase(struct ts_text *text, const struct ts_care_figures *f)
{
	if (isnan(f->chase_acid_meq_l))
		return;
	if (f->chase_acid_meq_l < 0) {
		ts_text_put(text, " Chasing it upwards would need a dose every evening; by morning "
				  "the pH would read ");
		ts_text_number(text, f->ph, 1);
		ts_text_put(text, " again.");
		return;
	}
	ts_text_put(text, " Chasing it to ");
	ts_text_number(text, f->chase_ph, 1);
	ts_text_put(text, " would take ");
	ts_text_number_short(text, f->chase_acid_meq_l, 1);
	ts_text_put(text, " meq/L of strong acid each evening: ");
	ts_text_number_short(text, f->chase_co2_mg_l, 0);
	ts_text_put(text, " mg/L CO2 at once, pH near ");
	ts_text_number(text, f->ph, 1);
	ts_text_put(text, " again by morning, KH ");
	ts_text_number_short(text, f->chase_kh_dh, 1);
	ts_text_put(text, " after one dose");
	if (!isnan(f->chase_days)) {
		ts_text_put(text, ", none left after ");
		ts_text_number_short(text, f->chase_days, 0);
		ts_text_put(text, " days");
	}
	ts_text_put(text, ".");
}

static void say_animal(struct ts_text *text, const struct ts_match *one)
{
	const struct ts_species *s = one->species;

	ts_text_put(text, s->common.en.count ? s->common.en.items[0] : s->species);
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
	if (!f->mends || goes_on(f))
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

static void put_also(struct ts_text *text, const char *what, double value, const char *unit)
{
	if (!(value > 0))
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

/* How much water is changed again and again while something is to be brought down. */
static void say_small(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_puts(text, f->small_changes ? "10 to 15 % " : "25 % ",
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
		ts_text_put(text, ": then KH ");
		ts_text_number_short(text, f->kh_mend.kh_dh, 1);
		ts_text_put(text, ")");
	} else if (isnan(f->change_kh_dh)) {
		ts_text_put(text, " (");
		ts_text_number_short(text, f->soda_a_degree_g, 0);
		ts_text_put(text, " g of baking soda in 100 L lift KH by 1)");
	}
}

/* What is not known and would tell why they die. */
static void say_to_test(struct ts_text *text, const struct ts_care_figures *f)
{
	static const char *const words[] = {"ammonia", "nitrite", "temperature", "KH"};
	unsigned left = f->untested;

	if (!left) {
		ts_text_put(text, "what was read is in order, so ask a vet for fish");
		return;
	}
	ts_text_put(text, "test ");
	for (unsigned i = 0; i < sizeof words / sizeof *words; i++) {
		if (!(f->untested & 1u << i))
			continue;
		left &= ~(1u << i);
		ts_text_puts(text, f->untested & ((1u << i) - 1) ? left ? ", " : " and " : "",
			words[i], NULL);
	}
	ts_text_put(text, " today; ask a vet if they are in order");
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

static void say_share(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->careful ? "a quarter" : "a third to half");
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

/* What is no figure but a sentence of its own. */
static const struct {
	const char *name;
	void (*say)(struct ts_text *text, const struct ts_care_figures *f);
} sentences[] = {
	{"ammonia_first", say_ammonia_first},
	{"ammonia_too", say_ammonia_too},
	{"ask_change_kh", say_ask_change_kh},
	{"below_ph", say_below_ph},
	{"better", say_better},
	{"both_read", say_both_read},
	{"buffer_is", say_buffer_is},
	{"cause", say_cause},
	{"chase", say_chase},
	{"half", say_half},
	{"do_better", say_do_better},
	{"hardness_is", say_hardness_is},
	{"kh_recipe", say_kh_recipe},
	{"mend", say_mend},
	{"mend_from", say_mend_from},
	{"nitrate_too", say_nitrate_too},
	{"nitrite_too", say_nitrite_too},
	{"no_tap", say_no_tap},
	{"share", say_share},
	{"small", say_small},
	{"some", say_some},
	{"test_ammonia", say_test_ammonia},
	{"test_ph", say_test_ph},
	{"test_tap", say_test_tap},
	{"to_test", say_to_test},
	{"top_up", say_top_up},
	{"unionised", say_unionised},
	{"way_out", say_way_out},
};

static bool is(const char *name, size_t len, const char *what)
{
	return strlen(what) == len && memcmp(name, what, len) == 0;
}

/* The animals of copper, in a word. */
static const char *kind_of(const struct ts_match *one)
{
	static const char *const kinds[TS_ANIMAL__COUNT] = {[TS_ANIMAL_FISH] = "fish",
		[TS_ANIMAL_SHRIMP] = "shrimps",
		[TS_ANIMAL_CRAYFISH] = "crayfish",
		[TS_ANIMAL_CRAB] = "crabs",
		[TS_ANIMAL_SNAIL] = "snails"};

	return kinds[one->species->kind];
}

/* "; 12 or more of them spread the chasing, or one male alone": of fighters of their own kind. */
static void say_company(struct ts_text *text, const struct ts_match *one)
{
	double many = one->species->group.comfortable;

	if (!one->species->to_own_kind || !(many > 4))
		return;
	ts_text_put(text, "; later ");
	ts_text_number_short(text, many, 0);
	ts_text_put(text, " or more of them, which spreads the chasing where the tank has room, or "
			  "one male alone");
}

/* "down to 26 C with shade ..."; by which side it is missed. */
static void say_to_bear(struct ts_text *text, const struct ts_match *one)
{
	const struct ts_parameter_fit *fit = &one->at[TS_TEMPERATURE];
	const struct ts_range *to = isnan(fit->preferred.low) ? &fit->tolerated : &fit->preferred;
	bool warm = fit->outside_by > 0;

	ts_text_put(text, warm ? "down to " : "up to ");
	ts_text_number_short(text, warm ? to->high : to->low, 1);
	ts_text_put(text,
		warm ? " C with shade, an open lid and a moved surface" : " C with the heater");
}

static void say_blend(
	struct ts_text *text, const struct ts_care_figures *f, const struct ts_match *one)
{
	ts_text_put(
		text, f->mend.pure_l > 0
			      ? "Blend the new water before it goes in, since it is too hard for "
			      : "Give the new water minerals before it goes in, since it is too "
				"soft for ");
	ts_say_animals(text, one->species);
}

static void put_named(struct ts_text *text, const char *name, size_t len,
	const struct ts_care_figures *f, const struct ts_match *residents)
{
	const struct ts_match *one = f->animal >= 0 ? &residents[f->animal] : NULL;

	if (is(name, len, "animal") && one)
		say_animal(text, one);
	else if (is(name, len, "miss") && one)
		ts_say_parameter(text, (enum ts_parameter)f->parameter, &one->at[f->parameter]);
	else if (is(name, len, "kind") && one)
		ts_text_put(text, kind_of(one));
	else if (is(name, len, "temper") && one)
		ts_say_temper(text, one->species);
	else if (is(name, len, "company") && one)
		say_company(text, one);
	else if (is(name, len, "to_bear") && one)
		say_to_bear(text, one);
	else if (is(name, len, "blend") && one)
		say_blend(text, f, one);
	for (size_t i = 0; i < sizeof sentences / sizeof *sentences; i++) {
		if (is(name, len, sentences[i].name))
			sentences[i].say(text, f);
	}
	for (size_t i = 0; i < sizeof figures / sizeof *figures; i++) {
		double value;

		if (!is(name, len, figures[i].name))
			continue;
		memcpy(&value, (const char *)f + figures[i].offset, sizeof value);
		put_figure(text, value, figures[i].decimals);
	}
}

static void fill_in(struct ts_text *text, const char *template, const struct ts_advice *advice,
	const struct ts_match *residents)
{
	while (*template) {
		size_t plain = strcspn(template, "{"), name;

		ts_text_add(text, template, plain);
		template += plain;
		if (!*template)
			return;
		name = strcspn(++template, "}");
		put_named(text, template, name, &advice->figures, residents);
		template += name + (template[name] == '}');
	}
}

void ts_say_advice(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents)
{
	fill_in(text, advice->row->says, advice, residents);
}

void ts_say_advice_because(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents)
{
	fill_in(text, advice->row->because, advice, residents);
}

static void say_part(struct ts_text *text, const char *label, const char *template,
	const struct ts_advice *advice, const struct ts_match *residents)
{
	if (!template)
		return;
	ts_text_put(text, label);
	fill_in(text, template, advice, residents);
}

void ts_say_advice_hour(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents)
{
	say_part(text, "In the next hour: ", advice->row->hour, advice, residents);
}

void ts_say_advice_week(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents)
{
	say_part(text, "This week: ", advice->row->week, advice, residents);
}

void ts_say_advice_whole(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents)
{
	ts_say_advice(text, advice, residents);
	say_part(text, " In the next hour: ", advice->row->hour, advice, residents);
	say_part(text, " This week: ", advice->row->week, advice, residents);
}
