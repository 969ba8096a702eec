/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The loaders as commands call them: where a file of ours of another kind was given, which no
 * single unknown key says, that is said as well.
 */
#include <string.h>

#include "cli/commands.h"
#include "records/kind.h"
#include "records/load.h"

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
	if (is && kind != wanted)
		ts_text_puts(s->error, file, " is ", is, "; here belongs ", belongs, NULL);
	return status;
}

enum ts_status file_water(struct session *s, const char *file, struct ts_water *ret)
{
	enum ts_status status = ts_water_load_from(s->system, file, s->arena, ret, s->findings);

	return explained(s, status, file, &ts_shape_water);
}

enum ts_status file_tank(struct session *s, const char *file, struct ts_tank *ret)
{
	enum ts_status status = ts_tank_load_from(s->system, file, s->arena, ret, s->findings);

	return explained(s, status, file, &ts_shape_tank);
}

enum ts_status file_plan(struct session *s, const char *file, struct ts_plan *ret)
{
	enum ts_status status = ts_plan_load_from(s->system, file, s->arena, ret, s->findings);

	return explained(s, status, file, &ts_shape_plan);
}
