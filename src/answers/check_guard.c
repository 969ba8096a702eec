/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What no calm answer may stand beside: what happened to the tank; a poison that was read, at any
 * figure above nil; what was typed and not understood, words of a danger or figures. What is to be
 * done at once, and a no, keep the first line, and it stands behind them.
 */
#include "answers/check_parts.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "stock/rules.h"
#include "words/rulings.h"

#define SHOWN_MOST 3

static bool is_kind(const struct ts_check_work *w, enum ts_check_kind kind)
{
	return strcmp(w->out->kind, ts_check_kind_words[kind]) == 0;
}

/* The first line is a deed that cannot wait, or a no; a question and a comfort are none. */
static bool leads_all_the_same(const struct ts_check_work *w)
{
	const struct ts_check_judgement *first = w->out->first;

	return is_kind(w, TS_CHECK_DANGER) || is_kind(w, TS_CHECK_NO) ||
	       (is_kind(w, TS_CHECK_TEND) && first && first->urgency &&
		       strcmp(first->urgency, ts_urgency_words[TS_AT_LEISURE]) != 0 &&
		       strncmp(first->code, "ask.", 4) != 0 &&
		       strncmp(first->code, "leave", 5) != 0);
}

/* "nitrite is high", "and 7 times" */
static void put_quoted(struct ts_check_work *w, size_t most)
{
	const struct ts_check_question *q = w->question;

	for (size_t i = 0; i < q->unread_count && i < most; i++)
		ts_text_puts(&w->text, i ? ", \"" : "\"", q->unread[i].words, "\"", NULL);
}

static void put_ways(struct ts_check_work *w)
{
	const struct ts_check_question *q = w->question;

	for (size_t i = 0; i < q->unread_count && i < SHOWN_MOST; i++) {
		bool repeated = false;

		for (size_t k = 0; k < i; k++)
			repeated |= strcmp(q->unread[k].say, q->unread[i].say) == 0;
		if (repeated)
			continue;
		ts_text_puts(&w->text, i ? "; " : "", *q->unread[i].say == '-' ? "as " : "",
			q->unread[i].say, NULL);
	}
}

/* What happened, and what is done before anybody is bought. */
static const struct {
	int what; /* enum ts_happened */
	const char *says;
} before_buying[] = {
	{TS_HAPPENED_POISONED, "what got into the water is poison: change half of it, fresh carbon "
			       "into the filter, and as much again tomorrow"},
	{TS_HAPPENED_UNTREATED, "the water is not treated: treat the whole tank against chlorine "
				"and chloramine"},
	{TS_HAPPENED_FILTER_WASHED, "the washed filter is like new: test ammonia and nitrite until "
				    "both read nil for 7 days"},
	{TS_HAPPENED_HEATER_STUCK, "the heater is stuck: unplug it, and put in another one"},
	{TS_HAPPENED_HEATER_FAILED, "the heater failed: put in another one, with a thermometer "
				    "beside it"},
	{TS_HAPPENED_OVERFED, "take out the food that lies there, and test ammonia and nitrite "
			      "until both read nil for 7 days"},
	{TS_HAPPENED_MEDICINE, "medicine is in the water: finish it, then carbon and changes of "
			       "water; it may have harmed the filter, so test ammonia and nitrite"},
	{TS_HAPPENED_CHANGED, "nearly all of the water is new: treat it against chlorine, and test "
			      "ammonia and nitrite for a week"},
};

static const char *before_buying_says(const struct ts_check_work *w)
{
	for (size_t i = 0; i < sizeof before_buying / sizeof *before_buying; i++) {
		if (w->happened & 1u << before_buying[i].what)
			return before_buying[i].says;
	}
	return w->filter_stands ? "the filter does not run: get it going, and test ammonia and "
				  "nitrite until both read nil for 7 days"
				: NULL;
}

