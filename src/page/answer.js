// SPDX-License-Identifier: Apache-2.0
// The questions as calls of the program, and its answers as part of the page. Whatever is judged or
// said comes from there; here stands only which words make which call.

// What a question needs before it can be asked; `say` names what is missing, `part` where it is.
const NEEDS = {
	water: { part: "part-water", say: "GH or KH of the water", key: "GH",
		has: (s) => Boolean(s.reading.GH || s.reading.KH || s.reading.alkalinity || s.reading.Ca || s.reading.conductivity) },
	kh: { part: "part-water", say: "KH and pH", key: "KH",
		has: (s) => Boolean((s.reading.KH || s.reading.alkalinity) && s.reading.pH) },
	size: { part: "part-tank", say: "the sides of the tank (like 100x40x40)", key: "size",
		has: (s) => /x/i.test(s.tank.size || "") || Boolean(s.tank.length && s.tank.width && s.tank.height) },
	room: { part: "part-tank", say: "the litres or the sides of the tank", key: "size",
		has: (s) => Boolean(litresOf(s)) || NEEDS.size.has(s) },
	animals: { part: "part-ask", say: "animals", key: "species", has: (s) => s.stock.length > 0 },
	living: { part: "part-animals", say: "animals that live there, and for how long", key: "species",
		has: (s) => s.stock.some((line) => line.since) },
	asked: { part: "part-ask", say: "a question in words", has: (s) => Boolean(s.asked) },
	shop: { part: "part-shop", say: "the shop's water", key: "GH", has: (s) => Object.keys(s.shop).length > 0 },
};

// Only keys of the water itself that no flag takes need a file, and readings of several days.
const waterNeedsFile = (sheet) => Boolean(sheet.water.kind || sheet.water.disinfectant || sheet.older.length);

// The water as flags, or as a file where a flag cannot say it.
function waterWords(sheet) {
	const words = [];
	if (waterNeedsFile(sheet)) {
		words.push("-w", "water.yaml");
	} else {
		for (const [key, text] of Object.entries(sheet.reading)) { words.push(`--${key}`, text); }
		if (sheet.water.softened === "yes") { words.push("--softened"); }
	}
	return words;
}

function tankWords(sheet) {
	if (NEEDS.size.has(sheet)) { return ["-t", "tank.yaml"]; }
	return sheet.tank.temperature ? ["--temperature", sheet.tank.temperature] : [];
}

const litresOf = (sheet) => sheet.tank.volume || (/x/i.test(sheet.tank.size || "") ? "" : sheet.tank.size);

// Litres alone have sides assumed, which only flags can ask for.
function roomWords(sheet) {
	if (NEEDS.size.has(sheet) || !litresOf(sheet)) { return tankWords(sheet); }
	return ["--volume", litresOf(sheet), ...tankWords(sheet)];
}

// What is made other is the water that is poured in, where it was read beside the tank's.
const pouredIn = (sheet) => (sheet.supply.GH || sheet.supply.KH ? { ...sheet, reading: sheet.supply, water: {}, older: [] } : sheet);

const subject = (sheet) => (waterNeedsFile(sheet) ? ["water.yaml"] : waterWords(sheet));
const names = (sheet) => sheet.stock.map((line) => line.species);
const repeated = (flag, list) => list.flatMap((one) => [flag, one]);

// What they say comes from the program (answers/ask_back.c), but for two that are of the page alone: the shop's, and
// what a sentence asks that is none of them.
const QUESTIONS = [
	{ id: "asked", says: "What you asked", needs: ["asked"], words: () => ["check", "plan.yaml"] },
	{ id: "rank", needs: ["water"],
		words: (s) => ["rank", ...waterWords(s), ...roomWords(s)] },
	{ id: "fits", needs: ["water", "room"],
		words: (s) => ["propose", ...waterWords(s), ...roomWords(s), ...(NEEDS.size.has(s) ? [] :
			[...(s.tank.filter === "mature" ? ["--mature"] : []), ...(s.tank.cover === "yes" ? ["--lid"] : [])])] },
	{ id: "together", needs: ["animals"], words: () => ["check", "plan.yaml"] },
	{ id: "tank", needs: ["living"], words: () => ["check", "plan.yaml"] },
	{ id: "shop", says: "To take to the shop", needs: ["water"], paper: true,
		words: (s) => QUESTIONS.find(({ id }) => id === (s.stock.length ? "together" : s.looked === "rank" || !NEEDS.room.has(s) ? "rank" : "fits")).words(s) },
	{ id: "why", needs: ["water", "animals"],
		words: (s) => ["why", ...names(s), ...waterWords(s), ...tankWords(s)] },
	{ id: "water", needs: ["water"], words: (s) => ["water", ...subject(s)] },
	{ id: "remake", needs: ["water", "animals"],
		words: (s) => ["remake", ...repeated("--for", names(s)), ...waterWords(pouredIn(s)),
			...(litresOf(s) ? ["--volume", litresOf(s)] : [])] },
	{ id: "arrive", needs: ["water", "animals", "shop"],
		words: (s) => ["arrive", ...repeated("--with", names(s)), "--shop", "shop.yaml", "--hours", "1 h", ...waterWords(s)] },
	{ id: "drift", needs: ["animals", "size", "water"],
		words: () => ["drift", "plan.yaml"] },
	{ id: "due", needs: ["living", "room"], words: () => ["due", "plan.yaml"] },
	{ id: "titrate", needs: ["kh"],
		words: (s) => ["titrate", ...subject(s), ...(s.tank.temperature ? ["--temperature", s.tank.temperature] : [])] },
];

