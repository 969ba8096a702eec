/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Numbers and sexes in which a species is proposed.
 */
#include "stock/levels.h"

#include <math.h>

/* In the order of ts_words_sexes. */
enum sexes { SEXES_ANY, SEXES_PAIR, SEXES_HAREM, SEXES_ONE_MALE, SEXES_TWO_FEMALES, SEXES_ALONE };

unsigned ts_level_count(const struct ts_level *level)
{
	return level->males + level->females + level->either;
}

/* `count` animals, divided as the record wants it. */
static struct ts_level divided(const struct ts_species *species, unsigned count)
{
	struct ts_level level = {0};

	switch (species->group.sexes) {
	case SEXES_PAIR:
		level.males = count / 2;
		break;
	case SEXES_HAREM:
		level.males = (count + 4) / 5;
		break;
	case SEXES_ONE_MALE:
		level.males = 1;
		break;
	case SEXES_TWO_FEMALES:
		level.males = count / 3;
		break;
	default:
		level.either = count;
		return level;
	}
	level.females = count - level.males;
	return level;
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
		ret[n] = divided(species, counts[i]);
		ret[n++].comfortable = counts[i] >= comfortable;
	}
	return n;
}
