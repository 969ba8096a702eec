/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Each part becomes a solution; the mixture is computed from their means, and once more from the
 * ends that their readings leave open.
 */
#include "answers/mix.h"

#include <math.h>

#include "chem/hardness.h"
#include "words/unusual.h"

/*
 * Which ends are taken: bits 0 of GH and KH, 1 of pH, set for the most, of every other part; bits 2
 * and 3 of the parts between. Or none of them.
 */
#define ENDS 16
#define MEAN ENDS
/* One drop is up to 1 dH; less than this is hardly a buffer, from which no pH follows, dH. */
#define KH_LEAST_DH 0.2

struct part {
	struct ts_profile profile;
	struct ts_solution solution;
	unsigned assumed;
};

struct work {
	const struct ts_asking *asking;
	const struct ts_mix_question *q;
	struct part parts[TS_MIX_PARTS_MOST];
	struct ts_text text;
	struct ts_mix_result *out;
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static bool pure(const struct work *w, size_t i)
{
	return !w->q->parts[i].water;
}

/* Mean temperature of the samples that have one; NAN: none has. */
static double known_temp_c(const struct work *w)
{
	double sum = 0, parts = 0;

	if (!isnan(w->q->temp_c))
		return w->q->temp_c;
	for (size_t i = 0; i < w->q->count; i++) {
		if (pure(w, i) || isnan(w->parts[i].profile.contents.temp_c))
			continue;
		sum += w->q->parts[i].amount * w->parts[i].profile.contents.temp_c;
		parts += w->q->parts[i].amount;
	}
	return parts > 0 ? sum / parts : (double)NAN;
}

/* A part as its readings are in the mean, or at one end: what it changes by, or is doubted by. */
static struct ts_profile at_end(const struct ts_profile *profile, int end)
{
	static const enum ts_parameter parameters[] = {TS_GH, TS_KH};
	struct ts_profile p = *profile;

	if (end == MEAN) /* MEAN is beyond the four ends of one part */
		return p;
	for (size_t i = 0; i < 2; i++) {
		struct ts_span *span = &p.at[parameters[i]];

		/* The doubt of a GH moves no pH that could be told. */
		if (span->given && (span->exposure || parameters[i] == TS_KH))
			span->value = end & 1                  ? span->high
				      : parameters[i] == TS_KH ? fmax(span->low, KH_LEAST_DH)
							       : span->low;
	}
	p.ph_read = end & 2 ? p.ph_read_high : p.ph_read_low;
	return p;
}

static enum ts_status solve_part(struct work *w, size_t i, double temp_c, int end)
{
	struct part *part = &w->parts[i];
	bool own = !pure(w, i) && !isnan(part->profile.contents.temp_c) && isnan(w->q->temp_c);
	double at = own ? (double)NAN : isnan(temp_c) ? TS_TANK_TEMPERATURE_C : temp_c;
	struct ts_profile profile;

	if (pure(w, i)) {
		part->solution = (struct ts_solution){.temp_c = at};
		return TS_OK;
	}
	profile = at_end(&part->profile, end == MEAN ? end : i % 2 ? end >> 2 : end & 3);
	return ts_solution_from_profile(&profile, at, &part->solution, &part->assumed);
}

/* `ret_part`: the one that could not be computed. */
static enum ts_status solve(
	struct work *w, int end, struct ts_solution *ret, unsigned *ret_assumed, size_t *ret_part)
{
	const struct ts_solution *waters[TS_MIX_PARTS_MOST];
	double amounts[TS_MIX_PARTS_MOST], temp_c = known_temp_c(w);

