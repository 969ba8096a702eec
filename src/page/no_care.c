/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The table of everyday questions of care has no room in a page (tests/page/golden.sh holds how
 * large the program in it may be): there nothing is found of them, and what is typed is read as the
 * rest of a sentence is.
 */
#include "answers/check_parts.h"
#include "typed/reader.h"
#include "words/asked.h"

const struct ts_care_row ts_care_rows[] = {{NULL, NULL, NULL, NULL, 0}};
const size_t ts_care_row_count = 0;

const struct ts_care_row *ts_care_row(const char *id)
{
	(void)id;
	return NULL;
}

void ts_typed_care(struct ts_typed *t)
{
	(void)t;
}

void ts_check_care(struct ts_check_work *w)
{
	(void)w;
}
