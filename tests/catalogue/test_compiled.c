/* SPDX-License-Identifier: Apache-2.0 */
/*
 * An image of the records says what the records say, is refused when a file of the folder came,
 * went or changed, and harms nobody whatever its bytes are.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "../random.h"
#include "base/arena.h"
#include "catalogue/compiled.h"
#include "records/image.h"
#include "records/write.h"

/* Behind the magic, the rows' hash and the checksum stands the length of the texts. */
#define HEAD 32

#define FROZEN TS_TEST_DATA "/catalogue"

static void compile(const char *folder, struct ts_catalogue *catalogue, struct ts_text *image)
{
	ts_catalogue_open(catalogue, NULL);
	ts_text_open(image, NULL);
	assert_int_equal(ts_catalogue_add_folder(catalogue, folder, NULL), TS_OK);
	assert_true(ts_catalogue_compile(catalogue, image));
}

static enum ts_status add(
	struct ts_catalogue *catalogue, const struct ts_text *image, const char *folder)
{
	ts_catalogue_open(catalogue, NULL);
	return ts_catalogue_add_image(catalogue, ts_text_get(image), image->len, folder);
}

static void assert_same_texts(const char *a, const char *b)
{
	if (a && b)
		assert_string_equal(a, b);
	else
		assert_ptr_equal(a, b);
}

static void assert_same_record(const struct ts_species *a, const struct ts_species *b)
{
	struct ts_text x, y;

	ts_text_open(&x, NULL);
	ts_text_open(&y, NULL);
	ts_records_write(&x, &ts_shape_species, a, false);
	ts_records_write(&y, &ts_shape_species, b, false);
	assert_string_equal(ts_text_get(&x), ts_text_get(&y));
	ts_text_drop(&x);
	ts_text_drop(&y);
	assert_same_texts(a->file, b->file);
	assert_same_texts(a->replaces, b->replaces);
	assert_int_equal(a->folder, b->folder);
}

static void test_every_shipped_record_is_as_its_file_says(void **state)
{
	struct ts_catalogue parsed, mapped;
	struct ts_text image;

	(void)state;
	compile(TS_SPECIES_DIR, &parsed, &image);
	assert_int_equal(add(&mapped, &image, TS_SPECIES_DIR), TS_OK);
	assert_true(parsed.count > 500);
	assert_int_equal(parsed.count, mapped.count);
	for (size_t i = 0; i < parsed.count; i++)
		assert_same_record(parsed.items[i], mapped.items[i]);
	ts_catalogue_close(&mapped);
	ts_catalogue_close(&parsed);
	ts_text_drop(&image);
}

static void test_a_record_of_a_later_folder_takes_its_place(void **state)
{
	struct ts_catalogue parsed, mapped;
	struct ts_text image;

	(void)state;
	compile(FROZEN, &parsed, &image);
	assert_int_equal(add(&mapped, &image, FROZEN), TS_OK);
	assert_int_equal(ts_catalogue_add_folder(&mapped, FROZEN, NULL), TS_OK);
	assert_int_equal(mapped.count, parsed.count);
	for (size_t i = 0; i < mapped.count; i++) {
		assert_int_equal(mapped.items[i]->folder, 1);
		assert_string_equal(mapped.items[i]->replaces, parsed.items[i]->file);
	}
	ts_catalogue_close(&mapped);
	ts_catalogue_close(&parsed);
	ts_text_drop(&image);
}

/* A folder of two records that a test may change. */
struct folder {
	char path[64], first[128], second[128];
	struct ts_catalogue catalogue;
	struct ts_text image;
};

static void copy(const char *from, const char *to)
{
	char bytes[16384];
	FILE *in = fopen(from, "rb"), *out = fopen(to, "wb");
	size_t len;

	assert_non_null(in);
	assert_non_null(out);
	len = fread(bytes, 1, sizeof bytes, in);
	assert_int_equal(fwrite(bytes, 1, len, out), len);
	fclose(in);
	assert_int_equal(fclose(out), 0);
}

static int make_folder(void **state)
{
	struct folder *f = calloc(1, sizeof *f);
	struct ts_catalogue frozen;

	strcpy(f->path, "/tmp/tapshoal-compiled-XXXXXX");
	assert_non_null(mkdtemp(f->path));
	snprintf(f->first, sizeof f->first, "%s/first.yaml", f->path);
	snprintf(f->second, sizeof f->second, "%s/second.yaml", f->path);
	ts_catalogue_open(&frozen, NULL);
	assert_int_equal(ts_catalogue_add_folder(&frozen, FROZEN, NULL), TS_OK);
	copy(frozen.items[0]->file, f->first);
	copy(frozen.items[1]->file, f->second);
	ts_catalogue_close(&frozen);
	compile(f->path, &f->catalogue, &f->image);
	*state = f;
	return 0;
}

static int drop_folder(void **state)
{
	struct folder *f = *state;

	unlink(f->first);
	unlink(f->second);
	rmdir(f->path);
	ts_text_drop(&f->image);
	ts_catalogue_close(&f->catalogue);
	free(f);
	return 0;
}

