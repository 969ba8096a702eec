/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of layouts.h. The first layout that fits the whole sequence wins; a sequence that fits
 * none is not taken. Layouts are those that utilities print: common practice, no source.
 */
#include "intake/layouts.h"

#include <string.h>

#include "intake/report.h"

/* clang-format off */
const struct ts_layout ts_layouts[] = {
	{"one-figure", "d*([nqbav])d*", "R", 0, "the only figure of its line"},
	{"bounds-only", "d*(?:([a])([bhv])|([bhv])([a]))d*", "LLLL", 0, "legal limits alone"},
	{"one-range", "d*w?(r)d*", "W", 0, "the only range of its line"},
	{"detection-below", "(q)(v)d*", "DR", 0, "a detection limit, then nothing above it"},
	{"detection-below-legal", "(q)(v)([gGabh])([abh])?", "DRLL", 0, "a detection limit, nothing above it, the legal limit"},
	{"detection-figure-none", "(q)([nqgb])d+", "DR", 0, "detection limit, result, no legal limit"},
	{"detection-none-figure", "(q)d+([nqgb])", "DR", 0, "detection limit, no legal limit, result"},
	{"detection-none-range", "(q)d+(r)", "DW", 0, "detection limit, no legal limit, range of results"},
	{"detection-legal-figure", "(q)([gG])([nqb])", "DLR", 0, "detection limit, legal limit, result"},
	{"detection-legal-range", "(q)([gG])(r)", "DLW", 0, "detection limit, legal limit, range of results"},
	{"detection-figure-legal", "(q)([nqb])([gG])", "DRL", 0, "detection limit, result, legal limit"},
	{"small-figure-none", "(n)([nqgb])d+", "DR", 0, "a detection limit far below its result, no legal limit"},
	{"legal-range-figure", "d*(G)([nqgb])d*", "LR", 0, "legal range, result"},
	{"legal-range-range", "d*(G)(r)d*", "LW", 0, "legal range, range of results"},
	{"figure-legal-range", "d*([nqgb])(G)d*", "RL", 0, "result, legal range"},
	{"range-legal-range", "d*(r)(G)d*", "WL", 0, "range of results, legal range"},
	{"legal-range-three", "d*(G)([nqgb])([nqgb])([nqgb])d*", "LTTT", 0, "legal range, then lowest, mean and highest"},
	{"legal-figure", "d*(g)([nqb])d*", "LR", 0, "legal limit, result"},
	{"legal-range", "d*(g)(r)d*", "LW", 0, "legal limit, range of results"},
	{"figure-legal", "d*([nqb])(g)d*", "RL", 0, "result, legal limit"},
	{"range-legal", "d*(r)(g)d*", "WL", 0, "range of results, legal limit"},
	{"figure-bounds", "d*([nqgp])([abh])([abh])?d*", "RLL", 0, "result, then legal limits"},
	{"range-bounds", "d*(r)([abh])([abh])?d*", "WLL", 0, "range of results, then legal limits"},
	{"pair-figure", "d*(p)(p)([nqgb])d*", "LLR", 0, "legal range in two columns, result"},
	{"figure-pair", "d*([nqgb])(p)(p)d*", "RLL", 0, "result, legal range in two columns"},
	{"mean-range", "d*([nqgb])(r)d*", "MW", 0, "mean, then lowest to highest"},
	{"range-mean", "d*(r)([nqgb])d*", "WM", 0, "lowest to highest, then the mean"},
	{"legal-mean-range", "d*([gG])([nqb])(r)d*", "LMW", 0, "legal limit, mean, then lowest to highest"},
	{"figure-named-legal", "d*([nqb])x(g)d*", "RL", 0, "result, then the legal limit, called maximum"},
	{"range-named-legal", "d*(r)x(g)d*", "WL", 0, "range of results, then the legal limit, called maximum"},
	{"range-named-mean", "w?(r)m([nqgb])", "WM", 0, "a range, then the figure called mean"},
	{"named-mean-range", "m([nqgb])w?(r)", "MW", 0, "the figure called mean, then a range"},
	{"three-figures", "d*([nqb])d*([nqb])d*([nqb])d*", "TTT", 0, "lowest, mean and highest, in that order"},
	{"legal-three", "d*(g)([nqb])([nqb])([nqb])d*", "LTTT", 0, "legal limit, then lowest, mean and highest"},
	{"three-legal", "d*([nqb])([nqb])([nqb])([gG])d*", "TTTL", 0, "lowest, mean and highest, then the legal limit"},
	{"three-pair", "d*([nqb])([nqb])([nqb])(p)(p)d*", "TTTLL", 0, "lowest, mean and highest, then the legal range"},
	{"pair-three", "d*(p)(p)([nqb])([nqb])([nqb])d*", "LLTTT", 0, "the legal range, then lowest, mean and highest"},
	{"three-bounds", "d*([nqgb])([nqg])([nqg])([abh])([abh])?d*", "TTTLL", 0, "lowest, mean and highest, then legal limits"},
	{"named-before", "(?:[imx]+[nqgbrp])+", "", -1, "the words before the figures name them"},
	{"named-behind", "(?:[nqgbrp][imx]+)+", "", 1, "the words behind the figures name them"},
};
const size_t ts_layouts_count = sizeof ts_layouts / sizeof *ts_layouts;

