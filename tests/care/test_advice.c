/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The decision table: each row is reached and can be the answer, the worked cases, and the
 * properties that guard animals: no answer gets better when a danger value rises or is left out.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../given.h"
#include "care/advice.h"
#include "chem/carbonate.h"
#include "words/advice.h"

static const char *practice[] = {"practice", "practice"};

static struct ts_envelope band(double a, double b, double c, double d)
{
	return (struct ts_envelope){{a, d}, {b, c}, {practice, 2}, NULL};
}

/* Listed pH 6.5-7.5, GH 2-18, 22-28 C. */
static struct ts_species animal(int home)
{
	struct ts_envelope no = {
		{(double)NAN, (double)NAN}, {(double)NAN, (double)NAN}, {NULL, 0}, NULL};
	struct ts_species s = {.species = "Exempla ficta", .home_water = home};

	s.water.usual = s.water.wild = s.water.breeding = (struct ts_envelopes){no, no, no, no, no};
	s.water.usual.ph = band(6.5, 6.5, 7.5, 7.5);
	s.water.usual.gh_dh = band(2, 5, 14, 18);
	s.water.usual.kh_dh = band(0, 0, 12, 16);
	s.water.usual.temp_c = band(22, 24, 26, 28);
	return s;
}

/* A tank in which all is well but what a test changes, with one kind of animal. */
struct tank {
	struct ts_species species;
	struct ts_match match;
	struct ts_solution water;
	struct ts_care_state state;
};

static void match_again(struct tank *t)
{
	struct ts_reading r = {.ph = value(t->state.ph),
		.gh_dh = value(t->state.gh_dh),
		.kh_dh = value(t->state.kh_dh)};
	struct ts_water w = {.readings = &r, .reading_count = 1};
	struct ts_keeping k = {.temperature = value(t->state.temp_c)};
	struct ts_profile p;

	ts_profile_make(&w, &k, NULL, -1, &p);
	ts_match_species(&t->species, &p, &k, NULL, &t->match);
	t->state.residents = &t->match;
	t->state.resident_count = 1;
}

static void open_tank(struct tank *t)
{
	t->species = animal(TS_HOME_MIXED);
	ts_care_state_open(&t->state);
	t->state.ph = 7.2;
	t->state.gh_dh = 9;
	t->state.kh_dh = 9;
	t->state.temp_c = 25;
	t->state.tan_mg_l = t->state.no2_mg_l = 0;
	t->state.cl_mg_l = 30;
	t->state.filter_mature = TS_KNOWN_YES;
	match_again(t);
}

static const char *first(const struct tank *t)
{
	struct ts_advice all[TS_ADVICE_MOST];

	assert_true(ts_advise(&t->state, NULL, all) > 0);
	return all[0].row->id;
}

static void test_table__ids_unique_groups_rising_last_always_holds(void **state)
{
	struct ts_care_state s;
	struct ts_advice all[TS_ADVICE_MOST];

	(void)state;
	for (size_t i = 0; i < ts_advice_row_count; i++) {
		for (size_t j = 0; j < i; j++)
			assert_string_not_equal(ts_advice_rows[i].id, ts_advice_rows[j].id);
		assert_true(i == 0 || ts_advice_rows[i].group >= ts_advice_rows[i - 1].group);
		assert_null(strstr(ts_advice_rows[i].says, "pH down"));
	}
	assert_true(ts_advice_row_count <= TS_ADVICE_MOST);
	ts_care_state_open(&s);
	assert_true(ts_advise(&s, NULL, all) > 0);
	assert_string_equal(all[0].row->id, "ask.gh");
}

typedef void (*change)(struct tank *t);

static void ask_gh(struct tank *t)
{
	t->state.gh_dh = (double)NAN;
}
static void ask_kh(struct tank *t)
{
	t->state.kh_dh = (double)NAN;
}
static void co2(struct tank *t)
{
	t->state.co2_mg_l = 60;
	t->state.co2_low_mg_l = 40;
	t->state.co2_high_mg_l = 90;
}
static void co2_unlikely(struct tank *t)
{
	co2(t);
	t->state.co2_low_mg_l = 400;
	t->state.co2_mg_l = 1000;
	t->state.co2_high_mg_l = 2000;
}
static void injected(struct tank *t)
{
	t->state.co2_injected = true;
	t->state.co2_mg_l = 35;
	t->state.co2_low_mg_l = 20;
	t->state.co2_high_mg_l = 50;
}
static void stood(struct tank *t)
{
	t->state.filter_stopped_h = 3;
}
static void stood_long(struct tank *t)
{
	t->state.filter_stopped_h = 12;
}
static void empty(struct tank *t)
{
	t->state.empty = true;
	t->state.tan_mg_l = 2;
}
static void bare(struct tank *t)
{
	t->state.change_gh_dh = t->state.change_kh_dh = 0;
}
static void swing(struct tank *t)
{
	t->state.ph_swing_low = 7.4;
	t->state.ph_swing_high = 9.2;
}
static void acid_bed(struct tank *t)
{
	t->state.acid_bed = true;
	t->state.lived_days = 400;
	t->state.kh_dh = 1;
}
static void gh_mends(struct tank *t)
{
	t->state.gh_dh = 25;
	match_again(t);
}
static void gh_mends_and_well(struct tank *t)
{
	t->state.lived_long = true;
	gh_mends(t);
}
static void gasp_young(struct tank *t)
{
	t->state.signs = TS_SIGNS_GASPING;
	t->state.filter_mature = TS_KNOWN_NO;
	t->state.tan_mg_l = t->state.no2_mg_l = (double)NAN;
}
static void gasp(struct tank *t)
{
	t->state.signs = TS_SIGNS_GASPING;
}
static void gasp_still(struct tank *t)
{
	gasp(t);
	t->state.filter_none = true;
}
static void gasp_co2(struct tank *t)
{
	gasp(t);
	t->state.co2_injected = true;
}
static void chlorine(struct tank *t)
{
	t->state.chlorine_mg_l = 0.1;
}
static void chlorine_poured(struct tank *t)
{
	gasp(t);
	t->state.change_chlorine_mg_l = 0.5;
}
static void changed(struct tank *t)
{
	gasp(t);
	t->state.beside |= TS_BESIDE_CHANGED;
}
/* What happened these days. */
#define HAPPENED(name, what)                                                                       \
	static void name(struct tank *t)                                                           \
	{                                                                                          \
		t->state.happened = 1u << (what);                                                  \
	}
