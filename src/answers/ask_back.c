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
	TANK_GH,
	TANK_KH,
	TANK_PH,
	METHOD,
	SOFTENED,
	TEMPERATURE,
	SIDES,
	FILTER,
	FILTER_NOW,
	AGE,
	LID,
	ANIMALS,
	LIVING,
	POISONS,
	NITRATE,
	NITRATE_POURED_IN,
	CHANGE,
	CHANGED_THEN,
	TREATED,
	COPPER,
	DEATHS,
	FEEDING,
	PLANTS,
	WELL,
	SEEN,
	POURED_IN,
	LIVED_IN,
	NEW_WATER,
	SHOP,
	READ_ON,
	ASKS
};

/* clang-format off: one row a line */
static const struct {
	const char *fields[FIELDS_MOST];
	const char *says;
	bool said; /* the words of the field would not answer it: none are shown */
} asks[ASKS] = {
	[KIND] = {{"water.kind"}, "Is it water from the tap, or out of the tank?", false},
	[GH] = {{"reading.GH"},
		"GH, the general hardness: from drops, a strip, or \"total "
		"hardness\" on the supplier's page.",
		false},
	[KH] = {{"reading.KH"},
		"KH, the carbonate hardness: from drops, a strip, or "
		"\"alkalinity\" in the supplier's report.",
		false},
	[PH] = {{"reading.pH"}, "pH of the tap water, after it stood for a day.", false},
	[TANK_GH] = {{"reading.GH"}, "GH of the tank's own water, the general hardness.", false},
	[TANK_KH] = {{"reading.KH"}, "KH of the tank's own water, the carbonate hardness.", false},
	[TANK_PH] = {{"reading.pH"}, "pH of the tank's own water, and at what hour it was read.",
		false},
	[METHOD] = {{"reading.method"}, "How was it read: drops, a strip, a meter, the supplier?",
		false},
	[SOFTENED] = {{"water.softened"}, "Does it go through a water softener in the house?",
		false},
	[TEMPERATURE] = {{"tank.temperature"}, "How warm is the tank, or how warm can you keep it?",
		false},
	[SIDES] = {{"tank.size"},
		"The tank: how long, how wide, how high? Litres alone do not tell.", false},
	[FILTER] = {{"tank.filter"},
		"Has its filter run with animals for two months (mature), or is it new?", false},
	[FILTER_NOW] = {{"tank.filter"},
		"Is there a filter, does it run at this moment, and was it washed or off?", false},
	[AGE] = {{"tank.running_since"},
		"How long has the tank been filled, and since when are animals in it?", false},
	[LID] = {{"tank.cover"}, "Does a tight lid cover it?", false},
	[ANIMALS] = {{"animal.species", "animal.count"},
		"Which animals, by their full names, and how many of each? Those that live there "
		"already too.",
		false},
	[LIVING] = {{"animal.species", "animal.count", "animal.since"},
		"Which animals live there, how many of each, and since when?", false},
	[POISONS] = {{"reading.ammonia", "reading.NO2"},
		"Ammonia and nitrite of the tank, read today.", false},
	[NITRATE] = {{"reading.NO3"}, "Nitrate in the tank, and when it was read.", false},
	[NITRATE_POURED_IN] = {{"supply.NO3"},
		"Nitrate of the tap, or of whatever water is poured in: no change gets below it.",
		false},
	[CHANGE] = {{"tank.water_change"}, "How much water do you change, and how often?", false},
	[CHANGED_THEN] = {{"sign.after"},
		"What was done just before, and how much water was changed that day, how warm?",
		true},
	[TREATED] = {{"water.disinfectant"},
		"Was the new water treated against chlorine (a conditioner), and what else went "
		"into the tank: medicine, fertiliser, sprays in the room?",
		true},
	[COPPER] = {{"reading.Cu"},
		"Copper, in the tank and in water that stood in the pipes: shrimps and snails die "
		"of it first.",
		false},
	[DEATHS] = {{"plan.deaths"}, "How many died, of which kinds, and who is well?", false},
	[FEEDING] = {{"tank.feeding"}, "How much do you feed?", false},
	[PLANTS] = {{"tank.plants"}, "Are there growing plants?", false},
	[WELL] = {{"sign.sign", "sign.onset"},
		"Are all of them well and eating? If not: what do you see, and since when?", false},
	[SEEN] = {{"sign.sign", "sign.onset"}, "What do you see, of which animals, and since when?",
		false},
	[POURED_IN] = {{"supply.GH", "supply.KH", "supply.pH"},
		"GH, KH and pH of the water that you pour in, beside those of the tank.", false},
	[LIVED_IN] = {{"reading.GH", "reading.KH", "reading.pH"},
		"The old water, that they live in now: GH, KH and pH of the tank.", false},
	[NEW_WATER] = {{"supply.GH", "supply.KH", "supply.pH"},
		"The new water, that you can pour in: GH, KH and pH, with the unit that stands "
		"there "
		"(dH, ppm as CaCO3, mg/L).",
		false},
	[SHOP] = {{"shop.GH", "shop.KH", "shop.pH"},
		"GH, KH and pH of the water that they come from: ask the shop.", false},
	[READ_ON] = {{"reading.date"}, "When was that read?", false},
};

