/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Care of a running tank: what acid or base would do to a water, and where a tank drifts. These
 * are teaching figures about a litre of water, never a dose for a volume; nothing here proposes a
 * product. Pure computation; equations and sources in docs/methods.md.
 */
#ifndef TAPSHOAL_CARE_H
#define TAPSHOAL_CARE_H

#include <tapshoal/stock.h>

#ifdef __cplusplus
extern "C" {
#endif

/* What a level of dissolved CO2 means for fish (practice rows co2.concern, co2.danger). */
enum ts_co2_danger { TS_CO2_BORNE, TS_CO2_CONCERN, TS_CO2_DANGER, TS_CO2_DANGER__COUNT };

/* A water after so much strong acid (negative: strong base) in all. */
struct ts_titration_step {
	double acid_meq_l;
	double alkalinity_meq_l; /* what is left; negative: acid stands free */
	double kh_dh;            /* the same in degrees, 0 at the least */
	double ph_closed;        /* at once: the gas that the acid freed is still in the water */
	double co2_mg_l;         /* dissolved at that moment */
	enum ts_co2_danger danger;
	double ph_tank; /* once the tank has aired to its usual CO2 */
	double ph_air;  /* after long airing, in balance with the air */
};

/* One evening's dose and the morning after it. */
struct ts_titration_night {
	unsigned day;                     /* 1 = the first evening */
	double dose_meq_l;                /* strong acid, negative: base */
	struct ts_titration_step evening; /* right after the dose; acid_meq_l counts from day 1 */
};

#define TS_TITRATION_NIGHTS_MOST 60

/* A keeper who doses every evening towards a pH while the tank airs every night. */
struct ts_titration_nights {
	double towards_ph;
	double ph_start;    /* of the aired tank before the first dose */
	unsigned count;     /* evenings that follow; ends soon after the buffer has gone */
	unsigned floor_day; /* first evening that leaves KH below the floor (kh.floor); 0: none */
	unsigned gone_day;  /* first evening that leaves no alkalinity; 0: none */
	struct ts_titration_night nights[TS_TITRATION_NIGHTS_MOST];
};

/* How the keeper of ts_titration_nights decides the dose. */
enum ts_titration_keeper {
	TS_KEEPER_SAME_DOSE, /* each evening what the first evening took */
	TS_KEEPER_BY_TEST    /* each evening what it takes to read the wanted pH */
};

/*
 * The water of a profile against strong acid (`dose_meq_l` below 0: base), `count` steps (1 or
 * more), the first with nothing dosed; at temp_c, 0..50 C (NAN: 25). `tank`: the readings are a
 * running tank's own. Stops where the equations end; `*ret_count` says how many of `ret_steps` were
 * filled. `practice` NULL: the table's own values. TS_NO: no KH, or hardly any (below 0.5 dH).
 * TS_BAD_INPUT: outside what the equations hold for. ret_ are then untouched; so also below.
 */
TS_API TS_MUST_USE enum ts_status ts_titration_steps(const struct ts_profile *profile,
	double temp_c, bool tank, double dose_meq_l, size_t count,
	const struct ts_practice *practice, struct ts_titration_step *ret_steps, size_t *ret_count);

/* Evening after evening towards a pH (4..9.5). TS_NO also where the aired tank stands there. */
TS_API TS_MUST_USE enum ts_status ts_titration_evenings(const struct ts_profile *profile,
	double temp_c, bool tank, double towards_ph, enum ts_titration_keeper keeper,
	const struct ts_practice *practice, struct ts_titration_nights *ret);

/*
 * The tank of a plan over `days` days; `ret_days` has days + 1 places, the first is now. `today`:
 * days since 1970-01-01, for a supply with dated readings. `nitrogen_mg_day` reaches the water
 * (ts_load_of()), of which plants take `plant_share` (0..1); evaporation is topped up from the
 * supply. `*ret_gone_day`: first day with KH below the floor, 0 none. TS_NO: no KH is known.
 */
TS_API TS_MUST_USE enum ts_status ts_drift_days(const struct ts_plan *plan, long today,
	double nitrogen_mg_day, double plant_share, unsigned days,
	const struct ts_practice *practice, struct ts_drift_day *ret_days, unsigned *ret_gone_day);

#ifdef __cplusplus
}
#endif

#endif
