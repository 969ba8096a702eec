/* SPDX-License-Identifier: Apache-2.0 */
/*
 * arrive: from the shop's bag to the tank, what to do in order. The tank is the water of the call
 * (-w, reading flags) or a tank file as it is now (water/now.h).
 */
#include <string.h>

#include <tapshoal/plan.h>

#include "base/arena.h"
#include "cli/care_answer.h"
#include "records/value.h"
#include "water/analysis.h"
#include "water/now.h"

struct work {
	struct session *s;
	struct ts_text text;
	struct answer answer; /* the tank */
	struct ts_water shop_water;
	struct ts_profile shop;
	struct ts_solution shop_solution, tank_solution;
	struct ts_arrive_wish wish;
	struct ts_arrival a;
	struct ts_arrive_result r;
};

static double last_ec(const struct ts_water *water)
{
	for (size_t i = water->reading_count; i > 0; i--) {
		if (water->readings[i - 1].conductivity_us_cm.kind != TS_MEASURE_NONE)
			return water->readings[i - 1].conductivity_us_cm.value;
	}
	return (double)NAN;
}

static double value_of(const struct ts_profile *p, enum ts_parameter parameter)
{
	return p->at[parameter].given ? p->at[parameter].value : (double)NAN;
}

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

/* One "GH 3" of the call. */
static bool read_shop_value(
	struct work *w, char *part, struct ts_scan_pair *pair, struct ts_reading *ret)
{
	char *key = part + strspn(part, " "), *value = key + strcspn(key, " :=");
	struct ts_value_says says = {
		.what = "is no reading", .remedy = "write it like \"GH 3, KH 2\""};
	const struct ts_field *field;

	if (*value)
		*value++ = '\0';
	value += strspn(value, " :=");
	field = ts_shape_field_caseless(&ts_shape_reading, key);
	if (field && field->kind == TS_MEASURE &&
		ts_value_read(field, value, strlen(value), w->s->arena, ret, &says)) {
		ts_value_pair_look(pair, field, value, &says, w->s->arena);
		return true;
	}
	ts_text_puts(w->s->error, "--shop: '", key, *value ? " " : "", value, "' ", NULL);
	ts_text_puts(w->s->error, says.what, "; ", says.remedy, NULL);
	return false;
}

/* "GH 3, KH 2, pH 6.8": the shop's water where there is no file of it. */
static enum ts_status read_shop_values(struct work *w, const char *text)
{
	struct ts_reading *reading = ts_arena_take(w->s->arena, sizeof *reading);
	char *at = ts_arena_take(w->s->arena, strlen(text) + 1);
	struct ts_scan_pair pair = {0};
	struct ts_value_says asks;

	if (!reading || !at)
		return TS_NO_MEMORY;
	memcpy(at, text, strlen(text) + 1);
	while (*at) {
		size_t len = strcspn(at, ",;");

		while (at[len] == ',' && at[len + 1] >= '0' && at[len + 1] <= '9')
			len += 1 + strcspn(at + len + 1, ",;"); /* a decimal comma */
		char *next = at + len + (at[len] != '\0');

		at[len] = '\0';
		if (!read_shop_value(w, at, &pair, reading))
			return w->s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
		at = next;
	}
	if (ts_value_pair_asks(&pair, w->s->arena, &asks)) {
		ts_text_puts(w->s->error, "--shop: ", asks.what, "; ", asks.remedy, NULL);
		return TS_BAD_INPUT;
	}
	w->shop_water.readings = reading;
	w->shop_water.reading_count = 1;
	return TS_OK;
}

static enum ts_status read_shop(struct work *w)
{
	const char *file = w->s->options->shop_file;
	struct ts_seen seen;

	if (!file)
		return TS_OK; /* nothing is known of it: taken as far apart */
	if (strpbrk(file, " :=") && w->s->system->look(w->s->system->state, file, &seen) != 0)
		return read_shop_values(w, file);
	return file_water(w->s, file, &w->shop_water);
}

