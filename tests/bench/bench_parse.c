/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What libyaml alone takes to parse the files of a folder, as events, thrown away: the measure that
 * a whole rank is held against (tests/bench/rank.sh).
 */
#include <dirent.h>
#include <stdio.h>
#include <yaml.h>

static int parse(const char *path)
{
	FILE *stream = fopen(path, "rb");
	yaml_parser_t parser;
	yaml_event_t event;
	int events = 0, over = 0;

	if (!stream || !yaml_parser_initialize(&parser))
		return -1;
	yaml_parser_set_input_file(&parser, stream);
	while (!over && yaml_parser_parse(&parser, &event)) {
		over = event.type == YAML_STREAM_END_EVENT;
		events++;
		yaml_event_delete(&event);
	}
	yaml_parser_delete(&parser);
	fclose(stream);
	return over ? events : -1;
}

int main(int argc, char **argv)
{
	DIR *dir = argc == 2 ? opendir(argv[1]) : NULL;
	const struct dirent *entry;
	long events = 0;
	int files = 0;

	while (dir && (entry = readdir(dir))) {
		char path[4096];
		int one;

		if (entry->d_name[0] == '.')
			continue;
		snprintf(path, sizeof path, "%s/%s", argv[1], entry->d_name);
		one = parse(path);
		if (one < 0)
			return 1;
		events += one;
		files++;
	}
	if (dir)
		closedir(dir);
	printf("%d files, %ld events\n", files, events);
	return files ? 0 : 2;
}
