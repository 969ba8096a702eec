/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The list of a check: what the rules say of the plan, then the advice on what lives there already,
 * in one order. Of one thing one voice speaks: where advice and a rule are about the same, the
 * advice stands, since it knows what to do first.
 */
#include "answers/check_parts.h"

#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "words/advice.h"
#include "words/names.h"
#include "words/rulings.h"
#include "words/sentence.h"

const char *const ts_check_verdict_words[TS_PLAN_VERDICT__COUNT + 1] = {
	"sound", "asks", "sound-if", "unsound", NULL};
const char *const ts_check_severity_words[] = {"note", "question", "concern", "conflict", NULL};
/* From TS_TOPIC_DANGER on. */
const char *const ts_check_topic_words[] = {
	"danger", "name", "company", "temperature", "water", "room", "waste", "care", NULL};
const char *const ts_check_rests_words[] = {
	"records", "read", "computed", "assumed", "not-known", NULL};
const char *const ts_check_remedy_words[] = {"none", "make-safe", "measure", "wait", "routine",
	"minerals", "dilute", "tank", "number", "leave-out", "other-home", NULL};

/* Advice and the rules that are about the same. */
static const struct {
	const char *advice; /* the beginning of its id */
	enum ts_rule_id rule;
} same[] = {
	{"now.crash", TS_RULE_AMMONIA},
	{"now.ammonia", TS_RULE_AMMONIA},
	{"now.nitrite", TS_RULE_NITRITE},
	{"now.ammonia", TS_RULE_FILTER},
	{"now.nitrite", TS_RULE_FILTER},
	{"now.", TS_RULE_DISTRESS},
	{"now.chlorine", TS_RULE_CHLORINE},
	{"now.oxygen", TS_RULE_OXYGEN},
	{"oxygen.short", TS_RULE_OXYGEN},
	{"filter.reading", TS_RULE_AMMONIA},
	{"filter.reading", TS_RULE_NITRITE},
	{"filter.reading", TS_RULE_FILTER},
	{"filter.maturing", TS_RULE_AMMONIA},
	{"filter.maturing", TS_RULE_NITRITE},
	{"filter.unready", TS_RULE_FILTER},
	{"filter.unready", TS_RULE_FILTER_UNKNOWN},
	{"vet.", TS_RULE_DISTRESS},
	{"filter.reading", TS_RULE_DISTRESS},
	{"oxygen.short", TS_RULE_DISTRESS},
	{"buffer.gone", TS_RULE_DISTRESS},
	{"stock.temperature", TS_RULE_DISTRESS},
	{"now.temperature", TS_RULE_WARM_OXYGEN},
	{"apart.no3", TS_RULE_NITRATE},
	{"nitrate.high", TS_RULE_NITRATE},
	{"apart.bare", TS_RULE_BUFFER},
	{"leave.acid-bed", TS_RULE_BUFFER},
	{"stock.stay", TS_RULE_WATER_UNSURE},
	{"buffer.", TS_RULE_BUFFER},
	{"buffer.", TS_RULE_BUFFER_OPEN},
	{"ask.kh", TS_RULE_KH_UNKNOWN},
	{"leave.untested", TS_RULE_UNTESTED},
	{"leave.ph-untested", TS_RULE_UNTESTED},
	{"leave.ph-young", TS_RULE_UNTESTED},
};

static bool begins(const char *id, const char *beginning)
{
	return strncmp(id, beginning, strlen(beginning)) == 0;
}

/* How grave advice is; groups of care/advice.c. */
static enum ts_severity of_advice(const struct ts_advice_row *row)
{
	switch (row->group) {
	case 1:
		return TS_QUESTION;
	case 2:
		return TS_CONFLICT;
	case 3:
		return TS_CONCERN;
	default:
		return row->group >= 8 || row->urgency == TS_AT_LEISURE ? TS_NOTE : TS_CONCERN;
	}
}

