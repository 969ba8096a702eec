/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside check: every table that USGS PHREEQC 3 (database phreeqc.dat), an independent public
 * code, computed; each compared twice, with the same solver.
 *
 * With the constants of the tables: 0.02 pH, 2 % CO2, 0.03 in an index, in every row. That is the
 * check of the equations. Those constants differ in two things from the published ones. There is
 * no pair CaHCO3+: its own lime waters say so, below. And calcite's is another: it is recovered
 * from three of the tables' rows, and the others have to be met with it.
 *
 * With the published constants, which the program uses: the same limits where they are kept,
 * wider ones where those two differences show. Each says so.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "chem/carbonate.h"
#include "chem/ions.h"
#include "chem/minerals.h"
#include "chem/substances.h"
#include "waters_table.h"

#define KELVIN 273.15
#define ROWS_MOST 32

enum quantity { PH, CO2, TRACE, CALCITE, ARAGONITE, DISSOLVED, STRENGTH, QUANTITIES };
static const struct {
	const char *name;
	bool relative;
	double wanted;
} quantities[QUANTITIES] = {
	[PH] = {"pH", false, 0.02},
	[CO2] = {"CO2", true, 0.02},
	[TRACE] = {"CO2 below 1 mg/L, printed to two decimals, mg/L", false, 0.005},
	[CALCITE] = {"calcite index", false, 0.03},
	[ARAGONITE] = {"aragonite index", false, 0.03},
	[DISSOLVED] = {"lime dissolved", true, 0.02},
	[STRENGTH] = {"ionic strength", true, 0.04},
};

struct comparison {
	const struct ts_chem_constant_set *set;
	struct ts_chem_constants k;
	struct worst worst[QUANTITIES];
};

/* The published rows, less CaHCO3+, and with the tables' calcite. */
struct recovered {
	struct ts_chem_constant rows[ROWS_MOST];
	struct ts_chem_constant_set set;
};

/* What the open-system table calls a gas, atm. */
static double pressure_atm(const char *label)
{
	if (strcmp(label, "420ppm") == 0)
		return 420e-6;
	if (strcmp(label, "10^-3.5") == 0)
		return 3.1622776601683794e-4;
	if (strcmp(label, "10^-2") == 0)
		return 1e-2;
	assert_string_equal(label, "1atm");
	return 1;
}

/* A water of the open-system table: calcium and alkalinity as PHREEQC found them. */
static struct ts_solution lime_water(const struct table *t, size_t row)
{
	return (struct ts_solution){.temp_c = table_number(t, row, "t_C"),
		.ca_mmol_l = table_number(t, row, "Ca_mmol"),
		.alk_meq_l = fmax(table_number(t, row, "alk_meq"), 0)};
}

/* log10 of the activities' product of Ca and CO3, by the solver, at the row's own pH. */
static double ion_product(const struct table *t, size_t row, const struct ts_chem_constant_set *set)
{
	struct ts_solution s = lime_water(t, row);
	struct ts_chem_constants k = {0};
	struct ts_ion_species now = {0};

	ts_chem_constants_of(&k, set, s.temp_c);
	assert_int_equal(ts_chem_speciate_at_ph(&k, &s, table_number(t, row, "pH"), &now), TS_OK);
	return log10(now.ca * now.co3 * now.gamma_2 * now.gamma_2);
}

static size_t row_of(const struct table *t, const char *gas, const char *mineral, double temp_c)
{
	for (size_t i = 0; i < t->rows; i++)
		if (strcmp(table_text(t, i, "pCO2"), gas) == 0 &&
			strcmp(table_text(t, i, "mineral"), mineral) == 0 &&
			table_number(t, i, "t_C") == temp_c)
			return i;
	fail_msg("no row %s, %s, %g C", gas, mineral, temp_c);
	return 0;
}

