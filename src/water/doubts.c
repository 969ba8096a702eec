/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One function a contradiction; each answers no where one side of it was not read.
 */
#include "water/doubts.h"

#include "chem/carbonate.h"
#include "chem/conductivity.h"
#include "chem/hardness.h"
#include "water/analysis.h"
#include "water/newest.h"

/* How far GH may lie from what Ca and Mg make, KH from alkalinity, conductivity from the ions. */
#define HARDNESS_APART_DH 2.0
#define HARDNESS_APART_SHARE 0.25
#define CONDUCTIVITY_APART_SHARE 0.3
/* The least part of hardness that calcium makes in natural waters (estimate from memory). */
#define CALCIUM_SHARE_LEAST 0.15
/* From this GH on its part tells something, dH. */
#define CALCIUM_TELLS_DH 4.0
/* The least conductivity that a degree of hardness makes, uS/cm, and what meters miss. */
#define EC_PER_DH_LEAST 18.0
#define EC_DOUBT_US_CM 20.0
/* Charge error of a whole analysis that is more than rounding, percent. */
#define CHARGE_ERROR_PERCENT 10.0
/* Farther above the balance with air than a night of standing leaves (estimate from memory). */
#define ABOVE_AIR 0.3
/* More CO2 than water under air ever holds, mg/L (estimate from memory). */
#define CO2_IMPOSSIBLE_MG_L 300.0

static bool apart(double read, double computed, double share, double least)
{
	return fabs(read - computed) > fmax(least, share * computed);
}

static bool gh_against_ions(const struct ts_profile *p)
{
	const struct ts_contents *c = &p->contents;
	const struct ts_span *gh = &p->at[TS_GH];
	double ca = ts_chem_dh_from_mmol_l(c->ca_mg_l / TS_WEIGHT_CA);
	double both = ca + ts_chem_dh_from_mmol_l(c->mg_mg_l / TS_WEIGHT_MG);

	if (!gh->given || p->gh_from_ions || isnan(ca))
		return false;
	if (!isnan(both))
		return apart(gh->value, both, HARDNESS_APART_SHARE, HARDNESS_APART_DH);
	return ca > gh->value + fmax(HARDNESS_APART_DH, HARDNESS_APART_SHARE * gh->value) ||
	       (gh->value >= CALCIUM_TELLS_DH && ca < CALCIUM_SHARE_LEAST * gh->value);
}

static bool kh_against_alkalinity(const struct ts_water *w)
{
	for (size_t i = 0; i < w->reading_count; i++) {
		struct ts_reading scratch;
		const struct ts_reading *r = ts_reading_counted(w, i, &scratch);

		if (r->kh_dh.kind != TS_MEASURE_NONE &&
			r->alkalinity_meq_l.kind != TS_MEASURE_NONE &&
			apart(r->kh_dh.value, ts_chem_dkh_from_meq_l(r->alkalinity_meq_l.value),
				HARDNESS_APART_SHARE, HARDNESS_APART_DH))
			return true;
	}
	return false;
}

/* Everything that makes the charge of a water was read. */
static bool whole_analysis(const struct ts_profile *p)
{
	const struct ts_contents *c = &p->contents;

	return p->at[TS_KH].given &&
	       !isnan(c->ca_mg_l + c->mg_mg_l + c->na_mg_l + c->cl_mg_l + c->so4_mg_l);
}

static bool charge_is_off(const struct ts_profile *p)
{
	const struct ts_contents *c = &p->contents;
	double cations = 2 * c->ca_mg_l / TS_WEIGHT_CA + 2 * c->mg_mg_l / TS_WEIGHT_MG +
			 c->na_mg_l / TS_WEIGHT_NA;
	double anions = ts_chem_meq_l_from_dkh(p->at[TS_KH].value) + c->cl_mg_l / TS_WEIGHT_CL +
			2 * c->so4_mg_l / TS_MASS_SO4;

	if (!whole_analysis(p))
		return false;
	cations += isnan(c->k_mg_l) ? 0 : c->k_mg_l / TS_WEIGHT_K;
	anions += isnan(c->no3_mg_l) ? 0 : c->no3_mg_l / TS_MASS_NO3;
	return 100 * fabs(cations - anions) > CHARGE_ERROR_PERCENT * (cations + anions);
}

