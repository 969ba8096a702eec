/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A run of the rules over a catalogue: what they look up is gathered once, so that a run takes time
 * in proportion to the records.
 */
#include "catalogue/lint.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "base/arena.h"
#include "base/findings.h"
#include "records/file.h"
#include "records/load.h"

static int compare_claims(const void *a, const void *b)
{
	const struct ts_claim *x = a, *y = b;
	int by_name = strcasecmp(x->name, y->name);

	return by_name ? by_name : strcmp(x->by->file, y->by->file);
}

static bool gather_claims(struct ts_lint *lint)
{
	const struct ts_catalogue *c = lint->catalogue;
	size_t count = 0;

	for (size_t i = 0; i < c->count; i++)
		count += 1 + c->items[i]->synonyms.count;
	lint->claims = ts_arena_array(&lint->arena, count ? count : 1, sizeof *lint->claims);
	if (!lint->claims)
		return false;
	for (size_t i = 0; i < c->count; i++) {
		const struct ts_species *s = c->items[i];

		for (size_t n = 0; n <= s->synonyms.count; n++)
			lint->claims[lint->claim_count++] =
				(struct ts_claim){ts_species_name(s, n), s};
	}
	if (count)
		qsort(lint->claims, count, sizeof *lint->claims, compare_claims);
	return true;
}

static bool know_source(void *to, const char *file)
{
	struct ts_lint *lint = to;
	const char *dot = strrchr(file, '.');
	const char **items;

	if (!dot || strcmp(dot, ".yaml") != 0)
		return true;
	items = ts_arena_grow(&lint->arena, lint->sources.items, lint->sources.count,
		&lint->source_room, sizeof *items);
	if (!items)
		return false;
	lint->sources.items = items;
	items[lint->sources.count] = ts_arena_text(&lint->arena, file, (size_t)(dot - file));
	return items[lint->sources.count++];
}

enum ts_status ts_lint_know_sources(struct ts_lint *lint, const char *folder)
{
	const struct ts_system *system =
		lint->catalogue->system ? lint->catalogue->system : ts_system_machine();
	const char *path = ts_arena_join(&lint->arena, folder, "/sources", NULL);

	if (path) /* a folder of records need not have one */
		(void)system->list(system->state, path, know_source, lint);
	return lint->arena.failed ? TS_NO_MEMORY : TS_OK;
}

enum ts_status ts_lint_open(struct ts_lint *lint, const struct ts_catalogue *catalogue,
	const struct ts_allocator *allocator)
{
	enum ts_status status;

	*lint = (struct ts_lint){.catalogue = catalogue};
	ts_arena_open(&lint->arena, allocator);
	status = gather_claims(lint) ? TS_OK : TS_NO_MEMORY;
	for (size_t i = 0; i < catalogue->folders.count && !status; i++)
		status = ts_lint_know_sources(lint, catalogue->folders.items[i]);
	return status;
}

void ts_lint_close(struct ts_lint *lint)
{
	ts_arena_drop(&lint->arena);
}

/* Does the line that starts here hold this key, `indented` or not? */
static bool is_key(const char *line, const char *key, size_t len, bool indented)
{
	const char *at = line + strspn(line, " ");

	return (at > line) == indented && strncmp(at, key, len) == 0 && at[len] == ':';
}

static void find_line(const char *text, const char *path, struct ts_place *io)
{
	size_t len = strcspn(path, ".");
	const char *inner = path[len] ? path + len + 1 : NULL;
	bool inside = false;
	unsigned number = 1;

	for (const char *line = text; *line; number++) {
		if (inside && *line != ' ' && *line != '#' && *line != '\n')
			return;
		if (inside ? is_key(line, inner, strlen(inner), true)
			   : is_key(line, path, len, false)) {
			if (inside || !inner) {
				io->column = (unsigned)strspn(line, " ") + 1;
				io->line = number;
				return;
			}
			inside = true;
		}
		line += strcspn(line, "\n");
		line += *line == '\n';
	}
}

bool ts_lint_line(
	const struct ts_system *system, const char *file, const char *path, struct ts_place *io)
{
	struct ts_text text;
	char *bytes;
	size_t len;
	enum ts_status status = TS_NO;
	bool fine;

	if (strcmp(file, "-") != 0)
		status = ts_file_read(system, file, TS_OPEN_ORDINARY, TS_FILE_BYTES_MOST, NULL,
			&bytes, &len, NULL);
	if (status)
		return status != TS_NO_MEMORY;
	ts_text_open(&text, NULL);
	ts_text_add(&text, bytes, len);
	free(bytes);
	find_line(ts_text_get(&text), path, io);
	fine = !text.failed;
	ts_text_drop(&text);
	return fine;
}

static bool run(const struct ts_lint *lint, const struct ts_lint_rule *rule,
	const struct ts_species *species, struct ts_findings *findings)
{
	struct ts_text what;
	bool kept;

	ts_text_open(&what, &lint->arena.allocator);
	kept = rule->keeps(lint, species, &what);
	if (!kept) {
		struct ts_place place = {.file = species->file, .path = rule->path};

		if (rule->path)
			what.failed |= !ts_lint_line(
				lint->catalogue->system, species->file, rule->path, &place);
		ts_finding_add(findings, &ts_codes[rule->code], &place, ts_text_get(&what), NULL);
	}
	if (findings)
		findings->no_memory |= what.failed;
	ts_text_drop(&what);
	return kept;
}

const struct ts_lint_rule *ts_lint_rule_at(size_t index)
{
	if (index < ts_lint_record_rules_count)
		return &ts_lint_record_rules[index];
	index -= ts_lint_record_rules_count;
	if (index < ts_lint_habit_rules_count)
		return &ts_lint_habit_rules[index];
	index -= ts_lint_habit_rules_count;
	return index < ts_lint_across_rules_count ? &ts_lint_across_rules[index] : NULL;
}

bool ts_lint_species(
	const struct ts_lint *lint, const struct ts_species *species, struct ts_findings *findings)
{
	const struct ts_lint_rule *rule;
	bool ok = true;

	for (size_t i = 0; (rule = ts_lint_rule_at(i)); i++)
		ok &= run(lint, rule, species, findings);
	return ok;
}
