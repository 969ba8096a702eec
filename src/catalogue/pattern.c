/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Patterns by PCRE2. The subject is folded (fold.h); of the pattern only letters beyond ASCII are,
 * since folding \W would make it \w. A callout before every item counts the steps: the limits of
 * PCRE2 hold for one match, and a search is some thousand of them.
 */
#include "catalogue/pattern.h"

#include <string.h>

#define PCRE2_CODE_UNIT_WIDTH 8
#include <pcre2.h>

#include "base/arena.h"
#include "catalogue/fold.h"

/* Steps of one search: about 25 ms. An ordinary pattern over 5,000 names uses a fifth. */
#define STEPS_MOST 1000000u
/* A single match: far more than any name needs. */
#define MATCH_STEPS_MOST 100000u
#define DEPTH_MOST 5000u
#define HEAP_KIB_MOST 8192u

struct ts_pattern {
	struct ts_allocator allocator;
	pcre2_general_context *general;
	pcre2_compile_context *compiling;
	pcre2_match_context *matching;
	pcre2_code *code; /* NULL: fixed */
	pcre2_match_data *data;
	unsigned steps;
	char fixed[2][TS_PATTERN_BYTES_MOST + 1]; /* folded without accents; as a name */
	bool no_memory;
};

static void *take(PCRE2_SIZE size, void *state)
{
	struct ts_pattern *p = state;
	void *taken = p->allocator.resize(p->allocator.state, NULL, size ? size : 1);

	p->no_memory |= !taken;
	return taken;
}

static void release(void *old, void *state)
{
	struct ts_pattern *p = state;

	if (old)
		p->allocator.resize(p->allocator.state, old, 0);
}

static int count_step(pcre2_callout_block *block, void *state)
{
	struct ts_pattern *p = state;

	(void)block;
	return ++p->steps > STEPS_MOST ? PCRE2_ERROR_CALLOUT : 0;
}

/* A pattern with its letters beyond ASCII folded, and where each byte came from. */
struct folded {
	char text[TS_PATTERN_BYTES_MOST * 4 + 1];
	size_t from[TS_PATTERN_BYTES_MOST * 4 + 1], len;
};

static void fold_letters(const char *text, struct folded *ret)
{
	size_t at = 0;

	ret->len = 0;
	while (text[at]) {
		size_t start = at, before = ret->len;

		while (text[at] &&
			((unsigned char)text[at] >= 0x80) == ((unsigned char)text[start] >= 0x80))
			at++;
		if ((unsigned char)text[start] < 0x80) {
			memcpy(ret->text + ret->len, text + start, at - start);
			ret->len += at - start;
			for (size_t i = before; i < ret->len; i++)
				ret->from[i] = start + i - before;
			continue;
		}
		ret->len += ts_fold(TS_FOLD_ACCENTS, text + start, at - start, ret->text + ret->len,
			sizeof ret->text - ret->len);
		for (size_t i = before; i < ret->len; i++)
			ret->from[i] = start;
	}
	ret->text[ret->len] = '\0';
	ret->from[ret->len] = at;
}

static size_t column_at(const char *text, size_t offset)
{
	size_t column = 1;

	for (size_t i = 0; i < offset && text[i]; i++)
		column += ((unsigned char)text[i] & 0xc0) != 0x80;
	return column;
}

static enum ts_status compile(struct ts_pattern *p, const char *text, struct ts_pattern_fault *ret)
{
	struct folded *folded = take(sizeof *folded, p);
	int error = 0;
	PCRE2_SIZE offset = 0;
	enum ts_status status = TS_OK;

	if (!folded)
		return TS_NO_MEMORY;
	fold_letters(text, folded);
	p->code = pcre2_compile((PCRE2_SPTR)folded->text, folded->len,
		PCRE2_UTF | PCRE2_UCP | PCRE2_CASELESS | PCRE2_AUTO_CALLOUT |
			PCRE2_NEVER_BACKSLASH_C | PCRE2_NO_AUTO_POSSESS,
		&error, &offset, p->compiling);
	if (!p->code && !p->no_memory && error != PCRE2_ERROR_HEAP_FAILED) {
		status = TS_BAD_INPUT;
		ret->column =
			column_at(text, folded->from[offset < folded->len ? offset : folded->len]);
		if (pcre2_get_error_message(error, (PCRE2_UCHAR *)ret->says, sizeof ret->says) < 0)
			ret->says[sizeof ret->says - 1] = '\0';
	}
	release(folded, p);
	if (status)
		return status;
	if (p->code)
		p->data = pcre2_match_data_create(1, p->general);
	return p->data ? TS_OK : TS_NO_MEMORY;
}

