/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as the pattern of find, as plain text where the first byte is odd, over a few names. */
#include <stdlib.h>
#include <string.h>

#include "catalogue/pattern.h"
#include "holds.h"
#include "names.h"

static size_t characters(const char *text)
{
	size_t count = 0;

	for (; *text; text++)
		count += ((unsigned char)*text & 0xc0) != 0x80;
	return count;
}

static void search(const char *text, bool fixed, const struct ts_catalogue *catalogue)
{
	struct ts_pattern_fault fault = {0, ""};
	struct ts_pattern *pattern = NULL;
	enum ts_status status = ts_pattern_open(text, fixed, NULL, &pattern, &fault);

	if (status == TS_BAD_INPUT) {
		hold(!pattern && *fault.says && memchr(fault.says, '\0', sizeof fault.says));
		hold(fault.column >= 1 && fault.column <= characters(text) + 1);
		return;
	}
	hold(status == TS_OK && pattern);
	for (size_t i = 0; i < catalogue->count; i++) {
		const char *name = NULL;

		status = ts_pattern_species(pattern, catalogue->items[i], &name);
		hold(status == TS_OK || status == TS_NO || (status == TS_BAD_INPUT && !fixed));
		hold((status == TS_OK) == (name != NULL));
	}
	ts_pattern_close(pattern);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	char *text;

	if (size < 1)
		return 0;
	text = malloc(size);
	hold(text != NULL);
	memcpy(text, data + 1, size - 1);
	text[size - 1] = '\0';
	search(text, data[0] % 2, named_catalogue());
	free(text);
	return 0;
}
