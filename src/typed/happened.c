/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What happened to a tank, and in what state it is, as people tell it: patterns (happened_rows.c)
 * held against the words, and what is made of the first that fits.
 */
#include "typed/happened.h"

#include <string.h>
#include <strings.h>

#include "records/animals.h"
#include "typed/reader.h"

/* Where a pattern has matched so far. */
struct match {
	struct ts_typed *t;
	size_t at;
	double number;    /* negative: none */
	const char *span; /* NULL: none */
};

/* The times that stand by themselves. */
static const struct {
	const char *words, *span;
} times[] = {
	{"the day before yesterday", "2 days"},
	{"yesterday evening", "1 day"},
	{"yesterday", "1 day"},
	{"this morning", "6 hours"},
	{"this afternoon", "3 hours"},
	{"this evening", "2 hours"},
	{"today", "6 hours"},
	{"last night", "12 hours"},
	{"all night", "10 hours"},
	{"overnight", "10 hours"},
	{"over night", "10 hours"},
	{"the night", "10 hours"},
	{"all day", "10 hours"},
	{"half an hour", "1 hour"},
	{"an hour", "1 hour"},
	{"a day", "1 day"},
	{"a few hours", "3 hours"},
	{"some hours", "3 hours"},
	{"several hours", "5 hours"},
	{"a couple of hours", "2 hours"},
	{"a couple of days", "2 days"},
	{"a couple of weeks", "2 weeks"},
	{"a couple of months", "2 months"},
	{"a few days", "3 days"},
	{"some days", "3 days"},
	{"several days", "4 days"},
	{"last week", "1 week"},
	{"a few weeks", "3 weeks"},
	{"several weeks", "3 weeks"},
	{"some weeks", "3 weeks"},
	{"last month", "4 weeks"},
	{"a few months", "3 months"},
	{"several months", "4 months"},
	{"some months", "3 months"},
	{"many months", "6 months"},
	{"last year", "1 year"},
	{"a few years", "3 years"},
	{"some years", "3 years"},
	{"many years", "5 years"},
	{"several years", "3 years"},
	{"years", "2 years"},
	{"months", "3 months"},
	{"ages", "2 years"},
	{"a long time", "1 year"},
	{"ever", "2 years"},
	{"monday night", "2 days"},
	{"monday", "2 days"},
	{"tuesday night", "2 days"},
	{"tuesday", "2 days"},
	{"wednesday night", "2 days"},
	{"wednesday", "2 days"},
	{"thursday night", "2 days"},
	{"thursday", "2 days"},
	{"friday night", "2 days"},
	{"friday", "2 days"},
	{"saturday night", "2 days"},
	{"saturday", "2 days"},
	{"sunday night", "2 days"},
	{"sunday", "2 days"},
	{"the weekend", "3 days"},
	{"weekend", "3 days"},
	{"christmas", "1 month"},
};

/* Units of a time as people shorten them. */
static const struct {
	const char *word, *unit;
} time_units[] = {{"h", "hours"}, {"hr", "hours"}, {"hrs", "hours"}, {"hour", "hours"},
	{"hours", "hours"}, {"min", "min"}, {"mins", "min"}, {"minutes", "min"}, {"minute", "min"},
	{"d", "days"}, {"day", "days"}, {"days", "days"}, {"wk", "weeks"}, {"wks", "weeks"},
	{"week", "weeks"}, {"weeks", "weeks"}, {"mo", "months"}, {"month", "months"},
	{"months", "months"}, {"mth", "months"}, {"mths", "months"}, {"yr", "years"},
	{"yrs", "years"}, {"year", "years"}, {"years", "years"}};

/* "2 weeks", "two days", "yesterday"; how many words, 0: no time. */
static size_t span_here(const struct ts_typed *t, size_t at, const char **ret)
{
	double number = at < t->count ? ts_typed_number(t->word[at]) : 0;
	size_t next = at + 1;

	for (size_t i = 0;
		number > 0 && next < t->count && i < sizeof time_units / sizeof *time_units; i++) {
		if (!ts_typed_is(t->word[next], time_units[i].word))
			continue;
		*ret = ts_arena_join(
			t->arena, ts_typed_number_text(t, number), " ", time_units[i].unit, NULL);
		return *ret ? 2 : 0;
	}
	for (size_t i = 0; i < sizeof times / sizeof *times; i++) {
		size_t used = ts_typed_phrase(t, at, times[i].words);

		if (used) {
			*ret = times[i].span;
			return used;
		}
	}
	return 0;
}

