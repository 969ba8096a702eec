/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The program as a function of the library: each call runs on a system in memory, with a catalogue
 * that stays from call to call.
 */
#include <tapshoal/ask.h>

#include <stdlib.h>
#include <string.h>

#include "base/date.h"
#include "cli/commands.h"
#include "system/memory.h"

struct ts_asker {
	struct ts_memory memory;
	struct ts_catalogue catalogue;
	struct ts_text messages;
	char day[TS_DAY_ROOM];
};

struct ts_asker *ts_asker_open(void)
{
	struct ts_asker *asker = calloc(1, sizeof *asker);

	if (!asker)
		return NULL;
	ts_memory_open(&asker->memory);
	ts_catalogue_open(&asker->catalogue, NULL);
	ts_text_open(&asker->messages, NULL);
	return asker;
}

void ts_asker_close(struct ts_asker *asker)
{
	if (!asker)
		return;
	ts_text_drop(&asker->messages);
	ts_catalogue_close(&asker->catalogue);
	ts_memory_close(&asker->memory);
	free(asker);
}

enum ts_status ts_asker_folder(
	struct ts_asker *asker, const char *folder, struct ts_findings *findings)
{
	asker->catalogue.system = ts_system_machine();
	return ts_catalogue_add_folder(&asker->catalogue, folder, findings);
}

enum ts_status ts_asker_image(struct ts_asker *asker, const void *bytes, size_t len)
{
	return ts_catalogue_add_image(&asker->catalogue, bytes, len, NULL);
}

bool ts_asker_put(struct ts_asker *asker, const char *name, const void *bytes, size_t len)
{
	return ts_memory_put(&asker->memory, name, bytes, len);
}

const char *ts_asker_get(const struct ts_asker *asker, const char *name)
{
	return ts_memory_get(&asker->memory, name);
}

bool ts_asker_today(struct ts_asker *asker, const char *day)
{
	long days;

	if (!ts_date_read(day, &days))
		return false;
	return ts_date_write(asker->day, days);
}

/* The words as the program takes them: its own copies behind its name. NULL: no memory. */
static char **copied(const char *const *words, int *ret_count)
{
	static const char name[] = "tapshoal";
	size_t count = 0, room = sizeof name, len;
	char **argv, *at;

	for (; words[count]; count++)
		room += strlen(words[count]) + 1;
	argv = malloc((count + 2) * sizeof *argv + room);
	if (!argv)
		return NULL;
	at = (char *)(argv + count + 2);
	for (size_t i = 0; i <= count; i++) {
		const char *word = i ? words[i - 1] : name;

		len = strlen(word) + 1;
		argv[i] = memcpy(at, word, len);
		at += len;
	}
	argv[count + 1] = NULL;
	*ret_count = (int)count + 1;
	return argv;
}

enum ts_status ts_ask(struct ts_asker *asker, const char *const *words)
{
	const struct ts_system *machine = ts_system_machine();
	char **argv, day[TS_DAY_ROOM];
	int argc;
	enum ts_status status;

	ts_text_clear(&asker->memory.out);
	ts_text_clear(&asker->messages);
	argv = copied(words, &argc);
	if (!argv)
		return TS_NO_MEMORY;
	asker->memory.day = asker->day;
	if (!*asker->day)
		asker->memory.day = machine->today(machine->state, day) ? day : NULL;
	asker->catalogue.system = &asker->memory.system;
	status =
		program_ask(&asker->memory.system, argc, argv, &asker->catalogue, &asker->messages);
	free(argv);
	return status;
}

const char *ts_asker_answer(const struct ts_asker *asker)
{
	return ts_text_get(&asker->memory.out);
}

const char *ts_asker_messages(const struct ts_asker *asker)
{
	return ts_text_get(&asker->messages);
}
