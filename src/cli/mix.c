/* SPDX-License-Identifier: Apache-2.0 */
/*
 * mix: the water that several waters make, closed and after airing. What is conserved (ions,
 * alkalinity, inorganic carbon) mixes by volume; pH never does and is computed from the mixture.
 */
#include <math.h>
#include <string.h>

#include "base/arena.h"
#include "base/number.h"
#include "chem/hardness.h"
#include "cli/care_answer.h"
#include "report/water_result.h"
#include "show/water.h"

#define PARTS_MOST 16
/* A part of this name is water without any minerals: rain, or from reverse osmosis. */
#define PURE "pure"

struct part {
	const char *file, *name;
	double amount;
	bool pure;
	struct ts_water water;
	struct ts_profile profile;
	struct ts_solution solution;
	unsigned assumed;
};

struct mixture {
	struct part parts[PARTS_MOST];
	size_t count;
	double whole;
	bool litres; /* else fractions */
};

static enum ts_status refuse(struct session *s, const char *argument, const char *why)
{
	ts_text_puts(s->error, "'", argument, "': ", why,
		"; write it like kitchen-tap.yaml=0.6 pure=0.4, or =60L", NULL);
	return TS_BAD_INPUT;
}

/* "FILE=0.6", "FILE=60L"; the last sign counts, since names of files may hold one. */
static enum ts_status read_part(struct session *s, const char *argument, struct mixture *m)
{
	const char *sign = strrchr(argument, '=');
	struct part *part = &m->parts[m->count];
	const char *unit;
	bool litres;

	if (!sign || sign == argument)
		return refuse(s, argument, "a part is FILE=AMOUNT");
	unit = sign + 1 + ts_number_read(sign + 1, strlen(sign + 1), &part->amount, NULL);
	litres = strcmp(unit, "L") == 0 || strcmp(unit, "l") == 0 || strcmp(unit, " L") == 0;
	if (unit == sign + 1 || (*unit && !litres))
		return refuse(s, argument, "the amount is a fraction or litres");
	if (!(part->amount > 0) || part->amount > 1e6)
		return refuse(s, argument, "the amount is above 0, to a million");
	if (m->count && litres != m->litres)
		return refuse(s, argument, "fractions and litres do not go together");
	part->file = ts_arena_text(s->arena, argument, (size_t)(sign - argument));
	if (!part->file)
		return TS_NO_MEMORY;
	part->pure = strcmp(part->file, PURE) == 0;
	part->name = part->file;
	m->litres = litres;
	m->whole += part->amount;
	m->count++;
	return TS_OK;
}

static enum ts_status read_parts(struct session *s, struct mixture *m)
{
	const struct options *o = s->options;

	if (o->argument_count < 2 || o->argument_count > PARTS_MOST) {
		ts_text_put(s->error, "mix takes 2 to 16 waters; write them like "
				      "kitchen-tap.yaml=0.6 pure=0.4, or =60L");
		return TS_BAD_INPUT;
	}
	for (size_t i = 0; i < o->argument_count; i++) {
		enum ts_status status = read_part(s, o->arguments[i], m);

		if (status != TS_OK)
			return status;
	}
	if (!m->litres && fabs(m->whole - 1) > 0.01)
		return refuse(s, o->arguments[0], "fractions make 1 together");
	return TS_OK;
}

static enum ts_status load_parts(struct session *s, struct mixture *m)
{
	struct ts_water *waters[PARTS_MOST];
	size_t count = 0;
	enum ts_status status = TS_OK;

	for (size_t i = 0; i < m->count && status == TS_OK; i++) {
		struct part *part = &m->parts[i];

		if (part->pure)
			continue;
		status = file_water(s, part->file, &part->water);
		part->name = part->water.name ? part->water.name : part->file;
		waters[count++] = &part->water;
	}
	if (status == TS_OK && count)
		status = answer_season(s, waters, count);
	for (size_t i = 0; i < m->count && status == TS_OK; i++) {
		if (!m->parts[i].pure)
			ts_profile_make(&m->parts[i].water, &(struct ts_keeping){0}, s->practice,
				s->today, &m->parts[i].profile);
	}
	return status;
}

