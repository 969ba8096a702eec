/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentence is gone through word by word: what is read, what happened, what is seen, who is
 * named; the longest first. Nothing that might be an animal is passed over: what carries a figure
 * and is no name stays one that is not known.
 */
#include "typed/sentence.h"

#include <string.h>

#include "base/text.h"
#include "records/signs.h"
#include "typed/reader.h"

#define WORDS_OF_DANGER 4

static void mark(struct ts_typed *t, size_t from, size_t to, enum ts_typed_mark as)
{
	memset(t->mark + from, (int)as, to - from);
}

static void emit(struct ts_typed *t, const char *words, bool living)
{
	struct ts_sentence *s = t->out;

	if (living && s->living_count < TS_SENTENCE_MOST)
		s->living[s->living_count++] = words;
	else if (!living && s->planned_count < TS_SENTENCE_MOST)
		s->planned[s->planned_count++] = words;
}

static bool has_sex(const struct ts_typed *t, size_t from, size_t to)
{
	for (size_t i = from; i < to; i++) {
		if (ts_typed_sex(t->word[i]))
			return true;
	}
	return false;
}

/* "2 male 4 female" before a name: one line each. */
static void emit_each(struct ts_typed *t, size_t from, size_t to, const char *name, bool living)
{
	t->last_count = from < to ? ts_typed_number(t->word[from]) : 0;
	while (from < to) {
		size_t end = from + 1;

		size_t stop;

		while (end < to && !ts_typed_is_count(t->word[end]))
			end++;
		stop = end;
		while (stop > from && (ts_typed_is(t->word[stop - 1], ",") ||
					      ts_typed_is(t->word[stop - 1], "and")))
			stop--;
		if (stop > from)
			emit(t,
				ts_arena_join(
					t->arena, ts_typed_joined(t, from, stop), " ", name, NULL),
				living);
		from = end;
	}
}

/* "since yesterday", before or behind what it is about. */
bool ts_typed_onset(struct ts_typed *t, const char *words)
{
	if (t->since || ts_onset_words(words) < 0)
		return false;
	t->since = words;
	return true;
}

/* Words of which nothing was made: with a figure before them an animal that is not known. */
static void flush_strange(struct ts_typed *t, size_t to)
{
	bool danger = ts_typed_endangers(t, t->strange, to);
	const char *words = t->strange < to ? ts_typed_joined(t, t->strange, to) : "";
	enum ts_name_how known;

	if (*words && ts_typed_onset(t, words)) {
		mark(t, t->strange, to, TS_TYPED_USED);
	} else if (*words) {
		bool counted = t->pending < t->strange && ts_typed_is_count(t->word[t->pending]);

		known = ts_typed_how(t, words);
		if (!danger && (known == TS_NAME_GUESSED || known == TS_NAME_NUMBER || counted)) {
			emit(t, ts_typed_joined(t, t->pending, to), t->living);
			mark(t, t->pending, t->strange, TS_TYPED_USED);
			if (known == TS_NAME_GUESSED)
				mark(t, t->strange, to, TS_TYPED_USED);
			t->found |= known == TS_NAME_GUESSED;
		} else if (t->out->unread_count < TS_SENTENCE_MOST) {
			t->out->unread[t->out->unread_count++] = words;
		}
	}
	t->pending = t->strange = t->at;
}

/* Sexes behind the name, "6 guppies (2 males, 4 females)": they stand for its count. */
static void sexes_behind(struct ts_typed *t)
{
	struct ts_sentence *s = t->out;

	if (!t->last || !has_sex(t, t->pending, t->at))
		return;
	if (t->last_living)
		s->living_count--;
	else
		s->planned_count--;
	emit_each(t, t->pending, t->at, t->last, t->last_living);
	mark(t, t->pending, t->at, TS_TYPED_USED);
	t->pending = t->strange = t->at;
}

/* Of two states of a filter the graver counts: that it is mature only where nothing else is said.
 */
static bool graver(struct ts_sentence_flag *io, const char *value)
{
	if (strcmp(io->flag, "--filter") != 0)
		return false;
	if (strcmp(io->value, "mature") == 0 ||
		(strcmp(io->value, "new") == 0 && strcmp(value, "mature") != 0))
		io->value = value;
	return true;
}