/*
 * log K of calcite = a + bT + c/T through the three rows over calcite in air at 0, 15 and 30 C.
 * Everything else that the tables say of calcite is a prediction of these three.
 */
static void recover_calcite(
	struct ts_chem_constant *calcite, const struct ts_chem_constant_set *set)
{
	struct table *t = table_open("open_system_minerals_phreeqc.csv");
	double kelvin[3], product[3], slope[3];

	for (int i = 0; i < 3; i++) {
		kelvin[i] = 15 * i + KELVIN;
		product[i] = ion_product(t, row_of(t, "420ppm", "Calcite", 15 * i), set);
	}
	for (int i = 1; i < 3; i++)
		slope[i] = (product[i] - product[0]) / (kelvin[i] - kelvin[0]);
	calcite->c = (slope[2] - slope[1]) * kelvin[0] / (1 / kelvin[2] - 1 / kelvin[1]) * -1;
	calcite->b = slope[1] + calcite->c / (kelvin[0] * kelvin[1]);
	calcite->a = product[0] - calcite->b * kelvin[0] - calcite->c / kelvin[0];
	calcite->d = calcite->e = calcite->f = 0;
	table_close(t);
}

static void recover(struct recovered *own)
{
	struct ts_chem_constant *calcite = NULL;
	size_t n = 0;

	assert_true(ts_chem_published.n < ROWS_MOST);
	for (size_t i = 0; i < ts_chem_published.n; i++) {
		const struct ts_chem_constant *row = &ts_chem_published.rows[i];

		if (row->offset == TS_CHEM_CONSTANT(ca_hco3))
			continue;
		own->rows[n] = *row;
		if (row->offset == TS_CHEM_CONSTANT(mineral[TS_CALCITE]))
			calcite = &own->rows[n];
		n++;
	}
	assert_int_equal(n, ts_chem_published.n - 1);
	assert_non_null(calcite);
	own->set = (struct ts_chem_constant_set){own->rows, n};
	recover_calcite(calcite, &own->set);
}

static void compare(
	struct comparison *c, enum quantity what, double got, double want, const char *where)
{
	if (quantities[what].relative)
		worst_note_relative(&c->worst[what], got, want, where);
	else
		worst_note(&c->worst[what], got, want, where);
}

static double co2_mg_l(const struct ts_ion_species *now)
{
	return ts_chem_co2_mg_l_from_mmol_l(1000 * now->co2);
}

/* The two indices of a row that prints both; those of lime-free water are -99. */
static void compare_indices(struct comparison *c, const struct ts_ion_species *now, double calcite,
	double aragonite, const char *where)
{
	compare(c, CALCITE, ts_chem_species_si(&c->k, now, TS_CALCITE), calcite, where);
	compare(c, ARAGONITE, ts_chem_species_si(&c->k, now, TS_ARAGONITE), aragonite, where);
}

/*
 * Runs one comparison over a table with both sets. `published` has the limits that the published
 * constants keep, 0 for what the table does not tell; the tables' own must keep those wanted.
 */
static void both(const char *name, void (*run)(const struct table *t, struct comparison *c),
	const double published[QUANTITIES])
{
	struct recovered own;
	struct table *t = table_open(name);

	recover(&own);
	for (int turn = 0; turn < 2; turn++) {
		const char *set = turn == 0 ? "tables' constants" : "published constants";
		struct comparison c = {.set = turn == 0 ? &own.set : &ts_chem_published};
		char what[QUANTITIES][120];

		for (int q = 0; q < QUANTITIES; q++) {
			snprintf(what[q], sizeof(what[q]), "%s, %s, %s", name, set,
				quantities[q].name);
			c.worst[q].what = what[q];
			c.worst[q].limit = turn == 0 ? quantities[q].wanted : published[q];
		}
		run(t, &c);
		for (int q = 0; q < QUANTITIES; q++) {
			if (published[q] > 0)
				worst_assert(&c.worst[q]);
			else
				assert_int_equal(c.worst[q].count, 0);
		}
	}
	table_close(t);
}

