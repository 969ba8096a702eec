/* SPDX-License-Identifier: Apache-2.0 */
/*
 * check: the words of the call, or a plan file, become the question of answers/check.h. Nothing is
 * decided here.
 */
#include <string.h>

#include "answers/check.h"
#include "base/arena.h"
#include "base/date.h"
#include "base/number.h"
#include "care/happened.h"
#include "cli/care_answer.h"
#include "cli/check_call.h"
#include "cli/reading_words.h"
#include "cli/standing.h"
#include "cli/understand.h"
#include "records/animals.h"
#include "records/happened.h"
#include "records/value.h"
#include "records/write.h"
#include "report/check_result.h"
#include "show/check.h"
#include "show/sheet.h"
#include "words/names.h"

struct call {
	struct ts_plan plan;
	const char *name;
	const struct ts_species **species;
	struct ts_candidates *candidates;
	struct ts_reading reading;
	struct understood said;
	unsigned asked; /* bits of enum ts_check_asked */
	double aim;     /* behind one of its words; NAN: none */
	const struct ts_care_row *care[TS_CARE_MOST];
	size_t care_count;
	bool file; /* the first argument is a plan file */
};

static enum ts_status read_file(struct session *s, struct call *c)
{
	const struct options *o = s->options;
	enum ts_status status;

	for (size_t i = 1; i < o->argument_count; i++) {
		if (file_is(s, o->arguments[i])) {
			ts_text_puts(s->error, "one plan file at a time, and it stands first; ",
				o->arguments[i], " is another one", NULL);
			return TS_BAD_INPUT;
		}
	}
	status = file_plan(s, o->arguments[0], &c->plan);
	c->name = c->plan.name ? c->plan.name : o->arguments[0];
	return status;
}

/* Adds the animals of the call behind those of the file. */
static enum ts_status read_words(struct session *s, struct call *c, size_t from)
{
	const struct options *o = s->options;
	size_t most = c->plan.stock_count + o->argument_count + o->there.count;
	struct ts_stock_line *stock = ts_arena_array(s->arena, most + 1, sizeof *stock);

	if (!stock)
		return TS_NO_MEMORY;
	if (c->plan.stock_count)
		memcpy(stock, c->plan.stock, c->plan.stock_count * sizeof *stock);
	c->plan.stock = stock;
	for (size_t i = 0; i < o->there.count; i++) {
		struct ts_stock_line *line = &stock[c->plan.stock_count];

		if (!ts_animal_words(s->arena, o->there.items[i], s->today, line, s->error))
			return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
		line->since = line->since ? line->since : "";
		c->plan.stock_count++;
	}
	for (size_t i = from; i < o->argument_count; i++) {
		if (!ts_animal_words(s->arena, o->arguments[i], s->today,
			    &stock[c->plan.stock_count], s->error))
			return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
		c->plan.stock_count++;
	}
	return TS_OK;
}

/* The water of the call, else the plan's, else the kept tap; none is no error. */
static enum ts_status read_water(struct session *s, struct call *c)
{
	const struct options *o = s->options;
	struct answer a;
	struct ts_water *waters[] = {&c->plan.water, &c->plan.change_water};
	enum ts_status status;

	if (o->acids && !c->plan.tank.substrate)
		c->plan.tank.substrate = TS_SUBSTRATE_PEAT;
	if (o->water_file || o->has_reading) {
		status = answer_water(s, &a);
		if (status)
			return status;
		c->plan.water = a.water;
		if (o->has_reading) {
			c->reading = o->reading;
			if (o->fresh && c->reading.stood_h.kind == TS_MEASURE_NONE)
				c->reading.stood_h = (struct ts_measure){.kind = TS_MEASURE_VALUE};
			c->plan.water.readings = &c->reading;
		}
		/* Animals live there, and nothing else was read: it is the water they live in. */
		if (o->has_reading && (o->there.count || o->poured || o->signs.count) &&
			!c->plan.tank.reading_count) {
			c->plan.tank.readings = &c->reading;
			c->plan.tank.reading_count = 1;
		}
		return o->poured ? reading_words(s, "--poured", o->poured, &c->plan.water) : TS_OK;
	}
	if (!c->plan.water.reading_count) {
		status = answer_kept(s, &a);
		if (status == TS_OK)
			c->plan.water = a.water;
		else if (status != TS_NO)
			return status;
	}
	c->plan.water.softened |= o->softened;
	if (o->poured)
		return reading_words(s, "--poured", o->poured, &c->plan.water);
	return o->season ? answer_season(s, waters, c->plan.change_water.reading_count ? 2 : 1)
			 : TS_OK;
}

