/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Numbers and sexes in which a species is proposed.
 */
#include "stock/levels.h"

#include <math.h>

/* In the order of ts_words_sexes. */
enum sexes { SEXES_ANY, SEXES_PAIR, SEXES_HAREM, SEXES_ONE_MALE, SEXES_TWO_FEMALES, SEXES_ALONE };

/* `count` animals, divided as the record wants it. */
static struct ts_group divided(const struct ts_species *species, unsigned count)
{
	struct ts_group group = {.species = species};

	switch (species->group.sexes) {
	case SEXES_PAIR:
		group.males = count / 2;
		break;
	case SEXES_HAREM:
		group.males = species->group.least >= 10 ? (count + 4) / 5 : 1;
		break;
	case SEXES_ONE_MALE:
		group.males = 1;
		break;
	case SEXES_TWO_FEMALES:
		group.males = count / 3;
		break;
	default:
		group.either = count;
		return group;
	}
	group.females = count - group.males;
	return group;
}

static unsigned whole(double count)
{
	return count < 1 ? 1 : count > 1000 ? 1000 : (unsigned)ceil(count);
}

size_t ts_levels(const struct ts_species *species, struct ts_level ret[TS_LEVELS_MOST])
{
	unsigned least = whole(species->group.least);
	unsigned comfortable = whole(species->group.comfortable);
	unsigned counts[TS_LEVELS_MOST] = {
		least, comfortable, whole(1.5 * species->group.comfortable)};
	size_t n = 0;

	if (species->group.sexes == SEXES_ALONE) {
		counts[0] = counts[1] = counts[2] = comfortable = 1;
	} else if (species->group.sexes == SEXES_PAIR) {
		counts[0] = counts[1] = counts[2] = comfortable = 2;
	} else if (comfortable < 3) {
		counts[2] = comfortable;
	}
	for (size_t i = 0; i < TS_LEVELS_MOST; i++) {
		if (n && counts[i] <= counts[i - 1])
			continue;
		ret[n++] = (struct ts_level){divided(species, counts[i]), counts[i] >= comfortable};
	}
	return n;
}
