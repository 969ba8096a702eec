/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From the table into a list.
 */
#include "answers/cautions.h"

#include "words/remake.h"

void ts_answer_cautions(const struct ts_asking *asking, unsigned when, struct ts_texts *list)
{
	for (size_t i = 0; i < ts_caution_count; i++) {
		if (ts_cautions[i].when & when)
			ts_asking_note(asking, list, ts_cautions[i].says);
	}
}