/* Mean temperature of the samples that have one; NAN: none has. */
static double known_temp_c(const struct session *s, const struct mixture *m)
{
	double sum = 0, parts = 0;

	if (s->options->temperature.kind != TS_MEASURE_NONE)
		return s->options->temperature.value;
	for (size_t i = 0; i < m->count; i++) {
		if (m->parts[i].pure || isnan(m->parts[i].profile.contents.temp_c))
			continue;
		sum += m->parts[i].amount * m->parts[i].profile.contents.temp_c;
		parts += m->parts[i].amount;
	}
	return parts > 0 ? sum / parts : (double)NAN;
}

/* Water without minerals, in balance with the air. */
static enum ts_status pure_water(double temp_c, struct part *part)
{
	struct ts_profile p = {.ph_read = (double)NAN};
	const double no = (double)NAN;

	p.at[TS_GH] = p.at[TS_KH] = (struct ts_span){.given = true};
	p.contents = (struct ts_contents){temp_c, 0, 0, 0, 0, 0, 0, 0, no, no, no, no};
	return ts_solution_from_profile(&p, no, &part->solution, &part->assumed);
}

static enum ts_status cannot(struct session *s, const struct part *part, enum ts_status status)
{
	struct ts_document doc;
	struct ts_text text;

	if (s->options->format == FORMAT_JSON) {
		const struct ts_asking asking = care_asking(s);
		struct ts_water_result r;
		struct ts_water_facts facts;

		ts_water_describe(NULL, 0, &part->profile, &facts);
		ts_water_answer_facts(&asking, &part->profile, &facts, &r);
		session_json(s, "mix", &ts_result_mix, &r);
		return TS_NO;
	}
	ts_doc_open(&doc, s->arena, "A mixture");
	ts_text_open(&text, &s->arena->allocator);
	ts_text_puts(&text, part->name,
		status == TS_NO ? ": its KH is not known; measure it with a drop kit"
				: ": its figures lie outside what fresh water can be; is a unit "
				  "wrong?",
		NULL);
	ts_doc_verdict(&doc, "The mixture cannot be computed", ts_doc_take(&doc, &text));
	ts_text_drop(&text);
	session_write(s, &doc);
	return TS_NO;
}

/* The parts as their readings are in the mean, or at one end where a supply changes. */
enum end { MEAN, LEAST, MOST };

static struct ts_profile at_end(const struct ts_profile *profile, enum end end)
{
	static const enum ts_parameter parameters[] = {TS_GH, TS_KH};
	struct ts_profile p = *profile;

	for (size_t i = 0; i < 2; i++) {
		struct ts_span *span = &p.at[parameters[i]];

		if (span->given && span->exposure && end != MEAN)
			span->value = end == LEAST ? span->low : span->high;
	}
	return p;
}

static bool changes(const struct mixture *m)
{
	for (size_t i = 0; i < m->count; i++) {
		const struct ts_span *at = m->parts[i].profile.at;

		if (!m->parts[i].pure && (at[TS_GH].exposure || at[TS_KH].exposure))
			return true;
	}
	return false;
}

static enum ts_status solve_part(
	const struct session *s, struct part *part, double temp_c, enum end end)
{
	bool own = !isnan(part->profile.contents.temp_c) && !part->pure &&
		   s->options->temperature.kind == TS_MEASURE_NONE;
	double at = own ? (double)NAN : isnan(temp_c) ? TS_TANK_TEMPERATURE_C : temp_c;
	struct ts_profile profile = at_end(&part->profile, end);

	return part->pure ? pure_water(at, part)
			  : ts_solution_from_profile(&profile, at, &part->solution, &part->assumed);
}

static enum ts_status solve_parts(struct session *s, struct mixture *m, enum end end,
	struct ts_solution *ret, unsigned *ret_assumed)
{
	const struct ts_solution *waters[PARTS_MOST];
	double amounts[PARTS_MOST], temp_c = known_temp_c(s, m);

	*ret_assumed = isnan(temp_c) ? TS_ASSUMED_TEMPERATURE : 0u;
	for (size_t i = 0; i < m->count; i++) {
		struct part *part = &m->parts[i];
		enum ts_status status = solve_part(s, part, temp_c, end);

		if (status != TS_OK)
			return cannot(s, part, status);
		waters[i] = &part->solution;
		amounts[i] = part->amount;
		if (!part->pure)
			*ret_assumed |= part->assumed;
	}
	ts_chem_mix(waters, amounts, m->count, ret);
	return TS_OK;
}

static void widen(double *low, double *high, double one, double other)
{
	*low = fmin(*low, fmin(one, other));
	*high = fmax(*high, fmax(one, other));
}

