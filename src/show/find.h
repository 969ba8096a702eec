/* SPDX-License-Identifier: Apache-2.0 */
/* What was found as a document. */
#ifndef TS_SHOW_FIND_H
#define TS_SHOW_FIND_H

#include "answers/find.h"
#include "report/document.h"

/* `summary`: counts instead of the animals. `most`: of a longer list a table of so many; 0: all. */
void ts_show_find(
	struct ts_document *doc, const struct ts_find_result *result, bool summary, size_t most);

#endif
