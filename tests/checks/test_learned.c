/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside check: what the engine learns from a log, on 200 tanks whose truth is known. The tanks
 * live in a simulation of their own, a day at a time, by two figures that are not ours to choose:
 * 10 mg/L of nitrate out of feed cost 0.45 dH of KH (the process table of Soetaert et al. 2007,
 * Mar. Chem. 105:30-51, as in test_drift.c), and a change of a share f leaves 1 - f. They are read
 * with the errors that the methods' rows give: nitrate within 30 % or 5 mg/L, hardness by whole
 * drops. Every second kit's error is half one that all its readings have in common. The seed is
 * fixed; counts are printed.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "../given.h"
#include "../random.h"
#include "base/date.h"
#include "stock/band.h"

#define TANKS 200
#define DAYS_MOST 200
#define AHEAD 28
#define KH_PER_NO3 0.045
#define READINGS_MOST 24
#define EVENTS_MOST 60

/* What is true of a tank and nobody knows. */
struct truth {
	double no3_a_day, stone_a_day, evaporates, drinks;
	double tap[3], level[3]; /* GH, KH, nitrate */
	unsigned animals, days;
	double kit_common, kit_error;
};

struct tank {
	struct random *r;
	struct truth t;
	struct ts_species species;
	struct ts_stock_line stock[2];
	const struct ts_species *of_line[2];
	struct ts_group groups[2];
	struct ts_reading tap, readings[READINGS_MOST];
	struct ts_tank_event events[EVENTS_MOST];
	char dates[DAYS_MOST + 1][TS_DATE_ROOM];
	struct ts_plan plan;
	long first;
	unsigned gone; /* days since the last change that is noted; 0: none is */
};

static double evenly(struct random *r)
{
	return any_in(r, -1, 1, 0.001);
}

static double kit(struct tank *k, double level)
{
	double half = fmax(5, 0.3 * level), common = k->t.kit_common;

	return fmax(
		0, round(level + half * (common * k->t.kit_error + (1 - common) * evenly(k->r))));
}

/* n drops of 1 dH: more than n - 1. */
static double drops(double level)
{
	return ceil(fmax(level, 0));
}

static void invent(struct tank *k, struct random *r, unsigned number)
{
	struct truth *t = &k->t;

	memset(k, 0, sizeof *k);
	k->r = r;
	t->no3_a_day = any_in(r, 0.3, 3, 0.01);
	t->stone_a_day = any_percent(r, 30) ? any_in(r, 0.01, 0.06, 0.001) : 0;
	t->evaporates = any_in(r, 0.003, 0.013, 0.0001);
	t->drinks = any_percent(r, 50); /* topped up with tap */
	t->tap[0] = any_in(r, 6, 20, 0.01);
	t->tap[1] = any_in(r, 5, 14, 0.01);
	t->tap[2] = any_in(r, 0, 25, 0.01);
	for (int i = 0; i < 3; i++)
		t->level[i] = t->tap[i] * any_in(r, 0.9, 1.1, 0.01);
	t->level[2] += any_in(r, 0, 30, 0.1);
	t->animals = 6 + any_below(r, 15);
	t->days = 90 + any_below(r, 90);
	t->kit_common = number % 2 ? 0.5 : 0;
	t->kit_error = evenly(r);
	ts_date_read("2026-01-01", &k->first);
	for (unsigned d = 0; d <= t->days; d++)
		ts_date_write(k->dates[d], k->first + (long)d);
}

/* Half of the animals came later, where `later` says on which day. */
static void settle_animals(struct tank *k, unsigned later)
{
	k->species = (struct ts_species){
		.species = "Invented one", .kind = TS_ANIMAL_FISH, .adult_length_cm = 4, .diet = 0};
	for (int i = 0; i < 2; i++) {
		unsigned count = later ? k->t.animals / 2 : i ? 0 : k->t.animals;

		k->of_line[i] = &k->species;
		k->stock[i] = (struct ts_stock_line){.species = "Invented one",
			.count = count,
			.since = i && later ? k->dates[later] : "2024-01-01"};
		k->groups[i] = (struct ts_group){.species = &k->species, .either = count};
	}
	k->plan.stock = k->stock;
	k->plan.stock_count = later ? 2 : 1;
}

