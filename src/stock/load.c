/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From animals and feeding to nitrate, alkalinity and days. Steady states are the closed forms of
 * a tank changed by a share every so many days; the daily balance itself is care/drift.c.
 */
#include <tapshoal/stock.h>

#include "base/number.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "chem/nitrogen.h"
#include "chem/oxygen.h"
#include "model/practice.h"
#include "stock/rules.h"

#define NO3_PER_N (TS_MASS_NO3 / TS_WEIGHT_N)
#define WEEK 7

/*
 * Mass = factor x length^power, by body (words of a record) where a record has no relation of its
 * own; cm, g. Powers recalled from memory; factors so that half of our fishes of that body lie
 * above (225, 16, 130, 88 of them, by the relations of length and weight in FishBase 2018), and
 * `doubt` so that two in three lie within it.
 */
static const struct {
	double factor, power, doubt;
} by_body[] = {
	[TS_BODY_FUSIFORM] = {0.0112, 3.04, 1.5},
	[TS_BODY_EEL] = {0.0039, 3.06, 2.0},
	[TS_BODY_ELONGATED] = {0.0056, 3.12, 1.7},
	[TS_BODY_DEEP] = {0.0175, 3.01, 1.4},
};

/* Two in three studies of one species lie that near to each other. */
#define DOUBT_MEASURED 1.2

/* What no animal of a home weighs, whatever a record says. */
#define MASS_MOST_G 1e6

static double mass_g(const struct ts_species *species, double length_cm)
{
	double cube = length_cm * length_cm * length_cm;

	if (species->kind == TS_ANIMAL_SHRIMP)
		return 0.005 * cube;
	if (species->kind != TS_ANIMAL_FISH)
		return 0.01 * cube;
	if (species->weight.factor > 0)
		return species->weight.factor * ts_power(length_cm, species->weight.power);
	if (species->body_length_cm > 0) /* trailing fins weigh next to nothing */
		length_cm *= species->body_length_cm / species->adult_length_cm;
	return by_body[species->body].factor * ts_power(length_cm, by_body[species->body].power);
}

double ts_mass_g(const struct ts_species *species, double length_cm)
{
	return fmin(fmax(mass_g(species, length_cm), 0), MASS_MOST_G);
}

double ts_mass_doubt(const struct ts_species *species)
{
	return species->weight.factor > 0 ? DOUBT_MEASURED : by_body[species->body].doubt;
}

static double protein_of(const struct ts_species *s, const double *practice)
{
	return practice[TS_P_PROTEIN_OMNIVORE + s->diet];
}

/* Dry feed of a group, g a day, at a coefficient of feeding. */
static double feed_of(
	const struct ts_group *g, double coefficient, double temp_c, const double *practice)
{
	double t = isnan(temp_c) ? 25 : temp_c;
	double mass = ts_mass_g(g->species, g->species->adult_length_cm);

	t = fmin(fmax(t, practice[TS_P_FEED_TEMP_LOW]), practice[TS_P_FEED_TEMP_HIGH]);
	return ts_group_count(g) * coefficient * ts_power(mass, practice[TS_P_FEED_EXPONENT]) *
	       ts_power(2, (t - 25) / 10);
}

/* The three coefficients that a word about feeding stands for. */
static struct ts_estimate coefficient_of(const struct ts_tank *t, const double *practice)
{
	double light = practice[TS_P_FEED_LIGHT], heavy = practice[TS_P_FEED_HEAVY];
	double ordinary = practice[TS_P_FEED_ORDINARY];

	switch (t->feeding.word) {
	case TS_FEEDING_LIGHT:
		return (struct ts_estimate){light, light, light};
	case TS_FEEDING_ORDINARY:
		return (struct ts_estimate){ordinary, ordinary, ordinary};
	case TS_FEEDING_HEAVY:
		return (struct ts_estimate){heavy, heavy, heavy};
	default:
		return (struct ts_estimate){light, ordinary, heavy};
	}
}

static struct ts_estimate times(struct ts_estimate e, double low, double value, double high)
{
	return (struct ts_estimate){e.low * low, e.value * value, e.high * high};
}

static struct ts_estimate scaled(struct ts_estimate e, double by)
{
	return times(e, by, by, by);
}

