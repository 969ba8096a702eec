/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The limits that a routine reaches: the buffer's, nitrate's, and what each resident bears of GH
 * and KH. The tank is followed three times, as the settled water is, and each limit gets the day
 * on which it is reached.
 */
#include "answers/drift_work.h"

#include <limits.h>
#include <string.h>

#include "match/bands.h"
#include "stock/rules.h"
#include "words/due.h"
#include "words/rulings.h"

#define RUNS 3
/* Sooner than that is now, days. */
#define NOW_DAYS 1

/* A limit on its way. */
struct limit {
	enum ts_drift_moves what;
	double at;
	bool above;
	const struct ts_species *species;
	double day[RUNS]; /* NAN: not reached */
	bool comes_right; /* beyond it now, and inside it in the end */
	double over;      /* by so much a value is less than it was read */
};

struct limits {
	struct limit *at;
	size_t count;
};

static double value_of(const struct ts_drift_day *d, enum ts_drift_moves what)
{
	const double values[TS_MOVES__COUNT] = {
		d->gh_dh, d->kh_dh, d->no3_mg_l, d->ph, d->conductivity_us_cm};

	return values[what];
}

static bool beyond(const struct limit *l, double value)
{
	return l->above ? value > l->at : value < l->at + l->over;
}

static void add(struct limits *all, enum ts_drift_moves what, double at, bool above,
	const struct ts_species *species)
{
	/* Of several animals the one whose limit comes first speaks. */
	for (size_t i = 0; i < all->count; i++) {
		struct limit *old = &all->at[i];

		if (!old->species || !species || old->what != what || old->above != above)
			continue;
		if (above ? at < old->at : at > old->at)
			*old = (struct limit){what, at, above, species, {0}, false, 0};
		return;
	}
	all->at[all->count++] = (struct limit){what, at, above, species, {0}, false, 0};
}

static void note_unfit(struct drift_work *w, const struct ts_species *s, enum ts_drift_moves what,
	const struct ts_range *bears)
{
	double now = value_of(&w->today, what);

	if (w->unfit || what == TS_MOVES_PH || isnan(now))
		return;
	w->unfit = s;
	w->unfit_what = what;
	w->unfit_above = now > bears->high;
	w->unfit_at = w->unfit_above ? bears->high : bears->low;
}

/* What a resident bears; one that the water excludes already is check's matter. */
static void add_species(struct drift_work *w, struct limits *all, size_t line)
{
	const struct ts_species *s = w->question->species[line];
	const struct ts_keeping keeping = {
		.wild = w->question->plan->stock[line].origin == TS_ORIGIN_WILD,
		.temperature = w->question->plan->tank.temp_c};
	static const struct {
		enum ts_parameter parameter;
		enum ts_drift_moves what;
	} parameters[] = {{TS_GH, TS_MOVES_GH}, {TS_KH, TS_MOVES_KH}, {TS_PH, TS_MOVES_PH}};
	struct ts_match m;

	ts_match_species(s, &w->waters->now, &keeping, w->asking->practice, &m);
	for (size_t i = 0; i < sizeof parameters / sizeof *parameters; i++) {
		const struct ts_parameter_fit *fit = &m.at[parameters[i].parameter];
		enum ts_drift_moves what = parameters[i].what;
		struct ts_range bears = fit->tolerated;
		double now = value_of(&w->today, what);

		/* Below a pH it is by its slack that hardness in range makes up for. */
		if (what == TS_MOVES_PH && fit->known)
			bears = ts_band_ph_slack(
				s, &fit->tolerated, &keeping, w->asking->practice->value);
		if (!fit->known || (what == TS_MOVES_GH && !w->gh_known) ||
			(what == TS_MOVES_PH && !w->kh_known) ||
			fit->source[0] == ts_by_kind_of_water)
			continue;
		/* By the figure: a doubt that reaches beyond a limit takes none away. */
		if (!(now <= bears.high && now >= bears.low)) {
			note_unfit(w, s, what, &bears);
			continue;
		}
		if (isfinite(bears.high))
			add(all, what, bears.high, true, s);
		if (bears.low > 0)
			add(all, what, bears.low, false, s);
	}
}

/* Days of one run on which each limit is first passed for good. */
static enum ts_status follow(
	struct drift_work *w, const struct ts_drift_tank *tank, int run, struct limits *all)
{
	unsigned ahead = (unsigned)w->asking->practice->value[TS_P_SETTLED_AHEAD];
	unsigned sight = (unsigned)w->asking->practice->value[TS_P_DUE_BUFFER_AHEAD];
	struct ts_drift_day day;
	struct ts_drift d;
	enum ts_status status = ts_drift_open(tank, w->asking->practice, &d);

