/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Species records: one plain struct per animal, the catalogue that owns them, and the loading of
 * files. Once loaded, everything is const and lent to callers until the catalogue is closed.
 */
#ifndef TAPSHOAL_CATALOGUE_H
#define TAPSHOAL_CATALOGUE_H

#include <tapshoal/water.h>

#ifdef __cplusplus
extern "C" {
#endif

/* The water an animal comes from; decides its KH band where no source gives one. */
enum ts_home_water {
	TS_HOME_BLACK,
	TS_HOME_CLEAR_SOFT,
	TS_HOME_MIXED,
	TS_HOME_MIDDLE,
	TS_HOME_HARD,
	TS_HOME_MALAWI,
	TS_HOME_TANGANYIKA,
	TS_HOME_VICTORIA,
	TS_HOME_COOL,
	TS_HOME_BEE_SHRIMP,
	TS_HOME_NEOCARIDINA,
	TS_HOME_SULAWESI,
	TS_HOME_SNAIL,
	TS_HOME_BRACKISH,
	TS_HOME__COUNT
};

enum ts_animal {
	TS_ANIMAL_FISH,
	TS_ANIMAL_SHRIMP,
	TS_ANIMAL_CRAYFISH,
	TS_ANIMAL_CRAB,
	TS_ANIMAL_SNAIL,
	TS_ANIMAL__COUNT
};

/* How easily it is bought: common practice, no source. */
enum ts_sold { TS_SOLD_EVERYWHERE, TS_SOLD_OFTEN, TS_SOLD_SELDOM, TS_SOLD_RARELY };

/* What a buyer must know; bits 1 << ... of `cautions`. */
enum ts_species_caution {
	TS_CAUTION_VENOMOUS,
	TS_CAUTION_ELECTRIC,
	TS_CAUTION_BITES,
	TS_CAUTION_SPINY_HANDS,
	TS_CAUTION_GROWS_TOO_BIG,
	TS_CAUTION_NO_HOME_SUITS,
	TS_CAUTION_HARD_TO_FEED,
	TS_CAUTION_DIES_OF_SMALL_ERRORS,
	TS_CAUTION_RESTRICTED,
	TS_CAUTION_NEEDS_SALT,
	TS_CAUTION_ESCAPES,
	TS_CAUTION_BREEDS_UNASKED,
	TS_CAUTION_WILD_CAUGHT,
	TS_CAUTION_SHORT_LIVED,
	TS_CAUTION_PROTECTED,
	TS_CAUTION_STINGS,
	TS_CAUTION_OFTEN_SICK,
	TS_CAUTION__COUNT
};

/* A list of texts; `count` 0 = none. */
struct ts_texts {
	const char **items;
	size_t count;
};

/* One parameter's envelope; `tolerated.low` NAN = the record says nothing. */
struct ts_envelope {
	struct ts_range tolerated, preferred;
	struct ts_texts source; /* first for tolerated, second for preferred */
	const char *why;
};

/* The envelopes of one way of keeping. */
struct ts_envelopes {
	struct ts_envelope ph, gh_dh, kh_dh, temp_c, salinity_g_l;
};

struct ts_published {
	struct ts_range ph, gh_dh, temp_c;
	const char *source, *temp_source; /* of pH and GH; of the temperature */
};

struct ts_species {
	const char *file;     /* where it was read from */
	size_t folder;        /* index into the catalogue's folders; SIZE_MAX: a single file */
	const char *replaces; /* file of the record in whose place it stands; NULL: it was added */
	const char *species, *form, *name_source;
	struct ts_texts synonyms;
	struct ts_texts trade_numbers; /* "L46": numbers under which suckermouths are sold */
	struct {
		struct ts_texts en, de, fr, nl, es, it;
	} common;
	const char *family;
	int kind, sold, home_water, body;
	double adult_length_cm, greatest_length_cm;
	double body_length_cm; /* 0 = the adult length */
	struct {
		double factor, power; /* g of cm total length; factor 0 = by shape of body */
		const char *source;
	} weight;
	struct ts_range lives_years;
	struct {
		struct ts_envelopes usual;
		struct ts_published published;
		struct ts_envelopes wild, breeding;
	} water;
	struct {
		double least, comfortable;
		int sexes, pair;
	} group;
	double young_month; /* of a female; 0 = does not breed by itself */
	int swims, to_own_kind, own_kind_when, to_others, others_when, gape, hunts, feeding;
	unsigned temper;
	unsigned preys_on;
	int diet;
	struct ts_texts eats;
	int fins, nips;
	struct {
		double floor_m2, group_m2; /* group_m2 0 = by the animals in it */
		int per;
	} territory;
	struct {
		int flow, light, cover, activity, land, bottom;
		double tank_length_cm, tank_height_cm; /* 0 = by rule of thumb */
	} needs;
	struct ts_texts crosses_with;
	int lakes_apart;
	unsigned habits;
	int takes_change;
	unsigned cautions;
	struct ts_texts listed;
	const char *disputed;
	struct ts_texts sources;
};

/* A catalogue: species sorted by name and form, owned by `arena`. */
struct ts_system;

struct ts_catalogue {
	struct ts_arena arena;
	const struct ts_species **items;
	size_t count, room;
	struct ts_texts folders; /* in the order in which they were added */
	size_t folder_room;
	const struct ts_system *system; /* of its files; NULL: this machine, and nothing else here
					 */
};

struct ts_name_row;

/* How a name was understood. */
enum ts_name_how {
	TS_NAME_UNKNOWN, /* nothing comes near */
	TS_NAME_SAME,    /* the very name; case, accents, hyphens, blanks, a plural apart */
	TS_NAME_GUESSED, /* one animal, by another order of words or one slip: to be said */
	TS_NAME_FORM,    /* a bred form or a hybrid, judged by the record of its kind: to be said */
	TS_NAME_SHARED,  /* the name of several species */
	TS_NAME_NEAR,    /* names come near */
	TS_NAME_GROUP,   /* what a whole group is called */
	TS_NAME_NUMBER,  /* a trade number that no record carries */
	TS_NAME_OUTSIDE  /* an animal of a kind that the records do not know */
};

/* A species that a name may mean. */
struct ts_candidate {
	const struct ts_species *species;
	const char *name; /* the name of it that comes nearest, as the record writes it */
	unsigned miss;    /* 0: the very name, case apart; the larger, the farther */
};

/* How many candidates are kept. */
#define TS_CANDIDATES_MOST 12

/* What a name may mean, nearest first, then what is sold most, then by scientific
 * name. */
struct ts_candidates {
	enum ts_name_how how;
	const struct ts_name_row *row; /* of a group, a form, what is outside; NULL: none */
	const char *says;              /* of a form, what is outside: "is an amphibian" */
	struct ts_candidate items[TS_CANDIDATES_MOST];
	size_t count; /* kept */
	size_t all;   /* as near as those that are kept, kept or not */
	bool shared;  /* the very name of the species that was taken, and its sisters' name too */
	/* Of a group; the cautions that all who belong to it share; grown, the least and the most.
	 */
	bool by_word; /* a word of the name alone is the group's: "teacup stingray" */
	unsigned shared_cautions;
	double least_cm, most_cm;
};

/* Opens an empty catalogue. `allocator` NULL: malloc. */
TS_API void ts_catalogue_open(struct ts_catalogue *catalogue, const struct ts_allocator *allocator);
/* Frees the catalogue and everything it lent. */
TS_API void ts_catalogue_close(struct ts_catalogue *catalogue);

/*
 * Adds every record (*.yaml) below a folder, except its `sources` folder. A species (and form) that
 * an earlier folder gave is replaced; the record says so (`folder`, `replaces`). Every error of
 * every file becomes a finding; files with errors add nothing, and of a species that stands twice
 * in one folder the first file stays. TS_BAD_INPUT when any file had an error, TS_SYSTEM when the
 * folder cannot be read.
 */
TS_API TS_MUST_USE enum ts_status ts_catalogue_add_folder(
	struct ts_catalogue *catalogue, const char *folder, struct ts_findings *findings);

/*
 * Adds the records of an image that the build made of a folder; `bytes` must outlive the catalogue.
 * TS_NO, and nothing is added: the image is of another version, damaged, or `folder` no longer
 * holds just the files it was made of (NULL: not compared); then ts_catalogue_add_folder() reads
 * them.
 */
TS_API TS_MUST_USE enum ts_status ts_catalogue_add_image(
	struct ts_catalogue *catalogue, const char *bytes, size_t len, const char *folder);

/* Adds one record behind the others, unsorted and replacing none; errors as above. */
TS_API TS_MUST_USE enum ts_status ts_catalogue_add_file(
	struct ts_catalogue *catalogue, const char *file, struct ts_findings *findings);

/*
 * The one species that is called so: by accepted name (with its form behind it), synonym, trade
 * number, common name in any language, or file stem; case, accents, hyphens and a plural make no
 * difference. `ret->how` TS_NAME_GUESSED or TS_NAME_FORM: it was taken by another order of words,
 * by one slip, or for a bred form, and ts_say_taken() must be shown. NULL: `*ret` holds what may
 * be meant, or why nothing is; ts_say_candidates() says it in words. `ret` NULL: nothing is
 * guessed.
 */
TS_API const struct ts_species *ts_catalogue_species(
	const struct ts_catalogue *catalogue, const char *name, struct ts_candidates *ret);

/*
 * The names of a species one by one: accepted name, synonyms, trade numbers, then common names by
 * language. NULL at the end. The index starts at 0.
 */
TS_API const char *ts_species_name(const struct ts_species *species, size_t index);

/*
 * Reads a water file into `*ret`, texts and readings taken from `arena`. Every content error is a
 * finding with its place; then TS_BAD_INPUT and `*ret` untouched. TS_SYSTEM: cannot be read.
 */
TS_API TS_MUST_USE enum ts_status ts_water_load(const char *file, struct ts_arena *arena,
	struct ts_water *ret, struct ts_findings *findings);

/* The words of these enums as files and answers have them, in their order; NULL behind the last. */
TS_API extern const char *const ts_words_home_water[];
TS_API extern const char *const ts_words_kind[];
TS_API extern const char *const ts_words_sold[];
TS_API extern const char *const ts_words_cautions[];

#ifdef __cplusplus
}
#endif

#endif
