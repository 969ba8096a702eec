/* SPDX-License-Identifier: Apache-2.0 */
/*
 * rank for programs: fills the rows of report/rank_result.h.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/rank.h"
#include "cli/results.h"
#include "report/csv.h"
#include "report/rank_result.h"
#include "words/sentence.h"

static void make_parameter(struct ts_arena *arena, const struct answer *a, const struct ts_match *m,
	int p, struct ts_parameter_result *ret)
{
	const struct ts_parameter_fit *f = &m->at[p];
	const struct ts_span *s = &a->profile.at[p];
	const double unknown = (double)NAN;
	const char **source = ts_arena_array(arena, 2, sizeof *source);

	if (source) {
		source[0] = f->source[0];
		source[1] = f->source[1];
	}
	*ret = (struct ts_parameter_result){ts_parameter_rows[p].key, ts_parameter_rows[p].unit,
		s->given ? f->reading : unknown, s->given ? s->low : unknown,
		s->given ? s->high : unknown, f->tolerated, f->preferred, {source, source ? 2 : 0},
		f->suitability, f->known ? f->outside_by : unknown};
}

struct ts_parameter_result *result_parameters(
	struct ts_arena *arena, const struct answer *a, const struct ts_match *m, size_t *ret_count)
{
	struct ts_parameter_result *rows = ts_arena_array(arena, TS_PARAMETER__COUNT, sizeof *rows);

	*ret_count = rows ? TS_PARAMETER__COUNT : 0;
	for (size_t p = 0; p < *ret_count; p++)
		make_parameter(arena, a, m, (int)p, &rows[p]);
	return rows;
}

static void make_excluded(
	const struct answer *a, const struct ts_match *m, struct ts_match_result *ret)
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_parameter_fit *f = &m->at[p];

		if (!f->known || f->verdict != TS_EXCLUDED)
			continue;
		ret->excluded_by[ret->excluded_by_count++] = (struct ts_excluded_result){
			ts_parameter_rows[p].key, f->outside_by, ts_parameter_rows[p].unit,
			f->outside_by > 0 ? f->tolerated.high : f->tolerated.low};
	}
	if (m->verdict == TS_EXCLUDED && !isnan(m->copper_borne_mg_l))
		ret->excluded_by[ret->excluded_by_count++] = (struct ts_excluded_result){"copper",
			a->profile.poisons.copper_mg_l - m->copper_borne_mg_l, "mg/L",
			m->copper_borne_mg_l};
}

const char *result_id(struct ts_arena *arena, const char *file)
{
	const char *slash = strrchr(file, '/'), *start = slash ? slash + 1 : file;

	return ts_arena_text(arena, start, strcspn(start, "."));
}

const char *result_common(const struct ts_species *species)
{
	return species->common.en.count ? species->common.en.items[0] : NULL;
}

const char *result_limiting(const struct ts_match *match)
{
	return match->limiting < 0 ? NULL : ts_parameter_rows[match->limiting].key;
}

static void make_match(struct ts_arena *arena, const struct answer *a, const struct ts_match *m,
	struct ts_match_result *ret)
{
	const struct ts_species *s = m->species;

	*ret = (struct ts_match_result){.species = s->species,
		.id = result_id(arena, s->file),
		.common = result_common(s),
		.verdict = ts_verdict_words[m->verdict],
		.fit = m->fit,
		.limiting = result_limiting(m),
		.excluded_by =
			ts_arena_array(arena, TS_PARAMETER__COUNT + 1, sizeof *ret->excluded_by),
		.adult_length_cm = s->adult_length_cm,
		.group_least = s->group.least,
		.tank_length_cm = ts_match_tank_length_cm(s),
		.tank_volume_l = ts_match_tank_volume_l(s)};
	ret->parameters = result_parameters(arena, a, m, &ret->parameter_count);
	if (ret->excluded_by)
		make_excluded(a, m, ret);
}

static struct ts_span_result span_of(const struct answer *a, int p)
{
	const struct ts_span *s = &a->profile.at[p];
	const double unknown = (double)NAN;

	return (struct ts_span_result){ts_parameter_rows[p].unit, s->given ? s->value : unknown,
		s->given ? s->low : unknown, s->given ? s->high : unknown};
}

#define SAID_MOST 16

/* The sentences of the bits that are set. */
static struct ts_texts said(
	struct ts_arena *arena, const struct ts_profile *profile, unsigned bits, bool poisons)
{
	struct ts_texts texts = {ts_arena_array(arena, SAID_MOST, sizeof *texts.items), 0};
	struct ts_text text;

