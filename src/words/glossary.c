/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the words mean is chemistry (docs/methods.md) or common practice, no source.
 */
#include "words/glossary.h"

#include <stdbool.h>
#include <stddef.h>

/* clang-format off: one row a line */
const struct ts_term ts_glossary[] = {
	{{"GH"}, "General hardness: calcium and magnesium together. It decides more than the pH "
		 "which animals a water suits."},
	{{"KH"}, "Carbonate hardness: what takes up acid, so that the pH stays where it is. "
		 "Laboratories call it alkalinity."},
	{{"pH"}, "How acid (below 7) or alkaline (above 7) water is. It follows from KH and carbon "
		 "dioxide; it is a result, and nothing to turn."},
	{{"dH"}, "Degrees of hardness. 1 dH is 17.8 mg/L of calcium carbonate, which strips call "
		 "ppm."},
	{{"ppm"}, "Parts in a million, as good as mg/L. Hardness in ppm is counted as calcium "
		  "carbonate: 17.8 ppm are 1 dH."},
	{{"alkalinity"},
		"What takes up acid: the laboratory's word for KH. 1 meq/L is 2.8 dH of KH."},
	{{"buffer"}, "What takes up acid before the pH moves: mostly KH. Without it the pH falls "
		     "suddenly."},
	{{"CO2", "carbon dioxide"},
		"A gas that animals breathe out and plants take in. Dissolved it lowers the pH, "
		"and leaves water that stands or is stirred."},
	{{"conductivity"}, "How well water carries a current, in uS/cm: how much is dissolved in "
			   "it altogether, whatever it is."},
	{{"ammonia"}, "What animals give off, and what rots. It burns gills, more so at a high pH; "
		      "a mature filter takes it away, and it must read nil."},
	{{"nitrite"}, "What a filter makes of ammonia on the way to nitrate. It takes the blood "
		      "its oxygen; it must read nil."},
	{{"nitrate"}, "What a mature filter leaves over. It grows from week to week until water is "
		      "changed."},
	{{"mature filter", "mature"}, "A filter that has run with animals for about two months: "
				      "what lives in it takes ammonia and nitrite away."},
	{{"shoal"}, "A group of one kind that stays together. Below its number its animals are "
		    "shy, or bite others."},
	{{"chloramine"}, "A disinfectant of tap water that does not leave by standing. It harms "
			 "gills; a water conditioner binds it."},
	{{"chlorine"}, "A disinfectant of tap water. It harms gills, and leaves water that is "
		       "stirred or stands for a day or two."},
	{{"pure water", "mineral-free water", "mineral-free"},
		"Water without minerals: from reverse osmosis, distilled, or clean rain. By itself "
		"it suits nobody; it is mixed with other water."},
	{{"softener", "softened"},
		"A device in the house that takes calcium and magnesium out and puts sodium in. "
		"What fish need is then missing, whatever KH says."},
	{{"tannins", "black water"}, "Brown acids out of leaves, wood and peat. They colour the "
				     "water, and lower the pH where there is little KH."},
	{{"salinity"},
		"How much salt there is, in g/L: sea water has 35, brackish water some of it."},
	{{NULL}, NULL},
};
/* clang-format on */

static char small(char letter)
{
	return letter >= 'A' && letter <= 'Z' ? (char)(letter - 'A' + 'a') : letter;
}

static bool same(const char *a, const char *b)
{
	while (*a && small(*a) == small(*b)) {
		a++;
		b++;
	}
	return small(*a) == small(*b);
}

const struct ts_term *ts_glossary_find(const char *form)
{
	for (const struct ts_term *term = ts_glossary; term->says; term++) {
		for (size_t i = 0; i < TS_TERM_FORMS_MOST && term->forms[i]; i++) {
			if (same(term->forms[i], form))
				return term;
		}
	}
	return NULL;
}
