/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The practice table: every figure that is a convention and not a measurement, with its unit, its
 * reason and how sure it is. Rules read the values from here, so that a user may override one.
 */
#ifndef TS_MODEL_PRACTICE_H
#define TS_MODEL_PRACTICE_H

enum ts_practice_id {
	TS_P_DOUBT_GH_PUBLISHED,
	TS_P_DOUBT_GH_PRACTICE,
	TS_P_DOUBT_GH_MEMORY,
	TS_P_DOUBT_PH_PUBLISHED,
	TS_P_DOUBT_PH_PRACTICE,
	TS_P_DOUBT_PH_MEMORY,
	TS_P_DOUBT_TEMP_PUBLISHED,
	TS_P_DOUBT_TEMP_PRACTICE,
	TS_P_DOUBT_TEMP_MEMORY,
	TS_P_DOUBT_SALINITY,
	TS_P_SHARE_EXCLUDES,
	TS_P_SHARE_UNSURE,
	TS_P_MEMORY_MISS,
	TS_P_PH_SLACK,
	TS_P_PH_FLOOR,
	TS_P_PH_FLOOR_BLACK,
	TS_P_PH_CEILING,
	TS_P_SALT_FRESH,
	TS_P_GH_OPEN_END,
	TS_P_WEIGHT_TEMP,
	TS_P_WEIGHT_MINERALS,
	TS_P_WEIGHT_KH,
	TS_P_WEIGHT_PH,
	TS_P_WEIGHT_HOME_KH,
	TS_P_LIMIT_FULL,
	TS_P_LIMIT_SPAN,
	TS_P_KH_WARN,
	TS_P_KH_FLOOR,
	TS_P_CO2_CONCERN,
	TS_P_CO2_DANGER,
	TS_P_KH_ACT,
	TS_P_NITRATE_CONCERN,
	TS_P_FILTER_FULL_PH,
	TS_P_FILTER_NONE_PH,
	TS_P_EVAPORATION_COVERED,
	TS_P_EVAPORATION_OPEN,
	TS_P_LIME_RATE,
	TS_P_SOIL_SHARE,
	TS_P_SOIL_CAPACITY,
	TS_P_SWING_PLAIN,
	TS_P_SWING_PLANTED,
	TS_P_SWING_CO2,
	TS_P_LIMED_PH,
	TS_P_LIMED_KH,
	TS_P_GASSY_PH,
	TS_P_GASSY_KH,
	TS_P_SOFTENED_GH,
	TS_P_SOFTENED_KH,
	TS_P_COPPER_INVERTEBRATES,
	TS_P_COPPER_FISH,
	TS_P_TAN_DANGER,
	TS_P_NITRITE_DANGER,
	TS_P_NITRATE_DRINKING,
	TS_P_CHLORINE_DANGER,
	TS_P__COUNT
};

struct ts_practice_row {
	const char *key, *unit;
	double value;
	const char *why, *grade;
};

extern const struct ts_practice_row ts_practice_rows[TS_P__COUNT];

struct ts_practice {
	double value[TS_P__COUNT];
};

/* The table's own values. */
void ts_practice_defaults(struct ts_practice *ret);

#endif
