/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Five questions about one water: water, rank, why, check and propose never disagree about its pH,
 * its gas, its doubt, and whether it is bare, softened or of readings that contradict each other.
 * Random waters over the shipped records; a case that fails prints its seed and number.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tapshoal/catalogue.h>

#include "../given.h"
#include "../random.h"
#include "../shipped.h"
#include "answers/check.h"
#include "answers/propose.h"
#include "answers/rank.h"
#include "answers/water.h"
#include "answers/why.h"
#include "words/first.h"
#include "words/sentence.h"
#include "words/unusual.h"

#define ANIMALS 3

struct scene {
	const struct ts_species *species[ANIMALS];
	struct ts_catalogue few; /* of these */
	struct ts_reading readings[2];
	struct ts_water water;
	struct ts_keeping keeping;
	struct ts_profile profile, cool; /* at the tank's warmth; at none, as `water` sees it */
};

static struct ts_measure maybe(
	struct random *r, unsigned percent, double low, double high, double step)
{
	struct ts_measure m = {.kind = TS_MEASURE_NONE};

	if (!any_percent(r, percent))
		return m;
	m = value(any_in(r, low, high, step));
	if (any_percent(r, 10))
		m = (struct ts_measure){m.value, 0, m.value, TS_MEASURE_BELOW};
	else if (any_percent(r, 10))
		m = (struct ts_measure){
			m.value + step, m.value, m.value + 2 * step, TS_MEASURE_RANGE};
	return m;
}

static void any_reading(struct random *r, struct ts_reading *one)
{
	*one = (struct ts_reading){.method = (int)any_below(r, 6)};
	one->gh_dh = maybe(r, 80, 0, any_percent(r, 30) ? 2 : 30, 0.25);
	one->kh_dh = maybe(r, 80, 0, any_percent(r, 30) ? 2 : 20, 0.25);
	one->ph = maybe(r, 70, 4.5, 10, 0.1);
	one->conductivity_us_cm = maybe(r, 20, 5, 900, 5);
	one->tds_mg_l = maybe(r, 10, 5, 600, 5);
	one->ca_mg_l = maybe(r, 20, 0, 150, 2);
	one->mg_mg_l = maybe(r, 20, 0, 40, 2);
	one->na_mg_l = maybe(r, 20, 0, 200, 5);
	one->cl_mg_l = maybe(r, 15, 0, 200, 5);
	one->so4_mg_l = maybe(r, 15, 0, 200, 5);
	one->alkalinity_meq_l = maybe(r, 10, 0, 6, 0.1);
	one->salinity_g_l = maybe(r, 5, 0, 40, 0.5);
	one->tan_mg_l = maybe(r, 10, 0, 1, 0.25);
	one->no3_mg_l = maybe(r, 20, 0, 120, 5);
	one->chlorine_mg_l = maybe(r, 10, 0, 2, 0.1);
	one->temp_c = maybe(r, 30, 4, 30, 1);
	one->stood_h =
		any_percent(r, 30) ? value(any_percent(r, 50) ? 24 : 0) : (struct ts_measure){0};
}

/* A supply: that of a tank is asked about otherwise (its own log, what is poured in). */
static void any_scene(struct random *r, struct scene *s)
{
	static const int kinds[] = {
		TS_WATER_TAP, TS_WATER_WELL, TS_WATER_RAIN, TS_WATER_REVERSE_OSMOSIS};

	*s = (struct scene){.few = {.items = s->species, .count = ANIMALS}};
	any_reading(r, &s->readings[0]);
	any_reading(r, &s->readings[1]);
	s->water = (struct ts_water){.kind = kinds[any_below(r, 4)],
		.softened = any_percent(r, 5),
		.readings = s->readings,
		.reading_count = any_percent(r, 20) ? 2 : 1};
	s->keeping.temperature =
		any_percent(r, 70) ? value(any_in(r, 18, 30, 1)) : (struct ts_measure){0};
	for (size_t i = 0; i < ANIMALS; i++)
		s->species[i] = catalogue.items[any_below(r, (unsigned)catalogue.count)];
	ts_profile_make(&s->water, &s->keeping, NULL, -1, &s->profile);
	ts_profile_make(&s->water, &(struct ts_keeping){0}, NULL, -1, &s->cool);
}