/*
 * Directive (EU) 2020/2184, annex I, and Council Directive 98/83/EC before it; Germany's 2790
 * uS/cm is the same limit at 25 C. United States: 40 CFR 141.62 (nitrate and nitrite, as N).
 * Calcium 400, magnesium 50 and sulphate 240 mg/L: older German ordinance, from memory.
 */
const struct ts_legal ts_legals[] = {
	{"Ca", "mg/l", 400, NULL},
	{"Cl", "mg/l", 200, NULL},
	{"Cl", "mg/l", 250, NULL},
	{"Cu", "mg/l", 1.3, NULL},
	{"Cu", "mg/l", 2, NULL},
	{"Mg", "mg/l", 50, NULL},
	{"NO2", "mg/l", 0.1, "no2"},
	{"NO2", "mg/l", 0.5, "no2"},
	{"NO2", "mg/l", 1, "n"},
	{"NO3", "mg/l", 10, "n"},
	{"NO3", "mg/l", 50, "no3"},
	{"Na", "mg/l", 200, NULL},
	{"SO4", "mg/l", 240, NULL},
	{"SO4", "mg/l", 250, NULL},
	{"TDS", "mg/l", 500, NULL},
	{"ammonia", "mg/l", 0.5, "nh4"},
	{"conductivity", "ms/m", 125, "20"},
	{"conductivity", "ms/m", 250, "20"},
	{"conductivity", "ms/m", 279, "25"},
	{"conductivity", "us/cm", 2500, "20"},
	{"conductivity", "us/cm", 2790, "25"},
};
const size_t ts_legals_count = sizeof ts_legals / sizeof *ts_legals;

/*
 * pH 6.5 to 9.5: Directive (EU) 2020/2184, annex I, part C; the other ranges of pH: common
 * practice, no source. From memory: hardness 15 to 50 French degrees is what Italy's decree on
 * drinking water recommends, conductivity is France's quality reference at 20 and at 25 C.
 */
const struct ts_legal_range ts_legal_ranges[] = {
	{"GH", "fh", 15, 50},
	{"conductivity", "us/cm", 180, 1000},
	{"conductivity", "us/cm", 200, 1100},
	{"pH", NULL, 6, 9},
	{"pH", NULL, 6.5, 8.5},
	{"pH", NULL, 6.5, 9},
	{"pH", NULL, 6.5, 9.2},
	{"pH", NULL, 6.5, 9.5},
	{"pH", NULL, 7, 9.5},
};
/* clang-format on */
const size_t ts_legal_ranges_count = sizeof ts_legal_ranges / sizeof *ts_legal_ranges;

const char *ts_report_rule_says(const char *rule)
{
	for (size_t i = 0; i < ts_layouts_count; i++) {
		if (strcmp(ts_layouts[i].id, rule) == 0)
			return ts_layouts[i].says;
	}
	return "under its heading";
}
