/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What stands beside the lists of propose: lid and buffer that they rest on, the weeks before any
 * animal, who waits for a surer reading.
 */
#include "answers/propose_list.h"

#include "stock/candidates.h"
#include "stock/compose.h"
#include "stock/judge.h"
#include "stock/room.h"
#include "stock/rules.h"
#include "words/rulings.h"
#include "words/sentence.h"

#define NAMED_MOST 5
#define ALL_MOST 24
/* Candidates so few that they are why there are no more lists. */
#define FEW 12

static const char *keep(struct ts_proposing *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static void number(struct ts_proposing *w, double value, int decimals)
{
	ts_text_number_short(&w->text, value, decimals);
}

/* Where hardly any buffer is there, the lists say what that asks of their keeper. */
static void buffer(struct ts_proposing *w)
{
	const struct ts_span *kh = &w->profile.at[TS_KH];

	if (!w->p.count || w->p.conditions || !ts_judge_hardly_any_kh(&w->wish))
		return;
	ts_text_put(&w->text, "KH ");
	number(w, kh->value, 1);
	ts_text_put(&w->text,
		" buffers next to nothing: only animals of black water, few of them, and pH and "
		"ammonia tested twice a week. With KH 3 or more many other kinds would do: "
		"tapshoal remake --to KH=3.");
	ts_asking_note(w->asking, &w->out->notes, keep(w));
}

/* Notes in `said`, which has room for `most`, whom of the lists `is` speaks of. */
static size_t of_lists(const struct ts_proposing *w, const struct ts_species **said, size_t most,
	bool (*is)(const struct ts_proposing *w, const struct ts_species *s))
{
	size_t count = 0;

	for (size_t i = 0; i < w->p.count; i++) {
		for (size_t k = 0; k < w->p.lists[i].count; k++) {
			const struct ts_species *s = w->p.lists[i].lines[k].group.species;
			size_t at = 0;

			while (at < count && said[at] != s)
				at++;
			if (at == count && count < most && is(w, s))
				said[count++] = s;
		}
	}
	return count;
}

static void put_said(struct ts_proposing *w, const struct ts_species *const *said, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		ts_text_put(&w->text, !i ? "" : i + 1 == count ? " and " : ", ");
		ts_say_animals(&w->text, said[i]);
	}
}

/* So near to the lower end of its comfort a tank is cool for it. */
#define COOL_C 0.25

static bool at_its_cool_end(const struct ts_proposing *w, const struct ts_species *s)
{
	return w->profile.at[TS_TEMPERATURE].low < s->water.usual.temp_c.preferred.low + COOL_C;
}

/* What a tank a degree warmer would be better for. */
static void heater(struct ts_proposing *w)
{
	const struct ts_span *at = &w->profile.at[TS_TEMPERATURE];
	const struct ts_species *said[ALL_MOST];
	size_t count;

	if (!at->given || at->from == TS_FROM_ASSUMED || w->p.reach == TS_REACH_ANY)
		return;
	count = of_lists(w, said, ALL_MOST, at_its_cool_end);
	if (!count)
		return;
	ts_text_put(&w->text, "Hold ");
	number(w, at->low + 1, 1);
	ts_text_put(&w->text, " C rather than ");
	number(w, at->low, 1);
	ts_text_put(&w->text, ", the cool end of what ");
	put_said(w, said, count);
	ts_text_put(&w->text, " like.");
	ts_asking_note(w->asking, &w->out->notes, keep(w));
}

/* Whoever is comfortable at so much lives in a heated room without a heater. */
#define ROOM_C 20

/* What has to be there, and be done, for the first list: who begins asks that first. */
static void needs(struct ts_proposing *w)
{
	const struct ts_propose_shared_result *warmth;
	const struct ts_load *l;

	if (!w->p.count || !w->out->community_count)
		return;
	warmth = w->out->communities[0].shared.temp;
	l = &w->p.lists[0].load;
	ts_text_put(&w->text, "a filter");
	if (warmth && isfinite(warmth->low) && isfinite(warmth->high)) {
		ts_text_put(&w->text, warmth->low > ROOM_C ? "; a heater that holds "
							   : "; no heater where the room keeps ");
		number(w, warmth->low, 1);
		ts_text_put(&w->text, " to ");
		number(w, warmth->high, 1);
		ts_text_put(&w->text, " C");
	}
	if (l->change_percent > 0) {
		ts_text_put(&w->text, "; every ");
		number(w, l->change_days, 1);
		ts_text_put(&w->text, " days a change of ");
		ts_say_part_of(&w->text, l->change_percent, l->net_l);
		ts_text_put(&w->text, " for treated water");
	}
	w->out->needs = keep(w);
}

