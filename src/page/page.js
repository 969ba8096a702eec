// SPDX-License-Identifier: Apache-2.0
// The sheet: what is filled in, the question, the answer below it.

const at = (id) => document.getElementById(id);
// What is asked for first; all else is in the folds.
const FIRST_READINGS = ["GH", "KH", "pH"];
const OF_TANK = ["cover", "substrate", "filter", "water_change", "feeding"];
const POURED_READINGS = [...FIRST_READINGS, "NO3"];
const SHOP_READINGS = ["GH", "KH", "pH", "temperature"];
const LETTERS_LARGE = 110; // of a first line in large letters
const TEXT_PX_MOST = 640; // of a text to take along; beyond it scrolls
const FIRST_NEED = "Fill in what you know of the water first.";
const WAIT_MS = 20, TYPING_MS = 700, REST_MS = 300;

const page = { kept: null, rows: null, program: null, fields: [], read: [], unread: [], unclear: [], figures: [], question: null, chosen: null, auto: null, waiting: 0 };

const sheet = () => page.kept.sheets[page.kept.open];
const row = (shape, key) => page.rows[shape].find((one) => one.key === key);

// A call with the files of the sheet that is open.
const ask = (words) => page.program.ask(words, sheet(), page.kept.open);

// ---- Filling in

function buildFields() {
	const s = sheet(), quantities = page.rows.quantities;
	s.signs[0] = s.signs[0] || {};
	const into = (id, rows, values, prefix) => fieldsInto(at(id), rows, quantities, values, prefix || id, changed);
	const of = (shape, keys) => keys.map((key) => row(shape, key));
	const without = (shape, keys) => page.rows[shape].filter(({ key }) => !keys.includes(key));
	page.fields = [
		...into("water-first", of("reading", FIRST_READINGS), s.reading),
		...into("water-more", [...of("reading", ["NO3", "NO2", "ammonia"]), ...without("reading", [...FIRST_READINGS, "temperature", "NO3", "NO2", "ammonia"])], s.reading),
		...into("tank-first", of("tank", ["size"]), s.tank, "tank-fields"),
		...into("tank-fields", of("tank", OF_TANK), s.tank),
		...into("tank-more", without("tank", ["temperature", "size", ...OF_TANK]), s.tank),
		...into("supply-fields", of("reading", POURED_READINGS), s.supply),
		...into("shop-fields", of("reading", SHOP_READINGS), s.shop),
		...into("sign-fields", without("sign", ["species"]), s.signs[0]),
		...into("plan-fields", without("plan", ["name"]), s.rest)];
	const more = (one, values, prefix, place) => {
		const field = new Field(one, quantities, values, prefix, changed);
		at(place).append(field.box);
		page.fields.push(field);
	};
	more(row("tank", "temperature"), s.tank, "water", "water-first");
	for (const one of without("water", ["kept"])) { more(one, s.water, "water-of", "water-more"); }
	// A running tank is asked for these at once.
	at("living-fields").replaceChildren();
	for (const field of page.fields.filter(({ id }) => ["water-more-NO3", "tank-fields-water_change"].includes(id))) {
		field.home = document.createComment(""); // where it stands while nobody lives there
		field.box.before(field.home);
	}
	at("no-figure-words").replaceChildren(...hardnessWords(page.fields.find(({ id }) => id === "water-first-GH")));
	showWords();
	readAnimals();
}

// ---- The question and its answer

// What is answered where nobody chose: the question that what is filled in lies nearest to.
function nearest(s) {
	const order = s.asked ? ["asked"] : s.stock.length && s.stock.every(({ since }) => since) ? ["tank"] : s.stock.length ? ["together"] : ["fits", "rank"];
	return order.map((id) => QUESTIONS.find((one) => one.id === id)).find((one) => !missing(one, s).length) || null;
}

function changed(key) {
	if (key) { at("first").hidden = page.kept.seen = true; } // who fills in has found the sheet
	if (ailing(sheet()) && !sheet().lived) { liveThere(THERE); }
	keepSheets(page.kept);
	const auto = nearest(sheet());
	if (auto !== page.auto) { page.chosen = null; } // more is known: the question is another one
	page.auto = auto;
	page.question = page.chosen || auto;
	showTold();
	showQuestions();
	if (key && page.wait) { showAsked(); }
	clearTimeout(page.waiting);
	const typing = page.unclear.length && [at("animals"), at("coming")].includes(document.activeElement);
	if (typing && (page.question || unfinished())) { showUnclear(); }
	page.waiting = setTimeout(() => (typing || page.figures.length ? readWhole() : answer()), typing ? TYPING_MS : WAIT_MS);
}