static double there(const struct tank *k, unsigned day, unsigned later)
{
	return later && day < later
		       ? (double)k->stock[0].count / (k->stock[0].count + k->stock[1].count)
		       : 1;
}

static void live(struct truth *t, double waste)
{
	double no3 = t->no3_a_day * waste;

	t->level[0] += t->stone_a_day;
	t->level[1] += t->stone_a_day - KH_PER_NO3 * no3;
	t->level[2] += no3;
	for (int i = 0; i < 3; i++)
		t->level[i] += t->drinks * t->evaporates * t->tap[i];
}

static void pour(struct truth *t, double share)
{
	for (int i = 0; i < 3; i++)
		t->level[i] += share * (t->tap[i] - t->level[i]);
}

static void read_tank(struct tank *k, unsigned day)
{
	struct ts_reading *r = &k->readings[k->plan.tank.reading_count++];

	*r = (struct ts_reading){.date = k->dates[day],
		.method = TS_METHOD_DROPS,
		.gh_dh = value(drops(k->t.level[0])),
		.kh_dh = value(drops(k->t.level[1])),
		.no3_mg_l = value(kit(k, k->t.level[2]))};
}

static void note_change(struct tank *k, unsigned day, double share)
{
	k->gone = k->t.days - day;
	k->events[k->plan.tank.event_count++] = (struct ts_tank_event){
		.date = k->dates[day], .what = TS_HAPPENED_CHANGED, .litres = 100 * share};
}

/* The keeper's half year: water changed about every `every` days and noted, read now and then. */
static void keep(struct tank *k, bool noted, double share, unsigned every)
{
	unsigned readings = 4 + any_below(k->r, 12), next_read = 0, left = readings;
	unsigned later = any_percent(k->r, 30) ? 20 + any_below(k->r, 50) : 0;
	unsigned next_change = 1 + any_below(k->r, every);

	settle_animals(k, later);
	for (unsigned day = 0; day <= k->t.days; day++) {
		if (day)
			live(&k->t, there(k, day, later));
		if (day >= next_read && left) {
			read_tank(k, day);
			left--;
			next_read = left ? day + (k->t.days - day) / left : 0;
		}
		if (day != next_change || day == k->t.days)
			continue;
		next_change += every;
		if (noted) {
			share = any_in(k->r, 0.1, 0.5, 0.01);
			next_change += any_below(k->r, 4);
			note_change(k, day, share);
		}
		pour(&k->t, share);
	}
}

static void make_plan(struct tank *k, double share, unsigned every)
{
	k->tap = (struct ts_reading){.method = TS_METHOD_DROPS,
		.gh_dh = value(drops(k->t.tap[0])),
		.kh_dh = value(drops(k->t.tap[1])),
		.no3_mg_l = value(kit(k, k->t.tap[2]))};
	k->plan.water = (struct ts_water){.readings = &k->tap, .reading_count = 1};
	k->plan.tank.volume_l = 100;
	k->plan.tank.temp_c = value(25);
	k->plan.tank.cover = k->t.evaporates > 0.008 ? TS_COVER_NO : TS_COVER_YES;
	k->plan.tank.top_up = k->t.drinks > 0 ? TS_TOP_UP_SUPPLY : TS_TOP_UP_PURE;
	k->plan.tank.filter = TS_FILTER_MATURE;
	k->plan.tank.water_change = (struct ts_every){100 * share, every};
	k->plan.tank.readings = k->readings;
	k->plan.tank.events = k->events;
}

/* Four weeks on, water changed as the file says it, counted from the last change; what is overdue
 * is changed today. */
static void go_on(struct truth *t, double share, unsigned every, unsigned gone)
{
	unsigned next = gone < every ? every - gone : 0;

	for (unsigned day = 0; day < AHEAD; day++) {
		if (day)
			live(t, 1);
		if (day != next)
			continue;
		next += every;
		pour(t, share);
	}
	live(t, 1);
}

