/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Whole files into memory, with a bound, so that a device or a huge file is an error and not a
 * hang.
 */
#include "records/file.h"

#include <errno.h>
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

static enum ts_status refuse_why(const char *file, int why, struct ts_findings *findings)
{
	if (why == ENOMEM)
		return TS_NO_MEMORY;
	return refuse(file, TS_C_RECORDS_UNREADABLE, ts_system_says(why), findings, TS_SYSTEM);
}

/* Until the end, or until more than `most` is there. `*ret_bytes` is the caller's to free. */
static enum ts_status read_all(const struct ts_system *system, int handle, size_t most,
	const struct ts_allocator *allocator, char **ret_bytes, size_t *ret_len, int *ret_why)
{
	size_t room = 8192, len = 0;
	char *bytes = allocator->resize(allocator->state, NULL, room);

	while (bytes) {
		size_t got = 0;
		char *moved;

		*ret_why = system->read(system->state, handle, bytes + len, room - len, &got);
		*ret_bytes = bytes;
		*ret_len = len += got;
		if (*ret_why || !got || len > most)
			return *ret_why ? TS_SYSTEM : len > most ? TS_BAD_INPUT : TS_OK;
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

enum ts_status ts_file_read_open(const struct ts_system *system, int handle, const char *file,
	size_t most, const struct ts_allocator *allocator, char **ret_bytes, size_t *ret_len,
	struct ts_findings *findings)
{
	struct ts_allocator mine = ts_allocator_or_default(allocator);
	char *bytes = NULL;
	size_t len = 0;
	int why = 0;
	enum ts_status status = read_all(system, handle, most, &mine, &bytes, &len, &why);

	if (status == TS_OK) {
		*ret_bytes = bytes;
		*ret_len = len;
		return TS_OK;
	}
	if (bytes)
		mine.resize(mine.state, bytes, 0);
	if (status == TS_SYSTEM)
		return refuse_why(file, why, findings);
	if (status == TS_BAD_INPUT)
		return refuse(file, TS_C_RECORDS_TOO_MUCH, "larger than 4 MiB", findings, status);
	return status;
}

enum ts_status ts_file_read(const struct ts_system *system, const char *file, enum ts_opening how,
	size_t most, const struct ts_allocator *allocator, char **ret_bytes, size_t *ret_len,
	struct ts_findings *findings)
{
	enum ts_status status;
	int handle, why;

	if (!system)
		system = ts_system_machine();
	why = system->open(system->state, file, how, &handle);
	if (why)
		return refuse_why(file, why, findings);
	status = ts_file_read_open(
		system, handle, file, most, allocator, ret_bytes, ret_len, findings);
	system->close(system->state, handle);
	return status;
}

enum ts_status ts_file_keep(const struct ts_system *system, const char *file, size_t most,
	struct ts_arena *arena, const char **ret_bytes, size_t *ret_len)
{
	struct ts_seen seen;
	size_t len = 0, got = 1;
	char *bytes;
	int handle;

	if (system->look(system->state, file, &seen) != 0 || seen.entry != TS_ENTRY_FILE ||
		seen.size >= most || system->open(system->state, file, TS_OPEN_ORDINARY, &handle))
		return TS_NO;
	bytes = ts_arena_take(arena, (size_t)seen.size + 1); /* one more tells that it has grown */
	while (bytes && got && len <= seen.size) {
		if (system->read(
			    system->state, handle, bytes + len, (size_t)seen.size + 1 - len, &got))
			break;
		len += got;
	}
	system->close(system->state, handle);
	if (!bytes)
		return TS_NO_MEMORY;
	*ret_bytes = bytes;
	*ret_len = len;
	return len == seen.size && !got ? TS_OK : TS_NO;
}
