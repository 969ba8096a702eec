/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The first line of a check: what a friend who knows would say first. Of a list that is planned:
 * together, not together, together if. Of a tank that runs: what to do now, or to leave it alone.
 * A filter that is not mature goes before a list that would be sound.
 */
#include "answers/check_parts.h"

#include <math.h>
#include <string.h>

#include "base/date.h"
#include "chem/hardness.h"
#include "chem/substances.h"
#include "stock/mending.h"
#include "stock/rules.h"
#include "stock/smallest.h"
#include "water/first.h"
#include "words/first.h"
#include "words/rulings.h"
#include "words/sentence.h"
#include "words/unusual.h"

/* "No" about a topic, where the fault is of two animals, and where it is of one. */
static const struct {
	const char *two, *one;
} no[] = {
	[TS_TOPIC_DANGER - TS_TOPIC_DANGER] = {"Not now", "Not now"},
	[TS_TOPIC_NAME - TS_TOPIC_DANGER] = {"Cannot be said", "Cannot be said"},
	[TS_TOPIC_COMPANY - TS_TOPIC_DANGER] = {"Not together", "Not in this number"},
	[TS_TOPIC_TEMPERATURE - TS_TOPIC_DANGER] = {"Not together", "Not at this temperature"},
	[TS_TOPIC_WATER - TS_TOPIC_DANGER] = {"Not together", "Not in this water"},
	[TS_TOPIC_ROOM - TS_TOPIC_DANGER] = {"Not in this tank", "Not in this tank"},
	[TS_TOPIC_WASTE - TS_TOPIC_DANGER] = {"Too many for this tank", "Too many for this tank"},
	[TS_TOPIC_CARE - TS_TOPIC_DANGER] = {"Not yet", "Not yet"},
};

static bool several(const struct ts_check_work *w)
{
	return w->check.group_count > 1;
}

void ts_check_finish(
	struct ts_check_work *w, enum ts_check_kind kind, size_t entry, const char *decides)
{
	w->out->kind = ts_check_kind_words[kind];
	w->out->headline = ts_asking_keep(w->asking, &w->text);
	w->out->first = entry < w->entry_count ? &w->out->judgements[entry] : NULL;
	w->out->decides = decides;
}

/* Danger is what acts at once, or explains why they suffer. */
static enum ts_check_kind kind_of(const struct ts_advice_row *row)
{
	if (row->group == 2 || row->group == 3 || (row->group == 4 && row->urgency == TS_NOW))
		return TS_CHECK_DANGER;
	return row->outcome == TS_LEAVE_ALONE ? TS_CHECK_WELL : TS_CHECK_TEND;
}

/* Advice as the answer: what to do, and why. */
static void lead_with_advice(struct ts_check_work *w, size_t entry)
{
	const struct ts_check_judgement *j = &w->out->judgements[entry];

	ts_text_put(&w->text, j->says);
	ts_check_finish(w,
		ts_check_unwell(w) ? TS_CHECK_DANGER : kind_of(w->entries[entry].advice->row),
		entry, j->because);
}

static const char *remedy_of(const struct ts_check_judgement *j)
{
	return j->remedy ? j->remedy->says : NULL;
}

/* Where they live, waste asks for another routine first, and not for fewer of them. */
static const char *no_of(const struct ts_check_work *w, const struct ts_ruling *r)
{
	int topic = (int)ts_ruling_topic(r) - TS_TOPIC_DANGER;

	if (ts_ruling_topic(r) == TS_TOPIC_WASTE && !w->check.planned_groups)
		return "Change more of the water, or more often";
	/* Plain water takes it out. */
	if (ts_ruling_too_salty(r) && r->remedy.kind == TS_REMEDY_ROUTINE)
		return "They stay; thin the salt slowly, and find what brought it";
	return r->other ? no[topic].two : no[topic].one;
}

/* " (yours is 12)": of two that no hardness suits, the one that is there. */
static void put_yours(struct ts_check_work *w, const struct ts_ruling *r)
{
	const struct ts_span *gh = &w->check.profile.at[TS_GH];

	if (r->rule != TS_RULE_GH_APART || !gh->given)
		return;
	ts_text_put(&w->text, " (yours is GH ");
	ts_text_number_short(&w->text, gh->value, 1);
	ts_text_put(&w->text, ")");
}

/* Below this, C, no tank of a heated room runs. */
#define OUTDOORS_C 15

/*
 * "Not all year: 4 to 28 C, and white cloud mountain minnows bear 8 to 24.": a warmth that comes
 * and goes, of which one end is beyond. False: it is none.
 */
static bool lead_with_seasons(struct ts_check_work *w, size_t entry)
{
	const struct ts_ruling *r = w->entries[entry].ruling;
	const struct ts_span *t = &w->check.profile.at[TS_TEMPERATURE];
	const struct ts_plan_group *g = ts_check_group_of(&w->check, r->subject);
	const struct ts_range *bears = g ? &g->match.at[TS_TEMPERATURE].tolerated : NULL;

	if (r->rule != TS_RULE_WATER || r->word != TS_TEMPERATURE || !t->exposure || !bears ||
		(t->low > bears->high || t->high < bears->low))
		return false;
	ts_text_put(&w->text, "Not all year: ");
	ts_text_number_short(&w->text, t->low, 1);
	ts_text_put(&w->text, " to ");
	ts_text_number_short(&w->text, t->high, 1);
	ts_text_put(&w->text, " C, and ");
	ts_say_animals(&w->text, r->subject);
	ts_text_put(&w->text, " bear ");
	ts_text_number_short(&w->text, bears->low, 1);
	ts_text_put(&w->text, " to ");
	ts_text_number_short(&w->text, bears->high, 1);
	ts_text_put(&w->text, ".");
	ts_check_finish(w, TS_CHECK_NO, entry,
		t->low < OUTDOORS_C ? "outdoors in the months that stay within that, and indoors "
				      "for the rest"
				    : "keep the tank within that, summer and winter");
	w->out->repair_said = true;
	return true;
}

/* "Bring it to 26 to 27 C, which all of them bear": where one likes it as it is. */
static const char *warmth_of_all(struct ts_check_work *w)
{
	struct ts_range all = {-INFINITY, INFINITY};

	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_range *r = &w->check.groups[i].match.at[TS_TEMPERATURE].tolerated;

		if (isnan(r->low))
			continue;
		all.low = fmax(all.low, r->low);
		all.high = fmin(all.high, r->high);
	}
	if (!isfinite(all.low) || all.low > all.high)
		return "they share no warmth: one of them needs a tank of its own";
	ts_text_put(&w->text, "Bring it to ");
	ts_text_number_short(&w->text, all.low, 1);
	if (all.high > all.low) {
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, all.high, 1);
	}
	ts_text_puts(&w->text, " C, by 2 C a day at most",
		several(w) ? ", which all of them bear" : "", NULL);
	return ts_asking_keep(w->asking, &w->text);
}

