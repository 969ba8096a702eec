/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The asker of the public library: it answers as the program does, keeps what was put and written,
 * touches nothing outside its memory, prints nothing, and two of them know nothing of each other.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <tapshoal/tapshoal.h>
#include <unistd.h>

static const char tap[] = "kind: tap\nname: invented\n"
			  "readings:\n  - {date: 2026-03-01, GH: 14 dH, KH: 9 dH, pH: 7.6}\n";

static struct ts_asker *opened(void)
{
	struct ts_asker *asker = ts_asker_open();

	assert_non_null(asker);
	assert_int_equal(ts_asker_folder(asker, TEST_DATA "/catalogue", NULL), TS_OK);
	assert_true(ts_asker_today(asker, "2026-03-05"));
	assert_true(ts_asker_put(asker, "tap.yaml", tap, strlen(tap)));
	return asker;
}

static void answers_again_and_again(void **state)
{
	static const char *const rank[] = {"rank", "-w", "tap.yaml", "--temperature", "24", NULL};
	static const char *const hard[] = {"rank", "--GH", "30", "--KH", "20", "-f", "json", NULL};
	struct ts_asker *asker = opened();
	char first[20000];

	(void)state;
	assert_int_equal(ts_ask(asker, rank), TS_OK);
	assert_in_range(strlen(ts_asker_answer(asker)), 200, sizeof first - 1);
	strcpy(first, ts_asker_answer(asker));
	assert_non_null(strstr(first, "GH 14, KH 9, pH 7.6"));
	assert_string_equal(ts_asker_messages(asker), "");
	assert_true(ts_ask(asker, hard) <= TS_NO);
	assert_int_equal(*ts_asker_answer(asker), '{');
	assert_null(strstr(ts_asker_answer(asker), "invented"));
	assert_int_equal(ts_ask(asker, rank), TS_OK);
	assert_string_equal(ts_asker_answer(asker), first);
	ts_asker_close(asker);
}

static void what_is_wrong_is_a_message(void **state)
{
	static const char *const flag[] = {"rank", "--GHH", "14", NULL};
	static const char *const file[] = {"rank", "-w", "/etc/hostname", NULL};
	static const char *const none[] = {NULL};
	struct ts_asker *asker = opened();

	(void)state;
	assert_int_equal(ts_ask(asker, flag), TS_BAD_INPUT);
	assert_string_equal(ts_asker_answer(asker), "");
	assert_non_null(strstr(ts_asker_messages(asker), "--GH"));
	/* Files of the machine are none of its own. */
	assert_int_equal(ts_ask(asker, file), TS_SYSTEM);
	assert_non_null(strstr(ts_asker_messages(asker), "/etc/hostname"));
	assert_int_equal(ts_ask(asker, none), TS_BAD_INPUT);
	assert_false(ts_asker_today(asker, "2026-13-45"));
	ts_asker_close(asker);
}

static void writes_into_its_memory(void **state)
{
	static const char *const note[] = {"note", "tap.yaml", "GH=15", NULL};
	static const char *const out[] = {
		"rank", "-w", "tap.yaml", "-f", "json", "-o", "answer.json", NULL};
	struct ts_asker *asker = opened(), *other = opened();

	(void)state;
	assert_int_equal(ts_ask(asker, note), TS_OK);
	assert_non_null(strstr(ts_asker_get(asker, "tap.yaml"), "15"));
	assert_non_null(strstr(ts_asker_get(asker, "tap.yaml"), "2026-03-05"));
	assert_string_equal(ts_asker_get(other, "tap.yaml"), tap);
	assert_int_equal(ts_ask(asker, out), TS_OK);
	assert_int_equal(*ts_asker_get(asker, "answer.json"), '{');
	assert_null(ts_asker_get(other, "answer.json"));
	assert_int_not_equal(access("answer.json", F_OK), 0);
	ts_asker_close(asker);
	ts_asker_close(other);
}

