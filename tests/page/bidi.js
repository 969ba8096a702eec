// SPDX-License-Identifier: Apache-2.0
// A bridge to Firefox over WebDriver BiDi (W3C): a call a line on standard input, its answer a line
// back. Usage: node --experimental-websocket bidi.js FIREFOX PROFILE
"use strict";
const { spawn } = require("child_process"), readline = require("readline");
const [firefox, profile] = process.argv.slice(2);
const browser = spawn(firefox, ["--headless", "--remote-debugging-port", "0", "--profile", profile, "--no-remote", "about:blank"],
	{ stdio: ["ignore", "ignore", "pipe"] });
const waiting = new Map();
let socket, context, number = 0;

function send(method, params) {
	return new Promise((done, failed) => {
		waiting.set(++number, { done, failed });
		socket.send(JSON.stringify({ id: number, method, params }));
	});
}

async function connect(address) {
	socket = new WebSocket(`${address}/session`);
	socket.onmessage = ({ data }) => {
		const message = JSON.parse(data), call = waiting.get(message.id);
		if (!call) { return; }
		waiting.delete(message.id);
		if (message.type === "error") { call.failed(new Error(message.message)); } else { call.done(message.result); }
	};
	await new Promise((done) => { socket.onopen = done; });
	await send("session.new", { capabilities: {} });
	context = (await send("browsingContext.getTree", {})).contexts[0].context;
}

// Values come back as JSON: the protocol's own form is of no use here.
async function run(script) {
	const answer = await send("script.evaluate", { expression: `JSON.stringify({ value: ${script} })`,
		target: { context }, awaitPromise: true });
	if (answer.type === "exception") { throw new Error(answer.exceptionDetails.text); }
	return JSON.parse(answer.result.value).value;
}

const calls = {
	ready: () => null,
	go: (url) => send("browsingContext.navigate", { context, url, wait: "complete" }),
	run,
	quit: () => send("browser.close", {}),
};

async function answer(line) {
	const [name, ...words] = JSON.parse(line);
	try {
		const value = await calls[name](...words);
		console.log(JSON.stringify({ value: value === undefined ? null : value }));
	} catch (error) {
		console.log(JSON.stringify({ error: String(error.message || error) }));
	}
}

const ready = new Promise((done) => {
	readline.createInterface({ input: browser.stderr }).on("line", (line) => {
		const address = /listening on (ws:\/\/\S+)/.exec(line);
		if (address) { done(connect(address[1])); }
	});
});
let before = ready;
readline.createInterface({ input: process.stdin }).on("line", (line) => {
	before = before.then(() => answer(line));
}).on("close", () => browser.kill());
