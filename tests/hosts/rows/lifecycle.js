// Arrivals, departures and moves; more than one copy; the address; things that a page refuses.
import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { at } from "../../../scripts/lib/paths.js";
import { until } from "../lib/engine.js";
import { fileOf } from "../lib/software.js";
import {
  article,
  attributeBuild,
  attributes,
  jsonBuild,
  page,
  plainSentence,
  sentence,
  small,
} from "../lib/snippets.js";
import { blocks, wholeBuild } from "../lib/elements.js";

const all = ["chromium", "firefox", "webkit"];
const built = (name) => readFileSync(at("packages", "elements", "dist", name), "utf8");
const tag = (src, kind = "") => `<script src="${src.startsWith("/") ? src : `/${src}`}" ${kind}></script>`;

/** The state of an article of one sentence. */
const state = (window) =>
  window.run(async () => {
    await settled();
    return { count: count(), shown: shown(), alive: alive(), wrong };
  });

async function living(window, what) {
  const found = await state(window);
  assert.deepEqual(found.wrong, [], what);
  assert.equal(found.alive, true, what);
  return found;
}

/** Steps once and says what the first value shows then. */
const stepped = (window, times = 1) =>
  window.run(async (n) => {
    step(n);
    await settled();
    return [count(), shown()];
  }, times);

export const subject = "Arrivals, moves, copies and addresses";

