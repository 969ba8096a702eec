/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Everything chemistry can say about one water: what `water`, `mix`, `titrate` and `remake` show
 * of it. A fact that cannot be had is NAN and says why; nothing here fails.
 */
#ifndef TS_WATER_FACTS_H
#define TS_WATER_FACTS_H

#include <tapshoal/profile.h>

#include "chem/classes.h"
#include "water/analysis.h"

/* The computed facts, each with a reason where it is missing. */
enum ts_water_fact {
	TS_FACT_CO2,
	TS_FACT_PH_CLOSED,
	TS_FACT_PH_AIR,
	TS_FACT_PH_TANK,
	TS_FACT_CALCITE_SI,
	TS_FACT_IONIC_STRENGTH,
	TS_FACT_CONDUCTIVITY,
	TS_FACT_NH3_FRACTION,
	TS_WATER_FACT__COUNT
};

enum ts_fact_why {
	TS_WHY_KNOWN,
	TS_WHY_WANTS_KH,
	TS_WHY_WANTS_PH,
	TS_WHY_WANTS_CALCIUM,    /* neither calcium nor GH */
	TS_WHY_NO_CALCIUM,       /* there is none in it */
	TS_WHY_WANTS_HARDNESS,   /* GH and most ions were not read: only half of the salts */
	TS_WHY_BUFFER_TOO_SMALL, /* KH under 0.5 dH: pH does not follow from it */
	TS_WHY_PHOSPHATE,        /* phosphate makes up a tenth of the buffer or more */
	TS_WHY_PH_AGAINST_KH,    /* the pH read contradicts KH */
	TS_WHY_ACIDS,            /* peat, wood or active soil: pH tells no CO2 */
	TS_WHY_OUT_OF_RANGE      /* the equations do not reach so far */
};

/* What to measure next. */
enum ts_next {
	TS_NEXT_UNSOFTENED, /* the unsoftened line */
	TS_NEXT_GH,
	TS_NEXT_GH_DROPS, /* GH again, more closely */
	TS_NEXT_KH,
	TS_NEXT_TANK_TEMPERATURE,
	TS_NEXT_PH,
	/* Only where the water itself is the subject (water/dangers.h). */
	TS_NEXT_PH_AIRED,
	TS_NEXT_AGAIN, /* what contradicts the rest */
	TS_NEXT_AMMONIA,
	TS_NEXT_NITRITE,
	TS_NEXT_NITRATE,
	TS_NEXT_NOTHING, /* again when the season turns */
	TS_NEXT__COUNT
};

/* NAN = not known. */
struct ts_water_facts {
	double temp_c;              /* the sample's, at which the rest holds */
	double ph, ph_low, ph_high; /* as read, with its doubt; of a mixture: closed */
	double gh_dh, kh_dh, alkalinity_meq_l;
	double gh_low_dh, gh_high_dh, kh_low_dh, kh_high_dh; /* doubt, or both ends of a supply */
	double ca_mg_l, mg_mg_l, na_mg_l, k_mg_l, cl_mg_l, so4_mg_l, no3_mg_l; /* as read */
	double co2_mg_l, co2_low_mg_l, co2_high_mg_l; /* at ph, ph_high, ph_low */
	double ph_closed;                             /* from alkalinity and inorganic carbon */
	double ph_air;                                /* after airing until in balance with air */
	double ph_tank_low, ph_tank, ph_tank_high;    /* at the tank's temperature, else 25 C */
	double calcite_si;                            /* at ph, else at ph_tank */
	double ionic_strength;                        /* mol/L */
	double conductivity_us_cm;                    /* at 25 C, as read */
	double oxygen_mg_l,
		oxygen_percent; /* the lowest read; one from the other where warmth is known */
	double conductivity_computed_us_cm;          /* at 25 C, from the ions, guessed ones too */
	double nh3_fraction;                         /* of total ammonia, at ph; 0..1 */
	const char *hardness_class, *hardness_scale; /* NULL: GH not known */
	enum ts_fact_why why[TS_WATER_FACT__COUNT];
	unsigned assumed; /* bits of enum ts_assumed: what the computed facts stand on */
	unsigned unusual; /* bits of enum ts_unusual */
	enum ts_next next_to_measure;
};

/*
 * Describes a water. `solution` with its `assumed` bits from ts_solution_from_profile(), mixing
 * or dosing; NULL: it could not be had, then only what was read is filled in. `profile`: the
 * readings behind it; NULL for a water that nobody read (a mixture, a recipe), of which pH is the
 * closed pH. Not both NULL. The texts in `ret` are constant.
 */
void ts_water_describe(const struct ts_solution *solution, unsigned assumed,
	const struct ts_profile *profile, struct ts_water_facts *ret);

/* The two steps in one: the solution behind a profile (temp_c as there) and its description. */
void ts_water_describe_profile(
	const struct ts_profile *profile, double temp_c, struct ts_water_facts *ret);

/* Whether calcium and magnesium, mg/L, as analysed, come to that GH; NAN: not analysed. */
bool ts_gh_confirmed(double gh_dh, double ca_mg_l, double mg_mg_l);

/* The one next thing to measure, for a profile. */
enum ts_next ts_profile_next(const struct ts_profile *profile);

#endif
