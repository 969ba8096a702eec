/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Head, then the texts, each once, then the fields in the order of the rows. All figures are little
 * endian. A text is its place among the texts; place 0 is none.
 */
#include "records/image.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

#include "base/arena.h"
#include "units/units.h"

#define MAGIC "tapshoal image 1"
#define MAGIC_LEN (sizeof MAGIC - 1)
/* Magic, rows, checksum of what follows, length of the texts. */
#define HEAD_LEN (MAGIC_LEN + 8 + 8 + 4)
#define FNV_START UINT64_C(14695981039346656037)

static void put_at(char *bytes, uint64_t value, size_t len)
{
	for (size_t i = 0; i < len; i++)
		bytes[i] = (char)(unsigned char)(value >> 8 * i);
}

static void put(struct ts_text *out, uint64_t value, size_t len)
{
	char bytes[8];

	put_at(bytes, value, len);
	ts_text_add(out, bytes, len);
}

static uint64_t get(const char *bytes, size_t len)
{
	uint64_t value = 0;

	for (size_t i = 0; i < len; i++)
		value |= (uint64_t)(unsigned char)bytes[i] << 8 * i;
	return value;
}

/* The same of four and of eight, spelled out, so that a compiler sees one load in it. */
static uint32_t get_4(const char *bytes)
{
	const unsigned char *b = (const unsigned char *)bytes;

	return (uint32_t)b[0] | (uint32_t)b[1] << 8 | (uint32_t)b[2] << 16 | (uint32_t)b[3] << 24;
}

static uint64_t get_8(const char *bytes)
{
	return get_4(bytes) | (uint64_t)get_4(bytes + 4) << 32;
}

/*
 * FNV-1a (Fowler, Noll, Vo; IETF draft-eastlake-fnv) over steps of eight bytes, the last one filled
 * up with zeros: against damage, not against malice.
 */
static uint64_t hash(uint64_t h, const char *bytes, size_t len)
{
	for (; len; len -= len < 8 ? len : 8, bytes += 8) {
		h = (h ^ (len < 8 ? get(bytes, len) : get_8(bytes))) * UINT64_C(1099511628211);
		h ^= h >> 32; /* or the high bytes would never reach the low ones */
	}
	return h;
}

/* All that decides how bytes are read: keys, kinds and words, down to the last shape. */
static uint64_t hash_rows(uint64_t h, const struct ts_shape *shape)
{
	for (size_t i = 0; i < shape->count; i++) {
		const struct ts_field *f = &shape->fields[i];
		char kind = (char)f->kind;

		h = hash(h, f->key, strlen(f->key) + 1);
		h = hash(h, &kind, 1);
		for (size_t n = 0; f->words && f->words[n]; n++)
			h = hash(h, f->words[n], strlen(f->words[n]) + 1);
		if (f->sub)
			h = hash_rows(h, f->sub);
	}
	return h;
}

/* Texts are found again by their hash, so that each stands once. */
struct writer {
	struct ts_arena scratch;
	struct ts_text texts, body;
	uint32_t *at;
	size_t slots, used;
	bool refused;
};

static bool widen(struct writer *w)
{
	size_t slots = w->slots ? 2 * w->slots : 1024;
	uint32_t *at = ts_arena_array(&w->scratch, slots, sizeof *at);

	if (!at)
		return false;
	for (size_t i = 0; i < w->slots; i++) {
		const char *text = ts_text_get(&w->texts) + w->at[i];
		size_t slot;

		if (!w->at[i])
			continue;
		slot = hash(FNV_START, text, strlen(text)) & (slots - 1);
		while (at[slot])
			slot = (slot + 1) & (slots - 1);
		at[slot] = w->at[i];
	}
	w->at = at;
	w->slots = slots;
	return true;
}

static uint32_t place_of(struct writer *w, const char *text)
{
	size_t slot;

	if (!text)
		return 0;
	if (2 * w->used >= w->slots && !widen(w))
		return 0;
	slot = hash(FNV_START, text, strlen(text)) & (w->slots - 1);
	for (; w->at[slot]; slot = (slot + 1) & (w->slots - 1)) {
		if (strcmp(ts_text_get(&w->texts) + w->at[slot], text) == 0)
			return w->at[slot];
	}
	w->at[slot] = (uint32_t)w->texts.len;
	w->used++;
	ts_text_add(&w->texts, text, strlen(text) + 1);
	return w->at[slot];
}

static void write_double(struct writer *w, double value)
{
	uint64_t bits;

	memcpy(&bits, &value, sizeof bits);
	put(&w->body, bits, 8);
}

static void write_shape(struct writer *w, const struct ts_shape *shape, const char *object);

static void write_list(struct writer *w, const struct ts_field *f, const char *object)
{
	const char *items;
	size_t count;

	memcpy(&items, object + f->offset, sizeof items);
	memcpy(&count, object + f->count_offset, sizeof count);
	put(&w->body, count, 4);
	for (size_t i = 0; i < count; i++)
		write_shape(w, f->sub, items + i * f->sub->size);
}

