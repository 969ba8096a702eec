/* SPDX-License-Identifier: Apache-2.0 */
#include "waters_table.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "chem/ions.h"

static double ion(const struct table *t, size_t row, const char *column, enum ts_ion_id id)
{
	double mg_l = table_number(t, row, column);

	return isnan(mg_l) ? 0 : ts_chem_mmol_l_from_mg_l(id, mg_l);
}

static bool has_column(const struct table *t, const char *column)
{
	for (size_t i = 0; i < t->columns; i++)
		if (strcmp(t->head[i], column) == 0)
			return true;
	return false;
}

struct ts_solution waters_row(const struct table *t, size_t row, double temp_c)
{
	struct ts_solution s = {
		.temp_c = temp_c,
		.ca_mmol_l = ion(t, row, "Ca", TS_ION_CA),
		.mg_mmol_l = ion(t, row, "Mg", TS_ION_MG),
		.na_mmol_l = ion(t, row, "Na", TS_ION_NA),
		.k_mmol_l = ion(t, row, "K", TS_ION_K),
		.cl_mmol_l = ion(t, row, "Cl", TS_ION_CL),
		.so4_mmol_l = ion(t, row, "SO4", TS_ION_SO4),
		.no3_mmol_l = ion(t, row, "NO3", TS_ION_NO3),
		.alk_meq_l = ion(t, row, "HCO3", TS_ION_HCO3),
	};

	if (has_column(t, "alk_meq_L") && !isnan(table_number(t, row, "alk_meq_L")))
		s.alk_meq_l = table_number(t, row, "alk_meq_L");
	return s;
}

struct ts_solution waters_01(double temp_c)
{
	struct table *t = table_open("waters.csv");
	struct ts_solution s;

	assert_string_equal(table_text(t, 0, "label"), "water-01");
	s = waters_row(t, 0, temp_c);
	table_close(t);
	return s;
}

double waters_blend_share(const struct table *blends, size_t row)
{
	const char *text = table_text(blends, row, "case");

	return strncmp(text, "water-01", 8) == 0 ? 1 : strtod(text, NULL);
}
