/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The communities shown: verdict and why, what comes before any purchase, the lists, who waits.
 */
#include "show/propose.h"

#include "base/text.h"
#include "show/rank.h"

static void facts(struct ts_document *doc, const struct ts_propose_result *r)
{
	struct ts_node *node;

	ts_doc_medium(doc, TS_OFF_PAPER); /* which leads with it */
	node = ts_doc_facts(doc, 0);
	ts_doc_medium(doc, TS_EVERYWHERE);
	if (r->water_says)
		ts_doc_line(doc, node, "Water", r->water_says, NULL);
	if (r->animals_say)
		ts_doc_line(doc, node, "Animals", r->animals_say, NULL);
	if (r->needs)
		ts_doc_line(doc, node, "Needs", r->needs, NULL);
	ts_doc_line(doc, node, "Tank", r->tank_says, NULL);
	ts_doc_line(doc, node, "Chosen from", r->chosen_says, NULL);
}

/* "day 14"; behind the weeks of a filter "week 5 or later", then "2 weeks on". */
static void put_when(struct ts_text *text, double day, bool behind)
{
	if (behind && !(day > 0)) {
		ts_text_put(text, "week 5 or later");
		return;
	}
	ts_text_put(text, behind ? "" : "day ");
	ts_text_number_short(text, behind ? day / 7 : day, 0);
	ts_text_put(text, behind ? " weeks on" : "");
}

static void steps(struct ts_document *doc, const struct ts_propose_purchase_result *list,
	size_t count, bool behind)
{
	struct ts_node *node = ts_doc_steps(doc);
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	for (size_t i = 0; i < count; i++) {
		put_when(&text, list[i].day, behind);
		ts_doc_line(doc, node, ts_doc_take(doc, &text), list[i].says, NULL);
	}
	ts_text_drop(&text);
}

static void shared(struct ts_document *doc, const struct ts_propose_community_result *c)
{
	const struct ts_propose_shared_result *const of[] = {
		c->shared.gh, c->shared.kh, c->shared.ph, c->shared.temp};
	struct ts_node *node;

	ts_doc_heading(doc, 1,
		c->stock_count == 1 ? "The water that it wants"
				    : "The water that all of them share");
	node = ts_doc_facts(doc, 1);
	for (size_t p = 0; p < sizeof of / sizeof *of; p++) {
		if (of[p])
			ts_doc_line(doc, node, of[p]->label, of[p]->says, NULL);
	}
	ts_doc_line(doc, node, "decides", c->limiting.says, NULL);
	ts_doc_line(doc, node, "waste", c->load.waste_says, NULL);
	ts_doc_line(doc, node, "buffer lasts", c->load.buffer_says, NULL);
}

/* `said`: why this list stands above already. */
static void head(struct ts_document *doc, const struct ts_propose_community_result *c, bool said)
{
	ts_doc_heading(doc, 0, c->heading);
	if (!said)
		ts_doc_paragraph(doc, c->why);
}

static void animals(struct ts_document *doc, const struct ts_propose_community_result *c)
{
	for (size_t i = 0; i < c->stock_count; i++) {
		const struct ts_propose_line_result *l = &c->stock[i];
		struct ts_node *entry = ts_doc_entry(doc, l->says);

		ts_doc_line(doc, entry, l->needs, NULL);
		ts_show_bars(doc, entry, l->parameters, l->parameter_count);
	}
}

static void conditions(struct ts_document *doc, const struct ts_propose_community_result *c)
{
	if (c->conditions.count)
		ts_doc_heading(doc, 1, "It works on these conditions");
	ts_doc_paragraphs(doc, &c->conditions);
}

static void whole_list(struct ts_document *doc, const struct ts_propose_community_result *c,
	bool said, bool behind)
{
	head(doc, c, said);
	animals(doc, c);
	shared(doc, c);
	conditions(doc, c);
	ts_doc_heading(doc, 1, c->purchases_say);
	steps(doc, c->purchases, c->purchase_count, behind);
}

/* `alone`: the only list needs no number. */
static void short_list(
	struct ts_document *doc, const struct ts_propose_community_result *c, bool said, bool alone)
{
	if (!alone || !c->proven)
		head(doc, c, said);
	if (!said)
		conditions(doc, c);
	animals(doc, c);
}

static void maturing(struct ts_document *doc, const struct ts_propose_result *r)
{
	if (!r->maturing_count)
		return;
	ts_doc_heading(doc, 0, r->maturing_heading);
	steps(doc, r->maturing, r->maturing_count, false);
	ts_doc_paragraph(doc, r->maturing_says);
}

static void why(struct ts_document *doc, const struct ts_propose_result *r)
{
	if (!r->why_heading)
		return;
	ts_doc_heading(doc, 0, r->why_heading);
	ts_doc_paragraph(doc, r->why_says);
}

static void lists(struct ts_document *doc, const struct ts_propose_result *r, bool all)
{
	for (size_t i = 0; i < r->community_count; i++) {
		bool said = !i && r->deciding;

		if (all)
			whole_list(doc, &r->communities[i], said, r->maturing_count > 0);
		else
			short_list(doc, &r->communities[i], said, said && r->community_count == 1);
	}
	if (r->made_up_says)
		ts_doc_paragraph(doc, r->made_up_says);
	if (r->fewer_says)
		ts_doc_paragraph(doc, r->fewer_says);
}

/* The rest in a line each, the filter first. */
static void in_short(struct ts_document *doc, const struct ts_propose_result *r)
{
	struct ts_node *node = ts_doc_facts(doc, 0);

	if (r->maturing_short)
		ts_doc_line(doc, node, "Before", r->maturing_short, NULL);
	if (r->needs)
		ts_doc_line(doc, node, "Needs", r->needs, NULL);
	if (r->water_says)
		ts_doc_line(doc, node, "Water", r->water_says, NULL);
	ts_doc_line(doc, node, "Tank", r->tank_says, NULL);
	ts_doc_line(doc, node, "More", "--all: days of purchase, waste, who sets the ends", NULL);
	ts_doc_paragraphs(doc, &r->notes);
	if (r->waiting_count)
		ts_doc_paragraph(doc, r->waiting[0].says);
	ts_doc_paragraphs(doc, &r->water_notes);
	ts_doc_paragraphs(doc, &r->closing);
}

void ts_show_propose(struct ts_document *doc, const struct ts_propose_result *r, bool all)
{
	ts_doc_verdict(doc, r->headline, r->deciding ? r->deciding : "");
	ts_doc_paragraphs(doc, &r->held);
	if (!all && r->community_count && r->deciding)
		conditions(doc, &r->communities[0]);
	for (size_t i = 0; i < r->must_count; i++) {
		ts_doc_paragraph(doc, r->musts[i].says);
		if (r->musts[i].possible)
			ts_doc_paragraph(doc, r->musts[i].possible);
	}
	why(doc, r);
	if (!all) {
		lists(doc, r, false);
		in_short(doc, r);
		return;
	}
	maturing(doc, r); /* a mature filter has none: no purchase stands before it */
	facts(doc, r);
	ts_doc_paragraphs(doc, &r->notes);
	lists(doc, r, true);
	for (size_t i = 0; i < r->waiting_count; i++)
		ts_doc_paragraph(doc, r->waiting[i].says);
	ts_doc_paragraphs(doc, &r->water_notes);
	ts_doc_paragraphs(doc, &r->closing);
}
