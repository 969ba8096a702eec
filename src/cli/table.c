/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A stream that remembers why it failed. A folder opens like a file, and fails when it is read.
 */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "cli/table.h"

#include "base/findings.h"

void table_find(struct session *s, enum ts_code_id code, const char *what, const char *remedy)
{
	struct ts_place place = {.file = s->options->batch_file};

	ts_finding_add(s->findings, &ts_codes[code], &place, what, remedy);
}

size_t table_read(void *state, char *bytes, size_t room)
{
	struct table *t = state;
	size_t len;

	errno = 0;
	len = fread(bytes, 1, room, t->stream);
	if (ferror(t->stream) && !t->why)
		t->why = errno;
	return len;
}

static bool readable(FILE *stream)
{
	int first;

	errno = 0;
	first = getc(stream);
	if (first != EOF)
		ungetc(first, stream);
	return !ferror(stream);
}

enum ts_status table_open(struct session *s, struct table *ret)
{
	const char *file = s->options->batch_file;

	*ret = (struct table){.file = file};
	ret->stream = strcmp(file, "-") == 0 ? stdin : fopen(file, "rb");
	if (ret->stream && readable(ret->stream))
		return TS_OK;
	ret->why = errno;
	return table_close(s, ret);
}

enum ts_status table_close(struct session *s, struct table *t)
{
	if (t->stream && t->stream != stdin)
		fclose(t->stream);
	if (!t->why)
		return TS_OK;
	table_find(s, TS_C_RECORDS_UNREADABLE, strerror(t->why), NULL);
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
