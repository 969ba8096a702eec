/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Sentences from rows: every screen, finding and file uses these and words nothing itself.
 */
#include "words/sentence.h"

#include "words/unusual.h"
#include "words/water.h"

/* clang-format off */
const struct ts_parameter_row ts_parameter_rows[TS_PARAMETER__COUNT] = {
	[TS_GH] = {"gh", "GH", "dH", "too soft", "too hard", 1},
	[TS_KH] = {"kh", "KH", "dH", "too little buffer", "too much buffer", 1},
	[TS_PH] = {"ph", "pH", "", "too acid", "too alkaline", 1},
	[TS_TEMPERATURE] = {"temp", "temperature", "C", "too cold", "too warm", 1},
	[TS_SALINITY] = {"salinity", "salt", "g/L", "too fresh", "too salty", 1},
};
/* clang-format on */

const char *const ts_verdict_words[TS_VERDICT__COUNT + 1] = {
	"suits", "tolerates", "unsure", "excluded", NULL};

void ts_say_part_of(struct ts_text *text, double percent, double net_l)
{
	const double litres = percent * net_l / 100;

	if (litres > 0) {
		ts_text_number_short(text, litres, litres < 9.95 ? 1 : 0);
		ts_text_put(text, " L (");
	}
	ts_text_number_short(text, percent, 0);
	ts_text_put(text, litres > 0 ? " %)" : " % of the water");
}

void ts_say_range(struct ts_text *text, const struct ts_range *range, int decimals)
{
	bool low = isfinite(range->low) && range->low > 0;

	if (low && isfinite(range->high)) {
		ts_text_number_short(text, range->low, decimals);
		ts_text_put(text, "..");
		ts_text_number_short(text, range->high, decimals);
	} else if (isfinite(range->high)) {
		ts_text_put(text, "to ");
		ts_text_number_short(text, range->high, decimals);
	} else {
		ts_text_put(text, "from ");
		ts_text_number_short(text, range->low, decimals);
	}
}

/* A pH is read to the second decimal, and computed to the first. */
int ts_reading_decimals(enum ts_parameter parameter, bool read)
{
	return parameter == TS_PH && read ? 2 : ts_parameter_rows[parameter].decimals;
}

void ts_say_miss(struct ts_text *text, const struct ts_parameter_row *row,
	const struct ts_range *band, double miss)
{
	if (miss == 0) {
		ts_say_range(text, band, row->decimals);
		return;
	}
	ts_text_put(text, miss > 0 ? "to " : "from ");
	ts_text_number_short(text, miss > 0 ? band->high : band->low, row->decimals);
	ts_text_put(text, ": ");
	ts_text_number_short(text, fabs(miss), row->decimals);
	ts_text_puts(text, " ", miss > 0 ? row->above : row->below, NULL);
}

void ts_say_parameter(
	struct ts_text *text, enum ts_parameter parameter, const struct ts_parameter_fit *f)
{
	const struct ts_parameter_row *row = &ts_parameter_rows[parameter];
	bool comfort = !isnan(f->preferred.low);
	const struct ts_range *band = comfort ? &f->preferred : &f->tolerated;
	double miss = comfort ? f->uncomfortable_by : f->outside_by;
	bool warmth = parameter == TS_TEMPERATURE && f->known; /* "25 C" says what it is */

	ts_text_puts(text, warmth ? "" : row->label, warmth ? "" : " ", NULL);
	if (!f->known) {
		ts_text_put(text, isnan(f->tolerated.low) ? "has no known band" : "not given, ");
		if (!isnan(f->tolerated.low)) {
			ts_text_put(text, comfort ? "comfortable " : "tolerated ");
			ts_say_range(text, band, row->decimals);
		}
		return;
	}
	ts_text_put(text, f->perhaps ? "may be " : "");
	ts_text_number_short(text, f->reading, ts_reading_decimals(parameter, f->read));
	ts_text_puts(text, warmth ? " C" : "", comfort ? ", comfortable " : ", tolerated ", NULL);
	ts_say_miss(text, row, band, miss);
}

void ts_say_near_miss(struct ts_text *text, const struct ts_match *m)
{
	int p = ts_match_near_miss(m);
	const struct ts_parameter_fit *f = p < 0 ? NULL : &m->at[p];
	const struct ts_parameter_row *row = p < 0 ? NULL : &ts_parameter_rows[p];
	bool high = f && f->outside_by > 0;

	if (!f)
		return;
	ts_text_puts(text, "near: would be tolerated with ", row->label, " ", NULL);
	ts_text_number_short(text, high ? f->tolerated.high : f->tolerated.low, row->decimals);
	ts_text_put(text, high ? " or less" : " or more");
}

