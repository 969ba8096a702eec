/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The reasons of a no: which one leads, which others get a line of their own, and the one way out
 * that is named. And, of a plan against which nothing stands, what was not judged.
 */
#include "answers/check_parts.h"

#include <string.h>

#include "base/arena.h"
#include "stock/mending.h"
#include "stock/rules.h"
#include "words/rulings.h"

/* Sorts of reasons, the gravest first. Common practice, no source. */
enum {
	OF_DANGER = -1, /* what is made safe before anything is judged */
	OF_PEOPLE,      /* hurts people, or no home suits it */
	OF_LAKES,       /* animals of two lakes: never, in whatever tank */
	OF_LIFE,        /* eaten, killed, drowned */
	OF_ROOM,        /* its own home far too small */
	OF_WARMTH,
	OF_WATER,
	OF_TEMPER, /* quarrels, and what a larger tank eases */
	OF_REST
};

/* Rules whose topic does not tell it. */
static const struct {
	enum ts_rule_id rule;
	int reason;
} reasons[] = {
	{TS_RULE_CAUTION, OF_PEOPLE},
	{TS_RULE_LAKE_APART, OF_LAKES},
	{TS_RULE_ELECTRIC, OF_LIFE},
	{TS_RULE_EATEN, OF_LIFE},
	{TS_RULE_NIGHT_HUNTER, OF_LIFE},
	{TS_RULE_SHRIMPS_EATEN, OF_LIFE},
	{TS_RULE_SNAILS_EATEN, OF_LIFE},
	{TS_RULE_ATTACKED, OF_LIFE},
	{TS_RULE_LAND, OF_LIFE},
	{TS_RULE_TANK_UNMEASURED, OF_ROOM},
};

static const int of_topic[] = {
	[TS_TOPIC_COMPANY - TS_TOPIC_DANGER] = OF_TEMPER,
	[TS_TOPIC_TEMPERATURE - TS_TOPIC_DANGER] = OF_WARMTH,
	[TS_TOPIC_WATER - TS_TOPIC_DANGER] = OF_WATER,
	[TS_TOPIC_ROOM - TS_TOPIC_DANGER] = OF_ROOM,
	[TS_TOPIC_WASTE - TS_TOPIC_DANGER] = OF_REST,
	[TS_TOPIC_CARE - TS_TOPIC_DANGER] = OF_REST,
};

bool ts_check_no_home(const struct ts_ruling *r)
{
	bool room = ts_rule_of_room(r->rule) || r->rule == TS_RULE_TANK_UNMEASURED;

	return room && r->severity >= TS_CONFLICT && r->subject &&
	       r->subject->cautions & 1u << TS_CAUTION_NO_HOME_SUITS;
}

int ts_check_reason(const struct ts_ruling *r)
{
	if (ts_ruling_topic(r) < TS_TOPIC_COMPANY)
		return OF_DANGER;
	if (r->other && r->remedy.kind == TS_REMEDY_TANK)
		return OF_TEMPER;
	if (ts_check_no_home(r))
		return OF_PEOPLE;
	for (size_t i = 0; i < sizeof reasons / sizeof *reasons; i++) {
		if (reasons[i].rule == r->rule)
			return reasons[i].reason;
	}
	/* That all together want more ends with the one who goes. */
	if (ts_ruling_topic(r) == TS_TOPIC_ROOM && !r->subject)
		return OF_REST;
	return ts_rule_of_room(r->rule) ? OF_ROOM : of_topic[ts_ruling_topic(r) - TS_TOPIC_DANGER];
}

/* A fault that no condition mends, and the first line does not speak of. */
static bool grave(const struct ts_check_work *w, size_t entry)
{
	const struct ts_ruling *r = w->entries[entry].ruling;
	const struct ts_check_judgement *j = &w->out->judgements[entry];

	if (!r || j == w->out->first || r->rule == TS_RULE_OUTCOMPETED)
		return false;
	if (w->entries[entry].severity >= TS_CONFLICT)
		return true;
	if (w->entries[entry].severity < TS_CONCERN)
		return false;
	/* The warmth that was given is none for it. */
	if (r->rule == TS_RULE_WATER && r->word == TS_TEMPERATURE)
		return true;
	return r->other && !j->condition && !j->folded;
}

