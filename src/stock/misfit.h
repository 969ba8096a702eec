/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A water that is not an animal's own: how far it is from what it likes, and what follows from that
 * for one that is planned, for one that lives there, and for a list of which some suit. The only
 * place that decides it; docs/methods.md prints the rows.
 */
#ifndef TS_STOCK_MISFIT_H
#define TS_STOCK_MISFIT_H

#include <tapshoal/match.h>

/* From nothing to no. */
enum ts_misfit {
	TS_MISFIT_NONE,
	TS_MISFIT_EDGE,  /* by no more than a drop's doubt or a tenth of its band: a note */
	TS_MISFIT_BORNE, /* borne, and not liked: said beside the yes */
	TS_MISFIT_OPEN,  /* part of what was read is liked, part is beyond what is borne */
	TS_MISFIT_OFF,   /* beyond what is borne, or so near to it that nobody would choose it */
	TS_MISFIT__COUNT
};

/* What follows. */
enum ts_misfit_way {
	TS_WAY_NONE,
	TS_WAY_KEEP,       /* lives there: it stays, and its water is mended at a pace */
	TS_WAY_LEAVE,      /* planned beside others that suit: those are taken, and not this */
	TS_WAY_MINERALS,   /* all that is planned wants more minerals, by a spoon: the recipe */
	TS_WAY_OTHER_FISH, /* none suits: fish for this water, and the recipe as the other way */
	TS_WAY__COUNT
};

struct ts_misfit_row {
	const char *when, *says;         /* for docs */
	int lives, others_suit, a_spoon; /* 1 yes, 0 no, -1 either */
	enum ts_misfit_way way;
};
extern const struct ts_misfit_row ts_misfit_rows[];
extern const size_t ts_misfit_row_count;

/* Degrees of GH and KH together that are a spoon of salt: common practice, no source. */
#define TS_MISFIT_SPOON_DH 5

/*
 * The worst of the parameters, and in `*ret_parameter` which it is (-1: none). `profile` is the one
 * of the match. What is not read is open where the match waits for it. A pH is the result of the
 * minerals: never worse than open.
 */
enum ts_misfit ts_misfit_of(
	const struct ts_match *match, const struct ts_profile *profile, int *ret_parameter);

/* The same of one parameter that was read. */
enum ts_misfit ts_misfit_at(
	const struct ts_match *match, const struct ts_profile *profile, enum ts_parameter p);

/* Off is a no, though a limit of what is borne lies within a reading's doubt. */
enum ts_verdict ts_misfit_verdict(enum ts_verdict verdict, enum ts_misfit misfit);

/*
 * The match as answers say it: whom the water is off for is excluded, though a limit of what it
 * bears may lie within a reading's doubt. Never turns anything into a yes.
 */
void ts_misfit_match(const struct ts_species *species, const struct ts_profile *profile,
	const struct ts_keeping *keeping, const struct ts_practice *practice, struct ts_match *ret);

/* What follows for an animal that is off. */
enum ts_misfit_way ts_misfit_way(bool lives, bool others_suit, bool a_spoon);

#endif
