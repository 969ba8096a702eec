/* SPDX-License-Identifier: Apache-2.0 */
/*
 * At each word the few patterns that begin with its first two letters
 * are tried and the longest match wins, so that the order of the table means nothing and the time
 * per line is bounded. A figure begins where a word ends, so that "KS4,3" and "E22" hold none.
 */
#include "intake/lexer.h"

#include <string.h>

#include "base/arena.h"
#include "base/number.h"
#include "intake/patterns.h"
#include "intake/scan.h"

#define SIGNS 128
#define NO_ROW 0xffffu

struct ts_lexer {
	struct ts_allocator allocator;
	struct ts_patterns *patterns;
	struct ts_patterns *loose; /* as a scan prints them; NULL until one is met */
	bool no_memory;
	unsigned short *next;                /* row behind this one with the same beginning */
	unsigned short first[SIGNS * SIGNS]; /* by first and second letter, 0 = any second */
	size_t unsound;
};

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || c == '~';
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_word(char c)
{
	return is_letter(c) || is_digit(c);
}

/* Where a pattern stands in the index: its first letter, and its second where that is fixed. */
static size_t slot_of(const char *pattern)
{
	char second = pattern[1];

	if (!is_word(second) && second != '@')
		second = 0;
	if (second && pattern[2] && strchr("?*{", pattern[2]))
		second = 0;
	return (size_t)pattern[0] * SIGNS + (size_t)second;
}

/* "Calciumgehalt", "nitraatconcentratie": the name of what is counted, in one word. */
#define LABEL_END ")(?:-?(?:gehalte?s?|konzentration|concentratie|werte?|waarde))?(?![a-z0-9~])"

static bool compile(struct ts_lexer *x, size_t row)
{
	bool label = ts_terms[row].kind == TS_TERM_LABEL;
	const char *pattern = ts_terms[row].pattern;
	size_t slot = slot_of(pattern);

	if (!is_word(pattern[0]) && pattern[0] != '@' && pattern[0] != '%') {
		x->unsound++;
		return true;
	}
	x->next[row] = x->first[slot];
	x->first[slot] = (unsigned short)row;
	return ts_patterns_add(
		x->patterns, row, "(?:", pattern, label ? LABEL_END : ")(?![a-z0-9~])");
}

static bool compile_all(struct ts_lexer *x)
{
	/* Backwards, so that the first of several rows of one beginning is met first. */
	for (size_t row = ts_terms_count; row > 0; row--) {
		if (!compile(x, row - 1))
			return false;
	}
	return true;
}

struct ts_lexer *ts_lexer_open(const struct ts_allocator *allocator)
{
	struct ts_allocator mine = ts_allocator_or_default(allocator);
	struct ts_lexer *x = mine.resize(mine.state, NULL, sizeof *x);

	if (!x)
		return NULL;
	memset(x, 0, sizeof *x);
	x->allocator = mine;
	memset(x->first, 0xff, sizeof x->first);
	x->next = mine.resize(mine.state, NULL, ts_terms_count * sizeof *x->next);
	x->patterns = ts_patterns_open(&mine, ts_terms_count);
	if (!x->next || !x->patterns || !compile_all(x)) {
		ts_lexer_close(x);
		return NULL;
	}
	return x;
}

void ts_lexer_close(struct ts_lexer *x)
{
	struct ts_allocator mine;

	if (!x)
		return;
	mine = x->allocator;
	ts_patterns_close(x->patterns);
	ts_patterns_close(x->loose);
	if (x->next)
		mine.resize(mine.state, x->next, 0);
	mine.resize(mine.state, x, 0);
}

bool ts_lexer_no_memory(const struct ts_lexer *x)
{
	return x->no_memory || ts_patterns_no_memory(x->patterns) ||
	       (x->loose && ts_patterns_no_memory(x->loose));
}

size_t ts_lexer_unsound(const struct ts_lexer *lexer)
{
	return lexer->unsound + ts_patterns_unsound(lexer->patterns) +
	       (lexer->loose ? ts_patterns_unsound(lexer->loose) : 0);
}

/* Bytes of the longest pattern of a scan. */
#define LOOSE_MOST 4096

