/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The published polynomials, and a halving to turn density into salt.
 */
#include "chem/salinity.h"

#include <math.h>
#include <stddef.h>

/* Conductivity of standard sea water at 15 C, mS/cm. */
#define STANDARD_MS_CM 42.914
#define REFERENCE_C 25.0
#define CONDUCTIVITY_MOST_US_CM 75000.0
#define SALT_MOST_G_KG 45.0

static double polynomial(const double *factors, size_t count, double x)
{
	double sum = 0;

	for (size_t i = count; i-- > 0;)
		sum = sum * x + factors[i];
	return sum;
}

double ts_chem_seawater_density_kg_m3(double salinity_g_kg, double temp_c)
{
	static const double pure[] = {
		999.842594, 6.793952e-2, -9.095290e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9};
	static const double a[] = {8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9};
	static const double b[] = {-5.72466e-3, 1.0227e-4, -1.6546e-6};
	double s = salinity_g_kg;

	return polynomial(pure, 6, temp_c) + polynomial(a, 5, temp_c) * s +
	       polynomial(b, 3, temp_c) * s * sqrt(s) + 4.8314e-4 * s * s;
}

/* The practical scale at 25 C and one atmosphere, from the ratio to sea water of 35. */
static double practical(double rt)
{
	static const double a[] = {0.0080, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081};
	static const double b[] = {0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144};
	double warm = (REFERENCE_C - 15) / (1 + 0.0162 * (REFERENCE_C - 15));
	double root = sqrt(rt), x = 400 * rt, y = 100 * rt;
	double s = polynomial(a, 6, root) + warm * polynomial(b, 6, root);

	return s - 0.008 / (1 + 1.5 * x + x * x) - 0.0005 * warm / (1 + sqrt(y) + y * sqrt(y));
}

static double g_l(double salinity_g_kg, double temp_c)
{
	return salinity_g_kg * ts_chem_seawater_density_kg_m3(salinity_g_kg, temp_c) / 1000;
}

double ts_chem_salinity_from_conductivity_g_l(double us_cm)
{
	static const double at_temperature[] = {
		0.6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9};
	double rt = us_cm / 1000 / STANDARD_MS_CM / polynomial(at_temperature, 5, REFERENCE_C);

	if (!(us_cm >= 0 && us_cm <= CONDUCTIVITY_MOST_US_CM))
		return (double)NAN;
	return g_l(fmax(0, practical(rt)), REFERENCE_C);
}

double ts_chem_salinity_from_gravity_g_l(double gravity, double temp_c)
{
	double low = 0, high = SALT_MOST_G_KG, wanted;

	if (!(gravity >= 0.99 && gravity <= 1.035 && temp_c >= 0 && temp_c <= 40))
		return (double)NAN;
	wanted = gravity * ts_chem_seawater_density_kg_m3(0, temp_c);
	for (int i = 0; i < 60; i++) {
		double middle = (low + high) / 2;

		if (ts_chem_seawater_density_kg_m3(middle, temp_c) < wanted)
			low = middle;
		else
			high = middle;
	}
	return gravity <= 1 ? 0 : g_l(low, temp_c);
}
