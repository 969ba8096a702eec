/* SPDX-License-Identifier: Apache-2.0 */
/* A command run in this process, as main runs it, its answer kept in memory. */
#ifndef TESTS_FUZZ_SESSION_H
#define TESTS_FUZZ_SESSION_H

#include <tapshoal/catalogue.h>

#include "holds.h"

/* The frozen records of tests/data/catalogue, loaded once. */
const struct ts_catalogue *frozen_catalogue(void);

/* The system in which the files of an input lie, and nothing else. */
const struct ts_system *memory_system(void);

/* A file of these bytes that can be opened by name until the next call for the same `slot`. */
const char *file_of(int slot, const void *bytes, size_t size);

/*
 * Runs `arguments` (the command first, NULL behind the last) over a copy of `catalogue`, or over
 * the frozen one where it is NULL, and asserts what holds for every answer: a status that a command
 * may have, a reason where it is no answer, valid UTF-8, and no figure that is not a number.
 */
enum ts_status run_command(const char *const *arguments, const struct ts_catalogue *catalogue);

/*
 * A call as words. CALL_ONE and CALL_TWO stand for the files of an input, CALL_FIRST and
 * CALL_SECOND for the same as half of a mixture.
 */
#define CALL_WORDS_MOST 9
#define CALL_ONE "\1"
#define CALL_TWO "\2"
#define CALL_FIRST "\3"
#define CALL_SECOND "\4"
typedef const char *call_words[CALL_WORDS_MOST];

/*
 * Runs one of `count` calls over the frozen catalogue: the first byte says which, the second in
 * which of its formats, the rest is one file or, around a line "%%", two.
 */
void run_input(const call_words *calls, size_t count, const uint8_t *data, size_t size);

#endif