static bool wants_cover(const struct ts_proposing *w, const struct ts_species *s)
{
	(void)w;
	return s->needs.cover;
}

/* Who would leave an open tank; said where nothing is known of a lid. */
static void lid(struct ts_proposing *w)
{
	struct ts_propose_result *r = w->out;
	const struct ts_species *said[NAMED_MOST];
	size_t count;

	if (w->question->plan->tank.cover != TS_COVER_UNKNOWN)
		return;
	count = of_lists(w, said, NAMED_MOST, wants_cover);
	r->lid_assumed = count > 0;
	if (!count)
		return;
	ts_text_put(&w->text, "A tight lid is taken for granted: without one ");
	put_said(w, said, count);
	ts_text_put(&w->text, " would leave the water.");
	ts_asking_note(w->asking, &r->notes, keep(w));
}

/* Livebearers without females: what a single one among them would change. */
static void males(struct ts_proposing *w)
{
	bool any = false;

	for (size_t i = 0; i < w->p.count; i++) {
		for (size_t k = 0; k < w->p.lists[i].count; k++) {
			const struct ts_group *g = &w->p.lists[i].lines[k].group;

			any |= g->species->young_month > 0 && g->males && !g->females && !g->either;
		}
	}
	if (any)
		ts_asking_note(w->asking, &w->out->notes,
			"Males alone, so that nobody has to find homes for the young: one female "
			"among them brings young every month, and kinds of one genus cross.");
}

/* The days before any animal: common practice, no source. */
static void maturing(struct ts_proposing *w)
{
	static const struct ts_propose_purchase_result steps[] = {
		{0, "run the filter without animals and feed it with ammonia, a little each day"},
		{7, "test ammonia and nitrite, then every week; both rise, then fall"},
		{28, "mature when both stay nil for 7 days while the planned feed is cleared; "
		     "usually after 4 to 8 weeks"},
	};
	struct ts_propose_result *r = w->out;

	if (!w->filter_young || (!w->p.count && !r->held.count))
		return;
	r->maturing = steps;
	r->maturing_count = sizeof steps / sizeof *steps;
	r->maturing_heading =
		w->filter_unknown ? "If the tank is new: first the filter" : "First the filter";
	ts_text_puts(&w->text, w->filter_unknown ? "if the tank is new: " : "",
		"4 to 8 weeks of filter without animals; then buy in thirds, 14 days apart", NULL);
	r->maturing_short = keep(w);
	r->maturing_says = "Once that is so, ask again and say that the filter is mature "
			   "(--mature, or filter: "
			   "mature in the file of -t); then a third of the animals, a test, 14 "
			   "days, and the next third.";
}

static bool has_room(const struct ts_proposing *w, const struct ts_species *species)
{
	struct ts_ruling ruling;

	return ts_room_for(species, &w->tank, w->asking->practice, &ruling) == TS_ROOM_ENOUGH;
}

/* Whether a better kit would tell more: what is read to a drop, or to half a degree, is sure. */
static bool could_be_surer(const struct ts_span *span, int parameter)
{
	static const double sure[TS_PARAMETER__COUNT] = {
		[TS_GH] = 1, [TS_KH] = 1, [TS_PH] = 0.6, [TS_TEMPERATURE] = 1};

	return !span->given || (!span->exposure && span->high - span->low > sure[parameter]);
}

