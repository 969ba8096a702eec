/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Words that never change; kept together so that every format says the same.
 */
#include "words/care.h"

const char *const ts_co2_words[TS_CO2_DANGER__COUNT + 1] = {"borne", "concern", "danger", NULL};

/* In the order of enum ts_drift_assumed. */
const char *const ts_drift_assumed_words[] = {
	"the tank's KH was not read: taken as the new water's",
	"the tank's GH was not read: taken as the new water's",
	"the tank's nitrate was not read: taken as the new water's",
	"ammonia was not read: taken as nil",
	"the filter is not described: taken as mature",
	"the routine is not given: 30 % every 7 days",
	"the cover is not given: evaporation as from an open tank",
	"the tank's temperature is not given: 25 C",
	"the new water changes with the season, by its dated readings",
	"active soil is taken as fresh; how much it takes up is an estimate",
	"peat takes more of the buffer than is shown, and lowers the pH",
	"pH is given around the tank's own level, which its reading shows",
	"treated chloramine leaves ammonium in the new water",
	"no KH is known: nothing is said of KH and pH",
	"what replaces evaporated water is not given: taken as the new water",
	"the new water's GH was not read: taken as the tank's",
	"no GH is known: nothing is said of it",
	NULL,
};

const char ts_caution_acid[] =
	"This shows what would happen and is no recipe. Put neither acid nor base into a tank with "
	"animals; a lower pH comes from fewer minerals, a higher one from more. Strong acids and "
	"bases burn eyes, skin and lungs: that is work for goggles, gloves and people who have "
	"learnt it.";
const char ts_caution_acid_short[] = "No recipe: put neither acid nor base into a tank with "
				     "animals; strong ones burn eyes, skin "
				     "and lungs.";
const char ts_caution_drift[] =
	"This is a forecast of what feeding and water changes add up to, no measurement: test KH "
	"and "
	"nitrate, and believe the test. Treat new water against chlorine and chloramine. Suffering "
	"animals are a vet's matter.";

const char ts_guide_chasing[] = "More: docs/guide.md, \"Why chasing pH fails\"";
const char ts_guide_suits[] = "More: docs/guide.md, \"Which animals suit it\"";
const char ts_guide_alone[] = "More: docs/guide.md, \"When to leave it alone\"";
const char ts_guide_old_tanks[] = "More: docs/guide.md, \"Old tanks\"";
const char ts_guide_fails[] = "More: docs/guide.md, \"When something fails, or you move\"";
const char ts_guide_due[] = "More: docs/guide.md, \"What to test, and when\"";
