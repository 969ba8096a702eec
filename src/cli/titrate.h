/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the two halves of titrate share: titrate.c asks the chemistry and fills the result,
 * titrate_page.c says it in words.
 */
#ifndef TS_CLI_TITRATE_H
#define TS_CLI_TITRATE_H

#include "care/titrate.h"
#include "cli/commands.h"
#include "report/care_result.h"
#include "water/facts.h"

struct titration {
	struct session *session;
	struct answer answer;
	struct ts_water_facts facts;
	struct ts_solution water;
	double times_air; /* CO2 of the running tank */
	bool base;
};

/* One step of the engine as a row of the result. */
struct ts_titrate_step_result titrate_step_result(const struct ts_titration_step *step);
/* Writes the answer as a document. */
void titrate_write(const struct titration *t, const struct ts_titrate_result *r);

#endif
