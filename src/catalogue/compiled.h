/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A folder of records read once and kept as an image (records/image.h), for programs that start
 * often: reading 590 files of YAML takes nearly all the time of an answer. The records stay the
 * source; an image that is not of exactly these files, by name, size and time, is not used.
 */
#ifndef TS_CATALOGUE_COMPILED_H
#define TS_CATALOGUE_COMPILED_H

#include <tapshoal/catalogue.h>

#include "base/text.h"

/*
 * Adds the image of a catalogue that holds one folder and nothing else. False: its files cannot be
 * looked at, or no memory, which `out` says too.
 */
TS_MUST_USE bool ts_catalogue_compile(const struct ts_catalogue *catalogue, struct ts_text *out);

#endif
