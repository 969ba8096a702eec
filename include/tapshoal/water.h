/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Waters and their readings: plain structs, one canonical unit per quantity. A value that was not
 * measured is "not given" (see ts_given), never a zero.
 */
#ifndef TAPSHOAL_WATER_H
#define TAPSHOAL_WATER_H

#include <math.h>
#include <tapshoal/base.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Two ends, both inclusive; an open end is -INFINITY or INFINITY; low NAN = not given. */
struct ts_range {
	double low, high;
};

enum ts_measure_kind {
	TS_MEASURE_NONE,  /* not given: the zeroed struct */
	TS_MEASURE_VALUE, /* one figure; its doubt comes from the method */
	TS_MEASURE_DOUBT, /* "14 +- 1": low and high as written */
	TS_MEASURE_RANGE, /* "12..16" */
	TS_MEASURE_BELOW, /* "<3": low is the least the quantity can be */
	TS_MEASURE_ABOVE  /* ">14": high is INFINITY */
};

/* A measured value as it was written, in the canonical unit of its quantity. */
struct ts_measure {
	double value, low, high;
	enum ts_measure_kind kind;
};

/* How a reading was taken; decides its doubt. */
enum ts_method {
	TS_METHOD_UNKNOWN,
	TS_METHOD_STRIP,
	TS_METHOD_DROPS,
	TS_METHOD_METER,
	TS_METHOD_LABORATORY,
	TS_METHOD_UTILITY_REPORT
};

/* One set of values measured at one time. Keys, units and texts of help: src/model/shapes.c. */
struct ts_reading {
	const char *date, *time;
	const char *season; /* the part of the year it stands for, in a word */
	struct ts_measure ph, gh_dh, kh_dh, temp_c, conductivity_us_cm, tds_mg_l;
	struct ts_measure ca_mg_l, mg_mg_l, na_mg_l, k_mg_l, cl_mg_l, so4_mg_l, alkalinity_meq_l;
	struct ts_measure specific_gravity; /* density over pure water's of the same warmth */
	struct ts_measure salinity_g_l, no3_mg_l, no3_n_mg_l, no2_mg_l, no2_n_mg_l, tan_mg_l;
	struct ts_measure phosphate_mg_l, cu_mg_l, chlorine_mg_l, stood_h;
	struct ts_measure oxygen_mg_l, oxygen_percent; /* percent of what air keeps in it */
	int method;                                    /* enum ts_method */
};

enum ts_water_kind {
	TS_WATER_TAP,
	TS_WATER_WELL,
	TS_WATER_RAIN,
	TS_WATER_REVERSE_OSMOSIS,
	TS_WATER_MIXED,
	TS_WATER_TANK
};

enum ts_disinfectant {
	TS_DISINFECTANT_UNKNOWN,
	TS_DISINFECTANT_NONE,
	TS_DISINFECTANT_CHLORINE,
	TS_DISINFECTANT_CHLORAMINE
};

/* A water file. All texts and readings belong to the arena it was loaded into. */
struct ts_water {
	const char *name;
	const char *kept; /* day on which it was remembered, YYYY-MM-DD */
	int kind;         /* enum ts_water_kind */
	bool softened;
	int disinfectant; /* enum ts_disinfectant */
	struct ts_reading *readings;
	size_t reading_count;
};

/* The words of these enums as files and answers have them, in their order; NULL behind the last. */
TS_API extern const char *const ts_words_method[];
TS_API extern const char *const ts_words_water_kind[];

#ifdef __cplusplus
}
#endif

#endif
