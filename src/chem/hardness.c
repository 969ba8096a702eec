/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Conversions between molar units and degrees. Two equivalents of alkalinity stand against one
 * mole of divalent cation, which is why degrees of KH carry a factor of two. The definitions of
 * the degrees are constants in hardness.h.
 */
#include "chem/hardness.h"

double ts_chem_dh_from_mmol_l(double ca_plus_mg_mmol_l)
{
	return ca_plus_mg_mmol_l / TS_MMOL_L_PER_DH;
}

double ts_chem_mmol_l_from_dh(double gh_dh)
{
	return gh_dh * TS_MMOL_L_PER_DH;
}

double ts_chem_dkh_from_meq_l(double alk_meq_l)
{
	return alk_meq_l / (2 * TS_MMOL_L_PER_DH);
}

double ts_chem_meq_l_from_dkh(double kh_dh)
{
	return kh_dh * (2 * TS_MMOL_L_PER_DH);
}

double ts_chem_mg_caco3_from_mmol_l(double ca_plus_mg_mmol_l)
{
	return ca_plus_mg_mmol_l * TS_MASS_CACO3;
}

double ts_chem_mg_caco3_from_meq_l(double alk_meq_l)
{
	return alk_meq_l * TS_MASS_CACO3 / 2;
}
