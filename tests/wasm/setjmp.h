/* SPDX-License-Identifier: Apache-2.0 */
/* WebAssembly has no setjmp; the checks include it only because cmocka wants it. */
