/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Whole calls of the program on the system in memory, where each step (a look, a listing, an
 * opening, a read, a write, a file put in its place) fails in turn: a failed call says so by its
 * exit code, gives no answer that differs from the whole one, and leaves every file the old or the
 * whole new one. So do a full disk and a file that vanishes between two looks.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "system/memory.h"

#define WORDS_MOST 24

#define READ "--GH", "8", "--KH", "5", "--pH", "7.2", "--temperature", "25"
#define NARROW "--only-catalogue", "--catalogue", "records"

static const char *const calls[][WORDS_MOST] = {
	{"rank", NARROW, READ},
	{"rank", NARROW, "-w", "tap.yaml", "--temperature", "25", "-o", "out"},
	{"rank", NARROW, "--batch", "table.csv", "--temperature", "25", "-o", "out"},
	{"why", "Exempla mollis", NARROW, READ, "-f", "json", "-o", "out"},
	{"check", "plan.yaml", NARROW},
	{"drift", "plan.yaml", NARROW, "-o", "out"},
	{"due", "tank.yaml", "-w", "tap.yaml"},
	{"note", "tap.yaml", "GH=15", "pH=7.4"},
	{"note", "tank.yaml", "GH=15", "pH=7.4", "-o", "out"},
	{"keep", "tap.yaml"},
	{"keep", "--GH", "9"},
	{"keep", "tap.yaml", "--name", "another"},
	{"lint", "records", "tap.yaml"},
	{"read", "report.txt", "-o", "out"},
	{"propose", NARROW, "-t", "tank.yaml", "-w", "tap.yaml", "--plan-out", "planned.yaml"},
	{"water", "-"},
	{"find", NARROW, "mollis", "-o", "out"},
};
#define CALLS (sizeof calls / sizeof *calls)

static const struct {
	const char *path, *text;
} files[] = {
	{"tap.yaml",
		"kind: tap\nname: kitchen\nreadings:\n  - {date: 2026-01-01, pH: 7.2, GH: 8 dH, "
		"KH: 5 dH}\n"},
	{"tank.yaml", "length: 100 cm\nwidth: 40 cm\nheight: 50 cm\ntemperature: 25 C\nfilter: "
		      "mature\nreadings:\n  - {date: 2026-01-01, GH: 8 dH, KH: 5 dH}\n"},
	{"plan.yaml", "tank: tank.yaml\nwater: tap.yaml\nstock:\n  - {species: Exempla mollis, "
		      "count: 8}\n"},
	{"report.txt", "Total hardness 14 dH\nCarbonate hardness 9 dH\npH 7.6\n"},
	{"table.csv", "name,GH,KH\nkitchen,8,5\n"},
	{"out", "an older answer\n"},
	{"planned.yaml", "an older plan\n"},
	{"/config/tapshoal/tap.yaml",
		"# mine\nname: kitchen\nreadings:\n  - {date: 2025-12-01, GH: 7 "
		"dH}\n"},
	{"-", "kind: tap\nreadings:\n  - {GH: 8 dH, KH: 5 dH}\n"},
};
#define FILES (sizeof files / sizeof *files)

static void put_record(struct ts_memory *m, const char *name)
{
	static char bytes[65536];
	char path[512];
	FILE *file;
	size_t len;

	snprintf(path, sizeof path, "%s/catalogue/%s", TS_TEST_DATA, name);
	file = fopen(path, "rb");
	assert_non_null(file);
	len = fread(bytes, 1, sizeof bytes, file);
	fclose(file);
	snprintf(path, sizeof path, "records/%s", name);
	assert_true(ts_memory_put(m, path, bytes, len));
}

static void fill(struct ts_memory *m)
{
	static const char *const variables[] = {
		"XDG_CONFIG_HOME", "/config", "HOME", "/home", NULL};

	ts_memory_open(m);
	m->variables = variables;
	m->day = "2026-03-01";
	put_record(m, "exempla-mollis.yaml");
	put_record(m, "exempla-dura.yaml");
	for (size_t i = 0; i < FILES; i++)
		assert_true(ts_memory_put(m, files[i].path, files[i].text, strlen(files[i].text)));
}

