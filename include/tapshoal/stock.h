/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Who can live together in which tank: its geometry, and what the animals make of its water. Pure
 * computation; allocates nothing. Figures and their grades: docs/methods.md, "Living together".
 */
#ifndef TAPSHOAL_STOCK_H
#define TAPSHOAL_STOCK_H

#include <tapshoal/match.h>
#include <tapshoal/plan.h>

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Litres of water in the tank: `volume` where it is given, else the inside box times the share that
 * is water (0.85, with rocks 0.75: common practice, no source). NAN when neither is known.
 */
TS_API double ts_tank_net_l(const struct ts_tank *tank, const struct ts_practice *practice);

/* Floor, m2; NAN when length or width is not given. */
TS_API double ts_tank_floor_m2(const struct ts_tank *tank);

/* Animals of one species in a tank; `either`: of unknown or unimportant sex. */
struct ts_group {
	const struct ts_species *species;
	unsigned males, females, either;
	double size_cm; /* the smallest of them now; 0 = not known, then as usually sold */
	unsigned forms; /* under how many names, where a plan names several; else 0 */
};

/* How many animals a group holds. */
TS_API unsigned ts_group_count(const struct ts_group *group);

/* The rules of living together; codes, grades and costs: ts_rule_rows[]. */
enum ts_rule_id {
	/* one species in a tank */
	TS_RULE_CAUTION,
	TS_RULE_COVER,
	TS_RULE_EATS_PLANTS,
	TS_RULE_FEW,
	TS_RULE_FLOW,
	TS_RULE_FORMS_CROSS,
	TS_RULE_LAND,
	TS_RULE_LIGHT,
	TS_RULE_OLD_TANK,
	TS_RULE_OWN_KIND,
	TS_RULE_PAIR_FORMS,
	TS_RULE_SAND,
	TS_RULE_SEXES,
	TS_RULE_SPECIALIST,
	TS_RULE_TANK_HEIGHT,
	TS_RULE_TANK_LENGTH,
	TS_RULE_TANK_UNMEASURED,
	TS_RULE_TANK_WIDTH,
	TS_RULE_TERRITORY,
	TS_RULE_UNSETTLED,
	TS_RULE_YOUNG,
	/* two species together */
	TS_RULE_ATTACKED,
	TS_RULE_CHASED,
	TS_RULE_CROSSES,
	TS_RULE_EATEN,
	TS_RULE_ELECTRIC,
	TS_RULE_FIN_NIPPER,
	TS_RULE_FLOW_APART,
	TS_RULE_GH_APART,
	TS_RULE_LABYRINTH,
	TS_RULE_LAKE_APART,
	TS_RULE_LIGHT_APART,
	TS_RULE_NIGHT_HUNTER,
	TS_RULE_OUTCOMPETED,
	TS_RULE_PH_APART,
	TS_RULE_RIVALS,
	TS_RULE_SALT_APART,
	TS_RULE_SHRIMPS_EATEN,
	TS_RULE_SNAILS_EATEN,
	TS_RULE_TEMPERATURE_APART,
	/* the whole plan */
	TS_RULE_AMMONIA,
	TS_RULE_BUFFER,
	TS_RULE_BUFFER_OPEN,
	TS_RULE_CHLORINE,
	TS_RULE_COUNT_ASSUMED,
	TS_RULE_CROWDED,
	TS_RULE_DISTRESS,
	TS_RULE_EMPTY,
	TS_RULE_FILTER,
	TS_RULE_FILTER_UNKNOWN,
	TS_RULE_FLOOR,
	TS_RULE_KH_UNKNOWN,
	TS_RULE_LITRES,
	TS_RULE_MANY_SPECIES,
	TS_RULE_NEWCOMERS,
	TS_RULE_NITRATE,
	TS_RULE_NITRATE_LOAD,
	TS_RULE_NITRATE_OPEN,
	TS_RULE_NITRITE,
	TS_RULE_OXYGEN,
	TS_RULE_SIDES_ASSUMED,
	TS_RULE_TANK_UNKNOWN,
	TS_RULE_TEMPERATURE_UNKNOWN,
	TS_RULE_UNKNOWN_SPECIES,
	TS_RULE_UNTESTED,
	TS_RULE_WARM_OXYGEN,
	TS_RULE_WATER,
	TS_RULE_WATER_UNKNOWN,
	TS_RULE_WATER_UNSURE,
	TS_RULE__COUNT
};

/* What the number behind a judgement is; what may follow from it: docs/methods.md. */
enum ts_rests {
	TS_RESTS_RECORDS, /* on what the records of the animals say */
	TS_RESTS_READ,
	TS_RESTS_COMPUTED,
	TS_RESTS_ASSUMED,
	TS_RESTS_NOT_KNOWN,
	TS_RESTS__COUNT
};

