/* SPDX-License-Identifier: Apache-2.0 */
/*
 * "Which animals go together in this water and this tank?" Lists with the reason for each, what is
 * bought when, whom nobody was asked about, and for what was asked and cannot be had the smallest
 * thing that would make it possible.
 */
#ifndef TS_ANSWERS_PROPOSE_H
#define TS_ANSWERS_PROPOSE_H

#include "answers/matched.h"
#include "stock/propose.h"

/* What is asked; everything is lent. */
struct ts_propose_question {
	const char *water_name, *water_says, *animals_say, *overlays_say;
	const struct ts_plan *plan; /* tank, water, what is poured in, and what lives there */
	const struct ts_keeping *keeping;
	const struct ts_profile *profile; /* of the water as it was given */
	double assumed_litres;        /* the sides of the tank were assumed; 0: they are known */
	const struct ts_species *why; /* why is it in no list? NULL: not asked */
	/*
	 * Catalogue, with, without, residents, theme and the rest of what is wished; water, tank
	 * and practice are filled from above.
	 */
	struct ts_wish wish;
};

struct ts_propose_line_result {
	const char *species, *id, *common;
	const char *role; /* "centre", "shoal", "bottom", "top"; NULL: none */
	size_t count, males, females, there;
	bool later; /* not before the tank has run for eight weeks */
	double fit;
	const char *says, *needs;
	struct ts_parameter_result *parameters;
	size_t parameter_count;
};

struct ts_propose_shared_result {
	const char *unit;
	double low, high;
	const char *low_set_by, *high_set_by;
	bool comfortable;
	const char *label, *says;
};

/* By parameter; NULL: nobody's band is known. */
struct ts_propose_shared_water_result {
	const struct ts_propose_shared_result *gh, *kh, *ph, *temp, *salinity;
};

struct ts_propose_limiting_result {
	const char *species, *name, *says;
};

/* The likely figures; NAN where they cannot be known. */
struct ts_propose_load_result {
	double nitrogen_mg_day, nitrogen_most_mg_day, no3_rise_mg_l_week, no3_steady_mg_l;
	double kh_used_dh_week, buffer_days;
	const char *waste_says, *buffer_says;
};

struct ts_propose_purchase_result {
	double day;
	const char *says;
};

struct ts_propose_community_result {
	size_t place;
	double objective, gap;
	bool proven, equal_to_first;
	const char *heading, *why;
	struct ts_propose_line_result *stock;
	size_t stock_count;
	struct ts_propose_shared_water_result shared;
	struct ts_propose_limiting_result limiting;
	struct ts_propose_load_result load;
	struct ts_texts order, conditions;
	const char *purchases_say;
	struct ts_propose_purchase_result *purchases;
	size_t purchase_count;
};

struct ts_propose_left_out_result {
	const char *species, *reason, *rule, *says;
};

struct ts_propose_waiting_result {
	const char *name;
	size_t species;
	struct ts_texts animals;
	const char *says;
};

/* One that was asked for and cannot be had. */
struct ts_propose_must_result {
	const char *species, *says;
	const char
		*possible; /* the smallest thing that would make it possible; NULL: nothing found */
};

struct ts_propose_result {
	const char *headline, *deciding, *water_says, *animals_say, *tank_says, *chosen_says;
	bool mature, conditions;
	bool thin;        /* GH was not read: the lists are for any usual tap */
	bool lid_assumed; /* nothing was said of a lid, and some list needs one */
	size_t candidates, species_count, species_most;
	double volume_l, floor_m2;
	struct ts_texts held, notes, closing;
	struct ts_texts water_notes; /* what is to be said of the water */
	struct ts_propose_must_result *musts;
	size_t must_count;
	const struct ts_propose_purchase_result *maturing; /* the days before any animal */
	size_t maturing_count;
	const char *needs; /* of the first list: filter, heater, changes; NULL: there is no list */
	const char *maturing_says, *maturing_heading, *maturing_short; /* short: in a line */
	const char *made_up_says; /* what the lists lack that a tank like this should have */
	const char *fewer_says;   /* why there are fewer lists than were asked for; NULL: not so */
	const char *why_heading, *why_says;
	struct ts_propose_community_result *communities;
	size_t community_count;
	struct ts_propose_waiting_result *waiting;
	size_t waiting_count;
	struct ts_propose_left_out_result *left_out;
	size_t left_out_count;
	/* For the files that a call asks for: model and first list; not a part of what is told. */
	const struct ts_proposal *proposal;
	bool held_by_filter_alone;
};

/* Answers; false when memory ran out (the arena says so). */
bool ts_answer_propose(const struct ts_asking *asking, const struct ts_propose_question *question,
	struct ts_propose_result *ret);

/* For the other half, propose_possible.c: what would let an animal in that was asked for. */
const char *ts_answer_possible(const struct ts_asking *asking, const struct ts_wish *wish,
	const struct ts_candidacy *candidacy);

/* Adds why an animal is no candidate, without a full stop. */
void ts_answer_left_out(struct ts_text *text, const struct ts_profile *profile,
	const struct ts_practice *practice, const struct ts_candidacy *c);

#endif
