/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Five lists for five waters in five tanks up to 1,000 L, with concerns forbidden and at a cost:
 * prints each call's milliseconds of the processor, and the slowest. Usage: bench_grid
 * SPECIES-FOLDER
 */
#include <stdio.h>
#include <tapshoal/tapshoal.h>
#include <time.h>

#include "base/arena.h"
#include "model/practice.h"
#include "stock/propose.h"

static const double waters[][3] = {
	{2, 1, 6.4}, {4, 3, 6.8}, {9, 6, 7.4}, {16, 11, 7.8}, {24, 17, 8.2}};
static const double tanks[][3] = {
	{60, 30, 30}, {80, 35, 40}, {120, 40, 50}, {150, 50, 60}, {200, 70, 70}};

static struct ts_measure exactly(double value)
{
	return (struct ts_measure){value, value, value, TS_MEASURE_VALUE};
}

/* Milliseconds of one call; below 0: it failed. Counts its lists and those not proven. */
static double one(const struct ts_catalogue *catalogue, const double water_of[3],
	const double sides[3], bool conditions, size_t *lists, size_t *unproven)
{
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
	struct ts_proposal p = {0};
	struct ts_arena arena;
	struct ts_wish wish = {.catalogue = catalogue,
		.profile = &profile,
		.keeping = &keeping,
		.tank = &tank,
		.practice = &practice,
		.conditions = conditions,
		.lists = 5};
	clock_t start;
	bool fine;

	ts_practice_defaults(&practice);
	ts_profile_make(&water, &keeping, &practice, -1, &profile);
	ts_arena_open(&arena, NULL);
	start = clock();
	fine = ts_propose(&wish, &arena, &p);
	*lists += p.count;
	for (size_t i = 0; i < p.count; i++)
		*unproven += !p.lists[i].proven;
	ts_arena_drop(&arena);
	return fine ? 1e3 * (double)(clock() - start) / CLOCKS_PER_SEC : -1;
}

int main(int argc, char **argv)
{
	struct ts_catalogue catalogue;
	size_t lists = 0, unproven = 0;
	double slowest = 0;

	ts_catalogue_open(&catalogue, NULL);
	if (argc != 2 || ts_catalogue_add_folder(&catalogue, argv[1], NULL))
		return 2;
	for (int conditions = 0; conditions < 2; conditions++) {
		for (size_t w = 0; w < 5; w++) {
			printf("GH %2.0f, concerns %s:", waters[w][0],
				conditions ? "cost points" : "exclude    ");
			for (size_t t = 0; t < 5; t++) {
				double ms = one(&catalogue, waters[w], tanks[t], conditions, &lists,
					&unproven);

				if (ms < 0)
					return 1;
				slowest = ms > slowest ? ms : slowest;
				printf(" %6.1f", ms);
			}
			printf("\n");
		}
	}
	printf("slowest %.1f ms; %zu lists, %zu of them not proven\n", slowest, lists, unproven);
	ts_catalogue_close(&catalogue);
	return 0;
}
