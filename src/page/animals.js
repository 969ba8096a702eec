// SPDX-License-Identifier: Apache-2.0
// The animals in one field of words, as on the terminal: "10 neon tetras, 2 bettas". What they mean is
// the program's to say; here they are parted, and what is not clear is asked about in place.

// "8 platies, 2 angelfish", "8 platies and 2 angelfish", a line each.
const PARTED = /\s*[,;\n]+\s*|\s+and\s+(?=\d)/;
const SINCE = /\s(for|since)\s/;
// For how long: what stands behind a name in a call.
const LIVED = [["", "not yet: only planned"], ["for 3 weeks", "for some weeks"], ["for 6 months", "for months"],
	["for 2 years", "for a year or longer"]];

const itemsOf = (text) => text.split(PARTED).map((item) => item.trim()).filter(Boolean);

// An animal of the sheet as it is typed.
const typedAnimal = ({ species, count, since }) => `${count || 1} ${species}${since ? ` since ${since}` : ""}`;

// The words behind which a call takes those that live there, and those that are planned.
const animalWords = (sheet) => sheet.stock.flatMap((line) => (line.since ? ["--there", typedAnimal(line)] : [typedAnimal(line)]));

// Whoever goes on typing is not asked again about what stands before.
const KNOWN_MOST = 200, known = new Map();
function readItem(item, lived) {
	const words = lived && !SINCE.test(item) ? `${item} ${lived}` : item;
	if (known.size > KNOWN_MOST) { known.clear(); }
	if (!known.has(words)) { known.set(words, page.program.call((running) => running.animals(words, today()[1])).out); }
	return { item, ...JSON.parse(known.get(words)) };
}

// What is typed becomes the stock; what a file or a field said beyond the words stays.
function readAnimals() {
	const s = sheet(), before = new Map(s.stock.map((line) => [line.species, line]));
	const read = itemsOf(s.words).map((item) => readItem(item, s.lived));
	s.stock = read.filter(({ line }) => line).map(({ line }) => {
		const { sex, origin, size } = before.get(line.species) || {};
		return { ...(sex && { sex }), ...(origin && { origin }), ...(size && { size }), ...line, count: String(line.count) };
	});
	page.read = read;
	page.unclear = read.some(({ name }) => !name);
	showNames();
	showStock();
}

// What is not clear, with whom it may mean as buttons.
function showNames() {
	at("names").replaceChildren(...page.read.flatMap((one) => {
		if (!one.says) { return []; }
		const list = one.choices || [];
		return [element("p", { class: "says" }, list.length ? `${one.item}: which?` : one.says), element("ul", { class: "plain choices" },
			...list.map(({ name, species }) => element("li", {}, element("button", { type: "button", onclick: () => take(one, name) },
				name, ...(name === species ? [] : [element("i", {}, ` ${species}`)])))))];
	}));
}

// A name that was chosen goes where the unclear one stood.
function take({ item, line }, name) {
	const s = sheet();
	s.words = s.words.replace(item, () => item.replace(line.species, () => name));
	at("animals").value = s.words;
	readAnimals();
	changed("words");
	at("animals").focus();
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
		s.words = s.stock.map(typedAnimal).join(", ");
		at("animals").value = s.words;
		showLiving();
		changed(key);
	}));
	fold.append(place, element("button", { type: "button", onclick: () => leave(index) }, `Take ${line.species} off`));
}

function leave(index) {
	const s = sheet();
	s.stock.splice(index, 1);
	s.words = s.stock.map(typedAnimal).join(", ");
	at("animals").value = s.words;
	readAnimals();
	changed("words");
	at("animals").focus();
}

const isWell = (s) => s.rest.deaths === "0" && !s.signs.some(({ sign }) => sign);

// What is asked only of a tank that runs.
function showLiving() {
	const s = sheet(), asked = (page.wait || []).some((name) => name.startsWith("sign.") || name === "animal.since");
	const living = asked || s.stock.some(({ since }) => since);
	at("living").hidden = !s.stock.length && !asked && !(page.wait || []).some((name) => name.startsWith("shop."));
	at("lived").value = s.lived;
	at("well").setAttribute("aria-pressed", String(isWell(s)));
	at("well-field").hidden = at("living-fields").hidden = at("wrong").hidden = !living;
	for (const field of page.fields.filter(({ home }) => home)) { (living ? at("living-fields") : field.home).append(field.box); }
}

function wireAnimals() {
	at("lived").replaceChildren(...LIVED.map(([words, says]) => new Option(says, words)));
	at("animals").addEventListener("input", () => {
		sheet().words = at("animals").value;
		readAnimals();
		changed("words");
	});
	at("lived").addEventListener("change", () => {
		const s = sheet();
		s.lived = at("lived").value;
		s.words = itemsOf(s.words).map((item) => item.replace(/\s+since\s.*$/, "")).join(", ");
		at("animals").value = s.words;
		readAnimals();
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
