/* SPDX-License-Identifier: Apache-2.0 */
/*
 * An animal is at home in its own lake or river: the shipped records against natural waters
 * (tests/data/reference/natural-waters.csv, natives.csv; each figure there says whether it was seen
 * in a source or stands from memory). A water is a range: of its pH and temperature the value
 * counts that the animal likes best, of its hardness the usual one. Each parameter is judged by
 * itself; whether a tank may be filled with water so poor in minerals is another question.
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
#include <tapshoal/match.h>

#include "base/findings.h"
#include "table.h"

struct shelf {
	struct ts_catalogue catalogue;
	struct table *waters, *natives;
};

/* What one way of keeping makes of all pairs. */
struct tally {
	size_t pairs, comfortable, tolerated, doubtful, shut_out, harmed;
};

static int open_shelf(void **state)
{
	static struct shelf shelf;
	struct ts_findings findings;

	ts_findings_open(&findings, NULL);
	ts_catalogue_open(&shelf.catalogue, NULL);
	assert_int_equal(
		ts_catalogue_add_folder(&shelf.catalogue, TS_SPECIES_DIR, &findings), TS_OK);
	ts_findings_drop(&findings);
	shelf.waters = table_open("natural-waters.csv");
	shelf.natives = table_open("natives.csv");
	*state = &shelf;
	return 0;
}

static int close_shelf(void **state)
{
	struct shelf *shelf = *state;

	table_close(shelf->natives);
	table_close(shelf->waters);
	ts_catalogue_close(&shelf->catalogue);
	return 0;
}

static size_t row_of(const struct table *waters, const char *id)
{
	for (size_t i = 0; i < waters->rows; i++) {
		if (strcmp(table_text(waters, i, "id"), id) == 0)
			return i;
	}
	fail_msg("no water %s", id);
	return 0;
}

static struct ts_measure measure(double value)
{
	if (isnan(value))
		return (struct ts_measure){.kind = TS_MEASURE_NONE};
	return (struct ts_measure){
		.kind = TS_MEASURE_VALUE, .value = value, .low = value, .high = value};
}

/* The value between two that lies nearest to the middle of what the animal likes. */
static double nearest(double low, double high, const struct ts_parameter_fit *fit)
{
	double liked = (fit->preferred.low + fit->preferred.high) / 2;

	return fmin(fmax(liked, low), high);
}

static void meet(const struct ts_species *s, const struct table *waters, size_t row, bool wild,
	struct ts_match *ret)
{
	struct ts_reading reading = {.method = TS_METHOD_LABORATORY};
	struct ts_water water = {.readings = &reading, .reading_count = 1};
	struct ts_keeping keeping = {.wild = wild};
	struct ts_profile profile;

	ts_profile_make(&water, &keeping, NULL, -1, &profile);
	ts_match_species(s, &profile, &keeping, NULL, ret);
	reading.gh_dh = measure(table_number(waters, row, "gh_dH"));
	reading.kh_dh = measure(table_number(waters, row, "kh_dH"));
	reading.ph = measure(nearest(table_number(waters, row, "ph_min"),
		table_number(waters, row, "ph_max"), &ret->at[TS_PH]));
	keeping.temperature = measure(nearest(table_number(waters, row, "t_min_C"),
		table_number(waters, row, "t_max_C"), &ret->at[TS_TEMPERATURE]));
	ts_profile_make(&water, &keeping, NULL, -1, &profile);
	/* The river runs at the pH it was measured at, not at that of a tank of its water. */
	profile.at[TS_PH] = (struct ts_span){.given = true,
		.value = reading.ph.value,
		.low = reading.ph.value,
		.high = reading.ph.value,
		.from = TS_FROM_TANK};
	ts_match_species(s, &profile, &keeping, NULL, ret);
}

/* The worst verdict of GH, KH, pH and temperature, each by itself. */
static enum ts_verdict worst_of(const struct ts_match *m)
{
	enum ts_verdict worst = TS_SUITS;

	for (int p = TS_GH; p <= TS_TEMPERATURE; p++) {
		assert_true(m->at[p].known);
		if (m->at[p].verdict > worst)
			worst = m->at[p].verdict;
	}
	return worst;
}

static void complain(const char *water, const struct ts_match *m, bool wild)
{
	for (int p = TS_GH; p <= TS_TEMPERATURE; p++) {
		const struct ts_parameter_fit *f = &m->at[p];

		if (f->verdict >= TS_UNSURE)
			print_error("%s: %s %s, parameter %d at %.2f, lives in %g..%g\n", water,
				wild ? "wild" : "farmed", m->species->species, p, f->reading,
				f->tolerated.low, f->tolerated.high);
	}
}

