// Found by looking on: servers that draw, page builders, effects, readers' own tools, and what browsers have of late.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { compile } from "svelte/compiler";
import { at } from "../../../scripts/lib/paths.js";
import { delay, until } from "../lib/engine.js";
import { bundled, once } from "../lib/software.js";
import { article, attributes, jsonBuild, page, plainSentence, sentence, small } from "../lib/snippets.js";
import { good, live, stepped } from "../lib/stepped.js";

const all = ["chromium", "firefox", "webkit"];
const tag = (src, kind = "") => `<script src="${src}" ${kind}></script>`;
const library = tag("/meshwright.js");
const first = tag("/meshwright-article.js");

/** Code as a module of its own in a plain Node; what it prints. */
const inNode = (code) =>
  once(`other node ${code}`, async () => {
    const { run } = await import("../../../scripts/lib/run.js");
    const { code: status, output } = await run(process.execPath, ["--input-type=module", "-e", code], {
      cwd: at("tests", "hosts"),
    });
    if (status !== 0) throw new Error(output.slice(0, 2000));
    return output.trim();
  });

/** The article as a tree, for whoever makes elements by a function. */
const treeOf = (json, heard) => `h("main", {}, [
  h("mw-build", { id: "limpet", key: 1, json: ${json} }),
  h("p", { class: "sentence", key: 2 }, ["With ", h("mw-teeth", { key: 3, of: "spur-and-pinion.driver", ${heard} }, "15"),
    " teeth the front turns once for every ", h("mw-value", { key: 4, of: "front" }, "44.30"), " turns of the motor."])])`;

export const subject = "Servers that draw, page builders, effects, readers’ tools, newer browsers";

