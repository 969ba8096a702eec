/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The walker that loads. One recursive descent over libyaml's events, guided by the rows of
 * model/shapes.c; it knows no key by name. Reading the bytes of a file: records/file.c.
 */
#include "records/load.h"

#include <string.h>
#include <yaml.h>

#include "base/arena.h"
#include "base/findings.h"
#include "base/text.h"
#include "model/codes.h"
#include "records/animals.h"
#include "records/file.h"
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

static void put_path(struct load *l, struct ts_text *text)
{
	char digits[24];

	for (size_t i = 0; i < l->depth; i++) {
		if (l->path[i].key) {
			ts_text_puts(text, i ? "." : "", l->path[i].key, NULL);
			continue;
		}
		size_t n = l->path[i].index + 1, at = sizeof digits - 1;

		digits[at] = '\0';
		do {
			digits[--at] = (char)('0' + n % 10);
			n /= 10;
		} while (n);
		ts_text_puts(text, "[", digits + at, "]", NULL);
	}
}

static void say_at(struct load *l, enum ts_code_id code, yaml_mark_t mark, size_t shift,
	const char *what, const char *remedy)
{
	struct ts_text path;
	struct ts_place place = {
		l->file, (unsigned)mark.line + 1, (unsigned)(mark.column + shift) + 1, NULL};

	ts_text_open(&path, &l->arena->allocator);
	put_path(l, &path);
	l->out_of_memory |= path.failed;
	if (path.len)
		place.path = ts_text_get(&path);
	l->ok &= ts_finding_add(l->findings, &ts_codes[code], &place, what, remedy);
	ts_text_drop(&path);
}

static void say(struct load *l, enum ts_code_id code, const char *what, const char *remedy)
{
	say_at(l, code, l->event.start_mark, 0, what, remedy);
}

static void say_syntax(struct load *l)
{
	if (l->parser.error == YAML_MEMORY_ERROR) {
		l->out_of_memory = true;
	} else if (l->parser.error == YAML_READER_ERROR) {
		say_at(l, TS_C_RECORDS_NOT_UTF8, l->parser.mark, 0, l->parser.problem, NULL);
	} else {
		say_at(l, TS_C_RECORDS_SYNTAX, l->parser.problem_mark, 0,
			l->parser.problem ? l->parser.problem : "not YAML", NULL);
	}
	l->ok = false;
}

static const char *scalar(struct load *l)
{
	return (const char *)l->event.data.scalar.value;
}

/* The next event; false at the end of what can be parsed. Anchors and tags are refused here. */
static bool next(struct load *l)
{
	const yaml_char_t *anchor = NULL, *tag = NULL;

	if (l->held) {
		l->held = false;
		return true;
	}
	if (l->have_event)
		yaml_event_delete(&l->event);
	l->have_event = false;
	if (l->broken || l->out_of_memory)
		return false;
	/* libyaml calls some failures a success, and from then on gives no event for ever */
	if (!yaml_parser_parse(&l->parser, &l->event) || l->event.type == YAML_NO_EVENT) {
		l->broken = true;
		say_syntax(l);
		return false;
	}
	l->have_event = true;
	if (l->event.type == YAML_SCALAR_EVENT) {
		anchor = l->event.data.scalar.anchor;
		tag = l->event.data.scalar.tag;
		if (strlen(scalar(l)) != l->event.data.scalar.length)
			say(l, TS_C_RECORDS_SYNTAX, "a zero byte stands in this text",
				"take the \\0 out");
	} else if (l->event.type == YAML_MAPPING_START_EVENT) {
		anchor = l->event.data.mapping_start.anchor;
		tag = l->event.data.mapping_start.tag;
	} else if (l->event.type == YAML_SEQUENCE_START_EVENT) {
		anchor = l->event.data.sequence_start.anchor;
		tag = l->event.data.sequence_start.tag;
	}
	if (anchor || tag || l->event.type == YAML_ALIAS_EVENT)
		say(l, TS_C_RECORDS_ALIAS, "an anchor, alias or tag", NULL);
	return true;
}

_Static_assert(TS_DEPTH_MOST == 16, "the remedy names it");

/* Reading ends here: what libyaml needs grows with the square of the nesting. */
static void say_too_deep(struct load *l)
{
	say(l, TS_C_RECORDS_TOO_MUCH, "nested too deep", "no key needs more than 16 levels");
	l->broken = true;
}

