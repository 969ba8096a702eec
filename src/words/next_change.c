/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One sentence a reason.
 */
#include "words/next_change.h"

#include <math.h>

#include "words/due.h"
#include "words/remake.h"

const char *const ts_change_reason_words[TS_CHANGE_REASON__COUNT + 1] = {
	"nothing", "routine", "nitrate", "buffer", "advice", NULL};

/* A small change is called what every answer calls it. */
static void put_share(struct ts_text *text, const struct ts_next_change *c)
{
	if (c->small)
		ts_text_put(text, "10 to 15");
	else
		ts_text_number_short(text, 100 * c->share, 0);
	ts_text_put(text, " %");
}

void ts_say_change_amount(struct ts_text *text, const struct ts_next_change *c)
{
	if (isnan(c->litres)) {
		put_share(text, c);
		ts_text_put(text, " of the water");
		return;
	}
	ts_say_amount(text, c->litres, "L");
	ts_text_put(text, " (");
	put_share(text, c);
	ts_text_put(text, ")");
}

static void put_last(struct ts_text *text, const struct ts_next_change *c, long today)
{
	if (!c->noted) {
		ts_text_put(text, ": no change is noted yet");
	} else if (c->stale) {
		ts_text_put(text, ": none is noted since ");
		ts_say_day(text, c->last, today);
	} else if (c->last == today) {
		ts_text_put(text, ": the last change was today");
	} else {
		ts_text_put(text, ": the last change was ");
		ts_say_age(text, today - c->last);
		ts_text_put(text, " ago");
	}
}

static void put_value(struct ts_text *text, const struct ts_next_change *c)
{
	if (c->reason == TS_CHANGE_NITRATE) {
		ts_text_put(text, "nitrate ");
		ts_text_number_short(text, c->limit, 0);
		ts_text_put(text, " mg/L");
	} else {
		ts_text_put(text, "KH ");
		ts_text_number_short(text, c->limit, 1);
	}
}

void ts_say_next_change(struct ts_text *text, const struct ts_next_change *c, long today)
{
	ts_text_put(text, "Change ");
	ts_say_change_amount(text, c);
	ts_text_put(text, c->day <= today ? " today" : " by ");
	if (c->day != today) {
		ts_text_put(text, c->day < today ? ", which was due on " : "");
		ts_say_day(text, c->day, today);
	}
	if (c->reason == TS_CHANGE_NITRATE || c->reason == TS_CHANGE_BUFFER) {
		ts_text_put(text, ": ");
		put_value(text, c);
		ts_text_put(text, c->day <= today ? " is passed" : " is reached then");
		return;
	}
	put_last(text, c, today);
}

/* "nitrate is reckoned at 24 mg/L now, KH at 5.2" */
static void put_now(struct ts_text *text, const struct ts_next_change *c, const char *before)
{
	if (!isnan(c->no3_now)) {
		ts_text_puts(text, before, "nitrate is reckoned at ", NULL);
		ts_text_number_short(text, c->no3_now, 0);
		ts_text_put(text, " mg/L now");
	}
	if (isnan(c->kh_now))
		return;
	ts_text_puts(text, isnan(c->no3_now) ? before : ", ", "KH at ", NULL);
	ts_text_number_short(text, c->kh_now, 1);
	ts_text_put(text, isnan(c->no3_now) ? " now" : "");
}

static void put_every(struct ts_text *text, double days)
{
	if (days == 1) {
		ts_text_put(text, "every day");
		return;
	}
	ts_text_put(text, "every ");
	ts_text_number_short(text, days, 1);
	ts_text_put(text, " days");
}

static void put_pace(struct ts_text *text, const struct ts_next_change *c)
{
	bool nitrate = c->reason == TS_CHANGE_NITRATE;

	ts_text_puts(text,
		nitrate ? "reckoned from the last reading " : "KH reckoned from the last reading ",
		NULL);
	ts_text_number_short(text, nitrate ? c->no3_now : c->kh_now, nitrate ? 0 : 1);
	ts_text_put(text, nitrate ? " mg/L now" : " now");
	if (nitrate ? c->a_day > 0 : c->a_day < 0) {
		ts_text_put(text, nitrate ? ", +" : ", -");
		ts_text_number_short(text, fabs(7 * c->a_day), 1);
		ts_text_put(text,
			nitrate ? " mg/L a week without a change" : " a week without a change");
	}
}

void ts_say_next_change_because(struct ts_text *text, const struct ts_next_change *c)
{
	switch (c->reason) {
	case TS_CHANGE_ROUTINE:
		ts_text_put(text, "your routine, ");
		put_every(text, c->every_days);
		if (!c->noted)
			ts_text_put(text, c->by_reading ? ", counted from the newest reading" : "");
		put_now(text, c, "; ");
		ts_text_put(text, c->stale ? "; where it was changed and not noted, note it with "
					     "its day, and nitrate can be reckoned"
					   : "");
		return;
	case TS_CHANGE_ORDERED:
		ts_text_put(text, "a little and ");
		put_every(text, c->every_days);
		put_now(text, c, "; ");
		return;
	case TS_CHANGE_NITRATE:
	case TS_CHANGE_BUFFER:
		put_pace(text, c);
		return;
	default:
		return;
	}
}
