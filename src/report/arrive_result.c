/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows. A further member is a further row.
 */
#include "report/arrive_result.h"

#include "report/stage_result.h"
#include "words/arrive.h"
#include "words/sentence.h"

/* clang-format off */
#define L struct ts_arrive_line
static const struct ts_result_field step_fields[] = {
	TS_R_ROW_TEXT(L, "when", when, "minutes or days"),
	TS_R_ROW_TEXT(L, "says", says, "what to do"),
};
#undef L
static const struct ts_result_shape shape_step = TS_R_SHAPE("step", step_fields, struct ts_arrive_line);

#define A struct ts_arrive_result
static const struct ts_result_field arrive_fields[] = {
	TS_R_ROW_WORD(A, "fit", fit, ts_verdict_words, "whether the tank's water suits the animal that it suits least; null: none was named"),
	TS_R_ROW_TEXT(A, "species", species, "which animal that is"),
	TS_R_ROW_WORD(A, "way", way, ts_arrive_way_words, "what to do, in a word"),
	TS_R_ROW_TEXT(A, "says", says, "what to do"),
	TS_R_ROW_TEXT(A, "because", because, "the number that decides"),
	TS_R_ROW_TEXT(A, "keeps", keeps, "how the water is made such that it suits them"),
	TS_R_ROW_TEXT(A, "instead", instead, "who likes the water as it is"),
	TS_R_ROW_TEXT(A, "meanwhile", meanwhile, "where the water does not suit: what to do if they are here already"),
	TS_R_ROW_NUMBER(A, "shop_gh_dh", shop_gh_dh, 1, "of the bag"),
	TS_R_ROW_NUMBER(A, "tank_gh_dh", tank_gh_dh, 1, "of the tank"),
	TS_R_ROW_NUMBER(A, "shop_conductivity_us_cm", shop_ec_us_cm, 0, "of the bag"),
	TS_R_ROW_NUMBER(A, "tank_conductivity_us_cm", tank_ec_us_cm, 0, "of the tank"),
	TS_R_ROW_NUMBER(A, "gh_apart_percent", gh_apart_percent, 0, "of the shop's GH"),
	TS_R_ROW_NUMBER(A, "conductivity_apart_percent", ec_apart_percent, 0, "of the shop's conductivity"),
	TS_R_ROW_NUMBER(A, "bag_ammonia_mg_l", bag_ammonia_mg_l, 2, "total ammonia as N in the bag"),
	TS_R_ROW_BOOL(A, "bag_ammonia_assumed", bag_ammonia_assumed, "not measured: taken for a long way"),
	TS_R_ROW_NUMBER(A, "nh3_bag_mg_l", nh3_bag_mg_l, 4, "un-ionised as N, bag closed"),
	TS_R_ROW_NUMBER(A, "nh3_aired_mg_l", nh3_aired_mg_l, 4, "un-ionised as N, bag aired"),
	TS_R_ROW_LIST(A, "steps", steps, step_count, struct ts_arrive_line, &shape_step, "in order"),
	TS_R_ROW_NUMBER(A, "start_gh_dh", start_gh_dh, 1, "of the quarantine tank at first; null: none is needed"),
	TS_R_ROW_NUMBER(A, "start_kh_dh", start_kh_dh, 1, "likewise"),
	TS_R_ROW_NUMBER(A, "start_conductivity_us_cm", start_ec_us_cm, 0, "likewise"),
	TS_R_ROW_TEXT(A, "stages_say", stages_say, "how to read the stages"),
	TS_R_ROW_LIST(A, "stages", stages, stage_count, struct ts_stage_line, &ts_result_stage, "of the quarantine tank"),
	TS_R_ROW_TEXTS(A, "notes", notes, "what was not known"),
	TS_R_ROW_TEXTS(A, "cautions", cautions, "each once"),
};
#undef A
/* clang-format on */
const struct ts_result_shape ts_result_arrive =
	TS_R_SHAPE("arrive", arrive_fields, struct ts_arrive_result);
