/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A tank carried elsewhere, or another water from the tap: what to carry the animals in, how far
 * the two waters are apart, how new water is made like the old, and the stages of going over.
 */
#include "answers/what_if_work.h"

#include <math.h>
#include <string.h>

#include "water/analysis.h"
#include "water/mend.h"
#include "words/mend.h"
#include "words/remake.h"
#include "words/rulings.h"

/* Under way, where nobody says, h. */
#define HOURS_UNDER_WAY 3.0
#define HOURS_OF_DAY 24
#define UNFED_SHARE 0.25
/* The other water is reached within these. */
#define REACHED_DH 0.5
/* Animals rest from a move before their water is changed, days. */
#define REST_DAYS 7

static double value_of(const struct ts_profile *p, enum ts_parameter parameter)
{
	return p->at[parameter].given ? p->at[parameter].value : (double)NAN;
}

void ts_what_if_carried(struct ts_what_if_work *w)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_estimate hours;
	double tan;

	w->hours = isnan(w->question->hours) ? HOURS_UNDER_WAY : w->question->hours;
	if (isnan(w->question->hours))
		ts_asking_note(w->asking, &w->r.notes,
			"How long they are under way is not said: taken as 3 hours (--hours).");
	for (size_t i = 0; i < plan->stock_count; i++) {
		const struct ts_group *g = &w->groups[i];

		w->mass_g += ts_group_count(g) *
			     ts_mass_g(g->species,
				     g->size_cm > 0 ? g->size_cm : g->species->adult_length_cm);
	}
	if (!(w->mass_g > 0))
		return;
	w->r.carry_l = ts_carrying_l(w->mass_g, w->hours);
	tan = UNFED_SHARE * (w->waters->load_known ? w->waters->load.nitrogen_mg_day.value : 0) *
	      w->hours / HOURS_OF_DAY / w->r.carry_l;
	hours = (struct ts_estimate){w->hours, w->hours, w->hours};
	ts_text_put(&w->text, "To carry them (about ");
	ts_say_amount(&w->text, w->mass_g, "g of animals");
	ts_text_put(&w->text, "): ");
	ts_say_amount(&w->text, w->r.carry_l, "L of their own water");
	ts_text_put(&w->text,
		" in boxes with a lid, each kind by itself, spiny and biting ones one by "
		"one; in closed bags a third water, the rest air. ");
	if (tan >= 0.05) {
		ts_text_put(&w->text, "After ");
		ts_what_if_hours(&w->text, w->hours);
		ts_text_put(&w->text, " ammonia in it is about ");
		ts_text_number_short(&w->text, tan, 1);
		ts_text_put(&w->text, " mg/L. ");
	}
	ts_text_put(&w->text, "Keep them dark and warm, a wrap of wool or foam around");
	ts_what_if_add(w, "carried", &hours, tan);
}

/* Both waters as solutions; false: GH or KH of one is not known. */
static bool take_both(struct ts_what_if_work *w, struct ts_profile *other,
	struct ts_solution *ret_old, struct ts_solution *ret_new)
{
	const struct ts_keeping keeping = {0};
	unsigned assumed;

	if (!w->question->other || !w->question->other->reading_count)
		return false;
	ts_profile_make(w->question->other, &keeping, w->asking->practice, w->asking->today, other);
	return w->waters->now.at[TS_GH].given && other->at[TS_GH].given &&
	       ts_solution_from_profile(&w->waters->now, w->temp_c, ret_old, &assumed) == TS_OK &&
	       ts_solution_from_profile(other, w->temp_c, ret_new, &assumed) == TS_OK;
}

/* Within what is mixed in at once when animals come home (care/arrive.h): common practice. */
#define NEAR_SHARE 0.25
#define NEAR_DH 1.0

static bool is_near(double from, double to)
{
	return fabs(to - from) <= fmax(NEAR_DH, NEAR_SHARE * fmin(from, to));
}

