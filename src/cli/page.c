/* SPDX-License-Identifier: Apache-2.0 */
/*
 * page: the page that the build made, with what is the user's own in it: records, the kept tap, and
 * the files that are named. It stands in one element of the page, as JSON without a sign that could
 * end the element (src/page/page.js takes it from there).
 */
#include <string.h>

#include "base/arena.h"
#include "catalogue/compiled.h"
#include "cli/commands.h"
#include "home/paths.h"
#include "home/tap.h"
#include "model/shape.h"
#include "records/file.h"
#include "records/kind.h"
#include "records/write.h"
#include "report/json.h"

#define PAGE_MOST ((size_t)16 << 20)
#define BEGIN "<script type=\"text/plain\" id=\"own\">"
#define END "</script>"

/* The bytes of the page before and behind what is the user's own. */
struct pieces {
	const char *bytes, *behind;
	size_t before_len, behind_len;
};

static bool cut(const char *bytes, size_t len, struct pieces *ret)
{
	const char *begin = strstr(bytes, BEGIN);
	const char *end = begin ? strstr(begin, END) : NULL;

	if (!end)
		return false;
	*ret = (struct pieces){.bytes = bytes,
		.behind = end,
		.before_len = (size_t)(begin - bytes) + sizeof BEGIN - 1,
		.behind_len = len - (size_t)(end - bytes)};
	return true;
}

static enum ts_status read_page(struct session *s, struct pieces *ret)
{
	const char *from = s->options->from;
	const char *file = from ? from : paths_page(s->system, s->arena);
	enum ts_status status;
	const char *own;
	char *bytes;
	size_t len;

	if (!file) {
		ts_text_put(s->error,
			s->arena->failed ? ""
					 : "the page was not built with this program; "
					   "sh examples/page.sh builds it, or give --from FILE");
		return s->arena->failed ? TS_NO_MEMORY : TS_SYSTEM;
	}
	status = ts_file_read(s->system, file, TS_OPEN_ORDINARY, PAGE_MOST, &s->arena->allocator,
		&bytes, &len, s->findings);
	if (status)
		return status;
	own = ts_arena_text(s->arena, bytes, len);
	s->arena->allocator.resize(s->arena->allocator.state, bytes, 0);
	if (!own)
		return TS_NO_MEMORY;
	if (cut(own, len, ret))
		return TS_OK;
	ts_text_puts(
		s->error, file, " is no page of tapshoal; sh examples/page.sh builds one", NULL);
	return TS_BAD_INPUT;
}

static void add_base64(struct ts_text *out, const char *bytes, size_t len)
{
	static const char letters[] =
		"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

	for (size_t i = 0; i < len; i += 3) {
		const size_t left = len - i < 3 ? len - i : 3;
		unsigned long three = 0;
		char four[4];

		for (size_t k = 0; k < 3; k++)
			three = three << 8 | (k < left ? (unsigned char)bytes[i + k] : 0);
		for (size_t k = 0; k < 4; k++)
			four[k] = k > left ? '=' : letters[three >> (18 - 6 * k) & 63];
		ts_text_add(out, four, sizeof four);
	}
}

/* The records of one folder, as the page takes its own. */
static enum ts_status add_folder(struct session *s, struct ts_json *json, const char *folder)
{
	struct ts_catalogue catalogue;
	struct ts_text image, text;
	enum ts_status status;

	ts_catalogue_open(&catalogue, &s->arena->allocator);
	ts_text_open(&image, &s->arena->allocator);
	ts_text_open(&text, &s->arena->allocator);
	status = ts_catalogue_add_folder(&catalogue, folder, s->findings);
	if (!status && catalogue.count) {
		if (ts_catalogue_compile(&catalogue, &image))
			add_base64(&text, ts_text_get(&image), image.len);
		else
			status = TS_SYSTEM;
		ts_json_text(json, NULL, ts_text_get(&text));
	}
	status = image.failed || text.failed ? TS_NO_MEMORY : status;
	if (status == TS_SYSTEM && !s->findings->count)
		ts_text_puts(s->error, folder, " changed while it was read", NULL);
	ts_text_drop(&text);
	ts_text_drop(&image);
	ts_catalogue_close(&catalogue);
	return status;
}

static enum ts_status add_records(struct session *s, struct ts_json *json)
{
	struct ts_texts folders = {0};
	enum ts_status status = TS_OK;

