/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One entry while it is read, shared by the three files that read it: entry.c gathers its figures,
 * roles.c finds out what each is, emit.c converts them and hands them on.
 */
#ifndef TS_INTAKE_STUDY_H
#define TS_INTAKE_STUDY_H

#include "intake/reader.h"

#define TS_NO_FIGURE ((size_t)-1)
#define TS_LEADS_MOST 4

struct ts_figure {
	const struct ts_part *part;
	const struct ts_term *unit; /* printed behind it, or of its heading */
	const char *form;
	size_t group;
	int role; /* letter of layouts.h once it is known */
	bool dropped;
};

struct ts_event {
	int letter;    /* of layouts.h */
	size_t figure; /* TS_NO_FIGURE: no figure */
};

/* Everything about one entry while it is read. */
struct ts_study {
	struct ts_intake *in;
	const struct ts_entry *entry;
	const struct ts_field *field;
	struct ts_figure figures[TS_PARTS_MOST];
	size_t count;
	struct ts_event events[TS_PARTS_MOST];
	size_t event_count;
	const struct ts_term *leads[TS_LEADS_MOST]; /* units printed before the figures */
	size_t lead_count, groups;
	const char *form;
	double reference_c;
	bool closed, torn; /* other words came; figures came after them */
	bool alike;        /* of the unit of the first: two sources, raw and treated */
	bool limit_named;  /* the last word was one for a legal limit, also behind other words */
	bool by_legal;
	bool by_order; /* of ts_slot */
	bool emitted;  /* a result */
	bool unfound;  /* "not detected" */
	bool other;    /* "last year", "raw water" */
	double value;  /* of the first result, in the unit of the field */
	const char *rule;
};

/* True when both rows say the same unit. */
bool ts_same_unit(const struct ts_term *a, const struct ts_term *b);
/* Lists the entry as not taken. */
void ts_study_gap(const struct ts_study *s, const char *why, const char *remedy);

/* The unit of a figure: its own, else the one before the figures; NULL = none is printed. */
const struct ts_term *ts_study_unit(const struct ts_study *s, const struct ts_figure *f);
/* The legal limit that a figure of this unit equals; NULL = none. */
const struct ts_legal *ts_study_legal(
	const struct ts_study *s, const struct ts_term *unit, double value);
/* Whether a figure is what a rule says: a legal limit or range. */
bool ts_study_is_rule(const struct ts_study *s, const struct ts_figure *f);
/* Splits the figures into groups, each what is stated in one unit; at least one. */
void ts_study_group(struct ts_study *s);
/* Gives the figures of one group their roles by the layouts; false when none fits. */
bool ts_study_lay_out(struct ts_study *s, size_t group);

/* The zone of a figure: its column's, else its row's. */
size_t ts_study_zone(const struct ts_study *s, const struct ts_figure *f);
/* Forms and reference temperatures that a legal limit on the same line proves. */
void ts_study_learn(struct ts_study *s);
/* Converts the figures of one group and zone and adds what they say to their slot. */
void ts_study_emit(struct ts_study *s, size_t group, size_t zone);

#endif