/* Rows that a scan's line is tried with: names, units and headings whose case means nothing. */
static bool is_loose(const struct ts_term *term)
{
	return (term->kind == TS_TERM_LABEL || term->kind == TS_TERM_FORMULA ||
		       term->kind == TS_TERM_UNIT || term->kind == TS_TERM_COLUMN) &&
	       !(term->marks & TS_TERM_CASE && term->says) && !strstr(term->pattern, "(?<");
}

/* Compiles the rows once more when the first line of a scan is met. */
static bool open_loose(struct ts_lexer *x)
{
	char pattern[LOOSE_MOST];

	if (x->loose || x->no_memory)
		return x->loose != NULL;
	x->loose = ts_patterns_open(&x->allocator, ts_terms_count);
	x->no_memory = !x->loose;
	for (size_t row = 0; row < ts_terms_count && !x->no_memory; row++) {
		const struct ts_term *term = &ts_terms[row];

		if (!is_loose(term))
			continue;
		if (!ts_scan_pattern(term->pattern, pattern, sizeof pattern))
			x->unsound++;
		else if (!ts_patterns_add(x->loose, row, "(?:", pattern,
				 term->kind == TS_TERM_LABEL ? LABEL_END : ")(?![a-z0-9~])"))
			x->no_memory = true;
	}
	return !x->no_memory;
}

/* Rows that hold only as printed: "Ca" but not "ca", standards but not small words. */
static bool case_holds(const struct ts_term *term, const char *plain, size_t len)
{
	if (term->kind == TS_TERM_NOISE)
		return plain[0] >= 'A' && plain[0] <= 'Z';
	if (!(term->marks & TS_TERM_CASE) || !term->says)
		return true;
	return len == strlen(term->says) && memcmp(plain, term->says, len) == 0;
}

struct cursor {
	struct ts_lexer *lexer;
	const struct ts_report_line *line;
	size_t at, end; /* of the cell */
	unsigned short cell;
	bool between; /* such a word stands before: "and" joins what follows */
	struct ts_tokens *out;
};

/* Length of the longest term at that place of a text; 0 = none. `plain`: the same with case. */
static size_t longest_at(const struct ts_lexer *x, const char *lower, const char *plain, size_t end,
	size_t at, const struct ts_term **ret)
{
	size_t longest = 0, starts[2];
	char second = at + 1 < end ? lower[at + 1] : 0;

	starts[0] = (size_t)lower[at] * SIGNS + (size_t)second;
	starts[1] = (size_t)lower[at] * SIGNS;
	for (int s = 0; s < 2; s++) {
		for (unsigned row = x->first[starts[s]]; row != NO_ROW; row = x->next[row]) {
			const size_t *spans;
			size_t len;

			if (!ts_patterns_match(x->patterns, row, lower, end, at, &spans))
				continue;
			len = spans[1] - at;
			if (len > longest && case_holds(&ts_terms[row], plain + at, len)) {
				longest = len;
				*ret = &ts_terms[row];
			}
		}
	}
	return longest;
}

/* Letters of a name that is tried once more without its digraphs. */
#define NAME_MOST 64

/*
 * "Gesamthaerte", "Saeurekapazitaet": who has no umlaut writes a digraph. A word that is no term as
 * it stands is tried with ae, oe and ue as the letters that lines.c makes of umlauts.
 */
static size_t without_digraphs(const struct cursor *c, const struct ts_term **ret)
{
	const char *lower = c->line->lower, *plain = c->line->plain;
	char low[NAME_MOST + 1], as[NAME_MOST + 1];
	size_t from[NAME_MOST + 1], n = 0, at = c->at, len;
	bool any = false;

	while (at < c->end && n < NAME_MOST) {
		low[n] = lower[at];
		as[n] = plain[at];
		from[n++] = at;
		if (at + 1 < c->end && lower[at + 1] == 'e' && strchr("aou", lower[at]) &&
			is_letter(lower[at])) {
			any = true;
			at++;
		}
		at++;
	}
	low[n] = as[n] = '\0';
	from[n] = at;
	len = any ? longest_at(c->lexer, low, as, n, 0, ret) : 0;
	return len ? from[len] - c->at : 0;
}

