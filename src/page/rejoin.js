// SPDX-License-Identifier: Apache-2.0
// The module out of the rows that split.py laid it in; what stands behind each instruction is said there.

const ROWS = 12, LOCALS = 1, OPS = 2, MISC = 3, BRANCHES = 4, READ = 5, WRITTEN = 6, OFFSETS = 7, CALLS = 8, FIGURES = 10, BEHIND = 11;
const ALIGNED = 16, TABLE = 32, INDIRECT = 33, BYTES = 64, END = 0x0b;

function rejoined(split) {
	const view = new DataView(split.buffer, split.byteOffset), size = (i) => view.getUint32(4 * i, true);
	const out = new Uint8Array(size(0)), at = [], kinds = 4 * (2 + ROWS);
	let to = 0, used = [];
	for (let i = 0, from = kinds + 256; i < ROWS; from += size(2 + i++)) { at[i] = from; }
	const copy = (row, count) => {
		for (const end = to + count; to < end;) { out[to++] = split[at[row]++]; }
	};
	const number = (row) => {
		for (let value = 0, shift = 0; ; shift += 7) {
			const byte = out[to++] = split[at[row]++];
			value |= (byte & 127) << shift;
			if (byte < 128) { return value; }
		}
	};
	// A local, and a function that is called, is told by how many others were used since.
	const called = [];
	const place = (row, used) => {
		const begin = to, since = number(row);
		while (used.length <= since) { used.push(used.length); }
		const it = used[since];
		for (let i = since; i; i--) { used[i] = used[i - 1]; }
		used[0] = it;
		to = begin;
		write(it);
	};
	const write = (value) => {
		for (; value > 127; value >>= 7) { out[to++] = value & 127 | 128; }
		out[to++] = value;
	};
	const instruction = () => {
		const op = out[to++] = split[at[OPS]++], kind = split[kinds + op];
		if (kind > BYTES) {
			copy(FIGURES, kind - BYTES);
		} else if (kind === INDIRECT) {
			number(MISC);
			number(MISC);
		} else if (kind === TABLE) {
			for (let rest = number(BRANCHES); rest >= 0; rest--) { number(BRANCHES); }
		} else if (kind >= ALIGNED) {
			out[to++] = kind - ALIGNED;
			number(OFFSETS);
		} else if (kind === READ || kind === WRITTEN || kind === CALLS) {
			place(kind, kind === CALLS ? called : used);
		} else if (kind) {
			number(kind);
		}
		return op > 1 && op < 5 ? 1 : op === END ? -1 : 0;
	};
	copy(0, size(2));
	for (let left = size(1); left; left--) {
		const begin = to, room = 5; // of its size, which is known behind it
		to += room;
		for (let rest = number(LOCALS); rest; rest--) {
			number(LOCALS);
			copy(LOCALS, 1);
		}
		used = [];
		for (let depth = 1; depth;) { depth += instruction(); }
		const end = to;
		to = begin;
		write(end - begin - room);
		out.copyWithin(to, begin + room, end);
		to += end - begin - room;
	}
	copy(BEHIND, size(2 + BEHIND));
	return out;
}
