/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One animal against the water as a result, sentences included.
 */
#include "answers/matched.h"

#include <string.h>

#include "model/shape.h"
#include "stock/room.h"
#include "stock/rules.h"
#include "words/rulings.h"
#include "words/sentence.h"
#include "words/unusual.h"

static void make_parameter(struct ts_arena *arena, const struct ts_profile *profile,
	const struct ts_match *m, int p, struct ts_parameter_result *ret)
{
	const struct ts_parameter_fit *f = &m->at[p];
	const struct ts_span *s = &profile->at[p];
	const double unknown = (double)NAN;
	const char **source = ts_arena_array(arena, 2, sizeof *source);

	if (source) {
		source[0] = f->source[0];
		source[1] = f->source[1];
	}
	*ret = (struct ts_parameter_result){ts_parameter_rows[p].key, ts_parameter_rows[p].unit,
		s->given || f->known ? f->reading : unknown, s->given ? s->low : unknown,
		s->given ? s->high : unknown, f->tolerated, f->preferred, {source, source ? 2 : 0},
		f->suitability, f->known ? f->outside_by : unknown,
		f->known ? f->uncomfortable_by : unknown, s->given && s->from == TS_FROM_RESULT};
}

struct ts_parameter_result *ts_answer_parameters(struct ts_arena *arena, const struct ts_match *m,
	const struct ts_profile *profile, size_t *ret_count)
{
	struct ts_parameter_result *rows = ts_arena_array(arena, TS_PARAMETER__COUNT, sizeof *rows);

	*ret_count = rows ? TS_PARAMETER__COUNT : 0;
	for (size_t p = 0; p < *ret_count; p++)
		make_parameter(arena, profile, m, (int)p, &rows[p]);
	return rows;
}

static bool excludes_any(const struct ts_match *m)
{
	bool any = m->verdict == TS_EXCLUDED;

	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		any |= m->at[p].known && m->at[p].verdict == TS_EXCLUDED;
	return any;
}

static void make_excluded(
	const struct ts_profile *profile, const struct ts_match *m, struct ts_match_result *ret)
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_parameter_fit *f = &m->at[p];

		if (!f->known || f->verdict != TS_EXCLUDED)
			continue;
		ret->excluded_by[ret->excluded_by_count++] = (struct ts_excluded_result){
			ts_parameter_rows[p].key, f->outside_by, ts_parameter_rows[p].unit,
			f->outside_by > 0 ? f->tolerated.high : f->tolerated.low};
	}
	if (m->verdict == TS_EXCLUDED && !isnan(m->copper_borne_mg_l))
		ret->excluded_by[ret->excluded_by_count++] = (struct ts_excluded_result){"copper",
			profile->poisons.copper_mg_l - m->copper_borne_mg_l, "mg/L",
			m->copper_borne_mg_l};
}

const char *ts_answer_id(struct ts_arena *arena, const char *file)
{
	const char *slash = strrchr(file, '/'), *start = slash ? slash + 1 : file;

	return ts_arena_text(arena, start, strcspn(start, "."));
}

const char *ts_answer_common(const struct ts_species *species)
{
	return species->common.en.count ? species->common.en.items[0] : NULL;
}

const char ts_to_know_breeds[] = "breeds by itself";

/* What each caution means in a list, in a few plain words; most important first. */
static const struct {
	enum ts_species_caution caution;
	const char *says;
	const char *no_home; /* the sentence of the list of those no home suits; NULL: one does */
} cautions[] = {
	{TS_CAUTION_VENOMOUS, "venomous", "its sting needs a hospital: not for a home tank"},
	{TS_CAUTION_ELECTRIC, "electric", "its shock fells a person: not for a home tank"},
	{TS_CAUTION_STINGS, "stings", "it stings: only for people who know how to handle it"},
	{TS_CAUTION_RESTRICTED, "restricted by law",
		"restricted by law in some places: ask your authority before anything else"},
	{TS_CAUTION_PROTECTED, "protected",
		"protected: ask your authority, and the seller for its papers"},
	{TS_CAUTION_NO_HOME_SUITS, "for no home", "no tank that a home has suits it"},
	{TS_CAUTION_GROWS_TOO_BIG, "outgrows home tanks", "it outgrows every usual tank"},
	{TS_CAUTION_HARD_TO_FEED, "hard to feed", "it starves where nobody has its food every day"},
	{TS_CAUTION_DIES_OF_SMALL_ERRORS, "dies of small errors",
		"it dies of small errors of the water: for people who test every day"},
	{TS_CAUTION_BITES, "bites", NULL},
	{TS_CAUTION_NEEDS_SALT, "needs salt", NULL},
	{TS_CAUTION_ESCAPES, "gets out: tight lid", NULL},
	{TS_CAUTION_BREEDS_UNASKED, ts_to_know_breeds, NULL},
	{TS_CAUTION_SPINY_HANDS, "spines hurt hands", NULL},
	{TS_CAUTION_SHORT_LIVED, "short-lived", NULL},
	{TS_CAUTION_WILD_CAUGHT, "mostly wild-caught", NULL},
	{TS_CAUTION_OFTEN_SICK, "often sold sick", NULL},
};
#define CAUTIONS (sizeof cautions / sizeof *cautions)

