/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Tank and plan files, and the rules that the rows of their shapes cannot say: a tank has a size,
 * a count is whole, a date is a day. The walker that reads them is records/load.c.
 */
#include <tapshoal/plan.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/findings.h"
#include "base/text.h"
#include "model/codes.h"
#include "records/load.h"
#include "records/rules.h"
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

static void check_date(struct check *c, const char *path, const char *text)
{
	long day;

	if (text && !ts_date_read(text, &day))
		say(c, TS_C_RECORDS_DATE, path,
			ts_arena_join(c->arena, "'", text, "' is not a day", NULL));
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

static void check_tank(struct check *c, const struct ts_tank *t)
{
	double box = box_l(t), water = t->volume_l > 0 ? t->volume_l : box;

	if (!(water > 0))
		say(c, TS_C_TANK_SIZE, "", "neither length, width and height nor volume is given");
	else if (water < 1)
		say(c, TS_C_TANK_SIZE, "", litres(c, "", water, " L is no tank"));
	else if (box > 0 && t->volume_l > box)
		say(c, TS_C_TANK_BOX, "volume", litres(c, "the box holds ", box, " L"));
	check_date(c, "running_since", t->running_since);
	for (size_t i = 0; i < t->reading_count; i++)
		check_date(c, "readings.date", t->readings[i].date);
}

static void check_line(struct check *c, const struct ts_stock_line *line, size_t index)
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
	check_date(c, ts_text_get(&path), line->since);
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

	check_tank(&c, tank);
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
	check_tank(&c, &tank);
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

/*
 * Where something else is poured in and the tank has no readings of its own, the water that was
 * read is the one that its animals live in.
 */
static void take_tank_water(struct ts_plan *plan)
{
	bool living = false;

	for (size_t i = 0; i < plan->stock_count; i++)
		living |= plan->stock[i].since != NULL;
	if (!living || plan->tank.reading_count || !plan->change_water.reading_count)
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
	c.prefix = plan.tank_file ? "" : "tank";
	c.file = plan.tank_file ? plan.tank_file : file;
	check_tank(&c, &plan.tank);
	ts_readings_by_date(&plan.tank.readings, plan.tank.reading_count, arena);
	ts_readings_by_date(&plan.water.readings, plan.water.reading_count, arena);
	ts_readings_by_date(&plan.change_water.readings, plan.change_water.reading_count, arena);
	take_tank_water(&plan);
	status = ended(&c);
	if (status == TS_OK)
		*ret = plan;
	return status;
}
