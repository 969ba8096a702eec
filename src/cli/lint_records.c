/* SPDX-License-Identifier: Apache-2.0 */
/*
 * lint's part for species records. It stands by itself because a page has no records to mend.
 */
#include "cli/lint_records.h"

#include "catalogue/folders.h"
#include "catalogue/lint.h"
#include "home/paths.h"

/* A record may cite what the shipped folder describes. */
enum ts_status lint_records(struct session *s, size_t *io_broken)
{
	struct ts_texts standard = {0};
	struct ts_lint lint;
	enum ts_status status = ts_lint_open(&lint, s->catalogue, NULL);

	(void)paths_species(s->system, s->arena, &standard);
	for (size_t i = 0; i < standard.count && !status; i++)
		status = ts_lint_know_sources(&lint, standard.items[i]);
	for (size_t i = 0; i < s->catalogue->count && !status; i++)
		*io_broken += !ts_lint_species(&lint, s->catalogue->items[i], s->findings);
	ts_lint_close(&lint);
	return status;
}