/* Records of one call are read from its memory, and are gone with the next. */
static void records_of_a_call(void **state)
{
	static const char *const lint[] = {"find", "--only-catalogue", "--catalogue", "mine", NULL};
	static const char *const find[] = {"find", "mollis", NULL};
	struct ts_asker *asker = opened();

	(void)state;
	assert_true(ts_ask(asker, lint) >= TS_BAD_INPUT);
	assert_non_null(strstr(ts_asker_messages(asker), "mine"));
	assert_int_equal(ts_ask(asker, find), TS_OK);
	assert_non_null(strstr(ts_asker_answer(asker), "mollis"));
	ts_asker_close(asker);
}

/* What goes to the process's own outputs while `words` are asked: bytes. */
static long printed(struct ts_asker *asker, const char *const *words, int fd)
{
	FILE *file = tmpfile();
	const int own = dup(fd);
	long len;

	assert_non_null(file);
	assert_true(own >= 0 && dup2(fileno(file), fd) == fd);
	(void)!ts_ask(asker, words);
	fflush(NULL);
	assert_int_equal(dup2(own, fd), fd);
	close(own);
	fseek(file, 0, SEEK_END);
	len = ftell(file);
	fclose(file);
	return len;
}

static void prints_nothing(void **state)
{
	static const char *const calls[][6] = {{"rank", "-w", "tap.yaml", NULL},
		{"rank", "--GHH", "14", NULL}, {"water", "-w", "gone.yaml", NULL},
		{"--version", NULL}, {"help", "why", NULL}, {NULL}};
	struct ts_asker *asker = opened();

	(void)state;
	fflush(NULL);
	for (size_t i = 0; i < sizeof calls / sizeof *calls; i++) {
		assert_int_equal(printed(asker, calls[i], STDOUT_FILENO), 0);
		assert_int_equal(printed(asker, calls[i], STDERR_FILENO), 0);
	}
	ts_asker_close(asker);
	ts_asker_close(NULL);
}

static void an_image_that_is_none(void **state)
{
	struct ts_asker *asker = ts_asker_open();

	(void)state;
	assert_non_null(asker);
	assert_int_equal(ts_asker_image(asker, tap, sizeof tap), TS_NO);
	assert_int_equal(ts_asker_folder(asker, TEST_DATA "/no such folder", NULL), TS_SYSTEM);
	ts_asker_close(asker);
}

/* A practice value of the user's own, read for the functions that take some, is what they use. */
static void practice_of_ones_own(void **state)
{
	struct ts_tank tank = {.length_cm = 100, .width_cm = 40, .height_cm = 40};
	const struct ts_practice *standard = NULL, *own = NULL;
	char path[] = "/tmp/practice-XXXXXX";
	const int fd = mkstemp(path);
	struct ts_findings findings;
	struct ts_arena arena;
	FILE *file;

	(void)state;
	assert_true(fd >= 0);
	file = fdopen(fd, "w");
	assert_non_null(file);
	fputs("tank.net: 0.5\n", file);
	fclose(file);
	ts_arena_open(&arena, NULL);
	ts_findings_open(&findings, NULL);
	assert_int_equal(ts_practice_read(NULL, &arena, &standard, &findings), TS_OK);
	assert_int_equal(ts_practice_read(path, &arena, &own, &findings), TS_OK);
	assert_true(ts_tank_net_l(&tank, standard) == ts_tank_net_l(&tank, NULL));
	assert_true(ts_tank_net_l(&tank, own) < ts_tank_net_l(&tank, standard));
	file = fopen(path, "w");
	assert_non_null(file);
	fputs("tank.no-such: 0.5\n", file);
	fclose(file);
	assert_int_equal(ts_practice_read(path, &arena, &own, &findings), TS_BAD_INPUT);
	assert_int_equal(findings.errors, 1);
	unlink(path);
	assert_int_equal(ts_practice_read(path, &arena, &own, &findings), TS_SYSTEM);
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(answers_again_and_again),
		cmocka_unit_test(what_is_wrong_is_a_message),
		cmocka_unit_test(writes_into_its_memory), cmocka_unit_test(records_of_a_call),
		cmocka_unit_test(prints_nothing), cmocka_unit_test(an_image_that_is_none),
		cmocka_unit_test(practice_of_ones_own)};

	cmocka_set_message_output(CM_OUTPUT_TAP);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