static enum ts_status read_animals(struct work *w)
{
	const struct values *names = &w->s->options->with;
	const struct ts_species **species;
	struct ts_resident *animals;
	enum ts_status status = care_species(w->s, names, &species);

	animals = ts_arena_array(w->s->arena, names->count + 1, sizeof *animals);
	if (status || !animals)
		return status ? status : TS_NO_MEMORY;
	for (size_t i = 0; i < names->count; i++)
		animals[i] = (struct ts_resident){species[i], w->s->options->keeping.wild, false};
	w->wish.animals = animals;
	w->wish.animal_count = names->count;
	return TS_OK;
}

static void put_question(struct work *w)
{
	const struct options *o = w->s->options;
	struct ts_keeping none = {0};
	unsigned assumed;

	ts_profile_make(
		&w->answer.water, &o->keeping, w->s->practice, w->s->today, &w->answer.profile);
	ts_profile_make(&w->shop_water, &none, w->s->practice, w->s->today, &w->shop);
	w->wish.temp_c = value_of(&w->answer.profile, TS_TEMPERATURE);
	if (isnan(w->wish.temp_c))
		w->wish.temp_c = TS_TANK_TEMPERATURE_C;
	if (w->shop.at[TS_GH].given && ts_solution_from_profile(&w->shop, w->wish.temp_c,
					       &w->shop_solution, &assumed) == TS_OK)
		w->wish.shop = &w->shop_solution;
	if (w->answer.profile.at[TS_GH].given &&
		ts_solution_from_profile(
			&w->answer.profile, w->wish.temp_c, &w->tank_solution, &assumed) == TS_OK)
		w->wish.tank = &w->tank_solution;
	w->wish.shop_gh_dh = value_of(&w->shop, TS_GH);
	w->wish.tank_gh_dh = value_of(&w->answer.profile, TS_GH);
	w->wish.shop_ec_us_cm = last_ec(&w->shop_water);
	w->wish.tank_ec_us_cm = last_ec(&w->answer.water);
	w->wish.hours = o->hours.kind == TS_MEASURE_NONE ? (double)NAN
			: isfinite(o->hours.high)        ? o->hours.high
							 : (double)NAN;
	w->wish.bag_tan_mg_l = w->shop.poisons.tan_mg_l;
	w->wish.bag_ph = w->shop.poisons.tan_mg_l > 0 ? w->shop.ph_read : (double)NAN;
}

static void fill_stages(struct work *w)
{
	w->r.stages = ts_arena_array(w->s->arena, w->a.count + 1, sizeof *w->r.stages);
	for (size_t i = 0; w->r.stages && i < w->a.count; i++) {
		const struct ts_arrive_stage *g = &w->a.stages[i];
		const char *then = "watch them";

		if (g->change >= 1) {
			then = "match the temperature";
		} else if (g->portions > 1) {
			ts_text_put(&w->text, "in ");
			ts_text_number_short(&w->text, g->portions, 0);
			ts_text_put(&w->text, " portions over 2 days");
			then = care_take(w->s, &w->text);
		}
		w->r.stages[i] = (struct ts_stage_line){g->day, (double)NAN, 100 * g->change,
			g->gh_dh, g->kh_dh, (double)NAN, g->ec_us_cm, (double)NAN, false, then};
		w->r.stage_count++;
	}
}

static void fill_steps(struct work *w)
{
	w->r.steps = ts_arena_array(w->s->arena, ts_arrive_step_count + 1, sizeof *w->r.steps);
	if (!w->r.steps)
		return;
	w->r.steps[w->r.step_count++] =
		(struct ts_arrive_line){"first", ts_treatment(w->answer.water.disinfectant)};
	for (size_t i = 0; i < ts_arrive_step_count; i++) {
		if (ts_arrive_steps[i].ways >> w->a.way & 1)
			w->r.steps[w->r.step_count++] = (struct ts_arrive_line){
				ts_arrive_steps[i].when, ts_arrive_steps[i].says};
	}
}

