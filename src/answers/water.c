/* SPDX-License-Identifier: Apache-2.0 */
/*
 * First what stands before all else (a danger, what is to be read before anything follows), then
 * the class and what a tank of the water runs at; the rest are the facts.
 */
#include "answers/water.h"

#include <math.h>

#include "base/arena.h"
#include "chem/hardness.h"
#include "water/first.h"
#include "water/series.h"
#include "words/first.h"
#include "words/sentence.h"
#include "words/unusual.h"
#include "words/water.h"

const char *const ts_water_fact_words[] = {"co2", "ph_closed", "ph_air", "ph_tank", "calcite_si",
	"ionic_strength", "conductivity_computed", "nh3_fraction", NULL};
const char *const ts_water_poison_words[] = {
	"nh3", "tan", "nitrite", "nitrate", "chlorine", "copper", "co2", "oxygen", NULL};
static const char *const poison_units[] = {
	"mg/L N", "mg/L N", "mg/L N", "mg/L", "mg/L", "mg/L", "mg/L", "mg/L"};

struct work {
	const struct ts_asking *asking;
	struct ts_text text;
	const struct ts_water *water;     /* NULL: nobody read it */
	const struct ts_profile *profile; /* NULL, likewise */
	struct ts_water_result *out;
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

/* Keeps the sentence as one more of a list; an empty one adds nothing. */
static void note(struct work *w, struct ts_texts *list)
{
	ts_asking_note(w->asking, list, keep(w));
}

/* What the first lines do not say is a note, too. */
static void note_unusual(struct work *w, bool told)
{
	const char *says = keep(w);

	ts_asking_note(w->asking, &w->out->unusual, says);
	if (!told)
		ts_asking_note(w->asking, &w->out->notes, says);
}

static void fill_unusual(struct work *w)
{
	static void (*const rest[])(struct ts_text *, const struct ts_profile *) = {
		ts_say_gas, ts_say_newest, ts_say_kh_hint};
	enum ts_water_first first = w->profile ? ts_water_first(w->profile) : TS_FIRST_NOTHING;
	unsigned told = w->out->worst ? 0 : ts_first_tells(w->profile, first);

	for (unsigned bit = 1; bit <= TS_UNUSUAL__ALL; bit <<= 1) {
		if (!(w->out->facts.unusual & bit))
			continue;
		ts_say_unusual(&w->text, bit, w->profile);
		note_unusual(w, told & bit);
	}
	for (size_t i = 0; w->profile && i < sizeof rest / sizeof *rest; i++) {
		rest[i](&w->text, w->profile);
		note_unusual(w, false);
	}
	if (w->profile && w->water && w->water->kind != TS_WATER_TANK) {
		ts_say_own_nitrate(&w->text, &w->out->facts, w->asking->practice);
		note_unusual(w, false);
	}
	if (w->profile)
		ts_say_gh_bound(&w->text, w->profile);
	note_unusual(w, told & TS_TOLD_GH_BOUND);
}

static void fill_assumed(struct work *w)
{
	unsigned assumed = w->out->facts.assumed;

	if (assumed & TS_ASSUMED_IONS) {
		ts_say_assumed_ions(&w->text, assumed);
		ts_text_put(&w->text, ", from hardness, buffer and charge");
		note(w, &w->out->assumed);
	}
	for (unsigned bit = TS_ASSUMED_TEMPERATURE; bit <= TS_ASSUMED_PH_AGAINST_KH; bit <<= 1) {
		if (assumed & bit)
			ts_text_put(&w->text, ts_assumed_says(bit));
		note(w, &w->out->assumed);
	}
}

static void fill_unknown(struct work *w)
{
	const struct ts_water_facts *f = &w->out->facts;
	struct ts_water_result *r = w->out;

	r->unknown = ts_arena_array(w->asking->arena, TS_WATER_FACT__COUNT, sizeof *r->unknown);
	for (int i = 0; r->unknown && i < TS_WATER_FACT__COUNT; i++) {
		if (f->why[i] != TS_WHY_KNOWN)
			r->unknown[r->unknown_count++] = (struct ts_unknown_result){
				ts_water_fact_words[i], ts_why_says[f->why[i]]};
	}
}

static void fill_dangers(struct work *w, const struct ts_water_danger dangers[TS_DANGER_ID__COUNT])
{
	struct ts_water_result *r = w->out;

	r->dangers = ts_arena_array(w->asking->arena, TS_DANGER_ID__COUNT, sizeof *r->dangers);
	for (int i = 0; r->dangers && i < TS_DANGER_ID__COUNT; i++) {
		const struct ts_water_danger *d = &dangers[i];

		if (isnan(d->value))
			continue;
		ts_say_danger(&w->text, (enum ts_danger_id)i, d);
		if (i == TS_D_CHLORINE && w->water->disinfectant == TS_DISINFECTANT_CHLORAMINE)
			ts_say_bound_ammonia(&w->text, d->value);
		r->dangers[r->danger_count++] = (struct ts_danger_result){ts_water_poison_words[i],
			ts_danger_words[d->danger], d->value, d->limit, poison_units[i],
			w->text.len ? keep(w) : NULL};
	}
}

static void fill_over_time(struct work *w)
{
	static const enum ts_parameter parameters[] = {TS_GH, TS_KH, TS_PH};
	struct ts_water_result *r = w->out;

	r->over_time = ts_arena_array(w->asking->arena, 3, sizeof *r->over_time);
	for (size_t i = 0; r->over_time && i < 3; i++) {
		struct ts_series_facts f;

		ts_series_make(w->water, parameters[i], &f);
		if (f.readings < 2)
			continue;
		r->over_time[r->over_time_count++] = (struct ts_over_time_result){
			ts_parameter_rows[parameters[i]].key, f.readings, f.days, f.low, f.high,
			f.spread, f.same_hour_spread, f.day_swing, f.drift_per_week, f.trend};
	}
	if (r->over_time_count)
		r->over_time_says = "A changing supply is judged by both its ends: no animal "
				    "chooses the day. --season takes the readings of one part of "
				    "the year.";
}

/* The worst poison that is more than a concern; NULL: there is none. */
static const struct ts_danger_result *worst(const struct ts_water_result *r)
{
	const struct ts_danger_result *found = NULL;

	for (size_t i = 0; i < r->danger_count; i++) {
		bool now = r->dangers[i].danger == ts_danger_words[TS_DANGER_NOW];

		if (now || (!found && r->dangers[i].danger == ts_danger_words[TS_DANGER_CONFLICT]))
			found = &r->dangers[i];
		if (now)
			break;
	}
	return found;
}

static void read_what(struct work *w)
{
	const struct ts_asking *asking = w->asking;
	struct ts_water_result *r = w->out;
	struct ts_water_danger dangers[TS_DANGER_ID__COUNT];
	enum ts_next next = ts_water_next(w->water, w->profile, &r->facts);
	unsigned drinking = ts_water_drinking(w->water, w->profile);

	ts_water_judge(w->profile, &r->facts, asking->practice, dangers);
	r->nh3_n_mg_l = dangers[TS_D_NH3].value;
	fill_dangers(w, dangers);
	r->worst = worst(r);
	fill_over_time(w);
	for (unsigned bit = 1; bit <= TS_DRINKING_COPPER; bit <<= 1) {
		if (drinking & bit)
			ts_text_put(&w->text, ts_drinking_says(bit));
		note(w, &r->drinking_water);
	}
	r->next_to_measure = ts_next_says[next];
	r->how_to_sample = ts_next_sample[next];
}

/* What stands before the class; false: nothing does. */
static bool lead_with_first(struct work *w)
{
	if (!w->profile || ts_water_first(w->profile) == TS_FIRST_NOTHING)
		return false;
	ts_say_first(&w->text, w->profile);
	ts_text_capital(&w->text, 0);
	ts_text_put(&w->text, ".");
	w->out->headline = keep(w);
	ts_say_first_because(&w->text, w->profile);
	w->out->decides = keep(w);
	return true;
}

static void lead_with_danger(struct work *w)
{
	const struct ts_danger_result *d = w->out->worst;

	if (d->poison == ts_water_poison_words[TS_D_CHLORINE])
		w->out->headline = "Treat every drop of this water before any animal meets it.";
	else
		w->out->headline = "This water harms animals as it is";
	w->out->decides = d->says;
}

static bool is_salt(const struct work *w)
{
	const struct ts_span *salt = w->profile ? &w->profile->at[TS_SALINITY] : NULL;

	return salt && ((salt->given && salt->low > w->asking->practice->value[TS_P_SALT_FRESH]) ||
			       w->profile->unusual & TS_UNUSUAL_SALTY);
}

static void lead(struct work *w)
{
	struct ts_water_result *r = w->out;

	if (r->worst)
		lead_with_danger(w);
	else if (lead_with_first(w))
		return;
	ts_say_class(&w->text, &r->facts);
	if (r->worst) {
		r->class_says = keep(w);
		return;
	}
	r->headline = keep(w);
	if (!w->profile && r->facts.unusual & TS_UNUSUAL_BARE) {
		r->class_says = r->headline;
		r->headline = "No animal before minerals are back: there is hardly one in it.";
		return;
	}
	ts_say_runs_at(&w->text, w->profile, &r->facts);
	r->decides = w->text.len ? keep(w) : NULL;
	/* A tank has its animals; salt that was read decides before hardness. */
	if ((!w->water || w->water->kind != TS_WATER_TANK) && !is_salt(w))
		r->suits_says = ts_home_of(&r->facts);
}

static void say_salt(struct work *w)
{
	const struct ts_span *salt = w->profile ? &w->profile->at[TS_SALINITY] : NULL;

	if (!salt || salt->from <= TS_FROM_ASSUMED)
		return;
	ts_say_salt(&w->text, salt, w->asking->practice);
	w->out->salt_says = keep(w);
}

static void add_hardness(struct ts_water_result *r, const char *name, double dh, double charges)
{
	const double mmol = ts_chem_mmol_l_from_dh(dh);

	if (isnan(dh))
		return;
	r->hardness[r->hardness_count++] = (struct ts_hardness_result){name, dh, mmol * charges,
		ts_chem_mg_caco3_from_mmol_l(mmol), mmol / TS_MMOL_L_PER_FH,
		mmol / TS_MMOL_L_PER_CLARK, mmol / TS_MMOL_L_PER_GPG};
}

/* The figures again, in the units of reports and kits. */
static void fill_units(struct work *w, const struct ts_water_facts *f)
{
	const double mg_l[TS_ION__IN_SOLUTION] = {f->ca_mg_l, f->mg_mg_l, f->na_mg_l, f->k_mg_l,
		f->cl_mg_l, f->so4_mg_l, f->no3_mg_l};
	struct ts_water_result *r = w->out;

	r->hardness = ts_arena_array(w->asking->arena, 2, sizeof *r->hardness);
	r->ions = ts_arena_array(w->asking->arena, TS_ION__IN_SOLUTION, sizeof *r->ions);
	if (!r->hardness || !r->ions)
		return;
	add_hardness(r, "GH", f->gh_dh, 1);
	add_hardness(r, "KH", f->kh_dh, 2);
	for (int ion = 0; ion < TS_ION__IN_SOLUTION; ion++) {
		if (!isnan(mg_l[ion]))
			r->ions[r->ion_count++] = (struct ts_ion_result){ts_ions[ion].symbol,
				mg_l[ion], mg_l[ion] / ts_ions[ion].molar_mass};
	}
}

static void answer(struct work *w, const struct ts_water_facts *facts)
{
	struct ts_water_result *r = w->out;

	r->facts = *facts;
	r->nh3_n_mg_l = (double)NAN;
	fill_units(w, facts);
	if (w->water)
		read_what(w);
	fill_unusual(w);
	fill_assumed(w);
	fill_unknown(w);
	lead(w);
	say_salt(w);
	if (!isnan(facts->kh_dh)) {
		ts_say_buffer(&w->text, facts, w->asking->practice);
		r->buffer_says = keep(w);
	}
	ts_say_oxygen(&w->text, facts, w->asking->practice);
	r->oxygen_says = w->text.len ? keep(w) : NULL;
	w->asking->arena->failed |= w->text.failed;
	ts_text_drop(&w->text);
}

void ts_water_answer_facts(const struct ts_asking *asking, const struct ts_profile *profile,
	const struct ts_water_facts *facts, struct ts_water_result *ret)
{
	struct work w = {.asking = asking, .profile = profile, .out = ret};

	*ret = (struct ts_water_result){.kept_age_days = (double)NAN};
	ts_text_open(&w.text, &asking->arena->allocator);
	answer(&w, facts);
}

/* Harder by so much than what stands beside it: minerals were taken out of that one, dH. */
#define TAKEN_OUT_DH 3.0

static bool taken_out(
	const struct ts_profile *p, const struct ts_profile *beside, enum ts_parameter of)
{
	return p->at[of].given && beside->at[of].given &&
	       beside->at[of].value - p->at[of].value >= TAKEN_OUT_DH;
}

/*
 * One water, of which something was read. `beside`: what it was made of, or NULL. Where that has
 * more of both, peat or active soil took them: no softener is asked for, and pH tells no CO2.
 */
static void answer_one(const struct ts_asking *asking, const struct ts_water_question *q,
	const struct ts_water *water, const struct ts_profile *beside,
	struct ts_profile *ret_profile, struct ts_water_result *ret)
{
	struct work w = {.asking = asking, .water = water, .profile = ret_profile, .out = ret};
	struct ts_keeping keeping = *q->keeping;
	struct ts_water_facts facts;

