/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A tank's own level of CO2, as its pH shows it.
 */
#include "water/gas.h"

#include "chem/carbonate.h"

/* Times air. */
#define OWN_CO2_LEAST 0.5
#define OWN_CO2_MOST 30.0

double ts_tank_co2_times_air(
	const struct ts_profile *profile, const struct ts_solution *s, bool own)
{
	double co2_mmol_l;

	if (!own || isnan(profile->ph_read) ||
		ts_chem_dkh_from_meq_l(s->alk_meq_l) < TS_CHEM_TANK_KH_LOW_DH ||
		ts_chem_co2_from_ph(s, profile->ph_read, &co2_mmol_l) != TS_OK)
		return TS_CHEM_TANK_CO2_USUAL;
	return fmin(
		fmax(co2_mmol_l / ts_chem_air_co2_mmol_l(s->temp_c), OWN_CO2_LEAST), OWN_CO2_MOST);
}
