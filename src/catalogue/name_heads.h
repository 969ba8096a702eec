/* SPDX-License-Identifier: Apache-2.0 */
/*
 * How the words of all names begin, so that a sentence of other words need not be compared with
 * every name letter by letter.
 */
#ifndef TS_CATALOGUE_NAME_HEADS_H
#define TS_CATALOGUE_NAME_HEADS_H

#include <tapshoal/catalogue.h>

#define TS_NAME_HEADS_BITS 65536u

struct ts_name_heads {
	unsigned char bits[TS_NAME_HEADS_BITS / 8];
};

/* Takes them from the names of all species, groups, forms and animals outside. */
void ts_name_heads_make(const struct ts_catalogue *catalogue, struct ts_name_heads *ret);

/*
 * False: the text begins or ends (of two words: begins and ends) like no word of a name, so that it
 * cannot be the very name of anything. True: it may be.
 */
bool ts_name_heads_may_name(const struct ts_name_heads *heads, const char *text);

#endif
