/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Reading and writing the kept tap; what it is used for stands in answer.c, the command in keep.c.
 */
#include "home/tap.h"

#include <errno.h>
#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "records/file.h"
#include "records/load.h"
#include "records/write.h"
#include "report/output.h"

const char *tap_folder(const struct ts_system *system, struct ts_arena *arena)
{
	const char *config = system->variable(system->state, "XDG_CONFIG_HOME");
	const char *home = system->variable(system->state, "HOME");

	if (config && config[0] == '/')
		return ts_arena_join(arena, config, "/tapshoal", NULL);
	return home && *home ? ts_arena_join(arena, home, "/.config/tapshoal", NULL) : NULL;
}

const char *tap_path(const struct ts_system *system, struct ts_arena *arena)
{
	const char *folder = tap_folder(system, arena);

	return folder ? ts_arena_join(arena, folder, "/tap.yaml", NULL) : NULL;
}

enum ts_status tap_load(const struct ts_system *system, struct ts_arena *arena,
	struct ts_water *ret, struct ts_findings *findings)
{
	const char *off = system->variable(system->state, "TAPSHOAL_NO_CONFIG");
	const char *path = off && *off ? NULL : tap_path(system, arena);
	struct ts_seen seen;
	int why;

	if (arena->failed)
		return TS_NO_MEMORY;
	why = path ? system->look(system->state, path, &seen) : ENOENT;
	if (why == ENOENT || why == ENOTDIR)
		return TS_NO; /* with any other reason it may be there: its reader says so */
	return ts_water_load_from(system, path, arena, ret, findings);
}

static enum ts_status fail(struct ts_text *error, const char *path, int why)
{
	ts_text_puts(error, path, ": ", ts_system_says(why), "; the tap was not kept", NULL);
	return TS_SYSTEM;
}

int tap_make_folder(const struct ts_system *system, struct ts_arena *arena, const char *folder)
{
	char *path = ts_arena_text(arena, folder, strlen(folder));
	int why = path ? 0 : ENOMEM;

	for (char *at = path ? path + 1 : NULL; at && *at && !why; at++) {
		if (*at != '/')
			continue;
		*at = '\0';
		why = system->make_folder(system->state, path);
		*at = '/';
	}
	return why ? why : system->make_folder(system->state, path);
}

static void write_kept(struct ts_text *out, const struct ts_water *water)
{
	ts_text_put(out, "# The tap that tapshoal remembers; tapshoal keep writes it.\n");
	ts_records_write(out, &ts_shape_water, water, false);
}

/* Would nothing be lost with these bytes? They are one reading, as tapshoal keep writes it. */
static bool plain(struct ts_arena *arena, const char *bytes, size_t len)
{
	struct ts_water old;
	struct ts_text again;
	enum ts_status status =
		ts_records_parse(&ts_shape_water, bytes, len, "tap", arena, &old, NULL);
	bool is;

	arena->failed |= status == TS_NO_MEMORY;
	if (status != TS_OK)
		return false;
	ts_text_open(&again, &arena->allocator);
	write_kept(&again, &old);
	is = old.reading_count <= 1 && again.len == len &&
	     memcmp(ts_text_get(&again), bytes, len) == 0;
	arena->failed |= again.failed;
	ts_text_drop(&again);
	return is;
}

/* tap-until-2026-03-01.yaml, or with -2 and so on behind the day; NULL: all of them are taken. */
static const char *free_name(
	const struct ts_system *system, struct ts_arena *arena, const char *folder, long today)
{
	char day[TS_DATE_ROOM] = "", number[] = "-00";
	struct ts_seen seen;

	ts_date_write(day, today);
	for (int i = 1; i < 100; i++) {
		const char *path;

		number[1] = (char)('0' + i / 10);
		number[2] = (char)('0' + i % 10);
		path = ts_arena_join(
			arena, folder, "/tap-until-", day, i > 1 ? number : "", ".yaml", NULL);
		if (!path || system->look(system->state, path, &seen) != 0)
			return path;
	}
	return NULL;
}

static enum ts_status no_name_left(struct ts_text *error, const char *folder)
{
	ts_text_puts(error, folder,
		" has 99 taps of before today already; move some of them away, then keep this one",
		NULL);
	return TS_SYSTEM;
}

