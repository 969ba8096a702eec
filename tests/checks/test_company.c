/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Truths about company that keepers agree on (common practice, no source), over the shipped
 * records: who is harmed, by whom, and how gravely. A record that loses one of these is wrong.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include "stock/check.h"
#include "stock/rules.h"

struct shelf {
	struct ts_catalogue catalogue;
	struct ts_arena arena;
};

#define LINES 6

/* A plan: the tank, the water, up to LINES lines, and what must be said of it. */
struct truth {
	const char *name;
	double length_cm, width_cm, height_cm;
	double gh_dh, kh_dh, ph, temp_low_c, temp_high_c;
	struct {
		const char *species;
		unsigned count;
		int sex;
	} lines[LINES];
	enum ts_plan_verdict verdict;
	struct {
		enum ts_rule_id rule;
		enum ts_severity severity;
	} says[4];
	size_t say_count;
};

/* clang-format off */
#define TANK(l, w, h) l, w, h
#define SOFT 6, 4, 6.8
#define MIDDLE 10, 6, 7.4
#define HARD 16, 10, 8.0
static const struct truth truths[] = {
	{"a male betta with nipping barbs", TANK(100, 40, 45), MIDDLE, 25, 26,
		{{"betta", 1, TS_SEX_MALE}, {"tiger barb", 8, 0}}, TS_PLAN_UNSOUND,
		{{TS_RULE_FIN_NIPPER, TS_CONFLICT}}, 1},
	{"goldfish with tropical fish", TANK(150, 50, 50), MIDDLE, 22, 22,
		{{"goldfish", 3, 0}, {"betta", 1, TS_SEX_MALE}, {"neon tetra", 8, 0}}, TS_PLAN_UNSOUND,
		{{TS_RULE_TEMPERATURE_APART, TS_CONFLICT}, {TS_RULE_EATEN, TS_CONFLICT}}, 2},
	{"shrimps with large cichlids", TANK(150, 50, 50), MIDDLE, 25, 26,
		{{"Neocaridina davidi", 20, 0}, {"Astronotus ocellatus", 2, 0}}, TS_PLAN_UNSOUND,
		{{TS_RULE_EATEN, TS_CONFLICT}}, 1},
	{"three male dwarf gouramis in 60 cm", TANK(60, 30, 30), MIDDLE, 25, 26,
		{{"Trichogaster lalius", 3, TS_SEX_MALE}}, TS_PLAN_UNSOUND,
		{{TS_RULE_TERRITORY, TS_CONFLICT}}, 1},
	{"six neons with an adult angelfish", TANK(120, 50, 50), SOFT, 25, 26,
		{{"Pterophyllum scalare", 5, 0}, {"neon tetra", 6, 0}}, TS_PLAN_UNSOUND,
		{{TS_RULE_EATEN, TS_CONFLICT}}, 1},
	{"rift-lake cichlids with soft-water tetras", TANK(150, 50, 50), HARD, 25, 26,
		{{"Maylandia estherae", 15, 0}, {"neon tetra", 10, 0}}, TS_PLAN_UNSOUND,
		{{TS_RULE_CHASED, TS_CONFLICT}}, 1},
	{"a common pleco in 60 litres", TANK(60, 30, 36), MIDDLE, 25, 26,
		{{"Pterygoplichthys pardalis", 1, 0}}, TS_PLAN_UNSOUND,
		{{TS_RULE_TANK_LENGTH, TS_CONFLICT}, {TS_RULE_TANK_WIDTH, TS_CONFLICT}}, 2},
	{"two Corydoras", TANK(80, 35, 40), MIDDLE, 24, 25,
		{{"Osteogaster aenea", 2, 0}}, TS_PLAN_SOUND_IF,
		{{TS_RULE_FEW, TS_CONCERN}}, 1},
	{"discus at 24 C", TANK(150, 60, 60), SOFT, 24, 24,
		{{"Symphysodon haraldi", 6, 0}}, TS_PLAN_UNSOUND,
		{{TS_RULE_WATER, TS_CONFLICT}}, 1},
	{"a brackish puffer in fresh water", TANK(120, 50, 50), HARD, 25, 26,
		{{"Dichotomyctere nigroviridis", 1, 0}}, TS_PLAN_UNSOUND,
		{{TS_RULE_WATER, TS_CONFLICT}}, 1},
	{"three mbuna", TANK(120, 50, 50), HARD, 25, 26,
		{{"Maylandia estherae", 3, 0}}, TS_PLAN_UNSOUND,
		{{TS_RULE_FEW, TS_CONFLICT}}, 1},
	{"ten mbuna", TANK(120, 50, 50), HARD, 25, 26,
		{{"Maylandia estherae", 10, 0}}, TS_PLAN_SOUND,
		{{TS_RULE_UNSETTLED, TS_NOTE}}, 1},
	{"a peaceful soft-water community", TANK(120, 40, 50), SOFT, 24, 25,
		{{"Paracheirodon axelrodi", 15, 0}, {"Corydoras sterbai", 10, 0}, {"Nannostomus marginatus", 10, 0}},
		TS_PLAN_SOUND, {{0, 0}}, 0},
	{"goldfish, neons and a male betta, unheated", TANK(60, 30, 36), MIDDLE, 17, 22,
		{{"goldfish", 2, 0}, {"neon tetra", 6, 0}, {"betta", 1, TS_SEX_MALE}}, TS_PLAN_UNSOUND,
		{{TS_RULE_TEMPERATURE_APART, TS_CONFLICT}, {TS_RULE_EATEN, TS_CONFLICT}, {TS_RULE_WATER, TS_CONFLICT}, {TS_RULE_NITRATE_LOAD, TS_CONFLICT}}, 4},
};
/* clang-format on */
#define TRUTHS (sizeof truths / sizeof *truths)

