/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Figures of a sentence. What is read is called by a key before or behind its figure; a unit alone
 * tells what it can mean only one thing by. A figure that could mean two things is taken in the
 * sense in which it is more dangerous, and that is said.
 */
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

static size_t unit_here(const struct ts_typed *t, size_t at, enum unit *ret)
{
	for (size_t i = 0; i < UNITS; i++) {
		size_t used = ts_typed_phrase(t, at, units[i].words);

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
		unit = NO_UNIT;
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

/* "two foot tank", "a 60 cm tank": litres and sides are those of a common tank of that length. */
static bool tank_of_length(struct ts_typed *t, double cm)
{
	for (size_t i = 0; i < sizeof boxes / sizeof *boxes; i++) {
		if (cm >= boxes[i].least_cm && cm <= boxes[i].most_cm)
			return ts_typed_flag(t, "--size", boxes[i].size,
				"a common tank of that length; say its sides");
	}
	return false;
}

static bool tank_word(const struct ts_typed *t, size_t at)
{
	static const char *const words[] = {"tank", "aquarium", "long", "bowl", "cube", "wide",
		"setup", "nano", "planted", "community", "high", "tall"};

	return at < t->count && TS_TYPED_AMONG(t->word[at], words);
}

/* "54 litres", "8 dH", "26 degrees": a unit that tells what was read. */
static size_t figure_and_unit(struct ts_typed *t)
{
	size_t at = t->at, used;
	struct figure f = {NULL, 0, 0};
	enum unit unit;
	bool words = false;

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
	case DEGREES: /* of warmth; fewer are of hardness */
		return take(t, key_of(f.number < 10 ? "--GH" : "--temperature"), &f,
			       f.number < 10 ? DH : DEGREES)
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
		return tank_of_length(t, f.number * (unit == CM            ? 1
							    : unit == FEET ? CM_PER_FOOT
									   : CM_PER_INCH))
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

/* Sides with a mark between them: "80x35x40", "80 x 35 x 40 cm", "60 by 30 by 30". */
static size_t box(struct ts_typed *t)
{
	const char *side[3];
	size_t count = 0, at = t->at, used;
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
			(ts_typed_is(t->word[at], "x") || ts_typed_is(t->word[at], "by")))
			at++;
		else if (count < 3 && digits)
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
	static size_t (*const ways[])(struct ts_typed *) = {
		change, box, key_and_figure, figure_and_key, figure_and_unit, ppm_alone};
	size_t used = 0;

	for (size_t i = 0; !used && i < sizeof ways / sizeof *ways; i++)
		used = ways[i](t);
	return used;
}