/* One of the words between "|"; `len` bytes of them. */
static bool one_of(const char *word, const char *choices, size_t len)
{
	size_t own = strlen(word);

	for (size_t from = 0; from < len;) {
		size_t end = from;

		while (end < len && choices[end] != '|')
			end++;
		if (end - from == own && strncasecmp(choices + from, word, own) == 0)
			return true;
		from = end + 1;
	}
	return false;
}

#define ANY_MOST 3
#define SEVERAL_MOST 6

static bool fits(const char *pattern, struct match *io);

/* The rest fits behind so many words more. */
static bool fits_behind(const char *rest, struct match *io, size_t words)
{
	struct match tried = *io;

	tried.at += words;
	if (!fits(rest, &tried))
		return false;
	*io = tried;
	return true;
}

/* A word that "*" may stand for: no figure, and nobody's name. */
static bool may_skip(const struct match *m, size_t at)
{
	struct ts_typed *t = m->t;
	size_t here = t->at, name;

	if (ts_typed_ends(t, at) || strpbrk(t->word[at], "0123456789"))
		return false;
	t->at = at;
	name = ts_typed_name_here(t, false);
	t->at = here;
	return !name;
}

/* "*" */
static bool fits_any(const char *rest, struct match *io)
{
	for (size_t skip = 0; skip <= ANY_MOST; skip++) {
		if (skip && !may_skip(io, io->at + skip - 1))
			return false;
		if (fits_behind(rest, io, skip))
			return true;
	}
	return false;
}

/* "a|b~": the most of them first. */
static bool fits_several(const char *words, size_t len, const char *rest, struct match *io)
{
	size_t most = 0;

	while (most < SEVERAL_MOST && io->at + most < io->t->count &&
		one_of(io->t->word[io->at + most], words, len))
		most++;
	for (size_t count = most + 1; count-- > 0;) {
		if (fits_behind(rest, io, count))
			return true;
	}
	return false;
}

/* "#", "@" and words, that must be there; false leaves `*io` as it was. */
static bool fits_one(const char *words, size_t len, const char *rest, struct match *io)
{
	struct match tried = *io;
	size_t used = 0;

	if (*words == '#') {
		tried.number = io->at < io->t->count ? ts_typed_number(io->t->word[io->at]) : 0;
		used = tried.number > 0;
	} else if (*words == '@') {
		used = span_here(io->t, io->at, &tried.span);
	} else {
		used = io->at < io->t->count && one_of(io->t->word[io->at], words, len);
	}
	if (!used || !fits_behind(rest, &tried, used))
		return false;
	*io = tried;
	return true;
}

/* The rest of a pattern fits from here on. */
static bool fits(const char *pattern, struct match *io)
{
	size_t len = strcspn(pattern, " ");
	const char *rest = pattern + len + (pattern[len] == ' ');

	if (!*pattern)
		return true;
	if (len == 1 && *pattern == '*')
		return fits_any(rest, io);
	if (pattern[len - 1] == '~')
		return fits_several(pattern, len - 1, rest, io);
	if (pattern[len - 1] == '?')
		return fits_one(pattern, len - 1, rest, io) || fits(rest, io);
	return fits_one(pattern, len, rest, io);
}

/* The value of a row with "#" and "@" filled in. */
static const char *filled(const struct ts_typed *t, const char *value, const struct match *m)
{
	size_t before = strcspn(value, "#@");
	const char *in = value[before] == '#' ? ts_typed_number_text(t, m->number) : m->span;

	if (!value[before] || !in)
		return value;
	return ts_arena_join(
		t->arena, ts_arena_text(t->arena, value, before), in, value + before + 1, NULL);
}

/* A filter of that age may be relied on, and below, not (common practice). */
#define YOUNG_DAYS 56
#define OLD_DAYS 180

static bool take_age(struct ts_typed *t, const char *span)
{
	double days = ts_days_of(span);

	if (days < 0)
		return false;
	if (days < YOUNG_DAYS)
		return ts_typed_flag(t, "--filter", "new", NULL);
	return days < OLD_DAYS || ts_typed_flag(t, "--filter", "mature", NULL);
}

/* No water of a tank that is meant so is as warm, or as cold, C. */
#define STUCK_C 29
#define FAILED_C 20
#define WARMEST_C 45
#define COLDEST_C 4

static bool take_temperature(
	struct ts_typed *t, const struct ts_typed_row *row, const struct match *m)
{
	const char *value = filled(t, row->value, m);

	if (!(m->number >= COLDEST_C))
		return false;
	if (m->number > WARMEST_C)
		value = ts_arena_join(t->arena, value, " F", NULL);
	if (row->makes == TS_TYPED_HEATER && m->number <= WARMEST_C &&
		(m->number > STUCK_C || m->number < FAILED_C))
		(void)ts_typed_flag(t, "--happened",
			m->number > STUCK_C ? "heater stuck" : "heater failed", NULL);
	return ts_typed_flag(t, row->flag, value, NULL);
}

