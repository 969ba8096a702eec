/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A name of several animals, "pleco", "nerite": each that is usually sold is tried in the plan.
 * Where all of them do, or none does, the answer is that of the one sold most, and says so; a
 * question is left only where they differ, with those that would do and one that would not.
 */
#include "answers/check_parts.h"

#include <string.h>

#include "base/arena.h"
#include "words/names.h"
#include "words/rulings.h"

#define NAMED 3

/* Who of a name was tried, and how it went. */
struct tried {
	const struct ts_candidates *members;
	bool asked[TS_CANDIDATES_MOST], good[TS_CANDIDATES_MOST];
	const char *but[TS_CANDIDATES_MOST]; /* what is between it and another; NULL: nothing */
	bool sound[TS_CANDIDATES_MOST];      /* nothing is against the whole plan with it */
	bool disliked[TS_CANDIDATES_MOST];   /* borne, and not liked */
	bool nearly[TS_CANDIDATES_MOST];     /* its room is a little short */
	bool clashes[TS_CANDIDATES_MOST];    /* with the others, even where they are a no alone */
	struct ts_ruling why[TS_CANDIDATES_MOST]; /* of one that is not good */
	struct ts_match match[TS_CANDIDATES_MOST];
	size_t asked_count, good_count;
	bool alone; /* the rest of the plan is no yes without it */
};

static bool of_several(const struct ts_candidates *c)
{
	return !ts_group_warns(c) && c->count && !c->by_word &&
	       (c->how == TS_NAME_GROUP || c->how == TS_NAME_SHARED);
}

/* What stands against `s` in the plan, gravest first; NULL: nothing that no condition mends.
 * `alone`: whoever is there besides goes, or is asked about. */
static const struct ts_ruling *against(
	const struct ts_check *c, const struct ts_species *s, bool alone)
{
	for (size_t i = 0; i < c->count; i++) {
		const struct ts_ruling *r = &c->rulings[i];
		bool off = r->rule == TS_RULE_WATER && r->severity >= TS_CONCERN;

		if (alone && r->other)
			continue;
		/* No degree that both like: of a name of several another is chosen. */
		off |= r->rule == TS_RULE_TEMPERATURE_APART && r->ours < r->its;
		if ((r->subject == s || r->other == s) && (r->severity >= TS_CONFLICT || off))
			return r;
	}
	return NULL;
}

/* Of the room that it wants so much is enough to be named first: common practice, no source. */
#define NEARLY 0.9

/* Not quite its water, or its room: others of the name go before it. */
static bool disliked(const struct ts_check *c, const struct ts_species *s, bool *ret_nearly)
{
	*ret_nearly = false;
	for (size_t i = 0; i < c->count; i++) {
		const struct ts_ruling *r = &c->rulings[i];

		if (r->subject != s || ts_ruling_topic(r) != TS_TOPIC_ROOM ||
			r->rule == TS_RULE_SIDES_ASSUMED)
			continue;
		*ret_nearly = r->severity == TS_NOTE && r->its > 0 && r->ours >= NEARLY * r->its;
		if (!*ret_nearly)
			return true;
	}
	for (size_t i = 0; i < c->group_count; i++) {
		if (c->groups[i].group.species == s)
			return c->groups[i].misfit >= TS_MISFIT_BORNE;
	}
	return false;
}

/* What a condition would mend between it and one of the others, in words. */
static const char *between(
	struct ts_check_work *w, const struct ts_check *c, const struct ts_species *s)
{
	for (size_t i = 0; i < c->count; i++) {
		const struct ts_ruling *r = &c->rulings[i];

		if (r->severity != TS_CONCERN || !r->other || (r->subject != s && r->other != s))
			continue;
		ts_say_opening(&w->text, r);
		return ts_asking_keep(w->asking, &w->text);
	}
	return NULL;
}

/* The plan without this line is judged; false: no memory. */
static bool judge_rest(
	struct ts_check_work *w, const struct ts_species *const *species, struct tried *t)
{
	struct ts_arena scratch;
	struct ts_check check;
	bool ok;

	ts_arena_open(&scratch, &w->asking->arena->allocator);
	ok = ts_check_faults(w->question->plan, species, w->asking->today, w->asking->practice,
		     NULL, &scratch, &check) == TS_OK;
	if (ok)
		t->alone = check.verdict == TS_PLAN_UNSOUND;
	ts_arena_drop(&scratch);
	return ok;
}

/* The plan with this one in the line; false: no memory. */
static bool try_one(struct ts_check_work *w, const struct ts_species **species, size_t line,
	struct tried *t, size_t at)
{
	const struct ts_check_question *q = w->question;
	struct ts_arena scratch;
	struct ts_check check;
	bool ok;

