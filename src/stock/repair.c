/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What mends a fault: a ladder from the cheapest remedy to the dearest, as rows. Each rung makes a
 * change of the plan; the plan is judged again with it, and the first change after which the fault
 * is gone and no other has come is the remedy. Between two animals the one that causes it goes
 * before the one that suffers, one that is planned before one that lives there, the last before the
 * first. The repair is these remedies one after the other until no conflict is left.
 */
#include "stock/check.h"

#include <string.h>

#include "base/arena.h"
#include "chem/hardness.h"
#include "chem/substances.h"
#include "stock/levels.h"
#include "stock/rules.h"

/* A plan whose stock is one line a species and sex, so that it can be changed. */
struct draft {
	struct ts_plan plan;
	struct ts_stock_line *stock;
	const struct ts_species **species;
	struct ts_reading mended; /* the water after minerals or dilution */
	bool water_mended;
};

struct work {
	const struct ts_practice *practice;
	const struct ts_plan *plan;
	struct ts_arena *arena;
	struct ts_check *check;
	long today;
	bool sick; /* nothing new is to be bought now */
};

#define LINES_A_GROUP 6

static void add_line(struct draft *d, const struct ts_plan_group *g, double count, int sex,
	bool living, const struct ts_stock_line *like)
{
	if (!(count > 0))
		return;
	d->species[d->plan.stock_count] = g->group.species;
	d->stock[d->plan.stock_count++] = (struct ts_stock_line){.species = like->species,
		.count = count,
		.sex = sex,
		.since = living ? like->since : NULL,
		.origin = g->wild ? TS_ORIGIN_WILD : TS_ORIGIN_UNKNOWN,
		.size_cm = g->group.size_cm};
}

/* The line of the plan that names the species, one in the tank before one that is planned. */
static const struct ts_stock_line *line_of(const struct work *w, const struct ts_plan_group *g)
{
	static const struct ts_stock_line none = {.species = "", .since = ""};
	const struct ts_stock_line *found = NULL;

	for (size_t i = 0; i < w->plan->stock_count; i++) {
		if (w->check->of_line[i] == g->group.species &&
			(!found || (!found->since && w->plan->stock[i].since)))
			found = &w->plan->stock[i];
	}
	return found ? found : &none;
}

static bool open_draft(const struct work *w, struct ts_arena *arena, struct draft *d)
{
	size_t groups = w->check->group_count, most = groups * LINES_A_GROUP + 1;

	*d = (struct draft){.plan = *w->plan};
	d->stock = ts_arena_array(arena, most, sizeof *d->stock);
	d->species = ts_arena_array(arena, most, sizeof *d->species);
	if (!d->stock || !d->species)
		return false;
	d->plan.stock = d->stock;
	d->plan.stock_count = 0;
	for (size_t i = 0; i < groups; i++) {
		const struct ts_plan_group *g = &w->check->groups[i];
		const struct ts_stock_line *like = line_of(w, g);
		double planned = g->planned;
		double all[] = {g->group.males, g->group.females, g->group.either};
		static const int sexes[] = {TS_SEX_MALE, TS_SEX_FEMALE, TS_SEX_UNKNOWN};

		for (size_t k = 0; k < 3; k++) {
			double bought = fmin(planned, all[k]);

			planned -= bought;
			add_line(d, g, all[k] - bought, sexes[k], true, like);
			add_line(d, g, bought, sexes[k], false, like);
		}
	}
	return true;
}

static void drop(struct draft *d, const struct ts_species *species)
{
	size_t kept = 0;

	for (size_t i = 0; i < d->plan.stock_count; i++) {
		if (d->species[i] == species)
			continue;
		d->stock[kept] = d->stock[i];
		d->species[kept++] = d->species[i];
	}
	d->plan.stock_count = kept;
}

static const struct ts_plan_group *group_of(
	const struct ts_check *c, const struct ts_species *species)
{
	for (size_t i = 0; species && i < c->group_count; i++) {
		if (c->groups[i].group.species == species)
			return &c->groups[i];
	}
	return NULL;
}

