/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Memory in large pages. A call holds a few megabytes for some milliseconds, of which the kernel
 * takes a third to hand them out in pages of 4 kB. A hint, where the C library and the kernel know
 * such pages; nothing depends on it.
 */
#include "cli/memory.h"

#include <stdint.h>
#include <stdlib.h>
#include <sys/mman.h>
#include <unistd.h>
#ifdef __GLIBC__
#include <malloc.h>
#endif

#if defined(__GLIBC__) && defined(MADV_HUGEPAGE)
#define LARGE_PAGE ((uintptr_t)2 << 20)
#define HEAP_AT_ONCE (6 << 20)
#define OUT_OF_HEAP (64 << 20)

void memory_prepare(void)
{
	char *first;
	uintptr_t from, to;

	/* What is taken comes from one heap that grows by much, and is not handed back in between.
	 */
	mallopt(M_MMAP_THRESHOLD, OUT_OF_HEAP);
	mallopt(M_TRIM_THRESHOLD, OUT_OF_HEAP);
	mallopt(M_TOP_PAD, HEAP_AT_ONCE);
	first = malloc(1);
	from = ((uintptr_t)first + LARGE_PAGE - 1) / LARGE_PAGE * LARGE_PAGE;
	to = (uintptr_t)sbrk(0) / LARGE_PAGE * LARGE_PAGE;
	if (first && from < to && to - from <= HEAP_AT_ONCE)
		(void)madvise(first + (from - (uintptr_t)first), to - from, MADV_HUGEPAGE);
	free(first);
}
#else
void memory_prepare(void)
{
}
#endif
