/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rows of words; the few figures in between come from the facts.
 */
#include "words/water.h"

#include <math.h>

#include "chem/ions.h"
#include "chem/nitrogen.h"
#include "model/practice.h"
#include "water/first.h"
#include "words/first.h"
#include "words/sentence.h"

const char *const ts_why_says[] = {
	[TS_WHY_KNOWN] = NULL,
	[TS_WHY_WANTS_KH] = "KH is not known",
	[TS_WHY_WANTS_PH] = "pH is not known",
	[TS_WHY_WANTS_CALCIUM] = "neither calcium nor GH is known",
	[TS_WHY_NO_CALCIUM] = "there is no calcium in it",
	[TS_WHY_WANTS_HARDNESS] = "GH is not known",
	[TS_WHY_BUFFER_TOO_SMALL] = "below KH 0.5 pH and CO2 do not follow from KH",
	[TS_WHY_PHOSPHATE] = "much of the buffer is phosphate",
	[TS_WHY_PH_AGAINST_KH] = "the pH read contradicts KH",
	[TS_WHY_ACIDS] = "peat, wood or active soil hold the pH, which tells no CO2 there",
	[TS_WHY_OUT_OF_RANGE] = "outside the range of the equations (0-50 C, pH 2-12, fresh water)",
	[TS_WHY_OUT_OF_RANGE + 1] = NULL,
};

const char *const ts_next_says[TS_NEXT__COUNT] = {
	[TS_NEXT_UNSOFTENED] = "GH and KH of the unsoftened cold line.",
	[TS_NEXT_GH] = "GH with a drop kit: it decides most.",
	[TS_NEXT_GH_DROPS] =
		"GH with drops: it decides most, and this reading leaves too much open.",
	[TS_NEXT_KH] = "KH with a drop kit: it says how steady the pH will be.",
	[TS_NEXT_TANK_TEMPERATURE] = "the temperature the tank will run at (--temperature 24..26).",
	[TS_NEXT_PH] = "pH, in a glass that stood 24 h.",
	[TS_NEXT_PH_AIRED] = "pH, in a glass that stood 24 h: a fresh sample tells its gas.",
	[TS_NEXT_AGAIN] = "the value that contradicts the others, once more.",
	[TS_NEXT_AMMONIA] = "ammonia: the first sign of a filter that is not coping.",
	[TS_NEXT_NITRITE] = "nitrite: the second sign of a filter that is not coping.",
	[TS_NEXT_NITRATE] = "nitrate: wells carry it, and changing water cannot go below it.",
	[TS_NEXT_NOTHING] = "nothing more for this question; measure again when the season turns.",
};

#define FROM_THE_LINE                                                                              \
	"Let the cold tap run for two minutes, rinse the glass three times with the water, "       \
	"fill it and test at once."
#define FROM_THE_TANK                                                                              \
	"Take it from the middle of the tank, before feeding and before a water change, with a "   \
	"rinsed glass; note the hour."
#define STOOD                                                                                      \
	"Fill a wide clean glass, let it stand open for 24 h at room temperature (or bubble air "  \
	"through it for an hour), then test; note that it stood."

const char *const ts_next_sample[TS_NEXT__COUNT] = {
	[TS_NEXT_UNSOFTENED] = "Often the kitchen's or garden's cold tap bypasses the softener. "
			       "" FROM_THE_LINE,
	[TS_NEXT_GH] = FROM_THE_LINE " Count the drops until the colour no longer changes.",
	[TS_NEXT_GH_DROPS] = FROM_THE_LINE " Doubling the sample halves the step of the kit.",
	[TS_NEXT_KH] = FROM_THE_LINE " Count the drops until the colour no longer changes.",
	[TS_NEXT_TANK_TEMPERATURE] =
		"Read a thermometer in the running tank, mornings and evenings.",
	[TS_NEXT_PH] = STOOD,
	[TS_NEXT_PH_AIRED] = STOOD,
	[TS_NEXT_AGAIN] = "Test a fresh sample of the same water, and read the unit on the kit or "
			  "report again.",
	[TS_NEXT_AMMONIA] = FROM_THE_TANK,
	[TS_NEXT_NITRITE] = FROM_THE_TANK,
	[TS_NEXT_NITRATE] = FROM_THE_LINE " Say whether the kit reads nitrate or nitrate-nitrogen.",
	[TS_NEXT_NOTHING] = "Sample at the same hour, in the same way.",
};

