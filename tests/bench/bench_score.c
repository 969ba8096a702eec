/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Scoring in memory beside a database asked for the same ranges: every species of a folder matched
 * against a water, and prepared queries of SQLite over tables in memory of the very bands that the
 * match used, of all five parameters. The match says by how much, which parameter and how sure;
 * a query only which rows hold the water. Each layout is as good as it can be for its query: one
 * row a species and no NULL (a covering index over the bands gains 1 or 2 %). Waters and rounds
 * take turns; of each water the best round counts, and the figure is their mean. Usage: bench_score
 * SPECIES-FOLDER. Exit 1 where two hold different rows.
 */
#include <math.h>
#include <sqlite3.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <tapshoal/tapshoal.h>
#include <time.h>

#include "model/practice.h"

#define WATERS 20
#define ROUNDS 100

/* The bands of a species as columns of a table, from l0, h0 (GH) to l4, h4 (salinity). */
struct layout {
	const char *says, *create, *select;
};

#define BETWEEN                                                                                    \
	"SELECT id FROM species WHERE ?1 BETWEEN l0 AND h0 AND ?2 BETWEEN l1 AND h1 AND "          \
	"?3 BETWEEN l2 AND h2 AND ?4 BETWEEN l3 AND h3 AND ?5 BETWEEN l4 AND h4"

static const struct layout layouts[] = {
	{"a plain table",
		"CREATE TABLE species (id INTEGER PRIMARY KEY, l0 REAL, h0 REAL, l1 REAL, h1 REAL, "
		"l2 REAL, h2 REAL, l3 REAL, h3 REAL, l4 REAL, h4 REAL)",
		BETWEEN},
	{"a plain table without types",
		"CREATE TABLE species (id INTEGER PRIMARY KEY, l0, h0, l1, h1, l2, h2, l3, h3, "
		"l4, h4)",
		BETWEEN},
	{"an R*Tree, which rounds to 32 bits",
		"CREATE VIRTUAL TABLE species USING rtree(id, l0, h0, l1, h1, l2, h2, l3, h3, l4, "
		"h4)",
		"SELECT id FROM species WHERE l0 <= ?1 AND h0 >= ?1 AND l1 <= ?2 AND h1 >= ?2 AND "
		"l2 <= ?3 AND h2 >= ?3 AND l3 <= ?4 AND h3 >= ?4 AND l4 <= ?5 AND h4 >= ?5"},
};
#define LAYOUTS (sizeof layouts / sizeof *layouts)

struct database {
	sqlite3 *db;
	sqlite3_stmt *select;
	double best_us[WATERS];
	size_t differ;
};

static double now_us(void)
{
	struct timespec t;

	timespec_get(&t, TIME_UTC);
	return 1e6 * (double)t.tv_sec + 1e-3 * (double)t.tv_nsec;
}

/* Without a doubt, since a query knows none. */
static struct ts_measure exactly(double value)
{
	return (struct ts_measure){value, value, value, TS_MEASURE_DOUBT};
}

static void profile_of(double gh_dh, struct ts_profile *ret)
{
	struct ts_reading reading = {
		.gh_dh = exactly(gh_dh), .kh_dh = exactly(gh_dh / 2 + 1), .ph = exactly(7.4)};
	struct ts_water water = {.readings = &reading, .reading_count = 1};
	struct ts_keeping keeping = {.temperature = exactly(25)};

	ts_profile_make(&water, &keeping, NULL, -1, ret);
}

static void match_all(const struct ts_catalogue *catalogue, const struct ts_profile *profile,
	struct ts_match *ret)
{
	struct ts_keeping keeping = {.temperature = exactly(25)};
	struct ts_practice practice;

	ts_practice_defaults(&practice);
	for (size_t i = 0; i < catalogue->count; i++)
		ts_match_species(catalogue->items[i], profile, &keeping, &practice, &ret[i]);
}

/* Fills the table with the bands; a band that is not known holds every water. */
static bool fill(sqlite3 *db, const struct ts_match *matches, size_t count)
{
	sqlite3_stmt *insert = NULL;

	if (sqlite3_prepare_v2(db, "INSERT INTO species VALUES (?,?,?,?,?,?,?,?,?,?,?)", -1,
		    &insert, NULL) != SQLITE_OK)
		return false;
	for (size_t i = 0; i < count; i++) {
		sqlite3_bind_int64(insert, 1, (sqlite3_int64)i);
		for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
			const struct ts_range *r = &matches[i].at[p].tolerated;

			sqlite3_bind_double(insert, 2 + 2 * p, isnan(r->low) ? -1e9 : r->low);
			sqlite3_bind_double(insert, 3 + 2 * p, isnan(r->high) ? 1e9 : r->high);
		}
		if (sqlite3_step(insert) != SQLITE_DONE || sqlite3_reset(insert) != SQLITE_OK)
			return false;
	}
	return sqlite3_finalize(insert) == SQLITE_OK;
}

