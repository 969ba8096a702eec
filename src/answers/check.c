/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A check answered: the plan is judged, the list made (check_list.c) and filled in (check_fill.c),
 * then the verdict taken and the first lines written.
 */
#include "answers/check_parts.h"

#include <string.h>

#include "base/arena.h"
#include "care/what_if.h"
#include "words/advice.h"
#include "words/names.h"
#include "words/rulings.h"

const char *const ts_check_verdict_words[TS_PLAN_VERDICT__COUNT + 1] = {
	"sound", "asks", "sound-if", "unsound", NULL};
const char *const ts_check_kind_words[TS_CHECK_KIND__COUNT + 1] = {
	"danger", "no", "if", "yes", "question", "tend", "well", "care", NULL};
const char *const ts_check_severity_words[] = {"note", "question", "concern", "conflict", NULL};
/* From TS_TOPIC_DANGER on. */
const char *const ts_check_topic_words[] = {
	"danger", "name", "company", "temperature", "water", "room", "waste", "care", NULL};
const char *const ts_check_rests_words[] = {
	"records", "read", "computed", "assumed", "not-known", NULL};
const char *const ts_check_remedy_words[] = {"none", "make-safe", "measure", "wait", "routine",
	"warmth", "minerals", "dilute", "tank", "number", "leave-out", "other-home", NULL};
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

/* "If" is followed by what can be done while keeping all; where there is no such thing, it is no.
 */
static bool all_can_be_kept(struct ts_check_work *w)
{
	bool all = true;

	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (!r || r->severity != TS_CONCERN || ts_check_keeps(w, i))
			continue;
		all &= ts_say_condition(&w->text, r) || r->remedy.kind < TS_REMEDY_LEAVE_OUT;
		ts_text_clear(&w->text);
	}
	return all;
}

/*
 * Where the water is made safe first, and where ammonia or nitrite stands though animals live
 * there, there is no yes, however little it is. How much harm ammonia does nobody can say where no
 * pH is known.
 */
static bool unsafe(const struct ts_check_work *w)
{
	const struct ts_now *log = &w->check.waters->log;
	bool tan = ts_now_figure(log, TS_NOW_TAN) > 0;
	bool waste = tan || ts_now_figure(log, TS_NOW_NO2) > 0;
	bool fails = tan && !w->check.profile.at[TS_PH].given;

	for (size_t i = 0; i < w->advice_count; i++)
		fails |= w->advice[i].row->outcome == TS_MAKE_SAFE ||
			 strcmp(w->advice[i].row->id, "filter.reading") == 0 ||
			 (waste && strcmp(w->advice[i].row->id, "old-tank") == 0);
	return fails;
}

static void take_verdict(struct ts_check_work *w)
{
	static const enum ts_plan_verdict of[] = {[TS_NOTE] = TS_PLAN_SOUND,
		[TS_QUESTION] = TS_PLAN_ASKS,
		[TS_CONCERN] = TS_PLAN_SOUND_IF,
		[TS_CONFLICT] = TS_PLAN_UNSOUND};
	enum ts_plan_verdict verdict = w->entry_count ? of[w->entries[0].severity] : TS_PLAN_SOUND;
	unsigned not_yet;

	w->check.verdict = verdict;
	w->out->verdict = ts_check_verdict_words[verdict];
	/* Beside unexplained signs nothing is known to be well. */
	w->out->answered = w->check.answered && !(w->advice_count && ts_check_unwell(w));
	/* Who lives there may stay in soft water; what cannot all be right is no yes for anybody.
	 */
	not_yet = w->check.planned_groups ? TS_UNUSUAL__NOBODY_YET : TS_UNUSUAL__CONTRADICTIONS;
	w->out->passes = w->out->answered && verdict <= TS_PLAN_SOUND_IF && all_can_be_kept(w) &&
			 !ts_check_filter_first(w) && !unsafe(w) &&
			 !(w->check.profile.unusual & not_yet);
}

/* The plan as it is asked about, judged and in one list; false: no memory. */
static bool judged(struct ts_check_work *w, struct ts_check_question *asked)
{
	const struct ts_asking *asking = w->asking;

	if (!ts_check_members(w, asked))
		return false;
	w->question = asked;
	return ts_check_plan(asked->plan, asked->species, asking->today, asking->practice,
		       asking->arena, &w->check) == TS_OK &&
	       ts_check_advise(w) && ts_check_gather(w);
}

/* What fails in this tank, or becomes of it: how long it lasts is what-if's. */
static const char *what_if_of(const struct ts_plan *plan)
{
	if (plan->tank.filter_stopped_h > 0)
		return ts_what_if_rows[TS_IF_POWER_CUT].id;
	if (plan->tank.filter == TS_FILTER_STANDS)
		return ts_what_if_rows[TS_IF_FILTER].id;
	return plan->away_h > 0 ? ts_what_if_rows[TS_IF_HOLIDAY].id : NULL;
}

enum ts_status ts_answer_check(const struct ts_check_question *question,
	const struct ts_asking *asking, struct ts_check_result *ret)
{
	struct ts_check_work *w = ts_arena_take(asking->arena, sizeof *w);
	struct ts_check_question asked;
	struct ts_check_result result = {
		.name = question->name, .read_as = question->read_as, .instead_count = (double)NAN};

	size_t outside = ts_check_outside_count(question);

	if (!w)
		return TS_NO_MEMORY;
	if (outside && outside < question->plan->stock_count)
		return ts_check_outside(question, asking, ret);
	*w = (struct ts_check_work){.question = question, .asking = asking, .out = &result};
	ts_text_open(&w->text, &asking->arena->allocator);
	if (!judged(w, &asked)) {
		ts_text_drop(&w->text);
		return TS_NO_MEMORY;
	}
	result.profile = &w->check.profile;
	result.what_if = what_if_of(w->question->plan);
	take_verdict(w);
	ts_check_fill_judgements(w);
	ts_check_fill_repair(w);
	if (!asking->arena->failed) { /* or there may be no judgements to look at */
		ts_check_fold(w);
		ts_check_animals(w);
		ts_check_water(w);
		ts_check_waste(w);
		if (w->check.waters)
			ts_learned_make(asking, asked.plan, w->check.waters, &result.learned);
		ts_check_headline(w);
		/* What is refused, or asked, is no yes. */
		result.passes &= !w->which &&
				 strcmp(result.kind, ts_check_kind_words[TS_CHECK_NO]) != 0 &&
				 strcmp(result.kind, ts_check_kind_words[TS_CHECK_QUESTION]) != 0;
		ts_check_room(w);
		ts_check_reasons(w);
		ts_check_not_judged(w);
		ts_check_asked_room(w);
	}
	asking->arena->failed |= w->text.failed;
	ts_text_drop(&w->text);
	if (asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = result;
	return TS_OK;
}
