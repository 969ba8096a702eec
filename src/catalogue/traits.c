/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Traits are not rows of their own: they are the rows of the species shape that take words, so a
 * new key of a record can be asked for at once.
 */
#include "catalogue/traits.h"

#include <string.h>
#include <strings.h>

static bool takes_words(const struct ts_field *field)
{
	return field->kind == TS_WORD || field->kind == TS_WORDS;
}

/* The blocks whose words are asked for by their own key. */
static bool open_block(const struct ts_field *field)
{
	return field->kind == TS_SUB &&
	       (strcmp(field->key, "needs") == 0 || strcmp(field->key, "group") == 0);
}

bool ts_trait_at(size_t index, struct ts_trait *ret)
{
	const struct ts_shape *shape = &ts_shape_species;

	for (size_t i = 0; i < shape->count; i++) {
		const struct ts_field *field = &shape->fields[i];

		if (takes_words(field) && !index--) {
			*ret = (struct ts_trait){field, field->offset};
			return true;
		}
		for (size_t j = 0; open_block(field) && j < field->sub->count; j++) {
			const struct ts_field *inner = &field->sub->fields[j];

			if (takes_words(inner) && !index--) {
				*ret = (struct ts_trait){inner, field->offset + inner->offset};
				return true;
			}
		}
	}
	return false;
}

static bool same_key(const char *asked, const char *key)
{
	while (*asked && (*asked == *key || (*asked == '-' && *key == '_'))) {
		asked++;
		key++;
	}
	return *asked == *key;
}

bool ts_trait_find(const char *key, struct ts_trait *ret)
{
	struct ts_trait trait;

	for (size_t i = 0; ts_trait_at(i, &trait); i++) {
		if (same_key(key, trait.field->key)) {
			*ret = trait;
			return true;
		}
	}
	return false;
}

static bool has_word(const struct ts_species *species, const struct ts_trait *trait, int word)
{
	const char *at = (const char *)species + trait->offset;

	if (trait->field->kind == TS_WORDS) {
		unsigned bits;

		memcpy(&bits, at, sizeof bits);
		return bits & 1u << word;
	} else {
		int one;

		memcpy(&one, at, sizeof one);
		return one == word;
	}
}

static bool envelope_has(const struct ts_envelope *e, const char *source)
{
	for (size_t i = 0; i < e->source.count; i++) {
		if (strcmp(e->source.items[i], source) == 0)
			return true;
	}
	return false;
}

static bool envelopes_have(const struct ts_envelopes *e, const char *source)
{
	return envelope_has(&e->ph, source) || envelope_has(&e->gh_dh, source) ||
	       envelope_has(&e->kh_dh, source) || envelope_has(&e->temp_c, source) ||
	       envelope_has(&e->salinity_g_l, source);
}

bool ts_species_has_source(const struct ts_species *s, const char *source)
{
	if (s->water.published.source && strcmp(s->water.published.source, source) == 0)
		return true;
	for (size_t i = 0; i < s->sources.count; i++) {
		if (strcmp(s->sources.items[i], source) == 0)
			return true;
	}
	return envelopes_have(&s->water.usual, source) || envelopes_have(&s->water.wild, source) ||
	       envelopes_have(&s->water.breeding, source);
}

/* Does it live in all of the water asked for? The bands are those of every other answer. */
static bool lives_in(const struct ts_filter *filter, const struct ts_species *species)
{
	const struct ts_keeping keeping = {.wild = filter->wild, .breeding = filter->breeding};
	const struct ts_profile unknown = {0};
	struct ts_match match;

	ts_match_species(species, &unknown, &keeping, NULL, &match);
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_measure *asked = &filter->water[p];
		const struct ts_range *band = &match.at[p].tolerated;

		if (asked->kind == TS_MEASURE_NONE)
			continue;
		if (!(band->low <= asked->low && asked->high <= band->high))
			return false;
	}
	return true;
}

bool ts_filter_passes(const struct ts_filter *f, const struct ts_species *species)
{
	bool water = false;

	for (size_t i = 0; i < f->wanted_count; i++) {
		if (!has_word(species, &f->wanted[i].trait, f->wanted[i].word))
			return false;
	}
	if (f->least_length_cm > 0 && species->adult_length_cm < f->least_length_cm - 1e-9)
		return false;
	if (f->greatest_length_cm > 0 && species->adult_length_cm > f->greatest_length_cm + 1e-9)
		return false;
	if (f->family && strcasecmp(f->family, species->family) != 0)
		return false;
	if (f->source && !ts_species_has_source(species, f->source))
		return false;
	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		water |= f->water[p].kind != TS_MEASURE_NONE;
	return !water || lives_in(f, species);
}
