// SPDX-License-Identifier: Apache-2.0
// The sheet: what is filled in, the question, the answer below it.

const at = (id) => document.getElementById(id);
// Readings that are asked for first; all others are behind "More readings".
const FIRST_READINGS = ["GH", "KH", "pH"];
const FIRST_OF_TANK = ["volume", "length", "width", "height", "cover", "substrate", "filter", "water_change"];
const FIRST_OF_ANIMALS = ["count", "since"];
const SHOP_READINGS = ["GH", "KH", "pH", "temperature"];
const WAIT_MS = 60, REST_MS = 300;

const page = { kept: null, rows: null, program: null, fields: [], question: null, waiting: 0 };

const sheet = () => page.kept.sheets[page.kept.open];
const row = (shape, key) => page.rows[shape].find((one) => one.key === key);

// A call with the files of the sheet that is open.
const ask = (words) => page.program.ask(words, sheet(), page.kept.open);

// ---- Filling in

function buildFields() {
	const s = sheet(), quantities = page.rows.quantities;
	s.signs[0] = s.signs[0] || {};
	const more = page.rows.reading.filter(({ key }) => !FIRST_READINGS.includes(key) && key !== "temperature");
	const water = page.rows.water.filter(({ key }) => key !== "kept");
	const into = (id, rows, values) => fieldsInto(at(id), rows, quantities, values, id, changed);
	page.fields = [
		...into("water-first", FIRST_READINGS.map((key) => row("reading", key)), s.reading),
		...into("water-more", more, s.reading),
		...into("tank-fields", FIRST_OF_TANK.map((key) => row("tank", key)), s.tank),
		...into("tank-more", page.rows.tank.filter(({ key }) => key !== "temperature" && !FIRST_OF_TANK.includes(key)), s.tank),
		...into("supply-fields", FIRST_READINGS.map((key) => row("reading", key)), s.supply),
		...into("shop-fields", SHOP_READINGS.map((key) => row("reading", key)), s.shop),
		...into("sign-fields", page.rows.sign.filter(({ key }) => key !== "species"), s.signs[0]),
		...into("plan-fields", page.rows.plan.filter(({ key }) => key !== "name"), s.rest)];
	const temperature = new Field(row("tank", "temperature"), quantities, s.tank, "water", changed);
	at("water-first").append(temperature.box);
	page.fields.push(temperature);
	const rest = water.map((one) => new Field(one, quantities, s.water, "water-of", changed));
	at("water-more").append(...rest.map((field) => field.box));
	// Whether it is the tank's own water changes every answer.
	at("water-first").prepend(rest.find((field) => field.row.key === "kind").box);
	page.fields.push(...rest);
	showStock();
}

function showStock() {
	const rest = page.rows["stock line"].filter(({ key }) => key !== "species" && !FIRST_OF_ANIMALS.includes(key));
	at("stock").replaceChildren(...sheet().stock.map((line, i) => {
		const first = element("div", { class: "fields" }), more = element("div", { class: "fields" });
		const into = (place, rows) => page.fields.push(
			...fieldsInto(place, rows, page.rows.quantities, line, `animal-${i + 1}`, changed));
		into(first, FIRST_OF_ANIMALS.map((key) => row("stock line", key)));
		into(more, rest);
		return element("li", {}, element("h3", {}, line.species), first,
			element("details", { class: "more" }, element("summary", {}, `More about ${line.species}`), more),
			element("button", { type: "button", onclick: () => leave(i) }, `Take ${line.species} off`));
	}));
}

function leave(index) {
	sheet().stock.splice(index, 1);
	showStock();
	changed();
	at("animal").focus();
}

// `rest`: what was typed behind it, which is asked about next.
function add(species, count, rest) {
	sheet().stock.push({ species, count: count || "1" });
	at("animal").value = rest || "";
	at("names").replaceChildren();
	at("names-said").textContent = `${species} is on the sheet.`;
	showStock();
	changed();
	if (rest) {
		complete();
		at("animal").focus();
	} else {
		at(`animal-${sheet().stock.length}-count`).focus();
	}
}