static struct ts_asking asking_of(struct scene *s, struct ts_arena *arena)
{
	return (struct ts_asking){.arena = arena,
		.practice = table(),
		.today = -1,
		.species = s->species,
		.species_count = ANIMALS};
}

static struct ts_water_result ask_water(struct scene *s, struct ts_arena *arena)
{
	struct ts_asking asking = asking_of(s, arena);
	struct ts_keeping keeping = {0};
	struct ts_water_question q = {&s->water, &keeping, (double)NAN, (double)NAN, NULL};
	struct ts_water_result result;

	assert_int_equal(ts_water_answer(&asking, &q, &result), TS_OK);
	return result;
}

static struct ts_rank_result ask_rank(struct scene *s, struct ts_arena *arena)
{
	struct ts_asking asking = asking_of(s, arena);
	struct ts_rank_question q = {.kept_age_days = (double)NAN,
		.profile = &s->profile,
		.keeping = &s->keeping,
		.catalogue_count = ANIMALS};
	struct ts_rank_result result;

	assert_true(ts_answer_rank(&asking, &q, &result));
	return result;
}

static struct ts_why_result ask_why(struct scene *s, struct ts_arena *arena)
{
	struct ts_asking asking = asking_of(s, arena);
	struct ts_why_question q = {.species = s->species,
		.count = ANIMALS,
		.profile = &s->profile,
		.keeping = &s->keeping,
		.water_given = true,
		.kept_age_days = (double)NAN};
	struct ts_why_result result;

	assert_int_equal(ts_answer_why(&asking, &q, &result), TS_OK);
	return result;
}

/* One animal of which so many are planned, in a tank of which nothing but its warmth is known. */
static struct ts_check_result ask_check(struct scene *s, size_t animal, struct ts_arena *arena)
{
	struct ts_asking asking = asking_of(s, arena);
	struct ts_stock_line line = {.species = s->species[animal]->species,
		.count = fmax(1, s->species[animal]->group.comfortable)};
	struct ts_plan plan = {.water = s->water,
		.stock = &line,
		.stock_count = 1,
		.tank = {.temp_c = s->keeping.temperature}};
	struct ts_candidates none = {0};
	struct ts_check_question q = {
		NULL, &plan, &s->species[animal], &none, NULL, NULL, 0, 0, (double)NAN, NULL, 0};
	struct ts_check_result result;

	assert_int_equal(ts_answer_check(&q, &asking, &result), TS_OK);
	return result;
}

static struct ts_propose_result ask_propose(struct scene *s, struct ts_arena *arena)
{
	struct ts_asking asking = asking_of(s, arena);
	static const struct ts_search_limits limits = {.nodes = 2000};
	struct ts_plan plan = {.water = s->water,
		.tank = {.length_cm = 150,
			.width_cm = 50,
			.height_cm = 50,
			.temp_c = s->keeping.temperature,
			.filter = TS_FILTER_MATURE}};
	struct ts_propose_question q = {.plan = &plan,
		.keeping = &s->keeping,
		.profile = &s->profile,
		.wish = {.catalogue = &s->few, .lists = 1, .limits = &limits}};
	struct ts_propose_result result;

	assert_true(ts_answer_propose(&asking, &q, &result));
	return result;
}

static bool same(double a, double b)
{
	return (isnan(a) && isnan(b)) || fabs(a - b) < 1e-9;
}

static bool same_span(const struct ts_span *a, const struct ts_span *b)
{
	return a->given == b->given &&
	       (!a->given || (same(a->value, b->value) && same(a->low, b->low) &&
				     same(a->high, b->high)));
}

static bool holds(const struct ts_texts *list, const char *says)
{
	for (size_t i = 0; i < list->count; i++) {
		if (strstr(list->items[i], says))
			return true;
	}
	return false;
}

