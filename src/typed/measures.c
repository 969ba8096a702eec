/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Figures of a sentence. What is read is called by a key before or behind its figure; a unit alone
 * tells what it can mean only one thing by. A figure that could mean two things is taken in the
 * sense in which it is more dangerous, and that is said.
 */
#include <math.h>
#include <string.h>

#include "model/shape.h"
#include "records/value.h"
#include "typed/reader.h"

/* Ways to write a unit, and how the flag's value has it. */
enum unit {
	NO_UNIT,
	MG_L,
	MG_L_N,
	MG_L_NO2,
	MG_L_NO3,
	MG_L_NH3,
	MG_L_NH4,
	UG_L,
	G_L,
	DEGREES,
	DH,
	DGH,
	DKH,
	FH,
	CLARK,
	GRAINS,
	MEQ_L,
	MMOL_L,
	CELSIUS,
	FAHRENHEIT,
	LITRES,
	GALLONS,
	UK_GALLONS,
	CM,
	INCHES,
	FEET,
	US_CM,
	MS_CM,
	PERCENT,
};

/* The longer first where one begins with another. */
static const struct {
	const char *words;
	enum unit unit;
} units[] = {
	{"mg/l no2-n", MG_L_N},
	{"mg/l no3-n", MG_L_N},
	{"mg/l n", MG_L_N},
	{"ppm n", MG_L_N},
	{"mg/l no2", MG_L_NO2},
	{"mg/l no3", MG_L_NO3},
	{"mg/l nh3", MG_L_NH3},
	{"mg/l nh4", MG_L_NH4},
	{"ppm nh3", MG_L_NH3},
	{"ppm nh4", MG_L_NH4},
	{"ppm no2", MG_L_NO2},
	{"ppm no3", MG_L_NO3},
	{"mg/l", MG_L},
	{"mg/lt", MG_L},
	{"mg/ltr", MG_L},
	{"mg/litre", MG_L},
	{"mg/liter", MG_L},
	{"mg per litre", MG_L},
	{"mg per liter", MG_L},
	{"mg per l", MG_L},
	{"mgl", MG_L},
	{"mg", MG_L},
	{"milligrams per litre", MG_L},
	{"milligrams per liter", MG_L},
	{"milligrams", MG_L},
	{"parts per million", MG_L},
	{"ppm", MG_L},
	{"ug/l", UG_L},
	{"ppb", UG_L},
	{"g/l", G_L},
	{"ppt", G_L},
	{"german degrees", DH},
	{"degrees german", DH},
	{"degrees of hardness", DH},
	{"degrees dh", DH},
	{"degrees gh", DGH},
	{"degrees kh", DKH},
	{"degrees celsius", CELSIUS},
	{"degrees centigrade", CELSIUS},
	{"degrees c", CELSIUS},
	{"degree c", CELSIUS},
	{"deg c", CELSIUS},
	{"degrees fahrenheit", FAHRENHEIT},
	{"degrees f", FAHRENHEIT},
	{"deg f", FAHRENHEIT},
	{"degrees", DEGREES},
	{"degree", DEGREES},
	{"deg", DEGREES},
	{"\xc2\xb0", DEGREES},
	{"dh", DH},
	{"\xc2\xb0"
	 "dh",
		DH},
	{"\xc2\xb0 dh", DH},
	{"dgh", DGH},
	{"\xc2\xb0"
	 "dgh",
		DGH},
	{"dkh", DKH},
	{"\xc2\xb0"
	 "dkh",
		DKH},
	{"fh", FH},
	{"\xc2\xb0"
	 "fh",
		FH},
	{"clark", CLARK},
	{"grains", GRAINS},
	{"gpg", GRAINS},
	{"meq/l", MEQ_L},
	{"mmol/l", MMOL_L},
	{"mmol per litre", MMOL_L},
	{"mmol per liter", MMOL_L},
	{"mmol per l", MMOL_L},
	{"millimol per litre", MMOL_L},
	{"mmol", MMOL_L},
	{"celsius", CELSIUS},
	{"centigrade", CELSIUS},
	{"c", CELSIUS},
	{"\xc2\xb0"
	 "c",
		CELSIUS},
	{"\xc2\xb0 c", CELSIUS},
	{"fahrenheit", FAHRENHEIT},
	{"f", FAHRENHEIT},
	{"\xc2\xb0"
	 "f",
		FAHRENHEIT},
	{"\xc2\xb0 f", FAHRENHEIT},
	{"l", LITRES},
	{"lt", LITRES},
	{"ltr", LITRES},
	{"ltrs", LITRES},
	{"litre", LITRES},
	{"litres", LITRES},
	{"liter", LITRES},
	{"liters", LITRES},
	{"uk gallons", UK_GALLONS},
	{"uk gallon", UK_GALLONS},
	{"imperial gallons", UK_GALLONS},
	{"us gallons", GALLONS},
	{"us gallon", GALLONS},
	{"gallon", GALLONS},
	{"gallons", GALLONS},
	{"gal", GALLONS},
	{"gals", GALLONS},
	{"cm", CM},
	{"centimetres", CM},
	{"centimeters", CM},
	{"inches", INCHES},
	{"inch", INCHES},
	{"in", INCHES},
	{"foot", FEET},
	{"feet", FEET},
	{"ft", FEET},
	{"us/cm", US_CM},
	{"\xc2\xb5s/cm", US_CM},
	{"\xce\xbcs/cm", US_CM},
	{"ms/cm", MS_CM},
	{"percent", PERCENT},
	{"%", PERCENT},
};
#define UNITS (sizeof units / sizeof *units)

