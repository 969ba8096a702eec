/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Names as people type them, on a few records in memory: the very name however it is written is
 * taken, one slip is taken and told, everything else gets candidates. What the shipped catalogue
 * makes of names stands in tests/data/names.csv.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "base/text.h"
#include "catalogue/fold.h"
#include "words/names.h"

#define COUNT(a) (sizeof(a) / sizeof *(a))

/* Records with nothing but names; four real ones, whose names are the ones that people misspell. */
static const char *guppy_names[] = {"guppy", "millions fish"};
static const char *neon_names[] = {"neon tetra"};
static const char *black_names[] = {"black neon tetra", "shared name"};
static const char *puffer_names[] = {"figure-eight puffer", "shared name"};
static const char *accented[] = {"tétra néon", "néon d'Espléndida"};
static const char *numbers[] = {"L046"};
static const struct ts_species species[] = {
	{.file = "a/astyanax-mexicanus-cave.yaml",
		.species = "Astyanax mexicanus",
		.family = "Characidae",
		.form = "cave"},
	{.file = "a/astyanax-mexicanus.yaml",
		.species = "Astyanax mexicanus",
		.family = "Characidae"},
	{.file = "a/dichotomyctere-ocellatus.yaml",
		.species = "Dichotomyctere ocellatus",
		.family = "Tetraodontidae",
		.common.en = {puffer_names, COUNT(puffer_names)}},
	{.file = "a/hyphessobrycon-herbertaxelrodi.yaml",
		.species = "Hyphessobrycon herbertaxelrodi",
		.family = "Characidae",
		.common.en = {black_names, COUNT(black_names)}},
	{.file = "a/paracheirodon-innesi.yaml",
		.species = "Paracheirodon innesi",
		.family = "Characidae",
		.common.en = {neon_names, COUNT(neon_names)},
		.common.fr = {accented, COUNT(accented)}},
	{.file = "a/paracheirodon-simulans.yaml",
		.species = "Paracheirodon simulans",
		.family = "Characidae",
		.trade_numbers = {numbers, COUNT(numbers)}},
	{.file = "a/poecilia-reticulata.yaml",
		.species = "Poecilia reticulata",
		.family = "Poeciliidae",
		.common.en = {guppy_names, COUNT(guppy_names)}},
};

static struct ts_catalogue catalogue_of(const struct ts_species **items)
{
	for (size_t i = 0; i < COUNT(species); i++)
		items[i] = &species[i];
	return (struct ts_catalogue){.items = items, .count = COUNT(species)};
}

/* The species that is taken; else "?" and the candidates, by scientific name. */
static void check(const char *name, const char *wanted)
{
	const struct ts_species *items[COUNT(species)];
	struct ts_catalogue catalogue = catalogue_of(items);
	struct ts_candidates c;
	struct ts_text got;
	const struct ts_species *one = ts_catalogue_species(&catalogue, name, &c);

	ts_text_open(&got, NULL);
	if (one && c.how != TS_NAME_SAME)
		ts_text_put(&got, "for ");
	if (one)
		ts_text_puts(&got, one->species, one->form ? " " : "", one->form, NULL);
	for (size_t i = 0; !one && i < c.count; i++)
		ts_text_puts(
			&got, "? ", c.items[i].species->species, i + 1 < c.count ? " " : "", NULL);
	assert_string_equal(ts_text_get(&got), wanted);
	ts_text_drop(&got);
}

static void test_name__the_very_name_is_taken(void **state)
{
	(void)state;
	check("guppy", "Poecilia reticulata");
	check("GUPPY", "Poecilia reticulata");
	check("Poecilia reticulata", "Poecilia reticulata");
	check("poecilia-reticulata", "Poecilia reticulata");
	check("tétra néon", "Paracheirodon innesi");
	check("TÉTRA NÉON", "Paracheirodon innesi");
}

static void test_name__a_form_is_named_behind_the_species(void **state)
{
	(void)state;
	check("Astyanax mexicanus", "Astyanax mexicanus");
	check("astyanax mexicanus, cave", "Astyanax mexicanus cave");
	check("Astyanax mexicanus cave", "Astyanax mexicanus cave");
	check("astyanax-mexicanus-cave", "Astyanax mexicanus cave");
	check("Astyanax mexicanus pond", "? Astyanax mexicanus ? Astyanax mexicanus");
}

static void test_name__of_several_species_is_not_picked(void **state)
{
	(void)state;
	check("shared name", "? Dichotomyctere ocellatus ? Hyphessobrycon herbertaxelrodi");
	check("Shared Name", "? Dichotomyctere ocellatus ? Hyphessobrycon herbertaxelrodi");
}

static void test_name__one_slip_is_taken_and_told(void **state)
{
	(void)state;
	check("gupyp", "for Poecilia reticulata");
	check("figure-eigth puffer", "for Dichotomyctere ocellatus");
	check("neon tetrra", "for Paracheirodon innesi");
	check("Poecilia reticulatus", "for Poecilia reticulata");
	check("puffer figure eight", "for Dichotomyctere ocellatus");
}

