/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What an animal is said to live in healthily, beside the temperatures that killed it in
 * experiments (tests/data/reference/temperature-limits.csv): the record must end well inside.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include <tapshoal/catalogue.h>

#include "base/findings.h"
#include "table.h"

/* So far inside a lethal limit a tolerated range ends at the least: an estimate. */
#define MARGIN_C 2

static bool is_lower(const char *kind)
{
	return strstr(kind, "lower") != NULL;
}

static void test_limits__records_end_well_inside(void **state)
{
	struct table *limits = table_open("temperature-limits.csv");
	struct ts_catalogue catalogue;
	struct ts_findings findings;
	double nearest = INFINITY;
	size_t compared = 0;

	(void)state;
	ts_findings_open(&findings, NULL);
	ts_catalogue_open(&catalogue, NULL);
	assert_int_equal(ts_catalogue_add_folder(&catalogue, TS_SPECIES_DIR, &findings), TS_OK);
	for (size_t i = 0; i < limits->rows; i++) {
		const char *name = table_text(limits, i, "species");
		const struct ts_species *s = ts_catalogue_species(&catalogue, name, NULL);
		bool lower = is_lower(table_text(limits, i, "kind"));
		double margin;

		if (!s)
			continue; /* two forms of it: neither is meant */
		margin = lower ? s->water.usual.temp_c.tolerated.low -
					 table_number(limits, i, "max_c")
			       : table_number(limits, i, "min_c") -
					 s->water.usual.temp_c.tolerated.high;
		compared++;
		nearest = fmin(nearest, margin);
		if (margin < MARGIN_C)
			fail_msg("%s: ends %g C from what kills it (%s)", name, margin,
				table_text(limits, i, "kind"));
	}
	printf("# %zu limits, the nearest %.1f C beyond what is tolerated\n", compared, nearest);
	fflush(stdout);
	assert_true(compared >= 12);
	ts_findings_drop(&findings);
	ts_catalogue_close(&catalogue);
	table_close(limits);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_limits__records_end_well_inside),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