/* Passes over the value that the current event starts. */
static void skip_value(struct load *l)
{
	size_t depth = 0;

	do {
		switch (l->event.type) {
		case YAML_MAPPING_START_EVENT:
		case YAML_SEQUENCE_START_EVENT:
			if (++depth > TS_DEPTH_MOST)
				say_too_deep(l);
			break;
		case YAML_MAPPING_END_EVENT:
		case YAML_SEQUENCE_END_EVENT:
			depth--;
			break;
		default:
			break;
		}
	} while (depth && next(l));
}

static bool want(struct load *l, yaml_event_type_t type, const char *wanted)
{
	if (l->event.type == type)
		return true;
	say(l, TS_C_RECORDS_WRONG_KIND,
		l->event.type == YAML_SCALAR_EVENT           ? "a single value stands here"
		: l->event.type == YAML_SEQUENCE_START_EVENT ? "a list stands here"
							     : "a block of keys stands here",
		wanted);
	skip_value(l);
	return false;
}

/* True unless the text holds a NUL inside, which no text of ours has. */
static const char *keep_scalar(struct load *l)
{
	return ts_arena_text(l->arena, scalar(l), l->event.data.scalar.length);
}

static void say_value(struct load *l, const struct ts_value_says *says)
{
	if (says->what)
		say_at(l, says->code, l->event.start_mark, says->at, says->what, says->remedy);
}

static void load_scalar(struct load *l, const struct ts_field *field, char *object)
{
	struct ts_value_says says;

	ts_value_read(field, scalar(l), l->event.data.scalar.length, l->arena, object, &says);
	say_value(l, &says);
	ts_value_pair_look(&l->pair, field, scalar(l), &says, l->arena);
}

/* Whether a member holds something: a key was read into it. */
static bool is_set(const struct ts_field *field, const char *object)
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
		if (is_set(&shape->fields[i], object))
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

static void load_list(struct load *l, const struct ts_field *field, char *object);
static void load_mapping(struct load *l, const struct ts_shape *shape, char *object);
static void load_keys(struct load *l, const struct ts_shape *shape, char *object, yaml_mark_t mark);

static void load_file_or(struct load *l, const struct ts_field *field, char *object)
{
	const char *path;
	enum ts_status status;

	/* "water: [...]": nothing but its readings can be meant. */
	if (l->event.type == YAML_SEQUENCE_START_EVENT && field->sub == &ts_shape_water) {
		load_list(l, ts_shape_field(&ts_shape_water, "readings"), object + field->offset);
		return;
	}
	if (l->event.type != YAML_SCALAR_EVENT) {
		load_mapping(l, field->sub, object + field->offset);
		return;
	}
	if (field->sub == &ts_shape_tank && scalar(l)[0] >= '0' && scalar(l)[0] <= '9') {
		load_scalar(l, ts_shape_field(&ts_shape_tank, "size"), object + field->offset);
		return;
	}
	if (!scalar(l)[0] || strcmp(scalar(l), "-") == 0) {
		say(l, TS_C_RECORDS_REFERENCE, "no file is named here", NULL);
		return;
	}
	path = beside(l, scalar(l));
	if (!path)
		return;
	if (holds_something(field->sub, object + field->offset)) {
		say(l, TS_C_RECORDS_REFERENCE, "keys of its own stand beside this file",
			"write them into that file");
		return;
	}
	status = l->system ? ts_records_load(field->sub, l->system, path, TS_OPEN_ORDINARY,
				     l->arena, object + field->offset, l->findings)
			   : TS_SYSTEM;
	l->out_of_memory |= status == TS_NO_MEMORY;
	if (status == TS_SYSTEM || status == TS_BAD_INPUT)
		say(l, TS_C_RECORDS_REFERENCE,
			ts_arena_join(l->arena, "'", scalar(l), "' ",
				status == TS_SYSTEM ? "cannot be read" : "has errors", NULL),
			status == TS_SYSTEM ? NULL : "see the findings of that file");
	memcpy(object + field->count_offset, &path, sizeof path);
}