/* Feed and its nitrogen; a weighed feed replaces the sum, the animals still tell its protein. */
static void feed_all(const struct ts_load_case *c, const double *practice, struct ts_load *ret)
{
	struct ts_estimate coefficient = coefficient_of(c->tank, practice);
	double by_one = 0, least = 0, most = 0, protein = 0;

	for (size_t i = 0; i < c->count; i++) {
		double feed = feed_of(&c->groups[i], 1, c->temp_c, practice);
		double doubt =
			ts_power(ts_mass_doubt(c->groups[i].species), practice[TS_P_FEED_EXPONENT]);

		by_one += feed;
		least += feed / doubt;
		most += feed * doubt;
		protein += feed * protein_of(c->groups[i].species, practice);
	}
	protein = by_one > 0 ? protein / by_one : practice[TS_P_PROTEIN_OMNIVORE];
	ret->feed_g_day = times(coefficient, least, by_one, most);
	ret->feeding_known = c->tank->feeding.word != TS_FEEDING_UNKNOWN;
	if (c->tank->feeding.value > 0) {
		double feed = c->tank->feeding.value;

		ret->feed_g_day = (struct ts_estimate){feed, feed, feed};
		ret->feeding_known = true;
	}
	ret->nitrogen_mg_day =
		times(scaled(ret->feed_g_day, 1000 * protein * practice[TS_P_NITROGEN_PROTEIN]),
			practice[TS_P_NITROGEN_WATER_LOW], practice[TS_P_NITROGEN_WATER],
			practice[TS_P_NITROGEN_WATER_HIGH]);
}

/* Share of the nitrogen that plants leave: most, usual, least. */
static struct ts_estimate left_by_plants(const struct ts_tank *t, const double *practice)
{
	double some = 1 - practice[TS_P_PLANTS_SOME], dense = 1 - practice[TS_P_PLANTS_DENSE];

	switch (t->plants) {
	case TS_PLANTS_NONE:
		return (struct ts_estimate){1, 1, 1};
	case TS_PLANTS_SOME:
		return (struct ts_estimate){dense, some, 1};
	case TS_PLANTS_DENSE:
		return (struct ts_estimate){dense, dense, some};
	default:
		return (struct ts_estimate){dense, 1, 1};
	}
}

/* dKH that turning a mg/L of feed nitrogen into nitrate uses up. */
static double kh_per_nitrogen(void)
{
	double meq = -ts_chem_nitrogen_alk_meq(TS_RELEASE, 1) -
		     ts_chem_nitrogen_alk_meq(TS_NITRITATION, 1) -
		     ts_chem_nitrogen_alk_meq(TS_NITRATATION, 1);

	return ts_chem_dkh_from_meq_l(meq);
}

static void take_change(const struct ts_tank *t, const double *practice, struct ts_load *ret)
{
	ret->change_known = t->water_change.days > 0;
	ret->change_percent =
		ret->change_known ? t->water_change.amount : practice[TS_P_CHANGE_PERCENT];
	ret->change_days = ret->change_known ? t->water_change.days : practice[TS_P_CHANGE_DAYS];
}

/* The log beats the model; plants are in the measured figure already. */
static void calibrate(
	const struct ts_load_case *c, const struct ts_practice *practice, struct ts_load *ret)
{
	const struct ts_estimate *measured = c->measured_no3_rise_mg_l_week;
	double modelled = ret->no3_rise_mg_l_week.value, ratio;
	double more = c->measured_times > 0 ? c->measured_times : 1;

	ret->modelled_no3_rise_mg_l_week = modelled;
	ret->measured_no3_rise_mg_l_week = (double)NAN;
	if (!measured)
		return;
	ratio = more * measured->value / modelled;
	ret->measured_no3_rise_mg_l_week = measured->value;
	ret->no3_rise_mg_l_week = times(*measured, more, more, more);
	ret->differs = ratio > practice->value[TS_P_LOAD_DIFFERS] ||
		       ratio * practice->value[TS_P_LOAD_DIFFERS] < 1;
}