/* "pH7.4", "GH12": a name of two letters joined to its figure. */
static bool is_joined(const struct cursor *c)
{
	static const char *const names[] = {"ph", "gh", "kh", NULL};
	const char *at = c->line->lower + c->at;

	for (size_t i = 0; names[i] && c->end - c->at > 2; i++) {
		if (memcmp(at, names[i], 2) == 0 && is_digit(at[2]))
			return true;
	}
	return false;
}

/* "Ch loride", "mg/I": the length of the longest term as a scan prints it, above `least`. */
static size_t scanned_at(const struct cursor *c, size_t least, const struct ts_term **ret)
{
	const char *lower = c->line->lower;

	if (!c->line->scanned || !open_loose(c->lexer))
		return 0;
	for (size_t row = 0; row < ts_terms_count; row++) {
		const size_t *spans;
		size_t len;

		if (!ts_scan_alike(*ts_terms[row].pattern, lower[c->at]) ||
			!ts_patterns_match(c->lexer->loose, row, lower, c->end, c->at, &spans))
			continue;
		len = spans[1] - c->at;
		while (len && lower[c->at + len - 1] == ' ')
			len--;
		if (len > least) {
			least = len;
			*ret = &ts_terms[row];
		}
	}
	return least;
}

static size_t term_at(const struct cursor *c, const struct ts_term **ret)
{
	size_t len = longest_at(c->lexer, c->line->lower, c->line->plain, c->end, c->at, ret), more;

	if (!len && is_joined(c))
		len = longest_at(c->lexer, c->line->lower, c->line->plain, c->at + 2, c->at, ret);
	if (!len)
		len = without_digraphs(c, ret);
	more = scanned_at(c, len, ret);
	return more > len ? more : len;
}

static struct ts_token *add(struct cursor *c, enum ts_token_kind kind, size_t start)
{
	struct ts_tokens *out = c->out;
	struct ts_token *t;

	if (out->count == TS_TOKENS_MOST) {
		out->overfull = true;
		return NULL;
	}
	t = &out->at[out->count++];
	t->kind = kind;
	t->cell = c->cell;
	t->start = (unsigned short)start;
	t->end = (unsigned short)c->at;
	t->term = NULL;
	t->torn = false;
	t->figure[0] = '\0';
	t->first = t->second = 0;
	return t;
}

static char peek(const struct cursor *c, size_t ahead)
{
	return c->at + ahead < c->end ? c->line->lower[c->at + ahead] : '\0';
}

static size_t blanks(const struct cursor *c, size_t ahead)
{
	size_t n = 0;

	while (peek(c, ahead + n) == ' ' || peek(c, ahead + n) == '\t')
		n++;
	return n;
}

/* A run of digits and separators. */
static size_t chunk(const struct cursor *c, size_t ahead)
{
	size_t n = 0;

	while (is_digit(peek(c, ahead + n)) ||
		(n && strchr(".,:/'", peek(c, ahead + n)) && peek(c, ahead + n) &&
			is_digit(peek(c, ahead + n + 1))))
		n++;
	return n;
}

/*
 * Writes a chunk as the scanner wants it and returns false when it is no figure: dates, times and
 * fractions. "1.234,5" is thousands beyond doubt; "1,234" stays as it is, the scanner asks.
 */
static bool write_figure(const char *bytes, size_t len, char *out, double *ret)
{
	size_t points = 0, commas = 0, n = 0;
	const char *last = NULL;

	for (size_t i = 0; i < len; i++) {
		if (!is_digit(bytes[i]) && bytes[i] != '.' && bytes[i] != ',' && bytes[i] != '\'')
			return false;
		points += bytes[i] == '.';
		commas += bytes[i] == ',';
		last = bytes[i] == '.' || bytes[i] == ',' ? bytes + i : last;
	}
	if (len > 18 || (points && commas && (*last == '.' ? points : commas) != 1) ||
		(!(points && commas) && points + commas > 1))
		return false;
	for (size_t i = 0; i < len; i++) {
		bool thousands = bytes[i] == '\'' ||
				 (points && commas && !is_digit(bytes[i]) && bytes[i] != *last);

		if (thousands && (i + 3 >= len || (i + 4 < len && is_digit(bytes[i + 4]))))
			return false;
		if (!thousands)
			out[n++] = bytes[i];
	}
	out[n] = '\0';
	return ts_number_read(out, n, ret, NULL) == n;
}

