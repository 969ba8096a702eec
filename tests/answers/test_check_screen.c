/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What holds of every first screen of check: it is short, names one size of tank and one range of
 * nitrate, says nothing more of an animal that it says not to buy, and who is named in the place of
 * one is not refused when he is asked for. Random plans over what is sold, random tanks and waters.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tapshoal/catalogue.h>

#include "../given.h"
#include "../random.h"
#include "../shipped.h"
#include "answers/check.h"
#include "report/document.h"
#include "report/screen.h"
#include "show/check.h"

#define LINES 9
/* Of a plan of nine lines, on a screen of 80 columns. */
#define SCREEN_MOST 32

static const struct ts_species *sold[1000];
static size_t sold_count;

struct scene {
	const struct ts_species *species[LINES];
	struct ts_candidates candidates[LINES];
	struct ts_stock_line lines[LINES];
	struct ts_reading supply;
	struct ts_plan plan;
};

static void any_line(struct random *r, struct scene *s, size_t at)
{
	s->species[at] = sold[any_below(r, (unsigned)sold_count)];
	s->lines[at] = (struct ts_stock_line){.species = s->species[at]->species,
		.count = any_percent(r, 70) ? ceil(s->species[at]->group.comfortable)
					    : any_below(r, 15) + 1};
}

static void any_scene(struct random *r, size_t lines, struct scene *s)
{
	*s = (struct scene){.supply = {.method = TS_METHOD_DROPS}};
	s->supply.gh_dh = value(any_in(r, 1, 25, 1));
	if (any_percent(r, 60))
		s->supply.kh_dh = value(any_in(r, 0.5, 15, 0.5));
	s->plan = (struct ts_plan){
		.water = {.readings = &s->supply, .reading_count = any_percent(r, 85)},
		.stock = s->lines,
		.stock_count = lines};
	if (any_percent(r, 60))
		s->plan.tank.temp_c = value(any_in(r, 20, 29, 1));
	if (any_percent(r, 45)) {
		s->plan.tank.length_cm = any_in(r, 40, 200, 20);
		s->plan.tank.width_cm = any_in(r, 30, 70, 10);
		s->plan.tank.height_cm = any_in(r, 30, 60, 10);
	} else if (any_percent(r, 80)) {
		s->plan.tank.volume_l = any_in(r, 20, 400, 20);
	}
	for (size_t i = 0; i < lines; i++)
		any_line(r, s, i);
}

static struct ts_check_result answered(
	const struct scene *s, struct ts_arena *arena, const struct ts_practice *practice)
{
	struct ts_check_question question = {
		NULL, &s->plan, s->species, s->candidates, NULL, NULL, 0, 0, (double)NAN, NULL, 0};
	struct ts_asking asking = {arena, practice, 20522, catalogue.items, catalogue.count};
	struct ts_check_result result;

	assert_int_equal(ts_answer_check(&question, &asking, &result), TS_OK);
	return result;
}

/* The first screen, in the arena. */
static const char *shown(const struct ts_check_result *a, struct ts_arena *arena)
{
	struct ts_screen screen = {.columns = 80};
	struct ts_document doc;
	struct ts_text text;
	const char *all;

	ts_doc_open(&doc, arena, "A plan checked");
	ts_show_check(&doc, a, false);
	ts_text_open(&text, NULL);
	ts_screen_write(&text, &doc, &screen);
	all = ts_arena_text(arena, ts_text_get(&text), text.len);
	ts_text_drop(&text);
	assert_non_null(all);
	return all;
}

static size_t lines_of(const char *text)
{
	size_t count = 0;

	for (; *text; text++)
		count += *text == '\n';
	return count;
}

/* Sizes of tanks that are named, "120 x 50 cm", each once; the own tank is none of them. */
static size_t sizes_of(const char *text)
{
	double seen[16][2];
	size_t count = 0;

	for (const char *at = strstr(text, " x "); at; at = strstr(at + 1, " x ")) {
		const char *from = at;
		char *end;
		double length, width;
		bool again = false;

		while (from > text && strchr("0123456789.", from[-1]))
			from--;
		length = strtod(from, NULL);
		width = strtod(at + 3, &end);
		/* Its height stands behind where that decides: "120 x 40 x 50 cm". */
		if (from - text >= 3 && strncmp(from - 3, " x ", 3) == 0)
			continue;
		if (strncmp(end, " x ", 3) == 0) {
			(void)strtod(end + 3, &end);
		}
		if (from == at || (strncmp(end, " cm", 3) != 0 && strncmp(end, "\ncm", 3) != 0) ||
			(from - text >= 9 && strncmp(from - 9, "taken as ", 9) == 0) ||
			(from - text >= 9 && strncmp(from - 9, "taken as\n", 9) == 0) ||
			(from - text >= 3 && strncmp(from - 3, "as ", 3) == 0))
			continue;
		for (size_t i = 0; i < count; i++)
			again |= seen[i][0] == length && seen[i][1] == width;
		if (!again && count < 16) {
			seen[count][0] = length;
			seen[count++][1] = width;
		}
	}
	return count;
}