const char *const ts_danger_words[] = {"none", "concern", "conflict", "now", NULL};

const char *ts_assumed_says(unsigned bit)
{
	switch (bit) {
	case TS_ASSUMED_TEMPERATURE:
		return "the temperature, 25 C";
	case TS_ASSUMED_GH:
		return "GH, as great as KH";
	case TS_ASSUMED_KH:
		return "KH, from the charge of the ions";
	case TS_ASSUMED_CARBON:
		return "CO2, four times that of air, as in a usual tank";
	case TS_ASSUMED_BALANCE:
		return "some sodium or chloride: the ions read do not add up";
	case TS_ASSUMED_PH_AGAINST_KH:
		return "CO2 without the pH read, which contradicts KH";
	default:
		return NULL;
	}
}

void ts_say_assumed_ions(struct ts_text *text, unsigned assumed)
{
	bool any = false;

	for (int ion = 0; ion < TS_ION__IN_SOLUTION; ion++) {
		if (!(assumed & 1u << ion))
			continue;
		ts_text_puts(text, any ? ", " : "", ts_ions[ion].symbol, NULL);
		any = true;
	}
}

/* How a poison is named, in what unit, with how many decimals, and what its limits mean. */
static const struct {
	const char *name, *unit, *remedy;
	int decimals;
	bool wanted; /* there is to be enough of it: too little is the danger */
} danger_rows[TS_DANGER_ID__COUNT] = {
	[TS_D_NH3] = {"Un-ionised ammonia", "mg/L N",
		"Do not raise pH or temperature, and feed nothing: both would make it worse.", 3,
		false},
	[TS_D_TAN] = {"Total ammonia", "mg/L N",
		"In a tank the filter is not coping; raising pH over it kills.", 2, false},
	[TS_D_NITRITE] = {"Nitrite nitrogen", "mg/L N",
		"Chloride protects. In a tank the filter is not coping.", 3, false},
	[TS_D_NITRATE] = {"Nitrate", "mg/L",
		"Water changes cannot bring a tank below what the new water holds.", 0, false},
	[TS_D_CHLORINE] = {"Chlorine", "mg/L",
		"Treat the water before any animal meets it; standing does not remove chloramine.",
		3, false},
	[TS_D_COPPER] = {"Copper, possibly", "mg/L",
		"Shrimps, crayfish, crabs and snails first; home kits cannot see so little.", 3,
		false},
	[TS_D_CO2] = {"CO2", "mg/L", "Air the water; switch injected gas off at night.", 0, false},
	[TS_D_OXYGEN] = {"Oxygen", "mg/L",
		"In a tank air on strongly, at once, and feed nothing; new water is aired before "
		"animals meet it.",
		1, true},
};

void ts_say_danger(struct ts_text *text, enum ts_danger_id id, const struct ts_water_danger *d)
{
	static const char *const from[][2] = {{"", ""}, {", a concern from ", ", a concern below "},
		{", harm from ", ", harm below "},
		{", a danger at once from ", ", a danger at once below "}};
	int decimals = danger_rows[id].decimals;
	bool wanted = danger_rows[id].wanted;

	if (d->danger == TS_DANGER_NONE)
		return;
	ts_text_puts(text, danger_rows[id].name, " ", NULL);
	ts_text_number_short(text, d->value, decimals);
	ts_text_puts(text, " ", danger_rows[id].unit, from[d->danger][wanted], NULL);
	ts_text_number_short(text, d->limit, decimals);
	ts_text_put(text, ": ");
	ts_text_number_short(text, fabs(d->value - d->limit), decimals);
	ts_text_puts(text, wanted ? " too little. " : " over. ", danger_rows[id].remedy, NULL);
}

