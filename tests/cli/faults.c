/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The wrapped allocations. With ld's --wrap=malloc, malloc of the linked objects is __wrap_malloc
 * and __real_malloc is the C library's, or the sanitizer's.
 */
#include "faults.h"

#include <stdlib.h>
#include <string.h>

struct faults faults;

void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__real_realloc(void *old, size_t size);
void __real_free(void *old);
char *__real_strdup(const char *text);
char *__real_strndup(const char *text, size_t most);
void *__wrap_malloc(size_t size);
void *__wrap_calloc(size_t count, size_t size);
void *__wrap_realloc(void *old, size_t size);
void __wrap_free(void *old);
char *__wrap_strdup(const char *text);
char *__wrap_strndup(const char *text, size_t most);

static bool refused(void)
{
	if (!faults.armed)
		return false;
	faults.count++;
	if (faults.seen)
		faults.seen();
	if (!faults.at || (faults.from_on ? faults.count < faults.at : faults.count != faults.at))
		return false;
	faults.failed++;
	return true;
}

static void *counted(void *taken)
{
	faults.live += faults.armed && taken;
	return taken;
}

void *__wrap_malloc(size_t size)
{
	return refused() ? NULL : counted(__real_malloc(size));
}

void *__wrap_calloc(size_t count, size_t size)
{
	return refused() ? NULL : counted(__real_calloc(count, size));
}

void *__wrap_realloc(void *old, size_t size)
{
	if (refused())
		return NULL;
	return old ? __real_realloc(old, size) : counted(__real_realloc(NULL, size));
}

void __wrap_free(void *old)
{
	faults.live -= faults.armed && old;
	__real_free(old);
}

char *__wrap_strdup(const char *text)
{
	return refused() ? NULL : counted(__real_strdup(text));
}

char *__wrap_strndup(const char *text, size_t most)
{
	return refused() ? NULL : counted(__real_strndup(text, most));
}
