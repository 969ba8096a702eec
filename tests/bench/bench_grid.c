/* SPDX-License-Identifier: Apache-2.0 */
/*
 * propose in five waters and six tanks up to 1,000 L: at most 6, 8 and 12 species, one list and
 * five, and twenty lists of the usual number, with concerns forbidden and at a cost. Prints the
 * slowest call of each kind in milliseconds of the processor, lists not proven and their widest
 * gap. With a folder, writes forty proven lists drawn at random as models for outside solvers, and
 * prints points and milliseconds of each. Usage: bench_grid SPECIES-FOLDER [MODELS-FOLDER SEED]
 */
#include <stdio.h>
#include <stdlib.h>
#include <tapshoal/tapshoal.h>
#include <time.h>

#include "base/arena.h"
#include "model/practice.h"
#include "stock/model_lp.h"
#include "stock/propose.h"

static const double waters[][3] = {
	{2, 1, 6.4}, {4, 3, 6.8}, {9, 6, 7.4}, {16, 11, 7.8}, {24, 17, 8.2}};
static const double tanks[][3] = {
	{60, 30, 30}, {80, 35, 40}, {120, 40, 50}, {150, 60, 50}, {180, 60, 60}, {200, 70, 70}};
/* Species at the most, 0: by the litres; lists. */
static const size_t kinds[][2] = {{6, 1}, {6, 5}, {8, 1}, {8, 5}, {12, 1}, {12, 5}, {0, 20}};

#define WATERS (sizeof waters / sizeof *waters)
#define TANKS (sizeof tanks / sizeof *tanks)
#define KINDS (sizeof kinds / sizeof *kinds)
#define CALLS (2 * KINDS * WATERS * TANKS)
#define DRAWN 40

static struct ts_measure exactly(double value)
{
	return (struct ts_measure){value, value, value, TS_MEASURE_VALUE};
}

/* One call of the grid, by its number; milliseconds, below 0 where it failed. */
static double one(const struct ts_catalogue *catalogue, size_t call, struct ts_arena *arena,
	struct ts_proposal *ret)
{
	const double *water_of = waters[call / TANKS % WATERS], *sides = tanks[call % TANKS];
	const size_t *kind = kinds[call / TANKS / WATERS % KINDS];
	struct ts_reading reading = {.gh_dh = exactly(water_of[0]),
		.kh_dh = exactly(water_of[1]),
		.ph = exactly(water_of[2])};
	struct ts_water water = {.readings = &reading, .reading_count = 1};
	struct ts_keeping keeping = {
		.temperature = {.value = 24.5, .low = 24, .high = 25, .kind = TS_MEASURE_RANGE}};
	struct ts_tank tank = {.length_cm = sides[0],
		.width_cm = sides[1],
		.height_cm = sides[2],
		.temp_c = keeping.temperature,
		.cover = TS_COVER_YES,
		.filter = TS_FILTER_MATURE};
	struct ts_profile profile;
	struct ts_practice practice;
	struct ts_wish wish = {.catalogue = catalogue,
		.profile = &profile,
		.keeping = &keeping,
		.tank = &tank,
		.practice = &practice,
		.conditions = call / TANKS / WATERS / KINDS > 0,
		.species_most = kind[0],
		.lists = kind[1]};
	clock_t start;

	ts_practice_defaults(&practice);
	ts_profile_make(&water, &keeping, &practice, -1, &profile);
	start = clock();
	if (!ts_propose(&wish, arena, ret))
		return -1;
	return 1e3 * (double)(clock() - start) / CLOCKS_PER_SEC;
}

struct tally {
	double slowest, widest;
	size_t slowest_call, lists, unproven;
};

static void count(struct tally *t, size_t call, double ms, const struct ts_proposal *p)
{
	if (ms > t->slowest) {
		t->slowest = ms;
		t->slowest_call = call;
	}
	for (size_t i = 0; i < p->count; i++) {
		const struct ts_community *c = &p->lists[i];
		double gap = (double)(c->at_most - c->points) / (double)c->points;

		t->lists++;
		t->unproven += !c->proven;
		t->widest = gap > t->widest ? gap : t->widest;
	}
}

static void print_kind(size_t kind, bool conditions, const struct tally *t)
{
	if (kinds[kind][0])
		printf("at most %2zu species, %2zu %s", kinds[kind][0], kinds[kind][1],
			kinds[kind][1] > 1 ? "lists" : "list ");
	else
		printf("species by litres,  %2zu lists", kinds[kind][1]);
	printf(", concerns %s: slowest %6.1f ms (GH %2.0f, %3.0f cm), %3zu lists, %zu not "
	       "proven, gap %.2f %%\n",
		conditions ? "cost points" : "exclude    ", t->slowest,
		waters[t->slowest_call / TANKS % WATERS][0], tanks[t->slowest_call % TANKS][0],
		t->lists, t->unproven, 100 * t->widest);
}

