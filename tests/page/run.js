// SPDX-License-Identifier: Apache-2.0
// The program of the page on the files of this machine, for the golden cases: one call, like the
// program of the terminal. Usage: node run.js MODULE PROGRAM WORDS...; PROGRAM is the path under
// which the program would stand here, from which it finds its records.
"use strict";
const fs = require("fs"), path = require("path"), vm = require("vm");
const [modulePath, programPath, ...words] = process.argv.slice(2);
const source = fs.readFileSync(path.join(__dirname, "../../src/page/program.js"), "utf8");
const { System, startProgram } = vm.runInThisContext(source + "\n({ System, startProgram })");

// wasi-libc takes relative paths from the root: what the root has not is below the current folder.
const top = new Set(fs.readdirSync("/").concat("nowhere"));
const here = (name) => (top.has(name.split("/")[1]) ? name : process.cwd() + name);
const files = {
	kind(name) {
		let stat;
		try { stat = fs.statSync(here(name), { throwIfNoEntry: false }); } catch (error) { return null; }
		return !stat ? null : stat.isDirectory() ? "folder" : stat.isFile() ? "file" : "other";
	},
	list: (name) => fs.readdirSync(here(name)),
	get: (name) => fs.readFileSync(here(name)),
	folder: (name) => fs.mkdirSync(here(name), { recursive: true }),
	put: (name, bytes) => fs.writeFileSync(here(name), bytes),
	remove: (name) => fs.unlinkSync(here(name)),
	link: (name) => (name === "/proc/self/exe" ? programPath : null),
};
const streams = {
	read(room) {
		const chunk = Buffer.alloc(room);
		return chunk.subarray(0, fs.readSync(0, chunk, 0, room, null));
	},
	write(file, bytes) {
		try {
			for (let at = 0; at < bytes.length;) { at += fs.writeSync(file, bytes, at); }
		} catch (error) {
			if (error.code !== "EPIPE") { throw error; } // a reader that saw enough
		}
	},
};
const environment = Object.entries(process.env).map(([name, value]) => `${name}=${value}`);
const module_ = new WebAssembly.Module(fs.readFileSync(modulePath));
process.exitCode = startProgram(module_, new System(files, environment, streams)).ask(words);
