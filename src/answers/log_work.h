/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the files of the log's answer: log.c judges the courses, log_lines.c makes the days.
 */
#ifndef TS_ANSWERS_LOG_WORK_H
#define TS_ANSWERS_LOG_WORK_H

#include "answers/log.h"
#include "stock/waters.h"

struct log_work {
	const struct ts_asking *asking;
	const struct ts_log_question *question;
	struct ts_text text;
	const struct ts_waters *waters; /* of a tank's log; NULL: there are none */
	struct ts_log_result r;
};

/* The text so far as a sentence of the answer. */
const char *log_keep(struct log_work *work);
/* A number into it, and what stands behind. */
void log_put(struct log_work *work, double value, int decimals, const char *after);

/* Fills lines and span. */
void log_lines(struct log_work *work);

#endif
