/* SPDX-License-Identifier: Apache-2.0 */
/*
 * titrate: what strong acid or base does to a water, dose by dose, or (--nightly) evening by
 * evening while the tank airs every night. A teaching curve: amounts are per litre, and no answer
 * says how much would bring a tank to a pH. The chemistry is care/titrate.c.
 */
#include "cli/titrate.h"

#include <math.h>

#include "base/arena.h"
#include "chem/hardness.h"
#include "water/analysis.h"
#include "water/gas.h"
#include "words/care.h"

#define STEPS_MOST 24
/* Of base, which no buffer stops, this many steps are shown. */
#define STEPS_OF_BASE 9
/* Steps shown beyond the end of the buffer. */
#define STEPS_AFTER 2
#define TOWARDS_DEFAULT 7.0
#define TOWARDS_LOW 4.0
#define TOWARDS_HIGH 9.5
#define DOSE_LEAST 0.001

struct ts_titrate_step_result titrate_step_result(const struct ts_titration_step *s)
{
	return (struct ts_titrate_step_result){s->acid_meq_l, s->alkalinity_meq_l, s->kh_dh,
		s->ph_closed, s->co2_mg_l, s->ph_tank, s->ph_air, ts_co2_words[s->danger]};
}

/* A step that reads well: 1, 2 or 5 times a power of ten, about `value`. */
static double round_step(double value)
{
	double power = pow(10, floor(log10(value))), part = value / power;

	return power * (part < 1.5 ? 1 : part < 3.5 ? 2 : part < 7.5 ? 5 : 10);
}

static enum ts_status fill_steps(const struct titration *t, struct ts_titrate_result *r)
{
	struct ts_titration_step steps[STEPS_MOST];
	const struct ts_measure *asked = &t->session->options->dose;
	double buffer = fmax(t->water.alk_meq_l, 0.05);
	double dose = asked->kind != TS_MEASURE_NONE ? asked->value : round_step(buffer / 10);
	double wanted = t->base ? STEPS_OF_BASE : ceil(buffer / dose) + STEPS_AFTER;
	size_t count = wanted > STEPS_MOST ? STEPS_MOST : (size_t)wanted;
	enum ts_status status = ts_titrate(&t->water, t->base ? -dose : dose, count, t->times_air,
		t->session->practice, steps, &count);

	if (status != TS_OK)
		return status;
	r->steps = ts_arena_array(t->session->arena, count, sizeof *r->steps);
	if (!r->steps)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < count; i++)
		r->steps[i] = titrate_step_result(&steps[i]);
	r->step_count = count;
	return TS_OK;
}

static double day_or_nan(unsigned day)
{
	return day ? day : (double)NAN;
}

static enum ts_status fill_keeper(const struct titration *t, enum ts_titration_keeper keeper,
	double towards_ph, struct ts_titrate_nightly_result *nightly,
	struct ts_titrate_keeper_result *r)
{
	struct ts_titration_nights n = {0};
	enum ts_status status = ts_titrate_nights(
		&t->water, towards_ph, keeper, t->times_air, t->session->practice, &n);

	if (status != TS_OK)
		return status;
	nightly->towards_ph = n.towards_ph;
	nightly->ph_start = n.ph_start;
	*r = (struct ts_titrate_keeper_result){n.nights[0].dose_meq_l, day_or_nan(n.floor_day),
		day_or_nan(n.gone_day), NULL, n.count};
	r->nights = ts_arena_array(t->session->arena, n.count, sizeof *r->nights);
	if (!r->nights)
		return TS_NO_MEMORY;
	for (unsigned i = 0; i < n.count; i++)
		r->nights[i] = (struct ts_titrate_night_result){n.nights[i].day,
			n.nights[i].dose_meq_l, titrate_step_result(&n.nights[i].evening)};
	return TS_OK;
}

static enum ts_status fill_nightly(const struct titration *t, struct ts_titrate_result *r)
{
	const struct ts_measure *asked = &t->session->options->towards;
	double towards_ph = asked->kind != TS_MEASURE_NONE ? asked->value : TOWARDS_DEFAULT;
	enum ts_status status;

	r->nightly = ts_arena_take(t->session->arena, sizeof *r->nightly);
	if (!r->nightly)
		return TS_NO_MEMORY;
	status =
		fill_keeper(t, TS_KEEPER_SAME_DOSE, towards_ph, r->nightly, &r->nightly->same_dose);
	if (status == TS_OK)
		status = fill_keeper(
			t, TS_KEEPER_BY_TEST, towards_ph, r->nightly, &r->nightly->by_test);
	return status;
}
/* The answer is no: one verdict and its reason; for programs nulls, and the reason. */
static enum ts_status cannot(struct session *s, const char *verdict, const char *reason)
{
	const double none = (double)NAN;
	struct ts_titrate_result r = {.kept_age_days = none,
		.ph = none,
		.gh_dh = none,
		.kh_dh = none,
		.alkalinity_meq_l = none,
		.temp_c = none,
		.tank_co2_times_air = none,
		.floor_acid_meq_l = none,
		.gone_acid_meq_l = none,
		.cannot = reason,
		.caution = ts_caution_acid};
	struct ts_document doc;

