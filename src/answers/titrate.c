/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The curve is care/titrate.c's; here are its question, its sentences, and what to do instead.
 */
#include "answers/titrate.h"

#include <math.h>

#include "base/number.h"
#include "chem/carbonate.h"
#include "chem/hardness.h"
#include "water/facts.h"
#include "water/gas.h"
#include "words/care.h"

#define STEPS_MOST 24
/* Of base, which no buffer stops, this many steps are shown. */
#define STEPS_OF_BASE 9
/* Steps shown beyond the end of the buffer. */
#define STEPS_AFTER 2
#define TOWARDS_DEFAULT 7.0

struct work {
	const struct ts_asking *asking;
	const struct ts_titrate_question *q;
	struct ts_profile profile;
	struct ts_water_facts facts;
	struct ts_solution water;
	double times_air; /* CO2 of the running tank */
	struct ts_text text;
	struct ts_titrate_result *out;
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static struct ts_titrate_step_result step_of(const struct ts_titration_step *s)
{
	return (struct ts_titrate_step_result){s->acid_meq_l, s->alkalinity_meq_l, s->kh_dh,
		s->ph_closed, s->co2_mg_l, s->ph_tank, s->ph_air, ts_co2_words[s->danger]};
}

/* A step that reads well: 1, 2 or 5 times a power of ten, about `value`. */
static double round_step(double value)
{
	double power = ts_power(10, floor(log10(value))), part = value / power;

	return power * (part < 1.5 ? 1 : part < 3.5 ? 2 : part < 7.5 ? 5 : 10);
}

/* So many points of the drawn line a step: where the buffer ends it bends within one. */
#define POINTS_A_STEP 5

static enum ts_status fill(struct work *w, double dose, size_t count,
	struct ts_titrate_step_result **ret, size_t *ret_count)
{
	struct ts_titration_step steps[(STEPS_MOST - 1) * POINTS_A_STEP + 1];
	enum ts_status status = ts_titrate(&w->water, w->q->base ? -dose : dose, count,
		w->times_air, w->asking->practice, steps, &count);

	if (status != TS_OK)
		return status;
	*ret = ts_arena_array(w->asking->arena, count, sizeof **ret);
	if (!*ret)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < count; i++)
		(*ret)[i] = step_of(&steps[i]);
	*ret_count = count;
	return TS_OK;
}

static enum ts_status fill_steps(struct work *w)
{
	struct ts_titrate_result *r = w->out;
	double buffer = fmax(w->water.alk_meq_l, 0.05);
	double dose = isnan(w->q->dose_meq_l) ? round_step(buffer / 10) : w->q->dose_meq_l;
	double wanted = w->q->base ? STEPS_OF_BASE : ceil(buffer / dose) + STEPS_AFTER;
	size_t count = wanted > STEPS_MOST ? STEPS_MOST : (size_t)wanted;
	enum ts_status status = fill(w, dose, count, &r->steps, &r->step_count);

	if (status != TS_OK || w->q->nightly)
		return status;
	return fill(w, dose / POINTS_A_STEP, (r->step_count - 1) * POINTS_A_STEP + 1, &r->line,
		&r->line_count);
}

static double day_or_nan(unsigned day)
{
	return day ? day : (double)NAN;
}

static enum ts_status fill_keeper(struct work *w, enum ts_titration_keeper keeper,
	double towards_ph, struct ts_titrate_keeper_result *r)
{
	struct ts_titrate_nightly_result *nightly = w->out->nightly;
	struct ts_titration_nights n = {0};
	enum ts_status status = ts_titrate_nights(
		&w->water, towards_ph, keeper, w->times_air, w->asking->practice, &n);

	if (status != TS_OK)
		return status;
	nightly->towards_ph = n.towards_ph;
	nightly->ph_start = n.ph_start;
	*r = (struct ts_titrate_keeper_result){n.nights[0].dose_meq_l, day_or_nan(n.floor_day),
		day_or_nan(n.gone_day), NULL, n.count};
	r->nights = ts_arena_array(w->asking->arena, n.count, sizeof *r->nights);
	if (!r->nights)
		return TS_NO_MEMORY;
	for (unsigned i = 0; i < n.count; i++)
		r->nights[i] = (struct ts_titrate_night_result){
			n.nights[i].day, n.nights[i].dose_meq_l, step_of(&n.nights[i].evening)};
	return TS_OK;
}

