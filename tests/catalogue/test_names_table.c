/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Names as people type them (tests/data/names.csv) on the shipped records: each reaches its animal,
 * a list that holds it, or a plain no.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

#include "base/findings.h"
#include "base/text.h"
#include "catalogue/name_heads.h"
#include "catalogue/name_rows.h"
#include "words/names.h"

/* Fewer rows than this would not be the table that was written. */
#define ROWS_LEAST 300

/* Names of records that are a group's word; fewer would not be the records that were written. */
#define GROUP_NAMES_LEAST 50

struct row {
	char line[256];
	const char *typed, *expected, *id;
};

static struct ts_catalogue catalogue;

static int open_catalogue(void **state)
{
	struct ts_findings findings;

	(void)state;
	ts_findings_open(&findings, NULL);
	ts_catalogue_open(&catalogue, NULL);
	assert_int_equal(ts_catalogue_add_folder(&catalogue, TS_SPECIES_DIR, &findings), TS_OK);
	ts_findings_drop(&findings);
	return 0;
}

static int close_catalogue(void **state)
{
	(void)state;
	ts_catalogue_close(&catalogue);
	return 0;
}

/* The next row; false at the end. */
static bool next(FILE *file, struct row *ret)
{
	while (fgets(ret->line, sizeof ret->line, file)) {
		char *comma = strchr(ret->line, ',');

		ret->line[strcspn(ret->line, "\r\n")] = '\0';
		if (*ret->line == '#' || strncmp(ret->line, "typed,", 6) == 0)
			continue;
		assert_non_null(comma);
		*comma = '\0';
		ret->typed = ret->line;
		ret->expected = comma + 1;
		comma = strchr(comma + 1, ',');
		assert_non_null(comma);
		*comma = '\0';
		ret->id = comma + 1;
		return true;
	}
	return false;
}

static bool is(const struct ts_species *s, const char *id)
{
	const char *slash = strrchr(s->file, '/');
	size_t len = strlen(id);

	return strncmp(slash + 1, id, len) == 0 && strcmp(slash + 1 + len, ".yaml") == 0;
}

static bool listed(const struct ts_candidates *c, const char *id)
{
	if (c->how != TS_NAME_GROUP && c->how != TS_NAME_NEAR && c->how != TS_NAME_SHARED)
		return false;
	for (size_t i = 0; i < c->count; i++) {
		if (is(c->items[i].species, id))
			return true;
	}
	for (size_t i = 0; c->how == TS_NAME_GROUP && i < catalogue.count; i++) {
		if (is(catalogue.items[i], id))
			return ts_name_row_holds(c->row, catalogue.items[i]);
	}
	return !*id;
}

static bool holds(const struct row *row, const struct ts_species *s, const struct ts_candidates *c)
{
	if (strcmp(row->expected, "animal") == 0)
		return s && c->how == TS_NAME_SAME && is(s, row->id);
	if (strcmp(row->expected, "taken") == 0)
		return s && c->how == TS_NAME_GUESSED && is(s, row->id);
	if (strcmp(row->expected, "form") == 0)
		return c->how == TS_NAME_FORM && (*row->id ? s && is(s, row->id) : !s);
	if (strcmp(row->expected, "list") == 0)
		return !s && listed(c, row->id);
	if (strcmp(row->expected, "outside") == 0)
		return !s && c->how == TS_NAME_OUTSIDE;
	if (strcmp(row->expected, "unknown") == 0)
		return !s && (c->how == TS_NAME_UNKNOWN || c->how == TS_NAME_NUMBER);
	return false;
}

/* What is not the very name is said, and only that. */
static bool said(const struct row *row, const struct ts_species *s, const struct ts_candidates *c)
{
	struct ts_text text;
	bool fine;

	ts_text_open(&text, NULL);
	if (s)
		ts_say_taken(&text, row->typed, c);
	else
		ts_say_candidates(&text, row->typed, c);
	fine = (text.len == 0) == (c->how == TS_NAME_SAME) &&
	       (!text.len || strstr(ts_text_get(&text), row->typed));
	if (s && c->how != TS_NAME_SAME)
		fine &= strstr(ts_text_get(&text), s->species) != NULL;
	ts_text_drop(&text);
	return fine;
}

static void test_names__lead_where_the_table_says(void **state)
{
	FILE *file = fopen(TS_TEST_DATA "/names.csv", "r");
	size_t rows = 0, wrong = 0;
	struct row row;

	(void)state;
	assert_non_null(file);
	while (next(file, &row)) {
		struct ts_candidates c;
		const struct ts_species *s = ts_catalogue_species(&catalogue, row.typed, &c);

		rows++;
		if (holds(&row, s, &c) && said(&row, s, &c))
			continue;
		wrong++;
		print_error("'%s': wanted %s %s, got %d %s\n", row.typed, row.expected, row.id,
			(int)c.how,
			s         ? s->file
			: c.count ? c.items[0].species->file
				  : "");
	}
	fclose(file);
	print_message("%zu names, %zu astray\n", rows, wrong);
	assert_true(rows >= ROWS_LEAST);
	assert_int_equal(wrong, 0);
}

