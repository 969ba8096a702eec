/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One label and the figures behind it: which figure is the result, which are limits, what is mean,
 * lowest and highest. By headings where there are some, else by the rows of layouts.c over one
 * letter a figure; what fits neither is a gap.
 */
#include <math.h>
#include <string.h>

#include "base/arena.h"
#include "base/text.h"
#include "intake/convert.h"

#define NONE ((size_t)-1)
#define LEADS_MOST 4

struct figure {
	const struct ts_part *part;
	const struct ts_term *unit; /* printed behind it, or of its heading */
	const char *form;
	size_t group;
	int role; /* letter of layouts.h once it is known */
	bool dropped;
};

struct event {
	char letter;
	size_t figure; /* NONE: no figure */
};

/* Everything about one entry while it is read. */
struct study {
	struct ts_intake *in;
	const struct ts_entry *entry;
	const struct ts_field *field;
	struct figure figures[TS_PARTS_MOST];
	size_t count;
	struct event events[TS_PARTS_MOST];
	size_t event_count;
	const struct ts_term *leads[LEADS_MOST]; /* units printed before the figures */
	size_t lead_count, groups;
	const char *form;
	double reference_c;
	bool closed, torn; /* other words came; figures came after them */
	bool by_legal;
	const char *rule;
};

const struct ts_field *ts_field_of(const struct ts_term *label, const char *form)
{
	const char *key = label->key;

	if (!key)
		return NULL;
	if (form && strcmp(form, "n") == 0 && strcmp(key, "NO3") == 0)
		key = "NO3-N";
	if (form && strcmp(form, "n") == 0 && strcmp(key, "NO2") == 0)
		key = "NO2-N";
	return ts_shape_field(&ts_shape_reading, key);
}

void ts_entry_add(struct ts_entry *entry, const struct ts_token *token, unsigned line)
{
	if (entry->count == TS_PARTS_MOST)
		entry->overfull = true;
	else
		entry->parts[entry->count++] = (struct ts_part){*token, line, 0, NULL, 0};
}

static void gap(const struct study *s, const char *why, const char *remedy)
{
	ts_collect_gap(s->in, s->entry->line, s->entry->text, why, remedy);
}

static void add_event(struct study *s, char letter, size_t figure)
{
	s->events[s->event_count++] = (struct event){letter, figure};
}

static void add_figure(struct study *s, const struct ts_part *part)
{
	if (s->closed) {
		s->torn = true;
		return;
	}
	s->figures[s->count] = (struct figure){part, part->unit, NULL, 0, part->role, false};
	if (s->event_count && s->events[s->event_count - 1].letter == 'c') {
		s->figures[s->count++].dropped = true; /* "samples: 12" */
		return;
	}
	add_event(s, '?', s->count++);
}

static bool same_unit(const struct ts_term *a, const struct ts_term *b)
{
	return a == b || (strcmp(a->unit, b->unit) == 0 && a->scale == b->scale);
}

static void drop_last(struct study *s)
{
	s->figures[s->count - 1].dropped = true;
	if (s->event_count && s->events[s->event_count - 1].figure == s->count - 1)
		s->event_count--;
}

static void add_unit(struct study *s, const struct ts_part *part, const struct ts_part *before)
{
	const struct ts_term *unit = part->token.term;
	struct figure *last = s->count ? &s->figures[s->count - 1] : NULL;
	bool adjacent = last && before == last->part && !last->dropped;
	bool warm = strcmp(unit->unit, "c") == 0 && s->field->quantity != TS_Q_TEMPERATURE;

	if (warm || *unit->unit == '%') { /* "at 25 C" is a condition, no value */
		if (adjacent && warm && s->reference_c <= 0)
			s->reference_c = last->part->token.first;
		if (adjacent)
			drop_last(s);
		return;
	}
	if (s->closed)
		return;
	if (adjacent && !last->part->role) {
		last->unit = unit;
		return;
	}
	if (s->lead_count && same_unit(s->leads[s->lead_count - 1], unit))
		return;
	if (s->lead_count < LEADS_MOST)
		s->leads[s->lead_count++] = unit;
}

