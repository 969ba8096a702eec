/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as a water file (first byte even) or species record (odd); then through the match. */
#include <stdint.h>
#include <stdlib.h>

#include <tapshoal/match.h>

#include "records/load.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct ts_arena arena;
	struct ts_findings findings;
	struct ts_water water;
	struct ts_species species;
	enum ts_status status;

	if (size < 1)
		return 0;
	ts_arena_open(&arena, NULL);
	ts_findings_open(&findings, NULL);
	if (data[0] % 2) {
		status = ts_records_parse(&ts_shape_species, (const char *)data + 1, size - 1,
			"fuzz", &arena, &species, &findings);
	} else {
		status = ts_records_parse(&ts_shape_water, (const char *)data + 1, size - 1, "fuzz",
			&arena, &water, &findings);
		if (status == TS_OK) {
			struct ts_keeping keeping = {0};
			struct ts_profile profile;

			ts_profile_make(&water, &keeping, NULL, &profile);
			for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
				if (profile.at[p].given &&
					!(profile.at[p].low <= profile.at[p].high))
					abort();
			}
		}
	}
	if (status == TS_BAD_INPUT && !findings.errors)
		abort();
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
	return 0;
}
