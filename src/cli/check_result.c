/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of check for programs: every finding, the repair, the load.
 */
#include "base/arena.h"
#include "cli/check.h"
#include "cli/results.h"
#include "report/advice_result.h"
#include "words/names.h"
#include "words/rulings.h"
#include "words/sentence.h"

const char *const check_verdicts[TS_PLAN_VERDICT__COUNT + 1] = {
	"sound", "sound-if", "unsound", "cannot-say", NULL};

struct finding_row {
	const char *severity, *code;
	struct ts_texts species;
	const char *parameter, *says, *smallest_change;
};

struct repair_row {
	const char *species, *id, *says;
	size_t from, to;
};

struct load_row {
	double nitrogen_mg_day, no3_rise_mg_l_week, no3_steady_mg_l, kh_used_dh_week, buffer_days;
	struct ts_range nitrogen_range, no3_rise_range, no3_steady_range, kh_used_range,
		buffer_range;
	double volume_l, feed_g_day, measured_no3_rise, change_percent, change_days;
};

struct check_rows {
	const char *name, *verdict;
	struct finding_row *findings;
	struct repair_row *repair;
	struct ts_advice_line *advice;
	size_t finding_count, more, repair_count, advice_count;
	bool repair_proven;
	struct load_row load;
};

static const char *const severities[] = {"note", "concern", "conflict", NULL};

/* clang-format off */
#define F struct finding_row
static const struct ts_result_field finding_fields[] = {
	TS_R_ROW_WORD(F, "severity", severity, severities, "conflict: will be harmed; concern: works on a condition"),
	TS_R_ROW_TEXT(F, "code", code, "its name, which never changes meaning"),
	TS_R_ROW_TEXTS(F, "species", species, "who suffers, then from whom"),
	TS_R_ROW_TEXT(F, "parameter", parameter, "what its numbers are about"),
	TS_R_ROW_TEXT(F, "says", says, "the finding in words"),
	TS_R_ROW_TEXT(F, "smallest_change", smallest_change, "what would mend it"),
};
#undef F
static const struct ts_result_shape finding_shape =
	TS_R_SHAPE("finding", finding_fields, struct finding_row);

#define R struct repair_row
static const struct ts_result_field repair_fields[] = {
	TS_R_ROW_TEXT(R, "species", species, "accepted name"),
	TS_R_ROW_TEXT(R, "id", id, "stem of the record's file"),
	TS_R_ROW_COUNT(R, "from", from, "animals in the plan"),
	TS_R_ROW_COUNT(R, "to", to, "animals after the repair; 0: left out"),
	TS_R_ROW_TEXT(R, "says", says, "the step in words"),
};
#undef R
static const struct ts_result_shape repair_shape =
	TS_R_SHAPE("repair", repair_fields, struct repair_row);

#define L struct load_row
static const struct ts_result_field load_fields[] = {
	TS_R_ROW_NUMBER(L, "nitrogen_mg_day", nitrogen_mg_day, 1, "nitrogen that the feed brings into the water"),
	TS_R_ROW_NUMBER(L, "no3_rise_mg_l_week", no3_rise_mg_l_week, 1, "nitrate between water changes"),
	TS_R_ROW_NUMBER(L, "no3_steady_mg_l", no3_steady_mg_l, 1, "nitrate before a change, once settled"),
	TS_R_ROW_NUMBER(L, "kh_used_dh_week", kh_used_dh_week, 2, "buffer used up"),
	TS_R_ROW_NUMBER(L, "buffer_days", buffer_days, 1, "days to the floor without a change"),
	TS_R_ROW_RANGE(L, "nitrogen_mg_day_range", nitrogen_range, 1, "least and most"),
	TS_R_ROW_RANGE(L, "no3_rise_mg_l_week_range", no3_rise_range, 1, "least and most"),
	TS_R_ROW_RANGE(L, "no3_steady_mg_l_range", no3_steady_range, 1, "least and most"),
	TS_R_ROW_RANGE(L, "kh_used_dh_week_range", kh_used_range, 2, "least and most"),
	TS_R_ROW_RANGE(L, "buffer_days_range", buffer_range, 1, "least and most"),
	TS_R_ROW_NUMBER(L, "volume_l", volume_l, 0, "of the water"),
	TS_R_ROW_NUMBER(L, "feed_g_day", feed_g_day, 2, "dry feed"),
	TS_R_ROW_NUMBER(L, "measured_no3_rise_mg_l_week", measured_no3_rise, 1, "from two readings; it replaces the computed one"),
	TS_R_ROW_NUMBER(L, "change_percent", change_percent, 0, "of the water, as given or as usual"),
	TS_R_ROW_NUMBER(L, "change_days", change_days, 1, "from one change to the next"),
};
#undef L
static const struct ts_result_shape load_shape = TS_R_SHAPE("load", load_fields, struct load_row);

