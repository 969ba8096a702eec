/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Dissolved oxygen: what water in balance with moist air at one atmosphere holds. How much an
 * animal needs is a practice row, not chemistry.
 */
#ifndef TS_CHEM_OXYGEN_H
#define TS_CHEM_OXYGEN_H

#include "tapshoal/base.h"

#define TS_CHEM_OXYGEN_TEMP_HIGH_C 40.0
#define TS_CHEM_OXYGEN_SALINITY_HIGH_G_L 40.0

/*
 * Oxygen at saturation, mg/L, at temp_c 0..40 C and salinity 0..40 g/L (taken as g/kg). Benson &
 * Krause 1984, Limnol. Oceanogr. 29:620-632, as reprinted by APHA; the salinity term is from
 * memory (tests/checks holds it against the table of ISO 5814). TS_BAD_INPUT outside.
 */
TS_MUST_USE enum ts_status ts_chem_oxygen_saturation_mg_l(
	double temp_c, double salinity_g_l, double *ret_mg_l);

/* A reading (mg/L, >= 0) as percent of saturation; 100 is balance with air. */
TS_MUST_USE enum ts_status ts_chem_oxygen_percent(
	double oxygen_mg_l, double temp_c, double salinity_g_l, double *ret_percent);

#endif
