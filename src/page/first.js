// SPDX-License-Identifier: Apache-2.0
// A first visit: three small steps that show why the water comes first, each with a picture that is
// drawn from the records or by the program. It can be left at any time and is not shown again.

const GH_MOST = 30;

// How many kinds are comfortable at each whole degree of hardness.
function comfortable() {
	const found = page.program.json(["find", "."]).found, counts = new Array(GH_MOST + 1).fill(0);
	counts.of = found.length;
	for (const { parameters } of found) {
		const gh = parameters.find(({ name }) => name === "gh");
		if (!gh || !gh.preferred) { continue; }
		const [low, high] = gh.preferred;
		for (let at_ = Math.ceil(low === null ? 0 : low); at_ <= GH_MOST && (high === null || at_ <= high); at_++) {
			counts[at_]++;
		}
	}
	return counts;
}

function drawn(name, attributes, ...children) {
	const node = document.createElementNS("http://www.w3.org/2000/svg", name);
	for (const [key, value] of Object.entries(attributes)) { node.setAttribute(key, value); }
	node.append(...children);
	return node;
}

function kindsByHardness() {
	const counts = comfortable(), most = Math.max(...counts), text = (x, y, says, anchor) =>
		drawn("text", { x, y, "text-anchor": anchor || "middle" }, says);
	const picture = drawn("svg", { class: "curve", viewBox: "0 0 340 150", role: "img",
		"aria-label": `Kinds that are comfortable: ${[2, 8, 14, 20].map((gh) => `${counts[gh]} at GH ${gh}`).join(", ")}` });
	counts.forEach((count, gh) => picture.append(drawn("path", { class: "gh bar",
		d: `M${24 + gh * 10} 120v${-(count / most) * 96}` })));
	for (const gh of [0, 10, 20, 30]) { picture.append(text(24 + gh * 10, 136, String(gh))); }
	picture.append(text(24, 14, `${most} of ${counts.of} kinds`, "start"), text(324, 148, "GH, dH", "end"),
		drawn("path", { class: "axis", d: "M18 120h312" }));
	return picture;
}

// The days of a new filter, out of an answer of the program.
function filterDays() {
	const { out } = page.program.ask(["propose", "--GH", "8 dH", "--KH", "4 dH", "--volume", "60 L", "-f", "html"]);
	return fragmentOf(out).querySelector("ol") || "";
}

function threeFigures() {
	const rows = FIRST_READINGS.map((key) => row("reading", key)).concat(row("tank", "temperature"));
	return element("dl", {}, ...rows.map(({ key, says }) => element("div", {},
		element("dt", {}, key), element("dd", {}, says))));
}

// What is said beside them comes from the program.
const PICTURES = [kindsByHardness, filterDays, threeFigures];

function showStep(number) {
	const { head, says } = page.rows.steps[number], last = number === PICTURES.length - 1;
	at("first-head").textContent = `${number + 1} of ${PICTURES.length}: ${head}`;
	at("first-text").textContent = says;
	at("first-picture").replaceChildren();
	setTimeout(() => drawStep(number), WAIT_MS); // nobody waits with a first figure for a picture
	at("first-next").textContent = last ? "Fill in my water" : "Next";
	at("first-next").onclick = () => (last ? leaveFirst() : showStep(number + 1));
	if (number) { at("first").scrollIntoView(); }
}

function drawStep(number) {
	if (!at("first").hidden && !at("first-picture").children.length) { at("first-picture").replaceChildren(PICTURES[number]()); }
}

function leaveFirst() {
	page.kept.seen = true;
	keepSheets(page.kept);
	at("first").hidden = true;
	at("part-water").open = true;
	at("water-first-GH").focus();
}

function firstVisit() {
	if (page.kept.seen) { return; }
	at("first").hidden = false;
	at("first-leave").onclick = leaveFirst;
	at("below").hidden = false;
	at("to-answer").textContent = "New here? Three pictures below, or fill in what you know";
	showStep(0);
}
