/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Another water as a document: what to do, who needs no work, the recipe, the water it makes, the
 * stages, the routine afterwards.
 */
#include "show/remake.h"

#include <math.h>

#include "show/stages.h"
#include "words/remake.h"

/* Potassium is listed from here on. */
#define K_SHOWN_MG_L 0.5

struct page {
	const struct ts_remake_result *r;
	struct ts_document *doc;
	struct ts_text text;
};

static const char *take(struct page *p)
{
	return ts_doc_take(p->doc, &p->text);
}

static void list(struct page *p, const struct ts_texts *texts, const char *end)
{
	for (size_t i = 0; i < texts->count; i++)
		ts_text_puts(&p->text, i ? ", " : "", texts->items[i], NULL);
	ts_text_put(&p->text, end);
}

/* "60 L of your own water, treated" or "10 g of sodium bicarbonate (NaHCO3)". */
static void put_part(struct page *p, const struct ts_recipe_line *l, bool change)
{
	bool weighed = l->unit[0] == 'g';

	ts_say_amount(&p->text, change ? l->amount_change : l->amount, l->unit);
	ts_text_puts(&p->text, " of ", l->says, weighed ? " (" : "", weighed ? l->ingredient : "",
		weighed ? ")" : "", NULL);
}

/* The waters of a recipe, then what is stirred into them: the whole of it once for each filling. */
static const char *filling(struct page *p, bool change)
{
	bool stirred = false;

	for (size_t i = 0; i < p->r->recipe_count; i++) {
		const struct ts_recipe_line *l = &p->r->recipe[i];
		bool weighed = l->unit[0] == 'g';

		if (!(l->amount > 0))
			continue;
		ts_text_put(&p->text, !p->text.len          ? ""
				      : weighed && !stirred ? "; stir in "
				      : weighed             ? ", "
							    : ", and ");
		stirred |= weighed;
		put_part(p, l, change);
	}
	ts_text_put(&p->text, ".");
	return take(p);
}

static void put_recipe(struct page *p)
{
	struct ts_node *steps;
	const char *when;

	ts_doc_heading(p->doc, 0, "The recipe, step by step");
	steps = ts_doc_steps(p->doc);
	ts_doc_line(p->doc, steps, "first of all", p->r->treatment, NULL);
	/* Where animals live nothing is filled at once: the stages say how much. */
	if (!p->r->stage_count || !p->r->volume_known) {
		ts_text_put(&p->text, p->r->volume_known ? "the first fill, " : "for ");
		ts_say_amount(&p->text, p->r->volume_l, "L");
		when = take(p);
		ts_doc_line(p->doc, steps, when, filling(p, false), NULL);
	}
	ts_text_put(&p->text, p->r->stage_count ? "then each change, " : "each change, ");
	ts_say_amount(&p->text, p->r->volume_l * p->r->change_percent / 100, "L");
	when = take(p);
	ts_doc_line(p->doc, steps, when, filling(p, true), NULL);
}

static const char *figure(struct page *p, double value, int decimals, const char *unit)
{
	ts_text_number_short(&p->text, value, decimals);
	ts_text_put(&p->text, unit);
	return take(p);
}

static void put_water(struct page *p)
{
	const struct ts_made_water *m = p->r->result;
	struct ts_node *facts;

	ts_doc_heading(p->doc, 0, "The water it makes");
	facts = ts_doc_facts(p->doc, 1);
	if (!isnan(m->gh_dh))
		ts_doc_line(p->doc, facts, "GH", figure(p, m->gh_dh, 1, " dH"), NULL);
	if (!isnan(m->kh_dh))
		ts_doc_line(p->doc, facts, "KH", figure(p, m->kh_dh, 1, " dH"), NULL);
	if (isnan(m->kh_dh)) {
		ts_doc_line(p->doc, facts, "pH", "not known: test KH", NULL);
	} else if (isnan(m->ph)) {
		ts_doc_line(p->doc, facts, "pH", "does not follow from so little KH: test", NULL);
	} else {
		ts_text_put(&p->text, "about ");
		ts_text_number(&p->text, m->ph, 1);
		ts_text_put(&p->text, " (");
		ts_text_number(&p->text, m->ph_low, 1);
		ts_text_put(&p->text, "..");
		ts_text_number(&p->text, m->ph_high, 1);
		ts_text_put(&p->text, "), follows from KH and CO2");
		ts_doc_line(p->doc, facts, "pH", take(p), NULL);
	}
	if (isnan(m->na_mg_l))
		return;
	ts_doc_line(p->doc, facts, "conductivity",
		figure(p, m->conductivity_us_cm, 0, " uS/cm, computed"), NULL);
	if (!isnan(m->ca_to_mg))
		ts_doc_line(p->doc, facts, "Ca to Mg", figure(p, m->ca_to_mg, 1, " : 1"), NULL);
	ts_doc_line(p->doc, facts, "sodium", figure(p, m->na_mg_l, 0, " mg/L"), NULL);
	if (m->k_mg_l >= K_SHOWN_MG_L)
		ts_doc_line(p->doc, facts, "potassium", figure(p, m->k_mg_l, 0, " mg/L"), NULL);
	ts_doc_line(p->doc, facts, "chloride", figure(p, m->cl_mg_l, 0, " mg/L"), NULL);
}

