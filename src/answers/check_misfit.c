/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is said of animals that the water does not suit; what follows for each is decided in
 * stock/misfit.h. Planned beside others that it suits: those, and what goes in the place of this.
 * None suits: the fish for this water, and the recipe as the other way. Living there: they stay,
 * and the recipe comes with its pace.
 */
#include "answers/check_parts.h"

#include <string.h>

#include "stock/rules.h"
#include "words/rulings.h"
#include "words/sentence.h"

static const struct ts_plan_group *group_of(
	const struct ts_check_work *w, const struct ts_species *species)
{
	for (size_t i = 0; i < w->check.group_count; i++) {
		if (w->check.groups[i].group.species == species)
			return &w->check.groups[i];
	}
	return NULL;
}

/* The group of an entry that says that the water is not its own; NULL: it says something else. */
static const struct ts_plan_group *misfit_of(const struct ts_check_work *w, size_t entry)
{
	const struct ts_ruling *r = w->entries[entry].ruling;
	const struct ts_plan_group *g =
		r && r->rule == TS_RULE_WATER ? group_of(w, r->subject) : NULL;

	return g && g->way != TS_WAY_NONE ? g : NULL;
}

/* The next entry of that way from `from` on. */
static size_t next_of(const struct ts_check_work *w, enum ts_misfit_way way, size_t from)
{
	for (size_t i = from; i < w->entry_count; i++) {
		const struct ts_plan_group *g = misfit_of(w, i);

		if (g && g->way == way)
			return i;
	}
	return w->entry_count;
}

size_t ts_check_misfit_entry(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_plan_group *g = misfit_of(w, i);

		if (g && g->way != TS_WAY_KEEP)
			return i;
	}
	return w->entry_count;
}

bool ts_check_keeps(const struct ts_check_work *w, size_t entry)
{
	const struct ts_plan_group *g = misfit_of(w, entry);

	return g && g->way == TS_WAY_KEEP;
}

static bool finds_fault(
	const struct ts_check_work *w, const struct ts_ruling *r, const struct ts_plan_group *g)
{
	const struct ts_plan_group *other = r->other ? group_of(w, r->other) : NULL;
	const struct ts_plan_group *subject = group_of(w, r->subject);
	bool gone =
		(other && other->way == TS_WAY_LEAVE) || (subject && subject->way == TS_WAY_LEAVE);

	return r->severity >= TS_CONFLICT && !gone &&
	       (r->subject == g->group.species || r->other == g->group.species);
}

/* Planned, and nothing forbids it once those are gone that the water does not suit. */
static bool to_be_taken(const struct ts_check_work *w, const struct ts_plan_group *g)
{
	if (!g->planned || g->way != TS_WAY_NONE || g->misfit >= TS_MISFIT_OPEN)
		return false;
	for (size_t i = 0; i < w->entry_count; i++) {
		if (w->entries[i].ruling && finds_fault(w, w->entries[i].ruling, g))
			return false;
	}
	return true;
}

static void put_name(struct ts_check_work *w, const struct ts_plan_group *g)
{
	(ts_group_count(&g->group) == 1 ? ts_say_animal : ts_say_animals)(
		&w->text, g->group.species);
}

/* "the neon tetras, the platies and the guppies": of those that are to be taken, or of one way. */
static size_t put_names(struct ts_check_work *w, bool taken, enum ts_misfit_way way)
{
	size_t all = 0, said = 0;

	for (int pass = 0; pass < 2; pass++) {
		for (size_t i = 0; i < w->check.group_count; i++) {
			const struct ts_plan_group *g = &w->check.groups[i];

			if (taken ? !to_be_taken(w, g) : g->way != way)
				continue;
			if (!pass) {
				all++;
				continue;
			}
			ts_text_put(&w->text, !w->text.len      ? "The "
					      : !said           ? "the "
					      : said + 1 == all ? " and the "
								: ", the ");
			put_name(w, g);
			said++;
		}
	}
	return all;
}

