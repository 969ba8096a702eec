/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Pages: every kind of node, texts that try to leave their place, marks and charts. That a whole
 * page is well-formed and holds no address is tests/page.py.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include "report/html.h"

struct kit {
	struct ts_arena arena;
	struct ts_document doc;
	struct ts_text out;
};

static void open_kit(struct kit *kit, const char *title)
{
	ts_arena_open(&kit->arena, NULL);
	ts_text_open(&kit->out, NULL);
	ts_doc_open(&kit->doc, &kit->arena, title);
}

/* The page from its main element on. */
static const char *page(struct kit *kit)
{
	const char *body;

	ts_html_write(&kit->out, &kit->doc);
	assert_false(kit->out.failed);
	body = strstr(ts_text_get(&kit->out), "<main>");
	assert_non_null(body);
	return body;
}

static void close_kit(struct kit *kit)
{
	ts_text_drop(&kit->out);
	ts_arena_drop(&kit->arena);
}

#define HAS(text, part) assert_non_null(strstr(text, part))
#define LACKS(text, part) assert_null(strstr(text, part))

static void test_html__text_is_escaped(void **state)
{
	struct kit kit;
	const char *body;

	(void)state;
	open_kit(&kit, "</title><script>alert(1)</script>");
	ts_doc_paragraph(&kit.doc, "<img src=x onerror='a()'> & \"tap\"");
	body = page(&kit);
	HAS(body, "<p>&lt;img src=x onerror=&#39;a()&#39;&gt; &amp; &quot;tap&quot;</p>");
	LACKS(ts_text_get(&kit.out), "<script>alert");
	HAS(ts_text_get(&kit.out), "<title>&lt;/title&gt;&lt;script&gt;alert(1)");
	close_kit(&kit);
}

static void test_html__no_control_no_broken_utf8_no_turned_text(void **state)
{
	struct kit kit;

	(void)state;
	open_kit(&kit, "t");
	ts_doc_paragraph(&kit.doc, "a\x01"
				   "b\xff"
				   "c\xe2\x80\xae"
				   "d\xc2\x85"
				   "e");
	HAS(page(&kit), "<p>a\xef\xbf\xbd"
			"b\xef\xbf\xbd"
			"c\xef\xbf\xbd"
			"d\xef\xbf\xbd"
			"e</p>");
	close_kit(&kit);
}

static void test_html__attributes_are_escaped_and_odd_names_left_out(void **state)
{
	struct kit kit;
	struct ts_node *entry;
	const char *body;

	(void)state;
	open_kit(&kit, "t");
	entry = ts_doc_entry(&kit.doc, "Exempla <b>mala</b>: 4 cm");
	ts_doc_tag(&kit.doc, entry, "family", "\"><script>x</script>");
	ts_doc_tag(&kit.doc, entry, "on click=", "x");
	body = page(&kit);
	HAS(body, "<li data-family=\"&quot;&gt;&lt;script&gt;x&lt;/script&gt;\">"
		  "<b>Exempla &lt;b&gt;mala&lt;/b&gt;</b>: 4 cm</li>");
	LACKS(body, "click");
	close_kit(&kit);
}

static void test_html__verdict_headings_caution_and_see(void **state)
{
	struct kit kit;
	const char *body;

	(void)state;
	open_kit(&kit, "Title");
	ts_doc_verdict(&kit.doc, "it suits", "GH 5");
	ts_doc_heading(&kit.doc, 0, "Section");
	ts_doc_heading(&kit.doc, 1, "Part");
	ts_doc_caution(&kit.doc, "acid burns");
	ts_doc_see(&kit.doc, "the guide");
	body = page(&kit);
	HAS(body, "<h1>Title</h1>");
	HAS(body, "<h2 class=\"verdict\">it suits</h2><p class=\"number\">GH 5</p>");
	HAS(body, "<h2>Section</h2>");
	HAS(body, "<h3>Part</h3>");
	HAS(body, "<p class=\"caution\">Acid burns.</p>");
	HAS(body, "<p class=\"see\">the guide</p>");
	close_kit(&kit);
}

