/* SPDX-License-Identifier: Apache-2.0 */
/*
 * propose for programs: fills the rows of report/propose_result.h from the proposal.
 */
#include "cli/propose.h"

#include <string.h>

#include "base/arena.h"
#include "cli/results.h"
#include "report/propose_result.h"
#include "words/sentence.h"

/* The text so far as a text of the answer; the scratch text is empty afterwards. */
static const char *take(struct session *s, struct ts_text *text)
{
	const char *copy = ts_arena_text(s->arena, ts_text_get(text), text->len);

	s->arena->failed |= text->failed;
	ts_text_drop(text);
	return copy;
}

static struct ts_propose_line_result line_of(struct session *s, const struct ts_company *line)
{
	const struct ts_match *m = &line->candidacy->match;

	return (struct ts_propose_line_result){.species = m->species->species,
		.id = result_id(s->arena, m->species->file),
		.common = result_common(m->species),
		.count = ts_group_count(&line->group),
		.males = line->group.males,
		.females = line->group.females,
		.there = line->there,
		.fit = m->fit};
}

/* NULL where nobody's band is known, or where memory ran out. */
static const struct ts_propose_shared_result *shared_of(
	struct session *s, const struct ts_community *c, int p)
{
	const struct ts_shared *shared = &c->shared[p];
	struct ts_propose_shared_result *r =
		shared->known ? ts_arena_take(s->arena, sizeof *r) : NULL;

	if (!r)
		return NULL;
	*r = (struct ts_propose_shared_result){.unit = ts_parameter_rows[p].unit,
		.low = shared->range.low,
		.high = shared->range.high,
		.low_set_by = shared->low_by ? shared->low_by->species : NULL,
		.high_set_by = shared->high_by ? shared->high_by->species : NULL,
		.comfortable = shared->comfortable};
	return r;
}

static void put(struct ts_texts *texts, const char *text)
{
	texts->items[texts->count++] = text;
}

static struct ts_texts room_for(struct session *s, size_t count)
{
	struct ts_texts texts = {ts_arena_array(s->arena, count, sizeof *texts.items), 0};

	return texts;
}

static void zones_of(const struct ts_community *c, struct ts_texts *ret)
{
	static const char *const words[] = {"bottom", "middle", "top"};
	bool used[3] = {false};

	for (size_t i = 0; i < c->count; i++) {
		int swims = c->lines[i].candidacy->match.species->swims;

		for (int z = 0; z < 3; z++)
			used[z] |= swims == z || swims == 3;
	}
	for (int z = 0; z < 3; z++) {
		if (used[z])
			put(ret, words[z]);
	}
}

static void fill_community(struct session *s, const struct propose_answer *a, size_t place,
	struct ts_propose_community_result *r)
{
	const struct ts_community *c = &a->proposal.lists[place];
	const struct ts_match *worst = &c->lines[c->limiting].candidacy->match;
	struct ts_text text;

	*r = (struct ts_propose_community_result){.place = place + 1,
		.objective = (double)c->points,
		.gap = (double)(c->at_most - c->points),
		.proven = c->proven,
		.equal_to_first = c->equal,
		.load = {.nitrogen_mg_day = c->nitrogen_mg_day,
			.nitrogen_most_mg_day = a->proposal.nitrogen_most_mg_day,
			.no3_rise_mg_l_week = c->load.no3_rise_mg_l_week.value,
			.no3_steady_mg_l = c->load.no3_steady_mg_l.value,
			.kh_used_dh_week = c->load.kh_used_dh_week.value,
			.buffer_days = c->load.buffer_days.value},
		.stock = ts_arena_array(s->arena, c->count, sizeof *r->stock),
		.swims = room_for(s, 3),
		.order = room_for(s, c->count),
		.says = room_for(s, c->count)};
	if (s->arena->failed)
		return;
	ts_text_open(&text, &s->arena->allocator);
	for (size_t i = 0; i < c->count; i++) {
		r->stock[r->stock_count++] = line_of(s, &c->lines[i]);
		propose_say_company(&text, &c->lines[i]);
		put(&r->says, take(s, &text));
	}
	r->shared = (struct ts_propose_shared_water_result){shared_of(s, c, TS_GH),
		shared_of(s, c, TS_KH), shared_of(s, c, TS_PH), shared_of(s, c, TS_TEMPERATURE),
		shared_of(s, c, TS_SALINITY)};
	for (size_t i = 0; i < c->order_count; i++)
		put(&r->order, c->lines[c->order[i]].candidacy->match.species->species);
	zones_of(c, &r->swims);
	propose_say_limiting(&text, c);
	r->limiting = (struct ts_propose_limiting_result){
		worst->limiting < 0 ? NULL : worst->species->species,
		worst->limiting < 0 ? NULL : ts_parameter_rows[worst->limiting].key,
		take(s, &text)};
}

static void fill_left_out(
	struct session *s, const struct propose_answer *a, struct ts_propose_result *r)
{
	static const char *const reasons[TS_LEFT_OUT__COUNT] = {[TS_LEFT_BY_WATER] = "water",
		[TS_LEFT_UNSURE] = "unsure",
		[TS_LEFT_BY_WISH] = "wish",
		[TS_LEFT_NOT_HARDY] = "not-hardy",
		[TS_LEFT_BY_CAUTION] = "caution",
		[TS_LEFT_BY_ROOM] = "room",
		[TS_LEFT_BY_NITRATE] = "nitrate",
		[TS_LEFT_BY_BUFFER] = "buffer",
		[TS_LEFT_BY_LOAD] = "load",
		[TS_LEFT_BY_RESIDENT] = "resident"};
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	for (size_t i = 0; i < a->proposal.species_count; i++) {
		const struct ts_candidacy *c = &a->proposal.species[i];

		bool by_rule = c->left_out == TS_LEFT_BY_ROOM || c->left_out == TS_LEFT_BY_RESIDENT;

		if (c->left_out == TS_CANDIDATE)
			continue;
		propose_say_left_out(&text, a, c);
		r->left_out[r->left_out_count++] = (struct ts_propose_left_out_result){
			c->match.species->species, reasons[c->left_out],
			by_rule ? ts_rule_rows[c->ruling.rule].code : NULL, take(s, &text)};
	}
}

void propose_json(struct session *s, const struct propose_answer *a)
{
	const struct ts_proposal *p = &a->proposal;
	struct ts_propose_result r = {.mature = !a->filter_young,
		.candidates = p->candidates,
		.species_most = p->species_most,
		.volume_l = ts_tank_net_l(&a->plan.tank, a->wish.practice),
		.floor_m2 = p->floor_m2,
		.communities = ts_arena_array(s->arena, p->count, sizeof *r.communities),
		.waiting = ts_arena_array(s->arena, TS_PARAMETER__COUNT, sizeof *r.waiting),
		.left_out = ts_arena_array(s->arena, p->species_count, sizeof *r.left_out)};

	if (s->arena->failed)
		return;
	for (size_t i = 0; i < p->count; i++)
		fill_community(s, a, r.community_count++, &r.communities[i]);
	for (int i = 0; i < TS_PARAMETER__COUNT; i++) {
		if (p->waits[i])
			r.waiting[r.waiting_count++] = (struct ts_propose_waiting_result){
				ts_parameter_rows[i].key, p->waits[i]};
	}
	fill_left_out(s, a, &r);
	session_json(s, "propose", &ts_result_propose, &r);
}
