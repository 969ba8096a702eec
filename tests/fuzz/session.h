/* SPDX-License-Identifier: Apache-2.0 */
/* A command run in this process, as main runs it, its answer kept in memory. */
#ifndef TESTS_FUZZ_SESSION_H
#define TESTS_FUZZ_SESSION_H

#include <tapshoal/catalogue.h>

#include "holds.h"

/* The frozen records of tests/data/catalogue, loaded once. */
const struct ts_catalogue *frozen_catalogue(void);

/* A file of these bytes that can be opened by name until the next call for the same `slot`. */
const char *file_of(int slot, const void *bytes, size_t size);

/*
 * Runs `arguments` (the command first, NULL behind the last) over a copy of `catalogue`, or over
 * the frozen one where it is NULL, and asserts what holds for every answer: a status that a command
 * may have, a reason where it is no answer, valid UTF-8, and no figure that is not a number.
 */
enum ts_status run_command(const char *const *arguments, const struct ts_catalogue *catalogue);

#endif
