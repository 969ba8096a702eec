/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A process of SQLite that answers a prepared range query from a file of species' bands, as one
 * would ask a database which animals hold a water: what a whole call of the program is held
 * against (tests/bench/image.sh). Usage: bench_query FILE, or bench_query FILE ROWS to make it.
 */
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>

#define BANDS 4

static int fail(sqlite3 *db)
{
	fprintf(stderr, "bench_query: %s\n", sqlite3_errmsg(db));
	return 1;
}

/* Rows with a name and bands, as wide as those of animals; figures of a linear congruence. */
static int make(sqlite3 *db, int rows)
{
	unsigned state = 1;

	if (sqlite3_exec(db,
		    "BEGIN; CREATE TABLE species (name TEXT, l0 REAL, h0 REAL, l1 REAL, h1 REAL, "
		    "l2 REAL, h2 REAL, l3 REAL, h3 REAL)",
		    NULL, NULL, NULL) != SQLITE_OK)
		return fail(db);
	for (int i = 0; i < rows; i++) {
		static const double widest[BANDS] = {30, 20, 4, 12}, least[BANDS] = {0, 0, 5, 18};
		char insert[512];
		double at[2 * BANDS];

		for (int n = 0; n < 2 * BANDS; n++) {
			state = state * 1103515245u + 12345u;
			at[n] = least[n / 2] +
				widest[n / 2] / 2 * ((state >> 16 & 1023) / 1023.0 + n % 2);
		}
		snprintf(insert, sizeof insert,
			"INSERT INTO species VALUES ('Genus species%d', %g, %g, %g, %g, %g, %g, "
			"%g, %g)",
			i, at[0], at[1], at[2], at[3], at[4], at[5], at[6], at[7]);
		if (sqlite3_exec(db, insert, NULL, NULL, NULL) != SQLITE_OK)
			return fail(db);
	}
	return sqlite3_exec(db, "COMMIT", NULL, NULL, NULL) == SQLITE_OK ? 0 : fail(db);
}

static int ask(sqlite3 *db)
{
	static const double water[BANDS] = {9, 6, 7.4, 24};
	sqlite3_stmt *select;
	int found = 0;

	if (sqlite3_prepare_v2(db,
		    "SELECT name FROM species WHERE ?1 BETWEEN l0 AND h0 AND ?2 BETWEEN l1 AND h1 "
		    "AND ?3 BETWEEN l2 AND h2 AND ?4 BETWEEN l3 AND h3 ORDER BY name",
		    -1, &select, NULL) != SQLITE_OK)
		return fail(db);
	for (int i = 0; i < BANDS; i++)
		sqlite3_bind_double(select, i + 1, water[i]);
	while (sqlite3_step(select) == SQLITE_ROW)
		found += puts((const char *)sqlite3_column_text(select, 0)) >= 0;
	sqlite3_finalize(select);
	return found ? 0 : 1;
}

int main(int argc, char **argv)
{
	sqlite3 *db;
	int status;

	if (argc < 2 || sqlite3_open(argv[1], &db) != SQLITE_OK)
		return 2;
	status = argc > 2 ? make(db, atoi(argv[2])) : ask(db);
	sqlite3_close(db);
	return status;
}