static void lead_with_conflict(struct ts_check_work *w, size_t entry)
{
	const struct ts_ruling *r = w->entries[entry].ruling;

	if (lead_with_seasons(w, entry))
		return;

	if (ts_check_says_room(w, r, NULL)) {
		ts_check_finish(w, TS_CHECK_NO, entry, NULL);
		w->out->decides = ts_check_room_instead(w, r);
		return;
	}
	ts_text_puts(&w->text, no_of(w, r), ": ", NULL);
	ts_say_opening(&w->text, r);
	put_yours(w, r);
	ts_text_put(&w->text, ".");
	ts_check_put_others_alike(w, r);
	ts_check_finish(w, TS_CHECK_NO, entry, remedy_of(&w->out->judgements[entry]));
	if (!w->out->decides && r->rule == TS_RULE_WATER && r->word == TS_TEMPERATURE)
		w->out->decides = warmth_of_all(w);
	ts_check_instead(w, r);
}

static const char *better(const struct ts_ruling *r)
{
	if (ts_ruling_topic(r) == TS_TOPIC_ROOM)
		return "Better in a larger tank: ";
	return r->other ? "Better not together: " : "Better not so: ";
}

/* "Together if the tank is covered tightly: hatchetfish leave the water through any gap." */
static void put_first(struct ts_check_work *w, const char *before, const char *condition,
	const struct ts_ruling *r)
{
	ts_text_puts(&w->text, before, condition ? condition : "", condition ? ": " : "", NULL);
	if (condition && r->rule == TS_RULE_FEW) {
		ts_text_number_short(&w->text, r->ours, 0);
		ts_text_put(&w->text, " ");
		(r->ours > 1 ? ts_say_animals : ts_say_animal)(&w->text, r->subject);
		ts_text_put(&w->text,
			r->ours > 1 ? " are too few to feel safe." : " does not feel safe.");
		return;
	}
	ts_say_opening(&w->text, r);
	put_yours(w, r);
	ts_text_put(&w->text, ".");
}

/* "Together at 26 C, not at 24: ram: temperature 24, comfortable from 26: 2 too cold." */
static void put_warmth(struct ts_check_work *w, const struct ts_ruling *r)
{
	ts_text_put(&w->text, several(w) ? "Together at " : "At ");
	ts_text_number_short(&w->text, r->remedy.temp_c, 1);
	ts_text_put(&w->text, " C, not at ");
	ts_text_number_short(&w->text, w->check.profile.at[TS_TEMPERATURE].value, 1);
	put_first(w, ": ", NULL, r);
}

/* "Not before your authority allows it: marbled crayfish stand in the EU Union list". */
static void put_listed(struct ts_check_work *w, const struct ts_species *s)
{
	ts_text_put(&w->text, "Not before your authority allows it: ");
	ts_say_animals(&w->text, s);
	ts_text_put(&w->text, " are listed by law (");
	for (size_t i = 0; i < s->listed.count; i++)
		ts_text_puts(&w->text, i ? "; " : "", s->listed.items[i], NULL);
	ts_text_put(&w->text, ").");
}

/* Of two that live there, between whom it may go wrong: who goes when it does. */
static const char *watch_them(struct ts_check_work *w, const struct ts_ruling *r)
{
	const struct ts_plan_group *g = ts_check_group_of(&w->check, r->other);

	if (ts_ruling_topic(r) != TS_TOPIC_COMPANY || !g)
		return NULL;
	ts_text_put(&w->text, "Watch them: at torn fins, hiding or chasing the ");
	ts_check_put_bought(w, r->other);
	ts_text_put(&w->text, ts_group_count(&g->group) > 1 ? " go into another tank"
							    : " goes into another tank");
	return ts_asking_keep(w->asking, &w->text);
}

static void lead_with_concern(struct ts_check_work *w, size_t entry)
{
	const struct ts_check_judgement *j = &w->out->judgements[entry];
	const struct ts_ruling *r = w->entries[entry].ruling;
	bool met = j->condition || r->remedy.kind == TS_REMEDY_WARMTH;
	enum ts_check_kind kind = r->rule == TS_RULE_WATER_UNSURE               ? TS_CHECK_QUESTION
				  : met || r->remedy.kind < TS_REMEDY_LEAVE_OUT ? TS_CHECK_IF
										: TS_CHECK_NO;

	if (lead_with_seasons(w, entry))
		return;
	if (ts_check_says_room(w, r, NULL)) {
		ts_check_finish(w, TS_CHECK_NO, entry, NULL);
		w->out->decides = ts_check_room_instead(w, r);
		return;
	}
	if (r->rule == TS_RULE_FILTER)
		ts_text_put(&w->text, w->question->plan->tank.filter == TS_FILTER_NONE
					      ? "Not yet: there is no filter to take their waste."
					      : "Not yet: the filter is not mature.");
	else if (r->rule == TS_RULE_WATER_UNSURE)
		put_first(w, "Not sure yet: ", NULL, r);
	else if (r->remedy.kind == TS_REMEDY_WARMTH)
		put_warmth(w, r);
	else if (r->rule == TS_RULE_CAUTION && r->subject && r->subject->listed.count)
		put_listed(w, r->subject);
	else if (j->condition)
		put_first(
			w, several(w) ? "Together if " : "They can live here if ", j->condition, r);
	else
		put_first(w, better(r), NULL, r);
	/* The condition is the deed. */
	ts_check_finish(w, kind, entry,
		r->remedy.kind == TS_REMEDY_WARMTH ? w->out->shared_says : remedy_of(j));
	if (!w->out->decides && !w->check.planned_groups && r->other && !j->condition)
		w->out->decides = watch_them(w, r);
}

/* The first judgement of a rule; entry_count: none. */
static size_t of_rule(const struct ts_check_work *w, enum ts_rule_id rule)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		if (w->entries[i].ruling && w->entries[i].ruling->rule == rule)
			return i;
	}
	return w->entry_count;
}

/* Who is eaten while it is small is bought grown, and first. */
static bool say_grown(struct ts_check_work *w)
{
	size_t eaten = of_rule(w, TS_RULE_EATEN);
	const struct ts_ruling *r;

	if (eaten == w->entry_count || w->out->judgements[eaten].folded)
		return false;
	r = w->entries[eaten].ruling;
	ts_text_put(&w->text, "Buy the ");
	ts_say_animals(&w->text, r->subject);
	ts_text_put(&w->text, " grown, longer than ");
	ts_text_number_short(&w->text, r->its, 1);
	ts_text_put(&w->text, " cm, and put them in first: ");
	ts_say_animals(&w->text, r->other);
	ts_text_put(&w->text, " eat smaller ones.");
	w->out->first = &w->out->judgements[eaten];
	w->out->decides = ts_asking_keep(w->asking, &w->text);
	return true;
}

