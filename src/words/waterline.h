/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A water in one line, for whoever looks back at what an answer rests on.
 */
#ifndef TS_WORDS_WATERLINE_H
#define TS_WORDS_WATERLINE_H

#include <tapshoal/profile.h>

#include "base/text.h"

/* Adds a reading, as a range where its doubt is wider than an ordinary kit's. */
void ts_say_span(struct ts_text *text, const struct ts_span *span, enum ts_parameter parameter);

/* Adds "GH 9, KH 6, pH 7.4, tank 24 C". */
void ts_say_water_line(struct ts_text *text, const struct ts_profile *profile);

#endif