const char *ts_drinking_says(unsigned bit)
{
	switch (bit) {
	case TS_DRINKING_NITRATE:
		return "More than 50 mg/L of nitrate in drinking water is a matter for the health "
		       "authority, and not for infants.";
	case TS_DRINKING_NITRITE:
		return "Nitrite over 0.5 mg/L in drinking water is a matter for the health "
		       "authority.";
	default:
		return "Copper over 2 mg/L in drinking water is a matter for the health authority.";
	}
}

/* Wider than a kit's doubt, dH: the least end counts. */
#define WIDE_DH 2.0

static void put_span(struct ts_text *text, const char *label, double value, double low, double high)
{
	bool wide = high - low > WIDE_DH;

	ts_text_put(text, label);
	ts_text_number_short(text, wide ? low : value, 1);
	if (!wide)
		return;
	ts_text_put(text, "..");
	ts_text_number_short(text, high, 1);
}

void ts_say_class(struct ts_text *text, const struct ts_water_facts *f)
{
	size_t start = text->len;

	if (f->unusual & TS_UNUSUAL_SOFTENED)
		ts_text_put(text, "Softened, which is not soft: ");
	else if (f->hardness_class)
		ts_text_puts(text, f->hardness_class, " by the scale of the ", f->hardness_scale,
			": ", NULL);
	ts_text_capital(text, start);
	if (isnan(f->gh_dh))
		ts_text_put(text, "GH is not known");
	else
		put_span(text, "GH ", f->gh_dh, f->gh_low_dh, f->gh_high_dh);
	if (!isnan(f->kh_dh))
		put_span(text, ", KH ", f->kh_dh, f->kh_low_dh, f->kh_high_dh);
	else
		ts_text_put(text, "; KH is not known");
}

static void put_interval(struct ts_text *text, double value, double low, double high)
{
	ts_text_number(text, value, 1);
	ts_text_put(text, " (");
	ts_text_number(text, low, 1);
	ts_text_put(text, "..");
	ts_text_number(text, high, 1);
	ts_text_put(text, ")");
}

/* KH was not read: what a tank may run at by GH alone. */
static void say_kh_next(struct ts_text *text, const struct ts_profile *p)
{
	ts_text_put(text, "Measure KH: it says what pH a tank will run at");
	if (p && p->ph_assumed.given) {
		ts_text_put(text, ", by GH alone anywhere from ");
		ts_text_number(text, p->ph_assumed.low, 1);
		ts_text_put(text, " to ");
		ts_text_number(text, p->ph_assumed.high, 1);
	}
	ts_text_put(text, ".");
}

/* What was read in the tank itself, beside what such a KH usually runs at. */
static void say_own_ph(struct ts_text *text, const struct ts_water_facts *f, bool acids)
{
	bool below = f->ph_high<f->ph_tank_low, above = f->ph_low> f->ph_tank_high;

	ts_text_put(text, "pH ");
	ts_text_number_short(text, f->ph, 2);
	ts_text_puts(text, " in the tank, ",
		below   ? "below"
		: above ? "above"
			: "as",
		" what KH ", NULL);
	ts_text_number_short(text, f->kh_dh, 1);
	ts_text_put(text, " usually runs at, ");
	put_interval(text, f->ph_tank, f->ph_tank_low, f->ph_tank_high);
	ts_text_put(text, below && acids ? ": peat, wood or active soil hold it there, and it "
					   "tells no CO2. Leave it alone."
			  : below ? ": much CO2, or an acid such as peat, wood or active soil "
				    "(--peat, --wood, --active-soil)."
			  : above ? ": light and plants, or lime."
				  : ".");
}

void ts_say_runs_at(
	struct ts_text *text, const struct ts_profile *p, const struct ts_water_facts *f)
{
	enum ts_number_from from = p ? p->at[TS_PH].from : TS_FROM_NONE;

