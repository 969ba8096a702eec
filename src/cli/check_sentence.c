/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentence is cut into words; from each on the longest name is looked for. Cuts, counts, units
 * and keys are rows. Nothing that might be an animal is passed over: what carries a figure and is
 * no name stays one that is not known.
 */
#include "cli/check_sentence.h"

#include <stdio.h>
#include <string.h>
#include <strings.h>

#include "base/text.h"
#include "catalogue/name_heads.h"
#include "model/shape.h"
#include "records/signs.h"
#include "records/value.h"

#define WORDS_MOST 200
#define NAME_WORDS_MOST 6

/* Who is named behind it lives in the tank, is planned, or as before. */
enum then { AS_BEFORE, LIVES, PLANNED };

/* Where a sentence is cut; longest first where one begins with another. */
static const struct {
	const char *words;
	enum then then;
} cuts[] = {
	{",", AS_BEFORE},
	{"and", AS_BEFORE},
	{"i already have", LIVES},
	{"i have got", LIVES},
	{"can i", PLANNED},
	{"could i", PLANNED},
	{"may i", PLANNED},
	{"should i", PLANNED},
	{"would i", PLANNED},
	{"if i", PLANNED},
	{"i have", LIVES},
	{"we have", LIVES},
	{"i've got", LIVES},
	{"i've", LIVES},
	{"i keep", LIVES},
	{"there are", LIVES},
	{"there is", LIVES},
	{"one of my", LIVES},
	{"some of my", LIVES},
	{"most of my", LIVES},
	{"all of my", LIVES},
	{"all my", LIVES},
	{"all", AS_BEFORE},
	{"to my", LIVES},
	{"with my", LIVES},
	{"my", LIVES},
	{"can", PLANNED},
	{"could", PLANNED},
	{"may", PLANNED},
	{"will", PLANNED},
	{"would", PLANNED},
	{"should", PLANNED},
	{"does", PLANNED},
	{"do", PLANNED},
	{"is", PLANNED},
	{"are", PLANNED},
	{"i'd", PLANNED},
	{"i", PLANNED},
	{"we", PLANNED},
	{"you", PLANNED},
	{"it", PLANNED},
	{"them", PLANNED},
	{"they", PLANNED},
	{"this", PLANNED},
	{"that", PLANNED},
	{"want", PLANNED},
	{"like", PLANNED},
	{"love", PLANNED},
	{"plan", PLANNED},
	{"planning", PLANNED},
	{"keep", PLANNED},
	{"keeping", PLANNED},
	{"add", PLANNED},
	{"adding", PLANNED},
	{"put", PLANNED},
	{"get", PLANNED},
	{"buy", PLANNED},
	{"have", PLANNED},
	{"live", PLANNED},
	{"lives", PLANNED},
	{"go", PLANNED},
	{"goes", PLANNED},
	{"get along", PLANNED},
	{"along", PLANNED},
	{"work", PLANNED},
	{"eat", PLANNED},
	{"fit", PLANNED},
	{"with", PLANNED},
	{"without", PLANNED},
	{"together", PLANNED},
	{"well", PLANNED},
	{"ok", PLANNED},
	{"okay", PLANNED},
	{"fine", PLANNED},
	{"possible", PLANNED},
	{"please", PLANNED},
	{"hello", PLANNED},
	{"hi", PLANNED},
	{"what", PLANNED},
	{"about", PLANNED},
	{"how many", PLANNED},
	{"how", PLANNED},
	{"bowl", PLANNED},
	{"if", PLANNED},
	{"for", PLANNED},
	{"to", PLANNED},
	{"in", PLANNED},
	{"into", PLANNED},
	{"at", PLANNED},
	{"on", PLANNED},
	{"or", PLANNED},
	{"plus", AS_BEFORE},
	{"also", AS_BEFORE},
	{"but", PLANNED},
	{"the", AS_BEFORE},
	{"so", PLANNED},
	{"be", PLANNED},
	{"fish", PLANNED},
	{"tank", PLANNED},
	{"aquarium", PLANNED},
	{"tap", PLANNED},
	{"tapwater", PLANNED},
	{"water change", PLANNED},
	{"water changes", PLANNED},
	{"water", PLANNED},
	{"plants", PLANNED},
	{"planted", PLANNED},
	{"filter", PLANNED},
	{"heater", PLANNED},
};
#define CUTS (sizeof cuts / sizeof *cuts)

