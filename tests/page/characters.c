/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the program asks of libutf8proc, for every character of Unicode, a line each: its width, and
 * what it is taken apart into by the options of catalogue/fold.c and report/shown.c.
 */
#include <stdio.h>
#include <utf8proc.h>

#define PARTS_MOST 32

static void write_parts(utf8proc_int32_t point, int options)
{
	utf8proc_int32_t parts[PARTS_MOST];
	int class = 0;
	utf8proc_ssize_t count = utf8proc_decompose_char(
		point, parts, PARTS_MOST, (utf8proc_option_t)options, &class);

	printf(" %d:", (int)count);
	for (utf8proc_ssize_t i = 0; i < count && i < PARTS_MOST; i++)
		printf("%X,", (unsigned)parts[i]);
}

int main(void)
{
	const int apart = UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT;

	for (utf8proc_int32_t point = 0; point < 0x110000; point++) {
		printf("%X %d", (unsigned)point, utf8proc_charwidth(point));
		write_parts(point, apart | UTF8PROC_CASEFOLD);
		write_parts(point, apart | UTF8PROC_CASEFOLD | UTF8PROC_STRIPMARK);
		write_parts(point, apart | UTF8PROC_STRIPMARK | UTF8PROC_LUMP);
		putchar('\n');
	}
	return 0;
}
