/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The place is found by libyaml's marks over the file as it is, and the new lines go in front of
 * one byte: what stands before it and behind it stays as it is.
 */
#include "records/extend.h"

#include <string.h>
#include <yaml.h>

#include "base/findings.h"
#include "model/codes.h"
#include "records/write.h"

/* What the file shows of its list. */
struct found {
	yaml_parser_t parser;
	const char *bytes, *file;
	size_t len;
	struct ts_findings *findings;

	const char *within, *key;
	size_t level; /* of the block that holds the list: 1 the outermost, 2 one in it */
	size_t depth;
	bool outer_is_key, entering; /* of level 2: the next scalar is a key; `within` was it */
	bool in_block;               /* inside the block */
	bool is_key;                 /* the next scalar of the block is a key */
	bool in_list;                /* inside the list */
	bool has_list;
	bool braces;       /* its last entry stands in braces */
	yaml_mark_t entry; /* where it starts, behind its dash */
	size_t key_column, dash_column;
	size_t last; /* characters in front of the end of the last content */
	size_t end;  /* of the list, or of the whole */
};

static bool refuse(struct found *f, const yaml_mark_t *mark, const char *path, const char *what,
	const char *remedy)
{
	struct ts_place place = {
		f->file, (unsigned)mark->line + 1, (unsigned)mark->column + 1, path};

	return ts_finding_add(f->findings, &ts_codes[TS_C_NOTE_STYLE], &place, what, remedy);
}

/* The byte behind so many characters, which is how libyaml counts. */
static size_t byte_of(const struct found *f, size_t characters)
{
	size_t at = ts_text_order_mark(f->bytes, f->len);

	while (characters && at < f->len) {
		at++;
		while (at < f->len && ((unsigned char)f->bytes[at] & 0xc0) == 0x80)
			at++;
		characters--;
	}
	return at;
}

/* The start of the next line, or of this one where `at` is its first byte. */
static size_t line_behind(const struct found *f, size_t at)
{
	if (at && (f->bytes[at - 1] == '\n' || f->bytes[at - 1] == '\r'))
		return at;
	while (at < f->len && f->bytes[at] != '\n' && f->bytes[at] != '\r')
		at++;
	if (at + 1 < f->len && f->bytes[at] == '\r' && f->bytes[at + 1] == '\n')
		at++;
	return at < f->len ? at + 1 : at;
}

/* Does the dash of the last entry stand on the line of its first key? */
static bool dash_in_front(const struct found *f)
{
	size_t at = byte_of(f, f->entry.index);

	for (size_t i = 0; i < f->entry.column && at; i++) {
		if (f->bytes[--at] == '-')
			return true;
	}
	return false;
}

/* The block that holds the list, or is to. */
static bool enter_block(struct found *f, const yaml_event_t *e, bool flow)
{
	f->in_block = true;
	f->key_column = e->start_mark.column;
	f->is_key = true;
	return !flow || refuse(f, &e->start_mark, f->within,
				f->within ? "it stands in braces { }"
					  : "the whole file stands in braces { }",
				"write its keys on lines of their own, without the braces");
}

static bool open_block(struct found *f, const yaml_event_t *e)
{
	const yaml_mark_t *mark = &e->start_mark;
	bool mapping = e->type == YAML_MAPPING_START_EVENT;
	bool flow = mapping ? e->data.mapping_start.style == YAML_FLOW_MAPPING_STYLE
			    : e->data.sequence_start.style == YAML_FLOW_SEQUENCE_STYLE;

	f->depth++;
	if (f->depth == 1 && f->level == 2) {
		f->outer_is_key = true;
		return !flow || refuse(f, mark, NULL, "the whole file stands in braces { }",
					"write its keys on lines of their own, without the braces");
	}
	if (f->depth == f->level && (f->level == 1 || f->entering))
		return enter_block(f, e, flow);
	if (f->depth == f->level + 1 && f->in_list) {
		f->has_list = true;
		f->dash_column = mark->column;
		return !flow || refuse(f, mark, f->key, "the readings stand in brackets [ ]", NULL);
	}
	if (f->depth == f->level + 2 && f->in_list) {
		f->braces = flow;
		f->entry = *mark;
	}
	return true;
}

static void close_block(struct found *f, const yaml_event_t *e)
{
	if (e->end_mark.index > e->start_mark.index) /* a bracket; a block ends with nothing */
		f->last = e->end_mark.index;
	f->depth--;
	if (f->in_block && f->depth == f->level) {
		if (f->in_list)
			f->end = f->last;
		f->in_list = false;
		f->is_key = true;
	}
	if (f->in_block && f->depth == f->level - 1) {
		if (!f->has_list)
			f->end = f->last;
		f->in_block = false;
	}
	if (f->level == 2 && f->depth == 1) {
		f->entering = false;
		f->outer_is_key = true;
	}
}