void ts_check_happened(struct ts_check_work *w)
{
	const char *says = before_buying_says(w);

	if (!says || w->advice_count || !w->check.planned_groups || is_kind(w, TS_CHECK_NO))
		return;
	ts_text_puts(&w->text, "Nobody is bought yet: ", says, ".", NULL);
	w->out->otherwise = w->out->instead_says = w->out->root_says = NULL;
	ts_check_finish(w, TS_CHECK_QUESTION, w->entry_count,
		"Who lives in it already? With --there \"6 guppy\", or \"my 6 guppies\", the "
		"answer is what to do for them now");
}

/* Poisons, and from which reading on it is no nil any more: what kits tell apart from it. */
static const struct {
	const char *name, *rule, *advice;
	size_t offset;
	double least_mg_l;
} poisons[] = {
	{"Ammonia", "ammonia", "ammonia", offsetof(struct ts_poisons, tan_mg_l), 0.05},
	{"Nitrite", "nitrite", "nitrite", offsetof(struct ts_poisons, no2_mg_l), 0.02},
	{"Copper", "copper", "copper", offsetof(struct ts_poisons, copper_low_mg_l), 0.02},
};

/* A line that is no mere question or note is about it, or a deed that cannot wait. */
static bool is_said(const struct ts_check_work *w, size_t poison)
{
	for (size_t i = 0; i < w->out->judgement_count; i++) {
		const struct ts_check_judgement *j = &w->out->judgements[i];
		bool about = strstr(j->code, poisons[poison].rule) ||
			     strncmp(j->code, "filter.", strlen("filter.")) == 0 ||
			     strstr(j->code, "old-tank") || strcmp(j->code, "stock.filter") == 0;

		if (about && (strcmp(j->severity, "concern") == 0 ||
				     strcmp(j->severity, "conflict") == 0 || j->urgency))
			return true;
	}
	return false;
}

/* Oxygen that was read as too little for anybody, beside a plan that would be sound. */
static void check_oxygen(struct ts_check_work *w)
{
	const struct ts_poisons *p = &w->check.profile.poisons;

	if (!w->check.planned_groups || !(p->found & TS_POISON_NO_OXYGEN) || leads_all_the_same(w))
		return;
	ts_text_put(&w->text, "Oxygen is too little for fish: nobody is bought before it is known "
			      "why, and it reads above 5 mg/L.");
	w->out->otherwise = w->out->instead_says = w->out->root_says = NULL;
	ts_check_finish(w, TS_CHECK_QUESTION, w->entry_count,
		"Move the surface day and night, look for something dead and at the filter, and "
		"read it again before the lights go on");
}

/* Chlorine that was read goes before any question. */
static void check_chlorine(struct ts_check_work *w)
{
	double mg_l = w->check.profile.poisons.chlorine_mg_l;

	if (!is_kind(w, TS_CHECK_QUESTION) || !w->check.group_count ||
		!(mg_l >= w->asking->practice->value[TS_P_CHLORINE_DANGER]))
		return;
	ts_text_put(&w->text, "Chlorine ");
	ts_text_number_short(&w->text, mg_l, 3);
	ts_text_put(&w->text, " mg/L burns gills: treat every drop against chlorine and chloramine "
			      "before it goes to any animal, and the whole tank where it went in.");
	w->out->decides = w->out->headline;
	w->out->headline = ts_asking_keep(w->asking, &w->text);
}

/* "Test ammonia again tomorrow, and feed half until then: 0.1 mg/L was read". */
void ts_check_poison(struct ts_check_work *w)
{
	const char *at = (const char *)&w->check.profile.poisons;

	check_oxygen(w);
	check_chlorine(w);
	/* Without animals the water has its own first line. */
	for (size_t i = 0; w->check.group_count && i < sizeof poisons / sizeof *poisons; i++) {
		double mg_l;

		memcpy(&mg_l, at + poisons[i].offset, sizeof mg_l);
		if (!(mg_l >= poisons[i].least_mg_l) || leads_all_the_same(w) || is_said(w, i))
			continue;
		ts_text_puts(&w->text, poisons[i].name, " ", NULL);
		ts_text_number_short(&w->text, mg_l, 3);
		ts_text_put(&w->text, w->check.planned_groups
					      ? " mg/L was read: nobody is bought before it is "
						"known where it comes from, and it reads nil."
					      : " mg/L was read: test it again tomorrow, and feed "
						"half until it reads nil.");
		w->out->otherwise = w->out->instead_says = w->out->root_says = NULL;
		ts_check_finish(w, TS_CHECK_QUESTION, w->entry_count,
			"A filter that copes leaves no ammonia and no nitrite, and water without "
			"copper harms nobody; a new kit or another one tells whether the reading "
			"is right");
		return;
	}
}