/* Whether all of that way miss one figure to one side: then it is said once. */
static bool one_figure(const struct ts_check_work *w, enum ts_misfit_way way)
{
	const struct ts_parameter_fit *first = NULL;
	int at = 0;

	for (size_t i = next_of(w, way, 0); i < w->entry_count; i = next_of(w, way, i + 1)) {
		const struct ts_ruling *r = w->entries[i].ruling;
		const struct ts_parameter_fit *f = r->word < 0 ? NULL : &r->match->at[r->word];

		if (!f || r->rests == TS_RESTS_COMPUTED ||
			(first && (r->word != at || f->reading != first->reading ||
					  f->uncomfortable_by * first->uncomfortable_by <= 0)))
			return false;
		first = f;
		at = r->word;
	}
	return true;
}

/* "GH 22; neon tetras like it to 10, cardinal tetras to 8". */
static void put_one_figure(struct ts_check_work *w, enum ts_misfit_way way)
{
	bool first = true;

	for (size_t i = next_of(w, way, 0); i < w->entry_count; i = next_of(w, way, i + 1)) {
		const struct ts_ruling *r = w->entries[i].ruling;
		const struct ts_parameter_fit *f = &r->match->at[r->word];
		const struct ts_parameter_row *row = &ts_parameter_rows[r->word];
		const struct ts_range *likes =
			isnan(f->preferred.low) ? &f->tolerated : &f->preferred;
		bool above = f->uncomfortable_by > 0;

		if (first) {
			ts_text_puts(&w->text, row->label, " ", NULL);
			ts_text_number_short(&w->text, f->reading, row->decimals);
			ts_text_puts(&w->text, ", ", above ? row->above : row->below, "; ", NULL);
		}
		ts_text_put(&w->text, first ? "" : ", ");
		ts_say_animals(&w->text, r->subject);
		ts_text_puts(&w->text, first ? " like it " : " ", above ? "to " : "from ", NULL);
		ts_text_number_short(&w->text, above ? likes->high : likes->low, row->decimals);
		first = false;
	}
}

/* Why: of one the house sentence, of several their figures. */
static void put_reasons(struct ts_check_work *w, enum ts_misfit_way way, bool named)
{
	size_t first = next_of(w, way, 0), second = next_of(w, way, first + 1);
	bool several = second < w->entry_count;

	if (several && one_figure(w, way)) {
		put_one_figure(w, way);
		return;
	}
	for (size_t i = first; i < w->entry_count; i = next_of(w, way, i + 1)) {
		ts_text_put(&w->text, i == first ? "" : "; ");
		if (named && !several)
			ts_say_fit(&w->text, w->entries[i].ruling);
		else
			ts_say_opening(&w->text, w->entries[i].ruling);
	}
}

/* What the first lines have said of all of that way needs no line of its own. */
static void fold_all(struct ts_check_work *w, enum ts_misfit_way way)
{
	for (size_t i = next_of(w, way, 0); i < w->entry_count; i = next_of(w, way, i + 1))
		w->out->judgements[i].folded = true;
	/* The same recipe mends it. */
	for (size_t i = 0; way != TS_WAY_LEAVE && i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (r && r->rule == TS_RULE_BUFFER && r->remedy.kind == TS_REMEDY_MINERALS)
			w->out->judgements[i].folded = true;
	}
}

static const char *recipe(struct ts_check_work *w, const char *before)
{
	if (w->check.recipe.kind == TS_REMEDY_NONE)
		return NULL;
	ts_text_put(&w->text, before);
	ts_say_step(&w->text, &w->check.recipe);
	ts_text_put(&w->text, ".");
	return ts_asking_keep(w->asking, &w->text);
}

/* All that the repair does is not to buy those of the first line. */
static bool repair_is_said(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.repair_count; i++) {
		const struct ts_remedy *m = &w->check.repair[i].remedy;
		const struct ts_plan_group *g = m->species ? group_of(w, m->species) : NULL;

		if (m->kind != TS_REMEDY_LEAVE_OUT || !g || g->way != TS_WAY_LEAVE)
			return false;
	}
	return true;
}

