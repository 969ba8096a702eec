/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One change of water of a way from one water to another, as remake and arrive have it.
 */
#ifndef TS_ANSWERS_STAGE_LINE_H
#define TS_ANSWERS_STAGE_LINE_H

#include <stdbool.h>
#include <stddef.h>

/* NAN is not known. */
struct ts_stage_line {
	size_t day;
	double change_l, change_percent;
	double gh_dh, kh_dh, ph, conductivity_us_cm, nh3_mg_l;
	bool stop;
	bool raises_ph; /* ammonia must read nil first; no row */
	const char *test;
};

#endif