/* "N" counts only where nitrogen can be meant. */
static void add_form(struct study *s, const struct ts_term *term)
{
	bool own = !term->key || strcmp(term->key, s->entry->label->key) == 0 ||
		   strcmp(term->form, "caco3") == 0;
	bool hardness = strcmp(s->entry->label->key, "GH") == 0 && strcmp(term->form, "ca") == 0;
	const char *was = s->form;

	if (strcmp(s->entry->label->key, "GH") == 0 && strcmp(term->form, "mg") == 0 && was &&
		strcmp(was, "ca") == 0)
		s->form = NULL; /* "hardness (Ca + Mg)" names its parts */
	if (!own && !hardness)
		return;
	/* "Calcium, Ca, as CaCO3": the form that counts is the one that is not the thing itself. */
	if (was && (strcmp(was, "caco3") == 0 || strcmp(was, "n") == 0))
		return;
	s->form = term->form;
}

static void add_term(struct study *s, const struct ts_part *part, const struct ts_part *before)
{
	const struct ts_term *term = part->token.term;

	switch (term->kind) {
	case TS_TERM_UNIT:
		add_unit(s, part, before);
		if (term->form && !s->closed)
			s->form = term->form;
		break;
	case TS_TERM_FORMULA:
		if (!s->closed)
			add_form(s, term);
		break;
	case TS_TERM_NONE:
		add_event(s, 'd', NONE);
		break;
	case TS_TERM_COLUMN:
		if (term->role == 'c' && s->count && before == s->figures[s->count - 1].part) {
			drop_last(s); /* "12 samples" */
			break;
		}
		if (strchr("mixwltc", term->role) && !s->closed)
			add_event(s, (char)term->role, NONE);
		break;
	default:
		break;
	}
}

static void gather(struct study *s)
{
	const struct ts_part *before = NULL;

	for (size_t i = 0; i < s->entry->count; i++) {
		const struct ts_part *part = &s->entry->parts[i];

		switch (part->token.kind) {
		case TS_TOKEN_NUMBER:
		case TS_TOKEN_RANGE:
		case TS_TOKEN_BELOW:
		case TS_TOKEN_ABOVE:
			add_figure(s, part);
			break;
		case TS_TOKEN_DASH:
			add_event(s, 'd', NONE);
			break;
		case TS_TOKEN_TERM:
			add_term(s, part, before);
			break;
		case TS_TOKEN_OTHER:
			s->closed |= s->count > 0 && !s->figures[s->count - 1].dropped;
			break;
		default:
			break;
		}
		before = part;
	}
}

/* 1, 2 or 5 times a power of ten, and small: how laboratories round what they cannot see. */
static bool like_detection(const struct study *s, double value)
{
	double limit = s->field->quantity == TS_Q_CONDUCTIVITY ? 10 : 1;
	double lead = value;

	if (!(value > 0) || value > limit)
		return false;
	while (lead < 0.9999)
		lead *= 10;
	while (lead > 9.9999)
		lead /= 10;
	return fabs(lead - 1) < 1e-6 || fabs(lead - 2) < 1e-6 || fabs(lead - 5) < 1e-6;
}

static const struct ts_legal *legal_of(const struct study *s, const struct ts_term *unit, double v)
{
	for (size_t i = 0; unit && i < ts_legals_count; i++) {
		const struct ts_legal *l = &ts_legals[i];

		if (strcmp(l->key, s->entry->label->key) == 0 && strcmp(l->unit, unit->unit) == 0 &&
			fabs(l->value - v * unit->scale) < 1e-9)
			return l;
	}
	return NULL;
}

static bool legal_ph(const struct study *s, double low, double high)
{
	if (s->field->quantity != TS_Q_PH)
		return false;
	for (size_t i = 0; i < ts_legal_ph_count; i++) {
		if (fabs(ts_legal_ph[i][0] - low) < 1e-9 && fabs(ts_legal_ph[i][1] - high) < 1e-9)
			return true;
	}
	return false;
}

