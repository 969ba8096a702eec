/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One step at a time over all six questions about a water: whatever is left out, doubted, worse,
 * poisonous, salt, contradictory or written twice, none of water, rank, why, check, propose and
 * drift says yes where it did not before. Shipped records, random supplies and tanks. A step that
 * fails prints seed, case, the change and the question.
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
#include "answers/drift.h"
#include "answers/propose.h"
#include "answers/rank.h"
#include "answers/water.h"
#include "answers/why.h"

#define ANIMALS 2
#define SCENES 200
#define STEPS_EACH 5
#define TODAY 20522 /* 2026-03-10 */

struct scene {
	const struct ts_species *species[ANIMALS];
	struct ts_catalogue few; /* of these */
	struct ts_candidates candidates[ANIMALS];
	struct ts_stock_line lines[ANIMALS];
	struct ts_reading supply[2], tank[2];
	struct ts_plan plan;
	bool running; /* a tank that was read, not a supply */
};

/* What the six say. */
struct six {
	struct ts_profile profile, poured; /* of what is asked about; of what is poured in */
	struct ts_water_result water;
	struct ts_rank_result rank;
	struct ts_why_result why;
	struct ts_check_result check;
	struct ts_propose_result propose;
	struct ts_drift_result drift;
	enum ts_status drifts;
};

static struct ts_measure maybe(
	struct random *r, unsigned percent, double low, double high, double step)
{
	struct ts_measure none = {.kind = TS_MEASURE_NONE};

	return any_percent(r, percent) ? value(any_in(r, low, high, step)) : none;
}

/* With a doubt of its own, or with that of its method. */
static void doubted(struct random *r, struct ts_measure *m, double most)
{
	if (m->kind == TS_MEASURE_VALUE && any_percent(r, 50))
		*m = (struct ts_measure){m->value, fmax(0, m->value - any_in(r, 0, most, most / 4)),
			m->value + any_in(r, 0, most, most / 4), TS_MEASURE_DOUBT};
}

static void any_reading(struct random *r, struct ts_reading *ret)
{
	double gh = any_in(r, 1, 28, 0.5);

	*ret = (struct ts_reading){.method = (int)any_below(r, 6), .gh_dh = value(gh)};
	ret->kh_dh = value(any_percent(r, 80) ? any_in(r, gh / 3, gh, 0.25) : any_in(r, 0, 18, 1));
	ret->ph = maybe(r, 70, 5, 9.2, 0.1);
	ret->no3_mg_l = maybe(r, 40, 0, 60, 5);
	ret->ca_mg_l = maybe(r, 10, 5, 120, 5);
	ret->conductivity_us_cm = maybe(r, 10, 30, 900, 10);
	doubted(r, &ret->gh_dh, 1);
	doubted(r, &ret->kh_dh, 1);
	doubted(r, &ret->ph, 0.2);
	doubted(r, &ret->no3_mg_l, 5);
}

/* As people keep them: half are one kind alone, so that a worse value is worse for all. */
static void any_scene(struct random *r, struct scene *s)
{
	*s = (struct scene){.running = any_percent(r, 50)};
	s->plan.stock_count = any_percent(r, 50) ? 1 : ANIMALS;
	any_reading(r, &s->supply[0]);
	any_reading(r, &s->tank[0]);
	s->tank[0].date = "2026-03-09";
	if (s->running && any_percent(r, 70)) { /* most tanks hold what is poured in */
		s->tank[0].gh_dh = s->supply[0].gh_dh;
		s->tank[0].kh_dh = s->supply[0].kh_dh;
	}
	s->tank[0].tan_mg_l = maybe(r, 60, 0, 0.1, 0.05);
	s->tank[0].no2_mg_l = maybe(r, 60, 0, 0.1, 0.05);
	s->plan.water = (struct ts_water){.kind = TS_WATER_TAP, .reading_count = 1};
	s->plan.tank = (struct ts_tank){.length_cm = any_in(r, 60, 200, 20),
		.width_cm = any_in(r, 30, 70, 10),
		.height_cm = any_in(r, 30, 60, 10),
		.temp_c = maybe(r, 90, 18, 30, 1),
		.filter = any_percent(r, 70) ? TS_FILTER_MATURE : (int)any_below(r, 3),
		.cover = (int)any_below(r, 3),
		.feeding = {.word = (int)any_below(r, 4)},
		.plants = (int)any_below(r, 4),
		.water_change = {any_percent(r, 80) ? 30 : 0, 7},
		.reading_count = s->running};
	doubted(r, &s->plan.tank.temp_c, 1);
	for (size_t i = 0; i < s->plan.stock_count; i++) {
		s->species[i] = catalogue.items[any_below(r, (unsigned)catalogue.count)];
		s->lines[i] = (struct ts_stock_line){.species = s->species[i]->species,
			.count = fmax(1, s->species[i]->group.comfortable),
			.since = s->running && any_percent(r, 70) ? "2025-10-01" : NULL};
	}
}