static bool bears(const struct ts_what_if_work *w, const struct ts_stage_water *from,
	const struct ts_stage_water *to, enum ts_hardiness hardiness)
{
	return ts_step_is_safe(from, to, hardiness, w->asking->practice) ||
	       (is_near(from->gh_dh, to->gh_dh) && is_near(from->kh_dh, to->kh_dh));
}

/* New water with so much of the old in it that animals used to the old bear it at once. */
static double old_share(const struct ts_what_if_work *w, const struct ts_solution *old_water,
	const struct ts_solution *new_water, enum ts_hardiness hardiness)
{
	struct ts_stage_water from, to;

	ts_stage_water_of(old_water, 0, &from);
	for (int percent = 0; percent < 100; percent += 5) {
		const struct ts_solution *waters[] = {old_water, new_water};
		const double parts[] = {percent / 100.0, 1 - percent / 100.0};
		struct ts_solution mixed;

		ts_chem_mix(waters, parts, 2, &mixed);
		ts_stage_water_of(&mixed, 0, &to);
		if (bears(w, &from, &to, hardiness))
			return percent / 100.0;
	}
	return 1;
}

/* "into each 100 L ...": behind a colon. */
static const char *in_a_sentence(struct ts_what_if_work *w)
{
	const char *says = ts_asking_keep(w->asking, &w->text);
	char *small = ts_arena_text(w->asking->arena, says, strlen(says));

	if (small && *small >= 'A' && *small <= 'Z')
		*small = (char)(*small | 0x20);
	return small ? small : says;
}

/* What the whole tank takes of it, to be bought before. */
static void note_all(struct ts_what_if_work *w, const struct ts_mend *one)
{
	double hundreds = w->net_l / 100;
	const struct ts_mend all = {.bicarbonate_g = one->bicarbonate_g * hundreds,
		.calcium_chloride_g = one->calcium_chloride_g * hundreds,
		.epsom_g = one->epsom_g * hundreds,
		.pure_l = one->pure_l * hundreds};

	if (!(w->net_l > 0))
		return;
	ts_text_put(&w->text, "That is for the ");
	ts_say_amount(&w->text, w->net_l, "L");
	ts_text_put(&w->text, " of this tank: ");
	if (all.pure_l > 0)
		ts_say_amount(&w->text, all.pure_l, "L from reverse osmosis or clean rain");
	if (all.pure_l > 0 && all.bicarbonate_g + all.calcium_chloride_g + all.epsom_g > 0)
		ts_text_put(&w->text, ", ");
	ts_say_mend_salts(&w->text, &all);
	ts_text_put(&w->text, ".");
	ts_asking_note(w->asking, &w->r.notes, ts_asking_keep(w->asking, &w->text));
}

/* New water made like the old. */
static void find_recipe(struct ts_what_if_work *w, const struct ts_profile *other)
{
	const struct ts_mend_wish wish = {value_of(other, TS_GH), value_of(other, TS_KH),
		value_of(&w->waters->now, TS_GH), value_of(&w->waters->now, TS_KH), w->temp_c};
	struct ts_mend mend;

	if (!ts_mend_find(&wish, &mend))
		return;
	ts_say_mend(&w->text, &mend);
	w->recipe = in_a_sentence(w);
	note_all(w, &mend);
}

static void fill_stages(struct ts_what_if_work *w, const struct ts_stages *s)
{
	w->r.stages = ts_arena_array(w->asking->arena, s->count + 1, sizeof *w->r.stages);
	for (size_t i = 0; w->r.stages && i < s->count; i++) {
		const struct ts_stage *g = &s->stages[i];

		w->r.stages[w->r.stage_count++] = (struct ts_stage_line){g->day + REST_DAYS,
			g->change * w->net_l, 100 * g->change, g->after.gh_dh, g->after.kh_dh,
			g->after.ph, g->after.ec_us_cm, g->after.nh3_mg_l, g->stop, g->raises_ph,
			g->stop ? "stop for a week and test everything"
				: "GH and KH, and watch them"};
	}
}

