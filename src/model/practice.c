/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of the practice table. Grades: "published" with the work; "common practice, no source";
 * "estimate from memory".
 */
#include "model/practice.h"

#define COMMON "common practice, no source"
#define ESTIMATE "estimate from memory"
#define LIMITING "Stuber, Gebhart & Maughan 1982, FWS/OBS-82/10.8: the switch to the minimum at 0.4"

/* clang-format off */
const struct ts_practice_row ts_practice_rows[TS_P__COUNT] = {
	[TS_P_DOUBT_GH_PUBLISHED] = {"doubt.gh.published", "dH", 1, "half-width of a published hardness limit", ESTIMATE},
	[TS_P_DOUBT_GH_PRACTICE] = {"doubt.gh.practice", "dH", 2, "half-width of a hardness limit from practice", ESTIMATE},
	[TS_P_DOUBT_GH_MEMORY] = {"doubt.gh.memory", "dH", 3, "half-width of a hardness limit from memory", ESTIMATE},
	[TS_P_DOUBT_PH_PUBLISHED] = {"doubt.ph.published", "", 0.2, "half-width of a published pH limit", ESTIMATE},
	[TS_P_DOUBT_PH_PRACTICE] = {"doubt.ph.practice", "", 0.3, "half-width of a pH limit from practice", ESTIMATE},
	[TS_P_DOUBT_PH_MEMORY] = {"doubt.ph.memory", "", 0.5, "half-width of a pH limit from memory", ESTIMATE},
	[TS_P_DOUBT_TEMP_PUBLISHED] = {"doubt.temperature.published", "C", 1, "half-width of a published temperature limit", ESTIMATE},
	[TS_P_DOUBT_TEMP_PRACTICE] = {"doubt.temperature.practice", "C", 1, "half-width of a temperature limit from practice", ESTIMATE},
	[TS_P_DOUBT_TEMP_MEMORY] = {"doubt.temperature.memory", "C", 2, "half-width of a temperature limit from memory", ESTIMATE},
	[TS_P_DOUBT_SALINITY] = {"doubt.salinity", "g/L", 0.5, "half-width of a salinity limit", ESTIMATE},
	[TS_P_SHARE_EXCLUDES] = {"share.excludes", "", 0.9, "part of the reading's interval outside that excludes", ESTIMATE},
	[TS_P_SHARE_UNSURE] = {"share.unsure", "", 0.1, "part of the reading's interval outside that makes unsure", ESTIMATE},
	[TS_P_MEMORY_MISS] = {"memory.miss", "doubts", 2, "a lone limit from memory excludes only when missed by this many doubts", ESTIMATE},
	[TS_P_PH_SLACK] = {"ph.slack", "", 0.8, "pH beyond tolerated that hardness in range makes up for, when choosing", COMMON},
	[TS_P_PH_FLOOR] = {"ph.floor", "", 5.5, "slack never reaches below", ESTIMATE},
	[TS_P_PH_FLOOR_BLACK] = {"ph.floor.black", "", 4.5, "slack never reaches below, for animals of black water", ESTIMATE},
	[TS_P_PH_CEILING] = {"ph.ceiling", "", 9, "slack never reaches above", "US EPA aquatic life criterion, pH 6.5-9.0"},
	[TS_P_SALT_FRESH] = {"salinity.fresh", "g/L", 0.5, "what fresh water holds at the most", COMMON},
	[TS_P_GH_OPEN_END] = {"gh.open-end", "dH", 40, "where a one-sided hardness reading is taken to end", ESTIMATE},
	[TS_P_WEIGHT_TEMP] = {"fit.temperature", "", 0.35, "weight of temperature", ESTIMATE},
	[TS_P_WEIGHT_MINERALS] = {"fit.minerals", "", 0.40, "weight of general hardness", ESTIMATE},
	[TS_P_WEIGHT_KH] = {"fit.kh", "", 0.15, "weight of carbonate hardness", ESTIMATE},
	[TS_P_WEIGHT_PH] = {"fit.ph", "", 0.10, "weight of pH", ESTIMATE},
	[TS_P_WEIGHT_HOME_KH] = {"fit.kh.home", "", 0.5, "share of the KH weight where only the kind of water gives the band", ESTIMATE},
	[TS_P_LIMIT_FULL] = {"fit.limit", "", 0.4, "at and below this the lowest suitability alone counts", LIMITING},
	[TS_P_LIMIT_SPAN] = {"fit.limit.span", "", 0.4, "over this span the mean takes over, without a jump", ESTIMATE},
	[TS_P_KH_WARN] = {"kh.warn", "dH", 4, "below this the buffer is short", COMMON},
	[TS_P_KH_FLOOR] = {"kh.floor", "dH", 1.1, "below this the pH is no longer held: 20 mg/L as CaCO3", "US EPA Gold Book 440/5-86-001: alkalinity for aquatic life, as carried in Oregon Table 30"},
	[TS_P_CO2_CONCERN] = {"co2.concern", "mg/L", 20, "from here dissolved CO2 troubles fish", "Hargreaves & Brunson 1996, SRAC 468, as cited in clinical texts"},
	[TS_P_CO2_DANGER] = {"co2.danger", "mg/L", 30, "from here fish gasp", COMMON},
	[TS_P_KH_ACT] = {"kh.act", "dH", 2, "below this the buffer needs doing something about", COMMON},
	[TS_P_NITRATE_CONCERN] = {"nitrate.concern", "mg/L NO3", 50, "more than this is a concern for fish in the long run", COMMON},
	[TS_P_FILTER_FULL_PH] = {"nitrification.full.ph", "", 6.5, "from here nitrifying bacteria of a settled filter keep up", COMMON},
	[TS_P_FILTER_NONE_PH] = {"nitrification.none.ph", "", 5.5, "from here down they are taken to do nothing", ESTIMATE},
	[TS_P_CHANGE_USUAL] = {"change.usual", "%", 30, "share of the water changed where no routine is given", COMMON},
	[TS_P_CHANGE_USUAL_DAYS] = {"change.usual.days", "days", 7, "from one such change to the next", COMMON},
	[TS_P_EVAPORATION_COVERED] = {"evaporation.covered", "%/week", 3, "water lost from a covered tank", ESTIMATE},
	[TS_P_EVAPORATION_OPEN] = {"evaporation.open", "%/week", 8, "water lost from an open tank", ESTIMATE},
	[TS_P_LIME_RATE] = {"lime.rate", "mmol/L/day", 0.05, "what lime gravel dissolves far from its balance: balance takes weeks", ESTIMATE},
	[TS_P_SOIL_SHARE] = {"soil.share", "1/day", 0.5, "share of the alkalinity that fresh active soil takes up in a day", ESTIMATE},
	[TS_P_SOIL_CAPACITY] = {"soil.capacity", "meq/L", 20, "what active soil takes up before it is spent, by litre of tank: months", ESTIMATE},
	[TS_P_SWING_PLAIN] = {"ph.swing.plain", "", 0.2, "pH between night and day in a tank without plants", ESTIMATE},
	[TS_P_SWING_PLANTED] = {"ph.swing.planted", "", 0.5, "the same with plants", ESTIMATE},
	[TS_P_SWING_CO2] = {"ph.swing.co2", "", 1, "the same where CO2 is injected", ESTIMATE},
	[TS_P_LIMED_PH] = {"unusual.limed.ph", "", 8.5, "above this with little KH: limed water", COMMON},
	[TS_P_LIMED_KH] = {"unusual.limed.kh", "dH", 2, "below this with a high pH: limed water", COMMON},
	[TS_P_GASSY_PH] = {"unusual.gassy.ph", "", 6.5, "below this with much KH: full of CO2", COMMON},
	[TS_P_GASSY_KH] = {"unusual.gassy.kh", "dH", 8, "above this with a low pH: full of CO2", COMMON},
	[TS_P_SOFTENED_GH] = {"softened.gh", "dH", 1, "below this with KH left: a softener is suspected", COMMON},
	[TS_P_SOFTENED_KH] = {"softened.kh", "dH", 3, "above this without GH: a softener is suspected", COMMON},
	[TS_P_COPPER_INVERTEBRATES] = {"copper.invertebrates", "mg/L", 0.008, "from here copper harms shrimps, crayfish, crabs and snails", "published, figure recalled, work not re-checked"},
	[TS_P_COPPER_FISH] = {"copper.fish", "mg/L", 0.02, "from here copper harms fish in soft water", ESTIMATE},
	[TS_P_TAN_DANGER] = {"ammonia.any", "mg/L N", 0.25, "from here no animal is called suited: the filter is not coping", COMMON},
	[TS_P_NITRITE_DANGER] = {"nitrite.any", "mg/L NO2", 0.16, "0.05 mg/L as nitrogen, the limit where little chloride protects", ESTIMATE},
	[TS_P_NITRATE_DRINKING] = {"nitrate.drinking", "mg/L NO3", 50, "above this it is a drinking-water matter", "WHO guideline for drinking-water, 50 mg/L (from memory)"},
	[TS_P_CHLORINE_DANGER] = {"chlorine.any", "mg/L", 0.011, "US EPA chronic criterion for freshwater life", "US EPA 1984 (from memory)"},
	[TS_P_RECIPE_NA_SOFT] = {"recipe.sodium.soft", "mg/L", 20, "sodium in a recipe for soft-water animals", ESTIMATE},
	[TS_P_RECIPE_NA_GENERAL] = {"recipe.sodium.general", "mg/L", 60, "sodium in a recipe for most animals", ESTIMATE},
	[TS_P_RECIPE_NA_LAKE] = {"recipe.sodium.lake", "mg/L", 200, "sodium in a recipe for animals of the African lakes", ESTIMATE},
	[TS_P_RECIPE_K_SOFT] = {"recipe.potassium.soft", "mg/L", 10, "potassium in a recipe for soft-water animals", ESTIMATE},
	[TS_P_RECIPE_K_GENERAL] = {"recipe.potassium.general", "mg/L", 20, "potassium in a recipe for most animals", ESTIMATE},
	[TS_P_RECIPE_K_LAKE] = {"recipe.potassium.lake", "mg/L", 40, "potassium in a recipe for animals of the African lakes", ESTIMATE},
	[TS_P_RECIPE_CL_SOFT] = {"recipe.chloride.soft", "mg/L", 50, "chloride in a recipe for soft-water animals", ESTIMATE},
	[TS_P_RECIPE_CL_GENERAL] = {"recipe.chloride.general", "mg/L", 150, "chloride in a recipe for most animals", ESTIMATE},
	[TS_P_RECIPE_CL_LAKE] = {"recipe.chloride.lake", "mg/L", 250, "chloride in a recipe for animals of the African lakes", ESTIMATE},
	[TS_P_RECIPE_CA_MG_LOW] = {"recipe.ca-mg.low", "g/g", 2, "least calcium for each magnesium, by mass", COMMON},
	[TS_P_RECIPE_CA_MG_LAKE] = {"recipe.ca-mg.lake", "g/g", 1, "the same for animals of the African lakes, whose own water may have more magnesium", COMMON},
	[TS_P_RECIPE_CA_MG_HIGH] = {"recipe.ca-mg.high", "g/g", 5, "most calcium for each magnesium, by mass", COMMON},
	[TS_P_STAGE_DAYS] = {"stage.days", "days", 2, "least time between two stages with animals in the tank", COMMON},
	[TS_P_STAGE_STOP_DAYS] = {"stage.stop-days", "days", 7, "wait and test after every third stage and at half way", COMMON},
	[TS_P_CHANGE_MOST] = {"change.most", "%", 25, "water changed at once with animals in the tank, at the most", COMMON},
	[TS_P_CHANGE_MOST_HARDY] = {"change.most.hardy", "%", 33, "the same where all of them take change well", COMMON},
	[TS_P_STEP_DELICATE] = {"step.delicate", "", 0.5, "share of a safe step for animals that take change badly", COMMON},
	[TS_P_STEP_HARDY] = {"step.hardy", "", 1.5, "the same for animals that take change well", COMMON},
	[TS_P_NH3_CONFLICT] = {"nh3.conflict", "mg/L N", 0.02, "un-ionised ammonia that harms", "published, figure recalled, work not re-checked"},
	[TS_P_NH3_NOW] = {"nh3.now", "mg/L N", 0.05, "un-ionised ammonia that is a danger now", "published, figure recalled, work not re-checked"},
	[TS_P_TAN_AGE] = {"ammonia.age", "days", 3, "an ammonia reading older than this does not open the ammonia gate", COMMON},
	[TS_P_TANK_NET] = {"tank.net", "", 0.85, "share of the inside box that is water", COMMON},
	[TS_P_TANK_NET_ROCKS] = {"tank.net.rocks", "", 0.75, "the same in a tank full of rocks", COMMON},
};
/* clang-format on */

void ts_practice_defaults(struct ts_practice *ret)
{
	for (int i = 0; i < TS_P__COUNT; i++)
		ret->value[i] = ts_practice_rows[i].value;
}
