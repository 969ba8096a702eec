/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Where the sentences of a result are kept.
 */
#include "answers/asking.h"

#include <string.h>

#include "base/arena.h"
#include "base/date.h"

const char *ts_asking_keep(const struct ts_asking *asking, struct ts_text *text)
{
	const char *kept = ts_arena_text(asking->arena, ts_text_get(text), text->len);

	asking->arena->failed |= text->failed;
	ts_text_clear(text);
	return kept ? kept : "";
}

const char *ts_asking_day(const struct ts_asking *asking, long day)
{
	char out[TS_DATE_ROOM];

	return ts_date_write(out, day) ? ts_arena_text(asking->arena, out, sizeof out - 1) : NULL;
}

void ts_asking_note(const struct ts_asking *asking, struct ts_texts *list, const char *says)
{
	const char **items;

	if (!says || !*says)
		return;
	items = ts_arena_array(asking->arena, list->count + 1, sizeof *items);
	if (!items)
		return;
	if (list->count)
		memcpy(items, list->items, list->count * sizeof *items);
	items[list->count] = says;
	list->items = items;
	list->count++;
}