/* Water of one salt, NaHCO3. */
static struct ts_solution soda_water(double alk_meq_l, double temp_c)
{
	return (struct ts_solution){
		.temp_c = temp_c, .na_mmol_l = alk_meq_l, .alk_meq_l = alk_meq_l};
}

static void at_pressure(
	struct comparison *c, const struct ts_solution *s, double atm, struct ts_ion_species *now)
{
	ts_chem_constants_of(&c->k, c->set, s->temp_c);
	assert_int_equal(ts_chem_speciate_at_co2(&c->k, s, 1000 * c->k.kh * atm, now), TS_OK);
}

static void at_ph(
	struct comparison *c, const struct ts_solution *s, double ph, struct ts_ion_species *now)
{
	ts_chem_constants_of(&c->k, c->set, s->temp_c);
	assert_int_equal(ts_chem_speciate_at_ph(&c->k, s, ph, now), TS_OK);
}

static void run_air(const struct table *t, struct comparison *c)
{
	for (size_t i = 0; i < t->rows; i++) {
		struct ts_solution s =
			soda_water(table_number(t, i, "alk_meq_kgw"), table_number(t, i, "t_C"));
		struct ts_ion_species now = {0};
		char where[80];

		snprintf(where, sizeof(where), "%s ppm, %s C, KH %s", table_text(t, i, "CO2_ppm"),
			table_text(t, i, "t_C"), table_text(t, i, "KH_dKH"));
		at_pressure(c, &s, 1e-6 * table_number(t, i, "CO2_ppm"), &now);
		compare(c, PH, now.ph, table_number(t, i, "pH"), where);
	}
}

static void test_phreeqc__soda_in_air_by_kh(void **state)
{
	(void)state;
	both("air_equilibrium_pH_by_KH_phreeqc.csv", run_air, (double[QUANTITIES]){[PH] = 0.02});
}

static void run_co2(const struct table *t, struct comparison *c)
{
	for (size_t i = 0; i < t->rows; i++) {
		struct ts_solution s =
			soda_water(ts_chem_meq_l_from_dkh(table_number(t, i, "KH_dKH")),
				table_number(t, i, "t_C"));
		struct ts_ion_species now = {0};
		char where[80];

		snprintf(where, sizeof(where), "%s C, KH %s, pH %s", table_text(t, i, "t_C"),
			table_text(t, i, "KH_dKH"), table_text(t, i, "pH"));
		at_ph(c, &s, table_number(t, i, "pH"), &now);
		compare(c, CO2, co2_mg_l(&now), table_number(t, i, "CO2_mg_L_phreeqc"), where);
		compare(c, CO2, ts_chem_species_dic_mmol_l(&now), table_number(t, i, "DIC_mmol"),
			where);
	}
}

static void test_phreeqc__co2_and_carbon_from_ph_and_kh(void **state)
{
	(void)state;
	both("co2_from_pH_KH_phreeqc.csv", run_co2, (double[QUANTITIES]){[CO2] = 0.02});
}

static bool under_pure_co2(const struct table *t, size_t row)
{
	return pressure_atm(table_text(t, row, "pCO2")) >= 1;
}

/* Waters with and without lime, as they stand in the table: pH by the gas, the rest by the pH. */
static void open_row(const struct table *t, size_t i, struct comparison *c)
{
	struct ts_solution s = lime_water(t, i);
	struct ts_ion_species now = {0};
	const char *gas = table_text(t, i, "pCO2"), *mineral = table_text(t, i, "mineral");
	char where[80];

	snprintf(where, sizeof(where), "%s, %s, %g C", gas, mineral, s.temp_c);
	at_pressure(c, &s, pressure_atm(gas), &now);
	compare(c, PH, now.ph, table_number(t, i, "pH"), where);
	if (strcmp(mineral, "None") == 0)
		return;
	at_ph(c, &s, table_number(t, i, "pH"), &now);
	compare(c, CO2, 1000 * now.co2, table_number(t, i, "CO2aq_mmol"), where);
	compare_indices(c, &now, table_number(t, i, "SI_calcite"),
		table_number(t, i, "SI_aragonite"), where);
}

