/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Two waters side by side, most often a tank and what it is filled with: what their difference
 * comes from, and what is to be done about it.
 */
#include <math.h>

#include "answers/water.h"
#include "care/plan_state.h"
#include "words/sentence.h"

/* Below this a difference of GH or KH is the kit's, dH; of pH likewise (kits: estimates). */
#define HARDNESS_APART_DH 1.5
#define PH_APART 0.4
/* Wider than a kit's doubt: the water changes. */
#define HARDNESS_WIDE_DH 2.0
/* Nitrate that a tank makes while it uses up its buffer, mg/L. */
#define NITRATE_APART_MG_L 10.0

struct says {
	const struct ts_asking *asking;
	struct ts_texts *list;
};

static void say(struct says *s, const char *text)
{
	ts_asking_note(s->asking, s->list, text);
}

static void compare_hardness(struct says *s, double kh, double gh)
{
	if (kh <= -HARDNESS_APART_DH && gh <= -HARDNESS_APART_DH) {
		say(s, "GH and KH have both fallen: peat or active soil takes up the minerals and "
		       "its acids eat the buffer, or water without minerals was added.");
		return;
	}
	if (kh >= HARDNESS_APART_DH && gh >= HARDNESS_APART_DH)
		say(s, "GH and KH have both risen: rock, gravel or shell is dissolving (limestone, "
		       "coral, marble), or minerals are dosed.");
	else if (kh >= HARDNESS_APART_DH)
		say(s, "KH has risen and GH has not: bicarbonate was dosed, or a softened line was "
		       "used.");
	else if (gh >= HARDNESS_APART_DH && kh > -HARDNESS_APART_DH)
		say(s, "GH has risen and KH has not: topping up with tap water, evaporation, or "
		       "salts dosed; the buffer may be used up at the same time.");
	if (kh <= -HARDNESS_APART_DH)
		say(s, "KH has fallen: the acids of the filter, of wood, leaves, peat or active "
		       "soil have used up buffer. Small, frequent water changes bring it back.");
	if (gh <= -HARDNESS_APART_DH)
		say(s, "GH has fallen: water without minerals was added, or active soil, plants or "
		       "peat took them up.");
}

/* How far the tank lies from the other water; from its nearer end where that one changes. */
static double apart(double tank, double value, double low, double high)
{
	if (high - low > HARDNESS_WIDE_DH)
		value = fmin(fmax(tank, low), high);
	return tank - value;
}

void ts_water_compare(const struct ts_asking *asking, const struct ts_water_facts *tank,
	const struct ts_water_facts *tap, struct ts_texts *ret)
{
	struct says s = {asking, ret};
	double kh = apart(tank->kh_dh, tap->kh_dh, tap->kh_low_dh, tap->kh_high_dh);
	double gh = apart(tank->gh_dh, tap->gh_dh, tap->gh_low_dh, tap->gh_high_dh);
	double ph = tank->ph - tap->ph, no3 = tank->no3_mg_l - tap->no3_mg_l;
	bool same = fabs(kh) < HARDNESS_APART_DH && fabs(gh) < HARDNESS_APART_DH;

	compare_hardness(&s, kh, gh);
	if (same && fabs(ph) >= PH_APART)
		say(&s, ph > 0 ? "Only pH is higher: that is gas. The tap's CO2 has left in the "
				 "tank; the minerals are the same, so nothing needs doing."
			       : "Only pH is lower: that is gas. The tank holds more CO2 than the "
				 "tap water; move its surface more, and look at what breathes in "
				 "it.");
	if (same && fabs(ph) < PH_APART)
		say(&s, "The two are alike within what kits can tell.");
	if (no3 >= NITRATE_APART_MG_L)
		say(&s, "Nitrate has risen: that is the fishes' feed. Making it from feed costs "
			"about 0.45 dKH each 10 mg/L.");
	if (!same && kh < HARDNESS_APART_DH && gh < HARDNESS_APART_DH)
		say(&s, "Neither GH nor KH has risen, so no rock or gravel is dissolving.");
	if (isnan(kh) || isnan(gh))
		say(&s, "GH and KH of both waters are needed to tell rock, acids and gas apart.");
}

