/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Noting a reading. Everything that is wrong with it is said, not the first alone; the file is
 * looked at once the reading is right.
 */
#include "records/note.h"

#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/findings.h"
#include "model/codes.h"
#include "records/load.h"
#include "records/rules.h"
#include "records/value.h"
#include "records/write.h"

struct note {
	const struct ts_shape *shape; /* of the file */
	const struct ts_field *list;  /* its readings or events, or those of its tank */
	const char *within;           /* the key of that tank; NULL: they are its own */
	size_t base;                  /* where in the struct the tank stands */
	const struct ts_system *system;
	const char *file;
	struct ts_arena *arena;
	struct ts_findings *findings;
	struct ts_pair *pairs; /* with the keys as they are spelt in files */
	size_t count;
	union {
		struct ts_reading reading;
		struct ts_tank_event event;
	} entry;
	const char *date;
	struct ts_scan_pair pair;
	bool ok;
};

union object {
	struct ts_water water;
	struct ts_tank tank;
	struct ts_plan plan;
};

static void say(struct note *n, enum ts_code_id code, const char *where, const char *path,
	const char *what, const char *remedy)
{
	struct ts_place place = {.file = where, .path = path};

	n->ok &= ts_finding_add(n->findings, &ts_codes[code], &place, what, remedy);
}

static const char *as_typed(const struct note *n, const struct ts_pair *pair)
{
	return ts_arena_join(n->arena, pair->key, "=", pair->value, NULL);
}

/* The key, or the word that people write for one, that lies nearest. */
static const char *nearest(const struct ts_shape *shape, const char *text)
{
	const char *words[64] = {NULL}, *near = ts_shape_nearest_key(shape, text);
	size_t count = 0;

	for (const struct ts_also_key *k = ts_keys_also; !near && k->shape; k++) {
		if (k->shape == shape && count + 1 < sizeof words / sizeof *words)
			words[count++] = k->also;
	}
	return near ? near : ts_nearest_word(words, text);
}

static void say_key(struct note *n, const struct ts_pair *pair)
{
	const char *near = nearest(n->list->sub, pair->key);

	say(n, TS_C_RECORDS_UNKNOWN_KEY, as_typed(n, pair), NULL,
		ts_arena_join(n->arena, "unknown key '", pair->key, "'", NULL),
		near ? ts_arena_join(n->arena, "did you mean ", near, "?", NULL)
		     : "docs/formats.md lists the keys of a reading and of an event");
}

/* What the kind of its row cannot say of a value. */
static void check_value(
	struct note *n, const struct ts_field *field, const struct ts_pair *pair, long today)
{
	long day;

	if (field->kind == TS_TEXT && !*pair->value)
		say(n, TS_C_RECORDS_QUANTITY, as_typed(n, pair), NULL, "nothing is written here",
			"write something behind the =, or leave the key out");
	else if (strcmp(field->key, "time") == 0 && ts_clock_read(pair->value) < 0)
		say(n, TS_C_RECORDS_DATE, as_typed(n, pair), NULL, "this is no hour of the day",
			"write it like 08:30");
	if (strcmp(field->key, "date") != 0)
		return;
	if (!ts_date_read(pair->value, &day))
		say(n, TS_C_RECORDS_DATE, as_typed(n, pair), NULL, "this is not a day", NULL);
	else if (day > today)
		say(n, TS_C_NOTE_FUTURE, as_typed(n, pair), NULL, "this day lies ahead", NULL);
}

/* A figure that may stand bare is written with the unit in which it is taken. */
static const char *with_unit(const struct note *n, const struct ts_field *field, const char *value)
{
	const char *unit = ts_quantities[field->quantity].unit;

	return field->kind == TS_MEASURE && *unit && ts_value_bare(value)
		       ? ts_arena_join(n->arena, value, " ", unit, NULL)
		       : value;
}

