/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The check shown. What is said and in which order is the result's; here is only how much of it
 * stands on a screen, by the kind of the answer, and under which heading.
 */
#include "show/check.h"

#include <math.h>
#include <string.h>

#include "show/learned.h"
#include "words/care.h"
#include "words/sentence.h"

#define REASONS_MOST 3 /* steps of a repair that are each given their reason */

/* What an answer may consist of, in the order of the screen. */
enum block {
	CAUTIONS, /* who is to be feared */
	ALSO,     /* further reasons of a no */
	CONFLICTS,
	REPAIR,
	CONDITIONS, /* what it takes, concern by concern */
	SHARED,     /* the water that they share */
	ROOM,
	WASTE,
	QUESTIONS,  /* what is not known, one by one */
	NOT_JUDGED, /* the same in one sentence */
	NOTES,
	FILTER,
	GUIDE,
	BLOCKS
};

#define ANY 99
#define WHERE_IT_MATTERS 2 /* where it is of their own routine, or may be too much */

/*
 * How many entries of each block stand on the first screen, by the kind of the answer; a block that
 * is not named does not. The rest is for --all: an answer with everything that was found says
 * things beside the point, and of animals that nobody is to buy.
 */
/* clang-format off */
static const struct {
	enum ts_check_kind kind;
	unsigned char most[BLOCKS];
} screens[TS_CHECK_KIND__COUNT] = {
	{TS_CHECK_DANGER, {[CAUTIONS] = ANY}},
	{TS_CHECK_NO, {[CAUTIONS] = ANY, [ALSO] = 3, [ROOM] = ANY}},
	{TS_CHECK_IF, {[CAUTIONS] = ANY, [CONDITIONS] = 4, [SHARED] = ANY, [ROOM] = ANY,
		[WASTE] = WHERE_IT_MATTERS, [NOT_JUDGED] = ANY, [NOTES] = 2, [FILTER] = ANY}},
	{TS_CHECK_YES, {[CAUTIONS] = ANY, [SHARED] = ANY, [ROOM] = ANY, [WASTE] = WHERE_IT_MATTERS,
		[NOT_JUDGED] = ANY, [NOTES] = 3, [FILTER] = ANY, [GUIDE] = ANY}},
	{TS_CHECK_QUESTION, {[CAUTIONS] = ANY, [CONDITIONS] = 2}},
	{TS_CHECK_TEND, {[CAUTIONS] = ANY, [CONFLICTS] = 2, [CONDITIONS] = 3, [SHARED] = ANY,
		[WASTE] = WHERE_IT_MATTERS, [QUESTIONS] = 2, [NOTES] = 2}},
	{TS_CHECK_WELL, {[CAUTIONS] = ANY, [CONFLICTS] = 1, [CONDITIONS] = 3, [SHARED] = ANY, [WASTE] = WHERE_IT_MATTERS,
		[QUESTIONS] = 2, [NOTES] = 2, [GUIDE] = ANY}},
	{TS_CHECK_CARE, {[CAUTIONS] = ANY}},
};
/* clang-format on */

/* An answer that is being shown. */
struct screen {
	struct ts_document *doc;
	struct ts_text *text;
	const struct ts_check_result *r;
	const unsigned char *most; /* of the kind */
	bool all, headed;          /* what else is to be done has its heading */
	size_t hidden;
};

static bool is(const struct ts_check_result *r, enum ts_check_kind kind)
{
	return strcmp(r->kind, ts_check_kind_words[kind]) == 0;
}

static const unsigned char *most_of(const struct ts_check_result *r)
{
	size_t i = 0;

	while (i + 1 < sizeof screens / sizeof *screens && !is(r, screens[i].kind))
		i++;
	return screens[i].most;
}

