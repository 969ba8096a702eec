/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Sentences of what stock/fit.h found. What may be nothing is not said to be something.
 */
#include "answers/learned.h"

#include <limits.h>
#include <math.h>

#include "chem/ions.h"
#include "words/due.h"
#include "words/remake.h"

#define WEEK 7
/* Less hardness a week than this is nobody's matter, dH. */
#define HARDNESS_SHOWN 0.05

enum what { NITRATE, GH, KH, STONES, EVAPORATION, PLANTS, WHAT__COUNT };
const char *const ts_learned_words[] = {
	"nitrate", "gh", "kh", "stones", "evaporation", "plants", NULL};

/* clang-format off: one row a line */
static const struct {
	const char *key, *name, *unit, *above, *below; /* what may lie behind a reading outside */
	int decimals;
} parameters[TS_FIT__COUNT] = {
	[TS_FIT_GH] = {"gh", "GH", "",
		"stones that dissolve, salts that were dosed, or harder new water",
		"softer new water, more of it than was noted, or soil that takes it up", 1},
	[TS_FIT_KH] = {"kh", "KH", "",
		"stones that dissolve, soda that was dosed, or new water with more KH",
		"a filter that works harder, wood, peat or soil, or new water with less KH", 1},
	[TS_FIT_NO3] = {"no3", "nitrate", " mg/L",
		"a dead animal, more feed, a change of water left out, or a kit that has gone off",
		"more water changed than was noted, less feed, or a kit that has gone off", 0},
};
/* clang-format on */

struct work {
	const struct ts_asking *asking;
	const struct ts_plan *plan;
	const struct ts_waters *waters;
	struct ts_learned *ret;
	struct ts_text text;
};

static void put(struct work *w, double value, int decimals)
{
	ts_text_number_short(&w->text, value, decimals);
}