static const struct ts_term *unit_of(const struct study *s, const struct figure *f)
{
	if (f->unit && !(f->part->role && s->lead_count))
		return f->unit;
	return s->lead_count ? s->leads[0] : NULL;
}

static char letter_of(const struct study *s, const struct figure *f, const struct figure *before)
{
	const struct ts_token *t = &f->part->token;

	if (f->role)
		return (char)f->role;
	switch (t->kind) {
	case TS_TOKEN_RANGE: /* two units of pH are a rule, not a supply */
		return legal_ph(s, t->first, t->second) ||
				       (s->field->quantity == TS_Q_PH && t->second - t->first >= 2)
			       ? 'G'
			       : 'r';
	case TS_TOKEN_BELOW:
		return before && fabs(before->part->token.first - t->first) < 1e-12 &&
				       like_detection(s, t->first)
			       ? 'v'
			       : 'b';
	case TS_TOKEN_ABOVE:
		return 'a';
	default:
		break;
	}
	if (legal_of(s, unit_of(s, f), t->first))
		return 'g';
	return like_detection(s, t->first) ? 'q' : 'n';
}

static void mark_legal_pair(struct study *s, size_t i)
{
	struct event *a = &s->events[i], *b = &s->events[i + 1];

	if (a->figure == NONE || b->figure == NONE ||
		s->figures[a->figure].part->token.kind != TS_TOKEN_NUMBER ||
		s->figures[b->figure].part->token.kind != TS_TOKEN_NUMBER)
		return;
	if (legal_ph(s, s->figures[a->figure].part->token.first,
		    s->figures[b->figure].part->token.first))
		a->letter = b->letter = 'p';
}

static void remove_events(struct study *s, size_t at, size_t count)
{
	memmove(&s->events[at], &s->events[at + count],
		(s->event_count - at - count) * sizeof *s->events);
	s->event_count -= count;
}

/* A figure beside the word for a limit is that limit. */
static void take_named_limits(struct study *s)
{
	for (size_t i = 0; i < s->event_count;) {
		char word = s->events[i].letter;
		bool behind = i + 1 < s->event_count && s->events[i + 1].figure != NONE;
		bool before = i > 0 && s->events[i - 1].figure != NONE;

		if (word == 'c') {
			remove_events(s, i, 1);
		} else if (word != 'l' && word != 't') {
			i++;
		} else if (behind) {
			s->figures[s->events[i + 1].figure].role = word;
			remove_events(s, i, 2);
		} else if (before) {
			s->figures[s->events[i - 1].figure].role = word;
			remove_events(s, i - 1, 2);
			i--;
		} else {
			remove_events(s, i, 1);
		}
	}
}

static void write_letters(struct study *s)
{
	const struct figure *before = NULL;

	for (size_t i = 0; i < s->event_count; i++) {
		if (s->events[i].figure == NONE)
			continue;
		s->events[i].letter = letter_of(s, &s->figures[s->events[i].figure], before);
		before = &s->figures[s->events[i].figure];
	}
	for (size_t i = 0; i + 1 < s->event_count; i++)
		mark_legal_pair(s, i);
}

/* Units behind the figures: each unit is a statement of its own. */
static void group_by_unit(struct study *s)
{
	const struct ts_term *units[TS_PARTS_MOST];

	s->groups = 0;
	for (size_t i = 0; i < s->count; i++) {
		size_t g = 0;

		if (!s->figures[i].unit || s->figures[i].dropped || s->figures[i].role)
			continue;
		while (g < s->groups && !same_unit(units[g], s->figures[i].unit))
			g++;
		if (g == s->groups)
			units[s->groups++] = s->figures[i].unit;
		s->figures[i].group = g;
	}
}

/* Several units before the figures: cells belong to them in turn. */
static bool group_by_turn(struct study *s)
{
	size_t cells = 0;

	for (size_t i = 0; i < s->event_count; i++)
		cells += s->events[i].figure != NONE || s->events[i].letter == 'd';
	if (s->lead_count < 2 || cells % s->lead_count)
		return false;
	for (size_t i = 0, cell = 0; i < s->event_count; i++) {
		if (s->events[i].figure != NONE) {
			s->figures[s->events[i].figure].unit = s->leads[cell % s->lead_count];
			s->figures[s->events[i].figure].group = cell % s->lead_count;
		}
		cell += s->events[i].figure != NONE || s->events[i].letter == 'd';
	}
	s->groups = s->lead_count;
	return true;
}

