/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as the name of a species that somebody types, rightly or not. */
#include <stdlib.h>
#include <string.h>

#include "holds.h"
#include "names.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct ts_candidates near;
	const struct ts_species *meant;
	char *text = malloc(size + 1);

	hold(text != NULL);
	memcpy(text, data, size);
	text[size] = '\0';
	meant = ts_catalogue_species(named_catalogue(), text, &near);
	hold(meant || (near.count <= TS_CANDIDATES_MOST && near.count <= near.all));
	for (size_t i = 0; !meant && i < near.count; i++)
		hold(near.items[i].species && near.items[i].name);
	free(text);
	return 0;
}