// What was no list of names may be a sentence, with figures for other fields.
function readWhole() {
	const before = JSON.stringify([page.figures, page.unclear]);
	readAnimals();
	if (JSON.stringify([page.figures, page.unclear]) === before) { return answer(); }
	buildFields();
	changed("words");
	clearTimeout(page.waiting);
	return answer();
}

// What was typed is finished: its answer on the screen, or what it still needs.
function go() {
	page.chosen = null;
	clearTimeout(page.waiting);
	readWhole();
	const unclear = page.read.find(({ name, choices = [] }) => !name && choices.length);
	if (page.question && (!unclear || at("answer").querySelector(".verdict"))) { return toAnswer(); }
	if (!page.unclear.length) { at("names").replaceChildren(element("p", {}, FIRST_NEED)); }
	return at("names").scrollIntoView({ block: "center" });
}

// Beside words that are not clear yet no answer to other words may stand.
function showUnclear() {
	const says = unfinished() ? at("go").textContent : `${page.unclear.map(({ item }) => item).join(", ")}: which?`;
	at("answer").replaceChildren(...(unfinished() ? [] : [element("p", {}, says)]));
	at("to-answer").textContent = says;
	at("below").hidden = false;
}

function showTold() {
	const s = sheet(), say = (id, text) => { at(id).querySelector(".told").textContent = text; };
	say("part-water", [told(s.reading, page.rows.reading, 5), told({ temperature: s.tank.temperature },
		page.rows.tank, 1)].filter(Boolean).join(", "));
	say("part-tank", told({ ...s.tank, temperature: "" }, page.rows.tank, 4));
	say("part-supply", told(s.supply, page.rows.reading, 4));
	at("part-supply").hidden = !isOfTank(s) && !livesUnsaid(s);
	const kind = page.fields.find((field) => field.id === "water-of-kind");
	if (kind) { kind.doubt.textContent = ofTankUnsaid(s) ? "Taken as the tank's own: animals live in it, and waste was measured. If it is the tap's, choose tap." : ""; }
	say("part-shop", told(s.shop, page.rows.reading, 4));
	say("part-animals", [s.stock.map((line) => `${line.count || "?"} ${line.species}`).join(", "),
		s.lived && LIVED.find(([words]) => words === s.lived)[1], isWell(s) && "all well"].filter(Boolean).join("; "));
	say("part-question", page.question ? page.question.says : "");
}

