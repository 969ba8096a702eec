/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of every file that people write. A new field is one row here and one member in the
 * struct; a row whose member has another type does not compile.
 */
#include "model/shape.h"

/* offsetof plus a proof that the member has the type that the kind writes. */
#define AT(S, m, T) (offsetof(S, m) + 0 * sizeof(&((S *)0)->m == (T *)0))

#define TEXT(S, key, m, need, says)                                                                \
	{                                                                                          \
		key, TS_TEXT, need, TS_Q_NUMBER, AT(S, m, const char *), 0, NULL, NULL, says       \
	}
#define TEXTS(S, key, m, need, says)                                                               \
	{                                                                                          \
		key, TS_TEXTS, need, TS_Q_NUMBER, AT(S, m, struct ts_texts), 0, NULL, NULL, says   \
	}
#define WORD(S, key, m, need, words, says)                                                         \
	{                                                                                          \
		key, TS_WORD, need, TS_Q_NUMBER, AT(S, m, int), 0, words, NULL, says               \
	}
#define WORDS(S, key, m, need, words, says)                                                        \
	{                                                                                          \
		key, TS_WORDS, need, TS_Q_NUMBER, AT(S, m, unsigned), 0, words, NULL, says         \
	}
#define YESNO(S, key, m, need, says)                                                               \
	{                                                                                          \
		key, TS_YESNO, need, TS_Q_NUMBER, AT(S, m, bool), 0, NULL, NULL, says              \
	}
#define NUMBER(S, key, m, need, quantity, says)                                                    \
	{                                                                                          \
		key, TS_NUMBER, need, quantity, AT(S, m, double), 0, NULL, NULL, says              \
	}
#define RANGE(S, key, m, need, quantity, says)                                                     \
	{                                                                                          \
		key, TS_RANGE, need, quantity, AT(S, m, struct ts_range), 0, NULL, NULL, says      \
	}
#define MEASURE(S, key, m, need, quantity, says)                                                   \
	{                                                                                          \
		key, TS_MEASURE, need, quantity, AT(S, m, struct ts_measure), 0, NULL, NULL, says  \
	}
#define CHOICE(S, key, m, need, words, quantity, says)                                             \
	{                                                                                          \
		key, TS_CHOICE, need, quantity, AT(S, m, struct ts_choice), 0, words, NULL, says   \
	}
#define EVERY(S, key, m, need, quantity, says)                                                     \
	{                                                                                          \
		key, TS_EVERY, need, quantity, AT(S, m, struct ts_every), 0, NULL, NULL, says      \
	}
#define FILE_OR(S, key, m, file, need, shape, says)                                                \
	{                                                                                          \
		key, TS_FILE, need, TS_Q_NUMBER, offsetof(S, m), AT(S, file, const char *), NULL,  \
			shape, says                                                                \
	}
#define SUB(S, key, m, need, shape, says)                                                          \
	{                                                                                          \
		key, TS_SUB, need, TS_Q_NUMBER, offsetof(S, m), 0, NULL, shape, says               \
	}
#define LIST(S, key, m, count, T, need, shape, says)                                               \
	{                                                                                          \
		key, TS_LIST, need, TS_Q_NUMBER, AT(S, m, T *), AT(S, count, size_t), NULL, shape, \
			says                                                                       \
	}
#define SHAPE(name, fields, S)                                                                     \
	{                                                                                          \
		name, fields, sizeof(fields) / sizeof *(fields), sizeof(S), false                  \
	}
/* Of the keeper's own files. */
#define KEPT(name, fields, S)                                                                      \
	{                                                                                          \
		name, fields, sizeof(fields) / sizeof *(fields), sizeof(S), true                   \
	}

#define OPT TS_OPTIONAL
#define REQ TS_REQUIRED

const char *const ts_words_method[] = {
	"unknown", "strip", "drops", "meter", "laboratory", "utility-report", NULL};
const char *const ts_words_water_kind[] = {
	"tap", "well", "rain", "reverse-osmosis", "mixed", "tank", NULL};
static const char *const words_disinfectant[] = {"unknown", "none", "chlorine", "chloramine", NULL};
const char *const ts_words_kind[] = {"fish", "shrimp", "crayfish", "crab", "snail", NULL};
static const char *const words_body[] = {"fusiform", "eel", "elongated", "deep", NULL};
const char *const ts_words_sold[] = {"everywhere", "often", "seldom", "rarely", NULL};
const char *const ts_words_home_water[] = {"black", "clear-soft", "mixed", "middle", "hard",
	"malawi", "tanganyika", "victoria", "cool", "bee-shrimp", "neocaridina", "sulawesi",
	"snail", "brackish", NULL};
