/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Each fact is one call into the chemistry room, and its failure becomes a reason. The figures
 * read are copied, never replaced by what was assumed to complete the analysis.
 */
#include "water/facts.h"

#include "chem/carbonate.h"
#include "chem/conductivity.h"
#include "chem/hardness.h"
#include "chem/oxygen.h"

/* The part of the buffer from which phosphate spoils CO2 from pH and KH (estimate from memory). */
#define PHOSPHATE_SHARE 0.1

static void set_unknown(struct ts_water_facts *f)
{
	const double no = (double)NAN;

	*f = (struct ts_water_facts){.temp_c = no,
		.ph = no,
		.ph_low = no,
		.ph_high = no,
		.gh_dh = no,
		.gh_low_dh = no,
		.gh_high_dh = no,
		.kh_low_dh = no,
		.kh_high_dh = no,
		.kh_dh = no,
		.alkalinity_meq_l = no,
		.ca_mg_l = no,
		.mg_mg_l = no,
		.na_mg_l = no,
		.k_mg_l = no,
		.cl_mg_l = no,
		.so4_mg_l = no,
		.no3_mg_l = no,
		.co2_mg_l = no,
		.co2_low_mg_l = no,
		.co2_high_mg_l = no,
		.ph_closed = no,
		.ph_air = no,
		.ph_tank_low = no,
		.ph_tank = no,
		.ph_tank_high = no,
		.calcite_si = no,
		.ionic_strength = no,
		.conductivity_us_cm = no,
		.oxygen_mg_l = no,
		.oxygen_percent = no,
		.conductivity_computed_us_cm = no,
		.nh3_fraction = no,
		.next_to_measure = TS_NEXT_NOTHING};
	for (int i = 0; i < TS_WATER_FACT__COUNT; i++)
		f->why[i] = TS_WHY_WANTS_KH;
}

static void copy_readings(const struct ts_profile *p, struct ts_water_facts *f)
{
	const struct ts_contents *c = &p->contents;
	const struct ts_span *gh = &p->at[TS_GH], *kh = &p->at[TS_KH];

	f->temp_c = c->temp_c;
	f->ph = p->ph_read;
	f->ph_low = p->ph_read_low;
	f->ph_high = p->ph_read_high;
	f->gh_dh = gh->given ? gh->value : (double)NAN;
	f->kh_dh = kh->given ? kh->value : (double)NAN;
	f->gh_low_dh = gh->given ? gh->low : (double)NAN;
	f->gh_high_dh = gh->given ? gh->high : (double)NAN;
	f->kh_low_dh = kh->given ? kh->low : (double)NAN;
	f->kh_high_dh = kh->given ? kh->high : (double)NAN;
	f->alkalinity_meq_l = ts_chem_meq_l_from_dkh(f->kh_dh);
	f->ca_mg_l = c->ca_mg_l;
	f->mg_mg_l = c->mg_mg_l;
	f->na_mg_l = c->na_mg_l;
	f->k_mg_l = c->k_mg_l;
	f->cl_mg_l = c->cl_mg_l;
	f->so4_mg_l = c->so4_mg_l;
	f->no3_mg_l = c->no3_mg_l;
	f->conductivity_us_cm = c->conductivity_us_cm;
	f->oxygen_mg_l = c->oxygen_mg_l;
	f->oxygen_percent = c->oxygen_percent;
	f->ph_tank_low = p->ph_tank_low;
	f->ph_tank = p->ph_tank;
	f->ph_tank_high = p->ph_tank_high;
	f->unusual = p->unusual;
	f->next_to_measure = ts_profile_next(p);
}

static double ion_mg_l(unsigned assumed, enum ts_ion_id ion, double mmol_l)
{
	return assumed & 1u << ion ? (double)NAN : ts_chem_mg_l_from_mmol_l(ion, mmol_l);
}

/* A water that nobody read: its figures are the solution's, but for what was only assumed. */
static void copy_solution(const struct ts_solution *s, unsigned assumed, struct ts_water_facts *f)
{
	f->ca_mg_l = ion_mg_l(assumed, TS_ION_CA, s->ca_mmol_l);
	f->mg_mg_l = ion_mg_l(assumed, TS_ION_MG, s->mg_mmol_l);
	f->na_mg_l = ion_mg_l(assumed, TS_ION_NA, s->na_mmol_l);
	f->k_mg_l = ion_mg_l(assumed, TS_ION_K, s->k_mmol_l);
	f->cl_mg_l = ion_mg_l(assumed, TS_ION_CL, s->cl_mmol_l);
	f->so4_mg_l = ion_mg_l(assumed, TS_ION_SO4, s->so4_mmol_l);
	f->no3_mg_l = ion_mg_l(assumed, TS_ION_NO3, s->no3_mmol_l);
	if (!(assumed & TS_ASSUMED_GH))
		f->gh_low_dh = f->gh_high_dh = f->gh_dh =
			ts_chem_dh_from_mmol_l(s->ca_mmol_l + s->mg_mmol_l);
	f->kh_low_dh = f->kh_high_dh = f->kh_dh = ts_chem_dkh_from_meq_l(s->alk_meq_l);
}