/* Its parts lie in itself, so that a copy is a scene of its own. */
static void fasten(struct scene *s)
{
	s->plan.stock = s->lines;
	s->plan.water.readings = s->supply;
	s->plan.tank.readings = s->tank;
	s->few = (struct ts_catalogue){.items = s->species, .count = s->plan.stock_count};
}

static void ask_propose(const struct ts_asking *asking, struct scene *s,
	const struct ts_keeping *keeping, struct six *a)
{
	static const struct ts_search_limits limits = {.nodes = 2000};
	struct ts_plan plan = s->plan;
	struct ts_propose_question q = {.plan = &plan,
		.keeping = keeping,
		.profile = &a->profile,
		.wish = {.catalogue = &s->few, .lists = 1, .limits = &limits}};

	plan.stock_count = 0;
	assert_true(ts_answer_propose(asking, &q, &a->propose));
}

static void ask_six(struct scene *s, struct ts_arena *arena, struct six *a)
{
	struct ts_water water = {.kind = s->running ? TS_WATER_TANK : TS_WATER_TAP,
		.readings = s->running ? s->tank : s->supply,
		.reading_count =
			s->running ? s->plan.tank.reading_count : s->plan.water.reading_count};
	struct ts_keeping keeping = {.temperature = s->plan.tank.temp_c}, as_it_is = {0};
	struct ts_asking asking = {arena, table(), TODAY, s->species, s->plan.stock_count};
	struct ts_water_question of_water = {&water, &as_it_is, (double)NAN, (double)NAN, NULL};
	struct ts_rank_question of_rank = {.kept_age_days = (double)NAN,
		.profile = &a->profile,
		.keeping = &keeping,
		.catalogue_count = s->plan.stock_count};
	struct ts_why_question of_why = {.species = s->species,
		.count = s->plan.stock_count,
		.profile = &a->profile,
		.keeping = &keeping,
		.water_given = true,
		.kept_age_days = (double)NAN};
	struct ts_check_question of_check = {
		NULL, &s->plan, s->species, s->candidates, NULL, NULL, 0, 0, (double)NAN, NULL, 0};
	struct ts_drift_question of_drift = {&s->plan, s->species, 3};
	const char *refusal;

	*a = (struct six){.drifts = TS_OK};
	fasten(s);
	ts_profile_make(&water, &keeping, table(), TODAY, &a->profile);
	ts_profile_make(&s->plan.water, &keeping, table(), TODAY, &a->poured);
	assert_int_equal(ts_water_answer(&asking, &of_water, &a->water), TS_OK);
	assert_true(ts_answer_rank(&asking, &of_rank, &a->rank));
	assert_int_equal(ts_answer_why(&asking, &of_why, &a->why), TS_OK);
	assert_int_equal(ts_answer_check(&of_check, &asking, &a->check), TS_OK);
	ask_propose(&asking, s, &keeping, a);
	a->drifts = ts_drift_answer(&asking, &of_drift, &a->drift, &refusal);
	assert_true(a->drifts == TS_OK || (a->drifts == TS_BAD_INPUT && refusal && *refusal));
	assert_false(arena->failed);
}

static bool yes(const char *verdict)
{
	return strcmp(verdict, "suits") == 0 || strcmp(verdict, "tolerates") == 0;
}

