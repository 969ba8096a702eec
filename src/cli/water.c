/* SPDX-License-Identifier: Apache-2.0 */
/*
 * water: what is this water? Values in all usual units, what follows from them, what is unusual,
 * what is dangerous, and the one next thing to measure; --against puts another beside it.
 */
#include "cli/water.h"

#include <math.h>

#include "base/arena.h"
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
	struct ts_arena *arena;
	struct ts_texts *list;
	const char **items;
};

#define SAYS_MOST 8

static void say(struct says *s, const char *text)
{
	if (s->items && s->list->count < SAYS_MOST) {
		s->items[s->list->count++] = text;
		s->list->items = s->items;
	}
}

static void compare_hardness(struct says *s, double kh, double gh)
{
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

void water_compare(struct ts_arena *arena, const struct ts_water_facts *tank,
	const struct ts_water_facts *tap, struct ts_texts *ret)
{
	struct says s = {arena, ret, ts_arena_array(arena, SAYS_MOST, sizeof(const char *))};
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
	if (isnan(kh) || isnan(gh))
		say(&s, "GH and KH of both waters are needed to tell rock, acids and gas apart.");
}

/* The sample's temperature, not the tank's: typed as --temperature it is the sample's. */
static double sample_temp_c(const struct options *o)
{
	return o->temperature.kind == TS_MEASURE_NONE ? (double)NAN : o->temperature.value;
}

static void describe(struct session *s, struct answer *a, struct ts_water_result *r)
{
	struct ts_keeping keeping = {.fresh = s->options->fresh};
	struct ts_water_facts facts;

	ts_profile_make(&a->water, &keeping, s->practice, s->today, &a->profile);
	ts_water_describe_profile(&a->profile, sample_temp_c(s->options), &facts);
	*r = (struct ts_water_result){.name = a->water.name, .kept_age_days = a->kept_age_days};
	ts_water_result_fill(s->arena, &a->water, &a->profile, &facts, s->practice, r);
}

/* Only for a tank beside what is poured into it: nothing drifts between two supplies. */
static void advise(struct session *s, const struct answer *tank, const struct answer *poured,
	struct ts_water_result *r)
{
	const struct ts_range *ec = &r->against->conductivity_us_cm;
	struct ts_care_state state;

	ts_care_state_of_waters(&tank->profile, ec->low, &poured->profile, ec->high, &state);
	r->against->advice_count = ts_advice_lines(
		s->arena, &state, TS_ADVICE_OF_WATERS, s->practice, &r->against->advice);
}

static void say_changing(struct session *s, const struct answer *other, struct ts_water_result *r)
{
	static const enum ts_parameter parameters[] = {TS_GH, TS_KH};
	struct says says = {s->arena, &r->against->says, r->against->says.items};
	struct ts_text text;

	if (!says.items)
		says.items = ts_arena_array(s->arena, SAYS_MOST, sizeof *says.items);
	ts_text_open(&text, &s->arena->allocator);
	for (size_t i = 0; i < 2; i++) {
		const struct ts_span *span = &other->profile.at[parameters[i]];

		if (!span->given || !span->exposure || span->high - span->low <= HARDNESS_WIDE_DH)
			continue;
		ts_text_puts(&text, text.len ? ", " : "The other water changes: ",
			ts_parameter_rows[parameters[i]].label, " ", NULL);
		ts_text_number_short(&text, span->low, 1);
		ts_text_put(&text, "..");
		ts_text_number_short(&text, span->high, 1);
	}
	if (text.len) {
		ts_text_put(&text, ". Only what lies beyond its ends counts; --season compares one "
				   "part of the year.");
		say(&says, ts_arena_text(s->arena, ts_text_get(&text), text.len));
	}
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
}

static enum ts_status put_against(struct session *s, const struct answer *answer,
	const struct answer *other, const struct ts_water_result *o, struct ts_water_result *r)
{
	const struct ts_water_facts *f = &r->facts, *g = &o->facts;

	r->against = ts_arena_take(s->arena, sizeof *r->against);
	if (!r->against)
		return TS_NO_MEMORY;
	*r->against = (struct ts_against_result){.name = other->water.name,
		.ph = {f->ph, g->ph},
		.gh_dh = {f->gh_dh, g->gh_dh},
		.kh_dh = {f->kh_dh, g->kh_dh},
		.conductivity_us_cm = {f->conductivity_us_cm, g->conductivity_us_cm},
		.no3_mg_l = {f->no3_mg_l, g->no3_mg_l}};
	water_compare(s->arena, f, g, &r->against->says);
	say_changing(s, other, r);
	if (answer->water.kind == TS_WATER_TANK)
		advise(s, answer, other, r);
	return TS_OK;
}

static bool anything_known(const struct ts_water_result *r)
{
	const struct ts_water_facts *f = &r->facts;

	return !isnan(f->gh_dh) || !isnan(f->kh_dh) || !isnan(f->ph) ||
	       !isnan(f->conductivity_us_cm) || r->danger_count > 0;
}

static void write_page(struct session *s, const struct ts_water_result *r)
{
	struct ts_document doc;
	struct ts_text text;

	ts_doc_open(&doc, s->arena, "What this water is");
	water_page_verdict(&doc, r, s->practice);
	water_page_values(&doc, r, "pH");
	water_page_notes(&doc, r);
	water_page_over_time(&doc, r);
	water_page_against(&doc, r);
	ts_text_open(&text, &s->arena->allocator);
	ts_text_puts(&text, "Measure next: ", r->next_to_measure, " ", r->how_to_sample, NULL);
	ts_doc_paragraph(&doc, ts_doc_take(&doc, &text));
	ts_text_drop(&text);
	session_write(s, &doc);
}

/* The other water, and the season of both. */
static enum ts_status open_against(struct session *s, struct answer *answer, struct answer *other)
{
	struct ts_water *const both[] = {&answer->water, &other->water};
	enum ts_status status = file_water(s, s->options->against, &other->water);

	return status == TS_OK ? answer_season(s, both, 2) : status;
}

enum ts_status command_water(struct session *s)
{
	struct answer answer, other = {.kept_age_days = (double)NAN};
	struct ts_water_result r, o;
	enum ts_status status = answer_subject(s, &answer);

	if (status != TS_OK)
		return status;
	if (s->options->against)
		status = open_against(s, &answer, &other);
	if (status != TS_OK)
		return status;
	describe(s, &answer, &r);
	if (s->options->against) {
		describe(s, &other, &o);
		status = put_against(s, &answer, &other, &o, &r);
	}
	if (status != TS_OK)
		return status;
	if (s->options->format == FORMAT_JSON)
		session_json(s, "water", &ts_result_water, &r);
	else
		write_page(s, &r);
	return anything_known(&r) ? TS_OK : TS_NO;
}