/* How the values of flags write them. */
static const char *const written[] = {
	[NO_UNIT] = "",
	[MG_L] = " mg/L",
	[MG_L_N] = " mg/L N",
	[MG_L_NO2] = " mg/L",
	[MG_L_NO3] = " mg/L",
	[MG_L_NH3] = " mg/L NH3",
	[MG_L_NH4] = " mg/L NH4",
	[UG_L] = " ug/L",
	[G_L] = " g/L",
	[DEGREES] = "",
	[DH] = " dH",
	[DGH] = " dH",
	[DKH] = " dH",
	[FH] = " fH",
	[CLARK] = " Clark",
	[GRAINS] = " gpg",
	[MEQ_L] = " meq/L",
	[MMOL_L] = " mmol/L",
	[CELSIUS] = " C",
	[FAHRENHEIT] = " F",
	[LITRES] = " L",
	[GALLONS] = " gallons",
	[UK_GALLONS] = " UK gal",
	[CM] = " cm",
	[INCHES] = " in",
	[FEET] = "",
	[US_CM] = " uS/cm",
	[MS_CM] = " mS/cm",
	[PERCENT] = " %",
};

#define BIT(unit) (1u << (unit))
#define HARD                                                                                       \
	(BIT(DH) | BIT(DGH) | BIT(DKH) | BIT(FH) | BIT(CLARK) | BIT(GRAINS) | BIT(MEQ_L) |         \
		BIT(MMOL_L) | BIT(DEGREES))
#define MASS (BIT(MG_L) | BIT(UG_L) | BIT(G_L))
#define AMMONIA (MASS | BIT(MG_L_N) | BIT(MG_L_NH3) | BIT(MG_L_NH4))
#define NITROGEN (MASS | BIT(MG_L_N) | BIT(MG_L_NO2) | BIT(MG_L_NO3) | BIT(MMOL_L))

/*
 * What is read: its names, its flag, the units it can have, and the one of a bare figure.
 */
static const struct key {
	const char *words, *flag;
	unsigned units;
	enum unit bare;
} keys[] = {
	{"general hardness", "--GH", HARD | MASS, NO_UNIT},
	{"total hardness", "--GH", HARD | MASS, NO_UNIT},
	{"carbonate hardness", "--KH", HARD | MASS, NO_UNIT},
	{"water hardness", "--GH", HARD | MASS, NO_UNIT},
	{"gh", "--GH", HARD | MASS, NO_UNIT},
	{"dgh", "--GH", HARD | MASS, NO_UNIT},
	{"dkh", "--KH", HARD | MASS, NO_UNIT},
	{"hardness", "--GH", HARD | MASS, NO_UNIT},
	{"kh", "--KH", HARD | MASS, NO_UNIT},
	{"alkalinity", "--KH", HARD | MASS, NO_UNIT},
	{"ph level", "--pH", 0, NO_UNIT},
	{"ph value", "--pH", 0, NO_UNIT},
	{"ph", "--pH", 0, NO_UNIT},
	{"water temperature", "--temperature", BIT(CELSIUS) | BIT(FAHRENHEIT) | BIT(DEGREES),
		DEGREES},
	{"temperature", "--temperature", BIT(CELSIUS) | BIT(FAHRENHEIT) | BIT(DEGREES), DEGREES},
	{"temp", "--temperature", BIT(CELSIUS) | BIT(FAHRENHEIT) | BIT(DEGREES), DEGREES},
	{"nitrite-n", "--NO2-N", MASS | BIT(MG_L_N), MG_L},
	{"no2-n", "--NO2-N", MASS | BIT(MG_L_N), MG_L},
	{"nitrite nitrogen", "--NO2-N", MASS | BIT(MG_L_N), MG_L},
	{"nitrites", "--NO2", NITROGEN, MG_L},
	{"nitrite", "--NO2", NITROGEN, MG_L},
	{"nitrit", "--NO2", NITROGEN, MG_L},
	{"no2-", "--NO2", NITROGEN, MG_L},
	{"no2", "--NO2", NITROGEN, MG_L},
	{"nitrate-n", "--NO3-N", MASS | BIT(MG_L_N), MG_L},
	{"no3-n", "--NO3-N", MASS | BIT(MG_L_N), MG_L},
	{"nitrate nitrogen", "--NO3-N", MASS | BIT(MG_L_N), MG_L},
	{"nitrates", "--NO3", NITROGEN, MG_L},
	{"nitrate", "--NO3", NITROGEN, MG_L},
	{"no3-", "--NO3", NITROGEN, MG_L},
	{"no3", "--NO3", NITROGEN, MG_L},
	{"total ammonia nitrogen", "--ammonia", AMMONIA, MG_L},
	{"total ammonia", "--ammonia", AMMONIA, MG_L},
	{"ammonia", "--ammonia", AMMONIA, MG_L},
	{"ammonium", "--ammonia", AMMONIA, MG_L},
	{"nh3/nh4+", "--ammonia", AMMONIA, MG_L},
	{"nh3/nh4", "--ammonia", AMMONIA, MG_L},
	{"nh4/nh3", "--ammonia", AMMONIA, MG_L},
	{"nh3", "--ammonia", AMMONIA, MG_L},
	{"nh4", "--ammonia", AMMONIA, MG_L},
	{"copper", "--Cu", MASS, MG_L},
	{"cu", "--Cu", MASS, MG_L},
	{"free chlorine", "--chlorine", MASS, MG_L},
	{"total chlorine", "--chlorine", MASS, MG_L},
	{"chlorine", "--chlorine", MASS, MG_L},
	{"chloramine", "--chlorine", MASS, MG_L},
	{"cl2", "--chlorine", MASS, MG_L},
	{"dissolved oxygen", "--oxygen", MASS, MG_L},
	{"oxygen", "--oxygen", MASS, MG_L},
	{"o2", "--oxygen", MASS, MG_L},
	{"tds", "--TDS", MASS, NO_UNIT},
	{"conductivity", "--conductivity", BIT(US_CM) | BIT(MS_CM), NO_UNIT},
	{"ec", "--conductivity", BIT(US_CM) | BIT(MS_CM), NO_UNIT},
	{"phosphates", "--phosphate", MASS, MG_L},
	{"phosphate", "--phosphate", MASS, MG_L},
	{"po4", "--phosphate", MASS, MG_L},
	{"calcium", "--Ca", MASS, MG_L},
	{"magnesium", "--Mg", MASS, MG_L},
	{"salinity", "--salinity", MASS, G_L},
	{"specific gravity", "--specific-gravity", 0, NO_UNIT},
};
#define KEYS (sizeof keys / sizeof *keys)

