/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the two halves of drift share: drift.c asks the simulation and fills the result,
 * drift_page.c says it in words.
 */
#ifndef TS_CLI_DRIFT_H
#define TS_CLI_DRIFT_H

#include "cli/commands.h"
#include "report/care_result.h"

/* Writes the answer as a document. */
void drift_write(struct session *session, const struct ts_drift_result *r);

/*
 * Days from the tank's last reading until the buffer is gone at the most that the animals may make
 * of the water; NAN: not within settled.days. TS_BAD_INPUT: cannot be computed, the session's error
 * says why.
 */
enum ts_status drift_buffer_days(struct session *session, const struct ts_plan *plan, double *ret);

#endif