	ts_text_open(&text, &arena->allocator);
	for (unsigned i = 0; texts.items && i < SAID_MOST; i++) {
		if (!(bits & 1u << i))
			continue;
		if (poisons)
			ts_say_poison(&text, 1u << i, &profile->poisons);
		else
			ts_say_unusual(&text, 1u << i, profile);
		texts.items[texts.count++] = ts_arena_text(arena, ts_text_get(&text), text.len);
		arena->failed |= text.failed;
		ts_text_drop(&text);
	}
	return texts;
}

static struct ts_water_asked_result water_of(struct ts_arena *arena, const struct answer *a)
{
	const struct ts_profile *p = &a->profile;

	return (struct ts_water_asked_result){.name = a->water.name,
		.kept_age_days = a->kept_age_days,
		.gh = span_of(a, TS_GH),
		.kh = span_of(a, TS_KH),
		.ph = span_of(a, TS_PH),
		.temp = span_of(a, TS_TEMPERATURE),
		.salinity = span_of(a, TS_SALINITY),
		.ph_read = p->ph_read,
		.ph_computed = p->ph_computed,
		.ph_tank_low = p->ph_tank_low,
		.ph_tank = p->ph_tank,
		.ph_tank_high = p->ph_tank_high,
		.unusual = said(arena, p, p->unusual & TS_UNUSUAL__IN_PROFILE, false),
		.poisons = said(arena, p, p->poisons.found, true),
		.next_to_measure = ts_next_to_measure(p)};
}

struct ts_water_asked_result *result_water(struct ts_arena *arena, const struct answer *a)
{
	struct ts_water_asked_result *row = ts_arena_take(arena, sizeof *row);

	if (row)
		*row = water_of(arena, a);
	return row;
}

static bool make_rows(struct ts_arena *arena, const struct answer *a, struct ts_rank_result *ret)
{
	size_t most = a->count ? a->count : 1;

	*ret = (struct ts_rank_result){.water = water_of(arena, a),
		.ranked = ts_arena_array(arena, most, sizeof *ret->ranked),
		.excluded = ts_arena_array(arena, most, sizeof *ret->excluded),
		.near_misses = ts_arena_array(arena, most, sizeof *ret->near_misses)};
	if (!ret->ranked || !ret->excluded || !ret->near_misses)
		return false;
	for (size_t i = 0; i < a->count; i++) {
		struct ts_match_result row;

		make_match(arena, a, &a->matches[i], &row);
		if (a->matches[i].verdict == TS_EXCLUDED)
			ret->excluded[ret->excluded_count++] = row;
		else
			ret->ranked[ret->ranked_count++] = row;
		if (ts_match_near_miss(&a->matches[i]) >= 0)
			ret->near_misses[ret->near_miss_count++] = row;
	}
	return !arena->failed;
}

void rank_json(struct session *s, const struct answer *a, const char *command)
{
	struct ts_rank_result rows;

	if (make_rows(s->arena, a, &rows))
		session_json(s, command, &ts_result_rank, &rows);
}

void rank_line_json(struct session *s, const char *name, unsigned line, const struct answer *a)
{
	struct ts_rank_line_result rows = {.name = name, .line = line};

	rows.finding_count = result_findings(s->arena, s->findings, &rows.findings);
	if (a && make_rows(s->arena, a, &rows.answer))
		rows.water = &rows.answer.water;
	if (!s->arena->failed)
		ts_result_json_line(s->out, TS_VERSION, "rank", &ts_result_rank_line, &rows);
}

void rank_csv(struct session *s, const struct answer *a)
{
	struct ts_match_result *rows =
		ts_arena_array(s->arena, a->count ? a->count : 1, sizeof *rows);

	for (size_t i = 0; rows && i < a->count; i++)
		make_match(s->arena, a, &a->matches[i], &rows[i]);
	if (rows)
		session_csv(s, &ts_result_match, rows, a->count);
}
