/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The loader's lists: texts, words, blocks, and what people write in their place (one block alone,
 * a phrase, several phrases in a line).
 */
#include "records/load_work.h"

#include <string.h>

#include "records/animals.h"

void ts_load_texts(struct load *l, struct ts_texts *ret)
{
	size_t room = 0;

	if (!ts_load_want(l, YAML_SEQUENCE_START_EVENT, "write a list: [one, two]"))
		return;
	while (ts_load_next(l) && l->event.type != YAML_SEQUENCE_END_EVENT) {
		const char **items;

		if (!ts_load_want(l, YAML_SCALAR_EVENT, "write a text"))
			continue;
		items = ts_arena_grow(l->arena, ret->items, ret->count, &room, sizeof *items);
		if (!items)
			return;
		ret->items = items;
		ret->items[ret->count++] = ts_load_keep_scalar(l);
	}
}

void ts_load_words(struct load *l, const struct ts_field *field, unsigned *ret)
{
	if (!ts_load_want(l, YAML_SEQUENCE_START_EVENT, "write a list: [one, two]"))
		return;
	while (ts_load_next(l) && l->event.type != YAML_SEQUENCE_END_EVENT) {
		struct ts_value_says says;
		int index;

		if (!ts_load_want(l, YAML_SCALAR_EVENT, "write a word"))
			continue;
		if (ts_value_word(field, ts_load_scalar(l), l->arena, &index, &says))
			*ret |= 1u << index;
		ts_load_say_value(l, &says);
	}
}

void ts_load_set_absent(const struct ts_shape *shape, char *object)
{
	static const struct ts_range none = {(double)NAN, (double)NAN};

	for (size_t i = 0; i < shape->count; i++) {
		const struct ts_field *field = &shape->fields[i];

		if (field->kind == TS_RANGE)
			memcpy(object + field->offset, &none, sizeof none);
		else if (field->kind == TS_SUB || field->kind == TS_FILE)
			ts_load_set_absent(field->sub, object + field->offset);
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
		ts_load_say(l, TS_C_RECORDS_WRONG_KIND,
			ts_arena_join(l->arena, ts_text_get(&error), NULL),
			"write it like: 10 neon tetra since 2024-05");
	l->out_of_memory |= error.failed;
	ts_text_drop(&error);
}

static bool takes_phrases(const struct ts_shape *sub)
{
	return sub == &ts_shape_sign || sub == &ts_shape_stock_line;
}

char *ts_load_add_item(struct load *l, const struct ts_shape *sub, struct list *list)
{
	char *item;

	if (list->count == TS_LIST_MOST)
		ts_load_say(l, TS_C_RECORDS_TOO_MUCH, "more than 10,000 entries", NULL);
	if (list->count >= TS_LIST_MOST)
		return NULL;
	list->items = ts_arena_grow(l->arena, list->items, list->count, &list->room, sub->size);
	if (!list->items)
		return NULL;
	item = list->items + list->count++ * sub->size;
	ts_load_set_absent(sub, item);
	return item;
}

/* "all gasping, clamped fins": several in one line. */
static void load_signs(struct load *l, struct list *list)
{
	struct ts_sign signs[TS_SIGNS_MOST];
	struct ts_value_says says;
	size_t count;

	if (!ts_value_signs(ts_load_scalar(l), l->arena, signs, &count, NULL, &says))
		ts_load_say(l, says.code, says.what, says.remedy);
	for (size_t i = 0; i < count; i++) {
		char *item = ts_load_add_item(l, &ts_shape_sign, list);

		if (item)
			memcpy(item, &signs[i], sizeof signs[i]);
	}
}

/* "10 neon tetra, 2 angelfish": the same of animals. */
static void load_animals(struct load *l, struct list *list)
{
	for (const char *at = ts_load_scalar(l); *at; at += *at != '\0') {
		size_t len = phrase_length(at);
		const char *phrase = phrase_of(l, at, len);
		char *item =
			phrase && *phrase ? ts_load_add_item(l, &ts_shape_stock_line, list) : NULL;

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
	if (takes_phrases(sub) && l->event.type == YAML_SCALAR_EVENT && ts_load_scalar(l)[0])
		load_phrases(l, sub, list);
	else if ((item = ts_load_add_item(l, sub, list)) != NULL)
		ts_load_mapping(l, sub, item);
	else
		ts_load_skip_value(l);
	l->depth--;
}

/* {neon tetra: 10, betta: 1} */
static void load_counts(struct load *l, struct list *list)
{
	const struct ts_field *count = ts_shape_field(&ts_shape_stock_line, "count");

	do {
		char *item = ts_load_add_item(l, &ts_shape_stock_line, list);
		const char *name = ts_load_keep_scalar(l);

		if (!item || !name || !ts_load_next(l))
			return;
		memcpy(item + ts_shape_field(&ts_shape_stock_line, "species")->offset, &name,
			sizeof name);
		if (ts_load_want(l, YAML_SCALAR_EVENT, "write how many"))
			ts_load_value_of(l, count, item);
	} while (ts_load_next(l) && l->event.type == YAML_SCALAR_EVENT);
}

/* The keys of one animal, or animals as keys: the first key tells. */
static void load_block(struct load *l, const struct ts_shape *sub, struct list *list)
{
	yaml_mark_t mark = l->event.start_mark;
	bool own;
	char *item;

	if (!ts_load_next(l))
		return;
	own = l->event.type != YAML_SCALAR_EVENT || ts_shape_field(sub, ts_load_scalar(l)) ||
	      ts_shape_field_meant(sub, ts_load_scalar(l));
	if (!own && sub == &ts_shape_stock_line) {
		load_counts(l, list);
		return;
	}
	item = ts_load_add_item(l, sub, list);
	l->held = true;
	if (item)
		ts_load_keys(l, sub, item, mark);
}

/* Where nothing else can be meant, a list of one needs no '- '. */
static bool is_one_entry(const struct load *l, const struct ts_shape *sub)
{
	return sub->lenient && (l->event.type == YAML_MAPPING_START_EVENT ||
				       (takes_phrases(sub) && l->event.type == YAML_SCALAR_EVENT));
}

void ts_load_list(struct load *l, const struct ts_field *field, char *object)
{
	const struct ts_shape *sub = field->sub;
	struct list list = {0};

	if (is_one_entry(l, sub) && l->event.type == YAML_MAPPING_START_EVENT) {
		load_block(l, sub, &list);
	} else if (is_one_entry(l, sub)) {
		load_phrases(l, sub, &list);
	} else {
		if (!ts_load_want(
			    l, YAML_SEQUENCE_START_EVENT, "write a list, each entry after a '- '"))
			return;
		while (ts_load_next(l) && l->event.type != YAML_SEQUENCE_END_EVENT) {
			load_entry(l, sub, &list);
			if (!l->arena->failed)
				continue;
			return;
		}
	}
	memcpy(object + field->offset, &list.items, sizeof list.items);
	memcpy(object + field->count_offset, &list.count, sizeof list.count);
}
