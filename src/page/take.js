// SPDX-License-Identifier: Apache-2.0
// What comes in from elsewhere and goes there: pasted reports, files, links, the sheets that are kept.

function readReport() {
	const place = at("report-said"), s = sheet();
	for (const key of page.reported || []) { delete s.reading[key]; } // what the text said before
	page.reported = [];
	page.program.put("report.txt", at("report-text").value);
	const read = at("report-text").value.trim() && page.program.json(["read", "report.txt"]);
	if (!read) {
		place.replaceChildren(at("report-text").value.trim() ? refusal(ofPasted(page.program.ask(["read", "report.txt"]).error)) : "");
		buildFields();
		changed("report");
		return;
	}
	for (const { key, unit, low, high, value } of read.taken) {
		if (!row("reading", key)) { continue; }
		const short = (number) => (typeof number === "number" ? Number(number.toFixed(2)) : number); // it was turned into our unit
		const figure = low !== null && high !== null && low !== high ? `${short(low)}..${short(high)}` : short(value);
		s.reading[key] = unit ? `${figure} ${unit}` : String(figure);
		page.reported.push(key);
	}
	s.reading.method = "utility-report";
	page.reported.push("method");
	place.replaceChildren(element("ul", { class: "plain" }, ...read.taken.map((one) => element("li", {},
			element("b", {}, `${one.key} ${one.printed}`), ` line ${one.line}`))),
		...reportText());
	place.prepend(...reportHead());
	buildFields();
	changed("report");
}

