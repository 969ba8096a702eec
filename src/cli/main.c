/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The program on a terminal: one call, then its end.
 */
#include <stdint.h>

#include "cli/commands.h"
#include "cli/memory.h"
#include "system/machine.h"

#ifdef TS_RECORDS_INSIDE
extern const char ts_records_image[], ts_records_image_end[];
#endif

int main(int argc, char **argv)
{
	static struct ts_machine machine; /* paths make it large */
	struct ts_catalogue catalogue;
	int code;

	memory_prepare();
	ts_machine_open(&machine);
#ifdef TS_RECORDS_INSIDE
	machine.system.inside = ts_records_image;
	machine.system.inside_len = (uintptr_t)ts_records_image_end - (uintptr_t)ts_records_image;
#endif
	ts_catalogue_open(&catalogue, NULL);
	catalogue.system = &machine.system;
	code = program_run(&machine.system, argc, argv, &catalogue);
	ts_catalogue_close(&catalogue);
	ts_machine_close(&machine);
	return code;
}
