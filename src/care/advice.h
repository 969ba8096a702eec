/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The advice about a running tank: leave it, make it safe, or change something. A table of rows
 * from the most pressing to the least; the first that holds is the answer, later ones are added.
 * No row ever proposes to dose a pH. The sentences are rendered in words/advice.h.
 */
#ifndef TS_CARE_ADVICE_H
#define TS_CARE_ADVICE_H

#include <tapshoal/match.h>
#include <tapshoal/plan.h>

#include "chem/solution.h"
#include "model/practice.h"
#include "water/mend.h"

/* Signs of distress, sorted by what they point to. Bits. */
enum ts_care_signs {
	TS_SIGNS_GASPING = 1 << 0,    /* gasping at the surface */
	TS_SIGNS_SUDDEN_ALL = 1 << 1, /* since hours or days, all kinds of animals */
	TS_SIGNS_ONE = 1 << 2,        /* one animal or one species */
	TS_SIGNS_SLOW = 1 << 3,       /* over weeks: wasting, thin, listless */
	TS_SIGNS_OTHER = 1 << 4,      /* not said since when or how many */
	TS_SIGNS_FIGHT = 1 << 5,      /* torn fins, chasing: beside what it may else be */
	TS_SIGNS_SPOTS = 1 << 6,      /* spots, rubbing: beside what it may else be */
	TS_SIGNS_FLOATING = 1 << 7,   /* bloated, out of balance: beside what it may else be */
};

/* What is known of the signs beside what they point to. Bits. */
enum ts_care_beside {
	TS_BESIDE_AT_ONCE = 1 << 0,    /* all show one, since hours */
	TS_BESIDE_STRONG = 1 << 1,     /* wounds, darting: more than weakness */
	TS_BESIDE_NO_ONSET = 1 << 2,   /* not said since when */
	TS_BESIDE_NO_BREADTH = 1 << 3, /* not said how many */
	TS_BESIDE_SPOTS = 1 << 4,      /* spots are seen, and not only rubbing */
	TS_BESIDE_ALGAE = 1 << 5,      /* algae, which are no illness */
	TS_BESIDE_CHANGED = 1 << 6,    /* it began with a change of water */
	TS_BESIDE_WOUNDS = 1 << 7,     /* wounds, holes, fungus */
	TS_BESIDE_CLOUDY = 1 << 8,     /* of the water: white or cloudy */
	TS_BESIDE_SMELL = 1 << 9,      /* it smells */
	TS_BESIDE_FILM = 1 << 10,      /* film or foam on the surface */
	TS_BESIDE_TINTED = 1 << 11     /* brown or yellow */
};

enum ts_known { TS_NOT_KNOWN, TS_KNOWN_YES, TS_KNOWN_NO };

/*
 * What is known of a tank. Numbers: NAN = not known; ts_care_state_open() makes all of them so.
 * Danger values are the highest that the readings allow.
 */
/* By the log of a tank and its routine: what comes next, days of the calendar. */
struct ts_care_next {
	bool known;
	long today, change, test; /* `test`: below 0: none */
	double litres, percent;   /* NAN: nobody knows how many litres it has */
	double said_litres;       /* at a change as the file says it; NAN: the same */
	unsigned tested;          /* bits 1 << enum ts_due_what (care/due.h) */
	unsigned supply;          /* the same, of the supply, overdue */
	struct ts_every said;     /* the routine of the file, where the log has another; days 0 */
};