/* Asks what the advice would: then the question stays a question, whatever is advised. */
static bool asks(const struct ts_check_work *w, const struct ts_advice_row *row)
{
	if (strcmp(row->id, "filter.unready") == 0)
		return w->question->plan->tank.filter == TS_FILTER_UNKNOWN;
	return strcmp(row->id, "leave.untested") == 0 || strcmp(row->id, "leave.ph-untested") == 0;
}

bool ts_check_held(const struct ts_check_work *w)
{
	return w->advice_count && w->advice[0].row->group >= 2 && w->advice[0].row->group <= 5;
}

bool ts_check_unwell(const struct ts_check_work *w)
{
	return w->question->plan->sign_count || w->question->plan->deaths.value > 0;
}

/* Nobody lives there yet, and ammonia or nitrite was read: advice knows what that is. */
static bool is_maturing(const struct ts_check_work *w)
{
	const struct ts_now *log = &w->check.waters->log;

	return ts_now_figure(log, TS_NOW_TAN) > 0 || ts_now_figure(log, TS_NOW_NO2) > 0;
}

/* What lives in the tank already, against the tank's own water; then what to do about it. */
static bool advise(struct ts_check_work *w)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_plan_state *state = ts_arena_take(w->asking->arena, sizeof *state);
	struct ts_match *residents =
		ts_arena_array(w->asking->arena, plan->stock_count + 1, sizeof *residents);
	struct ts_keeping keeping = {.temperature = plan->tank.temp_c};
	size_t count = 0;

	if (!state || !residents)
		return false;
	ts_plan_state_make(plan, w->check.waters, w->asking->today, state);
	for (size_t i = 0; i < plan->stock_count; i++) {
		if (!w->question->species[i] || !ts_in_tank(&plan->stock[i]))
			continue;
		keeping.wild = plan->stock[i].origin == TS_ORIGIN_WILD;
		ts_match_species(w->question->species[i], &w->check.waters->now, &keeping,
			w->asking->practice, &residents[count++]);
	}
	if (!count && !is_maturing(w) && (plan->stock_count || !plan->tank.reading_count))
		return true;
	ts_plan_state_residents(state, residents, count);
	w->residents = residents;
	w->advice_count = ts_advise(&state->state, w->asking->practice, w->advice);
	return true;
}

static bool resident_out(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (r->rule == TS_RULE_WATER && r->severity >= TS_CONCERN)
			return true;
	}
	return false;
}

/* Somebody who lives there is to find another home for the water. */
static bool sent_away(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (r->remedy.kind == TS_REMEDY_OTHER_HOME && ts_ruling_topic(r) == TS_TOPIC_WATER)
			return true;
	}
	return false;
}

/* Advice that would contradict the list, or say again what it says. */
static bool superseded(const struct ts_check_work *w, const struct ts_advice_row *row, bool crash)
{
	bool unsound = w->check.verdict == TS_PLAN_UNSOUND;

	if (begins(row->id, "stock.temperature"))
		return false;
	/* The list knows which mineral mends it; "leave alone" is no word beside a fault. */
	if (begins(row->id, "stock."))
		return resident_out(w);
	/* Half a tank of harder water over a lost buffer kills: whatever else is read, slowly. */
	if (crash && begins(row->id, "now.nitrite"))
		return true;
	return row->group >= 8 && (unsound || sent_away(w));
}

/* A pH that light swings up by day is no fault of the water. */
static bool of_light(const struct ts_check_work *w, const struct ts_ruling *r)
{
	bool of_ph =
		(r->rule == TS_RULE_WATER || r->rule == TS_RULE_WATER_UNSURE) && r->word == TS_PH;

	for (size_t i = 0; of_ph && i < w->advice_count; i++) {
		if (begins(w->advice[i].row->id, "light.swing"))
			return true;
	}
	return false;
}

static bool lives(const struct ts_check_work *w, const struct ts_species *species)
{
	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];

		if (g->group.species == species)
			return g->planned < ts_group_count(&g->group);
	}
	return false;
}