static void run_open(const struct table *t, struct comparison *c)
{
	for (size_t i = 0; i < t->rows; i++)
		if (!under_pure_co2(t, i))
			open_row(t, i, c);
}

static void run_pure_co2(const struct table *t, struct comparison *c)
{
	for (size_t i = 0; i < t->rows; i++)
		if (under_pure_co2(t, i))
			open_row(t, i, c);
}

/* Published: calcite's constant, 0.078 lower at 0 C and 0.032 at 25 C. */
static void test_phreeqc__lime_water_under_gas(void **state)
{
	(void)state;
	both("open_system_minerals_phreeqc.csv", run_open,
		(double[QUANTITIES]){
			[PH] = 0.02, [CO2] = 0.02, [CALCITE] = 0.075, [ARAGONITE] = 0.03});
}

/* Published: at an ionic strength up to 0.047, 6 % of the carbon is CaHCO3+. */
static void test_phreeqc__lime_water_under_pure_co2(void **state)
{
	(void)state;
	both("open_system_minerals_phreeqc.csv", run_pure_co2,
		(double[QUANTITIES]){
			[PH] = 0.031, [CO2] = 0.06, [CALCITE] = 0.05, [ARAGONITE] = 0.07});
}

/* From pure water to balance with lime and gas up to 0.01 atm. */
static void run_dissolved(const struct table *t, struct comparison *c)
{
	for (size_t i = 0; i < t->rows; i++) {
		struct ts_solution s = {.temp_c = table_number(t, i, "t_C")};
		struct ts_ion_species now = {0};
		const char *gas = table_text(t, i, "pCO2"), *name = table_text(t, i, "mineral");
		enum ts_mineral mineral = strcmp(name, "Calcite") == 0 ? TS_CALCITE : TS_ARAGONITE;
		char where[80];

		if (strcmp(name, "None") == 0 || under_pure_co2(t, i))
			continue;
		snprintf(where, sizeof(where), "%s, %s, %g C", gas, name, s.temp_c);
		ts_chem_constants_of(&c->k, c->set, s.temp_c);
		assert_int_equal(ts_chem_saturate_open(&c->k, &s, mineral,
					 1000 * c->k.kh * pressure_atm(gas), &s),
			TS_OK);
		assert_int_equal(ts_chem_speciate_closed(&c->k, &s, &now), TS_OK);
		compare(c, PH, now.ph, table_number(t, i, "pH"), where);
		compare(c, CO2, 1000 * now.co2, table_number(t, i, "CO2aq_mmol"), where);
		compare(c, DISSOLVED, s.ca_mmol_l, table_number(t, i, "Ca_mmol"), where);
	}
}

/* Published: of calcite less dissolves by its constant; aragonite's is the same in both. */
static void test_phreeqc__lime_dissolved_to_balance(void **state)
{
	(void)state;
	both("open_system_minerals_phreeqc.csv", run_dissolved,
		(double[QUANTITIES]){[PH] = 0.026, [CO2] = 0.02, [DISSOLVED] = 0.06});
}

