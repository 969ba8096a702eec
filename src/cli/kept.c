/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is kept by name: the folder, the names in a call, the files written. The command is keep.c.
 */
#include "cli/kept.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "home/paths.h"
#include "home/tap.h"
#include "records/file.h"
#include "records/kind.h"
#include "records/load.h"
#include "records/write.h"

#define NAME_MOST 40
#define ENDING ".yaml"
#define KEPT_MOST 256
#define HEAD "# Kept by tapshoal; note adds readings.\n"

static bool is_name(const char *name, size_t len)
{
	for (size_t i = 0; i < len; i++) {
		char c = name[i], lower = (char)(c | 0x20);

		if (!(lower >= 'a' && lower <= 'z') && !(c >= '0' && c <= '9') && c != '-' &&
			c != '_')
			return false;
	}
	return len > 0 && len <= NAME_MOST;
}

static const char *folder_of(struct session *s)
{
	const char *own = settings_kept(s), *config = own ? NULL : tap_folder(s->system, s->arena);

	if (own)
		return own;
	return config ? ts_arena_join(s->arena, config, "/kept", NULL) : NULL;
}

const char *kept_path(struct session *s, const char *name)
{
	const char *folder = folder_of(s);

	if (!is_name(name, strlen(name))) {
		ts_text_puts(s->error, "'@", name,
			"' is no name of something kept; letters, digits, - and _ make one, like "
			"@living-room",
			NULL);
		return NULL;
	}
	if (strcmp(name, "tap") == 0)
		return tap_path(s->system, s->arena);
	if (!folder) {
		if (!s->arena->failed)
			ts_text_put(s->error,
				"there is no home folder that keeps things; set XDG_CONFIG_HOME");
		return NULL;
	}
	return ts_arena_join(s->arena, folder, "/", name, ENDING, NULL);
}

const char *kept_called(struct session *s, const char *path)
{
	const char *folder = folder_of(s);
	size_t len = folder ? strlen(folder) : 0, end = strlen(ENDING), all = strlen(path);

	if (!len || all <= len + 1 + end || strncmp(path, folder, len) != 0 || path[len] != '/' ||
		!is_name(path + len + 1, all - len - 1 - end))
		return path;
	return ts_arena_join(
		s->arena, "@", ts_arena_text(s->arena, path + len + 1, all - len - 1 - end), NULL);
}

/* The names in the folder, as they come. */
struct names {
	struct session *s;
	struct kept_item items[KEPT_MOST];
	size_t count;
};

static bool take_name(void *to, const char *file)
{
	struct names *n = to;
	size_t len = strlen(file), end = strlen(ENDING);

	if (n->count == KEPT_MOST)
		return false;
	if (len > end && strcmp(file + len - end, ENDING) == 0 && is_name(file, len - end))
		n->items[n->count++].name = ts_arena_text(n->s->arena, file, len - end);
	return !n->s->arena->failed;
}

static int by_name(const void *a, const void *b)
{
	const struct kept_item *left = a, *right = b;

	return strcmp(left->name, right->name);
}

enum ts_status kept_list(struct session *s, struct kept_item **ret, size_t *ret_count)
{
	const char *off = s->system->variable(s->system->state, "TAPSHOAL_NO_CONFIG");
	const char *folder = off && *off ? NULL : folder_of(s);
	struct names *n = ts_arena_take(s->arena, sizeof *n);
	enum ts_status status = TS_OK;

	*ret_count = 0;
	if (!n || s->arena->failed)
		return TS_NO_MEMORY;
	*n = (struct names){.s = s};
	*ret = n->items;
	if (folder && s->system->list(s->system->state, folder, take_name, n) == ENOMEM)
		return TS_NO_MEMORY;
	if (s->arena->failed)
		return TS_NO_MEMORY;
	qsort(n->items, n->count, sizeof *n->items, by_name);
	for (size_t i = 0; i < n->count && !status; i++) {
		n->items[i].path =
			ts_arena_join(s->arena, folder, "/", n->items[i].name, ENDING, NULL);
		status = n->items[i].path ? ts_records_kind(s->system, n->items[i].path,
						    &s->arena->allocator, &n->items[i].shape)
					  : TS_NO_MEMORY;
	}
	*ret_count = n->count;
	return status;
}

/* "nothing is kept as @x; kept are @a and @b" */
static enum ts_status not_kept(struct session *s, const char *name)
{
	struct kept_item *items;
	size_t count;
	enum ts_status status = kept_list(s, &items, &count);

