/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The ladder of remedies, from the cheapest to the dearest, as rows. Each rung makes a change of
 * the plan. Between two animals the one that causes the fault goes before the one that suffers, one
 * that is planned before one that lives there, the last before the first.
 */
#include "stock/mending.h"

#include "stock/levels.h"
#include "stock/rules.h"
#include "water/mend.h"

static void mend_water(
	const struct ts_mending *w, struct ts_draft *d, const struct ts_remedy *remedy);

/* So much salt above what they like is thinned slowly: common practice, no source. */
#define SALT_THINNED_G_L 5
#define SALT_PERCENT 15
#define SALT_DAYS 2

/* Those that live in water a little too salty stay: plain water takes the salt out slowly. */
static bool thin_salt(const struct ts_mending *w, const struct ts_ruling *fault, struct ts_draft *d,
	struct ts_remedy *ret)
{
	const struct ts_plan_group *g = ts_check_group_of(w->check, fault->subject);
	const struct ts_span *gh = &w->check->profile.at[TS_GH];
	const struct ts_span *kh = &w->check->profile.at[TS_KH];

	if (!g || g->planned ||
		!(fault->match->at[TS_SALINITY].uncomfortable_by <= SALT_THINNED_G_L))
		return false;
	mend_water(w, d,
		&(struct ts_remedy){.gh_dh = gh->given ? gh->value : (double)NAN,
			.kh_dh = kh->given ? kh->value : (double)NAN});
	ret->percent = SALT_PERCENT;
	ret->days = SALT_DAYS;
	return true;
}

static bool rung_routine(const struct ts_mending *w, const struct ts_ruling *fault,
	unsigned attempt, struct ts_draft *d, struct ts_remedy *ret)
{
	static const struct ts_every routines[] = {
		{20, 7}, {30, 7}, {40, 7}, {50, 7}, {30, 3.5}, {40, 3.5}, {50, 3.5}};
	const struct ts_load *l = &w->check->load;

	if (ts_ruling_too_salty(fault))
		return !attempt && thin_salt(w, fault, d, ret);
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
	ret->net_l = l->net_l;
	return true;
}

/* Whose wishes the water is mended for: who lives there goes before who is planned. */
static const struct ts_shared_water *shared_of(
	const struct ts_mending *w, const struct ts_ruling *fault)
{
	const struct ts_check *c = w->check;
	const struct ts_plan_group *g = ts_check_group_of(c, fault->subject);

	/* For one that is planned the water is made for all. */
	if (g && g->way != TS_WAY_NONE && g->way != TS_WAY_KEEP)
		return &c->shared_all;
	return c->living_groups ? &c->shared_there : &c->shared;
}

/* What the water is to hold: inside what they share, a degree from its end. */
static double target(const struct ts_mending *w, const struct ts_ruling *fault, enum ts_parameter p)
{
	const struct ts_shared_water *shared = shared_of(w, fault);
	const struct ts_range *r = &shared->at[p];
	const struct ts_span *s = &w->check->profile.at[p];
	double inside = fmin(1, (r->high - r->low) / 2);

	if (!s->given || isnan(r->low) || r->low > r->high)
		return s->given ? s->value : (double)NAN;
	if (s->value < r->low)
		return ceil(r->low + inside);
	return s->value > r->high ? floor(r->high - inside) : s->value;
}

static struct ts_measure exactly(double value)
{
	if (isnan(value))
		return (struct ts_measure){.kind = TS_MEASURE_NONE};
	return (struct ts_measure){value, value, value, TS_MEASURE_VALUE};
}

static void mend_water(
	const struct ts_mending *w, struct ts_draft *d, const struct ts_remedy *remedy)
{
	const struct ts_span *temp = &w->check->profile.at[TS_TEMPERATURE];

	d->water_mended = true;
	d->mended = (struct ts_reading){.gh_dh = exactly(remedy->gh_dh),
		.kh_dh = exactly(remedy->kh_dh),
		.method = TS_METHOD_LABORATORY};
	if (temp->given && d->plan.tank.temp_c.kind == TS_MEASURE_NONE)
		d->plan.tank.temp_c = exactly(temp->value);
}

static bool of_minerals(const struct ts_ruling *fault)
{
	if (fault->match && !isnan(fault->match->copper_borne_mg_l))
		return false;
	return (fault->rule == TS_RULE_WATER || fault->rule == TS_RULE_WATER_UNSURE ||
		       fault->rule == TS_RULE_BUFFER) &&
	       ts_ruling_topic(fault) != TS_TOPIC_TEMPERATURE;
}

