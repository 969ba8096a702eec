/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What wasi-libc does not declare and the program calls; laid before every file by build.sh.
 */
#ifndef TS_PAGE_WASI_H
#define TS_PAGE_WASI_H

/* As POSIX has it, but for links, of which a page has none; `resolved` must be NULL. */
char *realpath(const char *path, char *resolved);

#endif
