/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rules of one record about how the animal lives: what it says in one place may not contradict what
 * it says in another.
 */
#include <tapshoal/match.h>

#include <string.h>

#include "catalogue/lint.h"
#include "stock/rules.h"

/* Words of a record by index (model/shapes.c) that these rules ask about. */
enum { HUNTS_GRAZER, HUNTS_FISH = 4 };
enum { GAPE_NIBBLER, GAPE_PREDATOR = 3 };
enum { HUNTS_INVERTEBRATES = 3, ACTIVITY_SITTER = 1, BOTTOM_SAND = 2 };
enum { DIET_OMNIVORE, DIET_HERBIVORE, DIET_CARNIVORE };
enum { FEEDING_LIVE = 3, FEEDING_SHELLS = 10 };
enum { PER_ANIMAL };
enum { LAKES_NO, LAKES_OWN, LAKES_BY_CUSTOM };

enum { SEXES_PAIR = 1, SEXES_ALONE = 5 };
enum { SWIMS_BOTTOM };
enum { BOTTOM_ANY };

/* Beyond this length a fish outgrows what a buyer expects. */
#define GROWN_CM 25

/* A tank of this length is in no home; a life of so few years is short, one of so many is not. */
#define HOME_TANK_CM 300
#define SHORT_YEARS 2
#define LONG_YEARS 5

static bool has(const struct ts_species *s, enum ts_species_caution caution)
{
	return s->cautions & 1u << caution;
}

/* What the record says that one of its cautions must say too; NULL: nothing is missing. */
static const char *unsaid(const struct ts_species *s)
{
	const struct ts_range *salt = &s->water.usual.salinity_g_l.tolerated;
	bool salted = salt->low > 0.5;

	if (s->feeding == FEEDING_LIVE && !has(s, TS_CAUTION_HARD_TO_FEED))
		return "it takes live food, and cautions do not name hard-to-feed";
	if (s->feeding == FEEDING_SHELLS && !has(s, TS_CAUTION_HARD_TO_FEED))
		return "its teeth need shells, and cautions do not name hard-to-feed";
	if (ts_match_tank_length_cm(s) >= HOME_TANK_CM && !has(s, TS_CAUTION_NO_HOME_SUITS))
		return "its least tank is in no home, and cautions do not name no-home-suits";
	if (s->kind == TS_ANIMAL_FISH && s->adult_length_cm >= GROWN_CM &&
		!has(s, TS_CAUTION_GROWS_TOO_BIG))
		return "it grows to 25 cm or more, and cautions do not name grows-too-big";
	if (salted != has(s, TS_CAUTION_NEEDS_SALT))
		return salted ? "it lives in salt, and cautions do not name needs-salt"
			      : "cautions name needs-salt, and its salinity begins with fresh "
				"water";
	if (s->lives_years.high <= SHORT_YEARS && !has(s, TS_CAUTION_SHORT_LIVED))
		return "it lives two years at the most, and cautions do not name short-lived";
	if (s->lives_years.high > LONG_YEARS && has(s, TS_CAUTION_SHORT_LIVED))
		return "cautions name short-lived, and it lives more than five years";
	return NULL;
}

static bool cautions(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const char *missing = unsaid(s);

	(void)lint;
	ts_text_put(what, missing ? missing : "");
	return !missing;
}

/* Floor of the smallest company in which it is settled, m2. */
static double settled_floor_m2(const struct ts_species *s)
{
	double units = s->territory.per == PER_ANIMAL && !s->group.pair ? s->group.least : 1;
	double apart = s->territory.floor_m2 * units;

	return s->territory.group_m2 > 0 && !s->group.pair ? fmin(apart, s->territory.group_m2)
							   : apart;
}

/* A least tank is three times as long as wide, so its floor is a third of its length squared. */
static bool floors(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	double length_m = ts_match_tank_length_cm(s) / 100;
	double has_m2 = length_m * length_m / 3, wants_m2 = settled_floor_m2(s);

	(void)lint;
	if (wants_m2 <= has_m2 + 0.005)
		return true;
	ts_text_put(what, "it defends ");
	ts_text_number_short(what, wants_m2, 2);
	ts_text_put(what, " m2, and its least tank of ");
	ts_text_number_short(what, 100 * length_m, 0);
	ts_text_put(what, " cm has ");
	ts_text_number_short(what, has_m2, 2);
	ts_text_put(what, " at 3:1");
	return false;
}

static bool hunts(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const char *wrong = NULL;

	(void)lint;
	if (s->gape >= GAPE_PREDATOR && s->hunts != HUNTS_FISH)
		wrong = "a mouth that swallows half its length hunts fish";
	else if (s->diet == DIET_CARNIVORE && s->hunts == HUNTS_GRAZER)
		wrong = "a carnivore is no grazer";
	else if (s->diet == DIET_HERBIVORE && s->hunts == HUNTS_FISH)
		wrong = "a herbivore hunts no fish";
	ts_text_put(what, wrong ? wrong : "");
	return !wrong;
}

/* Up to this length a cichlid that hunts is of a kind with more than a nibbler's mouth. */
#define SMALL_CICHLID_CM 12
/* From this length a long body is no mouth for prey half as deep as it is long itself. */
#define LONG_BODY_CM 35

/*
 * What a whole kind does, so that no record of it says otherwise: who grazes its way over stones
 * and panes is no sitter, and a small cichlid that hunts and does not sift takes more than a tenth
 * of its length; the grazers of Lake Malawi have such a mouth too. Large fish with long bodies
 * (gars, snakeheads, shovelnoses) take no prey half as deep as they are long.
 */
