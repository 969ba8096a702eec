/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as a quantity: no crash, and what is accepted is finite or an open end, low to high. */
#include <stdint.h>
#include <stdlib.h>

#include "units/units.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct ts_measure m;
	struct ts_scan scan;

	if (size < 1)
		return 0;
	if (ts_scan_measure((enum ts_quantity)(data[0] % TS_Q__COUNT), (const char *)data + 1,
		    size - 1, &m, &scan)) {
		if (isnan(m.value) || !isfinite(m.value) || !(m.low <= m.high))
			abort();
	} else if (scan.at > size) {
		abort();
	}
	return 0;
}