/* NULL: no row of the ranking is that animal's. */
static const struct ts_match_result *ranked(const struct six *a, const struct ts_species *s)
{
	for (size_t i = 0; i < a->rank.ranked_count; i++) {
		if (strcmp(a->rank.ranked[i].species, s->species) == 0)
			return &a->rank.ranked[i];
	}
	for (size_t i = 0; i < a->rank.excluded_count; i++) {
		if (strcmp(a->rank.excluded[i].species, s->species) == 0)
			return &a->rank.excluded[i];
	}
	for (size_t i = 0; i < a->rank.no_home_count; i++) {
		if (strcmp(a->rank.no_home[i].species, s->species) == 0)
			return &a->rank.no_home[i];
	}
	return NULL;
}

/* Nothing moves to where it harms, and all that decides this was read. */
static bool keeps(const struct six *a)
{
	return a->drifts == TS_OK && !a->drift.limit_count && !a->drift.asks.count &&
	       isnan(a->drift.buffer_gone_day) && strstr(a->drift.says, "keeps the water");
}

/* A list, and not one for any usual tap or with a buffer that nobody knows: those ask. */
static bool proposes(const struct six *a)
{
	return a->propose.community_count && !a->propose.thin && a->profile.at[TS_KH].given;
}

/* What is changed, and of which item of the list of doubts that became a yes. */
struct change {
	int item;
	const char *name;
	bool (*make)(struct random *r, struct scene *s); /* false: it does not apply */
	unsigned holds;                                  /* of enum claim */
	unsigned but;                                    /* of enum question, who are not held */
};

/* What is claimed after a change. */
enum claim {
	GAINS_NOTHING = 1 << 0, /* no yes that was none before, and no better fit */
	NOBODY = 1 << 1,        /* no animal of fresh water has a yes */
	THE_SAME = 1 << 2,      /* every answer stays as it was */
	/* As the first, but where what is left out spoke against the rest nothing is claimed. */
	GAINS_BY_PEACE = 1 << 3
};

enum question {
	OF_WATER = 1 << 0,
	OF_RANK = 1 << 1,
	OF_WHY = 1 << 2,
	OF_CHECK = 1 << 3,
	OF_PROPOSE = 1 << 4,
	OF_DRIFT = 1 << 5
};

static struct ts_reading *shown(struct scene *s)
{
	return s->running ? s->tank : s->supply;
}

static bool none(struct ts_measure *m)
{
	bool given = m->kind != TS_MEASURE_NONE;

	*m = (struct ts_measure){.kind = TS_MEASURE_NONE};
	return given;
}

/* Both are forgotten, whatever the first was. */
static bool both(bool first, bool second)
{
	return first || second;
}

static bool forget_gh(struct random *r, struct scene *s)
{
	(void)r;
	return both(none(&s->supply->gh_dh), none(&s->tank->gh_dh));
}

static bool forget_kh(struct random *r, struct scene *s)
{
	(void)r;
	return both(none(&s->supply->kh_dh), none(&s->tank->kh_dh));
}

static bool forget_ph(struct random *r, struct scene *s)
{
	(void)r;
	return both(none(&s->supply->ph), none(&s->tank->ph));
}

static bool forget_temperature(struct random *r, struct scene *s)
{
	(void)r;
	return none(&s->plan.tank.temp_c);
}

static bool forget_poisons(struct random *r, struct scene *s)
{
	(void)r;
	return both(none(&s->tank->tan_mg_l), none(&s->tank->no2_mg_l));
}

/* What was written without a doubt has its method's, which may be wider than what is written. */
static bool widened(struct random *r, struct ts_measure *m, double most)
{
	double low = any_in(r, 0, most, most / 8), high = any_in(r, 0, most, most / 8);

	if (m->kind != TS_MEASURE_DOUBT)
		return false;
	*m = (struct ts_measure){m->value, fmax(0, m->low - low), m->high + high, TS_MEASURE_DOUBT};
	return true;
}

static bool widen(struct random *r, struct scene *s)
{
	bool any = widened(r, &shown(s)->gh_dh, 4);

	any |= widened(r, &shown(s)->kh_dh, 3);
	return any | (s->running && widened(r, &s->tank->ph, 1));
}

