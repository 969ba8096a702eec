/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Any bytes as a short report: one line or a few, fed at once. The reader is opened once and
 * emptied between inputs, since compiling its patterns takes a hundred times as long as reading a
 * line; opening, feeding in pieces and long reports are fuzz_report.c's.
 */
#include <string.h>

#include "holds.h"
#include "intake/reader.h"

/* As ts_intake_open() leaves it, the compiled patterns kept. */
static struct ts_intake *empty_reader(void)
{
	static struct ts_intake *in;
	struct ts_allocator allocator;
	struct ts_lexer *lexer;
	struct ts_patterns *layouts;

	if (!in) {
		in = ts_intake_open(NULL);
		hold(in != NULL);
		return in;
	}
	ts_arena_drop(&in->arena);
	allocator = in->allocator;
	lexer = in->lexer;
	layouts = in->layouts;
	memset(in, 0, sizeof *in);
	in->allocator = allocator;
	in->lexer = lexer;
	in->layouts = layouts;
	in->line.number = 1;
	ts_arena_open(&in->arena, &in->allocator);
	return in;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct ts_report_refusal refusal = {NULL, NULL};
	struct ts_intake *in = empty_reader();
	struct ts_arena arena;
	struct ts_report r;
	enum ts_status status = ts_intake_feed(in, (const char *)data, size, &refusal);

	if (status == TS_BAD_INPUT) {
		hold(refusal.what && refusal.remedy);
		return 0;
	}
	hold(status == TS_OK);
	ts_arena_open(&arena, NULL);
	status = ts_intake_finish(in, NULL, &arena, &r);
	hold(status == TS_OK || status == TS_NO);
	hold((status == TS_OK) == (r.taken > 0));
	hold_report(&r);
	ts_arena_drop(&arena);
	return 0;
}