static void load_texts(struct load *l, struct ts_texts *ret)
{
	size_t room = 0;

	if (!want(l, YAML_SEQUENCE_START_EVENT, "write a list: [one, two]"))
		return;
	while (next(l) && l->event.type != YAML_SEQUENCE_END_EVENT) {
		const char **items;

		if (!want(l, YAML_SCALAR_EVENT, "write a text"))
			continue;
		items = ts_arena_grow(l->arena, ret->items, ret->count, &room, sizeof *items);
		if (!items)
			return;
		ret->items = items;
		ret->items[ret->count++] = keep_scalar(l);
	}
}

static void load_words(struct load *l, const struct ts_field *field, unsigned *ret)
{
	if (!want(l, YAML_SEQUENCE_START_EVENT, "write a list: [one, two]"))
		return;
	while (next(l) && l->event.type != YAML_SEQUENCE_END_EVENT) {
		struct ts_value_says says;
		int index;

		if (!want(l, YAML_SCALAR_EVENT, "write a word"))
			continue;
		if (ts_value_word(field, scalar(l), l->arena, &index, &says))
			*ret |= 1u << index;
		say_value(l, &says);
	}
}

/* A range that nobody writes is "not given", not 0..0, in inner blocks too. */
static void set_absent(const struct ts_shape *shape, char *object)
{
	static const struct ts_range none = {(double)NAN, (double)NAN};

	for (size_t i = 0; i < shape->count; i++) {
		const struct ts_field *field = &shape->fields[i];

		if (field->kind == TS_RANGE)
			memcpy(object + field->offset, &none, sizeof none);
		else if (field->kind == TS_SUB || field->kind == TS_FILE)
			set_absent(field->sub, object + field->offset);
	}
}

/* The end of the phrase that begins there: at a comma, or at the end. */
static size_t phrase_length(const char *at)
{
	return strcspn(at, ",;\n");
}

static const char *phrase_of(struct load *l, const char *at, size_t len)
{
	while (len && strchr(" \t", *at)) {
		at++;
		len--;
	}
	while (len && strchr(" \t", at[len - 1]))
		len--;
	return ts_arena_text(l->arena, at, len);
}

/* "10 neon tetra since 2024-05" */
static void load_animal(struct load *l, const char *phrase, struct ts_stock_line *ret)
{
	struct ts_text error;

	ts_text_open(&error, &l->arena->allocator);
	if (!ts_animal_words(l->arena, phrase, -1, ret, &error) && !l->arena->failed)
		say(l, TS_C_RECORDS_WRONG_KIND, ts_arena_join(l->arena, ts_text_get(&error), NULL),
			"write it like: 10 neon tetra since 2024-05");
	l->out_of_memory |= error.failed;
	ts_text_drop(&error);
}

static bool takes_phrases(const struct ts_shape *sub)
{
	return sub == &ts_shape_sign || sub == &ts_shape_stock_line;
}

/* A list while it is read. */
struct list {
	char *items;
	size_t count, room;
};

static char *add_item(struct load *l, const struct ts_shape *sub, struct list *list)
{
	char *item;

	if (list->count == TS_LIST_MOST)
		say(l, TS_C_RECORDS_TOO_MUCH, "more than 10,000 entries", NULL);
	if (list->count >= TS_LIST_MOST)
		return NULL;
	list->items = ts_arena_grow(l->arena, list->items, list->count, &list->room, sub->size);
	if (!list->items)
		return NULL;
	item = list->items + list->count++ * sub->size;
	set_absent(sub, item);
	return item;
}

/* "all gasping, clamped fins": several in one line. */
static void load_signs(struct load *l, struct list *list)
{
	struct ts_sign signs[TS_SIGNS_MOST];
	struct ts_value_says says;
	size_t count;

	if (!ts_value_signs(scalar(l), l->arena, signs, &count, NULL, &says))
		say(l, says.code, says.what, says.remedy);
	for (size_t i = 0; i < count; i++) {
		char *item = add_item(l, &ts_shape_sign, list);

		if (item)
			memcpy(item, &signs[i], sizeof signs[i]);
	}
}

/* "10 neon tetra, 2 angelfish": the same of animals. */
static void load_animals(struct load *l, struct list *list)
{
	for (const char *at = scalar(l); *at; at += *at != '\0') {
		size_t len = phrase_length(at);
		const char *phrase = phrase_of(l, at, len);
		char *item = phrase && *phrase ? add_item(l, &ts_shape_stock_line, list) : NULL;

		at += len;
		if (item)
			load_animal(l, phrase, (struct ts_stock_line *)(void *)item);
	}
}

