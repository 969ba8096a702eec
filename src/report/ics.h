/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A calendar as a file, for a telephone or a desk: RFC 5545 (iCalendar), whole days alone. Every
 * entry has a UID that stays the same from run to run, so that a calendar that is read again moves
 * its entries instead of doubling them.
 */
#ifndef TS_REPORT_ICS_H
#define TS_REPORT_ICS_H

#include <stdbool.h>

#include "base/text.h"

struct ts_ics_event {
	const char *subject, *key; /* of what, and which: both together make the UID */
	const char *summary, *description;
	long day;            /* days since 1970-01-01 */
	unsigned every_days; /* and again so often; 0: once */
	unsigned times;      /* how often in all, then */
	bool rings;          /* with an alarm at nine in the morning */
};

/* Begins a calendar; `version` of the program. */
void ts_ics_open(struct ts_text *out, const char *version);
/* One entry of a whole day, written on the day `today`; a day beyond 1900..9999 adds nothing. */
void ts_ics_event(struct ts_text *out, const struct ts_ics_event *event, long today);
void ts_ics_close(struct ts_text *out);

#endif
