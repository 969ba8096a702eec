/* SPDX-License-Identifier: Apache-2.0 */
/*
 * remake: the words of the call, or of due, become the question of answers/remake.h. Nothing is
 * decided here.
 */
#include <string.h>

#include "answers/remake.h"
#include "base/arena.h"
#include "care/plan_state.h"
#include "cli/care_answer.h"
#include "cli/remake.h"
#include "model/shape.h"
#include "report/remake_result.h"
#include "show/remake.h"
#include "units/units.h"

struct call {
	struct answer answer; /* the water at hand */
	struct ts_plan plan;  /* a plan's, or a tank alone */
	bool has_plan;
	struct ts_resident *residents;
	struct ts_remake_question question;
};

/* One side of --to: "GH=11" or "GH=8..12". */
static bool read_wish(struct session *s, const char *text, size_t len, struct call *c)
{
	const char *equals = memchr(text, '=', len);
	size_t key = equals ? (size_t)(equals - text) : len;
	bool gh = key == 2 && (memcmp(text, "GH", 2) == 0 || memcmp(text, "gh", 2) == 0);
	bool kh = key == 2 && (memcmp(text, "KH", 2) == 0 || memcmp(text, "kh", 2) == 0);
	const enum ts_quantity quantity = gh ? TS_Q_GH : TS_Q_KH;
	char room[SETTINGS_ROOM];
	struct ts_scan scan = {0};
	const char *value = equals ? ts_arena_text(s->arena, equals + 1, len - key - 1) : NULL;

	if (value && (gh || kh)) {
		value = settings_unit_told(s, quantity, value, room);
		if (ts_scan_range(quantity, value, strlen(value),
			    gh ? &c->question.gh_dh : &c->question.kh_dh, &scan))
			return true;
	}
	if (scan.fault == TS_SCAN_OTHER_UNIT) {
		ts_text_puts(s->error, "--to: ", ts_scan_says(scan.fault), "; ", NULL);
		ts_scan_remedy(s->error, quantity, value, strlen(value), &scan);
		return false;
	}
	ts_text_put(s->error, "--to takes GH and KH, pH follows from them; write it like "
			      "GH=11,KH=10 or GH=8..12");
	return false;
}

static bool read_to(struct session *s, struct call *c)
{
	const char *at = s->options->to;

	c->question.gh_dh = c->question.kh_dh = (struct ts_range){(double)NAN, (double)NAN};
	while (at && *at) {
		size_t len = strcspn(at, ",");

		if (!read_wish(s, at, len, c))
			return false;
		at += len + (at[len] == ',');
	}
	/* An open low end starts at nothing. */
	c->question.gh_dh.low = isinf(c->question.gh_dh.low) ? 0 : c->question.gh_dh.low;
	c->question.kh_dh.low = isinf(c->question.kh_dh.low) ? 0 : c->question.kh_dh.low;
	return true;
}

/* What dissolves or steeps by itself: nobody weighs it, and the answer says how far it comes. */
static bool is_not_weighed(const char *name)
{
	static const char *const names[] = {"limestone", "aragonite", "crushed coral", "coral",
		"coral sand", "coral gravel", "lime", "peat", "leaves"};

	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		if (ts_same_word(names[i], name))
			return true;
	}
	return false;
}

static bool read_have(struct session *s, struct call *c)
{
	for (size_t i = 0; i < s->options->have.count; i++) {
		int id = ts_ingredient_named(s->options->have.items[i]);

		if (id < 0 && is_not_weighed(s->options->have.items[i]))
			continue;
		if (id < 0) {
			ts_text_puts(s->error, "--have does not know '", s->options->have.items[i],
				"'; it takes", NULL);
			for (int n = 0; n < TS_INGREDIENT__COUNT; n++)
				ts_text_puts(s->error, n ? ", " : " ", ts_ingredients[n].key, NULL);
			ts_text_put(s->error, " (limestone, aragonite, peat are not weighed: the "
					      "answer says what they do)");
			return false;
		}
		c->question.have |= 1u << id;
	}
	return true;
}

/* The water: the plan's, else the call's. */
static enum ts_status read_water(struct session *s, struct call *c)
{
	enum ts_status status;

	if (c->answer.water.reading_count)
		return TS_OK;
	if (s->options->argument_count > 1) {
		ts_text_put(s->error, "remake takes one plan; animals go behind --for and --with");
		return TS_BAD_INPUT;
	}
	if (s->options->argument_count) {
		status = file_plan(s, s->options->arguments[0], &c->plan);
		if (status)
			return status;
		c->has_plan = true;
	}
	if (c->has_plan && c->plan.water.reading_count && !s->options->has_reading &&
		!s->options->water_file) {
		c->answer.water = c->plan.water;
		return TS_OK;
	}
	return answer_water(s, &c->answer);
}