/* With the one gone that the first line sends away this fault is gone too. */
static bool mended_with(const struct ts_ruling *first, const struct ts_ruling *r)
{
	const struct ts_species *gone =
		first->remedy.species ? first->remedy.species : first->subject;

	/* Fewer of them are still some of them. */
	if (first->remedy.kind == TS_REMEDY_NUMBER && r->other && !first->other)
		return false;
	return gone && (r->subject == gone || r->other == gone);
}

void ts_check_put_alike(
	struct ts_check_work *w, const struct ts_species *species, size_t at, size_t count)
{
	ts_text_put(&w->text, !at               ? " The same goes for the "
			      : at + 1 == count ? " and the "
						: ", the ");
	ts_check_put_bought(w, species);
}

/* " The same goes for the guppies and the platies.": whom the same one harms in the same way. */
void ts_check_put_others_alike(struct ts_check_work *w, const struct ts_ruling *r)
{
	size_t count = 0, said = 0;

	for (int pass = 0; r->other && pass < 2; pass++) {
		for (size_t i = 0; i < w->entry_count; i++) {
			const struct ts_ruling *o = w->entries[i].ruling;

			if (!o || o == r || o->rule != r->rule || o->other != r->other ||
				w->entries[i].severity < TS_CONFLICT)
				continue;
			if (!pass) {
				count++;
				continue;
			}
			ts_check_put_alike(w, o->subject, said++, count);
		}
	}
	ts_text_put(&w->text, count ? "." : "");
}

static void add_reason(struct ts_check_work *w, const struct ts_ruling *r, int reason)
{
	const char *room = NULL;

	if (reason == OF_ROOM) {
		room = ts_check_too_small(w);
		if (!room)
			return;
	}
	ts_text_put(&w->text, room ? "Also " : r->other ? "Also not together: " : "Also: ");
	if (room)
		ts_text_put(&w->text, room);
	else
		ts_say_opening(&w->text, r);
	ts_text_put(&w->text, ".");
	if (!room)
		ts_check_put_others_alike(w, r);
	ts_asking_note(w->asking, &w->out->also, ts_asking_keep(w->asking, &w->text));
}

/* With the one gone that the first line sends away somebody else has no room all the same. */
static void say_room_of_others(struct ts_check_work *w, const struct ts_ruling *first)
{
	const struct ts_species *gone =
		first && first->remedy.kind == TS_REMEDY_LEAVE_OUT ? first->remedy.species : NULL;
	const struct ts_plan_group *g = ts_check_group_of(&w->check, gone);
	const struct ts_species *who = g && g->planned ? ts_check_no_room_without(w, gone) : NULL;
	const char *says = who ? ts_check_too_small_for(w, who) : NULL;

	if (!says)
		return;
	w->no_room = who;
	ts_text_puts(&w->text, "Also ", says, ".", NULL);
	ts_asking_note(w->asking, &w->out->also, ts_asking_keep(w->asking, &w->text));
}

/* One line for each sort that the first line is not of; of its own sort where others are meant. */
static void say_reasons(struct ts_check_work *w)
{
	const struct ts_ruling *first =
		w->out->first ? w->entries[w->out->first - w->out->judgements].ruling : NULL;
	int of_first = first ? ts_check_reason(first) : OF_DANGER;
	bool of_room = of_first == OF_ROOM || of_first == OF_PEOPLE;

	for (int reason = OF_PEOPLE; reason <= OF_TEMPER; reason++) {
		if (reason == OF_WATER && w->out->water_too)
			continue;
		for (size_t i = 0; i < w->entry_count; i++) {
			const struct ts_ruling *r = w->entries[i].ruling;

			if (!grave(w, i) || ts_check_reason(r) != reason ||
				(reason == OF_ROOM && of_first == OF_PEOPLE) ||
				(reason == of_first && (reason == OF_ROOM || reason == OF_WATER ||
							       mended_with(first, r))))
				continue;
			add_reason(w, r, reason);
			of_room |= reason == OF_ROOM;
			break;
		}
	}
	if (!of_room && !w->out->of_room)
		say_room_of_others(w, first);
}