/* "Run it at 24 to 25 C: 26 is 1 above what panda corys like": the heater is what mends it. */
static bool say_heater(struct ts_check_work *w)
{
	const struct ts_shared_water *s = &w->check.shared;
	const struct ts_range *t = &s->at[TS_TEMPERATURE];
	const struct ts_span *set = &w->check.profile.at[TS_TEMPERATURE];

	if (!set->given || !s->comfortable[TS_TEMPERATURE] || isnan(t->low) || t->low > t->high ||
		(set->value >= t->low && set->value <= t->high))
		return false;
	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];
		double by = g->match.at[TS_TEMPERATURE].uncomfortable_by;

		if (!g->match.at[TS_TEMPERATURE].known || by == 0)
			continue;
		ts_text_put(&w->text, "Run it at ");
		ts_text_number_short(&w->text, t->low, 1);
		if (t->high > t->low) {
			ts_text_put(&w->text, " to ");
			ts_text_number_short(&w->text, t->high, 1);
		}
		ts_text_put(&w->text, " C: ");
		ts_text_number_short(&w->text, set->value, 1);
		ts_text_put(&w->text, " is ");
		ts_text_number_short(&w->text, fabs(by), 1);
		ts_text_put(&w->text, by > 0 ? " above what " : " below what ");
		ts_say_animals(&w->text, g->group.species);
		ts_text_put(&w->text, " like.");
		w->out->decides = ts_asking_keep(w->asking, &w->text);
		return true;
	}
	return false;
}

/* Two of what lives in groups are a pair that has settled, or none. */
#define OF_GROUPS 5

static bool say_pair(struct ts_check_work *w)
{
	for (size_t i = 0; several(w) && i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];
		const struct ts_species *s = g->group.species;

		if (!g->planned || !s->group.pair || s->group.least < OF_GROUPS ||
			g->group.either != 2 || g->group.males || g->group.females)
			continue;
		ts_text_put(&w->text, "2 ");
		ts_say_animals(&w->text, s);
		ts_text_put(&w->text, " as a pair that has settled already; young ones from ");
		ts_text_number_short(&w->text, s->group.least, 0);
		ts_text_put(&w->text, " up, in a tank for so many.");
		w->out->decides = ts_asking_keep(w->asking, &w->text);
		return true;
	}
	return false;
}

/* One of a kind that fights its own may turn on others, and its fins tempt those that nip. */
static bool say_temper(struct ts_check_work *w)
{
	for (size_t i = 0; several(w) && i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];
		const struct ts_species *s = g->group.species;

		if (!g->planned || s->group.sexes != TS_SEXES_ALONE || s->to_others != TS_CHASES ||
			s->to_own_kind != TS_INJURES)
			continue;
		ts_text_put(&w->text, "It depends on the temper of the ");
		ts_check_put_bought(w, s);
		ts_text_puts(&w->text,
			": some hunt what lives with them, so have a second home ready for it",
			s->fins ? "; and its fins tempt others to nip." : ".", NULL);
		w->out->decides = ts_asking_keep(w->asking, &w->text);
		return true;
	}
	return false;
}

/*
 * What deserves the second line: what is to be treated, who is bought grown, what the tank was
 * taken for, what the water lacks, what they share.
 */
static void say_yes_decides(struct ts_check_work *w, size_t chlorine)
{
	struct ts_check_result *out = w->out;

	ts_check_say_water_too(w);
	if (chlorine != w->entry_count)
		out->decides = out->judgements[chlorine].says;
	else if (!say_grown(w) && !say_heater(w) && !say_pair(w) &&
		 (out->water_too || !say_temper(w)))
		out->decides = ts_check_sides_taken(w);
	if (out->decides)
		return;
	out->decides = out->water_too ? out->water_too : out->shared_says;
	out->water_too = NULL;
}

/* Half a year. */
#define OLD_TANK_DAYS 182

/* Animals have lived there for so long that the tank is no new one. */
static bool runs_for_long(const struct ts_check_work *w)
{
	const struct ts_plan *plan = w->question->plan;
	long day;

	for (size_t i = 0; i < plan->stock_count; i++) {
		const char *since = plan->stock[i].since;

		if (since && ts_date_read(since, &day) && w->asking->today - day >= OLD_TANK_DAYS)
			return true;
	}
	return plan->tank.running_since && ts_date_read(plan->tank.running_since, &day) &&
	       w->asking->today - day >= OLD_TANK_DAYS;
}

/* "; the otocinclus last, once the tank has run for half a year": who is not for a new tank. */
static void put_last(struct ts_check_work *w)
{
	size_t said = 0, count = 0;

	for (int pass = 0; pass < 2; pass++) {
		for (size_t i = 0; i < w->entry_count; i++) {
			const struct ts_ruling *r = w->entries[i].ruling;

			if (!r || r->rule != TS_RULE_OLD_TANK ||
				w->entries[i].severity != TS_NOTE || ts_check_lives(w, r->subject))
				continue;
			if (runs_for_long(w)) {
				w->out->judgements[i].folded = true;
				continue;
			}
			if (!pass) {
				count++;
				continue;
			}
			w->out->judgements[i].folded = true;
			if (!several(w))
				continue;
			ts_text_put(&w->text, !said               ? "; the "
					      : said + 1 == count ? " and the "
								  : ", the ");
			ts_check_put_bought(w, r->subject);
			said++;
		}
	}
	if (count)
		ts_text_puts(&w->text, said ? " last" : "",
			", once the tank has run for half a year", NULL);
}

/* Nothing stands against them; but without water there is no verdict. */
static void lead_with_yes(struct ts_check_work *w)
{
	bool known = w->check.water_known && w->check.answered;
	size_t chlorine = of_rule(w, TS_RULE_CHLORINE);

	if (!w->check.water_known) {
		ts_text_puts(&w->text,
			several(w) ? "They go together" : "Nothing speaks against it",
			"; whether your water suits them GH tells: test it with drops, or ask the "
			"supplier.",
			NULL);
	} else {
		ts_text_put(&w->text, several(w) ? "These go together" : "They can live here");
		put_last(w);
		if (chlorine != w->entry_count)
			ts_text_put(&w->text,
				", once every drop of new water is treated against chlorine and "
				"chloramine");
		ts_text_put(&w->text, known ? "." : ", as far as is known.");
	}
	ts_check_finish(w, TS_CHECK_YES, chlorine, NULL);
	say_yes_decides(w, chlorine);
}

