/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A notebook of elsewhere: what its columns are, which day is meant, and that nothing of it gets
 * lost or doubled on the way. All figures are invented.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "model/codes.h"
#include "records/notebook.h"

struct read {
	struct ts_arena arena;
	struct ts_findings findings;
	struct ts_notebook book;
	enum ts_status status;
};

static void read_as(struct read *r, const char *text, const struct ts_notebook_how *how)
{
	ts_arena_open(&r->arena, NULL);
	ts_findings_open(&r->findings, NULL);
	r->status = ts_notebook_read(
		text, strlen(text), "n.csv", how, &r->arena, &r->book, &r->findings);
}

static void read_table(struct read *r, const char *text)
{
	const struct ts_notebook_how how = {TS_DAYS_ASKED, NULL, 0};

	read_as(r, text, &how);
}

static void drop(struct read *r)
{
	ts_findings_drop(&r->findings);
	ts_arena_drop(&r->arena);
}

/* "date=2026-01-03 NO3=10 mg/L NO3 ..." */
static const char *entry(const struct read *r, size_t i)
{
	static char text[512];

	assert_true(i < r->book.count);
	text[0] = '\0';
	for (size_t k = 0; k < r->book.entries[i].count; k++) {
		const struct ts_pair *p = &r->book.entries[i].pairs[k];

		strcat(text, k ? "|" : "");
		strcat(strcat(strcat(text, p->key), "="), p->value);
	}
	return text;
}

static void assert_asks(const char *table, enum ts_code_id code, const char *says)
{
	struct read r;
	bool found = false;

	read_table(&r, table);
	assert_int_equal(r.status, TS_BAD_INPUT);
	for (size_t i = 0; i < r.findings.count; i++)
		found |= r.findings.items[i].code == &ts_codes[code] &&
			 (strstr(r.findings.items[i].what, says) ||
				 strstr(r.findings.items[i].remedy, says));
	assert_true(found);
	drop(&r);
}

static void test_heads_and_units(void **state)
{
	struct read r;

	(void)state;
	read_table(&r, "Date,Nitrate (mg/L NO3),GH [dH],KH dH,pH,Temp C,carbonate stuff\n");
	assert_int_equal(r.status, TS_BAD_INPUT);
	drop(&r);
	read_table(&r, "Date,Nitrate (mg/L NO3),GH [ppm],pH,temperature (F),what happened\n"
		       "2026-01-03,10,180,7.5,77,\n");
	assert_int_equal(r.status, TS_OK);
	assert_int_equal(r.book.count, 1);
	assert_string_equal(
		entry(&r, 0), "date=2026-01-03|NO3=10 mg/L NO3|GH=180 ppm|pH=7.5|temperature=77 F");
	drop(&r);
}

static void test_what_happened__one_thing_each_and_the_rest_a_remark(void **state)
{
	struct read r;

	(void)state;
	read_table(&r, "date;KH;water change (L);remark\n"
		       "2026-01-03;6 dH;20;2 neons died; new lamp\n");
	assert_int_equal(r.status, TS_BAD_INPUT); /* a cell more than the head has */
	drop(&r);
	read_table(&r, "date;KH;water change (L);remark\n"
		       "2026-01-03;6 dH;20;\"2 neons died; new lamp\"\n"
		       "2026-01-04;;0;\n");
	assert_int_equal(r.status, TS_OK);
	assert_int_equal(r.book.count, 4);
	assert_string_equal(entry(&r, 0), "date=2026-01-03|KH=6 dH");
	assert_string_equal(
		entry(&r, 1), "date=2026-01-03|what=water-changed|litres=20 L|says=changed 20 L");
	assert_string_equal(entry(&r, 2), "date=2026-01-03|what=died|count=2|says=2 neons died");
	assert_string_equal(entry(&r, 3), "date=2026-01-03|what=remark|says=new lamp");
	drop(&r);
}

static void test_days(void **state)
{
	static const struct {
		const char *text;
		enum ts_day_order order;
		enum ts_status status;
		const char *day;
	} days[] = {
		{"2026-03-01", TS_DAYS_ASKED, TS_OK, "2026-03-01"},
		{"2026/3/1", TS_DAYS_ASKED, TS_OK, "2026-03-01"},
		{"1.3.2026", TS_DAYS_ASKED, TS_OK, "2026-03-01"},
		{"01.03.26", TS_DAYS_ASKED, TS_OK, "2026-03-01"},
		{"1 March 2026", TS_DAYS_ASKED, TS_OK, "2026-03-01"},
		{"31/3/2026", TS_DAYS_ASKED, TS_OK, "2026-03-31"},
		{"3/31/2026", TS_DAYS_ASKED, TS_OK, "2026-03-31"},
		{"5/5/2026", TS_DAYS_ASKED, TS_OK, "2026-05-05"},
		{"1/3/2026", TS_DAYS_ASKED, TS_NO, NULL},
		{"1-3-2026", TS_DAYS_ASKED, TS_NO, NULL},
		{"1/3/2026", TS_DAYS_DAY_FIRST, TS_OK, "2026-03-01"},
		{"1/3/2026", TS_DAYS_MONTH_FIRST, TS_OK, "2026-01-03"},
		{"2026-03-01 18:00", TS_DAYS_ASKED, TS_OK, "2026-03-01"},
		{"2026-02-30", TS_DAYS_ASKED, TS_BAD_INPUT, NULL},
		{"32.1.2026", TS_DAYS_ASKED, TS_BAD_INPUT, NULL},
		{"yesterday", TS_DAYS_ASKED, TS_BAD_INPUT, NULL},
		{"", TS_DAYS_ASKED, TS_BAD_INPUT, NULL},
	};

	(void)state;
	for (size_t i = 0; i < sizeof days / sizeof *days; i++) {
		char out[11] = "";

		assert_int_equal(ts_notebook_day(days[i].text, days[i].order, out), days[i].status);
		if (days[i].day)
			assert_string_equal(out, days[i].day);
	}
}