/* The same of what an animal does and wants. */
static void habits(const struct ts_species *s, struct ts_texts *ret)
{
	if (s->needs.land)
		ret->items[ret->count++] = "needs land: half-filled tank";
	if (s->habits & TS_HABIT_OLD_TANK)
		ret->items[ret->count++] = "old tanks only";
	if (s->habits & TS_HABIT_SPECIALIST)
		ret->items[ret->count++] = "special food";
	if (s->nips == TS_NIPS_YES)
		ret->items[ret->count++] = "bites fins";
	if (s->to_own_kind == TS_INJURES && s->own_kind_when == TS_ALWAYS)
		ret->items[ret->count++] = "fights its kind";
}

struct ts_texts ts_answer_to_know(struct ts_arena *arena, const struct ts_species *s)
{
	const char *said[CAUTIONS + 5];
	struct ts_texts all = {said, 0}, texts = {0};

	habits(s, &all);
	for (size_t i = 0; i < CAUTIONS; i++) {
		if (s->cautions & 1u << cautions[i].caution)
			all.items[all.count++] = cautions[i].says;
	}
	texts.items = all.count ? ts_arena_array(arena, all.count, sizeof *texts.items) : NULL;
	if (texts.items) {
		memcpy(texts.items, said, all.count * sizeof *said);
		texts.count = all.count;
	}
	return texts;
}

const char *ts_answer_no_home(const struct ts_asking *asking, const struct ts_species *s)
{
	struct ts_text text;
	const char *kept = NULL;

	ts_text_open(&text, &asking->arena->allocator);
	for (size_t i = 0; i < CAUTIONS; i++) {
		if (!cautions[i].no_home || !(s->cautions & 1u << cautions[i].caution))
			continue;
		ts_text_puts(&text, text.len ? "; " : "", cautions[i].no_home, NULL);
		if (cautions[i].caution == TS_CAUTION_GROWS_TOO_BIG) {
			ts_text_put(&text, ": grown it is ");
			ts_text_number_short(&text, s->adult_length_cm, 0);
			ts_text_put(&text, " cm long");
		}
	}
	if (text.len)
		kept = ts_asking_keep(asking, &text);
	ts_text_drop(&text);
	return kept;
}

const char *ts_answer_no_room(
	const struct ts_asking *asking, const struct ts_species *s, const struct ts_tank *tank)
{
	struct ts_ruling ruling;
	struct ts_text text;
	const char *kept = NULL;

	ts_text_open(&text, &asking->arena->allocator);
	switch (ts_room_for(s, tank, asking->practice, &ruling)) {
	case TS_ROOM_BY_RULE:
		ts_say_ruling(&text, &ruling);
		break;
	case TS_ROOM_BY_WASTE:
		ts_say_animal(&text, s);
		ts_text_put(&text, ": ");
		ts_text_number_short(&text, s->group.least, 0);
		ts_text_put(&text, " of them grown make more waste than so little water bears");
		break;
	default:
		break;
	}
	if (text.len)
		kept = ts_asking_keep(asking, &text);
	ts_text_drop(&text);
	return kept;
}

/* "GH 9", "24 C": the reading that counts, as short as it is still understood. */
static void put_reading(struct ts_text *text, int p, const struct ts_parameter_fit *f)
{
	const struct ts_parameter_row *row = &ts_parameter_rows[p];

	if (p != TS_TEMPERATURE)
		ts_text_puts(text, row->label, " ", NULL);
	ts_text_number_short(text, f->reading, ts_reading_decimals((enum ts_parameter)p, f->read));
	ts_text_put(text, p == TS_TEMPERATURE ? " C" : "");
}

/*
 * "GH 9, likes 2..12", "GH 16, likes to 14: 2 too hard": what decides, for a list; the house
 * sentence stands with the reasons.
 */
static void say_likes(struct ts_text *text, int p, const struct ts_parameter_fit *f)
{
	const struct ts_parameter_row *row = &ts_parameter_rows[p];
	const struct ts_range *band = isnan(f->preferred.low) ? &f->tolerated : &f->preferred;
	double miss = isnan(f->preferred.low) ? f->outside_by : f->uncomfortable_by;

	if (!f->known) {
		ts_say_parameter(text, (enum ts_parameter)p, f);
		return;
	}
	put_reading(text, p, f);
	ts_text_put(text, ", likes ");
	ts_say_miss(text, row, band, miss);
}