/* What mends a fault, from the cheapest to the dearest. */
enum ts_remedy_kind {
	TS_REMEDY_NONE,
	TS_REMEDY_MAKE_SAFE,
	TS_REMEDY_MEASURE,
	TS_REMEDY_WAIT,
	TS_REMEDY_ROUTINE,    /* water changed, per cent every so many days */
	TS_REMEDY_WARMTH,     /* the heater set, or a cooler place */
	TS_REMEDY_MINERALS,   /* salts into the new water */
	TS_REMEDY_DILUTE,     /* water without minerals into the new water */
	TS_REMEDY_TANK,       /* lid, length, ...: of the tank there is */
	TS_REMEDY_NUMBER,     /* of one species, or its sexes */
	TS_REMEDY_LEAVE_OUT,  /* planned, and not to be bought */
	TS_REMEDY_OTHER_HOME, /* lives there */
	TS_REMEDY__COUNT
};

/* Figures that a kind does not have are 0. */
struct ts_remedy {
	enum ts_remedy_kind kind;
	bool mends;                        /* it was tried, and the fault is gone without another */
	bool clears;                       /* and after it nothing harms anybody */
	unsigned attempt;                  /* which of its kind */
	const struct ts_species *species;  /* whose number, who goes */
	unsigned from, to;                 /* how many of them */
	unsigned males, females;           /* of `to`, where that matters */
	double percent, days;              /* ROUTINE; DILUTE: per cent without minerals */
	double gh_dh, kh_dh;               /* MINERALS, DILUTE: of the water then */
	double nahco3_g, cacl2_g, mgso4_g; /* MINERALS: into 100 L (CaCl2.2H2O, MgSO4.7H2O) */
	double temp_c;                     /* WARMTH: what the tank is kept at */
	double step_percent;     /* MINERALS, DILUTE where animals live: changed every week */
	unsigned step_count;     /* after so many of them the tank is there */
	bool test_ammonia_first; /* nobody has read it, and the pH will rise */
	double length_cm, width_cm, height_cm; /* TANK: what it needs */
	double net_l; /* ROUTINE, and where step_percent is: all of the water, of which it is a part
		       */
};

/* A rule that holds here: the animal, our number and its number (NAN: the rule has none). */
struct ts_ruling {
	enum ts_rule_id rule;
	enum ts_severity severity; /* TS_NOTE, TS_QUESTION, TS_CONCERN, TS_CONFLICT */
	enum ts_rests rests;
	const struct ts_species *subject; /* who suffers; NULL = all, or nobody known */
	const struct ts_species *other;   /* from whom; NULL = from the tank or its own kind */
	double ours, its, change;
	int word; /* caution, flow, light or parameter that the rule is about; else 0 */
	const struct ts_match *match; /* of the subject with the water; NULL = not about it */
	const char *name;             /* a name that no species has; NULL = not about one */
	struct ts_remedy remedy;      /* of a plan as a whole (stock/check.h); else of no kind */
};

struct ts_rulings {
	struct ts_ruling at[2 * TS_RULE__COUNT];
	size_t count;
};

/* What a rule looks at. */
enum ts_rule_scope { TS_SCOPE_ALONE, TS_SCOPE_PAIR, TS_SCOPE_PLAN };

/* What a rule is about, in the order in which an answer speaks. */
enum ts_rule_topic {
	TS_TOPIC_DANGER = -2,
	TS_TOPIC_NAME,
	TS_TOPIC_COMPANY, /* of a row that says nothing */
	TS_TOPIC_TEMPERATURE,
	TS_TOPIC_WATER,
	TS_TOPIC_ROOM,
	TS_TOPIC_WASTE,
	TS_TOPIC_CARE
};

/* One rule as a row. `parameter`: what the numbers are about, "temperature", "tank length". */
struct ts_rule_row {
	const char *code; /* "stock.fin-nipper"; never changes meaning */
	const char *parameter, *says, *grade;
	enum ts_rule_scope scope;
	int cost; /* practice row (enum ts_practice_id) of what a concern costs; -1 = nothing */
	enum ts_rule_topic topic;
};

TS_API extern const struct ts_rule_row ts_rule_rows[TS_RULE__COUNT];

/*
 * Adds what holds for one group alone in this tank, or for two groups of different species
 * together (in either direction). `ret->count` must be 0 or what earlier calls left; rulings that
 * find no room are left out, graver ones never before lighter ones. `practice` NULL: the table's
 * own values. What the tank file does not say is a question; sides that are not given are those
 * that a tank of so many litres usually has (common practice, no source).
 */
TS_API void ts_rules_alone(const struct ts_group *group, const struct ts_tank *tank,
	const struct ts_practice *practice, struct ts_rulings *ret);
TS_API void ts_rules_together(const struct ts_group *a, const struct ts_group *b,
	const struct ts_tank *tank, const struct ts_practice *practice, struct ts_rulings *ret);

