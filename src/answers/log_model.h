/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Beside what was read of a tank: what its animals like, what the model expected from the first
 * reading on, and where the routine takes it from here.
 */
#ifndef TS_ANSWERS_LOG_MODEL_H
#define TS_ANSWERS_LOG_MODEL_H

#include "answers/log.h"

/* So far a log looks ahead, days. */
#define TS_LOG_AHEAD_DAYS 56

/*
 * Fills values, expected and what comes of `io`, whose lines are filled: bands only where the
 * question has animals, the model only where it has a plan whose litres are known. TS_NO_MEMORY.
 */
TS_MUST_USE enum ts_status ts_log_model_fill(const struct ts_asking *asking,
	const struct ts_log_question *question, struct ts_log_result *io);

#endif
