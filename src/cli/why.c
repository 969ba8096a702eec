/* SPDX-License-Identifier: Apache-2.0 */
/*
 * why: some species in full against the water, or against several. The words of the call become the
 * questions of answers/why.h and answers/why_waters.h.
 */
#include "cli/why.h"

#include "answers/why.h"
#include "base/arena.h"
#include "cli/batch.h"
#include "cli/care_answer.h"
#include "report/csv.h"
#include "report/why_result.h"
#include "show/sheet.h"
#include "show/why.h"
#include "words/names.h"

#define NAME_WORDS_MOST 5

/* "neon tetra" without its quotes: how many words make a name, which is said; 0: none do. */
static size_t unquoted(struct session *s, size_t first)
{
	const struct options *o = s->options;
	const char *name = o->arguments[first];

	for (size_t words = 2; words <= NAME_WORDS_MOST && first + words <= o->argument_count;
		words++) {
		struct ts_candidates candidates;

		name = ts_arena_join(s->arena, name, " ", o->arguments[first + words - 1], NULL);
		if (!name || !ts_catalogue_species(s->catalogue, name, &candidates))
			continue;
		ts_text_puts(
			s->error, "a name of several words stands in quotes: \"", name, "\"", NULL);
		return words;
	}
	return 0;
}

enum ts_status why_named(struct session *s, const struct ts_species ***ret)
{
	const struct options *o = s->options;
	const struct ts_species **found =
		ts_arena_array(s->arena, o->argument_count, sizeof *found);
	bool ok = true;

	if (!found)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < o->argument_count; i++) {
		struct ts_candidates candidates;
		size_t words;

		found[i] = session_species(s, o->arguments[i], &candidates);
		if (found[i])
			continue;
		ts_text_put(s->error, s->error->len ? "\n" : "");
		words = unquoted(s, i);
		if (!words)
			ts_say_candidates(s->error, o->arguments[i], &candidates);
		i += words ? words - 1 : 0;
		ok = false;
	}
	*ret = found;
	return ok ? TS_OK : TS_BAD_INPUT;
}

/* The water of the call; where none was given or kept there is none, and that is no mistake. */
static enum ts_status open_water(struct session *s, struct answer *ret, bool *ret_given)
{
	const struct options *o = s->options;
	enum ts_status status;

	*ret_given = true;
	if (o->has_reading || o->water_file || o->softened)
		return answer_open(s, ret);
	status = answer_kept(s, ret);
	if (status == TS_NO) {
		*ret_given = false;
		return answer_open_water(s, &(struct ts_water){0}, ret);
	}
	return status == TS_OK ? answer_open(s, ret) : status;
}

static enum ts_status ask(struct session *s, struct answer *a, struct ts_why_result *ret)
{
	const struct ts_asking asking = care_asking(s);
	const struct options *o = s->options;
	const struct ts_species **species = NULL;
	struct ts_why_question q = {
		.count = o->argument_count, .profile = &a->profile, .keeping = &a->keeping};
	enum ts_status status = open_water(s, a, &q.water_given);

	if (!status)
		status = why_named(s, &species);
	if (status)
		return status;
	q.species = species;
	if (a->assumed_litres > 0 || o->tank_file || o->size.length_cm > 0)
		q.tank = &a->tank;
	q.assumed_litres = a->assumed_litres;
	q.water_name = a->water.name;
	q.kept_age_days = a->kept_age_days;
	q.water_says = q.water_given ? say_water_kept(s, a) : NULL;
	q.animals_say = say_animals_kept(s);
	q.overlays_say = say_overlays_kept(s);
	return ts_answer_why(&asking, &q, ret);
}

static void write_answer(struct session *s, const struct answer *a, const struct ts_why_result *r)
{
	struct ts_document doc;

	ts_doc_open(&doc, s->arena, "Species against this water");
	doc.drawn = s->options->format == FORMAT_HTML;
	ts_show_sheet(&doc, a->water.name, r->profile);
	ts_show_why(&doc, r);
	session_write(s, &doc);
}

/* What a table of waters is asked: the animals, in the arena of the call. */
static enum ts_status open_table(void *state, struct session *s, const struct answer *a)
{
	struct ts_asking *asking = state;
	const struct ts_species **species = NULL;
	enum ts_status status = why_named(s, &species);

	(void)a;
	*asking = care_asking(s);
	asking->species = species;
	asking->species_count = s->options->argument_count;
	return status;
}

static bool answer_row(const void *state, struct session *row, const struct answer *a,
	const char *name, unsigned line, void *ret, bool *ret_nothing)
{
	struct ts_asking asking = *(const struct ts_asking *)state;
	struct ts_why_short_result *r = ret;

	asking.arena = row->arena;
	r->name = name;
	r->line = line;
	r->findings = batch_findings(row);
	if (!ts_answer_why_short(&asking, a ? &a->profile : NULL, a ? &a->keeping : NULL, r))
		return false;
	*ret_nothing |= a && !r->homes;
	return true;
}

/* Rows that are held at once. */
#define ROWS 256

static enum ts_status answer_table(struct session *s)
{
	struct ts_asking asking;
	const struct batch_question question = {
		"why", &ts_result_why_short, ROWS, &asking, open_table, answer_row};

	return batch_run(s, &question);
}

/* One water as a line of a table has it. */
static enum ts_status one_line(struct session *s)
{
	struct ts_why_short_result r = {0};
	struct ts_asking asking;
	struct answer a;
	bool given, nothing = false;
	enum ts_status status;

	if (s->options->waters.count > 1) {
		ts_text_put(s->error, "-f lines takes one water, or a table of them behind "
				      "--batch; give one -w");
		return TS_BAD_INPUT;
	}
	status = open_water(s, &a, &given);
	if (!status)
		status = open_table(&asking, s, &a);
	if (status)
		return status;
	if (!answer_row(&asking, s, &a, a.water.name, 0, &r, &nothing))
		return TS_NO_MEMORY;
	ts_result_json_line(s->out, TS_VERSION, "why", &ts_result_why_short, &r);
	return nothing ? TS_NO : TS_OK;
}

enum ts_status command_why(struct session *s)
{
	struct ts_why_result r;
	struct answer a;
	enum ts_status status = TS_BAD_INPUT;

	if (!s->options->argument_count) {
		ts_text_put(
			s->error, "why needs a species; for example tapshoal why guppy --GH 14");
		return status;
	}
	if (s->options->format == FORMAT_LINES && !s->options->batch_file)
		return one_line(s);
	if (s->options->batch_file &&
		(s->options->format == FORMAT_LINES || s->options->format == FORMAT_CSV))
		return answer_table(s);
	if (s->options->waters.count > 1 || s->options->batch_file)
		return why_waters(s);
	status = ask(s, &a, &r);
	if (status)
		return status;
	if (s->options->format == FORMAT_JSON)
		session_json(s, "why", &ts_result_why, &r);
	else if (s->options->format == FORMAT_CSV)
		session_csv(s, &ts_result_match, r.matches, r.animal_count);
	else
		write_answer(s, &a, &r);
	return r.suits ? TS_OK : TS_NO;
}
