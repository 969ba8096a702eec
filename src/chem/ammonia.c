/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Un-ionised ammonia. The equation and its validity are on the prototypes in ammonia.h.
 */
#include "chem/ammonia.h"

#include <math.h>

#define KELVIN 273.15
#define LN_10 2.302585092994046

enum ts_status ts_chem_nh3_fraction(double ph, double temp_c, double *ret_fraction)
{
	double pka;

	if (!(ph >= 2 && ph <= 12) ||
		!(temp_c >= TS_CHEM_NH3_TEMP_LOW_C && temp_c <= TS_CHEM_NH3_TEMP_HIGH_C))
		return TS_BAD_INPUT;
	pka = 0.09018 + 2729.92 / (KELVIN + temp_c);
	*ret_fraction = 1 / (1 + exp(LN_10 * (pka - ph)));
	return TS_OK;
}
