/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The reader's insides, shared by the files of this room: read.c drives (lines, headings, zones),
 * entry.c makes values of one label and its figures, collect.c keeps what was found, finish.c
 * makes the reading.
 */
#ifndef TS_INTAKE_READER_H
#define TS_INTAKE_READER_H

#include "intake/layouts.h"
#include "intake/lexer.h"
#include "intake/patterns.h"

/* Figures and words of one entry; a table row with more columns is not taken. */
#define TS_PARTS_MOST 64

/* One token of an entry, with what its column says about it. */
struct ts_part {
	struct ts_token token;
	unsigned line;
	int role;                   /* enum ts_role of its heading, 0 = none */
	const struct ts_term *unit; /* of its heading; NULL = none */
	size_t zone;                /* of its heading; 0 = the entry's */
};

/* Bytes of a zone's name, with its NUL. */
#define TS_NAME_ROOM 80

/* Bytes of a line that is shown, with its NUL. */
#define TS_SHOWN_ROOM 160
#define TS_DIGITS_ROOM 32

/* A label and what stands behind it, perhaps over several lines. */
struct ts_entry {
	const struct ts_term *label; /* NULL: none is open */
	bool implied;                /* there is no label, the unit says what it is */
	bool goes_on;                /* its sentence ends in "from 44 to" */
	bool headed;                 /* the roles of headings hold */
	unsigned line;               /* of the label */
	size_t zone;
	struct ts_part parts[TS_PARTS_MOST];
	size_t count;
	bool overfull;
	char text[TS_SHOWN_ROOM]; /* the label's line, for gaps */
};

/* What the figures of one entry, or of several alike, say. NAN = nothing said. */
struct ts_slot {
	const struct ts_field *field;
	const struct ts_term *unit;
	size_t zone;
	int rank;      /* of its label; lower is better */
	bool by_order; /* lowest, mean and highest told only by their order */
	bool part;     /* of what the field counts: free chlorine */
	bool restated; /* in brackets, or the second of two units */
	bool unlike;   /* stated by itself more than once, and not alike */
	bool differs;  /* its statements are not all the same */
	double low, high, mean;
	enum ts_measure_kind kind; /* BELOW, ABOVE; VALUE = ordinary */
	bool single;               /* one figure without a statistic */
	size_t count;              /* entries */
	unsigned line, last;
	const char *printed, *rule, *assumed;
};

#define TS_SIGHTS_MOST 96

/* A figure beside a name or a unit of ours, until it is taken or asked about. */
struct ts_sight {
	unsigned line;
	unsigned short start; /* of its token */
	bool settled;
	char digits[TS_DIGITS_ROOM], text[TS_SHOWN_ROOM];
};

#define TS_SLOTS_MOST 2048
#define TS_COLUMNS_MOST 64

/* Columns of a table of places by quantities without separators, with that of the places. */
#define TS_ALIGNED_MOST 16

/* A heading over a column. */
struct ts_heading {
	int role;
	bool unknown; /* a word that no row of terms.c knows */
	unsigned short cell, start, end;
	const struct ts_term *unit;
	const struct ts_term *label, *form; /* wide tables: the quantity of the column */
	size_t zone;                        /* a column of figures named after a zone */
};

struct ts_intake {
	struct ts_allocator allocator;
	struct ts_arena arena; /* everything found; bounded by the counts */
	struct ts_lexer *lexer;
	struct ts_patterns *layouts;
	struct ts_report_refusal refused;
	bool is_refused, carriage;
	size_t bytes;
	char magic[8];

	struct ts_report_line line;
	struct ts_tokens tokens;
	struct ts_entry entry;
	struct ts_entry cell;   /* of a wide table: one cell at a time */
	bool scale;             /* what stands on this line are classes */
	char delimiter;         /* of this file; 0 = not known */
	unsigned pending_lines; /* physical lines inside a quoted cell */
	struct ts_heading headings[TS_COLUMNS_MOST];
	size_t heading_count;
	bool headed, wide;
	bool of_places; /* wide, and its first column is headed so */
	bool aligned;   /* wide without separators: its columns are told by their place */
	bool units_due; /* the line below such a heading may hold their units */
	struct {
		unsigned short start, end;
	} columns[TS_ALIGNED_MOST]; /* of such headings; the first is that of the places */
	size_t column_count;
	bool value_row;           /* below the heading a row was read */
	unsigned ends_line;       /* the first row of lowest or highest; 0 = none */
	char ends[TS_SHOWN_ROOM]; /* that row */
	size_t heading_cells;
	unsigned blank_lines; /* since the last line with something on it */
	size_t zone;

