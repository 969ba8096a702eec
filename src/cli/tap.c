/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Reading and writing the kept tap; what it is used for stands in answer.c, the command in keep.c.
 */
#include "cli/tap.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>

#include "base/arena.h"
#include "base/date.h"
#include "cli/output.h"
#include "records/write.h"

static const char *config_folder(struct ts_arena *arena)
{
	const char *config = getenv("XDG_CONFIG_HOME"), *home = getenv("HOME");

	if (config && config[0] == '/')
		return ts_arena_join(arena, config, "/tapshoal", NULL);
	return home && *home ? ts_arena_join(arena, home, "/.config/tapshoal", NULL) : NULL;
}

const char *tap_path(struct ts_arena *arena)
{
	const char *folder = config_folder(arena);

	return folder ? ts_arena_join(arena, folder, "/tap.yaml", NULL) : NULL;
}

enum ts_status tap_load(struct ts_arena *arena, struct ts_water *ret, struct ts_findings *findings)
{
	const char *off = getenv("TAPSHOAL_NO_CONFIG");
	const char *path = off && *off ? NULL : tap_path(arena);
	struct stat info;

	if (arena->failed)
		return TS_NO_MEMORY;
	if (!path || stat(path, &info) != 0)
		return TS_NO;
	return ts_water_load(path, arena, ret, findings);
}

static enum ts_status fail(struct ts_text *error, const char *path)
{
	ts_text_puts(error, path, ": ", strerror(errno), "; the tap was not kept", NULL);
	return TS_SYSTEM;
}

/* Makes a folder and those above it. */
static bool make_folders(struct ts_arena *arena, const char *folder)
{
	char *path = ts_arena_text(arena, folder, strlen(folder));

	for (char *at = path ? path + 1 : NULL; at && *at; at++) {
		if (*at != '/')
			continue;
		*at = '\0';
		if (mkdir(path, 0700) != 0 && errno != EEXIST)
			return false;
		*at = '/';
	}
	return path && (mkdir(path, 0700) == 0 || errno == EEXIST);
}

enum ts_status tap_keep(struct ts_arena *arena, const struct ts_water *water, struct ts_text *error)
{
	const char *folder = config_folder(arena), *path = tap_path(arena);
	struct ts_text text;
	enum ts_status status = TS_NO_MEMORY;

	if (!path) {
		ts_text_put(error, arena->failed ? ""
						 : "there is no home folder to keep it in; "
						   "set XDG_CONFIG_HOME");
		return arena->failed ? TS_NO_MEMORY : TS_SYSTEM;
	}
	if (!make_folders(arena, folder))
		return fail(error, folder);
	ts_text_open(&text, NULL);
	ts_text_put(&text, "# The tap that tapshoal remembers; tapshoal keep writes it.\n");
	ts_records_write(&text, &ts_shape_water, water, false);
	if (!text.failed)
		status = output_write(path, &text, error) ? TS_OK : TS_SYSTEM;
	ts_text_drop(&text);
	return status;
}

bool tap_today(const char *given, long *ret)
{
	char today[TS_DATE_ROOM] = "";
	time_t now = time(NULL);
	const struct tm *local = localtime(&now);

	if (given)
		return ts_date_read(given, ret);
	if (local)
		strftime(today, sizeof today, "%Y-%m-%d", local);
	return ts_date_read(today, ret);
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
		return -1;
	return today > newest ? today - newest : 0;
}

void tap_say(struct ts_text *out, const struct ts_water *water, long today)
{
	bool read;
	long age = tap_age_days(water, today, &read);

	ts_text_puts(out, "The water is your kept tap", water->name ? ", " : "", water->name, NULL);
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
