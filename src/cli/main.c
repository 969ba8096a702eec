/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The program on a terminal: one call, then its end.
 */
#include <signal.h>

#include "cli/commands.h"

int main(int argc, char **argv)
{
	struct ts_catalogue catalogue;
	int code;

	signal(SIGPIPE, SIG_IGN); /* a reader that saw enough is no failure */
	ts_catalogue_open(&catalogue, NULL);
	code = program_run(argc, argv, &catalogue);
	ts_catalogue_close(&catalogue);
	return code;
}
