// Hands, ears and blockers.
import assert from "node:assert/strict";
import { until } from "../lib/engine.js";
import { fileOf } from "../lib/software.js";
import { article, page } from "../lib/snippets.js";
import { blocks, wholeBuild } from "../lib/elements.js";

const all = ["chromium", "firefox", "webkit"];
const live = `<main><h1>Limpet</h1>${wholeBuild}${blocks}<div>${article}</div></main>`;

export const subject = "Hands, ears and blockers";

export const rows = [
  {
    row: 28,
    title: "A decimal comma empties a number field",
    software: [],
    engines: all,
    async run(t) {
      for (const lang of ["de", "en", "fr"]) {
        const window = await t.open(page(live, { lang }));
        const seen = await window.run(async () => {
          await settled();
          const said = [];
          for (const text of ["3,14", "3.14", "1e2", "-4", "", "abc", "17,0", "1.600"]) {
            typed(text);
            await settled();
            said.push(`${count()} ${field().value}`);
          }
          typed("17");
          await settled();
          return { said: [...new Set(said)], last: count(), type: field().type, wrong };
        });
        assert.deepEqual(seen, { said: ["15 15"], last: "17", type: "text", wrong: [] }, lang);
      }
    },
  },
  {
    row: 29,
    title: "The wheel changes a focused value while scrolling",
    software: [],
    engines: ["chromium", "firefox"],
    elsewhere: "WebKit's driver turns no wheel",
    async run(t) {
      const window = await t.open(page(`<div style="height:100px"></div>${article}<div style="height:4000px"></div>`), {
        own: true,
      });
      const place = await window.run(async () => {
        await settled();
        field().focus();
        await settled();
        const { x, y, width, height } = field().getBoundingClientRect();
        return { x: x + width / 2, y: y + height / 2 };
      });
      await window.page.mouse.move(place.x, place.y);
      await window.page.mouse.wheel({ deltaY: 300 });
      await until(() => window.run(() => scrollY > 0), "the page has scrolled");
      const seen = await window.run(() => ({ count: count(), scrolled: scrollY > 0 }));
      assert.deepEqual(seen, { count: "15", scrolled: true });
    },
  },
  {
    row: 31,
    title: "Enter commits while an input method is composing; full-width digits",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(article));
      const seen = await window.run(async () => {
        await settled();
        const input = field();
        input.focus();
        input.dispatchEvent(new CompositionEvent("compositionstart", { bubbles: true }));
        input.value = "１２";
        input.dispatchEvent(new InputEvent("input", { bubbles: true, isComposing: true }));
        input.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", isComposing: true, bubbles: true }));
        await settled();
        const composing = [shown(), input.value];
        input.dispatchEvent(new CompositionEvent("compositionend", { data: "１２", bubbles: true }));
        input.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true, cancelable: true }));
        await settled();
        const said = [count()];
        for (const text of ["١٣", "१४", "１６", " 18 "]) {
          typed(text);
          await settled();
          said.push(count());
        }
        return { composing, said, wrong };
      });
      assert.deepEqual(seen, { composing: ["44.30", "１２"], said: ["12", "13", "14", "16", "18"], wrong: [] });
    },
  },
  {
    row: 32,
    title: "A live region floods a screen reader",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(live));
      const said = await window.run(async () => {
        await settled();
        const heard = [];
        const observers = [...document.querySelectorAll("*")]
          .filter((one) => one.shadowRoot)
          .map((one) => {
            const observer = new MutationObserver(() => {
              for (const region of one.shadowRoot.querySelectorAll("[role=status],[role=alert],[aria-live]"))
                if (region.textContent) heard.push(region.textContent);
            });
            observer.observe(one.shadowRoot, { childList: true, characterData: true, subtree: true });
            return observer;
          });
        for (let n = 0; n < 20; n++) {
          step(1);
          await new Promise((done) => setTimeout(done, 20));
        }
        const during = heard.length;
        await new Promise((done) => setTimeout(done, 1500));
        for (const observer of observers) observer.disconnect();
        return { during, heard };
      });
      assert.equal(said.during, 0);
      assert.equal(said.heard.length, 1, said.heard.join(" | "));
      assert.match(said.heard[0], /35/);
    },
  },
  {
    row: 33,
    title: "A label outside the shadow root cannot name the control inside",
    software: ["axe-core"],
    engines: all,
    async run(t) {
      const axe = t.site.script(fileOf("axe-core", "axe.min.js"));
      const window = await t.open(page(live, { head: `<script src="${axe}"></script>` }));
      const seen = await window.run(async () => {
        await settled();
        step(1);
        typed("0");
        await settled();
        const { violations } = await axe.run(document.querySelector("main"), { rules: { region: { enabled: false } } });
        return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`);
      });
      assert.deepEqual(seen, []);
      if (t.engine !== "chromium") return;
      const named = [];
      const visit = (node) => {
        if (/^(spinbutton|button|combobox|textbox)$/.test(node.role)) named.push([node.role, node.name]);
        for (const child of node.children ?? []) visit(child);
      };
      visit(await window.page.accessibility.snapshot({ interestingOnly: false }));
      assert.ok(
        named.some(([role, name]) => role === "spinbutton" && /, teeth$/.test(name)),
        JSON.stringify(named),
      );
      assert.deepEqual(
        named.filter(([, name]) => !name),
        [],
      );
    },
  },
  {
    row: 38,
    title: "Blockers hide anything that is called share",
    software: [],
    engines: all,
    async run(t) {
      const hidden = [
        "share",
        "social",
        "ad",
        "ads",
        "banner",
        "sponsor",
        "promo",
        "popup",
        "cookie",
        "consent",
        "newsletter",
        "tracking",
        "notice",
        "overlay",
        "widget",
      ];
      const css = hidden
        .map(
          (name) => `.${name},#${name},[class*="${name}-"],[id*="${name}-"],[part~="${name}"]{display:none!important}`,
        )
        .join("");
      const window = await t.open(page(live));
      const seen = await window.run(
        async (text, names) => {
          const sheet = new CSSStyleSheet();
          sheet.replaceSync(text);
          document.adoptedStyleSheets = [sheet];
          await settled();
          step(1);
          await settled();
          const called = [];
          let gone = 0;
          for (const host of document.querySelectorAll("*")) {
            if (!host.shadowRoot) continue;
            for (const one of host.shadowRoot.querySelectorAll("*")) {
              const words = `${one.getAttribute("class") ?? ""} ${one.id} ${one.getAttribute("part") ?? ""}`.split(
                /[\s-]+/,
              );
              for (const word of words) if (names.includes(word)) called.push(`${host.localName} ${word}`);
            }
            const before = [...host.shadowRoot.querySelectorAll("*")].filter((one) => one.checkVisibility()).length;
            host.shadowRoot.adoptedStyleSheets = [...host.shadowRoot.adoptedStyleSheets, sheet];
            gone += before - [...host.shadowRoot.querySelectorAll("*")].filter((one) => one.checkVisibility()).length;
          }
          return { called, gone, copy: reads("mw-edits").includes("Copy a link") };
        },
        css,
        hidden,
      );
      assert.deepEqual(seen, { called: [], gone: 0, copy: true });
    },
  },
  {
    title: "A host's own listeners hear nothing that is not for them",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<form>${live}</form>`));
      const heard = await window.run(async () => {
        await settled();
        const events = [];
        for (const name of ["input", "change", "submit", "beforeinput", "mw-change", "mw-undo", "mw-reset"])
          document.querySelector("form").addEventListener(name, (event) => events.push(event.type));
        const keys = [];
        document.addEventListener("keydown", (event) => keys.push(event.key));
        step(1);
        typed("17");
        await settled();
        // Programs that change a build raise no events.
        document.querySelectorAll("mw-build")[1].store.change({ "spur-and-pinion.driver": 18 });
        await settled();
        return { events, keys, data: [...new FormData(document.querySelector("form"))].length };
      });
      assert.deepEqual(heard, { events: ["mw-change", "mw-change"], keys: [], data: 0 });
    },
  },
  {
    title: "Short cuts of the page do not fire while somebody types a count",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<p>Before</p>${article}`));
      await window.run(async () => {
        await settled();
        window.heard = [];
        for (const name of ["keydown", "keypress", "keyup"])
          document.addEventListener(name, (event) => heard.push(`${event.type} ${event.key}`));
        field().focus();
      });
      await window.type("2 0");
      for (const key of ["Backspace", "ArrowUp", "Enter"]) await window.press(key);
      await window.run(() => settled());
      assert.deepEqual(await window.run(() => [count(), heard]), ["3", []]);
      // The first closes what is open beside the count; what means nothing here is the page's.
      await window.press("Escape");
      await window.run(() => heard.splice(0));
      await window.press("Escape");
      assert.deepEqual(await window.run(() => heard.filter((one) => !/^keypress/.test(one))), [
        "keydown Escape",
        "keyup Escape",
      ]);
    },
  },
  {
    title: "Real keys and a real pointer change a count",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(`<p>Before</p>${article}`));
      const place = await window.run(async () => {
        await settled();
        const { x, y, width, height } = field().getBoundingClientRect();
        return [x + width / 2, y + height / 2];
      });
      await window.click(...place);
      await window.press("ArrowUp");
      await window.run(() => settled());
      assert.deepEqual(await window.run(() => [count(), shown()]), ["16", "41.53"]);
      await window.type("20");
      await window.press("Enter");
      await window.run(() => settled());
      assert.deepEqual(await window.run(() => [count(), shown()]), ["20", "33.23"]);
      const plus = await window.run(() => {
        const { x, y, width, height } = document
          .querySelector("mw-teeth")
          .shadowRoot.querySelectorAll(".tray button")[2]
          .getBoundingClientRect();
        return [x + width / 2, y + height / 2];
      });
      await window.click(...plus);
      await window.run(() => settled());
      assert.deepEqual(await window.run(() => [count(), document.activeElement.localName]), ["21", "mw-teeth"]);
    },
  },
];
