/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The check shown. What is said and in which order is the result's; here is only how much of it
 * stands on a screen, and under which heading.
 */
#include "show/check.h"

#include <math.h>
#include <string.h>

#include "words/care.h"
#include "words/sentence.h"

/* Entries of a severity that a short answer shows, and of all together: a plan of nine lines fits
 * 40 lines. */
#define ENTRIES_MOST 4
#define REASONS_MOST 3 /* steps of a repair that are each given their reason */

static const struct {
	const char *severity, *heading;
	size_t most;
} sections[] = {
	{"conflict", "Also in the way", 2},
	{"concern", "What it takes", 3},
	{"question", "Not known yet", 2},
	{"note", "To know", 2},
};

/* A sentence of its own begins with a capital; `stop`: and ends with a full stop. */
static const char *sentence(
	struct ts_document *doc, struct ts_text *text, const char *says, bool stop)
{
	size_t len = says ? strlen(says) : 0;

	char first = says && *says ? *says : '\0';

	if (first >= 'a' && first <= 'z' && strncmp(says, "pH", 2) != 0) {
		first = (char)(first - 'a' + 'A');
		ts_text_add(text, &first, 1);
		ts_text_put(text, says + 1);
	} else {
		ts_text_put(text, says);
	}
	if (stop && len && !strchr(".?!", says[len - 1]))
		ts_text_put(text, ".");
	return ts_doc_take(doc, text);
}

/* Who is to be feared, in one line; NULL: nobody. */
static const char *cautions(
	struct ts_document *doc, struct ts_text *text, const struct ts_check_result *r)
{
	const char *all = NULL;

	for (size_t i = 0; i < r->cautions.count; i++) {
		const char *one = sentence(doc, text, r->cautions.items[i], true);

		ts_text_puts(text, all ? all : "", all ? " " : "", one, NULL);
		all = ts_doc_take(doc, text);
	}
	return all;
}

/* Who is to be feared stands in the second line, whatever is to be done. */
static void say_answer(
	struct ts_document *doc, struct ts_text *text, const struct ts_check_result *r)
{
	const char *const lines[] = {cautions(doc, text, r), r->decides,
		r->first ? r->first->hour : NULL, r->first ? r->first->week : NULL, r->water_too,
		r->instead_says, r->otherwise};
	const size_t count = sizeof lines / sizeof *lines;
	size_t second = 0;

	while (second < count && !lines[second])
		second++;
	ts_doc_verdict(
		doc, r->headline, second < count ? sentence(doc, text, lines[second], true) : NULL);
	for (size_t i = second + 1; i < count; i++) {
		if (lines[i])
			ts_doc_paragraph(doc, sentence(doc, text, lines[i], true));
	}
}

/* A step that the first lines have said already. */
static bool step_said(const struct ts_check_result *r, const char *says)
{
	return (r->decides && strcmp(r->decides, says) == 0) ||
	       (r->otherwise && strstr(r->otherwise, says));
}

static void say_repair(
	struct ts_document *doc, struct ts_text *text, const struct ts_check_result *r)
{
	struct ts_node *steps;

	if (!r->repair_count || r->repair_said || (r->repair_count == 1 && r->of_room) ||
		(r->repair_count == 1 && r->repair_mends &&
			(r->instead_says || step_said(r, r->repair[0].remedy->says))))
		return;
	ts_doc_heading(doc, 0, "What would put it right");
	steps = ts_doc_steps(doc);
	for (size_t i = 0; i < r->repair_count; i++) {
		const char *number, *what;

		ts_text_number(text, (double)i + 1, 0);
		number = ts_doc_take(doc, text);
		what = sentence(doc, text, r->repair[i].remedy->says, false);
		/* The first step is of what the first line says. */
		if (i && r->repair_count <= REASONS_MOST)
			ts_text_puts(text, what, ": ", r->repair[i].because, ".", NULL);
		else
			ts_text_puts(text, what, ".", NULL);
		ts_doc_line(doc, steps, number, ts_doc_take(doc, text), NULL);
	}
	if (!r->repair_mends)
		ts_doc_paragraph(doc, "That mends what a list can mend, not all of it.");
}

static void say_judgement(
	struct ts_document *doc, struct ts_text *text, const struct ts_check_judgement *j)
{
	struct ts_node *entry;

