/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Any bytes as a plan: checked, drifted and re-made against the frozen catalogue, in the command
 * and format that the first byte says.
 */
#include "session.h"

static const char *const formats[] = {"text", "json", "html"};

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	const char *file, *format;

	if (size < 1)
		return 0;
	file = file_of(0, data + 1, size - 1);
	format = formats[data[0] / 4 % 3];
	if (data[0] % 4 < 2)
		run_command((const char *const[]){"check", file, "--only-catalogue", "--format",
				    format, NULL},
			NULL);
	else if (data[0] % 4 == 2)
		run_command((const char *const[]){"drift", file, "--only-catalogue", "--format",
				    format, NULL},
			NULL);
	else
		run_command((const char *const[]){"remake", file, "--only-catalogue", "--format",
				    format, "--for", "Exempla mollis", NULL},
			NULL);
	return 0;
}
