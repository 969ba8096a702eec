/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Structs as bytes, along the rows of their shape: what YAML says, without reading YAML. An image
 * knows nothing of how a compiler lays out a struct, so the same bytes do on every machine; it does
 * know the rows it was written by, and is refused by a program that has others.
 */
#ifndef TS_RECORDS_IMAGE_H
#define TS_RECORDS_IMAGE_H

#include "base/text.h"
#include "model/shape.h"

/*
 * Adds one object of `shape` as an image. Kinds that records of animals have no use for (measures,
 * choices, files) are not written: then false, and what was added is no image.
 */
TS_MUST_USE bool ts_image_write(
	struct ts_text *out, const struct ts_shape *shape, const void *object);

/* Makes the checksum of an image right again after its bytes were changed; at least its head. */
void ts_image_seal(char *bytes, size_t len);

/*
 * Reads an image into `*ret`, a zeroed struct of `shape`. Texts are lent from `bytes`, which must
 * outlive them; lists are taken from `arena`. TS_NO: these bytes are no image that the rows of this
 * program can read (another version, cut off, damaged); TS_NO_MEMORY. `*ret` is of no use then.
 * Never reads beyond `len`, whatever the bytes say.
 */
TS_MUST_USE enum ts_status ts_image_read(const char *bytes, size_t len,
	const struct ts_shape *shape, struct ts_arena *arena, void *ret);

#endif
