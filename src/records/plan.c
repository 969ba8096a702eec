/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Tank and plan files, and the rules that the rows of their shapes cannot say: a tank has a size,
 * a count is whole, a date is a day. The walker that reads them is records/load.c.
 */
#include <tapshoal/plan.h>

#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/findings.h"
#include "base/text.h"
#include "model/codes.h"
#include "model/shape.h"
#include "records/load.h"
#include "records/rules.h"
#include "units/units.h"
#include "water/series.h"

struct check {
	const char *file;   /* in which the value stands */
	const char *prefix; /* of its path: "" or "tank" */
	struct ts_arena *arena;
	struct ts_findings *findings;
	bool ok;
};

static void say(struct check *c, enum ts_code_id code, const char *path, const char *what)
{
	struct ts_place place = {.file = c->file};

	place.path = ts_arena_join(c->arena, c->prefix, *c->prefix && *path ? "." : "", path, NULL);
	if (place.path && !*place.path)
		place.path = NULL;
	c->ok &= ts_finding_add(c->findings, &ts_codes[code], &place, what, NULL);
}

/* A day as it was written becomes YYYY-MM-DD. */
static void take_date(struct check *c, const char *path, const char **text)
{
	char date[TS_DATE_ROOM];

	if (!*text)
		return;
	if (ts_date_meant(*text, date)) {
		*text = ts_arena_text(c->arena, date, TS_DATE_ROOM - 1);
		return;
	}
	say(c, TS_C_RECORDS_DATE, path,
		ts_arena_join(c->arena, "'", *text, "' is not a day", NULL));
}

/* The same of animals, of which it may not be known since when they are there. */
static void take_since(struct check *c, const char *path, const char **text)
{
	static const char *const unknown[] = {"unknown", "yes", "true", "long"};

	for (size_t i = 0; *text && i < sizeof unknown / sizeof *unknown; i++) {
		if (ts_same_word(unknown[i], *text))
			*text = "";
	}
	if (*text && **text)
		take_date(c, path, text);
}

/* Litres of the whole inside box; 0 when a measure is missing. */
static double box_l(const struct ts_tank *t)
{
	return t->length_cm * t->width_cm * t->height_cm / 1000;
}

static const char *litres(struct check *c, const char *before, double volume_l, const char *after)
{
	struct ts_text text;
	const char *joined;

	ts_text_open(&text, &c->arena->allocator);
	ts_text_put(&text, before);
	ts_text_number_short(&text, volume_l, 1);
	ts_text_put(&text, after);
	joined = ts_arena_text(c->arena, ts_text_get(&text), text.len);
	c->arena->failed |= text.failed;
	ts_text_drop(&text);
	return joined ? joined : after;
}

static void check_size(struct check *c, const struct ts_tank *t)
{
	double box = box_l(t), water = t->volume_l > 0 ? t->volume_l : box;

	if (!(water > 0))
		say(c, TS_C_TANK_SIZE, "", "neither length, width and height nor volume is given");
	else if (water < 1)
		say(c, TS_C_TANK_SIZE, "", litres(c, "", water, " L is no tank"));
	else if (box > 0 && t->volume_l > box)
		say(c, TS_C_TANK_BOX, "volume", litres(c, "the box holds ", box, " L"));
}

/* "100x40x40", "60 L" */
static void take_size(struct check *c, struct ts_tank *t)
{
	struct ts_scan scan;
	double sides[3];

	if (!t->size)
		return;
	if (ts_scan_box(t->size, sides)) {
		t->length_cm = sides[0];
		t->width_cm = sides[1];
		t->height_cm = sides[2];
	} else if (!ts_scan_value(TS_Q_VOLUME, t->size, strlen(t->size), &t->volume_l, &scan)) {
		say(c, TS_C_TANK_SIZE, "size",
			ts_arena_join(c->arena, "'", t->size,
				"' is no length x width x height, and no litres", NULL));
	}
	t->size = NULL;
}

static bool no_size(const struct ts_tank *t)
{
	return !(t->length_cm > 0) && !(t->width_cm > 0) && !(t->height_cm > 0) &&
	       !(t->volume_l > 0);
}

/* `sized`: it must say how large it is; a plan may leave that open. */
static void check_tank(struct check *c, struct ts_tank *t, bool sized)
{
	take_size(c, t);
	take_date(c, "running_since", &t->running_since);
	for (size_t i = 0; i < t->reading_count; i++)
		take_date(c, "readings.date", &t->readings[i].date);
	for (size_t i = 0; i < t->event_count; i++)
		take_date(c, "events.date", &t->events[i].date);
	if (sized || !no_size(t))
		check_size(c, t);
}

