/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The fixed words of the care room's answers: dangers, cautions, and where in the guide more is
 * written. Sentences with figures are next door, in sentence.h.
 */
#ifndef TS_WORDS_CARE_H
#define TS_WORDS_CARE_H

#include <tapshoal/care.h>

/* "borne", "concern", "danger", by enum ts_co2_danger; NULL-terminated. */
extern const char *const ts_co2_words[TS_CO2_DANGER__COUNT + 1];

/* What a bit of enum ts_drift_assumed (care/plan_drift.h) means, by its number; NULL-terminated. */
extern const char *const ts_drift_assumed_words[];

/* What stands below every curve of acid or base. */
extern const char ts_caution_acid[];
extern const char ts_caution_acid_short[]; /* of a message */
/* What stands below every forecast of a tank. */
extern const char ts_caution_drift[];

/* Chapters of docs/guide.md that answers point to. */
extern const char ts_guide_suits[], ts_guide_chasing[], ts_guide_alone[], ts_guide_old_tanks[],
	ts_guide_due[], ts_guide_fails[];

#endif