/* Who is not to be bought: by the repair, and by what else is between two of them. */
struct leavers {
	const struct ts_species *who[TS_REMEDIES_TRIED];
	size_t count;
	bool large; /* some of them for want of room */
};

static bool leaves(const struct leavers *l, const struct ts_species *s)
{
	for (size_t i = 0; i < l->count; i++) {
		if (l->who[i] == s)
			return true;
	}
	return false;
}

static void add_leaver(struct leavers *l, const struct ts_remedy *m)
{
	if (m->kind == TS_REMEDY_LEAVE_OUT && m->species && l->count < TS_REMEDIES_TRIED &&
		!leaves(l, m->species))
		l->who[l->count++] = m->species;
}

static void find_leavers(const struct ts_check_work *w, struct leavers *ret)
{
	*ret = (struct leavers){.count = 0};
	for (size_t i = 0; i < w->check.repair_count; i++)
		add_leaver(ret, &w->check.repair[i].remedy);
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;
		const struct ts_check_judgement *j = &w->out->judgements[i];

		if (r && r->other && w->entries[i].severity == TS_CONCERN && !j->condition &&
			r->rule != TS_RULE_OUTCOMPETED && !leaves(ret, r->subject) &&
			!leaves(ret, r->other))
			add_leaver(ret, &r->remedy);
	}
}

static const struct ts_species *first_subject(const struct ts_check_work *w)
{
	return w->out->first ? w->entries[w->out->first - w->out->judgements].ruling->subject
			     : NULL;
}

static size_t put_leavers(struct ts_check_work *w, const struct leavers *l)
{
	for (size_t i = 0; i < l->count; i++) {
		ts_text_put(&w->text, !i                  ? "do not buy the "
				      : i + 1 == l->count ? " and the "
							  : ", the ");
		ts_check_put_bought(w, l->who[i]);
	}
	return l->count;
}

static const char *who_leaves(struct ts_check_work *w, const struct leavers *l)
{
	(void)put_leavers(w, l);
	return ts_asking_keep(w->asking, &w->text);
}

/* One size in an answer. */
static bool is_another_size(const struct ts_check_work *w, const struct ts_remedy *m)
{
	return m->kind == TS_REMEDY_TANK && m->length_cm > 0 && w->said_tank.length_cm > 0 &&
	       (m->length_cm != w->said_tank.length_cm || m->width_cm != w->said_tank.width_cm);
}

/* "Do not buy the oscar and the tiger barbs; keep 10 neon tetras instead of 4": all in one line. */
static const char *repair_in_a_line(struct ts_check_work *w, const struct leavers *l)
{
	size_t said = put_leavers(w, l);

	for (size_t i = 0; i < w->check.repair_count; i++) {
		const struct ts_remedy *m = &w->check.repair[i].remedy;

		/* Where nobody is bought, nothing is to be made larger for them. */
		if (m->kind == TS_REMEDY_LEAVE_OUT || l->count == w->check.group_count ||
			(m->kind == TS_REMEDY_TANK && l->large))
			continue;
		ts_text_put(&w->text, said++ ? "; " : "");
		if (is_another_size(w, m))
			ts_text_put(&w->text, "a larger tank");
		else
			ts_say_step(&w->text, m);
	}
	return ts_asking_keep(w->asking, &w->text);
}

static bool begins(const char *says, const char *beginning)
{
	return says && strncmp(says, beginning, strlen(beginning)) == 0;
}

/* Whoever is far too large for the tank goes with the one that the first line speaks of. */
static void add_the_large(const struct ts_check_work *w, struct leavers *l)
{
	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];

		if (g->planned && g->group.species != first_subject(w) &&
			ts_check_too_large(w, &g->group)) {
			l->large |= !leaves(l, g->group.species);
			add_leaver(l, &(struct ts_remedy){.kind = TS_REMEDY_LEAVE_OUT,
					      .species = g->group.species});
		}
	}
}

