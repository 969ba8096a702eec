/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of check.
 */
#include "report/check_result.h"

#include "report/learned_result.h"

/* clang-format off */
#define M struct ts_check_remedy
static const struct ts_result_field remedy_fields[] = {
	TS_R_ROW_WORD(M, "kind", kind, ts_check_remedy_words, "from the cheapest to the dearest"),
	TS_R_ROW_TEXT(M, "says", says, "what to do, in words"),
	TS_R_ROW_BOOL(M, "mends", mends, "it was tried: the fault is gone, and no other has come"),
	TS_R_ROW_TEXT(M, "species", species, "whose number, or who goes"),
	TS_R_ROW_NUMBER(M, "from", from, 0, "animals in the plan"),
	TS_R_ROW_NUMBER(M, "to", to, 0, "animals then; 0: none"),
	TS_R_ROW_NUMBER(M, "percent", percent, 0, "water changed; of dilute: share without minerals"),
	TS_R_ROW_NUMBER(M, "days", days, 1, "from one change to the next"),
	TS_R_ROW_NUMBER(M, "gh_dh", gh_dh, 1, "of the water then"),
	TS_R_ROW_NUMBER(M, "kh_dh", kh_dh, 1, "of the water then"),
	TS_R_ROW_NUMBER(M, "nahco3_g", nahco3_g, 0, "sodium bicarbonate into 100 L"),
	TS_R_ROW_NUMBER(M, "cacl2_g", cacl2_g, 0, "CaCl2.2H2O into 100 L"),
	TS_R_ROW_NUMBER(M, "mgso4_g", mgso4_g, 0, "MgSO4.7H2O into 100 L"),
	TS_R_ROW_NUMBER(M, "length_cm", length_cm, 0, "of the tank that it takes"),
	TS_R_ROW_NUMBER(M, "width_cm", width_cm, 0, "of that tank"),
	TS_R_ROW_NUMBER(M, "height_cm", height_cm, 0, "of that tank"),
	TS_R_ROW_NUMBER(M, "temp_c", temp_c, 1, "to keep the tank at"),
	TS_R_ROW_NUMBER(M, "step_percent", step_percent, 0, "of the water, changed every week where animals live"),
	TS_R_ROW_NUMBER(M, "step_count", step_count, 0, "such changes until the tank is there"),
};
#undef M
static const struct ts_result_shape remedy_shape = TS_R_SHAPE("remedy", remedy_fields, struct ts_check_remedy);

#define J struct ts_check_judgement
static const struct ts_result_field judgement_fields[] = {
	TS_R_ROW_WORD(J, "severity", severity, ts_check_severity_words, "conflict: will be harmed; concern: works on a condition; question: not known"),
	TS_R_ROW_TEXT(J, "code", code, "its name, which never changes meaning"),
	TS_R_ROW_WORD(J, "topic", topic, ts_check_topic_words, "what it is about"),
	TS_R_ROW_WORD(J, "rests_on", rests_on, ts_check_rests_words, "what its number is"),
	TS_R_ROW_TEXTS(J, "species", species, "who suffers, then from whom"),
	TS_R_ROW_TEXT(J, "parameter", parameter, "what its numbers are about"),
	TS_R_ROW_NUMBER(J, "ours", ours, 3, "our number"),
	TS_R_ROW_NUMBER(J, "its", its, 3, "the number that it is held against"),
	TS_R_ROW_NUMBER(J, "figure", figure, 3, "a third number: the change, the miss, the other end"),
	TS_R_ROW_TEXT(J, "says", says, "in words"),
	TS_R_ROW_TEXT(J, "because", because, "of advice: the number that decides"),
	TS_R_ROW_TEXT(J, "urgency", urgency, "of advice: when"),
	TS_R_ROW_TEXT(J, "hour", hour, "of advice: what to do in the next hour"),
	TS_R_ROW_TEXT(J, "week", week, "of advice: what to do this week"),
	TS_R_ROW_TEXT(J, "condition", condition, "on which all are kept together"),
	TS_R_ROW_MAYBE(J, "remedy", remedy, struct ts_check_remedy, &remedy_shape, "what mends it"),
	TS_R_ROW_BOOL(J, "folded", folded, "over with a step of the repair, or said by another judgement of its animal"),
};
#undef J
static const struct ts_result_shape judgement_shape = TS_R_SHAPE("judgement", judgement_fields, struct ts_check_judgement);

#define P struct ts_check_step
static const struct ts_result_field step_fields[] = {
	TS_R_ROW_TEXT(P, "because", because, "the fault that it mends"),
	TS_R_ROW_MAYBE(P, "remedy", remedy, struct ts_check_remedy, &remedy_shape, "what to do"),
};
#undef P
static const struct ts_result_shape step_shape = TS_R_SHAPE("step", step_fields, struct ts_check_step);

