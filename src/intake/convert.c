/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The scanner of units/ does the reading: figure and unit are written out for it in its own
 * spelling. What a form of its own means (sulphate as S, nitrate as N) is decided here, and what
 * could mean two things is refused.
 */
#include "intake/convert.h"

#include <string.h>

#include "chem/conductivity.h"
#include "chem/ions.h"

#define MASS_P2O5 (2 * TS_WEIGHT_P + 5 * TS_WEIGHT_O)

/*
 * What a form is to a quantity. `spelling`: the unit that mg/L becomes; NULL refuses. `key`: the
 * figure belongs to this other key. `factor` goes on top.
 */
static const struct form_row {
	const char *key, *form;
	const char *spelling, *as_key;
	double factor;
	const char *assumed;
} forms[] = {
	{"Ca", "", "mg/l", NULL, 1, NULL},
	{"Ca", "ca", "mg/l", NULL, 1, NULL},
	{"Ca", "caco3", "mg/lcaco3", NULL, 1, "printed as calcium carbonate"},
	{"Cl", "", "mg/l", NULL, 1, NULL},
	{"Cl", "cl", "mg/l", NULL, 1, NULL},
	{"Cu", "", "mg/l", NULL, 1, NULL},
	{"Cu", "cu", "mg/l", NULL, 1, NULL},
	{"GH", "", "mg/l", NULL, 1, NULL},
	{"GH", "ca", "mg/lca", NULL, 1, "printed as calcium"},
	{"GH", "caco3", "mg/lcaco3", NULL, 1, NULL},
	{"GH", "cao", "mg/lcaco3", NULL, TS_MASS_CACO3 / TS_MASS_CAO,
		"printed as calcium oxide (CaO)"},
	{"K", "", "mg/l", NULL, 1, NULL},
	{"K", "k", "mg/l", NULL, 1, NULL},
	{"KH", "", "mg/l", NULL, 1, NULL},
	{"KH", "caco3", "mg/lcaco3", NULL, 1, NULL},
	{"KH", "cao", "mg/lcaco3", NULL, TS_MASS_CACO3 / TS_MASS_CAO,
		"printed as calcium oxide (CaO)"},
	{"KH", "hco3", "mg/lhco3", NULL, 1, NULL},
	{"Mg", "", "mg/l", NULL, 1, NULL},
	{"Mg", "caco3", "mg/lcaco3", NULL, 1, "printed as calcium carbonate"},
	{"Mg", "mg", "mg/l", NULL, 1, NULL},
	{"NO2", "n", "mg/ln", "NO2-N", 1, NULL},
	{"NO2", "no2", "mg/lno2", NULL, 1, NULL},
	{"NO3", "ion", "mg/lno3", NULL, 1,
		"taken as NO3, as drinking-water reports in that language print it"},
	{"NO3", "n", "mg/ln", "NO3-N", 1, NULL},
	{"NO3", "no3", "mg/lno3", NULL, 1, NULL},
	{"Na", "", "mg/l", NULL, 1, NULL},
	{"Na", "na", "mg/l", NULL, 1, NULL},
	{"SO4", "", "mg/l", NULL, 1, NULL},
	{"SO4", "s", "mg/l", NULL, TS_MASS_SO4 / TS_WEIGHT_S, "printed as sulphur, times 2.996"},
	{"SO4", "so4", "mg/l", NULL, 1, NULL},
	{"TDS", "", "mg/l", NULL, 1, NULL},
	{"alkalinity", "", "mg/l", NULL, 1, NULL},
	{"alkalinity", "caco3", "mg/lcaco3", NULL, 1, NULL},
	{"alkalinity", "hco3", "mg/lhco3", NULL, 1, NULL},
	{"ammonia", "n", "mg/ln", NULL, 1, NULL},
	{"ammonia", "nh3", "mg/lnh3", NULL, 1, NULL},
	{"ammonia", "nh4", "mg/lnh4", NULL, 1, NULL},
	{"chlorine", "", "mg/l", NULL, 1, NULL},
	{"oxygen", "", "mg/l", NULL, 1, NULL},
	{"oxygen", "o2", "mg/l", NULL, 1, NULL},
	{"phosphate", "p", "mg/l", NULL, TS_MASS_PO4 / TS_WEIGHT_P,
		"printed as phosphorus, times 3.066"},
	{"phosphate", "p2o5", "mg/l", NULL, 2 * TS_MASS_PO4 / MASS_P2O5,
		"printed as P2O5, times 1.338"},
	{"phosphate", "po4", "mg/l", NULL, 1, NULL},
	{"salinity", "", "mg/l", NULL, 1, NULL},
};

/* A supply has less than that of an ion, mg/L (from memory). */
#define SUPPLY_MOST 3000

static const char *const no_unit = "no unit is printed";
static const char *const find_unit = "look for the unit in the report and use a flag or the file";

static bool refuse(struct ts_converted *c, const char *why, const char *remedy)
{
	c->why = why;
	c->remedy = remedy;
	return false;
}

