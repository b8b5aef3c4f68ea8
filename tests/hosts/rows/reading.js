// What hosts do to addresses, keys, focus, text and files, once an article is read.
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import createDOMPurify from "dompurify";
import { minify as terserMinifier } from "html-minifier-terser";
import { minify as nextMinifier } from "html-minifier-next";
import htmlnano from "htmlnano";
import { JSDOM } from "jsdom";
import { at, filesBelow } from "../../../scripts/lib/paths.js";
import { delay, until } from "../lib/engine.js";
import { plainly, typographically } from "../lib/markdown.js";
import { startSite } from "../lib/site.js";
import { bundled, fileOf } from "../lib/software.js";
import { article, attributeBuild, attributes, jsonBuild, page, plainSentence, sentence } from "../lib/snippets.js";
import { live } from "../lib/stepped.js";
import { blocks, wholeBuild } from "../lib/elements.js";

const all = ["chromium", "firefox", "webkit"];
const built = (name) => readFileSync(at("packages", "elements", "dist", name), "utf8");
const tag = (src, kind = "") => `<script src="${src}" ${kind}></script>`;
const library = tag("/meshwright.js");

/** Everything that has a field, a menu or a key of its own. */
const controls = [
  "count-finder",
  "train-finder",
  "pair-finder",
  "unmarked-gear",
  "turn-count",
  "measurements",
  "stage-editor",
  "bench-card",
]
  .map((name) => `<mw-${name} build="whole"></mw-${name}>`)
  .join("");

/** Steps, and is gone in the same turn; comes back, and finds what was changed. */
async function leftAtOnce(window, { leave, back, other }) {
  await window.run(() => settled());
  await window.run(() => step(1));
  await window.run(leave);
  await until(() => window.run(other), "the other place");
  await delay(700);
  assert.doesNotMatch(await window.url(), /mw-/, "the other place's address");
  await window.run(back ?? (() => void history.back()));
  await until(() => window.run(() => alive() && count() === "16"), "the article, as it was left");
  assert.deepEqual(await window.run(() => [shown(), wrong]), ["41.53", []]);
}

/** What the documentation shows of markup: whatever has an element of ours in it. */
function snippets() {
  const files = [at("README.md"), ...filesBelow(at("demo", "guide"), (path) => path.endsWith(".html"))];
  const { document } = new JSDOM("").window;
  const found = files.flatMap((path) => {
    const text = readFileSync(path, "utf8");
    if (path.endsWith(".md")) return [...text.matchAll(/```html\n([\s\S]*?)```/g)].map((match) => match[1]);
    document.body.innerHTML = text;
    return [...document.querySelectorAll("pre code")].map((code) => code.textContent);
  });
  return [...new Set(found)].filter((text) => /^\s*<(?!script|!doctype|html)/i.test(text) && text.includes("<mw-"));
}

const minified = {
  "html-minifier-terser": (text) =>
    terserMinifier(text, {
      collapseWhitespace: true,
      conservativeCollapse: true,
      removeComments: true,
      removeAttributeQuotes: true,
      removeOptionalTags: true,
      removeEmptyAttributes: true,
      collapseBooleanAttributes: true,
      sortAttributes: true,
    }),
  "html-minifier-next": (text) =>
    nextMinifier(text, {
      collapseWhitespace: true,
      conservativeCollapse: true,
      removeComments: true,
      removeAttributeQuotes: true,
      removeOptionalTags: true,
    }),
  htmlnano: async (text) => (await htmlnano.process(text, {}, htmlnano.presets.safe)).html,
};

export const subject = "Addresses, keys, focus, text and files while an article is read";