#define G struct ts_check_range
static const struct ts_result_field range_fields[] = {
	TS_R_ROW_TEXT(G, "parameter", parameter, "gh, kh, ph or temp"),
	TS_R_ROW_NUMBER(G, "reading", reading, 2, "of the water; null: not known"),
	TS_R_ROW_RANGE(G, "reading_range", doubt, 2, "with its doubt"),
	TS_R_ROW_RANGE(G, "preferred", preferred, 1, "comfortable"),
	TS_R_ROW_RANGE(G, "tolerated", tolerated, 1, "borne"),
	TS_R_ROW_NUMBER(G, "miss", miss, 1, "of the reading beyond comfortable, signed; 0: none"),
};
#undef G
static const struct ts_result_shape range_shape = TS_R_SHAPE("range", range_fields, struct ts_check_range);

#define A struct ts_check_animal
static const struct ts_result_field animal_fields[] = {
	TS_R_ROW_TEXT(A, "species", species, "accepted name"),
	TS_R_ROW_TEXT(A, "name", name, "as the answer calls it"),
	TS_R_ROW_COUNT(A, "count", count, "animals in all"),
	TS_R_ROW_COUNT(A, "planned", planned, "of them, not there yet"),
	TS_R_ROW_TEXT(A, "fit", fit, "how the water suits; null: no water"),
	TS_R_ROW_NUMBER(A, "grown_cm", grown_cm, 1, "length of an adult"),
	TS_R_ROW_NUMBER(A, "in_six_months", in_six_months, 0, "of them, where they bear young by themselves; else as many as now"),
	TS_R_ROW_RANGE(A, "in_six_months_range", in_six_months_range, 0, "the same, by how many of the young others leave"),
	TS_R_ROW_NUMBER(A, "tank_length_cm", tank_length_cm, 0, "that adults need"),
	TS_R_ROW_TEXTS(A, "cautions", cautions, "all of them, grave ones first"),
	TS_R_ROW_LIST(A, "ranges", ranges, range_count, struct ts_check_range, &range_shape, "what it wants of the water"),
};
#undef A
static const struct ts_result_shape animal_shape = TS_R_SHAPE("animal", animal_fields, struct ts_check_animal);

#define S struct ts_check_shared
static const struct ts_result_field shared_fields[] = {
	TS_R_ROW_TEXT(S, "parameter", parameter, "gh, kh, ph or temp"),
	TS_R_ROW_NUMBER(S, "low", low, 1, "above high: nothing suits all"),
	TS_R_ROW_NUMBER(S, "high", high, 1, "the other end"),
	TS_R_ROW_BOOL(S, "comfortable", comfortable, "to all; else only borne by all"),
};
#undef S
static const struct ts_result_shape shared_shape = TS_R_SHAPE("shared", shared_fields, struct ts_check_shared);

#define T struct ts_check_tank
static const struct ts_result_field tank_fields[] = {
	TS_R_ROW_NUMBER(T, "length_cm", length_cm, 0, "inside"),
	TS_R_ROW_NUMBER(T, "width_cm", width_cm, 0, "inside"),
	TS_R_ROW_NUMBER(T, "height_cm", height_cm, 0, "inside"),
	TS_R_ROW_NUMBER(T, "volume_l", volume_l, 0, "of the whole box"),
};
#undef T
static const struct ts_result_shape tank_shape = TS_R_SHAPE("tank", tank_fields, struct ts_check_tank);

#define L struct ts_check_load
static const struct ts_result_field load_fields[] = {
	TS_R_ROW_NUMBER(L, "nitrogen_mg_day", nitrogen_mg_day, 1, "nitrogen that the feed brings into the water"),
	TS_R_ROW_NUMBER(L, "no3_rise_mg_l_week", no3_rise_mg_l_week, 1, "nitrate between water changes"),
	TS_R_ROW_NUMBER(L, "no3_steady_mg_l", no3_steady_mg_l, 1, "nitrate before a change, once settled; null: without end, no water is changed"),
	TS_R_ROW_NUMBER(L, "kh_used_dh_week", kh_used_dh_week, 2, "buffer used up"),
	TS_R_ROW_NUMBER(L, "buffer_days", buffer_days, 1, "days to the floor without a change; null: KH not known, or without end, none is used"),
	TS_R_ROW_RANGE(L, "nitrogen_mg_day_range", nitrogen_range, 1, "least and most"),
	TS_R_ROW_RANGE(L, "no3_rise_mg_l_week_range", no3_rise_range, 1, "least and most"),
	TS_R_ROW_RANGE(L, "no3_steady_mg_l_range", no3_steady_range, 1, "least and most"),
	TS_R_ROW_RANGE(L, "kh_used_dh_week_range", kh_used_range, 2, "least and most"),
	TS_R_ROW_RANGE(L, "buffer_days_range", buffer_range, 1, "least and most"),
	TS_R_ROW_NUMBER(L, "volume_l", volume_l, 0, "of the water"),
	TS_R_ROW_NUMBER(L, "feed_g_day", feed_g_day, 2, "dry feed"),
	TS_R_ROW_RANGE(L, "feed_g_day_range", feed_range, 2, "least and most"),
	TS_R_ROW_NUMBER(L, "measured_no3_rise_mg_l_week", measured_no3_rise, 1, "by the log; it replaces the computed one"),
	TS_R_ROW_NUMBER(L, "modelled_no3_rise_mg_l_week", modelled_no3_rise, 1, "the computed one"),
	TS_R_ROW_NUMBER(L, "change_percent", change_percent, 0, "of the water, as given or as usual"),
	TS_R_ROW_NUMBER(L, "change_days", change_days, 1, "from one change to the next"),
	TS_R_ROW_BOOL(L, "feeding_known", feeding_known, "else the range is of light to heavy feeding"),
	TS_R_ROW_BOOL(L, "plants_known", plants_known, "else the range is of none to dense"),
	TS_R_ROW_BOOL(L, "change_known", change_known, "else it is taken as usual"),
};
#undef L
static const struct ts_result_shape load_shape = TS_R_SHAPE("load", load_fields, struct ts_check_load);