static void check_line(struct check *c, struct ts_stock_line *line, size_t index)
{
	struct ts_text path;
	size_t start;

	ts_text_open(&path, &c->arena->allocator);
	ts_text_put(&path, "stock[");
	ts_text_number(&path, (double)index + 1, 0);
	ts_text_put(&path, "].");
	start = path.len;
	ts_text_put(&path, "count");
	if (!(line->count >= 1 && line->count <= TS_COUNT_MOST) ||
		line->count != trunc(line->count))
		say(c, TS_C_PLAN_COUNT, ts_text_get(&path),
			"a number of animals is whole, from 1 to 100,000");
	else if (line->sex == TS_SEX_PAIRS && (long)line->count % 2)
		say(c, TS_C_PLAN_COUNT, ts_text_get(&path), "pairs are an even number");
	if (path.at)
		path.len = start;
	ts_text_put(&path, "since");
	take_since(c, ts_text_get(&path), &line->since);
	c->arena->failed |= path.failed;
	ts_text_drop(&path);
}

static enum ts_status ended(const struct check *c)
{
	if (c->arena->failed || (c->findings && c->findings->no_memory))
		return TS_NO_MEMORY;
	return c->ok ? TS_OK : TS_BAD_INPUT;
}

bool ts_tank_holds(const struct ts_tank *tank, const char *file, struct ts_arena *arena,
	struct ts_findings *findings)
{
	struct check c = {file, "", arena, findings, true};
	struct ts_tank copy = *tank;

	check_tank(&c, &copy, true);
	return c.ok;
}

enum ts_status ts_tank_load(
	const char *file, struct ts_arena *arena, struct ts_tank *ret, struct ts_findings *findings)
{
	return ts_tank_load_from(NULL, file, arena, ret, findings);
}

enum ts_status ts_tank_load_from(const struct ts_system *system, const char *file,
	struct ts_arena *arena, struct ts_tank *ret, struct ts_findings *findings)
{
	struct check c = {file, "", arena, findings, true};
	struct ts_tank tank;
	enum ts_status status =
		ts_records_load(&ts_shape_tank, system, file, TS_OPEN_ANY, arena, &tank, findings);

	if (status)
		return status;
	check_tank(&c, &tank, true);
	ts_readings_by_date(&tank.readings, tank.reading_count, arena);
	status = ended(&c);
	if (status == TS_OK)
		*ret = tank;
	return status;
}

enum ts_status ts_plan_load(
	const char *file, struct ts_arena *arena, struct ts_plan *ret, struct ts_findings *findings)
{
	return ts_plan_load_from(NULL, file, arena, ret, findings);
}

static bool living(const struct ts_plan *plan)
{
	for (size_t i = 0; i < plan->stock_count; i++) {
		if (plan->stock[i].since)
			return true;
	}
	return false;
}

/* Readings that nothing says the water of: what animals live in, and what it is filled from. */
static void take_readings(struct ts_plan *plan)
{
	if (plan->reading_count && !plan->tank.reading_count && living(plan)) {
		plan->tank.readings = plan->readings;
		plan->tank.reading_count = plan->reading_count;
	}
	if (plan->reading_count && !plan->water.reading_count) {
		plan->water.readings = plan->readings;
		plan->water.reading_count = plan->reading_count;
	}
	plan->readings = NULL;
	plan->reading_count = 0;
}

static void take_since_of_all(struct check *c, struct ts_plan *plan)
{
	take_since(c, "since", &plan->since);
	for (size_t i = 0; plan->since && i < plan->stock_count; i++) {
		if (!plan->stock[i].since)
			plan->stock[i].since = plan->since;
	}
	plan->since = NULL;
}

/*
 * Where something else is poured in and the tank has no readings of its own, the water that was
 * read is the one that its animals live in.
 */
static void take_tank_water(struct ts_plan *plan)
{
	if (!living(plan) || plan->tank.reading_count || !plan->change_water.reading_count)
		return;
	plan->tank.readings = plan->water.readings;
	plan->tank.reading_count = plan->water.reading_count;
}

enum ts_status ts_plan_load_from(const struct ts_system *system, const char *file,
	struct ts_arena *arena, struct ts_plan *ret, struct ts_findings *findings)
{
	struct check c = {file, "", arena, findings, true};
	struct ts_plan plan;
	enum ts_status status =
		ts_records_load(&ts_shape_plan, system, file, TS_OPEN_ANY, arena, &plan, findings);

	if (status)
		return status;
	for (size_t i = 0; i < plan.stock_count; i++)
		check_line(&c, &plan.stock[i], i);
	take_since_of_all(&c, &plan);
	for (size_t i = 0; i < plan.reading_count; i++)
		take_date(&c, "readings.date", &plan.readings[i].date);
	ts_readings_by_date(&plan.readings, plan.reading_count, arena);
	take_readings(&plan);
	c.prefix = plan.tank_file ? "" : "tank";
	c.file = plan.tank_file ? plan.tank_file : file;
	check_tank(&c, &plan.tank, plan.tank_file);
	ts_readings_by_date(&plan.tank.readings, plan.tank.reading_count, arena);
	ts_readings_by_date(&plan.water.readings, plan.water.reading_count, arena);
	ts_readings_by_date(&plan.change_water.readings, plan.change_water.reading_count, arena);
	take_tank_water(&plan);
	status = ended(&c);
	if (status == TS_OK)
		*ret = plan;
	return status;
}
