/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Signs of distress as somebody writes them: "gasping", "all clamped fins since weeks", "one lying
 * on the bottom for 3 days".
 */
#ifndef TS_RECORDS_SIGNS_H
#define TS_RECORDS_SIGNS_H

#include <tapshoal/plan.h>

/*
 * Reads one sign by the phrases of model/phrases.c, in any order. False: no sign is named, and
 * `*at` (where given) is the first word that is no phrase, or NULL.
 */
bool ts_sign_words(const char *words, struct ts_sign *ret, const char **at);

/*
 * Looks for a sign among words that may be anything: what is seen first, how many, since when, and
 * whether a sign is among them at all. False: something is denied ("no spots").
 */
bool ts_sign_within(const char *words, struct ts_sign *ret, bool *ret_named);

/* Words that name no sign tell more of one that was named before: how many, since when. */
bool ts_sign_more(const char *words, struct ts_sign *io);

/*
 * Bytes at the start of a sentence that are phrases of a sign; 0: neither a sign is among them nor
 * what was done before, of which alone `*ret_after` tells.
 */
size_t ts_sign_span(const char *words, bool *ret_after);

/*
 * Bytes of `at` that are this phrase of lower case, whatever its case and with '-' or '_' for a
 * blank; 0: it is not, or its last word goes on.
 */
size_t ts_phrase_length(const char *at, const char *phrase);

/* Bytes of the sign that the words begin with; 0: with none. */
size_t ts_is_sign(const char *words);

/* An onset alone: "3 days", "since weeks", "now"; a breadth alone: "most". -1: it is none. */
int ts_onset_words(const char *words);
int ts_breadth_words(const char *words);

#endif
