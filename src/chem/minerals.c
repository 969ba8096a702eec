/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Saturation by halving an interval of dissolved CaCO3: the index rises with every bit dissolved,
 * so the interval always holds the answer, and each solve starts warm from the last one.
 */
#include "chem/minerals.h"

#include <math.h>

#include "chem/ions.h"
#include "chem/speciation.h"

#define HALVINGS 48
/* An index within this of 0 is called saturated; halving leaves some 1e-6. */
#define SATURATED 1e-3
/* What water free of carbon dissolves by itself is below this, mmol/L. */
#define DISSOLVES_ALONE 1.0
/* Most that can dissolve in open water before ionic strength leaves its range, mmol/L. */
#define DISSOLVES_MOST 40.0

struct search {
	const struct ts_chem_constants *constants;
	struct ts_ion_species species;
	const struct ts_solution *water;
	enum ts_mineral mineral;
	double co2_mmol_l; /* 0: closed */
};

static struct ts_solution with_lime(const struct search *search, double lime_mmol_l)
{
	struct ts_solution s = *search->water;

	s.ca_mmol_l += lime_mmol_l;
	s.alk_meq_l += 2 * lime_mmol_l;
	s.dic_mmol_l = search->co2_mmol_l > 0 ? 0 : s.dic_mmol_l + lime_mmol_l;
	return s;
}

/* The index after `lime_mmol_l` has dissolved; too high (100) where the equations end. */
static double index_after(struct search *search, double lime_mmol_l)
{
	struct ts_solution s = with_lime(search, lime_mmol_l);
	enum ts_status status =
		search->co2_mmol_l > 0
			? ts_chem_speciate_at_co2(
				  search->constants, &s, search->co2_mmol_l, &search->species)
			: ts_chem_speciate_closed(search->constants, &s, &search->species);

	if (status != TS_OK)
		return 100;
	return ts_chem_species_si(search->constants, &search->species, search->mineral);
}

static enum ts_status saturate(struct search *search, double most, struct ts_solution *ret)
{
	const struct ts_solution *s = search->water;
	double high = most;
	double low = -fmin(s->ca_mmol_l, fmax(s->alk_meq_l, 0) / 2);

	if (!(search->co2_mmol_l > 0))
		low = fmax(low, -s->dic_mmol_l);
	for (int i = 0; i < HALVINGS; i++) {
		double middle = (low + high) / 2;

		if (index_after(search, middle) < 0)
			low = middle;
		else
			high = middle;
	}
	if (!(fabs(index_after(search, low)) <= SATURATED))
		return TS_NO;
	*ret = with_lime(search, low);
	if (search->co2_mmol_l > 0)
		ret->dic_mmol_l = ts_chem_species_dic_mmol_l(&search->species);
	return TS_OK;
}

enum ts_status ts_chem_saturate_closed(const struct ts_chem_constants *constants,
	const struct ts_solution *s, enum ts_mineral mineral, struct ts_solution *ret)
{
	struct search search = {.constants = constants, .water = s, .mineral = mineral};

	if (ts_chem_speciate_closed(constants, s, &search.species) != TS_OK)
		return TS_BAD_INPUT;
	return saturate(&search, DISSOLVES_ALONE + s->dic_mmol_l + fmax(-s->alk_meq_l, 0), ret);
}

enum ts_status ts_chem_saturate_open(const struct ts_chem_constants *constants,
	const struct ts_solution *s, enum ts_mineral mineral, double co2_mmol_l,
	struct ts_solution *ret)
{
	struct search search = {
		.constants = constants, .water = s, .mineral = mineral, .co2_mmol_l = co2_mmol_l};
	struct ts_solution without_carbon = *s;

	without_carbon.dic_mmol_l = 0;
	if (!(co2_mmol_l > 0) || ts_solution_check(&without_carbon) != TS_OK ||
		ts_chem_speciate_at_co2(constants, &without_carbon, co2_mmol_l, &search.species) !=
			TS_OK)
		return TS_BAD_INPUT;
	return saturate(&search, DISSOLVES_MOST, ret);
}

enum ts_status ts_chem_ccpp_mg_l(
	const struct ts_chem_constants *constants, const struct ts_solution *s, double *ret_mg_l)
{
	struct ts_solution after;
	enum ts_status status = ts_chem_saturate_closed(constants, s, TS_CALCITE, &after);

	if (status == TS_OK)
		*ret_mg_l = (s->ca_mmol_l - after.ca_mmol_l) * TS_MASS_CACO3;
	return status;
}