/* Words and signs between the two ends of a range; the length of what joins, 0 = nothing does. */
static size_t joins(const struct cursor *c, size_t ahead)
{
	static const char *const words[] = {"-", "...", "..", "to", "bis", "tot", "a", "al",
		/* only behind "between" */
		"and", "und", "et", "y", "e", "en", NULL};
	const size_t plain = 8;
	size_t before = blanks(c, ahead);

	for (size_t w = 0; (w < plain || c->between) && words[w]; w++) {
		size_t len = strlen(words[w]), after;
		bool word = is_letter(words[w][0]);

		if (c->at + ahead + before + len > c->end ||
			memcmp(c->line->lower + c->at + ahead + before, words[w], len) != 0)
			continue;
		after = blanks(c, ahead + before + len);
		if (!is_digit(peek(c, ahead + before + len + after)))
			continue;
		/* In columns "0,50   -   17" is an empty column, not a range. */
		if (before > 1 || after > 1 || (before != after && words[w][0] == '-'))
			continue;
		if (!word || (before && after))
			return before + len + after;
	}
	return 0;
}

/* The second end, where one follows; `used` bytes of the first are behind the cursor's place. */
static size_t take_second(
	const struct cursor *c, size_t used, char *out, size_t room, double low, double *ret)
{
	size_t gap = joins(c, used), len = gap ? chunk(c, used + gap) : 0;

	if (!len || room < len + 3 ||
		!write_figure(c->line->lower + c->at + used + gap, len, out + 2, ret) || *ret < low)
		return 0;
	out[0] = out[1] = '.';
	return gap + len;
}

/* "<" in a column of its own belongs to the figure in the next. */
static void take_bound(const struct cursor *c, struct ts_token *t)
{
	size_t len = strlen(t->figure);

	if (c->out->bound && c->out->bound_cell + 1 == c->cell && t->kind == TS_TOKEN_NUMBER &&
		len + 2 < sizeof t->figure) {
		memmove(t->figure + 1, t->figure, len + 1);
		t->figure[0] = c->out->bound;
		t->kind = c->out->bound == '<' ? TS_TOKEN_BELOW : TS_TOKEN_ABOVE;
	}
	c->out->bound = 0;
}

/* "2 500" alone in its column: the length of the second part, with the blank before it. */
static size_t thousands(const struct cursor *c, size_t len)
{
	size_t before = c->at >= 2 && memcmp(c->line->lower + c->at - 2, "  ", 2) == 0;

	for (size_t i = 0; i < len; i++) {
		if (!is_digit(peek(c, i)))
			return 0;
	}
	if (!before || len > 3 || peek(c, 0) == '0' || peek(c, len) != ' ' ||
		chunk(c, len + 1) != 3 || !is_digit(peek(c, len + 2)) ||
		!is_digit(peek(c, len + 3)))
		return 0;
	return c->at + len + 4 >= c->end || (peek(c, len + 4) == ' ' && peek(c, len + 5) == ' ')
		       ? 4
		       : 0;
}

/* "1 8,2" in a scan: one blank between digits may be inside a figure, or between two. */
static void mark_torn(const struct cursor *c, struct ts_token *t)
{
	struct ts_token *before = t - 1;

	if (!c->line->scanned || c->out->count < 2 || before->cell != t->cell || !*before->figure ||
		before->end + 1 != t->start || c->line->lower[before->end] != ' ')
		return;
	before->torn = t->torn = true;
}

