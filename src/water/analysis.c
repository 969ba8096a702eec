/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The completion in five steps, each leaving its mark in `assumed`: temperature, alkalinity,
 * calcium and magnesium, the other ions with the balance of charge, inorganic carbon.
 */
#include "water/analysis.h"

#include "chem/carbonate.h"
#include "chem/hardness.h"

/* Below this GH and KH (dH) there is hardly a mineral in a water (estimate from memory). */
#define BARE_DH 1.0
/* From this on the low conductivity is what is wrong, and not the hardness. */
#define HARD_DH 3.0

/* Mole of magnesium for each mole of hardness where only the sum is known. */
#define MG_SHARE 0.25
/* Share of the missing anion charge that is taken for sulphate. */
#define SO4_SHARE 0.5
/* Charge that analyses miss by rounding alone, meq/L. */
#define BALANCED_MEQ_L 1e-9

struct work {
	const struct ts_profile *profile;
	struct ts_solution s;
	unsigned assumed;
};

static bool known(const struct work *w, enum ts_ion_id ion)
{
	return !(w->assumed & 1u << ion);
}

/* An ion in mmol/L; marks it as assumed (and leaves 0) where it was not read. */
static double take_ion(struct work *w, enum ts_ion_id ion, double mg_l)
{
	if (mg_l >= 0)
		return ts_chem_mmol_l_from_mg_l(ion, mg_l);
	w->assumed |= 1u << ion;
	return 0;
}

static void take_temperature(struct work *w, double temp_c)
{
	const struct ts_span *tank = &w->profile->at[TS_TEMPERATURE];

	if (isnan(temp_c))
		temp_c = w->profile->contents.temp_c;
	if (isnan(temp_c) && tank->given)
		temp_c = tank->value;
	if (isnan(temp_c)) {
		temp_c = TS_TANK_TEMPERATURE_C;
		w->assumed |= TS_ASSUMED_TEMPERATURE;
	}
	w->s.temp_c = temp_c;
}

static void take_ions(struct work *w)
{
	const struct ts_contents *c = &w->profile->contents;

	w->s.ca_mmol_l = take_ion(w, TS_ION_CA, c->ca_mg_l);
	w->s.mg_mmol_l = take_ion(w, TS_ION_MG, c->mg_mg_l);
	w->s.na_mmol_l = take_ion(w, TS_ION_NA, c->na_mg_l);
	w->s.k_mmol_l = take_ion(w, TS_ION_K, c->k_mg_l);
	w->s.cl_mmol_l = take_ion(w, TS_ION_CL, c->cl_mg_l);
	w->s.so4_mmol_l = take_ion(w, TS_ION_SO4, c->so4_mg_l);
	w->s.no3_mmol_l = take_ion(w, TS_ION_NO3, c->no3_mg_l);
}

/* Alkalinity: read, or what the charge of a whole analysis leaves. */
static enum ts_status take_alkalinity(struct work *w)
{
	const struct ts_span *kh = &w->profile->at[TS_KH];
	const unsigned needed = 1u << TS_ION_CA | 1u << TS_ION_MG | 1u << TS_ION_NA |
				1u << TS_ION_CL | 1u << TS_ION_SO4;

	if (kh->given) {
		w->s.alk_meq_l = ts_chem_meq_l_from_dkh(kh->value);
		return TS_OK;
	}
	if (w->assumed & needed)
		return TS_NO;
	w->s.alk_meq_l = ts_chem_cations_meq_l(&w->s) - ts_chem_anions_meq_l(&w->s);
	w->assumed |= TS_ASSUMED_KH;
	return w->s.alk_meq_l >= 0 ? TS_OK : TS_NO;
}