HAPPENED(poured_untreated, TS_HAPPENED_UNTREATED)
HAPPENED(poison_in, TS_HAPPENED_POISONED)
HAPPENED(heater_stuck, TS_HAPPENED_HEATER_STUCK)
HAPPENED(heater_failed, TS_HAPPENED_HEATER_FAILED)
HAPPENED(filter_washed, TS_HAPPENED_FILTER_WASHED)
HAPPENED(changed_all, TS_HAPPENED_CHANGED)
HAPPENED(overfed, TS_HAPPENED_OVERFED)
HAPPENED(medicine, TS_HAPPENED_MEDICINE)
static void crash(struct tank *t)
{
	t->state.tan_mg_l = 3;
	t->state.ph = 5.6;
	t->state.kh_dh = 0;
}
static void ammonia(struct tank *t)
{
	t->state.tan_mg_l = 2;
	t->state.ph = 8.2;
}
static void nitrite(struct tank *t)
{
	t->state.no2_mg_l = 2;
}
static void oxygen(struct tank *t)
{
	t->state.oxygen_mg_l = 2;
}
static void little_oxygen(struct tank *t)
{
	t->state.oxygen_mg_l = 4.5;
}
static void cold(struct tank *t)
{
	t->state.temp_c = 17;
	match_again(t);
}
static void hot(struct tank *t)
{
	t->state.temp_c = 32;
	match_again(t);
}
static void cool(struct tank *t)
{
	t->state.temp_c = 21;
	match_again(t);
}
static void copper(struct tank *t)
{
	t->species.kind = TS_ANIMAL_SHRIMP;
	match_again(t);
	t->state.copper_mg_l = t->state.copper_low_mg_l = 0.15;
	t->match.copper_borne_mg_l = 0.008;
}
static void medicine_kills(struct tank *t)
{
	t->species.kind = TS_ANIMAL_SHRIMP;
	match_again(t);
	t->state.happened = 1u << TS_HAPPENED_MEDICINE;
	t->state.deaths = 3;
}
static void little_copper(struct tank *t)
{
	copper(t);
	t->state.copper_mg_l = t->state.copper_low_mg_l = 0.02;
}
static void fight(struct tank *t)
{
	t->state.signs = TS_SIGNS_FIGHT | TS_SIGNS_ONE;
	t->species.to_own_kind = 1;
}
static void spots(struct tank *t)
{
	t->state.signs = TS_SIGNS_SPOTS | TS_SIGNS_ONE;
}
static void spots_brought(struct tank *t)
{
	spots(t);
	t->state.newcomer_days = 10;
}
static void newcomers_die(struct tank *t)
{
	t->state.deaths = 3;
	t->state.newcomer_days = 3;
}
static void softened(struct tank *t)
{
	t->state.softened = true;
	t->state.change_gh_dh = 0.5;
	t->state.change_kh_dh = 8;
}
static void supply_changed(struct tank *t)
{
	t->state.supply_before_gh_dh = t->state.gh_dh = 15;
	t->state.change_gh_dh = 6;
	match_again(t);
}
static void floating(struct tank *t)
{
	t->state.signs = TS_SIGNS_ONE | TS_SIGNS_FLOATING;
}
static void source(struct tank *t)
{
	t->state.lived_long = true;
	t->state.gh_dh = 12;
	t->state.kh_dh = 10;
	t->state.change_gh_dh = 5;
	t->state.change_kh_dh = 3;
	t->state.change_percent_week = 40;
	match_again(t);
}
static void source_of_too_much(struct tank *t)
{
	source(t);
	t->state.gh_dh = 17;
	match_again(t);
}
static void sudden(struct tank *t)
{
	t->state.signs = TS_SIGNS_SUDDEN_ALL;
}
static void one_ill(struct tank *t)
{
	t->state.signs = TS_SIGNS_ONE;
}
static void slow(struct tank *t)
{
	t->state.signs = TS_SIGNS_SLOW;
}
static void old(struct tank *t)
{
	slow(t);
	t->species.lives_years = (struct ts_range){2, 3};
	t->state.alone = true;
	t->state.ill = 0;
	t->state.ill_days = 3 * 365;
}
static void worn(struct tank *t)
{
	slow(t);
	t->state.gh_dh = 25;
	match_again(t);
}
static void other(struct tank *t)
{
	t->state.signs = TS_SIGNS_OTHER;
}
static void other_untested(struct tank *t)
{
	other(t);
	t->state.no2_mg_l = (double)NAN;
}
static void gasp_filter(struct tank *t)
{
	gasp(t);
	t->state.filter_stopped_h = 12;
}
static void cold_power(struct tank *t)
{
	cold(t);
	t->state.filter_stopped_h = 6;
}
static void smell(struct tank *t)
{
	t->state.beside = TS_BESIDE_SMELL;
}
static void cloudy(struct tank *t)
{
	t->state.beside = TS_BESIDE_CLOUDY;
}
static void film(struct tank *t)
{
	t->state.beside = TS_BESIDE_FILM;
}
static void tinted(struct tank *t)
{
	t->state.beside = TS_BESIDE_TINTED;
}
static void algae(struct tank *t)
{
	t->state.beside = TS_BESIDE_ALGAE;
}
static void no_filter(struct tank *t)
{
	t->state.filter_none = true;
	t->state.lived_long = false;
	t->state.filter_mature = TS_NOT_KNOWN;
	t->state.lived_in = true;
}
static void borne(struct tank *t)
{
	t->state.kh_dh = 0.8;
	t->state.change_kh_dh = 1;
	t->state.lived_long = true;
	match_again(t);
}
static void stands(struct tank *t)
{
	t->state.filter_stands = true;
}
static void dead(struct tank *t)
{
	t->state.deaths = 3;
}
static void moved_hard(struct tank *t)
{
	dead(t);
	t->state.lived_in = true;
	t->state.lived_days = 1;
}
static void some_ammonia(struct tank *t)
{
	t->state.tan_mg_l = 0.5;
}
static void unready(struct tank *t)
{
	t->state.filter_mature = TS_NOT_KNOWN;
}
static void unripe(struct tank *t)
{
	t->state.filter_mature = TS_KNOWN_NO;
	t->state.lived_in = true;
}
static void old_tank(struct tank *t)
{
	t->state.kh_dh = 0.5;
	t->state.no3_mg_l = 160;
}
static void unfit(struct tank *t)
{
	t->state.change_gh_dh = 30;
	t->state.change_kh_dh = 9;
}
static void drifted(struct tank *t)
{
	t->state.gh_dh = 1;
	t->state.change_gh_dh = 6;
	match_again(t);
}
static void gathered(struct tank *t)
{
	t->state.gh_dh = 14;
	t->state.change_gh_dh = 8;
	match_again(t);
}
static void between(struct tank *t)
{
	t->state.buffer_days = 12;
	t->state.change_days = 21;
}
/* A quarter a week by the file, and an eighth in three weeks by the log. */
static void slipped(struct tank *t)
{
	t->state.change_days = 21;
	t->state.buffer_days = 140;
	t->state.next = (struct ts_care_next){.known = true,
		.test = -1,
		.litres = 8,
		.percent = 12.5,
		.said_litres = 16,
		.said = {25, 7}};
}
static void kh_apart(struct tank *t)
{
	t->state.change_kh_dh = 15;
}
static void ec_apart(struct tank *t)
{
	t->state.ec_us_cm = 600;
	t->state.change_ec_us_cm = 300;
}
static void no3_apart(struct tank *t)
{
	t->state.no3_mg_l = 90;
	t->state.change_no3_mg_l = 5;
}
static void no3_high(struct tank *t)
{
	t->state.no3_mg_l = 120;
}
static void gone(struct tank *t)
{
	t->state.kh_dh = 0.5;
}
static void never_there(struct tank *t)
{
	gone(t);
	t->state.change_kh_dh = 0.5;
}
static void hinted(struct tank *t)
{
	t->state.ph = 5.2;
	t->state.kh_dh = t->state.gh_dh = (double)NAN;
}
static void act(struct tank *t)
{
	t->state.kh_dh = 1.5;
}
static void warn(struct tank *t)
{
	t->state.kh_dh = 3;
}
static void black(struct tank *t)
{
	t->state.kh_dh = 0.5;
	t->species.home_water = TS_HOME_BLACK;
}
static void ph_reads(struct tank *t)
{
	t->state.ph_trend = 0.5;
	t->state.kh_level = true;
}
static void trend(struct tank *t)
{
	t->state.ph_trend = -0.7;
}
static void gh_out(struct tank *t)
{
	t->state.gh_dh = 90; /* mostly pure water would be no mending */
	match_again(t);
}
static void kh_out(struct tank *t)
{
	t->state.kh_dh = 80;
	match_again(t);
}
static void uncomfortable(struct tank *t)
{
	t->state.gh_dh = 17;
	match_again(t);
}
static void ph_young(struct tank *t)
{
	t->state.ph = 8;
	match_again(t);
}
static void ph_untested(struct tank *t)
{
	t->state.lived_long = t->state.ph_repeated = true;
	t->state.ph = 8;
	t->state.tan_mg_l = (double)NAN;
	match_again(t);
}
static void ph_once(struct tank *t)
{
	t->state.lived_long = true;
	t->state.ph = 8;
	match_again(t);
}
static void ph_known(struct tank *t)
{
	t->state.lived_long = t->state.ph_repeated = true;
	t->state.ph = 8;
	match_again(t);
}
static void untested(struct tank *t)
{
	t->state.no2_mg_l = (double)NAN;
}
static void nothing(struct tank *t)
{
	(void)t;
}

