/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the files of the answer check share: the list while it is made (check.c), the first line
 * (check_headline.c), and what stands beside the list (check_parts.c).
 */
#ifndef TS_ANSWERS_CHECK_PARTS_H
#define TS_ANSWERS_CHECK_PARTS_H

#include "answers/check.h"
#include "care/advice.h"
#include "care/plan_state.h"

/* One judgement of the list: of a rule, or advice on the running tank. */
struct ts_check_entry {
	enum ts_severity severity;
	const struct ts_ruling *ruling; /* NULL: advice */
	const struct ts_advice *advice;
};

struct ts_check_work {
	const struct ts_check_question *question;
	const struct ts_asking *asking;
	struct ts_check check;
	struct ts_advice advice[TS_ADVICE_MOST];
	size_t advice_count;
	unsigned happened;  /* these days: bits by enum ts_happened */
	bool filter_stands; /* it does not run, or did not for a while */
	const struct ts_match *residents;
	struct ts_check_entry *entries; /* the gravest first */
	size_t entry_count;
	struct ts_smallest_tank said_tank; /* the one size that the first lines name; 0: none */
	const struct ts_species *no_room;  /* who has no room, whoever else is not bought */
	bool room_said;                    /* the first lines name the smallest tank already */
	bool rest_said;                    /* the first lines say who may be bought all the same */
	const char *which;  /* asks which of a name is meant, though one is judged; NULL: none is */
	bool newcomers_led; /* the first line is about those that were asked about */
	struct ts_text text; /* scratch */
	struct ts_check_result *out;
};

/*
 * The question with an animal in each line whose name is of several that all do here, or of which
 * none does; what is said of them goes into the result. False: no memory.
 */
bool ts_check_members(struct ts_check_work *w, struct ts_check_question *ret);

/* Asks for advice on what lives there; then rules and advice in one order. False: no memory. */
bool ts_check_advise(struct ts_check_work *w);
bool ts_check_gather(struct ts_check_work *w);

/* The list and the repair as rows; and which rows another one says already. */
void ts_check_fill_judgements(struct ts_check_work *w);
void ts_check_fill_repair(struct ts_check_work *w);
void ts_check_fold(struct ts_check_work *w);

/* The sentence of an entry, in the arena. */
const char *ts_check_says(struct ts_check_work *w, const struct ts_check_entry *entry);

/* Whether the water is first made safe or steady: then nothing new is bought, no more changed. */
bool ts_check_held(const struct ts_check_work *w);

/* All live there for long and are well; of those a larger tank is a matter of time. */
bool ts_check_all_well(const struct ts_check_work *w);
bool ts_check_in_time(const struct ts_check_work *w, const struct ts_ruling *ruling);

/* Nobody lives there or is named, and the filter is said to be new: nobody is to be bought yet. */
bool ts_check_filter_first(const struct ts_check_work *w);

/* Signs or deaths are in the plan. */
bool ts_check_unwell(const struct ts_check_work *w);

/* Sets headline, decides and first. */
void ts_check_headline(struct ts_check_work *w);

/*
 * Lines of animals that this work does not know, as an axolotl, and the answer to a question that
 * has such and others: that they are no company, and the others by themselves.
 */
size_t ts_check_outside_count(const struct ts_check_question *question);
TS_MUST_USE enum ts_status ts_check_outside(const struct ts_check_question *question,
	const struct ts_asking *asking, struct ts_check_result *ret);

/* What happened to a tank, where nobody is said to live in it, becomes the first line. */
void ts_check_happened(struct ts_check_work *w);

/* A poison that was read, and of which nothing is said, becomes the first line. */
void ts_check_poison(struct ts_check_work *w);

/* Answers what was asked beside the list. */
void ts_check_asked(struct ts_check_work *w);
/* The same of the smallest tank, once that is known. */
void ts_check_asked_room(struct ts_check_work *w);

/* Nobody is added to a tank that is unfit for those that live there. */
void ts_check_unfit(struct ts_check_work *w);

/* A no of a new tank: that it is too early for anybody. */
void ts_check_unripe(struct ts_check_work *w);

/* Answers everyday questions of care. */
void ts_check_care(struct ts_check_work *w);

/* What was typed and not understood becomes the question, or stands behind a deed or a no. */
void ts_check_unread(struct ts_check_work *w);

/* Says what may be taken in the place of the one that suffers from this fault. */
void ts_check_instead(struct ts_check_work *w, const struct ts_ruling *fault);

/* Adds its name, of one or of more as the plan has them. */
void ts_check_put_bought(struct ts_check_work *w, const struct ts_species *species);

/* Says who goes in the place of `gone`; false: nobody was found. */
bool ts_check_name_instead(struct ts_check_work *w, const struct ts_species *gone);

