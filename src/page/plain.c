/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Only files of waters, tanks and plans: a record of a species is nothing to fill in.
 */
#include "page/plain.h"

#include "base/arena.h"
#include "base/findings.h"
#include "records/kind.h"
#include "records/load.h"
#include "records/write.h"

static void add_findings(struct ts_text *out, const struct ts_findings *findings)
{
	for (size_t i = 0; i < findings->count; i++) {
		const struct ts_finding *f = &findings->items[i];

		ts_text_puts(out, "line ", NULL);
		ts_text_number(out, f->place.line, 0);
		ts_text_puts(out, ": ", f->place.path ? f->place.path : "",
			f->place.path ? ": " : "", f->what, "; ", f->remedy, "\n", NULL);
	}
}

/* Reads the file into `object` along its shape. */
static enum ts_status read_as(const struct ts_shape *shape, const char *file,
	struct ts_arena *arena, void **ret, struct ts_findings *findings)
{
	*ret = ts_arena_take(arena, shape->size);
	return *ret ? ts_records_load(shape, NULL, file, TS_OPEN_ANY, arena, *ret, findings)
		    : TS_NO_MEMORY;
}

bool page_plain_write(struct ts_text *out, const char *file)
{
	const struct ts_shape *shape = NULL;
	struct ts_arena arena;
	struct ts_findings findings;
	enum ts_status status;
	void *object = NULL;

	ts_arena_open(&arena, &out->allocator);
	ts_findings_open(&findings, &out->allocator);
	status = ts_records_kind(NULL, file, &out->allocator, &shape);
	if (!status && shape == &ts_shape_species) {
		ts_text_put(out, "this is neither a water nor a tank nor a plan\n");
		status = TS_BAD_INPUT;
	} else if (!status) {
		status = read_as(shape, file, &arena, &object, &findings);
		if (status)
			add_findings(out, &findings);
	}
	if (!status) {
		ts_text_puts(out, "# ", shape->name, "\n", NULL);
		ts_records_write(out, shape, object, false);
	}
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
	return status == TS_OK;
}
