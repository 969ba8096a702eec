/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What stands beside the list of a check: the animals and what is to be feared of them, the water
 * that all share, and what they make of it.
 */
#include "answers/check_parts.h"

#include "answers/thin.h"
#include "base/arena.h"
#include "match/bands.h"
#include "stock/growth.h"
#include "words/animal.h"
#include "words/rulings.h"
#include "words/sentence.h"
#include "words/unusual.h"

static const enum ts_parameter shown[] = {TS_GH, TS_KH, TS_PH, TS_TEMPERATURE};
#define SHOWN (sizeof shown / sizeof *shown)

static void fill_ranges(
	struct ts_check_work *w, const struct ts_match *m, struct ts_check_animal *a)
{
	a->ranges = ts_arena_array(w->asking->arena, SHOWN, sizeof *a->ranges);
	for (size_t i = 0; a->ranges && i < SHOWN; i++) {
		const struct ts_parameter_fit *f = &m->at[shown[i]];

		const struct ts_span *span = &w->check.profile.at[shown[i]];
		const double no = (double)NAN;

		a->ranges[a->range_count++] = (struct ts_check_range){
			ts_parameter_rows[shown[i]].key, f->known ? f->reading : no,
			{span->given ? span->low : no, span->given ? span->high : no}, f->preferred,
			f->tolerated, f->known ? f->uncomfortable_by : no};
	}
}

/* How large it grows the room says, where a tank is given. */
static bool of_size(const struct ts_check_work *w, const struct ts_species *s)
{
	const struct ts_tank *tank = &w->question->plan->tank;

	if (!(tank->length_cm > 0) && !(tank->volume_l > 0))
		return false;
	for (size_t i = 0; i < w->check.count; i++) {
		if (w->check.rulings[i].subject == s && ts_check_no_home(&w->check.rulings[i]))
			return true;
	}
	return !(s->cautions & 1u << TS_CAUTION_NO_HOME_SUITS);
}

/* All of its cautions, those of the second line by themselves. */
static void say_dangers(
	struct ts_check_work *w, struct ts_check_animal *a, const struct ts_species *s)
{
	const unsigned home = TS_CAUTIONS_HOME * of_size(w, s);
	/* Who is there already is not bought: then only what stings is to be said at once. */
	const unsigned there = a->planned ? 0 : TS_CAUTIONS_LAW | TS_CAUTIONS_HOME;
	const unsigned second = TS_CAUTIONS_SECOND_LINE & ~home & ~there;
	const unsigned kinds[] = {second, TS_CAUTIONS_ALL & ~second};

	for (size_t i = 0; i < 2; i++) {
		const char *says;

		if (!(ts_caution_kinds(s) & kinds[i]))
			continue;
		ts_text_puts(&w->text, a->name, ": ", NULL);
		ts_say_cautions(&w->text, s, kinds[i]);
		says = ts_asking_keep(w->asking, &w->text);
		ts_asking_note(w->asking, &a->cautions, says);
		if (!i)
			ts_asking_note(w->asking, &w->out->cautions, says);
	}
}

void ts_check_animals(struct ts_check_work *w)
{
	const struct ts_check *c = &w->check;
	struct ts_check_result *out = w->out;

	out->animals = ts_arena_array(w->asking->arena, c->group_count + 1, sizeof *out->animals);
	for (size_t i = 0; out->animals && i < c->group_count; i++) {
		const struct ts_plan_group *g = &c->groups[i];
		const struct ts_species *s = g->group.species;
		struct ts_check_animal *a = &out->animals[out->animal_count++];
		struct ts_growth grown;

		ts_growth_of(&g->group, 6, w->asking->practice, &grown);
		*a = (struct ts_check_animal){.species = s->species,
			.file = s->file,
			.count = ts_group_count(&g->group),
			.planned = g->planned,
			.grown_cm = s->adult_length_cm,
			.in_six_months = grown.then.value,
			.in_six_months_range = {grown.then.low, grown.then.high},
			.tank_length_cm = ts_match_tank_length_cm(s),
			.fit = c->water_known ? ts_verdict_words[ts_misfit_verdict(
							g->match.verdict, g->misfit)]
					      : NULL};
		ts_say_animal(&w->text, s);
		a->name = ts_asking_keep(w->asking, &w->text);
		say_dangers(w, a, s);
		fill_ranges(w, &g->match, a);
	}
}