/* "changed all the water", where "all" is said. */
static bool take_changed(struct ts_typed *t, const struct match *m)
{
	static const char *const all[] = {"all", "whole", "entire", "emptied", "drained"};

	for (size_t i = t->at; i < m->at; i++) {
		if (TS_TYPED_AMONG(t->word[i], all))
			return ts_typed_flag(t, "--happened", "changed 100 %", NULL);
	}
	return false;
}

/* Of somebody it is told that it died. */
static bool dies(const struct ts_typed *t)
{
	static const char *const words[] = {"die", "dies", "died", "dead", "dying"};

	for (size_t i = 0; i < t->count; i++) {
		if (TS_TYPED_AMONG(t->word[i], words))
			return true;
	}
	return false;
}

static bool make(struct ts_typed *t, const struct ts_typed_row *row, const struct match *m)
{
	switch (row->makes) {
	case TS_TYPED_HEATER:
		return take_temperature(t, row, m);
	case TS_TYPED_FLAG:
		if (strcmp(row->flag, "--temperature") == 0)
			return take_temperature(t, row, m);
		return ts_typed_flag(t, row->flag, filled(t, row->value, m), NULL);
	case TS_TYPED_CHANGED_ALL:
		return take_changed(t, m);
	case TS_TYPED_AGE:
		return take_age(t, m->span);
	case TS_TYPED_WITH:
		t->living |= t->owns;
		return true;
	case TS_TYPED_LIVED:
		return ts_typed_lived(t, m->span);
	case TS_TYPED_CAME:
		return t->last_living && t->ended == t->at && t->bought &&
		       ts_typed_lived(t, m->span);
	case TS_TYPED_MOVES:
		t->keeper = true;
		return ts_typed_flag(t, "--asks", "move", NULL);
	case TS_TYPED_COUNT:
		return ts_typed_counted(t, t->word[t->at]);
	case TS_TYPED_SUSPECT:
		if (!(t->deaths > 0 || t->sign || dies(t))) /* a metal is asked about */
			return strcmp(row->value, "poison: metal") != 0;
		return ts_typed_flag(t, row->flag, row->value, NULL);
	case TS_TYPED_KEEP_DYING:
		t->uncounted = true;
		ts_typed_died(t, 2);
		return true;
	case TS_TYPED_SO_MANY:
		if (!t->uncounted)
			return false;
		t->deaths = m->number;
		t->uncounted = false;
		return true;
	case TS_TYPED_IN_IT:
		if (t->asked || t->buys || !t->last || t->ended != t->at)
			return false;
		ts_typed_they_live(t);
		return true;
	case TS_TYPED_SET_TO:
		t->set_to = filled(t, row->value, m);
		return m->number >= COLDEST_C;
	case TS_TYPED_SPAN:
		(void)ts_typed_onset(t, ts_typed_joined(t, t->at, m->at));
		return true;
	case TS_TYPED_KEEPS:
		t->keeper = true;
		return true;
	case TS_TYPED_AWAY:
		t->keeper = true;
		return ts_typed_flag(t, "--asks",
			ts_arena_join(t->arena, "away ",
				ts_typed_number_text(t, ts_days_of(m->span)), NULL),
			NULL);
	case TS_TYPED_SINCE:
		return ts_typed_since(t, m->span);
	case TS_TYPED_LIVE:
		if (t->asked || !t->last || t->buys)
			return false;
		ts_typed_they_live(t);
		return true;
	case TS_TYPED_OF_THEM:
		t->of_them = ts_typed_number(t->word[t->at]);
		t->living = t->owns = true;
		return true;
	case TS_TYPED_DIES:
		if (!t->asked)
			ts_typed_died(t, m->number);
		return true;
	case TS_TYPED_DIED:
		ts_typed_died(t, m->number);
		return true;
	case TS_TYPED_MANY_DIED:
		ts_typed_died(t, t->last_count > 0 || t->of_them > 0 ? m->number : 2);
		return true;
	case TS_TYPED_ASKED:
		return t->asked;
	default:
		return true;
	}
}

size_t ts_typed_fits(struct ts_typed *t, const char *pattern)
{
	struct match m = {t, t->at, -1, NULL};

	return fits(pattern, &m) ? m.at - t->at : 0;
}

size_t ts_typed_happened(struct ts_typed *t)
{
	for (const struct ts_typed_row *row = ts_typed_rows; row->pattern; row++) {
		struct match m = {t, t->at, -1, NULL};

		if (fits(row->pattern, &m) && m.at > t->at && make(t, row, &m))
			return m.at - t->at;
	}
	return 0;
}