struct ts_care_state {
	double ph, gh_dh, kh_dh, temp_c, ec_us_cm, no3_mg_l;
	double tan_mg_l, no2_mg_l, cl_mg_l, chlorine_mg_l, oxygen_mg_l;
	double copper_mg_l, copper_low_mg_l;
	/* Of pH and KH, with the doubt of both; NAN where pH does not tell it: hardly any KH, or an
	 * acid bed. */
	double co2_mg_l, co2_low_mg_l, co2_high_mg_l;
	double change_gh_dh, change_kh_dh, change_ec_us_cm, change_no3_mg_l; /* of the new water */
	double supply_before_gh_dh; /* of the new water, an older reading; NAN: none */
	double change_chlorine_mg_l, change_copper_mg_l;
	double change_days; /* from one change of water to the next; NAN: not known, or none */
	double change_percent_week;      /* of the water, as it was given; NAN: not said */
	double evaporation_percent_week; /* the same */
	bool pure_top_up;
	bool kh_level;        /* KH was read on several days, and has not fallen */
	bool kh_doubted;      /* pH and KH cannot both be right: nothing follows from that KH */
	bool softened;        /* the new water, perhaps */
	double newcomer_days; /* since the last animals came to others that live there; NAN: none */
	double buffer_days; /* until the buffer is used up under the present feeding and changes */
	double ph_trend; /* how far pH has moved over its readings, where that is a trend; 0 steady,
			    NAN not known */
	double ph_swing_low, ph_swing_high; /* the widest course of one day; NAN: not known */
	bool ph_repeated;      /* read on more than one day: whether it is steady can be told */
	double deaths;         /* unexplained, within four weeks */
	bool deaths_uncounted; /* some die, and nobody says how many */
	double lived_days; /* of the animals that have lived there longest; NAN: none, or no day */
	double reading_age_days; /* of the older of GH and KH; NAN: not known */
	double filter_stopped_h; /* how long the filter stood; NAN: it did not, or nobody knows */
	double ill_days;         /* of the animals that are ill, how long they live there; NAN */
	int ill;                 /* index in `residents` of those; -1: not said which */
	double away_days;        /* nobody will be there; NAN: somebody is */
	enum ts_known filter_mature;
	bool lived_long; /* stock has lived there for eight weeks or more */
	bool lived_in;   /* animals live there, and none is planned: nobody is to be bought */
	bool co2_injected;
	bool runs;          /* somebody lives there already, whoever is planned besides */
	bool filter_none;   /* there is none */
	bool filter_stands; /* it does not run, or did not for a while */
	bool alone;         /* it is one single animal */
	bool at_fault;      /* something else is to be mended now, such as the room */
	bool empty;         /* animals are planned, and none lives there yet: nothing is harmed */
	bool lime_bed;      /* limestone or aragonite: it raises GH and KH */
	bool acid_bed;      /* active soil or peat: it holds KH and pH down */
	bool peat;          /* and it is peat */
	bool moved;         /* another supply began, and nobody has lived in it for long */
	struct ts_care_next next;
	unsigned happened;                /* these days: bits by enum ts_happened */
	unsigned signs;                   /* bits of enum ts_care_signs */
	unsigned beside;                  /* bits of enum ts_care_beside */
	const struct ts_solution *tank;   /* NULL: not known; for what chasing a pH would cost */
	const struct ts_match *residents; /* every kind of animal in the tank, lent */
	size_t resident_count;
};

void ts_care_state_open(struct ts_care_state *ret);

enum ts_outcome {
	TS_ASK,
	TS_MAKE_SAFE,
	TS_TEST_AND_VET,
	TS_MATURE_FILTER,
	TS_STEADY,
	TS_CHANGE_STOCK,
	TS_LEAVE_ALONE,
	TS_OUTCOME__COUNT
};

enum ts_urgency { TS_NOW, TS_THIS_WEEK, TS_AT_LEISURE, TS_URGENCY__COUNT };

extern const char *const ts_outcome_words[TS_OUTCOME__COUNT + 1]; /* "make-safe"; NULL */
extern const char *const ts_urgency_words[TS_URGENCY__COUNT + 1]; /* "now"; NULL */

/* What is not known, and would tell why animals suffer. Bits. */
enum ts_untested {
	TS_UNTESTED_AMMONIA = 1 << 0,
	TS_UNTESTED_NITRITE = 1 << 1,
	TS_UNTESTED_TEMPERATURE = 1 << 2,
	TS_UNTESTED_KH = 1 << 3,
	TS_UNTESTED_COPPER = 1 << 4 /* of animals without a backbone */
};

