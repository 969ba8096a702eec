/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What propose does before it searches: every species matched, the levels of those left judged in
 * pairs, the integer model built; the search itself is stopped at its first node. Prints the
 * milliseconds and what the model holds. Usage: bench_prepare SPECIES-FOLDER
 */
#include <stdio.h>
#include <tapshoal/tapshoal.h>
#include <time.h>

#include "base/arena.h"
#include "stock/propose.h"

static struct ts_measure exactly(double value)
{
	return (struct ts_measure){value, value, value, TS_MEASURE_VALUE};
}

int main(int argc, char **argv)
{
	/* Very hard water leaves one in eleven, so that the pairs of 30,000 take seconds. */
	struct ts_reading reading = {.gh_dh = exactly(25), .kh_dh = exactly(14), .ph = exactly(8)};
	struct ts_water water = {.readings = &reading, .reading_count = 1};
	struct ts_keeping keeping = {.temperature = exactly(25)};
	struct ts_tank tank = {.length_cm = 120,
		.width_cm = 50,
		.height_cm = 50,
		.cover = TS_COVER_YES,
		.filter = TS_FILTER_MATURE,
		.plants = TS_PLANTS_SOME};
	struct ts_search_limits limits = {.nodes = 1};
	struct ts_profile profile;
	struct ts_catalogue catalogue;
	struct ts_proposal p;
	struct ts_arena arena;
	struct ts_wish wish = {.catalogue = &catalogue,
		.profile = &profile,
		.keeping = &keeping,
		.tank = &tank,
		.conditions = true,
		.limits = &limits};
	clock_t start;

	ts_arena_open(&arena, NULL);
	ts_catalogue_open(&catalogue, NULL);
	if (argc != 2 || ts_catalogue_add_folder(&catalogue, argv[1], NULL))
		return 2;
	ts_profile_make(&water, &keeping, NULL, -1, &profile);
	start = clock();
	if (!ts_propose(&wish, &arena, &p))
		return 1;
	printf("%.3f ms, %zu species, %zu candidates, %zu items\n",
		1e3 * (double)(clock() - start) / CLOCKS_PER_SEC, p.species_count, p.candidates,
		p.model.count);
	ts_catalogue_close(&catalogue);
	ts_arena_drop(&arena);
	return 0;
}
