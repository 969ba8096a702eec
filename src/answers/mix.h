/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The water that several waters make, closed and after airing. What is conserved (ions,
 * alkalinity, inorganic carbon) mixes by volume; pH never does and is computed from the mixture.
 */
#ifndef TS_ANSWERS_MIX_H
#define TS_ANSWERS_MIX_H

#include "answers/water.h"

#define TS_MIX_PARTS_MOST 16

struct ts_mix_part {
	const char *name;
	double amount;                /* litres, or a share */
	const struct ts_water *water; /* NULL: pure, without minerals and without gas of its own */
};

struct ts_mix_question {
	const struct ts_mix_part *parts;
	size_t count; /* 1 to TS_MIX_PARTS_MOST */
	bool litres;
	double temp_c; /* NAN: the parts' own, where they say it */
};

struct ts_mix_part_result {
	const char *name;
	double amount;
	struct ts_range gh_dh, kh_dh; /* both ends alike but where the part changes */
};

struct ts_mix_result {
	struct ts_water_result water;
	struct ts_mix_part_result *parts;
	size_t part_count;
	bool litres;
	bool computed;          /* else headline and decides say why not */
	struct ts_texts advice; /* how to go about it */
};

/* TS_NO_MEMORY, `*ret` then untouched. All of it belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_mix_answer(const struct ts_asking *asking,
	const struct ts_mix_question *question, struct ts_mix_result *ret);

#endif
