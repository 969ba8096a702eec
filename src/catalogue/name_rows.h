/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Names that are no one animal's: of groups, of bred forms and hybrids, and of animals that this
 * work knows nothing of. A row each, in the languages of the records.
 */
#ifndef TS_CATALOGUE_NAME_ROWS_H
#define TS_CATALOGUE_NAME_ROWS_H

#include <tapshoal/catalogue.h>

struct ts_name_row {
	enum ts_name_how how; /* TS_NAME_GROUP, TS_NAME_FORM or TS_NAME_OUTSIDE */
	/*
	 * Parted by '|'; the first is how it is spoken of. One with '*' before it is meant wherever
	 * the word stands: "*frog" is also "dwarf frog".
	 */
	const char *names;
	/*
	 * Who belongs to it, parted by '|': "genus X", "family X", "home X" (the word of
	 * home_water), "kind X", "id X" (stem of a file), or a word that stands in a name. Of a
	 * form: the one record that it is judged by; NULL: none.
	 */
	const char *members;
	const char *says; /* behind "'name' is"; NULL for a group */
};

/* The rows in their order; NULL behind the last. */
const struct ts_name_row *ts_name_row_at(size_t index);

/* Whether a species belongs to a row. */
bool ts_name_row_holds(const struct ts_name_row *row, const struct ts_species *species);

#endif
