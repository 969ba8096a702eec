/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as the files of our own that a call takes. */
#include "session.h"

#define NARROW "--only-catalogue"
#define SOFT "Exempla mollis"

static const call_words calls[] = {
	{"propose", NARROW, "-t", CALL_ONE, "-w", CALL_TWO},
	{"propose", NARROW, "-t", CALL_ONE, "-w", CALL_TWO, "--lists", "3"},
	{"propose", NARROW, "-w", CALL_ONE, "--size", "60x30x35", "--with", SOFT},
	{"propose", NARROW, "-w", CALL_ONE, "--size", "60x30x35", "--why", SOFT},
	{"propose", NARROW, "--like", CALL_ONE},
	{"remake", NARROW, "-w", CALL_ONE, "--for", SOFT},
	{"remake", NARROW, "-w", CALL_ONE, "-t", CALL_TWO, "--for", SOFT},
	{"remake", NARROW, "-w", CALL_ONE, "--to", "GH=4,KH=2", "--volume", "100 L"},
	{"arrive", NARROW, "--shop", CALL_ONE, "-w", CALL_TWO, "--hours", "2 h"},
	{"arrive", NARROW, "--shop", CALL_ONE, "-t", CALL_TWO, "--with", SOFT},
	{"due", NARROW, CALL_ONE},
	{"due", NARROW, CALL_ONE, "-w", CALL_TWO, "--for", SOFT},
	{"mix", CALL_FIRST, CALL_SECOND},
	{"mix", CALL_FIRST, "pure=0.5"},
	{"titrate", CALL_ONE},
	{"titrate", CALL_ONE, "--nightly"},
	{"titrate", CALL_ONE, "--base", "--dose", "0.5 meq/L"},
	{"water", CALL_ONE, "--against", CALL_TWO},
	{"why", NARROW, SOFT, "-w", CALL_ONE, "-w", CALL_TWO},
	{"rank", NARROW, "-w", CALL_ONE, "--practice", CALL_TWO},
	{"rank", NARROW, "-w", CALL_ONE, "-t", CALL_TWO},
	{"lint", CALL_ONE, CALL_TWO},
	{"drift", NARROW, CALL_ONE, "--days", "400", "--top-up", "pure"},
};

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	run_input(calls, sizeof calls / sizeof *calls, data, size);
	return 0;
}
