// What the first moments of an article cost: when its first figure lives on a slow line, and its elements beside plain ones.
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { setTimeout as later } from "node:timers/promises";
import { brotliCompressSync } from "node:zlib";
import { wholeScript } from "./bundle.js";
import { median } from "./figures-page.js";
import { at } from "./paths.js";
import { listen } from "./server.js";

const loads = 11;
const insertions = 31;
/** A slow line: 1.6 Mbit/s, 150 ms from asking to the first byte; and a processor a quarter as fast. */
const line = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 0.75e6 / 8 };
const slower = 4;

const built = (name) => readFileSync(at("packages", "elements", "dist", `meshwright-${name}.js`), "utf8");
const bundle = (name) => wholeScript({ input: at("tests", "bench", name), format: "iife", foreign: true });

/** Serves files from memory, packed as a well-kept host packs them; resolves to its address and how to end it. */
async function served(files) {
  const packed = Object.fromEntries(Object.entries(files).map(([path, text]) => [path, brotliCompressSync(text)]));
  const server = createServer((request, response) => {
    const body = packed[request.url];
    const type = request.url.endsWith(".js") ? "text/javascript" : "text/html; charset=utf-8";
    const head = { "content-type": type, "content-encoding": "br", "cache-control": "no-store" };
    response.writeHead(body ? 200 : 404, body ? head : {}).end(body);
  });
  const origin = `http://127.0.0.1:${await listen(server, 0)}`;
  const end = () => {
    server.close();
    server.closeAllConnections();
  };
  return { origin, end };
}

const paged = (script, body) =>
  `<!doctype html><html lang="en"><meta charset="utf-8"><title>Limpet</title><script src="${script}" defer></script>${body}`;

/** In the page, before anything of its own: notes when its first count lives. Asking from outside would come later. */
function noteAlive() {
  globalThis.alive = customElements.whenDefined("mw-teeth").then(async () => {
    const count = document.querySelector("mw-teeth");
    await count.updateComplete;
    if (!count.shadowRoot.querySelector("input")) throw new Error("No count lives.");
    return performance.now();
  });
}

/** The least that a script can do for a count: what it takes then is the line's and the browser's own. */
const bare = `customElements.define("mw-teeth", class extends HTMLElement {
  connectedCallback() {
    this.attachShadow({ mode: "open" }).innerHTML = "<input />";
  }
});`;

/**
 * Milliseconds from asking for an article until its first count lives, by the way its script comes: split in two files, as one, or as
 * next to nothing.
 *
 * @param body the article's markup
 */
export async function firstAlive(browser, body) {
  const files = {
    "/split": paged("/meshwright-article.js", body),
    "/whole": paged("/one-file.js", body),
    "/bare": paged("/bare.js", body),
    "/meshwright-article.js": built("article"),
    "/meshwright-second.js": built("second"),
    "/meshwright-third.js": built("third"),
    "/one-file.js": await bundle("one-file.ts"),
    "/bare.js": bare,
  };
  const { origin, end } = await served(files);
  const times = { split: [], whole: [], bare: [] };
  try {
    for (let n = 0; n < loads; n++)
      for (const way of n % 2 ? ["split", "whole", "bare"] : ["bare", "whole", "split"]) {
        // Nothing that one load has brought or compiled serves another.
        const context = await browser.createBrowserContext();
        const page = await context.newPage();
        const session = await page.createCDPSession();
        await session.send("Network.enable");
        await session.send("Network.emulateNetworkConditions", line);
        await session.send("Emulation.setCPUThrottlingRate", { rate: slower });
        await page.evaluateOnNewDocument(noteAlive);
        // A new window opens a page of the browser's own, which is at work for a while.
        await later(1500);
        await page.goto(`${origin}/${way}`, { waitUntil: "domcontentloaded" });
        times[way].push(await page.evaluate(() => globalThis.alive));
        await context.close();
      }
  } finally {
    end();
  }
  return Object.fromEntries(Object.entries(times).map(([way, all]) => [way, median(all)]));
}

/**
 * How long 100 of our elements take from insertion until they are painted, by 100 plain ones of the same texts: one after the other, in
 * one page, by turns.
 *
 * @param build the build's markup
 * @param kinds by name, the markup of one of ours and the text it shows
 */
export async function besidePlain(browser, build, kinds) {
  const files = {
    "/": paged("/meshwright-article.js", `<script src="/plain-text.js" defer></script>${build}<main></main>`),
    "/meshwright-article.js": built("article"),
    "/meshwright-second.js": built("second"),
    "/meshwright-third.js": built("third"),
    "/plain-text.js": await bundle("plain-text.ts"),
  };
  const { origin, end } = await served(files);
  const page = await browser.newPage();
  try {
    await page.goto(`${origin}/`, { waitUntil: "networkidle0" });
    const ratios = {};
    for (const [name, { tag, text }] of Object.entries(kinds)) {
      const { ours, plain } = await page.evaluate(
        async (tag, text, insertions) => {
          const place = document.querySelector("main");
          const { port1, port2 } = new MessageChannel();
          // From the beginning of a frame until it has been laid out and painted: what comes next is a message.
          const inserted = async (markup) => {
            place.textContent = "";
            await new Promise((done) => setTimeout(done, 20));
            const time = await new Promise((done) =>
              requestAnimationFrame(() => {
                const begin = performance.now();
                place.innerHTML = markup;
                port1.onmessage = () => done(performance.now() - begin);
                port2.postMessage("");
              }),
            );
            const last = place.lastElementChild;
            const drawn = last.shadowRoot.querySelector("input")?.value ?? last.shadowRoot.textContent.trim();
            const said = drawn || last.textContent;
            if (said !== text) throw new Error(`${last.localName} shows "${said}"; expected "${text}".`);
            return time;
          };
          const times = { ours: [], plain: [] };
          for (let n = 0; n < insertions + 4; n++) {
            const one = { ours: await inserted(tag.repeat(100)), plain: 0 };
            one.plain = await inserted(`<plain-text text="${text}"></plain-text>`.repeat(100));
            // The first few are in code that has never run.
            if (n >= 4) for (const which of ["ours", "plain"]) times[which].push(one[which]);
          }
          return times;
        },
        tag,
        text,
        insertions,
      );
      ratios[name] = median(ours) / median(plain);
    }
    return ratios;
  } finally {
    await page.close();
    end();
  }
}