	*ret = (struct ts_water_result){.name = water->name, .kept_age_days = (double)NAN};
	ts_profile_make(water, &keeping, asking->practice, asking->today, ret_profile);
	if (beside && taken_out(ret_profile, beside, TS_GH) &&
		taken_out(ret_profile, beside, TS_KH)) {
		keeping.acids = true;
		ts_profile_make(water, &keeping, asking->practice, asking->today, ret_profile);
	}
	if (beside && taken_out(ret_profile, beside, TS_GH))
		ret_profile->unusual &= ~(unsigned)TS_UNUSUAL_MAYBE_SOFTENED;
	ts_water_describe_profile(ret_profile, q->sample_temp_c, &facts);
	ts_text_open(&w.text, &asking->arena->allocator);
	answer(&w, &facts);
}

static enum ts_water_tank which_tank(const struct ts_water_question *q)
{
	return q->water->kind == TS_WATER_TANK     ? TS_WATER_TANK_FIRST
	       : q->against->kind == TS_WATER_TANK ? TS_WATER_TANK_SECOND
						   : TS_WATER_TANK_NONE;
}

enum ts_status ts_water_answer(const struct ts_asking *asking, const struct ts_water_question *q,
	struct ts_water_result *ret)
{
	struct ts_profile profile, other_profile;
	struct ts_water_result r, other;
	enum ts_status status = TS_OK;

