/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Sentences about a water's marks; figures come from the profile.
 */
#include "words/unusual.h"

#include "base/number.h"
#include "chem/carbonate.h"
#include "chem/ions.h"

const char ts_bare_says[] =
	"Hardly a mineral in it, like rain or reverse-osmosis water: its pH means "
	"nothing. Bring back GH and KH before any animal meets it; the pH follows.";

/* KH so far above GH, dH, may be a softener's work. */
#define SOFTENER_DH 4.0

static const char nothing_sure[] = " Until then no verdict on it is sure.";

/* How each method is bettered: what to read with the next time, by enum ts_method. */
static const char *const again_hardness[] = {
	[TS_METHOD_UNKNOWN] = "with drops",
	[TS_METHOD_STRIP] = "with drops",
	[TS_METHOD_DROPS] = "with twice the sample, or another kit",
	[TS_METHOD_METER] = "with drops",
	[TS_METHOD_LABORATORY] = "at home with drops",
	[TS_METHOD_UTILITY_REPORT] = "at home with drops",
};
static const char *const again_ph[] = {
	[TS_METHOD_UNKNOWN] = "with another kit, or a meter set with two buffers",
	[TS_METHOD_STRIP] = "with drops, or a meter set with two buffers",
	[TS_METHOD_DROPS] = "with another kit, or a meter set with two buffers",
	[TS_METHOD_METER] = "after setting the meter with two buffers",
	[TS_METHOD_LABORATORY] = "at home, in a glass that stood a day",
	[TS_METHOD_UTILITY_REPORT] = "at home, in a glass that stood a day",
};

static const char *again(const struct ts_profile *p, enum ts_parameter parameter)
{
	return (parameter == TS_PH ? again_ph : again_hardness)[p->method[parameter]];
}

bool ts_say_again(struct ts_text *text, const struct ts_profile *p, int parameter)
{
	switch (parameter) {
	case TS_GH:
	case TS_KH:
	case TS_PH:
		ts_text_puts(text,
			parameter == TS_GH   ? "GH"
			: parameter == TS_KH ? "KH"
					     : "pH",
			" again, ", again(p, (enum ts_parameter)parameter), NULL);
		break;
	case TS_TEMPERATURE:
		ts_text_put(text, "the temperature again, on another thermometer");
		break;
	default:
		return false;
	}
	ts_text_put(text, "; it decides here.");
	return true;
}

void ts_say_tank_ph(struct ts_text *text, const struct ts_profile *p)
{
	ts_text_number(text, p->ph_tank, 1);
	ts_text_put(text, " (");
	ts_text_number(text, p->ph_tank_low, 1);
	ts_text_put(text, "..");
	ts_text_number(text, p->ph_tank_high, 1);
	ts_text_put(text, ")");
}

static void put_figure(struct ts_text *text, const char *label, double value, int decimals)
{
	ts_text_put(text, label);
	ts_text_number_short(text, value, decimals);
}

static void say_softened(struct ts_text *text)
{
	ts_text_put(text, "Softened is not soft: a softener swaps calcium and magnesium for sodium "
			  "and leaves the salt in. Use the unsoftened cold line for the tank and "
			  "measure that one; until then every verdict stays unsure.");
}

static void say_maybe_softened(struct ts_text *text, const struct ts_profile *p)
{
	put_figure(text, "GH ", p->at[TS_GH].value, 1);
	put_figure(text, " beside KH ", p->at[TS_KH].value, 1);
	ts_text_put(text,
		": is there a water softener in the house? It swaps hardness for sodium, "
		"and softened is not soft. Test the unsoftened cold line, often the "
		"kitchen's or the garden's, or have sodium read; until then every verdict "
		"stays unsure.");
}

static void say_gassy(struct ts_text *text, const struct ts_profile *p)
{
	bool fresh = p->ph_fresh_sample;

	put_figure(text, "pH ", p->ph_read, 2);
	put_figure(text, " on KH ", p->at[TS_KH].value, 1);
	ts_text_put(text, " is gas: tap water comes full of CO2, which leaves by itself and harms "
			  "nothing once it has. Air the water; a tank of it runs near ");
	ts_say_tank_ph(text, p);
	ts_text_put(text, fresh ? "."
				: ". If this sample had stood for a day, say so (--stood "
				  "\"24 h\"), and it counts as read.");
}

static void say_limed(struct ts_text *text, const struct ts_profile *p)
{
	put_figure(text, "pH ", p->ph_read, 2);
	put_figure(text, " on KH ", p->at[TS_KH].value, 1);
	ts_text_put(text, " is limed water: it takes up CO2 and comes down by itself; a tank of it "
			  "runs near ");
	ts_say_tank_ph(text, p);
	ts_text_put(text, ". No acid is needed or wanted.");
}

static void say_ph_against_kh(struct ts_text *text, const struct ts_profile *p)
{
	put_figure(text, "pH ", p->ph_read, 2);
	put_figure(text, " and KH ", p->at[TS_KH].value, 1);
	ts_text_puts(text, " cannot both be right: ",
		p->ph_read < 7 ? "it would take more CO2 than water under air can hold"
		: p->at[TS_PH].from == TS_FROM_STOOD
			? "open air takes water of such a KH down below that"
			: "so little buffer carries no such pH",
		". Read pH again ", again(p, TS_PH), ", then KH ", again(p, TS_KH), ".",
		nothing_sure, NULL);
}