/* A flag whose value is written as in a file. */
static enum ts_status refuse_value(
	struct session *s, const char *flag, const struct ts_value_says *says)
{
	ts_text_puts(s->error, flag, ": ", says->what, says->remedy ? "; " : "",
		says->remedy ? says->remedy : "", NULL);
	return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
}

/* "'gone quiet' is no sign that is known: taken as unwell." */
static void say_taken(struct session *s, struct call *c, const char *taken)
{
	const char *says = ts_arena_join(s->arena, "'", taken,
		"' is no sign that has a row, and is taken as: unwell. Words that say more: "
		"gasping, listless, spots, wounds, bloated, not eating, cloudy water.",
		NULL);

	c->said.read_as =
		c->said.read_as ? ts_arena_join(s->arena, c->said.read_as, " ", says, NULL) : says;
}

/* What is wrong, as it was typed: signs and deaths of the call stand behind those of the file. */
static enum ts_status read_signs(struct session *s, struct call *c)
{
	const struct options *o = s->options;
	struct ts_value_says says;
	struct ts_sign *signs;
	size_t count = c->plan.sign_count;

	if (o->deaths.kind != TS_MEASURE_NONE)
		c->plan.deaths = o->deaths;
	if (!o->signs.count)
		return TS_OK;
	signs = ts_arena_array(s->arena, count + TS_VALUES_MOST * TS_SIGNS_MOST, sizeof *signs);
	if (!signs)
		return TS_NO_MEMORY;
	if (count)
		memcpy(signs, c->plan.signs, count * sizeof *signs);
	for (size_t i = 0; i < o->signs.count; i++) {
		const char *taken = NULL;
		size_t more = 0;

		if (!ts_value_signs(
			    o->signs.items[i], s->arena, signs + count, &more, &taken, &says))
			return refuse_value(s, "--signs", &says);
		if (taken)
			say_taken(s, c, taken);
		count += more;
	}
	c->plan.signs = signs;
	c->plan.sign_count = count;
	return TS_OK;
}

/* "change", "kh-up 4": what is asked beside the list. */
static enum ts_status read_asks(struct session *s, struct call *c)
{
	const struct options *o = s->options;

	c->aim = (double)NAN;
	for (size_t i = 0; i < o->asks.count; i++) {
		const char *said = o->asks.items[i];
		size_t len = strcspn(said, " "), row = 0;
		const struct ts_care_row *care = ts_care_row(said);

		if (care) {
			if (c->care_count < TS_CARE_MOST)
				c->care[c->care_count++] = care;
			continue;
		}

		while (ts_check_asked_words[row] &&
			(strlen(ts_check_asked_words[row]) != len ||
				memcmp(ts_check_asked_words[row], said, len) != 0))
			row++;
		if (!ts_check_asked_words[row] ||
			(said[len] && !ts_number_read(said + len + 1, strlen(said + len + 1),
					      &c->aim, NULL))) {
			ts_text_puts(
				s->error, "--asks does not take '", said, "'; it takes ", NULL);
			for (size_t k = 0; ts_check_asked_words[k]; k++)
				ts_text_puts(
					s->error, k ? ", " : "", ts_check_asked_words[k], NULL);
			for (size_t k = 0; k < ts_care_row_count; k++)
				ts_text_puts(s->error, ", ", ts_care_rows[k].id, NULL);
			return TS_BAD_INPUT;
		}
		c->asked |= 1u << row;
		if (1u << row == TS_ASKED_AWAY && c->aim > 0)
			c->plan.away_h = 24 * c->aim;
	}
	return TS_OK;
}

/* What happened these days stands behind what the tank's file has. */
static enum ts_status read_happened(struct session *s, struct call *c)
{
	const struct options *o = s->options;
	struct ts_tank *tank = &c->plan.tank;
	size_t count = tank->event_count;
	struct ts_tank_event *events;
	char *today = ts_arena_take(s->arena, TS_DATE_ROOM);

	if (!o->happened.count)
		return TS_OK;
	events = ts_arena_array(s->arena, count + o->happened.count, sizeof *events);
	if (!events || !today)
		return TS_NO_MEMORY;
	ts_date_write(today, s->today);
	if (count)
		memcpy(events, tank->events, count * sizeof *events);
	for (size_t i = 0; i < o->happened.count; i++) {
		if (!ts_happened_words(s->arena, o->happened.items[i], &events[count], s->error)) {
			if (s->arena->failed || c->said.unread_count == TS_SENTENCE_MOST)
				return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
			/* Asked about, and no reason to answer nothing. */
			c->said.unread[c->said.unread_count++] =
				(struct ts_check_unread){o->happened.items[i],
					"--happened \"untreated water\", \"medicine\", \"filter "
					"washed\" or the like"};
			ts_text_clear(s->error);
			continue;
		}
		events[count++].date = today;
	}
	tank->events = events;
	tank->event_count = count;
	ts_happened_take(&c->plan, s->today, s->practice);
	return TS_OK;
}

