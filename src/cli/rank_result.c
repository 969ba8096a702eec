/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of rank and why for programs: always complete, every species and every parameter, null
 * where a value is not known. JSON is the whole answer, CSV the species in one table.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/rank.h"
#include "cli/results.h"
#include "report/csv.h"
#include "words/sentence.h"

struct parameter_row {
	const char *name, *unit;
	double reading, reading_low, reading_high;
	struct ts_range tolerated, preferred;
	struct ts_texts source;
	double suitability, outside_by;
};

struct excluded_row {
	const char *name;
	double outside_by;
	const char *unit;
	double would_fit_if;
};

struct match_row {
	const char *species, *id, *common, *verdict;
	double fit;
	const char *limiting;
	struct parameter_row *parameters;
	size_t parameter_count;
	struct excluded_row *excluded_by;
	size_t excluded_by_count;
	double adult_length_cm, group_least, tank_length_cm, tank_volume_l;
};

struct span_row {
	const char *unit;
	double value, low, high;
};

struct water_row {
	const char *name;
	double kept_age_days;
	struct span_row gh, kh, ph, temp, salinity;
	double ph_read;
	bool ph_computed;
	double ph_tank_low, ph_tank, ph_tank_high;
	struct ts_texts unusual, poisons;
	const char *next_to_measure;
};

struct answer_rows {
	struct water_row water;
	struct match_row *ranked, *excluded, *near_misses;
	size_t ranked_count, excluded_count, near_miss_count;
};

/* clang-format off */
#define P struct parameter_row
static const struct ts_result_field parameter_fields[] = {
	TS_R_ROW_TEXT(P, "name", name, "gh, kh, ph, temp or salinity"),
	TS_R_ROW_TEXT(P, "unit", unit, "of its figures"),
	TS_R_ROW_NUMBER(P, "reading", reading, 2, "the value that counts"),
	TS_R_ROW_NUMBER(P, "reading_low", reading_low, 2, "least that the reading allows"),
	TS_R_ROW_NUMBER(P, "reading_high", reading_high, 2, "most that the reading allows"),
	TS_R_ROW_RANGE(P, "tolerated", tolerated, 2, "what the species lives in healthily"),
	TS_R_ROW_RANGE(P, "preferred", preferred, 2, "what it is comfortable in"),
	TS_R_ROW_TEXTS(P, "source", source, "publication or grade of tolerated, of preferred"),
	TS_R_ROW_SHARE(P, "suitability", suitability, 3, "1 comfortable, 0 at the limits"),
	TS_R_ROW_NUMBER(P, "outside_by", outside_by, 2, "how far beyond tolerated, negative below"),
};
#undef P
const struct ts_result_shape parameter_result_shape =
	TS_R_SHAPE("parameter", parameter_fields, struct parameter_row);

#define E struct excluded_row
static const struct ts_result_field excluded_fields[] = {
	TS_R_ROW_TEXT(E, "name", name, "what excludes"),
	TS_R_ROW_NUMBER(E, "outside_by", outside_by, 3, "how far beyond what is tolerated"),
	TS_R_ROW_TEXT(E, "unit", unit, "of its figures"),
	TS_R_ROW_NUMBER(E, "would_fit_if", would_fit_if, 3, "the value at which it would no longer exclude"),
};
#undef E
static const struct ts_result_shape excluded_shape =
	TS_R_SHAPE("excluded by", excluded_fields, struct excluded_row);

#define M struct match_row
static const struct ts_result_field match_fields[] = {
	TS_R_ROW_TEXT(M, "species", species, "accepted name"),
	TS_R_ROW_TEXT(M, "id", id, "stem of the record's file"),
	TS_R_ROW_TEXT(M, "common", common, "first English name"),
	TS_R_ROW_WORD(M, "verdict", verdict, ts_verdict_words, "does the water suit it?"),
	TS_R_ROW_SHARE(M, "fit", fit, 3, "0 to 1, for sorting"),
	TS_R_ROW_TEXT(M, "limiting", limiting, "the parameter that decides"),
	TS_R_ROW_LIST(M, "parameters", parameters, parameter_count, struct parameter_row, &parameter_result_shape, "each parameter against the water"),
	TS_R_ROW_LIST(M, "excluded_by", excluded_by, excluded_by_count, struct excluded_row, &excluded_shape, "what excludes it"),
	TS_R_ROW_NUMBER(M, "adult_length_cm", adult_length_cm, 1, "usual total length in tanks"),
	TS_R_ROW_NUMBER(M, "group_least", group_least, 0, "settled from this many"),
	TS_R_ROW_NUMBER(M, "tank_length_cm", tank_length_cm, 0, "least tank"),
	TS_R_ROW_NUMBER(M, "tank_volume_l", tank_volume_l, 0, "what a usual tank of that length holds"),
};
#undef M
static const struct ts_result_shape match_shape =
	TS_R_SHAPE("match", match_fields, struct match_row);