/* One day beyond 12 tells the order of all; two that contradict are told. */
static void test_order_of_days__by_the_whole_table(void **state)
{
	struct read r;

	(void)state;
	read_table(&r, "date,pH\n3/4/2026,7\n17/4/2026,7.1\n");
	assert_int_equal(r.status, TS_OK);
	assert_string_equal(entry(&r, 0), "date=2026-04-03|pH=7");
	drop(&r);
	read_table(&r, "date,pH\n3/4/2026,7\n4/17/2026,7.1\n");
	assert_string_equal(entry(&r, 0), "date=2026-03-04|pH=7");
	drop(&r);
	assert_asks("date,pH\n3/4/2026,7\n", TS_C_RECORDS_DATE, "--dates day-first");
	assert_asks("date,pH\n17/4/2026,7\n4/17/2026,7\n", TS_C_RECORDS_DATE, "other way round");
}

static void test_hours__beside_the_day_or_in_a_column(void **state)
{
	struct read r;

	(void)state;
	read_table(&r, "date,pH\n2026-01-03 8:30,7\n");
	assert_string_equal(entry(&r, 0), "date=2026-01-03|pH=7|time=08:30");
	drop(&r);
	read_table(&r, "date,time,pH\n2026-01-03,18:00,7\n");
	assert_string_equal(entry(&r, 0), "date=2026-01-03|pH=7|time=18:00");
	drop(&r);
}

static void test_what_is_not_clear__is_asked(void **state)
{
	(void)state;
	assert_asks("date,lamp\n2026-01-03,on\n", TS_C_RECORDS_UNKNOWN_KEY, "--column \"lamp=");
	assert_asks("date,GH,general hardness\n2026-01-03,9 dH,9 dH\n", TS_C_RECORDS_DUPLICATE_KEY,
		"both GH");
	assert_asks("pH,KH\n7,6\n", TS_C_RECORDS_MISSING_KEY, "no column is the day");
	assert_asks("date,pH\n,7\n", TS_C_RECORDS_DATE, "no day");
	assert_asks("date,pH\n2026-01-03,seven\n", TS_C_RECORDS_QUANTITY, "--column \"pH=");
	assert_asks("", TS_C_RECORDS_MISSING_KEY, "empty");
	assert_asks("date,GH,KH\n2026-01-03,180,90\n", TS_C_RECORDS_QUANTITY, "ppm");
}

static void test_the_call_says_what_a_column_is(void **state)
{
	const char *columns[] = {"Licht=remark", "N=NO3 mg/L N", "Seite="};
	const struct ts_notebook_how how = {TS_DAYS_ASKED, columns, 3};
	struct read r;

	(void)state;
	read_as(&r, "date,Licht,N,Seite\n2026-01-03,off,2,17\n", &how);
	assert_int_equal(r.status, TS_OK);
	assert_string_equal(entry(&r, 0), "date=2026-01-03|NO3=2 mg/L N");
	assert_string_equal(entry(&r, 1), "date=2026-01-03|what=remark|says=off");
	assert_int_equal(r.book.left_out.count, 1);
	drop(&r);
}

static void test_rows_in_any_order__by_day(void **state)
{
	struct read r;

	(void)state;
	read_table(&r, "date\tpH\n2026-02-01\t7,1\n\n2026-01-01\t7,0\n2026-01-15\t-\n");
	assert_int_equal(r.status, TS_OK);
	assert_int_equal(r.book.count, 2);
	assert_string_equal(entry(&r, 0), "date=2026-01-01|pH=7,0");
	drop(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_heads_and_units),
		cmocka_unit_test(test_what_happened__one_thing_each_and_the_rest_a_remark),
		cmocka_unit_test(test_days),
		cmocka_unit_test(test_order_of_days__by_the_whole_table),
		cmocka_unit_test(test_hours__beside_the_day_or_in_a_column),
		cmocka_unit_test(test_what_is_not_clear__is_asked),
		cmocka_unit_test(test_the_call_says_what_a_column_is),
		cmocka_unit_test(test_rows_in_any_order__by_day),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
