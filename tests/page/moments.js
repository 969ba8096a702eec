// SPDX-License-Identifier: Apache-2.0
// The moments of use, each from opening to the printed sheet, as a person goes through the page; run
// inside each browser by tests/page/*.py. Every moment returns what was wrong, and calls
// `shown(name)` where a picture is worth while. All water, tanks and reports are invented.
"use strict";
const moments = (() => {
	const id = (name) => document.getElementById(name);
	const wait = (ms) => new Promise((done) => setTimeout(done, ms));
	const SOON_MS = 8000, STEPS_MOST = 8;
	// What a person does: a field typed into, a choice, a tap. Looking and scrolling is none.
	let steps = 0, reached = {}, done = 0;

	// A closed part hides what is in it in more than one way.
	const seen = (node) => Boolean(node && node.getClientRects().length &&
		(!node.checkVisibility || node.checkVisibility()) && !(node.closest("details:not([open])") && !node.closest("summary")));

	// Until it holds, or what did not.
	async function until(what, holds) {
		done++;
		for (let left = SOON_MS; left > 0; left -= 20) {
			if (holds()) { return; }
			await wait(20);
		}
		throw new Error(`${what} did not come; the answer is: ${answer().slice(0, 300)}`);
	}
	function type(name, text) {
		const field = typeof name === "string" ? id(name) : name;
		if (!seen(field)) { throw new Error(`${name} is not to be seen`); }
		steps++;
		done++;
		field.focus();
		field.value = text;
		// Of a list a browser may say no more than that it changed.
		if (field.tagName !== "SELECT") { field.dispatchEvent(new Event("input", { bubbles: true })); }
		field.dispatchEvent(new Event("change", { bubbles: true }));
	}
	function press(button) {
		if (!seen(button)) { throw new Error("a button is not to be seen"); }
		steps++;
		done++;
		button.click();
	}
	// The answer of a moment is on the screen, after so many steps from opening.
	function isReached(moment) {
		reached[moment] = steps;
		expect(steps <= STEPS_MOST, `${moment} took ${steps} steps`);
	}
	const labelled = (text, place = document) => Array.from(place.querySelectorAll("button, summary"))
		.find((one) => one.textContent.trim() === text && seen(one));
	const question = (name) => document.querySelector(`[data-question="${name}"]`);
	const answer = () => id("answer").innerText;
	function expect(holds, what) {
		if (!holds) { throw new Error(what); }
	}
	// The page, with nothing filled in: after another moment a sheet of its own.
	async function ready() {
		await until("the page", () => document.documentElement.dataset.ready);
		if (Object.keys(sheet().reading).length || sheet().words) { press(id("keep-new")); }
		steps = 0;
	}

	const verdict = () => id("answer").hidden ? "" : (document.querySelector("#answer .verdict") || { innerText: "" }).innerText;
	// The first line is told at the foot of the screen, wherever somebody is on the sheet.
	const told = async (what, holds) => {
		await until(what, () => holds.test(verdict()));
		expect(id("to-answer").textContent === document.querySelector("#answer .verdict").textContent, `told is ${id("to-answer").textContent}`);
	};
	async function askFor(name) {
		if (!id("part-question").open) { press(id("part-question").querySelector("summary")); }
		press(question(name));
	}
	const openPart = (name) => { if (!id(name).open) { press(id(name).querySelector("summary")); } };

	// The sheet as it is printed, in any browser: the rules for paper hold for the screen while it is looked at.
	function isPrinted(holds) {
		const added = [];
		for (const style of document.styleSheets) {
			for (const media of Array.from(style.cssRules).filter((rule) => rule.media && rule.media.mediaText === "print")) {
				for (const rule of Array.from(media.cssRules).filter((one) => one.selectorText)) {
					style.insertRule(rule.cssText, style.cssRules.length);
					added.push(style);
				}
			}
		}
		const paper = document.querySelector("#answer .paper"), left = ["#sheet", "#tools", "#below", "#answer .below"].filter((one) => seen(document.querySelector(one)));
		const fine = seen(document.querySelector("#answer .verdict")) && (!paper || seen(paper)), text = answer();
		for (const style of added) { style.deleteRule(style.cssRules.length - 1); }
		expect(added.length > 5 && !left.length && fine && holds.test(text), `printed: ${added.length} rules, ${left.join(", ")} left, ${text.slice(0, 200)}`);
	}

	// In a shop, with four figures on a note: what to buy; then all that suits, why one does, what to take along.
	async function shopper(shown) {
		await ready();
		type("water-first-GH", "250");
		expect(/14 dH/.test(id("water-first").innerText), "a figure like ppm is not asked about");
		type("water-first-KH", "9");
		type("water-first-pH", "7,6");
		type("tank-fields-size", "112");
		await until("the question of ppm", () => /ppm/.test(answer()));
		expect(!verdict(), "it was answered before ppm was settled");
		await shown("asked");
		press(labelled("It is ppm"));
		await told("a stock", /go together/);
		isReached("what to buy, in a shop");
		await shown("fits");
		await askFor("rank");
		await until("the ranking", () => /GH 14/.test(answer()));
		expect(document.querySelectorAll("#answer .tagged > li").length >= 12, "no list");
		await until("the whole list", () => document.querySelectorAll("#answer .tagged > li").length > 60);
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
		await askFor("shop");
		await until("the narrowed sheet", () => /Ask before you buy/.test(answer()));
		expect(Array.from(document.querySelectorAll("#answer .tagged > li")).every((one) => /guppy/i.test(one.innerText)), "the list for the shop is not the one looked at");
		await shown("shop-narrowed");
		await askFor("fits");
		await askFor("shop");
		await until("the sheet", () => /Ask before you buy/.test(answer()));
		expect(/go together/.test(verdict()), `the list for the shop has no stock: ${verdict()}`);
		await shown("shop");
		press(labelled("The same on a terminal"));
		expect(/tapshoal propose .*--GH '250 ppm'/.test(answer()), "the call is not shown");
		isPrinted(/Ask before you buy[^]*go together/);
	}

	// In a shop, two kinds in mind.
	async function pair(shown) {
		await ready();
		type("water-first-GH", "8");
		type("water-first-KH", "5");
		type("water-first-pH", "7.4");
		type("tank-fields-size", "112");
		type("animals", "8 harlequin rasboras, 2 angelfish");
		await told("the judgement", /^Not /);
		isReached("two kinds in mind, in a shop");
		await shown("pair");
		await askFor("shop");
		await until("the sheet", () => /Ask before you buy/.test(answer()));
		expect(/angelfish/.test(answer()) && /^Not /.test(verdict()), "the list for the shop has no plan");
		await shown("pair-shop");
		isPrinted(/Ask before you buy[^]*angelfish/);
		// Names that are not clear are asked about in place, and one that nobody knows never passes.
		openPart("part-animals");
		type("animals", "6 cory, 2 ang");
		await until("choices", () => document.querySelectorAll("#names button").length > 2);
		await shown("which");
		press(labelled("peppered cory Hoplisoma paleatum"));
		press(labelled("angelfish Pterophyllum scalare"));
		expect(id("animals").value === "6 peppered cory, 2 angelfish", id("animals").value);
		// What stands beside words that are not clear is no answer to others.
		type("animals", "6 peppered cory, 2 ang");
		expect(/which/.test(id("to-answer").textContent) && !verdict(), `an old answer stands beside new words: ${id("to-answer").textContent}`);
		type("animals", "6 peppered cory, 3 blahfoo");
		await until("the unknown one", () => /'blahfoo' is not in the catalogue/.test(answer()));
		await shown("unknown");
	}

	// A question as it came in a message, typed whole.
	async function sentence(shown) {
		await ready();
		type("animals", "I have a 54 litre tank and my tap is 8 dH, can I add 8 harlequin rasboras and one honey gourami pair?");
		await until("the answer", () => verdict());
		press(id("go"));
		await until("the verdict on the screen", () => {
			const { top, bottom } = document.querySelector("#answer .verdict").getBoundingClientRect();
			return top >= 0 && bottom <= innerHeight / 2;
		});
		isReached("a question in a message");
		expect(id("tank-fields-size").value === "54 L" && id("water-first-GH").value === "8", `${id("tank-fields-size").value}, ${id("water-first-GH").value}`);
		const stock = page.kept.sheets[page.kept.open].stock;
		expect(stock.length === 2 && stock[0].count === "8" && stock[1].count === "2" && stock[1].sex === "pairs", JSON.stringify(stock));
		await shown("sentence");
		// The same words are read as on the terminal, how many where nobody says so, too.
		const plain = "will neons suit my 60 litres, GH 12";
		for (const typing of ["can I keep guppies and a betta together?", "will neo", plain]) {
			type("animals", typing);
			expect(id("to-answer").textContent === "Answer" && !id("names").textContent, `${typing}: is asked about: ${id("names").textContent}`);
		}
		press(id("go"));
		expect(verdict() === fragmentOf(page.program.ask(["check", plain, "-f", "html", ...today()]).out).querySelector(".verdict").textContent,
			`another answer than the terminal's: ${verdict()}`);
		expect(sheet().stock[0].count === "6", JSON.stringify(sheet().stock));
		await shown("plain");
		// No animal is named: what is asked is another question, or what fits.
		for (const [asked, name] of [["how do I lower my pH 8.2, KH 9", "asked"], ["how often do I change the water in 60 litres", "asked"], ["what can I keep in 54 litres, GH 8?", "fits"]]) {
			type("animals", asked);
			press(id("go"));
			expect(page.question.id === name && verdict(), `${asked} is answered as ${page.question && page.question.id}`);
			expect(!/Not answered/.test(answer()), `${asked}: ${answer().slice(0, 200)}`);
			await shown(name);
			const terminal = fragmentOf(page.program.ask(["check", asked, "-f", "html", ...today()]).out).querySelector(".verdict").textContent;
			expect(name !== "asked" || verdict() === terminal, `${verdict()} is not ${terminal}`);
		}
		for (const one of ["i put six neon tetras in my new 54 litre tank on the first day, what do i do now? tap water is hardness 221 mg/l and ph 7.6",
			"i bought six guppies and put them in on the first day, 54 litres. what do i do", "which shrimps go with 6 male endlers",
			"I have had 6 platies for a year in a tank 80x35x40, can I add 6 neons", "my betta is gasping after a water change, 40 litres",
			"i have a new 54 l tank and six platys have been in it since today. what should i do", "how much salt for my guppies",
			"help!!! came home and all my fish are at the top gasping, 120 l, did a big water change this morning",
			"I have 6 platies and 6 bronze corys for 2 years in 180 litres, GH 14, KH 9, pH 8.2, nitrate 25, is all well?",
			"we won a goldfish at the fair, 20 litre bowl, how often do i change the water? he looks fine"]) {
			type("animals", one);
			press(id("go"));
			const terminal = fragmentOf(page.program.ask(["check", one, "-f", "html", ...today()]).out).querySelector(".verdict").textContent;
			expect(verdict() === terminal, `${one}: ${verdict()} is not ${terminal}`);
			expect(!/for a year/.test(one) || sheet().lived === "for 6 months", `${one}: lived ${sheet().lived}`);
		}
		type("animals", "6 neons"); // they do not live there because others did
		press(id("go"));
		expect(!sheet().lived && !sheet().stock[0].since, JSON.stringify(sheet().stock));
		type("animals", "xyzzy");
		press(id("go"));
		await until("what is not known is said, which", () => seen(id("names")) && id("names").textContent);
		type("animals", plain);
		press(id("go"));
		type("animals", "8 harlequin rasboras");
		await until("figures of words that are gone do not stay, which", () => !id("tank-fields-size").value && !id("water-first-GH").value);
	}

	// A tank that runs: is all well, and what about the pH; then the plan is saved and opened again.
	async function checker(shown) {
		await ready();
		type("water-first-GH", "14");
		type("water-first-KH", "9");
		type("water-first-pH", "8.2");
		type("water-temperature", "24");
		type("tank-fields-size", "180");
		type("animals", "6 platies, 6 bronze corys");
		type("lived", "for 2 years");
		type("water-more-NO3", "25");
		await told("what to do", /pH/);
		isReached("a running tank, checked");
		await shown("filled");
		press(id("well"));
		expect(/deaths: 0/.test(yaml(planFile(page.kept.sheets[page.kept.open], "t"))), "that all are well is not in the plan");
		await shown("well");
		press(labelled("As a short text"));
		const brief = document.querySelector("#answer textarea").value;
		expect(brief.length > 40 && brief.length <= 600 && !/--/.test(brief), `the short text has ${brief.length} letters: ${brief}`);
		// May these be added? Those that live there stay as they are.
		type("coming", "2 honey gouramis");
		await until("the plan", () => page.question.id === "together" && /honey gourami/.test(answer()));
		expect(page.kept.sheets[page.kept.open].stock.map(({ since }) => Boolean(since)).join() === "true,true,false", "who is to come lives there");
		expect(!/^Test first/.test(verdict()), `what was measured is not taken: ${verdict()}`);
		await shown("coming");
		type("coming", "");
		// Who lives there no more has nitrate asked where it was, before the others.
		const order = () => Array.from(id("water-more").querySelectorAll(".field"), (box) => box.dataset.key).join().slice(0, 20);
		type("lived", "");
		expect(order().startsWith("NO3,NO2,ammonia"), `nitrate stands elsewhere: ${order()}`);
		type("lived", "for 2 years");
		// A slip is told in words, without a file.
		type("tank-fields-water_change", "lots of it");
		await until("the slip", () => /water_change/.test(id("to-answer").textContent) && !/yaml/.test(answer().split("The same")[0]));
		type("tank-fields-water_change", "30 % every 7 days");
		type("tank-fields-size", "100x40x45");
		await until("the sides", () => !/sides of the tank are not given/.test(answer()));
		const saved = yaml(planFile(page.kept.sheets[page.kept.open], "again"));
		await openFiles([new File([saved], "plan.yaml")]);
		expect(/Opened: plan.yaml/.test(id("open-said").innerText), id("open-said").innerText);
		expect(document.querySelectorAll("#stock > li").length === 2 && id("water-first-GH").value === "14", "what was opened is something else");
		const lines = (text) => text.split("\n").sort().join("\n"); // keys stand in the order of the rows by now
		expect(lines(yaml(planFile(page.kept.sheets[page.kept.open], "again"))) === lines(saved), `saving what was opened differs: ${lines(saved)} / ${lines(yaml(planFile(page.kept.sheets[page.kept.open], "again")))}`);
		const linted = page.program.ask(["lint", "plan.yaml"], page.kept.sheets[page.kept.open], "again");
		expect(linted.code === 0, linted.out + linted.error);
		await askFor("drift");
		await until("where it goes", () => /nitrate/i.test(answer()));
		await shown("drift");
		isPrinted(/nitrate/i);
	}

	// A supplier's report by paste, and what can be kept in it.
	async function newcomer(shown) {
		await ready();
		press(labelled("Paste a report"));
		type("report-text", "Supply area Invented Valley\npH 7.45\nTotal hardness 15.2 dH\nCalcium 88.1 mg/L\n" +
			"Magnesium 12.4 mg/L\nTotal alkalinity 4.33 meq/L\nNitrate (as NO3) 9.8 mg/L\nTaste none\n");
		type("tank-fields-size", "60 L");
		await told("a stock", /go together/);
		isReached("a report, and what can be kept");
		expect(!/report\.txt/.test(id("report-said").textContent), "what was pasted is called a file");
		expect(/line 3/.test(id("report-said").innerText), `no line is named: ${id("report-said").innerText}`);
		expect(id("water-first-GH").value === "15.2", `GH is ${id("water-first-GH").value}`);
		await shown("read");
		await askFor("rank");
		await until("the ranking", () => document.querySelectorAll("#answer .tagged > li").length >= 12);
		isReached("a report, and the whole choice");
		isPrinted(/15[.,]2/);
		await askFor("water");
		await until("the water", () => /GH 1[0-9]/.test(answer()));
		await shown("water");
		await askFor("titrate");
		await until("acid", () => /KH/.test(verdict()));
		await shown("acid");
	}

	// The first visit to its end, and what is beside the fields.
	async function first(shown) {
		await ready();
		expect(!id("first").hidden, "no first visit");
		await until("the first picture", () => id("first-picture").children.length);
		await shown("open");
		for (let step = 0; step < 3; step++) {
			await until(`the picture of step ${step + 1}`, () => id("first-picture").children.length);
			await shown(`step${step + 1}`);
			press(id("first-next"));
		}
		expect(id("first").hidden, "the first visit does not end");
		press(document.querySelector("[data-key=GH] .how > summary"));
		expect(/drops/.test(document.querySelector("[data-key=GH] .how").innerText), "how GH is read is not said");
		press(labelled("No figures?"));
		press(labelled("hard"));
		await told("what suits hard water", /suit/);
		isReached("no figures at all");
		for (const fold of document.querySelectorAll("#sheet details")) { fold.open = true; }
		await shown("all-open");
	}

	// Somebody is asked: the sheet of what to ask back, the link filled in, the short answer.
	async function adviser(shown) {
		await ready();
		press(labelled("For those who are asked by others"));
		type("ask-back", "rank");
		press(id("ask-back-make"));
		isReached("what to ask back");
		const text = document.querySelector("#ask-back-said textarea").value;
		expect(/general hardness/.test(text) && /KH/.test(text), `it asks: ${text}`);
		const same = page.program.ask(["ask-back", "rank"]).out.trim();
		expect(text.startsWith(same), "the page asks something else than the terminal");
		await shown("ask-back");
		const print = window.print;
		let printed = 0;
		window.print = () => printed++;
		press(labelled("Print it"));
		window.print = print;
		expect(printed === 1 && /general hardness/.test(answer()), `on paper it asks: ${answer()}`);
		// Every question's link opens a sheet on which each field that it waits for is to be seen.
		for (const [name, { first }] of Object.entries(page.rows.questions)) {
			const { out } = page.program.ask(["ask-back", name, "--page", "https://page.invalid/"]);
			takeLink(/#(\S+)/.exec(out)[1]);
			opened_();
			askLinked();
			expect(page.wait.length > 1, `${name} waits for nothing`);
			expect(!first || id("asked").innerText.startsWith(first), `${name}: what cannot wait does not stand first`);
			const order = Array.from(id("asked").querySelectorAll("li"), (li) => out.replace(/\s+/g, " ").indexOf(li.innerText));
			expect(order.length > 1 && order.every((place, i) => place > (i ? order[i - 1] : -1)),
				`${name} is not asked in the order of its sheet: ${order}`);
			expect(Array.from(id("water-more").querySelectorAll(".field")).filter(seen).length <= page.wait.length,
				`${name} shows fields that nobody asked for`);
			for (const one of page.wait) {
				const [part, key] = one.split("."), field = page.fields.find((other) => other.part === part && other.row.key === key);
				expect(part === "animal" ? seen(id(key === "since" ? "lived" : "animals")) : field && seen(field.input), `${name}: ${one} is not to be seen`);
			}
		}
		await shown("asked-all");
		// Whoever shows a sign lives there, though nobody said so.
		takeLink("animal.1.species=guppy&animal.1.count=6&sign.sign=gasping");
		opened_();
		await until("the answer for a sick tank", () => /air/i.test(answer()));
		expect(sheet().lived && page.question.id === "tank", `a sign is asked as ${page.question && page.question.id}`);
		// The other one opens the link ...
		takeLink(toLink(emptySheet(), { wait: "reading.GH,reading.KH,reading.pH", ask: "rank" }));
		opened_();
		askLinked();
		steps = 0;
		const sentences = () => Array.from(id("asked").querySelectorAll("li"), (li) => li.innerText);
		const waited = /^GH, .*KH, .*pH of /s;
		expect(waited.test(sentences().join(" ")) && sentences().every((says) => same.replace(/\s+/g, " ").includes(says)),
			`not asked as the sheet asks: ${sentences().join(" ")}`);
		press(id("asked").querySelectorAll("button")[2]);
		expect(document.activeElement === id("water-first-pH"), "a question does not lead to its field");
		steps = 0;
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
		isReached("a filled link and the short text of its answer");
		await shown("brief");
		isPrinted(/GH\s+6/);
	}

	// A hundred texts that would rather be something else, wherever somebody else's text comes in.
	async function hostile() {
		await ready();
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
			done++;
			const s = emptySheet();
			Object.assign(s, { reading: { GH: "6 dH", KH: text }, water: { name: text, kind: text },
				tank: { name: text, length: "80 cm", width: text }, stock: [{ species: text, count: "1" }] });
			takeLink(toLink(s, { ask: text, wait: text }));
			opened_();
			askLinked();
			id("animals").value = `3 ${text}, ${text}`;
			id("animals").dispatchEvent(new Event("input"));
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

	// What the program has said, so that nobody else says anything about fish and water.
	class Heard {
		constructor() {
			const call = page.program.call.bind(page.program);
			this.all = "";
			page.program.call = (run) => {
				const said = call(run);
				this.take(said.out);
				this.take(said.error);
				return said;
			};
			page.program.call((running) => running.fields());
		}
		static plain(text) { return text.replace(/[\s\u00a0"]+/g, " "); }
		take(text) {
			let said = text;
			if (text.includes("<main>")) {
				const page_ = new DOMParser().parseFromString(untyped(text.slice(text.indexOf("<main>"), text.lastIndexOf("</main>"))), "text/html");
				said = `${page_.body.textContent} ${Array.from(page_.body.querySelectorAll("text, [aria-label]")).map((one) => one.textContent).join(" ")}`;
			} else if (/^\{/.test(text)) {
				const leaves = [], leaf = (value) => (value && typeof value === "object" ? Object.values(value).forEach(leaf) : leaves.push(value));
				leaf(JSON.parse(text));
				said = leaves.join(" ");
			}
			this.all += ` ${Heard.plain(ofPasted(said)).replace(/(^| )# ?/g, " ").replace(/ ([.,;:?])/g, "$1")}`;
		}
		// Texts on the screen that neither the program has said nor are one of the page's own labels.
		strange() {
			const walker = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT), list = [];
			while (walker.nextNode()) {
				const node = walker.currentNode, text = Heard.plain(node.data).trim().replace(/ ([.,;:?])/g, "$1");
				if (text.split(" ").length < 3 || !seen(node.parentElement) || node.parentElement.closest("textarea, pre, option, .away, .told")) { continue; }
				if (!this.all.includes(text) && !window.ownLabels.some((label) => new RegExp(`^(?:${label})$`).test(text))) { list.push(text); }
			}
			return list;
		}
	}

	const all = { shopper, pair, sentence, checker, newcomer, first, adviser, hostile };
	return {
		names: Object.keys(all),
		done: () => done,
		// Starts a moment; where it is can be read from `window.moment`.
		start(name) {
			[steps, reached] = [0, {}];
			window.moment = { at: "", wrong: null, said: "", reached };
			const heard = new Heard();
			const shown = async (picture) => {
				const strange = window.takesPictures ? heard.strange() : [];
				expect(!strange.length, `${picture}: the page says by itself: ${strange.join(" / ")}`);
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
