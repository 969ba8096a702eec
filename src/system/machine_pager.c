/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The pager of the user as a child at the end of a pipe; nothing of the answer is lost where it
 * does not start.
 */
#include "system/machine.h"

#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <unistd.h>

/* What the shell says of a program that is not there. */
#define NOT_FOUND 127

/* The user's, or less where it is installed; NULL: none is wanted. */
static const char *wanted(void)
{
	const char *pager = getenv("PAGER"), *term = getenv("TERM");

	if (!term || strcmp(term, "dumb") == 0)
		return NULL;
	if (!pager)
		return "command -v less >/dev/null 2>&1 || exit 127; exec less";
	return *pager && strcmp(pager, "cat") != 0 ? pager : NULL;
}

/* Whether it has more lines than the terminal. */
static bool too_long(const char *text, size_t len)
{
	struct winsize size;
	size_t lines = 0;

	if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || !size.ws_row)
		return false;
	for (size_t i = 0; i < len; i++)
		lines += text[i] == '\n';
	return lines >= size.ws_row;
}

/* In the child: never returns. */
static void become(const char *pager, int from)
{
	dup2(from, STDIN_FILENO);
	close(from);
	setenv("LESS", "FRX", 0); /* colours pass, a short text does not wait */
	signal(SIGPIPE, SIG_DFL);
	execl("/bin/sh", "sh", "-c", pager, (char *)NULL);
	_exit(NOT_FOUND);
}

/* All of it, unless the reader has seen enough. */
static void feed(int to, const char *at, size_t len)
{
	const char *end = at + len;

	while (at < end) {
		ssize_t n = write(to, at, (size_t)(end - at));

		if (n <= 0)
			return;
		at += n;
	}
}

bool ts_machine_paged(void *state, const char *text, size_t len)
{
	const char *pager = isatty(STDOUT_FILENO) ? wanted() : NULL;
	int ends[2], status = 0;
	pid_t child;

	(void)state;
	if (!pager || !too_long(text, len) || pipe(ends) != 0)
		return false;
	child = fork();
	if (child == 0) {
		close(ends[1]);
		become(pager, ends[0]);
	}
	close(ends[0]);
	if (child > 0) {
		void (*before)(int) = signal(SIGINT, SIG_IGN); /* it is the pager's */

		feed(ends[1], text, len);
		close(ends[1]);
		waitpid(child, &status, 0);
		signal(SIGINT, before);
	} else {
		close(ends[1]);
	}
	return child > 0 && !(WIFEXITED(status) && WEXITSTATUS(status) == NOT_FOUND);
}