/* Every name of every record leads to its animal, to a list of those that share it, or to a sister
 * that is sold more, beside which it is told. */
static void test_names__of_records_reach_their_record(void **state)
{
	size_t wrong = 0;

	(void)state;
	for (size_t i = 0; i < catalogue.count; i++) {
		const struct ts_species *s = catalogue.items[i];
		const char *name;

		for (size_t n = 0; (name = ts_species_name(s, n)); n++) {
			struct ts_candidates c;
			const struct ts_species *one = ts_catalogue_species(&catalogue, name, &c);
			bool fine = one == s || (!n && s->form);

			for (size_t k = 0; (!one || c.how == TS_NAME_GUESSED) && k < c.count; k++)
				fine |= c.items[k].species == s;
			fine |= !one && c.row && ts_name_row_holds(c.row, s);
			if (!fine)
				print_error("'%s' does not lead to %s\n", name, s->file);
			wrong += !fine;
		}
	}
	assert_int_equal(wrong, 0);
}

static size_t members_of(const struct ts_name_row *row)
{
	size_t count = 0;

	for (size_t i = 0; i < catalogue.count; i++)
		count += ts_name_row_holds(row, catalogue.items[i]);
	return count;
}

/* Whether a row of a group has this among its names, in any language. */
static const struct ts_name_row *group_of(const char *name)
{
	const struct ts_name_row *row;

	for (size_t i = 0; (row = ts_name_row_at(i)); i++) {
		for (const char *at = row->names; row->how == TS_NAME_GROUP && *at;) {
			size_t word = *at == '*', len = strcspn(at, "|");

			if (strlen(name) == len - word && !strncasecmp(at + word, name, len - word))
				return row;
			at += len + (at[len] == '|');
		}
	}
	return NULL;
}

/* A group's word that a record has for its own name leads to all that it means, never to one that
 * is not told: singular and plural. */
static void test_names__of_groups_reach_no_one_silently(void **state)
{
	size_t met = 0, wrong = 0;

	(void)state;
	for (size_t i = 0; i < catalogue.count; i++) {
		const char *name;

		for (size_t n = 2; (name = ts_species_name(catalogue.items[i], n)); n++) {
			const struct ts_name_row *row = group_of(name);
			char plural[100];

			if (!row)
				continue;
			met++;
			snprintf(plural, sizeof plural, "%ss", name);
			for (int many = 0; many < 2; many++) {
				struct ts_candidates c;
				const struct ts_species *one =
					ts_catalogue_species(&catalogue, many ? plural : name, &c);
				bool told = one ? c.how == TS_NAME_GUESSED && c.all > 1
						: c.row == row || c.how == TS_NAME_SHARED;

				if (!told && members_of(row) > 1) {
					wrong++;
					print_error("'%s' is %s alone\n", many ? plural : name,
						one ? one->species : "nothing");
				}
			}
		}
	}
	print_message("%zu names of groups in records\n", met);
	assert_true(met >= GROUP_NAMES_LEAST);
	assert_int_equal(wrong, 0);
}

/* No name that is understood is passed over by its head; words of a sentence are. */
static void test_heads__hold_every_name_as_it_is_typed(void **state)
{
	static const char *const others[] = {"litres", "hardness", "what", "should"};
	static struct ts_name_heads heads;
	FILE *file = fopen(TS_TEST_DATA "/names.csv", "r");
	size_t named = 0, missed = 0;
	struct row row;

	(void)state;
	assert_non_null(file);
	ts_name_heads_make(&catalogue, &heads);
	while (next(file, &row)) {
		struct ts_candidates c;

		(void)ts_catalogue_species(&catalogue, row.typed, &c);
		if (c.how == TS_NAME_UNKNOWN || c.how == TS_NAME_NEAR || c.how == TS_NAME_NUMBER ||
			c.how == TS_NAME_GUESSED)
			continue; /* looked for in another way */
		named++;
		if (!ts_name_heads_may_name(&heads, row.typed)) {
			print_error("'%s' is passed over\n", row.typed);
			missed++;
		}
	}
	assert_int_equal(fclose(file), 0);
	assert_true(named > ROWS_LEAST / 2);
	assert_int_equal(missed, 0);
	for (size_t i = 0; i < sizeof others / sizeof *others; i++)
		assert_false(ts_name_heads_may_name(&heads, others[i]));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_names__lead_where_the_table_says),
		cmocka_unit_test(test_heads__hold_every_name_as_it_is_typed),
		cmocka_unit_test(test_names__of_records_reach_their_record),
		cmocka_unit_test(test_names__of_groups_reach_no_one_silently),
	};

	return cmocka_run_group_tests(tests, open_catalogue, close_catalogue);
}
