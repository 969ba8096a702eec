// SPDX-License-Identifier: Apache-2.0
// What the page stands on, without a browser: the fields of the program against the schemas, files and
// links there and back, the program asked again and again, and how long it takes. Usage: node module.js
// BUILD, whose page/page.wasm and src/cli/species.image are taken. Prints TAP.
"use strict";
const fs = require("fs"), path = require("path"), vm = require("vm");
const root = path.join(__dirname, "../.."), build = process.argv[2];
const source = ["program", "unpack", "rejoin", "files", "form", "answer", "animals"].map((name) =>
	fs.readFileSync(path.join(root, `src/page/${name}.js`), "utf8")).join("\n");
const P = vm.runInThisContext(`${source}\n({ Program, unpack, rejoined, yaml, fromYaml, toLink, fromLink, emptySheet, namedFiles, takeFile, planFile, waterFile, addOwn,
splitUnit, joinUnit, doubtOfUnit, typed, QUESTIONS, missing, itemsOf, untyped })`);
const bytes = fs.readFileSync(path.join(build, "page/page.wasm"));
const image = fs.readFileSync(path.join(build, "src/cli/species.image"));
const now = () => performance.now();
const ms = (figure) => `${figure.toFixed(1)} ms`;
const median = (list) => list.sort((a, b) => a - b)[Math.floor(list.length / 2)];

const tests = [];
const test = (name, run) => tests.push([name, run]);
function equal(got, want, what) {
	if (JSON.stringify(got) !== JSON.stringify(want)) {
		throw new Error(`${what}: ${JSON.stringify(got)} instead of ${JSON.stringify(want)}`);
	}
}

const compiled = new WebAssembly.Module(bytes);
const program = new P.Program(compiled, [image]);
const rows = JSON.parse(program.call((running) => running.fields()).out);
for (const question of P.QUESTIONS) { Object.assign(question, rows.questions[question.id]); }
const split = () => P.unpack(new Uint8Array(fs.readFileSync(path.join(build, "page/page.packed"))));
test("the module that the page holds in rows is the one that is linked", () => {
	equal(Buffer.compare(Buffer.from(P.rejoined(split())), bytes), 0, "put together again");
});
const keys = (list) => list.map(({ key }) => key).sort();
const schema = (name) => JSON.parse(fs.readFileSync(path.join(root, `docs/schemas/${name}.json`), "utf8"));

test("every key of a reading, a water, a tank and an animal is a field", () => {
	const plan = schema("plan"), water = schema("water"), tank = schema("tank");
	const lists = ["readings", "events", "stock", "signs", "water", "tank", "change_water"];
	const of = (shape) => Object.keys(shape.properties).filter((key) => !lists.includes(key)).sort();
	equal(keys(rows.reading), of(water.properties.readings.items), "readings");
	equal(keys(rows.water), of(water), "water");
	equal(keys(rows.tank), of(tank), "tank");
	equal(keys(rows["stock line"]), of(plan.properties.stock.items), "animals");
	equal(keys(rows.sign), of(plan.properties.signs.items.anyOf[1]), "signs");
});

test("every field has a kind, a sentence and, where it is a figure, a quantity with an example", () => {
	for (const shape of ["reading", "water", "tank", "stock line"]) {
		for (const row of rows[shape]) {
			const fine = row.kind && row.says && (!["figure", "every", "choice"].includes(row.kind) ||
				rows.quantities[row.quantity].example);
			if (!fine) { throw new Error(`${shape}.${row.key}`); }
		}
	}
});

test("a value of every unit is split and joined again", () => {
	for (const { units } of Object.values(rows.quantities)) {
		for (const { unit } of units) {
			equal(P.splitUnit(`7.5 ${unit}`, units), ["7.5", unit], unit);
			equal(P.joinUnit("7.5", unit), `7.5 ${unit}`, unit);
		}
	}
	equal(P.joinUnit("7 ppm", "dH"), "7 ppm", "a unit that was typed stays");
});

