/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Any bytes as a report, fed in pieces whose size the first byte tells; the answer must hold
 * together: figures finite and in their quantity's range, lines that exist, texts everywhere.
 */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "intake/report.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void hold(bool what)
{
	if (!what)
		abort();
}

static void check_reading(const struct ts_report *r)
{
	size_t taken = 0;

	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *f = &ts_shape_reading.fields[i];
		struct ts_measure m;

		if (f->kind != TS_MEASURE)
			continue;
		memcpy(&m, (const char *)&r->reading + f->offset, sizeof m);
		if (m.kind == TS_MEASURE_NONE)
			continue;
		taken++;
		hold(isfinite(m.value) && m.low <= m.value && m.value <= m.high);
		hold(m.low >= ts_quantities[f->quantity].min);
		hold(m.kind == TS_MEASURE_ABOVE || m.high <= ts_quantities[f->quantity].max);
		hold(r->origins[i].line >= 1 && r->origins[i].line <= r->lines);
		hold(r->origins[i].printed && *r->origins[i].printed && *r->origins[i].rule);
	}
	hold(taken == r->taken);
}

static void check_lists(const struct ts_report *r)
{
	hold(r->gap_count <= TS_REPORT_GAPS_MOST && r->value_count <= TS_REPORT_VALUES_MOST);
	for (size_t i = 0; i < r->gap_count; i++)
		hold(r->gaps[i].why && r->gaps[i].remedy && r->gaps[i].line <= r->lines);
	for (size_t i = 0; i < r->clash_count; i++)
		hold(r->clashes[i].says && *r->clashes[i].says);
	for (size_t i = 0; i < r->zone_count; i++)
		hold(r->zones[i] && *r->zones[i]);
	for (size_t i = 0; i < r->value_count; i++)
		hold(r->values[i].field && r->values[i].printed && r->values[i].line <= r->lines);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct ts_report_refusal refusal = {NULL, NULL};
	struct ts_intake *in;
	struct ts_arena arena;
	struct ts_report r;
	enum ts_status status = TS_OK;
	size_t piece;

	if (size < 1)
		return 0;
	piece = (size_t)data[0] + 1;
	in = ts_intake_open(NULL);
	hold(in != NULL);
	for (size_t at = 1; at < size && status == TS_OK; at += piece)
		status = ts_intake_feed(in, (const char *)data + at,
			size - at < piece ? size - at : piece, &refusal);
	if (status == TS_BAD_INPUT) {
		hold(refusal.what && refusal.remedy);
	} else {
		ts_arena_open(&arena, NULL);
		status = ts_intake_finish(in, NULL, &arena, &r);
		hold(status == TS_OK || status == TS_NO);
		hold((status == TS_OK) == (r.taken > 0));
		check_reading(&r);
		check_lists(&r);
		ts_arena_drop(&arena);
	}
	ts_intake_close(in);
	return 0;
}
