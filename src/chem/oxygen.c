/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Oxygen saturation. Equation, source and range stand on the prototypes in oxygen.h.
 */
#include "chem/oxygen.h"

#include <math.h>

#define KELVIN 273.15

enum ts_status ts_chem_oxygen_saturation_mg_l(double temp_c, double salinity_g_l, double *ret_mg_l)
{
	double per_t, fresh, salt;

	if (!(temp_c >= 0 && temp_c <= TS_CHEM_OXYGEN_TEMP_HIGH_C) ||
		!(salinity_g_l >= 0 && salinity_g_l <= TS_CHEM_OXYGEN_SALINITY_HIGH_G_L))
		return TS_BAD_INPUT;
	per_t = 1 / (temp_c + KELVIN);
	fresh = -139.34411 +
		per_t * (1.575701e5 + per_t * (-6.642308e7 +
						      per_t * (1.243800e10 - per_t * 8.621949e11)));
	salt = 1.7674e-2 + per_t * (-1.0754e1 + per_t * 2.1407e3);
	*ret_mg_l = exp(fresh - salinity_g_l * salt);
	return TS_OK;
}

enum ts_status ts_chem_oxygen_percent(
	double oxygen_mg_l, double temp_c, double salinity_g_l, double *ret_percent)
{
	double saturation;
	enum ts_status status = ts_chem_oxygen_saturation_mg_l(temp_c, salinity_g_l, &saturation);

	if (status == TS_OK && !(oxygen_mg_l >= 0 && oxygen_mg_l <= 100))
		return TS_BAD_INPUT;
	if (status == TS_OK)
		*ret_percent = 100 * oxygen_mg_l / saturation;
	return status;
}