static bool warm_or_cold(struct random *r, struct scene *s)
{
	return widened(r, &s->plan.tank.temp_c, 4);
}

/* "<14", ">8": as a strip says it. */
static bool one_sided(struct random *r, struct scene *s)
{
	struct ts_measure *of[] = {&shown(s)->gh_dh, &shown(s)->kh_dh, &s->tank->no3_mg_l};
	struct ts_measure *m = of[any_below(r, 3)];

	if (m->kind != TS_MEASURE_DOUBT)
		return false;
	*m = any_percent(r, 50)
		     ? (struct ts_measure){m->high, 0, m->high, TS_MEASURE_BELOW}
		     : (struct ts_measure){m->low, m->low, (double)INFINITY, TS_MEASURE_ABOVE};
	return true;
}

static bool twice(struct random *r, struct scene *s)
{
	(void)r;
	s->supply[1] = s->supply[0];
	s->tank[1] = s->tank[0];
	s->plan.water.reading_count = 2;
	s->plan.tank.reading_count *= 2;
	return true;
}

static bool against_itself(struct random *r, struct scene *s)
{
	struct ts_reading *one = shown(s);

	switch (any_below(r, 4)) {
	case 0:
		one->kh_dh = value(any_in(r, 5, 14, 0.5));
		one->ph = value(any_in(r, 3.5, 4.8, 0.1));
		break;
	case 1:
		one->kh_dh = value(any_in(r, 5, 14, 0.5));
		one->alkalinity_meq_l = value(any_in(r, 0.05, 0.4, 0.05));
		break;
	case 2:
		one->gh_dh = value(any_in(r, 12, 28, 0.5));
		one->kh_dh = value(any_in(r, 5, 10, 0.5));
		one->conductivity_us_cm = value(any_in(r, 5, 60, 5));
		break;
	default:
		one->gh_dh = value(any_in(r, 12, 28, 0.5));
		one->ca_mg_l = value(any_in(r, 1, 6, 1));
		one->mg_mg_l = value(any_in(r, 0, 2, 1));
	}
	return true;
}

static bool salt(struct random *r, struct scene *s)
{
	struct ts_reading *one = shown(s);

	switch (any_below(r, 5)) {
	case 0:
		one->conductivity_us_cm = value(any_in(r, 20000, 55000, 100));
		break;
	case 1:
		one->tds_mg_l = value(any_in(r, 12000, 38000, 100));
		break;
	case 2:
		one->na_mg_l = value(any_in(r, 4000, 11000, 100));
		break;
	case 3:
		one->cl_mg_l = value(any_in(r, 7000, 20000, 100));
		break;
	default:
		one->salinity_g_l = value(any_in(r, 12, 36, 1));
	}
	return true;
}

static bool foul(struct random *r, struct scene *s)
{
	struct ts_reading *one = s->tank;

	/* Oxygen in a utility's report is that of its works. */
	if (!s->running || one->method == TS_METHOD_UTILITY_REPORT)
		return false;
	switch (any_below(r, 4)) {
	case 0:
		one->tan_mg_l = value(any_in(r, 0.5, 5, 0.5));
		break;
	case 1:
		one->no2_mg_l = value(any_in(r, 0.5, 5, 0.5));
		break;
	case 2:
		one->no3_mg_l = value(any_in(r, 150, 400, 10));
		break;
	default:
		one->oxygen_mg_l = value(any_in(r, 0, 0.9, 0.1)); /* who breathes air bears 1 */
	}
	return true;
}

static bool treated(struct random *r, struct scene *s)
{
	if (any_percent(r, 50))
		shown(s)->chlorine_mg_l = value(any_in(r, 0.2, 4, 0.1));
	else
		shown(s)->cu_mg_l = value(any_in(r, 0.1, 2, 0.1));
	return true;
}

static bool more_nitrate(struct random *r, struct scene *s)
{
	struct ts_measure *m = &shown(s)->no3_mg_l;

	if (m->kind == TS_MEASURE_NONE)
		return false;
	*m = value(m->value + any_in(r, 5, 200, 5));
	return true;
}

