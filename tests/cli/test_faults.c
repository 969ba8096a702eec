/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Every allocation of every command fails once, and once with all that follow: the exit code is 3,
 * one line says so, no answer and no file is half there, nothing is kept. Plain, one allocation of
 * each place in the code fails; with the argument "full", each one in turn.
 */
#include <dirent.h>
#include <execinfo.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>
#include <yaml.h>

#define PCRE2_CODE_UNIT_WIDTH 8
#include <pcre2.h>

#include "cli/commands.h"
#include "cli/memory.h"
#include "faults.h"
#include "faults_rows.h"

int tapshoal_main(int argc, char **argv);

/* A hint to the kernel, which no answer depends on: not here, where each allocation counts. */
void memory_prepare(void)
{
}

/* Of a sanitizer, where one is linked: its report must not go to the stream that is captured. */
void __sanitizer_set_report_fd(void *file) __attribute__((weak));

#define ARGUMENTS_MOST 64
#define FAULTS_MOST 200000
#define CALLERS 9

/* Everything that one run leaves. */
struct left {
	int exit;
	char *out, *err, *files[WATCHED];
};

static FILE *tap;
static int captured[2];
static bool full;
static size_t injected;
static bool bad;
static bool from_on; /* which of the two ways is walked */

static void result(bool ok, size_t number, const char *format, ...)
{
	va_list args;

	bad |= !ok;
	fprintf(tap, "%sok %zu - ", ok ? "" : "not ", number);
	va_start(args, format);
	vfprintf(tap, format, args);
	va_end(args);
	fputc('\n', tap);
}

static char *content(int file)
{
	struct stat info;
	char *text;

	if (file < 0 || fstat(file, &info) != 0)
		return NULL;
	text = calloc(1, (size_t)info.st_size + 1);
	if (!text || pread(file, text, (size_t)info.st_size, 0) != info.st_size)
		abort();
	return text;
}

static char *content_of(const char *path)
{
	int file = open(path, O_RDONLY);
	char *text = content(file);

	if (file >= 0)
		close(file);
	return text;
}

static void put_file(const char *path, const char *text)
{
	FILE *file = fopen(path, "w");

	if (!file || fputs(text, file) < 0 || fclose(file) != 0)
		abort();
}

static void drop(struct left *left)
{
	free(left->out);
	free(left->err);
	for (size_t i = 0; i < WATCHED; i++)
		free(left->files[i]);
}

/* The words of a line: blanks part them, '~' stands for a blank in one. */
static int split(char *line, char **argv)
{
	int argc = 0;

	argv[argc++] = (char *)(uintptr_t) "tapshoal";
	for (char *word = strtok(line, " "); word; word = strtok(NULL, " ")) {
		for (char *c = word; *c; c++)
			*c = *c == '~' ? ' ' : *c;
		argv[argc++] = word;
	}
	argv[argc] = NULL;
	return argc;
}

/* Takes away what keep set aside: it stays where a later allocation fails, and is whole. */
static void drop_aside(void)
{
	static const char folder[] = "../config/tapshoal/";
	DIR *dir = opendir(folder);
	const struct dirent *entry;
	char path[512];

	while (dir && (entry = readdir(dir))) {
		snprintf(path, sizeof path, "%s%s", folder, entry->d_name);
		if (strncmp(entry->d_name, "tap-until-", 10) == 0)
			unlink(path);
	}
	if (dir)
		closedir(dir);
}

static void before_run(void)
{
	drop_aside();
	for (size_t i = 0; i < WATCHED; i++) {
		char *now = content_of(watched[i].path);

		if (!now || strcmp(now, watched[i].before) != 0)
			put_file(watched[i].path, watched[i].before);
		free(now);
	}
	for (int i = 0; i < 2; i++) {
		if (ftruncate(captured[i], 0) != 0)
			abort();
	}
	lseek(STDOUT_FILENO, 0, SEEK_SET);
	lseek(STDERR_FILENO, 0, SEEK_SET);
	rewind(stdin);
}

static struct left run(const char *words, size_t at)
{
	char line[1024], *argv[ARGUMENTS_MOST];
	struct left left;
	int argc;

	snprintf(line, sizeof line, "%s", words);
	argc = split(line, argv);
	before_run();
	faults = (struct faults){.armed = true, .at = at, .from_on = from_on, .seen = faults.seen};
	left.exit = tapshoal_main(argc, argv);
	faults.armed = false;
	fflush(stdout);
	left.out = content(captured[0]);
	left.err = content(captured[1]);
	for (size_t i = 0; i < WATCHED; i++)
		left.files[i] = content_of(watched[i].path);
	return left;
}