static void pair_names(struct study *s, const size_t *at, size_t count, int side)
{
	for (size_t i = 0; i < count; i++) {
		size_t named = side < 0 ? i - 1 : i + 1;

		if (s->events[at[i]].figure == NONE || named >= count)
			continue;
		s->figures[s->events[at[i]].figure].role = s->events[at[named]].letter;
	}
}

/* A mean outside its range, and three figures of which one is a stranger, fit no layout. */
static bool sensible(const struct study *s, const char *roles, const size_t *figures)
{
	const struct ts_token *mean = NULL, *range = NULL;

	for (size_t i = 0; roles[i]; i++) {
		const struct ts_token *t = &s->figures[figures[i]].part->token;

		mean = roles[i] == 'M' ? t : mean;
		range = roles[i] == 'W' ? t : range;
	}
	return !mean || !range || (mean->first >= range->first && mean->first <= range->second);
}

static bool try_layout(struct study *s, size_t row, const char *letters, const size_t *at,
	size_t count, bool *ret_fits)
{
	const struct ts_layout *layout = &ts_layouts[row];
	const size_t *spans;
	size_t groups, figures[8] = {0};

	groups = ts_patterns_match(s->in->layouts, row, letters, count, 0, &spans);
	*ret_fits = groups > 0;
	if (!groups)
		return false;
	if (layout->named) {
		pair_names(s, at, count, layout->named);
		return true;
	}
	for (size_t g = 1; g < groups; g++) {
		if (spans[2 * g] != NONE)
			figures[g - 1] = s->events[at[spans[2 * g]]].figure;
	}
	if (!sensible(s, layout->roles, figures))
		return false;
	for (size_t g = 1; g < groups; g++) {
		if (spans[2 * g] != NONE)
			s->figures[figures[g - 1]].role = layout->roles[g - 1];
	}
	return true;
}

/* The letters of one group against the layouts; false when none fits. */
static bool lay_out(struct study *s, size_t group)
{
	char letters[TS_PARTS_MOST + 1];
	size_t at[TS_PARTS_MOST], count = 0;

	for (size_t i = 0; i < s->event_count; i++) {
		size_t f = s->events[i].figure;
		bool turn = s->lead_count > 1 && f == NONE;

		if (f != NONE ? s->figures[f].group != group : turn && s->groups > 1)
			continue;
		letters[count] = s->events[i].letter;
		at[count++] = i;
	}
	letters[count] = '\0';
	for (size_t row = 0; row < ts_layouts_count; row++) {
		bool fits;

		if (try_layout(s, row, letters, at, count, &fits)) {
			s->rule = ts_layouts[row].id;
			return true;
		}
	}
	return false;
}

static void show_figure(const struct figure *f, const struct ts_term *unit, struct ts_text *text)
{
	ts_text_puts(text, f->part->token.figure, unit ? " " : NULL, NULL);
	if (unit)
		ts_text_put(text, unit->says);
}

/* Forms and reference temperatures that a legal limit on the same line proves. */
static void learn_from_legals(struct study *s)
{
	const char *form = s->form ? s->form : s->entry->label->form;

	for (size_t i = 0; i < s->count; i++) {
		const struct figure *f = &s->figures[i];
		const struct ts_legal *legal;

		if (f->dropped || (f->role != 'L' && f->role != 'l'))
			continue;
		legal = legal_of(s, unit_of(s, f), f->part->token.first);
		if (!legal && !unit_of(s, f) && s->entry->headed) {
			const struct ts_term bare = {.unit = "mg/l", .scale = 1};

			legal = legal_of(s, &bare, f->part->token.first);
		}
		if (!legal || !legal->form)
			continue;
		if (s->field->quantity == TS_Q_CONDUCTIVITY && s->reference_c <= 0) {
			s->reference_c = legal->form[0] == '2' && legal->form[1] == '5' ? 25 : 20;
			s->by_legal = true;
		} else if (s->field->quantity != TS_Q_CONDUCTIVITY && !form) {
			s->form = legal->form;
			s->by_legal = true;
		}
	}
}

