/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Names looked up, each that is none told on a line of its own.
 */
#include "cli/care_answer.h"

#include "answers/asking.h"
#include "base/findings.h"
#include "base/number.h"
#include "model/codes.h"
#include "words/names.h"

struct ts_asking care_asking(const struct session *s)
{
	return (struct ts_asking){.arena = s->arena,
		.practice = s->practice,
		.today = s->today,
		.species = s->catalogue->items,
		.species_count = s->catalogue->count};
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

		found[i] = session_animal(s, name, &candidates);
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

/* Shorter is nothing that is sold; longer than the greatest known, and a tenth, none of its kind.
 */
#define LEAST_CM 0.1
#define GREATEST_MORE 1.1

enum ts_status care_sizes(
	struct session *s, const struct ts_plan *plan, const struct ts_species *const *species)
{
	enum ts_status status = TS_OK;
	char path[64], number[TS_NUMBER_ROOM], size[TS_NUMBER_ROOM], greatest[TS_NUMBER_ROOM];

	for (size_t i = 0; plan->stock && i < plan->stock_count; i++) {
		const double cm = plan->stock[i].size_cm;
		struct ts_place place = {NULL, 0, 0, path};

		if (!species[i] || !(cm > 0) ||
			(cm >= LEAST_CM && cm <= species[i]->greatest_length_cm * GREATEST_MORE))
			continue;
		ts_number_write(number, (double)(i + 1), 0);
		ts_text_fit(path, sizeof path, "stock[", number, "].size", NULL);
		ts_number_write_short(size, cm, 3);
		ts_number_write_short(greatest, species[i]->greatest_length_cm, 1);
		ts_finding_addf(s->findings, &ts_codes[TS_C_PLAN_SIZE], &place, NULL,
			species[i]->species, " of ", size, " cm: the greatest known is ", greatest,
			" cm", NULL);
		status = TS_BAD_INPUT;
	}
	return status;
}

enum ts_status care_plan_species(
	struct session *s, const struct ts_plan *plan, const struct ts_species ***ret_species)
{
	static const char *const nobody = NULL;
	enum ts_status status = look_up(s, plan->stock ? &plan->stock->species : &nobody,
		plan->stock ? plan->stock_count : 0, sizeof *plan->stock, ret_species);

	return status ? status : care_sizes(s, plan, *ret_species);
}

enum ts_status care_species_if_known(struct session *s, const struct ts_plan *plan,
	const struct ts_species *const **ret_species, const char **ret_unknown)
{
	const struct ts_species **species = NULL;
	enum ts_status status;

	*ret_species = NULL;
	if (!plan->stock_count)
		return TS_OK;
	status = answer_catalogue(s);
	if (!status)
		status = care_plan_species(s, plan, &species);
	*ret_species = species;
	if (status != TS_BAD_INPUT || !s->error->len)
		return status;
	*ret_species = NULL;
	*ret_unknown = ts_arena_text(s->arena, ts_text_get(s->error), s->error->len);
	ts_text_drop(s->error);
	ts_text_open(s->error, NULL);
	return *ret_unknown ? TS_OK : TS_NO_MEMORY;
}
