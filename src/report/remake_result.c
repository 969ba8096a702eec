/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of remake. A further member is a further row.
 */
#include "report/remake_result.h"

#include "report/stage_result.h"
#include "words/remake.h"

static const char *const words_unit[] = {"g", "L", NULL};

/* clang-format off */
#define W struct ts_made_water
static const struct ts_result_field water_fields[] = {
	TS_R_ROW_NUMBER(W, "gh_dh", gh_dh, 2, "general hardness"),
	TS_R_ROW_NUMBER(W, "kh_dh", kh_dh, 2, "carbonate hardness"),
	TS_R_ROW_NUMBER(W, "ph_tank_low", ph_low, 1, "least pH of a tank of it"),
	TS_R_ROW_NUMBER(W, "ph_tank", ph, 1, "usual pH of a tank of it"),
	TS_R_ROW_NUMBER(W, "ph_tank_high", ph_high, 1, "greatest pH of a tank of it"),
	TS_R_ROW_NUMBER(W, "conductivity_us_cm", conductivity_us_cm, 0, "at 25 C, computed"),
	TS_R_ROW_NUMBER(W, "ca_mg_l", ca_mg_l, 1, "calcium"),
	TS_R_ROW_NUMBER(W, "mg_mg_l", mg_mg_l, 1, "magnesium"),
	TS_R_ROW_NUMBER(W, "na_mg_l", na_mg_l, 1, "sodium"),
	TS_R_ROW_NUMBER(W, "k_mg_l", k_mg_l, 1, "potassium"),
	TS_R_ROW_NUMBER(W, "cl_mg_l", cl_mg_l, 1, "chloride"),
	TS_R_ROW_NUMBER(W, "so4_mg_l", so4_mg_l, 1, "sulphate"),
	TS_R_ROW_NUMBER(W, "ca_to_mg", ca_to_mg, 1, "calcium to one of magnesium, by mass"),
};
#undef W
static const struct ts_result_shape shape_water = TS_R_SHAPE("made water", water_fields, struct ts_made_water);

#define P struct ts_recipe_line
static const struct ts_result_field part_fields[] = {
	TS_R_ROW_TEXT(P, "ingredient", ingredient, "formula, mineral-free, or supply"),
	TS_R_ROW_TEXT(P, "says", says, "as people call it"),
	TS_R_ROW_NUMBER(P, "amount", amount, 2, "for the first fill"),
	TS_R_ROW_NUMBER(P, "amount_change", amount_change, 2, "for the new water of each change"),
	TS_R_ROW_WORD(P, "unit", unit, words_unit, "of both amounts"),
};
#undef P
static const struct ts_result_shape shape_part = TS_R_SHAPE("recipe line", part_fields, struct ts_recipe_line);

#define G struct ts_group_line
static const struct ts_result_field group_fields[] = {
	TS_R_ROW_TEXT(G, "name", name, "A or B"),
	TS_R_ROW_TEXTS(G, "species", species, "accepted names"),
	TS_R_ROW_TEXT(G, "says", says, "their water"),
};
#undef G
static const struct ts_result_shape shape_group = TS_R_SHAPE("group", group_fields, struct ts_group_line);

#define R struct ts_remake_result
static const struct ts_result_field remake_fields[] = {
	TS_R_ROW_WORD(R, "verdict", verdict, ts_remake_verdict_words, "what to do, in a word"),
	TS_R_ROW_TEXT(R, "says", says, "what to do"),
	TS_R_ROW_TEXT(R, "because", because, "the number that decides"),
	TS_R_ROW_TEXT(R, "slow", slow, "lime that raises KH by itself in weeks, where that is enough"),
	TS_R_ROW_TEXT(R, "bare", bare, "the water at hand holds hardly any minerals"),
	TS_R_ROW_TEXTS(R, "wished_as_it_is", wished_as_it_is, "of the wished those that bear the water as it is"),
	TS_R_ROW_TEXTS(R, "as_it_is_says", as_it_is_says, "both in sentences"),
	TS_R_ROW_TEXTS(R, "suits_as_it_is", suits_as_it_is, "others that need no work, best and most alike in size first, at most five"),
	TS_R_ROW_NUMBER(R, "volume_l", volume_l, 1, "that the amounts are for"),
	TS_R_ROW_NUMBER(R, "change_percent", change_percent, 0, "of each later change"),
	TS_R_ROW_TEXT(R, "treatment", treatment, "of all new water"),
	TS_R_ROW_LIST(R, "recipe", recipe, recipe_count, struct ts_recipe_line, &shape_part, "what goes in"),
	TS_R_ROW_MAYBE(R, "result", result, const struct ts_made_water, &shape_water, "the water it makes"),
	TS_R_ROW_TEXTS(R, "notes", notes, "lime, peat, the other end of the season"),
	TS_R_ROW_LIST(R, "stages", stages, stage_count, struct ts_stage_line, &ts_result_stage, "none for an empty tank"),
	TS_R_ROW_TEXT(R, "stages_none", stages_none, "why a recipe has no stages"),
	TS_R_ROW_TEXT(R, "stages_say", stages_say, "how to read the stages; null: there are none"),
	TS_R_ROW_TEXT(R, "routine", routine, "afterwards"),
	TS_R_ROW_LIST(R, "groups", groups, group_count, struct ts_group_line, &shape_group, "where residents and wish cannot share"),
	TS_R_ROW_TEXTS(R, "cautions", cautions, "each once"),
};
#undef R
const struct ts_result_shape ts_result_remake = TS_R_SHAPE("remake", remake_fields, struct ts_remake_result);

/* clang-format on */
