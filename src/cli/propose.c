/* SPDX-License-Identifier: Apache-2.0 */
/*
 * propose: communities for a water and a tank. Here the words of the call become the question of
 * answers/propose.h, and the files that it asks for are written; show/propose.c shows the result.
 */
#include "cli/commands.h"

#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "answers/propose.h"
#include "base/arena.h"
#include "base/date.h"
#include "base/number.h"
#include "records/write.h"
#include "report/output.h"
#include "report/propose_result.h"
#include "show/propose.h"
#include "show/sheet.h"
#include "stock/community.h"
#include "stock/model_lp.h"
#include "stock/room.h"
#include "words/names.h"

struct propose_call {
	struct answer answer;      /* the water */
	struct ts_keeping keeping; /* with the tank's temperature */
	struct ts_plan plan;       /* of --like, with the water and tank of the call */
	struct ts_propose_question question;
	struct ts_propose_result result;
};

static enum ts_status refuse(
	struct session *s, enum ts_status status, const char *what, const char *remedy)
{
	ts_text_puts(s->error, what, "; ", remedy, NULL);
	return status;
}

/* The species of a name; an unknown or ambiguous one is an error of the call. */
static const struct ts_species *named(struct session *s, const char *name)
{
	struct ts_candidates candidates;
	const struct ts_species *found = session_animal(s, name, &candidates);

	if (!found)
		ts_say_candidates(s->error, name, &candidates);
	return found;
}

static enum ts_status names(struct session *s, const struct values *values,
	const struct ts_species *const **ret, size_t *ret_count)
{
	const struct ts_species **list = ts_arena_array(s->arena, values->count, sizeof *list);

	if (!list)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < values->count; i++) {
		list[i] = named(s, values->items[i]);
		if (!list[i])
			return TS_BAD_INPUT;
	}
	*ret = list;
	*ret_count = values->count;
	return TS_OK;
}

/* Adds a stock line to the resident of its species. */
static void add_resident(struct ts_group *r, const struct ts_stock_line *line)
{
	unsigned count = (unsigned)line->count;

	switch (line->sex) {
	case TS_SEX_MALE:
		r->males += count;
		break;
	case TS_SEX_FEMALE:
		r->females += count;
		break;
	case TS_SEX_PAIRS:
		r->males += count / 2;
		r->females += count - count / 2;
		break;
	default:
		r->either += count;
		break;
	}
}

static enum ts_status residents(struct session *s, struct propose_call *a)
{
	const struct ts_plan *plan = &a->plan;
	struct ts_group *list = ts_arena_array(s->arena, plan->stock_count, sizeof *list);
	size_t count = 0;

	if (!list)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < plan->stock_count; i++) {
		const struct ts_species *species = named(s, plan->stock[i].species);
		size_t at = 0;

		if (!species)
			return TS_BAD_INPUT;
		while (at < count && list[at].species != species)
			at++;
		if (at == count)
			list[count++].species = species;
		add_resident(&list[at], &plan->stock[i]);
	}
	a->question.wish.residents = list;
	a->question.wish.resident_count = count;
	return TS_OK;
}

/* Of --bottom: the words of the flag, and what a tank file calls them. */
static const int bottoms[] = {TS_SUBSTRATE_UNKNOWN, TS_SUBSTRATE_SAND, TS_SUBSTRATE_GRAVEL,
	TS_SUBSTRATE_COARSE_GRAVEL, TS_SUBSTRATE_BARE};

/* Tank and, with --like, what lives in it. */
static enum ts_status load_tank(struct session *s, struct propose_call *a)
{
	const struct options *o = s->options;
	enum ts_status status = TS_OK;

	if (o->like)
		status = file_plan(s, o->like, &a->plan);
	if (status)
		return status;
	if (!o->tank_file && !(o->size.length_cm > 0) && !(o->volume.value > 0) &&
		!(ts_tank_net_l(&a->plan.tank, s->practice) > 0))
		return refuse(s, TS_BAD_INPUT,
			o->like ? "the plan names no tank" : "no tank was given",
			"give --size 100x40x45 (cm inside) or --volume 60L, or write its length, "
			"width, height and filter into a file and give -t FILE");
	status = answer_tank(s, &a->plan.tank);
	if (!status && o->temperature.kind != TS_MEASURE_NONE)
		a->plan.tank.temp_c = o->temperature;
	a->plan.tank.cover = o->lid ? TS_COVER_YES : a->plan.tank.cover;
	a->plan.tank.filter = o->mature ? TS_FILTER_MATURE : a->plan.tank.filter;
	a->plan.tank.substrate = o->bottom ? bottoms[o->bottom] : a->plan.tank.substrate;
	return status;
}

