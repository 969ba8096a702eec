/* SPDX-License-Identifier: Apache-2.0 */
/* Four invented species whose names have accents, hyphens, apostrophes and brackets. */
#ifndef TESTS_FUZZ_NAMES_H
#define TESTS_FUZZ_NAMES_H

#include <tapshoal/catalogue.h>

/* Made once; it lives as long as the process. */
const struct ts_catalogue *named_catalogue(void);

#endif