static const struct ts_ruling *find(const struct ts_check *c, const struct ts_ruling *like)
{
	for (size_t i = 0; i < c->count; i++) {
		const struct ts_ruling *r = &c->rulings[i];

		if (r->rule == like->rule && r->subject == like->subject && r->other == like->other)
			return r;
	}
	return NULL;
}

/* Does a check after the change have a fault that was not there, or was lighter? */
static bool worse(const struct ts_check *before, const struct ts_check *after)
{
	for (size_t i = 0; i < after->count; i++) {
		const struct ts_ruling *r = &after->rulings[i], *old;

		if (r->severity < TS_CONCERN)
			break;
		if (r->rule == TS_RULE_UNTESTED)
			continue;
		old = find(before, r);
		if (!old || old->severity < r->severity)
			return true;
	}
	return false;
}

static bool gone(const struct ts_check *after, const struct ts_ruling *fault)
{
	const struct ts_ruling *left = find(after, fault);

	if (fault->rule == TS_RULE_WATER || fault->rule == TS_RULE_WATER_UNSURE) {
		const struct ts_plan_group *g = group_of(after, fault->subject);

		return !g || g->match.verdict < TS_UNSURE;
	}
	return !left || left->severity < TS_CONCERN;
}

/* The water of the draft is what its remedy made it. */
static void pour(struct draft *d)
{
	if (!d->water_mended)
		return;
	d->plan.water.readings = &d->mended;
	d->plan.water.reading_count = 1;
	d->plan.tank.readings = NULL;
	d->plan.tank.reading_count = d->plan.change_water.reading_count = 0;
}

/* Judges the draft: is the fault gone, and no other there? */
static bool try_draft(
	const struct work *w, struct draft *d, const struct ts_ruling *fault, bool *ret_clears)
{
	struct ts_check after;
	struct ts_arena scratch;
	bool mends = false;

	pour(d);
	ts_arena_open(&scratch, &w->arena->allocator);
	if (ts_check_faults(&d->plan, d->species, w->today, w->practice, &scratch, &after) ==
		TS_OK) {
		mends = gone(&after, fault) && !worse(w->check, &after);
		*ret_clears = mends && after.verdict != TS_PLAN_UNSOUND;
	} else {
		w->arena->failed = true;
	}
	ts_arena_drop(&scratch);
	return mends;
}

/* One rung: makes its change in the draft and says what it is; false: it has none (left). */
typedef bool rung(const struct work *w, const struct ts_ruling *fault, unsigned attempt,
	struct draft *d, struct ts_remedy *ret);

static bool rung_routine(const struct work *w, const struct ts_ruling *fault, unsigned attempt,
	struct draft *d, struct ts_remedy *ret)
{
	static const struct ts_every routines[] = {
		{20, 7}, {30, 7}, {40, 7}, {50, 7}, {30, 3.5}, {40, 3.5}, {50, 3.5}};
	const struct ts_load *l = &w->check->load;

	if (fault->rule != TS_RULE_NITRATE_LOAD && fault->rule != TS_RULE_BUFFER)
		return false;
	while (attempt < sizeof routines / sizeof *routines && l->change_known &&
		routines[attempt].amount / routines[attempt].days <=
			l->change_percent / l->change_days)
		attempt++; /* only more than is changed now */
	if (attempt >= sizeof routines / sizeof *routines)
		return false;
	d->plan.tank.water_change = routines[attempt];
	ret->percent = routines[attempt].amount;
	ret->days = routines[attempt].days;
	return true;
}

/* What the water is to hold for all: inside what they share, a degree from its end. */
static double target(const struct work *w, enum ts_parameter p)
{
	const struct ts_range *r = &w->check->shared.at[p];
	const struct ts_span *s = &w->check->profile.at[p];
	double inside = fmin(1, (r->high - r->low) / 2);

	if (!s->given || isnan(r->low) || r->low > r->high)
		return s->given ? s->value : (double)NAN;
	if (s->value < r->low)
		return ceil(r->low + inside);
	return s->value > r->high ? floor(r->high - inside) : s->value;
}

