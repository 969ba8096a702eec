/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From the water of a tank to another one without harm to the animals in it: a series of water
 * changes, none of which exceeds a safe step, with days to stop and test. The water to reach comes
 * from recipe.h; carrying animals home uses the same steps (arrive.h).
 */
#ifndef TS_CARE_STAGES_H
#define TS_CARE_STAGES_H

#include <tapshoal/match.h>

#include "chem/solution.h"
#include "model/practice.h"

/* How much change the most delicate animal of a tank bears. */
enum ts_hardiness { TS_DELICATE, TS_ORDINARY, TS_HARDY };

/* One species in the tank now, also one that is to leave it. */
struct ts_resident {
	const struct ts_species *species;
	bool wild, young; /* caught in the wild; fry */
};

/* The strictest of all; none: ordinary. Invertebrates, wild animals and fry are delicate. */
enum ts_hardiness ts_hardiness_of(const struct ts_resident *residents, size_t count);

/* The most that one stage may change, all at once. EC as uS/cm at 25 C. */
struct ts_safe_step {
	double gh_up_dh, gh_down_dh, kh_up_dh, kh_down_dh, ph_up, ph_down;
	double ec_up_us_cm, ec_down_us_cm;
};

/*
 * The safe step from a water of `ec_us_cm`, by the softer end of the step. Rows: common practice,
 * no source; pH: FAO fisheries paper 589 (from memory). Half for delicate animals, half as much
 * again for hardy ones.
 */
struct ts_safe_step ts_safe_step_of(double softer_gh_dh, double ec_us_cm,
	enum ts_hardiness hardiness, const struct ts_practice *practice);

/* A water as stages judge it; pH and EC NAN where they cannot be computed. */
struct ts_stage_water {
	struct ts_solution solution;
	double gh_dh, kh_dh;
	double ph;       /* of a tank with the usual CO2: what minerals do, without gas */
	double ec_us_cm; /* at 25 C, computed */
	double tan_mg_l; /* total ammonia as N, none of it nitrified meanwhile; NAN not known */
	double nh3_mg_l; /* of it un-ionised, at that pH */
};

void ts_stage_water_of(
	const struct ts_solution *solution, double tan_mg_l, struct ts_stage_water *ret);

/* Whether a step between two waters is within the safe step; not computable counts as no. */
bool ts_step_is_safe(const struct ts_stage_water *from, const struct ts_stage_water *to,
	enum ts_hardiness hardiness, const struct ts_practice *practice);

struct ts_stages_wish {
	struct ts_solution now;       /* the tank, at its temperature */
	struct ts_solution poured;    /* the change water, treated and at the tank's temperature */
	struct ts_range gh_dh, kh_dh; /* reached when both lie here */
	const struct ts_resident *residents;
	size_t resident_count;     /* 0: an empty tank */
	double tan_mg_l, no2_mg_l; /* of the tank; NAN: not known */
	double reading_age_days;   /* of these two */
	double poured_tan_mg_l;    /* what neutralised chloramine leaves */
	double cl_mg_l;            /* chloride; NAN not known */
};

/* Why there is no schedule. */
enum ts_stages_refusal {
	TS_STAGES_FINE,
	TS_STAGES_RESIDENT,       /* the new water does not suit `resident` */
	TS_STAGES_FLOOR,          /* KH of the new water is below the buffer floor */
	TS_STAGES_TEST_FIRST,     /* ammonia or nitrite is not known, or too old a reading; the
				     stages are those for nil */
	TS_STAGES_AMMONIA,        /* one of the two was read: make safe first */
	TS_STAGES_AMMONIA_ON_WAY, /* a stage would set too much un-ionised ammonia free */
	TS_STAGES_TOO_FAR         /* more stages than anybody should plan */
};

#define TS_STAGES_MOST 40

struct ts_stage {
	unsigned day;  /* the first stage is on day 0 */
	double change; /* share of the water, 0..1, whole per cents */
	struct ts_stage_water after;
	bool raises_ph; /* ammonia must read nil first, on that day */
	bool stop;      /* wait and test everything before the next one */
};

struct ts_stages {
	enum ts_stages_refusal refusal;
	int resident;  /* index, with TS_STAGES_RESIDENT; else -1 */
	int parameter; /* enum ts_parameter that excludes it; -1 */
	struct ts_stage_water start;
	enum ts_hardiness hardiness;
	size_t count;
	struct ts_stage stages[TS_STAGES_MOST];
	unsigned last_day;
	bool raises_ph; /* over the whole way, which is what ammonia makes dangerous */
};

/*
 * The schedule. TS_OK with no stage: the tank is empty (do it at once) or there already. TS_NO:
 * `ret->refusal` says why. TS_BAD_INPUT: a water outside the equations, `ret` untouched.
 */
TS_MUST_USE enum ts_status ts_stages_plan(const struct ts_stages_wish *wish,
	const struct ts_practice *practice, struct ts_stages *ret);

/* The profile of a remade water, as animals would meet it: GH, KH, computed pH, temperature. */
void ts_remade_profile(const struct ts_solution *water, const struct ts_practice *practice,
	struct ts_profile *ret);

#endif