/* Who waits for a surer reading, and which measurement would tell; those sold most go first. */
static void waiting_for(struct ts_proposing *w, int parameter)
{
	struct ts_propose_waiting_result row = {.name = ts_parameter_rows[parameter].key};
	const struct ts_span *span = &w->profile.at[parameter];

	for (int sold = 0; sold < 4; sold++) {
		for (size_t i = 0; i < w->p.species_count; i++) {
			const struct ts_candidacy *c = &w->p.species[i];

			if (c->left_out != TS_LEFT_UNSURE || c->match.species->sold != sold ||
				ts_candidacy_waits_for(&c->match) != parameter ||
				!ts_match_advised_unasked(c->match.species) ||
				/* never an addition to fish from elsewhere */
				(w->wish.theme != TS_THEME_LAKE &&
					ts_compose_of_rift_lake(c->match.species)) ||
				!has_room(w, c->match.species))
				continue;
			if (row.species++ >= NAMED_MOST)
				continue;
			ts_say_animal(&w->text, c->match.species);
			ts_asking_note(w->asking, &row.animals, keep(w));
		}
	}
	if (!row.species)
		return;
	number(w, (double)row.species, 0);
	ts_text_puts(&w->text, " more may fit: ", ts_parameter_rows[parameter].label, NULL);
	if (span->given && !span->exposure && span->high > span->low) {
		ts_text_put(&w->text, " is read as ");
		number(w, span->low, 1);
		ts_text_put(&w->text, " to ");
		number(w, span->high, 1);
		ts_text_put(&w->text, parameter == TS_GH || parameter == TS_KH
					      ? "; a drop kit would tell"
					      : "; a surer reading would tell");
	} else {
		ts_text_put(&w->text, span->given
					      ? " is too near their limit, or their limit is in "
						"doubt"
					      : " is not measured");
	}
	for (size_t i = 0; i < row.animals.count; i++)
		ts_text_puts(&w->text, i ? ", " : ": ", row.animals.items[i], NULL);
	ts_text_put(&w->text, row.species > row.animals.count && row.animals.count ? " ..." : ".");
	row.says = keep(w);
	w->out->waiting[w->out->waiting_count++] = row;
}

/* The lists want more water changed than is usual. */
static void change(struct ts_proposing *w)
{
	if (!(w->p.change_percent > 0))
		return;
	ts_text_put(&w->text, "This works with ");
	number(w, w->p.change_percent, 0);
	ts_text_put(&w->text, " % of the water changed every week, and not with less.");
	ts_asking_note(w->asking, &w->out->notes, keep(w));
}

static const char *say_number(size_t n)
{
	static const char *const words[] = {"no", "one", "two", "three", "four", "five"};

	return n < sizeof words / sizeof *words ? words[n] : "several";
}

/* Who would fill the place, and makes too much waste; those sold most go first. NULL: nobody. */
static const struct ts_species *too_much_waste(const struct ts_proposing *w, unsigned role)
{
	const struct ts_species *best = NULL;

	for (size_t i = 0; i < w->p.species_count; i++) {
		const struct ts_candidacy *c = &w->p.species[i];
		const struct ts_species *s = c->match.species;

		if (c->left_out == TS_LEFT_BY_LOAD && !ts_compose_of_rift_lake(s) &&
			ts_compose_role(s, w->wish.theme) == role &&
			(!best || s->sold < best->sold))
			best = s;
	}
	return best;
}

/* Why nobody fills a place, behind what is said of it. */
static void put_missing(struct ts_proposing *w, const char *what, unsigned role)
{
	const struct ts_species *heavy = too_much_waste(w, role);

	ts_text_puts(&w->text, w->text.len ? " " : "", what, NULL);
	if (heavy) {
		ts_text_put(&w->text, "the fewest ");
		ts_say_animals(&w->text, heavy);
		ts_text_put(&w->text,
			ts_judge_hardly_any_kh(&w->wish)
				? " that keep company make more waste than a list for so little KH "
				  "leaves room for (--with asks for them), and others of black "
				  "water are for those who know them."
				: " that keep company make more waste than a list leaves room for "
				  "(--with asks for them), and no other is at home here.");
	} else {
		ts_text_put(&w->text, ts_judge_hardly_any_kh(&w->wish)
					      ? "with so little KH only animals of black water are "
						"proposed, and their waste is bounded."
					      : "none that fits this tank is at home here and goes "
						"with the rest.");
	}
}

/* A list of the fish of a lake stands behind the others, and is not made up as they are. */
static bool ends_with_lake(const struct ts_proposal *p)
{
	const struct ts_community *last = p->count ? &p->lists[p->count - 1] : NULL;

	return last && p->count > 1 && ts_compose_of_rift_lake(last->lines[0].group.species);
}

/* Fish of a lake alone are a list by themselves. */
static bool begins_with_lake(const struct ts_proposal *p)
{
	return ts_compose_of_rift_lake(p->lists[0].lines[0].group.species);
}

