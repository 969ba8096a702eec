// SPDX-License-Identifier: Apache-2.0
// Fields from the rows of the program: a row is a label, what it means, and a way to fill it in. A new
// key of a reading, a tank or an animal is a new field without a line here.

// A child that is a text stays one.
function element(name, attributes, ...children) {
	const node = document.createElement(name);
	for (const [key, value] of Object.entries(attributes || {})) {
		if (key.startsWith("on")) {
			node.addEventListener(key.slice(2), value);
		} else if (value !== false && value !== undefined) {
			node.setAttribute(key, value === true ? "" : value);
		}
	}
	node.append(...children);
	return node;
}

const spoken = (word) => word.replace(/[_-]/g, " ");
// A key as a label; one with capitals of its own (GH, pH, NO3-N) is a sign and stays.
const labelled = (key) => (/[A-Z]/.test(key) ? key
	: /[0-9]/.test(key) ? key.toUpperCase() : spoken(key[0].toUpperCase() + key.slice(1)));

// Where a key alone does not say to a stranger what is asked.
const SIZE = "tank-fields-size";
const LABELS = { [SIZE]: "Litres, or sides in cm", "water-of-kind": "Read in (tap, tank)", "water-more-NO3": "Nitrate (NO3)", "water-more-NO2": "Nitrite (NO2)" };

// "14 dH" -> what is typed and its unit; a value without one of the units stays whole.
function splitUnit(value, units) {
	for (const { unit } of units) {
		if (value.endsWith(" " + unit)) { return [value.slice(0, -unit.length - 1), unit]; }
	}
	return [value, units.length ? units[0].unit : ""];
}

// A unit that was typed with the figure stays; else the chosen one is added.
function joinUnit(text, unit) {
	return !unit || /[a-z%]\s*$/i.test(text) ? text : `${text} ${unit}`;
}

// What the program asks of a bare figure of hardness beyond what degrees usually are; "": nothing.
function doubtOfUnit(program, row, value, units) {
	const [text, unit] = splitUnit(value, units);
	if (!text || units[0].unit !== "dH" || unit !== "dH" || !units.some((one) => one.unit === "ppm")) { return ""; }
	const { code, error } = program.ask(["water", `--${row.key}`, text]);
	return code === 2 && /ppm/.test(error) ? error.replace(/^tapshoal: --/, "").trim() : "";
}

// Which part of a sheet, as a link calls it, the fields of a place fill in; and whose rows these are.
const PART_OF = { "water-first": "reading", "water-more": "reading", "water-of": "water", water: "tank", "tank-fields": "tank",
	"tank-more": "tank", "supply-fields": "supply", "shop-fields": "shop", "sign-fields": "sign", "plan-fields": "plan" };
const PARTS = { reading: "reading", supply: "reading", shop: "reading", water: "water", tank: "tank", animal: "stock line", sign: "sign", plan: "plan" };

