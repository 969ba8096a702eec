/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The questions that people ask, and what each needs, as rows. The order is common practice, no
 * source: what cannot be guessed and decides most comes first; poisons before everything where
 * animals are not well.
 */
#include "answers/ask_back.h"

#include <string.h>

#include "base/arena.h"
#include "base/text.h"
#include "model/shape.h"
#include "units/units.h"

#define FIELDS_MOST 4 /* the last is NULL */
#define ASKS_MOST 12
#define WORDS_MOST 9 /* more are no help in a message */

enum ask {
	NOTHING,
	KIND,
	GH,
	KH,
	PH,
	METHOD,
	SOFTENED,
	TEMPERATURE,
	SIDES,
	FILTER,
	LID,
	ANIMALS,
	LIVING,
	POISONS,
	NITRATE,
	CHANGE,
	FEEDING,
	SEEN,
	POURED_IN,
	SHOP,
	READ_ON,
	ASKS
};

/* clang-format off: one row a line */
static const struct {
	const char *fields[FIELDS_MOST];
	const char *says;
} asks[ASKS] = {
	[KIND] = {{"water.kind"}, "Is it water from the tap, or out of the tank?"},
	[GH] = {{"reading.GH"}, "GH, the general hardness: from drops, a strip, or \"total "
				"hardness\" on the supplier's page."},
	[KH] = {{"reading.KH"}, "KH, the carbonate hardness: from drops, a strip, or "
				"\"alkalinity\" in the supplier's report."},
	[PH] = {{"reading.pH"}, "pH; of tap water, after it stood for a day."},
	[METHOD] = {{"reading.method"}, "How was it read: drops, a strip, a meter, the supplier?"},
	[SOFTENED] = {{"water.softened"}, "Does it go through a water softener in the house?"},
	[TEMPERATURE] = {{"tank.temperature"},
		"How warm is the tank, or how warm can you keep it?"},
	[SIDES] = {{"tank.size"},
		"The tank: how long, how wide, how high? Litres alone do not tell."},
	[FILTER] = {{"tank.filter"},
		"Has its filter run with animals for two months (mature), or is it new?"},
	[LID] = {{"tank.cover"}, "Does a tight lid cover it?"},
	[ANIMALS] = {{"animal.species", "animal.count"},
		"Which animals, by their full names, and how many of each? Those that live there "
		"already too."},
	[LIVING] = {{"animal.species", "animal.count", "animal.since"},
		"Which animals live there, how many of each, and since when?"},
	[POISONS] = {{"reading.ammonia", "reading.NO2"},
		"Ammonia and nitrite, read today. If nobody measured them, that comes first."},
	[NITRATE] = {{"reading.NO3"}, "Nitrate, and when it was read."},
	[CHANGE] = {{"tank.water_change"}, "How much water do you change, and how often?"},
	[FEEDING] = {{"tank.feeding"}, "How much do you feed?"},
	[SEEN] = {{"sign.sign", "sign.onset"},
		"Is anything wrong with the animals: what do you see, and since when?"},
	[POURED_IN] = {{"supply.GH", "supply.KH"},
		"GH and KH of the water that you pour in, as well as of the tank."},
	[SHOP] = {{"shop.GH", "shop.KH", "shop.pH"},
		"GH, KH and pH of the water that they come from: ask the shop."},
	[READ_ON] = {{"reading.date"}, "When was that read?"},
};

/* In the order of the page. */
static const struct {
	const char *id, *says;
	enum ask asks[ASKS_MOST];
} questions[] = {
	{"rank", "Which animals suit this water?", {GH, KH, METHOD, KIND, PH, TEMPERATURE, SIDES}},
	{"fits", "What fits this tank?", {SIDES, GH, KH, METHOD, TEMPERATURE, FILTER, LID, PH}},
	{"together", "Can these live together?", {ANIMALS, SIDES, TEMPERATURE, GH, KH, FILTER}},
	{"tank", "What is to be done about my tank?",
		{SEEN, POISONS, LIVING, SIDES, CHANGE, GH, KH, PH, TEMPERATURE, NITRATE, POURED_IN,
			METHOD}},
	{"why", "Why these, or why not?", {ANIMALS, GH, KH, METHOD, TEMPERATURE, PH, SIDES}},
	{"water", "What is this water?", {KIND, GH, KH, PH, METHOD, SOFTENED, READ_ON}},
	{"remake", "Other minerals for these animals, step by step",
		{ANIMALS, GH, KH, METHOD, SOFTENED, SIDES, PH}},
	{"arrive", "How do I bring them home?", {SHOP, ANIMALS, GH, KH, PH, TEMPERATURE}},
	{"drift", "Where does my tank go?",
		{SIDES, CHANGE, LIVING, FEEDING, GH, KH, NITRATE, POURED_IN}},
	{"due", "What do I test next?", {LIVING, SIDES, CHANGE, FILTER, GH, KH, READ_ON}},
	{"titrate", "Why not chase the pH? Shown with my own water", {KH, PH, GH}},
};
/* clang-format on */
#define QUESTIONS (sizeof questions / sizeof *questions)

static const struct {
	const char *part;
	const struct ts_shape *shape;
} parts[] = {
	{"reading", &ts_shape_reading},
	{"supply", &ts_shape_reading},
	{"shop", &ts_shape_reading},
	{"water", &ts_shape_water},
	{"tank", &ts_shape_tank},
	{"animal", &ts_shape_stock_line},
	{"sign", &ts_shape_sign},
};