static void mend_water(const struct work *w, struct draft *d, double gh_dh, double kh_dh)
{
	const struct ts_measure none = {.kind = TS_MEASURE_NONE};

	d->water_mended = true;
	d->mended = (struct ts_reading){.gh_dh = none, .kh_dh = none};
	d->mended.gh_dh = (struct ts_measure){gh_dh, gh_dh, gh_dh, TS_MEASURE_VALUE};
	d->mended.kh_dh = (struct ts_measure){kh_dh, kh_dh, kh_dh, TS_MEASURE_VALUE};
	d->mended.method = TS_METHOD_LABORATORY;
	if (w->check->profile.at[TS_TEMPERATURE].given &&
		d->plan.tank.temp_c.kind == TS_MEASURE_NONE) {
		double t = w->check->profile.at[TS_TEMPERATURE].value;

		d->plan.tank.temp_c = (struct ts_measure){t, t, t, TS_MEASURE_VALUE};
	}
}

/* Grams of each salt into 100 L; calcium and magnesium half and half by mass of the salts. */
static void weigh(double gh_more, double kh_more, struct ts_remedy *ret)
{
	const struct ts_substance *soda = ts_chem_substance("NaHCO3");
	const struct ts_substance *calcium = ts_chem_substance("CaCl2.2H2O");
	const struct ts_substance *magnesium = ts_chem_substance("MgSO4.7H2O");
	double gh = ts_chem_mmol_l_from_dh(fmax(gh_more, 0));
	double each = gh / (1 / calcium->molar_mass + 1 / magnesium->molar_mass);

	ret->nahco3_g =
		ts_chem_substance_grams(soda, ts_chem_meq_l_from_dkh(fmax(kh_more, 0)), 100);
	ret->cacl2_g = ret->mgso4_g = each * 100 / 1000;
}

static bool of_minerals(const struct ts_ruling *fault)
{
	return (fault->rule == TS_RULE_WATER || fault->rule == TS_RULE_WATER_UNSURE ||
		       fault->rule == TS_RULE_BUFFER) &&
	       ts_ruling_topic(fault) != TS_TOPIC_TEMPERATURE;
}

/* Ammonia in the water, or nobody knows of a tank that was read: what raises the pH over it kills.
 */
static bool ammonia_there(const struct work *w)
{
	const struct ts_waters *waters = w->check->waters;

	return w->check->profile.poisons.found & TS_POISON_AMMONIA ||
	       (waters->log.read && isnan(w->check->profile.poisons.tan_mg_l));
}

static bool rung_minerals(const struct work *w, const struct ts_ruling *fault, unsigned attempt,
	struct draft *d, struct ts_remedy *ret)
{
	const struct ts_span *gh = &w->check->profile.at[TS_GH];
	const struct ts_span *kh = &w->check->profile.at[TS_KH];

	if (attempt || !of_minerals(fault) || !gh->given || !kh->given || ammonia_there(w))
		return false;
	ret->gh_dh = target(w, TS_GH);
	ret->kh_dh = target(w, TS_KH);
	if (fault->rule == TS_RULE_BUFFER)
		ret->kh_dh = fmax(ret->kh_dh, w->practice->value[TS_P_KH_WARN]);
	/* The sodium of the one brings no calcium: GH may stay, it may not fall. */
	if (ret->gh_dh < gh->value || ret->kh_dh < kh->value ||
		!(ret->gh_dh > gh->value || ret->kh_dh > kh->value))
		return false;
	weigh(ret->gh_dh - gh->value, ret->kh_dh - kh->value, ret);
	mend_water(w, d, ret->gh_dh, ret->kh_dh);
	return true;
}

static bool rung_dilute(const struct work *w, const struct ts_ruling *fault, unsigned attempt,
	struct draft *d, struct ts_remedy *ret)
{
	const struct ts_span *gh = &w->check->profile.at[TS_GH];
	const struct ts_span *kh = &w->check->profile.at[TS_KH];
	double share;

