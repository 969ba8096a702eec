/* SPDX-License-Identifier: Apache-2.0 */
/*
 * drift: the tank of a plan over the coming days. The answer is answers/drift.c's.
 */
#include "answers/drift.h"

#include "base/arena.h"
#include "cli/care_answer.h"
#include "report/drift_result.h"
#include "show/drift.h"

#define DAYS_DEFAULT 28
#define DAYS_MOST 3650

/* Catalogue, plan and species of the call. */
static enum ts_status open_plan(
	struct session *s, struct ts_plan *plan, const struct ts_species ***ret_species)
{
	const struct options *o = s->options;
	enum ts_status status;

	if (o->argument_count != 1 || o->days > DAYS_MOST) {
		ts_text_put(s->error, o->days > DAYS_MOST ? "--days takes 1 to 3650"
							  : "drift needs one plan; for example "
							    "tapshoal drift plan.yaml --days 28");
		return TS_BAD_INPUT;
	}
	status = file_plan(s, o->arguments[0], plan);
	if (status == TS_OK)
		status = answer_catalogue(s);
	if (o->top_up)
		plan->tank.top_up = o->top_up;
	if (status == TS_OK)
		status = answer_value(
			s, "--water-change", "water_change", o->water_change, &plan->tank);
	return status == TS_OK ? care_plan_species(s, plan, ret_species) : status;
}

enum ts_status command_drift(struct session *s)
{
	const struct ts_asking asking = care_asking(s);
	struct ts_plan plan;
	const struct ts_species **species;
	struct ts_drift_question question = {.plan = &plan};
	struct ts_drift_result r;
	struct ts_document doc;
	const char *refusal;
	enum ts_status status = open_plan(s, &plan, &species);

	if (status != TS_OK)
		return status;
	question.species = species;
	question.days = s->options->days ? (unsigned)s->options->days : DAYS_DEFAULT;
	status = ts_drift_answer(&asking, &question, &r, &refusal);
	ts_text_put(s->error, refusal);
	if (status != TS_OK)
		return status;
	if (s->options->format == FORMAT_JSON) {
		session_json(s, "drift", &ts_result_drift, &r);
		return TS_OK;
	}
	ts_doc_open(&doc, s->arena, "Where this tank drifts");
	doc.drawn = s->options->format == FORMAT_HTML;
	ts_show_drift(&doc, &r);
	session_write(s, &doc);
	return TS_OK;
}
