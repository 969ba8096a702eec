/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What of a list is bought when: in thirds by waste where the filter is young, else one kind after
 * the other, grazers when something has grown.
 */
#include "answers/propose_list.h"

#include "model/practice.h"

static double nitrogen(const struct ts_proposing *w, const struct ts_company *line)
{
	return ts_group_nitrogen_mg_day(
		&line->group, w->wish.tank, (double)NAN, w->asking->practice);
}

/*
 * In which of three purchases a line comes where the filter is young: each brings about a third of
 * the waste. Where it is mature, every line is a purchase of its own.
 */
static size_t purchase_of(const struct ts_proposing *w, const struct ts_community *c, size_t place)
{
	double before = 0, all = 0;

	if (!w->filter_young)
		return place;
	for (size_t i = 0; i < c->order_count; i++) {
		const struct ts_company *line = &c->lines[c->order[i]];
		double own = line->later ? 0 : nitrogen(w, line);

		all += own;
		before += i < place ? own : i == place ? own / 2 : 0;
	}
	return (size_t)fmin(3 * before / all, 2);
}

static void put_purchase(struct ts_proposing *w, const struct ts_company *line)
{
	ts_text_number_short(&w->text, ts_group_count(&line->group) - line->there, 0);
	ts_text_put(&w->text, " ");
	ts_propose_put_kind(w, line);
}

void ts_propose_purchases(
	struct ts_proposing *w, const struct ts_community *c, struct ts_propose_community_result *r)
{
	double days = w->asking->practice->value[TS_P_PROPOSE_PURCHASE_DAYS];
	double settled = w->asking->practice->value[TS_P_SETTLED_DAYS];

	r->purchases = ts_arena_array(w->asking->arena, c->order_count + 1, sizeof *r->purchases);
	if (!r->purchases)
		return;
	for (size_t i = 0; i < c->order_count;) {
		size_t purchase = purchase_of(w, c, i), step = r->purchase_count;
		bool later = c->lines[c->order[i]].later;
		double day = days * (double)step;

		for (size_t n = 0; i < c->order_count && purchase_of(w, c, i) == purchase &&
				   c->lines[c->order[i]].later == later;
			i++) {
			ts_text_put(&w->text, n++ ? ", " : "");
			put_purchase(w, &c->lines[c->order[i]]);
		}
		ts_text_put(&w->text, later  ? "; they graze what has grown by then"
				      : step ? "; only if ammonia and nitrite are still nil"
					     : "; only when ammonia and nitrite are nil");
		r->purchases[step] = (struct ts_propose_purchase_result){
			later ? fmax(day, settled) : day, ts_asking_keep(w->asking, &w->text)};
		r->purchase_count++;
	}
	r->purchases_say = w->filter_unknown    ? "What to buy first, in thirds"
			   : w->filter_young    ? "Once the filter is mature, in thirds"
			   : w->out->held.count ? "Later, what to buy first"
						: "What to buy first";
}
