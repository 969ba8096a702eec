/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Adding to a collection of findings. The public half stands in tapshoal/base.h.
 */
#ifndef TS_BASE_FINDINGS_H
#define TS_BASE_FINDINGS_H

#include <tapshoal/base.h>

/*
 * Adds one finding; all texts are copied. `remedy` NULL: the code's own. Beyond TS_FINDINGS_MOST
 * only `more` counts. `findings` NULL: nothing happens. Returns false for every finding that is an
 * error and true for others, so that a reader may write `ok &= ts_finding_add(...)`.
 */
bool ts_finding_add(struct ts_findings *findings, const struct ts_code *code,
	const struct ts_place *place, const char *what, const char *remedy);

/* The same with `what` joined from several strings, the last argument NULL. */
bool ts_finding_addf(struct ts_findings *findings, const struct ts_code *code,
	const struct ts_place *place, const char *remedy, ...);

#endif