static void test_html__facts_without_a_label_belong_to_the_last(void **state)
{
	struct kit kit;
	struct ts_node *facts;

	(void)state;
	open_kit(&kit, "t");
	facts = ts_doc_facts(&kit.doc, 0);
	ts_doc_line(&kit.doc, facts, "Assumed", "one", "note", NULL);
	ts_doc_line(&kit.doc, facts, "", "two", NULL);
	ts_doc_line(&kit.doc, facts, "Load", "three", NULL);
	HAS(page(&kit), "<dl><div><dt>Assumed</dt><dd>one  note</dd><dd>two</dd></div>"
			"<div><dt>Load</dt><dd>three</dd></div></dl>");
	close_kit(&kit);
}

static void test_html__table_names_columns_and_rows(void **state)
{
	struct kit kit;
	struct ts_node *table;

	(void)state;
	open_kit(&kit, "t");
	table = ts_doc_table(&kit.doc);
	ts_doc_line(&kit.doc, table, "day", "KH", NULL);
	ts_doc_line(&kit.doc, table, "0", "4.0", NULL);
	HAS(page(&kit),
		"<table><thead><tr><th scope=\"col\">day</th><th scope=\"col\">KH</th></tr>\n"
		"</thead><tbody><tr><th scope=\"row\">0</th><td>4.0</td></tr>\n"
		"</tbody></table>");
	close_kit(&kit);
}

static void test_html__long_words_of_a_cell_may_break_and_short_cells_do_not(void **state)
{
	struct kit kit;
	struct ts_node *table;
	const char *body;

	(void)state;
	open_kit(&kit, "t");
	table = ts_doc_table(&kit.doc);
	ts_doc_line(&kit.doc, table, "a tap", "grains/US gal", "mmol/L", "first fill, 100 L", NULL);
	ts_doc_line(
		&kit.doc, table, "Gartenschlauchtrommel <2", "147 danger", "0.66 doubtful", NULL);
	ts_doc_line(&kit.doc, table, "fifteen-letters", "d\u00e9j\u00e0 v\u00fb", "a", NULL);
	body = page(&kit);
	HAS(body, ">a tap</th><th scope=\"col\">grains/<wbr/>US gal</th><th scope=\"col\">mmol/L<");
	HAS(body, ">first fill, 100&#160;L</th>");
	HAS(body, ">Gartenschl<wbr/>auchtromme<wbr/>l &lt;2</th>");
	HAS(body, "<td>147&#160;danger</td><td>0.66 doubtful</td>");
	HAS(body, ">fifteen-letters</th><td>d\u00e9j\u00e0&#160;v\u00fb</td>");
	close_kit(&kit);
}

static void test_html__empty_corner_of_a_table_is_no_heading(void **state)
{
	struct kit kit;
	struct ts_node *table;

	(void)state;
	open_kit(&kit, "t");
	table = ts_doc_table(&kit.doc);
	ts_doc_line(&kit.doc, table, "", "dH", NULL);
	HAS(page(&kit), "<tr><td></td><th scope=\"col\">dH</th></tr>");
	close_kit(&kit);
}

static void test_html__steps_are_an_ordered_list(void **state)
{
	struct kit kit;
	struct ts_node *steps;

	(void)state;
	open_kit(&kit, "t");
	steps = ts_doc_steps(&kit.doc);
	ts_doc_line(&kit.doc, steps, "day 1", "change 10 L", NULL);
	HAS(page(&kit), "<ol><li><b>day 1</b> <span>change 10 L</span></li></ol>");
	close_kit(&kit);
}

/* Neighbouring entries share one list; a bar that misses has a line from its foot to the reading.
 */
