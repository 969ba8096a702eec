/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rules and load, asked the way the search needs them.
 */
#include "stock/judge.h"

#include "model/practice.h"

bool ts_judge(const struct ts_wish *wish, bool conditions, const struct ts_group *a,
	const struct ts_group *b, unsigned *ret_points, struct ts_ruling *ret_ruling)
{
	struct ts_rulings rulings = {.count = 0};
	const struct ts_ruling *gravest = NULL;

	if (b)
		ts_rules_together(a, b, wish->tank, wish->practice, &rulings);
	else
		ts_rules_alone(a, wish->tank, wish->practice, &rulings);
	for (size_t i = 0; i < rulings.count; i++) {
		if (!gravest || rulings.at[i].severity > gravest->severity)
			gravest = &rulings.at[i];
	}
	*ret_points = ts_rules_cost(&rulings, wish->practice).points;
	if (!gravest || gravest->severity < (conditions ? TS_CONFLICT : TS_CONCERN))
		return true;
	if (ret_ruling)
		*ret_ruling = *gravest;
	return false;
}

double ts_judge_temperature(const struct ts_wish *wish)
{
	const struct ts_span *t = &wish->profile->at[TS_TEMPERATURE];

	return t->given ? (t->low + t->high) / 2 : (double)NAN;
}

double ts_judge_nitrogen_mg_day(const struct ts_wish *wish, const struct ts_group *group)
{
	return ts_group_nitrogen_mg_day(
		group, wish->tank, ts_judge_temperature(wish), wish->practice);
}

/* The nitrate before a water change to which this rise a week settles, above the new water. */
static double settled(const struct ts_wish *wish, double rise_mg_l_week)
{
	const struct ts_every *change = &wish->tank->water_change;
	const double *p = wish->practice->value;
	bool given = change->days > 0;
	double days = given ? change->days : p[TS_P_CHANGE_DAYS];
	double percent = given ? change->amount : p[TS_P_CHANGE_PERCENT];

	return rise_mg_l_week / 7 * days * 100 / percent;
}

double ts_judge_nitrogen_most_mg_day(const struct ts_wish *wish)
{
	const double *p = wish->practice->value;
	const struct ts_span *kh = &wish->profile->at[TS_KH];
	double days = fmax(p[TS_P_BUFFER_WARN], wish->buffer_days);
	double most = ts_nitrogen_for_no3(wish->tank, p[TS_P_NITRATE_AIM], wish->practice);
	double buffer = (double)NAN;

	if (wish->no3_rise_mg_l_week > 0)
		most = fmin(most, ts_nitrogen_for_no3(wish->tank,
					  settled(wish, wish->no3_rise_mg_l_week), wish->practice));
	if (kh->given)
		buffer = ts_nitrogen_for_buffer(wish->tank, kh->value, days, wish->practice);
	return p[TS_P_LOAD_SHARE] * fmin(most, buffer);
}