	if (isnan(f->kh_dh)) {
		say_kh_next(text, p);
		if (p && p->ph_fresh_sample) {
			ts_text_put(text, " ");
			ts_say_fresh_ph(text, p);
		}
		return;
	}
	if (isnan(f->ph_tank))
		return;
	if (from == TS_FROM_TANK) {
		say_own_ph(text, f, p->acids);
		return;
	}
	if (from == TS_FROM_STOOD) {
		ts_text_put(text, "A tank of it runs near pH ");
		ts_text_number_short(text, f->ph, 2);
		ts_text_put(text, ", as the sample that stood; by its KH ");
		put_interval(text, f->ph_tank, f->ph_tank_low, f->ph_tank_high);
		return;
	}
	ts_text_put(text, "A tank of it runs at about pH ");
	put_interval(text, f->ph_tank, f->ph_tank_low, f->ph_tank_high);
	ts_text_put(text,
		f->unusual & TS_UNUSUAL_GASSY
			? "; what the sample reads is gas, CO2 that leaves by itself"
		: f->unusual & TS_UNUSUAL_LIMED
			? "; what the sample reads is the lime of the works, which the air takes "
			  "down"
		: p && isnan(p->ph_read) ? ""
					 : ", whatever a fresh sample reads");
}

/*
 * Kinds of animals at home in a water, by GH to so much; the last is open. Common practice, no
 * source: the list itself is rank's.
 */
static const struct {
	double to_dh;
	const char *says;
} homes[] = {
	{3, "small tetras, rasboras, discus and dwarf cichlids of soft rivers; not livebearers, "
	    "rift-lake cichlids or goldfish"},
	{7, "most tetras, rasboras, corydoras, gouramis and angelfish; not livebearers or "
	    "rift-lake cichlids"},
	{12, "most farm-bred fish of community tanks, and livebearers from GH 8 on; not wild fish "
	     "of soft rivers"},
	{18, "livebearers, rainbowfish and goldfish, rift-lake cichlids if KH is high enough, and "
	     "the farm-bred fish that bear hard water"},
	{30, "livebearers, rift-lake cichlids where KH is high too, goldfish; not fish of soft "
	     "rivers"},
};

/* A third of what is a concern, and no danger yet. */
#define MUCH_OF_TAP 3

void ts_say_own_nitrate(
	struct ts_text *text, const struct ts_water_facts *f, const struct ts_practice *practice)
{
	double concern = practice->value[TS_P_NITRATE_CONCERN];

	if (isnan(f->no3_mg_l) || f->no3_mg_l <= concern / MUCH_OF_TAP || f->no3_mg_l >= concern)
		return;
	ts_text_put(text, "Nitrate ");
	ts_text_number_short(text, f->no3_mg_l, 0);
	ts_text_put(text, " mg/L is in the water itself: no change of water takes a tank below "
			  "that, and ");
	ts_text_number_short(text, concern - f->no3_mg_l, 0);
	ts_text_put(text, " are left to ");
	ts_text_number_short(text, concern, 0);
	ts_text_put(text, ".");
}

const char *ts_home_of(const struct ts_water_facts *f)
{
	if (isnan(f->gh_dh) || (f->gh_high_dh - f->gh_low_dh > 2 * WIDE_DH &&
				       !ts_gh_confirmed(f->gh_dh, f->ca_mg_l, f->mg_mg_l)))
		return NULL;
	for (size_t i = 0; i < sizeof homes / sizeof *homes; i++) {
		if (f->gh_dh <= homes[i].to_dh)
			return homes[i].says;
	}
	return NULL;
}

/* KH that 10 mg/L of nitrate made from feed costs, dH (1 eq a mole of nitrogen; computed). */
#define KH_PER_NO3_DH (TS_MASS_CAO / TS_MASS_NO3 / 20)