/* The way over to the water there; who does not bear it stays in water made like the old. */
static enum ts_status find_stages(struct ts_what_if_work *w, const struct ts_profile *other,
	const struct ts_solution *old_water, const struct ts_solution *new_water,
	const struct ts_resident *residents)
{
	double gh = value_of(other, TS_GH), kh = value_of(other, TS_KH);
	const struct ts_stages_wish wish = {.now = *old_water,
		.poured = *new_water,
		.gh_dh = {gh - REACHED_DH, gh + REACHED_DH},
		.kh_dh = {kh - REACHED_DH, kh + REACHED_DH},
		.residents = residents,
		.resident_count = w->question->plan->stock_count,
		.cl_mg_l = (double)NAN};
	struct ts_stages *s = ts_arena_take(w->asking->arena, sizeof *s);

	if (!s)
		return TS_NO_MEMORY;
	*s = (struct ts_stages){0};
	if (ts_stages_plan(&wish, w->asking->practice, s) == TS_BAD_INPUT)
		return TS_OK;
	if (s->refusal == TS_STAGES_RESIDENT && s->resident >= 0) {
		ts_say_animals(&w->text, residents[s->resident].species);
		w->refuses = ts_asking_keep(w->asking, &w->text);
	} else if (s->refusal == TS_STAGES_FINE || s->refusal == TS_STAGES_TEST_FIRST) {
		fill_stages(w, s);
	}
	return TS_OK;
}

static void put_apart(struct ts_what_if_work *w, const struct ts_profile *other)
{
	const struct ts_estimate none = {(double)INFINITY, (double)INFINITY, (double)INFINITY};
	const bool there = w->question->row != &ts_what_if_rows[TS_IF_NEW_SUPPLY];

	ts_text_puts(&w->text, "Their water: GH ", NULL);
	ts_text_number_short(&w->text, value_of(&w->waters->now, TS_GH), 1);
	ts_text_put(&w->text, ", KH ");
	ts_text_number_short(&w->text, value_of(&w->waters->now, TS_KH), 1);
	ts_text_put(&w->text, there ? "; the water there: GH " : "; the new water: GH ");
	ts_text_number_short(&w->text, value_of(other, TS_GH), 1);
	ts_text_put(&w->text, ", KH ");
	ts_text_number_short(&w->text, value_of(other, TS_KH), 1);
	ts_text_put(&w->text,
		w->far ? ": more apart than they bear at once" : ": near enough for one step");
	ts_what_if_add(w, "other-water", &none, value_of(other, TS_GH));
}

enum ts_status ts_what_if_other_water(struct ts_what_if_work *w)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_resident *residents =
		ts_arena_array(w->asking->arena, plan->stock_count + 1, sizeof *residents);
	struct ts_profile *other = ts_arena_take(w->asking->arena, sizeof *other);
	struct ts_solution old_water, new_water;
	enum ts_hardiness hardiness;
	double share;

	if (!residents || !other)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < plan->stock_count; i++)
		residents[i] = (struct ts_resident){w->question->species[i],
			plan->stock[i].origin == TS_ORIGIN_WILD,
			plan->stock[i].size_cm > 0 &&
				plan->stock[i].size_cm <
					w->question->species[i]->adult_length_cm / 2};
	w->waters_known = take_both(w, other, &old_water, &new_water);
	if (!w->waters_known) {
		ts_asking_note(w->asking, &w->r.notes,
			"Of one of the two waters GH and KH are not known: the tank's own stand in "
			"its readings, the other one comes with -w FILE or --GH and --KH. Until "
			"then take them as far apart.");
		w->far = true;
		return TS_OK;
	}
	hardiness = ts_hardiness_of(residents, plan->stock_count);
	share = old_share(w, &old_water, &new_water, hardiness);
	w->far = share > 0;
	put_apart(w, other);
	if (!w->far)
		return TS_OK;
	w->r.old_water_l = share * w->net_l;
	find_recipe(w, other);
	return find_stages(w, other, &old_water, &new_water, residents);
}