bool ts_typed_flag(struct ts_typed *t, const char *flag, const char *value, const char *taken)
{
	struct ts_sentence *s = t->out;
	bool more = strcmp(flag, "--happened") == 0 || strcmp(flag, "--signs") == 0 ||
		    strcmp(flag, "--asks") == 0;

	bool of_tap = t->tap && ts_typed_of_water(flag);

	if (!value)
		return true; /* no memory: the arena knows */
	for (size_t i = 0; i < s->flag_count; i++) {
		bool same = strcmp(s->flags[i].value, value) == 0;

		if (strcmp(s->flags[i].flag, flag) == 0 && s->flags[i].poured == of_tap &&
			(same || !more))
			return same || graver(&s->flags[i], value);
	}
	if (s->flag_count == TS_SENTENCE_MOST)
		return false;
	s->flags[s->flag_count++] = (struct ts_sentence_flag){flag, value, taken, of_tap};
	t->found = true;
	return true;
}

void ts_typed_they_live(struct ts_typed *t)
{
	struct ts_sentence *s = t->out;

	for (size_t i = t->clause; i < s->planned_count; i++)
		emit(t, s->planned[i], true);
	if (t->clause < s->planned_count)
		s->planned_count = t->clause;
	t->last_living = true;
	t->living = true;
}

bool ts_typed_lived(struct ts_typed *t, const char *span)
{
	struct ts_sentence *s = t->out;
	const char *words;

	if (!t->last || t->asked)
		return false;
	if (!t->last_living) {
		t->clause = s->planned_count ? s->planned_count - 1 : 0;
		ts_typed_they_live(t);
	}
	if (!s->living_count)
		return false;
	words = s->living[s->living_count - 1];
	if (strstr(words, " for "))
		return false;
	s->living[s->living_count - 1] = ts_arena_join(t->arena, words, " for ", span, NULL);
	if (!s->living[s->living_count - 1])
		s->living[s->living_count - 1] = words;
	return true;
}

bool ts_typed_counted(struct ts_typed *t, const char *number)
{
	struct ts_sentence *s = t->out;
	const char **last = t->last_living ? s->living : s->planned;
	size_t count = t->last_living ? s->living_count : s->planned_count;

	if (!t->last || !count || t->last_count > 0 || strcmp(last[count - 1], t->last) != 0)
		return false;
	last[count - 1] = ts_arena_join(t->arena, number, " ", t->last, NULL);
	if (!last[count - 1])
		last[count - 1] = t->last;
	t->last_count = ts_typed_number(number);
	return true;
}

bool ts_typed_since(struct ts_typed *t, const char *span)
{
	if (!t->sign || t->since || t->ended > t->signed_at)
		return false;
	t->since = span;
	return true;
}

/* "three tetras are dead": only such words between the name and what is told of it. */
static bool they_are(const struct ts_typed *t)
{
	static const char *const are[] = {
		"are", "is", "were", "was", "have", "has", "had", "been", "just", "now", "all"};
	static const char *const dead[] = {"dead", "died"};
	size_t at = t->ended;

	while (at < t->at && TS_TYPED_AMONG(t->word[at], are))
		at++;
	return at == t->at && at < t->count && TS_TYPED_AMONG(t->word[at], dead);
}

void ts_typed_died(struct ts_typed *t, double number)
{
	bool beside = t->last && (t->ended == t->at || they_are(t));

	if (!(number > 0))
		number = t->of_them > 0                ? t->of_them
			 : beside && t->last_count > 0 ? t->last_count
						       : 1;
	t->deaths = (t->deaths > 0 ? t->deaths : 0) + number;
	t->of_them = 0;
	/* Who died lived there. */
	if (t->last && !t->last_living && !t->buys)
		ts_typed_they_live(t);
}

/* What its kind is called stands behind a name, with nothing between: it is no other animal. */
static bool at_large(struct ts_typed *t, size_t len)
{
	bool beside = t->last && t->ended == t->at && t->pending == t->at;
	const char *name = ts_typed_joined(t, t->at, t->at + len);

	return beside && (ts_typed_how(t, name) == TS_NAME_GROUP ||
				 (len == 1 && ts_typed_one_genus(t, t->last, name)));
}

/* How many words from `at` on such a number of their bytes fills. */
static size_t words_of(const struct ts_typed *t, size_t bytes)
{
	size_t count = 0, len = 0;

	while (t->at + count < t->count && len < bytes)
		len += strlen(t->word[t->at + count++]) + 1;
	return count;
}

/* Goes on behind words of which something was made. */
static void go_on(struct ts_typed *t, size_t used)
{
	if (t->strange < t->at)
		flush_strange(t, t->at);
	mark(t, t->at, t->at + used, TS_TYPED_USED);
	t->at += used;
	t->pending = t->strange = t->at;
}

