/* SPDX-License-Identifier: Apache-2.0 */
/*
 * log: a tank, plan or water file of the call becomes the question of answers/log.h.
 */
#include <string.h>

#include "answers/log.h"
#include "cli/care_answer.h"
#include "records/kind.h"
#include "report/log_result.h"
#include "show/log.h"

/* Lines where somebody reads on a terminal; --all has no end. */
#define LINES_SHOWN 20

static void of_tank(const struct ts_tank *tank, struct ts_log_question *ret)
{
	ret->readings = tank->readings;
	ret->reading_count = tank->reading_count;
	ret->events = tank->events;
	ret->event_count = tank->event_count;
}

/* The animals of a plan; a name that is not known leaves their bands out, and is told. */
static enum ts_status look_up(struct session *s, struct ts_plan *plan, struct ts_log_question *ret)
{
	const struct ts_species **species = NULL;
	enum ts_status status;

	ret->plan = plan;
	if (!plan->stock_count)
		return TS_OK;
	status = answer_catalogue(s);
	if (!status)
		status = care_plan_species(s, plan, &species);
	ret->species = status ? NULL : species;
	if (status != TS_BAD_INPUT || !s->error->len)
		return status;
	ret->unknown = ts_arena_text(s->arena, ts_text_get(s->error), s->error->len);
	ts_text_clear(s->error);
	return ret->unknown ? TS_OK : TS_NO_MEMORY;
}

static enum ts_status load(struct session *s, const char *file, struct ts_log_question *ret)
{
	const struct ts_shape *kind;
	struct ts_water water;
	struct ts_tank tank;
	struct ts_plan *plan = ts_arena_take(s->arena, sizeof *plan);
	enum ts_status status = plan ? ts_records_kind(s->system, file, NULL, &kind) : TS_NO_MEMORY;

	if (!status && kind == &ts_shape_plan) {
		status = file_plan(s, file, plan);
		if (!status) {
			of_tank(&plan->tank, ret);
			ret->name = plan->name;
			status = look_up(s, plan, ret);
		}
	} else if (!status && kind == &ts_shape_tank) {
		status = file_tank(s, file, &tank);
		if (!status)
			of_tank(&tank, ret);
		ret->name = status ? NULL : tank.name;
	} else if (!status) {
		status = file_water(s, file, &water);
		if (!status)
			*ret = (struct ts_log_question){.name = water.name,
				.readings = water.readings,
				.reading_count = water.reading_count};
	}
	return status;
}

static void show(struct session *s, const struct ts_log_result *r)
{
	const struct options *o = s->options;
	struct ts_document doc;

	if (o->format == FORMAT_JSON) {
		session_json(s, "log", &ts_result_log, r);
		return;
	}
	if (o->format == FORMAT_CSV) {
		session_csv(s, &ts_result_log_line, r->lines, r->line_count);
		return;
	}
	ts_doc_open(&doc, s->arena, r->name ? r->name : "What was noted");
	doc.drawn = o->format == FORMAT_HTML;
	ts_show_log(&doc, r, o->all || o->format == FORMAT_HTML ? 0 : LINES_SHOWN);
	session_write(s, &doc);
}

enum ts_status command_log(struct session *s)
{
	const struct options *o = s->options;
	struct ts_log_question question = {0};
	struct ts_asking asking;
	struct ts_log_result r;
	enum ts_status status;

	if (o->argument_count != 1 || strcmp(o->arguments[0], "-") == 0) {
		ts_text_put(s->error, "log needs one file: a tank, a plan or a water; for example "
				      "tapshoal log tank.yaml");
		return TS_BAD_INPUT;
	}
	status = load(s, o->arguments[0], &question);
	if (status)
		return status;
	asking = care_asking(s);
	status = ts_answer_log(&asking, &question, &r);
	if (status)
		return status;
	show(s, &r);
	return r.verdict == ts_log_verdict_words[0] ? TS_NO : TS_OK;
}
