/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The shared pieces of the answers about care.
 */
#include "cli/care_answer.h"

#include "answers/asking.h"
#include "base/date.h"
#include "words/names.h"

struct ts_asking care_asking(const struct session *s)
{
	return (struct ts_asking){.arena = s->arena,
		.practice = s->practice,
		.today = s->today,
		.species = s->catalogue->items,
		.species_count = s->catalogue->count};
}

const char *care_take(struct session *s, struct ts_text *text)
{
	struct ts_asking asking = care_asking(s);

	return ts_asking_keep(&asking, text);
}

void care_note(struct session *s, struct ts_texts *list, const char *text)
{
	struct ts_asking asking = care_asking(s);

	ts_asking_note(&asking, list, text);
}

/* Each name looked up; those that are none are told, a line each. */
static enum ts_status look_up(struct session *s, const char *const *names, size_t count,
	size_t stride, const struct ts_species ***ret_species)
{
	const struct ts_species **found = ts_arena_array(s->arena, count + 1, sizeof *found);
	bool ok = true;

	if (!found)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < count; i++) {
		const char *name = *(const char *const *)((const char *)names + i * stride);
		struct ts_candidates candidates;

		found[i] = session_species(s, name, &candidates);
		if (found[i])
			continue;
		ts_text_put(s->error, s->error->len ? "\n" : "");
		ts_say_candidates(s->error, name, &candidates);
		ok = false;
	}
	*ret_species = found;
	return ok ? TS_OK : TS_BAD_INPUT;
}

enum ts_status care_species(
	struct session *s, const struct values *names, const struct ts_species ***ret_species)
{
	return look_up(s, names->items, names->count, sizeof *names->items, ret_species);
}

enum ts_status care_plan_species(
	struct session *s, const struct ts_plan *plan, const struct ts_species ***ret_species)
{
	return look_up(s, plan->stock ? &plan->stock->species : NULL, plan->stock_count,
		sizeof *plan->stock, ret_species);
}

double care_age_days(const struct session *s, const char *date)
{
	long day;

	return date && ts_date_read(date, &day) && day <= s->today ? (double)(s->today - day) : 0;
}
