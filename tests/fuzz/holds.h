/* SPDX-License-Identifier: Apache-2.0 */
/* What every fuzz target asserts of an answer: a claim that does not hold ends the process. */
#ifndef TESTS_FUZZ_HOLDS_H
#define TESTS_FUZZ_HOLDS_H

#include <stdint.h>

#include <tapshoal/catalogue.h>

#include "intake/report.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* Aborts when it does not. */
void hold(bool what);

/* Figures finite and in their quantity's range, lines that exist, texts everywhere. */
void hold_report(const struct ts_report *report);

/* Every byte belongs to a valid UTF-8 sequence. */
void hold_utf8(const char *text, size_t len);

/* One JSON value and nothing behind it; every figure is one. */
void hold_json(const char *text);

/* Each says what and what would be right. */
void hold_findings(const struct ts_findings *findings);

/* What is given is finite and lies within its span. */
void hold_profile(const struct ts_water *water);

#endif
