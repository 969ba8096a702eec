/* SPDX-License-Identifier: Apache-2.0 */
/*
 * propose: communities for a water and a tank. Here the call becomes a wish, and the files that it
 * asks for are written; the answer itself is in propose_say.c and propose_fill.c.
 */
#include "cli/propose.h"
#include "cli/output.h"

#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "base/arena.h"
#include "cli/output.h"
#include "records/write.h"
#include "stock/check.h"
#include "stock/community.h"
#include "stock/model_lp.h"
#include "words/names.h"

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
	const struct ts_species *found = session_species(s, name, &candidates);

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

static enum ts_status residents(struct session *s, struct propose_answer *a)
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
	a->wish.residents = list;
	a->wish.resident_count = count;
	return TS_OK;
}

/* Tank and, with --like, what lives in it. */
static enum ts_status load_tank(struct session *s, struct propose_answer *a)
{
	const struct options *o = s->options;
	enum ts_status status = TS_OK;

	if (o->like)
		status = file_plan(s, o->like, &a->plan);
	if (status)
		return status;
	if (!o->tank_file && !(o->size.length_cm > 0) && !o->like)
		return refuse(s, TS_BAD_INPUT, "no tank was given",
			"give --size 100x40x45 (cm inside), or write its length, width, height "
			"and filter into a file and give -t FILE");
	status = answer_tank(s, &a->plan.tank);
	if (!status && o->temperature.kind != TS_MEASURE_NONE)
		a->plan.tank.temp_c = o->temperature;
	return status;
}

/* The water of the call, else the plan's. */
static enum ts_status load_water(struct session *s, struct propose_answer *a)
{
	enum ts_status status = TS_OK;

	if (!s->options->water_file && !s->options->has_reading && a->plan.water.reading_count)
		a->answer.water = a->plan.water;
	else
		status = answer_water(s, &a->answer);
	a->plan.water = a->answer.water;
	return status;
}

/* Whether a ruling forbids newcomers now, whoever they are. */
static bool holds_back(const struct ts_ruling *r)
{
	switch (r->rule) {
	case TS_RULE_FILTER:
	case TS_RULE_FILTER_UNKNOWN:
	case TS_RULE_NEWCOMERS:
		return true;
	case TS_RULE_AMMONIA:
	case TS_RULE_NITRITE:
	case TS_RULE_CHLORINE:
		return r->severity >= TS_CONCERN;
	default:
		return false;
	}
}

/*
 * What a check says of the tank with one more animal in it: the water that animals meet there, and
 * what forbids newcomers now.
 */
static enum ts_status look_at_tank(struct session *s, struct propose_answer *a)
{
	struct ts_stock_line newcomer = {.species = "any", .count = 1};
	const struct ts_species *any = s->catalogue->items[0];
	struct ts_plan plan = a->plan;
	struct ts_check check;
	enum ts_status status;

	plan.stock = &newcomer;
	plan.stock_count = 1;
	status = ts_check_plan(&plan, &any, s->today, &a->practice, s->arena, &check);
	if (status)
		return status;
	if (a->plan.tank.reading_count)
		a->answer.profile = check.profile;
	a->held = ts_arena_array(s->arena, check.count, sizeof *a->held);
	if (!a->held)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < check.count; i++) {
		if (holds_back(&check.rulings[i]))
			a->held[a->held_count++] = check.rulings[i];
		a->filter_young |= check.rulings[i].rule == TS_RULE_FILTER ||
				   check.rulings[i].rule == TS_RULE_FILTER_UNKNOWN;
	}
	return TS_OK;
}

static enum ts_status open_answer(struct session *s, struct propose_answer *a)
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
	if (s->practice)
		a->practice = *s->practice;
	else
		ts_practice_defaults(&a->practice);
	ts_profile_make(&a->answer.water, &a->keeping, &a->practice, s->today, &a->answer.profile);
	return look_at_tank(s, a);
}

/* Nitrate and KH of what is poured in, and the nitrate of the tank now. */
static void wish_water(struct propose_answer *a)
{
	const struct ts_water *poured =
		a->plan.change_water.reading_count ? &a->plan.change_water : &a->plan.water;
	struct ts_keeping keeping = {0};
	struct ts_profile new_water;

	ts_profile_make(poured, &keeping, &a->practice, -1, &new_water);
	a->wish.no3_new_mg_l = fmax(new_water.poisons.no3_mg_l, 0);
	a->wish.no3_now_mg_l = fmax(a->answer.profile.poisons.no3_mg_l, 0);
	if (new_water.at[TS_KH].given)
		a->wish.kh_new_dh = new_water.at[TS_KH].value;
}

