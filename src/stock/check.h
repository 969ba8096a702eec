/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A whole plan judged: water, company, load, and what mends each fault. The rules of one and two
 * species are rules_*.c; names were looked up before (the catalogue stands above the engine).
 */
#ifndef TS_STOCK_CHECK_H
#define TS_STOCK_CHECK_H

#include "stock/misfit.h"
#include "stock/smallest.h"
#include "stock/waters.h"

/* Findings that are kept, gravest first; further ones are counted. */
#define TS_CHECK_MOST 1000
/* Kinds of animals up to which remedies are tried and the smallest tank is looked for. */
#define TS_REMEDIES_TRIED 16

/* The worst severity in the list. */
enum ts_plan_verdict {
	TS_PLAN_SOUND,
	TS_PLAN_ASKS,     /* something is not known */
	TS_PLAN_SOUND_IF, /* every concern has its condition */
	TS_PLAN_UNSOUND,
	TS_PLAN_VERDICT__COUNT
};

/* All animals of one species in the plan. */
struct ts_plan_group {
	struct ts_group group;
	unsigned planned; /* of them, those that are not in the tank yet */
	bool wild;
	bool well;              /* has lived there for long without a sign or a death */
	struct ts_match match;  /* with the water of now, or with what it settles at */
	bool in_settled;        /* the latter, which is worse */
	enum ts_misfit misfit;  /* of that match */
	int misfit_at;          /* enum ts_parameter; -1: none */
	enum ts_misfit_way way; /* what follows, where it is off for minerals or salt */
};

/* The water that all animals share; low above high: none. A range of NAN: no record says. */
struct ts_shared_water {
	struct ts_range at[TS_PARAMETER__COUNT];
	bool comfortable[TS_PARAMETER__COUNT]; /* to all; else only tolerated by all */
};

struct ts_check {
	enum ts_plan_verdict verdict;
	/*
	 * What a yes needs is all known: the names, the water, its fit, the temperature, in a
	 * running tank ammonia and nitrite. Without that no plan passes, whatever its verdict.
	 */
	bool answered;
	struct ts_ruling *rulings; /* gravest first, then in the order of ts_rule_topic */
	size_t count, more;
	size_t planned_groups, living_groups;
	struct ts_shared_water shared; /* of all but those that are told not to be bought for it */
	struct ts_shared_water shared_all, shared_there; /* of all; of those that live there */
	struct ts_smallest_tank smallest;
	const struct ts_species *const *of_line; /* of each line of the stock, lent */
	struct ts_plan_group *groups;
	size_t group_count;
	const struct ts_plan *of_plan;
	const struct ts_waters *waters;  /* of the tank: now, poured in, settled */
	const struct ts_waters *as_read; /* the same without animals and where it goes */
	struct ts_profile profile;       /* of the water that the animals meet now: waters->now */
	bool water_known, load_known;
	bool nitrate_sensitive; /* some animal bears nitrate badly */
	struct ts_load load;
	/* Other water in which all that is planned would be well; of no kind: none was found. */
	struct ts_remedy recipe;
	/* Step by step, what leaves no conflict: the faults, each with the remedy that is taken. */
	const struct ts_ruling *repair;
	size_t repair_count;
	bool repair_mends; /* after it no conflict is left: it was judged again */
};

/*
 * Judges a plan. `species[i]` is what stock[i].species means, NULL = nothing: then the verdict is
 * never sound. All results belong to `arena`. `today`: days since 1970-01-01; -1: not known, then
 * readings are of today. `practice` NULL: the table's own values. TS_NO_MEMORY, `*ret` then
 * untouched.
 */
TS_MUST_USE enum ts_status ts_check_plan(const struct ts_plan *plan,
	const struct ts_species *const *species, long today, const struct ts_practice *practice,
	struct ts_arena *arena, struct ts_check *ret);

/*
 * The same without remedies, repair and the smallest tank: for those who try a change. `before`: a
 * check of the same day and practice, whose water counts where this plan's is the same; or NULL.
 */
TS_MUST_USE enum ts_status ts_check_faults(const struct ts_plan *plan,
	const struct ts_species *const *species, long today, const struct ts_practice *practice,
	const struct ts_check *before, struct ts_arena *arena, struct ts_check *ret);

/* What a ruling is about: the row's, but of a water that is too cold or warm the temperature. */
enum ts_rule_topic ts_ruling_topic(const struct ts_ruling *ruling);

/* The water holds more salt than its subject bears. */
bool ts_ruling_too_salty(const struct ts_ruling *ruling);

/* Puts the rulings in their order and sets the verdict: the worst of them. */
void ts_check_sort(struct ts_check *check);
enum ts_plan_verdict ts_check_verdict(const struct ts_check *check);

/* Gives every fault its remedy, and the check its repair (repair.c). */
void ts_check_remedies(const struct ts_plan *plan, long today, const struct ts_practice *practice,
	struct ts_arena *arena, struct ts_check *check);

/* Sets what water they share; and finds the smallest tank that holds them (shared.c). */
void ts_check_shared_water(struct ts_check *io);
void ts_check_smallest_tank(const struct ts_plan *plan, const struct ts_practice *practice,
	const struct ts_check *check, struct ts_smallest_tank *ret);

#endif
