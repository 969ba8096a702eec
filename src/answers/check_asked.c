/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What was asked beside the list: who could live there, how often water is changed, how much salt,
 * how pH or KH comes up. The question that was asked is answered in the first line; only what
 * cannot wait, and a no, go before it.
 */
#include "answers/check_parts.h"

#include <math.h>
#include <string.h>

#include "answers/rank.h"
#include "chem/hardness.h"
#include "chem/substances.h"
#include "stock/mending.h"
#include "stock/room.h"
#include "words/rulings.h"
#include "words/sentence.h"

const char *const ts_check_asked_words[] = {"fits", "change", "salt", "ph-up", "ph-down", "kh-up",
	"drink", "snails", "how-many", "away", "tank", "warmth", "arrive", "move", "young",
	"soften", "at-once", NULL};

static bool is_kind(const struct ts_check_work *w, enum ts_check_kind kind)
{
	return strcmp(w->out->kind, ts_check_kind_words[kind]) == 0;
}

/* What was the first line stands behind what was asked. */
static void put_before(struct ts_check_work *w, const char *says)
{
	struct ts_check_result *out = w->out;

	/* "Name the animals" is no answer, and what they share is said below. */
	if (!w->question->plan->stock_count && !w->check.water_known)
		out->decides = NULL;
	else if (out->decides && out->shared_says && strcmp(out->decides, out->shared_says) == 0)
		out->decides = out->headline;
	else
		out->decides = out->decides ? ts_arena_join(w->asking->arena, out->headline, " ",
						      out->decides, NULL)
					    : out->headline;
	out->headline = says;
}

/* Behind a danger and a no, else in front. */
static void say(struct ts_check_work *w, const char *says)
{
	if (!says)
		return;
	if (is_kind(w, TS_CHECK_DANGER) || is_kind(w, TS_CHECK_NO) || w->out->asked_says)
		w->out->asked_says = w->out->asked_says
					     ? ts_arena_join(w->asking->arena, w->out->asked_says,
						       " ", says, NULL)
					     : says;
	else
		put_before(w, says);
}

static bool advises(const struct ts_check_work *w, const char *id)
{
	return w->advice_count && strcmp(w->advice[0].row->id, id) == 0;
}

/* Somebody lives in a tank that is not a quarter of what it needs. */
static bool cramped(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];

		if (!g->planned && ts_check_far_too_small(w, &g->group))
			return true;
	}
	return false;
}

/* So much is changed every week where nothing says more (common practice, no source). */
#define USUAL_PERCENT 25
#define USUAL_DAYS 7
#define CRAMPED_DAYS 2

/* What waste asks for, or the usual. */
static void routine(const struct ts_check_work *w, double *ret_percent, double *ret_days)
{
	*ret_percent = USUAL_PERCENT;
	*ret_days = cramped(w) ? CRAMPED_DAYS : USUAL_DAYS;
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_remedy *r = &w->check.rulings[i].remedy;

		if (r->kind == TS_REMEDY_ROUTINE && r->percent > *ret_percent) {
			*ret_percent = r->percent;
			*ret_days = r->days > 0 ? r->days : *ret_days;
		}
	}
}

/* "Change 25 L of the 100 L every 7 days, ...". */
static const char *change_says(struct ts_check_work *w)
{
	double litres = w->question->plan->tank.volume_l, percent, days;

	/* What is to be done now says how much. */
	if (is_kind(w, TS_CHECK_DANGER))
		return NULL;
	routine(w, &percent, &days);
	if (litres > 0) {
		ts_text_put(&w->text, "Change ");
		ts_text_number_short(&w->text, litres * percent / 100, litres < 40 ? 1 : 0);
		ts_text_put(&w->text, " L of the ");
		ts_text_number_short(&w->text, litres, 0);
		ts_text_put(&w->text, " L every ");
	} else {
		ts_text_put(&w->text,
			percent == USUAL_PERCENT ? "Change a quarter of the water " : "Change ");
		if (percent != USUAL_PERCENT) {
			ts_text_number_short(&w->text, percent, 0);
			ts_text_put(&w->text, " % of the water ");
		}
		ts_text_put(&w->text, "every ");
	}
	ts_text_number_short(&w->text, days, 0);
	ts_text_puts(&w->text, " days, for treated water of the same warmth",
		days < USUAL_DAYS ? ", and test ammonia" : "", ".", NULL);
	return ts_asking_keep(w->asking, &w->text);
}

/* Salt in the tank against nitrite, g in 10 L (common practice, no source). */
#define SALT_G_10_L 1