/* The word before which a thought about signs ends. */
static size_t thought_end(const struct ts_typed *t)
{
	static const char *const others[] = {"tank", "aquarium", "filter", "heater", "bowl"};
	size_t end = t->at + 1;

	while (end < t->count && !ts_typed_ends(t, end) && !TS_TYPED_AMONG(t->word[end], others))
		end++;
	return end;
}

/* "no gasping", "nobody is gasping": it is not seen. */
static bool denied(const struct ts_typed *t)
{
	static const char *const nobody[] = {"no", "not", "nobody", "none", "without", "never",
		"isn't", "aren't", "nothing", "don't", "doesn't"};

	for (size_t back = 1; back <= 2 && back <= t->at; back++) {
		if (TS_TYPED_AMONG(t->word[t->at - back], nobody))
			return true;
		if (back == 1 && !ts_typed_is(t->word[t->at - 1], "is") &&
			!ts_typed_is(t->word[t->at - 1], "are") &&
			!ts_typed_is(t->word[t->at - 1], "of"))
			return false;
	}
	return false;
}

/* What is seen, of those that live there: "gasping since yesterday", "after the water change". */
static bool take_sign(struct ts_typed *t)
{
	const char *rest = ts_typed_joined(t, t->at, thought_end(t)), *said;
	bool after = false;
	size_t bytes = ts_sign_span(rest, &after);

	if (!bytes || (!after && !ts_is_sign(rest)))
		return false;
	if (!after && ts_is_sign(rest) == strlen(t->word[t->at]) && ts_typed_common(t->word[t->at]))
		return false;
	if (!after && (t->asked || (t->last && !t->last_living && t->buys)))
		return false;
	said = ts_arena_text(t->arena, rest, bytes);
	if (denied(t)) {
		go_on(t, words_of(t, bytes));
		return true;
	}
	if (after)
		t->after = said;
	else
		t->sign = t->sign ? ts_arena_join(t->arena, t->sign, ", ", said, NULL) : said;
	go_on(t, words_of(t, bytes));
	t->signed_at = t->at;
	return true;
}

static bool has_changed_all(const struct ts_sentence *s)
{
	for (size_t i = 0; i < s->flag_count; i++) {
		if (strcmp(s->flags[i].value, "changed 100 %") == 0)
			return true;
	}
	return false;
}

/* "after the power cut" */
static bool of_power(const char *after)
{
	return strstr(after, "ower") || strstr(after, "ilter") || strstr(after, "utage") ||
	       strstr(after, "lackout");
}

/* Signs are told with all that was said of them. */
static void tell_sign(struct ts_typed *t)
{
	/* "they die after every water change": the change is the sign. */
	const char *sign = t->sign ? t->sign : t->after && t->deaths > 0 ? "unwell" : NULL;
	const char *const parts[] = {t->how_many, sign, t->since,
		t->after                  ? t->after
		: has_changed_all(t->out) ? "after the water change"
					  : NULL};
	const char *all = "";

	if (!sign && t->after && of_power(t->after))
		(void)ts_typed_flag(t, "--filter", "stopped", NULL);
	if (!sign)
		return;
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
		if (parts[i])
			all = ts_arena_join(
				t->arena, all ? all : "", all && *all ? " " : "", parts[i], NULL);
	}
	(void)ts_typed_flag(t, "--signs", all ? all : "", NULL);
}

static void tell_deaths(struct ts_typed *t)
{
	if (!(t->deaths < 0))
		(void)ts_typed_flag(t, "--deaths", ts_typed_number_text(t, t->deaths), NULL);
}

static void take_name(struct ts_typed *t, size_t len)
{
	bool counted = t->pending < t->at && t->strange == t->at, sexed;
	const char *name, *sized = NULL;

	if (at_large(t, len)) {
		mark(t, t->at, t->at + len, TS_TYPED_USED);
		t->at += len;
		t->pending = t->strange = t->ended = t->at;
		return;
	}
	/* "one honey gourami pair", "2 gourami males" */
	sexed = t->at + len < t->count && ts_typed_behind_name(t->word[t->at + len]) &&
		!has_sex(t, t->pending, t->at);
	len += sexed;
	name = ts_typed_joined(t, t->at, t->at + len);

	if (t->strange < t->at)
		flush_strange(t, t->at);
	if (t->size)
		sized = ts_arena_join(t->arena, t->size, name, NULL);
	if (counted) {
		mark(t, t->pending, t->at, TS_TYPED_USED);
		emit_each(t, t->pending, t->at, sized ? sized : name, t->living);
	} else {
		t->last_count = 0;
		emit(t, sized ? sized : name, t->living);
	}
	t->size = NULL;
	t->last = sexed ? NULL : name;
	t->last_living = t->living;
	t->found = true;
	mark(t, t->at, t->at + len, TS_TYPED_USED);
	t->at += len;
	t->ended = t->at;
	t->pending = t->strange = t->at;
}

