/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The pieces that the text answers are made of. Sentences come from words/, only their places on
 * the screen are decided here.
 */
#include <string.h>

#include "cli/commands.h"
#include "model/shape.h"
#include "words/sentence.h"

#define COLUMNS 80

/* Columns of a UTF-8 text, counting code points; the records hold no wide characters. */
static size_t columns(const char *text, size_t len)
{
	size_t n = 0;

	for (size_t i = 0; i < len; i++)
		n += ((unsigned char)text[i] & 0xc0) != 0x80;
	return n;
}

void print_wrapped(struct ts_text *out, const char *text, size_t indent)
{
	size_t column = 0;

	while (*text) {
		size_t len = strcspn(text, " "), wide = columns(text, len);

		if (column && column + 1 + wide > COLUMNS) {
			ts_text_put(out, "\n");
			column = 0;
		}
		if (!column) {
			ts_text_fill(out, ' ', indent);
			column = indent;
		} else {
			ts_text_put(out, " ");
			column++;
		}
		ts_text_add(out, text, len);
		column += wide;
		text += len;
		text += strspn(text, " ");
	}
	ts_text_put(out, "\n");
}

/* Doubt that is wider than an ordinary kit's is shown, like a range that is lived through. */
static bool wide(const struct ts_span *s, enum ts_parameter p)
{
	static const double ordinary[TS_PARAMETER__COUNT] = {2, 2, 1.1, 1.1, 0.5};

	return s->exposure || s->high - s->low > ordinary[p];
}

static void put_span(struct ts_text *out, const struct ts_span *s, enum ts_parameter p)
{
	int decimals = ts_parameter_rows[p].decimals;

	if (wide(s, p)) {
		ts_text_number_short(out, s->low, decimals);
		ts_text_put(out, "..");
		ts_text_number_short(out, s->high, decimals);
		return;
	}
	ts_text_number_short(out, s->value, decimals);
}

void print_water(struct ts_text *out, const struct answer *a, const struct options *o)
{
	static const enum ts_parameter order[] = {TS_GH, TS_KH, TS_PH, TS_TEMPERATURE};

	ts_text_put(out, "Water: ");
	if (a->water.name)
		ts_text_puts(out, a->water.name, ": ", NULL);
	for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
		const struct ts_span *s = &a->profile.at[order[i]];
		bool tank = order[i] == TS_TEMPERATURE;

		ts_text_puts(out, i ? ", " : "", tank ? "tank " : ts_parameter_rows[order[i]].label,
			tank ? "" : " ", NULL);
		if (s->given)
			put_span(out, s, order[i]);
		else
			ts_text_put(out, tank ? "temperature not given" : "not given");
		if (tank && s->given)
			ts_text_put(out, " C");
	}
	ts_text_puts(out, "\nAnimals: ", o->keeping.wild ? "wild-caught" : "farm-bred", ", ",
		o->keeping.breeding ? "for breeding" : "for display", "\n", NULL);
}

static void print_note(struct ts_text *out, struct ts_text *note)
{
	ts_text_put(out, "\n");
	print_wrapped(out, ts_text_get(note), 0);
	out->failed |= note->failed;
	ts_text_drop(note);
}

void print_notes(struct ts_text *out, const struct answer *a)
{
	const struct ts_profile *p = &a->profile;
	struct ts_text note;

	ts_text_open(&note, &out->allocator);
	for (unsigned bit = 1; bit <= TS_POISON_COPPER; bit <<= 1) {
		if (!(p->poisons.found & bit))
			continue;
		ts_say_poison(&note, bit, &p->poisons);
		print_note(out, &note);
	}
	for (unsigned bit = 1; bit <= TS_UNUSUAL_NO_PH_FROM_KH; bit <<= 1) {
		if (!(p->unusual & bit))
			continue;
		ts_say_unusual(&note, bit, p);
		print_note(out, &note);
	}
	ts_say_ordinary(&note, p);
	if (note.len)
		print_note(out, &note);
	if (!p->at[TS_KH].given) {
		ts_text_put(&note, "KH is missing: how steady the pH will be cannot be said.");
		print_note(out, &note);
	}
	if (!p->at[TS_TEMPERATURE].given) {
		ts_text_put(&note, "Nothing is called suited before the temperature that the tank "
				   "will run at is known (--temperature 24..26).");
		print_note(out, &note);
	}
	ts_text_puts(&note, "Measure next: ", ts_next_to_measure(p), NULL);
	print_note(out, &note);
}

void print_name(struct ts_text *out, const struct ts_species *s)
{
	const char *common = s->common.en.count ? s->common.en.items[0] : NULL;

	ts_text_put(out, common ? common : s->species);
	if (common)
		ts_text_puts(out, " (", s->species, NULL);
	if (s->form)
		ts_text_puts(out, ", ", s->form, NULL);
	ts_text_put(out, common ? ")" : "");
}

void print_room(struct ts_text *out, const struct ts_species *s)
{
	ts_text_number_short(out, s->adult_length_cm, 1);
	ts_text_put(out, " cm, ");
	ts_text_put(out, "from ");
	ts_text_number_short(out, s->group.least, 0);
	ts_text_put(out, ", tank ");
	ts_text_number_short(out, ts_match_tank_length_cm(s), 0);
	ts_text_put(out, " cm");
}

void print_cautions(struct ts_text *out, const struct ts_species *s)
{
	bool any = false;

	for (unsigned i = 0; ts_words_cautions[i]; i++) {
		if (!(s->cautions & (1u << i)))
			continue;
		ts_text_puts(out, any ? ", " : "", ts_words_cautions[i], NULL);
		any = true;
	}
}