static struct shelf shelf;

static struct ts_measure between(double low, double high)
{
	return (struct ts_measure){
		(low + high) / 2, low, high, low < high ? TS_MEASURE_RANGE : TS_MEASURE_VALUE};
}

static void judge(const struct truth *t, struct ts_check *ret)
{
	static struct ts_reading reading;
	static struct ts_stock_line lines[LINES];
	const struct ts_species *species[LINES];
	struct ts_plan plan = {.water = {.readings = &reading, .reading_count = 1},
		.stock = lines,
		.tank = {.length_cm = t->length_cm,
			.width_cm = t->width_cm,
			.height_cm = t->height_cm,
			.temp_c = between(t->temp_low_c, t->temp_high_c),
			.cover = TS_COVER_YES,
			.plants = TS_PLANTS_SOME,
			.feeding = {TS_FEEDING_ORDINARY, 0},
			.water_change = {30, 7},
			.filter = TS_FILTER_MATURE}};

	reading = (struct ts_reading){.gh_dh = between(t->gh_dh, t->gh_dh),
		.kh_dh = between(t->kh_dh, t->kh_dh),
		.ph = between(t->ph, t->ph),
		.method = TS_METHOD_DROPS};
	for (; plan.stock_count < LINES && t->lines[plan.stock_count].species; plan.stock_count++) {
		size_t i = plan.stock_count;

		lines[i] = (struct ts_stock_line){.species = t->lines[i].species,
			.count = t->lines[i].count,
			.sex = t->lines[i].sex};
		species[i] = ts_catalogue_species(&shelf.catalogue, lines[i].species, NULL);
		if (!species[i])
			fail_msg("%s is not in the catalogue", lines[i].species);
	}
	ts_arena_drop(&shelf.arena);
	assert_int_equal(ts_check_plan(&plan, species, -1, NULL, &shelf.arena, ret), TS_OK);
}

static void test_truth(void **state)
{
	const struct truth *t = *state;
	struct ts_check check;

	judge(t, &check);
	for (size_t k = 0; k < t->say_count; k++) {
		bool said = false;

		for (size_t i = 0; i < check.count; i++)
			said |= check.rulings[i].rule == t->says[k].rule &&
				check.rulings[i].severity == t->says[k].severity;
		if (!said)
			fail_msg("%s is not said", ts_rule_rows[t->says[k].rule].code);
	}
	assert_int_equal(check.verdict, t->verdict);
}

