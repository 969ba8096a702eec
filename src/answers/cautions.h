/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Cautions that belong to an answer, as the table of words/remake.h has them.
 */
#ifndef TS_ANSWERS_CAUTIONS_H
#define TS_ANSWERS_CAUTIONS_H

#include "answers/asking.h"

/* Adds those whose bits (enum ts_caution_when) are in `when`, each once. */
void ts_answer_cautions(const struct ts_asking *asking, unsigned when, struct ts_texts *list);

#endif