static const char *salt_says(struct ts_check_work *w)
{
	double litres = w->question->plan->tank.volume_l;
	bool spots = advises(w, "vet.spots") || advises(w, "vet.spots-brought");

	/* It says how much, and who bears none. */
	if (advises(w, "now.nitrite"))
		return NULL;
	ts_text_puts(&w->text, spots ? "No salt beside the medicine" : "No salt as a habit",
		": fish of fresh water need none, and catfish, loaches, shrimps, snails and plants "
		"bear little. Against nitrite alone it helps: about 1 g of cooking salt without "
		"additives to 10 L",
		NULL);
	if (litres > 0) {
		ts_text_put(&w->text, ", so ");
		ts_text_number_short(&w->text, SALT_G_10_L * litres / 10, litres < 20 ? 1 : 0);
		ts_text_put(&w->text, " g here");
	}
	ts_text_put(&w->text, ".");
	return ts_asking_keep(w->asking, &w->text);
}

/* The first whom this pH is not comfortable for; NULL: it suits all, or is not known. */
static const struct ts_species *ph_misses(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_parameter_fit *fit = &w->check.groups[i].match.at[TS_PH];

		if (fit->known && fit->uncomfortable_by != 0)
			return w->check.groups[i].group.species;
	}
	return NULL;
}

/* KH is short, so that nothing holds the pH. */
static bool buffer_short(const struct ts_check_work *w)
{
	const struct ts_span *kh = &w->check.profile.at[TS_KH];

	return kh->given && kh->value < w->asking->practice->value[TS_P_KH_ACT];
}

/* "9 g of baking soda (sodium bicarbonate) in each 100 L of new water take KH from 1 to 4". */
static void put_soda(struct ts_check_work *w, double from, double to)
{
	double litres = w->question->plan->tank.volume_l;
	double g = ts_chem_substance_grams(
		ts_chem_substance("NaHCO3"), ts_chem_meq_l_from_dkh(to - from), 100);

	ts_text_number_short(&w->text, g, 0);
	ts_text_put(&w->text, " g of baking soda (sodium bicarbonate) in each 100 L of new water "
			      "take KH from ");
	ts_text_number_short(&w->text, from, 1);
	ts_text_put(&w->text, " to ");
	ts_text_number_short(&w->text, to, 1);
	if (litres > 0) {
		ts_text_put(&w->text, "; for all ");
		ts_text_number_short(&w->text, litres, 0);
		ts_text_put(&w->text, " L that is ");
		ts_text_number_short(&w->text, g * litres / 100, g * litres < 1000 ? 1 : 0);
		ts_text_put(&w->text, " g");
	}
	ts_text_put(&w->text, ". Where animals live, a degree of KH a week; pH follows by itself");
}

/* Soil or peat takes KH out of the water: what is said of them is the answer. */
static bool acid_bed(const struct ts_check_work *w)
{
	int bed = w->question->plan->tank.substrate;

	return bed == TS_SUBSTRATE_ACTIVE || bed == TS_SUBSTRATE_PEAT;
}

/* All live there, and nothing is to be done about their water. */
static bool kh_suits(const struct ts_check_work *w)
{
	return w->check.living_groups && !w->check.planned_groups && is_kind(w, TS_CHECK_WELL);
}

static const char *kh_says(struct ts_check_work *w)
{
	const struct ts_span *kh = &w->check.profile.at[TS_KH];
	double to = w->question->aim;

	if (advises(w, "now.crash") || advises(w, "old-tank"))
		return "Bring neither KH nor pH up at once: over ammonia a rising pH kills.";
	if (acid_bed(w))
		return NULL;
	if (!(to > 0) && kh->given && kh_suits(w))
		return "Leave KH as it is: it suits them, and they live in it.";
	if (!kh->given)
		return "Test KH first, with drops: then the grams can be said (3 g of baking soda "
		       "in 100 L make one degree).";
	if (!(to > kh->value))
		to = fmax(ceil(kh->value) + 1, w->asking->practice->value[TS_P_KH_ACT] + 2);
	put_soda(w, kh->value, to);
	ts_text_put(&w->text, ".");
	return ts_asking_keep(w->asking, &w->text);
}