static void write_field(struct writer *w, const struct ts_field *f, const char *object)
{
	const void *at = object + f->offset;
	const struct ts_texts *texts = at;
	const struct ts_range *range = at;

	switch (f->kind) {
	case TS_TEXT:
		put(&w->body, place_of(w, *(const char *const *)at), 4);
		break;
	case TS_TEXTS:
		put(&w->body, texts->count, 4);
		for (size_t i = 0; i < texts->count; i++)
			put(&w->body, place_of(w, texts->items[i]), 4);
		break;
	case TS_WORD:
		put(&w->body, (unsigned)*(const int *)at, 1);
		break;
	case TS_WORDS:
		put(&w->body, *(const unsigned *)at, 4);
		break;
	case TS_YESNO:
		put(&w->body, *(const bool *)at, 1);
		break;
	case TS_NUMBER:
		write_double(w, *(const double *)at);
		break;
	case TS_RANGE:
		write_double(w, range->low);
		write_double(w, range->high);
		break;
	case TS_SUB:
		write_shape(w, f->sub, at);
		break;
	case TS_LIST:
		write_list(w, f, object);
		break;
	default:
		w->refused = true;
		break;
	}
}

static void write_shape(struct writer *w, const struct ts_shape *shape, const char *object)
{
	for (size_t i = 0; i < shape->count; i++)
		write_field(w, &shape->fields[i], object);
}

void ts_image_seal(char *bytes, size_t len)
{
	if (len >= HEAD_LEN)
		put_at(bytes + MAGIC_LEN + 8, hash(FNV_START, bytes + HEAD_LEN, len - HEAD_LEN), 8);
}

bool ts_image_write(struct ts_text *out, const struct ts_shape *shape, const void *object)
{
	struct writer w = {0};
	size_t start = out->len;
	bool whole;

	ts_arena_open(&w.scratch, &out->allocator);
	ts_text_open(&w.texts, &out->allocator);
	ts_text_open(&w.body, &out->allocator);
	ts_text_add(&w.texts, "", 1);
	write_shape(&w, shape, object);
	ts_text_add(out, MAGIC, MAGIC_LEN);
	put(out, hash_rows(FNV_START, shape), 8);
	put(out, 0, 8); /* sealed below */
	put(out, w.texts.len, 4);
	ts_text_add(out, ts_text_get(&w.texts), w.texts.len);
	ts_text_add(out, ts_text_get(&w.body), w.body.len);
	out->failed |= w.texts.failed || w.body.failed || w.scratch.failed;
	whole = !w.refused && !out->failed && w.texts.len < UINT32_MAX;
	if (whole)
		ts_image_seal(out->at + start, out->len - start);
	ts_text_drop(&w.texts);
	ts_text_drop(&w.body);
	ts_arena_drop(&w.scratch);
	return whole;
}

/* `bad` is sticky: what is read behind it is zero. */
struct reader {
	struct ts_arena *arena;
	const char *texts, *at, *end;
	size_t texts_len;
	bool bad;
};

static inline uint64_t take(struct reader *r, size_t len)
{
	uint64_t value;

	if ((size_t)(r->end - r->at) < len) {
		r->bad = true;
		r->at = r->end;
		return 0;
	}
	value = len == 8 ? get_8(r->at) : len == 4 ? get_4(r->at) : get(r->at, len);
	r->at += len;
	return value;
}

static const char *take_text(struct reader *r)
{
	size_t place = (size_t)take(r, 4);

	if (place >= r->texts_len) {
		r->bad = true;
		return NULL;
	}
	return place ? r->texts + place : NULL;
}

static double take_double(struct reader *r)
{
	uint64_t bits = take(r, 8);
	double value;

	memcpy(&value, &bits, sizeof value);
	return value;
}

/* As a record's own file is read: not given, without end, or within what its quantity can be; what
 * need not be given may be nothing. */
static double take_figure(struct reader *r, const struct ts_field *f)
{
	const struct ts_quantity_row *q = &ts_quantities[f->quantity];
	double value = take_double(r);

	if (isnan(value))
		return (double)NAN;
	if (value == 0 && f->kind == TS_NUMBER && f->need != TS_REQUIRED)
		return 0;
	r->bad |= isfinite(value) && (value < q->min || value > q->max);
	return value;
}

/* Bytes of the sequence that begins there (RFC 3629); 0: it is none. */
static size_t letter_at(const char *text, size_t left)
{
	unsigned char first = (unsigned char)*text;
	unsigned char next = left > 1 ? (unsigned char)text[1] : 0;
	size_t len = first < 0x80 ? 1 : first < 0xc2 ? 0 : first < 0xe0 ? 2 : first < 0xf0 ? 3 : 4;

	if (first > 0xf4 || len > left || (first == 0xe0 && next < 0xa0) ||
		(first == 0xed && next > 0x9f) || (first == 0xf0 && next < 0x90) ||
		(first == 0xf4 && next > 0x8f))
		return 0;
	for (size_t i = 1; i < len; i++) {
		if (((unsigned char)text[i] & 0xc0) != 0x80)
			return 0;
	}
	return len;
}