// What the program says above its values: wrapped lines, a sentence begins with a capital.
function reportHead() {
	const head = page.program.ask(["read", "report.txt"]).out.split("readings:")[0];
	return ofPasted(head).replace(/^# ?/gm, "").trim().split(/\n(?=[A-Z])/).map((text) => element("p", {}, text));
}

// What was pasted is no file to who pasted it.
const ofPasted = (text) => text.replace(/\breport\.txt:(\d+)(:\d+)?/g, "line $1").replace(/\breport\.txt\b/g, "what you pasted");

// The program's own words about what was asked or left out.
function reportText() {
	const said = page.program.ask(["read", "report.txt"]);
	return [element("details", { class: "more" }, element("summary", {}, "Line by line"),
		element("pre", { tabindex: "0" }, ofPasted(said.out + said.error)))];
}

// What a plan names is laid where the plan looks for it, if it was opened with it.
function layBeside(texts) {
	for (const text of texts.values()) {
		for (const named of namedFiles(text)) {
			const beside = texts.get(named.split("/").pop());
			if (beside) { page.program.put(normal(OPENED + named).slice(1), beside); }
		}
	}
}

const OPENED = "/opened/by/the/user/";
async function openFiles(list) {
	const plain = new Map(), texts = [], read = new Map();
	const say = (node) => at("open-said").replaceChildren(node);
	for (const file of list) { read.set(file.name.split("/").pop(), await file.text()); }
	layBeside(read);
	for (const [name, text] of read) {
		page.program.put(`${OPENED.slice(1)}opened.yaml`, text);
		const { code, out } = page.program.call((running) => running.plain(`${OPENED}opened.yaml`));
		if (code) { return say(refusal(`${name}: ${out}`)); }
		plain.set(name, fromYaml(out));
		texts.push(out);
	}
	const next = structuredClone(sheet());
	try {
		texts.sort((a, b) => a.startsWith("# plan") - b.startsWith("# plan"));
		const called = texts.map((text) => takeFile(next, text, plain)).filter(Boolean);
		rename(called[called.length - 1] || page.kept.open);
	} catch (error) {
		return say(refusal(`The plan names ${error.message}: open both files together.`));
	}
	page.kept.sheets[page.kept.open] = next;
	opened_();
	return say(element("p", {}, `Opened: ${Array.from(plain.keys()).join(", ")}`));
}

// A sheet as it now stands, into all fields.
function opened_() {
	const s = sheet();
	s.words = s.words || s.stock.map(typedAnimal).join(", "); // those that are planned among them, too
	page.chosen = page.auto = null;
	page.reported = [];
	buildFields();
	showKept();
	changed();
}

function rename(name) {
	const open = page.kept.open, wanted = name.trim() || open;
	if (wanted === open) { return; }
	let free = wanted;
	for (let i = 2; Object.hasOwn(page.kept.sheets, free); i++) { free = `${wanted} ${i}`; }
	page.kept.sheets[free] = page.kept.sheets[open];
	delete page.kept.sheets[open];
	page.kept.open = free;
}

function another() {
	let name = "another tank";
	for (let i = 2; Object.hasOwn(page.kept.sheets, name); i++) { name = `another tank ${i}`; }
	page.kept.sheets[name] = emptySheet();
	page.kept.open = name;
	opened_();
	for (const part of ["part-water", "part-tank", "part-animals"]) { at(part).open = true; }
}

function forget() {
	delete page.kept.sheets[page.kept.open];
	if (!Object.keys(page.kept.sheets).length) { page.kept.sheets["my tank"] = emptySheet(); }
	[page.kept.open] = Object.keys(page.kept.sheets);
	opened_();
}

function showKept() {
	at("kept").replaceChildren(...Object.keys(page.kept.sheets).map((name) =>
		new Option(name, name, false, name === page.kept.open)));
	at("kept-name").value = page.kept.open;
}

// Where the page lies on the web: here, or where somebody says it does; as a file it has no address for others.
const addressOf = () => page.kept.address || location.href.split("#")[0];
const linkTo = (values, extra) => `${addressOf()}#${toLink(values, extra)}`;

// What to ask back is the program's; a link that opens this page goes with it where it has an address.
function askBack() {
	const id = at("ask-back").value, local = location.protocol === "file:" && !page.kept.address;
	const { out } = page.program.ask(["ask-back", id, ...(local ? [] : ["--page", addressOf()])]);
	showText(at("ask-back-said"), "What to ask back", out.trim());
	at("ask-back-said").querySelector(".row").append(element("button", { type: "button", onclick: () => printAskBack(id) }, "Print it"));
}

// On paper it stands in the place of an answer.
function printAskBack(id) {
	at("answer").replaceChildren(fragmentOf(page.program.ask(["ask-back", id, "-f", "html"]).out));
	at("answer").hidden = false;
	window.print();
}

// "reading.GH": its row.
function rowOf(name) {
	const [part, key] = name.split(".");
	return Object.hasOwn(PARTS, part) && row(PARTS[part], key);
}

function valueOf(name) {
	const [part, key] = name.split("."), s = sheet();
	if (name === "animal.since" && (s.stock[0] || {}).since === "unknown") { return ""; }
	return (part === "animal" ? s.stock[0] || {} : part === "sign" ? s.signs[0] || {} : part === "plan" ? s.rest : s[part])[key];
}

// The program's row of what a link asks, or of what was seen.
const askedQuestion = () => [page.seen, page.asked].filter((id) => Object.hasOwn(page.rows.questions, id))
	.map((id) => page.rows.questions[id])[0] || {};

// What a link asks for and nobody has filled in, as the question asks it, in its order.
function askedOpen() {
	const { asks = [] } = askedQuestion();
	const alone = page.wait.filter((name) => !asks.some(({ fields }) => fields.includes(name)));
	return asks.concat(alone.map((name) => ({ says: labelled(name.split(".").pop()), fields: [name] })))
		.map(({ says, fields }) => ({ says, fields: fields.filter((name) => page.wait.includes(name) && !valueOf(name)) }))
		.filter(({ fields }) => fields.length);
}

// Where it is filled in.
function askedPlace(name) {
	const field = page.fields.find(({ part, row: { key } }) => name === `${part}.${key}`);
	return field ? field.input : at(name === "animal.since" ? "lived" : "animals");
}

// Fields that a link waits for, and what becomes of them.
function showAsked() {
	const place = at("asked"), open = askedOpen(), { first } = askedQuestion(), waiting = open.flatMap(({ fields }) => fields), back = element("div", {});
	place.hidden = false;
	place.replaceChildren(...(first ? [element("p", {}, first)] : []), element("p", {}, open.length ? "You are asked:" : "All that was asked is filled in. Send this link back:"),
		element("ul", { class: "plain" }, ...open.map(({ says, fields: [first] }) => element("li", {},
			element("button", { type: "button", class: "asks", onclick: () => toField(askedPlace(first)) }, says)))), back);
	const begun = waiting.length < page.wait.length;
	if (open.length && begun) {
		back.before(element("p", { class: "says" }, "What you do not know stays empty. Then send this link back:"));
	}
	if (begun) { showText(back, "The filled link", linkTo(sheet(), { ask: page.asked })); }
	at("sheet").classList.add("asking");
	for (const field of page.fields) {
		const name = `${field.part}.${field.row.key}`;
		field.box.classList.toggle("waits", waiting.includes(name));
		field.box.classList.toggle("awaited", page.wait.includes(name));
	}
	at("animals").classList.toggle("waits", waiting.includes("animal.species"));
	at("lived").classList.toggle("waits", waiting.includes("animal.since"));
}

function takeLink(fragment = location.hash.slice(1)) {
	const link = fragment && fromLink(fragment, page.rows);
	if (!link) { return; }
	let name = "from a link";
	for (let i = 2; Object.hasOwn(page.kept.sheets, name); i++) { name = `from a link ${i}`; }
	page.kept.sheets[name] = link.sheet;
	page.kept.open = name;
	page.kept.seen = true;
	page.wait = link.wait.length ? link.wait.filter(rowOf) : null;
	page.asked = link.ask;
	page.seen = link.seen;
	// Who is asked since when they live there, or what is wrong with them, lives there; the choice says so, to be put right.
	const runs = (page.wait || []).some((name) => /^(sign|plan)\./.test(name) || name === "animal.since");
	if (runs) { link.sheet.lived = link.sheet.lived || THERE; }
	// The water that is read is the tank's then, and so beside what is poured in.
	if (runs || (page.wait || []).some((name) => name.startsWith("supply."))) { link.sheet.water.kind = link.sheet.water.kind || "tank"; }
	if (location.hash) { history.replaceState(null, "", location.href.split("#")[0]); }
}

function askLinked() {
	at("sheet").classList.toggle("asking", Boolean(page.wait));
	const question = QUESTIONS.find(({ id }) => id === page.asked);
	if (page.wait) {
		for (const field of page.fields.filter(({ part, row: { key } }) => page.wait.includes(`${part}.${key}`))) {
			unfold(field.box);
		}
		showAsked();
	} else if (question && !missing(question, sheet()).length) {
		choose(question);
	}
}