/* Between a key and its figure. */
static const char *const links[] = {"is", "are", "was", "were", "of", "at", "around", "about",
	"approximately", "approx", "roughly", "=", "reads", "read", "reading", "shows", "level",
	"levels", "test", "tests", "tested", "value", "still", "now", "only", "nearly", "almost",
	"over", "above", "in", "the", "tank", "water", "it", "stuck", "up", "to", "measured",
	"came", "out", "back", "as", "says", "a", "set", "kept", "well", "already", "constantly",
	"currently", "shot", "spiked", "rose", "fell", "dropped", "went", "has", "risen", "my",
	"have", "fallen"};
#define LINKS_MOST 6

static const char *const below[] = {"<", "below", "under"};
/* A figure in words. */
static const char *const nil[] = {
	"nil", "zero", "none", "undetectable", "nothing", "nill", "negative", "absent"};

static bool is_key_too(enum unit unit)
{
	return unit == DGH || unit == DKH;
}

static size_t unit_here(const struct ts_typed *t, size_t at, enum unit *ret)
{
	for (size_t i = 0; i < UNITS; i++) {
		size_t used = ts_typed_phrase(t, at, units[i].words);

		/* "24 degrees gh 8", "18 dkh 10": the key of the next figure. */
		if (used && is_key_too(units[i].unit) && at + used < t->count &&
			ts_typed_is_figure(t->word[at + used]))
			continue;
		if (used) {
			*ret = units[i].unit;
			return used;
		}
	}
	*ret = NO_UNIT;
	return 0;
}

bool ts_typed_unit(const char *word)
{
	for (size_t i = 0; i < UNITS; i++) {
		if (ts_typed_is(word, units[i].words))
			return true;
	}
	return ts_typed_is(word, "g") || ts_typed_is(word, "gh") || ts_typed_is(word, "kh");
}

static const struct key *key_here(const struct ts_typed *t, size_t at, size_t *ret_used)
{
	for (size_t i = 0; i < KEYS; i++) {
		size_t used = ts_typed_phrase(t, at, keys[i].words);

		if (used) {
			*ret_used = used;
			return &keys[i];
		}
	}
	*ret_used = 0;
	return NULL;
}

const char *ts_typed_key(const struct ts_typed *t, size_t at, size_t *ret_used)
{
	const struct key *key = key_here(t, at, ret_used);

	return key ? key->flag : NULL;
}

/* A figure as it stands: "5", "<0.05", "nil", "between 6 and 7", "0.25 - 0.5". */
struct figure {
	const char *text; /* as a flag's value has it */
	double number;    /* the higher end */
	size_t used;
};

static size_t range_link(const struct ts_typed *t, size_t at)
{
	static const char *const to[] = {"to", "-", "or", "and"};

	return at + 1 < t->count && TS_TYPED_AMONG(t->word[at], to) &&
	       ts_typed_is_figure(t->word[at + 1]);
}

static bool figure_here(const struct ts_typed *t, size_t at, struct figure *ret)
{
	size_t start = at;
	bool less = false, between;

	if (at < t->count && TS_TYPED_AMONG(t->word[at], below)) {
		less = true;
		at++;
	} else if (at < t->count && ts_typed_is(t->word[at], ">")) {
		at++;
	}
	between = at < t->count && ts_typed_is(t->word[at], "between");
	at += between;
	if (at < t->count && TS_TYPED_AMONG(t->word[at], nil)) {
		*ret = (struct figure){"0", 0, at + 1 - start};
		return true;
	}
	if (at >= t->count || !ts_typed_is_figure(t->word[at]))
		return false;
	ret->text = t->word[at];
	ret->number = ts_typed_number(t->word[at]);
	at++;
	if (range_link(t, at) && (between || !ts_typed_is(t->word[at], "and")) &&
		ts_typed_number(t->word[at + 1]) > ret->number) {
		ret->text = ts_arena_join(t->arena, ret->text, "..", t->word[at + 1], NULL);
		ret->number = ts_typed_number(t->word[at + 1]);
		at += 2;
	}
	if (less)
		ret->text = ts_arena_join(t->arena, "<", ret->text, NULL);
	ret->used = at - start;
	return ret->text != NULL;
}

/* Above this no water is so warm: degrees are Fahrenheit. */
#define WARMEST_C 45

/* Nitrite from which it matters, mg/L NO2, and how much more the same figure is as nitrogen. */
#define NITRITE_MATTERS 0.16
#define NO2_PER_N 3.284