/* "bought", "added", "put", "got" among these words. */
static bool lately(const struct ts_typed *t, size_t len)
{
	static const char *const words[] = {"bought", "added", "put", "got", "won", "given"};

	for (size_t i = t->at; i < t->at + len; i++) {
		if (TS_TYPED_AMONG(t->word[i], words))
			return true;
	}
	return false;
}

/* "too", "add": who is wanted comes to others. */
static bool adds(const struct ts_typed *t)
{
	static const char *const words[] = {"too", "also", "add", "adding"};

	for (size_t i = t->at; i < t->count; i++) {
		if (TS_TYPED_AMONG(t->word[i], words))
			return true;
	}
	return false;
}

/* Those that were named before live there; who is named next may not. */
static void they_lived(struct ts_typed *t)
{
	bool living = t->living, last = t->last_living;

	if (!t->out->planned_count)
		return;
	ts_typed_they_live(t);
	t->living = living;
	t->last_living = last;
}

static void take_cut(struct ts_typed *t, size_t len, enum ts_typed_then then)
{
	/* "2 males and 4 females of ...": the name comes. */
	bool waits = then == TS_TYPED_AS_BEFORE && t->strange == t->at &&
		     has_sex(t, t->pending, t->at) && !t->within;
	const char *word = t->word[t->at];
	size_t to = t->at;
	bool was_asked;

	if (!waits && t->strange < to)
		flush_strange(t, to);
	t->bought |= then == TS_TYPED_LIVES && lately(t, len);
	/* "set it up and put six in", but not "can I ... and put six in". */
	if (then == TS_TYPED_LIVES && (t->asked || t->buys) &&
		(ts_typed_is(word, "and") || ts_typed_is(word, "then")))
		then = TS_TYPED_PLANNED;
	t->living = then == TS_TYPED_AS_BEFORE ? t->living : then == TS_TYPED_LIVES;
	/* A question ends with its mark. */
	t->owns |= then == TS_TYPED_LIVES;
	was_asked = t->asked && !(t->at && ts_typed_is(t->word[t->at - 1], "would"));
	t->asked = !ts_typed_is(word, ",") && (t->asked || ts_typed_asks(word));
	if (ts_typed_buys(word) && then != TS_TYPED_LIVES) {
		/* "10 neons in 60 l. I would like a betta too": they live there. */
		if (!t->buys && !was_asked && adds(t)) {
			t->clause = 0;
			they_lived(t);
		}
		t->buys = t->out->wanted = true;
	}
	if (ts_breadth_words(word) >= 0)
		t->how_many = word;
	mark(t, t->at, t->at + len, TS_TYPED_PASSED);
	if (ts_typed_is(word, ","))
		t->thought_flags = t->out->flag_count;
	t->at += len;
	t->strange = t->at;
	if (!waits && !t->within)
		t->pending = t->at;
}

static void bracket(struct ts_typed *t)
{
	bool opens = ts_typed_is(t->word[t->at], "(");

	if (opens && t->strange < t->at)
		flush_strange(t, t->at);
	if (!opens)
		sexes_behind(t);
	t->within = opens;
	mark(t, t->at, t->at + 1, TS_TYPED_PASSED);
	t->at++;
	t->pending = t->strange = t->at;
}

/*
 * "rainbow shrak": a group's word with a word behind it that is nothing is a longer name with a
 * slip in it, where the catalogue takes it for one.
 */
static size_t with_slip(struct ts_typed *t, size_t name)
{
	size_t behind = t->at + name, found;
	enum ts_typed_then then;

	if (!name || ts_typed_ends(t, behind) || strpbrk(t->word[behind], "=<>0123456789") ||
		ts_typed_before_name(t->word[behind]) || ts_typed_behind_name(t->word[behind]) ||
		ts_typed_how(t, ts_typed_joined(t, t->at, behind)) != TS_NAME_GROUP)
		return name;
	t->at = behind;
	found = ts_typed_name_here(t, false) + ts_typed_cut_here(t, &then) +
		(ts_is_sign(t->word[behind]) ? 1 : 0);
	t->at -= name;
	if (found || ts_typed_how(t, ts_typed_joined(t, t->at, behind + 1)) != TS_NAME_GUESSED)
		return name;
	return name + 1;
}