/* Since when all live there of whom the call does not say it. */
static enum ts_status read_since(struct session *s, struct call *c)
{
	const char *since = s->options->since;
	double days = since ? ts_days_of(since) : -1;
	char date[TS_DATE_ROOM];

	if (!since)
		return TS_OK;
	if (!ts_date_meant(since, date) &&
		!(days >= 0 && ts_date_write(date, s->today - (long)days))) {
		ts_text_puts(s->error, "--since '", since,
			"' is neither a day nor a time; write it like 2024-05-01, 2024-05 or \"3 "
			"years\"",
			NULL);
		return TS_BAD_INPUT;
	}
	since = ts_arena_text(s->arena, date, TS_DATE_ROOM - 1);
	for (size_t i = 0; since && i < c->plan.stock_count; i++) {
		struct ts_stock_line *line = &c->plan.stock[i];

		if (line->since && !*line->since)
			line->since = since;
	}
	return since ? TS_OK : TS_NO_MEMORY;
}

static enum ts_status read_tank(struct session *s, struct call *c)
{
	const struct options *o = s->options;
	enum ts_status status = answer_tank(s, &c->plan.tank);

	if (status)
		return status;
	if (o->volume.kind != TS_MEASURE_NONE)
		c->plan.tank.volume_l = o->volume.value;
	if (o->temperature.kind != TS_MEASURE_NONE)
		c->plan.tank.temp_c = o->temperature;
	return TS_OK;
}

/* Signs are of animals that live there: where nobody is said to, those that are named do. */
static void place_ill(struct session *s, const struct call *c)
{
	struct options *o = ts_arena_take(s->arena, sizeof *o);
	const struct options *given = s->options;

	if (!o || c->file || given->there.count || given->argument_count > TS_VALUES_MOST ||
		!(given->signs.count || given->deaths.value > 0))
		return;
	*o = *given;
	memcpy(o->there.items, given->arguments, given->argument_count * sizeof *given->arguments);
	o->there.count = given->argument_count;
	o->argument_count = 0;
	s->options = o;
}

static enum ts_status look_up(struct session *s, struct call *c)
{
	size_t count = c->plan.stock_count;
	size_t called = count - s->options->argument_count - s->options->there.count + c->file;

	c->species = ts_arena_array(s->arena, count + 1, sizeof *c->species);
	c->candidates = ts_arena_array(s->arena, count + 1, sizeof *c->candidates);
	if (!c->species || !c->candidates)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < count; i++) {
		c->species[i] = session_species(s, c->plan.stock[i].species, &c->candidates[i]);
		if (i >= called && !c->species[i] && !c->candidates[i].row &&
			ts_animal_words_astray(
				c->plan.stock[i].species, c->candidates[i].count > 0, s->error))
			return TS_BAD_INPUT;
		if (c->species[i] && s->options->origin == 1)
			c->plan.stock[i].origin = TS_ORIGIN_WILD;
	}
	return TS_OK;
}

static enum ts_status read_call(struct session *s, struct call *c)
{
	enum ts_status status;

	c->file = s->options->argument_count && file_is(s, s->options->arguments[0]);
	status = c->file ? read_file(s, c) : TS_OK;
	if (!status)
		status = answer_catalogue(s);
	if (!status)
		status = understand(s, c->file, &c->said);
	if (!status)
		place_ill(s, c);
	if (!status)
		status = read_words(s, c, c->file);
	if (!status)
		status = read_since(s, c);
	if (!status)
		status = read_tank(s, c);
	if (!status)
		status = answer_value(s, "--filter", "filter", s->options->filter, &c->plan.tank);
	if (!status)
		status = read_signs(s, c);
	if (!status)
		status = read_happened(s, c);
	if (!status)
		status = read_asks(s, c);
	if (!status)
		status = read_water(s, c);
	if (!status)
		status = look_up(s, c);
	return status ? status : care_sizes(s, &c->plan, c->species);
}

/* The plan as it was judged, for those who want to keep it. */
static enum ts_status write_plan(struct session *s, const struct call *c)
{
	struct ts_plan plan = c->plan;
	char *today = ts_arena_take(s->arena, TS_DATE_ROOM);
	enum ts_status status = TS_NO_MEMORY;
	struct ts_text text;