/* Only for a tank beside what is poured into it: nothing drifts between two supplies. */
static void advise(const struct ts_asking *asking, const struct ts_profile *tank,
	const struct ts_profile *poured, struct ts_against_result *r)
{
	struct ts_care_state state;

	ts_care_state_of_waters(
		tank, r->conductivity_us_cm.low, poured, r->conductivity_us_cm.high, &state);
	r->advice_count = ts_advice_lines(
		asking->arena, &state, TS_ADVICE_OF_WATERS, asking->practice, &r->advice);
}

static void say_changing(
	const struct ts_asking *asking, const struct ts_profile *other, struct ts_texts *ret)
{
	static const enum ts_parameter parameters[] = {TS_GH, TS_KH};
	struct ts_text text;

	ts_text_open(&text, &asking->arena->allocator);
	for (size_t i = 0; i < 2; i++) {
		const struct ts_span *span = &other->at[parameters[i]];

		if (!span->given || !span->exposure || span->high - span->low <= HARDNESS_WIDE_DH)
			continue;
		ts_text_puts(&text, text.len ? ", " : "The other water changes: ",
			ts_parameter_rows[parameters[i]].label, " ", NULL);
		ts_text_number_short(&text, span->low, 1);
		ts_text_put(&text, "..");
		ts_text_number_short(&text, span->high, 1);
	}
	if (text.len)
		ts_text_put(&text, ". Only what lies beyond its ends counts; --season compares one "
				   "part of the year.");
	ts_asking_note(asking, ret, ts_asking_keep(asking, &text));
	ts_text_drop(&text);
}

/* Two supplies: by how much they differ; where a difference comes from is told of tanks alone. */
static void say_apart(
	const struct ts_asking *asking, const struct ts_against_result *r, struct ts_texts *ret)
{
	const struct {
		const char *label;
		const struct ts_range *pair;
	} rows[] = {{"GH", &r->gh_dh}, {"KH", &r->kh_dh}};
	struct ts_text text;

	ts_text_open(&text, &asking->arena->allocator);
	for (size_t i = 0; i < 2; i++) {
		double apart = rows[i].pair->low - rows[i].pair->high;

		if (isnan(apart))
			continue;
		ts_text_puts(&text,
			text.len ? ", " : "The first beside the second: ", rows[i].label, " ",
			NULL);
		ts_text_number_short(&text, fabs(apart), 1);
		ts_text_put(&text, apart > 0 ? " more" : " less");
	}
	ts_text_put(&text, text.len ? ". " : "");
	ts_text_put(&text, "Which of the two is the tank? Write kind: tank into its file, and what "
			   "the difference comes from is said.");
	ts_asking_note(asking, ret, ts_asking_keep(asking, &text));
	ts_text_drop(&text);
}

enum ts_status ts_water_answer_against(const struct ts_asking *asking, enum ts_water_tank tank,
	const struct ts_profile *profile, const struct ts_profile *other_profile,
	const struct ts_water_result *other, struct ts_water_result *r)
{
	const struct ts_water_facts *f = &r->facts, *g = &other->facts;

	r->against = ts_arena_take(asking->arena, sizeof *r->against);
	if (!r->against)
		return TS_NO_MEMORY;
	*r->against = (struct ts_against_result){.name = other->name,
		.ph = {f->ph, g->ph},
		.gh_dh = {f->gh_dh, g->gh_dh},
		.kh_dh = {f->kh_dh, g->kh_dh},
		.conductivity_us_cm = {f->conductivity_us_cm, g->conductivity_us_cm},
		.no3_mg_l = {f->no3_mg_l, g->no3_mg_l},
		.ph_apart = f->ph - g->ph,
		.gh_apart_dh = f->gh_dh - g->gh_dh,
		.kh_apart_dh = f->kh_dh - g->kh_dh,
		.conductivity_apart_us_cm = f->conductivity_us_cm - g->conductivity_us_cm,
		.no3_apart_mg_l = f->no3_mg_l - g->no3_mg_l};
	if (tank == TS_WATER_TANK_NONE)
		say_apart(asking, r->against, &r->against->says);
	else if (tank == TS_WATER_TANK_FIRST)
		ts_water_compare(asking, f, g, &r->against->says);
	else
		ts_water_compare(asking, g, f, &r->against->says);
	say_changing(asking, other_profile, &r->against->says);
	if (tank == TS_WATER_TANK_FIRST)
		advise(asking, profile, other_profile, r->against);
	return TS_OK;
}
