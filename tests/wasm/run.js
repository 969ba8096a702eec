// SPDX-License-Identifier: Apache-2.0
// Runs the checks of tests/checks as WebAssembly, each test in a fresh instance: the same code in
// another machine must keep the same tolerances against the same tables. Prints a TAP line for
// each from the number given, then one for the folder: every table in it was read by a test that
// passed, or stands below with its reason. Usage: node run.js FIRST_NUMBER FOLDER MODULE...
"use strict";
const fs = require("fs"), os = require("os"), path = require("path");
const { WASI } = require("wasi");

// Tables that are not replayed: name -> why. A table that is replayed all the same fails too.
const EXCLUDED = {
	"natives.csv": "its check reads the species files",
	"natural-waters.csv": "its check reads the species files",
	"temperature-limits.csv": "its check reads the species files",
};

const [first, folder, ...modules] = process.argv.slice(2);
const replayed = new Set();
let number = Number(first);

// One test of a module: its exit code, what it printed and which files it opened.
function runOne(module, test) {
	const file = path.join(os.tmpdir(), `checks-${process.pid}.out`);
	const out = fs.openSync(file, "w+");
	const wasi = new WASI({ version: "preview1", env: { TEST: String(test) }, stdout: out,
		preopens: { "/reference": folder }, returnOnExit: true });
	const imports = wasi.getImportObject(), opened = [];
	const open = imports.wasi_snapshot_preview1.path_open;
	let instance;
	imports.wasi_snapshot_preview1.path_open = (...given) => {
		const [, , at, length] = given;
		opened.push(Buffer.from(instance.exports.memory.buffer, at, length).toString());
		return open(...given);
	};
	instance = new WebAssembly.Instance(module, imports);
	let code;
	try {
		code = wasi.start(instance);
	} catch (error) {
		code = String(error);
	}
	const printed = fs.readFileSync(file, "utf8").split("\n").filter((line) => line);
	fs.closeSync(out);
	fs.unlinkSync(file);
	return { code, printed, opened };
}

for (const name of modules) {
	const module = new WebAssembly.Module(fs.readFileSync(name));
	for (let test = 0; ; test++) {
		const { code, printed, opened } = runOne(module, test);
		if (code === 99)
			break;
		const what = printed.length ? printed.shift().replace(/^name /, "") : `test ${test} of ${name}`;
		for (const line of printed)
			console.log(line.startsWith("#") ? line : `# ${line}`);
		console.log(`${code === 0 ? "ok" : "not ok"} ${number++} - wasm: ${what}`);
		if (code === 0)
			opened.forEach((table) => replayed.add(table));
		else
			console.log(`# ended with ${code}`);
		if (typeof code !== "number")
			break; // a trap: the rest is missing from the plan
	}
}
const tables = fs.readdirSync(folder).filter((table) => table.endsWith(".csv"));
const missing = tables.filter((table) => !replayed.has(table) && !(table in EXCLUDED));
const stale = Object.keys(EXCLUDED).filter((table) => replayed.has(table) || !tables.includes(table));
missing.forEach((table) => console.log(`# ${table} is not replayed, and no reason says why`));
stale.forEach((table) => console.log(`# ${table} is excluded, but replayed or gone`));
Object.entries(EXCLUDED).forEach(([table, why]) => console.log(`# not replayed: ${table}: ${why}`));
const fine = tables.length > 0 && missing.length === 0 && stale.length === 0;
console.log(`${fine ? "ok" : "not ok"} ${number} - wasm: every table of the folder was replayed`);
console.log(`# ${replayed.size} of ${tables.length} tables`);