/* A name that nobody knows, or of several, is of those that live there. */
static bool of_living(const struct ts_check_work *w, const struct ts_ruling *r)
{
	const struct ts_plan *plan = w->question->plan;

	for (size_t i = 0; i < plan->stock_count; i++) {
		if (plan->stock[i].species == r->name && !w->question->species[i])
			return ts_in_tank(&plan->stock[i]);
	}
	return false;
}

/*
 * Questions without which nothing can be said: a name, of newcomers first, who were asked about; or
 * whether the water suits somebody.
 */
static size_t asked_first(const struct ts_check_work *w)
{
	size_t none = w->entry_count, unsure = none, living = none;

	for (size_t i = 0; i < none; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (!r || w->entries[i].severity != TS_QUESTION)
			continue;
		if (r->rule == TS_RULE_UNKNOWN_SPECIES && !of_living(w, r))
			return i;
		if (r->rule == TS_RULE_UNKNOWN_SPECIES && living == none)
			living = i;
		if (r->rule == TS_RULE_WATER_UNSURE && unsure == none)
			unsure = i;
	}
	return living < none ? living : unsure;
}

static void lead_with_question(struct ts_check_work *w, size_t entry)
{
	const struct ts_ruling *r = w->entries[entry].ruling;
	const struct ts_profile *p = &w->check.profile;

	if (r->rule == TS_RULE_UNKNOWN_SPECIES && ts_check_lead_with_group(w, entry))
		return;
	if (r->rule == TS_RULE_UNKNOWN_SPECIES) {
		ts_text_put(&w->text, w->out->judgements[entry].says);
	} else {
		ts_text_puts(&w->text, "Test ", p->at[TS_GH].given ? "" : "GH",
			p->at[TS_GH].given || p->at[TS_KH].given ? "" : " and ",
			p->at[TS_KH].given ? "" : "KH",
			" first, with drops: without that nobody can say whether the water suits ",
			NULL);
		ts_say_animals(&w->text, r->subject);
		ts_text_put(&w->text, ". A pH alone does not tell.");
	}
	ts_check_finish(w, TS_CHECK_QUESTION, entry, NULL);
}

/* The first entry from `from` on of that severity that is a rule's (or, else, advice). */
static size_t next_of(const struct ts_check_work *w, enum ts_severity severity, bool rule)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		if (w->entries[i].severity == severity && !w->entries[i].ruling != rule)
			return i;
	}
	return w->entry_count;
}

/* A young filter is the first thing to do; then what no condition mends, then the conditions. */
static size_t first_concern(const struct ts_check_work *w)
{
	size_t first = next_of(w, TS_CONCERN, true), none = w->entry_count;

	for (size_t i = first; i < none; i++) {
		if (w->entries[i].ruling && w->entries[i].ruling->rule == TS_RULE_FILTER)
			return i;
	}
	for (size_t i = first; i < none; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;
		const struct ts_check_judgement *j = &w->out->judgements[i];
		bool grave = r && (r->other || ts_ruling_topic(r) == TS_TOPIC_ROOM);

		if (grave && w->entries[i].severity == TS_CONCERN && !j->condition && !j->folded &&
			r->rule != TS_RULE_OUTCOMPETED)
			return i;
	}
	for (size_t i = first; i < none; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		/* How to feed is the last thing to say. */
		if (w->entries[i].severity == TS_CONCERN && r && r->rule != TS_RULE_OUTCOMPETED &&
			!w->out->judgements[i].folded)
			return i;
	}
	return first;
}

/* About somebody who is to be added to those that live there. */
static bool of_newcomers(const struct ts_check_work *w, const struct ts_ruling *r)
{
	const struct ts_plan_group *subject = ts_check_group_of(&w->check, r->subject);
	const struct ts_plan_group *other = ts_check_group_of(&w->check, r->other);

	return w->check.living_groups &&
	       ((subject && subject->planned) || (other && other->planned));
}

/* About those alone that live there, where others are to be added. */
static bool of_residents(const struct ts_check_work *w, const struct ts_ruling *r)
{
	return r && r->subject && w->check.planned_groups && w->check.living_groups &&
	       !of_newcomers(w, r);
}

static bool of_cool(const struct ts_species *s)
{
	return s->home_water == TS_HOME_COOL;
}

/* `a` is the warmth of a pair of which one is of cool water, and `b` that it eats the other. */
static bool warmth_parts(const struct ts_ruling *a, const struct ts_ruling *b)
{
	bool same = (a->subject == b->subject && a->other == b->other) ||
		    (a->subject == b->other && a->other == b->subject);

	return a->rule == TS_RULE_TEMPERATURE_APART && a->severity >= TS_CONFLICT &&
	       b->rule == TS_RULE_EATEN && same && of_cool(a->subject) != of_cool(a->other);
}

/* They were asked about; then the order of check_reasons.c. */
static bool leads(
	const struct ts_check_work *w, const struct ts_ruling *a, const struct ts_ruling *b)
{
	bool newcomers = of_newcomers(w, a);

	if (newcomers != of_newcomers(w, b))
		return newcomers;
	/* A cool one and a tropical one: that needs no mouth to be seen. */
	if (warmth_parts(a, b))
		return true;
	if (warmth_parts(b, a))
		return false;
	return ts_check_reason(a) < ts_check_reason(b);
}

static size_t first_conflict(const struct ts_check_work *w)
{
	size_t best = next_of(w, TS_CONFLICT, true), none = w->entry_count;

	for (size_t i = best; i < none && w->entries[i].severity == TS_CONFLICT; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (r && ts_ruling_topic(r) >= TS_TOPIC_COMPANY &&
			leads(w, r, w->entries[best].ruling))
			best = i;
	}
	return best;
}

/*
 * Of those that live there what their water lacks, or what is between two of them: to be done now,
 * whatever is not known yet. What a thermometer will tell waits.
 */
static size_t concern_of_residents(const struct ts_check_work *w)
{
	size_t first = next_of(w, TS_CONCERN, true), none = w->entry_count;

	for (size_t i = first; i < none; i++) {
		if (ts_check_keeps(w, i))
			return i;
	}
	for (size_t i = first; i < none; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;
		bool waits = r && r->rule == TS_RULE_TEMPERATURE_APART &&
			     w->out->judgements[i].condition;

		if (r && w->entries[i].severity == TS_CONCERN && r->other && !waits &&
			r->rule != TS_RULE_OUTCOMPETED)
			return i;
	}
	return none;
}

/* What is between two animals hangs on no water. */
static bool between_two(const struct ts_check_work *w, size_t entry)
{
	return entry < w->entry_count && w->entries[entry].ruling->other &&
	       !w->out->judgements[entry].condition;
}

/* A single one of what lives in groups, that is to be bought. */
static bool single(const struct ts_check_work *w, size_t entry)
{
	const struct ts_ruling *r = w->entries[entry].ruling;
	const struct ts_plan_group *g =
		r && r->rule == TS_RULE_FEW ? ts_check_group_of(&w->check, r->subject) : NULL;

	return g && g->planned && ts_group_count(&g->group) == 1;
}