/* What is done about a poison or the warmth is advised of the tank, not of one animal. */
static bool of_now(
	const struct ts_check_work *w, const struct ts_advice_row *row, const struct ts_ruling *r)
{
	bool water = r->rule == TS_RULE_WATER || r->rule == TS_RULE_WATER_UNSURE;
	const char *id = row->id;

	if (!water || !r->match || !lives(w, r->subject))
		return false;
	if (!isnan(r->match->copper_borne_mg_l))
		return begins(id, "now.copper");
	return r->word == TS_TEMPERATURE &&
	       (begins(id, "now.temperature") || begins(id, "stock.temperature"));
}

static bool spoken_for(const struct ts_check_work *w, const struct ts_ruling *r)
{
	if (of_light(w, r))
		return true;
	for (size_t i = 0; i < w->advice_count; i++) {
		if (of_now(w, w->advice[i].row, r))
			return true;
	}
	for (size_t k = 0; k < sizeof same / sizeof *same; k++) {
		if (same[k].rule != r->rule)
			continue;
		for (size_t i = 0; i < w->advice_count; i++) {
			if (begins(w->advice[i].row->id, same[k].advice))
				return true;
		}
	}
	return false;
}

static int compare(const void *a, const void *b)
{
	const struct ts_check_entry *x = a, *y = b;
	int by = (int)y->severity - (int)x->severity;

	if (by)
		return by;
	/* Danger first of its like, other advice behind the rules. */
	if (!x->ruling != !y->ruling) {
		const struct ts_advice_row *row = (x->ruling ? y : x)->advice->row;

		return (row->group <= 4 || x->severity == TS_NOTE) == !x->ruling ? -1 : 1;
	}
	if (x->ruling)
		return x->ruling < y->ruling ? -1 : 1;
	return x->advice < y->advice ? -1 : 1;
}

/* As grave as the gravest rule for which it speaks. */
static enum ts_severity raised(
	const struct ts_check_work *w, const struct ts_advice_row *row, enum ts_severity severity)
{
	for (size_t k = 0; k < sizeof same / sizeof *same; k++) {
		for (size_t i = 0; begins(row->id, same[k].advice) && i < w->check.count; i++) {
			if (w->check.rulings[i].rule == same[k].rule &&
				w->check.rulings[i].severity > severity)
				severity = w->check.rulings[i].severity;
		}
	}
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (of_now(w, row, r) && r->severity > severity)
			severity = r->severity;
	}
	return severity;
}

static bool gather(struct ts_check_work *w)
{
	size_t most = w->check.count + w->advice_count + 1, kept = 0;
	bool crash = false;

	for (size_t i = 0; i < w->advice_count; i++)
		crash |= begins(w->advice[i].row->id, "now.crash");
	for (size_t i = 0; i < w->advice_count; i++) {
		if (!superseded(w, w->advice[i].row, crash))
			w->advice[kept++] = w->advice[i];
	}
	w->advice_count = kept;
	w->entries = ts_arena_array(w->asking->arena, most, sizeof *w->entries);
	if (!w->entries)
		return false;
	for (size_t i = 0; i < w->check.count; i++) {
		if (!spoken_for(w, &w->check.rulings[i]))
			w->entries[w->entry_count++] = (struct ts_check_entry){
				w->check.rulings[i].severity, &w->check.rulings[i], NULL};
	}
	for (size_t i = 0; i < w->advice_count; i++) {
		const struct ts_advice_row *row = w->advice[i].row;

		w->entries[w->entry_count++] = (struct ts_check_entry){
			raised(w, row, asks(w, row) ? TS_QUESTION : of_advice(row)), NULL,
			&w->advice[i]};
	}
	if (w->entry_count)
		qsort(w->entries, w->entry_count, sizeof *w->entries, compare);
	return true;
}

static void put_ruling(struct ts_check_work *w, const struct ts_ruling *r)
{
	const struct ts_plan *plan = w->question->plan;

	for (size_t i = 0; r->name && i < plan->stock_count; i++) {
		if (plan->stock[i].species == r->name && !w->question->species[i]) {
			ts_say_candidates(&w->text, r->name, &w->question->candidates[i]);
			return;
		}
	}
	ts_say_ruling(&w->text, r);
}

