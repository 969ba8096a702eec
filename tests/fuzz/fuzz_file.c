/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Any bytes as a tank, species, water or plan file, by the first byte; what was read is written and
 * read again, and a water goes on through the profile. What is refused has an error that says why.
 */
#include <string.h>

#include <tapshoal/plan.h>

#include "holds.h"
#include "records/load.h"
#include "records/write.h"

static const struct ts_shape *const shapes[] = {
	&ts_shape_tank, &ts_shape_species, &ts_shape_water, &ts_shape_plan};

union any {
	struct ts_tank tank;
	struct ts_species species;
	struct ts_water water;
	struct ts_plan plan;
};

/* What was read can be written, read again, and is then written alike. */
static void hold_round(const struct ts_shape *shape, const union any *object)
{
	struct ts_text first, second;
	struct ts_arena arena;
	union any again;

	ts_text_open(&first, NULL);
	ts_text_open(&second, NULL);
	ts_arena_open(&arena, NULL);
	ts_records_write(&first, shape, object, false);
	hold(ts_records_parse(shape, ts_text_get(&first), first.len, "again", &arena, &again,
		     NULL) == TS_OK);
	ts_records_write(&second, shape, &again, false);
	hold(first.len == second.len && memcmp(first.at, second.at, first.len) == 0);
	ts_arena_drop(&arena);
	ts_text_drop(&second);
	ts_text_drop(&first);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	union any any;
	struct ts_arena arena;
	struct ts_findings findings;
	const struct ts_shape *shape;
	enum ts_status status;

	if (size < 1)
		return 0;
	shape = shapes[data[0] % 4];
	ts_arena_open(&arena, NULL);
	ts_findings_open(&findings, NULL);
	status = ts_records_parse(
		shape, (const char *)data + 1, size - 1, "fuzz", &arena, &any, &findings);
	hold(status == TS_OK || status == TS_BAD_INPUT);
	hold((status == TS_BAD_INPUT) == (findings.errors > 0));
	if (status == TS_OK)
		hold_round(shape, &any);
	if (status == TS_OK && shape == &ts_shape_water)
		hold_profile(&any.water);
	for (size_t i = 0; i < findings.count; i++)
		hold(findings.items[i].what && findings.items[i].remedy);
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
	return 0;
}
