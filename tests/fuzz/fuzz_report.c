/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Any bytes as a report, fed in pieces whose size the first byte tells; the answer must hold
 * together: figures finite and in their quantity's range, lines that exist, texts everywhere.
 */
#include "holds.h"

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
		hold_report(&r);
		ts_arena_drop(&arena);
	}
	ts_intake_close(in);
	return 0;
}
