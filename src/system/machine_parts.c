/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Work by all processors that this process may use. The parts share nothing but what they are
 * handed; where no thread can be had, its part is done in turn.
 */
#include <pthread.h>
#include <sched.h>

#include "system/machine.h"

/* Enough for the deepest answer with room to spare; some C libraries give far less. */
#define STACK (1u << 20)

struct part {
	void (*work)(void *to, size_t part, size_t parts);
	void *to;
	size_t number, parts;
	pthread_t thread;
	bool started;
};

static void *run(void *state)
{
	const struct part *p = state;

	p->work(p->to, p->number, p->parts);
	return NULL;
}

static size_t processors(void)
{
	cpu_set_t mine;
	int count = sched_getaffinity(0, sizeof mine, &mine) == 0 ? CPU_COUNT(&mine) : 1;

	return count > 0 ? (size_t)count : 1;
}

size_t ts_machine_together(
	void *state, size_t most, void (*work)(void *to, size_t part, size_t parts), void *to)
{
	struct part parts[TS_PARTS_MOST];
	size_t count = processors();
	pthread_attr_t attributes;
	bool may = pthread_attr_init(&attributes) == 0;

	(void)state;
	count = count < most ? count : most;
	count = count < TS_PARTS_MOST ? count : TS_PARTS_MOST;
	if (may)
		pthread_attr_setstacksize(&attributes, STACK);
	for (size_t i = 0; i < count; i++) {
		parts[i] = (struct part){.work = work, .to = to, .number = i, .parts = count};
		parts[i].started =
			may && i > 0 &&
			pthread_create(&parts[i].thread, &attributes, run, &parts[i]) == 0;
	}
	for (size_t i = 0; i < count; i++) {
		if (!parts[i].started)
			run(&parts[i]);
	}
	for (size_t i = 0; i < count; i++) {
		if (parts[i].started)
			pthread_join(parts[i].thread, NULL);
	}
	if (may)
		pthread_attr_destroy(&attributes);
	return count;
}
