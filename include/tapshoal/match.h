/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Matching: the profile of a water meets a species' envelopes, and out come suitabilities, a fit, a
 * verdict and the parameter that decides. Pure computation; allocates nothing. Equations:
 * docs/methods.md, "Matching".
 */
#ifndef TAPSHOAL_MATCH_H
#define TAPSHOAL_MATCH_H

#include <tapshoal/catalogue.h>
#include <tapshoal/profile.h>

#ifdef __cplusplus
extern "C" {
#endif

enum ts_verdict { TS_SUITS, TS_TOLERATES, TS_UNSURE, TS_EXCLUDED, TS_VERDICT__COUNT };

/* One parameter of one species against the water. */
struct ts_parameter_fit {
	struct ts_range tolerated, preferred; /* as used; low NAN: the record has none */
	const char *source[2];                /* grades, or a publication; "by kind of water" */
	const char *variant;                  /* "wild", "breeding", NULL = usual */
	bool known;                           /* both the reading and the band are there */
	bool assumed;   /* not read; the verdict is of what it may be by other readings */
	bool read;      /* `reading` is a figure as it was read: said as it stands */
	bool perhaps;   /* what was read is comfortable, but its doubt reaches beyond the limits */
	double reading; /* the value that counts: the worse end of an exposure, and of a doubt
			   that reaches beyond */
	double suitability;      /* 0..1, of the worse end of the interval; NAN = not known */
	double order;            /* the same as the mean over a doubt: for sorting */
	double outside_by;       /* how far beyond tolerated, signed (negative: below); 0 inside */
	double uncomfortable_by; /* the same beyond preferred */
	double share;            /* part of the interval outside tolerated, 0..1 */
	enum ts_verdict verdict;
};

struct ts_match {
	const struct ts_species *species;
	struct ts_parameter_fit at[TS_PARAMETER__COUNT];
	enum ts_verdict verdict;
	double fit;      /* 0..1; NAN where GH, KH or temperature was not read */
	double order;    /* the same of what was read, by means; NAN: nothing that tells was */
	int limiting;    /* enum ts_parameter, -1 = nothing limits */
	double distance; /* from the water to the nearest limit of what it is comfortable in (where
			    it suits) or tolerates, in units of the reading's doubt; NAN: not known
			  */
	int nearest;     /* enum ts_parameter of that limit, -1 = none */
	bool gh_missing; /* unsure for want of GH */
	bool kh_missing; /* unsure for want of KH: by GH alone it may be beyond */
	bool own_temperature; /* the tank's was not given: the verdict is of its own comfortable one
			       */
	double nitrate_borne_mg_l; /* nitrate decides, and this is what it bears; NAN: it does not
				    */
	double copper_borne_mg_l;  /* copper decides, and this is what it bears; NAN: it does not */
	double oxygen_borne_mg_l;  /* so little oxygen is borne, and less was read; NAN: there is
				      enough */
};

/* One species against one profile. `practice` NULL: the table's own values. */
TS_API void ts_match_species(const struct ts_species *species, const struct ts_profile *profile,
	const struct ts_keeping *keeping, const struct ts_practice *practice, struct ts_match *ret);

/*
 * Sorts matches in place: by verdict, then how commonly it is sold, then the distance to the
 * nearest limit (farthest first, on a grid of 1e-6), then name and form.
 */
TS_API void ts_match_sort(struct ts_match *matches, size_t count);

/*
 * The one parameter that alone, and by little (GH 4 dH, KH 3 dH, pH 0.7, 2.5 C, 1 g/L: estimates
 * from memory), excludes; -1 when it is not so.
 */
TS_API int ts_match_near_miss(const struct ts_match *match);

/*
 * The least oxygen (mg/L) with which the animal may be called suited: labyrinth fish, by their
 * family, bear a step less. Never fails.
 */
TS_API double ts_match_oxygen_borne_mg_l(
	const struct ts_species *species, const struct ts_practice *practice);

/*
 * May the animal be named to somebody who did not ask for it? Not one that is venomous, electric,
 * outgrows tanks, is hard to feed, dies of small errors, needs land, is restricted or protected,
 * nor a snail that overruns a tank: common practice, no source. Never fails.
 */
TS_API bool ts_match_advised_unasked(const struct ts_species *species);

/* Least tank length for a settled group of adults, cm, by rule of thumb; see docs/methods.md. */
TS_API double ts_match_tank_length_cm(const struct ts_species *species);

/*
 * What a usual tank of that length holds, litres: half as wide and high as it is long, 50 cm at
 * most, and twice as wide as the animal is long (common practice, no source).
 */
TS_API double ts_match_tank_volume_l(const struct ts_species *species);

/* "suits" ...; NULL behind the last. */
TS_API extern const char *const ts_verdict_words[TS_VERDICT__COUNT + 1];

#ifdef __cplusplus
}
#endif

#endif