/* It has room for itself, and nothing of its own is against it. */
static bool may_live_alone(struct ts_check_work *w, const struct ts_species *s)
{
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (r->subject == s && !r->other && r->severity >= TS_CONFLICT)
			return false;
	}
	return !ts_check_too_small_for(w, s);
}

/* "do not buy all of these: the betta alone would do in this tank" */
static const char *one_of_them(struct ts_check_work *w)
{
	size_t said = 0;

	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_species *s = w->check.groups[i].group.species;

		if (!may_live_alone(w, s))
			continue;
		ts_text_put(&w->text, said ? ", or the " : "do not buy all of these: the ");
		ts_check_put_bought(w, s);
		ts_text_put(&w->text, " alone");
		said++;
	}
	if (!said)
		return "do not buy any of these for this tank";
	ts_text_put(&w->text, " would do in this tank");
	return ts_asking_keep(w->asking, &w->text);
}

/* One way and no second telling of it: who goes is in "instead of" already. */
static void say_one_way(struct ts_check_work *w)
{
	struct ts_check_result *out = w->out;
	struct leavers l;
	size_t steps;

	if (w->rest_said)
		return;
	find_leavers(w, &l);
	if (w->no_room && ts_check_group_of(&w->check, w->no_room)->planned)
		add_leaver(&l,
			&(struct ts_remedy){.kind = TS_REMEDY_LEAVE_OUT, .species = w->no_room});
	if (out->of_room && begins(out->decides, "do not buy "))
		add_the_large(w, &l);
	if (out->of_room && begins(out->decides, "do not buy ") && l.count &&
		(l.count + 1 < w->check.group_count || !w->check.repair_count) &&
		!leaves(&l, first_subject(w))) {
		add_leaver(&l, &(struct ts_remedy){
				       .kind = TS_REMEDY_LEAVE_OUT, .species = first_subject(w)});
		out->decides = who_leaves(w, &l);
		return;
	}
	if (out->of_room && begins(out->decides, "do not buy ") && l.count &&
		l.count + 1 == w->check.group_count && w->check.repair_count == 1) {
		out->decides = one_of_them(w);
		return;
	}
	/* Who is far too large for the tank that is there is not bought, rather than another tank.
	 */
	if (!out->of_room && l.count)
		add_the_large(w, &l);
	steps = w->check.repair_count > l.count ? w->check.repair_count : l.count;
	if (begins(out->instead_says, "Instead of ")) {
		if (steps <= 1 || w->check.repair_mends)
			out->decides = NULL;
	} else if (steps > 1 && !out->repair_said && !out->otherwise) {
		out->decides = repair_in_a_line(w, &l);
	}
	if (out->instead_says && begins(out->instead_says, "Or ") && out->otherwise)
		out->otherwise = NULL;
}

/* Something more than to know is about one that is to be bought. */
static bool about_newcomers(const struct ts_check_work *w, const struct ts_ruling *r)
{
	const struct ts_plan_group *a = ts_check_group_of(&w->check, r->subject);
	const struct ts_plan_group *b = ts_check_group_of(&w->check, r->other);

	return r->severity >= TS_CONCERN && ((a && a->planned) || (b && b->planned));
}

/* The fault is of those that live there: the newcomers were asked about. */
static void say_newcomers(struct ts_check_work *w)
{
	size_t said = 0;

	if (!w->check.planned_groups || !w->check.living_groups || !w->out->first ||
		w->newcomers_led)
		return;
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (!r || !about_newcomers(w, r))
			continue;
		if (r->severity == TS_CONCERN && !w->out->also.count) {
			ts_text_put(&w->text, "Of what you want to add: ");
			ts_say_opening(&w->text, r);
			ts_text_put(&w->text, ".");
			ts_asking_note(
				w->asking, &w->out->also, ts_asking_keep(w->asking, &w->text));
		}
		return;
	}
	for (size_t i = 0; i < w->check.group_count; i++) {
		if (!w->check.groups[i].planned)
			continue;
		ts_text_put(&w->text, said++ ? ", the " : "Nothing else speaks against the ");
		ts_check_put_bought(w, w->check.groups[i].group.species);
	}
	ts_text_put(&w->text, "; first the room of those that live there.");
	ts_asking_note(w->asking, &w->out->also, ts_asking_keep(w->asking, &w->text));
}