/* Animals meet another water by so many degrees a week: common practice, no source. */
#define DEGREES_A_WEEK 2
#define STEP_LEAST 10
#define STEP_MOST 25

/* At which pace a tank with animals comes to the new water: weekly changes of one size. */
static void pace(const struct ts_mending *w, struct ts_remedy *ret)
{
	const struct ts_span *gh = &w->check->profile.at[TS_GH];
	const struct ts_span *kh = &w->check->profile.at[TS_KH];
	double apart = 0, share;

	if (!w->check->living_groups)
		return;
	if (gh->given && !isnan(ret->gh_dh))
		apart = fabs(ret->gh_dh - gh->value);
	if (kh->given && !isnan(ret->kh_dh))
		apart = fmax(apart, fabs(ret->kh_dh - kh->value));
	share = floor(20 * DEGREES_A_WEEK / fmax(apart, 1)) * 5; /* in steps of 5 % */
	ret->step_percent = fmin(fmax(share, STEP_LEAST), STEP_MOST);
	ret->net_l = w->check->load.net_l;
	/* Within a degree of it. */
	ret->step_count =
		apart > 1 ? (unsigned)ceil(log(1 / apart) / log1p(-ret->step_percent / 100)) : 1;
}

/* Over ammonia what raises the pH kills: where it was read nothing is mended, else it is read
 * first. */
static bool over_ammonia(const struct ts_mending *w)
{
	return w->check->profile.poisons.found & TS_POISON_AMMONIA;
}

static bool ammonia_unread(const struct ts_mending *w)
{
	return (w->check->waters->log.read || w->check->living_groups) &&
	       isnan(w->check->profile.poisons.tan_mg_l);
}

/* NAN stays: bicarbonate is exact without GH, and hardness salts without KH. */
static double more_of(double target_dh, const struct ts_span *now)
{
	return now->given ? target_dh - now->value : 0;
}

/* What brings the water from what it holds to what it is to hold; NAN: not known. */
static void weigh(struct ts_remedy *ret, double gh_dh, double kh_dh)
{
	struct ts_mend mend;

	(void)ts_mend_find(&(struct ts_mend_wish){isnan(ret->gh_dh) ? (double)NAN : gh_dh,
				   isnan(ret->kh_dh) ? (double)NAN : kh_dh, ret->gh_dh, ret->kh_dh,
				   (double)NAN},
		&mend);
	ret->nahco3_g = mend.bicarbonate_g;
	ret->cacl2_g = mend.calcium_chloride_g;
	ret->mgso4_g = mend.epsom_g;
}

static bool rung_minerals(const struct ts_mending *w, const struct ts_ruling *fault,
	unsigned attempt, struct ts_draft *d, struct ts_remedy *ret)
{
	const struct ts_span *gh = &w->check->profile.at[TS_GH];
	const struct ts_span *kh = &w->check->profile.at[TS_KH];
	double gh_more, kh_more;

	if (attempt || !of_minerals(fault) || over_ammonia(w))
		return false;
	ret->gh_dh = target(w, fault, TS_GH);
	ret->kh_dh = target(w, fault, TS_KH);
	if (fault->rule == TS_RULE_BUFFER && kh->given)
		ret->kh_dh = fmax(ret->kh_dh, w->practice->value[TS_P_KH_WARN]);
	gh_more = more_of(ret->gh_dh, gh);
	kh_more = more_of(ret->kh_dh, kh);
	/* The sodium of the one brings no calcium: GH may stay, it may not fall. */
	if (gh_more < 0 || kh_more < 0 || !(gh_more > 0 || kh_more > 0))
		return false;
	weigh(ret, gh->value, kh->value);
	pace(w, ret);
	ret->test_ammonia_first = kh_more > 0 && ammonia_unread(w);
	mend_water(w, d, ret);
	return true;
}

/* The share that is left of a value, to come to its target; 1: nothing is to be taken away. */
static double share_left(
	const struct ts_mending *w, const struct ts_ruling *fault, enum ts_parameter p)
{
	const struct ts_span *now = &w->check->profile.at[p];

	return now->given && now->value > 0 ? target(w, fault, p) / now->value : 1;
}

static double put_back(const struct ts_mending *w, const struct ts_ruling *fault,
	enum ts_parameter p, double thinned)
{
	const struct ts_range *r = &shared_of(w, fault)->at[p];