/* What may stand before a name: counts and sexes, as records/animals.c reads them. */
static const char *const before_name[] = {"a", "an", "one", "two", "three", "four", "five", "six",
	"seven", "eight", "nine", "ten", "twelve", "twenty", "dozen", "some", "few", "pair",
	"pairs", "breeding", "trio", "couple", "shoal", "school", "group", "of", "male", "males",
	"female", "females", "m", "f", "x"};
static const char *const behind_name[] = {"pair", "pairs", "male", "males", "female", "females"};
static const char *const sexes[] = {"male", "males", "female", "females", "m", "f"};

/* A figure with its unit behind it. */
static const struct {
	const char *unit, *flag, *as; /* `as`: how the flag's value writes it */
} units[] = {
	{"l", "--volume", " L"},
	{"litre", "--volume", " L"},
	{"litres", "--volume", " L"},
	{"liter", "--volume", " L"},
	{"liters", "--volume", " L"},
	{"gallon", "--volume", " gallons"},
	{"gallons", "--volume", " gallons"},
	{"gal", "--volume", " gallons"},
	{"dh", "--GH", " dH"},
	{"°dh", "--GH", " dH"},
	{"dgh", "--GH", " dH"},
	{"gh", "--GH", ""},
	{"dkh", "--KH", " dH"},
	{"kh", "--KH", ""},
	{"ppm", "--GH", " ppm"},
	{"fh", "--GH", " fH"},
	{"°fh", "--GH", " fH"},
	{"c", "--temperature", " C"},
	{"°c", "--temperature", " C"},
	{"celsius", "--temperature", " C"},
	{"degrees", "--temperature", " C"}, /* of warmth; fewer are of hardness */
	{"degree", "--temperature", " C"},
};
#define UNITS (sizeof units / sizeof *units)

/* A key with its figure behind it. */
static const struct {
	const char *key, *flag;
} keys[] = {
	{"gh", "--GH"},
	{"hardness", "--GH"},
	{"kh", "--KH"},
	{"ph", "--pH"},
	{"temperature", "--temperature"},
	{"temp", "--temperature"},
};
#define KEYS (sizeof keys / sizeof *keys)

/* Between a key and its figure. */
static const char *const links[] = {"is", "of", "at", "around", "about", "="};

struct reader {
	const struct ts_catalogue *catalogue;
	struct ts_name_heads heads;
	struct ts_arena *arena;
	struct sentence *out;
	const char *word[WORDS_MOST];
	size_t count, at;
	size_t pending;             /* first of the counts and sexes before `at` */
	size_t strange;             /* first of the words before `at` of which nothing was made */
	bool living, found, within; /* `within`: brackets */
	const char *last;           /* the name that was taken last */
	size_t ended;               /* the word behind it */
	bool last_living;
	bool asked; /* "will they": what follows is no sign that is seen */
	bool buys;  /* "I want": who is named does not live there yet */
	const char *sign, *how_many, *since, *after; /* NULL: not said */
};

/* What asks for what may come. */
static const char *const asking[] = {
	"can", "could", "may", "will", "would", "should", "do", "does", "if", "to", "without"};

/* What tells of animals that are to come. */
static const char *const buying[] = {"want", "add", "adding", "put", "get", "buy", "plan",
	"planning", "like", "love", "i'd", "keep", "keeping", "possible"};

static bool is(const char *a, const char *b)
{
	return strcasecmp(a, b) == 0;
}

static bool among(const char *word, const char *const *list, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		if (is(word, list[i]))
			return true;
	}
	return false;
}
#define AMONG(word, list) among(word, list, sizeof list / sizeof *list)

/* Digits, with a point within. */
static size_t figure_len(const char *at)
{
	size_t len = strspn(at, "0123456789");

	if (len && at[len] == '.' && at[len + 1] >= '0' && at[len + 1] <= '9')
		len += 1 + strspn(at + len + 1, "0123456789");
	return len;
}

