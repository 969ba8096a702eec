/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What to test next as a document.
 */
#include "show/due.h"

#include "show/learned.h"
#include "words/care.h"
#include "words/due.h"
#include "words/remake.h"

/* "Bring 40 L of tap water, 3.6 g of baking soda" */
static const char *bring_says(
	struct ts_document *doc, struct ts_text *text, const struct ts_due_result *r)
{
	for (size_t i = 0; i < r->bring_count; i++) {
		ts_text_put(text, i ? ", " : "bring ");
		ts_say_amount(text, r->bring[i].amount, r->bring[i].unit);
		ts_text_puts(text, " of ", r->bring[i].what, NULL);
	}
	return ts_doc_take(doc, text);
}

static void say_change(struct ts_document *doc, struct ts_text *text, const struct ts_due_result *r)
{
	const struct ts_due_change_line *c = r->change;
	struct ts_node *entry;

	if (!c)
		return;
	ts_doc_heading(doc, 0, "Water");
	entry = ts_doc_entry(doc, c->says);
	ts_doc_line(doc, entry, c->because, NULL);
	if (r->bring_count)
		ts_doc_line(doc, entry, bring_says(doc, text, r), NULL);
	ts_doc_tag(doc, entry, "when", c->when);
}

static void say_alarms(struct ts_document *doc, const struct ts_due_result *r)
{
	if (!r->alarm_count)
		return;
	ts_doc_heading(doc, 0, "What this routine comes to");
	for (size_t i = 0; i < r->alarm_count; i++) {
		struct ts_node *entry = ts_doc_entry(doc, r->alarms[i].says);

		if (r->alarms[i].because)
			ts_doc_line(doc, entry, r->alarms[i].because, NULL);
	}
}

static void say_tests(struct ts_document *doc, const struct ts_due_result *r)
{
	ts_doc_heading(doc, 0, "Tests");
	for (size_t i = 0; i < r->test_count; i++) {
		const struct ts_due_test_line *t = &r->tests[i];
		struct ts_node *entry = ts_doc_entry(doc, t->says);

		ts_doc_line(doc, entry, t->because, NULL);
		ts_doc_tag(doc, entry, "when", t->when);
	}
}

static void say_stages(
	struct ts_document *doc, struct ts_text *text, const struct ts_due_result *r, long today)
{
	if (!r->stage_count)
		return;
	ts_doc_heading(doc, 0, "Stages of the re-making");
	for (size_t i = 0; i < r->stage_count; i++) {
		const struct ts_due_stage_line *g = &r->stages[i];

		ts_say_day(text, g->day, today);
		ts_text_puts(text, ": ", g->says, NULL);
		ts_doc_line(doc, ts_doc_entry(doc, ts_doc_take(doc, text)), g->test, NULL);
	}
	ts_doc_paragraph(doc, r->stages_say);
}

void ts_show_due(struct ts_document *doc, const struct ts_due_result *r, long today)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	if (r->danger)
		ts_doc_verdict(doc, r->danger, r->danger_because);
	ts_doc_verdict(doc, r->says, r->because);
	ts_show_alarms(doc, &r->learned);
	say_change(doc, &text, r);
	say_tests(doc, r);
	say_alarms(doc, r);
	say_stages(doc, &text, r, today);
	for (size_t i = 0; i < r->notes.count; i++)
		ts_doc_paragraph(doc, r->notes.items[i]);
	for (size_t i = 0; i < r->cautions.count; i++)
		ts_doc_caution(doc, r->cautions.items[i]);
	ts_doc_see(doc, ts_guide_due);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}

/* "today", "overdue, 8 March", "12 March" */
static const char *day_says(
	struct ts_document *doc, struct ts_text *text, const struct ts_due_thing *t, long today)
{
	if (t->day == today)
		return "today";
	ts_text_put(text, t->day < today ? "overdue, " : "");
	ts_say_day(text, t->day, today);
	return ts_doc_take(doc, text);
}

static void say_things(struct ts_document *doc, struct ts_text *text,
	const struct ts_due_all_result *r, long today, bool all)
{
	struct ts_node *table = r->thing_count ? ts_doc_table(doc) : NULL;
	size_t later = 0;

	ts_doc_line(doc, table, "by", "tank", "what", NULL);
	for (size_t i = 0; i < r->thing_count; i++) {
		const struct ts_due_thing *t = &r->things[i];

		if (!all && t->in_days > TS_DUE_SHOWN_DAYS)
			later++;
		else
			ts_doc_line(
				doc, table, day_says(doc, text, t, today), t->tank, t->says, NULL);
	}
	if (!later)
		return;
	ts_text_number(text, (double)later, 0);
	ts_text_put(text, " more in later weeks: --all.");
	ts_doc_paragraph(doc, ts_doc_take(doc, text));
}

static void say_bring(
	struct ts_document *doc, struct ts_text *text, const struct ts_due_all_result *r)
{
	struct ts_node *facts;

	if (!r->bring_count)
		return;
	ts_doc_heading(doc, 0, "To bring this week");
	facts = ts_doc_facts(doc, 0);
	for (size_t i = 0; i < r->bring_count; i++) {
		ts_say_amount(text, r->bring[i].amount, r->bring[i].unit);
		ts_doc_line(doc, facts, ts_doc_take(doc, text), r->bring[i].what, NULL);
	}
}

void ts_show_due_all(
	struct ts_document *doc, const struct ts_due_all_result *r, long today, bool all)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	ts_doc_verdict(doc, r->says, r->because);
	say_things(doc, &text, r, today, all);
	say_bring(doc, &text, r);
	for (size_t i = 0; i < r->unanswered_count; i++) {
		ts_text_puts(&text, r->unanswered[i].tank, ": ", r->unanswered[i].says, NULL);
		ts_doc_paragraph(doc, ts_doc_take(doc, &text));
	}
	for (size_t i = 0; i < r->cautions.count; i++)
		ts_doc_caution(doc, r->cautions.items[i]);
	ts_doc_see(doc, ts_guide_due);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}