static const char *ph_says(struct ts_check_work *w, bool up)
{
	const struct ts_profile *p = &w->check.profile;
	const struct ts_species *missed = ph_misses(w);

	if (advises(w, "now.crash") || advises(w, "old-tank"))
		return "Do not raise the pH now: over ammonia a rising pH kills. It comes back by "
		       "itself with small changes of water that has KH.";
	/* It was said already. */
	if (strstr(w->out->headline, "eave the pH alone"))
		return NULL;
	if (up && buffer_short(w) && w->check.living_groups) {
		ts_text_put(&w->text, "No pH product: KH holds the pH, and it is short. ");
		put_soda(w, p->at[TS_KH].value,
			fmax(ceil(p->at[TS_KH].value) + 1,
				w->asking->practice->value[TS_P_KH_ACT] + 2));
		ts_text_put(&w->text, ".");
		return ts_asking_keep(w->asking, &w->text);
	}
	ts_text_puts(&w->text, "Leave the pH alone, and pour no product against it: ", NULL);
	if (!p->at[TS_GH].given || !p->at[TS_KH].given)
		ts_text_puts(&w->text, "test ", p->at[TS_GH].given ? "" : "GH",
			!p->at[TS_GH].given && !p->at[TS_KH].given ? " and " : "",
			p->at[TS_KH].given ? "" : "KH", ", which decide",
			p->at[TS_GH].given || p->at[TS_KH].given ? "s" : "",
			up ? " who can live there and hold it."
			   : " who can live there. KH holds the pH up; where animals need it "
			     "softer, part rain or reverse-osmosis water, and the pH follows.",
			NULL);
	else if (w->check.group_count && !missed)
		ts_text_put(&w->text, "it suits them as it is.");
	else
		ts_text_put(
			&w->text, up ? "it follows KH, and hardness decides who can live there."
				     : "it follows KH, and hardness decides who can live there: "
				       "part rain or reverse-osmosis water lowers both.");
	return ts_asking_keep(w->asking, &w->text);
}

/* More of one kind than this nobody asks about. */
#define MANY_MOST 60

/* "8 to 14 neon tetras." */
static const char *how_many_says(struct ts_check_work *w)
{
	const struct ts_plan_group *g = NULL;
	double least, most;

	for (size_t i = 0; i < w->check.group_count; i++) {
		if (w->check.groups[i].planned)
			g = &w->check.groups[i];
	}
	if (!g || !(w->question->plan->tank.volume_l > 0) || is_kind(w, TS_CHECK_NO) ||
		is_kind(w, TS_CHECK_DANGER) || is_kind(w, TS_CHECK_QUESTION))
		return NULL;
	least = ceil(g->group.species->group.comfortable);
	most = ts_group_count(&g->group);
	while (most < MANY_MOST &&
		ts_check_more_fit(w, g->group.species, most + 1 - ts_group_count(&g->group)))
		most++;
	if (most < least)
		return NULL;
	ts_text_number_short(&w->text, least, 0);
	if (most > least) {
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, most, 0);
	}
	ts_text_put(&w->text, " ");
	(most > 1 ? ts_say_animals : ts_say_animal)(&w->text, g->group.species);
	ts_text_puts(&w->text, most < MANY_MOST ? ", by the room" : ", and room for more",
		w->check.living_groups || w->check.group_count > 1 ? " beside the others" : "", ".",
		NULL);
	return ts_asking_keep(w->asking, &w->text);
}

/* Who suits the water and fits the tank, in the order of rank, as the first line. */
static void lead_with_choices(struct ts_check_work *w)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_tank tank = plan->tank;
	const struct ts_keeping keeping = {.temperature = tank.temp_c};
	bool sides = tank.length_cm > 0 && tank.width_cm > 0;
	struct ts_rank_question q = {.profile = &w->check.profile,
		.keeping = &keeping,
		.tank = sides || tank.volume_l > 0 ? &tank : NULL,
		.assumed_litres = sides ? 0 : tank.volume_l,
		.catalogue_count = w->asking->species_count};
	struct ts_rank_result r;

	if (!sides && tank.volume_l > 0)
		ts_room_usual_sides(tank.volume_l, &tank);
	if (!ts_answer_rank(w->asking, &q, &r))
		return;
	/* That nobody is named is what was asked. */
	for (size_t i = 0; i < w->entry_count; i++)
		w->out->judgements[i].folded |=
			strcmp(w->out->judgements[i].code, "stock.empty") == 0;
	ts_text_put(&w->text, r.headline);
	ts_check_finish(w, r.suits ? TS_CHECK_TEND : TS_CHECK_QUESTION, w->entry_count,
		r.choices ? r.choices : r.deciding);
}

static bool poisoned_water(const struct ts_check_work *w)
{
	return w->out->first &&
	       (strstr(w->out->first->code, "ammonia") || strstr(w->out->first->code, "nitrite"));
}

static void answer_fits(struct ts_check_work *w)
{
	const struct ts_check_result *out = w->out;

	if (w->question->plan->stock_count) {
		const char *headline = out->headline, *instead = out->instead_says;

		if (instead || is_kind(w, TS_CHECK_DANGER) || is_kind(w, TS_CHECK_QUESTION) ||
			!w->check.water_known || !ts_check_name_for_water(w, TS_ANIMAL_FISH))
			return;
		w->out->headline = headline;
		w->out->asked_says = w->out->instead_says;
		w->out->instead_says = NULL;
		return;
	}
	if ((!w->check.water_known && !(w->question->asked & TS_ASKED_FITS)) ||
		ts_check_filter_first(w) || poisoned_water(w) || out->first)
		return;
	lead_with_choices(w);
}