const char *ts_check_says(struct ts_check_work *w, const struct ts_check_entry *e)
{
	if (e->ruling)
		put_ruling(w, e->ruling);
	else
		ts_say_advice(&w->text, e->advice, w->residents);
	return ts_asking_keep(w->asking, &w->text);
}

/* A figure that its kind does not have is not known. */
static double or_none(double figure)
{
	return figure != 0 ? figure : (double)NAN;
}

void ts_check_remedy_fill(struct ts_check_work *w, const struct ts_remedy *m, const char *says,
	struct ts_check_remedy *ret)
{
	bool counts = m->kind >= TS_REMEDY_NUMBER;

	(void)w;
	*ret = (struct ts_check_remedy){.kind = ts_check_remedy_words[m->kind],
		.says = says,
		.species = m->species ? m->species->species : NULL,
		.mends = m->mends,
		.from = counts ? (double)m->from : (double)NAN,
		.to = counts ? (double)m->to : (double)NAN,
		.percent = or_none(m->percent),
		.days = or_none(m->days),
		.gh_dh = m->kind == TS_REMEDY_MINERALS || m->kind == TS_REMEDY_DILUTE ? m->gh_dh
										      : (double)NAN,
		.kh_dh = m->kind == TS_REMEDY_MINERALS || m->kind == TS_REMEDY_DILUTE ? m->kh_dh
										      : (double)NAN,
		.nahco3_g = or_none(m->nahco3_g),
		.cacl2_g = or_none(m->cacl2_g),
		.mgso4_g = or_none(m->mgso4_g),
		.length_cm = or_none(m->length_cm),
		.width_cm = or_none(m->width_cm),
		.height_cm = or_none(m->height_cm)};
}

static struct ts_texts animals_of(const struct ts_check_work *w, const struct ts_ruling *r)
{
	struct ts_texts texts = {ts_arena_array(w->asking->arena, 2, sizeof *texts.items), 0};

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

/* What an animal bears of the parameter that decides, and how far it is missed. */
static void fit_figures(const struct ts_ruling *r, struct ts_check_judgement *ret)
{
	const struct ts_parameter_fit *f;
	bool below;

	if (!isnan(r->match->copper_borne_mg_l)) {
		ret->its = r->match->copper_borne_mg_l;
		return;
	}
	if (r->word < 0)
		return;
	f = &r->match->at[r->word];
	below = f->uncomfortable_by < 0;
	ret->ours = f->reading;
	ret->its = below ? f->preferred.low : f->preferred.high;
	ret->figure = fabs(f->uncomfortable_by);
}

/* Somewhere in the answer stands that nobody is added now. */
static bool nothing_bought(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->advice_count; i++) {
		if (w->advice[i].row->group >= 2 && w->advice[i].row->group <= 5)
			return true;
	}
	for (size_t i = 0; i < w->check.count; i++) {
		if (w->check.rulings[i].rule == TS_RULE_NEWCOMERS)
			return true;
	}
	return false;
}

/* What would be bought more of waits while the tank is not safe. */
static bool bought_now(const struct ts_check_work *w, const struct ts_ruling *r)
{
	return nothing_bought(w) && r->remedy.kind == TS_REMEDY_NUMBER &&
	       r->remedy.to > r->remedy.from;
}

static bool liked_temperature(const struct ts_check_work *w)
{
	const struct ts_shared_water *s = &w->check.shared;

	return s->comfortable[TS_TEMPERATURE] &&
	       s->at[TS_TEMPERATURE].low < s->at[TS_TEMPERATURE].high;
}

static void fill_remedy(
	struct ts_check_work *w, const struct ts_ruling *r, struct ts_check_judgement *ret)
{
	struct ts_remedy remedy = r->remedy;
	const char *says;