static bool is_figure(const char *word)
{
	size_t len = figure_len(word);

	return len && !word[len];
}

static bool is_count(const char *word)
{
	size_t len = strspn(word, "0123456789");

	return len && (!word[len] || is(word + len, "x"));
}

static size_t unit_at(const char *word)
{
	size_t i = 0;

	while (i < UNITS && !is(word, units[i].unit))
		i++;
	return i;
}

static void add_word(struct reader *r, const char *at, size_t len)
{
	if (len && r->count < WORDS_MOST)
		r->word[r->count++] = ts_arena_text(r->arena, at, len);
}

/* "54l", "8dH": the figure and its unit are two words. */
static void add_apart(struct reader *r, const char *at, size_t len)
{
	size_t digits = figure_len(at);
	const char *rest = ts_arena_text(
		r->arena, at + (digits < len ? digits : len), digits < len ? len - digits : 0);

	if (!digits || digits >= len || !rest || (unit_at(rest) == UNITS && !AMONG(rest, sexes))) {
		add_word(r, at, len);
		return;
	}
	add_word(r, at, digits);
	add_word(r, rest, strlen(rest));
}

/* Blanks part words; marks are words of their own, a point only where no figure goes on. */
static void cut_into_words(struct reader *r, const char *at)
{
	while (*at) {
		size_t len = strcspn(at, " \t\n,;?!()+&/=");

		if (len && at[len] == '/' && at[len - 1] == '%') /* "30%/week" */
			len += 1 + strcspn(at + len + 1, " \t\n,;?!()+&/=");
		while (len && strchr(".:", at[len - 1]))
			len--;
		add_apart(r, at, len);
		at += len;
		if (*at && strchr("()=", *at))
			add_word(r, at, 1);
		else if (*at && strchr(",;?!+&/.:", *at))
			add_word(r, ",", 1);
		at += *at != '\0';
	}
}

/* The words of a phrase stand from `at` on; how many, 0: not. */
static size_t phrase(const struct reader *r, size_t at, const char *words)
{
	size_t count = 0;

	while (*words) {
		size_t len = strcspn(words, " ");

		if (at + count >= r->count || strlen(r->word[at + count]) != len ||
			strncasecmp(r->word[at + count], words, len) != 0)
			return 0;
		count++;
		words += len;
		words += *words == ' ';
	}
	return count;
}

static const char *joined(const struct reader *r, size_t from, size_t to)
{
	struct ts_text text;
	const char *all;

	ts_text_open(&text, &r->arena->allocator);
	for (size_t i = from; i < to; i++)
		ts_text_puts(&text, i > from ? " " : "", r->word[i], NULL);
	all = text.failed ? NULL : ts_arena_text(r->arena, ts_text_get(&text), text.len);
	r->arena->failed |= text.failed;
	ts_text_drop(&text);
	return all ? all : "";
}

/* A name of which a word alone is a group's is none. */
static enum ts_name_how how(const struct reader *r, const char *name)
{
	struct ts_candidates c;

	(void)ts_catalogue_species(r->catalogue, name, &c);
	return c.how == TS_NAME_GROUP && c.by_word ? TS_NAME_NEAR : c.how;
}

/* The catalogue knows the very name; `guess`: or takes it for one, by another order of words. */
static bool names(const struct reader *r, const char *words, bool guess)
{
	if (!ts_name_heads_may_name(&r->heads, words))
		return false; /* most words of a sentence: comparing them with every name is long */
	switch (how(r, words)) {
	case TS_NAME_SAME:
	case TS_NAME_FORM:
	case TS_NAME_SHARED:
	case TS_NAME_GROUP:
	case TS_NAME_OUTSIDE:
		return !guess;
	case TS_NAME_GUESSED:
		return guess;
	default:
		return false;
	}
}

/* No name ends with them; "pleco is" would be taken for one of another spelling. */
static const char *const no_end[] = {
	"is", "are", "and", "the", "in", "to", "with", "or", "on", "at", "has", "have", "all"};

