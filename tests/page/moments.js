// SPDX-License-Identifier: Apache-2.0
// The moments of use, each from opening to the printed sheet, as a person goes through the page; run
// inside each browser by tests/page/*.py. Every moment returns what was wrong, and calls
// `shown(name)` where a picture is worth while. All water, tanks and reports are invented.
"use strict";
const moments = (() => {
	const id = (name) => document.getElementById(name);
	const wait = (ms) => new Promise((done) => setTimeout(done, ms));
	const SOON_MS = 8000;

	// A closed part hides what is in it in more than one way.
	const seen = (node) => Boolean(node && node.getClientRects().length &&
		(!node.checkVisibility || node.checkVisibility()) && !(node.closest("details:not([open])") && !node.closest("summary")));

	// Until it holds, or what did not.
	async function until(what, holds) {
		for (let left = SOON_MS; left > 0; left -= 20) {
			if (holds()) { return; }
			await wait(20);
		}
		throw new Error(`${what} did not come; the answer is: ${answer().slice(0, 300)}`);
	}
	function type(name, text) {
		const field = typeof name === "string" ? id(name) : name;
		if (!seen(field)) { throw new Error(`${name} is not to be seen`); }
		field.focus();
		field.value = text;
		field.dispatchEvent(new Event("input", { bubbles: true }));
		field.dispatchEvent(new Event("change", { bubbles: true }));
	}
	function press(button) {
		if (!seen(button)) { throw new Error("a button is not to be seen"); }
		button.click();
	}
	const labelled = (text, place = document) => Array.from(place.querySelectorAll("button, summary"))
		.find((one) => one.textContent.trim() === text && seen(one));
	const question = (name) => document.querySelector(`[data-question="${name}"]`);
	const answer = () => id("answer").innerText;
	function expect(holds, what) {
		if (!holds) { throw new Error(what); }
	}
	const ready = () => until("the page", () => document.documentElement.dataset.ready);

	async function leaveFirst() {
		await ready();
		if (!id("first").hidden) { press(id("first-leave")); }
		expect(id("first").hidden, "the first visit cannot be left");
	}
	async function add(name, count, since) {
		type("animal", name);
		await until(`names for ${name}`, () => document.querySelector("#names button"));
		press(document.querySelector("#names button"));
		const number = document.querySelectorAll("#stock > li").length;
		type(`animal-${number}-count`, count);
		if (since) { type(`animal-${number}-since`, since); }
	}
	function openPart(name) {
		if (!id(name).open) { press(id(name).querySelector("summary")); }
	}

	// Four readings in a shop: what suits, why one does, and the sheet to take along.
	async function shopper(shown) {
		await leaveFirst();
		openPart("part-water");
		type("water-first-GH", "250");
		expect(/14 dH/.test(id("water-first").innerText), "a figure like ppm is not asked about");
		type("water-first-KH", "9");
		type("water-first-pH", "7,6");
		type("water-temperature", "25");
		press(question("rank"));
		expect(!/suits \d+ of/.test(answer()), "it was ranked before ppm was settled");
		await shown("asked");
		press(labelled("It is ppm"));
		await until("the ranking", () => /GH 14/.test(answer()));
		expect(document.querySelectorAll("#answer .tagged > li").length >= 12, "no list");
		await until("the whole list", () => document.querySelectorAll("#answer .tagged > li").length > 100);
		await shown("ranked");
		type(document.querySelector("#answer input[type=search]"), "guppy");
		const left = Array.from(document.querySelectorAll("#answer .tagged > li")).filter((one) => one.getClientRects().length);
		expect(left.length > 0 && left.length < 10 && left.every((one) => /guppy/i.test(one.innerText)), "the search finds something else");
		press(left[0].querySelector(".name"));
		expect(/tolerated/.test(left[0].querySelector(".inside").innerText), "no reasons in place");
		await shown("why");
		const term = Array.from(document.querySelectorAll("#answer .term")).find((one) => one.textContent === "GH");
		press(term);
		expect(/General hardness/.test(document.querySelector("#answer .term-says").innerText), "a term has no sentence");
		await shown("term");
		press(term);
		expect(!document.querySelector("#answer .term-says"), "the sentence of a term does not go away");
		press(question("shop"));
		await until("the sheet", () => /Ask before you buy/.test(answer()));
		await shown("shop");
		press(labelled("The same on a terminal"));
		expect(/tapshoal rank .*--GH '250 ppm'/.test(answer()), "the call is not shown");
	}

	// A plan is filled in, judged, saved and opened again.
	async function checker(shown) {
		await leaveFirst();
		openPart("part-water");
		type("water-first-GH", "6");
		type("water-first-KH", "3");
		type("water-first-pH", "7");
		type("water-temperature", "25");
		openPart("part-tank");
		for (const [side, text] of [["length", "80"], ["width", "35"], ["height", "40"]]) { type(`tank-fields-${side}`, text); }
		openPart("part-animals");
		type("animal", "10 neon tetras, 2 anglfish");
		for (const count of ["10", "2"]) {
			await until("a name of two", () => document.querySelector("#names button"));
			press(document.querySelector("#names button"));
			const number = document.querySelectorAll("#stock > li").length;
			expect(id(`animal-${number}-count`).value === count, `animal ${number} is not ${count}`);
		}
		expect(id("animal").value === "", `left over: ${id("animal").value}`);
		await shown("filled");
		press(question("together"));
		await until("the judgement", () => /neon tetra/.test(answer()));
		expect(/angelfish/.test(answer()), "one of the animals is not judged");
		await shown("judged");
		press(labelled("As a short text"));
		const brief = document.querySelector("#answer textarea").value;
		expect(brief.length > 40 && brief.length <= 600, `the short text has ${brief.length} letters`);
		const saved = yaml(planFile(page.kept.sheets[page.kept.open], "again"));
		await openFiles([new File([saved], "plan.yaml")]);
		expect(/Opened: plan.yaml/.test(id("open-said").innerText), id("open-said").innerText);
		expect(document.querySelectorAll("#stock > li").length === 2 && id("water-first-GH").value === "6", "what was opened is something else");
		const lines = (text) => text.split("\n").sort().join("\n"); // keys stand in the order of the rows by now
		expect(lines(yaml(planFile(page.kept.sheets[page.kept.open], "again"))) === lines(saved), "saving what was opened differs");
		const linted = page.program.ask(["lint", "plan.yaml"], page.kept.sheets[page.kept.open], "again");
		expect(linted.code === 0, linted.out + linted.error);
	}

	// The first visit to its end, then a supplier's report by paste.
	async function newcomer(shown) {
		await ready();
		expect(!id("first").hidden, "no first visit");
		for (let step = 0; step < 3; step++) {
			expect(id("first-picture").children.length, `step ${step + 1} has no picture`);
			await shown(`step${step + 1}`);
			press(id("first-next"));
		}
		press(labelled("My supplier's report"));
		type("report-text", "Supply area Invented Valley\npH 7.45\nTotal hardness 15.2 dH\nCalcium 88.1 mg/L\n" +
			"Magnesium 12.4 mg/L\nTotal alkalinity 4.33 meq/L\nNitrate (as NO3) 9.8 mg/L\nTaste none\n");
		press(id("report-read"));
		expect(!/report\.txt/.test(id("report-said").textContent), "what was pasted is called a file");
		expect(/line 3/.test(id("report-said").innerText), `no line is named: ${id("report-said").innerText}`);
		expect(id("water-first-GH").value === "15.2", `GH is ${id("water-first-GH").value}`);
		await shown("read");
		press(question("water"));
		await until("the water", () => /GH 1[0-9]/.test(answer()));
		await shown("water");
		press(question("titrate") || question("rank"));
		await shown("acid");
	}

	// Somebody is asked: the sheet of what to ask back, the link filled in, the short answer.
	async function adviser(shown) {
		await leaveFirst();
		press(labelled("For those who are asked by others"));
		type("ask-back", "rank");
		press(id("ask-back-make"));
		const text = document.querySelector("#ask-back-said textarea").value;
		expect(/general hardness/.test(text) && /KH/.test(text), `it asks: ${text}`);
		const same = page.program.ask(["ask-back", "rank"]).out.trim();
		expect(text.startsWith(same), "the page asks something else than the terminal");
		await shown("ask-back");
		// The other one opens the link ...
		takeLink(toLink(emptySheet(), { wait: "reading.GH,reading.KH,reading.pH", ask: "rank" }));
		opened_();
		askLinked();
		expect(/Asked of you: GH, KH, pH/.test(id("asked").innerText), id("asked").innerText);
		await shown("waiting");
		type("water-first-GH", "6");
		type("water-first-KH", "3");
		type("water-first-pH", "7");
		const back = id("asked").querySelector("textarea").value;
		// ... and sends it back filled.
		page.wait = null;
		id("asked").hidden = true;
		history.replaceState(null, "", back.slice(back.indexOf("#")));
		takeLink();
		opened_();
		askLinked();
		await until("the answer", () => /GH 6/.test(answer()));
		press(labelled("As a short text"));
		const brief = document.querySelector("#answer textarea").value;
		expect(/suits|suit /.test(brief) && brief.length <= 600, `the short text: ${brief}`);
		await shown("brief");
	}

	// A hundred texts that would rather be something else, wherever somebody else's text comes in.
	async function hostile() {
		await leaveFirst();
		const bad = ["<script>window.broken=1</script>", "<img src=x onerror=window.broken=1>", "\"><svg onload=window.broken=1>",
			"</textarea><b id=broken>", "</main><main id=broken>", "javascript:window.broken=1", "{{7*7}}", "'; --", "\u202egnp.exe", "\0",
			"<!--", "]]>", "&lt;b id=broken&gt;", "<base href=//x.invalid>", "<meta http-equiv=refresh content=0>",
			"__proto__", "constructor", "a: &a [*a]", "- \n  -", "%s%n"];
		const texts = bad.concat(bad.map((one) => `x${one}`), bad.map((one) => one.repeat(50)), bad.map((one) => `\n${one}\n`),
			bad.map((one) => `neon tetra ${one}`));
		const fine = (what) => {
			expect(!window.broken && !id("broken") && document.querySelectorAll("main").length === 1 &&
				!document.querySelector("main script, main img, main base, main meta, main iframe"), `${what} became something`);
		};
		for (const text of texts) {
			const s = emptySheet();
			Object.assign(s, { reading: { GH: "6 dH", KH: text }, water: { name: text, kind: text },
				tank: { name: text, length: "80 cm", width: text }, stock: [{ species: text, count: "1" }] });
			takeLink(toLink(s, { ask: text, wait: text }));
			opened_();
			askLinked();
			id("report-text").value = `pH 7.4 ${text}\nTotal hardness 6 dH ${text}`;
			readReport();
			await openFiles([new File([text], "a.yaml")]);
			await openFiles([new File([yaml(planFile(s, text))], `${text}.yaml`)]);
			for (const one of ["rank", "together", "why", "water"]) {
				page.question = QUESTIONS.find((q) => q.id === one);
				answer_(page.question);
			}
			fine(JSON.stringify(text.slice(0, 40)));
			delete page.kept.sheets[page.kept.open];
			page.kept.open = Object.keys(page.kept.sheets)[0] || "a";
			page.kept.sheets[page.kept.open] = emptySheet();
		}
		return `${texts.length} texts`;
	}
	function answer_(question) {
		const words = question.words(page.kept.sheets[page.kept.open]);
		const said = ask(words.concat("-f", "html"));
		id("answer").replaceChildren(said.code <= 1 ? fragmentOf(said.out) : refusal(said.error));
	}

	const all = { shopper, checker, newcomer, adviser, hostile };
	return {
		names: Object.keys(all),
		// Starts a moment; where it is can be read from `window.moment`.
		start(name) {
			window.moment = { at: "", wrong: null, said: "" };
			const shown = async (picture) => {
				window.moment.at = picture;
				while (window.moment.at) { await wait(10); }
			};
			all[name](window.takesPictures ? shown : async () => {}).then(
				(said) => { window.moment.said = said || ""; window.moment.wrong = ""; },
				(error) => { window.moment.wrong = String(error.message || error) || "failed"; });
		},
	};
})();
window.moments = moments;