/* The advice for so many days; what is to be done now goes before it all the same. */
static const char *away_says(struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_advice *a = w->entries[i].advice;

		if (a && strncmp(a->row->id, "away", strlen("away")) == 0 &&
			&w->out->judgements[i] != w->out->first) {
			w->out->judgements[i].folded = true;
			return w->out->judgements[i].says;
		}
	}
	return NULL;
}

/* Texts that hang on nothing. */
static const struct {
	unsigned asked;
	const char *says;
} texts[] = {
	{TS_ASKED_DRINK, "No aquarium test says whether people may drink it: ask the supplier or "
			 "the health authority before anybody does."},
	{TS_ASKED_SNAILS,
		"Feed less, and take out what you see, by hand or on a slice of cucumber "
		"overnight: "
		"snails eat what is left over, and harm nobody. No poison: copper kills shrimps, "
		"and dead snails foul the water."},
	{TS_ASKED_ARRIVE,
		"Float the closed bag for a quarter of an hour, then drip tank water into theirs "
		"for half an hour, shrimps and snails for an hour or two, and lift them over with "
		"a net, without the bag's water; out of a bag of a day or more at once, as soon as "
		"it is as warm. Light off, and nothing to eat that day."},
	{TS_ASKED_MOVE,
		"Nothing to eat for two days before; carry them in the tank's own water, the "
		"filter's sponge wet in some of it, and set the tank up the same evening with that "
		"water (tapshoal what-if move says it in order)."},
	{TS_ASKED_AT_ONCE,
		"Not all at once: buy in thirds, 14 days apart, with a test of ammonia and nitrite "
		"before each, since a filter grows with what it is given."},
	{TS_ASKED_YOUNG,
		"Keep one sex alone: bring the others to the shop or to a keeper; females bear for "
		"months after the last male has gone. What hides less is eaten more: fewer plants. "
		"Never release one."},
};

/* "The smallest tank that would do: 60 x 30 cm, 30 cm high, 54 litres." */
static const char *tank_says(const struct ts_check_work *w)
{
	return w->out->room_says && strstr(w->out->room_says, "smallest tank") ? w->out->room_says
									       : NULL;
}

static const char *warmth_says(struct ts_check_work *w)
{
	const struct ts_range *t = &w->check.shared.at[TS_TEMPERATURE];

	if (!w->check.group_count || isnan(t->low) || t->low > t->high)
		return NULL;
	ts_text_put(&w->text, "Keep it at ");
	ts_text_number_short(&w->text, t->low, 1);
	if (t->high > t->low) {
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, t->high, 1);
	}
	ts_text_puts(&w->text,
		w->check.shared.comfortable[TS_TEMPERATURE] ? " C." : " C, which all bear.", NULL);
	return ts_asking_keep(w->asking, &w->text);
}

/* The recipe before whoever likes the water as it is: that is what was asked. */
static void answer_soften(struct ts_check_work *w)
{
	struct ts_check_result *out = w->out;

	if (out->otherwise && out->instead_says) {
		say(w, out->otherwise);
		out->otherwise = NULL;
	}
}

void ts_check_asked(struct ts_check_work *w)
{
	unsigned asked = w->question->asked;

	/* With water known and nobody named, names say more than where they stand. */
	if (asked & TS_ASKED_FITS ||
		(!asked && w->question->read_as && !w->question->plan->stock_count))
		answer_fits(w);
	if (asked & TS_ASKED_HOW_MANY)
		say(w, how_many_says(w));
	if (asked & (TS_ASKED_PH_UP | TS_ASKED_PH_DOWN))
		say(w, ph_says(w, asked & TS_ASKED_PH_UP));
	else if (asked & TS_ASKED_KH_UP)
		say(w, kh_says(w));
	if (asked & TS_ASKED_SALT)
		say(w, salt_says(w));
	if (asked & TS_ASKED_CHANGE)
		say(w, change_says(w));
	if (asked & TS_ASKED_WARMTH)
		say(w, warmth_says(w));
	if (asked & TS_ASKED_SOFTEN)
		answer_soften(w);
	if (asked & TS_ASKED_AWAY)
		say(w, away_says(w));
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		if (asked & texts[i].asked)
			say(w, texts[i].says);
	}
}

void ts_check_asked_room(struct ts_check_work *w)
{
	const char *says = w->question->asked & TS_ASKED_TANK ? tank_says(w) : NULL;

	if (!says)
		return;
	say(w, says);
	w->out->room_says = NULL;
}