/* Kinds and places that a tank like this should have and the lists have not. */
static void missing(struct ts_proposing *w)
{
	const struct ts_proposal *p = &w->p;

	if (p->kinds_least < p->kinds_wanted) {
		ts_text_puts(&w->text, "A tank like this has room for ",
			say_number(p->kinds_wanted), " kinds of fish",
			p->lacks & TS_ROLE_BOTTOM ? ", one at the bottom" : "", NULL);
		if (p->kinds_least == 1)
			ts_text_put(&w->text,
				"; of those at home here no second one goes with the first.");
		else
			ts_text_puts(&w->text, "; of those at home here no more than ",
				say_number(p->kinds_least), " go together.", NULL);
	} else if (p->lacks & TS_ROLE_BOTTOM) {
		put_missing(w,
			ends_with_lake(p)
				? "But for the fish of the lake nobody lives at the bottom: "
				: "Nobody lives at the bottom: ",
			TS_ROLE_BOTTOM);
	}
	if (p->lacks & TS_ROLE_SHOAL)
		put_missing(w, "No shoal swims in the middle: ", TS_ROLE_SHOAL);
	if (p->lacks & TS_ROLE_CENTRE)
		put_missing(w, "Nothing larger to look at: ", TS_ROLE_CENTRE);
	if (p->sparse && !w->out->thin)
		ts_text_puts(&w->text, w->text.len ? " " : "",
			"At the bottom lives a single grazer: no group that does is at home here "
			"and "
			"goes with the rest.",
			NULL);
	if (p->slight && !w->out->thin)
		ts_text_puts(&w->text, w->text.len ? " " : "",
			"What there is to look at is small for this tank: nothing larger is at "
			"home here and goes with the rest.",
			NULL);
}

/* How far the lists are from what they should be. */
static void made_up(struct ts_proposing *w)
{
	const struct ts_proposal *p = &w->p;

	if (!p->count)
		return;
	if (p->reach == TS_REACH_ANY && !w->out->thin)
		ts_text_put(&w->text, w->wish.with_count
					      ? "Beside what you ask for not all are at "
						"their best here; they can live in it. "
					      : "Of what is sold nobody is quite at home in "
						"this water; these can live in it. ");
	if (!begins_with_lake(p))
		missing(w);
	w->out->made_up_says = w->text.len ? keep(w) : NULL;
}

/* Fewer lists than were asked for: no poor one is put in their place. */
static void fewer(struct ts_proposing *w)
{
	const struct ts_proposal *p = &w->p;

	if (!p->count || !p->exhausted || w->wish.lists <= p->count)
		return;
	ts_text_put(&w->text, "There is no further list that one would recommend: ");
	if (p->reach == TS_REACH_ANY) {
		ts_text_put(&w->text, "nobody else is nearer to being at home here.");
	} else {
		ts_text_puts(&w->text,
			p->candidates > FEW ? "" : "few kinds are at home here, and ",
			"what else goes together repeats these, or is far poorer.", NULL);
	}
	w->out->fewer_says = keep(w);
}

/* "Grown angelfish need a tank 95 cm long, and this one has 80." */
static void condition(struct ts_proposing *w, const struct ts_ruling *r)
{
	size_t end;

	ts_say_ruling(&w->text, r);
	ts_text_put(&w->text, "; ");
	end = w->text.len;
	ts_say_remedy(&w->text, r, false);
	if (w->text.len == end && end >= 2)
		w->text.len = end - 2; /* the sentence says it all */
	ts_text_put(&w->text, ".");
	ts_text_capital(&w->text, 0);
}

void ts_propose_conditions(
	struct ts_proposing *w, const struct ts_community *c, struct ts_texts *ret)
{
	for (size_t i = 0; i < c->count; i++) {
		for (size_t j = 0; j <= i; j++) {
			struct ts_rulings r = {.count = 0};

			if (i == j)
				ts_rules_alone(
					&c->lines[i].group, w->wish.tank, w->asking->practice, &r);
			else
				ts_rules_together(&c->lines[i].group, &c->lines[j].group,
					w->wish.tank, w->asking->practice, &r);
			for (size_t k = 0; k < r.count; k++) {
				if (r.at[k].severity < TS_QUESTION &&
					!ts_rule_of_room(r.at[k].rule))
					continue;
				condition(w, &r.at[k]);
				ts_asking_note(w->asking, ret, keep(w));
			}
		}
	}
}

void ts_propose_notes(struct ts_proposing *w)
{
	made_up(w);
	fewer(w);
	change(w);
	heater(w);
	needs(w);
	lid(w);
	males(w);
	buffer(w);
	maturing(w);
}

void ts_propose_waiting(struct ts_proposing *w)
{
	for (int i = 0; i < TS_PARAMETER__COUNT; i++) {
		if (w->p.waits[i] && could_be_surer(&w->profile.at[i], i))
			waiting_for(w, i);
	}
}
