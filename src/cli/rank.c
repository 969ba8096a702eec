/* SPDX-License-Identifier: Apache-2.0 */
/*
 * rank: which species the water suits, best first, and what excludes each of the rest.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/rank.h"
#include "words/sentence.h"

bool rank_open(const struct session *s, struct answer *a)
{
	a->count = s->catalogue->count;
	a->matches = ts_arena_array(s->arena, a->count, sizeof *a->matches);
	return a->matches;
}

void rank_match(const struct session *s, struct answer *a)
{
	memset(a->of, 0, sizeof a->of);
	for (size_t i = 0; i < a->count; i++) {
		ts_match_species(s->catalogue->items[i], &a->profile, &a->keeping, s->practice,
			&a->matches[i]);
		a->of[a->matches[i].verdict]++;
	}
	ts_match_sort(a->matches, a->count);
}

static void count(struct ts_text *text, size_t n)
{
	ts_text_number_short(text, (double)n, 0);
}

static void verdict(struct ts_text *out, const struct answer *a)
{
	if (a->profile.poisons.found & (TS_POISON_AMMONIA | TS_POISON_NITRITE)) {
		ts_text_put(out, "Not now: ammonia or nitrite stands in this water, and no animal "
				 "goes into it.");
		return;
	}
	if (a->profile.poisons.found & TS_POISON_NO_OXYGEN &&
		a->of[TS_SUITS] + a->of[TS_TOLERATES] == 0) {
		ts_text_put(out, "Not now: this water holds too little oxygen; air it, and read it "
				 "again before any animal goes into it.");
		return;
	}
	if (a->of[TS_SUITS] + a->of[TS_TOLERATES] == 0) {
		ts_text_put(out, a->of[TS_UNSURE] ? "Unsure: nothing can be called suitable yet, "
						  : "This water suits none of ");
		count(out, a->of[TS_UNSURE] ? a->of[TS_UNSURE] : a->count);
		ts_text_put(
			out, a->of[TS_UNSURE] ? " species wait on a measurement." : " species.");
		return;
	}
	ts_text_put(out, "This water suits ");
	if (a->of[TS_SUITS])
		count(out, a->of[TS_SUITS]);
	else
		ts_text_put(out, "none");
	ts_text_put(out, " of ");
	count(out, a->count);
	ts_text_put(out, " species; tolerated by ");
	count(out, a->of[TS_TOLERATES]);
	ts_text_put(out, a->of[TS_SUITS] ? " more." : ".");
}

/* The parameter that excludes most. */
static void deciding(struct ts_text *out, const struct answer *a)
{
	size_t by[TS_PARAMETER__COUNT] = {0};
	int most = 0;

	if (a->profile.unusual & TS_UNUSUAL_SOFTENED || !a->profile.at[TS_GH].given ||
		a->profile.poisons.found &
			(TS_POISON_AMMONIA | TS_POISON_NITRITE | TS_POISON_NO_OXYGEN))
		return;
	for (size_t i = 0; i < a->count; i++) {
		if (a->matches[i].verdict == TS_EXCLUDED && a->matches[i].limiting >= 0)
			by[a->matches[i].limiting]++;
	}
	for (int p = 1; p < TS_PARAMETER__COUNT; p++)
		most = by[p] > by[most] ? p : most;
	if (!by[most])
		return;
	ts_text_puts(out, ts_parameter_rows[most].label, " decides most: it excludes ", NULL);
	count(out, by[most]);
	ts_text_put(out, " species.");
}

static struct ts_node *entry(struct ts_document *doc, struct ts_text *text, const struct answer *a,
	const struct ts_match *m)
{
	say_name(text, m->species);
	if (m->verdict <= TS_TOLERATES) {
		ts_text_put(text, ": ");
		say_room(text, m->species);
		ts_text_put(text, m->species->cautions ? "; caution: " : "");
		say_cautions(text, m->species);
		say_too_short(text, a, m->species);
	}
	return ts_doc_entry(doc, ts_doc_take(doc, text));
}