static enum ts_status prepare(struct ts_pattern *p)
{
	p->general = pcre2_general_context_create(take, release, p);
	if (p->general)
		p->compiling = pcre2_compile_context_create(p->general);
	if (p->compiling)
		p->matching = pcre2_match_context_create(p->general);
	if (!p->matching)
		return TS_NO_MEMORY;
	pcre2_set_callout(p->matching, count_step, p);
	pcre2_set_match_limit(p->matching, MATCH_STEPS_MOST);
	pcre2_set_depth_limit(p->matching, DEPTH_MOST);
	pcre2_set_heap_limit(p->matching, HEAP_KIB_MOST);
	return TS_OK;
}

enum ts_status ts_pattern_open(const char *text, bool fixed, const struct ts_allocator *allocator,
	struct ts_pattern **ret, struct ts_pattern_fault *ret_fault)
{
	struct ts_allocator mine = ts_allocator_or_default(allocator);
	size_t len = strlen(text);
	struct ts_pattern *p;
	enum ts_status status = TS_OK;

	if (len > TS_PATTERN_BYTES_MOST) {
		static const char says[] = "the pattern is longer than 1000 bytes";

		memcpy(ret_fault->says, says, sizeof says);
		ret_fault->column = column_at(text, TS_PATTERN_BYTES_MOST);
		return TS_BAD_INPUT;
	}
	p = mine.resize(mine.state, NULL, sizeof *p);
	if (!p)
		return TS_NO_MEMORY;
	*p = (struct ts_pattern){.allocator = mine};
	if (fixed) {
		ts_fold(TS_FOLD_ACCENTS, text, len, p->fixed[0], sizeof p->fixed[0]);
		ts_fold(TS_FOLD_NAME, text, len, p->fixed[1], sizeof p->fixed[1]);
	} else {
		status = prepare(p);
		if (!status)
			status = compile(p, text, ret_fault);
	}
	if (status)
		ts_pattern_close(p);
	else
		*ret = p;
	return status;
}

void ts_pattern_close(struct ts_pattern *p)
{
	if (!p)
		return;
	pcre2_match_data_free(p->data);
	pcre2_code_free(p->code);
	pcre2_match_context_free(p->matching);
	pcre2_compile_context_free(p->compiling);
	pcre2_general_context_free(p->general);
	p->allocator.resize(p->allocator.state, p, 0);
}

static enum ts_status match(struct ts_pattern *p, const char *subject, size_t len)
{
	int found = pcre2_match(p->code, (PCRE2_SPTR)subject, len, 0, 0, p->data, p->matching);

	if (found >= 0)
		return TS_OK;
	if (found == PCRE2_ERROR_NOMATCH)
		return TS_NO;
	return p->no_memory || found == PCRE2_ERROR_NOMEMORY ? TS_NO_MEMORY : TS_BAD_INPUT;
}

enum ts_status ts_pattern_meets(struct ts_pattern *p, const char *text)
{
	static const enum ts_fold forms[] = {TS_FOLD_ACCENTS, TS_FOLD_NAME};
	char folded[2][TS_FOLD_ROOM];
	enum ts_status status = TS_NO;

	for (size_t i = 0; i < 2 && status == TS_NO; i++) {
		size_t len = ts_fold(forms[i], text, strlen(text), folded[i], sizeof folded[i]);

		if (!p->code && strstr(folded[i], p->fixed[i]))
			status = TS_OK;
		else if (p->code && !(i && strcmp(folded[0], folded[1]) == 0))
			status = match(p, folded[i], len);
	}
	return status;
}

enum ts_status ts_pattern_species(
	struct ts_pattern *p, const struct ts_species *species, const char **ret_name)
{
	enum ts_status status = TS_NO;
	const char *name;

	for (size_t i = 0; (name = ts_species_name(species, i)); i++) {
		status = ts_pattern_meets(p, name);
		if (status != TS_NO)
			break;
	}
	if (status == TS_NO) {
		name = species->family;
		status = ts_pattern_meets(p, name);
	}
	if (status == TS_OK)
		*ret_name = name;
	return status;
}

void ts_pattern_library(struct ts_text *out)
{
	char version[64]; /* by the manual 24 code units are enough */
	int len = pcre2_config(PCRE2_CONFIG_VERSION, NULL);

	if (len > 0 && (size_t)len <= sizeof version &&
		pcre2_config(PCRE2_CONFIG_VERSION, version) > 0)
		ts_text_add(out, version, strcspn(version, " "));
}