	return thinned < r->low ? fmin(r->low + 1, (r->low + r->high) / 2) : thinned;
}

static bool rung_dilute(const struct ts_mending *w, const struct ts_ruling *fault, unsigned attempt,
	struct ts_draft *d, struct ts_remedy *ret)
{
	const struct ts_span *gh = &w->check->profile.at[TS_GH];
	const struct ts_span *kh = &w->check->profile.at[TS_KH];
	double share;

	/* "More than 16" tells no recipe. */
	if (attempt || !of_minerals(fault) || (gh->given && !isfinite(gh->high)) ||
		(kh->given && !isfinite(kh->high)))
		return false;
	share = fmin(share_left(w, fault, TS_GH), share_left(w, fault, TS_KH));
	share = floor(share * 20) / 20; /* in steps of 5 % */
	if (!(share >= 0 && share < 1))
		return false;
	ret->percent = 100 * (1 - share);
	/* What the harder of the two takes too much of the other is put back. */
	ret->gh_dh = put_back(w, fault, TS_GH, gh->given ? gh->value * share : (double)NAN);
	ret->kh_dh = put_back(w, fault, TS_KH, kh->given ? kh->value * share : (double)NAN);
	weigh(ret, gh->value * share, kh->value * share);
	pace(w, ret);
	mend_water(w, d, ret);
	return true;
}

/* The heater, or the lack of one: the nearest that all like. */
static bool rung_warmth(const struct ts_mending *w, const struct ts_ruling *fault, unsigned attempt,
	struct ts_draft *d, struct ts_remedy *ret)
{
	const struct ts_shared_water *shared = &w->check->shared;
	const struct ts_range *r = &shared->at[TS_TEMPERATURE];
	const struct ts_span *now = &w->check->profile.at[TS_TEMPERATURE];

	if (attempt || ts_ruling_topic(fault) != TS_TOPIC_TEMPERATURE || !fault->match ||
		!now->given || !shared->comfortable[TS_TEMPERATURE] || r->low > r->high)
		return false;
	ret->temp_c = fmin(fmax(now->value, r->low), r->high);
	d->plan.tank.temp_c = exactly(ret->temp_c);
	return ret->temp_c != now->value;
}

/* The tank there is: a lid, another current. A larger one is another tank, and the last of these.
 */
static bool rung_tank(const struct ts_mending *w, const struct ts_ruling *fault, unsigned attempt,
	struct ts_draft *d, struct ts_remedy *ret)
{
	struct ts_tank *t = &d->plan.tank;
	const struct ts_smallest_tank *s = &w->check->smallest;

	if (attempt || fault->rule == TS_RULE_CROWDED)
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
	t->length_cm = ret->length_cm = s->length_cm;
	t->width_cm = ret->width_cm = s->width_cm;
	t->height_cm = ret->height_cm = s->height_cm;
	return true;
}

/* Gives a species another number, its sexes as the record wants them. */
static void renumber(const struct ts_mending *w, const struct ts_plan_group *g,
	const struct ts_level *level, struct ts_draft *d, struct ts_remedy *ret)
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
	ts_draft_drop(d, g->group.species);
	ts_draft_add(
		d, &as_wanted, as_wanted.group.males, TS_SEX_MALE, living, ts_draft_line_of(w, g));
	ts_draft_add(d, &as_wanted, as_wanted.group.females, TS_SEX_FEMALE, living,
		ts_draft_line_of(w, g));
	ts_draft_add(d, &as_wanted, as_wanted.group.either, TS_SEX_UNKNOWN, living,
		ts_draft_line_of(w, g));
}

