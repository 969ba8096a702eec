/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A look at the keys of a file without parsing it, so that a broken file is told apart too.
 */
#include "records/kind.h"

#include <string.h>

#include "base/arena.h"
#include "base/text.h"
#include "records/file.h"
#include "records/load.h"

static bool has_key(const struct ts_shape *shape, const char *key, size_t len)
{
	for (size_t i = 0; i < shape->count; i++) {
		const char *own = shape->fields[i].key;

		if (strlen(own) == len && memcmp(own, key, len) == 0)
			return true;
	}
	return false;
}

/* How far the first key stands from the edge: a root may be indented as a whole. */
static size_t indent_of(const char *bytes, size_t len)
{
	size_t indent = 0;

	for (size_t i = ts_text_order_mark(bytes, len); i < len; i++) {
		if (bytes[i] == '#' || (bytes[i] == '-' && indent == 0)) { /* or "---" */
			while (i < len && bytes[i] != '\n' && bytes[i] != '\r')
				i++;
			indent = 0;
		} else if (bytes[i] == ' ') {
			indent++;
		} else if (bytes[i] == '\n' || bytes[i] == '\r') {
			indent = 0;
		} else {
			return indent;
		}
	}
	return 0;
}

/* Lines end with LF, CR LF or, out of old editors, CR. */
static size_t keys_of(const struct ts_shape *shape, const char *bytes, size_t len)
{
	const size_t indent = indent_of(bytes, len);
	size_t count = 0;

	for (const char *line = bytes + ts_text_order_mark(bytes, len), *end = bytes + len;
		line < end;) {
		const char *stop = line, *colon;

		while (stop < end && *stop != '\n' && *stop != '\r')
			stop++;
		for (size_t i = 0; i < indent && line < stop && *line == ' '; i++)
			line++;
		while (line < stop && *line == '{') /* a file in braces is told apart too */
			line++;
		colon = line < stop ? memchr(line, ':', (size_t)(stop - line)) : NULL;
		if (colon)
			count += has_key(shape, line, (size_t)(colon - line));
		line = stop + 1;
	}
	return count;
}

enum ts_status ts_records_kind(const struct ts_system *system, const char *file,
	const struct ts_allocator *allocator, const struct ts_shape **ret)
{
	const struct ts_shape *const shapes[] = {
		&ts_shape_species, &ts_shape_water, &ts_shape_tank, &ts_shape_plan};
	const struct ts_allocator mine = ts_allocator_or_default(allocator);
	enum ts_status status = TS_NO;
	size_t most = 0, len;
	char *bytes;

	*ret = shapes[0];
	if (strcmp(file, "-") != 0)
		status = ts_file_read(system, file, TS_OPEN_ORDINARY, TS_FILE_BYTES_MOST, allocator,
			&bytes, &len, NULL);
	if (status)
		return status == TS_NO_MEMORY ? status : TS_OK;
	for (size_t i = 0; i < sizeof shapes / sizeof *shapes; i++) {
		size_t count = keys_of(shapes[i], bytes, len);

		if (count > most) {
			most = count;
			*ret = shapes[i];
		}
	}
	mine.resize(mine.state, bytes, 0);
	return TS_OK;
}
