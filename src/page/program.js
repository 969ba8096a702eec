// SPDX-License-Identifier: Apache-2.0
// The program in this page: the few calls of the operating system that it makes (WASI preview 1),
// answered from files in memory, and one function that asks it. Nothing here knows what is asked.
"use strict";

const ERROR = { BADF: 8, EXIST: 20, INVAL: 28, ISDIR: 31, NOENT: 44, NOSYS: 52, NOTDIR: 54 };
const KIND = { other: 0, folder: 3, file: 4 };
const LEAST_BYTES = 4096;

// Files by their whole path. Folders are there as soon as something is in them.
class MemoryFiles {
	constructor() {
		this.bytes = new Map();
		this.folders = new Map([["/", new Set()]]);
	}
	kind(path) {
		return this.bytes.has(path) ? "file" : this.folders.has(path) ? "folder" : null;
	}
	list(path) {
		return Array.from(this.folders.get(path));
	}
	get(path) {
		return this.bytes.get(path);
	}
	folder(path) {
		if (this.folders.has(path)) { return; }
		this.folders.set(path, new Set());
		this.folder(above(path));
		this.folders.get(above(path)).add(path.slice(path.lastIndexOf("/") + 1));
	}
	put(path, bytes) {
		this.folder(above(path));
		this.folders.get(above(path)).add(path.slice(path.lastIndexOf("/") + 1));
		this.bytes.set(path, bytes);
	}
	remove(path) {
		this.folders.get(above(path)).delete(path.slice(path.lastIndexOf("/") + 1));
		this.bytes.delete(path);
	}
	link() {
		return null;
	}
}

// "/a/../b/./c" -> "/b/c"
function normal(path) {
	const parts = [];
	for (const part of path.split("/")) {
		if (part === "..") { parts.pop(); } else if (part && part !== ".") { parts.push(part); }
	}
	return "/" + parts.join("/");
}

function above(path) {
	return path.slice(0, path.lastIndexOf("/")) || "/";
}

// One open file: bytes, how many of them count, where it stands.
class Open {
	constructor(path, bytes, writes) {
		Object.assign(this, { path, bytes, length: bytes.length, at: 0, writes });
	}
	read(room) {
		const from = this.at;
		this.at = Math.min(this.length, from + room);
		return this.bytes.subarray(from, this.at);
	}
	write(chunk) {
		const end = this.at + chunk.length;
		if (end > this.bytes.length) {
			const larger = new Uint8Array(Math.max(end, this.bytes.length * 2, LEAST_BYTES));
			larger.set(this.bytes.subarray(0, this.length));
			this.bytes = larger;
		}
		this.bytes.set(chunk, this.at);
		this.at = end;
		this.length = Math.max(this.length, end);
	}
}