static enum ts_fact_why why_of(enum ts_status status)
{
	return status == TS_OK   ? TS_WHY_KNOWN
	       : status == TS_NO ? TS_WHY_PH_AGAINST_KH
				 : TS_WHY_OUT_OF_RANGE;
}

/* Why pH and CO2 cannot be computed from one another; TS_WHY_KNOWN: they can. */
static enum ts_fact_why carbonate_rules(const struct ts_solution *s, const struct ts_profile *p)
{
	double phosphate = p ? p->contents.phosphate_mg_l : 0;

	if (ts_chem_dkh_from_meq_l(s->alk_meq_l) < TS_CHEM_TANK_KH_LOW_DH)
		return TS_WHY_BUFFER_TOO_SMALL;
	if (ts_chem_mmol_l_from_mg_l(TS_ION_PO4, phosphate) > PHOSPHATE_SHARE * s->alk_meq_l)
		return TS_WHY_PHOSPHATE;
	return TS_WHY_KNOWN;
}

static double co2_mg_l(const struct ts_solution *s, double ph, enum ts_fact_why *ret_why)
{
	double co2 = (double)NAN;

	*ret_why = isnan(ph) ? TS_WHY_WANTS_PH : why_of(ts_chem_co2_from_ph(s, ph, &co2));
	return ts_chem_co2_mg_l_from_mmol_l(co2);
}

static void find_co2(const struct ts_solution *s, struct ts_water_facts *f)
{
	enum ts_fact_why of_end;

	if (f->unusual & TS_UNUSUAL_PH_AGAINST_KH) {
		f->why[TS_FACT_CO2] = TS_WHY_PH_AGAINST_KH;
		return;
	}

	f->co2_mg_l = co2_mg_l(s, f->ph, &f->why[TS_FACT_CO2]);
	f->co2_low_mg_l = co2_mg_l(s, f->ph_high, &of_end);
	f->co2_high_mg_l = co2_mg_l(s, f->ph_low, &of_end);
}

static void find_tank_ph(const struct ts_solution *s, struct ts_water_facts *f)
{
	struct ts_solution warm = *s;

	warm.temp_c = TS_TANK_TEMPERATURE_C;
	f->why[TS_FACT_PH_TANK] =
		why_of(ts_chem_tank_ph(&warm, &f->ph_tank_low, &f->ph_tank, &f->ph_tank_high));
}

/* pH of the water closed and aired, CO2 at the pH read, the pH of a tank. */
static void find_carbonate(
	const struct ts_solution *s, const struct ts_profile *p, struct ts_water_facts *f)
{
	enum ts_fact_why rule = carbonate_rules(s, p);
	double air = ts_chem_air_co2_mmol_l(s->temp_c), co2;

	f->why[TS_FACT_CO2] = f->why[TS_FACT_PH_CLOSED] = rule;
	f->why[TS_FACT_PH_AIR] = f->why[TS_FACT_PH_TANK] = rule;
	if (rule != TS_WHY_KNOWN)
		return;
	f->why[TS_FACT_PH_CLOSED] = why_of(ts_chem_ph_closed(s, &f->ph_closed, &co2));
	f->why[TS_FACT_PH_AIR] = why_of(ts_chem_ph_at_co2(s, air, &f->ph_air));
	if (!p)
		f->ph = f->ph_low = f->ph_high = f->ph_closed;
	if (p && p->acids)
		f->why[TS_FACT_CO2] = TS_WHY_ACIDS;
	else
		find_co2(s, f);
	if (isnan(f->ph_tank))
		find_tank_ph(s, f);
}

static void find_calcite(const struct ts_solution *s, unsigned assumed, struct ts_water_facts *f)
{
	double ph = isnan(f->ph) ? f->ph_tank : f->ph;

	if (assumed & TS_ASSUMED_GH && assumed & 1u << TS_ION_CA)
		f->why[TS_FACT_CALCITE_SI] = TS_WHY_WANTS_CALCIUM;
	else if (!(s->ca_mmol_l > 0))
		f->why[TS_FACT_CALCITE_SI] = TS_WHY_NO_CALCIUM;
	else if (isnan(ph))
		f->why[TS_FACT_CALCITE_SI] = TS_WHY_WANTS_PH;
	else
		f->why[TS_FACT_CALCITE_SI] = why_of(ts_chem_calcite_si(s, ph, &f->calcite_si));
}

static void find_salts(const struct ts_solution *s, unsigned assumed, struct ts_water_facts *f)
{
	double ph = isnan(f->ph) ? f->ph_tank : f->ph;
	enum ts_fact_why why = TS_WHY_KNOWN;

	if (assumed & TS_ASSUMED_GH)
		why = TS_WHY_WANTS_HARDNESS;
	f->why[TS_FACT_IONIC_STRENGTH] = f->why[TS_FACT_CONDUCTIVITY] = why;
	if (why != TS_WHY_KNOWN)
		return;
	f->ionic_strength = ts_chem_ionic_strength_mol_l(s);
	f->why[TS_FACT_CONDUCTIVITY] = isnan(ph) ? TS_WHY_WANTS_PH
						 : why_of(ts_chem_conductivity_25_us_cm(
							   s, ph, &f->conductivity_computed_us_cm));
}