/* Texts of a record are valid UTF-8, wherever they come from. */
static bool are_texts(const char *bytes, size_t len)
{
	size_t step = 1;

	for (size_t at = 0; at < len && step; at += step) {
		while (len - at >= 8 && !(get_8(bytes + at) & UINT64_C(0x8080808080808080)))
			at += 8; /* letters of one byte each */
		step = at < len ? letter_at(bytes + at, len - at) : 1;
	}
	return step > 0;
}

/* A count that the bytes left could hold, each item taking one at the least. */
static size_t take_count(struct reader *r)
{
	size_t count = (size_t)take(r, 4);

	if (count > (size_t)(r->end - r->at)) {
		r->bad = true;
		return 0;
	}
	return count;
}

static void read_texts(struct reader *r, struct ts_texts *ret)
{
	size_t count = take_count(r);
	const char **items = count ? ts_arena_array(r->arena, count, sizeof *items) : NULL;

	for (size_t i = 0; items && i < count; i++) {
		items[i] = take_text(r);
		r->bad |= !items[i];
	}
	*ret = (struct ts_texts){items, items ? count : 0};
}

static size_t words_of(const struct ts_field *f)
{
	size_t count = 0;

	while (f->words[count])
		count++;
	return count;
}

static void read_word(struct reader *r, const struct ts_field *f, int *ret)
{
	*ret = (int)take(r, 1);
	r->bad |= (size_t)*ret >= words_of(f);
}

static void read_words(struct reader *r, const struct ts_field *f, unsigned *ret)
{
	size_t count = words_of(f);

	*ret = (unsigned)take(r, 4);
	r->bad |= count < 32 && *ret >> count;
}

static void read_shape(struct reader *r, const struct ts_shape *shape, char *object, bool needed);

static void read_list(struct reader *r, const struct ts_field *f, char *object)
{
	size_t count = take_count(r);
	char *items = count ? ts_arena_array(r->arena, count, f->sub->size) : NULL;

	if (!items)
		count = 0;
	for (size_t i = 0; i < count && !r->bad; i++)
		read_shape(r, f->sub, items + i * f->sub->size, true);
	memcpy(object + f->offset, &items, sizeof items);
	memcpy(object + f->count_offset, &count, sizeof count);
}

/* `needed`: what the row calls required must be there, since what is around it is. */
static void read_field(struct reader *r, const struct ts_field *f, char *object, bool needed)
{
	void *at = object + f->offset;
	struct ts_range *range = at;

	needed &= f->need == TS_REQUIRED;
	switch (f->kind) {
	case TS_TEXT:
		*(const char **)at = take_text(r);
		r->bad |= needed && !*(const char **)at;
		break;
	case TS_TEXTS:
		read_texts(r, at);
		break;
	case TS_WORD:
		read_word(r, f, at);
		break;
	case TS_WORDS:
		read_words(r, f, at);
		break;
	case TS_YESNO:
		*(bool *)at = take(r, 1) != 0;
		break;
	case TS_NUMBER:
		*(double *)at = take_figure(r, f);
		r->bad |= isinf(*(double *)at) || (needed && isnan(*(double *)at));
		break;
	case TS_RANGE:
		range->low = take_figure(r, f);
		range->high = take_figure(r, f);
		r->bad |= range->low > range->high || (needed && isnan(range->low));
		break;
	case TS_SUB:
		read_shape(r, f->sub, at, needed);
		break;
	case TS_LIST:
		read_list(r, f, object);
		break;
	default:
		r->bad = true;
		break;
	}
}

static void read_shape(struct reader *r, const struct ts_shape *shape, char *object, bool needed)
{
	for (size_t i = 0; i < shape->count && !r->bad; i++)
		read_field(r, &shape->fields[i], object, needed);
}

enum ts_status ts_image_read(const char *bytes, size_t len, const struct ts_shape *shape,
	struct ts_arena *arena, void *ret)
{
	struct reader r = {.arena = arena};

	if (len < HEAD_LEN || memcmp(bytes, MAGIC, MAGIC_LEN) != 0 ||
		get(bytes + MAGIC_LEN, 8) != hash_rows(FNV_START, shape) ||
		get(bytes + MAGIC_LEN + 8, 8) != hash(FNV_START, bytes + HEAD_LEN, len - HEAD_LEN))
		return TS_NO;
	r.texts = bytes + HEAD_LEN;
	r.texts_len = (size_t)get(bytes + MAGIC_LEN + 16, 4);
	if (!r.texts_len || r.texts_len > len - HEAD_LEN || r.texts[r.texts_len - 1] ||
		!are_texts(r.texts, r.texts_len))
		return TS_NO;
	r.at = r.texts + r.texts_len;
	r.end = bytes + len;
	read_shape(&r, shape, ret, true);
	if (arena->failed)
		return TS_NO_MEMORY;
	return r.bad || r.at != r.end ? TS_NO : TS_OK;
}