static void line(struct ts_document *doc, struct ts_node *node, struct ts_text *text, int hue_of)
{
	struct ts_line *added;

	if (!text->len)
		return;
	added = ts_doc_line(doc, node, ts_doc_take(doc, text), NULL);
	if (added)
		added->hue = say_hue(hue_of);
}

static void reasons(struct ts_document *doc, struct ts_node *node, struct ts_text *text,
	const struct ts_match *m, const struct ts_profile *profile)
{
	ts_say_copper(text, m, profile);
	line(doc, node, text, -1);
	if (m->limiting < 0 || m->verdict == TS_SUITS)
		return;
	ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	line(doc, node, text, m->limiting);
	ts_say_near_miss(text, m);
	line(doc, node, text, -1);
}

static void section(struct ts_document *doc, struct ts_text *text, const struct answer *a,
	enum ts_verdict of, const char *title)
{
	if (!a->of[of])
		return;
	ts_text_puts(text, title, " (", NULL);
	count(text, a->of[of]);
	ts_text_put(text, ")");
	ts_doc_heading(doc, 0, ts_doc_take(doc, text));
	for (size_t i = 0; i < a->count; i++) {
		const struct ts_match *m = &a->matches[i];
		struct ts_node *node = m->verdict == of ? entry(doc, text, a, m) : NULL;

		if (!node)
			continue;
		reasons(doc, node, text, m, &a->profile);
		say_tags(doc, node, m->species, ts_verdict_words[m->verdict]);
		say_bars(doc, node, m, &a->profile);
	}
}

static void write_answer(struct session *s, const struct answer *a)
{
	struct ts_document doc;
	struct ts_text text;
	const char *first;

	ts_doc_open(&doc, s->arena, "Fish for this water");
	doc.drawn = s->options->format == FORMAT_HTML;
	ts_text_open(&text, &s->arena->allocator);
	say_sheet(&doc, a->water.name, &a->profile);
	verdict(&text, a);
	first = ts_doc_take(&doc, &text);
	deciding(&text, a);
	ts_doc_verdict(&doc, first, ts_doc_take(&doc, &text));
	say_water(&doc, a, s->options);
	say_overlays(&doc, s->catalogue);
	say_notes(&doc, a);
	section(&doc, &text, a, TS_SUITS, "THE WATER SUITS");
	section(&doc, &text, a, TS_TOLERATES, "TOLERATE IT");
	section(&doc, &text, a, TS_UNSURE, "UNSURE");
	section(&doc, &text, a, TS_EXCLUDED, "EXCLUDED");
	ts_doc_paragraph(&doc, "The water is one question; room and company are another. Local law "
			       "and a vet come before any list. Never release an animal.");
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_write(s, &doc);
}

/* Mostly a flag without its dashes, or a value with a blank that stands in no quotes. */
static void refuse_word(struct session *s, const char *word)
{
	const struct ts_field *reading = ts_shape_field_caseless(&ts_shape_reading, word);

	ts_text_puts(s->error, "rank takes no '", word, "'; ", NULL);
	if (reading)
		ts_text_puts(s->error, "write it as a flag, --", reading->key, NULL);
	else
		ts_text_put(s->error,
			"values with a blank stand in quotes (--GH \"14 dH\"); for one "
			"species ask tapshoal why");
}

enum ts_status command_rank(struct session *s)
{
	struct answer a;
	enum ts_status status = TS_BAD_INPUT;

	if (s->options->argument_count) {
		refuse_word(s, s->options->arguments[0]);
		return status;
	}
	if (s->options->batch_file)
		return rank_batch(s);
	status = answer_open(s, &a);
	if (status)
		return status;
	if (!rank_open(s, &a))
		return TS_NO_MEMORY;
	rank_match(s, &a);
	if (s->options->format == FORMAT_JSON)
		rank_json(s, &a, "rank");
	else if (s->options->format == FORMAT_CSV)
		rank_csv(s, &a);
	else
		write_answer(s, &a);
	return a.of[TS_SUITS] + a.of[TS_TOLERATES] ? TS_OK : TS_NO;
}