	ts_arena_open(&scratch, &w->asking->arena->allocator);
	species[line] = t->members->items[at].species;
	ok = ts_check_faults(q->plan, species, w->asking->today, w->asking->practice, NULL,
		     &scratch, &check) == TS_OK;
	if (ok) {
		const struct ts_ruling *r = against(&check, species[line], t->alone);

		t->disliked[at] = disliked(&check, species[line], &t->nearly[at]);
		t->but[at] = between(w, &check, species[line]);
		t->good[at] = !r;
		t->sound[at] = check.verdict <= TS_PLAN_ASKS && check.group_count > 1;
		t->clashes[at] = against(&check, species[line], false);
		t->good_count += !r;
		if (r) {
			t->why[at] = *r;
			if (r->match) {
				t->match[at] = *r->match;
				t->why[at].match = &t->match[at];
			}
		}
	}
	species[line] = NULL;
	ts_arena_drop(&scratch);
	return ok;
}

/* Those that shops have; where none is usual, all. */
static void choose_asked(struct tried *t)
{
	for (int pass = 0; pass < 2 && !t->asked_count; pass++) {
		for (size_t i = 0; i < t->members->count; i++) {
			t->asked[i] = pass || t->members->items[i].species->sold <= TS_SOLD_OFTEN;
			t->asked_count += t->asked[i];
		}
	}
}

/* Goes before: with the others, then what it likes, then how usual it is. */
static bool before(const struct tried *t, size_t a, size_t b)
{
	if (t->clashes[a] != t->clashes[b])
		return t->clashes[b];
	if (t->disliked[a] != t->disliked[b])
		return t->disliked[b];
	if (!t->but[a] != !t->but[b])
		return !t->but[a];
	if (t->members->items[a].species->sold != t->members->items[b].species->sold)
		return t->members->items[a].species->sold < t->members->items[b].species->sold;
	return !t->nearly[a] && t->nearly[b];
}

/* The best of those that would do and are not named yet; the count of members: none. */
static size_t next_best(const struct tried *t, const bool *named)
{
	size_t best = t->members->count;

	for (size_t i = 0; i < t->members->count; i++) {
		if (t->asked[i] && t->good[i] && !named[i] &&
			(best == t->members->count || before(t, i, best)))
			best = i;
	}
	return best;
}

static size_t best_of(const struct tried *t)
{
	static const bool nobody[TS_CANDIDATES_MOST];

	return next_best(t, nobody);
}

static bool any_clashes(const struct tried *t)
{
	for (size_t i = 0; i < t->members->count; i++) {
		if (t->asked[i] && t->clashes[i])
			return true;
	}
	return false;
}

/* Of those that are not good the largest: what somebody may come home with. */
static size_t worst_of(const struct tried *t)
{
	size_t worst = t->members->count;

	for (size_t i = 0; i < t->members->count; i++) {
		const struct ts_species *s = t->members->items[i].species;

		if (t->asked[i] && !t->good[i] &&
			(worst == t->members->count ||
				s->adult_length_cm >
					t->members->items[worst].species->adult_length_cm))
			worst = i;
	}
	return worst;
}

static void note(struct ts_check_work *w)
{
	ts_asking_note(w->asking, &w->out->members, ts_asking_keep(w->asking, &w->text));
}

/* Without a tank nobody knows whether the largest of them has room. */
static void put_largest(struct ts_check_work *w, const struct tried *t, size_t at)
{
	const struct ts_tank *tank = &w->question->plan->tank;
	const struct ts_species *most = t->members->items[at].species;

	for (size_t i = 0; i < t->members->count; i++) {
		const struct ts_species *s = t->members->items[i].species;

		if (t->asked[i] && ts_match_tank_length_cm(s) > ts_match_tank_length_cm(most))
			most = s;
	}
	if (tank->length_cm > 0 || tank->volume_l > 0 || most == t->members->items[at].species)
		return;
	ts_text_put(&w->text, " The largest, the ");
	ts_say_animal(&w->text, most);
	ts_text_put(&w->text, ", grows to ");
	ts_text_number_short(&w->text, most->adult_length_cm, 0);
	ts_text_put(&w->text, " cm and needs a tank ");
	ts_text_number_short(&w->text, ts_match_tank_length_cm(most), 0);
	ts_text_put(&w->text, " cm long.");
}

/* "'nerite' is the name of several, and any of them would do here; this is said of the zebra
 * nerite." */
static void say_alike(struct ts_check_work *w, const char *name, const struct tried *t, size_t at)
{
	if (t->members->count == 1)
		return;
	ts_text_puts(&w->text, "'", name, "' is the name of several",
		any_clashes(t) ? ", and not of all is the same to be said"
			       : ", and any of them would do here",
		"; this is said of the ", NULL);
	ts_say_animal(&w->text, t->members->items[at].species);
	ts_text_put(&w->text, ".");
	put_largest(w, t, at);
	note(w);
}

