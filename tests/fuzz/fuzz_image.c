/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The compiled catalogue: the image of the frozen records with its bytes changed as the input says
 * and its checksum made right again, asked one question. Four bytes an edit (a place of 20 bits,
 * what is done there, with what), so that inputs outlive a change of the records' rows. Such bytes
 * are refused, or answer like records: nothing is read beside them.
 */
#include <stdlib.h>
#include <string.h>

#include "catalogue/compiled.h"
#include "records/image.h"
#include "session.h"

/* Behind the magic, the rows' hash and the checksum stands the length of the texts. */
#define HEAD 32 /* no shorter: behind it the body begins */
#define EDIT 4

static const struct ts_text *frozen_image(void)
{
	static struct ts_text image;

	if (!image.len) {
		ts_text_open(&image, NULL);
		hold(ts_catalogue_compile(frozen_catalogue(), &image));
	}
	return &image;
}

/* The new length. */
static size_t edit(char *bytes, size_t len, const uint8_t *how)
{
	size_t at = (how[0] | (size_t)how[1] << 8 | (size_t)(how[2] & 15) << 16) % len;
	size_t left = len - at;

	switch (how[2] >> 4) {
	case 0:
		return at > HEAD ? at : len;
	case 1:
		memset(bytes + at, 0, left < 4 ? left : 4);
		break;
	case 2:
		memset(bytes + at, 0xff, left < 4 ? left : 4);
		break;
	case 3:
		bytes[at] = (char)(bytes[at] + how[3]);
		break;
	case 4: /* a piece of it stands twice */
		memmove(bytes + at, bytes + at / 2, left < how[3] ? left : how[3]);
		break;
	default:
		bytes[at] = (char)how[3];
	}
	return len;
}

static void ask(const struct ts_catalogue *c, unsigned which)
{
	static const char water[] = "kind: tap\nreadings:\n  - {GH: 8, KH: 5, pH: 7.4}\n";
	const char *file = file_of(0, water, sizeof water - 1);
	const char *const calls[][9] = {
		{"rank", "-w", file, "--only-catalogue", "--format", "text", NULL},
		{"rank", "-w", file, "--only-catalogue", "--format", "json", NULL},
		{"rank", "-w", file, "--only-catalogue", "--format", "html", NULL},
		{"find", "a", "--only-catalogue", "--format", "text", NULL},
		{"find", "a", "--only-catalogue", "--format", "json", NULL},
		{"why", c->items[0]->species, "-w", file, "--only-catalogue", NULL},
		{"why", c->items[0]->species, "--only-catalogue", "--format", "json", NULL},
		{"propose", "-w", file, "--only-catalogue", "--size", "100x40x40", NULL},
	};
	const char *const *call = calls[which % (sizeof calls / sizeof *calls)];

	/* A name that begins so would be a flag. */
	if (strcmp(call[0], "why") != 0 || *call[1] != '-')
		run_command(call, c);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	const struct ts_text *image = frozen_image();
	struct ts_catalogue catalogue;
	size_t len = image->len;
	enum ts_status status;
	char *bytes;

	if (size < 1)
		return 0;
	bytes = malloc(len);
	hold(bytes != NULL);
	memcpy(bytes, ts_text_get(image), len);
	for (size_t i = 1; i + EDIT <= size; i += EDIT)
		len = edit(bytes, len, data + i);
	ts_image_seal(bytes, len);
	ts_catalogue_open(&catalogue, NULL);
	catalogue.system = memory_system();
	status = ts_catalogue_add_image(&catalogue, bytes, len, NULL);
	hold(status == TS_OK || status == TS_NO);
	hold((status == TS_OK) == (catalogue.count > 0));
	if (status == TS_OK)
		ask(&catalogue, data[0]);
	ts_catalogue_close(&catalogue);
	free(bytes);
	return 0;
}
