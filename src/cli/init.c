/* SPDX-License-Identifier: Apache-2.0 */
/*
 * init: three files to begin with, with figures to be replaced, so that they can be asked about at
 * once. Nothing that stands there is touched.
 */
#include "base/arena.h"
#include "cli/commands.h"

static const struct {
	const char *name, *text;
} files[] = {
	{"water.yaml", "# What comes out of your tap. Replace the figures by yours; leave out what "
		       "was not\n"
		       "# measured. A strip is method: strip, a meter method: meter.\n"
		       "name: my tap\n"
		       "readings:\n"
		       "  - method: drops\n"
		       "    GH: 8 dH\n"
		       "    KH: 5 dH\n"
		       "    pH: 7.4\n"},
	{"tank.yaml", "# Your tank, measured inside. Replace the figures by yours.\n"
		      "length: 80 cm\n"
		      "width: 35 cm\n"
		      "height: 40 cm\n"
		      "temperature: 24..26 C\n"
		      "water_change: 25 % every 7 days\n"},
	{"plan.yaml", "# Who lives there or is to: an animal with a day behind it (since) lives "
		      "there, the\n"
		      "# others are planned.\n"
		      "water: water.yaml\n"
		      "tank: tank.yaml\n"
		      "stock:\n"
		      "  - {species: neon tetra, count: 10}\n"
		      "  - {species: honey gourami, count: 2}\n"},
};
#define FILES (sizeof files / sizeof *files)

enum ts_status command_init(struct session *s)
{
	const struct options *o = s->options;
	const char *paths[FILES], *folder = o->argument_count ? o->arguments[0] : ".";
	struct ts_seen seen;
	int why = s->system->make_folder(s->system->state, folder);

	if (o->argument_count > 1) {
		ts_text_put(s->error, "init takes one folder");
		return TS_BAD_INPUT;
	}
	if (why) {
		ts_text_puts(s->error, folder, ": ", ts_system_says(why),
			"; name a folder that you may write", NULL);
		return TS_SYSTEM;
	}
	for (size_t i = 0; i < FILES; i++) {
		struct ts_text text;
		enum ts_status status;

		paths[i] = ts_arena_join(s->arena, folder, "/", files[i].name, NULL);
		if (!paths[i])
			return TS_NO_MEMORY;
		if (s->system->look(s->system->state, paths[i], &seen) == 0) {
			ts_text_puts(s->out, paths[i], " is there, and stays as it is\n", NULL);
			continue;
		}
		ts_text_open(&text, &s->arena->allocator);
		ts_text_put(&text, files[i].text);
		status = text.failed ? TS_NO_MEMORY
				     : output_write(s->system, paths[i], &text, s->error);
		ts_text_drop(&text);
		if (status)
			return status;
		ts_text_puts(s->out, paths[i], " is written\n", NULL);
	}
	ts_text_puts(s->out, "\nReplace the figures by yours, then: tapshoal water ", paths[0],
		"\ntapshoal check ", paths[2], "\n", NULL);
	return TS_OK;
}