// The system calls over `files`. `streams`: read(room) for input 0, write(bytes) for 1 and 2.
class System {
	constructor(files, environment, streams) {
		Object.assign(this, { files, environment, streams, opened: new Map(), next: 4 });
		this.numbers = new Map();
	}
	get view() {
		return new DataView(this.memory.buffer);
	}
	bytes(at, length) {
		return new Uint8Array(this.memory.buffer, at, length);
	}
	path(from, at, length) {
		const base = from === 3 ? "/" : this.opened.get(from).path + "/";
		return normal(base + new TextDecoder().decode(this.bytes(at, length)));
	}
	number(path) {
		if (!this.numbers.has(path)) { this.numbers.set(path, this.numbers.size + 1); }
		return BigInt(this.numbers.get(path));
	}
	// Texts with a zero behind each, and where they begin; how many and how long they are.
	texts(list, heads, at) {
		for (const text of list) {
			const bytes = new TextEncoder().encode(text + "\0");
			this.view.setUint32(heads, at, true);
			this.bytes(at, bytes.length).set(bytes);
			heads += 4;
			at += bytes.length;
		}
		return 0;
	}
	sizes(list, count, length) {
		const bytes = list.reduce((sum, text) => sum + new TextEncoder().encode(text).length + 1, 0);
		this.view.setUint32(count, list.length, true);
		this.view.setUint32(length, bytes, true);
		return 0;
	}
	// Hands the pieces of a vector to `take` until it takes less than a piece.
	pieces(at, count, ret, take) {
		let total = 0;
		for (let i = 0; i < count; i++) {
			const length = this.view.getUint32(at + 8 * i + 4, true);
			const done = take(this.bytes(this.view.getUint32(at + 8 * i, true), length));
			total += done;
			if (done < length) { break; }
		}
		this.view.setUint32(ret, total, true);
		return 0;
	}
	open(path, flags, rights, ret) {
		const creates = flags & 1, exclusive = flags & 4, empties = flags & 8;
		const kind = this.files.kind(path), writes = (rights & 64n) !== 0n;
		if (kind && creates && exclusive) { return ERROR.EXIST; }
		if (!kind && (!creates || this.files.kind(above(path)) !== "folder")) { return ERROR.NOENT; }
		if (kind === "file" && flags & 2) { return ERROR.NOTDIR; }
		if (kind === "folder" && writes) { return ERROR.ISDIR; }
		const bytes = kind === "file" && !empties ? this.files.get(path) : new Uint8Array(0);
		const open = new Open(path, bytes, writes);
		open.names = kind === "folder" ? [".", ".."].concat(this.files.list(path)) : null;
		if (writes && !kind) { this.files.put(path, bytes); }
		this.opened.set(this.next, open);
		this.view.setUint32(ret, this.next++, true);
		return 0;
	}
	names(open, at, room, cookie, ret) {
		let used = 0;
		for (let i = Number(cookie); i < open.names.length && used < room; i++) {
			const name = new TextEncoder().encode(open.names[i]), path = normal(open.path + "/" + open.names[i]);
			const entry = new Uint8Array(24 + name.length), view = new DataView(entry.buffer);
			view.setBigUint64(0, BigInt(i + 1), true);
			view.setBigUint64(8, this.number(path), true);
			view.setUint32(16, name.length, true);
			view.setUint8(20, KIND[this.files.kind(path)] || KIND.other);
			entry.set(name, 24);
			const part = entry.subarray(0, room - used);
			this.bytes(at + used, part.length).set(part);
			used += part.length;
		}
		this.view.setUint32(ret, used, true);
		return 0;
	}
	stat(path, ret) {
		const kind = this.files.kind(path);
		if (!kind) { return ERROR.NOENT; }
		this.bytes(ret, 64).fill(0);
		this.view.setBigUint64(ret + 8, this.number(path), true);
		this.view.setUint8(ret + 16, KIND[kind] || KIND.other);
		this.view.setBigUint64(ret + 24, 1n, true);
		this.view.setBigUint64(ret + 32, kind === "file" ? BigInt(this.files.get(path).length) : 0n, true);
		return 0;
	}
	rename(from, to) {
		if (this.files.kind(from) !== "file") { return ERROR.NOENT; }
		this.files.put(to, this.files.get(from));
		this.files.remove(from);
		return 0;
	}
	close(file) {
		const open = this.opened.get(file);
		if (!open) { return file < 4 ? 0 : ERROR.BADF; }
		if (open.writes) { this.files.put(open.path, open.bytes.slice(0, open.length)); }
		this.opened.delete(file);
		return 0;
	}
	seek(file, offset, whence, ret) {
		const open = this.opened.get(file);
		if (!open) { return ERROR.BADF; }
		open.at = Number(offset) + [0, open.at, open.length][whence];
		this.view.setBigUint64(ret, BigInt(open.at), true);
		return 0;
	}
	read(file, at, count, ret) {
		const open = file === 0 ? this.streams : this.opened.get(file);
		if (!open || open.names) { return open ? ERROR.ISDIR : ERROR.BADF; }
		return this.pieces(at, count, ret, (into) => {
			const chunk = open.read(into.length);
			into.set(chunk);
			return chunk.length;
		});
	}
	write(file, at, count, ret) {
		const open = this.opened.get(file);
		if (!open && file !== 1 && file !== 2) { return ERROR.BADF; }
		return this.pieces(at, count, ret, (from) => {
			if (open) { open.write(from); } else { this.streams.write(file, from); }
			return from.length;
		});
	}
	fdstat(file, ret) {
		const open = this.opened.get(file);
		if (!open && file > 3) { return ERROR.BADF; }
		this.bytes(ret, 24).fill(0);
		this.view.setUint8(ret, file === 3 || (open && open.names) ? KIND.folder : open ? KIND.file : KIND.other);
		this.view.setBigUint64(ret + 8, 0xffffffffn, true);
		this.view.setBigUint64(ret + 16, 0xffffffffn, true);
		return 0;
	}
	readlink(path, at, room, ret) {
		const link = this.files.link(path);
		if (link === null) { return this.files.kind(path) ? ERROR.INVAL : ERROR.NOENT; }
		const bytes = new TextEncoder().encode(link).subarray(0, room);
		this.bytes(at, bytes.length).set(bytes);
		this.view.setUint32(ret, bytes.length, true);
		return 0;
	}
	root(file, ret) {
		if (file !== 3) { return ERROR.BADF; }
		this.view.setUint32(ret, 0, true);
		this.view.setUint32(ret + 4, 1, true);
		return 0;
	}
	imports() {
		return {
			environ_sizes_get: (count, length) => this.sizes(this.environment, count, length),
			environ_get: (heads, at) => this.texts(this.environment, heads, at),
			clock_time_get: (clock, precision, ret) => {
				this.view.setBigUint64(ret, BigInt(Date.now()) * 1000000n, true);
				return 0;
			},
			fd_close: (file) => this.close(file),
			fd_fdstat_get: (file, ret) => this.fdstat(file, ret),
			fd_fdstat_set_flags: () => 0,
			fd_prestat_get: (file, ret) => this.root(file, ret),
			fd_prestat_dir_name: (file, at) => {
				this.view.setUint8(at, 47);
				return 0;
			},
			fd_read: (file, at, count, ret) => this.read(file, at, count, ret),
			fd_write: (file, at, count, ret) => this.write(file, at, count, ret),
			fd_seek: (file, offset, whence, ret) => this.seek(file, offset, whence, ret),
			fd_readdir: (file, at, room, cookie, ret) =>
				this.names(this.opened.get(file), at, room, cookie, ret),
			path_create_directory: (from, at, length) => {
				const path = this.path(from, at, length);
				if (this.files.kind(path)) { return ERROR.EXIST; }
				if (this.files.kind(above(path)) === "file") { return ERROR.NOTDIR; }
				this.files.folder(path);
				return 0;
			},
			path_filestat_get: (from, flags, at, length, ret) =>
				this.stat(this.path(from, at, length), ret),
			path_open: (from, look, at, length, flags, rights, inheriting, mode, ret) =>
				this.open(this.path(from, at, length), flags, rights, ret),
			path_readlink: (from, at, length, into, room, ret) =>
				this.readlink(this.path(from, at, length), into, room, ret),
			path_rename: (from, at, length, to, toAt, toLength) =>
				this.rename(this.path(from, at, length), this.path(to, toAt, toLength)),
			path_unlink_file: (from, at, length) => {
				const path = this.path(from, at, length);
				if (this.files.kind(path) !== "file") { return ERROR.NOENT; }
				this.files.remove(path);
				return 0;
			},
			proc_exit: (code) => {
				throw new Error("the program ended with " + code);
			},
		};
	}
}