static void test_html__outline_reading_and_miss(void **state)
{
	struct kit kit;
	struct ts_node *entry;
	struct ts_bar bar = {.label = "GH",
		.hue = TS_HUE_GH,
		.tolerated = {0, 10},
		.preferred = {5, 5},
		.reading = {19, 21},
		.reading_at = 20,
		.miss = 15};
	const char *body;

	(void)state;
	open_kit(&kit, "t");
	ts_doc_bar(&kit.doc, ts_doc_entry(&kit.doc, "one"), &bar);
	entry = ts_doc_entry(&kit.doc, "two");
	ts_doc_bar(&kit.doc, entry, &bar);
	bar.hue = TS_HUE_KH;
	bar.miss = bar.reading_at = bar.reading.low = bar.reading.high = (double)NAN;
	bar.tolerated = bar.preferred = bar.reading;
	bar.label = "KH";
	ts_doc_bar(&kit.doc, entry, &bar);
	body = page(&kit);
	/* the scale is 30 dH on 72 px: 10 dH at 24, 20 dH at 48 */
	HAS(body, "<path class=\"gh\" d=\"M0 13L12 2H12L24 13M24 13H48\"/>");
	HAS(body, "<path class=\"w\" d=\"M50 14H46V16H50ZM48 16V1\"/>");
	HAS(body, "<p><i>GH 5..5, 15 over</i><i>KH ?</i></p>");
	HAS(body, "GH 0 to 30 dH");
	HAS(body, "aria-hidden=\"true\"");
	assert_null(strstr(strstr(body, "<ul") + 1, "<ul"));
	close_kit(&kit);
}

/* Two entries that ask about one water name its readings once; those about two each have their own.
 */
static void test_html__readings_of_another_water_are_drawn_anew(void **state)
{
	static const double at[] = {5, 5, 10};
	struct kit kit;
	const char *body;

	(void)state;
	open_kit(&kit, "t");
	for (size_t i = 0; i < sizeof at / sizeof *at; i++) {
		struct ts_node *entry = ts_doc_entry(&kit.doc, "one");
		struct ts_bar bar = {.label = "GH",
			.hue = TS_HUE_GH,
			.tolerated = {0, 10},
			.preferred = {5, 5},
			.reading = {at[i], at[i]},
			.reading_at = at[i]};

		ts_doc_bar(&kit.doc, entry, &bar);
		bar.hue = TS_HUE_KH;
		bar.label = "KH";
		ts_doc_bar(&kit.doc, entry, &bar);
	}
	body = page(&kit);
	HAS(body, "id=\"w0\"");
	HAS(body, "<use href=\"#w0\"");
	HAS(body, "id=\"w1\"");
	LACKS(body, "<use href=\"#w1\"");
	LACKS(strstr(body, "<use href=\"#w0\"") + 1, "<use href=\"#w0\"");
	close_kit(&kit);
}

/* A phone shows the page in its own width, and a browser keeps it from the net. */
static void test_html__head_has_letters_policy_and_width(void **state)
{
	struct kit kit;
	const char *head;

	(void)state;
	open_kit(&kit, "t");
	(void)page(&kit);
	head = ts_text_get(&kit.out);
	HAS(head, "<html lang=\"en\">");
	HAS(head, "<meta charset=\"utf-8\"/>");
	HAS(head, "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src "
		  "&#39;none&#39;;");
	HAS(head, "<meta name=\"viewport\" content=\"width=device-width");
	HAS(head, "<meta name=\"generator\" content=\"tapshoal ");
	close_kit(&kit);
}

/* What goes on beyond the scale has an arrow there and no end; a slope is cut as it falls. */
static void test_html__what_lies_beyond_a_scale_is_no_limit(void **state)
{
	static const struct {
		struct ts_range tolerated, preferred, reading;
		double at;
		const char *outline, *water;
	} rows[] = {
		{{(double)NAN, (double)INFINITY}, {(double)NAN, (double)NAN}, {1, 1}, 1, NULL,
			"M2 16V1"},
		{{15, (double)INFINITY}, {20, (double)INFINITY}, {40, 41}, 40,
			"M36 13L48 2H72M69 0L72 2L69 4", "M69 11L72 13L69 15"},
		{{15, 35}, {20, 25}, {28, 34}, 29, "M36 13L48 2H60V8H72M69 6L72 8L69 10",
			"M72 14H67V16H72M70 16V1"},
		{{15, (double)INFINITY}, {20, 25}, {25, 25}, 25,
			"M36 13L48 2H60V8H72M69 6L72 8L69 10", "M60 16V1"},
		{{15, 25}, {(double)NAN, (double)NAN}, {10, 10}, 10, "M36 13V8H60V13M36 13H24",
			"M24 16V1"},
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		const struct ts_bar bar = {.label = "GH",
			.hue = TS_HUE_GH,
			.tolerated = rows[i].tolerated,
			.preferred = rows[i].preferred,
			.reading = rows[i].reading,
			.reading_at = rows[i].at};
		struct kit kit;
		const char *body;

		open_kit(&kit, "t");
		ts_doc_bar(&kit.doc, ts_doc_entry(&kit.doc, "one"), &bar);
		body = page(&kit);
		if (rows[i].outline)
			HAS(body, rows[i].outline);
		HAS(body, rows[i].water);
		close_kit(&kit);
	}
}

