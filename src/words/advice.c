/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Filling in templates: one row a figure, with its decimals.
 */
#include "words/advice.h"

#include <math.h>
#include <string.h>

#include "words/mend.h"
#include "words/sentence.h"

#define FIGURE(name, m, decimals)                                                                  \
	{                                                                                          \
		name, offsetof(struct ts_care_figures, m), decimals                                \
	}

static const struct {
	const char *name;
	size_t offset;
	int decimals;
} figures[] = {
	FIGURE("away", away_days, 0),
	FIGURE("buffer_act", buffer_act, 0),
	FIGURE("change_gh", change_gh_dh, 1),
	FIGURE("change_kh", change_kh_dh, 1),
	FIGURE("chlorine", chlorine_mg_l, 2),
	FIGURE("chlorine_limit", chlorine_limit, 3),
	FIGURE("co2", co2_mg_l, 0),
	FIGURE("co2_high", co2_high_mg_l, 0),
	FIGURE("co2_limit", co2_limit, 0),
	FIGURE("co2_low", co2_low_mg_l, 0),
	FIGURE("copper", copper_mg_l, 3),
	FIGURE("copper_limit", copper_limit, 3),
	FIGURE("deaths", deaths, 0),
	FIGURE("ec_apart", ec_apart_percent, 0),
	FIGURE("ec_apart_limit", ec_apart_limit, 0),
	FIGURE("filter_stopped", filter_stopped_h, 0),
	FIGURE("gh", gh_dh, 1),
	FIGURE("kh", kh_dh, 1),
	FIGURE("kh_act", kh_act, 1),
	FIGURE("kh_apart_limit", kh_apart_limit, 1),
	FIGURE("kh_floor", kh_floor, 1),
	FIGURE("kh_warn", kh_warn, 1),
	FIGURE("lived_days", lived_days, 0),
	FIGURE("nh3", nh3_mg_l, 4),
	FIGURE("nh3_half", nh3_half_mg_l, 3),
	FIGURE("nh3_limit", nh3_limit, 3),
	FIGURE("no2", no2_mg_l, 2),
	FIGURE("no2_limit", no2_limit_mg_l, 2),
	FIGURE("no3", no3_mg_l, 0),
	FIGURE("no3_apart", no3_apart_mg_l, 0),
	FIGURE("no3_apart_limit", no3_apart_limit, 0),
	FIGURE("no3_limit", no3_limit, 0),
	FIGURE("oxygen", oxygen_mg_l, 1),
	FIGURE("oxygen_enough", oxygen_enough, 1),
	FIGURE("oxygen_now", oxygen_now, 1),
	FIGURE("ph", ph, 1),
	FIGURE("ph_swing_high", ph_swing_high, 1),
	FIGURE("ph_swing_low", ph_swing_low, 1),
	FIGURE("ph_trend", ph_trend, 1),
	FIGURE("reading_age", reading_age_days, 0),
	FIGURE("tan", tan_mg_l, 2),
	FIGURE("tan_safe", tan_safe, 2),
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

/* "GH 8"; what the animal does better with. */
static void say_mend_from(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_puts(text, ts_parameter_rows[f->parameter].label, " ", NULL);
	ts_text_number_short(text, f->mend_from, 1);
}

static void say_mend(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->mends)
		ts_say_mend(text, &f->mend);
}

static void say_better(struct ts_text *text, const struct ts_care_figures *f)
{
	if (!f->mends)
		return;
	ts_text_put(text, "They do better with ");
	say_mend_from(text, f);
	ts_text_put(text, ": ");
	ts_say_mend(text, &f->mend);
}

/* The recipe of the water that a crash is led out with. */
static void say_way_out(struct ts_text *text, const struct ts_care_figures *f)
{
	if (f->way_out_bare)
		ts_text_put(text, "Of water from reverse osmosis or clean rain. ");
	ts_say_mend(text, &f->way_out);
}

static void say_cause(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->buffer_lost
				  ? "The buffer is lost, and ammonia stands in the water"
				  : "Ammonia stands in water so acid that it does no harm yet");
}

/* Of ammonia and nitrite what was read. */
static void say_both_read(struct ts_text *text, const struct ts_care_figures *f)
{
	bool ammonia = !isnan(f->tan_mg_l);

	if (ammonia) {
		ts_text_put(text, "Ammonia ");
		ts_text_number_short(text, f->tan_mg_l, 2);
		ts_text_put(text, " mg/L N");
	}
	if (isnan(f->no2_mg_l))
		return;
	ts_text_put(text, ammonia ? ", nitrite " : "Nitrite ");
	ts_text_number_short(text, f->no2_mg_l, 2);
	ts_text_put(text, " mg/L");
}

static void say_share(struct ts_text *text, const struct ts_care_figures *f)
{
	ts_text_put(text, f->careful ? "a quarter" : "a third to half");
}

/* How much of it is poison; without a pH nobody knows. */
static void say_unionised(struct ts_text *text, const struct ts_care_figures *f)
{
	if (isnan(f->nh3_mg_l)) {
		ts_text_put(text, "; how much of it is poison the pH decides: test it");
		return;
	}
	ts_text_put(text, ", of it ");
	ts_text_number_short(text, f->nh3_mg_l, 4);
	ts_text_put(text, " mg/L un-ionised, borne to ");
	ts_text_number_short(text, f->nh3_limit, 3);
}

/* What is no figure but a sentence of its own. */
static const struct {
	const char *name;
	void (*say)(struct ts_text *text, const struct ts_care_figures *f);
} sentences[] = {
	{"better", say_better},
	{"both_read", say_both_read},
	{"cause", say_cause},
	{"chase", say_chase},
	{"mend", say_mend},
	{"mend_from", say_mend_from},
	{"share", say_share},
	{"unionised", say_unionised},
	{"way_out", say_way_out},
};

static bool is(const char *name, size_t len, const char *what)
{
	return strlen(what) == len && memcmp(name, what, len) == 0;
}

static void put_named(struct ts_text *text, const char *name, size_t len,
	const struct ts_care_figures *f, const struct ts_match *residents)
{
	const struct ts_match *one = f->animal >= 0 ? &residents[f->animal] : NULL;

	if (is(name, len, "animal") && one)
		say_animal(text, one);
	else if (is(name, len, "miss") && one)
		ts_say_parameter(text, (enum ts_parameter)f->parameter, &one->at[f->parameter]);
	for (size_t i = 0; i < sizeof sentences / sizeof *sentences; i++) {
		if (is(name, len, sentences[i].name))
			sentences[i].say(text, f);
	}
	for (size_t i = 0; i < sizeof figures / sizeof *figures; i++) {
		double value;

		if (!is(name, len, figures[i].name))
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