#define S struct span_row
static const struct ts_result_field span_fields[] = {
	TS_R_ROW_TEXT(S, "unit", unit, "of its figures"),
	TS_R_ROW_NUMBER(S, "value", value, 2, "as it counts"),
	TS_R_ROW_NUMBER(S, "low", low, 2, "least that the readings allow"),
	TS_R_ROW_NUMBER(S, "high", high, 2, "most that the readings allow"),
};
#undef S
static const struct ts_result_shape span_shape = TS_R_SHAPE("span", span_fields, struct span_row);

#define W struct water_row
static const struct ts_result_field water_fields[] = {
	TS_R_ROW_TEXT(W, "name", name, "of the water"),
	TS_R_ROW_NUMBER(W, "kept_age_days", kept_age_days, 0, "age of the kept tap; null: another water"),
	TS_R_ROW_SUB(W, "gh", gh, struct span_row, &span_shape, "general hardness"),
	TS_R_ROW_SUB(W, "kh", kh, struct span_row, &span_shape, "carbonate hardness"),
	TS_R_ROW_SUB(W, "ph", ph, struct span_row, &span_shape, "pH"),
	TS_R_ROW_SUB(W, "temp", temp, struct span_row, &span_shape, "temperature of the tank"),
	TS_R_ROW_SUB(W, "salinity", salinity, struct span_row, &span_shape, "salt"),
	TS_R_ROW_NUMBER(W, "ph_read", ph_read, 2, "pH as it was read"),
	TS_R_ROW_BOOL(W, "ph_computed", ph_computed, "pH is the tank's, computed from KH"),
	TS_R_ROW_NUMBER(W, "ph_tank_low", ph_tank_low, 1, "least pH of a tank of this water"),
	TS_R_ROW_NUMBER(W, "ph_tank", ph_tank, 1, "pH that a tank of this water runs at"),
	TS_R_ROW_NUMBER(W, "ph_tank_high", ph_tank_high, 1, "highest pH of a tank of this water"),
	TS_R_ROW_TEXTS(W, "unusual", unusual, "what is unusual, in words"),
	TS_R_ROW_TEXTS(W, "poisons", poisons, "poisons found, in words"),
	TS_R_ROW_TEXT(W, "next_to_measure", next_to_measure, "the one next thing to measure"),
};
#undef W
const struct ts_result_shape water_asked_shape =
	TS_R_SHAPE("water", water_fields, struct water_row);

#define A struct answer_rows
static const struct ts_result_field answer_fields[] = {
	TS_R_ROW_SUB(A, "water", water, struct water_row, &water_asked_shape, "the water that was asked about"),
	TS_R_ROW_LIST(A, "ranked", ranked, ranked_count, struct match_row, &match_shape, "not excluded, best first"),
	TS_R_ROW_LIST(A, "excluded", excluded, excluded_count, struct match_row, &match_shape, "excluded, best first"),
	TS_R_ROW_LIST(A, "near_misses", near_misses, near_miss_count, struct match_row, &match_shape, "excluded by one parameter alone and by little"),
};
#undef A
/* clang-format on */
const struct ts_result_shape rank_result_shape =
	TS_R_SHAPE("rank", answer_fields, struct answer_rows);

/* One row of a table of waters. */
struct line_rows {
	const char *name;
	size_t line;
	struct found_row *findings;
	size_t finding_count;
	struct water_row *water;
	struct answer_rows answer; /* its water stands above */
};

/* clang-format off */
#define L struct line_rows
static const struct ts_result_field line_fields[] = {
	TS_R_ROW_TEXT(L, "name", name, "of the row"),
	TS_R_ROW_COUNT(L, "line", line, "on which the row starts"),
	TS_R_ROW_LIST(L, "findings", findings, finding_count, struct found_row, &found_result_shape, "what is to be said of the row; with an error it was not ranked"),
	TS_R_ROW_MAYBE(L, "water", water, struct water_row, &water_asked_shape, "the water of the row; null: it was not ranked, and no list says anything"),
	TS_R_ROW_LIST(L, "ranked", answer.ranked, answer.ranked_count, struct match_row, &match_shape, "not excluded, best first"),
	TS_R_ROW_LIST(L, "excluded", answer.excluded, answer.excluded_count, struct match_row, &match_shape, "excluded, best first"),
	TS_R_ROW_LIST(L, "near_misses", answer.near_misses, answer.near_miss_count, struct match_row, &match_shape, "excluded by one parameter alone and by little"),
};
#undef L
/* clang-format on */
const struct ts_result_shape rank_line_result_shape =
	TS_R_SHAPE("rank line", line_fields, struct line_rows);

