/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Filling in templates: one row a figure, with its decimals; parts of sentences that hang on
 * several figures are advice_parts.c's, those of an animal stand here.
 */
#include "words/advice.h"

#include <math.h>
#include <string.h>

#include "stock/rules.h"
#include "words/advice_parts.h"
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
	FIGURE("lived_years", lived_years, 1),
	FIGURE("lives_high", lives_high_years, 0),
	FIGURE("lives_low", lives_low_years, 0),
	FIGURE("newcomer_days", newcomer_days, 0),
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
	FIGURE("supply_gh", supply_gh_dh, 1),
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

static void say_animal(struct ts_text *text, const struct ts_match *one)
{
	const struct ts_species *s = one->species;

	ts_text_put(text, s->common.en.count ? s->common.en.items[0] : s->species);
}

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

	/* A pair with a brood is calmed by no number. */
	if (one->species->own_kind_when == TS_WHEN_BREEDING && one->species->group.pair) {
		ts_text_put(text,
			"; a pair that spawns wants a third of the tank for itself: where "
			"there is not so much, a tank of its own, or one of the two "
			"elsewhere");
		return;
	}
	if (!one->species->to_own_kind || !(many > 4) || !(one->species->group.least > 4))
		return;
	ts_text_put(text, "; later ");
	ts_text_number_short(text, many, 0);
	ts_text_put(text, " or more of them, which spreads the chasing where the tank has room");
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

/* "Too soft for mollies" */
static void say_too(
	struct ts_text *text, const struct ts_care_figures *f, const struct ts_match *one)
{
	bool kh = f->parameter == TS_KH;

	ts_text_put(text, f->too_soft ? kh ? "Too little buffer for " : "Too soft for "
			  : kh        ? "Too much buffer for "
				      : "Too hard for ");
	ts_say_animals(text, one->species);
}

/* What minerals are to those without bones. */
static void say_shells(
	struct ts_text *text, const struct ts_care_figures *f, const struct ts_match *one)
{
	if (f->too_soft && one->species->kind != TS_ANIMAL_FISH)
		ts_text_put(text, " They moult and build shells with it.");
}

/* "; cardinal tetra: GH 18, comfortable to 8: 10 too hard". */
static void say_leap(
	struct ts_text *text, const struct ts_care_figures *f, const struct ts_match *one)
{
	ts_text_put(text, "; ");
	say_animal(text, one);
	ts_text_put(text, ": ");
	ts_say_parameter(text, (enum ts_parameter)f->parameter, &one->at[f->parameter]);
}

/* What the tank is to them already; nothing where it suits them. */
static void say_miss_now(
	struct ts_text *text, const struct ts_care_figures *f, const struct ts_match *one)
{
	if (one->at[f->parameter].uncomfortable_by != 0)
		say_leap(text, f, one);
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
	else if (is(name, len, "shells") && one)
		say_shells(text, f, one);
	else if (is(name, len, "too") && one)
		say_too(text, f, one);
	else if (is(name, len, "leap") && one)
		say_leap(text, f, one);
	else if (is(name, len, "miss_now") && one)
		say_miss_now(text, f, one);
	else if (is(name, len, "blend") && one)
		say_blend(text, f, one);
	for (size_t i = 0; i < ts_advice_part_count; i++) {
		if (is(name, len, ts_advice_parts[i].name))
			ts_advice_parts[i].say(text, f);
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
