/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The community search over the full catalogue, in ordinary tap water and a large tank: the first
 * list at six species, five lists at eight. Prints milliseconds, best of seven, and writes the
 * model of the first list for outside solvers (search.py). Usage: bench_search SPECIES-FOLDER
 * MODEL.lp [conditions]; with the word, concerns cost points instead of excluding.
 */
#include <stdio.h>
#include <string.h>
#include <tapshoal/tapshoal.h>
#include <time.h>

#include "base/arena.h"
#include "stock/model_lp.h"
#include "stock/propose.h"

#define ROUNDS 7

static double now_ms(void)
{
	struct timespec t;

	timespec_get(&t, TIME_UTC);
	return 1e3 * (double)t.tv_sec + 1e-6 * (double)t.tv_nsec;
}

/* `lists` best lists of the model, best of several rounds; NAN when one is not proven. */
static double search_ms(const struct ts_model *model, size_t lists, int64_t *ret_points)
{
	double best = INFINITY;

	for (int round = 0; round < ROUNDS; round++) {
		struct ts_arena arena;
		struct ts_model m = *model;
		double start = now_ms();

		ts_arena_open(&arena, NULL);
		m.familiar = ts_arena_array(&arena, m.genus_count, sizeof *m.familiar);
		for (size_t i = 0; i < lists; i++) {
			struct ts_search_list list = {0};

			if (!ts_search_best(&m, NULL, &arena, &list) || !list.proven)
				best = (double)NAN;
			if (i == 0)
				*ret_points = list.points;
			ts_model_remember(&m, list.chosen, list.count);
		}
		best = fmin(best, now_ms() - start);
		ts_arena_drop(&arena);
	}
	return best;
}

static bool write_model(const char *path, const struct ts_model *model)
{
	struct ts_text text;
	FILE *file = fopen(path, "w");
	bool fine;

	ts_text_open(&text, NULL);
	ts_model_write_lp(&text, model, NULL);
	fine = file && !text.failed && fputs(ts_text_get(&text), file) >= 0;
	fine = file && fclose(file) == 0 && fine;
	ts_text_drop(&text);
	return fine;
}

static struct ts_measure exactly(double value)
{
	return (struct ts_measure){value, value, value, TS_MEASURE_VALUE};
}

int main(int argc, char **argv)
{
	struct ts_reading reading = {.gh_dh = exactly(9), .kh_dh = exactly(6), .ph = exactly(7.4)};
	struct ts_water water = {.readings = &reading, .reading_count = 1};
	struct ts_keeping keeping = {.temperature = exactly(25)};
	struct ts_tank tank = {.length_cm = 150,
		.width_cm = 60,
		.height_cm = 60,
		.cover = TS_COVER_YES,
		.filter = TS_FILTER_MATURE,
		.plants = TS_PLANTS_SOME};
	struct ts_profile profile;
	struct ts_catalogue catalogue;
	struct ts_proposal p;
	struct ts_arena arena;
	struct ts_wish wish = {
		.catalogue = &catalogue,
		.profile = &profile,
		.keeping = &keeping,
		.tank = &tank,
		.species_most = 6,
	};
	int64_t points = 0;
	double start, six, eight;

	ts_arena_open(&arena, NULL);
	ts_catalogue_open(&catalogue, NULL);
	if (argc < 3 || ts_catalogue_add_folder(&catalogue, argv[1], NULL))
		return 2;
	wish.conditions = argc > 3;
	ts_profile_make(&water, &keeping, NULL, -1, &profile);
	start = now_ms();
	if (!ts_propose(&wish, &arena, &p) || !p.count || !write_model(argv[2], &p.model))
		return 1;
	printf("build %.1f ms, %zu species, %zu candidates, %zu items\n", now_ms() - start,
		p.species_count, p.candidates, p.model.count);
	six = search_ms(&p.model, 1, &points);
	printf("first %.3f ms, %lld points, at most 6 species\n", six, (long long)points);
	p.model.species_most = 8;
	eight = search_ms(&p.model, 5, &points);
	printf("five %.3f ms, at most 8 species\n", eight);
	ts_catalogue_close(&catalogue);
	ts_arena_drop(&arena);
	return 0;
}
