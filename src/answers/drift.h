/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Where a tank goes under its feeding and water changes: what moves, the first limit that is
 * reached and when, what the log shows beside the model, and the smallest change of water that
 * keeps it. The waters are stock/waters.h's, as in check.
 */
#ifndef TS_ANSWERS_DRIFT_H
#define TS_ANSWERS_DRIFT_H

#include <tapshoal/plan.h>

#include "answers/asking.h"
#include "answers/learned.h"
#include "stock/waters.h"

struct ts_drift_question {
	const struct ts_plan *plan;
	const struct ts_species *const *species; /* what stock[i].species means; none NULL */
	unsigned days;                           /* of the table, 1 or more */
};

struct ts_drift_day_result {
	double day, kh_dh, gh_dh, ph, ph_low, ph_high, tan_mg_l, no3_mg_l, conductivity_us_cm;
	bool filter_doubtful, change_due;
	struct ts_range kh_band, gh_band, no3_band; /* what it may be, by readings and by load */
};

struct ts_drift_level_result {
	double before_change, after_change;
};

struct ts_drift_steady_result {
	struct ts_drift_level_result kh_dh, gh_dh, no3_mg_l;
};

struct ts_drift_change_result {
	double share_percent, every_days, kh_low_dh, no3_high_mg_l;
};

/* Pairs are before, after. */
struct ts_drift_jump_result {
	double share_percent;
	struct ts_range gh_dh, kh_dh, ph, conductivity_us_cm, no3_mg_l, nh3_n_mg_l;
	bool safe_step;
	const char *says;
};

/* The newest reading of a value; NAN, not dated: as poured in, or no day is known. */
struct ts_drift_now_result {
	const char *parameter; /* "gh", "kh", "no3", "ph", "conductivity" */
	double value, age_days;
	bool read; /* in the tank; else it is taken as what is poured in */
};

/* A limit that the routine reaches. */
struct ts_drift_limit_result {
	const char *parameter;
	double limit;
	bool above;          /* what lies above it harms; else what lies below */
	double day;          /* 0: it stands beyond it now */
	bool mild;           /* told, and never first: pH by itself, and what is dissolved in all */
	double early, late;  /* at the most and least that animals and evaporation may do; late NAN:
				never */
	double age_days;     /* of the reading that the days are counted from; no row */
	const char *species; /* whose limit it is; NULL: everybody's */
	const char *says;
	const char
		*by_says; /* the same by the calendar; NULL: today is not known, or it is passed */
};

/* What the log shows of one value. */
struct ts_drift_measured_result {
	const char *parameter;
	double readings, days, first, last;
	struct ts_range a_week; /* what moves it by itself, beside changes and topping up */
	const char *says;
	bool moves; /* beyond the doubt of a reading; else it stands */
};

struct ts_drift_result {
	const char *name;
	const char *says, *because; /* the answer and the figures that decide */
	struct ts_texts remedies;   /* cheapest first */
	struct ts_texts asks;       /* what to read, and what it would change */
	double volume_l, nitrogen_mg_day, nitrogen_measured_mg_day, plant_share;
	bool measured_differs;
	double change_percent, change_every_days;
	struct ts_drift_now_result *now;
	size_t now_count;
	struct ts_drift_limit_result *limits; /* the first reached first */
	size_t limit_count;
	struct ts_drift_measured_result *measured;
	size_t measured_count;
	struct ts_learned learned;
	struct ts_drift_day_result *days;
	size_t day_count;
	const char *doubtful_says; /* of days marked so; NULL: none is */
	bool keeps;                /* the routine keeps the water; no row: `says` says it */
	bool grave;                /* ammonia, or the buffer: before all else; no row */
	const char *gone_says; /* when the buffer is gone by the calendar; NULL: it is not, or today
				* is not known */
	double buffer_gone_day, buffer_gone_day_early, buffer_gone_day_late;
	struct ts_drift_steady_result steady, steady_closed_form;
	struct ts_drift_change_result *smallest_safe_change;
	struct ts_drift_jump_result large_change;
	struct ts_texts assumed;
	const char *caution;
};

/*
 * TS_BAD_INPUT: `*ret_refusal` says why nothing follows. TS_NO_MEMORY. All belongs to the arena of
 * `asking`.
 */
TS_MUST_USE enum ts_status ts_drift_answer(const struct ts_asking *asking,
	const struct ts_drift_question *question, struct ts_drift_result *ret,
	const char **ret_refusal);

#endif
