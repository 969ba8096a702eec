/* SPDX-License-Identifier: Apache-2.0 */
/*
 * An allocation that fails when a test wants it. The linker turns every malloc, calloc, realloc,
 * strdup, strndup and free of our code and of the static libraries into those of faults.c. What the
 * C library takes for itself (streams, folders, sorting, locale) lies inside it and cannot fail so.
 */
#ifndef TS_TESTS_CLI_FAULTS_H
#define TS_TESTS_CLI_FAULTS_H

#include <stdbool.h>
#include <stddef.h>

struct faults {
	bool armed;   /* allocations are counted, and may fail */
	size_t at;    /* which one fails, from 1; 0: none */
	bool from_on; /* and every one behind it */
	size_t count; /* how many were asked for */
	size_t failed;
	size_t live;        /* how many were not given back */
	void (*seen)(void); /* called at each one that is asked for; NULL: nothing */
};

extern struct faults faults;

#endif
