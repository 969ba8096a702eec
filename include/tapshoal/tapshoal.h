/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Everything at once. The way through: ts_water_load() or a struct ts_water of your own ->
 * ts_profile_make() -> ts_match_species() for each species of a catalogue -> ts_match_sort(). Or,
 * for whole answers as the program gives them, ts_asker_open() -> ts_ask().
 */
#ifndef TAPSHOAL_TAPSHOAL_H
#define TAPSHOAL_TAPSHOAL_H

#include <tapshoal/ask.h>
#include <tapshoal/base.h>
#include <tapshoal/care.h>
#include <tapshoal/catalogue.h>
#include <tapshoal/match.h>
#include <tapshoal/plan.h>
#include <tapshoal/stock.h>
#include <tapshoal/water.h>

#endif