/* Figures that the sentences quote; NAN = not known. */
struct ts_care_figures {
	double ph, gh_dh, kh_dh, temp_c, tan_mg_l, no2_mg_l, no3_mg_l, chlorine_mg_l, co2_mg_l;
	double oxygen_mg_l, deaths, change_gh_dh, change_kh_dh, ec_apart_percent, no3_apart_mg_l;
	double buffer_days, ph_trend, co2_low_mg_l, co2_high_mg_l, ph_swing_low, ph_swing_high;
	double lived_days, reading_age_days, filter_stopped_h, away_days, newcomer_days;
	double lived_years, lives_low_years, lives_high_years; /* of one that is old */
	double nh3_mg_l;                                       /* un-ionised ammonia as N, now */
	double nh3_there_mg_l; /* at the pH of the change water, once aired */
	double nh3_half_mg_l;  /* after a 50 % change with the change water, once aired */
	double ccc_mg_l;       /* EPA 2013 chronic limit for total ammonia here */
	double no2_limit_mg_l;
	double copper_mg_l, copper_limit; /* what the animal that the row speaks of bears */
	double copper_halves;             /* changes of half that bring it there */
	double change_chlorine_mg_l, change_copper_mg_l, change_days, supply_gh_dh, change_percent;
	unsigned untested; /* bits of enum ts_untested */
	/* What taking the pH to the middle of a listed range would cost. */
	double chase_ph, chase_acid_meq_l, chase_co2_mg_l, chase_kh_dh, chase_days;
	/* What the limits are: rows of practice. */
	double co2_limit, co2_concern, chlorine_limit, nh3_limit, oxygen_now, oxygen_enough;
	double kh_floor, kh_act, kh_warn, buffer_act, no3_limit, no3_concern, kh_apart_limit,
		ec_apart_limit;
	double no3_apart_limit, tan_safe, settled_days;
	struct ts_care_next next;        /* as in the state */
	bool moved;                      /* as in the state */
	bool ph_unliked;                 /* of those that live there somebody likes another */
	bool deaths_uncounted, at_fault; /* as in the state */
	bool buffer_lost;                /* KH below the floor */
	bool hardness_liked;             /* GH and KH are comfortable to all that live there */
	bool settled_well; /* they have lived there for long, without signs or deaths */
	/* What topping up with the new water can make of it at the most; NAN: the routine is not
	 * known. */
	double piled_gh_dh, piled_kh_dh;
	bool warmth_borne;             /* all there bear 29 C for some weeks */
	bool filter_new, filter_rinse; /* it stood so long that it is rinsed first */
	bool too_soft; /* of minerals that miss: too little of them, else too much */
	bool anything_read;
	unsigned beside;   /* as in the state */
	bool change_half;  /* half at once, and again: the ammonia is far above its limit */
	double nh3_halves; /* changes of half that bring the ammonia below its limit; NAN */
	bool peat;         /* as in the state */
	bool lime_bed;     /* which gives off hardness */
	bool routine_said; /* how much is changed, and how often */
	bool softer_liked; /* what is poured in suits them better than the tank */
	bool salt_borne;   /* nobody there is of soft water, or without a backbone */
	bool chloride_read;
	bool fast;          /* something cannot wait, or the filter stood: feed nothing then */
	bool harder;        /* the tank has more minerals than the new water, and no lime in it */
	bool careful;       /* no buffer, or perhaps none: a large change would throw the pH up */
	bool small_changes; /* buffer, waste or the new water forbid more than 10 to 15 % */
	bool small_often;   /* and there is something to bring down: every second day */
	bool poured_over;   /* the new water is too hard for the animal; else too soft */
	double soda_a_degree_g; /* baking soda that lifts KH of 100 L by 1 dH */
	bool kh_short;          /* the new water has less KH than the buffer wants */
	struct ts_mend kh_mend; /* how much it needs, then */
	struct ts_mend mend;    /* the minerals of the new water, mended; nothing in it: no need */
	bool mends;             /* there is something in it */
	double mend_from;       /* the figure from (or to) which the animal does better */
	struct ts_mend way_out; /* of a crash: water of KH 1 and the tank's own GH */
	bool way_out_bare;      /* made of water without minerals: the new water is not known */
	int animal;             /* index in `residents` of the one a row speaks of; -1: none */
	int parameter;          /* enum ts_parameter it speaks of */
};

struct ts_advice_row {
	const char *id; /* never changes meaning */
	int group;      /* the steps of the decision, 1..10; 11: beside any answer */
	enum ts_outcome outcome;
	enum ts_urgency urgency;
	/* Whether the row holds; may set the animal and parameter that it speaks of. */
	bool (*holds)(const struct ts_care_state *state, const double *practice,
		struct ts_care_figures *figures);
	const char *says; /* the cause and the first deed, short; "{kh}" and the like are figures */
	const char *because; /* the number that decides */
	const char
		*hour; /* what to do in the next hour, right whatever else is so; NULL: nothing */
	const char *week; /* what to do this week; NULL: nothing more */
	const char *source;
};

extern const struct ts_advice_row ts_advice_rows[];
extern const size_t ts_advice_row_count;

#define TS_ADVICE_MOST 120

struct ts_advice {
	const struct ts_advice_row *row;
	struct ts_care_figures figures;
};

/*
 * The rows that hold, the answer first; at least one for any state. Advice to leave something
 * alone is not added behind a danger, a sign of distress or an unready filter. Returns how many.
 */
size_t ts_advise(const struct ts_care_state *state, const struct ts_practice *practice,
	struct ts_advice ret[TS_ADVICE_MOST]);

/* Un-ionised ammonia, mg/L N; NAN where pH, temperature or total is not known or out of range. */
double ts_care_nh3_mg_l(double tan_mg_l, double ph, double temp_c);

#endif