/* How many words from here on are a name; 0: none. */
static size_t name_here(const struct reader *r, bool guess)
{
	size_t most = r->count - r->at < NAME_WORDS_MOST ? r->count - r->at : NAME_WORDS_MOST;

	for (size_t i = 0; i < most; i++) {
		if (strpbrk(r->word[r->at + i], ",()=") || is_figure(r->word[r->at + i]))
			most = i;
	}
	for (size_t len = most; len > guess; len--) {
		const char *last = r->word[r->at + len - 1];

		if (!AMONG(last, before_name) && !AMONG(last, no_end) &&
			names(r, joined(r, r->at, r->at + len), guess))
			return len;
	}
	return 0;
}

static void emit(struct reader *r, const char *words, bool living)
{
	struct sentence *s = r->out;

	if (living && s->living_count < TS_SENTENCE_MOST)
		s->living[s->living_count++] = words;
	else if (!living && s->planned_count < TS_SENTENCE_MOST)
		s->planned[s->planned_count++] = words;
}

static bool has_sex(const struct reader *r, size_t from, size_t to)
{
	for (size_t i = from; i < to; i++) {
		if (AMONG(r->word[i], sexes))
			return true;
	}
	return false;
}

/* "2 male 4 female" before a name: one line each. */
static void emit_each(struct reader *r, size_t from, size_t to, const char *name, bool living)
{
	while (from < to) {
		size_t end = from + 1;

		size_t stop;

		while (end < to && !is_count(r->word[end]))
			end++;
		stop = end;
		while (stop > from && (is(r->word[stop - 1], ",") || is(r->word[stop - 1], "and")))
			stop--;
		if (stop > from)
			emit(r, ts_arena_join(r->arena, joined(r, from, stop), " ", name, NULL),
				living);
		from = end;
	}
}

/* "since yesterday", before or behind what it is about. */
static bool tells_since(struct reader *r, const char *words)
{
	if (r->since || ts_onset_words(words) < 0)
		return false;
	r->since = words;
	return true;
}

/* Words of which nothing was made: with a figure before them an animal that is not known. */
static void flush_strange(struct reader *r, size_t to)
{
	const char *words = r->strange < to ? joined(r, r->strange, to) : "";
	enum ts_name_how known;

	if (*words && !tells_since(r, words)) {
		bool counted = r->pending < r->strange && is_count(r->word[r->pending]);

		known = how(r, words);
		if (known == TS_NAME_GUESSED || known == TS_NAME_NUMBER ||
			(counted && known != TS_NAME_GUESSED)) {
			emit(r, joined(r, r->pending, to), r->living);
			r->found |= known == TS_NAME_GUESSED;
		} else if (r->out->unread_count < TS_SENTENCE_MOST) {
			r->out->unread[r->out->unread_count++] = words;
		}
	}
	r->pending = r->strange = r->at;
}

/* Sexes behind the name, "6 guppies (2 males, 4 females)": they stand for its count. */
static void sexes_behind(struct reader *r)
{
	struct sentence *s = r->out;

	if (!r->last || !has_sex(r, r->pending, r->at))
		return;
	if (r->last_living)
		s->living_count--;
	else
		s->planned_count--;
	emit_each(r, r->pending, r->at, r->last, r->last_living);
	r->pending = r->strange = r->at;
}

static void flag(struct reader *r, const char *name, const char *figure, const char *unit)
{
	struct sentence *s = r->out;

	if (s->flag_count < TS_SENTENCE_MOST)
		s->flags[s->flag_count++] =
			(struct sentence_flag){name, ts_arena_join(r->arena, figure, unit, NULL)};
}

/* "54 litres", "8 dH", "300 ppm KH"; how many words, 0: none. */
static size_t figure_and_unit(struct reader *r)
{
	size_t unit, used = 2;
	const char *name, *as;

	if (r->at + 1 >= r->count || !is_figure(r->word[r->at]))
		return 0;
	unit = unit_at(r->word[r->at + 1]);
	if (unit == UNITS)
		return 0;
	name = units[unit].flag;
	as = units[unit].as;
	if (strncmp(units[unit].unit, "degree", 6) == 0 && strlen(r->word[r->at]) == 1) {
		name = "--GH";
		as = " dH";
	}
	if (is(units[unit].unit, "ppm") && r->at + 2 < r->count && is(r->word[r->at + 2], "kh")) {
		name = "--KH";
		used++;
	}
	flag(r, name, r->word[r->at], as);
	return used;
}