/* The whole grid, a line for each kind of call. */
static bool walk(const struct ts_catalogue *catalogue)
{
	struct tally all = {0};

	for (size_t kind = 0; kind < 2 * KINDS; kind++) {
		struct tally t = {0};

		for (size_t at = 0; at < WATERS * TANKS; at++) {
			size_t call = kind * WATERS * TANKS + at;
			struct ts_arena arena;
			struct ts_proposal p = {0};
			double ms;

			ts_arena_open(&arena, NULL);
			ms = one(catalogue, call, &arena, &p);
			if (ms < 0)
				return false;
			count(&t, call, ms, &p);
			count(&all, call, ms, &p);
			ts_arena_drop(&arena);
		}
		print_kind(kind % KINDS, kind >= KINDS, &t);
	}
	printf("slowest %.1f ms; %zu lists, %zu not proven, widest gap %.2f %%\n", all.slowest,
		all.lists, all.unproven, 100 * all.widest);
	return true;
}

static bool write_model(const char *folder, size_t number, const struct ts_model *model)
{
	char path[4096];
	struct ts_text text;
	FILE *file;
	bool fine;

	snprintf(path, sizeof path, "%s/list-%02zu.lp", folder, number);
	file = fopen(path, "w");
	ts_text_open(&text, NULL);
	ts_model_write_lp(&text, model, NULL);
	fine = file && !text.failed && fputs(ts_text_get(&text), file) >= 0;
	fine = file && fclose(file) == 0 && fine;
	ts_text_drop(&text);
	return fine;
}

/*
 * Searches the lists of a proposal again, one after the other, up to `list`; writes the model of
 * that one. False: it is not of this model (fish of a lake, behind the others), or not proven.
 */
static bool draw(const struct ts_proposal *p, size_t list, const char *folder, size_t number)
{
	struct ts_model model = p->model;
	struct ts_search_list found = {0};
	struct ts_arena arena;
	double best = INFINITY;
	bool fine = true;

	ts_arena_open(&arena, NULL);
	model.familiar = ts_arena_array(&arena, model.genus_count, sizeof *model.familiar);
	for (size_t i = 0; fine && i < list; i++) {
		fine = ts_search_best(&model, NULL, &arena, &found) && found.count;
		if (fine)
			ts_model_remember(&model, found.chosen, found.count);
	}
	for (int round = 0; fine && round < 5; round++) {
		clock_t start = clock();

		fine = ts_search_best(&model, NULL, &arena, &found);
		best = fmin(best, 1e3 * (double)(clock() - start) / CLOCKS_PER_SEC);
	}
	fine = fine && found.proven && found.points == p->lists[list].points &&
	       write_model(folder, number, &model);
	if (fine)
		printf("list-%02zu %lld %.3f %zu\n", number, (long long)found.points, best,
			model.count);
	ts_arena_drop(&arena);
	return fine;
}

static bool draw_some(const struct ts_catalogue *catalogue, const char *folder, unsigned seed)
{
	size_t drawn = 0;

	for (size_t tries = 0; drawn < DRAWN && tries < 50 * DRAWN; tries++) {
		struct ts_arena arena;
		struct ts_proposal p = {0};
		size_t list;

		seed = seed * 1103515245u + 12345u;
		ts_arena_open(&arena, NULL);
		if (one(catalogue, (seed >> 8) % CALLS, &arena, &p) < 0)
			return false;
		seed = seed * 1103515245u + 12345u;
		list = (seed >> 8) % TS_LISTS_MOST;
		if (list < p.count)
			drawn += draw(&p, list, folder, drawn + 1);
		ts_arena_drop(&arena);
	}
	return drawn == DRAWN;
}

int main(int argc, char **argv)
{
	struct ts_catalogue catalogue;
	bool fine;

	ts_catalogue_open(&catalogue, NULL);
	if (argc < 2 || ts_catalogue_add_folder(&catalogue, argv[1], NULL))
		return 2;
	fine = argc < 4 ? walk(&catalogue)
			: draw_some(&catalogue, argv[2], (unsigned)strtoul(argv[3], NULL, 10));
	ts_catalogue_close(&catalogue);
	return !fine;
}