	ts_json_list(json, "records");
	if (s->options->own && !paths_species(s->system, s->arena, &folders) && s->arena->failed)
		return TS_NO_MEMORY;
	for (size_t i = 1; i < folders.count && !status; i++) /* the first one is the page's too */
		status = add_folder(s, json, folders.items[i]);
	for (size_t i = 0; i < s->options->folders.count && !status; i++)
		status = add_folder(s, json, s->options->folders.items[i]);
	ts_json_end_list(json);
	return status;
}

/* One sheet of the page: its name, and the file in the plain form that the page's script reads. */
static enum ts_status add_sheet(struct session *s, struct ts_json *json, const char *name,
	const struct ts_shape *shape, const void *object)
{
	struct ts_text text;
	bool failed;

	ts_text_open(&text, &s->arena->allocator);
	ts_text_puts(&text, "# ", shape->name, "\n", NULL);
	ts_records_write(&text, shape, object, false);
	ts_json_object(json, NULL);
	ts_json_text(json, "name", name);
	ts_json_text(json, "text", ts_text_get(&text));
	ts_json_end_object(json);
	failed = text.failed;
	ts_text_drop(&text);
	return failed ? TS_NO_MEMORY : TS_OK;
}

/* "tanks/living-room.yaml" is called living-room, unless it says what it is called. */
static const char *called(struct ts_arena *arena, const char *name, const char *file)
{
	const char *slash = strrchr(file, '/'), *base = slash ? slash + 1 : file;
	const char *dot = strrchr(base, '.');

	return name ? name
		    : ts_arena_text(
			      arena, base, dot && dot > base ? (size_t)(dot - base) : strlen(base));
}

static enum ts_status add_file(struct session *s, struct ts_json *json, const char *file)
{
	const struct ts_shape *shape;
	struct ts_water water;
	struct ts_tank tank;
	struct ts_plan plan;
	enum ts_status status = ts_records_kind(s->system, file, &s->arena->allocator, &shape);

	if (status)
		return status;
	if (shape == &ts_shape_water) {
		status = file_water(s, file, &water);
		return status ? status
			      : add_sheet(
					s, json, called(s->arena, water.name, file), shape, &water);
	}
	if (shape == &ts_shape_tank) {
		status = file_tank(s, file, &tank);
		return status ? status
			      : add_sheet(s, json, called(s->arena, tank.name, file), shape, &tank);
	}
	status = file_plan(s, file, &plan);
	if (status)
		return status;
	plan.water_file = plan.tank_file = plan.change_water_file = NULL;
	return add_sheet(s, json, called(s->arena, plan.name, file), &ts_shape_plan, &plan);
}

static enum ts_status add_sheets(struct session *s, struct ts_json *json)
{
	struct ts_water tap;
	enum ts_status status =
		s->options->own ? tap_load(s->system, s->arena, &tap, s->findings) : TS_NO;

	ts_json_list(json, "sheets");
	if (status == TS_OK)
		status = add_sheet(s, json, tap.name ? tap.name : "my tap", &ts_shape_water, &tap);
	else if (status == TS_NO)
		status = TS_OK;
	for (size_t i = 0; i < s->options->argument_count && !status; i++)
		status = add_file(s, json, s->options->arguments[i]);
	ts_json_end_list(json);
	return status;
}

/* Adds it without "<", which JSON may write by its number everywhere: nothing ends the element. */
static void add_within(struct ts_text *out, const char *json)
{
	while (*json) {
		size_t len = strcspn(json, "<");

		ts_text_add(out, json, len);
		json += len;
		if (*json) {
			ts_text_put(out, "\\u003c");
			json++;
		}
	}
}

enum ts_status command_page(struct session *s)
{
	struct pieces page;
	struct ts_text own;
	struct ts_json json;
	struct ts_terminal terminal = {0};
	enum ts_status status;

	s->system->terminal(s->system->state, false, &terminal);
	if (!s->options->output && terminal.is) {
		ts_text_put(s->error, "the page is a file for a browser; tapshoal page -o FILE");
		return TS_BAD_INPUT;
	}
	status = read_page(s, &page);
	if (status)
		return status;
	ts_text_open(&own, &s->arena->allocator);
	ts_json_open(&json, &own);
	json.line = true;
	ts_json_object(&json, NULL);
	status = add_records(s, &json);
	if (!status)
		status = add_sheets(s, &json);
	if (!status) {
		ts_json_end_object(&json);
		ts_text_add(s->out, page.bytes, page.before_len);
		add_within(s->out, ts_text_get(&own));
		ts_text_add(s->out, page.behind, page.behind_len);
	}
	status = own.failed ? TS_NO_MEMORY : status;
	ts_text_drop(&own);
	return status;
}
