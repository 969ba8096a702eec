/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The decision as rows, and the measure of a misfit. Its margins do not grow with the doubt of a
 * reading: no wider doubt makes a misfit smaller.
 */
#include "stock/misfit.h"

#include "base/number.h"

/* clang-format off */
const struct ts_misfit_row ts_misfit_rows[] = {
	{"it lives there", "it stays; the new water is mended, at a pace", 1, -1, -1, TS_WAY_KEEP},
	{"planned, and the water suits another", "take the other, not this; what goes in its place", 0, 1, -1, TS_WAY_LEAVE},
	{"planned, all of the list want a spoon of minerals more", "together with the recipe; or fish for this water", 0, 0, 1, TS_WAY_MINERALS},
	{"planned, and the water suits none of the list", "fish for this water; or other water, by the recipe", 0, 0, 0, TS_WAY_OTHER_FISH},
};
/* clang-format on */

const size_t ts_misfit_row_count = sizeof ts_misfit_rows / sizeof *ts_misfit_rows;

/* What a drop, a thermometer or a meter is doubted by; salt has no edge. Common practice. */
static const double edge_by[TS_PARAMETER__COUNT] = {
	[TS_GH] = 1, [TS_KH] = 1, [TS_PH] = 0.5, [TS_TEMPERATURE] = 1, [TS_SALINITY] = 0};
#define TENTH 0.1
/* A tenth of the band of an animal of nearly all waters is no edge any more. */
#define TENTH_MOST 2

static double beyond(double value, const struct ts_range *r)
{
	return ts_max(ts_max(r->low - value, value - r->high), 0);
}

/* What it likes, of a pH and where that is not known what it bears. */
static const struct ts_range *liked(const struct ts_parameter_fit *f, enum ts_parameter p)
{
	return p == TS_PH || isnan(f->preferred.low) ? &f->tolerated : &f->preferred;
}

static double margin_of(const struct ts_range *r, enum ts_parameter p)
{
	double tenth =
		p == TS_PH || p == TS_SALINITY ? 0 : ts_min(TENTH * (r->high - r->low), TENTH_MOST);

	return ts_max(edge_by[p], tenth);
}

enum ts_misfit ts_misfit_at(
	const struct ts_match *m, const struct ts_profile *profile, enum ts_parameter p)
{
	const struct ts_parameter_fit *f = &m->at[p];
	const struct ts_span *s = &profile->at[p];
	const struct ts_range *r = liked(f, p);
	double margin = margin_of(r, p), worst, best, value;

	if (!f->known || f->verdict == TS_SUITS)
		return TS_MISFIT_NONE;
	worst = ts_max(beyond(s->low, r), beyond(s->high, r));
	best = s->low <= r->high && s->high >= r->low
		       ? 0
		       : ts_min(beyond(s->low, r), beyond(s->high, r));
	value = s->exposure ? worst : beyond(s->value, r);
	if (value <= margin && worst <= margin + edge_by[p])
		return TS_MISFIT_EDGE;
	if (f->verdict == TS_TOLERATES)
		return TS_MISFIT_BORNE;
	/* It lives all of a warmth that comes and goes: no other thermometer mends its worse end.
	 */
	if (p == TS_TEMPERATURE && s->exposure &&
		ts_max(beyond(s->low, &f->tolerated), beyond(s->high, &f->tolerated)) > edge_by[p])
		return TS_MISFIT_OFF;
	return best <= margin || p == TS_PH ? TS_MISFIT_OPEN : TS_MISFIT_OFF;
}

/* Of two alike the one that the match calls limiting, and never a pH beside a mineral. */
static bool goes_before(const struct ts_match *m, int p, int than)
{
	return than < 0 || than == TS_PH || (p == m->limiting && p != TS_PH);
}

/* Salt of the sea, or what may be it, is told before any hardness. */
static bool too_salty(const struct ts_match *m, int p, enum ts_misfit here)
{
	return p == TS_SALINITY && here >= TS_MISFIT_OPEN && m->at[p].uncomfortable_by > 0;
}

enum ts_misfit ts_misfit_of(
	const struct ts_match *m, const struct ts_profile *profile, int *ret_parameter)
{
	enum ts_misfit worst = TS_MISFIT_NONE;

	*ret_parameter = -1;
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		enum ts_misfit here = ts_misfit_at(m, profile, (enum ts_parameter)p);

		if (here == TS_MISFIT_NONE ||
			(!too_salty(m, p, here) &&
				(here < worst ||
					(here == worst && !goes_before(m, p, *ret_parameter)))))
			continue;
		worst = here > worst ? here : worst;
		*ret_parameter = p;
	}
	if (!isnan(m->copper_borne_mg_l))
		return m->verdict == TS_EXCLUDED ? TS_MISFIT_OFF : TS_MISFIT_OPEN;
	/* Before such water is mended or read again, no figure of it counts. */
	if (profile->unusual & TS_UNUSUAL__NOBODY_YET)
		return m->verdict == TS_EXCLUDED ? TS_MISFIT_OFF : TS_MISFIT_OPEN;
	/* Unsure for what was not read. Nitrate is said of the whole tank. */
	if (m->verdict >= TS_UNSURE && worst < TS_MISFIT_OPEN && (m->gh_missing || m->kh_missing))
		return TS_MISFIT_OPEN;
	/* Whom the water excludes, if by its pH beyond all slack, is no yes in any answer. */
	if (m->verdict == TS_EXCLUDED && worst < TS_MISFIT_OPEN) {
		*ret_parameter = m->limiting;
		return TS_MISFIT_OPEN;
	}
	return worst;
}

enum ts_verdict ts_misfit_verdict(enum ts_verdict verdict, enum ts_misfit misfit)
{
	return verdict == TS_UNSURE && misfit == TS_MISFIT_OFF ? TS_EXCLUDED : verdict;
}

void ts_misfit_match(const struct ts_species *species, const struct ts_profile *profile,
	const struct ts_keeping *keeping, const struct ts_practice *practice, struct ts_match *ret)
{
	int worst;

	ts_match_species(species, profile, keeping, practice, ret);
	if (ret->verdict != TS_UNSURE ||
		ts_misfit_verdict(ret->verdict, ts_misfit_of(ret, profile, &worst)) == TS_UNSURE)
		return;
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (ts_misfit_at(ret, profile, (enum ts_parameter)p) == TS_MISFIT_OFF)
			ret->at[p].verdict = TS_EXCLUDED;
	}
	ret->verdict = TS_EXCLUDED;
	ret->limiting = worst;
}

enum ts_misfit_way ts_misfit_way(bool lives, bool others_suit, bool a_spoon)
{
	const bool is[] = {lives, others_suit, a_spoon};

	for (size_t i = 0; i < ts_misfit_row_count; i++) {
		const struct ts_misfit_row *row = &ts_misfit_rows[i];
		const int wants[] = {row->lives, row->others_suit, row->a_spoon};
		bool all = true;

		for (size_t k = 0; k < 3; k++)
			all &= wants[k] < 0 || wants[k] == is[k];
		if (all)
			return row->way;
	}
	return TS_WAY_NONE;
}
