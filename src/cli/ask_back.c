/* SPDX-License-Identifier: Apache-2.0 */
/*
 * ask-back: the word of a question becomes what to ask whoever asked it.
 */
#include "answers/ask_back.h"

#include "cli/commands.h"
#include "report/ask_back_result.h"
#include "show/ask_back.h"

enum ts_status command_ask_back(struct session *s)
{
	const struct options *o = s->options;
	struct ts_ask_back_result result;
	struct ts_document doc;
	enum ts_status status;

	if (o->argument_count > 1) {
		ts_text_put(s->error, "ask-back takes one question; tapshoal ask-back lists them");
		return TS_BAD_INPUT;
	}
	status =
		ts_ask_back(s->arena, o->argument_count ? o->arguments[0] : NULL, o->page, &result);
	if (status == TS_NO) {
		ts_text_puts(s->error, "'", o->arguments[0], "' is no question; there are", NULL);
		for (size_t i = 0; ts_ask_back_id(i); i++)
			ts_text_puts(s->error, i ? ", " : " ", ts_ask_back_id(i), NULL);
		return TS_BAD_INPUT;
	}
	if (status)
		return status;
	if (o->format == FORMAT_JSON) {
		session_json(s, "ask-back", &ts_result_ask_back, &result);
		return TS_OK;
	}
	ts_doc_open(&doc, s->arena, "What to ask back");
	ts_show_ask_back(&doc, &result);
	session_write(s, &doc);
	return TS_OK;
}