static void load_phrases(struct load *l, const struct ts_shape *sub, struct list *list)
{
	if (sub == &ts_shape_sign)
		load_signs(l, list);
	else
		load_animals(l, list);
}

/* An entry of a list: a block of keys, or the words that say it all. */
static void load_entry(struct load *l, const struct ts_shape *sub, struct list *list)
{
	char *item;

	l->path[l->depth++] = (struct step){NULL, list->count};
	if (takes_phrases(sub) && l->event.type == YAML_SCALAR_EVENT && scalar(l)[0])
		load_phrases(l, sub, list);
	else if ((item = add_item(l, sub, list)) != NULL)
		load_mapping(l, sub, item);
	else
		skip_value(l);
	l->depth--;
}

/* {neon tetra: 10, betta: 1} */
static void load_counts(struct load *l, struct list *list)
{
	const struct ts_field *count = ts_shape_field(&ts_shape_stock_line, "count");

	do {
		char *item = add_item(l, &ts_shape_stock_line, list);
		const char *name = keep_scalar(l);

		if (!item || !name || !next(l))
			return;
		memcpy(item + ts_shape_field(&ts_shape_stock_line, "species")->offset, &name,
			sizeof name);
		if (want(l, YAML_SCALAR_EVENT, "write how many"))
			load_scalar(l, count, item);
	} while (next(l) && l->event.type == YAML_SCALAR_EVENT);
}

/* The keys of one animal, or animals as keys: the first key tells. */
static void load_block(struct load *l, const struct ts_shape *sub, struct list *list)
{
	yaml_mark_t mark = l->event.start_mark;
	bool own;
	char *item;

	if (!next(l))
		return;
	own = l->event.type != YAML_SCALAR_EVENT || ts_shape_field(sub, scalar(l)) ||
	      ts_shape_field_meant(sub, scalar(l));
	if (!own && sub == &ts_shape_stock_line) {
		load_counts(l, list);
		return;
	}
	item = add_item(l, sub, list);
	l->held = true;
	if (item)
		load_keys(l, sub, item, mark);
}

/* Where nothing else can be meant, a list of one needs no '- '. */
static bool is_one_entry(const struct load *l, const struct ts_shape *sub)
{
	return sub->lenient && (l->event.type == YAML_MAPPING_START_EVENT ||
				       (takes_phrases(sub) && l->event.type == YAML_SCALAR_EVENT));
}

static void load_list(struct load *l, const struct ts_field *field, char *object)
{
	const struct ts_shape *sub = field->sub;
	struct list list = {0};

	if (is_one_entry(l, sub) && l->event.type == YAML_MAPPING_START_EVENT) {
		load_block(l, sub, &list);
	} else if (is_one_entry(l, sub)) {
		load_phrases(l, sub, &list);
	} else {
		if (!want(l, YAML_SEQUENCE_START_EVENT, "write a list, each entry after a '- '"))
			return;
		while (next(l) && l->event.type != YAML_SEQUENCE_END_EVENT) {
			load_entry(l, sub, &list);
			if (!l->arena->failed)
				continue;
			return;
		}
	}
	memcpy(object + field->offset, &list.items, sizeof list.items);
	memcpy(object + field->count_offset, &list.count, sizeof list.count);
}

static void load_value(struct load *l, const struct ts_field *field, char *object)
{
	void *at = object + field->offset;

	switch (field->kind) {
	case TS_SUB:
		load_mapping(l, field->sub, at);
		return;
	case TS_FILE:
		load_file_or(l, field, object);
		return;
	case TS_LIST:
		load_list(l, field, object);
		return;
	case TS_TEXTS:
		load_texts(l, at);
		return;
	case TS_WORDS:
		load_words(l, field, at);
		return;
	default:
		if (want(l, YAML_SCALAR_EVENT, "write one value"))
			load_scalar(l, field, object);
	}
}

