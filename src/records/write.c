/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The walker that writes; its words, units and keys are the rows that load.c reads.
 */
#include "records/write.h"

#include <string.h>

struct writer {
	struct ts_text *out;
	bool explain;
	ts_note *note; /* NULL = none */
	void *state;
};

static void write_shape(
	const struct writer *w, const struct ts_shape *shape, const char *object, size_t indent);

/* Has to be written by its number: what is not seen, or no UTF-8. */
static bool unprintable(const char *at)
{
	return ts_text_control(at) || !ts_text_sequence(at);
}

/* "\x1b", "\u2028", "\U000e0001" */
static void put_escape(struct ts_text *out, uint32_t point)
{
	int digits = point < 0x100 ? 2 : point < 0x10000 ? 4 : 8;

	ts_text_put(out, digits == 2 ? "\\x" : digits == 4 ? "\\u" : "\\U");
	ts_text_hex(out, point, digits);
}

/* Whether YAML takes the text as it is for a text. */
static bool plain(const char *text)
{
	size_t len = strlen(text);

	if (!len || text[0] == ' ' || text[len - 1] == ' ' || strpbrk(text, ",:#[]{}\"\\'"))
		return false;
	for (const char *at = text; *at; at += ts_text_sequence(at)) {
		if (unprintable(at))
			return false;
	}
	return !strchr("-?!&*|>%@`=~", text[0]);
}

void ts_records_write_text(struct ts_text *out, const char *text)
{
	size_t len;

	if (plain(text)) {
		ts_text_put(out, text);
		return;
	}
	ts_text_put(out, "\"");
	for (; *text; text += len) {
		len = ts_text_sequence(text);
		len = len ? len : 1;
		ts_text_put(out, *text == '"' || *text == '\\' ? "\\" : "");
		if (unprintable(text))
			put_escape(out, ts_text_point(text));
		else
			ts_text_add(out, text, len);
	}
	ts_text_put(out, "\"");
}

/* Three decimals alone could be thousands to the reader; a fourth says that they are not. */
static void put_number(struct ts_text *out, double value)
{
	size_t start = out->len;
	const char *point;

	ts_text_number_short(out, value, 6);
	point = strchr(ts_text_get(out) + start, '.');
	if (point && strlen(point) == 4)
		ts_text_put(out, "0");
}

static void put_ends(struct ts_text *out, double low, double high)
{
	if (isfinite(low))
		put_number(out, low);
	ts_text_put(out, "..");
	if (isfinite(high))
		put_number(out, high);
}

static void put_measure(struct ts_text *out, const struct ts_measure *m)
{
	switch (m->kind) {
	case TS_MEASURE_DOUBT:
		put_number(out, m->value);
		ts_text_put(out, " +- ");
		put_number(out, m->high - m->value);
		break;
	case TS_MEASURE_RANGE:
		put_ends(out, m->low, m->high);
		break;
	case TS_MEASURE_BELOW:
		ts_text_put(out, "<");
		put_number(out, m->high);
		break;
	case TS_MEASURE_ABOVE:
		ts_text_put(out, ">");
		put_number(out, m->low);
		break;
	default:
		put_number(out, m->value);
		break;
	}
}

static void put_quantity(struct ts_text *out, const struct ts_field *field, const char *at)
{
	const char *unit = ts_quantities[field->quantity].unit, *quote = "";

	if (field->kind == TS_NUMBER) {
		double value;

		memcpy(&value, at, sizeof value);
		put_number(out, value);
	} else if (field->kind == TS_RANGE) {
		struct ts_range r;

		memcpy(&r, at, sizeof r);
		put_ends(out, r.low, r.high);
	} else {
		struct ts_measure m;

		memcpy(&m, at, sizeof m);
		quote = m.kind == TS_MEASURE_ABOVE ? "\"" : ""; /* bare, > folds lines */
		ts_text_put(out, quote);
		put_measure(out, &m);
	}
	ts_text_puts(out, *unit ? " " : "", unit, quote, NULL);
}

static void put_texts(struct ts_text *out, const struct ts_texts *texts)
{
	ts_text_put(out, "[");
	for (size_t i = 0; i < texts->count; i++) {
		ts_text_put(out, i ? ", " : "");
		ts_records_write_text(out, texts->items[i]);
	}
	ts_text_put(out, "]");
}

static void put_words(struct ts_text *out, const char *const *words, unsigned bits)
{
	bool any = false;

	ts_text_put(out, "[");
	for (unsigned i = 0; words[i]; i++) {
		if (!(bits & 1u << i))
			continue;
		ts_text_puts(out, any ? ", " : "", words[i], NULL);
		any = true;
	}
	ts_text_put(out, "]");
}