static void make_parameter(struct ts_arena *arena, const struct answer *a, const struct ts_match *m,
	int p, struct parameter_row *ret)
{
	const struct ts_parameter_fit *f = &m->at[p];
	const struct ts_span *s = &a->profile.at[p];
	const double unknown = (double)NAN;
	const char **source = ts_arena_array(arena, 2, sizeof *source);

	if (source) {
		source[0] = f->source[0];
		source[1] = f->source[1];
	}
	*ret = (struct parameter_row){ts_parameter_rows[p].key, ts_parameter_rows[p].unit,
		s->given ? f->reading : unknown, s->given ? s->low : unknown,
		s->given ? s->high : unknown, f->tolerated, f->preferred, {source, source ? 2 : 0},
		f->suitability, f->known ? f->outside_by : unknown};
}

struct parameter_row *result_parameters(
	struct ts_arena *arena, const struct answer *a, const struct ts_match *m, size_t *ret_count)
{
	struct parameter_row *rows = ts_arena_array(arena, TS_PARAMETER__COUNT, sizeof *rows);

	*ret_count = rows ? TS_PARAMETER__COUNT : 0;
	for (size_t p = 0; p < *ret_count; p++)
		make_parameter(arena, a, m, (int)p, &rows[p]);
	return rows;
}

static void make_excluded(const struct answer *a, const struct ts_match *m, struct match_row *ret)
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_parameter_fit *f = &m->at[p];

		if (!f->known || f->verdict != TS_EXCLUDED)
			continue;
		ret->excluded_by[ret->excluded_by_count++] = (struct excluded_row){
			ts_parameter_rows[p].key, f->outside_by, ts_parameter_rows[p].unit,
			f->outside_by > 0 ? f->tolerated.high : f->tolerated.low};
	}
	if (m->verdict == TS_EXCLUDED && !isnan(m->copper_borne_mg_l))
		ret->excluded_by[ret->excluded_by_count++] = (struct excluded_row){"copper",
			a->profile.poisons.copper_mg_l - m->copper_borne_mg_l, "mg/L",
			m->copper_borne_mg_l};
}

const char *result_id(struct ts_arena *arena, const char *file)
{
	const char *slash = strrchr(file, '/'), *start = slash ? slash + 1 : file;

	return ts_arena_text(arena, start, strcspn(start, "."));
}

static void make_match(struct ts_arena *arena, const struct answer *a, const struct ts_match *m,
	struct match_row *ret)
{
	const struct ts_species *s = m->species;

	*ret = (struct match_row){.species = s->species,
		.id = result_id(arena, s->file),
		.common = s->common.en.count ? s->common.en.items[0] : NULL,
		.verdict = ts_verdict_words[m->verdict],
		.fit = m->fit,
		.limiting = m->limiting < 0 ? NULL : ts_parameter_rows[m->limiting].key,
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

static struct span_row span_of(const struct answer *a, int p)
{
	const struct ts_span *s = &a->profile.at[p];
	const double unknown = (double)NAN;

	return (struct span_row){ts_parameter_rows[p].unit, s->given ? s->value : unknown,
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

static struct water_row water_of(struct ts_arena *arena, const struct answer *a)
{
	const struct ts_profile *p = &a->profile;

	return (struct water_row){.name = a->water.name,
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

struct water_row *result_water(struct ts_arena *arena, const struct answer *a)
{
	struct water_row *row = ts_arena_take(arena, sizeof *row);

	if (row)
		*row = water_of(arena, a);
	return row;
}

static bool make_rows(struct ts_arena *arena, const struct answer *a, struct answer_rows *ret)
{
	size_t most = a->count ? a->count : 1;

	*ret = (struct answer_rows){.water = water_of(arena, a),
		.ranked = ts_arena_array(arena, most, sizeof *ret->ranked),
		.excluded = ts_arena_array(arena, most, sizeof *ret->excluded),
		.near_misses = ts_arena_array(arena, most, sizeof *ret->near_misses)};
	if (!ret->ranked || !ret->excluded || !ret->near_misses)
		return false;
	for (size_t i = 0; i < a->count; i++) {
		struct match_row row;

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
	struct answer_rows rows;

	if (make_rows(s->arena, a, &rows))
		session_json(s, command, &rank_result_shape, &rows);
}

void rank_line_json(struct session *s, const char *name, unsigned line, const struct answer *a)
{
	struct line_rows rows = {.name = name, .line = line};

	rows.finding_count = result_findings(s->arena, s->findings, &rows.findings);
	if (a && make_rows(s->arena, a, &rows.answer))
		rows.water = &rows.answer.water;
	if (!s->arena->failed)
		ts_result_json_line(s->out, TS_VERSION, "rank", &rank_line_result_shape, &rows);
}

void rank_csv(struct session *s, const struct answer *a)
{
	struct match_row *rows = ts_arena_array(s->arena, a->count ? a->count : 1, sizeof *rows);

	for (size_t i = 0; rows && i < a->count; i++)
		make_match(s->arena, a, &a->matches[i], &rows[i]);
	if (rows)
		session_csv(s, &match_shape, rows, a->count);
}