	if (bought_now(w, r)) {
		remedy = (struct ts_remedy){.kind = TS_REMEDY_WAIT};
		ts_text_put(&w->text, "more of them once the tank is safe and steady");
	} else if (r->rule == TS_RULE_TEMPERATURE_UNKNOWN && liked_temperature(w)) {
		ts_text_put(&w->text, "keep it at what all like, ");
		ts_text_number_short(&w->text, w->check.shared.at[TS_TEMPERATURE].low, 1);
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, w->check.shared.at[TS_TEMPERATURE].high, 1);
		ts_text_put(&w->text, " C, and say so with --temperature");
	} else {
		ts_say_remedy(&w->text, r, ts_check_held(w));
	}
	if (!w->text.len)
		return;
	says = ts_asking_keep(w->asking, &w->text);
	ret->remedy = ts_arena_take(w->asking->arena, sizeof *ret->remedy);
	if (ret->remedy)
		ts_check_remedy_fill(w, &remedy, says, ret->remedy);
}

static void fill_ruling(
	struct ts_check_work *w, const struct ts_ruling *r, struct ts_check_judgement *ret)
{
	ret->code = ts_rule_rows[r->rule].code;
	ret->topic = ts_check_topic_words[ts_ruling_topic(r) - TS_TOPIC_DANGER];
	ret->rests_on = ts_check_rests_words[r->rests];
	ret->species = animals_of(w, r);
	ret->parameter = parameter_of(r);
	ret->ours = r->ours;
	ret->its = r->its;
	ret->figure = r->change;
	if (r->match)
		fit_figures(r, ret);
	if (ts_say_condition(&w->text, r))
		ret->condition = ts_asking_keep(w->asking, &w->text);
	fill_remedy(w, r, ret);
}

static void fill_advice(
	struct ts_check_work *w, const struct ts_advice *a, struct ts_check_judgement *ret)
{
	ret->code = a->row->id;
	ret->topic =
		ts_check_topic_words[a->row->group <= 3 ? 0 : TS_TOPIC_WATER - TS_TOPIC_DANGER];
	ret->rests_on = ts_check_rests_words[TS_RESTS_READ];
	ret->urgency = ts_urgency_words[a->row->urgency];
	ts_say_advice_because(&w->text, a, w->residents);
	if (w->text.len)
		ret->because = ts_asking_keep(w->asking, &w->text);
}

static void fill_judgements(struct ts_check_work *w)
{
	struct ts_check_result *out = w->out;

	out->judgements =
		ts_arena_array(w->asking->arena, w->entry_count + 1, sizeof *out->judgements);
	for (size_t i = 0; out->judgements && i < w->entry_count; i++) {
		const struct ts_check_entry *e = &w->entries[i];
		struct ts_check_judgement *j = &out->judgements[out->judgement_count++];

		*j = (struct ts_check_judgement){.severity = ts_check_severity_words[e->severity],
			.ours = (double)NAN,
			.its = (double)NAN,
			.figure = (double)NAN};
		j->says = ts_check_says(w, e);
		if (e->ruling)
			fill_ruling(w, e->ruling, j);
		else
			fill_advice(w, e->advice, j);
	}
	out->more = w->check.more;
}

static void fill_repair(struct ts_check_work *w)
{
	struct ts_check_result *out = w->out;

	out->repair_mends = w->check.repair_mends;
	out->repair =
		ts_arena_array(w->asking->arena, w->check.repair_count + 1, sizeof *out->repair);
	for (size_t i = 0; out->repair && i < w->check.repair_count; i++) {
		const struct ts_ruling *r = &w->check.repair[i];
		struct ts_check_step *step = &out->repair[out->repair_count];

		step->remedy = ts_arena_take(w->asking->arena, sizeof *step->remedy);
		if (!step->remedy)
			return;
		ts_say_ruling(&w->text, r);
		step->because = ts_asking_keep(w->asking, &w->text);
		ts_say_step(&w->text, &r->remedy);
		ts_check_remedy_fill(
			w, &r->remedy, ts_asking_keep(w->asking, &w->text), step->remedy);
		out->repair_count++;
	}
}

