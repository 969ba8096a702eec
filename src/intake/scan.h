/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a scanner makes of a printed line: a blank inside a name or a figure, O for 0, l or I for 1.
 * Figures are mended where only one reading is left; names are met by looser patterns.
 */
#ifndef TS_INTAKE_SCAN_H
#define TS_INTAKE_SCAN_H

#include "intake/lines.h"

/* Mends the figures of a folded line; sets `scanned`, which stays, where it shows a scan's signs.
 */
void ts_scan_mend(struct ts_report_line *line);

/*
 * The pattern of a row of terms.c as a scan may have printed it: a blank behind any letter, l, i
 * and 1 alike, o and 0, s and 5. False where `room` does not hold it.
 */
bool ts_scan_pattern(const char *pattern, char *out, size_t room);

/* Whether two letters that begin a word are alike so. */
bool ts_scan_alike(char a, char b);

#endif