/* Too many for the tank: fewer of those of whom there are more than they want, the last first. */
static bool fewer(
	const struct ts_mending *w, unsigned attempt, struct ts_draft *d, struct ts_remedy *ret)
{
	const struct ts_check *c = w->check;
	struct ts_level levels[TS_LEVELS_MOST];

	for (size_t i = c->group_count; i-- > 0;) {
		const struct ts_plan_group *g = &c->groups[i];

		for (size_t l = ts_levels(g->group.species, levels); l-- > 0;) {
			if (levels[l].crowd ||
				ts_group_count(&levels[l].group) >= ts_group_count(&g->group))
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
static bool rung_number(const struct ts_mending *w, const struct ts_ruling *fault, unsigned attempt,
	struct ts_draft *d, struct ts_remedy *ret)
{
	bool by_other = fault->rule == TS_RULE_FIN_NIPPER || fault->rule == TS_RULE_CHASED;
	const struct ts_plan_group *g =
		ts_check_group_of(w->check, by_other ? fault->other : fault->subject);
	struct ts_level levels[TS_LEVELS_MOST];

	if (!fault->subject &&
		(ts_ruling_topic(fault) == TS_TOPIC_WASTE || fault->rule == TS_RULE_CROWDED))
		return fewer(w, attempt, d, ret);
	if (!g || (fault->other && !by_other) || fault->match ||
		attempt >= ts_levels(g->group.species, levels))
		return false;
	renumber(w, g, &levels[attempt], d, ret);
	/* A pair is no company for a single one of a shoal: as many as it says. */
	if (fault->rule == TS_RULE_FEW && ret->to < fault->its) {
		ret->from = 0;
		return true;
	}
	/* Nobody who lives there goes for want of room or of changes: they are mended. */
	if (ret->to < ret->from && !g->planned && ts_ruling_topic(fault) != TS_TOPIC_COMPANY)
		return false;
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
	const struct ts_plan_group *g = ts_check_group_of(c, species);

	return g ? (size_t)(g - c->groups) : 0;
}

static size_t conflicts_of(const struct ts_check *c, const struct ts_species *species)
{
	size_t count = 0;

	for (size_t i = 0; i < c->count && c->rulings[i].severity >= TS_CONFLICT; i++)
		count += c->rulings[i].subject == species || c->rulings[i].other == species;
	return count;
}

/*
 * Who goes first of the two; `attempt` 1 is the other. A whole plan's fault: the last line first.
 * The cause goes before the one that suffers, unless that one likes the water less; where neither
 * is the cause, the one that likes the water less.
 */
static const struct ts_plan_group *who_goes(
	const struct ts_mending *w, const struct ts_ruling *fault, unsigned attempt)
{
	const struct ts_check *c = w->check;
	const struct ts_plan_group *a = ts_check_group_of(c, fault->subject);
	const struct ts_plan_group *b = ts_check_group_of(c, fault->other);
	bool b_first;

	if (!a)
		return attempt < c->group_count ? &c->groups[c->group_count - 1 - attempt] : NULL;
	if (!b)
		return attempt ? NULL : a;
	if (attempt > 1)
		return NULL;
	if (!a->planned != !b->planned)
		b_first = b->planned > 0;
	else if (caused(fault->rule)) /* but for one whose water it is not either */
		b_first = !(a->planned && a->misfit > b->misfit && a->misfit_at != TS_PH);
	else if (a->misfit != b->misfit) /* the water is nearer to the other's own */
		b_first = b->misfit > a->misfit;
	else if (conflicts_of(c, fault->subject) != conflicts_of(c, fault->other))
		b_first = conflicts_of(c, fault->other) > conflicts_of(c, fault->subject);
	else
		b_first = index_of(c, fault->other) > index_of(c, fault->subject);
	return b_first == !attempt ? b : a;
}

static bool take_out(const struct ts_mending *w, const struct ts_ruling *fault, unsigned attempt,
	bool planned, struct ts_draft *d, struct ts_remedy *ret)
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
	ts_draft_drop(d, g->group.species);
	return true;
}

static bool rung_leave_out(const struct ts_mending *w, const struct ts_ruling *fault,
	unsigned attempt, struct ts_draft *d, struct ts_remedy *ret)
{
	return take_out(w, fault, attempt, true, d, ret);
}

static bool rung_other_home(const struct ts_mending *w, const struct ts_ruling *fault,
	unsigned attempt, struct ts_draft *d, struct ts_remedy *ret)
{
	return take_out(w, fault, attempt, false, d, ret);
}

const struct ts_ladder_row ts_ladder[] = {
	{TS_REMEDY_ROUTINE, rung_routine},
	{TS_REMEDY_WARMTH, rung_warmth},
	{TS_REMEDY_MINERALS, rung_minerals},
	{TS_REMEDY_DILUTE, rung_dilute},
	{TS_REMEDY_TANK, rung_tank},
	{TS_REMEDY_NUMBER, rung_number},
	{TS_REMEDY_LEAVE_OUT, rung_leave_out},
	{TS_REMEDY_OTHER_HOME, rung_other_home},
};

const size_t ts_ladder_count = sizeof ts_ladder / sizeof *ts_ladder;
