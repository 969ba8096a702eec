/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rows of waters.csv and stuyfzand_waters.csv as waters; both use the same column names. What is
 * blank counts as 0.
 */
#ifndef TS_TESTS_WATERS_TABLE_H
#define TS_TESTS_WATERS_TABLE_H

#include "chem/solution.h"
#include "table.h"

/* The ions of a row; bicarbonate as alkalinity, unless the row prints alkalinity itself. */
struct ts_solution waters_row(const struct table *table, size_t row, double temp_c);
/* waters.csv: water-01, the supply whose laboratory printed its calculation. */
struct ts_solution waters_01(double temp_c);
/* blend_water01_phreeqc.csv: the share of water-01 in a row, 0 for pure water. */
double waters_blend_share(const struct table *blends, size_t row);

#endif
