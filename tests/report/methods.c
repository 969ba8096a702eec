/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writes the tables of docs/methods.md that are rows in the code (`methods FILE --write`): the
 * equilibrium constants, the practice values and the rules of living together, between their marks.
 * Without --write it compares with what stands there and prints TAP.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tapshoal/stock.h>

#include "base/text.h"
#include "chem/constants.h"
#include "model/practice.h"
#include "records/file.h"

static void put_constants(struct ts_text *out)
{
	struct ts_chem_constants at_25 = {0};

	ts_chem_constants_at(&at_25, 25);
	ts_text_put(out, "| reaction | log10 K at 25 C | source | range |\n"
			 "| --- | --- | --- | --- |\n");
	for (size_t i = 0; i < ts_chem_published.n; i++) {
		const struct ts_chem_constant *row = &ts_chem_published.rows[i];
		double k;

		memcpy(&k, (const char *)&at_25 + row->offset, sizeof(k));
		ts_text_puts(out, "| ", row->reaction, " | ", NULL);
		ts_text_number(out, log10(k), 3);
		ts_text_puts(out, " | ", row->source, " | ", NULL);
		ts_text_number_short(out, row->low_c, 0);
		ts_text_put(out, "-");
		ts_text_number_short(out, row->high_c, 0);
		ts_text_put(out, " C |\n");
	}
}

static void put_practice(struct ts_text *out)
{
	ts_text_put(out, "| key | value | why | grade |\n| --- | --- | --- | --- |\n");
	for (int i = 0; i < TS_P__COUNT; i++) {
		const struct ts_practice_row *row = &ts_practice_rows[i];

		ts_text_puts(out, "| ", row->key, " | ", NULL);
		ts_text_number_short(out, row->value, 4);
		ts_text_puts(out, *row->unit ? " " : "", row->unit, " | ", row->why, " | ",
			row->grade, " |\n", NULL);
	}
}

static void put_rules(struct ts_text *out)
{
	static const char *const scopes[] = {"one species", "two species", "the plan"};

	ts_text_put(out, "| code | looks at | holds where | concern costs | grade |\n"
			 "| --- | --- | --- | --- | --- |\n");
	for (int i = 0; i < TS_RULE__COUNT; i++) {
		const struct ts_rule_row *row = &ts_rule_rows[i];

		ts_text_puts(out, "| ", row->code, " | ", scopes[row->scope], " | ", row->says,
			" | ", row->cost < 0 ? "" : ts_practice_rows[row->cost].key, " | ",
			row->grade, " |\n", NULL);
	}
}

static const struct {
	const char *mark;
	void (*put)(struct ts_text *out);
} tables[] = {{"<!-- rows of constants -->\n", put_constants},
	{"<!-- rows of practice -->\n", put_practice}, {"<!-- rows of rules -->\n", put_rules}};
#define TABLES (sizeof tables / sizeof *tables)

/* The text with every table written anew; false when a mark is missing. */
static bool put_all(struct ts_text *out, const char *old)
{
	static const char end[] = "<!-- end of rows -->\n";
	size_t met = 0;

	while (*old) {
		size_t len = strcspn(old, "\n") + (strchr(old, '\n') ? 1 : 0);
		const char *stop = strstr(old, end);

		ts_text_add(out, old, len);
		for (size_t i = 0; stop && i < TABLES; i++) {
			if (strncmp(old, tables[i].mark, strlen(tables[i].mark)) != 0)
				continue;
			ts_text_put(out, "\n");
			tables[i].put(out);
			ts_text_puts(out, "\n", end, NULL);
			len = (size_t)(stop - old) + strlen(end);
			met++;
			break;
		}
		old += len;
	}
	return met == TABLES;
}

int main(int argc, char **argv)
{
	bool write = argc == 3 && strcmp(argv[2], "--write") == 0, marks, same;
	struct ts_text wanted;
	char *bytes = NULL;
	char *old;
	size_t len = 0;

	if (argc < 2 || ts_file_read(NULL, argv[1], TS_OPEN_ANY, 1 << 22, NULL, &bytes, &len,
				NULL) != TS_OK)
		return 2;
	old = calloc(len + 1, 1);
	if (!old)
		return 2;
	memcpy(old, bytes, len);
	ts_text_open(&wanted, NULL);
	marks = put_all(&wanted, old);
	same = !wanted.failed && strcmp(old, ts_text_get(&wanted)) == 0;
	if (write && marks && !same) {
		FILE *stream = fopen(argv[1], "wb");

		if (stream) {
			fputs(ts_text_get(&wanted), stream);
			fclose(stream);
		}
		same = stream;
	}
	printf("1..2\n%s 1 - docs/methods.md has the marks of its tables\n",
		marks ? "ok" : "not ok");
	printf("%s 2 - its tables are what the rows say\n", same ? "ok" : "not ok");
	if (!same)
		printf("# ninja -C build regenerate writes them\n");
	ts_text_drop(&wanted);
	free(old);
	free(bytes);
	return !(marks && same);
}