static enum ts_status fill_nightly(struct work *w)
{
	double towards_ph = isnan(w->q->towards_ph) ? TOWARDS_DEFAULT : w->q->towards_ph;
	struct ts_titrate_result *r = w->out;
	enum ts_status status;

	r->nightly = ts_arena_take(w->asking->arena, sizeof *r->nightly);
	if (!r->nightly)
		return TS_NO_MEMORY;
	status = fill_keeper(w, TS_KEEPER_SAME_DOSE, towards_ph, &r->nightly->same_dose);
	if (status == TS_OK)
		status = fill_keeper(w, TS_KEEPER_BY_TEST, towards_ph, &r->nightly->by_test);
	return status;
}

/* The answer is no: one verdict and its reason; nothing else is known. */
static void cannot(struct work *w, const char *headline, const char *reason)
{
	const double none = (double)NAN;

	*w->out = (struct ts_titrate_result){.kept_age_days = none,
		.headline = headline,
		.decides = reason,
		.ph = none,
		.gh_dh = none,
		.kh_dh = none,
		.alkalinity_meq_l = none,
		.temp_c = none,
		.tank_co2_times_air = none,
		.floor_acid_meq_l = none,
		.gone_acid_meq_l = none,
		.co2_danger_mg_l = w->asking->practice->value[TS_P_CO2_DANGER],
		.cannot = reason,
		.caution = ts_caution_acid};
}

static void cannot_be(struct work *w)
{
	cannot(w, "Cannot be said of this water",
		"its figures lie outside what fresh water can be; is a unit wrong?");
}

/* The tank's temperature, never the cold sample's: the curve is about a tank of this water. */
static double temperature(const struct ts_profile *profile)
{
	const struct ts_span *tank = &profile->at[TS_TEMPERATURE];

	return tank->given ? tank->value : TS_TANK_TEMPERATURE_C;
}

/* The water as a solution; false, with an answer, where it cannot be had. */
static bool open_water(struct work *w)
{
	double temp;
	unsigned assumed;
	enum ts_status status;

	ts_profile_make(
		w->q->water, w->q->keeping, w->asking->practice, w->asking->today, &w->profile);
	temp = temperature(&w->profile);
	status = ts_solution_from_profile(&w->profile, temp, &w->water, &assumed);
	ts_water_describe_profile(&w->profile, temp, &w->facts);
	if (status == TS_NO)
		cannot(w, "No acid, and no base: measure KH first",
			"KH is the buffer: with much of it the pH is back by morning, with little "
			"it falls at once. A drop kit reads it; give --KH");
	else if (status != TS_OK)
		cannot_be(w);
	else if (w->facts.why[TS_FACT_PH_TANK] == TS_WHY_BUFFER_TOO_SMALL)
		cannot(w, "There is hardly any buffer to begin with",
			"below KH 0.5 the pH does not follow from KH, and any acid moves it at "
			"once");
	else if (w->facts.why[TS_FACT_PH_TANK] == TS_WHY_PHOSPHATE)
		cannot(w, "Cannot be said of this water",
			"much of its buffer is phosphate, which this curve does not know");
	else
		return true;
	return false;
}

/* "0.25": two decimals, three where the figure is small. */
static void put_amount(struct work *w, double meq_l)
{
	ts_text_number_short(&w->text, ts_chem_dkh_from_meq_l(fabs(meq_l)), 1);
	ts_text_put(&w->text, " dH of KH (");
	ts_text_number_short(&w->text, fabs(meq_l), fabs(meq_l) < 0.1 ? 3 : 2);
	ts_text_put(&w->text, " meq/L)");
}

/* "24 mg/L of CO2, a concern" */
static void put_gas(struct work *w, const struct ts_titrate_step_result *s)
{
	ts_text_number(&w->text, s->co2_mg_l, 0);
	ts_text_put(&w->text, " mg/L of CO2");
	if (s->co2 != ts_co2_words[TS_CO2_BORNE])
		ts_text_puts(&w->text, ", a ", s->co2, NULL);
}

static void put_ph(struct work *w, double ph)
{
	ts_text_number(&w->text, ph, 1);
}

