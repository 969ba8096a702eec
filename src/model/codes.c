/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of every finding: reader, lint, check, JSON and docs cite these and nothing else.
 */
#include "model/codes.h"

/* clang-format off */
const struct ts_code ts_codes[TS_C__COUNT] = {
	[TS_C_LINT_FILE_NAME] = {"lint.file-name", TS_ERROR, "the file is not named after its species", "name it genus-species.yaml, or genus-species-form.yaml", "0.1"},
	[TS_C_LINT_GRADES] = {"lint.grades", TS_ERROR, "a value's grade is not known", "take practice, derived, memory or a publication listed in sources", "0.1"},
	[TS_C_LINT_GROUP] = {"lint.group", TS_ERROR, "the group sizes contradict each other", "least is at most comfortable", "0.1"},
	[TS_C_LINT_LENGTHS] = {"lint.lengths", TS_ERROR, "the usual adult is longer than the greatest known", "compare total lengths; a standard length is written cm SL", "0.1"},
	[TS_C_LINT_PUBLISHED] = {"lint.published", TS_ERROR, "a range departs from what is published without a reason", "add why: one sentence, or come nearer", "0.1"},
	[TS_C_LINT_RANGES] = {"lint.ranges", TS_ERROR, "a range is too narrow to be a tolerance", "widen it, or check the digits", "0.1"},
	[TS_C_LINT_SOURCES] = {"lint.sources", TS_ERROR, "a source is listed and used by no value", "drop it, or grade the value that it gave", "0.1"},
	[TS_C_LINT_TWICE] = {"lint.twice", TS_ERROR, "two records of one folder are for the same species", "keep one, or tell them apart by a form", "0.1"},
	[TS_C_RECORDS_ALIAS] = {"records.alias", TS_ERROR, "anchors, aliases and tags are not read", "write the value out", "0.1"},
	[TS_C_RECORDS_DUPLICATE_KEY] = {"records.duplicate-key", TS_ERROR, "the same key stands twice", "keep one of the two", "0.1"},
	[TS_C_RECORDS_INNER_RANGE] = {"records.inner-range", TS_ERROR, "preferred reaches beyond tolerated", "narrow preferred or widen tolerated", "0.1"},
	[TS_C_RECORDS_MISSING_KEY] = {"records.missing-key", TS_ERROR, "a key that is needed is missing", "add it", "0.1"},
	[TS_C_RECORDS_NOT_UTF8] = {"records.not-utf8", TS_ERROR, "the file is not UTF-8 text", "save it as UTF-8", "0.1"},
	[TS_C_RECORDS_QUANTITY] = {"records.quantity", TS_ERROR, "a quantity cannot be read", "write a number and its unit", "0.1"},
	[TS_C_RECORDS_SYNTAX] = {"records.syntax", TS_ERROR, "the file is not YAML", "check indentation, quotes and colons", "0.1"},
	[TS_C_RECORDS_TOO_MUCH] = {"records.too-much", TS_ERROR, "the file is larger or deeper than files of this kind", "split it", "0.1"},
	[TS_C_RECORDS_UNIT_ASSUMED] = {"records.unit-assumed", TS_NOTE, "a unit had several meanings and one was taken", "write the unit out", "0.1"},
	[TS_C_RECORDS_UNKNOWN_KEY] = {"records.unknown-key", TS_ERROR, "a key that this file does not have", "see docs/formats.md", "0.1"},
	[TS_C_RECORDS_UNKNOWN_WORD] = {"records.unknown-word", TS_ERROR, "a word that this key does not take", "take one of the words listed", "0.1"},
	[TS_C_RECORDS_UNREADABLE] = {"records.unreadable", TS_ERROR, "the file cannot be read", "check its name and rights", "0.1"},
	[TS_C_RECORDS_WRONG_KIND] = {"records.wrong-kind", TS_ERROR, "a list, a text or a block where another was wanted", "see docs/formats.md", "0.1"},
};
/* clang-format on */