#define C struct ts_check_result
static const struct ts_result_field check_fields[] = {
	TS_R_ROW_TEXT(C, "name", name, "of the plan"),
	TS_R_ROW_WORD(C, "verdict", verdict, ts_check_verdict_words, "the worst of the judgements"),
	TS_R_ROW_WORD(C, "kind", kind, ts_check_kind_words, "of the answer: decides what stands on a first screen"),
	TS_R_ROW_BOOL(C, "answered", answered, "all is known that a yes needs"),
	TS_R_ROW_TEXT(C, "headline", headline, "the answer in a line"),
	TS_R_ROW_TEXT(C, "asked_says", asked_says, "the answer to what else was asked: how often water is changed, how much salt"),
	TS_R_ROW_TEXT(C, "decides", decides, "what to do about it, or the figure that decides"),
	TS_R_ROW_TEXT(C, "instead_says", instead_says, "another animal in the place of one that suffers"),
	TS_R_ROW_TEXT(C, "instead_species", instead_species, "accepted name"),
	TS_R_ROW_NUMBER(C, "instead_count", instead_count, 0, "how many of them"),
	TS_R_ROW_TEXT(C, "water_too", water_too, "what the water has against some of them, beside the first line"),
	TS_R_ROW_TEXTS(C, "members", members, "of names of several animals: for whom the answer holds"),
	TS_R_ROW_TEXTS(C, "also", also, "of a no: further reasons, each of another sort"),
	TS_R_ROW_TEXT(C, "otherwise", otherwise, "the other way, which is more work"),
	TS_R_ROW_TEXT(C, "root_says", root_says, "of a danger: the tank that is far too small for them"),
	TS_R_ROW_TEXTS(C, "cautions", cautions, "who is to be feared, and the law"),
	TS_R_ROW_LIST(C, "judgements", judgements, judgement_count, struct ts_check_judgement, &judgement_shape, "the gravest first"),
	TS_R_ROW_COUNT(C, "more", more, "lighter ones that were left out"),
	TS_R_ROW_LIST(C, "repair", repair, repair_count, struct ts_check_step, &step_shape, "remedies one after the other"),
	TS_R_ROW_BOOL(C, "repair_mends", repair_mends, "after it no conflict is left"),
	TS_R_ROW_LIST(C, "animals", animals, animal_count, struct ts_check_animal, &animal_shape, "kind by kind"),
	TS_R_ROW_LIST(C, "shared_water", shared, shared_count, struct ts_check_shared, &shared_shape, "what all of them share"),
	TS_R_ROW_TEXT(C, "shared_says", shared_says, "in words"),
	TS_R_ROW_MAYBE(C, "smallest_tank", smallest_tank, struct ts_check_tank, &tank_shape, "that would do"),
	TS_R_ROW_TEXT(C, "room_says", room_says, "of that tank, where room is asked"),
	TS_R_ROW_SUB(C, "learned", learned, struct ts_learned, &ts_result_learned, "what the tank's log has taught"),
	TS_R_ROW_MAYBE(C, "load", load, struct ts_check_load, &load_shape, "what the animals make of the water"),
	TS_R_ROW_TEXT(C, "waste_says", waste_says, "in words"),
	TS_R_ROW_TEXT(C, "read_as", read_as, "what was made of a sentence"),
	TS_R_ROW_TEXT(C, "not_understood", not_understood, "what was typed, not understood, and must not be passed over"),
	TS_R_ROW_TEXT(C, "what_if", what_if, "the question of what-if that says how long this lasts; null: none"),
	TS_R_ROW_TEXT(C, "not_judged", not_judged, "what is not given, and so not judged"),
};
#undef C
/* clang-format on */
const struct ts_result_shape ts_result_check =
	TS_R_SHAPE("check", check_fields, struct ts_check_result);
