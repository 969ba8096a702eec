/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Tank and plan files: what a good one becomes, files named in files, and one bad file a rule.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "records/load.h"
#include "records/write.h"

struct room {
	struct ts_arena arena;
	struct ts_findings findings;
};

static int set_up(void **state)
{
	static struct room room;

	ts_arena_open(&room.arena, NULL);
	ts_findings_open(&room.findings, NULL);
	*state = &room;
	return 0;
}

static int tear_down(void **state)
{
	struct room *room = *state;

	ts_findings_drop(&room->findings);
	ts_arena_drop(&room->arena);
	return 0;
}

#define PLAN "plan.yaml"
#define TANK_FILE "tank.yaml"

static char place[] = "/tmp/tapshoal-plan-XXXXXX";

/* All files of these tests stand in a folder of their own. */
static int open_place(void **state)
{
	(void)state;
	return mkdtemp(place) && chdir(place) == 0 ? 0 : -1;
}

static int close_place(void **state)
{
	(void)state;
	unlink(PLAN);
	unlink(TANK_FILE);
	return chdir("/") == 0 && rmdir(place) == 0 ? 0 : -1;
}

static const char *file(const char *name, const char *text)
{
	FILE *stream = fopen(name, "wb");

	assert_non_null(stream);
	fputs(text, stream);
	fclose(stream);
	return name;
}

static enum ts_status load(struct room *room, const char *text, struct ts_plan *ret)
{
	return ts_plan_load(file(PLAN, text), &room->arena, ret, &room->findings);
}

static void test_plan__every_key(void **state)
{
	struct room *room = *state;
	struct ts_plan p;

	assert_int_equal(
		load(room,
			"name: a\n"
			"water: {kind: tap, readings: [{GH: 14 dH, KH: 9}]}\n"
			"change_water: {readings: [{GH: 4}]}\n"
			"tank:\n"
			"  length: 1 m\n  width: 400 mm\n  height: 45 cm\n  fill: rocks\n"
			"  temperature: 24..26 C\n  water_change: 30 % every 7 days\n"
			"  feeding: 1.5 g/day\n  plants: dense\n  flow: brisk\n  light: bright\n"
			"  cover: no\n  co2: injected\n  substrate: limestone\n  filter: mature\n"
			"  running_since: 2026-02-28\n  readings: [{NO3: 20 mg/L NO3}]\n"
			"stock:\n"
			"  - {species: guppy, count: 6, sex: pairs, since: 2026-03-01, origin: "
			"wild, size: 3 cm}\n"
			"signs: [{sign: gasping, onset: now, breadth: all, species: guppy}]\n"
			"deaths: 2\n",
			&p),
		TS_OK);
	assert_int_equal(p.water.reading_count, 1);
	assert_int_equal(p.change_water.reading_count, 1);
	assert_true(p.tank.length_cm == 100 && p.tank.width_cm == 40 && p.tank.height_cm == 45);
	assert_int_equal(p.tank.fill.word, TS_FILL_ROCKS);
	assert_true(p.tank.water_change.amount == 30 && p.tank.water_change.days == 7);
	assert_true(p.tank.feeding.value == 1.5);
	assert_int_equal(p.tank.plants, TS_PLANTS_DENSE);
	assert_int_equal(p.tank.flow, TS_FLOW_BRISK);
	assert_int_equal(p.tank.cover, TS_COVER_NO);
	assert_int_equal(p.tank.substrate, TS_SUBSTRATE_LIMESTONE);
	assert_int_equal(p.tank.filter, TS_FILTER_MATURE);
	assert_int_equal(p.tank.reading_count, 1);
	assert_int_equal(p.stock[0].sex, TS_SEX_PAIRS);
	assert_int_equal(p.stock[0].origin, TS_ORIGIN_WILD);
	assert_true(p.stock[0].count == 6 && p.stock[0].size_cm == 3);
	assert_int_equal(p.signs[0].sign, TS_SIGN_GASPING);
	assert_int_equal(p.signs[0].breadth, TS_BREADTH_ALL);
	assert_true(p.deaths.value == 2);
}

