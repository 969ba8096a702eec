/* SPDX-License-Identifier: Apache-2.0 */
/*
 * find: the catalogue by name and family, by any word of a record, by length, source and water.
 */
#include "answers/find.h"

#include <string.h>

#include "catalogue/search.h"
#include "catalogue/traits.h"
#include "cli/commands.h"
#include "model/shape.h"
#include "report/find_result.h"
#include "show/find.h"
#include "words/names.h"

/* The readings that species have a band for; any other asks for something that no record tells. */
static bool take_water(struct session *s, struct ts_filter *filter)
{
	const struct ts_reading *r = &s->options->reading;
	const struct ts_measure *const of[TS_PARAMETER__COUNT] = {[TS_GH] = &r->gh_dh,
		[TS_KH] = &r->kh_dh,
		[TS_PH] = &r->ph,
		[TS_TEMPERATURE] = &s->options->temperature,
		[TS_SALINITY] = &r->salinity_g_l};

	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *field = &ts_shape_reading.fields[i];
		const struct ts_measure *m = (const void *)((const char *)r + field->offset);
		bool known = m == &r->gh_dh || m == &r->kh_dh || m == &r->ph ||
			     m == &r->salinity_g_l || m == &r->temp_c;

		if (field->kind != TS_MEASURE || known || m->kind == TS_MEASURE_NONE)
			continue;
		ts_text_puts(s->error, "no record tells the ", field->key,
			" that a species lives in; find takes --pH, --GH, --KH, --salinity and "
			"--temperature",
			NULL);
		return false;
	}
	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		filter->water[p] = *of[p];
	return true;
}

/* What the words of the call ask for, and what came of it. */
struct call {
	const char *pattern;     /* NULL: none */
	struct ts_profile asked; /* the water; nothing given: any */
	struct ts_keeping keeping;
	struct ts_find_hit *hits;
	size_t count;
	const struct ts_species *named; /* whose name it is; NULL: of none, or it was found by it */
	struct ts_candidates candidates; /* where nothing was found */
};

/* The water asked for as a profile, each figure as it was given. */
static void take_asked(const struct ts_filter *filter, struct call *ret)
{
	ret->keeping = (struct ts_keeping){.wild = filter->wild, .breeding = filter->breeding};
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_measure *m = &filter->water[p];

		if (m->kind != TS_MEASURE_NONE)
			ret->asked.at[p] = (struct ts_span){
				.given = true, .value = m->value, .low = m->low, .high = m->high};
	}
}

static bool make_filter(struct session *s, struct ts_filter *ret)
{
	const struct options *o = s->options;

	*ret = o->traits;
	ret->family = o->family;
	ret->source = o->source;
	ret->least_length_cm = o->min_length_cm.value;
	ret->greatest_length_cm = o->max_length_cm.value;
	ret->wild = o->keeping.wild;
	ret->breeding = o->keeping.breeding;
	return take_water(s, ret);
}

/* The pattern and, under it, where it is wrong. */
static void say_fault(struct ts_text *error, const char *pattern, const struct ts_pattern_fault *f)
{
	ts_text_puts(error, "the pattern is wrong at character ", NULL);
	ts_text_number(error, (double)f->column, 0);
	ts_text_puts(error, ": ", f->says, "\n  ", pattern, "\n  ", NULL);
	ts_text_fill(error, ' ', f->column - 1);
	ts_text_put(error, "^\n--fixed takes it as plain text");
}

static enum ts_status open_pattern(struct session *s, const char *text, struct ts_pattern **ret)
{
	struct ts_pattern_fault fault = {0};
	enum ts_status status = ts_pattern_open(text, s->options->fixed, NULL, ret, &fault);

	if (status == TS_BAD_INPUT)
		say_fault(s->error, text, &fault);
	return status;
}

static void write_answer(struct session *s, const struct ts_find_result *r)
{
	struct ts_document doc;

	if (s->options->format == FORMAT_JSON) {
		session_json(s, "find", &ts_result_find, r);
		return;
	}
	if (s->options->format == FORMAT_CSV) {
		session_csv(s, &ts_result_find_species, r->found, r->found_count);
		return;
	}
	ts_doc_open(&doc, s->arena, "Species found");
	doc.drawn = s->options->format == FORMAT_HTML;
	ts_show_find(&doc, r, s->options->summary, session_terminal(s) ? session_lines(s, 12) : 0);
	session_write(s, &doc);
}

static enum ts_status search(struct session *s, const struct ts_filter *filter,
	struct ts_pattern *pattern, struct call *io)
{
	const struct ts_search wanted = {filter, pattern, io->pattern, io->named, &io->candidates};
	enum ts_status status = ts_search(s->catalogue, &wanted, s->arena, &io->hits, &io->count);

	if (status == TS_BAD_INPUT)
		ts_text_puts(s->error,
			"the pattern takes more steps than a search has; "
			"write it simpler, or give --fixed",
			NULL);
	return status;
}

static enum ts_status answer_with(struct session *s, const struct call *a)
{
	const struct ts_asking asking = {
		.arena = s->arena, .practice = s->practice, .today = s->today};
	struct ts_find_question q = {.pattern = a->pattern,
		.catalogue = s->catalogue,
		.profile = &a->asked,
		.keeping = &a->keeping,
		.hits = a->hits,
		.hit_count = a->count,
		.candidates = &a->candidates,
		.unknown = !a->count && a->pattern && !a->named,
		.overlays_say = say_overlays_kept(s)};
	struct ts_find_result result;

	if (!ts_search_counts(s->catalogue, a->hits, a->count, s->arena, &q.counts) ||
		!ts_answer_find(&asking, &q, &result))
		return TS_NO_MEMORY;
	write_answer(s, &result);
	return TS_OK;
}

enum ts_status command_find(struct session *s)
{
	const struct options *o = s->options;
	struct call a = {.pattern = o->argument_count ? o->arguments[0] : NULL};
	struct ts_filter filter;
	struct ts_pattern *pattern = NULL;
	enum ts_status status = TS_BAD_INPUT;

	if (o->argument_count > 1) {
		ts_text_puts(s->error, "find takes one pattern; put '", a.pattern, " ",
			o->arguments[1], "' in quotes", NULL);
		return status;
	}
	if (!make_filter(s, &filter))
		return status;
	take_asked(&filter, &a);
	status = a.pattern ? open_pattern(s, a.pattern, &pattern) : TS_OK;
	if (!status)
		status = answer_catalogue(s);
	if (!status && a.pattern)
		(void)ts_catalogue_species(s->catalogue, a.pattern, &a.candidates);
	if (!status)
		status = search(s, &filter, pattern, &a);
	if (!status && !a.count && a.pattern) {
		a.named = session_species(s, a.pattern, &a.candidates);
		if (a.named)
			status = search(s, &filter, pattern, &a);
	}
	ts_pattern_close(pattern);
	if (a.count)
		a.candidates = (struct ts_candidates){0};
	if (!status)
		status = answer_with(s, &a);
	return status ? status : a.count ? TS_OK : TS_NO;
}