static void put_without_work(struct page *p)
{
	ts_doc_heading(p->doc, 0, "Without any work");
	if (p->r->bare)
		ts_doc_caution(p->doc, p->r->bare);
	ts_doc_paragraphs(p->doc, &p->r->as_it_is_says);
}

static void put_groups(struct page *p)
{
	ts_doc_heading(p->doc, 0, "Two groups");
	for (size_t i = 0; i < p->r->group_count; i++) {
		const struct ts_group_line *g = &p->r->groups[i];

		ts_text_puts(&p->text, g->name, ": ", NULL);
		list(p, &g->species, ". ");
		ts_text_put(&p->text, g->says);
		ts_doc_paragraph(p->doc, take(p));
	}
}

static void put_stages(struct page *p)
{
	const struct ts_remake_result *r = p->r;

	if (r->stage_count) {
		ts_doc_heading(p->doc, 0, "Stages for the animals there now");
		ts_doc_paragraph(p->doc, r->stages_say);
		ts_show_stages(p->doc, r->stages, r->stage_count, true);
	} else if (r->stages_none) {
		ts_doc_paragraph(p->doc, r->stages_none);
	}
}

static void put_all(struct page *p)
{
	const struct ts_remake_result *r = p->r;

	if (r->slow)
		ts_doc_paragraph(p->doc, r->slow);
	if (r->as_it_is)
		put_without_work(p);
	if (r->group_count)
		put_groups(p);
	if (r->recipe_count)
		put_recipe(p);
	if (r->recipe_count)
		put_water(p);
	for (size_t i = 0; i < r->notes.count; i++)
		ts_doc_paragraph(p->doc, r->notes.items[i]);
	put_stages(p);
	if (r->routine) {
		ts_doc_heading(p->doc, 0, "Afterwards");
		ts_doc_paragraph(p->doc, r->routine);
	}
	for (size_t i = 0; i < r->cautions.count; i++)
		ts_doc_caution(p->doc, r->cautions.items[i]);
}

/* "Into 100 L: 33 L of supply, 67 L of mineral-free": the recipe as a sentence. */
static void put_recipe_in_a_line(struct page *p)
{
	const struct ts_remake_result *r = p->r;

	ts_text_put(&p->text, "For ");
	ts_say_amount(&p->text, r->volume_l, "L");
	for (size_t i = 0; i < r->recipe_count; i++) {
		ts_text_put(&p->text, i ? ", " : ": ");
		ts_say_amount(&p->text, r->recipe[i].amount, r->recipe[i].unit);
		ts_text_puts(&p->text, " ", r->recipe[i].ingredient, NULL);
	}
	ts_text_put(&p->text, "; the same share of every later change, and none of it straight "
			      "into a tank with animals.");
	ts_doc_paragraph(p->doc, take(p));
}

/* What a message has room for: the recipe, the pace, who needs none of it. */
static void put_brief(struct page *p)
{
	const struct ts_remake_result *r = p->r;

	if (r->bare)
		ts_doc_paragraph(p->doc, r->bare);
	if (r->recipe_count)
		put_recipe_in_a_line(p);
	ts_doc_paragraph(p->doc, r->treatment);
	ts_doc_paragraphs(p->doc, &r->as_it_is_says);
}

void ts_show_remake(struct ts_document *doc, const struct ts_remake_result *r)
{
	struct page p = {.r = r, .doc = doc};

	ts_text_open(&p.text, &doc->arena->allocator);
	ts_doc_verdict(doc, r->says, r->because);
	if (!r->asks_alone && doc->brief)
		put_brief(&p);
	else if (!r->asks_alone)
		put_all(&p);
	doc->arena->failed |= p.text.failed;
	ts_text_drop(&p.text);
}