static bool lex_number(struct cursor *c)
{
	size_t start = c->at, len = chunk(c, 0), more, joined;
	struct ts_token *t;
	char figure[TS_FIGURE_ROOM];
	double first = 0, second = 0;

	if (!len)
		return false;
	joined = thousands(c, len);
	if (joined) {
		char digits[8];

		memcpy(digits, c->line->lower + c->at, len);
		memcpy(digits + len, c->line->lower + c->at + len + 1, 3);
		(void)write_figure(digits, len + 3, figure, &first);
		len += joined;
	} else if (!write_figure(c->line->lower + c->at, len, figure, &first)) {
		c->at += len;
		return true;
	}
	more = take_second(
		c, len, figure + strlen(figure), sizeof figure - strlen(figure), first, &second);
	c->at += len + more;
	c->between = false;
	t = add(c, more ? TS_TOKEN_RANGE : TS_TOKEN_NUMBER, start);
	if (!t)
		return true;
	memcpy(t->figure, figure, sizeof figure);
	t->first = first;
	t->second = second;
	mark_torn(c, t);
	take_bound(c, t);
	return true;
}

static bool lex_bound(struct cursor *c)
{
	size_t start = c->at, skip, len;
	struct ts_token *t;
	char sign = peek(c, 0), figure[TS_FIGURE_ROOM];
	double first;

	if (sign != '<' && sign != '>')
		return false;
	skip = 1 + (peek(c, 1) == '=');
	skip += blanks(c, skip);
	len = chunk(c, skip);
	if (!len || !write_figure(c->line->lower + c->at + skip, len, figure + 1, &first)) {
		if (c->at + skip == c->end) {
			c->out->bound = sign;
			c->out->bound_cell = c->cell;
		}
		c->at++;
		return true;
	}
	figure[0] = sign;
	c->at += skip + len;
	t = add(c, sign == '<' ? TS_TOKEN_BELOW : TS_TOKEN_ABOVE, start);
	if (t) {
		memcpy(t->figure, figure, sizeof figure);
		t->first = first;
	}
	return true;
}

/*
 * "less than 0.2 mg/l" is "<0.2"; the words stay a break between what stands before and the bound,
 * as in "7 mg/l, less than 50 mg/l".
 */
static void lex_below(struct cursor *c, size_t start)
{
	struct ts_token *t;
	char figure[TS_FIGURE_ROOM];
	size_t skip = blanks(c, 0), len = chunk(c, skip);
	double first;

	add(c, TS_TOKEN_OTHER, start);
	if (!len || joins(c, skip + len) ||
		!write_figure(c->line->lower + c->at + skip, len, figure + 1, &first))
		return;
	figure[0] = '<';
	c->at += skip + len;
	t = add(c, TS_TOKEN_BELOW, c->at - len);
	if (t) {
		memcpy(t->figure, figure, sizeof figure);
		t->first = first;
	}
}

/* "7.4 +-0.1": what stands behind the sign is how sure the figure is. */
static bool skip_uncertainty(struct cursor *c)
{
	size_t sign = peek(c, 0) != '+' ? 0 : peek(c, 1) == '-' ? 2 : peek(c, 1) == '/' ? 3 : 0;
	size_t len;

	if (!sign || peek(c, sign - 1) != '-')
		return false;
	sign += blanks(c, sign);
	len = chunk(c, sign);
	if (len) {
		c->at += sign + len;
		c->at += peek(c, blanks(c, 0)) == '%' ? blanks(c, 0) + 1 : 0; /* of the figure */
	}
	return len > 0;
}

/* "Zone      Hardness    pH": what stands behind the word are headings, and no name. */
static bool heads_columns(const struct cursor *c)
{
	size_t pieces = 0;

	for (size_t at = c->at; at < c->end; at++)
		pieces += at > c->at + 1 && c->line->lower[at] != ' ' &&
			  memcmp(c->line->lower + at - 2, "  ", 2) == 0;
	return pieces >= 2 && c->line->lower[c->at] == ' ';
}

static void lex_term(struct cursor *c, const struct ts_term *term, size_t len)
{
	size_t start = c->at;
	const struct ts_token *before = c->out->count ? &c->out->at[c->out->count - 1] : NULL;
	struct ts_token *t;

	c->at += len;
	if (term->kind == TS_TERM_ZONE && before && before->cell == c->cell) {
		add(c, TS_TOKEN_OTHER, start); /* of a sentence: what follows is no name */
		return;
	}
	if (term->kind == TS_TERM_BELOW) {
		lex_below(c, start);
		return;
	}
	c->between |= term->kind == TS_TERM_FILLER && term->role == TS_ROLE_RANGE;
	if (term->kind == TS_TERM_FILLER || term->kind == TS_TERM_NOISE)
		return;
	t = add(c, TS_TOKEN_TERM, start);
	if (t)
		t->term = term;
	if (term->kind == TS_TERM_ZONE && !heads_columns(c))
		c->at = c->end; /* the rest is its name */
}