struct counts {
	unsigned tanks, told, load, met, stone, kh, gh, alarms, expected;
	double width; /* of the interval, of its value */
};

static void judge(
	struct tank *k, struct ts_waters *w, double share, unsigned every, struct counts *n)
{
	struct ts_drift_band bands[AHEAD + 1];
	double truth = 7 * k->t.no3_a_day;

	n->tanks++;
	for (int i = 0; i < TS_FIT__COUNT; i++) {
		n->expected += w->fit.expected[i].known;
		n->alarms += w->fit.expected[i].outside;
	}
	if (w->measured.value > 0) {
		n->told++;
		n->load += w->measured.low <= truth && truth <= w->measured.high;
		n->width += (w->measured.high - w->measured.low) / 2 / w->measured.value;
	}
	n->stone += w->fit.stone_dh_day.low <= k->t.stone_a_day &&
		    k->t.stone_a_day <= w->fit.stone_dh_day.high;
	go_on(&k->t, share, every, k->gone);
	assert_int_equal(ts_waters_bands(w, AHEAD, table(), bands), TS_OK);
	n->met += bands[AHEAD].no3_mg_l.low <= k->t.level[2] &&
		  k->t.level[2] <= bands[AHEAD].no3_mg_l.high;
	/* A level of n - 1 to n is read as n drops. */
	n->kh += bands[AHEAD].kh_dh.low - 1 <= k->t.level[1] &&
		 k->t.level[1] <= bands[AHEAD].kh_dh.high;
	n->gh += bands[AHEAD].gh_dh.low - 1 <= k->t.level[0] &&
		 k->t.level[0] <= bands[AHEAD].gh_dh.high;
}

static void one_tank(struct random *r, unsigned number, bool noted, struct counts *n)
{
	static struct tank k;
	static struct ts_waters w;
	double share = any_in(r, 0.15, 0.5, 0.05);
	unsigned every = 7 * (1 + any_below(r, 2));
	struct ts_waters_case asked;

	invent(&k, r, number);
	keep(&k, noted, share, every);
	make_plan(&k, share, every);
	asked = (struct ts_waters_case){
		&k.plan, k.groups, k.plan.stock_count, k.first + (long)k.t.days, k.of_line};
	ts_waters_make(&asked, table(), &w);
	assert_true(w.settled_known && w.load_known);
	judge(&k, &w, share, every, n);
}

static void print(const char *what, const struct counts *n)
{
	printf("# %s: %u tanks, load told of %u, true in %u of them (interval +- %.0f %%); "
	       "four weeks ahead nitrate in its band %u, KH %u, GH %u; stones in their "
	       "interval %u; of %u readings that were expected %u false alarms\n",
		what, n->tanks, n->told, n->load, 100 * n->width / n->told, n->met, n->kh, n->gh,
		n->stone, n->expected, n->alarms);
}

static void assert_learned(const struct counts *n)
{
	assert_true(n->told >= 0.9 * n->tanks);
	assert_true(n->load >= 0.9 * n->told);
	assert_true(n->met >= 0.9 * n->tanks);
	assert_true(n->kh >= 0.9 * n->tanks);
	assert_true(n->gh >= 0.9 * n->tanks);
	assert_true(n->stone >= 0.9 * n->tanks);
	assert_true(n->alarms <= 0.05 * n->expected);
}

static void learn(unsigned seed, bool noted, const char *what)
{
	struct counts n = {0};
	struct random r;
	unsigned count = random_open(&r, seed, TANKS);

	for (unsigned i = 0; i < count; i++) {
		random_case(&r, i);
		one_tank(&r, i, noted, &n);
	}
	print(what, &n);
	assert_learned(&n);
}

/* Each change is in the log with its litres, on no regular day. */
static void test_learned__by_a_log_of_events(void **state)
{
	(void)state;
	learn(41, true, "changes noted");
}

/* The log has readings alone; the file says how much is changed how often. */
static void test_learned__by_the_routine(void **state)
{
	(void)state;
	learn(42, false, "changes by the routine");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_learned__by_a_log_of_events),
		cmocka_unit_test(test_learned__by_the_routine),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