/* A repair of three groups that cannot be together keeps one. */
static void test_unheated__one_group_is_kept(void **state)
{
	struct ts_check check;
	size_t kept = 3;

	(void)state;
	judge(&truths[TRUTHS - 1], &check);
	for (size_t i = 0; i < check.repair_count; i++)
		kept -= check.repair[i].remedy.to == 0;
	assert_true(check.repair_mends);
	assert_true(kept <= 1);
}

/* Five keepers offer a home to eight farmed discus: the worst season of each water decides. */
static void test_club__eight_discus_for_five_waters(void **state)
{
	static const struct {
		double gh_low, gh_high, kh;
		enum ts_plan_verdict verdict;
		int match;
	} homes[] = {
		{2, 4, 5, TS_PLAN_SOUND, TS_SUITS},
		{3, 6, 6, TS_PLAN_SOUND, TS_SUITS},
		{(double)NAN, (double)NAN, 3, TS_PLAN_ASKS, TS_UNSURE},
		{(double)NAN, (double)NAN, 5, TS_PLAN_ASKS, TS_UNSURE},
		{14, 22, 12, TS_PLAN_UNSOUND, TS_EXCLUDED},
	};
	struct ts_reading reading;
	struct ts_stock_line line = {.species = "Symphysodon haraldi", .count = 8};
	const struct ts_species *discus =
		ts_catalogue_species(&shelf.catalogue, line.species, NULL);
	struct ts_plan plan = {
		.water = {.kind = TS_WATER_TANK, .readings = &reading, .reading_count = 1},
		.stock = &line,
		.stock_count = 1,
		.tank = {.length_cm = 200,
			.width_cm = 70,
			.height_cm = 60,
			.temp_c = between(28, 29),
			.cover = TS_COVER_YES,
			.water_change = {50, 4},
			.filter = TS_FILTER_MATURE}};

	(void)state;
	assert_non_null(discus);
	for (size_t i = 0; i < sizeof homes / sizeof *homes; i++) {
		struct ts_check check;

		reading = (struct ts_reading){
			.kh_dh = between(homes[i].kh, homes[i].kh), .ph = between(6.6, 7.0)};
		if (!isnan(homes[i].gh_low))
			reading.gh_dh = between(homes[i].gh_low, homes[i].gh_high);
		ts_arena_drop(&shelf.arena);
		assert_int_equal(
			ts_check_plan(&plan, &discus, -1, NULL, &shelf.arena, &check), TS_OK);
		assert_int_equal(check.groups[0].match.verdict, homes[i].match);
		if (homes[i].verdict == TS_PLAN_SOUND)
			assert_true(check.verdict <= TS_PLAN_SOUND_IF);
		else
			assert_int_equal(check.verdict, homes[i].verdict);
		/* feeding and plants were not given: the load is said with its doubt */
		assert_true(check.load.nitrogen_mg_day.high > check.load.nitrogen_mg_day.low * 2);
	}
}

int main(void)
{
	static struct CMUnitTest tests[TRUTHS + 2];
	int failed;

	ts_catalogue_open(&shelf.catalogue, NULL);
	ts_arena_open(&shelf.arena, NULL);
	if (ts_catalogue_add_folder(&shelf.catalogue, TS_SPECIES_DIR, NULL) != TS_OK)
		return 1;
	for (size_t i = 0; i < TRUTHS; i++)
		tests[i] = (struct CMUnitTest){
			truths[i].name, test_truth, NULL, NULL, (void *)(uintptr_t)&truths[i]};
	tests[TRUTHS] = (struct CMUnitTest)cmocka_unit_test(test_unheated__one_group_is_kept);
	tests[TRUTHS + 1] =
		(struct CMUnitTest)cmocka_unit_test(test_club__eight_discus_for_five_waters);
	failed = cmocka_run_group_tests(tests, NULL, NULL);
	ts_arena_drop(&shelf.arena);
	ts_catalogue_close(&shelf.catalogue);
	return failed;
}