	*ret_assumed = isnan(temp_c) ? TS_ASSUMED_TEMPERATURE : 0u;
	for (size_t i = 0; i < w->q->count; i++) {
		enum ts_status status = solve_part(w, i, temp_c, end);

		*ret_part = i;
		if (status != TS_OK)
			return status;
		waters[i] = &w->parts[i].solution;
		amounts[i] = w->q->parts[i].amount;
		*ret_assumed |= pure(w, i) ? 0u : w->parts[i].assumed;
	}
	ts_chem_mix(waters, amounts, w->q->count, ret);
	return TS_OK;
}

static void widen(double *low, double *high, double one, double other)
{
	*low = fmin(*low, fmin(one, other));
	*high = fmax(*high, fmax(one, other));
}

/* All ends of what readings that change, or are doubted, make of the mixture. */
static void widen_to_ends(struct work *w, struct ts_water_facts *f)
{
	bool changes = false;

	for (size_t i = 0; i < w->q->count; i++) {
		const struct ts_span *at = w->parts[i].profile.at;

		changes |= !pure(w, i) && (at[TS_GH].exposure || at[TS_KH].exposure);
	}
	for (int end = 0; end < ENDS; end++) {
		struct ts_solution mixed;
		struct ts_water_facts at;
		unsigned assumed;
		size_t part;

		/* An end at which pH and KH contradict each other tells nothing. */
		if (solve(w, end, &mixed, &assumed, &part) != TS_OK)
			continue;
		ts_water_describe(&mixed, assumed, NULL, &at);
		/* A drop's doubt of the minerals is in the pH, and not said of them again. */
		if (changes) {
			widen(&f->gh_low_dh, &f->gh_high_dh, at.gh_dh, at.gh_dh);
			widen(&f->kh_low_dh, &f->kh_high_dh, at.kh_dh, at.kh_dh);
		}
		widen(&f->ph_low, &f->ph_high, at.ph, at.ph);
		widen(&f->co2_low_mg_l, &f->co2_high_mg_l, at.co2_mg_l, at.co2_mg_l);
		widen(&f->ph_tank_low, &f->ph_tank_high, at.ph_tank_low, at.ph_tank_high);
	}
}

static void say_cannot(struct work *w, size_t part, enum ts_status status)
{
	struct ts_water_facts facts;

	ts_water_describe(NULL, 0, &w->parts[part].profile, &facts);
	ts_water_answer_facts(w->asking, &w->parts[part].profile, &facts, &w->out->water);
	w->out->water.headline = "The mixture cannot be computed";
	ts_text_puts(&w->text, w->q->parts[part].name,
		status == TS_NO ? ": its KH is not known; measure it with a drop kit"
				: ": its figures lie outside what fresh water can be; is a unit "
				  "wrong?",
		NULL);
	w->out->water.decides = keep(w);
}

static struct ts_range ends(double value, const struct ts_span *span)
{
	return span->given && span->exposure ? (struct ts_range){span->low, span->high}
					     : (struct ts_range){value, value};
}

static void fill_parts(struct work *w)
{
	for (size_t i = 0; i < w->q->count; i++) {
		const struct ts_solution *s = &w->parts[i].solution;
		const struct ts_span *at = w->parts[i].profile.at;

		w->out->parts[i] = (struct ts_mix_part_result){w->q->parts[i].name,
			w->q->parts[i].amount,
			ends(ts_chem_dh_from_mmol_l(s->ca_mmol_l + s->mg_mmol_l), &at[TS_GH]),
			ends(ts_chem_dkh_from_meq_l(s->alk_meq_l), &at[TS_KH])};
	}
}

/* What is to be said of the parts, which the mixture does not mend. */
static void say_advice(struct work *w)
{
	struct ts_texts *list = &w->out->advice;
	const unsigned kept = TS_UNUSUAL__NOBODY_YET ^ TS_UNUSUAL_BARE;
	bool changes = false;

	for (size_t i = 0; i < w->q->count; i++) {
		const struct ts_profile *p = &w->parts[i].profile;

		changes |= p->at[TS_GH].exposure || p->at[TS_KH].exposure;
		for (unsigned bit = 1; !pure(w, i) && bit <= TS_UNUSUAL__ALL; bit <<= 1) {
			if (!(p->unusual & bit & kept))
				continue;
			ts_text_puts(&w->text, w->q->parts[i].name, ": ", NULL);
			ts_say_unusual(&w->text, bit, p);
			ts_asking_note(w->asking, list, keep(w));
		}
	}
	if (changes)
		ts_asking_note(w->asking, list,
			"A changing supply is mixed at both its ends: no animal chooses the day. "
			"--season takes the readings of one part of the year.");
	ts_asking_note(w->asking, list,
		"Hardness, buffer and salts mix by volume; pH does not. Air the mixture, and test "
		"GH and KH of the first batch.");
}

static void answer(struct work *w)
{
	struct ts_solution mixed = {0};
	struct ts_water_facts facts;
	unsigned assumed = 0;
	size_t part = 0;
	enum ts_status status;

	for (size_t i = 0; i < w->q->count; i++) {
		if (!pure(w, i))
			ts_profile_make(w->q->parts[i].water, &(struct ts_keeping){0},
				w->asking->practice, w->asking->today, &w->parts[i].profile);
	}
	status = solve(w, MEAN, &mixed, &assumed, &part);
	if (status != TS_OK) {
		say_cannot(w, part, status);
		return;
	}
	w->out->computed = true;
	fill_parts(w);
	ts_water_describe(&mixed, assumed, NULL, &facts);
	widen_to_ends(w, &facts);
	ts_water_answer_facts(w->asking, NULL, &facts, &w->out->water);
	say_advice(w);
}

enum ts_status ts_mix_answer(
	const struct ts_asking *asking, const struct ts_mix_question *q, struct ts_mix_result *ret)
{
	struct ts_arena *arena = asking->arena;
	struct work *w = ts_arena_take(arena, sizeof *w);
	struct ts_mix_result r = {.parts = ts_arena_array(arena, q->count, sizeof *r.parts),
		.part_count = q->count,
		.litres = q->litres};

	if (!w || !r.parts)
		return TS_NO_MEMORY;
	*w = (struct work){.asking = asking, .q = q, .out = &r};
	ts_text_open(&w->text, &arena->allocator);
	answer(w);
	arena->failed |= w->text.failed;
	ts_text_drop(&w->text);
	if (arena->failed)
		return TS_NO_MEMORY;
	*ret = r;
	return TS_OK;
}
