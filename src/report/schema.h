/* SPDX-License-Identifier: Apache-2.0 */
/*
 * JSON Schema of a file, walked from its rows, so that editors check what the loader checks.
 */
#ifndef TS_REPORT_SCHEMA_H
#define TS_REPORT_SCHEMA_H

#include "model/shape.h"
#include "report/json.h"

/* Adds the schema (draft 2020-12) of a shape as one JSON document. */
void ts_schema_write(struct ts_text *out, const struct ts_shape *shape);

#endif