/* One call; its exit code. */
static int run(struct ts_memory *m, const char *const *words)
{
	char room[WORDS_MOST][64], *argv[WORDS_MOST + 2], name[] = "tapshoal";
	struct ts_catalogue catalogue;
	int argc = 1, code;

	argv[0] = name;
	for (; words[argc - 1]; argc++) {
		snprintf(room[argc - 1], sizeof room[0], "%s", words[argc - 1]);
		argv[argc] = room[argc - 1];
	}
	argv[argc] = NULL;
	ts_catalogue_open(&catalogue, NULL);
	catalogue.system = &m->system;
	code = program_run(&m->system, argc, argv, &catalogue);
	ts_catalogue_close(&catalogue);
	for (int i = 0; i < TS_MEMORY_OPEN_MOST; i++)
		assert_false(m->open[i].used || m->writers[i].used);
	return code;
}

static bool same(const char *a, const char *b)
{
	return a && b && strcmp(a, b) == 0;
}

/* Every file is the old or the whole new one, and the answer none or the whole one. */
static void hold(const char *what, int code, const struct ts_memory *m, int good_code,
	const struct ts_memory *good)
{
	const char *out = ts_text_get(&m->out), *whole = ts_text_get(&good->out);
	bool fine = code == 3 || (code == good_code && same(out, whole)) || code == 1 || code == 2;

	for (size_t i = 0; i < FILES; i++) {
		const char *now = ts_memory_get(m, files[i].path);

		fine &= same(now, files[i].text) || same(now, ts_memory_get(good, files[i].path));
	}
	fine &= !*out || same(out, whole) || code == good_code || code == 1;
	if (!fine)
		print_error("%s: exit %d, without a fault %d; '%s'\n", what, code, good_code, out);
	assert_true(fine);
}

static void test_system__each_step_fails_in_turn(void **state)
{
	static const int reasons[] = {EIO, ENOSPC, ENOENT, EACCES};
	size_t tried = 0;

	(void)state;
	for (size_t c = 0; c < CALLS; c++) {
		struct ts_memory good;
		int good_code;

		fill(&good);
		good_code = run(&good, calls[c]);
		assert_in_range(good_code, 0, 1);
		for (int step = 0; step < TS_MEMORY_STEPS; step++) {
			for (size_t at = 1; at <= good.faults[step].calls; at++) {
				struct ts_memory m;
				char what[80];
				int code;

				fill(&m);
				m.faults[step].after = at;
				/* what is not there is left out of a catalogue */
				m.faults[step].why = step == TS_MEMORY_LOOK ? EIO : reasons[at % 4];
				snprintf(what, sizeof what, "%s, step %d, call %zu", calls[c][0],
					step, at);
				code = run(&m, calls[c]);
				hold(what, code, &m, good_code, &good);
				/* what is written must have been */
				if (step >= TS_MEMORY_CREATE && step <= TS_MEMORY_FINISH)
					assert_int_equal(code, 3);
				ts_memory_close(&m);
				tried++;
			}
		}
		ts_memory_close(&good);
	}
	print_message("# %zu steps failed\n", tried);
	assert_true(tried > 200);
}

static void test_system__a_full_disk_leaves_every_file(void **state)
{
	(void)state;
	for (size_t c = 0; c < CALLS; c++) {
		struct ts_memory good, m;
		int good_code, code;
		size_t held = 0;

		fill(&good);
		good_code = run(&good, calls[c]);
		fill(&m);
		for (size_t i = 0; i < m.count; i++)
			held += m.files[i].bytes.len;
		m.disk = held + 1;
		code = run(&m, calls[c]);
		hold("a full disk", code, &m, good_code, &good);
		if (good.faults[TS_MEMORY_CREATE].calls > 1)
			assert_int_equal(code, 3);
		ts_memory_close(&m);
		ts_memory_close(&good);
	}
}

