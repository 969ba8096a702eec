/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The practice table as the shape of a file: one optional number a row, so that the reader's own
 * errors and suggestions serve here too.
 */
#include "records/practice.h"

#include <tapshoal/plan.h>

#include "base/arena.h"

static bool make_shape(struct ts_arena *arena, struct ts_shape *ret)
{
	struct ts_field *fields = ts_arena_array(arena, TS_P__COUNT, sizeof *fields);

	if (!fields)
		return false;
	for (size_t i = 0; i < TS_P__COUNT; i++)
		fields[i] = (struct ts_field){.key = ts_practice_rows[i].key,
			.kind = TS_MEASURE,
			.quantity = TS_Q_PRACTICE,
			.offset = i * sizeof(struct ts_measure),
			.says = ts_practice_rows[i].why};
	*ret = (struct ts_shape){
		"practice", fields, TS_P__COUNT, TS_P__COUNT * sizeof(struct ts_measure), false};
	return true;
}

enum ts_status ts_practice_load(const struct ts_system *system, const char *file,
	struct ts_arena *arena, struct ts_practice *io, struct ts_findings *findings)
{
	struct ts_shape shape;
	struct ts_measure own[TS_P__COUNT];
	enum ts_status status;

	_Static_assert(TS_P__COUNT <= TS_FIELDS_MOST, "practice rows");
	if (!make_shape(arena, &shape))
		return TS_NO_MEMORY;
	status = ts_records_load(&shape, system, file, TS_OPEN_ANY, arena, own, findings);
	for (int i = 0; i < TS_P__COUNT && !status; i++) {
		if (own[i].kind != TS_MEASURE_NONE)
			io->value[i] = own[i].value;
	}
	return status;
}

enum ts_status ts_practice_read(const char *file, struct ts_arena *arena,
	const struct ts_practice **ret, struct ts_findings *findings)
{
	struct ts_practice *own = ts_arena_array(arena, 1, sizeof *own);
	enum ts_status status = TS_OK;

	if (!own)
		return TS_NO_MEMORY;
	ts_practice_defaults(own);
	if (file)
		status = ts_practice_load(ts_system_machine(), file, arena, own, findings);
	if (!status)
		*ret = own;
	return status;
}
