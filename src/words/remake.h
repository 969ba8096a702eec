/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences of re-making: why not, what stands in the way, what to be careful with. Advice
 * about a running tank is next door in advice.h.
 */
#ifndef TS_WORDS_REMAKE_H
#define TS_WORDS_REMAKE_H

#include "base/text.h"
#include "care/remake.h"

/* What to do, in a word; in JSON. */
enum ts_remake_verdict {
	TS_VERDICT_LEAVE,
	TS_VERDICT_REMAKE,
	TS_VERDICT_STAGES,
	TS_VERDICT_TEST_FIRST,
	TS_VERDICT_SAFE_FIRST,
	TS_VERDICT_RESIDENTS,
	TS_VERDICT_UNREACHABLE,
	TS_VERDICT_UNSOFTENED,
	TS_VERDICT_NEW_WATER, /* the tank is there already: what is poured in is re-made */
	TS_REMAKE_VERDICT__COUNT
};

extern const char *const ts_remake_verdict_words[TS_REMAKE_VERDICT__COUNT + 1]; /* and NULL */

/* The verdict of a plan that ended with `status` TS_OK or TS_NO; whether animals live there. */
enum ts_remake_verdict ts_remake_verdict_of(
	const struct ts_remake *remake, enum ts_status status, bool inhabited);

/* Adds an amount as people weigh and measure: "24 g", "1.3 g", "86 L". */
void ts_say_amount(struct ts_text *text, double amount, const char *unit);

/* Adds what to do where the answer is no; `volume_l` of the tank, 100 where it is not known. */
void ts_say_refusal(struct ts_text *text, const struct ts_remake *remake);
/* Adds the number that decides: what the water has, is wished to have, and gets. */
void ts_say_remake_because(struct ts_text *text, const struct ts_remake *remake);
/* Adds how far limestone and aragonite come by themselves; nothing where KH need not rise. */
void ts_say_lime(struct ts_text *text, const struct ts_remake *remake);
/* Adds what peat and leaves may do; nothing where the pH is not too high. */
void ts_say_peat(struct ts_text *text, const struct ts_remake *remake);
/* Adds what the recipe gives where the supply is at its ends; nothing where it has none. */
void ts_say_ends(struct ts_text *text, const struct ts_remake *remake);

/* The first line of every recipe, stage and water change; `disinfectant` enum ts_disinfectant. */
const char *ts_treatment(int disinfectant);

/* When a caution belongs to an answer. Bits. */
enum ts_caution_when {
	TS_CAUTION_CHANGES = 1 << 0, /* water is changed with animals in the tank */
	TS_CAUTION_CALCIUM_CHLORIDE = 1 << 1,
	TS_CAUTION_SALTS = 1 << 2,
	TS_CAUTION_LARGE = 1 << 3, /* 200 L and more */
	TS_CAUTION_REHOMING = 1 << 4,
	TS_CAUTION_PLUMBING = 1 << 5, /* a softener, reverse osmosis */
	TS_CAUTION_NEWCOMERS = 1 << 6,
	TS_CAUTION_DRINKING = 1 << 7 /* nitrate, nitrite or copper in a supply */
};

struct ts_caution {
	unsigned when;
	const char *says;
};

extern const struct ts_caution ts_cautions[];
extern const size_t ts_caution_count;

#endif
