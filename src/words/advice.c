/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Filling in templates: one row a figure, with its decimals.
 */
#include "words/advice.h"

#include <math.h>
#include <string.h>

#include "words/sentence.h"

#define FIGURE(name, m, decimals)                                                                  \
	{                                                                                          \
		name, offsetof(struct ts_care_figures, m), decimals                                \
	}

/* Sorted by name. */
static const struct {
	const char *name;
	size_t offset;
	int decimals;
} figures[] = {
	FIGURE("change_kh", change_kh_dh, 1),
	FIGURE("chlorine", chlorine_mg_l, 2),
	FIGURE("co2", co2_mg_l, 0),
	FIGURE("deaths", deaths, 0),
	FIGURE("ec_apart", ec_apart_percent, 0),
	FIGURE("kh", kh_dh, 1),
	FIGURE("nh3", nh3_mg_l, 4),
	FIGURE("nh3_half", nh3_half_mg_l, 3),
	FIGURE("no2", no2_mg_l, 2),
	FIGURE("no2_limit", no2_limit_mg_l, 2),
	FIGURE("no3", no3_mg_l, 0),
	FIGURE("no3_apart", no3_apart_mg_l, 0),
	FIGURE("oxygen", oxygen_mg_l, 1),
	FIGURE("ph_trend", ph_trend, 1),
	FIGURE("tan", tan_mg_l, 2),
};

static void put_figure(struct ts_text *text, double value, int decimals)
{
	if (isnan(value))
		ts_text_put(text, "not known");
	else
		ts_text_number_short(text, value, decimals);
}

/* What a dose every evening would do to this water; nothing where it cannot be computed. */
static void say_chase(struct ts_text *text, const struct ts_care_figures *f)
{
	if (isnan(f->chase_acid_meq_l))
		return;
	if (f->chase_acid_meq_l < 0) {
		ts_text_put(text, "Chasing it upwards would need a dose every evening; by morning "
				  "the pH would read ");
		ts_text_number(text, f->ph, 1);
		ts_text_put(text, " again.");
		return;
	}
	ts_text_put(text, "Chasing it to ");
	ts_text_number(text, f->chase_ph, 1);
	ts_text_put(text, " would take ");
	ts_text_number_short(text, f->chase_acid_meq_l, 1);
	ts_text_put(text, " meq/L of strong acid each evening: ");
	ts_text_number_short(text, f->chase_co2_mg_l, 0);
	ts_text_put(text, " mg/L CO2 at once, pH near ");
	ts_text_number(text, f->ph, 1);
	ts_text_put(text, " again by morning, KH ");
	ts_text_number_short(text, f->chase_kh_dh, 1);
	ts_text_put(text, " after one dose");
	if (!isnan(f->chase_days)) {
		ts_text_put(text, ", none left after ");
		ts_text_number_short(text, f->chase_days, 0);
		ts_text_put(text, " days");
	}
	ts_text_put(text, ".");
}

static void say_animal(struct ts_text *text, const struct ts_match *one)
{
	const struct ts_species *s = one->species;

	ts_text_put(text, s->common.en.count ? s->common.en.items[0] : s->species);
}

static void put_named(struct ts_text *text, const char *name, size_t len,
	const struct ts_care_figures *f, const struct ts_match *residents)
{
	const struct ts_match *one = f->animal >= 0 ? &residents[f->animal] : NULL;

	if (len == 6 && memcmp(name, "animal", 6) == 0 && one)
		say_animal(text, one);
	else if (len == 4 && memcmp(name, "miss", 4) == 0 && one)
		ts_say_parameter(text, (enum ts_parameter)f->parameter, &one->at[f->parameter]);
	else if (len == 5 && memcmp(name, "chase", 5) == 0)
		say_chase(text, f);
	for (size_t i = 0; i < sizeof figures / sizeof *figures; i++) {
		double value;

		if (strlen(figures[i].name) != len || memcmp(figures[i].name, name, len) != 0)
			continue;
		memcpy(&value, (const char *)f + figures[i].offset, sizeof value);
		put_figure(text, value, figures[i].decimals);
	}
}

static void fill_in(struct ts_text *text, const char *template, const struct ts_advice *advice,
	const struct ts_match *residents)
{
	while (*template) {
		size_t plain = strcspn(template, "{"), name;

		ts_text_add(text, template, plain);
		template += plain;
		if (!*template)
			return;
		name = strcspn(++template, "}");
		put_named(text, template, name, &advice->figures, residents);
		template += name + (template[name] == '}');
	}
}

void ts_say_advice(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents)
{
	fill_in(text, advice->row->says, advice, residents);
}

void ts_say_advice_because(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents)
{
	fill_in(text, advice->row->because, advice, residents);
}
