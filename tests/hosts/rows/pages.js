// Pages of other kinds than a blog's: encodings, old libraries, translators, editors, written anew, without a body.
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { JSDOM, VirtualConsole } from "jsdom";
import { at } from "../../../scripts/lib/paths.js";
import { delay, until } from "../lib/engine.js";
import { startSite } from "../lib/site.js";
import { article, attributeBuild, attributes, jsonBuild, page, plainSentence, sentence } from "../lib/snippets.js";
import { good, live, stepped } from "../lib/stepped.js";
import { blocks } from "../lib/elements.js";

const all = ["chromium", "firefox", "webkit"];
const built = (name) => readFileSync(at("packages", "elements", "dist", name), "utf8");

export const subject = "Pages of other kinds";

export const rows = [
  {
    title: "A page in another encoding takes the script for one of its own",
    software: [],
    engines: all,
    async run(t) {
      for (const name of ["meshwright.js", ...["figures", "reports", "words", "tools"].map((kind) => `${kind}-de.js`)])
        t.site.set(`/bare/${name}`, built(name), { type: "text/javascript" });
      const elsewhere = blocks.replaceAll('build="whole"', "").replaceAll("×", "&times;");
      const mixed = /Ã|Â|â€|\ufffd|ﾃ|ﾂ|Ц|б/;
      for (const encoding of ["windows-1252", "shift_jis", "koi8-r"]) {
        const markup = page(`<main>${article}${elsewhere}</main>`, { library: "bare/meshwright.js" });
        const window = await t.open(markup.replace('<meta charset="utf-8">', ""), {
          type: `text/html; charset=${encoding}`,
        });
        assert.equal(await window.run(() => document.characterSet.toLowerCase()), encoding);
        assert.deepEqual(await stepped(window), good);
        const english = await window.run(() => reads("main"));
        assert.match(english, /×/, encoding);
        assert.doesNotMatch(english, mixed, encoding);
        const german = await window.run(async () => {
          document.documentElement.lang = "de";
          for (let n = 0; n < 60 && !/Rädern/.test(reads("main")); n++) await settled();
          return reads("main");
        });
        assert.match(german, /Rädern/, encoding);
        assert.doesNotMatch(german, mixed, encoding);
      }
    },
  },
  {
    title: "The script's text stands in the page itself, without a file",
    software: [],
    engines: all,
    async run(t) {
      const code = built("meshwright.js");
      const window = await t.open(
        page(article, { library: "" }).replace("</body>", () => `<script>${code}</script></body>`),
      );
      assert.deepEqual(await stepped(window), good);
      assert.equal(await window.run(() => document.body.innerText.includes("function")), false);
      // There is no file beside it to take a language from.
      const other = await window.run(async () => {
        document.documentElement.lang = "de";
        await settled();
        return [shown(), wrong];
      });
      assert.deepEqual(other, ["41,53", []]);
    },
  },
  {
    title: "Old libraries add to built-in prototypes, and replace what is built in",
    software: [],
    engines: all,
    async run(t) {
      const old = t.site.script(`
        Object.prototype.each = function () {};
        Array.prototype.each = Array.prototype.forEach;
        Array.prototype.toJSON = function () { return "[" + this.map(String).join(", ") + "]"; };
        String.prototype.toJSON = function () { return '"' + this + '"'; };
        Number.prototype.toJSON = function () { return String(this); };
        Array.from = function (list) { var all = []; for (var n = 0; n < list.length; n++) all.push(list[n]); return all; };
        Function.prototype.bind = function (self) { var own = this; return function () { return own.apply(self, arguments); }; };
        window.define = function () { throw new Error("no modules here"); }; window.define.amd = {};
        window.module = { exports: {} }; window.exports = window.module.exports; window.process = { env: {} };
        // The drivers of browsers do not bear these themselves.
        window.clean = () => { delete Object.prototype.each; for (const kind of [Array, String, Number]) { delete kind.prototype.each; delete kind.prototype.toJSON; } };
        window.names = Object.keys(window);`);
      for (const build of [attributeBuild, jsonBuild]) {
        const window = await t.open(
          page(`${build}${sentence}<mw-edits></mw-edits>`, { head: `<script src="${old}"></script>` }),
        );
        const seen = await window.run(async () => {
          await settled();
          const before = reads(".sentence");
          step(1);
          await settled();
          // Lit says which versions of it there are.
          const left = Object.keys(window).filter((name) => !/^(names$|lit|reactiveElementVersions$)/.test(name));
          const found = {
            ...{ before, after: [count(), shown()], wrong, link: document.querySelector("mw-build").link() },
            globals: left.filter((name) => !names.includes(name)),
          };
          clean();
          return found;
        });
        const { link, ...others } = seen;
        assert.deepEqual(others, { ...good, globals: [] });
        const arrived = await t.open(link);
        const there = await arrived.run(async () => {
          await settled();
          clean();
          return [count(), shown()];
        });
        assert.deepEqual(there, good.after, link);
      }
    },
  },
  {
    title: "A page freezes everything that is built in",
    software: [],
    engines: all,
    async run(t) {
      const freeze = t.site.script(`
        for (const one of [Object, Array, Function, String, Number, BigInt, RegExp, Map, Set, WeakMap, WeakSet, Promise, Error, TypeError, Date, Intl, JSON, Math, Reflect, Proxy, EventTarget, Node, Element, HTMLElement, ShadowRoot, Event, CustomEvent])
          { if (one.prototype) Object.freeze(one.prototype); Object.freeze(one); }
        Object.freeze(customElements);`);
      const window = await t.open(page(article, { head: `<script src="${freeze}"></script>` }));
      assert.deepEqual(await stepped(window), good);
    },
  },
  {
    title: "A machine translates the page: text is wrapped and replaced, the language is another",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(
        page(`<main>${article}</main><mw-ratio-summary><table><tr><th>Front<td>44.30</table></mw-ratio-summary>`),
      );
      const seen = await window.run(async () => {
        await settled();
        const list = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        const texts = [];
        while (list.nextNode())
          if (list.currentNode.data.trim() && !/script/i.test(list.currentNode.parentNode.localName))
            texts.push(list.currentNode);
        document.documentElement.lang = "de";
        document.documentElement.classList.add("translated-ltr");
        for (const text of texts) {
          const [outer, inner] = [document.createElement("font"), document.createElement("font")];
          outer.setAttribute("style", "vertical-align: inherit;");
          inner.setAttribute("style", "vertical-align: inherit;");
          inner.textContent = text.data.replace("teeth", "Zähnen").replace("44.30", "44,30");
          outer.append(inner);
          text.replaceWith(outer);
        }
        await settled();
        const said = [reads(".sentence")];
        step(1);
        await settled();
        said.push(`${count()} ${shown()}`, reads("mw-ratio-summary").split("44,30").length);
        return { said, wrong };
      });
      assert.deepEqual(seen, {
        said: ["With 15 Zähnen the front turns once for every 44,30 turns of the motor.", "16 41,53", 1],
        wrong: [],
      });
    },
  },
  {
    title: "Inside closed shadow roots, slots and templates of other components",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page("<main></main>"));
      const seen = await window.run(
        async (build, text) => {
          const said = [];
          const main = document.querySelector("main");
          const within = (mode, inside, light = "") => {
            const host = document.createElement("section");
            const root = host.attachShadow({ mode });
            root.innerHTML = inside;
            host.innerHTML = light;
            main.replaceChildren(host);
            return root;
          };
          const ways = [
            ["closed", build + text, ""],
            ["closed", `<article><slot></slot></article>`, build + text],
            ["closed", `<slot></slot>${text}`, build],
            ["open", `<div>${build}</div><slot></slot>`, text],
          ];
          // Of one name, the next would find in the address what the last one left there.
          for (const [n, [mode, ...markup]] of ways.entries()) {
            const [inside, light] = markup.map((one) => one.replace('id="limpet"', `id="limpet-${n}"`));
            const root = within(mode, inside, light);
            await settled();
            const place = root.querySelector("mw-value") ? root : main;
            step(1, 0, place);
            await settled();
            const before = shown(0, place);
            root.host.lang = "de";
            await settled();
            said.push(`${before} ${shown(0, place)}`);
            root.host.remove();
          }
          return { said: [...new Set(said)], wrong };
        },
        attributeBuild,
        sentence,
      );
      assert.deepEqual(seen, { said: ["41.53 41,53"], wrong: [] });
    },
  },
  {
    title: "The page is written anew after it has loaded",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<main>${article}</main>`));
      await window.run(() => settled());
      await window.run(
        (markup) => {
          document.open();
          document.write(markup);
          document.close();
        },
        page(`<main>${article}</main>`),
      );
      await until(() => window.run(() => alive()), "the page that was written");
      const seen = await stepped(window);
      assert.deepEqual(seen, good);
      const then = await window.run(async () => {
        document.documentElement.lang = "de";
        await settled();
        return [shown(), await addressed(/mw-limpet/)];
      });
      assert.equal(then[0], "41,53");
      assert.match(then[1], /#mw-limpet--/);
    },
  },
  {
    title: "The body, or the whole document, is exchanged for another",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<main>${article}</main>`));
      const seen = await window.run(async (article) => {
        // Of one name, the next would find in the address what the last one left there.
        let made = 0;
        const another = () => article.replace('id="limpet"', `id="limpet-${++made}"`);
        await settled();
        const said = [];
        const say = async () => {
          await settled();
          step(1);
          await settled();
          document.documentElement.lang = document.documentElement.lang === "de" ? "en" : "de";
          await settled();
          said.push(`${count()} ${shown()}`);
        };
        const body = document.createElement("body");
        body.innerHTML = another();
        document.body.replaceWith(body);
        await say();
        const next = new DOMParser().parseFromString(
          `<!doctype html><html lang="de"><head></head><body>${another()}</body></html>`,
          "text/html",
        );
        document.documentElement.replaceWith(document.adoptNode(next.documentElement));
        await say();
        document.body.innerHTML = another();
        await say();
        return { said, wrong };
      }, article);
      assert.deepEqual(seen, { said: ["16 41,53", "16 41.53", "16 41,53"], wrong: [] });
    },
  },
  {
    title: "Elements are moved without leaving the page, and kept outside of it for a while",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<main>${article}</main><aside></aside>`));
      const seen = await window.run(async () => {
        await settled();
        typed("9");
        await settled();
        const said = [];
        const [main, aside] = [document.querySelector("main"), document.querySelector("aside")];
        for (const place of [aside, main]) {
          for (const node of [...document.querySelectorAll("mw-build, .sentence")])
            if (place.moveBefore) place.moveBefore(node, null);
            else place.append(node);
          await settled();
          said.push(`${count()} ${shown()}`);
        }
        main.remove();
        await new Promise((done) => setTimeout(done, 600));
        document.body.append(main);
        await settled();
        said.push(`${count()} ${shown()}`);
        step(1);
        await settled();
        said.push(`${count()} ${shown()}`);
        return { said, wrong };
      });
      assert.deepEqual(seen, { said: ["9 73.83", "9 73.83", "9 73.83", "10 66.45"], wrong: [] });
    },
  },
  {
    title: "A page saved with its shadow trees is opened again",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(live));
      const saved = await window.run(async () => {
        await settled();
        step(1);
        await settled();
        const write = (node) => {
          const shadow = node.shadowRoot
            ? `<template shadowrootmode="open">${[...node.shadowRoot.childNodes].map(write).join("")}</template>`
            : "";
          if (node.nodeType === 3)
            return node.parentNode.localName === "script"
              ? node.data
              : node.data.replace(/&/g, "&amp;").replace(/</g, "&lt;");
          if (node.nodeType !== 1) return "";
          const copy = node.cloneNode(false).outerHTML;
          const end = copy.lastIndexOf(`</${node.localName}>`);
          const inside = shadow + [...node.childNodes].map(write).join("");
          return end < 0 ? copy : copy.slice(0, end) + inside + copy.slice(end);
        };
        history.replaceState(null, "", location.pathname);
        return write(document.querySelector("main"));
      });
      const still = await t.open(page(saved, { library: "" }));
      assert.match(await still.run(() => reads(".sentence")), /16.*41\.53/);
      const again = await t.open(page(saved));
      assert.deepEqual(await stepped(again), good);
      assert.equal((await again.run(() => reads("mw-ratio-summary"))).split("The exact fractions").length, 2);
    },
  },
  {
    title: "XHTML, as in a book: the written figures stay",
    software: [],
    engines: all,
    async run(t) {
      const xhtml = (body, head, end) =>
        `<?xml version="1.0" encoding="utf-8"?><!DOCTYPE html><html xmlns="http://www.w3.org/1999/xhtml" lang="en" xml:lang="en"><head><title>Limpet</title><script src="/probe.js"></script>${head}</head><body>${body}${end}</body></html>`;
      const body = `<mw-build id="limpet" ${attributes}/>${sentence}<mw-ratio-summary/><mw-overdrive-gauge><p>The front rolls 1.06 % farther.</p></mw-overdrive-gauge>`;
      for (const file of ["meshwright", "meshwright-article"])
        for (const at of [0, 1]) {
          const script = `<script src="/${file}.js"></script>`;
          const window = await t.open(xhtml(body, at ? "" : script, at ? script : ""), {
            type: "application/xhtml+xml; charset=utf-8",
          });
          const seen = await window.run(async () => {
            await settled();
            return { reads: reads(".sentence"), alive: alive(), wrong };
          });
          // Templates are HTML: nothing is registered, and everything stays as it was written.
          assert.deepEqual(seen, { reads: plainSentence, alive: false, wrong: [] });
        }
    },
  },
  {
    title: "Inside a field that is being edited",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<div contenteditable>${article}<p id="last">Last</p></div>`));
      const seen = await window.run(async () => {
        await settled();
        const field = document.querySelector("div");
        const before = field.innerHTML;
        step(1);
        await settled();
        const same = before === field.innerHTML;
        const after = [count(), shown()];
        document.querySelector("#last").focus();
        getSelection().selectAllChildren(document.querySelector("#last"));
        document.execCommand("insertText", false, "Words");
        await settled();
        return { same, after, last: document.querySelector("#last").textContent, now: [count(), shown()], wrong };
      });
      assert.deepEqual(seen, { same: true, after: ["16", "41.53"], last: "Words", now: ["16", "41.53"], wrong: [] });
    },
  },
  {
    title: "Inside a link, a label, a summary: what is around a count does not answer for it",
    software: [],
    engines: all,
    async run(t) {
      const inline = sentence.replace(/<\/?p[^>]*>/g, "");
      const around = {
        link: `<a href="#gone">${inline}</a>`,
        summary: `<details><summary>${inline}</summary>Inside</details>`,
        label: `<label>${inline}<input type="checkbox"></label>`,
      };
      for (const [what, markup] of Object.entries(around)) {
        const window = await t.open(page(`<p>Before</p>${attributeBuild}${markup}`));
        const middle = async (selector) =>
          window.run(async (name) => {
            await settled();
            const { x, y, width, height } = document
              .querySelector("mw-teeth")
              .shadowRoot.querySelector(name)
              .getBoundingClientRect();
            return [x + width / 2, y + height / 2];
          }, selector);
        await window.click(...(await middle("input")));
        await window.click(...(await middle(".tray button:last-of-type")));
        await window.press(" ");
        await window.run(() => settled());
        const seen = await window.run(() => ({
          count: count(),
          focus: document.activeElement.localName,
          followed: /gone/.test(location.hash),
          open: document.querySelector("details")?.open ?? false,
          checked: document.querySelector("[type=checkbox]")?.checked ?? false,
        }));
        assert.deepEqual(seen, { count: "16", focus: "mw-teeth", followed: false, open: false, checked: false }, what);
      }
    },
  },
  {
    title: "Hidden when it arrives, and shown later",
    software: [],
    engines: all,
    async run(t) {
      for (const css of [
        "main{display:none}",
        "main{content-visibility:hidden}",
        "main{width:0;height:0;overflow:hidden}",
      ]) {
        const window = await t.open(page(live, { head: `<style>${css}</style>` }));
        const seen = await window.run(async () => {
          await settled();
          document.querySelector("style").remove();
          await settled();
          await settled();
          const boxes = () =>
            [...document.querySelectorAll("main > *")]
              .map(
                (one) =>
                  `${one.localName} ${Math.round(one.getBoundingClientRect().width)} ${Math.round(one.getBoundingClientRect().height)}`,
              )
              .join();
          const shown = boxes();
          const copy = document.querySelector("main").cloneNode(true);
          document.querySelector("main").replaceWith(copy);
          await settled();
          await settled();
          return { shown, fresh: boxes(), wrong };
        });
        assert.equal(seen.shown, seen.fresh, css);
        assert.deepEqual(seen.wrong, []);
      }
    },
  },
  {
    title: "The script comes from elsewhere, checked by its hash, its address with a version",
    software: [],
    engines: all,
    async run(t) {
      const other = await startSite();
      try {
        const headers = { "access-control-allow-origin": "*" };
        for (const name of [
          "meshwright.js",
          ...["figures", "reports", "words", "tools"].map((kind) => `${kind}-de.js`),
        ])
          other.set(`/lib/${name}`, built(name), { type: "text/javascript; charset=utf-8", headers });
        const hash = createHash("sha384").update(built("meshwright.js")).digest("base64");
        const window = await t.open(
          page(live, {
            library: "",
            lang: "de",
            head: `<script src="${other.origin}/lib/meshwright.js?ver=6.4.2" integrity="sha384-${hash}" crossorigin="anonymous" defer></script>`,
          }),
        );
        const seen = await window.run(async () => {
          await settled();
          step(1);
          await settled();
          for (let n = 0; n < 60 && !reads("main").includes("Motorumdrehungen"); n++) await settled();
          return { german: reads("main"), count: count(), wrong };
        });
        assert.match(seen.german, /Motorumdrehungen/);
        assert.deepEqual([seen.count, seen.wrong], ["16", []]);
      } finally {
        await other.stop();
      }
    },
  },
  {
    title: "Languages that are misspelt, private, or written in digits of their own",
    software: [],
    engines: all,
    async run(t) {
      const expected = {
        de_DE: "15 44,30",
        en_US: "15 44.30",
        "de-": "15 44.30",
        "x-klingon": "15 44.30",
        "i-default": "15 44.30",
        "*": "15 44.30",
        "de-1996": "15 44,30",
        "ar-EG": "١٥ ٤٤٫٣٠",
        fa: "۱۵ ۴۴٫۳۰",
        "hi-u-nu-deva": "१५ ४४.३०",
        "zh-Hant-TW": "15 44.30",
        "pt-br": "15 44,30",
      };
      const window = await t.open(page(article));
      const seen = await window.run(async (langs) => {
        const said = {};
        for (const lang of langs) {
          document.documentElement.lang = lang;
          await settled();
          said[lang] = `${count()} ${shown()}`;
        }
        return { said, wrong };
      }, Object.keys(expected));
      assert.deepEqual(seen, { said: expected, wrong: [] });
    },
  },
  {
    title: "A frame that is written by a script, a blob, a copy for print, a frame without scripts",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page("<main></main>", { library: "" }));
      const seen = await window.run(async (markup) => {
        const said = {};
        const look = async (frame) => {
          const view = frame.contentWindow;
          for (let n = 0; n < 200 && !view.alive?.(); n++) await settled();
          view.step(1);
          await view.settled();
          return `${view.count()} ${view.shown()} ${view.wrong.join()}`;
        };
        const whole = markup.replaceAll('src="/', `src="${location.origin}/`);
        const written = document.createElement("iframe");
        document.body.append(written);
        written.contentDocument.open();
        written.contentDocument.write(whole);
        written.contentDocument.close();
        said.written = await look(written);
        const blob = document.createElement("iframe");
        blob.src = URL.createObjectURL(new Blob([whole], { type: "text/html" }));
        document.body.append(blob);
        await new Promise((done) => (blob.onload = done));
        said.blob = await look(blob);
        // Copied as it stands, without a script: as published.
        const print = document.createElement("iframe");
        document.body.append(print);
        print.contentDocument.body.innerHTML = written.contentDocument.body.innerHTML;
        await settled();
        said.print = print.contentDocument.querySelector(".sentence").innerText;
        // Nothing may run in here.
        const strict = document.createElement("iframe");
        strict.setAttribute("sandbox", "allow-same-origin");
        strict.srcdoc = whole;
        document.body.append(strict);
        await new Promise((done) => (strict.onload = done));
        said.strict = strict.contentDocument.querySelector(".sentence").innerText;
        return said;
      }, page(article));
      assert.deepEqual(seen, {
        written: "16 41.53 ",
        blob: "16 41.53 ",
        print: plainSentence,
        strict: plainSentence,
      });
    },
  },
  {
    title: "No body, a frameset, a picture: the script has nothing to do and does it",
    software: [],
    engines: all,
    async run(t) {
      for (const [markup, type] of [
        [
          "<!doctype html><html><head><script src='/probe.js'></script><script src='/meshwright.js'></script></head><frameset cols='50%,50%'><frame><frame></frameset></html>",
          undefined,
        ],
        [
          "<svg xmlns='http://www.w3.org/2000/svg' width='10' height='10'><script href='/probe.js'/><script href='/meshwright.js'/></svg>",
          "image/svg+xml",
        ],
      ]) {
        const window = await t.open(markup, type ? { type } : {});
        const seen = await window.run(async () => {
          await settled();
          return wrong;
        });
        assert.deepEqual(seen, []);
      }
    },
  },
  {
    title: "Fields of a form are called like what every element has",
    software: [],
    engines: all,
    async run(t) {
      for (const name of [
        "parentNode",
        "host",
        "id",
        "closest",
        "lang",
        "dir",
        "children",
        "shadowRoot",
        "isConnected",
      ]) {
        const window = await t.open(
          page(`<form lang="de"><input name="${name}" value="x">${article}<mw-edits></mw-edits></form>`),
        );
        const seen = await window.run(async () => {
          await settled();
          step(1);
          await settled();
          return { shows: `${count()} ${shown()}`, wrong };
        });
        assert.deepEqual(seen, { shows: "16 41,53", wrong: [] }, name);
      }
    },
  },
  {
    title: "A browser that cannot share style sheets",
    software: [],
    engines: all,
    async run(t) {
      const older = t.site.script(`
        delete Document.prototype.adoptedStyleSheets;
        delete ShadowRoot.prototype.adoptedStyleSheets;
        delete (globalThis.DocumentOrShadowRoot ?? Document).prototype.adoptedStyleSheets;
        delete CSSStyleSheet.prototype.replace;`);
      const window = await t.open(page(article, { head: `<script src="${older}"></script>` }));
      assert.deepEqual(await stepped(window), good);
      assert.equal(await window.run(() => getComputedStyle(field()).opacity), "0");
    },
  },
  {
    title: "A service worker serves everything from its cache, and the network is gone",
    software: [],
    engines: all,
    async run(t) {
      const other = await startSite();
      let running = true;
      try {
        other.set(
          "/worker.js",
          `addEventListener("install", (event) => event.waitUntil(caches.open("one").then((cache) => cache.addAll(["/kept.html", "/probe.js", "/meshwright.js"]))));
           addEventListener("activate", (event) => event.waitUntil(clients.claim()));
           addEventListener("fetch", (event) => event.respondWith(caches.match(event.request).then((kept) => kept ?? Response.error())));`,
          { type: "text/javascript" },
        );
        other.set("/kept.html", page(article));
        const window = await t.open(`${other.origin}/kept.html`);
        await window.run(async () => {
          await navigator.serviceWorker.register("/worker.js");
          await navigator.serviceWorker.ready;
          for (let n = 0; n < 100 && !navigator.serviceWorker.controller; n++) await settled();
        });
        await other.stop();
        running = false;
        await window.go(`${other.origin}/kept.html?again`).catch(() => undefined);
        await window.go(`${other.origin}/kept.html`);
        assert.deepEqual(await stepped(window), good);
        // The words of another language are not in the cache: its numbers are there all the same.
        assert.equal(
          await window.run(async () => {
            document.documentElement.lang = "de";
            await settled();
            return shown();
          }),
          "41,53",
        );
      } finally {
        if (running) await other.stop();
      }
    },
  },
  {
    title: "Somebody's own tests of a page, in jsdom",
    software: ["jsdom"],
    engines: ["node"],
    async run() {
      const said = [];
      const virtualConsole = new VirtualConsole();
      virtualConsole.on("jsdomError", (error) => said.push(error.message));
      const { window } = new JSDOM(page(live, { library: "" }).replace('<script src="/probe.js"></script>', ""), {
        runScripts: "outside-only",
        pretendToBeVisual: true,
        url: "http://127.0.0.1/",
        virtualConsole,
      });
      try {
        // As the runners of tests add it.
        window.structuredClone = structuredClone;
        window.eval(built("meshwright.js"));
        const inside = (selector) => window.document.querySelector(selector).shadowRoot;
        // While it is right, the author's own text is what is shown.
        const shows = () => {
          const [span, slot] = inside(".sentence mw-value").querySelectorAll("span, slot");
          assert.notEqual(span.hidden, slot.hidden);
          return slot.hidden ? span.textContent : slot.parentNode.host.textContent;
        };
        await delay(50);
        const before = shows();
        const input = inside("mw-teeth").querySelector("input");
        input.focus();
        input.dispatchEvent(new window.KeyboardEvent("keydown", { key: "ArrowUp", bubbles: true, cancelable: true }));
        await delay(50);
        assert.deepEqual([before, shows(), said], ["44.30", "41.53", []]);
      } finally {
        window.close();
      }
    },
  },
  {
    title: "In a dialog, a popover, a declared shadow tree, a drawing; zoomed, skipped, layered, dissolved boxes",
    software: [],
    engines: all,
    async run(t) {
      const places = [
        `<dialog>${article}</dialog><script>document.querySelector("dialog").showModal()</script>`,
        `<div popover>${article}</div><script>document.querySelector("[popover]").showPopover()</script>`,
        `<x-card><template shadowrootmode="open"><section><slot></slot></section></template>${article}</x-card>`,
        `<svg width="600" height="300"><foreignObject width="600" height="300"><div>${article}</div></foreignObject></svg>`,
        `<div style="zoom: 1.5">${article}</div>`,
        `<div style="content-visibility: auto; contain-intrinsic-size: 500px">${article}</div>`,
        `<style>@layer reset { * { all: revert !important; position: static !important; opacity: 1 !important } }</style>${article}`,
        `<style>mw-build, mw-teeth, mw-value { display: contents !important }</style>${article}`,
        `<table><tbody><tr><td>${article}</td></tr></tbody></table>`,
        `<ul><li>${article}</li></ul>`,
        `<div inert>${article}</div>`,
      ];
      for (const place of places) assert.deepEqual(await stepped(await t.open(page(place))), good, place);
      const moved = await t.open(page(`<main>${article}</main>`));
      await moved.run(async () => {
        const main = document.querySelector("main");
        const exchange = () => main.replaceWith(main.cloneNode(true));
        await (document.startViewTransition?.(exchange).updateCallbackDone ?? exchange());
      });
      assert.deepEqual(await stepped(moved), good, "a view transition");
    },
  },
];
