/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which rows of the table hold, and in which order they are said: the cause that was read before
 * what is asked about the signs, nothing that reassures behind trouble. A value that is not known
 * never makes a condition of danger hold, but keeps the rows that reassure from holding.
 */
#include "care/advice_work.h"

#include "chem/ammonia.h"

const char *const ts_outcome_words[TS_OUTCOME__COUNT + 1] = {"ask", "make-safe", "test-and-vet",
	"mature-filter", "steady-the-water", "change-stock-first", "leave-alone"};
const char *const ts_urgency_words[TS_URGENCY__COUNT + 1] = {"now", "this week", "at leisure"};

void ts_care_state_open(struct ts_care_state *ret)
{
	double no = (double)NAN;

	*ret = (struct ts_care_state){.ph = no,
		.gh_dh = no,
		.kh_dh = no,
		.temp_c = no,
		.ec_us_cm = no,
		.no3_mg_l = no,
		.tan_mg_l = no,
		.no2_mg_l = no,
		.cl_mg_l = no,
		.chlorine_mg_l = no,
		.co2_mg_l = no,
		.co2_low_mg_l = no,
		.co2_high_mg_l = no,
		.oxygen_mg_l = no,
		.change_gh_dh = no,
		.supply_before_gh_dh = no,
		.change_kh_dh = no,
		.change_ec_us_cm = no,
		.change_no3_mg_l = no,
		.change_chlorine_mg_l = no,
		.change_copper_mg_l = no,
		.change_days = no,
		.change_percent_week = no,
		.evaporation_percent_week = no,
		.newcomer_days = no,
		.buffer_days = no,
		.ph_trend = no,
		.ph_swing_low = no,
		.ph_swing_high = no,
		.lived_days = no,
		.reading_age_days = no,
		.filter_stopped_h = no,
		.ill_days = no,
		.ill = -1,
		.away_days = no,
		.copper_mg_l = no,
		.copper_low_mg_l = no,
		.deaths = no};
}

double ts_care_nh3_mg_l(double tan_mg_l, double ph, double temp_c)
{
	double fraction;

	if (isnan(tan_mg_l) || ts_chem_nh3_fraction(ph, temp_c, &fraction) != TS_OK)
		return (double)NAN;
	return tan_mg_l * fraction;
}

static bool is_journey(const struct ts_advice_row *row)
{
	return strncmp(row->id, "away", 4) == 0;
}

/* What is seen of the water was asked about. */
static bool is_seen(const struct ts_advice_row *row)
{
	return strncmp(row->id, "seen.", strlen("seen.")) == 0 || strcmp(row->id, "algae") == 0;
}

/* Whether a row may stand behind the answer: no reassurance behind trouble, no idle repetition. */
static bool may_follow(const struct ts_advice_row *row, const struct ts_advice *first)
{
	if (row->group == 11)
		return true;
	/* In a danger other steps would contradict its own: a crash is not to be changed away. */
	if (first->row->group == 2)
		return row->group <= 4;
	if (row->group <= 7)
		return true;
	/* One reassurance is enough, and none behind a journey, before which something is done. */
	return row->group <= 9 && first->row->group >= 5 && first->row->group < 8 &&
	       !is_journey(first->row);
}

/* Read beyond its limit, it explains that they suffer. */
static bool is_cause(const struct ts_advice_row *row, const struct ts_care_state *s)
{
	static const char *const causes[] = {"filter.reading", "old-tank", "oxygen.short",
		"apart.no3", "apart.kh", "apart.ec", "apart.softened", "apart.supply",
		"apart.blend", "nitrate.high", "buffer.gone", "buffer.gone-soft",
		"stock.temperature", "filter.stands"};

	/* Gasping is a sign itself. */
	if (row->group == 2)
		return strncmp(row->id, "now.gasping", strlen("now.gasping")) != 0 ||
		       strcmp(row->id, "now.gasping-co2") == 0 ||
		       strcmp(row->id, "now.gasping-filter") == 0;
	if ((s->acid_bed || (s->signs & TS_SIGNS_SPOTS && s->lived_long)) &&
		strncmp(row->id, "buffer.gone", strlen("buffer.gone")) == 0)
		return false;
	/* Spots that are seen are a parasite, however warm it is. */
	if (s->beside & TS_BESIDE_SPOTS && strcmp(row->id, "stock.temperature") == 0)
		return false;
	for (size_t i = 0; i < sizeof causes / sizeof *causes; i++) {
		if (strcmp(row->id, causes[i]) == 0)
			return true;
	}
	return false;
}

/* What explains the signs goes before what is asked about them. */
static void lead_with(struct ts_advice *all, size_t to, size_t from)
{
	struct ts_advice one = all[from];

	memmove(&all[to + 1], &all[to], (from - to) * sizeof *all);
	all[to] = one;
}

size_t ts_advise(const struct ts_care_state *state, const struct ts_practice *practice,
	struct ts_advice ret[TS_ADVICE_MOST])
{
	struct ts_practice own;
	struct ts_care_figures figures;
	size_t count = 0, causes = 0;

	ts_practice_defaults(&own);
	practice = practice ? practice : &own;
	ts_advice_fill_figures(state, practice, &figures);
	for (size_t i = 0; i < ts_advice_row_count && count < TS_ADVICE_MOST; i++) {
		struct ts_advice one = {&ts_advice_rows[i], figures};

		if (!one.row->holds(state, practice->value, &one.figures))
			continue;
		if (count && !may_follow(one.row, &ret[0]))
			continue;
		ret[count++] = one;
		/* What cannot wait (all at once) is never put behind what can. */
		if (ts_advice_unwell(state) && is_cause(one.row, state) &&
			one.row->urgency <= ret[causes].row->urgency)
			lead_with(ret, causes++, count - 1);
		/* Who asks about a journey, and whose tank is well, hears of that first. */
		else if (is_journey(one.row) && ret[0].row->group >= 8)
			ret[0] = ret[--count];
		else if (is_seen(one.row) && ret[0].row->group == 1)
			lead_with(ret, 0, count - 1);
	}
	return count;
}