static void test_html__what_is_printed_only_or_never_is_framed(void **state)
{
	struct kit kit;
	const char *body;

	(void)state;
	open_kit(&kit, "t");
	kit.doc.drawn = true;
	ts_doc_medium(&kit.doc, TS_ON_PAPER);
	ts_doc_entry(&kit.doc, "a");
	ts_doc_medium(&kit.doc, TS_ON_PAGES);
	ts_doc_entry(&kit.doc, "b");
	ts_doc_medium(&kit.doc, TS_OFF_PAPER);
	ts_doc_paragraph(&kit.doc, "c");
	body = page(&kit);
	HAS(body, "<div class=\"paper\">\n<ul class=\"entries\">\n<li>a</li>\n</ul>\n</div>\n"
		  "<ul class=\"entries\">\n<li>b</li>\n</ul>\n"
		  "<div class=\"screen\">\n<p>c</p>\n</div>\n</main>");
	close_kit(&kit);
}

static void test_html__what_is_of_pages_alone_is_not_built_for_others(void **state)
{
	struct kit kit;

	(void)state;
	open_kit(&kit, "t");
	ts_doc_medium(&kit.doc, TS_ON_PAPER);
	assert_null(ts_doc_entry(&kit.doc, "a"));
	ts_doc_medium(&kit.doc, TS_ON_PAGES);
	ts_doc_paragraph(&kit.doc, "b");
	assert_null(kit.doc.first);
	ts_doc_medium(&kit.doc, TS_OFF_PAPER);
	ts_doc_paragraph(&kit.doc, "c");
	assert_string_equal(kit.doc.first->text, "c");
	close_kit(&kit);
}

static void test_html__lists_of_animals_and_of_others(void **state)
{
	const struct ts_bar bar = {.label = "GH",
		.hue = TS_HUE_GH,
		.tolerated = {2, 18},
		.preferred = {4, 12},
		.reading = {(double)NAN, (double)NAN},
		.reading_at = (double)NAN};
	struct ts_node *node;
	struct kit kit;
	const char *body;

	(void)state;
	open_kit(&kit, "t");
	kit.doc.drawn = true;
	node = ts_doc_entry(&kit.doc, "one: 4 cm");
	ts_doc_tag(&kit.doc, node, "family", "Exemplidae");
	ts_doc_bar(&kit.doc, node, &bar);
	ts_doc_paragraph(&kit.doc, "between");
	node = ts_doc_entry(&kit.doc, "test: today");
	ts_doc_tag(&kit.doc, node, "when", "today");
	body = page(&kit);
	HAS(body, "<ul class=\"entries tagged listed\">\n<li "
		  "data-family=\"Exemplidae\"><b>one</b>: 4 cm");
	HAS(body, "<ul class=\"entries tagged\">\n<li data-when=\"today\"><b>test</b>: today");
	LACKS(body, "class=\"w\""); /* no reading, no upright */
	close_kit(&kit);
}

