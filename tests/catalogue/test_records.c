/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Every rule on every shipped record, each its own test, so that one run names every bad record.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "catalogue/folders.h"
#include "catalogue/lint.h"

struct one {
	const struct ts_lint *lint;
	const struct ts_species *species;
	const struct ts_lint_rule *rule;
};

static void test_keeps_rule(void **state)
{
	const struct one *one = *state;
	struct ts_text what;
	bool kept;

	ts_text_open(&what, NULL);
	kept = one->rule->keeps(one->lint, one->species, &what);
	if (!kept)
		print_message("# %s: %s\n", one->species->file, ts_text_get(&what));
	ts_text_drop(&what);
	assert_true(kept);
}

static void test_all_records_are_read(void **state)
{
	assert_int_equal(*(enum ts_status *)*state, TS_OK);
}

int main(void)
{
	struct ts_catalogue catalogue;
	struct ts_lint lint;
	enum ts_status status;
	struct CMUnitTest *tests;
	struct one *ones;
	char *names;
	size_t count = 1, rules = 0, most;
	int failed;

	ts_catalogue_open(&catalogue, NULL);
	status = ts_catalogue_read(&catalogue, TS_SPECIES_DIR, NULL);
	if (ts_lint_open(&lint, &catalogue, NULL) != TS_OK)
		return 1;
	while (ts_lint_rule_at(rules))
		rules++;
	most = catalogue.count * rules + 1;
	tests = calloc(most, sizeof *tests);
	ones = calloc(most, sizeof *ones);
	names = calloc(most, 160);
	if (!tests || !ones || !names)
		return 1;
	tests[0] = (struct CMUnitTest){
		"all records are read", test_all_records_are_read, NULL, NULL, &status};
	for (size_t i = 0; i < catalogue.count; i++) {
		for (size_t j = 0; j < rules; j++, count++) {
			char *name = names + count * 160;
			const struct ts_lint_rule *rule = ts_lint_rule_at(j);

			ones[count] = (struct one){&lint, catalogue.items[i], rule};
			snprintf(name, 160, "%s keeps %s", catalogue.items[i]->species,
				ts_codes[rule->code].id);
			tests[count] = (struct CMUnitTest){
				name, test_keeps_rule, NULL, NULL, &ones[count]};
		}
	}
	failed = _cmocka_run_group_tests("records", tests, count, NULL, NULL);
	free(names);
	free(ones);
	free(tests);
	ts_lint_close(&lint);
	ts_catalogue_close(&catalogue);
	return failed;
}