static bool shows(const struct screen *s, enum block block)
{
	return s->all || s->most[block];
}

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
static void say_answer(struct screen *s)
{
	const struct ts_check_result *r = s->r;
	const char *caution = cautions(s->doc, s->text, r);
	const char *const lines[] = {r->asked_says, r->not_understood,
		is(r, TS_CHECK_NO) ? NULL : r->decides, r->first ? r->first->hour : NULL,
		r->first ? r->first->week : NULL, r->water_too,
		is(r, TS_CHECK_NO) ? r->decides : NULL, r->instead_says, r->otherwise,
		r->root_says};
	const size_t count = sizeof lines / sizeof *lines;
	size_t at = 0;

	if (!caution && !r->also.count) {
		while (at < count && !lines[at])
			at++;
		caution = at < count ? sentence(s->doc, s->text, lines[at], true) : NULL;
		at++;
	}
	ts_doc_verdict(s->doc, r->headline, caution);
	for (size_t i = 0; i < r->also.count && (s->all || i < s->most[ALSO]); i++)
		(void)ts_doc_entry(s->doc, r->also.items[i]);
	for (size_t i = 0; i < r->members.count; i++)
		ts_doc_paragraph(s->doc, sentence(s->doc, s->text, r->members.items[i], false));
	for (; at < count; at++) {
		if (lines[at])
			ts_doc_paragraph(s->doc, sentence(s->doc, s->text, lines[at], true));
	}
}

/* A step that the first lines have said already. */
static bool step_said(const struct ts_check_result *r, const char *says)
{
	return (r->decides && strcmp(r->decides, says) == 0) ||
	       (r->otherwise && strstr(r->otherwise, says));
}

