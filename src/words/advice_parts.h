/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Parts of the sentences of advice that hang on figures, by the name that stands for them in the
 * templates of care/advice_rows.c.
 */
#ifndef TS_WORDS_ADVICE_PARTS_H
#define TS_WORDS_ADVICE_PARTS_H

#include "base/text.h"
#include "care/advice.h"

struct ts_advice_part {
	const char *name;
	void (*say)(struct ts_text *text, const struct ts_care_figures *figures);
};

extern const struct ts_advice_part ts_advice_parts[];
extern const size_t ts_advice_part_count;

#endif