// What is typed comes first, then names that begin with it, then what shops sell; where no name is near,
// what the program would ask. "10 neon tetras" is a number and a plural.
const SOLD = ["everywhere", "often", "seldom", "rarely"];
const searchedFor = (text) => (page.program.json(["find", "--fixed", text]) || { found: [] }).found;

function complete() {
	const [one, rest] = firstOf(at("animal").value), [, count, text] = /^(\d*)\s*(.*)$/.exec(one), low = text.toLowerCase();
	at("names").replaceChildren();
	at("names-said").textContent = "";
	if (text.length < 2) { return; }
	const all = searchedFor(text), list = all.length || !/s$/.test(low) ? all : searchedFor(text.slice(0, -1));
	const near = ([common, matched]) => 2 * (common.toLowerCase() === low || matched.toLowerCase() === low) +
		matched.toLowerCase().startsWith(low);
	let found = list.map(({ common, matched, species, sold }) => [common || species, matched || common || species, species, SOLD.indexOf(sold)]);
	found.sort((a, b) => near(b) - near(a) || a[3] - b[3]);
	if (!found.length) {
		const { error } = page.program.ask(["why", text, "--GH", "8 dH"]);
		at("names-said").textContent = error.replace(/^tapshoal: /, "").trim();
		found = Array.from(error.matchAll(/(?:did you mean |, |or )([^,(?]+) \(([^)]+)\)/g), (one) => [one[1], one[1], one[2]]);
	}
	at("names").replaceChildren(...found.slice(0, 8).map(([common, matched, species]) => element("li", {},
		element("button", { type: "button", onclick: () => add(common, count, rest) },
			common === matched || matched === species ? common : `${common} (${matched})`,
			element("i", {}, ` ${species}`)))));
	if (rest) { at("names-said").textContent += ` First ${one}; then ${rest}.`; }
	if (found.length > 8) { at("names-said").textContent += ` ${found.length - 8} more: type on.`; }
}

// ---- The question and its answer

function changed(key) {
	if (key) { at("first").hidden = page.kept.seen = true; } // who fills in has found the sheet
	keepSheets(page.kept);
	showTold();
	showQuestions();
	if (key && page.wait) { showAsked(); }
	if (!page.question) { return; }
	clearTimeout(page.waiting);
	page.waiting = setTimeout(() => answer(), WAIT_MS);
}

function showTold() {
	const s = sheet(), say = (id, text) => { at(id).querySelector(".told").textContent = text; };
	say("part-water", [told(s.reading, page.rows.reading, 5), told({ temperature: s.tank.temperature },
		page.rows.tank, 1)].filter(Boolean).join(", "));
	say("part-tank", told({ ...s.tank, temperature: "" }, page.rows.tank, 4));
	say("part-supply", told(s.supply, page.rows.reading, 4));
	at("part-supply").hidden = !isOfTank(s);
	const kind = page.fields.find((field) => field.id === "water-of-kind");
	if (kind) { kind.doubt.textContent = ofTankUnsaid(s) ? "Taken as the tank's own: animals live in it, and waste was measured. If it is the tap's, choose tap." : ""; }
	say("part-shop", told(s.shop, page.rows.reading, 4));
	say("part-animals", s.stock.map((line) => `${line.count || "?"} ${line.species}`).join(", "));
}

function showQuestions() {
	const s = sheet(), can = [], later = [];
	for (const question of QUESTIONS) {
		const lacks = missing(question, s);
		if (lacks.length) {
			const need = NEEDS[lacks[0]];
			later.push(element("li", {}, element("button", { type: "button", onclick: () => lead(need) },
				`${question.says} `, element("i", {}, `needs ${lacks.map((one) => NEEDS[one].say).join(", ")}`))));
		} else {
			can.push(element("li", {}, element("button", { type: "button", "data-question": question.id,
				"aria-pressed": String(page.question === question), onclick: () => choose(question) }, question.says)));
		}
	}
	const held = document.activeElement && document.activeElement.dataset.question;
	at("questions").replaceChildren(...(can.length ? can : [element("li", {}, "Fill in what you know of the water first.")]));
	at("later").replaceChildren(...later);
	at("questions-later").hidden = !later.length;
	const back = held && at("questions").querySelector(`[data-question="${held}"]`);
	if (back) { back.focus(); }
}

