/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The bounds of usual taps are rows of the practice table.
 */
#include "answers/thin.h"

#include "model/practice.h"
#include "water/contents.h"

const char ts_thin_how[] =
	"Write what you measured as flags, --GH \"14 dH\" --KH 9, or into a file, -w FILE; "
	"tapshoal keep FILE remembers your tap.";

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

/* "Of GH 45 the salt brings about 35". */
static const char *gh_of_salt(const struct ts_asking *asking, const struct ts_profile *p)
{
	const struct ts_span *gh = &p->at[TS_GH];
	struct ts_span salt = ts_contents_gh_of_salt(p, asking->practice->value[TS_P_SALT_FRESH]);
	struct ts_text text;
	const char *said;

	if (!gh->given || gh->exposure || !salt.given || !(gh->value > salt.value))
		return NULL;
	ts_text_open(&text, &asking->arena->allocator);
	ts_text_put(&text, "Of GH ");
	ts_text_number_short(&text, gh->value, 1);
	ts_text_put(&text, " the salt, if it is of the sea, brings about ");
	ts_text_number_short(&text, salt.value, 0);
	ts_text_put(&text, ": too much of it is judged by the rest for those that bear salt.");
	said = ts_asking_keep(asking, &text);
	ts_text_drop(&text);
	return said;
}

const char *ts_answer_sea_gh(const struct ts_asking *asking, struct ts_profile *p)
{
	struct ts_text text;
	const char *said;

	if (!ts_contents_sea_gh(p, asking->practice->value[TS_P_SALT_FRESH]))
		return gh_of_salt(asking, p);
	ts_text_open(&text, &asking->arena->allocator);
	ts_text_put(&text, "GH was not read: ");
	ts_text_number_short(&text, p->at[TS_SALINITY].value, 1);
	ts_text_put(&text, " g/L of sea salt make about GH ");
	ts_text_number_short(&text, p->at[TS_GH].value, 0);
	ts_text_put(
		&text, " by themselves, which is taken. Cooking salt makes none: test GH then.");
	said = ts_asking_keep(asking, &text);
	ts_text_drop(&text);
	return said;
}
