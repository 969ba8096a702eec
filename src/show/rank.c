/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The ranking shown. Which animals stand in which list is the result's; here is only how many of
 * them are shown, and in which columns.
 */
#include "show/rank.h"

#include <string.h>

#include "words/sentence.h"

/* Of each list on a terminal; common practice of ours: what stands on half a screen. */
#define DOZEN 12
/* Animals named of a list that has one line. */
#define NAMED_MOST 4

static void count(struct ts_text *text, size_t n)
{
	ts_text_number_short(text, (double)n, 0);
}

static const char *name_of(const struct ts_match_result *m)
{
	return m->common ? m->common : m->species;
}

enum ts_hue ts_show_hue(int parameter)
{
	static const enum ts_hue hues[TS_PARAMETER__COUNT] = {[TS_GH] = TS_HUE_GH,
		[TS_KH] = TS_HUE_KH,
		[TS_PH] = TS_HUE_PH,
		[TS_TEMPERATURE] = TS_HUE_TEMPERATURE};

	return hues[parameter];
}

void ts_show_bar(struct ts_document *doc, struct ts_node *node, const struct ts_parameter_result *f,
	int parameter)
{
	struct ts_bar bar = {.label = ts_parameter_rows[parameter].label,
		.hue = ts_show_hue(parameter),
		.tolerated = f->tolerated,
		.preferred = f->preferred,
		.reading = {f->reading_low, f->reading_high},
		.reading_at = f->reading,
		.miss = f->uncomfortable_by};

	if (f->follows) {
		bar.reading = (struct ts_range){(double)NAN, (double)NAN};
		bar.reading_at = (double)NAN;
		bar.miss = 0;
	}
	if (doc->drawn)
		ts_doc_bar(doc, node, &bar);
}

void ts_show_bars(struct ts_document *doc, struct ts_node *node,
	const struct ts_parameter_result *parameters, size_t count)
{
	for (size_t p = TS_GH; p <= TS_TEMPERATURE && p < count; p++)
		ts_show_bar(doc, node, &parameters[p], (int)p);
}

void ts_show_match_marks(
	struct ts_document *doc, struct ts_node *node, const struct ts_match_result *m)
{
	if (!doc->drawn)
		return;
	ts_doc_tag(doc, node, "verdict", m->verdict);
	ts_doc_tag(doc, node, "family", m->family);
	ts_doc_tag(doc, node, "swims", m->swims);
	ts_doc_tag(doc, node, "sold", m->sold);
	ts_show_bars(doc, node, m->parameters, m->parameter_count);
}

/* "2 cm". */
static const char *grown(
	struct ts_document *doc, struct ts_text *text, const struct ts_match_result *m)
{
	ts_text_number_short(text, m->adult_length_cm, 1);
	ts_text_put(text, " cm");
	return ts_doc_take(doc, text);
}

/* "6, better 10". */
static const char *company(
	struct ts_document *doc, struct ts_text *text, const struct ts_match_result *m)
{
	ts_text_number_short(text, m->group_least, 0);
	if (m->group_comfortable > m->group_least) {
		ts_text_put(text, ", better ");
		ts_text_number_short(text, m->group_comfortable, 0);
	}
	return ts_doc_take(doc, text);
}

static const char *room(
	struct ts_document *doc, struct ts_text *text, const struct ts_match_result *m)
{
	ts_text_number_short(text, m->tank_length_cm, 0);
	ts_text_put(text, " cm long");
	return ts_doc_take(doc, text);
}

static const char *joined(
	struct ts_document *doc, struct ts_text *text, const struct ts_texts *list, size_t most)
{
	for (size_t i = 0; i < list->count && i < most; i++)
		ts_text_puts(text, i ? ", " : "", list->items[i], NULL);
	return ts_doc_take(doc, text);
}

/*
 * Columns as they are read at once; the head line says what they mean. Where a tank was given, all
 * in the list fit, and what else is to be known stands in the place of the length.
 */
static void short_head(struct ts_document *doc, struct ts_node *table, bool fits)
{
	if (fits)
		ts_doc_line(
			doc, table, "name", "grown", "together", "to know", "what decides", NULL);
	else
		ts_doc_line(doc, table, "name", "grown", "together", "needs", "what decides", NULL);
}