// Opens the part in which something is missing.
function lead(need) {
	const part = at(need.part), field = part.querySelector(`[data-key="${need.key}"] input`) || part.querySelector("input");
	part.open = true;
	field.focus();
}

function choose(question) {
	page.question = question;
	page.kept.seen = true; // who asks has found the way
	at("first").hidden = true;
	keepSheets(page.kept);
	showQuestions();
	for (const part of document.querySelectorAll(".part")) { part.open = false; }
	answer();
	at("answer").focus({ preventScroll: true });
	at("answer").scrollIntoView();
}

function doubtfulField() {
	return page.fields.find((field) => field.doubtful && document.contains(field.box));
}

// What the folds hold: a moment later, or as soon as somebody looks for it.
function finishAnswer() {
	const rest = page.rest;
	clearTimeout(page.resting);
	page.rest = null;
	if (rest) { rest(); }
}

// The answer to the question that was chosen.
function answer() {
	clearTimeout(page.resting);
	page.rest = null;
	const place = at("answer"), question = page.question, doubt = doubtfulField();
	place.hidden = false;
	if (missing(question, sheet()).length || doubt) {
		place.replaceChildren(element("p", {}, doubt ? `First: ${doubt.doubt.firstChild.textContent}`
			: `This needs ${missing(question, sheet()).map((one) => NEEDS[one].say).join(", ")}.`));
		if (doubt) {
			doubt.box.closest("details.part").open = true;
			doubt.doubt.querySelector("button").focus();
		}
		return;
	}
	const words = question.words(sheet());
	const { code, out, error } = ask(words.concat("-f", "html", today()));
	place.className = question.paper ? "shop" : "";
	place.replaceChildren(code <= 1 ? fragmentOf(question.paper ? out : folded(out)) : refusal(error),
		...(code <= 1 && error ? [refusal(error)] : []), below(words));
	if (question.paper) { shortened(place); }
	page.makeNames = () => namesOpen(place, (species) =>
		ask(["why", species, ...waterWords(sheet()), ...tankWords(sheet()), "-f", "html", ...today()]));
	const look = filterLists(place);
	page.makeNames();
	page.rest = code <= 1 && !question.paper && (() => {
		unfolded(place, out);
		if (look) { look(); }
		page.makeNames();
	});
	page.resting = setTimeout(finishAnswer, REST_MS);
	const verdict = place.querySelector(".verdict");
	termsOpen(place, page.rows.glossary);
	at("answered").textContent = verdict ? verdict.textContent : "The answer is below.";
	mark(error);
}

// Fields whose value the program could not read.
function mark(error) {
	for (const field of page.fields) {
		const wrong = error.includes(`--${field.row.key} '`) || error.includes(`.${field.row.key}: `);
		field.input.setAttribute("aria-invalid", String(wrong));
	}
}

// What can be done with an answer.
function below(words) {
	const files = words.filter((word) => word.endsWith(".yaml"));
	const box = element("div", { class: "below" });
	const said = element("div", { role: "status" });
	box.append(element("p", { class: "row" },
		element("button", { type: "button", onclick: () => window.print() }, "Print"),
		element("button", { type: "button", onclick: () => saveAnswer(words) }, "Save this answer"),
		...(page.rows.commands[words[0]].formats.includes("brief") ? [element("button",
			{ type: "button", onclick: () => brief(words, said) }, "As a short text")] : [])),
	said,
	element("details", { class: "more" }, element("summary", {}, "The same on a terminal"),
		...files.map((name) => element("pre", { tabindex: "0" }, `# ${name}\n` + new TextDecoder().decode(page.program.files.get("/" + name)))),
		element("pre", { tabindex: "0" }, typed(words))));
	return box;
}

