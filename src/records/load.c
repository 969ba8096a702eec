/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The walker that loads. One recursive descent over libyaml's events, guided by the rows of
 * model/shapes.c; it knows no key by name. Events: load_events.c; lists: load_lists.c. Reading the
 * bytes of a file: records/file.c.
 */
#include "records/load_work.h"

#include <string.h>

#include "base/findings.h"
#include "records/file.h"

void ts_load_say_value(struct load *l, const struct ts_value_says *says)
{
	if (says->what)
		ts_load_say_at(
			l, says->code, l->event.start_mark, says->at, says->what, says->remedy);
}

void ts_load_value_of(struct load *l, const struct ts_field *field, char *object)
{
	struct ts_value_says says;

	ts_value_read(
		field, ts_load_scalar(l), l->event.data.scalar.length, l->arena, object, &says);
	ts_load_say_value(l, &says);
	ts_value_pair_look(&l->pair, field, ts_load_scalar(l), &says, l->arena);
}

bool ts_load_is_set(const struct ts_field *field, const char *object)
{
	static const size_t sizes[] = {[TS_TEXT] = sizeof(const char *),
		[TS_WORD] = sizeof(int),
		[TS_NUMBER] = sizeof(double),
		[TS_MEASURE] = sizeof(struct ts_measure),
		[TS_CHOICE] = sizeof(struct ts_choice),
		[TS_EVERY] = sizeof(struct ts_every),
		[TS_LIST] = sizeof(void *)};
	size_t size = (size_t)field->kind < sizeof sizes / sizeof *sizes ? sizes[field->kind] : 0;

	for (size_t i = 0; i < size; i++) {
		if (object[field->offset + i])
			return true;
	}
	return false;
}

static bool holds_something(const struct ts_shape *shape, const char *object)
{
	for (size_t i = 0; i < shape->count; i++) {
		if (ts_load_is_set(&shape->fields[i], object))
			return true;
	}
	return false;
}

/* A file named in another one lies as seen from that one's folder. */
static const char *beside(struct load *l, const char *name)
{
	const char *slash = strrchr(l->file, '/');
	const char *folder = "";

	if (name[0] != '/' && slash)
		folder = ts_arena_text(l->arena, l->file, (size_t)(slash - l->file) + 1);
	return ts_arena_join(l->arena, folder ? folder : "", name, NULL);
}

void ts_load_file_or(struct load *l, const struct ts_field *field, char *object)
{
	const char *path;
	enum ts_status status;

	/* "water: [...]": nothing but its readings can be meant. */
	if (l->event.type == YAML_SEQUENCE_START_EVENT && field->sub == &ts_shape_water) {
		ts_load_list(
			l, ts_shape_field(&ts_shape_water, "readings"), object + field->offset);
		return;
	}
	if (l->event.type != YAML_SCALAR_EVENT) {
		ts_load_mapping(l, field->sub, object + field->offset);
		return;
	}
	if (field->sub == &ts_shape_tank && ts_load_scalar(l)[0] >= '0' &&
		ts_load_scalar(l)[0] <= '9') {
		ts_load_value_of(l, ts_shape_field(&ts_shape_tank, "size"), object + field->offset);
		return;
	}
	if (!ts_load_scalar(l)[0] || strcmp(ts_load_scalar(l), "-") == 0) {
		ts_load_say(l, TS_C_RECORDS_REFERENCE, "no file is named here", NULL);
		return;
	}
	path = beside(l, ts_load_scalar(l));
	if (!path)
		return;
	if (holds_something(field->sub, object + field->offset)) {
		ts_load_say(l, TS_C_RECORDS_REFERENCE, "keys of its own stand beside this file",
			"write them into that file");
		return;
	}
	status = l->system ? ts_records_load(field->sub, l->system, path, TS_OPEN_ORDINARY,
				     l->arena, object + field->offset, l->findings)
			   : TS_SYSTEM;
	l->out_of_memory |= status == TS_NO_MEMORY;
	if (status == TS_SYSTEM || status == TS_BAD_INPUT)
		ts_load_say(l, TS_C_RECORDS_REFERENCE,
			ts_arena_join(l->arena, "'", ts_load_scalar(l), "' ",
				status == TS_SYSTEM ? "cannot be read" : "has errors", NULL),
			status == TS_SYSTEM ? NULL : "see the findings of that file");
	memcpy(object + field->count_offset, &path, sizeof path);
}