static enum ts_status try(const struct folder *f, const char *folder)
{
	struct ts_catalogue catalogue;
	enum ts_status status = add(&catalogue, &f->image, folder);

	if (status != TS_OK)
		assert_int_equal(catalogue.count + catalogue.folders.count, 0);
	ts_catalogue_close(&catalogue);
	return status;
}

static void test_an_unchanged_folder_is_taken(void **state)
{
	const struct folder *f = *state;

	assert_int_equal(try(f, f->path), TS_OK);
}

static void test_a_file_written_again_is_noticed(void **state)
{
	const struct folder *f = *state;
	const struct timespec then[2] = {{1000000000, 5}, {1000000000, 5}};

	assert_int_equal(utimensat(AT_FDCWD, f->second, then, 0), 0);
	assert_int_equal(try(f, f->path), TS_NO);
	assert_int_equal(try(f, NULL), TS_OK);
}

static void test_a_longer_file_is_noticed(void **state)
{
	const struct folder *f = *state;
	struct stat before;
	struct timespec then[2];
	FILE *stream;

	assert_int_equal(stat(f->first, &before), 0);
	stream = fopen(f->first, "ab");
	assert_non_null(stream);
	assert_true(fputs("# more\n", stream) >= 0);
	assert_int_equal(fclose(stream), 0);
	then[0] = then[1] = before.st_mtim;
	assert_int_equal(utimensat(AT_FDCWD, f->first, then, 0), 0);
	assert_int_equal(try(f, f->path), TS_NO);
}

static void test_a_new_file_is_noticed(void **state)
{
	const struct folder *f = *state;
	char third[128];

	snprintf(third, sizeof third, "%s/third.yaml", f->path);
	copy(f->first, third);
	assert_int_equal(try(f, f->path), TS_NO);
	unlink(third);
	assert_int_equal(try(f, f->path), TS_OK);
}

static void test_a_file_that_went_is_noticed(void **state)
{
	const struct folder *f = *state;

	unlink(f->second);
	assert_int_equal(try(f, f->path), TS_NO);
	unlink(f->first);
	rmdir(f->path);
	assert_int_equal(try(f, f->path), TS_NO);
}

/* Bytes of exactly this length, so that a sanitizer sees every step beyond them. */
static enum ts_status try_bytes(const char *bytes, size_t len)
{
	struct ts_catalogue catalogue;
	char *exact = malloc(len ? len : 1);
	enum ts_status status;

	memcpy(exact, bytes, len);
	ts_catalogue_open(&catalogue, NULL);
	status = ts_catalogue_add_image(&catalogue, exact, len, NULL);
	ts_catalogue_close(&catalogue);
	free(exact);
	return status;
}

static void test_cut_off_anywhere_is_refused(void **state)
{
	const struct folder *f = *state;

	for (size_t len = 0; len < f->image.len; len++)
		assert_int_equal(try_bytes(ts_text_get(&f->image), len), TS_NO);
	assert_int_equal(try_bytes(ts_text_get(&f->image), f->image.len), TS_OK);
}

static void test_any_flipped_bit_is_refused(void **state)
{
	struct folder *f = *state;

	for (size_t i = 0; i < f->image.len; i++) {
		f->image.at[i] ^= (char)(1 << i % 8);
		assert_int_equal(try_bytes(f->image.at, f->image.len), TS_NO);
		f->image.at[i] ^= (char)(1 << i % 8);
	}
}

/* With a checksum that is right, the reader itself must bear the bytes. */
static void test_bent_bytes_are_borne(void **state)
{
	const struct folder *f = *state;
	char *bytes = malloc(f->image.len);
	size_t taken = 0;
	struct random r;
	unsigned rounds = random_open(&r, 20261129, 20000);

	for (unsigned round = 0; round < rounds; round++) {
		random_case(&r, round);
		memcpy(bytes, ts_text_get(&f->image), f->image.len);
		for (unsigned n = 0; n <= any_below(&r, 4); n++)
			bytes[HEAD + any_below(&r, (unsigned)f->image.len - HEAD)] =
				(char)any_below(&r, 256);
		ts_image_seal(bytes, f->image.len);
		taken += try_bytes(bytes, f->image.len) == TS_OK;
	}
	assert_true(taken > 0 && taken < rounds);
	free(bytes);
}

int main(void)
{
#define WITH_FOLDER(test) cmocka_unit_test_setup_teardown(test, make_folder, drop_folder)
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_shipped_record_is_as_its_file_says),
		cmocka_unit_test(test_a_record_of_a_later_folder_takes_its_place),
		WITH_FOLDER(test_an_unchanged_folder_is_taken),
		WITH_FOLDER(test_a_file_written_again_is_noticed),
		WITH_FOLDER(test_a_longer_file_is_noticed),
		WITH_FOLDER(test_a_new_file_is_noticed),
		WITH_FOLDER(test_a_file_that_went_is_noticed),
		WITH_FOLDER(test_cut_off_anywhere_is_refused),
		WITH_FOLDER(test_any_flipped_bit_is_refused),
		WITH_FOLDER(test_bent_bytes_are_borne),
	};

	return cmocka_run_group_tests_name("catalogue/compiled", tests, NULL, NULL);
}