static void run_blends(const struct table *t, struct comparison *c)
{
	struct ts_solution hard = waters_01(20), pure = {.temp_c = 20}, blend;
	struct ts_ion_species now = {0};
	const struct ts_solution *waters[] = {&hard, &pure};

	at_ph(c, &hard, 7.34, &now);
	hard.dic_mmol_l = ts_chem_species_dic_mmol_l(&now);
	for (size_t i = 0; i < t->rows; i++) {
		const char *name = table_text(t, i, "case");
		double share = waters_blend_share(t, i);

		ts_chem_mix(waters, (const double[]){share, 1 - share}, 2, &blend);
		if (strstr(name, "open"))
			at_pressure(c, &blend, 420e-6, &now);
		else
			assert_int_equal(ts_chem_speciate_closed(&c->k, &blend, &now), TS_OK);
		compare(c, PH, now.ph, table_number(t, i, "pH"), name);
		if (!(share > 0))
			continue;
		compare(c, CO2, co2_mg_l(&now), table_number(t, i, "CO2_mg"), name);
		compare(c, CALCITE, ts_chem_species_si(&c->k, &now, TS_CALCITE),
			table_number(t, i, "SI_calcite"), name);
	}
}

/* water-01 and pure water, closed and in air. Published: calcite's constant, 0.042 at 20 C. */
static void test_phreeqc__blends(void **state)
{
	(void)state;
	both("blend_water01_phreeqc.csv", run_blends,
		(double[QUANTITIES]){[PH] = 0.02, [CO2] = 0.02, [CALCITE] = 0.045});
}

static void run_waters(const struct table *t, struct comparison *c)
{
	for (size_t i = 0; i < t->rows; i++) {
		double printed = table_number(t, i, "temp_C");
		double co2 = table_number(t, i, "phreeqc_CO2_mg_L");
		struct ts_solution s = waters_row(t, i, isnan(printed) ? 12 : printed);
		struct ts_ion_species now = {0};
		const char *name = table_text(t, i, "label");

		if (isnan(co2) || !(s.alk_meq_l > 0))
			continue;
		at_ph(c, &s, table_number(t, i, "pH"), &now);
		compare(c, co2 < 1 ? TRACE : CO2, co2_mg_l(&now), co2, name);
		compare(c, CALCITE, ts_chem_species_si(&c->k, &now, TS_CALCITE),
			table_number(t, i, "phreeqc_SI_calcite"), name);
		compare(c, STRENGTH, now.ionic_strength,
			table_number(t, i, "phreeqc_ionic_strength"), name);
	}
}

/*
 * Published: calcite's constant, 0.06 at 10 to 12 C, and CaHCO3+, 2.05 % of the CO2 of water-32
 * and 1.7 % of the next. In water-02, full of sulphate, the pairs take 4.1 % off the ionic
 * strength; 3.4 % with the tables' constants, whose CaSO4 seems to be weaker than ours.
 */
static void test_phreeqc__real_waters(void **state)
{
	(void)state;
	both("waters.csv", run_waters,
		(double[QUANTITIES]){
			[CO2] = 0.021, [TRACE] = 0.005, [CALCITE] = 0.06, [STRENGTH] = 0.042});
}

/* Hydrochloric acid into 2 meq/L of NaHCO3, in air and shut. */
static void run_titration(const struct table *t, struct comparison *c)
{
	struct ts_solution start = {.temp_c = 25}, s;
	struct ts_ion_species now = {0};

	ts_chem_dissolve(&start, ts_chem_substance("NaHCO3"), 2, &start);
	at_pressure(c, &start, 420e-6, &now);
	start.dic_mmol_l = ts_chem_species_dic_mmol_l(&now);
	for (size_t i = 0; i < t->rows; i++) {
		const char *where = table_text(t, i, "HCl_meq_added");

		ts_chem_dissolve(
			&start, ts_chem_substance("HCl"), table_number(t, i, "HCl_meq_added"), &s);
		if (strstr(table_text(t, i, "system"), "open"))
			at_pressure(c, &s, 420e-6, &now);
		else
			assert_int_equal(ts_chem_speciate_closed(&c->k, &s, &now), TS_OK);
		compare(c, PH, now.ph, table_number(t, i, "pH"), where);
		compare(c, CO2, co2_mg_l(&now), table_number(t, i, "CO2_mg"), where);
	}
}

