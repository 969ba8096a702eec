/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The conditions of advice on what happened to a tank these days: untreated water, poison from
 * outside, a heater that failed, a washed filter. What was read and is worse has its own rows.
 */
#include "care/advice_work.h"

static bool happened(const struct ts_care_state *s, enum ts_happened what)
{
	return !s->empty && s->happened & 1u << what;
}

CONDITION(untreated)
{
	return happened(s, TS_HAPPENED_UNTREATED) && !ts_holds_chlorine(s, practice, f) &&
	       !ts_holds_water_changed(s, practice, f);
}

CONDITION(poison_got_in)
{
	return happened(s, TS_HAPPENED_POISONED) && !ts_holds_crashed(s, practice, f);
}

CONDITION(heater_failed)
{
	struct ts_care_figures other = *f;

	return happened(s, TS_HAPPENED_HEATER_FAILED) && !ts_holds_too_cold(s, practice, &other) &&
	       !ts_holds_too_cold_no_power(s, practice, &other);
}

CONDITION(heater_stuck)
{
	struct ts_care_figures other = *f;

	return happened(s, TS_HAPPENED_HEATER_STUCK) && !ts_holds_too_warm(s, practice, &other);
}

CONDITION(filter_washed)
{
	UNUSED;
	return happened(s, TS_HAPPENED_FILTER_WASHED);
}

CONDITION(changed_all)
{
	return happened(s, TS_HAPPENED_CHANGED) && !ts_holds_untreated(s, practice, f) &&
	       !ts_holds_chlorine(s, practice, f) && !ts_holds_water_changed(s, practice, f);
}

CONDITION(overfed)
{
	UNUSED;
	return happened(s, TS_HAPPENED_OVERFED);
}

/* Shrimps, snails and their like bear little of what cures fish, and no copper. */
CONDITION(medicine_kills)
{
	UNUSED;
	if (!happened(s, TS_HAPPENED_MEDICINE) || !(s->deaths > 0 || s->signs))
		return false;
	for (size_t i = 0; i < s->resident_count; i++) {
		if (s->residents[i].species->kind != TS_ANIMAL_FISH)
			return true;
	}
	return false;
}

CONDITION(medicine_given)
{
	return happened(s, TS_HAPPENED_MEDICINE) && !ts_holds_medicine_kills(s, practice, f);
}
