/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Whose a reading is: "tank pH 6, KH 0; tap is GH 12 KH 8". The last that was named before a figure
 * has it; named directly behind ("GH 12 from the tap"), it has what was read in that thought. Where
 * no reading stands for both, they are one water.
 */
#include <math.h>
#include <string.h>

#include "typed/reader.h"

#define LINKS "is|are|was|reads|read|has|at|gives|shows|says|tests|water|water's|reading|readings"

static const struct {
	const char *pattern;
	bool tap;
	bool behind; /* may stand behind its readings */
} rows[] = {
	{"from|out|of|straight|off the|my|our|of~ tap|mains|supply|faucet water?", true, true},
	{"in|of the|my|our~ tap|mains|faucet water?", true, true},
	{"tap|mains|faucet|supply|supplier|company water|company|report|value|values|" LINKS "~ =?",
		true, false},
	{"tapwater|tap-water " LINKS "~ =?", true, false},
	{"in|of|from the|my|our|this~ tank|aquarium|bowl itself|now?", false, true},
	{"the|my|our|this|in~ tank|aquarium|bowl|inside " LINKS "~ =?", false, false},
};

bool ts_typed_of_water(const char *flag)
{
	static const char *const flags[] = {"--GH", "--KH", "--pH", "--NO3", "--NO3-N", "--NO2",
		"--NO2-N", "--ammonia", "--TDS", "--conductivity", "--Cu", "--chlorine",
		"--phosphate", "--Ca", "--Mg"};

	return TS_TYPED_AMONG(flag, flags);
}

/* What is told of it stands behind: a reading, by its key. */
static bool reading_follows(const struct ts_typed *t, size_t at)
{
	size_t used;

	if (at < t->count && ts_typed_key(t, at, &used))
		return true;
	/* "nitrate 80, tap has 40" */
	return t->about && at < t->count && ts_typed_is_figure(t->word[at]) &&
	       (ts_typed_ends(t, at + 1) || ts_typed_unit(t->word[at + 1]));
}

/* What was read since the last mark is of this water. */
static void give_back(struct ts_typed *t, bool tap)
{
	struct ts_sentence *s = t->out;

	for (size_t i = t->thought_flags; i < s->flag_count; i++) {
		if (ts_typed_of_water(s->flags[i].flag))
			s->flags[i].poured = tap;
	}
}

/* "my tap changed": what it was is in the tank, and what it is now is poured in. */
static bool tap_changed(const struct ts_typed *t)
{
	static const char *const taps[] = {
		"tap", "supply", "supplier", "mains", "company", "water", "tapwater"};
	static const char *const changed[] = {"changed", "switched", "different", "changes"};

	for (size_t i = 0; i < t->count; i++) {
		for (size_t k = 1; TS_TYPED_AMONG(t->word[i], taps) && k <= 3 && i + k < t->count;
			k++) {
			if (TS_TYPED_AMONG(t->word[i + k], changed))
				return true;
		}
	}
	return false;
}

/* "was GH 4", "now GH 14". */
static size_t before_and_now(struct ts_typed *t)
{
	static const char *const before[] = {"was", "were", "before", "formerly"};
	static const char *const now[] = {"now", "today", "is"};
	size_t used = 1;

	if (!TS_TYPED_AMONG(t->word[t->at], before) && !TS_TYPED_AMONG(t->word[t->at], now))
		return 0;
	while (t->at + used < t->count && TS_TYPED_AMONG(t->word[t->at + used], now))
		used++;
	if (!reading_follows(t, t->at + used) || !tap_changed(t))
		return 0;
	t->tap = !TS_TYPED_AMONG(t->word[t->at], before);
	return used;
}

size_t ts_typed_whose(struct ts_typed *t)
{
	size_t told = before_and_now(t);

	if (told)
		return told;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		size_t used = ts_typed_fits(t, rows[i].pattern);
		bool follows;

		if (!used)
			continue;
		follows = reading_follows(t, t->at + used);
		if (rows[i].behind && !follows && t->at && t->mark[t->at - 1] == TS_TYPED_USED) {
			give_back(t, rows[i].tap);
			return used;
		}
		if (!follows)
			return 0;
		t->tap = rows[i].tap;
		t->living = false; /* as behind any "is" */
		t->thought_flags = t->out->flag_count;
		return used;
	}
	return 0;
}

/* What poisons is the tank's, the graver sense, unless the tank has a figure of its own. */
static bool poisons(const char *flag)
{
	static const char *const flags[] = {"--NO2", "--NO2-N", "--ammonia", "--Cu", "--chlorine"};

	return TS_TYPED_AMONG(flag, flags);
}

static bool is_figure(const struct ts_typed *t, const char *value, double *ret)
{
	size_t len = ts_typed_figure_len(value);

	const char *digits = len ? ts_arena_text(t->arena, value, len) : NULL;

	*ret = digits ? ts_typed_number(digits) : 0;
	return digits != NULL;
}

/* The tank's own figure of what the flag says; NULL: none. */
static const struct ts_sentence_flag *of_tank(const struct ts_sentence *s, const char *flag)
{
	for (size_t i = 0; i < s->flag_count; i++) {
		if (!s->flags[i].poured && strcmp(s->flags[i].flag, flag) == 0)
			return &s->flags[i];
	}
	return NULL;
}

/* Some reading stands for both, and is another: "8" and "8 dH" are one. */
static bool differ(const struct ts_typed *t)
{
	const struct ts_sentence *s = t->out;

	for (size_t i = 0; i < s->flag_count; i++) {
		const struct ts_sentence_flag *own =
			s->flags[i].poured ? of_tank(s, s->flags[i].flag) : NULL;
		double a, b;

		if (own && !(is_figure(t, own->value, &a) && is_figure(t, s->flags[i].value, &b) &&
				   !(fabs(a - b) > 1e-9)))
			return true;
	}
	return false;
}

void ts_typed_settle_waters(struct ts_typed *t)
{
	struct ts_sentence *s = t->out;
	const char *poured = NULL;
	bool two = differ(t);
	size_t kept = 0;

	for (size_t i = 0; i < s->flag_count; i++) {
		struct ts_sentence_flag flag = s->flags[i];
		bool own = flag.poured && of_tank(s, flag.flag);

		if (flag.poured && two && (own || !poisons(flag.flag)))
			poured = ts_arena_join(t->arena, poured ? poured : "", poured ? ", " : "",
				flag.flag + 2, " ", flag.value, NULL);
		else if (!own)
			s->flags[kept++] = flag;
		else
			continue; /* the same of both */
	}
	s->flag_count = kept;
	t->tap = false;
	if (poured)
		(void)ts_typed_flag(t, "--poured", poured, NULL);
}
