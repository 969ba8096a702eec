/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The short questions about one water. Everything difficult happens in speciation.c; here the
 * constants are filled, one solve is made, one number handed back.
 */
#include "chem/carbonate.h"

#include <math.h>

#define HALVINGS 50

static enum ts_status at_ph(const struct ts_solution *s, double ph,
	struct ts_chem_constants *constants, struct ts_ion_species *species)
{
	struct ts_solution without_carbon = *s;

	without_carbon.dic_mmol_l = 0;
	ts_chem_constants_at(constants, s->temp_c);
	return ts_chem_speciate_at_ph(constants, &without_carbon, ph, species);
}

enum ts_status ts_chem_co2_from_ph(const struct ts_solution *s, double ph, double *ret_co2_mmol_l)
{
	struct ts_chem_constants constants = {0};
	struct ts_ion_species species = {0};
	enum ts_status status = at_ph(s, ph, &constants, &species);

	if (status == TS_OK)
		*ret_co2_mmol_l = 1000 * species.co2;
	return status;
}

enum ts_status ts_chem_dic_from_ph(const struct ts_solution *s, double ph, double *ret_dic_mmol_l)
{
	struct ts_chem_constants constants = {0};
	struct ts_ion_species species = {0};
	enum ts_status status = at_ph(s, ph, &constants, &species);

	if (status == TS_OK)
		*ret_dic_mmol_l = ts_chem_species_dic_mmol_l(&species);
	return status;
}

enum ts_status ts_chem_ph_at_co2(const struct ts_solution *s, double co2_mmol_l, double *ret_ph)
{
	struct ts_chem_constants constants = {0};
	struct ts_ion_species species = {0};
	struct ts_solution without_carbon = *s;
	enum ts_status status;

	without_carbon.dic_mmol_l = 0;
	ts_chem_constants_at(&constants, s->temp_c);
	status = ts_chem_speciate_at_co2(&constants, &without_carbon, co2_mmol_l, &species);
	if (status == TS_OK)
		*ret_ph = species.ph;
	return status;
}

enum ts_status ts_chem_ph_closed(
	const struct ts_solution *s, double *ret_ph, double *ret_co2_mmol_l)
{
	struct ts_chem_constants constants = {0};
	struct ts_ion_species species = {0};
	enum ts_status status;

	ts_chem_constants_at(&constants, s->temp_c);
	status = ts_chem_speciate_closed(&constants, s, &species);
	if (status != TS_OK)
		return status;
	*ret_ph = species.ph;
	*ret_co2_mmol_l = 1000 * species.co2;
	return TS_OK;
}

double ts_chem_gas_co2_mmol_l(double temp_c, double pressure_atm)
{
	struct ts_chem_constants constants = {0};

	ts_chem_constants_at(&constants, temp_c);
	return 1000 * constants.kh * pressure_atm;
}

double ts_chem_air_co2_mmol_l(double temp_c)
{
	return ts_chem_gas_co2_mmol_l(temp_c, TS_CHEM_AIR_CO2_PPM * 1e-6);
}

static enum ts_status mineral_si(
	const struct ts_solution *s, double ph, enum ts_mineral mineral, double *ret_si)
{
	struct ts_chem_constants constants = {0};
	struct ts_ion_species species = {0};
	enum ts_status status = at_ph(s, ph, &constants, &species);

	if (status == TS_OK)
		*ret_si = ts_chem_species_si(&constants, &species, mineral);
	return status;
}

enum ts_status ts_chem_calcite_si(const struct ts_solution *s, double ph, double *ret_si)
{
	return mineral_si(s, ph, TS_CALCITE, ret_si);
}

enum ts_status ts_chem_aragonite_si(const struct ts_solution *s, double ph, double *ret_si)
{
	return mineral_si(s, ph, TS_ARAGONITE, ret_si);
}

/* pH at which calcite reaches the index, between `low` (below it) and `high` (above it). */
static enum ts_status ph_at_calcite_si(
	const struct ts_solution *s, double index, double low, double high, double *ret_ph)
{
	for (int i = 0; i < HALVINGS; i++) {
		double middle = (low + high) / 2, si;
		enum ts_status status = ts_chem_calcite_si(s, middle, &si);

		if (status != TS_OK)
			return status;
		if (si < index)
			low = middle;
		else
			high = middle;
	}
	*ret_ph = low;
	return TS_OK;
}

/* pH at a CO2 level, but not above the pH that lime falling out allows. */
static enum ts_status capped_ph(const struct ts_solution *s, double co2_mmol_l, double *ret_ph)
{
	double ph, si;
	enum ts_status status = ts_chem_ph_at_co2(s, co2_mmol_l, &ph);

	if (status == TS_OK)
		status = ts_chem_calcite_si(s, ph, &si);
	if (status == TS_OK && si > TS_CHEM_TANK_CALCITE_SI_HIGH)
		status = ph_at_calcite_si(s, TS_CHEM_TANK_CALCITE_SI_HIGH, 5, ph, &ph);
	if (status == TS_OK)
		*ret_ph = ph;
	return status;
}

enum ts_status ts_chem_tank_ph(
	const struct ts_solution *s, double *ret_low, double *ret_mid, double *ret_high)
{
	static const double times[] = {
		TS_CHEM_TANK_CO2_MOST, TS_CHEM_TANK_CO2_USUAL, TS_CHEM_TANK_CO2_LEAST};
	double air = ts_chem_air_co2_mmol_l(s->temp_c), ph[3];
	struct ts_solution without_carbon = *s;

	without_carbon.dic_mmol_l = 0;
	if (ts_solution_check(&without_carbon) != TS_OK)
		return TS_BAD_INPUT;
	if (ts_chem_dkh_from_meq_l(s->alk_meq_l) < TS_CHEM_TANK_KH_LOW_DH)
		return TS_NO;
	for (int i = 0; i < 3; i++) {
		enum ts_status status = capped_ph(s, times[i] * air, &ph[i]);

		if (status != TS_OK)
			return status;
	}
	/* Where lime caps more than one, halving ends a last bit apart: keep them in order. */
	*ret_low = ph[0];
	*ret_mid = fmax(ph[1], *ret_low);
	*ret_high = fmax(ph[2], *ret_mid);
	return TS_OK;
}
