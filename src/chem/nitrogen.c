/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The process rows, the nitrite rows and the lookups over them. Sources are in nitrogen.h.
 */
#include "chem/nitrogen.h"

#include <stddef.h>

#include "chem/ions.h"

/* A concern is this share of a conflict. */
#define NITRITE_CONCERN_SHARE (1.0 / 3)

const struct ts_nitrogen_process ts_nitrogen_processes[TS_NITROGEN_PROCESS__COUNT] = {
	/* name, alkalinity, TAN, NO2, NO3, O2 */
	[TS_RELEASE] = {"release of ammonia from protein", 1, 1, 0, 0, 0},
	[TS_NITRITATION] = {"ammonium to nitrite", -2, -1, 1, 0, -1.5},
	[TS_NITRATATION] = {"nitrite to nitrate", 0, 0, -1, 1, -0.5},
	[TS_DENITRIFICATION] = {"nitrate to nitrogen gas", 1, 0, 0, -1, 0},
	[TS_UPTAKE_OF_AMMONIUM] = {"uptake of ammonium by plants", -1, -1, 0, 0, 0},
	[TS_UPTAKE_OF_NITRATE] = {"uptake of nitrate by plants", 1, 0, 0, -1, 0},
};

static const struct ts_nitrite_limit nitrite_limits[] = {
	{20, 0.3},
	{5, 0.15},
	{0, 0.05},
};

double ts_chem_nitrogen_alk_meq(enum ts_nitrogen_process_id process, double n_mg)
{
	return ts_nitrogen_processes[process].alk_eq * n_mg / TS_WEIGHT_N;
}

double ts_chem_nitrogen_o2_mg(enum ts_nitrogen_process_id process, double n_mg)
{
	return ts_nitrogen_processes[process].o2_mol * n_mg / TS_WEIGHT_N * TS_MASS_O2;
}

void ts_chem_nitrite_limits(double cl_mg_l, double *ret_concern_mg_l, double *ret_conflict_mg_l)
{
	const size_t last = sizeof(nitrite_limits) / sizeof(nitrite_limits[0]) - 1;
	size_t row = 0;

	while (row < last && !(cl_mg_l >= nitrite_limits[row].cl_mg_l))
		row++;
	if (ret_concern_mg_l)
		*ret_concern_mg_l = nitrite_limits[row].no2_n_conflict_mg_l * NITRITE_CONCERN_SHARE;
	if (ret_conflict_mg_l)
		*ret_conflict_mg_l = nitrite_limits[row].no2_n_conflict_mg_l;
}
