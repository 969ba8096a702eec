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

/* `plan`: where the tank and its animals go. */
static void of_plan(const struct ts_plan *plan, struct ts_log_question *ret)
{
	ret->plan = plan;
	ret->readings = plan->tank.readings;
	ret->reading_count = plan->tank.reading_count;
	ret->events = plan->tank.events;
	ret->event_count = plan->tank.event_count;
}

static enum ts_status load(
	struct session *s, const char *file, struct ts_plan *plan, struct ts_log_question *ret)
{
	const struct ts_shape *kind;
	struct ts_water water;
	enum ts_status status = ts_records_kind(s->system, file, NULL, &kind);

	if (!status && kind == &ts_shape_plan) {
		status = file_plan(s, file, plan);
		if (!status)
			of_plan(plan, ret);
		ret->name = status ? NULL : plan->name;
	} else if (!status && kind == &ts_shape_tank) {
		status = file_tank(s, file, &plan->tank);
		if (!status)
			of_plan(plan, ret);
		ret->name = status ? NULL : plan->tank.name;
	} else if (!status) {
		status = file_water(s, file, &water);
		if (!status)
			*ret = (struct ts_log_question){.name = water.name,
				.readings = water.readings,
				.reading_count = water.reading_count};
	}
	return status || !ret->plan ? status
				    : care_species_if_known(s, plan, &ret->species, &ret->unknown);
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
	ts_show_log(&doc, r, o->format == FORMAT_HTML ? 0 : session_lines(s, LINES_SHOWN));
	session_write(s, &doc);
}

enum ts_status command_log(struct session *s)
{
	const struct options *o = s->options;
	struct ts_log_question question = {0};
	struct ts_plan plan = {0};
	struct ts_asking asking;
	struct ts_log_result r;
	enum ts_status status;

	if (o->argument_count != 1 || strcmp(o->arguments[0], "-") == 0) {
		ts_text_put(s->error, "log needs one file: a tank, a plan or a water; for example "
				      "tapshoal log tank.yaml");
		return TS_BAD_INPUT;
	}
	status = load(s, o->arguments[0], &plan, &question);
	if (status)
		return status;
	asking = care_asking(s);
	status = ts_answer_log(&asking, &question, &r);
	if (status)
		return status;
	show(s, &r);
	return r.verdict == ts_log_verdict_words[0] ? TS_NO : TS_OK;
}
