/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A utility's or laboratory's report as values with the line each came from. Bytes are fed as they
 * arrive, in linear time and bounded memory; what looks like ours but cannot be read surely is
 * listed and never guessed. The words of reports are rows in terms.c, their layouts in layouts.c.
 */
#ifndef TS_INTAKE_REPORT_H
#define TS_INTAKE_REPORT_H

#include "model/shape.h"

/* What a figure of a report is. Only results are water; the others are told from them. */
enum ts_column { TS_COLUMN_RESULT, TS_COLUMN_LEGAL, TS_COLUMN_DETECTION };

enum ts_statistic {
	TS_STATISTIC_SINGLE, /* one figure, nothing said about it */
	TS_STATISTIC_MEAN,
	TS_STATISTIC_LOWEST,
	TS_STATISTIC_HIGHEST,
	TS_STATISTIC_RANGE /* lowest to highest */
};

extern const char *const ts_column_words[], *const ts_statistic_words[];

/* Figures and remarks kept one by one; more are only counted, and still taken into the reading. */
#define TS_REPORT_VALUES_MOST 1000
#define TS_REPORT_GAPS_MOST 100
#define TS_REPORT_ZONES_MOST 64
#define TS_REPORT_OTHERS_MOST 50

/* One figure of the report. */
struct ts_report_value {
	const struct ts_field *field; /* key of the reading */
	struct ts_measure measure;    /* in the canonical unit of the field */
	enum ts_column column;
	enum ts_statistic statistic;
	unsigned line;       /* from 1 */
	const char *printed; /* figure and unit as printed */
	const char *rule;    /* id of the layout row, "under-heading" ... */
	const char *assumed; /* what had to be concluded or assumed; NULL = nothing */
	size_t zone;         /* 1 + index into zones; 0 = no zone named */
};

/* What looked relevant and was not taken. */
struct ts_report_gap {
	unsigned line;
	const char *key;    /* of which quantity, NULL = not known */
	const char *text;   /* the line, or its beginning */
	const char *why;    /* why it was not taken */
	const char *remedy; /* what to look for or to write */
};

/* Two statements of the report that cannot both hold; what was kept is said. */
struct ts_report_clash {
	unsigned line, other; /* other 0 = the same line */
	const char *says;
};

/* Where one field of the reading came from. */
struct ts_report_origin {
	unsigned line, last; /* first and last line that gave a figure */
	size_t count;        /* entries of the report behind it */
	const char *printed, *rule, *assumed;
	double mean; /* canonical unit; NAN = no mean was printed */
};

/* The whole answer; everything belongs to `arena`. */
struct ts_report {
	struct ts_arena *arena;
	struct ts_reading reading;                       /* method: utility-report */
	struct ts_report_origin origins[TS_FIELDS_MOST]; /* by row of ts_shape_reading */
	size_t taken;                                    /* fields of the reading that are given */
	struct ts_report_value *values;
	size_t value_count, value_more;
	struct ts_report_gap *gaps; /* the most important first */
	size_t gap_count, gap_more;
	struct ts_report_clash *clashes;
	size_t clash_count;
	/* Lines with a figure and a unit of which no word was known: of nothing that we hold, or
	 * a name that we lack. */
	unsigned others[TS_REPORT_OTHERS_MOST];
	size_t other_count, other_more;
	const char **zones; /* names as printed */
	size_t zone_count;
	size_t zone;     /* 1 + index of the zone that was read; 0 = the report has none */
	bool choose;     /* several zones and none asked for: the reading is empty */
	bool class_only; /* classes of hardness ("hard water") were met; they are not values */
	unsigned latin;  /* first line that is not UTF-8 and was read as Latin-1; 0 = none */
	unsigned lines;
};

/* Why bytes are no report at all. */
struct ts_report_refusal {
	const char *what, *remedy;
};

/* What a rule of a value or origin means, in words; never NULL. */
const char *ts_report_rule_says(const char *rule);

struct ts_intake;

/*
 * Opens a reader; all its memory comes from `allocator` (NULL: malloc). NULL when there is none.
 */
struct ts_intake *ts_intake_open(const struct ts_allocator *allocator);
/* Frees the reader; NULL does nothing. A report made from it lives on in its own arena. */
void ts_intake_close(struct ts_intake *intake);

/*
 * Takes the next `len` bytes. TS_BAD_INPUT: a PDF or other binary; `*ret_refusal` says what it is
 * and what to do, nothing further is read. TS_NO_MEMORY.
 */
TS_MUST_USE enum ts_status ts_intake_feed(struct ts_intake *intake, const char *bytes, size_t len,
	struct ts_report_refusal *ret_refusal);

/*
 * Ends the report and makes the answer, taken from `arena`. `zone` names one of several supply
 * zones (a part of its name is enough, without regard to case), NULL = none asked for. TS_NO: no
 * value was understood, or several zones and none chosen, or none of that name; `*ret` is set and
 * tells. TS_NO_MEMORY. The reader must be closed afterwards.
 */
TS_MUST_USE enum ts_status ts_intake_finish(
	struct ts_intake *intake, const char *zone, struct ts_arena *arena, struct ts_report *ret);

#endif
