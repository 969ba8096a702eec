/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What goes to the shop on paper beside one's own water: what to ask there and what to look at.
 */
#ifndef TS_WORDS_SHOP_H
#define TS_WORDS_SHOP_H

struct ts_shop_line {
	const char *about, *says;
};

/* Both end with a line of NULL. */
extern const struct ts_shop_line ts_shop_questions[], ts_shop_signs[];

#endif