static void say_acid(struct work *w)
{
	struct ts_titrate_result *r = w->out;
	struct ts_titration_step half;
	struct ts_titrate_step_result s;

	if (ts_titrate_step(&w->water, w->water.alk_meq_l / 2, w->times_air, w->asking->practice,
		    &half) != TS_OK)
		return;
	s = step_of(&half);
	ts_text_put(&w->text, "Acid eats the buffer, and the pH comes back until all of KH ");
	ts_text_number_short(&w->text, r->kh_dh, 1);
	ts_text_put(&w->text, " is gone");
	r->headline = keep(w);
	ts_text_put(&w->text, "Half of it spent: pH ");
	put_ph(w, s.ph_closed);
	ts_text_put(&w->text, " at once, ");
	put_ph(w, s.ph_tank);
	ts_text_put(&w->text, " again when the gas has left; at once there are ");
	put_gas(w, &s);
	r->decides = keep(w);
}

static void say_steps(struct work *w)
{
	struct ts_titrate_result *r = w->out;

	if (w->q->base)
		r->headline = "The air takes back what base does to the pH, and leaves the KH";
	else
		say_acid(w);
	ts_asking_note(w->asking, &r->explains,
		w->q->base ? "Base takes CO2 out of the water, so the pH jumps. Within hours the "
			     "air brings the gas back and the pH falls again; what stays is a "
			     "higher KH. Raising KH with minerals does the same without the jump."
			   : "Each meq/L of strong acid takes 2.8 dKH and frees up to 44 mg/L of "
			     "CO2. That gas, not the acid, holds the pH down until it has left; "
			     "then the pH climbs back and only the buffer is gone. Where the "
			     "buffer ends, the next drop counts in whole units.");
}

/* Somebody who measures first: slower, and no better off. */
static void say_by_test(struct work *w)
{
	const struct ts_titrate_nightly_result *n = w->out->nightly;
	const struct ts_titrate_keeper_result *k = &n->by_test, *same = &n->same_dose;
	const struct ts_titrate_step_result *end = &k->nights[k->count - 1].evening;

	if (k->nights[0].dose_meq_l < 0) {
		ts_text_put(&w->text, "Every night the air brings back the CO2 that the base took; "
				      "what is left of it all is KH ");
		ts_text_number(&w->text, same->nights[same->count - 1].evening.kh_dh, 1);
		ts_text_put(&w->text, ", more with every evening.");
		return;
	}
	ts_text_put(&w->text,
		"Dosed by test, only as much as it takes, the buffer lasts longer and ends at KH ");
	ts_text_number(&w->text, end->kh_dh, 1);
	ts_text_put(&w->text, ": only there does the aired tank stand at pH ");
	put_ph(w, end->ph_tank);
	ts_text_put(&w->text, " by itself");
	if (!isnan(k->floor_day)) {
		ts_text_put(&w->text, ". From evening ");
		ts_text_number(&w->text, k->floor_day, 0);
		ts_text_put(&w->text, " on nothing worth the name holds it there");
	}
	ts_text_put(&w->text, ".");
}

static void say_nightly(struct work *w)
{
	struct ts_titrate_result *r = w->out;
	const struct ts_titrate_keeper_result *k = &r->nightly->same_dose;
	const struct ts_titrate_night_result *first = &k->nights[0];

	ts_text_put(&w->text, "Chasing pH ");
	ts_text_number_short(&w->text, r->nightly->towards_ph, 1);
	if (!isnan(k->gone_day)) {
		ts_text_put(&w->text, ": evening ");
		ts_text_number(&w->text, k->gone_day, 0);
		ts_text_put(&w->text, " finds no buffer left");
	} else {
		ts_text_put(&w->text, ": every morning takes it back");
	}
	r->headline = keep(w);
	put_amount(w, first->dose_meq_l);
	ts_text_put(&w->text, first->dose_meq_l < 0 ? " of base an evening reads "
						    : " of acid an evening reads ");
	put_ph(w, first->evening.ph_closed);
	ts_text_put(&w->text, " at once, with ");
	put_gas(w, &first->evening);
	ts_text_put(&w->text, ", and ");
	put_ph(w, first->evening.ph_tank);
	ts_text_put(&w->text, " by morning; KH ");
	ts_text_number(&w->text, first->evening.kh_dh, 1);
	ts_text_put(&w->text, " after the first");
	r->decides = keep(w);
	ts_asking_note(w->asking, &r->explains,
		"Each evening the same dose as the first. The animals live through the jump and "
		"the gas every evening, and through the climb every night.");
	say_by_test(w);
	ts_asking_note(w->asking, &r->explains, keep(w));
}

