// SPDX-License-Identifier: Apache-2.0
// Bytes out of LZMA, as pack.py wrote them (the format of liblzma's "alone" files, with its size known): it
// takes a sixteenth less room than what a browser unpacks by itself. All chances stand in one row.

const STATES = 12, PLACES = 16, SLOTS = 64, LENGTHS = 2 + 2 * 8 * PLACES + 256;
const MATCH = 0, AGAIN = MATCH + STATES * PLACES, AGAIN_FIRST = AGAIN + STATES, AGAIN_SECOND = AGAIN_FIRST + STATES, AGAIN_THIRD = AGAIN_SECOND + STATES,
	ONE = AGAIN_THIRD + STATES, SLOT = ONE + STATES * PLACES, FAR = SLOT + 4 * SLOTS, ALIGN = FAR + 128, LENGTH = ALIGN + PLACES,
	AGAIN_LENGTH = LENGTH + LENGTHS, LITERALS = AGAIN_LENGTH + LENGTHS;
const HEADER = 13, LEAST_MATCH = 2;

function unpack(bytes) {
	const how = bytes[0], context = how % 9, low = (1 << Math.floor(how / 9) % 5) - 1, place = (1 << Math.floor(how / 45)) - 1;
	const out = new Uint8Array(new DataView(bytes.buffer, bytes.byteOffset).getUint32(5, true));
	const chances = new Uint16Array(LITERALS + 0x300 * ((low + 1) << context)).fill(1024);
	const coder = new Uint32Array([0xffffffff, new DataView(bytes.buffer, bytes.byteOffset).getUint32(HEADER + 1)]), RANGE = 0, CODE = 1;
	let from = HEADER + 5;
	const shifted = (range, code) => {
		const short = range < 0x1000000;
		coder[RANGE] = short ? range << 8 : range;
		coder[CODE] = short ? code << 8 | bytes[from++] : code;
	};
	const bit = (at) => {
		const chance = chances[at], range = coder[RANGE], code = coder[CODE], bound = Math.imul(range >>> 11, chance) >>> 0;
		if (code < bound) {
			chances[at] = chance + (2048 - chance >> 5);
			shifted(bound, code);
			return 0;
		}
		chances[at] = chance - (chance >> 5);
		shifted(range - bound >>> 0, code - bound >>> 0);
		return 1;
	};
	// A number of so many bits, the highest first or last.
	const tree = (at, bits) => {
		let it = 1;
		for (let i = bits; i; i--) { it = it << 1 | bit(at + it); }
		return it - (1 << bits);
	};
	const backwards = (at, bits) => {
		let it = 1, value = 0;
		for (let i = 0; i < bits; i++) {
			const is = bit(at + it);
			it = it << 1 | is;
			value |= is << i;
		}
		return value;
	};
	const plain = (bits) => {
		let value = 0;
		for (let i = bits; i; i--) {
			const half = coder[RANGE] >>> 1, code = coder[CODE], is = code >= half ? 1 : 0;
			value = value << 1 | is;
			shifted(half, is ? code - half : code);
		}
		return value;
	};
	const length = (at, here) => (!bit(at) ? tree(at + 2 + 8 * here, 3)
		: !bit(at + 1) ? 8 + tree(at + 2 + 8 * PLACES + 8 * here, 3) : 16 + tree(at + 2 + 16 * PLACES, 8)) + LEAST_MATCH;
	const distance = (count) => {
		const slot = tree(SLOT + SLOTS * Math.min(count - LEAST_MATCH, 3), 6), bits = (slot >> 1) - 1;
		if (slot < 4) { return slot; }
		const high = (2 | slot & 1) << bits;
		return slot < 14 ? high + backwards(FAR + high - slot - 1, bits) : high + (plain(bits - 4) << 4) + backwards(ALIGN, 4);
	};
	const literal = (to, state, last) => {
		const at = LITERALS + 0x300 * (((to & low) << context) + ((to ? out[to - 1] : 0) >> 8 - context));
		let it = 1, beside = state < 7 ? 0 : out[to - last - 1] | 0x100;
		while (beside && it < 0x100) { // behind a match: beside the byte that would have gone on
			const bit_ = beside >> 7 & 1, is = bit(at + (1 + bit_ << 8) + it);
			it = it << 1 | is;
			beside = is === bit_ ? beside << 1 & 0xff | 0x100 : 0;
		}
		while (it < 0x100) { it = it << 1 | bit(at + it); }
		out[to] = it;
		return state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
	};
	const lasts = [0, 0, 0, 0];
	// A distance that was used before, moved to the front; 1: it counts for one byte, else what is read behind it.
	const again = (state, here) => {
		if (bit(AGAIN_FIRST + state)) {
			lasts.unshift(lasts.splice(!bit(AGAIN_SECOND + state) ? 1 : !bit(AGAIN_THIRD + state) ? 2 : 3, 1)[0]);
		} else if (!bit(ONE + PLACES * state + here)) {
			return 1;
		}
		return length(AGAIN_LENGTH, here);
	};
	for (let to = 0, state = 0; to < out.length;) {
		const here = to & place;
		if (!bit(MATCH + PLACES * state + here)) {
			state = literal(to++, state, lasts[0]);
			continue;
		}
		let count = 0;
		if (bit(AGAIN + state)) {
			count = again(state, here);
			state = state < 7 ? count > 1 ? 8 : 9 : 11;
		} else {
			count = length(LENGTH, here);
			lasts.pop();
			lasts.unshift(distance(count));
			state = state < 7 ? 7 : 10;
		}
		for (const end = Math.min(to + count, out.length); to < end; to++) { out[to] = out[to - lasts[0] - 1]; }
	}
	return out;
}
