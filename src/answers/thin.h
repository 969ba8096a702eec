/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Water of which the minerals were not read: what may be said of it until they are. Sea salt brings
 * its own hardness along; for the rest there are animals that bear every usual tap.
 */
#ifndef TS_ANSWERS_THIN_H
#define TS_ANSWERS_THIN_H

#include <tapshoal/profile.h>

#include "answers/asking.h"

/* Whether nobody can be called suited before GH was read. */
bool ts_answer_is_thin(const struct ts_profile *profile);

/* GH, and KH where it was not read, as of any usual tap: the animal bears all of it, or is left
 * out. */
void ts_answer_usual_taps(struct ts_profile *profile, const struct ts_practice *practice);

/* How to give what was measured. */
extern const char ts_thin_how[];
/* Adds "every usual tap water (GH 3 to 18, KH 2 to 12)", with what was not read alone. */
void ts_answer_say_usual_taps(
	struct ts_text *text, const struct ts_profile *profile, const struct ts_practice *practice);

/*
 * Where salt was read and GH was not: the GH that so much sea salt makes by itself, taken as
 * assumed and said in the note returned; where both were read, what of the GH the salt brings.
 * NULL where there is nothing to say.
 */
const char *ts_answer_sea_gh(const struct ts_asking *asking, struct ts_profile *profile);

#endif
