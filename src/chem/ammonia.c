/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Un-ionised ammonia and the EPA criteria. Equations, sources and ranges are on the prototypes in
 * ammonia.h.
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

static double power_of_10(double x)
{
	return exp(LN_10 * x);
}

/* The criteria's common bracket: what acid water bears, what alkaline water bears. */
static double by_ph(double ph, double middle, double alkaline, double acid)
{
	return alkaline / (1 + power_of_10(middle - ph)) + acid / (1 + power_of_10(ph - middle));
}

static bool epa_range(double ph, double temp_c)
{
	return ph >= TS_CHEM_EPA_PH_LOW && ph <= TS_CHEM_EPA_PH_HIGH && temp_c >= 0 &&
	       temp_c <= TS_CHEM_EPA_TEMP_HIGH_C;
}

enum ts_status ts_chem_ammonia_ccc_mg_l(double ph, double temp_c, double *ret_tan_n_mg_l)
{
	if (!epa_range(ph, temp_c))
		return TS_BAD_INPUT;
	*ret_tan_n_mg_l = 0.8876 * by_ph(ph, 7.688, 0.0278, 1.1994) * 2.126 *
			  power_of_10(0.028 * (20 - fmax(temp_c, 7)));
	return TS_OK;
}

enum ts_status ts_chem_ammonia_cmc_mg_l(
	double ph, double temp_c, bool salmonids, double *ret_tan_n_mg_l)
{
	double bracket, by_warmth;

	if (!epa_range(ph, temp_c))
		return TS_BAD_INPUT;
	bracket = 0.7249 * by_ph(ph, 7.204, 0.0114, 1.6181);
	by_warmth = 23.12 * power_of_10(0.036 * (20 - temp_c));
	if (salmonids)
		*ret_tan_n_mg_l = fmin(by_ph(ph, 7.204, 0.275, 39.0), bracket * by_warmth);
	else
		*ret_tan_n_mg_l = bracket * fmin(51.93, by_warmth);
	return TS_OK;
}
