/* SPDX-License-Identifier: Apache-2.0 */
/*
 * config: says what is settled (settings.h) and where that comes from, or writes a setting into its
 * file, of which every other line stays as it is.
 */
#include <errno.h>
#include <string.h>

#include "base/arena.h"
#include "cli/commands.h"
#include "home/tap.h"
#include "records/file.h"
#include "records/load.h"
#include "records/value.h"

/* As it is without the setting. */
static const char *shipped(const struct ts_field *field)
{
	return field->words ? field->words[0] : "-";
}

/* A setting as it is written; NULL: it is not settled. */
static const char *settled(struct session *s, const struct ts_field *field)
{
	const char *at = (const char *)&s->settings + field->offset, *said = NULL;
	struct ts_text text;
	double number;
	int word;

	if (field->kind == TS_WORD) {
		memcpy(&word, at, sizeof word);
		return word ? field->words[word] : NULL;
	}
	if (field->kind == TS_TEXT) {
		memcpy(&said, at, sizeof said);
		return said;
	}
	memcpy(&number, at, sizeof number);
	if (!(number > 0))
		return NULL;
	ts_text_open(&text, &s->arena->allocator);
	ts_text_number(&text, number, 0);
	said = ts_arena_text(s->arena, ts_text_get(&text), text.len);
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	return said;
}

static const char *words_of(struct session *s, const struct ts_field *field)
{
	struct ts_text text;
	const char *said;

	ts_text_open(&text, &s->arena->allocator);
	for (size_t i = 0; field->words && field->words[i]; i++)
		ts_text_puts(&text, i ? ", " : "", field->words[i], NULL);
	if (!field->words)
		ts_text_put(&text, field->kind == TS_TEXT ? "a folder" : "a number");
	said = ts_arena_text(s->arena, ts_text_get(&text), text.len);
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	return said;
}

/* One line: what it is, where from, what it may be, what it means. */
static void say(struct session *s, const struct ts_field *field)
{
	const char *value = settled(s, field);
	size_t row = (size_t)(field - settings_shape.fields);
	bool environment = s->settings.from_environment >> row & 1;

	ts_text_puts(s->out, field->key, ": ", value ? value : shipped(field), "  (",
		environment ? "of the environment"
		: value     ? "of the file"
			    : "not set",
		"; ", words_of(s, field), ")\n", NULL);
	ts_text_put(s->out, "    ");
	ts_screen_wrap(
		s->out, field->says, 4, 4, &(struct ts_screen){.columns = 80, .unbroken = false});
}

static enum ts_status list(struct session *s, const char *path)
{
	for (size_t i = 0; i < settings_shape.count; i++)
		say(s, &settings_shape.fields[i]);
	ts_text_puts(s->out, "\ntapshoal config KEY VALUE writes one into ",
		path ? path : "its file",
		", tapshoal config KEY default takes it out. TAPSHOAL_KEY in the environment wins "
		"over "
		"the file, a flag over both.\n",
		NULL);
	return TS_OK;
}

/* The key at the start of a line, up to its colon, is this one. */
static bool is_line_of(const char *line, size_t len, const struct ts_field *field)
{
	char key[32];
	size_t colon = 0;

	while (colon < len && line[colon] != ':')
		colon++;
	if (colon == len || colon >= sizeof key)
		return false;
	memcpy(key, line, colon);
	key[colon] = '\0';
	return ts_shape_field_meant(&settings_shape, key) == field;
}

static void put_line(struct ts_text *out, const struct ts_field *field, const char *value)
{
	ts_text_puts(out, field->key, ": ", NULL);
	if (field->kind != TS_TEXT) {
		ts_text_puts(out, value, "\n", NULL);
		return;
	}
	ts_text_put(out, "\"");
	for (; *value; value++) {
		if (*value == '"' || *value == '\\')
			ts_text_put(out, "\\");
		ts_text_add(out, value, 1);
	}
	ts_text_put(out, "\"\n");
}

/* The file with one line in the place of that of the key, or behind all; `value` NULL: none. */
static void put_file(
	struct ts_text *out, const char *bytes, const struct ts_field *field, const char *value)
{
	bool written = !value;

	if (!*bytes)
		ts_text_put(out, "# Your settings of tapshoal; tapshoal config lists them.\n");
	while (*bytes) {
		size_t len = strcspn(bytes, "\n"), all = len + (bytes[len] == '\n');

		if (!is_line_of(bytes, len, field)) {
			ts_text_add(out, bytes, all);
			if (all == len)
				ts_text_put(out, "\n");
		} else if (!written) {
			put_line(out, field, value);
			written = true;
		}
		bytes += all;
	}
	if (!written)
		put_line(out, field, value);
}

