/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The value of a flag, read along its row into its member; what is wrong with it in words.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/options_rows.h"
#include "cli/settings.h"
#include "model/shape.h"
#include "records/value.h"

bool option_refuse(struct ts_text *error, const char *what, const char *remedy)
{
	ts_text_puts(error, what, "; ", remedy, NULL);
	return false;
}

static bool refuse_word(
	const char *flag, const char *value, const char *const *words, struct ts_text *error)
{
	ts_text_puts(error, flag, " does not take '", value, "'; it takes", NULL);
	for (int i = 0; words[i]; i++)
		ts_text_puts(error, i ? ", " : " ", words[i], NULL);
	return false;
}

static bool set_word(const char *flag, const char *const *words, const char *value, void *at,
	struct ts_text *error)
{
	for (int i = 0; words[i]; i++) {
		if (strcmp(words[i], value) == 0) {
			memcpy(at, &i, sizeof i);
			return true;
		}
	}
	return refuse_word(flag, value, words, error);
}

/* The value of a flag with the unit that the user has settled, where it has none. */
static const char *in_unit(
	struct options *o, enum ts_quantity q, const char *value, char room[SETTINGS_ROOM])
{
	const char *whole = settings_unit(o->settings, q, value, room);

	o->unit_settled |= whole != value;
	return whole;
}

static bool set_measure(struct options *o, const char *flag, enum ts_quantity q, const char *value,
	void *at, struct ts_scan *ret_scan, struct ts_text *error)
{
	char room[SETTINGS_ROOM];
	struct ts_measure measure;

	value = in_unit(o, q, value, room);
	if (ts_scan_measure(q, value, strlen(value), &measure, ret_scan)) {
		memcpy(at, &measure, sizeof measure);
		return true;
	}
	ts_text_puts(error, error->len ? "; " : "", flag, " '", value,
		"': ", ts_scan_says(ret_scan->fault), "; ", NULL);
	ts_scan_remedy(error, q, value, strlen(value), ret_scan);
	return false;
}

static bool set_count(const char *flag, const char *value, void *at, struct ts_text *error)
{
	size_t count = 0;

	for (const char *c = value; *c; c++) {
		if (*c < '0' || *c > '9' || count > 100000) {
			count = 0;
			break;
		}
		count = count * 10 + (size_t)(*c - '0');
	}
	if (!count) {
		ts_text_puts(error, flag, " '", value, "' is no count; write it like 3", NULL);
		return false;
	}
	memcpy(at, &count, sizeof count);
	return true;
}

/* "100x40x45" */
static bool set_box(
	struct options *o, const char *flag, const char *value, void *at, struct ts_text *error)
{
	char room[SETTINGS_ROOM];
	struct box box;
	double sides[3];

	value = in_unit(o, TS_Q_SIDE, value, room);
	if (!ts_scan_box(value, sides)) {
		ts_text_puts(error, flag, " '", value,
			"' is no length x width x height; write it like 100x40x45 for cm, "
			"or \"40x16x18 in\"",
			NULL);
		return false;
	}
	box = (struct box){sides[0], sides[1], sides[2]};
	memcpy(at, &box, sizeof box);
	return true;
}

/* "25% weekly": of a routine the share alone is asked for. */
static bool is_routine(const char *value, struct ts_text *error, double *ret_percent)
{
	const struct ts_field *field = ts_shape_field(&ts_shape_tank, "water_change");
	struct ts_value_says says;
	struct ts_tank tank;
	struct ts_arena arena;
	bool is;

	ts_arena_open(&arena, &error->allocator);
	is = ts_value_read(field, value, strlen(value), &arena, &tank, &says);
	error->failed |= arena.failed;
	ts_arena_drop(&arena);
	*ret_percent = is ? tank.water_change.amount : 0;
	return *ret_percent > 0;
}

static bool set_share(struct options *o, const struct flag *flag, const char *value, void *at,
	struct ts_text *error)
{
	struct ts_measure measure = {.kind = TS_MEASURE_VALUE};
	struct ts_scan scan;

	if (!is_routine(value, error, &measure.value))
		return set_measure(o, flag->name, flag->quantity, value, at, &scan, error);
	measure.low = measure.high = measure.value;
	memcpy(at, &measure, sizeof measure);
	return true;
}

bool option_set_flag(
	struct options *o, const struct flag *flag, const char *value, struct ts_text *error)
{
	char *at = (char *)o + flag->offset;
	struct values *values;
	struct ts_scan scan;

	switch (flag->kind) {
	case SWITCH:
		*(bool *)(void *)at = true;
		return true;
	case TEXT:
		memcpy(at, &value, sizeof value);
		return true;
	case TEXTS:
		values = (struct values *)(void *)at;
		if (values->count == TS_VALUES_MOST)
			return option_refuse(error, flag->name, "it may stand 16 times");
		values->items[values->count++] = value;
		return true;
	case WORD:
		return set_word(flag->name, flag->words, value, at, error);
	case COUNT:
		return set_count(flag->name, value, at, error);
	case SHARE:
		return set_share(o, flag, value, at, error);
	case BOX:
		return set_box(o, flag->name, value, at, error);
	default:
		return set_measure(o, flag->name, flag->quantity, value, at, &scan, error);
	}
}

bool option_set_reading(struct options *o, const struct ts_field *field, const char *flag,
	const char *value, struct ts_text *error)
{
	char *at = (char *)&o->reading + field->offset;
	char room[SETTINGS_ROOM];
	struct ts_scan scan;

	o->has_reading = true;
	if (field->kind == TS_WORD)
		return set_word(flag, field->words, value, at, error);
	if (field->kind == TS_TEXT) {
		memcpy(at, &value, sizeof value);
		return true;
	}
	if (!set_measure(o, flag, field->quantity, value, at, &scan, error)) {
		/* a kit that counts GH in ppm counts KH so too: both are asked for at once */
		o->unit_asked |= scan.fault == TS_SCAN_OTHER_UNIT;
		return scan.fault == TS_SCAN_OTHER_UNIT;
	}
	if (settings_unit(o->settings, field->quantity, value, room) == value)
		ts_scan_pair_look(&o->hardness, field->quantity, value, &scan);
	return true;
}

/* A word of a record to ask for: "--swims bottom". */
bool option_set_trait(struct options *o, const struct ts_trait *trait, const char *flag,
	const char *value, struct ts_text *error)
{
	struct ts_filter *filter = &o->traits;

	if (filter->wanted_count == TS_WANTED_MOST)
		return option_refuse(
			error, "too many words of records are asked for", "16 are read");
	if (!set_word(flag, trait->field->words, value, &filter->wanted[filter->wanted_count].word,
		    error))
		return false;
	filter->wanted[filter->wanted_count++].trait = *trait;
	return true;
}
