/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The bounds of usual taps are rows of the practice table.
 */
#include "answers/thin.h"

#include "model/practice.h"

/*
 * GH of a g/L of sea salt, dH: sea water of 35.2 g/L holds 0.0103 mol of calcium and 0.0528 of
 * magnesium in a kilogram (reference composition of sea water, from memory).
 */
#define SEA_GH_DH 10.1
/* As of brines and salts for tanks that differ, share of it. */
#define SEA_DOUBT 0.2

const char ts_thin_how[] =
	"Write what you measured as flags, --GH \"14 dH\" --KH 9, or into a file, -w FILE; "
	"tapshoal keep FILE remembers your tap.";

static bool salty(const struct ts_profile *p, const struct ts_practice *practice)
{
	const struct ts_span *salt = &p->at[TS_SALINITY];

	return salt->given && salt->from != TS_FROM_ASSUMED &&
	       salt->low > practice->value[TS_P_SALT_FRESH];
}

bool ts_answer_is_thin(const struct ts_profile *p)
{
	return !p->at[TS_GH].given && !(p->unusual & TS_UNUSUAL__NOBODY_YET);
}

static void expose(struct ts_span *span, double low, double high)
{
	*span = (struct ts_span){
		true, true, (low + high) / 2, low, high, TS_FROM_ASSUMED, (double)NAN};
}

void ts_answer_usual_taps(struct ts_profile *p, const struct ts_practice *practice)
{
	const double *v = practice->value;

	expose(&p->at[TS_GH], v[TS_P_TAP_GH_LOW], v[TS_P_TAP_GH_HIGH]);
	if (!p->at[TS_KH].given)
		expose(&p->at[TS_KH], v[TS_P_TAP_KH_LOW], v[TS_P_TAP_KH_HIGH]);
}

static void put_ends(struct ts_text *text, const char *label, double low, double high)
{
	ts_text_puts(text, label, " ", NULL);
	ts_text_number_short(text, low, 1);
	ts_text_put(text, " to ");
	ts_text_number_short(text, high, 1);
}

void ts_answer_say_usual_taps(
	struct ts_text *text, const struct ts_profile *p, const struct ts_practice *practice)
{
	const double *v = practice->value;

	ts_text_put(text, "every usual tap water (");
	put_ends(text, "GH", v[TS_P_TAP_GH_LOW], v[TS_P_TAP_GH_HIGH]);
	if (!p->at[TS_KH].given)
		put_ends(text, ", KH", v[TS_P_TAP_KH_LOW], v[TS_P_TAP_KH_HIGH]);
	ts_text_put(text, ")");
}

const char *ts_answer_sea_gh(const struct ts_asking *asking, struct ts_profile *p)
{
	struct ts_span *gh = &p->at[TS_GH];
	const struct ts_span *salt = &p->at[TS_SALINITY];
	struct ts_text text;
	const char *said;

	if (gh->given || !salty(p, asking->practice))
		return NULL;
	*gh = (struct ts_span){true, false, SEA_GH_DH * salt->value,
		(1 - SEA_DOUBT) * SEA_GH_DH * salt->low, (1 + SEA_DOUBT) * SEA_GH_DH * salt->high,
		TS_FROM_ASSUMED, (double)NAN};
	ts_text_open(&text, &asking->arena->allocator);
	ts_text_put(&text, "GH was not read: ");
	ts_text_number_short(&text, salt->value, 1);
	ts_text_put(&text, " g/L of sea salt make about GH ");
	ts_text_number_short(&text, gh->value, 0);
	ts_text_put(
		&text, " by themselves, which is taken. Cooking salt makes none: test GH then.");
	said = ts_asking_keep(asking, &text);
	ts_text_drop(&text);
	return said;
}
