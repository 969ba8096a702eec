/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Any bytes as the one or two files of a call, the second behind a line "%%": the first byte says
 * which call, the second in which of its formats.
 */
#include <string.h>

#include "cli/commands.h"
#include "session.h"

#define WORDS_MOST 9

static const char border[] = "\n%%\n";

/* The calls; ONE and TWO are the files, FIRST and SECOND the same as a share of a mixture. */
#define ONE "\1"
#define TWO "\2"
#define FIRST "\3"
#define SECOND "\4"
#define NARROW "--only-catalogue"
#define SOFT "Exempla mollis"

static const char *const calls[][WORDS_MOST] = {
	{"propose", NARROW, "-t", ONE, "-w", TWO},
	{"propose", NARROW, "-t", ONE, "-w", TWO, "--lists", "3"},
	{"propose", NARROW, "-w", ONE, "--size", "60x30x35", "--with", SOFT},
	{"propose", NARROW, "-w", ONE, "--size", "60x30x35", "--why", SOFT},
	{"propose", NARROW, "--like", ONE},
	{"remake", NARROW, "-w", ONE, "--for", SOFT},
	{"remake", NARROW, "-w", ONE, "-t", TWO, "--for", SOFT},
	{"remake", NARROW, "-w", ONE, "--to", "GH=4,KH=2", "--volume", "100 L"},
	{"arrive", NARROW, "--shop", ONE, "-w", TWO, "--hours", "2 h"},
	{"arrive", NARROW, "--shop", ONE, "-t", TWO, "--with", SOFT},
	{"due", NARROW, ONE},
	{"due", NARROW, ONE, "-w", TWO, "--for", SOFT},
	{"mix", FIRST, SECOND},
	{"mix", FIRST, "pure=0.5"},
	{"titrate", ONE},
	{"titrate", ONE, "--nightly"},
	{"titrate", ONE, "--base", "--dose", "0.5 meq/L"},
	{"water", ONE, "--against", TWO},
	{"why", NARROW, SOFT, "-w", ONE, "-w", TWO},
	{"why", NARROW, SOFT, "--batch", ONE},
	{"rank", NARROW, "--batch", ONE},
	{"rank", NARROW, "-w", ONE, "--practice", TWO},
	{"rank", NARROW, "-w", ONE, "-t", TWO},
	{"lint", ONE, TWO},
	{"read", ONE},
	{"drift", NARROW, ONE, "--days", "400", "--top-up", "pure"},
};
#define CALLS (sizeof calls / sizeof *calls)

/* The word of that number among those that a command's row names, as often as there are. */
static const char *format_of(const struct command *command, unsigned number, char room[8])
{
	const char *at = command->formats;
	unsigned count = 1;
	size_t len;

	for (const char *blank = at; (blank = strchr(blank, ' ')); blank++)
		count++;
	for (number %= count; number; number--)
		at = strchr(at, ' ') + 1;
	len = strcspn(at, " ");
	memcpy(room, at, len);
	room[len] = '\0';
	return room;
}

static const char *share_of(char room[80], const char *file)
{
	size_t len = strlen(file);

	memcpy(room, file, len);
	memcpy(room + len, "=0.5", 5);
	return room;
}

static void ask(const char *const *call, unsigned format, const char *one, const char *two)
{
	const char *words[WORDS_MOST + 3];
	char room[8], shares[2][80];
	bool lines = strcmp(call[0], "rank") == 0 && strcmp(call[2], "--batch") == 0;
	size_t count = 0;

	for (; count < WORDS_MOST && call[count]; count++) {
		switch (*call[count]) {
		case 1:
			words[count] = one;
			break;
		case 2:
			words[count] = two;
			break;
		case 3:
			words[count] = share_of(shares[0], one);
			break;
		case 4:
			words[count] = share_of(shares[1], two);
			break;
		default:
			words[count] = call[count];
		}
	}
	if (!lines) { /* of which there is one format */
		words[count++] = "--format";
		words[count++] = format_of(command_named(call[0]), format, room);
	}
	words[count] = NULL;
	run_command(words, NULL);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	const uint8_t *split;
	const char *one, *two;

	if (size < 2)
		return 0;
	split = memmem(data + 2, size - 2, border, sizeof border - 1);
	one = file_of(0, data + 2, split ? (size_t)(split - data) - 2 : size - 2);
	two = file_of(1, split ? split + sizeof border - 1 : data,
		split ? size - (size_t)(split - data) - (sizeof border - 1) : 0);
	ask(calls[data[0] % CALLS], data[1], one, two);
	return 0;
}