/* Waste that was read beyond what those that live there bear; NULL: none is. */
static const struct ts_ruling *waste_read(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if ((r->rule == TS_RULE_NITRATE || r->rule == TS_RULE_AMMONIA ||
			    r->rule == TS_RULE_NITRITE) &&
			r->severity >= TS_CONCERN)
			return r;
	}
	return NULL;
}

/* Those that live there have no room. */
static bool cramped(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (r->severity == TS_CONFLICT && r->subject && ts_rule_of_room(r->rule) &&
			ts_check_lives(w, r->subject))
			return true;
	}
	return false;
}

/* Somebody is to be added, known or by a name of several. */
static bool newcomers(const struct ts_check_work *w)
{
	const struct ts_plan *plan = w->question->plan;

	for (size_t i = 0; i < plan->stock_count; i++) {
		if (!ts_in_tank(&plan->stock[i]))
			return true;
	}
	return false;
}

/* To a tank that is itself unfit nobody is added, and nobody is offered. */
void ts_check_unfit(struct ts_check_work *w)
{
	const struct ts_ruling *waste = waste_read(w);
	bool small = cramped(w);

	if (!newcomers(w) || !w->check.living_groups || !(waste || small) ||
		is_kind(w, TS_CHECK_DANGER))
		return;
	w->out->instead_says = NULL;
	w->out->instead_species = NULL;
	w->out->instead_count = (double)NAN;
	if (!waste || is_kind(w, TS_CHECK_NO))
		return;
	w->out->members.count = 0;
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		w->out->judgements[i].folded |= r && r->rule == TS_RULE_UNKNOWN_SPECIES;
	}
	w->out->otherwise = w->out->root_says = w->out->water_too = NULL;
	w->out->of_room = false;
	ts_text_put(&w->text, "Nothing new here: ");
	ts_say_opening(&w->text, waste);
	ts_text_put(&w->text, ", and no animal takes it out of the water.");
	ts_check_finish(w, TS_CHECK_NO, w->entry_count,
		small ? "Change a quarter of the water every second day until it has fallen, feed "
			"less, and see to a larger tank, or another home, for those that live there"
		      : "Change a quarter of the water every second day until it has fallen, and "
			"feed less");
}

void ts_check_unripe(struct ts_check_work *w)
{
	if (is_kind(w, TS_CHECK_NO) && w->check.planned_groups && !w->check.living_groups &&
		w->question->plan->tank.filter == TS_FILTER_NEW && !w->out->asked_says)
		w->out->asked_says =
			"And nobody today, whoever it is: the filter matures first, for "
			"four to eight weeks.";
}

void ts_check_unread(struct ts_check_work *w)
{
	if (!w->question->unread_count)
		return;
	if (leads_all_the_same(w) || w->question->care_count) {
		ts_text_put(&w->text, "Not understood: ");
		put_quoted(w, SHOWN_MOST);
		ts_text_put(&w->text, "; say it ");
		put_ways(w);
		ts_text_put(&w->text, ".");
		w->out->not_understood = ts_asking_keep(w->asking, &w->text);
		return;
	}
	ts_text_put(&w->text, "Not understood, and asked before anything else: ");
	put_quoted(w, SHOWN_MOST);
	ts_text_put(&w->text, ".");
	w->out->decides = NULL;
	w->out->otherwise = w->out->instead_says = w->out->root_says = NULL;
	ts_check_finish(w, TS_CHECK_QUESTION, w->entry_count, NULL);
	ts_text_put(&w->text, "Say it ");
	put_ways(w);
	ts_text_put(&w->text, "; nothing is called well or together before");
	w->out->decides = ts_asking_keep(w->asking, &w->text);
}