static void fill_result(struct work *w)
{
	w->r.way = ts_arrive_way_words[w->a.way];
	ts_say_arrival(&w->text, &w->a);
	w->r.says = care_take(w->s, &w->text);
	ts_say_arrival_because(&w->text, &w->wish, &w->a);
	w->r.because = care_take(w->s, &w->text);
	w->r.gh_apart_percent = w->a.gh_apart_percent;
	w->r.ec_apart_percent = w->a.ec_apart_percent;
	w->r.bag_ammonia_mg_l = w->a.bag_tan_mg_l;
	w->r.bag_ammonia_assumed = w->a.tan_assumed;
	w->r.nh3_bag_mg_l = w->a.nh3_bag_mg_l;
	w->r.nh3_aired_mg_l = w->a.nh3_aired_mg_l;
	fill_steps(w);
	fill_stages(w);
	if (w->a.unknown_hours)
		care_note(w->s, &w->r.notes,
			"How long they are under way was not said (--hours): taken as long.");
	if (w->a.way == TS_ARRIVE_QUARANTINE && !w->a.count)
		care_note(w->s, &w->r.notes,
			"Measure GH, KH and conductivity of the bag and of the tank: then the "
			"stages can be reckoned. Until then lower or raise conductivity by 15 % "
			"every 2 days.");
	if (w->a.too_far)
		care_note(w->s, &w->r.notes,
			"It is too far for stages: ask for animals kept in water like yours.");
	care_cautions(w->s, TS_CAUTION_NEWCOMERS | TS_CAUTION_CHANGES, &w->r.cautions);
}

static void put_document(struct work *w)
{
	struct ts_document doc;
	struct ts_node *steps;

	ts_doc_open(&doc, w->s->arena, "Carrying home");
	doc.drawn = w->s->options->format == FORMAT_HTML;
	ts_doc_verdict(&doc, w->r.says, w->r.because);
	ts_doc_heading(&doc, 0, "IN THIS ORDER");
	steps = ts_doc_steps(&doc);
	for (size_t i = 0; i < w->r.step_count; i++)
		ts_doc_line(&doc, steps, w->r.steps[i].when, w->r.steps[i].says, NULL);
	if (w->r.stage_count) {
		ts_doc_heading(&doc, 0, "FROM THE SHOP'S WATER TO YOURS");
		ts_doc_paragraph(&doc, "Each change replaces quarantine water by your tank's own "
				       "water; the figures are those after it.");
		care_stages(&doc, w->s, w->r.stages, w->r.stage_count, false);
	}
	for (size_t i = 0; i < w->r.notes.count; i++)
		ts_doc_paragraph(&doc, w->r.notes.items[i]);
	for (size_t i = 0; i < w->r.cautions.count; i++)
		ts_doc_caution(&doc, w->r.cautions.items[i]);
	session_write(w->s, &doc);
}

enum ts_status command_arrive(struct session *s)
{
	struct work *w = ts_arena_take(s->arena, sizeof *w);
	enum ts_status status = TS_BAD_INPUT;

	if (!w)
		return TS_NO_MEMORY;
	if (s->options->argument_count) {
		ts_text_puts(s->error, "arrive takes no '", s->options->arguments[0],
			"'; the shop's water goes behind --shop, animals behind --with", NULL);
		return status;
	}
	w->s = s;
	status = read_tank(w);
	if (!status)
		status = read_shop(w);
	if (!status && s->options->with.count)
		status = answer_catalogue(s);
	if (!status)
		status = read_animals(w);
	if (status)
		return status;
	ts_text_open(&w->text, &s->arena->allocator);
	put_question(w);
	ts_arrive_plan(&w->wish, s->practice, &w->a);
	fill_result(w);
	if (s->options->format == FORMAT_JSON)
		session_json(s, "arrive", &ts_result_arrive, &w->r);
	else
		put_document(w);
	ts_text_drop(&w->text);
	return w->a.way == TS_ARRIVE_QUARANTINE ? TS_NO : TS_OK;
}