static const struct form_row *form_row(const char *key, const char *form)
{
	for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
		if (strcmp(forms[i].key, key) == 0 && strcmp(forms[i].form, form) == 0)
			return &forms[i];
	}
	return NULL;
}

/* Ions of a table that prints no unit are in mg/L; hardness and conductivity never are so. */
static bool bare_in_table(const struct ts_figure_context *x)
{
	static const char *const keys[] = {"Ca", "Cl", "K", "Mg", "NO2", "NO3", "Na", "SO4", "TDS",
		"ammonia", "phosphate", NULL};

	if (!x->headed)
		return false;
	for (size_t i = 0; keys[i]; i++) {
		if (strcmp(x->label->key, keys[i]) == 0)
			return true;
	}
	return x->label->form && strcmp(x->label->form, "hco3") == 0;
}

/* Adds a string behind `at` bytes; the new length. The caller has made sure that it fits. */
static size_t append(char *out, size_t at, const char *string)
{
	while (*string)
		out[at++] = *string++;
	out[at] = '\0';
	return at;
}

/* "1,204" where all decimals of the report have points: the comma separates thousands. */
static bool without_thousands(const char *figure, char decimal, char *out)
{
	char other = decimal == '.' ? ',' : '.';
	size_t n = 0;

	if (!decimal || strchr(figure, decimal))
		return false;
	for (; *figure; figure++) {
		if (*figure != other)
			out[n++] = *figure;
	}
	out[n] = '\0';
	return true;
}

/* What a supply never has: the figure is another quantity's (estimates from memory). */
static const struct {
	const char *key;
	double low, high;
} of_supplies[] = {
	{"GH", 0, 150}, {"KH", 0, 150}, {"Na", 0, 5000}, {"NO3", 0, 500}, {"TDS", 5, 20000},
	{"alkalinity", 0, 50}, {"chlorine", 0, 10},  /* chloride */
	{"conductivity", 5, 30000}, {"pH", 3.5, 12}, /* a saturation index */
};

static bool of_a_supply(const struct ts_converted *c, const struct ts_measure *m)
{
	for (size_t i = 0; i < sizeof of_supplies / sizeof *of_supplies; i++) {
		if (strcmp(c->field->key, of_supplies[i].key) == 0)
			return m->value >= of_supplies[i].low && m->value <= of_supplies[i].high;
	}
	return m->value <= SUPPLY_MOST;
}

/*
 * "1.250 uS/cm", "12.345 mg/l": three digits behind the only separator. Where one of the two
 * readings is no supply's, the other is meant; false: both could be.
 */
static bool one_reading(
	struct ts_converted *c, const char *figure, const char *spelling, char *text, size_t room)
{
	const char *sign = strpbrk(figure, ".,");
	struct ts_measure whole, part;
	struct ts_scan told;
	size_t at = sign ? (size_t)(sign - figure) : 0, len = strlen(figure);
	bool can_whole, can_part;

	if (!sign || strpbrk(sign + 1, ".,") || len + strlen(spelling) + 3 > room)
		return false;
	memcpy(text, figure, len + 1);
	append(text, append(text, append(text, at, sign + 1), " "), spelling);
	can_whole = ts_scan_measure(c->field->quantity, text, strlen(text), &whole, &told) &&
		    of_a_supply(c, &whole);
	memcpy(text, figure, len + 1); /* a fourth digit makes it a decimal beyond doubt */
	append(text, append(text, append(text, len, "0"), " "), spelling);
	can_part = ts_scan_measure(c->field->quantity, text, strlen(text), &part, &told) &&
		   of_a_supply(c, &part);
	if (can_whole == can_part)
		return false;
	c->measure = can_whole ? whole : part;
	c->assumed = can_whole ? "a thousands separator: no supply is the other reading"
			       : "a decimal sign: no supply is the other reading";
	return true;
}

static bool scan(struct ts_converted *c, const char *figure, const char *spelling)
{
	char text[TS_FIGURE_ROOM + 24], whole[TS_FIGURE_ROOM];
	struct ts_scan told;
	size_t len;

	if (strlen(figure) + strlen(spelling) + 2 > sizeof text)
		return refuse(c, "the figure is too long", "check the digits");
	len = append(text, append(text, append(text, 0, figure), " "), spelling);
	if (!ts_scan_measure(c->field->quantity, text, len, &c->measure, &told)) {
		if (told.fault == TS_SCAN_UNIT_NEEDED)
			return refuse(c, no_unit, find_unit);
		if (told.fault == TS_SCAN_UNIT_UNKNOWN)
			return refuse(c, "the unit is not one of this quantity", find_unit);
		if (told.fault == TS_SCAN_TWO_READINGS &&
			without_thousands(figure, c->decimal, whole)) {
			c->assumed = "a thousands separator: decimals of this report are "
				     "written with the other sign";
			return scan(c, whole, spelling);
		}
		if (told.fault == TS_SCAN_TWO_READINGS &&
			one_reading(c, figure, spelling, text, sizeof text))
			return true;
		if (told.fault == TS_SCAN_TWO_READINGS)
			return refuse(c,
				"three digits behind the only separator: thousands or decimals?",
				"compare with other lines and use a flag or the file");
		return refuse(c, ts_scan_says(told.fault), "check the digits in the report");
	}
	if (told.assumed && !c->assumed)
		c->assumed = told.assumed;
	return true;
}