/* A tank of so many litres gets the sides that are usual. */
static void take_volume(struct session *s, struct propose_call *a)
{
	a->answer.assumed_litres = 0;
	if (!(s->options->volume.value > 0) || s->options->size.length_cm > 0 ||
		a->plan.tank.length_cm > 0)
		return;
	a->answer.assumed_litres = s->options->volume.value;
	ts_room_usual_sides(a->answer.assumed_litres, &a->plan.tank);
}

/* The water of the call, else the plan's. */
static enum ts_status load_water(struct session *s, struct propose_call *a)
{
	enum ts_status status = TS_OK;

	if (!s->options->water_file && !s->options->has_reading && a->plan.water.reading_count)
		a->answer.water = a->plan.water;
	else
		status = answer_water_if_any(s, &a->answer);
	take_volume(s, a);
	a->plan.water = a->answer.water;
	return status;
}

static enum ts_status open_call(struct session *s, struct propose_call *a)
{
	enum ts_status status = load_tank(s, a);

	if (!status)
		status = load_water(s, a);
	if (!status)
		status = answer_catalogue(s);
	if (status)
		return status;
	a->keeping = s->options->keeping;
	a->keeping.temperature = a->plan.tank.temp_c;
	ts_profile_make(&a->answer.water, &a->keeping, s->practice, s->today, &a->answer.profile);
	return TS_OK;
}

static void progress(void *state, size_t nodes, int64_t points)
{
	(void)state;
	char looked[TS_NUMBER_ROOM], best[TS_NUMBER_ROOM];

	ts_number_write(looked, (double)nodes, 0);
	ts_number_write(best, (double)points, 0);
	fputs("\rsearching: ", stderr);
	fputs(looked, stderr);
	fputs(" lists looked at, best so far ", stderr);
	fputs(best, stderr);
	fputs(" ", stderr);
}

/* Fewer than must be in a list cannot be the most. */
static enum ts_status few_enough(struct session *s, const struct ts_wish *w)
{
	const size_t most = s->options->most_species;
	size_t count = w->with_count;
	char musts[TS_NUMBER_ROOM], allowed[TS_NUMBER_ROOM];

	for (size_t i = 0; i < w->resident_count; i++) {
		bool asked = false;

		for (size_t k = 0; k < w->with_count; k++)
			asked |= w->with[k] == w->residents[i].species;
		count += !asked;
	}
	if (!most || count <= most)
		return TS_OK;
	ts_number_write(musts, (double)count, 0);
	ts_number_write(allowed, (double)most, 0);
	ts_text_puts(s->error, musts, " species must be in every list (",
		w->resident_count ? "--with, and those that live there" : "--with",
		"), and --most-species allows ", allowed, "; raise it, or leave one out", NULL);
	return TS_BAD_INPUT;
}

/* The species that are asked for, the centre among them. */
static enum ts_status make_musts(struct session *s, struct propose_call *a)
{
	const struct options *o = s->options;
	struct values with = o->with;
	struct ts_wish *w = &a->question.wish;
	enum ts_status status;

	if (o->centre && with.count < TS_VALUES_MOST)
		with.items[with.count++] = o->centre;
	status = names(s, &with, &w->with, &w->with_count);
	if (!status && o->centre)
		w->centre = w->with[w->with_count - 1];
	return status;
}

/* Whether the tank has run for eight weeks; an unknown day says nothing. */
static bool aged(const struct session *s, const struct ts_tank *tank)
{
	long since;

	return tank->running_since && ts_date_read(tank->running_since, &since) &&
	       (double)(s->today - since) >= s->practice->value[TS_P_SETTLED_DAYS];
}

static enum ts_status make_question(struct session *s, struct propose_call *a)
{
	const struct options *o = s->options;
	struct ts_propose_question *q = &a->question;
	enum ts_status status;

