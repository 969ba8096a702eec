// SPDX-License-Identifier: Apache-2.0
// Keeps the page on the device when it came from a web server: the first visit stores it, from then on
// it is answered from there, and looked for anew behind the answer. Nothing else is ever asked for.
"use strict";
const KEPT = "tapshoal-@VERSION@", FILES = ["./", "manifest.webmanifest", "icon.svg"];

self.addEventListener("install", (event) => {
	event.waitUntil(caches.open(KEPT).then((kept) => kept.addAll(FILES)).then(() => self.skipWaiting()));
});
self.addEventListener("activate", (event) => {
	event.waitUntil(caches.keys().then((names) => Promise.all(names.filter((name) =>
		name.startsWith("tapshoal-") && name !== KEPT).map((name) => caches.delete(name)))).then(() => self.clients.claim()));
});
self.addEventListener("fetch", (event) => {
	event.respondWith(caches.match(event.request, { ignoreSearch: true }).then((kept) => kept || fetch(event.request)));
});