static bool kinds(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	bool grazes_about =
		s->kind == TS_ANIMAL_SNAIL || strcmp(s->family, "Gastromyzontidae") == 0;
	bool small_hunter = s->hunts == HUNTS_INVERTEBRATES && s->needs.bottom != BOTTOM_SAND &&
			    s->adult_length_cm <= SMALL_CICHLID_CM;
	bool long_body = s->adult_length_cm >= LONG_BODY_CM &&
			 (s->body == TS_BODY_ELONGATED || s->body == TS_BODY_EEL);
	bool malawi_grazer = s->home_water == TS_HOME_MALAWI && s->hunts == HUNTS_GRAZER;
	const char *wrong = NULL;

	(void)lint;
	if (grazes_about && s->needs.activity == ACTIVITY_SITTER)
		wrong = "its kind grazes its way about, and activity is sitter";
	else if (s->gape == GAPE_NIBBLER && strcmp(s->family, "Cichlidae") == 0 &&
		 (small_hunter || malawi_grazer))
		wrong = "cichlids of its kind swallow more than a tenth of their length, and gape "
			"is nibbler";
	else if (s->gape >= GAPE_PREDATOR && long_body)
		wrong = "a long body takes no prey half as deep as it is long, and gape says so";
	ts_text_put(what, wrong ? wrong : "");
	return !wrong;
}

static bool lakes(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	bool home = s->home_water == TS_HOME_MALAWI || s->home_water == TS_HOME_TANGANYIKA ||
		    s->home_water == TS_HOME_VICTORIA;

	(void)lint;
	if (home ? s->lakes_apart != LAKES_NO : s->lakes_apart != LAKES_OWN)
		return true;
	ts_text_put(what, home ? "it is of a lake, and lakes_apart is no"
			       : "lakes_apart is yes, and its home water is no rift lake");
	return false;
}

static bool temper(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	(void)lint;
	if (!s->temper == !s->to_others)
		return true;
	ts_text_put(what, s->to_others ? "to_others is not ignores, and temper names nobody"
				       : "to_others is ignores, and temper names some");
	return false;
}

/* Families of the ground whose feelers wear off on coarse gravel. */
static const char *const barbelled[] = {"Ariidae", "Aspredinidae", "Bagridae", "Botiidae",
	"Callichthyidae", "Chacidae", "Clariidae", "Cobitidae", "Doradidae", "Heteropneustidae",
	"Ictaluridae", "Mochokidae", "Nemacheilidae", "Pimelodidae", "Pseudopimelodidae"};

static bool bottom(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	(void)lint;
	if (s->swims != SWIMS_BOTTOM || s->needs.bottom != BOTTOM_ANY)
		return true;
	for (size_t i = 0; i < sizeof barbelled / sizeof *barbelled; i++) {
		if (strcmp(s->family, barbelled[i]) != 0)
			continue;
		ts_text_puts(what, s->family, " feel their way over the ground with barbels, and ",
			"needs.bottom is any", NULL);
		return false;
	}
	return true;
}

static bool sexes(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	double most = s->group.sexes == SEXES_PAIR ? 2 : s->group.sexes == SEXES_ALONE ? 1 : 0;

	(void)lint;
	if (!(most > 0) || s->group.least <= most)
		return true;
	ts_text_puts(what, most == 2 ? "a pair" : "one that lives alone", ", and least is ", NULL);
	ts_text_number(what, s->group.least, 0);
	return false;
}

/* Sea salt brings some 10 dH of hardness for each g/L (sea water of 35 g/L has about 350). */
#define SALT_GH_DH 10
#define GH_READ_MOST_DH 200 /* no record says more */

static double salt_gh_dh(double salinity_g_l)
{
	return fmin(SALT_GH_DH * salinity_g_l, GH_READ_MOST_DH) - 1e-9;
}

/*
 * Brackish water is its home, or it may live in fresh water: never one without the other; and the
 * hardness it bears is that of the salt it bears, or hardness would shut it out of its own water.
 */
static bool salt(const struct ts_lint *lint, const struct ts_species *s, struct ts_text *what)
{
	const struct ts_envelopes *usual = &s->water.usual;
	const struct ts_range *salinity = &usual->salinity_g_l.tolerated;
	bool brackish = s->home_water == TS_HOME_BRACKISH;
	const char *wrong = NULL;

	(void)lint;
	if (brackish && isnan(salinity->low))
		wrong = "its home is brackish water, and no salinity is given";
	else if (!brackish && salinity->low > 0.5)
		wrong = "it needs salt, and its home water is not brackish";
	else if (brackish && usual->gh_dh.tolerated.high < salt_gh_dh(salinity->high))
		wrong = "it bears more salt than GH, and 1 g/L of sea salt brings 10 dH";
	ts_text_put(what, wrong ? wrong : "");
	return !wrong;
}

const struct ts_lint_rule ts_lint_habit_rules[] = {
	{TS_C_LINT_BOTTOM, "needs", bottom},
	{TS_C_LINT_CAUTIONS, "cautions", cautions},
	{TS_C_LINT_FLOOR, "territory", floors},
	{TS_C_LINT_HUNTS, "hunts", hunts},
	{TS_C_LINT_KIND, "kind", kinds},
	{TS_C_LINT_LAKES, "lakes_apart", lakes},
	{TS_C_LINT_SALT, "water", salt},
	{TS_C_LINT_SEXES, "group", sexes},
	{TS_C_LINT_TEMPER, "temper", temper},
};
const size_t ts_lint_habit_rules_count = sizeof ts_lint_habit_rules / sizeof *ts_lint_habit_rules;