/* Farmed animals that the water of their forebears would harm; why is common practice, no source.
 */
static const struct {
	const char *water, *species, *why;
} harmed[] = {
	{"manaus-streams", "Carnegiella strigata", "pH 4 after water with a buffer"},
	{"manaus-streams", "Nannostomus marginatus", "pH 4 after water with a buffer"},
	{"okefenokee", "Heterandria formosa", "raised in hard water for generations"},
	{"japan-rivers", "Cipangopaludina japonica", "its shell dissolves within a year"},
};

static bool may_be_harmed(const char *water, const char *species)
{
	for (size_t i = 0; i < sizeof harmed / sizeof *harmed; i++) {
		if (strcmp(harmed[i].water, water) == 0 && strcmp(harmed[i].species, species) == 0)
			return true;
	}
	return false;
}

/* All fresh waters that are fit to hold records against. */
static struct tally walk(const struct shelf *shelf, bool wild, enum ts_verdict at_worst)
{
	struct tally t = {0};

	for (size_t i = 0; i < shelf->natives->rows; i++) {
		const char *id = table_text(shelf->natives, i, "water");
		const char *name = table_text(shelf->natives, i, "species");
		size_t row = row_of(shelf->waters, id);
		const struct ts_species *s = ts_catalogue_species(&shelf->catalogue, name, NULL);
		struct ts_match match;
		enum ts_verdict worst;

		if (strcmp(table_text(shelf->waters, row, "use"), "check") != 0)
			continue;
		if (!s)
			continue; /* another form of it is kept: koi, cave tetra */
		meet(s, shelf->waters, row, wild, &match);
		worst = worst_of(&match);
		t.pairs++;
		t.comfortable += worst == TS_SUITS;
		t.tolerated += worst == TS_TOLERATES;
		t.doubtful += worst == TS_UNSURE;
		t.shut_out += worst == TS_EXCLUDED;
		if (!wild && may_be_harmed(id, name)) {
			t.harmed++;
			assert_int_equal(worst, TS_EXCLUDED);
			continue;
		}
		if (worst > at_worst)
			complain(id, &match, wild);
	}
	printf("# %s: %zu pairs, %zu comfortable, %zu tolerated, %zu doubtful, %zu shut out\n",
		wild ? "wild" : "farmed", t.pairs, t.comfortable, t.tolerated, t.doubtful,
		t.shut_out);
	fflush(stdout);
	assert_true(t.pairs > 150);
	return t;
}

/* Caught there, it lives there. */
static void test_home__wild_animals_are_at_home(void **state)
{
	struct tally t = walk(*state, true, TS_TOLERATES);

	assert_int_equal(t.doubtful + t.shut_out, 0);
}

/* Its farmed kin is not shut out of the water of its forebears. */
static void test_home__farmed_animals_are_not_shut_out(void **state)
{
	struct tally t = walk(*state, false, TS_UNSURE);

	assert_int_equal(t.harmed, sizeof harmed / sizeof *harmed);
	assert_int_equal(t.shut_out, t.harmed);
}

/* The lakes: whoever lives in one lives in its water, wild or farmed. */
static void test_home__lakes_bear_all_their_fishes(void **state)
{
	static const struct {
		const char *water;
		int home;
	} lakes[] = {{"malawi", TS_HOME_MALAWI}, {"tanganyika", TS_HOME_TANGANYIKA},
		{"victoria", TS_HOME_VICTORIA}};
	const struct shelf *shelf = *state;
	size_t met = 0, astray = 0;

	for (size_t i = 0; i < shelf->catalogue.count; i++) {
		const struct ts_species *s = shelf->catalogue.items[i];

		for (size_t n = 0; n < sizeof lakes / sizeof *lakes; n++) {
			size_t row = row_of(shelf->waters, lakes[n].water);

			if (s->home_water != lakes[n].home)
				continue;
			for (int wild = 0; wild < 2; wild++) {
				struct ts_match match;

				meet(s, shelf->waters, row, wild, &match);
				met++;
				if (worst_of(&match) <= TS_TOLERATES)
					continue;
				astray++;
				complain(lakes[n].water, &match, wild);
			}
		}
	}
	printf("# %zu of %zu are at home\n", met - astray, met);
	fflush(stdout);
	assert_true(met > 120);
	assert_int_equal(astray, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_home__wild_animals_are_at_home),
		cmocka_unit_test(test_home__farmed_animals_are_not_shut_out),
		cmocka_unit_test(test_home__lakes_bear_all_their_fishes),
	};

	return cmocka_run_group_tests(tests, open_shelf, close_shelf);
}