/* What lowers a pH for good is less buffer: as much water without minerals as there is of it. */
static void say_instead(struct work *w)
{
	const struct ts_solution *of[] = {
		&w->water, &(struct ts_solution){.temp_c = w->water.temp_c}};
	struct ts_solution half;
	double low, usual, high;

	if (w->q->base || (w->out->nightly && w->out->nightly->same_dose.dose_first_meq_l < 0))
		return;
	ts_chem_mix(of, (const double[]){0.5, 0.5}, 2, &half);
	if (ts_chem_tank_ph(&half, &low, &usual, &high) != TS_OK)
		return;
	ts_text_put(&w->text, "For good a pH comes down with its buffer: half of the new water "
			      "without minerals makes KH ");
	ts_text_number_short(&w->text, w->out->kh_dh / 2, 1);
	ts_text_put(&w->text, ", and a tank of it runs at about ");
	put_ph(w, usual);
	ts_text_put(&w->text, ". In small steps, and at every change alike; and only where the "
			      "animals want softer water.");
	w->out->instead = keep(w);
}

static void say_sample(struct work *w)
{
	struct ts_titrate_result *r = w->out;

	if (r->name)
		ts_text_puts(&w->text, r->name, ": ", NULL);
	ts_text_put(&w->text, "KH ");
	ts_text_number_short(&w->text, r->kh_dh, 1);
	if (!isnan(r->gh_dh)) {
		ts_text_put(&w->text, ", GH ");
		ts_text_number_short(&w->text, r->gh_dh, 1);
	}
	if (!isnan(r->ph)) {
		ts_text_put(&w->text, ", pH ");
		ts_text_number_short(&w->text, r->ph, 2);
	}
	ts_text_put(&w->text, ", ");
	ts_text_number_short(&w->text, r->temp_c, 1);
	ts_text_put(&w->text, " C");
	if (!w->profile.at[TS_TEMPERATURE].given)
		ts_text_put(&w->text, " (assumed)");
	r->water_says = keep(w);
	ts_text_put(&w->text, "to ");
	ts_text_number_short(&w->text, r->tank_co2_times_air, 1);
	ts_text_put(&w->text, " times the CO2 of air, ");
	ts_text_put(&w->text, r->tank_co2_times_air == TS_CHEM_TANK_CO2_USUAL
				      ? "as a usual tank does"
				      : "the level its own pH and KH show");
	r->airs_says = keep(w);
}

static enum ts_status answer(struct work *w)
{
	struct ts_titrate_result *r = w->out;
	enum ts_status status;

	w->times_air =
		ts_tank_co2_times_air(&w->profile, &w->water, w->q->water->kind == TS_WATER_TANK);
	*r = (struct ts_titrate_result){.name = w->q->water->name,
		.kept_age_days = w->q->kept_age_days,
		.base = w->q->base,
		.ph = w->facts.ph,
		.gh_dh = w->facts.gh_dh,
		.kh_dh = ts_chem_dkh_from_meq_l(w->water.alk_meq_l),
		.alkalinity_meq_l = w->water.alk_meq_l,
		.temp_c = w->water.temp_c,
		.tank_co2_times_air = w->times_air,
		.floor_acid_meq_l =
			w->water.alk_meq_l -
			ts_chem_meq_l_from_dkh(w->asking->practice->value[TS_P_KH_FLOOR]),
		.gone_acid_meq_l = w->water.alk_meq_l,
		.co2_danger_mg_l = w->asking->practice->value[TS_P_CO2_DANGER],
		.caution = ts_caution_acid};
	if (r->floor_acid_meq_l < 0)
		r->floor_acid_meq_l = (double)NAN;
	status = fill_steps(w);
	if (status == TS_OK && w->q->nightly)
		status = fill_nightly(w);
	if (status != TS_OK)
		return status;
	if (r->nightly)
		say_nightly(w);
	else
		say_steps(w);
	say_instead(w);
	say_sample(w);
	return TS_OK;
}

enum ts_status ts_titrate_answer(const struct ts_asking *asking,
	const struct ts_titrate_question *q, struct ts_titrate_result *ret)
{
	struct ts_titrate_result r = {0};
	struct work w = {.asking = asking, .q = q, .out = &r};
	enum ts_status status = TS_OK;

	ts_text_open(&w.text, &asking->arena->allocator);
	if (open_water(&w))
		status = answer(&w);
	if (status == TS_NO)
		cannot(&w, "There is nothing to chase",
			"the aired tank stands at that pH already; leave it alone");
	else if (status == TS_BAD_INPUT)
		cannot_be(&w);
	asking->arena->failed |= w.text.failed;
	ts_text_drop(&w.text);
	if (status == TS_NO_MEMORY || asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = r;
	return TS_OK;
}
