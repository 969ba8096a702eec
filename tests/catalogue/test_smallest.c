/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The smallest tank of every shipped record, of a settled and of a comfortable group: never longer
 * than half as much again as the record's own least tank, never more than three times as long as
 * wide, and as the rules want it.
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
#include "stock/levels.h"
#include "stock/rules.h"
#include "stock/smallest.h"

#define LONGER_MOST 1.5
#define NAME_ROOM 96

static double worst;
static const char *worst_of = "";

/* Beyond six metres no home has a tank: none is named for these. */
static bool of_no_home(const struct ts_species *s)
{
	return ts_match_tank_length_cm(s) > 600;
}

static void holds(const struct ts_group *group)
{
	const struct ts_species *s = group->species;
	const struct ts_tank like = {.cover = TS_COVER_YES,
		.substrate = TS_SUBSTRATE_SAND,
		.filter = TS_FILTER_MATURE,
		.water_level = s->needs.land ? TS_WATER_LEVEL_HALF : TS_WATER_LEVEL_UNKNOWN};
	struct ts_practice practice;
	struct ts_smallest_tank t;
	struct ts_tank tank = like;
	struct ts_rulings all = {.count = 0};
	double own_cm = ts_match_tank_length_cm(s);

	ts_practice_defaults(&practice);
	ts_smallest_tank(group, 1, s->habits & TS_HABIT_NITRATE_SENSITIVE, &like, &practice, &t);
	if (of_no_home(s) && !(t.length_cm > 0))
		return;
	if (!(t.length_cm >= own_cm) || t.length_cm > LONGER_MOST * own_cm + 1e-9 ||
		t.length_cm > 3 * t.width_cm + 1e-9 || t.width_cm > t.length_cm)
		fail_msg("%u of %s: %g x %g x %g cm, its own least tank is %g cm long",
			ts_group_count(group), s->species, t.length_cm, t.width_cm, t.height_cm,
			own_cm);
	if (t.length_cm / own_cm > worst) {
		worst = t.length_cm / own_cm;
		worst_of = s->species;
	}
	tank.length_cm = t.length_cm;
	tank.width_cm = t.width_cm;
	tank.height_cm = t.height_cm;
	ts_rules_alone(group, &tank, &practice, &all);
	for (size_t i = 0; i < all.count; i++)
		assert_false(ts_rule_of_room(all.at[i].rule));
}

static void test_smallest(void **state)
{
	const struct ts_species *s = *state;
	struct ts_level levels[TS_LEVELS_MOST];
	size_t count = ts_levels(s, levels);

	for (size_t i = 0; i < count; i++) {
		if (ts_group_count(&levels[i].group) <= s->group.comfortable)
			holds(&levels[i].group);
	}
}

static void test_all_records_are_read(void **state)
{
	assert_int_equal(*(enum ts_status *)*state, TS_OK);
}

int main(void)
{
	struct ts_catalogue catalogue;
	enum ts_status status;
	struct CMUnitTest *tests;
	char *names;
	int failed;

	ts_catalogue_open(&catalogue, NULL);
	status = ts_catalogue_read(&catalogue, TS_SPECIES_DIR, NULL);
	tests = calloc(catalogue.count + 1, sizeof *tests);
	names = calloc(catalogue.count + 1, NAME_ROOM);
	if (!tests || !names)
		return 1;
	tests[0] = (struct CMUnitTest){
		"all records are read", test_all_records_are_read, NULL, NULL, &status};
	for (size_t i = 0; i < catalogue.count; i++) {
		char *name = names + (i + 1) * NAME_ROOM;

		snprintf(name, NAME_ROOM, "%s has a smallest tank", catalogue.items[i]->species);
		tests[i + 1] = (struct CMUnitTest){
			name, test_smallest, NULL, NULL, (void *)(uintptr_t)catalogue.items[i]};
	}
	failed = _cmocka_run_group_tests("smallest", tests, catalogue.count + 1, NULL, NULL);
	print_message("# longest beside its own least tank: %s, %g times\n", worst_of, worst);
	free(tests);
	free(names);
	ts_catalogue_close(&catalogue);
	return failed;
}