static bool given(const struct ts_field *field, const char *object);

static bool any_given(const struct ts_shape *shape, const char *object)
{
	for (size_t i = 0; i < shape->count; i++) {
		if (given(&shape->fields[i], object))
			return true;
	}
	return false;
}

/* Was anything written there? The first word of a key that need not be given stands for nothing. */
static bool given(const struct ts_field *field, const char *object)
{
	union {
		const char *text;
		struct ts_texts texts;
		struct ts_choice choice;
		struct ts_every every;
		struct ts_range range;
		struct ts_measure measure;
		double number;
		unsigned bits;
		int word;
		bool yes;
		size_t count;
	} u = {0};
	const char *at = object + field->offset;

	switch (field->kind) {
	case TS_TEXT:
		memcpy(&u.text, at, sizeof u.text);
		return u.text;
	case TS_TEXTS:
		memcpy(&u.texts, at, sizeof u.texts);
		return u.texts.count;
	case TS_WORD:
		memcpy(&u.word, at, sizeof u.word);
		return u.word;
	case TS_WORDS:
		memcpy(&u.bits, at, sizeof u.bits);
		return u.bits;
	case TS_YESNO:
		memcpy(&u.yes, at, sizeof u.yes);
		return u.yes;
	case TS_NUMBER:
		memcpy(&u.number, at, sizeof u.number);
		return u.number > 0 || u.number < 0;
	case TS_RANGE:
		memcpy(&u.range, at, sizeof u.range);
		return !isnan(u.range.low);
	case TS_MEASURE:
		memcpy(&u.measure, at, sizeof u.measure);
		return u.measure.kind != TS_MEASURE_NONE;
	case TS_CHOICE:
		memcpy(&u.choice, at, sizeof u.choice);
		return u.choice.word || u.choice.value > 0;
	case TS_EVERY:
		memcpy(&u.every, at, sizeof u.every);
		return u.every.days > 0;
	case TS_FILE:
		memcpy(&u.text, object + field->count_offset, sizeof u.text);
		return u.text || any_given(field->sub, at);
	case TS_SUB:
		return any_given(field->sub, at);
	case TS_LIST:
		memcpy(&u.count, object + field->count_offset, sizeof u.count);
		return u.count;
	default:
		return false;
	}
}

static void put_choice(struct ts_text *out, const struct ts_field *field, const char *at)
{
	struct ts_choice choice;

	memcpy(&choice, at, sizeof choice);
	if (choice.value > 0) {
		put_number(out, choice.value);
		ts_text_puts(out, " ", ts_quantities[field->quantity].unit, NULL);
	} else {
		ts_text_put(out, field->words[choice.word]);
	}
}

static void put_every(struct ts_text *out, const struct ts_field *field, const char *at)
{
	struct ts_every every;

	memcpy(&every, at, sizeof every);
	put_number(out, every.amount);
	ts_text_puts(out, " ", ts_quantities[field->quantity].unit, " every ", NULL);
	put_number(out, every.days);
	ts_text_put(out, " days");
}

static void put_value(struct ts_text *out, const struct ts_field *field, const char *at)
{
	union {
		const char *text;
		struct ts_texts texts;
		unsigned bits;
		int word;
		bool yes;
	} u = {0};

	switch (field->kind) {
	case TS_TEXT:
		memcpy(&u.text, at, sizeof u.text);
		ts_records_write_text(out, u.text ? u.text : "");
		break;
	case TS_TEXTS:
		memcpy(&u.texts, at, sizeof u.texts);
		put_texts(out, &u.texts);
		break;
	case TS_WORD:
		memcpy(&u.word, at, sizeof u.word);
		ts_text_put(out, field->words[u.word]);
		break;
	case TS_WORDS:
		memcpy(&u.bits, at, sizeof u.bits);
		put_words(out, field->words, u.bits);
		break;
	case TS_YESNO:
		memcpy(&u.yes, at, sizeof u.yes);
		ts_text_put(out, u.yes ? "yes" : "no");
		break;
	case TS_CHOICE:
		put_choice(out, field, at);
		break;
	case TS_EVERY:
		put_every(out, field, at);
		break;
	default:
		put_quantity(out, field, at);
		break;
	}
}

static void put_explanation(const struct writer *w, const struct ts_field *field, size_t indent)
{
	ts_text_fill(w->out, ' ', indent);
	ts_text_puts(w->out, "# ", field->says, field->need == TS_REQUIRED ? " (needed)" : "",
		field->words ? ": " : "", NULL);
	for (size_t i = 0; field->words && field->words[i]; i++)
		ts_text_puts(w->out,
			!i                        ? ""
			: field->words[i + 1]     ? ", "
			: field->kind == TS_WORDS ? " and "
						  : " or ",
			field->words[i], NULL);
	ts_text_put(w->out, "\n");
}