function showQuestions() {
	const s = sheet(), can = [], later = [];
	for (const question of QUESTIONS) {
		const lacks = missing(question, s);
		if (lacks.includes("asked")) { continue; }
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
	at("questions").replaceChildren(...(can.length ? can : [element("li", {}, FIRST_NEED)]));
	at("later").replaceChildren(...later);
	at("questions-later").hidden = !later.length;
	const back = held && at("questions").querySelector(`[data-question="${held}"]`);
	if (back) { back.focus(); }
}

// Opens the part in which something is missing.
function lead(need) {
	const part = at(need.part), field = part.querySelector(`[data-key="${need.key}"] input`) || part.querySelector("select, input, textarea");
	toField(field);
}

// A field that cannot be seen yet needs animals first.
function toField(field) {
	unfold(field);
	(field.getClientRects().length ? field : at("animals")).focus();
}

function unfold(node) {
	for (let fold = node.closest("details"); fold; fold = fold.parentElement.closest("details")) { fold.open = true; }
}

function choose(question) {
	page.narrowed = question.paper ? narrowedTo(at("answer")) : null;
	page.chosen = page.question = question;
	if (["rank", "fits"].includes(question.id)) { sheet().looked = question.id; }
	page.kept.seen = true; // who asks has found the way
	at("first").hidden = true;
	keepSheets(page.kept);
	showTold();
	showQuestions();
	clearTimeout(page.waiting);
	answer();
	toAnswer();
}

// What is filled in folds to a line each, above the answer; what is empty stays open, to be filled in next.
function toAnswer() {
	if (!page.question) {
		at("first").scrollIntoView();
		return;
	}
	for (const part of document.querySelectorAll("details.part")) {
		part.open = ["part-water", "part-tank"].includes(part.id) && !part.querySelector(".told").textContent;
	}
	at("answer").focus({ preventScroll: true });
	at("part-question").scrollIntoView();
}

function doubtfulField() {
	return page.fields.find((field) => field.doubtful);
}

// What the folds hold: a moment later, or as soon as somebody looks for it.
function finishAnswer() {
	const rest = page.rest;
	clearTimeout(page.resting);
	page.rest = null;
	if (rest) { rest(); }
}

// No calm line stands before what was typed of a danger and not understood, or is no matter of this question.
const checks = (question) => question.words(sheet())[0] === "check";
function alarming(question) {
	const left = [...(page.alarms || []), ...(checks(question) ? [] : (page.told || []).filter((word, i, all) => !word.startsWith("--") && all[i - 1] !== "--asks"))];
	return left.length ? [element("p", { class: "verdict" },
		`Not answered here, and asked before anything else: ${left.join(", ")}. Say it in its field, or ask whether all are well.`)] : [];
}

// The answer to the question that was chosen, or lies nearest.
function answer() {
	clearTimeout(page.resting);
	page.rest = null;
	const place = at("answer"), question = page.question, doubt = doubtfulField();
	place.hidden = !question;
	at("below").hidden = !question && at("first").hidden;
	if (!question) { return; }
	at("first").hidden = true;
	if (missing(question, sheet()).length || doubt) {
		const says = doubt ? doubt.doubtful : `This needs ${missing(question, sheet()).map((one) => NEEDS[one].say).join(", ")}.`;
		place.replaceChildren(element("p", {}, says));
		at("to-answer").textContent = says;
		return;
	}
	const words = question.words(sheet()).concat(checks(question) ? page.told || [] : []);
	const { code, out, error } = ask(words.concat("-f", "html", today()));
	place.className = question.paper ? "shop" : "";
	place.replaceChildren(code <= 1 ? fragmentOf(question.paper ? out : folded(out)) : refusal(error),
		...(code <= 1 && error ? [refusal(error)] : []), onTerminal(words));
	takenAlong(place, words);
	place.prepend(...alarming(question));
	if (question.paper) { shortened(place, page.narrowed); }
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
	if (verdict) { verdict.classList.toggle("long", verdict.textContent.length > LETTERS_LARGE); }
	termsOpen(place, page.rows.glossary);
	const refused = place.querySelector(".refused p");
	at("answered").textContent = at("to-answer").textContent = (verdict || refused || { textContent: "The answer is below." }).textContent;
	mark(code > 1 ? error : "");
}

// Fields whose value the program could not read.
function mark(error) {
	for (const field of page.fields) {
		const wrong = error.includes(`--${field.row.key} '`) || error.includes(`.${field.row.key}: `);
		field.input.setAttribute("aria-invalid", String(wrong));
	}
}

// What can be done with an answer stands behind its first lines, where it is seen; on a sheet for the shop below.
const LINES = "p, .screen, ul:not(.tagged)";
function takenAlong(place, words) {
	const said = element("div", { role: "status" });
	const box = element("div", { class: "below" }, element("p", { class: "row" },
		...(page.rows.commands[words[0]].formats.includes("brief") ? [element("button",
			{ type: "button", onclick: () => brief(words, said) }, "As a short text")] : []),
		element("button", { type: "button", onclick: () => window.print() }, "Print"),
		element("button", { type: "button", onclick: () => saveAnswer(words, said) }, "Save"),
		...(["rank", "fits", "together"].includes(page.question.id) && NEEDS.water.has(sheet()) ? [element("button",
			{ type: "button", onclick: () => choose(SHOP) }, SHOP.says)] : [])), said);
	let last = place.querySelector(":scope > .verdict");
	if (last && page.unread.length) { last.after(element("p", { class: "says" }, notUnderstood())); }
	while (last && last.nextElementSibling && last.nextElementSibling.matches(LINES)) { last = last.nextElementSibling; }
	if (last && !place.matches(".shop")) { last.after(box); } else { place.lastElementChild.before(box); }
}

function onTerminal(words) {
	const files = words.filter((word) => word.endsWith(".yaml"));
	return element("div", { class: "below" }, element("details", { class: "more" }, element("summary", {}, "The same on a terminal"),
		...files.map((name) => element("pre", { tabindex: "0" }, `# ${name}\n` + new TextDecoder().decode(page.program.files.get("/" + name)))),
		element("pre", { tabindex: "0" }, typed(words))));
}

function save(name, text, type) {
	const link = element("a", { download: name, href: URL.createObjectURL(new Blob([text], { type })) });
	link.click();
	setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

function saveAnswer(words, place) {
	const { code, out, error } = ask(words.concat("-f", "html", today()));
	if (code > 1) {
		place.replaceChildren(refusal(error));
		return;
	}
	save(`${words[0]}.html`, out, "text/html");
	place.textContent = `Saved as ${words[0]}.html, where this browser keeps what it downloads.`;
}

// A text to take along: in a field of its own, copied where the browser lets it be.
function showText(place, label, text) {
	const area = element("textarea", { rows: String(Math.min(24, text.split("\n").length + 3)), readonly: true, "aria-label": label }, text);
	const button = element("button", { type: "button", onclick: () => copy(area, button) }, "Copy");
	place.replaceChildren(element("p", { class: "says" }, label), area, element("p", { class: "row" }, button));
	area.style.height = `${Math.min(area.scrollHeight + 4, TEXT_PX_MOST)}px`;
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
	if (code <= 1) { showText(place, "A short text to paste", untyped(out)); } else { place.replaceChildren(refusal(error)); }
}

// ---- Beginning

function wire() {
	at("sheet").addEventListener("submit", (event) => event.preventDefault());
	wireAnimals();
	at("to-answer").parentElement.addEventListener("click", () => (page.unclear.length && !at("answer").querySelector(".verdict") ? go() : toAnswer()));
	at("go").addEventListener("click", go);
	at("animals").addEventListener("keydown", (event) => {
		if (event.key !== "Enter" || event.shiftKey || event.isComposing) { return; }
		event.preventDefault();
		go();
	});
	const there = new Set(), observer = new IntersectionObserver((seen) => {
		for (const { target, isIntersecting } of seen) { there[isIntersecting ? "add" : "delete"](target); }
		at("below").classList.toggle("there", there.size > 0);
	}, { rootMargin: "0px 0px -140px 0px" });
	observer.observe(at("answer"));
	observer.observe(at("first"));
	at("answer").addEventListener("input", finishAnswer, true);
	at("answer").addEventListener("toggle", () => {
		finishAnswer();
		if (page.makeNames) { page.makeNames(); }
	}, true);
	window.addEventListener("beforeprint", finishAnswer);
	at("report-text").addEventListener("input", () => {
		clearTimeout(page.reading);
		page.reading = setTimeout(readReport, REST_MS);
	});
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
	at("ask-back").replaceChildren(...Object.entries(page.rows.questions).map(([id, { says }]) => new Option(says, id)));
	at("ask-back-make").addEventListener("click", askBack);
	at("address").value = page.kept.address || "";
	at("address").addEventListener("change", () => {
		page.kept.address = at("address").value.trim();
		keepSheets(page.kept);
	});
}

function bytesOf(base64) {
	const text = atob(base64), bytes = new Uint8Array(text.length);
	for (let i = 0; i < text.length; i++) { bytes[i] = text.charCodeAt(i); }
	return bytes;
}

function taken(id) {
	const bytes = bytesOf(at(id).textContent);
	at(id).remove();
	return bytes;
}

async function unzipped(bytes) {
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
	const [code, image] = [unpack(taken("program")), await unzipped(taken("records"))];
	const own = JSON.parse(at("own").textContent || "{\"records\":[],\"sheets\":[]}");
	page.program = new Program(await WebAssembly.compile(rejoined(code)), [image, ...own.records.map(bytesOf)]);
	page.rows = JSON.parse(page.program.call((running) => running.fields()).out);
	for (const question of QUESTIONS) { Object.assign(question, page.rows.questions[question.id]); }
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
