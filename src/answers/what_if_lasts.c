/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What of a tank lasts how long when something fails: care/lasts.h asked about this tank.
 */
#include "answers/what_if_work.h"

#include <math.h>

#include "stock/drift.h"
#include "stock/rules.h"
#include "words/remake.h"
#include "words/rulings.h"

/* A room without heating, C, where nobody says. */
#define ROOM_C 18.0
#define HOURS_OF_DAY 24
#define AWAY_DAYS 14
#define OXYGEN_MOST_H 48.0
#define UNFED_SHARE 0.25

void ts_what_if_hours(struct ts_text *text, double hours)
{
	double minutes = fmax(10, 10 * round(hours * 6));

	if (!isfinite(hours)) {
		ts_text_put(text, "for good");
	} else if (hours < 1) {
		ts_text_number_short(text, minutes, 0);
		ts_text_put(text, " minutes");
	} else if (hours < 48) {
		double whole = hours < 4 ? round(2 * hours) / 2 : round(hours);

		ts_text_number_short(text, whole, 1);
		ts_text_put(text, whole == 1 ? " hour" : " hours");
	} else {
		ts_text_number_short(text, floor(hours / HOURS_OF_DAY), 0);
		ts_text_put(text, " days");
	}
}

void ts_what_if_add(
	struct ts_what_if_work *w, const char *what, const struct ts_estimate *h, double limit)
{
	w->r.lasts[w->r.lasts_count++] = (struct ts_what_if_line){
		what, ts_asking_keep(w->asking, &w->text), h->low, h->value, h->high, limit};
}

/* "about 9 hours (4 to 30)", "4 hours or more". */
static void put_estimate(struct ts_text *text, const struct ts_estimate *h)
{
	if (!isfinite(h->value)) {
		ts_what_if_hours(text, h->low);
		ts_text_put(text, " at the least, perhaps for good");
		return;
	}
	ts_text_put(text, "about ");
	ts_what_if_hours(text, h->value);
	ts_text_put(text, " (");
	if (h->low >= 1 && h->high < 48) /* one unit for both ends */
		ts_text_number_short(text, h->low < 4 ? round(2 * h->low) / 2 : round(h->low), 1);
	else
		ts_what_if_hours(text, h->low);
	ts_text_put(text, isfinite(h->high) ? " to " : " or more");
	if (isfinite(h->high))
		ts_what_if_hours(text, h->high);
	ts_text_put(text, ")");
}

static bool all_breathe_air(const struct ts_what_if_work *w)
{
	for (size_t i = 0; i < w->question->plan->stock_count; i++) {
		if (!(w->question->species[i]->habits & TS_HABIT_BREATHES_AIR))
			return false;
	}
	return w->question->plan->stock_count > 0;
}

void ts_what_if_oxygen(struct ts_what_if_work *w)
{
	const double *p = w->asking->practice->value;
	double least = p[all_breathe_air(w) ? TS_P_OXYGEN_NOW : TS_P_OXYGEN_CONFLICT];
	const struct ts_still_water water = {
		w->net_l, w->tank.length_cm * w->tank.width_cm / 10000, w->temp_c, (double)NAN};
	const struct ts_breathing b = {w->groups, w->question->plan->stock_count,
		w->waters->load_known ? w->waters->load.nitrogen_mg_day.value : 0, w->temp_c};

	ts_breathing_mg_h(&b, &w->breathes);
	if (ts_oxygen_lasts_h(&water, &w->breathes, least, &w->oxygen_h) != TS_OK)
		return;
	/* So far no figure of it reaches. */
	if (w->oxygen_h.low > OXYGEN_MOST_H)
		w->oxygen_h =
			(struct ts_estimate){(double)INFINITY, (double)INFINITY, (double)INFINITY};
	if (isfinite(w->oxygen_h.low)) {
		ts_text_put(&w->text, "Oxygen in water that nothing moves: ");
		put_estimate(&w->text, &w->oxygen_h);
		ts_text_put(&w->text, ", until ");
		ts_text_number_short(&w->text, least, 0);
		ts_text_put(&w->text, " mg/L are left; they take about ");
		ts_text_number_short(&w->text, w->breathes.value, w->breathes.value < 9.5 ? 1 : 0);
		ts_text_put(&w->text, " mg an hour");
	} else {
		ts_text_put(&w->text,
			"Oxygen in water that nothing moves: the surface lets in what "
			"they take, about ");
		ts_text_number_short(&w->text, w->breathes.value, w->breathes.value < 9.5 ? 1 : 0);
		ts_text_put(&w->text, " mg an hour");
	}
	ts_what_if_add(w, "oxygen", &w->oxygen_h, least);
}

