/* SPDX-License-Identifier: Apache-2.0 */
/*
 * In the place of the C library's: memory, the logarithm and the exponential, which there are large
 * for the sake of many threads and the last bit. The module is 11 kB smaller by that, compressed.
 */
#include <errno.h>
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/*
 * Blocks hold five to eight times a power of two, are taken from the end of the memory, and when
 * freed wait for the next of their size. The last block grows where it stands.
 */
#define PAGE ((size_t)65536)
#define LEAST_BITS 4
#define ROWS ((32 - LEAST_BITS) * 4)

struct block {
	size_t size; /* of what follows the head */
	unsigned row;
	struct block *next;
	size_t unused;
};

extern unsigned char __heap_base;

static struct block *freed[ROWS];
static uintptr_t end;

/* The row of the least size that holds so much, and that size. */
static unsigned row_of(size_t *io_size)
{
	size_t units = *io_size > 16 ? (*io_size - 1) >> LEAST_BITS : 0;
	unsigned bits = units > 3 ? 29 - (unsigned)__builtin_clz(units) : 0;
	size_t quarter = (units >> bits) + 1;

	*io_size = quarter << bits << LEAST_BITS;
	return bits * 4 + (unsigned)quarter;
}

/* The memory reaches so far. */
static int reach(uintptr_t to)
{
	size_t pages = __builtin_wasm_memory_size(0);

	if (to <= pages * PAGE)
		return 1;
	return __builtin_wasm_memory_grow(0, (to - pages * PAGE + PAGE - 1) / PAGE) != (size_t)-1;
}

void *malloc(size_t size)
{
	struct block *block;
	unsigned row;

	if (size > PTRDIFF_MAX / 2) {
		errno = ENOMEM;
		return NULL;
	}
	row = row_of(&size);
	block = freed[row];
	if (block) {
		freed[row] = block->next;
		return block + 1;
	}
	if (!end)
		end = ((uintptr_t)&__heap_base + sizeof *block - 1) & -sizeof *block;
	if (end + sizeof *block + size < end || !reach(end + sizeof *block + size)) {
		errno = ENOMEM;
		return NULL;
	}
	block = (struct block *)end;
	*block = (struct block){.size = size, .row = row};
	end += sizeof *block + size;
	return block + 1;
}

void free(void *memory)
{
	struct block *block;

	if (!memory)
		return;
	block = (struct block *)memory - 1;
	block->next = freed[block->row];
	freed[block->row] = block;
}

void *calloc(size_t count, size_t size)
{
	void *memory = size && count > SIZE_MAX / size ? NULL : malloc(count * size);

	return memory ? memset(memory, 0, count * size) : NULL;
}

void *realloc(void *memory, size_t size)
{
	struct block *block;
	void *moved;

	if (!memory)
		return malloc(size);
	block = (struct block *)memory - 1;
	if (size <= block->size)
		return memory;
	if (size <= PTRDIFF_MAX / 2 && (uintptr_t)(block + 1) + block->size == end) {
		size_t grown = size;
		unsigned row = row_of(&grown);

		if (reach((uintptr_t)(block + 1) + grown)) {
			end += grown - block->size;
			block->size = grown;
			block->row = row;
			return memory;
		}
	}
	moved = malloc(size);
	if (moved) {
		memcpy(moved, memory, block->size);
		free(memory);
	}
	return moved;
}

double log(double value)
{
	return log10(value) * 2.302585092994045684;
}

/* Of what is left of the value beyond a power of two, the series; what is less than any double is
 * 0. */
double exp(double value)
{
	static const double inverse[] = {1, 1.0 / 2, 1.0 / 3, 1.0 / 4, 1.0 / 5, 1.0 / 6, 1.0 / 7,
		1.0 / 8, 1.0 / 9, 1.0 / 10, 1.0 / 11, 1.0 / 12, 1.0 / 13};
	double twos = floor(value * 1.44269504088896340736 + 0.5), rest, sum = 1;
	union {
		uint64_t bits;
		double value;
	} scale;

	if (!(fabs(value) < 708))
		return value < 0 ? 0 : value > 0 ? (double)INFINITY : value;
	rest = value - twos * 6.93147180369123816490e-01 - twos * 1.90821492927058770002e-10;
	for (size_t i = sizeof inverse / sizeof *inverse; i-- > 0;)
		sum = 1 + rest * inverse[i] * sum;
	scale.bits = (uint64_t)(1023 + (int)twos) << 52;
	return sum * scale.value;
}