/* A system whose file is gone, or another one, as soon as it has been read. */
static struct ts_memory gone;
static const char *victim, *changed;
static void (*close_before)(void *state, int handle);
static int (*create_before)(void *state, const char *path, int over, int *ret);

static int create_after_change(void *state, const char *path, int over, int *ret)
{
	if (path && strcmp(path, victim) == 0) {
		if (changed)
			assert_true(ts_memory_put(&gone, victim, changed, strlen(changed)));
		else
			ts_memory_remove(&gone, victim);
	}
	return create_before(state, path, over, ret);
}

static void test_system__what_somebody_saves_meanwhile_stays(void **state)
{
	static const char *const words[WORDS_MOST] = {"note", "tap.yaml", "GH=15"};

	(void)state;
	for (int i = 0; i < 2; i++) {
		fill(&gone);
		victim = "tap.yaml";
		changed = i ? "kind: tap\nreadings:\n  - {GH: 3 dH}\n" : NULL;
		create_before = gone.system.create;
		gone.system.create = create_after_change;
		assert_int_equal(run(&gone, words), 3);
		if (changed)
			assert_string_equal(ts_memory_get(&gone, victim), changed);
		else
			assert_null(ts_memory_get(&gone, victim));
		ts_memory_close(&gone);
	}
}

static void close_and_remove(void *state, int handle)
{
	close_before(state, handle);
	ts_memory_remove(&gone, victim);
}

static void test_system__a_file_vanishes_between_two_looks(void **state)
{
	static const char *const names[] = {
		"tap.yaml", "tank.yaml", "plan.yaml", "records/exempla-mollis.yaml", "report.txt"};

	(void)state;
	for (size_t c = 0; c < CALLS; c++) {
		for (size_t n = 0; n < sizeof names / sizeof *names; n++) {
			int code;

			fill(&gone);
			victim = names[n];
			close_before = gone.system.close;
			gone.system.close = close_and_remove;
			code = run(&gone, calls[c]);
			assert_in_range(code, 0, 3);
			ts_memory_close(&gone);
		}
	}
}

static void test_system__an_answer_replaces_nothing_it_was_made_of(void **state)
{
	static const char *const words[][WORDS_MOST] = {
		{"water", "tap.yaml", "-o", "tap.yaml"},
		{"water", "tap.yaml", "-o", "./records/../tap.yaml"},
		{"check", "plan.yaml", NARROW, "-o", "tank.yaml"},
		{"rank", NARROW, READ, "-o", "records/exempla-mollis.yaml"},
		{"read", "report.txt", "-o", "report.txt"},
	};

	(void)state;
	for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
		struct ts_memory m;

		fill(&m);
		assert_int_equal(run(&m, words[i]), 2);
		for (size_t f = 0; f < FILES; f++)
			assert_string_equal(ts_memory_get(&m, files[f].path), files[f].text);
		ts_memory_close(&m);
	}
}

static void test_system__only_ordinary_files_are_opened_for_a_file(void **state)
{
	static const char *const words[WORDS_MOST] = {"check", "plan.yaml", NARROW};
	struct ts_memory m;

	(void)state;
	fill(&m);
	assert_true(ts_memory_put_other(&m, "tap.yaml"));
	assert_int_equal(run(&m, words), 2);
	assert_int_equal(ts_text_get(&m.out)[0], '\0');
	ts_memory_close(&m);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_system__each_step_fails_in_turn),
		cmocka_unit_test(test_system__a_full_disk_leaves_every_file),
		cmocka_unit_test(test_system__what_somebody_saves_meanwhile_stays),
		cmocka_unit_test(test_system__a_file_vanishes_between_two_looks),
		cmocka_unit_test(test_system__an_answer_replaces_nothing_it_was_made_of),
		cmocka_unit_test(test_system__only_ordinary_files_are_opened_for_a_file),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