const char *const ts_words_home_water_said[] = {"black water", "clear soft water", "mixed rivers",
	"water of medium hardness", "hard water", "Lake Malawi", "Lake Tanganyika", "Lake Victoria",
	"cool temperate water", "soft hill streams", "lowland streams", "the Sulawesi lakes",
	"water hard enough for shells", "brackish water", NULL};
const char *const ts_words_sexes[] = {
	"any", "pair", "harem", "one-male", "two-females", "alone", "more-females", NULL};
const char *const ts_words_swims[] = {"bottom", "middle", "top", "everywhere", NULL};
static const char *const words_towards[] = {"ignores", "chases", "injures", NULL};
static const char *const words_when[] = {"always", "breeding", "cramped", NULL};
static const char *const words_gape[] = {
	"nibbler", "ordinary", "wide", "predator", "engulfer", NULL};
static const char *const words_temper[] = {"all", "look-alikes", "smaller", "slow", "bottom", NULL};
static const char *const words_hunts[] = {
	"grazer", "plankton", "fry", "invertebrates", "fish", NULL};
const char *const ts_words_feeding[] = {"dry", "fine", "frozen", "live", "meaty", "greens",
	"growth", "wood", "sinking", "surface", "shells", "drift", "leftovers", NULL};
static const char *const words_preys_on[] = {"shrimps", "snails", "fry", NULL};
static const char *const words_diet[] = {"omnivore", "herbivore", "carnivore", NULL};
static const char *const words_fins[] = {"short", "long", NULL};
static const char *const words_nips[] = {"no", "sometimes", "yes", NULL};
static const char *const words_per[] = {"animal", "male", "pair", "group", NULL};
static const char *const words_flow[] = {"any", "still", "gentle", "brisk", NULL};
static const char *const words_light[] = {"any", "shade", "bright", NULL};
static const char *const words_cover[] = {"no", "yes", NULL};
static const char *const words_land[] = {"no", "yes", NULL};
static const char *const words_bottom[] = {"any", "smooth", "sand", NULL};
static const char *const words_pair[] = {"no", "yes", NULL};
static const char *const words_lakes_apart[] = {"no", "yes", "by-custom", NULL};
static const char *const words_activity[] = {"ordinary", "sitter", "active", "fast", NULL};
static const char *const words_habits[] = {"nocturnal", "digs", "eats-plants", "slow-eater",
	"quick-eater", "specialist-eater", "old-tank-only", "breathes-air", "spiny",
	"nitrate-sensitive", NULL};
static const char *const words_takes_change[] = {"fairly", "badly", "well", NULL};
const char *const ts_words_cautions[] = {"venomous", "electric", "bites", "spiny-hands",
	"grows-too-big", "no-home-suits", "hard-to-feed", "dies-of-small-errors", "restricted",
	"needs-salt", "escapes", "breeds-unasked", "wild-caught", "short-lived", "protected",
	"stings", "often-sick", NULL};

const char *const ts_words_fill[] = {"ordinary", "rocks", NULL};
const char *const ts_words_fed[] = {"unknown", "light", "ordinary", "heavy", NULL};
const char *const ts_words_plants[] = {"unknown", "none", "some", "dense", NULL};
static const char *const words_tank_flow[] = {"unknown", "still", "gentle", "brisk", NULL};
const char *const ts_words_top_up[] = {"unknown", "tap", "pure", NULL};
const char *const ts_words_tank_cover[] = {"unknown", "no", "yes", NULL};
const char *const ts_words_co2[] = {"none", "injected", NULL};
const char *const ts_words_substrate[] = {"unknown", "inert", "sand", "active", "aragonite",
	"limestone", "peat", "gravel", "coarse-gravel", "bare", NULL};
static const char *const words_water_level[] = {"unknown", "full", "half", NULL};
const char *const ts_words_filter[] = {"unknown", "mature", "new", "none", "stopped", NULL};
const char *const ts_words_sex[] = {"unknown", "male", "female", "pairs", NULL};
static const char *const words_origin[] = {"unknown", "farmed", "wild", NULL};
const char *const ts_words_sign[] = {"other", "gasping", "listless", "clamped-fins", "rubbing",
	"spots", "wounds", "wasting", "bloated", "not-eating", "darting", "torn-fins", "hiding",
	"chased", "floating", "dying", "algae", "cloudy-water", "smell", "surface-film",
	"tinted-water", NULL};
