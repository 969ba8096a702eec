/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Random figures for the property tests: the same on every machine for the same seed, so that a
 * failing case has a name. Include after cmocka. TAPSHOAL_PROPERTIES=20 runs twenty times as many,
 * TAPSHOAL_SEED=7 those of another seed (tests/prove.sh).
 */
#ifndef TS_TESTS_RANDOM_H
#define TS_TESTS_RANDOM_H

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

struct random {
	uint64_t state;
	unsigned seed, number; /* of the run, of the case */
};

/* xorshift64*, Vigna 2016, ACM TOMS 42(4):30. */
static inline unsigned any_below(struct random *r, unsigned n)
{
	r->state ^= r->state >> 12;
	r->state ^= r->state << 25;
	r->state ^= r->state >> 27;
	return (unsigned)((r->state * UINT64_C(0x2545F4914F6CDD1D)) >> 33) % n;
}

static inline bool any_percent(struct random *r, unsigned percent)
{
	return any_below(r, 100) < percent;
}

/* A multiple of `step` from `low` to `high`: figures that meet limits exactly. */
static inline double any_in(struct random *r, double low, double high, double step)
{
	return low + step * any_below(r, (unsigned)((high - low) / step + 1.5));
}

/* Cases of a property: `few` times what the environment asks for; the seed is printed. */
static inline unsigned random_open(struct random *r, unsigned seed, unsigned few)
{
	const char *more = getenv("TAPSHOAL_PROPERTIES"), *other = getenv("TAPSHOAL_SEED");
	unsigned times = more ? (unsigned)strtoul(more, NULL, 10) : 1;

	if (other)
		seed = (unsigned)strtoul(other, NULL, 10);
	*r = (struct random){.seed = seed};
	printf("# seed %u, %u cases\n", seed, few * (times ? times : 1));
	return few * (times ? times : 1);
}

/* Each case has a state of its own, so that one can be run again without those before it. */
static inline void random_case(struct random *r, unsigned number)
{
	r->number = number;
	r->state = ((uint64_t)r->seed << 32 | number) * UINT64_C(0x9E3779B97F4A7C15) + 1;
	for (int i = 0; i < 4; i++)
		any_below(r, 2);
}

/* Says which case it was. */
#define CLAIM(r, what)                                                                             \
	do {                                                                                       \
		if (!(what))                                                                       \
			print_error("seed %u, case %u\n", (r)->seed, (r)->number);                 \
		assert_true(what);                                                                 \
	} while (0)

#endif