static const char *take(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

/* "12 (9 to 15)" */
static void put_estimate(struct work *w, const struct ts_estimate *e, int decimals)
{
	put(w, e->value, decimals);
	ts_text_put(&w->text, " (");
	put(w, e->low, decimals);
	ts_text_put(&w->text, " to ");
	put(w, e->high, decimals);
	ts_text_put(&w->text, ")");
}

static void add(struct work *w, enum what what, const char *unit, const struct ts_estimate *e,
	double modelled, const struct ts_rate *rate)
{
	w->ret->lines[w->ret->line_count++] = (struct ts_learned_line){ts_learned_words[what], unit,
		e->value, e->low, e->high, modelled, (double)rate->readings, rate->days, take(w)};
}

static void put_readings(struct work *w, const struct ts_rate *rate)
{
	ts_text_put(&w->text, ", by ");
	put(w, (double)rate->readings, 0);
	ts_text_put(&w->text, " readings in ");
	ts_say_age(&w->text, lround(rate->days));
}

static struct ts_estimate a_week(const struct ts_rate *rate)
{
	return (struct ts_estimate){WEEK * rate->low, WEEK * rate->a_day, WEEK * rate->high};
}

static void say_nitrate(struct work *w)
{
	const struct ts_load *l = &w->waters->load;
	double modelled =
		w->waters->load_known && (w->plan->stock_count || w->plan->tank.feeding.value > 0)
			? l->modelled_no3_rise_mg_l_week
			: (double)NAN;

	if (!(w->waters->measured.value > 0))
		return;
	ts_text_put(&w->text, "nitrate rises by ");
	put_estimate(w, &w->waters->measured, 1);
	ts_text_put(&w->text, " mg/L a week between changes");
	put_readings(w, &w->waters->fit.rate[TS_FIT_NO3]);
	if (!isnan(modelled)) {
		ts_text_put(&w->text, "; the animals and their feed would make ");
		put(w, modelled, 1);
	}
	add(w, NITRATE, "mg/L a week", &w->waters->measured, modelled,
		&w->waters->fit.rate[TS_FIT_NO3]);
}

/* KH also falls by what makes the nitrate; the model of it goes by the waste that counts. */
static void say_hardness(struct work *w, enum ts_fit_what what, const struct ts_rate *rate)
{
	struct ts_estimate e = a_week(rate);
	bool falls = e.value < 0;
	struct ts_estimate by = {falls ? -e.high : e.low, fabs(e.value), falls ? -e.low : e.high};
	double modelled = what == TS_FIT_GH       ? 0
			  : w->waters->load_known ? -w->waters->load.kh_used_dh_week.value
						  : (double)NAN;

	if (!rate->readings)
		return;
	ts_text_put(&w->text, parameters[what].name);
	if (e.low > 0 || e.high < 0) {
		ts_text_put(&w->text, falls ? " loses " : " gains ");
		put_estimate(w, &by, 2);
		ts_text_put(&w->text, " dH a week by itself");
	} else {
		ts_text_put(&w->text, " keeps by itself, within ");
		put(w, fmax(fabs(e.low), fabs(e.high)), 2);
		ts_text_put(&w->text, " dH a week");
	}
	put_readings(w, rate);
	if (what == TS_FIT_KH && !isnan(modelled)) {
		ts_text_put(&w->text, "; the filter's work takes ");
		put(w, -modelled, 2);
	}
	add(w, what == TS_FIT_GH ? GH : KH, "dH a week", &e, modelled, rate);
}

/* Only where it surely is something. */
static void say_stones(struct work *w)
{
	const struct ts_fit *fit = &w->waters->fit;
	const struct ts_estimate *s = &fit->stone_dh_day;
	const struct ts_estimate e = {WEEK * s->low, WEEK * s->value, WEEK * s->high};

	if (!w->waters->gh_rate.readings || fabs(e.value) < HARDNESS_SHOWN ||
		!(e.low > 0 || e.high < 0))
		return;
	ts_text_put(&w->text, e.value > 0 ? "stones or sand give " : "soil or plants take ");
	put(w, fabs(e.value), 2);
	ts_text_put(&w->text, " dH a week");
	add(w, STONES, "dH a week", &e, 0, &fit->rate[TS_FIT_GH]);
}

/* By what was topped up, or by minerals that gather. */
static void say_evaporation(struct work *w)
{
	const struct ts_waters *waters = w->waters;
	const struct ts_tank *tank = &w->plan->tank;
	const struct ts_estimate *s = &waters->fit.evaporated_share;
	double week = WEEK * waters->load.net_l;
	const struct ts_estimate e = {fmax(week * s->low, 0), week * s->value, week * s->high};

	if (!waters->load_known || !(tank->evaporation.days > 0) ||
		!(waters->gh_rate.readings || waters->kh_rate.readings))
		return;
	put(w, e.value, 1);
	ts_text_put(&w->text, " L evaporate a week");
	add(w, EVAPORATION, "L a week", &e,
		week * tank->evaporation.amount / 100 / tank->evaporation.days,
		&waters->fit.rate[waters->gh_rate.readings ? TS_FIT_GH : TS_FIT_KH]);
}

/* Of a feed that is weighed what does not come as nitrate. */
static void say_plants(struct work *w)
{
	const struct ts_waters *waters = w->waters;
	const struct ts_estimate *n = &waters->load.nitrogen_mg_day, *rise = &waters->measured;
	double by = ts_net_nitrogen_mmol_l(1) * waters->load.net_l * TS_WEIGHT_N;
	const struct ts_estimate e = {fmax(n->low - by * rise->high, 0),
		fmax(n->value - by * rise->value, 0), fmax(n->high - by * rise->low, 0)};

	if (!waters->load_known || !(w->plan->tank.feeding.value > 0) || !(rise->value > 0) ||
		e.high < 1)
		return;
	ts_text_put(&w->text, "of the ");
	put(w, n->value, 0);
	ts_text_put(&w->text, " mg of nitrogen a day in the feed plants take ");
	put_estimate(w, &e, 0);
	add(w, PLANTS, "mg of nitrogen a day", &e,
		n->value - ts_net_nitrogen_mmol_l(waters->load.modelled_no3_rise_mg_l_week) *
				   waters->load.net_l * TS_WEIGHT_N,
		&waters->fit.rate[TS_FIT_NO3]);
}

static const char *expected_says(
	struct work *w, enum ts_fit_what what, const struct ts_fit_expected *e)
{
	ts_text_puts(&w->text, parameters[what].name, " ", NULL);
	put(w, e->read, parameters[what].decimals);
	ts_text_puts(&w->text, parameters[what].unit, " on ", NULL);
	ts_say_day(&w->text, e->day, w->asking->today);
	ts_text_put(&w->text, e->outside ? ", and by the log before it " : ", as expected: ");
	put(w, e->low, parameters[what].decimals);
	ts_text_put(&w->text, " to ");
	put(w, e->high, parameters[what].decimals);
	ts_text_put(&w->text, e->outside ? " was to be expected" : "");
	return take(w);
}

static void say_expected(struct work *w, enum ts_fit_what what)
{
	const struct ts_fit_expected *e = &w->waters->fit.expected[what];
	struct ts_learned_expected *line = &w->ret->expected[w->ret->expected_count];

	if (!e->known)
		return;
	*line = (struct ts_learned_expected){parameters[what].key, NULL, e->read, e->low, e->high,
		e->outside, expected_says(w, what, e)};
	line->date = ts_asking_day(w->asking, e->day);
	w->ret->expected_count++;
	if (!e->outside)
		return;
	ts_text_puts(&w->text, "Not as expected: ", line->says, ". Read it again; if it stays so: ",
		e->read > e->high ? parameters[what].above : parameters[what].below, ".", NULL);
	ts_asking_note(w->asking, &w->ret->alarms, take(w));
}

/* Why nothing follows from what was read of a value, and what would make it. */
static const char *const thin_reasons[] = {
	": read on one day; read again two weeks later it tells how fast it moves",
	": what the new water holds of it is not known",
	": the readings do not tell yet how fast it moves; four weeks of them will",
};
#define THIN_REASONS (sizeof thin_reasons / sizeof *thin_reasons)

/* Which of them; THIN_REASONS: none, it was never read, or it counts. */
static size_t thin_reason(const struct work *w, enum ts_fit_what what, bool counts)
{
	const struct ts_fit_level *level = &w->waters->fit.level[what];

	if (!level->known || counts || w->waters->strange)
		return THIN_REASONS;
	return w->waters->fit.rate[what].readings ? 2 : level->days > 1;
}

static void say_thin(struct work *w, const bool counts[TS_FIT__COUNT])
{
	for (size_t reason = 0; reason < THIN_REASONS; reason++) {
		size_t left = 0, said = 0;

		for (int i = 0; i < TS_FIT__COUNT; i++)
			left += thin_reason(w, (enum ts_fit_what)i, counts[i]) == reason;
		for (int i = TS_FIT__COUNT; i-- > 0;) {
			if (thin_reason(w, (enum ts_fit_what)i, counts[i]) != reason)
				continue;
			ts_text_put(&w->text, !said ? "" : said + 1 == left ? " and " : ", ");
			ts_text_put(&w->text, parameters[i].name);
			said++;
		}
		if (!said)
			continue;
		ts_text_put(&w->text, thin_reasons[reason]);
		ts_asking_note(w->asking, &w->ret->thin, take(w));
	}
}

/* "8 L (15 %) every 21 days" */
static void put_routine(struct work *w, const struct ts_every *e)
{
	if (!(e->amount > 0)) {
		ts_text_put(&w->text, "no water");
		return;
	}
	if (w->waters->load_known) {
		ts_say_amount(&w->text, e->amount / 100 * w->waters->load.net_l, "L");
		ts_text_put(&w->text, " (");
	}
	put(w, e->amount, 0);
	ts_text_put(&w->text, w->waters->load_known ? " %) every " : " % every ");
	put(w, e->days, 0);
	ts_text_put(&w->text, " days");
}

bool ts_learned_less_is_changed(const struct ts_plan *plan)
{
	const struct ts_every *said = &plan->tank.change_said, *done = &plan->tank.water_change;

	return said->days > 0 && done->amount * said->days < said->amount * done->days;
}

/* Where the file's own routine would settle: what going back to it is good for. */
static void say_back(struct work *w)
{
	const struct ts_every *said = &w->plan->tank.change_said;
	struct ts_drift_tank tank;
	struct ts_drift_steady steady;

	if (!ts_learned_less_is_changed(w->plan) || !w->waters->drift_known ||
		!(w->waters->load_known && said->amount > 0))
		return;
	ts_waters_run(w->waters, 0, &tank);
	tank.change_share = said->amount / 100;
	tank.change_days = said->days;
	ts_drift_steady(&tank, &steady);
	ts_text_put(&w->text, "Go back to ");
	put_routine(w, said);
	ts_text_put(&w->text, ", by small steps");
	if (!isnan(steady.no3_mg_l.before_change)) {
		ts_text_put(&w->text, ": ");
		if (!isnan(steady.kh_dh.before_change) &&
			!(w->waters->drift.assumed & TS_DRIFT_NO_KH)) {
			ts_text_put(&w->text, "KH then settles at ");
			put(w, steady.kh_dh.before_change, 1);
			ts_text_put(&w->text, ", nitrate at ");
		} else {
			ts_text_put(&w->text, "nitrate then settles at ");
		}
		put(w, steady.no3_mg_l.before_change, 0);
		ts_text_put(&w->text, " mg/L");
	}
	w->ret->back_says = take(w);
}

const char *ts_learned_gone(const struct ts_asking *asking, const struct ts_waters *waters)
{
	const struct ts_estimate *days = &waters->settles.buffer_days;
	const struct ts_now_from *kh = &waters->log.from[TS_NOW_KH];
	long read = kh->dated ? kh->day : asking->today;
	double floor = asking->practice->value[TS_P_KH_FLOOR], over = ts_waters_kh_over(waters);
	struct ts_coming coming = {"is used up", "may be used up", 0, 0, LONG_MAX};
	struct ts_text text;
	const char *says;

	if (asking->today < 0 || !waters->settled_known || !isfinite(days->value) ||
		!isfinite(days->low))
		return NULL;
	coming.early = read + (long)days->low;
	coming.about = read + (long)days->value;
	if (isfinite(days->high))
		coming.late = read + (long)days->high;
	ts_text_open(&text, &asking->arena->allocator);
	ts_text_put(&text, "The buffer (KH ");
	ts_text_number_short(&text, floor, 1);
	if (over > 0) {
		ts_text_put(&text, ", ");
		ts_text_number_short(&text, floor + over, 1);
		ts_text_put(&text, " as these drops count");
	}
	ts_text_put(&text, ") ");
	ts_say_coming(&text, &coming, asking->today);
	says = ts_asking_keep(asking, &text);
	ts_text_drop(&text);
	return says;
}

/* What comes of it where nothing is done: the buffer's end, and where nitrate settles. */
static void say_else(struct work *w)
{
	const struct ts_span *now = &w->waters->now.at[TS_KH];
	bool lost = now->given && now->value < w->asking->practice->value[TS_P_KH_FLOOR];
	const char *gone =
		w->waters->kh_rate.readings && !lost ? ts_learned_gone(w->asking, w->waters) : NULL;
	const struct ts_estimate *no3 = &w->waters->settles.no3_mg_l;
	const struct ts_estimate *kh = &w->waters->settles.kh_dh;

	if (!w->ret->back_says || !w->waters->settled_known || !isfinite(no3->value))
		return;
	ts_text_put(&w->text, "At the changes of now ");
	if (gone) {
		ts_text_puts(&w->text, "t", gone + 1, ", and ", NULL);
	} else if (lost) {
		ts_text_put(&w->text, "the buffer stays used up, and ");
	} else if (kh->value < w->asking->practice->value[TS_P_KH_WARN]) {
		ts_text_put(&w->text, "KH falls to ");
		put(w, kh->value, 1);
		ts_text_put(&w->text, ", and ");
	}
	ts_text_put(&w->text, "nitrate settles at ");
	put(w, no3->value, 0);
	ts_text_put(&w->text, " mg/L");
	w->ret->else_says = take(w);
}

static void say_routine(struct work *w)
{
	const struct ts_tank *tank = &w->plan->tank;
	long since = ts_past_since(&w->waters->past, &tank->water_change);

	if (!(tank->change_said.days > 0))
		return;
	ts_text_put(&w->text, "By the log you change ");
	put_routine(w, &tank->water_change);
	if (since != TS_COURSE_FROM_FIRST && tank->water_change.amount > 0) {
		ts_text_put(&w->text, ", since ");
		ts_say_day(&w->text, since, w->asking->today);
	}
	ts_text_put(&w->text, "; the file says ");
	put_routine(w, &tank->change_said);
	ts_text_put(&w->text, ". The log counts");
	w->ret->routine_says = take(w);
	say_back(w);
	say_else(w);
}

void ts_learned_make(const struct ts_asking *asking, const struct ts_plan *plan,
	const struct ts_waters *waters, struct ts_learned *ret)
{
	struct work w = {.asking = asking, .plan = plan, .waters = waters, .ret = ret};
	const bool counts[TS_FIT__COUNT] = {[TS_FIT_GH] = waters->gh_rate.readings > 0,
		[TS_FIT_KH] = waters->kh_rate.readings > 0,
		[TS_FIT_NO3] = waters->measured.value > 0};

	*ret = (struct ts_learned){0};
	ts_text_open(&w.text, &asking->arena->allocator);
	ret->lines = ts_arena_array(asking->arena, WHAT__COUNT, sizeof *ret->lines);
	ret->expected = ts_arena_array(asking->arena, TS_FIT__COUNT, sizeof *ret->expected);
	if (ret->lines && ret->expected) {
		say_nitrate(&w);
		say_hardness(&w, TS_FIT_KH, &waters->kh_rate);
		say_hardness(&w, TS_FIT_GH, &waters->gh_rate);
		say_stones(&w);
		say_evaporation(&w);
		say_plants(&w);
		for (int i = TS_FIT__COUNT; i-- > 0;)
			say_expected(&w, (enum ts_fit_what)i);
		say_thin(&w, counts);
		say_routine(&w);
	}
	asking->arena->failed |= w.text.failed;
	ts_text_drop(&w.text);
}
