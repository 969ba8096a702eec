/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Every report of tests/data/reports against what it must give, to the last key: nothing that is
 * not expected may be taken. One test a report; the format is told in tests/data/reports/README.md.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "intake/report.h"

#define REPORTS_MOST 400
#define CASE_BYTES_MOST 65536

struct report_case {
	char *report, *zone, *expect;
};

static char *section(char *text, const char *name)
{
	char *at = strstr(text, name);

	return at ? at + strlen(name) : NULL;
}

/* Cuts the file into its sections in place. */
static struct report_case cut(char *text)
{
	struct report_case c = {section(text, "=== report\n"), section(text, "=== zone\n"),
		section(text, "=== expect\n")};

	if (!c.report || !c.expect)
		fail_msg("a section is missing");
	if (c.zone)
		c.zone[strcspn(c.zone, "\n")] = '\0';
	c.expect[-11] = '\0';
	if (c.zone)
		c.zone[-9] = '\0';
	return c;
}

static enum ts_status read_in_pieces(
	const char *text, const char *zone, struct ts_arena *arena, struct ts_report *ret)
{
	struct ts_intake *in = ts_intake_open(NULL);
	struct ts_report_refusal refusal;
	size_t len = strlen(text);
	enum ts_status status = TS_OK;

	assert_non_null(in);
	for (size_t at = 0; at < len && !status; at += 7) /* pieces must not matter */
		status = ts_intake_feed(in, text + at, len - at < 7 ? len - at : 7, &refusal);
	assert_int_equal(status, TS_OK);
	status = ts_intake_finish(in, zone, arena, ret);
	ts_intake_close(in);
	return status;
}

static void near(const char *key, double got, double want)
{
	double slack = want < 0 ? -want * 5e-4 : want * 5e-4;

	if (!(got - want <= slack && want - got <= slack))
		fail_msg("%s is %.6g, expected %.6g", key, got, want);
}

static void check_value(const struct ts_report *r, const char *key, const char *rest)
{
	const struct ts_field *f = ts_shape_field(&ts_shape_reading, key);
	struct ts_measure m;
	const struct ts_report_origin *origin;
	const char *to = strstr(rest, "..");
	const char *mean = strstr(rest, "mean "), *line = strstr(rest, "line ");

	if (!f || !line)
		fail_msg("'%s' is no expectation", key);
	memcpy(&m, (const char *)&r->reading + f->offset, sizeof m);
	origin = &r->origins[f - ts_shape_reading.fields];
	if (m.kind == TS_MEASURE_NONE)
		fail_msg("%s was not taken", key);
	if (*rest == '<') {
		assert_int_equal(m.kind, TS_MEASURE_BELOW);
		near(key, m.high, atof(rest + 1));
	} else if (to) {
		assert_int_equal(m.kind, TS_MEASURE_RANGE);
		near(key, m.low, atof(rest));
		near(key, m.high, atof(to + 2));
	} else {
		assert_int_equal(m.kind, TS_MEASURE_VALUE);
		near(key, m.value, atof(rest));
	}
	if (mean)
		near(key, origin->mean, atof(mean + 5));
	if (origin->line != (unsigned)atoi(line + 5))
		fail_msg("%s is said to be of line %u, expected %s", key, origin->line, line + 5);
	assert_true(origin->rule && *origin->rule);
	assert_true(origin->printed && *origin->printed);
}

static void check_limit(
	const struct ts_report *r, const char *rest, enum ts_column column, bool *seen)
{
	unsigned line = (unsigned)atoi(rest);
	const char *key = strchr(rest, ' ') + 1;

	for (size_t i = 0; i < r->value_count; i++) {
		if (seen[i] || r->values[i].line != line || r->values[i].column != column ||
			strcmp(r->values[i].field->key, key) != 0)
			continue;
		seen[i] = true;
		return;
	}
	fail_msg("no such limit: %s", rest);
}

static void check_gap(const struct ts_report *r, const char *rest)
{
	const char *word = strchr(rest, ' ') + 1;

	for (size_t i = 0; i < r->gap_count; i++) {
		if (r->gaps[i].line == (unsigned)atoi(rest) && strstr(r->gaps[i].why, word))
			return;
	}
	fail_msg("no such gap: %s", rest);
}

