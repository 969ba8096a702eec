/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Any bytes as a table of waters, handed over in pieces whose size the first byte tells; each row
 * that is taken goes on through the profile.
 */
#include <string.h>

#include "base/arena.h"
#include "base/findings.h"
#include "holds.h"
#include "records/waters.h"

struct bytes {
	const uint8_t *at;
	size_t left, piece;
};

static size_t hand_over(void *state, char *bytes, size_t room)
{
	struct bytes *from = state;
	size_t len = from->left < from->piece ? from->left : from->piece;

	len = len < room ? len : room;
	memcpy(bytes, from->at, len);
	from->at += len;
	from->left -= len;
	return len;
}

/* One row; false behind the last. */
static bool take_row(struct ts_waters *waters, unsigned *line)
{
	struct ts_arena arena;
	struct ts_findings findings;
	struct ts_water water;
	unsigned before = *line;
	enum ts_status status;

	ts_arena_open(&arena, NULL);
	ts_findings_open(&findings, NULL);
	status = ts_waters_next(waters, &arena, &water, line, &findings);
	hold(status == TS_OK || status == TS_NO || status == TS_BAD_INPUT);
	hold((status == TS_BAD_INPUT) == (findings.errors > 0));
	hold(status == TS_NO || *line > before);
	hold_findings(&findings);
	if (status == TS_OK) {
		hold(water.reading_count == 1);
		hold_profile(&water);
	}
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
	return status != TS_NO;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct bytes from;
	struct ts_arena arena;
	struct ts_findings findings;
	struct ts_waters *waters;
	unsigned line = 0;

	if (size < 1)
		return 0;
	from = (struct bytes){data + 1, size - 1, (size_t)data[0] + 1};
	ts_arena_open(&arena, NULL);
	ts_findings_open(&findings, NULL);
	waters = ts_waters_open(hand_over, &from, "fuzz", &arena, &findings);
	hold(!waters == (findings.errors > 0));
	hold_findings(&findings);
	while (waters && take_row(waters, &line))
		;
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
	return 0;
}
