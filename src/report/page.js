// The filter of a long list; the page is whole without it.
(function () {
	var items = Array.from(document.querySelectorAll("li[data-verdict]"));
	if (items.length === 0) { return; }
	var form = document.createElement("form");
	var told = document.createElement("output");
	var chosen = {};
	function show() {
		var left = 0;
		items.forEach(function (item) {
			item.hidden = Object.keys(chosen).some(function (key) {
				return chosen[key] !== "" ? item.dataset[key] !== chosen[key] : false;
			});
			left += item.hidden ? 0 : 1;
		});
		told.textContent = left + " of " + items.length + " shown";
	}
	Object.keys(items[0].dataset).forEach(function (key) {
		var label = document.createElement("label");
		var select = document.createElement("select");
		var values = new Set(items.map(function (item) { return item.dataset[key]; }));
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
	form.append(told);
	form.addEventListener("submit", function (event) { event.preventDefault(); });
	(items[0].parentNode.previousElementSibling || items[0].parentNode).before(form);
	show();
}());