// Texts one behind the other, each ended by a zero, in the program's memory.
function lend(exports, texts) {
	const bytes = new TextEncoder().encode(texts.map((text) => text.replace(/\0/g, "") + "\0").join(""));
	const at = exports.room(bytes.length);
	if (!at) { throw new Error("out of memory"); }
	new Uint8Array(exports.memory.buffer, at, bytes.length).set(bytes);
	return at;
}

// The program of a compiled module; the functions that it returns give its exit code.
function startProgram(module, system) {
	const imports = { wasi_snapshot_preview1: system.imports() };
	const exports = new WebAssembly.Instance(module, imports).exports;
	system.memory = exports.memory;
	exports._initialize();
	const lent = (texts, use) => {
		const at = lend(exports, texts), code = use(at);
		exports.give_back(at);
		return code;
	};
	return {
		load(image) {
			const at = exports.room(image.length);
			if (!at) { throw new Error("out of memory"); }
			new Uint8Array(exports.memory.buffer, at, image.length).set(image);
			return exports.load(at, image.length);
		},
		ask: (words) => lent(["tapshoal"].concat(words), (at) => exports.ask(at, words.length + 1)),
		plain: (file) => lent([file], (at) => exports.plain(at)),
		animals: (words, day) => lent([day, words], (at) => exports.animals(at + day.length + 1, at)), // a day has plain letters
		sentence: (words) => lent([words], (at) => exports.sentence(at)),
		fields: () => exports.fields(),
		memory: () => exports.memory.buffer.byteLength,
	};
}
