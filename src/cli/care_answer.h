/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the commands of care share: species by name, what answers are asked with.
 */
#ifndef TS_CLI_CARE_ANSWER_H
#define TS_CLI_CARE_ANSWER_H

#include "answers/asking.h"
#include "cli/commands.h"
#include "words/remake.h"

/*
 * The species of a flag's names, in the arena. TS_BAD_INPUT with a line each in the session's
 * error for names that the catalogue does not take.
 */
enum ts_status care_species(struct session *session, const struct values *names,
	const struct ts_species ***ret_species);

/* The same of the lines of a plan. */
enum ts_status care_plan_species(struct session *session, const struct ts_plan *plan,
	const struct ts_species ***ret_species);

/*
 * The same where an answer does without: a name that is not known leaves `*ret_species` NULL and
 * is told in `*ret_unknown`.
 */
enum ts_status care_species_if_known(struct session *session, const struct ts_plan *plan,
	const struct ts_species *const **ret_species, const char **ret_unknown);

/* Is every animal of a size that one of its kind has? TS_BAD_INPUT: no; a finding for each. */
enum ts_status care_sizes(struct session *session, const struct ts_plan *plan,
	const struct ts_species *const *species);

/* What the answers of src/answers are asked with. */
struct ts_asking care_asking(const struct session *session);

#endif