/* The file as it is to another place, if it holds what nobody could write again. */
static enum ts_status set_aside(const struct ts_system *system, struct ts_arena *arena,
	const char *folder, long today, const char **ret, struct ts_text *error)
{
	const char *path = tap_path(system, arena);
	struct ts_seen seen;
	struct ts_text old;
	char *bytes;
	size_t len;
	enum ts_status status;

	if (!path)
		return TS_NO_MEMORY;
	if (system->look(system->state, path, &seen) == ENOENT)
		return TS_OK;
	status = ts_file_read(system, path, TS_OPEN_ORDINARY, TS_FILE_BYTES_MOST, &arena->allocator,
		&bytes, &len, NULL);
	if (status == TS_NO_MEMORY)
		return status;
	if (status != TS_OK) {
		ts_text_puts(
			error, path, " cannot be read, so it is not replaced; move it away", NULL);
		return status;
	}
	ts_text_open(&old, &arena->allocator);
	ts_text_add(&old, bytes, len);
	if (!plain(arena, bytes, len)) {
		*ret = free_name(system, arena, folder, today);
		if (*ret && !old.failed)
			status = output_write(system, *ret, &old, error);
		else if (!arena->failed)
			status = no_name_left(error, folder);
	}
	arena->allocator.resize(arena->allocator.state, bytes, 0);
	status = old.failed || arena->failed ? TS_NO_MEMORY : status;
	ts_text_drop(&old);
	return status;
}

static enum ts_status write_tap(const struct ts_system *system, const char *path,
	const struct ts_water *water, struct ts_text *error)
{
	enum ts_status status = TS_NO_MEMORY;
	struct ts_text text;
	int over, why = system->open(system->state, path, TS_OPEN_REWRITE, &over);
	bool there = !why;

	if (why == ENOMEM)
		return TS_NO_MEMORY;
	ts_text_open(&text, NULL);
	write_kept(&text, water);
	if (!text.failed)
		status = output_rewrite(system, path, there ? over : -1, &text, error, &why);
	ts_text_drop(&text);
	if (there)
		system->close(system->state, over);
	return status;
}

enum ts_status tap_keep(const struct ts_system *system, struct ts_arena *arena,
	const struct ts_water *water, long today, const char **ret_aside, struct ts_text *error)
{
	const char *folder = tap_folder(system, arena), *path = tap_path(system, arena);
	enum ts_status status;
	int why;

	*ret_aside = NULL;
	if (!path) {
		ts_text_put(error, arena->failed ? ""
						 : "there is no home folder to keep it in; "
						   "set XDG_CONFIG_HOME");
		return arena->failed ? TS_NO_MEMORY : TS_SYSTEM;
	}
	why = tap_make_folder(system, arena, folder);
	if (why)
		return why == ENOMEM ? TS_NO_MEMORY : fail(error, folder, why);
	status = set_aside(system, arena, folder, today, ret_aside, error);
	return status ? status : write_tap(system, path, water, error);
}

bool tap_today(const struct ts_system *system, const char *given, long *ret)
{
	char today[TS_DAY_ROOM];

	if (given)
		return ts_date_read(given, ret);
	return system->today(system->state, today) && ts_date_read(today, ret);
}

long tap_age_days(const struct ts_water *water, long today, bool *ret_read)
{
	bool read = false;
	long newest = 0, day;

	for (size_t i = 0; i < water->reading_count; i++) {
		const char *date = water->readings[i].date;

		if (!date || !ts_date_read(date, &day) || (read && day < newest))
			continue;
		newest = day;
		read = true;
	}
	*ret_read = read;
	if (!read && !(water->kept && ts_date_read(water->kept, &newest)))
		return TAP_NO_DAY;
	return today - newest;
}

void tap_say(struct ts_text *out, const struct ts_water *water, long today)
{
	bool read;
	long age = tap_age_days(water, today, &read);

	ts_text_puts(out, "The water is your kept tap", water->name ? ", " : "", water->name, NULL);
	if (age < 0 && age != TAP_NO_DAY) {
		ts_text_put(out, ": its date is ahead of today, so nobody knows how old.");
		return;
	}
	ts_text_put(out, age < 0 ? ": nobody knows how old." : read ? ": read " : ": kept ");
	if (age == 0) {
		ts_text_put(out, "today");
	} else if (age > 0) {
		ts_text_number(out, (double)age, 0);
		ts_text_put(out, age == 1 ? " day ago" : " days ago");
	}
	if (age >= 0)
		ts_text_put(out, read ? "." : "; its readings have no date.");
}