static void progress(void *state, size_t nodes, int64_t points)
{
	(void)state;
	fprintf(stderr, "\rsearching: %zu lists looked at, best so far %lld ", nodes,
		(long long)points);
}

static enum ts_status make_wish(struct session *s, struct propose_answer *a)
{
	const struct options *o = s->options;
	struct ts_wish *w = &a->wish;
	enum ts_status status;

	*w = (struct ts_wish){.catalogue = s->catalogue,
		.profile = &a->answer.profile,
		.keeping = &a->keeping,
		.tank = &a->plan.tank,
		.practice = &a->practice,
		.hardy = o->hardy,
		.no3_rise_mg_l_week = o->no3_rise.value,
		.buffer_days = o->buffer.value / 24,
		.species_most = o->most_species,
		.lists = o->lists};
	wish_water(a);
	status = names(s, &o->with, &w->with, &w->with_count);
	if (!status)
		status = names(s, &o->without, &w->without, &w->without_count);
	if (!status)
		status = residents(s, a);
	return status;
}

static enum ts_status find_why(struct session *s, struct propose_answer *a)
{
	const struct ts_species *species = s->options->why ? named(s, s->options->why) : NULL;

	if (!s->options->why)
		return TS_OK;
	if (!species)
		return TS_BAD_INPUT;
	for (size_t i = 0; i < a->proposal.species_count; i++) {
		if (a->proposal.species[i].match.species == species)
			a->why = &a->proposal.species[i];
	}
	if (!ts_propose_with(&a->wish, &a->proposal, a->why, s->arena, &a->why_best))
		return TS_NO_MEMORY;
	return TS_OK;
}

static enum ts_status write_file(struct session *s, const char *path, const struct ts_text *text)
{
	if (text->failed)
		return TS_NO_MEMORY;
	output_left_over(s->system, path, s->findings);
	return output_write(s->system, path, text, s->error);
}

static enum ts_status write_model(struct session *s, const struct propose_answer *a)
{
	enum ts_status status;
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	ts_model_write_lp(&text, &a->proposal.model, a->proposal.names);
	status = write_file(s, s->options->model_out, &text);
	ts_text_drop(&text);
	return status;
}

static enum ts_status write_plan(struct session *s, const struct propose_answer *a)
{
	enum ts_status status;
	struct ts_plan plan;
	struct ts_text text;

	if (a->held_count)
		return refuse(s, TS_NO, "no plan was written, since nothing is bought now",
			"the answer says what comes first");
	if (!a->proposal.count)
		return refuse(s, TS_NO, "no plan was written", "there is no list to write");
	if (!ts_community_plan(&a->proposal.lists[0], &a->plan, &a->keeping, s->arena, &plan))
		return TS_NO_MEMORY;
	plan.name = "proposed";
	plan.water_file = plan.tank_file = plan.change_water_file = NULL;
	ts_text_open(&text, &s->arena->allocator);
	ts_records_write(&text, &ts_shape_plan, &plan, false);
	status = write_file(s, s->options->plan_out, &text);
	ts_text_drop(&text);
	return status;
}

enum ts_status command_propose(struct session *s)
{
	struct propose_answer *a = ts_arena_take(s->arena, sizeof *a);
	bool terminal = isatty(STDERR_FILENO) && !s->options->quiet;
	struct ts_search_limits limits = {.progress = terminal ? progress : NULL};
	enum ts_status status;

	if (!a)
		return TS_NO_MEMORY;
	if (s->options->argument_count)
		return refuse(s, TS_BAD_INPUT, "propose takes no names",
			"give --with SPECIES or --why SPECIES");
	status = open_answer(s, a);
	if (!status)
		status = make_wish(s, a);
	if (status)
		return status;
	a->wish.limits = &limits;
	if (!ts_propose(&a->wish, s->arena, &a->proposal))
		return TS_NO_MEMORY;
	if (terminal)
		fputs("\r\033[K", stderr);
	status = find_why(s, a);
	if (!status && s->options->model_out)
		status = write_model(s, a);
	if (status)
		return status;
	if (s->options->format == FORMAT_JSON)
		propose_json(s, a);
	else
		propose_document(s, a);
	if (s->options->plan_out)
		status = write_plan(s, a);
	if (status)
		return status;
	return a->proposal.count && !a->held_count ? TS_OK : TS_NO;
}
