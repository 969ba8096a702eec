/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rules that look beyond the values of one record: at other records, at the described publications,
 * at the file itself.
 */
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "catalogue/lint.h"
#include "model/shape.h"
#include "records/file.h"
#include "records/load.h"
#include "stock/rules.h"

/* The first claim of that name; NULL: none. */
static const struct ts_claim *first_claim(const struct ts_lint *lint, const char *name)
{
	size_t low = 0, high = lint->claim_count;

	while (low < high) {
		size_t middle = low + (high - low) / 2;

		if (strcasecmp(lint->claims[middle].name, name) < 0)
			low = middle + 1;
		else
			high = middle;
	}
	return low < lint->claim_count && strcasecmp(lint->claims[low].name, name) == 0
		       ? &lint->claims[low]
		       : NULL;
}

static bool same_record(const struct ts_species *a, const struct ts_species *b)
{
	return strcmp(a->species, b->species) == 0 &&
	       strcmp(a->form ? a->form : "", b->form ? b->form : "") == 0;
}

/* Another record of the same folder, species and form that comes before this one. */
static bool twice(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const struct ts_claim *end = lint->claims + lint->claim_count;

	for (const struct ts_claim *c = first_claim(lint, s->species);
		c && c < end && strcasecmp(c->name, s->species) == 0; c++) {
		if (c->by == s || strcmp(c->by->file, s->file) >= 0 || !same_record(c->by, s) ||
			c->by->folder != s->folder)
			continue;
		ts_text_puts(what, s->species, s->form ? " " : "", s->form ? s->form : "",
			" has a record already, ", c->by->file, NULL);
		return false;
	}
	return true;
}

/* A synonym that is the accepted name, or a synonym, of another species. */
static bool synonym(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const struct ts_claim *end = lint->claims + lint->claim_count;

	for (size_t i = 0; i < s->synonyms.count; i++) {
		const char *name = s->synonyms.items[i];

		for (const struct ts_claim *c = first_claim(lint, name);
			c && c < end && strcasecmp(c->name, name) == 0; c++) {
			bool accepted = strcasecmp(c->by->species, name) == 0;

			/* one species in two records shares its synonyms */
			if (c->by != s && strcmp(c->by->species, s->species) == 0)
				continue;
			if (c->by == s && !accepted)
				continue;
			ts_text_puts(what, name,
				accepted ? " is the accepted name of another record, "
					 : " is a synonym in another record too, ",
				c->by->file, NULL);
			return false;
		}
	}
	return true;
}

static bool crosses(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const struct ts_catalogue *c = lint->catalogue;

	for (size_t i = 0; i < s->crosses_with.count; i++) {
		const struct ts_texts one = {&s->crosses_with.items[i], 1};
		const struct ts_species only = {.crosses_with = one};

		for (size_t j = 0; j < c->count; j++) {
			if (!ts_rule_names(&only, c->items[j]) || ts_rule_names(c->items[j], s))
				continue;
			ts_text_puts(what, c->items[j]->species, " does not name ", s->species,
				" in turn", NULL);
			return false;
		}
	}
	return true;
}

static bool described(const struct ts_lint *lint, const char *source)
{
	for (size_t i = 0; i < lint->sources.count; i++) {
		if (strcmp(lint->sources.items[i], source) == 0)
			return true;
	}
	return false;
}

static bool source(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	for (size_t i = 0; lint->sources.count && i < s->sources.count; i++) {
		if (described(lint, s->sources.items[i]))
			continue;
		ts_text_puts(
			what, "no file in sources describes '", s->sources.items[i], "'", NULL);
		return false;
	}
	return true;
}

/* The index of the row whose key starts this line; the number of rows when none does. */
static size_t row_of(const char *line)
{
	size_t len = strcspn(line, ":\n");
	size_t i = 0;

	for (; i < ts_shape_species.count; i++) {
		const char *key = ts_shape_species.fields[i].key;

		if (strlen(key) == len && strncmp(key, line, len) == 0)
			break;
	}
	return i;
}

static bool in_order(const char *text, struct ts_text *what)
{
	const struct ts_field *rows = ts_shape_species.fields;
	size_t last = 0;

	for (const char *line = text; *line;) {
		size_t row = row_of(line);

		if (row < last) {
			ts_text_puts(what, rows[row].key, " stands behind ", rows[last].key, NULL);
			return false;
		}
		last = row < ts_shape_species.count ? row : last;
		line += strcspn(line, "\n");
		line += *line == '\n';
	}
	return true;
}

/* Records are compared line by line by people, so their keys stand in one order. */
static bool order(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	struct ts_text text;
	char *bytes;
	size_t len;
	enum ts_status status = TS_NO;
	bool kept;

	if (strcmp(s->file, "-") != 0)
		status = ts_file_read(lint->catalogue->system, s->file, TS_OPEN_ORDINARY,
			TS_FILE_BYTES_MOST, &lint->arena.allocator, &bytes, &len, NULL);
	what->failed |= status == TS_NO_MEMORY;
	if (status)
		return true;
	ts_text_open(&text, &lint->arena.allocator);
	ts_text_add(&text, bytes, len);
	lint->arena.allocator.resize(lint->arena.allocator.state, bytes, 0);
	kept = in_order(ts_text_get(&text), what);
	what->failed |= text.failed;
	ts_text_drop(&text);
	return kept;
}

const struct ts_lint_rule ts_lint_across_rules[] = {
	{TS_C_LINT_CROSSES, "crosses_with", crosses},
	{TS_C_LINT_ORDER, NULL, order},
	{TS_C_LINT_SOURCE, "sources", source},
	{TS_C_LINT_SYNONYM, "synonyms", synonym},
	{TS_C_LINT_TWICE, "species", twice},
};
const size_t ts_lint_across_rules_count =
	sizeof ts_lint_across_rules / sizeof *ts_lint_across_rules;
