/* SPDX-License-Identifier: Apache-2.0 */
/*
 * mix: the water that several waters make; the answer is answers/mix.c's.
 */
#include "answers/mix.h"

#include <math.h>
#include <string.h>

#include "base/arena.h"
#include "base/number.h"
#include "cli/care_answer.h"
#include "report/water_result.h"
#include "show/water.h"

/* A part of this name is water without any minerals: rain, or from reverse osmosis. */
#define PURE "pure"

struct part {
	const char *file, *name;
	double amount;
	bool pure;
	struct ts_water water;
};

struct mixture {
	struct part parts[TS_MIX_PARTS_MOST];
	struct ts_mix_part asked[TS_MIX_PARTS_MOST];
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

	if (o->argument_count < 2 || o->argument_count > TS_MIX_PARTS_MOST) {
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
	struct ts_water *waters[TS_MIX_PARTS_MOST];
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
	for (size_t i = 0; i < m->count; i++)
		m->asked[i] = (struct ts_mix_part){m->parts[i].name, m->parts[i].amount,
			m->parts[i].pure ? NULL : &m->parts[i].water};
	return status;
}

enum ts_status command_mix(struct session *s)
{
	const struct ts_asking asking = care_asking(s);
	const struct ts_measure *temp = &s->options->temperature;
	struct mixture *m = ts_arena_take(s->arena, sizeof *m);
	struct ts_mix_result r;
	struct ts_document doc;
	enum ts_status status = m ? read_parts(s, m) : TS_NO_MEMORY;

	if (status == TS_OK)
		status = load_parts(s, m);
	if (status == TS_OK)
		status = ts_mix_answer(&asking,
			&(struct ts_mix_question){m->asked, m->count, m->litres,
				temp->kind == TS_MEASURE_NONE ? (double)NAN : temp->value},
			&r);
	if (status != TS_OK)
		return status;
	if (s->options->format == FORMAT_JSON) {
		session_json(s, "mix", &ts_result_mix, &r);
	} else {
		ts_doc_open(&doc, s->arena, "A mixture");
		ts_show_mix(&doc, &r);
		session_write(s, &doc);
	}
	return r.computed ? TS_OK : TS_NO;
}
