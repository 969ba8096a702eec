/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What people tell of a tank, as patterns: words with "|" between them are one of several, "?"
 * behind them: or none, "~": any of them up to six times, "*" is up to three words that name
 * nobody, "#" a number, "@" a time. The first that fits is taken; so the longer and graver stand
 * first.
 */
#include "typed/happened.h"

#include <stddef.h>

#define A "a|an|the|my|our|this|that|its|his|her|your"
#define BE                                                                                         \
	"is|are|was|were|has|have|had|been|be|being|got|get|seems|went|gone|keeps|just|now|only|"  \
	"already|still|suddenly|also|quite|completely|totally|probably|maybe"
#define OVER                                                                                       \
	"for|since|lasting|of|over|about|only|just|now|almost|nearly|already|around|the|last|past"
#define TANK "tank|aquarium|bowl|setup|set-up|vivarium"
#define FILTER "filter|filters|filtration"
#define MEDIA "media|cartridge|cartridges|sponge|sponges|pads|pad|floss|wool|foam"
#define POWER "power|electricity|current|electric"
#define HEATER_ "heater|thermostat|heating"
#define DEGREES_                                                                                   \
	"degrees|degree|deg|c|celsius|\xc2\xb0|\xc2\xb0"                                           \
	"c"
#define SOAP                                                                                       \
	"bleach|soap|detergent|disinfectant|shampoo|insecticide|pesticide|perfume|deodorant|"      \
	"paint|sanitizer|sanitiser|lotion|sunscreen|vinegar|alcohol|petrol|oil|varnish|glue"
#define MEDICINE                                                                                   \
	"medicine|medication|medications|meds|antibiotic|antibiotics|formalin|dewormer|"           \
	"wormer|malachite|methylene"
#define DEAD "died|dead|deaths|death|dying|perished|deceased"

