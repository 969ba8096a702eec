/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the files of the answer about drift: drift.c asks the simulation, drift_limits.c finds
 * what is reached when, drift_says.c judges and says it.
 */
#ifndef TS_ANSWERS_DRIFT_WORK_H
#define TS_ANSWERS_DRIFT_WORK_H

#include "answers/drift.h"

/* What moves in a tank. */
enum ts_drift_moves {
	TS_MOVES_GH,
	TS_MOVES_KH,
	TS_MOVES_NO3,
	TS_MOVES_PH,
	TS_MOVES_CONDUCTIVITY,
	TS_MOVES__COUNT
};
/* Those that a log is fitted to, in the order of enum ts_fit_what. */
#define TS_MOVES_FITTED (TS_MOVES_NO3 + 1)

struct ts_drift_moves_row {
	const char *key, *label, *unit;
	enum ts_now_value value;
	int decimals;
};

extern const struct ts_drift_moves_row ts_drift_moves_rows[TS_MOVES__COUNT];

struct drift_work {
	const struct ts_asking *asking;
	const struct ts_drift_question *question;
	const struct ts_waters *waters;
	struct ts_drift_result *ret;
	struct ts_text text;
	struct ts_drift_day today; /* day 0 of the simulation */
	double kh_read;            /* dH, by the newest reading alone */
	bool kh_known, gh_known;
	/* A resident that does not bear the water as it is now; NULL: none is known. */
	const struct ts_species *unfit;
	enum ts_drift_moves unfit_what;
	double unfit_at;
	bool unfit_above;
	double no3_most; /* nitrate that the most sensitive animal of the list is comfortable to */
};

/* Days since the reading from which a value is followed; 0: it is not dated. */
double drift_age(const struct drift_work *work, enum ts_now_value value);
/* Days from a reading of `value` on; late NAN: perhaps never. */
struct drift_days {
	enum ts_now_value value;
	double early, about, late;
};
/* "KH 2 is reached ...", as ts_say_coming() has it. NULL: today is not known. */
const char *drift_coming(struct drift_work *work, const char *what, const char *done,
	const char *may, const struct drift_days *days);

/* Fills ret->limits, w->no3_most. */
enum ts_status drift_limits(struct drift_work *work);

/* The text so far as a sentence of the answer; a number into it; a row of practice. */
const char *drift_take(struct drift_work *work);
void drift_put(struct drift_work *work, double value, int decimals);
double drift_bound(const struct drift_work *work, enum ts_practice_id id);

/* The first line, and the figures beneath it; all else is filled. */
const char *drift_judge(struct drift_work *work);
const char *drift_because(struct drift_work *work);
/* Fills ret->remedies. */
void drift_remedies(struct drift_work *work);

#endif