	if (j->urgency) {
		const char *when = sentence(doc, text, j->urgency, false);

		ts_text_puts(text, when, ": ", j->says, NULL);
		entry = ts_doc_entry(doc, ts_doc_take(doc, text));
	} else {
		entry = ts_doc_entry(doc, sentence(doc, text, j->says, false));
	}
	if (j->because)
		ts_doc_line(doc, entry, j->because, NULL);
	if (j->hour)
		ts_doc_line(doc, entry, j->hour, NULL);
	if (j->week)
		ts_doc_line(doc, entry, j->week, NULL);
	if (j->remedy)
		ts_doc_line(doc, entry, j->remedy->says, NULL);
}

/* What the first lines have said already, or another part of the answer says. */
static bool said(const struct ts_check_result *r, const struct ts_check_judgement *j)
{
	return j == r->first || strcmp(j->code, "stock.filter-unknown") == 0 ||
	       (r->room_says && strcmp(j->code, "stock.tank-unknown") == 0) ||
	       (r->cautions.count && strcmp(j->code, "stock.caution") == 0 &&
		       strstr(r->cautions.items[0], j->says));
}

/* What was shown so far, and what was not. */
struct count {
	size_t shown, hidden;
};

static void say_list(struct ts_document *doc, struct ts_text *text, const struct ts_check_result *r,
	size_t section, bool all, struct count *count)
{
	size_t here = 0;

	for (size_t i = 0; i < r->judgement_count; i++) {
		const struct ts_check_judgement *j = &r->judgements[i];
		bool full = here >= sections[section].most || count->shown >= ENTRIES_MOST;

		if (strcmp(j->severity, sections[section].severity) != 0 || said(r, j))
			continue;
		/* What is to be done about a running tank is never left out. */
		if (!all && ((full && !j->urgency) || j->folded)) {
			count->hidden++;
			continue;
		}
		if (!here++)
			ts_doc_heading(doc, 0, sections[section].heading);
		count->shown++;
		say_judgement(doc, text, j);
	}
}

static void say_hidden(struct ts_document *doc, struct ts_text *text, const struct count *count)
{
	if (!count->hidden)
		return;
	ts_text_put(text, "and ");
	ts_text_number(text, (double)count->hidden, 0);
	ts_text_put(text, " more: --all");
	ts_doc_paragraph(doc, ts_doc_take(doc, text));
}

static void say_bars(
	struct ts_document *doc, struct ts_node *entry, const struct ts_check_animal *a)
{
	static const enum ts_hue hues[TS_PARAMETER__COUNT] = {[TS_GH] = TS_HUE_GH,
		[TS_KH] = TS_HUE_KH,
		[TS_PH] = TS_HUE_PH,
		[TS_TEMPERATURE] = TS_HUE_TEMPERATURE};

	for (size_t i = 0; i < a->range_count; i++) {
		for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
			const struct ts_check_range *r = &a->ranges[i];
			struct ts_bar bar = {.label = ts_parameter_rows[p].label,
				.hue = hues[p],
				.tolerated = r->tolerated,
				.preferred = r->preferred,
				.reading = r->doubt,
				.miss = r->miss};

			if (strcmp(r->parameter, ts_parameter_rows[p].key) == 0)
				ts_doc_bar(doc, entry, &bar);
		}
	}
}

/* Each against the water: a page draws what a list would only say. */
static void say_animals(
	struct ts_document *doc, struct ts_text *text, const struct ts_check_result *r)
{
	if (!r->animal_count || !doc->drawn)
		return;
	ts_doc_medium(doc, TS_ON_PAGES);
	ts_doc_heading(doc, 0, "The animals in this water");
	for (size_t i = 0; i < r->animal_count; i++) {
		const struct ts_check_animal *a = &r->animals[i];

		ts_text_number(text, (double)a->count, 0);
		ts_text_puts(text, " ", a->name, " (", a->species, "), ",
			a->planned ? "planned" : "there", ": grown ", NULL);
		ts_text_number_short(text, a->grown_cm, 1);
		ts_text_put(text, " cm, which needs a tank of ");
		ts_text_number_short(text, a->tank_length_cm, 0);
		ts_text_put(text, " cm");
		say_bars(doc, ts_doc_entry(doc, ts_doc_take(doc, text)), a);
	}
	ts_doc_medium(doc, TS_EVERYWHERE);
}