static void say_repair(struct screen *s)
{
	struct ts_document *doc = s->doc;
	struct ts_text *text = s->text;
	const struct ts_check_result *r = s->r;
	struct ts_node *steps;

	if (!shows(s, REPAIR) || !r->repair_count || r->repair_said ||
		(r->repair_count == 1 && r->of_room) ||
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

/* Whether a text holds another, whichever letter begins it. */
static bool holds(const char *text, const char *what)
{
	return text && what && *what && strstr(text, what + 1);
}

/* What the first lines have said already, or another part of the answer says. */
static bool said(const struct ts_check_result *r, const struct ts_check_judgement *j)
{
	return j == r->first || strcmp(j->code, "stock.filter-unknown") == 0 ||
	       (r->first &&
		       (holds(r->first->because, j->says) || holds(r->first->says, j->says))) ||
	       (r->room_says && strcmp(j->code, "stock.tank-unknown") == 0) ||
	       (r->cautions.count && strcmp(j->code, "stock.caution") == 0 &&
		       strstr(r->cautions.items[0], j->says));
}

/* A name that nobody knows; the sentence says itself what would be right. */
static bool of_nobody(const struct ts_check_judgement *j)
{
	return strcmp(j->code, "stock.unknown-species") == 0;
}

/* "The tank is covered tightly: hatchetfish leave the water through any gap", in one line. */
static void say_in_a_line(struct screen *s, const struct ts_check_judgement *j)
{
	struct ts_text *text = s->text;

	if (j->condition && strcmp(j->severity, "concern") == 0) {
		const char *condition = sentence(s->doc, text, j->condition, false);

		ts_text_puts(text, condition, ": ", j->says, NULL);
	} else {
		const char *fault = sentence(s->doc, text, j->says, false);

		bool mends = j->remedy && !of_nobody(j);

		ts_text_puts(text, fault, mends ? ": " : "", mends ? j->remedy->says : "", NULL);
	}
	(void)ts_doc_entry(s->doc, ts_doc_take(s->doc, text));
}

static const struct {
	const char *severity, *heading;
	enum block block;
} sections[] = {
	{"conflict", "Also in the way", CONFLICTS},
	{"concern", "What else it takes", CONDITIONS},
	{"question", "Not known yet", QUESTIONS},
	{"note", "To know", NOTES},
};

/* Names that nobody knows, beside a refusal. */
#define NAMES_MOST 5

static bool said_before(const struct ts_check_result *r, const struct ts_check_judgement *j)
{
	for (const struct ts_check_judgement *one = r->judgements; one < j; one++) {
		if (strcmp(one->says, j->says) == 0)
			return true;
	}
	return false;
}

/*
 * What is to be done about a running tank, and when, is never left out; in a danger what has time.
 * Nor is a name that nobody knows: who is refused another animal would take it for passed.
 */
static bool left_out(
	const struct screen *s, const struct ts_check_judgement *j, size_t most, size_t here)
{
	bool runs = is(s->r, TS_CHECK_TEND) || is(s->r, TS_CHECK_WELL);
	bool pressing = j->urgency && (runs || strcmp(j->urgency, "now") == 0 ||
					      strncmp(j->code, "away", 4) == 0);

	bool nobody = !is(s->r, TS_CHECK_DANGER) && of_nobody(j) && here < NAMES_MOST &&
		      !said_before(s->r, j);

	return !s->all && ((!pressing && !nobody && here >= most) || j->folded);
}

/* Of a tank that runs all that is to be done stands under one heading. */
static void head_list(struct screen *s, size_t section)
{
	bool tended =
		(is(s->r, TS_CHECK_TEND) || is(s->r, TS_CHECK_DANGER)) &&
		(sections[section].block == CONFLICTS || sections[section].block == CONDITIONS);

	if (!tended || !s->headed)
		ts_doc_heading(s->doc, 0,
			tended ? "What else to do"
			: is(s->r, TS_CHECK_WELL) && sections[section].block <= CONDITIONS
				? "In time"
				: sections[section].heading);
	s->headed |= tended;
}

/* The first line, or an entry before, is on the same condition. */
static bool same_condition(const struct ts_check_result *r, size_t at)
{
	const char *condition = r->judgements[at].condition;

	if (!condition)
		return false;
	if (r->first && r->first->condition && strcmp(r->first->condition, condition) == 0)
		return true;
	for (size_t i = 0; i < at; i++) {
		const struct ts_check_judgement *j = &r->judgements[i];

		if (!j->folded && j->condition && strcmp(j->condition, condition) == 0)
			return true;
	}
	return false;
}

static void say_list(struct screen *s, size_t section)
{
	const struct ts_check_result *r = s->r;
	size_t here = 0, most = s->most[sections[section].block];

	for (size_t i = 0; i < r->judgement_count; i++) {
		const struct ts_check_judgement *j = &r->judgements[i];

		if (strcmp(j->severity, sections[section].severity) != 0 || said(r, j) ||
			(!s->all && same_condition(r, i)))
			continue;
		if (left_out(s, j, most, here)) {
			s->hidden += most && !j->folded;
			continue;
		}
		if (!here++)
			head_list(s, section);
		if (s->all || j->urgency)
			say_judgement(s->doc, s->text, j);
		else
			say_in_a_line(s, j);
	}
}

/* One of several of one sort is enough: of two that leave the water, of two that breed. */
static bool told(const struct ts_check_result *r, size_t at)
{
	const struct ts_check_judgement *j = &r->judgements[at];

	for (size_t i = 0; i < at && strcmp(j->code, "stock.caution") != 0; i++) {
		if (!r->judgements[i].folded && strcmp(r->judgements[i].code, j->code) == 0 &&
			strcmp(r->judgements[i].severity, j->severity) == 0)
			return true;
	}
	return false;
}

/* A yes says in one sentence what is not given; what is to be done about a tank is to know. */
static void say_notes(struct screen *s)
{
	const struct ts_check_result *r = s->r;
	size_t here = 0;

	for (int pass = 0; pass < 2; pass++) {
		for (size_t i = 0; i < r->judgement_count; i++) {
			const struct ts_check_judgement *j = &r->judgements[i];

			if (strcmp(j->severity, pass ? "note" : "question") != 0 || said(r, j) ||
				j->folded || told(r, i))
				continue;
			if (here >= s->most[NOTES]) {
				s->hidden++;
				continue;
			}
			if (!here++)
				ts_doc_heading(s->doc, 0, "To know");
			say_in_a_line(s, j);
		}
	}
}

static void say_hidden(struct screen *s)
{
	if (!s->hidden)
		return;
	ts_text_put(s->text, "and ");
	ts_text_number(s->text, (double)s->hidden, 0);
	ts_text_put(s->text, " more: --all");
	ts_doc_paragraph(s->doc, ts_doc_take(s->doc, s->text));
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
				.reading_at = r->reading,
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

static void say_load(struct ts_document *doc, struct ts_text *text, const struct ts_check_load *l,
	const struct ts_learned *learned)
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
	ts_show_learned(doc, facts, learned);
	ts_show_newest(doc, facts, learned);
	if (!l->feeding_known || !l->plants_known)
		ts_doc_paragraph(doc, "The range is wide because feeding or plants are not given.");
}

/* One line each: the water they share, the smallest tank, the waste. */
static void say_room_and_waste(struct screen *s)
{
	const struct ts_check_result *r = s->r;
	bool repeated = r->decides && r->shared_says && strcmp(r->decides, r->shared_says) == 0;
	bool waste = s->all ||
		     (s->most[WASTE] && (s->most[WASTE] != WHERE_IT_MATTERS || r->waste_matters));

	if (shows(s, SHARED) && r->shared_says && !repeated)
		ts_doc_paragraph(s->doc, sentence(s->doc, s->text, r->shared_says, false));
	if (shows(s, ROOM) && r->room_says)
		ts_doc_paragraph(s->doc, r->room_says);
	/* Where a larger tank is the answer, what this one would make of the water is none. */
	if (waste && r->waste_says && !r->of_room)
		ts_doc_paragraph(s->doc, r->waste_says);
	if (shows(s, NOT_JUDGED) && r->not_judged)
		ts_doc_paragraph(s->doc, r->not_judged);
}

/* Of a plan without a word about the filter: one line at the end. */
static void say_filter(struct screen *s)
{
	for (size_t i = 0; i < s->r->judgement_count && shows(s, FILTER); i++) {
		const struct ts_check_judgement *j = &s->r->judgements[i];

		if (strcmp(j->code, "stock.filter-unknown") != 0 || j == s->r->first)
			continue;
		ts_text_puts(s->text, j->says, j->remedy ? "; " : NULL,
			j->remedy ? j->remedy->says : NULL, NULL);
		ts_doc_paragraph(
			s->doc, sentence(s->doc, s->text, ts_doc_take(s->doc, s->text), true));
	}
}

void ts_show_check(struct ts_document *doc, const struct ts_check_result *r, bool all)
{
	struct ts_text text;
	struct screen s = {doc, &text, r, most_of(r), all, false, 0};

	ts_text_open(&text, &doc->arena->allocator);
	say_answer(&s);
	ts_show_alarms(doc, &r->learned);
	say_list(&s, 0);
	say_repair(&s);
	say_list(&s, 1);
	say_room_and_waste(&s);
	if (all || !s.most[NOT_JUDGED]) {
		say_list(&s, 2);
		say_list(&s, 3);
	} else {
		say_notes(&s);
	}
	say_hidden(&s);
	say_filter(&s);
	say_animals(doc, &text, r);
	if (all && r->load)
		say_load(doc, &text, r->load, &r->learned);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
	if (r->what_if)
		ts_doc_paragraph(
			doc, ts_arena_join(doc->arena,
				     "How long it lasts, and what to do by when: tapshoal what-if ",
				     r->what_if, NULL));
	if (r->read_as)
		ts_doc_paragraph(doc, r->read_as);
	if (shows(&s, GUIDE))
		ts_doc_see(doc, ts_guide_alone);
}
