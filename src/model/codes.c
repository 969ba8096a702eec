/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of every finding: reader, lint, check, JSON and docs cite these and nothing else.
 */
#include "model/codes.h"

/* clang-format off */
const struct ts_code ts_codes[TS_C__COUNT] = {
	[TS_C_INTAKE_CLASS] = {"intake.class", TS_NOTE, "a class of hardness stands in a report; every supplier draws other lines", "look for a number with a unit", "0.1"},
	[TS_C_INTAKE_CONTRADICTION] = {"intake.contradiction", TS_CONCERN, "two figures of a report cannot both hold", "ask the supplier, or measure", "0.1"},
	[TS_C_INTAKE_LATIN] = {"intake.latin-1", TS_NOTE, "a report is not UTF-8 and was read as Latin-1", "compare its special letters", "0.1"},
	[TS_C_INTAKE_NO_TEXT] = {"intake.no-text", TS_ERROR, "a report is no text", "turn it into text first", "0.1"},
	[TS_C_INTAKE_NOT_UNDERSTOOD] = {"intake.not-understood", TS_NOTE, "a line of a report looks relevant and could not be read surely", "look at the line in the report", "0.1"},
	[TS_C_LINT_DERIVED] = {"lint.derived", TS_ERROR, "a value graded derived is not what the rule gives", "take the inner 60 % of tolerated, or grade it practice or memory", "0.1"},
	[TS_C_LINT_FILE_NAME] = {"lint.file-name", TS_ERROR, "the file is not named after its species", "name it genus-species.yaml, or genus-species-form.yaml", "0.1"},
	[TS_C_LINT_GRADES] = {"lint.grades", TS_ERROR, "a value's grade is not known", "take practice, derived, memory or a publication listed in sources", "0.1"},
	[TS_C_LINT_GROUP] = {"lint.group", TS_ERROR, "the group sizes contradict each other", "least is at most comfortable", "0.1"},
	[TS_C_LINT_LENGTHS] = {"lint.lengths", TS_ERROR, "the usual adult is longer than the greatest known", "compare total lengths; a standard length is written cm SL", "0.1"},
	[TS_C_LINT_NAME] = {"lint.name", TS_ERROR, "the accepted name is not a scientific name", "write Genus species; what people call it goes under common", "0.1"},
	[TS_C_LINT_ORDER] = {"lint.order", TS_ERROR, "the keys do not stand in the order of docs/formats.md", "move the key up", "0.1"},
	[TS_C_LINT_POSSIBLE] = {"lint.possible", TS_ERROR, "a range goes beyond what any animal of these waters lives in", "check the digits and the unit", "0.1"},
	[TS_C_LINT_PREY] = {"lint.prey", TS_ERROR, "prey and gape contradict each other", "add the prey, or take a smaller gape", "0.1"},
	[TS_C_LINT_PUBLISHED] = {"lint.published", TS_ERROR, "a range departs from what is published without a reason", "add why: one sentence, or come nearer", "0.1"},
	[TS_C_LINT_RANGES] = {"lint.ranges", TS_ERROR, "a range is too narrow to be a tolerance", "widen it, or check the digits", "0.1"},
	[TS_C_LINT_SOURCE] = {"lint.source", TS_ERROR, "a publication is cited that no file describes", "add sources/ID.yaml, or cite one that is there", "0.1"},
	[TS_C_LINT_SOURCES] = {"lint.sources", TS_ERROR, "a source is listed and used by no value", "drop it, or grade the value that it gave", "0.1"},
	[TS_C_LINT_SYNONYM] = {"lint.synonym", TS_ERROR, "two records claim the same name", "keep the name with the species it means today", "0.1"},
	[TS_C_LINT_TWICE] = {"lint.twice", TS_ERROR, "two records of one folder are for the same species", "keep one, or tell them apart by a form", "0.1"},
	[TS_C_LINT_WHEN] = {"lint.when", TS_ERROR, "it is said when an animal does what it never does", "drop the key, or say what it does", "0.1"},
	[TS_C_PLAN_COUNT] = {"plan.count", TS_ERROR, "a number of animals is not one", "write a whole number from 1", "0.1"},
	[TS_C_RECORDS_ALIAS] = {"records.alias", TS_ERROR, "anchors, aliases and tags are not read", "write the value out", "0.1"},
	[TS_C_RECORDS_DATE] = {"records.date", TS_ERROR, "a date is not a day of the calendar", "write it like 2026-03-01", "0.1"},
	[TS_C_RECORDS_DUPLICATE_KEY] = {"records.duplicate-key", TS_ERROR, "the same key stands twice", "keep one of the two", "0.1"},
	[TS_C_RECORDS_INNER_RANGE] = {"records.inner-range", TS_ERROR, "preferred reaches beyond tolerated", "narrow preferred or widen tolerated", "0.1"},
	[TS_C_RECORDS_MISSING_KEY] = {"records.missing-key", TS_ERROR, "a key that is needed is missing", "add it", "0.1"},
	[TS_C_RECORDS_NOT_UTF8] = {"records.not-utf8", TS_ERROR, "the file is not UTF-8 text", "save it as UTF-8", "0.1"},
	[TS_C_RECORDS_QUANTITY] = {"records.quantity", TS_ERROR, "a quantity cannot be read", "write a number and its unit", "0.1"},
	[TS_C_RECORDS_REFERENCE] = {"records.reference", TS_ERROR, "a file that is named here is missing or wrong", "name it as seen from the folder of this file", "0.1"},
	[TS_C_RECORDS_SYNTAX] = {"records.syntax", TS_ERROR, "the file is not YAML", "check indentation, quotes and colons", "0.1"},
	[TS_C_RECORDS_TOO_MUCH] = {"records.too-much", TS_ERROR, "the file is larger or deeper than files of this kind", "split it", "0.1"},
	[TS_C_RECORDS_UNIT_ASSUMED] = {"records.unit-assumed", TS_NOTE, "a unit had several meanings and one was taken", "write the unit out", "0.1"},
	[TS_C_RECORDS_UNKNOWN_KEY] = {"records.unknown-key", TS_ERROR, "a key that this file does not have", "see docs/formats.md", "0.1"},
	[TS_C_RECORDS_UNKNOWN_WORD] = {"records.unknown-word", TS_ERROR, "a word that this key does not take", "take one of the words listed", "0.1"},
	[TS_C_RECORDS_UNREADABLE] = {"records.unreadable", TS_ERROR, "the file cannot be read", "check its name and rights", "0.1"},
	[TS_C_RECORDS_WRONG_KIND] = {"records.wrong-kind", TS_ERROR, "a list, a text or a block where another was wanted", "see docs/formats.md", "0.1"},
	[TS_C_TABLE_CELLS] = {"table.cells", TS_ERROR, "a row of a table has more or fewer cells than its header", "as many cells as the header has, empty where nothing was measured; put a cell that holds the separator in quotes", "0.1"},
	[TS_C_TABLE_QUOTES] = {"table.quotes", TS_ERROR, "the quotes of a table do not pair", "put the whole cell in quotes, and double each quote inside it", "0.1"},
	[TS_C_TANK_BOX] = {"tank.box", TS_ERROR, "more water than the tank holds", "measure both again", "0.1"},
	[TS_C_TANK_SIZE] = {"tank.size", TS_ERROR, "the size of the tank is missing or absurd", "give length, width and height, or volume", "0.1"},
};
/* clang-format on */