static bool open_database(struct database *d, const struct layout *layout,
	const struct ts_match *matches, size_t count)
{
	for (size_t i = 0; i < WATERS; i++)
		d->best_us[i] = INFINITY;
	return sqlite3_open(":memory:", &d->db) == SQLITE_OK &&
	       sqlite3_exec(d->db, layout->create, NULL, NULL, NULL) == SQLITE_OK &&
	       sqlite3_exec(d->db, "BEGIN", NULL, NULL, NULL) == SQLITE_OK &&
	       fill(d->db, matches, count) &&
	       sqlite3_exec(d->db, "COMMIT; ANALYZE", NULL, NULL, NULL) == SQLITE_OK &&
	       sqlite3_prepare_v2(d->db, layout->select, -1, &d->select, NULL) == SQLITE_OK;
}

/* Rows that hold the water, their ids in `ret`; SIZE_MAX where the query fails. */
static size_t query(sqlite3_stmt *select, const struct ts_profile *profile, sqlite3_int64 *ret)
{
	size_t rows = 0;
	int status;

	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		sqlite3_bind_double(select, p + 1, profile->at[p].value);
	while ((status = sqlite3_step(select)) == SQLITE_ROW)
		ret[rows++] = sqlite3_column_int64(select, 0);
	sqlite3_reset(select);
	return status == SQLITE_DONE ? rows : SIZE_MAX;
}

static bool holds(const struct ts_match *m)
{
	for (size_t p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (m->at[p].known && m->at[p].outside_by != 0)
			return false;
	}
	return true;
}

/* Are these the very species of which the match says that no figure lies outside? */
static bool same(
	const struct ts_match *matches, size_t count, const sqlite3_int64 *ids, size_t rows)
{
	size_t held = 0;

	for (size_t i = 0; i < rows && rows <= count; i++) {
		if (!holds(&matches[ids[i]]))
			return false;
	}
	for (size_t i = 0; i < count; i++)
		held += holds(&matches[i]);
	return held == rows;
}

static double mean(const double *us)
{
	double sum = 0;

	for (size_t i = 0; i < WATERS; i++)
		sum += us[i];
	return sum / WATERS;
}

static void one_round(const struct ts_catalogue *catalogue, size_t water, struct ts_match *matches,
	sqlite3_int64 *ids, double *io_match_us, struct database *databases)
{
	struct ts_profile profile;
	double start;

	profile_of((double)(1 + water), &profile);
	start = now_us();
	match_all(catalogue, &profile, matches);
	*io_match_us = fmin(*io_match_us, now_us() - start);
	for (size_t i = 0; i < LAYOUTS; i++) {
		struct database *d = &databases[i];
		size_t rows;

		start = now_us();
		rows = query(d->select, &profile, ids);
		d->best_us[water] = fmin(d->best_us[water], now_us() - start);
		d->differ += !same(matches, catalogue->count, ids, rows);
	}
}

int main(int argc, char **argv)
{
	struct ts_catalogue catalogue;
	struct ts_profile profile;
	struct ts_match *matches;
	struct database databases[LAYOUTS] = {0};
	double match_us[WATERS];
	sqlite3_int64 *ids;
	size_t differ = 0;

	ts_catalogue_open(&catalogue, NULL);
	if (argc != 2 || ts_catalogue_add_folder(&catalogue, argv[1], NULL))
		return 2;
	matches = calloc(catalogue.count, sizeof *matches);
	ids = calloc(catalogue.count, sizeof *ids);
	if (!matches || !ids)
		return 2;
	profile_of(9, &profile);
	match_all(&catalogue, &profile, matches);
	for (size_t i = 0; i < LAYOUTS; i++) {
		if (!open_database(&databases[i], &layouts[i], matches, catalogue.count))
			return 2;
	}
	for (size_t i = 0; i < WATERS; i++)
		match_us[i] = INFINITY;
	for (size_t i = 0; i < WATERS * ROUNDS; i++)
		one_round(&catalogue, i % WATERS, matches, ids, &match_us[i % WATERS], databases);
	printf("%zu species matched in %.0f us, mean of %d waters\n", catalogue.count,
		mean(match_us), WATERS);
	for (size_t i = 0; i < LAYOUTS; i++) {
		struct database *d = &databases[i];

		printf("a query of %s: %.0f us, ratio %.2f (goal 1)\n", layouts[i].says,
			mean(d->best_us), mean(match_us) / mean(d->best_us));
		if (d->differ)
			printf("%zu times other rows than the match\n", d->differ);
		differ += d->differ;
		sqlite3_finalize(d->select);
		sqlite3_close(d->db);
	}
	free(matches);
	free(ids);
	ts_catalogue_close(&catalogue);
	return differ > 0;
}
