/* SPDX-License-Identifier: Apache-2.0 */
/*
 * arrive: from the shop's bag to the tank. The tank is the water of the call (-w, reading flags) or
 * a tank file as it is now (water/now.h); the answer is answers/arrive.c's.
 */
#include <string.h>

#include <tapshoal/plan.h>

#include "answers/arrive.h"
#include "base/arena.h"
#include "cli/care_answer.h"
#include "cli/reading_words.h"
#include "report/arrive_result.h"
#include "show/arrive.h"
#include "water/now.h"

struct work {
	struct session *s;
	struct answer answer; /* the tank */
	struct ts_water shop_water;
};

static enum ts_status read_tank(struct work *w)
{
	const struct options *o = w->s->options;
	struct ts_tank tank = {0};
	struct ts_now *now;
	enum ts_status status;

	if (!o->tank_file)
		return answer_water(w->s, &w->answer);
	status = file_tank(w->s, o->tank_file, &tank);
	if (status)
		return status;
	if (!tank.reading_count) {
		ts_text_puts(w->s->error, o->tank_file,
			" holds no readings; add readings with GH, KH and conductivity", NULL);
		return TS_BAD_INPUT;
	}
	now = ts_arena_take(w->s->arena, sizeof *now);
	if (!now)
		return TS_NO_MEMORY;
	ts_now_make(tank.readings, tank.reading_count, w->s->today, w->s->practice, now);
	if (now->reading.temp_c.kind == TS_MEASURE_NONE)
		now->reading.temp_c = tank.temp_c;
	w->answer.water = ts_now_water(now);
	return TS_OK;
}

static enum ts_status read_shop(struct work *w)
{
	const char *file = w->s->options->shop_file;
	struct ts_seen seen;

	if (!file)
		return TS_OK; /* nothing is known of it: taken as far apart */
	if (strpbrk(file, " :=") && w->s->system->look(w->s->system->state, file, &seen) != 0)
		return reading_words(w->s, "--shop", file, &w->shop_water);
	return file_water(w->s, file, &w->shop_water);
}

/* NAN: not said, or without an end. */
static double hours_of(const struct options *o)
{
	return o->hours.kind != TS_MEASURE_NONE && isfinite(o->hours.high) ? o->hours.high
									   : (double)NAN;
}

enum ts_status command_arrive(struct session *s)
{
	struct work *w = ts_arena_take(s->arena, sizeof *w);
	const struct ts_species **animals = NULL;
	struct ts_asking asking;
	struct ts_arrive_result r;
	struct ts_document doc;
	enum ts_status status = TS_BAD_INPUT;

	if (!w)
		return TS_NO_MEMORY;
	if (s->options->argument_count) {
		ts_text_puts(s->error, "arrive takes no '", s->options->arguments[0],
			"'; the shop's water goes behind --shop, animals behind --with; a whole "
			"tank "
			"moves with tapshoal what-if move",
			NULL);
		return status;
	}
	w->s = s;
	status = read_tank(w);
	if (!status)
		status = read_shop(w);
	if (!status && s->options->with.count)
		status = answer_catalogue(s);
	if (!status)
		status = care_species(s, &s->options->with, &animals);
	if (status)
		return status;
	asking = care_asking(s);
	status = ts_answer_arrive(&asking,
		&(struct ts_arrive_question){&w->answer.water, &w->shop_water, s->options->keeping,
			animals, s->options->with.count, hours_of(s->options)},
		&r);
	if (status)
		return status;
	if (s->options->format == FORMAT_JSON) {
		session_json(s, "arrive", &ts_result_arrive, &r);
	} else {
		ts_doc_open(&doc, s->arena, "Carrying home");
		doc.drawn = s->options->format == FORMAT_HTML;
		ts_show_arrive(&doc, &r);
		session_write(s, &doc);
	}
	return r.passes ? TS_OK : TS_NO;
}
