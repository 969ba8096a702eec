/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Every word that is explained has one sentence and one short paragraph, and is found by each of
 * its forms alone.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "words/glossary.h"

#define TERMS_LEAST 41
#define SENTENCE_MOST 110
#define PARAGRAPH_MOST 300

static void test_glossary__one_sentence_and_one_paragraph_each(void **state)
{
	size_t count = 0;

	(void)state;
	for (const struct ts_term *term = ts_glossary; term->says; term++, count++) {
		const char *end = term->says + strlen(term->says) - 1;

		if (*end != '.' || strstr(term->says, ". ") || strlen(term->says) > SENTENCE_MOST)
			fail_msg("%s: no short sentence: %s", term->forms[0], term->says);
		if (!term->more || term->more[strlen(term->more) - 1] != '.' ||
			strchr(term->more, '\n') || strlen(term->more) > PARAGRAPH_MOST)
			fail_msg("%s: no short paragraph", term->forms[0]);
	}
	assert_true(count >= TERMS_LEAST);
}

static void test_glossary__each_form_is_of_one_term(void **state)
{
	(void)state;
	for (const struct ts_term *term = ts_glossary; term->says; term++) {
		for (size_t i = 0; i < TS_TERM_FORMS_MOST && term->forms[i]; i++) {
			if (ts_glossary_find(term->forms[i]) != term)
				fail_msg("'%s' leads elsewhere", term->forms[i]);
		}
	}
	assert_ptr_equal(ts_glossary_find("kh"), ts_glossary_find("Carbonate Hardness"));
	assert_null(ts_glossary_find("K"));
	assert_null(ts_glossary_find(""));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_glossary__one_sentence_and_one_paragraph_each),
		cmocka_unit_test(test_glossary__each_form_is_of_one_term),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