static void short_row(struct ts_document *doc, struct ts_text *text, struct ts_node *table,
	const struct ts_match_result *m, bool fits)
{
	const char *size = grown(doc, text, m), *length = room(doc, text, m), *group;

	ts_text_number_short(text, m->group_comfortable, 0);
	group = ts_doc_take(doc, text);
	if (fits)
		ts_doc_line(doc, table, name_of(m), size, group, joined(doc, text, &m->to_know, 1),
			m->says, NULL);
	else
		ts_doc_line(doc, table, name_of(m), size, group, length, m->says, NULL);
}

/* Columns that a program or a search through the lines needs. */
static void whole_head(struct ts_document *doc, struct ts_node *table)
{
	ts_doc_line(doc, table, "verdict", "name", "species", "sold", "grown", "together", "needs",
		"what decides", "to know", NULL);
}

static const char *species_of(
	struct ts_document *doc, struct ts_text *text, const struct ts_match_result *m)
{
	ts_text_puts(text, m->species, m->form ? ", " : "", m->form ? m->form : "", NULL);
	return ts_doc_take(doc, text);
}

static void whole_row(struct ts_document *doc, struct ts_text *text, struct ts_node *table,
	const struct ts_match_result *m)
{
	const char *species = species_of(doc, text, m), *size = grown(doc, text, m);
	const char *group = company(doc, text, m), *length = room(doc, text, m);
	const char *know = m->no_home   ? m->no_home
			   : m->no_room ? m->no_room
					: joined(doc, text, &m->to_know, m->to_know.count);

	ts_doc_line(doc, table, m->verdict, name_of(m), species, m->sold, size, group, length,
		m->says, know, NULL);
}

/* What it needs, behind its name; of an excluded animal nobody asks. */
static void needs(struct ts_text *text, const struct ts_match_result *m)
{
	ts_text_put(text, ": ");
	ts_text_number_short(text, m->adult_length_cm, 1);
	ts_text_put(text, " cm grown; keep ");
	ts_text_number_short(text, m->group_least, 0);
	if (m->group_comfortable > m->group_least) {
		ts_text_put(text, ", better ");
		ts_text_number_short(text, m->group_comfortable, 0);
	}
	ts_text_put(text, "; it needs ");
	ts_text_number_short(text, m->tank_length_cm, 0);
	ts_text_put(text, " cm of length");
}

/* Everything of one animal, for a page. */
static void entry(struct ts_document *doc, struct ts_text *text, const struct ts_match_result *m)
{
	bool excluded = strcmp(m->verdict, ts_verdict_words[TS_EXCLUDED]) == 0;
	struct ts_node *node;

	ts_text_puts(text, name_of(m), m->common ? " (" : "", m->common ? m->species : "",
		m->common && m->form ? ", " : "", m->common && m->form ? m->form : "",
		m->common ? ")" : "", NULL);
	if (!excluded)
		needs(text, m);
	node = ts_doc_entry(doc, ts_doc_take(doc, text));
	if (m->no_home || m->no_room)
		ts_doc_line(doc, node, m->no_home ? m->no_home : m->no_room, NULL);
	else if (m->to_know.count && !excluded)
		ts_doc_line(doc, node, joined(doc, text, &m->to_know, m->to_know.count), NULL);
	if (!m->reasons.count)
		ts_doc_line(doc, node, m->says, NULL);
	for (size_t i = 0; i < m->reasons.count; i++)
		ts_doc_line(doc, node, m->reasons.items[i], NULL);
	ts_show_match_marks(doc, node, m);
}

struct list {
	const struct ts_match_result *items;
	size_t count;
};

static struct list of_verdict(const struct ts_rank_result *r, enum ts_verdict verdict)
{
	struct list list = {r->ranked, 0};
	size_t i = 0;

	if (verdict == TS_EXCLUDED)
		return (struct list){r->excluded, r->excluded_count};
	while (i < r->ranked_count && strcmp(r->ranked[i].verdict, ts_verdict_words[verdict]) != 0)
		i++;
	list.items = r->ranked + i;
	while (i + list.count < r->ranked_count &&
		strcmp(list.items[list.count].verdict, ts_verdict_words[verdict]) == 0)
		list.count++;
	return list;
}

static void heading(
	struct ts_document *doc, struct ts_text *text, const char *title, size_t n, bool fold)
{
	ts_text_puts(text, title, " (", NULL);
	count(text, n);
	ts_text_put(text, ")");
	if (fold)
		ts_doc_fold(doc, ts_doc_take(doc, text));
	else
		ts_doc_heading(doc, 0, ts_doc_take(doc, text));
}

