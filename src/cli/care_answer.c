/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The shared pieces of the answers about care.
 */
#include "cli/care_answer.h"

#include "answers/asking.h"
#include "base/date.h"
#include "words/names.h"

struct ts_asking care_asking(const struct session *s)
{
	return (struct ts_asking){.arena = s->arena, .practice = s->practice, .today = s->today};
}

const char *care_take(struct session *s, struct ts_text *text)
{
	struct ts_asking asking = care_asking(s);

	return ts_asking_keep(&asking, text);
}

void care_note(struct session *s, struct ts_texts *list, const char *text)
{
	struct ts_asking asking = care_asking(s);

	ts_asking_note(&asking, list, text);
}

/* Each name looked up; those that are none are told, a line each. */
static enum ts_status look_up(struct session *s, const char *const *names, size_t count,
	size_t stride, const struct ts_species ***ret_species)
{
	const struct ts_species **found = ts_arena_array(s->arena, count + 1, sizeof *found);
	bool ok = true;

	if (!found)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < count; i++) {
		const char *name = *(const char *const *)((const char *)names + i * stride);
		struct ts_candidates candidates;

		found[i] = session_species(s, name, &candidates);
		if (found[i])
			continue;
		ts_text_put(s->error, s->error->len ? "\n" : "");
		ts_say_candidates(s->error, name, &candidates);
		ok = false;
	}
	*ret_species = found;
	return ok ? TS_OK : TS_BAD_INPUT;
}

enum ts_status care_species(
	struct session *s, const struct values *names, const struct ts_species ***ret_species)
{
	return look_up(s, names->items, names->count, sizeof *names->items, ret_species);
}

enum ts_status care_plan_species(
	struct session *s, const struct ts_plan *plan, const struct ts_species ***ret_species)
{
	return look_up(s, plan->stock ? &plan->stock->species : NULL, plan->stock_count,
		sizeof *plan->stock, ret_species);
}

void care_cautions(struct session *s, unsigned when, struct ts_texts *ret)
{
	for (size_t i = 0; i < ts_caution_count; i++) {
		if (ts_cautions[i].when & when)
			care_note(s, ret, ts_cautions[i].says);
	}
}

static const char *number(struct session *s, struct ts_text *text, double value, int decimals)
{
	if (isnan(value))
		return "-";
	ts_text_number(text, value, decimals);
	return care_take(s, text);
}

static const char *change_of(
	struct session *s, struct ts_text *text, const struct ts_stage_line *stage)
{
	if (stage->change_percent >= 100)
		return "move over";
	ts_text_number_short(text, stage->change_percent, 0);
	ts_text_put(text, " %");
	if (!isnan(stage->change_l)) {
		ts_text_put(text, " = ");
		ts_say_amount(text, stage->change_l, "L");
	}
	return care_take(s, text);
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

/* "change 33 % = 33 L, then GH 12.0, KH 7.7, 421 uS/cm; watch them". */
static void stages_steps(struct ts_document *doc, struct session *s,
	const struct ts_stage_line *stages, size_t count, bool with_nh3)
{
	struct ts_node *steps = ts_doc_steps(doc);
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	for (size_t i = 0; i < count; i++) {
		const struct ts_stage_line *g = &stages[i];
		const char *change = change_of(s, &text, g), *day;

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

static void stages_table(struct ts_document *doc, struct session *s,
	const struct ts_stage_line *stages, size_t count, bool with_nh3)
{
	struct ts_node *table = ts_doc_table(doc);
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	if (with_nh3)
		ts_doc_line(doc, table, "day", "change", "GH", "KH", "pH", "NH3-N", "uS/cm", "then",
			NULL);
	else
		ts_doc_line(doc, table, "day", "change", "GH", "KH", "uS/cm", "then", NULL);
	for (size_t i = 0; i < count; i++) {
		const struct ts_stage_line *g = &stages[i];
		const char *day = number(s, &text, (double)g->day, 0);
		const char *change = change_of(s, &text, g);
		const char *gh = number(s, &text, g->gh_dh, 1), *kh = number(s, &text, g->kh_dh, 1);
		const char *ec = number(s, &text, g->conductivity_us_cm, 0);

		if (with_nh3)
			ts_doc_line(doc, table, day, change, gh, kh, number(s, &text, g->ph, 1),
				number(s, &text, g->nh3_mg_l, 4), ec, g->test, NULL);
		else
			ts_doc_line(doc, table, day, change, gh, kh, ec, g->test, NULL);
	}
	ts_text_drop(&text);
}

void care_stages(struct ts_document *doc, struct session *s, const struct ts_stage_line *stages,
	size_t count, bool with_nh3)
{
	if (doc->drawn)
		stages_steps(doc, s, stages, count, with_nh3);
	else
		stages_table(doc, s, stages, count, with_nh3);
}

double care_age_days(const struct session *s, const char *date)
{
	long day;

	return date && ts_date_read(date, &day) && day <= s->today ? (double)(s->today - day) : 0;
}