/* "reading.GH" is the row GH of a reading; NULL: a slip of ours. */
static const struct ts_field *row_of(const char *field)
{
	const size_t len = strcspn(field, ".");

	for (size_t i = 0; field[len] && i < sizeof parts / sizeof *parts; i++) {
		if (strlen(parts[i].part) == len && strncmp(parts[i].part, field, len) == 0)
			return ts_shape_field(parts[i].shape, field + len + 1);
	}
	return NULL;
}

/* What an answer to it looks like: its words, or a figure with its unit. */
static void add_takes(struct ts_text *out, const struct ts_field *row)
{
	size_t count = 0;

	for (size_t i = 0; row->words && row->words[i]; i++)
		count += strcmp(row->words[i], "unknown") != 0;
	if (count > WORDS_MOST)
		return;
	for (size_t i = 0; row->words && row->words[i]; i++) {
		if (strcmp(row->words[i], "unknown") != 0)
			ts_text_puts(out, out->len ? ", " : "", row->words[i], NULL);
	}
	if (!row->words && row->kind == TS_EVERY)
		ts_text_puts(
			out, "like ", ts_quantities[row->quantity].example, " every 7 days", NULL);
	else if (!row->words && row->quantity != TS_Q_NUMBER)
		ts_text_puts(out, "like ", ts_quantities[row->quantity].example, NULL);
}

static void make_ask(struct ts_arena *arena, enum ask ask, struct ts_ask_result *ret)
{
	const char **fields = ts_arena_array(arena, FIELDS_MOST, sizeof *fields);
	const struct ts_field *row = NULL;
	struct ts_text takes;

	*ret = (struct ts_ask_result){.says = asks[ask].says, .fields = {fields, 0}};
	for (size_t i = 0; fields && i < FIELDS_MOST && asks[ask].fields[i]; i++) {
		row = row_of(asks[ask].fields[i]);
		fields[ret->fields.count++] = asks[ask].fields[i];
	}
	if (ret->fields.count != 1 || !row)
		return;
	ts_text_open(&takes, &arena->allocator);
	add_takes(&takes, row);
	if (takes.len)
		ret->takes = ts_arena_text(arena, ts_text_get(&takes), takes.len);
	arena->failed |= takes.failed;
	ts_text_drop(&takes);
}

static const char *link_of(
	struct ts_arena *arena, const char *page, const struct ts_ask_back_result *result)
{
	struct ts_text text;
	const char *link;

	ts_text_open(&text, &arena->allocator);
	ts_text_puts(&text, page, "#wait=", NULL);
	for (size_t i = 0, count = 0; i < result->ask_count; i++) {
		for (size_t k = 0; k < result->asks[i].fields.count; k++)
			ts_text_puts(
				&text, count++ ? "," : "", result->asks[i].fields.items[k], NULL);
	}
	ts_text_puts(&text, "&ask=", result->id, NULL);
	link = ts_arena_text(arena, ts_text_get(&text), text.len);
	arena->failed |= text.failed;
	ts_text_drop(&text);
	return link;
}

const char *ts_ask_back_id(size_t index)
{
	return index < QUESTIONS ? questions[index].id : NULL;
}

const char *ts_ask_back_says(size_t index)
{
	return index < QUESTIONS ? questions[index].says : NULL;
}

const char *ts_ask_back_asks(size_t index, size_t ask, const char *const **fields)
{
	enum ask asked;

	if (index >= QUESTIONS || ask >= ASKS_MOST)
		return NULL;
	asked = questions[index].asks[ask];
	*fields = asks[asked].fields;
	return asks[asked].says;
}

const char *ts_ask_back_of(const char *field)
{
	for (size_t i = 0; i < ASKS; i++) {
		if (asks[i].fields[0] && !asks[i].fields[1] &&
			strcmp(asks[i].fields[0], field) == 0)
			return asks[i].says;
	}
	return NULL;
}

enum ts_status ts_ask_back(
	struct ts_arena *arena, const char *id, const char *page, struct ts_ask_back_result *ret)
{
	size_t found = QUESTIONS;

	*ret = (struct ts_ask_back_result){
		.questions = ts_arena_array(arena, QUESTIONS, sizeof *ret->questions),
		.asks = ts_arena_array(arena, ASKS_MOST, sizeof *ret->asks)};
	if (!ret->questions || !ret->asks)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < QUESTIONS; i++) {
		ret->questions[ret->question_count++] =
			(struct ts_asked_question_result){questions[i].id, questions[i].says};
		found = id && strcmp(id, questions[i].id) == 0 ? i : found;
	}
	ret->lead = id ? "To answer that I need to know:"
		       : "What were you asked? tapshoal ask-back with one of these words:";
	if (!id)
		return TS_OK;
	if (found == QUESTIONS)
		return TS_NO;
	ret->id = questions[found].id;
	ret->says = questions[found].says;
	ret->closing = "Write the unit that stands on the test. Leave out what you do not know.";
	for (size_t i = 0; i < ASKS_MOST && questions[found].asks[i] != NOTHING; i++)
		make_ask(arena, questions[found].asks[i], &ret->asks[ret->ask_count++]);
	if (page) {
		ret->link_says = "A page opens there with these fields waiting:";
		ret->link = link_of(arena, page, ret);
	}
	return arena->failed ? TS_NO_MEMORY : TS_OK;
}
