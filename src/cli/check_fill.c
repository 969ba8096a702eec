/* SPDX-License-Identifier: Apache-2.0 */
/*
 * check for programs: fills the rows of report/check_result.h.
 */
#include "base/arena.h"
#include "cli/check.h"
#include "cli/results.h"
#include "report/advice_result.h"
#include "report/check_result.h"
#include "words/names.h"
#include "words/rulings.h"
#include "words/sentence.h"

void check_say(struct ts_text *text, const struct check_answer *a, const struct ts_ruling *r)
{
	for (size_t i = 0; r->name && i < a->plan.stock_count; i++) {
		if (a->plan.stock[i].species == r->name && !a->species[i]) {
			ts_say_candidates(text, r->name, &a->candidates[i]);
			return;
		}
	}
	ts_say_ruling(text, r);
}

void check_say_step(struct ts_text *text, const struct ts_repair_step *step)
{
	if (!step->to)
		ts_text_put(text, "leave out ");
	ts_say_animal(text, step->species);
	ts_text_put(text, step->to ? ": " : " (");
	ts_text_number(text, step->to ? step->to : step->from, 0);
	if (!step->to) {
		ts_text_put(text, ")");
		return;
	}
	ts_text_put(text, " instead of ");
	ts_text_number(text, step->from, 0);
}

/* Moves a sentence into the arena; an empty one is not known. */
static const char *kept(struct ts_arena *arena, struct ts_text *text)
{
	const char *copy = text->len ? ts_arena_text(arena, ts_text_get(text), text->len) : NULL;

	text->len = 0;
	return copy;
}

static struct ts_texts animals(struct ts_arena *arena, const struct ts_ruling *r)
{
	struct ts_texts texts = {ts_arena_array(arena, 2, sizeof *texts.items), 0};

	if (texts.items && r->subject)
		texts.items[texts.count++] = r->subject->species;
	if (texts.items && r->other)
		texts.items[texts.count++] = r->other->species;
	return texts;
}

static const char *parameter_of(const struct ts_ruling *r)
{
	if (r->match && isnan(r->match->copper_borne_mg_l) && r->word >= 0)
		return ts_parameter_rows[r->word].key;
	return r->match && !isnan(r->match->copper_borne_mg_l) ? "copper"
							       : ts_rule_rows[r->rule].parameter;
}

static void put_findings(struct session *s, const struct check_answer *a, struct ts_text *text,
	struct ts_check_result *rows)
{
	const struct ts_check *c = &a->check;

	rows->findings = ts_arena_array(s->arena, c->count + 1, sizeof *rows->findings);
	for (size_t i = 0; rows->findings && i < c->count; i++) {
		const struct ts_ruling *r = &c->rulings[i];
		struct ts_check_finding_result *f = &rows->findings[rows->finding_count++];

		f->severity = ts_severity_words[r->severity];
		f->code = ts_rule_rows[r->rule].code;
		f->species = animals(s->arena, r);
		f->parameter = parameter_of(r);
		check_say(text, a, r);
		f->says = kept(s->arena, text);
		ts_say_change(text, r, check_advised(a));
		f->smallest_change = kept(s->arena, text);
	}
}

static void put_repair(struct session *s, const struct ts_check *c, struct ts_text *text,
	struct ts_check_result *rows)
{
	rows->repair = ts_arena_array(s->arena, c->repair_count + 1, sizeof *rows->repair);
	for (size_t i = 0; rows->repair && i < c->repair_count; i++) {
		const struct ts_repair_step *step = &c->repair[i];

		check_say_step(text, step);
		rows->repair[rows->repair_count++] = (struct ts_check_repair_result){
			step->species->species, result_id(s->arena, step->species->file),
			kept(s->arena, text), step->from, step->to};
	}
}

static void put_advice(
	struct session *s, const struct check_answer *a, struct ts_check_result *rows)
{
	rows->advice = ts_arena_array(s->arena, a->advice_count + 1, sizeof *rows->advice);
	for (size_t i = 0; rows->advice && i < a->advice_count; i++)
		ts_advice_line_fill(
			s->arena, &a->advice[i], a->residents, &rows->advice[rows->advice_count++]);
}

static struct ts_range ends(const struct ts_estimate *e)
{
	return (struct ts_range){e->low, e->high};
}

static void put_load(const struct ts_check *c, struct ts_check_load_result *ret)
{
	const double no = (double)NAN;
	const struct ts_range none = {no, no};
	const struct ts_load *l = &c->load;

	*ret = (struct ts_check_load_result){
		no, no, no, no, no, none, none, none, none, none, no, no, no, no, no};
	if (!c->load_known)
		return;
	*ret = (struct ts_check_load_result){l->nitrogen_mg_day.value, l->no3_rise_mg_l_week.value,
		l->no3_steady_mg_l.value, l->kh_used_dh_week.value, l->buffer_days.value,
		ends(&l->nitrogen_mg_day), ends(&l->no3_rise_mg_l_week), ends(&l->no3_steady_mg_l),
		ends(&l->kh_used_dh_week), ends(&l->buffer_days), l->net_l, l->feed_g_day.value,
		l->measured_no3_rise_mg_l_week, l->change_percent, l->change_days};
}

void check_json(struct session *s, const struct check_answer *a)
{
	struct ts_check_result rows = {.name = a->plan.name,
		.verdict = ts_check_verdict_words[a->check.verdict],
		.more = a->check.more,
		.repair_proven = a->check.repair_proven};
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	put_findings(s, a, &text, &rows);
	put_repair(s, &a->check, &text, &rows);
	put_advice(s, a, &rows);
	put_load(&a->check, &rows.load);
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_json(s, "check", &ts_result_check, &rows);
}
