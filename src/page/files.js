// SPDX-License-Identifier: Apache-2.0
// What is filled in: as the files that the terminal reads, in the browser's own storage, as a link.
// A sheet holds texts under the keys of those files, so that nothing is translated between them.

const STORE = "tapshoal";

function emptySheet() {
	return { reading: {}, older: [], water: {}, supply: {}, supplyOlder: [], tank: {}, stock: [], words: "", asked: "", coming: "", lived: "", looked: "", shop: {}, signs: [], rest: {}, opened: false };
}

// A text that YAML takes for a text, whatever is in it.
function yamlText(text) {
	return /^[A-Za-z0-9][A-Za-z0-9 ./%+-]*$/.test(text) && !text.endsWith(" ") ? text : JSON.stringify(text);
}

// Objects, lists of objects and texts in block style.
function yaml(value, indent = "") {
	return Object.entries(value).map(([key, part]) => {
		if (Array.isArray(part)) {
			return `${indent}${key}:${part.length ? "" : " []"}\n` + part.map((item) =>
				`${indent}  -\n${yaml(item, indent + "    ")}`).join("");
		}
		if (part && typeof part === "object") {
			const inner = yaml(part, indent + "  ");
			return `${indent}${key}:${inner ? "" : " {}"}\n${inner}`;
		}
		return `${indent}${key}: ${yamlText(String(part))}\n`;
	}).join("");
}

function unquoted(text) {
	if (!text.startsWith("\"")) { return text; }
	return text.slice(1, -1).replace(/\\(x[0-9a-f]{2}|.)/g, (all, escape) =>
		escape[0] === "x" ? String.fromCharCode(parseInt(escape.slice(1), 16)) : escape);
}

// Reads what the program writes (records/write.c) and nothing else.
function fromYaml(text) {
	const lines = text.split("\n").filter((line) => line.trim() && !line.trim().startsWith("#"));
	const depth = (line) => line.length - line.trimStart().length;
	let at = 0;
	function block(indent) {
		if (at < lines.length && depth(lines[at]) === indent && lines[at].trim() === "-") { return list(indent); }
		const object = Object.create(null);
		while (at < lines.length && depth(lines[at]) === indent) {
			const [, key, rest] = /^\s*([^:]+):\s*(.*)$/.exec(lines[at++]);
			const next = at < lines.length ? depth(lines[at]) : 0;
			if (rest === "" && next > indent) {
				object[key] = block(next);
			} else {
				object[key] = rest === "[]" ? [] : rest === "{}" ? {} : unquoted(rest);
			}
		}
		return object;
	}
	function list(indent) {
		const items = [];
		while (at < lines.length && depth(lines[at]) === indent && /^\s*-( \{\})?$/.test(lines[at])) {
			const empty = lines[at++].endsWith("{}");
			items.push(empty || at >= lines.length || depth(lines[at]) <= indent ? {} : block(depth(lines[at])));
		}
		return items;
	}
	return block(0);
}

// A list of readings with the one that is filled in last; what was opened with it is not lost.
const readingsOf = (older, reading) => older.concat(Object.keys(reading).length ? [reading] : []);

// The water of a sheet as its file.
function waterFile(sheet) {
	return { ...sheet.water, readings: readingsOf(sheet.older, sheet.reading) };
}

// Which waste is in it depends on what was sampled. Said nowhere, and animals live there: then it is the
// water they live in, as a sample on the terminal beside --there. A file has said it.
const WASTE = ["NO3", "NO3-N", "NO2", "NO2-N", "ammonia"];
const livesUnsaid = (sheet) => !sheet.water.kind && !sheet.opened && sheet.stock.some((line) => line.since);
const ofTankUnsaid = (sheet) => livesUnsaid(sheet) && WASTE.some((key) => sheet.reading[key]);
const isOfTank = (sheet) => sheet.water.kind === "tank" || ofTankUnsaid(sheet);

// Said to be of nothing, minerals are those of what is poured in as well; waste is the tank's alone.
const withoutWaste = (reading) => Object.fromEntries(Object.entries(reading).filter(([key]) => !WASTE.includes(key)));

// A sample that came out of the tank is a reading of the tank; what is poured in is then asked beside it.
function planFile(sheet, name) {
	const ofTank = isOfTank(sheet), plan = { ...sheet.rest };
	const readings = readingsOf(sheet.older, sheet.reading), supply = readingsOf(sheet.supplyOlder, sheet.supply);
	if (name) { plan.name = name; }
	if (supply.length && (ofTank || livesUnsaid(sheet))) {
		plan.water = { readings: supply };
	} else if (readings.length && (!ofTank || ofTankUnsaid(sheet))) {
		plan.water = ofTank ? { ...sheet.water, readings: readings.map(withoutWaste) } : waterFile(sheet);
	}
	if (Object.keys(sheet.tank).length) { plan.tank = { ...sheet.tank }; }
	if ((ofTank || livesUnsaid(sheet)) && readings.length) { plan.tank = { ...plan.tank, readings }; }
	plan.stock = sheet.stock;
	const signs = sheet.signs.filter(({ sign }) => sign);
	if (signs.length) { plan.signs = signs; }
	return plan;
}

// The newest reading is filled in, since a sheet has one; a file may have years of them.
function newest(readings) {
	const list = (readings || []).filter((reading) => Object.keys(reading).length);
	list.sort((a, b) => String(a.date || "").localeCompare(String(b.date || "")));
	return [{ ...list.pop() }, list];
}

function takeWater(sheet, water) {
	const { readings, ...rest } = water;
	sheet.water = rest;
	sheet.opened = true;
	[sheet.reading, sheet.older] = newest(readings);
}