static void take_pair(struct note *n, const struct ts_pair *given, long today)
{
	const struct ts_field *field = ts_shape_field_caseless(n->list->sub, given->key);
	struct ts_value_says says;

	/* As files take it: another word for it, a blank for a hyphen. */
	field = field ? field : ts_shape_field_meant(n->list->sub, given->key);

	if (!field) {
		say_key(n, given);
		return;
	}
	for (size_t i = 0; i < n->count; i++) {
		if (n->pairs[i].key == field->key)
			say(n, TS_C_RECORDS_DUPLICATE_KEY, as_typed(n, given), NULL,
				ts_arena_join(n->arena, "'", field->key, "' is given twice", NULL),
				NULL);
	}
	n->pairs[n->count++] = (struct ts_pair){field->key, with_unit(n, field, given->value)};
	n->ok &= ts_value_read(
		field, given->value, strlen(given->value), n->arena, &n->entry, &says);
	ts_value_pair_look(&n->pair, field, given->value, &says, n->arena);
	if (says.what)
		say(n, says.code, as_typed(n, given), NULL, says.what, says.remedy);
	else
		check_value(n, field, given, today);
}

static void take_pairs(struct note *n, const struct ts_pair *pairs, size_t count, long today)
{
	struct ts_value_says asks;

	n->pairs = ts_arena_array(n->arena, count, sizeof *n->pairs);
	for (size_t i = 0; n->pairs && i < count; i++)
		take_pair(n, &pairs[i], today);
	memcpy(&n->date, (const char *)&n->entry + ts_shape_field(n->list->sub, "date")->offset,
		sizeof n->date);
	if (ts_value_pair_asks(&n->pair, n->arena, &asks))
		say(n, asks.code, n->file, NULL, asks.what, asks.remedy);
	if (n->ok && !n->date)
		say(n, TS_C_RECORDS_MISSING_KEY, n->file, "date", "what is noted has no date",
			"add date=2026-03-01");
	if (n->ok && n->list->sub == &ts_shape_reading && !ts_reading_measured(&n->entry.reading))
		say(n, TS_C_NOTE_NOTHING, n->file, NULL, "nothing was measured that could be noted",
			NULL);
}

/* The list as it stands: its entries, how many, and the day of one of them. */
static const char *entries_of(const struct note *n, const union object *o, size_t *ret_count)
{
	const char *entries;

	memcpy(&entries, (const char *)o + n->base + n->list->offset, sizeof entries);
	memcpy(ret_count, (const char *)o + n->base + n->list->count_offset, sizeof *ret_count);
	return entries;
}

static const char *date_of(const struct note *n, const char *entries, size_t i)
{
	const char *date;

	memcpy(&date,
		entries + i * n->list->sub->size + ts_shape_field(n->list->sub, "date")->offset,
		sizeof date);
	return date;
}

static bool holds(struct note *n, const union object *o, struct ts_findings *findings)
{
	if (n->shape == &ts_shape_water)
		return ts_water_holds(&o->water, n->file, findings);
	return ts_tank_holds(n->within ? &o->plan.tank : &o->tank, n->file, n->arena, findings);
}

/* The file as it is; notes about what stands there already are not said again. */
static enum ts_status read_file(struct note *n, const char *bytes, size_t len, union object *ret)
{
	enum ts_status status = ts_records_parse_beside(
		n->shape, n->system, bytes, len, n->file, n->arena, ret, NULL);

	if (status == TS_BAD_INPUT)
		status = ts_records_parse_beside(
			n->shape, n->system, bytes, len, n->file, n->arena, ret, n->findings);
	if (status == TS_OK && !holds(n, ret, n->findings))
		status = TS_BAD_INPUT;
	return status;
}

/* Do two structs hold the same? Compared as they would be written. */
static bool same(struct note *n, const struct ts_shape *shape, const void *a, const void *b)
{
	struct ts_text first, second;
	bool equal;

	ts_text_open(&first, &n->arena->allocator);
	ts_text_open(&second, &n->arena->allocator);
	ts_records_write(&first, shape, a, false);
	ts_records_write(&second, shape, b, false);
	equal = first.len == second.len &&
		memcmp(ts_text_get(&first), ts_text_get(&second), first.len) == 0;
	n->arena->failed |= first.failed || second.failed;
	ts_text_drop(&second);
	ts_text_drop(&first);
	return equal;
}

static void check_twice(struct note *n, const union object *o)
{
	size_t count;
	const char *entries = entries_of(n, o, &count);

	for (size_t i = 0; i < count; i++) {
		const char *date = date_of(n, entries, i);

		if (date && strcmp(date, n->date) == 0 &&
			same(n, n->list->sub, entries + i * n->list->sub->size, &n->entry)) {
			say(n, TS_C_NOTE_TWICE, n->file, n->list->key,
				ts_arena_join(n->arena, "the same ", n->list->sub->name, " of ",
					date, " stands there already", NULL),
				NULL);
			return;
		}
	}
}

