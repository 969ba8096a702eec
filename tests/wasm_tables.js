// SPDX-License-Identifier: Apache-2.0
// Replays tables of tests/data/reference against the engine as WebAssembly: the same code in
// another machine must give the same chemistry, within the tolerances of tests/checks. Prints TAP
// lines from the number given: node wasm_tables.js MODULE FIRST_NUMBER.
"use strict";
const fs = require("fs"), path = require("path");
const engine = new WebAssembly.Instance(new WebAssembly.Module(fs.readFileSync(process.argv[2]))).exports;
const folder = path.join(__dirname, "data", "reference");
const at = engine.memory.grow(1) * 65536; // a page that the engine knows nothing of
const cells = () => new DataView(engine.memory.buffer);
let number = Number(process.argv[3]);

function rows(name) {
	const lines = fs.readFileSync(path.join(folder, name), "utf8").trim().split(/\r?\n/)
		.filter((line) => !line.startsWith("#"));
	const head = lines.shift().split(",");
	return lines.map((line) => Object.fromEntries(line.split(",").map((c, i) => [head[i], c])));
}

// struct ts_solution: temp, Ca, Mg, Na, K, Cl, SO4, NO3, alkalinity, inorganic carbon.
function soda(alk, temp) {
	[temp, 0, 0, alk, 0, 0, 0, 0, alk, 0].forEach((v, i) => cells().setFloat64(at + 8 * i, v, true));
	return at;
}

// A call that returns a status and leaves its answer behind the solution.
function answer(name, ...given) {
	const place = at + 128;
	const status = engine[name](...given, place);
	return status === 0 ? cells().getFloat64(place, true) : NaN;
}

function check(what, limit, least, differences) {
	const worst = differences.reduce((a, b) => Math.max(a, b), 0);
	const fine = differences.length >= least && worst <= limit;
	console.log(`${fine ? "ok" : "not ok"} ${number++} - wasm: ${what}`);
	console.log(`# ${differences.length} rows, worst ${worst.toPrecision(3)}, allowed ${limit}`);
}

// USGS PHREEQC 3, database phreeqc.dat.
check("pH in air by KH", 0.02, 150, rows("air_equilibrium_pH_by_KH_phreeqc.csv").map((r) => {
	const co2 = engine.ts_chem_gas_co2_mmol_l(+r.t_C, 1e-6 * r.CO2_ppm);
	return Math.abs(answer("ts_chem_ph_at_co2", soda(+r.alk_meq_kgw, +r.t_C), co2) - r.pH);
}));
check("CO2 from pH and KH, relative", 0.02, 250, rows("co2_from_pH_KH_phreeqc.csv").map((r) => {
	const s = soda(r.KH_dKH * 0.3566525, +r.t_C);
	const mg = 44.009 * answer("ts_chem_co2_from_ph", s, +r.pH);
	return Math.abs(mg / r.CO2_mg_L_phreeqc - 1);
}));
// Emerson et al. 1975: percent un-ionised, one column a temperature, one row a pH.
check("un-ionised ammonia, relative", 1e-3, 1000, rows("emerson1975_percent_nh3.csv").flatMap((r) =>
	Object.keys(r).filter((c) => /^\d+C$/.test(c) && r[c] !== "").map((c) => {
		const ph = Number(r.pH), temp = parseFloat(c);
		return Math.abs(100 * answer("ts_chem_nh3_fraction", ph, temp) / r[c] - 1);
	})));