static void put_range(struct ts_check_work *w, const struct ts_range *r, enum ts_parameter p)
{
	const struct ts_parameter_row *row = &ts_parameter_rows[p];

	if (p != TS_TEMPERATURE)
		ts_text_puts(&w->text, row->label, " ", NULL);
	ts_text_number_short(&w->text, r->low, row->decimals);
	if (r->high > r->low) {
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, r->high, row->decimals);
	}
	ts_text_put(&w->text, p == TS_TEMPERATURE ? " C" : "");
}

/* " (yours is 6)"; nothing where it was not read. */
static void put_yours(struct ts_check_work *w, enum ts_parameter p)
{
	const struct ts_span *span = &w->check.profile.at[p];

	if (!span->given)
		return;
	ts_text_put(&w->text, " (yours is ");
	ts_text_number_short(&w->text, span->value, ts_parameter_rows[p].decimals);
	ts_text_put(&w->text, ")");
}

static void add_shared(struct ts_check_work *w, enum ts_parameter p)
{
	const struct ts_shared_water *s = &w->check.shared;
	struct ts_check_result *out = w->out;

	out->shared[out->shared_count++] = (struct ts_check_shared){
		ts_parameter_rows[p].key, s->at[p].low, s->at[p].high, s->comfortable[p]};
}

/* Of those that stay: who is told not to be bought has no say. */
static const char *who_like(struct ts_check_work *w)
{
	const struct ts_plan_group *one = NULL;
	size_t stay = 0;

	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];

		if (g->way != TS_WAY_LEAVE) {
			one = g;
			stay++;
		}
	}
	if (stay == w->check.group_count || !one)
		return stay == 1 ? "They like " : "All like ";
	if (stay > 1)
		return "The others like ";
	ts_say_animals(&w->text, one->group.species);
	ts_text_put(&w->text, " like ");
	return ts_asking_keep(w->asking, &w->text);
}

/* A pH that a sample's gas or lime made is none of the tank's. */
static void say_gas(struct ts_check_work *w)
{
	const struct ts_profile *p = &w->check.profile;
	unsigned bit = p->unusual & (TS_UNUSUAL_GASSY | TS_UNUSUAL_LIMED);

	if (!bit)
		return;
	ts_text_put(&w->text, " ");
	ts_say_unusual(&w->text, bit, p);
}

/* What was read of it is not what they like. */
static bool off(const struct ts_check_work *w, enum ts_parameter p)
{
	const struct ts_span *span = &w->check.profile.at[p];
	const struct ts_range *r = &w->check.shared.at[p];

	return span->given && (span->value < r->low || span->value > r->high);
}

/* "; KH 11 is more than the 10 that is known to suit them": of a band that the kind of their home
 * water gives, which excludes nobody by itself. */
static void put_beyond_kind(struct ts_check_work *w, enum ts_parameter p, double end, bool above)
{
	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];

		if (p != TS_KH || g->match.at[p].source[0] != ts_by_kind_of_water)
			return;
	}
	ts_text_puts(&w->text, w->text.len ? "; KH " : "KH ", NULL);
	ts_text_number_short(&w->text, w->check.profile.at[p].value, ts_parameter_rows[p].decimals);
	ts_text_put(&w->text, above ? " is more than the " : " is less than the ");
	ts_text_number_short(&w->text, end, ts_parameter_rows[p].decimals);
	ts_text_put(&w->text, " that is known to suit them");
	if (off(w, TS_PH) && !isnan(w->check.profile.ph_read)) {
		ts_text_put(&w->text, ", and it makes the pH ");
		ts_text_number_short(&w->text, w->check.profile.ph_read, 1);
	}
}

/* "; KH is bearable to 12 (yours is 8)": beyond what they like, within what all of them bear; what
 * is not borne is said by its own judgement. */
static void put_borne(struct ts_check_work *w, enum ts_parameter p)
{
	const struct ts_span *span = &w->check.profile.at[p];
	bool above = span->value > w->check.shared.at[p].high;
	double end = above ? INFINITY : -INFINITY;

	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_range *t = &w->check.groups[i].match.at[p].tolerated;

		if (w->check.groups[i].way != TS_WAY_LEAVE && !isnan(t->low))
			end = above ? fmin(end, t->high) : fmax(end, t->low);
	}
	if (!isfinite(end))
		return;
	if (above ? span->value > end : span->value < end) {
		put_beyond_kind(w, p, end, above);
		return;
	}
	ts_text_puts(&w->text, w->text.len ? "; " : "",
		p == TS_TEMPERATURE ? "the warmth" : ts_parameter_rows[p].label,
		above ? " is bearable to " : " is bearable from ", NULL);
	ts_text_number_short(&w->text, end, ts_parameter_rows[p].decimals);
	put_yours(w, p);
}