/* The number that decides. */
static void say_deciding(
	struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	ts_say_copper(text, m, profile);
	if (!text->len)
		ts_say_little_oxygen(text, m, profile);
	if (text->len)
		return;
	if (m->limiting >= 0 && m->verdict != TS_SUITS)
		say_likes(text, m->limiting, &m->at[m->limiting]);
	else if (m->gh_missing)
		ts_text_put(text, "measure GH first");
	else if (m->nearest >= 0)
		say_likes(text, m->nearest, &m->at[m->nearest]);
	else
		ts_text_put(text, "no limit is near");
}

static struct ts_texts reasons_of(
	const struct ts_asking *asking, const struct ts_match *m, const struct ts_profile *profile)
{
	struct ts_texts reasons = {0};
	struct ts_text text;

	ts_text_open(&text, &asking->arena->allocator);
	ts_say_copper(&text, m, profile);
	if (text.len)
		ts_asking_note(asking, &reasons, ts_asking_keep(asking, &text));
	if (m->limiting >= 0 && m->verdict != TS_SUITS) {
		ts_say_parameter(&text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
		ts_asking_note(asking, &reasons, ts_asking_keep(asking, &text));
		ts_say_near_miss(&text, m);
		if (text.len)
			ts_asking_note(asking, &reasons, ts_asking_keep(asking, &text));
	}
	ts_text_drop(&text);
	return reasons;
}

void ts_answer_match(const struct ts_asking *asking, const struct ts_match *m,
	const struct ts_profile *profile, struct ts_match_result *ret)
{
	const struct ts_species *s = m->species;
	struct ts_arena *arena = asking->arena;
	struct ts_text text;

	*ret = (struct ts_match_result){.species = s->species,
		.id = ts_answer_id(arena, s->file),
		.common = ts_answer_common(s),
		.form = s->form,
		.verdict = ts_verdict_words[m->verdict],
		.fit = m->fit,
		.limiting = m->limiting < 0 ? NULL : ts_parameter_rows[m->limiting].key,
		.adult_length_cm = s->adult_length_cm,
		.group_least = s->group.least,
		.group_comfortable = s->group.comfortable,
		.tank_length_cm = ts_match_tank_length_cm(s),
		.tank_volume_l = ts_match_tank_volume_l(s),
		.family = s->family,
		.kind = ts_words_kind[s->kind],
		.swims = ts_words_swims[s->swims],
		.sold = ts_words_sold[s->sold],
		.distance = m->distance,
		.reasons = reasons_of(asking, m, profile),
		.to_know = ts_answer_to_know(arena, s)};
	ret->parameters = ts_answer_parameters(arena, m, profile, &ret->parameter_count);
	if (excludes_any(m))
		ret->excluded_by =
			ts_arena_array(arena, TS_PARAMETER__COUNT + 1, sizeof *ret->excluded_by);
	if (ret->excluded_by)
		make_excluded(profile, m, ret);
	ts_text_open(&text, &arena->allocator);
	say_deciding(&text, m, profile);
	ret->says = ts_asking_keep(asking, &text);
	ts_text_drop(&text);
}

static struct ts_span_result span_of(const struct ts_profile *profile, int p)
{
	const struct ts_span *s = &profile->at[p];
	const double unknown = (double)NAN;

	return (struct ts_span_result){ts_parameter_rows[p].unit, s->given ? s->value : unknown,
		s->given ? s->low : unknown, s->given ? s->high : unknown};
}

#define SAID_MOST 16

/* The sentences of the bits that are set. */
static struct ts_texts said(
	struct ts_arena *arena, const struct ts_profile *profile, unsigned bits, bool poisons)
{
	struct ts_texts texts = {ts_arena_array(arena, SAID_MOST, sizeof *texts.items), 0};
	struct ts_text text;

	ts_text_open(&text, &arena->allocator);
	for (unsigned i = 0; texts.items && i < SAID_MOST; i++) {
		if (!(bits & 1u << i))
			continue;
		if (poisons)
			ts_say_poison(&text, 1u << i, &profile->poisons);
		else
			ts_say_unusual(&text, 1u << i, profile);
		texts.items[texts.count++] = ts_arena_text(arena, ts_text_get(&text), text.len);
		arena->failed |= text.failed;
		ts_text_drop(&text);
	}
	return texts;
}

struct ts_water_asked_result ts_answer_water(
	struct ts_arena *arena, const char *name, double kept_age_days, const struct ts_profile *p)
{
	return (struct ts_water_asked_result){.name = name,
		.kept_age_days = kept_age_days,
		.gh = span_of(p, TS_GH),
		.kh = span_of(p, TS_KH),
		.ph = span_of(p, TS_PH),
		.temp = span_of(p, TS_TEMPERATURE),
		.salinity = span_of(p, TS_SALINITY),
		.ph_read = p->ph_read,
		.ph_computed = p->ph_computed,
		.ph_tank_low = p->ph_tank_low,
		.ph_tank = p->ph_tank,
		.ph_tank_high = p->ph_tank_high,
		.unusual = said(arena, p, p->unusual, false),
		.poisons = said(arena, p, p->poisons.found, true),
		.next_to_measure = ts_next_to_measure(p)};
}