static const struct {
	const char *id;
	change change;
} reached[] = {
	{"ask.gh", ask_gh},
	{"ask.kh", ask_kh},
	{"now.gasping-co2", gasp_co2},
	{"now.gasping-filter", gasp_filter},
	{"now.gasping-young", gasp_young},
	{"now.gasping-still", gasp_still},
	{"now.gasping", gasp},
	{"now.crash", crash},
	{"now.oxygen", oxygen},
	{"now.ammonia", ammonia},
	{"now.nitrite", nitrite},
	{"now.copper-move", copper},
	{"now.copper", little_copper},
	{"now.medicine", medicine_kills},
	{"now.co2-unlikely", co2_unlikely},
	{"now.co2", co2},
	{"now.chlorine", chlorine},
	{"now.chlorine-poured", chlorine_poured},
	{"now.changed", changed},
	{"now.untreated", poured_untreated},
	{"now.poison", poison_in},
	{"now.heat", hot},
	{"now.cold-power", cold_power},
	{"now.cold", cold},
	{"now.heater-stuck", heater_stuck},
	{"now.heater-failed", heater_failed},
	{"vet.sudden-all", sudden},
	{"vet.fight", fight},
	{"vet.spots-brought", spots_brought},
	{"vet.spots", spots},
	{"vet.floating", floating},
	{"vet.one", one_ill},
	{"vet.minerals", worn},
	{"vet.age", old},
	{"vet.slow", slow},
	{"vet.newcomers", newcomers_die},
	{"vet.moved", moved_hard},
	{"vet.deaths", dead},
	{"vet.untested", other_untested},
	{"vet.other", other},
	{"filter.stood-long", stood_long},
	{"filter.stood", stood},
	{"filter.stands", stands},
	{"filter.washed", filter_washed},
	{"changed.all", changed_all},
	{"overfed", overfed},
	{"medicine", medicine},
	{"filter.maturing", empty},
	{"filter.reading", some_ammonia},
	{"filter.none", no_filter},
	{"filter.unripe", unripe},
	{"filter.unready", unready},
	{"old-tank", old_tank},
	{"apart.softened", softened},
	{"apart.supply", supply_changed},
	{"apart.bare", bare},
	{"apart.blend", unfit},
	{"apart.kh", kh_apart},
	{"apart.ec", ec_apart},
	{"apart.gh", gathered},
	{"apart.source", source_of_too_much},
	{"apart.no3", no3_apart},
	{"oxygen.short", little_oxygen},
	{"nitrate.high", no3_high},
	{"light.swing", swing},
	{"algae", algae},
	{"seen.smell", smell},
	{"seen.cloudy", cloudy},
	{"seen.film", film},
	{"seen.tinted", tinted},
	{"co2.watch", injected},
	{"leave.acid-bed", acid_bed},
	{"leave.source", source},
	{"routine.slipped", slipped},
	{"buffer.gone-soft", never_there},
	{"buffer.gone", gone},
	{"buffer.hinted", hinted},
	{"buffer.act", act},
	{"buffer.between", between},
	{"buffer.borne", borne},
	{"buffer.warn", warn},
	{"black-water", black},
	{"ph.reads", ph_reads},
	{"ph.trend", trend},
	{"stock.stay", gh_mends_and_well},
	{"stock.minerals", gh_mends},
	{"stock.drifted", drifted},
	{"stock.gh", gh_out},
	{"stock.kh", kh_out},
	{"stock.temperature", cool},
	{"leave.comfort", uncomfortable},
	{"leave.ph-young", ph_young},
	{"leave.ph-untested", ph_untested},
	{"leave.ph-once", ph_once},
	{"leave.ph", ph_known},
	{"leave.untested", untested},
	{"leave.all", nothing},
};