export const rows = [
  {
    row: 54,
    title: "React 19, Vue 3, Svelte 5, Preact on a server, then hydrated: data as text and as an object, events",
    software: ["react-dom", "vue", "svelte", "preact"],
    engines: all,
    async run(t) {
      const text = JSON.stringify(small);
      const ways = {
        react: {
          server: (json) =>
            inNode(
              `import { createElement as h } from "react"; import { renderToString } from "react-dom/server"; const data = ${small};
               console.log(renderToString(${treeOf(json, "").replace("class:", "className:")}));`,
            ),
          client: (json) =>
            bundled(`import { createElement as h } from "react"; import { hydrateRoot } from "react-dom/client"; const data = ${small};
              // Of what a server drew, React sets no listeners by name: it hands the element out.
              const listen = (element) => { const hear = () => heard++; element.addEventListener("mw-change", hear); return () => element.removeEventListener("mw-change", hear); };
              hydrateRoot(document.querySelector("#app"), ${treeOf(json, "ref: listen").replace("class:", "className:")});`),
        },
        vue: {
          server: (json) =>
            inNode(
              `import { createSSRApp, h } from "vue"; import { renderToString } from "vue/server-renderer"; const data = ${small};
               console.log(await renderToString(createSSRApp({ render: () => ${treeOf(json, "")} })));`,
            ),
          client: (json) =>
            bundled(
              `import { createSSRApp, h } from "vue"; const data = ${small};
              createSSRApp({ render: () => ${treeOf(json, '"onMwChange": () => heard++')} }).mount("#app");`,
            ),
        },
        preact: {
          server: () => undefined,
          client: (json) =>
            bundled(`import { h, hydrate } from "preact"; const data = ${small};
              hydrate(${treeOf(json, '"onmw-change": () => heard++')}, document.querySelector("#app"));`),
        },
      };
      const open = async (server, client, what) => {
        const window = await t.open(
          page(`<div id="app">${server}</div>${library}${tag(t.site.script(`window.heard = 0;${client}`))}`, {
            library: "",
          }),
        );
        await window.run(() => settled());
        const seen = await window.run(async () => {
          await settled();
          const found = {
            reads: reads(".sentence").replaceAll("! ", ""),
            said: findings().length > 0,
            isAlive: alive(),
          };
          const input = document.querySelector("mw-teeth").shadowRoot?.querySelector("input");
          if (input) step(1);
          await settled();
          return { ...found, after: input ? [count(), shown()] : [], heard, wrong };
        });
        assert.equal(seen.reads, plainSentence, what);
        assert.deepEqual(seen.wrong, [], what);
        return seen;
      };
      const asText = `<main><mw-build id="limpet" json="${small.replaceAll('"', "&quot;")}"></mw-build>${sentence}</main>`;
      for (const [name, { server, client }] of Object.entries(ways)) {
        const drawn = (await server(text)) ?? asText;
        const seen = await open(drawn, await client(text), `${name}, text`);
        assert.deepEqual(seen.after, ["16", "41.53"], `${name}, text`);
        assert.equal(seen.heard, 1, `${name}: events`);
        // An object does not live in markup. Who hydrates sets it, or does not: then the author's text stays, and the author is told.
        const other = await open((await server("data")) ?? asText, await client("data"), `${name}, object`);
        if (other.after.length) assert.deepEqual(other.after, ["16", "41.53"], `${name}, object`);
        else assert.ok(other.said, `${name}, object: nobody says that there is no build`);
      }
      // Svelte compiles for the server, and for the page.
      const source = (json) =>
        `<script>const data = ${small}; const text = ${text};</script><main><mw-build id="limpet" json={${json}}></mw-build><p class="sentence">With <mw-teeth of="spur-and-pinion.driver" onmw-change={() => (globalThis.heard += 1)}>15</mw-teeth> teeth the front turns once for every <mw-value of="front">44.30</mw-value> turns of the motor.</p></main>`;
      for (const json of ["text", "data"]) {
        const forServer = compile(source(json), { generate: "server", dev: false }).js.code.replace(
          "export default",
          "globalThis.Component =",
        );
        const drawn = await inNode(
          `import { render } from "svelte/server"; ${forServer}\nconsole.log(render(globalThis.Component).body);`,
        );
        const forPage = compile(source(json), { generate: "client", dev: false }).js.code.replace(
          "export default",
          "window.Component =",
        );
        const seen = await open(
          drawn,
          await bundled(
            `${forPage}\nimport { hydrate, flushSync } from "svelte"; hydrate(window.Component, { target: document.querySelector("#app") }); flushSync();`,
          ),
          `svelte, ${json}`,
        );
        assert.deepEqual([seen.after, seen.heard], [["16", "41.53"], 1], `svelte, ${json}`);
      }
    },
  },
  {
    title:
      "The article in its two files: under strict-dynamic, with trusted types, from a page that embeds nothing else",
    software: [],
    engines: all,
    async run(t) {
      const nonce = "c2hvcmU";
      const policies = [
        `default-src 'none'; img-src 'self'; script-src 'nonce-${nonce}' 'strict-dynamic'; base-uri 'none'`,
        `default-src 'none'; img-src 'self'; script-src 'nonce-${nonce}' 'strict-dynamic'; require-trusted-types-for 'script'; trusted-types meshwright`,
        `script-src 'self' 'nonce-${nonce}'; style-src 'self'; img-src 'self'`,
      ];
      for (const policy of policies) {
        const markup = page(`${article}${first}`, { library: "" }).replaceAll(
          "<script src",
          `<script nonce="${nonce}" src`,
        );
        const window = await t.open(markup, {
          headers: {
            "content-security-policy": policy,
            "cross-origin-embedder-policy": "require-corp",
            "cross-origin-opener-policy": "same-origin",
          },
        });
        await until(() => window.run(() => alive()), policy);
        assert.deepEqual(await stepped(window), good, policy);
      }
    },
  },
  {
    title: "Only the first file may run: figures live, nothing is thrown",
    software: [],
    engines: all,
    async run(t) {
      t.site.set(
        "/alone/meshwright-article.js",
        readFileSync(at("packages", "elements", "dist", "meshwright-article.js"), "utf8"),
        {
          type: "text/javascript; charset=utf-8",
        },
      );
      const alone = await t.open(
        page(`<main>${jsonBuild}${sentence}</main>${tag("/alone/meshwright-article.js")}`, { library: "" }),
      );
      await until(() => alone.run(() => warned.some((one) => /could not be loaded/.test(one))), "a word to the author");
      const seen = await stepped(alone);
      assert.deepEqual({ ...seen, wrong: seen.wrong.filter((one) => !/a file failed/.test(one)) }, good);
    },
  },
  {
    title: "Hidden from everybody by inert, by hidden until found, by a closed disclosure; opened later",
    software: [],
    engines: all,
    async run(t) {
      for (const [before, open] of [
        ["<div inert>", "document.querySelector('[inert]').inert = false"],
        ['<div hidden="until-found">', "document.querySelector('div').removeAttribute('hidden')"],
        ["<details><summary>More</summary>", "document.querySelector('details').open = true"],
        ['<div popover="manual">', "document.querySelector('[popover]').showPopover()"],
        ["<dialog>", "document.querySelector('dialog').showModal()"],
        ['<div style="content-visibility:hidden">', "document.querySelector('div').style.contentVisibility = ''"],
        ['<div style="display:none">', "document.querySelector('div').style.display = ''"],
      ]) {
        const window = await t.open(
          page(`${before}${live}</${/^<(\w+)/.exec(before)[1]}><script>window.opened = () => { ${open} };</script>`),
        );
        await window.run(() => settled());
        await window.run(async () => {
          opened();
          await settled();
          await settled();
        });
        const flat = await window.run(() =>
          [...document.querySelectorAll("main > *")]
            .filter((one) => /^mw-(ratio|overdrive|train|drive|working|change)/.test(one.localName))
            .filter((one) => one.getBoundingClientRect().height < 30)
            .map((one) => one.localName),
        );
        assert.deepEqual(flat, [], before);
        assert.deepEqual(await stepped(window), good, before);
      }
    },
  },
  {
    title: "In a box that is as wide as what is in it: a flex row, a float, a grid's own column, a table's cell",
    software: [],
    engines: all,
    async run(t) {
      for (const css of [
        "main{display:flex;flex-wrap:wrap}",
        "main > *{float:left}",
        "main{display:grid;grid-template-columns:auto;justify-items:start}",
        "main > *{display:inline-block}",
        "main > *{display:table}",
        "main{display:flex;flex-direction:column;align-items:flex-start}",
        "main > *{position:absolute}",
        "main > *{width:fit-content}",
      ]) {
        const window = await t.open(page(live, { head: `<style>${css}</style>` }));
        const seen = await window.run(async () => {
          await settled();
          await settled();
          await settled();
          return {
            flat: [...document.querySelectorAll("main > *")]
              .filter((one) => /^mw-(ratio|overdrive|train|drive|working|change)/.test(one.localName))
              .filter((one) => one.getBoundingClientRect().height < 30 || one.getBoundingClientRect().width < 100)
              .map((one) => one.localName),
            undrawn: ["mw-drive-line", "mw-train-drawing", "mw-overdrive-gauge"].filter(
              (name) => !document.querySelector(name).shadowRoot.querySelector("svg"),
            ),
            wrong,
          };
        });
        assert.deepEqual(seen, { flat: [], undrawn: [], wrong: [] }, css);
      }
    },
  },
  {
    title: "A page builder clones its blocks, keeps the copy hidden, and edits it as text",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<main>${article}</main>`));
      const seen = await window.run(async () => {
        await settled();
        const main = document.querySelector("main");
        const markup = main.innerHTML;
        // What a builder saves is what the author wrote, whatever a reader did.
        step(2);
        await settled();
        const saved = main.innerHTML === markup;
        const copy = main.cloneNode(true);
        copy.hidden = true;
        copy.contentEditable = "true";
        document.body.prepend(copy);
        await settled();
        copy.innerHTML = main.innerHTML;
        copy.hidden = false;
        await settled();
        main.remove();
        await settled();
        return {
          saved,
          reads: reads(".sentence"),
          builds: globalThis[Symbol.for("meshwright page 1")].holders.size,
          wrong,
        };
      });
      assert.deepEqual({ ...seen, reads: "" }, { saved: true, reads: "", builds: 1, wrong: [] });
      assert.match(
        seen.reads,
        /^With 1[57] teeth the front turns once for every (44\.30|39\.09) turns of the motor\.$/,
      );
    },
  },
  {
    title: "Effects split words, count figures up, and animate letters while the page lives",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<main>${article}</main>`));
      const seen = await window.run(async () => {
        await settled();
        const said = [];
        const value = document.querySelector("mw-value");
        // A counter runs from nought to the figure that it found, in the light content.
        for (const text of ["0", "12.50", "31.04", "44.30"]) {
          value.textContent = text;
          await settled();
          said.push(reads(value).replace("! ", ""));
        }
        // Letters each in a box of their own.
        for (const element of [value, document.querySelector("mw-teeth")])
          element.innerHTML = [...element.textContent]
            .map((one) => `<span style="display:inline-block">${one}</span>`)
            .join("");
        await settled();
        said.push(reads(".sentence"));
        step(1);
        await settled();
        said.push(`${count()} ${shown()}`);
        return { said, wrong };
      });
      assert.deepEqual(seen, { said: ["44.30", "44.30", "44.30", "44.30", plainSentence, "16 41.53"], wrong: [] });
    },
  },
  {
    title: "A document that a style sheet of XSLT writes",
    software: [],
    engines: ["chromium", "firefox"],
    elsewhere: "WebKit of this machine transforms nothing by itself",
    async run(t) {
      t.site.set(
        "/post.xsl",
        `<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform"><xsl:output method="html" doctype-system="about:legacy-compat"/><xsl:template match="/post"><html lang="en"><head><title>Limpet</title><script src="/probe.js"/></head><body><mw-build id="limpet" ${attributes}/><p class="sentence">With <mw-teeth of="spur-and-pinion.driver"><xsl:value-of select="teeth"/></mw-teeth> teeth the front turns once for every <mw-value of="front"><xsl:value-of select="front"/></mw-value> turns of the motor.</p><script src="/meshwright.js"/></body></html></xsl:template></xsl:stylesheet>`,
        { type: "text/xsl; charset=utf-8" },
      );
      const window = await t.open(
        `<?xml version="1.0"?><?xml-stylesheet type="text/xsl" href="/post.xsl"?><post><teeth>15</teeth><front>44.30</front></post>`,
        { type: "application/xml; charset=utf-8", own: true },
      );
      await until(() => window.run(() => typeof settled === "function"), "the page");
      const seen = await window.run(async () => {
        await settled();
        await settled();
        return { reads: reads(".sentence"), wrong };
      });
      assert.deepEqual(seen, { reads: plainSentence, wrong: [] });
    },
  },
  {
    title: "Printed as a file: the figures as they stand, without keys",
    software: [],
    engines: ["chromium"],
    elsewhere: "only Chromium prints to a file for a test",
    async run(t) {
      const window = await t.open(page(live), { own: true });
      await window.run(async () => {
        await settled();
        step(1);
        await settled();
      });
      const file = await window.page.pdf({ format: "A4" });
      assert.ok(file.length > 10_000);
      const seen = await window.run(async () => {
        await settled();
        return {
          shows: [count(), shown()],
          wrong,
          drawn: !!document.querySelector("mw-drive-line").shadowRoot.querySelector("svg"),
        };
      });
      assert.deepEqual(seen, { shows: ["16", "41.53"], wrong: [], drawn: true });
    },
  },
  {
    title: "A reader's own tools: text wrapped word by word to be read aloud, larger letters, colours turned round",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(live));
      const seen = await window.run(async () => {
        await settled();
        document.documentElement.style.filter = "invert(1) hue-rotate(180deg)";
        document.documentElement.style.zoom = "1.6";
        const roots = [
          document.body,
          ...[...document.querySelectorAll("main *")].map((one) => one.shadowRoot).filter(Boolean),
        ];
        for (const root of roots) {
          const list = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
          const texts = [];
          while (list.nextNode()) texts.push(list.currentNode);
          for (const text of texts) {
            if (
              !text.data.trim() ||
              /^(script|style|option)$/i.test(text.parentNode.localName) ||
              text.parentNode instanceof SVGElement
            )
              continue;
            text.replaceWith(
              ...text.data.split(/(\s+)/).map((word) => {
                if (!word.trim()) return word;
                const mark = document.createElement("mark");
                mark.textContent = word;
                return mark;
              }),
            );
          }
        }
        await settled();
        const before = reads(".sentence");
        step(1);
        await settled();
        await settled();
        return { before, after: [count(), shown()], wrong };
      });
      assert.deepEqual(seen, good);
    },
  },
  {
    title: "Whatever is set on the page's root: a view transition, a scaled font, columns, another writing mode",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(live));
      const seen = await window.run(async () => {
        await settled();
        const said = [];
        for (const css of [
          "html{view-transition-name:none} main > *{view-transition-name:match-element}",
          "html{interpolate-size:allow-keywords;text-size-adjust:none}",
          "html{scroll-behavior:smooth;scroll-snap-type:y mandatory} main > *{scroll-snap-align:start}",
          "body{columns:3 200px}",
          "html{writing-mode:vertical-lr}",
          "*{transition:all 5s !important;animation:none}",
          "main *{user-select:none;pointer-events:none}",
          "mw-value,mw-teeth{display:block}",
          "mw-value,mw-teeth{display:inline-flex}",
          ":not(:defined),mw-build{visibility:hidden} mw-build + *{visibility:visible}",
          "p > *{all:revert}",
        ]) {
          const style = document.createElement("style");
          style.textContent = css;
          document.head.append(style);
          await settled();
          step(1);
          await settled();
          said.push(`${count()} ${shown()}`);
          step(-1);
          await settled();
          style.remove();
        }
        return { said: [...new Set(said)], wrong };
      });
      assert.deepEqual(seen, { said: ["16 41.53"], wrong: [] });
    },
  },
  {
    title: "Custom elements by a stand-in that defines late, wraps define, or counts what is made",
    software: [],
    engines: all,
    async run(t) {
      const heads = {
        wrapped: `const { define } = customElements; window.named = [];
          customElements.define = function (name, type, options) { named.push(name); return define.call(this, name, type, options); };`,
        late: `const { define } = customElements;
          customElements.define = (name, type) => void setTimeout(() => define.call(customElements, name, type), 60);`,
        subclassed: `const { define } = customElements;
          customElements.define = (name, type) => define.call(customElements, name, class extends type {});`,
        attach: `const { attachShadow } = Element.prototype;
          Element.prototype.attachShadow = function (options) { return attachShadow.call(this, { ...options, mode: "open", clonable: true, serializable: true, delegatesFocus: false }); };`,
        create: `const { createElement } = Document.prototype;
          Document.prototype.createElement = function (name, ...more) { return createElement.call(this, name, ...more); };`,
      };
      for (const [name, code] of Object.entries(heads))
        for (const file of ["meshwright.js", "meshwright-article.js"]) {
          const window = await t.open(page(article, { head: tag(t.site.script(code)), library: file }));
          await until(() => window.run(() => alive()), `${name}, ${file}`);
          assert.deepEqual(await stepped(window), good, `${name}, ${file}`);
        }
    },
  },
  {
    title: "A widget on the page watches everything: every change is reported, nothing goes round in a circle",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(live));
      const seen = await window.run(async () => {
        await settled();
        let told = 0;
        const observer = new MutationObserver((records) => {
          told += records.length;
          // Some answer each change by one of their own.
          document.documentElement.dataset.changed = told;
          for (const element of document.querySelectorAll("mw-value, mw-teeth"))
            element.setAttribute("data-seen", told % 7);
        });
        observer.observe(document.body, {
          subtree: true,
          childList: true,
          characterData: true,
          attributes: true,
          attributeFilter: ["style", "hidden", "lang"],
        });
        step(1);
        await settled();
        await new Promise((done) => setTimeout(done, 900));
        observer.disconnect();
        return { quiet: told < 50, shows: [count(), shown()], wrong };
      });
      assert.deepEqual(seen, { quiet: true, shows: ["16", "41.53"], wrong: [] });
    },
  },
  {
    title: "Back from the cache of whole pages: as it was left",
    software: [],
    engines: ["chromium", "firefox"],
    elsewhere: "WebKit's driver leaves no page in its cache",
    async run(t) {
      const window = await t.open(page(`<main>${article}</main>`), { own: true });
      await window.run(async () => {
        await settled();
        window.persisted = [];
        addEventListener("pageshow", (event) => persisted.push(event.persisted));
        typed("9");
        await settled();
      });
      await window.go(t.site.page(page("<p>Elsewhere</p>", { library: "" })));
      await window.back();
      await until(() => window.run(() => alive() && count() === "9"), "the count as it was left");
      assert.deepEqual(await window.run(() => [shown(), wrong]), ["73.83", []]);
      await window.run(async () => {
        step(1);
        await settled();
      });
      assert.deepEqual(await window.run(() => [count(), shown()]), ["10", "66.45"]);
    },
  },
  {
    title: "The address is rewritten by the page: trackers taken off, a slash added, a query sorted",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(
        t.site.page(page(`<main>${article}</main><h2 id="notes">Notes</h2>`)) + "?utm_source=x#notes",
      );
      const seen = await window.run(async () => {
        await settled();
        step(1);
        // Before anything was written: the place is another, by whoever tidies it.
        history.replaceState({ page: 7 }, "", location.pathname + location.hash);
        await new Promise((done) => setTimeout(done, 700));
        step(1);
        await new Promise((done) => setTimeout(done, 700));
        return { search: location.search, hash: location.hash, state: history.state, shows: [count(), shown()], wrong };
      });
      assert.match(seen.hash, /^#notes\.mw-limpet--[\w-]+$/);
      assert.deepEqual(
        { ...seen, hash: "" },
        { search: "", hash: "", state: { page: 7 }, shows: ["17", "39.09"], wrong: [] },
      );
    },
  },
  {
    title: "Lazy loaders, consent managers and speed plugins bring the script late, twice, or as a text",
    software: [],
    engines: all,
    async run(t) {
      const code = readFileSync(at("packages", "elements", "dist", "meshwright-article.js"), "utf8");
      const ways = {
        "type is exchanged": async (window) =>
          window.run(() => {
            const held = document.querySelector("script[data-type]");
            const script = document.createElement("script");
            script.src = held.dataset.src;
            held.replaceWith(script);
          }),
        "twice, at once": async (window) =>
          window.run(() =>
            Promise.all([load("meshwright-article.js"), load("meshwright-article.js")]).then(() => undefined),
          ),
        "one after the other": async (window) =>
          window.run(() => load("meshwright-article.js").then(() => load("meshwright.js"))),
        "as a text": async (window) =>
          window.run((text) => {
            const script = document.createElement("script");
            script.textContent = text;
            document.body.append(script);
          }, code),
        "by an object's address": async (window) =>
          window.run(
            (text) =>
              new Promise((done) => {
                const script = document.createElement("script");
                script.src = URL.createObjectURL(new Blob([text], { type: "text/javascript" }));
                script.onload = () => done();
                document.body.append(script);
              }),
            code,
          ),
      };
      for (const [name, way] of Object.entries(ways)) {
        const window = await t.open(
          page(
            `<main>${jsonBuild}${sentence}</main><script type="text/plain" data-type="x" data-src="/meshwright-article.js"></script>`,
            { library: "" },
          ),
        );
        await way(window);
        await until(() => window.run(() => alive()), name);
        await delay(300);
        const seen = await stepped(window);
        assert.deepEqual({ ...seen, wrong: seen.wrong.filter((one) => !/a file failed/.test(one)) }, good, name);
      }
    },
  },
];
