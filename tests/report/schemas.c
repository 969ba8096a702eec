/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writes the schemas into a folder (`schemas FOLDER --write`), or compares them with what stands
 * there and prints TAP.
 */
#include <stdio.h>
#include <string.h>

#include "cli/settings.h"
#include "report/arrive_result.h"
#include "report/ask_back_result.h"
#include "report/check_result.h"
#include "report/drift_result.h"
#include "report/due_result.h"
#include "report/find_result.h"
#include "report/log_result.h"
#include "report/propose_result.h"
#include "report/read_result.h"
#include "report/remake_result.h"
#include "report/schema.h"
#include "report/titrate_result.h"
#include "report/water_result.h"
#include "report/what_if_result.h"
#include "report/why_result.h"

static const struct {
	const char *file;
	const struct ts_shape *shape; /* of a file that people write */
	const char *command;          /* or of the answer of a command */
	const struct ts_result_shape *result;
} schemas[] = {
	{"config.json", &settings_shape, NULL, NULL},
	{"plan.json", &ts_shape_plan, NULL, NULL},
	{"species.json", &ts_shape_species, NULL, NULL},
	{"messages.json", NULL, "messages", &ts_result_messages},
	{"tank.json", &ts_shape_tank, NULL, NULL},
	{"answer-ask-back.json", NULL, "ask-back", &ts_result_ask_back},
	{"answer-check.json", NULL, "check", &ts_result_check},
	{"answer-drift.json", NULL, "drift", &ts_result_drift},
	{"answer-due.json", NULL, "due", &ts_result_due},
	{"answer-due-all.json", NULL, "due", &ts_result_due_all},
	{"answer-arrive.json", NULL, "arrive", &ts_result_arrive},
	{"answer-find.json", NULL, "find", &ts_result_find},
	{"answer-lint.json", NULL, "lint", &ts_result_lint},
	{"answer-log.json", NULL, "log", &ts_result_log},
	{"answer-log.json", NULL, "log", &ts_result_log},
	{"answer-propose.json", NULL, "propose", &ts_result_propose},
	{"answer-mix.json", NULL, "mix", &ts_result_mix},
	{"answer-rank.json", NULL, "rank", &ts_result_rank},
	{"answer-rank-batch.json", NULL, "rank", &ts_result_rank_line},
	{"answer-rank-lines.json", NULL, "rank", &ts_result_rank_short},
	{"answer-why-lines.json", NULL, "why", &ts_result_why_short},
	{"answer-read.json", NULL, "read", &ts_result_read},
	{"answer-remake.json", NULL, "remake", &ts_result_remake},
	{"answer-titrate.json", NULL, "titrate", &ts_result_titrate},
	{"answer-water.json", NULL, "water", &ts_result_water},
	{"answer-what-if.json", NULL, "what-if", &ts_result_what_if},
	{"answer-why.json", NULL, "why", &ts_result_why},
	{"answer-why-waters.json", NULL, "why", &ts_result_why_waters},
	{"water.json", &ts_shape_water, NULL, NULL},
};

static bool same(const char *path, const struct ts_text *text)
{
	FILE *stream = fopen(path, "rb");
	static char bytes[1 << 18];
	size_t len = stream ? fread(bytes, 1, sizeof bytes, stream) : 0;

	if (stream)
		fclose(stream);
	return len == text->len && memcmp(bytes, ts_text_get(text), len) == 0;
}

int main(int argc, char **argv)
{
	bool write = argc == 3 && strcmp(argv[2], "--write") == 0;
	int failed = 0;

	if (argc < 2)
		return 2;
	printf("1..%zu\n", sizeof schemas / sizeof *schemas);
	for (size_t i = 0; i < sizeof schemas / sizeof *schemas; i++) {
		char path[4096];
		struct ts_text text;
		bool fine;

		ts_text_open(&text, NULL);
		if (schemas[i].shape)
			ts_schema_write(&text, schemas[i].shape);
		else
			ts_result_schema(&text, schemas[i].command, schemas[i].result);
		snprintf(path, sizeof path, "%s/%s", argv[1], schemas[i].file);
		if (write) {
			FILE *stream = fopen(path, "wb");

			if (stream) {
				fputs(ts_text_get(&text), stream);
				fclose(stream);
			}
		}
		fine = !text.failed && same(path, &text);
		failed += !fine;
		printf("%s %zu - docs/schemas/%s is what the rows say\n", fine ? "ok" : "not ok",
			i + 1, schemas[i].file);
		ts_text_drop(&text);
	}
	return failed != 0;
}