	struct ts_slot *slots;
	size_t slot_count, slot_room;
	struct ts_report_value *values;
	size_t value_count, value_room, value_more;
	struct ts_report_gap *gaps;
	size_t gap_count, gap_room, gap_more;
	struct ts_report_clash *clashes;
	size_t clash_count, clash_room;
	unsigned others[TS_REPORT_OTHERS_MOST];
	size_t other_count, other_more;
	struct ts_sight sights[TS_SIGHTS_MOST];
	size_t sight_count;
	bool columns_above;       /* names side by side without a figure */
	unsigned columns_line;    /* of them */
	unsigned named_line;      /* the last with a name of ours alone; 0 = none */
	char tail[TS_SHOWN_ROOM]; /* the last line that ended with a figure without a name */
	unsigned tail_line;       /* 0 = none */
	unsigned asked;           /* lines with a name that is not known, of which was asked */
	const char **zones;
	size_t zone_count, zone_room;
	bool class_only;
	bool unordered;        /* three figures side by side in no order, or places side by side */
	size_t points, commas; /* figures so far whose decimals are beyond doubt */
	unsigned latin;
};

/* read.c: what stands behind the last line end, and what is still open. */
void ts_intake_last_line(struct ts_intake *in);

/* entry.c: reads the entry and closes it; one that is not open does nothing. */
void ts_entry_close(struct ts_intake *in, struct ts_entry *entry);
/* Adds a token of that line; beyond TS_PARTS_MOST the entry is overfull. */
void ts_entry_add(struct ts_entry *entry, const struct ts_token *token, unsigned line);
/* The row of the reading that a label names, with the form of its figures. NULL: not ours. */
const struct ts_field *ts_field_of(const struct ts_term *label, const char *form);

bool ts_entry_has_figures(const struct ts_entry *entry);
/* Figures but temperatures of measurement: "at 20 degrees it was / 47 mS/m". */
bool ts_entry_has_values(const struct ts_entry *entry);
/* All its figures are limits of that role (TS_ROLE_*), and it says of none that it was not found.
 */
bool ts_entry_only(const struct ts_entry *entry, int role);

/* table.c: takes the line in `in->tokens` when it is a heading or a row of a wide table. */
bool ts_table_line(struct ts_intake *in);
/* Gives the parts of a row their roles; false: the headings do not tell them. */
bool ts_table_row(struct ts_intake *in, struct ts_entry *entry);
/* Whether two blanks or more part the line. */
bool ts_table_has_pieces(const struct ts_intake *in);
/* A cell's text as printed, without quotes; "" where there is none. */
void ts_cell_text(const struct ts_intake *in, size_t cell, char out[TS_NAME_ROOM]);
/* True for a figure that can be a value: no temperature of measurement, no year, no percent. */
bool ts_is_figure(const struct ts_intake *in, size_t token);

/* prose.c: whose a figure is that stands before a name. */
enum ts_prose { TS_PROSE_NOT, TS_PROSE_ITS, TS_PROSE_PERHAPS };

/* Whether the figure is that of the name behind it, whose token `name` is then. */
enum ts_prose ts_prose_before(const struct ts_intake *in, size_t figure, size_t *name);
/* Whether this line begins with what may be the figure of that name, at the end of the last one. */
bool ts_prose_below(const struct ts_intake *in, const struct ts_entry *entry);
/* Whether figures before the first name of the line are nobody's. */
bool ts_prose_asks_before(const struct ts_intake *in);
/* Whether the line ends in the middle of "from 44 mg/l to". */
bool ts_prose_goes_on(const struct ts_intake *in);
/* Keeps a line that ends with a figure; asks about it when the next begins with a name. */
void ts_prose_keep_tail(struct ts_intake *in);
void ts_prose_ask_tail(struct ts_intake *in);

/* sweep.c: notes the figures of the line that something must be said about. */
void ts_sweep_line(struct ts_intake *in);
/* Strikes a figure off by the line and the start of its token. */
void ts_sweep_settle(struct ts_intake *in, unsigned line, unsigned start);
/* Strikes off those of the line whose digits stand in the text that is shown; NULL: all. */
void ts_sweep_settle_shown(struct ts_intake *in, unsigned line, const char *text);
/* Asks about what is left and nothing open can take; `all`: about all that is left. */
void ts_sweep_ask(struct ts_intake *in, bool all);
/* The line, or what of a long one stands about a figure. */
void ts_sweep_text(const struct ts_intake *in, size_t figure, char out[TS_SHOWN_ROOM]);
/* Whether a word that is no term looks like the name of something that a water file holds. */
bool ts_sweep_names(const struct ts_intake *in, const struct ts_token *t);

/* collect.c. Texts are copied where they are not constant. */
void ts_collect_value(struct ts_intake *in, const struct ts_report_value *value);
/* `key`: of which quantity it asks; NULL: not known. */
void ts_collect_gap(struct ts_intake *in, const char *key, unsigned line, const char *text,
	const char *why, const char *remedy);
void ts_collect_clash(struct ts_intake *in, unsigned line, unsigned other, const char *says);
/* Lines of which nothing is held are listed, so that none passes unsaid. */
void ts_collect_other(struct ts_intake *in);
/* Adds what one entry says to the slot of its kind. */
void ts_collect_slot(struct ts_intake *in, const struct ts_slot *slot);
/* The index + 1 of the zone of that name, added where it is new; all beyond the most are one. */
size_t ts_collect_zone(struct ts_intake *in, const char *name);

#endif
