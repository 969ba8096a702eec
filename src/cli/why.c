/* SPDX-License-Identifier: Apache-2.0 */
/*
 * why: some species in full against the water, in the order of the question: the deciding number,
 * the water, company, room, cautions, sources.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/commands.h"
#include "model/shape.h"
#include "words/names.h"
#include "words/sentence.h"

static enum ts_status match_named(struct session *s, struct answer *a)
{
	const struct options *o = s->options;
	bool ok = true;

	a->matches = ts_arena_array(s->arena, o->argument_count, sizeof *a->matches);
	if (!a->matches)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < o->argument_count; i++) {
		struct ts_candidates candidates;
		const struct ts_species *species =
			ts_catalogue_species(s->catalogue, o->arguments[i], &candidates);

		if (!species) {
			ts_text_put(s->error, s->error->len ? "\n" : "");
			ts_say_candidates(s->error, o->arguments[i], &candidates);
			ok = false;
			continue;
		}
		ts_match_species(species, &a->profile, &o->keeping, NULL, &a->matches[a->count]);
		a->of[a->matches[a->count++].verdict]++;
	}
	return ok ? TS_OK : TS_BAD_INPUT;
}

static void say_verdict(
	struct ts_text *out, const struct ts_match *m, const struct ts_profile *profile)
{
	static const char *const says[TS_VERDICT__COUNT] = {
		"this water suits it", "it tolerates this water", "unsure", "not in this water"};

	print_name(out, m->species);
	ts_text_puts(out, ": ", says[m->verdict], "\n", NULL);
	if (!isnan(m->copper_borne_mg_l))
		ts_say_copper(out, m, profile);
	else if (profile->poisons.found & (TS_POISON_AMMONIA | TS_POISON_NITRITE))
		ts_text_put(out, "Ammonia or nitrite stands in the water: see below");
	else if (m->limiting >= 0)
		ts_say_parameter(out, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	else if (m->gh_missing)
		ts_text_put(out, "GH is not given, and it decides most");
	else
		ts_text_put(out, "Everything that was measured lies in its comfortable range");
	ts_text_put(out, "\n");
}

static void say_parameters(struct ts_text *out, const struct ts_match *m)
{
	ts_text_put(out, "\n  The water\n");
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_parameter_fit *f = &m->at[p];

		if (p == TS_SALINITY && f->uncomfortable_by == 0)
			continue;
		ts_text_put(out, "    ");
		ts_say_parameter(out, (enum ts_parameter)p, f);
		ts_text_put(out, "\n      tolerated ");
		ts_say_range(out, &f->tolerated, 1);
		ts_text_puts(out, " (", f->source[0], f->variant ? ", " : "",
			f->variant ? f->variant : "", ")\n", NULL);
	}
}

static void say_cautions(struct ts_text *out, const struct ts_species *s)
{
	if (s->cautions) {
		ts_text_put(out, "  Cautions: ");
		print_cautions(out, s);
		ts_text_put(out, "\n");
	}
	for (size_t i = 0; i < s->listed.count; i++)
		ts_text_puts(out, "  Listed under ", s->listed.items[i],
			": ask your authority before anything else.\n", NULL);
	if (s->disputed) {
		ts_text_put(out, "  Disputed: ");
		print_wrapped(out, s->disputed, 4);
	}
}

static void print_one(
	struct ts_text *out, const struct ts_match *m, const struct ts_profile *profile)
{
	const struct ts_species *s = m->species;

	say_verdict(out, m, profile);
	say_parameters(out, m);
	ts_text_puts(out, "  Comes from ", ts_words_home_water_said[s->home_water], ".\n", NULL);
	ts_text_put(out, "  Room: ");
	print_room(out, s);
	ts_text_put(out, " long or more.\n  Company: settled from ");
	ts_text_number_short(out, s->group.least, 0);
	ts_text_put(out, ", comfortable from ");
	ts_text_number_short(out, s->group.comfortable, 0);
	ts_text_put(out, ".\n");
	say_cautions(out, s);
	ts_text_put(out, "  Sources:");
	for (size_t i = 0; i < s->sources.count; i++)
		ts_text_puts(out, i ? ", " : " ", s->sources.items[i], NULL);
	ts_text_put(out, s->sources.count ? "; the rest common practice or memory, as marked\n"
					  : " no publication; common practice or memory\n");
}

enum ts_status command_why(struct session *s)
{
	struct answer a;
	enum ts_status status = TS_BAD_INPUT;

	if (!s->options->argument_count) {
		ts_text_put(
			s->error, "why needs a species; for example tapshoal why guppy --GH 14");
		return status;
	}
	status = answer_open(s, &a);
	if (status)
		return status;
	status = match_named(s, &a);
	if (status)
		return status;
	if (s->options->json) {
		print_json(s->out, &a, "why");
	} else {
		for (size_t i = 0; i < a.count; i++) {
			print_one(s->out, &a.matches[i], &a.profile);
			ts_text_put(s->out, "\n");
		}
		print_water(s->out, &a, s->options);
		ts_say_overlays(s->out, s->catalogue);
		print_notes(s->out, &a);
	}
	return a.of[TS_SUITS] + a.of[TS_TOLERATES] ? TS_OK : TS_NO;
}