/* Whether a folder holds anything but what is watched there. */
static bool strays(const char *folder)
{
	DIR *dir = opendir(folder);
	const struct dirent *entry;
	size_t count = 0;

	while (dir && (entry = readdir(dir)))
		count +=
			entry->d_name[0] != '.' && (strncmp(entry->d_name, "tap-until-", 10) != 0 ||
							   strstr(entry->d_name, ".tapshoal-"));
	for (size_t i = 0; i < WATCHED; i++)
		count -= strncmp(watched[i].path, folder, strlen(folder)) == 0;
	if (dir)
		closedir(dir);
	return count != 0;
}

/* What is wrong with a run whose allocation failed; NULL: nothing. */
static const char *wrong(
	const struct left *left, const struct left *good, const struct fault_row *row)
{
	size_t len = strlen(left->out);

	if (left->exit != 3)
		return "the exit code is not 3";
	if (strcmp(left->err, "tapshoal: out of memory\n") != 0)
		return "not the one line";
	if (*left->out && (!row->streams || left->out[len - 1] != '\n' ||
				  strncmp(left->out, good->out, len) != 0))
		return "half an answer was printed";
	if (faults.live)
		return "something was not given back";
	if (!left->files[0] || strcmp(left->files[0], watched[0].before) != 0)
		return "the file of the answer was touched";
	for (size_t i = 1; i < WATCHED; i++) {
		const char *file = left->files[i];

		if (!file ||
			(strcmp(file, watched[i].before) != 0 && strcmp(file, good->files[i]) != 0))
			return "another file is neither the old nor the whole new one";
	}
	return strays("../out/") || strays("../config/tapshoal/") ? "a stray file stands there"
								  : NULL;
}

/*
 * Which allocations fail, in either way of failing. Full: all; in the second format of a row and in
 * those behind it all after the first that the format before did not ask for as well. Else: those
 * whose callers have not been seen before.
 */
static unsigned char chosen[FAULTS_MOST];
static uint64_t stacks[2][1u << 16], sequence[2][FAULTS_MOST];
static bool same; /* all so far were asked for in the format before, too */

static void look_at_stack(void)
{
	const size_t room = sizeof stacks[0] / sizeof *stacks[0];
	void *frames[CALLERS + 3];
	int depth = backtrace(frames, CALLERS + 3);
	uint64_t hash = 14695981039346656037u, *seen = stacks[from_on];
	size_t slot;

	for (int i = 3; i < depth; i++) /* behind this one, refused() and the wrapper */
		hash = (hash ^ (uintptr_t)frames[i]) * 1099511628211u;
	if (faults.count >= FAULTS_MOST)
		return;
	same = same && sequence[from_on][faults.count] == hash;
	sequence[from_on][faults.count] = hash;
	chosen[faults.count] = !same;
	if (full)
		return;
	slot = hash % room;
	for (size_t i = 0; i < room && seen[slot] && seen[slot] != hash; i++)
		slot = (slot + 1) % room;
	chosen[faults.count] = seen[slot] != hash;
	seen[slot] = hash;
}

/* One line of words: the good run, then each failure; what is wrong with it, or NULL. */
static const char *walk(
	const char *words, const struct fault_row *row, struct left *ret, size_t *at, size_t *tried)
{
	struct left good;
	const char *fault = NULL;
	size_t total;

	faults.seen = look_at_stack;
	good = run(words, 0);
	faults.seen = NULL;
	total = faults.count;
	if (good.exit != row->exit)
		fault = "without a failure another exit code was wanted";
	else if (faults.live)
		fault = "without a failure something was not given back";
	else if (total >= FAULTS_MOST)
		fault = "more allocations than the test has room for";
	*ret = good;
	for (*at = 1; !fault && *at <= total; ++*at) {
		if (!chosen[*at])
			continue;
		if (ret->out != good.out)
			drop(ret);
		*ret = run(words, *at);
		fault = faults.failed ? wrong(ret, &good, row) : "it did not get so far";
		++*tried;
	}
	if (ret->out != good.out)
		drop(&good);
	return fault;
}

/* Who asked for the allocation that failed: addresses for addr2line. */
static void *callers[CALLERS + 3];
static int caller_count;

static void keep_callers(void)
{
	if (faults.count == faults.at)
		caller_count = backtrace(callers, CALLERS + 3);
}

static void test_walk(size_t number, const char *words, const struct fault_row *row)
{
	struct left left;
	size_t at = 0, tried = 0;
	const char *fault = walk(words, row, &left, &at, &tried);

	result(!fault, number, "%s: %s, %zu times", words,
		from_on ? "all from one on fail" : "one allocation fails", tried);
	if (fault)
		fprintf(tap,
			"# allocation %zu: %s\n# exit code %d\n# stdout: %.200s\n# stderr: "
			"%.500s\n",
			at - 1, fault, left.exit, left.out, left.err);
	fflush(tap);
	if (fault && at > 1) {
		drop(&left);
		faults.seen = keep_callers;
		left = run(words, at - 1);
		backtrace_symbols_fd(callers, caller_count, fileno(tap));
	}
	injected += tried;
	drop(&left);
}