static void load_value(struct load *l, const struct ts_field *field, char *object)
{
	void *at = object + field->offset;

	switch (field->kind) {
	case TS_SUB:
		ts_load_mapping(l, field->sub, at);
		return;
	case TS_FILE:
		ts_load_file_or(l, field, object);
		return;
	case TS_LIST:
		ts_load_list(l, field, object);
		return;
	case TS_TEXTS:
		ts_load_texts(l, at);
		return;
	case TS_WORDS:
		ts_load_words(l, field, at);
		return;
	default:
		if (ts_load_want(l, YAML_SCALAR_EVENT, "write one value"))
			ts_load_value_of(l, field, object);
	}
}

static void say_unknown_key(struct load *l, const struct ts_shape *shape)
{
	const char *near = ts_shape_nearest_key(shape, ts_load_scalar(l));
	const char *remedy = NULL;

	if (strspn(ts_load_scalar(l), "0123456789."))
		remedy = "inside { } a decimal comma splits the value: write a decimal point";
	else if (!near && strchr(ts_load_scalar(l), ' '))
		remedy = "inside { } a comma splits a text: put the text in quotes";
	else if (near)
		remedy = ts_arena_join(l->arena, "did you mean ", near, "?", NULL);
	ts_load_say(l, TS_C_RECORDS_UNKNOWN_KEY,
		ts_arena_join(l->arena, "unknown key '", ts_load_scalar(l), "'", NULL), remedy);
}

static void say_twice(struct load *l, const struct ts_field *field)
{
	ts_load_say(l, TS_C_RECORDS_DUPLICATE_KEY,
		ts_arena_join(l->arena, "'", field->key, "' stands twice", NULL), NULL);
}

/* The keys of one block that were met. */
struct keys {
	size_t next;               /* the row behind the last one */
	bool seen[TS_FIELDS_MOST]; /* of these, only as many as the shape has rows */
};

/* Keys that are needed and were not met. */
static void say_missing(
	struct load *l, const struct ts_shape *shape, const struct keys *keys, yaml_mark_t mark)
{
	for (size_t i = 0; i < shape->count; i++) {
		if (shape->fields[i].need == TS_REQUIRED && !keys->seen[i])
			ts_load_say_at(l, TS_C_RECORDS_MISSING_KEY, mark, 0,
				ts_arena_join(
					l->arena, "'", shape->fields[i].key, "' is missing", NULL),
				ts_arena_join(l->arena, "add ", shape->fields[i].key, ": ",
					shape->fields[i].says, NULL));
	}
}

static void load_field(struct load *l, const struct ts_field *field, char *object)
{
	l->path[l->depth++] = (struct step){field->key, 0};
	if (ts_load_next(l))
		load_value(l, field, object);
	l->depth--;
}

/* The one entry of a list that keys beside it fill: the first of them makes it. */
static char *entry_of(struct load *l, const struct ts_field *list, char *object)
{
	struct list of = {0};
	char *item = NULL;

	memcpy(&of.items, object + list->offset, sizeof of.items);
	memcpy(&of.count, object + list->count_offset, sizeof of.count);
	if (of.count)
		return of.count == 1 ? of.items : NULL;
	item = ts_load_add_item(l, list->sub, &of);
	memcpy(object + list->offset, &of.items, sizeof of.items);
	memcpy(object + list->count_offset, &of.count, sizeof of.count);
	return item;
}

/* Filled by a key that stood astray, before the block itself came. */
static bool met(const struct ts_shape *shape, const struct ts_field *field, const char *object)
{
	return shape->lenient && ts_load_is_set(field, object);
}

/*
 * A key of an inner block that stands outside it: taken where it belongs, as long as that can only
 * be one place. False: it belongs nowhere.
 */
static bool load_astray(
	struct load *l, const struct ts_shape *shape, struct keys *keys, char *object)
{
	for (const struct ts_home *h = ts_homes; h->shape; h++) {
		const struct ts_field *home = ts_shape_field(h->shape, h->key), *field;
		char *inner = object + home->offset;

		if (h->shape != shape)
			continue;
		field = ts_shape_field(home->sub, ts_load_scalar(l));
		field = field ? field : ts_shape_field_meant(home->sub, ts_load_scalar(l));
		if (!field)
			continue;
		if (home->kind == TS_LIST)
			inner = entry_of(l, home, object);
		if (!inner)
			return false;
		if (ts_load_is_set(field, inner)) {
			say_twice(l, field);
			if (ts_load_next(l))
				ts_load_skip_value(l);
			return true;
		}
		keys->seen[home - shape->fields] |= home->kind == TS_LIST;
		load_field(l, field, inner);
		return true;
	}
	return false;
}