static bool take(struct ts_typed *t, const struct key *key, const struct figure *f, enum unit unit)
{
	const char *flag = key->flag, *unit_text, *taken = NULL;

	if (!unit)
		unit = key->bare;
	if (unit == DEGREES && strcmp(flag, "--temperature") == 0)
		unit = f->number > WARMEST_C ? FAHRENHEIT : CELSIUS;
	unit_text = written[unit];
	if (strcmp(flag, "--NO2") == 0 && (unit == MG_L) && f->number > 0) {
		bool graver = f->number < NITRITE_MATTERS &&
			      f->number * NO2_PER_N >= NITRITE_MATTERS && f->text[0] != '<';

		if (graver)
			flag = "--NO2-N";
		taken = graver ? "taken as nitrogen (NO2-N), the graver sense; if your test reads "
				 "NO2, say --NO2"
			       : "taken as NO2; if your test reads nitrogen (NO2-N), it is three "
				 "times as much: say --NO2-N";
	}
	return ts_typed_flag(t, flag, ts_arena_join(t->arena, f->text, unit_text, NULL), taken);
}

static bool may_have(const struct key *key, enum unit unit)
{
	return unit && key->units & BIT(unit);
}

#define TOGETHER_MOST 5

/* "ammonia and nitrite are zero", "ammonia, nitrite and nitrate all 0": one figure of several. */
static size_t several_keys(struct ts_typed *t)
{
	static const char *const joined[] = {"and", ",", "all", "both", "or", "plus"};
	const struct key *named[TOGETHER_MOST];
	size_t count = 0, used, at = t->at, linked = 0;
	struct figure f;
	enum unit unit;

	while (count < TOGETHER_MOST && at < t->count) {
		const struct key *key = key_here(t, at, &used);

		if (!key)
			break;
		named[count++] = key;
		at += used;
		while (at < t->count && TS_TYPED_AMONG(t->word[at], joined))
			at++;
	}
	if (count < 2)
		return 0;
	while (linked < LINKS_MOST && at < t->count && !figure_here(t, at, &f) &&
		(TS_TYPED_AMONG(t->word[at], links) || ts_typed_is(t->word[at], "all") ||
			ts_typed_is(t->word[at], "both"))) {
		at++;
		linked++;
	}
	if (!figure_here(t, at, &f))
		return 0;
	at += f.used;
	used = unit_here(t, at, &unit);
	for (size_t i = 0; i < count; i++)
		(void)take(t, named[i], &f, may_have(named[i], unit) ? unit : NO_UNIT);
	return at + used - t->at;
}

/* "GH 8", "pH is 7.2", "KH of 90 ppm", "nitrite in the tank is 5 mg/l". */
static size_t key_and_figure(struct ts_typed *t)
{
	size_t used, linked = 0, at, unit_used;
	const struct key *key = key_here(t, t->at, &used);
	struct figure f;
	enum unit unit;

	if (!key)
		return 0;
	at = t->at + used;
	while (linked < LINKS_MOST && at < t->count && TS_TYPED_AMONG(t->word[at], links) &&
		!figure_here(t, at, &f)) {
		at++;
		linked++;
	}
	if (!figure_here(t, at, &f))
		return 0;
	at += f.used;
	unit_used = unit_here(t, at, &unit);
	if (!may_have(key, unit))
		unit = NO_UNIT;
	else
		at += unit_used;
	/* "300 ppm as CaCO3" */
	if (unit == MG_L && at < t->count && ts_typed_is(t->word[at], "caco3"))
		at++;
	else if (unit == MG_L && at + 1 < t->count && ts_typed_is(t->word[at], "as") &&
		 ts_typed_is(t->word[at + 1], "caco3"))
		at += 2;
	t->about = key->flag;
	return take(t, key, &f, unit) ? at - t->at : 0;
}

/* A key has a figure of its own behind it. */
static bool has_own(const struct ts_typed *t, size_t at)
{
	struct figure f;
	size_t used = 0;
	enum unit unit;

	while (at < t->count && TS_TYPED_AMONG(t->word[at], links))
		at++;
	if (!figure_here(t, at, &f))
		return false;
	at += f.used;
	at += unit_here(t, at, &unit);
	/* "0 ammonia 0 nitrite": the figure is the next key's. */
	return !key_here(t, at, &used);
}

/* "5 ppm nitrite", "0 ammonia", "no nitrite", "300 ppm of hardness". */
static size_t figure_and_key(struct ts_typed *t)
{
	size_t at = t->at, used;
	const struct key *key;
	struct figure f;
	enum unit unit;

	if (ts_typed_is(t->word[at], "no"))
		f = (struct figure){"0", 0, 1};
	else if (!figure_here(t, at, &f))
		return 0;
	at += f.used;
	used = unit_here(t, at, &unit);
	at += used;
	if (at < t->count && ts_typed_is(t->word[at], "of"))
		at++;
	key = key_here(t, at, &used);
	if (!key && unit) { /* "8 kh": the unit is the key */
		at -= unit_here(t, t->at + f.used, &unit);
		unit = is_key_too(unit) ? DH : NO_UNIT;
		key = key_here(t, at, &used);
	}
	if (!key || (unit && !may_have(key, unit)) || has_own(t, at + used))
		return 0;
	at += used;
	return take(t, key, &f, unit) ? at - t->at : 0;
}

static const struct key *key_of(const char *flag)
{
	size_t i = 0;

	while (strcmp(keys[i].flag, flag) != 0)
		i++;
	return &keys[i];
}

