/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows. What a group is called and who belongs to it is common practice of the trade, no
 * source; so is what is said of bred forms.
 */
#include "catalogue/name_rows.h"

#include <string.h>

#include "catalogue/name_words.h"
#include "model/shape.h"

#define MBUNA                                                                                      \
	"genus Chindongo|genus Cynotilapia|genus Iodotropheus|genus Labeotropheus|"                \
	"genus Labidochromis|genus Maylandia|genus Melanochromis|genus Pseudotropheus|"            \
	"genus Tropheops|genus Gephyrochromis|genus Petrotilapia"
#define CORIES                                                                                     \
	"genus Corydoras|genus Brochis|genus Gastrodermus|genus Hoplisoma|genus Osteogaster|"      \
	"genus Scleromystax|genus Aspidoras"
#define OTOS "genus Otocinclus|genus Macrotocinclus|genus Parotocinclus"
#define LOACHES                                                                                    \
	"family Botiidae|family Cobitidae|family Nemacheilidae|family Gastromyzontidae|"           \
	"family Balitoridae|family Vaillantellidae"
#define SNAILS "kind snail"
#define CRAYFISH "kind crayfish"

#define DYED                                                                                       \
	"is a fish with dye under its skin: the needle wounds it, many die, and the colour fades"
#define SHORT                                                                                      \
	"is a form bred with a shortened, bent spine: it swims badly and its organs have no room"
#define CHANGED                                                                                    \
	"is a form with a gene that is not its own: ask first whether your law lets you keep it"
#define GLOWS                                                                                      \
	"is a danio, tetra or barb with a gene that is not its own, or a dyed one: ask which, "    \
	"and "                                                                                     \
	"whether your law lets you keep it, some countries do not"
#define LAND_OR_SEA "is an animal of the sea"

