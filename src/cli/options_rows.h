/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of flags and how a value is read along one, for options.c and options_values.c alone.
 */
#ifndef TS_CLI_OPTIONS_ROWS_H
#define TS_CLI_OPTIONS_ROWS_H

#include "cli/options.h"
#include "model/shape.h"

enum flag_kind {
	SWITCH,  /* bool */
	TEXT,    /* const char * */
	TEXTS,   /* struct values */
	WORD,    /* int, index into words */
	MEASURE, /* struct ts_measure of a quantity */
	SHARE,   /* the same; how often may stand behind it, as in a tank file */
	BOX,     /* struct box */
	COUNT    /* size_t; 0 = not given */
};

struct flag {
	const char *name, *short_name;
	enum flag_kind kind;
	enum ts_quantity quantity;
	size_t offset;
	const char *const *words;
	const char *takes;    /* as help shows it; NULL = nothing */
	const char *commands; /* separated by blanks; NULL = all */
	const char *says;
};

/* A flag's line of help for some of its commands. */
struct flag_of {
	const char *name, *commands, *says;
};

extern const struct flag_of option_flags_of[];
extern const size_t option_flags_of_count;
extern const struct flag option_flags[]; /* sorted by name */
extern const size_t option_flag_count;
extern const char *const option_formats[]; /* in the order of enum format */

/* Adds what is wrong and what would be right; false. */
bool option_refuse(struct ts_text *error, const char *what, const char *remedy);
/* Sets what a flag, a reading or a word of a record names; false with the error. */
bool option_set_flag(
	struct options *o, const struct flag *flag, const char *value, struct ts_text *error);
bool option_set_reading(struct options *o, const struct ts_field *field, const char *flag,
	const char *value, struct ts_text *error);
bool option_set_trait(struct options *o, const struct ts_trait *trait, const char *flag,
	const char *value, struct ts_text *error);

#endif
