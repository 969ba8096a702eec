/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Replays a folder of inputs through one fuzz target in the ordinary run; prints TAP. What a long
 * run kept since it reaches other code (kept-*) is many small files and counts as one case.
 */
#include <dirent.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static uint8_t bytes[1 << 20];

int main(int argc, char **argv)
{
	DIR *dir = argc == 2 ? opendir(argv[1]) : NULL;
	const struct dirent *entry;
	int count = 0, kept = 0;

	while (dir && (entry = readdir(dir))) {
		char path[4096];
		FILE *stream;
		size_t size;

		if (entry->d_name[0] == '.')
			continue;
		snprintf(path, sizeof path, "%s/%s", argv[1], entry->d_name);
		stream = fopen(path, "rb");
		if (!stream)
			continue;
		size = fread(bytes, 1, sizeof bytes, stream);
		fclose(stream);
		LLVMFuzzerTestOneInput(bytes, size);
		if (strncmp(entry->d_name, "kept-", 5) == 0)
			kept++;
		else
			printf("ok %d - %s\n", ++count, entry->d_name);
		fflush(stdout);
	}
	if (kept)
		printf("ok %d - %d inputs that long runs kept\n", ++count, kept);
	if (dir)
		closedir(dir);
	printf("1..%d\n", count);
	return count ? 0 : 1;
}