/* What the file is to hold: the old readings and the new one. */
static bool expect(
	struct note *n, const union object *old, union object *ret, struct ts_noted *noted)
{
	size_t count, size = n->list->sub->size;
	const char *before = entries_of(n, old, &count);
	char *after = ts_arena_array(n->arena, count + 1, size);

	if (!after)
		return false;
	if (count)
		memcpy(after, before, count * size);
	memcpy(after + count++ * size, &n->entry, size);
	*ret = *old;
	memcpy((char *)ret + n->base + n->list->offset, &after, sizeof after);
	memcpy((char *)ret + n->base + n->list->count_offset, &count, sizeof count);
	*noted = (struct ts_noted){
		.date = n->date, .pairs = n->pairs, .pair_count = n->count, .count = count};
	for (size_t i = 0; i < count; i++) {
		const char *date = date_of(n, after, i); /* letters sort like days */

		if (date && (!noted->first || strcmp(date, noted->first) < 0))
			noted->first = date;
		if (date && (!noted->last || strcmp(date, noted->last) > 0))
			noted->last = date;
	}
	return true;
}

/* Whether what was made is read as what was meant. */
static enum ts_status check_made(
	struct note *n, const struct ts_text *made, const union object *want)
{
	union object got;
	enum ts_status status =
		made->len > TS_FILE_BYTES_MOST
			? TS_BAD_INPUT
			: ts_records_parse_beside(n->shape, n->system, ts_text_get(made), made->len,
				  n->file, n->arena, &got, NULL);

	if (status == TS_OK && holds(n, &got, NULL) && same(n, n->shape, &got, want))
		return TS_OK;
	if (status == TS_NO_MEMORY)
		return status;
	say(n, TS_C_NOTE_STYLE, n->file, NULL,
		"the file with this entry would not be read as it is meant",
		"add it by hand, and see what tapshoal lint says of the file");
	return TS_BAD_INPUT;
}

static enum ts_status ended(const struct note *n, enum ts_status status)
{
	if (n->arena->failed || (n->findings && n->findings->no_memory))
		return TS_NO_MEMORY;
	return status == TS_OK && !n->ok ? TS_BAD_INPUT : status;
}

enum ts_status ts_records_note(const struct ts_shape *shape, const struct ts_system *system,
	const char *list, const char *bytes, size_t len, const char *file,
	const struct ts_pair *pairs, size_t count, long today, struct ts_arena *arena,
	struct ts_text *out, struct ts_noted *ret, struct ts_findings *findings)
{
	struct note n = {.shape = shape,
		.list = ts_shape_field(shape == &ts_shape_plan ? &ts_shape_tank : shape, list),
		.within = shape == &ts_shape_plan ? "tank" : NULL,
		.base = shape == &ts_shape_plan ? offsetof(struct ts_plan, tank) : 0,
		.system = system,
		.file = file,
		.arena = arena,
		.findings = findings,
		.ok = true};
	union object old, want;
	enum ts_status status;

	take_pairs(&n, pairs, count, today);
	status = ended(&n, read_file(&n, bytes, len, &old));
	if (status == TS_OK)
		check_twice(&n, &old);
	if (status != TS_OK || !n.ok || !expect(&n, &old, &want, ret))
		return ended(&n, status);
	status = ts_file_extend(
		bytes, len, file, n.within, n.list->key, n.pairs, n.count, out, findings);
	if (status == TS_OK)
		status = check_made(&n, out, &want);
	return ended(&n, status);
}

const char *ts_records_unit_before(struct ts_arena *arena, const char *bytes, const char *key)
{
	const char *unit = NULL;
	size_t len = strlen(key);

	for (const char *at = strstr(bytes, key); at; at = strstr(at + 1, key)) {
		const char *from = at + len, *one;
		size_t end;

		if (*from != ':' || (at > bytes && !strchr(" {,\n-", at[-1])))
			continue;
		from += 1 + strspn(from + 1, " \"<>0123456789.,");
		end = strcspn(from, ",}\n\r#\"");
		while (end && from[end - 1] == ' ')
			end--;
		one = end ? ts_arena_text(arena, from, end) : NULL;
		if (!one || (unit && strcmp(unit, one) != 0))
			return NULL;
		unit = one;
	}
	return unit;
}