/* "GH 8", "pH is 7.2", "KH of 90 ppm". */
static size_t key_and_figure(struct reader *r)
{
	for (size_t i = 0; i < KEYS; i++) {
		size_t at = r->at + 1, unit;

		if (!is(r->word[r->at], keys[i].key))
			continue;
		while (at < r->count && AMONG(r->word[at], links))
			at++;
		if (at >= r->count || !is_figure(r->word[at]))
			return 0;
		unit = at + 1 < r->count ? unit_at(r->word[at + 1]) : UNITS;
		if (unit < UNITS && (!*units[unit].as || is(units[unit].flag, "--volume")))
			unit = UNITS; /* "GH 8 KH 5" */
		flag(r, keys[i].flag, r->word[at], unit < UNITS ? units[unit].as : "");
		return at + 1 + (unit < UNITS) - r->at;
	}
	return 0;
}

/* "80x35x40", "80x35x40cm". */
static size_t box(struct reader *r)
{
	const char *word = r->word[r->at];
	size_t sides = 0, at = 0;

	while (sides < 3 && figure_len(word + at)) {
		at += figure_len(word + at);
		sides++;
		if (sides < 3 && (word[at] == 'x' || word[at] == 'X'))
			at++;
	}
	if (sides < 3 || (word[at] && !is(word + at, "cm")))
		return 0;
	flag(r, "--size", word, "");
	return r->at + 1 < r->count && is(r->word[r->at + 1], "cm") ? 2 : 1;
}

#define CHANGE_WORDS_MOST 8

/* "25% weekly", "30 %/week", "25% water changes every 7 days"; the longest that is a routine. */
static size_t change(struct reader *r)
{
	static const char *const passed[] = {"water", "change", "changes", "changed", "of", "the"};
	const struct ts_field *field = ts_shape_field(&ts_shape_tank, "water_change");
	const char *said = r->word[r->at], *routine = NULL;
	size_t used = 0;

	if (!figure_len(said) ||
		!(strchr(said, '%') || (r->at + 1 < r->count && r->word[r->at + 1][0] == '%')))
		return 0;
	for (size_t i = 0; i < CHANGE_WORDS_MOST && r->at + i < r->count; i++) {
		struct ts_tank tank;
		struct ts_value_says says;

		if (i && AMONG(r->word[r->at + i], passed))
			continue;
		said = i ? ts_arena_join(r->arena, said, " ", r->word[r->at + i], NULL) : said;
		if (!said || !strpbrk(said, "abcdefghijklmnopqrstuvwxyz") ||
			!ts_value_read(field, said, strlen(said), r->arena, &tank, &says))
			continue;
		routine = said;
		used = i + 1;
	}
	if (routine)
		flag(r, "--water-change", routine, "");
	return used;
}

static size_t measure(struct reader *r)
{
	size_t used = change(r);

	if (!used)
		used = box(r);
	if (!used)
		used = key_and_figure(r);
	return used ? used : figure_and_unit(r);
}

/* A cut from here on: how many words, and what is named behind it. */
static size_t cut_here(const struct reader *r, enum then *ret)
{
	for (size_t i = 0; i < CUTS; i++) {
		size_t used = phrase(r, r->at, cuts[i].words);

		if (used) {
			*ret = cuts[i].then;
			return used;
		}
	}
	return 0;
}

/* "ryukin goldfish": the word behind is a name of the same genus. */
static bool one_genus(const struct reader *r, const char *first, const char *second)
{
	struct ts_candidates c;
	const struct ts_species *a = ts_catalogue_species(r->catalogue, first, &c);
	const struct ts_species *b = ts_catalogue_species(r->catalogue, second, &c);
	size_t len = a ? strcspn(a->species, " ") : 0;

	return a && b && strncmp(a->species, b->species, len) == 0 && b->species[len] == ' ';
}

