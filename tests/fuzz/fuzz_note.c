/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A reading noted: lines KEY=VALUE, then behind a line "%%" any bytes as the water file, or as the
 * tank file where the first byte is odd. What is made has every byte that was there, in its order.
 */
#include <string.h>

#include "base/arena.h"
#include "base/findings.h"
#include "holds.h"
#include "records/load.h"
#include "records/note.h"

#define PAIRS_MOST 8
#define TODAY 20000 /* a day of 2024 */

static const char border[] = "\n%%\n";

/* The lines in front of the border; a line without "=" is left out. */
static size_t take_pairs(struct ts_arena *arena, const char *at, size_t len, struct ts_pair *pairs)
{
	size_t count = 0;

	while (len && count < PAIRS_MOST) {
		const char *end = memchr(at, '\n', len);
		size_t line = end ? (size_t)(end - at) : len;
		const char *sign = memchr(at, '=', line);

		if (sign) {
			size_t key = (size_t)(sign - at);

			pairs[count].key = ts_arena_text(arena, at, key);
			pairs[count++].value = ts_arena_text(arena, sign + 1, line - key - 1);
		}
		at += line + (end != NULL);
		len -= line + (end != NULL);
	}
	return count;
}

/* One piece was put in, and nothing else differs. */
static void hold_inserted(const char *old, size_t len, const struct ts_text *made)
{
	size_t before = 0, behind = 0;

	hold(made->len > len);
	while (before < len && old[before] == made->at[before])
		before++;
	while (behind < len && old[len - 1 - behind] == made->at[made->len - 1 - behind])
		behind++;
	hold(before + behind >= len);
}

static void note(const struct ts_shape *shape, const char *file, size_t len,
	const struct ts_pair *pairs, size_t count, struct ts_arena *arena)
{
	struct ts_findings findings;
	struct ts_noted noted;
	struct ts_text made;
	enum ts_status status;

	ts_findings_open(&findings, NULL);
	ts_text_open(&made, NULL);
	status = ts_records_note(shape, NULL, "readings", file, len, "fuzz", pairs, count, TODAY,
		arena, &made, &noted, &findings);
	hold(status == TS_OK || status == TS_BAD_INPUT);
	hold((status == TS_BAD_INPUT) == (findings.errors > 0));
	hold_findings(&findings);
	if (status == TS_OK) {
		hold_inserted(file, len, &made);
		hold(noted.count >= 1 && noted.first && noted.last && noted.date);
		hold(strcmp(noted.first, noted.last) <= 0);
	}
	ts_text_drop(&made);
	ts_findings_drop(&findings);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct ts_pair pairs[PAIRS_MOST];
	struct ts_arena arena;
	const char *bytes = (const char *)data + 1, *split, *file;
	size_t count;

	split = size > 1 ? memmem(bytes, size - 1, border, sizeof border - 1) : NULL;
	if (!split)
		return 0;
	ts_arena_open(&arena, NULL);
	count = take_pairs(&arena, bytes, (size_t)(split - bytes), pairs);
	file = split + sizeof border - 1;
	note(data[0] % 2 ? &ts_shape_tank : &ts_shape_water, file,
		(size_t)((const char *)data + size - file), pairs, count, &arena);
	ts_arena_drop(&arena);
	return 0;
}