/* A name by its order of words, where no other reading of it is. */
static size_t guessed_name(struct ts_typed *t, size_t cut)
{
	static const char *const nouns[] = {"tank", "aquarium"};

	/* What stands before "tank" is none. */
	if (t->at + 1 < t->count && TS_TYPED_AMONG(t->word[t->at + 1], nouns))
		return 0;
	return !cut && !ts_typed_before_name(t->word[t->at]) ? ts_typed_name_here(t, true) : 0;
}

/* "a 5 cm pleco": how long it is, before its name; the words go, and the count stays beside it. */
static void take_size(struct ts_typed *t)
{
	static const char *const units[] = {"cm", "inch", "inches", "mm"};
	size_t here = t->at, name;

	if (here + 2 >= t->count || !ts_typed_is_figure(t->word[here]) ||
		!TS_TYPED_AMONG(t->word[here + 1], units))
		return;
	t->at += 2;
	name = ts_typed_name_here(t, false);
	t->at = here;
	if (!name)
		return;
	t->size = ts_arena_join(t->arena, t->word[here], " ", t->word[here + 1], " ", NULL);
	t->count -= 2;
	memmove(&t->word[here], &t->word[here + 2], (t->count - here) * sizeof *t->word);
	memmove(&t->mark[here], &t->mark[here + 2], t->count - here);
}

/* The very name of an animal, and no group's. */
static size_t very_name(struct ts_typed *t)
{
	size_t name = ts_typed_name_here(t, false);
	const char *words = name ? ts_typed_joined(t, t->at, t->at + name) : NULL;

	return name && ts_typed_how(t, words) == TS_NAME_SAME ? name : 0;
}

/* Within a question of care: names and figures, and where it is cut; the rest belongs to it. */
static void step_beside(struct ts_typed *t)
{
	enum ts_typed_then then = TS_TYPED_AS_BEFORE;
	size_t name = very_name(t), used = ts_typed_measure(t), cut;

	if (used) {
		go_on(t, used);
		return;
	}
	cut = ts_typed_cut_here(t, &then);
	if (name && name > cut)
		take_name(t, name);
	else if (cut)
		take_cut(t, cut, then);
	else if (ts_typed_is_count(t->word[t->at]) || ts_typed_before_name(t->word[t->at]))
		t->strange = ++t->at; /* stays before the name */
	else
		go_on(t, 1);
}

static void step(struct ts_typed *t)
{
	/* "1 male 1 female betta": the sex is its own word, whatever is called so */
	bool sex;
	size_t name, cut, used;
	enum ts_typed_then then = TS_TYPED_AS_BEFORE;

	if (t->mark[t->at] == TS_TYPED_USED ||
		(t->care[t->at] == TS_TYPED_CARE_KEY && !very_name(t))) {
		go_on(t, 1);
		return;
	}
	if (t->care[t->at]) {
		step_beside(t);
		return;
	}
	used = ts_typed_asked(t);
	if (used) {
		go_on(t, used);
		return;
	}
	take_size(t);
	sex = t->at > t->pending && ts_typed_sex(t->word[t->at]);
	name = sex || ts_typed_counts_what_follows(t) ? 0 : ts_typed_name_here(t, false);
	name = with_slip(t, name);
	if (ts_typed_is(t->word[t->at], "(") || ts_typed_is(t->word[t->at], ")")) {
		bracket(t);
		return;
	}
	used = ts_typed_measure(t);
	if (!used && name < 2)
		used = ts_typed_whose(t);
	if (!used && name < 2)
		used = ts_typed_happened(t);
	if (used) {
		go_on(t, used);
		return;
	}
	/* "fight" alone is what they do; a fighting fish is a name of two words. */
	if (name < 2 && take_sign(t))
		return;
	cut = ts_typed_cut_here(t, &then);
	if (!name)
		name = guessed_name(t, cut);
	if (name && name >= (cut ? cut + 1 : 1)) {
		take_name(t, name);
	} else if (cut) {
		take_cut(t, cut, then);
	} else if (t->strange == t->at &&
		   (ts_typed_is_count(t->word[t->at]) || ts_typed_before_name(t->word[t->at]))) {
		t->strange = ++t->at; /* stays before the name */
	} else {
		t->at++; /* strange, so far */
	}
}

