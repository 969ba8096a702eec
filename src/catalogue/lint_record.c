/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rules of one record. What cannot be read at all is found by records/load.c before.
 */
#include <string.h>

#include "catalogue/lint.h"
#include "model/shape.h"

struct named {
	const char *name;
	const struct ts_envelope *envelope;
};

#define NAMED_COUNT 5

static void named_of(const struct ts_envelopes *u, struct named ret[NAMED_COUNT])
{
	const struct named all[NAMED_COUNT] = {{"pH", &u->ph}, {"GH", &u->gh_dh}, {"KH", &u->kh_dh},
		{"temperature", &u->temp_c}, {"salinity", &u->salinity_g_l}};

	memcpy(ret, all, sizeof all);
}

/* "Genus species", "form" -> does the stem say genus-species-form? */
static bool file_name(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const char *slash = strrchr(s->file, '/');
	const char *stem = slash ? slash + 1 : s->file;
	char want[160];
	size_t at = 0;
	const char *parts[] = {s->species, s->form ? "-" : "", s->form ? s->form : ""};

	(void)lint;
	for (size_t part = 0; part < 3; part++) {
		for (const char *c = parts[part]; *c && at + 6 < sizeof want; c++) {
			char lower = (char)(*c >= 'A' && *c <= 'Z' ? *c + 32 : *c);

			if (lower == '.' || lower == '\'')
				continue;
			want[at++] = lower == ' ' ? '-' : lower;
		}
	}
	memcpy(want + at, ".yaml", 6);
	if (strcmp(stem, want) == 0)
		return true;
	ts_text_puts(what, "the file is named ", stem, " and should be ", want, NULL);
	return false;
}

static bool lengths(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	(void)lint;
	if (s->adult_length_cm > 0 && s->adult_length_cm <= s->greatest_length_cm + 1e-9)
		return true;
	ts_text_put(what, "adult_length ");
	ts_text_number_short(what, s->adult_length_cm, 1);
	ts_text_put(what, " cm, greatest_length ");
	ts_text_number_short(what, s->greatest_length_cm, 1);
	ts_text_put(what, " cm (total length)");
	return false;
}

static bool group(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	(void)lint;
	if (s->group.least >= 1 && s->group.least <= s->group.comfortable)
		return true;
	ts_text_put(what, "least lies above comfortable, or below 1");
	return false;
}

static bool ranges(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	static const double least_width[NAMED_COUNT] = {0.5, 1, 1, 2, 0.4};
	struct named all[NAMED_COUNT];
	bool ok = true;

	(void)lint;
	named_of(&s->water.usual, all);
	for (size_t i = 0; i < NAMED_COUNT; i++) {
		const struct ts_range *r = &all[i].envelope->tolerated;

		if (isnan(r->low) || r->high - r->low >= least_width[i] - 1e-9)
			continue;
		ts_text_puts(what, ok ? "" : "; ", all[i].name, " tolerated is narrower than any ",
			"animal's", NULL);
		ok = false;
	}
	return ok;
}

static bool departs(const struct ts_range *tolerated, const struct ts_range *published, double by)
{
	if (isnan(published->low) || isnan(tolerated->low))
		return false;
	if (published->low == published->high) /* one figure: "about"; it must only be contained */
		return tolerated->low > published->low + by ||
		       tolerated->high < published->low - by;
	return (isfinite(published->low) && fabs(tolerated->low - published->low) > by + 1e-9) ||
	       (isfinite(published->high) && fabs(tolerated->high - published->high) > by + 1e-9);
}

static bool published(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const struct ts_envelopes *u = &s->water.usual;
	bool ok = true;

	(void)lint;
	if (departs(&u->ph.tolerated, &s->water.published.ph, 0.5) && !u->ph.why) {
		ts_text_put(what, "pH departs from what is published by more than 0.5");
		ok = false;
	}
	if (departs(&u->gh_dh.tolerated, &s->water.published.gh_dh, 4) && !u->gh_dh.why) {
		ts_text_puts(what, ok ? "" : "; ",
			"GH departs from what is published by more than 4 dH", NULL);
		ok = false;
	}
	if (departs(&u->temp_c.tolerated, &s->water.published.temp_c, 2) && !u->temp_c.why) {
		ts_text_puts(what, ok ? "" : "; ",
			"temperature departs from what is published by more than 2 C", NULL);
		ok = false;
	}
	return ok;
}