	if (status)
		return status;
	ts_text_puts(s->error, "nothing is kept as @", name, "; ", NULL);
	for (size_t i = 0; i < count; i++)
		ts_text_puts(s->error, i ? ", @" : "kept are @", items[i].name, NULL);
	ts_text_puts(
		s->error, count ? "; " : "", "tapshoal keep @", name, " FILE keeps a file", NULL);
	return TS_BAD_INPUT;
}

static const char sample[] = "sample/";
static const char *const sample_folders[] = {"waters", "tanks", "plans", NULL};

static bool list_sample(void *to, const char *file)
{
	struct session *s = to;
	size_t len = strlen(file), end = strlen(ENDING);

	if (len <= end || strcmp(file + len - end, ENDING) != 0)
		return true;
	ts_text_put(s->error, " @sample/");
	ts_text_add(s->error, file, len - end);
	return true;
}

void kept_samples(struct session *s, bool (*take)(void *state, const char *file), void *state)
{
	for (size_t i = 0; sample_folders[i]; i++) {
		const char *folder = paths_examples(s->system, s->arena, sample_folders[i]);

		if (folder)
			(void)s->system->list(s->system->state, folder, take, state);
	}
}

/* "@sample/kitchen-tap": an example that came with the program, from any folder. */
static enum ts_status sample_path(struct session *s, const char *name, const char **ret)
{
	*ret = NULL;
	for (size_t i = 0; sample_folders[i] && !*ret && is_name(name, strlen(name)); i++)
		*ret = paths_example(s->system, s->arena,
			ts_arena_join(s->arena, sample_folders[i], "/", name, ENDING, NULL));
	if (*ret || s->arena->failed)
		return *ret ? TS_OK : TS_NO_MEMORY;
	ts_text_puts(s->error, "there is no sample '", name, "'; samples are", NULL);
	kept_samples(s, list_sample, s);
	return TS_BAD_INPUT;
}

/* One word of a call; `stop`: behind it stands more, as in mix @rain=0.3. */
static enum ts_status resolve(struct session *s, const char **io, char stop)
{
	const char *word = *io, *end, *name, *path, *off;
	struct ts_seen seen;

	if (!word || word[0] != '@')
		return TS_OK;
	end = stop ? strchr(word, stop) : NULL;
	end = end ? end : word + strlen(word);
	name = ts_arena_text(s->arena, word + 1, (size_t)(end - word - 1));
	if (name && strncmp(name, sample, strlen(sample)) == 0) {
		enum ts_status status = sample_path(s, name + strlen(sample), &path);

		if (status == TS_OK)
			*io = *end ? ts_arena_join(s->arena, path, end, NULL) : path;
		return status == TS_OK && !*io ? TS_NO_MEMORY : status;
	}
	path = name ? kept_path(s, name) : NULL;
	if (!path)
		return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
	off = s->system->variable(s->system->state, "TAPSHOAL_NO_CONFIG");
	if ((off && *off) || s->system->look(s->system->state, path, &seen) == ENOENT)
		return not_kept(s, name);
	*io = *end ? ts_arena_join(s->arena, path, end, NULL) : path;
	return *io ? TS_OK : TS_NO_MEMORY;
}

/* Commands whose words are files alone: there a name stands for what is kept without its sign. */
static bool takes_files(const struct command *command)
{
	return command->run == command_note || command->run == command_log ||
	       command->run == command_due || command->run == command_drift;
}

/* "living-room" where no such file lies here, and something is kept by that name. */
static enum ts_status resolve_bare(struct session *s, const char **io)
{
	const char *off = s->system->variable(s->system->state, "TAPSHOAL_NO_CONFIG"), *path;
	struct ts_seen seen;

	if (!is_name(*io, strlen(*io)) || (off && *off) ||
		s->system->look(s->system->state, *io, &seen) != ENOENT)
		return TS_OK;
	path = kept_path(s, *io);
	if (!path) { /* no home folder: the word stays what it was */
		ts_text_clear(s->error);
		return s->arena->failed ? TS_NO_MEMORY : TS_OK;
	}
	if (s->system->look(s->system->state, path, &seen) == 0)
		*io = path;
	return TS_OK;
}

enum ts_status kept_resolve(struct session *s, const struct command *command, struct options *o)
{
	size_t bare = !takes_files(command)          ? 0
		      : command->run == command_note ? 1
						     : o->argument_count;

	const char **const files[] = {&o->water_file, &o->tank_file, &o->shop_file, &o->against,
		&o->batch_file, &o->practice_file, &o->like};
	bool mixes = strcmp(command->name, "mix") == 0;
	enum ts_status status = TS_OK;