/* What builds up between changes: rise a week -> above the new water, before a change. */
static double above_new(const struct ts_load *l, double a_week)
{
	if (!(l->change_percent > 0))
		return a_week > 0 ? (double)INFINITY : 0;
	return a_week / WEEK * l->change_days * 100 / l->change_percent;
}

static double days_left(double kh_dh, double used_dh_week, const double *practice)
{
	double spare = kh_dh - practice[TS_P_KH_FLOOR];

	if (isnan(kh_dh))
		return (double)NAN;
	if (spare <= 0)
		return 0;
	return used_dh_week > 0 ? spare / used_dh_week * WEEK : (double)INFINITY;
}

static void settle(const struct ts_load_case *c, const double *practice, struct ts_load *ret)
{
	const struct ts_estimate *rise = &ret->no3_rise_mg_l_week;
	double no3_new = isnan(c->no3_new_mg_l) ? 0 : c->no3_new_mg_l;
	double kh = isnan(c->kh_dh) ? c->kh_new_dh : c->kh_dh;

	ret->kh_used_dh_week = scaled(*rise, kh_per_nitrogen() / NO3_PER_N);
	ret->no3_steady_mg_l = (struct ts_estimate){no3_new + above_new(ret, rise->low),
		no3_new + above_new(ret, rise->value), no3_new + above_new(ret, rise->high)};
	ret->kh_steady_dh = c->kh_new_dh - above_new(ret, ret->kh_used_dh_week.value);
	ret->buffer_days = (struct ts_estimate){days_left(kh, ret->kh_used_dh_week.high, practice),
		days_left(kh, ret->kh_used_dh_week.value, practice),
		days_left(kh, ret->kh_used_dh_week.low, practice)};
}

enum ts_status ts_load_of(
	const struct ts_load_case *c, const struct ts_practice *practice, struct ts_load *ret)
{
	struct ts_practice own;
	struct ts_load l = {.net_l = ts_tank_net_l(c->tank, practice)};
	struct ts_estimate left;

	ts_practice_defaults(&own);
	if (!practice)
		practice = &own;
	if (!(l.net_l > 0))
		return TS_BAD_INPUT;
	take_change(c->tank, practice->value, &l);
	feed_all(c, practice->value, &l);
	left = left_by_plants(c->tank, practice->value);
	l.plants_known = c->tank->plants != TS_PLANTS_UNKNOWN;
	l.no3_rise_mg_l_week = times(scaled(l.nitrogen_mg_day, NO3_PER_N * WEEK / l.net_l),
		left.low, left.value, left.high);
	calibrate(c, practice, &l);
	settle(c, practice->value, &l);
	if (ts_chem_oxygen_saturation_mg_l(isnan(c->temp_c) ? 25 : c->temp_c, 0, &l.oxygen_mg_l))
		l.oxygen_mg_l = (double)NAN;
	*ret = l;
	return TS_OK;
}

double ts_group_nitrogen_mg_day(const struct ts_group *group, const struct ts_tank *tank,
	double temp_c, const struct ts_practice *practice)
{
	struct ts_practice own;
	double coefficient;

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	coefficient = coefficient_of(tank, practice->value).value;
	return feed_of(group, coefficient, temp_c, practice->value) * 1000 *
	       protein_of(group->species, practice->value) *
	       practice->value[TS_P_NITROGEN_PROTEIN] * practice->value[TS_P_NITROGEN_WATER];
}

double ts_nitrogen_for_no3(
	const struct ts_tank *tank, double no3_mg_l, const struct ts_practice *practice)
{
	struct ts_practice own;
	struct ts_load l = {.net_l = ts_tank_net_l(tank, practice)};

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	take_change(tank, practice->value, &l);
	return no3_mg_l / NO3_PER_N * l.net_l * l.change_percent / 100 / l.change_days /
	       left_by_plants(tank, practice->value).value;
}

double ts_nitrogen_for_buffer(
	const struct ts_tank *tank, double kh_dh, double days, const struct ts_practice *practice)
{
	struct ts_practice own;
	double net_l = ts_tank_net_l(tank, practice);

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	return fmax(kh_dh - practice->value[TS_P_KH_FLOOR], 0) / kh_per_nitrogen() * net_l / days /
	       left_by_plants(tank, practice->value).value;
}
