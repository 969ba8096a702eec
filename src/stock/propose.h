/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Communities for a water and a tank. candidates.c says which species may be asked about at all
 * and in which numbers, propose.c turns them into the integer model and lists the best answers.
 * Figures: the rows propose.* of the practice table; docs/methods.md, "Proposing".
 */
#ifndef TS_STOCK_PROPOSE_H
#define TS_STOCK_PROPOSE_H

#include <tapshoal/stock.h>

#include "stock/levels.h"
#include "stock/search.h"

/* Lists of one answer at the most. */
#define TS_LISTS_MOST 20

/* What a community is to be of. */
enum ts_theme {
	TS_THEME_NONE,
	TS_THEME_LAKE,
	TS_THEME_BLACKWATER,
	TS_THEME_COOL,
	TS_THEME_SHRIMPS,
	TS_THEME_ONE_SPECIES,
	TS_THEME__COUNT
};

/* How far a list may reach for its animals; the next is asked for where the one before is poor. */
enum ts_reach {
	TS_REACH_SPARE, /* at home, with room to spare to the hard and the warm side */
	TS_REACH_HOME,  /* at home */
	TS_REACH_ANY    /* what can live there, and the seldom sold */
};

/* What is asked. Everything is lent; zeroed = nothing special. */
struct ts_wish {
	const struct ts_catalogue *catalogue;
	const struct ts_profile *profile;
	const struct ts_keeping *keeping;
	const struct ts_tank *tank;
	const struct ts_practice *practice; /* NULL: the table's own values */
	const struct ts_species *const *with, *const *without;
	size_t with_count, without_count;
	const struct ts_group *residents; /* there already, one group a species */
	size_t resident_count;
	bool hardy;      /* leaves out what takes change badly */
	bool small_only; /* nothing but small ones */
	bool aged;       /* the tank has run for eight weeks */
	enum ts_theme theme;
	const struct ts_species *centre; /* it is to be the centre: one of `with` too; NULL: none */
	/*
	 * The tank with its supply, routine and readings, so that waste is bounded by where it
	 * settles (stock/waters.h), as a check does; NULL: by the closed form. Its own tank is left
	 * aside for `tank`.
	 */
	const struct ts_plan *plan;
	long today;
	double no3_now_mg_l;       /* nitrate of the tank as last read; 0 = not known */
	double no3_new_mg_l;       /* of what is poured in; 0 = not known */
	double kh_new_dh;          /* likewise; 0 = as the profile says */
	double no3_rise_mg_l_week; /* the most it may rise; 0 = the table's limit alone */
	double buffer_days;        /* the least the buffer must last; 0 = the table's limit alone */
	bool full_load;            /* up to where a check complains, not the usual share of it */
	bool conditions;           /* ask at once for lists that work on conditions */
	enum ts_reach reach;       /* ask at once so far */
	/* Nothing too small for the tank is its centre, no single grazer its bottom; ts_propose
	 * sets these. */
	bool scale, groups;
	size_t species_most; /* 0 = by the litres of the tank */
	size_t lists;        /* 0 = 1 */
	const struct ts_search_limits *limits;
};

/* Why a species is no candidate. */
enum ts_left_out {
	TS_CANDIDATE,
	TS_LEFT_BY_WATER,    /* excluded; its match says by what */
	TS_LEFT_UNSURE,      /* waits for a measurement */
	TS_LEFT_BY_WISH,     /* --without */
	TS_LEFT_NOT_HARDY,   /* takes change badly, and --hardy */
	TS_LEFT_BY_THEME,    /* not of what is asked for: the theme, small ones */
	TS_LEFT_BY_CAUTION,  /* nobody is advised to buy it unasked; see its cautions */
	TS_LEFT_ASKS,        /* it asks more than is given unasked; see `asks` */
	TS_LEFT_AT_EDGE,     /* it can live in the water, and is not at its best there */
	TS_LEFT_SELDOM,      /* hardly to be bought */
	TS_LEFT_BY_ROOM,     /* a rule about the animal alone in this tank; see `ruling` */
	TS_LEFT_BY_NITRATE,  /* more nitrate than it bears, now or with a full list */
	TS_LEFT_BY_BUFFER,   /* hardly any KH, and it is no animal of black water */
	TS_LEFT_BY_LOAD,     /* its smallest group alone makes too much waste */
	TS_LEFT_BY_RESIDENT, /* a rule between it and what is there or asked for; see `ruling`, or
				`asks` where no rule forbids it */
	TS_LEFT_OUT__COUNT
};

