/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences come from words/; here is their order.
 */
#include "answers/noted.h"

#include "words/first.h"
#include "words/sentence.h"
#include "words/unusual.h"

void ts_answer_note_water(const struct ts_asking *asking, const struct ts_profile *p, unsigned told,
	struct ts_texts *list)
{
	void (*const rest[])(struct ts_text *, const struct ts_profile *) = {
		ts_say_gas, ts_say_newest, ts_say_kh_hint, ts_say_ordinary};
	struct ts_text text;

	ts_text_open(&text, &asking->arena->allocator);
	for (unsigned bit = 1; bit <= TS_POISON__ALL; bit <<= 1) {
		if (p->poisons.found & bit)
			ts_say_poison(&text, bit, &p->poisons);
		ts_asking_note(asking, list, ts_asking_keep(asking, &text));
	}
	for (unsigned bit = 1; bit <= TS_UNUSUAL__ALL; bit <<= 1) {
		if (p->unusual & bit & ~told)
			ts_say_unusual(&text, bit, p);
		ts_asking_note(asking, list, ts_asking_keep(asking, &text));
	}
	for (size_t i = 0; i < sizeof rest / sizeof *rest; i++) {
		rest[i](&text, p);
		ts_asking_note(asking, list, ts_asking_keep(asking, &text));
	}
	if (!(told & TS_TOLD_GH_BOUND))
		ts_say_gh_bound(&text, p);
	ts_asking_note(asking, list, ts_asking_keep(asking, &text));
	if (!p->at[TS_KH].given)
		ts_asking_note(asking, list,
			p->kh_assumed.given
				? "KH was not read: it is taken for a quarter of GH to all of it, "
				  "and with it the pH (--KH replaces that)."
				: "KH is missing: how steady the pH will be cannot be said.");
	if (!p->at[TS_TEMPERATURE].given)
		ts_asking_note(asking, list, ts_own_temperature_says);
	ts_text_drop(&text);
}
