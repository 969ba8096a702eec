/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The printed scales of hardness, class by class: the last water of one and the first of the next.
 * Limits as their publishers print them (sources beside the scales in src/chem/classes.c), here in
 * the unit each of them uses.
 */
#include "waters.h"

#include <string.h>

#include "chem/classes.h"

/* Hardness of one unit of the scale, mmol/L: 1 mg/L CaCO3 is 1/100.087, 1 degree French 0.0999. */
#define MG (1 / 100.0869)
#define DH (10 / 56.0774)
#define FRENCH (10 / 100.0869)

static const struct {
	const char *scale;
	double unit_mmol_l, limits[5];
	size_t count;
	const char *names[6];
} scales[] = {
	{"USGS", MG, {60, 120, 180}, 3, {"soft", "moderately hard", "hard", "very hard"}},
	{"WHO", MG, {60, 120, 180}, 3, {"soft", "moderately hard", "hard", "very hard"}},
	{"Vermont", MG, {75, 150, 300}, 3, {"soft", "moderately hard", "hard", "very hard"}},
	{"Germany", 1, {1.5, 2.5}, 2, {"soft", "middle", "hard"}},
	{"Switzerland", FRENCH, {7, 15, 25, 32, 42}, 5,
		{"very soft", "soft", "middling", "rather hard", "hard", "very hard"}},
	{"UK supplies", MG, {50, 100, 150, 200, 300}, 5,
		{"soft", "moderately soft", "slightly hard", "moderately hard", "hard",
			"very hard"}},
	/* common practice, no source */
	{"aquarium trade", DH, {4, 8, 12, 18, 30}, 5,
		{"very soft", "soft", "medium hard", "rather hard", "hard", "very hard"}},
};
#define SCALES (sizeof scales / sizeof *scales)

/* The name up to its translation in brackets. */
static void assert_class(const struct ts_hardness_scale *scale, double mmol_l, const char *wanted)
{
	const char *name = ts_hardness_class(scale, mmol_l);
	size_t length = strcspn(name, "(");

	while (length && name[length - 1] == ' ')
		length--;
	if (length != strlen(wanted) || strncmp(name, wanted, length) != 0)
		fail_msg("%s at %g mmol/L: %s, wanted %s", scale->name, mmol_l, name, wanted);
}

static void test_classes__each_side_of_every_limit(void **state)
{
	(void)state;
	assert_int_equal(ts_hardness_scale_count, SCALES);
	for (size_t s = 0; s < SCALES; s++) {
		const struct ts_hardness_scale *scale = &ts_hardness_scales[s];

		assert_string_equal(scale->name, scales[s].scale);
		assert_int_equal(scale->count, scales[s].count + 1);
		assert_class(scale, 0, scales[s].names[0]);
		for (size_t i = 0; i < scales[s].count; i++) {
			double limit = scales[s].limits[i] * scales[s].unit_mmol_l;

			assert_class(scale, limit * 0.999, scales[s].names[i]);
			assert_class(scale, limit * 1.001, scales[s].names[i + 1]);
		}
	}
}

static void test_classes__unknown_hardness_has_none(void **state)
{
	(void)state;
	assert_null(ts_hardness_class(&ts_hardness_scales[0], (double)NAN));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_classes__each_side_of_every_limit),
		cmocka_unit_test(test_classes__unknown_hardness_has_none),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