#define C struct check_rows
static const struct ts_result_field check_fields[] = {
	TS_R_ROW_TEXT(C, "name", name, "of the plan"),
	TS_R_ROW_WORD(C, "verdict", verdict, check_verdicts, "sound-if: every concern has its condition"),
	TS_R_ROW_LIST(C, "findings", findings, finding_count, struct finding_row, &finding_shape, "harm first"),
	TS_R_ROW_COUNT(C, "more", more, "lighter findings that were left out"),
	TS_R_ROW_LIST(C, "repair", repair, repair_count, struct repair_row, &repair_shape, "smallest change of the list that leaves no conflict it can mend"),
	TS_R_ROW_BOOL(C, "repair_proven", repair_proven, "no smaller repair exists"),
	TS_R_ROW_LIST(C, "advice", advice, advice_count, struct ts_advice_line, &ts_result_advice, "what to do about the water"),
	TS_R_ROW_SUB(C, "load", load, struct load_row, &load_shape, "what the animals make of the water"),
};
#undef C
/* clang-format on */
const struct ts_result_shape check_result_shape =
	TS_R_SHAPE("check", check_fields, struct check_rows);

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
	struct check_rows *rows)
{
	const struct ts_check *c = &a->check;

	rows->findings = ts_arena_array(s->arena, c->count + 1, sizeof *rows->findings);
	for (size_t i = 0; rows->findings && i < c->count; i++) {
		const struct ts_ruling *r = &c->rulings[i];
		struct finding_row *f = &rows->findings[rows->finding_count++];

		f->severity = severities[r->severity];
		f->code = ts_rule_rows[r->rule].code;
		f->species = animals(s->arena, r);
		f->parameter = parameter_of(r);
		check_say(text, a, r);
		f->says = kept(s->arena, text);
		ts_say_change(text, r, check_advised(a));
		f->smallest_change = kept(s->arena, text);
	}
}

static void put_repair(
	struct session *s, const struct ts_check *c, struct ts_text *text, struct check_rows *rows)
{
	rows->repair = ts_arena_array(s->arena, c->repair_count + 1, sizeof *rows->repair);
	for (size_t i = 0; rows->repair && i < c->repair_count; i++) {
		const struct ts_repair_step *step = &c->repair[i];

		check_say_step(text, step);
		rows->repair[rows->repair_count++] = (struct repair_row){step->species->species,
			result_id(s->arena, step->species->file), kept(s->arena, text), step->from,
			step->to};
	}
}

static void put_advice(struct session *s, const struct check_answer *a, struct check_rows *rows)
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

static void put_load(const struct ts_check *c, struct load_row *ret)
{
	const double no = (double)NAN;
	const struct ts_range none = {no, no};
	const struct ts_load *l = &c->load;

	*ret = (struct load_row){
		no, no, no, no, no, none, none, none, none, none, no, no, no, no, no};
	if (!c->load_known)
		return;
	*ret = (struct load_row){l->nitrogen_mg_day.value, l->no3_rise_mg_l_week.value,
		l->no3_steady_mg_l.value, l->kh_used_dh_week.value, l->buffer_days.value,
		ends(&l->nitrogen_mg_day), ends(&l->no3_rise_mg_l_week), ends(&l->no3_steady_mg_l),
		ends(&l->kh_used_dh_week), ends(&l->buffer_days), l->net_l, l->feed_g_day.value,
		l->measured_no3_rise_mg_l_week, l->change_percent, l->change_days};
}

void check_json(struct session *s, const struct check_answer *a)
{
	struct check_rows rows = {.name = a->plan.name,
		.verdict = check_verdicts[a->check.verdict],
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
	session_json(s, "check", &check_result_shape, &rows);
}