/* What its kind is called stands behind a name, with nothing between: it is no other animal. */
static bool at_large(struct reader *r, size_t len)
{
	bool beside = r->last && r->ended == r->at && r->pending == r->at;
	const char *name = joined(r, r->at, r->at + len);

	return beside &&
	       (how(r, name) == TS_NAME_GROUP || (len == 1 && one_genus(r, r->last, name)));
}

/* How many words from `at` on such a number of their bytes fills. */
static size_t words_of(const struct reader *r, size_t bytes)
{
	size_t count = 0, len = 0;

	while (r->at + count < r->count && len < bytes)
		len += strlen(r->word[r->at + count++]) + 1;
	return count;
}

/* What is seen, of those that live there: "gasping since yesterday", "after the water change". */
static bool take_sign(struct reader *r)
{
	/* Words that mean something else as well in a sentence about animals. */
	static const char *const common[] = {"other", "thin", "algae", "spot", "dots", "slow",
		"dark", "darker", "blood", "hole", "holes", "dead", "flash", "vertical", "odd",
		"racing", "bites", "biting", "nips", "nipping", "aggressive", "aggression",
		"scared", "unusual", "velvet", "worm", "worms", "growth", "growths", "stress",
		"parasite", "parasites", "moult", "molt", "moulting", "molting", "drifting"};
	const char *rest = joined(r, r->at, r->count), *said;
	bool after = false;
	size_t bytes = ts_sign_span(rest, &after);

	if (!bytes || (!after && !ts_is_sign(rest)))
		return false;
	if (!after && ts_is_sign(rest) == strlen(r->word[r->at]) && AMONG(r->word[r->at], common))
		return false;
	if (!after && (r->asked || (r->last && !r->last_living && r->buys)))
		return false;
	said = ts_arena_text(r->arena, rest, bytes);
	if (after)
		r->after = said;
	else
		r->sign = r->sign ? ts_arena_join(r->arena, r->sign, ", ", said, NULL) : said;
	if (r->strange < r->at)
		flush_strange(r, r->at);
	r->at += words_of(r, bytes);
	r->pending = r->strange = r->at;
	return true;
}

/* Signs are told with all that was said of them. */
static void tell_sign(struct reader *r)
{
	const char *const parts[] = {r->how_many, r->sign, r->since, r->after};
	const char *all = "";

	if (!r->sign)
		return;
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
		if (parts[i])
			all = ts_arena_join(r->arena, all, *all ? " " : "", parts[i], NULL);
	}
	flag(r, "--signs", all ? all : "", "");
	r->found = true;
}

static void take_name(struct reader *r, size_t len)
{
	bool counted = r->pending < r->at && r->strange == r->at, sexed;
	const char *name;

	if (at_large(r, len)) {
		r->at += len;
		r->pending = r->strange = r->at;
		return;
	}
	/* "one honey gourami pair", "2 gourami males" */
	sexed = r->at + len < r->count && AMONG(r->word[r->at + len], behind_name) &&
		!has_sex(r, r->pending, r->at);
	len += sexed;
	name = joined(r, r->at, r->at + len);

	if (r->strange < r->at)
		flush_strange(r, r->at);
	if (counted)
		emit_each(r, r->pending, r->at, name, r->living);
	else
		emit(r, name, r->living);
	r->last = sexed ? NULL : name;
	r->last_living = r->living;
	r->found = true;
	r->at += len;
	r->ended = r->at;
	r->pending = r->strange = r->at;
}

static void take_cut(struct reader *r, size_t len, enum then then)
{
	/* "2 males and 4 females of ...": the name comes. */
	bool waits = then == AS_BEFORE && r->strange == r->at && has_sex(r, r->pending, r->at) &&
		     !r->within;
	size_t to = r->at;

	if (!waits && r->strange < to)
		flush_strange(r, to);
	r->living = then == AS_BEFORE ? r->living : then == LIVES;
	/* A question ends with its mark. */
	r->asked = !is(r->word[r->at], ",") && (r->asked || AMONG(r->word[r->at], asking));
	r->buys |= AMONG(r->word[r->at], buying);
	if (ts_breadth_words(r->word[r->at]) >= 0)
		r->how_many = r->word[r->at];
	r->at += len;
	r->strange = r->at;
	if (!waits && !r->within)
		r->pending = r->at;
}