const SHOP = QUESTIONS.find(({ id }) => id === "shop");
const missing = (question, sheet) => question.needs.filter((need) => !NEEDS[need].has(sheet));

// A call as it is typed: what is more than a word stands in quotes.
function typed(words) {
	return ["tapshoal"].concat(words.map((word) =>
		(/^[A-Za-z0-9_@%+=:,./-]+$/.test(word) ? word : `'${word.replace(/'/g, "'\\''")}'`))).join(" ");
}

// The program with the files of a sheet beside it; one answer a call.
class Program {
	constructor(module, images) {
		this.files = new MemoryFiles();
		this.said = [[], [], []];
		const streams = { read: () => new Uint8Array(0),
			write: (file, bytes) => this.said[file].push(bytes.slice()) };
		this.module = module;
		this.images = images;
		this.system = () => new System(this.files, ["LC_ALL=C.UTF-8"], streams);
		this.start();
	}
	start() {
		this.running = startProgram(this.module, this.system());
		for (const image of this.images) {
			if (this.running.load(image)) { throw new Error("the records cannot be read"); }
		}
	}
	text(file) {
		return new TextDecoder().decode(joined(this.said[file]));
	}
	// A program that broke is started anew; the call that broke it has no answer.
	call(run) {
		this.said = [[], [], []];
		try {
			const code = run(this.running);
			return { code, out: this.text(1), error: this.text(2) };
		} catch (error) {
			this.start();
			return { code: 3, out: "", error: `tapshoal: this could not be answered (${error.message})\n` };
		}
	}
	put(name, text) {
		this.files.put("/" + name, new TextEncoder().encode(text));
	}
	ask(words, sheet, name) {
		if (sheet) {
			this.put("water.yaml", yaml(waterFile(sheet)));
			this.put("tank.yaml", yaml(sheet.tank));
			this.put("plan.yaml", yaml(planFile(sheet, name)));
			this.put("shop.yaml", yaml({ readings: [sheet.shop] }));
		}
		return this.call((running) => running.ask(words));
	}
	json(words, sheet) {
		const { code, out } = this.ask(words.concat("-f", "json"), sheet);
		return code <= 1 && out ? JSON.parse(out) : null;
	}
}

function joined(chunks) {
	const all = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
	chunks.reduce((at, chunk) => (all.set(chunk, at), at + chunk.length), 0);
	return all;
}

// The day of this device: the program's clock knows no place.
function today() {
	const now = new Date(), two = (figure) => String(figure).padStart(2, "0");
	return ["--today", `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`];
}

// Without what would be typed on a terminal: it is of no use here. A call becomes its question's words.
const ASKED_BY = { check: "together", propose: "fits" };
const untyped = (text) => text.replace(/; naming it asks for it \(--with\)| \(--[^)<]*\)/g, "")
	.replace(/tapshoal ([a-z]+)( --[^.;<]*)?/g, (call, name) => {
		const question = QUESTIONS.find(({ id }) => id === (ASKED_BY[name] || name));
		return question ? `"${question.says}"` : call;
	});

// What stands inside the page that the program wrote, without its head and title. Its script never
// runs: it is parsed as a document of its own.
function fragmentOf(page) {
	const inside = untyped(page.slice(page.indexOf("<main>"), page.lastIndexOf("</main>")));
	const main = new DOMParser().parseFromString(inside, "text/html").querySelector("main");
	const nodes = Array.from(main.childNodes).filter((node) => node.nodeName !== "H1");
	const fragment = document.createDocumentFragment();
	fragment.append(...nodes);
	return fragment;
}

