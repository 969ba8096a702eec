// The filter of a long list, which is short first; the page is whole without it.
var FIRST = 12, LONG = 24;
function filterLists(root) {
	var items = Array.from(root.querySelectorAll(".tagged > li"));
	if (items.length === 0) { return; }
	var lists = Array.from(root.querySelectorAll(".tagged"));
	var form = document.createElement("form");
	var told = document.createElement("output");
	var chosen = {};
	var search = document.createElement("input");
	var searched = document.createElement("label");
	// What all entries of a list have alike stands at the list.
	function tags(item) {
		return Object.assign({}, item.parentElement.dataset, item.dataset);
	}
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
	// The rest of a long list, until it is asked for or something is looked for.
	function shorten(list) {
		var more = document.createElement("button"), rest = Array.from(list.children).slice(FIRST);
		if (LONG >= list.children.length) { return; }
		rest.forEach(function (item) { item.classList.add("later"); });
		more.type = "button";
		more.className = "rest";
		more.textContent = rest.length + " more";
		more.addEventListener("click", function () { lengthen(list); });
		list.after(more);
	}
	function lengthen(list) {
		var more = list.nextElementSibling;
		if (!more || more.className !== "rest") { return; }
		list.querySelectorAll(".later").forEach(function (item) { item.classList.remove("later"); });
		more.remove();
	}
	function show() {
		var keys = Object.keys(chosen).filter(function (key) { return chosen[key] !== ""; });
		var left = 0;
		items.forEach(function (item) {
			item.hidden = !item.textContent.toLowerCase().includes(search.value.toLowerCase().trim()) ||
				keys.some(function (key) { return tags(item)[key] !== chosen[key]; });
			left += item.hidden ? 0 : 1;
		});
		lists.forEach(function (list) {
			list.hidden = !list.querySelector("li:not([hidden])");
			if (head(list)) { head(list).hidden = list.hidden; }
			if (!(keys.length || search.value)) { return; }
			unfold(list);
			lengthen(list);
		});
		told.textContent = left + " of " + items.length + " shown" + keys.map(function (key, i) {
			return (i ? ", " : ": ") + key + " " + chosen[key];
		}).join("") + (search.value ? ", with \"" + search.value + "\"" : "");
		form.className = keys.length || search.value ? "chosen" : "";
	}
	search.type = "search";
	search.addEventListener("input", show);
	searched.append("Search", search);
	if (items.length > 12) { form.append(searched); } // fewer are seen at once
	Object.keys(tags(items[0])).forEach(function (key) {
		var label = document.createElement("label");
		var select = document.createElement("select");
		var values = new Set(items.map(function (item) { return tags(item)[key]; }));
		if (values.size === 1) { return; } // nothing to choose
		label.textContent = key.charAt(0).toUpperCase() + key.slice(1);
		select.name = key;
		select.add(new Option("all", ""));
		Array.from(values).sort().forEach(function (value) {
			if (value) { select.add(new Option(value, value)); }
		});
		select.addEventListener("change", function () {
			chosen[key] = select.value;
			show();
		});
		label.append(select);
		form.append(label);
	});
	if (!form.firstChild) { return; }
	form.append(told);
	form.addEventListener("submit", function (event) { event.preventDefault(); });
	(head(lists[0]) || lists[0]).before(form);
	lists.forEach(shorten);
	show();
}
filterLists(document);