static void bracket(struct reader *r)
{
	bool opens = is(r->word[r->at], "(");

	if (opens && r->strange < r->at)
		flush_strange(r, r->at);
	if (!opens)
		sexes_behind(r);
	r->within = opens;
	r->at++;
	r->pending = r->strange = r->at;
}

/* "a rainbow shark", "two angelfish": the name begins behind the word; not so "three spot gourami".
 */
static bool counts_what_follows(struct reader *r)
{
	size_t behind;

	if (!AMONG(r->word[r->at], before_name) || r->at + 1 >= r->count)
		return false;
	r->at++;
	behind = name_here(r, false);
	if (!behind)
		behind = name_here(r, true);
	r->at--;
	return behind > 0 || strlen(r->word[r->at]) <= 2;
}

/*
 * "rainbow shrak": a group's word with a word behind it that is nothing is a longer name with a
 * slip in it, where the catalogue takes it for one.
 */
static size_t with_slip(struct reader *r, size_t name)
{
	size_t behind = r->at + name, found;
	enum then then;

	if (!name || behind >= r->count || strpbrk(r->word[behind], ",()=0123456789") ||
		AMONG(r->word[behind], before_name) || AMONG(r->word[behind], behind_name) ||
		how(r, joined(r, r->at, behind)) != TS_NAME_GROUP)
		return name;
	r->at = behind;
	found = name_here(r, false) + cut_here(r, &then) + ts_is_sign(r->word[behind]);
	r->at -= name;
	if (found || how(r, joined(r, r->at, behind + 1)) != TS_NAME_GUESSED)
		return name;
	return name + 1;
}

static void step(struct reader *r)
{
	/* "1 male 1 female betta": the sex is its own word, whatever is called so */
	bool sex = r->at > r->pending && AMONG(r->word[r->at], sexes);
	size_t name = sex || counts_what_follows(r) ? 0 : name_here(r, false), cut, used;
	enum then then = AS_BEFORE;

	name = with_slip(r, name);
	if (is(r->word[r->at], "(") || is(r->word[r->at], ")")) {
		bracket(r);
		return;
	}
	used = measure(r);
	if (used) {
		if (r->strange < r->at)
			flush_strange(r, r->at);
		r->at += used;
		r->pending = r->strange = r->at;
		return;
	}
	/* "fight" alone is what they do; a fighting fish is a name of two words. */
	if (name < 2 && take_sign(r))
		return;
	cut = cut_here(r, &then);
	if (!name && !cut && !AMONG(r->word[r->at], before_name))
		name = name_here(r, true);
	if (name && name >= (cut ? cut + 1 : 1)) {
		take_name(r, name);
	} else if (cut) {
		take_cut(r, cut, then);
	} else if (r->strange == r->at &&
		   (is_count(r->word[r->at]) || AMONG(r->word[r->at], before_name))) {
		r->strange = ++r->at; /* stays before the name */
	} else {
		r->at++; /* strange, so far */
	}
}

bool sentence_read(const struct ts_catalogue *catalogue, struct ts_arena *arena, const char *words,
	struct sentence *ret)
{
	struct reader *r = ts_arena_take(arena, sizeof *r);

	*ret = (struct sentence){.planned_count = 0};
	if (!r)
		return false;
	memset(r, 0, sizeof *r);
	r->catalogue = catalogue;
	r->arena = arena;
	r->out = ret;
	ts_name_heads_make(catalogue, &r->heads);
	cut_into_words(r, words);
	for (size_t i = 0; i < r->count; i++) {
		if (!r->word[i])
			return false;
	}
	while (r->at < r->count)
		step(r);
	if (r->strange < r->at)
		flush_strange(r, r->at);
	else
		sexes_behind(r);
	tell_sign(r);
	return r->found && !arena->failed;
}
