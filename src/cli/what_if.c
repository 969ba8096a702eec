/* SPDX-License-Identifier: Apache-2.0 */
/*
 * what-if: the first word is the question, the rest a plan as check takes one. Where the question
 * is about another water, the water of the call is that one, and not the plan's.
 */
#include "answers/what_if.h"

#include <string.h>

#include "base/arena.h"
#include "cli/care_answer.h"
#include "cli/check_call.h"
#include "report/what_if_result.h"
#include "show/what_if.h"

struct call {
	struct ts_plan plan;
	const struct ts_species **species;
	struct answer other;
	bool has_other;
	const char *unknown;
};

static double figure(const struct ts_measure *m)
{
	return m->kind != TS_MEASURE_NONE && isfinite(m->high) ? m->high : (double)NAN;
}

/* The water there: of -w or of reading flags; of a tank taken over the kept tap too. */
static enum ts_status read_other(
	struct session *s, const struct ts_what_if_row *row, struct call *c)
{
	const struct options *o = s->options;
	enum ts_status status;

	if (!(row->reckons & TS_LASTS_OTHER_WATER))
		return TS_OK;
	if (o->water_file || o->has_reading)
		status = answer_water(s, &c->other);
	else if (row == &ts_what_if_rows[TS_IF_TAKEN_OVER])
		status = answer_kept(s, &c->other);
	else
		return TS_OK;
	c->has_other = status == TS_OK;
	return status == TS_NO ? TS_OK : status;
}

/* The call without its question, and without the water that was another. All live there. */
static enum ts_status read_plan(struct session *s, const struct ts_what_if_row *row, struct call *c)
{
	const struct options *given = s->options;
	struct options *o = ts_arena_take(s->arena, sizeof *o);
	enum ts_status status;

	if (!o)
		return TS_NO_MEMORY;
	*o = *given;
	o->argument_count--;
	memmove(o->arguments, o->arguments + 1, o->argument_count * sizeof *o->arguments);
	if (row->reckons & TS_LASTS_OTHER_WATER) {
		o->water_file = NULL;
		o->waters.count = 0;
		o->has_reading = false;
	}
	s->options = o;
	status = check_call_plan(s, &c->plan, &c->species, &c->unknown);
	for (size_t i = 0; !status && i < c->plan.stock_count; i++)
		c->plan.stock[i].since = c->plan.stock[i].since ? c->plan.stock[i].since : "";
	return status;
}

static enum ts_status refuse(struct session *s)
{
	ts_text_puts(s->error, "'", s->options->arguments[0], "' is no question; there are", NULL);
	for (size_t i = 0; i < TS_IF__COUNT; i++)
		ts_text_puts(s->error, i ? ", " : " ", ts_what_if_rows[i].id, NULL);
	return TS_BAD_INPUT;
}

enum ts_status command_what_if(struct session *s)
{
	struct call *c = ts_arena_take(s->arena, sizeof *c);
	struct ts_what_if_question q = {
		.hours = figure(&s->options->hours), .room_c = figure(&s->options->room)};
	struct ts_what_if_result r;
	struct ts_document doc;
	struct ts_asking asking;
	enum ts_status status = c ? TS_OK : TS_NO_MEMORY;

	if (!status && s->options->argument_count) {
		q.row = ts_what_if_of(s->options->arguments[0]);
		status = q.row ? read_other(s, q.row, c) : refuse(s);
		if (!status)
			status = read_plan(s, q.row, c);
		q.plan = &c->plan;
		q.species = c->species;
		q.other = c->has_other ? &c->other.water : NULL;
		q.unknown = c->unknown;
	}
	if (status)
		return status;
	asking = care_asking(s);
	status = ts_answer_what_if(&asking, &q, &r);
	if (status)
		return status;
	if (s->options->format == FORMAT_JSON) {
		session_json(s, "what-if", &ts_result_what_if, &r);
		return TS_OK;
	}
	ts_doc_open(&doc, s->arena, r.asks ? r.asks : "What may happen to a tank");
	doc.drawn = s->options->format == FORMAT_HTML;
	ts_show_what_if(&doc, &r);
	session_write(s, &doc);
	return TS_OK;
}