/* Whether the repair sends the animal away, or never buys it. */
static bool goes(const struct ts_check_work *w, const struct ts_species *species)
{
	for (size_t i = 0; species && i < w->check.repair_count; i++) {
		const struct ts_remedy *m = &w->check.repair[i].remedy;

		if (m->species == species && m->kind >= TS_REMEDY_LEAVE_OUT)
			return true;
	}
	return false;
}

/* A tank that is too short for an animal need not be called too narrow as well. */
static bool length_said(const struct ts_check_work *w, const struct ts_ruling *r)
{
	if (r->rule != TS_RULE_TANK_WIDTH && r->rule != TS_RULE_TANK_HEIGHT)
		return false;
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *other = &w->check.rulings[i];

		if (other->subject == r->subject && other->severity >= r->severity &&
			(other->rule == TS_RULE_TANK_LENGTH ||
				other->rule == TS_RULE_TANK_UNMEASURED))
			return true;
	}
	return false;
}

/* What is told not to be bought gets no other line. */
static void fold(struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (r)
			w->out->judgements[i].folded =
				goes(w, r->subject) || goes(w, r->other) || length_said(w, r);
	}
}

/* "If" is followed by what can be done while keeping all; where there is no such thing, it is no.
 */
static bool all_can_be_kept(struct ts_check_work *w)
{
	bool all = true;

	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (!r || r->severity != TS_CONCERN || r->rule == TS_RULE_WATER)
			continue;
		/* Another tank is another question. */
		if (r->rule == TS_RULE_TANK_UNMEASURED && r->ours < r->its)
			all = false;
		all &= ts_say_condition(&w->text, r) || r->remedy.kind < TS_REMEDY_LEAVE_OUT;
		ts_text_clear(&w->text);
	}
	return all;
}

static void take_verdict(struct ts_check_work *w)
{
	static const enum ts_plan_verdict of[] = {[TS_NOTE] = TS_PLAN_SOUND,
		[TS_QUESTION] = TS_PLAN_ASKS,
		[TS_CONCERN] = TS_PLAN_SOUND_IF,
		[TS_CONFLICT] = TS_PLAN_UNSOUND};
	enum ts_plan_verdict verdict = w->entry_count ? of[w->entries[0].severity] : TS_PLAN_SOUND;

	w->check.verdict = verdict;
	w->out->verdict = ts_check_verdict_words[verdict];
	/* Beside unexplained signs nothing is known to be well. */
	w->out->answered = w->check.answered && !(w->advice_count && ts_check_unwell(w));
	w->out->passes = w->out->answered && verdict <= TS_PLAN_SOUND_IF && all_can_be_kept(w);
}

enum ts_status ts_answer_check(const struct ts_check_question *question,
	const struct ts_asking *asking, struct ts_check_result *ret)
{
	struct ts_check_work *w = ts_arena_take(asking->arena, sizeof *w);
	struct ts_check_result result = {.name = question->name, .instead_count = (double)NAN};

	if (!w)
		return TS_NO_MEMORY;
	*w = (struct ts_check_work){.question = question, .asking = asking, .out = &result};
	if (ts_check_plan(question->plan, question->species, asking->today, asking->practice,
		    asking->arena, &w->check) != TS_OK ||
		!advise(w) || !gather(w))
		return TS_NO_MEMORY;
	ts_text_open(&w->text, &asking->arena->allocator);
	result.profile = &w->check.profile;
	take_verdict(w);
	fill_judgements(w);
	fill_repair(w);
	if (!asking->arena->failed) { /* or there may be no judgements to look at */
		fold(w);
		ts_check_animals(w);
		ts_check_water_and_room(w);
		ts_check_waste(w);
		ts_check_headline(w);
	}
	asking->arena->failed |= w->text.failed;
	ts_text_drop(&w->text);
	if (asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = result;
	return TS_OK;
}
