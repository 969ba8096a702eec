// The filter of a long list; the page is whole without it. Returns what looks at the lists anew, for lists
// that grow later; null: there is nothing to filter.
function filterLists(root) {
	var FEW = 12; // seen at once
	var entries = [], lists = [];
	var form = document.createElement("form"), narrow = document.createElement("details");
	var told = document.createElement("output");
	var chosen = {};
	var search = document.createElement("input");
	var searched = document.createElement("label");
	// The heading of a list: what stands above it, but for the verdict.
	function head(list) {
		var above = list.previousElementSibling;
		if (list.parentElement.matches("details")) { return list.parentElement; }
		return above ? above.matches("h2:not(.verdict)") ? above : null : null;
	}
	// Whoever looks for something finds it in a fold too.
	function unfold(list) {
		if (list.parentElement.matches("details")) { list.parentElement.open = true; }
	}
	function holds(entry, wanted) {
		entry.text = entry.text || entry.item.textContent.toLowerCase();
		return entry.text.includes(wanted);
	}
	function show() {
		var keys = Object.keys(chosen).filter(function (key) { return chosen[key] !== ""; });
		var wanted = search.value.toLowerCase().trim(), left = 0;
		entries.forEach(function (entry) {
			var hidden = wanted ? !holds(entry, wanted) : false;
			hidden = hidden || keys.some(function (key) { return entry.tags[key] !== chosen[key]; });
			if (entry.item.hidden !== hidden) { entry.item.hidden = hidden; }
			left += hidden ? 0 : 1;
		});
		lists.forEach(function (list) {
			list.hidden = !list.querySelector("li:not([hidden])");
			if (head(list)) { head(list).hidden = list.hidden; }
			if (keys.length || search.value) { unfold(list); }
		});
		form.className = keys.length || search.value ? "chosen" : "";
		told.textContent = !form.className ? "" : left + " of " + entries.length + " shown" + keys.map(function (key, i) {
			return (i ? ", " : ": ") + key + " " + chosen[key];
		}).join("") + (search.value ? ", with \"" + search.value + "\"" : "");
	}
	function choice(key) {
		var values = new Set(entries.map(function (entry) { return entry.tags[key]; }));
		var label = document.createElement("label"), select = document.createElement("select");
		if (values.size === 1) { return; } // nothing to choose
		label.textContent = key.charAt(0).toUpperCase() + key.slice(1);
		select.name = key;
		select.add(new Option("all", ""));
		Array.from(values).sort().forEach(function (value) {
			if (value) { select.add(new Option(value, value)); }
		});
		select.value = chosen[key] || "";
		select.addEventListener("change", function () {
			chosen[key] = select.value;
			show();
		});
		label.append(select);
		narrow.append(label);
	}
	// What all entries of a list have alike stands at the list.
	function look() {
		lists = Array.from(root.querySelectorAll(".tagged"));
		entries = Array.from(root.querySelectorAll(".tagged > li")).map(function (item) {
			return { item: item, tags: Object.assign({}, item.parentElement.dataset, item.dataset) };
		});
		narrow.querySelectorAll("label").forEach(function (label) { label.remove(); });
		if (entries.length) { Object.keys(entries[0].tags).forEach(choice); }
		narrow.hidden = !narrow.querySelector("label");
		show();
	}
	if (!root.querySelector(".tagged > li")) { return null; }
	search.type = "search";
	search.addEventListener("input", show);
	searched.append("Search", search);
	narrow.append(Object.assign(document.createElement("summary"), { textContent: "Narrow it down" }));
	if (root.querySelector("details .tagged") || root.querySelectorAll(".tagged > li").length > FEW) { form.append(searched); }
	form.append(told, narrow);
	form.addEventListener("submit", function (event) { event.preventDefault(); });
	look();
	if (!form.contains(searched)) {
		if (narrow.hidden) { return null; }
	}
	(head(lists[0]) || lists[0]).before(form);
	return look;
}
filterLists(document);