/* Who states what poisons a tank keeps it, unless somebody is to be bought. */
static void settle_whose(struct ts_typed *t)
{
	static const char *const told[] = {"--signs", "--deaths", "--happened", "--ammonia",
		"--NO2", "--NO2-N", "--oxygen", "--poured"};
	const struct ts_sentence *s = t->out;

	if (t->keeper && !s->wanted && !s->living_count && s->planned_count) {
		t->clause = 0;
		ts_typed_they_live(t);
	}
	for (size_t i = 0; i < s->flag_count && !s->wanted && !s->living_count; i++) {
		bool stands = strcmp(s->flags[i].flag, "--filter") == 0 &&
			      (s->flags[i].value[0] == 'o' || s->flags[i].value[0] == 's');

		if ((!stands && !TS_TYPED_AMONG(s->flags[i].flag, told)) ||
			strcmp(s->flags[i].value, "0") == 0)
			continue;
		t->clause = 0;
		ts_typed_they_live(t);
	}
}

static bool says_flag(const struct ts_sentence *s, const char *flag)
{
	for (size_t i = 0; i < s->flag_count; i++) {
		if (strcmp(s->flags[i].flag, flag) == 0)
			return true;
	}
	return false;
}

/* "my new 80 litre tank"; and a bowl has no filter. */
static void settle_tank(struct ts_typed *t)
{
	static const char *const tanks[] = {"tank", "aquarium", "setup", "set-up"};
	static const char *const fresh[] = {"new", "brand-new"};
	static const char *const bowls[] = {"bowl", "fishbowl", "vase", "jar"};
	static const char *const litres[] = {"l", "litre", "litres", "liter", "liters", "lt", "ltr",
		"gallon", "gallons", "gal", "cm", "foot"};

	for (size_t i = 0; i < t->count && !says_flag(t->out, "--filter"); i++) {
		if (TS_TYPED_AMONG(t->word[i], fresh) && i + 3 < t->count &&
			ts_typed_is_figure(t->word[i + 1]) &&
			TS_TYPED_AMONG(t->word[i + 2], litres) &&
			TS_TYPED_AMONG(t->word[i + 3], tanks))
			(void)ts_typed_flag(t, "--filter", "new", NULL);
		else if (TS_TYPED_AMONG(t->word[i], bowls))
			(void)ts_typed_flag(t, "--filter", "none",
				"as bowls are; say --filter mature where one runs");
	}
}

/* "raise KH from 1 to 4" */
static void settle_aim(struct ts_typed *t)
{
	struct ts_sentence *s = t->out;

	for (size_t i = 0; i < s->flag_count && t->aim > 0; i++) {
		const char *value = s->flags[i].value;

		if (strcmp(s->flags[i].flag, "--asks") == 0 && strcmp(value, "kh-up") == 0) {
			value = ts_arena_join(
				t->arena, value, " ", ts_typed_number_text(t, t->aim), NULL);
			s->flags[i].value = value ? value : s->flags[i].value;
		}
	}
}

bool ts_sentence_read(const struct ts_catalogue *catalogue, struct ts_arena *arena,
	const char *words, struct ts_sentence *ret)
{
	struct ts_typed *t = ts_arena_take(arena, sizeof *t);

	*ret = (struct ts_sentence){.planned_count = 0};
	if (!t)
		return false;
	memset(t, 0, sizeof *t);
	t->catalogue = catalogue;
	t->arena = arena;
	t->out = ret;
	t->deaths = -1;
	ts_name_heads_make(catalogue, &t->heads);
	ts_typed_cut(t, words);
	for (size_t i = 0; i < t->count; i++) {
		if (!t->word[i])
			return false;
	}
	ts_typed_care(t);
	while (t->at < t->count)
		step(t);
	if (t->strange < t->at)
		flush_strange(t, t->at);
	else
		sexes_behind(t);
	ts_typed_settle_sides(t);
	ts_typed_settle_waters(t);
	settle_tank(t);
	if (t->set_to && !says_flag(ret, "--temperature"))
		(void)ts_typed_flag(t, "--temperature", t->set_to, NULL);
	settle_aim(t);
	tell_sign(t);
	tell_deaths(t);
	settle_whose(t);
	ts_typed_alarms(t);
	/* So many words with a danger among them are a sentence, whatever else was understood. */
	t->found |= t->count >= WORDS_OF_DANGER && ret->alarm_count && ret->alarms[0].danger;
	return t->found && !arena->failed;
}