function save(name, text, type) {
	const link = element("a", { download: name, href: URL.createObjectURL(new Blob([text], { type })) });
	link.click();
	setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

function saveAnswer(words) {
	const { code, out, error } = ask(words.concat("-f", "html", today()));
	if (code > 1) {
		at("answer").prepend(refusal(error));
		return;
	}
	save(`${words[0]}.html`, out, "text/html");
	at("answer").querySelector(".below > [role=status]").textContent = `Saved as ${words[0]}.html, where this browser keeps what it downloads.`;
}

// A text to take along: in a field of its own, copied where the browser lets it be.
function showText(place, label, text) {
	const area = element("textarea", { rows: "6", readonly: true, "aria-label": label }, text);
	const button = element("button", { type: "button", onclick: () => copy(area, button) }, "Copy");
	place.replaceChildren(element("p", { class: "says" }, label), area, element("p", { class: "row" }, button));
}

async function copy(area, button) {
	area.select();
	try {
		await navigator.clipboard.writeText(area.value);
		button.textContent = "Copied";
	} catch (error) {
		button.textContent = "Marked: copy it by hand";
	}
}

function brief(words, place) {
	const { code, out, error } = ask(words.concat("-f", "brief", today()));
	if (code <= 1) { showText(place, "A short text to paste", out); } else { place.replaceChildren(refusal(error)); }
}

// ---- Reports, files, links

function readReport() {
	page.program.put("report.txt", at("report-text").value);
	const read = page.program.json(["read", "report.txt"]), place = at("report-said");
	if (!read) {
		place.replaceChildren(refusal(ofPasted(page.program.ask(["read", "report.txt"]).error)));
		return;
	}
	for (const { key, unit, low, high, value } of read.taken) {
		if (!row("reading", key)) { continue; }
		const figure = low !== null && high !== null && low !== high ? `${low}..${high}` : value;
		sheet().reading[key] = unit ? `${figure} ${unit}` : String(figure);
	}
	sheet().reading.method = "utility-report";
	place.replaceChildren(element("ul", { class: "plain" }, ...read.taken.map((one) => element("li", {},
			element("b", {}, `${one.key} ${one.printed}`), ` line ${one.line}`))),
		...reportText());
	place.prepend(...reportHead());
	buildFields();
	changed();
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
	page.question = null;
	at("answer").hidden = true;
	opened_();
	at("part-water").open = true;
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

const linkTo = (values, extra) => `${location.href.split("#")[0]}#${toLink(values, extra)}`;

// What to ask back is the program's; a link that opens this page goes with it where it has an address.
function askBack() {
	const id = at("ask-back").value, address = location.href.split("#")[0];
	const { out } = page.program.ask(["ask-back", id, ...(location.protocol === "file:" ? [] : ["--page", address])]);
	showText(at("ask-back-said"), "What to ask back", out.trim());
}

// "reading.GH": its row.
function rowOf(name) {
	const [part, key] = name.split(".");
	return Object.hasOwn(PARTS, part) && row(PARTS[part], key);
}

function valueOf(name) {
	const [part, key] = name.split("."), s = sheet();
	return (part === "animal" ? s.stock[0] || {} : part === "sign" ? s.signs[0] || {} : s[part])[key];
}

// Fields that a link waits for, and what becomes of them.
function showAsked() {
	const place = at("asked"), open = page.wait.filter((name) => !valueOf(name)), back = element("div", {});
	place.hidden = false;
	place.replaceChildren(element("p", {}, open.length ? `Asked of you: ${open.map((name) => labelled(name.split(".")[1])).join(", ")}.`
		: "All that was asked is filled in. Send this link back:"), back);
	if (open.length && open.length < page.wait.length) {
		back.before(element("p", { class: "says" }, "What you do not know stays empty. Then send this link back:"));
	}
	if (open.length < page.wait.length) { showText(back, "The filled link", linkTo(sheet(), { ask: page.asked })); }
	for (const field of page.fields) { field.box.classList.toggle("waits", open.includes(`${field.part}.${field.row.key}`)); }
	at("animal").classList.toggle("waits", open.includes("animal.species"));
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
	// What is poured in is asked for beside a sample of the tank.
	if (page.wait && page.wait.some((name) => name.startsWith("supply."))) { link.sheet.water.kind = link.sheet.water.kind || "tank"; }
	if (location.hash) { history.replaceState(null, "", location.href.split("#")[0]); }
}

function askLinked() {
	const question = QUESTIONS.find(({ id }) => id === page.asked);
	if (page.wait) {
		at("part-animals").open = page.wait.some((name) => name.startsWith("animal."));
		for (const field of page.fields.filter(({ part, row: { key } }) => page.wait.includes(`${part}.${key}`))) {
			for (let fold = field.box.closest("details"); fold; fold = fold.parentElement.closest("details")) { fold.open = true; }
		}
		showAsked();
	} else if (question && !missing(question, sheet()).length) {
		choose(question);
	}
}

// ---- Beginning

function wire() {
	at("sheet").addEventListener("submit", (event) => event.preventDefault());
	at("animal").addEventListener("input", () => {
		clearTimeout(page.completing);
		page.completing = setTimeout(complete, WAIT_MS);
	});
	at("answer").addEventListener("input", finishAnswer, true);
	at("answer").addEventListener("toggle", () => {
		finishAnswer();
		if (page.makeNames) { page.makeNames(); }
	}, true);
	window.addEventListener("beforeprint", finishAnswer);
	at("report-read").addEventListener("click", readReport);
	at("kept").addEventListener("change", () => {
		page.kept.open = at("kept").value;
		opened_();
	});
	at("kept-name").addEventListener("change", () => {
		rename(at("kept-name").value);
		showKept();
		changed();
	});
	at("keep-new").addEventListener("click", another);
	at("keep-drop").addEventListener("click", forget);
	at("save-water").addEventListener("click", () => save("water.yaml", yaml(waterFile(sheet())), "text/yaml"));
	at("save-plan").addEventListener("click", () => save("plan.yaml", yaml(planFile(sheet(), page.kept.open)), "text/yaml"));
	at("open").addEventListener("change", () => openFiles(Array.from(at("open").files)));
	at("link-make").addEventListener("click", () => showText(at("link-said"), "A link",
		linkTo(sheet(), { ask: page.question ? page.question.id : "" })));
	at("ask-back").replaceChildren(...QUESTIONS.filter(({ paper }) => !paper).map(({ id, says }) => new Option(says, id)));
	at("ask-back-make").addEventListener("click", askBack);
}

const bytesOf = (base64) => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));