	for (size_t i = 0; i < all->count; i++)
		all->at[i].day[run] = (double)NAN;
	for (unsigned n = 0; status == TS_OK && n <= ahead; n++) {
		if (n)
			ts_drift_live(&d);
		ts_drift_read(&d, true, &day);
		for (size_t i = 0; i < all->count; i++) {
			struct limit *l = &all->at[i];
			bool out;

			/* The buffer's end is that of ts_waters_make(). */
			l->over = l->what == TS_MOVES_KH && !l->species && run != 1 &&
						  l->at == w->asking->practice->value[TS_P_KH_FLOOR]
					  ? ts_waters_kh_over(w->waters)
					  : 0;
			out = beyond(l, value_of(&day, l->what));
			if (out && isnan(l->day[run]) && !(l->over > 0 && !run && n > sight))
				l->day[run] = n;
			if (!run && n == ahead)
				l->comes_right = l->day[0] == 0 && !out;
		}
		ts_drift_change(&d);
	}
	return status;
}

static void put_unit(struct ts_text *t, const struct limit *l, double value)
{
	const struct ts_drift_moves_row *row = &ts_drift_moves_rows[l->what];

	ts_text_puts(t, row->label, " ", NULL);
	ts_text_number_short(t, value, row->decimals);
	ts_text_put(t, row->unit);
	if (!(l->over > 0) || value != l->at)
		return;
	ts_text_put(t, " (");
	ts_text_number_short(t, value + l->over, row->decimals);
	ts_text_put(t, " as these drops count)");
}

static void put_whose(struct ts_text *t, const struct limit *l)
{
	if (l->what == TS_MOVES_CONDUCTIVITY)
		ts_text_put(t, ", a good deal more than in the new water");
	if (l->what == TS_MOVES_PH && !l->species)
		ts_text_put(t, ", under which the filter works slowly");
	if (!l->species)
		return;
	ts_text_put(t, l->above ? ", the most that " : ", the least that ");
	ts_say_animal(t, l->species);
	ts_text_put(t, " bears");
}

/* pH is the result of the rest, and what is dissolved in all harms nobody by itself. */
static bool is_mild(const struct limit *l)
{
	return l->what == TS_MOVES_PH || l->what == TS_MOVES_CONDUCTIVITY;
}

static double earliest(const struct limit *l)
{
	return fmin(l->day[0], fmin(l->day[1], l->day[2]));
}

static double latest(const struct limit *l)
{
	return isnan(l->day[1]) || isnan(l->day[2]) ? (double)NAN
						    : fmax(l->day[0], fmax(l->day[1], l->day[2]));
}

/* " (30 to 70)": where the ends are not one day. */
static void put_span_of(struct ts_text *t, const struct limit *l)
{
	double early = earliest(l), late = latest(l);

	if (late - early < 2)
		return;
	ts_text_put(t, " (");
	ts_text_number_short(t, early, 0);
	if (isnan(late)) {
		ts_text_put(t, " or more)");
		return;
	}
	ts_text_put(t, " to ");
	ts_text_number_short(t, late, 0);
	ts_text_put(t, ")");
}

double drift_age(const struct drift_work *w, enum ts_now_value value)
{
	const struct ts_now_from *from = &w->waters->log.from[value];

	return from->dated && w->asking->today >= 0
		       ? fmax(0, (double)(w->asking->today - from->day))
		       : 0;
}

const char *drift_coming(struct drift_work *w, const char *what, const char *done, const char *may,
	const struct drift_days *d)
{
	long today = w->asking->today, read = today - (long)drift_age(w, d->value);
	const struct ts_coming coming = {done, may, read + (long)d->early, read + (long)d->about,
		isnan(d->late) ? LONG_MAX : read + (long)d->late};

	if (today < 0)
		return NULL;
	ts_text_puts(&w->text, what, " ", NULL);
	ts_say_coming(&w->text, &coming, today);
	return ts_asking_keep(w->asking, &w->text);
}

/* Read on its limit, or within days of it: it is reached, as far as a kit tells. */
static bool reached_now(const struct limit *l)
{
	return earliest(l) == 0 && l->day[0] <= NOW_DAYS && !(l->over > 0);
}

/* The limit with its days of the calendar; nothing of one that is passed. */
static const char *by_says(struct drift_work *w, const struct limit *l)
{
	const struct drift_days days = {
		ts_drift_moves_rows[l->what].value, earliest(l), l->day[0], latest(l)};
	const char *what;

	if (!(l->day[0] > 0) || reached_now(l))
		return NULL;
	put_unit(&w->text, l, l->at);
	ts_text_capital(&w->text, 0);
	put_whose(&w->text, l);
	ts_text_put(&w->text, l->species || is_mild(l) ? "," : "");
	what = ts_asking_keep(w->asking, &w->text);
	return what ? drift_coming(w, what, "is reached", "may be reached", &days) : NULL;
}

