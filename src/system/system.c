/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What no implementation says in its own way.
 */
#include "system/system.h"

#include <string.h>

const char *ts_system_says(int why)
{
	static const struct {
		enum ts_why why;
		const char *says;
	} own[] = {
		{TS_WHY_NOT_ORDINARY, "no ordinary file"},
		{TS_WHY_INPUT, "this call has read or written it, and would replace it"},
		{TS_WHY_CHANGED, "somebody else wrote it in the meantime"},
		{TS_WHY_BUSY, "somebody else has been writing it for ten seconds"},
		{TS_WHY_FOREIGN, "somebody else put it into a folder that everybody may write"},
	};

	for (size_t i = 0; i < sizeof own / sizeof *own; i++) {
		if (own[i].why == why)
			return own[i].says;
	}
	return strerror(why);
}

bool ts_system_same(const struct ts_seen *a, const struct ts_seen *b)
{
	return a->entry == b->entry && a->device == b->device && a->inode == b->inode &&
	       a->size == b->size && a->modified_ns == b->modified_ns &&
	       a->changed_ns == b->changed_ns;
}

size_t ts_system_alone(
	void *state, size_t most, void (*work)(void *to, size_t part, size_t parts), void *to)
{
	(void)state;
	(void)most;
	work(to, 0, 1);
	return 1;
}
