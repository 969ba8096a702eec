/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Young grow up by the share of the practice table; sizes come near to the adult's as a body does
 * that grows fast at first (von Bertalanffy), with one time for each length.
 */
#include "stock/growth.h"

#include <math.h>

#include "base/number.h"

/* Of the young that grow up among others: few where others hunt them, more in dense plants. */
#define REARED_LEAST 0.25
#define REARED_MOST 2.0

/* Months until a fish of 4 cm is nearly grown, and how that grows with its length: estimate. */
#define MONTHS_OF_FOUR_CM 6.0
#define MONTHS_POWER 0.7
/* Nearly: of the adult length. */
#define NEARLY 0.95

static double natural_log(double value)
{
	return ts_log2(value) * 0.69314718055994531;
}

double ts_growth_born_month(const struct ts_group *group)
{
	double females = group->females + floor(group->either / 2.0);
	bool males = group->males || group->either >= 2;

	return males && females >= 1 ? females * fmax(0, group->species->young_month) : 0;
}

static void grow(const struct ts_group *g, double months, struct ts_growth *ret)
{
	double adult = g->species->adult_length_cm;
	double whole = MONTHS_OF_FOUR_CM * ts_power(adult / 4, MONTHS_POWER);
	double pace = -natural_log(1 - NEARLY) / whole, left;

	ret->size_cm = ret->size_then_cm = ret->grown_months = (double)NAN;
	if (!(g->size_cm > 0))
		return;
	ret->size_cm = g->size_cm;
	left = adult - g->size_cm;
	if (left <= (1 - NEARLY) * adult) {
		ret->size_then_cm = g->size_cm;
		ret->grown_months = 0;
		return;
	}
	ret->size_then_cm = adult - left * ts_power(1 - NEARLY, months / whole);
	ret->grown_months = natural_log(left / ((1 - NEARLY) * adult)) / pace;
}

void ts_growth_of(const struct ts_group *g, double months, const struct ts_practice *practice,
	struct ts_growth *ret)
{
	struct ts_practice own;
	double born = ts_growth_born_month(g) * months, reared, now;

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	reared = practice->value[TS_P_YOUNG_REARED];
	*ret = (struct ts_growth){.now = ts_group_count(g)};
	now = ret->now;
	ret->then = (struct ts_estimate){now + floor(born * reared * REARED_LEAST),
		now + round(born * reared), now + ceil(born * fmin(1, reared * REARED_MOST))};
	ret->breeds = ret->then.value > now;
	grow(g, months, ret);
}