/* Both ends of what a changing part makes of the mixture. */
static enum ts_status widen_to_ends(struct session *s, struct mixture *m, struct ts_water_facts *f)
{
	struct ts_water_facts least, most, *of[] = {&least, &most};
	struct ts_solution mixed = {0};
	unsigned assumed = 0;

	for (int i = 0; i < 2; i++) {
		enum ts_status status = solve_parts(s, m, i ? MOST : LEAST, &mixed, &assumed);

		if (status != TS_OK)
			return status;
		ts_water_describe(&mixed, assumed, NULL, of[i]);
	}
	widen(&f->gh_low_dh, &f->gh_high_dh, least.gh_dh, most.gh_dh);
	widen(&f->kh_low_dh, &f->kh_high_dh, least.kh_dh, most.kh_dh);
	widen(&f->ph_low, &f->ph_high, least.ph, most.ph);
	widen(&f->co2_low_mg_l, &f->co2_high_mg_l, least.co2_mg_l, most.co2_mg_l);
	widen(&f->ph_tank_low, &f->ph_tank_high, least.ph_tank_low, most.ph_tank_high);
	widen(&f->ph_tank_low, &f->ph_tank_high, most.ph_tank_low, least.ph_tank_high);
	return TS_OK;
}

static void put_span(struct ts_text *text, double value, const struct ts_span *span)
{
	bool both = span->given && span->exposure;

	ts_text_number_short(text, both ? span->low : value, 1);
	if (!both)
		return;
	ts_text_put(text, "..");
	ts_text_number_short(text, span->high, 1);
}

static void write_page(struct session *s, const struct mixture *m, const struct ts_water_result *r)
{
	struct ts_document doc;
	struct ts_node *table;
	struct ts_text text;

	ts_doc_open(&doc, s->arena, "A mixture");
	ts_text_open(&text, &s->arena->allocator);
	ts_show_water_lead(&doc, r);
	table = ts_doc_table(&doc);
	ts_doc_line(&doc, table, "part", m->litres ? "litres" : "share", "GH dH", "KH dH", NULL);
	for (size_t i = 0; i < m->count; i++) {
		const struct part *part = &m->parts[i];
		const struct ts_solution *w = &part->solution;
		double dh[] = {ts_chem_dh_from_mmol_l(w->ca_mmol_l + w->mg_mmol_l),
			ts_chem_dkh_from_meq_l(w->alk_meq_l)};
		const char *amount, *gh;

		ts_text_number_short(&text, part->amount, 3);
		amount = ts_doc_take(&doc, &text);
		put_span(&text, dh[0], &part->profile.at[TS_GH]);
		gh = ts_doc_take(&doc, &text);
		put_span(&text, dh[1], &part->profile.at[TS_KH]);
		ts_doc_line(&doc, table, part->name, amount, gh, ts_doc_take(&doc, &text), NULL);
	}
	ts_show_water_values(&doc, r, "pH closed");
	ts_show_water_rest(&doc, r);
	if (changes(m))
		ts_doc_paragraph(&doc, "A changing supply is mixed at both its ends: no animal "
				       "chooses the day. --season takes the readings of one part "
				       "of the year.");
	ts_doc_paragraph(&doc, "Hardness, buffer and salts mix by volume; pH does not. Air the "
			       "mixture, and test GH and KH of the first batch.");
	ts_text_drop(&text);
	session_write(s, &doc);
}

enum ts_status command_mix(struct session *s)
{
	struct mixture *m = ts_arena_take(s->arena, sizeof *m);
	const struct ts_asking asking = care_asking(s);
	struct ts_water_result r;
	struct ts_water_facts facts;
	struct ts_solution mixed = {0};
	unsigned assumed = 0;
	enum ts_status status = m ? read_parts(s, m) : TS_NO_MEMORY;

	if (status == TS_OK)
		status = load_parts(s, m);
	if (status == TS_OK)
		status = solve_parts(s, m, MEAN, &mixed, &assumed);
	if (status != TS_OK)
		return status;
	ts_water_describe(&mixed, assumed, NULL, &facts);
	if (changes(m))
		status = widen_to_ends(s, m, &facts);
	if (status != TS_OK)
		return status;
	ts_water_answer_facts(&asking, NULL, &facts, &r);
	if (s->options->format == FORMAT_JSON)
		session_json(s, "mix", &ts_result_mix, &r);
	else
		write_page(s, m, &r);
	return TS_OK;
}