void ts_say_buffer(
	struct ts_text *text, const struct ts_water_facts *f, const struct ts_practice *practice)
{
	double kh = f->kh_dh, warn = practice->value[TS_P_KH_WARN],
	       floor = practice->value[TS_P_KH_FLOOR];

	if (f->kh_high_dh - f->kh_low_dh > WIDE_DH)
		kh = f->kh_low_dh;
	ts_text_put(text, kh < f->kh_dh ? "KH at its least " : "KH ");
	ts_text_number_short(text, kh, 1);
	ts_text_put(text, ", short under ");
	ts_text_number_short(text, warn, 1);
	ts_text_put(text, ": ");
	ts_text_number_short(text, fabs(kh - warn), 1);
	ts_text_put(text, kh >= warn ? " to spare" : " too little");
	if (kh <= floor) {
		ts_text_put(text, "; the pH is no longer held (from ");
		ts_text_number_short(text, floor, 1);
		ts_text_put(text, " up it is)");
		return;
	}
	ts_text_put(text, "; it is down to ");
	ts_text_number_short(text, floor, 1);
	ts_text_put(text, " when the filter has made ");
	ts_text_number(text, (kh - floor) / KH_PER_NO3_DH, 0);
	ts_text_put(text, " mg/L of nitrate out of feed");
}

void ts_say_oxygen(
	struct ts_text *text, const struct ts_water_facts *f, const struct ts_practice *practice)
{
	double aim = practice->value[TS_P_OXYGEN_AIM], share = practice->value[TS_P_OXYGEN_SHARE];

	if (isnan(f->oxygen_mg_l))
		return;
	ts_text_number_short(text, f->oxygen_mg_l, 1);
	ts_text_put(text, " mg/L");
	if (!isnan(f->oxygen_percent)) {
		ts_text_put(text, ", ");
		ts_text_number(text, f->oxygen_percent, 0);
		ts_text_put(text, " % of what air keeps in it");
	}
	/* To the decimal that is shown. */
	if (f->oxygen_mg_l < aim - 0.05) {
		ts_text_put(text, ", wanted ");
		ts_text_number_short(text, aim, 1);
		ts_text_put(text, " mg/L: ");
		ts_text_number_short(text, aim - f->oxygen_mg_l, 1);
		ts_text_put(text, " too little");
	} else if (f->oxygen_percent < share) {
		ts_text_put(text, ", wanted ");
		ts_text_number_short(text, share, 0);
		ts_text_put(text, " %: ");
		ts_text_number(text, share - f->oxygen_percent, 0);
		ts_text_put(text, " too little");
	} else {
		ts_text_put(text, ": enough");
	}
}

void ts_say_bound_ammonia(struct ts_text *text, double chloramine_mg_l)
{
	ts_text_put(text, " Neutralised, it leaves about ");
	ts_text_number_short(text, chloramine_mg_l * TS_WEIGHT_N / (2 * TS_WEIGHT_CL), 1);
	ts_text_put(text, " mg/L of ammonia nitrogen, which a mature filter takes: test the tank "
			  "the day after.");
}

void ts_say_salt(
	struct ts_text *text, const struct ts_span *salt, const struct ts_practice *practice)
{
	double fresh = practice->value[TS_P_SALT_FRESH];
	bool wide = salt->high - salt->low > fresh;

	ts_text_number_short(text, wide ? salt->low : salt->value, 1);
	if (wide) {
		ts_text_put(text, "..");
		ts_text_number_short(text, salt->high, 1);
	}
	ts_text_put(text,
		salt->high <= fresh           ? " g/L: fresh water (less than "
		: salt->low > TS_SEA_FROM_G_L ? " g/L: sea water; fresh water holds less than "
		: salt->low > fresh           ? " g/L: brackish; fresh water holds less than "
				    : " g/L: brackish perhaps; fresh water holds less than ");
	ts_text_number_short(text, fresh, 1);
	ts_text_put(text, salt->high <= fresh ? ")" : ", the sea 35");
}
