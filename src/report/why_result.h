/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What why tells to programs of several waters: each cell complete, and where each species fares
 * worst.
 */
#ifndef TS_REPORT_WHY_RESULT_H
#define TS_REPORT_WHY_RESULT_H

#include "report/rank_result.h"

struct ts_why_cell_result {
	const char *species, *id, *common, *water, *verdict;
	double fit;
	const char *limiting, *says;
	bool worst;
	const char *worst_season;
	struct ts_parameter_result *parameters;
	size_t parameter_count;
};

struct ts_why_worst_result {
	const char *water, *season, *verdict, *limiting, *says;
};

struct ts_why_species_result {
	const char *species, *id, *common;
	size_t waters;
	struct ts_why_worst_result worst;
};

struct ts_why_water_result {
	const char *name, *file;
	struct ts_texts seasons;
	struct ts_water_asked_result *water;
};

struct ts_why_waters_result {
	struct ts_why_water_result *waters;
	struct ts_why_species_result *species;
	struct ts_why_cell_result *cells;
	size_t water_count, species_count, cell_count;
};

extern const struct ts_result_shape ts_result_why_cell, ts_result_why_waters;

#endif