/* Nothing stands against all the others without `gone`. */
bool ts_check_rest_is_sound(struct ts_check_work *w, const struct ts_species *gone);

/* Who has no room though `gone` is not bought; NULL: all have. */
const struct ts_species *ts_check_no_room_without(
	struct ts_check_work *w, const struct ts_species *gone);

/* The one but `gone` that needs the largest tank by itself; NULL: none has a figure. */
const struct ts_species *ts_check_takes_most(
	const struct ts_check_work *w, const struct ts_species *gone);

/* Says which animals of a kind are for this water; false: none was found. */
bool ts_check_name_for_water(struct ts_check_work *w, int kind);

/* The entry by which the water decides against what is planned; entry_count: none does. */
size_t ts_check_misfit_entry(const struct ts_check_work *w);

/* The water as the first line: of those that are planned, or of those that live there. */
void ts_check_lead_with_misfit(struct ts_check_work *w, size_t entry);

/* Whether an entry says that who lives there is to stay in mended water. */
bool ts_check_keeps(const struct ts_check_work *w, size_t entry);

/* What the water has against some of them, where something else is the first line. */
void ts_check_say_water_too(struct ts_check_work *w);

/* Asks which animal of a group is meant, with what holds for all; false: it is no group. */
bool ts_check_lead_with_group(struct ts_check_work *w, size_t entry);

/* Ends the first lines: the headline is in the text. */
void ts_check_finish(
	struct ts_check_work *w, enum ts_check_kind kind, size_t entry, const char *decides);

/* Reasons for a no in one order, the least leads (check_reasons.c). */
int ts_check_reason(const struct ts_ruling *ruling);
/* Adds one of those of whom the same is said, the one `at` of `count`: " and the guppies". */
void ts_check_put_alike(
	struct ts_check_work *w, const struct ts_species *species, size_t at, size_t count);
/* Adds " The same goes for the guppies.": whom the same one harms in the same way. */
void ts_check_put_others_alike(struct ts_check_work *w, const struct ts_ruling *ruling);
/* The tank is too small, as any tank at home is for this animal. */
bool ts_check_no_home(const struct ts_ruling *ruling);

/* After the headline: of a no its further reasons and its one way out; what is not given. */
void ts_check_reasons(struct ts_check_work *w);
void ts_check_not_judged(struct ts_check_work *w);

/* Whether some of them are in the tank already. */
bool ts_check_lives(const struct ts_check_work *w, const struct ts_species *species);

/* Whether the repair sends the animal away, or never buys it. */
bool ts_check_goes(const struct ts_check_work *w, const struct ts_species *species);

/* What the litres were taken for, where a shorter tank would not do; NULL: nothing was taken. */
const char *ts_check_sides_taken(struct ts_check_work *w);

/* Whether so many more of them would fit the tank beside all others; without a tank they do. */
bool ts_check_more_fit(struct ts_check_work *w, const struct ts_species *species, double more);

/* The tank is not a quarter of what its own home has to be: no matter of time. */
bool ts_check_far_too_small(const struct ts_check_work *w, const struct ts_group *group);

/* Its own home would be far too small here. */
bool ts_check_too_large(const struct ts_check_work *w, const struct ts_group *group);

/* "too small a tank: 1 oscar needs 150 x 60 cm (450 L); yours holds 200 L", of those that stay,
 * else of all; NULL: it is large enough for each, or not known. */
const char *ts_check_too_small(struct ts_check_work *w);
/* The same of one, where it is short of anything; NULL: it is not. */
const char *ts_check_too_small_for(struct ts_check_work *w, const struct ts_species *species);

/*
 * Room, where it decides (check_room.c): says "Not in this tank: ..." into the text, or `before`
 * (NULL: as it is) instead of "Not in this tank: "; false: it is not of room; what would do in this
 * tank, in the arena; after the headline, the smallest tank.
 */
bool ts_check_says_room(struct ts_check_work *w, const struct ts_ruling *fault, const char *before);
const char *ts_check_room_instead(struct ts_check_work *w, const struct ts_ruling *fault);
void ts_check_room(struct ts_check_work *w);

/* All live there, nitrate was read, and no second reading shows where it goes. */
bool ts_check_nitrate_tells(const struct ts_check_work *w);

/* Fill animals, cautions, shared water and the load. */
void ts_check_animals(struct ts_check_work *w);
void ts_check_water(struct ts_check_work *w);
void ts_check_waste(struct ts_check_work *w);

/* "find the tiger barbs another home" as a row. */
void ts_check_remedy_fill(struct ts_check_work *w, const struct ts_remedy *remedy, const char *says,
	struct ts_check_remedy *ret);

#endif
