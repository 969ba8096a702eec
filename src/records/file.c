/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Whole files into memory, with a bound, so that a device or a huge file is an error and not a
 * hang.
 */
#include "records/file.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/arena.h"
#include "base/findings.h"
#include "model/codes.h"

static enum ts_status refuse(const char *file, enum ts_code_id code, const char *what,
	struct ts_findings *findings, enum ts_status status)
{
	struct ts_place place = {.file = file};

	ts_finding_add(findings, &ts_codes[code], &place, what, NULL);
	return status;
}

static enum ts_status read_stream(FILE *stream, size_t most, const struct ts_allocator *allocator,
	char **ret_bytes, size_t *ret_len)
{
	size_t room = 8192, len = 0;
	char *bytes = allocator->resize(allocator->state, NULL, room);

	while (bytes) {
		size_t got = fread(bytes + len, 1, room - len, stream);
		char *moved;

		len += got;
		if (got == 0 || len > most || feof(stream))
			break;
		if (len < room)
			continue;
		moved = allocator->resize(allocator->state, bytes, room * 2);
		if (!moved)
			allocator->resize(allocator->state, bytes, 0);
		bytes = moved;
		room *= 2;
	}
	if (!bytes)
		return TS_NO_MEMORY;
	*ret_bytes = bytes;
	*ret_len = len;
	return ferror(stream) ? TS_SYSTEM : len > most ? TS_BAD_INPUT : TS_OK;
}

enum ts_status ts_file_read(const char *file, size_t most, const struct ts_allocator *allocator,
	char **ret_bytes, size_t *ret_len, struct ts_findings *findings)
{
	struct ts_allocator mine = ts_allocator_or_default(allocator);
	bool standard = strcmp(file, "-") == 0;
	FILE *stream = standard ? stdin : fopen(file, "rb");
	char *bytes = NULL;
	size_t len = 0;
	enum ts_status status;
	int why;

	if (!stream)
		return refuse(file, TS_C_RECORDS_UNREADABLE, strerror(errno), findings, TS_SYSTEM);
	errno = 0;
	status = read_stream(stream, most, &mine, &bytes, &len);
	why = errno;
	if (!standard)
		fclose(stream);
	if (status == TS_OK) {
		*ret_bytes = bytes;
		*ret_len = len;
		return TS_OK;
	}
	if (bytes)
		mine.resize(mine.state, bytes, 0);
	if (status == TS_SYSTEM)
		return refuse(file, TS_C_RECORDS_UNREADABLE, strerror(why), findings, status);
	if (status == TS_BAD_INPUT)
		return refuse(file, TS_C_RECORDS_TOO_MUCH, "larger than 4 MiB", findings, status);
	return status;
}
