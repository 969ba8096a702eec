/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The first half of proposing: every species of the catalogue against water and wish.
 */
#ifndef TS_STOCK_CANDIDATES_H
#define TS_STOCK_CANDIDATES_H

#include "stock/propose.h"

/*
 * Fills match, must, resident and the reasons that need no look at the tank of every species, and
 * counts what the unsure ones wait for. `proposal->species` has room for the whole catalogue.
 */
void ts_consider_all(const struct ts_wish *wish, struct ts_proposal *proposal);

/* What an unsure animal waits for, enum ts_parameter; -1: not for a parameter. */
int ts_candidacy_waits_for(const struct ts_match *match);

/* Whether the record says that the animal takes change badly, or well. */
bool ts_is_delicate(const struct ts_species *species);
bool ts_is_hardy(const struct ts_species *species);

#endif