	if (attempt || !of_minerals(fault) || !gh->given || !kh->given || !(gh->value > 0))
		return false;
	share = fmin(
		target(w, TS_GH) / gh->value, kh->value > 0 ? target(w, TS_KH) / kh->value : 1);
	share = floor(share * 20) / 20; /* in steps of 5 % */
	if (!(share > 0 && share < 1))
		return false;
	ret->percent = 100 * (1 - share);
	ret->gh_dh = gh->value * share;
	ret->kh_dh = kh->value * share;
	mend_water(w, d, ret->gh_dh, ret->kh_dh);
	return true;
}

/* The tank there is: a lid, another current. A larger one is another tank, and the last of these.
 */
static bool rung_tank(const struct work *w, const struct ts_ruling *fault, unsigned attempt,
	struct draft *d, struct ts_remedy *ret)
{
	struct ts_tank *t = &d->plan.tank;
	const struct ts_smallest_tank *s = &w->check->smallest;

	if (attempt)
		return false;
	switch (fault->rule) {
	case TS_RULE_COVER:
		t->cover = TS_COVER_YES;
		return true;
	case TS_RULE_FLOW:
		t->flow = fault->subject->needs.flow;
		return true;
	case TS_RULE_LIGHT:
		t->light = fault->subject->needs.light;
		return true;
	case TS_RULE_EATS_PLANTS:
		t->plants = TS_PLANTS_NONE;
		return true;
	default:
		break;
	}
	if (!(s->length_cm > 0) ||
		(ts_ruling_topic(fault) != TS_TOPIC_ROOM && fault->rule != TS_RULE_CHASED &&
			fault->rule != TS_RULE_ATTACKED && fault->rule != TS_RULE_RIVALS))
		return false;
	t->volume_l = 0;
	t->length_cm = ret->length_cm = fmax(s->length_cm, t->length_cm);
	t->width_cm = ret->width_cm = fmax(s->width_cm, t->width_cm);
	t->height_cm = ret->height_cm = fmax(s->height_cm, t->height_cm);
	return true;
}

/* Gives a species another number, its sexes as the record wants them. */
static void renumber(const struct work *w, const struct ts_plan_group *g,
	const struct ts_level *level, struct draft *d, struct ts_remedy *ret)
{
	struct ts_plan_group as_wanted = *g;
	bool living = !g->planned;

	as_wanted.group = level->group;
	as_wanted.group.size_cm = g->group.size_cm;
	ret->species = g->group.species;
	ret->from = ts_group_count(&g->group);
	ret->to = ts_group_count(&level->group);
	ret->males = level->group.males;
	ret->females = level->group.females;
	if (g->group.males && !g->group.females && !g->group.either) {
		as_wanted.group.males = ret->to;
		as_wanted.group.females = as_wanted.group.either = 0;
	}
	drop(d, g->group.species);
	add_line(d, &as_wanted, as_wanted.group.males, TS_SEX_MALE, living, line_of(w, g));
	add_line(d, &as_wanted, as_wanted.group.females, TS_SEX_FEMALE, living, line_of(w, g));
	add_line(d, &as_wanted, as_wanted.group.either, TS_SEX_UNKNOWN, living, line_of(w, g));
}

/* Too many for the tank: fewer of those of whom there are more than they want, the last first. */
static bool fewer(const struct work *w, unsigned attempt, struct draft *d, struct ts_remedy *ret)
{
	const struct ts_check *c = w->check;
	struct ts_level levels[TS_LEVELS_MOST];

	for (size_t i = c->group_count; i-- > 0;) {
		const struct ts_plan_group *g = &c->groups[i];

		for (size_t l = ts_levels(g->group.species, levels); l-- > 0;) {
			if (ts_group_count(&levels[l].group) >= ts_group_count(&g->group))
				continue;
			if (attempt--)
				continue;
			renumber(w, g, &levels[l], d, ret);
			return true;
		}
	}
	return false;
}

/* More where that is what is missing; fewer; the sexes as the record wants them. */
static bool rung_number(const struct work *w, const struct ts_ruling *fault, unsigned attempt,
	struct draft *d, struct ts_remedy *ret)
{
	bool by_other = fault->rule == TS_RULE_FIN_NIPPER || fault->rule == TS_RULE_CHASED;
	const struct ts_plan_group *g =
		group_of(w->check, by_other ? fault->other : fault->subject);
	struct ts_level levels[TS_LEVELS_MOST];