static void test_plan__words_as_people_write_them(void **state)
{
	struct room *room = *state;
	struct ts_plan p;

	assert_int_equal(load(room,
				 "tank: {volume: 112 litres, feeding: normal, substrate: soil,\n"
				 "  readings: [{NO2: 0, ammonia: 0}]}\n"
				 "stock: []\nfilter_stopped: 6\n"
				 "signs: [gasping, clamped fins, {sign: clamped fins}]\n",
				 &p),
		TS_OK);
	assert_int_equal(p.tank.feeding.word, TS_FEEDING_ORDINARY);
	assert_int_equal(p.tank.substrate, TS_SUBSTRATE_ACTIVE);
	assert_true(p.tank.volume_l == 112 && p.tank.filter_stopped_h == 6);
	assert_int_equal(p.tank.readings[0].no2_mg_l.kind, TS_MEASURE_VALUE);
	assert_true(p.tank.readings[0].no2_mg_l.value == 0);
	assert_int_equal(p.sign_count, 3);
	assert_int_equal(p.signs[0].sign, TS_SIGN_GASPING);
	assert_int_equal(p.signs[1].sign, TS_SIGN_CLAMPED_FINS);
	assert_int_equal(p.signs[2].sign, TS_SIGN_CLAMPED_FINS);
	assert_int_equal(load(room, "tank: {volume: 9 L}\nstock: []\nsigns: gasping\n", &p), TS_OK);
	assert_int_equal(p.sign_count, 1);
	assert_int_equal(p.signs[0].sign, TS_SIGN_GASPING);
}

#define TANK "tank: {volume: 90 L}\n"

/* Everything that a keeper nests, calls or spells otherwise, in one plan. */
static void test_plan__keys_where_people_put_them(void **state)
{
	struct room *room = *state;
	struct ts_plan p;

	assert_int_equal(load(room,
				 "size: 60x30x40\n"
				 "Temperature: 25\n"
				 "filter: off 12 h\n"
				 "water change: half weekly\n"
				 "since: May 2024\n"
				 "water: {GH: 9, KH: 6}\n"
				 "GH: 12\n"
				 "fish:\n"
				 "  - 10 neon tetra\n"
				 "  - {animal: guppy, number: 3, since: 2025}\n"
				 "signs: all gasping at the surface since today, shimmying\n",
				 &p),
		TS_OK);
	assert_true(p.tank.length_cm == 60 && p.tank.width_cm == 30 && p.tank.height_cm == 40);
	assert_true(p.tank.temp_c.value == 25 && p.tank.filter == TS_FILTER_STANDS);
	assert_true(p.tank.filter_stopped_h == 12 && p.tank.water_change.amount == 50);
	assert_true(p.tank.water_change.days == 7);
	assert_true(p.water.reading_count == 1 && p.water.readings[0].gh_dh.value == 9);
	assert_true(p.tank.reading_count == 1 && p.tank.readings[0].gh_dh.value == 12);
	assert_int_equal(p.stock_count, 2);
	assert_true(p.stock[0].count == 10 && p.stock[1].count == 3);
	assert_string_equal(p.stock[0].species, "neon tetra");
	assert_string_equal(p.stock[0].since, "2024-05-01");
	assert_string_equal(p.stock[1].since, "2025-01-01");
	assert_int_equal(p.sign_count, 2);
	assert_int_equal(p.signs[0].sign, TS_SIGN_GASPING);
	assert_int_equal(p.signs[0].breadth, TS_BREADTH_ALL);
	assert_int_equal(p.signs[0].onset, TS_ONSET_NOW);
	assert_int_equal(p.signs[1].sign, TS_SIGN_CLAMPED_FINS);
}

