/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Whole files into memory, with a bound, so that a device or a huge file is an error and not a
 * hang.
 */
#include "records/file.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

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

/* As read(), but a signal in between is no error. */
static ssize_t read_some(int from, char *into, size_t room)
{
	ssize_t got;

	do
		got = read(from, into, room);
	while (got < 0 && errno == EINTR);
	return got;
}

/* Until the end, or until more than `most` is there. `*ret_bytes` is the caller's to free. */
static enum ts_status read_all(int from, size_t most, const struct ts_allocator *allocator,
	char **ret_bytes, size_t *ret_len)
{
	size_t room = 8192, len = 0;
	char *bytes = allocator->resize(allocator->state, NULL, room);

	while (bytes) {
		ssize_t got = read_some(from, bytes + len, room - len);
		char *moved;

		*ret_bytes = bytes;
		*ret_len = len += got > 0 ? (size_t)got : 0;
		if (got <= 0 || len > most)
			return got < 0 ? TS_SYSTEM : len > most ? TS_BAD_INPUT : TS_OK;
		if (len < room)
			continue;
		moved = allocator->resize(allocator->state, bytes, room * 2);
		if (!moved)
			break;
		bytes = moved;
		room *= 2;
	}
	return TS_NO_MEMORY;
}

enum ts_status ts_file_read(const char *file, size_t most, const struct ts_allocator *allocator,
	char **ret_bytes, size_t *ret_len, struct ts_findings *findings)
{
	struct ts_allocator mine = ts_allocator_or_default(allocator);
	bool standard = strcmp(file, "-") == 0;
	int from = standard ? STDIN_FILENO : open(file, O_RDONLY | O_CLOEXEC);
	char *bytes = NULL;
	size_t len = 0;
	enum ts_status status;
	int why;

	if (from < 0)
		return refuse(file, TS_C_RECORDS_UNREADABLE, strerror(errno), findings, TS_SYSTEM);
	status = read_all(from, most, &mine, &bytes, &len);
	why = errno;
	if (!standard)
		close(from);
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