/* One list of a page: the best dozen open, the rest behind a fold; `fold`: all of it. */
static void page_list(
	struct ts_document *doc, struct ts_text *text, const char *title, struct list l, bool fold)
{
	heading(doc, text, title, l.count, fold);
	for (size_t i = 0; i < l.count; i++) {
		if (i == DOZEN && !fold) {
			count(text, l.count - DOZEN);
			ts_text_put(text, " more");
			ts_doc_fold(doc, ts_doc_take(doc, text));
		}
		entry(doc, text, &l.items[i]);
	}
	if (fold || l.count > DOZEN)
		ts_doc_unfold(doc);
}

static void screen_list(struct ts_document *doc, struct ts_text *text, const char *title,
	struct list l, const struct ts_show_list *wanted, bool fits)
{
	size_t shown = wanted->most ? wanted->most : DOZEN;
	size_t most = wanted->terminal && !wanted->all && l.count > shown ? shown : l.count;
	struct ts_node *table;

	heading(doc, text, title, l.count, false);
	table = ts_doc_records(doc);
	if (wanted->terminal)
		short_head(doc, table, fits);
	else
		whole_head(doc, table);
	for (size_t i = 0; i < most; i++) {
		if (wanted->terminal)
			short_row(doc, text, table, &l.items[i], fits);
		else
			whole_row(doc, text, table, &l.items[i]);
	}
	if (most == l.count)
		return;
	count(text, l.count - most);
	ts_text_put(text, " more: --all.");
	ts_doc_paragraph(doc, ts_doc_take(doc, text));
}

static void show_list(struct ts_document *doc, struct ts_text *text, const char *title,
	struct list l, const struct ts_show_list *wanted, bool aside, bool fits)
{
	if (!l.count)
		return;
	if (doc->drawn)
		page_list(doc, text, title, l, aside);
	else
		screen_list(doc, text, title, l, wanted, fits);
}

/* "41 more can live in it, not at their best: angelfish, discus, ... Which: --only tolerates." */
static void in_a_line(struct ts_document *doc, struct ts_text *text, struct list l,
	const char *what, const char *how)
{
	size_t named = l.count < NAMED_MOST ? l.count : NAMED_MOST;

	if (!l.count)
		return;
	count(text, l.count);
	ts_text_puts(text, " more ", what, ": ", NULL);
	for (size_t i = 0; i < named; i++)
		ts_text_puts(text, i ? ", " : "", name_of(&l.items[i]), NULL);
	ts_text_puts(text, l.count > named ? " ..." : ".", " Which: ", how, ".", NULL);
	ts_doc_paragraph(doc, ts_doc_take(doc, text));
}

/* On a terminal one line, unless all was asked for. */
static void aside(struct ts_document *doc, struct ts_text *text, const char *title, struct list l,
	const struct ts_show_list *wanted, bool whole)
{
	if (l.count && whole)
		show_list(doc, text, title, l, wanted, true, false);
}

static void others(struct ts_document *doc, struct ts_text *text, const struct ts_rank_result *r,
	const struct ts_show_list *wanted)
{
	struct list large = {r->too_large, r->too_large_count},
		    home = {r->no_home, r->no_home_count};
	bool whole = doc->drawn || !wanted->terminal || wanted->all;

	aside(doc, text, "The water suits, the tank is too small", large, wanted,
		whole || wanted->any_size);
	aside(doc, text, "The water suits, a home does not", home, wanted, whole);
	if (!whole && !wanted->any_size)
		in_a_line(doc, text, large, "need a larger tank", "--any-size");
	if (!whole)
		in_a_line(doc, text, home, "are for no home", "--all");
}

/* The excluded as counts. */
static void excluded(struct ts_document *doc, struct ts_text *text, const struct ts_rank_result *r)
{
	if (!r->excluded_count)
		return;
	count(text, r->excluded_count);
	ts_text_put(text, " not in this water");
	for (size_t i = 0; i < r->excluded_by_count; i++)
		ts_text_puts(text, i ? ", " : ": ", r->excluded_by[i].says, NULL);
	ts_text_put(text, ". Which: --only excluded.");
	ts_doc_paragraph(doc, ts_doc_take(doc, text));
}