static const char *row_verdict(const struct ts_rank_result *r, const struct ts_species *s)
{
	const struct {
		const struct ts_match_result *items;
		size_t count;
	} lists[] = {{r->ranked, r->ranked_count}, {r->too_large, r->too_large_count},
		{r->no_home, r->no_home_count}, {r->excluded, r->excluded_count}};

	for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
		for (size_t n = 0; n < lists[i].count; n++) {
			if (strcmp(lists[i].items[n].species, s->species) == 0)
				return lists[i].items[n].verdict;
		}
	}
	return "";
}

/* What the water's sentence of a mark is; the scratch text is emptied by the caller. */
static const char *mark_says(struct ts_text *text, unsigned bit, const struct ts_profile *p)
{
	ts_text_clear(text);
	ts_say_unusual(text, bit, p);
	return ts_text_get(text);
}

static void one_profile(struct random *r, const struct scene *s, const struct ts_profile *other)
{
	static const enum ts_parameter all[] = {TS_GH, TS_KH, TS_PH, TS_SALINITY, TS_TEMPERATURE};

	for (size_t i = 0; i < sizeof all / sizeof *all; i++)
		CLAIM(r, same_span(&s->profile.at[all[i]], &other->at[all[i]]));
	CLAIM(r, s->profile.unusual == other->unusual);
	CLAIM(r, s->profile.poisons.found == other->poisons.found);
	CLAIM(r, s->profile.co2_tells == other->co2_tells);
	CLAIM(r, same(s->profile.ph_tank, other->ph_tank));
}

/* The figures of the water's own answer are those that the others judge by. */
static void water_agrees(struct random *r, const struct scene *s, const struct ts_water_result *w)
{
	const struct ts_profile *p = &s->cool;
	const struct ts_water_facts *f = &w->facts;

	CLAIM(r, f->unusual == p->unusual);
	CLAIM(r, same(f->ph, p->ph_read) && same(f->ph_low, p->ph_read_low));
	CLAIM(r, !p->at[TS_GH].given || same(f->gh_dh, p->at[TS_GH].value));
	CLAIM(r, !p->at[TS_KH].given || same(f->kh_dh, p->at[TS_KH].value));
	if (p->at[TS_KH].given)
		CLAIM(r, same(f->ph_tank, p->ph_tank) && same(f->ph_tank_low, p->ph_tank_low));
	CLAIM(r, isnan(f->co2_mg_l) ||
			 (!(f->co2_low_mg_l > f->co2_mg_l) && !(f->co2_high_mg_l < f->co2_mg_l)));
}

static void all_say_the_marks(struct random *r, const struct scene *s,
	const struct ts_water_result *w, const struct ts_rank_result *rank,
	const struct ts_why_result *why, const struct ts_propose_result *propose)
{
	struct ts_text text;

	ts_text_open(&text, NULL);
	for (unsigned bit = 1; bit <= TS_UNUSUAL__ALL; bit <<= 1) {
		const char *says = mark_says(&text, bit, &s->profile);
		bool led = false;

		if (!(s->profile.unusual & bit))
			continue;
		for (size_t i = 0; i < why->animal_count; i++)
			led |= why->animals[i].decides != NULL;
		CLAIM(r, holds(&rank->water.unusual, says) && holds(&why->water.unusual, says));
		CLAIM(r, holds(&rank->notes, says) ||
				 (ts_first_tells(&s->profile, ts_water_first(&s->profile)) & bit &&
					 rank->deciding && strstr(rank->headline, "yet")));
		CLAIM(r, holds(&why->notes, says) || led);
		CLAIM(r, holds(&propose->water_notes, says));
	}
	for (unsigned bit = 1; bit <= TS_UNUSUAL__ALL; bit <<= 1) {
		if (s->cool.unusual & bit)
			CLAIM(r, holds(&w->unusual, mark_says(&text, bit, &s->cool)));
	}
	/* Warmth moves a pH by little, and no mark but those that compare it. */
	CLAIM(r, !((s->cool.unusual ^ s->profile.unusual) & TS_UNUSUAL__NOBODY_YET));
	ts_text_drop(&text);
}