static void take_scalar(struct found *f, const yaml_event_t *e)
{
	const char *value = (const char *)e->data.scalar.value;

	f->last = e->end_mark.index;
	if (f->level == 2 && f->depth == 1) {
		f->entering = f->outer_is_key && strcmp(value, f->within) == 0;
		f->outer_is_key = !f->outer_is_key;
	}
	if (!f->in_block || f->depth != f->level)
		return;
	f->in_list = f->is_key && strcmp(value, f->key) == 0;
	f->is_key = !f->is_key;
}

static bool take(struct found *f, const yaml_event_t *e)
{
	switch (e->type) {
	case YAML_MAPPING_START_EVENT:
	case YAML_SEQUENCE_START_EVENT:
		return open_block(f, e);
	case YAML_MAPPING_END_EVENT:
	case YAML_SEQUENCE_END_EVENT:
		close_block(f, e);
		return true;
	case YAML_SCALAR_EVENT:
		take_scalar(f, e);
		return true;
	default:
		return true;
	}
}

static enum ts_status look(struct found *f)
{
	size_t mark = ts_text_order_mark(f->bytes, f->len);
	enum ts_status status = TS_OK;
	bool over = false;

	if (!yaml_parser_initialize(&f->parser))
		return TS_NO_MEMORY;
	yaml_parser_set_encoding(&f->parser, YAML_UTF8_ENCODING);
	yaml_parser_set_input_string(
		&f->parser, (const unsigned char *)f->bytes + mark, f->len - mark);
	while (!over && status == TS_OK) {
		yaml_event_t event;

		if (!yaml_parser_parse(&f->parser, &event)) {
			status = f->parser.error == YAML_MEMORY_ERROR ? TS_NO_MEMORY : TS_BAD_INPUT;
			break;
		}
		over = event.type == YAML_STREAM_END_EVENT || event.type == YAML_NO_EVENT;
		if (!take(f, &event))
			status = TS_BAD_INPUT;
		yaml_event_delete(&event);
	}
	yaml_parser_delete(&f->parser);
	return status;
}

/* How lines end in this file: as its first one does. */
static const char *line_end(const struct found *f)
{
	for (size_t i = 0; i < f->len; i++) {
		if (f->bytes[i] == '\n')
			return "\n";
		if (f->bytes[i] == '\r')
			return i + 1 < f->len && f->bytes[i + 1] == '\n' ? "\r\n" : "\r";
	}
	return "\n";
}

static void put_entry(
	const struct found *f, const struct ts_pair *pairs, size_t count, struct ts_text *out)
{
	const char *end = line_end(f);
	bool beside = !f->has_list || dash_in_front(f);

	ts_text_fill(out, ' ', f->dash_column);
	ts_text_put(out, "-");
	if (beside)
		ts_text_fill(out, ' ', f->entry.column - f->dash_column - 1);
	for (size_t i = 0; i < count; i++) {
		if (f->braces) {
			ts_text_put(out, i ? ", " : beside ? "{" : " {");
		} else if (i || !beside) {
			ts_text_put(out, end);
			ts_text_fill(out, ' ', f->entry.column);
		}
		ts_text_puts(out, pairs[i].key, ": ", NULL);
		ts_records_write_text(out, pairs[i].value);
	}
	ts_text_puts(out, f->braces ? "}" : "", end, NULL);
}

enum ts_status ts_file_extend(const char *bytes, size_t len, const char *file, const char *within,
	const char *key, const struct ts_pair *pairs, size_t count, struct ts_text *out,
	struct ts_findings *findings)
{
	struct found f = {.bytes = bytes,
		.len = len,
		.file = file,
		.within = within,
		.key = key,
		.level = within ? 2 : 1,
		.findings = findings};
	enum ts_status status = look(&f);
	size_t at;

	if (status != TS_OK)
		return status;
	at = line_behind(&f, byte_of(&f, f.end));
	ts_text_add(out, bytes, at);
	if (at && bytes[at - 1] != '\n' && bytes[at - 1] != '\r')
		ts_text_put(out, line_end(&f));
	if (!f.has_list) {
		ts_text_fill(out, ' ', f.key_column);
		ts_text_puts(out, key, ":", line_end(&f), NULL);
		f.dash_column = f.key_column + 2;
		f.entry.column = f.dash_column + 2;
	}
	put_entry(&f, pairs, count, out);
	ts_text_add(out, bytes + at, len - at);
	return out->failed ? TS_NO_MEMORY : TS_OK;
}
