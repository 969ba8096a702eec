/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Findings: every detail of what is wrong goes into an object of the caller, never to a screen and
 * never into a global. The codes themselves are rows in model/codes.c.
 */
#include "base/findings.h"

#include <stdarg.h>
#include <string.h>

#include "base/arena.h"
#include "base/text.h"

void ts_findings_open(struct ts_findings *findings, const struct ts_allocator *allocator)
{
	*findings = (struct ts_findings){0};
	ts_arena_open(&findings->arena, allocator);
}

void ts_findings_drop(struct ts_findings *findings)
{
	struct ts_allocator allocator = findings->arena.allocator;

	ts_arena_drop(&findings->arena);
	ts_findings_open(findings, &allocator);
}

static const char *copied(struct ts_arena *arena, const char *text)
{
	return text ? ts_arena_text(arena, text, strlen(text)) : NULL;
}

static void store(struct ts_findings *f, const struct ts_code *code, const struct ts_place *place,
	const char *what, const char *remedy)
{
	struct ts_finding *items =
		ts_arena_grow(&f->arena, f->items, f->count, &f->room, sizeof *items);
	struct ts_finding *one;

	if (!items) {
		f->no_memory = true;
		return;
	}
	f->items = items;
	one = &items[f->count];
	one->code = code;
	if (place) {
		one->place = *place;
		one->place.file = copied(&f->arena, place->file);
		one->place.path = copied(&f->arena, place->path);
	}
	one->what = copied(&f->arena, what);
	one->remedy = copied(&f->arena, remedy ? remedy : code->remedy);
	if (f->arena.failed)
		f->no_memory = true;
	else
		f->count++;
}

bool ts_finding_add(struct ts_findings *findings, const struct ts_code *code,
	const struct ts_place *place, const char *what, const char *remedy)
{
	bool error = code->severity == TS_ERROR;

	if (!findings)
		return !error;
	findings->errors += error;
	if (findings->count < TS_FINDINGS_MOST)
		store(findings, code, place, what, remedy);
	else
		findings->more++;
	return !error;
}

bool ts_finding_addf(struct ts_findings *findings, const struct ts_code *code,
	const struct ts_place *place, const char *remedy, ...)
{
	struct ts_text text;
	va_list args;
	const char *part;
	bool ok;

	if (!findings)
		return code->severity != TS_ERROR;
	ts_text_open(&text, &findings->arena.allocator);
	va_start(args, remedy);
	while ((part = va_arg(args, const char *)))
		ts_text_put(&text, part);
	va_end(args);
	findings->no_memory |= text.failed;
	ok = ts_finding_add(findings, code, place, ts_text_get(&text), remedy);
	ts_text_drop(&text);
	return ok;
}