	if (q->against)
		answer_one(asking, q, q->against, NULL, &other_profile, &other);
	answer_one(asking, q, q->water, q->against ? &other_profile : NULL, &profile, &r);
	r.kept_age_days = q->kept_age_days;
	if (q->against)
		status = ts_water_answer_against(
			asking, which_tank(q), &profile, &other_profile, &other, &r);
	if (status != TS_OK || asking->arena->failed)
		return TS_NO_MEMORY;
	if (r.against && !r.worst && r.against->says.count) {
		/* The water beside it tells more of a softener than a guess. */
		struct ts_text text;

		ts_text_open(&text, &asking->arena->allocator);
		ts_say_class(&text, &r.facts);
		r.class_says = ts_asking_keep(asking, &text);
		ts_text_drop(&text);
		r.headline = r.against->says.items[0];
		r.decides = ts_water_first(&profile) == TS_FIRST_NOTHING ? r.decides : NULL;
	}
	*ret = r;
	return TS_OK;
}

bool ts_water_answered(const struct ts_water_result *r)
{
	const struct ts_water_facts *f = &r->facts;

	return !isnan(f->gh_dh) || !isnan(f->kh_dh) || !isnan(f->ph) ||
	       !isnan(f->conductivity_us_cm) || r->salt_says || r->unusual.count > 0 ||
	       r->danger_count > 0;
}
