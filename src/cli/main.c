/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The program on a terminal: one call, then its end.
 */
#include "cli/commands.h"
#include "system/machine.h"

int main(int argc, char **argv)
{
	static struct ts_machine machine; /* paths make it large */
	struct ts_catalogue catalogue;
	int code;

	ts_machine_open(&machine);
	ts_catalogue_open(&catalogue, NULL);
	catalogue.system = &machine.system;
	code = program_run(&machine.system, argc, argv, &catalogue);
	ts_catalogue_close(&catalogue);
	ts_machine_close(&machine);
	return code;
}