static void test_name__short_words_and_more_slips_get_candidates(void **state)
{
	(void)state;
	check("gupy", "? Poecilia reticulata");
	check("gappie", "? Poecilia reticulata");
	check("Poecila retikulata", "? Poecilia reticulata");
	check("nein tetra", "? Paracheirodon innesi ? Hyphessobrycon herbertaxelrodi");
}

static void test_name__of_another_kind_of_animal_is_outside(void **state)
{
	(void)state;
	check("axolotls", "");
	check("african dwarf frog", "");
	check("blood parrot", "");
	check("mbuna", ""); /* a group that this catalogue does not have */
}

static void test_name__written_another_way_is_taken(void **state)
{
	(void)state;
	check("figure eight puffer", "Dichotomyctere ocellatus");
	check("figureeight-puffer", "Dichotomyctere ocellatus");
	check("tetra neon", "Paracheirodon innesi");
	check("neon tetras", "Paracheirodon innesi");
	check("guppies", "Poecilia reticulata");
	check("neon d Esplendida", "Paracheirodon innesi");
	check("neon d'Esplendída", "Paracheirodon innesi");
}

static void test_name__a_number_bears_no_slip(void **state)
{
	(void)state;
	check("L46", "Paracheirodon simulans");
	check("l-046", "Paracheirodon simulans");
	check("L 46", "Paracheirodon simulans");
	check("green pleco L46", "? Paracheirodon simulans");
	check("L47", "");
	check("L460", "");
}

static void test_name__fewer_and_other_words(void **state)
{
	(void)state;
	check("puffer", "? Dichotomyctere ocellatus");
	check("a neon", "? Paracheirodon innesi ? Hyphessobrycon herbertaxelrodi");
	check("P. innesi", "? Paracheirodon innesi");
	check("guppy from the shop", "? Poecilia reticulata");
}

static void test_name__nothing_is_near(void **state)
{
	(void)state;
	check("xyzzy", "");
	check("", "");
	check(" - ", "");
	check("\xff\xfe", "");
	check("a name that is far longer than any name of an animal that was ever written down by "
	      "anybody, and that must be neither taken nor overrun any buffer whatever it holds, "
	      "since it comes from the command line or from a file that somebody else wrote, and "
	      "so on and so forth, once more for good measure",
		"");
}

static void test_say__candidates(void **state)
{
	const struct ts_species *items[COUNT(species)];
	struct ts_catalogue catalogue = catalogue_of(items);
	struct ts_candidates c;
	struct ts_text got;

	(void)state;
	ts_text_open(&got, NULL);
	assert_null(ts_catalogue_species(&catalogue, "gupy", &c));
	ts_say_candidates(&got, "gupy", &c);
	assert_string_equal(ts_text_get(&got),
		"'gupy' is no name in the catalogue; did you mean guppy (Poecilia reticulata)?");
	ts_text_drop(&got);
	assert_null(ts_catalogue_species(&catalogue, "shared name", &c));
	ts_say_candidates(&got, "shared name", &c);
	assert_string_equal(ts_text_get(&got),
		"'shared name' is the name of several species; take one of: shared name "
		"(Dichotomyctere ocellatus), shared name (Hyphessobrycon herbertaxelrodi)");
	ts_text_drop(&got);
	assert_null(ts_catalogue_species(&catalogue, "gupy", NULL));
}

static void check_fold(enum ts_fold how, const char *text, const char *wanted)
{
	char got[TS_FOLD_ROOM];

	ts_fold(how, text, strlen(text), got, sizeof got);
	assert_string_equal(got, wanted);
}

static void test_fold__what_each_degree_leaves_out(void **state)
{
	char tiny[4];

	(void)state;
	check_fold(TS_FOLD_ACCENTS, "Gelbe Zwergbärblinge", "gelbe zwergbarblinge");
	check_fold(TS_FOLD_ACCENTS, "Weißer", "weisser");
	check_fold(TS_FOLD_ACCENTS, "live-bearer", "live-bearer");
	check_fold(TS_FOLD_NAME, " Endler's  live-bearer ", "endlers live bearer");
	check_fold(TS_FOLD_NAME, "Endler\xe2\x80\x99s", "endlers");
	check_fold(TS_FOLD_ACCENTS, "T\xc3", "t?");
	assert_int_equal(ts_fold(TS_FOLD_CASE, "abcdef", 6, tiny, sizeof tiny), 3);
	assert_string_equal(tiny, "abc");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_name__the_very_name_is_taken),
		cmocka_unit_test(test_name__a_form_is_named_behind_the_species),
		cmocka_unit_test(test_name__of_several_species_is_not_picked),
		cmocka_unit_test(test_name__one_slip_is_taken_and_told),
		cmocka_unit_test(test_name__short_words_and_more_slips_get_candidates),
		cmocka_unit_test(test_name__of_another_kind_of_animal_is_outside),
		cmocka_unit_test(test_name__a_number_bears_no_slip),
		cmocka_unit_test(test_name__written_another_way_is_taken),
		cmocka_unit_test(test_name__fewer_and_other_words),
		cmocka_unit_test(test_name__nothing_is_near),
		cmocka_unit_test(test_say__candidates),
		cmocka_unit_test(test_fold__what_each_degree_leaves_out),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
