/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The list of a check as rows: every judgement with its figures and its remedy, and the repair.
 */
#include "answers/check_parts.h"

#include <string.h>

#include "base/arena.h"
#include "stock/mending.h"
#include "stock/rules.h"
#include "words/advice.h"
#include "words/rulings.h"
#include "words/sentence.h"

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
		.height_cm = or_none(m->height_cm),
		.temp_c = or_none(m->temp_c),
		.step_percent = or_none(m->step_percent),
		.step_count = or_none(m->step_count)};
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

/* Before the water is put right, or read again, nothing that was read of it is mended. */
static bool of_nobodys_water(const struct ts_check_work *w, const struct ts_ruling *r)
{
	bool water = r->rule == TS_RULE_WATER || r->rule == TS_RULE_WATER_UNSURE ||
		     r->rule == TS_RULE_BUFFER;

	return water && w->check.profile.unusual & TS_UNUSUAL__NOBODY_YET;
}

/* Who has lived well in harder water than it likes needs no other. */
static bool left_as_it_is(const struct ts_check_work *w, const struct ts_ruling *r)
{
	for (size_t i = 0; r->rule == TS_RULE_WATER && i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];

		if (g->group.species == r->subject && g->way == TS_WAY_KEEP && g->well)
			return r->word >= 0 && r->match->at[r->word].uncomfortable_by > 0;
	}
	return false;
}

/* A report is exact, and of another day. */
static bool of_a_report(const struct ts_check_work *w, const struct ts_ruling *r)
{
	int method = r->word < 0 ? TS_METHOD_UNKNOWN : w->check.profile.method[r->word];

	return r->rule == TS_RULE_WATER_UNSURE && r->word != TS_TEMPERATURE &&
	       (method == TS_METHOD_UTILITY_REPORT || method == TS_METHOD_LABORATORY);
}

/* One regime in an answer: what is made safe or steady first says how much is changed, of what. */
static bool under_a_regime(const struct ts_check_work *w, const struct ts_ruling *r)
{
	bool recipe = r->remedy.kind == TS_REMEDY_MINERALS || r->remedy.kind == TS_REMEDY_DILUTE;

	return r->rule == TS_RULE_WATER && recipe &&
	       (ts_check_held(w) || (w->advice_count && strncmp(w->advice[0].row->id, "buffer.gone",
								strlen("buffer.gone")) == 0));
}

/* One size in an answer: a tank is as large as the repair wants it, without those who go. */
static void take_tank_of_repair(const struct ts_check_work *w, struct ts_remedy *io)
{
	for (size_t i = 0; i < w->check.repair_count; i++) {
		const struct ts_remedy *step = &w->check.repair[i].remedy;

		if (io->kind != TS_REMEDY_TANK || step->kind != io->kind ||
			!(step->length_cm > 0) || !(io->length_cm > 0))
			continue;
		io->length_cm = step->length_cm;
		io->width_cm = step->width_cm;
		io->height_cm = step->height_cm;
	}
}

static bool tank_known(const struct ts_check_work *w)
{
	return w->question->plan->tank.length_cm > 0 || w->question->plan->tank.volume_l > 0;
}

static void fill_remedy(
	struct ts_check_work *w, const struct ts_ruling *r, struct ts_check_judgement *ret)
{
	struct ts_ruling same = *r;
	struct ts_remedy remedy;
	const char *says;

	take_tank_of_repair(w, &same.remedy);
	remedy = same.remedy;
	if (of_nobodys_water(w, r) || left_as_it_is(w, r) || under_a_regime(w, r))
		return;
	if (of_a_report(w, r)) {
		ts_text_put(&w->text, "a report is of other days: test your own tap with drops");
	} else if (bought_now(w, r)) {
		remedy = (struct ts_remedy){.kind = TS_REMEDY_WAIT};
		ts_text_put(&w->text, "more of them once the tank is safe and steady");
	} else if (r->rule == TS_RULE_TEMPERATURE_UNKNOWN && liked_temperature(w)) {
		ts_text_put(&w->text, "keep it at what all like, ");
		ts_text_number_short(&w->text, w->check.shared.at[TS_TEMPERATURE].low, 1);
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, w->check.shared.at[TS_TEMPERATURE].high, 1);
		ts_text_put(
			&w->text, " C, and give that as the tank's temperature (--temperature)");
	} else if (r->rule == TS_RULE_UNSETTLED && tank_known(w) && !nothing_bought(w)) {
		if (!ts_check_more_fit(w, r->subject, r->its - r->ours))
			return;
		ts_text_put(&w->text, "the tank has room for ");
		ts_text_number_short(&w->text, r->its - r->ours, 0);
		ts_text_put(&w->text, " more");
	} else {
		ts_say_remedy(&w->text, &same, ts_check_held(w));
	}
	if (!w->text.len)
		return;
	says = ts_asking_keep(w->asking, &w->text);
	ret->remedy = ts_arena_take(w->asking->arena, sizeof *ret->remedy);
	if (ret->remedy)
		ts_check_remedy_fill(w, &remedy, says, ret->remedy);
}

