/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Any bytes as a file that is none of ours, a report or a table of waters, through the commands
 * that take one; what reads it is held closer by fuzz_report.c and fuzz_table.c.
 */
#include "session.h"

#define NARROW "--only-catalogue"
#define SOFT "Exempla mollis"

static const call_words calls[] = {
	{"why", NARROW, SOFT, "--batch", CALL_ONE},
	{"rank", NARROW, "--batch", CALL_ONE},
	{"read", CALL_ONE},
};

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	run_input(calls, sizeof calls / sizeof *calls, data, size);
	return 0;
}
