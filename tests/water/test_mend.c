/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The minerals of new water in one line. Masses reckoned by hand from atomic weights: 1 dKH is
 * 0.356652 meq/L, 1 dGH is 0.178326 mmol/L; NaHCO3 84.007, CaCl2.2H2O 147.01, MgSO4.7H2O 246.47.
 */
#include "waters.h"

#include "../given.h"
#include "water/mend.h"
#include "words/mend.h"

static const double no = (double)NAN;

static struct ts_mend found(double gh, double kh, double gh_wish, double kh_wish)
{
	const struct ts_mend_wish wish = {gh, kh, gh_wish, kh_wish, 25};
	struct ts_mend m;

	assert_true(ts_mend_find(&wish, &m));
	return m;
}

/* Bicarbonate needs no GH. */
static void test_mend__kh_alone_without_gh(void **state)
{
	struct ts_mend m = found(no, 2, no, 10);

	(void)state;
	near(m.bicarbonate_g, 8 * 0.356652 * 84.007 / 10, 1e-3, 0);
	assert_true(m.calcium_chloride_g == 0 && m.epsom_g == 0 && m.pure_l == 0);
	assert_true(isnan(m.gh_dh) && m.kh_dh == 10);
	assert_true(m.ph > 7.8 && m.ph < 8.3);
}

static void test_mend__gh_alone_without_kh(void **state)
{
	struct ts_mend m = found(3, no, 11, no);

	(void)state;
	near(m.calcium_chloride_g, 0.75 * 8 * 0.178326 * 147.01 / 10, 1e-3, 0);
	near(m.epsom_g, 0.25 * 8 * 0.178326 * 246.47 / 10, 1e-3, 0);
	assert_true(m.bicarbonate_g == 0 && isnan(m.kh_dh) && isnan(m.ph));
}

/* GH 18, KH 6 to GH 6: a third of the water is left, and KH goes back to 4. */
static void test_mend__thinned_and_put_back(void **state)
{
	struct ts_mend m = found(18, 6, 6, 4);

	(void)state;
	near(m.pure_l, 100 * 2.0 / 3, 1e-9, 0);
	near(m.gh_dh, 6, 1e-9, 0);
	near(m.bicarbonate_g, 2 * 0.356652 * 84.007 / 10, 1e-3, 0);
	near(m.kh_dh, 4, 1e-9, 0);
}

static void test_mend__nothing_to_do(void **state)
{
	const struct ts_mend_wish wish = {6, 4, 6, 4, 25};
	struct ts_mend m;

	(void)state;
	assert_false(ts_mend_find(&wish, &m));
	assert_true(m.bicarbonate_g == 0 && m.pure_l == 0);
}

static void test_mend__said_in_a_line(void **state)
{
	struct ts_mend m = found(5, 3, no, 6);
	struct ts_text text;

	(void)state;
	ts_text_open(&text, NULL);
	ts_say_mend(&text, &m);
	assert_string_equal(ts_text_get(&text),
		"Into each 100 L of new water 9 g of baking soda (sodium bicarbonate): then GH 5, "
		"KH 6, pH about 7.9.");
	ts_text_drop(&text);
	m = found(0, 0, 4, 2);
	ts_text_open(&text, NULL);
	ts_say_mend_salts(&text, &m);
	assert_string_equal(ts_text_get(&text), "6 g of baking soda (sodium bicarbonate), 7.9 g of "
						"calcium chloride and 4.4 g of Epsom salt");
	ts_text_drop(&text);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_mend__kh_alone_without_gh),
		cmocka_unit_test(test_mend__gh_alone_without_kh),
		cmocka_unit_test(test_mend__thinned_and_put_back),
		cmocka_unit_test(test_mend__nothing_to_do),
		cmocka_unit_test(test_mend__said_in_a_line),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
