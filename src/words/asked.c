/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The table of everyday questions. The first row whose words fit is taken; so the more special
 * stand first. Not here: what readings, signs and events decide (care/advice_rows.c), and what the
 * plan itself answers (answers/check_asked.c).
 */
#include "words/asked.h"

#include <string.h>

#define TANK "tank|tanks|aquarium|aquariums|fishtank|fish-tank"
#define CLEAN "clean|cleaning|wash|washing|rinse|rinsing|scrub|scrubbing|replace|replacing"
#define FILTER "filter|filters|sponge|sponges|cartridge|cartridges|media|filtration"
#define FISH "fish|fishes|animals|shrimp|shrimps|pets"

/* clang-format off */
const struct ts_care_row ts_care_rows[] = {
	/* first of all: what would harm */
	{"stones", "stone|stones|rock|rocks|shell|shells|coral|driftwood|branch|branches|beach|river|garden put|use|collect|collected|found|can|safe|add",
		"Shells, coral and limestone no, unless the fish like hard water: they dissolve. Other stones yes, scrubbed in hot water without soap.",
		"A drop of vinegar that fizzes on it means lime. No stones with metal in them, nothing sharp, nothing that can fall. Wood: dead hardwood, dried, watered for weeks. Ask whether you may take it there.", 0},
	{"soap", "soap|detergent|bleach|washing-up|cleaner|cleaners|dishwasher|disinfectant|sanitiser|vinegar " CLEAN "|use|put ?safe -algae|shrimp|pleco|eats",
		"No soap, no cleaner and no bleach near the tank: traces of them kill fish.",
		"Glass comes clean inside with a scraper or a plain new sponge and tank water, outside with a damp cloth; ornaments in hot water alone, and lime on them in vinegar, outside the tank, well rinsed.", 0},
	{"hands", "unplug|socket|electric|electricity|electrocuted|plug|plugs|shock hand|hands|water|clean|cleaning|safe -price|bill|save",
		"Unplug heater, lamp and pump before hands go into the water, and let the heater cool for a quarter of an hour first.",
		"Each cable hangs lower than its socket before it rises to it, so that no water runs in, and the socket has a residual-current device; a cracked heater or lamp is thrown away. Wash hands before, without soap left on them, and after.", 0},
	{"release", "pond|river|lake|canal|stream|wild|nature|toilet|ditch|sea release|put|set|free|let|dump|flush|bring -stone|stones|rock|rocks|wood|sand|plant|plants|water|snail|leaves;"
		"!keep|want any_more|anymore|longer fish|goldfish|them|it|him pond|river|lake|shop|away|rid",
		"Never into a pond, river or lake: it harms what lives there, is against the law in most places, and most of them die.",
		"Ask the shop, a club or another keeper to take them; many do, for nothing. A pond of a garden is only for such as its climate keeps, and where nothing gets out.", 0},
	{"return", "return|returning|rehome|rehoming|give_away|sell|take_back|take_them_back " FISH "|them|goldfish|it -snail|snails|algae|smell|babies|fry;"
		"get_rid|too_many " FISH "|goldfish -snail|snails|algae|smell|babies|fry",
		"Ask the shop first, then a club or keepers nearby: many take animals back for nothing.",
		"Say how long they are and what water they live in, and bring them in tank water. Never into nature.", 0},
	{"medicine", "medicine|medicines|medication|medications|meds|antibiotic|antibiotics precaution|precautionary|just_in_case|prevent|preventive|which|what|any|without_knowing ?ill|sick|disease|die",
		"No medicine before it is known what they have: it burdens fish, filter and shrimps, and the wrong one costs the time that counts.",
		"Test ammonia, nitrite and temperature first: most of what looks like illness is the water. Then a vet who treats fish names the illness and the dose; name what you see here, and the answer says what to do until then.", 0},
	/* bowls, presents, first steps */
	{"bowl", "!bowl|bowls|fishbowl|vase|jar give|get|buy|ok|okay|can|could|good|keep|put|present|idea|want|birthday|saw|fine|live -litre|litres|liter|liters|l|gallon|gallons|food_bowl|running|months|years",
		"No bowl: it is too small, has no filter and no steady warmth, and what lives in it lives badly.",
		"Goldfish grow longer than a hand and need 150 cm of tank or a pond, in company; a betta needs 20 L or more, heated and filtered. If it is to be a present: ask first, then the tank, running for weeks before the animal, and an adult who looks after it.", 0},
	{"gift", "!birthday|christmas|xmas|surprise|present|gift " FISH "|" TANK "|goldfish|guppies|betta give|get|buy|surprise|present|gift|want|idea -ate|fed",
		"Ask first: an animal is no surprise, and somebody has to want it every day for years.",
		"Give the tank or a voucher; whoever gets it runs the filter in for 4 to 8 weeks and then chooses the animals. A child needs an adult who really looks after it.", 0},
	{"everything-out", "everything|all|fish|animals|plants|them take|taking|remove|empty|emptying out|clean|cleaning|wash -shop|home " CLEAN "|empty -dead",
		"No: leave fish, plants and gravel in, and never wash the filter under the tap: its sponge is rinsed in a bucket of tank water.",
		"Chlorine, heat and emptying kill what cleans the water, and frighten the fish. Every week change a quarter of the water, and draw dirt from the ground with the hose as you do; the filter only when its flow gets weak.", TS_CARE_QUARTER},
	{"filter-night", FILTER "|pump can|should|may|must|do_i|ok|okay|is_it|better|need turn|turning|switch|switching|off|stop|unplug|run|running night|nights|sleep|noise|noisy|loud|save|bill -since|was|went|yesterday|is_off|hours",
		"No: the filter runs day and night. Without flow what cleans the water dies within hours, and at night fish need the oxygen most.",
		"Noise is mostly air in the pump or a loose lid: tilt it, clean the wheel, put something soft under it.", 0},
	{"filter-clean", FILTER " " CLEAN "|change|changing -how_long|new_tank|start",
		"Rinse the filter's sponge in a bucket of tank water, only when the flow gets weak; never under the tap, never in hot water.",
		"What cleans the water lives in it, and chlorine and heat kill it. Never all of it at once: of two sponges one, the other two weeks later; a cartridge is rinsed and used until it falls apart, and a new one runs beside the old one for a month. Leave the fish, plants and gravel in, and do not change a lot of water on the same day.", 0},
	{"first-clean", "how|properly|often|best " CLEAN " " TANK "|bowl|it -which|eats|eat|snail|snails|shrimp|pleco",
		"A quarter of the water each week, dirt drawn from the ground with the hose, the glass wiped with a plain sponge: that is all.",
		"Fish, plants and gravel stay in. The filter only when its flow gets weak, its sponge rinsed in tank water. No soap.", TS_CARE_QUARTER},
	{"gravel", "gravel|sand|substrate|bottom|ground|floor " CLEAN "|vacuum|hoover|siphon|dirty|poo|waste -or_sand|or_gravel",
		"With a siphon, while you change water: hold it in the gravel until the water in it runs clear, a third of the ground each week.",
		"Over sand hold it a finger above; around plants' roots leave the ground alone. Never take gravel out to wash it.", TS_CARE_QUARTER},
	/* water */
	{"conditioner", "conditioner|dechlorinator|dechlor|chlorine|chloramine need|necessary|really|have|hurt|hurts|harm|kill|kills|do|does|stand|standing|evaporate|overnight|without -forgot|forget|died|mg",
		"Yes, use a conditioner against chlorine for every bucket of tap water: it is safe in minutes, and chlorine burns gills.",
		"Chlorine alone leaves water that stands open for a day, sooner with an air stone; chloramine does not, so ask your supplier which it is. Where the supplier adds neither, none is needed. Dose for the new water; for the whole tank if it is filled from a hose.", 0},
	{"stand-water", "stand|standing|sit|age|aged|rest|overnight|24 water|tap|bucket -medicine|died",
		"Standing takes chlorine out in about a day, chloramine not at all: a conditioner does both at once.",
		"Let it come to the tank's warmth before it goes in.", 0},
	{"change-water", "water|waterchange change|changing|changes|waterchange how|way|properly|just|without|straight|directly|tap|start -often|much|many|all_the|long_does|hardness|gh|kh|ph|colour|color|temperature|softer|medicine",
		"A quarter each week: siphon it from the ground, and pour in tap water of the same warmth, treated against chlorine, slowly.",
		"Fish stay in. Unplug the heater first; feel with the hand, or better a thermometer, that the new water is within 2 C. A bucket that has seen no soap. Plug in again, and see that the filter runs.", TS_CARE_QUARTER},
	{"rain", "rain|rainwater|distilled|osmosis|ro use|good|ok|okay|safe|better|instead|can|fill -mix|mixing|mixed|remineralise|remineralize|minerals|much|ratio|percent|part|gh|kh",
		"Never by itself: it has no minerals, so nothing holds its pH, and no fish does well in it. Mixed with tap water it softens.",
		"How much of each makes which water: tapshoal mix. Rain only from a clean roof, not the first of it, not through copper or zinc gutters.", 0},
	{"bottled", "bottled|bottle|mineral|spring water fish|use|better|good|tank|ok|safe|can -bottle_filter",
		"Mostly no better than your tap, and dear to go on with: the tap's minerals are what the fish get used to.",
		"If the tap cannot be used, the label says what it is: calcium, magnesium, hydrogencarbonate; read it with tapshoal water. Sparkling water never.", 0},
	{"peat", "peat|almond|catappa|leaves|driftwood|wood|alder|cones lower|ph|soft|soften|acidic|down|put|add|drop|good|use -brown|yellow|colour|color|tea|stain|stained",
		"Leaves and wood do good for shelter and food; do not chase the pH with them: KH holds it, and with much KH they change nothing.",
		"Test KH first. Under KH 3 a lot of peat can take the pH down suddenly; then few, and test each week. Softer water is made with part rain or reverse-osmosis water; tapshoal remake has the recipe.", 0},
	{"best-ph", "perfect|ideal|right|best|correct|optimal ph -raise|lower|my|reads|test|is_too",
		"There is none: most fish live well anywhere from 6.5 to 8, and a steady pH is worth more than a number.",
		"Test GH and KH, choose fish that suit them, and leave the pH alone. tapshoal rank says who.", 0},
	{"test-what", "test|tests|testing|measure|strip|strips|kit what|which|how_often|need|buy|should|often -gh|kh|ammonia|nitrite|says|reads|reading|sick|fish_are",
		"GH and KH of your tap once, with drops: they say who can live there. In a new tank ammonia and nitrite twice a week.",
		"A tank that has run for months: nitrate and KH once a month, and everything when a fish looks unwell. Drops tell more than strips. pH is a result; by itself it decides nothing.", 0},
	/* feeding */
	{"feed-bread", "bread|biscuit|biscuits|crisps|ham|meat|beef|cheese|rice feed|give|eat",
		"No: bread and the like swell, rot and make fat; fish cannot digest it.",
		"Flakes or granules for their kind, now and then frozen small food, for plant eaters a slice of blanched courgette or pea, and what is left out again after some hours.", 0},
	{"feed-away", "feed|feeds|feeding|feeder|food holiday|holidays|vacation|away|weekend|trip|travel|go_on",
		"Grown, healthy fish go a week without food, and better so than fed by somebody who means too well. No feeding block.",
		"For two weeks: small portions laid out in a pill box, every second or third day, the rest hidden; or a feeder tried out the week before. Change water two days before you go, and nothing new in the last two weeks. Young fish need somebody each day. tapshoal what-if holiday counts it out.", 0},
	{"feed", "feed|feeding|food|fed|flakes how|much|often|many|times|amount|enough|too_much|overfeed -stopped|not_eating|away|without|live",
		"Once a day, or twice in small portions, what is eaten in a minute or two; what lies there longer was too much.",
		"One day a week nothing: it does grown fish good. Bottom dwellers get their own sinking food, after lights out; young fish little and often. Most tanks suffer from food, hardly any from hunger.", 0},
	/* light, algae, look of the water */
	{"light", "light|lights|lamp|lighting hour|hours|long|night|nights|on|off|day|need|dark|leave -snow|algae|green",
		"6 to 8 hours a day, by a timer, and dark at night: fish need the night to rest.",
		"Longer light grows algae and no happier fish. With living plants 8, more only if nothing green grows on the glass. Room light on before the tank's, so that nobody is frightened.", 0},
	{"algae-eater", "algae|algea eats|eat|eater|eaters|fish|snail|shrimp|shrimps|pleco|cleaner|cleaning -glass|pregnant|pleco|is_a|good",
		"No animal cures algae: less light and less food do. 6 to 8 hours of light, feed less, a water change every week.",
		"Take off by hand what you can reach. Nerite snails or a group of Amano shrimps help where water, company and size suit them; a common pleco grows too large. Ask tapshoal why with the animal and your water.", 0},
	{"algae", "algae|algea|alge|brown_film|diatoms|beard_algae how|rid|remove|against|fight|why|stop|prevent|what -wafer|wafers|flakes|pellets|fed|green_water",
		"It harms no fish: 6 to 8 hours of light and no more, feed less, change water every week, take off what you reach, and be patient.",
		"No sun on the tank, more quick plants, test nitrate. Brown in a new tank goes by itself in weeks; black tufts: cut off leaves, more even flow and fewer nutrients. No poison against algae: it harms shrimps, plants and fish.", 0},
	{"smell", "!stink|stinks|stinky|stinking|odour|odor|smelly -plastic|burning|chlorine|bleach;"
		"smell|smells why|rid|stop|against -good|plastic|burning|chlorine|bleach|food",
		"Look for something dead, old food and a filter that stands; take it out, and change a third of the water. A healthy tank smells of earth at most.",
		"Test ammonia and nitrite, feed half for a week, rinse the filter's sponge in tank water. Bad eggs from the ground: draw it off a little at each change, and do not stir it up.", TS_CARE_QUARTER},
	{"worms", "!worm|worms|planaria|hydra|threads|wriggly|wriggling|squiggly|swimming_dots|tiny_bugs|copepods glass|tiny|white|tank|water|small|substrate|gravel -feed|frozen|blood|earth|poo|anus|vent|belly|hanging|thin_fish|food",
		"Thin white worms on the glass harm nobody: they live on what is left over. Feed less, draw dirt from the ground, and they go.",
		"Flat ones with a head like an arrow, and small stalks with arms, come the same way; they can take shrimp young. No poison. Worms that hang out of a fish are another matter: a vet.", 0},
	/* warmth and technical things */
	{"heater-night", "heater|heating can|should|may|must|do_i|ok|okay|is_it|better turn|turning|switch|off|unplug night|save|power|bill|summer|money|energy -since|was|went|is_off|broke|broken",
		"Leave it plugged in: it heats only when it is needed, and the same warmth day and night is what fish need.",
		"A lid and a mat behind the glass save most. In summer it stays off by itself. Unplug it only while you change water.", 0},
	{"heater-watts", "heater|heating watt|watts|w|size|strong|big|powerful|which",
		"About 1 W for each litre in a cool room, half of that in a warm one.",
		"A thermometer on the other side of the tank says whether it works; two small ones are safer than one large one. Unplug it before hands go in and before the water sinks below it.", TS_CARE_WATTS},
	{"heater", "heater|heating|heated|heat need|necessary|without|have|required|put|use -broke|broken|stuck|failed|off|wave|hot",
		"It depends on the fish: most tropical ones need one where the room gets colder than 23 C at night, goldfish and others of cool water none.",
		"A thermometer in the tank for a week shows what the room gives. About 1 W for each litre; unplug it before hands go in.", TS_CARE_WARMTH | TS_CARE_WATTS},
	{"cooling", "heatwave|heat-wave|heat_wave|chiller tank|water|aquarium|keep|fish|cool|do|what;"
		"hot|summer|warm|overheat|overheating|heat cool|cooler|cooling|cooled|fan|ice|cool_down|bring_down|get_down " TANK "|water -heater|filter|tap;"
		"cool|cooler|cool_down " TANK "|water keep|get|make|how -heater|filter|temperature;"
		"summer|weather hot|warm|heats|warmer " TANK "|water -heater|filter",
		"A fan across the open surface takes 2 to 4 C off; keep the sun out, lights off, lid up a hand's breadth with a net over it.",
		"Warm water holds little oxygen: air on, feed less. Top up what evaporates with pure water. Ice only in closed bottles, slowly: no more than 2 C a day.", 0},
	{"power-cut", "power_cut|power_cuts|power_outage|blackout|outage prepare|prepared|if|would|happens|in_case -was|had|since|hour|hours|yesterday|today|night|now|off",
		"Ready before it comes: an air pump on batteries. Without power, no food, and leave the lid closed with a blanket round the tank.",
		"Two hours harm nobody. Then air, or scoop water and pour it back from a height, every half hour; a filter that stood for more than four hours is rinsed in tank water before it runs again. tapshoal what-if power-cut counts the hours.", 0},
	{"air-pump", "air|bubbles|bubbler|airstone|air-stone|oxygen need|necessary|put|use|have|without -gasp|gasping|mg",
		"Not if the filter moves the surface: the moving surface takes up the oxygen, bubbles only help to move it.",
		"Worth having for hot days, medicine, power cuts on batteries, and a tank with many fish. If they hang at the top and breathe fast: air on now, and test ammonia and nitrite.", 0},
	{"where", "where|place|window|windowsill|radiator|sunlight|sunny|balcony tank|aquarium|stand|put_it|next -buy|shop|wild|live|swim|swims|come|from",
		"Away from window sun, radiators and doors, near a socket and a tap, on something level that bears it: a full tank weighs about 1.2 kg for each litre.",
		"Sun means algae and heat. A tank for a floor of an old house, from some 300 L: ask somebody who knows about its load.", 0},
	{"plants", "plant|plants plastic|fake|artificial|real|silk",
		"Living ones: they take up ammonia and nitrate, give shelter, and keep algae short. Start with hardy ones that grow in any water.",
		"Plants for aquaria only, rinsed, a week apart in a bucket if shrimps live in the tank (some are sprayed). Plastic harms nobody if it has no sharp edge and no paint that comes off; fins tear on it. Silk is softer.", 0},
	{"sand", "sand|gravel|substrate|bottom|soil|ground which|better|best|or|what|need|use|choose -clean|vacuum",
		"Fine, round sand for all that dig or have feelers (corys, loaches, goldfish); for the others round gravel of 1 to 3 mm does as well.",
		"Rinse it in a bucket until the water runs clear. Nothing sharp, nothing dyed, no crushed coral; active soil lowers KH and is for plants and shrimps of soft water.", 0},
	/* beginning */
	{"ammonia-source", "ammonia source|cycle|cycling|start|get|kind|household|use -reads|high|fish_gasp|test",
		"A pinch of fish food every day is the simplest; it rots to ammonia, and nothing is measured out.",
		"Or pure ammonia solution without scent or soap, to 1 or 2 mg/L, with gloves and open windows, away from bleach and children. Sponge from a healthy tank makes it quicker. Test ammonia and nitrite: both nil a day after feeding, for a week, and it is ready.", 0},
	{"cycle", "cycle|cycling|cycled how|mean|what|need|fishless -not|reads|died|dead|ammonia|nitrite;"
		"same_day|straight_away|right_away|first_day|immediately can|could|may|should|shall fish|animals|them put|add|buy|get new|tank|buy|setup -died|dead|sick;"
		"how_long|when|wait|waiting fish|animals new|first|before|put|add|until|ready|start " TANK "|filter -acclimat*|bag|live|grow|quarantine|eat",
		"Not yet: the filter runs first, without animals, 4 to 8 weeks, until ammonia and nitrite both read nil a day after it was fed, for a week.",
		"Feed it a pinch of fish food every day and test twice a week. A sponge from a healthy running tank shortens it. Plants may go in on the first day. Then a third of the animals, a test, 14 days, and the next third.", 0},
	{"thirds", "all_the|all_my|them_all|everything at_once|one_go|same_time|slowly|gradually add|put|buy|get|stock -medicine|water|filter",
		"In thirds, 14 days apart, with a test of ammonia and nitrite before each: the filter grows with its load.",
		"A shoal small enough for one third comes whole, the shy first and who claims a place last. Before the first, the filter has to be run in.", 0},
	{"quarantine", "!quarantine|quarantining|isolate|isolation fish|need|new|tank|how|long|shrimp -sick",
		"Four weeks in a tank of their own, with a filter that has run elsewhere: most illness shows in that time.",
		"A plain box of 40 L does: heater, shelter, lid, its own net. Change water there often, no medicine without a sign. Where you have no other fish, the new tank is the quarantine.", 0},
	{"per-litre", "litre|liter|litres|liters|gallon|inch|cm|rule fish|many per|rule|each|inch|for_every -water_change",
		"No rule by length or litres holds: a shoal needs length to swim, a goldfish many times the water of a tetra, a betta its own place.",
		"Name them: tapshoal check \"10 neon tetra\" --size 60x30x35 --GH 8 says whether it fits, tapshoal propose what would.", 0},
	{"first-tank", "size|big|large|small|litres first|beginner|beginners|start|starter " TANK,
		"60 to 110 L, 60 to 80 cm long: more water forgives more, and more kinds fit. Under 50 L is for people who know how.",
		"Test the tap's GH first, then choose fish, then the tank that they need.", 0},
	/* the animals */
	{"age", "how_old|lifespan|life-span|life_expectancy|how_many_years get|become|grow|live|do|can|is|of|for|be -tank|filter|kid|daughter|son;"
		"how_long live|lives -without|food|filter|heater|out_of|bag|power|water",
		"It depends on the kind: small tetras and livebearers 2 to 5 years, corys and angelfish 10, goldfish 20 and more.",
		"Warmer water than they like makes life shorter. Each record says it: tapshoal show with the name.", TS_CARE_YEARS},
	{"alone", "lonely|all_alone|cruel|friend|friends|company|companion|mate|by_itself|by_himself|by_herself fish|goldfish|it|he|she|betta|need|needs|get|alone|my|one -die|dead|holiday|snail",
		"It depends on the kind: shoal fish and goldfish need their own kind, a betta wants nobody of its own.",
		"Another kind is no company. Before one more: is the tank large enough for all of them, grown?", TS_CARE_COMPANY},
	{"pregnant", "!pregnant|gravid|gives_birth|giving_birth|give_birth|birth|babies|fry|pregnancy -sponge_filter|too_many|everywhere|stop|prevent|get_rid",
		"Leave her where she is: thick plants, floating ones too, hide the young. No breeding box, which frightens her.",
		"She bears every four to six weeks, also without a male. Who hides well grows up; the others are eaten, which keeps it in bounds. Finely ground food several times a day for young that you want, and a plan for where they go.", 0},
	{"eggs", "!egg|eggs|spawn|spawned|spawning laid|lay|lays|laying|what|do|glass|plant|leaf|found -smell|rotten|feed|snail|bad_eggs",
		"Nothing has to be done: that they spawn means they feel well. The parents or the others mostly eat them, and that is nature.",
		"Cichlids guard theirs and bite: leave them room. If you want young, the eggs move to a small mature tank of their own with tank water; white, furry ones are dead. Jelly on the glass is from snails.", 0},
	{"snail-eggs", "!snail|snails eggs|egg|laid",
		"Jelly lumps on glass and plants are eggs of small snails: wipe off what you do not want; they harm nobody.",
		"Much of them means much food: feed less. Hard white dots are nerites', which hatch in no fresh water.", 0},
	{"dead", "+dead|died|dies " FISH "|guppy|tetra|betta|goldfish|one|them find|found|floating|one|what|do|how",
		"Take the dead one out at once, with a net: it fouls the water. Into the household's waste; never into nature or the toilet.",
		"Then test ammonia and nitrite, count the others and look at them closely. One old fish is no alarm; the second within weeks is.", 0},
	{"jump", "jump|jumps|jumping|lid|cover|jumped_out need|out|do|does|without|why|prevent -died|dead|floor",
		"Yes, a lid, with every gap closed: nearly all fish jump once, above all hatchets, killies, bettas, loaches and newcomers.",
		"It keeps warmth in too. Many that jump at once: test ammonia, nitrite and pH now, something drives them out.", 0},
	{"window-fish", "swim|swims|swimming|pacing glass|reflection up|down -gasp|dead|nitrite|ammonia|red",
		"Up and down the glass is mostly unrest: a new tank, its own image, too little room or company, or the water: test ammonia and nitrite first.",
		"Both nil: lights dimmer, a dark sheet behind the tank, more plants. It passes in days; if not, ask with the kind, number and size of the tank.", 0},
	{"hiding", "hide|hides|hiding|shy|hidden new|normal|why|all|day|always|come_out|ok|week -gasp|dead|clamped|spots|sick|eat|eating|clamp",
		"Newcomers hide for a week or two: dim light, plants and shelter, quiet, and enough of their own kind; more shelter brings them out.",
		"Test ammonia and nitrite once: both must read nil. Many are active at night only. If it also breathes fast, clamps its fins or has spots, say so here.", 0},
};
/* clang-format on */
const size_t ts_care_row_count = sizeof ts_care_rows / sizeof *ts_care_rows;

const struct ts_care_row *ts_care_row(const char *id)
{
	size_t len = strcspn(id, " ");

	for (size_t i = 0; i < ts_care_row_count; i++) {
		if (strlen(ts_care_rows[i].id) == len && memcmp(ts_care_rows[i].id, id, len) == 0)
			return &ts_care_rows[i];
	}
	return NULL;
}