test("hardness beyond degrees is asked about, and only that", () => {
	const gh = rows.reading.find(({ key }) => key === "GH"), units = rows.quantities[gh.quantity].units;
	const says = P.doubtOfUnit(program, gh, "250 dH", units);
	if (!/ppm/.test(says) || !/14 dH/.test(says)) { throw new Error(`250: ${says}`); }
	for (const fine of ["30 dH", "250 ppm", "", "12..16 dH"]) { equal(P.doubtOfUnit(program, gh, fine, units), "", fine); }
	const ca = rows.reading.find(({ key }) => key === "Ca");
	equal(P.doubtOfUnit(program, ca, "80 mg/L", rows.quantities[ca.quantity].units), "", "calcium");
});

// Texts that would break a file that was written without care.
const HARD = ["a: b", "- x", "# no", "\"", "\\", "it's", "yes", "null", "7", "<0.05 mg/L", "tab\there", "\u00fc\u7532", "[a]", "{b}", " x ", "x:", "|", "..", "~"];

test("what the page writes, the program reads and lint takes", () => {
	for (const text of HARD) {
		const sheet = P.emptySheet();
		Object.assign(sheet, { reading: { GH: "6 dH", KH: "<3 dH", method: "drops" }, water: { name: text, softened: "yes" },
			tank: { name: text, length: "80 cm", width: "35 cm", height: "40 cm", water_change: "30 % every 7 days", feeding: "light" },
			stock: [{ species: "neon tetra", count: "10" }, { species: "guppy", count: "2", sex: "male" }] });
		const linted = program.ask(["lint", "plan.yaml", "water.yaml", "tank.yaml"], sheet, text);
		equal(linted.code, 0, `${JSON.stringify(text)}: ${linted.out}${linted.error}`);
		const { code, out } = program.call((running) => running.plain("/plan.yaml"));
		equal(code, 0, out);
		const back = P.emptySheet();
		equal(P.takeFile(back, out, new Map()), text, "name");
		equal(back.water.name, text, "name of the water");
		equal(Object.entries(back.reading).sort(), Object.entries({ GH: "6 dH", KH: "<3 dH", method: "drops" }).sort(), "reading");
		equal(back.stock.map(({ species, count }) => [species, count]), [["neon tetra", "10"], ["guppy", "2"]], "animals");
	}
});

test("the example files of the terminal open", () => {
	let opened = 0;
	for (const folder of ["waters", "tanks", "plans"]) {
		for (const name of fs.readdirSync(path.join(root, "examples", folder)).filter((one) => one.endsWith(".yaml") && !one.startsWith("sources"))) {
			const text = fs.readFileSync(path.join(root, "examples", folder, name), "utf8");
			program.put(`here/${folder}/${name}`, text);
			P.namedFiles(text).forEach((named) => program.put(path.join(`here/${folder}`, named),
				fs.readFileSync(path.join(root, "examples", folder, named), "utf8")));
			const { code, out } = program.call((running) => running.plain(`/here/${folder}/${name}`));
			equal(code, 0, `${name}: ${out}`);
			P.fromYaml(out);
			opened++;
		}
	}
	if (opened < 6) { throw new Error(`${opened} files`); }
});

// Keys in another order are no loss; nor are files that are written out where they were named.
// A size in one text says the same as three sides.
const said = (text) => text.replace(/^( *)size: ([0-9.]+)x([0-9.]+)x([0-9.]+)$/m, "$1length: $2 cm\n$1width: $3 cm\n$1height: $4 cm")
	.split("\n").filter((line) => line.trim() && !line.startsWith("#")).sort();

test("what is opened is saved again without a loss", () => {
	const years = "readings:\n  - {date: 2025-01-01, GH: 14 dH, KH: 9 dH}\n  - {date: 2026-02-01, GH: 12 dH, KH: 8 dH, method: drops}\n";
	const plain = (text) => {
		program.put("again.yaml", text);
		const { code, out } = program.call((running) => running.plain("/again.yaml"));
		equal(code, 0, out);
		return out;
	};
	const plans = [`name: a\nwater:\n  ${years.replace(/\n/g, "\n  ")}\ntank: {length: 80 cm, width: 35 cm, height: 40 cm}\nstock: [{species: guppy, count: 6}]\n`,
		`name: b\nwater: {readings: [{GH: 6 dH, KH: 3 dH}]}\nchange_water: {name: rain, readings: [{GH: 1 dH, KH: 1 dH}]}\ntank:\n  length: 80 cm\n  ${
			years.replace(/\n/g, "\n  ")}\nevents: [{date: 2026-01-05, what: water-changed, litres: 40 L, says: "changed 40 L"}, {date: 2026-01-09, what: died, count: 2}]\nstock: [{species: guppy, count: 6, since: 2025-01-01}]\nsigns: [{sign: gasping, onset: now}, {sign: wounds}]\naway: 24 h\n`];
	for (const plan of plans) {
		const sheet = P.emptySheet(), opened = plain(plan), name = P.takeFile(sheet, opened, new Map());
		equal(said(plain(P.yaml(P.planFile(sheet, name)))), said(opened), name);
	}
	const sheet = P.emptySheet(), opened = plain(years);
	P.takeFile(sheet, opened, new Map());
	equal(sheet.reading.GH, "12 dH", "the newest reading is filled in");
	equal(said(plain(P.yaml(P.waterFile(sheet)))), said(opened), "a water of years");
});