static enum ts_status read_tank(struct session *s, struct call *c)
{
	if (!s->options->tank_file)
		return TS_OK;
	return file_tank(s, s->options->tank_file, &c->plan.tank);
}

/* Animals in the tank: those behind --with, and the plan's that have a `since`. */
static enum ts_status read_residents(struct session *s, struct call *c)
{
	const struct ts_species **named, **planned;
	struct values in_plan = {0};
	bool wild[TS_VALUES_MOST] = {false};
	enum ts_status status = care_species(s, &s->options->with, &named);

	for (size_t i = 0; i < c->plan.stock_count; i++) {
		const struct ts_stock_line *line = &c->plan.stock[i];

		if (!ts_in_tank(line))
			continue;
		if (in_plan.count == TS_VALUES_MOST) {
			ts_text_put(s->error, "more than 16 kinds of animals in the tank; "
					      "ask for fewer at once");
			return TS_BAD_INPUT;
		}
		wild[in_plan.count] = line->origin == TS_ORIGIN_WILD;
		in_plan.items[in_plan.count++] = line->species;
	}
	if (!status)
		status = care_species(s, &in_plan, &planned);
	if (status)
		return status;
	c->residents = ts_arena_array(
		s->arena, s->options->with.count + in_plan.count + 1, sizeof *c->residents);
	if (!c->residents)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < s->options->with.count; i++)
		c->residents[c->question.resident_count++].species = named[i];
	for (size_t i = 0; i < in_plan.count; i++)
		c->residents[c->question.resident_count++] =
			(struct ts_resident){planned[i], wild[i], false};
	c->question.residents = c->residents;
	return TS_OK;
}

static double value_or_nan(const struct ts_measure *m)
{
	return m->kind == TS_MEASURE_NONE ? (double)NAN : m->value;
}

static enum ts_status put_question(struct session *s, struct call *c)
{
	const struct ts_species **wanted;
	enum ts_status status = read_water(s, c);

	if (!status)
		status = read_tank(s, c);
	if (!status)
		status = answer_catalogue(s);
	if (!status)
		status = care_species(s, &s->options->wished, &wanted);
	if (!status)
		status = read_residents(s, c);
	if (status)
		return status;
	c->question.water = &c->answer.water;
	c->question.plan = &c->plan;
	c->question.has_plan = c->has_plan;
	c->question.keeping = s->options->keeping;
	c->question.wanted = wanted;
	c->question.wanted_count = s->options->wished.count;
	c->question.volume_l = value_or_nan(&s->options->volume);
	c->question.change_percent = value_or_nan(&s->options->change_percent);
	return TS_OK;
}

static enum ts_status ask(struct session *s, struct call *c, struct ts_remake_result *ret)
{
	struct ts_asking asking;
	enum ts_status status;

	if (!read_to(s, c) || !read_have(s, c))
		return TS_BAD_INPUT;
	status = put_question(s, c);
	if (status)
		return status;
	asking = care_asking(s);
	status = ts_answer_remake(&asking, &c->question, ret);
	if (status == TS_BAD_INPUT)
		ts_text_put(s->error, "these figures are outside what the equations hold for; "
				      "check units and decimal points");
	return status;
}

enum ts_status remake_of_plan(struct session *s, const struct ts_plan *plan,
	const struct ts_water *water, struct ts_remake_result *ret)
{
	struct call *c = ts_arena_take(s->arena, sizeof *c);

	if (!c)
		return TS_NO_MEMORY;
	c->plan = *plan;
	c->has_plan = true;
	c->answer.water = *water;
	return ask(s, c, ret);
}

enum ts_status command_remake(struct session *s)
{
	struct call *c = ts_arena_take(s->arena, sizeof *c);
	struct ts_remake_result r;
	struct ts_document doc;
	enum ts_status status;

	if (!c)
		return TS_NO_MEMORY;
	if (!s->options->to && !s->options->wished.count) {
		ts_text_put(s->error, "remake needs a wish: --for SPECIES or --to GH=11,KH=10");
		return TS_BAD_INPUT;
	}
	status = ask(s, c, &r);
	if (status)
		return status;
	if (s->options->format == FORMAT_JSON) {
		session_json(s, "remake", &ts_result_remake, &r);
		return r.status;
	}
	ts_doc_open(&doc, s->arena, "Another water");
	doc.drawn = s->options->format == FORMAT_HTML;
	doc.brief = s->options->format == FORMAT_BRIEF;
	ts_show_remake(&doc, &r);
	session_write(s, &doc);
	return r.status;
}