/* What rulings cost a list: a conflict forbids it, concerns cost points. */
struct ts_rule_cost {
	bool conflict;
	unsigned points;
};
TS_API struct ts_rule_cost ts_rules_cost(
	const struct ts_rulings *rulings, const struct ts_practice *practice);

/* One day of a tank, as it stands before that day's water change. */
struct ts_drift_day {
	unsigned day;               /* 0 = now */
	double ph_low, ph, ph_high; /* over day and night; NAN: does not follow from KH here */
	double kh_dh, gh_dh;
	double tan_mg_l; /* total ammonia as N; what a filter that works at all leaves: 0 */
	double no3_mg_l; /* as NO3 */
	double conductivity_us_cm; /* at 25 C, from the ions */
	bool filter_doubtful;      /* too acid for nitrifying bacteria to be relied on */
	bool change_due;           /* water is changed on this day */
};

/* A figure with its doubt. */
struct ts_estimate {
	double low, value, high;
};

/* What is to be known of a tank before its load can be told. */
struct ts_load_case {
	const struct ts_group *groups; /* as adults */
	size_t count;
	const struct ts_tank *tank;
	double temp_c;       /* NAN = 25 C */
	double kh_dh;        /* of the tank now; NAN = not known */
	double kh_new_dh;    /* of what is poured in; NAN = not known */
	double no3_new_mg_l; /* likewise; NAN = taken as 0 */
	/* What the tank's log shows of the rise of nitrate, plants taken off; NULL: nothing. */
	const struct ts_estimate *measured_no3_rise_mg_l_week;
	double measured_times; /* waste of all these animals by that of those it was read of; 0: 1
				*/
};

/*
 * What the animals make of the water. Feed by mass^0.8 (metabolic scaling), nitrogen by protein,
 * alkalinity by the process table of chem/nitrogen.h; equations in docs/methods.md, "Load".
 */
struct ts_load {
	double net_l;
	struct ts_estimate feed_g_day, nitrogen_mg_day; /* nitrogen before plants */
	struct ts_estimate no3_rise_mg_l_week;          /* between water changes */
	struct ts_estimate
		no3_steady_mg_l; /* before a change, once settled; INFINITY: none is made */
	struct ts_estimate kh_used_dh_week;
	struct ts_estimate buffer_days; /* without a change, to the floor; NAN: KH not known */
	double kh_steady_dh;            /* before a change, once settled; NAN: not known */
	double change_percent, change_days;
	bool feeding_known, plants_known, change_known;
	double measured_no3_rise_mg_l_week; /* by the log; NAN: none; then it counts above */
	double modelled_no3_rise_mg_l_week;
	bool differs;       /* measured and modelled are further apart than load.differs */
	double oxygen_mg_l; /* what water of this temperature holds; NAN beyond 0..40 C */
};

/* The load; TS_BAD_INPUT when the tank's volume is not known, `*ret` then untouched. */
TS_API TS_MUST_USE enum ts_status ts_load_of(
	const struct ts_load_case *input, const struct ts_practice *practice, struct ts_load *ret);

/*
 * Mass of one animal, g, by its total length in cm: by the measured relation of its record, else
 * by the shape of its body. ts_mass_doubt(): by which factor it may be more or less.
 */
TS_API double ts_mass_g(const struct ts_species *species, double length_cm);
TS_API double ts_mass_doubt(const struct ts_species *species);

/* Nitrogen that the group's feed brings into the water, mg a day, fed as usual, before plants. */
TS_API double ts_group_nitrogen_mg_day(const struct ts_group *group, const struct ts_tank *tank,
	double temp_c, const struct ts_practice *practice);

/*
 * The nitrogen, mg a day before plants, at which this tank settles `no3_mg_l` above its new water,
 * or at which `kh_dh` lasts `days` to the floor without a change. NAN: volume or KH not known.
 */
TS_API double ts_nitrogen_for_no3(
	const struct ts_tank *tank, double no3_mg_l, const struct ts_practice *practice);
TS_API double ts_nitrogen_for_buffer(
	const struct ts_tank *tank, double kh_dh, double days, const struct ts_practice *practice);

/* Floor that the group defends, m2; 0 = none. */
TS_API double ts_group_floor_m2(const struct ts_group *group, const struct ts_practice *practice);

/*
 * Floor of all together, m2: each holds its own at the level where it swims, but crowds of lake
 * cichlids share the largest of theirs. A sum begins zeroed; the fullest level is the total.
 */
struct ts_floor_sum {
	double level_m2[3], crowd_m2; /* bottom, middle, top */
};
TS_API double ts_floor_total_m2(const struct ts_floor_sum *sum);
TS_API void ts_floor_add(
	struct ts_floor_sum *io, const struct ts_group *group, const struct ts_practice *practice);

#ifdef __cplusplus
}
#endif

#endif