static const char *says(struct drift_work *w, const struct limit *l, double now)
{
	struct ts_text *t = &w->text;

	if (l->day[0] == 0 && !(l->above ? now > l->at : now < l->at)) {
		put_unit(t, l, now);
		ts_text_put(t, " was read, and by its kit it may be less than ");
		ts_text_number_short(t, l->at, 1);
	} else if (l->day[0] == 0) {
		put_unit(t, l, now);
		ts_text_put(t, l->above ? ", comfortable to " : ", too little under ");
		ts_text_number_short(t, l->at, 1);
		if (l->comes_right)
			ts_text_put(t, "; this routine brings it back");
	} else if (reached_now(l)) {
		put_unit(t, l, l->at);
		put_whose(t, l);
		ts_text_put(t, l->species || is_mild(l) ? ", is reached now" : " is reached now");
	} else {
		put_unit(t, l, l->at);
		put_whose(t, l);
		ts_text_put(t, l->species || is_mild(l) ? ", is reached in " : " is reached in ");
		ts_text_number_short(t, l->day[0], 0);
		ts_text_put(t, l->day[0] == 1 ? " day" : " days");
		put_span_of(t, l);
	}
	return ts_asking_keep(w->asking, t);
}

/* What is mild stands behind all others. */
static bool before(const struct ts_drift_limit_result *a, const struct ts_drift_limit_result *b)
{
	return a->mild != b->mild ? b->mild : a->day < b->day;
}

static void fill(struct drift_work *w, const struct limits *all)
{
	struct ts_drift_result *r = w->ret;

	r->limits = ts_arena_array(w->asking->arena, all->count + 1, sizeof *r->limits);
	for (size_t i = 0; r->limits && i < all->count; i++) {
		const struct limit *l = &all->at[i];
		struct ts_drift_limit_result one = {ts_drift_moves_rows[l->what].key, l->at,
			l->above, l->day[0], is_mild(l), earliest(l), latest(l),
			drift_age(w, ts_drift_moves_rows[l->what].value),
			l->species ? l->species->species : NULL, NULL, NULL};
		size_t at = r->limit_count;

		if (isnan(l->day[0]))
			continue;
		one.says = says(
			w, l, l->what == TS_MOVES_KH ? w->kh_read : value_of(&w->today, l->what));
		one.by_says = by_says(w, l);
		for (; at && before(&one, &r->limits[at - 1]); at--)
			r->limits[at] = r->limits[at - 1];
		r->limits[at] = one;
		r->limit_count++;
	}
}

/* Of the new water as it is simulated; NAN: outside the equations. */
static double poured_us_cm(const struct drift_work *w)
{
	struct ts_drift_tank tank = w->waters->drift.tank;
	struct ts_drift_day day;
	struct ts_drift d;

	tank.water = tank.supplies[0].water;
	tank.water.temp_c = w->waters->drift.tank.water.temp_c;
	if (ts_drift_open(&tank, w->asking->practice, &d) != TS_OK)
		return (double)NAN;
	ts_drift_read(&d, true, &day);
	return day.conductivity_us_cm;
}

static bool sensitive(const struct drift_work *w)
{
	for (size_t i = 0; i < w->question->plan->stock_count; i++) {
		if (w->question->species[i]->habits & TS_HABIT_NITRATE_SENSITIVE ||
			w->question->plan->stock[i].origin == TS_ORIGIN_WILD)
			return true;
	}
	return false;
}

/* pH under which a filter slows down, and more dissolved than a large change bears. */
static void add_general(struct drift_work *w, struct limits *all)
{
	const double *p = w->asking->practice->value;
	double most = (1 + p[TS_P_APART_EC] / 100) * poured_us_cm(w);

	if (w->kh_known && w->today.ph >= p[TS_P_FILTER_FULL_PH])
		add(all, TS_MOVES_PH, p[TS_P_FILTER_FULL_PH], false, NULL);
	if (w->today.conductivity_us_cm < most && w->gh_known)
		add(all, TS_MOVES_CONDUCTIVITY, most, true, NULL);
}

enum ts_status drift_limits(struct drift_work *w)
{
	const struct ts_plan *plan = w->question->plan;
	const double *p = w->asking->practice->value;
	struct limits all = {
		ts_arena_array(w->asking->arena, plan->stock_count * 6 + 5, sizeof *all.at), 0};
	enum ts_status status = TS_OK;

	if (!all.at)
		return TS_NO_MEMORY;
	if (w->kh_known) {
		add(&all, TS_MOVES_KH, p[TS_P_KH_FLOOR], false, NULL);
		add(&all, TS_MOVES_KH, p[TS_P_KH_ACT], false, NULL);
	}
	w->no3_most = p[sensitive(w) ? TS_P_NITRATE_CONCERN_SENSITIVE : TS_P_NITRATE_CONCERN];
	add(&all, TS_MOVES_NO3, w->no3_most, true, NULL);
	add_general(w, &all);
	for (size_t i = 0; i < plan->stock_count; i++)
		add_species(w, &all, i);
	for (int run = 0; run < RUNS && status == TS_OK; run++) {
		struct ts_drift_tank tank;

		ts_waters_run(w->waters, run, &tank);
		tank.filter_share = w->waters->drift.tank.filter_share;
		status = follow(w, &tank, run, &all);
	}
	if (status == TS_OK)
		fill(w, &all);
	return w->asking->arena->failed ? TS_NO_MEMORY : status;
}