/* Common tanks by their length (common practice, no source): the sides inside, cm. */
static const struct {
	double least_cm, most_cm;
	const char *size;
} boxes[] = {{28, 33, "30x20x20"}, {38, 42, "40x25x25"}, {43, 52, "50x30x30"}, {58, 64, "60x30x30"},
	{75, 82, "80x35x40"}, {88, 102, "100x40x40"}, {118, 125, "120x40x50"},
	{145, 155, "150x50x50"}, {178, 205, "200x60x60"}};

#define CM_PER_INCH 2.54
#define CM_PER_FOOT 30.48

/* "a common tank of that length": its sides; NULL: there is none. */
static const char *common_tank(double cm)
{
	for (size_t i = 0; i < sizeof boxes / sizeof *boxes; i++) {
		if (cm >= boxes[i].least_cm && cm <= boxes[i].most_cm)
			return boxes[i].size;
	}
	return NULL;
}

static bool tank_word(const struct ts_typed *t, size_t at)
{
	static const char *const words[] = {"tank", "aquarium", "bowl", "setup", "nano", "planted",
		"community", "set-up", "vivarium"};

	return at < t->count && TS_TYPED_AMONG(t->word[at], words);
}

/* Words of a side, and which. */
static const struct {
	const char *word;
	enum ts_typed_side side;
} sides[] = {{"long", TS_TYPED_LONG}, {"length", TS_TYPED_LONG}, {"wide", TS_TYPED_WIDE},
	{"width", TS_TYPED_WIDE}, {"across", TS_TYPED_WIDE}, {"deep", TS_TYPED_DEEP},
	{"depth", TS_TYPED_DEEP}, {"high", TS_TYPED_HIGH}, {"tall", TS_TYPED_HIGH},
	{"height", TS_TYPED_HIGH}, {"cube", TS_TYPED_CUBE}};

static bool side_word(const struct ts_typed *t, size_t at, enum ts_typed_side *ret)
{
	for (size_t i = 0; at < t->count && i < sizeof sides / sizeof *sides; i++) {
		if (ts_typed_is(t->word[at], sides[i].word)) {
			*ret = sides[i].side;
			return true;
		}
	}
	return false;
}

/* Shorter is no side of a tank, and longer none at home, cm. */
#define SIDE_LEAST_CM 14
#define SIDE_MOST_CM 400

static double in_cm(double number, enum unit unit)
{
	return unit == FEET ? number * CM_PER_FOOT : unit == INCHES ? number * CM_PER_INCH : number;
}

static bool take_side(struct ts_typed *t, enum ts_typed_side side, double cm)
{
	if (cm < SIDE_LEAST_CM || cm > SIDE_MOST_CM || t->side[side] > 0)
		return false;
	t->side[side] = cm;
	t->found = true;
	return true;
}

/* "30 cm high", "100 wide", "30 cm cube", "height 40 cm", "a cube of 30 cm". */
static size_t one_side(struct ts_typed *t)
{
	size_t at = t->at, used;
	enum ts_typed_side side = TS_TYPED_LONG;
	struct figure f;
	enum unit unit;
	bool named = side_word(t, at, &side);

	if (named) {
		at++;
		while (at < t->count &&
			(ts_typed_is(t->word[at], "of") || ts_typed_is(t->word[at], "is") ||
				ts_typed_is(t->word[at], "=")))
			at++;
	}
	if (!figure_here(t, at, &f))
		return 0;
	at += f.used;
	used = unit_here(t, at, &unit);
	if (used && unit != CM && unit != INCHES && unit != FEET)
		return 0;
	at += used;
	if (named)
		return used && take_side(t, side, in_cm(f.number, unit)) ? at - t->at : 0;
	if (at < t->count && ts_typed_is(t->word[at], "in") && at + 1 < t->count &&
		side_word(t, at + 1, &side))
		at++; /* "30 cm in height" */
	if (!side_word(t, at, &side) || !take_side(t, side, in_cm(f.number, unit)))
		return 0;
	return at + 1 - t->at;
}

/* The litres that were said; 0: none. */
static double litres_said(const struct ts_typed *t)
{
	const struct ts_sentence *s = t->out;
	static const struct {
		const char *unit;
		double litres;
	} volumes[] = {{" L", 1}, {" gallons", 3.785}, {" UK gal", 4.546}};

	for (size_t i = 0; i < s->flag_count; i++) {
		const char *value = s->flags[i].value;
		size_t len = ts_typed_figure_len(value);

		if (strcmp(s->flags[i].flag, "--volume") != 0)
			continue;
		for (size_t k = 0; k < sizeof volumes / sizeof *volumes; k++) {
			const char *digits = ts_arena_text(t->arena, value, len);

			if (digits && strcmp(value + len, volumes[k].unit) == 0)
				return volumes[k].litres * ts_typed_number(digits);
		}
	}
	return 0;
}

/* The front of a tank is about twice as long as it is deep (common practice, no source). */
#define LENGTH_OF_WIDTH 2

