/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The JSON of rank and why: always complete, every species and every parameter, null where a value
 * is not known. The contract is docs/formats.md.
 */
#include <string.h>

#include "cli/commands.h"
#include "report/json.h"
#include "words/sentence.h"

static void put_range(struct ts_json *j, const char *key, const struct ts_range *r)
{
	ts_json_list(j, key);
	ts_json_number(j, NULL, r->low, 2);
	ts_json_number(j, NULL, r->high, 2);
	ts_json_end_list(j);
}

static void put_parameter(
	struct ts_json *j, const struct answer *a, const struct ts_match *m, int p)
{
	const struct ts_parameter_fit *f = &m->at[p];
	const struct ts_span *s = &a->profile.at[p];

	ts_json_object(j, NULL);
	ts_json_text(j, "name", ts_parameter_rows[p].key);
	ts_json_text(j, "unit", ts_parameter_rows[p].unit);
	ts_json_number(j, "reading", s->given ? f->reading : (double)NAN, 2);
	ts_json_number(j, "reading_low", s->given ? s->low : (double)NAN, 2);
	ts_json_number(j, "reading_high", s->given ? s->high : (double)NAN, 2);
	put_range(j, "tolerated", &f->tolerated);
	put_range(j, "preferred", &f->preferred);
	ts_json_list(j, "source");
	ts_json_text(j, NULL, f->source[0]);
	ts_json_text(j, NULL, f->source[1]);
	ts_json_end_list(j);
	ts_json_number(j, "suitability", f->suitability, 3);
	ts_json_number(j, "outside_by", f->known ? f->outside_by : (double)NAN, 2);
	ts_json_end_object(j);
}

static void put_excluded_by(struct ts_json *j, const struct answer *a, const struct ts_match *m)
{
	ts_json_list(j, "excluded_by");
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_parameter_fit *f = &m->at[p];

		if (!f->known || f->verdict != TS_EXCLUDED)
			continue;
		ts_json_object(j, NULL);
		ts_json_text(j, "name", ts_parameter_rows[p].key);
		ts_json_number(j, "outside_by", f->outside_by, 2);
		ts_json_text(j, "unit", ts_parameter_rows[p].unit);
		ts_json_number(j, "would_fit_if",
			f->outside_by > 0 ? f->tolerated.high : f->tolerated.low, 2);
		ts_json_end_object(j);
	}
	if (m->verdict == TS_EXCLUDED && !isnan(m->copper_borne_mg_l)) {
		ts_json_object(j, NULL);
		ts_json_text(j, "name", "copper");
		ts_json_number(
			j, "outside_by", a->profile.poisons.copper_mg_l - m->copper_borne_mg_l, 3);
		ts_json_text(j, "unit", "mg/L");
		ts_json_number(j, "would_fit_if", m->copper_borne_mg_l, 3);
		ts_json_end_object(j);
	}
	ts_json_end_list(j);
}

static void put_match(struct ts_json *j, const struct answer *a, const struct ts_match *m)
{
	const struct ts_species *s = m->species;
	const char *slash = strrchr(s->file, '/');
	char id[128] = "";

	strncat(id, slash ? slash + 1 : s->file, sizeof id - 1);
	if (strlen(id) > 5)
		id[strlen(id) - 5] = '\0';
	ts_json_object(j, NULL);
	ts_json_text(j, "species", s->species);
	ts_json_text(j, "id", id);
	ts_json_text(j, "common", s->common.en.count ? s->common.en.items[0] : NULL);
	ts_json_text(j, "verdict", ts_verdict_words[m->verdict]);
	ts_json_number(j, "fit", m->fit, 3);
	ts_json_text(j, "limiting", m->limiting < 0 ? NULL : ts_parameter_rows[m->limiting].key);
	ts_json_list(j, "parameters");
	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		put_parameter(j, a, m, p);
	ts_json_end_list(j);
	put_excluded_by(j, a, m);
	ts_json_number(j, "adult_length_cm", s->adult_length_cm, 1);
	ts_json_number(j, "group_least", s->group.least, 0);
	ts_json_number(j, "tank_length_cm", ts_match_tank_length_cm(s), 0);
	ts_json_number(j, "tank_volume_l", (double)NAN, 0);
	ts_json_end_object(j);
}

static void put_water(struct ts_json *j, const struct answer *a)
{
	const struct ts_profile *p = &a->profile;

	ts_json_object(j, "water");
	ts_json_text(j, "name", a->water.name);
	ts_json_number(j, "kept_age_days", a->kept_age_days, 0);
	for (int i = 0; i < TS_PARAMETER__COUNT; i++) {
		const struct ts_span *s = &p->at[i];

		ts_json_object(j, ts_parameter_rows[i].key);
		ts_json_text(j, "unit", ts_parameter_rows[i].unit);
		ts_json_number(j, "value", s->given ? s->value : (double)NAN, 2);
		ts_json_number(j, "low", s->given ? s->low : (double)NAN, 2);
		ts_json_number(j, "high", s->given ? s->high : (double)NAN, 2);
		ts_json_end_object(j);
	}
	ts_json_number(j, "ph_read", p->ph_read, 2);
	ts_json_bool(j, "ph_computed", p->ph_computed);
	ts_json_number(j, "ph_tank_low", p->ph_tank_low, 1);
	ts_json_number(j, "ph_tank", p->ph_tank, 1);
	ts_json_number(j, "ph_tank_high", p->ph_tank_high, 1);
	ts_json_list(j, "unusual");
	for (unsigned bit = 1; bit <= TS_UNUSUAL_NO_PH_FROM_KH; bit <<= 1) {
		struct ts_text text;

		if (!(p->unusual & bit))
			continue;
		ts_text_open(&text, &j->text->allocator);
		ts_say_unusual(&text, bit, p);
		ts_json_text(j, NULL, ts_text_get(&text));
		j->text->failed |= text.failed;
		ts_text_drop(&text);
	}
	ts_json_end_list(j);
	ts_json_list(j, "poisons");
	for (unsigned bit = 1; bit <= TS_POISON_COPPER; bit <<= 1) {
		struct ts_text text;

		if (!(p->poisons.found & bit))
			continue;
		ts_text_open(&text, &j->text->allocator);
		ts_say_poison(&text, bit, &p->poisons);
		ts_json_text(j, NULL, ts_text_get(&text));
		j->text->failed |= text.failed;
		ts_text_drop(&text);
	}
	ts_json_end_list(j);
	ts_json_text(j, "next_to_measure", ts_next_to_measure(p));
	ts_json_end_object(j);
}

void rank_json(struct session *s, const struct answer *a, const char *command)
{
	static const char *const lists[] = {"ranked", "excluded", "near_misses"};
	struct ts_json j;

	ts_json_open(&j, s->out);
	ts_json_object(&j, NULL);
	ts_json_text(&j, "tapshoal", TS_VERSION);
	ts_json_number(&j, "format", 1, 0);
	ts_json_text(&j, "command", command);
	put_water(&j, a);
	for (int list = 0; list < 3; list++) {
		ts_json_list(&j, lists[list]);
		for (size_t i = 0; i < a->count; i++) {
			bool excluded = a->matches[i].verdict == TS_EXCLUDED;

			if (list == 0       ? !excluded
				: list == 1 ? excluded
					    : ts_match_near_miss(&a->matches[i]) >= 0)
				put_match(&j, a, &a->matches[i]);
		}
		ts_json_end_list(&j);
	}
	ts_json_end_object(&j);
}