export const rows = [
  {
    row: 4,
    title: "The second copy throws where names are defined",
    software: [],
    engines: all,
    async run(t) {
      const copies = ["meshwright-article.js", "meshwright-other.js"];
      for (const kind of ["", "async"]) {
        for (const order of [copies, [...copies].reverse()]) {
          const window = await t.open(
            page(`${article}<mw-working of="front"></mw-working>${order.map((src) => tag(src, kind)).join("")}`, {
              library: "",
            }),
          );
          const what = `${order.join(", ")} ${kind}`;
          await living(window, what);
          const warned = await window.run(() => warned);
          assert.ok(
            warned.some((one) => /already defined by version 0\.[12]\.0/.test(one)),
            what,
          );
          // One of the copies is in two files: what works out a whole page comes with the second.
          await until(() => window.run(() => /44\.3/.test(reads("mw-working"))), what);
          assert.deepEqual(await stepped(window), ["16", "41.53"], what);
          assert.match(await window.run(() => reads("mw-working")), /41\.5/, `${what}: one shared state`);
        }
      }
    },
  },
  {
    title: "The same script twice; deferred; as a module; both files in both orders",
    software: [],
    engines: all,
    async run(t) {
      const [one, other] = ["meshwright.js", "meshwright-article.js"];
      for (const scripts of [
        [tag(one), tag(one)],
        [tag(one, "defer"), tag(one, "async")],
        [tag(one, 'type="module"')],
        [tag(other), tag(one)],
        [tag(one), tag(other)],
        [tag(other, "async"), tag(other, 'type="module"'), tag(one, "defer")],
      ]) {
        const window = await t.open(page(article, { library: "", head: scripts.join("") }));
        await living(window, scripts.join(" "));
        assert.deepEqual(await window.run(() => warned), [], scripts.join(" "));
        assert.deepEqual(await stepped(window), ["16", "41.53"], scripts.join(" "));
      }
    },
  },
  {
    row: 14,
    title: "Configuration is missing because the element connects before its children arrive",
    software: [],
    engines: all,
    async run(t) {
      for (const build of [jsonBuild, attributeBuild]) {
        const whole = page(`<main>${build}${sentence}</main>`, { library: "", head: tag("meshwright.js") });
        const cut = build === jsonBuild ? whole.indexOf('"teeth":[18') : whole.indexOf("</mw-build>");
        const later = whole.indexOf("turns once");
        const pieces = [whole.slice(0, cut), whole.slice(cut, later), whole.slice(later)];
        const window = await t.open(t.site.page(pieces));
        await living(window);
        assert.equal(await window.run(() => reads("main")), plainSentence);
        assert.deepEqual(await window.run(() => findings()), []);
      }
    },
  },
  {
    row: 15,
    title: "A morph resets what the reader changed; a missing attribute arrives as null",
    software: ["idiomorph", "htmx.org"],
    engines: all,
    async run(t) {
      const scripts = { idiomorph: "dist/idiomorph.js", "htmx.org": "dist/htmx.js" };
      const head = Object.entries(scripts)
        .map(([name, path]) => tag(t.site.script(fileOf(name, path))))
        .join("");
      for (const build of [attributeBuild, jsonBuild]) {
        const markup = `<main>${build}${sentence}</main>`;
        const window = await t.open(page(markup, { head }));
        const result = await window.run(async (original) => {
          const main = document.querySelector("main");
          typed("9");
          await settled();
          const seen = [[count(), shown()]];
          Idiomorph.morph(main, original);
          await settled();
          seen.push([count(), shown()]);
          Idiomorph.morph(document.querySelector("main"), original.replace(/<\/?main>/g, ""), {
            morphStyle: "innerHTML",
          });
          await settled();
          seen.push([count(), shown()]);
          for (const style of ["outerMorph", "innerMorph"]) {
            await htmx.swap({
              target: document.querySelector("main"),
              swap: style,
              text: style === "outerMorph" ? original : original.replace(/<\/?main>/g, ""),
            });
            await settled();
            seen.push([count(), shown()]);
          }
          const value = document.querySelector("mw-value");
          for (const name of ["at", "base", "digits", "unit", "build", "figure"]) value[name] = null;
          document.querySelector("mw-teeth").build = null;
          document.querySelector("mw-build").src = null;
          await settled();
          seen.push([count(), shown()]);
          return { seen, wrong };
        }, markup);
        assert.deepEqual(result.wrong, []);
        for (const one of result.seen) assert.deepEqual(one, ["9", "73.83"]);
      }
    },
  },
  {
    title: "A morph brings the author's new values: what the reader changed stays over them",
    software: ["idiomorph"],
    engines: all,
    async run(t) {
      const markup = `<main>${article}</main>`;
      const window = await t.open(page(markup, { head: tag(t.site.script(fileOf("idiomorph", "dist/idiomorph.js"))) }));
      const seen = await window.run(
        async (next) => {
          typed("9");
          await settled();
          Idiomorph.morph(document.querySelector("main"), next);
          await settled();
          return [count(), shown(), document.querySelector("mw-teeth").textContent, wrong];
        },
        markup.replace("15 to 62", "15 to 31"),
      );
      assert.deepEqual(seen, ["9", "36.92", "15", []]);
    },
  },
  {
    row: 16,
    title: "Listeners are lost or doubled after a move",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<div id="one">${article}</div><div id="two"></div>`));
      await living(window);
      const result = await window.run(async () => {
        let told = 0;
        addEventListener("mw-change", () => told++);
        for (const place of ["two", "one", "two"]) {
          document
            .getElementById(place)
            .append(document.querySelector("mw-build"), document.querySelector(".sentence"));
          await settled();
        }
        field().focus();
        await settled();
        document.querySelector("mw-teeth").shadowRoot.querySelectorAll(".tray button")[2].click();
        await settled();
        return { told, count: count(), shown: shown(), wrong };
      });
      assert.deepEqual(result, { told: 1, count: "16", shown: "41.53", wrong: [] });
    },
  },
  {
    row: 18,
    title: "A property set before the upgrade shadows the accessor",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<mw-build></mw-build>${sentence}`, { library: "" }));
      const result = await window.run(async (json) => {
        document.querySelector("mw-build").json = JSON.parse(json);
        const [value, teeth] = [document.querySelector("mw-value"), document.querySelector("mw-teeth")];
        Object.assign(value, { of: "rear", value: 7, digits: 1, textOf: undefined });
        delete value.textOf;
        Object.assign(teeth, { of: "gear-row.teeth.1", value: 7, label: "Idler" });
        await load();
        await settled();
        const seen = [count(), shown()];
        value.of = "front";
        teeth.of = "gear-row.teeth.0";
        await settled();
        return { seen: [...seen, count(), shown()], name: field().getAttribute("aria-label"), wrong };
      }, small);
      assert.deepEqual(result, { seen: ["31", "43.3", "18", "44.3"], name: "Idler, teeth", wrong: [] });
    },
  },
  {
    row: 24,
    title: "Storage and history throw in a sandboxed frame",
    software: [],
    engines: all,
    async run(t) {
      const inner = page(`${wholeBuild}${blocks}<div>${article}</div><script>
        addEventListener("load", () => setTimeout(async () => {
          const before = [count(), shown()];
          step(); await settled(); await new Promise((done) => setTimeout(done, 700));
          parent.postMessage({ before, after: [count(), shown()], wrong }, "*");
        }, 50));</script>`)
        .replaceAll('src="/', `src="${t.site.origin}/`)
        .replaceAll("&", "&amp;")
        .replaceAll('"', "&quot;");
      const listen = t.site.script(
        "window.got = new Promise((resolve) => addEventListener('message', (event) => resolve(event.data)));",
      );
      const window = await t.open(
        page(`<iframe sandbox="allow-scripts" srcdoc="${inner}"></iframe>`, { library: "", head: tag(listen) }),
      );
      const got = await window.run(() => got);
      assert.deepEqual(got, { before: ["15", "44.30"], after: ["16", "41.53"], wrong: [] });
    },
  },
  {
    title: "History refuses, storage is denied, the clipboard is denied",
    software: [],
    engines: all,
    async run(t) {
      const denied = t.site.script(`
        for (const name of ["localStorage", "sessionStorage"])
          Object.defineProperty(window, name, { get() { throw new DOMException("denied", "SecurityError"); } });
        for (const name of ["replaceState", "pushState"])
          History.prototype[name] = () => { throw new DOMException("too often", "SecurityError"); };
        Object.defineProperty(navigator, "clipboard", { value: { writeText: () => Promise.reject(new DOMException("denied", "NotAllowedError")) } });`);
      const window = await t.open(page(`${article}<mw-edits></mw-edits>`, { head: tag(denied) }));
      const result = await window.run(async () => {
        await settled();
        step();
        await new Promise((done) => setTimeout(done, 700));
        const edits = document.querySelector("mw-edits").shadowRoot;
        [...edits.querySelectorAll("button")].at(-1).click();
        await settled();
        return { count: count(), link: edits.querySelector("input")?.value ?? "", wrong };
      });
      assert.deepEqual(result.wrong, []);
      assert.equal(result.count, "16");
      assert.match(result.link, /#mw-limpet--[\w-]+[a-zA-Z]$/);
    },
  },
  {
    row: 25,
    title: "Stale state after going back, or from the back/forward cache",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`${article}<a href="#notes">Notes</a><h2 id="notes">Notes</h2>`), { own: true });
      await living(window);
      const start = await window.url();
      await window.run(() => typed("9"));
      await until(async () => /#mw-limpet--/.test(await window.url()), "the link in the address");
      await window.go(t.site.page(page("<p>Elsewhere</p>", { library: "" })));
      await window.back();
      await until(() => window.run(() => alive()));
      await window.run(() => settled());
      assert.deepEqual(await window.run(() => [count(), shown()]), ["9", "73.83"]);
      // Somebody edits the address: another version arrives, and then none.
      const link = await window.run(async () => {
        typed("20");
        await new Promise((done) => setTimeout(done, 700));
        const { hash } = location;
        typed("9");
        await new Promise((done) => setTimeout(done, 700));
        return hash;
      });
      await window.run(async (hash) => {
        location.hash = hash;
        await settled();
      }, link);
      assert.deepEqual(await window.run(() => [count(), shown()]), ["20", "33.23"]);
      await window.go(start.replace(/\/page/, "/page"));
      await until(() => window.run(() => alive()));
      await window.run(() => settled());
      assert.deepEqual(await window.run(() => wrong), []);
      const [counted, value] = await window.run(() => [count(), shown()]);
      assert.equal(value, { 15: "44.30", 20: "33.23" }[counted], "count and figure agree");
    },
  },
  {
    title: "Anchors, hash routers and a base address are left alone",
    software: [],
    engines: all,
    async run(t) {
      for (const [hash, base] of [
        ["#/posts/7?tab=notes", ""],
        ["#!/posts/7", ""],
        ["#notes", ""],
        ["#about", ""],
        ["", '<base href="/somewhere/else/">'],
      ]) {
        const address = t.site.page(page(`${article}<h2 id="notes">Notes</h2><mw-edits></mw-edits>`, { head: base }));
        const window = await t.open(address + hash);
        const result = await window.run(async () => {
          let turned = 0;
          addEventListener("hashchange", () => turned++);
          addEventListener("popstate", () => turned++);
          const { length } = history;
          await settled();
          step();
          await new Promise((done) => setTimeout(done, 700));
          return {
            turned,
            grown: history.length - length,
            href: location.href,
            link: document.querySelector("mw-build").link(),
            count: count(),
          };
        });
        assert.equal(result.turned, 0, hash);
        assert.equal(result.grown, 0, hash);
        assert.equal(result.count, "16");
        assert.ok(result.href.startsWith(address + (hash || "#mw-limpet--")), result.href);
        assert.match(result.link, /mw-limpet(--|=)[\w-]+[a-zA-Z]$/);
        assert.ok(result.link.startsWith(address), result.link);
        // The link opens as the reader's version, whatever else is in the address.
        const arrived = await t.open(result.link);
        await until(() => arrived.run(() => alive()));
        assert.equal(await arrived.run(async () => (await settled(), count())), "16", result.link);
      }
    },
  },
  {
    row: 26,
    title: "A module is blocked on a page opened from disk",
    software: [],
    engines: all,
    async run(t) {
      const folder = mkdtempSync(join(tmpdir(), "hosts-disk-"));
      try {
        writeFileSync(join(folder, "meshwright.js"), built("meshwright.js"));
        writeFileSync(join(folder, "probe.js"), readFileSync(at("tests", "hosts", "lib", "probe.js")));
        const file = join(folder, "post.html");
        writeFileSync(file, page(article).replaceAll('src="/', 'src="'));
        const window = await t.open(pathToFileURL(file).href, { own: true });
        await living(window);
        assert.deepEqual(await stepped(window), ["16", "41.53"]);
        assert.deepEqual(await window.run(() => wrong), []);
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  },
  {
    row: 27,
    title: "Optimisers delay or join scripts; currentScript is null",
    software: [],
    engines: all,
    async run(t) {
      const code = built("meshwright.js");
      const joined = [
        `(function () { window.before = 1 })()\n${code}\n(function () { window.after = 1 })()`,
        `"use strict";var before = window.before = 1;${code};window.after = 1`,
        `void function () { window.before = 1; ${code}\n; window.after = 1 }.call(undefined)`,
        `try { window.before = 1; ${code} } finally { window.after = 1 }`,
        `setTimeout(() => { window.before = 1; (0, eval)(${JSON.stringify(code)}); window.after = 1 })`,
        `window.before = 1; new Function(${JSON.stringify(code)})(); window.after = 1`,
      ];
      for (const text of joined) {
        const window = await t.open(page(article, { library: t.site.script(text).slice(1) }));
        await living(window, text.slice(0, 60));
        assert.deepEqual(await window.run(() => [window.before, window.after]), [1, 1], text.slice(0, 60));
      }
      const late = await t.open(page(article, { library: "" }));
      await late.run(async () => {
        await new Promise((done) => setTimeout(done, 200));
        await load("meshwright.js", { async: true });
      });
      await living(late, "late");
    },
  },
  {
    row: 34,
    title: "The same post twice on one index page: ids collide",
    software: [],
    engines: all,
    async run(t) {
      for (const build of [attributeBuild, jsonBuild]) {
        const window = await t.open(
          page(`<article>${build}${sentence}</article><article>${build}${sentence}</article>`),
        );
        const result = await window.run(async () => {
          await settled();
          step(1, 1);
          await settled();
          const seen = [count(0), shown(0), count(1), shown(1)];
          step(2, 0);
          await addressed(/\./);
          return { seen, then: [count(0), count(1)], hash: location.hash, wrong };
        });
        assert.deepEqual(result.seen, ["15", "44.30", "16", "41.53"]);
        assert.deepEqual(result.then, ["17", "16"]);
        assert.match(
          result.hash,
          /^#mw-limpet--[\w-]+\.mw-limpet_2--[\w-]+$|^#mw-limpet_2--[\w-]+\.mw-limpet--[\w-]+$/,
        );
        assert.deepEqual(result.wrong, []);
      }
    },
  },
  {
    row: 39,
    title: "A parent defined after its child, or inserted later, never connects",
    software: [],
    engines: all,
    async run(t) {
      const pieces = ["script", "build", "element"];
      const orders = pieces.flatMap((one) =>
        pieces.flatMap((two) =>
          pieces.filter((three) => new Set([one, two, three]).size === 3).map((three) => [one, two, three]),
        ),
      );
      assert.equal(orders.length, 6);
      for (const order of orders) {
        const window = await t.open(page("<main></main>", { library: "" }));
        const result = await window.run(
          async (steps, build, text) => {
            const main = document.querySelector("main");
            for (const one of steps) {
              if (one === "script") await load();
              else {
                const holder = document.createElement("div");
                holder.innerHTML = one === "build" ? build : text;
                if (one === "build") main.prepend(holder);
                else main.append(holder);
              }
              await settled();
            }
            return { reads: reads("main"), alive: alive(), wrong };
          },
          order,
          order[0] === "build" ? jsonBuild : attributeBuild,
          sentence,
        );
        assert.deepEqual(result, { reads: plainSentence, alive: true, wrong: [] }, order.join(", "));
      }
    },
  },
  {
    row: 41,
    title: "A language changed later is not followed",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<section>${article}</section>`));
      const seen = await window.run(async () => {
        const said = [];
        const [root, section] = [document.documentElement, document.querySelector("section")];
        const say = async () => {
          await settled();
          said.push(shown());
        };
        await say();
        root.lang = "de";
        await say();
        section.lang = "en";
        await say();
        section.removeAttribute("lang");
        await say();
        root.lang = "fr";
        await say();
        root.removeAttribute("lang");
        await say();
        root.lang = "no such language";
        await say();
        // Moved to where another language is spoken.
        const other = document.createElement("section");
        other.lang = "de";
        document.body.append(other);
        other.append(document.querySelector("mw-build"), document.querySelector(".sentence"));
        await say();
        return { said, wrong };
      });
      assert.deepEqual(seen, {
        said: ["44.30", "44,30", "44.30", "44,30", "44,30", "44.30", "44.30", "44,30"],
        wrong: [],
      });
    },
  },
  {
    title: "Two builds exchange their names while the page lives",
    software: [],
    engines: all,
    async run(t) {
      const other = attributeBuild.replace('id="limpet"', 'id="plover"').replace("15 to 62", "15 to 31");
      const window = await t.open(
        page(
          `${attributeBuild}${other}<p><mw-value build="limpet" of="front">44.30</mw-value> <mw-value build="plover" of="front">22.15</mw-value></p>`,
        ),
      );
      const seen = await window.run(async () => {
        await settled();
        const said = [[shown(0), shown(1)]];
        const [one, two] = document.querySelectorAll("mw-build");
        [one.id, two.id] = [two.id, one.id];
        await settled();
        said.push([shown(0), shown(1)]);
        one.remove();
        await settled();
        said.push([shown(0), shown(1)]);
        document.body.append(one);
        await settled();
        said.push([shown(0), shown(1)]);
        document.querySelectorAll("mw-value")[0].build = "plover";
        await settled();
        said.push([shown(0), shown(1)]);
        return { said, wrong };
      });
      assert.deepEqual(seen.wrong, []);
      assert.deepEqual(seen.said, [
        ["44.30", "22.15"],
        ["22.15", "44.30"],
        // One has no build now: its author, who is looking, is told by a sign beside the text.
        ["22.15", "! 22.15"],
        ["22.15", "44.30"],
        ["44.30", "44.30"],
      ]);
    },
  },
  {
    title: "Detached trees, elements made by their class, moved in a fragment",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page("<main></main>"));
      const seen = await window.run(async (markup) => {
        const off = document.createElement("div");
        off.innerHTML = markup;
        customElements.upgrade(off);
        off.querySelector("mw-value").of = "rear";
        off.querySelector("mw-build").json = undefined;
        await settled();
        for (const name of ["mw-build", "mw-value", "mw-teeth", "mw-edits", "mw-ratio-summary"]) {
          const made = new (customElements.get(name))();
          made.remove();
          document.createElement(name).setAttribute("build", "nobody");
        }
        const fragment = document.createDocumentFragment();
        fragment.append(off);
        document.querySelector("main").append(fragment);
        await settled();
        const live = shown();
        off.remove();
        off.querySelector("mw-value").of = "front";
        await settled();
        document.querySelector("main").append(off);
        await settled();
        return { live, then: shown(), wrong };
      }, article);
      assert.deepEqual(seen, { live: "43.32", then: "44.30", wrong: [] });
    },
  },
  {
    title: "Moved into a frame's document and back; a frame within a frame",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<main>${article}</main><iframe srcdoc="<p>A frame</p>"></iframe>`));
      const seen = await window.run(async () => {
        await settled();
        const frame = document.querySelector("iframe").contentDocument;
        step();
        await settled();
        const nodes = [document.querySelector("mw-build"), document.querySelector(".sentence")];
        frame.body.append(...nodes);
        await settled();
        const inside = frame.querySelector("mw-value").shadowRoot.querySelector("span").textContent;
        const styled = frame.querySelector("mw-teeth").shadowRoot.adoptedStyleSheets.length;
        document.querySelector("main").append(...nodes.map((node) => document.adoptNode(node)));
        await settled();
        return { inside, styled: styled > 0, back: [count(), shown()], wrong };
      });
      assert.deepEqual(seen, { inside: "41.53", styled: true, back: ["16", "41.53"], wrong: [] });
    },
  },
  {
    title: "A re-render replaces text children, attributes and whole elements",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(article));
      const seen = await window.run(async () => {
        await settled();
        typed("9");
        await settled();
        const said = [];
        for (const act of [
          () => (document.querySelector("mw-teeth").textContent = "15"),
          () => (document.querySelector("mw-value").firstChild.data = "44.3"),
          () => document.querySelector("mw-value").replaceChildren(),
          () => document.querySelector("mw-value").replaceWith(document.querySelector("mw-value").cloneNode(true)),
          () => document.querySelector("mw-teeth").replaceWith(document.querySelector("mw-teeth").cloneNode(true)),
          () => document.querySelector("mw-build").setAttribute("class", "ready"),
          () => document.querySelector("mw-build").append(document.createTextNode(" ")),
          () => document.querySelector("mw-build").toggleAttribute("data-ready"),
        ]) {
          act();
          await settled();
          said.push(`${count()} ${shown()}`);
        }
        return { said: [...new Set(said)], wrong };
      });
      assert.deepEqual(seen, { said: ["9 73.83"], wrong: [] });
    },
  },
  {
    title: "What the reader changes is never written into the author's markup",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<main>${wholeBuild}${blocks}<div>${article}</div></main>`));
      const seen = await window.run(async () => {
        const main = document.querySelector("main");
        await settled();
        const before = main.outerHTML;
        step(3);
        typed("9");
        await settled();
        const edits = document.querySelector("mw-edits").shadowRoot;
        edits.querySelector("button")?.click();
        await settled();
        return { same: main.outerHTML === before, wrong };
      });
      assert.deepEqual(seen, { same: true, wrong: [] });
    },
  },
  {
    title: "Ten thousand elements come and go, and the heap stays flat",
    software: [],
    engines: ["chromium"],
    elsewhere: "only Chromium tells how large its heap is",
    async run(t) {
      const window = await t.open(page(`<main></main>`));
      const seen = await window.run(async (markup) => {
        const main = document.querySelector("main");
        const round = async (times) => {
          for (let n = 0; n < times; n++) {
            main.innerHTML = markup;
            if (n % 50 === 0) await settled();
            main.replaceChildren();
          }
          await settled();
          for (let n = 0; n < 3; n++) {
            globalThis.gc();
            await new Promise((done) => setTimeout(done, 50));
          }
          return performance.memory.usedJSHeapSize;
        };
        // Three elements a time.
        await round(400);
        const before = await round(400);
        const after = await round(2600);
        const page = globalThis[Symbol.for("meshwright page 1")];
        return { grown: after - before, holders: page.holders.size, watchers: page.watchers.size, wrong };
      }, article);
      assert.deepEqual(seen.wrong, []);
      assert.equal(seen.holders, 0);
      assert.ok(seen.watchers <= 1, `${seen.watchers} watchers`);
      assert.ok(seen.grown < 1_000_000, `grown by ${seen.grown} bytes`);
    },
  },
  {
    title: "Broken data: the fallback, a sign for the author, and nothing for the reader",
    software: [],
    engines: all,
    async run(t) {
      const broken = {
        empty: "<mw-build></mw-build>",
        notation: '<mw-build front="Ring 13/38"></mw-build>',
        json: '<mw-build><script type="application/json">{"format": </script></mw-build>',
        "another format":
          '<mw-build><script type="application/json">{"format":"meshwright-build/9"}</script></mw-build>',
        "no file": '<mw-build src="/nothing-here.json"></mw-build>',
        "no such output": `<mw-build ${attributes.replaceAll("front", "middle")}></mw-build>`,
      };
      const window = await t.open(page("<main></main>"));
      for (const [name, build] of Object.entries(broken)) {
        const seen = await window.run(async (markup) => {
          document.querySelector("main").innerHTML = markup;
          await settled();
          await new Promise((done) => setTimeout(done, 150));
          return {
            text: reads(".sentence"),
            said: findings().length,
            wrong: wrong.filter((one) => !/a file failed/.test(one)),
          };
        }, build + sentence);
        assert.equal(seen.text, plainSentence, name);
        assert.ok(seen.said > 0, name);
        assert.deepEqual(seen.wrong, [], name);
      }
    },
  },
];