/* clang-format off */
static const struct ts_name_row rows[] = {
	/* Groups: a list to choose from. */
	{TS_NAME_GROUP, "mbuna|rock cichlid|malawi mbuna|Felsencichlide", MBUNA, NULL},
	{TS_NAME_GROUP, "peacock|peacock cichlid|aulonocara|Kaiserbuntbarsch|malawi peacock", "genus Aulonocara", NULL},
	{TS_NAME_GROUP, "hap|haps|utaka|haplochromis|malawi hap", "genus Copadichromis|genus Sciaenochromis|genus Protomelas|genus Placidochromis|genus Nimbochromis|genus Dimidiochromis|genus Cyrtocara|genus Haplochromis|genus Pundamilia", NULL},
	{TS_NAME_GROUP, "malawi cichlid|malawi|lake malawi cichlid|Malawibuntbarsch|Malawicichlide|cichlidé du malawi|malawicichlide|cíclido del malawi|ciclide del malawi", "home malawi", NULL},
	{TS_NAME_GROUP, "tanganyika cichlid|tanganyika|lake tanganyika cichlid|Tanganjikabuntbarsch|Tanganjikacichlide|Tanganjika|cichlidé du tanganyika|cíclido del tanganica|ciclide del tanganica", "home tanganyika", NULL},
	{TS_NAME_GROUP, "victoria cichlid|lake victoria cichlid|Victoriabuntbarsch|Viktoriabarsch", "home victoria", NULL},
	{TS_NAME_GROUP, "rift lake cichlid|rift lake|african cichlid|african lake cichlid|east african cichlid", "home malawi|home tanganyika|home victoria", NULL},
	{TS_NAME_GROUP, "shell dweller|shellie|shell dwelling cichlid|Schneckenbuntbarsch|Schneckencichlide|conchylicole|slakkencichlide|conchícola|conchigliofilo", "shell|genus Lamprologus|id neolamprologus-brevis|id neolamprologus-multifasciatus|id neolamprologus-similis", NULL},
	{TS_NAME_GROUP, "julie|julidochromis|Schlankcichlide", "genus Julidochromis", NULL},
	{TS_NAME_GROUP, "tropheus|tropheus cichlid", "genus Tropheus", NULL},
	{TS_NAME_GROUP, "dwarf cichlid|apistogramma|apisto|Zwergbuntbarsch|Zwergcichlide|cichlidé nain|dwergcichlide|cíclido enano|ciclide nano", "dwarf cichlid|genus Apistogramma|genus Dicrossus|genus Nannacara|genus Mikrogeophagus|genus Laetacara|genus Pelvicachromis|genus Nanochromis|genus Taeniacara|genus Biotoecus", NULL},
	{TS_NAME_GROUP, "acara|akara", "acara|genus Andinoacara|genus Laetacara|genus Cleithracara|genus Aequidens", NULL},
	{TS_NAME_GROUP, "eartheater|earth eater|geophagus|Erdfresser", "eartheater|genus Geophagus|genus Gymnogeophagus|genus Satanoperca", NULL},
	{TS_NAME_GROUP, "krib|kribs", "genus Pelvicachromis", NULL},
	{TS_NAME_GROUP, "jewel fish|jewel cichlid|jewelfish|hemichromis", "genus Hemichromis", NULL},
	{TS_NAME_GROUP, "cichlid|Buntbarsch|Cichlide|cichlidé|cíclido|ciclide|chiclid", "family Cichlidae", NULL},
	{TS_NAME_GROUP, "cory|corydoras|cories|corys|cory cat|cory catfish|armoured catfish|Panzerwels|pantsermeerval|coridora|limpiafondos|limpiafondos corydoras|poisson cuirassé", CORIES, NULL},
	{TS_NAME_GROUP, "*pleco|plec|plecos|suckermouth|sucker fish|suckermouth catfish|sucker catfish|Harnischwels|Saugwels|L-Wels|pléco|poisson ventouse|harnasmeerval|zuigmeerval|pez ventosa|pez limpiador|limpiacristales|pesce ventosa|loricaride|pulitore|pesce pulitore", "family Loricariidae", NULL},
	{TS_NAME_GROUP, "bristlenose|bushynose|ancistrus|bristlenose pleco|Antennenwels|borstelneus", "genus Ancistrus", NULL},
	{TS_NAME_GROUP, "whiptail|whiptail catfish|twig catfish|Nadelwels|Hexenwels", "whiptail|twig|genus Rineloricaria|genus Farlowella|genus Sturisoma|genus Sturisomatichthys", NULL},
	{TS_NAME_GROUP, "oto|otos|otto|otto cat|oto cat|oto catfish|otocat|dwarf sucker|Ohrgitterharnischwels", OTOS, NULL},
	{TS_NAME_GROUP, "algae eater|algae eating fish|algaeeater|Algenfresser|Putzerfisch|Scheibenputzer|cleaner fish|tank cleaner|mangeur d'algues|nettoyeur|algeneter|comedor de algas|comealgas|come algas|mangia alghe|mangiaalghe", "algae|id otocinclus-vittatus|id ancistrus-cirrhosus|id epalzeorhynchos-kalopterum|id caridina-multidentata|id vittina-natalensis", NULL},
	{TS_NAME_GROUP, "synodontis|squeaker|Fiederbartwels", "genus Synodontis", NULL},
	{TS_NAME_GROUP, "talking catfish|raphael catfish|raphael|Dornwels", "family Doradidae", NULL},
	{TS_NAME_GROUP, "catfish|cat fish|Wels|poisson-chat|silure|meerval|pez gato|siluro|bagre|pesce gatto", "catfish|family Loricariidae|" CORIES "|family Mochokidae|family Doradidae|family Siluridae|family Pimelodidae|family Ictaluridae|family Auchenipteridae|family Aspredinidae|family Bagridae|family Clariidae", NULL},
	{TS_NAME_GROUP, "tetra|tetras|Salmler|tétra|zalm|caracín|caracide", "tetra|family Characidae|family Acestrorhamphidae|family Alestidae", NULL},
	{TS_NAME_GROUP, "Rotkopfsalmler|nez rouge", "genus Petitella", NULL},
	{TS_NAME_GROUP, "pencilfish|pencil fish|Ziersalmler|poisson crayon|potloodvis|pez lápiz|pesce matita", "genus Nannostomus", NULL},
	{TS_NAME_GROUP, "hatchetfish|hatchet fish|Beilbauch|Beilbauchfisch|poisson hachette|bijlzalm|pez hacha|pesce accetta", "hatchetfish|family Gasteropelecidae", NULL},
	{TS_NAME_GROUP, "headstander|Kopfsteher", "headstander", NULL},
	{TS_NAME_GROUP, "silver dollar|Scheibensalmler|dollar d'argent|zilverdollar", "silver dollar|genus Metynnis|genus Myloplus", NULL},
	{TS_NAME_GROUP, "*piranha|pirana|piraña", "piranha|id piaractus-brachypomus|id colossoma-macropomum", NULL},
	{TS_NAME_GROUP, "pacu|pacus", "pacu", NULL},
	{TS_NAME_GROUP, "barb|barbs|Barbe|barbus|barbeel|barbo", "barb", NULL},
	{TS_NAME_GROUP, "rasbora|rasboras|Bärbling|boraras", "rasbora|genus Rasbora|genus Boraras|genus Trigonostigma", NULL},
	{TS_NAME_GROUP, "danio|danios", "danio|genus Danio|genus Devario", NULL},
	{TS_NAME_GROUP, "shark|sharks|freshwater shark|Hai|requin|haai|tiburón|squalo", "shark|id epalzeorhynchos-bicolor|id epalzeorhynchos-frenatum|id balantiocheilos-melanopterus|id labeo-chrysophekadion", NULL},
	{TS_NAME_GROUP, "loach|loaches|Schmerle|loche|locha|modderkruiper|botia|cobite", LOACHES, NULL},
	{TS_NAME_GROUP, "kuhli|kuhlis|coolie loach|Dornauge", "genus Pangio", NULL},
	{TS_NAME_GROUP, "hillstream loach|river loach|Flossensauger", "hillstream|family Gastromyzontidae|family Balitoridae", NULL},
	{TS_NAME_GROUP, "garra|garras", "genus Garra", NULL},
	{TS_NAME_GROUP, "goldfish variety|fancy goldfish variety", "id carassius-auratus|id carassius-auratus-fancy", NULL},
	{TS_NAME_GROUP, "minnow|minnows", "minnow", NULL},
	{TS_NAME_GROUP, "rainbow|rainbowfish|rainbows|rainbow fish|Regenbogenfisch|poisson arc-en-ciel|arc en ciel|regenboogvis|pez arcoíris|arcoíris|pesce arcobaleno", "rainbowfish|family Melanotaeniidae|family Bedotiidae|family Pseudomugilidae|family Telmatherinidae", NULL},
	{TS_NAME_GROUP, "blue eye|blue-eyes|Blauauge", "family Pseudomugilidae", NULL},
	{TS_NAME_GROUP, "gourami|gouramis|gurami|Fadenfisch|goerami", "gourami", NULL},
	{TS_NAME_GROUP, "wild betta|mouthbrooding betta|Wildbetta|betta salvaje|betta sauvage", "genus Betta", NULL},
	{TS_NAME_GROUP, "labyrinth fish|anabantoid|Labyrinthfisch|labyrinthidé|labyrintvis|laberíntido|anabantide", "family Osphronemidae|family Anabantidae|family Helostomatidae", NULL},
	{TS_NAME_GROUP, "*snakehead|snakeheads|Schlangenkopffisch|channa", "genus Channa", NULL},
	{TS_NAME_GROUP, "killifish|killi|killis|killie|Killifisch|Prachtkärpfling|killivis|panchax", "killifish|family Nothobranchiidae|family Aplocheilidae|family Rivulidae|family Fundulidae|family Cyprinodontidae|panchax|lampeye|notho", NULL},
	{TS_NAME_GROUP, "notho|nothobranchius|Prachtgrundkärpfling", "genus Nothobranchius", NULL},
	{TS_NAME_GROUP, "livebearer|live bearer|livebearers|Lebendgebärende|lebendgebärender|vivipare|levendbarende|vivíparo|ovovivíparo|viviparo|poecilide", "family Poeciliidae|family Goodeidae|livebearer", NULL},
	{TS_NAME_GROUP, "sailfin|segelkärpfling", "id poecilia-sphenops|id poecilia-latipinna|id poecilia-velifera", NULL},
	{TS_NAME_GROUP, "goodeid|splitfin|Hochlandkärpfling", "family Goodeidae", NULL},
	{TS_NAME_GROUP, "halfbeak|Halbschnäbler", "halfbeak", NULL},
	{TS_NAME_GROUP, "*puffer|*pufferfish|puffer fish|freshwater puffer|Kugelfisch|poisson-globe|kogelvis|pez globo|pesce palla", "family Tetraodontidae", NULL},
	{TS_NAME_GROUP, "goby|gobies|Grundel|gobie|grondel|gobio|ghiozzo", "goby|family Gobiidae|family Oxudercidae", NULL},
	{TS_NAME_GROUP, "spiny eel|freshwater eel|eel|Stachelaal|anguille épineuse|anguila espinosa", "eel", NULL},
	{TS_NAME_GROUP, "*bichir|polypterus|dragon fish|dinosaur eel|Flösselhecht", "family Polypteridae", NULL},
	{TS_NAME_GROUP, "knifefish|knife fish|Messerfisch|poisson-couteau|mesvis|pez cuchillo|pesce coltello", "knifefish", NULL},
	{TS_NAME_GROUP, "*arowana|dragonfish|Gabelbart|Arowana", "arowana", NULL},
	{TS_NAME_GROUP, "*stingray|freshwater stingray|ray|Süßwasserrochen|Rochen|raie d'eau douce|raie|rog|raya|razza", "family Potamotrygonidae", NULL},
	{TS_NAME_GROUP, "archer fish|archer|Schützenfisch|poisson archer|schuttersvis|pez arquero|pesce arciere", "genus Toxotes", NULL},
	{TS_NAME_GROUP, "badis", "genus Badis|genus Dario", NULL},
	{TS_NAME_GROUP, "sunfish|Sonnenbarsch", "family Centrarchidae", NULL},
	{TS_NAME_GROUP, "shrimp|shrimps|dwarf shrimp|Garnele|Zwerggarnele|crevette|garnaal|gamba|camarón|gambetta|gamberetto|gamberetti|caridina", "kind shrimp", NULL},
	{TS_NAME_GROUP, "neocaridina|neos", "genus Neocaridina", NULL},
	{TS_NAME_GROUP, "sulawesi shrimp|sulawesi|Sulawesigarnele", "home sulawesi", NULL},
	{TS_NAME_GROUP, "fan shrimp|filter shrimp|Fächergarnele", "fan shrimp", NULL},
	{TS_NAME_GROUP, "crayfish|crawfish|crawdad|freshwater lobster|blue lobster|lobster|Krebs|Flusskrebs|Zwergkrebs|écrevisse|kreeft|rivierkreeft|cangrejo de río|gambero|gambero d'acqua dolce|dwarf cray|cray", CRAYFISH, NULL},
	{TS_NAME_GROUP, "crab|crabs|freshwater crab|Krabbe|crabe|krab|cangrejo|granchio", "kind crab", NULL},
	{TS_NAME_GROUP, "snail|snails|pond snail|Schnecke|escargot|slak|caracol|lumaca|chiocciola", SNAILS, NULL},
	{TS_NAME_GROUP, "nerite|nerites|nerite snail|olive nerite|nerite snails|Rennschnecke|nérite|neritina", "nerite|family Neritidae", NULL},
	{TS_NAME_GROUP, "apple snail|Apfelschnecke|ampullaire|appelslak|caracol manzana|ampullaria|lumaca ampullaria|lumache ampullaria", "family Ampullariidae", NULL},
	{TS_NAME_GROUP, "ramshorn|ram's horn snail|Posthornschnecke", "ramshorn", NULL},

	/* Bred forms and hybrids: an entry that says what they are. */
	{TS_NAME_FORM, "balloon molly|balloon belly molly|Ballonmolly|Ballon-Molly|molly ballon|ballonmolly|molly globo|molly balloon|molly pallone", "id poecilia-sphenops", SHORT},
	{TS_NAME_FORM, "balloon ram|balloon blue ram|balloon german ram|ramirezi ballon|ramirezi globo", "id mikrogeophagus-ramirezi", SHORT},
	{TS_NAME_FORM, "balloon platy|platy ballon", "id xiphophorus-maculatus", SHORT},
	{TS_NAME_FORM, "balloon kissing gourami|balloon kisser|dwarf kissing gourami", "id helostoma-temminkii", SHORT},
	{TS_NAME_FORM, "balloon widow tetra|balloon skirt tetra|balloon tetra", "id gymnocorymbus-ternetzi", SHORT},
	{TS_NAME_FORM, "bubble eye goldfish|bubble eye|bubbleye|water bubble eye|Blasenauge", "id carassius-auratus-fancy", "is a goldfish bred with sacs under its eyes, which tear"},
	{TS_NAME_FORM, "celestial eye goldfish|celestial eye|celestial goldfish|stargazer goldfish|Himmelsgucker", "id carassius-auratus-fancy", "is a goldfish bred with eyes that look upwards: it hardly finds its food"},
	{TS_NAME_FORM, "painted glassfish|painted glass fish|dyed glassfish|coloured glassfish|colored glassfish|disco fish", "id parambassis-ranga", DYED},
	{TS_NAME_FORM, "dyed tetra|painted tetra|coloured skirt tetra|colored skirt tetra|candy skirt tetra|fruit tetra", "id gymnocorymbus-ternetzi", DYED},
	{TS_NAME_FORM, "dyed cory|painted cory|dyed corydoras|painted corydoras", "id osteogaster-aenea", DYED},
	{TS_NAME_FORM, "fluorescent tetra|glowing tetra|transgenic tetra", "id gymnocorymbus-ternetzi", CHANGED},
	{TS_NAME_FORM, "fluorescent danio|fluorescent zebrafish|glowing danio|transgenic danio", "id danio-rerio", CHANGED},
	{TS_NAME_FORM, "glow fish|glowing fish|fluorescent fish|transgenic fish|Leuchtfisch|poisson fluorescent", NULL, GLOWS},
	{TS_NAME_FORM, "parrot cichlid|blood parrot|blood parrot cichlid|bloody parrot|red parrot|jelly bean parrot|jellybean parrot|king kong parrot|love heart parrot|polar parrot|parrot fish|Papageienbuntbarsch|Papageifisch|Papageienfisch|poisson perroquet|perroquet rouge|cichlidé perroquet|papegaaicichlide|papegaaivis|pez loro|cíclido loro|loro rojo|pesce pappagallo|ciclide pappagallo", NULL, "is a hybrid of American cichlids, bred with a mouth that hardly closes and a bent spine"},
	{TS_NAME_FORM, "flowerhorn|flower horn|flowerhorn cichlid|luohan|lou han|Blumenhorn|cuerno de flor", NULL, "is a hybrid of American cichlids, bred for the hump on its head; it is large and fights"},
	{TS_NAME_FORM, "red texas|red texas cichlid|texas parrot", NULL, "is a hybrid of American cichlids"},
	{TS_NAME_FORM, "tiger parrot|hybrid catfish|synodontis hybrid|hybrid synodontis", NULL, "is a hybrid whose parents nobody can tell you"},

	/* Outside: told so, and nothing said of what they need. */
	{TS_NAME_OUTSIDE, "axolotl|*axolotl|*newt|*salamander|*Molch|*Salamander|*triton|*axolote|*ajolote|*salamandra|*tritone|water dragon", NULL, "is an amphibian of cold water, 16 to 18 C, that swallows fish and shrimps, and whose gills fish nip"},
	{TS_NAME_OUTSIDE, "frog|*frog|*toad|*tadpole|*Frosch|*Krallenfrosch|*Zwergkrallenfrosch|*Kröte|*Kaulquappe|*grenouille|*xénope|*crapaud|*kikker|*klauwkikker|*rana|*sapo|*renacuajo|*rospo|*girino|*xenopus|*hymenochirus", NULL, "is an amphibian: it eats what fits its mouth, and a small one starves beside quick fish"},
	{TS_NAME_OUTSIDE, "turtle|*turtle|*terrapin|*slider|*tortoise|*Schildkröte|*Wasserschildkröte|*Schmuckschildkröte|*tortue|*schildpad|*waterschildpad|geelwangschildpad|roodwangschildpad|*tortuga|*tartaruga", NULL, "is a reptile that eats fish, and fouls the water of a tank of fish"},
	{TS_NAME_OUTSIDE, "*clownfish|clown fish|*anemonefish|Anemonenfisch|*Clownfisch|poisson-clown|anemoonvis|pez payaso|pesce pagliaccio|ocellaris|percula", NULL, LAND_OR_SEA},
	{TS_NAME_OUTSIDE, "tang|blue tang|yellow tang|*surgeonfish|*Doktorfisch|poisson chirurgien|*chirurgien|doktersvis|pez cirujano|pesce chirurgo", NULL, LAND_OR_SEA},
	{TS_NAME_OUTSIDE, "seahorse|sea horse|*seahorse|*Seepferdchen|hippocampe|*zeepaardje|caballito de mar|cavalluccio marino|sea dragon", NULL, LAND_OR_SEA},
	{TS_NAME_OUTSIDE, "lionfish|lion fish|*lionfish|*damselfish|*wrasse|*grouper|*triggerfish|*parrotfish|marine angelfish|marine fish|saltwater fish|salt water fish|reef fish|*Meerwasserfisch|Feuerfisch|Kaiserfisch|poisson marin|poisson d'eau de mer|zoutwatervis|zeewatervis|pez marino|pez de agua salada|pesce marino|mandarin fish|mandarinfish|mandarin goby|mandarin dragonet|firefish|chromis|cleaner wrasse|dottyback|*jawfish|moray|moray eel|box fish|boxfish|cowfish|*butterflyfish marine", NULL, LAND_OR_SEA},
	{TS_NAME_OUTSIDE, "coral|corals|anemone|sea anemone|starfish|sea star|jellyfish|sea urchin|Koralle|Seestern|Qualle|corail|koraal|estrella de mar|medusa|stella marina|octopus|squid|cleaner shrimp|pistol shrimp|mantis shrimp|peppermint shrimp", NULL, LAND_OR_SEA},
	{TS_NAME_OUTSIDE, "hermit crab|*hermit crab|Einsiedlerkrebs|bernard l'ermite|heremietkreeft|cangrejo ermitaño|paguro", NULL, "is a crab of the beach or the sea"},
	{TS_NAME_OUTSIDE, "mussel|clam|*mussel|*clam|freshwater mussel|*Muschel|*Teichmuschel|*moule|*mossel|*mejillón|*almeja|*vongola", NULL, "is a filter feeder of which most starve in a tank"},
	{TS_NAME_OUTSIDE, "brine shrimp|sea monkey|sea monkeys|artemia|triops|fairy shrimp|tadpole shrimp|daphnia|Wasserfloh|Urzeitkrebs|*leech|*planaria|water flea|hydra|bloodworm|tubifex", NULL, "is a small animal that is fed to fish or comes along with plants"},
	{TS_NAME_OUTSIDE, "plant|plants|java fern|java moss|moss|moss ball|marimo|anubias|duckweed|*fern|*moss|Wasserpflanze|plante|waterplant|planta|pianta", NULL, "is a plant"},
};
/* clang-format on */
#define ROWS (sizeof rows / sizeof *rows)

