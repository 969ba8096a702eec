/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What read tells to programs: what was taken, every figure with what it was held for, what was not
 * understood and what contradicts.
 */
#ifndef TS_REPORT_READ_RESULT_H
#define TS_REPORT_READ_RESULT_H

#include "base/arena.h"
#include "intake/report.h"
#include "report/result.h"

struct ts_read_taken_result {
	const char *key, *unit, *printed, *rule, *assumed;
	double value, low, high, mean;
	size_t line, last_line, statements;
};

struct ts_read_figure_result {
	const char *key, *unit, *column, *statistic, *printed, *rule, *assumed, *zone;
	double value, low, high;
	size_t line;
};

struct ts_read_gap_result {
	size_t line;
	const char *text, *why, *remedy;
};

struct ts_read_clash_result {
	size_t line, other_line; /* the same where there is no other */
	const char *says;
};

struct ts_read_result {
	const char *file, *zone;
	struct ts_texts zones;
	bool choose_zone, class_only;
	size_t lines;
	struct ts_read_taken_result *taken;
	size_t taken_count;
	struct ts_read_figure_result *figures;
	size_t figure_count, figures_more;
	struct ts_read_gap_result *gaps;
	size_t gap_count, gaps_more;
	struct ts_read_clash_result *clashes;
	size_t clash_count;
	const char *others;             /* lines of which no word was known; NULL: none */
	struct ts_texts missing;        /* of a report of which something was taken */
	const struct ts_report *report; /* no row */
};

extern const struct ts_result_shape ts_result_read;

/* The result of a report; lists and sentences belong to `arena`, whose failure is sticky. */
void ts_read_result_make(struct ts_arena *arena, const struct ts_report *report, const char *file,
	struct ts_read_result *ret);

#endif