/* "l'ammonio", "d'ammonium": bytes of a word that ends in an apostrophe before a name; 0: none. */
static size_t elided(const struct cursor *c)
{
	static const char *const words[] = {
		"l'", "d'", "all'", "dall'", "dell'", "nell'", "sull'", "qu'", NULL};

	for (size_t i = 0; words[i]; i++) {
		size_t len = strlen(words[i]);

		if (c->end - c->at > len && !memcmp(c->line->lower + c->at, words[i], len) &&
			is_letter(peek(c, len)))
			return len;
	}
	return 0;
}

#define CODE_LETTERS 3

static void lex_word(struct cursor *c)
{
	size_t start = c->at;
	struct ts_tokens *out = c->out;

	while (is_word(peek(c, 0)) || (peek(c, 0) == '\'' && is_letter(peek(c, 1))))
		c->at++;
	/* "W-04": the code of a method */
	if (c->at - start <= CODE_LETTERS && peek(c, 0) == '-' && is_digit(peek(c, 1)) &&
		c->line->plain[start] >= 'A' && c->line->plain[start] <= 'Z') {
		for (c->at++; is_word(peek(c, 0));)
			c->at++;
	}
	if (out->count && out->at[out->count - 1].kind == TS_TOKEN_OTHER &&
		out->at[out->count - 1].cell == c->cell)
		out->at[out->count - 1].end = (unsigned short)c->at;
	else
		add(c, TS_TOKEN_OTHER, start);
}

static void lex_one(struct cursor *c)
{
	char sign = peek(c, 0);
	const struct ts_term *term = NULL;
	bool word = is_letter(sign) || sign == '@' || sign == '%';
	size_t len = word ? term_at(c, &term) : 0;

	if (len) {
		lex_term(c, term, len);
	} else if (is_letter(sign) && elided(c)) {
		c->at += elided(c);
	} else if (is_letter(sign)) {
		lex_word(c);
	} else if (!lex_number(c) && !lex_bound(c) && !skip_uncertainty(c)) {
		c->at++;
		if (sign == '(' || sign == ')')
			add(c, sign == '(' ? TS_TOKEN_OPEN : TS_TOKEN_CLOSE, c->at - 1);
		else if (sign == '-' && !is_word(peek(c, 0)))
			add(c, TS_TOKEN_DASH, c->at - 1);
	}
}

static void lex_cell(struct cursor *c)
{
	while (c->at < c->end && !c->out->overfull) {
		if (blanks(c, 0))
			c->at += blanks(c, 0);
		else
			lex_one(c);
	}
}

static char delimiter_of(const struct ts_report_line *line, char delimiter)
{
	if (strchr(line->lower, '|'))
		return '|';
	if (strchr(line->lower, '\t'))
		return '\t';
	if (delimiter && strchr(line->lower, delimiter))
		return delimiter;
	if (strchr(line->lower, ';'))
		return ';';
	return ts_comma_separated(line) ? ',' : 0;
}

void ts_lex(struct ts_lexer *lexer, const struct ts_report_line *line, char delimiter,
	struct ts_tokens *ret)
{
	struct cursor c = {lexer, line, 0, 0, 0, false, ret};
	char sign = delimiter_of(line, delimiter);

	ret->count = ret->cells = 0;
	ret->overfull = false;
	ret->bound = 0;
	ret->bound_cell = 0;
	ret->delimited = sign != 0;
	ret->sign = sign;
	while (c.at <= line->len && !ret->overfull) {
		c.end = sign ? ts_line_cell_end(line, c.at, sign) : line->len;
		c.cell = (unsigned short)ret->cells;
		if (ret->cells < TS_LINE_CELLS_MOST) {
			ret->cell_at[ret->cells].start = (unsigned short)c.at;
			ret->cell_at[ret->cells].end = (unsigned short)c.end;
		}
		lex_cell(&c);
		c.at = c.end + 1;
		ret->cells++;
	}
}
