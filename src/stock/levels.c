/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Numbers and sexes in which a species is proposed.
 */
#include "stock/levels.h"

#include <math.h>

#include "stock/rules.h"

/* `count` animals, divided as the record wants it. */
static struct ts_group divided(const struct ts_species *species, unsigned count)
{
	struct ts_group group = {.species = species};

	switch (species->group.sexes) {
	case TS_SEXES_PAIR:
		group.males = count / 2;
		break;
	case TS_SEXES_HAREM:
		group.males = species->group.least >= 10 ? (count + 4) / 5 : 1;
		break;
	case TS_SEXES_ONE_MALE:
		group.males = 1;
		break;
	case TS_SEXES_TWO_FEMALES:
		group.males = count / 3;
		break;
	case TS_SEXES_MORE_FEMALES:
		group.males = count < 3 ? 1 : count / 3;
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

/* Adds a level unless it is no more than the one before. */
static size_t add(const struct ts_species *s, struct ts_level *ret, size_t n, unsigned count,
	bool comfortable)
{
	if (n && count <= ts_group_count(&ret[n - 1].group))
		return n;
	ret[n] = (struct ts_level){.group = divided(s, count), .comfortable = comfortable};
	return n + 1;
}

/* Of livebearers without females, at the most. */
#define MALES_CM 5.5

/* Of a shoal in a home tank, where it is not comfortable only in more. */
#define SHOAL_MOST 30

/* A larger shoal. */
static unsigned larger(const struct ts_species *s, double times)
{
	unsigned comfortable = whole(s->group.comfortable);
	unsigned count = whole(times * s->group.comfortable);

	return count > SHOAL_MOST && comfortable < SHOAL_MOST ? SHOAL_MOST : count;
}

/* A crowd that holds no pairs and no harem may be as large as the tank bears. */
static bool of_shoals(const struct ts_species *s)
{
	bool few = s->group.sexes == TS_SEXES_ONE_MALE ||
		   (s->group.sexes == TS_SEXES_HAREM && s->group.least < 5);

	return s->group.comfortable >= 5 && !few;
}

/*
 * Males alone, so that nobody has to find homes for the young. Small ones quarrel in twos and
 * threes and hardly in crowds; large ones do unless there are many and the tank is long, and those
 * that quarrel always are had with females.
 */
static size_t add_males(
	const struct ts_species *s, unsigned comfortable, struct ts_level *ret, size_t n)
{
	static const unsigned small[] = {2, 3, 4, 6, 8, 10}, large[] = {2, 3, 4, 6};
	bool rivals = s->adult_length_cm > MALES_CM;
	const unsigned *halves = rivals ? large : small;
	size_t count = rivals ? sizeof large / sizeof *large : sizeof small / sizeof *small;

	if (rivals && s->own_kind_when == TS_ALWAYS)
		return n;
	for (size_t i = 0; i < count; i++)
		ret[n++] = (struct ts_level){
			.group = {.species = s, .males = halves[i] * comfortable / 2},
			.comfortable = true,
			.crowd = rivals || halves[i] > 4,
			.rivals = rivals};
	return n;
}

size_t ts_levels(const struct ts_species *s, struct ts_level ret[TS_LEVELS_MOST])
{
	unsigned least = whole(s->group.least), comfortable = whole(s->group.comfortable);
	size_t n = 0, usual;

	if (s->group.sexes == TS_SEXES_ALONE)
		return add(s, ret, 0, 1, true);
	if (s->group.sexes == TS_SEXES_PAIR)
		return add(s, ret, 0, 2, true);
	/* One female would be all that the owner of a harem, or a male livebearer, has. */
	if (s->group.pair && least > 2 && s->group.sexes != TS_SEXES_HAREM &&
		s->group.sexes != TS_SEXES_TWO_FEMALES) {
		ret[n++] = (struct ts_level){
			.group = {.species = s, .males = 1, .females = 1}, .comfortable = true};
	}
	/* One male with two females is settled. */
	n = add(s, ret, n, least,
		least >= comfortable || (s->group.sexes == TS_SEXES_HAREM && least == 3));
	n = add(s, ret, n, comfortable, true);
	if (of_shoals(s)) {
		n = add(s, ret, n, larger(s, 1.5), true);
		n = add(s, ret, n, larger(s, 2), true);
	}
	usual = n;
	if (of_shoals(s) && !(s->young_month > 0) && s->swims != TS_SWIMS_BOTTOM)
		n = add(s, ret, n, larger(s, 3), true);
	if (n > usual)
		ret[n - 1].crowd = true;
	if (s->group.sexes == TS_SEXES_TWO_FEMALES && s->young_month > 0)
		n = add_males(s, comfortable, ret, n);
	return n;
}