/* So no row is idle, and no two can both be first: each state has one first row, its own. */
static void test_table__every_row_can_be_the_answer(void **state)
{
	size_t beside = 0;

	(void)state;

	while (ts_advice_rows[ts_advice_row_count - 1 - beside].group == 11)
		beside++;
	assert_int_equal(sizeof reached / sizeof *reached, ts_advice_row_count - beside);
	for (size_t i = 0; i < sizeof reached / sizeof *reached; i++) {
		struct tank t;

		open_tank(&t);
		reached[i].change(&t);
		assert_string_equal(reached[i].id, ts_advice_rows[i].id);
		assert_string_equal(first(&t), reached[i].id);
	}
}

static bool said(const struct tank *t, const char *id)
{
	struct ts_advice all[TS_ADVICE_MOST];
	size_t count = ts_advise(&t->state, NULL, all);

	for (size_t i = 0; i < count; i++) {
		if (strcmp(all[i].row->id, id) == 0)
			return true;
	}
	return false;
}

/* Beside any answer: readings that are old, and a holiday. */
static void test_beside__old_readings_and_a_holiday(void **state)
{
	struct tank t;

	(void)state;
	open_tank(&t);
	t.state.reading_age_days = 56;
	assert_false(said(&t, "ask.again") || said(&t, "away"));
	t.state.reading_age_days = 57;
	t.state.away_days = 14;
	assert_true(said(&t, "ask.again") && said(&t, "away"));
	gasp(&t);
	assert_true(said(&t, "away"));
}