	if (!fault->subject && ts_ruling_topic(fault) == TS_TOPIC_WASTE)
		return fewer(w, attempt, d, ret);
	if (!g || (fault->other && !by_other) || fault->match ||
		attempt >= ts_levels(g->group.species, levels))
		return false;
	renumber(w, g, &levels[attempt], d, ret);
	/* Nobody is bought now on top of sick animals. */
	return ret->to <= ret->from || !w->sick;
}

/* Rules in which the other is the cause; in the rest neither is more to blame. */
static bool caused(enum ts_rule_id rule)
{
	switch (rule) {
	case TS_RULE_ATTACKED:
	case TS_RULE_CHASED:
	case TS_RULE_EATEN:
	case TS_RULE_ELECTRIC:
	case TS_RULE_FIN_NIPPER:
	case TS_RULE_NIGHT_HUNTER:
	case TS_RULE_OUTCOMPETED:
	case TS_RULE_SHRIMPS_EATEN:
	case TS_RULE_SNAILS_EATEN:
		return true;
	default:
		return false;
	}
}

static size_t index_of(const struct ts_check *c, const struct ts_species *species)
{
	const struct ts_plan_group *g = group_of(c, species);

	return g ? (size_t)(g - c->groups) : 0;
}

static size_t conflicts_of(const struct ts_check *c, const struct ts_species *species)
{
	size_t count = 0;

	for (size_t i = 0; i < c->count && c->rulings[i].severity >= TS_CONFLICT; i++)
		count += c->rulings[i].subject == species || c->rulings[i].other == species;
	return count;
}

/* Who goes first of the two; `attempt` 1 is the other. A whole plan's fault: the last line first.
 */
static const struct ts_plan_group *who_goes(
	const struct work *w, const struct ts_ruling *fault, unsigned attempt)
{
	const struct ts_check *c = w->check;
	const struct ts_plan_group *a = group_of(c, fault->subject);
	const struct ts_plan_group *b = group_of(c, fault->other);
	bool b_first;

	if (!a)
		return attempt < c->group_count ? &c->groups[c->group_count - 1 - attempt] : NULL;
	if (!b)
		return attempt ? NULL : a;
	if (attempt > 1)
		return NULL;
	if (!a->planned != !b->planned)
		b_first = b->planned > 0;
	else if (caused(fault->rule))
		b_first = true;
	else if (conflicts_of(c, fault->subject) != conflicts_of(c, fault->other))
		b_first = conflicts_of(c, fault->other) > conflicts_of(c, fault->subject);
	else
		b_first = index_of(c, fault->other) > index_of(c, fault->subject);
	return b_first == !attempt ? b : a;
}

static bool take_out(const struct work *w, const struct ts_ruling *fault, unsigned attempt,
	bool planned, struct draft *d, struct ts_remedy *ret)
{
	const struct ts_plan_group *g = who_goes(w, fault, attempt);

	if (!g)
		return false;
	ret->species = g->group.species;
	ret->from = ts_group_count(&g->group);
	if (planned != (g->planned > 0)) {
		ret->from = 0; /* not this rung's: the next attempt */
		return true;
	}
	drop(d, g->group.species);
	return true;
}

static bool rung_leave_out(const struct work *w, const struct ts_ruling *fault, unsigned attempt,
	struct draft *d, struct ts_remedy *ret)
{
	return take_out(w, fault, attempt, true, d, ret);
}

static bool rung_other_home(const struct work *w, const struct ts_ruling *fault, unsigned attempt,
	struct draft *d, struct ts_remedy *ret)
{
	return take_out(w, fault, attempt, false, d, ret);
}

static const struct {
	enum ts_remedy_kind kind;
	rung *make;
} ladder[] = {
	{TS_REMEDY_ROUTINE, rung_routine},
	{TS_REMEDY_MINERALS, rung_minerals},
	{TS_REMEDY_DILUTE, rung_dilute},
	{TS_REMEDY_TANK, rung_tank},
	{TS_REMEDY_NUMBER, rung_number},
	{TS_REMEDY_LEAVE_OUT, rung_leave_out},
	{TS_REMEDY_OTHER_HOME, rung_other_home},
};

