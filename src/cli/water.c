/* SPDX-License-Identifier: Apache-2.0 */
/*
 * water: what is this water? --against puts another beside it. The answer is answers/water.c's.
 */
#include "answers/water.h"

#include <math.h>

#include "cli/care_answer.h"
#include "report/water_result.h"
#include "show/water.h"

/* The sample's temperature, not the tank's: typed as --temperature it is the sample's. */
static double sample_temp_c(const struct options *o)
{
	return o->temperature.kind == TS_MEASURE_NONE ? (double)NAN : o->temperature.value;
}

/* The other water, and the season of both. */
static enum ts_status open_against(
	struct session *s, struct ts_water *water, struct ts_water *other)
{
	struct ts_water *const both[] = {water, other};
	enum ts_status status = file_water(s, s->options->against, other);

	return status == TS_OK ? answer_season(s, both, 2) : status;
}

enum ts_status command_water(struct session *s)
{
	const struct ts_asking asking = care_asking(s);
	const struct ts_keeping keeping = {.fresh = s->options->fresh, .acids = s->options->acids};
	struct answer answer;
	struct ts_water other;
	struct ts_water_result r;
	struct ts_document doc;
	enum ts_status status = answer_subject(s, &answer);

	/* Typed beside a file, or with what lies in a tank, readings are the tank's. */
	if (status == TS_OK &&
		((s->options->against && s->options->has_reading) || s->options->acids))
		answer.water.kind = TS_WATER_TANK;
	if (status == TS_OK && s->options->against)
		status = open_against(s, &answer.water, &other);
	if (status == TS_OK)
		status = ts_water_answer(&asking,
			&(struct ts_water_question){&answer.water, &keeping, answer.kept_age_days,
				sample_temp_c(s->options), s->options->against ? &other : NULL},
			&r);
	if (status != TS_OK)
		return status;
	if (s->options->format == FORMAT_JSON) {
		session_json(s, "water", &ts_result_water, &r);
	} else {
		ts_doc_open(&doc, s->arena, "What this water is");
		ts_show_water(&doc, &r);
		session_write(s, &doc);
	}
	return ts_water_answered(&r) ? TS_OK : TS_NO;
}