static bool of_kind(const struct ts_check_work *w, enum ts_check_kind kind)
{
	return strcmp(w->out->kind, ts_check_kind_words[kind]) == 0;
}

void ts_check_reasons(struct ts_check_work *w)
{
	if (!of_kind(w, TS_CHECK_NO))
		return;
	say_reasons(w);
	if (w->out->of_room)
		say_newcomers(w);
	say_one_way(w);
}

/* What is not given, in a few words. */
static const struct {
	enum ts_rule_id rule;
	const char *word;
} not_given[] = {
	{TS_RULE_WATER_UNKNOWN, NULL}, /* the headline says it */
	{TS_RULE_TEMPERATURE_UNKNOWN, "the temperature"},
	{TS_RULE_KH_UNKNOWN, "KH"},
	{TS_RULE_TANK_UNKNOWN, "the tank"},
	{TS_RULE_NITRATE_OPEN, "feeding and water changes"},
	{TS_RULE_BUFFER_OPEN, "feeding and water changes"},
	{TS_RULE_UNTESTED, "ammonia and nitrite of the tank"},
};
#define NOT_GIVEN (sizeof not_given / sizeof *not_given)

static bool rules(const struct ts_check_work *w, enum ts_rule_id rule)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		if (w->entries[i].ruling && w->entries[i].ruling->rule == rule)
			return true;
	}
	return false;
}

/* One sentence says it for all. */
static void fold_said(struct ts_check_work *w, enum ts_rule_id rule)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (r && r->rule == rule && r->severity == TS_QUESTION)
			w->out->judgements[i].folded = true;
	}
}

/* " (keep it at 24 to 26 C)": where one does for all. */
static void put_shared_warmth(struct ts_check_work *w)
{
	const struct ts_shared_water *s = &w->check.shared;
	const struct ts_range *t = &s->at[TS_TEMPERATURE];

	if (!s->comfortable[TS_TEMPERATURE] || isnan(t->low))
		return;
	ts_text_put(&w->text, " (keep it at ");
	ts_text_number_short(&w->text, t->low, 1);
	if (t->high > t->low) {
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, t->high, 1);
	}
	ts_text_put(&w->text, " C)");
}

/* The headline has asked for it as a condition. */
static bool is_condition(const struct ts_check_work *w, enum ts_rule_id rule)
{
	return rule == TS_RULE_TEMPERATURE_UNKNOWN && w->out->first &&
	       strcmp(w->out->first->code, ts_rule_rows[TS_RULE_TEMPERATURE_APART].code) == 0;
}

void ts_check_not_judged(struct ts_check_work *w)
{
	const char *words[NOT_GIVEN];
	enum ts_rule_id of[NOT_GIVEN];
	size_t count = 0;

	/* Of what lives there each is asked by itself. */
	if (!of_kind(w, TS_CHECK_IF) && !of_kind(w, TS_CHECK_YES))
		return;
	for (size_t i = 0; i < NOT_GIVEN; i++) {
		if (!rules(w, not_given[i].rule))
			continue;
		fold_said(w, not_given[i].rule);
		if (!not_given[i].word || is_condition(w, not_given[i].rule) ||
			(count && strcmp(words[count - 1], not_given[i].word) == 0))
			continue;
		of[count] = not_given[i].rule;
		words[count++] = not_given[i].word;
	}
	if (!count)
		return;
	ts_text_put(&w->text, "Not judged: ");
	for (size_t i = 0; i < count; i++) {
		ts_text_puts(&w->text, !i ? "" : i + 1 == count ? " and " : ", ", words[i], NULL);
		if (of[i] == TS_RULE_TEMPERATURE_UNKNOWN)
			put_shared_warmth(w);
	}
	ts_text_put(&w->text, ".");
	w->out->not_judged = ts_asking_keep(w->asking, &w->text);
}