/* A published range without its publication is nobody's. */
static bool published_source(
	const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const struct ts_published *p = &s->water.published;

	(void)lint;
	if ((isnan(p->ph.low) && isnan(p->gh_dh.low)) == !p->source &&
		isnan(p->temp_c.low) == !p->temp_source)
		return true;
	ts_text_put(what, "a published range and its publication do not stand together");
	return false;
}

static bool listed(const struct ts_texts *texts, const char *name)
{
	for (size_t i = 0; i < texts->count; i++) {
		if (strcmp(texts->items[i], name) == 0)
			return true;
	}
	return false;
}

static bool grades(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const char *words[] = {"practice", "derived", "memory"};
	const struct ts_texts known = {words, 3};
	struct named all[NAMED_COUNT];
	bool ok = true;

	(void)lint;
	named_of(&s->water.usual, all);
	for (size_t i = 0; i < NAMED_COUNT; i++) {
		const struct ts_texts *source = &all[i].envelope->source;

		for (size_t j = 0; j < source->count; j++) {
			if (listed(&known, source->items[j]) ||
				listed(&s->sources, source->items[j]))
				continue;
			ts_text_puts(what, ok ? "" : "; ", all[i].name, " names '",
				source->items[j], "', which is no grade and not in sources", NULL);
			ok = false;
		}
		if (source->count && source->count != 2) {
			ts_text_puts(what, ok ? "" : "; ", all[i].name,
				" needs two grades, for tolerated and for preferred", NULL);
			ok = false;
		}
	}
	return ok;
}

static bool sources(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const struct ts_envelopes *variants[] = {
		&s->water.usual, &s->water.wild, &s->water.breeding};
	bool ok = true;

	(void)lint;
	for (size_t i = 0; i < s->sources.count; i++) {
		const char *source = s->sources.items[i];
		bool used = (s->water.published.source &&
				    strcmp(s->water.published.source, source) == 0) ||
			    (s->water.published.temp_source &&
				    strcmp(s->water.published.temp_source, source) == 0) ||
			    (s->weight.source && strcmp(s->weight.source, source) == 0) ||
			    (s->name_source && strcmp(s->name_source, source) == 0);

		for (size_t v = 0; v < 3; v++) {
			used |= listed(&variants[v]->ph.source, source) ||
				listed(&variants[v]->gh_dh.source, source) ||
				listed(&variants[v]->kh_dh.source, source) ||
				listed(&variants[v]->temp_c.source, source) ||
				listed(&variants[v]->salinity_g_l.source, source);
		}
		if (used)
			continue;
		ts_text_puts(
			what, ok ? "" : "; ", "source '", source, "' is used by no value", NULL);
		ok = false;
	}
	return ok;
}

/* Genus species, with what the literature puts between or behind: "sp.", "cf.", a name in quotes.
 */
static bool name(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const char *at = s->species;
	size_t words = 1;
	bool ok = *at >= 'A' && *at <= 'Z';

	(void)lint;
	for (at++; ok && *at; at++) {
		if (*at == ' ') {
			words++;
			ok = at[1] && at[1] != ' ';
		} else if (*at >= 'A' && *at <= 'Z') {
			ok = at[-1] == '\'' || at[-1] == '"' || words > 2;
		}
	}
	if (ok && words >= 2)
		return true;
	ts_text_puts(what, "'", s->species, "' is not written like Genus species", NULL);
	return false;
}

static bool beyond(const struct ts_range *r, const struct ts_range *life)
{
	return (isfinite(r->low) && (r->low < life->low || r->low > life->high)) ||
	       (isfinite(r->high) && (r->high > life->high || r->high < life->low));
}

/*
 * What no animal of fresh or brackish water lives beyond: estimates from memory, generous. Sea
 * water has some 350 dH, so hardness says nothing about those that bear salt.
 */
static bool possible(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	static const struct ts_range life[NAMED_COUNT] = {
		{3.5, 10.5}, {0, 60}, {0, 60}, {1, 42}, {0, 45}};
	const struct ts_envelopes *variants[] = {
		&s->water.usual, &s->water.wild, &s->water.breeding};
	bool ok = true;

	(void)lint;
	for (size_t v = 0; v < 3; v++) {
		struct named all[NAMED_COUNT];

		named_of(variants[v], all);
		for (size_t i = 0; i < NAMED_COUNT; i++) {
			bool salt = i == 1 && s->water.usual.salinity_g_l.source.count;

			if (salt || !beyond(&all[i].envelope->tolerated, &life[i]))
				continue;
			ts_text_puts(
				what, ok ? "" : "; ", all[i].name, " tolerated goes beyond ", NULL);
			ts_text_number_short(what, life[i].low, 1);
			ts_text_put(what, "..");
			ts_text_number_short(what, life[i].high, 1);
			ok = false;
		}
	}
	return ok;
}