/* Readings of one water: who lives there lives in it, and nothing else is known of the supply. */
static void test_plan__one_water_for_tank_and_supply(void **state)
{
	struct room *room = *state;
	struct ts_plan p;

	assert_int_equal(
		load(room, "GH: 3\nKH: 1\nstock: {molly: 6}\nsince: unknown\n", &p), TS_OK);
	assert_string_equal(p.stock[0].since, "");
	assert_true(p.stock[0].count == 6);
	assert_ptr_equal(p.tank.readings, p.water.readings);
	assert_int_equal(load(room, "GH: 3\nKH: 1\nstock: {molly: 6}\n", &p), TS_OK);
	assert_int_equal(p.tank.reading_count, 0);
	assert_int_equal(p.water.reading_count, 1);
}

/* A sign in the words of a keeper. */
static void test_plan__signs_in_words(void **state)
{
	static const struct {
		const char *words;
		int sign, breadth, onset;
	} rows[] = {
		{"white spots", TS_SIGN_SPOTS, TS_BREADTH_UNKNOWN, TS_ONSET_UNKNOWN},
		{"one lying on the bottom for 3 weeks", TS_SIGN_LISTLESS, TS_BREADTH_ONE,
			TS_ONSET_WEEKS},
		{"some flashing since 3 days", TS_SIGN_RUBBING, TS_BREADTH_SOME, TS_ONSET_DAYS},
		{"Most of them gasping for an hour", TS_SIGN_GASPING, TS_BREADTH_ALL, TS_ONSET_NOW},
		{"one species clamped-fins", TS_SIGN_CLAMPED_FINS, TS_BREADTH_ONE_SPECIES,
			TS_ONSET_UNKNOWN},
		{"not eating", TS_SIGN_NOT_EATING, TS_BREADTH_UNKNOWN, TS_ONSET_UNKNOWN},
	};
	struct room *room = *state;

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		char text[200] = TANK "stock: []\nsigns: ";
		struct ts_plan p;

		strcat(strcat(text, rows[i].words), "\n");
		assert_int_equal(load(room, text, &p), TS_OK);
		if (p.sign_count != 1 || p.signs[0].sign != rows[i].sign ||
			p.signs[0].breadth != rows[i].breadth || p.signs[0].onset != rows[i].onset)
			fail_msg("%s", rows[i].words);
	}
}

static void test_plan__what_is_left_out_is_not_given(void **state)
{
	struct room *room = *state;
	struct ts_plan p;

	assert_int_equal(load(room, "tank: {volume: 90 L}\nstock: []\n", &p), TS_OK);
	assert_int_equal(p.water.reading_count, 0);
	assert_int_equal(p.deaths.kind, TS_MEASURE_NONE);
	assert_true(p.tank.water_change.days == 0 && p.tank.feeding.value == 0);
	assert_int_equal(p.tank.feeding.word, TS_FEEDING_UNKNOWN);
	assert_int_equal(p.tank.temp_c.kind, TS_MEASURE_NONE);
	assert_true(p.tank.volume_l == 90 && p.tank.length_cm == 0);
}

static void test_plan__change_every_week(void **state)
{
	struct room *room = *state;
	struct ts_plan p;

	assert_int_equal(load(room,
				 "tank: {volume: 90 L, water_change: 25 % every week}\n"
				 "stock: []\n",
				 &p),
		TS_OK);
	assert_true(p.tank.water_change.amount == 25 && p.tank.water_change.days == 7);
	/* How much alone is said of every week. */
	assert_int_equal(
		load(room, "tank: {volume: 90 L, water_change: 30%}\nstock: []\n", &p), TS_OK);
	assert_true(p.tank.water_change.amount == 30 && p.tank.water_change.days == 7);
}

static void test_plan__files_named_in_it(void **state)
{
	struct room *room = *state;
	struct ts_plan p;

	file(TANK_FILE, "volume: 60 L\n");
	assert_int_equal(load(room, "tank: " TANK_FILE "\nstock: []\n", &p), TS_OK);
	assert_true(p.tank.volume_l == 60);
	assert_string_equal(p.tank_file, TANK_FILE);
}