	*q = (struct ts_propose_question){.water_name = a->answer.water.name,
		.plan = &a->plan,
		.keeping = &a->keeping,
		.profile = &a->answer.profile,
		.assumed_litres = a->answer.assumed_litres,
		.wish = {.catalogue = s->catalogue,
			.hardy = o->hardy,
			.small_only = o->small_only,
			.theme = (enum ts_theme)o->theme,
			.aged = aged(s, &a->plan.tank),
			.no3_rise_mg_l_week = o->no3_rise.value,
			.buffer_days = o->buffer.value / 24,
			.species_most = o->most_species,
			.lists = o->lists}};
	q->water_says = say_water_kept(s, &a->answer);
	q->animals_say = say_animals_kept(s);
	q->overlays_say = say_overlays_kept(s);
	status = make_musts(s, a);
	if (!status)
		status = names(s, &o->without, &q->wish.without, &q->wish.without_count);
	if (!status)
		status = residents(s, a);
	if (!status)
		status = few_enough(s, &q->wish);
	if (!status && o->why)
		q->why = named(s, o->why);
	return status ? status : o->why && !q->why ? TS_BAD_INPUT : TS_OK;
}

static enum ts_status write_file(struct session *s, const char *path, const struct ts_text *text)
{
	if (text->failed)
		return TS_NO_MEMORY;
	output_left_over(s->system, path, s->findings);
	return answer_may_replace(s, path) ? TS_BAD_INPUT
					   : output_write(s->system, path, text, s->error);
}

static enum ts_status write_model(struct session *s, const struct propose_call *a)
{
	enum ts_status status;
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	ts_model_write_lp(&text, &a->result.proposal->model, a->result.proposal->names);
	status = write_file(s, s->options->model_out, &text);
	ts_text_drop(&text);
	return status;
}

static enum ts_status write_plan(struct session *s, const struct propose_call *a)
{
	enum ts_status status;
	struct ts_plan plan;
	struct ts_text text;

	const struct ts_proposal *p = a->result.proposal;

	if (a->result.held.count && !a->result.held_by_filter_alone)
		return refuse(s, TS_NO, "no plan was written, since nothing is bought now",
			"the answer says what comes first");
	if (!p->count)
		return refuse(s, TS_NO, "no plan was written", "there is no list to write");
	if (!ts_community_plan(&p->lists[0], &a->plan, &a->keeping, s->arena, &plan))
		return TS_NO_MEMORY;
	if (a->result.lid_assumed)
		plan.tank.cover = TS_COVER_YES;
	plan.name = "proposed";
	plan.water_file = plan.tank_file = plan.change_water_file = NULL;
	ts_text_open(&text, &s->arena->allocator);
	ts_records_write(&text, &ts_shape_plan, &plan, false);
	status = write_file(s, s->options->plan_out, &text);
	ts_text_drop(&text);
	return status;
}

static void write_answer(struct session *s, struct propose_call *a)
{
	struct ts_document doc;

	if (s->options->format == FORMAT_JSON) {
		session_json(s, "propose", &ts_result_propose, &a->result);
		return;
	}
	ts_doc_open(&doc, s->arena, "Animals that go together");
	doc.drawn = s->options->format == FORMAT_HTML;
	doc.brief = s->options->format == FORMAT_BRIEF;
	ts_show_sheet(&doc, a->answer.water.name, &a->answer.profile);
	ts_show_propose(&doc, &a->result, s->options->all || s->options->plan_out || doc.drawn);
	session_write(s, &doc);
}

static bool terminal_for_errors(const struct session *s)
{
	struct ts_terminal terminal;

	s->system->terminal(s->system->state, true, &terminal);
	return terminal.is && !s->options->quiet;
}

enum ts_status command_propose(struct session *s)
{
	struct propose_call *a = ts_arena_take(s->arena, sizeof *a);
	struct ts_asking asking = {.arena = s->arena, .practice = s->practice, .today = s->today};
	bool terminal = terminal_for_errors(s);
	struct ts_search_limits limits = {.progress = terminal ? progress : NULL};
	enum ts_status status;

	if (!a)
		return TS_NO_MEMORY;
	if (s->options->argument_count)
		return refuse(s, TS_BAD_INPUT, "propose takes no names",
			"give --with SPECIES or --why SPECIES");
	status = open_call(s, a);
	if (!status)
		status = make_question(s, a);
	if (status)
		return status;
	a->question.wish.limits = &limits;
	if (!ts_answer_propose(&asking, &a->question, &a->result))
		return TS_NO_MEMORY;
	if (terminal)
		fputs("\r\033[K", stderr);
	if (s->options->model_out)
		status = write_model(s, a);
	if (status)
		return status;
	write_answer(s, a);
	if (s->options->plan_out)
		status = write_plan(s, a);
	if (status)
		return status;
	return a->result.community_count && !a->result.held.count && !a->result.thin ? TS_OK
										     : TS_NO;
}