static void lead_with_others(struct ts_check_work *w, size_t entry)
{
	const struct ts_ruling *r = w->entries[entry].ruling;
	size_t taken;

	ts_text_put(&w->text, "Take ");
	taken = put_names(w, true, TS_WAY_NONE);
	if (!taken) {
		ts_text_clear(&w->text);
		ts_text_put(&w->text, "Do not buy ");
	} else {
		ts_text_put(&w->text, ", not ");
	}
	(void)put_names(w, false, TS_WAY_LEAVE);
	ts_text_put(&w->text, ": ");
	put_reasons(w, TS_WAY_LEAVE, true);
	ts_text_put(&w->text, ".");
	ts_check_finish(w, TS_CHECK_NO, entry, NULL);
	w->out->repair_said = repair_is_said(w);
	(void)ts_check_name_instead(w, r->subject);
	if (w->check.recipe.kind == TS_REMEDY_MINERALS)
		w->out->otherwise = recipe(w, "Or make the water harder for all: ");
}

static void lead_with_other_fish(struct ts_check_work *w, size_t entry)
{
	int kind = w->entries[entry].ruling->subject->kind;
	enum ts_misfit_way way = misfit_of(w, entry)->way;

	w->out->passes = false; /* a spoon would not do either */
	ts_text_put(&w->text, "Not in this water: ");
	put_reasons(w, way, false);
	ts_text_put(&w->text, ".");
	ts_check_finish(w, TS_CHECK_NO, entry, NULL);
	w->out->otherwise = recipe(w, ts_check_name_for_water(w, kind) ? "Or make other water: "
								       : "It takes other water: ");
}

static void lead_with_minerals(struct ts_check_work *w, size_t entry)
{
	const struct ts_check_judgement *j = &w->out->judgements[entry];

	if (!j->condition) {
		lead_with_other_fish(w, entry);
		return;
	}
	ts_text_puts(&w->text, w->check.group_count > 1 ? "Together if " : "They can live here if ",
		j->condition, ": ", NULL);
	put_reasons(w, TS_WAY_MINERALS, false);
	ts_text_put(&w->text, ".");
	ts_check_finish(w, TS_CHECK_IF, entry, j->remedy ? j->remedy->says : NULL);
	(void)ts_check_name_for_water(w, w->entries[entry].ruling->subject->kind);
}

/* What other water is for those that stay: of GH, of KH; below and above what they like. */
static const char *const other_water[2][2] = {
	{"harden their water slowly", "soften their water slowly"},
	{"give their water more buffer, slowly", "thin their water slowly"},
};

static bool one_of_them(const struct ts_check_work *w, size_t entry, size_t kinds)
{
	return kinds == 1 && ts_group_count(&misfit_of(w, entry)->group) == 1;
}

static void lead_with_keeping(struct ts_check_work *w, size_t entry)
{
	const struct ts_check_judgement *j = &w->out->judgements[entry];
	const struct ts_ruling *r = w->entries[entry].ruling;
	bool above = r->match->at[r->word].uncomfortable_by > 0;
	size_t count = put_names(w, false, TS_WAY_KEEP);

	ts_text_put(&w->text, one_of_them(w, entry, count) ? " stays" : " stay");
	if (r->word == TS_GH || r->word == TS_KH)
		ts_text_puts(&w->text, "; ", other_water[r->word == TS_KH][above], NULL);
	ts_text_put(&w->text, ": ");
	put_reasons(w, TS_WAY_KEEP, true);
	ts_text_put(&w->text, ".");
	ts_check_finish(w, TS_CHECK_TEND, entry, j->remedy ? j->remedy->says : NULL);
}

/*
 * Who has lived there well for long is under no hurry. What is too soft wastes them in the end, and
 * the recipe stands by; harder water than they like is left as it is.
 */