/* Gas by its low end alone, and no order about it where it is injected and they are well. */
static void test_co2__by_its_low_end(void **state)
{
	struct tank t;

	(void)state;
	open_tank(&t);
	co2(&t);
	t.state.co2_low_mg_l = 25;
	assert_false(said(&t, "now.co2"));
	t.state.co2_low_mg_l = 40;
	assert_true(said(&t, "now.co2"));
	t.state.co2_injected = true;
	assert_false(said(&t, "now.co2"));
	assert_true(said(&t, "co2.watch"));
	gasp(&t);
	assert_string_equal(first(&t), "now.gasping-co2");
}

/* Nothing calls them settled, or a pH steady, of one reading or four days. */
static void test_ph__steady_only_over_time(void **state)
{
	struct tank t;

	(void)state;
	open_tank(&t);
	t.state.ph = 8;
	match_again(&t);
	assert_string_equal(first(&t), "leave.ph-young");
	t.state.lived_long = true;
	assert_string_equal(first(&t), "leave.ph-once");
	t.state.ph_repeated = true;
	assert_string_equal(first(&t), "leave.ph");
}

/* A year of health on active soil: left alone, whatever the buffer reads; with losses it is not. */
static void test_acid_bed__a_year_of_health(void **state)
{
	struct tank t;

	(void)state;
	open_tank(&t);
	acid_bed(&t);
	t.state.kh_dh = 0.5;
	assert_string_equal(first(&t), "leave.acid-bed");
	assert_false(said(&t, "buffer.gone"));
	t.state.deaths = 1;
	assert_true(said(&t, "buffer.gone"));
	t.state.deaths = 0;
	t.state.lived_days = 20;
	assert_true(said(&t, "buffer.gone"));
}

/* Nobody is sent away for a figure that a spoon of salt mends. */
static void test_minerals__mended_before_anybody_goes(void **state)
{
	struct ts_advice all[TS_ADVICE_MOST];
	struct tank t;

	(void)state;
	open_tank(&t);
	gh_mends_and_well(&t);
	assert_true(ts_advise(&t.state, NULL, all) > 0);
	assert_string_equal(all[0].row->id, "stock.stay");
	assert_true(all[0].figures.mends && all[0].figures.mend.pure_l > 0);
	assert_false(said(&t, "stock.gh"));
}

/* No sentence is left with a hole in it. */
static void test_words__every_row_is_filled_in(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof reached / sizeof *reached; i++) {
		struct ts_advice all[TS_ADVICE_MOST];
		struct ts_text text;
		struct tank t;

		open_tank(&t);
		reached[i].change(&t);
		assert_true(ts_advise(&t.state, NULL, all) > 0);
		ts_text_open(&text, NULL);
		ts_say_advice(&text, &all[0], t.state.residents);
		assert_true(text.len > 20);
		ts_say_advice_because(&text, &all[0], t.state.residents);
		ts_say_advice_whole(&text, &all[0], t.state.residents);
		assert_null(strpbrk(ts_text_get(&text), "{}?"));
		assert_null(strstr(ts_text_get(&text), ": ."));
		ts_text_drop(&text);
	}
}

/* A settled fish listed 6.5-7.5 at a steady 8.0, GH 9, KH 9: what chasing 7.0 would cost. */
static void test_settled_at_a_steady_8__left_alone_with_the_cost_of_chasing(void **state)
{
	struct ts_advice all[TS_ADVICE_MOST];
	struct tank t;

	(void)state;
	open_tank(&t);
	assert_int_equal(ts_solution_from_hardness(9, 9, 25, &t.water), TS_OK);
	assert_int_equal(ts_chem_dic_from_ph(&t.water, 8.0, &t.water.dic_mmol_l), TS_OK);
	t.state.ph = 8.0;
	t.state.lived_long = t.state.ph_repeated = true;
	t.state.tank = &t.water;
	match_again(&t);
	ts_advise(&t.state, NULL, all);
	assert_string_equal(all[0].row->id, "leave.ph");
	assert_true(fabs(all[0].figures.chase_ph - 7.0) < 1e-9);
	assert_true(fabs(all[0].figures.chase_acid_meq_l - 0.5) < 0.05);
	assert_true(fabs(all[0].figures.chase_co2_mg_l - 24) < 1.5);
	assert_true(fabs(all[0].figures.chase_kh_dh - 7.6) < 0.1);
	assert_true(all[0].figures.chase_days <= 7);
}

/* KH 0, pH 5.6, TAN 3; tap KH 10: half a tank of it multiplies the poison about eighty-fold. */
static void test_crashed__do_not_change_half(void **state)
{
	struct ts_advice all[TS_ADVICE_MOST];
	struct tank t;

	(void)state;
	open_tank(&t);
	crash(&t);
	t.state.kh_dh = 0.2;
	t.state.change_kh_dh = 10;
	t.state.no3_mg_l = 160;
	t.state.deaths = 4;
	ts_advise(&t.state, NULL, all);
	assert_string_equal(all[0].row->id, "now.crash");
	assert_int_equal(all[0].row->urgency, TS_NOW);
	assert_true(fabs(all[0].figures.nh3_mg_l - 0.0007) < 0.0001);
	assert_true(fabs(all[0].figures.nh3_half_mg_l - 0.054) < 0.004);
}

