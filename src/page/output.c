/* SPDX-License-Identifier: Apache-2.0 */
/*
 * cli/output.h where there is neither terminal nor link nor right: the files are in the memory of
 * the page. A file is still complete or not there at all.
 */
#include "cli/output.h"

#include <errno.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "report/shown.h"

static bool failed(const struct output *o, struct ts_text *error)
{
	ts_text_puts(error, "cannot write ", o->path ? o->path : "the answer", ": ",
		strerror(errno), "; take a place that can be written", NULL);
	return false;
}

bool output_open(struct output *output, const char *path, struct ts_text *error)
{
	*output = (struct output){
		.path = path && strcmp(path, "-") != 0 ? path : NULL, .stream = stdout};
	if (!output->path)
		return true;
	if (snprintf(output->target, sizeof output->target, "%s", path) >= OUTPUT_PATH_MOST ||
		snprintf(output->beside, sizeof output->beside, "%s.part", path) >=
			OUTPUT_PATH_MOST) {
		errno = ENAMETOOLONG;
		return failed(output, error);
	}
	output->stream = fopen(output->beside, "w");
	return output->stream || failed(output, error);
}

bool output_add(struct output *output, const struct ts_text *text, struct ts_text *error)
{
	return (fwrite(ts_text_get(text), 1, text->len, output->stream) == text->len &&
		       fflush(output->stream) == 0) ||
	       failed(output, error);
}

bool output_close(struct output *output, bool keep, struct ts_text *error)
{
	if (!output->path)
		return true;
	if (fclose(output->stream) == 0 && keep && rename(output->beside, output->target) == 0)
		return true;
	if (keep)
		failed(output, error);
	unlink(output->beside);
	return !keep;
}

bool output_write(const char *path, const struct ts_text *text, struct ts_text *error)
{
	struct output o;
	bool fine;

	if (!output_open(&o, path, error))
		return false;
	fine = output_add(&o, text, error);
	return output_close(&o, fine, error) && fine;
}

void output_message(struct ts_text *out, const char *message, size_t len)
{
	ts_shown_add(out, message, len, false);
	ts_text_put(out, "\n");
}

struct ts_screen output_screen(bool to_file, bool no_color, bool ascii)
{
	struct ts_screen screen = ts_screen_plain;

	(void)to_file;
	(void)no_color;
	screen.ascii = ascii;
	return screen;
}
