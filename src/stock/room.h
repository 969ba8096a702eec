/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Whether one kind of animal has room in a tank at all, and the sides of a tank of which only the
 * litres are known. rank, propose and what they call "fits" ask here.
 */
#ifndef TS_STOCK_ROOM_H
#define TS_STOCK_ROOM_H

#include <tapshoal/stock.h>

enum ts_room { TS_ROOM_ENOUGH, TS_ROOM_BY_RULE, TS_ROOM_BY_WASTE };

/*
 * Room for its least settled group, grown, by the rules that check uses: sides, floor it holds, and
 * waste: the group alone settles nitrate below the concern. BY_RULE: `*ret` is the gravest ruling.
 * What is not known of the tank takes no room away.
 */
enum ts_room ts_room_for(const struct ts_species *species, const struct ts_tank *tank,
	const struct ts_practice *practice, struct ts_ruling *ret);

/*
 * Gives a tank of so many litres (of its box inside) the sides that tanks of that size usually
 * have: common practice, no source. Whole centimetres; nothing else of the tank is touched.
 */
void ts_room_usual_sides(double litres, struct ts_tank *tank);

/* The litres that a tank of that length usually holds: the least of the same tanks. */
double ts_room_usual_litres(double length_cm);

#endif