static void test_leaving_alone_is_not_added_behind_trouble(void **state)
{
	struct ts_advice all[TS_ADVICE_MOST];
	struct tank t;
	size_t count;

	(void)state;
	open_tank(&t);
	ph_known(&t);
	nitrite(&t);
	count = ts_advise(&t.state, NULL, all);
	for (size_t i = 0; i < count; i++)
		assert_int_not_equal(all[i].row->outcome, TS_LEAVE_ALONE);
}

/* What was read explains deaths: it leads, and nobody is told to go and find out why. */
static void test_a_cause_that_was_read_goes_before_guessing(void **state)
{
	static const struct {
		change cause;
		const char *id;
	} causes[] = {{copper, "now.copper-move"}, {chlorine, "now.chlorine"},
		{nitrite, "now.nitrite"}, {ammonia, "now.ammonia"}, {oxygen, "now.oxygen"},
		{little_oxygen, "oxygen.short"}, {cold, "now.cold"}, {hot, "now.heat"},
		{cool, "stock.temperature"}, {gone, "buffer.gone"},
		{some_ammonia, "filter.reading"}};

	(void)state;
	for (size_t i = 0; i < sizeof causes / sizeof *causes; i++) {
		struct ts_advice all[TS_ADVICE_MOST];
		struct tank t;
		size_t count;

		open_tank(&t);
		causes[i].cause(&t);
		dead(&t);
		count = ts_advise(&t.state, NULL, all);
		assert_string_equal(all[0].row->id, causes[i].id);
		for (size_t k = 0; k < count; k++)
			assert_string_not_equal(all[k].row->id, "vet.deaths");
	}
}

static struct ts_advice leading(const struct tank *t)
{
	struct ts_advice all[TS_ADVICE_MOST];

	assert_true(ts_advise(&t->state, NULL, all) > 0);
	return all[0];
}

/* Harder than its new water: topping up explains it, or something gives hardness off. */
static void test_harder_than_its_tap__what_topping_up_explains(void **state)
{
	struct tank t;

	(void)state;
	open_tank(&t);
	source(&t);
	/* 8 % lost in an open tank beside 40 % changed: 5 (1 + 8 / 40). */
	assert_true(fabs(leading(&t).figures.piled_gh_dh - 6) < 1e-9);
	assert_true(fabs(leading(&t).figures.piled_kh_dh - 3.6) < 1e-9);
	assert_string_equal(first(&t), "leave.source");
	assert_false(said(&t, "apart.kh") || said(&t, "apart.gh"));
	/* So little is changed that what evaporates piles it up: 5 (1 + 8 / 4) = 15. */
	t.state.change_percent_week = 4;
	t.state.kh_dh = 9;
	match_again(&t);
	assert_string_equal(first(&t), "apart.kh");
	t.state.pure_top_up = true;
	assert_string_equal(first(&t), "leave.source");
	/* Who is not well, or has come lately, proves nothing. */
	t.state.change_percent_week = 40;
	t.state.lived_long = false;
	assert_string_not_equal(first(&t), "leave.source");
	t.state.lived_long = true;
	dead(&t);
	assert_false(said(&t, "leave.source"));
	/* Nitrate is brought down first. */
	t.state.deaths = (double)NAN;
	no3_high(&t);
	assert_false(said(&t, "leave.source"));
	assert_false(said(&t, "apart.kh") || said(&t, "apart.gh"));
}

/* Nobody is brought out of what it likes towards softer water. */
static void test_harder_than_its_tap__never_below_what_they_like(void **state)
{
	struct tank t;

	(void)state;
	open_tank(&t);
	source(&t);
	t.state.lived_long = false;
	t.species.water.usual.kh_dh = band(2, 6, 14, 18);
	match_again(&t);
	assert_string_equal(first(&t), "apart.blend");
	assert_false(said(&t, "apart.kh"));
}

/* Air before what harms slowly; grave nitrite is a cause of gasping itself. */
static void test_gasping__air_before_slight_nitrite(void **state)
{
	struct tank t;

	(void)state;
	open_tank(&t);
	t.state.cl_mg_l = (double)NAN;
	t.state.no2_mg_l = 0.2;
	assert_string_equal(first(&t), "now.nitrite");
	gasp(&t);
	assert_string_equal(first(&t), "now.gasping");
	assert_true(said(&t, "filter.reading"));
	t.state.oxygen_mg_l = 4;
	assert_string_equal(first(&t), "now.oxygen");
	t.state.no2_mg_l = 3;
	assert_string_equal(first(&t), "now.nitrite");
	t.state.oxygen_mg_l = 2;
	assert_string_equal(first(&t), "now.oxygen");
	assert_true(said(&t, "now.nitrite"));
}

/* Deaths soon after an arrival; signs, or a cause that was read, say something else. */
static void test_newcomers_die__of_the_leap(void **state)
{
	struct tank t;

	(void)state;
	open_tank(&t);
	newcomers_die(&t);
	t.state.gh_dh = 17;
	match_again(&t);
	assert_string_equal(first(&t), "vet.newcomers");
	assert_int_equal(leading(&t).figures.parameter, TS_GH);
	assert_false(said(&t, "vet.deaths"));
	nitrite(&t);
	assert_string_equal(first(&t), "now.nitrite");
	assert_false(said(&t, "vet.newcomers"));
	t.state.no2_mg_l = 0;
	t.state.newcomer_days = 40;
	assert_string_equal(first(&t), "vet.deaths");
}