const struct ts_name_row *ts_name_row_at(size_t index)
{
	return index < ROWS ? &rows[index] : NULL;
}

/* Whether all the words stand in the name, one behind the other. */
static bool stands_in(const struct ts_name_words *wanted, const char *name)
{
	struct ts_name_words words;

	ts_name_split(name, strlen(name), false, &words);
	for (size_t i = 0; wanted->count && i + wanted->count <= words.count; i++) {
		size_t same = 0;

		while (same < wanted->count &&
			ts_name_same_word(wanted->at[same], wanted->len[same], words.at[i + same],
				words.len[i + same]))
			same++;
		if (same == wanted->count)
			return true;
	}
	return false;
}

static bool begins(
	const char *text, size_t len, const char *word, const char **ret_rest, size_t *ret_len)
{
	size_t word_len = strlen(word);

	if (len <= word_len || memcmp(text, word, word_len) != 0)
		return false;
	*ret_rest = text + word_len;
	*ret_len = len - word_len;
	return true;
}

static bool equals(const char *text, size_t len, const char *other, size_t other_len)
{
	return len == other_len && memcmp(text, other, len) == 0;
}

static bool holds(const char *text, size_t len, const struct ts_species *s)
{
	const char *rest = text, *name;
	size_t rest_len = len;
	struct ts_name_words wanted;

	if (begins(text, len, "genus ", &rest, &rest_len))
		return equals(rest, rest_len, s->species, strcspn(s->species, " "));
	if (begins(text, len, "family ", &rest, &rest_len))
		return equals(rest, rest_len, s->family, strlen(s->family));
	if (begins(text, len, "home ", &rest, &rest_len))
		return equals(rest, rest_len, ts_words_home_water[s->home_water],
			strlen(ts_words_home_water[s->home_water]));
	if (begins(text, len, "kind ", &rest, &rest_len))
		return equals(
			rest, rest_len, ts_words_kind[s->kind], strlen(ts_words_kind[s->kind]));
	if (begins(text, len, "id ", &rest, &rest_len)) {
		const char *slash = strrchr(s->file, '/'), *stem = slash ? slash + 1 : s->file;

		return equals(rest, rest_len, stem, strcspn(stem, "."));
	}
	ts_name_split(text, len, false, &wanted);
	for (size_t i = 1 + s->synonyms.count; (name = ts_species_name(s, i)); i++) {
		if (stands_in(&wanted, name))
			return true;
	}
	return false;
}

bool ts_name_row_holds(const struct ts_name_row *row, const struct ts_species *species)
{
	for (const char *at = row->members; at && *at;) {
		size_t len = strcspn(at, "|");

		if (holds(at, len, species))
			return true;
		at += len + (at[len] == '|');
	}
	return false;
}
