/* SPDX-License-Identifier: Apache-2.0 */
/* What the frozen catalogue answers to traits, lengths, sources and water. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "catalogue/traits.h"

/* The epithets of those that pass, in the order of the catalogue. */
static void check(
	const struct ts_catalogue *catalogue, const struct ts_filter *filter, const char *wanted)
{
	char got[512] = "";

	for (size_t i = 0; i < catalogue->count; i++) {
		if (!ts_filter_passes(filter, catalogue->items[i]))
			continue;
		strcat(got, got[0] ? " " : "");
		strcat(got, catalogue->items[i]->species + strlen("Exempla "));
	}
	assert_string_equal(got, wanted);
}

static struct ts_filter wanting(const char *key, const char *word)
{
	struct ts_filter filter = {.wanted_count = 1};
	const char *const *words;

	assert_true(ts_trait_find(key, &filter.wanted[0].trait));
	words = filter.wanted[0].trait.field->words;
	while (words[filter.wanted[0].word] && strcmp(words[filter.wanted[0].word], word) != 0)
		filter.wanted[0].word++;
	assert_non_null(words[filter.wanted[0].word]);
	return filter;
}

static struct ts_measure between(double low, double high)
{
	return (struct ts_measure){(low + high) / 2, low, high, TS_MEASURE_RANGE};
}

static void test_trait__words_of_a_record(void **state)
{
	struct ts_filter f = wanting("home-water", "black");

	check(*state, &f, "atra");
	f = wanting("home_water", "black");
	check(*state, &f, "atra");
	f = wanting("kind", "snail");
	check(*state, &f, "testa");
	f = wanting("swims", "bottom");
	check(*state, &f, "");
}

static void test_trait__lists_and_inner_blocks(void **state)
{
	struct ts_filter f = wanting("cautions", "hard-to-feed");
	struct ts_species species = {.species = "Exempla nova"};

	(void)state;
	assert_false(ts_filter_passes(&f, &species));
	species.cautions = 1u << f.wanted[0].word | 1u;
	assert_true(ts_filter_passes(&f, &species));
	f = wanting("flow", "still");
	assert_false(ts_filter_passes(&f, &species));
	species.needs.flow = f.wanted[0].word;
	assert_true(ts_filter_passes(&f, &species));
}

static void test_trait__unknown_key(void **state)
{
	struct ts_trait trait;

	(void)state;
	assert_false(ts_trait_find("species", &trait)); /* takes a text, not words */
	assert_false(ts_trait_find("swim", &trait));
	assert_false(ts_trait_find("needs", &trait));
}

static void test_filter__length_and_source(void **state)
{
	struct ts_filter f = {.greatest_length_cm = 3};

	check(*state, &f, "atra crusta");
	f = (struct ts_filter){.least_length_cm = 10};
	check(*state, &f, "calida frigida lacustris salsa");
	f = (struct ts_filter){.source = "memory", .greatest_length_cm = 5};
	check(*state, &f, "memoria");
	f = (struct ts_filter){.source = "nobody"};
	check(*state, &f, "");
}

static void test_filter__lives_in_all_of_the_water(void **state)
{
	struct ts_filter f = {.water[TS_GH] = between(2, 18)};

	check(*state, &f, "lata septima");
	f = (struct ts_filter){.water[TS_TEMPERATURE] = between(15, 17)};
	check(*state, &f, "frigida");
	f = (struct ts_filter){.water[TS_KH] = between(14, 16)}; /* by kind of water */
	check(*state, &f, "abyssi dura frigida lacustris media salsa testa");
	f = (struct ts_filter){.water[TS_SALINITY] = between(5, 5)};
	check(*state, &f, "salsa");
}

static int load(void **state)
{
	static struct ts_catalogue catalogue;

	ts_catalogue_open(&catalogue, NULL);
	*state = &catalogue;
	return ts_catalogue_add_folder(&catalogue, TS_TEST_DATA "/catalogue", NULL) != TS_OK;
}

static int unload(void **state)
{
	ts_catalogue_close(*state);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_trait__words_of_a_record),
		cmocka_unit_test(test_trait__lists_and_inner_blocks),
		cmocka_unit_test(test_trait__unknown_key),
		cmocka_unit_test(test_filter__length_and_source),
		cmocka_unit_test(test_filter__lives_in_all_of_the_water),
	};

	return cmocka_run_group_tests(tests, load, unload);
}