const char *const ts_words_onset[] = {"unknown", "now", "days", "weeks", NULL};
const char *const ts_words_breadth[] = {"unknown", "one", "one-species", "all", "some", NULL};
const char *const ts_words_after[] = {"unknown", "water-change", "power-cut", NULL};

const char *const ts_words_happened[] = {"remark", "water-changed", "topped-up", "fed", "added",
	"died", "moved", "medicine", "filter-cleaned", "power-cut", "away", "untreated-water",
	"filter-washed", "poison", "overfed", "heater-failed", "heater-stuck", "new-water", NULL};

const char *const ts_words_yesno[] = {"no", "yes", NULL};
const char *const ts_words_nothing[] = {"none", NULL};

/* clang-format off */
#define R struct ts_reading
static const struct ts_field reading_fields[] = {
	TEXT(R, "date", date, OPT, "day of the sample, YYYY-MM-DD"),
	TEXT(R, "time", time, OPT, "hour of the sample, HH:MM"),
	TEXT(R, "season", season, OPT, "the part of the year it stands for, in a word of yours: summer"),
	MEASURE(R, "pH", ph, OPT, TS_Q_PH, "pH as measured"),
	MEASURE(R, "GH", gh_dh, OPT, TS_Q_GH, "general hardness: calcium and magnesium"),
	MEASURE(R, "KH", kh_dh, OPT, TS_Q_KH, "carbonate hardness: the buffer"),
	MEASURE(R, "temperature", temp_c, OPT, TS_Q_TEMPERATURE, "temperature of the sample"),
	MEASURE(R, "conductivity", conductivity_us_cm, OPT, TS_Q_CONDUCTIVITY, "conductivity"),
	MEASURE(R, "TDS", tds_mg_l, OPT, TS_Q_TDS, "dissolved solids"),
	MEASURE(R, "Ca", ca_mg_l, OPT, TS_Q_CALCIUM, "calcium"),
	MEASURE(R, "Mg", mg_mg_l, OPT, TS_Q_MAGNESIUM, "magnesium"),
	MEASURE(R, "Na", na_mg_l, OPT, TS_Q_ION, "sodium"),
	MEASURE(R, "K", k_mg_l, OPT, TS_Q_ION, "potassium"),
	MEASURE(R, "Cl", cl_mg_l, OPT, TS_Q_ION, "chloride"),
	MEASURE(R, "SO4", so4_mg_l, OPT, TS_Q_ION, "sulphate"),
	MEASURE(R, "alkalinity", alkalinity_meq_l, OPT, TS_Q_ALKALINITY, "alkalinity, another form of KH"),
	MEASURE(R, "salinity", salinity_g_l, OPT, TS_Q_SALINITY, "salt content"),
	MEASURE(R, "specific-gravity", specific_gravity, OPT, TS_Q_GRAVITY, "salt by a hydrometer, at the sample's temperature (25 C)"),
	MEASURE(R, "NO3", no3_mg_l, OPT, TS_Q_NITRATE, "nitrate as NO3"),
	MEASURE(R, "NO3-N", no3_n_mg_l, OPT, TS_Q_NITROGEN, "nitrate as nitrogen"),
	MEASURE(R, "NO2", no2_mg_l, OPT, TS_Q_NITRITE, "nitrite as NO2"),
	MEASURE(R, "NO2-N", no2_n_mg_l, OPT, TS_Q_NITROGEN, "nitrite as nitrogen"),
	MEASURE(R, "ammonia", tan_mg_l, OPT, TS_Q_AMMONIA, "total ammonia, as kits read it"),
	MEASURE(R, "phosphate", phosphate_mg_l, OPT, TS_Q_ION, "phosphate as PO4"),
	MEASURE(R, "Cu", cu_mg_l, OPT, TS_Q_TRACE, "copper"),
	MEASURE(R, "chlorine", chlorine_mg_l, OPT, TS_Q_TRACE, "chlorine and chloramine together"),
	MEASURE(R, "oxygen", oxygen_mg_l, OPT, TS_Q_OXYGEN, "dissolved oxygen"),
	MEASURE(R, "oxygen-saturation", oxygen_percent, OPT, TS_Q_SATURATION, "dissolved oxygen, of what air keeps in such water"),
	WORD(R, "method", method, OPT, ts_words_method, "how it was measured"),
	MEASURE(R, "stood", stood_h, OPT, TS_Q_HOURS, "how long the sample stood in the air"),
};
#undef R
const struct ts_shape ts_shape_reading = KEPT("reading", reading_fields, struct ts_reading);