/* Who lives well for long at a KH that all like has no buffer that is short. */
static void test_buffer__little_that_is_liked_is_left_alone(void **state)
{
	struct tank t;

	(void)state;
	open_tank(&t);
	t.state.kh_dh = t.state.change_kh_dh = 3;
	t.state.buffer_days = 300;
	match_again(&t);
	assert_string_equal(first(&t), "buffer.warn");
	t.state.lived_long = true;
	assert_string_equal(first(&t), "leave.all");
	t.state.buffer_days = (double)NAN;
	assert_string_equal(first(&t), "buffer.warn");
	t.state.buffer_days = 300;
	t.state.change_kh_dh = (double)NAN;
	assert_string_equal(first(&t), "leave.all");
	t.state.change_kh_dh = 1;
	assert_string_equal(first(&t), "buffer.warn");
}

/* A gram to ten litres is borne by fish of soft water too; not by catfish and shrimps. */
static void test_nitrite__salt_by_who_lives_there(void **state)
{
	struct tank t;

	(void)state;
	open_tank(&t);
	nitrite(&t);
	assert_true(leading(&t).figures.salt_borne);
	t.species.family = "Callichthyidae";
	assert_false(leading(&t).figures.salt_borne);
	t.species.family = "Poeciliidae";
	t.species.water.usual.gh_dh = band(4, 8, 20, 28);
	match_again(&t);
	assert_true(leading(&t).figures.salt_borne);
	t.species.kind = TS_ANIMAL_SHRIMP;
	match_again(&t);
	assert_false(leading(&t).figures.salt_borne);
}

static double random_in(unsigned *seed, double low, double high)
{
	*seed = *seed * 1664525u + 1013904223u;
	return low + (double)(*seed >> 8) / 16777216.0 * (high - low);
}

static void random_tank(struct tank *t, unsigned *seed)
{
	open_tank(t);
	t->state.ph = random_in(seed, 5, 9);
	t->state.gh_dh = random_in(seed, 0, 25);
	t->state.kh_dh = random_in(seed, 0, 15);
	t->state.temp_c = random_in(seed, 18, 30);
	match_again(t);
	t->state.tan_mg_l = random_in(seed, 0, 1) < 0.5 ? 0 : random_in(seed, 0, 3);
	t->state.no2_mg_l = random_in(seed, 0, 1) < 0.5 ? 0 : random_in(seed, 0, 2);
	t->state.chlorine_mg_l = random_in(seed, 0, 1) < 0.5 ? 0 : random_in(seed, 0, 0.05);
	if (random_in(seed, 0, 1) < 0.2)
		t->state.gh_dh = (double)NAN;
	if (random_in(seed, 0, 1) < 0.2)
		t->state.kh_dh = (double)NAN;
	if (random_in(seed, 0, 1) < 0.2)
		t->state.ph = (double)NAN;
	t->state.deaths = random_in(seed, 0, 1) < 0.2 ? 2 : 0;
	t->state.filter_mature = (enum ts_known)(int)random_in(seed, 0, 2.99);
	t->state.signs = random_in(seed, 0, 1) < 0.3 ? 1u << (int)random_in(seed, 0, 4.99) : 0;
}

static enum ts_urgency urgency(const struct tank *t)
{
	struct ts_advice all[TS_ADVICE_MOST];

	ts_advise(&t->state, NULL, all);
	return all[0].row->urgency;
}

static bool leaves_alone(const struct tank *t)
{
	struct ts_advice all[TS_ADVICE_MOST];

	ts_advise(&t->state, NULL, all);
	return all[0].row->outcome == TS_LEAVE_ALONE;
}

static void test_property__no_better_when_a_danger_value_rises(void **state)
{
	unsigned seed = 31;

	(void)state;
	for (int i = 0; i < 3000; i++) {
		struct tank t;
		double *danger[] = {&t.state.tan_mg_l, &t.state.no2_mg_l, &t.state.chlorine_mg_l};
		double *one = danger[i % 3];
		enum ts_urgency before = TS_AT_LEISURE;
		bool alone_before = true;

		random_tank(&t, &seed);
		*one = 0;
		for (int step = 0; step < 8; step++) {
			assert_true(urgency(&t) <= before);
			assert_true(alone_before || !leaves_alone(&t));
			before = urgency(&t);
			alone_before = leaves_alone(&t);
			*one += random_in(&seed, 0, step < 4 ? 0.3 : 2);
		}
	}
}

static void test_property__no_better_than_nil_when_a_danger_value_is_left_out(void **state)
{
	unsigned seed = 57;

	(void)state;
	for (int i = 0; i < 3000; i++) {
		struct tank t;
		double *danger[] = {&t.state.tan_mg_l, &t.state.no2_mg_l, &t.state.chlorine_mg_l};
		double *one = danger[i % 3];
		enum ts_urgency nil;
		bool alone;

		random_tank(&t, &seed);
		*one = 0;
		nil = urgency(&t);
		alone = leaves_alone(&t);
		*one = (double)NAN;
		assert_true(urgency(&t) <= nil);
		assert_true(alone || !leaves_alone(&t));
	}
}

/* How much water is changed, as sentences say it; the longer before what it holds. */
static const char *const shares[] = {
	"a third to half", "a quarter", "10 to 15 %", "15 % a day", "25 %", "50 %"};

