/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The named rules of species records. What cannot be read at all is found by records/load.c before.
 */
#include "catalogue/lint.h"

#include <string.h>

#include "base/findings.h"

struct named {
	const char *name;
	const struct ts_envelope *envelope;
};

#define NAMED_COUNT 5

static void usual_of(const struct ts_species *s, struct named ret[NAMED_COUNT])
{
	const struct ts_envelopes *u = &s->water.usual;
	const struct named all[NAMED_COUNT] = {{"pH", &u->ph}, {"GH", &u->gh_dh}, {"KH", &u->kh_dh},
		{"temperature", &u->temp_c}, {"salinity", &u->salinity_g_l}};

	memcpy(ret, all, sizeof all);
}

/* "Genus species", "form" -> does the stem say genus-species-form? */
static bool file_name(const struct ts_species *s, struct ts_text *what)
{
	const char *slash = strrchr(s->file, '/');
	const char *stem = slash ? slash + 1 : s->file;
	char want[160];
	size_t at = 0;
	const char *parts[] = {s->species, s->form ? "-" : "", s->form ? s->form : ""};

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

static bool lengths(const struct ts_species *s, struct ts_text *what)
{
	if (s->adult_length_cm > 0 && s->adult_length_cm <= s->greatest_length_cm + 1e-9)
		return true;
	ts_text_put(what, "adult_length ");
	ts_text_number_short(what, s->adult_length_cm, 1);
	ts_text_put(what, " cm, greatest_length ");
	ts_text_number_short(what, s->greatest_length_cm, 1);
	ts_text_put(what, " cm (total length)");
	return false;
}

static bool group(const struct ts_species *s, struct ts_text *what)
{
	if (s->group.least >= 1 && s->group.least <= s->group.comfortable)
		return true;
	ts_text_put(what, "group: least lies above comfortable, or below 1");
	return false;
}

static bool ranges(const struct ts_species *s, struct ts_text *what)
{
	static const double least_width[NAMED_COUNT] = {0.5, 1, 1, 2, 0.4};
	struct named all[NAMED_COUNT];
	bool ok = true;

	usual_of(s, all);
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

static bool published(const struct ts_species *s, struct ts_text *what)
{
	const struct ts_envelopes *u = &s->water.usual;
	bool ok = true;

	if (!s->water.published.source)
		return true;
	if (departs(&u->ph.tolerated, &s->water.published.ph, 0.5) && !u->ph.why) {
		ts_text_put(what, "pH departs from what is published by more than 0.5");
		ok = false;
	}
	if (departs(&u->gh_dh.tolerated, &s->water.published.gh_dh, 4) && !u->gh_dh.why) {
		ts_text_puts(what, ok ? "" : "; ",
			"GH departs from what is published by more than 4 dH", NULL);
		ok = false;
	}
	return ok;
}

static bool listed(const struct ts_texts *texts, const char *name)
{
	for (size_t i = 0; i < texts->count; i++) {
		if (strcmp(texts->items[i], name) == 0)
			return true;
	}
	return false;
}

static bool grades(const struct ts_species *s, struct ts_text *what)
{
	const char *words[] = {"practice", "derived", "memory"};
	const struct ts_texts known = {words, 3};
	struct named all[NAMED_COUNT];
	bool ok = true;

	usual_of(s, all);
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

static bool sources(const struct ts_species *s, struct ts_text *what)
{
	const struct ts_envelopes *variants[] = {
		&s->water.usual, &s->water.wild, &s->water.breeding};
	bool ok = true;

	for (size_t i = 0; i < s->sources.count; i++) {
		const char *source = s->sources.items[i];
		bool used = (s->water.published.source &&
				    strcmp(s->water.published.source, source) == 0) ||
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

const struct ts_lint_rule ts_lint_rules[] = {
	{TS_C_LINT_FILE_NAME, file_name},
	{TS_C_LINT_GRADES, grades},
	{TS_C_LINT_GROUP, group},
	{TS_C_LINT_LENGTHS, lengths},
	{TS_C_LINT_PUBLISHED, published},
	{TS_C_LINT_RANGES, ranges},
	{TS_C_LINT_SOURCES, sources},
};
const size_t ts_lint_rules_count = sizeof ts_lint_rules / sizeof *ts_lint_rules;

bool ts_lint_species(const struct ts_species *species, struct ts_findings *findings)
{
	struct ts_place place = {.file = species->file};
	bool ok = true;

	for (size_t i = 0; i < ts_lint_rules_count; i++) {
		struct ts_text what;

		ts_text_open(&what, NULL);
		if (!ts_lint_rules[i].keeps(species, &what)) {
			ts_finding_add(findings, &ts_codes[ts_lint_rules[i].code], &place,
				ts_text_get(&what), NULL);
			ok = false;
		}
		if (findings)
			findings->no_memory |= what.failed;
		ts_text_drop(&what);
	}
	return ok;
}