/* Faults that are mended by a deed of their own: nothing of the plan is tried. */
static enum ts_remedy_kind of_its_own(const struct work *w, const struct ts_ruling *r)
{
	switch (r->rule) {
	case TS_RULE_AMMONIA:
	case TS_RULE_NITRITE:
		return w->check->living_groups ? TS_REMEDY_MAKE_SAFE : TS_REMEDY_WAIT;
	case TS_RULE_CHLORINE:
	case TS_RULE_OXYGEN:
	case TS_RULE_NITRATE:
		return TS_REMEDY_MAKE_SAFE;
	case TS_RULE_DISTRESS:
		return TS_REMEDY_MEASURE;
	case TS_RULE_FILTER:
	case TS_RULE_NEWCOMERS:
	case TS_RULE_OLD_TANK:
	case TS_RULE_YOUNG:
		return TS_REMEDY_WAIT;
	case TS_RULE_WATER_UNSURE:
		return TS_REMEDY_MEASURE;
	default:
		return r->severity == TS_QUESTION ? TS_REMEDY_MEASURE : TS_REMEDY_NONE;
	}
}

/* Heat, a poison, waste and a small buffer are mended where they live: nobody moves for them. */
static bool passes_by(const struct work *w, const struct ts_ruling *fault)
{
	switch (fault->rule) {
	case TS_RULE_NITRATE:
	case TS_RULE_NITRATE_LOAD:
	case TS_RULE_BUFFER:
		return w->check->living_groups > 0;
	case TS_RULE_WATER:
		return fault->match &&
		       (!isnan(fault->match->copper_borne_mg_l) || fault->word == TS_TEMPERATURE);
	default:
		return false;
	}
}

static void climb(const struct work *w, struct ts_ruling *fault)
{
	/* Who bears the water and lives well in it is not sent away for it. */
	bool stays = (fault->match && fault->severity < TS_CONFLICT) || passes_by(w, fault);

	for (size_t k = 0; k < sizeof ladder / sizeof *ladder && !w->arena->failed; k++) {
		for (unsigned attempt = 0; !stays || ladder[k].kind < TS_REMEDY_OTHER_HOME;
			attempt++) {
			struct ts_remedy remedy = {.kind = ladder[k].kind, .attempt = attempt};
			struct ts_arena scratch;
			struct draft d;
			bool more, mends = false;

			ts_arena_open(&scratch, &w->arena->allocator);
			more = open_draft(w, &scratch, &d) &&
			       ladder[k].make(w, fault, attempt, &d, &remedy);
			if (more && !(ladder[k].kind >= TS_REMEDY_LEAVE_OUT && !remedy.from))
				mends = try_draft(w, &d, fault, &remedy.clears);
			w->arena->failed |= scratch.failed;
			ts_arena_drop(&scratch);
			if (mends) {
				remedy.mends = true;
				fault->remedy = remedy;
				return;
			}
			if (!more || w->arena->failed)
				break;
		}
	}
}

/* Degrees that are a spoon of salt; more make another water, for which other fish are the cheaper
 * way. Common practice, no source. */
#define MINERALS_A_SPOON 5

/* A condition that is met before anybody is bought: what it would harm is not there yet. */
static bool eases(const struct work *w, const struct ts_ruling *r)
{
	const struct ts_span *gh = &w->check->profile.at[TS_GH];
	const struct ts_span *kh = &w->check->profile.at[TS_KH];
	const struct ts_plan_group *g = group_of(w->check, r->subject);
	bool planned = g ? g->planned == ts_group_count(&g->group) : !w->check->living_groups;

	if (!planned || !r->remedy.clears)
		return false;
	return r->remedy.kind == TS_REMEDY_ROUTINE ||
	       (r->remedy.kind == TS_REMEDY_MINERALS &&
		       r->remedy.gh_dh - gh->value <= MINERALS_A_SPOON &&
		       r->remedy.kh_dh - kh->value <= MINERALS_A_SPOON);
}