#define W struct ts_water
static const struct ts_field water_fields[] = {
	TEXT(W, "name", name, OPT, "what you call this water"),
	TEXT(W, "kept", kept, OPT, "day on which tapshoal keep remembered it, YYYY-MM-DD"),
	WORD(W, "kind", kind, OPT, ts_words_water_kind, "where it comes from"),
	YESNO(W, "softened", softened, OPT, "through a household softener"),
	WORD(W, "disinfectant", disinfectant, OPT, words_disinfectant, "what the supplier adds"),
	LIST(W, "readings", readings, reading_count, struct ts_reading, REQ, &ts_shape_reading, "what was measured"),
};
#undef W
const struct ts_shape ts_shape_water = KEPT("water", water_fields, struct ts_water);

#define E struct ts_envelope
#define ENVELOPE(name, quantity) \
	static const struct ts_field name##_fields[] = { \
		RANGE(E, "tolerated", tolerated, REQ, quantity, "what it lives in healthily"), \
		RANGE(E, "preferred", preferred, OPT, quantity, "what it is comfortable in"), \
		TEXTS(E, "source", source, REQ, "grade of tolerated, grade of preferred"), \
		TEXT(E, "why", why, OPT, "why it departs from what is published"), \
	}; \
	static const struct ts_shape name = SHAPE(#name, name##_fields, E)
ENVELOPE(envelope_ph, TS_Q_PH);
ENVELOPE(envelope_gh, TS_Q_GH);
ENVELOPE(envelope_kh, TS_Q_KH);
ENVELOPE(envelope_temperature, TS_Q_TEMPERATURE);
ENVELOPE(envelope_salinity, TS_Q_SALINITY);
#undef E

#define V struct ts_envelopes
static const struct ts_field variant_fields[] = {
	SUB(V, "pH", ph, OPT, &envelope_ph, "pH"),
	SUB(V, "GH", gh_dh, OPT, &envelope_gh, "general hardness"),
	SUB(V, "KH", kh_dh, OPT, &envelope_kh, "carbonate hardness"),
	SUB(V, "temperature", temp_c, OPT, &envelope_temperature, "temperature"),
	SUB(V, "salinity", salinity_g_l, OPT, &envelope_salinity, "only for animals that need salt"),
};
static const struct ts_shape shape_variant = SHAPE("variant", variant_fields, V);
#undef V

#define P struct ts_published
static const struct ts_field published_fields[] = {
	RANGE(P, "pH", ph, OPT, TS_Q_PH, "pH as published"),
	RANGE(P, "GH", gh_dh, OPT, TS_Q_GH, "hardness as published"),
	TEXT(P, "source", source, OPT, "the publication of pH and hardness"),
	RANGE(P, "temperature", temp_c, OPT, TS_Q_TEMPERATURE, "temperature as published"),
	TEXT(P, "temperature_source", temp_source, OPT, "the publication of the temperature"),
};
static const struct ts_shape shape_published = SHAPE("published", published_fields, P);
#undef P

#define S struct ts_species

#define IN(m) (offsetof(S, water.m) - offsetof(S, water))
static const struct ts_field species_water_fields[] = {
	{"pH", TS_SUB, REQ, TS_Q_NUMBER, IN(usual.ph), 0, NULL, &envelope_ph, "pH"},
	{"GH", TS_SUB, REQ, TS_Q_NUMBER, IN(usual.gh_dh), 0, NULL, &envelope_gh, "general hardness"},
	{"KH", TS_SUB, OPT, TS_Q_NUMBER, IN(usual.kh_dh), 0, NULL, &envelope_kh, "carbonate hardness, only with a source"},
	{"temperature", TS_SUB, REQ, TS_Q_NUMBER, IN(usual.temp_c), 0, NULL, &envelope_temperature, "temperature"},
	{"salinity", TS_SUB, OPT, TS_Q_NUMBER, IN(usual.salinity_g_l), 0, NULL, &envelope_salinity, "only for animals that need salt"},
	{"published", TS_SUB, OPT, TS_Q_NUMBER, IN(published), 0, NULL, &shape_published, "as printed, for comparison"},
	{"wild", TS_SUB, OPT, TS_Q_NUMBER, IN(wild), 0, NULL, &shape_variant, "wild-caught animals, where they differ"},
	{"breeding", TS_SUB, OPT, TS_Q_NUMBER, IN(breeding), 0, NULL, &shape_variant, "for breeding, where it differs"},
};
static const struct ts_shape shape_species_water = SHAPE("species water", species_water_fields, ((S *)0)->water);

#define AT_IN(outer, m, T) (AT(S, outer.m, T) - offsetof(S, outer))
static const struct ts_field common_fields[] = {
	{"en", TS_TEXTS, OPT, TS_Q_NUMBER, AT_IN(common, en, struct ts_texts), 0, NULL, NULL, "English"},
	{"de", TS_TEXTS, OPT, TS_Q_NUMBER, AT_IN(common, de, struct ts_texts), 0, NULL, NULL, "German"},
	{"fr", TS_TEXTS, OPT, TS_Q_NUMBER, AT_IN(common, fr, struct ts_texts), 0, NULL, NULL, "French"},
	{"nl", TS_TEXTS, OPT, TS_Q_NUMBER, AT_IN(common, nl, struct ts_texts), 0, NULL, NULL, "Dutch"},
	{"es", TS_TEXTS, OPT, TS_Q_NUMBER, AT_IN(common, es, struct ts_texts), 0, NULL, NULL, "Spanish"},
	{"it", TS_TEXTS, OPT, TS_Q_NUMBER, AT_IN(common, it, struct ts_texts), 0, NULL, NULL, "Italian"},
};
static const struct ts_shape shape_common = SHAPE("common", common_fields, ((S *)0)->common);

static const struct ts_field group_fields[] = {
	{"least", TS_NUMBER, REQ, TS_Q_NUMBER, AT_IN(group, least, double), 0, NULL, NULL, "settled from this many"},
	{"comfortable", TS_NUMBER, REQ, TS_Q_NUMBER, AT_IN(group, comfortable, double), 0, NULL, NULL, "comfortable from this many"},
	{"sexes", TS_WORD, OPT, TS_Q_NUMBER, AT_IN(group, sexes, int), 0, ts_words_sexes, NULL, "how the sexes must be matched"},
	{"pair", TS_WORD, OPT, TS_Q_NUMBER, AT_IN(group, pair, int), 0, words_pair, NULL, "a pair by itself is settled as well"},
};
static const struct ts_shape shape_group = SHAPE("group", group_fields, ((S *)0)->group);

static const struct ts_field territory_fields[] = {
	{"floor", TS_NUMBER, REQ, TS_Q_AREA, AT_IN(territory, floor_m2, double), 0, NULL, NULL, "floor it defends"},
	{"per", TS_WORD, REQ, TS_Q_NUMBER, AT_IN(territory, per, int), 0, words_per, NULL, "by whom"},
	{"group", TS_NUMBER, OPT, TS_Q_AREA, AT_IN(territory, group_m2, double), 0, NULL, NULL, "floor of a whole group of the least number, which divides the blows"},
};
static const struct ts_shape shape_territory = SHAPE("territory", territory_fields, ((S *)0)->territory);

static const struct ts_field weight_fields[] = {
	{"factor", TS_NUMBER, REQ, TS_Q_NUMBER, AT_IN(weight, factor, double), 0, NULL, NULL, "grams of one centimetre, total length"},
	{"power", TS_NUMBER, REQ, TS_Q_NUMBER, AT_IN(weight, power, double), 0, NULL, NULL, "of the length"},
	{"source", TS_TEXT, REQ, TS_Q_NUMBER, AT_IN(weight, source, const char *), 0, NULL, NULL, "the publication"},
};
static const struct ts_shape shape_weight = SHAPE("weight", weight_fields, ((S *)0)->weight);

static const struct ts_field needs_fields[] = {
	{"flow", TS_WORD, REQ, TS_Q_NUMBER, AT_IN(needs, flow, int), 0, words_flow, NULL, "current"},
	{"light", TS_WORD, REQ, TS_Q_NUMBER, AT_IN(needs, light, int), 0, words_light, NULL, "light"},
	{"cover", TS_WORD, REQ, TS_Q_NUMBER, AT_IN(needs, cover, int), 0, words_cover, NULL, "a tight lid"},
	{"activity", TS_WORD, REQ, TS_Q_NUMBER, AT_IN(needs, activity, int), 0, words_activity, NULL, "how much it swims"},
	{"tank_length", TS_NUMBER, OPT, TS_Q_LENGTH, AT_IN(needs, tank_length_cm, double), 0, NULL, NULL, "least tank length where the rule of thumb is wrong"},
	{"tank_height", TS_NUMBER, OPT, TS_Q_LENGTH, AT_IN(needs, tank_height_cm, double), 0, NULL, NULL, "least height of the water where it grows tall with its fins"},
	{"land", TS_WORD, OPT, TS_Q_NUMBER, AT_IN(needs, land, int), 0, words_land, NULL, "land above the water: it drowns or fails in a filled tank"},
	{"bottom", TS_WORD, OPT, TS_Q_NUMBER, AT_IN(needs, bottom, int), 0, words_bottom, NULL, "smooth: sand or fine rounded gravel, for barbels; sand: it digs in, or sifts it"},
};
static const struct ts_shape shape_needs = SHAPE("needs", needs_fields, ((S *)0)->needs);

static const struct ts_field species_fields[] = {
	TEXT(S, "species", species, REQ, "accepted scientific name"),
	TEXT(S, "form", form, OPT, "where one species needs two records"),
	TEXT(S, "name_source", name_source, OPT, "whose taxonomy"),
	TEXTS(S, "synonyms", synonyms, OPT, "older names"),
	TEXTS(S, "trade_numbers", trade_numbers, OPT, "numbers under which suckermouths are sold, like L46"),
	SUB(S, "common", common, OPT, &shape_common, "names people use, by language"),
	TEXT(S, "family", family, REQ, "family"),
	WORD(S, "kind", kind, REQ, ts_words_kind, "kind of animal"),
	WORD(S, "sold", sold, REQ, ts_words_sold, "how easily it is bought"),
	WORD(S, "home_water", home_water, REQ, ts_words_home_water, "kind of water it comes from"),
	NUMBER(S, "adult_length", adult_length_cm, REQ, TS_Q_LENGTH, "usual total length in tanks"),
	NUMBER(S, "greatest_length", greatest_length_cm, REQ, TS_Q_LENGTH, "greatest length known"),
	NUMBER(S, "body_length", body_length_cm, OPT, TS_Q_LENGTH, "adult length without trailing fins, where they make up much of it: decides its mass"),
	RANGE(S, "lives_years", lives_years, REQ, TS_Q_NUMBER, "how many years it lives, well kept"),
	WORD(S, "body", body, REQ, words_body, "shape of the body"),
	SUB(S, "weight", weight, OPT, &shape_weight, "how length makes weight, where it was measured: g = factor x cm^power"),
	SUB(S, "water", water, REQ, &shape_species_water, "the water it lives in"),
	SUB(S, "group", group, REQ, &shape_group, "how many together"),
	NUMBER(S, "young_month", young_month, OPT, TS_Q_NUMBER, "young that a female has in a month, where it breeds by itself"),
	WORD(S, "swims", swims, REQ, ts_words_swims, "where it swims"),
	WORD(S, "to_own_kind", to_own_kind, REQ, words_towards, "how it treats its own kind"),
	WORD(S, "own_kind_when", own_kind_when, OPT, words_when, "when"),
	WORD(S, "to_others", to_others, REQ, words_towards, "how it treats others"),
	WORD(S, "others_when", others_when, OPT, words_when, "when"),
	WORDS(S, "temper", temper, OPT, words_temper, "towards which others: all, its like, smaller ones, slow and long-finned ones, those of the bottom"),
	WORD(S, "gape", gape, REQ, words_gape, "how large a prey it swallows"),
	WORD(S, "hunts", hunts, REQ, words_hunts, "what it hunts alive; all but hunters of fish take no fish beyond eggs and fry, whatever their size"),
	WORDS(S, "preys_on", preys_on, OPT, words_preys_on, "what it eats beyond its gape"),
	WORD(S, "diet", diet, OPT, words_diet, "decides the protein of its feed"),
	TEXTS(S, "eats", eats, OPT, "what it eats"),
	WORD(S, "feeding", feeding, REQ, ts_words_feeding, "what its keeper must give it"),
	WORD(S, "fins", fins, OPT, words_fins, "long fins are bitten"),
	WORD(S, "nips", nips, OPT, words_nips, "bites fins"),
	SUB(S, "territory", territory, OPT, &shape_territory, "floor it defends"),
	SUB(S, "needs", needs, REQ, &shape_needs, "what the tank must offer"),
	TEXTS(S, "crosses_with", crosses_with, OPT, "genera or species it has mongrel young with; its own name: colour forms cross"),
	WORD(S, "lakes_apart", lakes_apart, OPT, words_lakes_apart, "yes: only with animals of its own lake; by-custom: none of the lake, and kept there by custom"),
	WORDS(S, "habits", habits, OPT, words_habits, "habits that matter to others"),
	WORD(S, "takes_change", takes_change, OPT, words_takes_change, "how it takes a change of water"),
	WORDS(S, "cautions", cautions, OPT, ts_words_cautions, "what the buyer must know"),
	TEXTS(S, "listed", listed, OPT, "official lists that name it"),
	TEXT(S, "disputed", disputed, OPT, "where experienced keepers disagree"),
	TEXTS(S, "sources", sources, REQ, "publications used"),
};
#undef S
/* clang-format on */
const struct ts_shape ts_shape_species = SHAPE("species", species_fields, struct ts_species);

_Static_assert(sizeof species_fields / sizeof *species_fields <= TS_FIELDS_MOST, "species rows");
_Static_assert(sizeof reading_fields / sizeof *reading_fields <= TS_FIELDS_MOST, "reading rows");

/* clang-format off */
#define E struct ts_tank_event
static const struct ts_field event_fields[] = {
	TEXT(E, "date", date, REQ, "the day, YYYY-MM-DD"),
	TEXT(E, "time", time, OPT, "the hour, HH:MM"),
	WORD(E, "what", what, REQ, ts_words_happened, "what happened"),
	NUMBER(E, "litres", litres, OPT, TS_Q_VOLUME, "of a change or a topping up, with their unit: 40 L"),
	NUMBER(E, "share", share_percent, OPT, TS_Q_PERCENT, "the same, as a part of the water"),
	WORD(E, "with", with, OPT, ts_words_top_up, "what was poured in: the water of its changes, or water without minerals"),
	NUMBER(E, "count", count, OPT, TS_Q_NUMBER, "how many animals"),
	NUMBER(E, "lasted", lasted_h, OPT, TS_Q_TIME, "how long a power cut or a holiday lasted"),
	TEXT(E, "says", says, OPT, "in your words"),
};
#undef E
const struct ts_shape ts_shape_event = KEPT("event", event_fields, struct ts_tank_event);

#define T struct ts_tank
static const struct ts_field tank_fields[] = {
	TEXT(T, "name", name, OPT, "what you call this tank"),
	TEXT(T, "size", size, OPT, "length x width x height in cm, or the litres: 100x40x40, 60 L; in place of the next three"),
	NUMBER(T, "length", length_cm, OPT, TS_Q_SIDE, "inside length"),
	NUMBER(T, "width", width_cm, OPT, TS_Q_SIDE, "inside width, front to back"),
	NUMBER(T, "height", height_cm, OPT, TS_Q_SIDE, "inside height"),
	CHOICE(T, "fill", fill, OPT, ts_words_fill, TS_Q_PERCENT, "how much of the box is water: ordinary 85 %, rocks 75 %, or a figure"),
	NUMBER(T, "volume", volume_l, OPT, TS_Q_VOLUME, "the water itself, where it was measured"),
	MEASURE(T, "temperature", temp_c, OPT, TS_Q_TEMPERATURE, "what it runs at, over day and year"),
	EVERY(T, "water_change", water_change, OPT, TS_Q_PERCENT, "how much water is changed how often; none: it is only topped up"),
	EVERY(T, "evaporation", evaporation, OPT, TS_Q_PERCENT, "how much water evaporates"),
	WORD(T, "top_up", top_up, OPT, ts_words_top_up, "what replaces evaporated water: the water of its changes, or water without minerals"),
	CHOICE(T, "feeding", feeding, OPT, ts_words_fed, TS_Q_FEED, "dry feed, weighed or as a word"),
	WORD(T, "plants", plants, OPT, ts_words_plants, "growing plants"),
	WORD(T, "flow", flow, OPT, words_tank_flow, "current"),
	WORD(T, "light", light, OPT, words_light, "light"),
	WORD(T, "cover", cover, OPT, ts_words_tank_cover, "a tight lid"),
	WORD(T, "co2", co2, OPT, ts_words_co2, "carbon dioxide for plants"),
	WORD(T, "substrate", substrate, OPT, ts_words_substrate, "what covers the floor"),
	WORD(T, "water_level", water_level, OPT, words_water_level, "filled, or half filled with land above the water"),
	WORD(T, "filter", filter, OPT, ts_words_filter, "whether the filter turns waste into nitrate yet; none: there is no filter; off 12 h: it stood so long"),
	NUMBER(T, "filter_stopped", filter_stopped_h, OPT, TS_Q_HOURS, "for how long the filter stood, as in a power cut"),
	TEXT(T, "running_since", running_since, OPT, "day it was filled, YYYY-MM-DD"),
	LIST(T, "readings", readings, reading_count, struct ts_reading, OPT, &ts_shape_reading, "what was measured in the tank"),
	LIST(T, "events", events, event_count, struct ts_tank_event, OPT, &ts_shape_event, "what happened to it: water changed, animals added or dead, a power cut"),
};
#undef T
const struct ts_shape ts_shape_tank = KEPT("tank", tank_fields, struct ts_tank);

#define L struct ts_stock_line
static const struct ts_field stock_line_fields[] = {
	TEXT(L, "species", species, REQ, "any name that the catalogue knows"),
	NUMBER(L, "count", count, REQ, TS_Q_NUMBER, "how many"),
	WORD(L, "sex", sex, OPT, ts_words_sex, "their sex; two lines where there are both"),
	TEXT(L, "since", since, OPT, "in the tank since, YYYY-MM-DD, year and month, or year; unknown: they are there, nobody knows since when; leave out what is only planned"),
	WORD(L, "origin", origin, OPT, words_origin, "where they come from"),
	NUMBER(L, "size", size_cm, OPT, TS_Q_LENGTH, "how long they are now"),
};
#undef L
const struct ts_shape ts_shape_stock_line = KEPT("stock line", stock_line_fields, struct ts_stock_line);

#define G struct ts_sign
static const struct ts_field sign_fields[] = {
	WORD(G, "sign", sign, REQ, ts_words_sign, "what is seen"),
	WORD(G, "onset", onset, OPT, ts_words_onset, "how long ago it began"),
	WORD(G, "breadth", breadth, OPT, ts_words_breadth, "how many show it"),
	WORD(G, "after", after, OPT, ts_words_after, "what was done just before"),
	TEXT(G, "species", species, OPT, "which species shows it"),
};
#undef G
const struct ts_shape ts_shape_sign = KEPT("sign", sign_fields, struct ts_sign);

#define L struct ts_plan
static const struct ts_field plan_fields[] = {
	TEXT(L, "name", name, OPT, "what you call this plan"),
	FILE_OR(L, "water", water, water_file, OPT, &ts_shape_water, "the water it is filled with: a file or the water itself"),
	FILE_OR(L, "change_water", change_water, change_water_file, OPT, &ts_shape_water, "what is really poured in at a change, where it is not the water"),
	FILE_OR(L, "tank", tank, tank_file, OPT, &ts_shape_tank, "the tank: a file, the tank itself, or its size alone: 60x30x30, 60 L"),
	LIST(L, "stock", stock, stock_count, struct ts_stock_line, REQ, &ts_shape_stock_line, "the animals, kept and planned"),
	TEXT(L, "since", since, OPT, "since when all of them live there whose lines do not say it"),
	LIST(L, "readings", readings, reading_count, struct ts_reading, OPT, &ts_shape_reading, "what was measured, where nothing says of which water: of the tank where animals live in it, and of the new water where none is given"),
	LIST(L, "signs", signs, sign_count, struct ts_sign, OPT, &ts_shape_sign, "signs of distress"),
	NUMBER(L, "away", away_h, OPT, TS_Q_TIME, "for how long nobody will be there, as on a holiday"),
	MEASURE(L, "deaths", deaths, OPT, TS_Q_NUMBER, "unexplained deaths within the last four weeks"),
};
#undef L
/* clang-format on */
const struct ts_shape ts_shape_plan = KEPT("plan", plan_fields, struct ts_plan);
