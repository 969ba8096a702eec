/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the words mean is chemistry (docs/methods.md) or common practice, no source.
 */
#include "words/glossary.h"

#include <stdbool.h>
#include <stddef.h>

/* clang-format off */
const struct ts_term ts_glossary[] = {
	{{"GH", "general hardness"},
		"General hardness: how much calcium and magnesium the water holds.",
		"It decides more than the pH which animals a water suits: fish of soft rivers and "
		"of hard lakes keep salts in and water out in different ways. Drops count it in "
		"dH, strips in ppm; a softener takes it away."},
	{{"KH", "carbonate hardness"},
		"Carbonate hardness: what takes up acid, so that the pH stays where it is.",
		"Food and the filter make acid, which uses KH up; a water change brings it back. "
		"With none left the pH falls in a night. KH is no part of GH and may be the "
		"higher of the two. Laboratories call it alkalinity."},
	{{"pH"},
		"How acid (below 7) or alkaline (above 7) water is.",
		"It follows from KH and carbon dioxide, and moves by some tenths between night "
		"and day in any tank. It is a result, and nothing to turn: a steady pH does more "
		"good than a listed one."},
	{{"dH"},
		"Degrees of hardness, the unit of GH and KH here.",
		"1 dH is 17.8 mg/L of calcium carbonate. One drop of most tests is one degree. "
		"Other countries count smaller degrees, so write the unit: \"25 fH\" and \"14 "
		"dH\" are the same water."},
	{{"ppm"},
		"Parts in a million: the same as mg/L.",
		"Hardness in ppm is counted as calcium carbonate, and 17.8 ppm are 1 dH: a "
		"strip's GH 160 is GH 9. Write the unit, and it is reckoned for you."},
	{{"meq/L"},
		"The laboratory's unit of alkalinity: 1 meq/L is 2.8 dH of KH.",
		"A report that gives 3.2 meq/L (or mmol/L of acid capacity) speaks of KH 9."},
	{{"alkalinity", "acid capacity"},
		"What takes up acid: the laboratory's word for KH.",
		"It stands in reports as meq/L, as mg/L of calcium carbonate or of "
		"hydrogencarbonate. It is not the same as alkaline, which is a pH above 7."},
	{{"hydrogencarbonate", "bicarbonate"},
		"The salt of carbonic acid that most of KH is made of.",
		"61 mg/L of it are 2.8 dH of KH. Water gets it from limestone, or from a spoon of "
		"baking soda."},
	{{"hardness"},
		"Minerals in water, of two kinds that do different things: GH and KH.",
		"A report's bare \"hardness\" is mostly GH. \"Soft\" and \"hard\" mean other "
		"figures to every supplier: ask for the number and its unit."},
	{{"buffer"},
		"What takes up acid before the pH moves: mostly KH.",
		"As long as some is left, acid hardly shows. When it is used up the same amount "
		"makes the pH fall at once: so the pH seems to refuse for days and then crashes."},
	{{"pH crash"},
		"The fall of the pH when the last KH is used up.",
		"Old tanks with few water changes meet it. Filter bacteria stop in acid water and "
		"ammonia gathers. Small changes of water with KH, every day, bring it back; half "
		"a tank at once does harm."},
	{{"CO2", "carbon dioxide"},
		"A gas that animals breathe out and plants take in.",
		"Dissolved it lowers the pH. It leaves water that stands or is stirred, which is "
		"why a fresh tap sample reads another pH than the same water a day later. Above "
		"30 mg/L it takes the fish's breath."},
	{{"oxygen"},
		"The gas that fish breathe, out of the water.",
		"It comes in through a moving surface, and from plants by day. Warm water holds "
		"less: 8 mg/L at 26 C, 9 at 20 C. Below 4 many fish gasp."},
	{{"conductivity"},
		"How well water carries a current, in uS/cm: a measure of all that is dissolved.",
		"It does not say what is dissolved: table salt counts as lime does. It is good "
		"for noticing that something changed, and for mixing the same water again."},
	{{"TDS", "dissolved solids"},
		"Everything dissolved in the water, in mg/L.",
		"Pocket meters reckon it from the conductivity. It is no hardness, and does not "
		"say what is dissolved."},
	{{"calcium"},
		"A mineral of hard water, most of GH.",
		"Snails and shrimps build their shells from it, livebearers and fish of the rift "
		"lakes need much of it. 7.1 mg/L are 1 dH."},
	{{"magnesium"},
		"A mineral of hard water, the smaller part of GH.",
		"Plants need it for their green. 4.3 mg/L are 1 dH. Epsom salt brings it."},
	{{"sodium"},
		"Half of table salt; a softener and baking soda bring it.",
		"It is no part of GH. Fish of fresh water bear some of it; those of soft water "
		"little."},
	{{"ammonia"},
		"What animals give off with every breath, and what rots.",
		"It burns gills, the more so the higher the pH and the warmer the water. A mature "
		"filter takes it away: it must read nil. If it does not, change water, feed "
		"nothing, and look for the cause."},
	{{"nitrite"},
		"What a filter makes of ammonia on the way to nitrate.",
		"It keeps blood from carrying oxygen, so that fish gasp in good water. It must "
		"read nil; change water until it does. It is common in the first weeks of a tank."},
	{{"nitrate"},
		"What a mature filter leaves over in the end.",
		"It gathers from week to week until water is changed; plants eat some. Up to 50 "
		"mg/L it troubles few animals. A figure that climbs in spite of changes says: "
		"feed less, or change more."},
	{{"mature filter", "mature"},
		"A filter that has run with waste for some weeks: what lives in it takes ammonia "
		"and nitrite away.",
		"It takes four to eight weeks, fed with a little food or ammonia and no animals. "
		"Ripe means that ammonia and nitrite both read nil while nitrate grows. Washing "
		"it in tap water starts it anew: rinse it in tank water."},
	{{"cycle"},
		"The first weeks of a filter, until its bacteria take ammonia and nitrite away.",
		"Ammonia shows first, then nitrite, then nitrate. Animals wait outside until the "
		"first two read nil. Sponge or balls of an old filter shorten it to days."},
	{{"filter bacteria"},
		"What lives in a filter, and makes nitrate of ammonia.",
		"They want oxygen, some KH and a pH above 6.5. After hours without current they "
		"begin to die; in acid water they stop, and a test must say whether ammonia "
		"gathers."},
	{{"shoal"},
		"A group of one kind that stays together.",
		"Below their number its animals are shy, pale, or bite others. Two numbers stand "
		"in answers: how many there must be at least, and with how many they are at ease."},
	{{"water change"},
		"Old water out, new water of the same warmth in.",
		"It takes nitrate away and brings minerals back. The same amount at the same "
		"distance keeps a tank steady; a rare large one is a jump. New water is treated "
		"against chlorine first."},
	{{"top up", "topped up"},
		"To replace what has evaporated, which is water alone: its minerals stay behind.",
		"With tap water they pile up from month to month. Water without minerals is right "
		"for it, and a water change is another thing."},
	{{"chloramine"},
		"A disinfectant of tap water that does not leave by standing.",
		"It harms gills and the filter. A water conditioner breaks it up and leaves a "
		"little ammonia, which a mature filter takes. Ask your supplier whether it is "
		"used."},
	{{"chlorine"},
		"A disinfectant of tap water, which harms gills and the filter.",
		"It leaves water that is stirred or stands for a day or two; a water conditioner "
		"binds it at once. A smell of it at the tap is sign enough."},
	{{"water conditioner", "conditioner"},
		"A liquid that binds chlorine and chloramine in new water.",
		"It goes into the new water before that meets an animal, in the amount for the "
		"whole bucket. It changes neither GH nor KH."},
	{{"pure water", "mineral-free water", "mineral-free"},
		"Water without minerals: from reverse osmosis, distilled, or clean rain.",
		"By itself it suits nobody, and its pH means nothing. Mixed with tap water it "
		"makes softer water; it is also right for topping up."},
	{{"reverse osmosis"},
		"A device that presses water through a skin which holds minerals back.",
		"What comes out has next to no GH and KH and is mixed with tap water, or given "
		"minerals, before animals meet it. Several litres go down the drain for each."},
	{{"rain water"},
		"Water without minerals, with what lay on the roof.",
		"Clean, from a roof without metal or tar, after the first quarter of an hour, it "
		"serves as reverse osmosis water does. It is never used alone."},
	{{"softener", "softened"},
		"A device in the house that takes calcium and magnesium out and puts sodium in.",
		"KH stays, so the water looks fine, but what fish need is missing: GH reads near "
		"nil. Use a tap before it, often the one in the garden or kitchen."},
	{{"tannins", "black water"},
		"Brown acids out of leaves, wood and peat.",
		"They colour the water like tea and lower the pH where there is little KH. Fish "
		"of black water like them, and need soft water more. In water with KH 5 or more "
		"they change little."},
	{{"peat"},
		"Half rotted moss that gives off acids and colour.",
		"It takes up KH a little at a time. Where it lies in a tank, pH and KH no longer "
		"tell how much CO2 there is."},
	{{"active soil"},
		"Ground that takes minerals up and keeps water soft and sour for some months.",
		"Shrimp keepers use it. It is used up, faster in hard water, and then the values "
		"climb. While it works, pH and KH do not tell how much CO2 there is."},
	{{"salinity"},
		"How much salt there is, in g/L.",
		"Sea water has 35 g/L, fresh water less than 0.5, brackish water what lies "
		"between. A hydrometer measures it as specific gravity."},
	{{"brackish"},
		"Between fresh water and the sea.",
		"Animals from river mouths need it and fade in fresh water over months; most fish "
		"of fresh water do not bear it."},
	{{"specific gravity"},
		"How heavy water is beside pure water, which tells its salt.",
		"1.004 at 25 C is about 5 g/L of salt. A glass float (hydrometer) shows it."},
	{{"stood"},
		"Said of a sample that stood in a glass for a day before its pH was read.",
		"By then gas has come and gone, and the pH is the one the tank will run at. A "
		"fresh tap sample tells mostly how much gas it holds."},
	{{"drops", "drop test"},
		"A test counted in drops until the colour turns: one drop, one degree.",
		"It is as sure as one drop, and good enough for every question here. Stir after "
		"each drop; a doubled sample halves the doubt."},
	{{"strip"},
		"A paper with coloured fields that tells \"about how much\".",
		"It shows whether something is wrong, seldom how much. Where it says \">14\", use "
		"drops."},
	{{"settled"},
		"What a tank ends at with this routine; of animals, eight weeks of living there well.",
		"Animals that you only plan live in the settled water, which is not today's. "
		"Animals that have settled are not sent away for a figure."},
	{{"comfortable", "likes"},
		"The part of a range in which an animal does well for life.",
		"GH 14, comfortable to 10, is 4 too hard. Outside it and inside what is tolerated "
		"it lives, and often breeds less or grows old sooner."},
	{{"tolerated", "tolerates"},
		"The whole range in which an animal can live.",
		"Beyond it nobody should keep it. Near its end a healthy, settled animal is left "
		"alone; for animals still to be bought choose others."},
	{{"farm-bred"},
		"Born with a breeder, as most fish in shops are.",
		"It bears a wider range of water than one caught in the wild, and is used to dry "
		"food."},
	{{"wild-caught"},
		"Taken from its own water.",
		"It wants that water closer, is often thin or has worms, and is kept apart for "
		"four weeks. Ask the shop: few labels say it."},
	{{"quarantine"},
		"Four weeks in a tank of its own, before an animal joins others.",
		"Disease shows in that time, and new and old water can be brought together in "
		"steps. A box with an old sponge filter is enough."},
	{{"stages"},
		"A change of water made in steps of some days.",
		"Animals bear a jump of pH that comes with gas; a jump of minerals kills. So GH "
		"and KH move by little, and each step begins with a test."},
	{{"livebearer"},
		"A fish that gives birth to young that swim: guppies, platies, mollies, "
		"swordtails.",
		"They like hard water and breed without being asked. Females store sperm for "
		"months, so a shop's single female has young too."},
	{{"rift lake"},
		"One of the deep old lakes of East Africa, with hard water of a high pH.",
		"Their cichlids, mbuna among them, need KH above 6 and a pH above 7.5, and "
		"company of their own kind of temper."},
	{{"shell dweller"},
		"A small cichlid that lives and breeds in empty snail shells.",
		"Each needs shells to choose from on fine sand, and defends them. It is a fish of "
		"hard water."},
	{{"labyrinth fish"},
		"A fish that can breathe air as well: bettas, gouramis.",
		"It needs warm air above the water, so a lid, and a calm surface. Males of most "
		"do not bear each other."},
	{{"fry"},
		"Young fish that have just hatched.",
		"Nearly every fish eats them, its own too. Moss and floating plants save some."},
	{{"baking soda", "sodium bicarbonate"},
		"A kitchen salt that raises KH and nothing else.",
		"3 g in 100 L are about 1 dH of KH. It is dissolved in the new water, never in "
		"the tank, and the same amount goes into each later change."},
	{{"Epsom salt"},
		"A salt of magnesium that raises GH.",
		"4.4 g in 100 L are 1 dH of GH. It is sold by pharmacies; bath salt with scent is "
		"no such thing."},
	{{"calcium chloride"},
		"A salt of calcium that raises GH and leaves KH alone.",
		"2.6 g of it with water in its crystals, in 100 L, are 1 dH of GH. It heats as it "
		"dissolves: goggles, and little by little into much water."},
	{{"limestone", "coral sand"},
		"Stone of calcium carbonate that raises GH and KH slowly.",
		"The sourer the water, the more of it dissolves; in hard water it does nothing. "
		"It suits fish of hard water and spoils water meant to be soft."},
	{{"aragonite"},
		"A form of calcium carbonate, the stuff of coral and shells.",
		"It dissolves a little further than limestone does."},
	{{"calcite index"},
		"Whether water would dissolve lime (below 0) or leave it as scale (above 0).",
		"The kettle shows the same. For animals it decides nothing."},
	{{"phosphate"},
		"A food of plants and algae, from fish food and sometimes the tap.",
		"It harms no fish. With much light it makes algae."},
	{{"copper"},
		"A metal from new pipes and some medicines that kills shrimps and snails.",
		"A hundredth of a mg/L is too much for them. Let the tap run for two minutes, "
		"never use warm water from the boiler, and put no medicine with copper where "
		"shrimps live."},
	{{"algae"},
		"Plants without roots, on panes or free in the water.",
		"Green water takes CO2 by day, so that the pH climbs to evening and falls by "
		"night. Less light and less food mend it."},
	{{"gasping"},
		"Fish at the surface that snap for air.",
		"Oxygen is short, or the blood cannot carry it: nitrite, ammonia, chlorine. Move "
		"the surface at once, and test."},
	{{NULL}, NULL, NULL},
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