// How large it is in one text, as it is typed: a file of the program has centimetres or litres.
function sized({ length, width, height, ...tank }) {
	const sides = [length, width, height].map((side) => /^([\d.]+) cm$/.exec(side || ""));
	if (sides.every(Boolean)) { return { size: sides.map((one) => one[1]).join("x"), ...tank }; }
	if (length || width || height || !tank.volume) { return { ...(length && { length }), ...(width && { width }), ...(height && { height }), ...tank }; }
	const { volume, ...rest } = tank;
	return { size: volume, ...rest };
}

function takeTank(sheet, tank) {
	const { readings, ...rest } = tank;
	sheet.tank = sized(rest);
	if (!readings || !readings.length) { return; }
	if (Object.keys(sheet.reading).length) { [sheet.supply, sheet.supplyOlder] = [sheet.reading, sheet.older]; }
	[sheet.reading, sheet.older] = newest(readings);
	sheet.water = { kind: "tank" };
}

// The files that a plan names, as it names them.
function namedFiles(text) {
	return Array.from(text.matchAll(/^(?:water|change_water|tank):[ \t]*["']?([^"'#\n]*\.ya?ml)["']?[ \t]*$/gm), (one) => one[1]);
}

// What a plain form of the program says, with its kind on the first line; `others` are the files
// that were opened with it, by name.
function takeFile(sheet, text, others) {
	if (text.startsWith("# plan")) { Object.assign(sheet, emptySheet()); }
	const kind = text.slice(2, text.indexOf("\n")), file = fromYaml(text);
	const named = (part) => (typeof part === "string" ? others.get(part.split("/").pop()) : part);
	if (kind === "water") { takeWater(sheet, file); }
	if (kind === "tank") { takeTank(sheet, file); }
	if (kind === "plan") {
		const { name, water, tank, stock, signs, ...rest } = file;
		for (const part of [water, tank, rest.change_water]) {
			if (typeof part === "string" && !named(part)) { throw new Error(part); }
		}
		if (water) { takeWater(sheet, named(water)); }
		if (tank) { takeTank(sheet, named(tank)); }
		if (rest.change_water) { rest.change_water = named(rest.change_water); }
		Object.assign(sheet, { stock: stock || [], signs: signs || [], rest });
	}
	return file.name || "";
}

// The sheets that came with the page, beside those of this device.
function addOwn(kept, own) {
	for (const { name, text } of own) {
		if (Object.hasOwn(kept.sheets, name)) { continue; }
		kept.sheets[name] = emptySheet();
		takeFile(kept.sheets[name], text, new Map());
		if (!kept.seen) { kept.open = name; }
	}
	return kept;
}

// The sheets by name, and which is open; what cannot be read or kept is no failure.
function loadSheets() {
	const kept = { sheets: { "my tank": emptySheet() }, open: "my tank", seen: false };
	try {
		const read = JSON.parse(localStorage.getItem(STORE));
		for (const sheet of Object.values(read.sheets)) {
			for (const [key, part] of Object.entries(emptySheet())) { sheet[key] = sheet[key] || part; }
		}
		return read.sheets[read.open] ? read : kept;
	} catch (error) {
		return kept;
	}
}

function keepSheets(kept) {
	try {
		localStorage.setItem(STORE, JSON.stringify(kept));
		return true;
	} catch (error) {
		return false;
	}
}

// The fragment of a link: one key a value, so that a log stays at home; what is asked for stands in "wait" and "ask".
function toLink(sheet, extra) {
	const parts = new URLSearchParams();
	const fields = ["reading", "water", "supply", "tank", "shop"].map((part) => [part, sheet[part]]);
	for (const [part, values] of [...fields, ["sign", sheet.signs[0] || {}], ["plan", sheet.rest]]) {
		for (const [key, text] of Object.entries(values)) {
			if (typeof text === "string") { parts.append(`${part}.${key}`, text); }
		}
	}
	sheet.stock.forEach((line, i) => Object.entries(line).forEach(([key, text]) =>
		parts.append(`animal.${i + 1}.${key}`, text)));
	for (const [key, text] of Object.entries(extra)) {
		if (text) { parts.append(key, text); }
	}
	return parts.toString();
}

// The sheet of a link, "wait" and "ask" beside it; null: the fragment is none of ours. `rows` are
// the program's: other keys are left out.
function fromLink(fragment, rows) {
	const sheet = emptySheet(), found = { sheet, wait: [], ask: "" };
	const known = { reading: rows.reading, water: rows.water, supply: rows.reading, tank: rows.tank, shop: rows.reading,
		animal: rows["stock line"], sign: rows.sign, plan: rows.plan };
	let count = 0;
	for (const [name, text] of new URLSearchParams(fragment)) {
		const [part, ...rest] = name.split("."), key = rest[rest.length - 1];
		if (name === "wait") { found.wait = text.split(","); count++; }
		if (name === "ask") { found.ask = text; count++; }
		if (name === "seen") { found.seen = text; }
		if (!Object.hasOwn(known, part) || !known[part].some((row) => row.key === key) || !text) { continue; }
		if (part === "sign") {
			sheet.signs[0] = { ...sheet.signs[0], [key]: text };
		} else if (part !== "animal") {
			sheet[part === "plan" ? "rest" : part][key] = text;
		} else if (/^[0-9]{1,3}$/.test(rest[0])) {
			sheet.stock[rest[0]] = { ...sheet.stock[rest[0]], [key]: text };
		} else {
			continue;
		}
		count++;
	}
	sheet.stock = sheet.stock.filter((line) => line && line.species);
	return count ? found : null;
}
