/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One outer loop lets three things settle: ionic strength (hence activity coefficients), the free
 * calcium, magnesium and sulphate (hence the ion pairs), and the acidity. With the first two
 * frozen the alkalinity is a falling function of the acidity alone, of closed form, so the inner
 * solve is bracketed and cannot fail. The outer map tightens: what binds more calcium leaves less
 * carbonate to bind it. Activity: extended Debye-Hueckel equation with one size for all ions, so
 * that one exponential serves them all; docs/methods.md has what that costs.
 */
#include "chem/speciation.h"

#include <math.h>

#define LN_10 2.302585092994046
#define NEUTRAL_LINEAR 0.1 /* log gamma of uncharged species: Parkhurst & Appelo 1999, eq. 6 */
#define OUTER_ROUNDS 60
#define INNER_ROUNDS 100
/*
 * Relative changes at which a loop stops. After Newton's last step the error is about its square,
 * and the next round refines it. Over 100,000 waters the pH so found is within 4e-6 of the one
 * that a thousand times stricter limits give, after 6 rounds at most (tests/chem).
 */
#define NEWTON_SETTLED 0.03
#define SETTLED 1e-5
#define STRENGTH_SETTLED 5e-5 /* activity follows its root, and slowly */
/*
 * What may be left of the alkalinity, as a step of the acidity. Open water stops later: a closed
 * water of the carbon that it holds is to have the same CO2, a small rest of that carbon.
 */
#define CLOSED_SETTLED 5e-6
#define OPEN_SETTLED 1e-6
/* Where the inner bracket is called a point. */
#define BRACKET_CLOSED 1e-10

/* What is held fixed while the acidity is sought. */
enum known { KNOWN_PH, KNOWN_CO2, KNOWN_DIC };

struct problem {
	const struct ts_chem_constants *constants;
	enum known known;
	double ca, mg, so4, inert; /* totals, mol/L; inert: sum of singly charged ions */
	double alk, carbon;        /* eq/L; mol/L of CO2 or of all inorganic carbon */
};

/* Constants between concentrations (H as activity), at the present activity coefficients. */
struct conditional {
	double k1, inverse_k1, k2, kw, h_per_activity;
	double pair_hco3, pair_co3; /* 1 + what pairs bind, per free HCO3 and CO3 */
	double to_hco3, to_neutral; /* from a pair's constant to concentrations */
};

static void activity(struct ts_ion_species *io, const struct ts_chem_constants *k)
{
	double root = sqrt(io->ionic_strength);
	double neutral = NEUTRAL_LINEAR * LN_10 * io->ionic_strength;
	double square;

	io->gamma_1 = exp(-LN_10 * k->dh_a * root / (1 + k->dh_b_size * root));
	square = io->gamma_1 * io->gamma_1;
	io->gamma_2 = square * square;
	io->gamma_0 = 1 + neutral * (1 + neutral / 2);
}

/* 1 + what free calcium and magnesium bind, per free HCO3 and CO3. */
static double pair_hco3(const struct ts_chem_constants *k, const struct conditional *c,
	const struct ts_ion_species *io)
{
	return 1 + c->to_hco3 * (k->ca_hco3 * io->ca + k->mg_hco3 * io->mg);
}

static double pair_co3(const struct ts_chem_constants *k, const struct conditional *c,
	const struct ts_ion_species *io)
{
	return 1 + c->to_neutral * (k->ca_co3 * io->ca + k->mg_co3 * io->mg);
}

static struct conditional conditional(
	const struct ts_chem_constants *k, const struct ts_ion_species *io)
{
	double inverse = 1 / (io->gamma_1 * io->gamma_0);
	double inverse_0 = inverse * io->gamma_1, inverse_1 = inverse * io->gamma_0;
	struct conditional c = {
		.k1 = k->k1 * io->gamma_0 * inverse_1,
		.k2 = k->k2 * inverse_1 * inverse_1 * inverse_1,
		.kw = k->kw * inverse_1,
		.inverse_k1 = k->inverse_k1 * inverse_0 * io->gamma_1,
		.h_per_activity = inverse_1,
		.to_hco3 = io->gamma_2,
		.to_neutral = io->gamma_2 * io->gamma_2 * inverse_0,
	};

	c.pair_hco3 = pair_hco3(k, &c, io);
	c.pair_co3 = pair_co3(k, &c, io);
	return c;
}

