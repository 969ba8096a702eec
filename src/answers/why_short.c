/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One sentence an animal, and nothing that a program does not look at.
 */
#include "answers/why_short.h"

#include "answers/why.h"
#include "stock/misfit.h"
#include "words/sentence.h"

static void fill(const struct ts_asking *asking, const struct ts_profile *profile,
	const struct ts_match *m, struct ts_why_short_cell *ret)
{
	const struct ts_parameter_fit *f = m->limiting < 0 ? NULL : &m->at[m->limiting];
	struct ts_text text;

	ts_text_open(&text, &asking->arena->allocator);
	ts_why_deciding(&text, m, profile);
	ret->verdict = ts_verdict_words[m->verdict];
	ret->limiting = f ? ts_parameter_rows[m->limiting].key : NULL;
	ret->uncomfortable_by = f && f->known ? f->uncomfortable_by : (double)NAN;
	ret->says = ts_asking_keep(asking, &text);
	ts_text_drop(&text);
}

bool ts_answer_why_short(const struct ts_asking *asking, const struct ts_profile *profile,
	const struct ts_keeping *keeping, struct ts_why_short_result *io)
{
	struct ts_match m;

	io->cells = ts_arena_array(asking->arena, asking->species_count, sizeof *io->cells);
	io->water = profile ? ts_answer_water_short(asking->arena, profile) : NULL;
	for (size_t i = 0; io->cells && i < asking->species_count; i++) {
		struct ts_why_short_cell *cell = &io->cells[io->cell_count++];

		cell->name = ts_answer_id(asking->arena, asking->species[i]->file);
		cell->uncomfortable_by = (double)NAN;
		if (!profile)
			continue;
		ts_misfit_match(asking->species[i], profile, keeping, asking->practice, &m);
		io->homes += m.verdict <= TS_TOLERATES;
		fill(asking, profile, &m, cell);
	}
	return !asking->arena->failed;
}
