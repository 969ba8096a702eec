/* SPDX-License-Identifier: Apache-2.0 */
/* An allocator that refuses once its allowance is used up, and counts what is out. */
#ifndef TS_TESTS_STINGY_H
#define TS_TESTS_STINGY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdlib.h>

struct stingy {
	size_t left, out;
	bool refused;
};

static inline void *stingy_resize(void *state, void *old, size_t size)
{
	struct stingy *s = state;

	if (size == 0) {
		s->out -= old != NULL;
		free(old);
		return NULL;
	}
	if (s->left == 0) {
		s->refused = true;
		return NULL;
	}
	s->left--;
	s->out += old == NULL;
	return realloc(old, size);
}

#endif