/* Makes the change of a remedy for good. */
static bool apply(const struct work *w, const struct ts_ruling *fault, struct draft *d)
{
	struct ts_remedy same = {0};

	for (size_t k = 0; k < sizeof ladder / sizeof *ladder; k++) {
		if (ladder[k].kind != fault->remedy.kind)
			continue;
		if (!open_draft(w, w->arena, d) ||
			!ladder[k].make(w, fault, fault->remedy.attempt, d, &same))
			return false;
		pour(d);
		return true;
	}
	return false;
}

/* The first conflict that some remedy mends; NULL: none. */
static struct ts_ruling *first_mended(const struct work *w)
{
	struct ts_check *c = w->check;

	for (size_t i = 0; i < c->count && c->rulings[i].severity >= TS_CONFLICT; i++) {
		struct ts_ruling *r = &c->rulings[i];

		if (of_its_own(w, r) != TS_REMEDY_NONE)
			continue;
		if (r->remedy.kind == TS_REMEDY_NONE)
			climb(w, r);
		if (r->remedy.mends)
			return r;
	}
	return NULL;
}

/* Nobody is numbered who goes in the end. */
static size_t pruned(struct ts_ruling *steps, size_t count)
{
	size_t kept = 0;

	for (size_t i = 0; i < count; i++) {
		bool goes = false;

		for (size_t k = i + 1; k < count; k++)
			goes |= steps[i].remedy.kind == TS_REMEDY_NUMBER &&
				steps[k].remedy.kind > TS_REMEDY_NUMBER &&
				steps[k].remedy.species == steps[i].remedy.species;
		if (!goes)
			steps[kept++] = steps[i];
	}
	return kept;
}

/* Remedy after remedy, the plan judged again after each, until no conflict is left. */
static void repair(const struct work *from, struct ts_check *check)
{
	size_t most = check->group_count + 4;
	struct ts_ruling *steps = ts_arena_array(from->arena, most, sizeof *steps);
	struct draft *drafts = ts_arena_array(from->arena, most, sizeof *drafts);
	struct ts_check now = *check;
	struct work w = *from;
	struct ts_ruling *fault;

	w.check = &now;
	check->repair = steps;
	while (steps && drafts && check->repair_count < most && (fault = first_mended(&w))) {
		struct draft *d = &drafts[check->repair_count];

		steps[check->repair_count] = *fault;
		if (!apply(&w, fault, d) || ts_check_faults(&d->plan, d->species, w.today,
						    w.practice, w.arena, &now) != TS_OK)
			return;
		check->repair_count++;
		w.plan = &d->plan;
		ts_check_shared_water(&now, &now.shared);
		ts_check_smallest_tank(w.plan, w.practice, &now, &now.smallest);
	}
	check->repair_mends = now.verdict != TS_PLAN_UNSOUND;
	check->repair_count = pruned(steps, check->repair_count);
}

void ts_check_remedies(const struct ts_plan *plan, long today, const struct ts_practice *practice,
	struct ts_arena *arena, struct ts_check *check)
{
	struct work w = {.practice = practice,
		.plan = plan,
		.arena = arena,
		.check = check,
		.today = today,
		.sick = plan->sign_count || plan->deaths.value > 0 ||
			check->profile.poisons.found &
				(unsigned)(TS_POISON_AMMONIA | TS_POISON_NITRITE)};

	for (size_t i = 0; i < check->count && !arena->failed; i++) {
		struct ts_ruling *r = &check->rulings[i];

		r->remedy.kind = of_its_own(&w, r);
		if (r->severity < TS_CONCERN || r->remedy.kind != TS_REMEDY_NONE)
			continue;
		if (check->group_count <= TS_REMEDIES_TRIED)
			climb(&w, r);
		else if (r->subject)
			r->remedy = (struct ts_remedy){.kind = TS_REMEDY_LEAVE_OUT};
		if (r->severity == TS_CONFLICT && eases(&w, r))
			r->severity = TS_CONCERN;
	}
	ts_check_sort(check);
	check->repair_mends = check->verdict != TS_PLAN_UNSOUND;
	if (!check->repair_mends && check->group_count <= TS_REMEDIES_TRIED)
		repair(&w, check);
}
