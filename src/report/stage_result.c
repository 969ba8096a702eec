/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of a stage. A further member is a further row.
 */
#include "report/stage_result.h"

/* clang-format off */
#define S struct ts_stage_line
static const struct ts_result_field stage_fields[] = {
	TS_R_ROW_COUNT(S, "day", day, "0 is the first"),
	TS_R_ROW_NUMBER(S, "change_l", change_l, 1, "litres changed; null: the volume is not known"),
	TS_R_ROW_NUMBER(S, "change_percent", change_percent, 0, "of the tank's water; 100: moved over"),
	TS_R_ROW_NUMBER(S, "gh_dh", gh_dh, 2, "afterwards"),
	TS_R_ROW_NUMBER(S, "kh_dh", kh_dh, 2, "afterwards"),
	TS_R_ROW_NUMBER(S, "ph", ph, 2, "afterwards, of a tank with the usual CO2"),
	TS_R_ROW_NUMBER(S, "conductivity_us_cm", conductivity_us_cm, 0, "afterwards, at 25 C"),
	TS_R_ROW_NUMBER(S, "nh3_mg_l", nh3_mg_l, 4, "un-ionised ammonia as N, simulated"),
	TS_R_ROW_BOOL(S, "stop", stop, "wait and test before the next one"),
	TS_R_ROW_TEXT(S, "test", test, "what to test"),
};
#undef S
/* clang-format on */
const struct ts_result_shape ts_result_stage =
	TS_R_SHAPE("stage", stage_fields, struct ts_stage_line);