/* Away from where one animal alone is comfortable, and further on that side. */
static bool worse(struct random *r, struct scene *s)
{
	const struct ts_envelopes *e = &s->species[0]->water.usual;
	bool warmth = any_percent(r, 50);
	struct ts_measure *m = warmth ? &s->plan.tank.temp_c : &s->tank->ph;
	const struct ts_range *comfort = warmth ? &e->temp_c.preferred : &e->ph.preferred;
	double by = warmth ? any_in(r, 0.5, 4, 0.5) : any_in(r, 0.1, 1, 0.1);

	if (s->plan.stock_count > 1 || !s->running || m->kind == TS_MEASURE_NONE ||
		isnan(comfort->low) || !(m->value < comfort->low || m->value > comfort->high))
		return false;
	*m = value(m->value < comfort->low ? m->value - by : m->value + by);
	/* Ammonia harms less in colder and more acid water; nobody is told that here. */
	s->tank->tan_mg_l.kind = TS_MEASURE_NONE;
	return true;
}

/*
 * Who is not held: without a temperature all are judged at their own, and drift follows a tank of
 * 25 C; both say so. A KH that was not read is assumed by GH, and its favourable end decides (of
 * the match by itself: tests/match/test_never_better.c). Ammonia that nobody read is no matter of
 * whom a water suits. In colder water less waste is made.
 */
#define OF_LISTS (OF_RANK | OF_WHY | OF_PROPOSE | OF_DRIFT)

static const struct change changes[] = {
	{11, "readings that contradict each other", against_itself, NOBODY, 0},
	{12, "salt by whatever was read", salt, NOBODY, 0},
	{13, "the same reading twice", twice, THE_SAME, 0},
	{14, "GH left out", forget_gh, GAINS_BY_PEACE, 0},
	{14, "KH left out", forget_kh, GAINS_BY_PEACE, OF_RANK | OF_WHY},
	{14, "pH left out", forget_ph, GAINS_BY_PEACE, 0},
	{14, "temperature left out", forget_temperature, GAINS_NOTHING, OF_LISTS},
	{14, "ammonia and nitrite left out", forget_poisons, GAINS_NOTHING, OF_LISTS},
	{14, "a wider doubt", widen, GAINS_BY_PEACE, 0},
	{14, "a wider doubt of the temperature", warm_or_cold, GAINS_NOTHING, 0},
	{14, "a one-sided figure", one_sided, GAINS_BY_PEACE, 0},
	{15, "ammonia, nitrite, nitrate, too little oxygen", foul, GAINS_NOTHING | NOBODY, 0},
	{15, "chlorine or copper", treated, GAINS_NOTHING, 0},
	{16, "more nitrate", more_nitrate, GAINS_NOTHING, 0},
	{16, "warmth or pH farther away", worse, GAINS_NOTHING, OF_DRIFT},
};

#define CHANGES (sizeof changes / sizeof *changes)

struct tally {
	size_t steps[CHANGES], wrong[CHANGES][6];
	unsigned but; /* of enum question, who are not held in this step */
};

static void claim(const struct random *r, struct tally *t, size_t change, enum question question,
	bool holds, const char *before, const char *after)
{
	static const char *const names[] = {"water", "rank", "why", "check", "propose", "drift"};
	int at = 0;

	if (holds || (changes[change].but | t->but) & question)
		return;
	while (question >> at != 1)
		at++;
	if (t->wrong[change][at]++ < 2)
		print_error("seed %u, case %u, %d: %s: %s: '%s' becomes '%s'\n", r->seed, r->number,
			changes[change].item, changes[change].name, names[at], before ? before : "",
			after ? after : "");
}

static bool same(const char *a, const char *b)
{
	return a == b || (a && b && strcmp(a, b) == 0);
}

static const char *fits(char room[32], double fit)
{
	snprintf(room, 32, "fits by %.9f", fit);
	return room;
}

/*
 * A pH that is computed moves with the doubt of what it is computed of: its ends by hundredths
 * where GH alone is wider.
 */
#define FIT_BY_DOUBT 0.01