/* Which of them an answer says, bits; and how many recipes for new water. */
static unsigned shares_of(const struct tank *t, unsigned *ret_recipes, bool *ret_feeds_twice)
{
	struct ts_advice all[TS_ADVICE_MOST];
	size_t count = ts_advise(&t->state, NULL, all);
	struct ts_text text;
	unsigned said = 0;

	ts_text_open(&text, NULL);
	for (size_t i = 0; i < count; i++)
		ts_say_advice_whole(&text, &all[i], t->state.residents);
	*ret_feeds_twice =
		strstr(ts_text_get(&text), "eed nothing") && strstr(ts_text_get(&text), "eed half");
	*ret_recipes = 0;
	for (const char *at = ts_text_get(&text); (at = strstr(at, "ach 100 L")); at++)
		++*ret_recipes;
	for (unsigned i = 0; i < sizeof shares / sizeof *shares; i++)
		said |= strstr(ts_text_get(&text), shares[i]) ? 1u << i : 0;
	ts_text_drop(&text);
	return said;
}

static void random_waters(struct tank *t, unsigned *seed)
{
	random_tank(t, seed);
	t->state.change_gh_dh = random_in(seed, 0, 25);
	t->state.change_kh_dh = random_in(seed, 0, 15);
	t->state.no3_mg_l = random_in(seed, 0, 200);
	t->state.change_no3_mg_l = random_in(seed, 0, 30);
	t->state.oxygen_mg_l = random_in(seed, 0, 1) < 0.5 ? 8 : random_in(seed, 1, 8);
	t->state.buffer_days = random_in(seed, 1, 60);
	t->state.change_days = random_in(seed, 3, 30);
	t->state.lived_long = random_in(seed, 0, 1) < 0.5;
	t->state.signs = random_in(seed, 0, 1) < 0.5 ? 1u << (int)random_in(seed, 0, 7.99) : 0;
	if (random_in(seed, 0, 1) < 0.5)
		t->state.change_percent_week = random_in(seed, 2, 60);
	if (random_in(seed, 0, 1) < 0.2)
		t->state.newcomer_days = random_in(seed, 0, 80);
	if (random_in(seed, 0, 1) < 0.2)
		t->state.filter_stopped_h = random_in(seed, 1, 30);
	t->state.filter_stands = random_in(seed, 0, 1) < 0.1;
	t->state.beside = (unsigned)random_in(seed, 0, 15.99);
	if (random_in(seed, 0, 1) < 0.2)
		t->state.happened = (unsigned)random_in(seed, 0, 1u << 17);
	t->state.softened = random_in(seed, 0, 1) < 0.1;
	if (random_in(seed, 0, 1) < 0.2)
		t->state.cl_mg_l = (double)NAN;
	if (random_in(seed, 0, 1) < 0.2)
		t->state.change_gh_dh = t->state.change_kh_dh = (double)NAN;
}

/* Whoever reads one answer is told one share to change, one recipe, one order about food. */
static void test_property__one_share_and_one_recipe_in_an_answer(void **state)
{
	unsigned seed = 71, some = 0;

	(void)state;
	for (int i = 0; i < 20000; i++) {
		struct tank t;
		unsigned said, recipes;
		bool feeds_twice;

		random_waters(&t, &seed);
		said = shares_of(&t, &recipes, &feeds_twice);
		if (feeds_twice)
			print_error("case %d: two orders about food, first %s\n", i, first(&t));
		assert_false(feeds_twice);
		/* Where nobody read pH or KH, both states are answered. */
		if (isnan(t.state.ph) && isnan(t.state.kh_dh))
			said &= ~(1u << 3);
		some += said != 0;
		if ((said & (said - 1)) || recipes > 1)
			print_error("case %d: shares %x, %u recipes, first %s\n", i, said, recipes,
				first(&t));
		assert_true(recipes <= 1);
		assert_int_equal(said & (said - 1), 0);
	}
	assert_true(some > 5000);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_table__ids_unique_groups_rising_last_always_holds),
		cmocka_unit_test(test_table__every_row_can_be_the_answer),
		cmocka_unit_test(test_words__every_row_is_filled_in),
		cmocka_unit_test(test_beside__old_readings_and_a_holiday),
		cmocka_unit_test(test_co2__by_its_low_end),
		cmocka_unit_test(test_ph__steady_only_over_time),
		cmocka_unit_test(test_acid_bed__a_year_of_health),
		cmocka_unit_test(test_minerals__mended_before_anybody_goes),
		cmocka_unit_test(test_settled_at_a_steady_8__left_alone_with_the_cost_of_chasing),
		cmocka_unit_test(test_crashed__do_not_change_half),
		cmocka_unit_test(test_leaving_alone_is_not_added_behind_trouble),
		cmocka_unit_test(test_a_cause_that_was_read_goes_before_guessing),
		cmocka_unit_test(test_harder_than_its_tap__what_topping_up_explains),
		cmocka_unit_test(test_harder_than_its_tap__never_below_what_they_like),
		cmocka_unit_test(test_gasping__air_before_slight_nitrite),
		cmocka_unit_test(test_newcomers_die__of_the_leap),
		cmocka_unit_test(test_buffer__little_that_is_liked_is_left_alone),
		cmocka_unit_test(test_nitrite__salt_by_who_lives_there),
		cmocka_unit_test(test_property__no_better_when_a_danger_value_rises),
		cmocka_unit_test(test_property__no_better_than_nil_when_a_danger_value_is_left_out),
		cmocka_unit_test(test_property__one_share_and_one_recipe_in_an_answer),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