static void lead_with_the_well(struct ts_check_work *w, size_t entry)
{
	const struct ts_check_judgement *j = &w->out->judgements[entry];
	const struct ts_ruling *r = w->entries[entry].ruling;
	bool above = r->match->at[r->word].uncomfortable_by > 0;
	size_t count = put_names(w, false, TS_WAY_KEEP);
	const char *reasons;

	if (above) {
		ts_text_clear(&w->text);
		ts_text_put(&w->text,
			w->check.planned_groups
				? "These go together, as far as is known; leave the water as it is."
				: "Leave the water as it is: they live well in it, for long.");
	} else {
		ts_text_puts(&w->text,
			one_of_them(w, entry, count) ? " stays, and is" : " stay, and are",
			" well; a little more of minerals would do them good.", NULL);
	}
	ts_check_finish(
		w, above && w->check.planned_groups ? TS_CHECK_YES : TS_CHECK_WELL, entry, NULL);
	put_reasons(w, TS_WAY_KEEP, false);
	ts_text_put(&w->text, above ? ", and borne all the same." : ".");
	reasons = ts_asking_keep(w->asking, &w->text);
	w->out->decides = reasons;
	if (!above && j->remedy) {
		ts_text_puts(&w->text, "If you want to: ", j->remedy->says, ".", NULL);
		w->out->otherwise = ts_asking_keep(w->asking, &w->text);
	}
}

/* Beside water that is not theirs a tank that is short for them is as plain: both at once. */
static void say_room_too(struct ts_check_work *w)
{
	bool of_room = w->out->of_room;

	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (!r || r->severity != TS_CONCERN || !r->subject || !ts_rule_of_room(r->rule) ||
			!ts_check_says_room(w, r, "Also better in a larger tank: "))
			continue;
		ts_asking_note(w->asking, &w->out->also, ts_asking_keep(w->asking, &w->text));
		break;
	}
	w->out->of_room = of_room;
}

void ts_check_lead_with_misfit(struct ts_check_work *w, size_t entry)
{
	static void (*const lead[TS_WAY__COUNT])(struct ts_check_work *, size_t) = {
		[TS_WAY_KEEP] = lead_with_keeping,
		[TS_WAY_LEAVE] = lead_with_others,
		[TS_WAY_MINERALS] = lead_with_minerals,
		[TS_WAY_OTHER_FISH] = lead_with_other_fish};
	enum ts_misfit_way way = misfit_of(w, entry)->way;

	if (way == TS_WAY_KEEP && misfit_of(w, entry)->well)
		lead_with_the_well(w, entry);
	else
		lead[way](w, entry);
	fold_all(w, way);
	if (way == TS_WAY_OTHER_FISH || way == TS_WAY_MINERALS)
		say_room_too(w);
}

/* Borne, and not liked: of figures of the animal's own, and not of a little more buffer. */
static bool borne(const struct ts_plan_group *g)
{
	if (g->misfit_at == TS_KH && g->match.at[TS_KH].uncomfortable_by > 0)
		return false;
	return g->planned && g->misfit == TS_MISFIT_BORNE && g->misfit_at != TS_PH &&
	       strcmp(g->match.at[g->misfit_at].source[0], "by kind of water") != 0;
}

/* "It is borne, and not liked: neon tetras: GH 14, comfortable to 10: 4 too hard". */
static void say_borne(struct ts_check_work *w)
{
	bool any = false;

	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;
		const struct ts_plan_group *g =
			r && r->rule == TS_RULE_WATER ? group_of(w, r->subject) : NULL;

		if (!g || !borne(g))
			continue;
		ts_text_put(&w->text, any ? "; " : "The ");
		put_name(w, g);
		ts_text_put(&w->text, any ? ": " : " bear the water and would like another: ");
		ts_say_fit(&w->text, r);
		w->out->judgements[i].folded = true;
		any = true;
	}
	if (any) {
		ts_text_put(&w->text, ".");
		w->out->water_too = ts_asking_keep(w->asking, &w->text);
	}
}

void ts_check_say_water_too(struct ts_check_work *w)
{
	size_t entry = ts_check_misfit_entry(w);

	if (w->out->water_too || w->out->first == &w->out->judgements[entry])
		return;
	if (entry == w->entry_count) {
		if (!w->out->first ||
			w->entries[w->out->first - w->out->judgements].severity == TS_NOTE)
			say_borne(w);
		return;
	}
	ts_text_put(&w->text, "And the water is not theirs: ");
	put_reasons(w, misfit_of(w, entry)->way, false);
	ts_text_put(&w->text, ".");
	w->out->water_too = ts_asking_keep(w->asking, &w->text);
	fold_all(w, misfit_of(w, entry)->way);
}
