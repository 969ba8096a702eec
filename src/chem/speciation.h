/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The solver under carbonate.h and minerals.h: from a water and one known thing (pH, dissolved
 * CO2, or inorganic carbon) to the concentration of every species. Use it directly when many
 * solves follow one another: the constants are cached and the last answer is a warm start. They
 * are handed in for the temperature of the water, and need not be the published ones.
 */
#ifndef TS_CHEM_SPECIATION_H
#define TS_CHEM_SPECIATION_H

#include "chem/constants.h"
#include "chem/solution.h"

/* pH outside this is refused: hydroxide pairs and bisulphate are not in the model. */
#define TS_CHEM_PH_LOW 2.0
#define TS_CHEM_PH_HIGH 12.0
/* Where the activity equation is used up, mol/L; fresh water has 0.0005 to 0.03. */
#define TS_CHEM_IONIC_STRENGTH_HIGH 0.1
/* Dissolved CO2 accepted, mmol/L: a little over water under pure CO2 at 0 C. */
#define TS_CHEM_CO2_HIGH_MMOL_L 100.0

/*
 * Every species, mol/L, free (not in pairs) where not said otherwise. Zeroed memory is a cold
 * start; handed in again, the last answer is the start of the next solve.
 */
struct ts_ion_species {
	double ph; /* -log10 of the activity of H */
	double h_activity;
	double h, oh, co2, hco3, co3, ca, mg, so4;
	double ca_hco3, ca_co3, mg_hco3, mg_co3, ca_so4, mg_so4; /* ion pairs */
	double ionic_strength;
	double gamma_0, gamma_1, gamma_2; /* activity coefficients by charge */
	unsigned rounds;                  /* of the outer iteration, in the last solve */
};

/*
 * pH known, alkalinity known, inorganic carbon sought. TS_NO when the two contradict one another
 * (more hydroxide or acid than the whole alkalinity). TS_BAD_INPUT outside the ranges of
 * solution.h and above. On failure `io` is left as it was; so also for the next two.
 */
TS_MUST_USE enum ts_status ts_chem_speciate_at_ph(const struct ts_chem_constants *constants,
	const struct ts_solution *s, double ph, struct ts_ion_species *io);

/* Dissolved CO2 (mmol/L, above 0) and alkalinity known: water open to a gas. */
TS_MUST_USE enum ts_status ts_chem_speciate_at_co2(const struct ts_chem_constants *constants,
	const struct ts_solution *s, double co2_mmol_l, struct ts_ion_species *io);

/* Alkalinity and inorganic carbon known: closed water. */
TS_MUST_USE enum ts_status ts_chem_speciate_closed(const struct ts_chem_constants *constants,
	const struct ts_solution *s, struct ts_ion_species *io);

/* Inorganic carbon in all species, mmol/L. */
double ts_chem_species_dic_mmol_l(const struct ts_ion_species *species);
/* log10 of how far Ca and CO3 exceed the solubility of the mineral; -99 without one of them. */
double ts_chem_species_si(const struct ts_chem_constants *constants,
	const struct ts_ion_species *species, enum ts_mineral mineral);

#endif