/* The inner 60 % of tolerated, give or take what rounding moves. */
static bool derived(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	struct named all[NAMED_COUNT];
	bool ok = true;

	(void)lint;
	named_of(&s->water.usual, all);
	for (size_t i = 0; i < NAMED_COUNT; i++) {
		const struct ts_envelope *e = all[i].envelope;
		double fifth = (e->tolerated.high - e->tolerated.low) / 5;

		if (e->source.count < 2 || strcmp(e->source.items[1], "derived") != 0)
			continue;
		if (fabs(e->preferred.low - e->tolerated.low - fifth) <= fifth / 4 &&
			fabs(e->tolerated.high - e->preferred.high - fifth) <= fifth / 4)
			continue;
		ts_text_puts(what, ok ? "" : "; ", all[i].name, " preferred should be ", NULL);
		ts_text_number_short(what, e->tolerated.low + fifth, 1);
		ts_text_put(what, "..");
		ts_text_number_short(what, e->tolerated.high - fifth, 1);
		ok = false;
	}
	return ok;
}

static const char *word_of(const char *key, const struct ts_species *s)
{
	const struct ts_field *field = ts_shape_field(&ts_shape_species, key);
	int index;

	memcpy(&index, (const char *)s + field->offset, sizeof index);
	return field->words[index];
}

static bool takes(const struct ts_species *s, const char *prey)
{
	const struct ts_field *field = ts_shape_field(&ts_shape_species, "preys_on");

	for (unsigned i = 0; field->words[i]; i++) {
		if (strcmp(field->words[i], prey) == 0)
			return s->preys_on & 1u << i;
	}
	return false;
}

/* From this length on a fish that hunts invertebrates, with more than a nibbler's mouth, takes
 * shrimps. */
#define SHRIMP_HUNTER_CM 5

/* Whoever swallows a tenth of its length swallows fry; whoever swallows half of it, shrimps too. */
static bool prey(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const char *gape = word_of("gape", s), *hunts = word_of("hunts", s);
	bool large = strcmp(gape, "predator") == 0 || strcmp(gape, "engulfer") == 0;
	bool more = strcmp(gape, "nibbler") != 0;
	bool hunter = strcmp(hunts, "invertebrates") == 0 || strcmp(hunts, "fish") == 0;
	const char *missing = NULL;

	(void)lint;
	if (more && !takes(s, "fry"))
		missing = "fry";
	else if (!takes(s, "shrimps") && (large || (more && hunter && s->kind == TS_ANIMAL_FISH &&
							   s->adult_length_cm >= SHRIMP_HUNTER_CM)))
		missing = "shrimps";
	if (!missing)
		return true;
	ts_text_puts(what, "gape is ", gape, ", it hunts ", hunts, ", and preys_on does not name ",
		missing, NULL);
	return false;
}

static bool when(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	bool own = s->own_kind_when && strcmp(word_of("to_own_kind", s), "ignores") == 0;
	bool others = s->others_when && strcmp(word_of("to_others", s), "ignores") == 0;

	(void)lint;
	if (own)
		ts_text_put(what, "own_kind_when is given, but to_own_kind is ignores");
	if (others)
		ts_text_puts(what, own ? "; " : "",
			"others_when is given, but to_others is ignores", NULL);
	return !own && !others;
}

const struct ts_lint_rule ts_lint_record_rules[] = {
	{TS_C_LINT_DERIVED, "water", derived},
	{TS_C_LINT_FILE_NAME, NULL, file_name},
	{TS_C_LINT_GRADES, "water", grades},
	{TS_C_LINT_GROUP, "group", group},
	{TS_C_LINT_LENGTHS, "adult_length", lengths},
	{TS_C_LINT_NAME, "species", name},
	{TS_C_LINT_POSSIBLE, "water", possible},
	{TS_C_LINT_PREY, "preys_on", prey},
	{TS_C_LINT_PUBLISHED, "water.published", published},
	{TS_C_LINT_PUBLISHED_SOURCE, "water.published", published_source},
	{TS_C_LINT_RANGES, "water", ranges},
	{TS_C_LINT_SOURCES, "sources", sources},
	{TS_C_LINT_WHEN, NULL, when},
};
const size_t ts_lint_record_rules_count =
	sizeof ts_lint_record_rules / sizeof *ts_lint_record_rules;