/* "Which pleco? The bristlenose or the clown pleco would do here; not the common pleco: ..." */
static void say_apart(struct ts_check_work *w, const char *name, const struct tried *t)
{
	size_t bad = worst_of(t), said = 0;
	size_t most = t->good_count < NAMED ? t->good_count : NAMED;
	bool named[TS_CANDIDATES_MOST] = {false};

	ts_text_puts(&w->text, "Which ", name, "? ", NULL);
	for (size_t i = best_of(t); said < most && i < t->members->count; i = next_best(t, named)) {
		ts_text_put(&w->text, !said ? "The " : said + 1 == most ? " or the " : ", the ");
		ts_say_animal(&w->text, t->members->items[i].species);
		named[i] = true;
		said++;
	}
	ts_text_put(&w->text, " would do here, and not the ");
	ts_say_animal(&w->text, t->members->items[bad].species);
	ts_text_put(&w->text, ", ");
	ts_text_number_short(&w->text, t->members->items[bad].species->adult_length_cm, 0);
	ts_text_put(&w->text, " cm long when grown: ");
	ts_say_opening(&w->text, &t->why[bad]);
	ts_text_put(&w->text, ".");
	if (t->sound[best_of(t)]) {
		ts_text_put(&w->text, " With the ");
		ts_say_animal(&w->text, t->members->items[best_of(t)].species);
		ts_text_put(&w->text, " all of these go together, as far as is known.");
	} else if (t->but[best_of(t)]) {
		ts_text_puts(&w->text, " But: ", t->but[best_of(t)], ".", NULL);
	}
	note(w);
}

/* Whether the last word of its scientific name stands in what was typed. */
static bool is_told(const char *name, const struct ts_species *s)
{
	const char *blank = strrchr(s->species, ' ');

	return blank && strlen(blank + 1) > 3 && strstr(name, blank + 1);
}

/* "multifasciatus shell dweller" is one of them. */
static const struct ts_species *told(const char *name, const struct ts_candidates *c)
{
	for (size_t i = 0; i < c->count; i++) {
		if (is_told(name, c->items[i].species))
			return c->items[i].species;
	}
	return NULL;
}

/* Whichever it is, the water is the reason. */
static bool of_one_water(const struct tried *t)
{
	for (size_t i = 0; i < t->members->count; i++) {
		if (t->asked[i] && t->why[i].rule != TS_RULE_WATER)
			return false;
	}
	return true;
}

static size_t most_sold(const struct tried *t)
{
	size_t most = t->members->count;

	for (size_t i = 0; i < t->members->count; i++) {
		if (t->asked[i] && (most == t->members->count ||
					   t->members->items[i].species->sold <
						   t->members->items[most].species->sold))
			most = i;
	}
	return most;
}

static bool settle(struct ts_check_work *w, const struct ts_species **species, size_t line)
{
	const struct ts_check_question *q = w->question;
	struct tried *t = ts_arena_take(w->asking->arena, sizeof *t);
	size_t at;

	if (!t)
		return false;
	t->members = &q->candidates[line];
	choose_asked(t);
	if (!judge_rest(w, species, t))
		return false;
	for (size_t i = 0; i < t->members->count; i++) {
		if (t->asked[i] && !try_one(w, species, line, t, i))
			return false;
	}
	if (!t->good_count && of_one_water(t)) {
		species[line] = t->members->items[most_sold(t)].species;
		ts_text_puts(&w->text, "That goes for all that are called '",
			q->plan->stock[line].species, "'.", NULL);
		note(w);
		return true;
	}
	if (!t->good_count)
		return true; /* it stays a question, with what all of them share */
	/* Who lives there is one of them already: one that does is taken. */
	if (t->good_count < t->asked_count && !ts_in_tank(&q->plan->stock[line])) {
		say_apart(w, q->plan->stock[line].species, t);
		/* Beside others the rest is said of the one that does best. */
		if (q->plan->stock_count > 1 && t->sound[best_of(t)] && !w->which) {
			w->which = w->out->members.items[w->out->members.count - 1];
			species[line] = t->members->items[best_of(t)].species;
		}
		return true;
	}
	at = best_of(t);
	species[line] = t->members->items[at].species;
	say_alike(w, q->plan->stock[line].species, t, at);
	return true;
}

bool ts_check_members(struct ts_check_work *w, struct ts_check_question *ret)
{
	const struct ts_check_question *q = w->question;
	const struct ts_species **species =
		ts_arena_array(w->asking->arena, q->plan->stock_count + 1, sizeof *species);
	bool bought = false;

	if (!species)
		return false;
	if (q->plan->stock_count)
		memcpy(species, q->species, q->plan->stock_count * sizeof *species);
	/* Newcomers are asked about: any of those that live there does to judge them by. */
	for (size_t i = 0; i < q->plan->stock_count; i++)
		bought |= !ts_in_tank(&q->plan->stock[i]) && !ts_plan_unwell(q->plan);
	for (size_t i = 0; i < q->plan->stock_count; i++) {
		if (!species[i] && q->candidates[i].how == TS_NAME_GROUP)
			species[i] = told(q->plan->stock[i].species, &q->candidates[i]);
		if (!species[i] && (bought || !ts_in_tank(&q->plan->stock[i])) &&
			of_several(&q->candidates[i]) && !settle(w, species, i))
			return false;
	}
	*ret = *q;
	ret->species = species;
	return true;
}