	if (command->run == command_keep || command->run == command_complete)
		return TS_OK;
	if (command->run == command_note && o->argument_count &&
		strncmp(o->arguments[0], "@sample/", 8) == 0) {
		ts_text_put(s->error, "a sample is not written to; tapshoal init writes files of "
				      "your own");
		return TS_BAD_INPUT;
	}
	for (size_t i = 0; i < bare && i < o->argument_count && !status; i++)
		status = resolve_bare(s, &o->arguments[i]);
	for (size_t i = 0; i < sizeof files / sizeof *files && !status; i++)
		status = resolve(s, files[i], '\0');
	for (size_t i = 0; i < o->waters.count && !status; i++)
		status = resolve(s, &o->waters.items[i], '\0');
	for (size_t i = 0; i < o->argument_count && !status; i++)
		status = resolve(s, &o->arguments[i], mixes ? '=' : '\0');
	return status;
}

/* The place of a new one: TS_BAD_INPUT where something is kept there. */
static enum ts_status place_for(struct session *s, const char *name, const char **ret)
{
	struct ts_seen seen;
	int why;

	*ret = kept_path(s, name);
	if (!*ret)
		return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
	if (s->system->look(s->system->state, *ret, &seen) == 0) {
		ts_text_puts(s->error, "@", name, " is kept already, in ", *ret,
			"; note adds readings to it, another name keeps both, and to forget it "
			"remove that file",
			NULL);
		return TS_BAD_INPUT;
	}
	why = tap_make_folder(s->system, s->arena, folder_of(s));
	if (why == ENOMEM)
		return TS_NO_MEMORY;
	if (why)
		ts_text_puts(s->error, *ret, ": ", ts_system_says(why), "; nothing was kept", NULL);
	return why ? TS_SYSTEM : TS_OK;
}

/* A plan that names its files would lose them elsewhere: it is written with all in it. */
static bool plan_whole(const struct ts_plan *plan)
{
	return !plan->water_file && !plan->tank_file && !plan->change_water_file;
}

static enum ts_status bytes_of(struct session *s, const char *file, struct ts_text *out)
{
	char *bytes;
	size_t len;
	enum ts_status status = ts_file_read(s->system, file, TS_OPEN_ORDINARY, TS_FILE_BYTES_MOST,
		&s->arena->allocator, &bytes, &len, s->findings);

	if (status)
		return status;
	ts_text_add(out, bytes, len);
	s->arena->allocator.resize(s->arena->allocator.state, bytes, 0);
	return TS_OK;
}

/* The file as it will be kept, read as what it is. */
static enum ts_status read_whole(struct session *s, const char *file, struct ts_text *out)
{
	const struct ts_shape *shape;
	struct ts_water water;
	struct ts_tank tank;
	struct ts_plan plan = {0};
	enum ts_status status = bytes_of(s, file, out);

	if (!status)
		status = ts_records_kind(s->system, file, &s->arena->allocator, &shape);
	if (status)
		return status;
	if (shape == &ts_shape_water) {
		status = file_water(s, file, &water);
	} else if (shape == &ts_shape_tank) {
		status = file_tank(s, file, &tank);
	} else if (shape == &ts_shape_plan) {
		status = file_plan(s, file, &plan);
	} else {
		ts_text_puts(s->error, file,
			" is no water, tank or plan of ours; docs/formats.md has their keys", NULL);
		return TS_BAD_INPUT;
	}
	if (status || shape != &ts_shape_plan || plan_whole(&plan))
		return status;
	plan.water_file = plan.tank_file = plan.change_water_file = NULL;
	ts_text_clear(out);
	ts_text_put(out, HEAD);
	ts_records_write(out, &ts_shape_plan, &plan, false);
	return TS_OK;
}

/* Puts what stands for it, a file or a water, under the name. */
static enum ts_status put_as(
	struct session *s, const char *name, const char *file, const struct ts_water *water)
{
	const char *path;
	struct ts_text text;
	enum ts_status status = place_for(s, name, &path);

	if (status)
		return status;
	ts_text_open(&text, &s->arena->allocator);
	if (file) {
		status = read_whole(s, file, &text);
	} else {
		ts_text_put(&text, HEAD);
		ts_records_write(&text, &ts_shape_water, water, false);
	}
	if (!status)
		status =
			text.failed ? TS_NO_MEMORY : output_write(s->system, path, &text, s->error);
	ts_text_drop(&text);
	return status;
}

enum ts_status kept_file(struct session *s, const char *name, const char *file)
{
	return put_as(s, name, file, NULL);
}

enum ts_status kept_water(struct session *s, const char *name, const struct ts_water *water)
{
	return put_as(s, name, NULL, water);
}