/*
 * Alkalinity that acidity h would give, less the alkalinity there is; *slope: d/dh, below 0. Where
 * all carbon is known both come times the same square, which changes neither sign nor step and
 * saves the division that everything else would wait for.
 */
static double excess(const struct problem *p, const struct conditional *c, double h, double *slope)
{
	double inverse = 1 / h, b = c->pair_hco3, k2 = c->k2 * c->pair_co3;
	double rest = c->kw * inverse - h * c->h_per_activity - p->alk;
	double d_rest = -c->kw * inverse * inverse - c->h_per_activity;

	if (p->known == KNOWN_CO2) {
		double bicarbonate = c->k1 * p->carbon * inverse;

		*slope = d_rest - bicarbonate * inverse * (b + 4 * k2 * inverse);
		return rest + bicarbonate * (b + 2 * k2 * inverse);
	} else {
		double acid = h * c->inverse_k1, charge = b * h + 2 * k2;
		double all = h * (acid + b) + k2; /* carbonate alkalinity: carbon charge / all */

		*slope = d_rest * all * all + p->carbon * (b * all - charge * (2 * acid + b));
		return (rest * all + p->carbon * charge) * all;
	}
}

/*
 * Acidity in [low, high] by Newton's steps, falling back to halving (of the logarithm) whenever
 * one leaves the bracket: at most INNER_ROUNDS evaluations. At an end when the root lies outside.
 */
static double solve_acidity(const struct problem *p, const struct conditional *c, double start)
{
	double low = 1e-13, high = 1e-1, h = start;

	for (int round = 0; round < INNER_ROUNDS; round++) {
		double slope, value = excess(p, c, h, &slope), next = h - value / slope;

		if (value > 0)
			low = h;
		else
			high = h;
		if (fabs(next - h) <= NEWTON_SETTLED * h)
			return next;
		if (high - low <= BRACKET_CLOSED * h)
			return h;
		h = next > low && next < high ? next : sqrt(low * high);
	}
	return h;
}

/*
 * A first acidity: the root of the quadratic that is left when hydroxide and free acid are
 * neglected, within the bracket of solve_acidity().
 */
static double first_acidity(const struct problem *p, const struct conditional *c)
{
	double k2 = c->k2 * c->pair_co3, h = 1e-7;

	if (p->alk > 0 && p->known == KNOWN_CO2) {
		double half = c->k1 * p->carbon * c->pair_hco3 / (2 * p->alk);

		h = half + sqrt(half * (half + 4 * k2 / c->pair_hco3));
	} else if (p->alk > 0 && p->carbon > 0) {
		double half = c->k1 * c->pair_hco3 * ((p->carbon - p->alk) / (2 * p->alk));

		h = half + sqrt(half * half + c->k1 * k2);
	}
	return fmin(fmax(h, 1e-12), 1e-2);
}

static void spread_carbon(
	const struct problem *p, const struct conditional *c, struct ts_ion_species *io)
{
	double h = io->h_activity, inverse = 1 / h, ratio = c->k2 * inverse;

	if (p->known == KNOWN_CO2) {
		io->co2 = p->carbon;
		io->hco3 = c->k1 * p->carbon * inverse;
	} else if (p->known == KNOWN_DIC) {
		io->hco3 = p->carbon * h /
			   (h * (h * c->inverse_k1 + c->pair_hco3) + c->k2 * c->pair_co3);
		io->co2 = io->hco3 * h * c->inverse_k1;
	} else {
		double rest = p->alk - c->kw * inverse + h * c->h_per_activity;

		io->hco3 = fmax(rest, 0) / (c->pair_hco3 + 2 * ratio * c->pair_co3);
		io->co2 = io->hco3 * h * c->inverse_k1;
	}
	io->co3 = io->hco3 * ratio;
	io->h = h * c->h_per_activity;
	io->oh = c->kw * inverse;
}

