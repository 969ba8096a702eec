/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Can these live together, in this water and this tank, and what is to be done about what lives
 * there: one ordered list of judgements. The verdict is the worst of them; headline, remedies,
 * repair and what is to be known are views of the same list.
 */
#ifndef TS_ANSWERS_CHECK_H
#define TS_ANSWERS_CHECK_H

#include "answers/asking.h"
#include "answers/learned.h"
#include "stock/check.h"
#include "words/asked.h"

/* Words of a danger, or a figure, of which nothing was made. */
struct ts_check_unread {
	const char *words, *say; /* as typed; how it is said so that it is understood */
};

/* What is asked beside "do they go together" and "what is to be done": bits. */
enum ts_check_asked {
	TS_ASKED_FITS = 1 << 0,   /* who could live there */
	TS_ASKED_CHANGE = 1 << 1, /* how often and how much of the water is changed */
	TS_ASKED_SALT = 1 << 2,   /* how much salt */
	TS_ASKED_PH_UP = 1 << 3,  /* how pH comes up, or down */
	TS_ASKED_PH_DOWN = 1 << 4,
	TS_ASKED_KH_UP = 1 << 5,    /* how KH comes up */
	TS_ASKED_DRINK = 1 << 6,    /* whether people may drink it */
	TS_ASKED_SNAILS = 1 << 7,   /* how snails are got rid of */
	TS_ASKED_HOW_MANY = 1 << 8, /* how many of those that are named last */
	TS_ASKED_AWAY = 1 << 9,     /* what is to be done before a holiday */
	TS_ASKED_TANK = 1 << 10,    /* how large a tank */
	TS_ASKED_WARMTH = 1 << 11,  /* how warm */
	TS_ASKED_ARRIVE = 1 << 12,  /* how animals that were bought are put in */
	TS_ASKED_MOVE = 1 << 13,    /* how a tank moves house */
	TS_ASKED_YOUNG = 1 << 14,   /* what against too many young */
	TS_ASKED_SOFTEN = 1 << 15,  /* how water is made softer */
	TS_ASKED_AT_ONCE = 1 << 16, /* whether many are bought on one day */
};
/* Their words, in the order of the bits; NULL behind the last. */
extern const char *const ts_check_asked_words[];

struct ts_check_question {
	const char *name; /* of the plan, or of its file; NULL: it has none */
	const struct ts_plan *plan;
	const struct ts_species *const *species; /* of each line of the stock; NULL: unknown */
	const struct ts_candidates *candidates;  /* of each line without a species */
	const char *read_as; /* what was made of a sentence; NULL: none was typed */
	const struct ts_check_unread *unread;
	size_t unread_count;
	unsigned asked;                        /* bits of enum ts_check_asked */
	double aim;                            /* to which KH it is to be brought; NAN: not said */
	const struct ts_care_row *const *care; /* everyday questions of care */
	size_t care_count;
};

/* What mends a fault; figures that its kind does not have are NAN, texts NULL. */
struct ts_check_remedy {
	const char *kind, *says, *species;
	bool mends; /* it was tried, and the plan judged again */
	double from, to, percent, days, gh_dh, kh_dh, nahco3_g, cacl2_g, mgso4_g;
	double length_cm, width_cm, height_cm;
	double temp_c, step_percent, step_count;
};

struct ts_check_judgement {
	const char *severity, *code, *topic, *rests_on;
	struct ts_texts species; /* who suffers, then from whom */
	const char *parameter;
	double ours, its, figure; /* `figure`: a third one that the sentence names */
	const char *says;
	const char *because, *urgency;  /* of advice on a running tank; NULL: it is none */
	const char *hour, *week;        /* of advice: what to do then; NULL: nothing */
	const char *condition;          /* on which all are kept together; NULL: none */
	struct ts_check_remedy *remedy; /* NULL: none */
	bool folded; /* over with a step of the repair, or said by another judgement of its animal
		      */
};

/* One parameter of the water, of an animal or of all: NAN is not known. */
struct ts_check_range {
	const char *parameter;
	double reading; /* the value that counts */
	struct ts_range doubt, preferred, tolerated;
	double miss; /* beyond preferred, signed; 0 none */
};

struct ts_check_animal {
	const char *species, *name, *file, *fit;
	size_t count, planned;
	double grown_cm, tank_length_cm;
	double in_six_months; /* of them, where they breed by themselves */
	struct ts_range in_six_months_range;
	struct ts_texts cautions;
	struct ts_check_range *ranges;
	size_t range_count;
};

