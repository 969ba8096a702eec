// SPDX-License-Identifier: Apache-2.0
// The animals in one field of words, as on the terminal: "10 neon tetras, 2 bettas". What they mean is
// the program's to say; here they are parted, and what is not clear is asked about in place.

// "8 platies, 2 angelfish", "8 platies and 2 angelfish", a line each.
const PARTED = /\s*[,;\n]+\s*|\s+and\s+(?=(?:\d|one|two|three|four|a|an|some)\b)/i;
const SINCE = /\s(for|since)\s|^there:/;
// For how long: what stands behind a name in a call, or before it.
const THERE = "there:";
const LIVED = [["", "not yet: only planned"], [THERE, "yes, since when is not known"], ["for 3 weeks", "for some weeks"], ["for 6 months", "for months"],
	["for 2 years", "for years"]];

// What the choice says of animals that live there each since a day of its own.
function livedOf(read) {
	const [, , weeks, months, years] = LIVED.map(([words]) => words), DAY_MS = 86400000;
	const found = new Set(read.map(({ line }) => {
		const days = line && line.since !== "unknown" ? (Date.now() - Date.parse(line.since)) / DAY_MS : NaN;
		return days < 70 ? weeks : days < 500 ? months : days >= 500 ? years : THERE;
	}));
	return found.size === 1 ? [...found][0] : THERE;
}

const itemsOf = (text) => text.split(PARTED).map((item) => item.trim()).filter(Boolean);

// An animal of the sheet as it is typed.
const typedAnimal = ({ species, count, since }) => `${since === "unknown" ? `${THERE} ` : ""}${count || 1} ${species}${since && since !== "unknown" ? ` since ${since}` : ""}`;

// Whoever goes on typing is not asked again about what stands before.
const KNOWN_MOST = 400, known = new Map();
function askedOnce(key, run) {
	if (known.size > KNOWN_MOST) { known.clear(); }
	if (!known.has(key)) { known.set(key, page.program.call(run).out); }
	return JSON.parse(known.get(key));
}
function readItem(item, lived) {
	const words = !lived || SINCE.test(item) ? item : lived === THERE ? `${THERE} ${item}` : `${item} ${lived}`;
	return { item, ...askedOnce(`item ${words}`, (running) => running.animals(words, today()[1])) };
}

// A sentence that is being typed: its parts are not asked about one by one.
const SENTENCE = new RegExp("(\\S+\\s+){4}\\S|\\?|\\b([GK]H|pH|\\d+\\s*(l|lit\\w*|cm|dH|ppm)|can|could|will|would|should|may|" +
	"do|does|is|are|how|what|which|why|my|our|i|i'm|we|have|has|keep|add|buy|suit|together|please|help)\\b", "i");
const unfinished = () => page.typing && page.unclear.some(({ item }) => SENTENCE.test(item));

// What is typed becomes the stock; what a file or a field said beyond the words stays.
// `whole`: nobody is typing at this moment, so that a sentence may be read.
function readAnimals(whole = true) {
	const s = sheet();
	if (whole && page.livedRead) { s.lived = page.livedRead = ""; } // it is said anew, if it is
	const before = new Map(s.stock.map((line) => [line.species, line]));
	const items = [...itemsOf(s.words).map((item) => readItem(item, s.lived)), ...itemsOf(s.lived ? s.coming : "").map((item) => readItem(item, ""))];
	page.unread = [];
	page.told = [];
	page.alarms = [];
	const read = (whole && readSentence(s, items)) || items;
	page.read = read;
	page.unclear = read.filter(({ name }) => !name);
	page.typing = !whole;
	s.stock = read.filter(({ item, name, line }) => line && (name || whole || !SENTENCE.test(item))).map(({ line }) => {
		const { sex, origin, size } = before.get(line.species) || {};
		return { ...(sex && { sex }), ...(origin && { origin }), ...(size && { size }), ...line, count: String(line.count) };
	});
	// Who could live there has questions of its own, once the water is known. What is told of a tank without its
	// animals is answered as it is: somebody may be gasping.
	const fits = page.told.includes("fits") && !s.stock.length && NEEDS.water.has(s);
	const untold = !s.stock.length && (page.told.some((word) => /^--(?!asks)/.test(word)) || page.alarms.length);
	s.asked = untold || (page.told.includes("--asks") && !fits) ? "yes" : "";
	showNames();
	showStock();
}

// "I have 54 litres and 8 dH, can I add 6 neons?": where the parts are no names, the program reads the whole,
// and its figures go into their fields.
const SENTENCE_WORDS_MOST = 40; // a message; reading takes some milliseconds a word
const PLACE_OF = { volume: "size", size: "size", temperature: "temperature" };
function readSentence(s, items) {
	const astray = items.filter(({ item, name, group }) => !name && (!group || SENTENCE.test(item))).length;
	const short = s.words.split(/[\s,;?!()+&/=]+/).length <= SENTENCE_WORDS_MOST;
	const words = s.words.replace(/\s+/g, " ");
	const { planned, living, unread, flags, told, alarms } = astray && short ? askedOnce(`sentence ${words}`, (running) => running.sentence(words)) : {};
	const taken = planned && (unread.length < astray || told.length > 0 || Object.keys(flags).length > 0);
	for (const [part, key] of page.figures || []) { delete s[part][key]; } // what the words said before
	page.figures = [];
	page.unread = taken ? unread : [];
	page.told = taken ? told : []; // signs, deaths, what happened: they go with the call
	page.alarms = taken ? alarms : [];
	if (!taken) { return null; }
	for (const [flag, text] of Object.entries(flags)) {
		const part = Object.hasOwn(PLACE_OF, flag) ? "tank" : "reading", key = part === "tank" ? PLACE_OF[flag] : flag;
		if (!s[part][key] && (part === "tank" || row("reading", key))) {
			s[part][key] = text;
			page.figures.push([part, key]);
		}
	}
	if (page.told.includes("--softened")) { // which has a field
		page.told = page.told.filter((word) => word !== "--softened");
		s.water.softened = "yes";
		page.figures.push(["water", "softened"]);
	}
	if (living.length && !s.lived) { s.lived = page.livedRead = livedOf(living.map((item) => readItem(item, THERE))); } // to be put right
	return [...planned.map((item) => readItem(item, "")), ...living.map((item) => readItem(item, s.lived))];
}