static void find_ammonia_share(struct ts_water_facts *f)
{
	if (isnan(f->ph) || isnan(f->temp_c))
		f->why[TS_FACT_NH3_FRACTION] = TS_WHY_WANTS_PH;
	else
		f->why[TS_FACT_NH3_FRACTION] =
			why_of(ts_chem_nh3_fraction(f->ph, f->temp_c, &f->nh3_fraction));
}

/* Of the two forms the one that was not read, at the sample's temperature. */
static void find_oxygen(struct ts_water_facts *f)
{
	double full;

	if (ts_chem_oxygen_saturation_mg_l(f->temp_c, 0, &full) != TS_OK)
		return;
	if (isnan(f->oxygen_mg_l))
		f->oxygen_mg_l = f->oxygen_percent / 100 * full;
	if (isnan(f->oxygen_percent) && !(f->assumed & TS_ASSUMED_TEMPERATURE))
		f->oxygen_percent = 100 * f->oxygen_mg_l / full;
}

static void find_class(struct ts_water_facts *f)
{
	/* Works call hard what a fishkeeper calls soft: the last scale is the trade's. */
	const struct ts_hardness_scale *trade = &ts_hardness_scales[ts_hardness_scale_count - 1];
	f->hardness_class = ts_hardness_class(trade, ts_chem_mmol_l_from_dh(f->gh_dh));
	if (f->hardness_class)
		f->hardness_scale = trade->name;
}

/* Of a water that nobody read; else the profile says it. */
static void find_unusual(struct ts_water_facts *f)
{
	if (f->gh_dh > TS_DEGREES_HIGH_DH || f->kh_dh > TS_DEGREES_HIGH_DH)
		f->unusual |= TS_UNUSUAL_DEGREES;
	if (ts_water_is_bare(f->gh_dh, f->kh_dh, f->conductivity_us_cm))
		f->unusual |= TS_UNUSUAL_BARE;
}

void ts_water_describe(const struct ts_solution *solution, unsigned assumed,
	const struct ts_profile *profile, struct ts_water_facts *ret)
{
	struct ts_water_facts f;

	set_unknown(&f);
	if (profile)
		copy_readings(profile, &f);
	if (solution) {
		f.assumed = assumed;
		f.temp_c = solution->temp_c;
		if (!profile)
			copy_solution(solution, assumed, &f);
		if (isnan(f.kh_dh))
			f.kh_dh = ts_chem_dkh_from_meq_l(solution->alk_meq_l);
		f.alkalinity_meq_l = ts_chem_meq_l_from_dkh(f.kh_dh);
		find_carbonate(solution, profile, &f);
		find_calcite(solution, assumed, &f);
		find_salts(solution, assumed, &f);
	}
	find_ammonia_share(&f);
	find_oxygen(&f);
	find_class(&f);
	if (!profile)
		find_unusual(&f);
	*ret = f;
}

void ts_water_describe_profile(
	const struct ts_profile *profile, double temp_c, struct ts_water_facts *ret)
{
	struct ts_solution s;
	unsigned assumed = 0;
	enum ts_status status = ts_solution_from_profile(profile, temp_c, &s, &assumed);

	ts_water_describe(status == TS_OK ? &s : NULL, assumed, profile, ret);
	if (status == TS_OK)
		return;
	for (int i = 0; i < TS_WATER_FACT__COUNT; i++) {
		if (ret->why[i] == TS_WHY_WANTS_KH && status == TS_BAD_INPUT)
			ret->why[i] = TS_WHY_OUT_OF_RANGE;
	}
}

/* Share of GH by which calcium and magnesium may differ from it and still confirm it. */
#define CONFIRMS_SHARE 0.05

bool ts_gh_confirmed(double gh_dh, double ca_mg_l, double mg_mg_l)
{
	double both = ts_chem_dh_from_mmol_l(ca_mg_l / TS_WEIGHT_CA + mg_mg_l / TS_WEIGHT_MG);

	return fabs(both - gh_dh) <= CONFIRMS_SHARE * gh_dh;
}

enum ts_next ts_profile_next(const struct ts_profile *p)
{
	const struct ts_span *gh = &p->at[TS_GH];

	if (p->unusual & TS_UNUSUAL_SOFTENED)
		return TS_NEXT_UNSOFTENED;
	if (!gh->given)
		return TS_NEXT_GH;
	if (gh->high - gh->low > 4 && !gh->exposure &&
		!(ts_gh_confirmed(gh->value, p->contents.ca_mg_l, p->contents.mg_mg_l) &&
			!p->gh_from_ions))
		return TS_NEXT_GH_DROPS;
	if (!p->at[TS_KH].given)
		return TS_NEXT_KH;
	if (!p->at[TS_TEMPERATURE].given)
		return TS_NEXT_TANK_TEMPERATURE;
	if (!p->at[TS_PH].given)
		return TS_NEXT_PH;
	return TS_NEXT_NOTHING;
}