/* One of each: three kinds or more of a single one, that want company. */
#define ONE_OF_EACH 3

/* "Not one of each: neon tetras, guppies and platies live in groups." */
static bool lead_with_singles(struct ts_check_work *w)
{
	size_t count = 0, said = 0, first = w->entry_count;

	for (size_t i = 0; i < w->entry_count; i++) {
		if (!single(w, i))
			continue;
		first = first < w->entry_count ? first : i;
		count++;
	}
	if (count < ONE_OF_EACH)
		return false;
	for (size_t i = 0; i < w->entry_count; i++) {
		if (!single(w, i))
			continue;
		ts_text_put(&w->text, !said               ? "Not one of each: "
				      : said + 1 == count ? " and "
							  : ", ");
		ts_say_animals(&w->text, w->entries[i].ruling->subject);
		w->out->judgements[i].folded = true;
		said++;
	}
	ts_text_put(&w->text, " live in groups.");
	ts_check_finish(w, TS_CHECK_NO, first,
		"take one or two kinds, as many of each as feel safe together: six and more of a "
		"shoal");
	w->out->repair_said = true;
	return true;
}

/* A conflict of the water is told with all that it concerns, and what suits instead. */
/* What is to be said of the newcomers goes before what those that live there have borne. */
static bool asked_of(const struct ts_check_work *w, size_t *io_concern)
{
	for (size_t i = *io_concern + 1; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (w->entries[i].severity == TS_CONCERN && r && of_newcomers(w, r) &&
			!w->out->judgements[i].folded) {
			*io_concern = i;
			return true;
		}
	}
	return false;
}

/* The first concern about newcomers; how to feed is the last thing to say. entry_count: none. */
static size_t concern_of_newcomers(const struct ts_check_work *w)
{
	size_t none = w->entry_count, feeding = none;

	for (size_t i = 0; i < none; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (!r || w->entries[i].severity != TS_CONCERN || !of_newcomers(w, r) ||
			w->out->judgements[i].folded)
			continue;
		if (r->rule != TS_RULE_OUTCOMPETED)
			return i;
		feeding = feeding < none ? feeding : i;
	}
	return feeding;
}

/* "The neon tetras and the corys go with those that live there." */
static void put_newcomers_go(struct ts_check_work *w)
{
	size_t said = 0, all = w->check.planned_groups;
	bool single = false;

	for (size_t i = 0; i < w->check.group_count; i++) {
		if (!w->check.groups[i].planned)
			continue;
		ts_text_put(&w->text, !said ? "The " : said + 1 == all ? " and the " : ", the ");
		ts_check_put_bought(w, w->check.groups[i].group.species);
		single = !said && ts_group_count(&w->check.groups[i].group) == 1;
		said++;
	}
	ts_text_put(&w->text,
		single ? " goes with those that live there" : " go with those that live there");
	ts_text_put(&w->text, w->check.water_known
				      ? ", as far as is known."
				      : "; whether the water suits them GH tells: test it.");
}

/* Those that live there have less than half the tank that they need. */
#define FAR_TOO_SMALL 0.5

/* The first conflict of their room that leaves no room for anybody; entry_count: none. */
static size_t nobody_more(const struct ts_check_work *w)
{
	double litres = w->question->plan->tank.volume_l;

	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;
		const struct ts_plan_group *g =
			r && of_residents(w, r) && w->entries[i].severity == TS_CONFLICT &&
					ts_rule_of_room(r->rule)
				? ts_check_group_of(&w->check, r->subject)
				: NULL;
		struct ts_smallest_tank own;

		if (!g)
			continue;
		ts_smallest_tank(
			&g->group, 1, false, &w->question->plan->tank, w->asking->practice, &own);
		if (litres > 0 && litres < FAR_TOO_SMALL * own.volume_l)
			return i;
	}
	return w->entry_count;
}

/*
 * The fault is between those that live there, or their room: the newcomers were asked about, and
 * come first; then what is to be done for the others.
 */
static void lead_with_newcomers(struct ts_check_work *w, size_t conflict)
{
	static const char before[] = "First for those that live there: ";
	const struct ts_ruling *r = w->entries[conflict].ruling;
	size_t concern = concern_of_newcomers(w), none = w->entry_count, full = nobody_more(w);
	const char *theirs;

	w->newcomers_led = true;
	if (full != none && ts_check_says_room(w, w->entries[full].ruling, "Add nobody yet: ")) {
		ts_check_finish(
			w, TS_CHECK_NO, full, "a larger tank first, or another home for them");
		return;
	}

	if (!ts_check_says_room(w, r, before)) {
		ts_text_put(&w->text, before);
		ts_say_opening(&w->text, r);
		ts_text_put(&w->text, ".");
	}
	theirs = ts_asking_keep(w->asking, &w->text);
	w->out->of_room = false;
	if (concern != none) {
		lead_with_concern(w, concern);
		w->out->root_says = theirs;
		return;
	}
	put_newcomers_go(w);
	ts_check_finish(w, TS_CHECK_IF, conflict, theirs);
}

/* A filter that is known not to be mature: nobody is bought, whatever the water is. */
static bool of_filter(const struct ts_check_work *w, size_t entry)
{
	return entry < w->entry_count && w->entries[entry].ruling &&
	       w->entries[entry].ruling->rule == TS_RULE_FILTER;
}

static void lead_with_list(struct ts_check_work *w)
{
	size_t none = w->entry_count, conflict = first_conflict(w);
	size_t concern = first_concern(w), question = asked_first(w);
	size_t misfit = ts_check_misfit_entry(w);

	if (lead_with_singles(w))
		return;
	if (conflict != none && conflict != misfit && misfit == none &&
		of_residents(w, w->entries[conflict].ruling))
		lead_with_newcomers(w, conflict);
	else if (conflict != none && conflict != misfit)
		lead_with_conflict(w, conflict);
	else if (misfit != none)
		ts_check_lead_with_misfit(w, misfit);
	else if (question != none && !between_two(w, concern) && !of_filter(w, concern))
		lead_with_question(w, question);
	else if (concern != none && ts_check_keeps(w, concern) && !asked_of(w, &concern))
		ts_check_lead_with_misfit(w, concern);
	else if (concern != none)
		lead_with_concern(w, concern);
	else
		lead_with_yes(w);
	if (conflict != none || concern != none)
		ts_check_say_water_too(w);
}

