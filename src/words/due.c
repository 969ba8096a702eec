/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Days and ages in words, and the templates of the reasons filled in.
 */
#include "words/due.h"

#include <limits.h>
#include <math.h>
#include <string.h>

#include "base/date.h"

const char *const ts_due_what_words[TS_DUE_WHAT__COUNT + 1] = {
	"GH", "KH", "pH", "ammonia", "nitrite", "nitrate", "oxygen", NULL};
const char *const ts_due_where_words[TS_DUE_WHERE__COUNT + 1] = {"tank", "supply", NULL};
const char *const ts_due_when_words[] = {"overdue", "today", "later", NULL};

const char ts_caution_due[] =
	"A test is worth the day it was made on: write its date beside it. Suffering animals are a "
	"vet's matter, whatever the readings say.";

const char *ts_due_when(long day, long today)
{
	return ts_due_when_words[day < today ? 0 : day == today ? 1 : 2];
}

void ts_say_day(struct ts_text *text, long day, long today)
{
	static const char *const months[] = {"January", "February", "March", "April", "May", "June",
		"July", "August", "September", "October", "November", "December"};
	char at[TS_DATE_ROOM], now[TS_DATE_ROOM];

	if (!ts_date_write(at, day)) {
		ts_text_put(text, "a day beyond the calendar");
		return;
	}
	ts_text_add(text, at + 8 + (at[8] == '0'), at[8] == '0' ? 1 : 2);
	ts_text_puts(text, " ", months[10 * (at[5] - '0') + at[6] - '0' - 1], NULL);
	if (!ts_date_write(now, today) || memcmp(at, now, 4) != 0) {
		ts_text_put(text, " ");
		ts_text_add(text, at, 4);
	}
}

/* Days that nobody tells apart, of so many ahead. */
static bool one_day(long early, long late, long today)
{
	return late - early <= 3 || late - early <= (late - today) / 10;
}

/* Before today, and when at the latest. */
static void say_passed(struct ts_text *text, const struct ts_coming *c, long today)
{
	if (c->late <= today) {
		ts_text_puts(text, c->done, " by now", NULL);
		return;
	}
	ts_text_puts(text, c->may, " already", NULL);
	if (c->about <= today)
		return;
	ts_text_put(text, ", and most likely is by ");
	ts_say_day(text, c->about, today);
}

void ts_say_coming(struct ts_text *text, const struct ts_coming *c, long today)
{
	if (c->early <= today) {
		say_passed(text, c, today);
	} else if (c->late != LONG_MAX && one_day(c->early, c->late, today)) {
		ts_text_puts(text, c->done, " about ", NULL);
		ts_say_day(text, c->about, today);
	} else if (c->late != LONG_MAX) {
		ts_text_puts(text, c->done, " between ", NULL);
		ts_say_day(text, c->early, today);
		ts_text_put(text, " and ");
		ts_say_day(text, c->late, today);
		ts_text_put(text, ", most likely by ");
		ts_say_day(text, c->about, today);
	} else {
		ts_text_puts(text, c->done, " by ", NULL);
		ts_say_day(text, c->about, today);
		ts_text_put(text, " most likely, and from ");
		ts_say_day(text, c->early, today);
		ts_text_put(text, " on at the soonest");
	}
}

void ts_say_due_what(struct ts_text *text, const struct ts_due_item *item)
{
	unsigned left = item->what;

	for (unsigned i = 0; i < TS_DUE_WHAT__COUNT; i++) {
		if (!(item->what & 1u << i))
			continue;
		left &= ~(1u << i);
		if (item->what & ((1u << i) - 1))
			ts_text_put(text, left ? ", " : " and ");
		ts_text_put(text, ts_due_what_words[i]);
	}
	ts_text_puts(text, " of the ", ts_due_where_words[item->where], NULL);
}

void ts_say_age(struct ts_text *text, long days)
{
	long weeks = days / 7, months = lround((double)days / 30.4);

	if (days < 21) {
		ts_text_number(text, (double)days, 0);
		ts_text_put(text, days == 1 ? " day" : " days");
	} else if (weeks < 26) {
		ts_text_number(text, (double)weeks, 0);
		ts_text_put(text, " weeks");
	} else {
		ts_text_number(text, (double)months, 0);
		ts_text_put(text, " months");
	}
}

static void put_last(struct ts_text *text, const struct ts_due_item *item, long today)
{
	if (!item->read) {
		ts_text_put(text, "never read");
	} else if (!item->dated) {
		ts_text_put(text, "the last reading has no date");
	} else if (item->last == today) {
		ts_text_put(text, "last read today");
	} else {
		ts_text_put(text, "the last reading is ");
		ts_say_age(text, today - item->last);
		ts_text_put(text, " old");
	}
}

void ts_say_due(struct ts_text *text, const struct ts_due_item *item, long today)
{
	ts_text_put(text, "Test ");
	ts_say_due_what(text, item);
	ts_text_put(text, item->day <= today ? " today" : " by ");
	if (item->day != today) {
		ts_text_put(text, item->day < today ? ", which was due on " : "");
		ts_say_day(text, item->day, today);
	}
	ts_text_put(text, ": ");
	put_last(text, item, today);
}

static void put_figure(struct ts_text *text, const struct ts_due_item *item, double value)
{
	if (item->reason == TS_DUE_TREND && value > 0)
		ts_text_put(text, "+");
	ts_text_number_short(text, value, item->decimals);
}

static void put_named(
	struct ts_text *text, const struct ts_due_item *item, const char *name, long today)
{
	if (strncmp(name, "{figure}", 8) == 0)
		put_figure(text, item, item->figure);
	else if (strncmp(name, "{other}", 7) == 0)
		put_figure(text, item, item->other);
	else if (strncmp(name, "{gone}", 6) == 0)
		ts_say_day(text, (item->dated ? item->last : today) + (long)item->figure, today);
	else
		ts_text_put(text, ts_due_what_words[item->of]);
}

static void put_every(struct ts_text *text, const struct ts_due_item *item)
{
	if (item->reason == TS_DUE_BUFFER) {
		ts_text_number_short(text, item->every_days, 0);
		ts_text_put(text, item->every_days == 1 ? " day after a reading: "
							: " days after a reading: ");
	} else if (item->every_days == 1) {
		ts_text_put(text, "every day: ");
	} else {
		ts_text_put(text, "every ");
		ts_text_number_short(text, item->every_days, 1);
		ts_text_put(text, " days: ");
	}
}

void ts_say_due_because(struct ts_text *text, const struct ts_due_item *item, long today)
{
	const char *at = ts_due_rows[item->reason].says;

	put_every(text, item);
	while (*at) {
		size_t plain = strcspn(at, "{");

		ts_text_add(text, at, plain);
		at += plain;
		if (!*at)
			return;
		put_named(text, item, at, today);
		at += strcspn(at, "}") + 1;
	}
}