async function unpacked(id) {
	const bytes = bytesOf(at(id).textContent);
	at(id).remove();
	const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
	return new Uint8Array(await new Response(stream).arrayBuffer());
}

// A browser compiles a function when it is first called: the first answer is not to wait for that.
function warmUp() {
	page.program.ask(["rank", "--GH", "8 dH", "-f", "html"]);
}

// From a web server the page can be kept; as a file it is kept already.
function keepPage() {
	if (document.querySelector("link[rel=manifest]") && navigator.serviceWorker) {
		navigator.serviceWorker.register("worker.js").catch(() => {});
	}
}

async function begin() {
	const [code, image] = await Promise.all([unpacked("program"), unpacked("records")]);
	const own = JSON.parse(at("own").textContent || "{\"records\":[],\"sheets\":[]}");
	page.program = new Program(await WebAssembly.compile(code), [image, ...own.records.map(bytesOf)]);
	page.rows = JSON.parse(page.program.call((running) => running.fields()).out);
	for (const question of QUESTIONS) { question.says = page.rows.questions[question.id] || question.says; }
	page.kept = addOwn(loadSheets(), own.sheets);
	takeLink();
	wire();
	opened_();
	at("version").textContent = `tapshoal ${page.rows.version}`;
	at("wait").hidden = true;
	at("sheet").hidden = at("tools").hidden = false;
	askLinked();
	firstVisit();
	keepPage();
	setTimeout(warmUp, WAIT_MS);
	document.documentElement.dataset.ready = "yes";
	window.readyAt = performance.now();
}

if (typeof document !== "undefined") {
	begin().catch((error) => {
		at("wait").textContent = `The program inside this page could not be started: ${error.message}. A newer browser may be needed.`;
	});
}