/* So little KH holds no pH. */
static void put_no_buffer(struct ts_check_work *w)
{
	const double *p = w->asking->practice->value;
	double kh = w->check.profile.at[TS_KH].value, to = ceil(p[TS_P_KH_ACT] + 1);

	ts_text_put(&w->text, "KH ");
	ts_text_number_short(&w->text, kh, 1);
	ts_text_put(&w->text, " holds no pH: ");
	ts_text_number_short(&w->text,
		ts_chem_substance_grams(
			ts_chem_substance("NaHCO3"), ts_chem_meq_l_from_dkh(to - kh), 100),
		0);
	ts_text_put(&w->text,
		" g of baking soda (sodium bicarbonate) in each 100 L of new water make it ");
	ts_text_number_short(&w->text, to, 0);
	ts_text_put(
		&w->text, ", a degree a week where animals live; or keep animals of black water.");
}

/* No animal is named: what is to be done about the water, if anything. */
/* "A filter stalls at KH 0.5: 13 g of baking soda in each 100 L first"; NULL: it has enough. */
static const char *buffer_for_filter(struct ts_check_work *w)
{
	const double *p = w->asking->practice->value;
	const struct ts_span *kh = &w->check.profile.at[TS_KH];
	double to = ceil(p[TS_P_KH_ACT] + 1);

	if (!kh->given || !(kh->value < p[TS_P_KH_FLOOR]))
		return NULL;
	ts_text_put(&w->text, "A filter stalls at KH ");
	ts_text_number_short(&w->text, kh->value, 1);
	ts_text_put(&w->text, ": ");
	ts_text_number_short(&w->text,
		ts_chem_substance_grams(
			ts_chem_substance("NaHCO3"), ts_chem_meq_l_from_dkh(to - kh->value), 100),
		0);
	ts_text_put(&w->text, " g of baking soda in each 100 L first, at once, since nobody lives "
			      "there; wood keeps it acid. Then feed it a pinch of food every day, "
			      "test both twice a week, and buy in thirds, 14 days apart");
	return ts_asking_keep(w->asking, &w->text);
}

static void lead_with_filter(struct ts_check_work *w)
{
	const char *buffer = buffer_for_filter(w);

	ts_text_put(&w->text,
		"Not yet: the filter comes first. Let it mature without animals, for four "
		"to eight weeks, until ammonia and nitrite both read nil a day after it "
		"was fed, for a week.");
	ts_check_finish(w, TS_CHECK_TEND, w->entry_count,
		buffer ? buffer
		       : "Feed it as if animals lived there: a pinch of food every day, or ammonia "
			 "to 1 or 2 mg/L; test both twice a week. Then buy in thirds, 14 days "
			 "apart");
}

/* What poisons whoever lives there, and nobody is named. */
static bool of_poison(const struct ts_ruling *r)
{
	return r && (r->rule == TS_RULE_AMMONIA || r->rule == TS_RULE_NITRITE);
}

static void lead_with_water(struct ts_check_work *w)
{
	const struct ts_profile *p = &w->check.profile;
	size_t conflict = next_of(w, TS_CONFLICT, true), concern = next_of(w, TS_CONCERN, true);
	size_t fault = conflict != w->entry_count ? conflict : concern;

	if (ts_check_filter_first(w)) {
		lead_with_filter(w);
		return;
	}
	if (fault != w->entry_count && of_poison(w->entries[fault].ruling)) {
		ts_text_puts(&w->text,
			"Where animals live in it, change half of the water now, and "
			"feed nothing; where none do, none yet: ",
			w->out->judgements[fault].says, ".", NULL);
		ts_check_finish(w, TS_CHECK_TEND, fault,
			"name the animals, with --there, and test pH and temperature: they tell "
			"how much of it is borne");
		return;
	}
	if (fault != w->entry_count) {
		ts_text_puts(&w->text, "Not yet: ", w->out->judgements[fault].says, ".", NULL);
		ts_check_finish(w, TS_CHECK_TEND, fault, remedy_of(&w->out->judgements[fault]));
		return;
	}
	if (!w->check.water_known)
		ts_text_put(&w->text, "Name the animals that you have or want, for example "
				      "\"10 neon tetra\".");
	else if (!p->at[TS_GH].given || !p->at[TS_KH].given)
		ts_text_puts(&w->text, "Test ", p->at[TS_GH].given ? "KH" : "GH",
			p->at[TS_GH].given || p->at[TS_KH].given ? "" : " and KH",
			" first, with drops; a pH alone does not tell who can live in it.", NULL);
	else if (p->at[TS_KH].value < w->asking->practice->value[TS_P_KH_FLOOR])
		put_no_buffer(w);
	else
		ts_text_put(&w->text, "Nothing needs doing about the water: choose animals that "
				      "like it as it is.");
	ts_check_finish(w, TS_CHECK_TEND, w->entry_count,
		w->check.water_known ? "tapshoal rank lists who does" : NULL);
}

/* The advice that is the answer; entry_count: none. */
static size_t leading_advice(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		if (w->entries[i].advice == &w->advice[0])
			return i;
	}
	return w->entry_count;
}

/* The recipe of the advice for those that live in bare water; NULL: there is none. */
static const char *advised_minerals(struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_advice *a = w->entries[i].advice;

		if (!a || (strcmp(a->row->id, "stock.minerals") != 0 &&
				  strcmp(a->row->id, "stock.stay") != 0))
			continue;
		w->out->judgements[i].folded = true;
		return w->out->judgements[i].says;
	}
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (!r || r->remedy.kind != TS_REMEDY_MINERALS)
			continue;
		ts_say_step(&w->text, &r->remedy);
		return ts_asking_keep(w->asking, &w->text);
	}
	return NULL;
}

/* The buffer comes back with the minerals. */
static void fold_buffer(struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_advice *a = w->entries[i].advice;

		w->out->judgements[i].folded |=
			a && strncmp(a->row->id, "buffer.", strlen("buffer.")) == 0;
	}
}

/* Bare or softened water, or readings that contradict each other: before any animal is chosen. */
static void lead_with_nobody(struct ts_check_work *w, const char *nobody)
{
	const struct ts_profile *p = &w->check.profile;
	unsigned bit = 1;
	const char *why;

	while (!(p->unusual & TS_UNUSUAL__NOBODY_YET & bit))
		bit <<= 1;
	why = bit == TS_UNUSUAL_BARE && !w->check.planned_groups ? advised_minerals(w) : NULL;
	if (!why && bit == TS_UNUSUAL_BARE && !w->check.planned_groups) {
		fold_buffer(w);
		why = "10 to 15 % every second day with water that was given minerals (tapshoal "
		      "remake --to GH=4,KH=3 says the grams); test ammonia before the first one, "
		      "since a rising pH makes it poison";
	}
	if (!why) {
		ts_say_unusual(&w->text, bit, p);
		why = ts_asking_keep(w->asking, &w->text);
	}
	if (ts_water_first(p) == TS_FIRST_CONTRADICTION) {
		ts_text_put(&w->text, w->check.planned_groups ? "Choose nobody for it yet"
							      : "Change nothing yet");
		ts_text_put(&w->text, ": its readings contradict each other; ");
		ts_say_read_again(&w->text, p);
		ts_text_put(&w->text, ".");
	} else if (bit == TS_UNUSUAL_BARE && !w->check.planned_groups) {
		ts_text_put(&w->text, "They stay, and the water gets its minerals back, slowly: "
				      "there is hardly one in it.");
	} else {
		ts_text_puts(&w->text,
			w->check.planned_groups ? "This water suits nobody yet: "
						: "They stay, and this water is to be put right: ",
			nobody, ".", NULL);
	}
	ts_check_finish(
		w, w->check.planned_groups ? TS_CHECK_NO : TS_CHECK_TEND, w->entry_count, why);
	/* Nothing that was read of it counts before. */
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		w->out->judgements[i].folded |=
			r && (r->rule == TS_RULE_WATER || r->rule == TS_RULE_WATER_UNSURE ||
				     r->rule == TS_RULE_BUFFER);
	}
}