static void test_plan__error_in_a_named_file_has_two_places(void **state)
{
	struct room *room = *state;
	struct ts_plan p;

	file(TANK_FILE, "volume: 60 parsecs\n");
	assert_int_equal(load(room, "stock: []\ntank: " TANK_FILE "\n", &p), TS_BAD_INPUT);
	assert_int_equal(room->findings.count, 2);
	assert_string_equal(room->findings.items[0].place.file, TANK_FILE);
	assert_int_equal(room->findings.items[0].place.line, 1);
	assert_string_equal(room->findings.items[1].code->id, "records.reference");
	assert_int_equal(room->findings.items[1].place.line, 2);
	assert_int_equal(room->findings.items[1].place.column, 7);
}

static void test_plan__missing_file(void **state)
{
	struct room *room = *state;
	struct ts_plan p;

	assert_int_equal(load(room, "tank: no-such-file.yaml\nstock: []\n", &p), TS_BAD_INPUT);
	assert_int_equal(room->findings.count, 2);
	assert_string_equal(room->findings.items[1].what, "'no-such-file.yaml' cannot be read");
}

static void test_plan__example_files(void **state)
{
	struct room *room = *state;
	struct ts_plan p;

	assert_int_equal(ts_plan_load(TS_EXAMPLES_DIR "/plans/livebearers.yaml", &room->arena, &p,
				 &room->findings),
		TS_OK);
	assert_int_equal(p.water.reading_count, 1);
	assert_true(p.tank.length_cm == 100);
	assert_int_equal(p.stock_count, 3);
}

static void test_plan__written_and_read_again(void **state)
{
	struct room *room = *state;
	struct ts_plan p, again;
	struct ts_text first, second;

	assert_int_equal(
		load(room,
			"tank: {volume: 90 L, fill: 80 %, feeding: heavy, water_change: 25 "
			"% every 5 days}\n"
			"stock: [{species: guppy, count: 3}]\n",
			&p),
		TS_OK);
	ts_text_open(&first, NULL);
	ts_text_open(&second, NULL);
	ts_records_write(&first, &ts_shape_plan, &p, false);
	assert_int_equal(load(room, ts_text_get(&first), &again), TS_OK);
	ts_records_write(&second, &ts_shape_plan, &again, false);
	assert_string_equal(ts_text_get(&first), ts_text_get(&second));
	assert_true(again.tank.fill.value == 80 && again.tank.water_change.days == 5);
	ts_text_drop(&first);
	ts_text_drop(&second);
}

