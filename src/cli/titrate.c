/* SPDX-License-Identifier: Apache-2.0 */
/*
 * titrate: what strong acid or base does to a water; the answer is answers/titrate.c's.
 */
#include "answers/titrate.h"

#include <math.h>

#include "cli/care_answer.h"
#include "report/titrate_result.h"
#include "show/titrate.h"

#define TOWARDS_LOW 4.0
#define TOWARDS_HIGH 9.5
#define DOSE_LEAST 0.001

/* What is wrong with the flags of the call, or NULL. */
static const char *wrong_flags(const struct options *o)
{
	if (o->towards.kind != TS_MEASURE_NONE &&
		!(o->towards.value >= TOWARDS_LOW && o->towards.value <= TOWARDS_HIGH))
		return "--towards takes a pH that somebody might wish for, 4 to 9.5";
	if (o->dose.kind != TS_MEASURE_NONE && !(o->dose.value >= DOSE_LEAST))
		return "--dose takes 0.001 meq/L or more; base is --base";
	return NULL;
}

static double asked(const struct ts_measure *m)
{
	return m->kind == TS_MEASURE_NONE ? (double)NAN : m->value;
}

enum ts_status command_titrate(struct session *s)
{
	const struct options *o = s->options;
	const struct ts_asking asking = care_asking(s);
	struct answer answer;
	struct ts_titrate_result r;
	struct ts_document doc;
	enum ts_status status;

	if (wrong_flags(o)) {
		ts_text_put(s->error, wrong_flags(o));
		return TS_BAD_INPUT;
	}
	status = answer_subject(s, &answer);
	if (status == TS_OK)
		status = ts_titrate_answer(&asking,
			&(struct ts_titrate_question){&answer.water, &o->keeping,
				answer.kept_age_days, o->base, o->nightly, asked(&o->dose),
				asked(&o->towards)},
			&r);
	if (status != TS_OK)
		return status;
	if (o->format == FORMAT_JSON) {
		session_json(s, "titrate", &ts_result_titrate, &r);
	} else {
		ts_doc_open(&doc, s->arena, "Acid against this water");
		doc.drawn = s->options->format == FORMAT_HTML;
		doc.brief = s->options->format == FORMAT_BRIEF;
		ts_show_titrate(&doc, &r);
		session_write(s, &doc);
	}
	return r.cannot ? TS_NO : TS_OK;
}
