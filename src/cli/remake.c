/* SPDX-License-Identifier: Apache-2.0 */
/*
 * remake: which species need no work; else the recipe for the water of others, and how the tank
 * gets there. Here the question is put together; remake_say.c writes the answer.
 */
#include "cli/remake.h"

#include <string.h>

#include "units/units.h"

#define CHANGE_PERCENT 25.0

/* One side of --to: "GH=11" or "GH=8..12". */
static bool read_wish(struct session *s, const char *text, size_t len, struct remake_call *c)
{
	const char *equals = memchr(text, '=', len);
	size_t key = equals ? (size_t)(equals - text) : len;
	bool gh = key == 2 && (memcmp(text, "GH", 2) == 0 || memcmp(text, "gh", 2) == 0);
	bool kh = key == 2 && (memcmp(text, "KH", 2) == 0 || memcmp(text, "kh", 2) == 0);
	struct ts_scan scan;

	if (equals && (gh || kh) &&
		ts_scan_range(gh ? TS_Q_GH : TS_Q_KH, equals + 1, len - key - 1,
			gh ? &c->wish.gh_dh : &c->wish.kh_dh, &scan))
		return true;
	if (equals && (gh || kh) && scan.fault == TS_SCAN_OTHER_UNIT) {
		ts_text_puts(s->error, "--to: ", ts_scan_says(scan.fault), "; ", NULL);
		ts_scan_remedy(s->error, gh ? TS_Q_GH : TS_Q_KH, equals + 1, len - key - 1, &scan);
		return false;
	}
	ts_text_put(s->error, "--to takes GH and KH, pH follows from them; write it like "
			      "GH=11,KH=10 or GH=8..12");
	return false;
}

static bool read_to(struct session *s, struct remake_call *c)
{
	const char *at = s->options->to;

	c->wish.gh_dh = c->wish.kh_dh = (struct ts_range){(double)NAN, (double)NAN};
	while (at && *at) {
		size_t len = strcspn(at, ",");

		if (!read_wish(s, at, len, c))
			return false;
		at += len + (at[len] == ',');
	}
	/* An open low end starts at nothing. */
	c->wish.gh_dh.low = isinf(c->wish.gh_dh.low) ? 0 : c->wish.gh_dh.low;
	c->wish.kh_dh.low = isinf(c->wish.kh_dh.low) ? 0 : c->wish.kh_dh.low;
	return true;
}

static bool read_have(struct session *s, struct remake_call *c)
{
	for (size_t i = 0; i < s->options->have.count; i++) {
		int id = ts_ingredient_named(s->options->have.items[i]);

		if (id < 0) {
			ts_text_puts(s->error, "--have does not know '", s->options->have.items[i],
				"'; it takes", NULL);
			for (int n = 0; n < TS_INGREDIENT__COUNT; n++)
				ts_text_puts(s->error, n ? ", " : " ", ts_ingredients[n].key, NULL);
			ts_text_put(s->error, " (limestone, aragonite, peat are not weighed: the "
					      "answer says what they do)");
			return false;
		}
		c->wish.have |= 1u << id;
	}
	return true;
}

/* The water: the plan's, else the call's. */
static enum ts_status read_water(struct session *s, struct remake_call *c)
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

static enum ts_status read_tank(struct session *s, struct remake_call *c)
{
	if (!s->options->tank_file)
		return TS_OK;
	return file_tank(s, s->options->tank_file, &c->plan.tank);
}

/* Animals in the tank: those behind --with, and the plan's that have a `since`. */
static enum ts_status read_residents(struct session *s, struct remake_call *c)
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
		c->residents[c->wish.resident_count++].species = named[i];
	for (size_t i = 0; i < in_plan.count; i++)
		c->residents[c->wish.resident_count++] =
			(struct ts_resident){planned[i], wild[i], false};
	c->wish.residents = c->residents;
	return TS_OK;
}