struct ts_check_shared {
	const char *parameter;
	double low, high;
	bool comfortable; /* to all; else only borne by all */
};

struct ts_check_tank {
	double length_cm, width_cm, height_cm, volume_l;
};

struct ts_check_load {
	double nitrogen_mg_day, no3_rise_mg_l_week, no3_steady_mg_l, kh_used_dh_week, buffer_days;
	struct ts_range feed_range, nitrogen_range, no3_rise_range, no3_steady_range, kh_used_range,
		buffer_range;
	double volume_l, feed_g_day, measured_no3_rise, modelled_no3_rise, change_percent,
		change_days;
	bool feeding_known, plants_known, change_known;
};

/* One step of the repair: why, and what. */
struct ts_check_step {
	const char *because;
	struct ts_check_remedy *remedy;
};

/* What an answer is: decides what stands on a first screen (show/check.c). */
enum ts_check_kind {
	TS_CHECK_DANGER, /* life in danger now */
	TS_CHECK_NO,     /* what no condition mends */
	TS_CHECK_IF,     /* on conditions that can be met while keeping all */
	TS_CHECK_YES,
	TS_CHECK_QUESTION, /* nothing may be said before it is answered */
	TS_CHECK_TEND,     /* all of them live there, and something is to be done */
	TS_CHECK_WELL,     /* all of them live there, and are left alone */
	TS_CHECK_CARE,     /* an everyday question of care is answered first */
	TS_CHECK_KIND__COUNT
};

struct ts_check_result {
	const char *name, *verdict;
	const char *kind;
	bool answered;
	const char *headline;     /* the answer in a line */
	const char *asked_says;   /* behind it: the answer to what else was asked; NULL: nothing */
	const char *decides;      /* what to do, or the figure that decides; NULL: nothing */
	const char *instead_says; /* another animal in the place of one; NULL: none */
	const char *water_too;    /* what the water has against some, beside the first line */
	struct ts_texts members;  /* of names of several animals: for whom the answer holds */
	struct ts_texts also;     /* of a no: further reasons, each of another sort */
	const char *otherwise;    /* the other way, which is more work; NULL: none */
	const char *root_says;    /* of a danger: the tank that is far too small for them; NULL */
	const char *instead_species;
	double instead_count;
	bool of_room;             /* the first line says which tank it takes */
	struct ts_texts cautions; /* who is to be feared, the law: a sentence an animal */
	struct ts_check_judgement *judgements;
	size_t judgement_count, more;
	const struct ts_check_judgement *first; /* which the headline is of; NULL: none; no row */
	struct ts_check_step *repair;
	size_t repair_count;
	bool repair_mends;
	bool repair_said; /* by the first lines already; no row */
	struct ts_check_animal *animals;
	size_t animal_count;
	struct ts_check_shared *shared;
	size_t shared_count;
	const char *shared_says;
	struct ts_check_tank *smallest_tank; /* NULL: not looked for, or none does */
	const char *room_says, *waste_says;
	const char *read_as;              /* what was made of a sentence; NULL: none was typed */
	const char *not_understood;       /* beside a deed or a no: what was typed; NULL: nothing */
	const char *what_if;              /* the question of what-if that it is a case of; NULL */
	const char *not_judged;           /* what is not given, and so not judged; NULL: nothing */
	bool waste_matters;               /* of their own routine, or it may be too much; no row */
	struct ts_learned learned;        /* by the tank's log */
	struct ts_check_load *load;       /* NULL: the litres are not known */
	const struct ts_profile *profile; /* for what leads a printed page; no row */
	bool passes;                      /* a yes: nothing harms, and what it needs is known */
};

extern const char *const ts_check_verdict_words[TS_PLAN_VERDICT__COUNT + 1];
extern const char *const ts_check_kind_words[TS_CHECK_KIND__COUNT + 1];
extern const char *const ts_check_severity_words[];
extern const char *const ts_check_topic_words[];
extern const char *const ts_check_rests_words[];
extern const char *const ts_check_remedy_words[];

/* Answers; TS_NO_MEMORY, `*ret` then untouched. */
TS_MUST_USE enum ts_status ts_answer_check(const struct ts_check_question *question,
	const struct ts_asking *asking, struct ts_check_result *ret);

#endif
