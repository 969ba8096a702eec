/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the files of the loader share: the walk over libyaml's events (load_events.c), values and
 * files that are named (load.c), lists and phrases (load_lists.c).
 */
#ifndef TS_RECORDS_LOAD_WORK_H
#define TS_RECORDS_LOAD_WORK_H

#include <yaml.h>

#include "base/arena.h"
#include "base/text.h"
#include "model/codes.h"
#include "records/load.h"
#include "records/value.h"

struct step {
	const char *key; /* NULL: an index */
	size_t index;
};

struct load {
	yaml_parser_t parser;
	yaml_event_t event;
	bool have_event, broken, out_of_memory;
	bool held; /* the event was looked at, and is still to be taken */
	const char *file;
	const struct ts_system *system; /* NULL: files that are named cannot be read */
	struct ts_arena *arena;
	struct ts_findings *findings;
	struct step path[TS_DEPTH_MOST + 2];
	size_t depth;
	struct ts_scan_pair pair; /* the hardnesses of the block at hand */
	bool ok;
};

/* A list while it is read. */
struct list {
	char *items;
	size_t count, room;
};

void ts_load_say_at(struct load *l, enum ts_code_id code, yaml_mark_t mark, size_t shift,
	const char *what, const char *remedy);
void ts_load_say(struct load *l, enum ts_code_id code, const char *what, const char *remedy);
const char *ts_load_scalar(struct load *l);
/* The next event; false at the end of what can be parsed. Anchors and tags are refused here. */
bool ts_load_next(struct load *l);
/* Reading ends here: what libyaml needs grows with the square of the nesting. */
void ts_load_say_too_deep(struct load *l);
/* Passes over the value that the current event starts. */
void ts_load_skip_value(struct load *l);
bool ts_load_want(struct load *l, yaml_event_type_t type, const char *wanted);
/* The scalar, kept; a finding where a NUL stands in it, which no text of ours has. */
const char *ts_load_keep_scalar(struct load *l);
void ts_load_say_value(struct load *l, const struct ts_value_says *says);
void ts_load_value_of(struct load *l, const struct ts_field *field, char *object);
/* Whether a member holds something: a key was read into it. */
bool ts_load_is_set(const struct ts_field *field, const char *object);
void ts_load_file_or(struct load *l, const struct ts_field *field, char *object);
void ts_load_texts(struct load *l, struct ts_texts *ret);
void ts_load_words(struct load *l, const struct ts_field *field, unsigned *ret);
/* A range that nobody writes is "not given", not 0..0, in inner blocks too. */
void ts_load_set_absent(const struct ts_shape *shape, char *object);
char *ts_load_add_item(struct load *l, const struct ts_shape *sub, struct list *list);
void ts_load_list(struct load *l, const struct ts_field *field, char *object);
void ts_load_mapping(struct load *l, const struct ts_shape *shape, char *object);
void ts_load_keys(struct load *l, const struct ts_shape *shape, char *object, yaml_mark_t mark);

#endif
