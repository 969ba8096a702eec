/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Salt from what is easily read: conductivity by the Practical Salinity Scale 1978 (UNESCO 1981,
 * Technical Papers in Marine Science 37; Fofonoff & Millard 1983, no. 44), below 2 with the
 * correction of Hill, Dauphinee & Woods 1986 (IEEE J. Oceanic Eng. OE-11:109-112); specific
 * gravity by the equation of state EOS-80 (Millero & Poisson 1981, Deep-Sea Res. 28A:625-629).
 * They hold for sea water thinned with pure water; salt of a tap is of other ions, and stands
 * beside it within about a third (estimate from memory).
 */
#ifndef TS_CHEM_SALINITY_H
#define TS_CHEM_SALINITY_H

/* Density of sea water at one atmosphere, kg/m3; temp_c 0..40 C, salinity 0..42 g/kg. */
double ts_chem_seawater_density_kg_m3(double salinity_g_kg, double temp_c);

/* Salt in g/L from conductivity at 25 C, uS/cm (0..75000); NAN outside. */
double ts_chem_salinity_from_conductivity_g_l(double conductivity_25_us_cm);

/*
 * Salt in g/L from specific gravity: the density over that of pure water of the same temperature,
 * 0.99..1.035; 0 below 1. temp_c 0..40 C, else NAN.
 */
double ts_chem_salinity_from_gravity_g_l(double specific_gravity, double temp_c);

#endif
