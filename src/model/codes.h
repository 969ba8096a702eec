/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Every kind of finding, one row each in model/codes.c: its name never changes meaning.
 */
#ifndef TS_MODEL_CODES_H
#define TS_MODEL_CODES_H

#include <tapshoal/base.h>

enum ts_code_id {
	TS_C_RECORDS_ALIAS,
	TS_C_RECORDS_DUPLICATE_KEY,
	TS_C_RECORDS_INNER_RANGE,
	TS_C_RECORDS_MISSING_KEY,
	TS_C_RECORDS_NOT_UTF8,
	TS_C_RECORDS_QUANTITY,
	TS_C_RECORDS_SYNTAX,
	TS_C_RECORDS_TOO_MUCH,
	TS_C_RECORDS_UNIT_ASSUMED,
	TS_C_RECORDS_UNKNOWN_KEY,
	TS_C_RECORDS_UNKNOWN_WORD,
	TS_C_RECORDS_UNREADABLE,
	TS_C_RECORDS_WRONG_KIND,
	TS_C__COUNT
};

extern const struct ts_code ts_codes[TS_C__COUNT];

#endif