static void load_key(struct load *l, const struct ts_shape *shape, struct keys *keys, char *object)
{
	const struct ts_field *field = ts_shape_field_from(shape, ts_load_scalar(l), keys->next);
	size_t index;

	field = field ? field : ts_shape_field_meant(shape, ts_load_scalar(l));
	index = field ? (size_t)(field - shape->fields) : 0;
	if (!field && load_astray(l, shape, keys, object))
		return;
	if (!field)
		say_unknown_key(l, shape);
	else if (keys->seen[index] || met(shape, field, object))
		say_twice(l, field);
	if (!field || keys->seen[index] || met(shape, field, object)) {
		if (ts_load_next(l))
			ts_load_skip_value(l);
		return;
	}
	keys->seen[index] = true;
	keys->next = index + 1;
	load_field(l, field, object);
}

void ts_load_mapping(struct load *l, const struct ts_shape *shape, char *object)
{
	if (!ts_load_want(l, YAML_MAPPING_START_EVENT, "write keys with values"))
		return;
	if (l->depth >= TS_DEPTH_MOST)
		ts_load_say_too_deep(l);
	else
		ts_load_keys(l, shape, object, l->event.start_mark);
}

void ts_load_keys(struct load *l, const struct ts_shape *shape, char *object, yaml_mark_t mark)
{
	const struct ts_scan_pair outer = l->pair;
	struct ts_value_says asks;
	struct keys keys;

	keys.next = 0;
	memset(keys.seen, 0, shape->count * sizeof *keys.seen);
	l->pair = (struct ts_scan_pair){0};
	while (ts_load_next(l) && l->event.type != YAML_MAPPING_END_EVENT) {
		if (ts_load_want(l, YAML_SCALAR_EVENT, "write a key"))
			load_key(l, shape, &keys, object);
		else if (ts_load_next(l))
			ts_load_skip_value(l);
	}
	if (!l->broken)
		say_missing(l, shape, &keys, mark);
	if (ts_value_pair_asks(&l->pair, l->arena, &asks))
		ts_load_say_at(l, asks.code, mark, 0, asks.what, asks.remedy);
	l->pair = outer;
}

static void load_document(struct load *l, const struct ts_shape *shape, void *object)
{
	if (!ts_load_next(l) || !ts_load_next(l))
		return;
	if (l->event.type == YAML_STREAM_END_EVENT) {
		ts_load_say(
			l, TS_C_RECORDS_MISSING_KEY, "the file is empty", "see docs/formats.md");
		return;
	}
	if (!ts_load_next(l))
		return;
	ts_load_mapping(l, shape, object);
	if (!ts_load_next(l) || !ts_load_next(l))
		return;
	if (l->event.type != YAML_STREAM_END_EVENT)
		ts_load_say(l, TS_C_RECORDS_TOO_MUCH, "a second document starts here",
			"one file holds one document");
}

enum ts_status ts_records_parse_beside(const struct ts_shape *shape, const struct ts_system *system,
	const char *bytes, size_t len, const char *file, struct ts_arena *arena, void *object,
	struct ts_findings *findings)
{
	struct load l = {
		.file = file, .system = system, .arena = arena, .findings = findings, .ok = true};
	size_t mark = ts_text_order_mark(bytes, len);

	memset(object, 0, shape->size);
	ts_load_set_absent(shape, object);
	if (!yaml_parser_initialize(&l.parser))
		return TS_NO_MEMORY;
	yaml_parser_set_encoding(&l.parser, YAML_UTF8_ENCODING);
	yaml_parser_set_input_string(&l.parser, (const unsigned char *)bytes + mark, len - mark);
	load_document(&l, shape, object);
	if (l.have_event)
		yaml_event_delete(&l.event);
	yaml_parser_delete(&l.parser);
	if (l.out_of_memory || arena->failed || (findings && findings->no_memory))
		return TS_NO_MEMORY;
	return l.ok ? TS_OK : TS_BAD_INPUT;
}

enum ts_status ts_records_parse(const struct ts_shape *shape, const char *bytes, size_t len,
	const char *file, struct ts_arena *arena, void *object, struct ts_findings *findings)
{
	return ts_records_parse_beside(shape, NULL, bytes, len, file, arena, object, findings);
}

enum ts_status ts_records_load(const struct ts_shape *shape, const struct ts_system *system,
	const char *file, enum ts_opening how, struct ts_arena *arena, void *object,
	struct ts_findings *findings)
{
	char *bytes;
	size_t len;
	enum ts_status status;

	if (!system)
		system = ts_system_machine();
	status = ts_file_read(
		system, file, how, TS_FILE_BYTES_MOST, &arena->allocator, &bytes, &len, findings);
	if (status)
		return status;
	status = ts_records_parse_beside(shape, system, bytes, len, file, arena, object, findings);
	arena->allocator.resize(arena->allocator.state, bytes, 0);
	return status;
}

const char *ts_records_library(void)
{
	return yaml_get_version_string();
}
