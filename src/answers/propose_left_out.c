/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Why an animal is in no list: the reason of each candidacy in a sentence.
 */
#include "answers/propose_list.h"

#include "model/practice.h"
#include "stock/compose.h"
#include "stock/rules.h"
#include "words/rulings.h"
#include "words/sentence.h"
#include "words/unusual.h"

static void say_unsure(
	struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	if (m->gh_missing) {
		ts_text_put(text, "unsure: measure GH first");
		return;
	}
	ts_text_put(text, "unsure: ");
	if (!isnan(m->oxygen_borne_mg_l))
		ts_say_little_oxygen(text, m, profile);
	else if (m->limiting >= 0)
		ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	else
		ts_text_put(text, "a reading is missing");
}

/* It lives there, and others are at home. */
static void say_edge(struct ts_text *text, const struct ts_match *m,
	const struct ts_profile *profile, double room_gh_dh)
{
	ts_text_put(text, "it can live here, not at its best: ");
	if (m->limiting >= 0 && m->at[m->limiting].uncomfortable_by != 0) {
		ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	} else if (!ts_compose_spares_gh(m, profile, room_gh_dh)) {
		ts_text_put(text, "it likes GH ");
		ts_say_range(text, &m->species->water.usual.gh_dh.preferred, 0);
		ts_text_put(text, ", and GH ");
		ts_text_number_short(text, profile->at[TS_GH].value, 1);
		ts_text_put(text, " leaves hardly any room");
	} else {
		ts_text_number_short(text, profile->at[TS_TEMPERATURE].high, 1);
		ts_text_put(text, " C leaves too little to the ");
		ts_text_number_short(text, m->species->water.usual.temp_c.preferred.high, 1);
		ts_text_put(text, " C where its comfort ends");
	}
	ts_text_put(text, "; naming it asks for it (--with)");
}

/* The sentences of reasons that need no figures. */
static const char *const plain_reasons[TS_LEFT_OUT__COUNT] = {
	[TS_CANDIDATE] = "it could be in a list",
	[TS_LEFT_BY_WISH] = "you asked for lists without it",
	[TS_LEFT_NOT_HARDY] = "it takes change badly, and --hardy was asked",
	[TS_LEFT_BY_THEME] = "it is not of what was asked for (--theme, --small-only)",
	[TS_LEFT_SELDOM] = "it is seldom sold; naming it asks for it (--with)",
	[TS_LEFT_BY_NITRATE] = "more nitrate than it bears, now or with a full list",
	[TS_LEFT_BY_BUFFER] = "so little KH is for animals of black water only",
	[TS_LEFT_BY_LOAD] = "its smallest group alone makes more waste than a proposal leaves room "
			    "for; naming it asks for it (--with)",
};

void ts_answer_left_out(struct ts_text *text, const struct ts_profile *profile,
	const struct ts_practice *practice, const struct ts_candidacy *c)
{
	const struct ts_match *m = &c->match;

	if (c->left_out == TS_LEFT_BY_LOAD && c->must) {
		ts_text_put(text, "its smallest group alone makes more waste than this tank bears");
	} else if (plain_reasons[c->left_out]) {
		ts_text_put(text, plain_reasons[c->left_out]);
	} else if (c->left_out == TS_LEFT_BY_WATER) {
		ts_text_put(text, "the water excludes it: ");
		if (m->limiting >= 0)
			ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
		else
			ts_say_copper(text, m, profile);
	} else if (c->left_out == TS_LEFT_AT_EDGE) {
		say_edge(text, m, profile, practice->value[TS_P_PROPOSE_ROOM_GH]);
	} else if (c->left_out == TS_LEFT_UNSURE) {
		say_unsure(text, m, profile);
	} else if (c->left_out == TS_LEFT_BY_ROOM) {
		ts_text_put(text, "not in this tank: ");
		ts_say_ruling(text, &c->ruling);
	} else if (c->left_out == TS_LEFT_BY_RESIDENT) {
		ts_text_put(text, "not with ");
		ts_say_animal(text, c->other);
		ts_text_put(text, ": ");
		if (c->asks)
			ts_text_put(text, c->asks);
		else
			ts_say_ruling(text, &c->ruling);
	} else {
		ts_text_put(text, "not proposed unasked: ");
		ts_text_put(text, c->asks ? c->asks : "see its cautions");
		ts_text_put(text, "; naming it asks for it (--with)");
	}
}

void ts_propose_say_left_out(struct ts_proposing *w, const struct ts_candidacy *c)
{
	const char *home = c->left_out == TS_LEFT_BY_CAUTION
				   ? ts_answer_no_home(w->asking, c->match.species)
				   : NULL;

	if (!home) {
		ts_answer_left_out(&w->text, &w->profile, w->asking->practice, c);
		return;
	}
	ts_text_puts(
		&w->text, "not proposed unasked: ", home, "; naming it asks for it (--with)", NULL);
}

void ts_propose_left_out(struct ts_proposing *w)
{
	static const char *const reasons[TS_LEFT_OUT__COUNT] = {[TS_LEFT_BY_WATER] = "water",
		[TS_LEFT_UNSURE] = "unsure",
		[TS_LEFT_BY_WISH] = "wish",
		[TS_LEFT_NOT_HARDY] = "not-hardy",
		[TS_LEFT_BY_THEME] = "theme",
		[TS_LEFT_BY_CAUTION] = "caution",
		[TS_LEFT_ASKS] = "asks-much",
		[TS_LEFT_AT_EDGE] = "edge",
		[TS_LEFT_SELDOM] = "seldom",
		[TS_LEFT_BY_ROOM] = "room",
		[TS_LEFT_BY_NITRATE] = "nitrate",
		[TS_LEFT_BY_BUFFER] = "buffer",
		[TS_LEFT_BY_LOAD] = "load",
		[TS_LEFT_BY_RESIDENT] = "resident"};
	struct ts_propose_result *r = w->out;

	for (size_t i = 0; i < w->p.species_count; i++) {
		const struct ts_candidacy *c = &w->p.species[i];
		bool by_rule = !c->asks && (c->left_out == TS_LEFT_BY_ROOM ||
						   c->left_out == TS_LEFT_BY_RESIDENT);

		if (c->left_out == TS_CANDIDATE)
			continue;
		ts_propose_say_left_out(w, c);
		r->left_out[r->left_out_count++] = (struct ts_propose_left_out_result){
			c->match.species->species, reasons[c->left_out],
			by_rule ? ts_rule_rows[c->ruling.rule].code : NULL,
			ts_asking_keep(w->asking, &w->text)};
	}
}
