/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Scoring in memory beside a database asked for the same ranges: every species of a folder matched
 * against a water, and a prepared query of SQLite over a table in memory of the very bands that
 * the match used, GH, KH, pH and temperature. The match says more (which parameter, by how much,
 * how sure); the query only which rows hold the water. Rounds take turns, best of each counts.
 * Usage: bench_score SPECIES-FOLDER. Exit 1 where the two hold different rows.
 */
#include <math.h>
#include <sqlite3.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <tapshoal/tapshoal.h>
#include <time.h>

#include "model/practice.h"

#define ROUNDS 60

static const enum ts_parameter asked[] = {TS_GH, TS_KH, TS_PH, TS_TEMPERATURE};
#define ASKED (sizeof asked / sizeof *asked)

static double now_us(void)
{
	struct timespec t;

	timespec_get(&t, TIME_UTC);
	return 1e6 * (double)t.tv_sec + 1e-3 * (double)t.tv_nsec;
}

static struct ts_measure exactly(double value)
{
	return (struct ts_measure){value, value, value, TS_MEASURE_VALUE};
}

static void profile_of(double gh_dh, struct ts_profile *ret)
{
	struct ts_reading reading = {
		.gh_dh = exactly(gh_dh), .kh_dh = exactly(gh_dh / 2 + 1), .ph = exactly(7.4)};
	struct ts_water water = {.readings = &reading, .reading_count = 1};
	struct ts_keeping keeping = {.temperature = exactly(25)};

	ts_profile_make(&water, &keeping, NULL, ret);
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

/* A table of the bands; a band that is not known holds every water. */
static sqlite3 *table_of(const struct ts_match *matches, size_t count)
{
	sqlite3 *db = NULL;
	sqlite3_stmt *insert = NULL;

	if (sqlite3_open(":memory:", &db) != SQLITE_OK ||
		sqlite3_exec(db,
			"CREATE TABLE species (id INTEGER PRIMARY KEY, l0 REAL, h0 REAL, l1 REAL, "
			"h1 REAL, l2 REAL, h2 REAL, l3 REAL, h3 REAL); BEGIN",
			NULL, NULL, NULL) != SQLITE_OK ||
		sqlite3_prepare_v2(db, "INSERT INTO species VALUES (?,?,?,?,?,?,?,?,?)", -1,
			&insert, NULL) != SQLITE_OK)
		return NULL;
	for (size_t i = 0; i < count; i++) {
		sqlite3_bind_int64(insert, 1, (sqlite3_int64)i);
		for (int p = 0; p < (int)ASKED; p++) {
			const struct ts_range *r = &matches[i].at[asked[p]].tolerated;

			sqlite3_bind_double(insert, 2 + 2 * p, isnan(r->low) ? -1e9 : r->low);
			sqlite3_bind_double(insert, 3 + 2 * p, isnan(r->high) ? 1e9 : r->high);
		}
		if (sqlite3_step(insert) != SQLITE_DONE || sqlite3_reset(insert) != SQLITE_OK)
			return NULL;
	}
	sqlite3_finalize(insert);
	return sqlite3_exec(db, "COMMIT", NULL, NULL, NULL) == SQLITE_OK ? db : NULL;
}

/* Rows that hold the water; SIZE_MAX where the query fails. */
static size_t query(sqlite3_stmt *select, const struct ts_profile *profile)
{
	size_t rows = 0;
	int status;

	for (int p = 0; p < (int)ASKED; p++)
		sqlite3_bind_double(select, p + 1, profile->at[asked[p]].value);
	while ((status = sqlite3_step(select)) == SQLITE_ROW)
		rows += sqlite3_column_int64(select, 0) >= 0;
	sqlite3_reset(select);
	return status == SQLITE_DONE ? rows : SIZE_MAX;
}

static size_t held(const struct ts_match *matches, size_t count)
{
	size_t rows = 0;

	for (size_t i = 0; i < count; i++) {
		bool all = true;

		for (size_t p = 0; p < ASKED; p++) {
			const struct ts_parameter_fit *f = &matches[i].at[asked[p]];

			all &= !f->known || f->outside_by == 0;
		}
		rows += all;
	}
	return rows;
}

int main(int argc, char **argv)
{
	struct ts_catalogue catalogue;
	struct ts_profile profile;
	struct ts_match *matches;
	double match_us = INFINITY, query_us = INFINITY;
	size_t differ = 0, rows = 0;
	sqlite3 *db;
	sqlite3_stmt *select = NULL;

	ts_catalogue_open(&catalogue, NULL);
	if (argc != 2 || ts_catalogue_add_folder(&catalogue, argv[1], NULL))
		return 2;
	matches = calloc(catalogue.count, sizeof *matches);
	if (!matches)
		return 2;
	profile_of(9, &profile);
	match_all(&catalogue, &profile, matches);
	db = table_of(matches, catalogue.count);
	if (!db || sqlite3_prepare_v2(db,
			   "SELECT id FROM species WHERE ?1 BETWEEN l0 AND h0 AND ?2 BETWEEN l1 "
			   "AND h1 AND ?3 BETWEEN l2 AND h2 AND ?4 BETWEEN l3 AND h3",
			   -1, &select, NULL) != SQLITE_OK)
		return 2;
	for (int i = 0; i < ROUNDS; i++) {
		double start;

		profile_of(1 + i % 20, &profile);
		start = now_us();
		match_all(&catalogue, &profile, matches);
		match_us = fmin(match_us, now_us() - start);
		start = now_us();
		rows = query(select, &profile);
		query_us = fmin(query_us, now_us() - start);
		differ += rows != held(matches, catalogue.count);
	}
	printf("%zu species: matched in %.0f us, the query in %.0f us, ratio %.2f (goal 1)\n",
		catalogue.count, match_us, query_us, match_us / query_us);
	if (differ)
		printf("%zu waters where they hold different rows\n", differ);
	sqlite3_finalize(select);
	sqlite3_close(db);
	free(matches);
	ts_catalogue_close(&catalogue);
	return differ > 0;
}