	plan.stock = ts_arena_array(s->arena, plan.stock_count + 1, sizeof *plan.stock);
	if (!plan.stock || !today)
		return TS_NO_MEMORY;
	ts_date_write(today, s->today);
	for (size_t i = 0; i < plan.stock_count; i++) {
		plan.stock[i] = c->plan.stock[i];
		if (!(plan.stock[i].count > 0))
			plan.stock[i].count = c->species[i] ? ceil(c->species[i]->group.least) : 1;
		if (plan.stock[i].since && !*plan.stock[i].since)
			plan.stock[i].since = today;
	}
	plan.name = plan.name ? plan.name : "planned";
	plan.water_file = plan.tank_file = plan.change_water_file = NULL;
	ts_text_open(&text, &s->arena->allocator);
	ts_records_write(&text, &ts_shape_plan, &plan, false);
	if (!text.failed)
		status = answer_may_replace(s, s->options->plan_out);
	if (status == TS_OK)
		status = output_write(s->system, s->options->plan_out, &text, s->error);
	ts_text_drop(&text);
	return status;
}

static void show(struct session *s, const struct call *c, const struct ts_check_result *result)
{
	struct ts_document doc;

	ts_doc_open(&doc, s->arena, "A plan checked");
	doc.drawn = s->options->format == FORMAT_HTML;
	ts_show_sheet(&doc, c->plan.water.name, result->profile);
	ts_show_check(&doc, result, s->options->all || doc.drawn);
	session_write(s, &doc);
}

/* The call's question answered. */
static enum ts_status answer(struct session *s, struct call *c, struct ts_check_result *ret)
{
	struct ts_practice practice;

	ts_practice_defaults(&practice);
	return ts_answer_check(
		&(struct ts_check_question){c->name, &c->plan, c->species, c->candidates,
			c->said.read_as, c->said.unread, c->said.unread_count, c->asked, c->aim,
			c->care, c->care_count},
		&(struct ts_asking){.arena = s->arena,
			.practice = s->practice ? s->practice : &practice,
			.today = s->today,
			.species = s->catalogue->items,
			.species_count = s->catalogue->count},
		ret);
}

enum ts_status check_call_plan(struct session *s, struct ts_plan *ret_plan,
	const struct ts_species ***ret_species, const char **ret_unknown)
{
	struct call *c = ts_arena_take(s->arena, sizeof *c);
	enum ts_status status = c ? read_call(s, c) : TS_NO_MEMORY;
	struct ts_text says;
	size_t known = 0;

	*ret_unknown = NULL;
	if (status)
		return status;
	ts_text_open(&says, &s->arena->allocator);
	for (size_t i = 0; i < c->plan.stock_count; i++) {
		if (c->species[i]) {
			c->plan.stock[known] = c->plan.stock[i];
			c->species[known++] = c->species[i];
			continue;
		}
		ts_text_put(&says, says.len ? "; " : "");
		ts_say_candidates(&says, c->plan.stock[i].species, &c->candidates[i]);
	}
	c->plan.stock_count = known;
	if (says.len)
		*ret_unknown = ts_arena_text(s->arena, ts_text_get(&says), says.len);
	s->arena->failed |= says.failed;
	ts_text_drop(&says);
	*ret_plan = c->plan;
	*ret_species = c->species;
	return s->arena->failed ? TS_NO_MEMORY : TS_OK;
}

enum ts_status check_of(struct session *s, const char *file, struct ts_check_result *ret)
{
	struct call *c = ts_arena_take(s->arena, sizeof *c);
	enum ts_status status = c ? file_plan(s, file, &c->plan) : TS_NO_MEMORY;

	if (status)
		return status;
	c->file = true;
	c->name = c->plan.name ? c->plan.name : file;
	status = read_water(s, c);
	if (!status)
		status = answer_catalogue(s);
	if (!status)
		status = look_up(s, c);
	if (!status)
		status = care_sizes(s, &c->plan, c->species);
	return status ? status : answer(s, c, ret);
}

enum ts_status command_check(struct session *s)
{
	struct call *c = ts_arena_take(s->arena, sizeof *c);
	struct ts_check_result result;
	enum ts_status status = c ? read_call(s, c) : TS_NO_MEMORY;

	if (status)
		return status;
	status = answer(s, c, &result);
	if (!status && s->options->plan_out)
		status = write_plan(s, c);
	if (status)
		return status;
	if (s->options->format == FORMAT_JSON)
		session_json(s, "check", &ts_result_check, &result);
	else
		show(s, c, &result);
	return result.passes ? TS_OK : TS_NO;
}
