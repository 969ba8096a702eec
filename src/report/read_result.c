/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of read.
 */
#include "report/read_result.h"

#include "intake/report.h"

/* clang-format off */
static const struct ts_result_field taken_fields[] = {
	TS_R_ROW_TEXT(struct ts_read_taken_result, "key", key, "key of a reading"),
	TS_R_ROW_TEXT(struct ts_read_taken_result, "unit", unit, "unit of the numbers; null for pH"),
	TS_R_ROW_NUMBER(struct ts_read_taken_result, "value", value, 4, "the value, or the mean, or the middle of its range"),
	TS_R_ROW_NUMBER(struct ts_read_taken_result, "low", low, 4, "lowest; null = open"),
	TS_R_ROW_NUMBER(struct ts_read_taken_result, "high", high, 4, "highest; null = open"),
	TS_R_ROW_NUMBER(struct ts_read_taken_result, "mean", mean, 4, "mean as printed; null = none"),
	TS_R_ROW_COUNT(struct ts_read_taken_result, "line", line, "first line that gave a figure"),
	TS_R_ROW_COUNT(struct ts_read_taken_result, "last_line", last_line, "last such line"),
	TS_R_ROW_COUNT(struct ts_read_taken_result, "statements", statements, "entries of the report behind it"),
	TS_R_ROW_TEXT(struct ts_read_taken_result, "printed", printed, "figures and unit of the first line"),
	TS_R_ROW_TEXT(struct ts_read_taken_result, "rule", rule, "layout by which it was taken"),
	TS_R_ROW_TEXT(struct ts_read_taken_result, "assumed", assumed, "what was concluded or assumed; null = nothing"),
};
static const struct ts_result_shape taken_shape = TS_R_SHAPE("taken", taken_fields, struct ts_read_taken_result);

static const struct ts_result_field figure_fields[] = {
	TS_R_ROW_TEXT(struct ts_read_figure_result, "key", key, "key of a reading"),
	TS_R_ROW_TEXT(struct ts_read_figure_result, "unit", unit, "unit of the numbers; null for pH"),
	TS_R_ROW_NUMBER(struct ts_read_figure_result, "value", value, 4, "the figure"),
	TS_R_ROW_NUMBER(struct ts_read_figure_result, "low", low, 4, "lower end; null = open"),
	TS_R_ROW_NUMBER(struct ts_read_figure_result, "high", high, 4, "upper end; null = open"),
	TS_R_ROW_WORD(struct ts_read_figure_result, "column", column, ts_column_words, "what it was held for"),
	TS_R_ROW_WORD(struct ts_read_figure_result, "statistic", statistic, ts_statistic_words, "what it is of the samples"),
	TS_R_ROW_COUNT(struct ts_read_figure_result, "line", line, "its line"),
	TS_R_ROW_TEXT(struct ts_read_figure_result, "printed", printed, "figure and unit as printed"),
	TS_R_ROW_TEXT(struct ts_read_figure_result, "rule", rule, "layout by which it was told"),
	TS_R_ROW_TEXT(struct ts_read_figure_result, "assumed", assumed, "what was concluded or assumed; null = nothing"),
	TS_R_ROW_TEXT(struct ts_read_figure_result, "zone", zone, "supply zone; null = none named"),
};
static const struct ts_result_shape figure_shape = TS_R_SHAPE("figure", figure_fields, struct ts_read_figure_result);

static const struct ts_result_field gap_fields[] = {
	TS_R_ROW_COUNT(struct ts_read_gap_result, "line", line, "the line"),
	TS_R_ROW_TEXT(struct ts_read_gap_result, "text", text, "its text, or the beginning"),
	TS_R_ROW_TEXT(struct ts_read_gap_result, "why", why, "why nothing was taken"),
	TS_R_ROW_TEXT(struct ts_read_gap_result, "remedy", remedy, "what to look for"),
};
static const struct ts_result_shape gap_shape = TS_R_SHAPE("gap", gap_fields, struct ts_read_gap_result);

static const struct ts_result_field clash_fields[] = {
	TS_R_ROW_COUNT(struct ts_read_clash_result, "line", line, "the line of what was kept"),
	TS_R_ROW_COUNT(struct ts_read_clash_result, "other_line", other_line, "the line against it; the same where both stand in one"),
	TS_R_ROW_TEXT(struct ts_read_clash_result, "says", says, "the contradiction in words"),
};
static const struct ts_result_shape clash_shape = TS_R_SHAPE("contradiction", clash_fields, struct ts_read_clash_result);

static const struct ts_result_field result_fields[] = {
	TS_R_ROW_TEXT(struct ts_read_result, "file", file, "the report; - is standard input"),
	TS_R_ROW_COUNT(struct ts_read_result, "lines", lines, "lines of the report"),
	TS_R_ROW_TEXT(struct ts_read_result, "zone", zone, "supply zone that was read; null = none"),
	TS_R_ROW_TEXTS(struct ts_read_result, "zones", zones, "supply zones met"),
	TS_R_ROW_BOOL(struct ts_read_result, "choose_zone", choose_zone, "nothing was taken, since a zone must be chosen"),
	TS_R_ROW_BOOL(struct ts_read_result, "class_only", class_only, "classes of hardness were met; they are no values"),
	TS_R_ROW_LIST(struct ts_read_result, "taken", taken, taken_count, struct ts_read_taken_result, &taken_shape, "the reading"),
	TS_R_ROW_LIST(struct ts_read_result, "figures", figures, figure_count, struct ts_read_figure_result, &figure_shape, "every figure, limits too"),
	TS_R_ROW_COUNT(struct ts_read_result, "figures_more", figures_more, "figures beyond the list; they count in taken"),
	TS_R_ROW_LIST(struct ts_read_result, "not_understood", gaps, gap_count, struct ts_read_gap_result, &gap_shape, "what looked relevant and was not taken"),
	TS_R_ROW_COUNT(struct ts_read_result, "not_understood_more", gaps_more, "further ones"),
	TS_R_ROW_LIST(struct ts_read_result, "contradictions", clashes, clash_count, struct ts_read_clash_result, &clash_shape, "what cannot both hold"),
};
/* clang-format on */
const struct ts_result_shape ts_result_read =
	TS_R_SHAPE("read", result_fields, struct ts_read_result);