/* Right whatever the cause is; before any question (judgement: life in danger). */
#define FIRST_AID "air on, a third of the water changed for treated water of like warmth, no food."

/*
 * In the order of the page; then what is seen, each answered there by the question `by`. Of a tank
 * that runs, what decides whether to leave it alone comes first.
 */
static const struct {
	const char *id, *says, *by, *first;
	enum ask asks[ASKS_MOST];
} questions[] = {
	{"rank", "Which animals suit this water?", NULL, NULL,
		{GH, KH, METHOD, KIND, PH, TEMPERATURE, SIDES}},
	{"fits", "What fits this tank?", NULL, NULL,
		{SIDES, GH, KH, METHOD, TEMPERATURE, FILTER, LID, PH}},
	{"together", "Can these live together?", NULL, NULL,
		{ANIMALS, SIDES, TEMPERATURE, GH, KH, FILTER}},
	{"tank", "What is to be done about my tank?", NULL,
		"If any of them gasp or die, now, before any test: " FIRST_AID,
		{WELL, LIVING, TANK_GH, TANK_KH, TANK_PH, SIDES, CHANGE, FILTER, TEMPERATURE,
			NITRATE, POURED_IN}},
	{"why", "Why these, or why not?", NULL, NULL,
		{ANIMALS, GH, KH, METHOD, TEMPERATURE, PH, SIDES}},
	{"water", "What is this water?", NULL, NULL, {KIND, GH, KH, PH, METHOD, SOFTENED, READ_ON}},
	{"remake", "Other minerals for these animals, step by step", NULL, NULL,
		{LIVING, LIVED_IN, NEW_WATER, METHOD, SOFTENED, SIDES}},
	{"arrive", "How do I bring them home?", NULL, NULL,
		{SHOP, ANIMALS, TANK_GH, TANK_KH, TANK_PH, TEMPERATURE}},
	{"drift", "Where does my tank go?", NULL, NULL,
		{SIDES, CHANGE, LIVING, FEEDING, TANK_GH, TANK_KH, NITRATE, POURED_IN,
			NITRATE_POURED_IN}},
	{"due", "What do I test next?", NULL, NULL,
		{LIVING, SIDES, CHANGE, FILTER, TANK_GH, TANK_KH, READ_ON}},
	{"titrate", "Why not chase the pH? Shown with my own water", NULL, NULL, {KH, PH, GH}},
	{"gasping", "They gasp, lie about or die: what now?", "tank",
		"Now, before any test: " FIRST_AID,
		{SEEN, FILTER_NOW, AGE, TREATED, POISONS, LIVING, SIDES, TEMPERATURE, TANK_PH,
			TANK_KH, CHANGE}},
	{"died", "Animals died, fish or shrimps: why?", "tank",
		"If others gasp or lie about, now, before any test: " FIRST_AID,
		{DEATHS, CHANGED_THEN, TREATED, COPPER, POISONS, LIVING, AGE, TEMPERATURE, TANK_GH,
			TANK_KH, POURED_IN}},
	{"nitrate", "The nitrate is high: how do I get it down?", "tank", NULL,
		{NITRATE, NITRATE_POURED_IN, CHANGE, FEEDING, LIVING, SIDES, PLANTS, WELL}},
	{"acid", "How do I lower the pH?", "tank", NULL,
		{WELL, LIVING, TANK_GH, TANK_KH, TANK_PH, SIDES, POURED_IN}},
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
	{"plan", &ts_shape_plan},
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
	if (ret->fields.count != 1 || !row || asks[ask].said)
		return;
	ts_text_open(&takes, &arena->allocator);
	add_takes(&takes, row);
	if (takes.len)
		ret->takes = ts_arena_text(arena, ts_text_get(&takes), takes.len);
	arena->failed |= takes.failed;
	ts_text_drop(&takes);
}

static const char *link_of(struct ts_arena *arena, const char *page, const char *by,
	const struct ts_ask_back_result *result)
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
	ts_text_puts(&text, "&ask=", by ? by : result->id, NULL);
	if (by)
		ts_text_puts(&text, "&seen=", result->id, NULL);
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

const char *ts_ask_back_by(size_t index)
{
	return index < QUESTIONS ? questions[index].by : NULL;
}

const char *ts_ask_back_first(size_t index)
{
	return index < QUESTIONS ? questions[index].first : NULL;
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
	ret->first = questions[found].first;
	ret->closing = "Write the unit that stands on the test. Leave out what you do not know.";
	for (size_t i = 0; i < ASKS_MOST && questions[found].asks[i] != NOTHING; i++)
		make_ask(arena, questions[found].asks[i], &ret->asks[ret->ask_count++]);
	if (page) {
		ret->link_says = "A page opens there with these fields waiting:";
		ret->link = link_of(arena, page, questions[found].by, ret);
	}
	return arena->failed ? TS_NO_MEMORY : TS_OK;
}
