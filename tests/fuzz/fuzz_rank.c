/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The whole way: a water file, then behind a line "%%" a species record, ranked beside three frozen
 * records as text, JSON, page and CSV; then the species told in full, and the water by itself.
 */
#include <string.h>

#include "base/arena.h"
#include "session.h"

static const char border[] = "\n%%\n";

/* Three frozen records and, where it is sound, the one of the input. */
static void make_catalogue(struct ts_catalogue *c, const char *record)
{
	const struct ts_catalogue *frozen = frozen_catalogue();

	ts_catalogue_open(c, NULL);
	c->system = memory_system();
	c->items = ts_arena_array(&c->arena, 4, sizeof *c->items);
	hold(c->items != NULL);
	c->room = 4;
	for (size_t i = 0; i < 3; i++)
		c->items[c->count++] = frozen->items[i];
	if (record && ts_catalogue_add_file(c, record, NULL) != TS_OK)
		hold(c->count == 3);
}

/* The same question in every format has the same answer. */
static void rank(const char *water, const struct ts_catalogue *catalogue, bool fresh)
{
	static const char *const formats[] = {"text", "json", "html", "csv"};
	enum ts_status first = TS_OK;

	for (size_t i = 0; i < 4; i++) {
		enum ts_status status = run_command(
			(const char *const[]){"rank", "-w", water, "--only-catalogue", "--format",
				formats[i], "--temperature", "24", fresh ? "--fresh" : NULL, NULL},
			catalogue);

		hold(i == 0 || status == first);
		first = status;
	}
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	const uint8_t *split;
	const char *water, *name, *record = NULL;
	struct ts_catalogue catalogue;
	size_t water_size;

	if (size < 1)
		return 0;
	split = memmem(data + 1, size - 1, border, sizeof border - 1);
	water_size = split ? (size_t)(split - data) : size - 1;
	water = file_of(0, data + 1, water_size);
	if (split)
		record = file_of(1, split + sizeof border - 1,
			size - (size_t)(split - data) - (sizeof border - 1));
	make_catalogue(&catalogue, record);
	rank(water, &catalogue, data[0] & 1);
	name = catalogue.items[catalogue.count - 1]->species;
	if (*name != '-') /* would be a flag */
		run_command((const char *const[]){"why", name, "-w", water, "--only-catalogue",
				    "--format", data[0] & 2 ? "json" : "text",
				    data[0] & 4 ? "--aim" : NULL, "breeding", NULL},
			&catalogue);
	run_command((const char *const[]){"water", water, "--format", data[0] & 8 ? "json" : "text",
			    NULL},
		&catalogue);
	ts_catalogue_close(&catalogue);
	return 0;
}