/* clang-format off */
const struct ts_typed_row ts_typed_rows[] = {
	/* the water was poured in untreated */
	{"forgot|forgotten|forget|skipped|missed|didn't|did|hadn't|haven't|not|never|ran|without to|not|have|use|used|using|add|added|adding|put|putting|any|the|water|tap|out|of|a|enough~ conditioner|dechlorinator|dechlor|declorinator", TS_TYPED_FLAG, "--happened", "untreated water"},
	{"no any|water|tap~ conditioner|dechlorinator|dechlor", TS_TYPED_FLAG, "--happened", "untreated water"},
	{"untreated|unconditioned|undechlorinated|un-dechlorinated|raw|straight|plain tap|city|faucet? water|tap", TS_TYPED_FLAG, "--happened", "untreated water"},
	{"untreated|unconditioned|undechlorinated", TS_TYPED_FLAG, "--happened", "untreated water"},
	{"didn't|not|never|forgot|without to|have|been~ dechlorinate|dechlorinated|dechlorinating|condition|conditioned|conditioning|treat|treated|treating it|the|new|my|tap~ tap|water|it?", TS_TYPED_FLAG, "--happened", "untreated water"},
	{"with|used|using|use|added|have|add a|the|water|tap|always~ conditioner|dechlorinator|dechlor", TS_TYPED_NOTHING, NULL, NULL},
	{"treated|conditioned|dechlorinated|declorinated tap|the~ water", TS_TYPED_NOTHING, NULL, NULL},
	{"conditioned|dechlorinated", TS_TYPED_NOTHING, NULL, NULL},
	{"changed|replaced|emptied|swapped|drained all|of|the|my|whole|entire~ water", TS_TYPED_CHANGED_ALL, NULL, NULL},
	{"emptied|drained|refilled the|my|whole|entire~ " TANK, TS_TYPED_FLAG, "--happened", "changed 100 %"},
	{"100|90 % water? change|changed|changes", TS_TYPED_FLAG, "--happened", "changed 100 %"},
	{"full|complete|whole|total|entire|all water change", TS_TYPED_FLAG, "--happened", "changed 100 %"},
	/* a softener in the house */
	{"through|from|has|have|with|use|using|got|a|an|the|our|my? a|an|the|our|my? household|house|home|domestic|salt|water|ion|exchange|whole-house~ softener|softeners", TS_TYPED_FLAG, "--softened", ""},
	{"softened|ion-exchanged water|tap~", TS_TYPED_FLAG, "--softened", ""},
	/* the filter */
	{"forgot|forgotten|forget to? turn|switch|plug|put|start the|my|back|on|in~ filter back|on|in|again|after|the|water|change|since|for|about~ @ ago?", TS_TYPED_FLAG, "--filter", "off @"},
	{"forgot|forgotten|forget to? turn|switch|plug|put|start the|my|back|on|in~ filter back|on|in|again~", TS_TYPED_FLAG, "--filter", "stopped"},
	{"washed|cleaned|rinsed|scrubbed|cleaning|washing|rinsing " A "|all|out|old~ " FILTER "|" MEDIA " " MEDIA "|out|thoroughly~ with|in|under|using the|hot|warm|cold|running|fresh|untreated~ tap|faucet|soap water?", TS_TYPED_FLAG, "--happened", "filter washed with tap water"},
	{"replaced|changed|swapped|threw|binned|new " A "|all|out|away|old~ " FILTER "? " MEDIA, TS_TYPED_FLAG, "--happened", "filter media replaced"},
	{"cleaned|rinsed|washed|squeezed " A "|out~ " FILTER "|" MEDIA " " MEDIA "? in|with old|tank|aquarium|" A "~ water", TS_TYPED_NOTHING, NULL, NULL},
	{"replaced|changed|bought|got|added " A "|new~ " FILTER, TS_TYPED_FLAG, "--filter", "new"},
	{"cleaned|rinsed|washed|scrubbed " A "|out~ " FILTER, TS_TYPED_FLAG, "--happened", "filter washed"},
	{"no|without|lacks|lacking|haven't|don't|doesn't|hasn't|not a|any|the|got|have|use|using|yet~ " FILTER, TS_TYPED_FLAG, "--filter", "none"},
	{"unfiltered|filterless", TS_TYPED_FLAG, "--filter", "none"},
	{FILTER " " BE "~ not|isn't|wasn't running|working|on " OVER "~ @", TS_TYPED_FLAG, "--filter", "off @"},
	{FILTER " " BE "~ off|stopped|broke|broken|dead|died|failed|unplugged|out|clogged working|running|down? " OVER "~ @ ago?", TS_TYPED_FLAG, "--filter", "off @"},
	{FILTER " " BE "~ not|isn't|doesn't|won't|wasn't|stopped running|work|working|run|start|on", TS_TYPED_FLAG, "--filter", "stopped"},
	{FILTER " " BE "~ off|stopped|broke|broken|dead|died|failed|unplugged|out|clogged", TS_TYPED_FLAG, "--filter", "stopped"},
	{"broken|stopped|dead|clogged|failed " FILTER, TS_TYPED_FLAG, "--filter", "stopped"},
	{"unplugged|turned " A "|off~ " FILTER, TS_TYPED_FLAG, "--filter", "stopped"},
	{"after|during|a|the|our|had? a|the|our? " POWER " " BE "|a~ cut|off|out|outage|failure|gone|down|back " OVER "~ @ ago?", TS_TYPED_FLAG, "--filter", "off @"},
	{"after|a|the|our? outage|blackout|powercut " OVER "~ @", TS_TYPED_FLAG, "--filter", "off @"},
	{"no|without|lost " POWER " " OVER "~ @", TS_TYPED_FLAG, "--filter", "off @"},
	{"@ " POWER " cut|outage|failure", TS_TYPED_FLAG, "--filter", "off @"},
	{"after|during|a|the|our|had? a|the|our? " POWER " " BE "|a~ cut|cuts|off|out|outage|failure|gone|down", TS_TYPED_FLAG, "--filter", "stopped"},
	{"no|without|lost " POWER, TS_TYPED_FLAG, "--filter", "stopped"},
	{"after|a|the|our? blackout|outage|powercut", TS_TYPED_FLAG, "--filter", "stopped"},
	{"not|isn't|never|hasn't|wasn't|no|without|haven't been|a|yet|fully|properly|quite|it|the|my|to|tank~ cycled|cycle|cycling|matured|mature", TS_TYPED_FLAG, "--filter", "new"},
	{"fishless|fish-less cycle|cycling", TS_TYPED_FLAG, "--filter", "new"},
	{"uncycled|un-cycled|unmatured|immature|cycling", TS_TYPED_FLAG, "--filter", "new"},
	{"new|brand-new|fresh|freshly|newly set|started fish? " TANK "|up", TS_TYPED_FLAG, "--filter", "new"},
	{"new|brand-new|brand|fresh|freshly|newly new|fish|set|" TANK "~ " TANK "|" FILTER "|up|started", TS_TYPED_FLAG, "--filter", "new"},
	{"mature|established|matured|cycled|fully|well cycled|established? " TANK "|" FILTER, TS_TYPED_FLAG, "--filter", "mature"},
	{BE " fully|well~ cycled|established|matured|mature " OVER "~ @", TS_TYPED_FLAG, "--filter", "mature"},
	{BE " fully|well~ cycled|established|matured|mature", TS_TYPED_FLAG, "--filter", "mature"},
	{"filter is|and~ mature|cycled|established|ripe|matured", TS_TYPED_FLAG, "--filter", "mature"},
	{"filter is~ new", TS_TYPED_FLAG, "--filter", "new"},
	{"fully? cycled|established|matured", TS_TYPED_FLAG, "--filter", "mature"},
	{TANK "|" FILTER " " BE "~ running|runs|run|going|up|established|set|cycling|started up|and|running|going~ " OVER "~ @ now|ago?", TS_TYPED_AGE, NULL, NULL},
	{"set|setup|started|filled|assembled it|up|fish|new|" A "|" TANK "~ " TANK "|up|it? up|only|just|about|for~ @ ago?", TS_TYPED_AGE, NULL, NULL},
	{"bought|got new|" A "|fish~ " TANK " only|just|about~ @ ago?", TS_TYPED_AGE, NULL, NULL},
	{"running|going|established|up|cycling and|running|" OVER "~ @ now|ago?", TS_TYPED_AGE, NULL, NULL},
	{"@ in", TS_TYPED_AGE, NULL, NULL},
	{"@ old|ago|running set|" A "~ " TANK, TS_TYPED_AGE, NULL, NULL},
	{TANK "|" FILTER "|which " BE "|about|around~ @ old", TS_TYPED_AGE, NULL, NULL},
	{"setting|starting|set up|" A "|new|first~ " TANK "|up", TS_TYPED_FLAG, "--filter", "new"},
	{"just|newly|freshly|recently|only set|setup|started|filled up? today|yesterday|now|recently?", TS_TYPED_FLAG, "--filter", "new"},
	{"set|setup|started up? today|yesterday|now|recently", TS_TYPED_FLAG, "--filter", "new"},
	{TANK " with|containing|holding", TS_TYPED_WITH, NULL, NULL},
	/* heat and cold */
	{HEATER_ " is|was|its|set|kept|running|thermostat~ at|to|on # " DEGREES_ "|f?", TS_TYPED_SET_TO, "--temperature", "#"},
	{HEATER_ " * at|to|hit|hits|reads|reading|shows|reached # " DEGREES_ "|f?", TS_TYPED_HEATER, "--temperature", "#"},
	{TANK "|water|it|temp|temperature " BE "|at|down|up|dropped|fell|rose|sits|sitting|cooled|warmed|heated|overheated|climbed|reached|hit|drops|falls|to|about|around|over|under|below|above~ at|to|reached|hit # " DEGREES_ "|f?", TS_TYPED_FLAG, "--temperature", "#"},
	{TANK "|water|it " BE "|at|down|up|dropped|fell|rose|cooled|warmed|heated|overheated|reached|about|around|over|under|below|above~ # " DEGREES_, TS_TYPED_FLAG, "--temperature", "#"},
	{HEATER_ " " BE "|stayed~ stuck|jammed|overheating|overheated on|open|full|up?", TS_TYPED_FLAG, "--happened", "heater stuck"},
	{"stuck|overheating|overheated " HEATER_, TS_TYPED_FLAG, "--happened", "heater stuck"},
	{HEATER_ " " BE "~ broke|broken|died|dead|failed|off|unplugged|faulty|stopped|defective|exploded|cracked|burst working|heating|down|out|off?", TS_TYPED_FLAG, "--happened", "heater failed"},
	{HEATER_ " " BE "~ not|isn't|doesn't|won't|wasn't|didn't working|work|heat|heating|on|plugged|come", TS_TYPED_FLAG, "--happened", "heater failed"},
	{"broken|faulty|dead|defective|failed|cracked " HEATER_, TS_TYPED_FLAG, "--happened", "heater failed"},
	{"with|has|have|got|includes|using|running " A "|air|sponge|good|small|big|internal|external|hang-on|canister~ heater|filter|" FILTER " and|plus? " A "|air|sponge~ heater|filter|lid|light|pump?", TS_TYPED_NOTHING, NULL, NULL},
	{"no|without a|any? heater|heating|heat", TS_TYPED_NOTHING, NULL, NULL},
	{"unheated|heated|no-heater|heaterless", TS_TYPED_NOTHING, NULL, NULL},
	{"filter|heater and a|the? heater|filter " BE "|works|working|fine|running|on~", TS_TYPED_NOTHING, NULL, NULL},
	{FILTER "|" HEATER_ " is|runs|are|running|works|working|seems fine|well|ok|okay|good|great|running|working|on~", TS_TYPED_NOTHING, NULL, NULL},
	{"sponge|internal|external|canister|hang-on|air|box filter", TS_TYPED_NOTHING, NULL, NULL},
	{"cold|cool water? fish|tank", TS_TYPED_NOTHING, NULL, NULL},
	/* poison from outside */
	{"used|spilled|spilt|sprayed|dropped|put|added|got|cleaned|washed|rinsed|scrubbed|bleached|fell|poured|with with|in|some|it|" A "|" TANK "|into|out|hand|hands|gravel|sand|ornaments~ " SOAP "|cleaner|fly-spray|air-freshener|hairspray", TS_TYPED_FLAG, "--happened", "poison: soap, spray or the like"},
	{"sprayed|spraying|used|using|painted|painting|near|with " A "|some|in~ fly|ant|flea|insect|bug|mosquito|wasp|hair|air|glass|window|oven|kitchen|cleaning|hand|room? spray|killer|cleaner|freshener|cream|paint|product|products|room|wall|walls|house", TS_TYPED_FLAG, "--happened", "poison: soap, spray or the like"},
	{"fly|ant|flea|insect|bug|hair|glass|window|cleaning spray|killer|cleaner|product|products", TS_TYPED_FLAG, "--happened", "poison: soap, spray or the like"},
	{SOAP "|bleached|soapy|cleaner|fumes|fly-spray|hairspray|poisoned|poison|toxin", TS_TYPED_FLAG, "--happened", "poison: soap, spray or the like"},
	{"copper|brass|galvanised|galvanized|zinc|lead|metal coin|coins|ornament|wire|pot|penny", TS_TYPED_FLAG, "--happened", "poison: metal"},
	{"used|added|put|dosed|gave|given|treated|treating|treat|started|with with|some|" A "|for|double|in|copper|more|them|it~ " MEDICINE "|treatment|remedy|copper", TS_TYPED_FLAG, "--happened", "medicine"},
	{"copper medicine|medication|treatment|based|meds", TS_TYPED_FLAG, "--happened", "medicine: copper"},
	{MEDICINE "|medicated|medicating", TS_TYPED_FLAG, "--happened", "medicine"},
	{"treated|treating them|it|" TANK "|" A "~ for with|against white|fin|fungus|ich|worms|parasites|spot|rot~", TS_TYPED_FLAG, "--happened", "medicine"},
	{"overfed|over-fed|overfeeding", TS_TYPED_FLAG, "--happened", "fed too much"},
	{"fed|feeding|gave them|it|far|way|" A "~ too much food?", TS_TYPED_FLAG, "--happened", "fed too much"},
	{"tipped|poured|dumped|emptied|spilled|dropped|put|threw " A "|whole|entire|all|pot|tub|can|box|lot|of|fish|container~ food|flakes|pellets", TS_TYPED_FLAG, "--happened", "fed too much"},
	/* deaths */
	{"dead|dying leaf|leaves|plant|plants|matter|wood|coral|algae", TS_TYPED_NOTHING, NULL, NULL},
	{"nobody|none|no|nothing|never|no-one|not|zero one|fish|animals|deaths|any|of|them|has|have|a|single|had~ " DEAD "|lost|losses", TS_TYPED_FLAG, "--deaths", "0"},
	{"# of|out of? my|the|our|these|those", TS_TYPED_OF_THEM, NULL, NULL},
	{"everybody|everyone|everything|all of|fish|them|they|others|the|my|" BE "~ " DEAD "|die|dies @?", TS_TYPED_MANY_DIED, NULL, NULL},
	{"# this|last|the|in|within|past|since|today|yesterday~ week|month|days|morning|night|weekend|today|yesterday", TS_TYPED_SO_MANY, NULL, NULL},
	{DEAD "|die|dies one by|after one|another " OVER "~ @?", TS_TYPED_KEEP_DYING, NULL, NULL},
	{"keep|keeps|kept|started|start dying|die|losing one|after|by|another~", TS_TYPED_KEEP_DYING, NULL, NULL},
	{"many|several|most|half|some|few of|the|my|fish|them|" BE "~ " DEAD " @?", TS_TYPED_MANY_DIED, NULL, NULL},
	{"# of|fish|my|the|others|other|more|animals|them~ of|fish|animals|them|so|far|" BE "~ " DEAD "|die|passed @?", TS_TYPED_DIED, NULL, NULL},
	{"# deaths|losses|casualties", TS_TYPED_DIED, NULL, NULL},
	{"lost|losing|lose already|about~ # of|fish|my|the|them|already|so|far~", TS_TYPED_DIED, NULL, NULL},
	{DEAD " @?", TS_TYPED_DIED, NULL, NULL},
	{"lost|losing another|more|all|many|most|several|every|some fish|of|animals|it|them|one~", TS_TYPED_DIED, NULL, NULL},
	{"passed away", TS_TYPED_DIED, NULL, NULL},
	{"die|dies", TS_TYPED_DIES, NULL, NULL},
	{"# left|remaining|remain|survived|survive|alive", TS_TYPED_NOTHING, NULL, NULL},
	{"kill|kills|eat|eats|attack|attacks|fight|fights|harm|harms|hurt|hurts|survive|bother|nip|bite|stress", TS_TYPED_ASKED, NULL, NULL},
	/* living there */
	{"lives|live|living|swims|swim|swimming|sits|is|are|was|were lives|live|living|happily|happy|alone|together|now|already~ in|inside my|our|his|her|their|" A, TS_TYPED_LIVE, NULL, NULL},
	{"lives|live|living|is|are living|already|now~ in there|here|it|already", TS_TYPED_LIVE, NULL, NULL},
	{"since|for|from|began|started " OVER "~ @ ago|now?", TS_TYPED_SINCE, NULL, NULL},
	{"for|since|had|have " OVER "|more|than|it|them|him|her|for~ @ ago|now?", TS_TYPED_LIVED, NULL, NULL},
	{"@", TS_TYPED_CAME, NULL, NULL},
	{"on|going|away|off on|for|a|my|our~ holiday|holidays|vacation|trip|away for|of|about|lasting~ @", TS_TYPED_AWAY, NULL, NULL},
	{"away|gone|holiday|vacation for|of|about~ @", TS_TYPED_AWAY, NULL, NULL},
	{"moving|move|relocating house|home|flat|apartment to|a|new|km|miles|place|town|city|next|this|week|month|soon|in|tomorrow|away~", TS_TYPED_MOVES, NULL, NULL},
	{"in it|there|here already|now|currently?", TS_TYPED_IN_IT, NULL, NULL},
	{TANK " runs|running|going|set|up~ with", TS_TYPED_WITH, NULL, NULL},
	{"moving|move|relocating # km|miles|kilometres|kilometers|hours away|with~", TS_TYPED_MOVES, NULL, NULL},
	{"moving|moved|relocating to|a|new|place|town|city|next|this|week|month|soon|in|tomorrow|away~", TS_TYPED_KEEPS, NULL, NULL},
	{"# of them|these|those", TS_TYPED_COUNT, NULL, NULL},
	{"lived|living|kept|been|had here|there|in|it|with|me|us|them|happily|happy|well|fine|for|over|about~ @ happily|happy|well|fine|now~", TS_TYPED_LIVED, NULL, NULL},
	{"after|since|when|and? i|we put|added|dosed|used|pour|poured|gave|with? some|a|an|new|the|plant|liquid|root|more~ fertiliser|fertilizer|fertilisers|fertilizers|ferts in?", TS_TYPED_SUSPECT, "--happened", "poison: fertiliser"},
	{"copper pipe|pipes|plumbing|tank|boiler in|my|the|house~", TS_TYPED_SUSPECT, "--happened", "poison: metal"},
	{"i|we|just|have|when|after~ added|adding|turned|increased|more|inject|injecting|injected|started|new|installed up|the|my|a|some|more~ co2 up|system|too|much?", TS_TYPED_KEEPS, NULL, NULL},
	{"active|aqua soil|substrate", TS_TYPED_FLAG, "--active-soil", ""},
	{"aquasoil", TS_TYPED_FLAG, "--active-soil", ""},
	{"peat filter|filtration|granules|in|the~", TS_TYPED_FLAG, "--peat", ""},
	{"heatwave|heat-wave", TS_TYPED_KEEPS, NULL, NULL},
	{"heat wave", TS_TYPED_KEEPS, NULL, NULL},
	{"keeps|keep|kept|is|always|slowly dropping|falling|going|sinking|creeping|rising|climbing|drifting|crashing down|up|in|my|the|tank|low|lower|high|higher|every|week|day~", TS_TYPED_KEEPS, NULL, NULL},
	/* nothing of it counts */
	{"in|put|floated|acclimatised|acclimated|after|within|only|just|about|for|them~ # minutes|min|mins|minute", TS_TYPED_NOTHING, NULL, NULL},
	{"is|are|about|already|now~ # cm|inch|inches|mm long|big|now?", TS_TYPED_NOTHING, NULL, NULL},
	{"no|without water change|changes " OVER "~ @?", TS_TYPED_FLAG, "--water-change", "none"},
	{"haven't|not|never|hasn't|didn't been|the|my|any~ changed|change|done the|my|any|tank|water~ water|changes " OVER "|in~ @?", TS_TYPED_FLAG, "--water-change", "none"},
	{"ro|osmosis|distilled|demineralised|demineralized|deionised|deionized|rain water? only|alone", TS_TYPED_FLAG, "--GH", "0"},
	{"only|pure|straight|100% ro|osmosis|distilled|demineralised|rain water?", TS_TYPED_FLAG, "--GH", "0"},
	{"# year|years|yr old daughter|son|boy|girl|child|kid|and?", TS_TYPED_NOTHING, NULL, NULL},
	{"year-old|years-old", TS_TYPED_NOTHING, NULL, NULL},
	{"tomorrow|tonight|soon|today|next at|this|in|on|the|week|weekend|saturday|sunday|monday~", TS_TYPED_NOTHING, NULL, NULL},
	{"no|not|without|haven't|never|didn't|don't any|a|done|water|yet|have|own|it~ test|tests|tested|testing kit|kits|strips?", TS_TYPED_NOTHING, NULL, NULL},
	{"# fish|fishes|animals", TS_TYPED_NOTHING, NULL, NULL},
	{"@ old", TS_TYPED_NOTHING, NULL, NULL},
	{"the|other|others|remaining|all other|others|remaining|rest #?", TS_TYPED_NOTHING, NULL, NULL},
	{"for|since|in|within|about|over|after|every|past|last|only @ now|ago|already?", TS_TYPED_SPAN, NULL, NULL},
	{NULL, TS_TYPED_NOTHING, NULL, NULL},
};
/* clang-format on */