void ts_typed_settle_sides(struct ts_typed *t)
{
	double *side = t->side, litres = litres_said(t), length, width, height;
	const char *common;

	/* "a 30 litre cube" */
	for (size_t i = 0; i < t->count && litres > 0 && !(side[TS_TYPED_CUBE] > 0); i++) {
		if (ts_typed_is(t->word[i], "cube"))
			side[TS_TYPED_CUBE] = cbrt(litres * 1000);
	}
	if (side[TS_TYPED_CUBE] > 0)
		length = width = height = side[TS_TYPED_CUBE];
	else {
		bool both = side[TS_TYPED_LONG] > 0 || side[TS_TYPED_HIGH] > 0;

		length = side[TS_TYPED_LONG] > 0 ? side[TS_TYPED_LONG] : side[TS_TYPED_WIDE];
		width = side[TS_TYPED_LONG] > 0 && side[TS_TYPED_WIDE] > 0 ? side[TS_TYPED_WIDE]
			: both && side[TS_TYPED_HIGH] > 0                  ? side[TS_TYPED_DEEP]
									   : 0;
		height = side[TS_TYPED_HIGH] > 0 ? side[TS_TYPED_HIGH]
			 : width > 0 && side[TS_TYPED_LONG] > 0 && side[TS_TYPED_DEEP] > 0
				 ? side[TS_TYPED_DEEP]
			 : !(width > 0) ? side[TS_TYPED_DEEP]
					: 0;
	}
	if (!(length > 0) && !(height > 0))
		return;
	common = length > 0 && !(width > 0) && !(height > 0) && !(litres > 0) ? common_tank(length)
									      : NULL;
	if (common) {
		(void)ts_typed_flag(
			t, "--size", common, "a common tank of that length; say its sides");
		return;
	}
	/* What is not said follows from the litres, else from what such tanks usually are. */
	if (!(length > 0) && litres > 0)
		length = sqrt(LENGTH_OF_WIDTH * litres * 1000 / height);
	if (!(length > 0))
		return;
	if (!(width > 0))
		width = height > 0 && litres > 0 ? litres * 1000 / height / length
			: litres > 0             ? sqrt(litres * 1000 / length)
						 : length / LENGTH_OF_WIDTH;
	if (!(height > 0))
		height = litres > 0 ? litres * 1000 / length / width : width;
	(void)ts_typed_flag(t, "--size",
		ts_arena_join(t->arena, ts_typed_number_text(t, floor(length + 0.5)), "x",
			ts_typed_number_text(t, floor(width + 0.5)), "x",
			ts_typed_number_text(t, floor(height + 0.5)), NULL),
		NULL);
}

static bool has_flag(const struct ts_sentence *s, const char *flag)
{
	for (size_t i = 0; i < s->flag_count; i++) {
		if (strcmp(s->flags[i].flag, flag) == 0)
			return true;
	}
	return false;
}

/* The words before a figure in degrees tell of a test of hardness, and none of warmth. */
static bool tells_hardness(const struct ts_typed *t)
{
	static const char *const hard[] = {"gh", "hardness", "strip", "strips", "kh", "hard", "dh"};
	static const char *const warm[] = {"temperature", "temp", "heater", "warm", "cold",
		"heated", "thermometer", "heatwave", "keep", "run", "runs", "at", "celsius",
		"room"};
	bool told = false;

	for (size_t i = 0; i < t->count; i++)
		told |= TS_TYPED_AMONG(t->word[i], hard);
	for (size_t i = t->at > 6 ? t->at - 6 : 0; i < t->at; i++) {
		if (TS_TYPED_AMONG(t->word[i], warm))
			return false;
	}
	return told && t->at &&
	       (ts_typed_is(t->word[t->at - 1], "is") ||
		       ts_typed_is(t->word[t->at - 1], "measured") ||
		       ts_typed_is(t->word[t->at - 1], "says") ||
		       ts_typed_is(t->word[t->at - 1], "of") ||
		       ts_typed_is(t->word[t->at - 1], "or") ||
		       ts_typed_is(t->word[t->at - 1], "has"));
}

/* "54 litres", "8 dH", "26 degrees": a unit that tells what was read. */
static size_t figure_and_unit(struct ts_typed *t)
{
	size_t at = t->at, used;
	struct figure f = {NULL, 0, 0};
	enum unit unit;
	bool words = false, hard;

	if (!figure_here(t, at, &f)) {
		f.number = ts_typed_number(t->word[at]);
		if (!(f.number >= 2))
			return 0;
		words = true; /* "two foot", "ten gallon" */
		f.used = 1;
	}
	at += f.used;
	used = unit_here(t, at, &unit);
	if (!used && at < t->count && ts_typed_is(t->word[at], "g") && tank_word(t, at + 1)) {
		unit = GALLONS; /* "20g tank" */
		used = 1;
	}
	if (words && unit != GALLONS && unit != LITRES && unit != FEET && unit != UK_GALLONS)
		return 0;
	if (words)
		f.text = ts_typed_number_text(t, f.number);
	at += used;
	switch (unit) {
	case LITRES:
	case GALLONS:
	case UK_GALLONS:
		return ts_typed_flag(t, "--volume",
			       ts_arena_join(t->arena, f.text, written[unit], NULL), NULL)
			       ? at - t->at
			       : 0;
	case DH:
	case DGH:
	case FH:
	case CLARK:
	case GRAINS:
		return take(t, key_of("--GH"), &f, unit) ? at - t->at : 0;
	case DKH:
		return take(t, key_of("--KH"), &f, unit) ? at - t->at : 0;
	case CELSIUS:
	case FAHRENHEIT: /* "4 f" are females */
		if (strlen(t->word[at - 1]) == 1 && (unit == FAHRENHEIT) != (f.number > WARMEST_C))
			return 0;
		return take(t, key_of("--temperature"), &f, unit) ? at - t->at : 0;
	case DEGREES: /* of warmth; fewer, or where hardness is told of, are of hardness */
		hard = f.number < 10 || (f.number < WARMEST_C && tells_hardness(t));
		if (hard && has_flag(t->out, "--GH"))
			return at - t->at; /* of another test; the first stands */
		return take(t, key_of(hard ? "--GH" : "--temperature"), &f, hard ? DH : DEGREES)
			       ? at - t->at
			       : 0;
	case US_CM:
	case MS_CM:
		return take(t, key_of("--conductivity"), &f, unit) ? at - t->at : 0;
	case CM:
	case INCHES:
	case FEET:
		if (!tank_word(t, at) && unit != FEET)
			return 0;
		return common_tank(in_cm(f.number, unit)) &&
				       take_side(t, TS_TYPED_LONG, in_cm(f.number, unit))
			       ? at - t->at
			       : 0;
	default:
		return 0;
	}
}

