/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Nothing passes unsaid: in random texts of names, figures, units and words every figure that
 * follows a name of ours or has a unit of contents behind it is taken, told as a limit, asked about
 * or listed, whatever stands around it.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "../random.h"
#include "intake/reader.h"

#define CASES 1500
#define TEXT_ROOM 4096
#define FIGURES_MOST 64

static const char *const names[] = {"pH", "pH-Wert", "Total hardness", "Gesamthärte", "dureté",
	"hardheid", "Calcium", "Nitrat", "nitrates", "Natrium", "sodio", "durezza", "conductivité",
	"Leitfähigkeit", "Chloride", "alkalinity", "Ammonium", "Kupfer", "cloro libre", "TAC",
	"Wasserhärtegrad", "Calciumionen", "Nitr."};
static const char *const units[] = {"mg/l", "mg/L", "°dH", "°f", "mmol/l", "µS/cm", "mS/m", "ppm",
	"mg/l CaCO3", "mg/l NO3", "µg/l"};
static const char *const words[] = {"and", "in our area", "blorst", "ist", "la moyenne",
	"not more than", "n.n.", "not detected", "-", "(", ")", ":", ";", ",", ".", "entre",
	"between", "from", "to", "bis", "<", ">", "approx.", "the", "Herr Falk", "is", "und", "   ",
	"\t", " | ", "/", "="};
/* Only behind a figure: a line of such words alone heads a table, whose columns may be limits. */
static const char *const columns[] = {"mean", "max", "Min", "Grenzwert", "limit"};
#define COUNT(rows) (sizeof(rows) / sizeof *(rows))

struct text {
	char bytes[TEXT_ROOM];
	size_t len;
	unsigned line;
	struct {
		char digits[16];
		unsigned line;
	} sought[FIGURES_MOST];
	size_t count;
	bool figures; /* on this line */
	bool named;   /* the last piece was a name */
};

static void put(struct text *t, const char *piece)
{
	size_t len = strlen(piece);

	assert_true(t->len + len + 2 < sizeof t->bytes);
	memcpy(t->bytes + t->len, piece, len);
	t->len += len;
	t->bytes[t->len++] = ' ';
	t->bytes[t->len] = '\0';
}

/* Figures are unlike each other and no rule's, so that each is found again by its digits. */
static void put_figure(struct random *r, struct text *t)
{
	char digits[16];
	bool unit = any_percent(r, 50);

	snprintf(digits, sizeof digits, "%u%c%02u3", 3 + any_below(r, 90),
		any_percent(r, 50) ? '.' : ',', (unsigned)t->count);
	if ((unit || t->named) && t->count < FIGURES_MOST) {
		memcpy(t->sought[t->count].digits, digits, sizeof digits);
		t->sought[t->count++].line = t->line;
	}
	t->figures = true;
	put(t, digits);
	if (unit)
		put(t, units[any_below(r, COUNT(units))]);
}

static void write_text(struct random *r, struct text *t)
{
	unsigned lines = 1 + any_below(r, 5);

	for (t->line = 1; t->line <= lines; t->line++) {
		unsigned pieces = 1 + any_below(r, 9);

		t->named = t->figures = false;
		for (unsigned i = 0; i < pieces; i++) {
			unsigned kind = any_below(r, 10);

			if (kind == 0 && t->figures)
				put(t, columns[any_below(r, COUNT(columns))]);
			else if (kind < 4)
				put(t, words[any_below(r, COUNT(words))]);
			else if (kind < 7)
				put(t, names[any_below(r, COUNT(names))]);
			else
				put_figure(r, t);
			t->named = kind >= 4 && kind < 7;
		}
		t->bytes[t->len++] = '\n';
		t->bytes[t->len] = '\0';
	}
}

static bool is_said(const struct ts_report *r, const char *digits, unsigned line)
{
	for (size_t i = 0; i < r->value_count; i++) {
		char printed[64];

		snprintf(printed, sizeof printed, "%s", r->values[i].printed);
		if (strstr(printed, digits))
			return true;
	}
	for (size_t i = 0; i < r->gap_count; i++) {
		if (strstr(r->gaps[i].text, digits))
			return true;
	}
	for (size_t i = 0; i < r->other_count; i++) {
		if (r->others[i] == line)
			return true;
	}
	return r->gap_more > 0;
}

static void test_unsaid__no_figure_beside_a_name_or_a_unit(void **state)
{
	static struct text t;
	struct random r;
	struct ts_report_refusal refusal;
	struct ts_report report;
	struct ts_arena arena;
	struct ts_intake *in;
	unsigned sought = 0;

	(void)state;
	for (unsigned i = 0, n = random_open(&r, 20, CASES); i < n; i++) {
		random_case(&r, i);
		memset(&t, 0, sizeof t);
		write_text(&r, &t);
		in = ts_intake_open(NULL);
		assert_non_null(in);
		ts_arena_open(&arena, NULL);
		assert_int_equal(ts_intake_feed(in, t.bytes, t.len, &refusal), TS_OK);
		(void)!ts_intake_finish(in, NULL, &arena, &report);
		for (size_t k = 0; k < t.count; k++) {
			sought++;
			if (!is_said(&report, t.sought[k].digits, t.sought[k].line))
				fail_msg("case %u: %s in line %u of\n%s", i, t.sought[k].digits,
					t.sought[k].line, t.bytes);
		}
		ts_intake_close(in);
		ts_arena_drop(&arena);
	}
	assert_true(sought > CASES);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_unsaid__no_figure_beside_a_name_or_a_unit),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