/* What grows without end is no figure; its sentence says so. */
static double with_end(double figure)
{
	return isfinite(figure) ? figure : (double)NAN;
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
	ret->ours = with_end(ret->ours);
	ret->its = with_end(ret->its);
	ret->figure = with_end(ret->figure);
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
	ts_say_advice_hour(&w->text, a, w->residents);
	if (w->text.len)
		ret->hour = ts_asking_keep(w->asking, &w->text);
	ts_say_advice_week(&w->text, a, w->residents);
	if (w->text.len)
		ret->week = ts_asking_keep(w->asking, &w->text);
}

void ts_check_fill_judgements(struct ts_check_work *w)
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

void ts_check_fill_repair(struct ts_check_work *w)
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

bool ts_check_goes(const struct ts_check_work *w, const struct ts_species *species)
{
	for (size_t i = 0; species && i < w->check.repair_count; i++) {
		const struct ts_remedy *m = &w->check.repair[i].remedy;

		if (m->species == species && m->kind >= TS_REMEDY_LEAVE_OUT)
			return true;
	}
	return false;
}

static bool of_room(enum ts_rule_id rule)
{
	return ts_rule_of_room(rule) || rule == TS_RULE_TANK_UNMEASURED;
}

/* Of the room one animal wants the gravest line is enough; of all together none beside it. */
static bool room_said(const struct ts_check_work *w, size_t entry)
{
	const struct ts_ruling *r = w->entries[entry].ruling;

	for (size_t i = 0; of_room(r->rule) && i < entry; i++) {
		const struct ts_ruling *other = w->entries[i].ruling;

		if (other && of_room(other->rule) &&
			(other->subject == r->subject || !r->subject || !other->subject))
			return true;
	}
	return false;
}

/* What a tank that is far too small would make of the water asks nothing of anybody. */
static bool waste_of_no_room(const struct ts_check_work *w, const struct ts_ruling *r)
{
	if (r->subject || ts_ruling_topic(r) != TS_TOPIC_WASTE)
		return false;
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *other = &w->check.rulings[i];

		if (other->severity == TS_CONFLICT && of_room(other->rule))
			return true;
	}
	return false;
}

/* Where they live nitrate that was read tells more than what the model makes of the waste. */
static bool load_of_read(const struct ts_check_work *w, const struct ts_ruling *r)
{
	return (r->rule == TS_RULE_NITRATE_LOAD || r->rule == TS_RULE_NITRATE_OPEN) &&
	       ts_check_nitrate_tells(w);
}

/* More of them is no remedy where the tank is too small for them, and no advice where they would
 * not fit. */
static bool no_room(struct ts_check_work *w, const struct ts_ruling *r)
{
	/* Who is well alone, or as one of a pair, needs nobody bought to it. */
	if (r->severity == TS_NOTE && r->ours <= 1 &&
		(r->rule == TS_RULE_UNSETTLED || (r->rule == TS_RULE_FEW && r->its <= 2)))
		return true;
	if (r->rule == TS_RULE_UNSETTLED && !ts_check_more_fit(w, r->subject, r->its - r->ours))
		return true;
	if (r->rule != TS_RULE_FEW && r->rule != TS_RULE_UNSETTLED)
		return false;
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *other = &w->check.rulings[i];

		if (other->subject == r->subject && other->severity >= TS_CONCERN &&
			ts_ruling_topic(other) == TS_TOPIC_ROOM &&
			other->remedy.kind == TS_REMEDY_TANK && other->remedy.length_cm > 0)
			return true;
	}
	return false;
}

/* A little beside what it likes of a pH, or of more buffer, is no concern: hardness decides. */
static bool of_little_weight(const struct ts_ruling *r)
{
	bool more_buffer = r->word == TS_KH && r->match && r->match->at[TS_KH].uncomfortable_by > 0;

	return r->rule == TS_RULE_WATER && r->severity == TS_NOTE &&
	       (r->word == TS_PH || more_buffer);
}

/* One sentence says what the litres were taken for. */
static bool of_sides_taken(const struct ts_ruling *r)
{
	return r->rule == TS_RULE_SIDES_ASSUMED ||
	       (r->rule == TS_RULE_TANK_UNMEASURED && r->severity == TS_NOTE);
}

/* What a buyer is told of an animal, its keeper knows; who is to be feared is told anyhow. */
static bool of_one_kept(const struct ts_check_work *w, const struct ts_ruling *r)
{
	const struct ts_plan_group *g = ts_check_group_of(&w->check, r->subject);

	return r->rule == TS_RULE_CAUTION && r->severity == TS_NOTE && g && !g->planned;
}

/* What is told not to be bought gets no other line. */
void ts_check_fold(struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (r)
			w->out->judgements[i].folded =
				ts_check_goes(w, r->subject) || ts_check_goes(w, r->other) ||
				room_said(w, i) || no_room(w, r) || load_of_read(w, r) ||
				waste_of_no_room(w, r) || of_little_weight(r) ||
				of_sides_taken(r) || of_one_kept(w, r);
	}
}
