/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The question "which animals together?" as integers, and nothing but integers: what may be
 * chosen, what excludes what, what costs points. src/stock/propose.c fills it from species and
 * water, src/stock/search.c solves it, src/stock/model_lp.c writes it for outside solvers, and all
 * of them read the same numbers, so that answers can be compared with ==.
 */
#ifndef TS_STOCK_MODEL_H
#define TS_STOCK_MODEL_H

#include <tapshoal/base.h>

#include <stdint.h>

/* Species of one list at the most, extras too; the search is not meant for more. */
#define TS_MODEL_SPECIES_MOST 16
/* Points, weights and areas of one item stay below this, so that no sum can overflow. */
#define TS_MODEL_FIGURE_MOST (1 << 20)

/* What an item is in a community, bits; one at the most. */
enum ts_role {
	TS_ROLE_CENTRE = 1 << 0, /* what one looks at: a pair, a trio, a small group */
	TS_ROLE_SHOAL = 1 << 1,
	TS_ROLE_BOTTOM = 1 << 2,
	TS_ROLE_TOP = 1 << 3
};
#define TS_ROLE__COUNT 4

/*
 * One thing that may be chosen: a species in one number. Items stand in the order of names, which
 * decides last between equal lists; those of one group stand together.
 */
struct ts_model_item {
	unsigned group; /* species, 0..group_count-1: at most one item of a group is chosen */
	unsigned genus; /* 0..genus_count-1 */
	int value;      /* points for choosing it; may be negative */
	int fit;        /* how well it is served, 0..1000; the least of all that is chosen counts */
	int weight;     /* of the weight that may be used up; 0 or more */
	int floor;      /* of the floor that may be used up; 0 or more */
	unsigned role;  /* enum ts_role, or 0: it fills none */
	bool extra; /* a snail, a shrimp: no list is told apart by it, and none is of it alone */
};

/*
 * The model. Maximise
 *   fit_points m + sum value_i + sum of role_points of the roles filled - sum of frictions of
 * chosen pairs, m the least fit of the chosen, over lists of items of different groups without a
 * conflict, species_least..species_most of them no extras, extras_most extras beside them at the
 * most, within weight_most and floor_most, with every group that is a must and every role of
 * roles_must filled. Of the items that are no extras and
 * of groups that are no must, those of a familiar genus are at most as many as the others.
 */
struct ts_model {
	struct ts_model_item *items;
	size_t count, words; /* words: of one row of conflicts */
	size_t group_count, genus_count;
	uint64_t *conflicts; /* count rows of bits; symmetric */
	uint16_t *frictions; /* count x count points; symmetric */
	bool *must;          /* by group */
	bool *familiar;      /* by genus: stands in an earlier list */
	int species_least;   /* extras left out; 1 or more */
	int species_most;    /* likewise, and no less */
	unsigned roles_must; /* enum ts_role, those that are filled in every list */
	int extras_most;     /* both together at most TS_MODEL_SPECIES_MOST */
	int64_t weight_most, floor_most;
	int fit_points, role_points[TS_ROLE__COUNT]; /* 0 or more */
};

/*
 * Opens a model of `count` items, all zero, without conflict, friction or must; its memory belongs
 * to the arena. False when there is none (arena->failed), `*ret` untouched.
 */
bool ts_model_open(struct ts_model *ret, struct ts_arena *arena, size_t count, size_t group_count,
	size_t genus_count);

/* Two items exclude each other. */
void ts_model_conflict(struct ts_model *model, size_t i, size_t j);
bool ts_model_conflicts(const struct ts_model *model, size_t i, size_t j);

/* Choosing both costs `points`, 0..65535. */
void ts_model_friction(struct ts_model *model, size_t i, size_t j, unsigned points);

/* Whether the items i and j have a friction, in points. */
unsigned ts_model_friction_of(const struct ts_model *model, size_t i, size_t j);

/*
 * The points of a list, straight from the definition above. False when the list breaks a rule;
 * `*ret` is then untouched. `chosen` holds `count` different items.
 */
bool ts_model_points(
	const struct ts_model *model, const size_t *chosen, size_t count, int64_t *ret);

/*
 * Whether leaving out the item could cost anything: false where another number of the same species
 * is worth as much, weighs no more and excludes nothing further.
 */
bool ts_model_matters(const struct ts_model *model, size_t item);

/* Marks the genera of a list as familiar, for the next list; must groups do not count. */
void ts_model_remember(struct ts_model *model, const size_t *chosen, size_t count);

#endif