/* How much is wrong in a file of settings; one more where it cannot be read at all. */
static size_t faults_of(struct session *s, const struct ts_text *text)
{
	struct settings none;
	struct ts_findings found;
	size_t count;

	ts_findings_open(&found, &s->arena->allocator);
	s->arena->failed |= ts_records_parse(&settings_shape, ts_text_get(text), text->len,
				    "config", s->arena, &none, &found) == TS_NO_MEMORY;
	count = settings_faults(&found, NULL);
	ts_findings_drop(&found);
	return count;
}

static enum ts_status write_over(struct session *s, const char *path, int over, const char *old,
	const struct ts_field *field, const char *value)
{
	enum ts_status status = TS_OK;
	struct ts_text before, text;
	int why;

	ts_text_open(&before, &s->arena->allocator);
	ts_text_open(&text, &s->arena->allocator);
	ts_text_put(&before, old);
	put_file(&text, old, field, value);
	if (before.failed || text.failed) {
		status = TS_NO_MEMORY;
	} else if (faults_of(s, &text) > faults_of(s, &before)) {
		ts_text_puts(s->error, path, " is written in another way; write ", field->key, ": ",
			value ? value : shipped(field), " into it by hand", NULL);
		status = TS_BAD_INPUT;
	} else {
		status = output_rewrite(s->system, path, over, &text, s->error, &why);
	}
	ts_text_drop(&text);
	ts_text_drop(&before);
	return s->arena->failed ? TS_NO_MEMORY : status;
}

static enum ts_status write_file(
	struct session *s, const char *path, const struct ts_field *field, const char *value)
{
	char none[] = "", *bytes = none;
	size_t len = 0;
	const char *folder = tap_folder(s->system, s->arena), *old;
	int over, why = folder ? tap_make_folder(s->system, s->arena, folder) : ENOMEM;
	bool there;
	enum ts_status status = TS_OK;

	if (why) {
		ts_text_puts(
			s->error, path, ": ", ts_system_says(why), "; nothing is settled", NULL);
		return why == ENOMEM ? TS_NO_MEMORY : TS_SYSTEM;
	}
	there = s->system->open(s->system->state, path, TS_OPEN_REWRITE, &over) == 0;
	if (there)
		status = ts_file_read_open(s->system, over, path, TS_FILE_BYTES_MOST,
			&s->arena->allocator, &bytes, &len, s->findings);
	old = status ? NULL : ts_arena_text(s->arena, bytes, len);
	if (old)
		status = write_over(s, path, there ? over : -1, old, field, value);
	if (bytes != none)
		s->arena->allocator.resize(s->arena->allocator.state, bytes, 0);
	if (there)
		s->system->close(s->system->state, over);
	return s->arena->failed ? TS_NO_MEMORY : status;
}

static enum ts_status set(
	struct session *s, const char *path, const struct ts_field *field, const char *value)
{
	bool out = ts_same_word("default", value);
	struct settings tried = {0};
	struct ts_value_says says;
	const char *refused;
	enum ts_status status;

	if (!path) {
		ts_text_put(s->error, s->arena->failed ? ""
						       : "there is no home folder to keep it in; "
							 "set XDG_CONFIG_HOME");
		return s->arena->failed ? TS_NO_MEMORY : TS_SYSTEM;
	}
	if (!out && !ts_value_read(field, value, strlen(value), s->arena, &tried, &says)) {
		ts_text_puts(s->error, field->key, ": ", says.what, "; ",
			says.remedy ? says.remedy : "tapshoal config lists what it takes", NULL);
		return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
	}
	refused = out ? NULL : settings_refused(field, &tried);
	if (refused) {
		ts_text_puts(s->error, field->key, ": '", value, "' is none; ", refused, NULL);
		return TS_BAD_INPUT;
	}
	status = write_file(s, path, field, out ? NULL : value);
	if (status)
		return status;
	s->findings->count = 0; /* they were of the file before */
	settings_load(s);
	say(s, field);
	ts_text_puts(s->out, out ? "\nTaken out of " : "\nWritten into ", path, "\n", NULL);
	return TS_OK;
}

enum ts_status command_config(struct session *s)
{
	const struct options *o = s->options;
	const char *path = settings_path(s), *near;
	const struct ts_field *field;

	if (!o->argument_count)
		return list(s, path);
	field = ts_shape_field_meant(&settings_shape, o->arguments[0]);
	if (!field || o->argument_count > 2) {
		near = ts_shape_nearest_key(&settings_shape, o->arguments[0]);
		ts_text_puts(s->error,
			field ? "config takes a key and a value" : "no setting is called '",
			field ? "" : o->arguments[0], field ? "" : "'",
			near && !field ? "; did you mean " : "", near && !field ? near : "",
			near && !field ? "?" : "", "; tapshoal config lists them", NULL);
		return TS_BAD_INPUT;
	}
	if (o->argument_count == 2)
		return set(s, path, field, o->arguments[1]);
	say(s, field);
	return TS_OK;
}