export const rows = [
  {
    row: 42,
    title: "A change made just before leaving lands in the next page's address",
    software: ["@hotwired/turbo", "htmx.org", "react-router", "swup"],
    engines: all,
    async run(t) {
      const next = (head) =>
        t.site.page(page("<main id='swup'><h1>Other</h1></main>", { head: head + library, library: "" }));
      const isThere = () => !!document.querySelector("h1");
      const press = () => document.querySelector("#go").click();
      const ways = {
        turbo: tag(t.site.script(fileOf("@hotwired/turbo", "dist/turbo.es2017-umd.js"))),
        htmx: tag(t.site.script(fileOf("htmx.org", "dist/htmx.js"))),
        swup: tag(
          t.site.script(
            await bundled(
              'import Swup from "swup"; addEventListener("DOMContentLoaded", () => { window.swup = new Swup({ animationSelector: false }); });',
            ),
          ),
        ),
        nothing: "",
      };
      for (const head of Object.values(ways)) {
        const address = next(head);
        const window = await t.open(
          page(`<main id="swup">${article}<a id="go" hx-boost="true" href="${address}">Other</a></main>`, {
            head: head + library,
            library: "",
          }),
        );
        await leftAtOnce(window, { leave: press, other: isThere });
      }
      const router = await bundled(
        `import { createElement as h } from "react"; import { createRoot } from "react-dom/client";
        import { BrowserRouter, Routes, Route, Link } from "react-router";
        const Article = () => h("main", {}, h("div", { dangerouslySetInnerHTML: { __html: ${JSON.stringify(article)} } }), h(Link, { id: "go", to: "/other" }, "Other"));
        createRoot(document.querySelector("#app")).render(h(BrowserRouter, {}, h(Routes, {}, h(Route, { path: "/other", element: h("h1", {}, "Other") }), h(Route, { path: "*", element: h(Article) }))));`,
      );
      const app = await t.open(page(`<div id="app"></div>${library}${tag(t.site.script(router))}`, { library: "" }));
      await until(() => app.run(() => alive()));
      await leftAtOnce(app, { leave: press, other: isThere });
      // A router of its own, whose routes stand after the sign for anchors.
      const hashes = t.site
        .script(`const draw = () => { document.querySelector("#app").innerHTML = /^#\\/two/.test(location.hash)
        ? "<h1>Other</h1>" : ${JSON.stringify(`${article}<a id="go" href="#/two">Other</a>`)}; };
        addEventListener("hashchange", draw); draw();`);
      const routed = await t.open(page(`<div id="app"></div>${library}${tag(hashes)}`, { library: "" }));
      await leftAtOnce(routed, { leave: press, other: isThere });
      // Replaced in place, and under another address.
      const replaced = await t.open(page(`<main>${article}</main>`));
      const seen = await replaced.run(async () => {
        const main = document.querySelector("main");
        const markup = main.innerHTML;
        await settled();
        step(1);
        await Promise.resolve();
        main.innerHTML = "<h1>Other</h1>";
        await settled();
        const inPlace = location.hash;
        history.replaceState(null, "", location.pathname);
        main.innerHTML = markup;
        await settled();
        step(1);
        history.pushState(null, "", "/elsewhere");
        main.innerHTML = "<h1>Other</h1>";
        await new Promise((done) => setTimeout(done, 700));
        return [inPlace, location.pathname + location.hash, wrong];
      });
      assert.match(seen[0], /^#mw-limpet--[\w-]+$/);
      assert.deepEqual(seen.slice(1), ["/elsewhere", []]);
    },
  },
  {
    row: 43,
    title: "Text inside the shadow is wrapped, or cleaned from outside",
    software: ["dompurify"],
    engines: all,
    async run(t) {
      const purify = tag(t.site.script(fileOf("dompurify", "dist/purify.js")));
      const ways = {
        nothing: () => undefined,
        wrapped: () => {
          for (const host of document.querySelectorAll("main *")) {
            if (!host.shadowRoot) continue;
            const list = document.createTreeWalker(host.shadowRoot, NodeFilter.SHOW_TEXT);
            const texts = [];
            while (list.nextNode())
              if (!/^(style|option)$/.test(list.currentNode.parentNode.localName)) texts.push(list.currentNode);
            for (const text of texts.filter((one) => one.data.trim() && !(one.parentNode instanceof SVGElement))) {
              const font = document.createElement("font");
              text.replaceWith(font);
              font.append(text);
            }
          }
        },
        cleaned: () => {
          for (const host of document.querySelectorAll("main *"))
            for (const one of host.shadowRoot ? [...host.shadowRoot.children] : [])
              if (one.localName !== "style")
                DOMPurify.sanitize(one, { IN_PLACE: true, CUSTOM_ELEMENT_HANDLING: { tagNameCheck: /^mw-/ } });
        },
        "without comments": () => {
          for (const host of document.querySelectorAll("main *")) {
            const list = host.shadowRoot && document.createTreeWalker(host.shadowRoot, NodeFilter.SHOW_COMMENT);
            const marks = [];
            while (list?.nextNode()) marks.push(list.currentNode);
            for (const mark of marks) mark.remove();
          }
        },
      };
      const figures = ["mw-ratio-summary", "mw-working", "mw-change-table", "mw-drive-line", ".sentence"];
      let expected;
      for (const [name, way] of Object.entries(ways)) {
        const window = await t.open(
          page(`<main>${article}${blocks.replaceAll('build="whole"', "")}</main>`, { head: purify }),
        );
        await window.run(() => settled());
        await window.run(way);
        const seen = await window.run(async (list) => {
          await settled();
          step(2);
          await settled();
          await settled();
          const numbers = (text) => text.match(/\d+(\.\d+)?/g).join(" ");
          return { said: list.map((one) => numbers(reads(one))), wrong };
        }, figures);
        expected ??= seen;
        for (const text of expected.said) assert.match(text, /39\.09/);
        assert.deepEqual(seen, expected, name);
      }
    },
  },
  {
    row: 44,
    title: "Every snippet of the documentation, through Markdown engines and minifiers",
    software: [
      "markdown-it",
      "marked",
      "commonmark",
      "remark-parse",
      "hugo",
      "html-minifier-terser",
      "html-minifier-next",
      "htmlnano",
    ],
    engines: ["chromium"],
    elsewhere: "what the engines and minifiers make is the same in every browser",
    async run(t) {
      const offered = snippets();
      assert.ok(offered.length > 3, `${offered.length} snippets`);
      const window = await t.open(page("<main></main>"));
      const read = (markup) =>
        window.run(async (html) => {
          const main = document.querySelector("main");
          main.innerHTML = `<p>Before.</p>${html}<p>After.</p>`;
          await settled();
          // What comes from a file, or does not, has come by then.
          for (const build of main.querySelectorAll("mw-build")) await build.checked;
          await settled();
          // Typographers set other quotes and dashes, which nobody minds.
          const text = reads("main")
            .replace(/[“”„]/g, '"')
            .replace(/[’‘]/g, "'")
            .replace(/ ?[–—-]+ ?/g, "-")
            .replace(/…/g, "...")
            .replace(/\s+/g, " ");
          main.replaceChildren();
          return text;
        }, markup);
      const { "markdown-it": curled } = typographically;
      const ways = { ...plainly, "with a typographer": curled, ...minified };
      for (const snippet of offered) {
        const expected = await read(snippet);
        for (const [name, way] of Object.entries(ways))
          assert.equal(await read(await way(`${snippet}\n`)), expected, `${name}: ${snippet}`);
      }
      assert.deepEqual(await window.run(() => wrong.filter((one) => !/a file failed/.test(one))), []);
    },
  },
  {
    row: 45,
    title: "Attributes are taken for addresses by a sanitiser; any of them is lost",
    software: ["dompurify"],
    engines: ["chromium"],
    elsewhere: "what attributes are left says what there is to read",
    async run(t) {
      const DOMPurify = createDOMPurify(new JSDOM("").window);
      const names = ["stages", "front", "rear", "front-wheel", "rear-wheel", "target"];
      const text = (kept) =>
        kept.map((name) => `${name}="${new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)[1]}"`).join(" ");
      const values =
        '<mw-value of="front">44.30</mw-value> <mw-value of="rear">43.32</mw-value> <mw-value figure="lead">1.06% ahead</mw-value> <mw-value figure="standing" of="front">inside</mw-value> <mw-value figure="travel" of="rear">8.70 mm</mw-value>';
      const window = await t.open(page("<main></main>"));
      const read = (markup) =>
        window.run(async (html) => {
          document.querySelector("main").innerHTML = html;
          await settled();
          // Where too much is lost there is no build, and its author reads in its place what is wrong, in sentences.
          return reads("main")
            .replaceAll("! ", "")
            .replace(/^.*\. (?=\d)/s, "");
        }, markup);
      const plain = "44.30 43.32 1.06% ahead inside 8.70 mm";
      const right =
        /^44\.30 43\.32 (1\.06% ahead|2\.20% behind, gears alone|not known) (inside|not known) (8\.70 mm|not known)$/;
      assert.equal(await read(`<mw-build ${text(names)}></mw-build><p>${values}</p>`), plain);
      for (let bits = 0; bits < 2 ** names.length; bits++) {
        const kept = names.filter((_, n) => bits & (1 << n));
        // What is not said is not known: a range, a wheel. Without tyres the gears alone differ by 2.20 %, and that is said.
        const found = await read(`<mw-build ${text(kept)}></mw-build><p>${values}</p>`);
        assert.ok(right.test(found), `${kept.join()}: ${found}`);
      }
      const allowed = { ADD_TAGS: ["mw-build", "mw-value", "mw-teeth"], ADD_ATTR: ["of", "figure", ...names] };
      for (const options of [
        allowed,
        { ...allowed, ADD_URI_SAFE_ATTR: names },
        { ...allowed, ADD_ATTR: ["of", "figure"] },
      ])
        assert.equal(
          await read(DOMPurify.sanitize(`<mw-build ${text(names)}></mw-build><p>${values}</p>`, options)),
          plain,
          JSON.stringify(options),
        );
    },
  },
  {
    row: 46,
    title: "The address is taken for a selector by scroll-spies and scripts",
    software: ["bootstrap", "bootstrap3", "jquery"],
    engines: all,
    async run(t) {
      const jquery = tag(t.site.script(fileOf("jquery", "dist/jquery.js")));
      const three = tag(t.site.script(fileOf("bootstrap3", "dist/js/bootstrap.js")));
      const five = tag(t.site.script(fileOf("bootstrap", "dist/js/bootstrap.bundle.js")));
      const nav = '<nav id="nav"><ul class="nav"><li><a class="nav-link" href="#notes">Notes</a></li></ul></nav>';
      const scripts = {
        "bootstrap 3": jquery + three,
        "bootstrap 5": five,
        "jquery alone": jquery,
      };
      for (const [name, head] of Object.entries(scripts)) {
        for (const anchor of ["", "#notes"]) {
          const window = await t.open(
            t.site.page(
              page(
                `${nav}${article}<div style="height:2000px"></div><h2 id="notes">Notes</h2><div style="height:2000px"></div>`,
                { head },
              ),
            ) + anchor,
          );
          const seen = await window.run(async () => {
            await settled();
            step(1);
            const hash = await addressed(/mw-/);
            document.body.setAttribute("data-spy", "scroll");
            document.body.setAttribute("data-target", "#nav");
            if (window.bootstrap) new bootstrap.ScrollSpy(document.body, { target: "#nav" });
            else if (jQuery.fn.scrollspy) jQuery("body").scrollspy({ target: "#nav" });
            const found = [document.querySelector(hash), window.jQuery ? jQuery(hash).length : 0];
            window.jQuery?.(`a[href="${hash}"]`);
            // The page's own links to what is on it go on working, and back.
            document.querySelector(".nav a").click();
            await settled();
            dispatchEvent(new HashChangeEvent("hashchange"));
            return { hash, found, scrolled: scrollY > 500, wrong };
          });
          assert.match(seen.hash, anchor ? /^#notes\.mw-limpet--[\w-]+$/ : /^#mw-limpet--[\w-]+$/);
          assert.deepEqual({ ...seen, hash: "" }, { hash: "", found: [null, 0], scrolled: true, wrong: [] }, name);
          // Whoever opens it arrives at the anchor.
          const arrived = await t.open((await window.url()).replace(/(\?.*)?#.*/, `?${anchor.length}${seen.hash}`));
          await until(() => arrived.run(() => alive() && count() === "16"));
          assert.equal(await arrived.run(() => scrollY > 500), anchor !== "", `${name} ${anchor}`);
        }
      }
    },
  },
  {
    row: 47,
    title: "Hot keys of the page fire while somebody types in a field or chooses in a menu",
    software: ["@github/hotkey", "tinykeys", "mousetrap"],
    engines: all,
    async run(t) {
      const keys = ["1", "5", "j", "/", "?", ".", "-", "Backspace", "ArrowUp", "ArrowDown", "Home", "Enter"];
      const script = await bundled(`
        import { install } from "@github/hotkey"; import { tinykeys } from "tinykeys"; import Mousetrap from "mousetrap";
        window.fired = [];
        const keys = ${JSON.stringify(keys)};
        for (const key of keys) {
          const button = document.createElement("button");
          button.hidden = true;
          button.addEventListener("click", () => fired.push("hotkey " + key));
          document.body.append(button);
          if (key.length === 1) install(button, key);
          tinykeys(window, { [key]: () => fired.push("tinykeys " + key) });
          Mousetrap.bind(key.replace("Arrow", "").toLowerCase(), () => void fired.push("mousetrap " + key));
          document.addEventListener("keydown", (event) => event.key === key && fired.push("plain " + key));
        }`);
      const body = `<main>${wholeBuild}${controls}<p><mw-quantity build="whole" of="front.wheel.diameter">124 mm</mw-quantity></p><div>${article}</div></main>`;
      const window = await t.open(page(`${body}${library}${tag(t.site.script(script))}`, { library: "" }));
      const seen = await window.run(async (list) => {
        await settled();
        await settled();
        const fields = [];
        const visit = (root) => {
          for (const one of root.querySelectorAll("*")) {
            if (
              one.matches("input:not([type=checkbox],[type=radio]), select, textarea") &&
              one.checkVisibility?.() !== false
            )
              fields.push(one);
            if (one.shadowRoot) visit(one.shadowRoot);
          }
        };
        visit(document.querySelector("main"));
        const where = new Set();
        for (const field of fields) {
          const { host } = field.getRootNode();
          field.focus();
          for (const key of list)
            for (const type of ["keydown", "keypress", "keyup"])
              field.dispatchEvent(new KeyboardEvent(type, { key, bubbles: true, composed: true, cancelable: true }));
          for (const one of fired.splice(0)) where.add(`${host.localName} ${field.localName}: ${one}`);
          field.blur();
        }
        return { some: fields.length > 12, where: [...where] };
      }, keys);
      assert.deepEqual(seen, { some: true, where: [] });
    },
  },
  {
    row: 48,
    title: "A keyed list is put into another order: focus and caret are lost",
    software: ["react-dom", "vue", "lit"],
    engines: all,
    async run(t) {
      const item = (create) =>
        `(address) => ${create}("li", { key: address }, [${create}("mw-teeth", { of: address, key: address })])`;
      const ways = {
        react: `import { createElement as h } from "react"; import { createRoot } from "react-dom/client"; import { flushSync } from "react-dom";
          const root = createRoot(document.querySelector("#app"));
          window.draw = (list) => flushSync(() => root.render(h("ul", {}, list.map(${item("h")}))));`,
        vue: `import { createApp, h, ref, nextTick } from "vue";
          const list = ref([]);
          createApp({ render: () => h("ul", list.value.map(${item("h")})) }).mount("#app");
          window.draw = async (next) => { list.value = next; await nextTick(); };`,
        lit: `import { html, render } from "lit"; import { repeat } from "lit/directives/repeat.js";
          window.draw = (list) => render(html\`<ul>\${repeat(list, (one) => one, (one) => html\`<li><mw-teeth of=\${one}></mw-teeth></li>\`)}</ul>\`, document.querySelector("#app"));`,
      };
      const addresses = ["spur-and-pinion.driver", "spur-and-pinion.driven", "gear-row.teeth.0", "gear-row.teeth.1"];
      for (const [name, code] of Object.entries(ways)) {
        const window = await t.open(
          page(
            `${attributeBuild}<div id="app"></div>${library}${tag(t.site.script(await bundled(code, { build: { conditions: ["browser", "import"] } })))}`,
            { library: "" },
          ),
        );
        const seen = await window.run(async (list) => {
          await draw(list);
          await settled();
          const said = [];
          for (const chosen of [0, 1, 3]) {
            const element = [...document.querySelectorAll("mw-teeth")].find(({ of }) => of === list[chosen]);
            const input = element.shadowRoot.querySelector("input");
            input.focus();
            input.value = "123";
            input.dispatchEvent(new InputEvent("input", { bubbles: true, composed: true }));
            input.setSelectionRange(1, 2);
            for (const order of [[...list].reverse(), [list[2], list[0], list[3], list[1]], list]) {
              await draw(order);
              await settled();
              const { activeElement } = element.shadowRoot;
              said.push(
                `${activeElement === input} ${input.value} ${input.selectionStart} ${input.selectionEnd} ${document.querySelectorAll("li")[order.indexOf(list[chosen])].contains(element)}`,
              );
            }
            input.dispatchEvent(new KeyboardEvent("keydown", { key: "Escape", bubbles: true }));
            input.blur();
            await settled();
          }
          return [...new Set(said), ...wrong];
        }, addresses);
        assert.deepEqual(seen, ["true 123 1 2 true"], name);
      }
    },
  },
  {
    row: 49,
    title: "A fallback is wrapped by something of the page's, and doubled",
    software: [],
    engines: all,
    async run(t) {
      const wraps = {
        time: (text) => `<time datetime="PT44S">${text}</time>`,
        data: (text) => `<data value="44.3">${text}</data>`,
        p: (text) => `<p>${text}</p>`,
        "split text": (text) => [...text].map((one) => `<span class="char">${one}</span>`).join(""),
        "split words": (text) => `<span class="line"><span class="word">${text}</span></span>`,
        tooltip: (text) => `<span tabindex="0" data-tip="Motor turns">${text}</span>`,
        button: (text) => `<button type="button">${text}</button>`,
        abbreviation: (text) => `<abbr title="motor turns">${text}</abbr>`,
        mark: (text) => `<mark>${text}</mark>`,
        link: (text) => `<a href="#why">${text}</a>`,
        "no-break": (text) => `<nobr>${text}</nobr>`,
        code: (text) => `<code><b>${text}</b></code>`,
        "soft hyphen": (text) => `${text.slice(0, 1)}&shy;${text.slice(1)}&#8203;`,
        comment: (text) => `<!-- checked -->${text}<!-- twice -->`,
        blanks: (text) => `\n   ${text}\n `,
      };
      const window = await t.open(page("<main></main>"));
      for (const [name, wrap] of Object.entries(wraps))
        for (const [value, teeth] of [
          ["44.30", "15"],
          ["44.31", "17"],
        ]) {
          const markup = `${attributeBuild}<div>With <mw-teeth of="spur-and-pinion.driver">${wrap(teeth)}</mw-teeth> it makes <mw-value of="front">${wrap(value)}</mw-value>.</div>`;
          const seen = await window.run(async (html) => {
            const main = document.querySelector("main");
            main.innerHTML = html;
            await settled();
            const tidy = () =>
              reads("main")
                .replace(/[\u00ad\u200b]/g, "")
                .replace(/! |(?<=\d) (?=\.$)/g, "")
                .replace(/ (?=\.)/g, "");
            const before = tidy();
            step(1);
            await settled();
            const after = [count(), shown()];
            document.querySelector("mw-build").store.undo();
            field().blur();
            await settled();
            return [before, after, tidy()];
          }, markup);
          assert.deepEqual(
            seen,
            ["With 15 it makes 44.30.", ["16", "41.53"], "With 15 it makes 44.30."],
            `${name}, ${value}`,
          );
        }
      // What was right stays when it is wrapped while the page lives.
      const wrapped = await window.run(async (html) => {
        const main = document.querySelector("main");
        main.innerHTML = html;
        await settled();
        for (const element of main.querySelectorAll("mw-value, mw-teeth")) {
          const box = document.createElement("span");
          box.append(...element.childNodes);
          element.append(box);
        }
        await settled();
        return [reads("main"), wrong];
      }, article);
      assert.deepEqual(wrapped, [plainSentence, []]);
    },
  },
  {
    row: 50,
    title: "The page's text is read, chosen and copied",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<main>${article}</main>`));
      const seen = await window.run(async () => {
        await settled();
        const paragraph = document.querySelector(".sentence");
        const chosen = () => {
          getSelection().selectAllChildren(paragraph);
          const text = getSelection().toString();
          getSelection().removeAllRanges();
          return text.replace(/\s+/g, " ").trim();
        };
        const said = { text: paragraph.innerText, content: paragraph.textContent, chosen: chosen() };
        step(1);
        await settled();
        field().blur();
        await settled();
        document.querySelector("mw-build").store.undo();
        await settled();
        return {
          ...said,
          found: window.find?.("every 44.30 turns") ?? true,
          again: paragraph.innerText,
          chosenAgain: chosen(),
        };
      });
      assert.deepEqual(seen, {
        text: plainSentence,
        content: plainSentence,
        chosen: plainSentence,
        found: true,
        again: plainSentence,
        chosenAgain: plainSentence,
      });
      if (t.engine !== "chromium") return;
      // Read aloud in the order of the sentence, before an edit and after.
      const spoken = async () => {
        const words = [];
        const visit = (node) => {
          if (/^(StaticText|spinbutton)$/.test(node.role))
            words.push(node.role === "spinbutton" ? node.value : node.name);
          // What stands in a field is its value.
          if (node.role !== "spinbutton") for (const child of node.children ?? []) visit(child);
        };
        visit(await window.page.accessibility.snapshot({ interestingOnly: false }));
        return words.join(" ").replace(/\s+/g, " ").trim();
      };
      assert.match(await spoken(), /With 15 teeth the front turns once for every 44\.30 turns of the motor\./);
      await window.run(async () => {
        step(1);
        field().blur();
        await settled();
      });
      assert.match(await spoken(), /With 16 teeth the front turns once for every 41\.53 turns of the motor\./);
    },
  },
  {
    row: 51,
    title: "Moved before it was drawn: into a frame, a template, a document without a window, and back",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<main></main><iframe srcdoc="<p>A frame</p>"></iframe>`));
      const seen = await window.run(async (markup) => {
        const main = document.querySelector("main");
        const frame = document.querySelector("iframe").contentDocument;
        const inert = document.implementation.createHTMLDocument("");
        const template = document.createElement("template");
        const said = {};
        const places = { frame: frame.body, inert: inert.body, template: template.content };
        for (const [name, place] of Object.entries(places)) {
          main.innerHTML = markup;
          // Not a turn has passed.
          place.append(...main.childNodes);
          await settled();
          const value = place.querySelector("mw-value");
          const inside = reads(place.querySelector(".sentence") ?? place);
          const dressed =
            name !== "frame" ||
            frame.defaultView.getComputedStyle(place.querySelector("mw-teeth").shadowRoot.querySelector("input"))
              .position;
          if (value.shadowRoot) value.of = "front";
          await settled();
          main.append(...place.childNodes);
          await settled();
          step(1);
          await settled();
          said[name] = [inside, dressed, count(), shown(), getComputedStyle(field()).position];
          document.querySelector("mw-build").store.reset();
          await settled();
          main.replaceChildren();
        }
        return { said, wrong };
      }, `${article}<mw-ratio-summary><p>44.30</p></mw-ratio-summary>`);
      assert.deepEqual(seen, {
        said: {
          frame: [plainSentence, "absolute", "16", "41.53", "absolute"],
          inert: [plainSentence, true, "16", "41.53", "absolute"],
          template: [seen.said.template[0], true, "16", "41.53", "absolute"],
        },
        wrong: [],
      });
      assert.match(seen.said.template[0], /With 15 teeth/);
    },
  },
  {
    row: 52,
    title: "A file that was tampered with does not run; the right one does",
    software: [],
    engines: all,
    async run(t) {
      const other = await startSite();
      try {
        const headers = { "access-control-allow-origin": "*", "cross-origin-resource-policy": "cross-origin" };
        const files = [
          ...["meshwright-article.js", "meshwright-second.js", "meshwright-third.js", "meshwright.js"],
          ...["figures", "reports", "words", "tools"].map((kind) => `${kind}-de.js`),
        ];
        const put = (folder, changed) => {
          for (const name of files)
            other.set(`/${folder}/${name}`, built(name) + (changed.test(name) ? "\n;window.struck = true" : ""), {
              type: "text/javascript; charset=utf-8",
              headers,
            });
        };
        put("right", /^$/);
        put("words", /-de\.js$/);
        put("second", /second/);
        const hash = (name) => `sha384-${createHash("sha384").update(built(name)).digest("base64")}`;
        const open = (folder, name, pinned) =>
          t.open(
            page(
              `<main>${attributeBuild.replace("<mw-build", '<mw-build data-n="1"')}${sentence}<mw-ratio-summary><p>44.30</p></mw-ratio-summary></main>`,
              {
                library: "",
                lang: "de",
                head: `<script src="${other.origin}/${folder}/${name}" ${pinned ? `integrity="${hash(name)}"` : ""} crossorigin="anonymous" defer></script>`,
              },
            ),
            // Nothing of another place without its leave.
            {
              headers: {
                "cross-origin-embedder-policy": "require-corp",
                "cross-origin-opener-policy": "same-origin",
              },
            },
          );
        const outcome = async (window, isGerman) => {
          await until(() => window.run(() => !!customElements.get("mw-value")));
          if (isGerman) await until(() => window.run(() => /Motorumdrehungen/.test(reads("main"))), "German words");
          else await delay(900);
          return window.run(async () => {
            await settled();
            return [window.struck === true, /Motorumdrehungen/.test(reads("main"))];
          });
        };
        for (const name of ["meshwright.js", "meshwright-article.js"]) {
          assert.deepEqual(await outcome(await open("right", name, true), true), [false, true], name);
          assert.deepEqual(await outcome(await open("words", name, true), false), [false, false], name);
        }
        // Without a hash nobody has said what is right.
        assert.equal((await outcome(await open("words", "meshwright.js", false), true))[0], true);
        const first = await open("second", "meshwright-article.js", true);
        assert.deepEqual(await outcome(first, false), [false, false]);
        const plain = await t.open(
          page(`${jsonBuild}${sentence}`, {
            library: "",
            head: `<script src="${other.origin}/second/meshwright-article.js" integrity="${hash("meshwright-article.js")}" crossorigin="anonymous" defer></script>`,
          }),
        );
        await until(() => plain.run(() => alive()));
        assert.deepEqual(
          await plain.run(async () => {
            step(1);
            await settled();
            return [count(), shown(), window.struck === true];
          }),
          ["16", "41.53", false],
        );
      } finally {
        await other.stop();
      }
    },
  },
  {
    row: 53,
    title: "Older engines: nothing newer than Safari 16.0 and Chromium 103",
    software: [],
    engines: all,
    async run(t) {
      const older = t.site.script(`
        for (const [of, names] of [
          [Array.prototype, ["toReversed", "toSorted", "toSpliced", "with", "group", "groupToMap"]],
          [Object, ["groupBy"]], [Map, ["groupBy"]], [Promise, ["withResolvers", "try"]], [Array, ["fromAsync"]],
          [Set.prototype, ["union", "intersection", "difference", "symmetricDifference", "isSubsetOf", "isSupersetOf", "isDisjointFrom"]],
          [String.prototype, ["isWellFormed", "toWellFormed"]], [RegExp, ["escape"]], [Math, ["sumPrecise", "f16round"]],
          [Element.prototype, ["checkVisibility", "setHTMLUnsafe", "getHTML", "moveBefore", "computedStyleMap"]],
          [HTMLElement.prototype, ["showPopover", "hidePopover", "togglePopover", "popover"]],
          [AbortSignal, ["any"]], [URL, ["canParse", "parse"]], [Document.prototype, ["startViewTransition"]],
          [ArrayBuffer.prototype, ["transfer", "transferToFixedLength"]], [Intl.NumberFormat.prototype, ["formatRange", "formatRangeToParts"]],
          [globalThis.Iterator?.prototype ?? {}, ["map", "filter", "take", "drop", "flatMap", "reduce", "toArray", "forEach", "some", "every", "find"]],
          [window, ["Iterator", "navigation", "CSSStyleValue", "Highlight", "scheduler", "requestIdleCallback", "Temporal", "CloseWatcher"]],
          [Intl, ["DurationFormat"]], [CSS, ["registerProperty", "highlights"]],
        ]) for (const name of names) delete of[name];`);
      const window = await t.open(page(live + controls, { head: tag(older) }));
      const seen = await window.run(async () => {
        await settled();
        await settled();
        const before = reads(".sentence");
        step(1);
        await settled();
        await settled();
        const empty = [...document.querySelectorAll("main > *, body > [build]")]
          .filter(
            (one) => one.shadowRoot && !/^mw-(build|edits|pair-finder|order-list|measurements)$/.test(one.localName),
          )
          .filter((one) => !one.shadowRoot.querySelector("svg, table, input, select, button, p, li"));
        const faults = [...document.querySelectorAll("*")]
          .filter((one) => one.fault)
          .map((one) => `${one.localName}: ${one.fault}`);
        return { before, after: [count(), shown()], empty: empty.map((one) => one.localName), faults, wrong };
      });
      assert.deepEqual(seen, { before: plainSentence, after: ["16", "41.53"], empty: [], faults: [], wrong: [] });
    },
  },
];
