/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The unit table against tests/data/reference/units_hardness.csv, which was computed elsewhere from
 * the legal definitions of the units and the IUPAC 2021 atomic weights.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "table.h"
#include "units/units.h"

static double factor(enum ts_quantity q, const char *spelling)
{
	for (size_t i = 0; i < ts_units_count; i++) {
		if (ts_units[i].quantity == q && strcmp(ts_units[i].spelling, spelling) == 0)
			return ts_units[i].factor;
	}
	fail_msg("no unit %s", spelling);
	return 0;
}

static size_t row_of(const struct table *t, const char *start)
{
	for (size_t i = 0; i < t->rows; i++) {
		if (strncmp(table_text(t, i, "unit"), start, strlen(start)) == 0)
			return i;
	}
	fail_msg("no row %s", start);
	return 0;
}

static void test_hardness_units__against_their_definitions(void **state)
{
	static const struct {
		const char *row, *spelling;
	} pairs[] = {{"mmol/L Ca+Mg", "mmol/l"}, {"meq/L", "meq/l"}, {"mg/L as CaCO3", "mg/lcaco3"},
		{"dH (German", "dh"}, {"fH (French", "fh"}, {"eH (English", "clark"},
		{"gpg", "gpg"}};
	struct table *t = table_open("units_hardness.csv");
	struct worst worst = {.what = "dH per unit", .limit = 1e-6};

	(void)state;
	for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++)
		worst_note(&worst, factor(TS_Q_GH, pairs[i].spelling),
			table_number(t, row_of(t, pairs[i].row), "dH"), pairs[i].spelling);
	worst_note(&worst, factor(TS_Q_KH, "mg/lhco3"),
		table_number(t, row_of(t, "mg/L as HCO3-"), "dH"), "bicarbonate");
	worst_assert(&worst);
	table_close(t);
}

static void test_alkalinity_units__against_their_definitions(void **state)
{
	struct table *t = table_open("units_hardness.csv");
	struct worst worst = {.what = "meq/L per unit", .limit = 1e-6};

	(void)state;
	worst_note(&worst, factor(TS_Q_ALKALINITY, "dh"),
		table_number(t, row_of(t, "dH (German"), "meq/L"), "dH");
	worst_note(&worst, factor(TS_Q_ALKALINITY, "mg/lcaco3"),
		table_number(t, row_of(t, "mg/L as CaCO3"), "meq/L"), "mg/L CaCO3");
	worst_note(&worst, factor(TS_Q_ALKALINITY, "mg/lhco3"),
		table_number(t, row_of(t, "mg/L as HCO3-"), "meq/L"), "mg/L HCO3");
	worst_assert(&worst);
	table_close(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_hardness_units__against_their_definitions),
		cmocka_unit_test(test_alkalinity_units__against_their_definitions),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