static bool convert(const struct study *s, const struct figure *f, struct ts_converted *ret)
{
	struct ts_figure_context context = {s->entry->label, unit_of(s, f),
		s->form ? s->form : s->entry->label->form, s->reference_c, s->by_legal,
		s->entry->headed};

	if (context.unit && context.unit->form && !f->unit)
		context.form = context.unit->form;
	return ts_convert(&context, f->part->token.figure, ret);
}

static enum ts_column column_of(int role)
{
	return role == 'L' || role == 'l'   ? TS_COLUMN_LEGAL
	       : role == 'D' || role == 't' ? TS_COLUMN_DETECTION
					    : TS_COLUMN_RESULT;
}

static enum ts_statistic statistic_of(const struct figure *f)
{
	if (f->part->token.kind == TS_TOKEN_RANGE)
		return TS_STATISTIC_RANGE;
	return f->role == 'M' || f->role == 'm' ? TS_STATISTIC_MEAN
	       : f->role == 'i'                 ? TS_STATISTIC_LOWEST
	       : f->role == 'x'                 ? TS_STATISTIC_HIGHEST
						: TS_STATISTIC_SINGLE;
}

static size_t zone_of(const struct study *s, const struct figure *f)
{
	return f->part->zone ? f->part->zone : s->entry->zone;
}

/* Lists the figure; every figure, also limits, so that the answer can tell them. */
static void list(const struct study *s, const struct figure *f, const struct ts_converted *c)
{
	struct ts_report_value value = {c->field, c->measure, column_of(f->role), statistic_of(f),
		f->part->line, NULL, s->rule, c->assumed, zone_of(s, f)};
	struct ts_text text;

	ts_text_open(&text, &s->in->allocator);
	show_figure(f, unit_of(s, f), &text);
	value.printed = ts_text_get(&text);
	s->in->arena.failed |= text.failed;
	ts_collect_value(s->in, &value);
	ts_text_drop(&text);
}

/* Puts one converted figure into what the entry says. */
static void merge(struct ts_slot *slot, const struct figure *f, const struct ts_measure *m)
{
	int role = f->role;

	if (m->kind == TS_MEASURE_RANGE || role == 'W' || role == 'w') {
		slot->low = m->low;
		slot->high = m->high;
	} else if (role == 'M' || role == 'm') {
		slot->mean = m->value;
	} else if (role == 'i') {
		slot->low = m->value;
	} else if (role == 'x') {
		slot->high = m->value;
	} else {
		slot->low = m->low;
		slot->high = m->high;
		slot->mean = m->value;
		slot->single = true;
		slot->kind = m->kind;
	}
}

/* What cannot be: the mean outside its ends. The mean is kept, the end is not. */
static void settle(const struct study *s, struct ts_slot *slot)
{
	if (slot->single)
		return;
	if (!isnan(slot->low) && !isnan(slot->high) && slot->low > slot->high) {
		ts_collect_clash(s->in, slot->line, 0, "the lowest is printed above the highest");
		slot->low = slot->high = (double)NAN;
	}
	if (slot->high < slot->mean) {
		ts_collect_clash(s->in, slot->line, 0,
			"the highest is printed below the mean; the mean was kept");
		slot->high = (double)NAN;
	}
	if (slot->low > slot->mean) {
		ts_collect_clash(s->in, slot->line, 0,
			"the lowest is printed above the mean; the mean was kept");
		slot->low = (double)NAN;
	}
}