/* Less than its hardness alone must make; or, all ions read, not what they make. */
static bool conductivity_is_off(const struct ts_profile *p, const struct ts_solution *s)
{
	const struct ts_span *gh = &p->at[TS_GH], *kh = &p->at[TS_KH];
	double dh = fmax(gh->given ? gh->value : 0, kh->given ? kh->value : 0);
	double read = p->contents.conductivity_us_cm, made;

	if (isnan(read))
		return false;
	if (read < EC_PER_DH_LEAST * dh - EC_DOUBT_US_CM)
		return true;
	if (!s || !whole_analysis(p) || isnan(p->ph_read) ||
		ts_chem_conductivity_25_us_cm(s, p->ph_read, &made) != TS_OK)
		return false;
	return apart(read, made, CONDUCTIVITY_APART_SHARE, TS_BARE_US_CM);
}

/* The highest pH, aired, that so little KH holds (computed: 7.6 at KH 0.7 and 20 C), with half a
 * degree to spare, and the KH that a kit of whole drops calls none. */
#define PH_WITHOUT_KH 8.1
#define KH_NONE_DH 1.0

/*
 * A sample that stood cannot have less CO2 than the air gives back: so far above that balance it
 * did not stand open, or pH or KH is wrong. (A tank can, where plants take the gas in the light.)
 */
static bool above_air(const struct ts_profile *p, const struct ts_solution *s)
{
	double ph;

	return p->at[TS_PH].from == TS_FROM_STOOD &&
	       ts_chem_ph_at_co2(s, ts_chem_air_co2_mmol_l(s->temp_c), &ph) == TS_OK &&
	       p->ph_read_low > ph + ABOVE_AIR;
}

/* A pH that needs more CO2 than there is, or less than none. */
static bool ph_against_kh(const struct ts_profile *p, const struct ts_solution *s, unsigned assumed)
{
	double co2;
	enum ts_status status;

	if (assumed & TS_ASSUMED_PH_AGAINST_KH)
		return true;
	if (!s || isnan(p->ph_read) || !p->at[TS_KH].given)
		return false;
	/* Water without a buffer holds no pH up: what does would be read as KH. */
	if (p->at[TS_KH].value < TS_CHEM_TANK_KH_LOW_DH)
		return p->at[TS_KH].high <= KH_NONE_DH && p->ph_read_low > PH_WITHOUT_KH &&
		       !(p->unusual & TS_UNUSUAL_BARE);
	if (above_air(p, s))
		return true;
	status = ts_chem_co2_from_ph(s, fmin(fmax(p->ph_read, 2), 12), &co2);
	return status == TS_OK ? ts_chem_co2_mg_l_from_mmol_l(co2) > CO2_IMPOSSIBLE_MG_L
			       : p->ph_read < 7;
}

unsigned ts_profile_doubts(const struct ts_water *water, const struct ts_profile *p,
	const struct ts_solution *s, const struct ts_solution *gas, unsigned assumed)
{
	unsigned found = 0;

	found |= ph_against_kh(p, gas, assumed) ? TS_UNUSUAL_PH_AGAINST_KH : 0u;
	found |= gh_against_ions(p) ? TS_UNUSUAL_GH_AGAINST_IONS : 0u;
	found |= kh_against_alkalinity(water) ? TS_UNUSUAL_ALKALINITY : 0u;
	found |= charge_is_off(p) ? TS_UNUSUAL_CHARGE : 0u;
	found |= conductivity_is_off(p, s) ? TS_UNUSUAL_CONDUCTIVITY : 0u;
	return found;
}
