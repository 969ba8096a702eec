/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Each kept tank in two lines: what check says first, what due wants next. One that cannot be read
 * says so in its place and does not hide the others.
 */
#include "cli/standing.h"

#include <string.h>

#include "base/arena.h"
#include "cli/kept.h"

/* Why this one has no answer, in its place: the error of the call, or its first finding. */
static const char *why_not(struct session *s, size_t findings)
{
	const char *says = NULL;

	if (s->error->len)
		says = ts_arena_text(s->arena, ts_text_get(s->error), s->error->len);
	else if (s->findings->count > findings)
		says = s->findings->items[findings].what;
	ts_text_clear(s->error);
	return ts_arena_join(s->arena, "Not answered: ", says ? says : "it cannot be read", NULL);
}

/* The first of what is due. */
static void say_due(struct ts_document *doc, struct ts_node *entry, const struct ts_due_result *due)
{
	if (due->danger)
		ts_doc_line(doc, entry, due->danger, NULL);
	else
		ts_doc_line(doc, entry, due->nothing ? due->because : due->says, NULL);
}

static enum ts_status say_one(struct session *s, struct ts_document *doc,
	const struct kept_item *item, const char **io_answered)
{
	size_t findings = s->findings->count;
	struct ts_check_result check;
	struct ts_due_result due;
	const char *first = NULL;
	struct ts_node *entry;
	enum ts_status status = TS_OK, asked;

	if (item->shape == &ts_shape_plan) {
		status = check_of(s, item->path, &check);
		first = status ? NULL : check.headline;
	}
	asked = status ? status : due_of(s, item->path, &due);
	if (status == TS_NO_MEMORY || asked == TS_NO_MEMORY)
		return TS_NO_MEMORY;
	if (asked)
		first = why_not(s, findings);
	entry = ts_doc_entry(doc, ts_arena_join(s->arena, "@", item->name, first ? ": " : "",
					  first ? first : "", NULL));
	if (!asked) {
		say_due(doc, entry, &due);
		*io_answered = *io_answered ? *io_answered : item->name;
	}
	return s->arena->failed ? TS_NO_MEMORY : TS_OK;
}

enum ts_status standing(struct session *s)
{
	const char *answered = NULL;
	struct kept_item *items;
	struct ts_document doc;
	size_t count;
	enum ts_status status = kept_list(s, &items, &count);

	if (status || !count)
		return status ? status : TS_NO;
	ts_doc_open(&doc, s->arena, "How it stands");
	ts_doc_verdict(&doc, "How what you keep stands today.", "");
	for (size_t i = 0; i < count && !status; i++)
		status = say_one(s, &doc, &items[i], &answered);
	if (status)
		return status;
	if (answered)
		ts_doc_paragraph(
			&doc, ts_arena_join(s->arena,
				      "What is due in all of them: tapshoal due; more of one: "
				      "tapshoal check @",
				      answered, ", tapshoal due @", answered,
				      "; a reading: tapshoal note @", answered, " GH=8", NULL));
	ts_doc_paragraph(&doc, "All commands: tapshoal --help");
	session_write(s, &doc);
	return TS_OK;
}
