/* SPDX-License-Identifier: Apache-2.0 */
#include "names.h"

#define NAMES_MOST 4
#define SPECIES 4

/* Invented names. */
static const char *names[SPECIES][NAMES_MOST] = {
	{"Exempla mollis", "Olda mollis", "soft exemplar", "Weiche Probe"},
	{"Exempla l\xc3\xa9ta", "l'exemple-doux", "ejempl\xc3\xb3 \xc3\xb1o",
		"Stra\xc3\x9f"
		"enprobe"},
	{"Exempla crusta", "red-nosed shrimp exemplar", "a", "\xe7\xa4\xba\xe4\xbe\x8b"},
	{"Exempla sp. 'night 12'", "O'Sample's exemplar", "(half) exemplar",
		"aaaaaaaaaaaaaaaaaaaaaaaa"},
};

const struct ts_catalogue *named_catalogue(void)
{
	static struct ts_species species[SPECIES];
	static const struct ts_species *items[SPECIES];
	static struct ts_catalogue catalogue = {.items = items, .count = SPECIES};

	for (size_t i = 0; !items[SPECIES - 1] && i < SPECIES; i++) {
		species[i] = (struct ts_species){
			.species = names[i][0], .family = "Exemplidae", .file = "exempla.yaml"};
		species[i].synonyms = (struct ts_texts){&names[i][1], 1};
		species[i].common.en = (struct ts_texts){&names[i][2], 2};
		items[i] = &species[i];
	}
	return &catalogue;
}