	if (s->options->format == FORMAT_JSON) {
		session_json(s, "titrate", &ts_result_titrate, &r);
		return TS_NO;
	}
	ts_doc_open(&doc, s->arena, "Acid against this water");
	ts_doc_verdict(&doc, verdict, reason);
	ts_doc_see(&doc, ts_guide_chasing);
	session_write(s, &doc);
	return TS_NO;
}

/* The tank's temperature, never the cold sample's: the curve is about a tank of this water. */
static double temperature(const struct ts_profile *profile)
{
	const struct ts_span *tank = &profile->at[TS_TEMPERATURE];

	return tank->given ? tank->value : TS_TANK_TEMPERATURE_C;
}

static enum ts_status cannot_be(struct session *s)
{
	return cannot(s, "Cannot be said of this water",
		"its figures lie outside what fresh water can be; is a unit wrong?");
}

/* The water of the call as a solution; TS_NO with an answer where it cannot be had. */
static enum ts_status open_titration(struct session *s, struct titration *t)
{
	struct ts_profile *profile = &t->answer.profile;
	unsigned assumed;
	enum ts_status status = answer_subject(s, &t->answer);

	t->session = s;
	t->base = s->options->base;
	if (status != TS_OK)
		return status;
	ts_profile_make(&t->answer.water, &s->options->keeping, s->practice, s->today, profile);
	status = ts_solution_from_profile(profile, temperature(profile), &t->water, &assumed);
	ts_water_describe_profile(profile, temperature(profile), &t->facts);
	if (status == TS_NO)
		return cannot(s, "Cannot be said without KH",
			"KH is the buffer: measure it with a drop kit, and give --KH");
	if (status != TS_OK)
		return cannot_be(s);
	if (t->facts.why[TS_FACT_PH_TANK] == TS_WHY_BUFFER_TOO_SMALL)
		return cannot(s, "There is hardly any buffer to begin with",
			"below KH 0.5 the pH does not follow from KH, and any acid moves it at "
			"once");
	if (t->facts.why[TS_FACT_PH_TANK] == TS_WHY_PHOSPHATE)
		return cannot(s, "Cannot be said of this water",
			"much of its buffer is phosphate, which this curve does not know");
	t->times_air =
		ts_tank_co2_times_air(profile, &t->water, t->answer.water.kind == TS_WATER_TANK);
	return TS_OK;
}

/* What is wrong with the flags of the call, or NULL. */
static const char *wrong_flags(const struct options *o)
{
	if (o->towards.kind != TS_MEASURE_NONE &&
		!(o->towards.value >= TOWARDS_LOW && o->towards.value <= TOWARDS_HIGH))
		return "--towards takes a pH that somebody might wish for, 4 to 9.5";
	if (o->dose.kind != TS_MEASURE_NONE && !(o->dose.value >= DOSE_LEAST))
		return "--dose takes 0.001 meq/L or more; base is --base";
	return NULL;
}

enum ts_status command_titrate(struct session *s)
{
	struct titration t = {0};
	struct ts_titrate_result r;
	enum ts_status status;

	if (wrong_flags(s->options)) {
		ts_text_put(s->error, wrong_flags(s->options));
		return TS_BAD_INPUT;
	}
	status = open_titration(s, &t);

	if (status != TS_OK)
		return status;
	r = (struct ts_titrate_result){.name = t.answer.water.name,
		.kept_age_days = t.answer.kept_age_days,
		.ph = t.facts.ph,
		.gh_dh = t.facts.gh_dh,
		.kh_dh = ts_chem_dkh_from_meq_l(t.water.alk_meq_l),
		.alkalinity_meq_l = t.water.alk_meq_l,
		.temp_c = t.water.temp_c,
		.tank_co2_times_air = t.times_air,
		.gone_acid_meq_l = t.water.alk_meq_l,
		.caution = ts_caution_acid};
	r.floor_acid_meq_l =
		t.water.alk_meq_l - ts_chem_meq_l_from_dkh(s->practice->value[TS_P_KH_FLOOR]);
	if (r.floor_acid_meq_l < 0)
		r.floor_acid_meq_l = (double)NAN;
	status = fill_steps(&t, &r);
	if (status == TS_OK && s->options->nightly) {
		status = fill_nightly(&t, &r);
		if (status == TS_NO)
			return cannot(s, "There is nothing to chase",
				"the aired tank stands at that pH already; leave it alone");
	}
	if (status == TS_BAD_INPUT)
		return cannot_be(s);
	if (status != TS_OK)
		return status;
	if (s->options->format == FORMAT_JSON)
		session_json(s, "titrate", &ts_result_titrate, &r);
	else
		titrate_write(&t, &r);
	return TS_OK;
}
