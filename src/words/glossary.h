/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Words of the trade and of our answers, each in a sentence for somebody who meets it first.
 */
#ifndef TS_WORDS_GLOSSARY_H
#define TS_WORDS_GLOSSARY_H

#define TS_TERM_FORMS_MOST 4

struct ts_term {
	const char *forms[TS_TERM_FORMS_MOST]; /* as they stand in answers; the first is its name */
	const char *says;                      /* one sentence */
	const char *more; /* one paragraph: what follows from it for somebody with a tank */
};

/* Ends with a row of NULL. */
extern const struct ts_term ts_glossary[];

/* The term of that form, in any case of its letters; NULL: it is none. */
const struct ts_term *ts_glossary_find(const char *form);

#endif