/* Three figures of which the order tells what each is. */
static void sort_three(struct study *s, size_t group)
{
	struct figure *three[3] = {NULL, NULL, NULL};
	size_t count = 0;

	for (size_t i = 0; i < s->count; i++) {
		if (s->figures[i].role == 'T' && s->figures[i].group == group && count < 3)
			three[count++] = &s->figures[i];
	}
	if (count < 3)
		return;
	for (int pass = 0; pass < 3; pass++) {
		for (int i = 0; i < 2; i++) {
			struct figure *a = three[i], *b = three[i + 1];

			if (a->part->token.first <= b->part->token.first)
				continue;
			three[i] = b;
			three[i + 1] = a;
		}
	}
	three[0]->role = 'i';
	three[1]->role = 'm';
	three[2]->role = 'x';
}

/* The figures of one group and zone to one slot. */
static void emit(struct study *s, size_t group, size_t zone)
{
	struct ts_slot slot = {.zone = zone,
		.restated = group > 0 && s->lead_count < 2,
		.low = (double)NAN,
		.high = (double)NAN,
		.mean = (double)NAN,
		.kind = TS_MEASURE_VALUE,
		.count = 1,
		.rule = s->rule,
		.rank = (int)s->entry->label->scale};
	struct ts_text printed;
	struct ts_converted c;

	ts_text_open(&printed, &s->in->allocator);
	for (size_t i = 0; i < s->count; i++) {
		const struct figure *f = &s->figures[i];
		bool limit = column_of(f->role) != TS_COLUMN_RESULT;

		if (f->dropped || f->group != group || zone_of(s, f) != zone || !f->role ||
			strchr("cs", f->role))
			continue;
		if (!convert(s, f, &c)) {
			if (!limit)
				gap(s, c.why, c.remedy);
			continue;
		}
		list(s, f, &c);
		if (limit)
			continue;
		merge(&slot, f, &c.measure);
		slot.line = slot.field ? slot.line : f->part->line;
		slot.last = f->part->line;
		slot.field = c.field;
		slot.unit = unit_of(s, f);
		slot.assumed = c.assumed;
		ts_text_put(&printed, printed.len ? "; " : NULL);
		show_figure(f, slot.unit, &printed);
		slot.rank = (int)s->entry->label->scale + c.rank;
	}
	slot.printed = ts_text_get(&printed);
	s->in->arena.failed |= printed.failed;
	if (slot.field) {
		settle(s, &slot);
		ts_collect_slot(s->in, &slot);
	}
	ts_text_drop(&printed);
}

static void read_headed(struct study *s)
{
	s->rule = "under-heading";
	learn_from_legals(s);
	for (size_t i = 0; i < s->count; i++) {
		size_t zone = zone_of(s, &s->figures[i]);
		bool first = true;

		for (size_t j = 0; j < i; j++)
			first &= zone_of(s, &s->figures[j]) != zone;
		if (first)
			emit(s, 0, zone);
	}
}

static void read_laid_out(struct study *s)
{
	static const char *const which = "which of its figures is the result?";
	static const char *const look = "look at the headings of its columns in the report";

	take_named_limits(s);
	if (!group_by_turn(s))
		group_by_unit(s);
	write_letters(s);
	s->groups += s->groups == 0;
	for (size_t g = 0; g < s->groups; g++) {
		if (!lay_out(s, g)) {
			gap(s, which, look);
			continue;
		}
		sort_three(s, g);
		learn_from_legals(s);
		emit(s, g, s->entry->zone);
	}
}

static bool any_figure(const struct study *s)
{
	for (size_t i = 0; i < s->count; i++) {
		if (!s->figures[i].dropped)
			return true;
	}
	return false;
}

void ts_entry_close(struct ts_intake *in, struct ts_entry *entry)
{
	struct study s = {.in = in, .entry = entry, .rule = ""};

	if (!entry->label)
		return;
	s.field = ts_field_of(entry->label, NULL);
	if (s.field) {
		gather(&s);
		if (!any_figure(&s))
			; /* a label in a sentence: nothing was stated */
		else if (entry->overfull || (s.torn && !s.figures[0].unit))
			gap(&s, "other words stand between its figures",
				"look at the report and use a flag or the file");
		else if (entry->headed)
			read_headed(&s);
		else
			read_laid_out(&s);
	}
	entry->label = NULL;
	entry->count = 0;
	entry->overfull = entry->headed = entry->implied = false;
}
