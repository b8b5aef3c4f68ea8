// Frameworks that set properties, draw again, swap and hydrate.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { compile } from "svelte/compiler";
import { at } from "../../../scripts/lib/paths.js";
import { bundled, fileOf } from "../lib/software.js";
import { article, attributeBuild, attributes as written, page, plainSentence, small } from "../lib/snippets.js";

const attributes = Object.fromEntries(
  [...written.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, name, value]) => [name, value]),
);

const all = ["chromium", "firefox", "webkit"];
const tag = (src) => `<script src="${src}"></script>`;
const example = (name) => readFileSync(at("tests", "hosts", "examples", name), "utf8");

/** Opens a page with a framework's script after the library, or before it. */
async function withScript(t, code, { first = false, body = '<div id="app"></div>' } = {}) {
  const script = tag(t.site.script(code));
  const window = await t.open(
    page(body + (first ? script : "") + tag("/meshwright.js") + (first ? "" : script), { library: "" }),
  );
  await window.run(() => settled());
  await window.run(() => settled());
  return window;
}

/** A svelte component as a script that mounts it. */
async function svelte(source, props = "{}") {
  const { js } = compile(source, { generate: "client", dev: false });
  return bundled(`${js.code.replace("export default function", "function").replace(/function (\w+)\(\$\$anchor/, "function Component($$$$anchor")}
    import { mount, flushSync as flush } from "svelte";
    window.props = ${props};
    mount(Component, { target: document.querySelector("#app"), props: window.props });
    flush();`);
}

async function livingArticle(window, what) {
  const seen = await window.run(async () => {
    const before = [reads(".sentence"), alive()];
    step(1);
    await settled();
    return { before, after: [count(), shown()], wrong };
  });
  assert.deepEqual(seen, { before: [plainSentence, true], after: ["16", "41.53"], wrong: [] }, what);
}

export const subject = "Frameworks that draw, swap and hydrate";