/* New free calcium, magnesium, sulphate and the pairs that belong to them. */
static void spread_metals(
	const struct problem *p, const struct conditional *c, struct ts_ion_species *io)
{
	const struct ts_chem_constants *k = p->constants;
	double hco3 = c->to_hco3 * io->hco3, co3 = c->to_neutral * io->co3,
	       so4 = c->to_neutral * io->so4;

	io->ca = p->ca / (1 + k->ca_hco3 * hco3 + k->ca_co3 * co3 + k->ca_so4 * so4);
	io->mg = p->mg / (1 + k->mg_hco3 * hco3 + k->mg_co3 * co3 + k->mg_so4 * so4);
	io->so4 = p->so4 / (1 + c->to_neutral * (k->ca_so4 * io->ca + k->mg_so4 * io->mg));
	io->ca_hco3 = k->ca_hco3 * hco3 * io->ca;
	io->ca_co3 = k->ca_co3 * co3 * io->ca;
	io->mg_hco3 = k->mg_hco3 * hco3 * io->mg;
	io->mg_co3 = k->mg_co3 * co3 * io->mg;
	io->ca_so4 = k->ca_so4 * c->to_neutral * io->ca * io->so4;
	io->mg_so4 = k->mg_so4 * c->to_neutral * io->mg * io->so4;
}

static double ionic_strength(const struct problem *p, const struct ts_ion_species *io)
{
	double single = p->inert + io->h + io->oh + io->hco3 + io->ca_hco3 + io->mg_hco3;
	double twofold = io->ca + io->mg + io->co3 + io->so4;

	return fmin((single + 4 * twofold) / 2, 5 * TS_CHEM_IONIC_STRENGTH_HIGH);
}

/*
 * A start for the outer loop: all alkalinity bicarbonate, pairs as at a middling ionic strength.
 * It only saves a round.
 */
static void cold_start(const struct problem *p, struct ts_ion_species *io)
{
	static const struct conditional middling = {.to_hco3 = 0.65, .to_neutral = 0.42};

	io->hco3 = fabs(p->alk);
	io->co3 = 0;
	io->so4 = p->so4;
	spread_metals(p, &middling, io);
	io->ionic_strength = ionic_strength(p, io);
}

static bool near(double a, double b, double share)
{
	return fabs(a - b) <= share * b;
}

/*
 * Whether another round would find what this one did, told without making it: calcium and
 * magnesium add up although sulphate has moved, and the new ion pairs leave the acidity (where pH
 * is known, the carbon) as it is.
 */
static bool holds(
	const struct problem *p, const struct conditional *c, const struct ts_ion_species *io)
{
	struct conditional next = *c;
	double value, slope, most;

	if (!near(io->ca + io->ca_hco3 + io->ca_co3 + io->ca_so4, p->ca, SETTLED) ||
		!near(io->mg + io->mg_hco3 + io->mg_co3 + io->mg_so4, p->mg, SETTLED))
		return false;
	next.pair_hco3 = pair_hco3(p->constants, c, io);
	next.pair_co3 = pair_co3(p->constants, c, io);
	if (p->known == KNOWN_PH)
		return near(next.pair_hco3, c->pair_hco3, SETTLED) &&
		       near(next.pair_co3, c->pair_co3, SETTLED);
	most = p->known == KNOWN_DIC ? CLOSED_SETTLED : OPEN_SETTLED;
	value = excess(p, &next, io->h_activity, &slope);
	return fabs(value) <= most * -slope * io->h_activity;
}

static enum ts_status settle(const struct problem *p, struct ts_ion_species *io)
{
	struct ts_ion_species before = *io;
	bool settled = false;

