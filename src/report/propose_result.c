/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of propose's result.
 */
#include "report/propose_result.h"

/* clang-format off */
#define S struct ts_propose_line_result
static const struct ts_result_field line_fields[] = {
	TS_R_ROW_TEXT(S, "species", species, "accepted name"),
	TS_R_ROW_TEXT(S, "id", id, "name of its record"),
	TS_R_ROW_TEXT(S, "common", common, "first English name"),
	TS_R_ROW_COUNT(S, "count", count, "how many in all"),
	TS_R_ROW_COUNT(S, "males", males, "of these surely males"),
	TS_R_ROW_COUNT(S, "females", females, "of these surely females"),
	TS_R_ROW_COUNT(S, "there", there, "of these in the tank already"),
	TS_R_ROW_BOOL(S, "later", later, "not before the tank has run for eight weeks"),
	TS_R_ROW_NUMBER(S, "fit", fit, 3, "how well the water suits it, 0..1; for sorting"),
	TS_R_ROW_TEXT(S, "role", role, "centre, shoal, bottom or top; null: beside the others"),
	TS_R_ROW_TEXT(S, "says", says, "the same in words"),
	TS_R_ROW_TEXT(S, "needs", needs, "what it needs and what is to be known of it"),
};
static const struct ts_result_shape line_shape = TS_R_SHAPE("line", line_fields, S);
#undef S
#define S struct ts_propose_shared_result
static const struct ts_result_field shared_fields[] = {
	TS_R_ROW_TEXT(S, "unit", unit, "of low and high"),
	TS_R_ROW_NUMBER(S, "low", low, 2, "lowest that all share; null: open"),
	TS_R_ROW_TEXT(S, "low_set_by", low_set_by, "species that sets it"),
	TS_R_ROW_NUMBER(S, "high", high, 2, "highest that all share; null: open"),
	TS_R_ROW_TEXT(S, "high_set_by", high_set_by, "species that sets it"),
	TS_R_ROW_BOOL(S, "comfortable", comfortable, "what all prefer; false: what all tolerate"),
	TS_R_ROW_TEXT(S, "says", says, "the same in words"),
};
static const struct ts_result_shape shared_shape = TS_R_SHAPE("shared", shared_fields, S);
#undef S
#define S struct ts_propose_shared_water_result
#define R const struct ts_propose_shared_result
static const struct ts_result_field shared_water_fields[] = {
	TS_R_ROW_MAYBE(S, "gh", gh, R, &shared_shape, "general hardness"),
	TS_R_ROW_MAYBE(S, "kh", kh, R, &shared_shape, "carbonate hardness"),
	TS_R_ROW_MAYBE(S, "ph", ph, R, &shared_shape, "pH"),
	TS_R_ROW_MAYBE(S, "temp", temp, R, &shared_shape, "temperature"),
	TS_R_ROW_MAYBE(S, "salinity", salinity, R, &shared_shape, "salinity"),
};
static const struct ts_result_shape shared_water_shape = TS_R_SHAPE("shared water", shared_water_fields, S);
#undef R
#undef S
#define S struct ts_propose_limiting_result
static const struct ts_result_field limiting_fields[] = {
	TS_R_ROW_TEXT(S, "species", species, "the animal that the water serves worst"),
	TS_R_ROW_TEXT(S, "name", name, "by which parameter; null: nothing limits"),
	TS_R_ROW_TEXT(S, "says", says, "the same in words"),
};
static const struct ts_result_shape limiting_shape = TS_R_SHAPE("limiting", limiting_fields, S);
#undef S
#define S struct ts_propose_load_result
static const struct ts_result_field load_fields[] = {
	TS_R_ROW_NUMBER(S, "nitrogen_mg_day", nitrogen_mg_day, 1, "nitrogen that the animals give to the water"),
	TS_R_ROW_NUMBER(S, "nitrogen_most_mg_day", nitrogen_most_mg_day, 1, "the most that a proposal gives in this tank"),
	TS_R_ROW_NUMBER(S, "no3_rise_mg_l_week", no3_rise_mg_l_week, 1, "rise of nitrate in a week without a change"),
	TS_R_ROW_NUMBER(S, "no3_steady_mg_l", no3_steady_mg_l, 0, "nitrate before a change, once settled; null: without end, no water is changed"),
	TS_R_ROW_NUMBER(S, "kh_used_dh_week", kh_used_dh_week, 2, "KH used up in a week"),
	TS_R_ROW_NUMBER(S, "buffer_days", buffer_days, 0, "days to the floor of KH without a change; null: KH not known"),
	TS_R_ROW_TEXT(S, "waste_says", waste_says, "the nitrate in words"),
	TS_R_ROW_TEXT(S, "buffer_says", buffer_says, "the buffer in words"),
};
static const struct ts_result_shape load_shape = TS_R_SHAPE("load", load_fields, S);
#undef S
#define S struct ts_propose_purchase_result
static const struct ts_result_field purchase_fields[] = {
	TS_R_ROW_NUMBER(S, "day", day, 0, "from the first day on"),
	TS_R_ROW_TEXT(S, "says", says, "what is done then"),
};
static const struct ts_result_shape purchase_shape = TS_R_SHAPE("day", purchase_fields, S);
#undef S
#define S struct ts_propose_community_result
#define P struct ts_propose_purchase_result
static const struct ts_result_field community_fields[] = {
	TS_R_ROW_COUNT(S, "place", place, "1 = best"),
	TS_R_ROW_NUMBER(S, "objective", objective, 0, "points of the integer model"),
	TS_R_ROW_BOOL(S, "proven", proven, "no list has more points"),
	TS_R_ROW_NUMBER(S, "gap", gap, 0, "points that a better list could have more at the most"),
	TS_R_ROW_BOOL(S, "equal_to_first", equal_to_first, "too close to the first to prefer it"),
	TS_R_ROW_LIST(S, "stock", stock, stock_count, struct ts_propose_line_result, &line_shape, "the animals"),
	TS_R_ROW_SUB(S, "shared_water", shared, struct ts_propose_shared_water_result, &shared_water_shape, "the water that all share, by parameter"),
	TS_R_ROW_SUB(S, "limiting", limiting, struct ts_propose_limiting_result, &limiting_shape, "what decides"),
	TS_R_ROW_SUB(S, "load", load, struct ts_propose_load_result, &load_shape, "what the animals make of the water"),
	TS_R_ROW_TEXTS(S, "order", order, "species in the order of purchase"),
	TS_R_ROW_TEXT(S, "heading", heading, "which list, and how sure it is the best"),
	TS_R_ROW_TEXT(S, "why", why, "why this list, in a sentence"),
	TS_R_ROW_TEXTS(S, "conditions", conditions, "on what it works; none: it works without"),
	TS_R_ROW_TEXT(S, "purchases_say", purchases_say, "when the purchases are"),
	TS_R_ROW_LIST(S, "purchases", purchases, purchase_count, P, &purchase_shape, "what is bought when"),
};
#undef P
static const struct ts_result_shape community_shape = TS_R_SHAPE("community", community_fields, S);
#undef S
#define S struct ts_propose_left_out_result
static const struct ts_result_field left_out_fields[] = {
	TS_R_ROW_TEXT(S, "species", species, "accepted name"),
	TS_R_ROW_TEXT(S, "reason", reason, "water, unsure, wish, not-hardy, theme, caution, asks-much, edge, seldom, room, nitrate, buffer, load, resident"),
	TS_R_ROW_TEXT(S, "rule", rule, "code of the rule; null: none"),
	TS_R_ROW_TEXT(S, "says", says, "the reason in words"),
};
static const struct ts_result_shape left_out_shape = TS_R_SHAPE("left out", left_out_fields, S);
#undef S
#define S struct ts_propose_waiting_result
static const struct ts_result_field waiting_fields[] = {
	TS_R_ROW_TEXT(S, "name", name, "the parameter to measure"),
	TS_R_ROW_COUNT(S, "species", species, "how many species wait for it"),
	TS_R_ROW_TEXTS(S, "animals", animals, "some of them, sold most first"),
	TS_R_ROW_TEXT(S, "says", says, "the same in words, with the measurement"),
};
static const struct ts_result_shape waiting_shape = TS_R_SHAPE("waiting", waiting_fields, S);
#undef S
#define S struct ts_propose_must_result
static const struct ts_result_field must_fields[] = {
	TS_R_ROW_TEXT(S, "species", species, "accepted name"),
	TS_R_ROW_TEXT(S, "says", says, "why it cannot be had"),
	TS_R_ROW_TEXT(S, "possible", possible, "the smallest thing that would make it possible; null: none was found"),
};
static const struct ts_result_shape must_shape = TS_R_SHAPE("asked for", must_fields, S);
#undef S
#define S struct ts_propose_result
#define P const struct ts_propose_purchase_result
static const struct ts_result_field propose_fields[] = {
	TS_R_ROW_TEXT(S, "headline", headline, "the answer in one sentence"),
	TS_R_ROW_TEXT(S, "deciding", deciding, "why the first list; null: there is none, or not yet"),
	TS_R_ROW_TEXT(S, "water", water_says, "the water in a line"),
	TS_R_ROW_TEXT(S, "animals", animals_say, "how the animals are kept"),
	TS_R_ROW_TEXT(S, "tank", tank_says, "the tank as it was taken"),
	TS_R_ROW_TEXT(S, "chosen_from", chosen_says, "how many could live here"),
	TS_R_ROW_TEXTS(S, "held", held, "why nothing is bought now"),
	TS_R_ROW_LIST(S, "asked_for", musts, must_count, struct ts_propose_must_result, &must_shape, "what was asked for and cannot be had"),
	TS_R_ROW_LIST(S, "maturing", maturing, maturing_count, P, &purchase_shape, "the days before any animal"),
	TS_R_ROW_TEXT(S, "maturing_heading", maturing_heading, "for whom they are"),
	TS_R_ROW_TEXT(S, "maturing_says", maturing_says, "what follows them"),
	TS_R_ROW_TEXT(S, "needs", needs, "what has to be there and be done for the first list; null: there is none"),
	TS_R_ROW_TEXT(S, "maturing_short", maturing_short, "all of that in a line; null: the filter is mature"),
	TS_R_ROW_TEXT(S, "made_up", made_up_says, "what the lists lack that a tank like this should have; null: nothing"),
	TS_R_ROW_TEXT(S, "fewer", fewer_says, "why there are fewer lists than were asked for; null: there are not"),
	TS_R_ROW_TEXT(S, "why_heading", why_heading, "the animal that --why asked about"),
	TS_R_ROW_TEXT(S, "why", why_says, "why it is in no list"),
	TS_R_ROW_TEXTS(S, "notes", notes, "what else is to be said"),
	TS_R_ROW_TEXTS(S, "water_notes", water_notes, "what is to be said of the water"),
	TS_R_ROW_TEXTS(S, "closing", closing, "what no list knows"),
	TS_R_ROW_BOOL(S, "on_conditions", conditions, "no list works without a condition"),
	TS_R_ROW_COUNT(S, "species_count", species_count, "species of the catalogue"),
	TS_R_ROW_BOOL(S, "filter_mature", mature, "false: nothing is bought yet"),
	TS_R_ROW_NUMBER(S, "volume_l", volume_l, 1, "litres of water"),
	TS_R_ROW_NUMBER(S, "floor_m2", floor_m2, 3, "floor of the tank"),
	TS_R_ROW_BOOL(S, "thin", thin, "GH was not read: the lists are of animals that bear any usual tap"),
	TS_R_ROW_COUNT(S, "species_most", species_most, "species that one list may hold"),
	TS_R_ROW_COUNT(S, "candidates", candidates, "species that the search chose from"),
	TS_R_ROW_LIST(S, "communities", communities, community_count, struct ts_propose_community_result, &community_shape, "the lists, best first"),
	TS_R_ROW_LIST(S, "waiting", waiting, waiting_count, struct ts_propose_waiting_result, &waiting_shape, "measurements that species wait for"),
	TS_R_ROW_LIST(S, "left_out", left_out, left_out_count, struct ts_propose_left_out_result, &left_out_shape, "every species that was no candidate"),
};
const struct ts_result_shape ts_result_propose = TS_R_SHAPE("propose", propose_fields, S);
#undef S
#undef P
/* clang-format on */