/* What was taken for a GH that nobody read. */
static void say_sea(struct ts_check_work *w)
{
	struct ts_profile p = w->check.profile;
	const char *says = ts_answer_sea_gh(w->asking, &p);

	if (says)
		ts_text_puts(&w->text, " ", says, NULL);
}

/* "All like GH 4 to 10, KH 2 to 8, 24 to 26 C". */
static void say_shared(struct ts_check_work *w)
{
	static const enum ts_parameter order[] = {TS_GH, TS_KH, TS_TEMPERATURE};
	const struct ts_shared_water *s = &w->check.shared;
	const char *who = who_like(w);
	size_t liked = 0;

	for (size_t i = 0; i < 3; i++) {
		const struct ts_range *r = &s->at[order[i]];

		if (isnan(r->low) || !s->comfortable[order[i]] || off(w, order[i]))
			continue;
		ts_text_put(&w->text, liked++ ? ", " : who);
		put_range(w, r, order[i]);
		put_yours(w, order[i]);
	}
	for (size_t i = 0; i < 3; i++) {
		if (s->comfortable[order[i]] && off(w, order[i]))
			put_borne(w, order[i]);
	}
	if (!w->text.len)
		return;
	ts_text_put(&w->text, ".");
	say_gas(w);
	say_sea(w);
	w->out->shared_says = ts_asking_keep(w->asking, &w->text);
}

void ts_check_water(struct ts_check_work *w)
{
	struct ts_check_result *out = w->out;

	if (!w->check.group_count)
		return;
	out->shared = ts_arena_array(w->asking->arena, SHOWN, sizeof *out->shared);
	for (size_t i = 0; out->shared && i < SHOWN; i++) {
		if (!isnan(w->check.shared.at[shown[i]].low))
			add_shared(w, shown[i]);
	}
	say_shared(w);
}

static struct ts_range ends(const struct ts_estimate *e)
{
	return (struct ts_range){e->low, e->high};
}

/* Of what is not given the one that decides: where nitrate may climb too high; NULL: it does not.
 */
static const struct ts_ruling *open_nitrate(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (r && r->rule == TS_RULE_NITRATE_OPEN)
			return r;
	}
	return NULL;
}

/* The one range of nitrate in an answer: of what is not given, where that is open. */
static struct ts_range range_of(const struct ts_check_work *w, const struct ts_load *l)
{
	const struct ts_ruling *open = open_nitrate(w);

	return open && isfinite(open->change) ? (struct ts_range){open->ours, open->change}
					      : ends(&l->no3_steady_mg_l);
}

/* "; comfortable to 50: plan on about 40 % a week": what brings the middle of it there. */
static void put_plan_on(struct ts_check_work *w, const struct ts_load *l, const struct ts_ruling *r)
{
	double weekly = l->change_percent * 7 / l->change_days;
	double percent = ceil(weekly * l->no3_steady_mg_l.value / r->its / 5) * 5;
	bool twice = percent > 60;

	ts_text_put(&w->text, ", comfortable to ");
	ts_text_number_short(&w->text, r->its, 0);
	ts_text_put(&w->text, ": plan on about ");
	ts_say_part_of(&w->text, fmin(twice ? ceil(percent / 10) * 5 : percent, 60), l->net_l);
	ts_text_put(&w->text, twice ? " twice a week" : " a week");
}

/* "Waste: nitrate reads 35 mg/L, comfortable to 50.": what was read, and nothing computed beside.
 */
static bool say_nitrate_read(struct ts_check_work *w)
{
	double no3 = ts_now_figure(&w->check.waters->log, TS_NOW_NO3);
	enum ts_practice_id limit =
		w->check.nitrate_sensitive ? TS_P_NITRATE_CONCERN_SENSITIVE : TS_P_NITRATE_CONCERN;

	if (isnan(no3))
		return false;
	ts_text_put(&w->text, "Waste: nitrate reads ");
	ts_text_number_short(&w->text, no3, 0);
	ts_text_put(&w->text, " mg/L, comfortable to ");
	ts_text_number_short(&w->text, w->asking->practice->value[limit], 0);
	ts_text_put(&w->text, ".");
	w->out->waste_says = ts_asking_keep(w->asking, &w->text);
	w->out->waste_matters = true;
	return true;
}

/*
 * Those that live there are well, and what nitrate does is a guess from a routine that nobody gave:
 * the reading is asked for, and nobody is told to change more.
 */