static void check_clash(const struct ts_report *r, const char *rest)
{
	for (size_t i = 0; i < r->clash_count; i++) {
		if (r->clashes[i].line == (unsigned)atoi(rest))
			return;
	}
	fail_msg("no contradiction in line %s", rest);
}

struct tally {
	size_t values, limits, gaps, clashes, zones;
	bool none, class_only, choose;
	bool seen[TS_REPORT_VALUES_MOST];
};

static void check_line(const struct ts_report *r, char *line, struct tally *t)
{
	char *rest = strchr(line, ' ');

	if (rest)
		*rest++ = '\0';
	if (strcmp(line, "none") == 0) {
		t->none = true;
	} else if (strcmp(line, "class") == 0) {
		t->class_only = true;
	} else if (strcmp(line, "choose") == 0) {
		t->choose = true;
	} else if (!rest) {
		fail_msg("'%s' is no expectation", line);
	} else if (strcmp(line, "zones") == 0) {
		t->zones = (size_t)atoi(rest);
	} else if (strcmp(line, "limit") == 0 || strcmp(line, "detection") == 0) {
		check_limit(r, rest, *line == 'l' ? TS_COLUMN_LEGAL : TS_COLUMN_DETECTION, t->seen);
		t->limits++;
	} else if (strcmp(line, "gap") == 0) {
		check_gap(r, rest);
		t->gaps++;
	} else if (strcmp(line, "clash") == 0) {
		check_clash(r, rest);
		t->clashes++;
	} else {
		check_value(r, line, rest);
		t->values++;
	}
}

static void check_tally(const struct ts_report *r, enum ts_status status, const struct tally *t)
{
	size_t limits = 0;

	for (size_t i = 0; i < r->value_count; i++)
		limits += r->values[i].column != TS_COLUMN_RESULT;
	assert_int_equal(r->taken, t->values);
	assert_int_equal(limits, t->limits);
	assert_int_equal(r->gap_count, t->gaps);
	assert_int_equal(r->clash_count, t->clashes);
	assert_int_equal(r->zone_count, t->zones);
	assert_int_equal(r->class_only, t->class_only);
	assert_int_equal(r->choose, t->choose);
	assert_int_equal(status, t->none ? TS_NO : TS_OK);
}

static void test_report(void **state)
{
	static char text[CASE_BYTES_MOST];
	FILE *stream = fopen(*state, "rb");
	struct report_case c;
	struct ts_arena arena;
	struct ts_report r;
	struct tally t = {0};
	enum ts_status status;

	assert_non_null(stream);
	text[fread(text, 1, sizeof text - 1, stream)] = '\0';
	fclose(stream);
	c = cut(text);
	ts_arena_open(&arena, NULL);
	status = read_in_pieces(c.report, c.zone, &arena, &r);
	for (char *line = strtok(c.expect, "\n"); line; line = strtok(NULL, "\n"))
		check_line(&r, line, &t);
	check_tally(&r, status, &t);
	ts_arena_drop(&arena);
}

static int by_name(const void *a, const void *b)
{
	return strcmp(((const struct CMUnitTest *)a)->name, ((const struct CMUnitTest *)b)->name);
}

int main(int argc, char **argv)
{
	static struct CMUnitTest tests[REPORTS_MOST];
	static char names[REPORTS_MOST][256], paths[REPORTS_MOST][4096];
	DIR *dir = argc == 2 ? opendir(argv[1]) : NULL;
	const struct dirent *entry;
	size_t count = 0;

	while (dir && (entry = readdir(dir)) && count < REPORTS_MOST) {
		size_t len = strlen(entry->d_name);

		if (len < 6 || strcmp(entry->d_name + len - 5, ".case") != 0)
			continue;
		snprintf(names[count], sizeof names[count], "%s", entry->d_name);
		snprintf(paths[count], sizeof paths[count], "%s/%s", argv[1], entry->d_name);
		tests[count].name = names[count];
		tests[count].test_func = test_report;
		tests[count].initial_state = paths[count];
		count++;
	}
	if (dir)
		closedir(dir);
	if (!count)
		return 1;
	qsort(tests, count, sizeof *tests, by_name);
	return _cmocka_run_group_tests("reports", tests, count, NULL, NULL);
}