export const rows = [
  {
    row: 17,
    title: "A property with a getter only takes React's tree down",
    software: ["react-dom", "vue"],
    engines: all,
    async run(t) {
      const react = await bundled(`
        import { createElement, StrictMode } from "react";
        import { createRoot } from "react-dom/client";
        import { flushSync } from "react-dom";
        const root = createRoot(document.querySelector("#app"), { onUncaughtError: (error) => wrong.push(String(error)), onCaughtError: (error) => wrong.push(String(error)) });
        window.draw = (name, props) => flushSync(() => root.render(createElement(StrictMode, {}, createElement("main", {}, createElement(name, props)))));`);
      const vue = t.site.script(fileOf("vue", "dist/vue.global.prod.js"));
      const window = await withScript(t, react, { body: `<div id="app"></div><div id="other"></div>${tag(vue)}` });
      const seen = await window.run(async () => {
        const names = [...new Set([...document.querySelectorAll("body *")].map((one) => one.localName))] && [
          "mw-build",
          "mw-teeth",
          "mw-value",
          "mw-edits",
          "mw-ratio-summary",
          "mw-overdrive-gauge",
          "mw-change-table",
          "mw-train-drawing",
          "mw-wheel-speed",
          "mw-working",
        ];
        const lost = [];
        let tried = 0;
        for (const name of names) {
          const type = customElements.get(name);
          const known = new Set(type.observedAttributes);
          // Everything that the element has under a name of its own, whoever may set it.
          for (let at = type.prototype; at !== HTMLElement.prototype; at = Object.getPrototypeOf(at))
            for (const [key, own] of Object.entries(Object.getOwnPropertyDescriptors(at)))
              if (own.get || own.set) known.add(key);
          known.delete("renderRoot");
          for (const value of ["x", 7, true, null, undefined, { a: 1 }, [1]]) {
            const props = Object.fromEntries(
              [...known].filter((key) => /^[a-z][\w-]*$/i.test(key)).map((key) => [key, value]),
            );
            tried += Object.keys(props).length;
            draw(name, props);
            if (!document.querySelector(`#app ${name}`)) lost.push(`React, ${name}: ${JSON.stringify(value)}`);
            const app = Vue.createApp({ render: () => Vue.h(name, props) });
            app.config.errorHandler = (error) => wrong.push(`Vue, ${name}: ${error}`);
            app.mount("#other");
            if (!document.querySelector(`#other ${name}`)) lost.push(`Vue, ${name}: ${JSON.stringify(value)}`);
            await settled();
            app.unmount();
          }
        }
        return { lost, wrong: [...new Set(wrong)].filter((one) => !/a file failed/.test(one)), some: tried > 300 };
      });
      assert.deepEqual(seen, { lost: [], wrong: [], some: true });
    },
  },
  {
    title: "React 19: an article that is drawn again and again, in strict mode",
    software: ["react", "react-dom"],
    engines: all,
    async run(t) {
      for (const first of [true, false]) {
        const window = await withScript(
          t,
          await bundled(example("react.jsx"), { loader: "jsx", build: { jsx: "automatic" } }),
          { first },
        );
        await livingArticle(window, `script ${first ? "first" : "last"}`);
        const seen = await window.run(async () => {
          for (let n = 0; n < 5; n++) {
            document.querySelector("#again").click();
            await settled();
          }
          return {
            again: document.querySelector("#again").textContent,
            count: count(),
            shown: shown(),
            changes: document.querySelector("#changes").textContent,
            wrong,
          };
        });
        assert.deepEqual(seen, { again: "Drawn 5 times", count: "16", shown: "41.53", changes: "1", wrong: [] });
      }
    },
  },
  {
    title: "React 19 hydrates what a server drew, after the elements have taken it over",
    software: ["react-dom"],
    engines: all,
    async run(t) {
      const { renderToString } = await import("react-dom/server");
      const { createElement } = await import("react");
      const body = renderToString(createElement("div", { dangerouslySetInnerHTML: { __html: article } }));
      const treeOf = (create, json) =>
        create(
          "main",
          {},
          create("mw-build", { id: "limpet", json }),
          create(
            "p",
            { className: "sentence" },
            "With ",
            create("mw-teeth", { of: "spur-and-pinion.driver" }, "15"),
            " teeth the front turns once for every ",
            create("mw-value", { of: "front" }, "44.30"),
            " turns of the motor.",
          ),
        );
      const tree = `(${treeOf})(createElement, ${JSON.stringify(small)})`;
      const server = renderToString(treeOf(createElement, small));
      const window = await withScript(
        t,
        await bundled(`import { createElement } from "react"; import { hydrateRoot } from "react-dom/client";
          hydrateRoot(document.querySelector("#app"), ${tree}, { onRecoverableError: (error) => wrong.push(String(error)) });`),
        { body: `<div id="app">${server}</div>` },
      );
      assert.ok(body.includes("mw-build"));
      await livingArticle(window);
    },
  },
  {
    title: "Vue 3: an article that is drawn again and again, and v-html",
    software: ["vue"],
    engines: all,
    async run(t) {
      const vue = t.site.script(fileOf("vue", "dist/vue.global.prod.js"));
      const window = await withScript(t, example("vue.js"), { body: `<div id="app"></div>${tag(vue)}` });
      await livingArticle(window);
      const seen = await window.run(async () => {
        for (let n = 0; n < 5; n++) {
          document.querySelector("#again").click();
          await settled();
        }
        return {
          again: document.querySelector("#again").textContent,
          count: count(),
          shown: shown(),
          changes: document.querySelector("#changes").textContent,
          wrong,
        };
      });
      assert.deepEqual(seen, { again: "Drawn 5 times", count: "16", shown: "41.53", changes: "1", wrong: [] });
      const html = await window.run(async (markup) => {
        await addressed(/mw-limpet/);
        document.querySelector("#app").remove();
        history.replaceState(null, "", location.pathname);
        document.body.insertAdjacentHTML("beforeend", '<div id="raw"></div>');
        Vue.createApp({ template: '<div v-html="markup"></div>', data: () => ({ markup }) }).mount("#raw");
        await settled();
        return reads(".sentence");
      }, article);
      assert.equal(html, plainSentence);
    },
  },
  {
    title: "Svelte 5: an article that is drawn again and again, and {@html}",
    software: ["svelte"],
    engines: all,
    async run(t) {
      const window = await withScript(t, await svelte(example("Article.svelte")));
      await livingArticle(window);
      const seen = await window.run(async () => {
        for (let n = 0; n < 5; n++) {
          document.querySelector("#again").click();
          await settled();
        }
        return {
          again: document.querySelector("#again").textContent,
          count: count(),
          shown: shown(),
          changes: document.querySelector("#changes").textContent,
          wrong,
        };
      });
      assert.deepEqual(seen, { again: "Drawn 5 times", count: "16", shown: "41.53", changes: "1", wrong: [] });
      const raw = await withScript(
        t,
        await svelte(
          "<script>let { markup } = $props();</script>{@html markup}",
          `{ markup: ${JSON.stringify(article)} }`,
        ),
      );
      await livingArticle(raw);
    },
  },
  {
    title: "Turbo keeps snapshots of pages and brings them back",
    software: ["@hotwired/turbo"],
    engines: all,
    async run(t) {
      const turbo = t.site.script(fileOf("@hotwired/turbo", "dist/turbo.es2017-umd.js"));
      const head = tag(turbo) + '<script src="/meshwright.js"></script>';
      const other = t.site.page(
        page(
          `<main><h1>Other</h1>${attributeBuild.replace("15 to 62", "15 to 31")}<p class="sentence"><mw-value of="front">22.15</mw-value></p></main>`,
          { head, library: "" },
        ),
      );
      const window = await t.open(
        page(`<main>${article}<a id="go" href="${other}">Other</a></main>`, { head, library: "" }),
      );
      await window.run(() => settled());
      await window.run(() => step(1));
      await window.run(() => settled());
      await window.run(async () => {
        document.querySelector("#go").click();
        for (let n = 0; n < 100 && !document.querySelector("h1"); n++) await settled();
        await settled();
      });
      assert.equal(await window.run(() => reads(".sentence")), "22.15");
      await window.run(async () => {
        history.back();
        for (let n = 0; n < 100 && document.querySelector("h1"); n++) await settled();
        await settled();
      });
      const seen = await window.run(() => ({
        count: count(),
        shown: shown(),
        builds: globalThis[Symbol.for("meshwright page 1")].holders.size,
        wrong,
      }));
      assert.equal(seen.shown, { 15: "44.30", 16: "41.53" }[seen.count]);
      assert.equal(seen.builds, 1);
      assert.deepEqual(seen.wrong, []);
    },
  },
  {
    title: "htmx swaps an article in and out",
    software: ["htmx.org"],
    engines: all,
    async run(t) {
      const htmx = t.site.script(fileOf("htmx.org", "dist/htmx.js"));
      const part = t.site.page(article);
      const window = await t.open(
        page(`<button hx-get="${part}" hx-target="#here">Load</button><div id="here"></div>`, { head: tag(htmx) }),
      );
      for (let n = 0; n < 3; n++) {
        await window.run(async () => {
          document.querySelector("#here").replaceChildren();
          document.querySelector("button").click();
          for (let tries = 0; tries < 60 && !document.querySelector(".sentence"); tries++) await settled();
          await settled();
        });
      }
      await livingArticle(window);
    },
  },
  {
    title: "Preact, Mithril, Alpine, Lit's templates and morphdom: drawn, and drawn again",
    software: ["preact", "mithril", "alpinejs", "lit", "morphdom"],
    engines: all,
    async run(t) {
      const props = JSON.stringify(attributes);
      const tree = (create) => `${create}("main", { "data-n": n }, [
        ${create}("mw-build", { id: "limpet", ...${props} }),
        ${create}("p", { class: "sentence" }, ["With ", ${create}("mw-teeth", { of: "spur-and-pinion.driver" }, "15"),
          " teeth the front turns once for every ", ${create}("mw-value", { of: "front" }, "44.30"), " turns of the motor."])])`;
      const markup = JSON.stringify(article);
      const ways = {
        preact: `import { h, render } from "preact";
          window.draw = (n) => render(${tree("h")}, document.querySelector("#app"));`,
        mithril: `import m from "mithril";
          window.draw = (n) => m.render(document.querySelector("#app"), ${tree("m")});`,
        trusted: `import m from "mithril";
          window.draw = (n) => m.render(document.querySelector("#app"), m("main", { "data-n": n }, m.trust(${markup})));`,
        lit: `import { html, render } from "lit";
          window.draw = (n) => render(html\`<main data-n=\${n}><mw-build id="limpet" stages=\${${props}.stages} front=\${${props}.front} rear=\${${props}.rear}></mw-build>
            <p class="sentence">With <mw-teeth .of=\${"spur-and-pinion.driver"}>\${15}</mw-teeth> teeth the front turns once for every <mw-value of=\${"front"} .digits=\${undefined}>\${"44.30"}</mw-value> turns of the motor.</p></main>\`, document.querySelector("#app"));`,
        morphdom: `import morphdom from "morphdom";
          window.draw = (n) => morphdom(document.querySelector("#app"), '<div id="app" data-n="' + n + '">' + ${markup} + "</div>");`,
        alpine: `import Alpine from "alpinejs";
          document.querySelector("#app").innerHTML = '<main x-data="{ n: 0 }" :data-n="n" @again.window="n = $event.detail"><template x-if="true"><div>' + ${markup} + "</div></template></main>";
          Alpine.start();
          window.draw = (n) => dispatchEvent(new CustomEvent("again", { detail: n }));`,
      };
      for (const [name, code] of Object.entries(ways))
        for (const first of [true, false]) {
          const window = await withScript(t, await bundled(`${code}\nwindow.draw(0);`), { first });
          await livingArticle(window, name);
          const seen = await window.run(async () => {
            for (let n = 1; n < 4; n++) {
              draw(n);
              await settled();
            }
            return [!!document.querySelector('[data-n="3"]'), count(), shown(), wrong];
          });
          assert.deepEqual(seen, [true, "16", "41.53", []], name);
        }
    },
  },
];