static void put_estimate(struct ts_text *text, double value, const struct ts_range *range,
	int decimals, const char *unit)
{
	ts_text_put(text, "about ");
	ts_text_number_short(text, value, decimals);
	ts_text_puts(text, " ", unit, " (", NULL);
	ts_text_number_short(text, range->low, decimals);
	ts_text_put(text, " to ");
	ts_text_number_short(text, range->high, decimals);
	ts_text_put(text, ")");
}

static void fact(
	struct ts_document *doc, struct ts_node *facts, struct ts_text *text, const char *label)
{
	ts_doc_line(doc, facts, label, ts_doc_take(doc, text), NULL);
}

static void say_load(struct ts_document *doc, struct ts_text *text, const struct ts_check_load *l)
{
	struct ts_node *facts;

	ts_doc_heading(doc, 0, "What the animals make of the water");
	facts = ts_doc_facts(doc, 1);
	ts_text_number_short(text, l->volume_l, 0);
	ts_text_put(text, " L");
	fact(doc, facts, text, "water");
	put_estimate(text, l->feed_g_day, &l->feed_range, 2, "g a day, dry");
	fact(doc, facts, text, "feed");
	put_estimate(text, l->nitrogen_mg_day, &l->nitrogen_range, 0, "mg a day");
	fact(doc, facts, text, "nitrogen");
	put_estimate(text, l->no3_rise_mg_l_week, &l->no3_rise_range, 1, "mg/L a week");
	if (!isnan(l->measured_no3_rise)) {
		ts_text_put(text, ", as measured; computed ");
		ts_text_number_short(text, l->modelled_no3_rise, 1);
	}
	fact(doc, facts, text, "nitrate rises");
	put_estimate(text, l->kh_used_dh_week, &l->kh_used_range, 2, "dH a week");
	fact(doc, facts, text, "KH used");
	if (!l->feeding_known || !l->plants_known)
		ts_doc_paragraph(doc, "The range is wide because feeding or plants are not given.");
}

/* One line each: the water they share, the smallest tank, the waste. */
static void say_room_and_waste(
	struct ts_document *doc, struct ts_text *text, const struct ts_check_result *r)
{
	bool repeated = r->decides && r->shared_says && strcmp(r->decides, r->shared_says) == 0;

	if (r->shared_says && !repeated)
		ts_doc_paragraph(doc, sentence(doc, text, r->shared_says, false));
	if (r->room_says)
		ts_doc_paragraph(doc, r->room_says);
	/* Where a larger tank is the answer, what this one would make of the water is none. */
	if (r->waste_says && !r->of_room)
		ts_doc_paragraph(doc, r->waste_says);
}

/* Of a plan without a word about the filter: one line at the end. */
static void say_filter(
	struct ts_document *doc, struct ts_text *text, const struct ts_check_result *r)
{
	for (size_t i = 0; i < r->judgement_count; i++) {
		const struct ts_check_judgement *j = &r->judgements[i];

		if (strcmp(j->code, "stock.filter-unknown") != 0 || j == r->first)
			continue;
		ts_text_puts(text, j->says, j->remedy ? "; " : NULL,
			j->remedy ? j->remedy->says : NULL, NULL);
		ts_doc_paragraph(doc, sentence(doc, text, ts_doc_take(doc, text), true));
	}
}

void ts_show_check(struct ts_document *doc, const struct ts_check_result *r, bool all)
{
	struct ts_text text;
	struct count count = {0, 0};

	ts_text_open(&text, &doc->arena->allocator);
	say_answer(doc, &text, r);
	say_list(doc, &text, r, 0, all, &count);
	say_repair(doc, &text, r);
	say_list(doc, &text, r, 1, all, &count);
	say_room_and_waste(doc, &text, r);
	say_list(doc, &text, r, 2, all, &count);
	say_list(doc, &text, r, 3, all, &count);
	say_hidden(doc, &text, &count);
	say_filter(doc, &text, r);
	say_animals(doc, &text, r);
	if (all && r->load)
		say_load(doc, &text, r->load);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
	ts_doc_see(doc, ts_guide_alone);
}