/* Are allocations of the libraries counted at all? They are not where a shared one is linked. */
static void test_libraries(size_t number)
{
	yaml_parser_t parser;
	pcre2_general_context *general;
	bool ok;

	faults = (struct faults){.armed = true, .at = 1, .from_on = true};
	ok = !yaml_parser_initialize(&parser) && faults.failed == 1;
	general = pcre2_general_context_create(NULL, NULL, NULL);
	ok = ok && !general && faults.failed == 2;
	faults.armed = false;
	result(ok, number, "allocations of the libraries fail too");
}

static size_t rows_of(const char *command)
{
	size_t count = 0;

	for (size_t i = 0; i < FAULT_ROWS; i++)
		count += strcmp(fault_rows[i].command, command) == 0;
	return count;
}

/* A row of commands.c without one of ours is a failure, not a gap. */
static void test_every_command_has_a_row(size_t number)
{
	const struct command *command;
	bool ok = true;

	for (size_t i = 0; (command = command_at(i)); i++) {
		if (rows_of(command->name))
			continue;
		ok = false;
		fprintf(tap, "# no row in faults_rows.h: %s\n", command->name);
	}
	result(ok, number, "every command has a row here");
}

static const char *formats_of(const struct fault_row *row)
{
	const struct command *command = command_named(row->command);

	if (row->formats)
		return row->formats;
	return command && row->exit < 2 ? command->formats : "text";
}

/* Each row in each of its formats and both ways; only counted where `number` is NULL. */
static size_t each_walk(size_t *number)
{
	size_t count = 0;

	for (size_t i = 0; i < FAULT_ROWS; i++) {
		const struct fault_row *row = &fault_rows[i];
		char formats[64], *rest = formats, *format;

		snprintf(formats, sizeof formats, "%s", formats_of(row));
		while ((format = strtok_r(rest, " ", &rest))) {
			for (int way = 0; way < 2; way++, count++) {
				char words[1024];

				if (!number)
					continue;
				from_on = way == 1;
				same = format != formats;
				snprintf(words, sizeof words, "%s %s%s%s%s", row->command,
					row->arguments, strcmp(format, "text") == 0 ? "" : " -f ",
					strcmp(format, "text") == 0 ? "" : format,
					from_on ? "" : " -o ../out/answer");
				test_walk((*number)++, words, row);
			}
		}
	}
	return count;
}

static int capture(const char *path, int as)
{
	int file = open(path, O_RDWR | O_CREAT | O_TRUNC, 0600);

	if (file < 0 || dup2(file, as) < 0)
		abort();
	return file;
}

/* A folder of our own with all that the rows name; the program runs inside it. */
static void open_place(char *place)
{
	static const char *const folders[] = {
		"in", "in/records", "in/records/sources", "out", "config", "config/tapshoal"};
	char path[4096];

	if (!mkdtemp(place) || chdir(place) != 0)
		abort();
	for (size_t i = 0; i < sizeof folders / sizeof *folders; i++) {
		if (mkdir(folders[i], 0700) != 0)
			abort();
	}
	snprintf(path, sizeof path, "%s/config", place);
	setenv("XDG_CONFIG_HOME", path, 1);
	setenv("XDG_DATA_DIRS", place, 1);
	setenv("HOME", place, 1);
	unsetenv("TAPSHOAL_NO_CONFIG");
	setenv("LC_ALL", "C.UTF-8", 1);
	captured[0] = capture("captured-out", STDOUT_FILENO);
	captured[1] = capture("captured-err", STDERR_FILENO);
	if (chdir("in") != 0)
		abort();
	for (size_t i = 0; i < FAULT_INPUTS; i++)
		put_file(fault_inputs[i].path, fault_inputs[i].before);
	if (!freopen("report.txt", "r", stdin))
		abort();
}

static void close_place(const char *place)
{
	char command[4096];

	snprintf(command, sizeof command, "rm -rf '%s'", place);
	if (chdir("/") != 0 || system(command) != 0)
		abort();
}

int main(int argc, char **argv)
{
	char place[] = "/dev/shm/tapshoal-faults-XXXXXX"; /* there is little to wait for there */
	size_t number = 1;

	full = argc > 1 && strcmp(argv[1], "full") == 0;
	tap = fdopen(dup(STDOUT_FILENO), "w");
	if (!tap)
		return 1;
	if (__sanitizer_set_report_fd)
		__sanitizer_set_report_fd((void *)(intptr_t)dup(STDERR_FILENO));
	if (access("/dev/shm", W_OK) != 0)
		memcpy(place, "/var/tmp", 8);
	open_place(place);
	fprintf(tap, "1..%zu\n", each_walk(NULL) + 2);
	test_libraries(number++);
	test_every_command_has_a_row(number++);
	each_walk(&number);
	fprintf(tap, "# %zu allocations failed\n", injected);
	close_place(place);
	return fclose(tap) != 0 || bad;
}
