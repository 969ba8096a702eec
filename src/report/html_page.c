/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The element stack of the page writer, and the one place where texts are escaped.
 */
#include "report/html_page.h"

#include <string.h>
#include <utf8proc.h>

#include "report/shown.h"

static void end_tag(struct ts_page *page)
{
	if (page->in_tag)
		ts_text_put(page->out, ">");
	page->in_tag = false;
}

void ts_page_open(struct ts_page *page, const char *name)
{
	end_tag(page);
	if (page->depth == TS_ELEMENTS_MOST) {
		page->out->failed = true;
		return;
	}
	ts_text_puts(page->out, "<", name, NULL);
	page->open[page->depth++] = name;
	page->in_tag = true;
}

/* Elements that HTML knows as empty, and those of a drawing; others keep a closing tag. */
static bool may_be_short(const char *name)
{
	static const char *const names[] = {"meta", "path", "line", "use", NULL};

	for (size_t i = 0; names[i]; i++) {
		if (strcmp(names[i], name) == 0)
			return true;
	}
	return false;
}

void ts_page_close(struct ts_page *page)
{
	const char *name;

	if (!page->depth)
		return;
	name = page->open[--page->depth];
	if (page->in_tag && may_be_short(name)) {
		ts_text_put(page->out, "/>");
		page->in_tag = false;
		return;
	}
	end_tag(page);
	ts_text_puts(page->out, "</", name, ">", NULL);
}

/* One character, and how many bytes it had. */
static size_t escaped_one(struct ts_text *out, const char *text, size_t len)
{
	utf8proc_int32_t point = -1;
	utf8proc_ssize_t used =
		utf8proc_iterate((const utf8proc_uint8_t *)text, (utf8proc_ssize_t)len, &point);
	size_t step = used > 0 ? (size_t)used : 1;

	if (used <= 0 || !(ts_shown_harmless(point) || point == '\t' || point == '\n'))
		ts_text_put(out, "\xef\xbf\xbd");
	else if (point == '&')
		ts_text_put(out, "&amp;");
	else if (point == '<')
		ts_text_put(out, "&lt;");
	else if (point == '>')
		ts_text_put(out, "&gt;");
	else if (point == '"')
		ts_text_put(out, "&quot;");
	else if (point == '\'')
		ts_text_put(out, "&#39;");
	else
		ts_text_add(out, text, step);
	return step;
}

static void escaped(struct ts_text *out, const char *text)
{
	for (size_t len = strlen(text); len;) {
		size_t step = escaped_one(out, text, len);

		text += step;
		len -= step;
	}
}

/*
 * Letters of a long word that stay together, of how many on it is one, of units (mmol/L), and of a
 * cell that is short.
 */
enum { TOGETHER = 10, WORD_LEAST = 16, UNIT_MOST = 5, SHORT_MOST = 11 };

/* "100 L": the blank at `text` stands between a figure and what is short enough for its unit. */
static bool before_unit(const char *text, size_t at)
{
	size_t unit = strcspn(text + 1, " ");

	return at && text[-1] >= '0' && text[-1] <= '9' && unit && unit < UNIT_MOST &&
	       (text[1] < '0' || text[1] > '9');
}

void ts_page_cell(struct ts_page *page, const char *text, bool head)
{
	size_t len = strlen(text), word = strcspn(text, " "), at = 0;
	bool short_cell = !head && len <= SHORT_MOST;

	end_tag(page);
	while (len) {
		bool whole = *text == ' ' && (short_cell || before_unit(text, at));
		size_t step;

		if (word >= WORD_LEAST && at && at % TOGETHER == 0)
			ts_text_put(page->out, "<wbr/>");
		step = whole ? 1 : escaped_one(page->out, text, len);
		if (whole)
			ts_text_put(page->out, "&#160;");
		if (*text == '/' && at > UNIT_MOST && text[1] && text[1] != ' ')
			ts_text_put(page->out, "<wbr/>");
		at = *text == ' ' ? 0 : at + 1;
		word = *text == ' ' ? strcspn(text + 1, " ") : word;
		text += step;
		len -= step;
	}
}

void ts_page_text(struct ts_page *page, const char *text)
{
	end_tag(page);
	if (text)
		escaped(page->out, text);
}

void ts_page_element(struct ts_page *page, const char *name, const char *text)
{
	ts_page_open(page, name);
	ts_page_text(page, text);
	ts_page_close(page);
}

void ts_page_attribute(struct ts_page *page, const char *name, const char *value)
{
	if (!page->in_tag || !value)
		return;
	ts_text_puts(page->out, " ", name, "=\"", NULL);
	escaped(page->out, value);
	ts_text_put(page->out, "\"");
}

void ts_page_number(struct ts_page *page, double value, int decimals)
{
	end_tag(page);
	ts_text_number_short(page->out, value, decimals);
}

void ts_page_raw(struct ts_page *page, const char *bytes)
{
	end_tag(page);
	ts_text_put(page->out, bytes);
}

const char *ts_page_hue(enum ts_hue hue)
{
	static const char *const classes[TS_HUE__COUNT] = {NULL, "gh", "kh", "ph", "te"};

	return classes[hue];
}