/* What a key that is not given would look like. */
static void put_absent(const struct writer *w, const struct ts_field *field, size_t indent)
{
	ts_text_fill(w->out, ' ', indent);
	ts_text_puts(w->out, "# ", field->key, ": ", NULL);
	switch (field->kind) {
	case TS_TEXT:
	case TS_SUB:
	case TS_FILE:
		ts_text_put(w->out, "...");
		break;
	case TS_EVERY:
		ts_text_puts(w->out, ts_quantities[field->quantity].example, " every 7 days", NULL);
		break;
	case TS_WORD:
	case TS_CHOICE:
		ts_text_put(w->out, field->words[0]);
		break;
	case TS_YESNO:
		ts_text_put(w->out, "no");
		break;
	case TS_NUMBER:
	case TS_RANGE:
	case TS_MEASURE:
		ts_text_put(w->out, ts_quantities[field->quantity].example);
		break;
	default:
		ts_text_put(w->out, "[]");
		break;
	}
	ts_text_put(w->out, "\n");
}

/* A block behind its key or dash: nothing at all would be no block to the reader. */
static void write_block(
	const struct writer *w, const struct ts_shape *shape, const char *object, size_t indent)
{
	bool empty = true;

	for (size_t i = 0; i < shape->count && empty; i++)
		empty = shape->fields[i].need != TS_REQUIRED && !given(&shape->fields[i], object);
	ts_text_put(w->out, empty ? " {}\n" : "\n");
	write_shape(w, shape, object, indent);
}

static void write_list(
	const struct writer *w, const struct ts_field *field, const char *object, size_t indent)
{
	const char *items;
	size_t count;

	memcpy(&items, object + field->offset, sizeof items);
	memcpy(&count, object + field->count_offset, sizeof count);
	ts_text_put(w->out, count ? "\n" : " []\n");
	for (size_t i = 0; i < count; i++) {
		ts_text_fill(w->out, ' ', indent);
		ts_text_put(w->out, "-");
		write_block(w, field->sub, items + i * field->sub->size, indent + 2);
	}
}

/* The name of the file that holds it; NULL where it is written out, or no file could. */
static const char *file_of(const struct ts_field *field, const char *object)
{
	const char *name = NULL;

	if (field->kind == TS_FILE)
		memcpy(&name, object + field->count_offset, sizeof name);
	return name;
}

static void put_note(const struct writer *w, const struct ts_shape *shape,
	const struct ts_field *field, size_t indent)
{
	const char *note = w->note ? w->note(w->state, shape, field) : NULL;

	while (note && *note) {
		size_t len = strcspn(note, "\n");

		ts_text_fill(w->out, ' ', indent);
		ts_text_put(w->out, "# ");
		ts_text_add(w->out, note, len);
		ts_text_put(w->out, "\n");
		note += len + (note[len] == '\n');
	}
}

static void write_field(const struct writer *w, const struct ts_shape *shape,
	const struct ts_field *field, const char *object, size_t indent)
{
	const char *file = file_of(field, object);
	bool block = field->kind == TS_SUB || field->kind == TS_LIST || field->kind == TS_FILE;

	if (w->explain)
		put_explanation(w, field, indent);
	if (!given(field, object) && field->need != TS_REQUIRED) {
		if (w->explain)
			put_absent(w, field, indent);
		return;
	}
	put_note(w, shape, field, indent);
	ts_text_fill(w->out, ' ', indent);
	ts_text_puts(w->out, field->key, ":", NULL);
	if (block && !file) {
		if (field->kind != TS_LIST)
			write_block(w, field->sub, object + field->offset, indent + 2);
		else
			write_list(w, field, object, indent + 2);
		return;
	}
	ts_text_put(w->out, " ");
	if (file)
		ts_records_write_text(w->out, file);
	else
		put_value(w->out, field, object + field->offset);
	ts_text_put(w->out, "\n");
}

static void write_shape(
	const struct writer *w, const struct ts_shape *shape, const char *object, size_t indent)
{
	for (size_t i = 0; i < shape->count; i++)
		write_field(w, shape, &shape->fields[i], object, indent);
}

void ts_records_write(
	struct ts_text *out, const struct ts_shape *shape, const void *object, bool explain)
{
	const struct writer w = {out, explain, NULL, NULL};

	write_shape(&w, shape, object, 0);
}

void ts_records_write_noted(struct ts_text *out, const struct ts_shape *shape, const void *object,
	ts_note *note, void *state)
{
	const struct writer w = {out, false, note, state};

	write_shape(&w, shape, object, 0);
}