	if (!(io->ionic_strength > 0))
		cold_start(p, io);
	for (io->rounds = 0; !settled && io->rounds < OUTER_ROUNDS; io->rounds++) {
		double strength_before = io->ionic_strength;
		struct conditional c;

		activity(io, p->constants);
		c = conditional(p->constants, io);
		if (!(io->h_activity > 0))
			io->h_activity = first_acidity(p, &c);
		if (p->known != KNOWN_PH)
			io->h_activity = solve_acidity(p, &c, io->h_activity);
		spread_carbon(p, &c, io);
		spread_metals(p, &c, io);
		io->ionic_strength = ionic_strength(p, io);
		settled = near(io->ionic_strength, strength_before, STRENGTH_SETTLED) &&
			  holds(p, &c, io);
	}
	if (p->known != KNOWN_PH)
		io->ph = log(io->h_activity) * (-1 / LN_10);
	if (!settled || io->ionic_strength > TS_CHEM_IONIC_STRENGTH_HIGH ||
		!(io->ph >= TS_CHEM_PH_LOW) || !(io->ph <= TS_CHEM_PH_HIGH)) {
		*io = before;
		return TS_BAD_INPUT;
	}
	return TS_OK;
}

static struct problem problem_of(const struct ts_chem_constants *constants,
	const struct ts_solution *s, enum known known, double carbon_mmol_l)
{
	return (struct problem){
		.constants = constants,
		.known = known,
		.ca = s->ca_mmol_l * 1e-3,
		.mg = s->mg_mmol_l * 1e-3,
		.so4 = s->so4_mmol_l * 1e-3,
		.inert = (s->na_mmol_l + s->k_mmol_l + s->cl_mmol_l + s->no3_mmol_l) * 1e-3,
		.alk = s->alk_meq_l * 1e-3,
		.carbon = carbon_mmol_l * 1e-3,
	};
}

enum ts_status ts_chem_speciate_at_ph(const struct ts_chem_constants *constants,
	const struct ts_solution *s, double ph, struct ts_ion_species *io)
{
	struct problem p = problem_of(constants, s, KNOWN_PH, 0);
	struct ts_ion_species now = *io;
	enum ts_status status = ts_solution_check(s);

	if (status != TS_OK || !(ph >= TS_CHEM_PH_LOW) || !(ph <= TS_CHEM_PH_HIGH))
		return TS_BAD_INPUT;
	now.ph = ph;
	now.h_activity = exp(-LN_10 * ph);
	status = settle(&p, &now);
	if (status == TS_OK && p.alk - now.oh + now.h < 0)
		return TS_NO;
	if (status == TS_OK)
		*io = now;
	return status;
}

enum ts_status ts_chem_speciate_at_co2(const struct ts_chem_constants *constants,
	const struct ts_solution *s, double co2_mmol_l, struct ts_ion_species *io)
{
	struct problem p = problem_of(constants, s, KNOWN_CO2, co2_mmol_l);
	enum ts_status status = ts_solution_check(s);

	if (status != TS_OK || !(co2_mmol_l > 0) || !(co2_mmol_l <= TS_CHEM_CO2_HIGH_MMOL_L))
		return TS_BAD_INPUT;
	return settle(&p, io);
}

enum ts_status ts_chem_speciate_closed(const struct ts_chem_constants *constants,
	const struct ts_solution *s, struct ts_ion_species *io)
{
	struct problem p = problem_of(constants, s, KNOWN_DIC, s->dic_mmol_l);
	enum ts_status status = ts_solution_check(s);

	return status == TS_OK ? settle(&p, io) : status;
}

double ts_chem_species_dic_mmol_l(const struct ts_ion_species *species)
{
	return 1000 * (species->co2 + species->hco3 + species->co3 + species->ca_hco3 +
			      species->ca_co3 + species->mg_hco3 + species->mg_co3);
}

double ts_chem_species_si(const struct ts_chem_constants *constants,
	const struct ts_ion_species *species, enum ts_mineral mineral)
{
	double product = species->ca * species->co3 * species->gamma_2 * species->gamma_2;

	return product > 0 ? fmax(log10(product / constants->mineral[mineral]), -99) : -99;
}