/* The tank as it is now; one that was never read is taken as the water of the call. */
static void take_tank(struct session *s, struct remake_call *c)
{
	const struct ts_water *own = &c->answer.water;

	ts_waters_now(&c->plan, s->today, s->practice, &c->waters);
	ts_plan_state_make(&c->plan, &c->waters, s->today, &c->state);
	if (!c->waters.never_read) {
		const struct ts_now_from *tan = &c->waters.log.from[TS_NOW_TAN];

		c->wish.tank = &c->waters.now;
		c->wish.reading_age_days = tan->reading && !tan->dated ? 0 : tan->age_days;
		return;
	}
	c->wish.tank = &c->answer.profile;
	c->wish.reading_age_days =
		own->reading_count ? care_age_days(s, own->readings[own->reading_count - 1].date)
				   : (double)NAN;
}

static void take_amounts(struct session *s, struct remake_call *c)
{
	const struct options *o = s->options;
	double from_plan = c->plan.tank.water_change.amount;

	c->volume_l = o->volume.kind != TS_MEASURE_NONE ? o->volume.value
							: ts_tank_net_l(&c->plan.tank, s->practice);
	c->volume_known = !isnan(c->volume_l);
	if (!c->volume_known)
		c->volume_l = 100;
	c->change_percent = o->change_percent.kind != TS_MEASURE_NONE ? o->change_percent.value
			    : from_plan > 0                           ? from_plan
								      : CHANGE_PERCENT;
}

/* Chlorine read in a supply that may hold chloramine leaves ammonium once it is treated. */
static void take_chloramine(struct remake_call *c)
{
	int d = c->answer.water.disinfectant;

	if (d != TS_DISINFECTANT_NONE && d != TS_DISINFECTANT_CHLORINE)
		c->wish.chloramine_mg_l = c->answer.profile.poisons.chlorine_mg_l;
}

static enum ts_status put_question(struct session *s, struct remake_call *c)
{
	const struct ts_species **wanted;
	struct ts_keeping keeping = s->options->keeping;
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
	if (keeping.temperature.kind == TS_MEASURE_NONE)
		keeping.temperature = c->plan.tank.temp_c;
	ts_profile_make(&c->answer.water, &keeping, s->practice, s->today, &c->answer.profile);
	c->wish.keeping = keeping;
	c->wish.water = &c->answer.profile;
	c->wish.temp_c = (double)NAN;
	if (c->answer.profile.at[TS_TEMPERATURE].given)
		c->wish.temp_c = c->answer.profile.at[TS_TEMPERATURE].value;
	c->wish.wanted = wanted;
	c->wish.wanted_count = s->options->wished.count;
	take_tank(s, c);
	take_amounts(s, c);
	take_chloramine(c);
	return TS_OK;
}

/* A sign of distress or a danger in the plan goes before any re-making. */
static bool danger_first(struct session *s, struct remake_call *c)
{
	struct ts_advice all[TS_ADVICE_MOST];

	if (!c->has_plan || !c->wish.resident_count)
		return false;
	ts_advise(&c->state.state, s->practice, all);
	if (all[0].row->group != 2 && all[0].row->group != 3)
		return false;
	c->danger = all[0];
	return true;
}

enum ts_status remake_ask(struct session *s, struct remake_call *c)
{
	enum ts_status status;

	if (!read_to(s, c) || !read_have(s, c))
		return TS_BAD_INPUT;
	status = put_question(s, c);
	if (status)
		return status;
	status = ts_remake_plan(&c->wish, s->practice, &c->remake);
	if (status == TS_BAD_INPUT) {
		ts_text_put(s->error, "these figures are outside what the equations hold for; "
				      "check units and decimal points");
		return status;
	}
	c->verdict = ts_remake_verdict_of(&c->remake, status);
	if (danger_first(s, c)) {
		c->verdict = TS_VERDICT_SAFE_FIRST;
		status = TS_NO;
	}
	return status;
}

enum ts_status command_remake(struct session *s)
{
	struct remake_call *c = ts_arena_take(s->arena, sizeof *c);
	enum ts_status status;

	if (!c)
		return TS_NO_MEMORY;
	if (!s->options->to && !s->options->wished.count) {
		ts_text_put(s->error, "remake needs a wish: --for SPECIES or --to GH=11,KH=10");
		return TS_BAD_INPUT;
	}
	status = remake_ask(s, c);
	if (status <= TS_NO)
		remake_say(s, c);
	return status;
}
