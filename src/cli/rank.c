/* SPDX-License-Identifier: Apache-2.0 */
/*
 * rank: which species the water suits, best first, and what excludes each of the rest.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/commands.h"
#include "words/names.h"
#include "words/sentence.h"

static enum ts_status match_all(struct session *s, struct answer *a)
{
	a->matches = ts_arena_array(s->arena, s->catalogue->count, sizeof *a->matches);
	if (!a->matches)
		return TS_NO_MEMORY;
	a->count = s->catalogue->count;
	for (size_t i = 0; i < a->count; i++) {
		ts_match_species(s->catalogue->items[i], &a->profile, &s->options->keeping, NULL,
			&a->matches[i]);
		a->of[a->matches[i].verdict]++;
	}
	ts_match_sort(a->matches, a->count);
	return TS_OK;
}

static void verdict_line(struct ts_text *out, const struct answer *a)
{
	if (a->profile.poisons.found & (TS_POISON_AMMONIA | TS_POISON_NITRITE)) {
		ts_text_put(out, "Not now: ammonia or nitrite stands in this water, and no animal "
				 "goes into it.\n");
		return;
	}
	if (a->of[TS_SUITS] + a->of[TS_TOLERATES] == 0) {
		ts_text_put(out, a->of[TS_UNSURE] ? "Unsure: nothing can be called suitable yet, "
						  : "This water suits none of ");
		ts_text_number_short(
			out, (double)(a->of[TS_UNSURE] ? a->of[TS_UNSURE] : a->count), 0);
		ts_text_put(out,
			a->of[TS_UNSURE] ? " species wait on a measurement.\n" : " species.\n");
		return;
	}
	ts_text_put(out, "This water suits ");
	if (a->of[TS_SUITS])
		ts_text_number_short(out, (double)a->of[TS_SUITS], 0);
	else
		ts_text_put(out, "none");
	ts_text_put(out, " of ");
	ts_text_number_short(out, (double)a->count, 0);
	ts_text_put(out, " species; tolerated by ");
	ts_text_number_short(out, (double)a->of[TS_TOLERATES], 0);
	ts_text_put(out, a->of[TS_SUITS] ? " more.\n" : ".\n");
}

/* The parameter that excludes most. */
static void deciding_line(struct ts_text *out, const struct answer *a)
{
	size_t by[TS_PARAMETER__COUNT] = {0};
	int most = 0;

	if (a->profile.unusual & TS_UNUSUAL_SOFTENED || !a->profile.at[TS_GH].given ||
		a->profile.poisons.found & (TS_POISON_AMMONIA | TS_POISON_NITRITE))
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
	ts_text_number_short(out, (double)by[most], 0);
	ts_text_put(out, " species.\n");
}

static void one_line(struct ts_text *out, const struct ts_match *m, bool room)
{
	struct ts_text line;

	ts_text_open(&line, &out->allocator);
	print_name(&line, m->species);
	if (room) {
		ts_text_put(&line, ": ");
		print_room(&line, m->species);
		ts_text_put(&line, m->species->cautions ? "; caution: " : "");
		print_cautions(&line, m->species);
	}
	print_wrapped(out, ts_text_get(&line), 2);
	out->failed |= line.failed;
	ts_text_drop(&line);
}

static void reason(struct ts_text *out, const struct ts_match *m, const struct ts_profile *profile)
{
	struct ts_text line;

	ts_text_open(&line, &out->allocator);
	ts_say_copper(&line, m, profile);
	if (line.len)
		print_wrapped(out, ts_text_get(&line), 6);
	ts_text_drop(&line);
	if (m->limiting < 0)
		return;
	ts_say_parameter(&line, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	print_wrapped(out, ts_text_get(&line), 6);
	ts_text_drop(&line);
	ts_say_near_miss(&line, m);
	if (line.len)
		print_wrapped(out, ts_text_get(&line), 6);
	out->failed |= line.failed;
	ts_text_drop(&line);
}

static void section(struct ts_text *out, const struct answer *a, enum ts_verdict verdict,
	const char *title, bool quiet)
{
	if (!a->of[verdict])
		return;
	ts_text_puts(out, "\n", title, " (", NULL);
	ts_text_number_short(out, (double)a->of[verdict], 0);
	ts_text_put(out, ")\n");
	for (size_t i = 0; i < a->count; i++) {
		if (a->matches[i].verdict != verdict)
			continue;
		one_line(out, &a->matches[i], verdict <= TS_TOLERATES);
		if (!quiet)
			reason(out, &a->matches[i], &a->profile);
	}
}

static void print_text(struct ts_text *out, const struct answer *a, const struct options *o,
	const struct ts_catalogue *catalogue)
{
	verdict_line(out, a);
	deciding_line(out, a);
	ts_text_put(out, "\n");
	print_water(out, a, o);
	ts_say_overlays(out, catalogue);
	print_notes(out, a);
	section(out, a, TS_SUITS, "THE WATER SUITS", o->quiet);
	section(out, a, TS_TOLERATES, "TOLERATE IT", o->quiet);
	section(out, a, TS_UNSURE, "UNSURE", o->quiet);
	section(out, a, TS_EXCLUDED, "EXCLUDED", o->quiet);
	ts_text_put(out, "\nThe water is one question; room and company are another. Local law and "
			 "a vet\ncome before any list. Never release an animal.\n");
}

enum ts_status command_rank(struct session *s)
{
	struct answer a;
	enum ts_status status = TS_BAD_INPUT;

	if (s->options->argument_count) {
		ts_text_puts(s->error, "rank takes no '", s->options->arguments[0],
			"'; for one species ask tapshoal why", NULL);
		return status;
	}
	status = answer_open(s, &a);
	if (status)
		return status;
	status = match_all(s, &a);
	if (status)
		return status;
	if (s->options->json)
		print_json(s->out, &a, "rank");
	else
		print_text(s->out, &a, s->options, s->catalogue);
	return a.of[TS_SUITS] + a.of[TS_TOLERATES] ? TS_OK : TS_NO;
}