static void verdicts_agree(struct random *r, struct scene *s, const struct ts_rank_result *rank,
	const struct ts_why_result *why, const struct ts_propose_result *propose,
	struct ts_arena *arena)
{
	bool nobody = s->profile.unusual & TS_UNUSUAL__NOBODY_YET;
	bool filter = s->profile.poisons.found & (TS_POISON_AMMONIA | TS_POISON_NITRITE);

	CLAIM(r, !nobody || (rank->suits == 0 && rank->tolerates == 0 && !why->suits));
	CLAIM(r, !nobody || propose->community_count == 0);
	for (size_t i = 0; i < ANIMALS; i++) {
		const char *verdict = row_verdict(rank, s->species[i]);
		struct ts_check_result check = ask_check(s, i, arena);

		one_profile(r, s, check.profile);
		CLAIM(r, strcmp(verdict, why->matches[i].verdict) == 0);
		/* check tells ammonia of the whole tank, once, and not of each animal. */
		CLAIM(r, filter || !check.animals[0].fit ||
				 strcmp(check.animals[0].fit, verdict) == 0);
		CLAIM(r, !nobody || !check.passes);
		/* Where a spoon of salt is the condition, the condition is known. */
		CLAIM(r, strcmp(verdict, ts_verdict_words[TS_EXCLUDED]) != 0 || !check.passes ||
				 strstr(check.headline, "more minerals"));
	}
	for (size_t i = 0; i < propose->community_count; i++) {
		for (size_t n = 0; n < propose->communities[i].stock_count; n++) {
			const char *name = propose->communities[i].stock[n].species;

			for (size_t k = 0; k < ANIMALS; k++) {
				const char *verdict = row_verdict(rank, s->species[k]);

				if (strcmp(s->species[k]->species, name) == 0)
					CLAIM(r, strcmp(verdict, "suits") == 0 ||
							 strcmp(verdict, "tolerates") == 0 ||
							 /* who bears every usual tap, said as such
							  */
							 (propose->thin &&
								 strcmp(verdict, "unsure") == 0));
			}
		}
	}
}

static void test_five_answers__say_one_thing_of_one_water(void **state)
{
	struct random r;
	unsigned cases = random_open(&r, 20, 1000);

	(void)state;
	for (unsigned i = 0; i < cases; i++) {
		struct ts_arena arena;
		struct scene s;

		random_case(&r, i);
		ts_arena_open(&arena, NULL);
		any_scene(&r, &s);
		{
			struct ts_water_result w = ask_water(&s, &arena);
			struct ts_rank_result rank = ask_rank(&s, &arena);
			struct ts_why_result why = ask_why(&s, &arena);
			struct ts_propose_result propose = ask_propose(&s, &arena);

			water_agrees(&r, &s, &w);
			all_say_the_marks(&r, &s, &w, &rank, &why, &propose);
			verdicts_agree(&r, &s, &rank, &why, &propose, &arena);
		}
		assert_false(arena.failed);
		ts_arena_drop(&arena);
	}
}

/* Its first line names rows, of which two may be of one animal. */
static void test_an_animal_asked_for_again__is_told_again(void **state)
{
	struct ts_reading reading = {.gh_dh = value(8), .kh_dh = value(5), .ph = value(7.2)};
	struct scene s = {.water = {.readings = &reading, .reading_count = 1},
		.keeping.temperature = value(25)};

	(void)state;
	ts_profile_make(&s.water, &s.keeping, NULL, -1, &s.profile);
	for (size_t i = 0; i < catalogue.count; i++) {
		struct ts_arena arena;
		struct ts_rank_result rank;

		for (size_t k = 0; k < ANIMALS; k++)
			s.species[k] = catalogue.items[i];
		ts_arena_open(&arena, NULL);
		rank = ask_rank(&s, &arena);
		assert_int_equal(rank.asked_count, ANIMALS);
		assert_true(rank.suits % ANIMALS == 0 && rank.tolerates % ANIMALS == 0);
		assert_non_null(rank.headline);
		assert_false(arena.failed);
		ts_arena_drop(&arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_five_answers__say_one_thing_of_one_water),
		cmocka_unit_test(test_an_animal_asked_for_again__is_told_again),
	};

	return cmocka_run_group_tests(tests, shipped_open, shipped_close);
}