/* Advice that is to be followed now, and no mere question or comfort. */
static bool acts(const struct ts_advice_row *row)
{
	return ((row->group >= 2 && row->group <= 6) ||
		       strcmp(row->id, "stock.temperature") == 0) &&
	       row->urgency != TS_AT_LEISURE;
}

static bool name_asked(const struct ts_check_work *w, size_t question)
{
	return question < w->entry_count &&
	       w->entries[question].ruling->rule == TS_RULE_UNKNOWN_SPECIES;
}

/* The first advice that acts; entry_count: none. */
static size_t acting_advice(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		if (w->entries[i].advice && acts(w->entries[i].advice->row))
			return i;
	}
	return w->entry_count;
}

/* No concern, or one that the thermometer will tell. */
static bool waits_for_warmth(const struct ts_check_work *w, size_t concern)
{
	return concern == w->entry_count ||
	       (w->entries[concern].ruling->rule == TS_RULE_TEMPERATURE_APART &&
		       w->out->judgements[concern].condition);
}

/* What is only to be watched is no first line where the tank is well. */
static size_t calm_advice(const struct ts_check_work *w, size_t advice)
{
	const char *id = w->advice[0].row->id;
	bool watch = strcmp(id, "buffer.warn") == 0 || strcmp(id, "buffer.borne") == 0;

	for (size_t i = 0; watch && i < w->entry_count; i++) {
		if (w->entries[i].advice && w->entries[i].advice->row->group >= 8 &&
			w->entries[i].advice->row->outcome == TS_LEAVE_ALONE)
			return i;
	}
	return advice;
}

/* The first conflict that does not wait for a larger tank. */
static size_t conflict_now(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (r && w->entries[i].severity == TS_CONFLICT && !ts_check_in_time(w, r))
			return i;
	}
	return w->entry_count;
}

/* All that is named lives there: what to do now, or nothing. */
static void lead_with_running_tank(struct ts_check_work *w, size_t advice)
{
	const struct ts_advice_row *row = w->advice[0].row;
	const char *nobody = ts_nobody_yet_says(&w->check.profile);
	size_t acting = acting_advice(w), concern = concern_of_residents(w);
	size_t none = w->entry_count, question = asked_first(w);
	bool asks = row->group == 1;

	/* What is to be done hangs on no name. */
	if (name_asked(w, question) && acting == none)
		lead_with_question(w, question);
	else if (asks && acting != none)
		lead_with_advice(w, acting);
	else if (!asks && row->group <= 6)
		lead_with_advice(w, calm_advice(w, advice));
	else if (nobody)
		lead_with_nobody(w, nobody);
	else if (conflict_now(w) != none)
		lead_with_conflict(w, conflict_now(w));
	else if (concern != none && ts_check_keeps(w, concern) && !asked_of(w, &concern))
		ts_check_lead_with_misfit(w, concern);
	else if (concern != none)
		lead_with_concern(w, concern);
	else if (!asks && row->group >= 7 && !waits_for_warmth(w, first_concern(w)) &&
		 !ts_check_in_time(w, w->entries[first_concern(w)].ruling) &&
		 strcmp(row->id, "stock.stay") != 0 && strcmp(row->id, "stock.temperature") != 0)
		lead_with_list(w);
	else
		lead_with_advice(w, advice);
}

/* Nitrate that was read where all of them live there, and nothing is more urgent; entry_count. */
static size_t waste_of_residents(const struct ts_check_work *w)
{
	size_t none = w->entry_count, entry = of_rule(w, TS_RULE_NITRATE);

	if (w->check.planned_groups || entry == none || w->entries[entry].severity < TS_CONCERN ||
		(w->advice_count && acts(w->advice[0].row)))
		return none;
	return entry;
}

/* Nitrate of what is poured in, mg/L; NAN: not known, or the one reading is the tank's. */
static double tap_nitrate(const struct ts_check_work *w)
{
	const struct ts_plan *plan = w->question->plan;

	return plan->tank.reading_count && plan->tank.readings == plan->water.readings
		       ? (double)NAN
		       : w->check.waters->poured.poisons.no3_mg_l;
}

/* Of each 100 L so many of pure water make the tap's nitrate half of what is comfortable. */
static const char *blend_tap(struct ts_check_work *w, double tap, double limit)
{
	double pure_l = 5 * ceil(20 * (1 - limit / 2 / tap));

	ts_text_put(&w->text, "Of each 100 L of new water ");
	ts_text_number_short(&w->text, pure_l, 0);
	ts_text_put(&w->text, " L from reverse osmosis or clean rain (with minerals as before) "
			      "bring it there; feed less, and plants that grow fast take some");
	return ts_asking_keep(w->asking, &w->text);
}

/* Nothing that is poured in takes it below that; NULL: the tap is of no matter. */
static const char *floor_of_tap(struct ts_check_work *w, double tap, double limit)
{
	if (isnan(tap))
		return "Test the tap's nitrate too: no change brings the tank below it";
	if (!(tap > limit / 3))
		return NULL;
	ts_text_put(&w->text, "Changes alone end at the ");
	ts_text_number_short(&w->text, tap, 0);
	ts_text_put(&w->text, " mg/L of your tap: less feed, plants that grow fast, and part rain "
			      "or reverse-osmosis water take it lower");
	return ts_asking_keep(w->asking, &w->text);
}

