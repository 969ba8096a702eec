/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The reader of reference tables: enough CSV for them (quoted cells, no quotes inside quotes),
 * and the bookkeeping of deviations. See table.h.
 */
#include "table.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static char *read_all(const char *name)
{
	char path[1024], *text;
	FILE *file;
	size_t size;

	snprintf(path, sizeof(path), "%s/%s", TS_REFERENCE_DIR, name);
	file = fopen(path, "rb");
	if (!file)
		fail_msg("cannot open %s", path);
	text = calloc(1, 1 << 18);
	assert_non_null(text);
	size = fread(text, 1, (1 << 18) - 1, file);
	fclose(file);
	assert_true(size > 0 && size < (1 << 18) - 1);
	return text;
}

/* Cuts one line into cells; returns how many. */
static size_t cut(char *line, const char **cells)
{
	size_t n = 0;

	while (n < TS_TABLE_COLUMNS) {
		char *end;

		if (*line == '"') {
			cells[n++] = ++line;
			end = strchr(line, '"');
			assert_non_null(end);
			*end++ = '\0';
			end = *end == ',' ? end : NULL;
		} else {
			cells[n++] = line;
			end = strchr(line, ',');
		}
		if (!end)
			return n;
		*end = '\0';
		line = end + 1;
	}
	fail_msg("more than %d columns", TS_TABLE_COLUMNS);
	return n;
}

struct table *table_open(const char *name)
{
	struct table *table = calloc(1, sizeof(*table));
	char *rest;

	assert_non_null(table);
	table->text = read_all(name);
	for (char *line = table->text; line && *line; line = rest) {
		rest = strchr(line, '\n');
		if (rest)
			*rest++ = '\0';
		line[strcspn(line, "\r")] = '\0';
		if (*line == '#' || *line == '\0')
			continue;
		if (table->columns == 0) {
			table->columns = cut(line, table->head);
			continue;
		}
		assert_true(table->rows < TS_TABLE_ROWS);
		cut(line, table->cells[table->rows++]);
	}
	assert_true(table->rows > 0);
	return table;
}

void table_close(struct table *table)
{
	free(table->text);
	free(table);
}

const char *table_text(const struct table *table, size_t row, const char *column)
{
	for (size_t i = 0; i < table->columns; i++)
		if (strcmp(table->head[i], column) == 0)
			return table->cells[row][i] ? table->cells[row][i] : "";
	fail_msg("no column %s", column);
	return "";
}

double table_number(const struct table *table, size_t row, const char *column)
{
	const char *text = table_text(table, row, column);
	char *end;
	double value = strtod(text, &end);

	return end == text ? NAN : value;
}

static void note(struct worst *worst, double deviation, const char *where)
{
	worst->count++;
	if (deviation <= worst->most)
		return;
	worst->most = isnan(deviation) ? INFINITY : deviation;
	snprintf(worst->where, sizeof(worst->where), "%s", where);
}

void worst_note(struct worst *worst, double got, double want, const char *where)
{
	note(worst, fabs(got - want), where);
}

void worst_note_relative(struct worst *worst, double got, double want, const char *where)
{
	note(worst, fabs(got - want) / fabs(want), where);
}

void worst_assert(const struct worst *worst)
{
	printf("# %s: worst %.6g of %.6g allowed, %zu compared, at %s\n", worst->what, worst->most,
		worst->limit, worst->count, worst->where);
	fflush(stdout);
	assert_true(worst->count > 0);
	if (worst->most > worst->limit)
		fail_msg("%s: %g exceeds %g at %s", worst->what, worst->most, worst->limit,
			worst->where);
}
