/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The scales as printed, each limit in mg/L CaCO3. Where a scale prints whole numbers on both
 * sides of a line (0-60, 61-120), the upper end of the lower class is the line.
 */
#include "chem/classes.h"

#include "chem/hardness.h"

#define FH(degrees) ((degrees)*10.0)
#define DH(degrees) ((degrees)*TS_MMOL_L_PER_DH * TS_MASS_CACO3)
#define MMOL_L(mmol) ((mmol)*TS_MASS_CACO3)

const struct ts_hardness_scale ts_hardness_scales[] = {
	{"USGS", "US Geological Survey, hardness of water",
		{{0, "soft"}, {60, "moderately hard"}, {120, "hard"}, {180, "very hard"}}, 4},
	{"WHO", "World Health Organization 2011, Hardness in Drinking-water, WHO/HSE/WSH/10.01/10",
		{{0, "soft"}, {60, "moderately hard"}, {120, "hard"}, {180, "very hard"}}, 4},
	{"Vermont", "Vermont Department of Health (the scale of Sawyer's textbook)",
		{{0, "soft"}, {75, "moderately hard"}, {150, "hard"}, {300, "very hard"}}, 4},
	{"Germany", "Wasch- und Reinigungsmittelgesetz 2007, section 9",
		{{0, "soft (weich)"}, {MMOL_L(1.5), "middle (mittel)"},
			{MMOL_L(2.5), "hard (hart)"}},
		3},
	{"Switzerland", "six classes, as printed by Swiss public supplies",
		{{0, "very soft (sehr weich)"}, {FH(7), "soft (weich)"},
			{FH(15), "middling (mittelhart)"}, {FH(25), "rather hard (ziemlich hart)"},
			{FH(32), "hard (hart)"}, {FH(42), "very hard (sehr hart)"}},
		6},
	{"UK supplies", "as printed by public supplies of the United Kingdom",
		{{0, "soft"}, {50, "moderately soft"}, {100, "slightly hard"},
			{150, "moderately hard"}, {200, "hard"}, {300, "very hard"}},
		6},
	{"aquarium trade", "common practice, no source",
		{{0, "very soft"}, {DH(4), "soft"}, {DH(8), "medium hard"}, {DH(12), "rather hard"},
			{DH(18), "hard"}, {DH(30), "very hard"}},
		6},
};
const size_t ts_hardness_scale_count = sizeof ts_hardness_scales / sizeof *ts_hardness_scales;

const char *ts_hardness_class(const struct ts_hardness_scale *scale, double ca_plus_mg_mmol_l)
{
	double mg_l = ts_chem_mg_caco3_from_mmol_l(ca_plus_mg_mmol_l);
	const char *name = mg_l >= 0 ? scale->classes[0].name : NULL;

	for (size_t i = 1; i < scale->count; i++) {
		if (mg_l > scale->classes[i].above_mg_caco3_l)
			name = scale->classes[i].name;
	}
	return name;
}
