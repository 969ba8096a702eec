/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Everyday questions of care (words/asked.c) answered: the first of them is the first line, with
 * the tank's own figures behind it; what cannot wait, and a no, keep theirs before it.
 */
#include "answers/check_parts.h"

#include <math.h>
#include <string.h>

#include "words/rulings.h"

static bool is_kind(const struct ts_check_work *w, enum ts_check_kind kind)
{
	return strcmp(w->out->kind, ts_check_kind_words[kind]) == 0;
}

static void put_litres(struct ts_text *text, double litres)
{
	ts_text_number_short(text, litres, litres < 10 ? 1 : 0);
	ts_text_put(text, " L");
}

/* Nothing warmer than this needs no heater in a room; nothing colder than that does. */
#define ROOM_C 20

/* "At 22 to 26 C, as guppies like it, one is needed wherever the room gets colder at night." */
static bool put_warmth(struct ts_check_work *w)
{
	const struct ts_range *t = &w->check.shared.at[TS_TEMPERATURE];

	if (!w->check.group_count || !(t->low <= t->high))
		return false;
	ts_text_put(&w->text, t->low > ROOM_C ? "A heater for " : "No heater for ");
	ts_say_animals(&w->text, w->check.groups[0].group.species);
	ts_text_puts(&w->text, w->check.group_count > 1 ? " and the others" : "",
		t->low > ROOM_C ? ", wherever the room gets colder at night than "
				: ", where the room stays within ",
		NULL);
	ts_text_number_short(&w->text, t->low, 1);
	ts_text_put(&w->text, t->low > ROOM_C ? " C: they like " : " to ");
	if (t->low > ROOM_C) {
		ts_text_number_short(&w->text, t->low, 1);
		ts_text_put(&w->text, " to ");
	}
	ts_text_number_short(&w->text, t->high, 1);
	ts_text_put(&w->text, " C.");
	return true;
}

static bool put_years(struct ts_check_work *w)
{
	const struct ts_species *s = w->check.group_count ? w->check.groups[0].group.species : NULL;

	if (!s)
		return false;
	ts_text_number_short(&w->text, s->lives_years.low, 1);
	if (s->lives_years.high > s->lives_years.low) {
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, s->lives_years.high, 1);
	}
	ts_text_put(&w->text, " years, well kept: ");
	ts_say_animals(&w->text, s);
	ts_text_put(&w->text, ".");
	return true;
}

static bool put_company(struct ts_check_work *w)
{
	const struct ts_species *s = w->check.group_count ? w->check.groups[0].group.species : NULL;

	if (!s)
		return false;
	if (s->group.comfortable > 1) {
		ts_text_number_short(&w->text, s->group.comfortable, 0);
		ts_text_put(&w->text, " or more ");
		ts_say_animals(&w->text, s);
		ts_text_put(&w->text, " together are at ease.");
	} else {
		ts_text_put(&w->text, "One ");
		ts_say_animal(&w->text, s);
		ts_text_put(&w->text, " alone is fine.");
	}
	return true;
}

/* What the animals' records say goes in the place of what holds for all. */
static void put_first(struct ts_check_work *w, const struct ts_care_row *row)
{
	if ((row->puts & TS_CARE_WARMTH && put_warmth(w)) ||
		(row->puts & TS_CARE_YEARS && put_years(w)) ||
		(row->puts & TS_CARE_COMPANY && put_company(w)))
		return;
	ts_text_put(&w->text, row->says);
}

/* What the tank's own figures add to the first line. */
static void put_figures(struct ts_check_work *w, unsigned puts)
{
	double litres = w->question->plan->tank.volume_l;

	if (litres > 0 && puts & TS_CARE_QUARTER) {
		ts_text_put(&w->text, " A quarter is ");
		put_litres(&w->text, litres / 4);
		ts_text_put(&w->text, " of the ");
		put_litres(&w->text, litres);
		ts_text_put(&w->text, ".");
	}
	if (litres > 0 && puts & TS_CARE_WATTS) {
		ts_text_put(&w->text, " For ");
		put_litres(&w->text, litres);
		ts_text_put(&w->text, " that is ");
		ts_text_number_short(&w->text, litres / 2, 0);
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, litres, 0);
		ts_text_put(&w->text, " W.");
	}
}

static const char *add(struct ts_check_work *w, const char *to, const char *says)
{
	return to && says ? ts_arena_join(w->asking->arena, to, " ", says, NULL) : says ? says : to;
}

/* The usual answer of a tank of which something is known stands behind it. */
static void give_way(struct ts_check_work *w)
{
	struct ts_check_result *out = w->out;

	if (!w->question->plan->stock_count || w->question->unread_count)
		out->decides = NULL;
	else
		out->decides = add(w, out->headline, out->decides);
	if (w->question->unread_count)
		out->otherwise = out->instead_says = out->root_says = NULL;
}

void ts_check_care(struct ts_check_work *w)
{
	struct ts_check_result *out = w->out;

	for (size_t i = 0; i < w->question->care_count; i++) {
		const struct ts_care_row *row = w->question->care[i];
		bool leads = !i && !w->question->asked && !is_kind(w, TS_CHECK_DANGER) &&
			     !is_kind(w, TS_CHECK_NO);
		const char *says;

		put_first(w, row);
		put_figures(w, row->puts);
		says = ts_asking_keep(w->asking, &w->text);
		if (leads) {
			give_way(w);
			out->headline = says;
			out->kind = ts_check_kind_words[TS_CHECK_CARE];
		} else {
			out->asked_says = add(w, out->asked_says, says);
		}
		/* Of several questions each has one line. */
		if (w->question->care_count == 1)
			out->asked_says = add(w, out->asked_says, row->more);
	}
}
