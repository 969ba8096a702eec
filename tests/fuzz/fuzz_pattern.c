/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Any bytes as the pattern of find, as plain text where the first byte is odd, over a few names
 * with accents, hyphens and apostrophes; then as a name that somebody misspelt.
 */
#include <stdlib.h>
#include <string.h>

#include "catalogue/pattern.h"
#include "holds.h"

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

static void make_catalogue(
	struct ts_catalogue *catalogue, struct ts_species *species, const struct ts_species **items)
{
	*catalogue = (struct ts_catalogue){.items = items, .count = SPECIES};
	for (size_t i = 0; i < SPECIES; i++) {
		species[i] = (struct ts_species){
			.species = names[i][0], .family = "Exemplidae", .file = "exempla.yaml"};
		species[i].synonyms = (struct ts_texts){&names[i][1], 1};
		species[i].common.en = (struct ts_texts){&names[i][2], 2};
		items[i] = &species[i];
	}
}

static size_t characters(const char *text)
{
	size_t count = 0;

	for (; *text; text++)
		count += ((unsigned char)*text & 0xc0) != 0x80;
	return count;
}

static void search(const char *text, bool fixed, const struct ts_catalogue *catalogue)
{
	struct ts_pattern_fault fault = {0, ""};
	struct ts_pattern *pattern = NULL;
	enum ts_status status = ts_pattern_open(text, fixed, NULL, &pattern, &fault);

	if (status == TS_BAD_INPUT) {
		hold(!pattern && *fault.says && memchr(fault.says, '\0', sizeof fault.says));
		hold(fault.column >= 1 && fault.column <= characters(text) + 1);
		return;
	}
	hold(status == TS_OK && pattern);
	for (size_t i = 0; i < catalogue->count; i++) {
		const char *name = NULL;

		status = ts_pattern_species(pattern, catalogue->items[i], &name);
		hold(status == TS_OK || status == TS_NO || (status == TS_BAD_INPUT && !fixed));
		hold((status == TS_OK) == (name != NULL));
	}
	ts_pattern_close(pattern);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static struct ts_species species[SPECIES];
	static const struct ts_species *items[SPECIES];
	static struct ts_catalogue catalogue;
	struct ts_candidates near;
	const struct ts_species *meant;
	char *text;

	if (size < 1)
		return 0;
	if (!catalogue.count)
		make_catalogue(&catalogue, species, items);
	text = malloc(size);
	hold(text != NULL);
	memcpy(text, data + 1, size - 1);
	text[size - 1] = '\0';
	search(text, data[0] % 2, &catalogue);
	meant = ts_catalogue_species(&catalogue, text, &near);
	hold(meant || (near.count <= TS_CANDIDATES_MOST && near.count <= near.all));
	for (size_t i = 0; !meant && i < near.count; i++)
		hold(near.items[i].species && near.items[i].name);
	free(text);
	return 0;
}