static void put_changes(struct ts_check_work *w)
{
	size_t load = of_rule(w, TS_RULE_NITRATE_LOAD);
	const struct ts_ruling *r = load < w->entry_count ? w->entries[load].ruling : NULL;

	if (r && r->remedy.kind == TS_REMEDY_ROUTINE && r->remedy.percent > 0) {
		ts_text_put(&w->text, "Change ");
		ts_say_part_of(&w->text, r->remedy.percent, r->remedy.net_l);
		ts_text_put(&w->text, " every ");
		ts_text_number_short(&w->text, r->remedy.days, 0);
		ts_text_put(&w->text, " days: ");
	} else if (!w->check.profile.at[TS_KH].given) {
		/* Who has lived in old water is not brought to another at once. */
		ts_text_put(&w->text,
			"Change 10 to 15 % of the water every second day until nitrate has "
			"fallen, and test KH, and the nitrate of the tap: ");
	} else {
		ts_text_put(&w->text, "Change a third of the water now, and then every week: ");
	}
}

/* "Change 40 % of the water every 7 days: nitrate 70 mg/L, comfortable to 50." */
static void lead_with_waste(struct ts_check_work *w, size_t entry)
{
	const struct ts_ruling *r = w->entries[entry].ruling;
	double tap = tap_nitrate(w), limit = r->its;
	bool asked = !w->check.profile.at[TS_KH].given;
	const char *decides = NULL;

	if (tap >= limit) {
		ts_text_put(&w->text, "No change of water brings it down, since your tap holds ");
		ts_text_number_short(&w->text, tap, 0);
		ts_text_put(&w->text, " mg/L itself: ");
	} else {
		put_changes(w);
	}
	ts_say_opening(&w->text, r);
	ts_text_put(&w->text, ".");
	ts_check_finish(w, TS_CHECK_TEND, entry, NULL);
	if (tap >= limit)
		decides = blend_tap(w, tap, limit);
	else if (!isnan(tap) || !asked)
		decides = floor_of_tap(w, tap, limit);
	w->out->decides = decides;
}

/* A conflict that no routine mends. */
static bool faulty(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count && w->entries[i].severity == TS_CONFLICT; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		/* A larger tank takes weeks: what is to be done about the water goes before it. */
		bool waste = acting_advice(w) != w->entry_count ||
			     waste_of_residents(w) != w->entry_count;

		if (!w->check.planned_groups && waste && r && ts_ruling_topic(r) == TS_TOPIC_ROOM)
			continue;
		if (ts_check_in_time(w, r))
			continue;
		if (r && (w->check.planned_groups || ts_ruling_topic(r) != TS_TOPIC_WASTE))
			return true;
	}
	return false;
}

/* What waste makes, a tank far too small lets come again. */
static bool of_waste(const struct ts_advice_row *row)
{
	static const char *const ids[] = {"now.gasping", "now.gasping-young", "now.gasping-still",
		"now.oxygen", "now.ammonia", "now.nitrite", "filter.reading", "old-tank",
		"oxygen.short", "now.cold", "seen.cloudy", "seen.smell", "nitrate.high",
		"apart.no3"};

	for (size_t i = 0; i < sizeof ids / sizeof *ids; i++) {
		if (strcmp(row->id, ids[i]) == 0)
			return true;
	}
	return false;
}

/* "80 litres are far too few for grown common goldfish" */
static void put_too_small(struct ts_check_work *w, const struct ts_ruling *r)
{
	double litres = w->question->plan->tank.volume_l;

	if (!(litres > 0) || !r->subject) {
		ts_say_opening(&w->text, r);
		return;
	}
	ts_text_number_short(&w->text, litres, 0);
	ts_text_put(&w->text, " litres are far too few for grown ");
	ts_say_animals(&w->text, r->subject);
}

/* After the deeds the one line that says why it will come again. */
static void say_root(struct ts_check_work *w)
{
	if (!w->advice_count || w->check.planned_groups || !of_waste(w->advice[0].row) ||
		!w->out->first || strcmp(w->out->first->code, w->advice[0].row->id) != 0)
		return;
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (r->severity != TS_CONFLICT || ts_ruling_topic(r) != TS_TOPIC_ROOM)
			continue;
		ts_text_put(&w->text, "And what lies behind it: ");
		put_too_small(w, r);
		ts_text_put(&w->text, ".");
		w->out->root_says = ts_asking_keep(w->asking, &w->text);
		return;
	}
}

/* What is seen of the water was asked about: that answer goes before faults of room. */
static bool asked_of_water(const struct ts_check_work *w)
{
	return w->advice_count && !w->check.planned_groups &&
	       strncmp(w->advice[0].row->id, "seen.", strlen("seen.")) == 0;
}

static void lead(struct ts_check_work *w)
{
	size_t none = w->entry_count, advice = leading_advice(w), waste = waste_of_residents(w);
	bool danger = w->advice_count && w->advice[0].row->group >= 2 &&
		      (w->advice[0].row->group <= 3 ||
			      (w->advice[0].row->group <= 7 && ts_check_unwell(w)));
	bool faults = faulty(w);
	const char *nobody = ts_nobody_yet_says(&w->check.profile);

	if (advice != none && (danger || asked_of_water(w)))
		lead_with_advice(w, advice);
	else if (w->check.planned_groups && !faults && nobody &&
		 (w->check.water_known || w->question->plan->water.softened))
		lead_with_nobody(w, nobody);
	else if (!w->check.planned_groups && w->check.living_groups && nobody &&
		 w->check.profile.unusual & TS_UNUSUAL_BARE &&
		 !(w->advice_count && w->advice[0].row->group < 6))
		lead_with_nobody(w, nobody);
	else if (!w->question->plan->stock_count && advice == none)
		lead_with_water(w);
	else if (!faults && waste != none && !nobody)
		lead_with_waste(w, waste);
	else if (w->check.planned_groups || faults || advice == none)
		lead_with_list(w);
	else
		lead_with_running_tank(w, advice);
}

/* "Which corys? ... With the panda cory all of these go together": the question stays the lead. */
static void lead_with_which(struct ts_check_work *w)
{
	struct ts_check_result *out = w->out;
	size_t at = 0;

	if (!w->which || (out->kind != ts_check_kind_words[TS_CHECK_YES] &&
				 out->kind != ts_check_kind_words[TS_CHECK_IF]))
		return;
	while (at < out->members.count && out->members.items[at] != w->which)
		at++;
	if (at < out->members.count) {
		for (out->members.count--; at < out->members.count; at++)
			out->members.items[at] = out->members.items[at + 1];
	}
	if (out->kind == ts_check_kind_words[TS_CHECK_IF])
		out->decides = out->decides ? ts_arena_join(w->asking->arena, out->headline, " ",
						      out->decides, NULL)
					    : out->headline;
	out->headline = w->which;
	out->kind = ts_check_kind_words[TS_CHECK_IF];
}

void ts_check_headline(struct ts_check_work *w)
{
	lead(w);
	lead_with_which(w);
	say_root(w);
	ts_check_happened(w);
	ts_check_poison(w);
	ts_check_asked(w);
	ts_check_unfit(w);
	ts_check_unripe(w);
	ts_check_care(w);
	ts_check_unread(w);
}
