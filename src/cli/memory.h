/* SPDX-License-Identifier: Apache-2.0 */
#ifndef TS_CLI_MEMORY_H
#define TS_CLI_MEMORY_H

/* Asks for memory in large pages, before anything is taken. */
void memory_prepare(void);

#endif
