/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writes forty larger random models for outside solvers into a folder, and prints what the search
 * says of each: "name points". Run by tests/stock/solvers.py.
 */
#include <stdio.h>

#include "random_model.h"

#include "stock/model_lp.h"
#include "stock/search.h"

static const struct random_shape shapes[] = {
	{60, 30, 3, 4, 20, 15, 2500, 2000, false, 0},
	{90, 40, 2, 6, 35, 30, 9000, 3000, false, 0},
	{60, 30, 3, 3, 40, 20, 900, 1500, true, 0},
	{40, 20, 3, 8, 20, 25, 4000, 4000, false, 2},
	{120, 60, 1, 6, 25, 10, 1500, 2500, false, 1},
};

static bool write_file(const char *folder, const char *name, const struct ts_text *text)
{
	char path[4096];
	FILE *file;

	if (snprintf(path, sizeof path, "%s/%s.lp", folder, name) >= (int)sizeof path)
		return false;
	file = fopen(path, "w");
	return file && fputs(ts_text_get(text), file) >= 0 && fclose(file) == 0;
}

/* Models whose must groups exclude each other have no list, and are passed over. */
static bool solved(
	struct ts_model *model, struct ts_arena *arena, unsigned number, struct ts_search_list *ret)
{
	for (uint64_t seed = 500 + number; seed < 900; seed += 40) {
		if (!random_model(model, arena, seed, &shapes[number % 5]) ||
			!ts_search_best(model, NULL, arena, ret))
			return false;
		if (ret->proven && ret->count)
			return true;
	}
	return false;
}

static bool one(const char *folder, unsigned number)
{
	struct ts_search_list list;
	struct ts_arena arena;
	struct ts_model model;
	struct ts_text text;
	char name[32];
	bool fine;

	ts_arena_open(&arena, NULL);
	ts_text_open(&text, NULL);
	snprintf(name, sizeof name, "model-%02u", number);
	fine = solved(&model, &arena, number, &list);
	if (fine) {
		ts_model_write_lp(&text, &model, NULL);
		printf("%s %lld\n", name, (long long)list.points);
		fine = !text.failed && write_file(folder, name, &text);
	}
	ts_text_drop(&text);
	ts_arena_drop(&arena);
	return fine;
}

int main(int argc, char **argv)
{
	if (argc != 2)
		return 2;
	for (unsigned i = 0; i < 40; i++) {
		if (!one(argv[1], i))
			return 1;
	}
	return 0;
}
