/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Simulates 1,000 tanks for 365 days each, every figure of every day (pH interval and conductivity
 * too), and prints a sum, so that nothing is left out. drift.py holds its time against one rank.
 */
#include <stdio.h>

#include "chem/carbonate.h"
#include "stock/drift.h"

#define TANKS 1000
#define DAYS 365

static enum ts_status simulate(unsigned i, const struct ts_practice *practice, double *sum)
{
	static struct ts_drift_day days[DAYS + 1];
	struct ts_drift_supply supply = {0};
	struct ts_drift_tank t = {.supplies = &supply,
		.supply_count = 1,
		.filter_share = 1,
		.change_share = 0.1 + 0.1 * (i % 5),
		.change_days = 7,
		.evaporated_share = 0.01,
		.nitrogen_mmol_l = 0.002 * (i % 50),
		.plant_share = 0.1 * (i % 4),
		.bed = (enum ts_bed)(i % 4),
		.soil_left_meq_l = 10,
		.co2_most = 12,
		.co2_usual = 4,
		.co2_least = 1.5};
	enum ts_status status =
		ts_solution_from_hardness(2 + i % 20, 1 + i % 14, 22 + i % 5, &supply.water);

	t.water = supply.water;
	if (status == TS_OK)
		status = ts_drift_run(&t, practice, DAYS, days, NULL);
	*sum += days[DAYS].kh_dh + days[DAYS].no3_mg_l;
	return status;
}

int main(void)
{
	struct ts_practice practice;
	double sum = 0;

	ts_practice_defaults(&practice);
	for (unsigned i = 0; i < TANKS; i++) {
		if (simulate(i, &practice, &sum) != TS_OK)
			return 1;
	}
	printf("%.6f\n", sum);
	return 0;
}
