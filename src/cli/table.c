/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A file that remembers why it failed. A folder opens like a file, and fails when it is read.
 */
#include "cli/table.h"

#include <errno.h>

#include "base/findings.h"

void table_find(struct session *s, enum ts_code_id code, const char *what, const char *remedy)
{
	struct ts_place place = {.file = s->options->batch_file};

	ts_finding_add(s->findings, &ts_codes[code], &place, what, remedy);
}

size_t table_read(void *state, char *bytes, size_t room)
{
	struct table *t = state;
	size_t len = 0;
	int why;

	if (t->held) {
		t->held = false;
		*bytes = t->first;
		return 1;
	}
	why = t->system->read(t->system->state, t->handle, bytes, room, &len);
	t->why = t->why ? t->why : why;
	return len;
}

enum ts_status table_open(struct session *s, struct table *ret)
{
	*ret = (struct table){.system = s->system, .file = s->options->batch_file};
	ret->why = s->system->open(s->system->state, ret->file, TS_OPEN_ANY, &ret->handle);
	ret->is_open = !ret->why;
	if (ret->is_open)
		ret->held = table_read(ret, &ret->first, 1) == 1;
	return ret->why ? table_close(s, ret) : TS_OK;
}

enum ts_status table_close(struct session *s, struct table *t)
{
	if (t->is_open)
		t->system->close(t->system->state, t->handle);
	t->is_open = false;
	if (!t->why || t->why == ENOMEM)
		return t->why ? TS_NO_MEMORY : TS_OK;
	table_find(s, TS_C_RECORDS_UNREADABLE, ts_system_says(t->why), NULL);
	return TS_SYSTEM;
}

bool table_agrees(const struct session *s)
{
	const struct options *o = s->options;

	if (o->water_file || o->has_reading)
		ts_text_put(
			s->error, "--batch FILE holds the waters; give no other water beside it");
	else if (o->season)
		ts_text_put(s->error, "--season chooses among the readings of one water, and a row "
				      "of --batch has one; leave the other rows out");
	return !s->error->len;
}
