/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Every question that the program answers, asked from C: rank, why, check, propose, water, remake,
 * drift, due, read and the others. The words are those of the command line (docs/, `--help`), so
 * that a reading is its key and its value with a unit ("--GH", "14 dH"); the answer is the same
 * text, page, CSV or JSON, whose keys docs/schemas describes. Nothing is printed, and no file of
 * the machine is read or written but the records that ts_asker_folder() names: files of a call are
 * those put into the asker's memory. For single figures without words see match.h, stock.h and
 * care.h.
 *
 * An asker serves one thread at a time; several askers know nothing of one another.
 */
#ifndef TAPSHOAL_ASK_H
#define TAPSHOAL_ASK_H

#include <tapshoal/base.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Records, files by name, a day; opaque. */
struct ts_asker;

/*
 * A new asker without records, on malloc's memory; NULL: there is none. ts_asker_close() frees it
 * and all that it handed out.
 */
TS_API TS_MUST_USE struct ts_asker *ts_asker_open(void);
/* NULL is fine. */
TS_API void ts_asker_close(struct ts_asker *asker);

/*
 * Adds the species records of a folder of the machine, or of the image that the build writes
 * (`species.image`; the bytes must stay until the asker is closed). Later ones go over those
 * before. TS_BAD_INPUT: a record is wrong, `findings` (may be NULL) say how; TS_SYSTEM: the folder
 * cannot be read; TS_NO: the image is of another version, or damaged.
 */
TS_API TS_MUST_USE enum ts_status ts_asker_folder(
	struct ts_asker *asker, const char *folder, struct ts_findings *findings);
TS_API TS_MUST_USE enum ts_status ts_asker_image(
	struct ts_asker *asker, const void *bytes, size_t len);

/*
 * Puts a file under a name that words of a call may use (a water, tank or plan, a report, a
 * practice table; "-" is standard input), in place of one of that name. A copy is taken. False: no
 * memory.
 */
TS_API TS_MUST_USE bool ts_asker_put(
	struct ts_asker *asker, const char *name, const void *bytes, size_t len);
/*
 * What stands in a file, those that calls wrote (`-o`, `--plan-out`, note, keep) too; NULL: there
 * is none of that name. Good until the next call with this asker.
 */
TS_API const char *ts_asker_get(const struct ts_asker *asker, const char *name);

/* Sets the day of all further calls, "2026-03-01". False: it is none. Else it is the machine's. */
TS_API TS_MUST_USE bool ts_asker_today(struct ts_asker *asker, const char *day);

/*
 * Asks: `words` behind the program's name, a NULL behind the last, such as {"rank", "--GH", "14",
 * "--KH", "9", "-f", "json", NULL}. TS_OK: yes, or the answer was given; TS_NO: no, or it cannot be
 * given; TS_BAD_INPUT: the call or a file is wrong; TS_SYSTEM: a file could not be read or written;
 * TS_NO_MEMORY.
 */
TS_API TS_MUST_USE enum ts_status ts_ask(struct ts_asker *asker, const char *const *words);
/* The last call's answer, and what was said beside it; never NULL, good until the next call. */
TS_API const char *ts_asker_answer(const struct ts_asker *asker);
TS_API const char *ts_asker_messages(const struct ts_asker *asker);

#ifdef __cplusplus
}
#endif

#endif
