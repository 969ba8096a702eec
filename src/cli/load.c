/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The loaders as commands call them: where a file of ours of another kind was given, which no
 * single unknown key says, that is said as well.
 */
#include <string.h>

#include "base/date.h"
#include "base/findings.h"
#include "base/number.h"
#include "care/happened.h"
#include "cli/commands.h"
#include "model/codes.h"
#include "records/kind.h"
#include "records/load.h"

static bool ends(const char *text, const char *end)
{
	size_t a = strlen(text), b = strlen(end);

	return a > b && strcmp(text + a - b, end) == 0;
}

/* "nitrite 1 mg/l" is no path: what is before the slash is no folder. */
static bool has_folder(const struct session *s, const char *argument)
{
	const char *slash = strrchr(argument, '/');
	struct ts_seen seen;
	char *folder;

	if (!slash || !strchr(argument, ' '))
		return slash;
	folder =
		ts_arena_text(s->arena, argument, (size_t)(slash - argument) + (slash == argument));
	return folder && s->system->look(s->system->state, folder, &seen) == 0;
}

bool file_is(const struct session *s, const char *argument)
{
	struct ts_seen seen;

	return has_folder(s, argument) || ends(argument, ".yaml") || ends(argument, ".yml") ||
	       (s->system->look(s->system->state, argument, &seen) == 0 &&
		       seen.entry == TS_ENTRY_FILE);
}

static const struct {
	const struct ts_shape *shape;
	const char *is, *wanted;
} kinds[] = {
	{&ts_shape_water, "a water", "a water, like examples/waters/kitchen-tap.yaml"},
	{&ts_shape_tank, "a tank", "a tank, like examples/tanks/living-room.yaml"},
	{&ts_shape_plan, "a plan",
		"a plan, which holds tank, water and animals, like "
		"examples/plans/livebearers.yaml"},
};

/* What was found of a file, since it is of another kind, says nothing. */
static void forget(struct ts_findings *f, const char *file)
{
	size_t kept = 0;

	for (size_t i = 0; i < f->count; i++) {
		const char *of = f->items[i].place.file;

		if (of && strcmp(of, file) == 0)
			f->errors -= f->items[i].code->severity == TS_ERROR;
		else
			f->items[kept++] = f->items[i];
	}
	f->count = kept;
	f->more = 0;
}

/* "living-room.yaml is a tank; here belongs a plan, ..." */
static enum ts_status explained(
	struct session *s, enum ts_status status, const char *file, const struct ts_shape *wanted)
{
	const struct ts_shape *kind;
	const char *is = NULL, *belongs = NULL;

	if (status != TS_BAD_INPUT)
		return status;
	if (ts_records_kind(s->system, file, &s->arena->allocator, &kind) != TS_OK)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
		is = kinds[i].shape == kind ? kinds[i].is : is;
		belongs = kinds[i].shape == wanted ? kinds[i].wanted : belongs;
	}
	if (is && kind != wanted) {
		forget(s->findings, file);
		ts_text_puts(s->error, file, " is ", is, "; here belongs ", belongs, NULL);
	}
	return status;
}

/* A day that has not come yet is a slip, or a clock that is wrong; what it dates is no news of now.
 */
static void ahead(struct session *s, const char *file, const char *path, const char *date)
{
	struct ts_place place = {file, 0, 0, path};
	long day;

	if (date && ts_date_read(date, &day) && day > s->today)
		ts_finding_addf(s->findings, &ts_codes[TS_C_RECORDS_DATE_AHEAD], &place, NULL, "'",
			date, "' is ahead of today", NULL);
}

static void readings_ahead(struct session *s, const char *file, const char *of,
	const struct ts_reading *readings, size_t count)
{
	char path[64], number[TS_NUMBER_ROOM];

	for (size_t i = 0; i < count; i++) {
		ts_number_write(number, (double)(i + 1), 0);
		ts_text_fit(path, sizeof path, of, "readings[", number, "].date", NULL);
		ahead(s, file, path, readings[i].date);
	}
}

static void tank_ahead(
	struct session *s, const char *file, const char *of, const struct ts_tank *tank)
{
	char path[64];

	ts_text_fit(path, sizeof path, of, "running_since", NULL);
	ahead(s, file, path, tank->running_since);
	readings_ahead(s, file, of, tank->readings, tank->reading_count);
}

static void plan_ahead(struct session *s, const char *file, const struct ts_plan *plan)
{
	char path[64], number[TS_NUMBER_ROOM];

	readings_ahead(s, plan->water_file ? plan->water_file : file,
		plan->water_file ? "" : "water.", plan->water.readings, plan->water.reading_count);
	tank_ahead(s, plan->tank_file ? plan->tank_file : file, plan->tank_file ? "" : "tank.",
		&plan->tank);
	for (size_t i = 0; i < plan->stock_count; i++) {
		ts_number_write(number, (double)(i + 1), 0);
		ts_text_fit(path, sizeof path, "stock[", number, "].since", NULL);
		ahead(s, file, path, plan->stock[i].since);
	}
}

enum ts_status file_water(struct session *s, const char *file, struct ts_water *ret)
{
	enum ts_status status = ts_water_load_from(s->system, file, s->arena, ret, s->findings);

	if (!status)
		readings_ahead(s, file, "", ret->readings, ret->reading_count);
	return explained(s, status, file, &ts_shape_water);
}

enum ts_status file_tank(struct session *s, const char *file, struct ts_tank *ret)
{
	enum ts_status status = ts_tank_load_from(s->system, file, s->arena, ret, s->findings);

	if (!status)
		tank_ahead(s, file, "", ret);
	if (!status)
		ts_happened_routine(ret, s->today, s->practice);
	return explained(s, status, file, &ts_shape_tank);
}

enum ts_status file_plan(struct session *s, const char *file, struct ts_plan *ret)
{
	enum ts_status status = ts_plan_load_from(s->system, file, s->arena, ret, s->findings);

	if (!status)
		plan_ahead(s, file, ret);
	if (!status)
		ts_happened_take(ret, s->today, s->practice);
	return explained(s, status, file, &ts_shape_plan);
}
