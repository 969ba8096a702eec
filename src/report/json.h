/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writing JSON (RFC 8259): a few calls that place commas, indentation and escapes. Numbers have
 * fixed decimals; what is not known or not finite is null.
 */
#ifndef TS_REPORT_JSON_H
#define TS_REPORT_JSON_H

#include "base/text.h"

#define TS_JSON_DEPTH 32

struct ts_json {
	struct ts_text *text;
	unsigned depth;
	bool line;                  /* all on one line, without blanks */
	bool filled[TS_JSON_DEPTH]; /* something stands in this level already */
};

/* Opens a writer on an open text; the text carries any failure. Set `line` for one line. */
void ts_json_open(struct ts_json *json, struct ts_text *text);
/* Opens an object or a list; `key` NULL inside a list or at the top. */
void ts_json_object(struct ts_json *json, const char *key);
void ts_json_list(struct ts_json *json, const char *key);
/* Closes what was opened last. */
void ts_json_end_object(struct ts_json *json);
void ts_json_end_list(struct ts_json *json);
/* One value; NULL text is null. Invalid UTF-8 becomes U+FFFD. */
void ts_json_text(struct ts_json *json, const char *key, const char *value);
void ts_json_number(struct ts_json *json, const char *key, double value, int decimals);
void ts_json_bool(struct ts_json *json, const char *key, bool value);

#endif