/* Calcium and magnesium that were not read, from GH. */
static void complete_hardness(struct work *w)
{
	const struct ts_span *gh = &w->profile->at[TS_GH];
	bool ca = known(w, TS_ION_CA), mg = known(w, TS_ION_MG);
	double hardness = fmax(w->s.alk_meq_l, 0) / 2;

	if (ca && mg)
		return;
	if (gh->given)
		hardness = ts_chem_mmol_l_from_dh(gh->value);
	else if (ca)
		hardness = w->s.ca_mmol_l / (1 - MG_SHARE);
	else
		w->assumed |= TS_ASSUMED_GH;
	if (!ca && !mg) {
		w->s.ca_mmol_l = (1 - MG_SHARE) * hardness;
		w->s.mg_mmol_l = MG_SHARE * hardness;
	} else if (ca) {
		w->s.mg_mmol_l = fmax(hardness - w->s.ca_mmol_l, 0);
	} else {
		w->s.ca_mmol_l = fmax(hardness - w->s.mg_mmol_l, 0);
	}
}

static void balance_charge(struct work *w)
{
	double missing = ts_chem_cations_meq_l(&w->s) - ts_chem_anions_meq_l(&w->s);
	bool cl = known(w, TS_ION_CL), so4 = known(w, TS_ION_SO4);
	double as_so4 = so4 ? 0 : cl ? 1 : SO4_SHARE;

	if (fabs(missing) <= BALANCED_MEQ_L)
		return;
	if (missing < 0) {
		w->s.na_mmol_l -= missing;
		if (known(w, TS_ION_NA))
			w->assumed |= TS_ASSUMED_BALANCE;
		return;
	}
	w->s.so4_mmol_l += as_so4 * missing / 2;
	w->s.cl_mmol_l += (1 - as_so4) * missing;
	if (cl && so4)
		w->assumed |= TS_ASSUMED_BALANCE;
}

static enum ts_status complete_carbon(struct work *w)
{
	struct ts_chem_constants constants = {0};
	struct ts_ion_species species = {0};
	double ph = w->profile->ph_read;
	/* Of so little KH a drop more or less turns the pH: where the two do not agree it is no
	 * contradiction, but the gas is not known. */
	bool little = w->s.alk_meq_l < ts_chem_meq_l_from_dkh(TS_CHEM_TANK_KH_LOW_DH);
	enum ts_status status = TS_BAD_INPUT;

	if (!isnan(ph)) {
		status = ts_chem_dic_from_ph(&w->s, ph, &w->s.dic_mmol_l);
		if (status == TS_NO && !little)
			w->assumed |= TS_ASSUMED_PH_AGAINST_KH;
	}
	if (status == TS_OK)
		return TS_OK;
	w->assumed |= TS_ASSUMED_CARBON;
	ts_chem_constants_at(&constants, w->s.temp_c);
	status = ts_chem_speciate_at_co2(&constants, &w->s,
		TS_CHEM_TANK_CO2_USUAL * ts_chem_air_co2_mmol_l(w->s.temp_c), &species);
	if (status == TS_OK)
		w->s.dic_mmol_l = ts_chem_species_dic_mmol_l(&species);
	return status;
}

enum ts_status ts_solution_from_profile(const struct ts_profile *profile, double temp_c,
	struct ts_solution *ret, unsigned *ret_assumed)
{
	struct work w = {.profile = profile};
	enum ts_status status;

	take_temperature(&w, temp_c);
	take_ions(&w);
	status = take_alkalinity(&w);
	if (status != TS_OK)
		return status;
	complete_hardness(&w);
	balance_charge(&w);
	status = complete_carbon(&w);
	if (status != TS_OK)
		return status;
	*ret = w.s;
	*ret_assumed = w.assumed;
	return TS_OK;
}

bool ts_water_is_bare(double gh_dh, double kh_dh, double conductivity_us_cm)
{
	bool hard = gh_dh >= HARD_DH || kh_dh >= HARD_DH;

	if (conductivity_us_cm < TS_BARE_US_CM && !hard)
		return true;
	return gh_dh < BARE_DH && (kh_dh < BARE_DH || isnan(kh_dh));
}