/* One bad file a rule. */
static const struct bad {
	const char *name, *text, *code;
	unsigned line, column;
	const char *path;
} bads[] = {
	{"half an animal", TANK "stock: [{species: guppy, count: 2.5}]\n", "plan.count", 0, 0,
		"stock[1].count"},
	{"no animal", TANK "stock: [{species: guppy, count: 0}]\n", "plan.count", 0, 0,
		"stock[1].count"},
	{"a million animals", TANK "stock: [{species: guppy, count: 1000000}]\n", "plan.count", 0,
		0, "stock[1].count"},
	{"odd pairs", TANK "stock: [{species: guppy, count: 3, sex: pairs}]\n", "plan.count", 0, 0,
		"stock[1].count"},
	{"no such day", TANK "stock: [{species: guppy, count: 3, since: 2026-02-30}]\n",
		"records.date", 0, 0, "stock[1].since"},
	{"one side alone", "tank: {length: 50 cm}\nstock: []\n", "tank.size", 0, 0, "tank"},
	{"tank of nothing", "tank: 0x0x0\nstock: []\n", "tank.size", 0, 0, "tank.size"},
	{"two sides", "tank: 60x30\nstock: []\n", "tank.size", 0, 0, "tank.size"},
	{"thimble", "tank: {volume: 0.1 L}\nstock: []\n", "tank.size", 0, 0, "tank"},
	{"more water than box",
		"tank: {length: 50 cm, width: 20 cm, height: 20 cm, volume: 30 L}\nstock: []\n",
		"tank.box", 0, 0, "tank.volume"},
	{"tank a kilometre long", "tank: {length: 1 km, volume: 90 L}\nstock: []\n",
		"records.quantity", 1, 18, "tank.length"},
	{"change without an amount", "tank: {volume: 90 L, water_change: weekly}\nstock: []\n",
		"records.quantity", 1, 36, "tank.water_change"},
	{"change every no days",
		"tank: {volume: 90 L, water_change: 30 % every 0 days}\nstock: []\n",
		"records.quantity", 1, 36, "tank.water_change"},
	{"more than all water",
		"tank: {volume: 90 L, water_change: 130 % every 7 days}\nstock: []\n",
		"records.quantity", 1, 36, "tank.water_change"},
	{"feed in a word unknown", "tank: {volume: 90 L, feeding: lots}\nstock: []\n",
		"records.unknown-word", 1, 31, "tank.feeding"},
	{"a key inside and outside", "tank: {volume: 90 L}\nlitres: 80\nstock: []\n",
		"records.duplicate-key", 2, 1, NULL},
	{"a key outside and inside", "volume: 80 L\ntank: {volume: 90 L}\nstock: []\n",
		"records.duplicate-key", 2, 8, "tank"},
	{"a reading beside two", TANK "water: {GH: 4, readings: [{KH: 2}]}\nstock: []\n",
		"records.duplicate-key", 2, 16, "water"},
	{"no sign", TANK "stock: []\nsigns: all purple\n", "records.unknown-word", 3, 8, "signs"},
	{"a time in a file, which ages", TANK "stock: [3 guppy for 2 years]\n",
		"records.wrong-kind", 2, 9, "stock[1]"},
	{"no stock", TANK, "records.missing-key", 1, 1, NULL},
	{"animal without a name", TANK "stock: [{count: 3}]\n", "records.missing-key", 2, 9,
		"stock[1]"},
	{"file without a name", "tank: ''\nstock: []\n", "records.reference", 1, 7, "tank"},
};

static void test_plan__one_bad_file_a_rule(void **state)
{
	for (size_t i = 0; i < sizeof bads / sizeof *bads; i++) {
		const struct bad *b = &bads[i];
		struct room *room = *state;
		struct ts_plan plan = {.stock_count = 77};
		const struct ts_finding *f;

		ts_findings_drop(&room->findings);
		assert_int_equal(load(room, b->text, &plan), TS_BAD_INPUT);
		assert_int_equal(plan.stock_count, 77);
		if (room->findings.count < 1)
			fail_msg("%s: no finding", b->name);
		f = &room->findings.items[0];
		if (strcmp(f->code->id, b->code) != 0 || f->place.line != b->line ||
			f->place.column != b->column)
			fail_msg("%s: %s %u:%u", b->name, f->code->id, f->place.line,
				f->place.column);
		if (b->path && (!f->place.path || strcmp(f->place.path, b->path) != 0))
			fail_msg("%s: path %s", b->name, f->place.path ? f->place.path : "none");
	}
}

int main(void)
{
#define CASE(f) cmocka_unit_test_setup_teardown(f, set_up, tear_down)
	const struct CMUnitTest tests[] = {
		CASE(test_plan__every_key),
		CASE(test_plan__words_as_people_write_them),
		CASE(test_plan__keys_where_people_put_them),
		CASE(test_plan__one_water_for_tank_and_supply),
		CASE(test_plan__signs_in_words),
		CASE(test_plan__what_is_left_out_is_not_given),
		CASE(test_plan__change_every_week),
		CASE(test_plan__files_named_in_it),
		CASE(test_plan__error_in_a_named_file_has_two_places),
		CASE(test_plan__missing_file),
		CASE(test_plan__example_files),
		CASE(test_plan__written_and_read_again),
		CASE(test_plan__one_bad_file_a_rule),
	};

	return cmocka_run_group_tests(tests, open_place, close_place);
}