static void test_phreeqc__acid_titration(void **state)
{
	(void)state;
	both("acid_titration_phreeqc.csv", run_titration,
		(double[QUANTITIES]){[PH] = 0.02, [CO2] = 0.02});
}

/*
 * What is alkalinity but neither HCO3 nor CO3 in the table's own columns is 2 CaCO3 and CaHCO3+.
 * Under pure CO2 that is less than 0.1 % of it, and 3 % and more by the published constant: so
 * the tables were computed without the pair.
 */
static void test_phreeqc__tables_hold_no_cahco3(void **state)
{
	struct table *t = table_open("open_system_minerals_phreeqc.csv");
	struct worst left = {.what = "alkalinity that may be CaHCO3+, share", .limit = 0.001};
	double least = 1;

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		struct ts_solution s = lime_water(t, i);
		struct ts_chem_constants k = {0};
		struct ts_ion_species now = {0};
		double alk = s.alk_meq_l;

		if (!(alk > 0) || !under_pure_co2(t, i))
			continue;
		worst_note(&left,
			(alk - table_number(t, i, "HCO3_mmol") -
				2 * table_number(t, i, "CO3_mmol")) /
				alk,
			0, table_text(t, i, "t_C"));
		ts_chem_constants_at(&k, s.temp_c);
		assert_int_equal(
			ts_chem_speciate_at_ph(&k, &s, table_number(t, i, "pH"), &now), TS_OK);
		least = fmin(least, 1000 * now.ca_hco3 / alk);
	}
	worst_assert(&left);
	printf("# published constants: %.3f of the alkalinity at least\n", least);
	assert_true(least > 0.03);
	table_close(t);
}

/*
 * Calcite's constant as recovered from three rows against the other rows of the table, at their
 * own pH: the fit is not what makes the comparison pass. The published one misses them.
 */
static void test_phreeqc__three_rows_predict_the_others(void **state)
{
	struct table *t = table_open("open_system_minerals_phreeqc.csv");
	struct worst other = {.what = "log K of calcite, other rows", .limit = 0.005};
	struct worst paper = {.what = "log K of calcite, published", .limit = 0.085};
	struct recovered own;

	(void)state;
	recover(&own);
	for (size_t i = 0; i < t->rows; i++) {
		double temp_c = table_number(t, i, "t_C"), log_k;
		struct ts_chem_constants k = {0};

		if (strcmp(table_text(t, i, "mineral"), "Calcite") != 0 || under_pure_co2(t, i) ||
			(strcmp(table_text(t, i, "pCO2"), "420ppm") == 0 && fmod(temp_c, 15) == 0))
			continue;
		log_k = ion_product(t, i, &own.set);
		ts_chem_constants_of(&k, &own.set, temp_c);
		worst_note(&other, log10(k.mineral[TS_CALCITE]), log_k, table_text(t, i, "t_C"));
		ts_chem_constants_at(&k, temp_c);
		worst_note(&paper, log10(k.mineral[TS_CALCITE]), log_k, table_text(t, i, "t_C"));
	}
	assert_int_equal(other.count, 18);
	worst_assert(&other);
	worst_assert(&paper);
	assert_true(paper.most > quantities[CALCITE].wanted);
	table_close(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_phreeqc__tables_hold_no_cahco3),
		cmocka_unit_test(test_phreeqc__three_rows_predict_the_others),
		cmocka_unit_test(test_phreeqc__soda_in_air_by_kh),
		cmocka_unit_test(test_phreeqc__co2_and_carbon_from_ph_and_kh),
		cmocka_unit_test(test_phreeqc__lime_water_under_gas),
		cmocka_unit_test(test_phreeqc__lime_water_under_pure_co2),
		cmocka_unit_test(test_phreeqc__lime_dissolved_to_balance),
		cmocka_unit_test(test_phreeqc__blends),
		cmocka_unit_test(test_phreeqc__real_waters),
		cmocka_unit_test(test_phreeqc__acid_titration),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