static void times(struct ts_measure *m, double factor)
{
	m->value *= factor;
	m->low *= factor;
	m->high *= factor;
}

/* The scanner judged the figure before its factor. */
static bool possible(const struct ts_converted *c)
{
	double max = ts_quantities[c->field->quantity].max;

	if ((strcmp(c->field->key, "pH") == 0 || strcmp(c->field->key, "chlorine") == 0) &&
		!of_a_supply(c, &c->measure))
		return false;
	return c->measure.value <= max && (!isfinite(c->measure.high) || c->measure.high <= max);
}

static bool conductivity(const struct ts_figure_context *x, const char *figure, const char *unit,
	struct ts_converted *c)
{
	double at = x->reference_c;

	if (at > 0 && !(at >= 19.5 && at < 20.5) && !(at >= 24.5 && at < 25.5))
		return refuse(c, "conductivity at neither 20 nor 25 C",
			"look for the figure at 25 C in the report");
	if (at > 0)
		c->assumed = at < 22 ? "measured at 20 C: times 1.116 (ISO 7888) to 25 C" : NULL;
	if (x->by_legal && at > 0)
		c->assumed = at < 22 ? "its limit, 2500 uS/cm, is for 20 C: times 1.116 (ISO 7888)"
				     : "its limit, 2790 uS/cm, is for 25 C";
	c->rank = at > 0 && at < 22;
	if (!scan(c, figure, unit))
		return false;
	if (at > 0 && at < 22)
		times(&c->measure, TS_CHEM_EC25_PER_EC20);
	else if (at > 0 && !x->by_legal)
		c->assumed = NULL;
	return true;
}

static bool ask_form(struct ts_converted *c)
{
	static const char *const element = "as nitrogen (N) or as the ion? The report does not say";

	if (strcmp(c->field->key, "NO3") == 0)
		return refuse(c, element,
			"look for 'as N' or 'NO3'; 10 mg/L as N are 44 mg/L NO3: write NO3-N or "
			"NO3");
	if (strcmp(c->field->key, "NO2") == 0)
		return refuse(c, element, "look for 'as N' or 'NO2'; write NO2-N or NO2");
	if (strcmp(c->field->key, "ammonia") == 0)
		return refuse(c, element, "look for 'as N' or 'NH4'; write it with that unit");
	if (strcmp(c->field->key, "phosphate") == 0)
		return refuse(c, "as phosphorus (P) or as phosphate? The report does not say",
			"look for 'as P' or 'PO4'");
	return refuse(c, "this chemical form is not one of the quantity", find_unit);
}

/* "ppm": a word of reports in which nitrate is counted as nitrogen. */
static bool in_parts(const struct ts_figure_context *x)
{
	return x->unit && strncmp(x->unit->pattern, "p", 1) == 0;
}

bool ts_convert(const struct ts_figure_context *x, const char *figure, struct ts_converted *ret)
{
	const char *form = x->form ? x->form : "", *unit = x->unit ? x->unit->unit : "";
	const struct form_row *row;
	struct ts_converted c = {
		.field = ts_shape_field(&ts_shape_reading, x->label->key), .decimal = x->decimal};
	bool ok, bare = !*unit && bare_in_table(x), mass = bare || strcmp(unit, "mg/l") == 0;
	double scale = x->unit ? x->unit->scale : 1;

	if (bare)
		c.assumed = "no unit is printed in the table: taken as mg/L";
	if (c.field->quantity == TS_Q_TEMPERATURE && strcmp(unit, "fh") == 0)
		unit = "f"; /* the sign of French degrees is Fahrenheit's where it is warmth */
	if (c.field->quantity == TS_Q_PH ||
		(c.field->quantity == TS_Q_SATURATION && (!*unit || strcmp(unit, "%") == 0))) {
		ok = scan(&c, figure, "");
	} else if (!*unit && !bare) { /* bare degrees are for flags; a report must say */
		ok = refuse(&c, no_unit, find_unit);
	} else if (c.field->quantity == TS_Q_CONDUCTIVITY) {
		ok = conductivity(x, figure, unit, &c);
	} else if (mass) {
		row = in_parts(x) && strcmp(form, "ion") == 0 ? NULL
							      : form_row(x->label->key, form);
		if (row && row->as_key)
			c.field = ts_shape_field(&ts_shape_reading, row->as_key);
		if (row && row->assumed)
			c.assumed = row->assumed;
		if (x->by_legal)
			c.assumed = "the form follows from the legal limit beside it";
		ok = row ? scan(&c, figure, row->spelling) : ask_form(&c);
		scale *= row ? row->factor : 1;
	} else {
		ok = scan(&c, figure, unit);
	}
	if (ok)
		times(&c.measure, scale);
	if (ok && !possible(&c))
		ok = refuse(&c, ts_scan_says(TS_SCAN_OUTSIDE), "check the digits and the unit");
	*ret = c;
	return ok;
}