static void say_gh_against_ions(struct ts_text *text, const struct ts_profile *p)
{
	const struct ts_contents *c = &p->contents;
	bool both = !isnan(c->mg_mg_l);
	double made = ts_chem_dh_from_mmol_l(
		c->ca_mg_l / TS_WEIGHT_CA + (both ? c->mg_mg_l / TS_WEIGHT_MG : 0));

	put_figure(
		text, both ? "Calcium and magnesium make GH " : "Calcium alone makes GH ", made, 1);
	put_figure(text, ", and GH was read as ", p->at[TS_GH].value, 1);
	ts_text_puts(text, ": one of them is wrong, or stands in another unit. Count GH again ",
		again(p, TS_GH), ", and look at the unit beside calcium.", nothing_sure, NULL);
}

static void say_alkalinity(struct ts_text *text, const struct ts_profile *p)
{
	put_figure(text, "KH ", p->at[TS_KH].value, 1);
	ts_text_puts(text,
		" and the alkalinity read are the same thing, and differ: one is wrong, or stands "
		"in another unit. Count KH again ",
		again(p, TS_KH), ", and look at the unit of the alkalinity.", nothing_sure, NULL);
}

static void say_conductivity(struct ts_text *text, const struct ts_profile *p)
{
	const struct ts_span *gh = &p->at[TS_GH], *kh = &p->at[TS_KH];
	bool by_gh = gh->given && (!kh->given || gh->value >= kh->value);
	const struct ts_span *by = by_gh ? gh : kh;
	double ec = p->contents.conductivity_us_cm;
	bool little = by->given && ec < 30 * by->value;

	put_figure(text, "Conductivity ", ec, 0);
	ts_text_put(text, " uS/cm ");
	if (little) {
		put_figure(text, by_gh ? "is too little for GH " : "is too little for KH ",
			by->value, 1);
		put_figure(text, ", which alone makes some ", 30 * by->value, 0);
		ts_text_puts(text,
			": read it again (uS/cm and not mS/cm, and the meter checked in a standard "
			"solution), then ",
			by_gh ? "GH " : "KH ", again(p, by_gh ? TS_GH : TS_KH), ".", NULL);
	} else {
		ts_text_put(text,
			"is not what the ions read make: something else is dissolved, or "
			"one of them is wrong or in another unit. Read conductivity again, "
			"with the meter checked in a standard solution.");
	}
	ts_text_put(text, nothing_sure);
}

static void say_salty(struct ts_text *text, const struct ts_profile *p)
{
	const struct ts_span *salt = &p->at[TS_SALINITY];
	bool sea = salt->low > 25;

	ts_text_put(text, "By what else was read it holds about ");
	ts_text_number_short(text, salt->low, 1);
	ts_text_put(text, "..");
	ts_text_number_short(text, salt->high, 1);
	ts_text_puts(text, " g/L of salt, and fresh water less than 0.5",
		sea ? ": that is sea water, outside what is answered here."
		    : ". A hydrometer or a conductivity meter settles it.",
		NULL);
}

void ts_say_unusual(struct ts_text *text, unsigned bit, const struct ts_profile *p)
{
	if (bit == TS_UNUSUAL_BARE) {
		ts_text_put(text, ts_bare_says);
	} else if (bit == TS_UNUSUAL_SOFTENED) {
		say_softened(text);
	} else if (bit == TS_UNUSUAL_KH_OVER_GH) {
		ts_text_puts(text,
			"KH lies above GH: real where the water carries sodium bicarbonate",
			p && isnan(p->contents.na_mg_l) &&
					p->at[TS_KH].value >= p->at[TS_GH].value + SOFTENER_DH
				? " (a softener in the house does the same: then test its "
				  "unsoftened line)"
				: "",
			". KH is not a part of GH.", NULL);
	} else if (bit == TS_UNUSUAL_NO_PH_FROM_KH) {
		ts_text_put(text, "Hardly any KH: pH cannot be computed from it, and it can slide. "
				  "Watch pH itself.");
	} else if (bit == TS_UNUSUAL_DEGREES) {
		ts_text_put(text, "More than 40 degrees is rare in fresh water: is the figure in "
				  "mg/L of calcium carbonate, or in French degrees?");
	} else if (bit == TS_UNUSUAL_CHARGE) {
		ts_text_puts(text,
			"The ions read do not add up: cations and anions differ by more than a "
			"tenth. One is missing, wrong, or in another unit: look at the units of "
			"the "
			"report, then count KH again",
			p ? " " : "", p ? again(p, TS_KH) : "", ".", nothing_sure, NULL);
	} else if (p) {
		bit == TS_UNUSUAL_MAYBE_SOFTENED    ? say_maybe_softened(text, p)
		: bit == TS_UNUSUAL_GASSY           ? say_gassy(text, p)
		: bit == TS_UNUSUAL_LIMED           ? say_limed(text, p)
		: bit == TS_UNUSUAL_PH_AGAINST_KH   ? say_ph_against_kh(text, p)
		: bit == TS_UNUSUAL_GH_AGAINST_IONS ? say_gh_against_ions(text, p)
		: bit == TS_UNUSUAL_ALKALINITY      ? say_alkalinity(text, p)
		: bit == TS_UNUSUAL_CONDUCTIVITY    ? say_conductivity(text, p)
		: bit == TS_UNUSUAL_SALTY           ? say_salty(text, p)
						    : (void)0;
	}
}