static void none_gained(const struct random *r, struct tally *t, size_t k, const struct scene *s,
	const struct six *a, const struct six *b)
{
	char one[32], two[32];
	const bool computed = b->profile.at[TS_KH].given && changes[k].item == 14;
	const double slack = computed ? FIT_BY_DOUBT : 1e-9;

	for (size_t i = 0; i < s->plan.stock_count; i++) {
		const struct ts_match_result *old = ranked(a, s->species[i]),
					     *new = ranked(b, s->species[i]);
		const struct ts_match_result *told = &a->why.matches[i],
					     *tells = &b->why.matches[i];

		assert_true(old && new);
		claim(r, t, k, OF_RANK, yes(old->verdict) || !yes(new->verdict), old->verdict,
			new->verdict);
		claim(r, t, k, OF_RANK, !(new->fit > old->fit + slack), fits(one, old->fit),
			fits(two, new->fit));
		claim(r, t, k, OF_WHY, yes(told->verdict) || !yes(tells->verdict),
			a->why.animals[i].headline, b->why.animals[i].headline);
		claim(r, t, k, OF_WHY, !(tells->fit > told->fit + slack), fits(one, told->fit),
			fits(two, tells->fit));
	}
	claim(r, t, k, OF_WHY, a->why.suits || !b->why.suits, "", "suits");
	/* The same condition in the same words is no other answer. */
	claim(r, t, k, OF_CHECK,
		a->check.passes || !b->check.passes || same(a->check.headline, b->check.headline),
		a->check.headline, b->check.headline);
	claim(r, t, k, OF_PROPOSE, proposes(a) || !proposes(b), a->propose.headline,
		b->propose.headline);
	claim(r, t, k, OF_DRIFT, keeps(a) || !keeps(b), a->drift.says, b->drift.says);
	claim(r, t, k, OF_WATER, a->water.suits_says || !b->water.suits_says, a->water.headline,
		b->water.suits_says);
}

static bool lives_there(const struct scene *s)
{
	bool any = false;

	for (size_t i = 0; i < s->plan.stock_count; i++)
		any |= s->lines[i].since != NULL;
	return any;
}

static void nobody_lives(const struct random *r, struct tally *t, size_t k, const struct scene *s,
	const struct six *b)
{
	bool all_fresh = true;

	for (size_t i = 0; i < s->plan.stock_count; i++) {
		bool fresh = !(s->species[i]->water.usual.salinity_g_l.tolerated.high >= 10);

		all_fresh &= fresh;
		if (!fresh)
			continue;
		claim(r, t, k, OF_RANK, !yes(ranked(b, s->species[i])->verdict), "",
			b->rank.headline);
		claim(r, t, k, OF_WHY, !yes(b->why.matches[i].verdict), "",
			b->why.animals[i].headline);
	}
	claim(r, t, k, OF_WATER, !b->water.suits_says, "", b->water.suits_says);
	if (!all_fresh)
		return;
	/* A filter that matures without animals holds ammonia, and is a condition. */
	if (changes[k].make != foul || lives_there(s))
		claim(r, t, k, OF_CHECK, !b->check.passes, "", b->check.headline);
	claim(r, t, k, OF_PROPOSE, !b->propose.community_count, "", b->propose.headline);
}

static bool same_texts(const struct ts_texts *a, const struct ts_texts *b)
{
	bool all = a->count == b->count;

	for (size_t i = 0; all && i < a->count; i++)
		all = same(a->items[i], b->items[i]);
	return all;
}

static void all_the_same(const struct random *r, struct tally *t, size_t k, const struct scene *s,
	const struct six *a, const struct six *b)
{
	bool judged = a->check.judgement_count == b->check.judgement_count;

	claim(r, t, k, OF_WATER,
		same(a->water.headline, b->water.headline) &&
			same(a->water.decides, b->water.decides) &&
			same_texts(&a->water.unusual, &b->water.unusual) &&
			a->water.danger_count == b->water.danger_count,
		a->water.headline, b->water.headline);
	claim(r, t, k, OF_RANK,
		same(a->rank.headline, b->rank.headline) &&
			same_texts(&a->rank.notes, &b->rank.notes),
		a->rank.headline, b->rank.headline);
	for (size_t i = 0; i < s->plan.stock_count; i++)
		claim(r, t, k, OF_WHY,
			same(a->why.animals[i].headline, b->why.animals[i].headline) &&
				same(a->why.animals[i].decides, b->why.animals[i].decides),
			a->why.animals[i].headline, b->why.animals[i].headline);
	for (size_t i = 0; judged && i < a->check.judgement_count; i++)
		judged = same(a->check.judgements[i].says, b->check.judgements[i].says);
	claim(r, t, k, OF_CHECK,
		judged && same(a->check.headline, b->check.headline) &&
			same(a->check.decides, b->check.decides),
		a->check.headline, b->check.headline);
	claim(r, t, k, OF_PROPOSE, same(a->propose.headline, b->propose.headline),
		a->propose.headline, b->propose.headline);
	claim(r, t, k, OF_DRIFT,
		a->drifts == b->drifts && same(a->drift.says, b->drift.says) &&
			same(a->drift.because, b->drift.because),
		a->drift.because, b->drift.because);
}

