/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Tanks and plans as people write them: plain structs, one canonical unit per quantity, and the
 * loading of their files. What follows from them (who can live together, load) is stock.h.
 */
#ifndef TAPSHOAL_PLAN_H
#define TAPSHOAL_PLAN_H

#include <tapshoal/water.h>

#ifdef __cplusplus
extern "C" {
#endif

/* A word or a figure: `value` > 0 = the figure in its canonical unit, else the word counts. */
struct ts_choice {
	int word;
	double value;
};

/* So much every so many days; `days` 0 = not given. */
struct ts_every {
	double amount, days;
};

/* In every list below the word 0 means "not given". */
enum ts_fill { TS_FILL_ORDINARY, TS_FILL_ROCKS };
enum ts_feeding { TS_FEEDING_UNKNOWN, TS_FEEDING_LIGHT, TS_FEEDING_ORDINARY, TS_FEEDING_HEAVY };
enum ts_plants { TS_PLANTS_UNKNOWN, TS_PLANTS_NONE, TS_PLANTS_SOME, TS_PLANTS_DENSE };
enum ts_flow { TS_FLOW_UNKNOWN, TS_FLOW_STILL, TS_FLOW_GENTLE, TS_FLOW_BRISK };
enum ts_light { TS_LIGHT_ANY, TS_LIGHT_SHADE, TS_LIGHT_BRIGHT };
enum ts_cover { TS_COVER_UNKNOWN, TS_COVER_NO, TS_COVER_YES };
enum ts_co2 { TS_CO2_NONE, TS_CO2_INJECTED };
enum ts_substrate {
	TS_SUBSTRATE_UNKNOWN,
	TS_SUBSTRATE_INERT,
	TS_SUBSTRATE_SAND,
	TS_SUBSTRATE_ACTIVE,
	TS_SUBSTRATE_ARAGONITE,
	TS_SUBSTRATE_LIMESTONE,
	TS_SUBSTRATE_PEAT,
	TS_SUBSTRATE_GRAVEL,
	TS_SUBSTRATE_COARSE_GRAVEL,
	TS_SUBSTRATE_BARE
};
enum ts_water_level { TS_WATER_LEVEL_UNKNOWN, TS_WATER_LEVEL_FULL, TS_WATER_LEVEL_HALF };
/* What replaces evaporated water: the supply, or water without minerals. */
enum ts_top_up { TS_TOP_UP_UNKNOWN, TS_TOP_UP_SUPPLY, TS_TOP_UP_PURE };
enum ts_filter_state {
	TS_FILTER_UNKNOWN,
	TS_FILTER_MATURE,
	TS_FILTER_NEW,
	TS_FILTER_NONE,  /* there is none */
	TS_FILTER_STANDS /* it is there, and does not run */
};

enum ts_happened {
	TS_HAPPENED_REMARK,
	TS_HAPPENED_CHANGED,
	TS_HAPPENED_TOPPED_UP,
	TS_HAPPENED_FED,
	TS_HAPPENED_ADDED,
	TS_HAPPENED_DIED,
	TS_HAPPENED_MOVED,
	TS_HAPPENED_MEDICINE,
	TS_HAPPENED_CLEANED,
	TS_HAPPENED_POWER_CUT,
	TS_HAPPENED_AWAY,
	TS_HAPPENED_UNTREATED,     /* water went in that was not treated against chlorine */
	TS_HAPPENED_FILTER_WASHED, /* under the tap, or its media are new */
	TS_HAPPENED_POISONED,      /* soap, spray, metal or the like got in */
	TS_HAPPENED_OVERFED,
	TS_HAPPENED_HEATER_FAILED, /* it does not warm */
	TS_HAPPENED_HEATER_STUCK,  /* it does not stop */
	TS_HAPPENED_NEW_WATER      /* another supply from this day on */
};

/* Something that happened to a tank, as its log tells it; 0 = not given. */
struct ts_tank_event {
	const char *date, *time; /* as of a reading */
	int what;                /* enum ts_happened */
	double litres;           /* changed or topped up */
	double share_percent;    /* the same, of the water */
	int with;                /* enum ts_top_up: what was poured in */
	double count;            /* animals */
	double lasted_h;         /* a power cut, a holiday */
	const char *says;        /* in its keeper's words */
};

/* A tank file. Inside measures; 0 = not given. */
struct ts_tank {
	const char *name;
	const char *size; /* as written; NULL once its sides or litres are taken from it */
	double length_cm, width_cm, height_cm;
	struct ts_choice fill; /* enum ts_fill, or the per cent of the box that is water */
	double volume_l;       /* of the water itself, as measured */
	struct ts_measure temp_c;
	struct ts_every water_change; /* per cent of the water; 0 % every 7 days: none is made */
	/* As the file says it, where the log of events shows another one, which stands above. */
	struct ts_every change_said;
	struct ts_every evaporation; /* per cent of the water */
	struct ts_choice feeding;    /* enum ts_feeding, or g of dry feed a day */
	int plants, flow, light, cover, co2, substrate, water_level, filter, top_up;
	double filter_stopped_h; /* how long the filter stood, as in a power cut; 0 = it did not */
	const char *running_since; /* YYYY-MM-DD */
	struct ts_reading *readings;
	size_t reading_count;
	struct ts_tank_event *events;
	size_t event_count;
};

enum ts_sex { TS_SEX_UNKNOWN, TS_SEX_MALE, TS_SEX_FEMALE, TS_SEX_PAIRS };
enum ts_origin { TS_ORIGIN_UNKNOWN, TS_ORIGIN_FARMED, TS_ORIGIN_WILD };

/* Animals that one line of a stock list may hold. */
#define TS_COUNT_MOST 100000

/* One line of a stock list. */
struct ts_stock_line {
	const char *species; /* as written: any name that the catalogue knows */
	double count;        /* whole, from 1 */
	int sex;             /* enum ts_sex */
	const char *
		since; /* in the tank since YYYY-MM-DD; "": no day is known; NULL = not there yet */
	int origin;    /* enum ts_origin; unknown = farmed */
	double size_cm; /* how long they are now; 0 = not given */
};

enum ts_sign_kind {
	TS_SIGN_OTHER,
	TS_SIGN_GASPING,
	TS_SIGN_LISTLESS,
	TS_SIGN_CLAMPED_FINS,
	TS_SIGN_RUBBING,
	TS_SIGN_SPOTS,
	TS_SIGN_WOUNDS,
	TS_SIGN_WASTING,
	TS_SIGN_BLOATED,
	TS_SIGN_NOT_EATING,
	TS_SIGN_DARTING,
	TS_SIGN_TORN_FINS,
	TS_SIGN_HIDING,
	TS_SIGN_CHASED,
	TS_SIGN_FLOATING,
	TS_SIGN_DYING,
	TS_SIGN_ALGAE, /* from here on: of the tank, and no illness */
	TS_SIGN_CLOUDY_WATER,
	TS_SIGN_SMELL,
	TS_SIGN_SURFACE_FILM,
	TS_SIGN_TINTED_WATER
};
enum ts_onset { TS_ONSET_UNKNOWN, TS_ONSET_NOW, TS_ONSET_DAYS, TS_ONSET_WEEKS };
enum ts_breadth {
	TS_BREADTH_UNKNOWN,
	TS_BREADTH_ONE,
	TS_BREADTH_ONE_SPECIES,
	TS_BREADTH_ALL,
	TS_BREADTH_SOME
};
/* What was done just before a sign was seen: it tells what is suspect first. */
enum ts_after { TS_AFTER_UNKNOWN, TS_AFTER_WATER_CHANGE, TS_AFTER_POWER_CUT };

/* A sign of distress. */
struct ts_sign {
	int sign, onset, breadth;
	int after;           /* enum ts_after */
	const char *species; /* NULL = not said */
};

/* A plan file. */
struct ts_plan {
	const char *name;
	const char
		*water_file; /* as it was opened; NULL = it stands in the plan, or is not given */
	struct ts_water water;
	const char *change_water_file;
	struct ts_water change_water; /* what is poured in, where it is not `water` */
	const char *tank_file;
	struct ts_tank tank;
	struct ts_stock_line *stock;
	size_t stock_count;
	struct ts_sign *signs;
	size_t sign_count;
	const char *since;           /* of all lines that do not say it; NULL once they do */
	struct ts_reading *readings; /* of whichever water; none once tank or water has them */
	size_t reading_count;
	double away_h;            /* for how long nobody will be there; 0 = somebody is */
	struct ts_measure deaths; /* unexplained, within the last four weeks; NONE = not said */
};

/*
 * Read a tank or plan file into `*ret`; texts and lists are taken from `arena`. In a plan `water`,
 * `change_water` and `tank` are either written out or name a file, relative to the plan's folder.
 * Every content error, also of the files named, is a finding with its place; then TS_BAD_INPUT and
 * `*ret` untouched. TS_SYSTEM: the file itself cannot be read.
 */
TS_API TS_MUST_USE enum ts_status ts_tank_load(const char *file, struct ts_arena *arena,
	struct ts_tank *ret, struct ts_findings *findings);
TS_API TS_MUST_USE enum ts_status ts_plan_load(const char *file, struct ts_arena *arena,
	struct ts_plan *ret, struct ts_findings *findings);

/*
 * The practice values (docs/methods.md) with those of a file in their place, for the functions that
 * take some; `file` NULL: the table's own. They belong to `arena`. TS_BAD_INPUT: findings say what
 * is wrong; TS_SYSTEM: it cannot be read; `*ret` is untouched then.
 */
struct ts_practice;
TS_API TS_MUST_USE enum ts_status ts_practice_read(const char *file, struct ts_arena *arena,
	const struct ts_practice **ret, struct ts_findings *findings);

/* The words of these enums as files and answers have them, in their order; NULL behind the last. */
TS_API extern const char *const ts_words_fill[];
TS_API extern const char *const ts_words_fed[];
TS_API extern const char *const ts_words_plants[];
TS_API extern const char *const ts_words_co2[];
TS_API extern const char *const ts_words_substrate[];
TS_API extern const char *const ts_words_top_up[];
TS_API extern const char *const ts_words_filter[];
TS_API extern const char *const ts_words_sex[];
TS_API extern const char *const ts_words_happened[];
TS_API extern const char *const ts_words_sign[];
TS_API extern const char *const ts_words_onset[];
TS_API extern const char *const ts_words_breadth[];
TS_API extern const char *const ts_words_after[];

#ifdef __cplusplus
}
#endif

#endif