static size_t times(const char *text, const char *words)
{
	size_t count = 0;

	for (const char *at = strstr(text, words); at; at = strstr(at + 1, words))
		count++;
	return count;
}

static bool sends_away(const char *text)
{
	return strstr(text, "o not buy the ") || strstr(text, "nstead of the ");
}

static void test_a_first_screen_fits_together(void **state)
{
	struct ts_practice practice;
	struct random r;
	unsigned count = random_open(&r, 71, 150);

	(void)state;
	ts_practice_defaults(&practice);
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_arena arena;
		struct ts_check_result a;
		const char *text;

		random_case(&r, i);
		any_scene(&r, any_percent(&r, 20) ? LINES : any_below(&r, 4) + 1, &s);
		ts_arena_open(&arena, NULL);
		a = answered(&s, &arena, &practice);
		text = shown(&a, &arena);
		if (lines_of(text) > SCREEN_MOST || sizes_of(text) > 1 ||
			times(text, "mg/L (") > 1 || (sends_away(text) && strstr(text, "calmer: ")))
			print_error("%s\n", text);
		CLAIM(&r, lines_of(text) <= SCREEN_MOST);
		CLAIM(&r, sizes_of(text) <= 1);
		CLAIM(&r, times(text, "mg/L (") <= 1);
		CLAIM(&r, !(sends_away(text) && strstr(text, "calmer: ")));
		CLAIM(&r, !(sends_away(text) && strstr(text, "more of them")));
		ts_arena_drop(&arena);
	}
}

/* Something forbids this one. */
static bool refused(const struct ts_check_result *a, const char *species)
{
	for (size_t i = 0; i < a->judgement_count; i++) {
		const struct ts_check_judgement *j = &a->judgements[i];

		for (size_t k = 0; k < j->species.count; k++) {
			if (strcmp(j->severity, "conflict") == 0 &&
				strcmp(j->species.items[k], species) == 0)
				return true;
		}
	}
	return false;
}

/* Two are planned, one of them is told to be changed for another: then these two. */
static bool changed(const struct scene *s, const struct ts_check_result *a, struct scene *ret)
{
	const struct ts_species *other = NULL;
	size_t gone = s->plan.stock_count;

	if (!a->instead_species || !a->instead_says ||
		strncmp(a->instead_says, "Instead of the ", 15) != 0)
		return false;
	for (size_t i = 0; i < catalogue.count; i++) {
		if (strcmp(catalogue.items[i]->species, a->instead_species) == 0)
			other = catalogue.items[i];
	}
	for (size_t i = 0; i < s->plan.stock_count; i++) {
		const char *name = s->species[i]->common.en.count
					   ? s->species[i]->common.en.items[0]
					   : s->species[i]->species;

		if (strncmp(a->instead_says + 15, name, strlen(name) - 1) == 0)
			gone = i;
	}
	if (!other || gone == s->plan.stock_count)
		return false;
	*ret = *s;
	ret->plan.stock = ret->lines;
	ret->plan.water.readings = &ret->supply;
	ret->species[gone] = other;
	ret->lines[gone] =
		(struct ts_stock_line){.species = other->species, .count = a->instead_count};
	return true;
}

static void test_who_is_named_instead_is_not_refused(void **state)
{
	struct ts_practice practice;
	struct random r;
	unsigned count = random_open(&r, 72, 250), named = 0;

	(void)state;
	ts_practice_defaults(&practice);
	for (unsigned i = 0; i < count; i++) {
		struct scene s, then;
		struct ts_arena arena;
		struct ts_check_result a, b;

		random_case(&r, i);
		any_scene(&r, any_below(&r, 2) + 1, &s);
		ts_arena_open(&arena, NULL);
		a = answered(&s, &arena, &practice);
		if (changed(&s, &a, &then)) {
			named++;
			b = answered(&then, &arena, &practice);
			if (refused(&b, a.instead_species))
				print_error("%s\n%s\nthen: %s\n", a.headline, a.instead_says,
					b.headline);
			CLAIM(&r, !refused(&b, a.instead_species));
		}
		ts_arena_drop(&arena);
	}
	assert_true(named > 0);
}

static int load(void **state)
{
	if (shipped_open(state))
		return -1;
	for (size_t i = 0; i < catalogue.count; i++) {
		if (catalogue.items[i]->sold <= TS_SOLD_OFTEN && sold_count < 1000)
			sold[sold_count++] = catalogue.items[i];
	}
	return sold_count ? 0 : 1;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_a_first_screen_fits_together),
		cmocka_unit_test(test_who_is_named_instead_is_not_refused),
	};

	return cmocka_run_group_tests(tests, load, shipped_close);
}