/* Who bears least cold, or least warmth. */
static void find_limit(struct ts_what_if_work *w, bool cold)
{
	const struct ts_plan *plan = w->question->plan;

	w->coldest = NULL;
	w->limit_c = (double)NAN;
	for (size_t i = 0; i < plan->stock_count; i++) {
		const struct ts_keeping keeping = {.wild = plan->stock[i].origin == TS_ORIGIN_WILD};
		struct ts_match m = {0};
		const struct ts_range *t = &m.at[TS_TEMPERATURE].tolerated;

		ts_match_species(w->question->species[i], &w->waters->now, &keeping,
			w->asking->practice, &m);
		if (isnan(t->low) ||
			(w->coldest && (cold ? t->low <= w->limit_c : t->high >= w->limit_c)))
			continue;
		w->coldest = w->question->species[i];
		w->limit_c = cold ? t->low : t->high;
	}
}

static void put_room(struct ts_what_if_work *w)
{
	ts_text_put(&w->text, "in a room of ");
	ts_text_number_short(&w->text, w->room_c, 1);
	ts_text_put(&w->text, " C");
}

static double panes(const struct ts_what_if_work *w)
{
	return ts_tank_panes_m2(w->tank.length_cm, w->tank.width_cm, w->tank.height_cm);
}

void ts_what_if_warmth(struct ts_what_if_work *w)
{
	w->room_c = isnan(w->question->room_c) ? ROOM_C : w->question->room_c;
	find_limit(w, true);
	if (!w->coldest)
		return;
	ts_warmth_lasts_h(w->net_l, panes(w), fmax(w->temp_c, w->limit_c), w->limit_c, w->room_c,
		&w->cools_h);
	ts_text_put(&w->text, "Warmth ");
	put_room(w);
	ts_text_put(&w->text, ": ");
	if (isfinite(w->cools_h.low))
		put_estimate(&w->text, &w->cools_h);
	else
		ts_text_put(&w->text, "it never comes so low");
	ts_text_puts(&w->text, isfinite(w->cools_h.low) ? ", until " : " as ", NULL);
	ts_text_number_short(&w->text, w->limit_c, 1);
	ts_text_put(&w->text, " C, the least that ");
	ts_say_animals(&w->text, w->coldest);
	ts_text_put(&w->text, " bear");
	if (isnan(w->question->room_c))
		ts_asking_note(w->asking, &w->r.notes,
			"The room is taken as 18 C without heating (--room says another).");
	ts_what_if_add(w, "warmth", &w->cools_h, w->limit_c);
}

void ts_what_if_cooling(struct ts_what_if_work *w)
{
	w->room_c = isnan(w->question->room_c) ? ROOM_C : w->question->room_c;
	find_limit(w, false);
	if (!w->coldest)
		return;
	if (w->temp_c <= w->limit_c) {
		ts_text_put(&w->text, "They bear ");
		ts_text_number_short(&w->text, w->limit_c, 1);
		ts_text_put(&w->text, " C; --temperature says how warm it is, and then how long it "
				      "takes to come down");
		ts_asking_note(w->asking, &w->r.notes, ts_asking_keep(w->asking, &w->text));
		return;
	}
	ts_warmth_lasts_h(w->net_l, panes(w), w->temp_c, w->limit_c, w->room_c, &w->cools_h);
	ts_text_put(&w->text, "By itself, ");
	put_room(w);
	ts_text_put(&w->text, ", it comes down to ");
	ts_text_number_short(&w->text, w->limit_c, 1);
	ts_text_put(&w->text, " C, the most that ");
	ts_say_animals(&w->text, w->coldest);
	ts_text_put(&w->text, isfinite(w->cools_h.low) ? " bear, in " : " bear, not at all");
	if (isfinite(w->cools_h.low))
		put_estimate(&w->text, &w->cools_h);
	ts_what_if_add(w, "cooling", &w->cools_h, w->limit_c);
}