const notUnderstood = () => `Not understood: ${page.unread.join(", ")}`;

// What is not clear, with whom it may mean as buttons.
function showNames() {
	if (unfinished()) { return at("names").replaceChildren(); }
	const left = page.unread.length ? [element("p", { class: "says" }, notUnderstood())] : [];
	return at("names").replaceChildren(...left, ...page.read.flatMap((one) => {
		if (!one.says) { return []; }
		const list = one.choices || [];
		return [element("p", { class: "says" }, list.length ? `${one.item}: which?` : one.says), element("ul", { class: "plain choices" },
			...list.map(({ name, species }) => element("li", {}, element("button", { type: "button", onclick: () => take(one, name) },
				name, ...(name === species ? [] : [element("i", {}, ` ${species}`)])))))];
	}));
}

// A name that was chosen goes where the unclear one stood.
function take({ item, line }, name) {
	const s = sheet(), part = s.words.includes(item) ? "words" : "coming";
	s[part] = s[part].replace(item, () => item.replace(line.species, () => name));
	showWords();
	readAnimals();
	changed("words");
	at(part === "words" ? "animals" : "coming").focus();
}

function showWords() {
	for (const [id, text] of [["animals", sheet().words], ["coming", sheet().coming]]) {
		if (at(id).value !== text) { at(id).value = text; }
	}
}

// All animals in one text each, those that live there and those that are to come; as fields have them.
function wordsOf(s) {
	const living = s.stock.filter(({ since }) => since);
	s.words = (s.lived ? living : s.stock).map(typedAnimal).join(", ");
	s.coming = s.lived ? s.stock.filter(({ since }) => !since).map(typedAnimal).join(", ") : "";
	showWords();
}

function showStock() {
	const s = sheet();
	page.fields = page.fields.filter(({ part }) => part !== "animal");
	at("stock").replaceChildren(...s.stock.map((line, i) => {
		const fold = element("details", { class: "more" }, element("summary", {}, `${line.count} ${(page.read[i] || {}).name || line.species}`));
		fold.addEventListener("toggle", () => fillStock(fold, line, i), { once: true });
		return element("li", {}, fold);
	}));
	showLiving();
}

// What is said of an animal beyond its number and name; made when somebody looks.
function fillStock(fold, line, index) {
	const s = sheet(), place = element("div", { class: "fields" }), rows = page.rows["stock line"].filter(({ key }) => key !== "species");
	page.fields.push(...fieldsInto(place, rows, page.rows.quantities, line, `animal-${index + 1}`, (key) => {
		wordsOf(s);
		showLiving();
		changed(key);
	}));
	fold.append(place, element("button", { type: "button", onclick: () => leave(index) }, `Take ${line.species} off`));
}

function leave(index) {
	const s = sheet();
	s.stock.splice(index, 1);
	wordsOf(s);
	readAnimals();
	changed("words");
	at("animals").focus();
}

// Who shows a sign, or died, lives there.
const ailing = (s) => s.signs.some(({ sign }) => sign) || Number(s.rest.deaths) > 0;

// For so long they have lived there, as the choice has it.
function liveThere(lived) {
	const s = sheet();
	s.lived = lived;
	page.livedRead = "";
	s.words = itemsOf(s.words).map((item) => item.replace(/^there:\s*|\s+since\s.*$/g, "")).join(", ");
	showWords();
	readAnimals();
}

const isWell = (s) => s.rest.deaths === "0" && !s.signs.some(({ sign }) => sign);

// What is asked only of a tank that runs.
function showLiving() {
	const s = sheet(), asked = (page.wait || []).some((name) => name.startsWith("sign.") || name === "animal.since");
	const living = asked || s.stock.some(({ since }) => since);
	at("living").hidden = !s.stock.length && !asked && !(page.wait || []).some((name) => name.startsWith("shop."));
	at("part-animals").hidden = at("living").hidden;
	at("lived").value = s.lived;
	at("coming-field").hidden = !s.lived;
	at("well").setAttribute("aria-pressed", String(isWell(s)));
	at("well-field").hidden = at("living-fields").hidden = at("wrong").hidden = !living;
	for (const field of page.fields.filter(({ home }) => home)) {
		if (living) { at("living-fields").append(field.box); } else { field.home.after(field.box); }
	}
}

function wireAnimals() {
	at("lived").replaceChildren(...LIVED.map(([words, says]) => new Option(says, words)));
	for (const [id, part] of [["animals", "words"], ["coming", "coming"]]) {
		at(id).addEventListener("input", () => {
			sheet()[part] = at(id).value;
			readAnimals(false);
			changed("words");
		});
	}
	at("lived").addEventListener("change", () => {
		liveThere(at("lived").value);
		changed("words");
	});
	at("well").addEventListener("click", () => {
		const s = sheet();
		if (isWell(s)) {
			delete s.rest.deaths;
		} else {
			s.rest.deaths = "0";
			s.signs = [{}];
		}
		buildFields();
		changed("words");
		at("well").focus();
	});
}
