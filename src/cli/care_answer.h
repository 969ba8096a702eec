/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What remake and arrive share: species by name, sentences kept in the arena, cautions.
 */
#ifndef TS_CLI_CARE_ANSWER_H
#define TS_CLI_CARE_ANSWER_H

#include "answers/asking.h"
#include "cli/commands.h"
#include "words/remake.h"

/* Moves a scratch text into the arena and empties it; never NULL. */
const char *care_take(struct session *session, struct ts_text *text);

/* Adds a text to a list in the arena; an empty one adds nothing. */
void care_note(struct session *session, struct ts_texts *list, const char *text);

/*
 * The species of a flag's names, in the arena. TS_BAD_INPUT with a line each in the session's
 * error for names that the catalogue does not take.
 */
enum ts_status care_species(struct session *session, const struct values *names,
	const struct ts_species ***ret_species);

/* The same of the lines of a plan. */
enum ts_status care_plan_species(struct session *session, const struct ts_plan *plan,
	const struct ts_species ***ret_species);

/* Is every animal of a size that one of its kind has? TS_BAD_INPUT: no; a finding for each. */
enum ts_status care_sizes(struct session *session, const struct ts_plan *plan,
	const struct ts_species *const *species);

/* What the answers of src/answers are asked with. */
struct ts_asking care_asking(const struct session *session);

/* Age in days of a reading's date today; 0 where it has none or lies ahead. */
double care_age_days(const struct session *session, const char *date);

#endif
