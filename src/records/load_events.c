/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The loader's walk over libyaml's events: the next one, what it is wanted to be, and findings with
 * their place.
 */
#include "records/load_work.h"

#include <string.h>

#include "base/findings.h"

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

void ts_load_say_at(struct load *l, enum ts_code_id code, yaml_mark_t mark, size_t shift,
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

void ts_load_say(struct load *l, enum ts_code_id code, const char *what, const char *remedy)
{
	ts_load_say_at(l, code, l->event.start_mark, 0, what, remedy);
}

static void say_syntax(struct load *l)
{
	if (l->parser.error == YAML_MEMORY_ERROR) {
		l->out_of_memory = true;
	} else if (l->parser.error == YAML_READER_ERROR) {
		ts_load_say_at(
			l, TS_C_RECORDS_NOT_UTF8, l->parser.mark, 0, l->parser.problem, NULL);
	} else {
		ts_load_say_at(l, TS_C_RECORDS_SYNTAX, l->parser.problem_mark, 0,
			l->parser.problem ? l->parser.problem : "not YAML", NULL);
	}
	l->ok = false;
}

const char *ts_load_scalar(struct load *l)
{
	return (const char *)l->event.data.scalar.value;
}

bool ts_load_next(struct load *l)
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
		if (strlen(ts_load_scalar(l)) != l->event.data.scalar.length)
			ts_load_say(l, TS_C_RECORDS_SYNTAX, "a zero byte stands in this text",
				"take the \\0 out");
	} else if (l->event.type == YAML_MAPPING_START_EVENT) {
		anchor = l->event.data.mapping_start.anchor;
		tag = l->event.data.mapping_start.tag;
	} else if (l->event.type == YAML_SEQUENCE_START_EVENT) {
		anchor = l->event.data.sequence_start.anchor;
		tag = l->event.data.sequence_start.tag;
	}
	if (anchor || tag || l->event.type == YAML_ALIAS_EVENT)
		ts_load_say(l, TS_C_RECORDS_ALIAS, "an anchor, alias or tag", NULL);
	return true;
}

_Static_assert(TS_DEPTH_MOST == 16, "the remedy names it");

void ts_load_say_too_deep(struct load *l)
{
	ts_load_say(
		l, TS_C_RECORDS_TOO_MUCH, "nested too deep", "no key needs more than 16 levels");
	l->broken = true;
}

void ts_load_skip_value(struct load *l)
{
	size_t depth = 0;

	do {
		switch (l->event.type) {
		case YAML_MAPPING_START_EVENT:
		case YAML_SEQUENCE_START_EVENT:
			if (++depth > TS_DEPTH_MOST)
				ts_load_say_too_deep(l);
			break;
		case YAML_MAPPING_END_EVENT:
		case YAML_SEQUENCE_END_EVENT:
			depth--;
			break;
		default:
			break;
		}
	} while (depth && ts_load_next(l));
}

bool ts_load_want(struct load *l, yaml_event_type_t type, const char *wanted)
{
	if (l->event.type == type)
		return true;
	ts_load_say(l, TS_C_RECORDS_WRONG_KIND,
		l->event.type == YAML_SCALAR_EVENT           ? "a single value stands here"
		: l->event.type == YAML_SEQUENCE_START_EVENT ? "a list stands here"
							     : "a block of keys stands here",
		wanted);
	ts_load_skip_value(l);
	return false;
}

const char *ts_load_keep_scalar(struct load *l)
{
	return ts_arena_text(l->arena, ts_load_scalar(l), l->event.data.scalar.length);
}