void ts_say_copper(struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	const struct ts_poisons *p = &profile->poisons;
	double sure = fmax(p->copper_low_mg_l, 0);

	if (isnan(m->copper_borne_mg_l))
		return;
	ts_text_put(text, sure >= m->copper_borne_mg_l ? "copper " : "copper may reach ");
	ts_text_number_short(text, p->copper_mg_l, 3);
	ts_text_put(text, " mg/L, borne to ");
	ts_text_number_short(text, m->copper_borne_mg_l, 3);
	ts_text_put(text, ": ");
	ts_text_number_short(text, p->copper_mg_l - m->copper_borne_mg_l, 3);
	ts_text_put(text, " too much");
}

void ts_say_little_oxygen(
	struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	double read = profile->poisons.oxygen_mg_l;

	if (isnan(m->oxygen_borne_mg_l))
		return;
	ts_text_put(text, "oxygen ");
	ts_text_number_short(text, read, 1);
	ts_text_put(text, " mg/L, borne from ");
	ts_text_number_short(text, m->oxygen_borne_mg_l, 1);
	ts_text_put(text, ": ");
	ts_text_number_short(text, m->oxygen_borne_mg_l - read, 1);
	ts_text_put(text, " too little");
}

void ts_say_much_nitrate(
	struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	double read = profile->poisons.no3_mg_l;

	if (isnan(m->nitrate_borne_mg_l))
		return;
	ts_text_put(text, "nitrate ");
	ts_text_number_short(text, read, 0);
	ts_text_put(text, " mg/L, borne to ");
	ts_text_number_short(text, m->nitrate_borne_mg_l, 0);
	ts_text_put(text, ": ");
	ts_text_number_short(text, read - m->nitrate_borne_mg_l, 0);
	ts_text_put(text, " too much");
}

/* What a poison means; the figure is put between the two halves. */
static const struct {
	unsigned bit;
	const char *name, *says;
} poison_rows[] = {
	{TS_POISON_AMMONIA, "Ammonia ",
		" mg/L N: no animal goes into this water before it reads nil. In a tank the filter "
		"is "
		"not coping; raising pH or temperature over it kills."},
	{TS_POISON_NITRITE, "Nitrite ",
		" mg/L: no animal goes into this water before it reads nil. In a tank the filter "
		"is "
		"not coping."},
	{TS_POISON_NITRATE, "Nitrate ",
		" mg/L: from a tap or well this is a drinking-water matter; ask the health "
		"authority. "
		"Water changes cannot bring a tank below it."},
	{TS_POISON_CHLORINE, "Chlorine ",
		" mg/L: treat the water against chlorine and chloramine before any animal meets "
		"it; "
		"letting it stand does not remove chloramine."},
	{TS_POISON_COPPER, "Copper up to ",
		" mg/L: a danger to shrimps, crayfish, crabs and snails, and from a little more to "
		"fish in soft water. Have it measured properly; home kits cannot see so little."},
	{TS_POISON_NO_OXYGEN, "Oxygen ",
		" mg/L is too little: air the water strongly and read it again; until then nothing "
		"is "
		"called suited that needs more. In a tank it is least before the lights go on."},
};

void ts_say_poison(struct ts_text *text, unsigned bit, const struct ts_poisons *p)
{
	const double figures[] = {p->tan_mg_l, p->no2_mg_l, p->no3_mg_l, p->chlorine_mg_l,
		p->copper_mg_l, p->oxygen_mg_l};

	for (size_t i = 0; i < sizeof poison_rows / sizeof *poison_rows; i++) {
		if (poison_rows[i].bit != bit)
			continue;
		ts_text_put(text, poison_rows[i].name);
		ts_text_number_short(text, figures[i], 3);
		ts_text_put(text, poison_rows[i].says);
	}
}

void ts_say_ordinary(struct ts_text *text, const struct ts_profile *p)
{
	if (isnan(p->ph_tank) || p->unusual & ~(unsigned)TS_UNUSUAL_KH_OVER_GH ||
		p->at[TS_PH].from == TS_FROM_TANK)
		return;
	ts_text_put(text, "A tank of this water runs at about pH ");
	ts_say_tank_ph(text, p);
	ts_text_put(text, ", whatever a fresh sample reads.");
}

const char ts_own_temperature_says[] =
	"The tank's temperature was not given: each animal is judged at its own, and those of one "
	"tank have to share one (--temperature 24..26).";

const char *ts_next_to_measure(const struct ts_profile *p)
{
	return ts_next_says[ts_profile_next(p)];
}