test("a tank's own reading and the water that is poured in keep apart", () => {
	const sheet = P.emptySheet(), back = P.emptySheet();
	Object.assign(sheet, { reading: { GH: "14 dH", NO3: "40 mg/L" }, water: { kind: "tank" }, supply: { GH: "6 dH", KH: "3 dH" },
		tank: { length: "80 cm", width: "35 cm", height: "40 cm" }, stock: [{ species: "guppy", count: "6", since: "2026-01-01" }] });
	equal(program.ask(["drift", "plan.yaml", "--today", "2026-03-01"], sheet, "t").code, 0, "drift");
	P.takeFile(back, program.call((running) => running.plain("/plan.yaml")).out, new Map());
	for (const part of ["reading", "water", "supply"]) { equal(back[part], sheet[part], part); }
});

test("nitrate that was said to be of nothing is the tank's where animals live, unless a file says the water", () => {
	const sheet = P.emptySheet(), plan = () => P.planFile(sheet, "t");
	Object.assign(sheet, { reading: { GH: "14 dH", NO3: "25 mg/L" }, stock: [{ species: "platy", count: "6", since: "2026-01-01" }] });
	equal([plan().tank.readings, plan().water.readings], [[{ GH: "14 dH", NO3: "25 mg/L" }], [{ GH: "14 dH" }]], "unsaid");
	sheet.supply = { GH: "9 dH" };
	equal(plan().water.readings, [{ GH: "9 dH" }], "what is poured in was read");
	sheet.supply = {};
	for (const change of [{ water: { kind: "tap" } }, { stock: [{ species: "platy", count: "6" }] }, { reading: { GH: "14 dH" } }, { opened: true }]) {
		const other = { ...sheet, ...change };
		equal(P.planFile(other, "t").water.readings, [other.reading], JSON.stringify(change));
	}
	program.put("opened.yaml", P.yaml({ water: { readings: [{ GH: "14 dH", NO3: "25 mg/L" }] },
		tank: { length: "80 cm", width: "35 cm", height: "40 cm" }, stock: sheet.stock }));
	const { code, out } = program.call((running) => running.plain("/opened.yaml"));
	equal(code, 0, out);
	P.takeFile(sheet, out, new Map());
	equal([plan().water.readings, plan().tank.readings], [[{ GH: "14 dH", NO3: "25 mg/L" }], undefined], "opened");
});

// What one animal as it is typed means, as the page asks.
const meant = (words) => JSON.parse(program.call((running) => running.animals(words, "2026-03-01")).out);

test("animals typed in one field are parted, and each is read as on the terminal", () => {
	equal(P.itemsOf("8 harlequin rasboras, 2 angelfish"), ["8 harlequin rasboras", "2 angelfish"], "comma");
	equal(P.itemsOf(" 8 platies and 2 corys; snails\nbetta "), ["8 platies", "2 corys", "snails", "betta"], "and");
	equal(P.itemsOf("black and white tetra"), ["black and white tetra"], "a name with and");
	equal(meant("10 neon tetras").line, { species: "neon tetras", count: 10 }, "number and plural");
	equal(meant("10 neon tetras").name, "neon tetra (Paracheirodon innesi)", "whom it means");
	equal(meant("2 male bettas for 2 years").line, { species: "bettas", count: 2, sex: "male", since: "2024-03-01" }, "how long");
	equal(meant("5 neonz").says, "'neonz' is taken for ne\u00f3n (Paracheirodon innesi)", "a slip is said");
	equal([meant("3 blahfoo").name, meant("3 blahfoo").choices], [null, []], "nobody");
	equal([meant("neons").line.count, meant("neons").says, meant("betta").says],
		[6, "How many neon tetras is not given: 6 taken, the least that feel safe", null], "how many is not said");
	equal(meant("0 neon").line, undefined, "no animal");
});