static void test_html__curve_breaks_at_gaps_and_says_its_marks(void **state)
{
	static const double x[] = {0, 1, 2, 3}, y[] = {8, (double)NAN, 6, 4};
	static const struct ts_series series = {"pH <now>", x, y, 4, TS_HUE_PH};
	static const struct ts_curve_mark mark = {3, "buffer gone"};
	static const struct ts_curve curve = {
		"Acid & buffer", "meq/L", "pH", 0, 1, &series, 1, &mark, 1, "at ", " meq/L"};
	struct kit kit;
	const char *body;

	(void)state;
	open_kit(&kit, "t");
	ts_doc_curve(&kit.doc, &curve);
	body = page(&kit);
	HAS(body, "Acid &amp; buffer (across: meq/L, upward: pH)</figcaption>");
	HAS(body, "d=\"M44 8M249.3 88L352 168\"");
	HAS(body, "pH &lt;now&gt;: from 8 to 4</li>");
	HAS(body, "<li>at 3 meq/L: buffer gone</li>");
	close_kit(&kit);
}

static void test_html__label_of_a_mark_hides_no_line(void **state)
{
	static const double x[] = {0, 1, 2, 3}, high[] = {8, 8, 7.9, 7.8}, low[] = {8, 4, 4, 4};
	static const struct ts_series series[] = {
		{"high", x, high, 4, TS_HUE_PH}, {"low", x, low, 4, TS_HUE_KH}};
	static const struct ts_curve_mark mark = {1, "buffer gone"};
	struct ts_curve curve = {"c", "days", "pH", 0, 1, series, 2, &mark, 1, "on day ", ""};
	struct kit kit;

	(void)state;
	open_kit(&kit, "t");
	ts_doc_curve(&kit.doc, &curve);
	HAS(page(&kit), "<text x=\"150.7\" y=\"34\" text-anchor=\"start\">buffer gone</text>");
	close_kit(&kit);
	curve.series = &series[1];
	curve.series_count = 1;
	open_kit(&kit, "t");
	ts_doc_curve(&kit.doc, &curve);
	HAS(page(&kit), "<text x=\"150.7\" y=\"18\" text-anchor=\"start\">buffer gone</text>");
	close_kit(&kit);
}

static void test_html__curve_without_a_point_is_left_out(void **state)
{
	static const double x[] = {0}, y[] = {(double)NAN};
	static const struct ts_series series = {"pH", x, y, 1, TS_HUE_PH};
	static const struct ts_curve curve = {"c", "x", "y", 0, 1, &series, 1, NULL, 0, "at ", ""};
	struct kit kit;

	(void)state;
	open_kit(&kit, "t");
	ts_doc_curve(&kit.doc, &curve);
	LACKS(page(&kit), "figure");
	close_kit(&kit);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_html__text_is_escaped),
		cmocka_unit_test(test_html__no_control_no_broken_utf8_no_turned_text),
		cmocka_unit_test(test_html__attributes_are_escaped_and_odd_names_left_out),
		cmocka_unit_test(test_html__verdict_headings_caution_and_see),
		cmocka_unit_test(test_html__facts_without_a_label_belong_to_the_last),
		cmocka_unit_test(test_html__table_names_columns_and_rows),
		cmocka_unit_test(test_html__empty_corner_of_a_table_is_no_heading),
		cmocka_unit_test(test_html__long_words_of_a_cell_may_break_and_short_cells_do_not),
		cmocka_unit_test(test_html__steps_are_an_ordered_list),
		cmocka_unit_test(test_html__outline_reading_and_miss),
		cmocka_unit_test(test_html__readings_of_another_water_are_drawn_anew),
		cmocka_unit_test(test_html__head_has_letters_policy_and_width),
		cmocka_unit_test(test_html__what_lies_beyond_a_scale_is_no_limit),
		cmocka_unit_test(test_html__what_is_printed_only_or_never_is_framed),
		cmocka_unit_test(test_html__what_is_of_pages_alone_is_not_built_for_others),
		cmocka_unit_test(test_html__lists_of_animals_and_of_others),
		cmocka_unit_test(test_html__curve_breaks_at_gaps_and_says_its_marks),
		cmocka_unit_test(test_html__label_of_a_mark_hides_no_line),
		cmocka_unit_test(test_html__curve_without_a_point_is_left_out),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