// One field over `values[row.key]`; `changed(key)` is told of every change.
class Field {
	constructor(row, quantities, values, prefix, changed) {
		Object.assign(this, { row, values, changed, id: `${prefix}-${row.key}`, part: PART_OF[prefix] || "animal" });
		this.quantity = quantities[row.quantity] || { units: [] };
		this.units = row.kind === "figure" ? this.quantity.units : [];
		this.box = element("div", { class: "field", "data-key": row.key });
		this.doubt = element("div", { class: "doubt", role: "status" });
		this.build();
		this.show();
	}
	build() {
		const help = `${this.id}-says`, described = { id: this.id, "aria-describedby": help };
		this.input = this.control(described);
		// A list tells every browser of a choice by "change"; not all of them say "input" of it.
		this.input.addEventListener(this.input.tagName === "SELECT" ? "change" : "input", () => this.take());
		this.line = element("div", { class: "line" }, this.input);
		if (this.units.length > 1) {
			this.unit = element("select", { "aria-label": `unit of ${this.row.key}`, onchange: () => this.take() },
				...this.units.map(({ unit }) => new Option(unit, unit)));
			this.line.append(this.unit);
		} else if (this.units.length) {
			this.line.append(element("span", { class: "unit" }, this.units[0].unit));
		}
		this.box.append(element("label", { for: this.id }, LABELS[this.id] || labelled(this.row.key)), this.line,
			...this.says(help), this.doubt);
	}
	// What is meant; how it is read stands in the fold behind it, where the program says so.
	says(id) {
		if (this.id === SIZE) { return [element("p", { id, class: "says" })]; } // label and example say it
		const how = page.rows.samples[`${this.part}.${this.row.key}`];
		return how ? [element("details", { class: "how" }, element("summary", { id }, this.row.says), ...how.map((text) => element("p", { class: "says" }, text)))]
			: [element("p", { class: "says", id }, this.row.says)];
	}
	control(attributes) {
		const { kind, words } = this.row;
		if (kind === "word") {
			return element("select", attributes, new Option("", ""),
				...words.filter((word) => word !== "unknown").map((word) => new Option(spoken(word), word)));
		}
		if (kind === "yesno") {
			return element("select", attributes, new Option("", ""), new Option("yes", "yes"), new Option("no", "no"));
		}
		if (this.id === SIZE) { return element("input", { ...attributes, type: "text", placeholder: "112, or 80x35x40" }); }
		const date = kind === "text" && this.row.says.includes("YYYY-MM-DD");
		const example = kind === "every" ? `${this.quantity.example} every 7 days`
			: kind === "choice" ? words.concat(this.quantity.example).filter((word) => word !== "unknown").join(", ")
				: (this.quantity.example || "").split(" ")[0];
		return element("input", { ...attributes, type: date ? "date" : "text", placeholder: example || false,
			inputmode: kind === "figure" ? "decimal" : false, spellcheck: "false" });
	}
	// What stands in the sheet into the field.
	show() {
		const [text, unit] = splitUnit(this.values[this.row.key] || "", this.units);
		this.input.value = text;
		if (this.unit && this.values[this.row.key]) { this.unit.value = unit; }
		this.ask();
		if (this.row.key === "KH" && !text && this.values.alkalinity) { this.doubt.textContent = `By the alkalinity, ${this.values.alkalinity}`; }
	}
	take() {
		const text = this.input.value.trim();
		const unit = this.unit ? this.unit.value : this.units.length ? this.units[0].unit : "";
		if (text) {
			this.values[this.row.key] = joinUnit(text, unit);
		} else {
			delete this.values[this.row.key];
		}
		this.sure = false;
		this.ask();
		this.changed(this.row.key);
	}
	ask() {
		this.doubtful = this.sure ? "" : doubtOfUnit(page.program, this.row, this.values[this.row.key] || "", this.units.length ? this.units : [{}]);
		this.doubt.replaceChildren();
		this.box.classList.toggle("wide", Boolean(this.doubtful));
		if (!this.doubtful) { return; }
		this.doubt.append(`${this.doubtful} `,
			element("button", { type: "button", onclick: () => this.settle("ppm") }, "It is ppm"), " ",
			element("button", { type: "button", onclick: () => this.settle("dH") }, "It is dH"));
	}
	settle(unit) {
		this.unit.value = unit;
		this.take();
		this.sure = true;
		this.ask();
		this.changed(this.row.key);
	}
}

// Who has no figure may know the word: soft, middling and hard as detergents have it.
function hardnessWords(field) {
	const say = (text, value) => element("button", { type: "button", onclick: () => {
		field.input.value = value;
		field.take();
	} }, text);
	return [element("p", { class: "says" }, "The water is"), element("p", { class: "row" }, say("soft", "0..8"), say("middling", "8..14"), say("hard", "14..25")),
		...page.rows.samples["reading.GH"].map((text) => element("p", { class: "says" }, text))];
}

// Fields of rows into a place.
function fieldsInto(place, rows, quantities, values, prefix, changed) {
	const fields = rows.map((row) => new Field(row, quantities, values, prefix, changed));
	place.replaceChildren(...fields.map((field) => field.box));
	return fields;
}

// "GH 14 dH, KH 9 dH": what a folded part says.
function told(values, rows, most) {
	const parts = rows.filter((row) => values[row.key]).map((row) => `${/[A-Z]/.test(row.key) ? row.key : spoken(row.key)} ${values[row.key]}`);
	return parts.slice(0, most).join(", ") + (parts.length > most ? ", ..." : "");
}