test("a name that is typed is completed by what shops sell; of a group its commonest come first", () => {
	const folder = path.join(root, "species"), sold = {};
	for (const name of fs.readdirSync(folder, { recursive: true }).filter((one) => one.endsWith(".yaml") && !one.startsWith("sources"))) {
		const text = fs.readFileSync(path.join(folder, name), "utf8");
		sold[/^species: *(.*)$/m.exec(text)[1]] = /^sold: *(.*)$/m.exec(text)[1];
	}
	equal(meant("2 ang").choices[0].name, "angelfish", "ang");
	equal(meant("10 neon tet").choices[0].species, "Paracheirodon innesi", "neon tet");
	const order = ["everywhere", "often", "seldom", "rarely"];
	for (const typed of ["6 cory", "6 corys", "ang", "gour", "ra"]) {
		const ranks = meant(typed).choices.map(({ species }) => order.indexOf(sold[species])).filter((rank) => rank >= 0);
		if (ranks.length < 3 || ranks.some((rank, i) => i && rank < ranks[i - 1])) { throw new Error(`${typed}: ${ranks}`); }
	}
});

test("no answer tells to type what only a terminal takes", () => {
	const sheet = P.emptySheet();
	Object.assign(sheet, { reading: { GH: "8 dH", KH: "5 dH", pH: "7.4" }, tank: { volume: "112 L" },
		shop: { GH: "9 dH" }, stock: [{ species: "harlequin rasbora", count: "8" }, { species: "angelfish", count: "2" }] });
	for (const temperature of [undefined, "24 C"]) {
		if (temperature) { sheet.tank.temperature = temperature; }
		for (const question of P.QUESTIONS.filter((one) => !P.missing(one, sheet).length)) {
			const { out } = program.ask(question.words(sheet).concat("-f", "html", "--today", "2026-03-01"), sheet, "t");
			const text = P.untyped(out.slice(out.indexOf("<main>"))).replace(/<(style|script)[^]*?<\/\1>|<[^>]*>/g, " ");
			const typed = /.{0,60} (--[a-z]|-t FILE|tapshoal [a-z]).{0,30}/.exec(text);
			if (typed) { throw new Error(`${question.id}: ${typed[0]}`); }
			if (question.id === "titrate") { equal(/C \(assumed\)/.test(text), !temperature, `the temperature is assumed, ${temperature}`); }
		}
	}
});

test("animals alone are a question, with a tank and without", () => {
	const sheet = { ...P.emptySheet(), stock: [{ species: "angelfish", count: "2" }, { species: "guppy", count: "6", since: "2026-01-01" }] };
	for (const tank of [{}, { volume: "112 L" }, { length: "80 cm", width: "35 cm", height: "40 cm" }]) {
		sheet.tank = tank;
		for (const one of P.QUESTIONS.filter(({ id }) => ["together", "tank"].includes(id))) {
			const { code, error } = program.ask(one.words(sheet).concat("--today", "2026-03-01"), sheet, "t");
			equal([P.missing(one, sheet), code <= 1, error], [[], true, ""], `${one.id}, ${JSON.stringify(tank)}`);
		}
	}
	equal(P.missing(P.QUESTIONS.find(({ id }) => id === "due"), { ...sheet, tank: {} }), ["room"], "due wants the tank");
});

test("how large a tank is stands in one text, whichever way it was said", () => {
	for (const [tank, size] of [["length: 80 cm\nwidth: 35 cm\nheight: 40.5 cm", "80x35x40.5"], ["volume: 60 L", "60 L"], ["size: 100x40x40", "100x40x40"],
		["length: 80 cm\nwidth: 35 cm\nheight: 40 cm\nvolume: 90 L", "80x35x40"]]) {
		program.put("opened.yaml", `${tank}\nfilter: mature\n`);
		const sheet = P.emptySheet(), { code, out } = program.call((running) => running.plain("/opened.yaml"));
		equal(code, 0, out);
		P.takeFile(sheet, out, new Map());
		equal([sheet.tank.size, sheet.tank.filter, P.missing({ needs: ["room"] }, sheet)], [size, "mature", []], tank);
		program.put("again.yaml", P.yaml(sheet.tank));
		equal(program.ask(["lint", "again.yaml"]).code, 0, `${tank} again`);
	}
});