/* "300 ppm" alone: hardness, where the sentence names nothing else that it may be of. */
static size_t ppm_alone(struct ts_typed *t)
{
	struct figure f;
	enum unit unit;
	size_t used, key_used;

	if (!figure_here(t, t->at, &f))
		return 0;
	used = unit_here(t, t->at + f.used, &unit);
	if (!used || unit != MG_L || f.number < 20)
		return 0;
	for (size_t i = 0; i < t->count; i++) {
		const struct key *key = key_here(t, i, &key_used);

		if (key && key->units & BIT(MG_L) && strcmp(key->flag, "--GH") != 0 &&
			strcmp(key->flag, "--KH") != 0)
			return 0;
	}
	return take(t, key_of("--GH"), &f, unit) ? f.used + used : 0;
}

static bool of_size(const char *word)
{
	static const char *const words[] = {
		"measures", "measuring", "size", "sized", "dimensions", "sides", "is"};

	return TS_TYPED_AMONG(word, words);
}

/* Sides with a mark between them: "80x35x40", "80 x 35 x 40 cm", "60 by 30 by 30". */
static size_t box(struct ts_typed *t)
{
	const char *side[3];
	size_t count = 0, at = t->at, used;
	/* "tank 60 30 30" */
	bool bare = t->at && (tank_word(t, t->at - 1) || of_size(t->word[t->at - 1]));
	const char *text;
	enum unit unit;

	while (at < t->count && count < 3) {
		const char *word = t->word[at];
		size_t digits = ts_typed_figure_len(word);

		if (!digits)
			break;
		while (count < 3 && digits) {
			side[count++] = ts_arena_text(t->arena, word, digits);
			word += digits;
			if (*word != 'x' && *word != 'X' && *word != '*')
				break;
			word++;
			digits = ts_typed_figure_len(word);
		}
		if (*word && !(count == 3 && ts_typed_is(word, "cm")))
			return 0;
		at++;
		if (count < 3 && at < t->count &&
			(ts_typed_is(t->word[at], "x") || ts_typed_is(t->word[at], "by") ||
				ts_typed_is(t->word[at], "*")))
			at++;
		else if (count < 3 && digits && !bare)
			return 0;
	}
	if (count < 3 || !side[0] || !side[1] || !side[2])
		return 0;
	used = unit_here(t, at, &unit);
	if (unit != CM && unit != INCHES)
		used = 0;
	text = ts_arena_join(t->arena, side[0], "x", side[1], "x", side[2],
		used && unit == INCHES ? " in" : "", NULL);
	return text && ts_typed_flag(t, "--size", text, NULL) ? at + used - t->at : 0;
}

/* A small word that begins another thought. */
static bool ends_there(struct ts_typed *t, size_t at)
{
	enum ts_typed_then then;
	size_t here = t->at, used;

	t->at = at;
	used = ts_typed_cut_here(t, &then);
	t->at = here;
	return used > 0;
}

/* What is told without its figure, which stands further on; words of a danger are asked. */
static bool may_wait(const char *flag)
{
	static const char *const flags[] = {"--pH", "--GH", "--KH", "--temperature"};

	return TS_TYPED_AMONG(flag, flags);
}

/* A plausible figure of what was named: "it is 8.2" of a pH. */
static bool plausible(const char *flag, double number)
{
	if (strncmp(flag, "--NO3", 5) == 0)
		return number <= 300;
	return strcmp(flag, "--pH") == 0 ? number >= 3 && number <= 11 : number <= 60;
}

/* "from 7.4 to 6.4", "was 7.4 now 6.4": what it is now; where it is to be brought, the first. */
static size_t moved(struct ts_typed *t, size_t at, const struct key *key)
{
	static const char *const from[] = {"from", "was", "were"};
	static const char *const passed[] = {"to", "now", "and", ",", "is", "it", "but", "has",
		"it's", "its", "down", "up", "dropped", "gone", "went", "-", "today", "down", "at"};
	size_t start = at;
	struct figure first, second;
	enum unit unit = NO_UNIT;
	bool wished = t->wished;

	if (at >= t->count || !TS_TYPED_AMONG(t->word[at], from) ||
		!ts_typed_is_figure(at + 1 < t->count ? t->word[at + 1] : ""))
		return 0;
	at++;
	first = (struct figure){t->word[at], ts_typed_number(t->word[at]), 1};
	at++;
	if (ts_typed_is(t->word[start], "from"))
		wished &= true;
	else
		wished = false;
	while (at < t->count && at - start < 8 && TS_TYPED_AMONG(t->word[at], passed))
		at++;
	if (at >= t->count || !ts_typed_is_figure(t->word[at]))
		return 0;
	second = (struct figure){t->word[at], ts_typed_number(t->word[at]), 1};
	at++;
	at += unit_here(t, at, &unit);
	if (!plausible(key->flag, first.number) || !plausible(key->flag, second.number))
		return 0;
	if (wished)
		t->aim = second.number;
	else
		t->keeper = true; /* who tells how it went has the tank */
	return take(t, key, wished ? &first : &second, may_have(key, unit) ? unit : NO_UNIT)
		       ? at - t->at
		       : 0;
}

