/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Stages as a table on the screen and as steps on a page.
 */
#include "show/stages.h"

#include <math.h>

#include "words/remake.h"

static const char *number(struct ts_document *doc, struct ts_text *text, double value, int decimals)
{
	if (isnan(value))
		return "-";
	ts_text_number(text, value, decimals);
	return ts_doc_take(doc, text);
}

static const char *change_of(
	struct ts_document *doc, struct ts_text *text, const struct ts_stage_line *stage)
{
	if (stage->change_percent >= 100)
		return "move over";
	if (isnan(stage->change_l)) {
		ts_text_number_short(text, stage->change_percent, 0);
		ts_text_put(text, " L of each 100");
		return ts_doc_take(doc, text);
	}
	ts_say_amount(text, stage->change_l, "L");
	ts_text_put(text, " (");
	ts_text_number_short(text, stage->change_percent, 0);
	ts_text_put(text, " %)");
	return ts_doc_take(doc, text);
}

static void put_after(
	struct ts_text *text, const char *label, double value, int decimals, const char *unit)
{
	if (isnan(value))
		return;
	ts_text_puts(text, ", ", label, NULL);
	ts_text_number(text, value, decimals);
	ts_text_put(text, unit);
}

/* "change 33 L (33 %), then GH 12.0, KH 7.7, 421 uS/cm; watch them". */
static void stages_steps(
	struct ts_document *doc, const struct ts_stage_line *stages, size_t count, bool with_nh3)
{
	struct ts_node *steps = ts_doc_steps(doc);
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	for (size_t i = 0; i < count; i++) {
		const struct ts_stage_line *g = &stages[i];
		const char *change = change_of(doc, &text, g), *day;

		ts_text_put(&text, "day ");
		ts_text_number(&text, (double)g->day, 0);
		day = ts_doc_take(doc, &text);
		ts_text_puts(&text, g->change_percent < 100 ? "change " : "", change, NULL);
		put_after(&text, "then GH ", g->gh_dh, 1, "");
		put_after(&text, "KH ", g->kh_dh, 1, "");
		put_after(&text, "pH ", with_nh3 ? g->ph : (double)NAN, 1, "");
		put_after(
			&text, "ammonia gas ", with_nh3 ? g->nh3_mg_l : (double)NAN, 4, " mg/L N");
		put_after(&text, "", g->conductivity_us_cm, 0, " uS/cm");
		ts_text_puts(&text, "; ", g->test, NULL);
		ts_doc_line(doc, steps, day, ts_doc_take(doc, &text), NULL);
	}
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}

static void stages_table(
	struct ts_document *doc, const struct ts_stage_line *stages, size_t count, bool with_nh3)
{
	struct ts_node *table = ts_doc_table(doc);
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	if (with_nh3)
		ts_doc_line(doc, table, "day", "change", "GH", "KH", "pH", "NH3-N", "uS/cm", "then",
			NULL);
	else
		ts_doc_line(doc, table, "day", "change", "GH", "KH", "uS/cm", "then", NULL);
	for (size_t i = 0; i < count; i++) {
		const struct ts_stage_line *g = &stages[i];
		const char *day = number(doc, &text, (double)g->day, 0);
		const char *change = change_of(doc, &text, g);
		const char *gh = number(doc, &text, g->gh_dh, 1),
			   *kh = number(doc, &text, g->kh_dh, 1);
		const char *ec = number(doc, &text, g->conductivity_us_cm, 0);

		if (with_nh3)
			ts_doc_line(doc, table, day, change, gh, kh, number(doc, &text, g->ph, 1),
				number(doc, &text, g->nh3_mg_l, 4), ec, g->test, NULL);
		else
			ts_doc_line(doc, table, day, change, gh, kh, ec, g->test, NULL);
	}
	ts_text_drop(&text);
}

void ts_show_stages(
	struct ts_document *doc, const struct ts_stage_line *stages, size_t count, bool with_nh3)
{
	if (doc->drawn)
		stages_steps(doc, stages, count, with_nh3);
	else
		stages_table(doc, stages, count, with_nh3);
}