static void put_days(struct ts_text *text, double days)
{
	double whole = days < 1 ? 1 : floor(days);

	if (days > 60) {
		ts_text_put(text, "more than 60 days");
		return;
	}
	ts_text_put(text, days < 1 ? "less than " : "");
	ts_text_number_short(text, whole, 0);
	ts_text_put(text, whole == 1 ? " day" : " days");
}

void ts_what_if_ammonia(struct ts_what_if_work *w)
{
	const struct ts_profile *now = &w->waters->now;
	const struct ts_unfiltered tank = {w->net_l,
		w->waters->load_known ? w->waters->load.nitrogen_mg_day.value : 0,
		isnan(now->ph_read) ? now->ph_tank : now->ph_read, w->temp_c,
		now->poisons.tan_mg_l};
	struct ts_estimate hours;

	if (!w->waters->load_known || !(tank.nitrogen_mg_day > 0))
		return;
	ts_unfiltered_lasts(&tank, w->asking->practice, &w->ammonia);
	hours = (struct ts_estimate){HOURS_OF_DAY * w->ammonia.fed_days,
		HOURS_OF_DAY * w->ammonia.unfed_days, HOURS_OF_DAY * w->ammonia.unfed_days};
	ts_text_put(&w->text, "Without a filter ammonia reaches ");
	ts_text_number_short(&w->text, w->ammonia.limit_tan_mg_l, 1);
	ts_text_put(&w->text, " mg/L, which harms at this pH, in ");
	put_days(&w->text, w->ammonia.fed_days);
	ts_text_put(&w->text, " if fed as usual, in about ");
	put_days(&w->text, w->ammonia.unfed_days);
	ts_text_put(&w->text, " if not fed");
	ts_what_if_add(w, "ammonia", &hours, w->ammonia.limit_tan_mg_l);
}

/* The days without anybody: no change, feed only where they are too long without. */
static void run_away(struct ts_what_if_work *w)
{
	struct ts_drift_tank tank;
	struct ts_drift_day day;
	struct ts_drift d;

	ts_waters_run(w->waters, 0, &tank);
	tank.change_share = 0;
	if (w->away_days <= w->asking->practice->value[TS_P_AWAY_LONG])
		tank.nitrogen_mmol_l *= UNFED_SHARE;
	w->evaporates_l = tank.evaporated_share * w->away_days * w->net_l;
	if (ts_drift_open(&tank, w->asking->practice, &d) != TS_OK)
		return;
	while (d.day < (unsigned)w->away_days)
		ts_drift_live(&d);
	ts_drift_read(&d, false, &day);
	w->no3_then = w->waters->load_known ? day.no3_mg_l : (double)NAN;
	w->kh_then = day.kh_dh;
}

void ts_what_if_away(struct ts_what_if_work *w)
{
	struct ts_estimate hours;

	w->away_days =
		ceil(isnan(w->question->hours) ? AWAY_DAYS : w->question->hours / HOURS_OF_DAY);
	if (isnan(w->question->hours))
		ts_asking_note(w->asking, &w->r.notes,
			"How long is not said: taken as 14 days (--hours \"14 days\").");
	if (!w->waters->drift_known)
		return;
	run_away(w);
	hours = (struct ts_estimate){HOURS_OF_DAY * w->away_days, HOURS_OF_DAY * w->away_days,
		HOURS_OF_DAY * w->away_days};
	ts_text_put(&w->text, "After ");
	ts_text_number_short(&w->text, w->away_days, 0);
	ts_text_put(&w->text, w->away_days == 1 ? " day: " : " days: ");
	ts_say_amount(&w->text, w->evaporates_l, "L");
	ts_text_put(&w->text, " are gone");
	if (!isnan(w->no3_then)) {
		ts_text_put(&w->text, ", nitrate is about ");
		ts_text_number_short(&w->text, w->no3_then, 0);
		ts_text_put(&w->text, " mg/L");
	}
	if (!isnan(w->kh_then) && w->waters->log.from[TS_NOW_KH].reading) {
		ts_text_put(&w->text, ", KH ");
		ts_text_number_short(&w->text, w->kh_then, 1);
	}
	ts_what_if_add(w, "away", &hours, w->no3_then);
}