static void say_unknown_key(struct load *l, const struct ts_shape *shape)
{
	const char *near = ts_shape_nearest_key(shape, scalar(l));
	const char *remedy = NULL;

	if (strspn(scalar(l), "0123456789."))
		remedy = "inside { } a decimal comma splits the value: write a decimal point";
	else if (!near && strchr(scalar(l), ' '))
		remedy = "inside { } a comma splits a text: put the text in quotes";
	else if (near)
		remedy = ts_arena_join(l->arena, "did you mean ", near, "?", NULL);
	say(l, TS_C_RECORDS_UNKNOWN_KEY,
		ts_arena_join(l->arena, "unknown key '", scalar(l), "'", NULL), remedy);
}

static void say_twice(struct load *l, const struct ts_field *field)
{
	say(l, TS_C_RECORDS_DUPLICATE_KEY,
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
			say_at(l, TS_C_RECORDS_MISSING_KEY, mark, 0,
				ts_arena_join(
					l->arena, "'", shape->fields[i].key, "' is missing", NULL),
				ts_arena_join(l->arena, "add ", shape->fields[i].key, ": ",
					shape->fields[i].says, NULL));
	}
}

static void load_field(struct load *l, const struct ts_field *field, char *object)
{
	l->path[l->depth++] = (struct step){field->key, 0};
	if (next(l))
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
	item = add_item(l, list->sub, &of);
	memcpy(object + list->offset, &of.items, sizeof of.items);
	memcpy(object + list->count_offset, &of.count, sizeof of.count);
	return item;
}

/* Filled by a key that stood astray, before the block itself came. */
static bool met(const struct ts_shape *shape, const struct ts_field *field, const char *object)
{
	return shape->lenient && is_set(field, object);
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
		field = ts_shape_field(home->sub, scalar(l));
		field = field ? field : ts_shape_field_meant(home->sub, scalar(l));
		if (!field)
			continue;
		if (home->kind == TS_LIST)
			inner = entry_of(l, home, object);
		if (!inner)
			return false;
		if (is_set(field, inner)) {
			say_twice(l, field);
			if (next(l))
				skip_value(l);
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
	const struct ts_field *field = ts_shape_field_from(shape, scalar(l), keys->next);
	size_t index;

	field = field ? field : ts_shape_field_meant(shape, scalar(l));
	index = field ? (size_t)(field - shape->fields) : 0;
	if (!field && load_astray(l, shape, keys, object))
		return;
	if (!field)
		say_unknown_key(l, shape);
	else if (keys->seen[index] || met(shape, field, object))
		say_twice(l, field);
	if (!field || keys->seen[index] || met(shape, field, object)) {
		if (next(l))
			skip_value(l);
		return;
	}
	keys->seen[index] = true;
	keys->next = index + 1;
	load_field(l, field, object);
}

static void load_mapping(struct load *l, const struct ts_shape *shape, char *object)
{
	if (!want(l, YAML_MAPPING_START_EVENT, "write keys with values"))
		return;
	if (l->depth >= TS_DEPTH_MOST)
		say_too_deep(l);
	else
		load_keys(l, shape, object, l->event.start_mark);
}

static void load_keys(struct load *l, const struct ts_shape *shape, char *object, yaml_mark_t mark)
{
	const struct ts_scan_pair outer = l->pair;
	struct ts_value_says asks;
	struct keys keys;

	keys.next = 0;
	memset(keys.seen, 0, shape->count * sizeof *keys.seen);
	l->pair = (struct ts_scan_pair){0};
	while (next(l) && l->event.type != YAML_MAPPING_END_EVENT) {
		if (want(l, YAML_SCALAR_EVENT, "write a key"))
			load_key(l, shape, &keys, object);
		else if (next(l))
			skip_value(l);
	}
	if (!l->broken)
		say_missing(l, shape, &keys, mark);
	if (ts_value_pair_asks(&l->pair, l->arena, &asks))
		say_at(l, asks.code, mark, 0, asks.what, asks.remedy);
	l->pair = outer;
}

static void load_document(struct load *l, const struct ts_shape *shape, void *object)
{
	if (!next(l) || !next(l))
		return;
	if (l->event.type == YAML_STREAM_END_EVENT) {
		say(l, TS_C_RECORDS_MISSING_KEY, "the file is empty", "see docs/formats.md");
		return;
	}
	if (!next(l))
		return;
	load_mapping(l, shape, object);
	if (!next(l) || !next(l))
		return;
	if (l->event.type != YAML_STREAM_END_EVENT)
		say(l, TS_C_RECORDS_TOO_MUCH, "a second document starts here",
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
	set_absent(shape, object);
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