/* One species against water, wish and tank. */
struct ts_candidacy {
	struct ts_match match;
	enum ts_left_out left_out;
	struct ts_ruling ruling; /* by room or resident: the rule that says so */
	const char *asks; /* what it asks, or why it is apart from `other`; NULL: see `ruling` */
	const struct ts_species *other;  /* by resident: which */
	const struct ts_group *resident; /* it is there already */
	bool must;                       /* --with, or there already */
	size_t first, levels;            /* its items in the model */
};

/* One line of a list. */
struct ts_company {
	const struct ts_candidacy *candidacy;
	struct ts_group group;
	unsigned there; /* of these, how many are in the tank already */
	bool later;     /* not before the tank has run for eight weeks */
};

/* The water that all of a list share, one parameter. */
struct ts_shared {
	bool known, comfortable; /* comfortable: inside what all prefer; else what all tolerate */
	struct ts_range range;
	const struct ts_species *low_by, *high_by;
};

struct ts_community {
	struct ts_company *lines; /* in the order of names */
	size_t count;
	size_t *order; /* lines in the order of purchase; those all there already are left out */
	size_t order_count;
	int64_t points, at_most;
	bool proven;
	bool equal; /* within the share of the first list that is shown as equal */
	size_t nodes;
	double nitrogen_mg_day;
	struct ts_load load; /* what the animals make of the water */
	struct ts_shared shared[TS_PARAMETER__COUNT];
	size_t limiting; /* line with the least fit; its match says by what */
};

struct ts_proposal {
	struct ts_candidacy *species; /* one per species of the catalogue, in its order */
	size_t species_count;
	size_t candidates;
	size_t of[TS_LEFT_OUT__COUNT];
	size_t waits[TS_PARAMETER__COUNT]; /* unsure for want of, or doubt about, this parameter */
	double nitrogen_most_mg_day, floor_m2;
	size_t species_most;
	size_t kinds_wanted; /* kinds of fish that a list should hold, and what these lists do */
	size_t kinds_least;
	unsigned lacks; /* roles that such a tank wants filled and nobody fills */
	bool slight;    /* what there is to look at is small for the tank */
	bool sparse;    /* a single grazer at the bottom, since no group is at home */
	enum ts_reach reach;
	struct ts_model model;     /* of the first list */
	const char **names;        /* of the model's items: "6 Genus species" */
	struct ts_candidacy **who; /* whose items they are */
	bool conditions;           /* no list is sound without condition; these work on one */
	struct ts_level *levels;   /* in which number */
	struct ts_community *lists;
	size_t count;
	bool exhausted; /* fewer lists than asked: no further one is as good a community */
	/* No change was given, and the lists work with so much a week; 0: with the usual one. */
	double change_percent;
};

/*
 * Answers the wish; everything belongs to the arena. False when memory ran out. A proposal without
 * lists is an answer: the candidacies say why.
 */
bool ts_propose(const struct ts_wish *wish, struct ts_arena *arena, struct ts_proposal *ret);

/* The best list that holds this species as well; count 0: none. False when memory ran out. */
bool ts_propose_with(const struct ts_wish *wish, const struct ts_proposal *proposal,
	const struct ts_candidacy *candidacy, struct ts_arena *arena, struct ts_community *ret);

#endif
