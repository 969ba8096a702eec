/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences of a call for check: what typed/ reads of them goes where flags and words of the
 * call would have put it.
 */
#include "cli/understand.h"

#include <string.h>

#include "base/arena.h"
#include "records/animals.h"
#include "words/names.h"

/* The words are a count and a name that somebody knows. */
static bool is_known(struct session *s, const char *words)
{
	struct ts_stock_line line;
	struct ts_candidates candidates;
	struct ts_text none;
	bool known = false;

	ts_text_open(&none, &s->arena->allocator);
	if (ts_animal_words(s->arena, words, s->today, &line, &none)) {
		(void)ts_catalogue_species(s->catalogue, line.species, &candidates);
		known = candidates.how != TS_NAME_UNKNOWN && candidates.how != TS_NAME_NEAR &&
			!(candidates.by_word && strpbrk(line.species, "0123456789"));
	}
	ts_text_drop(&none);
	return known;
}

/* "10 neon tetra, 1 betta (there); GH 8 dH": what was made of a sentence. */
static void say_read(struct ts_text *text, const struct ts_sentence *read, bool there)
{
	for (size_t i = 0; i < read->planned_count; i++)
		ts_text_puts(text, text->len ? ", " : "Read as: ", read->planned[i],
			there ? " (there)" : "", NULL);
	for (size_t i = 0; i < read->living_count; i++)
		ts_text_puts(
			text, text->len ? ", " : "Read as: ", read->living[i], " (there)", NULL);
	for (size_t i = 0; i < read->flag_count; i++) {
		const struct ts_sentence_flag *flag = &read->flags[i];

		ts_text_puts(text, text->len ? ", " : "Read as: ", flag->flag + 2,
			*flag->value ? " " : "", flag->value, flag->taken ? " (" : "",
			flag->taken ? flag->taken : "", flag->taken ? ")" : "", NULL);
	}
	for (size_t i = 0; i < read->unread_count; i++)
		ts_text_puts(
			text, i ? ", \"" : "; not understood: \"", read->unread[i], "\"", NULL);
}

static bool append(const char **list, size_t most, size_t *io_count, const char *words)
{
	if (*io_count == most)
		return false;
	list[(*io_count)++] = words;
	return true;
}

/* Puts the animals and figures of one sentence where flags and words would have put them. */
static bool take_sentence(
	struct session *s, const struct ts_sentence *read, bool there, struct options *o)
{
	bool ok = true;

	for (size_t i = 0; i < read->planned_count; i++)
		ok &= there ? append(o->there.items, TS_VALUES_MOST, &o->there.count,
				      read->planned[i])
			    : append(o->arguments, TS_ARGUMENTS_MOST, &o->argument_count,
				      read->planned[i]);
	for (size_t i = 0; i < read->living_count; i++)
		ok &= append(o->there.items, TS_VALUES_MOST, &o->there.count, read->living[i]);
	for (size_t i = 0; i < read->flag_count; i++)
		ok &= options_take(o, read->flags[i].flag, read->flags[i].value, s->error);
	return ok;
}

enum ts_status understand(struct session *s, bool file, struct understood *c)
{
	const struct options *given = s->options;
	struct options *o = ts_arena_take(s->arena, sizeof *o);
	struct ts_sentence *read = ts_arena_take(s->arena, sizeof *read);
	struct ts_text text;
	bool ok = true;

	if (!o || !read)
		return TS_NO_MEMORY;
	*o = *given;
	o->argument_count = file;
	o->there.count = 0;
	ts_text_open(&text, &s->arena->allocator);
	for (size_t i = file; i < given->argument_count + given->there.count; i++) {
		bool there = i >= given->argument_count;
		const char *words =
			there ? given->there.items[i - given->argument_count] : given->arguments[i];

		if (is_known(s, words) || !ts_sentence_read(s->catalogue, s->arena, words, read)) {
			ok &= there ? append(o->there.items, TS_VALUES_MOST, &o->there.count, words)
				    : append(o->arguments, TS_ARGUMENTS_MOST, &o->argument_count,
					      words);
			continue;
		}
		ok &= take_sentence(s, read, there, o);
		for (size_t k = 0; k < read->alarm_count && c->unread_count < TS_SENTENCE_MOST; k++)
			c->unread[c->unread_count++] = (struct ts_check_unread){
				read->alarms[k].words, read->alarms[k].say};
		say_read(&text, read, there);
	}
	c->read_as = text.len ? ts_arena_text(s->arena, ts_text_get(&text), text.len) : NULL;
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	s->options = o;
	settings_take(s, o);
	if (!ok && !s->error->len)
		ts_text_put(s->error, "more is named than one call reads; write a plan file");
	return s->arena->failed ? TS_NO_MEMORY : ok ? TS_OK : TS_BAD_INPUT;
}