/*
 * Of two readings of a pH the stood one counts; those of two hours of a day are both ends. False:
 * it is neither.
 */
static bool another_hour(struct ts_typed *t, size_t at, const struct figure *f)
{
	static const char *const hours[] = {"morning", "evening", "night", "noon", "afternoon"};
	static const char *const stood[] = {"after", "stood", "once", "when", "overnight", "aired"};
	struct ts_sentence_flag *flag = NULL;
	bool rested = at < t->count && TS_TYPED_AMONG(t->word[at], stood), hour = false;
	double was;

	for (size_t i = 0; i < t->out->flag_count; i++) {
		if (strcmp(t->out->flags[i].flag, "--pH") == 0)
			flag = &t->out->flags[i];
	}
	for (size_t i = at; i < at + 3 && i < t->count; i++)
		hour |= TS_TYPED_AMONG(t->word[i], hours);
	if (!flag || !(rested || hour) || !plausible("--pH", f->number))
		return false;
	was = ts_typed_number(flag->value);
	flag->value = rested            ? f->text
		      : was < f->number ? ts_arena_join(t->arena, flag->value, "..", f->text, NULL)
					: ts_arena_join(t->arena, f->text, "..", flag->value, NULL);
	flag->value = flag->value ? flag->value : f->text;
	return true;
}

/* A key whose figure comes later, and the figure then: "lower my pH, it is 8.2". */
static size_t about(struct ts_typed *t)
{
	static const char *const leads[] = {"is", "it's", "its", "was", "at", "now", "currently",
		"from", "reads", "shows", "tap", "tank", "=", "of", "around", "about", "to", "has",
		"and", "but", "need", "needs", "want", "wants", "like", "likes", "be"};
	static const char *const wishes[] = {
		"to", "need", "needs", "want", "wants", "like", "likes", "be"};
	size_t used, key_used, at = t->at;
	const struct key *key = key_here(t, at, &used);
	struct figure f;
	enum unit unit;

	if (key && may_wait(key->flag)) {
		size_t later = at + used, linked = 0, all;

		t->about = key->flag;
		while (linked < LINKS_MOST && later < t->count &&
			TS_TYPED_AMONG(t->word[later], links) && !(all = moved(t, later, key)))
			later++, linked++;
		all = moved(t, later, key);
		return all ? all : used;
	}
	if (!t->about)
		return 0;
	used = moved(t, at, key_of(t->about));
	if (used)
		return used;
	if (!at || !TS_TYPED_AMONG(t->word[at - 1], leads) || !figure_here(t, at, &f) ||
		!plausible(t->about, f.number))
		return 0;
	at += f.used;
	used = unit_here(t, at, &unit);
	if (used && unit == INCHES)
		used = 0; /* "in the morning" */
	if (used && !may_have(key_of(t->about), unit))
		return 0;
	if (!used && !ts_typed_ends(t, at) && key_here(t, at, &key_used))
		return 0;
	/* "7.2 in the morning", "7.6 after a day": of a pH that stands already. */
	if (another_hour(t, at, &f))
		return at - t->at;
	/* "to 7": where it is to be, and what it is comes elsewhere. */
	if (TS_TYPED_AMONG(t->word[t->at - 1], wishes) &&
		(t->wished || !ts_typed_is(t->word[t->at - 1], "to"))) {
		t->aim = f.number;
		return at + used - t->at;
	}
	/* Something is counted there: "it is 5 weeks old". */
	if (!used && !ts_typed_ends(t, at) && !ends_there(t, at))
		return 0;
	return take(t, key_of(t->about), &f, used ? unit : NO_UNIT) ? at + used - t->at : 0;
}

#define CHANGE_WORDS_MOST 8

/* "25% weekly", "30 %/week", "25% water changes every 7 days"; the longest that is a routine. */
static size_t change(struct ts_typed *t)
{
	static const char *const passed[] = {"water", "change", "changes", "changed", "of", "the"};
	const struct ts_field *field = ts_shape_field(&ts_shape_tank, "water_change");
	const char *said = t->word[t->at], *routine = NULL;
	size_t used = 0;

	if (!ts_typed_figure_len(said) ||
		!(strchr(said, '%') || (t->at + 1 < t->count && t->word[t->at + 1][0] == '%')))
		return 0;
	for (size_t i = 0; i < CHANGE_WORDS_MOST && !(i && ts_typed_ends(t, t->at + i)); i++) {
		struct ts_tank tank;
		struct ts_value_says says;

		if (i && TS_TYPED_AMONG(t->word[t->at + i], passed))
			continue;
		said = i ? ts_arena_join(t->arena, said, " ", t->word[t->at + i], NULL) : said;
		if (!said || !strpbrk(said, "abcdefghijklmnopqrstuvwxyz") ||
			!ts_value_read(field, said, strlen(said), t->arena, &tank, &says))
			continue;
		routine = said;
		used = i + 1;
	}
	return used && ts_typed_flag(t, "--water-change", routine, NULL) ? used : 0;
}

size_t ts_typed_measure(struct ts_typed *t)
{
	static size_t (*const ways[])(struct ts_typed *) = {change, box, one_side, several_keys,
		key_and_figure, figure_and_key, figure_and_unit, ppm_alone, about};
	size_t used = 0;

	for (size_t i = 0; !used && i < sizeof ways / sizeof *ways; i++)
		used = ways[i](t);
	return used;
}