// The first time that a term stands in an answer it opens its sentence and its paragraph in place.
const TERM_NODES_MOST = 500;
function termsOpen(place, glossary) {
	const sentences = new Map(glossary.flatMap(({ forms, says, more }) => forms.map((form) => [form, { name: forms[0], says: `${says} ${more}` }])));
	const terms = new RegExp(`(^|[^\\p{L}\\p{N}-])(${Array.from(sentences.keys()).join("|")})(?![\\p{L}\\p{N}-])`, "u");
	const walker = document.createTreeWalker(place, NodeFilter.SHOW_TEXT), nodes = [], met = new Set();
	while (nodes.length < TERM_NODES_MOST && walker.nextNode()) { nodes.push(walker.currentNode); }
	for (const node of nodes) {
		const found = terms.exec(node.data);
		if (!found || node.parentElement.closest("button, a, summary, label, pre, svg, th, option, i, .paper, details:not([open])")) { continue; }
		const { name, says } = sentences.get(found[2]);
		if (met.has(name)) { continue; }
		met.add(name);
		const word = node.splitText(found.index + found[1].length);
		word.splitText(found[2].length);
		const button = element("button", { type: "button", class: "term", "aria-expanded": "false" }, found[2]);
		button.addEventListener("click", () => termOpened(button, name, says));
		word.replaceWith(button);
	}
}

function termOpened(button, name, says) {
	const block = button.closest("p, li, dd, dt, tr, h2, h3, figcaption, div");
	const host = block.matches("tr, dt, dd") ? block.closest("table, dl") : block, there = host.nextElementSibling;
	const open = there && there.dataset.term === name;
	button.setAttribute("aria-expanded", String(!open));
	if (open) {
		there.remove();
	} else {
		host.after(element(host.matches("li") ? "li" : "p", { class: "says term-says", "data-term": name }, element("b", {}, `${name}:`), ` ${says}`));
	}
}

// A page whose folds hold no entries yet: they are most of it, and nobody sees them at once.
const folded = (page) => page.replace(/<details>[^]*?<\/details>/g, (fold) => {
	const from = fold.indexOf("<li"), to = fold.lastIndexOf("</li>");
	return from < 0 || to < from ? fold : fold.slice(0, from) + fold.slice(to + 5);
});

// What was left out, into the folds that are there.
function unfolded(place, page) {
	const foldsOf = (parent) => Array.from(parent.children).filter((child) => child.matches("details"));
	const whole = foldsOf(fragmentOf(page));
	foldsOf(place).forEach((fold, i) => fold.replaceChildren(...whole[i].childNodes));
}

// What the program refused, in its own words.
function refusal(error) {
	const lines = error.trim().split("\n").map((line) => line.replace(/^tapshoal: |^\S*\.yaml:\d+:\d+: /g, "").replace(/^(water\.|tank\.)?(readings\[\d+\]\.)?/, "").replace(/ \[(error|warning|note), [^\]]*\]$/, "").replace(/--([A-Za-z0-9-]+) '/g, "$1 '"));
	return element("div", { class: "refused" }, ...lines.map((line) => element("p", {}, line)));
}

// Every animal of a list opens its reasons in place; `ask` makes the call. What is in a fold is made
// ready when it is opened: there may be hundreds.
function namesOpen(place, ask) {
	for (const name of place.querySelectorAll(".entries > li > b")) {
		if (name.closest("details:not([open])")) { continue; }
		const button = element("button", { type: "button", class: "name", "aria-expanded": "false" }, name.textContent);
		const scientific = /\(([A-Z][^)]+)\)/.exec(name.textContent);
		button.addEventListener("click", () => opened(button, scientific ? scientific[1] : name.textContent, ask));
		if (name.nextSibling) { name.nextSibling.textContent = name.nextSibling.textContent.replace(/^: /, ""); }
		name.replaceWith(button);
	}
}

function opened(button, species, ask) {
	const item = button.closest("li"), there = item.querySelector(":scope > .inside");
	button.setAttribute("aria-expanded", String(!there));
	if (there) {
		there.remove();
		return;
	}
	const inside = element("div", { class: "inside" }), { code, out, error } = ask(species);
	inside.append(code <= 1 ? fragmentOf(out) : refusal(error));
	inside.querySelectorAll(".paper, .see, .key, [id]").forEach((node) => node.remove());
	inside.querySelectorAll("h2").forEach((head) => head.replaceWith(element("h3", { class: head.className }, ...head.childNodes)));
	item.append(inside);
}

// The animals that somebody narrowed a list down to; null: nobody did.
const nameIn = (item) => item.querySelector("b, .name").textContent;
const narrowedTo = (place) => place.querySelector("form.chosen") &&
	new Set(Array.from(place.querySelectorAll(".tagged > li:not([hidden])"), nameIn));

// Into a shop go the own water, what to ask, and the animals that suit it; not who is excluded, and of a
// list that was narrowed down what was left of it.
function shortened(place, narrowed) {
	Array.from(place.querySelectorAll(".tagged")).slice(1).forEach((list) => {
		const head = list.previousElementSibling;
		if (head && head.matches("h2")) { head.remove(); }
		(list.closest("details") || list).remove();
	});
	for (const item of narrowed ? place.querySelectorAll(".tagged > li") : []) {
		if (!narrowed.has(nameIn(item))) { item.remove(); }
	}
}
