/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which of our files is this? Told by its keys, since people name files as they like.
 */
#ifndef TS_RECORDS_KIND_H
#define TS_RECORDS_KIND_H

#include "model/shape.h"
#include "system/system.h"

/*
 * The shape of which most keys stand where the first one stands: species, water, tank or plan. A
 * file that has none of them, or cannot be read, counts as a species record, whose reader then says
 * what is wrong. TS_NO_MEMORY, else TS_OK.
 */
TS_MUST_USE enum ts_status ts_records_kind(const struct ts_system *system, const char *file,
	const struct ts_allocator *allocator, const struct ts_shape **ret);

#endif