static void water(struct ts_document *doc, const struct ts_rank_result *r)
{
	struct ts_node *facts;

	ts_doc_medium(doc, TS_OFF_PAPER); /* which leads with it */
	facts = ts_doc_facts(doc, 0);
	ts_doc_medium(doc, TS_EVERYWHERE);
	if (r->water_says)
		ts_doc_line(doc, facts, "Water", r->water_says, NULL);
	if (r->animals_say)
		ts_doc_line(doc, facts, "Animals", r->animals_say, NULL);
	if (r->tank_says)
		ts_doc_line(doc, facts, "Tank", r->tank_says, NULL);
}

/* The hardness of all comforts, with the own water upright in it: whom the tap is for at a glance.
 */
static void by_gh(struct ts_document *doc, const struct ts_rank_result *r)
{
	struct ts_arena *arena = doc->arena;
	double *x = ts_arena_array(arena, 2 * r->by_gh_count, sizeof *x);
	struct ts_series *series = ts_arena_take(arena, sizeof *series);
	struct ts_curve_mark *mark = ts_arena_take(arena, sizeof *mark);
	struct ts_curve *curve = ts_arena_take(arena, sizeof *curve);
	const struct ts_span *gh = &r->profile->at[TS_GH];
	bool marked = gh->given && gh->value >= 0 && gh->value <= TS_RANK_GH_MOST;

	if (!x || !series || !mark || !curve)
		return;
	for (size_t i = 0; i < r->by_gh_count; i++) {
		x[i] = r->by_gh[i].gh_dh;
		x[r->by_gh_count + i] = (double)r->by_gh[i].comfortable;
	}
	*series = (struct ts_series){"kinds that are comfortable at it", x, x + r->by_gh_count,
		r->by_gh_count, TS_HUE_GH};
	*mark = (struct ts_curve_mark){gh->value, "your water"};
	*curve = (struct ts_curve){"For whom soft and hard water are", "dH of GH", "kinds", 1, 0,
		series, 1, mark, marked, "at ", " dH"};
	ts_doc_curve(doc, curve);
}

void ts_show_rank(
	struct ts_document *doc, const struct ts_rank_result *r, const struct ts_show_list *wanted)
{
	static const char *const titles[TS_VERDICT__COUNT] = {[TS_SUITS] = "The water suits",
		[TS_TOLERATES] = "Can live in it, not at their best",
		[TS_UNSURE] = "May fit: measure again",
		[TS_EXCLUDED] = "Not in this water"};
	static const struct {
		const char *what, *how;
	} lines[TS_VERDICT__COUNT] = {
		[TS_TOLERATES] = {"can live in it, not at their best", "--only tolerates"},
		[TS_UNSURE] = {"may fit, which a closer reading would tell", "--only unsure"}};
	bool in_short = wanted->terminal && !wanted->all && !wanted->verdicts && !doc->drawn;
	unsigned usual = 1u << TS_SUITS | 1u << TS_TOLERATES | 1u << TS_UNSURE;
	unsigned verdicts = wanted->verdicts ? wanted->verdicts
			    : doc->drawn     ? usual | 1u << TS_EXCLUDED
					     : usual;
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	ts_doc_verdict(doc, doc->brief && r->choices ? r->choices : r->headline,
		r->deciding ? r->deciding : "");
	water(doc, r);
	/* A message names its choices, and no list. */
	if (doc->brief && r->choices) {
		ts_doc_paragraph(doc, r->closing);
		ts_text_drop(&text);
		return;
	}
	ts_doc_paragraphs(doc, &r->notes);
	if (r->ranked_count)
		ts_doc_paragraph(doc, r->order);
	for (int v = 0, shown = 0; v < TS_EXCLUDED; v++) {
		struct list l = of_verdict(r, (enum ts_verdict)v);

		if (!(verdicts & 1u << v) || !l.count)
			continue;
		if (shown++ && in_short)
			in_a_line(doc, &text, l, lines[v].what, lines[v].how);
		else
			show_list(doc, &text, titles[v], l, wanted, false,
				r->fits_asked && v == TS_SUITS);
	}
	if (!wanted->verdicts)
		others(doc, &text, r, wanted);
	if (verdicts & 1u << TS_EXCLUDED)
		show_list(doc, &text, titles[TS_EXCLUDED], of_verdict(r, TS_EXCLUDED), wanted,
			doc->drawn, false);
	else
		excluded(doc, &text, r);
	if (r->by_gh_count && !wanted->verdicts &&
		(doc->drawn || (wanted->terminal && wanted->all)))
		by_gh(doc, r);
	ts_doc_paragraphs(doc, &r->measure);
	ts_doc_paragraph(doc, r->closing);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}
