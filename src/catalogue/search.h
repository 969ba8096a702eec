/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The animals of a catalogue that are so, or are called so: what find shows, and what there is of
 * them by group, home water and source.
 */
#ifndef TS_CATALOGUE_SEARCH_H
#define TS_CATALOGUE_SEARCH_H

#include "answers/find.h"
#include "catalogue/pattern.h"
#include "catalogue/traits.h"

struct ts_search {
	const struct ts_filter *filter;
	struct ts_pattern *pattern;             /* NULL: any name */
	const char *words;                      /* as the pattern was typed; NULL: none was */
	const struct ts_species *named;         /* the one whose name that is; NULL: of none */
	const struct ts_candidates *candidates; /* what else the name may mean */
};

/*
 * Those that pass, in the catalogue's order. TS_BAD_INPUT: the pattern takes more steps than a
 * search has. TS_NO_MEMORY.
 */
TS_MUST_USE enum ts_status ts_search(const struct ts_catalogue *catalogue,
	const struct ts_search *search, struct ts_arena *arena, struct ts_find_hit **ret,
	size_t *ret_count);

/* Counts what was found, and tells the folders; the rest of `ret` stays. False: no memory. */
TS_MUST_USE bool ts_search_counts(const struct ts_catalogue *catalogue,
	const struct ts_find_hit *hits, size_t count, struct ts_arena *arena,
	struct ts_find_result *ret);

#endif
