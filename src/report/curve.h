/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A chart for the terminal: a frame, one sign a series, marks as dotted uprights with their words
 * below. The same curve is drawn as a picture by the page.
 */
#ifndef TS_REPORT_CURVE_H
#define TS_REPORT_CURVE_H

#include "report/screen.h"

/* Adds the chart; nothing where the curve has no finite point. */
void ts_curve_write(
	struct ts_text *out, const struct ts_curve *curve, const struct ts_screen *screen);

/* The extent of all finite points of all series, out to what labels can say; false when there is
 * none. Used by pages too. */
bool ts_curve_extent(const struct ts_curve *curve, struct ts_range *ret_x, struct ts_range *ret_y);

/* The curve's value at `x`, straight between its points; NAN outside or beside a gap. */
double ts_series_at(const struct ts_series *series, double x);

/* Adds what a mark says: "on day 5: the buffer is gone". Used by pages too. */
void ts_curve_say_mark(
	struct ts_text *out, const struct ts_curve *curve, const struct ts_curve_mark *mark);

#endif