/*
 * Readings that agree: none marked, and a pH that a tank of this KH may run at. Of others leaving
 * one out leaves a water that looks better than it was, and nothing can tell.
 */
static bool at_peace(const struct ts_profile *p)
{
	bool ph = isnan(p->ph_read) || isnan(p->ph_tank) ||
		  (p->ph_read_low >= p->ph_tank_low && p->ph_read_high <= p->ph_tank_high);

	return ph && !(p->unusual & TS_UNUSUAL__NOBODY_YET);
}

/* Why says yes of an animal where it did not before. */
static bool told_yes(const struct scene *s, const struct six *a, const struct six *b)
{
	bool any = false;

	for (size_t i = 0; i < s->plan.stock_count; i++)
		any |= !yes(a->why.matches[i].verdict) && yes(b->why.matches[i].verdict);
	return any;
}

static void step(struct random *r, struct tally *t, const struct scene *s, const struct six *a,
	struct ts_arena *arena)
{
	struct scene changed;
	struct six b;
	size_t k;

	do {
		changed = *s;
		k = any_below(r, CHANGES);
	} while (!changes[k].make(r, &changed));
	ask_six(&changed, arena, &b);
	t->steps[k]++;
	/*
	 * By itself pH decides nothing: where it follows from KH it is shown as the result, and
	 * said. A check is no stricter than why about the same animal.
	 */
	t->but = changes[k].make == forget_ph && b.profile.ph_computed
			 ? OF_RANK | OF_WHY | OF_PROPOSE | (told_yes(s, a, &b) ? OF_CHECK : 0)
			 : 0;
	if (changes[k].holds & GAINS_NOTHING ||
		(changes[k].holds & GAINS_BY_PEACE && at_peace(&a->profile) &&
			at_peace(&a->poured) && at_peace(a->check.profile)))
		none_gained(r, t, k, s, a, &b);
	if (changes[k].holds & NOBODY)
		nobody_lives(r, t, k, s, &b);
	if (changes[k].holds & THE_SAME)
		all_the_same(r, t, k, s, a, &b);
}

static void test_no_step_gains_a_yes(void **state)
{
	struct random r;
	struct tally t = {0};
	size_t wrong = 0, steps = 0;
	unsigned count = random_open(&r, 28, SCENES);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct ts_arena arena;
		struct scene s;
		struct six before;

		random_case(&r, i);
		ts_arena_open(&arena, NULL);
		any_scene(&r, &s);
		ask_six(&s, &arena, &before);
		for (int n = 0; n < STEPS_EACH; n++)
			step(&r, &t, &s, &before, &arena);
		ts_arena_drop(&arena);
	}
	for (size_t k = 0; k < CHANGES; k++) {
		size_t of[7] = {0};

		for (int q = 0; q < 6; q++)
			of[6] += of[q] = t.wrong[k][q];
		printf("# %d %s: %zu steps, %zu wrong (%zu %zu %zu %zu %zu %zu)\n", changes[k].item,
			changes[k].name, t.steps[k], of[6], of[0], of[1], of[2], of[3], of[4],
			of[5]);
		steps += t.steps[k];
		wrong += of[6];
	}
	printf("# %zu steps, each by six questions\n", steps);
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_no_step_gains_a_yes),
	};

	return cmocka_run_group_tests(tests, shipped_open, shipped_close);
}