void ts_say_gas(struct ts_text *text, const struct ts_profile *p)
{
	if (isnan(p->ph_fresh) || fabs(p->ph_fresh - p->ph_read) < 0.05)
		return;
	put_figure(text, "The fresh sample read ", p->ph_fresh, 2);
	put_figure(text, ", the one that stood ", p->ph_read, 2);
	ts_text_puts(text, ": the stood one counts. The difference is ",
		p->ph_fresh < p->ph_read ? "gas that leaves by itself"
					 : "lime that the air's CO2 takes down",
		".", NULL);
}

/* Hardness that differs by less may be the same, dH; a supply's reading is old after so long. */
#define CHANGED_DH 2.0
#define OLD_DAYS 400.0
#define DAYS_A_YEAR 365.2425

/* "GH was 18 in 2019 and is 8 now". */
static void put_change(struct ts_text *text, const char *label, double before, double year,
	const struct ts_span *now)
{
	if (!now->given || !(fabs(before - now->value) >= CHANGED_DH))
		return;
	ts_text_puts(text, text->len ? "; " : "", label, " was ", NULL);
	ts_text_number_short(text, before, 1);
	ts_text_put(text, " in ");
	ts_text_number(text, year, 0);
	ts_text_put(text, " and is ");
	ts_text_number_short(text, now->value, 1);
	ts_text_put(text, " now");
}

void ts_say_newest(struct ts_text *text, const struct ts_profile *p)
{
	const struct ts_span *gh = &p->at[TS_GH];
	double year = floor(1970 + p->before_day / DAYS_A_YEAR);

	if (!isnan(year)) {
		put_change(text, "GH", p->gh_before_dh, year, gh);
		put_change(text, "KH", p->kh_before_dh, year, &p->at[TS_KH]);
		ts_text_put(
			text, text->len ? ": the supply has changed, and the newest counts. " : "");
	}
	if (gh->given && gh->age_days > OLD_DAYS) {
		put_figure(text, "The newest GH is ",
			floor(gh->age_days / DAYS_A_YEAR * 2 + 0.5) / 2, 1);
		ts_text_put(text, " years old, and a supply changes: read it again.");
	}
}

/* CO2 that fish bear, mg/L (the limit of a danger), and the KH up to which a hint is one. */
#define CO2_BEARABLE_MG_L 30.0
#define HINT_KH_DH 2.0

void ts_say_kh_hint(struct ts_text *text, const struct ts_profile *p)
{
	struct ts_chem_constants at = {0};
	double kh;

	if (p->at[TS_KH].given || isnan(p->ph_read) || p->at[TS_PH].from < TS_FROM_STOOD)
		return;
	ts_chem_constants_at(&at, 25);
	/* HCO3 = K1 CO2 / H, in mol/L */
	kh = ts_chem_dkh_from_meq_l(
		1000 * at.k1 * (CO2_BEARABLE_MG_L / 44010) / ts_power(10, -p->ph_read));
	if (!(kh < HINT_KH_DH))
		return;
	put_figure(text, "pH ", p->ph_read, 2);
	put_figure(
		text, " at any CO2 that fish bear means KH under ", fmax(0.5, ceil(2 * kh) / 2), 1);
	ts_text_put(text, ".");
}

static const struct {
	unsigned bits;
	const char *word, *says;
} nobody_rows[] = {
	{TS_UNUSUAL_BARE, "bare", "it has hardly a mineral in it; they come back first"},
	{TS_UNUSUAL_SOFTENED, "softened",
		"it is softened, which is not soft; the unsoftened line first"},
	{TS_UNUSUAL__CONTRADICTIONS, "readings contradict",
		"its readings contradict each other; one of them again first"},
	{TS_UNUSUAL_MAYBE_SOFTENED, "softened?", "it looks softened; that is to be known first"},
};

static size_t nobody_row(const struct ts_profile *p)
{
	size_t i = 0;

	while (i < sizeof nobody_rows / sizeof *nobody_rows && !(p->unusual & nobody_rows[i].bits))
		i++;
	return i;
}

const char *ts_nobody_yet_says(const struct ts_profile *p)
{
	return p->unusual & TS_UNUSUAL__NOBODY_YET ? nobody_rows[nobody_row(p)].says : NULL;
}

const char *ts_nobody_yet_word(const struct ts_profile *p)
{
	return p->unusual & TS_UNUSUAL__NOBODY_YET ? nobody_rows[nobody_row(p)].word : NULL;
}