static bool ask_nitrate(struct ts_check_work *w, const struct ts_load *l)
{
	const struct ts_ruling *open = open_nitrate(w);

	if (!open || l->change_known || w->check.planned_groups || !ts_check_all_well(w))
		return false;
	ts_text_put(&w->text, "Waste: test nitrate, which is comfortable to ");
	ts_text_number_short(&w->text, open->its, 0);
	ts_text_put(&w->text, " mg/L: it tells whether the water that is changed is enough.");
	w->out->waste_says = ts_asking_keep(w->asking, &w->text);
	w->out->waste_matters = true;
	return true;
}

/* "Waste: nitrate settles at about 5 mg/L (3 to 7) with 30 % changed every 7 days". */
static void say_waste(struct ts_check_work *w, const struct ts_load *l)
{
	const struct ts_ruling *open = open_nitrate(w);
	const struct ts_range range = range_of(w, l);
	double kh = w->check.waters->settles.kh_dh.value;
	struct ts_text *t = &w->text;

	ts_text_put(t, "Waste: nitrate ");
	if (isfinite(l->no3_steady_mg_l.high)) {
		ts_text_put(t, "settles at about ");
		ts_text_number(t, l->no3_steady_mg_l.value, 0);
		ts_text_put(t, " mg/L (");
		ts_text_number(t, range.low, 0);
		ts_text_put(t, " to ");
		ts_text_number(t, range.high, 0);
		ts_text_put(t, ") with ");
		ts_say_part_of(t, l->change_percent, l->net_l);
		ts_text_put(t, " changed every ");
		ts_text_number_short(t, l->change_days, 1);
		ts_text_put(t,
			l->change_known || open ? " days" : " days, which is taken and not given");
		if (open && !l->change_known)
			put_plan_on(w, l, open);
	} else {
		ts_text_put(t, "rises without end, since no water is changed");
	}
	if (l->buffer_days.value >= 1 && l->buffer_days.value <= 365) {
		ts_text_put(t, "; the buffer lasts ");
		ts_text_number(t, l->buffer_days.value, 0);
		ts_text_put(t, " days");
	} else if (kh < w->asking->practice->value[TS_P_KH_WARN] && l->change_percent > 0) {
		ts_text_put(t, "; KH settles at ");
		ts_text_number_short(t, kh, 1);
	}
	ts_text_put(t, ".");
	w->out->waste_says = ts_asking_keep(w->asking, t);
	/* A routine that is taken, and is enough, nobody asked for. */
	w->out->waste_matters = open || l->change_known || !isnan(l->measured_no3_rise_mg_l_week);
}

static bool nitrate_read(const struct ts_check_work *w)
{
	const struct ts_now_from *no3 = &w->check.waters->log.from[TS_NOW_NO3];

	return no3->reading && !no3->old;
}

bool ts_check_nitrate_tells(const struct ts_check_work *w)
{
	return !w->check.planned_groups && w->check.load_known && nitrate_read(w) &&
	       isnan(w->check.load.measured_no3_rise_mg_l_week);
}

void ts_check_waste(struct ts_check_work *w)
{
	const struct ts_load *l = &w->check.load;
	struct ts_check_load *out;

	if (!w->check.load_known || !w->check.group_count)
		return;
	out = w->out->load = ts_arena_take(w->asking->arena, sizeof *out);
	if (!out)
		return;
	*out = (struct ts_check_load){.nitrogen_mg_day = l->nitrogen_mg_day.value,
		.no3_rise_mg_l_week = l->no3_rise_mg_l_week.value,
		.no3_steady_mg_l = l->no3_steady_mg_l.value,
		.kh_used_dh_week = l->kh_used_dh_week.value,
		.buffer_days = l->buffer_days.value,
		.feed_range = ends(&l->feed_g_day),
		.nitrogen_range = ends(&l->nitrogen_mg_day),
		.no3_rise_range = ends(&l->no3_rise_mg_l_week),
		.no3_steady_range = ends(&l->no3_steady_mg_l),
		.kh_used_range = ends(&l->kh_used_dh_week),
		.buffer_range = ends(&l->buffer_days),
		.volume_l = l->net_l,
		.feed_g_day = l->feed_g_day.value,
		.measured_no3_rise = l->measured_no3_rise_mg_l_week,
		.modelled_no3_rise = l->modelled_no3_rise_mg_l_week,
		.change_percent = l->change_percent,
		.change_days = l->change_days,
		.feeding_known = l->feeding_known,
		.plants_known = l->plants_known,
		.change_known = l->change_known};
	if (!say_nitrate_read(w) && !ask_nitrate(w, l))
		say_waste(w, l);
}