test("a link says what the sheet says, and takes no key that is none", () => {
	const sheet = P.emptySheet();
	Object.assign(sheet, { reading: { GH: "6 dH", "NO3-N": "2 mg/L N" }, tank: { length: "80 cm" }, shop: { GH: "9 dH" },
		signs: [{ sign: "gasping", onset: "now" }], rest: { deaths: "2" }, stock: [{ species: "a & b=#?", count: "3" }] });
	sheet.tank.events = [{ date: "2026-01-05", what: "died" }];
	const link = P.toLink(sheet, { ask: "rank", wait: "" });
	delete sheet.tank.events;
	equal(new URLSearchParams(link).has("tank.events"), false, "a log stays at home");
	equal(P.fromLink(link, rows).sheet, sheet, "there and back");
	equal(P.fromLink("reading.__proto__=x&__proto__.GH=1&constructor.GH=1&reading.none=1&sign.none=1&plan.stock=1&animal.x.species=1", rows), null, "foreign keys");
	equal(P.fromLink("", rows), null, "no link");
});

test("every question makes a call that the program takes", () => {
	const sheet = P.emptySheet();
	Object.assign(sheet, { asked: "yes", reading: { GH: "6 dH", KH: "3 dH", pH: "7" }, shop: { GH: "9 dH", KH: "6 dH", pH: "7.5" },
		tank: { length: "80 cm", width: "35 cm", height: "40 cm", temperature: "25 C", filter: "mature" },
		stock: [{ species: "neon tetra", count: "10", since: "2026-01-10" }, { species: "cherry shrimp", count: "5" }] });
	for (const question of P.QUESTIONS) {
		equal(P.missing(question, sheet), [], question.id);
		for (const water of [{}, { kind: "tap", disinfectant: "chlorine" }]) {
			sheet.water = water;
			const { code, out, error } = program.ask(question.words(sheet).concat("-f", "html", "--today", "2026-03-01"), sheet, "t");
			if (code > 1 || !out.includes("<main>")) { throw new Error(`${P.typed(question.words(sheet))}: ${code} ${error}`); }
		}
	}
});

const WATER = ["--GH", "14", "--KH", "9", "--pH", "7.6", "--temperature", "25"];

test("asked a thousand times it needs no more memory, and answers the same", () => {
	const ask = () => program.ask(["why", "guppy", "neon tetra", ...WATER, "-f", "json"]).out;
	const first = ask();
	for (let i = 0; i < 50; i++) { ask(); }
	const before = program.running.memory();
	for (let i = 0; i < 1000; i++) {
		if (ask() !== first) { throw new Error(`answer ${i} differs`); }
	}
	equal(program.running.memory(), before, "bytes of memory");
});

test("a program that breaks is started anew", () => {
	const broken = program.call(() => { throw new Error("unreachable"); });
	equal(broken.code, 3, "code");
	equal(program.ask(["rank", ...WATER]).code, 0, "afterwards");
});

function figures() {
	const loads = [], ranks = [], compiles = [];
	for (let i = 0; i < 10; i++) {
		let began = now();
		const module = new WebAssembly.Module(bytes);
		compiles.push(now() - began);
		began = now();
		const fresh = new P.Program(module, [image]);
		loads.push(now() - began);
		fresh.ask(["rank", ...WATER]);
		began = now();
		fresh.ask(["rank", ...WATER]);
		ranks.push(now() - began);
	}
	console.log(`# median of ten, under node: compile ${ms(median(compiles))}, start and load the records ${ms(median(loads))}, rank ${ms(median(ranks))}`);
}

let bad = 0;
console.log(`1..${tests.length}`);
tests.forEach(([name, run], i) => {
	let wrong = "";
	try { run(); } catch (error) { wrong = error.message; }
	console.log(`${wrong ? "not ok" : "ok"} ${i + 1} - page: ${name}`);
	if (wrong) { console.log(`# ${wrong.slice(0, 600)}`); }
	bad += wrong ? 1 : 0;
});
figures();
process.exitCode = bad ? 1 : 0;
