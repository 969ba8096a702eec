/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A recipe in one line, for the remedy beside a fault.
 */
#ifndef TS_WORDS_MEND_H
#define TS_WORDS_MEND_H

#include "base/text.h"
#include "water/mend.h"

/*
 * Adds "Into each 100 L of new water 9 g of baking soda (sodium bicarbonate): then KH 6, pH about
 * 7.9." Nothing where there is nothing to do.
 */
void ts_say_mend(struct ts_text *text, const struct ts_mend *mend);

/* Adds the salts alone: "9 g of baking soda (sodium bicarbonate) and 4 g of Epsom salt". */
void ts_say_mend_salts(struct ts_text *text, const struct ts_mend *mend);

#endif
